//! What generated frames are made of: the few types that Rust source written out of a description stands on.
//!
//! The source itself holds places, formulas and names as constants, and calls [`Cut`] for the bits, so that nothing is looked up at run time.
//! A frame's fields are what the bits say; what they mean is a [`Reading`]. Nothing here allocates.
//!
//! ```
//! use wirelore_bits::typed::{Cut, Reading};
//!
//! // signal front_left in bits 1.4..0.0 = raw * 0.05 km/h, absent 0x1FFF
//! const FRONT_LEFT: Cut = Cut::between((1, 4), (0, 0));
//!
//! let raw = FRONT_LEFT.of(&[0xE8, 0x03, 0, 0, 0, 0, 0, 0]);
//! let speed = if raw == 0x1FFF { Reading::NoReading } else { Reading::Value(raw as f64 / 20.0) };
//! assert_eq!(speed, Reading::Value(50.0));
//! ```

mod checks;
mod cut;
mod errors;
mod formula;
mod length;
mod numbers;
mod reading;
mod repeated;
mod said;
mod text;

pub use checks::{Protection, count_fits, crc, data_ids, next_count, sum_fits, sums};
pub use cut::{Cut, Cuts};
pub use errors::{Damage, NotEncoded, TooShort};
pub use formula::{Formula, set};
pub use length::{Size, at_least, chunk, first_of, put_bytes, room, sized, to_end};
pub use numbers::{
    digits, digits_bits, float, float_bits, sign_magnitude, sign_magnitude_bits, signed, signed_bits, unsigned_bits,
    whole, within,
};
pub use reading::Reading;
pub use repeated::{Element, Elements, Repeated};
pub use said::{Name, Said, SaidValue};
pub use text::{Charset, Text};

/// The parameter group number in a 29-bit identifier (SAE J1939-21: bits 25..8, where a PF below 240 leaves the low byte to the destination).
#[must_use]
pub const fn pgn_of(id: u32) -> u32 {
    let group = (id >> 8) & 0x3_FFFF;
    if (group >> 8) & 0xFF < 240 { group & 0x3_FF00 } else { group }
}

#[cfg(test)]
mod tests;
