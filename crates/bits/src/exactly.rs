//! Numbers for tests, exact by their making.

/// A power of two up to 2^127: of `powi` nobody promises that.
pub(crate) fn two_to(exponent: u32) -> f64 {
    (1_u128 << exponent) as f64
}
