//! Recordings of vehicle networks, read and written one frame after another.
//!
//! The principal type is [`Recording`]: one opened log, responsible for handing out its frames in the order in which they
//! were recorded, and for telling at the end what it could not read and where ([`Report`]). It never guesses silently,
//! never stops at damage that can be stepped over, and never holds more of a log in memory than one buffer. It knows
//! nothing of signals or networks: what a frame means is decided on the floor above.
//!
//! Read: `pcap` and `pcapng` with the link types 227 (classic CAN, CAN FD, CAN XL), 212 (LIN), 210 (FlexRay) and 1 (Ethernet), each
//! interface with its own; delimited text with a header line, and any other line-based text by a pattern that the user writes
//! ([`LinePattern`]), with frames of CAN, LIN, FlexRay and MOST or the bare bytes of single-wire networks; each of them also inside
//! gzip or Zstandard. Written: `pcapng` ([`write`](mod@write)). What a frame has beside identifier and data is its [`Medium`].
//!
//! A frame that was damaged on the wire is no damage of the log: it is handed out as [`Kind::Faulty`] and says what was wrong
//! ([`Faults`]).
//!
//! In a text, empty lines and lines that begin with `#` are no frames: they are comments, stepped over and not counted. A
//! pattern that itself begins with `#` reads them.
//!
//! ```
//! use wirelore_log::{Options, Recording};
//!
//! let log = "time_s,id_hex,ext,data_hex\n0.250,18FEF100,1,FF 34 17 FC\n0.350,18FEF100,1,FF 34\n";
//! let mut recording = Recording::from_reader(Box::new(log.as_bytes()), "drive.csv", &Options::default())?;
//! let mut bytes_seen = 0;
//! while let Some(frame) = recording.next()? {
//!     assert_eq!((frame.id, frame.extended), (0x18FE_F100, true));
//!     bytes_seen += frame.payload.len();
//! }
//! assert_eq!(bytes_seen, 6);
//! assert_eq!(recording.report().frames_read(), 2);
//! # Ok::<(), wirelore_log::LogError>(())
//! ```

mod byte_order;
mod channels;
mod error;
mod faults;
mod flaw;
mod flexray;
mod frame;
mod identifiers;
mod lin;
mod machine;
mod medium;
mod memory;
mod notes;
mod options;
mod packet;
mod pass;
mod pcap;
mod pcapng;
mod piece;
mod receive;
mod record;
mod recording;
mod report;
mod search;
mod source;
mod text;
mod window;
pub mod write;

pub use error::LogError;
pub use faults::Faults;
pub use frame::{Channel, ChannelInfo, Frame, Kind, PlaceInLog};
#[cfg(target_os = "linux")]
pub use machine::CutWatch;
pub use medium::{CanXl, FlexRay, Lin, LinChecksum, Medium, Most};
pub use options::{Format, IdentifierOrder, Options};
pub use piece::{Piece, PieceEnd};
pub use receive::{Plain, PlainRun, Receive};
pub use record::LinkType;
pub use recording::Recording;
pub use report::{Damage, Report};
pub use text::{ColumnMap, LinePattern};
