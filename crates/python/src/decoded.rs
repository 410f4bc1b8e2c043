//! Recordings to tables.

use std::path::PathBuf;

use pyo3::PyResult;
use wirelore_decode::{BindMap, Decoder, Options, Selection, Session, Setup, Tables, Tally, Units};
use wirelore_log::Recording;
use wirelore_model::{Database, FrameId};
use wirelore_tables::{SchemaRef, Store, TableMaker, Times};

use crate::table::Kept;
use crate::{LoreError, told};

/// Everything that waits for its table together, in bytes.
const MEMORY_BYTES: usize = 128 << 20;

/// What is wanted of the recordings.
pub(crate) struct Wanted {
    setup: Setup,
    session: Options,
    tables: wirelore_tables::Setup,
}

/// What came out.
pub(crate) struct Done {
    /// By the names of their frames, in the order of the description.
    pub(crate) tables: Vec<(String, Kept)>,
    pub(crate) counts: Vec<(&'static str, u64)>,
    pub(crate) notes: Vec<String>,
}

impl Wanted {
    pub(crate) fn new(
        database: &Database,
        (signals, units): (Option<&str>, Option<&str>),
        (only, bind): (Option<Vec<String>>, Option<&str>),
        (store, states, times): (&str, bool, &str),
        (from_s, until_s): (Option<f64>, Option<f64>),
    ) -> PyResult<Self> {
        let selection = signals.map(|patterns| Selection::matching(database, patterns)).transpose().map_err(told)?;
        let units = units.map(Units::parse).transpose().map_err(told)?.unwrap_or_default();
        let bind = bind.map(BindMap::parse).transpose().map_err(told)?.unwrap_or_default();
        let store = match store {
            "values" => Store::Values,
            "raw" => Store::Raw,
            other => return Err(LoreError::new_err(format!("store is \"values\" or \"raw\", and not \"{other}\""))),
        };
        let times = match times {
            "start" => Times::Start,
            "recorded" => Times::Recorded,
            "clock" => Times::Clock,
            other => {
                let told = format!("times is \"start\", \"recorded\" or \"clock\", and not \"{other}\"");
                return Err(LoreError::new_err(told));
            }
        };
        let (from_ns, until_ns) = (nanoseconds("from_s", from_s)?, nanoseconds("until_s", until_s)?);
        Ok(Self {
            setup: Setup { selection: selection.unwrap_or_default(), units },
            session: Options { bind, only, from_ns, until_ns, threads: None },
            tables: wirelore_tables::Setup { store, states, times, memory_bytes: MEMORY_BYTES },
        })
    }
}

fn nanoseconds(name: &str, seconds: Option<f64>) -> PyResult<Option<i64>> {
    let whole = |seconds: f64| {
        let ns = (seconds * 1e9).round();
        let fits = (0.0..9.2e18).contains(&ns);
        fits.then_some(ns as i64).ok_or_else(|| LoreError::new_err(format!("{name} is a time in seconds, not below 0")))
    };
    seconds.map(whole).transpose()
}

/// Decodes recordings, one after the other.
pub(crate) fn decode(database: &Database, wanted: &Wanted, logs: &[PathBuf]) -> PyResult<Done> {
    if logs.is_empty() {
        return Err(LoreError::new_err("no recording is given"));
    }
    let decoder = Decoder::with(database, &wanted.setup).map_err(told)?;
    let mut session = Session::new(&decoder, &wanted.session).map_err(told)?;
    let mut kept: Vec<(FrameId, Kept)> = Vec::new();
    let mut notes = Vec::new();
    {
        let selection = &wanted.setup.selection;
        let open = |frame: FrameId, schema: &SchemaRef| {
            let batches = Kept::new(schema);
            kept.push((frame, batches.clone()));
            Ok(Box::new(batches) as Box<_>)
        };
        let wants = |frame, signal| selection.wants(frame, signal);
        let mut maker = TableMaker::new(database, &decoder, wants, wanted.tables, open);
        let mut tables = Tables::new(database, &decoder, wanted.tables.store.into(), |frame| maker.table(frame));
        for log in logs {
            let mut recording = Recording::open(log, &wirelore_log::Options::default()).map_err(told)?;
            session.run_tables(&mut recording, &mut tables).map_err(told)?;
            notes.extend(recording.report().told().iter().map(|line| format!("{}: {line}", log.display())));
        }
        for (_, table) in tables.into_sinks() {
            table.finish().map_err(told)?;
        }
    }
    kept.sort_by_key(|(frame, _)| *frame);
    let choices = session.bindings().iter().filter(|binding| binding.reason.was_a_choice());
    notes.extend(choices.map(ToString::to_string));
    notes.extend(
        session
            .channels_never_seen()
            .map(|channel| format!("bind names channel {channel}, which is in none of the logs")),
    );
    let tables = kept.into_iter().map(|(frame, kept)| (database[frame].label.name.clone(), kept)).collect();
    Ok(Done { tables, counts: counts(session.tally()), notes })
}

/// The parts that every frame falls into.
fn counts(tally: &Tally) -> Vec<(&'static str, u64)> {
    vec![
        ("read", tally.read),
        ("decoded", tally.decoded),
        ("too_short", tally.too_short),
        ("without_description", tally.without_description),
        ("not_selected", tally.not_selected),
        ("remote", tally.remote),
        ("error", tally.error),
        ("carrying", tally.carrying),
        ("unanswered", tally.unanswered),
        ("faulty", tally.faulty),
        ("null", tally.null),
        ("wire_signals", tally.wire_signals),
        ("damaged", tally.damaged),
        ("on_unbound_channel", tally.on_unbound_channel),
        ("left_out_by_network", tally.left_out_by_network),
        ("left_out_by_time", tally.left_out_by_time),
    ]
}
