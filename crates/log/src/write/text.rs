//! A writer of delimited text with a header line.

use std::fmt;
use std::io::Write;

use crate::error::LogError;
use crate::frame::{Channel, Frame, Kind};

/// The header line; every heading is one that the reader knows.
const HEADER: &str = "time_s,channel,id_hex,extended,kind,fd,bit_rate_switch,error_state,dlc,data_hex\n";

/// Writes one line for each frame, with commas, every decimal of the time, and hexadecimal bytes.
///
/// ```
/// use wirelore_log::{Frame, write::TextWriter};
///
/// let mut log = TextWriter::new(Vec::new())?;
/// let drive = log.add_channel("drive");
/// log.write(&Frame::data(Some(1_500_000_000), drive, 0x123, &[0x11, 0xA2]))?;
/// let text = String::from_utf8(log.finish()?)?;
/// assert!(text.ends_with("\n1.500000000,drive,123,0,data,0,0,0,2,11A2\n"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub struct TextWriter<W: Write> {
    output: W,
    channels: Vec<String>,
    frames: u64,
    line: Vec<u8>,
}

impl<W: Write> TextWriter<W> {
    /// Writes the header line.
    ///
    /// # Errors
    /// When the output fails.
    pub fn new(mut output: W) -> Result<Self, LogError> {
        output.write_all(HEADER.as_bytes())?;
        Ok(Self { output, channels: Vec::new(), frames: 0, line: Vec::new() })
    }

    /// Adds a channel of this name; line ends in it become blanks.
    pub fn add_channel(&mut self, name: &str) -> Channel {
        let clean: String = name.chars().map(|letter| if letter.is_control() { ' ' } else { letter }).collect();
        let is_plain = !clean.contains([',', '"', '#']) && clean.trim() == clean;
        self.channels.push(if is_plain { clean } else { format!("\"{}\"", clean.replace('"', "\"\"")) });
        Channel((self.channels.len() - 1) as u16)
    }

    /// Writes one frame.
    ///
    /// # Errors
    /// When the output fails, or the frame's channel was not added, or its identifier or length is out of range.
    pub fn write(&mut self, frame: &Frame<'_>) -> Result<(), LogError> {
        super::check(frame, self.frames + 1, self.channels.len())?;
        self.line.clear();
        if let Some(time_ns) = frame.time_ns {
            let (sign, size_ns) = (if time_ns < 0 { "-" } else { "" }, time_ns.unsigned_abs());
            write!(self.line, "{sign}{}.{:09}", size_ns / 1_000_000_000, size_ns % 1_000_000_000)?;
        }
        let kind = match frame.kind {
            Kind::Data => "data",
            Kind::Remote => "remote",
            Kind::Error => "error",
        };
        let [extended, fd, bit_rate_switch, error_state] =
            [frame.extended, frame.fd, frame.bit_rate_switch, frame.error_state].map(u8::from);
        let channel = &self.channels[usize::from(frame.channel.0)];
        write!(self.line, ",{channel},{:X},{extended},{kind},{fd},{bit_rate_switch},{error_state},", frame.id)?;
        if let Some(dlc) = frame.dlc {
            write!(self.line, "{dlc}")?;
        }
        self.line.push(b',');
        for byte in frame.payload {
            write!(self.line, "{byte:02X}")?;
        }
        self.line.push(b'\n');
        self.output.write_all(&self.line)?;
        self.frames += 1;
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
}

impl<W: Write> fmt::Debug for TextWriter<W> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("TextWriter")
            .field("channels", &self.channels)
            .field("frames", &self.frames)
            .finish_non_exhaustive()
    }
}
