//! Which engineering values a signal can have at all.

use wirelore_bits::{Encoding, Number, Ratio};
use wirelore_model::{CurvePoint, Database, FrameId, Scaling, Signal, SignalId, StateWord};

use crate::plan::{ExactLine, reading_runs};

/// The least and the greatest engineering value that the readings of a signal can have, exactly, in the described unit. Raw values that
/// say "no reading" or "sensor fault", and those beyond the ends of a curve, are left out; a described range changes nothing.
///
/// `None` where there is no such signal, where it holds text, bytes or trouble codes, where no raw value is a reading, for floating-point numbers (other
/// than on a curve), and where an end needs more than fractions of 128 bits.
#[must_use]
pub fn reachable(database: &Database, frame: FrameId, signal: SignalId) -> Option<(Ratio, Ratio)> {
    let signal = database.frames.get(frame.index())?.signals.get(signal.index())?;
    ends(signal, signal.encoding()?, database.words(signal))
}

/// The same for a number signal at hand.
pub(crate) fn ends(signal: &Signal, encoding: Encoding, words: &[StateWord]) -> Option<(Ratio, Ratio)> {
    let points = match &signal.scaling {
        Scaling::Curve(curve) => curve.points.as_slice(),
        Scaling::Raw | Scaling::Affine(_) => &[],
        Scaling::TroubleCode => return None,
    };
    if encoding.integer_range().is_none() {
        let values = || points.iter().map(|point| point.value);
        return values().min().zip(values().max());
    }
    let mut both: Option<(Ratio, Ratio)> = None;
    for (first, last) in reading_runs(signal, encoding, words) {
        // Between the points of a curve values run straight, so the extremes are at the ends and at points.
        let inside = points.iter().map(|point| i128::from(point.raw)).filter(|raw| (first..=last).contains(raw));
        for raw in [first, last].into_iter().chain(inside) {
            let value = exact(signal, raw)?;
            both = Some(both.map_or((value, value), |(least, greatest)| (least.min(value), greatest.max(value))));
        }
    }
    both
}

/// The exact engineering value of some bits of a signal that holds whole numbers.
pub(crate) fn exact_of_bits(signal: &Signal, encoding: Encoding, bits: u64) -> Option<Ratio> {
    match encoding.number(bits).ok()? {
        Number::Integer(raw) => exact(signal, raw),
        Number::Float(_) => None,
    }
}

fn exact(signal: &Signal, raw: i128) -> Option<Ratio> {
    match &signal.scaling {
        Scaling::Raw => Some(Ratio::whole(raw)),
        Scaling::TroubleCode => None,
        Scaling::Affine(formula) => formula.exact(raw),
        Scaling::Curve(curve) => {
            let holds = |pair: &&[CurvePoint]| i128::from(pair[0].raw) <= raw && raw <= i128::from(pair[1].raw);
            let pair = curve.points.windows(2).find(holds)?;
            match ExactLine::through(&pair[0], &pair[1])? {
                ExactLine::Level(value) => Some(value),
                ExactLine::Slope(formula) => formula.exact(raw),
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use wirelore_bits::NumberKind;
    use wirelore_model::{Charset, Curve, Meaning};

    use super::*;
    use crate::testing::*;

    fn reach(signal: Signal) -> Option<(String, String)> {
        let database = one_frame(frame("f", id(1), vec![signal]));
        let ends = reachable(&database, FrameId(0), SignalId(0));
        ends.map(|(least, greatest)| (least.to_string(), greatest.to_string()))
    }

    fn both(least: &str, greatest: &str) -> Option<(String, String)> {
        Some((least.to_owned(), greatest.to_owned()))
    }

    fn curve(points: &[(i64, &str)]) -> Scaling {
        let points = points.iter().map(|&(raw, value)| CurvePoint { raw, value: ratio(value) });
        Scaling::Curve(Curve { points: points.collect() })
    }

    #[test]
    fn special_values_are_left_out() {
        let byte = || unsigned("s", "0.7..0.0");
        assert_eq!(reach(byte()), both("0", "255"));
        let scaled = || byte().scaled("0.5", "-40", "°C").in_range("0", "50");
        assert_eq!(reach(scaled()), both("-40", "87.5"), "whatever the described range");
        assert_eq!(reach(scaled().absent(&[pattern(0xFF, 0xFF)]).fault(&[pattern(0xFB, 0xFE)])), both("-40", "85"));
        assert_eq!(reach(byte().scaled("-2", "0", "V").absent(&[span(0, 9)])), both("-510", "-20"));
        assert_eq!(reach(byte().words(&[(0, 0, "none", Meaning::Absent)])), both("1", "255"));
        assert_eq!(reach(byte().absent(&[span(0, 255)])), None, "no reading at all");
        assert_eq!(reach(number("s", "0.7..0.0", NumberKind::Bcd)), both("0", "99"));
    }

    #[test]
    fn curves_reach_as_far_as_their_points_and_their_readings() {
        let curved = |points| Signal { scaling: curve(points), ..unsigned("s", "0.7..0.0") };
        let wave = || curved(&[(10, "5"), (100, "60"), (200, "-10"), (220, "0")]);
        assert_eq!(reach(wave()), both("-10", "60"));
        assert_eq!(reach(wave().absent(&[span(100, 200)])), both("-9.5", "1069/18"));
        let float = Signal { scaling: curve(&[(0, "1"), (9, "-3")]), ..number("s", "3.7..0.0", NumberKind::Float) };
        assert_eq!(reach(float), both("-3", "1"));
    }

    #[test]
    fn what_has_no_ends_has_none() {
        assert_eq!(reach(number("s", "3.7..0.0", NumberKind::Float)), None);
        assert_eq!(reach(text("s", 0, Some(3), Charset::Ascii)), None);
        let database = one_frame(frame("f", id(1), Vec::new()));
        assert_eq!(reachable(&database, FrameId(0), SignalId(0)), None);
        assert_eq!(reachable(&database, FrameId(9), SignalId(0)), None);
    }
}
