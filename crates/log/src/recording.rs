//! The principal type: one opened log.

use std::fmt;
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use crate::error::LogError;
use crate::frame::{ChannelInfo, Frame};
use crate::options::{Format, Options};
use crate::pass::{Pass, Reader, Shared};
use crate::piece::{Piece, PieceEnd};
use crate::receive::Receive;
use crate::report::Report;
use crate::window::Window;

/// How many bytes are waited for before the layout is told: all that a head needs, and no more, for logs that are still
/// being written into a pipe.
const HEAD_BYTES: usize = 64;
/// How many bytes, where they are there, are looked at to tell text from other content.
const LOOK_BYTES: usize = 4096;
/// No piece ends so near the end of the log: what reads a line or a block there must be able to see the end.
const PIECE_MARGIN_BYTES: u64 = 256 * 1024;

/// One opened log: hands out its frames in the recorded order, and tells what it could not read.
///
/// ```no_run
/// use std::path::Path;
/// use wirelore_log::{Options, Recording};
///
/// let mut recording = Recording::open(Path::new("drive.pcapng"), &Options::default())?;
/// while let Some(frame) = recording.next()? {
///     println!("{:?} {:X} {:02X?}", frame.time_ns, frame.id, frame.payload);
/// }
/// for damage in &recording.report().damage {
///     println!("{damage}");
/// }
/// for note in recording.report().notes() {
///     println!("{note}");
/// }
/// # Ok::<(), wirelore_log::LogError>(())
/// ```
pub struct Recording {
    name: String,
    size: Option<u64>,
    pass: Pass,
    ended: bool,
}

impl Recording {
    /// Opens the log at `path`; compression and layout are recognised by the content.
    ///
    /// On Linux the file is read as memory. One that another program makes shorter than what is being read ends the process, unless it
    /// has a `CutWatch`, which can say why.
    ///
    /// # Errors
    /// When the file cannot be opened or read, is empty, of no known layout, or its head cannot be understood.
    pub fn open(path: &Path, options: &Options) -> Result<Self, LogError> {
        let name = path.display().to_string();
        let opened = File::open(path).and_then(|file| Ok((file.metadata()?, file)));
        let (metadata, file) = opened.map_err(|reason| LogError::Open { name: name.clone(), reason })?;
        let size = metadata.is_file().then_some(metadata.len());
        let window = Window::of_file(file, size.unwrap_or_default());
        Self::start(window, name, size, options)
    }

    /// Reads a log from any reader; `name` stands for it in messages.
    ///
    /// # Errors
    /// As for [`Recording::open`].
    pub fn from_reader(reader: Box<dyn Read + Send>, name: &str, options: &Options) -> Result<Self, LogError> {
        Self::start(Window::new(reader), name.to_owned(), None, options)
    }

    /// Reads a log that is in memory already: received, put together, or mapped by a program of its own. The bytes stay where they are, and
    /// are read in pieces as those of a file are ([`Recording::pieces`]); only a compressed log is unpacked into a buffer.
    ///
    /// `bytes` has to give the same ones each time that it is asked; `name` stands for the log in messages.
    ///
    /// ```
    /// # use wirelore_log::{Options, Recording};
    /// let bytes = b"time_s,id_hex,data_hex\n0.25,1B4,3A 02\n0.35,1B4,3B 02\n".to_vec();
    /// let mut recording = Recording::from_bytes(bytes, "received", &Options::default())?;
    /// assert_eq!(recording.next()?.map(|frame| frame.id), Some(0x1B4));
    /// # Ok::<(), wirelore_log::LogError>(())
    /// ```
    ///
    /// # Errors
    /// As for [`Recording::open`].
    pub fn from_bytes(
        bytes: impl AsRef<[u8]> + Send + Sync + 'static,
        name: &str,
        options: &Options,
    ) -> Result<Self, LogError> {
        let size = bytes.as_ref().len() as u64;
        Self::start(Window::of_bytes(bytes), name.to_owned(), Some(size), options)
    }

    fn start(window: io::Result<Window>, name: String, size: Option<u64>, options: &Options) -> Result<Self, LogError> {
        let mut window = window.map_err(|reason| LogError::Read { name: name.clone(), byte: 0, reason })?;
        let mut shared = Shared::new(options.identifiers);
        window.have(HEAD_BYTES);
        match start_reader(&mut window, &mut shared, &name, options) {
            Ok(reader) => Ok(Self { name, size, pass: Pass { window, reader, shared }, ended: false }),
            // A head that cannot be understood because the file failed is the file's failure.
            Err(error) => Err(match window.take_failure() {
                Some(reason) => LogError::Read { name, byte: window.bytes_read(), reason },
                None => error,
            }),
        }
    }

