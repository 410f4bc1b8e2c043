//! The `wirelore` program as the end-to-end cases call it.

use std::process::ExitCode;

fn main() -> ExitCode {
    wirelore_cli::run(std::env::args_os())
}
