//! Where messages are gathered while names are looked up and rules are checked.

use rustc_hash::{FxHashMap, FxHashSet};

use wirelore_model::{NetworkKind, nearest_names};

use crate::{Diagnostic, FileId, Level, Rule, Site, Span};

/// Names longer than this are not compared with others: nobody mistypes a name of that length, and comparing takes quadratic time.
const LONGEST_COMPARED: usize = 64;

/// How many characters are compared in search of the name that was meant, over all messages of a run.
const COMPARISONS: usize = 20_000_000;

/// After so many messages of one level about one file, the rest of that level is not worth a look.
const MOST_MESSAGES: usize = 500;

/// No sentence is longer than this, in bytes, whatever names it repeats.
const LONGEST_SENTENCE: usize = 1_000;

/// The messages so far. A rule speaks once about a place: an array or a layout that is used ten times is told of its mistake once.
#[derive(Debug)]
pub(crate) struct Messages {
    list: Vec<Diagnostic>,
    said: FxHashSet<(Rule, Site)>,
    counts: FxHashMap<(FileId, Level), usize>,
    comparisons_left: usize,
}

impl Messages {
    pub(crate) fn new() -> Self {
        Self {
            list: Vec::new(),
            said: FxHashSet::default(),
            counts: FxHashMap::default(),
            comparisons_left: COMPARISONS,
        }
    }

    pub(crate) fn push(&mut self, mut message: Diagnostic) {
        let count = self.counts.entry((message.site.file, message.level())).or_default();
        if *count == MOST_MESSAGES || !self.said.insert((message.rule, message.site)) {
            return;
        }
        *count += 1;
        let remarks = message.elsewhere.iter_mut().map(|remark| &mut remark.text);
        for text in [&mut message.message, &mut message.here].into_iter().chain(&mut message.help).chain(remarks) {
            shorten(text);
        }
        if *count == MOST_MESSAGES {
            let level = message.level().word();
            message.help.push(format!(
                "this is {level} {MOST_MESSAGES} about this file, and no more are told: mend these, then check again"
            ));
        }
        self.list.push(message);
    }

    pub(crate) fn extend(&mut self, messages: impl IntoIterator<Item = Diagnostic>) {
        for message in messages {
            self.push(message);
        }
    }

    pub(crate) fn into_list(self) -> Vec<Diagnostic> {
        self.list
    }

    /// The candidates that `wanted` may be a slip of, the nearest first; at most three.
    pub(crate) fn nearest<'c>(&mut self, wanted: &str, candidates: impl IntoIterator<Item = &'c str>) -> Vec<&'c str> {
        let length = wanted.chars().count();
        if length > LONGEST_COMPARED {
            return Vec::new();
        }
        let left = &mut self.comparisons_left;
        let comparable = |candidate: &&str| candidate.len() <= 4 * LONGEST_COMPARED;
        let affordable = candidates.into_iter().filter(comparable).take_while(|candidate| {
            let cost = (length + 1) * (candidate.len() + 1);
            let rest = left.checked_sub(cost);
            *left = rest.unwrap_or(*left);
            rest.is_some()
        });
        nearest_names(wanted, affordable, 3)
    }
}

fn shorten(text: &mut String) {
    if text.len() > LONGEST_SENTENCE {
        text.truncate(text.floor_char_boundary(LONGEST_SENTENCE));
        text.push_str("...");
    }
}

/// Adds the names that may have been meant to a message about an unknown one; where there is only one, as an edit too.
pub(crate) fn suggest(message: Diagnostic, meant: &[&str]) -> Diagnostic {
    let site = message.site;
    match meant {
        [] => message,
        [only] => message.help(format!("did you mean `{only}`?")).fix(site, *only),
        [first, rest @ ..] => {
            let rest: Vec<_> = rest.iter().map(|name| format!("`{name}`")).collect();
            message.help(format!("did you mean `{first}`, or perhaps {}?", rest.join(" or ")))
        }
    }
}

/// A network has a clause that belongs to networks of another kind; `kind` is where its own kind stands, and the one that the clause
/// belongs to.
pub(crate) fn clause_does_not_fit(clause: Site, text: String, here: &str, kind: (Site, NetworkKind)) -> Diagnostic {
    let (site, wanted) = kind;
    let message = Diagnostic::new(Rule::ClauseDoesNotFit, clause, text).here(here).remark(site, "the kind");
    message.help(format!("make the network a `{}` one, or take the clause away", wanted.keyword()))
}

/// A site from its parts.
pub(crate) fn at(file: FileId, span: Span) -> Site {
    Site { file, span }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_name_comes_first() {
        let mut messages = Messages::new();
        let known = ["drive", "driver", "comfort", "seat"];
        assert_eq!(messages.nearest("drvie", known), ["drive"], "a transposition is one step");
        assert_eq!(messages.nearest("DRIVE", known), ["drive", "driver"]);
        assert_eq!(messages.nearest("x", known), Vec::<&str>::new());
        assert_eq!(messages.nearest(&"x".repeat(100_000), known), Vec::<&str>::new());
    }

    #[test]
    fn looking_for_suggestions_ends() {
        let mut messages = Messages::new();
        let names: Vec<String> = (0..5_000).map(|number| format!("a_rather_long_name_{number}")).collect();
        for name in &names {
            messages.nearest(&format!("{name}x"), names.iter().map(String::as_str));
        }
        assert!(messages.comparisons_left < 2_000);
    }

    #[test]
    fn messages_do_not_grow_without_bound() {
        let mut messages = Messages::new();
        for start in 0..10_000 {
            let site = at(FileId(0), Span::new(start, start + 1));
            messages.push(Diagnostic::new(Rule::NameStyle, site, "é".repeat(5_000)));
            messages.push(Diagnostic::new(Rule::UnknownEcu, site, "an error"));
        }
        let told = messages.into_list();
        assert_eq!(
            told.iter().filter(|message| message.level() == Level::Error).count(),
            MOST_MESSAGES,
            "hints do not crowd errors out"
        );
        assert!(told.iter().all(|message| message.message.len() <= LONGEST_SENTENCE + 3));
        assert!(told.last().expect("a message").help[0].contains("no more are told"));
    }

    #[test]
    fn a_rule_speaks_once_about_a_place() {
        let mut messages = Messages::new();
        let site = at(FileId(0), Span::new(3, 5));
        messages.push(Diagnostic::new(Rule::SignalOverlap, site, "first"));
        messages.push(Diagnostic::new(Rule::SignalOverlap, site, "second"));
        messages.push(Diagnostic::new(Rule::OutsideFrame, site, "third"));
        let told: Vec<_> = messages.into_list().into_iter().map(|message| message.message).collect();
        assert_eq!(told, ["first", "third"]);
    }
}
