//! A frame being put together: given signals first, then selectors, then everything that was not given, checksums last.

use wirelore_bits::{Extractor, Number};
use wirelore_model::{ByteSpan, Content, Database, Frame, FrameId, Identifier, Role, Signal, SignalId};

use super::Given;
use super::error::EncodeError;
use super::note::Note;
use super::pages::{condition, selectors_for};
use super::value::{NumberSignal, text_bytes};
use crate::near::suggestion;
use crate::plan::{Conversion, FramePlan, Group, NO_SWITCH, Planner, Selected, Visit};
use crate::reading::Unmatched;

/// No longer frame is put together: nobody writes one of more than 16 MiB signal by signal, and a description can state up to 4 GiB.
pub(super) const ENCODED_BYTES_MAX: usize = 1 << 24;

/// A frame that is being put together.
pub(super) struct Assembly<'a> {
    pub(super) database: &'a Database,
    pub(super) frame: &'a Frame,
    pub(super) plan: FramePlan,
    /// As long as any signal needs, and longer where given bytes run to its end; cut at the end.
    pub(super) payload: Vec<u8>,
    /// By signal: whether its bits are in.
    pub(super) is_set: Vec<bool>,
    of_signals: OfSignals,
    pub(super) given: Vec<SignalId>,
    /// Of texts and bytes whose length another signal says: the two, and the length.
    sizes: Vec<(SignalId, SignalId, usize)>,
    /// How many bytes the signals that are in need.
    pub(super) needed_bytes: usize,
    /// Where the given elements of repeated groups end.
    pub(super) reached_bytes: usize,
    /// How long the frame is taken to be: elements that end before are there.
    pub(super) length_bytes: usize,
    pub(super) notes: Vec<Note>,
}

impl<'a> Assembly<'a> {
    pub(super) fn new(database: &'a Database, id: FrameId) -> Result<Self, EncodeError> {
        let count = database.frames.len();
        let frame = database.frames.get(id.index()).ok_or(EncodeError::NoSuchFrame { frame: id.0, count })?;
        if let Some(answers) = answers(database, frame) {
            return Err(EncodeError::EventTriggered { frame: frame.label.name.clone(), answers });
        }
        let plan = Planner::new(database).frame(frame, |_| true, |_| Conversion::None);
        let plan = plan.map_err(|fault| EncodeError::CurveTooFine {
            signal: frame.signals[fault.signal.index()].label.name.clone(),
        })?;
        let described = frame.signals.iter().map(needed_bytes).max().unwrap_or(0);
        if described > ENCODED_BYTES_MAX {
            return Err(EncodeError::TooLarge { needed: described, most: ENCODED_BYTES_MAX });
        }
        Ok(Self {
            database,
            frame,
            of_signals: OfSignals::new(frame, &plan),
            plan,
            payload: vec![0; described],
            is_set: vec![false; frame.signals.len()],
            given: Vec::new(),
            sizes: Vec::new(),
            needed_bytes: 0,
            reached_bytes: 0,
            length_bytes: 0,
            notes: Vec::new(),
        })
    }

