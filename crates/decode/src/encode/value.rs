//! From one given value to the bits of its signal.

use wirelore_bits::{Affine, Encoding, Fit, Number, Ratio};
use wirelore_model::{
    Charset, Curve, Meaning, RawSpan, RawValue, Role, Scaling, Signal, StateWord, TroubleCode, Unit, unit,
};

use super::error::EncodeError;
use super::note::Note;
use crate::near::suggestion;
use crate::plan::{Detail, ExactLine};
use crate::reach::{ends, exact_of_bits};
use crate::reading::Value;

/// A number signal with what is needed to encode it.
pub(super) struct NumberSignal<'a> {
    pub(super) signal: &'a Signal,
    pub(super) encoding: Encoding,
    pub(super) words: &'a [StateWord],
    pub(super) detail: &'a Detail,
}

/// Bits, and what is to be said about them.
type Coded = Result<(u64, Vec<Note>), EncodeError>;

impl NumberSignal<'_> {
    fn name(&self) -> String {
        self.signal.label.name.clone()
    }

    /// The bits for an engineering value, in the given unit or else the described one.
    pub(super) fn value(&self, given: &Ratio, unit: Option<&Unit>) -> Coded {
        let value = self.in_described_unit(given, unit)?;
        let bits = match &self.signal.scaling {
            Scaling::Raw => self.through(&Affine::identity(), &value, None)?,
            Scaling::Affine(formula) => self.through(formula, &value, None)?,
            Scaling::Curve(curve) => self.through_curve(curve, &value)?,
            Scaling::TroubleCode => return Err(no_code(self.signal, &value.to_string(), self.encoding.width())),
        };
        let reading = self.detail.read_bits(bits, &[]);
        let shown = with_unit(&value.to_string(), self.signal.unit.as_ref());
        let meaning = match reading.value {
            Value::NoReading => Some("no reading"),
            Value::SensorFault => Some("sensor fault"),
            _ => None,
        };
        if let Some(meaning) = meaning {
            return Err(EncodeError::MeansSomethingElse { signal: self.name(), value: shown, bits, meaning });
        }
        let mut notes = Vec::new();
        if !self.gives_exactly(bits, &value) {
            let got = self
                .exact(bits)
                .map_or_else(|| reading.value.number().unwrap_or(f64::NAN).to_string(), |got| shown_ratio(&got));
            notes.push(Note::Rounded { signal: self.name(), to: with_unit(&got, self.signal.unit.as_ref()) });
        }
        notes.extend(self.remarks(bits));
        Ok((bits, notes))
    }

    /// What the description would not expect of a reading.
    fn remarks(&self, bits: u64) -> Vec<Note> {
        let reading = self.detail.read_bits(bits, &[]);
        let mut notes = Vec::new();
        if let (true, Some(range)) = (reading.outside_range, &self.signal.range) {
            let range = with_unit(&format!("{}..{}", range.low, range.high), self.signal.unit.as_ref());
            notes.push(Note::OutsideRange { signal: self.name(), range });
        }
        match (&self.signal.role, &reading.value) {
            (_, Value::NoReading | Value::SensorFault) => {}
            (Role::Counter(counter), _) if !(counter.low..=counter.high).contains(&bits) => {
                notes.push(Note::NotACount { signal: self.name(), found: bits, low: counter.low, high: counter.high });
            }
            (Role::Value, Value::Integer(number)) if self.is_in_words() && !self.has_word(*number) => {
                notes.push(Note::NoWord { signal: self.name(), number: *number });
            }
            _ => {}
        }
        notes
    }

    /// Whether words are what the signal says: a quantity has at most some words for special values beside its numbers.
    fn is_in_words(&self) -> bool {
        let is_quantity = self.signal.unit.is_some() || self.signal.range.is_some();
        !is_quantity && self.words.iter().any(|word| word.meaning == Meaning::Reading)
    }

    fn has_word(&self, number: i128) -> bool {
        let runs = self.words.iter().filter_map(|word| word.values.numbers(self.encoding));
        runs.into_iter().any(|(first, last)| (first..=last).contains(&number))
    }

    fn in_described_unit(&self, value: &Ratio, given: Option<&Unit>) -> Result<Ratio, EncodeError> {
        let Some(given) = given.filter(|given| Some(*given) != self.signal.unit.as_ref()) else {
            return Ok(*value);
        };
        let fail = |why: String| EncodeError::Unit { signal: self.name(), unit: given.to_string(), why };
        let Some(described) = &self.signal.unit else {
            return Err(fail("it has no unit".to_owned()));
        };
        let Some((factor, offset)) = unit::conversion(given, described) else {
            return Err(fail(format!("its values are in {described}")));
        };
        let converted = value.checked_mul(&factor).and_then(|value| value.checked_add(&offset));
        converted.ok_or_else(|| fail("the converted number has too many digits to be kept exactly".to_owned()))
    }

    /// The bits nearest to a value; `raws` are the raw values that a piece of a curve has.
    fn through(&self, formula: &Affine, value: &Ratio, raws: Option<(i128, i128)>) -> Result<u64, EncodeError> {
        let Some(all) = self.encoding.integer_range() else {
            return self.float_through(formula, value);
        };
        let raws = raws.map_or(all, |(first, last)| (first.max(all.0), last.min(all.1)));
        let found = formula.raw_for_ratio(value, raws);
        if found.fit == Fit::OutOfRange {
            return Err(self.out_of_reach(value));
        }
        self.encoding.bits(Number::Integer(found.raw)).map_err(|_| self.out_of_reach(value))
    }

    fn float_through(&self, formula: &Affine, value: &Ratio) -> Result<u64, EncodeError> {
        let exact = value.checked_sub(&formula.offset()).and_then(|moved| moved.checked_div(&formula.factor()));
        let raw = exact.map_or_else(|| formula.raw_float_nearest(value.to_f64()), |raw| raw.to_f64());
        self.encoding.float_bits(raw).map(|float| float.bits).map_err(|_| self.out_of_reach(value))
    }

    fn through_curve(&self, curve: &Curve, value: &Ratio) -> Result<u64, EncodeError> {
        let pairs = || curve.points.windows(2);
        let rises = pairs().any(|pair| pair[0].value < pair[1].value);
        let falls = pairs().any(|pair| pair[0].value > pair[1].value);
        if rises && falls {
            return Err(EncodeError::CurveBothWays { signal: self.name() });
        }
        let holds = |pair: &&[wirelore_model::CurvePoint]| {
            let (from, to) = (&pair[0].value, &pair[1].value);
            from.min(to) <= value && value <= from.max(to)
        };
        let pair = pairs().find(holds).ok_or_else(|| self.out_of_reach(value))?;
        let raws = (i128::from(pair[0].raw), i128::from(pair[1].raw));
        match ExactLine::through(&pair[0], &pair[1]) {
            Some(ExactLine::Slope(formula)) => self.through(&formula, value, Some(raws)),
            Some(ExactLine::Level(_)) => self.raw_number(raws.0).ok_or_else(|| self.out_of_reach(value)),
            None => Err(EncodeError::CurveTooFine { signal: self.name() }),
        }
    }

    /// The bits of a raw number.
    fn raw_number(&self, raw: i128) -> Option<u64> {
        let number =
            if self.encoding.integer_range().is_some() { Number::Integer(raw) } else { Number::Float(raw as f64) };
        self.encoding.bits(number).ok()
    }

    /// The exact engineering value of some bits.
    fn exact(&self, bits: u64) -> Option<Ratio> {
        exact_of_bits(self.signal, self.encoding, bits)
    }

    /// Whether some bits give a value exactly; of a floating-point signal, whether they give the double nearest to it.
    fn gives_exactly(&self, bits: u64, value: &Ratio) -> bool {
        match self.exact(bits) {
            Some(exact) => exact == *value,
            None => self.detail.read_bits(bits, &[]).value.number() == Some(value.to_f64()),
        }
    }

    fn out_of_reach(&self, value: &Ratio) -> EncodeError {
        let unit = self.signal.unit.as_ref();
        let reachable = self.reachable().unwrap_or_else(|| "nothing to nothing".to_owned());
        EncodeError::OutOfReach { signal: self.name(), value: with_unit(&shown_ratio(value), unit), reachable }
    }

    /// The least and the greatest value, in words.
    fn reachable(&self) -> Option<String> {
        let unit = self.signal.unit.as_ref();
        match ends(self.signal, self.encoding, self.words) {
            Some((least, greatest)) => {
                Some(format!("{} to {}", shown_ratio(&least), with_unit(&shown_ratio(&greatest), unit)))
            }
            None if self.encoding.integer_range().is_none() => {
                Some(format!("the least to the greatest number of {} bits", self.encoding.width()))
            }
            None => None,
        }
    }

    /// The bits for a state word, or for the words that outputs have for special values.
    pub(super) fn word(&self, word: &str) -> Result<u64, EncodeError> {
        if let Some(known) = self.words.iter().find(|known| known.word == word) {
            return self
                .special(known.values.first)
                .ok_or_else(|| EncodeError::NoSuchPattern { signal: self.name(), what: "this" });
        }
        match word {
            "absent" | "no reading" => self.absent(),
            "fault" | "sensor fault" => self.fault(),
            _ => {
                let why = match self.words {
                    [] => "it is a number, and the signal has no state words".to_owned(),
                    words => suggestion(word, words.iter().map(|known| known.word.as_str())),
                };
                Err(EncodeError::NoValue { signal: self.name(), text: word.to_owned(), why })
            }
        }
    }

    /// The bits that say "no reading".
    pub(super) fn absent(&self) -> Result<u64, EncodeError> {
        self.pattern(&self.signal.absent, Meaning::Absent)
            .ok_or_else(|| EncodeError::NoSuchPattern { signal: self.name(), what: "no reading" })
    }

    /// The bits that say "sensor fault".
    pub(super) fn fault(&self) -> Result<u64, EncodeError> {
        self.pattern(&self.signal.fault, Meaning::Fault)
            .ok_or_else(|| EncodeError::NoSuchPattern { signal: self.name(), what: "sensor fault" })
    }

    /// All bits set where that says it (common practice, and SAE J1939-71 for "not available"), else the first value that does.
    fn pattern(&self, spans: &[RawSpan], meaning: Meaning) -> Option<u64> {
        let all_set = u64::MAX >> (64 - u32::from(self.encoding.width()));
        let worded = self.words.iter().filter(|word| word.meaning == meaning).map(|word| word.values);
        let spans: Vec<RawSpan> = spans.iter().copied().chain(worded).collect();
        let says_it = match self.detail.read_bits(all_set, &[]).value {
            Value::NoReading => meaning == Meaning::Absent,
            Value::SensorFault => meaning == Meaning::Fault,
            _ => false,
        };
        if says_it { Some(all_set) } else { self.special(spans.first()?.first) }
    }

    /// The bits of a raw value of the description.
    pub(super) fn special(&self, value: RawValue) -> Option<u64> {
        match value {
            RawValue::Bits(bits) => Some(bits),
            RawValue::Number(number) => self.raw_number(number.into()),
        }
    }

    /// Bits as they are.
    pub(super) fn raw(&self, bits: u64) -> Coded {
        if bits.checked_shr(self.encoding.width().into()).unwrap_or(0) == 0 {
            return Ok((bits, self.remarks(bits)));
        }
        let why = format!("it has {} bits", self.encoding.width());
        Err(EncodeError::CannotHold { signal: self.name(), what: format!("0x{bits:X}"), why })
    }
}

