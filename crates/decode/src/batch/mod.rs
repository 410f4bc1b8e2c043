//! Column by column: frames of one description are gathered, and then decoded a signal at a time in tight loops.
//!
//! Decoding frame by frame jumps from one plan to the next with every frame, and a processor guesses such jumps badly. Here each plan is
//! fetched once for some hundred frames, and its loop over them becomes vector instructions. The values have the same bits as those of
//! [`Decoder::decode`](crate::Decoder::decode): whatever is not plain (special values, floats, texts, short payloads) is read by the same code.
//!
//! [`gather`] fills the [`rows`] of each table, which are [`packed`] where messages are long, [`plan`] says once how each signal is read, [`kernel`] holds the loops, [`instruction_sets`] picks the best ones of
//! the machine, [`decode`] turns gathered rows into columns, and [`table`] does so for one frame of the description after the other.

mod bitmap;
mod block;
mod decode;
mod gather;
mod instruction_sets;
mod kernel;
mod packed;
mod plan;
mod rows;
mod table;
mod tag;
mod workspace;

pub use bitmap::Bitmap;
pub use block::{Block, Column, Numbers};
pub use plan::Store;
pub use table::{TableSink, Tables};

pub(crate) use gather::Gatherer;
pub(crate) use instruction_sets::InstructionSet;
pub(crate) use rows::Rows;
pub(crate) use table::Context;
pub(crate) use tag::Gathered;
pub(crate) use workspace::Workspace;

/// The most rows that are decoded at a time: columns of so many values stay in the nearest cache.
pub(crate) const BLOCK_ROWS: usize = 512;
