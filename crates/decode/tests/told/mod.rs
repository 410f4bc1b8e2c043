//! Readings of the decoder and of flat tables in the same words: equal texts mean equal bits. The fuzz targets take this file in, too.

use wirelore_decode::{Reading, Value};
use wirelore_lorec::Value as Flat;

/// What the decoder says.
pub(crate) fn told(reading: &Reading<'_>) -> String {
    let value = match &reading.value {
        Value::Integer(number) => format!("whole {number}"),
        Value::Number(number) => format!("number {:016X}", number.to_bits()),
        Value::TroubleCode(code) => code.to_string(),
        Value::Text(text) => format!("text {text}"),
        Value::Bytes(bytes) => format!("bytes {bytes:?}"),
        other => format!("{other:?}"),
    };
    format!("{value} {:?} {} {:?}", reading.word, reading.outside_range, reading.bits)
}

/// What a flat table says.
pub(crate) fn told_flat(reading: &wirelore_lorec::Reading<'_>) -> String {
    let value = match &reading.value {
        Flat::Integer(number) => format!("whole {number}"),
        Flat::Number(number) => format!("number {:016X}", number.to_bits()),
        Flat::TroubleCode(code) => code.to_string(),
        Flat::Text(text) => format!("text {text}"),
        Flat::Bytes(bytes) => format!("bytes {bytes:?}"),
        other => format!("{other:?}"),
    };
    format!("{value} {:?} {} {:?}", reading.word, reading.outside_range, reading.bits)
}
