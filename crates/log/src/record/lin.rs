//! Records of link type 212: LIN frames and events.
//!
//! The layout is the one of the public link-type registry (page of LINKTYPE 212): a revision, three reserved bytes, a byte with the
//! length, the kind of message and the kind of checksum, the protected identifier, the checksum, the errors, and four or eight bytes
//! of data. An event has its code there, big-endian.

use crate::faults::Faults;
use crate::flaw::Flaw;
use crate::frame::{Frame, Kind};
use crate::lin;
use crate::medium::{Lin, LinChecksum, Medium};

use super::Record;

/// The header before the data.
pub(super) const HEADER_BYTES: usize = 8;
/// The largest record there is.
pub(super) const RECORD_BYTES_MAX: usize = HEADER_BYTES + lin::BYTES_MAX;

const REVISION: u8 = 1;
const FRAME: u8 = 0;
const EVENT: u8 = 3;
const EVENT_BYTES: usize = 4;

const CLASSIC: u8 = 1;
const ENHANCED: u8 = 2;

const NO_RESPONSE: u8 = 0x01;
/// The bits of the other errors.
const ERRORS: [(u8, Faults); 5] = [
    (0x20, Faults::OVERFLOW),
    (0x10, Faults::IDENTIFIER),
    (0x08, Faults::CHECKSUM),
    (0x04, Faults::PARITY),
    (0x02, Faults::FRAMING),
];

/// Reads one whole record.
pub(super) fn read(record: &[u8]) -> Result<Record, Flaw<'static>> {
    let Some(&header) = record.first_chunk::<HEADER_BYTES>() else {
        return Err(Flaw::RecordShort { what: "a LIN record", has: record.len(), least: HEADER_BYTES });
    };
    let [revision, _, _, _, extent, ..] = header;
    if revision != REVISION {
        return Err(Flaw::LinRevision(revision));
    }
    match extent >> 2 & 3 {
        FRAME => read_frame(header, record),
        EVENT => read_event(record),
        other => Err(Flaw::LinMessage(other)),
    }
}

/// A frame: what the recorder saw wrong counts, and so do parity and checksum, where it tells which.
fn read_frame(header: [u8; HEADER_BYTES], record: &[u8]) -> Result<Record, Flaw<'static>> {
    let [_, _, _, _, extent, protected_id, checksum, errors] = header;
    let told = usize::from(extent >> 4);
    if told > lin::BYTES_MAX {
        return Err(Flaw::LinLength(told));
    }
    let checksum_kind = match extent & 3 {
        CLASSIC => Some(LinChecksum::Classic),
        ENHANCED => Some(LinChecksum::Enhanced),
        _ => None,
    };
    let mut faults = Faults::of_bits(errors, &ERRORS);
    if !lin::is_parity_right(protected_id) {
        faults |= Faults::PARITY;
    }
    let is_answered = told > 0 && errors & NO_RESPONSE == 0;
    let payload = if is_answered { HEADER_BYTES..HEADER_BYTES + told } else { HEADER_BYTES..HEADER_BYTES };
    let Some(data) = record.get(payload.clone()) else {
        return Err(Flaw::DataMissing { told, held: record.len() - HEADER_BYTES });
    };
    if is_answered && checksum_kind.is_some() && !lin::fits(checksum_kind, protected_id, data, checksum) {
        faults |= Faults::CHECKSUM;
    }
    let kind = match (faults.is_empty(), is_answered) {
        (true, true) => Kind::Data,
        (true, false) => Kind::Unanswered,
        (false, _) => Kind::Faulty,
    };
    // A recorder that does not know the kind mostly does not know the sum either, and leaves its byte 0.
    let is_left_out = checksum == 0
        && checksum_kind.is_none()
        && !faults.contains(Faults::CHECKSUM)
        && !lin::fits(None, protected_id, data, checksum);
    let checksum = (is_answered && !is_left_out).then_some(checksum);
    let medium = Medium::Lin(Lin { protected_id: Some(protected_id), checksum, checksum_kind, faults });
    Ok(Record::new(u32::from(protected_id & lin::ID_MAX), kind, medium, payload))
}

/// An event: its code stands where a frame has its data.
fn read_event(record: &[u8]) -> Result<Record, Flaw<'static>> {
    let Some(&code) = record[HEADER_BYTES..].first_chunk::<EVENT_BYTES>() else {
        return Err(Flaw::DataMissing { told: EVENT_BYTES, held: record.len() - HEADER_BYTES });
    };
    let nothing = HEADER_BYTES..HEADER_BYTES;
    Ok(Record::new(u32::from_be_bytes(code), Kind::Signal, Medium::Lin(Lin::default()), nothing))
}

/// Appends the record of a frame or event that can exist. What the frame does not tell of its identifier and checksum is worked out.
pub(super) fn write(frame: &Frame<'_>, lin: &Lin, to: &mut Vec<u8>) {
    if frame.kind == Kind::Signal {
        to.extend_from_slice(&[REVISION, 0, 0, 0, (EVENT_BYTES as u8) << 4 | EVENT << 2, 0, 0, 0]);
        to.extend_from_slice(&frame.id.to_be_bytes());
        return;
    }
    let data = frame.payload;
    let protected_id = lin.protected_id.unwrap_or_else(|| lin::protected(frame.id as u8));
    let worked_out = || lin.checksum_kind.map(|kind| kind.over(protected_id, data));
    let checksum = lin.checksum.or_else(worked_out).filter(|_| !data.is_empty()).unwrap_or(0);
    let checksum_kind = match lin.checksum_kind {
        Some(LinChecksum::Classic) => CLASSIC,
        Some(LinChecksum::Enhanced) => ENHANCED,
        None => 0,
    };
    let no_response = if frame.kind == Kind::Unanswered { NO_RESPONSE } else { 0 };
    let extent = (data.len() as u8) << 4 | FRAME << 2 | checksum_kind;
    let errors = lin.faults.bits(&ERRORS) | no_response;
    to.extend_from_slice(&[REVISION, 0, 0, 0, extent, protected_id, checksum, errors]);
    to.extend_from_slice(data);
    let room = if data.len() > lin::BYTES_MAX / 2 { lin::BYTES_MAX } else { lin::BYTES_MAX / 2 };
    to.resize(to.len() + room - data.len(), 0);
}
