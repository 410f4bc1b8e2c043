//! Who sent a frame, where its description leaves that open.

use std::fmt;

use wirelore_model::{Frame, Identifier};

/// Who sent a frame, where the description takes frames of several senders. Shown as `0x0B`, `0x7E8` or `0x18DAF110`.
///
/// ```
/// # use wirelore_decode::Source;
/// assert_eq!(Source::Address(0x0B).to_string(), "0x0B");
/// assert_eq!(Source::Identifier { id: 0x7E8, extended: false }.to_string(), "0x7E8");
/// assert_eq!(Source::Identifier { id: 0x18DA_F110, extended: true }.to_string(), "0x18DAF110");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Source {
    /// Of a parameter group: the source address (SAE J1939).
    Address(u8),
    /// Of a frame that is described for a run of identifiers: the one that it came with.
    Identifier {
        /// The identifier, without flags.
        id: u32,
        /// 29 bits instead of 11.
        extended: bool,
    },
}

impl Source {
    /// The source address of a parameter group.
    #[must_use]
    pub fn address(self) -> Option<u8> {
        match self {
            Self::Address(address) => Some(address),
            Self::Identifier { .. } => None,
        }
    }

    /// The address or the identifier.
    #[must_use]
    pub fn number(self) -> u32 {
        match self {
            Self::Address(address) => address.into(),
            Self::Identifier { id, .. } => id,
        }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Address(address) => write!(f, "0x{address:02X}"),
            Self::Identifier { id, extended: false } => write!(f, "0x{id:03X}"),
            Self::Identifier { id, extended: true } => write!(f, "0x{id:08X}"),
        }
    }
}

/// What the sources of a described frame are; nothing where only one identifier makes the frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct SourceKinds {
    /// Source addresses: it is a parameter group.
    pub addresses: bool,
    /// Identifiers of 11 bits: it is described for a run of them.
    pub standard: bool,
    /// Identifiers of 29 bits: it is described for a run of them.
    pub extended: bool,
}

impl SourceKinds {
    /// Those of a frame, wherever it is seen.
    #[must_use]
    pub fn of(frame: &Frame) -> Self {
        let mut kinds = Self::default();
        for appearance in &frame.seen_on {
            match appearance.identifier {
                Identifier::Pgn { .. } => kinds.addresses = true,
                Identifier::Can { first, last, extended: false } => kinds.standard |= first != last,
                Identifier::Can { first, last, extended: true } => kinds.extended |= first != last,
                _ => {}
            }
        }
        kinds
    }

    /// Whether there are any.
    #[must_use]
    pub fn any(self) -> bool {
        self.addresses || self.identifiers()
    }

    /// Whether some are identifiers.
    #[must_use]
    pub fn identifiers(self) -> bool {
        self.standard || self.extended
    }
}

impl std::ops::BitOrAssign for SourceKinds {
    fn bitor_assign(&mut self, other: Self) {
        self.addresses |= other.addresses;
        self.standard |= other.standard;
        self.extended |= other.extended;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{frame, id, pgn};

    fn kinds(identifier: Identifier) -> (bool, bool, bool, bool, bool) {
        let kinds = SourceKinds::of(&frame("f", identifier, Vec::new()));
        (kinds.addresses, kinds.standard, kinds.extended, kinds.any(), kinds.identifiers())
    }

    #[test]
    fn what_an_identifier_leaves_open_is_the_source() {
        let run = |extended| Identifier::Can { first: 0x7E8, last: 0x7EF, extended };
        assert_eq!(kinds(id(0x7E8)), (false, false, false, false, false));
        assert_eq!(kinds(id(0x18DA_F110)), (false, false, false, false, false));
        assert_eq!(kinds(pgn(65265)), (true, false, false, true, false));
        assert_eq!(kinds(run(false)), (false, true, false, true, true));
        assert_eq!(kinds(run(true)), (false, false, true, true, true));
        let of = |identifier| SourceKinds::of(&frame("f", identifier, Vec::new()));
        let mut all = of(id(1));
        for identifier in [pgn(65265), run(false), run(true), id(1)] {
            all |= of(identifier);
        }
        assert_eq!(all, SourceKinds { addresses: true, standard: true, extended: true });
    }

    #[test]
    fn a_source_is_a_number_and_only_that_of_a_group_an_address() {
        let (address, identifier) = (Source::Address(0x0B), Source::Identifier { id: 0x7E8, extended: false });
        assert_eq!((address.number(), address.address()), (0x0B, Some(0x0B)));
        assert_eq!((identifier.number(), identifier.address()), (0x7E8, None));
    }
}
