//! Headers of ISO 14230-2 and ISO 9141-2.

use wirelore_bits::sums::ByteSum;

use super::UartFault;
use super::form::{Check, Declared, Parts};

/// How a message is addressed: bits 7 and 6 of the format byte.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Addressing {
    /// No address bytes follow.
    Absent,
    /// The header of ISO 9141-2 ("exception mode"): three bytes, and no length.
    Iso9141 {
        /// The first of them, 0x40..=0x7F: a tester asks with 0x68, and a unit answers with 0x48.
        format: u8,
    },
    /// Target and source follow; the target is one unit.
    Physical,
    /// Target and source follow; the target is a group.
    Functional,
}

impl Addressing {
    fn of(format: u8) -> Self {
        match format >> 6 {
            0 => Self::Absent,
            1 => Self::Iso9141 { format },
            2 => Self::Physical,
            _ => Self::Functional,
        }
    }
}

/// Bits 5 to 0 of the format byte: the number of data bytes, or 0 where a byte of its own tells it.
const LENGTH_BITS: u8 = 0x3F;

/// Bytes before the data, and the number of data bytes where it is declared.
struct Header {
    bytes: usize,
    data: Option<u8>,
}

/// `Err` holds the number of bytes that it takes to know.
fn header(bytes: &[u8]) -> Result<Header, usize> {
    let format = *bytes.first().ok_or(1usize)?;
    let addressed = match Addressing::of(format) {
        Addressing::Iso9141 { .. } => return Ok(Header { bytes: 3, data: None }),
        Addressing::Absent => 1,
        Addressing::Physical | Addressing::Functional => 3,
    };
    match format & LENGTH_BITS {
        0 => {
            let length = *bytes.get(addressed).ok_or(addressed + 1)?;
            Ok(Header { bytes: addressed + 1, data: Some(length) })
        }
        length => Ok(Header { bytes: addressed, data: Some(length) }),
    }
}

pub(super) fn declared(bytes: &[u8]) -> Result<Declared, UartFault> {
    Ok(match header(bytes) {
        Err(needed) => Declared::Needs(needed),
        Ok(Header { data: Some(0), .. }) => return Err(UartFault::LengthTooSmall { told: 0, least: 1 }),
        Ok(Header { bytes, data: Some(data) }) => Declared::Length(bytes + usize::from(data) + 1),
        Ok(Header { bytes, data: None }) => Declared::ByPause(bytes + 2),
    })
}

/// Parts of a message whose length fits its header.
pub(super) fn parts(bytes: &[u8]) -> Parts {
    let (&found, before) = bytes.split_last().unwrap_or((&0, &[]));
    let addressing = bytes.first().map(|format| Addressing::of(*format));
    let start = header(bytes).map_or(before.len(), |header| header.bytes.min(before.len()));
    let (target, source) = match addressing {
        None | Some(Addressing::Absent) => (None, None),
        _ => (bytes.get(1).copied(), bytes.get(2).copied()),
    };
    let check = Check::of(found, ByteSum::WRAPPING.checksum(before));
    Parts { addressing, source, target, data: start..before.len(), check }
}

/// With addresses, or one of the two headers that ISO 9141-2 has for requests and answers.
pub(super) fn is_likely(bytes: &[u8]) -> bool {
    match bytes {
        [0x68, 0x6A, ..] | [0x48, 0x6B, ..] | [0x68 | 0x48] | [] => true,
        [format, ..] => matches!(Addressing::of(*format), Addressing::Physical | Addressing::Functional),
    }
}

/// Writes a message behind what is in `out`: with `addresses` (target, source) where the addressing has them. Data of more than 63 bytes
/// gets a length byte of its own. `false`, and nothing written, where the data has none or more than 255 bytes.
#[must_use]
pub fn write(addressing: Addressing, addresses: (u8, u8), data: &[u8], out: &mut Vec<u8>) -> bool {
    let at = out.len();
    let Ok(length @ 1..) = u8::try_from(data.len()) else { return false };
    let in_format = if length > LENGTH_BITS { 0 } else { length };
    let (target, source) = addresses;
    match addressing {
        Addressing::Absent => out.push(in_format),
        Addressing::Iso9141 { format } => out.extend([0x40 | format & LENGTH_BITS, target, source]),
        Addressing::Physical => out.extend([0x80 | in_format, target, source]),
        Addressing::Functional => out.extend([0xC0 | in_format, target, source]),
    }
    if in_format == 0 && !matches!(addressing, Addressing::Iso9141 { .. }) {
        out.push(length);
    }
    out.extend(data);
    out.push(ByteSum::WRAPPING.checksum(&out[at..]) as u8);
    true
}
