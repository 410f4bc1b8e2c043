//! The table of one frame while its rows come in.

use std::sync::Arc;

use arrow_array::{ArrayRef, RecordBatch};
use arrow_schema::{Field, Schema, SchemaRef};
use wirelore_decode::{Block, Column as Decoded, Decoder, Reading, Verdict};
use wirelore_model::{Database, FrameId, NetworkId, SignalId};

use crate::cells::{Cells, Senders, Stamps, States, Words, cells};
use crate::grid::Held;
use crate::kind::{Kind, dictionary_type};
use crate::layout::{Layout, NETWORK, TIME};
use crate::metadata;
use crate::setup::Setup;

/// Rows of one frame.
#[derive(Debug)]
pub(crate) struct Rows {
    schema: SchemaRef,
    times: Stamps,
    networks: Option<Networks>,
    sources: Option<Senders>,
    columns: Vec<Column>,
    by_signal: Vec<Option<usize>>,
    rows: usize,
    /// How many rows the block has that is being taken in.
    block_rows: usize,
}

/// The networks of a frame that is seen on several.
#[derive(Debug)]
struct Networks {
    words: Words,
    /// By network: its word.
    keys: Vec<i32>,
}

/// What a signal said in a row.
type Said = (Held, Option<Verdict>);

/// One signal's column, or that of several that are never there together.
#[derive(Debug)]
pub(crate) struct Column {
    cells: Box<dyn Cells>,
    states: Option<States>,
    /// How many rows have their cell.
    filled: usize,
    /// Where several signals share it: what they say in the rows of a block.
    shared: Option<Vec<Option<Said>>>,
}

impl Rows {
    /// A table without rows.
    pub(crate) fn new(
        database: &Database,
        decoder: &Decoder,
        frame: FrameId,
        setup: &Setup,
        wanted: impl Fn(SignalId) -> bool,
    ) -> Self {
        let layout = Layout::new(database, decoder, frame, setup, wanted);
        let described = &database.frames[frame.index()];
        let mut fields = vec![Field::new(TIME, setup.times.data_type(), true)];
        if layout.has_network {
            fields.push(Field::new(NETWORK, dictionary_type(), false));
        }
        fields.extend(Senders::field(layout.sources));
        let mut columns = Vec::new();
        for planned in &layout.columns {
            let words = database.words(&described.signals[planned.signals[0].index()]);
            let told = metadata::of_signal(database, decoder, (frame, planned.signals[0]), setup.store);
            fields.extend(signal_fields(&planned.name, planned.kind, told, setup.states));
            let mut column = Column::new(cells(planned.kind, words), setup.states);
            column.shared = (planned.signals.len() > 1).then(Vec::new);
            columns.push(column);
        }
        let schema = Schema::new_with_metadata(fields, metadata::of_frame(database, described, setup));
        Self {
            schema: Arc::new(schema),
            times: Stamps::new(setup.times),
            networks: layout.has_network.then(|| Networks::new(database)),
            sources: Senders::new(layout.sources),
            columns,
            by_signal: layout.by_signal,
            rows: 0,
            block_rows: 0,
        }
    }

    pub(crate) fn schema(&self) -> &SchemaRef {
        &self.schema
    }

    /// Prepares for batches of so many rows.
    pub(crate) fn expect(&mut self, batch_rows: usize) {
        self.times.expect(batch_rows);
        self.columns.iter_mut().for_each(|column| column.cells.expect(batch_rows));
    }

    /// How many rows there are.
    pub(crate) fn count(&self) -> usize {
        self.rows
    }

    /// What the texts and bytes of the first so many rows take.
    pub(crate) fn text_bytes(&self, rows: usize) -> usize {
        self.columns.iter().map(|column| column.text_bytes(rows)).sum()
    }

    /// Takes in the beginning of a block.
    pub(crate) fn block(&mut self, block: &Block<'_>) {
        self.block_rows = block.rows();
        self.times.extend(block);
        for row in 0..block.rows() {
            if let Some(networks) = &mut self.networks {
                networks.push(block.network(row));
            }
            if let Some(sources) = &mut self.sources {
                sources.push(block.source(row));
            }
        }
    }

    /// Takes in a column of the block.
    pub(crate) fn column(&mut self, decoded: &Decoded<'_>) {
        let place = self.by_signal.get(decoded.signal().index()).copied().flatten();
        if let Some(column) = place.and_then(|place| self.columns.get_mut(place)) {
            column.extend(decoded, self.block_rows);
        }
    }

