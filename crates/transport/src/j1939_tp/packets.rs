//! The packets of one message: which ones came, which one is due, and their bytes.

use super::PACKET_BYTES;
use super::exchange::Announced;
use super::fault::FaultKind;
use super::timers::{Timeouts, Timer};

/// A message of which some packets may have come.
#[derive(Debug, Clone)]
pub(super) struct Packets {
    pub(super) pgn: u32,
    pub(super) size: u16,
    pub(super) packets: u8,
    bytes: Vec<u8>,
    /// One bit for each packet that came.
    came: [u64; 4],
    pub(super) received: u8,
    /// The number that is due; one more than that of the last packet at the end, hence wider than a number.
    next: u16,
    /// The first packet that the receiver has not asked for yet, where it asked at all.
    cleared_until: Option<u16>,
    /// The first irregularity of a connection; packets that are asked for again may heal it.
    gap: Option<FaultKind>,
    is_broadcast: bool,
    /// The wait that it is in.
    pub(super) timer: Timer,
    /// Whether it was whole already and was told.
    pub(super) is_told: bool,
    pub(super) first_ns: Option<i64>,
    pub(super) last_ns: Option<i64>,
    /// Frames of the sender.
    pub(super) frames: u32,
}

impl Packets {
    /// A message that was announced; `bytes` is an empty buffer.
    pub(super) fn new(announced: Announced, time_ns: Option<i64>, bytes: Vec<u8>) -> Self {
        let Announced { pgn, size, packets, is_broadcast } = announced;
        Self {
            pgn,
            size,
            packets,
            bytes,
            came: [0; 4],
            received: 0,
            next: 1,
            cleared_until: None,
            gap: None,
            is_broadcast,
            timer: if is_broadcast { Timer::T1 } else { Timer::T3 },
            is_told: false,
            first_ns: time_ns,
            last_ns: time_ns,
            frames: 1,
        }
    }

    pub(super) fn is_whole(&self) -> bool {
        self.received == self.packets
    }

    /// The bytes of a whole message, without the filling of the last packet.
    pub(super) fn message(&self) -> &[u8] {
        &self.bytes[..usize::from(self.size).min(self.bytes.len())]
    }

    pub(super) fn into_buffer(self) -> Vec<u8> {
        self.bytes
    }

    pub(super) fn held_bytes(&self) -> usize {
        self.bytes.capacity()
    }

    /// How long nothing came, where that is too long. A time that goes back is no wait.
    pub(super) fn timed_out(&self, now_ns: Option<i64>, timeouts: &Timeouts) -> Option<FaultKind> {
        let waited_ns = now_ns?.saturating_sub(self.last_ns?);
        let limit_ns = timeouts.limit_ns(self.timer);
        (waited_ns > limit_ns).then_some(FaultKind::TimedOut { timer: self.timer, waited_ns, limit_ns })
    }

    fn has(&self, number: u8) -> bool {
        self.came[usize::from(number / 64)] >> (number % 64) & 1 != 0
    }

    /// The first packet that has not come.
    pub(super) fn missing(&self) -> u8 {
        (1..=self.packets).find(|&number| !self.has(number)).unwrap_or(self.packets)
    }

    /// What the conversation is given up for at its end: the gap, if there is one.
    pub(super) fn gap_or(&self, otherwise: FaultKind) -> FaultKind {
        self.gap.unwrap_or(otherwise)
    }

    /// Takes a packet.
    pub(super) fn take(&mut self, number: u8, data: [u8; PACKET_BYTES]) -> Result<(), FaultKind> {
        if number == 0 || number > self.packets {
            return Err(FaultKind::PacketBeyond { number, packets: self.packets });
        }
        if u16::from(number) < self.next {
            let latest = (self.next - 1) as u8;
            return Err(if self.has(number) {
                FaultKind::Repeated { number }
            } else {
                FaultKind::OutOfOrder { number, latest }
            });
        }
        if u16::from(number) > self.next {
            let lost = FaultKind::Lost { expected: self.next as u8, found: number };
            if self.is_broadcast {
                return Err(lost);
            }
            // The receiver may ask for what it lost, so that this need not be the end.
            self.gap.get_or_insert(lost);
        }
        self.put(number, data);
        Ok(())
    }

    fn put(&mut self, number: u8, data: [u8; PACKET_BYTES]) {
        let at = usize::from(number - 1) * PACKET_BYTES;
        if self.bytes.len() < at + PACKET_BYTES {
            self.bytes.resize(at + PACKET_BYTES, 0);
        }
        self.bytes[at..at + PACKET_BYTES].copy_from_slice(&data);
        if !self.has(number) {
            self.received += 1;
        }
        self.came[usize::from(number / 64)] |= 1 << (number % 64);
        self.next = u16::from(number) + 1;
        self.frames += 1;
        let is_more_due = self.is_broadcast || self.cleared_until.is_some_and(|until| self.next < until);
        self.timer = if is_more_due { Timer::T1 } else { Timer::T3 };
    }

    /// The receiver asks for `packets` packets from `next` on, or for a pause.
    pub(super) fn clear(&mut self, packets: u8, next: u8) -> Result<(), FaultKind> {
        if packets == 0 {
            self.timer = Timer::T4;
            return Ok(());
        }
        if next == 0 || next > self.packets {
            return Err(FaultKind::ClearedBeyond { next, packets: self.packets });
        }
        if u16::from(next) > self.next {
            self.gap.get_or_insert(FaultKind::NotRecorded { missing: self.next as u8 });
        }
        if next <= self.missing() {
            // What was lost comes again.
            self.gap = None;
        }
        let until = (u16::from(next) + u16::from(packets)).min(u16::from(self.packets) + 1);
        for number in next..=(until - 1) as u8 {
            if self.has(number) {
                self.received -= 1;
                self.came[usize::from(number / 64)] &= !(1 << (number % 64));
            }
        }
        self.next = u16::from(next);
        self.cleared_until = Some(until);
        self.timer = Timer::T2;
        Ok(())
    }
}
