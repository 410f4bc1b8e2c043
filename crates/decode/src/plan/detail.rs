//! Everything about a signal that the innermost loop does not do itself.

use std::borrow::Cow;

use wirelore_bits::{Affine, Encoding, Extractor, Field, Number, Scaler};
use wirelore_model::{ByteSpan, Charset, Content, Frame, Scaling, Signal, SignalId, StateWord, TroubleCode};

use super::Conversion;
use super::classes::{Class, Classes, Standing};
use super::curve::CurvePlan;
use super::floats::FloatClasses;
use crate::reading::{Reading, Value};

/// A signal made ready for decoding with care.
#[derive(Debug, Clone)]
pub(crate) struct Detail {
    content: Planned,
}

#[derive(Debug, Clone)]
enum Planned {
    Number(Box<NumberPlan>),
    Text { run: Run, charset: Charset },
    Bytes { run: Run },
}

/// A run of bytes.
#[derive(Debug, Clone)]
pub(super) struct Run {
    first: u32,
    /// `None`: to the end of the payload.
    last: Option<u32>,
    /// Says how many bytes there are, where not all of them have to be.
    size: Option<Box<SizePlan>>,
}

#[derive(Debug, Clone)]
struct SizePlan {
    extractor: Extractor,
    encoding: Encoding,
}

impl SizePlan {
    /// How many bytes a payload says there are.
    fn of(&self, payload: &[u8]) -> Option<usize> {
        match self.encoding.number(self.extractor.extract(payload)?) {
            Ok(Number::Integer(count)) => usize::try_from(count).ok(),
            Ok(Number::Float(_)) | Err(_) => None,
        }
    }
}

impl Run {
    pub(super) fn new(frame: &Frame, bytes: ByteSpan, size: Option<SignalId>) -> Option<Self> {
        let plan = |size: SignalId| {
            let signal = frame.signals.get(size.index())?;
            let Content::Number { field, .. } = &signal.content else { return None };
            Some(Box::new(SizePlan { extractor: Extractor::new(field), encoding: signal.encoding()? }))
        };
        let size = match size {
            Some(size) => Some(plan(size)?),
            None => None,
        };
        Some(Self { first: bytes.first, last: bytes.last, size })
    }

    /// The byte behind it, where the payload says how many bytes there are.
    pub(super) fn said_end(&self, payload: &[u8]) -> Option<usize> {
        (self.first as usize).checked_add(self.size.as_ref()?.of(payload)?)
    }

    /// Its bytes; `None` where the payload does not have them, or where the place has no room for as many as there are said to be.
    fn of<'a>(&self, payload: &'a [u8]) -> Option<&'a [u8]> {
        let first = self.first as usize;
        let end = self.last.map_or(payload.len(), |last| last as usize + 1);
        let Some(size) = &self.size else {
            return payload.get(first..end);
        };
        let behind = first.checked_add(size.of(payload)?)?;
        payload.get(first..behind).filter(|_| self.last.is_none() || behind <= end)
    }
}

#[derive(Debug, Clone)]
struct NumberPlan {
    extractor: Extractor,
    encoding: Encoding,
    classes: NumberClasses,
    scale: Scale,
}

#[derive(Debug, Clone)]
enum NumberClasses {
    Whole(Classes),
    Float(FloatClasses),
}

#[derive(Debug, Clone)]
enum Scale {
    Raw,
    Affine(Scaler),
    Curve(CurvePlan),
    TroubleCode,
}

/// A number's detail, with what the step beside it needs to know.
pub(crate) struct PlannedNumber {
    pub(crate) detail: Detail,
    /// The formula, where it is one for the whole range of raw values; `None`: the raw number is the value.
    pub(crate) formula: Option<Affine>,
    /// The longest run of raw values that are plain readings.
    pub(crate) plain: Option<(i128, i128)>,
    /// Only the detail can read it.
    pub(crate) only_detail: bool,
}

