//! The interfaces of a section, and the channels they become.

use std::collections::HashMap;

use crate::byte_order::ByteOrder;
use crate::channels::{CHANNELS_MAX, Channels};
use crate::flaw::Flaw;
use crate::frame::Channel;
use crate::record::LinkType;

use super::clock::{Clock, SimpleClock};

/// Option codes of an interface description, IETF draft opsawg-pcapng.
const OPTION_END: u16 = 0;
const OPTION_NAME: u16 = 2;
const OPTION_TICK: u16 = 9;
const OPTION_OFFSET: u16 = 14;
/// Microseconds, where an interface does not tell its clock.
const DEFAULT_RESOLUTION: u8 = 6;
/// A longer name is cut, and none is written.
pub(crate) const NAME_BYTES_MAX: usize = 128;

/// What the packets of an interface are.
#[derive(Debug, Clone, Copy)]
pub(super) enum Link {
    /// Frames of this channel.
    Channel(Channel, LinkType),
    /// Packets of a link type that is not read here.
    Other(u16),
    /// The description is damaged, or there are too many channels.
    Unknown,
}

/// One interface of the section being read.
#[derive(Debug, Clone)]
pub(super) struct Interface {
    pub(super) link: Link,
    pub(super) clock: Clock,
    limit_bytes: u32,
    name: Vec<u8>,
}

/// What the fast way needs of an interface whose packets are CAN frames.
#[derive(Debug, Clone, Copy)]
pub(super) struct Timing {
    pub(super) channel: Channel,
    clock: SimpleClock,
}

impl Timing {
    /// The time of a tick, where 64 bits are enough to work it out.
    #[inline]
    pub(super) fn time_ns(self, ticks: u64) -> Option<i64> {
        self.clock.time_ns(ticks)
    }

    /// The time of a tick, and whether it is right: else 64 bits are not enough.
    #[inline(always)]
    pub(super) fn time_if_told_ns(self, ticks: u64) -> (i64, bool) {
        self.clock.time_if_told_ns(ticks)
    }
}

/// The interfaces of the section being read, and the channels of all sections.
#[derive(Debug, Clone, Default)]
pub(super) struct Interfaces {
    of_section: Vec<Interface>,
    /// The same in short, by the same numbers; with a clock that tells no time where the packets are no CAN frames.
    timings: Vec<Timing>,
    /// By name and link type, and by how many of the same come before it in its section: a recorder that is started again
    /// writes a new section, and the same interface stays the same channel.
    channels: HashMap<(Vec<u8>, LinkType, usize), Channel>,
}

impl Interfaces {
    /// The interface with this number.
    #[inline]
    pub(super) fn get(&self, number: u32) -> Option<&Interface> {
        self.of_section.get(number as usize)
    }

    /// All interfaces in short, by number.
    #[inline]
    pub(super) fn timings(&self) -> &[Timing] {
        &self.timings
    }

    /// The interface with this number, in short.
    #[inline]
    pub(super) fn timing(&self, number: u32) -> Option<Timing> {
        self.timings.get(number as usize).copied()
    }

    /// The most bytes that the first interface records of a packet; 0 means all.
    pub(super) fn first_limit_bytes(&self) -> u32 {
        self.of_section.first().map_or(0, |interface| interface.limit_bytes)
    }

    /// A new section numbers its interfaces from zero.
    pub(super) fn begin_section(&mut self) {
        self.of_section.clear();
        self.timings.clear();
    }

    /// Takes in one interface description.
    pub(super) fn describe(
        &mut self,
        body: &[u8],
        order: ByteOrder,
        channels: &mut Channels,
    ) -> Result<(), Flaw<'static>> {
        if self.of_section.len() >= CHANNELS_MAX {
            return Err(Flaw::TooManyInterfaces(CHANNELS_MAX));
        }
        let described = read_options(body.get(8..).unwrap_or_default(), order);
        let clock = Clock::new(described.resolution, described.offset_s);
        let (link, limit_bytes, outcome) = match (order.u16_at(body, 0), order.u32_at(body, 4)) {
            (Some(number), Some(limit_bytes)) => match LinkType::of_number(number) {
                None => (Link::Other(number), limit_bytes, Ok(())),
                Some(link) => match self.channel(&described.name, link, channels) {
                    Ok(channel) => (Link::Channel(channel, link), limit_bytes, Ok(())),
                    Err(flaw) => (Link::Unknown, limit_bytes, Err(flaw)),
                },
            },
            _ => (Link::Unknown, 0, Err(Flaw::InterfaceShort(body.len()))),
        };
        // A damaged description keeps its number, or the packets of all later interfaces would go to the wrong one.
        self.timings.push(match link {
            Link::Channel(channel, LinkType::Can) => Timing { channel, clock: clock.simple() },
            Link::Channel(..) | Link::Other(_) | Link::Unknown => {
                Timing { channel: Channel(0), clock: SimpleClock::default() }
            }
        });
        self.of_section.push(Interface { link, clock, limit_bytes, name: described.name });
        outcome
    }

    /// The channel of a new interface: the one it had in an earlier section, or a new one.
    fn channel(&mut self, name: &[u8], link: LinkType, channels: &mut Channels) -> Result<Channel, Flaw<'static>> {
        let is_alike =
            |other: &&Interface| matches!(other.link, Link::Channel(_, same) if same == link) && other.name == name;
        let key = (name.to_vec(), link, self.of_section.iter().filter(is_alike).count());
        if let Some(&known) = self.channels.get(&key) {
            return Ok(known);
        }
        let new = channels.add(name).ok_or(Flaw::TooManyInterfaces(CHANNELS_MAX))?;
        self.channels.insert(key, new);
        Ok(new)
    }
}

/// What the options of an interface say.
#[derive(Debug)]
struct Described {
    name: Vec<u8>,
    resolution: u8,
    offset_s: i64,
}

/// Reads options up to their end mark or the first that does not fit.
fn read_options(mut options: &[u8], order: ByteOrder) -> Described {
    let mut described = Described { name: Vec::new(), resolution: DEFAULT_RESOLUTION, offset_s: 0 };
    while let (Some(code), Some(length)) = (order.u16_at(options, 0), order.u16_at(options, 2)) {
        let length = usize::from(length);
        let Some(value) = options.get(4..4 + length).filter(|_| code != OPTION_END) else {
            break;
        };
        match (code, value) {
            (OPTION_NAME, _) => {
                let name = value.split(|&byte| byte == 0).next().unwrap_or_default();
                described.name = name[..name.len().min(NAME_BYTES_MAX)].to_vec();
            }
            (OPTION_TICK, &[resolution]) => described.resolution = resolution,
            (OPTION_OFFSET, _) => {
                if let Some(&bytes) = value.first_chunk::<8>() {
                    described.offset_s = match order {
                        ByteOrder::Little => i64::from_le_bytes(bytes),
                        ByteOrder::Big => i64::from_be_bytes(bytes),
                    };
                }
            }
            _ => {}
        }
        let padded = 4 + length.next_multiple_of(4);
        options = options.get(padded..).unwrap_or_default();
    }
    described
}
