//! Diagnostic trouble codes as people say them: P0135, U0100-87.

use core::fmt;

/// The first letters, by the two most significant bits of a code (SAE J2012, ISO 15031-6; from memory of the standards).
const LETTERS: [u8; 4] = *b"PCBU";

const DIGITS: [u8; 16] = *b"0123456789ABCDEF";

/// The bits of the shorter form.
const SHORT_BITS: u8 = 16;

/// The bits of the form that ends with a failure type byte (ISO 14229-1, ISO 15031-6).
const LONG_BITS: u8 = 24;

/// A trouble code in words: a letter and four digits, and in the form of 24 bits two more for the type of the failure.
///
/// ```
/// use wirelore_bits::TroubleCode;
///
/// assert_eq!(TroubleCode::of_bits(0x0135, 16).map(|code| code.to_string()).as_deref(), Some("P0135"));
/// assert_eq!(TroubleCode::of_bits(0xC10087, 24).map(|code| code.to_string()).as_deref(), Some("U0100-87"));
/// assert_eq!(TroubleCode::bits_of("u0100-87", 24), Some(0xC10087));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct TroubleCode {
    text: [u8; 8],
    length: u8,
}

impl TroubleCode {
    /// Whether a code can have so many bits.
    #[must_use]
    pub fn has_width(width: u8) -> bool {
        matches!(width, SHORT_BITS | LONG_BITS)
    }

    /// The code that some bits mean; `None` for another width than 16 or 24, and for bits beyond it.
    #[must_use]
    pub fn of_bits(bits: u64, width: u8) -> Option<Self> {
        if !Self::has_width(width) || bits >> width != 0 {
            return None;
        }
        let is_long = width == LONG_BITS;
        let code = if is_long { bits >> 8 } else { bits };
        let digit = |bits: u64| DIGITS[(bits & 0xF) as usize];
        let mut text = [0; 8];
        text[0] = LETTERS[(code >> 14 & 3) as usize];
        // The first digit has two bits, 0 to 3.
        text[1] = digit(code >> 12 & 3);
        for (place, at) in text[2..5].iter_mut().zip([8, 4, 0]) {
            *place = digit(code >> at);
        }
        if is_long {
            text[5] = b'-';
            text[6] = digit(bits >> 4);
            text[7] = digit(bits);
        }
        Some(Self { text, length: if is_long { 8 } else { 5 } })
    }

    /// The bits of a code in words; `None` where the text is no code of this width.
    #[must_use]
    pub fn bits_of(text: &str, width: u8) -> Option<u64> {
        let (code, failure) = match width {
            SHORT_BITS => (text, None),
            LONG_BITS => text.split_once('-').map(|(code, failure)| (code, Some(failure)))?,
            _ => return None,
        };
        let (&[letter, first, ..], 5) = (code.as_bytes(), code.len()) else { return None };
        let letter = LETTERS.iter().position(|known| *known == letter.to_ascii_uppercase())? as u64;
        if !first.is_ascii_digit() || first > b'3' {
            return None;
        }
        let code = letter << 14 | hexadecimal(code.get(1..)?)?;
        match failure {
            None => Some(code),
            Some(failure) if failure.len() == 2 => Some(code << 8 | hexadecimal(failure)?),
            Some(_) => None,
        }
    }

    /// The code in words.
    #[must_use]
    pub fn as_str(&self) -> &str {
        let text = self.text.get(..usize::from(self.length)).unwrap_or_default();
        // Letters, digits and a hyphen.
        core::str::from_utf8(text).unwrap_or_default()
    }
}

fn hexadecimal(digits: &str) -> Option<u64> {
    // The parser of the standard library also takes a sign.
    digits.bytes().all(|digit| digit.is_ascii_hexdigit()).then(|| u64::from_str_radix(digits, 16).ok())?
}

impl fmt::Display for TroubleCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::string::ToString;

    fn both_ways(bits: u64, width: u8, text: &str) {
        assert_eq!(TroubleCode::of_bits(bits, width).map(|code| code.to_string()).as_deref(), Some(text));
        assert_eq!(TroubleCode::bits_of(text, width), Some(bits), "{text}");
    }

    /// SAE J2012 and ISO 15031-6. P0135 for the bytes 01 35 is a worked example of a public forum (talk.maemo.org, post 1257514); P0143, U0100,
    /// U0158 and U0073 are from memory of the standards' lists; the others follow from the rule.
    #[test]
    fn two_bytes_are_a_letter_and_four_digits() {
        for (bits, text) in [
            (0x0135, "P0135"),
            (0x0143, "P0143"),
            (0xC100, "U0100"),
            (0xC158, "U0158"),
            (0xC073, "U0073"),
            (0x4300, "C0300"),
            (0x9234, "B1234"),
            (0x3399, "P3399"),
            (0xF123, "U3123"),
            (0x0000, "P0000"),
            (0xFFFF, "U3FFF"),
        ] {
            both_ways(bits, 16, text);
        }
    }

    /// ISO 14229-1 and ISO 15031-6: the third byte is the type of the failure (SAE J2012-DA, from memory: 0x87 missing message, 0x11 short to
    /// ground).
    #[test]
    fn three_bytes_end_with_the_type_of_the_failure() {
        both_ways(0xC1_0087, 24, "U0100-87");
        both_ways(0x01_3511, 24, "P0135-11");
    }

    #[test]
    fn every_code_comes_back() {
        for bits in (0..=0xFFFF).step_by(crate::STRIDE) {
            let code = TroubleCode::of_bits(bits, 16).expect("two bytes are a code");
            assert_eq!(TroubleCode::bits_of(code.as_str(), 16), Some(bits));
        }
    }

    #[test]
    fn what_is_no_code_is_none() {
        for text in ["", "P", "P013", "P01355", "P4135", "PA135", "X0135", "P+135", "P0135-11", "P01é", "é0135"] {
            assert_eq!(TroubleCode::bits_of(text, 16), None, "{text}");
        }
        for text in ["P0135", "P0135-1", "P0135-111", "P0135-+1", "-11", "P0135-é"] {
            assert_eq!(TroubleCode::bits_of(text, 24), None, "{text}");
        }
        assert_eq!(TroubleCode::bits_of("P0135", 12), None);
        assert_eq!(TroubleCode::of_bits(0x1_0000, 16), None);
        assert_eq!(TroubleCode::of_bits(0, 8), None);
    }
}
