//! When a frame is due, as its description says.

use wirelore_model::{Frame, Period, Test};

use super::content::{Recorded, Value, Values};
use super::world::{STEP_NS, World};
use crate::noise::Noise;

/// How far the clocks of control units run apart, in millionths.
const CLOCK_PPM: u64 = 60;
/// How late a frame is ready where its description speaks of no jitter.
const USUAL_JITTER_NS: u64 = 150_000;

/// The sender of one frame.
#[derive(Debug)]
pub(crate) struct Sender<'a> {
    frame: &'a Frame,
    recorded: Recorded,
    count: u64,
    clock_ppm: u64,
    noise: Noise,
    /// The last time for which a frame was planned; a moment before the first one.
    slot_ns: u64,
    sent_ns: Option<u64>,
    last_change: u64,
}

impl<'a> Sender<'a> {
    /// The sender of a recorded frame, with a clock and a beginning of its own.
    pub(crate) fn new(recorded: Recorded, frame: &'a Frame, world: &World, seed: u64) -> Self {
        let mut noise = Noise::new(seed);
        let period_ns = frame.sending.every.map_or(STEP_NS, |period| period.shortest.0);
        Self {
            frame,
            recorded,
            count: noise.up_to(11),
            clock_ppm: noise.up_to(2 * CLOCK_PPM),
            // As if it had been running before: the first frame comes within the first period.
            slot_ns: noise.up_to(period_ns),
            noise,
            sent_ns: None,
            last_change: recorded.change.map_or(0, |change| change(world)),
        }
    }

    /// What it sends in the step that begins at `now_ns`, and when that is ready; ordinarily nothing.
    pub(crate) fn step(&mut self, now_ns: u64, world: &mut World) -> Option<(u64, Values)> {
        let values = self.frame.sending.faster.is_some().then(|| (self.recorded.values)(world, self.count));
        let planned_ns = self.planned_ns(values.as_deref());
        let change = self.recorded.change.map_or(self.last_change, |change| change(world));
        let apart_ns = self.frame.sending.apart_at_least.map_or(0, |time| time.0);
        let may_send = self.sent_ns.is_none_or(|sent| now_ns >= sent + apart_ns);
        self.slot_ns = if change != self.last_change && may_send {
            now_ns
        } else if planned_ns < now_ns + STEP_NS {
            planned_ns.max(now_ns)
        } else {
            return None;
        };
        self.last_change = change;
        let jitter_ns = self.frame.sending.jitter.map_or(USUAL_JITTER_NS, |time| time.0 / 4);
        let ready_ns = self.slot_ns + self.noise.up_to(jitter_ns);
        self.sent_ns = Some(ready_ns);
        let values = values.unwrap_or_else(|| (self.recorded.values)(world, self.count));
        self.count += 1;
        Some((ready_ns, values))
    }

    /// When its period brings the next one.
    fn planned_ns(&self, values: Option<&[(&'static str, Value)]>) -> u64 {
        if self.sent_ns.is_none() {
            return self.slot_ns;
        }
        let sending = &self.frame.sending;
        let faster =
            sending.faster.as_ref().filter(|faster| values.is_some_and(|values| self.passes(&faster.test, values)));
        let period_ns = |period: Period| period.shortest.0;
        let nominal_ns =
            faster.map(|faster| period_ns(faster.every)).or(sending.every.map(period_ns)).unwrap_or(u64::MAX / 4);
        let by_own_clock_ns = nominal_ns - nominal_ns / 1_000_000 * CLOCK_PPM + nominal_ns / 1_000_000 * self.clock_ppm;
        self.slot_ns + by_own_clock_ns
    }

    /// Whether the values are such that the frame comes faster.
    fn passes(&self, test: &Test, values: &[(&'static str, Value)]) -> bool {
        let selector = &self.frame.signals[test.selector.index()];
        let Some(encoding) = selector.encoding() else {
            return false;
        };
        let state = values.iter().find_map(|(name, value)| match value {
            Value::State(state) if *name == selector.label.name => Some(i128::from(*state)),
            _ => None,
        });
        let within = |span: &wirelore_model::RawSpan| {
            let ends = span.numbers(encoding);
            ends.zip(state).is_some_and(|((low, high), state)| (low..=high).contains(&state))
        };
        test.values.iter().any(within)
    }
}
