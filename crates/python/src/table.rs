//! One decoded table, as Python takes it over.

use std::sync::{Arc, Mutex};

use arrow_array::ffi_stream::FFI_ArrowArrayStream;
use arrow_array::{RecordBatch, RecordBatchIterator};
use pyo3::prelude::*;
use pyo3::types::PyCapsule;
use wirelore_tables::{SchemaRef, TableWriter};

/// A decoded table: anything that takes Arrow streams can have it (``pyarrow.table(table)``), without a copy.
#[pyclass(frozen, module = "wirelore")]
#[derive(Debug)]
pub(crate) struct Table {
    schema: SchemaRef,
    batches: Vec<RecordBatch>,
}

#[pymethods]
impl Table {
    /// The table as a stream of the Arrow C data interface (the PyCapsule protocol of Arrow).
    #[pyo3(signature = (requested_schema=None))]
    fn __arrow_c_stream__<'py>(
        &self,
        py: Python<'py>,
        requested_schema: Option<Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyCapsule>> {
        // The protocol lets a producer that converts nothing leave the request aside.
        let _ = requested_schema;
        let batches = self.batches.clone().into_iter().map(Ok);
        let stream = FFI_ArrowArrayStream::new(Box::new(RecordBatchIterator::new(batches, Arc::clone(&self.schema))));
        PyCapsule::new_with_value(py, stream, c"arrow_array_stream")
    }
}

/// Keeps the batches of one table.
#[derive(Debug, Clone)]
pub(crate) struct Kept {
    schema: SchemaRef,
    batches: Arc<Mutex<Vec<RecordBatch>>>,
}

impl Kept {
    pub(crate) fn new(schema: &SchemaRef) -> Self {
        Self { schema: Arc::clone(schema), batches: Arc::default() }
    }

    pub(crate) fn into_table(self) -> Table {
        let mut batches = self.batches.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
        Table { schema: self.schema, batches: std::mem::take(&mut batches) }
    }
}

impl TableWriter for Kept {
    /// Few large batches: pyarrow's chunks are dear where they are many.
    fn most_rows(&self) -> usize {
        1 << 20
    }

    fn write(&mut self, batch: &RecordBatch) -> std::io::Result<()> {
        let mut batches = self.batches.lock().unwrap_or_else(std::sync::PoisonError::into_inner);
        batches.push(batch.clone());
        Ok(())
    }

    fn finish(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}
