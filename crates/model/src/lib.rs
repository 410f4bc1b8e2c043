//! # wirelore-model
//!
//! The typed database of a vehicle: [`Database`] is what a `.lore` file says once it has been checked. It is responsible for holding
//! networks, control units, frames, signals, states and routes as plain data whose promises are kept, and for its two stored forms
//! (`.json` and `.lorebin`). It never reads a recording, never prints, and reads nothing of the language's text.
//!
//! A [`Description`] is the same data before validation: build one, or load one, and [`Database::new`] checks it. Below it stands
//! `wirelore-bits` (places, number formats, formulas); above it the language, which makes descriptions out of text, and the decoder, which
//! makes plans out of databases.
//!
//! ```
//! use wirelore_bits::{Affine, BitPosition, NumberKind, Place, Ratio};
//! use wirelore_model::{
//!     Appearance, Content, Database, Description, Frame, Identifier, Label, LengthRange, Network, NetworkId, NetworkKind, Role, Scaling,
//!     Sending, Shown, Signal, Unit, store,
//! };
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! // signal front_left in bits 1.4..0.0 = raw * 0.05 km/h
//! let place = Place::between(BitPosition::new(1, 4), BitPosition::new(0, 0))?;
//! let front_left = Signal {
//!     label: Label::named("front_left"),
//!     page: None,
//!     content: Content::Number { field: place.into(), kind: NumberKind::Unsigned },
//!     scaling: Scaling::Affine(Affine::new(Ratio::from_decimal("0.05")?, Ratio::ZERO).ok_or("does not fit")?),
//!     unit: Unit::known("km/h"),
//!     states: None,
//!     range: None,
//!     absent: vec![],
//!     fault: vec![],
//!     role: Role::Value,
//!     shown: Shown::Decimal,
//! };
//! // frame wheel_speeds on drive id 0x1B4 { length 8 ... }
//! let wheel_speeds = Frame {
//!     label: Label::named("wheel_speeds"),
//!     seen_on: vec![Appearance {
//!         network: NetworkId(0),
//!         identifier: Identifier::Can { first: 0x1B4, last: 0x1B4, extended: false },
//!         via: None,
//!     }],
//!     carried: None,
//!     length: Some(LengthRange { min: 8, max: 8 }),
//!     senders: vec![],
//!     readers: vec![],
//!     sending: Sending::default(),
//!     optional: false,
//!     pages: vec![],
//!     signals: vec![front_left],
//!     unknown: vec![],
//!     unused: vec![],
//! };
//! let drive = Network {
//!     label: Label::named("drive"),
//!     kind: NetworkKind::Can,
//!     rate: None,
//!     data_rate: None,
//!     telegram: None,
//!     flexray: None,
//!     terminators: Vec::new(),
//!     star: None,
//! };
//! let description = Description { networks: vec![drive], frames: vec![wheel_speeds], ..Description::default() };
//!
//! // From here on every promise holds: indices lead somewhere, places lie inside their payloads, names are unique.
//! let database = Database::new(description)?;
//! let (id, frame) = database.frame_named("wheel_speeds").ok_or("it is there")?;
//! assert_eq!(frame.signals_named("front_left").count(), 1);
//! assert_eq!(database[id].label.name, "wheel_speeds");
//!
//! // Both stored forms load back to an equal database.
//! assert_eq!(store::load(&store::to_lorebin(&database))?, database);
//! assert_eq!(store::load(store::to_json(&database).as_bytes())?, database);
//!
//! // What breaks a promise is refused, with the item and the reason.
//! let mut broken = database.into_description();
//! broken.frames[0].length = Some(LengthRange { min: 1, max: 1 });
//! let error = Database::new(broken).expect_err("the signal needs two bytes");
//! assert_eq!(error.item(), "frame `wheel_speeds`, signal `front_left`");
//! # Ok(())
//! # }
//! ```

mod database;
mod description;
mod duty;
mod flexray;
mod frame;
mod identifier;
mod identifier_text;
mod ids;
mod items;
mod label;
mod near;
mod network;
mod packed;
mod protection;
mod route;
mod schedule;
mod signal;
mod states;
pub mod store;
mod telegram;
mod texts;
pub mod unit;
mod validate;
mod wiring;

pub use database::Database;
pub use description::{Description, Vehicle};
pub use duty::{Checksum, ChecksumAlgorithm, Counter, CrcRule, MixedByte, Role};
pub use flexray::{FLEXRAY_CYCLES, FLEXRAY_REPETITIONS, FlexRayTiming, StaticSlots};
pub use frame::{
    Appearance, Element, FasterWhile, Frame, LengthRange, Page, Period, ROWS_FROM_MOST, Sending, Test, Transport,
};
pub use identifier::{FlexRayChannels, Identifier, PortProtocol, SeenId};
pub use identifier_text::{MOST_OPERATIONS, appearance_text, identifier_text, message_type_word, seen_text};
pub use ids::{EcuId, FrameId, NetworkId, PageId, RouteId, SignalId, StatesId};
pub use label::{Certainty, Grade, Label};
pub use near::{nearest_name, nearest_names};
pub use network::{Attachment, BitRate, Ecu, Nanoseconds, Network, NetworkKind, Wire};
pub use protection::Protection;
pub use route::{Pace, Passed, Route};
pub use schedule::{Schedule, Slot, SlotContent};
pub use signal::{ByteSpan, Charset, Content, Curve, CurvePoint, Scaling, Shown, Signal, States, ValueRange};
pub use states::{Meaning, RawSpan, RawValue, StateTable, StateWord};
pub use telegram::{Telegram, TelegramCheck, TelegramSize};
pub use texts::{formula_text, state_words_text};
pub use unit::Unit;
pub use validate::{Flaw, InvalidDescription};
pub use wirelore_bits::TroubleCode;
pub use wirelore_bits::lin::LinChecksum;
pub use wirelore_bits::typed::pgn_of;
pub use wiring::{ActiveStar, Fitted, Terminator};
