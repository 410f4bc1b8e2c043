//! Which bits of a payload are taken.

use std::ops::Range;

use wirelore_bits::{BitPosition, Field, Place};
use wirelore_model::{Content, Signal};

use super::runs::Runs;

/// The bytes whose bits lie side by side: nearly all frames have no more (CAN FD, ISO 11898-1).
const BYTES: u32 = 64;

/// No payload reaches beyond this byte.
const FARTHEST: u32 = 0xFFFF;

/// Payload bytes in one word of the map.
const WORD_BYTES: u32 = 8;

/// A map of the bits of a payload: bit 0 of byte 0 is the lowest bit of the first word.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Bits {
    words: [u64; (BYTES / WORD_BYTES) as usize],
    /// The bits that lie behind those, of long messages, counted from the beginning of the payload.
    rest: Runs,
}

impl Bits {
    /// The bits of some fields.
    pub(crate) fn of_fields(fields: &[Field]) -> Self {
        let mut bits = Self::default();
        for place in fields.iter().flat_map(|field| field.places()) {
            bits.add_place(place);
        }
        bits
    }

    /// All bits of some bytes.
    pub(crate) fn of_bytes(bytes: Range<u32>) -> Self {
        let mut bits = Self::default();
        bits.add_bytes(bytes);
        bits
    }

    /// The bits of a signal in a payload of so many bytes.
    fn of_content(content: &Content, length_bytes: u32) -> Self {
        let mut bits = Self::default();
        match content {
            Content::Number { field, .. } => field.places().iter().for_each(|place| bits.add_place(place)),
            Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => {
                bits.add_bytes(bytes.first..bytes.last.map_or(length_bytes, |last| last.saturating_add(1)));
            }
        }
        bits
    }

    /// The bits of a signal and of what belongs to it in a payload of so many bytes.
    pub(crate) fn of_signal(signal: &Signal, length_bytes: u32) -> Self {
        let mut bits = Self::of_content(&signal.content, length_bytes);
        for field in signal.more_fields() {
            field.places().iter().for_each(|place| bits.add_place(place));
        }
        bits
    }

    fn add_place(&mut self, place: &Place) {
        let (msb, lsb) = (place.msb(), place.lsb());
        for byte in place.first_byte()..=place.last_byte().min(FARTHEST) {
            let low = if byte == lsb.byte { lsb.bit } else { 0 };
            let high = if byte == msb.byte { msb.bit } else { 7 };
            self.add_byte(byte, (0xFF << low) & (0xFF >> (7 - high)));
        }
    }

    /// Takes in some bits of a byte, which stand side by side.
    fn add_byte(&mut self, byte: u32, bits: u8) {
        match self.words.get_mut((byte / WORD_BYTES) as usize) {
            Some(word) => *word |= u64::from(bits) << (byte % WORD_BYTES * 8),
            None => self.rest.add(byte * 8 + bits.trailing_zeros(), byte * 8 + 8 - bits.leading_zeros()),
        }
    }

    fn add_bytes(&mut self, bytes: Range<u32>) {
        let end = bytes.end.min(FARTHEST + 1);
        (bytes.start..end.min(BYTES)).for_each(|byte| self.add_byte(byte, 0xFF));
        self.rest.add(bytes.start.max(BYTES).saturating_mul(8), end * 8);
    }

    /// Takes in all bits of another map.
    pub(crate) fn add(&mut self, other: &Self) {
        self.words.iter_mut().zip(other.words).for_each(|(word, other)| *word |= other);
        self.rest.add_all(&other.rest);
    }

    /// The first bit that both have.
    pub(crate) fn common(&self, other: &Self) -> Option<BitPosition> {
        let position = |bit: u32| BitPosition::new(bit / 8, (bit % 8) as u8);
        let common = self.words.iter().zip(&other.words).map(|(one, other)| one & other);
        let in_words = common.zip(0..).find(|&(common, _)| common != 0);
        let bit = in_words.map(|(word, index)| index * WORD_BYTES * 8 + word.trailing_zeros());
        bit.or_else(|| self.rest.common(&other.rest)).map(position)
    }

