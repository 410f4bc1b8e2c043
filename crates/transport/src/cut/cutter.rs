//! Messages out of a stream.

use super::{Cut, Framing, Why};
use crate::tcp::Piece;

/// Cuts one stream into messages.
///
/// A message that lies whole in one piece is handed out from there, without a copy. What is kept is at most one message that has begun,
/// and of it only what came: at most `most_bytes`.
#[derive(Debug, Clone)]
pub struct Cutter<F: Framing> {
    most_bytes: usize,
    /// The beginning of a message; its header is judged as soon as it is whole.
    held: Vec<u8>,
    held_since_ns: Option<i64>,
    /// From which byte of `held` on they came at which time, where that is not `held_since_ns`.
    arrivals: Vec<(usize, Option<i64>)>,
    /// Bytes that `held` is to grow to: the header, and once that is judged, the message.
    wanted: usize,
    search: Option<Search<F::Fault>>,
}

#[derive(Debug, Clone, Copy)]
struct Search<Fault> {
    why: Why<Fault>,
    skipped: u64,
}

/// So many times are kept of the pieces of one message; bytes behind them count as of the last.
const ARRIVALS_MAX: usize = 4096;
/// How often one end of a stream is looked through for messages that a wrong length has swallowed.
const ROUNDS_MAX: usize = 16;

impl<F: Framing> Cutter<F> {
    /// For a stream that is seen from its beginning. A header that announces more than `most_bytes` counts as damage.
    #[must_use]
    pub fn new(most_bytes: usize) -> Self {
        let most_bytes = most_bytes.max(F::HEADER_BYTES);
        let (held, arrivals, wanted) = (Vec::new(), Vec::new(), F::HEADER_BYTES);
        Self { most_bytes, held, held_since_ns: None, arrivals, wanted, search: None }
    }

    /// Bytes of the message that has begun.
    #[must_use]
    pub fn held_bytes(&self) -> usize {
        self.held.len()
    }

