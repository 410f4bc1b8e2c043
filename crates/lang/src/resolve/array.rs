//! Arrays: one signal that is written once and sits there several times.

use std::ops::RangeInclusive;

use wirelore_bits::{BitPosition, ByteOrder, Field, Place};
use wirelore_model::{ByteSpan, Content};

use crate::syntax::tree::{self, Piece, Step};
use crate::{Diagnostic, Rule, Spanned};

use super::budget::MOST_ELEMENTS;
use super::flat::Scope;
use super::messages::Messages;
use super::settings::order_word;

/// The elements of an array and the way from one to the next.
#[derive(Debug)]
pub(crate) struct Array {
    pub(crate) numbers: RangeInclusive<u32>,
    step: Stride,
}

#[derive(Debug, Clone, Copy)]
enum Stride {
    Bytes(u32),
    Bits(u32, ByteOrder),
}

/// Reads the elements of a signal; `Ok(None)` for a plain one, `Err` where a message says what is wrong.
pub(crate) fn read(signal: &tree::Signal, scope: &Scope, messages: &mut Messages) -> Result<Option<Array>, ()> {
    let name = &signal.head.name;
    let Some(elements) = &signal.extras().elements else {
        if let Some(step) = &signal.extras().step {
            let message = Diagnostic::new(
                Rule::UnexpectedWord,
                scope.site(step.span),
                "`step` is for signals that sit there several times",
            );
            messages.push(
                message
                    .here("no elements")
                    .help(format!("write the elements behind the name: `{}[1..12]`", name.value)),
            );
        }
        return Ok(None);
    };
    let site = scope.site(elements.span);
    let (first, last) = (elements.first.value, elements.last.value);
    let message = if last < first {
        let turned = format!("[{last}..{first}]");
        Diagnostic::new(Rule::RangeUpsideDown, site, format!("the elements of `{}` are counted downwards", name.value))
            .here("the smaller number comes first")
            .help(format!("write `{}{turned}`", name.value))
            .fix(site, turned)
    } else if last.saturating_sub(first) >= i128::from(MOST_ELEMENTS) {
        let count = last.saturating_sub(first).saturating_add(1);
        Diagnostic::new(Rule::ArrayTooLarge, site, format!("`{}` would have {count} elements", name.value))
            .here(format!("an array has at most {MOST_ELEMENTS}"))
            .help("even one bit each would not fit in any frame: correct the last number")
    } else if first < 0 || last > i128::from(u32::MAX) {
        Diagnostic::new(
            Rule::ArrayTooLarge,
            site,
            format!("the elements of `{}` have numbers out of bounds", name.value),
        )
        .here("0 to 4294967295 is possible")
    } else {
        let numbers = first as u32..=last as u32;
        return stride(signal, scope, messages, first == last).map(|step| Some(Array { numbers, step })).ok_or(());
    };
    messages.push(message);
    Err(())
}

fn stride(signal: &tree::Signal, scope: &Scope, messages: &mut Messages, is_single: bool) -> Option<Stride> {
    let site = scope.site(signal.extras().elements.as_ref().map_or(signal.head.name.span, |elements| elements.span));
    let Some(step) = &signal.extras().step else {
        if is_single {
            return Some(Stride::Bytes(0));
        }
        if !signal.incomplete {
            messages.push(
                Diagnostic::new(
                    Rule::StepMissing,
                    site,
                    format!("how far apart the elements of `{}` are is not said", signal.head.name.value),
                )
                .here("several elements")
                .help("write the distance behind the place: `step 2 bytes` or `step 12 bits`"),
            );
        }
        return None;
    };
    match step.value {
        Step::Bytes(0) | Step::Bits(0) => {
            let message = "a step of 0 puts all elements in the same place";
            messages.push(Diagnostic::new(Rule::StepMissing, scope.site(step.span), message).here("no distance"));
            None
        }
        Step::Bytes(bytes) => Some(Stride::Bytes(bytes)),
        // Whole bytes are the same way in both orders.
        Step::Bits(bits) if bits % 8 == 0 => Some(Stride::Bytes(bits / 8)),
        Step::Bits(bits) => match own_order(signal, scope) {
            Some(order) => Some(Stride::Bits(bits, order)),
            None => {
                say_direction(scope, step, messages);
                None
            }
        },
    }
}

/// The order in which the bits of a signal go on: as it is said, or as the ends imply.
fn own_order(signal: &tree::Signal, scope: &Scope) -> Option<ByteOrder> {
    let place = signal.place.as_ref()?;
    let said = place.order.map(|order| order.value);
    said.or_else(|| place.pieces().find_map(|piece| implied(&piece.value)))
        .or_else(|| scope.settings.order.and_then(|order| order.only()))
}

