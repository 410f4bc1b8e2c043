//! Numbers as text: the shortest that reads back to the same double.

use std::io::Write;

use wirelore_bits::text;
use wirelore_decode::Value;

/// A whole number in hexadecimal, with all digits that its bits have.
pub(crate) fn hexadecimal(value: i128, digits: usize) -> String {
    format!("0x{value:0digits$X}")
}

/// Appends a double: the shortest digits that give the same double back, whole numbers without a point.
pub(crate) fn push_double(value: f64, to: &mut Vec<u8>) {
    let mut room = [0; text::ROOM_BYTES];
    match text::decimal(value, &mut room) {
        Some(length) => to.extend_from_slice(&room[..length]),
        None => push_any_double(value, to),
    }
}

/// The same for doubles that are no short decimals.
#[cold]
fn push_any_double(value: f64, to: &mut Vec<u8>) {
    // Writing to memory cannot fail.
    let _ = write!(to, "{}", Value::Number(value));
}

/// Appends a double with as many digits as fit into so many characters: exactly where its shortest text fits, else rounded.
pub(crate) fn push_rounded(value: f64, width: usize, to: &mut Vec<u8>) {
    let begin = to.len();
    push_double(value, to);
    if to.len() - begin <= width {
        return;
    }
    let whole = format!("{value:.0}").len();
    let text = match width.checked_sub(whole + 1) {
        Some(decimals) if value.abs() >= 1e-3 => format!("{value:.decimals$}"),
        _ => format!("{value:.*e}", width.saturating_sub(8)),
    };
    to.truncate(begin);
    to.extend_from_slice(text.as_bytes());
}

/// Appends a whole number.
pub(crate) fn push_integer(value: i128, to: &mut Vec<u8>) {
    let Ok(size) = u64::try_from(value.unsigned_abs()) else {
        // Writing to memory cannot fail.
        let _ = write!(to, "{value}");
        return;
    };
    if value < 0 {
        to.push(b'-');
    }
    let mut room = [0; text::ROOM_BYTES];
    let length = text::whole(size, &mut room);
    to.extend_from_slice(&room[..length]);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(push: impl FnOnce(&mut Vec<u8>)) -> String {
        let mut bytes = Vec::new();
        push(&mut bytes);
        String::from_utf8(bytes).expect("numbers are ASCII")
    }

    #[test]
    fn doubles_are_as_short_as_can_be() {
        for (value, shown) in
            [(50.0, "50"), (0.1, "0.1"), (-40.0, "-40"), (1e300, "1e+300"), (0.0, "0"), (5e-324, "5e-324")]
        {
            assert_eq!(text(|to| push_double(value, to)), shown);
            assert_eq!(shown.parse::<f64>(), Ok(value));
        }
        assert_eq!(text(|to| push_double(f64::NEG_INFINITY, to)), "-inf");
    }

    #[test]
    fn long_doubles_are_rounded_to_a_width() {
        for (value, shown) in
            [(27.713155173785093, "27.713155174"), (62.5, "62.5"), (-0.017453292519943295, "-0.017453293")]
        {
            assert_eq!(text(|to| push_rounded(value, 12, to)), shown);
        }
        assert!(text(|to| push_rounded(1.2345678901234567e-200, 12, to)).len() <= 12);
    }

    #[test]
    fn whole_numbers() {
        let below_64_bits = -i128::from(u64::MAX);
        for value in [0, 7, u64::MAX.into(), i128::from(u64::MAX) + 1, -1, below_64_bits, below_64_bits - 1] {
            assert_eq!(text(|to| push_integer(value, to)), value.to_string());
        }
    }
}
