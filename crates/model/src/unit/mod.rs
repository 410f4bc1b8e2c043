//! Units: the symbols that the language knows, what they measure, and exact conversion between them.
//!
//! A conversion is a pair of fractions, never a rounded number: `value_to = value_from * factor + offset`. Units between which no such
//! pair exists (degrees and radians, litres per 100 km and kilometres per litre) do not convert.
//!
//! ```
//! use wirelore_model::{Unit, unit};
//!
//! let celsius = Unit::known("degC").expect("a known spelling");
//! assert_eq!(celsius.as_str(), "°C");
//! let fahrenheit = unit::imperial(&celsius).expect("it has a counterpart");
//! let (factor, offset) = unit::conversion(&celsius, &fahrenheit).expect("both are temperatures");
//! assert_eq!((factor.to_string(), offset.to_string()), ("1.8".into(), "32".into()));
//! ```

mod dimension;
mod look_alike;
mod table;
mod written_out;

#[cfg(test)]
mod tests;

use std::collections::HashMap;
use std::fmt;
use std::sync::LazyLock;

use serde::de::{self, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use wirelore_bits::Ratio;

pub use dimension::Dimension;
pub use look_alike::fold_look_alike;
use table::{ROWS, Row};
pub use written_out::symbol_of_name;

/// The unit of an engineering value.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// A unit that the language knows: it has a dimension and converts.
    Symbol(KnownUnit),
    /// Any text (`"steps"`): shown as it is.
    Text(String),
}

/// A unit out of the table of known ones.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct KnownUnit(u8);

/// A spelling that was found in the table of known units.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Recognised {
    /// The unit.
    pub unit: KnownUnit,
    /// The spelling holds characters that only look like the right ones (a Greek mu for the micro sign); worth a hint.
    pub folded: bool,
}

/// Every spelling of every known unit.
static SPELLINGS: LazyLock<HashMap<&'static str, KnownUnit>> = LazyLock::new(|| {
    (0_u8..)
        .zip(ROWS)
        .flat_map(|(index, row)| spellings_of(row).map(move |spelling| (spelling, KnownUnit(index))))
        .collect()
});

static LONGEST_FIRST: LazyLock<Vec<&'static str>> = LazyLock::new(|| {
    let mut all: Vec<_> = ROWS.iter().flat_map(spellings_of).filter(|spelling| *spelling != "1").collect();
    all.sort_by(|a, b| b.chars().count().cmp(&a.chars().count()).then_with(|| a.cmp(b)));
    all
});

fn spellings_of(row: &'static Row) -> impl Iterator<Item = &'static str> {
    std::iter::once(row.symbol).chain(row.spellings.iter().copied())
}

/// Looks a spelling up: first as it stands, then with its look-alike characters folded.
#[must_use]
pub fn recognise(spelling: &str) -> Option<Recognised> {
    if let Some(&unit) = SPELLINGS.get(spelling) {
        return Some(Recognised { unit, folded: false });
    }
    let folded: String = spelling.chars().map(fold_look_alike).collect();
    SPELLINGS.get(folded.as_str()).map(|&unit| Recognised { unit, folded: true })
}

/// Every spelling that may stand bare in a description, the longest (in characters) first: for reading the longest one that fits, and for
/// suggestions. The plain number's `1` is not among them: behind a formula it would be a digit too many.
#[must_use]
pub fn symbols() -> &'static [&'static str] {
    &LONGEST_FIRST
}

/// Every known unit, in the order of the table.
pub fn known_units() -> impl Iterator<Item = KnownUnit> {
    (0_u8..).zip(ROWS).map(|(index, _)| KnownUnit(index))
}

/// The exact way from one unit to another: `value_to = value_from * factor + offset`; `None` where one of them is a mere text or they
/// measure different things.
#[must_use]
pub fn conversion(from: &Unit, to: &Unit) -> Option<(Ratio, Ratio)> {
    let (from, to) = (from.row()?, to.row()?);
    if from.dimension != to.dimension {
        return None;
    }
    let ratio = |(numerator, denominator)| Ratio::new(numerator, denominator);
    let divisor = ratio(to.factor)?;
    let factor = ratio(from.factor)?.checked_div(&divisor)?;
    let offset = ratio(from.offset)?.checked_sub(&ratio(to.offset)?)?.checked_div(&divisor)?;
    Some((factor, offset))
}

/// The unit that imperial measures use in place of this one; `None` where it stays.
#[must_use]
pub fn imperial(unit: &Unit) -> Option<Unit> {
    Unit::known(unit.row()?.imperial?)
}

impl Unit {
    /// The known unit with this spelling, look-alikes folded.
    #[must_use]
    pub fn known(spelling: &str) -> Option<Self> {
        recognise(spelling).map(|found| Self::Symbol(found.unit))
    }

    /// What stands behind a value: the symbol or the text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        match self {
            Self::Symbol(unit) => unit.symbol(),
            Self::Text(text) => text,
        }
    }

    /// What it measures; `None` for a mere text.
    #[must_use]
    pub fn dimension(&self) -> Option<Dimension> {
        self.row().map(|row| row.dimension)
    }

    fn row(&self) -> Option<&'static Row> {
        match self {
            Self::Symbol(unit) => Some(unit.row()),
            Self::Text(_) => None,
        }
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

impl KnownUnit {
    /// The symbol that outputs show.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        self.row().symbol
    }

    /// What it measures.
    #[must_use]
    pub fn dimension(self) -> Dimension {
        self.row().dimension
    }

    fn row(self) -> &'static Row {
        &ROWS[usize::from(self.0)]
    }
}

impl From<KnownUnit> for Unit {
    fn from(unit: KnownUnit) -> Self {
        Self::Symbol(unit)
    }
}

impl fmt::Debug for KnownUnit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "KnownUnit({})", self.symbol())
    }
}

impl Serialize for KnownUnit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.symbol())
    }
}

impl<'de> Deserialize<'de> for KnownUnit {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Symbol;

        impl Visitor<'_> for Symbol {
            type Value = KnownUnit;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("the symbol of a known unit")
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<KnownUnit, E> {
                match SPELLINGS.get(text) {
                    Some(unit) if unit.symbol() == text => Ok(*unit),
                    Some(unit) => {
                        Err(E::custom(format_args!("unit `{text}` is stored by its symbol, `{}`", unit.symbol())))
                    }
                    None => Err(E::custom(format_args!("`{text}` is not the symbol of a known unit"))),
                }
            }
        }

        deserializer.deserialize_str(Symbol)
    }
}
