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
