//! Contenders that run in one process, one after the other, in rotating order.

use std::hint::black_box;

use crate::clock::{Meter, Reading};
use crate::spread::Spread;

/// Names a contender of a race.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Runner(usize);

struct Contender<'a> {
    name: String,
    meter: Meter,
    expected: u64,
    run: Box<dyn FnMut() -> u64 + 'a>,
    samples_ns: Vec<f64>,
}

/// Several ways to do a job, or to do the least that a job could need.
#[derive(Default)]
pub(crate) struct Race<'a> {
    contenders: Vec<Contender<'a>>,
}

impl<'a> Race<'a> {
    /// Enters a contender, measured in CPU time of its thread. Whatever `run` works out it sums up, and each sum must be `expected`,
    /// which the slow path has found.
    pub(crate) fn enter(&mut self, name: impl Into<String>, expected: u64, run: impl FnMut() -> u64 + 'a) -> Runner {
        self.enter_with(Meter::Thread, name, expected, run)
    }

    /// The same with another clock.
    pub(crate) fn enter_with(
        &mut self,
        meter: Meter,
        name: impl Into<String>,
        expected: u64,
        run: impl FnMut() -> u64 + 'a,
    ) -> Runner {
        let run = Box::new(run);
        self.contenders.push(Contender { name: name.into(), meter, expected, run, samples_ns: Vec::new() });
        Runner(self.contenders.len() - 1)
    }

    /// Two turns to warm up, then so many rounds, each begun by the next contender.
    pub(crate) fn run(mut self, rounds: usize) -> Times {
        let count = self.contenders.len();
        for round in 0..rounds + 2 {
            for turn in 0..count {
                let contender = &mut self.contenders[(round + turn) % count];
                let sample_ns = contender.turn();
                if round >= 2 {
                    contender.samples_ns.push(sample_ns);
                }
            }
        }
        Times { samples_ns: self.contenders.into_iter().map(|contender| contender.samples_ns).collect() }
    }
}

impl Contender<'_> {
    fn turn(&mut self) -> f64 {
        let begin = Reading::now();
        let sum = black_box((self.run)());
        let sample_ns = begin.elapsed_ns(self.meter);
        assert_eq!(sum, self.expected, "{} does not make what the slow path makes", self.name);
        sample_ns
    }
}

/// What a race took.
pub(crate) struct Times {
    samples_ns: Vec<Vec<f64>>,
}

impl Times {
    /// CPU time of one run.
    pub(crate) fn of(&self, runner: Runner) -> Spread {
        Spread::of(self.samples_ns[runner.0].iter().copied())
    }

    /// Times of `runner` over those of `rival` in the same rounds.
    pub(crate) fn ratio(&self, runner: Runner, rival: Runner) -> Spread {
        let pairs = self.samples_ns[runner.0].iter().zip(&self.samples_ns[rival.0]);
        Spread::of(pairs.map(|(runner_ns, rival_ns)| runner_ns / rival_ns))
    }
}
