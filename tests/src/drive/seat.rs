//! The driver's seat: two motors and a heater.

use super::script::{Hands, motion};
use super::shape::{creep_to, follow};

/// What a running motor takes, A.
const RUNNING_A: f64 = 4.2;
/// How fast the cushion goes up, mm/s.
const HEIGHT_MM_PER_S: f64 = 21.0;
/// How fast the backrest goes forwards, °/s.
const BACKREST_DEG_PER_S: f64 = 4.5;
/// What the heater takes on each of its steps, A.
const HEATER_A: [f64; 4] = [0.0, 2.1, 3.8, 6.4];

/// The seat at one moment.
#[derive(Debug, Clone)]
pub(crate) struct Seat {
    /// Height of the cushion above its lowest place, mm.
    pub(crate) height_mm: f64,
    /// Tilt of the backrest, °.
    pub(crate) backrest_deg: f64,
    /// Current of the height motor, A.
    pub(crate) height_a: f64,
    /// Current of the backrest motor, A.
    pub(crate) backrest_a: f64,
    /// Current of the heater, A.
    pub(crate) heater_a: f64,
    /// Surface of the cushion, °C.
    pub(crate) cushion_c: f64,
}

impl Seat {
    /// As the last driver left it.
    pub(crate) fn as_left() -> Self {
        Self { height_mm: 96.0, backrest_deg: 27.4, height_a: 0.0, backrest_a: 0.0, heater_a: 0.0, cushion_c: 14.2 }
    }

    /// One step on.
    pub(crate) fn step(&mut self, step_s: f64, hands: &Hands) {
        let (height, backrest) = (direction(hands.seat_height), direction(hands.seat_backrest));
        self.height_mm += height * HEIGHT_MM_PER_S * step_s;
        // Forwards is upright, and that is less tilt.
        self.backrest_deg -= backrest * BACKREST_DEG_PER_S * step_s;
        // Against the driver's weight the motor works harder.
        let lifting = if height > 0.0 { 2.6 } else { 0.0 };
        follow(&mut self.height_a, height.abs() * RUNNING_A + lifting, 0.04, step_s);
        follow(&mut self.backrest_a, backrest.abs() * RUNNING_A, 0.04, step_s);
        let heater_a = HEATER_A.get(usize::from(hands.seat_heating)).copied().unwrap_or(0.0);
        follow(&mut self.heater_a, heater_a, 0.15, step_s);
        creep_to(&mut self.cushion_c, 41.0, 0.055 * self.heater_a, step_s);
    }
}

fn direction(motion: u8) -> f64 {
    match motion {
        motion::UP => 1.0,
        motion::DOWN => -1.0,
        _ => 0.0,
    }
}
