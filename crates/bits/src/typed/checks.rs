//! Checksums and end-to-end protections of generated frames.

use super::{Damage, NotEncoded};
use crate::e2e::{DataId, E2e, Profile};
use crate::{Crc, CrcParameters};

/// The named checksum algorithms, each with its table once in the program.
pub mod sums {
    use crate::Crc;

    /// CRC-8/SAE-J1850.
    pub static CRC8_SAE_J1850: Crc = Crc::SAE_J1850;
    /// CRC-8/AUTOSAR.
    pub static CRC8_AUTOSAR: Crc = Crc::AUTOSAR_8;
    /// CRC-16/IBM-3740.
    pub static CRC16_IBM_3740: Crc = Crc::IBM_3740;
    /// CRC-16/ARC.
    pub static CRC16_ARC: Crc = Crc::ARC;
    /// CRC-32/ISO-HDLC.
    pub static CRC32_ISO_HDLC: Crc = Crc::ISO_HDLC;
    /// CRC-32/AUTOSAR.
    pub static CRC32_AUTOSAR: Crc = Crc::AUTOSAR_32;
    /// CRC-64/XZ.
    pub static CRC64_XZ: Crc = Crc::XZ_64;
}

/// A CRC by its parameters; the exclusive or of nothing for parameters that make none.
#[must_use]
pub const fn crc(parameters: CrcParameters) -> Crc {
    match Crc::new(parameters) {
        Ok(crc) => crc,
        Err(_) => Crc::straight(8, 0, 0, 0),
    }
}

/// A list of data ids, the one for count 0 in the most significant byte.
#[must_use]
pub const fn data_ids(ids: u128) -> DataId {
    DataId::List(ids.to_be_bytes())
}

/// Compares the checksum that stands in a payload with the one that its bytes give. Where the payload does not hold the checksum itself, there
/// is nothing to compare.
///
/// # Errors
/// They differ, or the payload ends before the bytes that are covered (`right` is `None`).
pub const fn sum_fits(found: Option<u64>, right: Option<u64>, signal: &'static str) -> Result<(), Damage> {
    match (found, right) {
        (None, _) => Ok(()),
        (Some(_), None) => Err(Damage::TooShort),
        (Some(found), Some(expected)) if found == expected => Ok(()),
        (Some(found), Some(expected)) => Err(Damage::Sum { signal, expected, found }),
    }
}

/// Compares how many bytes or elements a signal says with how many there are.
///
/// # Errors
/// They differ.
pub fn count_fits(count: Option<u64>, is: usize, signal: &'static str) -> Result<(), NotEncoded> {
    if count == u64::try_from(is).ok() { Ok(()) } else { Err(NotEncoded::OtherCount(signal)) }
}

/// The count behind `before`, from `low` up to `high` in steps and on from `low`; behind what is no count, `low`.
#[must_use]
pub const fn next_count(before: u64, low: u64, high: u64, step: u64) -> u64 {
    if before < low || before > high {
        return low;
    }
    // The range may hold 2^64 counts.
    let counts = (high - low) as u128 + 1;
    low + ((before - low) as u128 + step as u128).rem_euclid(counts) as u64
}

/// An end-to-end protection of a frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Protection {
    /// The profile.
    pub profile: Profile,
    /// What tells the data apart from others.
    pub data_id: DataId,
    /// The payload byte at which the header begins.
    pub header: u32,
    /// The first byte that is covered.
    pub first: usize,
    /// The byte behind the last one that is covered; `None`: all to the end.
    pub end: Option<usize>,
}

impl Protection {
    fn e2e(&self) -> Option<E2e> {
        let first = u32::try_from(self.first).ok()?;
        E2e::new(self.profile, self.data_id, self.header.saturating_sub(first)).ok()
    }

    /// Looks whether a message is undamaged and meant for this reader. Whether it is the next one, its count tells.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn check(&self, payload: &[u8], signal: &'static str) -> Result<(), Damage> {
        let covered = payload.get(self.first..self.end.unwrap_or(payload.len())).ok_or(Damage::TooShort)?;
        let found = self.e2e().and_then(|e2e| e2e.check(covered)).ok_or(Damage::TooShort)?;
        match (found.length, found.data_id) {
            (Some((told, is)), _) if told != is && found.sum_fits() => Err(Damage::Length { told, is }),
            _ if !found.sum_fits() => Err(Damage::Sum { signal, expected: found.right_sum, found: found.sum }),
            (_, Some((id, expected))) if id != expected => Err(Damage::DataId { expected, found: id }),
            _ if found.counter > self.profile.last_count() => Err(Damage::NotACount { found: found.counter }),
            _ => Ok(()),
        }
    }

    /// Writes length, data id and checksum around a count.
    ///
    /// # Errors
    /// The count is none of the profile's, or there is no room for the header or the length.
    pub fn protect(&self, payload: &mut [u8], count: u64) -> Result<(), NotEncoded> {
        let end = self.end.unwrap_or(payload.len());
        let covered = payload.get_mut(self.first..end).ok_or(NotEncoded::Protection)?;
        let (e2e, count) = (self.e2e(), u32::try_from(count));
        match (e2e, count) {
            (Some(e2e), Ok(count)) if e2e.protect(covered, count) => Ok(()),
            _ => Err(NotEncoded::Protection),
        }
    }
}
