//! All streams of a network.

use rustc_hash::FxHashMap;

use super::stream::{Place, Stream};
use super::{End, Flow, Piece, Segment, Taken};

/// What the streams of a network may take of the memory.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// How many streams there may be at once; each direction of a connection is one.
    pub streams: usize,
    /// How many bytes of one stream may wait for those before them.
    pub waiting_bytes: usize,
    /// How many bytes of all streams may wait; the stream that exceeds it waits no longer.
    pub all_waiting_bytes: usize,
}

impl Default for Limits {
    /// 4096 streams, of each 256 KiB, of all 32 MiB.
    fn default() -> Self {
        Self { streams: 4096, waiting_bytes: 256 << 10, all_waiting_bytes: 32 << 20 }
    }
}

/// The TCP streams of one network, fed segments in the order of the recording.
///
/// Missing bytes are waited for until the receiver confirms bytes behind them, or more wait than the [limits](Limits) allow, or a segment
/// comes that lies further ahead than could wait, or a segment of the stream comes more than 100 seconds after what waits, or the stream
/// ends: then they are told as a gap and the stream goes on behind them.
#[derive(Debug)]
pub struct Streams<S> {
    limits: Limits,
    prototype: S,
    streams: FxHashMap<Flow, Stream<S>>,
    segments: u64,
    waiting_bytes: usize,
}

impl<S: Clone> Streams<S> {
    /// None yet. Each stream begins with a copy of `prototype` as the state beside it.
    #[must_use]
    pub fn new(limits: Limits, prototype: S) -> Self {
        Self { limits, prototype, streams: FxHashMap::default(), segments: 0, waiting_bytes: 0 }
    }

    /// Takes the next segment; `tell` is called with the state of the stream for all that becomes of it.
    pub fn feed(
        &mut self,
        time_ns: Option<i64>,
        segment: &Segment<'_>,
        tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>),
    ) -> Taken {
        self.segments += 1;
        let flow = segment.flow;
        if segment.reset {
            self.with(flow, |stream| stream.end(End::Reset, tell));
            self.with(flow.reversed(), |stream| stream.end(End::Reset, tell));
            return Taken::Control;
        }
        if let Some(confirmed) = segment.acknowledged {
            self.with(flow.reversed(), |stream| stream.confirm(confirmed, tell));
        }
        // A SYN takes a sequence number of its own.
        let first = segment.sequence.wrapping_add(u32::from(segment.syn));
        let Some(at) = self.place(segment, first, tell) else { return Taken::Control };
        let (segments, others) = (self.segments, self.waiting_bytes);
        let Limits { waiting_bytes, all_waiting_bytes, .. } = self.limits;
        let mut taken = Taken::Control;
        self.with(flow, |stream| {
            stream.last_used = segments;
            if stream.state.is_none() {
                taken = if segment.payload.is_empty() { Taken::Control } else { Taken::Repeated };
                return;
            }
            let others = others - stream.waiting_bytes;
            taken = stream.take(time_ns, (at, segment), waiting_bytes, tell);
            while stream.waiting_bytes > 0 && others + stream.waiting_bytes > all_waiting_bytes {
                stream.give_up_first(tell);
            }
        });
        taken
    }

    /// The recording has ended: so do all streams, in the order in which they were last seen.
    pub fn finish(&mut self, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        let mut streams: Vec<_> = std::mem::take(&mut self.streams).into_values().collect();
        streams.sort_unstable_by_key(|stream| stream.last_used);
        for mut stream in streams {
            stream.end(End::LogEnd, tell);
        }
        self.waiting_bytes = 0;
    }

    /// How many bytes wait for those before them.
    #[must_use]
    pub fn waiting_bytes(&self) -> usize {
        self.waiting_bytes
    }

    /// Where in its stream the segment lies; the stream begins here if it has to. `None` for a segment without bytes that belongs to
    /// no stream.
    fn place(
        &mut self,
        segment: &Segment<'_>,
        first: u32,
        tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>),
    ) -> Option<u64> {
        if let Some(stream) = self.streams.get(&segment.flow) {
            let is_open = stream.state.is_some();
            match stream.place(first) {
                Place::At(at) if segment.syn && is_open && at == stream.start => return Some(at),
                Place::At(at) if !segment.syn && (is_open || at + segment.payload.len() as u64 <= stream.next) => {
                    return Some(at);
                }
                _ => {}
            }
        }
        // A segment without bytes may carry the number before the next one (RFC 9293, 3.8.4): no stream begins with it.
        if segment.payload.is_empty() && !segment.syn {
            return None;
        }
        self.begin(segment, first, tell);
        self.streams.get(&segment.flow).map(|stream| stream.start)
    }

    fn begin(&mut self, segment: &Segment<'_>, first: u32, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        self.with(segment.flow, |stream| stream.end(End::Replaced, tell));
        if self.streams.len() >= self.limits.streams && !self.streams.contains_key(&segment.flow) {
            self.make_room(tell);
        }
        let mut stream = Stream::begun(segment.flow, self.prototype.clone(), first, self.segments);
        stream.tell(Piece::Begun { from_start: segment.syn }, tell);
        self.streams.insert(segment.flow, stream);
    }

    /// Drops an eighth of the streams at once, those that were silent for longest, so that not each new one looks through all of them.
    fn make_room(&mut self, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        let mut by_use: Vec<_> = self.streams.values().map(|stream| (stream.last_used, stream.flow)).collect();
        by_use.sort_unstable();
        by_use.truncate((by_use.len() / 8).max(1));
        for (_, flow) in by_use {
            self.with(flow, |stream| stream.end(End::Crowded, tell));
            self.streams.remove(&flow);
        }
    }

    /// Does something with a stream, if it is there, and keeps the sum of waiting bytes.
    fn with(&mut self, flow: Flow, action: impl FnOnce(&mut Stream<S>)) {
        if let Some(stream) = self.streams.get_mut(&flow) {
            let before = stream.waiting_bytes;
            action(stream);
            self.waiting_bytes = self.waiting_bytes - before + stream.waiting_bytes;
        }
    }
}
