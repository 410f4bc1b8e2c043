//! What a signal occupies: one place, or several pieces put together.

use core::fmt;

use crate::Place;

/// The most pieces a field may have.
const MOST_PIECES: usize = 4;

/// 1 to 4 disjoint places of 64 bits in all, the most significant piece first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Field {
    /// Unused entries repeat the first piece, so that equal fields compare equal.
    pieces: [Place; MOST_PIECES],
    count: u8,
    width: u8,
}

/// Why some places make no [`Field`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FieldError {
    /// No piece at all.
    Empty,
    /// More than four pieces.
    TooManyPieces {
        /// How many there were.
        count: usize,
    },
    /// More than 64 bits in all.
    TooWide {
        /// The sum of the widths, in bits.
        width: u32,
    },
    /// Two pieces share a bit.
    Overlap {
        /// Index of the earlier piece, from 0.
        first: usize,
        /// Index of the later piece.
        second: usize,
    },
}

impl fmt::Display for FieldError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("a field needs at least one place and got none; give it one"),
            Self::TooManyPieces { count } => write!(
                f,
                "a field is put together from at most {MOST_PIECES} pieces and this one has {count}; join pieces that touch"
            ),
            Self::TooWide { width } => {
                write!(f, "a field holds at most 64 bits and its pieces have {width}; make two signals of it")
            }
            Self::Overlap { first, second } => {
                write!(f, "pieces {} and {} of the field share a bit; correct one of them", first + 1, second + 1)
            }
        }
    }
}

impl core::error::Error for FieldError {}

impl From<Place> for Field {
    fn from(place: Place) -> Self {
        Self { pieces: [place; MOST_PIECES], count: 1, width: place.width() }
    }
}

impl Field {
    /// The field made of `places`, the most significant piece first.
    ///
    /// # Errors
    /// No piece, more than four, more than 64 bits in all, or two pieces that share a bit.
    pub fn of(places: &[Place]) -> Result<Self, FieldError> {
        let count = places.len();
        let &first = places.first().ok_or(FieldError::Empty)?;
        if count > MOST_PIECES {
            return Err(FieldError::TooManyPieces { count });
        }
        let width = places.iter().map(|place| u32::from(place.width())).sum();
        if width > 64 {
            return Err(FieldError::TooWide { width });
        }
        for (second, place) in places.iter().enumerate() {
            if let Some(first) = places.iter().take(second).position(|earlier| earlier.overlaps(place)) {
                return Err(FieldError::Overlap { first, second });
            }
        }
        let mut pieces = [first; MOST_PIECES];
        for (piece, place) in pieces.iter_mut().zip(places) {
            *piece = *place;
        }
        Ok(Self { pieces, count: count as u8, width: width as u8 })
    }

    /// The pieces, the most significant one first.
    pub fn places(&self) -> &[Place] {
        self.pieces.get(..usize::from(self.count)).unwrap_or(&self.pieces)
    }

    /// The pieces, with the first one repeated up to four.
    pub(crate) const fn pieces(&self) -> &[Place; MOST_PIECES] {
        &self.pieces
    }

    /// The number of bits in all, 1 to 64.
    pub const fn width(&self) -> u8 {
        self.width
    }

    /// How many bytes a payload must have to hold it: the last byte it touches plus one.
    pub fn needed_bytes(&self) -> u32 {
        self.places().iter().map(Place::last_byte).max().map_or(0, |last| last + 1)
    }

    /// The same field `bytes` bytes later; `None` past the last byte a payload can have.
    pub fn shifted(&self, bytes: u32) -> Option<Self> {
        if bytes == 0 {
            return Some(*self);
        }
        let mut shifted = *self;
        for piece in &mut shifted.pieces {
            *piece = piece.shifted(bytes)?;
        }
        Some(shifted)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::BitPosition;

    fn place(msb: (u32, u8), lsb: (u32, u8)) -> Place {
        Place::between(BitPosition::new(msb.0, msb.1), BitPosition::new(lsb.0, lsb.1)).expect("a good place")
    }

    #[test]
    fn pieces_add_up() {
        let field = Field::of(&[place((5, 7), (5, 5)), place((4, 7), (3, 0))]).expect("disjoint");
        assert_eq!((field.width(), field.needed_bytes(), field.places().len()), (19, 6, 2));
        let later = field.shifted(10).expect("far from the end");
        assert_eq!(later.needed_bytes(), 16);
        assert_eq!(later.places()[1], place((14, 7), (13, 0)));
        assert_eq!(field.shifted(u32::MAX - 6).map(|field| field.needed_bytes()), Some(u32::MAX));
        assert_eq!(field.shifted(u32::MAX - 5), None);
    }

    #[test]
    fn a_place_is_a_field() {
        let one = place((1, 4), (0, 0));
        assert_eq!(Field::of(&[one]), Ok(Field::from(one)));
    }

    #[test]
    fn bad_pieces_are_refused() {
        assert_eq!(Field::of(&[]), Err(FieldError::Empty));
        let bits: [Place; 5] = core::array::from_fn(|bit| place((0, bit as u8), (0, bit as u8)));
        assert_eq!(Field::of(&bits), Err(FieldError::TooManyPieces { count: 5 }));
        assert_eq!(Field::of(&[place((3, 7), (0, 0)), place((4, 7), (8, 7))]), Err(FieldError::TooWide { width: 65 }));
        assert_eq!(
            Field::of(&[place((9, 7), (9, 0)), place((1, 4), (0, 0)), place((1, 4), (1, 4))]),
            Err(FieldError::Overlap { first: 1, second: 2 })
        );
        assert!(Field::of(&[place((1, 4), (0, 0)), place((1, 5), (1, 5)), place((1, 7), (1, 6))]).is_ok());
    }
}
