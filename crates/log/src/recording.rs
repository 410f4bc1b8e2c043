//! The principal type: one opened log.

use std::fmt;
use std::fs::File;
use std::io::Read;
use std::path::Path;

use crate::channels::Channels;
use crate::error::LogError;
use crate::frame::{ChannelInfo, Frame, PlaceInLog};
use crate::options::{Format, IdentifierOrder, Options};
use crate::pcap::PcapReader;
use crate::pcapng::PcapngReader;
use crate::report::Report;
use crate::text::TextReader;
use crate::window::Window;

/// How many bytes are waited for before the layout is told: all that a head needs, and no more, for logs that are still
/// being written into a pipe.
const HEAD_BYTES: usize = 64;
/// How many bytes, where they are there, are looked at to tell text from other content.
const LOOK_BYTES: usize = 4096;

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
    window: Window,
    reader: Reader,
    shared: Shared,
    ended: bool,
}

/// The reader of one layout.
enum Reader {
    Pcap(PcapReader),
    Pcapng(PcapngReader),
    Text(Box<TextReader>),
}

impl Reader {
    /// The reader for the asked layout, or for the one that the first bytes speak for.
    fn start(window: &mut Window, shared: &mut Shared, name: &str, options: &Options) -> Result<Self, LogError> {
        let format = match options.format {
            Some(format) => format,
            None => recognise(window.data(), options).map_err(|found| refused(name, found, window))?,
        };
        Ok(match format {
            Format::Pcap => Self::Pcap(PcapReader::start(window, shared, name)?),
            Format::Pcapng => Self::Pcapng(PcapngReader::default()),
            Format::Text => Self::Text(Box::new(TextReader::start(window, shared, name, options)?)),
        })
    }
}

/// What every reader fills while it reads.
pub(crate) struct Shared {
    pub(crate) channels: Channels,
    pub(crate) report: Report,
    pub(crate) identifiers: IdentifierOrder,
}

impl Recording {
    /// Opens the log at `path`; compression and layout are recognised by the content.
    ///
    /// # Errors
    /// When the file cannot be opened or read, is empty, of no known layout, or its head cannot be understood.
    pub fn open(path: &Path, options: &Options) -> Result<Self, LogError> {
        let name = path.display().to_string();
        let opened = File::open(path).and_then(|file| Ok((file.metadata()?, file)));
        let (metadata, file) = opened.map_err(|reason| LogError::Open { name: name.clone(), reason })?;
        let size = metadata.is_file().then_some(metadata.len());
        Self::start(Box::new(file), name, size, options)
    }

    /// Reads a log from any reader; `name` stands for it in messages.
    ///
    /// # Errors
    /// As for [`Recording::open`].
    pub fn from_reader(reader: Box<dyn Read + Send>, name: &str, options: &Options) -> Result<Self, LogError> {
        Self::start(reader, name.to_owned(), None, options)
    }

    fn start(file: Box<dyn Read + Send>, name: String, size: Option<u64>, options: &Options) -> Result<Self, LogError> {
        let mut window = Window::new(file).map_err(|reason| LogError::Read { name: name.clone(), byte: 0, reason })?;
        let mut shared =
            Shared { channels: Channels::default(), report: Report::default(), identifiers: options.identifiers };
        window.have(HEAD_BYTES);
        match Reader::start(&mut window, &mut shared, &name, options) {
            Ok(reader) => Ok(Self { name, size, window, reader, shared, ended: false }),
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
        let step = match &mut self.reader {
            Reader::Pcap(reader) => reader.step(&mut self.window, &mut self.shared),
            Reader::Pcapng(reader) => reader.step(&mut self.window, &mut self.shared),
            Reader::Text(reader) => reader.step(&mut self.window, &mut self.shared),
        };
        let Some(found) = step else {
            return self.finish().map(|()| None);
        };
        self.shared.report.frame(&found);
        let buffer = match &self.reader {
            Reader::Text(reader) => reader.payload(),
            _ => self.window.buffer(),
        };
        Ok(Some(found.lend(buffer)))
    }

    /// Stops for good, and tells where the file broke off if it did.
    #[cold]
    fn finish(&mut self) -> Result<(), LogError> {
        self.ended = true;
        if let Some(reason) = self.window.take_failure() {
            return Err(LogError::Read { name: self.name.clone(), byte: self.window.bytes_read(), reason });
        }
        if let Some(reason) = self.window.broke_off() {
            let place = match &self.reader {
                Reader::Pcap(reader) => reader.place(&self.window),
                Reader::Pcapng(reader) => reader.place(&self.window),
                Reader::Text(reader) => PlaceInLog::Line(reader.line()),
            };
            self.shared.report.broke_off(place, &format!("the log {}", cut_stream(reason)));
        }
        Ok(())
    }

    /// The channels seen so far; more may turn up while reading.
    #[must_use]
    pub fn channels(&self) -> &[ChannelInfo] {
        self.shared.channels.infos()
    }

    /// What was read so far, and what could not be.
    #[must_use]
    pub fn report(&self) -> &Report {
        &self.shared.report
    }

    /// Bytes taken from the file so far, packed as they are there.
    #[must_use]
    pub fn bytes_read(&self) -> u64 {
        self.window.bytes_read()
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
            .field("report", &self.shared.report)
            .finish_non_exhaustive()
    }
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
