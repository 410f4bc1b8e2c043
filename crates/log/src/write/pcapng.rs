//! A writer of block-structured packet files with link type 227.

use std::fmt;
use std::io::Write;

use crate::can_record::{FD_BIT_RATE_SWITCH, FD_ERROR_STATE, FD_FORMAT, HEADER_BYTES, LINK_TYPE};
use crate::error::LogError;
use crate::frame::{CLASSIC_BYTES_MAX, Channel, FD_BYTES_MAX, Frame, Kind};
use crate::identifiers::{ERROR_FLAG, EXTENDED_FLAG, REMOTE_FLAG};

/// Writes one little-endian section with nanosecond time stamps.
///
/// ```
/// use wirelore_log::{Frame, write::PcapngWriter};
///
/// let mut log = PcapngWriter::new(Vec::new())?;
/// let drive = log.add_channel("drive")?;
/// log.write(&Frame::data(Some(1_000_000), drive, 0x123, &[0x11, 0x22, 0x33]))?;
/// let bytes = log.finish()?;
/// assert_eq!(bytes.len() % 4, 0);
/// # Ok::<(), wirelore_log::LogError>(())
/// ```
pub struct PcapngWriter<W: Write> {
    output: W,
    channels: usize,
    frames: u64,
    block: Vec<u8>,
}

impl<W: Write> PcapngWriter<W> {
    /// Begins the section.
    ///
    /// # Errors
    /// When the output fails.
    pub fn new(output: W) -> Result<Self, LogError> {
        let mut writer = Self { output, channels: 0, frames: 0, block: Vec::new() };
        writer.begin_block(0x0A0D_0D0A);
        writer.block.extend_from_slice(&0x1A2B_3C4D_u32.to_le_bytes());
        writer.block.extend_from_slice(&1_u16.to_le_bytes());
        writer.block.extend_from_slice(&0_u16.to_le_bytes());
        writer.block.extend_from_slice(&(-1_i64).to_le_bytes());
        writer.end_block()?;
        Ok(writer)
    }

    /// Adds a channel: an interface of this name. An empty name is left out.
    ///
    /// # Errors
    /// When the output fails, there are 65,536 channels already, or the name has more than 1000 bytes.
    pub fn add_channel(&mut self, name: &str) -> Result<Channel, LogError> {
        let refuse = |what: String| LogError::Unwritable { number: self.frames + 1, what };
        let number = u16::try_from(self.channels).map_err(|_| refuse("there are too many channels".to_owned()))?;
        if name.len() > 1000 {
            return Err(refuse(format!("the name of channel {number} has more than 1000 bytes")));
        }
        self.begin_block(1);
        self.block.extend_from_slice(&LINK_TYPE.to_le_bytes());
        self.block.extend_from_slice(&[0; 6]);
        if !name.is_empty() {
            self.option(2, name.as_bytes());
        }
        self.option(9, &[9]);
        self.option(0, &[]);
        self.end_block()?;
        self.channels += 1;
        Ok(Channel(number))
    }

    /// Writes one frame.
    ///
    /// A frame without a time becomes a Simple Packet Block, which only the first channel can have.
    ///
    /// # Errors
    /// When the output fails, or the frame cannot be told in this layout: a channel that was not added, a time before 1970,
    /// an identifier or a length out of range.
    pub fn write(&mut self, frame: &Frame<'_>) -> Result<(), LogError> {
        let number = self.frames + 1;
        super::check(frame, number, self.channels)?;
        let refuse = |what: &str| LogError::Unwritable { number, what: what.to_owned() };
        let record_bytes = (HEADER_BYTES + frame.payload.len()) as u32;
        match frame.time_ns.map(u64::try_from) {
            Some(Ok(ticks)) => {
                self.begin_block(6);
                let numbers =
                    [u32::from(frame.channel.0), (ticks >> 32) as u32, ticks as u32, record_bytes, record_bytes];
                numbers.iter().for_each(|number| self.block.extend_from_slice(&number.to_le_bytes()));
            }
            Some(Err(_)) => return Err(refuse("its time lies before 1970")),
            None if frame.channel.0 == 0 => {
                self.begin_block(3);
                self.block.extend_from_slice(&record_bytes.to_le_bytes());
            }
            None => {
                return Err(refuse("it has no time, and only frames of the first channel can be without"));
            }
        }
        self.record(frame);
        self.end_block()?;
        self.frames = number;
        Ok(())
    }

    /// Ends the log and gives the output back.
    ///
    /// # Errors
    /// When the output cannot be flushed.
    pub fn finish(mut self) -> Result<W, LogError> {
        self.output.flush()?;
        Ok(self.output)
    }

    /// The record of link type 227.
    fn record(&mut self, frame: &Frame<'_>) {
        let kind_flag = match frame.kind {
            Kind::Remote => REMOTE_FLAG,
            Kind::Error => ERROR_FLAG,
            _ => 0,
        };
        let word = frame.id | kind_flag | if frame.extended { EXTENDED_FLAG } else { 0 };
        let dlc = frame.dlc.filter(|dlc| *dlc <= 15);
        let length = match frame.kind {
            Kind::Remote => dlc.unwrap_or(0).min(CLASSIC_BYTES_MAX as u8),
            _ => frame.payload.len().min(FD_BYTES_MAX) as u8,
        };
        let raw_dlc = dlc.filter(|dlc| !frame.fd && *dlc > 8 && usize::from(length) == CLASSIC_BYTES_MAX);
        let mut flags = 0;
        if frame.fd {
            flags = FD_FORMAT;
            flags |= if frame.bit_rate_switch { FD_BIT_RATE_SWITCH } else { 0 };
            flags |= if frame.error_state { FD_ERROR_STATE } else { 0 };
        }
        self.block.extend_from_slice(&word.to_be_bytes());
        self.block.extend_from_slice(&[length, flags, 0, raw_dlc.unwrap_or(0)]);
        self.block.extend_from_slice(frame.payload);
    }

    fn option(&mut self, code: u16, value: &[u8]) {
        self.block.extend_from_slice(&code.to_le_bytes());
        self.block.extend_from_slice(&(value.len() as u16).to_le_bytes());
        self.block.extend_from_slice(value);
        self.pad();
    }

    fn pad(&mut self) {
        self.block.resize(self.block.len().next_multiple_of(4), 0);
    }

    fn begin_block(&mut self, kind: u32) {
        self.block.clear();
        self.block.extend_from_slice(&kind.to_le_bytes());
        self.block.extend_from_slice(&[0; 4]);
    }

    /// Pads the block, puts its length at both ends, and writes it.
    fn end_block(&mut self) -> Result<(), LogError> {
        self.pad();
        let total = (self.block.len() as u32 + 4).to_le_bytes();
        self.block[4..8].copy_from_slice(&total);
        self.block.extend_from_slice(&total);
        Ok(self.output.write_all(&self.block)?)
    }
}

impl<W: Write> fmt::Debug for PcapngWriter<W> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("PcapngWriter")
            .field("channels", &self.channels)
            .field("frames", &self.frames)
            .finish_non_exhaustive()
    }
}
