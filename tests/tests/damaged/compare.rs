//! A recording, the same one damaged, and how many frames the damage has cost.

use std::fs;
use std::io::{self, Read};
use std::sync::Arc;

use wirelore_log::{Channel, Damage, Frame, Options, PlaceInLog, Recording, Report};
use wirelore_tests::drive::demo_folder;

/// No damage is followed further than over so many frames that are not there.
const MOST_MISSING: usize = 64;

/// What is done to a recording.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Harm {
    /// It ends before this byte.
    Cut(usize),
    /// This bit of this byte is the other one.
    Flip(usize, u8),
}

/// A frame with its own bytes; the one inside has none.
#[derive(Debug)]
pub(crate) struct Kept {
    frame: Frame<'static>,
    payload: Vec<u8>,
}

impl Kept {
    fn of(frame: &Frame<'_>) -> Self {
        Self { frame: Frame { payload: &[], ..*frame }, payload: frame.payload.to_vec() }
    }

    pub(crate) fn place(&self) -> PlaceInLog {
        self.frame.place
    }

    /// Whether all is the same but the number of the channel, which is compared by its name, and the place.
    fn says(&self, frame: &Frame<'_>) -> bool {
        let (channel, place) = (self.frame.channel, self.frame.place);
        self.payload == frame.payload && self.frame == Frame { payload: &[], channel, place, ..*frame }
    }
}

/// A demo recording as it is.
pub(crate) struct Whole {
    pub(crate) name: &'static str,
    pub(crate) bytes: Arc<[u8]>,
    pub(crate) frames: Vec<Kept>,
    /// Where each frame ends: the next line or block begins there.
    ends: Vec<usize>,
    channels: Vec<String>,
    notes: Vec<String>,
    /// What stands before the first frame.
    pub(crate) head_bytes: usize,
    pub(crate) is_text: bool,
}

impl Whole {
    pub(crate) fn demo(name: &'static str) -> Self {
        Self::of(name, fs::read(demo_folder().join(name)).expect("the demo recording is there").into())
    }

    /// The beginning of one, of so many bytes at most: whole frames.
    pub(crate) fn beginning(name: &'static str, most_bytes: usize) -> Self {
        let demo = Self::demo(name);
        let end = demo.ends[demo.frames_before(most_bytes) - 1];
        Self::of(name, demo.bytes[..end].into())
    }

    fn of(name: &'static str, bytes: Arc<[u8]>) -> Self {
        let mut recording = open(&bytes, Harm::Cut(bytes.len())).expect("it opens");
        let mut frames = Vec::new();
        while let Some(frame) = recording.next().expect("memory can be read") {
            frames.push(Kept::of(&frame));
        }
        let report = recording.report();
        assert_eq!((report.damaged, &report.lost_tail), (0, &None), "{name}");
        let line_ends: Vec<usize> = (1..=bytes.len()).filter(|end| bytes[end - 1] == b'\n').collect();
        let begins: Vec<usize> = frames.iter().map(|kept| begin_of(kept.place(), &line_ends)).collect();
        let is_text = matches!(frames[0].place(), PlaceInLog::Line(_));
        let ends = begins.iter().copied().skip(1).chain([bytes.len()]).collect();
        let channels = recording.channels().iter().map(|channel| channel.name.clone()).collect();
        let notes = report.notes();
        Self { name, head_bytes: begins[0], bytes, frames, ends, channels, notes, is_text }
    }

    /// How many frames lie wholly before a byte.
    pub(crate) fn frames_before(&self, byte: usize) -> usize {
        self.ends.partition_point(|end| *end <= byte)
    }

    /// Whether a frame ends just before this byte.
    pub(crate) fn is_between_frames(&self, byte: usize) -> bool {
        byte == self.head_bytes || self.ends.binary_search(&byte).is_ok()
    }

