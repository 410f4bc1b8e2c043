//! Characters of a line as words, and the decimal digits in them.

/// How many bytes are looked at for one line; longer lines go the careful way.
pub(super) const LINE_ROOM: usize = 256;

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

/// The lowest `count` bytes of a word, 0..=8.
pub(super) fn low_bytes(count: usize) -> u64 {
    u64::MAX.checked_shr(64 - 8 * count as u32).unwrap_or(0)
}

/// The number that eight decimal digits make.
#[inline(always)]
pub(super) fn decimal_number(word: u64) -> Option<u64> {
    let digits = word.wrapping_sub(b'0' as u64 * ONES);
    if (word.wrapping_add(0x46 * ONES) | digits) & TOP_BITS != 0 {
        return None;
    }
    // Neighbours are put together: to two digits, then to four, then to eight.
    let twos = digits * 10 + (digits >> 8);
    let low = (twos & 0x0000_00FF_0000_00FF).wrapping_mul(100 + (1_000_000 << 32));
    let high = (twos >> 16 & 0x0000_00FF_0000_00FF).wrapping_mul(1 + (10_000 << 32));
    Some(low.wrapping_add(high) >> 32)
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
