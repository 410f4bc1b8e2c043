//! Which raw values lie inside a range of engineering values: worked out once, exactly.

use std::cmp::Ordering;

use wirelore_bits::{Affine, Ratio};
use wirelore_model::ValueRange;

/// The raw values between `raws.0` and `raws.1` whose engineering value lies in the range; `None` where there are none.
pub(crate) fn raws_inside(formula: &Affine, range: &ValueRange, raws: (i128, i128)) -> Option<(i128, i128)> {
    let rises = formula.factor() > Ratio::ZERO;
    let (near, far) = if rises { (&range.low, &range.high) } else { (&range.high, &range.low) };
    let compared = |raw, with| {
        let order = compare(formula, raw, with);
        if rises { order } else { order.reverse() }
    };
    // The nearest raw value may lie one step outside; where the end of the range lies beyond all raw values it is the nearer of those.
    let mut first = formula.raw_for_ratio(near, raws).raw;
    if compared(first, near) == Ordering::Less {
        first += 1;
    }
    let mut last = formula.raw_for_ratio(far, raws).raw;
    if compared(last, far) == Ordering::Greater {
        last -= 1;
    }
    (first <= last).then_some((first, last))
}

/// Compares the value of `raw` with `value`: exactly, or as doubles where the exact value needs more than 128 bits.
pub(crate) fn compare(formula: &Affine, raw: i128, value: &Ratio) -> Ordering {
    match formula.exact(raw) {
        Some(exact) => exact.cmp(value),
        None => formula.value(raw).total_cmp(&value.to_f64()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ratio(text: &str) -> Ratio {
        Ratio::from_decimal(text).expect("a decimal")
    }

    #[test]
    fn agrees_with_looking_at_every_raw_value() {
        let ends = ["-300", "-40", "-12.34", "-0.05", "0", "0.049", "0.05", "12.7", "100", "409.5", "1000"];
        for (factor, offset) in [("0.05", "0"), ("1", "-40"), ("-0.1", "20"), ("0.007", "-3.3"), ("-3", "5")] {
            let formula = Affine::new(ratio(factor), ratio(offset)).expect("it fits");
            for (at, low) in ends.iter().enumerate() {
                for high in &ends[at..] {
                    let range = ValueRange { low: ratio(low), high: ratio(high) };
                    let inside: Vec<i128> = (-128..=127)
                        .filter(|&raw| {
                            let value = formula.exact(raw).expect("it fits");
                            range.low <= value && value <= range.high
                        })
                        .collect();
                    let plain = inside.first().copied().zip(inside.last().copied());
                    assert_eq!(
                        raws_inside(&formula, &range, (-128, 127)),
                        plain,
                        "raw * {factor} + {offset} in {low}..{high}"
                    );
                }
            }
        }
    }
}
