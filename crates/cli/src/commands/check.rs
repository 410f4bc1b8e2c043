//! `wirelore check`: all mistakes at once.

use std::io;

use wirelore_lang::{Checked, FileLoader, Level, LoadError, Loaded, Loader, check, read_source, render};

use crate::args::{CheckArguments, MessageForm};
use crate::atomic::{write_coloured, write_whole};
use crate::failure::{Failure, Outcome};
use crate::summary::counted;
use crate::tell::colour_wanted;

/// Checks the files and writes the messages to standard output.
pub(crate) fn run(arguments: &CheckArguments) -> Result<Outcome, Failure> {
    let names: Vec<&str> = arguments.files.iter().map(String::as_str).collect();
    let checked = check(&names, &FilesAndInput);
    let is_unreadable = checked.unreadable();
    let Checked { sources, diagnostics, database } = checked;
    let text = match arguments.form {
        MessageForm::Text => {
            let mut text = render::text(&sources, &diagnostics, colour_wanted(&io::stdout()));
            if let Some(database) = &database {
                text.push_str(&what_it_holds(database));
            }
            text
        }
        MessageForm::Jsonl => render::json_lines(&sources, &diagnostics),
        MessageForm::Sarif => render::sarif(&sources, &diagnostics),
    };
    let written = match arguments.form {
        MessageForm::Text => write_coloured(&text),
        MessageForm::Jsonl | MessageForm::Sarif => write_whole(None, text.as_bytes()),
    };
    match written {
        // Who has seen enough still wants to know whether there was something to look at.
        Ok(()) | Err(Failure::PipeClosed) => {}
        Err(failure) => return Err(failure),
    }
    if is_unreadable {
        return Err(Failure::Told);
    }
    let clean = diagnostics.iter().all(|it| it.level() == Level::Hint);
    Ok(if clean { Outcome::Clean } else { Outcome::SomethingToLookAt })
}

/// One line that lets the author see at once whether everything arrived.
fn what_it_holds(database: &wirelore_model::Database) -> String {
    let signals: usize = database.frames.iter().map(|frame| frame.signals.len()).sum();
    let counted = |number: usize, one: &str| counted(number as u64, one);
    format!(
        "{}, {}, {}, {}\n",
        counted(database.networks.len(), "network"),
        counted(database.ecus.len(), "control unit"),
        counted(database.frames.len(), "frame"),
        counted(signals, "signal"),
    )
}

/// Files, and standard input by the name `-`; what that uses is looked for in the current folder.
struct FilesAndInput;

impl Loader for FilesAndInput {
    fn load(&self, path: &str, from: Option<&str>) -> Result<Loaded, LoadError> {
        if path != "-" || from.is_some() {
            return FileLoader.load(path, from);
        }
        let name = "standard input";
        let text = read_source(io::stdin(), name)?;
        Ok(Loaded { key: path.to_owned(), name: name.to_owned(), text })
    }
}
