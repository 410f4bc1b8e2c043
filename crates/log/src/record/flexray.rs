//! Records of link type 210: FlexRay frames and symbols.
//!
//! The layout is the one of the public link-type registry (page of LINKTYPE 210): a byte with the channel and the kind of record; for a
//! frame a byte of errors, the five bytes of its header, and its payload, which may be cut; for a symbol its length in bits.

use crate::faults::Faults;
use crate::flaw::Flaw;
use crate::flexray::{self, Header};
use crate::frame::{Frame, Kind};
use crate::medium::{FlexRay, Medium};

use super::Record;

/// The shortest record there is: a symbol.
pub(super) const SYMBOL_BYTES: usize = 2;
/// What stands before the payload of a frame.
const BEFORE_PAYLOAD_BYTES: usize = SYMBOL_BYTES + flexray::HEADER_BYTES;
/// The largest record there is.
pub(super) const RECORD_BYTES_MAX: usize = BEFORE_PAYLOAD_BYTES + flexray::BYTES_MAX;

const ON_B: u8 = 0x80;
const FRAME: u8 = 1;
const SYMBOL: u8 = 2;
/// The bits of a symbol's length.
const SYMBOL_BITS_MAX: u8 = 0x7F;

/// The bits of the errors.
const ERRORS: [(u8, Faults); 5] = [
    (0x10, Faults::FRAME_CRC),
    (0x08, Faults::HEADER_CRC),
    (0x04, Faults::FRAME_END),
    (0x02, Faults::CODING),
    (0x01, Faults::FRAME_START),
];

/// Reads one whole record.
pub(super) fn read(record: &[u8]) -> Result<Record, Flaw<'static>> {
    let short = |what, least| Flaw::RecordShort { what, has: record.len(), least };
    let &[first, second] = record.first_chunk().ok_or(short("a FlexRay record", SYMBOL_BYTES))?;
    let on_b = first & ON_B != 0;
    match first & !ON_B {
        FRAME => {
            let header = record.get(SYMBOL_BYTES..).and_then(|rest| rest.first_chunk());
            let &header = header.ok_or(short("the record of a FlexRay frame", BEFORE_PAYLOAD_BYTES))?;
            read_frame(on_b, second, header, record.len() - BEFORE_PAYLOAD_BYTES)
        }
        SYMBOL => {
            let medium = Medium::FlexRay(FlexRay { on_b, ..FlexRay::default() });
            Ok(Record::new(u32::from(second & SYMBOL_BITS_MAX), Kind::Signal, medium, SYMBOL_BYTES..SYMBOL_BYTES))
        }
        other => Err(Flaw::FlexRayRecord(other)),
    }
}

/// A frame of which so many bytes of payload are held. Only where it carries data must they all be there.
fn read_frame(
    on_b: bool,
    errors: u8,
    header: [u8; flexray::HEADER_BYTES],
    held: usize,
) -> Result<Record, Flaw<'static>> {
    let (header, crc) = Header::of_bytes(header);
    let mut faults = Faults::of_bits(errors, &ERRORS);
    if crc != header.crc() {
        faults |= Faults::HEADER_CRC;
    }
    if header.slot == 0 {
        faults |= Faults::IDENTIFIER;
    }
    let kind = match (faults.is_empty(), header.carries_data) {
        (true, true) => Kind::Data,
        (true, false) => Kind::Null,
        (false, _) => Kind::Faulty,
    };
    let told = 2 * usize::from(header.words);
    if held < told && kind == Kind::Data {
        return Err(Flaw::DataMissing { told, held });
    }
    let Header { preamble, sync, startup, slot, cycle, .. } = header;
    let medium = Medium::FlexRay(FlexRay { cycle, on_b, preamble, sync, startup, header_crc: Some(crc), faults });
    let payload = BEFORE_PAYLOAD_BYTES..BEFORE_PAYLOAD_BYTES + told.min(held);
    Ok(Record::new(u32::from(slot), kind, medium, payload))
}

/// Appends the record of a frame or symbol that can exist. A check sequence that it does not tell is worked out.
pub(super) fn write(frame: &Frame<'_>, flexray: &FlexRay, to: &mut Vec<u8>) {
    let channel = if flexray.on_b { ON_B } else { 0 };
    if frame.kind == Kind::Signal {
        to.extend_from_slice(&[channel | SYMBOL, frame.id as u8 & SYMBOL_BITS_MAX]);
        return;
    }
    let &FlexRay { cycle, preamble, sync, startup, header_crc, faults, .. } = flexray;
    let (carries_data, words) = (frame.kind != Kind::Null, (frame.payload.len() / 2) as u8);
    let header = Header { preamble, carries_data, sync, startup, slot: frame.id as u16, words, cycle };
    to.extend_from_slice(&[channel | FRAME, faults.bits(&ERRORS)]);
    to.extend_from_slice(&header.bytes_with(header_crc.unwrap_or_else(|| header.crc())));
    to.extend_from_slice(frame.payload);
}
