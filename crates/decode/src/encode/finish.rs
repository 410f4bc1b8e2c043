//! The end of an encoding: the length, then the checksums over what is there, then the protection over everything.

use wirelore_bits::{Extractor, lin, payload_lengths};
use wirelore_model::{Content, Frame, Identifier, LengthRange, NetworkKind, Role, SignalId};

use super::Encoded;
use super::assemble::{Assembly, ENCODED_BYTES_MAX, group_of};
use super::error::EncodeError;
use super::note::Note;
use super::wire::filled;
use crate::checks::ChecksumPlan;
use crate::room::longest_payload;

/// The longest CAN FD frame (ISO 11898-1).
const CAN_FD_BYTES_MAX: usize = 64;

impl Assembly<'_> {
    /// Cuts the payload to its length and calculates the checksums and the protection.
    pub(super) fn finish(mut self) -> Result<Encoded, EncodeError> {
        let least = self.least_length();
        if least > ENCODED_BYTES_MAX {
            return Err(EncodeError::TooLarge { needed: least, most: ENCODED_BYTES_MAX });
        }
        let undescribed = self.undescribed(least);
        let length = self.length()?;
        self.payload.resize(length, 0);
        self.length_bytes = length;
        self.calculate_checksums()?;
        self.protect()?;
        if !undescribed.is_empty() {
            self.notes.push(Note::Undescribed { places: undescribed });
        }
        self.note_lin();
        Ok(Encoded { payload: self.payload, notes: self.notes })
    }

    /// What LIN sends around the data.
    fn note_lin(&mut self) {
        if let Some(Identifier::Lin { id, checksum: kind, .. }) =
            self.frame.seen_on.first().map(|seen| &seen.identifier)
        {
            let protected_id = lin::protected(*id);
            let checksum = kind.over(protected_id, &self.payload);
            self.notes.push(Note::OnLin { protected_id, checksum, kind: *kind });
        }
    }

    fn calculate_checksums(&mut self) -> Result<(), EncodeError> {
        let identifier = only_identifier(self.frame);
        let there = self.groups_there();
        for (signal, id) in self.frame.signals.iter().zip((0..).map(SignalId)) {
            let (Role::Checksum(checksum), Content::Number { field, .. }) = (&signal.role, &signal.content) else {
                continue;
            };
            if !there.contains(&group_of(signal)) {
                continue;
            }
            let extractor = Extractor::new(field);
            let name = signal.label.name.clone();
            if identifier.is_none() && checksum.needs_identifier() {
                if self.is_set[id.index()] {
                    continue;
                }
                return Err(EncodeError::IdentifierUnknown { signal: name });
            }
            let plan = ChecksumPlan::new(checksum, field.width(), &self.frame.signals);
            let right = plan.of(&self.payload, identifier);
            let (Some(right), Some(found)) = (right, extractor.extract(&self.payload)) else {
                continue;
            };
            if !self.is_set[id.index()] {
                self.put_bits(id, right);
                self.notes.push(Note::ChecksumCalculated { signal: name, value: right });
            } else if found != right {
                self.notes.push(Note::ChecksumAsGiven { signal: name, right });
            }
        }
        Ok(())
    }

    /// Writes the header of the protection around its count, which is in.
    fn protect(&mut self) -> Result<(), EncodeError> {
        let protected = self.frame.signals.iter().find_map(|signal| Some((signal, signal.protection()?)));
        let Some((signal, protection)) = protected else {
            return Ok(());
        };
        let profile = protection.profile;
        let refused = |count: u64| EncodeError::CannotHold {
            signal: signal.label.name.clone(),
            what: format!("count {count}"),
            why: format!("profile {} counts from 0 to {}", profile.number(), profile.last_count()),
        };
        let Content::Number { field, .. } = &signal.content else {
            return Ok(());
        };
        let count = Extractor::new(field).extract(&self.payload).unwrap_or(0);
        let (Ok(e2e), Some(covered)) = (protection.e2e(), protection.covered_mut(&mut self.payload)) else {
            return Ok(());
        };
        if !e2e.protect(covered, count as u32) {
            return Err(refused(count));
        }
        let sum = e2e.check(covered).map_or(0, |found| found.sum);
        let name = signal.label.name.clone();
        self.notes.push(Note::Protected { signal: name, profile: profile.number(), sum });
        Ok(())
    }

    /// What the signals need, and at least the described length.
    pub(super) fn least_length(&self) -> usize {
        let least = self.described_length().map_or(0, |length| length.min as usize);
        least.max(self.needed_bytes).max(self.reached_bytes)
    }

    /// The least length, as long as a frame of the network can be.
    fn length(&mut self) -> Result<usize, EncodeError> {
        let described = self.described_length();
        let mut length = self.least_length();
        let network = self.frame.seen_on.first().and_then(|seen| self.database.networks.get(seen.network.index()));
        let kind = network.map(|network| network.kind);
        if kind == Some(NetworkKind::CanFd) && self.frame.carried.is_none() {
            let rounded = (length..=CAN_FD_BYTES_MAX)
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
        let most = described.map_or_else(|| longest_payload(self.database, self.frame), |length| length.max as usize);
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

/// The identifier of a frame on its own network, where it can have no other.
fn only_identifier(frame: &Frame) -> Option<u32> {
    match &frame.seen_on.first()?.identifier {
        Identifier::Can { first, last, .. } if first == last => Some(*first),
        Identifier::Xl { acceptance, .. } => Some(*acceptance),
        Identifier::Lin { id, .. } => Some((*id).into()),
        Identifier::Pgn { pgn, sources, priority: Some(priority) } if !is_to_destination(*pgn) => match sources[..] {
            [source] => Some(u32::from(*priority) << 26 | pgn << 8 | u32::from(source)),
            _ => None,
        },
        _ => None,
    }
}

/// Whether the identifiers of a group name a destination too (SAE J1939-21: PF below 240).
fn is_to_destination(pgn: u32) -> bool {
    pgn >> 8 & 0xFF < 240
}
