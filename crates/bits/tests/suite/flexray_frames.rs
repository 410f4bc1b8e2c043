//! FlexRay frames with both check sequences. Layout and polynomials: FlexRay 2.1A (from memory; ISO 17458-2 the same) and the public
//! catalogue of parametrised CRC algorithms. No published frame was found: the bytes were worked out from the rule by a second program,
//! bit after bit.

use wirelore_bits::flexray::{Header, trailer};

/// Indicators (preamble, carries data, sync, startup), slot, cycle; header CRC; header; payload; frame CRC on channel A and B.
type Row = ([bool; 4], u16, u8, u16, [u8; 5], &'static [u8], [u8; 3], [u8; 3]);

const ROWS: [Row; 5] = [
    (
        [false, true, true, true],
        1,
        0,
        0x11B,
        [0x38, 0x01, 0x10, 0x46, 0xC0],
        &[0; 16],
        [0x9A, 0x76, 0xAC],
        [0x88, 0x3B, 0x5C],
    ),
    (
        [false, true, false, false],
        10,
        5,
        0x53C,
        [0x20, 0x0A, 0x09, 0x4F, 0x05],
        &[0, 1, 2, 3, 4, 5, 6, 7],
        [0x0C, 0x7B, 0x0E],
        [0x62, 0x6E, 0x3B],
    ),
    (
        [false, false, true, false],
        3,
        63,
        0x7BD,
        [0x10, 0x03, 0x05, 0xEF, 0x7F],
        &[0; 4],
        [0x3D, 0x40, 0x4B],
        [0x5B, 0x1A, 0x4E],
    ),
    (
        [true, true, false, false],
        2047,
        17,
        0x5E3,
        [0x67, 0xFF, 0x03, 0x78, 0xD1],
        &[0xA5, 0x5A],
        [0x2A, 0x1C, 0x39],
        [0x0C, 0x9C, 0xE8],
    ),
    (
        [false, true, false, false],
        64,
        32,
        0x393,
        [0x20, 0x40, 0x00, 0xE4, 0xE0],
        &[],
        [0x89, 0x96, 0xEC],
        [0x62, 0x18, 0x89],
    ),
];

#[test]
fn headers_and_both_sequences() {
    for ([preamble, carries_data, sync, startup], slot, cycle, crc, bytes, payload, a, b) in ROWS {
        let words = (payload.len() / 2) as u8;
        let header = Header { preamble, carries_data, sync, startup, slot, words, cycle };
        assert_eq!((header.crc(), header.bytes()), (crc, bytes), "slot {slot}");
        assert_eq!(Header::of_bytes(bytes), (header, crc), "slot {slot}");
        let damaged = header.bytes_with(crc ^ 0x401);
        assert_eq!(Header::of_bytes(damaged), (header, crc ^ 0x401), "slot {slot}");
        assert_eq!(trailer(false, &bytes, payload), a, "slot {slot}");
        assert_eq!(trailer(true, &bytes, payload), b, "slot {slot}");
    }
}

/// What a field cannot hold does not spill into its neighbours.
#[test]
fn fields_keep_to_themselves() {
    let header = Header { slot: 0xFFFF, words: 0xFF, cycle: 0xFF, ..Header::default() };
    let most = Header { slot: 0x7FF, words: 0x7F, cycle: 0x3F, ..Header::default() };
    assert_eq!(header.bytes(), most.bytes());
    assert_eq!(header.bytes()[0], 0x07);
}
