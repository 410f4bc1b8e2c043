//! Checksums and payload lengths as published, each value with its source.

use wirelore_bits::sums::ByteSum;
use wirelore_bits::{Crc, CrcParameters, payload_lengths};

/// The public catalogue of parametrised CRC algorithms, as carried by version 2.5.0 of the registry package crc-catalog: name, width,
/// poly, init, whether reflected (both ways), xorout, checksum of the nine characters 123456789; numbers but the width in hexadecimal.
const CATALOGUE: &str = "
    CRC-8/SAE-J1850   8               1D               FF false               FF               4B
    CRC-8/AUTOSAR     8               2F               FF false               FF               DF
    CRC-11/FLEXRAY   11              385              01A false                0              5A3
    CRC-15/CAN       15             4599                0 false                0             059E
    CRC-16/IBM-3740  16             1021             FFFF false                0             29B1
    CRC-16/ARC       16             8005                0  true                0             BB3D
    CRC-17/CAN-FD    17            1685B                0 false                0            04F03
    CRC-21/CAN-FD    21           102899                0 false                0           0ED841
    CRC-24/FLEXRAY-A 24           5D6DCB           FEDCBA false                0           7979BD
    CRC-24/FLEXRAY-B 24           5D6DCB           ABCDEF false                0           1F23B8
    CRC-32/ISO-HDLC  32         04C11DB7         FFFFFFFF  true         FFFFFFFF         CBF43926
    CRC-32/AUTOSAR   32         F4ACFB13         FFFFFFFF  true         FFFFFFFF         1697D06A
    CRC-64/XZ        64 42F0E1EBA9EA3693 FFFFFFFFFFFFFFFF  true FFFFFFFFFFFFFFFF 995DC9BBDF1939FA";

/// The algorithms in the order of the catalogue's lines above.
const ALGORITHMS: [&Crc; 13] = [
    &Crc::SAE_J1850,
    &Crc::AUTOSAR_8,
    &Crc::FLEXRAY_11,
    &Crc::CAN_15,
    &Crc::IBM_3740,
    &Crc::ARC,
    &Crc::CAN_FD_17,
    &Crc::CAN_FD_21,
    &Crc::FLEXRAY_24_A,
    &Crc::FLEXRAY_24_B,
    &Crc::ISO_HDLC,
    &Crc::AUTOSAR_32,
    &Crc::XZ_64,
];

const NINE_DIGITS: &[u8] = b"123456789";

#[test]
fn crc_catalogue() {
    let lines: Vec<_> = CATALOGUE.trim().lines().collect();
    assert_eq!(lines.len(), ALGORITHMS.len());
    for (line, crc) in lines.into_iter().zip(ALGORITHMS) {
        let columns: Vec<&str> = line.split_whitespace().collect();
        let [name, width, poly, init, reflected, xorout, check] = columns[..] else {
            panic!("seven columns: {line}");
        };
        let hex = |text: &str| u64::from_str_radix(text, 16).expect("hexadecimal digits");
        let reflected = reflected == "true";
        let parameters = CrcParameters {
            width: width.parse().expect("a width"),
            poly: hex(poly),
            init: hex(init),
            refin: reflected,
            refout: reflected,
            xorout: hex(xorout),
        };
        assert_eq!(*crc.parameters(), parameters, "{name}");
        assert_eq!(crc.checksum(NINE_DIGITS), hex(check), "{name}");
        let halves = crc.update(crc.update(crc.start(), &NINE_DIGITS[..4]), &NINE_DIGITS[4..]);
        assert_eq!(crc.finish(halves), hex(check), "{name} in two parts");
    }
}

/// CRC-16/ISO-IEC-14443-3-A of the same catalogue (from memory): reflected, with a start value that is not its own mirror image.
#[test]
fn a_reflected_start_value() {
    let parameters = CrcParameters { width: 16, poly: 0x1021, init: 0xC6C6, refin: true, refout: true, xorout: 0 };
    let crc = Crc::new(parameters).expect("good parameters");
    assert_eq!(crc.checksum(NINE_DIGITS), 0xBF05);
}

