//! Numbers as text: the shortest that reads back to the same double.

/// Appends a double: the shortest digits that give the same double back, whole numbers without a point.
pub(crate) fn push_double(value: f64, to: &mut Vec<u8>) {
    if !value.is_finite() {
        to.extend_from_slice(if value.is_nan() {
            b"nan"
        } else if value > 0.0 {
            b"inf"
        } else {
            b"-inf"
        });
        return;
    }
    let mut buffer = zmij::Buffer::new();
    let text = buffer.format_finite(value);
    to.extend_from_slice(text.strip_suffix(".0").unwrap_or(text).as_bytes());
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
    use std::io::Write;
    if let Ok(small) = u64::try_from(value) {
        let mut digits = [0; 20];
        let mut at = digits.len();
        let mut rest = small;
        loop {
            at -= 1;
            digits[at] = b'0' + (rest % 10) as u8;
            rest /= 10;
            if rest == 0 {
                break;
            }
        }
        to.extend_from_slice(&digits[at..]);
    } else {
        // Writing to memory cannot fail.
        let _ = write!(to, "{value}");
    }
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
        for value in [0, 7, u64::MAX.into(), i128::from(u64::MAX) + 1, -1] {
            assert_eq!(text(|to| push_integer(value, to)), value.to_string());
        }
    }
}
