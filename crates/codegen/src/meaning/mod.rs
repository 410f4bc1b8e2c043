//! What fields mean: methods that turn raw numbers into values, and the way back.

mod beside;
mod odd_numbers;

use wirelore_bits::Affine;
use wirelore_model::{Charset, Curve, Scaling};

use crate::classes::{Line, Run, Span, Standing, runs};
use crate::docs::inline;
use crate::number::{Scaled, covers, double, pattern, scaled, widened};
use crate::signal::{Field, Value};
use crate::writer::Writer;

/// What the methods of one field stand on.
pub(crate) struct Meanings<'f, 'd> {
    field: &'f Field<'d>,
    /// In front of the types that stand beside the frames.
    outside: &'f str,
    runs: Vec<Run>,
}

impl<'f, 'd> Meanings<'f, 'd> {
    pub(crate) fn new(field: &'f Field<'d>, outside: &'f str) -> Self {
        let encoding = field.signal.encoding().filter(|encoding| encoding.integer_range().is_some());
        let runs = encoding.map_or_else(Vec::new, |encoding| runs(field.context.database, field.signal, encoding));
        Self { field, outside, runs }
    }

    /// The reasons why something that the description says is not there, each a sentence.
    pub(crate) fn left_out(&self) -> Vec<&'static str> {
        let words = !self.field.context.database.words(self.field.signal).is_empty();
        let curve = match &self.field.signal.scaling {
            Scaling::Curve(_) if self.is_odd_number() => {
                Some("No method gives its value: sensor curves of decimal and floating-point numbers are not written.")
            }
            Scaling::Curve(curve) if lines(curve).is_none() => {
                Some("No method gives its value: its curve is too fine for exact fractions.")
            }
            _ => None,
        };
        let unnamed = words && self.field.states.is_none();
        let words = unnamed.then_some("Its state words have no enum: its bits are no whole binary number.");
        curve.into_iter().chain(words).collect()
    }

    pub(crate) fn write(&self, writer: &mut Writer) {
        match &self.field.value {
            Value::Flag => {}
            Value::Bytes { charset, .. } => {
                if let Some(charset) = charset {
                    self.write_text(writer, *charset);
                }
            }
            Value::Float { .. } => self.write_float(writer),
            Value::Digits { encoding, int_type } => self.write_digits(writer, encoding, int_type),
            Value::Number { encoding, int_type } => {
                self.write_whole(writer, int_type);
                self.write_setter(writer, encoding, int_type);
                self.write_outside(writer, int_type);
                self.write_state(writer, int_type);
                self.write_next(writer, int_type);
            }
            Value::State { states, .. } => {
                self.write_whole(writer, states.raw_type());
                self.write_outside(writer, states.raw_type());
            }
        }
    }

    /// A number that is no whole binary one.
    fn is_odd_number(&self) -> bool {
        matches!(self.field.value, Value::Float { .. } | Value::Digits { .. })
    }

    /// Whether a method of the field's name gives what it means.
    pub(crate) fn has_method(&self) -> bool {
        let is_raw = self.field.signal.scaling == Scaling::Raw;
        match &self.field.value {
            Value::Flag => false,
            Value::Bytes { charset, .. } => charset.is_some(),
            Value::Float { .. } => match self.field.signal.scaling {
                Scaling::Affine(_) => true,
                _ => is_raw && !self.float_marks().is_empty(),
            },
            Value::Digits { .. } => is_raw || matches!(self.field.signal.scaling, Scaling::Affine(_)),
            Value::Number { int_type, .. } => {
                self.value(int_type).is_some() && (!is_raw || self.special().next().is_some())
            }
            Value::State { .. } => self.special().next().is_some(),
        }
    }

    /// The method that gives the state beside a value.
    pub(crate) fn state_method(&self) -> Option<&str> {
        let has_one = self.field.states.is_some() && matches!(self.field.value, Value::Number { .. });
        has_one.then_some(&*self.field.methods.state)
    }

    /// The method that tells whether the value lies outside its range.
    pub(crate) fn outside_method(&self) -> Option<&str> {
        let is_plain = matches!(self.field.signal.scaling, Scaling::Raw | Scaling::Affine(_));
        let can_tell = is_plain || !self.is_odd_number();
        let has_one = self.field.signal.range.is_some() && can_tell;
        has_one.then_some(&*self.field.methods.is_outside)
    }

    fn special(&self) -> impl Iterator<Item = &Run> {
        self.runs.iter().filter(|run| run.standing != Standing::Reading)
    }

    fn method(&self, writer: &mut Writer, what: &str, result: &str) {
        writer.gap();
        writer.line(format!("/// {what}"));
        writer.line("#[must_use]");
        let result = if self.field.is_optional { format!("Option<{result}>") } else { result.to_owned() };
        writer.function(&format!("pub fn {}", self.field.name), &["&self"], &result);
    }

    fn unit(&self) -> String {
        self.field.signal.unit.as_ref().map_or(String::new(), |unit| format!(" in {}", inline(unit.as_str())))
    }

    fn write_text(&self, writer: &mut Writer, charset: Charset) {
        let charset = match charset {
            Charset::Ascii => "Ascii",
            Charset::Latin1 => "Latin1",
            Charset::Utf8 => "Utf8",
        };
        self.method(writer, "The characters, without the NUL bytes at their end.", "typed::Text<'a>");
        let text = |bytes: &str| format!("typed::Text::new({bytes}, typed::Charset::{charset})");
        let field = format!("self.{}", self.field.name);
        if self.field.is_optional {
            writer.line(format!("let value = {field}?;"));
            writer.line(format!("Some({})", text("value")));
        } else {
            writer.line(text(&field));
        }
        writer.close("}");
    }

    /// The value of a whole number.
    fn write_whole(&self, writer: &mut Writer, int_type: &str) {
        let Some((result, value)) = self.value(int_type) else { return };
        let is_curve = matches!(self.field.signal.scaling, Scaling::Curve(_));
        let is_code = self.field.signal.scaling == Scaling::TroubleCode;
        let has_special = self.special().next().is_some();
        let is_raw = self.field.signal.scaling == Scaling::Raw;
        if is_raw && !has_special {
            return;
        }
        let what = match self.field.signal.scaling {
            Scaling::Raw => "What the raw number says.".to_owned(),
            Scaling::TroubleCode => "The trouble code.".to_owned(),
            _ => format!("The value{}.", self.unit()),
        };
        if !is_curve && !is_code && !has_special {
            self.method(writer, &what, &result);
            self.write_bare(writer, int_type, &value);
            writer.close("}");
            return;
        }
        self.method(writer, &what, &format!("typed::Reading<{result}>"));
        if is_code && !has_special {
            let field = format!("self.{}", self.field.name);
            writer.line(format!("let raw = {field}{};", if self.field.is_optional { "?" } else { "" }));
            writer.line(&value);
            let reading = "code.map_or(typed::Reading::Undefined, typed::Reading::Value)";
            writer.line(if self.field.is_optional { format!("Some({reading})") } else { reading.to_owned() });
            writer.close("}");
            return;
        }
        self.write_match(writer, int_type, &value);
        writer.close("}");
    }

    /// A value that every raw number has.
    fn write_bare(&self, writer: &mut Writer, int_type: &str, value: &str) {
        let field = format!("self.{}", self.field.name);
        if self.field.is_optional {
            writer.assign("let value", &format!("|raw: {int_type}| {value}"));
            writer.line(format!("let raw = {field};"));
            writer.line("raw.map(value)");
        } else {
            writer.line(format!("let raw = {field};"));
            writer.line(value);
        }
    }

    fn write_match(&self, writer: &mut Writer, int_type: &str, value: &str) {
        let is_state = matches!(self.field.value, Value::State { .. });
        let field = if self.field.is_optional {
            writer.line(format!("let value = self.{}?;", self.field.name));
            "value".to_owned()
        } else {
            format!("self.{}", self.field.name)
        };
        let raw = if is_state { format!("{field}.raw()") } else { field.clone() };
        writer.open(if self.field.is_optional { format!("Some(match {raw} {{") } else { format!("match {raw} {{") });
        let mut covered: Vec<Span> = Vec::new();
        for run in self.special() {
            let reading = if run.standing == Standing::Absent { "NoReading" } else { "Fault" };
            writer.line(format!("{} => typed::Reading::{reading},", pattern(run.span)));
            covered.push(run.span);
        }
        if let Scaling::Curve(curve) = &self.field.signal.scaling {
            self.write_curve(writer, curve, &mut covered, int_type);
        } else if !covers(covered, int_type) {
            match (is_state, self.field.signal.scaling == Scaling::TroubleCode) {
                (true, _) => writer.line(format!("_ => typed::Reading::Value({field}),")),
                (_, true) => {
                    writer.open("raw => {");
                    writer.line(value);
                    writer.line("code.map_or(typed::Reading::Undefined, typed::Reading::Value)");
                    writer.close("}");
                }
                _ => writer.line(format!("raw => typed::Reading::Value({value}),")),
            }
        }
        writer.close(if self.field.is_optional { "})" } else { "}" });
    }

    /// A pattern for each piece of a curve, less the special values, which come first.
    fn write_curve(&self, writer: &mut Writer, curve: &Curve, covered: &mut Vec<Span>, int_type: &str) {
        let readings: Vec<Span> =
            self.runs.iter().filter(|run| run.standing == Standing::Reading).map(|run| run.span).collect();
        let Some(lines) = lines(curve) else { return };
        let last = lines.len() - 1;
        for (at, (line, (first, end))) in lines.iter().enumerate() {
            let piece = (*first, if at == last { *end } else { *end - 1 });
            for span in readings.iter().filter_map(|run| common(*run, piece)) {
                covered.push(span);
                let value = match line {
                    Line::Level(value) => double(value.to_f64()),
                    Line::Slope(formula) => formula_of(formula, "raw", int_type),
                };
                let binding = if matches!(line, Line::Level(_)) { "" } else { "raw @ " };
                let pattern =
                    if binding.is_empty() || span.0 == span.1 { pattern(span) } else { format!("({})", pattern(span)) };
                let pattern = format!("{binding}{pattern}");
                writer.open(format!("{pattern} => {{"));
                writer.line(format!("let value = {value};"));
                writer.line("typed::Reading::Value(value)");
                writer.close("}");
            }
        }
        if !covers(covered.iter().copied(), int_type) {
            writer.line("_ => typed::Reading::Undefined,");
        }
    }

    /// The type of the value, and the value of `raw`; `None`: there is no method.
    fn value(&self, int_type: &str) -> Option<(String, String)> {
        Some(match &self.field.signal.scaling {
            Scaling::Affine(formula) => ("f64".to_owned(), self.affine(formula, int_type)),
            Scaling::Curve(curve) => {
                lines(curve)?;
                ("f64".to_owned(), String::new())
            }
            Scaling::TroubleCode => {
                let bits = widened("raw", int_type, "u64");
                let width = self.field.signal.encoding()?.width();
                let code = format!("let code = wirelore_bits::TroubleCode::of_bits({bits}, {width});");
                ("wirelore_bits::TroubleCode".to_owned(), code)
            }
            Scaling::Raw => match &self.field.value {
                Value::State { .. } => (self.field.value_type(self.outside), String::new()),
                _ => (int_type.to_owned(), "raw".to_owned()),
            },
        })
    }

    fn affine(&self, formula: &Affine, int_type: &str) -> String {
        match scaled(formula, "raw", int_type) {
            Scaled::Plain(text) => text,
            Scaled::Wide => format!("Self::{}.of(i128::from(raw))", self.formula_name()),
        }
    }

    fn formula_name(&self) -> String {
        self.field.at.replacen("AT_", "FORMULA_", 1)
    }
}

fn formula_of(formula: &Affine, raw: &str, int_type: &str) -> String {
    match scaled(formula, raw, int_type) {
        Scaled::Plain(text) => text,
        Scaled::Wide => {
            let (factor, offset, denominator) =
                (formula.factor_numerator(), formula.offset_numerator(), formula.denominator());
            format!("typed::Formula::new({factor}, {offset}, {denominator}).of(i128::from({raw}))")
        }
    }
}

/// The pieces of a curve between their raw numbers; `None` where one cannot be held exactly.
fn lines(curve: &Curve) -> Option<Vec<(Line, Span)>> {
    let piece = |pair: &[wirelore_model::CurvePoint]| {
        Some((Line::through(&pair[0], &pair[1])?, (pair[0].raw.into(), pair[1].raw.into())))
    };
    let lines = curve.points.windows(2).map(piece).collect::<Option<Vec<_>>>()?;
    (!lines.is_empty()).then_some(lines)
}

fn common(one: Span, other: Span) -> Option<Span> {
    let span = (one.0.max(other.0), one.1.min(other.1));
    (span.0 <= span.1).then_some(span)
}
