//! The words that describe a signal for people and for other programs: formulas, state words. They are written as the
//! language writes them; nothing reads them here.

use std::fmt::Write;

use wirelore_bits::{Affine, Ratio};

use crate::{Database, Meaning, Scaling, Signal};

/// A factor of more characters than this reads better as a division (`raw / 256` for 0.00390625).
const SHORT_FACTOR: usize = 6;

/// The way from the raw number to the engineering value as the language writes it: `raw * 0.05 - 40`, exactly as the numbers are.
#[must_use]
pub fn formula_text(scaling: &Scaling) -> String {
    match scaling {
        Scaling::Raw => "raw".to_owned(),
        Scaling::TroubleCode => "trouble code".to_owned(),
        Scaling::Affine(affine) => affine_text(affine),
        Scaling::Curve(curve) => {
            let points = curve.points.iter().map(|point| format!("{}: {}", point.raw, point.value));
            format!("curve {{ {} }}", points.collect::<Vec<_>>().join(", "))
        }
    }
}

fn affine_text(affine: &Affine) -> String {
    let (factor, offset) = (affine.factor(), affine.offset());
    let mut text = "raw".to_owned();
    // Writing to a string cannot fail.
    if factor != Ratio::ONE {
        let decimal = factor.to_string();
        let _ = if factor.numerator() == 1 && decimal.len() > SHORT_FACTOR {
            write!(text, " / {}", factor.denominator())
        } else {
            write!(text, " * {decimal}")
        };
    }
    if !offset.is_zero() {
        let _ = match offset.checked_neg().filter(|_| offset.numerator() < 0) {
            Some(positive) => write!(text, " - {positive}"),
            None => write!(text, " + {offset}"),
        };
    }
    text
}

/// The state words of a signal with their raw values: `0 closed, 1 open, 0x3 away (no reading)`; empty where it has none.
#[must_use]
pub fn state_words_text(database: &Database, signal: &Signal) -> String {
    let words = database.words(signal).iter().map(|word| {
        let meaning = match word.meaning {
            Meaning::Reading => "",
            Meaning::Absent => " (no reading)",
            Meaning::Fault => " (sensor fault)",
        };
        format!("{} {}{meaning}", word.values, word.word)
    });
    words.collect::<Vec<_>>().join(", ")
}