    /// Reads the damaged recording; `None` where it does not open any more, which is an error that says why.
    pub(crate) fn damaged(&self, harm: Harm) -> Option<Found> {
        let mut recording = match open(&self.bytes, harm) {
            Ok(recording) => recording,
            Err(error) => {
                assert!(!error.to_string().is_empty());
                return None;
            }
        };
        let mut comparison = Comparison::new(self);
        // The two ways of reading take turns.
        if matches!(harm, Harm::Cut(at) | Harm::Flip(at, _) if at % 2 == 0) {
            while let Some(frame) = recording.next().expect("memory can be read") {
                comparison.frame(&frame);
            }
        } else {
            while recording.stretch(64 * 1024, &mut |frame: &Frame<'_>| comparison.frame(frame)).expect("memory") {}
        }
        let names: Vec<&str> = recording.channels().iter().map(|channel| channel.name.as_str()).collect();
        Some(comparison.finish(&names, recording.report().clone()))
    }
}

fn begin_of(place: PlaceInLog, line_ends: &[usize]) -> usize {
    match place {
        PlaceInLog::Line(number) => line_ends[number as usize - 2],
        PlaceInLog::Block { offset, .. } => offset as usize,
    }
}

fn open(bytes: &Arc<[u8]>, harm: Harm) -> Result<Recording, wirelore_log::LogError> {
    let reader = Harmed { bytes: Arc::clone(bytes), harm, at: 0 };
    Recording::from_reader(Box::new(reader), "damaged", &Options::default())
}

/// The bytes of a damaged recording.
struct Harmed {
    bytes: Arc<[u8]>,
    harm: Harm,
    at: usize,
}

impl Read for Harmed {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let end = if let Harm::Cut(end) = self.harm { end } else { self.bytes.len() };
        let count = buffer.len().min(end - self.at);
        buffer[..count].copy_from_slice(&self.bytes[self.at..self.at + count]);
        if let Harm::Flip(byte, bit) = self.harm
            && (self.at..self.at + count).contains(&byte)
        {
            buffer[byte - self.at] ^= 1 << bit;
        }
        self.at += count;
        Ok(count)
    }
}

/// Holds the frames of the damaged recording against those of the whole one, in order.
struct Comparison<'w> {
    whole: &'w Whole,
    next: usize,
    same_before: usize,
    matched: usize,
    read: usize,
    /// The channels of frames that are the same otherwise: in the whole recording, in the damaged one, and how often.
    channels: Vec<(Channel, Channel, usize)>,
}

impl<'w> Comparison<'w> {
    fn new(whole: &'w Whole) -> Self {
        Self { whole, next: 0, same_before: 0, matched: 0, read: 0, channels: Vec::new() }
    }

    fn frame(&mut self, frame: &Frame<'_>) {
        let ahead = &self.whole.frames[self.next..];
        let found = ahead.iter().take(MOST_MISSING).position(|kept| kept.says(frame));
        let found = found.map(|missing| (missing, &ahead[missing].frame));
        if let Some((missing, kept)) = found {
            let is_unharmed = self.same_before == self.read && missing == 0 && kept.place == frame.place;
            self.same_before += usize::from(is_unharmed);
            self.matched += 1;
            self.next += missing + 1;
            self.count(kept.channel, frame.channel);
        }
        self.read += 1;
    }

    fn count(&mut self, whole: Channel, damaged: Channel) {
        match self.channels.iter_mut().find(|(one, other, _)| (*one, *other) == (whole, damaged)) {
            Some((.., count)) => *count += 1,
            None => self.channels.push((whole, damaged, 1)),
        }
    }

    fn finish(self, names: &[&str], report: Report) -> Found {
        let name = |channel: Channel| &self.whole.channels[usize::from(channel.0)];
        let is_other = |whole: Channel, damaged: Channel| name(whole) != names[usize::from(damaged.0)];
        let moved = self.channels.iter().filter(|(whole, damaged, _)| is_other(*whole, *damaged));
        let matched = self.matched - moved.map(|(.., count)| count).sum::<usize>();
        assert_eq!(report.frames_read() - report.damaged, self.read as u64, "every frame is counted");
        Found {
            same_before: self.same_before,
            lost: self.whole.frames.len() - matched,
            foreign: self.read - matched,
            has_news: report.notes() != self.whole.notes,
            report,
        }
    }
}

/// What is left of a damaged recording.
#[derive(Debug)]
pub(crate) struct Found {
    /// Frames from the beginning on that are the same, place and all.
    pub(crate) same_before: usize,
    /// Frames of the whole recording that are not among those of the damaged one.
    pub(crate) lost: usize,
    /// Frames that the whole recording does not have: most are a lost one with other content.
    pub(crate) foreign: usize,
    /// Whether the notes say something that they do not say of the whole recording.
    has_news: bool,
    report: Report,
}

impl Found {
    /// Whether a person is told that something is wrong.
    pub(crate) fn is_told(&self) -> bool {
        self.has_news || self.place().is_some()
    }

    /// The first place that is told.
    pub(crate) fn place(&self) -> Option<PlaceInLog> {
        let places = self.report.damage.iter().chain(&self.report.lost_tail);
        places.map(|Damage { place, .. }| *place).next()
    }
}
