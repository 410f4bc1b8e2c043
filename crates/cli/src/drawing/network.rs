//! A network in words: what is known of it, who is on it, which frames.

use std::fmt::Write;

use wirelore_draw::{network_facts, terminator_texts};
use wirelore_model::{Database, Ecu, EcuId, Fitted, NetworkId};

use super::words::{push_label, title_of};
use super::{columns, frame_row};

/// The network with its control units and frames.
pub(crate) fn network(database: &Database, id: NetworkId) -> String {
    let network = &database.networks[id.index()];
    let mut text = format!("{}\n", title_of(&network.label));
    push_label(&mut text, &network.label);
    let _ = writeln!(text, "  {}", network_facts(network));
    let terminators = terminator_texts(database, id);
    if !terminators.is_empty() {
        let _ = writeln!(text, "  terminators: {}", terminators.join(", "));
    }
    let units: Vec<[String; 3]> = database
        .ecus
        .iter()
        .zip((0..).map(EcuId))
        .filter(|(ecu, _)| ecu.leads.contains(&id) || ecu.on.iter().any(|attachment| attachment.network == id))
        .map(|(ecu, unit)| {
            let title = ecu.label.title.clone().unwrap_or_default();
            [ecu.label.name.clone(), title, unit_remarks(database, (ecu, unit), id).join(", ")]
        })
        .collect();
    if let Some(star) = &database.networks[id.index()].star {
        let name = |unit: &EcuId| database.ecus[unit.index()].label.name.as_str();
        let place = match &star.at {
            Fitted::Unit(unit) => name(unit),
            Fitted::Wiring(place) => place,
        };
        let branches = network.branches(id, &database.ecus).into_iter();
        let branches = branches.map(|branch| branch.iter().map(name).collect::<Vec<_>>().join(" and "));
        let _ = writeln!(text, "  active star: {place}; branches: {}", branches.collect::<Vec<_>>().join(", "));
    }
    push_part(&mut text, "control units", &columns(&units, "  "));
    let frames: Vec<[String; 4]> = database
        .frames
        .iter()
        .flat_map(|frame| frame.seen_on.iter().map(move |seen| (frame, seen)))
        .filter(|(_, seen)| seen.network == id)
        .map(|(frame, seen)| frame_row(database, frame, seen))
        .collect();
    push_part(&mut text, "frames", &columns(&frames, "  "));
    text
}

fn push_part(text: &mut String, heading: &str, lines: &str) {
    if !lines.is_empty() {
        let _ = write!(text, "\n{heading}\n{lines}");
    }
}

/// What is said of a unit where it stands on a network.
fn unit_remarks(database: &Database, (ecu, id): (&Ecu, EcuId), network: NetworkId) -> Vec<String> {
    let attachment = ecu.on.iter().find(|attachment| attachment.network == network);
    let mut remarks = Vec::new();
    remarks.extend(ecu.leads.contains(&network).then(|| "leads it".to_owned()));
    remarks.extend(attachment.and_then(|it| it.address).map(|address| format!("address 0x{address:02X}")));
    remarks.extend(attachment.and_then(|it| it.ring_position).map(|position| format!("ring position {position}")));
    let passes = |route: &wirelore_model::Route| route.gateway == id && [route.from, route.to].contains(&network);
    remarks.extend(database.routes.iter().any(passes).then(|| "gateway".to_owned()));
    remarks.extend(ecu.optional.then(|| "optional".to_owned()));
    remarks.extend(ecu.label.certainty.as_ref().map(|certainty| certainty.text()));
    remarks
}