    /// Whether both have a bit.
    pub(crate) fn meets(&self, other: &Self) -> bool {
        let meet = |(one, other): (&u64, &u64)| one & other != 0;
        self.words.iter().zip(&other.words).any(meet) || self.rest.common(&other.rest).is_some()
    }
}

#[cfg(test)]
mod tests {
    use wirelore_model::ByteSpan;

    use super::*;

    fn taken(bits: &Bits) -> Vec<BitPosition> {
        let bit_of = |(byte, bit): (u32, u8)| (bits.words[byte as usize / 8] >> (byte % 8 * 8 + u32::from(bit))) & 1;
        let all = (0..BYTES).flat_map(|byte| (0..8).map(move |bit| (byte, bit)));
        all.filter(|&at| bit_of(at) == 1).map(|(byte, bit)| BitPosition::new(byte, bit)).collect()
    }

    fn field(msb: (u32, u8), lsb: (u32, u8)) -> Field {
        let place = Place::between(BitPosition::new(msb.0, msb.1), BitPosition::new(lsb.0, lsb.1));
        Field::from(place.expect("a good place"))
    }

    #[test]
    fn both_orders_take_the_bits_between_their_ends() {
        for (msb, lsb) in [((1, 4), (0, 0)), ((0, 4), (1, 0)), ((3, 1), (1, 5)), ((2, 6), (2, 2)), ((0, 0), (2, 7))] {
            let field = field(msb, lsb);
            let taken = taken(&Bits::of_fields(&[field]));
            let mut expected: Vec<_> = field.places()[0].positions().collect();
            expected.sort_unstable();
            assert_eq!(taken, expected, "{msb:?}..{lsb:?}");
        }
    }

    #[test]
    fn long_messages_have_bits_far_behind() {
        let one = Bits::of_fields(&[field((1, 7), (1, 0)), field((4_070, 7), (4_071, 4))]);
        let mut both = Bits::of_fields(&[field((64, 0), (64, 0))]);
        both.add(&one);
        let other = Bits::of_fields(&[field((4_071, 5), (4_071, 0))]);
        assert_eq!(both.common(&other), Some(BitPosition::new(4_071, 4)));
        assert!(!both.meets(&Bits::of_fields(&[field((4_071, 3), (4_071, 0)), field((65, 7), (65, 0))])));
        let behind = |first, last| {
            let content = Content::Bytes { bytes: ByteSpan { first, last }, size: None };
            Bits::of_content(&content, 5_000)
        };
        assert_eq!(both.common(&behind(3, None)), Some(BitPosition::new(64, 0)));
        assert_eq!(both.common(&behind(66, Some(4_070))), Some(BitPosition::new(4_070, 0)));
        assert!(!both.meets(&behind(4_072, None)) && !both.meets(&behind(66, Some(4_069))));
    }

    #[test]
    fn open_ends_reach_to_the_end_of_the_payload() {
        let open = Content::Bytes { bytes: ByteSpan { first: 6, last: None }, size: None };
        assert_eq!(taken(&Bits::of_content(&open, 8)).len(), 16);
        assert_eq!(taken(&Bits::of_content(&open, 4)).len(), 0);
    }

    #[test]
    fn the_first_common_bit_is_found() {
        let (one, other) = (Bits::of_fields(&[field((1, 4), (0, 0))]), Bits::of_fields(&[field((1, 7), (1, 3))]));
        assert!(one.meets(&other));
        assert_eq!(one.common(&other), Some(BitPosition::new(1, 3)));
        let (one, other) = (Bits::of_bytes(9..30), Bits::of_fields(&[field((28, 7), (28, 5))]));
        assert_eq!(one.common(&other), Some(BitPosition::new(28, 5)));
    }

    #[test]
    fn the_last_byte_that_a_payload_can_have_is_taken() {
        let (last, other) =
            (Bits::of_bytes(FARTHEST..FARTHEST + 1), Bits::of_fields(&[field((FARTHEST, 2), (FARTHEST, 0))]));
        assert_eq!(last.common(&other), Some(BitPosition::new(FARTHEST, 0)));
    }
}
