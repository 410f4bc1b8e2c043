//! The columns of a grid: one for every signal on every network.

use rustc_hash::FxHashMap;
use wirelore_decode::{Decoder, Reading};
use wirelore_model::{Database, Frame, FrameId, NetworkId, SignalId, formula_text};

use super::held::Held;
use crate::kind::Kind;
use crate::layout::{Names, TIME};
use crate::setup::Store;

/// The columns of a grid, in the order of the description.
#[derive(Debug)]
pub struct GridColumns {
    pub(super) columns: Vec<GridColumn>,
    /// By frame: the networks it is seen on, each with the column of every signal.
    places: Vec<Places>,
}

type Places = Vec<(NetworkId, Vec<Option<usize>>)>;

/// One column of a grid.
#[derive(Debug)]
pub struct GridColumn {
    pub(super) name: String,
    pub(super) network: NetworkId,
    pub(super) frame: FrameId,
    /// The signal that describes it; others of its name and unit, on pages of which only one holds at a time, share the column.
    pub(super) signal: SignalId,
    timeout_ns: Option<i64>,
    pub(super) held: Option<Held>,
}

impl GridColumns {
    /// Columns for people, with the unit in the name: `FRAME.SIGNAL on NETWORK [UNIT]`, the network where there are several.
    pub fn for_people(
        database: &Database,
        decoder: &Decoder,
        wanted: impl Fn(NetworkId, FrameId, SignalId) -> bool,
    ) -> Self {
        Self::new(database, decoder, &wanted, None)
    }

    /// Columns of one type each.
    pub(super) fn typed(
        database: &Database,
        decoder: &Decoder,
        wanted: impl Fn(NetworkId, FrameId, SignalId) -> bool,
        store: Store,
    ) -> Self {
        Self::new(database, decoder, &wanted, Some(store))
    }

    fn new(
        database: &Database,
        decoder: &Decoder,
        wanted: &impl Fn(NetworkId, FrameId, SignalId) -> bool,
        store: Option<Store>,
    ) -> Self {
        let mut plan = Plan {
            database,
            decoder,
            store,
            columns: Vec::new(),
            by_key: FxHashMap::default(),
            names: Names::of([TIME]),
        };
        let frames = (0..).map(FrameId).zip(&database.frames);
        let places = frames.map(|(id, frame)| plan.frame(id, frame, wanted)).collect();
        Self { columns: plan.columns, places }
    }

    /// The columns.
    #[must_use]
    pub fn columns(&self) -> &[GridColumn] {
        &self.columns
    }

    pub(super) fn place(&self, network: NetworkId, frame: FrameId, signal: SignalId) -> Option<usize> {
        let (_, columns) = self.places.get(frame.index())?.iter().find(|(on, _)| *on == network)?;
        columns.get(signal.index()).copied().flatten()
    }
}

impl GridColumn {
    /// What stands above it.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The signal that describes it.
    #[must_use]
    pub fn signal(&self) -> (FrameId, SignalId) {
        (self.frame, self.signal)
    }

    /// The last reading at a time, unless it is too old for its frame.
    #[must_use]
    pub fn reading_at(&self, at_ns: i64) -> Option<Reading<'_>> {
        let held = self.held.as_ref()?;
        self.timeout_ns.is_none_or(|timeout_ns| held.age_ns(at_ns) <= timeout_ns).then(|| held.reading())
    }
}

/// What signals must have in common to share a column: the name with its unit; and where columns are typed, the kind of cells, and the
/// formula of raw numbers.
type Key = (String, Option<(Kind, String)>);

/// The columns while they are being laid out.
struct Plan<'a> {
    database: &'a Database,
    decoder: &'a Decoder,
    store: Option<Store>,
    columns: Vec<GridColumn>,
    by_key: FxHashMap<Key, usize>,
    names: Names,
}

impl Plan<'_> {
    fn frame(&mut self, id: FrameId, frame: &Frame, wanted: &impl Fn(NetworkId, FrameId, SignalId) -> bool) -> Places {
        let mut places = Vec::new();
        for appearance in &frame.seen_on {
            let network = appearance.network;
            let name = &self.database.networks[network.index()].label.name;
            let suffix = if frame.seen_on.len() > 1 { format!(" on {name}") } else { String::new() };
            let signals = (0..frame.signals.len() as u32).map(SignalId);
            let columns = signals
                .map(|signal| wanted(network, id, signal).then(|| self.column((network, id, signal), frame, &suffix)));
            places.push((network, columns.collect()));
        }
        places
    }

    fn column(&mut self, (network, id, signal): (NetworkId, FrameId, SignalId), frame: &Frame, suffix: &str) -> usize {
        let described = &frame.signals[signal.index()];
        let plain = format!("{}.{}{suffix}", frame.label.name, described.label.name);
        let unit = self.decoder.unit(id, signal).map(|unit| format!(" [{}]", unit.as_str())).unwrap_or_default();
        let kind = self.store.map(|store| Kind::of(self.database, self.decoder, (id, signal, described), store));
        let formula = if self.store == Some(Store::Raw) { formula_text(&described.scaling) } else { String::new() };
        let key = (format!("{plain}{unit}"), kind.map(|kind| (kind, formula)));
        if let Some(known) = self.by_key.get(&key) {
            return *known;
        }
        let name = if kind.is_some() { self.names.next(&plain) } else { key.0.clone() };
        self.by_key.insert(key, self.columns.len());
        let timeout_ns = frame.sending.missing_after().map(|after| i64::try_from(after.0).unwrap_or(i64::MAX));
        self.columns.push(GridColumn { name, network, frame: id, signal, timeout_ns, held: None });
        self.columns.len() - 1
    }
}