    /// Takes in the end of the block.
    pub(crate) fn end_block(&mut self) {
        self.rows += self.block_rows;
        self.columns.iter_mut().for_each(|column| column.fill_up(self.rows));
    }

    /// The first so many rows as a batch; the rest is there again after [`Rows::restock`].
    pub(crate) fn take(&mut self, rows: usize) -> RecordBatch {
        let mut arrays = vec![self.times.take(rows)];
        arrays.extend(self.networks.as_mut().map(|networks| networks.words.take(rows)));
        arrays.extend(self.sources.as_mut().map(|sources| sources.take(rows)));
        self.columns.iter_mut().for_each(|column| column.take(rows, &mut arrays));
        self.rows -= rows.min(self.rows);
        RecordBatch::try_new(Arc::clone(&self.schema), arrays).expect("each row has one cell in every column")
    }

    /// Takes the memory of the last batch back, once that is gone.
    pub(crate) fn restock(&mut self) {
        self.times.restock();
        if let Some(networks) = &mut self.networks {
            networks.words.restock();
        }
        if let Some(sources) = &mut self.sources {
            sources.restock();
        }
        self.columns.iter_mut().for_each(Column::restock);
    }
}

/// The field of a signal, and that of its companion.
pub(crate) fn signal_fields(
    name: &str,
    kind: Kind,
    told: std::collections::HashMap<String, String>,
    with_states: bool,
) -> impl Iterator<Item = Field> {
    let states = with_states.then(|| Field::new(format!("{name}.state"), dictionary_type(), true));
    let values = Field::new(name, kind.data_type(), true).with_metadata(told);
    std::iter::once(values).chain(states)
}

impl Networks {
    fn new(database: &Database) -> Self {
        let mut words = Words::new();
        let keys = database.networks.iter().map(|network| words.key(&network.label.name)).collect();
        Self { words, keys }
    }

    fn push(&mut self, network: Option<NetworkId>) {
        self.words.append(network.and_then(|network| self.keys.get(network.index()).copied()));
    }
}

impl Column {
    pub(crate) fn new(cells: Box<dyn Cells>, with_states: bool) -> Self {
        Self { cells, states: with_states.then(States::new), filled: 0, shared: None }
    }

    /// Takes in what a signal says in the rows of a block.
    fn extend(&mut self, decoded: &Decoded<'_>, rows: usize) {
        if let Some(said) = &mut self.shared {
            said.resize_with(rows, || None);
            for (row, said) in said.iter_mut().enumerate().filter(|(_, said)| said.is_none()) {
                *said = decoded.reading(row).map(|reading| (Held::of(&reading), decoded.verdict(row)));
            }
            return;
        }
        self.cells.extend(decoded, rows);
        if let Some(states) = &mut self.states {
            states.extend(decoded, rows);
        }
        self.filled += rows;
    }

    /// Ends a block, after which there are so many rows: what signals share is put into the cells; what nobody told is not there.
    fn fill_up(&mut self, rows: usize) {
        let Some(missing) = rows.checked_sub(self.filled).filter(|missing| *missing > 0) else { return };
        let mut shared = self.shared.take();
        let said = shared.as_mut().into_iter().flat_map(|said| said.drain(..)).chain(std::iter::repeat_with(|| None));
        for said in said.take(missing) {
            match said {
                Some((held, verdict)) => self.push(Some(&held.reading()), verdict),
                None => self.push(None, None),
            }
        }
        self.shared = shared;
    }

    /// Appends one row.
    pub(crate) fn push(&mut self, reading: Option<&Reading<'_>>, verdict: Option<Verdict>) {
        self.cells.push(reading);
        if let Some(states) = &mut self.states {
            states.push(reading, verdict);
        }
        self.filled += 1;
    }

    /// What the texts or bytes of its first so many cells take.
    pub(crate) fn text_bytes(&self, rows: usize) -> usize {
        self.cells.text_bytes(rows)
    }

    pub(crate) fn take(&mut self, rows: usize, to: &mut Vec<ArrayRef>) {
        to.push(self.cells.take(rows));
        to.extend(self.states.as_mut().map(|states| states.take(rows)));
        self.filled -= rows.min(self.filled);
    }

    pub(crate) fn restock(&mut self) {
        self.cells.restock();
        if let Some(states) = &mut self.states {
            states.restock();
        }
    }
}
