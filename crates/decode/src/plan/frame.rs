//! One frame's plan, and how it is made.
//!
//! Pages make a tree, yet decoding follows a chain: each group of signals names the switch that comes next, inside its page or, where
//! there is none inside, behind it. So the walk needs no stack, whatever the nesting.

use std::cell::OnceCell;
use std::ops::Range;

use wirelore_model::{Content, Database, Frame, LengthRange, Page, Signal, SignalId, StateWord, States, StatesId};

use super::{Conversion, Detail, RowPlan, Selected, Step, Switch};
use crate::checks::{ByProfile, CheckPlan, has_several_sequences};
use crate::reading::Unmatched;
use crate::room::longest_payload;

/// The end of a chain of switches.
pub(crate) const NO_SWITCH: u32 = u32::MAX;

/// A frame made ready for decoding.
#[derive(Debug, Clone)]
pub(crate) struct FramePlan {
    /// The wanted signals, group by group.
    pub(crate) steps: Box<[Step]>,
    /// In step with `steps`.
    pub(crate) details: Box<[Detail]>,
    /// Group 0 is always there; page `p` is group `p + 1`.
    pub(crate) groups: Box<[Group]>,
    pub(crate) switches: Box<[Switch]>,
    pub(crate) checks: Box<[CheckPlan]>,
    /// Where some group gives rows: how payloads are cut into them.
    pub(crate) rows: Option<Box<RowPlan>>,
    /// Some texts or bytes have a length that another signal says.
    pub(crate) has_sizes: bool,
    /// The identifiers of the frame tell several sequences of counts apart.
    pub(crate) has_several_sequences: bool,
}

/// Signals that are there together.
#[derive(Debug, Clone)]
pub(crate) struct Group {
    /// Its own place among the groups.
    pub(crate) number: usize,
    pub(crate) steps: Range<usize>,
    pub(crate) checks: Range<usize>,
    /// A shorter payload ends before some signal of the group (wanted or not) does.
    pub(crate) needed_bytes: u32,
    /// The least length that the description states for the frame (group 0) or for the page itself.
    pub(crate) least_bytes: Option<u32>,
    pub(crate) next_switch: u32,
}

/// What cannot be planned.
#[derive(Debug)]
pub(crate) struct PlanFault {
    pub(crate) signal: SignalId,
}

/// Makes plans for the frames of one database.
pub(crate) struct Planner<'a> {
    database: &'a Database,
    words: Vec<Box<str>>,
    /// Where the words of each named table begin.
    tables: Vec<u32>,
    /// Looked up with the first protected frame.
    protections: OnceCell<ByProfile>,
}

impl<'a> Planner<'a> {
    pub(crate) fn new(database: &'a Database) -> Self {
        let mut planner = Self { database, words: Vec::new(), tables: Vec::new(), protections: OnceCell::new() };
        for table in &database.states {
            let first = planner.add_words(&table.words);
            planner.tables.push(first);
        }
        planner
    }

    /// All state words, as the plans number them.
    pub(crate) fn into_words(self) -> Box<[Box<str>]> {
        self.words.into()
    }

    fn add_words(&mut self, words: &[StateWord]) -> u32 {
        let first = self.words.len() as u32;
        self.words.extend(words.iter().map(|word| word.word.as_str().into()));
        first
    }

    fn first_word(&mut self, signal: &Signal) -> u32 {
        match &signal.states {
            Some(States::Table(StatesId(table))) => self.tables.get(*table as usize).copied().unwrap_or_default(),
            Some(States::Own(words)) => self.add_words(words),
            None => 0,
        }
    }

    /// The plan for a frame: only wanted signals are decoded, with the wanted conversion behind each.
    pub(crate) fn frame(
        &mut self,
        frame: &Frame,
        wanted: impl Fn(SignalId) -> bool,
        conversion: impl Fn(SignalId) -> Conversion,
    ) -> Result<FramePlan, PlanFault> {
        let (mut steps, mut details, mut checks, mut groups) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        for group in Members::of(frame) {
            let (first_step, first_check) = (steps.len(), checks.len());
            for &signal in &group.signals {
                let described = &frame.signals[signal.index()];
                let others = || {
                    let known = self.protections.get_or_init(|| ByProfile::of(self.database));
                    (longest_payload(self.database, frame), known)
                };
                checks.extend(CheckPlan::new(signal, frame, self.database.words(described), others));
                if wanted(signal) {
                    let (step, detail) = self.signal(frame, signal, &conversion(signal)).ok_or(PlanFault { signal })?;
                    steps.push(step);
                    details.push(detail);
                }
            }
            groups.push(Group {
                number: groups.len(),
                steps: first_step..steps.len(),
                checks: first_check..checks.len(),
                needed_bytes: group.needed_bytes,
                least_bytes: group.least_bytes,
                next_switch: NO_SWITCH,
            });
        }
        let switches = chain(frame, &mut groups);
        let has_sizes = details.iter().any(Detail::is_sized);
        Ok(FramePlan {
            steps: steps.into(),
            details: details.into(),
            groups: groups.into(),
            switches: switches.into(),
            checks: checks.into(),
            rows: RowPlan::new(frame),
            has_sizes,
            has_several_sequences: has_several_sequences(frame),
        })
    }

    fn signal(&mut self, frame: &Frame, id: SignalId, conversion: &Conversion) -> Option<(Step, Detail)> {
        let signal = &frame.signals[id.index()];
        let (Content::Number { field, .. }, Some(encoding)) = (&signal.content, signal.encoding()) else {
            return Some((Step::careful(id), Detail::of_bytes(frame, signal)?));
        };
        let first_word = self.first_word(signal);
        let number =
            Detail::of_number(signal, (field, encoding), (self.database.words(signal), first_word), conversion)?;
        let step = if number.only_detail {
            Step::careful(id)
        } else {
            Step::number(id, field, encoding, number.formula.as_ref(), number.plain)
        };
        Some((step, number.detail))
    }
}