    /// The next frame; `None` at the end of the log.
    ///
    /// # Errors
    /// Only when the file cannot be read on. Damage is stepped over, and told by [`Recording::report`].
    #[allow(clippy::should_implement_trait, reason = "the frame borrows from the recording, which Iterator cannot say")]
    #[inline]
    pub fn next(&mut self) -> Result<Option<Frame<'_>>, LogError> {
        if self.ended {
            return Ok(None);
        }
        match self.pass.next() {
            Some(found) => Ok(Some(found.lend(self.pass.buffer()))),
            None => self.finish().map(|()| None),
        }
    }

    /// Hands out the frames of the next stretch of the log, one after the other: those that begin within the next
    /// `most_bytes` of it (unpacked). False at the end of the log.
    ///
    /// The frames are those that [`Recording::next`] would give, in less time.
    ///
    /// # Errors
    /// As for [`Recording::next`]; the frames before the failure have been handed out.
    #[inline]
    pub fn stretch(&mut self, most_bytes: usize, receive: &mut impl Receive) -> Result<bool, LogError> {
        if self.ended {
            return Ok(false);
        }
        let until = self.pass.window.offset().saturating_add(most_bytes.max(1) as u64);
        if self.pass.stretch(until, receive) {
            return Ok(true);
        }
        self.finish().map(|()| false)
    }

    /// What lies ahead, cut into up to `count` pieces of about `piece_bytes` that can be read side by side. Empty where the
    /// log cannot be cut: a pipe, a compressed log, a `pcap`, the last part of a log; and before the first frame, as what
    /// the log says at its beginning (interfaces, channels) must be known to read from the middle.
    ///
    /// Their frames are good once [`Recording::join`] has taken over each piece in turn. Until then the memory of what they have read stays
    /// taken, so large pieces take much of it.
    ///
    /// ```no_run
    /// # use std::path::Path;
    /// # use wirelore_log::{Frame, Options, Recording};
    /// # let mut recording = Recording::open(Path::new("drive.pcapng"), &Options::default())?;
    /// let ends: Vec<_> = std::thread::scope(|scope| {
    ///     let pieces = recording.pieces(2, 8 << 20).into_iter();
    ///     let threads: Vec<_> = pieces
    ///         .map(|piece| {
    ///             scope.spawn(move || {
    ///                 let mut frames = 0_u64;
    ///                 (piece.read(&mut |_: &Frame<'_>| frames += 1), frames)
    ///             })
    ///         })
    ///         .collect();
    ///     threads.into_iter().map(|thread| thread.join().expect("does not panic")).collect()
    /// });
    /// for (end, frames) in ends {
    ///     if !recording.join(end) {
    ///         break;
    ///     }
    ///     println!("{frames} frames more");
    /// }
    /// # Ok::<(), wirelore_log::LogError>(())
    /// ```
    #[must_use]
    pub fn pieces(&self, count: usize, piece_bytes: usize) -> Vec<Piece> {
        let is_known = !self.ended && self.pass.shared.report.frames() > 0;
        let Some(ahead) = self.pass.window.ahead_in_memory().filter(|_| is_known) else {
            return Vec::new();
        };
        let (position, piece_bytes) = (self.pass.window.offset(), piece_bytes.max(1) as u64);
        let usable = (ahead as u64).saturating_sub(PIECE_MARGIN_BYTES);
        let count = usable.checked_div(piece_bytes).unwrap_or_default().min(count as u64);
        (0..count)
            .map_while(|number| {
                let (start, is_first) = (position + number * piece_bytes, number == 0);
                let pass = if is_first { self.pass.piece(start) } else { self.pass.piece_amid(start) };
                Some(Piece::new(pass?, start + piece_bytes, is_first))
            })
            .collect()
    }

    /// Takes over what a piece has read, if it joins on to what was read before: it begins exactly at the reading position,
    /// and nothing that it was started with (sections, interfaces, channels) has changed since.
    ///
    /// To be called when all pieces have been read: the memory around the end of this one is given back.
    ///
    /// False: nothing has changed, and the frames that the piece handed out do not count; they are to be read anew by
    /// [`Recording::stretch`] or by new pieces.
    pub fn join(&mut self, end: PieceEnd) -> bool {
        if self.ended {
            return false;
        }
        match end.joining(&self.pass) {
            Some(piece) => {
                self.pass.join(piece);
                true
            }
            None => false,
        }
    }

    /// Stops for good, and tells where the file broke off if it did.
    #[cold]
    fn finish(&mut self) -> Result<(), LogError> {
        self.ended = true;
        let window = &mut self.pass.window;
        if let Some(reason) = window.take_failure() {
            return Err(LogError::Read { name: self.name.clone(), byte: window.bytes_read(), reason });
        }
        let reason = match self.pass.window.broke_off() {
            Some(reason) => Some(format!("the log {}", cut_stream(reason))),
            None => self.shrunk(),
        };
        if let Some(reason) = reason {
            let place = self.pass.place();
            self.pass.shared.report.broke_off(place, &reason);
        }
        Ok(())
    }

    /// What is to be told where the file ended before the size that it had when it was opened.
    fn shrunk(&self) -> Option<String> {
        let (size, read) = (self.size?, self.bytes_read());
        let sentence = "another program has made the file shorter meanwhile: it had";
        (read < size).then(|| format!("{sentence} {size} bytes when it was opened, and ends after {read}"))
    }

    /// The channels seen so far; more may turn up while reading.
    #[must_use]
    pub fn channels(&self) -> &[ChannelInfo] {
        self.pass.shared.channels.infos()
    }

    /// What was read so far, and what could not be.
    #[must_use]
    pub fn report(&self) -> &Report {
        &self.pass.shared.report
    }

    /// Bytes taken from the file so far, packed as they are there.
    #[must_use]
    pub fn bytes_read(&self) -> u64 {
        self.pass.window.bytes_read()
    }

    /// The size of the file in bytes, when it is known.
    #[must_use]
    pub fn size(&self) -> Option<u64> {
        self.size
    }
}

