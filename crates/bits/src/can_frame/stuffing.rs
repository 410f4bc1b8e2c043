//! Counting stuff bits a byte at a time: after five equal bits one of the other level is inserted, and it begins the next run.

use super::Header;

/// Level and length (1 to 4) of the run that a row of bits ends with, stuff bits included: level in bit 2, length less one below.
type Run = u8;

const LEVEL_BIT: u8 = 2;
const RUN_MASK: u8 = 0b111;
/// Before the first bit of a frame, which is dominant, the wire is recessive.
const IDLE: Run = 1 << LEVEL_BIT;

/// For each run and the byte that follows: the run at its end, and above it how many stuff bits (at most 2) were inserted.
static STEPS: [[u8; 256]; 8] = steps();

const fn steps() -> [[u8; 256]; 8] {
    let mut table = [[0; 256]; 8];
    let mut run = 0;
    while run < 8 {
        let mut byte = 0;
        while byte < 256 {
            table[run][byte] = step(run as Run, byte as u8);
            byte += 1;
        }
        run += 1;
    }
    table
}

const fn step(mut run: Run, byte: u8) -> u8 {
    let mut inserted = 0;
    let mut bit = 8;
    while bit > 0 {
        bit -= 1;
        let level = byte >> bit & 1;
        if run >> LEVEL_BIT != level {
            run = level << LEVEL_BIT;
        } else if run & 0b11 < 3 {
            run += 1;
        } else {
            inserted += 1;
            run = (level ^ 1) << LEVEL_BIT;
        }
    }
    inserted << 3 | run
}

/// The stuff bits of a row of bits that comes in pieces.
pub(super) struct Stuffing {
    run: Run,
    inserted: u32,
}

impl Stuffing {
    /// After the header of a frame.
    pub(super) fn of_header(header: Header) -> Self {
        // Whole bytes, with bits in front that alternate and end recessive: they need no stuff bits and leave the wire as idle as before.
        let padded = Header { bits: header.bits | 0x55 << header.count, count: header.count };
        let (bytes, count) = padded.bytes_behind_zeros();
        let mut stuffing = Self { run: IDLE, inserted: 0 };
        stuffing.pass(&bytes[..count]);
        stuffing
    }

    /// These bits come next.
    pub(super) fn pass(&mut self, bytes: &[u8]) {
        for &byte in bytes {
            let step = STEPS[usize::from(self.run & RUN_MASK)][usize::from(byte)];
            self.run = step & RUN_MASK;
            self.inserted += u32::from(step >> 3);
        }
    }

    /// The stuff bits so far, one right behind the last bit included.
    pub(super) fn inserted(&self) -> u32 {
        self.inserted
    }

    /// Whether a stuff bit stands right behind the last bit, which had this level: then the run has the other one.
    pub(super) fn ends_with_stuff_bit(&self, last_bit: u8) -> bool {
        self.run >> LEVEL_BIT != last_bit
    }
}
