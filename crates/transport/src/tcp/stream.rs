//! One direction of one connection.

use super::{End, Flow, Piece, Segment, Taken};

/// Bytes counted from the first of the stream: a sequence number that does not wrap.
pub(super) type Position = u64;

/// Positions begin here, so that what lies behind a stream's beginning has one, too. A multiple of 2^32: the low 32 bits of a position are
/// the sequence number.
const BASE: Position = 1 << 32;

/// The largest step back that counts as a repetition. A sender repeats nothing that lies further back than the receiver's window, and
/// windows of more than a megabyte are not seen in vehicles (common practice, no source).
const REPEATED_BYTES: u64 = 1 << 20;

/// So long after the first try a sender that hears nothing gives its connection up, so what is missing for longer will not come: "at least
/// 100 seconds" (RFC 9293, 3.8.3, the threshold R2).
const WAITING_NS_MAX: i64 = 100_000_000_000;

/// Where a segment lies, as seen from the next byte of its stream.
pub(super) enum Place {
    At(Position),
    /// So far back that it belongs to another connection.
    FarBack,
}

#[derive(Debug)]
pub(super) struct Stream<S> {
    pub(super) flow: Flow,
    /// The caller's; gone once the stream has ended. What is left then tells repeated segments from new ones.
    pub(super) state: Option<S>,
    pub(super) start: Position,
    pub(super) next: Position,
    fin: Option<Position>,
    /// Segments that came early, by position; they may overlap.
    waiting: Vec<Waiting>,
    pub(super) waiting_bytes: usize,
    /// Number of the segment that it saw last; no two streams have the same.
    pub(super) last_used: u64,
}

#[derive(Debug)]
struct Waiting {
    at: Position,
    time_ns: Option<i64>,
    bytes: Box<[u8]>,
}

impl Waiting {
    fn is_older_than(&self, most_ns: i64, now_ns: Option<i64>) -> bool {
        matches!((self.time_ns, now_ns), (Some(came), Some(now)) if now.saturating_sub(came) > most_ns)
    }
}

/// How many segments may wait, whatever their size: each costs more than its bytes.
const WAITING_SEGMENTS: usize = 1024;

impl<S> Stream<S> {
    pub(super) fn begun(flow: Flow, state: S, sequence: u32, last_used: u64) -> Self {
        let start = BASE + Position::from(sequence);
        let (waiting, state) = (Vec::new(), Some(state));
        Self { flow, state, start, next: start, fin: None, waiting, waiting_bytes: 0, last_used }
    }

    /// The place nearest to the next byte that has this sequence number.
    pub(super) fn place(&self, sequence: u32) -> Place {
        let step = i64::from(sequence.wrapping_sub(self.next as u32).cast_signed());
        match self.next.checked_add_signed(step) {
            Some(at) if step >= 0 || step.unsigned_abs() <= REPEATED_BYTES => Place::At(at),
            _ => Place::FarBack,
        }
    }

    /// Takes a segment whose first byte is at `at`; one that is more than `most_ahead` early does not wait.
    pub(super) fn take(
        &mut self,
        time_ns: Option<i64>,
        (at, segment): (Position, &Segment<'_>),
        most_ahead: usize,
        tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>),
    ) -> Taken {
        let end = at + segment.payload.len() as u64;
        while self.waiting.first().is_some_and(|first| first.is_older_than(WAITING_NS_MAX, time_ns)) {
            self.give_up_first(tell);
        }
        if segment.fin {
            self.fin.get_or_insert(end);
        }
        while !segment.payload.is_empty() && at > self.next + most_ahead as u64 {
            match self.waiting.is_empty() {
                true => self.step_over(at, tell),
                false => self.give_up_first(tell),
            }
        }
        let taken = if segment.payload.is_empty() {
            Taken::Control
        } else if end <= self.next {
            Taken::Repeated
        } else if at > self.next {
            self.wait(at, time_ns, segment.payload)
        } else {
            self.pass(at, time_ns, segment.payload, tell);
            self.drain(tell);
            Taken::Passed
        };
        if self.waiting_bytes > most_ahead || self.waiting.len() > WAITING_SEGMENTS {
            self.give_up_first(tell);
        }
        self.close_at_fin(tell);
        taken
    }

    /// The receiver has confirmed all bytes before `sequence`: what is missing among them was lost to the recording alone, and nobody
    /// will send it again.
    pub(super) fn confirm(&mut self, sequence: u32, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        let Place::At(confirmed) = self.place(sequence) else { return };
        while self.waiting.first().is_some_and(|first| first.at < confirmed) {
            self.give_up_first(tell);
        }
        if let Some(fin) = self.fin
            && self.waiting.is_empty()
            && confirmed > fin
        {
            self.step_over(fin, tell);
        }
        self.close_at_fin(tell);
    }

    /// Steps over what is missing before the first segment that waits.
    pub(super) fn give_up_first(&mut self, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        if let Some(first) = self.waiting.first() {
            self.step_over(first.at, tell);
            self.drain(tell);
        }
    }

    /// Hands out all that waits.
    fn give_up(&mut self, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        while !self.waiting.is_empty() {
            self.give_up_first(tell);
        }
    }

    pub(super) fn end(&mut self, end: End, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        self.give_up(tell);
        self.tell(Piece::Ended(end), tell);
        self.state = None;
    }

    pub(super) fn tell(&mut self, piece: Piece<'_>, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        if let Some(state) = &mut self.state {
            tell(&self.flow, state, piece);
        }
    }

    fn close_at_fin(&mut self, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        if self.fin.is_some_and(|fin| fin <= self.next) {
            self.end(End::Closed, tell);
        }
    }

    fn step_over(&mut self, to: Position, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        if to > self.next {
            self.tell(Piece::Gap { bytes: to - self.next }, tell);
            self.next = to;
        }
    }

    /// Hands out what is new in bytes that begin at `at`, not behind the next byte.
    fn pass(
        &mut self,
        at: Position,
        time_ns: Option<i64>,
        bytes: &[u8],
        tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>),
    ) {
        let new = usize::try_from(self.next - at).ok().and_then(|known| bytes.get(known..)).unwrap_or_default();
        if !new.is_empty() {
            self.next += new.len() as u64;
            self.tell(Piece::Bytes { time_ns, bytes: new }, tell);
        }
    }

    /// Hands out what no longer needs to wait.
    fn drain(&mut self, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {
        let ready = self.waiting.partition_point(|waiting| waiting.at <= self.next);
        if ready == 0 {
            return;
        }
        let mut all = std::mem::take(&mut self.waiting).into_iter();
        let mut left = Vec::new();
        for waiting in all.by_ref() {
            if waiting.at > self.next {
                left.push(waiting);
                break;
            }
            self.waiting_bytes -= waiting.bytes.len();
            self.pass(waiting.at, waiting.time_ns, &waiting.bytes, tell);
        }
        left.extend(all);
        self.waiting = left;
    }

    fn wait(&mut self, at: Position, time_ns: Option<i64>, bytes: &[u8]) -> Taken {
        let behind = self.waiting.partition_point(|waiting| waiting.at <= at);
        let end = at + bytes.len() as u64;
        if self.waiting[..behind].iter().any(|waiting| waiting.at + waiting.bytes.len() as u64 >= end) {
            return Taken::Repeated;
        }
        self.waiting_bytes += bytes.len();
        self.waiting.insert(behind, Waiting { at, time_ns, bytes: bytes.into() });
        Taken::Waiting
    }
}
