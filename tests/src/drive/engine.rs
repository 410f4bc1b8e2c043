//! The engine: what the foot wants, what the gearbox allows, and what comes out at the crankshaft.

use std::collections::VecDeque;

use super::gearbox::{Gearbox, Intervention};
use super::script::{self, Foot, Hands, key};
use super::shape::{between, creep_to, follow, passage, soft_max};

/// How long a request takes to reach the torque, in steps of 1 ms: one frame on its way, and the injection that is under way.
const DEAD_STEPS: usize = 32;
/// Friction and pumping at running speed, N·m.
const FRICTION_NM: f64 = 24.0;
/// Full pedal, N·m at the crankshaft.
const STRONGEST_NM: f64 = 330.0;

/// States of the engine, numbered as in `engine_state.run_state`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum RunState {
    /// At rest.
    Stopped = 0,
    /// The starter turns it.
    Cranking = 1,
    /// It runs.
    Running = 2,
}

/// The engine at one moment.
#[derive(Debug, Clone)]
pub(crate) struct Engine {
    /// At rest, cranked or running.
    pub(crate) run_state: RunState,
    /// Speed of the crankshaft, 1/min.
    pub(crate) speed_rpm: f64,
    /// Accelerator pedal, percent.
    pub(crate) pedal_percent: f64,
    /// What the driver wants, N·m.
    pub(crate) demand_nm: f64,
    /// What comes out, N·m.
    pub(crate) torque_nm: f64,
    /// The gearbox intervenes, as far as the engine has heard.
    pub(crate) answers: Intervention,
    /// Fuel, L/h.
    pub(crate) fuel_l_per_h: f64,
    /// Coolant, °C.
    pub(crate) coolant_c: f64,
    /// Engine oil, °C.
    pub(crate) oil_c: f64,
    /// Air in the manifold, °C.
    pub(crate) intake_c: f64,
    /// Oil pressure, bar.
    pub(crate) oil_bar: f64,
    heard: VecDeque<(Intervention, f64)>,
}

impl Engine {
    /// The engine some minutes after the last stop: lukewarm.
    pub(crate) fn lukewarm() -> Self {
        Self {
            run_state: RunState::Stopped,
            speed_rpm: 0.0,
            pedal_percent: 0.0,
            demand_nm: 0.0,
            torque_nm: 0.0,
            answers: Intervention::None,
            fuel_l_per_h: 0.0,
            coolant_c: 57.6,
            oil_c: 51.2,
            intake_c: 27.0,
            oil_bar: 0.0,
            heard: VecDeque::from(vec![(Intervention::None, 0.0); DEAD_STEPS]),
        }
    }

    /// One step on.
    pub(crate) fn step(&mut self, at_s: f64, step_s: f64, hands: &Hands, gearbox: &Gearbox, wanted_nm: f64) {
        self.run_state = if at_s >= script::ENGINE_CATCHES_S {
            RunState::Running
        } else if hands.key == key::START {
            RunState::Cranking
        } else {
            RunState::Stopped
        };
        self.move_pedal(step_s, hands, wanted_nm);
        self.make_torque(step_s, gearbox);
        self.turn(at_s, step_s, gearbox);
        self.warm_up(step_s);
    }

    fn move_pedal(&mut self, step_s: f64, hands: &Hands, wanted_nm: f64) {
        let wanted = match hands.foot {
            Foot::Accelerator(_) => ((wanted_nm + FRICTION_NM) / STRONGEST_NM * 100.0).clamp(0.0, 70.0),
            Foot::Off | Foot::Brake(..) => 0.0,
        };
        let lift = if wanted < self.pedal_percent { 90.0 } else { 30.0 };
        creep_to(&mut self.pedal_percent, wanted, lift, step_s);
    }

    fn make_torque(&mut self, step_s: f64, gearbox: &Gearbox) {
        self.heard.push_back((gearbox.intervention, gearbox.request_nm));
        let (intervention, request_nm) = self.heard.pop_front().unwrap_or((Intervention::None, 0.0));
        if self.run_state != RunState::Running {
            self.demand_nm = 0.0;
            self.torque_nm = 0.0;
            return;
        }
        let foot_off = between(12.0, -FRICTION_NM, passage(self.speed_rpm, 900.0, 1300.0));
        self.demand_nm = foot_off + self.pedal_percent / 100.0 * STRONGEST_NM;
        self.answers = intervention;
        let target = match intervention {
            Intervention::None => self.demand_nm,
            Intervention::Reduce => self.demand_nm.min(request_nm),
            Intervention::Raise => self.demand_nm.max(request_nm),
        };
        follow(&mut self.torque_nm, target, 0.035, step_s);
    }

    fn turn(&mut self, at_s: f64, step_s: f64, gearbox: &Gearbox) {
        let since_start = at_s - script::ENGINE_CATCHES_S;
        let (target, time_constant_s) = match self.run_state {
            RunState::Stopped => (0.0, 0.15),
            RunState::Cranking => (235.0, 0.08),
            RunState::Running if since_start < 0.45 => (1280.0, 0.12),
            RunState::Running => (self.driven_rpm(gearbox), between(0.45, 0.03, passage(since_start, 0.5, 4.0))),
        };
        follow(&mut self.speed_rpm, target, time_constant_s, step_s);
    }

    /// The speed that the converter and the gearbox leave to a running engine.
    fn driven_rpm(&self, gearbox: &Gearbox) -> f64 {
        if !gearbox.in_drive() {
            return 860.0;
        }
        let without_load = 815.0 + 5.0 * self.torque_nm.max(0.0);
        let through_converter = soft_max(gearbox.turbine_rpm, without_load, 90.0);
        between(through_converter, gearbox.turbine_rpm, gearbox.lock_up)
    }

    fn warm_up(&mut self, step_s: f64) {
        let runs = self.run_state == RunState::Running;
        let power_kw = self.torque_nm.max(0.0) * self.speed_rpm / 9550.0;
        let cut_off = self.pedal_percent < 0.5 && self.speed_rpm > 1250.0;
        let burning = if runs && !cut_off {
            (self.torque_nm.max(0.0) + FRICTION_NM) * self.speed_rpm / 9550.0 * 0.30
        } else {
            0.0
        };
        follow(&mut self.fuel_l_per_h, burning, 0.05, step_s);
        if runs {
            self.coolant_c += (0.085 + 0.004 * power_kw) * step_s;
            self.oil_c += (0.06 + 0.004 * power_kw) * step_s;
        }
        follow(&mut self.intake_c, if runs { 17.0 + 0.12 * power_kw } else { 27.0 }, 9.0, step_s);
        let pressure =
            if self.speed_rpm < 100.0 { 0.0 } else { (1.3 + (self.speed_rpm - 800.0) / 800.0).clamp(0.6, 4.6) };
        follow(&mut self.oil_bar, pressure, 0.35, step_s);
    }
}
