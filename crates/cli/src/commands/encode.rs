//! `wirelore encode`: the bytes of one frame, for the bench.

use std::io::Write;

use wirelore_bits::flexray::{HEADER_BYTES, TRAILER_BYTES};
use wirelore_decode::{OnWire, encode, on_wire, parse_assignment};
use wirelore_model::appearance_text;

use crate::args::EncodeArguments;
use crate::atomic::Destination;
use crate::caution::SENDING;
use crate::commands::explain::find_frame;
use crate::description::load;
use crate::failure::{Failure, Outcome};
use crate::output::cell::push_hex;
use crate::summary::counted;
use crate::tell::tell_line;

/// Writes the bytes to standard output and what is to be known of them to standard error: the payload, on FlexRay whole frames.
pub(crate) fn run(arguments: &EncodeArguments) -> Result<Outcome, Failure> {
    let database = load(&arguments.description)?;
    let id = find_frame(&database, &arguments.frame)?;
    let values = arguments.values.iter().map(|text| parse_assignment(&database, id, text));
    let encoded = encode(&database, id, &values.collect::<Result<Vec<_>, _>>()?)?;

    let whole = on_wire(&database, id, &encoded.payload);
    let mut lines = Vec::new();
    for OnWire { bytes, .. } in &whole {
        push_hex(bytes, &mut lines);
        lines.push(b'\n');
    }
    if whole.is_empty() {
        push_hex(&encoded.payload, &mut lines);
        lines.push(b'\n');
    }
    let mut destination = Destination::open(None)?;
    destination.write_all(&lines).map_err(|reason| Failure::writing("standard output", reason))?;
    destination.finish()?;

    let frame = &database.frames[id.index()];
    let place = appearance_text(&database, &frame.seen_on[0]);
    tell_line(&format!("{} on {place}, {}", frame.label.name, counted(encoded.payload.len() as u64, "byte")));
    for OnWire { on_b, cycle, .. } in &whole {
        let channel = if *on_b { "b" } else { "a" };
        tell_line(&format!(
            "on channel {channel} in cycle {cycle}, as no sync or startup frame: {HEADER_BYTES} bytes of header, the payload, {TRAILER_BYTES} of check sequence"
        ));
    }
    for note in &encoded.notes {
        tell_line(&note.to_string());
    }
    tell_line(SENDING);
    Ok(Outcome::Clean)
}
