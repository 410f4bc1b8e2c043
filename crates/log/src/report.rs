//! What a reader tells about a recording beside its frames.

use std::fmt;

use crate::flaw::Flaw;
use crate::frame::{Found, PlaceInLog};
use crate::identifiers::{Digits, Evidence};
use crate::notes::{LinkTypes, Occasions, counted};

/// How many places of damage are kept in words; all of them are counted.
const PLACES_KEPT: usize = 3;

/// So much of a log is looked at to tell the byte order of its identifiers.
const WEIGHED_BYTES: u64 = 1024 * 1024;

/// One place where a log could not be read as it should.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Damage {
    /// Where it is.
    pub place: PlaceInLog,
    /// What was found there, and what can be done.
    pub what: String,
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.what)
    }
}

/// What was read so far, what was not, and where. What is no damage is told in words, by [`Report::notes`].
#[derive(Debug, Clone, Default)]
#[non_exhaustive]
pub struct Report {
    /// Lines, records or blocks that could not be read; each may have been a frame.
    pub damaged: u64,
    /// The first three of the damaged places.
    pub damage: Vec<Damage>,
    /// Where the recording is cut off, and why it is thought so; the frames before it were handed out.
    pub lost_tail: Option<Damage>,
    /// The cause in `lost_tail`, bare.
    tail_cause: String,
    /// Frames handed out.
    frames: u64,
    without_time: u64,
    backwards: Option<Occasions>,
    first_time: Option<(i64, PlaceInLog)>,
    latest_time_ns: Option<i64>,
    other_links: LinkTypes,
    unknown_blocks: u64,
    doubted_interfaces: Option<Occasions>,
    identifiers: Evidence,
    digits: Digits,
    remarks: Vec<String>,
}

impl Report {
    /// Everything that was met: frames handed out, and damaged places.
    #[must_use]
    pub fn frames_read(&self) -> u64 {
        self.frames + self.damaged
    }

    /// Everything that a person has to be told of a log: the damaged places that are kept, how many more there are, a lost tail, and the notes.
    #[must_use]
    pub fn told(&self) -> Vec<String> {
        let mut told: Vec<String> = self.damage.iter().map(Damage::to_string).collect();
        let untold = self.damaged.saturating_sub(self.damage.len() as u64);
        if untold > 0 {
            told.push(format!("and {} more", counted(untold, "damaged place")));
        }
        told.extend(self.lost_tail.iter().map(Damage::to_string));
        told.extend(self.notes());
        told
    }

    /// What a person should know before they trust the frames, in whole sentences; it may grow while reading, up to about ten.
    ///
    /// How numbers were read that the log does not explain, packets that are not read, frames without a time or out of its
    /// order, and doubts about identifiers. Damage is not among them: it is in [`Report::damage`] and
    /// [`Report::lost_tail`].
    #[must_use]
    pub fn notes(&self) -> Vec<String> {
        let found = [
            self.doubted_interfaces.map(doubted_interfaces),
            self.other_links.note(),
            self.unknown_blocks_note(),
            self.without_time_note(),
            self.backwards.map(backwards),
            self.digits.note(),
            self.identifiers.doubt().map(str::to_owned),
        ];
        self.remarks.iter().cloned().chain(found.into_iter().flatten()).collect()
    }

    /// Whether there was something in the log, and none of it can be read here: neither frames nor damaged ones, only packets and blocks
    /// that the [notes](Report::notes) tell of.
    #[must_use]
    pub fn is_of_other_kinds(&self) -> bool {
        self.frames_read() == 0 && (!self.other_links.is_empty() || self.unknown_blocks > 0)
    }

    fn unknown_blocks_note(&self) -> Option<String> {
        let count = self.unknown_blocks;
        let are = if count == 1 { "is" } else { "are" };
        (count > 0).then(|| format!("{} of types in no published list {are} not read", counted(count, "block")))
    }

    fn without_time_note(&self) -> Option<String> {
        match (self.without_time, self.frames) {
            (0, _) => None,
            (1, 1) => Some("the only frame has no time".to_owned()),
            (count, all) if count == all => Some(format!("none of the {all} frames has a time")),
            (1, all) => Some(format!("1 of the {all} frames has no time")),
            (count, all) => Some(format!("{count} of the {all} frames have no time")),
        }
    }

    /// Adds a sentence to the notes. A reader has only a few, however long the log is.
    pub(crate) fn remark(&mut self, sentence: String) {
        self.remarks.push(sentence);
    }

    /// Counts a damaged place, and keeps its words if it is one of the first.
    pub(crate) fn damaged_at(&mut self, place: PlaceInLog, flaw: &Flaw<'_>) {
        self.damaged += 1;
        if self.damage.len() < PLACES_KEPT {
            self.damage.push(Damage { place, what: flaw.to_string() });
        }
    }

    /// Notes that the log ends before its content does.
    pub(crate) fn tail_lost(&mut self, place: PlaceInLog, cause: String) {
        if self.lost_tail.is_none() {
            let what = format!("the recording is cut off here: {cause}; the frames before it are kept");
            self.lost_tail = Some(Damage { place, what });
            self.tail_cause = cause;
        }
    }

