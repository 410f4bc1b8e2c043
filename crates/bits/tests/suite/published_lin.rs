//! LIN's protected identifiers, checksums and times against what is published of them.

use wirelore_bits::lin::{self, LinChecksum};

/// The whole table. Source: the parity equations of LIN 2.2A, section 2.3.1.3; its printed pairs 01 C1, 11 11, 3C 3C, 3F BF (3D 7D and
/// 3E FE from memory of its table 2.4) are among them.
const PROTECTED: [[u8; 8]; 8] = [
    [0x80, 0xC1, 0x42, 0x03, 0xC4, 0x85, 0x06, 0x47],
    [0x08, 0x49, 0xCA, 0x8B, 0x4C, 0x0D, 0x8E, 0xCF],
    [0x50, 0x11, 0x92, 0xD3, 0x14, 0x55, 0xD6, 0x97],
    [0xD8, 0x99, 0x1A, 0x5B, 0x9C, 0xDD, 0x5E, 0x1F],
    [0x20, 0x61, 0xE2, 0xA3, 0x64, 0x25, 0xA6, 0xE7],
    [0xA8, 0xE9, 0x6A, 0x2B, 0xEC, 0xAD, 0x2E, 0x6F],
    [0xF0, 0xB1, 0x32, 0x73, 0xB4, 0xF5, 0x76, 0x37],
    [0x78, 0x39, 0xBA, 0xFB, 0x3C, 0x7D, 0xFE, 0xBF],
];

#[test]
fn every_identifier_has_its_parity() {
    for (id, expected) in (0..).zip(PROTECTED.into_iter().flatten()) {
        assert_eq!(lin::protected(id), expected, "{id:#04X}");
    }
    let right = (0..=u8::MAX).filter(|&sent| lin::is_parity_right(sent)).count();
    assert_eq!(right, 64, "of the four ways to send an identifier one is right");
}

/// One row: which sum, protected identifier, data, checksum.
type Row = (LinChecksum, u8, &'static [u8], u8);

#[test]
fn checksums() {
    use LinChecksum::{Classic, Enhanced};
    let rows: [Row; 8] = [
        // LIN 2.2A, section 2.8.3, with the running sums 4A, 9F, 33, 19.
        (Classic, 0xBF, &[0x4A, 0x55, 0x93, 0xE5], 0xE6),
        // The same data in public documentation that quotes LIN 2.2A for both sums.
        (Enhanced, 0xBF, &[0x4A, 0x55, 0x93, 0xE5], 0x27),
        (Enhanced, 0x11, &[0x4A, 0x55, 0x93, 0xE5], 0xD5),
        // Go to sleep; the payload from memory of LIN 2.2A, section 2.6.3.
        (Classic, 0x3C, &[0x00, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF], 0x00),
        // Read by identifier; the payload from memory of LIN 2.2A, section 4.2.
        (Classic, 0x3C, &[0x01, 0x06, 0xB2, 0x00, 0xFF, 0x7F, 0xFF, 0xFF], 0xC6),
        // Worked out by hand from the rule of section 2.3.1.5: the carry is added again, the sum inverted.
        (Enhanced, 0x20, &[1, 2, 3, 4, 5, 6, 7, 8], 0xBB),
        (Classic, 0x00, &[0xFF], 0x00),
        (Classic, 0x00, &[0x00, 0x00], 0xFF),
    ];
    for (kind, protected_id, data, expected) in rows {
        assert_eq!(kind.over(protected_id, data), expected, "{kind:?} {protected_id:02X} {data:02X?}");
        // The receiver's rule of the same section: all bytes and the checksum add up to FF.
        let mut all = data.to_vec();
        all.push(expected);
        let sum = kind.over(protected_id, &all) ^ 0xFF;
        assert_eq!(sum, 0xFF, "{kind:?} {protected_id:02X} {data:02X?}");
    }
}

/// Formulas of LIN 2.2A, section 2.3.2: header 34 bits, response 10 for each byte and the checksum, the longest 1.4 times as much.
#[test]
fn times() {
    for (bytes, response, nominal, tenths_at_most, nominal_us_at_19200, at_19200, at_9600) in [
        (1, 20, 54, 756, 2_812, 3_937_500, 7_875_000),
        (2, 30, 64, 896, 3_333, 4_666_667, 9_333_334),
        (4, 50, 84, 1176, 4_375, 6_125_000, 12_250_000),
        (8, 90, 124, 1736, 6_458, 9_041_667, 18_083_334),
    ] {
        assert_eq!(lin::nominal_bits(bytes), nominal);
        // Break and delimiter, 14 bits at least, synchronisation and protected identifier of 10 bits each.
        assert_eq!(lin::nominal_bits(bytes) - response, 14 + 10 + 10);
        assert_eq!(lin::nominal_bits(bytes) * 1_000_000 / 19_200, nominal_us_at_19200);
        // At ten million bits per second, a tenth of a bit takes 10 ns.
        assert_eq!(lin::longest_time_ns(bytes, 10_000_000), Some(10 * tenths_at_most), "{bytes} bytes");
        assert_eq!(lin::longest_time_ns(bytes, 19_200), Some(at_19200), "{bytes} bytes");
        assert_eq!(lin::longest_time_ns(bytes, 9_600), Some(at_9600), "{bytes} bytes");
    }
    assert_eq!(lin::longest_time_ns(8, 0), None);
}
