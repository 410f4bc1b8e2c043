//! `wirelore format`: the one house layout.

use std::fs::File;
use std::io;
use std::path::Path;

use wirelore_lang::{FileId, Sources, read_source, render};

use crate::args::FormatArguments;
use crate::atomic::write_whole;
use crate::failure::{Failure, Outcome};
use crate::tell::{colour_wanted, tell, tell_line, with_causes};

/// Brings each file into the house layout, or tells which are not in it.
pub(crate) fn run(arguments: &FormatArguments) -> Result<Outcome, Failure> {
    let mut outcome = Outcome::Clean;
    for name in &arguments.files {
        let text = read(name)?;
        let Some(laid_out) = lay_out(name, &text) else {
            outcome = Outcome::SomethingToLookAt;
            continue;
        };
        let changed = laid_out != text;
        if arguments.check {
            if changed {
                let line = format!("{name}: not in the house layout; `wirelore format {name}` would change it\n");
                write_whole(None, line.as_bytes())?;
                outcome = Outcome::SomethingToLookAt;
            }
        } else if name == "-" {
            write_whole(None, laid_out.as_bytes())?;
        } else if changed {
            write_whole(Some(Path::new(name)), laid_out.as_bytes())?;
            tell_line(&format!("{name}: brought into the house layout"));
        }
    }
    Ok(outcome)
}

/// The text in the house layout; a text with mistakes in its form is left alone, and the messages say why.
fn lay_out(name: &str, text: &str) -> Option<String> {
    match wirelore_lang::format(text) {
        Ok(laid_out) => Some(laid_out),
        Err(diagnostics) => {
            let mut sources = Sources::default();
            let file = sources.add(name, text);
            debug_assert_eq!(file, FileId(0), "messages of a lone text speak of file 0");
            tell(&render::text(&sources, &diagnostics, colour_wanted(&io::stderr())));
            tell_line(&format!("wirelore: {name} is left as it is until these are mended"));
            None
        }
    }
}

fn read(name: &str) -> Result<String, Failure> {
    let text = if name == "-" {
        read_source(io::stdin(), "standard input")
    } else {
        let file = File::open(name).map_err(|reason| Failure::Read { path: name.into(), reason })?;
        read_source(file, name)
    };
    text.map_err(|error| Failure::Usage(with_causes(&error)))
}
