//! Number formats: what a field's bits mean before scaling, and back.

use core::fmt;

use crate::ieee::{DOUBLE, FloatFormat, HALF, SINGLE};

/// How the bits of a field are to be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum NumberKind {
    /// A plain binary number.
    Unsigned,
    /// Two's complement.
    Signed,
    /// A sign bit (the most significant one, set for negative) and a plain binary size.
    SignMagnitude,
    /// A binary floating-point number of IEEE 754: 16, 32 or 64 bits.
    Float,
    /// Binary-coded decimal: four bits per digit, the most significant digit first.
    Bcd,
}

/// A number format with its width: always one that exists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "crate::serial::EncodingParts", into = "crate::serial::EncodingParts")
)]
pub struct Encoding {
    kind: NumberKind,
    width: u8,
}

/// The number that some bits stand for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Number {
    /// From -2^63 to 2^64 - 1.
    Integer(i128),
    /// The value of a floating-point format; smaller formats are doubles exactly.
    Float(f64),
}

/// Why there is no such [`Encoding`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EncodingError {
    /// A width outside 1 to 64 bits.
    Width {
        /// The width that was asked for, in bits.
        width: u8,
    },
    /// One bit has room for the sign and none for the size.
    SignWithoutSize,
    /// A floating-point number of a width other than 16, 32 and 64 bits.
    FloatWidth {
        /// The width that was asked for, in bits.
        width: u8,
    },
    /// Decimal digits in a width that is not a multiple of four bits.
    BcdWidth {
        /// The width that was asked for, in bits.
        width: u8,
    },
}

impl fmt::Display for EncodingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Width { width } => write!(f, "a number has 1 to 64 bits and this one would have {width}; correct its place"),
            Self::SignWithoutSize => f.write_str("a number with a sign bit and a size needs at least 2 bits and this one would have 1; correct its place"),
            Self::FloatWidth { width } => write!(f, "a floating-point number has 16, 32 or 64 bits and this one would have {width}; correct its place or kind"),
            Self::BcdWidth { width } => write!(f, "decimal digits take 4 bits each and {width} bits do not divide into digits; correct its place or kind"),
        }
    }
}

impl core::error::Error for EncodingError {}

/// Bits that stand for no decimal digit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InvalidDigits {
    /// The first of them, 10 to 15.
    pub digit: u8,
    /// The power of ten it would count for.
    pub power: u8,
}

impl fmt::Display for InvalidDigits {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "reading decimal digits found the bits of {:#X} where the digit for 10^{} should be",
            self.digit, self.power
        )
    }
}

impl core::error::Error for InvalidDigits {}

/// Why a number has no bits in an encoding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DoesNotFit {
    /// An integer outside the encoding's range.
    OutOfRange {
        /// The lowest integer it has.
        lowest: i128,
        /// The highest integer it has.
        highest: i128,
    },
    /// A finite number beyond the largest finite one of the floating-point format.
    BeyondFloat {
        /// Width of the format, in bits.
        width: u8,
    },
    /// A floating-point number for an integer encoding: round it first.
    NotAnInteger,
    /// An integer for a floating-point encoding: give it as a float.
    NotAFloat,
}

impl fmt::Display for DoesNotFit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange { lowest, highest } => {
                write!(f, "the number lies outside {lowest}..{highest}, which is all that these bits can hold")
            }
            Self::BeyondFloat { width } => {
                write!(f, "the number is larger than any finite floating-point number of {width} bits")
            }
            Self::NotAnInteger => {
                f.write_str("these bits hold an integer and the number is a floating-point one; round it first")
            }
            Self::NotAFloat => {
                f.write_str("these bits hold a floating-point number and the number is an integer; convert it first")
            }
        }
    }
}

impl core::error::Error for DoesNotFit {}

/// The bits of a floating-point format nearest to a double.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FloatBits {
    /// The bits, the least significant one in bit 0.
    pub bits: u64,
    /// Whether they stand for the very same number, sign of zero and payload of a not-a-number included.
    pub exact: bool,
}

impl Encoding {
    /// The format `kind` in `width` bits.
    ///
    /// Two's complement of one bit is allowed: it holds -1 and 0.
    ///
    /// # Errors
    /// A width outside 1..=64; floats of other than 16, 32 or 64 bits; decimal digits in other than a multiple of four bits; a
    /// sign and a size in one bit.
    pub const fn new(kind: NumberKind, width: u8) -> Result<Self, EncodingError> {
        match (kind, width) {
            (_, 0 | 65..) => Err(EncodingError::Width { width }),
            (NumberKind::SignMagnitude, 1) => Err(EncodingError::SignWithoutSize),
            (NumberKind::Float, 16 | 32 | 64) => Ok(Self { kind, width }),
            (NumberKind::Float, _) => Err(EncodingError::FloatWidth { width }),
            (NumberKind::Bcd, _) if !width.is_multiple_of(4) => Err(EncodingError::BcdWidth { width }),
            _ => Ok(Self { kind, width }),
        }
    }

