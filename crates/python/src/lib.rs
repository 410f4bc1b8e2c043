//! # Wirelore for Python
//!
//! `wirelore.open("van.lore").decode("drive.pcapng")` gives a dictionary of pyarrow tables, one for each frame that was seen. The columns are
//! handed over through the Arrow C data interface: nothing is copied.
//!
//! It never prints, and never gives a table where a recording could not be read: mistakes are Python exceptions with the text that the
//! command shows. What was lost on the way is in `Decoded.counts` and `Decoded.notes`.

mod decoded;
mod description;
mod table;
mod values;

use pyo3::prelude::*;

pyo3::create_exception!(
    wirelore,
    LoreError,
    pyo3::exceptions::PyValueError,
    "A mistake in a description, a recording that cannot be read, or an option that does not fit."
);

/// The part of the package `wirelore` that is written in Rust.
#[pymodule(name = "_core")]
mod core {
    #[pymodule_export]
    use super::LoreError;
    #[pymodule_export]
    use super::description::{Description, open};
    #[pymodule_export]
    use super::table::Table;
}

/// Any error as a Python exception, with its own text.
fn told(error: impl std::fmt::Display) -> PyErr {
    LoreError::new_err(error.to_string())
}
