//! The end of an encoding: the length, then the checksums over what is there.

use wirelore_bits::{Extractor, payload_lengths};
use wirelore_model::{Content, LengthRange, NetworkKind, Role, SignalId};

use super::Encoded;
use super::assemble::{Assembly, PAYLOAD_BYTES_MAX, carried, group_of};
use super::error::EncodeError;
use super::note::Note;
use super::wire::filled;
use crate::checks::ChecksumPlan;

impl Assembly<'_> {
    /// Cuts the payload to its length and calculates the checksums.
    pub(super) fn finish(mut self) -> Result<Encoded, EncodeError> {
        let undescribed = self.undescribed(self.least_length());
        let length = self.length()?;
        self.payload.resize(length, 0);
        let there = self.groups_there();
        for (signal, id) in self.frame.signals.iter().zip((0..).map(SignalId)) {
            let (Role::Checksum(checksum), Content::Number { field, .. }) = (&signal.role, &signal.content) else {
                continue;
            };
            if !there.contains(&group_of(signal)) {
                continue;
            }
            let extractor = Extractor::new(field);
            let right = ChecksumPlan::new(checksum, field.width()).of(&self.payload);
            let (Some(right), Some(found)) = (right, extractor.extract(&self.payload)) else {
                continue;
            };
            let name = signal.label.name.clone();
            if !self.is_set[id.index()] {
                self.put_bits(id, right);
                self.notes.push(Note::ChecksumCalculated { signal: name, value: right });
            } else if found != right {
                self.notes.push(Note::ChecksumAsGiven { signal: name, right });
            }
        }
        if !undescribed.is_empty() {
            self.notes.push(Note::Undescribed { places: undescribed });
        }
        Ok(Encoded { payload: self.payload, notes: self.notes })
    }

    /// What the signals need, and at least the described length.
    fn least_length(&self) -> usize {
        let least = self.described_length().map_or(0, |length| length.min as usize);
        least.max(self.needed_bytes)
    }

    /// The least length, as long as a frame of the network can be.
    fn length(&mut self) -> Result<usize, EncodeError> {
        let described = self.described_length();
        let mut length = self.least_length();
        let network = self.frame.seen_on.first().and_then(|seen| self.database.networks.get(seen.network.index()));
        let kind = network.map(|network| network.kind);
        if kind == Some(NetworkKind::CanFd) && self.frame.carried.is_none() {
            let rounded = (length..=PAYLOAD_BYTES_MAX)
                .find(|&length| payload_lengths::is_can_fd_length(length as u8))
                .unwrap_or(length);
            if rounded != length {
                self.notes.push(Note::Lengthened {
                    from: length,
                    to: rounded,
                    why: "CAN FD frames have only certain lengths",
                });
                length = rounded;
            }
        }
        let most = described.map_or_else(|| carried(self.database, self.frame), |length| length.max as usize);
        if length > most {
            return Err(EncodeError::TooLong { needed: length, most });
        }
        let (filled, why) = filled(self.database, self.frame, length);
        if filled != length {
            self.notes.push(Note::Lengthened { from: length, to: filled, why });
        }
        Ok(filled)
    }

    /// The length of the innermost page that holds and has one, else the frame's.
    fn described_length(&self) -> Option<LengthRange> {
        let there = self.groups_there();
        let pages = there.iter().filter_map(|group| self.frame.pages.get(group.checked_sub(1)?));
        pages.rev().find_map(|page| page.length).or(self.frame.length)
    }
}
