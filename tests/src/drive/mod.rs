//! One minute of town driving with the Kestrel, as its networks saw it.
//!
//! A small model of the van (`world.rs`) is driven through a script, its control units tell each other what they see at the times which
//! the description asks for, and two buses let the frames pass one after the other. Frames are encoded from the description, by the
//! names of its signals, so the recording cannot say anything that the description does not. Nothing comes from outside: no clock, no
//! chance, no function whose last bit differs from machine to machine.
//!
//! The recorder of the two CAN networks keeps what `content.rs` lists, on `drive` and `comfort`: with everything the file would be five
//! times as large and would not show more. What the other networks say of the same minute is in `others/`.

mod body;
mod bus;
mod chassis;
mod content;
mod content_comfort;
mod content_drive;
mod encoder;
mod engine;
mod error;
mod gateway;
mod gearbox;
mod others;
mod place;
mod record;
mod script;
mod seat;
mod sender;
mod shape;
mod sound;
mod suspension;
mod truth;
mod water_heater;
mod wire;
mod world;

use std::path::{Path, PathBuf};

use wirelore_model::Database;

pub use error::DriveError;
pub use others::{OtherRecordings, other_networks};
pub use record::{NETWORKS, Recording, START_NS, town_drive};
pub use truth::{Moment, moments};

/// Distance of the wheels of one axle, m.
pub const TRACK_M: f64 = chassis::TRACK_M;
/// Distance of the axles, m.
pub const WHEELBASE_M: f64 = chassis::WHEELBASE_M;
/// Turns of the steering wheel for one of the wheels.
pub const STEERING_RATIO: f64 = chassis::STEERING_RATIO;

/// The folder of the demo vehicle.
#[must_use]
pub fn demo_folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../schema/demo")
}

/// The demo vehicle's description.
///
/// # Errors
/// When it cannot be read, or the compiler finds a mistake in it.
pub fn kestrel() -> Result<Database, DriveError> {
    let path = demo_folder().join("kestrel.lore");
    let checked = wirelore_lang::check(&[&path.to_string_lossy()], &wirelore_lang::FileLoader);
    checked.database.ok_or_else(|| DriveError::Description {
        messages: checked
            .diagnostics
            .iter()
            .map(|diagnostic| diagnostic.message.clone())
            .collect::<Vec<_>>()
            .join("; "),
    })
}
