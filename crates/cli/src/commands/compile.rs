//! `wirelore compile`: the typed database as a file, or as Rust source.

use std::io;

use wirelore_lang::{Checked, FileLoader, Level, check, render};
use wirelore_model::store;

use crate::args::{CompileArguments, DatabaseForm};
use crate::atomic::{refuse_overwriting, write_whole};
use crate::failure::{Failure, Outcome};
use crate::tell::{colour_wanted, tell};

/// Checks the files and stores the database; mistakes are told and nothing is written.
pub(crate) fn run(arguments: &CompileArguments) -> Result<Outcome, Failure> {
    let form = match arguments.form {
        Some(form) => form,
        None => form_of_ending(arguments)?,
    };
    let names: Vec<&str> = arguments.files.iter().map(String::as_str).collect();
    let Checked { sources, diagnostics, database } = check(&names, &FileLoader);
    let grave: Vec<_> = diagnostics.into_iter().filter(|it| it.level() > Level::Hint).collect();
    if !grave.is_empty() {
        tell(&render::text(&sources, &grave, colour_wanted(&io::stderr())));
    }
    let Some(database) = database else {
        return Err(Failure::Told);
    };
    refuse_overwriting(&arguments.output, arguments.files.iter().map(String::as_str))?;
    let bytes = match form {
        DatabaseForm::Json => store::to_json(&database).into_bytes(),
        DatabaseForm::Lorebin => store::to_lorebin(&database),
        DatabaseForm::Lorec => wirelore_decode::lorec(&database)?,
        DatabaseForm::Rust => wirelore_codegen::rust_source(&database).into_bytes(),
    };
    write_whole(Some(&arguments.output), &bytes)?;
    Ok(if grave.is_empty() { Outcome::Clean } else { Outcome::SomethingToLookAt })
}

fn form_of_ending(arguments: &CompileArguments) -> Result<DatabaseForm, Failure> {
    match arguments.output.extension().and_then(|ending| ending.to_str()) {
        Some("json") => Ok(DatabaseForm::Json),
        Some("lorebin") => Ok(DatabaseForm::Lorebin),
        Some("lorec") => Ok(DatabaseForm::Lorec),
        Some("rs") => Ok(DatabaseForm::Rust),
        _ => Err(Failure::Usage(format!(
            "cannot tell from \"{}\" what to write; let its name end in .json, .lorebin, .lorec or .rs, or say --to json, lorebin, lorec or rust",
            arguments.output.display()
        ))),
    }
}
