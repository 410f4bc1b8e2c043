//! The busiest moments of a channel: a window of one second and one of a tenth, both moved in steps of a tenth.

use std::collections::VecDeque;

use wirelore_model::NetworkId;

use super::rates::Rates;

/// The step by which windows move.
pub(super) const STEP_NS: i64 = 100_000_000;
/// How many steps the longer window has.
const STEPS: usize = 10;

/// Bits at both rates: with the stuff bits that were needed, and without.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Bits {
    pub(super) nominal: u64,
    pub(super) data: u64,
    pub(super) bare_nominal: u64,
    pub(super) bare_data: u64,
}

impl Bits {
    pub(super) fn add(&mut self, other: Self) {
        self.nominal += other.nominal;
        self.data += other.data;
        self.bare_nominal += other.bare_nominal;
        self.bare_data += other.bare_data;
    }

    fn take_away(&mut self, other: Self) {
        self.nominal -= other.nominal;
        self.data -= other.data;
        self.bare_nominal -= other.bare_nominal;
        self.bare_data -= other.bare_data;
    }

    /// All bits, and all but the stuff bits.
    pub(super) fn totals(self) -> (u64, u64) {
        (self.nominal + self.data, self.bare_nominal + self.bare_data)
    }
}

/// The busiest window of some length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Busiest {
    /// When it begins, in nanoseconds after the first frame of its log.
    pub from_ns: i64,
    /// The part of it that frames took.
    pub share: f64,
    /// The same without the stuff bits.
    pub bare_share: f64,
}

/// Adds up what comes in each step; what has left the longer window is forgotten.
#[derive(Debug)]
pub(super) struct Windows {
    /// The step that is being filled, counted from the first frame of the log.
    step: i64,
    now: Bits,
    /// The steps before it, the newest last, and their sum.
    before: VecDeque<Bits>,
    sum: Bits,
    /// By network that the channel could be: the busiest second and the busiest tenth.
    found: Vec<(NetworkId, Rates, [Option<Busiest>; 2])>,
}

impl Windows {
    pub(super) fn new(candidates: &[(NetworkId, Rates)]) -> Self {
        let found = candidates.iter().map(|(network, rates)| (*network, *rates, [None; 2])).collect();
        Self { step: 0, now: Bits::default(), before: VecDeque::new(), sum: Bits::default(), found }
    }

    /// A frame at so many nanoseconds after the first one; a frame that is earlier than the one before counts with that one.
    #[inline]
    pub(super) fn frame(&mut self, after_ns: i64, bits: Bits) {
        let step = after_ns.div_euclid(STEP_NS);
        if step > self.step {
            self.move_to(step);
        }
        self.now.add(bits);
    }

    fn move_to(&mut self, step: i64) {
        self.close();
        // Behind a pause that is longer than the window nothing is left in it.
        for _ in 0..(step - self.step - 1).min(STEPS as i64) {
            self.push(Bits::default());
        }
        self.step = step;
    }

    /// Ends the step that is being filled, and looks whether it, or the second that ends with it, is the busiest so far.
    fn close(&mut self) {
        let now = std::mem::take(&mut self.now);
        self.push(now);
        let steps = self.before.len() as i64;
        for (_, rates, [second, tenth]) in &mut self.found {
            let tenth_s = STEP_NS as f64 / 1e9;
            keep(tenth, rates.shares(now, tenth_s), self.step * STEP_NS);
            keep(second, rates.shares(self.sum, tenth_s * STEPS as f64), (self.step + 1 - steps) * STEP_NS);
        }
    }

    fn push(&mut self, bits: Bits) {
        if self.before.len() == STEPS
            && let Some(oldest) = self.before.pop_front()
        {
            self.sum.take_away(oldest);
        }
        self.before.push_back(bits);
        self.sum.add(bits);
    }

    /// The busiest second and tenth of a second, if the channel is that network. Recordings shorter than such a window have none.
    pub(super) fn finish(mut self, network: NetworkId, span_ns: i64) -> [Option<Busiest>; 2] {
        self.close();
        let found = self.found.into_iter().find(|(candidate, ..)| *candidate == network);
        let [second, tenth] = found.map_or([None; 2], |(.., found)| found);
        let is_longer = |steps: usize| span_ns >= STEP_NS * steps as i64;
        [second.filter(|_| is_longer(STEPS)), tenth.filter(|_| is_longer(1))]
    }
}

/// Only what is busier takes the place of what was found first.
fn keep(found: &mut Option<Busiest>, (share, bare_share): (f64, f64), from_ns: i64) {
    if found.is_none_or(|busiest| share > busiest.share) {
        *found = Some(Busiest { from_ns: from_ns.max(0), share, bare_share });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const RATES: Rates = Rates { nominal: 1000.0, data: 1000.0 };

    fn bits(nominal: u64) -> Bits {
        Bits { nominal, bare_nominal: nominal / 2, ..Bits::default() }
    }

    fn busiest(frames: &[(i64, u64)]) -> [Option<Busiest>; 2] {
        let mut windows = Windows::new(&[(NetworkId(0), RATES)]);
        for &(ms, count) in frames {
            windows.frame(ms * 1_000_000, bits(count));
        }
        windows.finish(NetworkId(0), frames.last().map_or(0, |(ms, _)| ms * 1_000_000))
    }

    /// 1000 bit/s: 50 bits in a tenth are half of it; 50 + 100 + 40 bits within a second are 19 %.
    #[test]
    fn a_second_and_a_tenth() {
        let [second, tenth] = busiest(&[(0, 10), (1500, 50), (1910, 100), (2390, 40), (5000, 80)]);
        assert_eq!(tenth, Some(Busiest { from_ns: 1_900_000_000, share: 1.0, bare_share: 0.5 }));
        assert_eq!(second, Some(Busiest { from_ns: 1_400_000_000, share: 0.19, bare_share: 0.095 }));
    }

    /// The sum of a window does not keep what was before a long pause.
    #[test]
    fn pauses_empty_the_window() {
        let [second, _] = busiest(&[(0, 100), (100_000, 150), (200_000, 120)]);
        assert_eq!(second.map(|it| it.share), Some(0.15));
        // And turned back in time nothing is lost.
        let [_, tenth] = busiest(&[(0, 10), (900, 20), (850, 5), (2000, 1)]);
        assert_eq!(tenth.map(|it| it.share), Some(0.25));
    }

    #[test]
    fn short_recordings_have_no_busiest_second() {
        let [second, tenth] = busiest(&[(0, 10), (500, 50)]);
        assert_eq!(second, None);
        assert_eq!(tenth.map(|it| it.share), Some(0.5));
        assert_eq!(busiest(&[(0, 10), (50, 10)]), [None, None]);
    }
}
