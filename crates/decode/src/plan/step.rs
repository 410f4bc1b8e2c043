//! The row of the innermost loop: one signal as one load, one shift, one mask, one comparison and one exact scaling.
//!
//! Nearly every signal is one run of bits inside eight bytes, a plain or two's complement number, with one long run of raw values that
//! mean nothing special. For those a [`Step`] does all the work; it hands the others, and the special values, to [`Detail`](super::Detail).

use wirelore_bits::{Affine, ByteOrder, Encoding, Field, NumberKind, Place, Quotient};
use wirelore_model::SignalId;

/// How a signal is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Form {
    /// The raw number is the value.
    Integer,
    /// The quotient makes the value.
    Scaled,
    /// The value takes the wide arithmetic of [`Detail`](super::Detail).
    Wide,
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
    /// The least one plus the sign bit, modulo 2^64: from there on up, plain readings are counted.
    plain_from: u64,
    /// From that count to the value.
    quotient: Quotient,
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

/// A payload as steps load it.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Loadable<'a> {
    /// At most eight bytes, with zeros behind them, as a number in either order.
    Word { intel: u64, motorola: u64 },
    /// More than that.
    Bytes(&'a [u8]),
}

impl<'a> Loadable<'a> {
    #[inline(always)]
    pub(crate) fn new(payload: &'a [u8]) -> Self {
        let bytes = match (payload.first_chunk::<8>(), payload.len()) {
            (Some(bytes), 8) => *bytes,
            (Some(_), _) => return Self::Bytes(payload),
            (None, length) => {
                let mut bytes = [0; 8];
                bytes[..length].copy_from_slice(payload);
                bytes
            }
        };
        Self::Word { intel: u64::from_le_bytes(bytes), motorola: u64::from_be_bytes(bytes) }
    }
}

impl Step {
    /// A signal that is left to its detail.
    pub(crate) fn careful(signal: SignalId) -> Self {
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
            plain_from: 0,
            quotient: Quotient::IDENTITY,
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
        let [place] = field.places() else {
            return careful;
        };
        let Some((plain_first, plain_span)) = plain_run(plain, encoding.width()) else {
            return careful;
        };
        let Some((window, shift)) = window(place) else {
            return careful;
        };
        let plain_last = plain_first.wrapping_add_unsigned(plain_span);
        let quotient = formula.map(|formula| Quotient::new(formula, plain_first, plain_last));
        Self {
            form: match quotient {
                None => Form::Integer,
                Some(None) => Form::Wide,
                Some(Some(_)) => Form::Scaled,
            },
            motorola: place.order() == ByteOrder::Motorola,
            shift,
            window,
            signal,
            mask: u64::MAX >> (64 - encoding.width()),
            sign,
            plain_first,
            plain_span,
            plain_from: sign.wrapping_add(plain_first as u64),
            quotient: quotient.flatten().unwrap_or(Quotient::IDENTITY).counted_from(plain_first),
        }
    }

    /// The signal's bits in a payload that holds them (of another they may be any); `None` where more than eight bytes end too early.
    #[inline(always)]
    pub(crate) fn bits(&self, loadable: &Loadable<'_>) -> Option<u64> {
        let word = match loadable {
            // Where eight bytes hold a signal, its window is those.
            Loadable::Word { motorola, .. } if self.motorola => *motorola,
            Loadable::Word { intel, .. } => *intel,
            Loadable::Bytes(payload) => {
                let begins = self.window as usize;
                let word = u64::from_le_bytes(*payload.get(begins..begins + 8)?.first_chunk()?);
                if self.motorola { word.swap_bytes() } else { word }
            }
        };
        Some((word >> (self.shift & 63)) & self.mask)
    }

    /// How far above the least plain reading some bits are; `None` for those that are none: out of range, or with a word.
    #[inline(always)]
    pub(crate) fn plain_count(&self, bits: u64) -> Option<u64> {
        let count = (bits ^ self.sign).wrapping_sub(self.plain_from);
        (count <= self.plain_span).then_some(count)
    }

    /// The raw number of a plain reading.
    #[inline(always)]
    pub(crate) fn raw(&self, plain_count: u64) -> i64 {
        self.plain_first.wrapping_add_unsigned(plain_count)
    }

    /// The engineering value of a plain reading: a signal of which [`Form::Scaled`] is told.
    #[inline(always)]
    pub(crate) fn scaled(&self, plain_count: u64) -> f64 {
        self.quotient.value(plain_count as i64)
    }

    /// The number that some bits make.
    #[inline(always)]
    pub(crate) fn number_of(&self, bits: u64) -> i128 {
        if self.sign == 0 { bits.into() } else { ((bits ^ self.sign).wrapping_sub(self.sign) as i64).into() }
    }

    /// Where its bits are; `None` for a signal that is left to its detail.
    pub(crate) fn geometry(&self) -> Option<Geometry> {
        let Self { window, shift, motorola, mask, sign, .. } = *self;
        let width = mask.count_ones() as u8;
        (self.form != Form::Careful).then_some(Geometry { window, shift, width, signed: sign != 0, motorola })
    }

    /// The least and the greatest raw number of the longest run of plain readings.
    pub(crate) fn plain(&self) -> (i128, i128) {
        let first = i128::from(self.plain_first);
        (first, first + i128::from(self.plain_span))
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
        let ratio = |text| wirelore_bits::Ratio::from_decimal(text).expect("a decimal");
        let formula = Affine::new(ratio("0.05"), ratio("-273.15")).expect("it fits");
        let (mut compared, mut values) = (0, 0);
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
                    for length in [5, 8, 12, 64] {
                        let payload = &payload[..length];
                        let plain = Extractor::new(&field).extract(payload);
                        let bits = step.bits(&Loadable::new(payload));
                        if place.last_byte() as usize >= length {
                            assert_eq!(
                                (plain, bits.filter(|_| length > 8)),
                                (None, None),
                                "{place:?} in {length} bytes"
                            );
                            continue;
                        }
                        assert_eq!(bits, plain, "{place:?} in {length} bytes");
                        if let (Some(bits), Ok(wirelore_bits::Number::Integer(number))) =
                            (bits, encoding.number(plain.unwrap_or(0)))
                        {
                            assert_eq!(step.number_of(bits), number);
                            let raw = step.plain_count(bits).map(|count| step.raw(count));
                            assert_eq!(raw, i64::try_from(number).ok());
                            let scaled =
                                Step::number(SignalId(0), &field, encoding, Some(&formula), encoding.integer_range());
                            if let (Form::Scaled, Some(count)) = (scaled.form, scaled.plain_count(bits)) {
                                assert_eq!(scaled.scaled(count).to_bits(), formula.value(number).to_bits());
                                values += 1;
                            }
                            compared += 1;
                        }
                    }
                }
            }
        }
        assert!(compared > 60_000 && values > 40_000, "{compared}, {values}");
    }
}
