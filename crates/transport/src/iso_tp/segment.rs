//! A message cut into frames.

use wirelore_bits::payload_lengths::is_can_fd_length;

use super::{CLASSIC_BYTES_MAX, FRAME_BYTES_MAX, SHORT_LENGTH_MAX, single_most};

/// What the frames of a message look like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Layout {
    /// The byte before everything else, with extended and mixed addressing.
    pub address: Option<u8>,
    /// The length of a full frame: 8 on CAN; 8, 12, 16, 20, 24, 32, 48 or 64 on CAN FD.
    pub frame_bytes: usize,
    /// What fills frames up to 8 bytes; `None` leaves them short. Longer frames need filling up to the next length of CAN FD, for which
    /// `None` takes CC, the value that the standard advises.
    pub padding: Option<u8>,
}

impl Default for Layout {
    fn default() -> Self {
        Self { address: None, frame_bytes: CLASSIC_BYTES_MAX, padding: Some(PADDING) }
    }
}

const PADDING: u8 = 0xCC;

/// Why a message cannot be cut into frames.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum SegmentError {
    /// There is nothing to send.
    #[error("a message of 0 bytes cannot be sent; ISO 15765-2 has no frame for it")]
    Empty,
    /// Longer than 32 bits can say.
    #[error("a message of {0} bytes cannot be sent; at most 4294967295 can be announced")]
    TooLong(usize),
    /// No length of a full frame.
    #[error("frames of {0} bytes cannot be full ones; take 8 on CAN, and 8, 12, 16, 20, 24, 32, 48 or 64 on CAN FD")]
    FrameBytes(usize),
}

/// Cuts `message` into frames and hands out the payload of each, in their order. The flow control of the receiver comes after the first of
/// several frames; it is not among them.
///
/// # Errors
/// A message that no frames can carry, or a layout that no frames can have.
pub fn segment(message: &[u8], layout: &Layout, give: &mut dyn FnMut(&[u8])) -> Result<(), SegmentError> {
    if layout.frame_bytes < CLASSIC_BYTES_MAX || !u8::try_from(layout.frame_bytes).is_ok_and(is_can_fd_length) {
        return Err(SegmentError::FrameBytes(layout.frame_bytes));
    }
    let announced = u32::try_from(message.len()).map_err(|_| SegmentError::TooLong(message.len()))?;
    let address_bytes = usize::from(layout.address.is_some());
    if announced == 0 {
        return Err(SegmentError::Empty);
    }
    let low = announced.to_be_bytes();
    if message.len() <= single_most(CLASSIC_BYTES_MAX, address_bytes) {
        Frame::new(layout, &[low[3]]).fill_and_give(message, give);
        return Ok(());
    }
    if message.len() <= single_most(layout.frame_bytes, address_bytes) {
        Frame::new(layout, &[0, low[3]]).fill_and_give(message, give);
        return Ok(());
    }
    let first = if announced <= SHORT_LENGTH_MAX {
        Frame::new(layout, &[0x10 | low[2], low[3]])
    } else {
        Frame::new(layout, &[0x10, 0, low[0], low[1], low[2], low[3]])
    };
    let (begin, rest) = message.split_at(first.room());
    first.fill_and_give(begin, give);
    let each = layout.frame_bytes - 1 - address_bytes;
    for (number, piece) in (0..=u8::MAX).cycle().skip(1).zip(rest.chunks(each)) {
        Frame::new(layout, &[0x20 | (number & 0xF)]).fill_and_give(piece, give);
    }
    Ok(())
}

/// A frame in the making.
struct Frame<'l> {
    layout: &'l Layout,
    bytes: [u8; FRAME_BYTES_MAX],
    used: usize,
}

impl<'l> Frame<'l> {
    fn new(layout: &'l Layout, head: &[u8]) -> Self {
        let mut frame = Self { layout, bytes: [0; FRAME_BYTES_MAX], used: 0 };
        frame.push(layout.address.as_slice());
        frame.push(head);
        frame
    }

    fn room(&self) -> usize {
        self.layout.frame_bytes - self.used
    }

    fn push(&mut self, bytes: &[u8]) {
        self.bytes[self.used..self.used + bytes.len()].copy_from_slice(bytes);
        self.used += bytes.len();
    }

    fn fill_and_give(mut self, data: &[u8], give: &mut dyn FnMut(&[u8])) {
        self.push(data);
        let mut length = self.used;
        if self.layout.padding.is_some() {
            length = length.max(CLASSIC_BYTES_MAX);
        }
        while !u8::try_from(length).is_ok_and(is_can_fd_length) {
            length += 1;
        }
        self.bytes[self.used..length].fill(self.layout.padding.unwrap_or(PADDING));
        give(&self.bytes[..length]);
    }
}
