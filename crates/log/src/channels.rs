//! The channels of a recording, numbered in the order in which they turn up.

use std::collections::HashMap;

use crate::frame::{Channel, ChannelInfo};

/// More channels than any recorder has: beyond it the names come from a wrong column or from damage.
pub(crate) const CHANNELS_MAX: usize = 1024;

/// The table of channels, with an index by name for text logs.
#[derive(Debug, Clone, Default)]
pub(crate) struct Channels {
    infos: Vec<ChannelInfo>,
    by_name: HashMap<Vec<u8>, Channel>,
    latest: Option<Channel>,
}

impl Channels {
    /// All channels so far.
    pub(crate) fn infos(&self) -> &[ChannelInfo] {
        &self.infos
    }

    /// A new channel, whatever its name; `None` when there are too many.
    pub(crate) fn add(&mut self, name: &[u8]) -> Option<Channel> {
        let number = self.infos.len();
        if number >= CHANNELS_MAX {
            return None;
        }
        self.infos.push(ChannelInfo { name: String::from_utf8_lossy(name).into_owned() });
        Some(Channel(number as u16))
    }

    /// The channel of this name, if it has turned up.
    pub(crate) fn known(&self, name: &[u8]) -> Option<Channel> {
        self.by_name.get(name).copied()
    }

    /// The channel of this name, new if need be; `None` when there are too many.
    pub(crate) fn named(&mut self, name: &[u8]) -> Option<Channel> {
        if let Some(latest) = self.latest
            && self.infos[usize::from(latest.0)].name.as_bytes() == name
        {
            return Some(latest);
        }
        let channel = match self.by_name.get(name) {
            Some(&known) => known,
            None => {
                let new = self.add(name)?;
                self.by_name.insert(name.to_vec(), new);
                new
            }
        };
        self.latest = Some(channel);
        Some(channel)
    }
}
