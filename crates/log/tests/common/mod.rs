//! Shared by the tests: logs from bytes, frames kept after their reader is gone, bytes from hex text.
#![allow(dead_code, reason = "each test program uses its own part")]

use wirelore_log::{Channel, Frame, Kind, LogError, Medium, Options, PlaceInLog, PlainRun, Receive, Recording, Report};

/// A frame with its own bytes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Kept {
    pub(crate) time_ns: Option<i64>,
    pub(crate) channel: Channel,
    pub(crate) id: u32,
    pub(crate) extended: bool,
    pub(crate) kind: Kind,
    pub(crate) fd: bool,
    pub(crate) bit_rate_switch: bool,
    pub(crate) error_state: bool,
    pub(crate) dlc: Option<u8>,
    pub(crate) medium: Medium,
    pub(crate) payload: Vec<u8>,
    pub(crate) place: PlaceInLog,
}

impl From<Frame<'_>> for Kept {
    fn from(frame: Frame<'_>) -> Self {
        Self {
            time_ns: frame.time_ns,
            channel: frame.channel,
            id: frame.id,
            extended: frame.extended,
            kind: frame.kind,
            fd: frame.fd,
            bit_rate_switch: frame.bit_rate_switch,
            error_state: frame.error_state,
            dlc: frame.dlc,
            medium: frame.medium,
            payload: frame.payload.to_vec(),
            place: frame.place,
        }
    }
}

impl Kept {
    /// The frame without its place, to compare logs of different layouts.
    pub(crate) fn unplaced(self) -> Self {
        Self { place: PlaceInLog::Line(0), ..self }
    }

    /// The frame as a view again.
    pub(crate) fn view(&self) -> Frame<'_> {
        Frame {
            time_ns: self.time_ns,
            channel: self.channel,
            id: self.id,
            extended: self.extended,
            kind: self.kind,
            fd: self.fd,
            bit_rate_switch: self.bit_rate_switch,
            error_state: self.error_state,
            dlc: self.dlc,
            medium: self.medium,
            payload: &self.payload,
            place: self.place,
        }
    }
}

/// Everything that a log gives.
#[derive(Debug)]
pub(crate) struct Read {
    pub(crate) frames: Vec<Kept>,
    pub(crate) report: Report,
    pub(crate) channels: Vec<String>,
}

/// Takes runs of frames, of some of them only the first frames, and compares all with what is expected.
struct ByRuns<'a> {
    expected: &'a [Kept],
    count: usize,
    runs: usize,
}

impl ByRuns<'_> {
    fn next(&mut self) -> Option<&Kept> {
        self.count += 1;
        self.expected.get(self.count - 1)
    }
}

impl Receive for ByRuns<'_> {
    fn frame(&mut self, frame: &Frame<'_>) {
        let count = self.count;
        assert_eq!(Some(&Kept::from(*frame)), self.next(), "frame {count} beside runs");
    }

    fn takes_runs(&self) -> bool {
        true
    }

    fn run(&mut self, run: &PlainRun) -> usize {
        self.runs += 1;
        let taken = [PlainRun::FRAMES, 0, PlainRun::FRAMES, 1, PlainRun::FRAMES - 1][self.runs % 5];
        for at in 0..taken {
            let (id, extended) = (run.ids[at] & !PlainRun::EXTENDED, run.ids[at] & PlainRun::EXTENDED != 0);
            let told = (Some(run.times_ns[at]), run.channels[at], id, extended, run.payloads[at].to_le_bytes());
            let frame = self.next().expect("a run has no more frames than the log");
            let payload = frame.payload.as_slice().try_into().expect("frames of a run have eight bytes");
            assert_eq!(told, (frame.time_ns, frame.channel, frame.id, frame.extended, payload));
            assert_eq!((frame.kind, &frame.medium), (Kind::Data, &Medium::Can));
        }
        taken
    }
}

/// Reads a whole log from a reader frame by frame, then again from memory in stretches and in runs, which must give the same.
pub(crate) fn read_with(bytes: impl AsRef<[u8]>, options: &Options) -> Result<Read, LogError> {
    let open = || {
        let bytes = bytes.as_ref().to_vec();
        Recording::from_bytes(bytes, "test", options)
    };
    let reader = std::io::Cursor::new(bytes.as_ref().to_vec());
    let mut recording = Recording::from_reader(Box::new(reader), "test", options)?;
    let mut frames = Vec::new();
    while let Some(frame) = recording.next()? {
        frames.push(Kept::from(frame));
    }
    assert!(recording.next()?.is_none(), "the end stays the end");
    let mut again = open()?;
    let mut count = 0;
    let mut compare = |frame: &Frame<'_>| {
        assert_eq!(Some(&Kept::from(*frame)), frames.get(count), "frame {count} in a stretch");
        count += 1;
    };
    while again.stretch(700, &mut compare)? {}
    assert_eq!(count, frames.len(), "frames in stretches");
    assert_eq!(in_words(again.report()), in_words(recording.report()));
    assert_eq!(again.channels(), recording.channels());
    let (mut in_runs, mut runs) = (open()?, ByRuns { expected: &frames, count: 0, runs: 0 });
    while in_runs.stretch(30_000, &mut runs)? {}
    assert_eq!(runs.count, frames.len(), "frames in runs");
    assert_eq!(in_words(in_runs.report()), in_words(recording.report()));
    let report = recording.report().clone();
    let handed_out = report.frames_read() - report.damaged;
    assert_eq!(frames.len() as u64, handed_out, "the report counts every frame");
    let channels = recording.channels().iter().map(|channel| channel.name.clone()).collect();
    Ok(Read { frames, report, channels })
}

