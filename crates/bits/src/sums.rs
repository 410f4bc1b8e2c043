//! Sums over bytes: the simple checksums.
//!
//! Same shape as [`Crc`](crate::Crc): a checksum of a whole slice, or start, update and finish.
//!
//! ```
//! use wirelore_bits::sums::ByteSum;
//!
//! // The checksum example of LIN 2.2A, section 2.8.3: 4A 55 93 E5 has the checksum E6.
//! let lin = ByteSum::END_AROUND.inverted();
//! assert_eq!(lin.checksum(&[0x4A, 0x55, 0x93, 0xE5]), 0xE6);
//! ```

/// How two bytes become one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
enum Operation {
    Wrapping,
    Xor,
    EndAround,
}

/// A checksum that combines bytes one by one into 8 bits, optionally folded to 4 bits and inverted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ByteSum {
    operation: Operation,
    folded: bool,
    inverted: bool,
}

impl ByteSum {
    /// The sum modulo 256.
    pub const WRAPPING: Self = Self::plain(Operation::Wrapping);
    /// The exclusive or.
    pub const XOR: Self = Self::plain(Operation::Xor);
    /// The one's-complement sum: a carry out of bit 7 is added to bit 0.
    pub const END_AROUND: Self = Self::plain(Operation::EndAround);

    const fn plain(operation: Operation) -> Self {
        Self { operation, folded: false, inverted: false }
    }

    /// The same sum folded to 4 bits: the upper half of the 8-bit sum combined with the lower half by the sum's own operation.
    pub const fn folded(self) -> Self {
        Self { folded: true, ..self }
    }

    /// The same sum with every bit of the result inverted, after folding.
    pub const fn inverted(self) -> Self {
        Self { inverted: true, ..self }
    }

    /// Width of the checksum in bits: 8, or 4 when folded.
    pub const fn width(&self) -> u8 {
        if self.folded { 4 } else { 8 }
    }

    /// The checksum of `bytes`.
    pub fn checksum(&self, bytes: &[u8]) -> u64 {
        self.finish(self.update(self.start(), bytes))
    }

    /// The state before the first byte.
    pub const fn start(&self) -> u64 {
        0
    }

    /// The state after `bytes` more.
    pub fn update(&self, state: u64, bytes: &[u8]) -> u64 {
        bytes.iter().fold(state, |state, byte| self.combined(state, u64::from(*byte), 8))
    }

    /// The checksum of what went into `state`.
    pub const fn finish(&self, state: u64) -> u64 {
        let sum = if self.folded { self.combined(state >> 4 & 0xF, state & 0xF, 4) } else { state & 0xFF };
        if self.inverted { sum ^ ((1 << self.width()) - 1) } else { sum }
    }

    /// Two numbers of `width` bits as one.
    const fn combined(&self, left: u64, right: u64, width: u32) -> u64 {
        let mask = (1 << width) - 1;
        match self.operation {
            Operation::Wrapping => ((left & mask) + right) & mask,
            Operation::Xor => (left ^ right) & mask,
            Operation::EndAround => {
                let sum = (left & mask) + right;
                (sum & mask) + (sum >> width)
            }
        }
    }
}
