//! What goes into a frame: names of signals with the values that its sender wants to tell.

use super::world::World;
use super::{content_comfort as comfort, content_drive as drive};

/// What a sender tells of one signal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Value {
    /// A value in the signal's own unit.
    Number(f64),
    /// The number of a state.
    State(u8),
    /// The bits of a trouble code.
    Code(u32),
    /// That there is no reading.
    NoReading,
    /// Characters.
    Text(&'static str),
    /// Bytes as they are.
    Bytes(&'static [u8]),
}

/// Signals and their values. Checksums are not among them: whoever encodes calculates them.
pub(crate) type Values = Vec<(&'static str, Value)>;

/// A number for a signal.
pub(super) fn number(signal: &'static str, value: f64) -> (&'static str, Value) {
    (signal, Value::Number(value))
}

/// A state for a signal.
pub(super) fn word(signal: &'static str, state: u8) -> (&'static str, Value) {
    (signal, Value::State(state))
}

/// A frame that the recording holds.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Recorded {
    /// Its name in the description.
    pub(crate) frame: &'static str,
    /// What its sender tells of the world; the number counts the frames.
    pub(crate) values: fn(&mut World, u64) -> Values,
    /// A number that changes when the frame must come at once; for frames that come on change.
    pub(crate) change: Option<fn(&World) -> u64>,
}

const fn by_unit(frame: &'static str, values: fn(&mut World, u64) -> Values) -> Recorded {
    Recorded { frame, values, change: None }
}

const fn on_change(frame: &'static str, values: fn(&mut World, u64) -> Values, change: fn(&World) -> u64) -> Recorded {
    Recorded { frame, values, change: Some(change) }
}

/// The recorder's filter: these frames are kept, and what the gateway makes of them; the others of the description are not in the
/// recording.
pub(crate) const RECORDED: &[Recorded] = &[
    by_unit("wheel_speeds", drive::wheel_speeds),
    by_unit("brake_state", drive::brake_state),
    by_unit("vehicle_motion", drive::vehicle_motion),
    by_unit("steering_wheel", drive::steering_wheel),
    by_unit("engine_state", drive::engine_state),
    by_unit("engine_torque", drive::engine_torque),
    by_unit("shift_request", drive::shift_request),
    on_change("selector_lever", drive::selector_lever, drive::lever_change),
    by_unit("engine_temperatures", drive::engine_temperatures),
    by_unit("charging", drive::charging),
    by_unit("gearbox_details", drive::gearbox_details),
    by_unit("engine_identity", drive::engine_identity),
    on_change("key_state", comfort::key_state, comfort::key_change),
    on_change("stalks", comfort::stalks, comfort::stalks_change),
    on_change("doors", comfort::doors, comfort::doors_change),
    on_change("lights", comfort::lights, comfort::lights_change),
    on_change("wipers", comfort::wipers, comfort::wipers_change),
    by_unit("cluster_display", comfort::cluster_display),
    by_unit("clock", comfort::clock),
    by_unit("climate_state", comfort::climate_state),
    by_unit("tyres", comfort::tyres),
];
