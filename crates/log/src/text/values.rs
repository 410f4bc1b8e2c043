//! Numbers, hex bytes and yes-or-no in cells.

/// The base of a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Base {
    Hex,
    Decimal,
}

/// The value of each hex digit; [`NO_DIGIT`] for every other byte.
const HEX_DIGITS: [u8; 256] = hex_digits();
const NO_DIGIT: u8 = 0xFF;

const fn hex_digits() -> [u8; 256] {
    let mut table = [NO_DIGIT; 256];
    let mut value = 0;
    while value < 16 {
        let (lower, upper) = (b"0123456789abcdef"[value], b"0123456789ABCDEF"[value]);
        table[lower as usize] = value as u8;
        table[upper as usize] = value as u8;
        value += 1;
    }
    table
}

/// Whether the byte is a hex digit.
#[inline]
pub(super) fn is_hex_digit(byte: u8) -> bool {
    HEX_DIGITS[usize::from(byte)] != NO_DIGIT
}

/// The cell without `0x` in front, if it has that.
#[inline]
pub(super) fn without_prefix(cell: &[u8]) -> Option<&[u8]> {
    match cell {
        [b'0', b'x' | b'X', digits @ ..] => Some(digits),
        _ => None,
    }
}

/// A whole number of hex digits that fits into 64 bits.
#[inline]
pub(super) fn hex(digits: &[u8]) -> Option<u64> {
    if digits.is_empty() || digits.len() > 16 {
        return None;
    }
    let mut value = 0;
    for &byte in digits {
        let digit = HEX_DIGITS[usize::from(byte)];
        if digit == NO_DIGIT {
            return None;
        }
        value = value << 4 | u64::from(digit);
    }
    Some(value)
}

/// A whole number of decimal digits that fits into 64 bits.
#[inline]
pub(super) fn decimal(digits: &[u8]) -> Option<u64> {
    if digits.is_empty() || digits.len() > 19 {
        return None;
    }
    let mut value = 0_u64;
    for &byte in digits {
        let digit = byte.wrapping_sub(b'0');
        if digit > 9 {
            return None;
        }
        value = value * 10 + u64::from(digit);
    }
    Some(value)
}

/// What went wrong with hex bytes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum BytesFlaw {
    OddDigits,
    NotDigits,
    TooMany,
}

/// Reads hex digits into `bytes`, two for each byte, with or without blanks between bytes and `0x` in front of groups.
#[inline]
pub(super) fn hex_bytes(cell: &[u8], bytes: &mut [u8]) -> Result<usize, BytesFlaw> {
    let mut count = 0;
    let mut rest = cell;
    while let [first, tail @ ..] = rest {
        let high = HEX_DIGITS[usize::from(*first)];
        if high == NO_DIGIT {
            if !matches!(first, b' ' | b'\t') {
                return Err(BytesFlaw::NotDigits);
            }
            rest = tail;
            continue;
        }
        let low = tail.first().map_or(NO_DIGIT, |&second| HEX_DIGITS[usize::from(second)]);
        if low == NO_DIGIT {
            match without_prefix(rest) {
                Some(digits) if digits.first().is_some_and(|&byte| is_hex_digit(byte)) => {
                    rest = digits;
                    continue;
                }
                _ => return Err(odd_or_not_digits(tail)),
            }
        }
        *bytes.get_mut(count).ok_or(BytesFlaw::TooMany)? = high << 4 | low;
        count += 1;
        rest = &tail[1..];
    }
    Ok(count)
}

#[cold]
fn odd_or_not_digits(tail: &[u8]) -> BytesFlaw {
    match tail.first() {
        None | Some(b' ' | b'\t') => BytesFlaw::OddDigits,
        _ => BytesFlaw::NotDigits,
    }
}

/// Reads decimal bytes, 0..=255 each, with blanks between them.
pub(super) fn decimal_bytes(cell: &[u8], bytes: &mut [u8]) -> Result<usize, BytesFlaw> {
    let mut count = 0;
    for group in cell.split(|byte| matches!(byte, b' ' | b'\t')).filter(|group| !group.is_empty()) {
        let byte = decimal(group).and_then(|value| u8::try_from(value).ok()).ok_or(BytesFlaw::NotDigits)?;
        *bytes.get_mut(count).ok_or(BytesFlaw::TooMany)? = byte;
        count += 1;
    }
    Ok(count)
}

