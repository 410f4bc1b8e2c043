//! # wirelore-decode
//!
//! Logged frames to engineering values, and values back to bytes. The principal type is the [`Decoder`]: a description compiled once
//! into plans, responsible for recognising frames and for reading every signal exactly. A [`Session`] runs recordings through it: it finds
//! out which channel is which network, counts every frame into exactly one part of its [`Tally`], and checks counters and checksums.
//! [`encode()`] goes the other way.
//!
//! It never opens files, never prints, never guesses silently which network a channel is, and never gives a number for a raw value that
//! the description calls absent or faulty.
//!
//! ```
//! use wirelore_decode::Decoder;
//! use wirelore_lang::check_text;
//! use wirelore_model::NetworkId;
//!
//! let text = "network drive can 250 kbit/s\n\
//!             frame vehicle_speed on drive pgn 65265 { signal speed in bytes 2..1 = raw / 256 km/h, absent 0xFF00..0xFFFF }\n";
//! let database = check_text("truck.lore", text).database.ok_or("a mistake in the text")?;
//!
//! let decoder = Decoder::new(&database)?;
//! let frame = decoder.find(NetworkId(0), 0x18FE_F100, true).ok_or("not described")?;
//! let mut seen = Vec::new();
//! decoder.decode(frame, &[0xFF, 0x34, 0x17, 0xFC, 0xFF, 0x68, 0x00, 0xCF], |_, reading| seen.push(reading.value.number()));
//! assert_eq!(seen, [Some(23.203125)]);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

#![deny(unsafe_code)]

mod batch;
mod bind;
mod checks;
mod decoder;
mod encode;
mod error;
mod flat;
mod lin;
mod lookup;
mod near;
mod payload_rows;
mod plan;
mod reach;
mod reading;
mod room;
mod row;
mod selection;
mod session;
mod source;
mod spans;
#[cfg(test)]
mod testing;
mod threads;
mod units;
mod words;

pub use batch::{Bitmap, Block, Column, Numbers, Store, TableSink, Tables};
pub use bind::{BindMap, Binding, Reason};
pub use checks::{Belongs, Checks, ChecksumVerdict, CounterVerdict, Origin, ProtectionVerdict, Sender, Verdict};
pub use decoder::{Decoder, Setup};
pub use encode::{EncodeError, Encoded, Given, Note, OnWire, encode, on_wire, parse_assignment};
pub use error::SessionError;
pub use flat::lorec;
pub use payload_rows::PayloadRows;
pub use reach::reachable;
pub use reading::{FrameOutcome, Reading, Readings, Unmatched, Value};
pub use selection::Selection;
pub use session::{
    ChecksumCounts, CounterCounts, Event, LinTally, MessageFault, Options, ProtectionCounts, Session, Sink, Tally,
    UnknownFrame, WholeLogs, seen_id,
};
pub use source::{Source, SourceKinds};
pub use units::Units;
