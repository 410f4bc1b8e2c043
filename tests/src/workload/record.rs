//! The traffic as recordings: the same frames as pcapng and as text.

use std::io::Write;

use wirelore_log::write::PcapngWriter;
use wirelore_log::{Channel, Frame, LinkType, LogError};

use super::{NETWORKS, Sent, Vehicle};

/// When the pcapng recording begins, in nanoseconds since 1970. The text counts from 0.
pub const START_NS: i64 = 1_700_000_000_000_000_000;

impl<const N: usize> Vehicle<N> {
    /// Writes the first `count` frames of the traffic as pcapng (link type 227, blocks of 48 bytes, nanoseconds) and as text
    /// (`time_s,channel,id_hex,data_hex`), and shows each to `each`.
    ///
    /// # Errors
    /// When an output fails.
    pub fn record(
        &self,
        count: u64,
        pcapng: impl Write,
        mut text: impl Write,
        mut each: impl FnMut(&Sent<'_, N>),
    ) -> Result<(), LogError> {
        let mut writer = PcapngWriter::new(pcapng)?;
        let channels: Vec<Channel> = (0..NETWORKS)
            .map(|network| writer.add_channel(&format!("net{network}"), LinkType::Can))
            .collect::<Result<_, _>>()?;
        writeln!(text, "time_s,channel,id_hex,data_hex")?;
        for sent in self.traffic().take(count as usize) {
            let Sent { time_ns, frame, word } = sent;
            let payload = frame.payload(word);
            let channel = channels[frame.network as usize];
            writer.write(&Frame::data(Some(START_NS + time_ns), channel, frame.id, &payload))?;
            let (seconds, rest_ns) = (time_ns / 1_000_000_000, time_ns % 1_000_000_000);
            let bytes = u64::from_be_bytes(payload);
            writeln!(text, "{seconds}.{rest_ns:09},net{},{:03X},{bytes:016X}", frame.network, frame.id)?;
            each(&sent);
        }
        text.flush()?;
        writer.finish().map(drop)
    }
}
