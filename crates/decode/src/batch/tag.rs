//! One row as it is gathered, and what it is beside its time and bytes.

use wirelore_log::Channel;

use crate::source::Source;

/// What a row is beside its time and bytes, in one word: so it is compared with what is usual in one step.
///
/// From the lowest bit: 32 bits of length, 16 of the channel, 8 of the source address, whether there is one, whether there is a time, whether
/// the identifier is the source.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Tag(u64);

const HAS_ADDRESS: u64 = 1 << 56;
const HAS_TIME: u64 = 1 << 57;
const IS_BY_IDENTIFIER: u64 = 1 << 58;

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
    pub(crate) fn new(length: u32, channel: Channel, source: Option<Source>, has_time: bool) -> Self {
        let source = match source {
            None => 0,
            Some(Source::Address(address)) => u64::from(address) << 48 | HAS_ADDRESS,
            // There is no room for it here; the row's origin has it.
            Some(Source::Identifier { .. }) => IS_BY_IDENTIFIER,
        };
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

    /// Who sent a parameter group.
    pub(crate) fn address(self) -> Option<u8> {
        (self.0 & HAS_ADDRESS != 0).then_some((self.0 >> 48) as u8)
    }

    /// Whether the identifier that the row's origin has says who sent it.
    pub(crate) fn is_by_identifier(self) -> bool {
        self.0 & IS_BY_IDENTIFIER != 0
    }

    pub(crate) fn has_time(self) -> bool {
        self.0 & HAS_TIME != 0
    }

    /// The same from another channel.
    pub(super) fn on(self, channel: Channel) -> Self {
        Self(self.0 & !(u64::from(u16::MAX) << 32) | u64::from(channel.0) << 32)
    }
}

/// One row as it is gathered.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Gathered<'a> {
    pub(crate) time_ns: Option<i64>,
    pub(crate) channel: Channel,
    pub(crate) source: Option<Source>,
    pub(crate) payload: &'a [u8],
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tag_tells_what_went_into_it() {
        for source in [None, Some(Source::Address(0xFF)), Some(Source::Identifier { id: 0x7E8, extended: false })] {
            for (length, channel, has_time) in [(0, 0, false), (8, 5, true), (u32::MAX - 1, u16::MAX, true)] {
                let tag = Tag::new(length, Channel(channel), source, has_time);
                assert_eq!((tag.length(), tag.channel(), tag.has_time()), (length, Channel(channel), has_time));
                assert_eq!(tag.address(), source.and_then(Source::address));
                assert_eq!(tag.is_by_identifier(), matches!(source, Some(Source::Identifier { .. })));
                assert_eq!(tag.on(Channel(0x1234)), Tag::new(length, Channel(0x1234), source, has_time));
            }
        }
    }
}
