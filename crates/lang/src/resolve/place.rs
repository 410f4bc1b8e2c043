//! Places: from the text's positions to bits of the payload.

use wirelore_bits::{BitPosition, ByteOrder, Field, FieldError, Place, PlaceError};

use crate::syntax::tree::{self, Anchor, ByteIndex, FlatPosition, Integer, Piece, Position};
use crate::{Diagnostic, Rule, Span, Spanned};

use super::flat::Scope;
use super::messages::Messages;
use super::order;

/// No frame of any network reaches this byte.
pub(super) const FARTHEST_BYTE: i128 = 0xFFFF;

/// Reads the places of one scope. Results are relative to the scope's byte 0; the caller moves them by [`Scope::base`].
#[derive(Debug)]
pub(crate) struct Placer<'a> {
    pub(crate) scope: &'a Scope,
    pub(crate) messages: &'a mut Messages,
    /// The payload's length in bytes, where it is always the same.
    pub(crate) fixed_length: Option<u32>,
    /// A place contradicts what is said of its order: where its bits are is not certain.
    pub(crate) is_uncertain: bool,
}

impl<'a> Placer<'a> {
    pub(crate) fn new(scope: &'a Scope, messages: &'a mut Messages, fixed_length: Option<u32>) -> Self {
        Self { scope, messages, fixed_length, is_uncertain: false }
    }
}

