//! Writes the Rust source of descriptions to standard output: `cargo run -p wirelore-codegen --example rust_source -- van.lore`.

use std::env;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let files: Vec<String> = env::args().skip(1).collect();
    let names: Vec<&str> = files.iter().map(String::as_str).collect();
    let checked = wirelore_lang::check(&names, &wirelore_lang::FileLoader);
    let database = checked.database.ok_or("the description has mistakes: `wirelore check` tells them")?;
    print!("{}", wirelore_codegen::rust_source(&database));
    Ok(())
}
