//! `wirelore encode`: the bytes of one frame, for the bench.

use std::io::Write;

use wirelore_decode::{encode, parse_assignment};

use crate::args::EncodeArguments;
use crate::atomic::Destination;
use crate::caution::SENDING;
use crate::commands::explain::find_frame;
use crate::description::load;
use crate::drawing::appearance_text;
use crate::failure::{Failure, Outcome};
use crate::output::cell::push_hex;

/// Writes the bytes to standard output and what is to be known of them to standard error.
pub(crate) fn run(arguments: &EncodeArguments) -> Result<Outcome, Failure> {
    let database = load(&arguments.description)?;
    let id = find_frame(&database, &arguments.frame)?;
    let values = arguments.values.iter().map(|text| parse_assignment(&database, id, text));
    let encoded = encode(&database, id, &values.collect::<Result<Vec<_>, _>>()?)?;

    let mut line = Vec::new();
    push_hex(&encoded.payload, &mut line);
    line.push(b'\n');
    let mut destination = Destination::open(None)?;
    destination.write_all(&line).map_err(|reason| Failure::writing("standard output", reason))?;
    destination.finish()?;

    let frame = &database.frames[id.index()];
    eprintln!(
        "{} on {}, {}",
        frame.label.name,
        appearance_text(&database, &frame.seen_on[0]),
        bytes(encoded.payload.len())
    );
    for note in &encoded.notes {
        eprintln!("{note}");
    }
    eprintln!("{SENDING}");
    Ok(Outcome::Clean)
}

fn bytes(count: usize) -> String {
    if count == 1 { "1 byte".to_owned() } else { format!("{count} bytes") }
}
