//! Springs and dampers: the body dives when the van brakes, leans out of curves, and the road does the rest.

use super::chassis::Chassis;
use super::shape::follow;
use crate::noise::Noise;

/// How far the front goes down for each m/s² of braking, mm; the rear comes up by as much.
const DIVE_MM_PER_MPS2: f64 = 9.5;
/// How far the outer side goes down for each m/s² across, mm.
const LEAN_MM_PER_MPS2: f64 = 7.0;
/// The road's height under a wheel at 50 km/h, mm.
const ROAD_MM: f64 = 9.0;
/// How long a patch of road is, m.
const PATCH_M: f64 = 0.45;
/// How slowly the body follows, s.
const BODY_S: f64 = 0.16;
/// How slowly a wheel follows the road, s.
const WHEEL_S: f64 = 0.022;
/// The current of a valve that nobody asks for anything, A.
const SOFT_A: f64 = 0.32;
/// How much more it becomes for each mm/s of travel, A.
const A_PER_MM_PER_S: f64 = 0.0024;
/// Slowing down by more than this in m/s² is braking.
const BRAKING_MPS2: f64 = 1.2;
/// More than this across in m/s² is turning.
const TURNING_MPS2: f64 = 1.0;

/// Why the dampers are firmer than usual, numbered as in `damping_change.because`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Cause {
    /// They are not.
    Calm = 0,
    /// The van brakes.
    Braking = 1,
    /// It turns.
    Turning = 2,
}

/// The suspension at one moment; wheels in the order front left, front right, rear left, rear right.
#[derive(Debug, Clone)]
pub(crate) struct Suspension {
    /// How far each wheel has come up to the body, mm.
    pub(crate) travel_mm: [f64; 4],
    /// How fast, mm/s.
    pub(crate) lift_mm_per_s: [f64; 4],
    /// Currents of the dampers, A.
    pub(crate) current_a: [f64; 4],
    /// Why they are firm.
    pub(crate) cause: Cause,
    /// The valves, °C.
    pub(crate) valve_c: [f64; 4],
    body_mm: [f64; 4],
    road_mm: [f64; 4],
    bump_mm: [f64; 4],
    next_patch_m: [f64; 4],
    noise: Noise,
}

impl Suspension {
    /// The loaded van at rest.
    pub(crate) fn at_rest() -> Self {
        Self {
            travel_mm: [0.0; 4],
            lift_mm_per_s: [0.0; 4],
            current_a: [SOFT_A; 4],
            cause: Cause::Calm,
            valve_c: [17.5, 17.2, 16.4, 16.1],
            body_mm: [0.0; 4],
            road_mm: [0.0; 4],
            bump_mm: [0.0; 4],
            // No two wheels come to their first patch at the same time.
            next_patch_m: [0.05, 0.16, 0.27, 0.38],
            noise: Noise::new(0x6461_6D70),
        }
    }

    /// How firm the dampers are, numbered as in `damper_currents.damping`.
    pub(crate) fn damping(&self) -> u8 {
        if self.cause == Cause::Calm { 1 } else { 2 }
    }

    /// One step on.
    pub(crate) fn step(&mut self, step_s: f64, chassis: &Chassis) {
        let (ahead, across) = (chassis.acceleration_mps2, chassis.lateral_mps2());
        self.cause = match (ahead < -BRAKING_MPS2, across.abs() > TURNING_MPS2) {
            (true, _) => Cause::Braking,
            (_, true) => Cause::Turning,
            _ => Cause::Calm,
        };
        let dive = -ahead * DIVE_MM_PER_MPS2;
        // In a left turn the right side is the outer one.
        let lean = across * LEAN_MM_PER_MPS2;
        let body_mm = [dive - lean, dive + lean, -dive - lean, -dive + lean];
        for (wheel, goal_mm) in body_mm.into_iter().enumerate() {
            self.roll(wheel, step_s, chassis);
            follow(&mut self.body_mm[wheel], goal_mm, BODY_S, step_s);
            let travel_mm = self.body_mm[wheel] + self.bump_mm[wheel];
            self.lift_mm_per_s[wheel] = (travel_mm - self.travel_mm[wheel]) / step_s;
            self.travel_mm[wheel] = travel_mm;
            let firm_a = if self.cause == Cause::Calm { 0.0 } else { 0.35 };
            let goal_a = SOFT_A + firm_a + A_PER_MM_PER_S * self.lift_mm_per_s[wheel].abs();
            follow(&mut self.current_a[wheel], goal_a.min(1.6), 0.012, step_s);
            self.valve_c[wheel] += 0.05 * self.current_a[wheel] * self.current_a[wheel] * step_s;
        }
    }

    /// Each patch of the road is a little higher or lower than the one before, and is felt more the faster the van is.
    fn roll(&mut self, wheel: usize, step_s: f64, chassis: &Chassis) {
        if chassis.distance_m >= self.next_patch_m[wheel] {
            self.next_patch_m[wheel] += PATCH_M;
            let share = (chassis.speed_mps / 14.0).min(1.0);
            self.road_mm[wheel] = self.noise.around_zero(ROAD_MM) * share;
        }
        follow(&mut self.bump_mm[wheel], self.road_mm[wheel], WHEEL_S, step_s);
    }
}
