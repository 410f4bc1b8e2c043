//! One bit of a payload, named BYTE.BIT.

use core::fmt;
use core::str::FromStr;

/// One bit of a payload.
///
/// Bytes count from 0 in the order in which they are sent; bit 7 is the most significant of its byte and bit 0 the least.
/// Positions sort by byte, then by bit. Written and read as `BYTE.BIT`, for example `6.4`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BitPosition {
    /// Index of the byte, from 0, in sending order.
    pub byte: u32,
    /// Index of the bit in its byte, 0 (least significant) to 7 (most significant).
    pub bit: u8,
}

impl BitPosition {
    /// The position `bit` of byte `byte`. Nothing is checked here: a [`Place`](crate::Place) refuses bits above 7.
    pub const fn new(byte: u32, bit: u8) -> Self {
        Self { byte, bit }
    }

    /// The bit's number when bits are counted upwards from bit 0 of byte 0: one more is one bit more significant in Intel order.
    pub(crate) const fn intel_index(self) -> u64 {
        self.byte as u64 * 8 + self.bit as u64
    }

    /// The bit's number when bits are counted downwards from bit 7 of byte 0: one more is one bit less significant in Motorola order.
    pub(crate) const fn motorola_index(self) -> u64 {
        self.byte as u64 * 8 + 7 - self.bit as u64
    }

    /// The inverse of [`Self::intel_index`]; `None` past the last byte a place may have.
    pub(crate) const fn from_intel_index(index: u64) -> Option<Self> {
        let byte = index / 8;
        if byte >= u32::MAX as u64 {
            return None;
        }
        Some(Self::new(byte as u32, (index % 8) as u8))
    }

    /// The inverse of [`Self::motorola_index`]; `None` past the last byte a place may have.
    pub(crate) const fn from_motorola_index(index: u64) -> Option<Self> {
        match Self::from_intel_index(index) {
            Some(mirrored) => Some(Self::new(mirrored.byte, 7 - mirrored.bit)),
            None => None,
        }
    }
}

impl fmt::Display for BitPosition {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.{}", self.byte, self.bit)
    }
}

/// A text is not a bit position of the form `BYTE.BIT` with a bit from 0 to 7.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PositionTextError;

impl fmt::Display for PositionTextError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a bit position is read from text of the form BYTE.BIT with a bit from 0 to 7, such as 6.4")
    }
}

impl core::error::Error for PositionTextError {}

impl FromStr for BitPosition {
    type Err = PositionTextError;

    fn from_str(text: &str) -> Result<Self, PositionTextError> {
        let (byte, bit) = text.split_once('.').ok_or(PositionTextError)?;
        // The number parser of the standard library takes a sign, which a position does not have.
        let plain = !byte.starts_with('+') && !bit.starts_with('+');
        match (byte.parse(), bit.parse()) {
            (Ok(byte), Ok(bit)) if plain && bit <= 7 => Ok(Self::new(byte, bit)),
            _ => Err(PositionTextError),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn positions_sort_by_byte_then_bit() {
        assert!(BitPosition::new(0, 7) < BitPosition::new(1, 0));
        assert!(BitPosition::new(1, 0) < BitPosition::new(1, 1));
    }

    #[test]
    fn text_is_read_strictly() {
        assert_eq!("6.4".parse(), Ok(BitPosition::new(6, 4)));
        assert_eq!("4294967295.7".parse(), Ok(BitPosition::new(u32::MAX, 7)));
        for bad in
            ["", ".", "6", "6.", ".4", "6.8", "6.10", "+6.4", "6.+4", "-1.0", "6.4.0", " 6.4", "6,4", "4294967296.0"]
        {
            assert_eq!(bad.parse::<BitPosition>(), Err(PositionTextError), "{bad:?}");
        }
    }

    #[test]
    fn indices_are_inverses() {
        for byte in [0, 1, 63, 4_294_967_294] {
            for bit in 0..8 {
                let position = BitPosition::new(byte, bit);
                assert_eq!(BitPosition::from_intel_index(position.intel_index()), Some(position));
                assert_eq!(BitPosition::from_motorola_index(position.motorola_index()), Some(position));
            }
        }
        assert_eq!(BitPosition::from_intel_index(u64::from(u32::MAX) * 8), None);
    }
}