    /// What a TCP stream gave.
    pub fn piece(&mut self, piece: Piece<'_>, tell: &mut impl FnMut(Cut<'_, F::Fault>)) {
        match piece {
            Piece::Begun { from_start: true } => {}
            Piece::Begun { from_start: false } => self.lost(Why::Middle, tell),
            Piece::Bytes { time_ns, bytes } => self.bytes(time_ns, bytes, tell),
            Piece::Gap { bytes } => self.lost(Why::Gap(bytes), tell),
            Piece::Ended(_) => self.finish(tell),
        }
    }

    /// The next bytes of the stream.
    pub fn bytes(&mut self, time_ns: Option<i64>, bytes: &[u8], tell: &mut impl FnMut(Cut<'_, F::Fault>)) {
        let mut at = 0;
        while !self.held.is_empty() && at < bytes.len() {
            let more = (self.wanted - self.held.len()).min(bytes.len() - at);
            self.note_arrival(time_ns);
            self.held.extend_from_slice(&bytes[at..at + more]);
            at += more;
            if self.held.len() == self.wanted {
                self.settle_held(time_ns, tell);
            }
            // What is held lies in this piece whole: read on there, without copies.
            if self.held.len() <= at && self.wanted == F::HEADER_BYTES {
                at -= self.held.len();
                self.held.clear();
            }
        }
        if at < bytes.len() {
            self.straight(time_ns, &bytes[at..], tell);
        }
    }

    /// From here on it is not known where a message begins: `why`.
    pub fn lost(&mut self, why: Why<F::Fault>, tell: &mut impl FnMut(Cut<'_, F::Fault>)) {
        self.finish(tell);
        self.search = Some(Search { why, skipped: 0 });
    }

    /// The stream has ended. The cutter can be fed another one.
    pub fn finish(&mut self, tell: &mut impl FnMut(Cut<'_, F::Fault>)) {
        for _ in 0..ROUNDS_MAX {
            let Some(at) = self.swallowed() else { break };
            self.start_over(at, tell);
        }
        let held = self.held.len();
        self.held.clear();
        let is_judged = self.wanted > F::HEADER_BYTES;
        if let Some(search) = &mut self.search
            && !is_judged
        {
            search.skipped += held as u64;
            self.end_search(tell);
        } else if held > 0 {
            tell(Cut::Unfinished { held, length: is_judged.then_some(self.wanted) });
        }
        self.search = None;
        self.wanted = F::HEADER_BYTES;
    }

    /// Where in a message that will not end others begin: a likely header whose message is followed by another one.
    fn swallowed(&self) -> Option<usize> {
        if self.wanted == F::HEADER_BYTES {
            return None;
        }
        let header = |at: usize| {
            let header = self.held.get(at..)?.get(..F::HEADER_BYTES)?;
            F::length(header, self.most_bytes).ok().filter(|_| F::is_likely(header))
        };
        (1..self.held.len()).find(|&at| header(at).is_some_and(|length| header(at + length).is_some()))
    }

    /// Reads what is held once more, from byte `at` on; what is before is no message.
    fn start_over(&mut self, at: usize, tell: &mut impl FnMut(Cut<'_, F::Fault>)) {
        let (held, arrivals) = (std::mem::take(&mut self.held), std::mem::take(&mut self.arrivals));
        let why = Why::Swallowed { length: self.wanted, held: held.len() };
        self.wanted = F::HEADER_BYTES;
        tell(Cut::Skipped { bytes: at as u64, why });
        let starts = std::iter::once((0, self.held_since_ns)).chain(arrivals.iter().copied());
        let ends = arrivals.iter().map(|arrival| arrival.0).chain([held.len()]);
        for ((start, time_ns), end) in starts.zip(ends).filter(|(_, end)| *end > at) {
            self.bytes(time_ns, &held[start.max(at)..end], tell);
        }
    }

    /// The bytes that are added to `held` next came at this time.
    fn note_arrival(&mut self, time_ns: Option<i64>) {
        let latest_ns = self.arrivals.last().map_or(self.held_since_ns, |arrival| arrival.1);
        if time_ns != latest_ns && self.arrivals.len() < ARRIVALS_MAX {
            self.arrivals.push((self.held.len(), time_ns));
        }
    }

    /// `held` has grown to what was wanted: a header to judge, or a message to hand out.
    fn settle_held(&mut self, time_ns: Option<i64>, tell: &mut impl FnMut(Cut<'_, F::Fault>)) {
        if self.wanted == F::HEADER_BYTES {
            let held = std::mem::take(&mut self.held);
            let judged = self.judge(&held, tell);
            self.held = held;
            match judged {
                Some(length) => self.wanted = length,
                None => {
                    self.held.remove(0);
                    self.arrivals.iter_mut().for_each(|arrival| arrival.0 = arrival.0.saturating_sub(1));
                }
            }
        }
        if self.held.len() == self.wanted {
            tell(Cut::Message { bytes: &self.held, first_ns: self.held_since_ns, last_ns: time_ns });
            self.held.clear();
            self.wanted = F::HEADER_BYTES;
        }
    }

    /// Messages as they lie in `bytes`; nothing is held.
    fn straight(&mut self, time_ns: Option<i64>, bytes: &[u8], tell: &mut impl FnMut(Cut<'_, F::Fault>)) {
        let mut rest = bytes;
        self.wanted = F::HEADER_BYTES;
        while let Some(header) = rest.get(..F::HEADER_BYTES) {
            match self.judge(header, tell) {
                None => rest = &rest[1..],
                Some(length) => match rest.split_at_checked(length) {
                    Some((message, behind)) => {
                        tell(Cut::Message { bytes: message, first_ns: time_ns, last_ns: time_ns });
                        rest = behind;
                    }
                    None => {
                        self.wanted = length;
                        break;
                    }
                },
            }
        }
        self.held.extend_from_slice(rest);
        self.held_since_ns = time_ns;
        self.arrivals.clear();
    }

    /// The length of the message that begins with `header`; where none does, its first byte counts as skipped.
    fn judge(&mut self, header: &[u8], tell: &mut impl FnMut(Cut<'_, F::Fault>)) -> Option<usize> {
        match (F::length(header, self.most_bytes), &mut self.search) {
            (Ok(length), None) => Some(length),
            (Ok(length), Some(_)) if F::is_likely(header) => {
                self.end_search(tell);
                Some(length)
            }
            (_, Some(search)) => {
                search.skipped += 1;
                None
            }
            (Err(fault), None) => {
                self.search = Some(Search { why: Why::Fault(fault), skipped: 1 });
                None
            }
        }
    }

    fn end_search(&mut self, tell: &mut impl FnMut(Cut<'_, F::Fault>)) {
        // Missing bytes are told also where no message is hurt: those that were lost whole leave no other trace.
        if let Some(Search { why, skipped }) = self.search.take()
            && (skipped > 0 || matches!(why, Why::Gap(_)))
        {
            tell(Cut::Skipped { bytes: skipped, why });
        }
    }
}
