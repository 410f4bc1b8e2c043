//! Can a signal's values be what is said of them?

use wirelore_bits::{Encoding, Ratio};
use wirelore_model::{Meaning, RawSpan, Scaling, Signal};

use crate::resolve::flat::Scope;
use crate::resolve::messages::Messages;
use crate::resolve::raw::comparable;
use crate::resolve::states::Fit;
use crate::syntax::tree;
use crate::{Diagnostic, Rule, Span};

/// Checks the clauses of one signal against each other.
pub(crate) fn signal(
    signal: &Signal,
    tree: &tree::Signal,
    encoding: Encoding,
    fit: Option<&Fit>,
    scope: &Scope,
    messages: &mut Messages,
) {
    range(signal, tree, encoding, scope, messages);
    specials(signal, tree, encoding, fit, scope, messages);
}

/// The least and the greatest engineering value that raw values reach; `None` for floats, which reach nearly everything, and for
/// trouble codes.
fn reach(signal: &Signal, encoding: Encoding) -> Option<(Ratio, Ratio)> {
    let (least, greatest) = encoding.integer_range()?;
    match &signal.scaling {
        Scaling::Raw => Some((Ratio::whole(least), Ratio::whole(greatest))),
        Scaling::Affine(affine) => {
            let (one, other) = (affine.exact(least)?, affine.exact(greatest)?);
            Some((one.min(other), one.max(other)))
        }
        // What has no quantity has no range; that is told where the kind is read.
        Scaling::TroubleCode => None,
        Scaling::Curve(curve) => {
            let values = || curve.points.iter().map(|point| point.value);
            Some((values().min()?, values().max()?))
        }
    }
}

fn range(signal: &Signal, tree: &tree::Signal, encoding: Encoding, scope: &Scope, messages: &mut Messages) {
    let (Some(range), Some(written)) = (&signal.range, &tree.range) else { return };
    // Where a part of the signal could not be read, that may have been its formula.
    let is_unscaled = signal.scaling == Scaling::Raw && tree.incomplete;
    let Some((least, greatest)) = reach(signal, encoding).filter(|_| !is_unscaled) else { return };
    if least <= range.low && range.high <= greatest {
        return;
    }
    let unit = signal.unit.as_ref().map_or(String::new(), |unit| format!(" {unit}"));
    let is_apart = range.high < least || greatest < range.low;
    let text = if is_apart {
        format!("no raw value of `{}` ever comes into this range", signal.label.name)
    } else {
        format!("the raw values of `{}` do not reach all of this range", signal.label.name)
    };
    messages.push(
        Diagnostic::new(Rule::RangeUnreachable, scope.site(written.span), text)
            .here(format!("{} bits reach {least}..{greatest}{unit}", encoding.width()))
            .help("check the formula, the width and the kind of the signal, or correct the range"),
    );
}

/// A run of raw values that is no reading, and where it is written.
type Special = (RawSpan, Meaning, Span);

/// Raw values that say more than one thing.
fn specials(
    signal: &Signal,
    tree: &tree::Signal,
    encoding: Encoding,
    fit: Option<&Fit>,
    scope: &Scope,
    messages: &mut Messages,
) {
    // Where one of them does not fit, the lists of the tree and of the model are not the same.
    if signal.absent.len() != tree.extras().absent.len() || signal.fault.len() != tree.extras().fault.len() {
        return;
    }
    if signal.absent.len() + signal.fault.len() < 2 && fit.is_none() {
        return;
    }
    let absent =
        signal.absent.iter().zip(&tree.extras().absent).map(|(span, written)| (*span, Meaning::Absent, written.span));
    let fault =
        signal.fault.iter().zip(&tree.extras().fault).map(|(span, written)| (*span, Meaning::Fault, written.span));
    let all: Vec<Special> = absent.chain(fault).collect();
    let name = &signal.label.name;
    if let Some(fit) = fit {
        against_words(name, &all, encoding, fit, scope, messages);
    }
    against_each_other(name, &all, encoding, scope, messages);
}

fn against_words(name: &str, all: &[Special], encoding: Encoding, fit: &Fit, scope: &Scope, messages: &mut Messages) {
    for &(span, meaning, written) in all {
        if fit.meaning_of(span, encoding).is_some_and(|word| word != meaning) {
            let text = format!("raw value {span} of `{name}` has a state word and is no reading");
            messages.push(
                Diagnostic::new(Rule::SpecialTwice, scope.site(written), text)
                    .here("says something else than the word")
                    .help(format!("mark the word `as {}` and take the value out here", word_of(meaning))),
            );
        }
    }
}

fn against_each_other(name: &str, all: &[Special], encoding: Encoding, scope: &Scope, messages: &mut Messages) {
    let run = |&(span, meaning, written): &Special| Some((comparable(span, Some(encoding))?, meaning, written));
    let mut runs: Vec<_> = all.iter().filter_map(run).collect();
    runs.sort_unstable_by_key(|&(run, _, written)| (run, written));
    for pair in runs.windows(2) {
        let [(one, first, first_span), (other, second, second_span)] = pair else { continue };
        if one.0 != other.0 || other.1 > one.2 {
            continue;
        }
        let (earlier, later) = (first_span.min(second_span), first_span.max(second_span));
        let text = if first == second { "is named twice" } else { "is both `absent` and `fault`" };
        messages.push(
            Diagnostic::new(
                Rule::SpecialTwice,
                scope.site(*later),
                format!("raw value {} of `{name}` {text}", other.1),
            )
            .here("the second time")
            .remark(scope.site(*earlier), "the first time")
            .help("name each value once"),
        );
    }
}

fn word_of(meaning: Meaning) -> &'static str {
    match meaning {
        Meaning::Reading => "a reading",
        Meaning::Absent => "absent",
        Meaning::Fault => "fault",
    }
}
