//! The row of the innermost loop: one signal as one load, one shift, one mask, one comparison and one exact scaling.
//!
//! Nearly every signal is one run of bits inside eight bytes, a plain or two's complement number, with one long run of raw values that
//! mean nothing special. For those a [`Step`] does all the work; it hands the others, and the special values, to [`Detail`](super::Detail).

use wirelore_bits::{Affine, ByteOrder, Encoding, Field, NumberKind, Place, Scaler};
use wirelore_model::SignalId;

/// How a signal is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Form {
    /// The raw number is the value.
    Integer,
    /// The scaler makes the value.
    Scaled,
    /// All of it is left to [`Detail`](super::Detail).
    Careful,
}

/// One signal in the innermost loop.
#[derive(Debug, Clone)]
pub(crate) struct Step {
    pub(crate) form: Form,
    motorola: bool,
    /// How far the least significant bit lies above bit 0 of the eight bytes.
    shift: u8,
    /// Where the eight bytes begin.
    window: u32,
    pub(crate) signal: SignalId,
    mask: u64,
    /// The sign bit of a two's complement number, else 0.
    sign: u64,
    /// The least raw value of the longest run of plain readings, and how many follow it.
    plain_first: i64,
    plain_span: u64,
    scaler: Scaler,
}

/// Where a signal lies in the eight bytes around it, and what its bits make.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Geometry {
    /// Where the eight bytes begin.
    pub(crate) window: u32,
    /// How far the least significant bit lies above bit 0 of the eight bytes.
    pub(crate) shift: u8,
    pub(crate) width: u8,
    pub(crate) signed: bool,
    pub(crate) motorola: bool,
}

/// What the eight bytes give.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Bits {
    pub(crate) bits: u64,
    pub(crate) raw: i64,
}

impl Step {
    /// A signal that is left to its detail.
    pub(crate) fn careful(signal: SignalId) -> Self {
        let scaler = Scaler::new(&Affine::identity(), 0, 0);
        Self {
            form: Form::Careful,
            motorola: false,
            shift: 0,
            window: 0,
            signal,
            mask: 0,
            sign: 0,
            plain_first: 0,
            plain_span: 0,
            scaler,
        }
    }

    /// The step for a number; `formula` is `None` where the raw number is the value, `plain` the longest run of plain readings.
    pub(crate) fn number(
        signal: SignalId,
        field: &Field,
        encoding: Encoding,
        formula: Option<&Affine>,
        plain: Option<(i128, i128)>,
    ) -> Self {
        let careful = Self::careful(signal);
        let sign = match encoding.kind() {
            NumberKind::Unsigned => 0,
            NumberKind::Signed => 1_u64 << (encoding.width() - 1),
            NumberKind::SignMagnitude | NumberKind::Float | NumberKind::Bcd => return careful,
        };
        let ([place], Some(all)) = (field.places(), encoding.integer_range()) else {
            return careful;
        };
        let Some((plain_first, plain_span)) = plain_run(plain, encoding.width()) else {
            return careful;
        };
        let Some((window, shift)) = window(place) else {
            return careful;
        };
        Self {
            form: if formula.is_some() { Form::Scaled } else { Form::Integer },
            motorola: place.order() == ByteOrder::Motorola,
            shift,
            window,
            signal,
            mask: u64::MAX >> (64 - encoding.width()),
            sign,
            plain_first,
            plain_span,
            scaler: Scaler::new(formula.unwrap_or(&Affine::identity()), all.0, all.1),
        }
    }

    /// The signal's bits in a payload of at least eight bytes; `None` where it ends too early.
    #[inline(always)]
    pub(crate) fn bits(&self, payload: &[u8]) -> Option<Bits> {
        let begins = self.window as usize;
        let bytes = payload.get(begins..begins + 8)?.first_chunk::<8>()?;
        let word = u64::from_le_bytes(*bytes);
        let word = if self.motorola { word.swap_bytes() } else { word };
        let bits = (word >> (self.shift & 63)) & self.mask;
        Some(Bits { bits, raw: (bits ^ self.sign).wrapping_sub(self.sign) as i64 })
    }

    /// Whether a raw value is a plain reading: in range, without a word.
    #[inline(always)]
    pub(crate) fn is_plain(&self, raw: i64) -> bool {
        raw.wrapping_sub(self.plain_first) as u64 <= self.plain_span
    }

