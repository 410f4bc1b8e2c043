//! What a reader tells about a recording beside its frames.

use std::collections::BTreeMap;
use std::fmt;

use crate::flaw::Flaw;
use crate::frame::{Found, Kind, PlaceInLog};
use crate::identifiers::Evidence;

/// How many places of damage are kept in words; all of them are counted.
const PLACES_KEPT: usize = 3;
/// How many different link types are counted by their own number.
const LINK_TYPES_KEPT: usize = 64;

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

/// Where the clock of a recording ran backwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Backwards {
    /// How many frames are older than the frame before them.
    pub count: u64,
    /// The first of them.
    pub first: PlaceInLog,
}

/// What was read so far, what was not, and where.
#[derive(Debug, Clone, Default)]
#[non_exhaustive]
pub struct Report {
    /// Data frames handed out.
    pub data: u64,
    /// Remote frames handed out.
    pub remote: u64,
    /// Error messages handed out.
    pub error: u64,
    /// CAN XL frames, recognised and skipped: their payloads are not read.
    pub xl: u64,
    /// Lines, records or blocks that could not be read; each may have been a frame.
    pub damaged: u64,
    /// The first three of the damaged places.
    pub damage: Vec<Damage>,
    /// Packets of other link types, by the number in the public registry.
    pub other_links: BTreeMap<u16, u64>,
    /// Blocks of a packet file whose type is in no published list; skipped by their length.
    pub unknown_blocks: u64,
    /// The end of the log is missing: where and what.
    pub lost_tail: Option<Damage>,
    /// Frames that carry no time though the log tells times.
    pub without_time: u64,
    /// Time going backwards; those frames are handed out all the same.
    pub backwards: Option<Backwards>,
    remarks: Vec<String>,
    identifiers: Evidence,
    tells_times: bool,
    latest_time_ns: Option<i64>,
}

impl Report {
    /// Everything that was met: frames handed out, CAN XL frames, and damaged places.
    #[must_use]
    pub fn frames_read(&self) -> u64 {
        self.data + self.remote + self.error + self.xl + self.damaged
    }

    /// What a person should know before they trust the frames, in whole sentences; it may grow while reading.
    #[must_use]
    pub fn notes(&self) -> Vec<String> {
        let order = self.identifiers.doubt().map(str::to_owned);
        self.remarks.iter().cloned().chain(order).collect()
    }

    /// Says that the log has a place for times, so that a frame without one is worth counting.
    pub(crate) fn tells_times(&mut self) {
        self.tells_times = true;
    }

    /// Adds a sentence to the notes.
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
    pub(crate) fn tail_lost(&mut self, place: PlaceInLog, what: String) {
        if self.lost_tail.is_none() {
            self.lost_tail = Some(Damage { place, what });
        }
    }

    /// Adds why the bytes end before the log does.
    pub(crate) fn broke_off(&mut self, place: PlaceInLog, reason: &str) {
        match &mut self.lost_tail {
            Some(lost) => lost.what = format!("{}; {reason}", lost.what),
            None => self.tail_lost(place, reason.to_owned()),
        }
    }

    /// Counts a packet of a link type that is not read here.
    pub(crate) fn other_link(&mut self, link_type: u16) {
        if self.other_links.len() < LINK_TYPES_KEPT || self.other_links.contains_key(&link_type) {
            *self.other_links.entry(link_type).or_default() += 1;
        } else if let Some(mut last) = self.other_links.last_entry() {
            *last.get_mut() += 1;
        }
    }

    /// Weighs one identifier word for and against the byte order it is read in.
    pub(crate) fn weigh_identifier(&mut self, word: u32) {
        self.identifiers.weigh(word);
    }

    /// Counts a frame that is about to be handed out.
    pub(crate) fn frame(&mut self, found: &Found) {
        match found.kind {
            Kind::Data => self.data += 1,
            Kind::Remote => self.remote += 1,
            Kind::Error => self.error += 1,
        }
        let Some(time_ns) = found.time_ns else {
            self.without_time += u64::from(self.tells_times || self.latest_time_ns.is_some());
            return;
        };
        if self.latest_time_ns.is_some_and(|latest| time_ns < latest) {
            let first = found.place;
            self.backwards.get_or_insert(Backwards { count: 0, first }).count += 1;
        }
        self.latest_time_ns = Some(time_ns);
    }
}
