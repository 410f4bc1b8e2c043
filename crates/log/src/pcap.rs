//! The classic packet file: a 24-byte header, then records of a 16-byte header and the packet.
//!
//! The layout is the one of the IETF draft on the pcap capture file format (opsawg-pcap).

use crate::byte_order::ByteOrder;
use crate::error::LogError;
use crate::flaw::Implausible;
use crate::frame::{Channel, Found, PlaceInLog};
use crate::packet::Packet;
use crate::pass::{Shared, Step};
use crate::record::LinkType;
use crate::search;
use crate::window::Window;

const FILE_HEADER_BYTES: usize = 24;
const RECORD_HEADER_BYTES: usize = 16;
/// The largest packet of another link type that is taken for one: the largest limit recorders use (common practice, no source).
const OTHER_PACKET_BYTES_MAX: u32 = 256 * 1024;
/// How far the clock may jump over a damaged place before the next record is not believed: a week, in seconds.
const JUMP_S_MAX: u32 = 7 * 24 * 3600;

const MICROSECONDS: u32 = 0xA1B2_C3D4;
const NANOSECONDS: u32 = 0xA1B2_3C4D;

/// Whether the bytes begin with one of the four forms of the magic number.
pub(crate) fn begins(first: &[u8]) -> bool {
    magic(first).is_some()
}

/// The byte order and the length of one tick in nanoseconds.
fn magic(first: &[u8]) -> Option<(ByteOrder, u32)> {
    [ByteOrder::Little, ByteOrder::Big].into_iter().find_map(|order| match order.u32_at(first, 0)? {
        MICROSECONDS => Some((order, 1_000)),
        NANOSECONDS => Some((order, 1)),
        _ => None,
    })
}

/// The reader of one classic packet file.
#[derive(Debug, Clone)]
pub(crate) struct PcapReader {
    order: ByteOrder,
    tick_ns: u32,
    /// The link type, or the number of one that is not read here.
    link: Result<LinkType, u16>,
    packet_bytes_max: u32,
    records: u64,
    latest_s: Option<u32>,
}

/// The header of one record.
#[derive(Debug, Clone, Copy)]
struct RecordHeader {
    seconds: u32,
    fraction: u32,
    captured: u32,
    original: u32,
}

impl PcapReader {
    /// Reads the file header.
    pub(crate) fn start(window: &mut Window, shared: &mut Shared, name: &str) -> Result<Self, LogError> {
        let refuse = |what: String| LogError::Head { name: name.to_owned(), layout: "pcap", what };
        let Some(header) = window.data().first_chunk::<FILE_HEADER_BYTES>() else {
            let has = window.data().len();
            return Err(refuse(format!("its header has {FILE_HEADER_BYTES} bytes, and the log only {has}")));
        };
        let Some((order, tick_ns)) = magic(header) else {
            return Err(refuse("its first four bytes are no magic number of this layout".to_owned()));
        };
        let number = |at| order.u32_at(header, at).unwrap_or_default();
        let major = order.u16_at(header, 4).unwrap_or_default();
        if major != 2 {
            return Err(refuse(format!("byte 4 says version {major}, and only version 2 can be read")));
        }
        let link_type = (number(20) & 0xFFFF) as u16;
        let link = LinkType::of_number(link_type).ok_or(link_type);
        let packet_bytes_max = match link {
            Ok(link) => {
                shared.channels.add(b"");
                (link.record_bytes().end - 1) as u32
            }
            Err(_) => OTHER_PACKET_BYTES_MAX,
        };
        window.consume(FILE_HEADER_BYTES);
        Ok(Self { order, tick_ns, link, packet_bytes_max, records: 0, latest_s: None })
    }

    /// Where the reading position is.
    pub(crate) fn place(&self, window: &Window) -> PlaceInLog {
        PlaceInLog::Block { number: self.records + 1, offset: window.offset() }
    }

    /// Reads one record, or steps over one damaged place.
    #[inline]
    pub(crate) fn step(&mut self, window: &mut Window, shared: &mut Shared) -> Step {
        let Some(header) = self.next_header(window, shared) else {
            return Step::End;
        };
        match self.whole_record(&header, window) {
            Ok(record_bytes) => {
                let frame = self.record(&header, record_bytes, window, shared);
                window.consume(record_bytes);
                frame.map_or(Step::Nothing, Step::Frame)
            }
            Err(what) => {
                self.search(window, shared, what);
                Step::Nothing
            }
        }
    }

    /// The length of the record with this header, once it is believed and fetched.
    #[inline]
    fn whole_record(&self, header: &RecordHeader, window: &mut Window) -> Result<usize, Implausible> {
        let record_bytes = RECORD_HEADER_BYTES + header.captured as usize;
        self.check(header)?;
        if self.is_doubtful(header) && !self.is_followed(record_bytes, window) {
            return Err(Implausible::Doubtful(header.captured));
        }
        if !window.have(record_bytes) {
            let left = window.data().len();
            return Err(Implausible::RecordBeyondEnd { told: header.captured, left });
        }
        Ok(record_bytes)
    }

