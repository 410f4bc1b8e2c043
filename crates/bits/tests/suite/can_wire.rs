//! CAN and CAN FD frames written out bit by bit, as slowly and plainly as ISO 11898-1 tells it: the reference for `can_frame`.

use wirelore_bits::can_frame::{CanFrame, Format, WireBits};
use wirelore_bits::payload_lengths::can_fd_dlc;
use wirelore_bits::{Crc, CrcParameters};

/// A frame on the wire.
pub(crate) struct Wire {
    /// From the start bit to the last bit of the check sequence, stuff bits among them.
    pub(crate) stream: Vec<bool>,
    /// The check sequence.
    pub(crate) crc: u64,
    /// The stuff bits that depend on the bits before them.
    pub(crate) stuff_bits: usize,
    /// CAN FD: the stuff count with its parity bit.
    pub(crate) stuff_count: u64,
    /// All bits, the pause of three included, by rate.
    pub(crate) bits: WireBits,
}

/// A frame with a payload that can be sent.
pub(crate) fn wire(frame: &CanFrame<'_>) -> Wire {
    match frame.shape.format {
        Format::Fd { bit_rate_switch } => fd(frame, bit_rate_switch),
        Format::Data => classic(frame, false, frame.payload),
        Format::Remote => classic(frame, true, &[]),
    }
}

fn number(row: &mut Vec<bool>, value: u64, width: u32) {
    row.extend((0..width).rev().map(|bit| value >> bit & 1 == 1));
}

/// SOF and identifier; `asked` is RTR or RRS.
fn beginning(frame: &CanFrame<'_>, asked: bool) -> Vec<bool> {
    let mut row = vec![false];
    let id = u64::from(frame.identifier);
    if frame.shape.extended {
        number(&mut row, id >> 18, 11);
        row.extend([true, true]);
        number(&mut row, id & 0x3_FFFF, 18);
        row.push(asked);
    } else {
        number(&mut row, id, 11);
        row.extend([asked, false]);
    }
    row
}

fn classic(frame: &CanFrame<'_>, remote: bool, data: &[u8]) -> Wire {
    let mut row = beginning(frame, remote);
    // An extended frame has two reserved bits here, a base frame one: its IDE stands before.
    row.extend([false, false].iter().take(if frame.shape.extended { 2 } else { 1 }));
    let dlc = frame.dlc.map_or(frame.payload.len() as u64, u64::from);
    number(&mut row, dlc, 4);
    data.iter().for_each(|&byte| number(&mut row, u64::from(byte), 8));
    let crc = serial_crc(Crc::CAN_15.parameters(), &row);
    number(&mut row, crc, 15);
    let (stream, stuffed_at) = stuffed(&row);
    let bits = WireBits { nominal: stream.len() as u32 + 13, data: 0 };
    Wire { stream, crc, stuff_bits: stuffed_at.len(), stuff_count: 0, bits }
}

fn fd(frame: &CanFrame<'_>, switches: bool) -> Wire {
    let mut row = beginning(frame, false);
    row.extend([true, false, switches]);
    let nominal = row.len();
    row.push(frame.error_state);
    number(&mut row, u64::from(can_fd_dlc(frame.payload.len() as u8).expect("a length that can be sent")), 4);
    frame.payload.iter().for_each(|&byte| number(&mut row, u64::from(byte), 8));

    let (mut stream, mut stuffed_at) = stuffed(&row);
    // Behind the last data bit the fixed stuff bit stands alone.
    if stuffed_at.last() == Some(&(stream.len() - 1)) {
        stream.pop();
        stuffed_at.pop();
    }
    let gray = [0b000, 0b001, 0b011, 0b010, 0b110, 0b111, 0b101, 0b100_u64][stuffed_at.len() % 8];
    let stuff_count = gray << 1 | u64::from(gray.count_ones() % 2);

    // The sequence covers the stuff bits so far and the stuff count; its register starts with the top bit set.
    let catalogued = if frame.payload.len() <= 16 { Crc::CAN_FD_17 } else { Crc::CAN_FD_21 };
    let width = u32::from(catalogued.parameters().width);
    let parameters = CrcParameters { init: 1 << (width - 1), ..*catalogued.parameters() };
    let mut covered = stream.clone();
    number(&mut covered, stuff_count, 4);
    let crc = serial_crc(&parameters, &covered);

    let mut check = Vec::new();
    number(&mut check, stuff_count, 4);
    number(&mut check, crc, width);
    for four in check.chunks(4) {
        stream.push(!stream.last().expect("a frame has begun"));
        stream.extend(four);
    }
    let behind_row_bits = stuffed_at.iter().enumerate().map(|(earlier, place)| place - earlier);
    let before_switch = nominal + behind_row_bits.filter(|&row_bits| row_bits < nominal).count();
    let all = stream.len() as u32 + 13;
    let data = if switches { stream.len() as u32 - before_switch as u32 } else { 0 };
    let stuff_bits = stuffed_at.len();
    Wire { stream, crc, stuff_bits, stuff_count, bits: WireBits { nominal: all - data, data } }
}

/// A row with its stuff bits, and where they are.
fn stuffed(row: &[bool]) -> (Vec<bool>, Vec<usize>) {
    let (mut stream, mut places) = (Vec::new(), Vec::new());
    for &bit in row {
        stream.push(bit);
        let run = stream.iter().rev().take_while(|&&before| before == bit).count();
        if run == 5 {
            places.push(stream.len());
            stream.push(!bit);
        }
    }
    (stream, places)
}

fn serial_crc(parameters: &CrcParameters, row: &[bool]) -> u64 {
    let (top, mask) = (1 << (parameters.width - 1), (1 << parameters.width) - 1);
    row.iter().fold(parameters.init, |register, &bit| {
        let differs = (register & top != 0) != bit;
        (register << 1 ^ if differs { parameters.poly } else { 0 }) & mask
    })
}
