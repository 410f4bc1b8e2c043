//! End-to-end protection as AUTOSAR's profiles do it: a counter and a checksum in the payload, and an identifier of the data that often is
//! only mixed in.
//!
//! The layouts and orders are those of the AUTOSAR PRS E2EProtocol (from memory; the published examples come out right with them, see the
//! tests). Bytes before the header, the header and the bytes behind it are protected together.
//!
//! ```
//! use wirelore_bits::e2e::{DataId, E2e, Profile};
//!
//! // PRS E2EProtocol, example of profile 4: data id 0x0A0B0C0D, counter 0, all other bytes zero.
//! let profile_4 = E2e::new(Profile::P04, DataId::One(0x0A0B_0C0D), 0)?;
//! let mut payload = [0; 16];
//! assert!(profile_4.protect(&mut payload, 0));
//! assert_eq!(payload, [0, 0x10, 0, 0, 0x0A, 0x0B, 0x0C, 0x0D, 0x86, 0x2B, 0x05, 0x56, 0, 0, 0, 0]);
//! let found = profile_4.check(&payload).ok_or("too short")?;
//! assert!(found.sum_fits() && found.length_fits() && found.data_id_fits());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod profile;

use core::fmt;

pub use profile::{Part, Profile};

use crate::{Crc, Extractor, Field};

/// The identifiers that the profiles with a list have: one for each count.
pub const LISTED_IDS: usize = 16;

/// What tells the data apart from others: mixed into the checksum, and sent where the profile does so.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum DataId {
    /// One number.
    One(u32),
    /// One byte for each count.
    List([u8; LISTED_IDS]),
}

impl DataId {
    /// The identifier that goes with a count.
    pub const fn at(&self, counter: u32) -> u32 {
        match self {
            Self::One(id) => *id,
            Self::List(ids) => ids[counter as usize % LISTED_IDS] as u32,
        }
    }
}

/// Why there is no such protection.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum E2eError {
    /// A list for a profile that has one number, or the other way round.
    WrongSortOfId {
        /// Whether the profile has a list.
        takes_list: bool,
    },
    /// A number that the profile has no room for.
    IdTooLarge {
        /// The greatest that it has.
        most: u32,
    },
    /// A header behind the first byte, of a profile whose header stands at the front.
    NotAtTheFront,
    /// A header beyond the last byte that a payload can have.
    OutOfReach,
}

impl fmt::Display for E2eError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::WrongSortOfId { takes_list: true } => {
                write!(f, "the profile has a list of {LISTED_IDS} data ids, and one number is given")
            }
            Self::WrongSortOfId { takes_list: false } => {
                f.write_str("the profile has one data id, and a list is given")
            }
            Self::IdTooLarge { most } => write!(f, "the profile's data ids go up to 0x{most:X}"),
            Self::NotAtTheFront => f.write_str("the profile's header stands at the front of what is protected"),
            Self::OutOfReach => f.write_str("the header lies beyond any payload"),
        }
    }
}

impl core::error::Error for E2eError {}

/// One protection, ready to be written and checked.
#[derive(Clone, Copy, Debug)]
pub struct E2e {
    profile: Profile,
    data_id: DataId,
    /// The byte of the protected data at which the header begins.
    header: u32,
    sum: Extractor,
    counter: Extractor,
    length: Option<Extractor>,
    sent_id: Option<Extractor>,
}

/// What the protection of a payload says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Found {
    /// The count.
    pub counter: u32,
    /// The checksum that is there.
    pub sum: u64,
    /// The checksum of what is there.
    pub right_sum: u64,
    /// The length that is told, and the one there is, in bytes; `None`: the profile tells none.
    pub length: Option<(u64, u64)>,
    /// The identifier (or what is sent of it) that is there, and the one that should be; `None`: the profile sends none.
    pub data_id: Option<(u32, u32)>,
}

impl Found {
    /// Whether the checksum is that of what is there.
    pub const fn sum_fits(&self) -> bool {
        self.sum == self.right_sum
    }

    /// Whether the length is the one there is, or none is told.
    pub fn length_fits(&self) -> bool {
        self.length.is_none_or(|(told, is)| told == is)
    }

    /// Whether the identifier is the right one, or none is sent.
    pub fn data_id_fits(&self) -> bool {
        self.data_id.is_none_or(|(found, right)| found == right)
    }
}

impl E2e {
    /// A profile with its header from byte `header` of the protected data on.
    ///
    /// # Errors
    /// A data id that the profile cannot have, or a header where the profile has none.
    pub fn new(profile: Profile, data_id: DataId, header: u32) -> Result<Self, E2eError> {
        match data_id {
            DataId::One(_) if profile.takes_list() => return Err(E2eError::WrongSortOfId { takes_list: true }),
            DataId::List(_) if !profile.takes_list() => return Err(E2eError::WrongSortOfId { takes_list: false }),
            DataId::One(id) if id > profile.greatest_id() => {
                return Err(E2eError::IdTooLarge { most: profile.greatest_id() });
            }
            DataId::One(_) | DataId::List(_) => {}
        }
        if header > 0 && profile.is_at_the_front() {
            return Err(E2eError::NotAtTheFront);
        }
        let part = |part| profile.part(part, header).map(|field: Field| Extractor::new(&field));
        Ok(Self {
            profile,
            data_id,
            header,
            sum: part(Part::Sum).ok_or(E2eError::OutOfReach)?,
            counter: part(Part::Counter).ok_or(E2eError::OutOfReach)?,
            length: part(Part::Length),
            sent_id: part(Part::DataId),
        })
    }

