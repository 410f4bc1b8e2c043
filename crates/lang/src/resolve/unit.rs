//! Units: known symbols, or any text in quotes.

use wirelore_model::{Unit, unit};

use crate::syntax::tree::UnitText;
use crate::{Diagnostic, Rule, Site, Spanned};

use super::flat::Scope;
use super::messages::{Messages, suggest};

/// The unit that is written; says so where it is not known.
pub(crate) fn read(written: &Spanned<UnitText>, scope: &Scope, messages: &mut Messages) -> Option<Unit> {
    let symbol = match &written.value {
        UnitText::Quoted(text) => return Some(Unit::Text(text.to_string())),
        UnitText::Symbol(symbol) => symbol,
    };
    if let Some(unit) = Unit::known(symbol) {
        messages.extend(unusual(symbol, scope.site(written.span)));
        return Some(unit);
    }
    let site = scope.site(written.span);
    if let Some(meant) = unit::symbol_of_name(symbol) {
        let message = Diagnostic::new(Rule::UnknownUnit, site, format!("`{symbol}` is written `{meant}`"));
        messages.push(message.here("units are written as symbols").fix(site, meant));
        return None;
    }
    let meant = messages.nearest(symbol, unit::symbols().iter().copied());
    let message = Diagnostic::new(Rule::UnknownUnit, site, format!("`{symbol}` is not a unit that is known here"))
        .here("does not convert to other units");
    messages.push(suggest(message, &meant).help(format!("for any other text write it in quotes: `\"{symbol}\"`")));
    None
}

/// A unit that is rare on a vehicle's networks, and looks like a frequent one.
fn unusual(symbol: &str, site: Site) -> Option<Diagnostic> {
    let (measured, temperature) = match symbol {
        "C" => ("electric charge", "°C"),
        "F" => ("electric capacitance", "°F"),
        _ => return None,
    };
    let message = Diagnostic::new(Rule::UnitUnusual, site, format!("`{symbol}` is the unit of {measured}"));
    Some(message.here(format!("for a temperature write `{temperature}`")).fix(site, temperature))
}
