//! Values as Python's own.

use pyo3::prelude::*;
use wirelore_decode::Value;

/// A number, text or bytes; ``None`` where there is no reading.
pub(crate) fn value<'py>(py: Python<'py>, value: &Value<'_>) -> PyResult<Bound<'py, PyAny>> {
    Ok(match value {
        Value::Integer(number) => number.into_pyobject(py)?.into_any(),
        Value::Number(number) => number.into_pyobject(py)?.into_any(),
        Value::TroubleCode(code) => code.as_str().into_pyobject(py)?.into_any(),
        Value::Text(text) => text.as_ref().into_pyobject(py)?.into_any(),
        Value::Bytes(bytes) => pyo3::types::PyBytes::new(py, bytes).into_any(),
        Value::NoReading | Value::SensorFault | Value::NotDigits | Value::BeyondCurve | Value::TooShort => {
            py.None().into_bound(py)
        }
    })
}
