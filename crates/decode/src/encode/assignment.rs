//! Assignments as text: `front_left=62.5`, `speed=40 mph`, `gear=park`, `page=0x02`, `label=abc`, `data=11 22 33`.

use wirelore_bits::{DecimalError, Ratio};
use wirelore_model::{Content, Database, FrameId, Scaling, Signal, Unit, unit};

use super::Given;
use super::assemble::no_such_signal;
use super::error::EncodeError;
use super::value::code_bits;
use crate::near::suggestion;
use wirelore_model::nearest_name;

/// Reads `SIGNAL=VALUE` for a signal of a frame; what VALUE may be follows from the signal: a number with or without a unit, a state word,
/// `no reading` or `absent`, `sensor fault` or `fault`, bits in hexadecimal (`0x1F`) or binary (`0b11`); a trouble code (`U0100-87`);
/// text; bytes in hexadecimal.
///
/// # Errors
/// A text without `=`, a signal that the frame does not have, a value that the signal cannot have.
pub fn parse_assignment(database: &Database, frame: FrameId, text: &str) -> Result<(String, Given), EncodeError> {
    let count = database.frames.len();
    let frame = database.frames.get(frame.index()).ok_or(EncodeError::NoSuchFrame { frame: frame.0, count })?;
    let (name, value) = text.split_once('=').ok_or_else(|| EncodeError::AssignmentText { text: text.to_owned() })?;
    let (name, value) = (name.trim(), value.trim());
    if name.is_empty() {
        return Err(EncodeError::AssignmentText { text: text.to_owned() });
    }
    let mut named = frame.signals_named(name).map(|(_, signal)| signal);
    let Some(signal) = named.next() else {
        return Err(no_such_signal(frame, name));
    };
    let given = match &signal.content {
        Content::Text { .. } => Given::Text(value.to_owned()),
        Content::Bytes { .. } => Given::Bytes(bytes(signal, value)?),
        Content::Number { .. } => number(database, signal, value).or_else(|error| {
            // Of several pages with this name, another one's signal may have such a value.
            named.find_map(|other| number(database, other, value).ok()).ok_or(error)
        })?,
    };
    Ok((name.to_owned(), given))
}

fn number(database: &Database, signal: &Signal, value: &str) -> Result<Given, EncodeError> {
    let words = database.words(signal);
    let no_value =
        |why: String| EncodeError::NoValue { signal: signal.label.name.clone(), text: value.to_owned(), why };
    if words.iter().any(|word| word.word == value) {
        return Ok(Given::Word(value.to_owned()));
    }
    for (prefix, radix, what) in
        [("0x", 16, "hexadecimal"), ("0X", 16, "hexadecimal"), ("0b", 2, "binary"), ("0B", 2, "binary")]
    {
        if let Some(digits) = value.strip_prefix(prefix) {
            let bits = u64::from_str_radix(&digits.replace('_', ""), radix);
            return bits
                .map(Given::Raw)
                .map_err(|_| no_value(format!("write up to 64 bits in {what} behind {prefix}")));
        }
    }
    match value {
        "absent" | "no reading" => return Ok(Given::NoReading),
        "fault" | "sensor fault" => return Ok(Given::SensorFault),
        _ => {}
    }
    if signal.scaling == Scaling::TroubleCode {
        return code_bits(signal, value).map(Given::Raw);
    }
    let (digits, rest) = split_number(value);
    if digits.is_empty() {
        return Err(no_value(match words {
            [] => "write a number, 0x... for bits, or `no reading`".to_owned(),
            words => suggestion(value, words.iter().map(|word| word.word.as_str())),
        }));
    }
    if let Some((decimals, behind)) = decimals_behind_comma(digits, rest) {
        let behind = if behind.is_empty() { String::new() } else { format!(" {behind}") };
        return Err(no_value(format!("the decimal sign is a point: {digits}.{decimals}{behind}")));
    }
    let number = Ratio::from_decimal(digits.strip_prefix('+').unwrap_or(digits))
        .map_err(|error: DecimalError| no_value(error.to_string()))?;
    let unit = if rest.is_empty() { None } else { Some(unit_of(signal, rest)?) };
    Ok(Given::Value { number, unit })
}

/// What stands behind a whole number and a comma: more digits, then perhaps a unit.
fn decimals_behind_comma<'a>(digits: &str, rest: &'a str) -> Option<(&'a str, &'a str)> {
    let decimals = rest.strip_prefix(',').filter(|_| !digits.contains('.'))?;
    let end = decimals.find(|character: char| !character.is_ascii_digit()).unwrap_or(decimals.len());
    let (decimals, behind) = decimals.split_at(end);
    (!decimals.is_empty() && !behind.starts_with([',', '.'])).then_some((decimals, behind.trim()))
}

fn unit_of(signal: &Signal, text: &str) -> Result<Unit, EncodeError> {
    if let Some(described) = signal.unit.as_ref().filter(|described| described.as_str() == text) {
        return Ok(described.clone());
    }
    Unit::known(text).ok_or_else(|| {
        let fitting = |symbol: &&str| match (&signal.unit, Unit::known(symbol)) {
            (Some(described), Some(other)) => unit::conversion(&other, described).is_some(),
            _ => false,
        };
        let near = nearest_name(text, unit::symbols().iter().copied().filter(fitting));
        let why = match (near, &signal.unit) {
            (Some(near), _) => format!("it is no unit; did you mean `{near}`?"),
            (None, Some(described)) => format!("it is no unit; its values are in {described}"),
            (None, None) => "it is no unit, and the signal has none".to_owned(),
        };
        EncodeError::Unit { signal: signal.label.name.clone(), unit: text.to_owned(), why }
    })
}

/// The digits of a decimal number, and what stands behind them.
fn split_number(text: &str) -> (&str, &str) {
    let bytes = text.as_bytes();
    let digits_from = |mut at: usize| {
        while bytes.get(at).is_some_and(|byte| byte.is_ascii_digit() || *byte == b'_') {
            at += 1;
        }
        at
    };
    let sign = usize::from(matches!(bytes.first(), Some(b'-' | b'+')));
    let whole = digits_from(sign);
    let mut end = whole;
    if bytes.get(end) == Some(&b'.') {
        end = digits_from(end + 1);
    }
    if end == sign || end == sign + 1 && whole == sign {
        return ("", text);
    }
    if matches!(bytes.get(end), Some(b'e' | b'E')) {
        let sign = end + 1 + usize::from(matches!(bytes.get(end + 1), Some(b'-' | b'+')));
        let exponent = digits_from(sign);
        if exponent > sign {
            end = exponent;
        }
    }
    (&text[..end], text[end..].trim())
}

/// Bytes in hexadecimal, with or without blanks between them.
fn bytes(signal: &Signal, text: &str) -> Result<Vec<u8>, EncodeError> {
    let no_value = || {
        let why = "write whole bytes in hexadecimal, such as 11 22 33".to_owned();
        EncodeError::NoValue { signal: signal.label.name.clone(), text: text.to_owned(), why }
    };
    let digits: String = text.strip_prefix("0x").unwrap_or(text).chars().filter(|c| !c.is_whitespace()).collect();
    if !digits.len().is_multiple_of(2) || !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
        return Err(no_value());
    }
    let pair = |at: usize| u8::from_str_radix(&digits[at..at + 2], 16).map_err(|_| no_value());
    (0..digits.len()).step_by(2).map(pair).collect()
}
