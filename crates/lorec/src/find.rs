//! From an identifier to its frame.

use wirelore_bits::typed::pgn_of;

use crate::frame::Frame;
use crate::layout::{EXTENDED, NONE, Section};
use crate::table::Lorec;

/// A network of a table.
#[derive(Debug, Clone, Copy)]
pub struct Network<'a> {
    table: Lorec<'a>,
    name: &'a str,
    runs: (u32, u32),
    groups: (u32, u32),
}

impl<'a> Network<'a> {
    pub(crate) fn at(table: Lorec<'a>, index: u32) -> Option<Self> {
        let [start, length, first_run, runs, first_group, groups] = table.record(Section::Networks, index)?;
        Some(Self { table, name: table.text(start, length), runs: (first_run, runs), groups: (first_group, groups) })
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &'a str {
        self.name
    }

    /// The frame with this identifier (CAN with `extended` for 29 bits, LIN without): a single identifier goes before a run of them, and both go
    /// before a parameter group.
    #[must_use]
    pub fn find(&self, id: u32, extended: bool) -> Option<Frame<'a>> {
        if id >= EXTENDED {
            return None;
        }
        let key = if extended { id | EXTENDED } else { id };
        let frame = self.in_runs(key).or_else(|| if extended { self.in_groups(id) } else { None })?;
        Frame::at(self.table, frame)
    }

    fn in_runs(&self, key: u32) -> Option<u32> {
        let (first, count) = self.runs;
        let run = |at: u32| self.table.record::<3>(Section::Runs, first.checked_add(at)?);
        let behind = partition(count, |at| run(at).is_some_and(|[begin, ..]| begin <= key));
        let [_, last, frame] = run(behind.checked_sub(1)?)?;
        (key <= last).then_some(frame)
    }

    fn in_groups(&self, id: u32) -> Option<u32> {
        let (first, count) = self.groups;
        let group = |at: u32| self.table.record::<11>(Section::Groups, first.checked_add(at)?);
        let wanted = pgn_of(id);
        let begin = partition(count, |at| group(at).is_some_and(|[number, ..]| number < wanted));
        for at in begin..count {
            let [number, priority, frame, sources @ ..] = group(at)?;
            if number != wanted {
                return None;
            }
            let source = id as u8;
            let word = sources.get(usize::from(source / 32)).copied().unwrap_or_default();
            if word >> (source % 32) & 1 == 1 && (priority == NONE || priority == id >> 26) {
                return Some(frame);
            }
        }
        None
    }
}

/// How many of the first numbers below `count` pass, where those that pass stand in front of those that do not.
pub(crate) fn partition(count: u32, mut passes: impl FnMut(u32) -> bool) -> u32 {
    let (mut low, mut high) = (0, count);
    while low < high {
        let middle = low + (high - low) / 2;
        if passes(middle) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    low
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn halving_finds_the_border() {
        for count in 0..20 {
            for border in 0..=count {
                assert_eq!(partition(count, |at| at < border), border);
            }
        }
    }
}
