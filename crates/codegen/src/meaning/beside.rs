//! The methods beside that which gives a value: the way back, the range, the state, the next count.

use wirelore_bits::Encoding;
use wirelore_model::{Role, Scaling};

use super::Meanings;
use crate::classes::{Span, first_wins};
use crate::number::{pattern, type_range};
use crate::signal::Value;
use crate::writer::Writer;

impl Meanings<'_, '_> {
    /// The constant that setters and wide formulas need.
    pub(crate) fn write_constant(&self, writer: &mut Writer) {
        if let (Scaling::Affine(formula), Value::Number { .. } | Value::Float { .. } | Value::Digits { .. }) =
            (&self.field.signal.scaling, &self.field.value)
        {
            let numbers = [
                formula.factor_numerator().to_string(),
                formula.offset_numerator().to_string(),
                formula.denominator().to_string(),
            ];
            writer.assign(
                &format!("const {}: typed::Formula", self.formula_name()),
                &format!("typed::Formula::new({})", numbers.join(", ")),
            );
        }
    }

    pub(super) fn write_setter(&self, writer: &mut Writer, encoding: &Encoding, int_type: &str) {
        let (Scaling::Affine(_), Some((least, greatest))) = (&self.field.signal.scaling, encoding.integer_range())
        else {
            return;
        };
        let name = &self.field.methods.set;
        writer.gap();
        writer.line(format!("/// Sets `{}` to the raw number nearest to a value{}.", self.field.name, self.unit()));
        writer.line("///");
        writer.line("/// What no raw number can say (`OutOfRange`) leaves it as it is.");
        writer.line("#[must_use]");
        writer.function(&format!("pub fn {name}"), &["&mut self", "value: f64"], "wirelore_bits::Fit");
        writer.line(format!("let range = ({least}, {greatest});"));
        let special: Vec<(Span, ())> = self.special().map(|run| (run.span, ())).collect();
        let special: Vec<String> = first_wins(&special).into_iter().map(|(span, ())| pattern(span)).collect();
        let is_value = if special.is_empty() {
            "|_: i128| true".to_owned()
        } else {
            format!("|raw: i128| !matches!(raw, {})", special.join(" | "))
        };
        writer.assign("let is_value", &is_value);
        let formula = format!("Self::{}", self.formula_name());
        if self.field.is_optional {
            writer.line(format!("let mut raw: {int_type} = 0;"));
            writer.line(format!("let formula = {formula};"));
            writer.line("let fit = typed::set(&mut raw, value, formula, range, is_value);");
            writer.open("if fit != wirelore_bits::Fit::OutOfRange {");
            writer.line(format!("self.{} = Some(raw);", self.field.name));
            writer.close("}");
            writer.line("fit");
        } else {
            writer.line(format!("let formula = {formula};"));
            writer.line(format!("let raw = &mut self.{};", self.field.name));
            writer.line("typed::set(raw, value, formula, range, is_value)");
        }
        writer.close("}");
    }

    /// Whether the value lies outside the stated range.
    pub(super) fn write_outside(&self, writer: &mut Writer, int_type: &str) {
        if self.field.signal.range.is_none() {
            return;
        }
        let outside: Vec<Span> = self.runs.iter().filter(|run| run.is_outside).map(|run| run.span).collect();
        let raw = if matches!(self.field.value, Value::State { .. }) { "raw.raw()" } else { "raw" };
        let test = if outside.is_empty() || outside == [type_range(int_type)] {
            format!("{}", !outside.is_empty())
        } else {
            let patterns: Vec<String> = outside.into_iter().map(pattern).collect();
            format!("matches!({raw}, {})", patterns.join(" | "))
        };
        let Some(range) = &self.field.signal.range else { return };
        let name = &self.field.methods.is_outside;
        let (field, value_type) = (&self.field.name, self.field.value_type(self.outside));
        writer.gap();
        writer.line(format!(
            "/// Whether the value lies outside its range, {} to {}{}.",
            range.low,
            range.high,
            self.unit()
        ));
        writer.line("#[must_use]");
        writer.function(&format!("pub fn {name}"), &["&self"], "bool");
        match (self.field.is_optional, test.as_str()) {
            (_, "false") | (false, "true") => writer.line(test),
            (true, "true") => writer.line(format!("self.{field}.is_some()")),
            (true, _) => {
                writer.assign("let is_outside", &format!("|raw: {value_type}| {test}"));
                writer.line(format!("let raw = self.{field};"));
                writer.line("raw.is_some_and(is_outside)");
            }
            (false, _) => {
                writer.line(format!("let raw = self.{field};"));
                writer.line(test);
            }
        }
        writer.close("}");
    }

    /// The state beside a value that has a formula.
    pub(super) fn write_state(&self, writer: &mut Writer, int_type: &str) {
        let Some(states) = self.field.states else { return };
        let name = &self.field.methods.state;
        let path = format!("{}{}", self.outside, states.name);
        writer.gap();
        writer.line("/// The state word of the raw number.");
        writer.line("#[must_use]");
        let result = if self.field.is_optional { format!("Option<{path}>") } else { path.clone() };
        writer.function(&format!("pub fn {name}"), &["&self"], &result);
        let raw =
            if int_type == states.raw_type() { "raw".to_owned() } else { format!("{}::from(raw)", states.raw_type()) };
        if self.field.is_optional {
            writer.line(format!("let raw = self.{}?;", self.field.name));
            writer.line(format!("Some({path}::from_raw({raw}))"));
        } else {
            writer.line(format!("let raw = self.{};", self.field.name));
            writer.line(format!("{path}::from_raw({raw})"));
        }
        writer.close("}");
    }

    /// The count behind a count.
    pub(super) fn write_next(&self, writer: &mut Writer, int_type: &str) {
        let (low, high, step) = match &self.field.signal.role {
            Role::Counter(counter) => (counter.low, counter.high, counter.step),
            Role::Protection(protection) => (0, protection.profile.last_count().into(), 1),
            Role::Value | Role::Checksum(_) => return,
        };
        if int_type.starts_with('i') {
            return;
        }
        let name = &self.field.methods.next;
        writer.gap();
        writer.line("/// The count of the next frame, behind this one; behind what is no count, the first one.");
        writer.line("#[must_use]");
        writer.function(&format!("pub const fn {name}"), &[&format!("before: {int_type}")], int_type);
        let before = if int_type == "u64" { "before" } else { "before as u64" };
        writer.call(
            "let next = typed::next_count",
            &[before, &low.to_string(), &high.to_string(), &step.to_string()],
            ";",
        );
        writer.line(if int_type == "u64" { "next".to_owned() } else { format!("next as {int_type}") });
        writer.close("}");
    }
}
