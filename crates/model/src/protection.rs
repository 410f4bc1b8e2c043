//! End-to-end protection: which bytes a profile protects, and with what.

use serde::{Deserialize, Serialize};
use wirelore_bits::Field;
use wirelore_bits::e2e::{DataId, E2e, E2eError, Part, Profile};

use crate::ByteSpan;

/// An end-to-end protection of a frame.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Protection {
    /// The profile.
    pub profile: Profile,
    /// What tells the data apart from others.
    pub data_id: DataId,
    /// The payload byte at which the header begins: one of those that are covered.
    pub header: u32,
    /// The payload bytes that are covered, the header among them.
    pub over: ByteSpan,
    /// The count may rise by so much from one message to the next; beyond, the sequence is wrong (MaxDeltaCounter of the standard). 1 or more.
    pub most_rise: u32,
}

impl Protection {
    /// Ready to be written and checked, in the covered bytes alone.
    ///
    /// # Errors
    /// A data id or a header that the profile cannot have; never in a valid [`Database`](crate::Database).
    pub fn e2e(&self) -> Result<E2e, E2eError> {
        E2e::new(self.profile, self.data_id, self.header.saturating_sub(self.over.first))
    }

    /// The parts of the header, and where they are in the payload.
    pub fn parts(&self) -> impl Iterator<Item = (Part, Field)> {
        let part = |part| Some((part, self.profile.part(part, self.header)?));
        Part::ALL.into_iter().filter_map(part)
    }

    /// The first payload byte behind the header.
    #[must_use]
    pub fn header_end(&self) -> u32 {
        self.header.saturating_add(self.profile.header_bytes())
    }

    /// The bytes of a payload that are covered; `None` where it ends before them.
    #[must_use]
    pub fn covered<'p>(&self, payload: &'p [u8]) -> Option<&'p [u8]> {
        let end = self.over.last.map_or(payload.len(), |last| last as usize + 1);
        payload.get(self.over.first as usize..end)
    }

    /// The same, to be written to.
    #[must_use]
    pub fn covered_mut<'p>(&self, payload: &'p mut [u8]) -> Option<&'p mut [u8]> {
        let end = self.over.last.map_or(payload.len(), |last| last as usize + 1);
        payload.get_mut(self.over.first as usize..end)
    }
}
