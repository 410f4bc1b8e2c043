//! What the driver does, and when: one minute in town.
//!
//! Seat adjusted, doors shut, engine started, lever to D; out of the parking space with the left indicator on, up through four gears;
//! brakes for a crossing and turns right; through a long left bend in the rain; up to 50 km/h, and down to the next red light.

use super::shape::{last_set, way_through};

/// Where the driver's right foot is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Foot {
    /// On nothing.
    Off,
    /// On the accelerator: towards this speed in km/h.
    Accelerator(f64),
    /// On the brake: slowing down by so many m/s², until this speed in km/h.
    Brake(f64, f64),
}

/// Positions of the key, numbered as in `key_state.key`.
pub(crate) mod key {
    pub(crate) const IGNITION: u8 = 2;
    pub(crate) const START: u8 = 3;
}

/// Positions of the selector lever, numbered as in `selector_lever.position`.
pub(crate) mod lever {
    pub(crate) const PARK: u8 = 0;
    pub(crate) const REVERSE: u8 = 1;
    pub(crate) const NEUTRAL: u8 = 2;
    pub(crate) const DRIVE: u8 = 3;
}

/// Positions of the indicator stalk, numbered as in `stalks.indicator`.
pub(crate) mod indicator {
    pub(crate) const MIDDLE: u8 = 0;
    pub(crate) const LEFT: u8 = 1;
    pub(crate) const RIGHT: u8 = 2;
}

/// Positions of the wiper stalk, numbered as in `stalks.wiper`.
pub(crate) mod wiper {
    pub(crate) const OFF: u8 = 0;
    pub(crate) const INTERVAL: u8 = 1;
    pub(crate) const SLOW: u8 = 2;
}

/// Which way a motor of the seat runs, numbered as in `seat_command`.
pub(crate) mod motion {
    pub(crate) const STOPPED: u8 = 0;
    pub(crate) const UP: u8 = 1;
    pub(crate) const DOWN: u8 = 2;
}

/// What the driver does at one moment.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Hands {
    /// Position of the key.
    pub(crate) key: u8,
    /// Position of the selector lever.
    pub(crate) lever: u8,
    /// The button on the lever is pressed.
    pub(crate) lever_button: bool,
    /// Position of the indicator stalk.
    pub(crate) indicator: u8,
    /// Position of the wiper stalk.
    pub(crate) wiper: u8,
    /// The low beam is switched on.
    pub(crate) low_beam: bool,
    /// Where the foot is.
    pub(crate) foot: Foot,
    /// Curvature of the way in 1/m; left is positive.
    pub(crate) curvature_per_m: f64,
    /// How far the sliding door is open, 0..=1.
    pub(crate) sliding_door: f64,
    /// The driver's door is open.
    pub(crate) driver_door: bool,
    /// Which way the seat's cushion is to go.
    pub(crate) seat_height: u8,
    /// Which way the backrest is to go.
    pub(crate) seat_backrest: u8,
    /// Step of the seat's heater.
    pub(crate) seat_heating: u8,
    /// Where the knob of the radio stands.
    pub(crate) volume: u8,
}

/// When the starter is let go: the engine runs.
pub(crate) const ENGINE_CATCHES_S: f64 = 4.15;

const KEY: &[(f64, u8)] = &[(0.0, key::IGNITION), (3.4, key::START), (4.35, key::IGNITION)];
const LEVER: &[(f64, u8)] = &[(0.0, lever::PARK), (5.72, lever::REVERSE), (5.86, lever::NEUTRAL), (6.02, lever::DRIVE)];
const INDICATOR: &[(f64, u8)] = &[
    (0.0, indicator::MIDDLE),
    (6.9, indicator::LEFT),
    (11.2, indicator::MIDDLE),
    (23.4, indicator::RIGHT),
    (31.9, indicator::MIDDLE),
];
const WIPER: &[(f64, u8)] = &[(0.0, wiper::OFF), (36.2, wiper::INTERVAL), (42.6, wiper::SLOW), (55.1, wiper::INTERVAL)];
const FOOT: &[(f64, Foot)] = &[
    (0.0, Foot::Off),
    (4.9, Foot::Brake(2.0, 0.0)),
    (8.5, Foot::Off),
    (8.9, Foot::Accelerator(47.0)),
    (23.9, Foot::Off),
    (24.3, Foot::Brake(2.3, 18.0)),
    (28.2, Foot::Off),
    (28.5, Foot::Accelerator(18.0)),
    (31.8, Foot::Accelerator(39.5)),
    (43.6, Foot::Accelerator(50.0)),
    (50.0, Foot::Off),
    (50.4, Foot::Brake(2.35, 0.0)),
];
/// Out of the parking space and straight; the right turn with a radius of 11.5 m; the left bend with one of 48 m.
const CURVATURE: &[(f64, f64)] = &[
    (8.9, 0.0),
    (9.6, 0.045),
    (10.6, 0.045),
    (11.4, -0.030),
    (12.2, -0.030),
    (13.0, 0.0),
    (27.9, 0.0),
    (28.9, -1.0 / 11.5),
    (31.2, -1.0 / 11.5),
    (32.3, 0.0),
    (39.6, 0.0),
    (41.0, 1.0 / 48.0),
    (45.2, 1.0 / 48.0),
    (46.6, 0.0),
];
/// A little too high, and down again.
const SEAT_HEIGHT: &[(f64, u8)] = &[
    (0.0, motion::STOPPED),
    (1.25, motion::UP),
    (2.45, motion::STOPPED),
    (2.85, motion::DOWN),
    (3.1, motion::STOPPED),
];
const SEAT_BACKREST: &[(f64, u8)] = &[(0.0, motion::STOPPED), (1.9, motion::UP), (2.7, motion::STOPPED)];
const SEAT_HEATING: &[(f64, u8)] = &[(0.0, 0), (3.3, 3)];
const VOLUME: &[(f64, u8)] = &[(0.0, 14), (13.2, 15), (13.5, 16), (13.9, 17), (24.6, 16), (24.9, 15)];
const SLIDING_DOOR: &[(f64, f64)] = &[(0.5, 1.0), (1.9, 0.0)];

/// What the driver does `at_s` seconds after the beginning.
pub(crate) fn hands(at_s: f64) -> Hands {
    Hands {
        key: last_set(KEY, at_s).unwrap_or(key::IGNITION),
        lever: last_set(LEVER, at_s).unwrap_or(lever::PARK),
        lever_button: (5.45..6.1).contains(&at_s),
        indicator: last_set(INDICATOR, at_s).unwrap_or(indicator::MIDDLE),
        wiper: last_set(WIPER, at_s).unwrap_or(wiper::OFF),
        low_beam: at_s >= 4.6,
        foot: last_set(FOOT, at_s).unwrap_or(Foot::Off),
        curvature_per_m: way_through(CURVATURE, at_s),
        sliding_door: way_through(SLIDING_DOOR, at_s),
        driver_door: at_s < 2.6,
        seat_height: last_set(SEAT_HEIGHT, at_s).unwrap_or(motion::STOPPED),
        seat_backrest: last_set(SEAT_BACKREST, at_s).unwrap_or(motion::STOPPED),
        seat_heating: last_set(SEAT_HEATING, at_s).unwrap_or(0),
        volume: last_set(VOLUME, at_s).unwrap_or(0),
    }
}

/// How wet the windscreen gets if nobody wipes, 0..=1.
pub(crate) fn rain(at_s: f64) -> f64 {
    way_through(&[(33.0, 0.0), (44.0, 0.45), (54.0, 0.4), (60.0, 0.2)], at_s)
}
