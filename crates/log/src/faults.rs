//! What was wrong with a frame that was damaged on the wire.

use std::fmt;
use std::ops::{BitOr, BitOrAssign};

/// The faults of one frame, a set: what its recorder says was wrong, and what its own check sequences say.
///
/// ```
/// use wirelore_log::Faults;
///
/// let faults = Faults::PARITY | Faults::CHECKSUM;
/// assert!(faults.contains(Faults::PARITY) && !faults.contains(Faults::FRAMING));
/// assert_eq!(faults.to_string(), "checksum, parity");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Faults(u16);

/// Every fault with its name, in the order of the bits.
const NAMES: [(Faults, &str); 10] = [
    (Faults::OVERFLOW, "overflow"),
    (Faults::IDENTIFIER, "identifier"),
    (Faults::CHECKSUM, "checksum"),
    (Faults::PARITY, "parity"),
    (Faults::FRAMING, "framing"),
    (Faults::FRAME_CRC, "frame CRC"),
    (Faults::HEADER_CRC, "header CRC"),
    (Faults::FRAME_END, "frame end sequence"),
    (Faults::CODING, "coding"),
    (Faults::FRAME_START, "transmission start sequence"),
];

impl Faults {
    /// Nothing was wrong.
    pub const NONE: Self = Self(0);
    /// LIN: more came than there was room for.
    pub const OVERFLOW: Self = Self(1);
    /// LIN, FlexRay: an identifier that cannot be, or a LIN header that broke off before it.
    pub const IDENTIFIER: Self = Self(1 << 1);
    /// LIN: the checksum is wrong or missing.
    pub const CHECKSUM: Self = Self(1 << 2);
    /// LIN: the parity bits of the identifier are wrong.
    pub const PARITY: Self = Self(1 << 3);
    /// LIN: a byte without its stop bit.
    pub const FRAMING: Self = Self(1 << 4);
    /// FlexRay: the check sequence of the frame is wrong.
    pub const FRAME_CRC: Self = Self(1 << 5);
    /// FlexRay: the check sequence of the header is wrong.
    pub const HEADER_CRC: Self = Self(1 << 6);
    /// FlexRay: the frame end sequence (FES) is not as it should be.
    pub const FRAME_END: Self = Self(1 << 7);
    /// FlexRay: the bits break a rule of coding.
    pub const CODING: Self = Self(1 << 8);
    /// FlexRay: the transmission start sequence (TSS) is not as it should be.
    pub const FRAME_START: Self = Self(1 << 9);

    /// All that a LIN frame can have.
    pub(crate) const OF_LIN: Self = Self(0x1F);
    /// All that a FlexRay frame can have.
    pub(crate) const OF_FLEXRAY: Self = Self(0x3E2);

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(self) -> bool {
        self == Self::NONE
    }

    /// Whether all of `other` are among these.
    #[must_use]
    pub fn contains(self, other: Self) -> bool {
        self.0 & other.0 == other.0
    }

    /// The names of these, always in the same order.
    pub fn names(self) -> impl Iterator<Item = &'static str> {
        NAMES.into_iter().filter(move |&(fault, _)| self.contains(fault)).map(|(_, name)| name)
    }

    /// The faults that stand for the set bits of `bits`.
    pub(crate) fn of_bits(bits: u8, table: &[(u8, Self)]) -> Self {
        table.iter().filter(|(bit, _)| bits & bit != 0).fold(Self::NONE, |faults, &(_, fault)| faults | fault)
    }

    /// The bits that stand for these faults.
    pub(crate) fn bits(self, table: &[(u8, Self)]) -> u8 {
        table.iter().filter(|&&(_, fault)| self.contains(fault)).fold(0, |bits, (bit, _)| bits | bit)
    }
}

impl BitOr for Faults {
    type Output = Self;

    fn bitor(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }
}

impl BitOrAssign for Faults {
    fn bitor_assign(&mut self, other: Self) {
        self.0 |= other.0;
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, name) in self.names().enumerate() {
            write!(f, "{}{name}", if at > 0 { ", " } else { "" })?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fault_is_one_of_lin_or_of_flexray_and_has_a_name() {
        let all = NAMES.iter().fold(Faults::NONE, |all, &(fault, _)| all | fault);
        assert_eq!(all, Faults::OF_LIN | Faults::OF_FLEXRAY);
        assert_eq!(all.names().count(), NAMES.len());
        assert_eq!(Faults::NONE.to_string(), "");
    }
}
