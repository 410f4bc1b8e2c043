//! State words as enums: one for each table, or for each list of words that signals have of their own.

use std::collections::HashMap;

use wirelore_model::{Database, Frame, Label, Signal, StateWord, States};

use crate::classes::{Span, first_wins};
use crate::docs::{Doc, inline, literal, plain_beginning, ticked};
use crate::names::{Names, camel};
use crate::number::{covers, int_type, number, pattern};
use crate::writer::Writer;

/// All enums of state words.
#[derive(Debug, Default)]
pub(crate) struct StateEnums<'d> {
    enums: Vec<StateEnum<'d>>,
    /// By the position of the frame and that of the signal.
    of_signals: HashMap<(usize, usize), usize>,
}

/// The words that some signals share.
#[derive(Debug)]
pub(crate) struct StateEnum<'d> {
    pub(crate) name: String,
    label: Option<&'d Label>,
    /// Each with the numbers it stands for and its variant, the first before the others that claim the same number.
    words: Vec<Word<'d>>,
    /// The numbers that its signals can hold.
    range: Span,
}

#[derive(Debug)]
struct Word<'d> {
    word: &'d StateWord,
    spans: Vec<Span>,
    variant: String,
}

/// What decides that two signals have the same enum.
#[derive(Debug, PartialEq, Eq, Hash)]
struct Key<'d> {
    table: Option<u32>,
    words: Vec<(&'d str, Span)>,
    is_signed: bool,
}

impl<'d> StateEnums<'d> {
    /// The enums for every signal of whole numbers with words.
    pub(crate) fn new(database: &'d Database, names: &mut Names) -> Self {
        let mut all = Self::default();
        let mut known: HashMap<Key<'d>, usize> = HashMap::new();
        for (frame_at, frame) in database.frames.iter().enumerate() {
            for (signal_at, signal) in frame.signals.iter().enumerate() {
                let Some((key, range)) = key(database, signal) else { continue };
                let next = all.enums.len();
                let at = *known.entry(key).or_insert(next);
                if at == next {
                    all.enums.push(StateEnum::new(database, (frame, signal), names));
                }
                let shared = &mut all.enums[at].range;
                *shared = (shared.0.min(range.0), shared.1.max(range.1));
                all.of_signals.insert((frame_at, signal_at), at);
            }
        }
        all
    }

    /// The enum of a signal.
    pub(crate) fn of(&self, frame: usize, signal: usize) -> Option<&StateEnum<'d>> {
        self.enums.get(*self.of_signals.get(&(frame, signal))?)
    }

    pub(crate) fn write(&self, writer: &mut Writer) {
        self.enums.iter().for_each(|states| states.write(writer));
    }
}

/// `None`: no words, or not of whole binary numbers.
fn key<'d>(database: &'d Database, signal: &'d Signal) -> Option<(Key<'d>, Span)> {
    let encoding = signal.encoding().filter(|encoding| encoding.kind() != wirelore_bits::NumberKind::Bcd)?;
    let (range, words) = (encoding.integer_range()?, database.words(signal));
    if words.is_empty() {
        return None;
    }
    let words = words.iter().filter_map(|word| Some((word.word.as_str(), word.values.numbers(encoding)?))).collect();
    let table = match signal.states {
        Some(States::Table(id)) => Some(id.0),
        _ => None,
    };
    Some((Key { table, words, is_signed: range.0 < 0 }, range))
}

impl<'d> StateEnum<'d> {
    fn new(database: &'d Database, (frame, signal): (&'d Frame, &'d Signal), names: &mut Names) -> Self {
        let label = match signal.states {
            Some(States::Table(id)) => database.states.get(id.index()).map(|table| &table.label),
            _ => None,
        };
        let own = signal.label.name.split('[').next().unwrap_or_default();
        let wanted = label.map_or_else(|| camel(&frame.label.name) + &camel(own), |label| camel(&label.name));
        let mut variants = Names::with(&["Other", "Self"]);
        let spans = signal.encoding().map(|encoding| {
            let numbers = database.words(signal).iter().zip(0..);
            let given: Vec<(Span, usize)> =
                numbers.filter_map(|(word, at)| Some((word.values.numbers(encoding)?, at))).collect();
            first_wins(&given)
        });
        let words = database.words(signal).iter().zip(0..).map(|(word, at)| Word {
            word,
            spans: spans.iter().flatten().filter(|(_, of)| *of == at).map(|(span, _)| *span).collect(),
            variant: variants.of_type(&camel(&word.word)),
        });
        Self { name: names.of_type(&wanted), label, words: words.collect(), range: (0, 0) }
    }

