//! The fuel-fired water heater: it blows, glows, and burns.

use super::engine::{Engine, RunState};
use super::script;
use super::shape::{creep_to, follow};

/// How long it blows before it glows, and glows before it burns, s.
const AIRING_S: f64 = 5.5;
const GLOWING_S: f64 = 9.0;

/// What it does, numbered as in `heater_burner.burner`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Burner {
    /// Nothing.
    Off = 0,
    /// It blows air through.
    Airing = 1,
    /// The glow plug heats.
    Glowing = 2,
    /// It burns.
    Burning = 3,
}

/// The heater at one moment.
#[derive(Debug, Clone)]
pub(crate) struct WaterHeater {
    /// What it does.
    pub(crate) burner: Burner,
    /// The water that leaves it, °C.
    pub(crate) water_c: f64,
    /// Its fan, percent.
    pub(crate) fan_percent: f64,
    /// Current of the glow plug, A.
    pub(crate) glow_a: f64,
    /// How often it has been started.
    pub(crate) starts: u16,
    /// How long it has burnt, h.
    pub(crate) burning_h: f64,
}

impl WaterHeater {
    /// Off, as warm as the engine is.
    pub(crate) fn off(engine: &Engine) -> Self {
        let water_c = engine.coolant_c - 2.0;
        Self { burner: Burner::Off, water_c, fan_percent: 0.0, glow_a: 0.0, starts: 1408, burning_h: 391.2 }
    }

    /// One step on. It is started with the engine, because that alone is too cold for the cargo bay.
    pub(crate) fn step(&mut self, at_s: f64, step_s: f64, engine: &Engine) {
        let since_s = at_s - script::ENGINE_CATCHES_S - 1.0;
        let before = self.burner;
        self.burner = match since_s {
            _ if engine.run_state != RunState::Running => Burner::Off,
            s if s < 0.0 => Burner::Off,
            s if s < AIRING_S => Burner::Airing,
            s if s < AIRING_S + GLOWING_S => Burner::Glowing,
            _ => Burner::Burning,
        };
        if before == Burner::Off && self.burner != Burner::Off {
            self.starts += 1;
        }
        let (fan, glow_a) = match self.burner {
            Burner::Off => (0.0, 0.0),
            Burner::Airing => (70.0, 0.0),
            Burner::Glowing => (35.0, 11.5),
            Burner::Burning => (85.0, 0.0),
        };
        creep_to(&mut self.fan_percent, fan, 30.0, step_s);
        follow(&mut self.glow_a, glow_a, 0.3, step_s);
        follow(&mut self.water_c, engine.coolant_c - 2.0, 20.0, step_s);
        if self.burner == Burner::Burning {
            self.water_c += 0.9 * step_s;
            self.burning_h += step_s / 3600.0;
        }
    }
}
