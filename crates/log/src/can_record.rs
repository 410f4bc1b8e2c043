//! Records of link type 227: classic CAN, CAN FD and CAN XL frames and error messages.
//!
//! The layout is the one of the public link-type registry (page of LINKTYPE 227): an identifier word with flags, big-endian;
//! the length; flags of CAN FD; a reserved byte; the raw data length code of classic frames; the data.

use std::ops::Range;

use crate::flaw::Flaw;
use crate::frame::{CLASSIC_BYTES_MAX, FD_BYTES_MAX, Kind, STANDARD_ID_MAX, dlc_of_length};
use crate::identifiers::{ERROR_FLAG, EXTENDED_FLAG, IDENTIFIER_BITS, REMOTE_FLAG};
use crate::options::IdentifierOrder;

/// The link type of these records in the public registry.
pub(crate) const LINK_TYPE: u16 = 227;
/// The header before the data of classic and FD records.
pub(crate) const HEADER_BYTES: usize = 8;
/// The largest record there is: CAN XL with 2048 data bytes.
pub(crate) const RECORD_BYTES_MAX: usize = XL_HEADER_BYTES + 2048;

/// A record as long as this is CAN FD, whatever its flags say.
const FD_RECORD_BYTES: usize = HEADER_BYTES + FD_BYTES_MAX;
const XL_HEADER_BYTES: usize = 12;
const XL_MARK: u8 = 0x80;

/// Byte 5 of a CAN FD record.
pub(crate) const FD_BIT_RATE_SWITCH: u8 = 0x01;
pub(crate) const FD_ERROR_STATE: u8 = 0x02;
pub(crate) const FD_FORMAT: u8 = 0x04;

/// What one record is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum CanRecord {
    /// A classic or FD frame, or an error message.
    Frame(CanFrame),
    /// A whole CAN XL frame.
    Xl,
}

/// The parts of a classic or FD frame; `payload` is a range of the record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct CanFrame {
    pub(crate) id: u32,
    pub(crate) extended: bool,
    pub(crate) kind: Kind,
    pub(crate) fd: bool,
    pub(crate) bit_rate_switch: bool,
    pub(crate) error_state: bool,
    pub(crate) dlc: Option<u8>,
    pub(crate) payload: Range<usize>,
}

/// The identifier word of a record in the asked order; `None` for records that have none of this kind.
#[inline]
pub(crate) fn identifier_word(record: &[u8], order: IdentifierOrder) -> Option<u32> {
    let (&word, rest) = record.split_first_chunk::<4>()?;
    if rest.len() < HEADER_BYTES - 4 || rest[0] & XL_MARK != 0 {
        return None;
    }
    Some(match order {
        IdentifierOrder::AsPublished => u32::from_be_bytes(word),
        IdentifierOrder::Swapped => u32::from_le_bytes(word),
    })
}

/// Reads one whole record.
#[inline]
pub(crate) fn read(record: &[u8], order: IdentifierOrder) -> Result<CanRecord, Flaw<'static>> {
    let Some(&[_, _, _, _, length, flags, _, raw_dlc]) = record.first_chunk::<HEADER_BYTES>() else {
        return Err(Flaw::RecordShort(record.len()));
    };
    let Some(word) = identifier_word(record, order) else {
        return read_xl(record);
    };
    let fd = record.len() == FD_RECORD_BYTES || flags & FD_FORMAT != 0;
    let extended = word & EXTENDED_FLAG != 0;
    let kind = match word {
        _ if word & ERROR_FLAG != 0 => Kind::Error,
        _ if word & REMOTE_FLAG != 0 => Kind::Remote,
        _ => Kind::Data,
    };
    let id = word & IDENTIFIER_BITS;
    if !extended && kind != Kind::Error && id > STANDARD_ID_MAX {
        return Err(Flaw::IdentifierWord(word));
    }
    let (dlc, payload) = extent(usize::from(length), raw_dlc, fd, kind, record.len())?;
    Ok(CanRecord::Frame(CanFrame {
        id,
        extended,
        kind,
        fd,
        bit_rate_switch: fd && flags & FD_BIT_RATE_SWITCH != 0,
        error_state: fd && flags & FD_ERROR_STATE != 0,
        dlc: Some(dlc),
        payload,
    }))
}

/// The data length code of a classic frame with this many bytes. One with 8 may be sent with a code of 9 to 15; the raw
/// code is told only then.
#[inline]
fn classic_dlc(length: u8, raw_dlc: u8) -> u8 {
    if usize::from(length) == CLASSIC_BYTES_MAX && matches!(raw_dlc, 9..=15) { raw_dlc } else { length }
}

/// The data length code and the place of the data.
#[inline]
fn extent(
    length: usize,
    raw_dlc: u8,
    fd: bool,
    kind: Kind,
    record_bytes: usize,
) -> Result<(u8, Range<usize>), Flaw<'static>> {
    let dlc = match dlc_of_length(length) {
        Some(dlc) if fd => dlc,
        _ if !fd && length <= CLASSIC_BYTES_MAX => classic_dlc(length as u8, raw_dlc),
        _ if fd => return Err(Flaw::FdLength(length)),
        _ => return Err(Flaw::ClassicTooLong(length)),
    };
    if kind == Kind::Remote {
        let no_data = HEADER_BYTES..HEADER_BYTES;
        return if fd { Err(Flaw::FdRemote) } else { Ok((dlc, no_data)) };
    }
    let held = record_bytes - HEADER_BYTES;
    if held < length {
        return Err(Flaw::DataMissing { told: length, held });
    }
    Ok((dlc, HEADER_BYTES..HEADER_BYTES + length))
}

/// Checks a CAN XL record; its length is little-endian.
#[cold]
fn read_xl(record: &[u8]) -> Result<CanRecord, Flaw<'static>> {
    if record.len() <= XL_HEADER_BYTES || record.len() > RECORD_BYTES_MAX {
        return Err(Flaw::XlLength(record.len()));
    }
    let told = usize::from(u16::from_le_bytes([record[6], record[7]]));
    let held = record.len() - XL_HEADER_BYTES;
    if told == 0 || told > held {
        return Err(Flaw::XlDataMissing { told, held });
    }
    Ok(CanRecord::Xl)
}
