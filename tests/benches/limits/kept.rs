//! Columns of doubles, as the slow path makes them for all frames of a recording.

use wirelore_tests::workload::Vehicle;

use crate::stage::{DESCRIBED, SIGNALS};

/// The columns of one described frame.
#[derive(Debug, Clone, Default)]
pub(crate) struct Columns {
    pub(crate) times_ns: Vec<i64>,
    pub(crate) values: [Vec<f64>; SIGNALS],
}

/// The columns of all described frames, in the order of the description.
#[derive(Debug)]
pub(crate) struct Kept(pub(crate) Vec<Columns>);

impl Kept {
    pub(crate) fn new() -> Self {
        Self(vec![Columns::default(); DESCRIBED as usize])
    }

    /// What the slow path makes of the first frames of the traffic, with times from `start_ns` on.
    pub(crate) fn expected(vehicle: &Vehicle<SIGNALS>, frames: u64, start_ns: i64) -> Self {
        let mut kept = Self::new();
        for sent in vehicle.traffic().take(frames as usize) {
            let columns = &mut kept.0[sent.frame.number as usize];
            columns.times_ns.push(start_ns + sent.time_ns);
            for (column, signal) in columns.values.iter_mut().zip(&sent.frame.signals) {
                column.push(signal.value(sent.word));
            }
        }
        kept
    }

    pub(crate) fn columns(&self) -> impl Iterator<Item = &Vec<f64>> {
        self.0.iter().flat_map(|columns| &columns.values)
    }

    /// That both hold the same times and the same doubles, bit for bit.
    pub(crate) fn assert_same(&self, other: &Self) {
        for (frame, (ours, theirs)) in self.0.iter().zip(&other.0).enumerate() {
            assert!(ours.times_ns == theirs.times_ns, "times of frame {frame} differ");
            for (signal, (ours, theirs)) in ours.values.iter().zip(&theirs.values).enumerate() {
                let same = ours.iter().map(|value| value.to_bits()).eq(theirs.iter().map(|value| value.to_bits()));
                assert!(same, "values of signal {signal} of frame {frame} differ");
            }
        }
    }
}
