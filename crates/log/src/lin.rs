//! The arithmetic of LIN frames: the parity of the identifier, and the two checksums (ISO 17987-3; LIN 2.2A, section 2.3.1).

use wirelore_bits::sums::ByteSum;

use crate::medium::LinChecksum;

/// The largest identifier.
pub(crate) const ID_MAX: u8 = 0x3F;
/// The most data bytes of a frame.
pub(crate) const BYTES_MAX: usize = 8;

/// An identifier (0..=63) with its two parity bits in front.
pub(crate) fn protected(id: u8) -> u8 {
    let id = id & ID_MAX;
    let even = (id ^ id >> 1 ^ id >> 2 ^ id >> 4) & 1;
    let odd = !(id >> 1 ^ id >> 3 ^ id >> 4 ^ id >> 5) & 1;
    id | even << 6 | odd << 7
}

/// Whether the parity bits of a protected identifier are those of its identifier.
pub(crate) fn is_parity_right(protected_id: u8) -> bool {
    protected(protected_id) == protected_id
}

/// The checksum of some data, sent under a protected identifier.
pub(crate) fn checksum(kind: LinChecksum, protected_id: u8, data: &[u8]) -> u8 {
    let sum = ByteSum::END_AROUND.inverted();
    let before = match kind {
        LinChecksum::Classic => sum.start(),
        LinChecksum::Enhanced => sum.update(sum.start(), &[protected_id]),
    };
    sum.finish(sum.update(before, data)) as u8
}

/// Whether a checksum fits: of the told kind, or of either where none is told.
pub(crate) fn fits(told: Option<LinChecksum>, protected_id: u8, data: &[u8], sent: u8) -> bool {
    [LinChecksum::Classic, LinChecksum::Enhanced]
        .into_iter()
        .any(|kind| told.is_none_or(|told| told == kind) && checksum(kind, protected_id, data) == sent)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn protected_identifiers() {
        // Source: pairs in LIN 2.2A, table 2.4 (0x3D and 0x3E from memory of it).
        for (id, protected_id) in [(0x01, 0xC1), (0x11, 0x11), (0x3C, 0x3C), (0x3D, 0x7D), (0x3E, 0xFE), (0x3F, 0xBF)] {
            assert_eq!(protected(id), protected_id, "{id:02X}");
            assert!(is_parity_right(protected_id) && !is_parity_right(protected_id ^ 0x40), "{id:02X}");
        }
    }

    #[test]
    fn checksums() {
        // Source: LIN 2.2A, section 2.8.3 (the classic sum); the enhanced ones are printed in documentation that quotes it.
        let data = [0x4A, 0x55, 0x93, 0xE5];
        assert_eq!(checksum(LinChecksum::Classic, 0xBF, &data), 0xE6);
        assert_eq!(checksum(LinChecksum::Enhanced, 0xBF, &data), 0x27);
        assert_eq!(checksum(LinChecksum::Enhanced, 0x11, &data), 0xD5);
        assert!(fits(None, 0x11, &data, 0xE6) && fits(None, 0x11, &data, 0xD5) && !fits(None, 0x11, &data, 0xD4));
        assert!(!fits(Some(LinChecksum::Enhanced), 0x11, &data, 0xE6));
    }
}
