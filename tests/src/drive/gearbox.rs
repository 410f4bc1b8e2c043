//! The automatic gearbox: when it shifts, how it changes the ratio, and what it wants of the engine meanwhile.

use super::script::lever;
use super::shape::{between, creep_to, passage};

/// Ratios of the six forward gears.
const RATIOS: [f64; 6] = [4.15, 2.37, 1.56, 1.16, 0.86, 0.69];
/// Ratio of the final drive.
pub(crate) const FINAL_DRIVE: f64 = 3.9;
/// Above these speeds in km/h it shifts up, out of the 1st, 2nd, ... gear.
const UP_KMH: [f64; 5] = [18.0, 30.5, 42.5, 62.0, 80.0];
/// Below these speeds in km/h it shifts down, into the 1st, 2nd, ... gear.
const DOWN_KMH: [f64; 5] = [8.0, 21.5, 33.5, 50.0, 66.0];
/// What a coasting downshift asks for, N·m: enough to bring the engine up to the next gear's speed.
const BLIP_NM: f64 = 42.0;
/// Where a shift ends, seconds after its beginning.
const SHIFT_S: f64 = 0.60;

/// What the gearbox does to the engine's torque, numbered as in `shift_request.intervention`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Intervention {
    /// Nothing.
    None = 0,
    /// It holds it down.
    Reduce = 1,
    /// It asks for more.
    Raise = 2,
}

/// Phases of a shift, numbered as in `shift_request.phase`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Phase {
    /// No shift.
    None = 0,
    /// The clutch of the new gear fills.
    Filling = 1,
    /// The new clutch takes over the torque.
    Torque = 2,
    /// The speeds change.
    Ratio = 3,
    /// The new clutch closes.
    Closing = 4,
}

/// The gearbox at one moment.
#[derive(Debug, Clone)]
pub(crate) struct Gearbox {
    /// The lever it has seen.
    lever: u8,
    /// Forward gear, 1..=6.
    pub(crate) gear: usize,
    /// The gear it shifts to, or the same.
    pub(crate) target: usize,
    /// Phase of the shift.
    pub(crate) phase: Phase,
    /// What it does to the engine.
    pub(crate) intervention: Intervention,
    /// What it asks for, N·m: the driver's demand where it does not intervene.
    pub(crate) request_nm: f64,
    /// Speed of the output shaft, 1/min.
    pub(crate) output_rpm: f64,
    /// Speed of the turbine, 1/min.
    pub(crate) turbine_rpm: f64,
    /// How far the converter's clutch is closed, 0..=1.
    pub(crate) lock_up: f64,
    /// Oil, °C.
    pub(crate) oil_c: f64,
    shift_began_s: f64,
    shift_ended_s: f64,
}

impl Gearbox {
    /// In park.
    pub(crate) fn parked() -> Self {
        Self {
            lever: lever::PARK,
            gear: 1,
            target: 1,
            phase: Phase::None,
            intervention: Intervention::None,
            request_nm: 0.0,
            output_rpm: 0.0,
            turbine_rpm: 0.0,
            lock_up: 0.0,
            oil_c: 46.0,
            shift_began_s: 0.0,
            shift_ended_s: 0.0,
        }
    }

    /// Whether torque goes to the wheels.
    pub(crate) fn in_drive(&self) -> bool {
        self.lever == lever::DRIVE
    }

    /// Turns of the crankshaft for one of the wheels, with the converter closed.
    pub(crate) fn ratio(&self, at_s: f64) -> f64 {
        let share = if self.phase == Phase::None { 1.0 } else { passage(at_s - self.shift_began_s, 0.20, 0.42) };
        let (old, new) = (RATIOS[self.gear - 1], RATIOS[self.target - 1]);
        between(old, new, share) * FINAL_DRIVE
    }

    /// The gear as `shift_request` tells it: 0 park, 1 reverse, 2 neutral, 3 first and so on, 15 between two.
    pub(crate) fn told(&self, gear: usize) -> u8 {
        if self.in_drive() { gear as u8 + 2 } else { self.lever }
    }

    /// One step on. `wheel_rpm` is the mean of the driven wheels.
    pub(crate) fn step(&mut self, at_s: f64, step_s: f64, lever: u8, wheel_rpm: f64, speed_kmh: f64, demand_nm: f64) {
        self.lever = lever;
        if self.phase == Phase::None {
            self.decide(at_s, speed_kmh);
        }
        self.go_on_shifting(at_s, demand_nm);
        self.output_rpm = wheel_rpm * FINAL_DRIVE;
        self.turbine_rpm = wheel_rpm * self.ratio(at_s);
        let closed = self.in_drive() && self.gear >= 2 && self.turbine_rpm > 950.0 && self.phase == Phase::None;
        creep_to(&mut self.lock_up, if closed { 1.0 } else { 0.0 }, if closed { 2.5 } else { 8.0 }, step_s);
        self.oil_c += (0.03 + 0.0002 * speed_kmh) * step_s;
    }

    fn decide(&mut self, at_s: f64, speed_kmh: f64) {
        if !self.in_drive() || at_s - self.shift_ended_s < 0.5 {
            return;
        }
        let up = self.gear < RATIOS.len() && speed_kmh > UP_KMH[self.gear - 1];
        let down = self.gear > 1 && speed_kmh < DOWN_KMH[self.gear - 2];
        if up || down {
            self.target = if up { self.gear + 1 } else { self.gear - 1 };
            self.phase = Phase::Filling;
            self.shift_began_s = at_s;
        }
    }

    fn go_on_shifting(&mut self, at_s: f64, demand_nm: f64) {
        self.intervention = Intervention::None;
        self.request_nm = demand_nm;
        if self.phase == Phase::None {
            return;
        }
        let since_s = at_s - self.shift_began_s;
        self.phase = match since_s {
            s if s < 0.06 => Phase::Filling,
            s if s < 0.20 => Phase::Torque,
            s if s < 0.42 => Phase::Ratio,
            _ => Phase::Closing,
        };
        if (0.06..0.54).contains(&since_s) {
            let depth = passage(since_s, 0.06, 0.12) - passage(since_s, 0.42, 0.54);
            let up = self.target > self.gear;
            self.intervention = if up { Intervention::Reduce } else { Intervention::Raise };
            let goal_nm = if up { (0.22 * demand_nm).max(10.0) } else { demand_nm.max(0.0) + BLIP_NM };
            self.request_nm = between(demand_nm, goal_nm, depth);
        }
        if since_s >= SHIFT_S {
            self.gear = self.target;
            self.phase = Phase::None;
            self.shift_ended_s = at_s;
        }
    }
}
