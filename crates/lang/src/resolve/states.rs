//! State words: tables that have a name, and words of a signal's own.

use std::rc::Rc;

use rustc_hash::FxHashMap;
use wirelore_bits::Encoding;
use wirelore_model::{Meaning, RawSpan, StateTable, StateWord, StatesId};

use crate::syntax::tree::{self, SpecialWord};
use crate::{Diagnostic, FileId, Rule, Site, Span};

use super::catalogue::Sourced;
use super::label::label;
use super::messages::{Messages, at};
use super::raw::{comparable, misfit, raw_span};

/// The most words of one table: each sort of signal that uses it looks at all of them.
const MOST_WORDS: usize = 16_384;

/// Reads a table that has a name.
pub(crate) fn table(sourced: &Sourced<'_, tree::States<'_>>, messages: &mut Messages) -> StateTable {
    let words = words(&sourced.tree.words, None, sourced.file, messages);
    StateTable { label: label(&sourced.tree.head, &sourced.item.front), words }
}

/// Reads state words: for signals of one encoding, or for a table that any signal may use.
pub(crate) fn words(
    written: &[tree::StateWord],
    encoding: Option<Encoding>,
    file: FileId,
    messages: &mut Messages,
) -> Vec<StateWord> {
    let mut words = Vec::with_capacity(written.len().min(MOST_WORDS));
    let mut runs = Vec::with_capacity(words.capacity());
    for word in written {
        if words.len() == MOST_WORDS {
            let message = format!("more than {MOST_WORDS} words in one table");
            messages.push(
                Diagnostic::new(Rule::ArrayTooLarge, at(file, word.values.span), message).help("divide the table"),
            );
            break;
        }
        let Some(values) = values(word, encoding, at(file, word.values.span), messages) else { continue };
        runs.extend(comparable(values, encoding).map(|(space, first, last)| (space, first, last, word)));
        words.push(StateWord {
            values,
            word: word.word.value.to_string(),
            title: word.title.as_ref().map(|title| title.value.to_string()),
            meaning: meaning(word),
        });
    }
    say_overlaps(runs, file, messages);
    words
}

fn values(word: &tree::StateWord, encoding: Option<Encoding>, site: Site, messages: &mut Messages) -> Option<RawSpan> {
    let name = &word.word.value;
    let values = raw_span(&word.values);
    let trouble = match (values, encoding) {
        (None, _) => {
            let text = format!("the raw value of `{name}` has more than 64 bits");
            Some(Diagnostic::new(Rule::StateOutsideWidth, site, text).here("no signal has it"))
        }
        (Some(values), Some(encoding)) => misfit(values, encoding).map(|why| {
            Diagnostic::new(Rule::StateOutsideWidth, site, format!("state `{name}`: {why}")).here("never occurs")
        }),
        (Some(values), None) => comparable(values, None).filter(|(_, first, last)| last < first).map(|_| {
            let text = format!("the raw values of `{name}` run downwards");
            Diagnostic::new(Rule::RangeUpsideDown, site, text).here("the smaller one comes first")
        }),
    };
    let is_sound = trouble.is_none();
    messages.extend(trouble);
    values.filter(|_| is_sound)
}

fn meaning(word: &tree::StateWord) -> Meaning {
    match word.meaning.as_ref().map(|meaning| meaning.value) {
        None => Meaning::Reading,
        Some(SpecialWord::Absent) => Meaning::Absent,
        Some(SpecialWord::Fault) => Meaning::Fault,
    }
}

fn say_overlaps(mut runs: Vec<(bool, i128, i128, &tree::StateWord)>, file: FileId, messages: &mut Messages) {
    runs.sort_by_key(|&(space, first, last, word)| (space, first, last, word.values.span.start));
    let mut widest: Option<(bool, i128, &tree::StateWord)> = None;
    for (space, first, last, word) in runs {
        match widest {
            Some((other_space, end, other)) if other_space == space && first <= end => {
                let (earlier, later) = if other.values.span < word.values.span { (other, word) } else { (word, other) };
                let text = format!("`{}` and `{}` stand for the same raw value", earlier.word.value, later.word.value);
                messages.push(
                    Diagnostic::new(Rule::StateOverlap, at(file, later.values.span), text)
                        .here(format!("{first} is in both"))
                        .remark(at(file, earlier.values.span), "the other one")
                        .help("give each raw value one word"),
                );
                if last > end {
                    widest = Some((space, last, word));
                }
            }
            _ => widest = Some((space, last, word)),
        }
    }
}

