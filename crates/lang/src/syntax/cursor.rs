//! The input of the parsers: a place in the leaves of one file.

use std::iter::{Copied, Enumerate};
use std::slice::Iter;

use nom::error::{ErrorKind, ParseError};
use nom::{IResult, Input, Needed};

use super::leaf::Leaf;
use super::report::Script;
use crate::lex::TokenKind;
use crate::{Diagnostic, Site, Span};

/// The leaves from one place to the end.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cursor<'a> {
    pub(super) context: &'a Script,
    // 32 bits each, so that a cursor travels in two registers: parsers hand it from one to the next all the time.
    at: u32,
    end: u32,
}

/// Why a parser gives up.
#[derive(Debug)]
pub(super) enum Problem {
    /// What it looks for does not begin here; nothing was said. Goes with [`nom::Err::Error`].
    Elsewhere,
    /// It begins here and is broken. Goes with [`nom::Err::Failure`].
    Broken(Box<Diagnostic>),
}

/// What parsers give.
pub(super) type Parsed<'a, T> = IResult<Cursor<'a>, T, Problem>;

/// Not here.
pub(super) fn elsewhere<'a, T>() -> Parsed<'a, T> {
    Err(nom::Err::Error(Problem::Elsewhere))
}

/// Here, and broken.
pub(super) fn broken<'a, T>(message: Diagnostic) -> Parsed<'a, T> {
    Err(nom::Err::Failure(Problem::Broken(Box::new(message))))
}

impl<'a> ParseError<Cursor<'a>> for Problem {
    fn from_error_kind(_: Cursor<'a>, _: ErrorKind) -> Self {
        Self::Elsewhere
    }

    fn append(_: Cursor<'a>, _: ErrorKind, other: Self) -> Self {
        other
    }
}

impl<'a> Cursor<'a> {
    #[inline]
    pub(super) fn start(context: &'a Script) -> Self {
        // There are fewer leaves than bytes, and those are counted in 32 bits.
        Self { context, at: 0, end: context.leaves.len() as u32 }
    }

    #[inline]
    fn leaves(&self) -> &'a [Leaf] {
        &self.context.leaves[self.at as usize..self.end as usize]
    }

    /// The leaf here.
    #[inline]
    pub(super) fn first(&self) -> Option<Leaf> {
        self.nth(0)
    }

    /// The leaf that many places on.
    #[inline]
    pub(super) fn nth(&self, count: usize) -> Option<Leaf> {
        // Past the end of a cursor there may be leaves of others.
        let at = self.at as usize + count;
        if at < self.end as usize { self.context.leaves.get(at).copied() } else { None }
    }

    /// What the leaf here is.
    #[inline]
    pub(super) fn kind(&self) -> Option<TokenKind> {
        self.first().map(|leaf| leaf.kind)
    }

    /// What the leaf that many places on is.
    #[inline]
    pub(super) fn nth_kind(&self, count: usize) -> Option<TokenKind> {
        self.nth(count).map(|leaf| leaf.kind)
    }

    /// The word that many places on; empty where there is none.
    #[inline]
    pub(super) fn nth_word(&self, count: usize) -> &'a str {
        match self.nth(count) {
            Some(leaf) if leaf.kind == TokenKind::Word => self.context.text(leaf.span),
            _ => "",
        }
    }

    /// Whether a certain word stands here.
    #[inline]
    pub(super) fn is_word(&self, word: &str) -> bool {
        self.first().is_some_and(|leaf| leaf.kind == TokenKind::Word && self.context.is_text(leaf.span, word))
    }

    /// The word here; empty where there is none.
    #[inline]
    pub(super) fn word(&self) -> &'a str {
        self.nth_word(0)
    }

    /// Behind the leaf here.
    #[inline]
    pub(super) fn next(self) -> Self {
        Self { at: (self.at + 1).min(self.end), ..self }
    }

    /// The place of the leaf here; the empty place behind everything at the end.
    #[inline]
    pub(super) fn span(&self) -> Span {
        self.first().map_or_else(|| self.previous().after(), |leaf| leaf.span)
    }

    /// The place of the leaf in front of this one.
    #[inline]
    pub(super) fn previous(&self) -> Span {
        let before = self.context.leaves[..self.at as usize].last();
        before.map_or(Span::new(0, 0), |leaf| leaf.span)
    }

    /// What the leaf in front of this one is.
    #[inline]
    pub(super) fn previous_kind(&self) -> Option<TokenKind> {
        self.context.leaves[..self.at as usize].last().map(|leaf| leaf.kind)
    }

    /// From the leaf at `self` to the leaf in front of `behind`.
    #[inline]
    pub(super) fn span_to(&self, behind: Self) -> Span {
        self.span().to(behind.previous())
    }

    /// Whether the leaf here touches the one in front of it.
    #[inline]
    pub(super) fn touches(&self) -> bool {
        self.at > 0 && self.first().is_some_and(|leaf| leaf.span.start == self.previous().end)
    }

    /// How many leaves are left.
    #[inline]
    pub(super) fn left(&self) -> usize {
        (self.end - self.at) as usize
    }

    /// Whether it is further on than another one.
    #[inline]
    pub(super) fn is_behind(&self, other: Self) -> bool {
        self.at > other.at
    }

    /// A place of this file.
    #[inline]
    pub(super) fn site(&self, span: Span) -> Site {
        Site { file: self.context.file, span }
    }

    /// Whether the statement is over: the line, the block or the file ends here.
    #[inline]
    pub(super) fn at_end(&self) -> bool {
        matches!(self.kind(), None | Some(TokenKind::LineEnd | TokenKind::CloseBrace))
    }

    /// Whether the part of a statement is over: at a comma, at a brace, or with the statement.
    #[inline]
    pub(super) fn at_stop(&self) -> bool {
        self.at_end() || matches!(self.kind(), Some(TokenKind::Comma | TokenKind::OpenBrace))
    }
}

impl<'a> Input for Cursor<'a> {
    type Item = Leaf;
    type Iter = Copied<Iter<'a, Leaf>>;
    type IterIndices = Enumerate<Self::Iter>;

    fn input_len(&self) -> usize {
        self.left()
    }

    fn take(&self, index: usize) -> Self {
        Self { end: self.at + index as u32, ..*self }
    }

    fn take_from(&self, index: usize) -> Self {
        Self { at: self.at + index as u32, ..*self }
    }

    fn take_split(&self, index: usize) -> (Self, Self) {
        (self.take_from(index), self.take(index))
    }

    fn position<P>(&self, predicate: P) -> Option<usize>
    where
        P: Fn(Self::Item) -> bool,
    {
        self.iter_elements().position(predicate)
    }

    fn iter_elements(&self) -> Self::Iter {
        self.leaves().iter().copied()
    }

    fn iter_indices(&self) -> Self::IterIndices {
        self.iter_elements().enumerate()
    }

    fn slice_index(&self, count: usize) -> Result<usize, Needed> {
        if self.left() >= count { Ok(count) } else { Err(Needed::new(count - self.left())) }
    }
}