    /// The number that some bits make: as [`Step::is_plain`] takes it, and in full.
    #[inline(always)]
    pub(crate) fn number_of(&self, bits: u64) -> (i64, i128) {
        let raw = (bits ^ self.sign).wrapping_sub(self.sign) as i64;
        (raw, if self.sign == 0 { bits.into() } else { raw.into() })
    }

    /// Where its bits are; `None` for a signal that is left to its detail.
    pub(crate) fn geometry(&self) -> Option<Geometry> {
        let Self { window, shift, motorola, mask, sign, .. } = *self;
        let width = mask.count_ones() as u8;
        (self.form != Form::Careful).then_some(Geometry { window, shift, width, signed: sign != 0, motorola })
    }

    /// The formula; `None` where the raw number is the value.
    pub(crate) fn formula(&self) -> Option<&Affine> {
        (self.form == Form::Scaled).then(|| self.scaler.affine())
    }

    /// The least and the greatest raw number of the longest run of plain readings.
    pub(crate) fn plain(&self) -> (i128, i128) {
        let first = i128::from(self.plain_first);
        (first, first + i128::from(self.plain_span))
    }

    /// The engineering value of a plain reading: one of the raw values that the scaler was made for.
    #[inline(always)]
    pub(crate) fn scaled(&self, raw: i64) -> f64 {
        self.scaler.value_inside(raw)
    }
}

/// The run of plain readings as 64-bit numbers, or one that holds none; `None` where such a run cannot be written.
fn plain_run(plain: Option<(i128, i128)>, width: u8) -> Option<(i64, u64)> {
    // Unsigned numbers of 64 bits do not all fit; those beyond are looked at with care.
    let ends = plain
        .and_then(|(first, last)| Some((i64::try_from(first).ok()?, i64::try_from(last.min(i64::MAX.into())).ok()?)));
    match ends {
        Some((first, last)) => Some((first, last.abs_diff(first))),
        // No raw value of fewer than 64 bits is the least 64-bit number.
        None if width < 64 => Some((i64::MIN, 0)),
        None => None,
    }
}

/// Where the eight bytes around a place begin, and how far up in them it lies; `None` for a place that touches nine bytes.
///
/// The eight bytes end with the place where the payload allows, so that payloads of eight bytes and more need no special case.
fn window(place: &Place) -> Option<(u32, u8)> {
    let (first_byte, needed_bytes) = (place.first_byte(), place.last_byte() + 1);
    if needed_bytes - first_byte > 8 {
        return None;
    }
    let window = needed_bytes.saturating_sub(8);
    let bytes_below = match place.order() {
        ByteOrder::Intel => first_byte - window,
        ByteOrder::Motorola => window + 8 - needed_bytes,
    };
    Some((window, 8 * bytes_below as u8 + place.lsb().bit))
}

#[cfg(test)]
mod tests {
    use super::*;
    use wirelore_bits::{BitPosition, Extractor};

    #[test]
    fn reads_what_the_extractor_reads() {
        let mut payload = [0_u8; 64];
        let mut state = 0x2545_F491_4F6C_DD1D_u64;
        for byte in &mut payload {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            *byte = (state >> 56) as u8;
        }
        let mut compared = 0;
        for order in [ByteOrder::Intel, ByteOrder::Motorola] {
            for width in 1..=64_u32 {
                for at in 0..512_u32 {
                    let Ok(place) = Place::from_lsb(BitPosition::new(at / 8, (at % 8) as u8), width, order) else {
                        continue;
                    };
                    let field = Field::from(place);
                    let kind = if at % 3 == 0 { NumberKind::Signed } else { NumberKind::Unsigned };
                    let encoding = Encoding::new(kind, width as u8).expect("a width from 1 to 64");
                    let step = Step::number(SignalId(0), &field, encoding, None, encoding.integer_range());
                    if step.form == Form::Careful {
                        continue;
                    }
                    for length in [8, 12, 64] {
                        let payload = &payload[..length];
                        let found = step.bits(payload);
                        let plain = Extractor::new(&field).extract(payload);
                        assert_eq!(found.map(|found| found.bits), plain, "{place:?} in {length} bytes");
                        if let (Some(found), Ok(wirelore_bits::Number::Integer(number))) =
                            (found, encoding.number(plain.unwrap_or(0)))
                        {
                            let wrapped = number as i64;
                            assert_eq!(found.raw, wrapped);
                            assert_eq!(step.is_plain(found.raw), i64::try_from(number).is_ok());
                            compared += 1;
                        }
                    }
                }
            }
        }
        assert!(compared > 60_000, "{compared}");
    }
}
