//! Numbers as decimal text, without a general printer of doubles.
//!
//! Engineering values are decimals with a few digits behind the point, each held as the double nearest to it. Such a double is printed from
//! the decimal that it stands for: scaled to a whole number, checked by one division, and spelled with a table of digits. What
//! [`decimal`] writes is the shortest text that reads back to the same double, because a decimal of up to 15 significant digits survives
//! the way to a double and back (ISO C, 5.2.4.2.2, `DBL_DIG`; Goldberg, "What every computer scientist should know about floating-point
//! arithmetic", 1991; both from memory): no second decimal of that length, and so no shorter one, is read as that double.
//!
//! ```
//! use wirelore_bits::text;
//!
//! let mut room = [0; text::ROOM_BYTES];
//! let length = text::decimal(-40.05, &mut room).ok_or("not a short decimal")?;
//! assert_eq!(&room[..length], b"-40.05");
//! assert_eq!(text::decimal(1.0 / 3.0, &mut room), None);
//!
//! let length = text::whole(65_535, &mut room);
//! assert_eq!(&room[..length], b"65535");
//! # Ok::<(), &str>(())
//! ```

/// The room that a text is written into, in bytes. Behind the text, anything may be left there.
pub const ROOM_BYTES: usize = 24;

/// 2^52: what is added to it is rounded to a whole number, which then stands in the low bits of the sum.
const ROUNDS: f64 = (1_u64 << 52) as f64;
/// The digit 0 in each of eight bytes.
const ZEROS: u64 = 0x3030_3030_3030_3030;

/// Four digits of each number below 10,000, one a byte, the first in the lowest: 40 KB, which a program that prints nothing does not hold.
static FOUR_DIGITS: [u32; 10_000] = four_digits();

const fn four_digits() -> [u32; 10_000] {
    let mut table = [0; 10_000];
    let mut number = 0;
    while number < 10_000 {
        let [thousands, hundreds, tens, ones] = [number / 1000, number / 100 % 10, number / 10 % 10, number % 10];
        table[number as usize] = thousands | hundreds << 8 | tens << 16 | ones << 24;
        number += 1;
    }
    table
}

/// Writes a double as the shortest decimal text that reads back to it, and gives the length of the text: whole numbers without a point,
/// the others with a digit before it, minus zero as `-0`.
///
/// `None`, with anything left in the room, where the double is not the nearest one to a decimal below 10^7 with at most 8 digits
/// behind the point, or is nearer to zero than 0.00001 without being zero. Such numbers need a general printer.
#[inline]
pub fn decimal(value: f64, to: &mut [u8; ROOM_BYTES]) -> Option<usize> {
    let size = value.abs();
    let rounded = size * 1e4 + ROUNDS;
    // Infinity passes the first condition, not-a-number does not.
    if (rounded - ROUNDS) / 1e4 == size && size < 1e4 {
        let number = rounded.to_bits() as u32;
        let whole = FOUR_DIGITS.get((number / 10_000) as usize)?;
        let fraction = FOUR_DIGITS.get((number % 10_000) as usize)?;
        return Some(place(value.is_sign_negative(), u64::from(*whole) << 32, u64::from(*fraction), to));
    }
    finer_decimal(value, to)
}

/// [`decimal`] with up to seven digits before the point and eight behind it: 15 at most.
fn finer_decimal(value: f64, to: &mut [u8; ROOM_BYTES]) -> Option<usize> {
    let size = value.abs();
    let rounded = size * 1e8 + ROUNDS;
    if (rounded - ROUNDS) / 1e8 != size || !(1e-5..1e7).contains(&size) {
        return None;
    }
    let number = rounded.to_bits() - ROUNDS.to_bits();
    let (whole, fraction) = (number / 100_000_000, number % 100_000_000);
    Some(place(value.is_sign_negative(), eight_digits(whole as u32), eight_digits(fraction as u32), to))
}

/// Writes a whole number and gives the length of its text.
#[inline]
pub fn whole(value: u64, to: &mut [u8; ROOM_BYTES]) -> usize {
    let (above, low) = (value / 100_000_000, eight_digits((value % 100_000_000) as u32));
    if above == 0 {
        return place(false, low, 0, to);
    }
    let (top, middle) = (above / 100_000_000, eight_digits((above % 100_000_000) as u32));
    let mut length = 0;
    if top == 0 {
        length = place(false, middle, 0, to);
    } else {
        length += place(false, eight_digits(top as u32), 0, to);
        put(middle, length, to);
        length += 8;
    }
    put(low, length, to);
    length + 8
}

/// Eight digits of a number below 10^8, one a byte, the first in the lowest.
#[inline]
fn eight_digits(number: u32) -> u64 {
    let four = |number: u32| u64::from(FOUR_DIGITS.get(number as usize).copied().unwrap_or_default());
    four(number / 10_000) | four(number % 10_000) << 32
}

/// Writes the sign, eight digits without the zeros before them, and eight digits behind the point without the zeros behind them.
/// There is no branch in it: the lengths of the texts of a recording cannot be guessed.
#[inline]
fn place(negative: bool, whole: u64, fraction: u64, to: &mut [u8; ROOM_BYTES]) -> usize {
    let sign = usize::from(negative);
    to[0] = b'-';
    // The last digit stays, whatever it is.
    let zeros = (whole | 1 << 63).trailing_zeros() / 8;
    put(whole >> (8 * zeros), sign, to);
    let point = sign + 8 - zeros as usize;
    to[point] = b'.';
    put(fraction, point + 1, to);
    // A digit has four bits: moved to the upper half of its byte, it leaves bit 0 to stand for "no digit at all".
    let decimals = (((fraction << 4) | 1).ilog2() as usize + 4) / 8;
    point + decimals + usize::from(decimals > 0)
}

#[inline]
fn put(digits: u64, at: usize, to: &mut [u8; ROOM_BYTES]) {
    to[at..at + 8].copy_from_slice(&(digits | ZEROS).to_le_bytes());
}

#[cfg(test)]
mod tests;
