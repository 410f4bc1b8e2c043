//! Control messages of MOST25 (MOST Specification, from memory).

use wirelore_model::Network;

/// The ring of the first generation.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Ring {
    frames_per_s: f64,
    bits_per_frame: f64,
    frames_per_message: f64,
    /// What one control message carries, and less where it is a part of a longer one, which is numbered.
    bytes: u32,
    part_bytes: u32,
}

/// At 44.1 kHz; a control message takes 16 frames. 512 bits a frame make 22.58 Mbit/s, which people call 25 Mbit/s.
pub(crate) const MOST25: Ring =
    Ring { frames_per_s: 44_100.0, bits_per_frame: 512.0, frames_per_message: 16.0, bytes: 12, part_bytes: 11 };

const RATES: std::ops::RangeInclusive<u64> = 20_000_000..=25_000_000;

impl Ring {
    /// Whether a network is such a ring, by its rate.
    pub(crate) fn is_ring(&self, network: &Network) -> bool {
        network.rate.is_some_and(|rate| RATES.contains(&rate.0))
    }

    pub(crate) fn bits_per_s(&self) -> f64 {
        self.frames_per_s * self.bits_per_frame
    }

    /// The bits of the frames that a message of so many bytes takes.
    pub(crate) fn bits(&self, bytes: u32) -> f64 {
        let messages = if bytes > self.bytes { bytes.div_ceil(self.part_bytes) } else { 1 };
        f64::from(messages) * self.frames_per_message * self.bits_per_frame
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 44,100 frames of 512 bits; 16 of them a control message: 2756.25 messages a second (MOST Specification, from memory).
    #[test]
    fn control_messages() {
        assert_eq!(MOST25.bits_per_s(), 22_579_200.0);
        assert_eq!(MOST25.bits_per_s() / MOST25.bits(12), 2756.25);
        assert_eq!(MOST25.bits(13), 2.0 * MOST25.bits(1));
        assert_eq!(MOST25.bits(23), 3.0 * MOST25.bits(1));
    }
}