/// The bits of a trouble code in words.
pub(super) fn code_bits(signal: &Signal, text: &str) -> Result<u64, EncodeError> {
    let width = signal.encoding().map_or(0, |encoding| encoding.width());
    TroubleCode::bits_of(text, width).ok_or_else(|| no_code(signal, text, width))
}

/// The error for a text that is no trouble code of the signal's width.
fn no_code(signal: &Signal, text: &str, width: u8) -> EncodeError {
    let example = if width == 24 { "P0135-11" } else { "P0135" };
    let why = format!("it is a trouble code of {width} bits; write it like {example}, or its bits in hexadecimal");
    EncodeError::NoValue { signal: signal.label.name.clone(), text: text.to_owned(), why }
}

/// A number for people: decimal where that is exact, else the nearest double.
fn shown_ratio(value: &Ratio) -> String {
    let exact = value.to_string();
    if exact.contains('/') { value.to_f64().to_string() } else { exact }
}

fn with_unit(number: &str, unit: Option<&Unit>) -> String {
    match unit {
        Some(unit) => format!("{number} {unit}"),
        None => number.to_owned(),
    }
}

/// The bytes of a text.
pub(super) fn text_bytes(signal: &Signal, text: &str, charset: Charset) -> Result<Vec<u8>, EncodeError> {
    let byte = |character: char| match charset {
        Charset::Ascii if !character.is_ascii() => None,
        _ => u8::try_from(u32::from(character)).ok(),
    };
    if charset == Charset::Utf8 {
        return Ok(text.as_bytes().to_vec());
    }
    text.chars()
        .map(|character| {
            byte(character).ok_or_else(|| EncodeError::CannotHold {
                signal: signal.label.name.clone(),
                what: format!("the character `{character}`"),
                why: if charset == Charset::Ascii { "it is ASCII" } else { "it is Latin-1 (ISO 8859-1)" }.to_owned(),
            })
        })
        .collect()
}
