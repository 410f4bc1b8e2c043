//! # wirelore
//!
//! Vehicle networks described in plain text, checked, and decoded to engineering values: the one crate that other tools depend on.
//! It re-exports the layers below behind features and holds nothing of its own.
//!
//! | module | feature | for |
//! | --- | --- | --- |
//! | [`bits`] | | bits to numbers, exactly |
//! | [`lorec`] | | frames to values without an operating system, by a table that was compiled before |
#![cfg_attr(feature = "model", doc = "| [`model`] | `model` | the typed database, and its stored forms |")]
#![cfg_attr(feature = "lang", doc = "| [`lang`] | `lang` | text to database, with messages that lead to the mistake |")]
#![cfg_attr(feature = "decode", doc = "| [`log`] | `decode` | recordings, frame after frame |")]
#![cfg_attr(feature = "decode", doc = "| [`transport`] | `decode` | messages longer than a frame |")]
#![cfg_attr(feature = "decode", doc = "| [`decode`] | `decode` | frames to readings, and back |")]
#![cfg_attr(
    feature = "tables",
    doc = "| [`tables`] | `tables` (not a default) | recordings to typed tables: Parquet and Arrow |"
)]
#![cfg_attr(
    feature = "survey",
    doc = "| [`survey`] | `survey` (not a default) | how full each network is, how late each frame can get |"
)]
#![cfg_attr(feature = "draw", doc = "| [`draw`] | `draw` (not a default) | the map of a vehicle's networks |")]
#![cfg_attr(
    feature = "codegen",
    doc = "| [`codegen`] | `codegen` (not a default) | Rust source out of a description |"
)]
//!
//! ```
//! # #[cfg(all(feature = "lang", feature = "decode"))] {
//! use wirelore::{decode::Decoder, lang::check_text};
//!
//! let checked = check_text(
//!     "van.lore",
//!     "network drive can 500 kbit/s
//!      frame wheel_speeds on drive id 0x1B4 { signal front_left in bits 1.4..0.0 = raw * 0.05 km/h }",
//! );
//! let database = checked.database.expect("the description has no mistakes");
//! let decoder = Decoder::new(&database).expect("the description can be decoded");
//! let (drive, _) = database.network_named("drive").expect("it is there");
//! let frame = decoder.find(drive, 0x1B4, false).expect("it is described");
//!
//! let mut speed = None;
//! decoder.decode(frame, &[0xE8, 0x03, 0, 0, 0, 0, 0, 0], |_, reading| speed = reading.value.number());
//! assert_eq!(speed, Some(50.0));
//! # }
//! ```

#![no_std]

pub use wirelore_bits as bits;
pub use wirelore_lorec as lorec;

#[cfg(feature = "codegen")]
pub use wirelore_codegen as codegen;
#[cfg(feature = "decode")]
pub use wirelore_decode as decode;
#[cfg(feature = "draw")]
pub use wirelore_draw as draw;
#[cfg(feature = "lang")]
pub use wirelore_lang as lang;
#[cfg(feature = "lang")]
pub use wirelore_lang::{OpenError, open};
#[cfg(feature = "decode")]
pub use wirelore_log as log;
#[cfg(feature = "model")]
pub use wirelore_model as model;
#[cfg(feature = "survey")]
pub use wirelore_survey as survey;
#[cfg(feature = "tables")]
pub use wirelore_tables as tables;
#[cfg(feature = "decode")]
pub use wirelore_transport as transport;
