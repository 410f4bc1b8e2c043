//! The vehicle as a description.

use std::fmt::Write;

use super::{FrameShape, NETWORKS, SignalShape, Vehicle};

const PARTS: [&str; 16] = [
    "pump", "valve", "coolant", "intake", "exhaust", "battery", "heater", "door", "axle", "steering", "clutch", "tank",
    "cabin", "mirror", "lamp", "charger",
];

const QUANTITIES: [&str; 12] =
    ["level", "demand", "limit", "supply", "outlet", "inlet", "target", "average", "left", "right", "mode", "reserve"];

/// The whole description.
pub(super) fn text<const N: usize>(vehicle: &Vehicle<N>) -> String {
    let mut text = String::from("edition 1\nvehicle workload \"A vehicle that exists only to be measured\"\n\n");
    for network in 0..NETWORKS {
        let _ = writeln!(text, "network net{network} \"Network {network} of {NETWORKS}\" can 500 kbit/s");
    }
    for network in 0..NETWORKS {
        let _ = writeln!(text, "ecu unit{network} \"Control unit {network}, the only sender\" on net{network}");
    }
    text.push_str("ecu hub \"Central gateway\" on net0, net1, net2\n");
    for frame in &vehicle.frames {
        push_frame(&mut text, frame);
    }
    text
}

fn push_frame<const N: usize>(text: &mut String, frame: &FrameShape<N>) {
    let FrameShape { number, network, id, period_ms, .. } = *frame;
    let part = PARTS[number as usize % PARTS.len()];
    let identifier = if frame.extended { format!("0x{id:08X} extended") } else { format!("0x{id:03X}") };
    let order = if frame.is_motorola() { "motorola" } else { "intel" };
    let _ = write!(
        text,
        "\n## What unit{network} says of the {part}, group {number}.\n\
         frame {part}_{number} \"The {part}, group {number}\" on net{network} id {identifier} {{\n    \
         sent by unit{network} every {period_ms} ms\n    read by hub\n    length 8\n    order {order}\n\n"
    );
    for (index, signal) in frame.signals.iter().enumerate() {
        push_signal(text, frame.is_motorola(), part, index, signal);
    }
    text.push_str("}\n");
}

fn push_signal(text: &mut String, motorola: bool, part: &str, index: usize, signal: &SignalShape) {
    let quantity = QUANTITIES[index % QUANTITIES.len()];
    let _ = write!(text, "    signal {part}_{quantity} \"The {part}'s {quantity}\" in ");
    let (high, low) = (position(signal.shift + signal.width - 1, motorola), position(signal.shift, motorola));
    let _ = if signal.width == 1 { write!(text, "bit {low}") } else { write!(text, "bits {high}..{low}") };
    if signal.signed {
        text.push_str(" signed");
    }
    let formula = signal.formula;
    if !formula.unit.is_empty() {
        let (low, high) = signal.raw_range();
        let [low, high] = [low, high].map(|raw| decimal(signal, raw));
        let _ = write!(text, " = {} {}, range {low}..{high}", formula.text, formula.unit);
    }
    text.push('\n');
}

/// BYTE.BIT of a bit of the word.
fn position(bit: u32, motorola: bool) -> String {
    let byte = if motorola { 7 - bit / 8 } else { bit / 8 };
    format!("{byte}.{}", bit % 8)
}

/// The exact value of a raw number.
fn decimal(signal: &SignalShape, raw: i64) -> String {
    let formula = signal.formula;
    let unit = 10_i64.pow(formula.decimals);
    let scaled = (raw * formula.numerator + formula.offset) * (unit / formula.denominator);
    let sign = if scaled < 0 { "-" } else { "" };
    let (whole, rest) = (scaled.abs() / unit, scaled.abs() % unit);
    if rest == 0 {
        return format!("{sign}{whole}");
    }
    let digits = format!("{rest:0width$}", width = formula.decimals as usize);
    format!("{sign}{whole}.{}", digits.trim_end_matches('0'))
}
