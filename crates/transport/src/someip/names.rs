//! Return codes in words.

/// What a return code says (from memory of AUTOSAR PRS SOME/IP Protocol, "return codes").
#[must_use]
pub fn return_code_name(code: u8) -> &'static str {
    match code {
        0x00 => "ok",
        0x01 => "not ok",
        0x02 => "unknown service",
        0x03 => "unknown method",
        0x04 => "not ready",
        0x05 => "not reachable",
        0x06 => "timeout",
        0x07 => "wrong protocol version",
        0x08 => "wrong interface version",
        0x09 => "malformed message",
        0x0A => "wrong message type",
        0x0B..=0x1F => "reserved",
        0x20..=0x5E => "error of the service",
        _ => "unknown return code",
    }
}
