//! One message: header and payload.

use super::framing::{SomeIp, SomeIpFault};
use crate::cut::Framing;
use crate::fields::Fields;

pub(super) const HEADER_BYTES: usize = 16;
pub(super) const PROTOCOL_VERSION: u8 = 1;
/// Bit 5 of the message type: the payload is a segment (SOME/IP-TP).
const SEGMENTED: u8 = 0x20;

/// A message.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Message<'a> {
    /// What stands before the payload.
    pub header: Header,
    /// What it carries; of a segmented message, with the word that says where the segment belongs.
    pub payload: &'a [u8],
}

/// The header without its length, which the payload tells, and its protocol version, which is 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Header {
    /// The service.
    pub service: u16,
    /// The method, or with bit 15 set the event.
    pub method: u16,
    /// The client that asks; 0 in notifications.
    pub client: u16,
    /// Counts calls from 1; 0 where nobody counts.
    pub session: u16,
    /// Major version of the service's interface.
    pub interface_version: u8,
    /// What the message is for.
    pub kind: MessageKind,
    /// Whether the payload is a segment of a longer one.
    pub segmented: bool,
    /// How a request ended; 0 in all but answers.
    pub return_code: u8,
}

/// What a message is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum MessageKind {
    /// A call that is answered.
    Request,
    /// A call that is not answered.
    RequestNoReturn,
    /// An event.
    Notification,
    /// The answer to a request.
    Response,
    /// The answer to a request that failed.
    Error,
    /// A type that the standard does not know.
    Other(u8),
}

impl MessageKind {
    /// The kind that a byte of the header says, and whether it says "segmented".
    #[must_use]
    pub fn of_byte(byte: u8) -> (Self, bool) {
        let kind = match byte & !SEGMENTED {
            0x00 => Self::Request,
            0x01 => Self::RequestNoReturn,
            0x02 => Self::Notification,
            0x80 => Self::Response,
            0x81 => Self::Error,
            other => Self::Other(other),
        };
        (kind, byte & SEGMENTED != 0)
    }

    /// The standard's name for it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Request => "request",
            Self::RequestNoReturn => "request no return",
            Self::Notification => "notification",
            Self::Response => "response",
            Self::Error => "error",
            Self::Other(_) => "unknown message type",
        }
    }

    fn byte(self, segmented: bool) -> u8 {
        let byte = self.number();
        if segmented { byte | SEGMENTED } else { byte }
    }

    /// The byte of the header that says it, without the bit for segments.
    #[must_use]
    pub fn number(self) -> u8 {
        match self {
            Self::Request => 0x00,
            Self::RequestNoReturn => 0x01,
            Self::Notification => 0x02,
            Self::Response => 0x80,
            Self::Error => 0x81,
            Self::Other(byte) => byte & !SEGMENTED,
        }
    }
}

/// A message that is none: sent into a TCP stream so that a receiver finds the beginnings of messages again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Cookie {
    /// From the client.
    OfClient,
    /// From the server.
    OfServer,
}

impl Cookie {
    /// Its 16 bytes (AUTOSAR PRS SOME/IP Protocol, "magic cookies").
    #[must_use]
    pub fn bytes(self) -> [u8; HEADER_BYTES] {
        let (method, kind) = match self {
            Self::OfClient => (0x00, 0x01),
            Self::OfServer => (0x80, 0x02),
        };
        [0xFF, 0xFF, method, 0, 0, 0, 0, 8, 0xDE, 0xAD, 0xBE, 0xEF, 1, 1, kind, 0]
    }

    /// The cookie that a message is.
    #[must_use]
    pub fn of(message: &[u8]) -> Option<Self> {
        [Self::OfClient, Self::OfServer].into_iter().find(|cookie| cookie.bytes() == message)
    }
}

impl Header {
    /// Bytes 8..15 of the message, behind the length that they are counted in: client, session, versions, kind and return code.
    #[must_use]
    pub fn behind_length(&self) -> [u8; 8] {
        let [client, session] = [self.client.to_be_bytes(), self.session.to_be_bytes()];
        let kind = self.kind.byte(self.segmented);
        [client[0], client[1], session[0], session[1], PROTOCOL_VERSION, self.interface_version, kind, self.return_code]
    }
}

impl<'a> Message<'a> {
    /// Takes a whole message apart, as [`Stream`](super::Stream) and [`Datagram`](super::Datagram) give it.
    ///
    /// # Errors
    /// It is no message, or its length field does not say how many bytes there are.
    pub fn read(bytes: &'a [u8]) -> Result<Self, SomeIpFault> {
        let held = bytes.len();
        let length = SomeIp::length(bytes, usize::MAX)?;
        if length != held {
            return Err(SomeIpFault::LengthDisagrees { length: length as u64, held });
        }
        Self::fields(bytes).ok_or(SomeIpFault::HeaderCut { held })
    }

    fn fields(bytes: &'a [u8]) -> Option<Self> {
        let mut fields = Fields(bytes);
        let (service, method, _) = (fields.u16()?, fields.u16()?, fields.u32()?);
        let (client, session) = (fields.u16()?, fields.u16()?);
        let (_, interface_version) = (fields.u8()?, fields.u8()?);
        let ((kind, segmented), return_code) = (MessageKind::of_byte(fields.u8()?), fields.u8()?);
        let header = Header { service, method, client, session, interface_version, kind, segmented, return_code };
        Some(Self { header, payload: fields.0 })
    }

    /// Writes the message behind what is in `out`. `false`, and nothing written, where the payload is longer than the length field can
    /// say.
    #[must_use]
    pub fn write(&self, out: &mut Vec<u8>) -> bool {
        let Some(length) = u32::try_from(self.payload.len()).ok().and_then(|length| length.checked_add(8)) else {
            return false;
        };
        let header = &self.header;
        out.extend(header.service.to_be_bytes());
        out.extend(header.method.to_be_bytes());
        out.extend(length.to_be_bytes());
        out.extend(header.behind_length());
        out.extend(self.payload);
        true
    }
}
