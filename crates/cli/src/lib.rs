//! # wirelore-cli
//!
//! The command line: [`run`] reads arguments, opens files, shows progress and prints. Everything else is decided in the crates
//! below; each command here is one file that asks them and writes down the answer.
//!
//! Exit status: 0 done; 1 done, and there is something to look at; 2 could not be done; 128 and the number of the signal that
//! ended it.
//!
//! ```
//! let status = wirelore_cli::run(["wirelore", "explain", "signal-overlap"]);
//! assert_eq!(format!("{status:?}"), format!("{:?}", std::process::ExitCode::SUCCESS));
//! ```

mod args;
mod atomic;
mod caution;
mod commands;
mod cut;
mod description;
mod drawing;
mod failure;
mod folder;
mod half_done;
mod logs;
mod moment;
mod number;
mod output;
mod progress;
mod summary;
mod tell;

use std::ffi::OsString;
use std::process::ExitCode;

use clap::Parser;

use crate::args::{Arguments, Command};
use crate::failure::{Failure, Outcome};

/// Runs the program with the given arguments (the first one is its own name) and gives its exit status.
pub fn run<I, T>(arguments: I) -> ExitCode
where
    I: IntoIterator<Item = T>,
    T: Into<OsString> + Clone,
{
    let done = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => match arguments.command {
            Command::Check(arguments) => commands::check::run(&arguments),
            Command::Format(arguments) => commands::format::run(&arguments),
            Command::Explain(arguments) => commands::explain::run(&arguments),
            Command::Compile(arguments) => commands::compile::run(&arguments),
            Command::Decode(arguments) => commands::decode::run(&arguments),
            Command::Encode(arguments) => commands::encode::run(&arguments),
            Command::Budget(arguments) => commands::budget::run(&arguments),
            Command::Map(arguments) => commands::map::run(&arguments),
        },
        Err(told) => tell_usage(&told),
    };
    match done {
        Ok(Outcome::Clean) => ExitCode::from(0),
        Ok(Outcome::SomethingToLookAt) => ExitCode::from(1),
        Err(Failure::PipeClosed) => ExitCode::from(0),
        Err(Failure::Told) => ExitCode::from(2),
        Err(failure) => {
            tell::tell_line(&format!("wirelore: {}", tell::with_causes(&failure)));
            ExitCode::from(2)
        }
    }
}

/// Prints what is wrong with the arguments; or the help or the version, which come this way too.
fn tell_usage(told: &clap::Error) -> Result<Outcome, Failure> {
    let printed = told.print();
    if told.use_stderr() {
        return Err(Failure::Told);
    }
    printed.map_err(|reason| Failure::writing("standard output", reason))?;
    Ok(Outcome::Clean)
}
