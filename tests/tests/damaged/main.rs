//! The demo recordings, cut at every byte and with every bit turned: what lies before the damage stays as it was, what lies behind is found
//! again, and what is lost is told with its place.
//!
//! A sample runs with the other tests; `WIRELORE_LONG=1 cargo test --workspace --test damaged -- --nocapture` runs all of it.

mod compare;

use std::num::NonZero;
use std::ops::AddAssign;
use std::thread;
use std::time::Instant;

use compare::{Found, Harm, Whole};
use wirelore_log::PlaceInLog;

/// So much of each recording has its bits turned, and so much of it is read then.
const TURNED_BYTES: usize = 64 * 1024;
const READ_BYTES: usize = 80 * 1024;

/// How many frames one turned bit may cost: the one that it hits, and in a text the next one too, where it hits the end of a line.
const MOST_LOST: usize = 2;

/// How far the sampled places lie apart: prime numbers, so that all parts of a block and all bits have their turn.
struct Steps {
    cut: usize,
    flip: usize,
}

#[derive(Debug, Default, Clone, Copy)]
struct Counts {
    tried: u64,
    /// The recording does not open any more, and says why.
    refused: u64,
    told: u64,
    /// Frames are gone, and nobody is told.
    silent: u64,
    /// Frames have other content, and nobody is told: neither container has a checksum.
    believed: u64,
    /// By the number of frames that are lost, and in the last place those of more.
    lost: [u64; MOST_LOST + 2],
}

impl AddAssign for Counts {
    fn add_assign(&mut self, other: Self) {
        self.tried += other.tried;
        self.refused += other.refused;
        self.told += other.told;
        self.silent += other.silent;
        self.believed += other.believed;
        self.lost.iter_mut().zip(other.lost).for_each(|(sum, count)| *sum += count);
    }
}

impl Counts {
    fn of(found: &Found) -> Self {
        let gone = found.lost.saturating_sub(found.foreign);
        let mut counts = Self { tried: 1, told: u64::from(found.is_told()), ..Self::default() };
        counts.silent = u64::from(gone > 0 && !found.is_told());
        counts.believed = u64::from(found.foreign > 0 && !found.is_told());
        counts.lost[found.lost.min(MOST_LOST + 1)] = 1;
        counts
    }
}

fn is_long() -> bool {
    std::env::var_os("WIRELORE_LONG").is_some_and(|value| value == "1")
}

/// Tries many places, all threads of the machine together.
fn try_all(whole: &Whole, places: &[Harm], one: impl Fn(&Whole, Harm) -> Counts + Sync) -> Counts {
    let threads = thread::available_parallelism().map_or(1, NonZero::get);
    let begun = Instant::now();
    let mut all = Counts::default();
    let part = |first: usize| {
        let mut sum = Counts::default();
        places.iter().skip(first).step_by(threads).for_each(|harm| sum += one(whole, *harm));
        sum
    };
    let part = &part;
    thread::scope(|scope| {
        let running: Vec<_> = (0..threads).map(|first| scope.spawn(move || part(first))).collect();
        running.into_iter().for_each(|thread| all += thread.join().expect("no place makes it panic"));
    });
    println!("{}: {all:?} in {:.0} s", whole.name, begun.elapsed().as_secs_f64());
    all
}

fn cut(name: &'static str, steps: &Steps) {
    let whole = Whole::demo(name);
    let step = if is_long() { 1 } else { steps.cut };
    let places: Vec<Harm> = (0..whole.bytes.len()).step_by(step).map(Harm::Cut).collect();
    let counts = try_all(&whole, &places, |whole, harm| {
        let Harm::Cut(cut) = harm else { unreachable!("these are cuts") };
        let Some(found) = whole.damaged(harm) else {
            assert!(cut < whole.head_bytes, "{name} cut at {cut} does not open");
            return Counts { tried: 1, refused: 1, ..Counts::default() };
        };
        let sure = whole.frames_before(cut);
        // The last line of a text may lack nothing but its end, or make sense all the same.
        let more = found.same_before - sure;
        assert!(more == 0 || (whole.is_text && more == 1), "{name} cut at {cut}: {found:?}");
        assert!(found.foreign <= usize::from(whole.is_text), "{name} cut at {cut}: {found:?}");
        if cut > whole.head_bytes && !whole.is_between_frames(cut) {
            // Then a note tells its number, and that it has no end.
            let is_noted = whole.is_text && found.foreign + more == 1 && found.is_told();
            let has_place = found.place() == Some(whole.frames[sure].place());
            assert!(is_noted || has_place, "{name} cut at {cut}: {found:?}");
        }
        Counts::of(&found)
    });
    assert!(counts.told > counts.tried / 2 && counts.silent < counts.tried / 20, "{counts:?}");
}

