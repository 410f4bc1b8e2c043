//! What the model knows at each moment, for whoever compares a recording with it.

use super::record::STEPS;
use super::world::{STEP_NS, World};

/// The van at one moment, in the units of the description.
#[derive(Debug, Clone)]
pub struct Moment {
    /// Nanoseconds since the beginning.
    pub at_ns: u64,
    /// Speed, km/h.
    pub speed_kmh: f64,
    /// Yaw rate, °/s.
    pub yaw_deg_per_s: f64,
    /// The way so far, m.
    pub way_m: f64,
    /// North and east of where it stood, m.
    pub place_m: [f64; 2],
    /// Seat: height in mm, tilt of the backrest in °, cushion in °C.
    pub seat: [f64; 3],
    /// Wheel travel, mm.
    pub travel_mm: [f64; 4],
    /// Currents of the dampers, A.
    pub current_a: [f64; 4],
    /// Water that leaves the heater, °C.
    pub water_c: f64,
    /// The glow plug's current, A.
    pub glow_a: f64,
    /// Loudness of the music, steps.
    pub loudness: f64,
    /// Coolant and oil of the engine, °C.
    pub engine_c: [f64; 2],
}

/// All moments of the minute, one a millisecond; each is what a sender sees that speaks then.
#[must_use]
pub fn moments() -> Vec<Moment> {
    let mut world = World::parked();
    let moment = |at_ns| {
        world.step();
        let World { chassis, seat, suspension, water_heater, sound, engine, place, .. } = &world;
        Moment {
            at_ns,
            speed_kmh: chassis.speed_kmh(),
            yaw_deg_per_s: chassis.yaw_deg_per_s(),
            way_m: chassis.distance_m,
            place_m: [place.north_m, place.east_m],
            seat: [seat.height_mm, seat.backrest_deg, seat.cushion_c],
            travel_mm: suspension.travel_mm,
            current_a: suspension.current_a,
            water_c: water_heater.water_c,
            glow_a: water_heater.glow_a,
            loudness: sound.loudness().into(),
            engine_c: [engine.coolant_c, engine.oil_c],
        }
    };
    (0..STEPS).map(|step| step * STEP_NS).map(moment).collect()
}
