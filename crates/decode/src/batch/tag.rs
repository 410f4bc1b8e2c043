//! One row as it is gathered, and what it is beside its time and bytes.

use wirelore_log::Channel;

/// What a row is beside its time and bytes, in one word: so it is compared with what is usual in one step.
///
/// From the lowest bit: 32 bits of length, 16 of the channel, 8 of the source, whether there is a source, whether there is a time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Tag(u64);

const HAS_SOURCE: u64 = 1 << 56;
const HAS_TIME: u64 = 1 << 57;

impl Gathered<'_> {
    #[inline(always)]
    pub(crate) fn tag(&self) -> Tag {
        Tag::new(self.payload.len() as u32, self.channel, self.source, self.time_ns.is_some())
    }
}

impl Tag {
    /// What no row is.
    pub(crate) const NONE: Self = Self(u64::MAX);

    #[inline(always)]
    pub(crate) fn new(length: u32, channel: Channel, source: Option<u8>, has_time: bool) -> Self {
        let source = source.map_or(0, |source| u64::from(source) << 48 | HAS_SOURCE);
        let time = if has_time { HAS_TIME } else { 0 };
        Self(u64::from(length) | u64::from(channel.0) << 32 | source | time)
    }

    /// How many bytes the frame had; the row holds those that are described.
    pub(crate) fn length(self) -> u32 {
        self.0 as u32
    }

    pub(crate) fn channel(self) -> Channel {
        Channel((self.0 >> 32) as u16)
    }

    /// Who sent it, for a parameter group.
    pub(crate) fn source(self) -> Option<u8> {
        (self.0 & HAS_SOURCE != 0).then_some((self.0 >> 48) as u8)
    }

    pub(crate) fn has_time(self) -> bool {
        self.0 & HAS_TIME != 0
    }

    /// The same from another channel.
    pub(super) fn on(self, channel: Channel) -> Self {
        Self::new(self.length(), channel, self.source(), self.has_time())
    }
}

/// One row as it is gathered.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Gathered<'a> {
    pub(crate) time_ns: Option<i64>,
    pub(crate) channel: Channel,
    pub(crate) source: Option<u8>,
    pub(crate) payload: &'a [u8],
}