    /// How the bits are read.
    pub const fn kind(&self) -> NumberKind {
        self.kind
    }

    /// How many bits there are, 1 to 64.
    pub const fn width(&self) -> u8 {
        self.width
    }

    const fn mask(&self) -> u64 {
        u64::MAX >> (64 - self.width)
    }

    const fn float_format(&self) -> FloatFormat {
        match self.width {
            16 => HALF,
            32 => SINGLE,
            _ => DOUBLE,
        }
    }

    /// The number that `bits` stand for; bits above the width do not count.
    ///
    /// Sign and size: both zeros read as 0.
    ///
    /// # Errors
    /// Only decimal digits can fail: four bits from 10 to 15 are no digit.
    #[inline]
    pub fn number(&self, bits: u64) -> Result<Number, InvalidDigits> {
        let bits = bits & self.mask();
        let unused = 64 - u32::from(self.width);
        Ok(match self.kind {
            NumberKind::Unsigned => Number::Integer(i128::from(bits)),
            NumberKind::Signed => Number::Integer(i128::from((bits << unused) as i64 >> unused)),
            NumberKind::SignMagnitude => {
                let size = i128::from(bits & (self.mask() >> 1));
                Number::Integer(if bits > self.mask() >> 1 { -size } else { size })
            }
            NumberKind::Float if self.width == 64 => Number::Float(f64::from_bits(bits)),
            NumberKind::Float => Number::Float(self.float_format().widen(bits)),
            NumberKind::Bcd => Number::Integer(self.decimal(bits)?),
        })
    }

    fn decimal(&self, bits: u64) -> Result<i128, InvalidDigits> {
        let powers = (0..self.width / 4).rev();
        powers.into_iter().try_fold(0, |number, power| match (bits >> (4 * power)) as u8 & 0xF {
            digit @ 0..=9 => Ok(number * 10 + i128::from(digit)),
            digit => Err(InvalidDigits { digit, power }),
        })
    }

    /// The bits of `number`, the least significant one in bit 0.
    ///
    /// Zero in sign and size is +0. Floating-point numbers are rounded to the nearest one the format has, ties to even; use
    /// [`Encoding::float_bits`] to be told whether that changed anything.
    ///
    /// # Errors
    /// An integer outside [`Encoding::integer_range`], a finite number beyond the largest finite one of the float format, an
    /// integer for a float or a float for an integer.
    pub fn bits(&self, number: Number) -> Result<u64, DoesNotFit> {
        let integer = match number {
            Number::Float(value) => return self.float_bits(value).map(|float| float.bits),
            Number::Integer(integer) => integer,
        };
        let (lowest, highest) = self.integer_range().ok_or(DoesNotFit::NotAFloat)?;
        if !(lowest..=highest).contains(&integer) {
            return Err(DoesNotFit::OutOfRange { lowest, highest });
        }
        let size = integer.unsigned_abs() as u64;
        Ok(match self.kind {
            NumberKind::SignMagnitude if integer < 0 => size | 1 << (self.width - 1),
            NumberKind::Bcd => digits_in_fours(size),
            _ => integer as u64 & self.mask(),
        })
    }

    /// The bits of the floating-point number nearest to `value`, ties to even, and whether it is the very same number.
    ///
    /// Infinities and not-a-numbers stay what they are.
    ///
    /// # Errors
    /// The encoding is not a float, or `value` is finite and beyond the largest finite number of the format.
    pub fn float_bits(&self, value: f64) -> Result<FloatBits, DoesNotFit> {
        if self.kind != NumberKind::Float {
            return Err(DoesNotFit::NotAnInteger);
        }
        let (bits, exact) = self.float_format().narrow(value);
        if value.is_finite() && self.float_format().widen(bits).is_infinite() {
            return Err(DoesNotFit::BeyondFloat { width: self.width });
        }
        Ok(FloatBits { bits, exact })
    }

    /// The lowest and the highest integer the bits can stand for; `None` for floating-point numbers.
    pub const fn integer_range(&self) -> Option<(i128, i128)> {
        let mask = self.mask() as i128;
        match self.kind {
            NumberKind::Unsigned => Some((0, mask)),
            NumberKind::Signed => Some((-(mask >> 1) - 1, mask >> 1)),
            NumberKind::SignMagnitude => Some((-(mask >> 1), mask >> 1)),
            NumberKind::Float => None,
            NumberKind::Bcd => Some((0, 10i128.pow(self.width as u32 / 4) - 1)),
        }
    }
}

/// Decimal digits in four bits each; at most 16 of them.
fn digits_in_fours(mut number: u64) -> u64 {
    let mut bits = 0;
    let mut shift = 0;
    while number != 0 {
        bits |= (number % 10) << shift;
        number /= 10;
        shift += 4;
    }
    bits
}

#[cfg(test)]
mod tests;
