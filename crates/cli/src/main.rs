//! The `wirelore` program: hands the arguments to the library beside it and leaves with its exit status.

use std::process::ExitCode;

fn main() -> ExitCode {
    wirelore_cli::run(std::env::args_os())
}
