//! The columns of a frame's table: which there are, what they are called, which signals share one.

use std::collections::BTreeMap;

use wirelore_decode::{Decoder, SourceKinds};
use wirelore_model::{Database, Frame, FrameId, PageId, SignalId, Unit};

use crate::kind::Kind;
use crate::setup::{Setup, Store};

/// The column of times.
pub(crate) const TIME: &str = "time";
/// The column of networks.
pub(crate) const NETWORK: &str = "network";
/// The column of who sent a frame.
pub(crate) const SOURCE: &str = "source";

/// The columns of a frame's table behind its time.
#[derive(Debug)]
pub(crate) struct Layout {
    /// Whether it is told which network a frame was seen on: several are described.
    pub(crate) has_network: bool,
    /// What tells who sent a frame, where that is told.
    pub(crate) sources: SourceKinds,
    pub(crate) columns: Vec<Planned>,
    /// By signal: its column, where it is wanted.
    pub(crate) by_signal: Vec<Option<usize>>,
}

/// A column to come.
#[derive(Debug)]
pub(crate) struct Planned {
    pub(crate) name: String,
    pub(crate) kind: Kind,
    /// The signals that share it; the first one describes it.
    pub(crate) signals: Vec<SignalId>,
}

impl Layout {
    /// The columns of the wanted signals, in the order of the description.
    pub(crate) fn new(
        database: &Database,
        decoder: &Decoder,
        id: FrameId,
        setup: &Setup,
        wanted: impl Fn(SignalId) -> bool,
    ) -> Self {
        let frame = &database.frames[id.index()];
        let home = frame.seen_on[0].network;
        let has_network = frame.seen_on.iter().any(|appearance| appearance.network != home);
        let sources = SourceKinds::of(frame);
        let mut layout = Self { has_network, sources, columns: Vec::new(), by_signal: Vec::new() };
        let leading = [(TIME, true), (NETWORK, has_network), (SOURCE, sources.any())];
        let mut names = Names::of(leading.into_iter().filter(|(_, is_there)| *is_there).map(|(name, _)| name));
        for (signal, described) in (0..).map(SignalId).zip(&frame.signals) {
            let place = wanted(signal).then(|| {
                let kind = Kind::of(database, decoder, (id, signal, described), setup.store);
                let shown = |signal: SignalId| decoder.unit(id, signal);
                if let Some(shared) = layout.shared(frame, (signal, kind), shown, setup.store) {
                    layout.columns[shared].signals.push(signal);
                    return shared;
                }
                let name = names.next(&described.label.name);
                layout.columns.push(Planned { name, kind, signals: vec![signal] });
                layout.columns.len() - 1
            });
            layout.by_signal.push(place);
        }
        layout
    }

    /// The column that a signal can share: one of the same name and meaning whose signals are never there together with it.
    fn shared<'u>(
        &self,
        frame: &Frame,
        (signal, kind): (SignalId, Kind),
        unit: impl Fn(SignalId) -> Option<&'u Unit>,
        store: Store,
    ) -> Option<usize> {
        let described = &frame.signals[signal.index()];
        self.columns.iter().position(|column| {
            column.kind == kind
                && column.signals.iter().all(|&other| {
                    let other_described = &frame.signals[other.index()];
                    other_described.label.name == described.label.name
                        && unit(other) == unit(signal)
                        && (store == Store::Values || other_described.scaling == described.scaling)
                        && never_together(frame, other_described.page, described.page)
                })
        })
    }
}

/// Whether two pages are different ones of one switch, or lie in such: then at most one of them holds.
fn never_together(frame: &Frame, one: Option<PageId>, other: Option<PageId>) -> bool {
    let (one, other) = (way_to(frame, one), way_to(frame, other));
    let parting = one.iter().zip(&other).find(|(one, other)| one != other);
    parting.is_some_and(|(one, other)| frame.pages[one.index()].switch == frame.pages[other.index()].switch)
}

/// The pages around a page and itself, the outermost first.
fn way_to(frame: &Frame, page: Option<PageId>) -> Vec<PageId> {
    let mut way: Vec<PageId> = frame.page_ids_around(page).collect();
    way.reverse();
    way
}

/// Names for columns; the second of a name gets a `.2` behind it (no name of the language has a point in it).
#[derive(Debug)]
pub(crate) struct Names {
    taken: BTreeMap<String, u32>,
}

impl Names {
    /// With some that are taken already.
    pub(crate) fn of<'n>(taken: impl IntoIterator<Item = &'n str>) -> Self {
        Self { taken: taken.into_iter().map(|name| (name.to_owned(), 1)).collect() }
    }

    /// A name that no other column has.
    pub(crate) fn next(&mut self, name: &str) -> String {
        let count = self.taken.entry(name.to_owned()).or_default();
        *count += 1;
        if *count == 1 { name.to_owned() } else { format!("{name}.{count}") }
    }
}
