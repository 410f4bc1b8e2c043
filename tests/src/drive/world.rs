//! Everything that moves, one millisecond after the other.

use super::body::Body;
use super::chassis::Chassis;
use super::engine::Engine;
use super::gearbox::Gearbox;
use super::place::Place;
use super::script::{Hands, hands};
use super::seat::Seat;
use super::sound::Sound;
use super::suspension::Suspension;
use super::water_heater::WaterHeater;
use crate::noise::Noise;

/// One step of the model, in nanoseconds.
pub(crate) const STEP_NS: u64 = 1_000_000;
const STEP_S: f64 = 0.001;

/// The van and its driver at one moment.
#[derive(Debug, Clone)]
pub(crate) struct World {
    /// Seconds since the beginning.
    pub(crate) at_s: f64,
    /// What the driver does.
    pub(crate) hands: Hands,
    /// The engine.
    pub(crate) engine: Engine,
    /// The gearbox.
    pub(crate) gearbox: Gearbox,
    /// Brakes, motion and wheels.
    pub(crate) chassis: Chassis,
    /// Supply, lamps, wipers, doors, climate, tyres.
    pub(crate) body: Body,
    /// The driver's seat.
    pub(crate) seat: Seat,
    /// Springs and dampers.
    pub(crate) suspension: Suspension,
    /// The fuel-fired water heater.
    pub(crate) water_heater: WaterHeater,
    /// Radio, amplifier and player.
    pub(crate) sound: Sound,
    /// Where it is.
    pub(crate) place: Place,
    /// What sensors add of their own.
    pub(crate) noise: Noise,
    steps: u64,
}

impl World {
    /// The beginning: parked, doors open.
    pub(crate) fn parked() -> Self {
        let (engine, hands) = (Engine::lukewarm(), hands(0.0));
        Self {
            at_s: 0.0,
            water_heater: WaterHeater::off(&engine),
            sound: Sound::playing(&hands),
            hands,
            engine,
            gearbox: Gearbox::parked(),
            chassis: Chassis::at_rest(),
            body: Body::standing(),
            seat: Seat::as_left(),
            suspension: Suspension::at_rest(),
            place: Place::of_the_morning(),
            noise: Noise::new(0x4B65_7374),
            steps: 0,
        }
    }

    /// One step on.
    pub(crate) fn step(&mut self) {
        self.steps += 1;
        self.at_s = self.steps as f64 * STEP_S;
        self.hands = hands(self.at_s);
        let ratio = self.gearbox.ratio(self.at_s);
        let wanted_nm = self.chassis.wanted_nm(self.hands.foot, ratio);
        self.engine.step(self.at_s, STEP_S, &self.hands, &self.gearbox, wanted_nm);
        let (wheel_rpm, speed_kmh) = (self.chassis.driven_rpm(), self.chassis.speed_kmh());
        self.gearbox.step(self.at_s, STEP_S, self.hands.lever, wheel_rpm, speed_kmh, self.engine.demand_nm);
        let ratio_at_wheels = if self.gearbox.in_drive() { ratio * self.converter_gain() } else { 0.0 };
        self.chassis.step(STEP_S, &self.hands, self.engine.torque_nm, ratio_at_wheels);
        self.body.step(self.at_s, STEP_S, &self.hands, &self.engine, speed_kmh);
        self.seat.step(STEP_S, &self.hands);
        self.suspension.step(STEP_S, &self.chassis);
        self.water_heater.step(self.at_s, STEP_S, &self.engine);
        self.sound.step(self.at_s, &self.hands, speed_kmh);
        self.place.step(STEP_S, &self.chassis);
    }

    /// A converter that slips gives more torque than it takes.
    fn converter_gain(&self) -> f64 {
        let slip = 1.0 - (self.gearbox.turbine_rpm / self.engine.speed_rpm.max(1.0)).clamp(0.0, 1.0);
        1.0 + 0.8 * slip
    }
}
