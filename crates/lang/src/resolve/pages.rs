//! Conditions: which signal is looked at, and which values pass.

use wirelore_bits::Encoding;
use wirelore_model::{PageId, RawSpan, RawValue, Signal, SignalId, States, Test};

use crate::syntax::tree::{self, Name, TestValue};
use crate::{Diagnostic, Rule};

use super::Resolver;
use super::contents::SignalOrigin;
use super::flat::{Count, FlatPage, Scope};
use super::messages::suggest;
use super::raw;
use super::signals::{Entry, SignalTable, is_around};

/// What conditions are looked up in.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sight<'a, 't> {
    pub(crate) table: &'a SignalTable<'t>,
    pub(crate) signals: &'a [Signal],
    pub(crate) pages: &'a [FlatPage<'t>],
    /// One for each signal.
    pub(crate) origins: &'a [SignalOrigin<'t>],
}

impl<'t> Sight<'_, 't> {
    /// Reads a condition that stands on a page, or in the frame itself. `None` where something in it is broken; a message says so.
    pub(crate) fn test(
        &self,
        resolver: &mut Resolver<'_, '_>,
        test: &tree::Test,
        scope: &Scope,
        page: Option<PageId>,
    ) -> Option<Test> {
        let selector = self.selector(resolver, &test.signal, scope, page)?.id?;
        let signal = &self.signals[selector.index()];
        let Some(encoding) = signal.encoding() else {
            let text = format!("`{}` holds text or bytes, and a condition looks at a number", test.signal.value);
            resolver
                .messages
                .push(Diagnostic::new(Rule::SelectorValue, scope.site(test.signal.span), text).here("not a number"));
            return None;
        };
        let mut values = Vec::with_capacity(test.values.len());
        for value in &test.values {
            match value {
                TestValue::Raw(range) => {
                    values.extend(raw::fitting_span(
                        range,
                        encoding,
                        Rule::SelectorValue,
                        scope.site(range.span),
                        resolver.messages,
                    ));
                }
                // The words may be in the part that could not be read.
                TestValue::Word(_) if signal.states.is_none() && self.origins[selector.index()].tree.incomplete => {}
                TestValue::Word(word) => values.extend(word_values(resolver, word, signal, encoding, scope)),
            }
        }
        (!values.is_empty()).then_some(Test { selector, values })
    }

    /// The signal that says how long a text is. `None` where that is not clear; a message says so.
    pub(crate) fn size(
        &self,
        resolver: &mut Resolver<'_, '_>,
        name: &Name,
        scope: &Scope,
        page: Option<PageId>,
    ) -> Option<SignalId> {
        let id = self.selector(resolver, name, scope, page)?.id?;
        let is_whole = |signal: &Signal| signal.encoding().is_some_and(|encoding| encoding.integer_range().is_some());
        if is_whole(&self.signals[id.index()]) {
            return Some(id);
        }
        let message = Diagnostic::new(
            Rule::SelectorValue,
            scope.site(name.span),
            format!("`{}` holds no whole number", name.value),
        );
        resolver.messages.push(message.here("cannot say how many bytes there are"));
        None
    }

    /// The condition that a signal counts so far. `None` where that is not clear; a message says so.
    pub(crate) fn count(
        &self,
        resolver: &mut Resolver<'_, '_>,
        count: Count<'_>,
        scope: &Scope,
        page: Option<PageId>,
    ) -> Option<Test> {
        let selector = self.selector(resolver, count.signal, scope, page)?.id?;
        let signal = &self.signals[selector.index()];
        let site = scope.site(count.signal.span);
        let name = &count.signal.value;
        let Some((_, greatest)) = signal.encoding().and_then(|encoding| encoding.integer_range()) else {
            let message = Diagnostic::new(Rule::SelectorValue, site, format!("`{name}` holds no whole number"));
            resolver.messages.push(message.here("cannot count the elements of a group"));
            return None;
        };
        if i128::from(count.least) > greatest {
            let message = format!("`{name}` counts to {greatest} at most, and the group may be there more often");
            resolver.messages.push(
                Diagnostic::new(Rule::SelectorValue, site, message)
                    .here(format!("at most {greatest}"))
                    .help(format!("write `up to {greatest}`")),
            );
            return None;
        }
        let last = count.most.map_or(greatest, |most| greatest.min(most.into()));
        let last = i64::try_from(last).map_or(RawValue::Bits(u64::MAX), RawValue::Number);
        Some(Test { selector, values: vec![RawSpan { first: RawValue::Number(count.least.into()), last }] })
    }

    /// The signal of a name that is there whenever a page is.
    pub(crate) fn seen(&self, name: &Name, scope: &Scope, page: Option<PageId>) -> Option<&Entry<'t>> {
        let full = scope.full_name(&name.value);
        // What is not of the element itself may be of the one around it, or of the frame.
        let ends = full.match_indices('[').map(|(at, _)| at).chain([full.len()]);
        ends.collect::<Vec<_>>().into_iter().rev().find_map(|end| {
            let mut named = self.table.named(&full[..end]);
            named.find(|entry| is_around(entry.page, page, self.pages))
        })
    }

    fn selector(
        &self,
        resolver: &mut Resolver<'_, '_>,
        name: &Name,
        scope: &Scope,
        page: Option<PageId>,
    ) -> Option<&Entry<'t>> {
        if let Some(entry) = self.seen(name, scope, page) {
            return Some(entry);
        }
        let full = scope.full_name(&name.value);
        let site = scope.site(name.span);
        if let Some(entry) = self.table.named(&full).next() {
            resolver.messages.push(
                Diagnostic::new(
                    Rule::SelectorInBranch,
                    site,
                    format!("`{}` is itself only there on a page", name.value),
                )
                .here("looked at where it may not be there")
                .remark(entry.site, "declared on this page")
                .help("move it out of the page, in front of the `when` that looks at it"),
            );
            return None;
        }
        let message =
            Diagnostic::new(Rule::SelectorUnknown, site, format!("no signal of this frame is called `{}`", name.value))
                .here("not there to be looked at");
        let meant = resolver.messages.nearest(&full, self.table.seen_from(page, self.pages));
        let meant: Vec<_> =
            meant.iter().map(|found| found.strip_prefix(scope.prefix.as_str()).unwrap_or(found)).collect();
        let message = if meant.is_empty() {
            message
                .help("declare the signal that tells the pages apart in the frame itself, or on a page around this one")
        } else {
            suggest(message, &meant)
        };
        resolver.messages.push(message);
        None
    }
}

