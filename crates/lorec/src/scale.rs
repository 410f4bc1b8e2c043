//! From raw numbers to engineering values.

use wirelore_bits::{Affine, Number, TroubleCode};

use crate::find::partition;
use crate::layout::{Section, line, scale};
use crate::reading::Value;
use crate::table::Lorec;

/// How a signal is scaled.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Scale {
    pub(crate) kind: u32,
    /// The formula, or the first point of the curve.
    pub(crate) first: u32,
    /// How many points.
    pub(crate) count: u32,
}

impl Scale {
    /// The value of a raw number that is a reading.
    pub(crate) fn value(&self, table: &Lorec<'_>, number: Number, (bits, width): (u64, u8)) -> Value<'static> {
        let scaled = match self.kind {
            scale::FORMULA => formula(table, self.first).map(|formula| applied(&formula, number)),
            scale::CURVE => return self.on_curve(table, number).map_or(Value::BeyondCurve, Value::Number),
            scale::TROUBLE_CODE => {
                return TroubleCode::of_bits(bits, width).map_or(Value::NotDigits, Value::TroubleCode);
            }
            _ => None,
        };
        match (scaled, number) {
            (Some(value), _) => Value::Number(value),
            (None, Number::Integer(number)) => Value::Integer(number),
            (None, Number::Float(number)) => Value::Number(number),
        }
    }

    /// The value as a double, where there is one: to be compared with a range.
    pub(crate) fn number(&self, table: &Lorec<'_>, number: Number) -> Option<f64> {
        match self.value(table, number, (0, 0)) {
            Value::Number(value) => Some(value),
            Value::Integer(value) => Some(value as f64),
            _ => None,
        }
    }

    fn on_curve(&self, table: &Lorec<'_>, number: Number) -> Option<f64> {
        let point = |at: u32| table.record::<5>(Section::Points, self.first.checked_add(at)?);
        let raw = |[low, high, ..]: [u32; 5]| (u64::from(low) | u64::from(high) << 32) as i64;
        let order = |raw: i64| match number {
            Number::Integer(number) => i128::from(raw).cmp(&number),
            // That of a number that is none is not asked for: no point stands before it.
            Number::Float(number) => (raw as f64).partial_cmp(&number).unwrap_or(core::cmp::Ordering::Greater),
        };
        let last = self.count.checked_sub(1)?;
        if order(raw(point(last)?)).is_lt() {
            return None;
        }
        let behind = partition(self.count, |at| point(at).is_some_and(|point| order(raw(point)).is_le()));
        // At the very end of the curve the last piece holds.
        let [.., kind, one, other] = point(behind.checked_sub(1)?.min(last.checked_sub(1)?))?;
        match kind {
            line::LEVEL => Some(f64::from_bits(u64::from(one) | u64::from(other) << 32)),
            line::SLOPE => Some(applied(&formula(table, one)?, number)),
            _ => None,
        }
    }
}

fn applied(formula: &Affine, number: Number) -> f64 {
    match number {
        Number::Integer(number) => formula.value(number),
        Number::Float(number) => formula.value_of_float(number),
    }
}

fn formula(table: &Lorec<'_>, index: u32) -> Option<Affine> {
    let words: [u32; 12] = table.record(Section::Formulas, index)?;
    let number = |at: usize| {
        let parts = words.iter().skip(at).take(4).rev();
        parts.fold(0_u128, |number, word| number << 32 | u128::from(*word))
    };
    Affine::from_parts(number(0) as i128, number(4) as i128, number(8))
}
