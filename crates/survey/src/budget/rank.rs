//! Who goes first on CAN: the place of a frame in the arbitration.

use std::fmt;

use wirelore_model::Identifier;

/// A frame's place in the arbitration (ISO 11898-1): the smaller goes first. The eleven leading bits decide, then a frame of the base
/// format goes before one of the extended format, then the eighteen others.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Rank {
    leading: u16,
    is_extended: bool,
    rest: u32,
}

/// The priority of a parameter group where none is described: that of most groups (SAE J1939-21, from memory).
const DEFAULT_PRIORITY: u8 = 6;
/// The address of all, and of nobody in particular.
const ANY_ADDRESS: u32 = 0xFF;
/// The group that carries the packets of longer messages (TP.DT), and its priority (SAE J1939-21, from memory).
const PACKETS_PGN: u32 = 0xEB00;
const PACKETS_PRIORITY: u8 = 7;

impl Rank {
    /// The rank of an identifier of CAN.
    #[must_use]
    pub fn of_id(id: u32, extended: bool) -> Self {
        if extended {
            Self { leading: (id >> 18) as u16, is_extended: true, rest: id & 0x3_FFFF }
        } else {
            Self { leading: id as u16, is_extended: false, rest: 0 }
        }
    }

    /// The rank of a described identifier; `in_packets`: its messages come in packets of SAE J1939's transport protocol, which have an
    /// identifier of their own.
    pub(super) fn of(identifier: &Identifier, source: Option<u8>, in_packets: bool) -> Option<Self> {
        match identifier {
            Identifier::Can { first, extended, .. } => Some(Self::of_id(*first, *extended)),
            Identifier::Pgn { pgn, priority, .. } => {
                let (pgn, priority) = match in_packets {
                    true => (PACKETS_PGN, PACKETS_PRIORITY),
                    false => (*pgn, priority.unwrap_or(DEFAULT_PRIORITY)),
                };
                // Where the destination is part of the identifier it is not described: to all.
                let target = if (pgn >> 8) & 0xFF < 240 { ANY_ADDRESS } else { 0 };
                let source = source.map_or(ANY_ADDRESS, u32::from);
                Some(Self::of_id(u32::from(priority) << 26 | (pgn | target) << 8 | source, true))
            }
            _ => None,
        }
    }

    /// The identifier.
    #[must_use]
    pub fn id(self) -> u32 {
        if self.is_extended { u32::from(self.leading) << 18 | self.rest } else { self.leading.into() }
    }

    /// Whether the identifier has 29 bits.
    #[must_use]
    pub fn is_extended(self) -> bool {
        self.is_extended
    }
}

impl fmt::Display for Rank {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.is_extended { write!(f, "0x{:08X}", self.id()) } else { write!(f, "0x{:03X}", self.id()) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 11898-1: with equal leading bits the base format goes first, as its RTR and IDE bits are dominant.
    #[test]
    fn the_base_format_goes_first() {
        let base = Rank::of_id(0x123, false);
        let same_leading = Rank::of_id(0x123 << 18, true);
        let smaller = Rank::of_id(0x122 << 18 | 0x3_FFFF, true);
        assert!(smaller < base && base < same_leading);
        assert!(same_leading < Rank::of_id(0x124, false));
        assert_eq!((same_leading.id(), base.id()), (0x123 << 18, 0x123));
    }

    /// 0x18FEF100 is the identifier of group 65265 with priority 6 from address 0 (SAE J1939-71, from memory; seen in real recordings).
    #[test]
    fn parameter_groups() {
        let group = |pgn, priority| Identifier::Pgn { pgn, sources: vec![], priority };
        let id = |identifier: &Identifier, source, in_packets| Rank::of(identifier, source, in_packets).map(Rank::id);
        assert_eq!(id(&group(65_265, None), Some(0), false), Some(0x18FE_F100));
        assert_eq!(id(&group(61_444, Some(3)), Some(0), false), Some(0x0CF0_0400));
        assert_eq!(id(&group(0, Some(3)), Some(3), false), Some(0x0C00_FF03), "to all, as no target is described");
        assert_eq!(id(&group(65_226, None), Some(0), true), Some(0x1CEB_FF00));
    }
}