impl Detail {
    /// The detail of a text or of bytes.
    pub(crate) fn of_bytes(frame: &Frame, signal: &Signal) -> Option<Self> {
        let content = match signal.content {
            Content::Number { .. } => return None,
            Content::Text { bytes, charset, size } => Planned::Text { run: Run::new(frame, bytes, size)?, charset },
            Content::Bytes { bytes, size } => Planned::Bytes { run: Run::new(frame, bytes, size)? },
        };
        Some(Self { content })
    }

    /// The detail of a number; `None` where its curve or its formula in the wanted unit cannot be held exactly.
    pub(crate) fn of_number(
        signal: &Signal,
        (field, encoding): (&Field, Encoding),
        (words, first_word): (&[StateWord], u32),
        conversion: &Conversion,
    ) -> Option<PlannedNumber> {
        let formula = match (&signal.scaling, conversion) {
            (Scaling::Raw, Conversion::None) | (Scaling::Curve(_) | Scaling::TroubleCode, _) => None,
            (Scaling::Raw, _) => Some(conversion.affine(&Affine::identity())?),
            (Scaling::Affine(formula), _) => Some(conversion.affine(formula)?),
        };
        let scale = match (&signal.scaling, formula) {
            (Scaling::Curve(curve), _) => Scale::Curve(CurvePlan::new(curve, conversion)?),
            (Scaling::TroubleCode, _) => Scale::TroubleCode,
            (_, None) => Scale::Raw,
            (_, Some(formula)) => {
                let (least, greatest) = encoding.integer_range().unwrap_or((0, 0));
                Scale::Affine(Scaler::new(&formula, least, greatest))
            }
        };
        let (classes, plain) = if encoding.integer_range().is_some() {
            let (classes, plain) = Classes::new(signal, encoding, words, first_word);
            (NumberClasses::Whole(classes), plain)
        } else {
            (NumberClasses::Float(FloatClasses::new(signal, words, first_word)?), None)
        };
        let only_detail = matches!(scale, Scale::Curve(_) | Scale::TroubleCode);
        let number = NumberPlan { extractor: Extractor::new(field), encoding, classes, scale };
        let detail = Self { content: Planned::Number(Box::new(number)) };
        Some(PlannedNumber { detail, formula, plain, only_detail })
    }

    /// The reading in a payload of any length.
    pub(crate) fn read<'a>(&'a self, payload: &'a [u8], words: &'a [Box<str>]) -> Reading<'a> {
        match &self.content {
            Planned::Number(number) => match number.extractor.extract(payload) {
                Some(bits) => number.read(bits, words),
                None => Reading::only(Value::TooShort),
            },
            Planned::Text { run, charset } => {
                Reading::only(run.of(payload).map_or(Value::TooShort, |bytes| Value::Text(text(bytes, *charset))))
            }
            Planned::Bytes { run } => Reading::only(run.of(payload).map_or(Value::TooShort, Value::Bytes)),
        }
    }

    /// Whether a payload does not hold all the bytes that it says there are.
    pub(crate) fn is_cut_off(&self, payload: &[u8]) -> bool {
        match &self.content {
            Planned::Text { run, .. } | Planned::Bytes { run } => run.size.is_some() && run.of(payload).is_none(),
            Planned::Number(_) => false,
        }
    }

    /// Whether how many bytes it has is said by another signal.
    pub(crate) fn is_sized(&self) -> bool {
        matches!(&self.content, Planned::Text { run, .. } | Planned::Bytes { run } if run.size.is_some())
    }

    /// Whether it says trouble codes.
    pub(crate) fn is_trouble_code(&self) -> bool {
        matches!(&self.content, Planned::Number(number) if matches!(number.scale, Scale::TroubleCode))
    }

    /// The formula, where one holds for all raw numbers.
    pub(crate) fn formula(&self) -> Option<&Affine> {
        match &self.content {
            Planned::Number(number) => match &number.scale {
                Scale::Affine(scaler) => Some(scaler.affine()),
                Scale::Raw | Scale::Curve(_) | Scale::TroubleCode => None,
            },
            Planned::Text { .. } | Planned::Bytes { .. } => None,
        }
    }

    /// The whole number that some bits make.
    pub(crate) fn whole(&self, bits: u64) -> Option<i128> {
        match &self.content {
            Planned::Number(number) => match number.encoding.number(bits) {
                Ok(Number::Integer(number)) => Some(number),
                Ok(Number::Float(_)) | Err(_) => None,
            },
            Planned::Text { .. } | Planned::Bytes { .. } => None,
        }
    }

    /// What a whole number says beside its value; `None` where only [`Detail::read`] can tell.
    #[inline]
    pub(crate) fn class(&self, bits: u64, number: i128) -> Option<Class> {
        match &self.content {
            Planned::Number(plan) => match &plan.classes {
                NumberClasses::Whole(classes) => Some(classes.of(bits, number)),
                NumberClasses::Float(_) => None,
            },
            Planned::Text { .. } | Planned::Bytes { .. } => None,
        }
    }

    /// The reading for a number's bits.
    #[inline(never)]
    pub(crate) fn read_bits<'a>(&'a self, bits: u64, words: &'a [Box<str>]) -> Reading<'a> {
        match &self.content {
            Planned::Number(number) => number.read(bits, words),
            Planned::Text { .. } | Planned::Bytes { .. } => Reading::only(Value::TooShort),
        }
    }
}

