//! What all parsers of one file share: its text, the tokens that count, and the messages so far.

use std::cell::{Cell, RefCell};

use super::leaf::{Leaf, Sieve};
use super::tree::File;
use super::{LONGEST_TEXT, cursor, item, too_large};
use crate::lex::{MOST_MESSAGES, Token, each_token};
use crate::{Diagnostic, FileId, Rule, Site, Span};

/// How many blocks may lie in one another.
const DEEPEST_BLOCK: usize = 64;

/// Looks back and forth on a line go no further than this, so that endless lines cost no more than others.
const LONGEST_LINE: usize = 2048;

/// The text of one file, cut into tokens and ready to be read. The tree of the file points into it.
#[derive(Debug)]
pub struct Script {
    text: String,
    pub(super) leaves: Vec<Leaf>,
    pub(super) file: FileId,
    /// Where the lexer found characters that mean nothing; sorted.
    wrong: Vec<Span>,
    messages: RefCell<Vec<Diagnostic>>,
    depth: Cell<usize>,
    /// An `allow` was read.
    pub(super) has_allow: Cell<bool>,
    /// How many signals the body had that was read last.
    pub(super) signals_of_last_body: Cell<usize>,
    /// Opening braces without a closing one, the inmost first, and where that showed.
    unclosed: RefCell<Vec<(Span, Span)>>,
    /// A block whose closing brace stands further left than its first line: perhaps it took its neighbour's.
    borrowed: Cell<Option<Span>>,
}

impl Script {
    /// Cuts a text into tokens; one that is longer than [`LONGEST_TEXT`] stays whole, and is refused when it is read.
    #[must_use]
    pub fn new(text: impl Into<String>, file: FileId) -> Self {
        let text = text.into();
        let mut sieve = Sieve::new(&text);
        let wrong = if text.len() > LONGEST_TEXT {
            vec![too_large(text.len(), file)]
        } else {
            each_token(&text, file, |token| sieve.take(token))
        };
        let leaves = sieve.into_leaves();
        Self::of_leaves(text, leaves, wrong, file)
    }

    /// [`Self::new`] for those who have the tokens.
    pub(crate) fn of_tokens(text: &str, tokens: &[Token], wrong: Vec<Diagnostic>, file: FileId) -> Self {
        let mut sieve = Sieve::new(text);
        tokens.iter().for_each(|&token| sieve.take(token));
        let leaves = sieve.into_leaves();
        Self::of_leaves(text.to_owned(), leaves, wrong, file)
    }

    fn of_leaves(text: String, leaves: Vec<Leaf>, wrong: Vec<Diagnostic>, file: FileId) -> Self {
        let spans = wrong.iter().map(|message| message.site.span).collect();
        Self {
            text,
            leaves,
            file,
            wrong: spans,
            messages: RefCell::new(wrong),
            depth: Cell::new(0),
            has_allow: Cell::new(false),
            signals_of_last_body: Cell::new(0),
            unclosed: RefCell::default(),
            borrowed: Cell::new(None),
        }
    }

    /// Reads it, once.
    ///
    /// The tree holds everything that could be read; the messages are sorted by their place. Both are as long as they need to be and no
    /// longer: a text of more than 16 MiB is refused, and after 500 messages there are no more.
    pub fn read(&self) -> (File<'_>, Vec<Diagnostic>) {
        let tree = item::file(cursor::Cursor::start(self));
        (tree, self.take_messages())
    }

    /// The text, when nobody needs the tree any more.
    #[must_use]
    pub fn into_text(self) -> String {
        self.text
    }

    /// The tokens that count.
    pub(crate) fn leaves(&self) -> &[Leaf] {
        &self.leaves
    }

    /// The characters of a span.
    #[inline]
    pub(super) fn text(&self, span: Span) -> &str {
        self.text.get(span.range()).unwrap_or_default()
    }

    /// Whether these are the characters of a span.
    #[inline]
    pub(super) fn is_text(&self, span: Span, text: &str) -> bool {
        self.text.as_bytes().get(span.range()) == Some(text.as_bytes())
    }

    /// Whether a place is at the very start of its line.
    pub(super) fn is_at_margin(&self, place: Span) -> bool {
        let before = self.text.get(..place.start as usize).unwrap_or_default();
        before.is_empty() || before.ends_with(['\n', '\r', '\u{FEFF}'])
    }

    /// Whether no further message will be kept, so that none need be thought up.
    pub(super) fn is_full(&self) -> bool {
        self.messages.borrow().len() > MOST_MESSAGES
    }

