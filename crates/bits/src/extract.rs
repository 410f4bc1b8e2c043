//! The hot path: a field turned into loads, shifts and masks.
//!
//! A place inside eight bytes is read with one eight-byte load. The window of that load is chosen to *end* with the place
//! where the payload allows, so that payloads of eight bytes and more never need a special case for their last bytes.

use core::fmt;

use crate::load::short_word;
use crate::{ByteOrder, Field, Place};

/// A [`Field`] compiled for repeated use on payloads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Extractor {
    /// Where the load begins that does it all for one piece inside eight bytes; beyond every payload for other fields.
    window_start: usize,
    cut: Cut,
    /// The pieces, the most significant one first; unused entries repeat the first.
    steps: [Step; 4],
    count: u8,
    width: u8,
    needed_bytes: u32,
}

/// Why bits were not put into a payload. The payload is then unchanged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InsertError {
    /// The payload ends before the field does.
    PayloadTooShort {
        /// Bytes the field needs.
        needed_bytes: u32,
        /// Bytes the payload has.
        found_bytes: usize,
    },
    /// The bits are wider than the field.
    BitsTooWide {
        /// Width of the field, in bits.
        width: u8,
        /// The bits that were to be put in.
        bits: u64,
    },
}

impl fmt::Display for InsertError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::PayloadTooShort { needed_bytes, found_bytes } => {
                write!(
                    f,
                    "putting bits into a payload needs {needed_bytes} bytes and it has {found_bytes}; make it longer"
                )
            }
            Self::BitsTooWide { width, bits } => {
                write!(f, "the bits {bits:#X} do not fit in a field of {width} bits; check the value's range")
            }
        }
    }
}

impl core::error::Error for InsertError {}

/// What to do with eight bytes that were loaded as a little-endian word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Cut {
    mask: u64,
    /// How far the least significant bit lies above bit 0 of the word.
    shift: u8,
    motorola: bool,
}

impl Cut {
    #[inline]
    fn bits_of(&self, word: u64) -> u64 {
        let word = if self.motorola { word.swap_bytes() } else { word };
        (word >> self.shift) & self.mask
    }
}

/// The eight bytes of `payload` from `start` on as a little-endian word, if it has them.
#[inline]
fn word_at(payload: &[u8], start: usize) -> Option<u64> {
    Some(u64::from_le_bytes(*payload.get(start..)?.first_chunk::<8>()?))
}

/// One piece of a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Step {
    /// The first byte the piece touches.
    first_byte: u32,
    /// How many bytes a payload must have: the piece's last byte plus one.
    needed_bytes: u32,
    width: u8,
    /// See [`Cut`]; for a piece of nine bytes the shift that all nine need, 1 to 7.
    shift: u8,
    motorola: bool,
}

impl Step {
    pub(crate) const fn new(place: &Place) -> Self {
        let (first_byte, needed_bytes) = (place.first_byte(), place.last_byte() + 1);
        let motorola = matches!(place.order(), ByteOrder::Motorola);
        let start = needed_bytes.saturating_sub(8);
        // Bytes of the window below the place: those before it in Intel order, those after it in Motorola order. A piece of nine
        // bytes has none.
        let below = if motorola { start + 8 - needed_bytes } else { first_byte.saturating_sub(start) };
        let shift = 8 * below as u8 + place.lsb().bit;
        Self { first_byte, needed_bytes, width: place.width(), shift, motorola }
    }

    #[inline(always)]
    fn cut(&self) -> Cut {
        Cut { mask: u64::MAX >> (64 - self.width), shift: self.shift, motorola: self.motorola }
    }

    #[inline(always)]
    fn has_nine_bytes(&self) -> bool {
        self.needed_bytes - self.first_byte > 8
    }

    /// Where a window of eight bytes begins that ends with the piece, or at byte 0 if it cannot.
    #[inline(always)]
    fn window_start(&self) -> usize {
        self.needed_bytes.saturating_sub(8) as usize
    }

    /// How many bits it has.
    pub(crate) const fn width(&self) -> u8 {
        self.width
    }

    /// How many bytes a payload must have to hold it.
    pub(crate) const fn needed_bytes(&self) -> u32 {
        self.needed_bytes
    }

