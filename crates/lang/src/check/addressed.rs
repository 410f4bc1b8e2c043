//! Messages that are recognised by addresses and leading bytes: can one message be two of them, and neither is narrower?
//!
//! Where several descriptions fit, the one that states most counts. Two that state as much, each something else (`from 0x10` and
//! `to 0xF1`), leave it open what a message is that both fit. What is looked up are the parts that two such descriptions have in
//! common, so that the work grows with the frames and not with their pairs.

use rustc_hash::{FxHashMap, FxHashSet};
use wirelore_model::{Identifier, identifier_text};

use super::ids::{Seen, say};
use crate::resolve::messages::Messages;

/// Which of the two addresses are stated.
const SOURCE: u8 = 1;
const TARGET: u8 = 2;
const BOTH: u8 = SOURCE | TARGET;

/// What a description states.
#[derive(Debug, Clone, Copy)]
struct Stated<'a> {
    /// The type of a DoIP message; the messages of single-wire networks have none.
    payload_type: Option<u16>,
    source: Option<u16>,
    target: Option<u16>,
    starts: &'a [u8],
}

/// A part of what is stated, by which others are found: all that they can have in common.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
struct Part<'a> {
    payload_type: Option<u16>,
    /// The addresses that both state.
    source: Option<u16>,
    target: Option<u16>,
    starts: &'a [u8],
    /// Which addresses the found one states.
    mask: u8,
}

impl<'a> Stated<'a> {
    fn of(identifier: &'a Identifier) -> Option<Self> {
        let wide = |address: Option<u8>| address.map(u16::from);
        match identifier {
            Identifier::DoIp { payload_type, source, target } => {
                Some(Self { payload_type: Some(*payload_type), source: *source, target: *target, starts: &[] })
            }
            Identifier::Telegram { source, target, starts } => {
                Some(Self { payload_type: None, source: wide(*source), target: wide(*target), starts })
            }
            _ => None,
        }
    }

    fn mask(&self) -> u8 {
        let bit = |address: Option<u16>, bit: u8| if address.is_some() { bit } else { 0 };
        bit(self.source, SOURCE) | bit(self.target, TARGET)
    }

    /// What is left of it where only some addresses and leading bytes count.
    fn part(&self, common: u8, bytes: usize, mask: u8) -> Part<'a> {
        let Self { payload_type, source, target, starts } = *self;
        let if_common = |address: Option<u16>, bit: u8| address.filter(|_| common & bit != 0);
        Part {
            payload_type,
            source: if_common(source, SOURCE),
            target: if_common(target, TARGET),
            starts: &starts[..bytes],
            mask,
        }
    }

    /// The parts by which it is found.
    fn own_parts(&self) -> impl Iterator<Item = Part<'a>> + use<'a> {
        let (own, mask) = (*self, self.mask());
        (0..=BOTH).filter(move |common| common & !mask == 0).map(move |common| own.part(common, own.starts.len(), mask))
    }

    /// The parts of those that state as much, begin with no more bytes, and can be met.
    fn parts_met(&self) -> impl Iterator<Item = Part<'a>> + use<'a> {
        let (own, mask) = (*self, self.mask());
        (0..=BOTH).filter_map(move |other| {
            let bytes = (own.starts.len() + mask.count_ones() as usize).checked_sub(other.count_ones() as usize)?;
            (bytes <= own.starts.len()).then(|| own.part(mask & other, bytes, other))
        })
    }
}

/// Tells which frames of a network leave open what a message is. They all differ from each other.
pub(super) fn check(frames: &[(&Identifier, Seen<'_>)], network: &str, messages: &mut Messages) {
    let all: FxHashSet<&Identifier> = frames.iter().map(|(identifier, _)| *identifier).collect();
    let mut stated: Vec<_> = frames.iter().filter_map(|frame| Some((Stated::of(frame.0)?, *frame))).collect();
    stated.sort_by_key(|(stated, _)| stated.starts.len());
    let mut found_by: FxHashMap<Part<'_>, Vec<(&Identifier, Seen<'_>)>> = FxHashMap::default();
    for (stated, (identifier, seen)) in &stated {
        let earlier = stated.parts_met().filter_map(|part| found_by.get(&part)).flatten();
        // What both fit may be described by itself, more narrowly than either: then nothing is open. Each such frame is passed over
        // a few times at most.
        let mut open =
            earlier.map(|(other, seen)| (both(identifier, other), *seen)).filter(|(both, _)| !all.contains(both));
        if let Some((both, other)) = open.next() {
            say(*seen, other, &identifier_text(&both), network, messages);
        }
        for part in stated.own_parts() {
            found_by.entry(part).or_default().push((identifier, *seen));
        }
    }
}

/// What a message is recognised by that fits two descriptions; the first one has no fewer leading bytes.
fn both(one: &Identifier, other: &Identifier) -> Identifier {
    match (one, other) {
        (
            Identifier::DoIp { payload_type, source, target },
            Identifier::DoIp { source: other_source, target: other_target, .. },
        ) => Identifier::DoIp {
            payload_type: *payload_type,
            source: source.or(*other_source),
            target: target.or(*other_target),
        },
        (
            Identifier::Telegram { source, target, starts },
            Identifier::Telegram { source: other_source, target: other_target, .. },
        ) => Identifier::Telegram {
            source: source.or(*other_source),
            target: target.or(*other_target),
            starts: starts.clone(),
        },
        _ => one.clone(),
    }
}
