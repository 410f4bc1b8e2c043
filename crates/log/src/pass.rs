//! One pass over the bytes of a log: what a whole recording and a piece of one have in common.

use crate::channels::Channels;
use crate::error::LogError;
use crate::frame::{Found, PlaceInLog};
use crate::options::{Format, IdentifierOrder, Options};
use crate::pcap::PcapReader;
use crate::pcapng::PcapngReader;
use crate::receive::Receive;
use crate::report::Report;
use crate::text::TextReader;
use crate::window::Window;

/// What every reader fills while it reads.
pub(crate) struct Shared {
    pub(crate) channels: Channels,
    pub(crate) report: Report,
    pub(crate) identifiers: IdentifierOrder,
}

impl Shared {
    pub(crate) fn new(identifiers: IdentifierOrder) -> Self {
        Self { channels: Channels::default(), report: Report::default(), identifiers }
    }
}

/// What one step of a reader gives: a line, a record or a block.
pub(crate) enum Step {
    Frame(Found),
    /// Something that is no frame, or could not be read.
    Nothing,
    /// The log has no more.
    End,
}

/// The reader of one layout.
#[derive(Clone)]
pub(crate) enum Reader {
    Pcap(PcapReader),
    Pcapng(PcapngReader),
    Text(Box<TextReader>),
}

impl Reader {
    pub(crate) fn start(
        format: Format,
        window: &mut Window,
        shared: &mut Shared,
        name: &str,
        options: &Options,
    ) -> Result<Self, LogError> {
        Ok(match format {
            Format::Pcap => Self::Pcap(PcapReader::start(window, shared, name)?),
            Format::Pcapng => Self::Pcapng(PcapngReader::default()),
            Format::Text => Self::Text(Box::new(TextReader::start(window, shared, name, options)?)),
        })
    }
}

/// What a reader knows from the bytes before: where it is the same, the same bytes give the same frames.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Knowledge {
    /// How many sections and interfaces were described.
    pub(crate) descriptions: u64,
    /// Whether the section has had a packet.
    pub(crate) has_packets: bool,
    channels: usize,
}

/// The bytes of a log, the reader of its layout, and what it fills.
pub(crate) struct Pass {
    pub(crate) window: Window,
    pub(crate) reader: Reader,
    pub(crate) shared: Shared,
}

impl Pass {
    /// The next frame; `None` at the end of the log.
    #[inline]
    pub(crate) fn next(&mut self) -> Option<Found> {
        loop {
            match self.step() {
                Step::Frame(found) => return Some(found),
                Step::Nothing => {}
                Step::End => return None,
            }
        }
    }

    /// Hands out the frames that begin before byte `until`; false at the end of the log.
    #[inline]
    pub(crate) fn stretch(&mut self, until: u64, receive: &mut impl Receive) -> bool {
        loop {
            let Self { window, reader, shared } = self;
            match reader {
                Reader::Pcap(_) => {}
                Reader::Pcapng(reader) => reader.run_plain(window, shared, until, receive),
                Reader::Text(reader) => reader.run_plain(window, shared, until, receive),
            }
            if self.window.offset() >= until {
                return true;
            }
            match self.step() {
                Step::Frame(found) => receive.frame(&found.lend(self.buffer())),
                Step::Nothing => {}
                Step::End => return false,
            }
        }
    }

    #[inline]
    fn step(&mut self) -> Step {
        let Self { window, reader, shared } = self;
        let step = match reader {
            Reader::Pcap(reader) => reader.step(window, shared),
            Reader::Pcapng(reader) => reader.step(window, shared),
            Reader::Text(reader) => reader.step(window, shared),
        };
        if let Step::Frame(found) = &step {
            shared.report.frame(found);
        }
        step
    }

    /// The bytes that the payload of a frame just found is a range of.
    #[inline]
    pub(crate) fn buffer(&self) -> &[u8] {
        match &self.reader {
            Reader::Text(reader) => reader.payload(),
            _ => self.window.buffer(),
        }
    }

    /// Where the reading position is.
    pub(crate) fn place(&self) -> PlaceInLog {
        match &self.reader {
            Reader::Pcap(reader) => reader.place(&self.window),
            Reader::Pcapng(reader) => reader.place(&self.window),
            Reader::Text(reader) => PlaceInLog::Line(reader.line()),
        }
    }

    /// What is known from the bytes before the reading position.
    pub(crate) fn knowledge(&self) -> Knowledge {
        let (descriptions, has_packets) = match &self.reader {
            Reader::Pcapng(reader) => reader.knowledge(),
            Reader::Pcap(_) | Reader::Text(_) => (0, false),
        };
        Knowledge { descriptions, has_packets, channels: self.shared.channels.infos().len() }
    }

    /// A pass from byte `offset` on with what is known here, and with counts of its own; `None` where the log cannot be cut.
    pub(crate) fn piece(&self, offset: u64) -> Option<Self> {
        let mut reader = self.reader.clone();
        match &mut reader {
            Reader::Pcap(_) => return None,
            Reader::Pcapng(reader) => reader.count_from(0),
            Reader::Text(reader) => reader.count_from(0),
        }
        let channels = self.shared.channels.clone();
        let shared = Shared { channels, ..Shared::new(self.shared.identifiers) };
        Some(Self { window: self.window.piece(offset)?, reader, shared })
    }

    /// As [`Pass::piece`], from somewhere in the middle: about byte `offset`, where packets have been.
    pub(crate) fn piece_amid(&self, offset: u64) -> Option<Self> {
        match &self.reader {
            // A line that begins just there has its line end before.
            Reader::Text(_) => self.piece(offset.saturating_sub(1)),
            _ => {
                let mut pass = self.piece(offset)?;
                if let Reader::Pcapng(reader) = &mut pass.reader {
                    reader.assume_packets();
                }
                Some(pass)
            }
        }
    }

    /// Moves to the first place at or behind the reading position where a frame may begin, as far as can be told there;
    /// false where none is found before byte `until`.
    pub(crate) fn find_start(&mut self, until: u64) -> bool {
        match &mut self.reader {
            Reader::Pcap(_) => false,
            Reader::Pcapng(reader) => reader.find_start(&mut self.window, until),
            Reader::Text(reader) => reader.find_start(&mut self.window, until),
        }
    }

    /// Goes on where `piece`, which began here, has ended.
    pub(crate) fn join(&mut self, piece: Self) {
        self.window.skip_to(piece.window.offset());
        let before = match &self.reader {
            Reader::Pcap(_) => 0,
            Reader::Pcapng(reader) => reader.blocks(),
            Reader::Text(reader) => reader.line(),
        };
        self.reader = piece.reader;
        match &mut self.reader {
            Reader::Pcap(_) => {}
            Reader::Pcapng(reader) => reader.count_from(before + reader.blocks()),
            Reader::Text(reader) => reader.count_from(before + reader.line()),
        }
        self.shared.channels = piece.shared.channels;
        self.shared.report.join(piece.shared.report, before);
    }
}
