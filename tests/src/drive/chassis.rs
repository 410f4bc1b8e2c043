//! Brakes, motion and wheels.

use super::script::{Foot, Hands};
use super::shape::{angle_deg, follow};
use crate::noise::Noise;

/// The van with its load, kg.
const MASS_KG: f64 = 2650.0;
/// Distance of the wheels of one axle, m.
pub(crate) const TRACK_M: f64 = 1.72;
/// Distance of the axles, m.
pub(crate) const WHEELBASE_M: f64 = 3.30;
/// Rolling radius of a wheel, m.
const WHEEL_RADIUS_M: f64 = 0.345;
/// Turns of the steering wheel for one of the wheels.
pub(crate) const STEERING_RATIO: f64 = 15.5;
/// Deceleration for each bar in the master cylinder, m/s².
const MPS2_PER_BAR: f64 = 0.095;
/// Share of the torque that reaches the wheels.
const EFFICIENCY: f64 = 0.91;
/// How much longer or shorter each tyre is: front left, front right, rear left, rear right.
const TYRES: [f64; 4] = [1.0008, 0.9994, 1.0011, 0.9989];

const KMH: f64 = 3.6;

/// The van's motion at one moment.
#[derive(Debug, Clone)]
pub(crate) struct Chassis {
    /// Speed of the middle of the rear axle, m/s.
    pub(crate) speed_mps: f64,
    /// Along the van, m/s²; forward is positive.
    pub(crate) acceleration_mps2: f64,
    /// Curvature of its way, 1/m; left is positive.
    pub(crate) curvature_per_m: f64,
    /// The way so far, m.
    pub(crate) distance_m: f64,
    /// Pressure in the master cylinder, bar.
    pub(crate) pressure_bar: f64,
    /// The brake pedal's switch is closed.
    pub(crate) brake_pressed: bool,
    /// Steering wheel, °; left is positive.
    pub(crate) steering_deg: f64,
    /// How fast it turns, °/s.
    pub(crate) steering_deg_per_s: f64,
    /// Speeds of the wheels in km/h: front left, front right, rear left, rear right.
    pub(crate) wheels_kmh: [f64; 4],
    foot_on_brake_s: f64,
    drive_newton: f64,
}

impl Chassis {
    /// At rest.
    pub(crate) fn at_rest() -> Self {
        Self {
            speed_mps: 0.0,
            acceleration_mps2: 0.0,
            curvature_per_m: 0.0,
            distance_m: 0.0,
            pressure_bar: 0.0,
            brake_pressed: false,
            steering_deg: 1.4,
            steering_deg_per_s: 0.0,
            wheels_kmh: [0.0; 4],
            foot_on_brake_s: 0.0,
            drive_newton: 0.0,
        }
    }

    /// Speed in km/h as the brake unit calculates it: the mean of the rear wheels.
    pub(crate) fn speed_kmh(&self) -> f64 {
        (self.wheels_kmh[2] + self.wheels_kmh[3]) / 2.0
    }

    /// Turns of the driven wheels in 1/min.
    pub(crate) fn driven_rpm(&self) -> f64 {
        let front_mps = (self.wheels_kmh[0] + self.wheels_kmh[1]) / 2.0 / KMH;
        front_mps / (2.0 * std::f64::consts::PI * WHEEL_RADIUS_M) * 60.0
    }

    /// Yaw rate, °/s.
    pub(crate) fn yaw_deg_per_s(&self) -> f64 {
        (self.speed_mps * self.curvature_per_m).to_degrees()
    }

    /// Across the van, m/s²; in a left turn positive.
    pub(crate) fn lateral_mps2(&self) -> f64 {
        self.speed_mps * self.speed_mps * self.curvature_per_m
    }

    /// The torque in N·m that the foot on the accelerator goes for, at the crankshaft, with `ratio` down to the wheels.
    pub(crate) fn wanted_nm(&self, foot: Foot, ratio: f64) -> f64 {
        let Foot::Accelerator(goal_kmh) = foot else {
            return 0.0;
        };
        let acceleration = (0.55 * (goal_kmh / KMH - self.speed_mps)).clamp(-0.6, 1.45);
        (MASS_KG * acceleration + self.resistance_newton()) * WHEEL_RADIUS_M / (ratio * EFFICIENCY)
    }

