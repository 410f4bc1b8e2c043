//! Contenders that run in one process, one after the other, in an order that each round draws anew: who writes much leaves colder caches to
//! whoever comes next, so none may have the same one before it all the time.

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

    /// Two rounds to warm up, then so many that count.
    pub(crate) fn run(mut self, rounds: usize) -> Times {
        let mut order: Vec<usize> = (0..self.contenders.len()).collect();
        let mut state = 1_u64;
        for round in 0..rounds + 2 {
            shuffle(&mut order, &mut state);
            for &turn in &order {
                let contender = &mut self.contenders[turn];
                let sample_ns = contender.turn();
                if round >= 2 {
                    contender.samples_ns.push(sample_ns);
                }
            }
        }
        Times { samples_ns: self.contenders.into_iter().map(|contender| contender.samples_ns).collect() }
    }
}

/// Any order is as likely as any other: Knuth, TAOCP volume 2, section 3.4.2, algorithm P.
fn shuffle(order: &mut [usize], state: &mut u64) {
    for last in (1..order.len()).rev() {
        *state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        order.swap(last, (*state >> 33) as usize % (last + 1));
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
