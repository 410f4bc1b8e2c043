//! Which recorded channel is which network.
//!
//! In this order:
//! 1. What the user told ([`BindMap`]) holds; channels that it does not name are then left out.
//! 2. A channel and a network with equal names (capitals or not) are the same.
//! 3. A channel that an earlier log of the session had by the same name is what it was there.
//! 4. One channel and one network belong together.
//! 5. Else the identifiers seen decide, where they speak clearly for one network (see `evidence.rs`). A channel of which no identifier
//!    is described is left out.
//!
//! A network is one channel of a log. Where a channel has the network's name, others that look like it, or whose own names look like
//! that name written wrong, are left out; two channels that would be the same network without that are an error, unless the user told
//! so. What is not clear is an error that tells what was seen. Each decision is returned with its reason; none is silent. Networks
//! other than those of CAN take part where frames are described on them.

mod evidence;
mod inside;

use std::fmt;

use wirelore_model::NetworkId;

pub(crate) use evidence::Evidence;
use evidence::Finding;
pub(crate) use inside::Inside;

use crate::decoder::Decoder;
use crate::error::SessionError;
use crate::near::suggestion;

/// Which channel is which network, as the user tells it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct BindMap {
    pairs: Vec<(String, String)>,
}

impl BindMap {
    /// From text: `CHANNEL=NETWORK`, several with commas, such as `can0=drive,can1=comfort`. A channel without a name goes by its number,
    /// counted from 0 in the order in which channels turn up.
    ///
    /// # Errors
    /// [`SessionError::BindText`] for a part that is no pair, [`SessionError::BoundTwice`] for a channel that comes twice. Names are
    /// looked at by [`Session::new`](crate::Session::new) (networks) and while reading (channels).
    pub fn parse(text: &str) -> Result<Self, SessionError> {
        let mut pairs: Vec<(String, String)> = Vec::new();
        for part in text.split(',').map(str::trim) {
            let malformed = || SessionError::BindText { part: part.to_owned() };
            let (channel, network) = part.split_once('=').ok_or_else(malformed)?;
            let (channel, network) = (channel.trim(), network.trim());
            if channel.is_empty() || network.is_empty() {
                return Err(malformed());
            }
            if pairs.iter().any(|(known, _)| known == channel) {
                return Err(SessionError::BoundTwice { channel: channel.to_owned() });
            }
            pairs.push((channel.to_owned(), network.to_owned()));
        }
        Ok(Self { pairs })
    }
}

/// What was decided about one channel of one log.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Binding {
    /// Which log of the session, counted from 0.
    pub log: usize,
    /// The channel's name, or its number where it has none.
    pub channel: String,
    /// The network; `None`: the channel is left out.
    pub network: Option<NetworkId>,
    /// The network's name.
    pub network_name: Option<String>,
    /// Why.
    pub reason: Reason,
}

/// Why a channel is a network, or is left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reason {
    /// The user told so.
    Told,
    /// They have the same name.
    SameName,
    /// It was so in an earlier log.
    EarlierLog,
    /// There is one channel and one network.
    OnlyOne,
    /// The identifiers speak for it.
    Identifiers {
        /// Different identifiers seen on the channel.
        seen: usize,
        /// How many of them are described on the network.
        described: usize,
        /// The network with the next most, and how many it has.
        next: Option<(String, usize)>,
    },
    /// The messages that its frames carry speak for it.
    Messages {
        /// Different kinds of message that it carries.
        seen: usize,
        /// How many of them are described on the network.
        described: usize,
        /// The network with the next most, and how many it has.
        next: Option<(String, usize)>,
    },
    /// The messages that its frames carry have the network's form, and it has a description of any message.
    AnyMessage,
    /// Left out: the user told about other channels only.
    NotNamed,
    /// Left out: another channel of the log has the name of the network that this one looks like.
    NameTaken {
        /// The other channel.
        by: String,
    },
    /// Left out: no identifier seen on it is described on any network.
    NothingDescribed {
        /// Different identifiers seen on the channel.
        seen: usize,
    },
    /// Left out: no message that its frames carry is described on any network.
    NoMessageDescribed {
        /// Different kinds of message that it carries.
        seen: usize,
    },
}

