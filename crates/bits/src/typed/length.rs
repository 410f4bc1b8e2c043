//! How long payloads are, and pieces of them.

use super::{NotEncoded, TooShort};

/// Looks that a payload has so many bytes.
///
/// # Errors
/// It has fewer.
#[inline(always)]
pub const fn at_least(payload: &[u8], needed_bytes: usize) -> Result<(), TooShort> {
    if payload.len() < needed_bytes { Err(TooShort { needed_bytes, found_bytes: payload.len() }) } else { Ok(()) }
}

/// The first bytes of a payload.
///
/// # Errors
/// It has fewer.
#[inline(always)]
pub const fn chunk<const N: usize>(payload: &[u8]) -> Result<&[u8; N], TooShort> {
    match payload.first_chunk() {
        Some(chunk) => Ok(chunk),
        None => Err(TooShort { needed_bytes: N, found_bytes: payload.len() }),
    }
}

/// The bytes from `first` to `last`, both included; none of a payload that ends before.
#[inline(always)]
#[must_use]
pub fn first_of(payload: &[u8], first: usize, last: usize) -> &[u8] {
    payload.get(first..last + 1).unwrap_or_default()
}

/// The bytes from `first` on; none of a payload that ends before.
#[inline(always)]
#[must_use]
pub fn to_end(payload: &[u8], first: usize) -> &[u8] {
    payload.get(first..).unwrap_or_default()
}

/// As many bytes from `first` on as another signal says, `count`.
///
/// # Errors
/// The payload or the place (which ends before `end`) has fewer, or no count is there.
pub fn sized(payload: &[u8], first: usize, end: Option<usize>, count: Option<u64>) -> Result<&[u8], TooShort> {
    let behind = count.and_then(|count| first.checked_add(usize::try_from(count).ok()?));
    let inside = behind.filter(|behind| end.is_none_or(|end| *behind <= end));
    let found = inside.and_then(|behind| payload.get(first..behind));
    found.ok_or(TooShort { needed_bytes: behind.unwrap_or(usize::MAX), found_bytes: payload.len() })
}

/// Puts bytes in from `first` on. Fewer than the place has, which ends before `end`, leave the rest as it is.
///
/// # Errors
/// The place or the payload has no room for them.
pub fn put_bytes(
    payload: &mut [u8],
    bytes: &[u8],
    first: usize,
    end: Option<usize>,
    signal: &'static str,
) -> Result<(), NotEncoded> {
    let behind = first.checked_add(bytes.len()).filter(|behind| end.is_none_or(|end| *behind <= end));
    let place = behind.and_then(|behind| payload.get_mut(first..behind));
    place.ok_or(NotEncoded::DoesNotFit(signal))?.copy_from_slice(bytes);
    Ok(())
}

/// The beginning of some room, all zeros, for a payload of so many bytes.
///
/// # Errors
/// There is not so much room.
pub fn room(room: &mut [u8], length: usize) -> Result<&mut [u8], NotEncoded> {
    let short = TooShort { needed_bytes: length, found_bytes: room.len() };
    let payload = room.get_mut(..length).ok_or(NotEncoded::Room(short))?;
    payload.fill(0);
    Ok(payload)
}

/// How many bytes a frame needs, put together from its parts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Size {
    needed_bytes: usize,
    stated_bytes: Option<usize>,
    reached_bytes: usize,
}

impl Size {
    /// A part that is there: how many bytes all of it takes, and the least length that is stated for it.
    pub fn part(&mut self, needed_bytes: usize, stated_bytes: Option<usize>) {
        self.needed_bytes = self.needed_bytes.max(needed_bytes);
        self.stated_bytes = stated_bytes.or(self.stated_bytes);
    }

    /// A value that is there and ends before byte `behind`.
    pub fn reach(&mut self, behind: usize) {
        self.reached_bytes = self.reached_bytes.max(behind);
    }

    /// The least payload that is not too short: the length that is stated last, else what the parts take.
    #[must_use]
    pub fn least(self) -> usize {
        self.stated_bytes.unwrap_or(self.needed_bytes)
    }

    /// The length of a payload that holds all values.
    #[must_use]
    pub fn length(self) -> usize {
        self.least().max(self.reached_bytes)
    }
}
