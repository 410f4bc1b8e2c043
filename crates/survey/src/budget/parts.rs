//! Messages that are longer than a frame: into how many frames they are cut.

use wirelore_model::{NetworkKind, Transport};

/// How a message of some length is sent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Parts {
    /// Frames for one message; what the receiver answers meanwhile is not among them.
    pub(super) count: u32,
    /// The payload of each.
    pub(super) bytes: u32,
    /// They have the identifier of SAE J1939's transport protocol, not that of the message.
    pub(super) on_transport: bool,
}

/// What a first frame and a consecutive one carry less than their payload (ISO 15765-2, table of protocol control information).
const FIRST_LESS: u32 = 2;
const CONSECUTIVE_LESS: u32 = 1;
/// What one packet carries (SAE J1939-21).
const PACKET_BYTES: u32 = 7;
const CLASSIC_BYTES: u32 = 8;
/// Longer messages announce their length in the long form of the first frame (ISO 15765-2).
const SHORT_LENGTH_MAX: u32 = 4095;
const LONG_FORM_MORE: u32 = 4;

pub(super) fn parts_of(carried: Option<Transport>, kind: NetworkKind, bytes: u32) -> Parts {
    let plain = Parts { count: 1, bytes, on_transport: false };
    match carried {
        None => plain,
        Some(Transport::J1939Tp) if bytes <= CLASSIC_BYTES => plain,
        // The announcement goes before the packets.
        Some(Transport::J1939Tp) => {
            Parts { count: 1 + bytes.div_ceil(PACKET_BYTES), bytes: CLASSIC_BYTES, on_transport: true }
        }
        Some(transport @ (Transport::IsoTp | Transport::IsoTpExtended | Transport::IsoTpMixed)) => {
            let room = if kind == NetworkKind::Can { CLASSIC_BYTES } else { kind.longest_payload().min(64) };
            let address = u32::from(transport != Transport::IsoTp);
            iso_tp(bytes, room, address)
        }
    }
}

fn iso_tp(bytes: u32, room: u32, address: u32) -> Parts {
    // Up to 7 bytes have one byte in front, more (in longer frames) have two.
    let single_less = if bytes + address < CLASSIC_BYTES { 1 } else { 2 };
    if bytes + address + single_less <= room && (single_less == 1 || room > CLASSIC_BYTES) {
        return Parts { count: 1, bytes: (bytes + address + single_less).max(CLASSIC_BYTES), on_transport: false };
    }
    let long_form = if bytes > SHORT_LENGTH_MAX { LONG_FORM_MORE } else { 0 };
    let first = room - address - FIRST_LESS - long_form;
    let others = (bytes - first.min(bytes)).div_ceil(room - address - CONSECUTIVE_LESS);
    Parts { count: 1 + others, bytes: room, on_transport: false }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(transport: Transport, kind: NetworkKind, bytes: u32) -> (u32, u32) {
        let parts = parts_of(Some(transport), kind, bytes);
        (parts.count, parts.bytes)
    }

    /// ISO 15765-2: a single frame has up to 7 bytes, a first frame 6, consecutive ones 7; a vehicle's number with service and item has
    /// 20 bytes and takes 3 frames. In frames of CAN FD with 64 bytes: 62, 62 and 63.
    #[test]
    fn diagnostic_messages() {
        let can = NetworkKind::Can;
        for (bytes, frames) in [(1, 1), (7, 1), (8, 2), (13, 2), (14, 3), (20, 3), (21, 4), (4095, 586)] {
            assert_eq!(count(Transport::IsoTp, can, bytes), (frames, 8), "{bytes} bytes");
        }
        assert_eq!(count(Transport::IsoTpExtended, can, 6), (1, 8));
        assert_eq!(count(Transport::IsoTpExtended, can, 7), (2, 8));
        assert_eq!(count(Transport::IsoTp, NetworkKind::CanFd, 62), (1, 64));
        assert_eq!(count(Transport::IsoTp, NetworkKind::CanFd, 63), (2, 64));
        assert_eq!(count(Transport::IsoTp, NetworkKind::CanFd, 62 + 63), (2, 64));
        assert_eq!(count(Transport::IsoTp, NetworkKind::CanFd, 62 + 64), (3, 64));
    }

    /// SAE J1939-21: an announcement, then packets of 7 bytes.
    #[test]
    fn packets() {
        for (bytes, frames) in [(8, 1), (9, 3), (14, 3), (15, 4), (1785, 256)] {
            assert_eq!(count(Transport::J1939Tp, NetworkKind::Can, bytes), (frames, 8), "{bytes} bytes");
        }
    }
}
