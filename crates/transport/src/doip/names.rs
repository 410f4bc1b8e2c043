//! Numbers in words.

/// The name of a payload type (ISO 13400-2:2019, table 17).
#[must_use]
pub fn payload_type_name(payload_type: u16) -> &'static str {
    match payload_type {
        0x0000 => "generic header negative acknowledge",
        0x0001 => "vehicle identification request",
        0x0002 => "vehicle identification request with EID",
        0x0003 => "vehicle identification request with VIN",
        0x0004 => "vehicle announcement or identification response",
        0x0005 => "routing activation request",
        0x0006 => "routing activation response",
        0x0007 => "alive check request",
        0x0008 => "alive check response",
        0x4001 => "entity status request",
        0x4002 => "entity status response",
        0x4003 => "diagnostic power mode request",
        0x4004 => "diagnostic power mode response",
        0x8001 => "diagnostic message",
        0x8002 => "diagnostic message positive acknowledge",
        0x8003 => "diagnostic message negative acknowledge",
        _ => "unknown payload",
    }
}

/// Why a header was refused (from memory of ISO 13400-2, generic header negative acknowledge codes).
#[must_use]
pub fn header_nack_name(code: u8) -> &'static str {
    match code {
        0x00 => "incorrect pattern format",
        0x01 => "unknown payload type",
        0x02 => "message too large",
        0x03 => "out of memory",
        0x04 => "invalid payload length",
        _ => "reserved",
    }
}

/// How a routing activation ended (from memory of ISO 13400-2, routing activation response codes).
#[must_use]
pub fn routing_activation_name(code: u8) -> &'static str {
    match code {
        0x00 => "denied: unknown source address",
        0x01 => "denied: all sockets are in use",
        0x02 => "denied: another source address is active on this socket",
        0x03 => "denied: the source address is active on another socket",
        0x04 => "denied: authentication is missing",
        0x05 => "denied: confirmation was refused",
        0x06 => "denied: activation type is not supported",
        0x07 => "denied: this activation type needs a secure connection",
        0x10 => "activated",
        0x11 => "activated when confirmed",
        0xE0..=0xFE => "of the vehicle manufacturer",
        _ => "reserved",
    }
}

/// Why a diagnostic message was refused (from memory of ISO 13400-2, diagnostic message negative acknowledge codes).
#[must_use]
pub fn diagnostic_nack_name(code: u8) -> &'static str {
    match code {
        0x02 => "invalid source address",
        0x03 => "unknown target address",
        0x04 => "diagnostic message too large",
        0x05 => "out of memory",
        0x06 => "target unreachable",
        0x07 => "unknown network",
        0x08 => "transport protocol error",
        _ => "reserved",
    }
}
