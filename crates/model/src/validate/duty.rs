//! Checks of counters, checksums and protections.

use wirelore_bits::{Crc, Encoding, Field, NumberKind};

use super::flaw::{Checked, Flaw};
use super::frame::{FrameContext, inside};
use super::general::{at_most, not_zero, refers};
use super::signal::byte_span;
use crate::{Checksum, ChecksumAlgorithm, Content, Counter, MixedByte, Protection, Role, Signal};

/// The last byte of an identifier, counted from the least significant one.
const LAST_IDENTIFIER_BYTE: u8 = 3;

/// Checks the duty of a number.
pub(super) fn check(
    context: &FrameContext<'_>,
    signal: &Signal,
    (field, encoding): (&Field, Encoding),
    limit: u32,
) -> Checked {
    let unsigned = |what| {
        if encoding.kind() == NumberKind::Unsigned { Ok(()) } else { Err(Flaw::NotUnsigned { what }) }
    };
    match &signal.role {
        Role::Value => Ok(()),
        Role::Counter(rule) => unsigned("counter").and_then(|()| counter(*rule, encoding)),
        Role::Checksum(rule) => {
            unsigned("checksum")?;
            checksum(rule, field, limit)?;
            rule.mixed_in().try_for_each(|byte| mixed_in(context, signal, byte))
        }
        Role::Protection(rule) => {
            unsigned("protection's counter").and_then(|()| protection(rule, signal, field, limit))
        }
    }
}

fn counter(counter: Counter, encoding: Encoding) -> Checked {
    if counter.high <= counter.low {
        return Err(Flaw::CounterStands { low: counter.low, high: counter.high });
    }
    at_most("last count", counter.high, greatest(encoding.width()))?;
    not_zero("step", counter.step)
}

fn checksum(checksum: &Checksum, field: &Field, limit: u32) -> Checked {
    if checksum.over.is_empty() {
        return Err(Flaw::Missing { what: "byte that its checksum covers" });
    }
    if let ChecksumAlgorithm::Crc(rule) = checksum.algorithm {
        Crc::new(rule.parameters()).map_err(|error| Flaw::WrongCrc { problem: error.to_string() })?;
    }
    at_most("start value", checksum.start.unwrap_or(0), greatest(checksum.algorithm.width()))?;
    for span in &checksum.over {
        byte_span(*span, limit)?;
        let last = span.last.unwrap_or(u32::MAX);
        if let Some(own) =
            field.places().iter().find(|place| span.first <= place.last_byte() && place.first_byte() <= last)
        {
            return Err(Flaw::CoversItself { byte: own.first_byte().max(span.first) });
        }
    }
    Ok(())
}

/// Checks a byte that a signal's checksum takes in beside those it covers.
fn mixed_in(context: &FrameContext<'_>, signal: &Signal, byte: MixedByte) -> Checked {
    match byte {
        MixedByte::Byte(_) => Ok(()),
        MixedByte::Identifier(index) => at_most("byte of the identifier", index, LAST_IDENTIFIER_BYTE),
        MixedByte::Signal(id) => {
            refers("signal", id.0, context.frame.signals.len())?;
            let mixed = &context.frame.signals[id.index()];
            let is_narrow = matches!(&mixed.content, Content::Number { field, .. } if field.width() <= 8);
            let is_other = !std::ptr::eq(mixed, signal);
            if let Some(page) = mixed.page {
                refers("page", page.0, context.frame.pages.len())?;
            }
            if is_narrow && is_other && context.tree.sees(signal.page, mixed.page) {
                return Ok(());
            }
            Err(Flaw::WrongMixedIn { signal: mixed.label.name.clone() })
        }
    }
}

fn protection(rule: &Protection, signal: &Signal, field: &Field, limit: u32) -> Checked {
    let wrong = |problem| Err(Flaw::WrongProtection { problem });
    byte_span(rule.over, limit)?;
    inside(rule.header_end(), limit)?;
    if rule.header < rule.over.first || rule.over.last.is_some_and(|last| rule.header_end() - 1 > last) {
        return wrong("its header is not among the bytes that it covers");
    }
    if rule.e2e().is_err() {
        return wrong("its profile has no such data id or place");
    }
    let is_counter = rule.parts().any(|(part, place)| part == wirelore_bits::e2e::Part::Counter && place == *field);
    if !is_counter {
        return wrong("its bits are not those of the profile's counter");
    }
    if signal.page.is_some() {
        return wrong("it is on a page, and protects the whole frame");
    }
    not_zero("greatest rise", rule.most_rise.into())?;
    at_most("greatest rise", rule.most_rise, rule.profile.last_count())
}

/// The greatest unsigned number of 1 to 64 bits.
fn greatest(width: u8) -> u64 {
    u64::MAX >> (64 - width.clamp(1, 64))
}
