//! Signals of a flat table: where they are, what their raw values are, and how those are scaled.

use wirelore_bits::{BitPosition, Encoding, typed};
use wirelore_lorec::layout::{CHARSETS, NONE, NUMBER_KINDS, Section, class, content, line, scale};
use wirelore_model::{Charset, Content, Curve, Meaning, RawSpan, Scaling, Signal, SignalId};

use super::FrameWriter;
use super::sections::two_words;
use crate::plan::{ExactLine, FloatSpan, Standing, class_runs};

impl FrameWriter<'_> {
    /// Appends a signal; fails where its curve cannot be held exactly.
    pub(super) fn signal(&mut self, id: SignalId, places: &[u32]) -> Result<(), ()> {
        let frame = self.frame;
        let signal = &frame[id];
        let place_of = |size: Option<SignalId>| size.map_or(NONE, |size| places[size.index()]);
        let [kind, first, second, third, size] = match &signal.content {
            Content::Number { field, kind } => {
                let first = self.sections.count(Section::Pieces);
                let flat = |position: BitPosition| position.byte * 8 + u32::from(position.bit);
                for piece in field.places() {
                    self.sections.push(Section::Pieces, [flat(piece.msb()), flat(piece.lsb())]);
                }
                [content::NUMBER, first, field.places().len() as u32, place_in(&NUMBER_KINDS, kind), NONE]
            }
            Content::Text { bytes, charset, size } => [
                content::TEXT,
                bytes.first,
                bytes.last.unwrap_or(NONE),
                place_in(&CHARSETS, &typed(*charset)),
                place_of(*size),
            ],
            Content::Bytes { bytes, size } => {
                [content::BYTES, bytes.first, bytes.last.unwrap_or(NONE), 0, place_of(*size)]
            }
        };
        let scaling = self.scaling(&signal.scaling).ok_or(())?;
        let first_class = self.sections.count(Section::Classes);
        match signal.encoding() {
            Some(encoding) if encoding.integer_range().is_some() => self.whole_classes(signal, encoding),
            Some(_) => self.float_classes(signal),
            None => {}
        }
        let classes = [first_class, self.sections.count(Section::Classes) - first_class];
        let name = self.sections.text(&signal.label.name);
        let unit = self.sections.text(signal.unit.as_ref().map_or("", |unit| unit.as_str()));
        let record = [
            name[0], name[1], unit[0], unit[1], id.0, kind, first, second, third, size, scaling[0], scaling[1],
            scaling[2], classes[0], classes[1],
        ];
        self.sections.push(Section::Signals, record);
        Ok(())
    }

    fn scaling(&mut self, scaling: &Scaling) -> Option<[u32; 3]> {
        Some(match scaling {
            Scaling::Raw => [scale::RAW, 0, 0],
            Scaling::Affine(formula) => [scale::FORMULA, self.sections.formula(formula), 1],
            Scaling::Curve(curve) => self.curve(curve)?,
            Scaling::TroubleCode => [scale::TROUBLE_CODE, 0, 0],
        })
    }

    fn curve(&mut self, curve: &Curve) -> Option<[u32; 3]> {
        let first = self.sections.count(Section::Points);
        for (at, point) in curve.points.iter().enumerate() {
            let [kind, one, other] = match curve.points.get(at + 1) {
                None => [line::END, 0, 0],
                Some(next) => match ExactLine::through(point, next)? {
                    ExactLine::Level(value) => {
                        let [low, high] = two_words(value.to_f64().to_bits());
                        [line::LEVEL, low, high]
                    }
                    ExactLine::Slope(formula) => [line::SLOPE, self.sections.formula(&formula), 0],
                },
            };
            let [low, high] = two_words(point.raw as u64);
            self.sections.push(Section::Points, [low, high, kind, one, other]);
        }
        Some([scale::CURVE, first, curve.points.len() as u32])
    }

    fn whole_classes(&mut self, signal: &Signal, encoding: Encoding) {
        let words = self.database.words(signal);
        let runs = class_runs(signal, encoding, words);
        let least = encoding.integer_range().map_or(0, |(least, _)| least);
        // One run of plain readings need not be said.
        if let [only] = runs.as_slice()
            && only.what == Default::default()
        {
            return;
        }
        for run in runs {
            let outside = if run.what.outside_range { class::OUTSIDE } else { 0 };
            let word = run.what.word.and_then(|index| words.get(index as usize)).map_or("", |word| word.word.as_str());
            let [start, length] = self.sections.text(word);
            let [low, high] = two_words((run.first - least) as u64);
            let kind = standing_number(run.what.standing) | outside;
            self.sections.push(Section::Classes, [low, high, kind, start, length, 0, 0]);
        }
    }

    /// In the order in which the decoder asks for them.
    fn float_classes(&mut self, signal: &Signal) {
        for span in &signal.absent {
            self.float_class(span, class::ABSENT, "");
        }
        for span in &signal.fault {
            self.float_class(span, class::FAULT, "");
        }
        for word in self.database.words(signal) {
            let kind = match word.meaning {
                Meaning::Reading => class::READING,
                Meaning::Absent => class::ABSENT,
                Meaning::Fault => class::FAULT,
            };
            self.float_class(&word.values, kind, &word.word);
        }
        if let Some(range) = &signal.range {
            let [low, high] = [&range.low, &range.high].map(|end| two_words(end.to_f64().to_bits()));
            self.sections.push(Section::Classes, [low[0], low[1], class::RANGE, 0, 0, high[0], high[1]]);
        }
    }

    fn float_class(&mut self, span: &RawSpan, kind: u32, word: &str) {
        let (kind, first, last) = match FloatSpan::new(span) {
            Some(FloatSpan::Bits(first, last)) => (kind | class::BITS, first, last),
            Some(FloatSpan::Numbers(first, last)) => (kind, first.to_bits(), last.to_bits()),
            None => return,
        };
        let [start, length] = self.sections.text(word);
        let ([low, high], [last_low, last_high]) = (two_words(first), two_words(last));
        self.sections.push(Section::Classes, [low, high, kind, start, length, last_low, last_high]);
    }
}

fn standing_number(standing: Standing) -> u32 {
    match standing {
        Standing::Reading => class::READING,
        Standing::Absent => class::ABSENT,
        Standing::Fault => class::FAULT,
        Standing::BeyondCurve => class::BEYOND_CURVE,
    }
}

/// The number of a kind of numbers, or of a character set, in its list.
fn place_in<T: PartialEq>(list: &[T], wanted: &T) -> u32 {
    list.iter().position(|known| known == wanted).map_or(NONE, |place| place as u32)
}

fn typed(charset: Charset) -> typed::Charset {
    match charset {
        Charset::Ascii => typed::Charset::Ascii,
        Charset::Latin1 => typed::Charset::Latin1,
        Charset::Utf8 => typed::Charset::Utf8,
    }
}
