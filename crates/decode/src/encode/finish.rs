//! The end of an encoding: the length, then the checksums over what is there, then the protection over everything.

use wirelore_bits::{Extractor, lin, payload_lengths};
use wirelore_model::{Content, Frame, Identifier, LengthRange, Role, SignalId};
use wirelore_transport::someip::{Header, MessageKind};

use super::Encoded;
use super::assemble::{Assembly, ENCODED_BYTES_MAX, group_of};
use super::error::EncodeError;
use super::note::Note;
use super::wire::{filled, is_of_can_fd};
use crate::checks::{ChecksumPlan, behind_header, is_to_destination};
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
        if let Some(cut) = self.plan.cut(&self.payload).filter(|cut| cut.end < self.payload.len()) {
            self.notes.push(Note::FurtherElements { from: cut.end });
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
        let (profile, name) = (protection.profile, signal.label.name.clone());
        let Content::Number { field, .. } = &signal.content else {
            return Ok(());
        };
        let count = Extractor::new(field).extract(&self.payload).unwrap_or(0);
        if count > profile.last_count().into() {
            let why = format!("profile {} counts from 0 to {}", profile.number(), profile.last_count());
            return Err(EncodeError::CannotHold { signal: name, what: format!("count {count}"), why });
        }
        let header = header_in_front(self.frame);
        let (header, e2e) = match header.and_then(|header| Some((header, behind_header(protection)?))) {
            Some((header, e2e)) => (Some(header), Ok(e2e)),
            None => (None, protection.e2e()),
        };
        let (Ok(e2e), Some(covered)) = (e2e, protection.covered_mut(&mut self.payload)) else {
            return Ok(());
        };
        let in_front = header.as_ref().map_or(&[][..], |header| header);
        let mut together = [in_front, &*covered].concat();
        if !e2e.protect(&mut together, count as u32) {
            let (what, number) = (format!("{} bytes", together.len()), profile.number());
            let why = format!("the length that profile {number} tells has no room for so many");
            return Err(EncodeError::CannotHold { signal: name, what, why });
        }
        let sum = e2e.check(&together).map_or(0, |found| found.sum);
        covered.copy_from_slice(&together[in_front.len()..]);
        self.notes.push(Note::Protected { signal: name.clone(), profile: profile.number(), sum });
        self.notes.extend(header.map(|header| Note::HeaderTaken { signal: name, header }));
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
        if self.frame.carried.is_none() && is_of_can_fd(self.database, self.frame) {
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

/// What stands in front of the payload of a SOME/IP message, behind its length. The description tells its type at most; the rest is
/// as in a message of nobody in particular: client and session 0 (nobody counts calls), both versions 1, return code 0.
fn header_in_front(frame: &Frame) -> Option<[u8; 8]> {
    let &Identifier::SomeIp { method, message_type, .. } = &frame.seen_on.first()?.identifier else { return None };
    let usual = if method & EVENT == 0 { MessageKind::Request } else { MessageKind::Notification };
    let kind = message_type.map_or(usual, |number| MessageKind::of_byte(number).0);
    let header = Header {
        service: 0,
        method,
        client: 0,
        session: 0,
        interface_version: 1,
        kind,
        segmented: false,
        return_code: 0,
    };
    Some(header.behind_length())
}

/// Methods with this bit are events (AUTOSAR PRS SOME/IP Protocol, from memory).
const EVENT: u16 = 0x8000;

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