/// Yes or no; `Some(None)` for an empty cell, `None` for anything else.
#[inline]
pub(super) fn flag(cell: &[u8]) -> Option<Option<bool>> {
    match cell {
        b"1" => Some(Some(true)),
        b"0" => Some(Some(false)),
        b"" => Some(None),
        _ => flag_word(cell),
    }
}

#[cold]
fn flag_word(cell: &[u8]) -> Option<Option<bool>> {
    let is_any = |words: &[&str]| words.iter().any(|word| cell.eq_ignore_ascii_case(word.as_bytes()));
    if is_any(&["true", "yes", "y"]) {
        Some(Some(true))
    } else if is_any(&["false", "no", "n"]) {
        Some(Some(false))
    } else {
        None
    }
}

/// Whether a cell looks as a spreadsheet writes a large number: `3.00E+09`, `3,00E+09`, `1E+15`.
#[cold]
pub(super) fn is_spreadsheet_number(cell: &[u8]) -> bool {
    let Some(at) = cell.iter().position(|byte| matches!(byte, b'E' | b'e')) else {
        return false;
    };
    let (mantissa, exponent) = (&cell[..at], &cell[at + 1..]);
    let is_mantissa =
        !mantissa.is_empty() && mantissa.iter().all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b',' | b'-'));
    let is_signed = matches!(exponent.first(), Some(b'+' | b'-'));
    let digits = if is_signed { &exponent[1..] } else { exponent };
    let was_rewritten = is_signed || mantissa.iter().any(|byte| matches!(byte, b'.' | b','));
    is_mantissa && was_rewritten && !digits.is_empty() && digits.iter().all(u8::is_ascii_digit)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bytes_of(cell: &str) -> Result<Vec<u8>, BytesFlaw> {
        let mut bytes = [0; 64];
        let count = hex_bytes(cell.as_bytes(), &mut bytes)?;
        Ok(bytes[..count].to_vec())
    }

    #[test]
    fn hex_bytes_with_and_without_blanks() {
        for cell in ["0aFF10", "0A FF 10", " 0A  FF10 ", "0x0aff10", "0x0A 0xFF 0x10"] {
            assert_eq!(bytes_of(cell), Ok(vec![0x0A, 0xFF, 0x10]), "{cell}");
        }
        assert_eq!(bytes_of(""), Ok(vec![]));
        assert_eq!(bytes_of("0"), Err(BytesFlaw::OddDigits));
        assert_eq!(bytes_of("AA B CC"), Err(BytesFlaw::OddDigits));
        assert_eq!(bytes_of("AAxBB"), Err(BytesFlaw::NotDigits));
        assert_eq!(bytes_of("0x"), Err(BytesFlaw::NotDigits));
        assert_eq!(bytes_of("zz"), Err(BytesFlaw::NotDigits));
        assert_eq!(bytes_of(&"00".repeat(65)), Err(BytesFlaw::TooMany));
        assert_eq!(bytes_of(&"00".repeat(64)).map(|bytes| bytes.len()), Ok(64));
    }

    #[test]
    fn numbers() {
        assert_eq!(hex(b"18FEF100"), Some(0x18FE_F100));
        assert_eq!(hex(b"ffffffffffffffff"), Some(u64::MAX));
        assert_eq!((hex(b""), hex(b"1G"), hex(b"10000000000000000")), (None, None, None));
        assert_eq!(decimal(b"0419361024"), Some(419_361_024));
        assert_eq!((decimal(b""), decimal(b"1A"), decimal(b"99999999999999999999")), (None, None, None));
    }

    #[test]
    fn spreadsheet_numbers() {
        for cell in ["3.00E+09", "1,23E+15", "1E+15", "5.0e-3", "3.1E9"] {
            assert!(is_spreadsheet_number(cell.as_bytes()), "{cell}");
        }
        for cell in ["3E9", "ABE", "E+09", "3.00", "3.0E+", "18FEF100"] {
            assert!(!is_spreadsheet_number(cell.as_bytes()), "{cell}");
        }
    }

    #[test]
    fn flags() {
        assert_eq!(
            (flag(b"1"), flag(b"No"), flag(b""), flag(b"2")),
            (Some(Some(true)), Some(Some(false)), Some(None), None)
        );
    }
}
