//! Entries: what a service discovery message says.

use super::SdFault;

/// Bytes of an entry.
pub(super) const ENTRY_BYTES: usize = 16;

/// One entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Entry {
    /// What it says.
    pub kind: EntryKind,
    /// The service; 0xFFFF means all.
    pub service: u16,
    /// The instance; 0xFFFF means all.
    pub instance: u16,
    /// Major version of the interface; 0xFF means any.
    pub major: u8,
    /// How many seconds it holds, 24 bits; 0xFFFFFF means until the next start. 0 where something is stopped or refused.
    pub ttl_s: u32,
    /// The options that it refers to: two runs of them.
    pub runs: [Run; 2],
}

/// Some options of a message, one after another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Run {
    /// Number of the first, from 0.
    pub first: u8,
    /// How many, 0..=15.
    pub count: u8,
}

/// What an entry says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum EntryKind {
    /// Who offers the service?
    Find {
        /// Minor version; 0xFFFFFFFF means any.
        minor: u32,
    },
    /// The service is offered.
    Offer {
        /// Minor version.
        minor: u32,
    },
    /// The service is offered no longer.
    StopOffer {
        /// Minor version.
        minor: u32,
    },
    /// The sender wants events.
    Subscribe(Group),
    /// The sender wants events no longer.
    StopSubscribe(Group),
    /// The subscription is accepted.
    SubscribeAck(Group),
    /// The subscription is refused.
    SubscribeNack(Group),
    /// A type that the standard does not know.
    Other {
        /// Its type.
        kind: u8,
        /// Its last four bytes.
        last: [u8; 4],
    },
}

/// A group of events.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Group {
    /// Its number.
    pub eventgroup: u16,
    /// Tells subscriptions of the same subscriber apart, 0..=15.
    pub counter: u8,
}

impl EntryKind {
    /// The standard's name for it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Find { .. } => "find service",
            Self::Offer { .. } => "offer service",
            Self::StopOffer { .. } => "stop offer service",
            Self::Subscribe(_) => "subscribe eventgroup",
            Self::StopSubscribe(_) => "stop subscribe eventgroup",
            Self::SubscribeAck(_) => "subscribe eventgroup ack",
            Self::SubscribeNack(_) => "subscribe eventgroup nack",
            Self::Other { .. } => "unknown entry type",
        }
    }

    /// Stopping and refusing have no types of their own: they are the same with a time to live of 0.
    fn of(kind: u8, ttl_s: u32, last: [u8; 4]) -> Self {
        let minor = u32::from_be_bytes(last);
        let group = Group { eventgroup: u16::from_be_bytes([last[2], last[3]]), counter: last[1] & 0x0F };
        match (kind, ttl_s) {
            (0x00, _) => Self::Find { minor },
            (0x01, 0) => Self::StopOffer { minor },
            (0x01, _) => Self::Offer { minor },
            (0x06, 0) => Self::StopSubscribe(group),
            (0x06, _) => Self::Subscribe(group),
            (0x07, 0) => Self::SubscribeNack(group),
            (0x07, _) => Self::SubscribeAck(group),
            _ => Self::Other { kind, last },
        }
    }

    fn bytes(self) -> (u8, [u8; 4]) {
        let of_group = |group: Group| {
            let [high, low] = group.eventgroup.to_be_bytes();
            [0, group.counter & 0x0F, high, low]
        };
        match self {
            Self::Find { minor } => (0x00, minor.to_be_bytes()),
            Self::Offer { minor } | Self::StopOffer { minor } => (0x01, minor.to_be_bytes()),
            Self::Subscribe(group) | Self::StopSubscribe(group) => (0x06, of_group(group)),
            Self::SubscribeAck(group) | Self::SubscribeNack(group) => (0x07, of_group(group)),
            Self::Other { kind, last } => (kind, last),
        }
    }
}

impl Entry {
    pub(super) fn read(bytes: &[u8; ENTRY_BYTES]) -> Self {
        let [kind, first, second, counts, s0, s1, i0, i1, major, t0, t1, t2, last @ ..] = *bytes;
        let ttl_s = u32::from_be_bytes([0, t0, t1, t2]);
        Self {
            kind: EntryKind::of(kind, ttl_s, last),
            service: u16::from_be_bytes([s0, s1]),
            instance: u16::from_be_bytes([i0, i1]),
            major,
            ttl_s,
            runs: [Run { first, count: counts >> 4 }, Run { first: second, count: counts & 0x0F }],
        }
    }

    /// Whether the options that it refers to are there.
    pub(super) fn check(&self, index: usize, options: usize) -> Result<(), SdFault> {
        let ends = self.runs.iter().filter(|run| run.count > 0);
        match ends.map(|run| usize::from(run.first) + usize::from(run.count) - 1).max() {
            Some(last) if last >= options => Err(SdFault::OptionMissing { entry: index, last, options }),
            _ => Ok(()),
        }
    }

    pub(super) fn write(&self, out: &mut Vec<u8>) {
        let (kind, last) = self.kind.bytes();
        let [first, second] = self.runs;
        out.extend([kind, first.first, second.first, first.count << 4 | second.count & 0x0F]);
        out.extend(self.service.to_be_bytes());
        out.extend(self.instance.to_be_bytes());
        out.push(self.major);
        out.extend(&self.ttl_s.to_be_bytes()[1..]);
        out.extend(last);
    }
}