    pub(super) fn signal(&self, id: SignalId) -> &'a Signal {
        &self.frame.signals[id.index()]
    }

    fn name(&self, id: SignalId) -> String {
        self.signal(id).label.name.clone()
    }

    /// Puts the given signals in: first those whose names are clear, so that they can tell which page the others are on.
    pub(super) fn give<N: AsRef<str>>(&mut self, assignments: &[(N, Given)]) -> Result<(), EncodeError> {
        let mut unclear = Vec::new();
        for (name, given) in assignments {
            let candidates: Vec<SignalId> = self.frame.signals_named(name.as_ref()).map(|(id, _)| id).collect();
            match candidates.as_slice() {
                [] => return Err(no_such_signal(self.frame, name.as_ref())),
                [only] => self.put_given(*only, given)?,
                _ => unclear.push((candidates, given)),
            }
        }
        for (candidates, given) in unclear {
            let mut possible = candidates.iter().copied().filter(|&id| self.can_be_there(id));
            match (possible.next(), possible.next()) {
                (Some(only), None) => self.put_given(only, given)?,
                (first, _) => {
                    let signal = self.name(first.unwrap_or(candidates[0]));
                    let conditions: Vec<String> =
                        candidates.iter().map(|&id| condition(self.database, self.frame, id)).collect();
                    return Err(EncodeError::SeveralPages { signal, conditions: conditions.join("; or ") });
                }
            }
        }
        Ok(())
    }

    /// Whether a signal's page can hold beside everything that was given so far.
    fn can_be_there(&self, id: SignalId) -> bool {
        let given: Vec<SignalId> = self.given.iter().copied().chain([id]).collect();
        selectors_for(self, self.database, &given).is_ok()
    }

    fn put_given(&mut self, id: SignalId, given: &Given) -> Result<(), EncodeError> {
        if self.is_set[id.index()] {
            return Err(EncodeError::GivenTwice { signal: self.name(id) });
        }
        self.given.push(id);
        let signal = self.signal(id);
        let elements = self.frame.pages_around(signal.page).filter_map(|page| page.element);
        let reached = elements.map(|element| element.reaches as usize).max().unwrap_or(0);
        self.reached_bytes = self.reached_bytes.max(reached);
        match (&signal.content, given) {
            (Content::Number { .. }, _) => {
                let bits = self.number_bits(id, given)?;
                self.put_bits(id, bits);
                Ok(())
            }
            (Content::Text { bytes, charset, .. }, Given::Text(text)) => {
                self.put_bytes(id, *bytes, &text_bytes(signal, text, *charset)?, true)
            }
            (Content::Bytes { bytes, size }, Given::Bytes(given)) => self.put_bytes(id, *bytes, given, size.is_some()),
            (Content::Text { .. }, _) => Err(self.wrong_sort(id, "it holds text")),
            (Content::Bytes { .. }, _) => Err(self.wrong_sort(id, "it holds bytes")),
        }
    }

    fn wrong_sort(&self, id: SignalId, why: &str) -> EncodeError {
        EncodeError::CannotHold { signal: self.name(id), what: "what is given".to_owned(), why: why.to_owned() }
    }

    fn number_bits(&mut self, id: SignalId, given: &Given) -> Result<u64, EncodeError> {
        let wrong_sort = self.wrong_sort(id, "it holds a number");
        let number = self.number(id).ok_or_else(|| self.wrong_sort(id, "it holds no number"))?;
        let (bits, notes) = match given {
            Given::Value { number: value, unit } => number.value(value, unit.as_ref())?,
            Given::Word(word) => (number.word(word)?, Vec::new()),
            Given::Raw(bits) => number.raw(*bits)?,
            Given::NoReading => (number.absent()?, Vec::new()),
            Given::SensorFault => (number.fault()?, Vec::new()),
            Given::Text(_) | Given::Bytes(_) => return Err(wrong_sort),
        };
        self.notes.extend(notes);
        Ok(bits)
    }

    /// A number signal with what is needed to encode it.
    pub(super) fn number(&self, id: SignalId) -> Option<NumberSignal<'_>> {
        let signal = self.signal(id);
        let detail = self.plan.details.get(*self.of_signals.steps.get(id.index())?)?;
        Some(NumberSignal { signal, encoding: signal.encoding()?, words: self.database.words(signal), detail })
    }

    /// Puts bits that fit into a number's place.
    pub(super) fn put_bits(&mut self, id: SignalId, bits: u64) {
        let signal = self.signal(id);
        if let Content::Number { field, .. } = &signal.content {
            // The payload is as long as any signal needs, and the bits come from the signal's own encoding.
            let put = Extractor::new(field).insert(&mut self.payload, bits);
            debug_assert_eq!(put, Ok(()), "bits of {}", signal.label.name);
        }
        self.is_set[id.index()] = true;
        self.needed_bytes = self.needed_bytes.max(needed_bytes(signal));
    }

    fn put_bytes(
        &mut self,
        id: SignalId,
        span: ByteSpan,
        bytes: &[u8],
        may_be_shorter: bool,
    ) -> Result<(), EncodeError> {
        let first = span.first as usize;
        // What runs to the end makes the frame longer; whether that may be so long is told by its whole length.
        let room = span.last.map(|last| (last as usize + 1).saturating_sub(first));
        if let Some(room) = room
            && (bytes.len() > room || bytes.len() < room && !may_be_shorter)
        {
            let what = format!("{} bytes", bytes.len());
            return Err(EncodeError::CannotHold { signal: self.name(id), what, why: format!("it has {room}") });
        }
        self.payload.resize(self.payload.len().max(first + bytes.len()), 0);
        let place = &mut self.payload[first..first + bytes.len()];
        place.copy_from_slice(bytes);
        self.is_set[id.index()] = true;
        let size = self.signal(id).size();
        let end = span.last.filter(|_| size.is_none()).map_or(first + bytes.len(), |last| last as usize + 1);
        self.sizes.extend(size.map(|size| (id, size, bytes.len())));
        self.needed_bytes = self.needed_bytes.max(end);
        Ok(())
    }

    /// Sets the signals that say how long the given texts and bytes are, and compares those that are given themselves.
    pub(super) fn set_sizes(&mut self) -> Result<(), EncodeError> {
        for (id, size, length) in std::mem::take(&mut self.sizes) {
            let cannot_hold = |name: String, why: String| {
                let what = format!("{length} bytes");
                EncodeError::CannotHold { signal: name, what, why }
            };
            let Some(number) = self.number(size) else { continue };
            let bits = number.encoding.bits(Number::Integer(length as i128));
            let bits =
                bits.map_err(|_| cannot_hold(self.name(id), format!("`{}` cannot say so many", self.name(size))))?;
            let Content::Number { field, .. } = &self.signal(size).content else { continue };
            if !self.is_set[size.index()] {
                self.put_bits(size, bits);
                let (signal, of) = (self.name(size), self.name(id));
                self.notes.push(Note::SizeSet { signal, of, bytes: length });
            } else if Extractor::new(field).extract(&self.payload) != Some(bits) {
                return Err(cannot_hold(self.name(id), format!("`{}` says another number of them", self.name(size))));
            }
        }
        Ok(())
    }

    /// Sets selectors that are not given so that every given signal is there.
    pub(super) fn set_selectors(&mut self) -> Result<(), EncodeError> {
        for choice in selectors_for(self, self.database, &self.given)? {
            let selector = self.name(choice.selector);
            self.put_bits(choice.selector, choice.bits);
            let needed_by = self.name(choice.needed_by);
            self.notes.push(Note::SelectorSet { selector, value: choice.shown, needed_by });
        }
        Ok(())
    }

    /// Fills in what was not given on every page that holds, from the outside in, so that selectors are there before their pages.
    pub(super) fn fill_up(&mut self) -> Result<(), EncodeError> {
        self.length_bytes = self.least_length();
        loop {
            self.fill_groups()?;
            // What was filled in may make the frame longer, and then more elements are there.
            let least = self.least_length();
            if least <= self.length_bytes {
                return Ok(());
            }
            self.length_bytes = least;
        }
    }

    /// Fills the groups that are there, one after the other: what is filled into one decides which comes next.
    fn fill_groups(&mut self) -> Result<(), EncodeError> {
        let mut group = Some(0);
        let mut next = NO_SWITCH;
        loop {
            if let Some(there) = group.and_then(|group| self.plan.groups.get(group)) {
                next = there.next_switch;
                self.fill_group(there.number)?;
            }
            let Some(switch) = self.plan.switches.get(next as usize) else { return Ok(()) };
            next = switch.next;
            group = match switch.select_in(&self.payload, self.length_bytes) {
                Selected::Group(group) => Some(group as usize),
                Selected::Nothing(_) | Selected::TooShort | Selected::NotThere => None,
            };
        }
    }

    /// The groups that are there with the payload as it is: a page's group comes behind that of its selectors.
    pub(super) fn groups_there(&self) -> Vec<usize> {
        let mut there = There(Vec::new());
        self.plan.walk_in(&self.payload, self.length_bytes, &mut there);
        there.0
    }

    /// Fills in what was not given of a group.
    fn fill_group(&mut self, group: usize) -> Result<(), EncodeError> {
        let members = self.of_signals.members.get_mut(group).map(std::mem::take).unwrap_or_default();
        for id in members {
            if self.is_set[id.index()] {
                continue;
            }
            let signal = self.signal(id);
            let name = signal.label.name.clone();
            match (&signal.role, self.number(id).map(|number| number.absent())) {
                // Calculated when all else is in; its bytes count from now on.
                (Role::Checksum(_), _) => self.needed_bytes = self.needed_bytes.max(signal.needed_bytes() as usize),
                (Role::Protection(protection), _) => {
                    let first = protection.profile.first_count().into();
                    self.put_bits(id, first);
                    self.notes.push(Note::CounterStarts { signal: name, at: first });
                }
                (Role::Counter(counter), _) => {
                    self.put_bits(id, counter.low);
                    self.notes.push(Note::CounterStarts { signal: name, at: counter.low });
                }
                (Role::Value, _) if signal.size().is_some() => self.leave_room(id)?,
                (Role::Value, Some(Ok(bits))) if !self.of_signals.are_sizes[id.index()] => {
                    self.put_bits(id, bits);
                    self.notes.push(Note::UnsetAbsent { signal: name });
                }
                (Role::Value, _) => {
                    self.put_bits(id, 0);
                    self.notes.push(Note::UnsetZero { signal: name });
                }
            }
        }
        Ok(())
    }

    /// Text or bytes that were not given: nothing is there, or as many zeros as a given size says. The payload reaches to where they begin.
    fn leave_room(&mut self, id: SignalId) -> Result<(), EncodeError> {
        self.is_set[id.index()] = true;
        let (Content::Text { bytes, size: Some(size), .. } | Content::Bytes { bytes, size: Some(size) }) =
            &self.signal(id).content
        else {
            return Ok(());
        };
        let said = || {
            let Content::Number { field, .. } = &self.signal(*size).content else { return None };
            let bits = Extractor::new(field).extract(&self.payload)?;
            match self.number(*size)?.encoding.number(bits).ok()? {
                Number::Integer(count) => usize::try_from(count).ok(),
                Number::Float(_) => None,
            }
        };
        let count = if self.is_set[size.index()] { said().unwrap_or(0) } else { 0 };
        let first = bytes.first as usize;
        let room = bytes.last.map_or(usize::MAX, |last| (last as usize + 1).saturating_sub(first));
        if count > room {
            let why = format!("it has {room}, and `{}` says {count}", self.name(*size));
            return Err(EncodeError::CannotHold { signal: self.name(id), what: format!("{count} bytes"), why });
        }
        self.needed_bytes = self.needed_bytes.max(first.saturating_add(count));
        if count > 0 {
            self.notes.push(Note::UnsetBytes { signal: self.name(id), bytes: count });
        }
        Ok(())
    }
}