/// Derived by the parameter model: ISO 11898-1:2015 starts the CAN FD registers with the top bit set (from memory), and the end-to-end profiles 1 and
/// 11 take polynomial 1D without start and end values.
#[test]
fn crc_with_other_start_values() {
    let check = |parameters| Crc::new(parameters).expect("good parameters").checksum(NINE_DIGITS);
    assert_eq!(check(CrcParameters { init: 0x1_0000, ..*Crc::CAN_FD_17.parameters() }), 0x0_9D9B);
    assert_eq!(check(CrcParameters { init: 0x10_0000, ..*Crc::CAN_FD_21.parameters() }), 0x13_23D8);
    assert_eq!(check(CrcParameters { init: 0, xorout: 0, ..*Crc::SAE_J1850.parameters() }), 0x37);
}

/// AUTOSAR SWS CRCLibrary, tables of examples. Column CRC8H2F as quoted from SWS_Crc_00042 and SWS_Crc_00053 in a public source; the
/// other columns from memory of the same tables and recomputed by a bit-serial program, but CRC32P4 of rows 5 and 6 and CRC64 of rows 6 and 7, which
/// are only recomputed.
#[test]
fn autosar_crc_examples() {
    let algorithms =
        [&Crc::SAE_J1850, &Crc::AUTOSAR_8, &Crc::IBM_3740, &Crc::ARC, &Crc::ISO_HDLC, &Crc::AUTOSAR_32, &Crc::XZ_64];
    let examples: [(&[u8], [u64; 7]); 7] = [
        (&[0x00, 0x00, 0x00, 0x00], [0x59, 0x12, 0x84C0, 0x0000, 0x2144_DF1C, 0x6FB3_2240, 0xF4A5_8635_1E1B_9F4B]),
        (&[0xF2, 0x01, 0x83], [0x37, 0xC2, 0xD374, 0xC2E1, 0x24AB_9D77, 0x4F72_1A25, 0x319C_2766_8164_F1C6]),
        (&[0x0F, 0xAA, 0x00, 0x55], [0x79, 0xC6, 0x2023, 0x0BE3, 0xB6C9_B287, 0x2066_2DF8, 0x54C5_D0F7_667C_1575]),
        (&[0x00, 0xFF, 0x55, 0x11], [0xB8, 0x77, 0xB8F9, 0x6CCF, 0x32A0_6212, 0x9BD7_996E, 0xA638_22BE_7E07_04E6]),
        (
            &[0x33, 0x22, 0x55, 0xAA, 0xBB, 0xCC, 0xDD, 0xEE, 0xFF],
            [0xCB, 0x11, 0xF53F, 0xAE98, 0xB0AE_863D, 0xA65A_343D, 0x701E_CEB2_19A8_E5D5],
        ),
        (&[0x92, 0x6B, 0x55], [0x8C, 0x33, 0x0745, 0xE24E, 0x9CDE_A29B, 0xEE68_8A78, 0x5FAA_96A9_B59F_3E4E]),
        (&[0xFF, 0xFF, 0xFF, 0xFF], [0x74, 0x6C, 0x1D0F, 0x9401, 0xFFFF_FFFF, 0xFFFF_FFFF, 0xFFFF_FFFF_0000_0000]),
    ];
    for (bytes, expected) in examples {
        for (crc, expected) in algorithms.iter().zip(expected) {
            assert_eq!(crc.checksum(bytes), expected, "{crc:?} over {bytes:02X?}");
        }
    }
}

/// The residues of the catalogue (called magic checks by AUTOSAR): the register before the last exclusive or, after data and its own CRC.
#[test]
fn crc_residues() {
    for (crc, residue) in [
        (&Crc::SAE_J1850, 0xC4),
        (&Crc::AUTOSAR_8, 0x42),
        (&Crc::ISO_HDLC, 0xDEBB_20E3),
        (&Crc::AUTOSAR_32, 0x904C_DDBF),
        (&Crc::XZ_64, 0x4995_8C9A_BD7D_353F),
    ] {
        let CrcParameters { width, refin, xorout, .. } = *crc.parameters();
        let mut message = b"any message".to_vec();
        let checksum = crc.checksum(&message).to_be_bytes();
        let checksum = &checksum[8 - usize::from(width / 8)..];
        if refin {
            message.extend(checksum.iter().rev())
        } else {
            message.extend(checksum)
        }
        assert_eq!(crc.checksum(&message) ^ xorout, residue, "{crc:?}");
    }
}