    /// The bits of the piece, however long it is and however short the payload. (Always inlined: where the piece is a constant, all that
    /// is left is a load, a shift and a mask.)
    #[inline(always)]
    pub(crate) fn extract(&self, payload: &[u8]) -> Option<u64> {
        if payload.len() < self.needed_bytes as usize {
            return None;
        }
        if self.has_nine_bytes() {
            return self.extract_nine_bytes(payload);
        }
        // A window that is not wholly there begins at byte 0, because it would end with the piece otherwise.
        let word = word_at(payload, self.window_start()).unwrap_or_else(|| short_word(payload));
        Some(self.cut().bits_of(word))
    }

    /// The bits of a piece that touches nine bytes.
    fn extract_nine_bytes(&self, payload: &[u8]) -> Option<u64> {
        let [first, middle @ .., last] = payload.get(self.first_byte as usize..)?.first_chunk::<9>()?;
        let Cut { mask, shift, motorola } = self.cut();
        let [a, b, c, d, e, f, g] = *middle;
        let (low, high) = if motorola {
            (u64::from_be_bytes([a, b, c, d, e, f, g, *last]), *first)
        } else {
            (u64::from_le_bytes([*first, a, b, c, d, e, f, g]), *last)
        };
        Some((low >> shift | u64::from(high) << (64 - shift)) & mask)
    }

    /// Puts the low bits of `bits` in; the payload is long enough.
    #[inline]
    pub(crate) fn insert(&self, payload: &mut [u8], bits: u64) {
        let touched = payload.iter_mut().take(self.needed_bytes as usize).skip(self.first_byte as usize);
        let shift = u32::from(self.shift % 8);
        let mask = u128::from(self.cut().mask) << shift;
        let bits = (u128::from(bits) << shift) & mask;
        let put = |(index, byte): (u32, &mut u8)| {
            let (mask, bits) = ((mask >> (8 * index)) as u8, (bits >> (8 * index)) as u8);
            *byte = *byte & !mask | bits;
        };
        if self.motorola { (0..).zip(touched.rev()).for_each(put) } else { (0..).zip(touched).for_each(put) }
    }
}

impl Extractor {
    /// The plan for `field`.
    pub fn new(field: &Field) -> Self {
        let steps = field.pieces().map(|place| Step::new(&place));
        let count = field.places().len() as u8;
        let simple = count == 1 && !steps[0].has_nine_bytes();
        let window_start = if simple { steps[0].window_start() } else { usize::MAX };
        Self {
            window_start,
            cut: steps[0].cut(),
            steps,
            count,
            width: field.width(),
            needed_bytes: field.needed_bytes(),
        }
    }

    /// The field's bits, the least significant one in bit 0; `None` if the payload ends before the field does.
    #[inline]
    pub fn extract(&self, payload: &[u8]) -> Option<u64> {
        match word_at(payload, self.window_start) {
            Some(word) => Some(self.cut.bits_of(word)),
            None => self.extract_pieces(payload),
        }
    }

    /// Fields of several pieces or of nine bytes, and payloads of fewer than eight.
    #[inline(never)]
    fn extract_pieces(&self, payload: &[u8]) -> Option<u64> {
        if self.window_start == 0 && payload.len() >= self.needed_bytes as usize {
            return Some(self.cut.bits_of(short_word(payload)));
        }
        let mut bits = 0u64;
        for step in self.steps.iter().take(usize::from(self.count)) {
            // A single piece may have all 64 bits; the shift then moves out nothing but zeros.
            bits = bits.checked_shl(u32::from(step.width)).unwrap_or(0) | step.extract(payload)?;
        }
        Some(bits)
    }

    /// Puts `bits` into the field's place and leaves every other bit of the payload as it is.
    ///
    /// # Errors
    /// The payload ends before the field does, or `bits` has bits above the field's width. The payload is then unchanged.
    pub fn insert(&self, payload: &mut [u8], bits: u64) -> Result<(), InsertError> {
        if payload.len() < self.needed_bytes as usize {
            return Err(InsertError::PayloadTooShort { needed_bytes: self.needed_bytes, found_bytes: payload.len() });
        }
        if bits > u64::MAX >> (64 - u32::from(self.width)) {
            return Err(InsertError::BitsTooWide { width: self.width, bits });
        }
        let mut rest = bits;
        for step in self.steps.iter().take(usize::from(self.count)).rev() {
            step.insert(payload, rest);
            rest = rest.checked_shr(u32::from(step.width)).unwrap_or(0);
        }
        Ok(())
    }
}
