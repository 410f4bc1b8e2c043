//! Where a SOME/IP message ends, and what cannot be one.

use super::message::{HEADER_BYTES, MessageKind, PROTOCOL_VERSION};
use crate::cut::Framing;
use crate::fields::Fields;

/// The framing of SOME/IP.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct SomeIp;

/// Why bytes are no SOME/IP message.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum SomeIpFault {
    /// Fewer bytes than a header has.
    #[error("{held} bytes are there, and a SOME/IP header has 16")]
    HeaderCut {
        /// Bytes that are there.
        held: usize,
    },
    /// The length field is smaller than it can be.
    #[error("the SOME/IP length field says {told}, and it counts at least the 8 header bytes behind it")]
    LengthTooSmall {
        /// The length field.
        told: u32,
    },
    /// The message is longer than the caller takes.
    #[error("the SOME/IP length field announces a message of {length} bytes, and at most {most_bytes} are taken")]
    TooLong {
        /// Bytes of the message, header included.
        length: u64,
        /// Bytes that are taken.
        most_bytes: usize,
    },
    /// The length field and the bytes given disagree.
    #[error("the SOME/IP length field announces a message of {length} bytes, and there are {held}")]
    LengthDisagrees {
        /// Bytes of the message, header included.
        length: u64,
        /// Bytes that are there.
        held: usize,
    },
    /// Another version of the protocol.
    #[error("the SOME/IP header says protocol version {0}, and only version 1 can be read")]
    ProtocolVersion(u8),
}

impl Framing for SomeIp {
    type Fault = SomeIpFault;

    const HEADER_BYTES: usize = HEADER_BYTES;

    fn length(header: &[u8], most_bytes: usize) -> Result<usize, SomeIpFault> {
        let cut = SomeIpFault::HeaderCut { held: header.len() };
        let mut fields = Fields(header);
        let (_, told, _) = (fields.u32().ok_or(cut)?, fields.u32().ok_or(cut)?, fields.u32().ok_or(cut)?);
        let (version, _) = (fields.u8().ok_or(cut)?, fields.array::<3>().ok_or(cut)?);
        if version != PROTOCOL_VERSION {
            return Err(SomeIpFault::ProtocolVersion(version));
        }
        if told < 8 {
            return Err(SomeIpFault::LengthTooSmall { told });
        }
        let length = u64::from(told) + 8;
        match usize::try_from(length) {
            Ok(fits) if fits <= most_bytes => Ok(fits),
            _ => Err(SomeIpFault::TooLong { length, most_bytes }),
        }
    }

    fn is_likely(header: &[u8]) -> bool {
        let &[.., kind, return_code] = header else { return false };
        // Only answers have a return code; 0x5E is the highest that a service may choose.
        let return_code_max = match MessageKind::of_byte(kind) {
            (MessageKind::Other(_), _) => return false,
            (MessageKind::Response | MessageKind::Error, _) => 0x5E,
            _ => 0,
        };
        return_code <= return_code_max
    }
}
