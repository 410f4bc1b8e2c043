//! Does the checksum of a LIN frame fit? (ISO 17987-3; LIN 2.2A, section 2.3.1)

pub(crate) use wirelore_bits::lin::{BYTES_MAX, ID_MAX, is_parity_right, protected};

use crate::medium::LinChecksum;

/// Whether a checksum fits: of the told kind, or of either where none is told.
pub(crate) fn fits(told: Option<LinChecksum>, protected_id: u8, data: &[u8], sent: u8) -> bool {
    [LinChecksum::Classic, LinChecksum::Enhanced]
        .into_iter()
        .any(|kind| told.is_none_or(|told| told == kind) && kind.over(protected_id, data) == sent)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_checksum_fits_as_the_told_kind_or_as_either() {
        // Source: LIN 2.2A, section 2.8.3 (the classic sum E6); the enhanced one is printed in documentation that quotes it.
        let data = [0x4A, 0x55, 0x93, 0xE5];
        assert!(fits(None, 0x11, &data, 0xE6) && fits(None, 0x11, &data, 0xD5) && !fits(None, 0x11, &data, 0xD4));
        assert!(!fits(Some(LinChecksum::Enhanced), 0x11, &data, 0xE6));
    }
}
