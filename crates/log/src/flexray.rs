//! How far the numbers of a FlexRay frame go (FlexRay 2.1A, ISO 17458-2).

pub(crate) use wirelore_bits::flexray::{HEADER_BYTES, Header};

/// The largest number of a slot.
pub(crate) const SLOT_MAX: u16 = 2047;
/// The last cycle before they count from 0 again.
pub(crate) const CYCLE_MAX: u8 = 63;
/// The most data bytes of a frame: 127 words of two.
pub(crate) const BYTES_MAX: usize = 254;