/// What is asked of signals again and again, looked up once: a frame can have tens of thousands of them.
struct OfSignals {
    /// By signal: its place among the steps of the plan.
    steps: Vec<usize>,
    /// By signal: whether it says how many bytes another one has.
    are_sizes: Vec<bool>,
    /// By group: its signals.
    members: Vec<Vec<SignalId>>,
}

impl OfSignals {
    fn new(frame: &Frame, plan: &FramePlan) -> Self {
        let count = frame.signals.len();
        let mut are_sizes = vec![false; count];
        frame.signals.iter().filter_map(Signal::size).for_each(|size| are_sizes[size.index()] = true);
        let mut steps = vec![usize::MAX; count];
        (0..).zip(&plan.steps).for_each(|(at, step)| steps[step.signal.index()] = at);
        let mut members = vec![Vec::new(); plan.groups.len()];
        for (signal, id) in frame.signals.iter().zip((0..).map(SignalId)) {
            members[group_of(signal)].push(id);
        }
        Self { steps, are_sizes, members }
    }
}

/// The bytes that a payload must have for a signal, and for what its protection covers.
fn needed_bytes(signal: &Signal) -> usize {
    let covered =
        signal.protection().map_or(0, |it| it.header_end().max(it.over.last.map_or(0, |last| last.saturating_add(1))));
    signal.needed_bytes().max(covered) as usize
}

/// The names of the frames that an event-triggered one stands for.
fn answers(database: &Database, frame: &Frame) -> Option<String> {
    let Identifier::Lin { stands_for, .. } = &frame.seen_on.first()?.identifier else { return None };
    let name = |id: &FrameId| database.frames.get(id.index()).map(|answer| format!("`{}`", answer.label.name));
    let names: Vec<String> = stands_for.iter().filter_map(name).collect();
    (!names.is_empty()).then(|| names.join(" or "))
}

/// Which group of the plan a signal is in.
pub(super) fn group_of(signal: &Signal) -> usize {
    signal.page.map_or(0, |page| page.index() + 1)
}

/// Notes the groups that are there.
struct There(Vec<usize>);

impl Visit for There {
    fn group(&mut self, group: &Group) {
        self.0.push(group.number);
    }

    fn unmatched(&mut self, _: Unmatched) {}
}

/// The error for a signal that the frame does not have.
pub(super) fn no_such_signal(frame: &Frame, name: &str) -> EncodeError {
    let hint = suggestion(name, frame.signals.iter().map(|signal| signal.label.name.as_str()));
    EncodeError::NoSuchSignal { frame: frame.label.name.clone(), signal: name.to_owned(), hint }
}
