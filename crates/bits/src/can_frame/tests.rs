//! Each part of the counting alone. Published lengths and whole streams are in the crate's test suite.

use super::*;

const BASE: Shape = Shape { extended: false, format: Format::Data };
const FAST: Shape = Shape { extended: false, format: Format::Fd { bit_rate_switch: true } };

fn frame(shape: Shape, payload: &[u8]) -> CanFrame<'_> {
    CanFrame { identifier: 0x555, shape, error_state: false, dlc: None, payload }
}

#[test]
fn what_cannot_be_sent_has_no_length() {
    assert_eq!(BASE.unstuffed(9), None);
    assert_eq!(BASE.longest(u32::MAX), None);
    assert_eq!(FAST.longest(65), None);
    assert_eq!(frame(BASE, &[0; 9]).bits(), None);
    assert_eq!(frame(BASE, &[0; 300]).bits(), None);
    assert_eq!(frame(FAST, &[0; 9]).bits(), None);
    assert_eq!(frame(FAST, &[0; 65]).bits(), None);
    assert_eq!(CanFrame { dlc: Some(3), ..frame(BASE, &[0; 4]) }.bits(), None);
    assert_eq!(CanFrame { dlc: Some(16), ..frame(BASE, &[]) }.bits(), None);
}

/// Classic codes 9 to 15 announce eight bytes (ISO 11898-1); the code is on the wire and changes stuff bits.
#[test]
fn codes_above_eight_are_eight_bytes() {
    for dlc in 8..16 {
        let bits = CanFrame { dlc: Some(dlc), ..frame(BASE, &[0x5A; 8]) }.bits();
        assert!(bits.is_some_and(|bits| (111..=135).contains(&bits.total())), "{dlc}");
    }
}

/// A description may say 10 bytes; what is sent has 12 (ISO 11898-1, data length codes).
#[test]
fn fd_lengths_are_those_of_the_codes() {
    for bytes in 0..=64_u32 {
        let sent = (bytes..).find(|&sent| can_fd_dlc(sent as u8).is_some());
        assert_eq!(FAST.sent_bytes(bytes), sent, "{bytes}");
    }
}

#[test]
fn a_remote_frame_has_a_code_and_no_data() {
    let shape = Shape { format: Format::Remote, ..BASE };
    assert_eq!(shape.longest(8), BASE.longest(0));
    let asked = |dlc, payload| CanFrame { dlc, ..frame(shape, payload) }.bits();
    assert_eq!(asked(Some(4), &[]), asked(None, &[0; 4]));
    assert!(asked(Some(8), &[]).is_some_and(|bits| bits.total() < 56));
}

/// Five equal bits at the end of the data: the fixed stuff bit takes the place of the other one.
#[test]
fn no_two_stuff_bits_before_the_stuff_count() {
    let slow = Shape { format: Format::Fd { bit_rate_switch: false }, ..FAST };
    let bits_ending = |last| frame(slow, &[0x55, last]).bits().map(|bits| bits.total());
    // 0x55 has no stuff bit at all, 0xA0 could only have one at its end, 0x82 has one inside.
    assert_eq!(bits_ending(0xA0), bits_ending(0x55));
    assert_eq!(bits_ending(0x82), bits_ending(0x55).map(|bits| bits + 1));
    // In the middle of the data the same row has its stuff bit.
    let payload = [0b1010_0000, 0b1010_1010];
    let inside = frame(slow, &payload).bits().map(|bits| bits.total());
    let plain = frame(slow, &[0b1010_1010; 2]).bits().map(|bits| bits.total());
    assert_eq!(inside, plain.map(|bits| bits + 1));
}

/// 64 bytes at 500 kbit/s and 2 Mbit/s, by hand: 17 + 13 bits at the nominal rate and 5 + 512 + 32 at the data rate.
#[test]
fn two_phases() {
    assert_eq!(FAST.unstuffed(64), Some(WireBits { nominal: 30, data: 549 }));
    // 133 stuff bits behind bits 5, 9, ... 533 of 534; three of them before BRS, the 17th.
    assert_eq!(FAST.longest(64), Some(WireBits { nominal: 33, data: 549 + 130 }));
    let slow = Shape { format: Format::Fd { bit_rate_switch: false }, ..FAST };
    assert_eq!(slow.longest(64), Some(WireBits { nominal: 579 + 133, data: 0 }));
}
