//! Units: known symbols, or any text in quotes.

use wirelore_model::{Unit, unit};

use crate::syntax::tree::UnitText;
use crate::{Diagnostic, Rule, Spanned};

use super::flat::Scope;
use super::messages::{Messages, suggest};

/// The unit that is written; says so where it is not known.
pub(crate) fn read(written: &Spanned<UnitText>, scope: &Scope, messages: &mut Messages) -> Option<Unit> {
    let symbol = match &written.value {
        UnitText::Quoted(text) => return Some(Unit::Text(text.clone())),
        UnitText::Symbol(symbol) => symbol,
    };
    if let Some(unit) = Unit::known(symbol) {
        return Some(unit);
    }
    let meant = messages.nearest(symbol, unit::symbols().iter().copied());
    let message = Diagnostic::new(
        Rule::UnknownUnit,
        scope.site(written.span),
        format!("`{symbol}` is not a unit that is known here"),
    )
    .here("does not convert to other units");
    messages.push(suggest(message, &meant).help(format!("for any other text write it in quotes: `\"{symbol}\"`")));
    None
}
