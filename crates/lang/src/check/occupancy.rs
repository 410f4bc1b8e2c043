//! Which bits of a payload are taken.

use bitvec::array::BitArray;
use bitvec::order::Lsb0;
use wirelore_bits::{BitPosition, Field, Place};
use wirelore_model::{ByteSpan, Content};

/// The bytes that are looked at: no frame that can be described is longer (CAN FD, ISO 11898-1).
const BYTES: u32 = 64;

/// A map of the bits of a payload: bit 0 of byte 0 first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Bits(BitArray<[u64; BYTES as usize / 8], Lsb0>);

impl Bits {
    /// The bits of some fields.
    pub(crate) fn of_fields(fields: &[Field]) -> Self {
        let mut bits = Self::default();
        for place in fields.iter().flat_map(|field| field.places()) {
            bits.add_place(place);
        }
        bits
    }

    /// The bits of a signal in a payload of so many bytes.
    pub(crate) fn of_content(content: &Content, length_bytes: u32) -> Self {
        let mut bits = Self::default();
        match content {
            Content::Number { field, .. } => field.places().iter().for_each(|place| bits.add_place(place)),
            Content::Text { bytes, .. } | Content::Bytes { bytes } => bits.add_bytes(*bytes, length_bytes),
        }
        bits
    }

    fn add_place(&mut self, place: &Place) {
        let (msb, lsb) = (place.msb(), place.lsb());
        for byte in place.first_byte()..=place.last_byte().min(BYTES - 1) {
            let low = if byte == lsb.byte { lsb.bit } else { 0 };
            let high = if byte == msb.byte { msb.bit } else { 7 };
            let start = byte as usize * 8;
            self.0[start + usize::from(low)..=start + usize::from(high)].fill(true);
        }
    }

    fn add_bytes(&mut self, bytes: ByteSpan, length_bytes: u32) {
        let end = bytes.last.map_or(length_bytes, |last| last.saturating_add(1)).min(BYTES);
        if bytes.first < end {
            self.0[bytes.first as usize * 8..end as usize * 8].fill(true);
        }
    }

    /// Takes in all bits of another map.
    pub(crate) fn add(&mut self, other: &Self) {
        self.0 |= other.0;
    }

    /// The first bit that both have.
    pub(crate) fn common(&self, other: &Self) -> Option<BitPosition> {
        let index = (self.0 & other.0).first_one()?;
        Some(BitPosition::new((index / 8) as u32, (index % 8) as u8))
    }

    /// Whether both have a bit.
    pub(crate) fn meets(&self, other: &Self) -> bool {
        self.0.as_raw_slice().iter().zip(other.0.as_raw_slice()).any(|(one, other)| one & other != 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn field(msb: (u32, u8), lsb: (u32, u8)) -> Field {
        let place = Place::between(BitPosition::new(msb.0, msb.1), BitPosition::new(lsb.0, lsb.1));
        Field::from(place.expect("a good place"))
    }

    #[test]
    fn both_orders_take_the_bits_between_their_ends() {
        for (msb, lsb) in [((1, 4), (0, 0)), ((0, 4), (1, 0)), ((3, 1), (1, 5)), ((2, 6), (2, 2)), ((0, 0), (2, 7))] {
            let field = field(msb, lsb);
            let bits = Bits::of_fields(&[field]);
            let taken: Vec<_> =
                bits.0.iter_ones().map(|index| BitPosition::new((index / 8) as u32, (index % 8) as u8)).collect();
            let mut expected: Vec<_> = field.places()[0].positions().collect();
            expected.sort_unstable();
            assert_eq!(taken, expected, "{msb:?}..{lsb:?}");
        }
    }

    #[test]
    fn bits_beyond_the_longest_payload_are_left_out() {
        assert_eq!(Bits::of_fields(&[field((70, 7), (70, 0))]), Bits::default());
        let open = Content::Bytes { bytes: ByteSpan { first: 6, last: None } };
        assert_eq!(Bits::of_content(&open, 8).0.count_ones(), 16);
        assert_eq!(Bits::of_content(&open, 4).0.count_ones(), 0);
    }

    #[test]
    fn the_first_common_bit_is_found() {
        let (one, other) = (Bits::of_fields(&[field((1, 4), (0, 0))]), Bits::of_fields(&[field((1, 7), (1, 3))]));
        assert!(one.meets(&other));
        assert_eq!(one.common(&other), Some(BitPosition::new(1, 3)));
    }
}
