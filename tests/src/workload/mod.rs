//! The workload of the benchmarks: a vehicle, its description and its traffic, made in the open from nothing but a few numbers.
//!
//! Three networks; classic CAN frames of 8 bytes; about half of the frames in Intel and half in Motorola order; 50 to 64 bits used by signals
//! of 1 to 32 bits; a third of those wider than 4 bits signed; decimal and power-of-two factors and offsets; periods of 10 ms to 1 s. The same
//! numbers give the same bytes, always.

mod description;
mod formula;
mod record;
mod shape;
mod traffic;

pub use formula::Formula;
pub use record::START_NS;
pub use shape::{SignalShape, signals};
pub use traffic::{Sent, Traffic};

/// How many networks the vehicle has: `net0` and so on.
pub const NETWORKS: u32 = 3;

/// Which identifiers the frames have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Identifiers {
    /// 11 bits; for up to 5,000 frames.
    Standard,
    /// 29 bits.
    Extended,
}

/// A vehicle whose frames all have `N` signals.
#[derive(Debug, Clone)]
pub struct Vehicle<const N: usize> {
    /// The frames, in the order of the description.
    pub frames: Vec<FrameShape<N>>,
}

/// One frame.
#[derive(Debug, Clone)]
pub struct FrameShape<const N: usize> {
    /// Its place in the description.
    pub number: u32,
    /// The network it is on.
    pub network: u32,
    /// Its identifier.
    pub id: u32,
    /// Whether the identifier has 29 bits.
    pub extended: bool,
    /// How often it is sent.
    pub period_ms: u32,
    /// What is in it.
    pub signals: [SignalShape; N],
}

impl<const N: usize> Vehicle<N> {
    /// A vehicle with so many frames.
    #[must_use]
    pub fn new(frames: u32, identifiers: Identifiers) -> Self {
        Self { frames: (0..frames).map(|number| FrameShape::new(number, identifiers)).collect() }
    }

    /// Its description in the language.
    #[must_use]
    pub fn description(&self) -> String {
        description::text(self)
    }

    /// What it sends, in the order of time, without end.
    #[must_use]
    pub fn traffic(&self) -> Traffic<'_, N> {
        Traffic::new(self)
    }
}

impl<const N: usize> FrameShape<N> {
    fn new(number: u32, identifiers: Identifiers) -> Self {
        // Odd multipliers without a common factor with the sizes spread the identifiers of a network and keep them apart.
        let on_network = number / NETWORKS;
        let (id, extended) = match identifiers {
            Identifiers::Standard => (0x040 + on_network.wrapping_mul(7919) % 0x780, false),
            Identifiers::Extended => ((on_network + 1).wrapping_mul(2_654_435_761) & 0x1FFF_FFFF, true),
        };
        const PERIODS_MS: [u32; 10] = [10, 20, 20, 50, 100, 100, 100, 200, 500, 1000];
        let period_ms = PERIODS_MS[(shape::mix(u64::from(number) + 77) % PERIODS_MS.len() as u64) as usize];
        Self { number, network: number % NETWORKS, id, extended, period_ms, signals: signals(number) }
    }

    /// Whether the frame's signals are in Motorola order; else they are in Intel order.
    #[must_use]
    pub const fn is_motorola(&self) -> bool {
        is_motorola(self.number)
    }

    /// The payload as the word whose bits the signals count: bit 0 is the least significant one of the lowest signal.
    #[must_use]
    pub const fn word(&self, payload: [u8; 8]) -> u64 {
        if self.is_motorola() { u64::from_be_bytes(payload) } else { u64::from_le_bytes(payload) }
    }

    /// The payload of a word.
    #[must_use]
    pub const fn payload(&self, word: u64) -> [u8; 8] {
        if self.is_motorola() { word.to_be_bytes() } else { word.to_le_bytes() }
    }
}

/// Whether a frame's signals are in Motorola order: every other pair, so that each network has both.
#[must_use]
pub const fn is_motorola(frame: u32) -> bool {
    frame / 2 % 2 == 1
}

/// The description of a vehicle with so many frames of 11 bits, of `signals` (8 or 12) each.
#[must_use]
pub fn description(frames: u32, signals: u32) -> String {
    match signals {
        12 => Vehicle::<12>::new(frames, Identifiers::Standard).description(),
        _ => Vehicle::<8>::new(frames, Identifiers::Standard).description(),
    }
}

/// A pcapng recording of so many frames of [`description`] with 8 signals each.
///
/// # Panics
/// Never: writing to memory does not fail.
#[must_use]
pub fn recording(described_frames: u32, frames: u64) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(frames as usize * 48 + 256);
    let vehicle = Vehicle::<8>::new(described_frames, Identifiers::Standard);
    vehicle.record(frames, &mut bytes, std::io::sink(), |_| ()).expect("memory takes everything");
    bytes
}

#[cfg(test)]
mod tests;
