//! Bits of a payload to exact numbers and back.
//!
//! The principal type is the [`Extractor`]: it takes the bits of one [`Field`] out of a payload, or puts them in, with a load,
//! a shift and a mask. Around it stand the number formats ([`Encoding`]), the exact scaling to engineering values ([`Affine`],
//! compiled for speed as [`Scaler`]), the checksums ([`Crc`], [`sums`], those of whole frames in [`flexray`] and [`lin`]), end-to-end
//! protection ([`e2e`]), the bits that a frame takes on the wire ([`can_frame`]) and numbers as [`text`]. Rust source that is generated from a
//! description stands on [`typed`].
//!
//! What it promises:
//! - any width from 1 to 64 bits at any place of a payload of any length, in both byte orders, in up to four pieces;
//! - an engineering value is the double nearest to the exact result (ties to even) for every raw value, and encoding finds
//!   the raw value back;
//! - every checksum is computed as the published parameters say.
//!
//! What it never does: allocate, read a clock or a file, print, panic on input, or round where it does not say so. It knows
//! nothing of networks, units or files.
//!
//! ```
//! use wirelore_bits::{Affine, BitPosition, Encoding, Extractor, Field, Fit, Number, NumberKind, Place, Ratio};
//!
//! // `bits 1.4..0.0 = raw * 0.05`: the most significant bit is bit 4 of byte 1, the least significant one bit 0 of byte 0.
//! let place = Place::between(BitPosition::new(1, 4), BitPosition::new(0, 0))?;
//! assert_eq!(place.width(), 13);
//!
//! let extractor = Extractor::new(&Field::from(place));
//! let encoding = Encoding::new(NumberKind::Unsigned, place.width())?;
//! let speed = Affine::new(Ratio::from_decimal("0.05")?, Ratio::ZERO).ok_or("does not fit")?;
//!
//! let payload = [0xE8, 0x03, 0, 0, 0, 0, 0, 0];
//! let bits = extractor.extract(&payload).ok_or("too short")?;
//! assert_eq!(encoding.number(bits)?, Number::Integer(1000));
//! assert_eq!(speed.value(1000), 50.0);
//!
//! // And back: 62.5 is a value that a raw value has, 62.51 is not.
//! let range = encoding.integer_range().ok_or("not an integer")?;
//! let found = speed.raw_nearest(62.5, range);
//! assert_eq!((found.raw, found.fit), (1250, Fit::Exact));
//! assert_eq!(speed.raw_nearest(62.51, range).fit, Fit::Rounded);
//!
//! let mut answer = [0u8; 8];
//! extractor.insert(&mut answer, encoding.bits(Number::Integer(found.raw))?)?;
//! assert_eq!(answer, [0xE2, 0x04, 0, 0, 0, 0, 0, 0]);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

#![no_std]
#![forbid(unsafe_code)]
#![deny(missing_docs)]

#[cfg(test)]
extern crate std;

// Byte indices are `u32` in the public types and are used as `usize` without a check.
const _: () = assert!(usize::BITS >= 32, "this crate needs addresses of at least 32 bits");

mod affine;
pub mod can_frame;
mod crc;
mod decimal;
pub mod e2e;
mod encoding;
#[cfg(test)]
mod exactly;
mod extract;
mod field;
pub mod flexray;
mod ieee;
pub mod lin;
mod load;
pub mod payload_lengths;
mod place;
mod position;
mod ratio;
mod raw;
mod scaler;
#[cfg(feature = "serde")]
mod serial;
pub mod sums;
pub mod text;
mod trouble_code;
pub mod typed;
mod wide;

/// Tests that go through many cases take every so-manieth of them: all, but for runs under Miri, which takes some hundred times as long.
#[cfg(test)]
const STRIDE: usize = if cfg!(miri) { 211 } else { 1 };

pub use affine::Affine;
pub use crc::{Crc, CrcError, CrcParameters};
pub use decimal::DecimalError;
pub use encoding::{DoesNotFit, Encoding, EncodingError, FloatBits, InvalidDigits, Number, NumberKind};
pub use extract::{Extractor, InsertError};
pub use field::{Field, FieldError};
pub use place::{ByteOrder, Place, PlaceError};
pub use position::{BitPosition, PositionTextError};
pub use ratio::Ratio;
pub use raw::{Fit, RawFor};
pub use scaler::{Quotient, Scaler};
pub use trouble_code::TroubleCode;
