//! How many bits a classic CAN frame takes on the wire, stuff bits counted one by one (ISO 11898-1, base format).

/// CRC delimiter, acknowledge and its delimiter, end of frame, pause between frames: never stuffed.
const TAIL_BITS: u64 = 3 + 7 + 3;
/// The generator polynomial of CRC-15/CAN.
const POLYNOMIAL: u16 = 0x4599;

/// Start, arbitration, control, data and checksum as they are sent, one bit after the other.
fn bits(id: u16, payload: &[u8]) -> Vec<bool> {
    let mut bits = Vec::with_capacity(34 + 8 * payload.len());
    let mut push = |number: u16, width: u16| bits.extend((0..width).rev().map(|place| number >> place & 1 == 1));
    push(0, 1); // start of frame
    push(id, 11);
    push(0, 3); // no remote frame, base format, reserved
    push(payload.len() as u16, 4);
    payload.iter().for_each(|byte| push(u16::from(*byte), 8));
    let checksum = checksum(&bits);
    bits.extend((0..15).rev().map(|place| checksum >> place & 1 == 1));
    bits
}

fn checksum(bits: &[bool]) -> u16 {
    bits.iter().fold(0, |register: u16, bit| {
        let top = register >> 14 & 1 == 1;
        let shifted = register << 1 & 0x7FFF;
        if top != *bit { shifted ^ POLYNOMIAL } else { shifted }
    })
}

/// After five equal bits the sender puts in one of the other kind, which counts for the next five.
fn stuff_bits(bits: &[bool]) -> u64 {
    let (mut last, mut run, mut stuffed) = (true, 0, 0);
    for bit in bits {
        run = if *bit == last { run + 1 } else { 1 };
        last = *bit;
        if run == 5 {
            stuffed += 1;
            last = !last;
            run = 1;
        }
    }
    stuffed
}

/// Bits from the start of the frame to the end of the pause behind it.
pub(crate) fn frame_bits(id: u16, payload: &[u8]) -> u64 {
    let bits = bits(id, payload);
    bits.len() as u64 + stuff_bits(&bits) + TAIL_BITS
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::noise::Noise;

    /// Bounds: Davis, Burns, Bril, Lukkien, "Controller Area Network (CAN) schedulability analysis: refuted, revisited and revised",
    /// Real-Time Systems 35 (2007), 55 + 10n at most (from memory); without stuff bits 47 + 8n.
    #[test]
    fn lengths_lie_between_the_published_bounds() {
        let mut noise = Noise::new(1);
        for _ in 0..20_000 {
            let payload: Vec<u8> = (0..noise.up_to(8)).map(|_| noise.bits() as u8).collect();
            let (length, bits) = (payload.len() as u64, frame_bits(noise.up_to(0x7FF) as u16, &payload));
            assert!((47 + 8 * length..=55 + 10 * length).contains(&bits), "{bits} bits for {length} bytes");
        }
    }

    /// The public catalogue of parametrised CRC algorithms: CRC-15/CAN gives 0x059E for the characters 1 to 9.
    #[test]
    fn checksum_gives_the_published_value() {
        let bits: Vec<bool> =
            b"123456789".iter().flat_map(|byte| (0..8).rev().map(move |place| byte >> place & 1 == 1)).collect();
        assert_eq!(checksum(&bits), 0x059E);
    }
}