/// All that a report says.
pub(crate) fn in_words(report: &Report) -> String {
    let counts = (report.frames_read(), report.damaged);
    format!("{counts:?}\n{:?}\n{:?}\n{:?}", report.damage, report.lost_tail, report.notes())
}

/// Reads a whole log that must open.
pub(crate) fn read(bytes: impl AsRef<[u8]>) -> Read {
    read_with(bytes, &Options::default()).unwrap_or_else(|error| panic!("{error}"))
}

/// The error of a log that must not open.
pub(crate) fn refusal(bytes: impl AsRef<[u8]>) -> String {
    match read_with(bytes, &Options::default()) {
        Ok(read) => panic!("it was read: {read:?}"),
        Err(error) => error.to_string(),
    }
}

/// The damaged places in words.
pub(crate) fn damage(report: &Report) -> Vec<String> {
    report.damage.iter().map(ToString::to_string).collect()
}

/// Bytes from hex digits with blanks.
pub(crate) fn bytes(hex: &str) -> Vec<u8> {
    let digits: Vec<u8> = hex.bytes().filter(u8::is_ascii_hexdigit).collect();
    digits
        .chunks(2)
        .map(|pair| u8::from_str_radix(std::str::from_utf8(pair).expect("digits"), 16).expect("two digits"))
        .collect()
}

/// A classic packet file in either byte order around records with the time they were seen.
pub(crate) fn pcap(big_endian: bool, magic: u32, link_type: u32, records: &[(u32, u32, &[u8])]) -> Vec<u8> {
    let number = |value: u32| {
        if big_endian { value.to_be_bytes() } else { value.to_le_bytes() }
    };
    let version = if big_endian { [0, 2, 0, 4] } else { [2, 0, 4, 0] };
    let mut file = Vec::new();
    file.extend_from_slice(&number(magic));
    file.extend_from_slice(&version);
    for value in [0, 0, 0xFFFF, link_type] {
        file.extend_from_slice(&number(value));
    }
    for (seconds, fraction, record) in records {
        for value in [*seconds, *fraction, record.len() as u32, record.len() as u32] {
            file.extend_from_slice(&number(value));
        }
        file.extend_from_slice(record);
    }
    file
}

/// Blocks of a packet file in either byte order.
pub(crate) struct Blocks {
    pub(crate) big_endian: bool,
    pub(crate) file: Vec<u8>,
}

impl Blocks {
    pub(crate) fn new(big_endian: bool) -> Self {
        let mut blocks = Self { big_endian, file: Vec::new() };
        blocks.section(1);
        blocks
    }

    pub(crate) fn u16(&self, value: u16) -> [u8; 2] {
        if self.big_endian { value.to_be_bytes() } else { value.to_le_bytes() }
    }

    pub(crate) fn u32(&self, value: u32) -> [u8; 4] {
        if self.big_endian { value.to_be_bytes() } else { value.to_le_bytes() }
    }

    pub(crate) fn block(&mut self, kind: u32, body: &[u8]) -> &mut Self {
        let padding = body.len().next_multiple_of(4) - body.len();
        let total = self.u32((12 + body.len() + padding) as u32);
        let kind = self.u32(kind);
        self.file.extend_from_slice(&kind);
        self.file.extend_from_slice(&total);
        self.file.extend_from_slice(body);
        self.file.extend_from_slice(&vec![0; padding]);
        self.file.extend_from_slice(&total);
        self
    }

    pub(crate) fn section(&mut self, major: u16) -> &mut Self {
        let mut body = self.u32(0x1A2B_3C4D).to_vec();
        body.extend_from_slice(&self.u16(major));
        body.extend_from_slice(&[0; 2]);
        body.extend_from_slice(&[0xFF; 8]);
        self.block(0x0A0D_0D0A, &body)
    }

    pub(crate) fn interface(&mut self, link_type: u16, options: &[(u16, &[u8])]) -> &mut Self {
        let mut body = self.u16(link_type).to_vec();
        body.extend_from_slice(&[0; 6]);
        for (code, value) in options {
            body.extend_from_slice(&self.u16(*code));
            body.extend_from_slice(&self.u16(value.len() as u16));
            body.extend_from_slice(value);
            body.resize(body.len().next_multiple_of(4), 0);
        }
        self.block(1, &body)
    }

    pub(crate) fn packet(&mut self, interface: u32, ticks: u64, record: &[u8]) -> &mut Self {
        let length = record.len() as u32;
        let mut body = Vec::new();
        for value in [interface, (ticks >> 32) as u32, ticks as u32, length, length] {
            body.extend_from_slice(&self.u32(value));
        }
        body.extend_from_slice(record);
        self.block(6, &body)
    }
}

/// The record of a classic frame with a standard or extended identifier.
pub(crate) fn record(id: u32, payload: &[u8]) -> Vec<u8> {
    let word = if id > 0x7FF { id | 0x8000_0000 } else { id };
    let mut record = word.to_be_bytes().to_vec();
    record.extend_from_slice(&[payload.len() as u8, 0, 0, 0]);
    record.extend_from_slice(payload);
    record
}
