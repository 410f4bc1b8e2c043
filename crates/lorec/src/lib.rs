//! # wirelore-lorec
//!
//! Frames to values where there is no operating system: a description as a flat table of bytes (`.lorec`), which may lie in read-only
//! memory, and the reader that decodes by it. The principal type is [`Lorec`]: a table that has been looked at once, and then gives networks,
//! frames and readings. `wirelore compile van.lore -o van.lorec` writes such tables.
//!
//! It gives the same readings as the decoder of `wirelore-decode` in the described units, to the last bit. It never allocates, never
//! panics, and takes no table for good that was damaged on its way. Each value is read by interpreting the table; where every nanosecond counts,
//! the source that `wirelore compile van.lore -o van.rs` writes is faster. It knows no counters, checksums, transports and recordings, reads of a
//! group that gives rows the first element, and recognises by identifier what CAN and LIN recognise so.
//!
//! ```
//! use wirelore_lorec::{Lorec, Value};
//!
//! # let table = include_bytes!("../tests/wheels.lorec");
//! # /*
//! static TABLE: &[u8] = include_bytes!("wheels.lorec");
//! # */
//! let table = Lorec::new(table)?;
//! let drive = table.network("drive").ok_or("it is described")?;
//! let frame = drive.find(0x1B4, false).ok_or("it is described")?;
//! let mut speed = None;
//! frame.decode(&[0xE8, 0x03, 0, 0, 0, 0, 0, 0], |signal, reading| {
//!     if let ("front_left", Value::Number(value)) = (signal.name(), &reading.value) {
//!         speed = Some((*value, signal.unit()));
//!     }
//! });
//! assert_eq!(speed, Some((50.0, Some("km/h"))));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

#![no_std]
#![forbid(unsafe_code)]

#[cfg(test)]
extern crate std;

mod class;
mod find;
mod frame;
pub mod layout;
mod reading;
mod scale;
mod signal;
mod table;
mod walk;

pub use find::Network;
pub use frame::{Frame, Outcome, Unmatched};
pub use reading::{Reading, Value};
pub use signal::Signal;
pub use table::{Lorec, LorecError};
pub use wirelore_bits::TroubleCode;
pub use wirelore_bits::typed::Text;