impl Reason {
    /// Whether another reader of the log might have decided otherwise, so that a person should be told.
    #[must_use]
    pub fn was_a_choice(&self) -> bool {
        match self {
            Self::Told | Self::SameName | Self::EarlierLog | Self::OnlyOne => false,
            Self::Identifiers { .. }
            | Self::Messages { .. }
            | Self::AnyMessage
            | Self::NotNamed
            | Self::NameTaken { .. }
            | Self::NothingDescribed { .. }
            | Self::NoMessageDescribed { .. } => true,
        }
    }
}

impl fmt::Display for Binding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.network_name {
            Some(network) => write!(f, "channel `{}` is network `{network}`: {}", self.channel, self.reason),
            None => write!(f, "channel `{}` is left out: {}", self.channel, self.reason),
        }
    }
}

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Told => f.write_str("as told"),
            Self::SameName => f.write_str("they have the same name"),
            Self::EarlierLog => f.write_str("as in an earlier log"),
            Self::OnlyOne => f.write_str("there is one channel and one network"),
            Self::Identifiers { seen, described, next } => {
                match (seen, described) {
                    (1, _) => f.write_str("its only identifier is described there")?,
                    (seen, 1) => write!(f, "1 of its {seen} identifiers is described there")?,
                    (seen, described) => write!(f, "{described} of its {seen} identifiers are described there")?,
                }
                write_next(next.as_ref(), f)
            }
            Self::Messages { seen, described, next } => {
                match (seen, described) {
                    (1, _) => f.write_str("the only kind of message it carries is described there")?,
                    (seen, 1) => write!(f, "1 of the {seen} kinds of message it carries is described there")?,
                    (seen, described) => {
                        write!(f, "{described} of the {seen} kinds of message it carries are described there")?;
                    }
                }
                write_next(next.as_ref(), f)
            }
            Self::AnyMessage => {
                f.write_str("what it carries has that network's form, and any message is described there")
            }
            Self::NameTaken { by } => write!(f, "it looks like the network that channel `{by}` has the name of"),
            Self::NotNamed => f.write_str("the binding does not name it"),
            Self::NothingDescribed { seen: 0 } => f.write_str("no identifier was seen on it"),
            Self::NothingDescribed { seen: 1 } => f.write_str("its only identifier is not described"),
            Self::NothingDescribed { seen } => {
                write!(f, "none of its {seen} identifiers is described")
            }
            Self::NoMessageDescribed { seen: 0 } => f.write_str("no message could be read out of it"),
            Self::NoMessageDescribed { seen: 1 } => f.write_str("the only kind of message it carries is not described"),
            Self::NoMessageDescribed { seen } => {
                write!(f, "none of the {seen} kinds of message it carries is described")
            }
        }
    }
}

/// How many the network with the next most has.
fn write_next(next: Option<&(String, usize)>, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    match next {
        Some((name, count)) => write!(f, ", {count} on `{name}`"),
        None => Ok(()),
    }
}

/// A decision with its reason.
pub(crate) type Decision = (Option<NetworkId>, Reason);

/// Makes the decisions of one session.
#[derive(Debug)]
pub(crate) struct Binder {
    told: Vec<Told>,
    /// Named channels of earlier logs.
    earlier: Vec<(String, Option<NetworkId>)>,
}

#[derive(Debug)]
struct Told {
    channel: String,
    network: NetworkId,
    was_seen: bool,
}

impl Binder {
    pub(crate) fn new(decoder: &Decoder, map: &BindMap) -> Result<Self, SessionError> {
        if decoder.bindable().next().is_none() {
            return Err(SessionError::NoNetwork);
        }
        let told = map.pairs.iter().map(|(channel, network)| {
            let network = told_network(decoder, channel, network)?;
            Ok(Told { channel: channel.clone(), network, was_seen: false })
        });
        Ok(Self { told: told.collect::<Result<_, SessionError>>()?, earlier: Vec::new() })
    }