impl Placer<'_> {
    /// The bits of a number.
    pub(crate) fn field(&mut self, place: &tree::Place) -> Option<Field> {
        if place.others.is_empty() {
            let found = self.piece(&place.first, place.order)?;
            order::check(self, place, &place.first, found);
            return Some(found.into());
        }
        let count = 1 + place.others.len();
        let mut places = Vec::with_capacity(count);
        for piece in place.pieces() {
            let found = self.piece(piece, place.order);
            if let Some(found) = found {
                order::check(self, place, piece, found);
                places.push(found);
            }
        }
        if places.len() < count {
            return None;
        }
        Field::of(&places).map_err(|error| self.say_field(error, place)).ok()
    }

    /// One piece of a place.
    pub(crate) fn piece(&mut self, piece: &Spanned<Piece>, order: Option<Spanned<ByteOrder>>) -> Option<Place> {
        match &piece.value {
            Piece::Bits { msb, lsb } => {
                let (msb, lsb) = (self.position(msb), self.position(lsb));
                self.between(msb?, lsb?, piece)
            }
            Piece::Bit(position) => {
                let position = self.position(position)?;
                self.between(position, position, piece)
            }
            Piece::Byte(byte) => {
                let byte = self.byte(*byte)?;
                self.between(BitPosition::new(byte, 7), BitPosition::new(byte, 0), piece)
            }
            Piece::Bytes { msb, lsb } => {
                let (msb, lsb) = (self.byte(*msb), self.byte(*lsb));
                self.between(BitPosition::new(msb?, 7), BitPosition::new(lsb?, 0), piece)
            }
            Piece::Counted { anchor, at, width, order: own } => {
                let at = self.flat(at);
                let width = self.width(width);
                match own.or(order.map(|order| order.value)) {
                    Some(order) => self.counted(*anchor, at?, width?, order, piece.span),
                    None => {
                        order::say_missing(self, *anchor, at?, width?, piece.span);
                        None
                    }
                }
            }
        }
    }

    /// BYTE.BIT, with the scope's way of counting taken into account.
    pub(crate) fn position(&mut self, position: &Position) -> Option<BitPosition> {
        let counting = self.scope.settings.counting;
        let first = counting.first();
        let Some(bit) = position.bit.checked_sub(first).filter(|bit| *bit <= 7) else {
            let message = Diagnostic::new(
                Rule::BitOutOfRange,
                self.scope.site(position.span),
                format!("a byte has no bit {}", position.bit),
            )
            .here(format!("bits go from {first} to {}", first + 7));
            self.messages.push(message.help(match (position.bit, first) {
                (8, 0) => "if the document counts from 1, write `counting from 1` at the top of the file or frame",
                (0, 1) => "this file or frame says `counting from 1`; take that out if the document counts from 0",
                _ => "a position is BYTE.BIT; for flat numbers write `lsb N width N intel` or `lsb N width N motorola`",
            }));
            return None;
        };
        let byte = self.counted_byte(position.byte.into(), position.span)?;
        let bit = if counting.bits_from_top { 7 - bit } else { bit };
        Some(BitPosition::new(byte, bit as u8))
    }

    /// A byte number, with the scope's way of counting taken into account.
    pub(crate) fn byte(&mut self, byte: ByteIndex) -> Option<u32> {
        match byte {
            ByteIndex::Number(number) => self.counted_byte(number.value, number.span),
            ByteIndex::Last(span) => self.last_byte(span),
        }
    }

    fn counted_byte(&mut self, written: i128, span: Span) -> Option<u32> {
        let first = self.scope.settings.counting.first();
        let byte = written.checked_sub(first.into())?;
        if (0..=FARTHEST_BYTE).contains(&byte) {
            return Some(byte as u32);
        }
        let site = self.scope.site(span);
        self.messages.push(if byte < 0 {
            Diagnostic::new(Rule::BitOutOfRange, site, format!("there is no byte {written}"))
                .here(format!("bytes are counted from {first} here"))
        } else {
            Diagnostic::new(Rule::OutsideFrame, site, format!("no frame reaches byte {written}"))
                .here("far beyond the longest payload")
        });
        None
    }

    fn last_byte(&mut self, span: Span) -> Option<u32> {
        let site = self.scope.site(span);
        let Some(length) = self.fixed_length else {
            self.messages.push(
                Diagnostic::new(Rule::LengthUnknown, site, "which byte is the last one is not known")
                    .here("counted from the end of the payload")
                    .help("state one length for the frame, such as `length 8`, or write the byte's number"),
            );
            return None;
        };
        let byte = length.checked_sub(1).and_then(|last| last.checked_sub(self.scope.base));
        if byte.is_none() {
            let message = format!("the payload ends before this, with {length} bytes");
            self.messages.push(Diagnostic::new(Rule::OutsideFrame, site, message));
        }
        byte
    }

    /// A place from its two ends.
    fn between(&mut self, msb: BitPosition, lsb: BitPosition, piece: &Spanned<Piece>) -> Option<Place> {
        Place::between(msb, lsb).map_err(|error| self.say_place(error, msb, lsb, piece.span)).ok()
    }

    fn counted(&mut self, anchor: Anchor, at: BitPosition, width: u32, order: ByteOrder, span: Span) -> Option<Place> {
        match from_anchor(anchor, at, width, order) {
            Ok(place) => Some(place),
            Err(error) => {
                self.say_place(error, at, at, span);
                None
            }
        }
    }

    fn width(&mut self, width: &Integer) -> Option<u32> {
        if (1..=64).contains(&width.value) {
            return Some(width.value as u32);
        }
        let message = Diagnostic::new(
            Rule::SignalTooWide,
            self.scope.site(width.span),
            format!("a number cannot have {} bits", width.value),
        );
        self.messages.push(message.here("1 to 64 bits are possible"));
        None
    }

    fn flat(&mut self, at: &FlatPosition) -> Option<BitPosition> {
        let number = match at {
            FlatPosition::Position(position) => return self.position(position),
            FlatPosition::Flat(number) => number,
        };
        if (0..=FARTHEST_BYTE * 8 + 7).contains(&number.value) {
            return Some(BitPosition::new((number.value / 8) as u32, (number.value % 8) as u8));
        }
        let message = format!("no frame has a bit {}", number.value);
        let message = Diagnostic::new(Rule::OutsideFrame, self.scope.site(number.span), message);
        self.messages.push(message.here("flat numbers are byte * 8 + bit"));
        None
    }

    fn say_place(&mut self, error: PlaceError, msb: BitPosition, lsb: BitPosition, span: Span) {
        let site = self.scope.site(span);
        let counting = self.scope.settings.counting;
        self.messages.push(match error {
            PlaceError::EndsUpsideDown => {
                let swapped = format!("bits {}..{}", counting.position(lsb), counting.position(msb));
                Diagnostic::new(Rule::EndsUpsideDown, site, "the ends of this place are upside down")
                    .here("a place goes from its most significant bit to its least significant one")
                    .help(format!("write `{swapped}`"))
                    .fix(site, swapped)
            }
            PlaceError::TooWide { width } => {
                let bytes = width.div_ceil(8);
                Diagnostic::new(Rule::SignalTooWide, site, format!("this place has {width} bits, and a number has at most 64"))
                    .here(format!("from {} to {}", counting.position(msb), counting.position(lsb)))
                    .help(format!("check both ends; for {bytes} bytes that are shown as they are, give the signal the kind `bytes`"))
            }
            PlaceError::ZeroWidth | PlaceError::BitOutOfRange { .. } | PlaceError::OutsidePayload => {
                Diagnostic::new(Rule::OutsideFrame, site, "this place begins before byte 0 or ends beyond any payload")
                    .here("runs out of the payload")
                    .help("check the start, the width and the order: Motorola places grow towards byte 0 from their lsb, Intel ones from their msb")
            }
        });
    }

    fn say_field(&mut self, error: FieldError, place: &tree::Place) {
        let site = self.scope.site(place.span);
        let piece_site =
            |index: usize| self.scope.site(place.pieces().nth(index).map_or(place.span, |piece| piece.span));
        self.messages.push(match error {
            FieldError::Empty => return,
            FieldError::TooManyPieces { count } => Diagnostic::new(
                Rule::SignalTooWide,
                site,
                format!("a signal is put together from at most 4 pieces, and this one has {count}"),
            )
            .help("join pieces that touch each other"),
            FieldError::TooWide { width } => Diagnostic::new(
                Rule::SignalTooWide,
                site,
                format!("the pieces have {width} bits together, and a number has at most 64"),
            )
            .help("check the ends of each piece, or describe them as signals of their own"),
            FieldError::Overlap { first, second } => Diagnostic::new(
                Rule::SignalOverlap,
                piece_site(second),
                "this piece shares bits with another piece of the same signal",
            )
            .remark(piece_site(first), "the other piece")
            .help("each bit of the payload can only be in one piece"),
        });
    }
}

/// A place from one end, a width and an order.
pub(super) fn from_anchor(anchor: Anchor, at: BitPosition, width: u32, order: ByteOrder) -> Result<Place, PlaceError> {
    match anchor {
        Anchor::Lsb => Place::from_lsb(at, width, order),
        Anchor::Msb => Place::from_msb(at, width, order),
    }
}

#[cfg(test)]
mod tests;
