//! A median with its quartiles.

/// What a number of samples say.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Spread {
    pub(crate) lower: f64,
    pub(crate) median: f64,
    pub(crate) upper: f64,
}

impl Spread {
    /// Of at least one sample.
    pub(crate) fn of(samples: impl IntoIterator<Item = f64>) -> Self {
        let mut sorted: Vec<f64> = samples.into_iter().collect();
        sorted.sort_by(f64::total_cmp);
        let at = |share: f64| {
            let place = share * (sorted.len() - 1) as f64;
            let (below, above) = (sorted[place.floor() as usize], sorted[place.ceil() as usize]);
            below + (above - below) * place.fract()
        };
        Self { lower: at(0.25), median: at(0.5), upper: at(0.75) }
    }
}
