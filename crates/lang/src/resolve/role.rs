//! Duties of a signal beyond carrying a value: counting frames, guarding the payload.

use wirelore_bits::{Encoding, Field, NumberKind};
use wirelore_model::{Counter, Role};

use crate::syntax::tree;
use crate::{Diagnostic, Rule, Spanned};

use super::checksum;
use super::place::Placer;

/// A signal of which the duty is read: where it sits, and how its bits are read.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Duty<'t> {
    pub(crate) signal: &'t tree::Signal<'t>,
    /// In the payload itself.
    pub(crate) field: Field,
    pub(crate) encoding: Encoding,
}

/// Reads the duty of a signal; what is wrong with it is said, and left out.
pub(crate) fn read(duty: Duty<'_>, placer: &mut Placer<'_>) -> Role {
    let (counter, checksum) = (&duty.signal.extras().counter, &duty.signal.extras().checksum);
    let clause = match (counter, checksum) {
        (None, None) => return Role::Value,
        (Some(counter), None) => counter.span,
        (_, Some(checksum)) => checksum.span,
    };
    let site = placer.scope.site(clause);
    let trouble = if counter.is_some() && checksum.is_some() {
        Some("a signal is a counter or a checksum, not both")
    } else if duty.encoding.kind() != NumberKind::Unsigned {
        Some("counters and checksums are unsigned numbers")
    } else {
        None
    };
    if let Some(trouble) = trouble {
        placer
            .messages
            .push(Diagnostic::new(Rule::KindDoesNotFit, site, trouble).here("does not go with the rest of the signal"));
        return Role::Value;
    }
    let role = match (counter, checksum) {
        (Some(rule), _) => self::counter(rule, duty.encoding, placer).map(Role::Counter),
        (_, Some(rule)) => checksum::read(rule, &duty, placer).map(|checksum| Role::Checksum(Box::new(checksum))),
        (None, None) => None,
    };
    role.unwrap_or(Role::Value)
}

fn counter(rule: &Spanned<tree::Counter>, encoding: Encoding, placer: &mut Placer<'_>) -> Option<Counter> {
    let site = placer.scope.site(rule.span);
    let (low, high) = (rule.value.low.value, rule.value.high.value);
    let most = u64::MAX >> (64 - u32::from(encoding.width().clamp(1, 64)));
    let step = rule.value.step.as_ref().map_or(1, |step| step.value);
    let count = high.saturating_sub(low).saturating_add(1);
    let trouble = if high < low {
        Diagnostic::new(Rule::RangeUpsideDown, site, format!("this counter runs from {low} down to {high}"))
            .here("the smaller number comes first")
            .help(format!("write `counter {high}..{low}`"))
    } else if low < 0 || high > i128::from(most) {
        let bits = encoding.width();
        Diagnostic::new(
            Rule::CounterTooWide,
            site,
            format!("this counter runs from {low} to {high}, and {bits} bits hold 0..{most}"),
        )
        .here("wider than its bits")
        .help("correct the range of the counter or the place of the signal")
    } else if high == low {
        Diagnostic::new(Rule::CounterStandsStill, site, "this counter has only one value").here("never moves")
    } else if step.rem_euclid(count) == 0 {
        Diagnostic::new(
            Rule::CounterStandsStill,
            site,
            format!("with a step of {step}, a counter of {count} values never moves"),
        )
        .here("comes back to the same value each time")
        .help("correct the step; without one it is 1")
    } else {
        // A step downwards is one upwards in a ring of `count` values.
        return Some(Counter { low: low as u64, high: high as u64, step: step.rem_euclid(count) as u64 });
    };
    placer.messages.push(trouble);
    None
}