    /// The type of its raw numbers.
    pub(crate) fn raw_type(&self) -> &'static str {
        int_type(self.range)
    }

    fn write(&self, writer: &mut Writer) {
        let (name, raw) = (&self.name, self.raw_type());
        writer.gap();
        self.label.map_or_else(|| Doc::of("State words."), Doc::label).write(writer);
        writer.line("#[derive(Clone, Copy, Debug, PartialEq, Eq)]");
        writer.line("#[allow(clippy::enum_variant_names)]");
        writer.open(format!("pub enum {name} {{"));
        for word in &self.words {
            word.doc().write(writer);
            writer.line(if word.is_single() {
                format!("{},", word.variant)
            } else {
                format!("{}({raw}),", word.variant)
            });
        }
        writer.line("/// A raw number without a word.");
        writer.line(format!("Other({raw}),"));
        writer.close("}");
        writer.gap();
        writer.open(format!("impl {name} {{"));
        self.write_from_raw(writer, raw);
        self.write_raw(writer, raw);
        self.write_word(writer);
        writer.close("}");
    }

    fn write_from_raw(&self, writer: &mut Writer, raw: &str) {
        writer.line("/// The state that a raw number stands for.");
        writer.line("#[must_use]");
        writer.open(format!("pub const fn from_raw(raw: {raw}) -> Self {{"));
        writer.open("match raw {");
        for word in &self.words {
            let value = if word.is_single() { "" } else { "(raw)" };
            word.spans
                .iter()
                .for_each(|span| writer.line(format!("{} => Self::{}{value},", pattern(*span), word.variant)));
        }
        if !covers(self.words.iter().flat_map(|word| word.spans.iter().copied()), raw) {
            writer.line("_ => Self::Other(raw),");
        }
        writer.close("}");
        writer.close("}");
    }

    fn write_raw(&self, writer: &mut Writer, raw: &str) {
        writer.gap();
        writer.line("/// The raw number.");
        writer.line("#[must_use]");
        writer.open(format!("pub const fn raw(self) -> {raw} {{"));
        writer.open("match self {");
        let singles = self.words.iter().filter_map(|word| Some((&word.variant, word.single()?)));
        singles.for_each(|(variant, value)| writer.line(format!("Self::{variant} => {},", number(value))));
        let runs = self.words.iter().filter(|word| !word.is_single());
        runs.for_each(|word| writer.line(format!("Self::{}(raw) => raw,", word.variant)));
        writer.line("Self::Other(raw) => raw,");
        writer.close("}");
        writer.close("}");
    }

    fn write_word(&self, writer: &mut Writer) {
        writer.gap();
        writer.line("/// The word of the description.");
        writer.line("#[must_use]");
        writer.open("pub const fn word(self) -> Option<&'static str> {");
        writer.open("match self {");
        for word in &self.words {
            let value = if word.is_single() { "" } else { "(_)" };
            writer.line(format!("Self::{}{value} => Some({}),", word.variant, literal(&word.word.word)));
        }
        writer.line("Self::Other(_) => None,");
        writer.close("}");
        writer.close("}");
    }
}

impl Word<'_> {
    /// The number, where it is only one.
    fn single(&self) -> Option<i128> {
        match self.spans[..] {
            [(first, last)] if first == last => Some(first),
            _ => None,
        }
    }

    fn is_single(&self) -> bool {
        self.single().is_some()
    }

    fn doc(&self) -> Doc {
        let title = self.word.title.as_deref().map_or_else(|| format!("`{}`", ticked(&self.word.word)), inline);
        Doc::of(format!("{} ({}).", plain_beginning(&title), self.word.values))
    }
}
