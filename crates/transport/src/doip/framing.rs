//! Where a DoIP message ends, and what cannot be one.

use super::lengths::Lengths;
use super::names::payload_type_name;
use crate::cut::Framing;
use crate::fields::Fields;

pub(super) const HEADER_BYTES: usize = 8;

/// The framing of DoIP.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct DoIp;

/// Why bytes are no DoIP message.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum DoIpFault {
    /// Fewer bytes than a header has.
    #[error("{held} bytes are there, and a DoIP header has 8")]
    HeaderCut {
        /// Bytes that are there.
        held: usize,
    },
    /// The second byte is not the first one inverted.
    #[error("the DoIP header says version {version:#04X} and inverse version {inverse:#04X}, which must be {:#04X}", !version)]
    InverseVersion {
        /// The version.
        version: u8,
        /// What should be its inverse.
        inverse: u8,
    },
    /// The message is longer than the caller takes.
    #[error("the DoIP header announces a message of {length} bytes, and at most {most_bytes} are taken")]
    TooLong {
        /// Bytes of the message, header included.
        length: u64,
        /// Bytes that are taken.
        most_bytes: usize,
    },
    /// The length in the header and the bytes given disagree.
    #[error("the DoIP header announces a message of {length} bytes, and there are {held}")]
    LengthDisagrees {
        /// Bytes of the message, header included.
        length: usize,
        /// Bytes that are there.
        held: usize,
    },
    /// The payload has a length that its type cannot have.
    #[error("a {} has {held} bytes, and it needs {wanted}", payload_type_name(*payload_type))]
    PayloadLength {
        /// The payload type.
        payload_type: u16,
        /// Bytes of the payload.
        held: usize,
        /// The lengths that are possible.
        wanted: &'static str,
    },
}

impl Framing for DoIp {
    type Fault = DoIpFault;

    const HEADER_BYTES: usize = HEADER_BYTES;

    fn length(header: &[u8], most_bytes: usize) -> Result<usize, DoIpFault> {
        let cut = DoIpFault::HeaderCut { held: header.len() };
        let mut fields = Fields(header);
        let (version, inverse) = (fields.u8().ok_or(cut)?, fields.u8().ok_or(cut)?);
        let (_, told) = (fields.u16().ok_or(cut)?, fields.u32().ok_or(cut)?);
        if inverse != !version {
            return Err(DoIpFault::InverseVersion { version, inverse });
        }
        let length = u64::from(told) + HEADER_BYTES as u64;
        match usize::try_from(length) {
            Ok(fits) if fits <= most_bytes => Ok(fits),
            _ => Err(DoIpFault::TooLong { length, most_bytes }),
        }
    }

    fn is_likely(header: &[u8]) -> bool {
        let &[version, _, high, low, l0, l1, l2, l3] = header else { return false };
        let (payload_type, told) = (u16::from_be_bytes([high, low]), u32::from_be_bytes([l0, l1, l2, l3]));
        // 2010, 2012 and 2019 editions; FF asks for a vehicle whose version is not known.
        matches!(version, 0x01..=0x03 | 0xFF)
            && Lengths::of(payload_type).is_some_and(|lengths| lengths.possible.contains(&told))
    }
}
