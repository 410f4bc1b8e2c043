// lib.rs

pub fn rust_source(database: &Database) -> String {}
