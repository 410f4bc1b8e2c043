//! Words and counts for the notes of a report.

use std::collections::BTreeMap;

use crate::frame::PlaceInLog;

/// How many different link types are told by their own number.
const LINK_TYPES_TOLD: usize = 8;

/// Something that happened more than once: how often, and where first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Occasions {
    pub(crate) count: u64,
    pub(crate) first: PlaceInLog,
}

impl Occasions {
    /// Counts one more, which may be the first.
    pub(crate) fn add(occasions: &mut Option<Self>, place: PlaceInLog) {
        occasions.get_or_insert(Self { count: 0, first: place }).count += 1;
    }

    /// Adds those of the piece behind, whose places count from `before` lines or blocks on.
    pub(crate) fn join(occasions: &mut Option<Self>, piece: Option<Self>, before: u64) {
        if let Some(Self { count, first }) = piece {
            occasions.get_or_insert(Self { count: 0, first: first.behind(before) }).count += count;
        }
    }
}

/// A count with its noun.
pub(crate) fn counted(count: u64, noun: &str) -> String {
    format!("{count} {noun}{}", if count == 1 { "" } else { "s" })
}

/// Packets of link types that are not read here, by the number in the public registry.
#[derive(Debug, Clone, Default)]
pub(crate) struct LinkTypes {
    by_number: BTreeMap<u16, u64>,
}

impl LinkTypes {
    /// Counts one packet.
    pub(crate) fn count(&mut self, link_type: u16) {
        *self.by_number.entry(link_type).or_default() += 1;
    }

    /// Whether there was no such packet.
    pub(crate) fn is_empty(&self) -> bool {
        self.by_number.is_empty()
    }

    /// Adds those of another piece of the log.
    pub(crate) fn join(&mut self, piece: Self) {
        for (number, count) in piece.by_number {
            *self.by_number.entry(number).or_default() += count;
        }
    }

    /// One sentence about all of them; `None` where there are none.
    pub(crate) fn note(&self) -> Option<String> {
        let by_number = || self.by_number.iter();
        let mut kinds: Vec<String> =
            by_number().take(LINK_TYPES_TOLD).map(|(&number, &count)| of_type(number, count)).collect();
        let of_more_types: u64 = by_number().skip(LINK_TYPES_TOLD).map(|(_, count)| count).sum();
        if of_more_types > 0 {
            kinds.push(format!("{} of more types", counted(of_more_types, "packet")));
        }
        let is_one_packet = self.by_number.values().sum::<u64>() == 1;
        let are = if is_one_packet { "is" } else { "are" };
        (!kinds.is_empty()).then(|| format!("{} {are} not read", kinds.join(", ")))
    }
}

fn of_type(number: u16, count: u64) -> String {
    // The registry has names for these two, and no layout.
    let name = match number {
        190 => " (CAN20B, of which no layout is published)",
        211 => " (MOST, of which no layout is published)",
        _ => "",
    };
    format!("{} of link type {number}{name}", counted(count, "packet"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn note(link_types: impl IntoIterator<Item = u16>) -> Option<String> {
        let mut counts = LinkTypes::default();
        link_types.into_iter().for_each(|number| counts.count(number));
        counts.note()
    }

    #[test]
    fn link_types_by_number_and_name() {
        // Source of the names: public link-type registry.
        assert_eq!(note([]), None);
        assert_eq!(note([147]).as_deref(), Some("1 packet of link type 147 is not read"));
        assert_eq!(
            note([190, 190, 211, 147]).as_deref(),
            Some(
                "1 packet of link type 147, 2 packets of link type 190 (CAN20B, of which no layout is published), \
                 1 packet of link type 211 (MOST, of which no layout is published) are not read"
            )
        );
    }

    #[test]
    fn many_link_types_make_no_long_sentence() {
        let sentence = note(0..1000).expect("there are some");
        assert!(sentence.ends_with("1 packet of link type 7, 992 packets of more types are not read"), "{sentence}");
    }
}
