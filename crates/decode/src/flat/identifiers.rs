//! How the frames of a flat table are recognised.

use wirelore_lorec::layout::{EXTENDED, NONE, Section};
use wirelore_model::{Database, FrameId, Identifier, NetworkId};

use super::sections::Sections;
use crate::spans::{Run, Spans};

/// Appends the networks. Single identifiers go before runs, and otherwise the description's order decides; of parameter groups those that
/// take fewer identifiers go first.
pub(super) fn write(database: &Database, sections: &mut Sections) {
    for (network, id) in database.networks.iter().zip((0..).map(NetworkId)) {
        let first_run = sections.count(Section::Runs);
        for extended in [false, true] {
            let flag = if extended { EXTENDED } else { 0 };
            for run in runs(database, id, extended).runs() {
                let [first, last] = [run.first, run.last].map(|end| end as u32 | flag);
                sections.push(Section::Runs, [first, last, run.what.0]);
            }
        }
        let runs = sections.count(Section::Runs) - first_run;
        let first_group = sections.count(Section::Groups);
        for group in groups(database, id) {
            sections.push(Section::Groups, group);
        }
        let groups = sections.count(Section::Groups) - first_group;
        let [start, length] = sections.text(&network.label.name);
        sections.push(Section::Networks, [start, length, first_run, runs, first_group, groups]);
    }
}

/// How the frames of one network are recognised.
fn seen_on(database: &Database, network: NetworkId) -> impl Iterator<Item = (&Identifier, FrameId)> {
    let frames = database.frames.iter().zip((0..).map(FrameId));
    let seen = frames.flat_map(|(frame, id)| frame.seen_on.iter().map(move |seen| (seen, id)));
    seen.filter(move |(seen, _)| seen.network == network).map(|(seen, id)| (&seen.identifier, id))
}

fn runs(database: &Database, network: NetworkId, wanted: bool) -> Spans<FrameId> {
    let run = |(identifier, what): (&Identifier, FrameId)| match *identifier {
        Identifier::Can { first, last, extended } if extended == wanted => {
            Some(Run { first: first.into(), last: last.into(), what })
        }
        Identifier::Lin { id, .. } if !wanted => Some(Run { first: id.into(), last: id.into(), what }),
        _ => None,
    };
    let mut runs: Vec<_> = seen_on(database, network).filter_map(run).collect();
    runs.sort_by_key(|run| run.first != run.last);
    Spans::first_wins(runs)
}

fn groups(database: &Database, network: NetworkId) -> Vec<[u32; 11]> {
    let mut groups: Vec<_> = seen_on(database, network)
        .filter_map(|(identifier, frame)| match identifier {
            Identifier::Pgn { pgn, sources, priority } => Some((*pgn, sources, *priority, frame)),
            _ => None,
        })
        .collect();
    groups.sort_by_key(|(pgn, sources, priority, frame)| (*pgn, sources.is_empty(), priority.is_none(), *frame));
    let record = |(pgn, sources, priority, frame): (u32, &Vec<u8>, Option<u8>, FrameId)| {
        let mut bits = if sources.is_empty() { [u32::MAX; 8] } else { [0; 8] };
        for &source in sources {
            bits[usize::from(source / 32)] |= 1 << (source % 32);
        }
        let mut record = [0; 11];
        record[..3].copy_from_slice(&[pgn, priority.map_or(NONE, u32::from), frame.0]);
        record[3..].copy_from_slice(&bits);
        record
    };
    groups.into_iter().map(record).collect()
}

#[cfg(test)]
mod tests {
    use wirelore_lorec::Lorec;

    use super::*;
    use crate::flat::lorec;
    use crate::testing::{frame, id, network, unsigned};

    /// As where frames are decoded; a description in the language has no such overlaps.
    #[test]
    fn single_identifiers_go_before_runs() {
        let run = Identifier::Can { first: 0x100, last: 0x10F, extended: false };
        let signal = || vec![unsigned("s", "0.7..0.0")];
        let frames = vec![frame("run", run, signal()), frame("single", id(0x105), signal())];
        let database = crate::testing::database(vec![network("drive", wirelore_model::NetworkKind::Can)], frames);
        let table = lorec(&database).expect("it can be written");
        let table = Lorec::new(&table).expect("it was just written");
        let drive = table.network("drive").expect("it is described");
        let found = |id| drive.find(id, false).map(|frame| frame.name());
        assert_eq!(
            [0xFF, 0x100, 0x104, 0x105, 0x106, 0x10F, 0x110].map(found),
            [None, Some("run"), Some("run"), Some("single"), Some("run"), Some("run"), None]
        );
    }
}