    /// One step on, with this torque at the wheels for each N·m at the crankshaft.
    pub(crate) fn step(&mut self, step_s: f64, hands: &Hands, torque_nm: f64, ratio: f64) {
        self.brake(step_s, hands.foot);
        self.drive_newton = torque_nm * ratio * EFFICIENCY / WHEEL_RADIUS_M;
        let braking = self.pressure_bar * MPS2_PER_BAR;
        let mut acceleration = (self.drive_newton - self.resistance_newton()) / MASS_KG - braking;
        if self.speed_mps < 0.02 && acceleration < 0.0 {
            acceleration = 0.0;
            self.speed_mps = 0.0;
        }
        follow(&mut self.acceleration_mps2, acceleration, 0.06, step_s);
        self.speed_mps = (self.speed_mps + acceleration * step_s).max(0.0);
        self.distance_m += self.speed_mps * step_s;
        self.steer(step_s, hands.curvature_per_m);
        self.turn_wheels();
    }

    fn resistance_newton(&self) -> f64 {
        if self.speed_mps < 0.02 { 150.0 } else { 290.0 + 0.95 * self.speed_mps * self.speed_mps }
    }

    /// The switch closes at once; the pressure comes when the slack is gone, and goes before the switch opens.
    fn brake(&mut self, step_s: f64, foot: Foot) {
        if let Foot::Brake(slowing_mps2, until_kmh) = foot {
            self.foot_on_brake_s += step_s;
            let nearly_there = ((self.speed_mps - until_kmh / KMH) / 0.7).clamp(0.0, 1.0);
            let stands = self.speed_mps < 0.05;
            let strength = if stands { 1.0 } else { 0.35 + 0.65 * nearly_there };
            let goal_bar =
                if until_kmh > 0.0 && nearly_there <= 0.0 { 2.0 } else { slowing_mps2 / MPS2_PER_BAR * strength };
            let slack_gone = self.foot_on_brake_s > 0.13;
            follow(&mut self.pressure_bar, if slack_gone { goal_bar } else { 0.0 }, 0.18, step_s);
            self.brake_pressed = true;
        } else {
            self.foot_on_brake_s = 0.0;
            follow(&mut self.pressure_bar, 0.0, 0.07, step_s);
            self.brake_pressed = self.brake_pressed && self.pressure_bar > 0.6;
        }
    }

    fn steer(&mut self, step_s: f64, curvature_per_m: f64) {
        self.curvature_per_m = curvature_per_m;
        let goal_deg = angle_deg(WHEELBASE_M * curvature_per_m) * STEERING_RATIO + 1.4;
        self.steering_deg_per_s = (goal_deg - self.steering_deg) / step_s;
        self.steering_deg = goal_deg;
    }

    /// Each wheel runs on a circle of its own around the same middle.
    fn turn_wheels(&mut self) {
        let aside = self.curvature_per_m * TRACK_M / 2.0;
        let ahead = self.curvature_per_m * WHEELBASE_M;
        let (left, right) = (1.0 - aside, 1.0 + aside);
        let front = |side: f64| (side * side + ahead * ahead).sqrt();
        let slip = 1.0 + self.drive_newton.max(0.0) / 900_000.0;
        let circles = [front(left) * slip, front(right) * slip, left, right];
        for (wheel, (circle, tyre)) in self.wheels_kmh.iter_mut().zip(circles.iter().zip(TYRES)) {
            *wheel = self.speed_mps * KMH * circle * tyre;
        }
    }

    /// What the sensor of a wheel reads.
    pub(crate) fn wheel_reading_kmh(&self, wheel: usize, noise: &mut Noise) -> f64 {
        let true_kmh = self.wheels_kmh[wheel];
        if true_kmh < 0.2 { 0.0 } else { true_kmh + noise.around_zero(0.04) }
    }
}
