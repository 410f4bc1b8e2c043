//! A sliding view of a log's bytes: one buffer, filled in large steps, used again for the whole log.

use std::io::{self, Read};
use std::sync::Arc;

use crate::source::{Progress, unpacked};

/// The buffer's first size; it grows only for a single block that is larger.
const BUFFER_BYTES: usize = 512 * 1024;

/// The bytes from the reading position on, as far as they have been fetched.
pub(crate) struct Window {
    reader: Box<dyn Read + Send>,
    progress: Arc<Progress>,
    buffer: Vec<u8>,
    start: usize,
    end: usize,
    start_offset: u64,
    at_end: bool,
    broke_off: Option<String>,
    failure: Option<io::Error>,
}

impl Window {
    pub(crate) fn new(file: Box<dyn Read + Send>) -> io::Result<Self> {
        let progress = Arc::new(Progress::default());
        Ok(Self {
            reader: unpacked(file, Arc::clone(&progress))?,
            progress,
            buffer: vec![0; BUFFER_BYTES],
            start: 0,
            end: 0,
            start_offset: 0,
            at_end: false,
            broke_off: None,
            failure: None,
        })
    }

    /// The bytes fetched and not yet consumed.
    #[inline]
    pub(crate) fn data(&self) -> &[u8] {
        &self.buffer[self.start..self.end]
    }

    /// The whole buffer, for ranges by [`Window::position`]; they hold until the next call that fetches bytes.
    #[inline]
    pub(crate) fn buffer(&self) -> &[u8] {
        &self.buffer
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
        if count > self.buffer.len() - self.start {
            self.buffer.copy_within(self.start..self.end, 0);
            self.end -= self.start;
            self.start = 0;
        }
        if count > self.buffer.len() {
            self.buffer.resize(count + BUFFER_BYTES, 0);
        }
        while self.end - self.start < count {
            if self.at_end || !self.read_once() {
                return false;
            }
        }
        true
    }

    /// One successful read into the free end of the buffer; false at the end of the log.
    fn read_once(&mut self) -> bool {
        loop {
            match self.reader.read(&mut self.buffer[self.end..]) {
                Ok(0) => {}
                Ok(fetched) => {
                    self.end += fetched.min(self.buffer.len() - self.end);
                    return true;
                }
                Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
                Err(error) => {
                    self.broke_off = Some(error.to_string());
                    self.failure = self.progress.failed().then_some(error);
                }
            }
            self.at_end = true;
            return false;
        }
    }
}
