//! A CAN bus: who wants to send waits until it is quiet, and of those who wait the lowest identifier goes first.

use wirelore_model::FrameId;

use super::content::Values;
use super::wire::frame_bits;
use crate::noise::Noise;

/// How often a frame finds the bus taken by one of the frames that the recorder leaves out, and how long that may last in bits.
const TAKEN_SHARE: f64 = 0.3;
const TAKEN_BITS: u64 = 120;

/// A frame that is ready to be sent, or has been.
#[derive(Debug, Clone)]
pub(crate) struct Message {
    /// Which one of the description it is.
    pub(crate) frame: FrameId,
    /// Its identifier here.
    pub(crate) id: u16,
    /// Its bytes.
    pub(crate) payload: Vec<u8>,
    /// What its sender has put in.
    pub(crate) values: Values,
    /// When it became ready; behind the bus, when its last bit had passed.
    pub(crate) time_ns: u64,
}

/// One bus.
#[derive(Debug)]
pub(crate) struct Bus {
    bit_ns: u64,
    quiet_from_ns: u64,
    waiting: Vec<Message>,
    noise: Noise,
}

impl Bus {
    /// A quiet bus of this many bits a second.
    pub(crate) fn new(bits_per_s: u64, seed: u64) -> Self {
        Self { bit_ns: 1_000_000_000 / bits_per_s, quiet_from_ns: 0, waiting: Vec::new(), noise: Noise::new(seed) }
    }

    /// Takes a frame that wants to be sent.
    pub(crate) fn offer(&mut self, mut message: Message) {
        let others = if self.noise.share() < TAKEN_SHARE { self.noise.up_to(TAKEN_BITS) } else { 0 };
        message.time_ns += others * self.bit_ns;
        self.waiting.push(message);
    }

    /// Lets pass what begins before `until_ns`, and hands it on with the time of its end.
    pub(crate) fn run(&mut self, until_ns: u64) -> Vec<Message> {
        let mut passed = Vec::new();
        while let Some(first_ready_ns) = self.waiting.iter().map(|message| message.time_ns).min() {
            let begin_ns = self.quiet_from_ns.max(first_ready_ns);
            if begin_ns >= until_ns {
                break;
            }
            let ready = self.waiting.iter().enumerate().filter(|(_, message)| message.time_ns <= begin_ns);
            let Some((winner, _)) = ready.min_by_key(|(_, message)| message.id) else {
                break;
            };
            let mut message = self.waiting.remove(winner);
            self.quiet_from_ns = begin_ns + frame_bits(message.id, &message.payload) * self.bit_ns;
            // The recorder stamps a frame at its last bit; the pause of three bits comes behind it.
            message.time_ns = self.quiet_from_ns - 3 * self.bit_ns;
            passed.push(message);
        }
        passed
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn message(id: u16, time_ns: u64) -> Message {
        Message { frame: FrameId(0), id, payload: vec![0x55; 8], values: Values::new(), time_ns }
    }

    #[test]
    fn the_lowest_identifier_goes_first_and_nobody_overlaps() {
        let mut bus = Bus::new(500_000, 7);
        bus.offer(message(0x300, 1_000));
        bus.offer(message(0x200, 1_500));
        bus.offer(message(0x100, 1_600));
        let passed = bus.run(10_000_000);
        let ids: Vec<u16> = passed.iter().map(|message| message.id).collect();
        assert!(ids == [0x300, 0x100, 0x200] || ids == [0x100, 0x200, 0x300], "{ids:X?}");
        for pair in passed.windows(2) {
            assert!(pair[1].time_ns - pair[0].time_ns >= 111 * 2_000, "two frames at once");
        }
    }
}
