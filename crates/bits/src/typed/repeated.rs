//! Groups of signals that are there several times.

use super::{NotEncoded, Size, TooShort};

/// One element of a repeated group.
pub trait Element<'a>: Copy {
    /// Reads it from the bytes that begin with it.
    ///
    /// # Errors
    /// They end before it does.
    fn read(bytes: &'a [u8]) -> Result<Self, TooShort>;

    /// Writes it over the bytes that begin with it.
    ///
    /// # Errors
    /// A field does not fit.
    fn write(&self, bytes: &mut [u8]) -> Result<(), NotEncoded>;

    /// How many bytes it needs.
    fn measure(&self, size: &mut Size);
}

/// The elements of a repeated group: those of a payload, or a list to be encoded.
#[derive(Clone, Copy, Debug)]
pub enum Repeated<'a, E> {
    /// Those of a payload: `count` of them, one every `step_bytes`.
    Read {
        /// The payload from the first element on.
        bytes: &'a [u8],
        /// From the beginning of one element to that of the next.
        step_bytes: usize,
        /// How many there are.
        count: usize,
        /// How many there are said to be, where the payload may end before.
        told: usize,
    },
    /// A list.
    Listed(&'a [E]),
}

impl<'a, E: Element<'a>> Repeated<'a, E> {
    /// As many whole elements of `size_bytes` as a payload has room for from byte `first` on, at most `most`.
    #[must_use]
    pub fn to_end(payload: &'a [u8], first: usize, (size_bytes, step_bytes): (usize, usize), most: usize) -> Self {
        let bytes = super::to_end(payload, first);
        let behind_first = bytes.len().checked_sub(size_bytes);
        let count = behind_first.map_or(0, |rest| (rest.checked_div(step_bytes).unwrap_or(0) + 1).min(most));
        Self::Read { bytes, step_bytes, count, told: count }
    }

    /// As many elements from byte `first` on as another signal says, at most `most`; those that the payload has.
    #[must_use]
    pub fn counted(payload: &'a [u8], first: usize, step_bytes: usize, (count, most): (Option<u64>, usize)) -> Self {
        let bytes = super::to_end(payload, first);
        let count = count.map_or(0, |count| usize::try_from(count).map_or(most, |count| count.min(most)));
        Self::Read { bytes, step_bytes, count, told: count }
    }

    /// Looks that all elements are there.
    ///
    /// # Errors
    /// The payload ends before some element does.
    pub fn whole(self) -> Result<Self, TooShort> {
        if let Self::Read { bytes, step_bytes, count, .. } = self {
            (0..count).try_for_each(|index| E::read(super::to_end(bytes, index * step_bytes)).map(|_| ()))?;
        }
        Ok(self)
    }

    /// Only the elements before the first one that the payload does not hold.
    #[must_use]
    pub fn readable(self) -> Self {
        match self {
            Self::Read { bytes, step_bytes, count, told } => {
                let missing = |index: &usize| E::read(super::to_end(bytes, index * step_bytes)).is_err();
                Self::Read { bytes, step_bytes, count: (0..count).find(missing).unwrap_or(count), told }
            }
            listed => listed,
        }
    }

    /// How many elements there are.
    #[must_use]
    pub fn len(&self) -> usize {
        match self {
            Self::Read { count, .. } => *count,
            Self::Listed(elements) => elements.len(),
        }
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// An element, counted from 0.
    #[must_use]
    pub fn get(&self, index: usize) -> Option<E> {
        match self {
            Self::Read { bytes, step_bytes, count, .. } => {
                let start = index.checked_mul(*step_bytes).filter(|_| index < *count)?;
                E::read(super::to_end(bytes, start)).ok()
            }
            Self::Listed(elements) => elements.get(index).copied(),
        }
    }

    /// All elements.
    #[must_use]
    pub fn iter(&self) -> Elements<'a, E> {
        Elements { all: *self, next: 0 }
    }

    /// Writes all elements from byte `first` on.
    ///
    /// # Errors
    /// A field does not fit, or there are more than `most`.
    pub fn write(
        &self,
        payload: &mut [u8],
        (first, step_bytes): (usize, usize),
        most: usize,
        name: &'static str,
    ) -> Result<(), NotEncoded> {
        if self.len() > most {
            return Err(NotEncoded::OtherCount(name));
        }
        for (index, element) in self.iter().enumerate() {
            element.write(payload.get_mut(first + index * step_bytes..).unwrap_or_default())?;
        }
        Ok(())
    }

    /// How far the elements reach, each in at least `size_bytes`, from byte `first` on; those that are said to be there and are not are missed
    /// where no length is stated.
    pub fn measure(&self, size: &mut Size, first: usize, (size_bytes, step_bytes): (usize, usize)) {
        for (index, element) in self.iter().enumerate() {
            let start = first + index * step_bytes;
            let mut own = Size::default();
            element.measure(&mut own);
            size.reach(start + own.length().max(size_bytes));
        }
        if let Self::Read { count, told, .. } = self
            && let Some(missing) = told.checked_sub(1).filter(|last| last >= count)
        {
            size.part(first + missing * step_bytes + size_bytes, None);
        }
    }
}

impl<'a, E: Element<'a> + PartialEq> PartialEq for Repeated<'a, E> {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

/// One element after the other.
#[derive(Clone, Copy, Debug)]
pub struct Elements<'a, E> {
    all: Repeated<'a, E>,
    next: usize,
}

impl<'a, E: Element<'a>> Iterator for Elements<'a, E> {
    type Item = E;

    fn next(&mut self) -> Option<E> {
        let element = self.all.get(self.next)?;
        self.next += 1;
        Some(element)
    }
}
