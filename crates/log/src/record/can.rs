//! Records of link type 227: classic CAN, CAN FD and CAN XL frames and error messages.
//!
//! The layout is the one of the public link-type registry (page of LINKTYPE 227): an identifier word with flags, big-endian;
//! the length; flags of CAN FD; a reserved byte; the raw data length code of classic frames; the data. A CAN XL frame has a word with
//! priority and virtual network, its flags, the kind of its data, and length and acceptance field, both little-endian.

use std::ops::Range;

use crate::flaw::Flaw;
use crate::frame::{CLASSIC_BYTES_MAX, FD_BYTES_MAX, Frame, Kind, STANDARD_ID_MAX, XL_BYTES_MAX, dlc_of_length};
use crate::identifiers::{ERROR_FLAG, EXTENDED_FLAG, IDENTIFIER_BITS, REMOTE_FLAG};
use crate::medium::{CanXl, Medium};
use crate::options::IdentifierOrder;

use super::Record;

/// The header before the data of classic and FD records.
pub(crate) const HEADER_BYTES: usize = 8;
/// The largest record there is: CAN XL with 2048 data bytes.
pub(super) const RECORD_BYTES_MAX: usize = XL_HEADER_BYTES + XL_BYTES_MAX;

/// A record as long as this is CAN FD, whatever its flags say.
pub(super) const FD_RECORD_BYTES: usize = HEADER_BYTES + FD_BYTES_MAX;
const XL_HEADER_BYTES: usize = 12;
const XL_MARK: u8 = 0x80;
const XL_EXTENDED_CONTENT: u8 = 0x01;
const XL_REQUEST_SUBSTITUTION: u8 = 0x02;

/// Byte 5 of a CAN FD record.
const FD_BIT_RATE_SWITCH: u8 = 0x01;
const FD_ERROR_STATE: u8 = 0x02;
const FD_FORMAT: u8 = 0x04;

/// The identifier word of a record in the asked order; `None` for records that have none of this kind.
#[inline]
pub(crate) fn identifier_word(record: &[u8], order: IdentifierOrder) -> Option<u32> {
    let (&word, rest) = record.split_first_chunk::<4>()?;
    if rest.len() < HEADER_BYTES - 4 || rest[0] & XL_MARK != 0 {
        return None;
    }
    Some(in_order(word, order))
}

#[inline]
fn in_order(word: [u8; 4], order: IdentifierOrder) -> u32 {
    match order {
        IdentifierOrder::AsPublished => u32::from_be_bytes(word),
        IdentifierOrder::Swapped => u32::from_le_bytes(word),
    }
}

/// Reads one whole record.
#[inline]
pub(crate) fn read(record: &[u8], order: IdentifierOrder) -> Result<Record, Flaw<'static>> {
    let Some(&[_, _, _, _, length, flags, _, raw_dlc]) = record.first_chunk::<HEADER_BYTES>() else {
        return Err(Flaw::RecordShort { what: "a CAN record", has: record.len(), least: HEADER_BYTES });
    };
    let Some(word) = identifier_word(record, order) else {
        return read_xl(record, order);
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
    Ok(Record {
        id,
        extended,
        kind,
        fd,
        bit_rate_switch: fd && flags & FD_BIT_RATE_SWITCH != 0,
        error_state: fd && flags & FD_ERROR_STATE != 0,
        dlc: Some(dlc),
        medium: Medium::Can,
        payload,
    })
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

/// Reads a CAN XL record.
#[cold]
fn read_xl(record: &[u8], order: IdentifierOrder) -> Result<Record, Flaw<'static>> {
    let Some(&[b0, b1, b2, b3, flags, sdu_type, low, high, a0, a1, a2, a3]) = record
        .first_chunk::<XL_HEADER_BYTES>()
        .filter(|_| (XL_HEADER_BYTES + 1..=RECORD_BYTES_MAX).contains(&record.len()))
    else {
        return Err(Flaw::XlLength(record.len()));
    };
    let told = usize::from(u16::from_le_bytes([low, high]));
    let held = record.len() - XL_HEADER_BYTES;
    if told == 0 || told > held {
        return Err(Flaw::XlDataMissing { told, held });
    }
    let word = in_order([b0, b1, b2, b3], order);
    let xl = CanXl {
        sdu_type,
        virtual_network: (word >> 16) as u8,
        acceptance: u32::from_le_bytes([a0, a1, a2, a3]),
        extended_content: flags & XL_EXTENDED_CONTENT != 0,
        request_substitution: flags & XL_REQUEST_SUBSTITUTION != 0,
    };
    Ok(Record {
        id: word & STANDARD_ID_MAX,
        extended: false,
        kind: Kind::Data,
        fd: false,
        bit_rate_switch: false,
        error_state: false,
        dlc: None,
        medium: Medium::CanXl(xl),
        payload: XL_HEADER_BYTES..XL_HEADER_BYTES + told,
    })
}

/// Appends the record of a classic or FD frame, or of an error message, that can exist.
pub(super) fn write(frame: &Frame<'_>, to: &mut Vec<u8>) {
    let kind_flag = match frame.kind {
        Kind::Remote => REMOTE_FLAG,
        Kind::Error => ERROR_FLAG,
        _ => 0,
    };
    let word = frame.id | kind_flag | if frame.extended { EXTENDED_FLAG } else { 0 };
    let dlc = frame.dlc.filter(|dlc| *dlc <= 15);
    let length = match frame.kind {
        Kind::Remote => dlc.unwrap_or(0).min(CLASSIC_BYTES_MAX as u8),
        _ => frame.payload.len().min(FD_BYTES_MAX) as u8,
    };
    let raw_dlc = dlc.filter(|dlc| !frame.fd && *dlc > 8 && usize::from(length) == CLASSIC_BYTES_MAX);
    let mut flags = 0;
    if frame.fd {
        flags = FD_FORMAT;
        flags |= if frame.bit_rate_switch { FD_BIT_RATE_SWITCH } else { 0 };
        flags |= if frame.error_state { FD_ERROR_STATE } else { 0 };
    }
    to.extend_from_slice(&word.to_be_bytes());
    to.extend_from_slice(&[length, flags, 0, raw_dlc.unwrap_or(0)]);
    to.extend_from_slice(frame.payload);
}

/// Appends the record of a CAN XL frame that can exist.
pub(super) fn write_xl(frame: &Frame<'_>, xl: &CanXl, to: &mut Vec<u8>) {
    let word = u32::from(xl.virtual_network) << 16 | frame.id;
    let mut flags = XL_MARK;
    flags |= if xl.extended_content { XL_EXTENDED_CONTENT } else { 0 };
    flags |= if xl.request_substitution { XL_REQUEST_SUBSTITUTION } else { 0 };
    let length = (frame.payload.len().min(XL_BYTES_MAX) as u16).to_le_bytes();
    to.extend_from_slice(&word.to_be_bytes());
    to.extend_from_slice(&[flags, xl.sdu_type, length[0], length[1]]);
    to.extend_from_slice(&xl.acceptance.to_le_bytes());
    to.extend_from_slice(frame.payload);
}