    /// What one whole record says.
    #[inline]
    fn record(
        &mut self,
        header: &RecordHeader,
        record_bytes: usize,
        window: &Window,
        shared: &mut Shared,
    ) -> Option<Found> {
        let packet = |link| Packet {
            link,
            record: &window.data()[RECORD_HEADER_BYTES..record_bytes],
            position: window.position() + RECORD_HEADER_BYTES,
            original: header.original,
            time_ns: Some(self.time_ns(header)),
            channel: Channel(0),
            offset: window.offset(),
            place: self.place(window),
        };
        let found = match self.link {
            Ok(link) => packet(link).frame(shared),
            Err(number) => {
                shared.report.other_link(number);
                None
            }
        };
        self.records += 1;
        self.latest_s = Some(header.seconds);
        found
    }

    /// The record header at the reading position; `None` at the end of the log.
    #[inline]
    fn next_header(&self, window: &mut Window, shared: &mut Shared) -> Option<RecordHeader> {
        if window.have(RECORD_HEADER_BYTES) {
            return self.header_at(window.data(), 0);
        }
        let left = window.data().len();
        if left > 0 {
            shared.report.tail_lost(self.place(window), format!("the log ends after {left} bytes of a record"));
            window.consume(left);
        }
        None
    }

    #[inline]
    fn header_at(&self, bytes: &[u8], at: usize) -> Option<RecordHeader> {
        let header: &[u8; RECORD_HEADER_BYTES] = bytes.get(at..)?.first_chunk()?;
        let [seconds, fraction, captured, original] =
            [0, 4, 8, 12].map(|at| self.order.u32([header[at], header[at + 1], header[at + 2], header[at + 3]]));
        Some(RecordHeader { seconds, fraction, captured, original })
    }

    #[inline]
    fn time_ns(&self, header: &RecordHeader) -> i64 {
        i64::from(header.seconds) * 1_000_000_000 + i64::from(header.fraction) * i64::from(self.tick_ns)
    }

    /// Whether a record can have this header.
    #[inline]
    fn check(&self, header: &RecordHeader) -> Result<(), Implausible> {
        let &RecordHeader { fraction, captured, original, .. } = header;
        if captured > original {
            return Err(Implausible::RecordLength { captured, original });
        }
        if captured > self.packet_bytes_max {
            return Err(Implausible::RecordTooLong { captured, most: self.packet_bytes_max });
        }
        if fraction >= 1_000_000_000 / self.tick_ns {
            return Err(Implausible::Fraction(fraction));
        }
        Ok(())
    }

    /// Whether the header would be believed after damage: whole, and not far from the last good time.
    fn is_likely(&self, header: &RecordHeader) -> bool {
        let least = self.link.map_or(1, |link| link.record_bytes().start as u32);
        self.check(header).is_ok()
            && header.captured == header.original
            && header.captured >= least
            && self.latest_s.is_none_or(|latest| header.seconds.abs_diff(latest) <= JUMP_S_MAX)
    }

    /// Whether the header can be one, but hardly is: the record behind it must confirm it.
    #[inline]
    fn is_doubtful(&self, header: &RecordHeader) -> bool {
        !self.is_likely(header) || self.link.is_ok_and(|link| header.captured as usize > link.usual_bytes_max())
    }

    /// Whether another record can stand behind this one, or the log ends there.
    #[cold]
    fn is_followed(&self, record_bytes: usize, window: &mut Window) -> bool {
        let whole = window.have(record_bytes + RECORD_HEADER_BYTES);
        !whole || self.header_at(window.data(), record_bytes).is_some_and(|next| self.check(&next).is_ok())
    }

    /// Whether a likely record stands at the reading position, and another one, or the end of the log, behind it.
    fn is_likely_here(&self, window: &mut Window) -> bool {
        let Some(first) = self.header_at(window.data(), 0).filter(|first| self.is_likely(first)) else {
            return false;
        };
        let behind = RECORD_HEADER_BYTES + first.captured as usize;
        if window.have(behind + RECORD_HEADER_BYTES) {
            return self.header_at(window.data(), behind).is_some_and(|second| self.is_likely(&second));
        }
        window.data().len() == behind
    }

    /// Steps over a damaged place, to the next two records that fit together.
    #[cold]
    fn search(&mut self, window: &mut Window, shared: &mut Shared, what: Implausible) {
        let place = self.place(window);
        self.records += 1;
        let is_likely_here = |window: &mut Window| self.is_likely_here(window);
        search::next_likely(window, &mut shared.report, (place, what), RECORD_HEADER_BYTES, is_likely_here);
    }
}
