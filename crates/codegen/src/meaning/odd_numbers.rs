//! Numbers that are no whole binary ones: decimal digits and floating-point numbers.

use wirelore_bits::Encoding;
use wirelore_model::{Meaning, RawSpan, RawValue, Scaling};

use super::Meanings;
use crate::classes::Standing;
use crate::number::{double, number, pattern, widened};
use crate::writer::Writer;

impl Meanings<'_, '_> {
    /// Decimal digits: not all bits are some.
    pub(super) fn write_digits(&self, writer: &mut Writer, encoding: &Encoding, int_type: &str) {
        let formula = match &self.field.signal.scaling {
            Scaling::Affine(formula) => Some(formula),
            Scaling::Raw => None,
            Scaling::Curve(_) | Scaling::TroubleCode => return,
        };
        let result = if formula.is_some() { "typed::Reading<f64>" } else { "typed::Reading<u64>" };
        self.method(writer, &format!("The value{} of the digits.", self.unit()), result);
        let value = if self.field.is_optional { "value".to_owned() } else { format!("self.{}", self.field.name) };
        if self.field.is_optional {
            writer.line(format!("let value = self.{}?;", self.field.name));
        }
        writer.line(format!("let bits = {};", widened(&value, int_type, "u64")));
        let text = format!("match typed::digits(bits, {}) {{", encoding.width());
        writer.open(if self.field.is_optional { format!("Some({text}") } else { text });
        writer.line("None => typed::Reading::Undefined,");
        for run in self.special() {
            let reading = if run.standing == Standing::Absent { "NoReading" } else { "Fault" };
            writer.line(format!("Some({}) => typed::Reading::{reading},", pattern(run.span)));
        }
        let scaled =
            formula.map_or_else(|| "raw".to_owned(), |_| format!("Self::{}.of(i128::from(raw))", self.formula_name()));
        writer.line(format!("Some(raw) => typed::Reading::Value({scaled}),"));
        writer.close(if self.field.is_optional { "})" } else { "}" });
        writer.close("}");
        self.write_digits_outside(writer, encoding, int_type);
    }

    pub(super) fn write_digits_outside(&self, writer: &mut Writer, encoding: &Encoding, int_type: &str) {
        let Some(range) = &self.field.signal.range else { return };
        let outside: Vec<String> = self.runs.iter().filter(|run| run.is_outside).map(|run| pattern(run.span)).collect();
        writer.gap();
        writer.line(format!(
            "/// Whether the value lies outside its range, {} to {}{}.",
            range.low,
            range.high,
            self.unit()
        ));
        writer.line("#[must_use]");
        writer.function(&format!("pub fn {}", self.field.methods.is_outside), &["&self"], "bool");
        if outside.is_empty() {
            writer.line("false");
        } else {
            let default = if self.field.is_optional { ".unwrap_or(0xF)" } else { "" };
            writer.line(format!("let bits = self.{}{default};", self.field.name));
            writer.line(format!(
                "let number = typed::digits({}, {});",
                widened("bits", int_type, "u64"),
                encoding.width()
            ));
            writer.assign("let is_outside", &format!("|raw: u64| matches!(raw, {})", outside.join(" | ")));
            writer.line("number.is_some_and(is_outside)");
        }
        writer.close("}");
    }

    pub(super) fn write_float(&self, writer: &mut Writer) {
        let formula = match &self.field.signal.scaling {
            Scaling::Affine(_) => Some(format!("Self::{}.of_float(value)", self.formula_name())),
            Scaling::Raw => None,
            Scaling::Curve(_) | Scaling::TroubleCode => return,
        };
        let marks = self.float_marks();
        let value = formula.clone().unwrap_or_else(|| "value".to_owned());
        let field = format!("self.{}{}", self.field.name, if self.field.is_optional { "?" } else { "" });
        let wrapped = |text: &str| if self.field.is_optional { format!("Some({text})") } else { text.to_owned() };
        if !marks.is_empty() {
            self.method(writer, &format!("The value{}.", self.unit()), "typed::Reading<f64>");
            writer.line(format!("let value = {field};"));
            if marks.iter().any(|(test, _)| test.contains("bits")) {
                let width = self.field.signal.encoding().map_or(64, |encoding| encoding.width());
                writer.line(format!("let bits = typed::float_bits(value, {width}, \"\").ok();"));
            }
            for (test, reading) in &marks {
                writer.open(format!("if {test} {{"));
                writer.line(format!("return {};", wrapped(&format!("typed::Reading::{reading}"))));
                writer.close("}");
            }
            writer.line(wrapped(&format!("typed::Reading::Value({value})")));
            writer.close("}");
        } else if formula.is_some() {
            self.method(writer, &format!("The value{}.", self.unit()), "f64");
            writer.line(format!("let value = {field};"));
            writer.line(wrapped(&value));
            writer.close("}");
        }
        let Some(range) = &self.field.signal.range else { return };
        let (low, high) = (double(range.low.to_f64()), double(range.high.to_f64()));
        let name = &self.field.name;
        let value = match (marks.is_empty(), formula.is_some()) {
            (false, _) => format!("self.{name}().value()"),
            (true, true) => format!("Some(self.{name}())"),
            (true, false) => format!("Some(self.{name})"),
        };
        let value = match (self.field.is_optional, marks.is_empty(), formula.is_some()) {
            (false, ..) => value,
            (true, false, _) => format!("self.{name}().and_then(typed::Reading::value)"),
            (true, true, true) => format!("self.{name}()"),
            (true, true, false) => format!("self.{name}"),
        };
        let is_outside = &self.field.methods.is_outside;
        writer.gap();
        writer.line(format!(
            "/// Whether the value lies outside its range, {} to {}{}.",
            range.low,
            range.high,
            self.unit()
        ));
        writer.line("#[must_use]");
        writer.function(&format!("pub fn {is_outside}"), &["&self"], "bool");
        writer.line(format!("let value = {value};"));
        writer.line(format!("value.is_some() && !typed::within(value, {low}, {high})"));
        writer.close("}");
    }

    /// The tests that tell special floating-point numbers, in the order in which they count.
    pub(super) fn float_marks(&self) -> Vec<(String, &'static str)> {
        let signal = self.field.signal;
        let words = self.field.context.database.words(signal).iter();
        let worded = words.filter_map(|word| match word.meaning {
            Meaning::Absent => Some((&word.values, "NoReading")),
            Meaning::Fault => Some((&word.values, "Fault")),
            Meaning::Reading => None,
        });
        let absent = signal.absent.iter().map(|span| (span, "NoReading"));
        let fault = signal.fault.iter().map(|span| (span, "Fault"));
        absent.chain(fault).chain(worded).filter_map(|(span, reading)| Some((float_test(span)?, reading))).collect()
    }
}

fn float_test(span: &RawSpan) -> Option<String> {
    match (span.first, span.last) {
        (RawValue::Bits(first), RawValue::Bits(last)) => {
            Some(format!("typed::within(bits, {}, {})", number(first.into()), number(last.into())))
        }
        (RawValue::Number(first), RawValue::Number(last)) => {
            Some(format!("typed::within(Some(value), {}, {})", double(first as f64), double(last as f64)))
        }
        _ => None,
    }
}
