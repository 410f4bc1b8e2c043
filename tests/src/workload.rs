//! A workload of a known size for the benchmarks: descriptions and recordings made from nothing but a few numbers.

use std::fmt::Write;

use wirelore_log::write::PcapngWriter;
use wirelore_log::{Channel, Frame};

/// A description with so many frames of so many signals each, on three networks: widths of 1 to 32 bits, both byte orders, signed and
/// unsigned, decimal factors and offsets.
#[must_use]
pub fn description(frames: u32, signals: u32) -> String {
    let mut text = String::from("edition 1\n");
    for network in 0..3 {
        let _ = writeln!(text, "network net{network} can 500 kbit/s\necu unit{network} on net{network}");
    }
    for frame in 0..frames {
        let network = frame % 3;
        let _ = writeln!(text, "frame frame_{frame} on net{network} id {} {{", identifier(frame));
        let _ = writeln!(text, "    sent by unit{network} every {} ms\n    length 8", 10 * (1 + frame % 20));
        for signal in 0..signals {
            let _ = writeln!(text, "    signal signal_{signal} {}", signal_text(frame, signal, signals));
        }
        text.push_str("}\n");
    }
    text
}

/// 11 bits as long as they last, then 29.
fn identifier(frame: u32) -> String {
    if frame < 0x600 { format!("0x{:03X}", 0x100 + frame) } else { format!("0x{:08X} extended", 0x1800_0000 + frame) }
}

/// Signals share the eight bytes evenly; those of whole bytes take both orders in turn.
fn signal_text(frame: u32, signal: u32, signals: u32) -> String {
    let formula =
        ["= raw * 0.05 km/h", "= raw * 0.01 - 40 °C", "= raw / 256 bar", "= raw * 0.125 rpm"][(signal % 4) as usize];
    let kind = if signal % 3 == 1 { "signed " } else { "" };
    if signals <= 8 {
        // Four signals of 12 bits in both orders, the rest in the last two bytes.
        let place = match (signal, frame % 2) {
            (0, 0) => "bits 1.3..0.0",
            (1, 0) => "bits 2.7..1.4",
            (2, 0) => "bits 4.3..3.0",
            (3, 0) => "bits 5.7..4.4",
            (0, _) => "bits 0.7..1.4",
            (1, _) => "bits 1.3..2.0",
            (2, _) => "bits 3.7..4.4",
            (3, _) => "bits 4.3..5.0",
            (4, _) => "bits 6.7..6.4",
            (5, _) => "bits 6.3..6.0",
            (6, _) => "bits 7.7..7.4",
            _ => "bits 7.3..7.0",
        };
        return format!("in {place} {kind}{formula}");
    }
    let width = 64 / signals;
    let low = signal * width;
    let high = low + width - 1;
    if low / 8 == high / 8 {
        format!("in bits {}.{}..{}.{} {kind}{formula}", high / 8, high % 8, low / 8, low % 8)
    } else {
        format!("in lsb {low} width {width} intel {kind}{formula}")
    }
}

/// A pcapng recording of so many frames of [`description`], 100 µs apart, payloads by a linear congruential generator.
///
/// # Panics
/// Never: writing to memory does not fail.
#[must_use]
pub fn recording(described_frames: u32, frames: u64) -> Vec<u8> {
    let mut writer = PcapngWriter::new(Vec::with_capacity(frames as usize * 48)).expect("memory takes everything");
    let channels: Vec<Channel> =
        (0..3).map(|network| writer.add_channel(&format!("net{network}")).expect("memory takes everything")).collect();
    let mut state = 0x2545_F491_4F6C_DD1D_u64;
    for number in 0..frames {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let described = (state >> 33) as u32 % described_frames.min(0x600);
        let payload = (state ^ (state >> 29)).to_le_bytes();
        let time_ns = 1_700_000_000_000_000_000 + number as i64 * 100_000;
        let frame = Frame::data(Some(time_ns), channels[(described % 3) as usize], 0x100 + described, &payload);
        writer.write(&frame).expect("memory takes everything");
    }
    writer.finish().expect("memory takes everything")
}
