//! Payload lengths and the data length codes that announce them (ISO 11898-1).

/// Payload bytes that a CAN FD frame with data length code `dlc` carries. A code has four bits; bits above them do not count.
pub const fn can_fd_length(dlc: u8) -> u8 {
    match dlc & 0xF {
        short @ 0..=8 => short,
        long @ 9..=12 => 12 + 4 * (long - 9),
        13 => 32,
        14 => 48,
        _ => 64,
    }
}

/// Payload bytes that a classic CAN frame with data length code `dlc` carries: codes 9 to 15 mean 8 bytes too. A code has four
/// bits; bits above them do not count.
pub const fn can_length(dlc: u8) -> u8 {
    match dlc & 0xF {
        short @ 0..=8 => short,
        _ => 8,
    }
}

/// The CAN FD data length code for exactly `length` payload bytes; `None` for a length that no code announces.
pub const fn can_fd_dlc(length: u8) -> Option<u8> {
    match length {
        0..=8 => Some(length),
        12 => Some(9),
        16 => Some(10),
        20 => Some(11),
        24 => Some(12),
        32 => Some(13),
        48 => Some(14),
        64 => Some(15),
        _ => None,
    }
}

/// Whether a CAN FD frame can carry exactly `length` payload bytes.
pub const fn is_can_fd_length(length: u8) -> bool {
    can_fd_dlc(length).is_some()
}
