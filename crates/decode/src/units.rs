//! Other units on output: a conversion becomes part of each signal's exact formula, so nothing is rounded twice.

use wirelore_model::unit::Dimension;
use wirelore_model::{Unit, unit};

use crate::error::SessionError;
use crate::plan::Conversion;
use wirelore_model::nearest_name;

/// Which units are wanted in place of the described ones.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Units {
    rule: Rule,
}

#[derive(Debug, Clone, PartialEq, Eq, Default)]
enum Rule {
    #[default]
    AsDescribed,
    Imperial,
    Pairs(Vec<(Unit, Unit)>),
}

impl Units {
    /// The units of the description.
    #[must_use]
    pub fn as_described() -> Self {
        Self::default()
    }

    /// Imperial units for everything that has one.
    #[must_use]
    pub fn imperial() -> Self {
        Self { rule: Rule::Imperial }
    }

    /// From text: `imperial`, or pairs like `km/h=mph,°C=°F`.
    ///
    /// # Errors
    /// A part that is no pair, a unit that is not known, two units that measure different things, a unit with two counterparts.
    pub fn parse(text: &str) -> Result<Self, SessionError> {
        if text.trim() == "imperial" {
            return Ok(Self::imperial());
        }
        let mut pairs: Vec<(Unit, Unit)> = Vec::new();
        for part in text.split(',').map(str::trim) {
            let (from, to) = part.split_once('=').ok_or_else(|| SessionError::UnitsText { part: part.to_owned() })?;
            let (from, to) = (known(from.trim())?, known(to.trim())?);
            if let (None, Some(from_is), Some(to_is)) = (unit::conversion(&from, &to), from.dimension(), to.dimension())
            {
                let are_reciprocal = [(from_is, to_is), (to_is, from_is)].contains(&CONSUMPTION);
                let (from_is, to_is) = (from_is.in_words(), to_is.in_words());
                if are_reciprocal {
                    return Err(SessionError::UnitsReciprocal { from: from.to_string(), to: to.to_string(), from_is });
                }
                return Err(SessionError::UnitsDiffer { from: from.to_string(), to: to.to_string(), from_is, to_is });
            }
            if pairs.iter().any(|(known, _)| *known == from) {
                return Err(SessionError::UnitTwice { unit: from.to_string() });
            }
            pairs.push((from, to));
        }
        Ok(Self { rule: Rule::Pairs(pairs) })
    }

    /// The unit that values of `described` are shown in.
    #[must_use]
    pub fn shown(&self, described: &Unit) -> Unit {
        let wanted = match &self.rule {
            Rule::AsDescribed => None,
            Rule::Imperial => unit::imperial(described),
            Rule::Pairs(pairs) => pairs.iter().find(|(from, _)| from == described).map(|(_, to)| to.clone()),
        };
        wanted.unwrap_or_else(|| described.clone())
    }

    /// The exact way from a described unit to the one shown.
    pub(crate) fn conversion(&self, described: &Unit) -> Conversion {
        let shown = self.shown(described);
        match unit::conversion(described, &shown) {
            Some((factor, offset)) if shown != *described => Conversion::To { factor, offset },
            _ => Conversion::None,
        }
    }
}

/// Two ways to state the same, each the reciprocal of the other.
const CONSUMPTION: (Dimension, Dimension) = (Dimension::DistancePerFuel, Dimension::FuelPerDistance);

fn known(text: &str) -> Result<Unit, SessionError> {
    Unit::known(text).ok_or_else(|| {
        let hint = match nearest_name(text, unit::symbols().iter().copied()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => "a unit in quotes in the description is only text and does not convert".to_owned(),
        };
        SessionError::UnknownUnit { unit: text.to_owned(), hint }
    })
}

#[cfg(test)]
mod tests;
