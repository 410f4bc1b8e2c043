//! How long CAN and CAN FD frames are: published lengths, streams derived from the rules of ISO 11898-1, and any frame against a
//! reference that writes it out bit by bit.

use wirelore_bits::can_frame::{CanFrame, Format, Shape};

use crate::can_wire::wire;
use crate::support::Random;

const BASE: Shape = Shape { extended: false, format: Format::Data };
const EXTENDED: Shape = Shape { extended: true, format: Format::Data };

/// Shortest and longest lengths with the pause of three bits. Shortest: the constants 47 and 67 of the Linux kernel's
/// include/linux/can/length.h, which cites ISO 11898-1. Longest: Davis, Burns, Bril, Lukkien, Real-Time Systems 35 (2007), from memory:
/// 47 + 8n + floor((34 + 8n - 1) / 4) and 67 + 8n + floor((54 + 8n - 1) / 4); the last row is the one that is printed most.
#[test]
fn limits_of_classic_frames() {
    for (bytes, base, extended) in [
        (0, (47, 55), (67, 80)),
        (1, (55, 65), (75, 90)),
        (2, (63, 75), (83, 100)),
        (3, (71, 85), (91, 110)),
        (4, (79, 95), (99, 120)),
        (5, (87, 105), (107, 130)),
        (6, (95, 115), (115, 140)),
        (7, (103, 125), (123, 150)),
        (8, (111, 135), (131, 160)),
    ] {
        for (shape, expected) in [(BASE, base), (EXTENDED, extended)] {
            let limits = shape.unstuffed(bytes).zip(shape.longest(bytes)).expect("classic frames carry 0 to 8 bytes");
            assert_eq!((limits.0.total(), limits.1.total()), expected, "{bytes} bytes");
            assert_eq!((limits.0.data, limits.1.data), (0, 0));
        }
    }
}

/// Lengths without the stuff bits that depend on the data, with the pause. Source: the constants 67 and 86 of the Linux kernel's
/// include/linux/can/length.h (ISO 11898-1), which hold for CRC-21; with CRC-17 there are 4 bits of sequence and one fixed stuff bit less.
#[test]
fn shortest_fd_frames() {
    for bytes in [0, 1, 2, 3, 4, 5, 6, 7, 8, 12, 16, 20, 24, 32, 48, 64] {
        let less = if bytes <= 16 { 5 } else { 0 };
        for bit_rate_switch in [false, true] {
            for (extended, overhead) in [(false, 67), (true, 86)] {
                let shape = Shape { extended, format: Format::Fd { bit_rate_switch } };
                let bits = shape.unstuffed(bytes).expect("a length of a code");
                assert_eq!(bits.total(), overhead - less + 8 * bytes, "{bytes} bytes, {shape:?}");
                assert_eq!(bits.data > 0, bit_rate_switch);
            }
        }
    }
}

/// One row: shape, identifier, data length code of a remote frame, data, sequence, stuff bits, bits from SOF to EOF, the stream.
type Row = (Shape, u32, Option<u8>, &'static [u8], u64, usize, u32, &'static str);

/// Derived from the rules of ISO 11898-1 (fields, stuffing, CRC-15) with an independent long division; no published stream with stuff bits
/// and check sequence was found.
#[test]
fn classic_streams() {
    const REMOTE: Shape = Shape { extended: false, format: Format::Remote };
    let rows: [Row; 9] = [
        (BASE, 0x014, None, &[0x01], 0x7753, 3, 55, "000001001010000010001000001001111011101010011"),
        (BASE, 0x555, None, &[], 0x674C, 1, 45, "01010101010100000100110011101001100"),
        (
            BASE,
            0x100,
            None,
            &[0xDE, 0xAD, 0xBE, 0xEF],
            0x36A3,
            3,
            79,
            "000100000100000100100110111101010110110111110011101111011011010100011",
        ),
        (
            BASE,
            0x123,
            None,
            &[0x11, 0x22, 0x33, 0x44, 0x55, 0x66, 0x77, 0x88],
            0x4237,
            1,
            109,
            "000100100011000100000101000100100010001100110100010001010101011001100111011110001000100001000110111",
        ),
        (
            BASE,
            0x000,
            None,
            &[0; 8],
            0x145B,
            16,
            124,
            "000001000001000001100000100000100000100000100000100000100000100000100000100000100000100000100000100001010001011011",
        ),
        (
            BASE,
            0x7FF,
            None,
            &[0xFF; 8],
            0x4C89,
            15,
            123,
            "01111101111101000100011111011111011111011111011111011111011111011111011111011111011111011111011111000110010001001",
        ),
        (
            EXTENDED,
            0x18FE_F100,
            None,
            &[0xFF, 0xFF, 0x12, 0x34, 0xFF, 0xFF, 0xFF, 0xFF],
            0x6A74,
            12,
            140,
            "0110001111101111011110001000001000001010001111101111101111101000100100011010011111011111011111011111011111011111011110101001110100",
        ),
        (
            EXTENDED,
            0x0CF0_0400,
            None,
            &[0xF0, 0x7D, 0x7D, 0x20, 0x4E, 0x00, 0xF0, 0x7D],
            0x12FE,
            11,
            139,
            "001100111100110000010010000010000010001000111100000111110101011111001001000001010011100000100001111000001111101010010010111110110",
        ),
        (REMOTE, 0x123, Some(4), &[], 0x4352, 0, 44, "0001001000111000100100001101010010"),
    ];
    for (shape, identifier, dlc, payload, crc, stuff_bits, to_end, stream) in rows {
        let frame = CanFrame { identifier, shape, error_state: false, dlc, payload };
        let reference = wire(&frame);
        let written: String = reference.stream.iter().map(|&bit| if bit { '1' } else { '0' }).collect();
        assert_eq!((reference.crc, reference.stuff_bits), (crc, stuff_bits), "{identifier:#X}");
        assert_eq!(written, stream, "{identifier:#X}");
        assert_eq!(frame.bits().map(|bits| bits.total()), Some(to_end + 3), "{identifier:#X}");
    }
}