    /// Keeps a message, unless one about the same place or the same damaged line is there already.
    pub(super) fn report(&self, message: Diagnostic) {
        let mut messages = self.messages.borrow_mut();
        let start = message.site.span.start;
        let told = messages
            .iter()
            .rev()
            .take(8)
            .any(|other| other.site.span.start == start && other.level() == message.level());
        if messages.len() <= MOST_MESSAGES && !told && !self.is_damaged(start) {
            messages.push(message);
        }
    }

    /// Whether the lexer complained about the line of a place: whatever else is odd there comes from that.
    fn is_damaged(&self, place: u32) -> bool {
        let behind = self.wrong.partition_point(|span| span.start < place);
        let near = |span: &Span| {
            let between = span.start.min(place) as usize..span.start.max(place) as usize;
            between.len() < LONGEST_LINE && !self.text.as_bytes()[between].contains(&b'\n')
        };
        self.wrong.get(behind).is_some_and(near)
            || behind.checked_sub(1).and_then(|at| self.wrong.get(at)).is_some_and(near)
    }

    /// Goes one block deeper, unless that is too deep.
    pub(super) fn enter(&self) -> bool {
        let deeper = self.depth.get() + 1;
        if deeper > DEEPEST_BLOCK {
            return false;
        }
        self.depth.set(deeper);
        true
    }

    /// Leaves a block: the other end of a successful [`Self::enter`].
    pub(super) fn leave(&self) {
        self.depth.set(self.depth.get().saturating_sub(1));
        self.settle_unclosed();
    }

    /// Tells of blocks that nothing closed, once the outmost one is over.
    pub(super) fn settle_unclosed(&self) {
        if self.depth.get() == 0 {
            self.report_unclosed();
            self.borrowed.set(None);
        }
    }

    /// Remembers a block that nothing closes.
    pub(super) fn keep_unclosed(&self, open: Span, noticed: Span) {
        self.unclosed.borrow_mut().push((open, noticed));
    }

    /// Compares how far in a block's first line and its closing brace stand.
    pub(super) fn compare_margins(&self, open: Span, close: Span) {
        let (first, last) = (self.margin(open), self.margin(close));
        if let (Some(first), Some(last)) = (first, last)
            && last < first
            && self.borrowed.get().is_none()
        {
            self.borrowed.set(Some(open));
        }
    }

    /// Whether the line of one place begins further in than that of another.
    pub(super) fn is_further_in(&self, one: Span, other: Span) -> bool {
        matches!((self.margin(one), self.margin(other)), (Some(one), Some(other)) if one > other)
    }

    /// How far in the line of a place begins, in bytes; for a closing brace only if the brace begins it. Long lines have none.
    fn margin(&self, place: Span) -> Option<usize> {
        let place_at = place.start as usize;
        let window = &self.text.as_bytes()[place_at.saturating_sub(LONGEST_LINE)..place_at];
        let line = match window.iter().rposition(|&byte| byte == b'\n') {
            Some(at) => &window[at + 1..],
            None if window.len() < LONGEST_LINE => window,
            None => return None,
        };
        let margin = line.iter().take_while(|byte| matches!(byte, b' ' | b'\t')).count();
        let is_brace_alone = self.text(place) != "}" || margin == line.len();
        is_brace_alone.then_some(margin)
    }

    /// One message for all blocks that are open at the same place, at the one that most likely lacks its brace.
    fn report_unclosed(&self) {
        let unclosed = std::mem::take(&mut *self.unclosed.borrow_mut());
        let Some(&(inmost, noticed)) = unclosed.first() else { return };
        let borrower = self.borrowed.get().filter(|_| unclosed.len() == 1);
        let site = |span| Site { file: self.file, span };
        let noticed_text =
            if noticed.start == noticed.end { "the file ends here" } else { "something new begins here" };
        let mut message =
            Diagnostic::new(Rule::UnclosedBlock, site(borrower.unwrap_or(inmost)), "this block is not closed")
                .here("the `}` for this brace is missing")
                .remark(site(noticed), noticed_text)
                .help("put `}` on a line of its own behind the last statement of the block");
        if borrower.is_some() {
            message = message.remark(site(inmost), "its `}` closed the other block, so that this one was left open");
        }
        for &(outer, _) in unclosed.iter().skip(1).take(2) {
            message = message.remark(site(outer), "this one is not closed either");
        }
        self.report(message);
    }

    /// All messages, by their place.
    pub(super) fn take_messages(&self) -> Vec<Diagnostic> {
        let mut messages = self.messages.take();
        messages.sort_by_key(|message| message.site.span);
        if messages.len() > MOST_MESSAGES {
            messages.truncate(MOST_MESSAGES);
            if let Some(last) = messages.last_mut() {
                last.help.push(format!(
                    "this is message {MOST_MESSAGES} and the last about this file: mend what is told, then check again"
                ));
            }
        }
        messages
    }
}
