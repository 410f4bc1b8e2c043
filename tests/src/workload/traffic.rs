//! What the vehicle sends: each frame at its own period with a little jitter, in the order of time.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::shape::mix;
use super::{FrameShape, SignalShape, Vehicle};

/// One frame on a network.
#[derive(Debug)]
pub struct Sent<'a, const N: usize> {
    /// Since the beginning.
    pub time_ns: i64,
    /// What it is.
    pub frame: &'a FrameShape<N>,
    /// Its bytes as a word, see [`FrameShape::word`].
    pub word: u64,
}

/// All frames in the order of time, without end.
#[derive(Debug)]
pub struct Traffic<'a, const N: usize> {
    vehicle: &'a Vehicle<N>,
    /// When each frame is sent next, by its index.
    due: BinaryHeap<Reverse<(i64, usize)>>,
    signals: Vec<[Content; N]>,
    chance: Chance,
}

impl<'a, const N: usize> Traffic<'a, N> {
    pub(super) fn new(vehicle: &'a Vehicle<N>) -> Self {
        let mut chance = Chance(0x2545_F491_4F6C_DD1D);
        let first = |(index, frame): (usize, &FrameShape<N>)| {
            Reverse(((chance.next() % (u64::from(frame.period_ms) * 1_000_000)) as i64, index))
        };
        let due = vehicle.frames.iter().enumerate().map(first).collect();
        let contents = |frame: &FrameShape<N>| {
            std::array::from_fn(|index| {
                Content::new(&frame.signals[index], mix(u64::from(frame.number) * 16 + index as u64))
            })
        };
        Self { vehicle, due, signals: vehicle.frames.iter().map(contents).collect(), chance }
    }
}

impl<'a, const N: usize> Iterator for Traffic<'a, N> {
    type Item = Sent<'a, N>;

    fn next(&mut self) -> Option<Sent<'a, N>> {
        let Reverse((time_ns, index)) = self.due.pop()?;
        let frame = &self.vehicle.frames[index];
        let period_ns = i64::from(frame.period_ms) * 1_000_000;
        // Up to 1 % early or late.
        let jitter_ns = (self.chance.next() % (period_ns as u64 / 50)) as i64 - period_ns / 100;
        self.due.push(Reverse((time_ns + period_ns + jitter_ns, index)));
        let mut word = 0;
        for (signal, content) in frame.signals.iter().zip(&mut self.signals[index]) {
            word |= content.next(&mut self.chance) << signal.shift;
        }
        Some(Sent { time_ns, frame, word })
    }
}

/// What a signal does from frame to frame.
#[derive(Debug, Clone, Copy)]
struct Content {
    behaviour: Behaviour,
    bits: u64,
    mask: u64,
}

#[derive(Debug, Clone, Copy)]
enum Behaviour {
    /// One more each time.
    Counts,
    /// Up or down by this much at most.
    Walks(u64),
    /// Something new once in so many frames.
    ChangesOnceIn(u64),
}

impl Content {
    fn new(signal: &SignalShape, number: u64) -> Self {
        let mask = (1 << signal.width) - 1;
        let behaviour = match number % 8 {
            0 => Behaviour::Counts,
            1..5 if signal.width > 4 => Behaviour::Walks(1 + (mask >> 8)),
            _ => Behaviour::ChangesOnceIn(200),
        };
        Self { behaviour, bits: (number >> 8) & mask, mask }
    }

    fn next(&mut self, chance: &mut Chance) -> u64 {
        let bits = match self.behaviour {
            Behaviour::Counts => self.bits + 1,
            Behaviour::Walks(most) => (self.bits + chance.next() % (2 * most + 1)).wrapping_sub(most),
            Behaviour::ChangesOnceIn(frames) if chance.next().is_multiple_of(frames) => chance.next(),
            Behaviour::ChangesOnceIn(_) => self.bits,
        };
        self.bits = bits & self.mask;
        self.bits
    }
}

/// A linear congruential generator: its upper bits.
#[derive(Debug)]
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 >> 29
    }
}
