//! A frame taken apart into what is written: groups of fields, one for the frame itself and one for each page, with what chooses between them.

mod alike;
mod place_of;
mod planner;

use std::collections::HashMap;

use wirelore_model::{Content, CrcRule, Database, Element, Frame, LengthRange, Page, PageId, Signal, SignalId};

use crate::names::{Names, snake};
use crate::signal::Field;
use crate::states::StateEnums;

pub(crate) use place_of::PlaceOf;
use planner::Planner;

/// What is known of all frames.
#[derive(Clone, Copy)]
pub(crate) struct Context<'d> {
    pub(crate) database: &'d Database,
    pub(crate) states: &'d StateEnums<'d>,
    pub(crate) own_crcs: &'d [CrcRule],
}

/// Signals that are there together, and the pages inside.
pub(crate) struct Group<'d> {
    /// The type.
    pub(crate) name: String,
    pub(crate) page: Option<&'d Page>,
    pub(crate) fields: Vec<Field<'d>>,
    pub(crate) switches: Vec<Switch<'d>>,
    /// A payload must have so many bytes for all of its own fields.
    pub(crate) needed_bytes: usize,
    /// The least length that is stated for it.
    pub(crate) stated_bytes: Option<usize>,
    /// The payload byte that its places count from: not 0 in elements of repeated groups.
    pub(crate) base: u32,
    /// Its values lie in the payload.
    pub(crate) borrows: bool,
    /// The names of its fields and methods.
    pub(crate) names: Names,
}

/// What is there under a condition.
pub(crate) enum Switch<'d> {
    Pages(Pages<'d>),
    /// An element of a group whose elements are not alike.
    Single {
        field: String,
        group: Group<'d>,
        there: String,
    },
    Repeated(Repeat<'d>),
}

/// Pages of which at most one holds.
pub(crate) struct Pages<'d> {
    pub(crate) field: String,
    pub(crate) enum_name: String,
    /// The function that tells which one holds.
    pub(crate) select: String,
    /// Each with its variant; one without a condition last.
    pub(crate) pages: Vec<(String, Group<'d>)>,
}

/// Elements that are alike.
pub(crate) struct Repeat<'d> {
    pub(crate) field: String,
    pub(crate) element: Group<'d>,
    pub(crate) step_bytes: u32,
    pub(crate) element_info: Element,
    /// The signal that says how many there are.
    pub(crate) count: Option<SignalId>,
}

/// A whole frame.
pub(crate) struct FramePlan<'d> {
    pub(crate) context: Context<'d>,
    pub(crate) frame: &'d Frame,
    pub(crate) root: Group<'d>,
    pub(crate) places: HashMap<SignalId, PlaceOf>,
    pub(crate) mode: Mode,
    /// It has a module of its own, with the types of its pages.
    pub(crate) module: Option<String>,
}

/// How payloads are looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Mode {
    /// All values lie in the first bytes, so many, and every payload has them.
    Chunk(usize),
    /// Some values may be beyond the end. All values that end before so many bytes are there; `None`: all values.
    Slice(Option<usize>),
}

impl Mode {
    pub(crate) fn is_slice(self) -> bool {
        matches!(self, Self::Slice(_))
    }
}

impl<'d> FramePlan<'d> {
    /// The plan for a frame whose type is to be called so.
    pub(crate) fn new(context: Context<'d>, at: usize, name: &str, module_names: &mut Names) -> Option<Self> {
        let frame = context.database.frames.get(at)?;
        let mode = mode(frame);
        let (root, places) = Planner::plan(context, at, (frame, mode), name);
        let module = (!root.switches.is_empty()).then(|| module_names.value(&snake(&frame.label.name)));
        Some(Self { context, frame, root, places, mode, module })
    }

    /// In front of the types that stand beside the frames.
    pub(crate) fn outside(&self) -> &'static str {
        if self.module.is_some() { "super::" } else { "" }
    }
}

fn stated(length: Option<LengthRange>) -> Option<usize> {
    length.map(|length| length.min as usize)
}

fn mode(frame: &Frame) -> Mode {
    let needed = |page: Option<PageId>| {
        let own = frame.signals.iter().filter(|signal| page.is_none_or(|page| signal.page == Some(page)));
        own.map(Signal::needed_bytes).max().unwrap_or(0) as usize
    };
    let all = needed(None);
    let is_open = frame.signals.iter().any(|signal| match signal.content {
        Content::Text { bytes, size, .. } | Content::Bytes { bytes, size } => bytes.last.is_none() || size.is_some(),
        Content::Number { .. } => false,
    }) || frame.pages.iter().any(|page| page.element.is_some() || page.rows_from.is_some());
    let in_frame = frame.signals.iter().filter(|signal| signal.page.is_none()).map(Signal::needed_bytes).max();
    let of_pages = frame.pages.iter().filter_map(|page| stated(page.length)).min();
    match (stated(frame.length), of_pages) {
        (Some(least), None) if !is_open && all <= least => Mode::Chunk(least),
        (None, None) if !is_open && all <= in_frame.unwrap_or(0) as usize => Mode::Chunk(all),
        (None, None) => Mode::Slice(None),
        (Some(least), pages) => Mode::Slice(Some(pages.map_or(least, |pages| pages.min(least)))),
        (None, Some(_)) => Mode::Slice(Some(0)),
    }
}

impl Switch<'_> {
    fn borrows(&self) -> bool {
        match self {
            Self::Pages(pages) => pages.borrows(),
            Self::Single { group, .. } => group.borrows,
            Self::Repeated(_) => true,
        }
    }
}

impl Pages<'_> {
    pub(crate) fn borrows(&self) -> bool {
        self.pages.iter().any(|(_, group)| group.borrows)
    }
}

impl Group<'_> {
    /// Whether it is the first element of a group that gives rows.
    pub(crate) fn gives_rows(&self) -> bool {
        self.page.is_some_and(|page| page.rows_from.is_some())
    }

    /// The type with its lifetime.
    pub(crate) fn type_text(&self) -> String {
        format!("{}{}", self.name, lifetime(self.borrows))
    }
}

/// Behind the name of a type.
pub(crate) fn lifetime(borrows: bool) -> &'static str {
    if borrows { "<'a>" } else { "" }
}

impl Repeat<'_> {
    pub(crate) fn type_text(&self) -> String {
        format!("typed::Repeated<'a, {}>", self.element.type_text())
    }

    /// The byte at which the first element begins, counted as the group around counts.
    pub(crate) fn first(&self, base: u32) -> u32 {
        self.element.base - base
    }

    /// How many bytes must be there for an element.
    pub(crate) fn size_bytes(&self, base: u32) -> u32 {
        match self.element_info.reaches {
            0 => self.element.needed_bytes as u32,
            reaches => reaches - base - self.first(base),
        }
    }
}
