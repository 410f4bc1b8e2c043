//! A frame's body with its pages and layouts spelled out into lists.

use wirelore_model::{Element, LengthRange, PageId};

use crate::syntax::tree::{self, BodyItem, Name, When};
use crate::{FileId, Site, Span, Spanned};

use super::messages::at;
use super::settings::Settings;

/// The body of a frame, or of a layout that stands for itself.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Body<'t> {
    pub(crate) file: FileId,
    pub(crate) tree: &'t tree::Body<'t>,
    pub(crate) settings: Settings,
}

/// What a stretch of statements has in common.
#[derive(Debug, Clone)]
pub(crate) struct Scope {
    pub(crate) file: FileId,
    pub(crate) settings: Settings,
    /// The payload byte that the statements' byte 0 is.
    pub(crate) base: u32,
    /// What goes in front of the names.
    pub(crate) prefix: String,
    /// What goes behind the names: which element of a repeated group it is, `[3]`.
    pub(crate) suffix: String,
    /// The payload byte at which the element begins that the statements belong to, and the one behind it.
    pub(crate) element: Option<(u32, u32)>,
    /// The statements stand in a group that gives rows.
    pub(crate) in_rows: bool,
    /// The most bytes that the payload can have, where that is known.
    pub(crate) limit: Option<u32>,
    /// The `use layout` in the frame itself that brought the statements here.
    pub(crate) via: Option<Site>,
    /// The page they are on.
    pub(crate) page: Option<PageId>,
}

/// A statement and its scope.
#[derive(Debug)]
pub(crate) struct Scoped<'t, T: ?Sized> {
    pub(crate) item: &'t BodyItem<'t>,
    pub(crate) tree: &'t T,
    /// The position in [`Flat::scopes`].
    pub(crate) scope: usize,
}

/// Bits without a signal.
#[derive(Debug)]
pub(crate) struct FlatArea<'t> {
    pub(crate) place: Scoped<'t, tree::Place>,
    /// They are known to carry nothing; else nobody knows what they carry.
    pub(crate) is_unused: bool,
}

/// A page.
#[derive(Debug)]
pub(crate) struct FlatPage<'t> {
    pub(crate) parent: Option<PageId>,
    pub(crate) switch: u32,
    /// Its condition; `None`: an `otherwise` page, or one of a repeated group.
    pub(crate) when: Option<&'t When<'t>>,
    /// A condition that follows from how often a group is there.
    pub(crate) count: Option<Count<'t>>,
    /// What it is of a repeated group.
    pub(crate) element: Option<Element>,
    /// It is a group that gives rows.
    pub(crate) rows: Option<RowGroup>,
    /// The scope that the condition stands in.
    pub(crate) scope: usize,
    /// The word at its beginning.
    pub(crate) site: Site,
    pub(crate) lengths: Vec<&'t BodyItem<'t>>,
    pub(crate) timing: Vec<&'t Spanned<tree::Timing<'t>>>,
}

/// Where a group begins that gives rows, and how many bytes each of its elements has where that is stated.
#[derive(Debug, Clone, Copy)]
pub(crate) struct RowGroup {
    pub(crate) from: u32,
    pub(crate) size: Option<u32>,
}

impl RowGroup {
    /// How long each of its rows is, where that is stated.
    pub(crate) fn length(self) -> Option<LengthRange> {
        let bytes = self.from.saturating_add(self.size?);
        Some(LengthRange { min: bytes, max: bytes })
    }
}

/// A count that must be in a range.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Count<'t> {
    /// The signal that counts.
    pub(crate) signal: &'t Name<'t>,
    pub(crate) least: u32,
    /// `None`: whatever the signal can say.
    pub(crate) most: Option<u32>,
}

/// The lists.
#[derive(Debug, Default)]
pub(crate) struct Flat<'t> {
    pub(crate) scopes: Vec<Scope>,
    pub(crate) signals: Vec<Scoped<'t, tree::Signal<'t>>>,
    pub(crate) areas: Vec<FlatArea<'t>>,
    pub(crate) pages: Vec<FlatPage<'t>>,
    /// Senders, readers, timing and length of the frame itself.
    pub(crate) statements: Vec<&'t BodyItem<'t>>,
}

impl<'t> Flat<'t> {
    /// Makes room for the next frame: the lists are used again and again.
    pub(crate) fn clear(&mut self) {
        self.scopes.clear();
        self.signals.clear();
        self.areas.clear();
        self.pages.clear();
        self.statements.clear();
    }

    /// The scope of a statement.
    pub(crate) fn scope_of<T: ?Sized>(&self, scoped: &Scoped<'t, T>) -> &Scope {
        &self.scopes[scoped.scope]
    }
}

impl Scope {
    /// The name of a signal of this scope.
    pub(crate) fn full_name(&self, name: &str) -> String {
        format!("{}{name}{}", self.prefix, self.suffix)
    }

    /// Whether its statements stand in a repeated group whose elements have names of their own.
    pub(crate) fn is_repeated(&self) -> bool {
        !self.suffix.is_empty()
    }

    /// Whether its statements stand in any repeated group.
    pub(crate) fn is_in_group(&self) -> bool {
        self.is_repeated() || self.in_rows
    }

    /// A place in the file of this scope.
    pub(crate) fn site(&self, span: Span) -> Site {
        at(self.file, span)
    }
}
