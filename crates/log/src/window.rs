//! A sliding view of a log's bytes: memory where they are there or a file can be had so, else one buffer that is filled in large steps
//! and used again for the whole log.

use std::fs::File;
use std::io::{self, Read};
use std::sync::Arc;

use crate::machine::Map;
use crate::memory::Memory;
use crate::source::{self, Progress};

/// The buffer's first size, and how much of a map is fetched at a time; the buffer grows only for a single block that is
/// larger.
const BUFFER_BYTES: usize = 512 * 1024;

/// A map is given back in multiples of this: no page of any common system is larger.
const RELEASE_BYTES: usize = 64 * 1024;
/// What pieces have read is given back by the window that takes them over, so much at a time: pages that go while other threads run make the
/// system stop each of those.
const RELEASE_BEHIND_PIECES_BYTES: usize = 8 << 20;

/// The bytes from the reading position on, as far as they have been fetched.
pub(crate) struct Window {
    bytes: Bytes,
    progress: Arc<Progress>,
    start: usize,
    end: usize,
    start_offset: u64,
    at_end: bool,
    broke_off: Option<String>,
    failure: Option<io::Error>,
}

/// Where the bytes come from.
enum Bytes {
    Streamed { reader: Box<dyn Read + Send>, buffer: Vec<u8> },
    InMemory(InMemory),
}

/// A log as memory; positions in the window are positions in the log.
struct InMemory {
    memory: Arc<Memory>,
    /// The file, to read on where its memory ends or fails; given bytes and a piece of a log have none, and stop there.
    file: Option<File>,
    /// Up to where the bytes have been given back; `None`: given bytes and a piece give none back.
    released: Option<usize>,
}

impl Window {
    /// The bytes of any reader, unpacked if need be.
    pub(crate) fn new(file: Box<dyn Read + Send>) -> io::Result<Self> {
        let progress = Arc::new(Progress::default());
        let reader = source::unpacked(file, Arc::clone(&progress))?;
        Ok(Self::over(Bytes::Streamed { reader, buffer: vec![0; BUFFER_BYTES] }, progress))
    }

    /// The bytes of a file of this size: as memory, unless it is compressed or the system cannot do that.
    pub(crate) fn of_file(file: File, size_bytes: u64) -> io::Result<Self> {
        match Map::of(&file, size_bytes) {
            Some(map) if !source::is_packed(map.bytes()) => {
                let memory = Arc::new(Memory::File(map));
                let held = InMemory { memory, file: Some(file), released: Some(0) };
                Ok(Self::over(Bytes::InMemory(held), Arc::default()))
            }
            _ => Self::new(Box::new(file)),
        }
    }

    /// Bytes that are memory already, unpacked if need be.
    pub(crate) fn of_bytes(bytes: impl AsRef<[u8]> + Send + Sync + 'static) -> io::Result<Self> {
        if source::is_packed(bytes.as_ref()) {
            return Self::new(Box::new(io::Cursor::new(bytes)));
        }
        let memory = Arc::new(Memory::Given(Box::new(bytes)));
        Ok(Self::over(Bytes::InMemory(InMemory { memory, file: None, released: None }), Arc::default()))
    }

    fn over(bytes: Bytes, progress: Arc<Progress>) -> Self {
        let (broke_off, failure) = (None, None);
        Self { bytes, progress, start: 0, end: 0, start_offset: 0, at_end: false, broke_off, failure }
    }

    /// Another window on the same memory, which begins at `offset` and knows nothing behind its end; `None` where the log is not in
    /// memory.
    pub(crate) fn piece(&self, offset: u64) -> Option<Self> {
        let Bytes::InMemory(held) = &self.bytes else {
            return None;
        };
        let start = usize::try_from(offset).ok().filter(|&start| start <= held.memory.bytes().len())?;
        let held = InMemory { memory: Arc::clone(&held.memory), file: None, released: None };
        let window = Self::over(Bytes::InMemory(held), Arc::default());
        Some(Self { start, end: start, start_offset: offset, ..window })
    }

    /// Whether the other window is on the same memory.
    pub(crate) fn is_of_same_memory(&self, other: &Self) -> bool {
        match (&self.bytes, &other.bytes) {
            (Bytes::InMemory(one), Bytes::InMemory(other)) => Arc::ptr_eq(&one.memory, &other.memory),
            _ => false,
        }
    }

    /// How many bytes of a log in memory lie behind the reading position.
    pub(crate) fn ahead_in_memory(&self) -> Option<usize> {
        match &self.bytes {
            Bytes::InMemory(held) => Some(held.memory.bytes().len() - self.start),
            Bytes::Streamed { .. } => None,
        }
    }

    /// Moves the reading position to `offset` of a log in memory, at or behind where it is.
    pub(crate) fn skip_to(&mut self, offset: u64) {
        if let (Bytes::InMemory(held), Ok(start)) = (&mut self.bytes, usize::try_from(offset)) {
            self.start = start.clamp(self.start, held.memory.bytes().len());
            self.end = self.end.max(self.start);
            held.release_behind(self.start, RELEASE_BEHIND_PIECES_BYTES);
            self.start_offset = self.start as u64;
            self.progress.reached(self.end as u64);
        }
    }