impl NumberPlan {
    fn read<'a>(&'a self, bits: u64, words: &'a [Box<str>]) -> Reading<'a> {
        let Ok(number) = self.encoding.number(bits) else {
            return Reading { value: Value::NotDigits, word: None, outside_range: false, bits: Some(bits) };
        };
        let class = match (&self.classes, number) {
            (NumberClasses::Whole(classes), Number::Integer(number)) => classes.of(bits, number),
            (NumberClasses::Float(classes), Number::Float(number)) => classes.of(bits, number),
            (NumberClasses::Whole(_), Number::Float(_)) | (NumberClasses::Float(_), Number::Integer(_)) => {
                Class::default()
            }
        };
        let value = match class.standing {
            Standing::Reading => self.value(number, bits),
            Standing::Absent => Value::NoReading,
            Standing::Fault => Value::SensorFault,
            Standing::BeyondCurve => Value::BeyondCurve,
        };
        let word = class.word.and_then(|index| words.get(index as usize)).map(AsRef::as_ref);
        Reading { value, word, outside_range: class.outside_range, bits: Some(bits) }
    }

    fn value(&self, number: Number, bits: u64) -> Value<'static> {
        match (&self.scale, number) {
            (Scale::TroubleCode, _) => {
                // The description was checked: a code has 16 or 24 bits.
                TroubleCode::of_bits(bits, self.encoding.width()).map_or(Value::NotDigits, Value::TroubleCode)
            }
            (Scale::Raw, Number::Integer(number)) => Value::Integer(number),
            (Scale::Raw, Number::Float(number)) => Value::Number(number),
            (Scale::Affine(scaler), Number::Integer(number)) => Value::Number(scaler.value_of(number)),
            (Scale::Affine(scaler), Number::Float(number)) => Value::Number(scaler.affine().value_of_float(number)),
            (Scale::Curve(curve), Number::Integer(number)) => {
                curve.value(number).map_or(Value::BeyondCurve, Value::Number)
            }
            (Scale::Curve(curve), Number::Float(number)) => {
                curve.value_of_float(number).map_or(Value::BeyondCurve, Value::Number)
            }
        }
    }
}

/// The characters that some bytes make. NUL bytes at the end only fill the place up.
fn text(bytes: &[u8], charset: Charset) -> Cow<'_, str> {
    let end = bytes.iter().rposition(|byte| *byte != 0).map_or(0, |last| last + 1);
    let bytes = bytes.get(..end).unwrap_or(bytes);
    match charset {
        Charset::Utf8 => String::from_utf8_lossy(bytes),
        Charset::Ascii | Charset::Latin1 if bytes.is_ascii() => String::from_utf8_lossy(bytes),
        Charset::Ascii => bytes
            .iter()
            .map(|&byte| if byte.is_ascii() { char::from(byte) } else { char::REPLACEMENT_CHARACTER })
            .collect(),
        Charset::Latin1 => bytes.iter().map(|&byte| char::from(byte)).collect(),
    }
}
