//! Signals of a table, and their readings.

use wirelore_bits::typed::{Charset, Text};
use wirelore_bits::{BitPosition, Encoding, Extractor, Field, Number, Place};

use crate::class::Classes;
use crate::layout::{CHARSETS, NONE, NUMBER_KINDS, Section, class, content};
use crate::reading::{Reading, Value};
use crate::scale::Scale;
use crate::table::Lorec;

/// A signal of a table.
#[derive(Debug, Clone, Copy)]
pub struct Signal<'a> {
    table: Lorec<'a>,
    words: [u32; 15],
}

/// A number as it was read.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Raw {
    pub(crate) bits: u64,
    /// `None`: the bits make none.
    pub(crate) number: Option<Number>,
    pub(crate) encoding: Encoding,
}

impl Raw {
    /// The number counted from the least one that the signal can have.
    pub(crate) fn counted(&self) -> Option<u64> {
        match (self.number?, self.encoding.integer_range()?) {
            (Number::Integer(number), (least, _)) => u64::try_from(number - least).ok(),
            (Number::Float(_), _) => None,
        }
    }
}

impl<'a> Signal<'a> {
    pub(crate) fn at(table: Lorec<'a>, index: u32) -> Option<Self> {
        Some(Self { table, words: table.record(Section::Signals, index)? })
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &'a str {
        let [start, length, ..] = self.words;
        self.table.text(start, length)
    }

    /// The unit of its value.
    #[must_use]
    pub fn unit(&self) -> Option<&'a str> {
        let [_, _, start, length, ..] = self.words;
        (length > 0).then(|| self.table.text(start, length))
    }

    /// Its position among the signals of its frame in the description, from 0.
    #[must_use]
    pub fn position(&self) -> u32 {
        let [_, _, _, _, position, ..] = self.words;
        position
    }

    /// The number in a payload; `None` for texts and bytes, and where the payload ends too early.
    pub(crate) fn raw(&self, payload: &[u8]) -> Option<Raw> {
        let (field, encoding) = self.number()?;
        let bits = Extractor::new(&field).extract(payload)?;
        Some(Raw { bits, number: encoding.number(bits).ok(), encoding })
    }

    /// Its reading in a payload, and whether that does not hold all the bytes that it says there are.
    pub(crate) fn read<'p>(&self, payload: &'p [u8]) -> (Reading<'p>, bool)
    where
        'a: 'p,
    {
        let [_, _, _, _, _, kind, first, last, charset, size, ..] = self.words;
        if kind == content::NUMBER {
            let reading = self.raw(payload).map_or(Reading::only(Value::TooShort), |raw| self.of_number(&raw));
            return (reading, false);
        }
        let value = match (self.bytes(payload, (first, last, size)), kind) {
            (None, _) => Value::TooShort,
            (Some(bytes), content::TEXT) => Value::Text(Text::new(bytes, charset_of(charset))),
            (Some(bytes), _) => Value::Bytes(bytes),
        };
        (Reading::only(value), size != NONE && value == Value::TooShort)
    }

    /// Its bytes; `None` where the payload does not have them, or where the place has no room for as many as there are said to be.
    fn bytes<'p>(&self, payload: &'p [u8], (first, last, size): (u32, u32, u32)) -> Option<&'p [u8]> {
        let first = first as usize;
        let end = if last == NONE { payload.len() } else { (last as usize).checked_add(1)? };
        if size == NONE {
            return payload.get(first..end);
        }
        let Some(Number::Integer(count)) = Signal::at(self.table, size)?.raw(payload)?.number else { return None };
        let behind = first.checked_add(usize::try_from(count).ok()?)?;
        payload.get(first..behind).filter(|_| last == NONE || behind <= end)
    }

    fn of_number(&self, raw: &Raw) -> Reading<'a> {
        let [.., scale_kind, scale_first, scale_count, class_first, class_count] = self.words;
        let &Raw { bits, number, encoding } = raw;
        let Some(number) = number else {
            return Reading { bits: Some(bits), ..Reading::only(Value::NotDigits) };
        };
        let scale = Scale { kind: scale_kind, first: scale_first, count: scale_count };
        let classes = Classes { first: class_first, count: class_count };
        let found = match number {
            Number::Integer(_) => classes.of_whole(&self.table, raw.counted().unwrap_or_default()),
            Number::Float(float) => {
                classes.of_float(&self.table, (bits, float), |number| scale.number(&self.table, number))
            }
        };
        let value = match found.standing {
            class::ABSENT => Value::NoReading,
            class::FAULT => Value::SensorFault,
            class::BEYOND_CURVE => Value::BeyondCurve,
            _ => scale.value(&self.table, number, (bits, encoding.width())),
        };
        Reading { value, word: found.word, outside_range: found.outside_range, bits: Some(bits) }
    }

    /// Its place and its format.
    fn number(&self) -> Option<(Field, Encoding)> {
        let [_, _, _, _, _, content::NUMBER, first, count, kind, ..] = self.words else { return None };
        let mut places = [None; 4];
        for (at, place) in (0..count).zip(&mut places) {
            let [msb, lsb] = self.table.record(Section::Pieces, first.checked_add(at)?)?;
            let position = |flat: u32| BitPosition::new(flat >> 3, (flat & 7) as u8);
            *place = Some(Place::between(position(msb), position(lsb)).ok()?);
        }
        let field = match places {
            [Some(only), None, ..] => Field::from(only),
            [Some(a), Some(b), None, _] => Field::of(&[a, b]).ok()?,
            [Some(a), Some(b), Some(c), None] => Field::of(&[a, b, c]).ok()?,
            [Some(a), Some(b), Some(c), Some(d)] => Field::of(&[a, b, c, d]).ok()?,
            _ => return None,
        };
        let kind = *NUMBER_KINDS.get(kind as usize)?;
        Some((field, Encoding::new(kind, field.width()).ok()?))
    }
}

/// A character set by its number; one that is none is taken for the widest.
fn charset_of(number: u32) -> Charset {
    CHARSETS.get(number as usize).copied().unwrap_or(Charset::Utf8)
}