#[test]
fn bad_crc_parameters_are_refused() {
    let good = *Crc::SAE_J1850.parameters();
    for bad in [
        CrcParameters { width: 0, ..good },
        CrcParameters { width: 65, ..good },
        CrcParameters { poly: 0x11D, ..good },
        CrcParameters { init: 0x100, ..good },
        CrcParameters { xorout: 0x100, ..good },
    ] {
        assert!(Crc::new(bad).is_err(), "{bad:?}");
    }
    // Narrower than a byte, and reversed in only one of the two ways.
    let three = CrcParameters { width: 3, poly: 3, init: 0, refin: false, refout: true, xorout: 7 };
    let straight = Crc::new(CrcParameters { refout: false, xorout: 0, ..three }).expect("good").checksum(NINE_DIGITS);
    let reversed = (straight & 1) << 2 | straight & 2 | straight >> 2;
    assert_eq!(Crc::new(three).expect("good").checksum(NINE_DIGITS), reversed ^ 7);
    // CRC-3/GSM of the same catalogue (from memory): check value 4.
    assert_eq!(Crc::new(CrcParameters { refout: false, ..three }).expect("good").checksum(NINE_DIGITS), 4);
}

/// LIN 2.2A, section 2.8.3: the checksum example with its running sums, and the enhanced checksums with a protected identifier in
/// front, all as quoted in a public documentation page. The other sums are arithmetic.
#[test]
fn byte_sums() {
    let example = [0x4A, 0x55, 0x93, 0xE5];
    for (count, sum) in [(1, 0x4A), (2, 0x9F), (3, 0x33), (4, 0x19)] {
        assert_eq!(ByteSum::END_AROUND.checksum(&example[..count]), sum);
    }
    let lin = ByteSum::END_AROUND.inverted();
    assert_eq!(lin.checksum(&example), 0xE6);
    for (identifier, checksum) in [(0xBF, 0x27), (0x11, 0xD5)] {
        assert_eq!(lin.finish(lin.update(lin.update(lin.start(), &[identifier]), &example)), checksum);
    }
    assert_eq!(ByteSum::WRAPPING.checksum(&example), 0x17);
    assert_eq!(ByteSum::XOR.checksum(&example), 0x4A ^ 0x55 ^ 0x93 ^ 0xE5);
    assert_eq!(ByteSum::WRAPPING.folded().checksum(&example), 0x1 + 0x7);
    assert_eq!(ByteSum::XOR.folded().checksum(&[0x3C, 0x01]), 0x3 ^ 0xD);
    assert_eq!(ByteSum::END_AROUND.folded().checksum(&example), 0x1 + 0x9);
    assert_eq!(ByteSum::WRAPPING.folded().inverted().checksum(&example), 0x7);
    assert_eq!(ByteSum::END_AROUND.checksum(&[0xFF, 0xFF, 0xFF]), 0xFF);
    assert_eq!(ByteSum::END_AROUND.checksum(&[]), 0);
    for sum in [ByteSum::WRAPPING, ByteSum::XOR, ByteSum::END_AROUND] {
        let halves = sum.update(sum.update(sum.start(), &example[..1]), &example[1..]);
        assert_eq!(sum.finish(halves), sum.checksum(&example));
    }
}

/// ISO 11898-1, table of data length codes, as quoted in the text of a public operating-system kernel.
#[test]
fn can_fd_lengths() {
    let lengths = [0, 1, 2, 3, 4, 5, 6, 7, 8, 12, 16, 20, 24, 32, 48, 64];
    for (dlc, length) in (0..).zip(lengths) {
        assert_eq!(payload_lengths::can_fd_length(dlc), length);
        assert_eq!(payload_lengths::can_fd_dlc(length), Some(dlc));
        assert_eq!(payload_lengths::can_length(dlc), length.min(8));
    }
    for length in 0..=u8::MAX {
        assert_eq!(payload_lengths::is_can_fd_length(length), lengths.contains(&length), "{length} bytes");
    }
}
