//! Places in a payload of 64 bytes, written bit by bit.

use wirelore_bits::{BitPosition, Place};

use crate::support::Random;

/// A run of bits: in Intel order counted from its least significant bit, which is bit `first` from bit 0 of byte 0 upwards; in Motorola
/// order from its most significant one, which is bit `first` from bit 7 of byte 0 downwards.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Run {
    is_motorola: bool,
    first: u32,
    width: u32,
}

impl Run {
    pub(crate) fn random(random: &mut Random, width: u32) -> Self {
        Self { is_motorola: random.below(2) == 1, first: random.below(513 - width), width }
    }

    /// The byte and the bit in it of one of its bits, from the first one on.
    fn bit(&self, step: u32) -> (u32, u8) {
        let at = self.first + step;
        (at / 8, if self.is_motorola { 7 - (at % 8) as u8 } else { (at % 8) as u8 })
    }

    pub(crate) fn place(&self) -> Place {
        let position = |step| {
            let (byte, bit) = self.bit(step);
            BitPosition::new(byte, bit)
        };
        let (first, last) = (position(0), position(self.width - 1));
        let ends = if self.is_motorola { (first, last) } else { (last, first) };
        Place::between(ends.0, ends.1).expect("a place of at most 64 bits")
    }
}

/// Puts the bits of a number where the run is.
pub(crate) fn write(payload: &mut [u8; 64], run: Run, number: u64) {
    for step in 0..run.width {
        let (byte, bit) = run.bit(step);
        let significance = if run.is_motorola { run.width - 1 - step } else { step };
        let byte = &mut payload[byte as usize];
        *byte = *byte & !(1 << bit) | ((number >> significance & 1) as u8) << bit;
    }
}
