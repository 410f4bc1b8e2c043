//! Every signal by its name, for those who list them all.

use crate::docs::literal;
use crate::meaning::Meanings;
use crate::plan::{FramePlan, Group, Switch};
use crate::signal::{Field, Value};
use crate::writer::Writer;

/// The method that tells what each signal of a group says.
pub(crate) fn write(writer: &mut Writer, plan: &FramePlan<'_>, group: &Group<'_>) {
    let mut body = Writer::deeper(writer);
    for field in &group.fields {
        write_field(&mut body, plan, group, field);
    }
    for switch in &group.switches {
        match switch {
            Switch::Pages(pages) => {
                body.open(format!("match &self.{} {{", pages.field));
                for (variant, _) in &pages.pages {
                    body.arm(&format!("{}::{variant}(page)", pages.enum_name), "page.each(tell)");
                }
                body.line(format!("{}::NoPage => {{}}", pages.enum_name));
                body.close("}");
            }
            Switch::Single { field, .. } => {
                body.open(format!("if let Some(element) = &self.{field} {{"));
                body.line("element.each(tell);");
                body.close("}");
            }
            Switch::Repeated(repeat) => {
                body.line(format!("let elements = self.{}.iter();", repeat.field));
                body.open("for (index, element) in elements.enumerate() {");
                body.line("element.each(&mut |name, said| tell(name.in_element(index), said));");
                body.close("}");
            }
        }
    }
    let text = body.finish();
    let unused = if text.is_empty() { "_" } else { "" };
    writer.gap();
    writer.line("/// Tells what each signal says, by its name in the description.");
    let tell = format!("{unused}tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)");
    writer.function_with("pub fn each", &["&self", &tell], "", &text);
}

/// Names of more letters stand on lines of their own.
const LONG_NAME: usize = 20;

fn write_field(writer: &mut Writer, plan: &FramePlan<'_>, group: &Group<'_>, field: &Field<'_>) {
    let meanings = Meanings::new(field, plan.outside());
    let own = format!("self.{}", field.name);
    let is_state = matches!(field.value, Value::State { .. });
    let said = if meanings.has_method() { format!("{own}()") } else { own.clone() };
    let is_reading = meanings.has_method() && is_state;
    let from = if matches!(field.value, Value::Bytes { charset: None, .. }) { "bytes" } else { "from" };
    let raw = match (is_state, is_reading) {
        (false, _) => None,
        (true, false) => Some("raw()"),
        (true, true) => Some("map(|state| state.raw())"),
    };
    if field.is_optional {
        writer.open(format!("if let Some(said) = {said} {{"));
    } else if raw.is_some() || said.len() > LONG_NAME {
        writer.line(format!("let said = {said};"));
    }
    if let Some(raw) = raw {
        writer.line(format!("let said = said.{raw};"));
    }
    let is_short = !field.is_optional && raw.is_none() && said.len() <= LONG_NAME;
    writer.line(format!("let said = typed::Said::{from}({});", if is_short { &said } else { "said" }));
    let state = if is_state { Some(own) } else { meanings.state_method().map(|method| format!("self.{method}()")) };
    if let Some(state) = state {
        writer.line(format!("let state = {state};"));
        let word = if field.is_optional { "and_then(|state| state.word())" } else { "word()" };
        writer.line(format!("let said = said.word(state.{word});"));
    }
    if let Some(method) = meanings.outside_method() {
        writer.line(format!("let is_outside = self.{method}();"));
        writer.line("let said = said.outside(is_outside);");
    }
    let name = field.signal.label.name.as_str();
    let bare = if group.base > 0 { name.split('[').next().unwrap_or(name) } else { name };
    writer.line(format!("let name = typed::Name::of({});", literal(bare)));
    writer.line("tell(name, said);");
    if field.is_optional {
        writer.close("}");
    }
}
