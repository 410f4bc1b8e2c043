//! Duties of a signal beyond carrying a value: counting frames, guarding the payload.

use wirelore_bits::{Encoding, Field, NumberKind};
use wirelore_model::{ByteSpan, Checksum, ChecksumAlgorithm, Counter, Role};

use crate::syntax::tree::{self, ByteIndex, Integer};
use crate::{Diagnostic, Rule, Spanned};

use super::messages::suggest;
use super::place::Placer;

/// The algorithms and their names in the language.
const ALGORITHMS: [(&str, ChecksumAlgorithm); 12] = [
    ("crc8_sae_j1850", ChecksumAlgorithm::Crc8SaeJ1850),
    ("crc8_autosar", ChecksumAlgorithm::Crc8Autosar),
    ("crc16_ibm_3740", ChecksumAlgorithm::Crc16Ibm3740),
    ("crc16_arc", ChecksumAlgorithm::Crc16Arc),
    ("crc32_iso_hdlc", ChecksumAlgorithm::Crc32IsoHdlc),
    ("crc32_autosar", ChecksumAlgorithm::Crc32Autosar),
    ("crc64_xz", ChecksumAlgorithm::Crc64Xz),
    ("xor8", ChecksumAlgorithm::Xor8),
    ("sum8", ChecksumAlgorithm::Sum8),
    ("inverted_sum8", ChecksumAlgorithm::InvertedSum8),
    ("inverted_carry_sum8", ChecksumAlgorithm::InvertedCarrySum8),
    ("nibble4", ChecksumAlgorithm::Nibble4),
];

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
        (_, Some(rule)) => self::checksum(rule, &duty, placer).map(|checksum| Role::Checksum(Box::new(checksum))),
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

fn checksum(rule: &Spanned<tree::Checksum>, duty: &Duty<'_>, placer: &mut Placer<'_>) -> Option<Checksum> {
    let written = &rule.value;
    let algorithm = algorithm(&written.algorithm, placer);
    let over = covered(written, duty, placer);
    let first = bytes(&written.first, placer);
    let then = bytes(&written.then, placer);
    let algorithm = algorithm?;
    let width = duty.encoding.width();
    if width != algorithm.width() {
        let message =
            format!("`{}` has {} bits, and this signal has {width}", written.algorithm.value, algorithm.width());
        placer.messages.push(
            Diagnostic::new(Rule::ChecksumWidth, placer.scope.site(written.algorithm.span), message)
                .here(format!("{} bits", algorithm.width()))
                .remark(
                    placer.scope.site(duty.signal.place.as_ref().map_or(rule.span, |place| place.span)),
                    format!("{width} bits"),
                )
                .help("correct the place, or choose an algorithm of that width"),
        );
        return None;
    }
    let start = start(written.starting.as_ref(), algorithm, placer)?;
    Some(Checksum { algorithm, over: over?, start, first: first?, then: then? })
}

fn algorithm(name: &tree::Name, placer: &mut Placer<'_>) -> Option<ChecksumAlgorithm> {
    if let Some((_, algorithm)) = ALGORITHMS.iter().find(|(known, _)| *known == name.value) {
        return Some(*algorithm);
    }
    let known = ALGORITHMS.map(|(name, _)| name);
    let meant = placer.messages.nearest(&name.value, known);
    let message = Diagnostic::new(
        Rule::UnknownChecksum,
        placer.scope.site(name.span),
        format!("there is no checksum called `{}`", name.value),
    );
    placer
        .messages
        .push(suggest(message, &meant).here("not known").help(format!("these are known: {}", known.join(", "))));
    None
}

fn start(written: Option<&Integer>, algorithm: ChecksumAlgorithm, placer: &mut Placer<'_>) -> Option<Option<u64>> {
    let Some(written) = written else { return Some(None) };
    let most = u64::MAX >> (64 - u32::from(algorithm.width()));
    match u64::try_from(written.value) {
        Ok(start) if start <= most => Some(Some(start)),
        _ => {
            let message = format!("the start value has more than {} bits", algorithm.width());
            placer.messages.push(
                Diagnostic::new(Rule::ChecksumWidth, placer.scope.site(written.span), message)
                    .here(format!("at most {most:#X}")),
            );
            None
        }
    }
}

fn bytes(written: &[Integer], placer: &mut Placer<'_>) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(written.len());
    for number in written {
        match u8::try_from(number.value) {
            Ok(byte) => bytes.push(byte),
            Err(_) => {
                let message = Diagnostic::new(
                    Rule::ChecksumWidth,
                    placer.scope.site(number.span),
                    format!("{} is not a byte", number.value),
                );
                placer.messages.push(message.here("a byte goes from 0 to 255"));
            }
        }
    }
    (bytes.len() == written.len()).then_some(bytes)
}

/// The payload bytes that a checksum covers.
fn covered(rule: &tree::Checksum, duty: &Duty<'_>, placer: &mut Placer<'_>) -> Option<Vec<ByteSpan>> {
    let mut over = Vec::with_capacity(rule.over.len());
    for run in &rule.over {
        over.extend(covered_run(run, duty, placer));
    }
    (!over.is_empty() && over.len() == rule.over.len()).then_some(over)
}

fn covered_run(run: &Spanned<(ByteIndex, ByteIndex)>, duty: &Duty<'_>, placer: &mut Placer<'_>) -> Option<ByteSpan> {
    let counting = placer.scope.settings.counting;
    let base = placer.scope.base;
    let site = placer.scope.site(run.span);
    let first = placer.byte(run.value.0)?;
    let last = match run.value.1 {
        ByteIndex::Last(_) if placer.fixed_length.is_none() && !matches!(run.value.0, ByteIndex::Last(_)) => None,
        last => Some(placer.byte(last)?),
    };
    if let Some(last) = last.filter(|last| *last < first) {
        let turned = format!("{}..{}", counting.byte(last), counting.byte(first));
        placer.messages.push(
            Diagnostic::new(Rule::EndsUpsideDown, site, "a checksum covers bytes in the order in which they are sent")
                .here("runs backwards")
                .help(format!("write `{turned}`")),
        );
        return None;
    }
    let span = ByteSpan { first: first + base, last: last.map(|last| last + base) };
    let end = span.last.unwrap_or(u32::MAX);
    let Some(own) = duty.field.places().iter().find(|own| span.first <= own.last_byte() && own.first_byte() <= end)
    else {
        return Some(span);
    };
    let byte = counting.byte(own.first_byte().max(span.first).saturating_sub(base));
    placer.messages.push(
        Diagnostic::new(
            Rule::ChecksumCoversItself,
            site,
            format!("this checksum covers byte {byte}, where it sits itself"),
        )
        .here("includes its own place")
        .remark(placer.scope.site(duty.signal.place.as_ref().map_or(run.span, |place| place.span)), "the checksum")
        .help(format!("leave byte {byte} out: `over bytes A..B, C..D` names several runs")),
    );
    None
}
