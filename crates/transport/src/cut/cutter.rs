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
    /// Bytes that `held` is to grow to: the header, and once that is judged, the message.
    wanted: usize,
    search: Option<Search<F::Fault>>,
}

#[derive(Debug, Clone, Copy)]
struct Search<Fault> {
    why: Why<Fault>,
    skipped: u64,
}

impl<F: Framing> Cutter<F> {
    /// For a stream that is seen from its beginning. A header that announces more than `most_bytes` counts as damage.
    #[must_use]
    pub fn new(most_bytes: usize) -> Self {
        let most_bytes = most_bytes.max(F::HEADER_BYTES);
        Self { most_bytes, held: Vec::new(), held_since_ns: None, wanted: F::HEADER_BYTES, search: None }
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
        if let Some(Search { why, skipped }) = self.search.take()
            && skipped > 0
        {
            tell(Cut::Skipped { bytes: skipped, why });
        }
    }
}
