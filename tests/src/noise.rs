//! The only chance in these checks and in the demo's drive: a small generator of numbers that gives the same ones on every machine.

/// Numbers that look random and never change: SplitMix64 (Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014;
/// constants from memory).
#[derive(Debug, Clone)]
pub struct Noise {
    state: u64,
}

impl Noise {
    /// A generator; each seed has a row of its own.
    #[must_use]
    pub fn new(seed: u64) -> Self {
        Self { state: seed }
    }

    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.state;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A number from 0 up to, but not including, 1.
    pub fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A number from `-size` to `size`; the middle comes more often than the ends.
    pub fn around_zero(&mut self, size: f64) -> f64 {
        (self.share() + self.share() - 1.0) * size
    }

    /// A whole number from 0 to `most`, in nanoseconds where times are meant.
    pub fn up_to(&mut self, most: u64) -> u64 {
        self.below(most + 1)
    }

    /// A whole number from 0 up to, but not including, `bound`; 0 where that is 0.
    pub fn below(&mut self, bound: u64) -> u64 {
        self.bits() % bound.max(1)
    }
}
