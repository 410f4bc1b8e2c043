//! The arithmetic of LIN: protected identifiers, the two checksums, the time that a frame takes (ISO 17987; LIN 2.2A, sections 2.3 and 2.8).
//!
//! ```
//! use wirelore_bits::lin::{self, LinChecksum};
//!
//! // The checksum example of LIN 2.2A, section 2.8.3.
//! assert_eq!(LinChecksum::Classic.over(0x11, &[0x4A, 0x55, 0x93, 0xE5]), 0xE6);
//! assert_eq!(lin::protected(0x01), 0xC1);
//! assert!(!lin::is_parity_right(0x01));
//! ```

use crate::sums::ByteSum;

/// The largest identifier.
pub const ID_MAX: u8 = 0x3F;
/// The most data bytes of a frame.
pub const BYTES_MAX: usize = 8;
/// The first of the identifiers (60 to 63) whose checksum is always the classic one.
pub const FIRST_CLASSIC_ID: u8 = 60;
/// The commander's diagnostic frame; its first byte 0 asks all to go to sleep.
pub const MASTER_REQUEST: u8 = 0x3C;
/// The diagnostic frame of whoever was asked.
pub const SLAVE_RESPONSE: u8 = 0x3D;

/// An identifier (0 to 63; higher bits are ignored) with its two parity bits in front.
#[must_use]
pub const fn protected(id: u8) -> u8 {
    let id = id & ID_MAX;
    let even = (id ^ id >> 1 ^ id >> 2 ^ id >> 4) & 1;
    let odd = !(id >> 1 ^ id >> 3 ^ id >> 4 ^ id >> 5) & 1;
    id | even << 6 | odd << 7
}

/// Whether the parity bits of a protected identifier are those of its identifier.
#[must_use]
pub const fn is_parity_right(protected_id: u8) -> bool {
    protected(protected_id) == protected_id
}

/// The two sums of LIN.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum LinChecksum {
    /// Over the data.
    Classic,
    /// Over the protected identifier and the data.
    Enhanced,
}

impl LinChecksum {
    /// The sum of some data that is sent under a protected identifier.
    #[must_use]
    pub fn over(self, protected_id: u8, data: &[u8]) -> u8 {
        let sum = ByteSum::END_AROUND.inverted();
        let before = match self {
            Self::Classic => sum.start(),
            Self::Enhanced => sum.update(sum.start(), &[protected_id]),
        };
        sum.finish(sum.update(before, data)) as u8
    }

    /// The one that is not this one.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Classic => Self::Enhanced,
            Self::Enhanced => Self::Classic,
        }
    }

    /// The word of the trade, and of the language.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Classic => "classic",
            Self::Enhanced => "enhanced",
        }
    }
}

/// The bit times of a header: break, delimiter, synchronisation byte, protected identifier (LIN 2.2A, section 2.3.2).
pub const HEADER_BITS: u32 = 34;

/// The bit times that header, data and checksum take when nobody waits (LIN 2.2A, section 2.3.2: 34 and 10 for each byte).
#[must_use]
pub const fn nominal_bits(data_bytes: u32) -> u32 {
    HEADER_BITS + 10 * (data_bytes + 1)
}

/// The longest time that a frame may take, in nanoseconds, rounded up: 1.4 times the nominal one (LIN 2.2A, section 2.3.2). `None` at a
/// rate of 0.
#[must_use]
pub const fn longest_time_ns(data_bytes: u32, bits_per_second: u64) -> Option<u64> {
    if bits_per_second == 0 {
        return None;
    }
    // 1.4 in tenths, seconds in nanoseconds.
    let tenths = nominal_bits(data_bytes) as u64 * 14;
    Some((tenths * 100_000_000).div_ceil(bits_per_second))
}
