//! Copies of the first frames of a log, kept until it is known which networks they belong to.

use std::ops::Range;

use wirelore_log::{Channel, Frame, Kind};

/// How many frames are kept at most before the decision: at a usual 2,000 frames per second and network, several seconds.
pub(super) const SAMPLE_FRAMES: usize = 20_000;

/// What a session needs of a frame, lent by the recording or by the sample.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen<'a> {
    pub(super) time_ns: Option<i64>,
    pub(super) channel: Channel,
    pub(super) id: u32,
    pub(super) extended: bool,
    pub(super) kind: Kind,
    pub(super) payload: &'a [u8],
}

impl<'a> From<&Frame<'a>> for Seen<'a> {
    #[inline(always)]
    fn from(frame: &Frame<'a>) -> Self {
        let &Frame { time_ns, channel, id, extended, kind, payload, .. } = frame;
        Self { time_ns, channel, id, extended, kind, payload }
    }
}

/// Frames with their payloads in one run of bytes.
#[derive(Debug, Default)]
pub(super) struct Sample {
    frames: Vec<(Seen<'static>, Range<usize>)>,
    bytes: Vec<u8>,
}

impl Sample {
    #[inline(never)]
    pub(super) fn push(&mut self, seen: &Seen<'_>) {
        let start = self.bytes.len();
        self.bytes.extend_from_slice(seen.payload);
        let &Seen { time_ns, channel, id, extended, kind, .. } = seen;
        self.frames.push((Seen { time_ns, channel, id, extended, kind, payload: &[] }, start..self.bytes.len()));
    }

    pub(super) fn is_empty(&self) -> bool {
        self.frames.is_empty()
    }

    pub(super) fn is_full(&self) -> bool {
        self.frames.len() >= SAMPLE_FRAMES
    }

    pub(super) fn frames(&self) -> impl Iterator<Item = Seen<'_>> {
        self.frames.iter().map(|frame| self.lend(frame))
    }

    fn lend(&self, (seen, bytes): &(Seen<'static>, Range<usize>)) -> Seen<'_> {
        Seen { payload: self.bytes.get(bytes.clone()).unwrap_or_default(), ..*seen }
    }
}
