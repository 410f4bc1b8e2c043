//! The byte order of a packet file or of one of its sections.

/// The byte order of numbers in a packet file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum ByteOrder {
    Little,
    Big,
}

impl ByteOrder {
    #[inline]
    pub(crate) fn u16(self, bytes: [u8; 2]) -> u16 {
        match self {
            Self::Little => u16::from_le_bytes(bytes),
            Self::Big => u16::from_be_bytes(bytes),
        }
    }

    #[inline]
    pub(crate) fn u32(self, bytes: [u8; 4]) -> u32 {
        match self {
            Self::Little => u32::from_le_bytes(bytes),
            Self::Big => u32::from_be_bytes(bytes),
        }
    }

    /// The 16-bit number at byte `at`; `None` beyond the end.
    #[inline]
    pub(crate) fn u16_at(self, bytes: &[u8], at: usize) -> Option<u16> {
        Some(self.u16(*bytes.get(at..)?.first_chunk()?))
    }

    /// The 32-bit number at byte `at`; `None` beyond the end.
    #[inline]
    pub(crate) fn u32_at(self, bytes: &[u8], at: usize) -> Option<u32> {
        Some(self.u32(*bytes.get(at..)?.first_chunk()?))
    }
}
