//! A TCP connection as a listener sees it: who sends what, numbered as RFC 9293 wants it.

use super::packets::{Control, End, segment};

/// From one segment to the next.
const SEGMENT_NS: u64 = 380_000;
/// The first number of each side: any will do.
const FIRST_NUMBERS: [u32; 2] = [0x1A00_0000, 0xFFFF_FF80];

/// Which side sends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// The one that has opened the connection.
    Client,
    /// The one that was called.
    Server,
}

/// The connection.
pub(super) struct Connection {
    ends: [End; 2],
    /// The number of the next byte of each side.
    next: [u32; 2],
    /// Packets of each side so far.
    sent: [u16; 2],
    time_ns: u64,
    packets: Vec<(u64, Vec<u8>)>,
}

impl Connection {
    /// Opens a connection.
    pub(super) fn open(client: End, server: End, time_ns: u64) -> Self {
        let mut connection =
            Self { ends: [client, server], next: FIRST_NUMBERS, sent: [0x0100, 0x7300], time_ns, packets: Vec::new() };
        connection.control(Side::Client, true, false, false);
        connection.control(Side::Server, true, false, true);
        connection.control(Side::Client, false, false, true);
        connection
    }

    /// Nobody sends anything for so long.
    pub(super) fn wait(&mut self, time_ns: u64) {
        self.time_ns += time_ns;
    }

    /// Sends bytes, in segments of at most so many.
    pub(super) fn send(&mut self, side: Side, bytes: &[u8], most: usize) {
        for (number, piece) in bytes.chunks(most).enumerate() {
            let is_last = (number + 1) * most >= bytes.len();
            let control = Control {
                sequence: self.next[side as usize],
                acknowledged: Some(self.next[1 - side as usize]),
                push: is_last,
                ..Control::default()
            };
            self.push(side, &control, piece);
            self.next[side as usize] = self.next[side as usize].wrapping_add(piece.len() as u32);
        }
    }

    /// Sends the last segment but one once more, as if its confirmation had been lost.
    pub(super) fn repeat_last_but_one(&mut self) {
        let again = self.packets.len().checked_sub(2).and_then(|at| self.packets.get(at)).cloned();
        self.time_ns += SEGMENT_NS;
        self.packets.extend(again.map(|(_, packet)| (self.time_ns, packet)));
    }

    /// Confirms what has come.
    pub(super) fn confirm(&mut self, side: Side) {
        self.control(side, false, false, true);
    }

    /// Closes the connection from both sides.
    pub(super) fn close(mut self) -> Vec<(u64, Vec<u8>)> {
        self.control(Side::Client, false, true, true);
        self.control(Side::Server, false, true, true);
        self.control(Side::Client, false, false, true);
        self.packets
    }

    fn control(&mut self, side: Side, syn: bool, fin: bool, acknowledges: bool) {
        let acknowledged = acknowledges.then_some(self.next[1 - side as usize]);
        let control = Control { sequence: self.next[side as usize], acknowledged, syn, fin, push: false };
        self.push(side, &control, &[]);
        // Opening and closing count as a byte.
        self.next[side as usize] = self.next[side as usize].wrapping_add(u32::from(syn || fin));
    }

    fn push(&mut self, side: Side, control: &Control, payload: &[u8]) {
        let (from, to) = (self.ends[side as usize], self.ends[1 - side as usize]);
        self.time_ns += SEGMENT_NS;
        let number = &mut self.sent[side as usize];
        *number = number.wrapping_add(1);
        self.packets.push((self.time_ns, segment(from, to, control, *number, payload)));
    }
}