/// The raw values that a state word of a signal stands for.
fn word_values(
    resolver: &mut Resolver<'_, '_>,
    word: &Name,
    signal: &Signal,
    encoding: Encoding,
    scope: &Scope,
) -> Vec<RawSpan> {
    let words = match &signal.states {
        Some(States::Table(id)) => &resolver.tables[id.index()].words,
        Some(States::Own(words)) => words,
        None => {
            let message = Diagnostic::new(
                Rule::SelectorValue,
                scope.site(word.span),
                format!("`{}` has no state words", signal.label.name),
            );
            let message = number_or(message.here("not a raw value"), &word.value, &[]);
            resolver.messages.push(message.help("write the raw value, or give the signal `states`"));
            return Vec::new();
        }
    };
    let mut named = words.iter().filter(|known| known.word == word.value).peekable();
    if named.peek().is_none() {
        let meant = resolver.messages.nearest(&word.value, words.iter().map(|known| known.word.as_str()));
        let message = format!("`{}` has no state called `{}`", signal.label.name, word.value);
        let message = Diagnostic::new(Rule::SelectorValue, scope.site(word.span), message).here("not one of its words");
        resolver.messages.push(number_or(message, &word.value, &meant));
    }
    // A word that does not fit the signal has been told where the signal is.
    named.filter(|known| raw::misfit(known.values, encoding).is_none()).map(|known| known.values).collect()
}

/// What a word was meant to be that is none of the state words: a hexadecimal number, or one of the words that are near.
fn number_or(message: Diagnostic, word: &str, meant: &[&str]) -> Diagnostic {
    if !meant.is_empty() || word.len() > 16 || !word.bytes().all(|byte| byte.is_ascii_hexdigit()) {
        return suggest(message, meant);
    }
    let site = message.site;
    message.help(format!("hexadecimal numbers begin with `0x`: write `0x{word}`")).fix(site, format!("0x{word}"))
}
