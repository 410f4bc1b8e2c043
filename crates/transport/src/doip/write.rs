//! Messages into bytes.

use super::framing::HEADER_BYTES;
use super::payload::{Message, Payload};

impl Message<'_> {
    /// Writes the message behind what is in `out`. `false`, and nothing written, where the payload is longer than the header can say.
    #[must_use]
    pub fn write(&self, out: &mut Vec<u8>) -> bool {
        let at = out.len();
        out.extend([self.version, !self.version]);
        out.extend(self.payload.payload_type().to_be_bytes());
        out.extend([0; 4]);
        self.payload.write(out);
        match u32::try_from(out.len() - at - HEADER_BYTES) {
            Ok(length) => out[at + 4..at + HEADER_BYTES].copy_from_slice(&length.to_be_bytes()),
            Err(_) => out.truncate(at),
        }
        out.len() > at
    }
}

impl Payload<'_> {
    /// The number of its type (ISO 13400-2:2019, table 17).
    #[must_use]
    pub fn payload_type(&self) -> u16 {
        match self {
            Self::HeaderNack { .. } => 0x0000,
            Self::IdentificationRequest => 0x0001,
            Self::IdentificationRequestEid { .. } => 0x0002,
            Self::IdentificationRequestVin { .. } => 0x0003,
            Self::Announcement { .. } => 0x0004,
            Self::RoutingActivationRequest { .. } => 0x0005,
            Self::RoutingActivationResponse { .. } => 0x0006,
            Self::AliveCheckRequest => 0x0007,
            Self::AliveCheckResponse { .. } => 0x0008,
            Self::EntityStatusRequest => 0x4001,
            Self::EntityStatusResponse { .. } => 0x4002,
            Self::PowerModeRequest => 0x4003,
            Self::PowerModeResponse { .. } => 0x4004,
            Self::Diagnostic { .. } => 0x8001,
            Self::DiagnosticAck { .. } => 0x8002,
            Self::DiagnosticNack { .. } => 0x8003,
            Self::Other { payload_type, .. } => *payload_type,
        }
    }

    fn write(&self, out: &mut Vec<u8>) {
        match *self {
            Self::IdentificationRequest
            | Self::AliveCheckRequest
            | Self::EntityStatusRequest
            | Self::PowerModeRequest => {}
            Self::HeaderNack { code: byte } | Self::PowerModeResponse { mode: byte } => out.push(byte),
            Self::IdentificationRequestEid { eid } => out.extend(eid),
            Self::IdentificationRequestVin { vin } => out.extend(vin),
            Self::Announcement { vin, address, eid, gid, further_action, synchronisation } => {
                out.extend(vin);
                out.extend(address.to_be_bytes());
                out.extend(eid);
                out.extend(gid);
                out.push(further_action);
                out.extend(synchronisation);
            }
            Self::RoutingActivationRequest { source, activation, reserved, of_manufacturer } => {
                out.extend(source.to_be_bytes());
                out.push(activation);
                out.extend(reserved);
                out.extend(of_manufacturer.into_iter().flatten());
            }
            Self::RoutingActivationResponse { tester, entity, code, reserved, of_manufacturer } => {
                out.extend(tester.to_be_bytes());
                out.extend(entity.to_be_bytes());
                out.push(code);
                out.extend(reserved);
                out.extend(of_manufacturer.into_iter().flatten());
            }
            Self::AliveCheckResponse { source } => out.extend(source.to_be_bytes()),
            Self::EntityStatusResponse { node, sockets_max, sockets_open, bytes_max } => {
                out.extend([node, sockets_max, sockets_open]);
                out.extend(bytes_max.map(u32::to_be_bytes).into_iter().flatten());
            }
            Self::Diagnostic { source, target, user_data } => {
                out.extend(source.to_be_bytes());
                out.extend(target.to_be_bytes());
                out.extend(user_data);
            }
            Self::DiagnosticAck { source, target, code, previous }
            | Self::DiagnosticNack { source, target, code, previous } => {
                out.extend(source.to_be_bytes());
                out.extend(target.to_be_bytes());
                out.push(code);
                out.extend(previous);
            }
            Self::Other { bytes, .. } => out.extend(bytes),
        }
    }
}
