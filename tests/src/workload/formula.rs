//! The formulas of the workload: what raw numbers mean.

/// `(raw * numerator + offset) / denominator`, and how a description writes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Formula {
    /// Factor, over the denominator.
    pub numerator: i64,
    /// Offset, over the denominator.
    pub offset: i64,
    /// A divisor of 10 to the power of `decimals`.
    pub denominator: i64,
    /// How many decimals the values have at most.
    pub decimals: u32,
    /// As the language writes it.
    pub text: &'static str,
    /// The unit.
    pub unit: &'static str,
}

impl Formula {
    /// The raw number itself, of narrow signals.
    pub const RAW: Self = formula(1, 0, 1, 0, "raw", "");

    /// The others.
    pub const SCALED: [Self; 14] = [
        formula(5, 0, 100, 2, "raw * 0.05", "km/h"),
        formula(1, -4_000, 100, 2, "raw * 0.01 - 40", "°C"),
        formula(1, 0, 256, 8, "raw / 256", "bar"),
        formula(1, 0, 8, 3, "raw * 0.125", "rpm"),
        formula(1, -400, 10, 1, "raw * 0.1 - 40", "°C"),
        formula(1, 0, 1_000, 3, "raw * 0.001", "V"),
        formula(1, -32_768, 100, 2, "raw * 0.01 - 327.68", "N·m"),
        formula(1, 0, 2, 1, "raw * 0.5", "%"),
        formula(5, -27_315, 100, 2, "raw * 0.05 - 273.15", "°C"),
        formula(1, -2_000, 16, 4, "raw / 16 - 125", "kPa"),
        formula(3, 0, 100, 2, "raw * 0.03", "L/h"),
        formula(1, -5_000, 100, 2, "raw * 0.01 - 50", "m/s²"),
        formula(39, 0, 10_000, 4, "raw * 0.0039", "%"),
        formula(1, -1_600, 10, 1, "raw * 0.1 - 160", "A"),
    ];

    /// The double nearest to the exact value of `raw`: for 32-bit numbers numerator and denominator are doubles, and the division is
    /// the only rounding.
    #[must_use]
    pub const fn value(&self, raw: i64) -> f64 {
        (raw * self.numerator + self.offset) as f64 / self.denominator as f64
    }
}

const fn formula(
    numerator: i64,
    offset: i64,
    denominator: i64,
    decimals: u32,
    text: &'static str,
    unit: &'static str,
) -> Formula {
    Formula { numerator, offset, denominator, decimals, text, unit }
}