/// The signals of one group, wanted or not.
struct Members {
    signals: Vec<SignalId>,
    needed_bytes: u32,
    least_bytes: Option<u32>,
}

impl Members {
    fn of(frame: &Frame) -> Vec<Self> {
        let mut groups: Vec<Self> = least_bytes(frame)
            .into_iter()
            .map(|least_bytes| Self { signals: Vec::new(), needed_bytes: 0, least_bytes })
            .collect();
        for (signal, id) in frame.signals.iter().zip((0..).map(SignalId)) {
            let group = &mut groups[signal.page.map_or(0, |page| page.index() + 1)];
            group.signals.push(id);
            group.needed_bytes = group.needed_bytes.max(signal.needed_bytes());
        }
        groups
    }
}

/// The least length that is stated for the frame (first) and for each of its pages.
///
/// A row is only a part of a payload: what is stated around a group that gives rows is not asked of it, only of what is there instead.
fn least_bytes(frame: &Frame) -> Vec<Option<u32>> {
    let least = |length: Option<LengthRange>| length.map(|length| length.min);
    let own = std::iter::once(least(frame.length)).chain(frame.pages.iter().map(|page| least(page.length)));
    let mut stated: Vec<Option<u32>> = own.collect();
    if !frame.gives_rows() {
        return stated;
    }
    let around = |page: &Page| page.parent.map_or(0, |parent| parent.index() + 1);
    let mut holds_rows = vec![false; stated.len()];
    for (at, page) in frame.pages.iter().enumerate().rev() {
        holds_rows[around(page)] |= page.rows_from.is_some() || holds_rows[at + 1];
    }
    let mut in_rows = vec![false; stated.len()];
    for (at, page) in frame.pages.iter().enumerate() {
        in_rows[at + 1] = page.rows_from.is_some() || in_rows[around(page)];
        // A range says how far what is not described goes, and nobody misses that.
        let is_range = page.length.is_some_and(|length| length.min < length.max);
        if in_rows[at + 1] && is_range {
            stated[at + 1] = None;
        }
    }
    for (at, page) in frame.pages.iter().enumerate().filter(|(_, page)| page.rows_from.is_none()) {
        stated[at + 1] = stated[at + 1].or(stated[around(page)]);
    }
    stated.into_iter().zip(holds_rows).map(|(stated, holds_rows)| stated.filter(|_| !holds_rows)).collect()
}

/// Makes the switches, and tells each group and each switch which switch comes next.
fn chain(frame: &Frame, groups: &mut [Group]) -> Vec<Switch> {
    let count = frame.pages.iter().map(|page| page.switch as usize + 1).max().unwrap_or(0);
    let mut pages: Vec<Vec<(&Page, u32)>> = vec![Vec::new(); count];
    for (page, group) in frame.pages.iter().zip(1..) {
        pages[page.switch as usize].push((page, group));
    }
    let mut switches: Vec<Switch> = pages.iter().map(|pages| Switch::new(frame, pages)).collect();
    // A page stands before the pages inside it, so what follows the switch around is known when the switches inside are hung.
    let mut inside: Vec<Vec<u32>> = vec![Vec::new(); groups.len()];
    for (index, pages) in (0..).zip(&pages) {
        let around = pages.first().and_then(|(page, _)| page.parent).map_or(0, |parent| parent.index() + 1);
        inside[around].push(index);
    }
    hang(&inside[0], NO_SWITCH, 0, groups, &mut switches);
    for (page, group) in frame.pages.iter().zip(1..) {
        let behind = switches[page.switch as usize].next;
        hang(&inside[group], behind, group, groups, &mut switches);
    }
    switches
}

/// Hangs the switches inside one group in a row, and `behind` at its end.
fn hang(inside: &[u32], behind: u32, group: usize, groups: &mut [Group], switches: &mut [Switch]) {
    groups[group].next_switch = inside.first().copied().unwrap_or(behind);
    for (at, &index) in inside.iter().enumerate() {
        switches[index as usize].next = inside.get(at + 1).copied().unwrap_or(behind);
    }
}

/// Is led through the groups of a frame.
pub(crate) trait Visit {
    /// A group that is there.
    fn group(&mut self, group: &Group);

    /// A selector without a page for its value.
    fn unmatched(&mut self, told: Unmatched);
}

impl FramePlan {
    /// Visits the groups that are there in a payload: first the one that always is, then those of the pages that hold.
    #[inline(always)]
    pub(crate) fn walk(&self, payload: &[u8], visitor: &mut impl Visit) {
        self.walk_in(payload, payload.len(), visitor);
    }

    /// The same for a payload that is taken to have so many bytes, as far as elements of repeated groups ask for that.
    #[inline(always)]
    pub(crate) fn walk_in(&self, payload: &[u8], length_bytes: usize, visitor: &mut impl Visit) {
        let Some(always) = self.groups.first() else {
            return;
        };
        visitor.group(always);
        let mut next = always.next_switch;
        while let Some(switch) = self.switches.get(next as usize) {
            next = switch.next;
            match switch.select_in(payload, length_bytes) {
                Selected::Group(group) => {
                    let Some(group) = self.groups.get(group as usize) else {
                        continue;
                    };
                    visitor.group(group);
                    next = group.next_switch;
                }
                Selected::Nothing(told) => visitor.unmatched(told),
                // The group that holds the selector has told so.
                Selected::TooShort | Selected::NotThere => {}
            }
        }
    }
}
