//! The pages under `schema/` that describe the language say what the program does.
//!
//! What is made by the program (tables, answers) is written anew by
//! `BLESS=1 cargo test -p wirelore-lang --test language_page -- --test-threads=1`.

mod examples;
mod grammar;
mod pages;
mod tables;
