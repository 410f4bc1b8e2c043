//! What the body network is about: supply, lamps, wipers, doors, climate, tyres.

use super::engine::{Engine, RunState};
use super::script::{self, Hands, indicator, key, wiper};
use super::shape::{creep_to, follow, way_through};

/// Half a period of an indicator lamp, s: 90 flashes a minute (UN Regulation No. 6 asks for 90 ± 30).
const FLASH_S: f64 = 1.0 / 3.0;
/// One way of a wiper, s.
const STROKE_S: f64 = 0.55;
/// From the beginning of one wipe to the next on interval, s.
const INTERVAL_S: f64 = 4.5;
/// Faster than this in km/h, the doors lock themselves.
const LOCKING_KMH: f64 = 15.0;

/// The body at one moment.
#[derive(Debug, Clone)]
pub(crate) struct Body {
    /// At the battery's clamps, V.
    pub(crate) battery_v: f64,
    /// Into the battery, A.
    pub(crate) battery_a: f64,
    /// Load of the alternator, percent.
    pub(crate) alternator_percent: f64,
    /// The left lamps are lit.
    pub(crate) left_lit: bool,
    /// The right lamps are lit.
    pub(crate) right_lit: bool,
    /// The wiper: 0 parked, 1 on its way up, 2 on its way down.
    pub(crate) wiper_motion: u8,
    /// Wipes since the key was turned.
    pub(crate) strokes: u8,
    /// Water on the glass, percent.
    pub(crate) wet_percent: f64,
    /// The doors have locked themselves.
    pub(crate) locked: bool,
    /// Air in the cab, °C.
    pub(crate) cab_c: f64,
    /// Blower, percent.
    pub(crate) blower_percent: f64,
    /// Tyres, °C, in the order of the wheels.
    pub(crate) tyres_c: [f64; 4],
    /// Brightness outside, lx.
    pub(crate) brightness_lx: f64,
    stalk_since_s: f64,
    stalk: u8,
    wipe_began_s: Option<f64>,
}

impl Body {
    /// A van that stood in the street overnight.
    pub(crate) fn standing() -> Self {
        Self {
            battery_v: 12.35,
            battery_a: -14.0,
            alternator_percent: 0.0,
            left_lit: false,
            right_lit: false,
            wiper_motion: 0,
            strokes: 0,
            wet_percent: 2.0,
            locked: false,
            cab_c: 14.8,
            blower_percent: 0.0,
            tyres_c: [11.0; 4],
            brightness_lx: 9200.0,
            stalk_since_s: 0.0,
            stalk: indicator::MIDDLE,
            wipe_began_s: None,
        }
    }

    /// One step on.
    pub(crate) fn step(&mut self, at_s: f64, step_s: f64, hands: &Hands, engine: &Engine, speed_kmh: f64) {
        self.charge(at_s, step_s, hands, engine);
        self.flash(at_s, hands.indicator);
        self.wipe(at_s, step_s, hands.wiper);
        self.locked |= speed_kmh > LOCKING_KMH;
        let blower = if engine.run_state == RunState::Running { 62.0 } else { 0.0 };
        creep_to(&mut self.blower_percent, blower, 9.0, step_s);
        follow(&mut self.cab_c, 14.8 + 0.09 * self.blower_percent, 40.0, step_s);
        for (tyre, front) in self.tyres_c.iter_mut().zip([1.0, 1.0, 0.8, 0.8]) {
            *tyre += 0.0014 * front * speed_kmh * step_s;
        }
        self.brightness_lx = way_through(&[(0.0, 9200.0), (30.0, 8600.0), (40.0, 4100.0), (60.0, 4700.0)], at_s);
    }

    fn charge(&mut self, at_s: f64, step_s: f64, hands: &Hands, engine: &Engine) {
        let since_start = at_s - script::ENGINE_CATCHES_S;
        let load_v = if hands.low_beam { 0.06 } else { 0.0 } + if self.wiper_motion > 0 { 0.05 } else { 0.0 };
        let (volts, amperes, share, time_constant_s) = match engine.run_state {
            RunState::Stopped if hands.key == key::START => (9.4, -340.0, 0.0, 0.02),
            RunState::Stopped => (12.35, -14.0, 0.0, 0.4),
            RunState::Cranking => (10.3, -210.0, 0.0, 0.09),
            RunState::Running if since_start < 0.8 => (12.2, -16.0, 0.0, 0.25),
            RunState::Running => {
                let charging = way_through(&[(0.8, 44.0), (20.0, 17.0), (60.0, 9.0)], since_start);
                (14.28 - load_v, charging, 30.0 + charging * 0.7 + load_v * 120.0, 0.7)
            }
        };
        follow(&mut self.battery_v, volts, time_constant_s, step_s);
        follow(&mut self.battery_a, amperes, time_constant_s, step_s);
        follow(&mut self.alternator_percent, share, 0.5, step_s);
    }

    /// The lamps are lit at once when the stalk is moved, and finish a flash that has begun.
    fn flash(&mut self, at_s: f64, stalk: u8) {
        let lit = self.left_lit || self.right_lit;
        if stalk != self.stalk && (stalk != indicator::MIDDLE || !lit) {
            self.stalk = stalk;
            self.stalk_since_s = at_s;
        }
        let phase = ((at_s - self.stalk_since_s) / FLASH_S) as u32;
        let on = phase.is_multiple_of(2);
        if stalk == indicator::MIDDLE && !on {
            self.stalk = indicator::MIDDLE;
        }
        self.left_lit = on && self.stalk == indicator::LEFT;
        self.right_lit = on && self.stalk == indicator::RIGHT;
    }

    fn wipe(&mut self, at_s: f64, step_s: f64, stalk: u8) {
        follow(&mut self.wet_percent, 100.0 * script::rain(at_s), 3.0, step_s);
        let pause_s = if stalk == wiper::INTERVAL { INTERVAL_S } else { 2.0 * STROKE_S };
        let since_s = self.wipe_began_s.map(|began| at_s - began);
        if stalk != wiper::OFF && since_s.is_none_or(|since| since >= pause_s) {
            self.wipe_began_s = Some(at_s);
            self.strokes += 1;
        }
        let since_s = self.wipe_began_s.map_or(f64::INFINITY, |began| at_s - began);
        self.wiper_motion = match since_s {
            s if s < STROKE_S => 1,
            s if s < 2.0 * STROKE_S => 2,
            _ => 0,
        };
        if self.wiper_motion == 2 {
            follow(&mut self.wet_percent, 3.0, 0.5, step_s);
        }
    }
}
