//! Where the signals of a frame sit. All of it is known at compile time too, so that a rival can have it in constants.

use super::Formula;

/// One signal: where it sits in the word of its payload, and what it means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SignalShape {
    /// Its least significant bit, counted from that of the word.
    pub shift: u32,
    /// Width in bits, 1 to 32.
    pub width: u32,
    /// Two's complement.
    pub signed: bool,
    /// What its raw number means.
    pub formula: Formula,
}

impl SignalShape {
    /// The raw number, bit by bit: the slow path that everything is compared with.
    #[must_use]
    pub fn raw(&self, word: u64) -> i64 {
        let mut raw = 0_i64;
        for bit in 0..self.width {
            if word >> (self.shift + bit) & 1 == 1 {
                let weight = 1_i64 << bit;
                raw += if self.signed && bit == self.width - 1 { -weight } else { weight };
            }
        }
        raw
    }

    /// The double nearest to the exact value.
    #[must_use]
    pub fn value(&self, word: u64) -> f64 {
        self.formula.value(self.raw(word))
    }

    /// The least and the greatest raw number.
    #[must_use]
    pub const fn raw_range(&self) -> (i64, i64) {
        if self.signed { (-(1 << (self.width - 1)), (1 << (self.width - 1)) - 1) } else { (0, (1 << self.width) - 1) }
    }
}

/// The signals of a frame, from the lowest place to the highest; `N` is at most 16.
#[must_use]
pub const fn signals<const N: usize>(frame: u32) -> [SignalShape; N] {
    let widths = widths::<N>(frame);
    let mut signals = [SignalShape { shift: 0, width: 1, signed: false, formula: Formula::RAW }; N];
    let (mut used, mut index) = (0, 0);
    while index < N {
        used += widths[index];
        index += 1;
    }
    // The bits that nobody uses lie in one gap.
    let gap_before = mix(frame as u64 ^ 0x6A70) as usize % N;
    let (mut shift, mut index) = (0, 0);
    while index < N {
        if index == gap_before {
            shift += 64 - used;
        }
        let width = widths[index];
        let chance = mix(frame as u64 * 64 + index as u64);
        let formula =
            if width <= 2 { Formula::RAW } else { Formula::SCALED[(chance >> 8) as usize % Formula::SCALED.len()] };
        signals[index] = SignalShape { shift, width, signed: width > 4 && chance.is_multiple_of(3), formula };
        shift += width;
        index += 1;
    }
    signals
}

/// Widths as they are met, made to use 50 to 64 bits together.
const fn widths<const N: usize>(frame: u32) -> [u32; N] {
    const USUAL: [u32; 20] = [1, 1, 2, 3, 4, 5, 6, 7, 8, 8, 9, 10, 12, 12, 13, 16, 16, 20, 24, 32];
    let mut widths = [1; N];
    let (mut sum, mut index) = (0, 0);
    while index < N {
        widths[index] = USUAL[mix(frame as u64 * 32 + index as u64 + 0x5_0000) as usize % USUAL.len()];
        sum += widths[index];
        index += 1;
    }
    let most = 50 + mix(frame as u64 ^ 0x77) as u32 % 15;
    let mut turn = 0;
    while sum > most || sum < 50 {
        let index = mix(frame as u64 * 1024 + turn) as usize % N;
        if sum > most && widths[index] > 1 {
            widths[index] -= 1;
            sum -= 1;
        } else if sum < 50 && widths[index] < 32 {
            widths[index] += 1;
            sum += 1;
        }
        turn += 1;
    }
    widths
}

/// A number that looks like chance: multiplications and shifts that mix all bits.
#[must_use]
pub(super) const fn mix(number: u64) -> u64 {
    let mut mixed = number.wrapping_add(0x9E37_79B9_7F4A_7C15);
    mixed = (mixed ^ mixed >> 31).wrapping_mul(0xD6E8_FEB8_6659_FD93);
    mixed = (mixed ^ mixed >> 32).wrapping_mul(0xD6E8_FEB8_6659_FD93);
    (mixed ^ mixed >> 29) >> 8
}
