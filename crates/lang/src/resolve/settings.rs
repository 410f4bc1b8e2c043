//! What holds for a whole file, frame or page: how positions are counted, which byte order is expected, whether values are marked.

use wirelore_bits::{BitPosition, ByteOrder};

use crate::syntax::tree::{BodyItem, BodyKind, OrderWord};
use crate::{FileId, Site};

use super::messages::at;

/// How bytes and bits are numbered in the text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Counting {
    /// Bytes and bits begin at 1.
    pub(crate) from_one: bool,
    /// The first bit of a byte is its most significant one.
    pub(crate) bits_from_top: bool,
}

/// Which byte order is expected, and why.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Expectation {
    /// `intel`, `motorola` or `mixed`.
    pub(crate) word: OrderWord,
    /// Where it is stated; `None`: it follows from the parameter group.
    pub(crate) site: Option<Site>,
}

/// What holds at a place of the text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Settings {
    pub(crate) counting: Counting,
    pub(crate) order: Option<Expectation>,
    /// The not-available and error values of SAE J1939 apply.
    pub(crate) marks_j1939: bool,
}

impl Counting {
    /// The number of the first byte, and of the first bit of a byte.
    pub(crate) fn first(self) -> u32 {
        u32::from(self.from_one)
    }

    /// A byte as the author counts it.
    pub(crate) fn byte(self, byte: u32) -> u32 {
        byte.saturating_add(self.first())
    }

    /// A bit position as the author counts it.
    pub(crate) fn position(self, position: BitPosition) -> String {
        let bit = if self.bits_from_top { 7 - position.bit.min(7) } else { position.bit };
        format!("{}.{}", self.byte(position.byte), u32::from(bit) + self.first())
    }
}

impl Expectation {
    /// The one order that is expected, if only one is.
    pub(crate) fn only(self) -> Option<ByteOrder> {
        match self.word {
            OrderWord::Only(order) => Some(order),
            OrderWord::Mixed => None,
        }
    }
}

impl Settings {
    /// What holds inside a block: what holds around it, changed by the block's own statements, wherever in it they stand.
    pub(crate) fn inside(mut self, file: FileId, items: &[BodyItem]) -> Self {
        for item in items {
            match &item.kind {
                BodyKind::Order(word) => {
                    self.order = Some(Expectation { word: word.value, site: Some(at(file, word.span)) })
                }
                BodyKind::CountingFrom(first) => self.counting.from_one = first.value == 1,
                BodyKind::CountingBitsFromTop => self.counting.bits_from_top = true,
                BodyKind::MarksJ1939 => self.marks_j1939 = true,
                _ => {}
            }
        }
        self
    }
}

/// The order's name in a sentence.
pub(crate) fn order_name(order: ByteOrder) -> &'static str {
    match order {
        ByteOrder::Intel => "Intel",
        ByteOrder::Motorola => "Motorola",
    }
}

/// The order's keyword.
pub(crate) fn order_word(order: ByteOrder) -> &'static str {
    match order {
        ByteOrder::Intel => "intel",
        ByteOrder::Motorola => "motorola",
    }
}
