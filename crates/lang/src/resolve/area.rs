//! Places of whole bytes, and places that are no number: `text`, `bytes`, `unknown`, `unused`.

use wirelore_bits::{BitPosition, Field, Place};
use wirelore_model::ByteSpan;

use crate::syntax::tree::{self, ByteIndex, Piece};
use crate::{Diagnostic, Rule, Spanned};

use super::place::Placer;

/// A number of 64 bits takes this many bytes.
const BYTES_PER_FIELD: u32 = 8;

impl Placer<'_> {
    /// The bytes of a `text` or `bytes` signal.
    pub(crate) fn byte_span(&mut self, place: &tree::Place) -> Option<ByteSpan> {
        if !place.others.is_empty() {
            self.say_whole_bytes(place);
            return None;
        }
        let piece = &place.first;
        match piece.value {
            Piece::Bytes { msb, lsb: ByteIndex::Last(_) }
                if matches!(msb, ByteIndex::Number(_)) && self.scope.element.is_none() =>
            {
                Some(ByteSpan { first: self.byte(msb)?, last: None })
            }
            Piece::Bytes { msb, lsb } => {
                let (first, last) = (self.byte(msb), self.byte(lsb));
                self.rising(first?, last?, piece)
            }
            Piece::Byte(byte) => {
                let byte = self.byte(byte)?;
                Some(ByteSpan { first: byte, last: Some(byte) })
            }
            Piece::Bits { msb, lsb } => {
                let (msb, lsb) = (self.position(&msb), self.position(&lsb));
                let (msb, lsb) = (msb?, lsb?);
                if msb.bit == 7 && lsb.bit == 0 {
                    return self.rising(msb.byte, lsb.byte, piece);
                }
                self.say_whole_bytes(place);
                None
            }
            Piece::Bit(_) | Piece::Counted { .. } => {
                self.say_whole_bytes(place);
                None
            }
        }
    }

    fn rising(&mut self, first: u32, last: u32, piece: &Spanned<Piece>) -> Option<ByteSpan> {
        if first <= last {
            return Some(ByteSpan { first, last: Some(last) });
        }
        let counting = self.scope.settings.counting;
        let turned = format!("bytes {}..{}", counting.byte(last), counting.byte(first));
        let site = self.scope.site(piece.span);
        self.messages.push(
            Diagnostic::new(Rule::EndsUpsideDown, site, "text and bytes are read in the order in which they are sent")
                .here("runs backwards")
                .help(format!("write `{turned}`"))
                .fix(site, turned),
        );
        None
    }

    fn say_whole_bytes(&mut self, place: &tree::Place) {
        self.messages.push(
            Diagnostic::new(
                Rule::KindDoesNotFit,
                self.scope.site(place.span),
                "text and bytes need one run of whole bytes",
            )
            .here("not that")
            .help("write `bytes FIRST..LAST` or `bytes FIRST..end`"),
        );
    }

    /// The bits of an `unknown` or `unused` statement, in portions of at most 64 bits.
    pub(crate) fn area(&mut self, place: &tree::Place) -> Vec<Field> {
        let mut fields = Vec::new();
        for piece in place.pieces() {
            match piece.value {
                Piece::Bytes { msb, lsb } => {
                    if let (Some(one), Some(other)) = (self.byte(msb), self.byte(lsb)) {
                        whole_bytes(one.min(other), one.max(other), &mut fields);
                    }
                }
                _ => fields.extend(self.piece(piece, place.order).map(Field::from)),
            }
        }
        fields
    }
}

fn whole_bytes(first: u32, last: u32, fields: &mut Vec<Field>) {
    for start in (first..=last).step_by(BYTES_PER_FIELD as usize) {
        let end = last.min(start + BYTES_PER_FIELD - 1);
        fields.extend(Place::between(BitPosition::new(start, 7), BitPosition::new(end, 0)).map(Field::from));
    }
}
