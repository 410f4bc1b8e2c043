//! Where each identifier's frames go, found out once for each that turns up.
//!
//! Everything that decides about a frame, but for its time, depends on its channel and its identifier alone: the network and whether
//! it is wanted, the description, whether any of its signals is. So the answer is kept, in a table by 11-bit identifier and in a
//! small one of 29-bit identifiers by multiplicative hashing, where a later identifier takes the place of an earlier one.

use wirelore_log::{Channel, PlainRun};

/// 11-bit identifiers.
const STANDARD_IDS: usize = 1 << 11;
/// The places for 29-bit identifiers: a power of two, several times as many as a network has.
const EXTENDED_PLACES: usize = 1 << EXTENDED_BITS;
const EXTENDED_BITS: u32 = 11;
/// No identifier.
const NO_ID: u32 = u32::MAX;

/// What is known of an identifier.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Way(u32);

impl Way {
    /// Nothing yet, or that its frames do not go into a table: to be looked at frame by frame.
    const OPEN: Self = Self(u32::MAX);
    const IS_GROUP: u32 = 1 << 31;

    /// Into the table of this number; `is_group`: the low byte of the identifier says who sent it.
    pub(super) fn to(table: usize, is_group: bool) -> Self {
        let table = u32::try_from(table).ok().filter(|table| *table < Self::IS_GROUP - 1);
        table.map_or(Self::OPEN, |table| Self(table | if is_group { Self::IS_GROUP } else { 0 }))
    }

    /// The table; none has the number of an open way.
    pub(super) fn table(self) -> usize {
        (self.0 & !Self::IS_GROUP) as usize
    }

    /// The table, where the identifier is that of a frame and not that of a group; else a number that no table has.
    #[inline(always)]
    pub(super) fn table_of_frame(self) -> usize {
        self.0 as usize
    }

    pub(super) fn is_group(self) -> bool {
        self.0 & Self::IS_GROUP != 0
    }
}

/// The ways of all channels.
#[derive(Debug, Default)]
pub(super) struct Lanes {
    /// By channel and 11-bit identifier, in one row: one look tells the way.
    standard: Vec<Way>,
    /// By channel and place.
    extended: Vec<(u32, Way)>,
}

/// Fibonacci hashing: Knuth, TAOCP volume 3, section 6.4.
#[inline(always)]
fn place(channel: Channel, id: u32) -> usize {
    let place = (id.wrapping_mul(0x9E37_79B9) >> (u32::BITS - EXTENDED_BITS)) as usize;
    usize::from(channel.0) * EXTENDED_PLACES + place
}

impl Lanes {
    /// Forgets everything: another log begins.
    pub(super) fn clear(&mut self) {
        self.standard.clear();
        self.extended.clear();
    }

    /// The way of an identifier.
    #[inline(always)]
    pub(super) fn way(&self, channel: Channel, id: u32, extended: bool) -> Way {
        self.ways().way(channel, id | if extended { PlainRun::EXTENDED } else { 0 })
    }

    /// What is known, to be looked up for many frames.
    #[inline(always)]
    pub(super) fn ways(&self) -> Ways<'_> {
        Ways { standard: &self.standard, extended: &self.extended }
    }

    /// Keeps what was found out about an identifier.
    #[inline(never)]
    pub(super) fn learn(&mut self, channel: Channel, id: u32, extended: bool, way: Way) {
        let lanes = usize::from(channel.0) + 1;
        if extended {
            if self.extended.len() < lanes * EXTENDED_PLACES {
                self.extended.resize(lanes * EXTENDED_PLACES, (NO_ID, Way::OPEN));
            }
            self.extended[place(channel, id)] = (id, way);
        } else if (id as usize) < STANDARD_IDS {
            if self.standard.len() < lanes * STANDARD_IDS {
                self.standard.resize(lanes * STANDARD_IDS, Way::OPEN);
            }
            self.standard[usize::from(channel.0) * STANDARD_IDS + id as usize] = way;
        }
    }
}

/// The ways of all channels, lent: a loop that writes elsewhere has their places in registers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ways<'a> {
    standard: &'a [Way],
    extended: &'a [(u32, Way)],
}

impl Ways<'_> {
    /// The way of an identifier, given as a [run](PlainRun::ids) has it.
    #[inline(always)]
    pub(super) fn way(self, channel: Channel, id: u32) -> Way {
        if (id as usize) < STANDARD_IDS {
            let at = usize::from(channel.0) * STANDARD_IDS + id as usize;
            return self.standard.get(at).copied().unwrap_or(Way::OPEN);
        }
        let extended_id = id & !PlainRun::EXTENDED;
        match self.extended.get(place(channel, extended_id)) {
            Some(&(known, way)) if id != extended_id && known == extended_id => way,
            _ => Way::OPEN,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_learnt_is_known_and_nothing_else() {
        let mut lanes = Lanes::default();
        let (one, other) = (Channel(0), Channel(3));
        assert_eq!(lanes.way(one, 5, false), Way::OPEN);
        lanes.learn(other, 5, false, Way::to(7, false));
        lanes.learn(other, 0x18FE_F100, true, Way::to(8, true));
        assert_eq!((lanes.way(other, 5, false).table(), lanes.way(other, 5, false).is_group()), (7, false));
        assert_eq!(lanes.way(other, 0x18FE_F100, true), Way::to(8, true));
        assert_eq!(lanes.way(other, 5, true), Way::OPEN);
        assert_eq!(lanes.way(one, 0x18FE_F100, true), Way::OPEN, "another channel");
        // No identifier of 11 bits, so not one of the next channel either.
        lanes.learn(other, STANDARD_IDS as u32, false, Way::to(9, false));
        assert_eq!(lanes.way(other, STANDARD_IDS as u32, false), Way::OPEN);
        assert_eq!(lanes.way(Channel(4), 0, false), Way::OPEN);
        assert_eq!(lanes.way(one, 5, false), Way::OPEN);
        // Every identifier of 29 bits has a place, shared with others; a stranger is never taken for the one that is known.
        for id in (0..1 << 29).step_by(9973) {
            lanes.learn(one, id, true, Way::to(id as usize, false));
            assert_eq!(lanes.way(one, id, true).table(), id as usize);
            assert_eq!(lanes.way(one, id ^ 1, true), Way::OPEN);
        }
        lanes.clear();
        assert_eq!(lanes.way(other, 5, false), Way::OPEN);
    }
}