fn implied(piece: &Piece) -> Option<ByteOrder> {
    let (msb, lsb) = match piece {
        Piece::Counted { order, .. } => return *order,
        Piece::Bits { msb, lsb } => (msb.byte, lsb.byte),
        Piece::Bytes { msb: tree::ByteIndex::Number(msb), lsb: tree::ByteIndex::Number(lsb) } => {
            (u32::try_from(msb.value).ok()?, u32::try_from(lsb.value).ok()?)
        }
        Piece::Bytes { .. } | Piece::Bit(_) | Piece::Byte(_) => return None,
    };
    match msb.cmp(&lsb) {
        std::cmp::Ordering::Less => Some(ByteOrder::Motorola),
        std::cmp::Ordering::Equal => None,
        std::cmp::Ordering::Greater => Some(ByteOrder::Intel),
    }
}

fn say_direction(scope: &Scope, step: &Spanned<Step>, messages: &mut Messages) {
    let up = order_word(ByteOrder::Intel);
    let down = order_word(ByteOrder::Motorola);
    messages.push(
        Diagnostic::new(Rule::OrderMissing, scope.site(step.span), "which way the elements go on is not clear")
            .here("steps of bits need a byte order where the place lies in one byte")
            .help(format!("write `{up}` behind the place if they go up (bit 0 to bit 7, then the next byte)"))
            .help(format!("write `{down}` behind the place if they go down (bit 7 to bit 0, then the next byte)")),
    );
}

impl Array {
    /// The content of the element that comes `index` steps after the first one; `None` beyond any payload.
    pub(crate) fn content(&self, first: &Content, index: u32) -> Option<Content> {
        Some(match first {
            Content::Number { field, kind } => Content::Number { field: self.step.moved(field, index)?, kind: *kind },
            Content::Text { bytes, charset, size } => {
                Content::Text { bytes: self.step.moved_bytes(*bytes, index)?, charset: *charset, size: *size }
            }
            Content::Bytes { bytes, size } => {
                Content::Bytes { bytes: self.step.moved_bytes(*bytes, index)?, size: *size }
            }
        })
    }
}

impl Stride {
    fn moved(self, field: &Field, steps: u32) -> Option<Field> {
        match self {
            Self::Bytes(bytes) => field.shifted(bytes.checked_mul(steps)?),
            Self::Bits(bits, order) => {
                let distance = u64::from(bits) * u64::from(steps);
                let places: Option<Vec<Place>> =
                    field.places().iter().map(|place| moved_by_bits(place, distance, order)).collect();
                Field::of(&places?).ok()
            }
        }
    }

    fn moved_bytes(self, bytes: ByteSpan, steps: u32) -> Option<ByteSpan> {
        let Self::Bytes(step) = self else { return None };
        let distance = step.checked_mul(steps)?;
        let last = match bytes.last {
            Some(last) => Some(last.checked_add(distance)?),
            None => None,
        };
        Some(ByteSpan { first: bytes.first.checked_add(distance)?, last })
    }
}

/// A place some bits further in an order: Intel counts bits upwards through the bytes, Motorola downwards in each of them.
fn moved_by_bits(place: &Place, distance: u64, order: ByteOrder) -> Option<Place> {
    let turn = |bit: u8| if order == ByteOrder::Intel { bit } else { 7 - bit };
    let moved = |end: BitPosition| {
        let index = u64::from(end.byte) * 8 + u64::from(turn(end.bit)) + distance;
        Some(BitPosition::new(u32::try_from(index / 8).ok()?, turn((index % 8) as u8)))
    };
    // A place that came to lie across bytes has to keep its order: the significant ends are those of the order it moves in.
    let (msb, lsb) = (moved(place.msb())?, moved(place.lsb())?);
    let found = Place::between(msb, lsb).ok()?;
    (found.width() == place.width()).then_some(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn place(msb: (u32, u8), lsb: (u32, u8)) -> Place {
        Place::between(BitPosition::new(msb.0, msb.1), BitPosition::new(lsb.0, lsb.1)).expect("a good place")
    }

    #[test]
    fn bits_go_on_in_their_order() {
        let intel = place((1, 3), (0, 0));
        assert_eq!(moved_by_bits(&intel, 12, ByteOrder::Intel), Some(place((2, 7), (1, 4))));
        let motorola = place((0, 7), (1, 4));
        assert_eq!(moved_by_bits(&motorola, 12, ByteOrder::Motorola), Some(place((1, 3), (2, 0))));
    }

    #[test]
    fn a_place_in_one_byte_may_come_to_lie_across_two() {
        let low = place((0, 4), (0, 0));
        assert_eq!(moved_by_bits(&low, 5, ByteOrder::Intel), Some(place((1, 1), (0, 5))));
        let high = place((0, 7), (0, 3));
        assert_eq!(moved_by_bits(&high, 5, ByteOrder::Motorola), Some(place((0, 2), (1, 6))));
        assert_eq!(moved_by_bits(&high, 10, ByteOrder::Motorola), Some(place((1, 5), (1, 1))));
    }
}