    /// What can be said of a channel before any of its frames has been looked at.
    pub(crate) fn at_once(&mut self, decoder: &Decoder, label: &str, has_name: bool) -> Option<Decision> {
        if !self.told.is_empty() {
            let told = self.told.iter_mut().find(|told| told.channel == label);
            return Some(told.map_or((None, Reason::NotNamed), |told| {
                told.was_seen = true;
                (Some(told.network), Reason::Told)
            }));
        }
        if !has_name {
            return None;
        }
        let lower = label.to_lowercase();
        let mut same = decoder.bindable().filter(|(_, network)| network.name.to_lowercase() == lower);
        if let (Some((network, _)), None) = (same.next(), same.next()) {
            return Some((Some(network), Reason::SameName));
        }
        let earlier = self.earlier.iter().find(|(name, _)| name == label);
        earlier.map(|&(_, network)| (network, Reason::EarlierLog))
    }

    /// Whether the user told about channels at all.
    pub(crate) fn is_told(&self) -> bool {
        !self.told.is_empty()
    }

    /// What the identifiers say of a channel; `is_only` where no other channel of the log can be the same network.
    pub(crate) fn by_identifiers(
        decoder: &Decoder,
        (label, has_name): (&str, bool),
        is_only: impl Fn(NetworkId) -> bool,
        evidence: &Evidence,
    ) -> Result<Decision, SessionError> {
        let mut networks = evidence.possible(decoder).into_iter();
        if let (Some((network, _)), None) = (networks.next(), networks.next())
            && is_only(network)
        {
            return Ok((Some(network), Reason::OnlyOne));
        }
        match evidence.judge(decoder) {
            Finding::Clear { network, reason } => Ok((Some(network), reason)),
            Finding::Nothing { reason } => Ok((None, reason)),
            Finding::Unclear { seen } => {
                let names: Vec<&str> =
                    evidence.possible(decoder).into_iter().map(|(_, network)| &*network.name).collect();
                let seen = if has_name { seen } else { format!("{seen}; this log names no channels") };
                Err(SessionError::ChannelUnclear { channel: label.to_owned(), seen, networks: names.join(", ") })
            }
        }
    }

    /// Remembers what a named channel was, for later logs.
    pub(crate) fn remember(&mut self, label: &str, network: Option<NetworkId>) {
        if self.earlier.iter().all(|(known, _)| known != label) {
            self.earlier.push((label.to_owned(), network));
        }
    }

    /// Fails where the user told about channels and the log has none of them: most likely a slip of the pen. `have_names`: some channel
    /// of the log has a name.
    pub(crate) fn check_told(&self, channels: &[String], have_names: bool) -> Result<(), SessionError> {
        match self.told.first() {
            Some(first) if !self.told.iter().any(|told| channels.contains(&told.channel)) => {
                let hint = match channels {
                    [only] if !have_names => format!("this log names no channels; say --bind '{only}=NETWORK'"),
                    [one, ..] if !have_names => {
                        let numbers = channels.join(", ");
                        format!("this log names no channels; say --bind '{one}=NETWORK' (channels: {numbers})")
                    }
                    _ => suggestion(&first.channel, channels.iter().map(String::as_str)),
                };
                Err(SessionError::NoSuchChannel { channel: first.channel.clone(), hint })
            }
            _ => Ok(()),
        }
    }

    /// Channels that were told about and never turned up.
    pub(crate) fn never_seen(&self) -> impl Iterator<Item = &str> {
        self.told.iter().filter(|told| !told.was_seen).map(|told| told.channel.as_str())
    }
}

/// The network that the user told a channel to be; a pair that is turned round is noticed.
fn told_network(decoder: &Decoder, channel: &str, network: &str) -> Result<NetworkId, SessionError> {
    network_named(decoder, network).map_err(|error| match error {
        SessionError::NoSuchNetwork { name, .. } if decoder.networks().iter().any(|known| &*known.name == channel) => {
            let hint = format!("the channel comes first: {network}={channel}");
            SessionError::NoSuchNetwork { name, hint }
        }
        other => other,
    })
}

/// The network of a name, if its frames can be decoded.
pub(crate) fn network_named(decoder: &Decoder, name: &str) -> Result<NetworkId, SessionError> {
    let known = decoder.networks().iter().position(|network| &*network.name == name);
    let Some(index) = known else {
        let hint = suggestion(name, decoder.bindable().map(|(_, network)| &*network.name));
        return Err(SessionError::NoSuchNetwork { name: name.to_owned(), hint });
    };
    Ok(NetworkId(index as u32))
}

#[cfg(test)]
mod tests;
