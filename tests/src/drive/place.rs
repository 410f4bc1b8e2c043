//! Where the van is, and where it points.

use super::chassis::Chassis;

/// Place and direction at one moment.
#[derive(Debug, Clone)]
pub(crate) struct Place {
    /// Metres north of where it stood in the morning.
    pub(crate) north_m: f64,
    /// Metres east of it.
    pub(crate) east_m: f64,
    /// How far it has turned, °; left is positive.
    pub(crate) turned_deg: f64,
    /// Where it points: a step of one metre, north and east.
    ahead: [f64; 2],
}

impl Place {
    /// Where it stood, pointing north.
    pub(crate) fn of_the_morning() -> Self {
        Self { north_m: 0.0, east_m: 0.0, turned_deg: 0.0, ahead: [1.0, 0.0] }
    }

    /// One step on. A small turn adds a little of what lies across; the length is put right again, without sine and cosine, whose last
    /// bits differ from machine to machine.
    pub(crate) fn step(&mut self, step_s: f64, chassis: &Chassis) {
        let metres = chassis.speed_mps * step_s;
        let turn = metres * chassis.curvature_per_m;
        self.turned_deg += turn.to_degrees();
        let [north, east] = self.ahead;
        let (north, east) = (north + east * turn, east - north * turn);
        let length = (north * north + east * east).sqrt();
        self.ahead = [north / length, east / length];
        self.north_m += self.ahead[0] * metres;
        self.east_m += self.ahead[1] * metres;
    }
}
