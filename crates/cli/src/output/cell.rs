//! What a reading says, in words: its value and its state.

use wirelore_decode::{Belongs, ChecksumVerdict, CounterVerdict, ProtectionVerdict, Reading, Value, Verdict};

use crate::number::{push_double, push_integer};

/// Appends the value as plain text, unquoted; nothing where there is none.
pub(crate) fn push_value(value: &Value<'_>, to: &mut Vec<u8>) {
    match value {
        Value::Integer(number) => push_integer(*number, to),
        Value::Number(number) => push_double(*number, to),
        Value::TroubleCode(code) => to.extend_from_slice(code.as_str().as_bytes()),
        Value::Text(text) => to.extend_from_slice(text.as_bytes()),
        Value::Bytes(bytes) => push_hex(bytes, to),
        Value::NoReading | Value::SensorFault | Value::NotDigits | Value::BeyondCurve | Value::TooShort => {}
    }
}

/// Appends bytes as pairs of hexadecimal digits with blanks between.
pub(crate) fn push_hex(bytes: &[u8], to: &mut Vec<u8>) {
    const DIGITS: &[u8; 16] = b"0123456789ABCDEF";
    for (number, byte) in bytes.iter().enumerate() {
        if number > 0 {
            to.push(b' ');
        }
        to.push(DIGITS[usize::from(byte >> 4)]);
        to.push(DIGITS[usize::from(byte & 15)]);
    }
}

/// Appends the state: the word for the value, or why there is none, and what a check has to say. Parts are parted by `; `.
pub(crate) fn push_state(reading: &Reading<'_>, verdict: Option<Verdict>, to: &mut Vec<u8>) {
    let begin = to.len();
    let mut part = |text: &str| {
        if to.len() > begin {
            to.extend_from_slice(b"; ");
        }
        to.extend_from_slice(text.as_bytes());
    };
    match reading.value {
        Value::NoReading => part("no reading"),
        Value::SensorFault => part("sensor fault"),
        Value::NotDigits => part("not decimal digits"),
        Value::BeyondCurve => part("beyond the curve"),
        Value::TooShort => part("frame too short"),
        Value::Number(number) if number.is_nan() => part("not a number"),
        Value::Number(number) if number.is_infinite() => part("infinite"),
        Value::Integer(_) | Value::Number(_) | Value::TroubleCode(_) | Value::Text(_) | Value::Bytes(_) => {}
    }
    if let Some(word) = reading.word {
        part(word);
    }
    if reading.outside_range {
        part("outside range");
    }
    match verdict {
        Some(Verdict::Counter(CounterVerdict::Repeated)) => part("count repeated"),
        Some(Verdict::Counter(CounterVerdict::Jumped { by })) => part(&format!("count jumped by {by}")),
        Some(Verdict::Counter(CounterVerdict::OutsideRange)) => part("not a count"),
        Some(Verdict::Checksum(ChecksumVerdict::Right)) => part("checksum right"),
        Some(Verdict::Checksum(ChecksumVerdict::Wrong { expected, .. })) => {
            part(&format!("checksum wrong (the bytes give 0x{expected:02X})"))
        }
        Some(Verdict::Protection(verdict)) => part(&protection(verdict)),
        _ => {}
    }
}

/// What a protection has to say. Frames that it belongs to are named in the summary.
fn protection(verdict: ProtectionVerdict) -> String {
    use ProtectionVerdict::*;
    match verdict {
        First | Right => "protection right".to_owned(),
        Repeated => "protection right, repeated".to_owned(),
        Lost { messages } => format!("protection right, {messages} lost before"),
        WrongSequence { rise } => format!("protection wrong in sequence (the count rose by {rise})"),
        NotACount => "protection not a count".to_owned(),
        WrongSum { expected, belongs: None, .. } => format!("protection wrong (the bytes give 0x{expected:02X})"),
        WrongSum { expected, belongs: Some(Belongs { data_id, .. }), .. } => {
            format!("protection wrong (the bytes give 0x{expected:02X}, and data id 0x{data_id:X} would fit)")
        }
        WrongDataId { found, .. } => format!("protection of another data id (0x{found:X})"),
        WrongLength { told, is } => format!("protection of another length ({told} bytes told, {is} there)"),
        TooShort => "protection cut off".to_owned(),
    }
}
