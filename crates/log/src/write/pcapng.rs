//! A writer of block-structured packet files.

use std::fmt;
use std::io::Write;

use crate::channels::CHANNELS_MAX;
use crate::error::LogError;
use crate::frame::{Channel, Frame};
use crate::pcapng::NAME_BYTES_MAX;
use crate::record::{self, LinkType};

use super::check;

/// Writes one little-endian section with nanosecond time stamps.
///
/// ```
/// use wirelore_log::{Frame, LinkType, write::PcapngWriter};
///
/// let mut log = PcapngWriter::new(Vec::new())?;
/// let drive = log.add_channel("drive", LinkType::Can)?;
/// log.write(&Frame::data(Some(1_000_000), drive, 0x123, &[0x11, 0x22, 0x33]))?;
/// let bytes = log.finish()?;
/// assert_eq!(bytes.len() % 4, 0);
/// # Ok::<(), wirelore_log::LogError>(())
/// ```
pub struct PcapngWriter<W: Write> {
    output: W,
    /// The link type of each channel.
    channels: Vec<LinkType>,
    frames: u64,
    block: Vec<u8>,
    /// The packet of the frame being written.
    packet: Vec<u8>,
}

impl<W: Write> PcapngWriter<W> {
    /// Begins the section.
    ///
    /// # Errors
    /// When the output fails.
    pub fn new(output: W) -> Result<Self, LogError> {
        let mut writer = Self { output, channels: Vec::new(), frames: 0, block: Vec::new(), packet: Vec::new() };
        writer.begin_block(0x0A0D_0D0A);
        writer.block.extend_from_slice(&0x1A2B_3C4D_u32.to_le_bytes());
        writer.block.extend_from_slice(&1_u16.to_le_bytes());
        writer.block.extend_from_slice(&0_u16.to_le_bytes());
        writer.block.extend_from_slice(&(-1_i64).to_le_bytes());
        writer.end_block()?;
        Ok(writer)
    }

    /// Adds a channel for frames of one kind of network: an interface of this name. An empty name is left out.
    ///
    /// # Errors
    /// When the output fails, there are 1024 channels already, or the name has more than 128 bytes or a zero among them.
    pub fn add_channel(&mut self, name: &str, link: LinkType) -> Result<Channel, LogError> {
        let refuse = |what: String| LogError::Unwritable { number: self.frames + 1, what };
        let number = self.channels.len();
        if number >= CHANNELS_MAX {
            return Err(refuse(format!("there are {CHANNELS_MAX} channels already, and a log has no more")));
        }
        if name.len() > NAME_BYTES_MAX || name.contains('\0') {
            let limit = format!("more than {NAME_BYTES_MAX} bytes or a zero among them");
            return Err(refuse(format!("the name of channel {number} has {limit}, and would be read back cut")));
        }
        self.begin_block(1);
        self.block.extend_from_slice(&link.number().to_le_bytes());
        self.block.extend_from_slice(&[0; 6]);
        if !name.is_empty() {
            self.option(2, name.as_bytes());
        }
        self.option(9, &[9]);
        self.option(0, &[]);
        self.end_block()?;
        self.channels.push(link);
        Ok(Channel(number as u16))
    }

    /// Writes one frame.
    ///
    /// A frame without a time becomes a Simple Packet Block, which only the first channel can have.
    ///
    /// # Errors
    /// When the output fails, or the frame cannot be told in this layout: a channel that was not added or is one of another kind of
    /// network, a time before 1970, an identifier or a length out of range, faults that the kind of the frame does not tell.
    pub fn write(&mut self, frame: &Frame<'_>) -> Result<(), LogError> {
        let number = self.frames + 1;
        let refuse = |what: &str| LogError::Unwritable { number, what: what.to_owned() };
        let (channel, channels) = (usize::from(frame.channel.0), self.channels.len());
        let Some(&link) = self.channels.get(channel) else {
            return Err(refuse(&format!("its channel is {channel}, and {channels} were added before")));
        };
        check::frame(frame, link).map_err(|what| refuse(&what))?;
        self.packet.clear();
        record::write(frame, &mut self.packet);
        let record_bytes = self.packet.len() as u32;
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
        self.block.extend_from_slice(&self.packet);
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