/// How the words of a table fit signals of one encoding.
#[derive(Debug)]
pub(crate) struct Fit {
    /// Why they do not, and which raw values are to blame.
    pub(crate) problem: Option<(String, Span)>,
    /// Their runs of raw values as far as they fit, sorted.
    runs: Vec<(bool, i128, i128, Meaning)>,
}

/// Two words that are apart as they are written, and stand for the same raw value in signals of an encoding (`-1` and `0xFF`).
fn same_in_this_encoding(words: &[(RawSpan, Span)], encoding: Encoding) -> Option<(String, Span)> {
    let mut runs: Vec<_> = words
        .iter()
        .filter_map(|(values, span)| Some((comparable(*values, Some(encoding))?, *values, *span)))
        .collect();
    runs.sort_by_key(|&(run, _, span)| (run, span));
    let apart_as_written = |one: RawSpan, other: RawSpan| match (comparable(one, None), comparable(other, None)) {
        (Some(one), Some(other)) => one.0 != other.0,
        _ => true,
    };
    let pair = runs.windows(2).find(|pair| {
        pair[0].0.0 == pair[1].0.0 && pair[1].0.1 <= pair[0].0.2 && apart_as_written(pair[0].1, pair[1].1)
    })?;
    Some((format!("two words of the table stand for {} there", pair[1].0.1), pair[1].2))
}

/// What has been found out about tables and encodings, so that a table is read once for each sort of signal.
#[derive(Debug, Default)]
pub(crate) struct Fits(FxHashMap<(StatesId, Encoding), Rc<Fit>>);

impl Fits {
    pub(crate) fn get(&mut self, id: StatesId, encoding: Encoding, table: &Sourced<'_, tree::States<'_>>) -> Rc<Fit> {
        let fit = self.0.entry((id, encoding)).or_insert_with(|| Rc::new(Fit::of_table(&table.tree.words, encoding)));
        Rc::clone(fit)
    }
}

impl Fit {
    fn of_table(words: &[tree::StateWord], encoding: Encoding) -> Self {
        let mut problem = None;
        let mut runs = Vec::new();
        let mut spans = Vec::new();
        for word in words.iter().take(MOST_WORDS) {
            let Some(values) = raw_span(&word.values) else { continue };
            match misfit(values, encoding) {
                Some(why) => {
                    problem.get_or_insert_with(|| (format!("state `{}`: {why}", word.word.value), word.values.span));
                }
                None => {
                    runs.extend(
                        comparable(values, Some(encoding))
                            .map(|(space, first, last)| (space, first, last, meaning(word))),
                    );
                    spans.push((values, word.values.span));
                }
            }
        }
        let problem = problem.or_else(|| same_in_this_encoding(&spans, encoding));
        let mut fit = Self { problem, runs };
        fit.sort();
        fit
    }

    /// How a signal's own words fit.
    pub(crate) fn of_own(words: &[StateWord], encoding: Encoding) -> Self {
        let runs = words.iter().filter_map(|word| {
            comparable(word.values, Some(encoding)).map(|(space, first, last)| (space, first, last, word.meaning))
        });
        let mut fit = Self { problem: None, runs: runs.collect() };
        fit.sort();
        fit
    }

    fn sort(&mut self) {
        self.runs.sort_unstable_by_key(|&(space, first, last, _)| (space, first, last));
    }

    /// What a word says of a run of raw values, if one touches it.
    pub(crate) fn meaning_of(&self, span: RawSpan, encoding: Encoding) -> Option<Meaning> {
        let (space, first, last) = comparable(span, Some(encoding))?;
        let behind = self.runs.partition_point(|&(other, _, end, _)| (other, end) < (space, first));
        self.runs
            .get(behind)
            .filter(|&&(other, start, _, _)| other == space && start <= last)
            .map(|&(_, _, _, meaning)| meaning)
    }
}
