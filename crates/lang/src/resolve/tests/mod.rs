//! From text to the model: what the intricate parts make of it.

mod arrays;
mod elsewhere;
mod gateways;
mod layouts;
mod lin;
mod messages;
mod orders;
mod packets;
mod protection;
mod repeats;
mod special;
mod timing;
mod wiring;

use wirelore_model::{Content, Database, Frame, Signal};

use crate::{Checked, Rule, check_text};

/// A description on one network, behind two lines that declare it.
fn on_can(rest: &str) -> Checked {
    check_text("test.lore", &format!("network n can 500 kbit/s\n{rest}"))
}

/// The database of a description without errors.
fn database(checked: &Checked) -> &Database {
    checked.database.as_ref().unwrap_or_else(|| panic!("{:#?}", checked.diagnostics))
}

fn rules(checked: &Checked) -> Vec<Rule> {
    checked.diagnostics.iter().map(|message| message.rule).collect()
}

fn named<'a>(frame: &'a Frame, name: &str) -> &'a Signal {
    frame.signals.iter().find(|signal| signal.label.name == name).unwrap_or_else(|| panic!("no signal {name}"))
}

/// `msb..lsb` of a signal in one piece.
fn ends(signal: &Signal) -> String {
    match &signal.content {
        Content::Number { field, .. } => format!("{}..{}", field.places()[0].msb(), field.places()[0].lsb()),
        Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => format!("{}..{:?}", bytes.first, bytes.last),
    }
}