fn turned(name: &'static str, steps: &Steps) {
    let whole = Whole::beginning(name, READ_BYTES);
    let step = if is_long() { 1 } else { steps.flip };
    let bits = 8 * whole.bytes.len().min(TURNED_BYTES);
    let places: Vec<Harm> = (0..bits).step_by(step).map(|bit| Harm::Flip(bit / 8, (bit % 8) as u8)).collect();
    let (head, body): (Vec<Harm>, Vec<Harm>) =
        places.iter().partition(|harm| matches!(harm, Harm::Flip(byte, _) if *byte < whole.head_bytes));
    // What describes the frames may make others of them all, or none; it does not bring the reader down.
    try_all(&whole, &head, |whole, harm| match whole.damaged(harm) {
        Some(found) => Counts::of(&found),
        None => Counts { tried: 1, refused: 1, ..Counts::default() },
    });
    let counts = try_all(&whole, &body, |whole, harm| {
        let found = whole.damaged(harm).unwrap_or_else(|| panic!("{name}, {harm:?}: it does not open"));
        turned_in_a_frame(whole, harm, &found);
        Counts::of(&found)
    });
    assert!(counts.told > counts.tried / 20, "{counts:?}");
}

fn turned_in_a_frame(whole: &Whole, harm: Harm, found: &Found) {
    let name = whole.name;
    let Harm::Flip(byte, _) = harm else { unreachable!("these are turned bits") };
    let hit = whole.frames_before(byte);
    assert!(found.same_before >= hit, "{name}, {harm:?}: what lies before is not the same: {found:?}");
    let most_lost = if whole.is_text { MOST_LOST } else { 1 };
    assert!(found.lost <= most_lost && found.foreign <= found.lost + 1, "{name}, {harm:?}: {found:?}");
    if let Some(place) = found.place() {
        let expected = whole.frames[hit].place();
        let is_there = match (place, expected) {
            // The line end itself may be what is damaged, or one may have come up.
            (PlaceInLog::Line(told), PlaceInLog::Line(line)) => (line..=line + 1).contains(&told),
            _ => place == expected,
        };
        assert!(is_there, "{name}, {harm:?}: {place} is told, {expected} is damaged");
    }
    let is_gone = found.lost > found.foreign;
    assert!(found.is_told() || !is_gone, "{name}, {harm:?}: a frame is gone in silence: {found:?}");
}

const DRIVE: Steps = Steps { cut: 131, flip: 61 };
const OTHERS: Steps = Steps { cut: 61, flip: 101 };
const TEXT: Steps = Steps { cut: 3, flip: 19 };

#[test]
fn the_drive_cut() {
    cut("town-drive.pcapng", &DRIVE);
}

#[test]
fn the_drive_with_a_bit_turned() {
    turned("town-drive.pcapng", &DRIVE);
}

#[test]
fn the_other_networks_cut() {
    cut("town-drive-others.pcapng", &OTHERS);
}

#[test]
fn the_other_networks_with_a_bit_turned() {
    turned("town-drive-others.pcapng", &OTHERS);
}

#[test]
fn the_texts_cut() {
    cut("town-drive-heater.csv", &TEXT);
    cut("town-drive-sound.csv", &TEXT);
}

#[test]
fn the_texts_with_a_bit_turned() {
    turned("town-drive-heater.csv", &TEXT);
    turned("town-drive-sound.csv", &TEXT);
}