    /// The profile.
    pub const fn profile(&self) -> Profile {
        self.profile
    }

    /// The identifier of the data.
    pub const fn data_id(&self) -> DataId {
        self.data_id
    }

    /// How many bytes must be there so that the header is.
    pub fn needed_bytes(&self) -> usize {
        (self.header as usize).saturating_add(self.profile.header_bytes() as usize)
    }

    /// Writes count, length, identifier and checksum into a payload; false, and nothing is written, where it is too short for the header,
    /// too long for its length field, or the count is none of the profile's.
    pub fn protect(&self, payload: &mut [u8], counter: u32) -> bool {
        let length = payload.len() as u64;
        let fits = self.length.is_none_or(|_| length <= self.profile.greatest_length());
        if payload.len() < self.needed_bytes() || !fits || counter > self.profile.last_count() {
            return false;
        }
        let mut put = |part: Option<&Extractor>, bits: u64| part.is_none_or(|part| part.insert(payload, bits).is_ok());
        let sent_id = self.profile.sent_of(self.data_id.at(counter));
        put(Some(&self.counter), counter.into())
            && put(self.length.as_ref(), length)
            && put(self.sent_id.as_ref(), sent_id.into())
            && self.sum_of(payload, counter).is_some_and(|sum| self.sum.insert(payload, sum).is_ok())
    }

    /// What the protection of a payload says; `None` where it ends before the header does.
    pub fn check(&self, payload: &[u8]) -> Option<Found> {
        if payload.len() < self.needed_bytes() {
            return None;
        }
        let read = |part: &Extractor| part.extract(payload);
        let counter = read(&self.counter)? as u32;
        let right_id = self.profile.sent_of(self.data_id.at(counter));
        Some(Found {
            counter,
            sum: read(&self.sum)?,
            right_sum: self.sum_of(payload, counter)?,
            length: self.length.as_ref().and_then(read).map(|told| (told, payload.len() as u64)),
            data_id: self.sent_id.as_ref().and_then(read).map(|found| (found as u32, right_id)),
        })
    }

    /// Whether the checksum of a payload would fit with another data id.
    pub fn would_fit(&self, payload: &[u8], data_id: DataId) -> bool {
        Self::new(self.profile, data_id, self.header)
            .ok()
            .and_then(|other| other.check(payload))
            .is_some_and(|found| found.sum_fits())
    }

    /// The checksum of a payload, whatever stands in its place there.
    fn sum_of(&self, payload: &[u8], counter: u32) -> Option<u64> {
        let crc = self.profile.crc();
        let (begin, end) = self.profile.sum_bytes(self.header);
        let (before, behind) = (payload.get(..begin as usize)?, payload.get(end as usize..)?);
        let (first, then) = self.mixed_in(counter);
        let parts = [first.bytes(), before, behind, then.bytes()];
        Some(crc.finish(parts.iter().fold(crc.start(), |state, part| crc.update(state, part))))
    }

    /// What goes into the checksum before the payload, and what behind it.
    fn mixed_in(&self, counter: u32) -> (Few, Few) {
        let id = self.data_id.at(counter);
        let [_, _, high, low] = id.to_be_bytes();
        match self.profile {
            Profile::P01Both | Profile::P11Both => (Few::two(low, high), Few::NONE),
            Profile::P01Alternating if counter.is_multiple_of(2) => (Few::one(low), Few::NONE),
            Profile::P01Alternating => (Few::one(high), Few::NONE),
            Profile::P01Low => (Few::one(low), Few::NONE),
            Profile::P01Nibble | Profile::P11Nibble => (Few::two(low, 0), Few::NONE),
            Profile::P02 | Profile::P22 => (Few::NONE, Few::one(low)),
            Profile::P05 => (Few::NONE, Few::two(low, high)),
            Profile::P06 => (Few::NONE, Few::two(high, low)),
            // Sent, and so among the bytes of the payload.
            Profile::P04 | Profile::P07 | Profile::P08 => (Few::NONE, Few::NONE),
        }
    }
}

/// At most two bytes.
#[derive(Clone, Copy)]
struct Few {
    bytes: [u8; 2],
    count: usize,
}

impl Few {
    const NONE: Self = Self { bytes: [0; 2], count: 0 };

    const fn one(byte: u8) -> Self {
        Self { bytes: [byte, 0], count: 1 }
    }

    const fn two(first: u8, second: u8) -> Self {
        Self { bytes: [first, second], count: 2 }
    }

    fn bytes(&self) -> &[u8] {
        self.bytes.get(..self.count).unwrap_or_default()
    }
}

/// CRC-8 with the polynomial of SAE J1850, whose start and end values profiles 1 and 11 take away again.
pub(crate) static BARE_CRC_8: Crc = Crc::straight(8, 0x1D, 0, 0);
pub(crate) static AUTOSAR_8: Crc = Crc::AUTOSAR_8;
pub(crate) static IBM_3740: Crc = Crc::IBM_3740;
pub(crate) static AUTOSAR_32: Crc = Crc::AUTOSAR_32;
pub(crate) static XZ_64: Crc = Crc::XZ_64;