    /// Adds why the bytes end before the log does.
    pub(crate) fn broke_off(&mut self, place: PlaceInLog, reason: &str) {
        match self.lost_tail.take() {
            Some(lost) => self.tail_lost(lost.place, format!("{}; {reason}", self.tail_cause)),
            None => self.tail_lost(place, reason.to_owned()),
        }
    }

    /// Counts a packet of a link type that is not read here.
    pub(crate) fn other_link(&mut self, link_type: u16) {
        self.other_links.count(link_type);
    }

    /// Counts a block of a packet file whose type is in no published list.
    pub(crate) fn unknown_block(&mut self) {
        self.unknown_blocks += 1;
    }

    /// Notes a damaged place where the description of an interface may have stood.
    pub(crate) fn interface_doubted(&mut self, place: PlaceInLog) {
        Occasions::add(&mut self.doubted_interfaces, place);
    }

    /// Weighs one identifier word, which stands at byte `offset` of the log, for and against the byte order it is read in.
    #[inline]
    pub(crate) fn weigh_identifier(&mut self, word: u32, offset: u64) {
        if offset < WEIGHED_BYTES {
            self.identifiers.weigh(word);
        }
    }

    /// The same for several words, each with its offset.
    #[inline]
    pub(crate) fn weigh_identifiers(&mut self, words: &[u32], offsets: impl Iterator<Item = u64>) {
        let weighed = words.iter().zip(offsets).take_while(|(_, offset)| *offset < WEIGHED_BYTES);
        weighed.for_each(|(word, _)| self.identifiers.weigh(*word));
    }

    /// Weighs how an identifier was written on a line that does not say whether it is extended.
    pub(crate) fn weigh_digits(&mut self, id: u32, has_eight_digits: bool) {
        self.digits.weigh(id, has_eight_digits);
    }

    /// Adds how the identifiers of some lines were written.
    pub(crate) fn join_digits(&mut self, digits: &Digits) {
        self.digits.join(digits);
    }

    /// Counts a frame that is about to be handed out.
    pub(crate) fn frame(&mut self, found: &Found) {
        self.frames += 1;
        let Some(time_ns) = found.time_ns else {
            self.without_time += 1;
            return;
        };
        match self.latest_time_ns {
            None => self.first_time = Some((time_ns, found.place)),
            Some(latest) if time_ns < latest => Occasions::add(&mut self.backwards, found.place),
            Some(_) => {}
        }
        self.latest_time_ns = Some(time_ns);
    }

    /// Frames handed out.
    pub(crate) fn frames(&self) -> u64 {
        self.frames
    }

    /// The time of the frame before, of those that have one.
    pub(crate) fn latest_time_ns(&self) -> Option<i64> {
        self.latest_time_ns
    }

    /// Notes a frame whose time is before that of the frame before it.
    #[cold]
    pub(crate) fn went_backwards(&mut self, place: PlaceInLog) {
        Occasions::add(&mut self.backwards, place);
    }

    /// Counts frames that were handed out, all of them with a time, the last one with this.
    pub(crate) fn timed_frames(&mut self, count: u64, latest_ns: i64) {
        self.frames += count;
        self.latest_time_ns = Some(latest_ns);
    }

    /// Adds what was met in the piece of the log behind; its places count from `before` lines or blocks on.
    pub(crate) fn join(&mut self, piece: Self, before: u64) {
        self.damaged += piece.damaged;
        let free = PLACES_KEPT.saturating_sub(self.damage.len());
        let damage = piece.damage.into_iter().take(free);
        self.damage.extend(damage.map(|damage| Damage { place: damage.place.behind(before), ..damage }));
        self.frames += piece.frames;
        self.without_time += piece.without_time;
        if let (Some(latest_ns), Some((first_ns, place))) = (self.latest_time_ns, piece.first_time)
            && first_ns < latest_ns
        {
            Occasions::add(&mut self.backwards, place.behind(before));
        }
        Occasions::join(&mut self.backwards, piece.backwards, before);
        self.first_time = self.first_time.or(piece.first_time.map(|(time_ns, place)| (time_ns, place.behind(before))));
        self.latest_time_ns = piece.latest_time_ns.or(self.latest_time_ns);
        self.other_links.join(piece.other_links);
        self.unknown_blocks += piece.unknown_blocks;
        Occasions::join(&mut self.doubted_interfaces, piece.doubted_interfaces, before);
        self.identifiers.join(&piece.identifiers);
        self.digits.join(&piece.digits);
    }
}

fn doubted_interfaces(Occasions { count, first }: Occasions) -> String {
    let more = match count - 1 {
        0 => String::new(),
        more => format!("; so it is in {}", counted(more, "later section")),
    };
    format!(
        "{first} is damaged, and may have described an interface: the channels and times after it may be wrong{more}"
    )
}

fn backwards(Occasions { count, first }: Occasions) -> String {
    let times = counted(count, "time");
    format!("the time goes backwards {times}, first at {first}; the frames are kept in the order of the log")
}
