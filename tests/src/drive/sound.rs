//! Radio, amplifier and player.

use super::script::Hands;

/// For each of so many km/h the music becomes a step louder.
const KMH_PER_STEP: f64 = 11.0;
/// The speed must fall by so many km/h below that before it becomes quieter again.
const KMH_SLACK: f64 = 3.0;
/// The most that is added.
const MOST_ADDED: u8 = 10;
/// Where the player is at the beginning: number of the track, and seconds since its start.
const FIRST_TRACK: u8 = 6;
const FIRST_TRACK_AT_S: f64 = 161.4;
/// How long the first track is, s.
const FIRST_TRACK_S: f64 = 198.0;

/// What is heard at one moment.
#[derive(Debug, Clone)]
pub(crate) struct Sound {
    /// What the driver wants, in steps.
    pub(crate) wished: u8,
    /// What the amplifier adds because of the speed, in steps.
    pub(crate) added: u8,
    /// Number of the track.
    pub(crate) track: u8,
    /// Whole seconds of it that were played.
    pub(crate) track_s: u32,
}

impl Sound {
    /// Music that was on when the van was left.
    pub(crate) fn playing(hands: &Hands) -> Self {
        let mut sound = Self { wished: 0, added: 0, track: FIRST_TRACK, track_s: 0 };
        sound.step(0.0, hands, 0.0);
        sound
    }

    /// What comes out of the loudspeakers, in steps.
    pub(crate) fn loudness(&self) -> u8 {
        self.wished + self.added
    }

    /// One step on.
    pub(crate) fn step(&mut self, at_s: f64, hands: &Hands, speed_kmh: f64) {
        self.wished = hands.volume;
        let steps = |kmh: f64| (kmh.max(0.0) / KMH_PER_STEP) as u8;
        self.added = self.added.clamp(steps(speed_kmh), steps(speed_kmh + KMH_SLACK)).min(MOST_ADDED);
        let played_s = FIRST_TRACK_AT_S + at_s;
        let (track, track_s) = if played_s < FIRST_TRACK_S {
            (FIRST_TRACK, played_s)
        } else {
            (FIRST_TRACK + 1, played_s - FIRST_TRACK_S)
        };
        (self.track, self.track_s) = (track, track_s as u32);
    }
}
