//! The database as a whole: which descriptions it refuses, how it is stored and loaded, and whether the published schema says the same.

mod example;
mod refused;
mod schema;
mod store;
