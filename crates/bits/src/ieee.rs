//! Binary floating-point formats of IEEE 754-2019 (clause 3.4), in integer arithmetic only.
//!
//! One rounding routine serves every format: the exact scaling rounds to doubles with it, and narrowing rounds doubles to
//! singles and halves. Integers keep signalling not-a-numbers as they are, which a trip through a register may not.

/// A binary interchange format with a sign bit, an exponent field and a fraction field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct FloatFormat {
    exponent_bits: u32,
    fraction_bits: u32,
}

/// The size of a number as an integer times a power of two.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Dyadic {
    pub(crate) negative: bool,
    pub(crate) significand: u64,
    pub(crate) exponent: i32,
}

/// binary16.
pub(crate) const HALF: FloatFormat = FloatFormat { exponent_bits: 5, fraction_bits: 10 };
/// binary32.
pub(crate) const SINGLE: FloatFormat = FloatFormat { exponent_bits: 8, fraction_bits: 23 };
/// binary64.
pub(crate) const DOUBLE: FloatFormat = FloatFormat { exponent_bits: 11, fraction_bits: 52 };

impl FloatFormat {
    const fn bias(&self) -> i32 {
        (1 << (self.exponent_bits - 1)) - 1
    }

    const fn highest_exponent_field(&self) -> u64 {
        (1 << self.exponent_bits) - 1
    }

    const fn sign_bit(&self, negative: bool) -> u64 {
        (negative as u64) << (self.exponent_bits + self.fraction_bits)
    }

    const fn infinity(&self) -> u64 {
        self.highest_exponent_field() << self.fraction_bits
    }

    const fn fraction_mask(&self) -> u64 {
        (1 << self.fraction_bits) - 1
    }

    const fn is_negative(&self, bits: u64) -> bool {
        bits & self.sign_bit(true) != 0
    }

    /// Whether the bits are a number: neither infinity nor not-a-number.
    const fn is_finite(&self, bits: u64) -> bool {
        bits & self.infinity() != self.infinity()
    }

    /// Finite bits as integer times power of two.
    const fn parts(&self, bits: u64) -> Dyadic {
        let fraction = bits & self.fraction_mask();
        let field = (bits >> self.fraction_bits) & self.highest_exponent_field();
        // Subnormal numbers have no hidden bit and the exponent of the smallest normal ones.
        let (significand, field) = if field == 0 { (fraction, 1) } else { (fraction | 1 << self.fraction_bits, field) };
        Dyadic {
            negative: self.is_negative(bits),
            significand,
            exponent: field as i32 - self.bias() - self.fraction_bits as i32,
        }
    }

    /// The double with the value of `bits`: exact, because every number of a smaller format is a double.
    pub(crate) const fn widen(&self, bits: u64) -> f64 {
        if self.is_finite(bits) {
            return f64::from_bits(DOUBLE.round(self.parts(bits), false));
        }
        let fraction = (bits & self.fraction_mask()) << (DOUBLE.fraction_bits - self.fraction_bits);
        f64::from_bits(DOUBLE.sign_bit(self.is_negative(bits)) | DOUBLE.infinity() | fraction)
    }

    /// The number of this format nearest to `value` (ties to even) and whether it is the very same number.
    ///
    /// A value beyond the largest finite number becomes infinity. A not-a-number keeps as much of its payload as fits.
    pub(crate) const fn narrow(&self, value: f64) -> (u64, bool) {
        let wide = value.to_bits();
        let bits = if DOUBLE.is_finite(wide) {
            self.round(DOUBLE.parts(wide), false)
        } else {
            let payload = wide & DOUBLE.fraction_mask();
            let kept = payload >> (DOUBLE.fraction_bits - self.fraction_bits);
            let quiet = if payload != 0 && kept == 0 { 1 << (self.fraction_bits - 1) } else { 0 };
            self.sign_bit(DOUBLE.is_negative(wide)) | self.infinity() | kept | quiet
        };
        (bits, self.widen(bits).to_bits() == wide)
    }

    /// The bits of the number nearest to `number`, ties to even; beyond the largest finite number infinity.
    ///
    /// With `more`, the exact number is larger in size than stated, by less than one unit of the significand's last bit; the
    /// significand must then have at least two bits more than the format keeps.
    pub(crate) const fn round(&self, number: Dyadic, more: bool) -> u64 {
        let Dyadic { negative, significand, exponent } = number;
        let sign = self.sign_bit(negative);
        if significand == 0 {
            return sign;
        }
        let length = 64 - significand.leading_zeros() as i32;
        let leading_exponent = length - 1 + exponent;
        if leading_exponent > self.bias() {
            return sign | self.infinity();
        }
        let lowest_exponent = 1 - self.bias();
        let missing = if leading_exponent < lowest_exponent { lowest_exponent - leading_exponent } else { 0 };
        let dropped = length - (self.fraction_bits as i32 + 1 - missing);
        let kept = if dropped <= 0 { significand << -dropped } else { drop_bits(significand, dropped as u32, more) };
        // The hidden bit of a normal number, and a carry out of the fraction, add one to the exponent field by themselves.
        let exponent_field = if missing > 0 { 0 } else { (leading_exponent - lowest_exponent) as u64 };
        sign | ((exponent_field << self.fraction_bits) + kept)
    }
}

/// `significand` without its last `count` bits (at least one), rounded to nearest, ties to even.
const fn drop_bits(significand: u64, count: u32, more: bool) -> u64 {
    // 66 bits and more drop everything and are below one half in any case.
    let count = if count > 66 { 66 } else { count };
    let significand = significand as u128;
    let half = 1u128 << (count - 1);
    let kept = significand >> count;
    let rest = significand & ((1 << count) - 1);
    let up = rest > half || rest == half && (more || kept & 1 == 1);
    kept as u64 + up as u64
}

impl Dyadic {
    /// A finite double as it is, without trailing zeros in its significand; `None` for infinities and not-a-numbers.
    pub(crate) const fn of(value: f64) -> Option<Self> {
        if !value.is_finite() {
            return None;
        }
        let Self { negative, significand, exponent } = DOUBLE.parts(value.to_bits());
        if significand == 0 {
            return Some(Self { negative, significand, exponent: 0 });
        }
        let zeros = significand.trailing_zeros();
        Some(Self { negative, significand: significand >> zeros, exponent: exponent + zeros as i32 })
    }
}

#[cfg(test)]
mod tests;
