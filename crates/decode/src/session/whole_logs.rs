//! Which channel is which network, for those who read logs themselves and decode nothing.

use wirelore_log::{Channel, Recording};
use wirelore_model::{NetworkId, SeenId};

use super::channels::Channels;
use super::sample::Sample;
use crate::bind::{BindMap, Binding};
use crate::decoder::Decoder;
use crate::error::SessionError;

/// Decides about the channels of logs that have been read to their end, by the rules that a [`Session`](crate::Session) goes by.
#[derive(Debug)]
pub struct WholeLogs<'d> {
    decoder: &'d Decoder,
    channels: Channels,
}

impl<'d> WholeLogs<'d> {
    /// Makes ready for the first log.
    ///
    /// # Errors
    /// [`SessionError::NoNetwork`], and [`SessionError::NoSuchNetwork`] where the binding names one.
    pub fn new(decoder: &'d Decoder, bind: &BindMap) -> Result<Self, SessionError> {
        Ok(Self { decoder, channels: Channels::new(decoder, bind)? })
    }

    /// The networks of one log's channels, by their numbers; `None`: left out. `seen` holds each channel with what was seen on it.
    ///
    /// # Errors
    /// A channel that could be several networks, two that look like the same one, or a binding that names none of them.
    pub fn bind(
        &mut self,
        recording: &Recording,
        seen: &[(Channel, Vec<SeenId>)],
    ) -> Result<Vec<Option<NetworkId>>, SessionError> {
        for (channel, ids) in seen {
            self.channels.meet(*channel, self.decoder, recording)?;
            for id in ids {
                self.channels.weigh(*channel, *id);
            }
        }
        // No frame is kept of such logs: what frames carry inside decides nothing here.
        self.channels.decide(self.decoder, recording, &Sample::default())?;
        self.channels.check_told(recording)?;
        let networks = self.channels.networks();
        self.channels.end_log();
        Ok(networks)
    }

    /// What has been decided so far.
    #[must_use]
    pub fn bindings(&self) -> &[Binding] {
        self.channels.bindings()
    }

    /// Channels that the binding names and that were in no log.
    pub fn channels_never_seen(&self) -> impl Iterator<Item = &str> {
        self.channels.never_seen()
    }
}
