//! A payload that is too short for an eight-byte load, as one word.

/// The payload of fewer than eight bytes as a little-endian word; bytes that it does not have read as zero.
///
/// Two overlapping loads of a smaller size instead of a loop over the bytes: they agree where they overlap, so an `or` joins them.
#[inline]
pub(crate) fn short_word(payload: &[u8]) -> u64 {
    let length = payload.len();
    if let (Some(low), Some(high)) = (payload.first_chunk::<4>(), payload.last_chunk::<4>()) {
        u64::from(u32::from_le_bytes(*low)) | u64::from(u32::from_le_bytes(*high)) << (8 * (length - 4))
    } else if let (Some(low), Some(high)) = (payload.first_chunk::<2>(), payload.last()) {
        u64::from(u16::from_le_bytes(*low)) | u64::from(*high) << (8 * (length - 1))
    } else {
        payload.first().map_or(0, |byte| u64::from(*byte))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_length_is_zero_extended() {
        let bytes = [0xF1, 0xE4, 0xD7, 0xCA, 0xBD, 0xB0, 0xA3];
        for length in 0..=bytes.len() {
            let mut window = [0u8; 8];
            window[..length].copy_from_slice(&bytes[..length]);
            assert_eq!(short_word(&bytes[..length]), u64::from_le_bytes(window), "{length} bytes");
        }
    }
}