/// Derived from the rules of ISO 11898-1:2015 by one implementation: base identifiers, BRS recessive, ESI dominant. Source of the rules:
/// the page "Cyclic redundancy check (CRC) in CAN frames" of CAN in Automation; the Gray code and the start values from memory.
#[test]
fn fd_streams() {
    let counted: Vec<u8> = (1..=8).collect();
    let twelve: Vec<u8> = (0x10..=0x1B).collect();
    let twenty: Vec<u8> = (0x00..=0x13).collect();
    let sevens: Vec<u8> = (0..64).map(|index| (7 * index) as u8).collect();
    for (identifier, payload, stuff_bits, stuff_count, crc, to_end) in [
        (0x123, &counted, 8, 0b0000, 0x1_6F50, 131),
        (0x321, &twelve, 3, 0b0101, 0x0_9F21, 158),
        (0x456, &twenty, 15, 0b1001, 0x0E_7E96, 239),
        (0x7A0, &sevens, 17, 0b0011, 0x1A_C8D1, 593),
    ] {
        let shape = Shape { extended: false, format: Format::Fd { bit_rate_switch: true } };
        let frame = CanFrame { identifier, shape, error_state: false, dlc: None, payload };
        let reference = wire(&frame);
        assert_eq!((reference.stuff_bits, reference.stuff_count, reference.crc), (stuff_bits, stuff_count, crc));
        assert_eq!(frame.bits(), Some(reference.bits), "{identifier:#X}");
        assert_eq!(frame.bits().map(|bits| bits.total()), Some(to_end + 3), "{identifier:#X}");
    }
}

/// Any frame of any kind: the same count as the reference, and between the limits of its shape. Bytes of long runs are as frequent as
/// random ones, so that stuff bits are many.
#[test]
fn any_frame_is_as_long_as_its_bits_and_within_the_limits() {
    const LENGTHS: [usize; 16] = [0, 1, 2, 3, 4, 5, 6, 7, 8, 12, 16, 20, 24, 32, 48, 64];
    const RUNS: [u8; 8] = [0x00, 0xFF, 0xF8, 0x07, 0x83, 0x7C, 0x0F, 0x1E];
    let mut random = Random(0xCA4F_0001);
    let mut seen_most = 0;
    for _ in 0..100_000 {
        let format = match random.below(4) {
            0 => Format::Data,
            1 => Format::Remote,
            kind => Format::Fd { bit_rate_switch: kind == 2 },
        };
        let shape = Shape { extended: random.below(2) == 0, format };
        let lengths = if matches!(format, Format::Fd { .. }) { 16 } else { 9 };
        let length = LENGTHS[random.below(lengths) as usize];
        let with_runs = random.below(2) == 0;
        let payload: Vec<u8> =
            (0..length).map(|_| if with_runs { RUNS[random.below(8) as usize] } else { random.next() as u8 }).collect();
        let mask = if shape.extended { 0x1FFF_FFFF } else { 0x7FF };
        let identifier =
            random.next() as u32 & [mask, 0x1F00_001F & mask, 0, mask << 7 & mask][random.below(4) as usize];
        let frame = CanFrame { identifier, shape, error_state: random.below(2) == 0, dlc: None, payload: &payload };
        let bits = frame.bits().expect("it can be sent");
        assert_eq!(bits, wire(&frame).bits, "{frame:02X?}");

        let (bare, longest) = shape.unstuffed(length as u32).zip(shape.longest(length as u32)).expect("it can be sent");
        assert!(bare.total() <= bits.total() && bits.total() <= longest.total(), "{frame:02X?}");
        assert!(bare.nominal <= bits.nominal && bits.nominal <= longest.nominal, "{frame:02X?}");
        seen_most += u32::from(bits.total() + 2 >= longest.total());
    }
    assert!(seen_most > 0, "the limits are not far from what can happen");
}
