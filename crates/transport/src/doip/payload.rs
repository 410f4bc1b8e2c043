//! One message: version and typed payload.

use super::framing::{DoIp, DoIpFault, HEADER_BYTES};
use super::lengths::Lengths;
use crate::cut::Framing;
use crate::fields::Fields;

/// A message.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Message<'a> {
    /// Version of the protocol: 1 is the edition of 2010, 2 of 2012, 3 of 2019; 0xFF asks whoever is there.
    pub version: u8,
    /// What it says.
    pub payload: Payload<'a>,
}

/// What a message says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "the fields are the standard's, by the standard's names")]
pub enum Payload<'a> {
    /// A header was not understood; see [`header_nack_name`](super::header_nack_name).
    HeaderNack { code: u8 },
    /// Who is there?
    IdentificationRequest,
    /// Is the unit with this entity identification there?
    IdentificationRequestEid { eid: [u8; 6] },
    /// Is the vehicle with this identification number there?
    IdentificationRequestVin { vin: [u8; 17] },
    /// A vehicle says who it is.
    Announcement {
        vin: [u8; 17],
        address: u16,
        eid: [u8; 6],
        gid: [u8; 6],
        further_action: u8,
        /// Whether VIN and GID are the same in all units; not sent by all.
        synchronisation: Option<u8>,
    },
    /// A tester asks to be let in.
    RoutingActivationRequest { source: u16, activation: u8, reserved: [u8; 4], of_manufacturer: Option<[u8; 4]> },
    /// The answer; see [`routing_activation_name`](super::routing_activation_name).
    RoutingActivationResponse {
        tester: u16,
        entity: u16,
        code: u8,
        reserved: [u8; 4],
        of_manufacturer: Option<[u8; 4]>,
    },
    /// Is the tester still there?
    AliveCheckRequest,
    /// It is.
    AliveCheckResponse { source: u16 },
    /// What can the unit do?
    EntityStatusRequest,
    /// Kind of unit, its sockets, and the longest message that it takes.
    EntityStatusResponse { node: u8, sockets_max: u8, sockets_open: u8, bytes_max: Option<u32> },
    /// Can the vehicle be diagnosed now?
    PowerModeRequest,
    /// 0 not ready, 1 ready, 2 not supported.
    PowerModeResponse { mode: u8 },
    /// A request or an answer of diagnosis.
    Diagnostic { source: u16, target: u16, user_data: &'a [u8] },
    /// The message was taken; perhaps its first bytes are repeated.
    DiagnosticAck { source: u16, target: u16, code: u8, previous: &'a [u8] },
    /// The message was refused; see [`diagnostic_nack_name`](super::diagnostic_nack_name).
    DiagnosticNack { source: u16, target: u16, code: u8, previous: &'a [u8] },
    /// A type that table 17 of the standard does not name.
    Other { payload_type: u16, bytes: &'a [u8] },
}

impl<'a> Message<'a> {
    /// Takes a whole message apart, as [`Stream`](super::Stream) and [`Datagram`](super::Datagram) give it.
    ///
    /// # Errors
    /// It is no message, or its payload has a length that its type cannot have.
    pub fn read(bytes: &'a [u8]) -> Result<Self, DoIpFault> {
        let held = bytes.len();
        let length = DoIp::length(bytes, usize::MAX)?;
        if length != held {
            return Err(DoIpFault::LengthDisagrees { length, held });
        }
        let cut = DoIpFault::HeaderCut { held };
        let mut fields = Fields(bytes);
        let (version, _) = (fields.u8().ok_or(cut)?, fields.u8().ok_or(cut)?);
        let (payload_type, _) = (fields.u16().ok_or(cut)?, fields.u32().ok_or(cut)?);
        let Some(lengths) = Lengths::of(payload_type) else {
            return Ok(Self { version, payload: Payload::Other { payload_type, bytes: fields.0 } });
        };
        let held = held - HEADER_BYTES;
        let is_possible = u32::try_from(held).is_ok_and(|held| lengths.possible.contains(&held));
        match payload(payload_type, fields) {
            Some(payload) if is_possible => Ok(Self { version, payload }),
            _ => Err(DoIpFault::PayloadLength { payload_type, held, wanted: lengths.words }),
        }
    }
}

/// `None` where there are too few bytes, or too many for what may be left out.
fn payload(payload_type: u16, mut fields: Fields<'_>) -> Option<Payload<'_>> {
    Some(match payload_type {
        0x0000 => Payload::HeaderNack { code: fields.u8()? },
        0x0001 => Payload::IdentificationRequest,
        0x0002 => Payload::IdentificationRequestEid { eid: fields.array()? },
        0x0003 => Payload::IdentificationRequestVin { vin: fields.array()? },
        0x0004 => Payload::Announcement {
            vin: fields.array()?,
            address: fields.u16()?,
            eid: fields.array()?,
            gid: fields.array()?,
            further_action: fields.u8()?,
            synchronisation: fields.u8(),
        },
        0x0005 => Payload::RoutingActivationRequest {
            source: fields.u16()?,
            activation: fields.u8()?,
            reserved: fields.array()?,
            of_manufacturer: all_or_nothing(fields)?,
        },
        0x0006 => Payload::RoutingActivationResponse {
            tester: fields.u16()?,
            entity: fields.u16()?,
            code: fields.u8()?,
            reserved: fields.array()?,
            of_manufacturer: all_or_nothing(fields)?,
        },
        0x0007 => Payload::AliveCheckRequest,
        0x0008 => Payload::AliveCheckResponse { source: fields.u16()? },
        0x4001 => Payload::EntityStatusRequest,
        0x4002 => Payload::EntityStatusResponse {
            node: fields.u8()?,
            sockets_max: fields.u8()?,
            sockets_open: fields.u8()?,
            bytes_max: all_or_nothing(fields)?.map(u32::from_be_bytes),
        },
        0x4003 => Payload::PowerModeRequest,
        0x4004 => Payload::PowerModeResponse { mode: fields.u8()? },
        0x8001 => Payload::Diagnostic { source: fields.u16()?, target: fields.u16()?, user_data: fields.0 },
        0x8002 | 0x8003 => {
            let (source, target, code, previous) = (fields.u16()?, fields.u16()?, fields.u8()?, fields.0);
            match payload_type {
                0x8002 => Payload::DiagnosticAck { source, target, code, previous },
                _ => Payload::DiagnosticNack { source, target, code, previous },
            }
        }
        _ => Payload::Other { payload_type, bytes: fields.0 },
    })
}

/// Four bytes that may be left out, but only all of them; `None` where some are there.
fn all_or_nothing(mut fields: Fields<'_>) -> Option<Option<[u8; 4]>> {
    match fields.0.len() {
        0 => Some(None),
        _ => fields.array().map(Some),
    }
}
