//! Characters of a line as words, where its cells end, and the decimal digits in words.

/// How many bytes are looked at for one line; longer lines go the careful way. Behind any place that fits in a byte there are
/// sixteen more.
pub(super) const LINE_ROOM: usize = 256 + 16;

/// The bytes from the start of a line on.
pub(super) type Line = [u8; LINE_ROOM];

const ONES: u64 = 0x0101_0101_0101_0101;
const TOP_BITS: u64 = 0x80 * ONES;

/// Eight characters, the first in the lowest byte; `None` beyond the room.
#[inline(always)]
pub(super) fn word(line: &Line, at: usize) -> Option<u64> {
    Some(u64::from_le_bytes(*line.get(at..)?.first_chunk()?))
}

/// Sixteen characters; `None` beyond the room.
#[inline(always)]
pub(super) fn sixteen(line: &Line, at: usize) -> Option<[u8; 16]> {
    line.get(at..)?.first_chunk().copied()
}

/// The character at a place.
#[inline(always)]
pub(super) fn byte_at(line: &Line, place: u8) -> u8 {
    line[usize::from(place)]
}

/// Eight characters from a place on, the first in the lowest byte.
#[inline(always)]
pub(super) fn word_at(line: &Line, place: u8) -> u64 {
    word(line, place.into()).unwrap_or_default()
}

/// Sixteen characters from a place on.
#[inline(always)]
pub(super) fn sixteen_at(line: &Line, place: u8) -> [u8; 16] {
    sixteen(line, place.into()).unwrap_or_default()
}

/// Where the next cell begins, if this one ends at `at`.
#[inline(always)]
pub(super) fn behind(line: &Line, at: usize, end: u8) -> Option<usize> {
    match line.get(at) {
        Some(&byte) if byte == end => Some(at + 1),
        Some(b'\r') if end == b'\n' && line.get(at + 1) == Some(&b'\n') => Some(at + 2),
        _ => None,
    }
}

/// The bytes from `at` up to the cell's end, if that is not far.
pub(super) fn up_to_end(line: &Line, at: usize, end: u8, most_bytes: usize) -> Option<&[u8]> {
    let length = (0..=most_bytes).find(|length| behind(line, at + length, end).is_some())?;
    line.get(at..at + length)
}

/// The lowest `count` bytes of a word, 0..=8.
pub(super) fn low_bytes(count: usize) -> u64 {
    u64::MAX.checked_shr(64 - 8 * count as u32).unwrap_or(0)
}

/// The number that eight decimal digits make.
#[inline(always)]
pub(super) fn decimal_number(word: u64) -> Option<u64> {
    let (number, is_number) = eight_digits(word);
    is_number.then_some(number)
}

/// The same number, and whether all eight are digits. (If not, it means nothing.)
#[inline(always)]
pub(super) fn eight_digits(word: u64) -> (u64, bool) {
    let digits = word.wrapping_sub(b'0' as u64 * ONES);
    let is_number = (word.wrapping_add(0x46 * ONES) | digits) & TOP_BITS == 0;
    // Neighbours are put together: to two digits, then to four, then to eight.
    let twos = digits.wrapping_mul(10).wrapping_add(digits >> 8);
    let low = (twos & 0x0000_00FF_0000_00FF).wrapping_mul(100 + (1_000_000 << 32));
    let high = (twos >> 16 & 0x0000_00FF_0000_00FF).wrapping_mul(1 + (10_000 << 32));
    (low.wrapping_add(high) >> 32, is_number)
}

#[cfg(test)]
mod tests {
    use super::super::super::values;
    use super::*;

    fn of(text: &[u8]) -> u64 {
        let mut bytes = [b'?'; 8];
        bytes[..text.len()].copy_from_slice(text);
        u64::from_le_bytes(bytes)
    }

    #[test]
    fn every_byte_at_every_place() {
        for at in 0..8 {
            for byte in 0..=255 {
                let mut text = *b"12345678";
                text[at] = byte;
                assert_eq!(decimal_number(of(&text)), values::decimal(&text), "{text:?}");
            }
        }
    }

    #[test]
    fn all_pairs_of_digits() {
        for number in (0..10_000_u64).map(|pairs| pairs / 100 * 1_000_000 + pairs % 100 * 100 + 7) {
            assert_eq!(decimal_number(of(format!("{number:08}").as_bytes())), Some(number));
        }
    }

    #[test]
    fn low_bytes_are_masked() {
        assert_eq!((low_bytes(0), low_bytes(3), low_bytes(8)), (0, 0xFF_FFFF, u64::MAX));
    }
}