    /// Whether bytes were asked for that the log does not have, or not in this piece.
    pub(crate) fn is_at_end(&self) -> bool {
        self.at_end
    }

    /// The bytes fetched and not yet consumed.
    #[inline]
    pub(crate) fn data(&self) -> &[u8] {
        &self.buffer()[self.start..]
    }

    /// The whole buffer, for ranges by [`Window::position`]; they hold until the next call that fetches bytes.
    #[inline]
    pub(crate) fn buffer(&self) -> &[u8] {
        match &self.bytes {
            Bytes::Streamed { buffer, .. } => &buffer[..self.end],
            Bytes::InMemory(held) => &held.memory.bytes()[..self.end],
        }
    }

    /// Where the reading position stands in the buffer.
    #[inline]
    pub(crate) fn position(&self) -> usize {
        self.start
    }

    /// How many bytes of the unpacked log lie before the reading position.
    #[inline]
    pub(crate) fn offset(&self) -> u64 {
        self.start_offset
    }

    /// Bytes taken from the file, packed as they are.
    pub(crate) fn bytes_read(&self) -> u64 {
        self.progress.bytes()
    }

    /// Why the bytes end before the log does, if so: a compressed stream that is cut, or a file that failed.
    pub(crate) fn broke_off(&self) -> Option<&str> {
        self.broke_off.as_deref()
    }

    /// The failure of the file itself, which waits here until the bytes before it have been read.
    pub(crate) fn take_failure(&mut self) -> Option<io::Error> {
        self.failure.take()
    }

    /// Moves the reading position over `count` fetched bytes.
    #[inline]
    pub(crate) fn consume(&mut self, count: usize) {
        let count = count.min(self.end - self.start);
        self.start += count;
        self.start_offset += count as u64;
    }

    /// Fetches until at least `count` bytes are there; false when the log ends before.
    #[inline]
    pub(crate) fn have(&mut self, count: usize) -> bool {
        self.end - self.start >= count || self.fetch(count)
    }

    /// Fetches at least one byte more; false at the end of the log.
    pub(crate) fn more(&mut self) -> bool {
        self.fetch(self.end - self.start + 1)
    }

    #[cold]
    fn fetch(&mut self, count: usize) -> bool {
        while self.end - self.start < count {
            let is_more = match &mut self.bytes {
                _ if self.at_end => false,
                Bytes::Streamed { .. } => self.read_once(count),
                Bytes::InMemory(held) => match held.fetch_once(self.start, self.end) {
                    Some(end) => {
                        self.end = end;
                        self.progress.reached(end as u64);
                        true
                    }
                    None => self.leave_map(),
                },
            };
            if !is_more {
                self.at_end = true;
                return false;
            }
        }
        true
    }

    /// Reads on where the map has no more; false for a piece, which has no file.
    fn leave_map(&mut self) -> bool {
        let Bytes::InMemory(held) = &mut self.bytes else {
            return false;
        };
        let Some(file) = held.file.take() else {
            return false;
        };
        let mut buffer = held.memory.bytes()[self.start..self.end].to_vec();
        let reader = source::counted_from(file, self.end as u64, Arc::clone(&self.progress));
        self.end -= self.start;
        self.start = 0;
        buffer.resize(self.end + BUFFER_BYTES, 0);
        self.bytes = Bytes::Streamed { reader, buffer };
        true
    }

    /// One successful read into the free end of the buffer, which is made large enough for `count` bytes; false at the end
    /// of the log.
    fn read_once(&mut self, count: usize) -> bool {
        let Bytes::Streamed { reader, buffer } = &mut self.bytes else {
            return false;
        };
        if count > buffer.len() - self.start {
            buffer.copy_within(self.start..self.end, 0);
            self.end -= self.start;
            self.start = 0;
        }
        if count > buffer.len() {
            buffer.resize(count + BUFFER_BYTES, 0);
        }
        loop {
            match reader.read(&mut buffer[self.end..]) {
                Ok(0) => return false,
                Ok(fetched) => {
                    self.end += fetched.min(buffer.len() - self.end);
                    return true;
                }
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                Err(error) => {
                    self.broke_off = Some(error.to_string());
                    self.failure = self.progress.failed().then_some(error);
                    return false;
                }
            }
        }
    }
}

impl InMemory {
    /// Fetches one step behind `end`, gives back what lies before `start`, and tells the new end; `None` where there is no
    /// more, or the system cannot fetch it.
    fn fetch_once(&mut self, start: usize, end: usize) -> Option<usize> {
        let next = self.memory.bytes().len().min(end + BUFFER_BYTES);
        if next == end || !self.memory.fetch(end..next) {
            return None;
        }
        self.release_behind(start, RELEASE_BYTES);
        Some(next)
    }

    /// Gives back what lies before `start`, if that is enough.
    fn release_behind(&mut self, start: usize, least_bytes: usize) {
        let Some(released) = self.released else { return };
        // A page that is still being read must not be given back: it would come again without having been asked for.
        let behind = start - start % RELEASE_BYTES;
        if behind.saturating_sub(released) >= least_bytes {
            self.memory.release(released..behind);
            self.released = Some(behind);
        }
    }
}