impl fmt::Debug for Recording {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Recording")
            .field("name", &self.name)
            .field("size", &self.size)
            .field("report", &self.pass.shared.report)
            .finish_non_exhaustive()
    }
}

/// The reader for the asked layout, or for the one that the first bytes speak for.
fn start_reader(window: &mut Window, shared: &mut Shared, name: &str, options: &Options) -> Result<Reader, LogError> {
    let format = match options.format {
        Some(format) => format,
        None => recognise(window.data(), options).map_err(|found| refused(name, found, window))?,
    };
    Reader::start(format, window, shared, name, options)
}

/// The layout that the first bytes speak for, or what they look like instead.
fn recognise(first: &[u8], options: &Options) -> Result<Format, String> {
    if options.columns.is_some() || options.line.is_some() {
        return Ok(Format::Text);
    }
    if crate::pcapng::begins(first) {
        return Ok(Format::Pcapng);
    }
    if crate::pcap::begins(first) {
        return Ok(Format::Pcap);
    }
    match first {
        [] => Err(String::new()),
        [0xFF, 0xFE, ..] | [0xFE, 0xFF, ..] => Err("is text in UTF-16; save it as UTF-8".to_owned()),
        [b'P', b'K', 3, 4, ..] => {
            Err("is a zip archive or a spreadsheet; unpack it, or save the sheet as text".to_owned())
        }
        _ if looks_like_text(first) => Ok(Format::Text),
        _ => {
            let shown: Vec<String> = first.iter().take(8).map(|byte| format!("{byte:02X}")).collect();
            Err(format!("begins with the bytes {}, which no layout read here begins with", shown.join(" ")))
        }
    }
}

fn refused(name: &str, found: String, window: &Window) -> LogError {
    match window.broke_off() {
        Some(reason) => LogError::Unrecognised { name: name.to_owned(), found: cut_stream(reason) },
        None if found.is_empty() => LogError::Empty { name: name.to_owned() },
        None => LogError::Unrecognised { name: name.to_owned(), found },
    }
}

fn cut_stream(reason: &str) -> String {
    format!("is compressed, and its stream is cut or damaged ({reason})")
}

/// The first line of a text has no NUL and hardly any control bytes; later lines may be damaged.
fn looks_like_text(first: &[u8]) -> bool {
    let looked_at = &first[..first.len().min(LOOK_BYTES)];
    let line = looked_at.split(|byte| *byte == b'\n').next().unwrap_or_default();
    let is_control = |byte: &&u8| **byte < b' ' && !matches!(**byte, b'\t' | b'\r');
    !line.contains(&0) && 16 * line.iter().filter(is_control).count() <= line.len()
}
