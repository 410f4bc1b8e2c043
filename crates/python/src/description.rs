//! A checked description.

use std::path::PathBuf;

use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyDict};
use wirelore_decode::{Decoder, Reading};
use wirelore_model::{Database, SignalId, store};

use crate::decoded::{Wanted, decode};
use crate::values::value;
use crate::{LoreError, told};

/// A checked description of a vehicle's networks; ``wirelore.open`` makes it.
#[pyclass(frozen, module = "wirelore")]
#[derive(Debug)]
pub(crate) struct Description {
    database: Database,
    /// For single frames: all signals, in the described units.
    decoder: Decoder,
}

/// Opens a description: a ``.lore`` text with all files that it uses, or a compiled ``.json`` or ``.lorebin``.
///
/// Raises ``LoreError`` with every mistake, its place, its reason and a way out.
#[pyfunction]
pub(crate) fn open(py: Python<'_>, path: PathBuf) -> PyResult<Description> {
    py.detach(|| {
        let database = wirelore_lang::open(&path).map_err(told)?;
        let decoder = Decoder::new(&database).map_err(told)?;
        Ok(Description { database, decoder })
    })
}

#[pymethods]
impl Description {
    /// The names of the networks.
    #[getter]
    fn networks(&self) -> Vec<&str> {
        self.database.networks.iter().map(|network| network.label.name.as_str()).collect()
    }

    /// The names of the control units.
    #[getter]
    fn ecus(&self) -> Vec<&str> {
        self.database.ecus.iter().map(|ecu| ecu.label.name.as_str()).collect()
    }

    /// The names of the frames.
    #[getter]
    fn frames(&self) -> Vec<&str> {
        self.database.frames.iter().map(|frame| frame.label.name.as_str()).collect()
    }

    /// The whole description as JSON, by the schema that comes with Wirelore.
    fn to_json(&self) -> String {
        store::to_json(&self.database)
    }

    /// Decodes recordings, one after the other, into a dictionary of tables by the names of their frames.
    #[pyo3(signature = (*logs, signals=None, only=None, bind=None, units=None, store="values", states=false, times="start", from_s=None, until_s=None))]
    #[allow(clippy::too_many_arguments, reason = "in Python they are options with names")]
    fn decode<'py>(
        &self,
        py: Python<'py>,
        logs: Vec<PathBuf>,
        signals: Option<&str>,
        only: Option<Vec<String>>,
        bind: Option<&str>,
        units: Option<&str>,
        store: &str,
        states: bool,
        times: &str,
        from_s: Option<f64>,
        until_s: Option<f64>,
    ) -> PyResult<(Bound<'py, PyDict>, Bound<'py, PyDict>, Vec<String>)> {
        let wanted =
            Wanted::new(&self.database, (signals, units), (only, bind), (store, states, times), (from_s, until_s))?;
        let done = py.detach(|| decode(&self.database, &wanted, &logs))?;
        let tables = PyDict::new(py);
        let pyarrow = py.import("pyarrow")?;
        for (name, table) in done.tables {
            let table = Bound::new(py, table.into_table())?;
            tables.set_item(name, pyarrow.call_method1("table", (table,))?)?;
        }
        let counts = PyDict::new(py);
        for (name, count) in done.counts {
            counts.set_item(name, count)?;
        }
        Ok((tables, counts, done.notes))
    }

    /// Decodes the bytes of one CAN or LIN frame into a dictionary of its signals; where the frame gives several rows, those of the first.
    #[pyo3(signature = (network, id, payload, *, extended=false))]
    fn decode_frame<'py>(
        &self,
        py: Python<'py>,
        network: &str,
        id: u32,
        payload: &Bound<'py, PyBytes>,
        extended: bool,
    ) -> PyResult<Bound<'py, PyDict>> {
        let (network, _) = self
            .database
            .network_named(network)
            .ok_or_else(|| LoreError::new_err(format!("there is no network `{network}`")))?;
        let frame = self
            .decoder
            .find(network, id, extended)
            .ok_or_else(|| LoreError::new_err(format!("no frame on that network is described with id 0x{id:X}")))?;
        let (signals, mut failure) = (PyDict::new(py), None);
        self.decoder.decode(frame, payload.as_bytes(), |signal: SignalId, reading: Reading<'_>| {
            let name = &self.database[frame][signal].label.name;
            let set = value(py, &reading.value).and_then(|value| signals.set_item(name, value));
            failure = failure.take().or(set.err());
        });
        failure.map_or(Ok(signals), Err)
    }

    fn __repr__(&self) -> String {
        let (networks, frames) = (self.database.networks.len(), self.database.frames.len());
        format!("<wirelore.Description: {networks} networks, {frames} frames>")
    }
}
