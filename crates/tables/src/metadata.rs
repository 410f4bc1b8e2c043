//! What is told of a table and of each of its columns beside the values: pairs of plain words. No clock and no machine is named: the same
//! input gives the same bytes.

use std::collections::HashMap;

use wirelore_decode::{Decoder, SourceKinds};
use wirelore_model::{
    Certainty, Database, Frame, FrameId, Scaling, SignalId, appearance_text, formula_text, state_words_text,
};

use crate::setup::{Setup, Store};

/// The program, as files name it.
pub(crate) const PROGRAM: &str = concat!("wirelore ", env!("CARGO_PKG_VERSION"));

/// Pairs of words; the formats sort them.
type Pairs = HashMap<String, String>;

fn put(pairs: &mut Pairs, key: &str, value: impl Into<String>) {
    let value = value.into();
    if !value.is_empty() {
        pairs.insert(key.to_owned(), value);
    }
}

/// What is told of any table.
pub(crate) fn of_file(database: &Database, setup: &Setup) -> Pairs {
    let mut pairs = Pairs::new();
    put(&mut pairs, "program", PROGRAM);
    if let Some(vehicle) = &database.vehicle {
        put(&mut pairs, "vehicle", vehicle.label.display());
    }
    put(&mut pairs, "times", setup.times.meaning());
    let numbers = match setup.store {
        Store::Values => "engineering values",
        Store::Raw => "raw numbers",
    };
    put(&mut pairs, "numbers", numbers);
    pairs
}

/// What is told of a frame's table.
pub(crate) fn of_frame(database: &Database, frame: &Frame, setup: &Setup) -> Pairs {
    let mut pairs = of_file(database, setup);
    put(&mut pairs, "frame", frame.label.name.as_str());
    put(&mut pairs, "title", frame.label.title.clone().unwrap_or_default());
    put(&mut pairs, "note", frame.label.note.clone().unwrap_or_default());
    put_certainty(&mut pairs, frame.label.certainty.as_ref());
    put(&mut pairs, "networks", networks(database, frame));
    put(&mut pairs, "identifiers", identifiers(database, frame));
    pairs
}

/// What is told of the column of sources.
pub(crate) fn of_sources(kinds: SourceKinds) -> Pairs {
    let meanings = [
        (kinds.addresses, "source addresses"),
        (kinds.standard, "identifiers of 11 bits"),
        (kinds.extended, "identifiers of 29 bits"),
    ];
    let told: Vec<&str> = meanings.into_iter().filter(|(is_there, _)| *is_there).map(|(_, words)| words).collect();
    Pairs::from([("sources".to_owned(), told.join(", "))])
}

/// What is told of a signal's column.
pub(crate) fn of_signal(
    database: &Database,
    decoder: &Decoder,
    (id, signal): (FrameId, SignalId),
    store: Store,
) -> Pairs {
    let frame = &database.frames[id.index()];
    let described = &frame.signals[signal.index()];
    let label = &described.label;
    let mut pairs = Pairs::new();
    put(&mut pairs, "frame", frame.label.name.as_str());
    put(&mut pairs, "signal", label.name.as_str());
    put(&mut pairs, "title", label.title.clone().unwrap_or_default());
    put(&mut pairs, "note", label.note.clone().unwrap_or_default());
    put_certainty(&mut pairs, database.certainty(id, signal));
    put(&mut pairs, "networks", networks(database, frame));
    put(&mut pairs, "identifiers", identifiers(database, frame));
    put(&mut pairs, "words", state_words_text(database, described));
    let unit = match store {
        Store::Values => decoder.unit(id, signal),
        Store::Raw => described.unit.as_ref(),
    };
    put(&mut pairs, "unit", unit.map_or("", |unit| unit.as_str()));
    if store == Store::Raw && described.encoding().is_some() {
        put(&mut pairs, "formula", formula_text(&described.scaling));
        if let Scaling::Affine(affine) = &described.scaling {
            put(&mut pairs, "factor", affine.factor().to_string());
            put(&mut pairs, "offset", affine.offset().to_string());
        }
    }
    pairs
}

/// How sure the author is, and what that rests on, where it is stated.
fn put_certainty(pairs: &mut Pairs, certainty: Option<&Certainty>) {
    let Some(certainty) = certainty else { return };
    put(pairs, "certainty", certainty.grade.words());
    put(pairs, "evidence", certainty.evidence.clone().unwrap_or_default());
}

fn networks(database: &Database, frame: &Frame) -> String {
    let mut names: Vec<&str> = Vec::new();
    for appearance in &frame.seen_on {
        let name = database.networks[appearance.network.index()].label.name.as_str();
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names.join(", ")
}

fn identifiers(database: &Database, frame: &Frame) -> String {
    let texts = frame.seen_on.iter().map(|appearance| appearance_text(database, appearance));
    texts.collect::<Vec<_>>().join(", ")
}
