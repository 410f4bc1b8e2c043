//! Does the byte order that a place's ends imply agree with what is said elsewhere?

use wirelore_bits::{BitPosition, ByteOrder, Place};

use crate::syntax::tree::{self, Anchor, Piece};
use crate::{Diagnostic, Rule, Span, Spanned};

use super::place::{Placer, from_anchor};
use super::settings::{Counting, Expectation, order_name, order_word};

/// Says so where a piece's ends contradict the word behind the place, or the order that is expected there.
pub(super) fn check(placer: &mut Placer<'_>, written: &tree::Place, piece: &Spanned<Piece>, place: Place) {
    if !place.spans_bytes() || matches!(piece.value, Piece::Counted { .. }) {
        return;
    }
    let message = match (written.order, placer.scope.settings.order) {
        (Some(word), _) if word.value != place.order() => against_word(placer, word, piece, place),
        (None, Some(expected)) if expected.only().is_some_and(|order| order != place.order()) => {
            against_expectation(placer, expected, piece, place)
        }
        _ => return,
    };
    placer.messages.push(message);
    placer.is_uncertain = true;
}

fn against_word(placer: &Placer<'_>, word: Spanned<ByteOrder>, piece: &Spanned<Piece>, place: Place) -> Diagnostic {
    let (is, said) = (place.order(), word.value);
    let counting = placer.scope.settings.counting;
    let text = format!(
        "`{}` is {}, {} bits, and the word behind it says {}",
        spelled(&piece.value, place, counting),
        order_name(is),
        place.width(),
        order_name(said)
    );
    Diagnostic::new(Rule::OrderContradictsEnds, placer.scope.site(piece.span), text)
        .here(reading(is))
        .remark(placer.scope.site(word.span), format!("{} is said here", order_name(said)))
        .help(format!("for {} write `{}`", order_name(said), spelled(&piece.value, swapped(place), counting)))
        .help(format!("if the ends are right, take the word away or write `{}`", order_word(is)))
}

fn against_expectation(placer: &Placer<'_>, expected: Expectation, piece: &Spanned<Piece>, place: Place) -> Diagnostic {
    let is = place.order();
    let counting = placer.scope.settings.counting;
    let site = placer.scope.site(piece.span);
    let other = spelled(&piece.value, swapped(place), counting);
    let expected_name = if is == ByteOrder::Intel { "Motorola" } else { "Intel" };
    let start =
        format!("`{}` is {}, {} bits, and", spelled(&piece.value, place, counting), order_name(is), place.width());
    let way_out = format!("for {expected_name} write `{other}`");
    match expected.site {
        Some(stated) => Diagnostic::new(
            Rule::OrderContradictsEnds,
            site,
            format!("{start} {expected_name} is stated for this place"),
        )
        .here(reading(is))
        .remark(stated, "stated here")
        .help(way_out)
        .help(format!("if the ends are right, write `{}` behind them, or `order mixed` in the frame", order_word(is))),
        None => Diagnostic::new(
            Rule::OrderContradictsEnds,
            site,
            format!("{start} parameter groups are sent least significant byte first"),
        )
        .here(reading(is))
        .help(format!("{way_out}: the most significant byte comes last (SAE J1939-71)"))
        .help("if this group really is sent otherwise, state `order mixed` or `order motorola` in the frame")
        .fix(site, other),
    }
}

fn reading(order: ByteOrder) -> &'static str {
    match order {
        ByteOrder::Intel => "the more significant part comes in the later byte",
        ByteOrder::Motorola => "the more significant part comes in the earlier byte",
    }
}

/// The place of the same width in the other order: its ends with their bytes exchanged.
fn swapped(place: Place) -> Place {
    let (msb, lsb) = (place.msb(), place.lsb());
    Place::between(BitPosition::new(lsb.byte, msb.bit), BitPosition::new(msb.byte, lsb.bit)).unwrap_or(place)
}

/// A place in the form in which the piece was written.
fn spelled(piece: &Piece, place: Place, counting: Counting) -> String {
    match piece {
        Piece::Byte(_) | Piece::Bytes { .. } => {
            format!("bytes {}..{}", counting.byte(place.msb().byte), counting.byte(place.lsb().byte))
        }
        _ => spelled_bits(place, counting),
    }
}

fn spelled_bits(place: Place, counting: Counting) -> String {
    format!("bits {}..{}", counting.position(place.msb()), counting.position(place.lsb()))
}

/// Says that the form with a width needs an order, and what each order would make of it.
pub(super) fn say_missing(placer: &mut Placer<'_>, anchor: Anchor, at: BitPosition, width: u32, span: Span) {
    let site = placer.scope.site(span);
    let counting = placer.scope.settings.counting;
    let mut message =
        Diagnostic::new(Rule::OrderMissing, site, "a start and a width make a place only together with a byte order")
            .here("write `intel` or `motorola` behind it");
    for order in [ByteOrder::Intel, ByteOrder::Motorola] {
        message = message.help(match from_anchor(anchor, at, width, order) {
            Ok(place) => format!("with `{}` it is `{}`", order_word(order), spelled_bits(place, counting)),
            Err(_) => format!("with `{}` it would run out of the payload", order_word(order)),
        });
    }
    placer.messages.push(message);
}
