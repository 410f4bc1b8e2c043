//! A group of fields as a struct: what it reads, what it writes, how long it is.

use wirelore_model::{Frame, SignalId};

use crate::checks::Checked;
use crate::docs::{Doc, literal};
use crate::each;
use crate::meaning::Meanings;
use crate::pages;
use crate::plan::{FramePlan, Group, Mode, Repeat, Switch, lifetime};
use crate::signal::Value;
use crate::writer::Writer;

/// Methods that clippy takes for those of a trait, or for conversions.
const ODD_METHODS: [&str; 26] = [
    "add",
    "as_mut",
    "as_ref",
    "bitand",
    "bitor",
    "bitxor",
    "borrow",
    "borrow_mut",
    "cmp",
    "default",
    "deref",
    "deref_mut",
    "div",
    "drop",
    "from_iter",
    "from_str",
    "hash",
    "index",
    "index_mut",
    "into_iter",
    "mul",
    "neg",
    "next",
    "not",
    "rem",
    "sub",
];

/// What stands at an element of a group that gives rows.
pub(crate) const ONLY_THE_FIRST: &str = "The first element; those that stand behind it in a payload are not read.";

/// What one group is written with.
pub(crate) struct GroupWriter<'w, 'd> {
    pub(crate) plan: &'w FramePlan<'d>,
    pub(crate) group: &'w Group<'d>,
    /// An element of a repeated group: a type that the core knows by a trait.
    pub(crate) is_element: bool,
}

/// A line of documentation above each type.
pub(crate) enum Head<'d> {
    Frame(&'d Frame),
    Page(String),
    Element(String),
}

impl GroupWriter<'_, '_> {
    /// The struct with its fields and methods; `constants` stand first, `more` methods last.
    pub(crate) fn write(
        &self,
        writer: &mut Writer,
        head: &Head<'_>,
        constants: impl FnOnce(&mut Writer),
        more: impl FnOnce(&mut Writer),
    ) {
        self.write_struct(writer, head);
        let lifetime = lifetime(self.group.borrows);
        writer.gap();
        if self.has_odd_method() {
            writer.line("// Called as the description calls its signals.");
            writer.line("#[allow(clippy::should_implement_trait, clippy::wrong_self_convention)]");
        }
        writer.open(format!("impl{lifetime} {}{lifetime} {{", self.group.name));
        let before = writer.len();
        constants(writer);
        self.write_places(writer);
        if writer.len() > before {
            writer.needs_gap();
        }
        if !self.is_element {
            self.write_read(writer);
            self.write_write(writer);
            self.write_measure(writer);
        }
        self.write_selections(writer);
        Checked::of(self.plan, self.group).write(writer);
        more(writer);
        self.write_meanings(writer);
        each::write(writer, self.plan, self.group);
        writer.close("}");
        if self.is_element {
            writer.gap();
            writer.open(format!("impl<'a> typed::Element<'a> for {}{lifetime} {{", self.group.name));
            self.write_read(writer);
            self.write_write(writer);
            self.write_measure(writer);
            writer.close("}");
        }
    }

    fn has_odd_method(&self) -> bool {
        let is_odd = |name: &str| {
            let begins = ["as_", "from_", "into_", "is_", "to_"].iter().any(|start| name.starts_with(start));
            begins || ODD_METHODS.contains(&name)
        };
        self.group.fields.iter().any(|field| is_odd(&field.name))
    }

    fn write_struct(&self, writer: &mut Writer, head: &Head<'_>) {
        let doc = match head {
            Head::Frame(frame) => Doc::label(&frame.label),
            Head::Page(text) | Head::Element(text) => Doc::of(text.clone()),
        };
        writer.gap();
        doc.write(writer);
        writer.line("#[derive(Clone, Copy, Debug, PartialEq)]");
        if self.group.fields.is_empty() && self.group.switches.is_empty() {
            writer.line(format!("pub struct {} {{}}", self.group.name));
            return;
        }
        writer.open(format!("pub struct {} {{", self.group.type_text()));
        for field in &self.group.fields {
            let mut doc = field.doc();
            for why in Meanings::new(field, self.plan.outside()).left_out() {
                doc = doc.and(why);
            }
            doc.write(writer);
            writer.line(format!("pub {}: {},", field.name, field.field_type(self.plan.outside())));
        }
        for switch in &self.group.switches {
            let (name, what, of_type) = member(switch);
            writer.line(format!("/// {what}"));
            writer.line(format!("pub {name}: {of_type},"));
        }
        writer.close("}");
    }

    fn write_places(&self, writer: &mut Writer) {
        for field in &self.group.fields {
            field.write_place(writer, self.group.base);
        }
        for field in &self.group.fields {
            Meanings::new(field, self.plan.outside()).write_constant(writer);
        }
    }

    /// The type of payloads that are read.
    fn payload_type(&self) -> String {
        let lifetime = if self.group.borrows || self.is_element { "'a " } else { "" };
        match self.plan.mode {
            Mode::Chunk(length) if !self.is_element => format!("&{lifetime}[u8; {length}]"),
            _ => format!("&{lifetime}[u8]"),
        }
    }

    fn can_fail(&self) -> bool {
        self.is_element || self.plan.mode.is_slice()
    }

    /// All own fields are there in payloads that come so far; each must then be looked at once.
    fn must_hold_all(&self) -> bool {
        self.is_element || self.plan.mode == Mode::Slice(None)
    }

    fn write_read(&self, writer: &mut Writer) {
        let mut body = Writer::deeper(writer);
        if self.must_hold_all() && self.group.needed_bytes > 0 {
            body.line(format!("typed::at_least(payload, {})?;", self.group.needed_bytes));
        }
        for field in &self.group.fields {
            let count = match &field.value {
                Value::Bytes { size: Some(size), .. } => {
                    self.plan.places.get(size).map(|place| place.count(&self.group.name))
                }
                _ => None,
            };
            field.write_read(&mut body, self.group.base, self.plan.outside(), count);
        }
        for switch in &self.group.switches {
            self.write_read_switch(&mut body, switch);
        }
        let mut names: Vec<&str> = self.group.fields.iter().map(|field| field.name.as_str()).collect();
        names.extend(self.group.switches.iter().map(|switch| member(switch).0));
        let (before, behind) = if self.can_fail() { ("Ok(Self", ")") } else { ("Self", "") };
        body.fields(before, &names, behind);
        let text = body.finish();
        let parameter =
            format!("{}: {}", if text.contains("payload") { "payload" } else { "_payload" }, self.payload_type());
        let result = if self.can_fail() { "Result<Self, typed::TooShort>" } else { "Self" };
        writer.gap();
        writer.line("#[inline]");
        writer.function("fn read", &[&parameter], result);
        writer.paste(&text);
        writer.close("}");
    }

    fn write_read_switch(&self, writer: &mut Writer, switch: &Switch<'_>) {
        let fails = if self.can_fail() { "?" } else { "" };
        match switch {
            Switch::Pages(pages) => {
                writer.line(format!("let held = Self::{}(payload);", pages.select));
                writer.open(format!("let {} = match held {{", pages.field));
                for (at, (variant, group)) in pages.pages.iter().enumerate() {
                    writer.open(format!("{at} => {{"));
                    writer.line(format!("let page = {}::read(payload){fails};", group.name));
                    writer.line(format!("{}::{variant}(page)", pages.enum_name));
                    writer.close("}");
                }
                writer.line(format!("_ => {}::NoPage,", pages.enum_name));
                writer.close("};");
            }
            Switch::Single { field, group, there } => {
                writer.open(format!("let {field} = if Self::{there}(payload) {{"));
                writer.line(format!("let element = {}::read(payload){fails};", group.name));
                writer.line("Some(element)");
                writer.close_and_open("} else {");
                writer.line("None");
                writer.close("};");
            }
            Switch::Repeated(repeat) => self.write_read_repeat(writer, repeat),
        }
    }

    fn write_read_repeat(&self, writer: &mut Writer, repeat: &Repeat<'_>) {
        let first = repeat.first(self.group.base);
        let (field, step, most) = (&repeat.field, repeat.step_bytes, repeat.element_info.most);
        match repeat.count.and_then(|count| self.plan.places.get(&count)) {
            Some(place) => {
                writer.assign("let told", &place.count(&self.group.name));
                writer
                    .line(format!("let {field} = typed::Repeated::counted(payload, {first}, {step}, (told, {most}));"));
                // Where no length is stated, the frame is as long as its elements say.
                let ending = if self.must_hold_all() { "whole()?" } else { "readable()" };
                writer.assign(&format!("let {field}: {}", repeat.type_text()), &format!("{field}.{ending}"));
            }
            None => {
                let size = repeat.size_bytes(self.group.base);
                writer.line(format!(
                    "let {field} = typed::Repeated::to_end(payload, {first}, ({size}, {step}), {most});"
                ));
            }
        }
    }

    fn write_write(&self, writer: &mut Writer) {
        let mut body = Writer::deeper(writer);
        for field in &self.group.fields {
            field.write_write(&mut body, self.group.base);
        }
        self.write_counts(&mut body);
        for switch in &self.group.switches {
            self.write_write_switch(&mut body, switch);
        }
        body.line("Ok(())");
        let text = body.finish();
        let payload = if text.contains("payload") { "payload: &mut [u8]" } else { "_payload: &mut [u8]" };
        writer.gap();
        writer.function("fn write", &["&self", payload], "Result<(), typed::NotEncoded>");
        writer.paste(&text);
        writer.close("}");
    }

    /// What says how many bytes or elements there are is compared with how many there are.
    fn write_counts(&self, writer: &mut Writer) {
        let mut compare = |size: &SignalId, length: String| {
            let Some(place) = self.plan.places.get(size) else { return };
            let name = literal(&self.plan.frame.signals[size.index()].label.name);
            writer.assign("let told", &place.count(&self.group.name));
            writer.call("typed::count_fits", &["told", &length, &name], "?;");
        };
        for field in &self.group.fields {
            if let Value::Bytes { size: Some(size), .. } = &field.value {
                compare(size, format!("self.{}.len()", field.name));
            }
        }
        for switch in &self.group.switches {
            if let Switch::Repeated(Repeat { field, count: Some(count), .. }) = switch {
                compare(count, format!("self.{field}.len()"));
            }
        }
    }

    fn write_write_switch(&self, writer: &mut Writer, switch: &Switch<'_>) {
        match switch {
            Switch::Pages(pages) => {
                writer.line(format!("let held = Self::{}(payload);", pages.select));
                writer.open(format!("match (held, &self.{}) {{", pages.field));
                for (at, (variant, _)) in pages.pages.iter().enumerate() {
                    writer.arm(&format!("({at}, {}::{variant}(page))", pages.enum_name), "page.write(payload)?");
                }
                writer.line(format!("({}, {}::NoPage) => {{}}", pages.pages.len(), pages.enum_name));
                writer.line("_ => return Err(typed::NotEncoded::OtherPage),");
                writer.close("}");
            }
            Switch::Single { field, .. } => {
                writer.open(format!("if let Some(element) = &self.{field} {{"));
                writer.line("element.write(payload)?;");
                writer.close("}");
            }
            Switch::Repeated(repeat) => {
                let places = format!("({}, {})", repeat.first(self.group.base), repeat.step_bytes);
                let most = repeat.element_info.most.to_string();
                let name = literal(&repeat.field);
                writer.line(format!("let elements = &self.{};", repeat.field));
                writer.call("elements.write", &["payload", &places, &most, &name], "?;");
            }
        }
    }

    /// How long a frame of several lengths is.
    fn write_measure(&self, writer: &mut Writer) {
        if !self.can_fail() {
            return;
        }
        let stated = self.group.stated_bytes.map_or("None".to_owned(), |stated| format!("Some({stated})"));
        writer.gap();
        writer.function("fn measure", &["&self", "size: &mut typed::Size"], "");
        writer.line(format!("size.part({}, {stated});", self.group.needed_bytes));
        for field in &self.group.fields {
            field.write_measure(writer, self.group.base);
        }
        for switch in &self.group.switches {
            match switch {
                Switch::Pages(pages) => {
                    writer.open(format!("match &self.{} {{", pages.field));
                    for (variant, _) in &pages.pages {
                        writer.arm(&format!("{}::{variant}(page)", pages.enum_name), "page.measure(size)");
                    }
                    writer.line(format!("{}::NoPage => {{}}", pages.enum_name));
                    writer.close("}");
                }
                Switch::Single { field, .. } => {
                    writer.open(format!("if let Some(element) = &self.{field} {{"));
                    writer.line("element.measure(size);");
                    writer.close("}");
                }
                Switch::Repeated(repeat) => {
                    let first = repeat.first(self.group.base);
                    let sizes = format!("({}, {})", repeat.size_bytes(self.group.base), repeat.step_bytes);
                    writer.line(format!("let elements = &self.{};", repeat.field));
                    writer.line(format!("elements.measure(size, {first}, {sizes});"));
                }
            }
        }
        writer.close("}");
    }

    fn write_selections(&self, writer: &mut Writer) {
        for switch in &self.group.switches {
            match switch {
                Switch::Pages(pages) => pages::write_select(writer, self.plan, self.group, pages),
                Switch::Single { group, there, .. } => pages::write_there(writer, self.plan, self.group, group, there),
                Switch::Repeated(_) => {}
            }
        }
    }

    fn write_meanings(&self, writer: &mut Writer) {
        for field in &self.group.fields {
            Meanings::new(field, self.plan.outside()).write(writer);
        }
    }
}

/// A member that stands for pages or elements: its name, what it is, its type.
fn member<'s>(switch: &'s Switch<'_>) -> (&'s str, &'static str, String) {
    match switch {
        Switch::Pages(pages) => {
            let of_type = format!("{}{}", pages.enum_name, lifetime(pages.borrows()));
            (&pages.field, "What is there under a condition.", of_type)
        }
        Switch::Single { field, group, .. } => {
            let doc = if group.gives_rows() { ONLY_THE_FIRST } else { "There where the payload has room for it." };
            (field, doc, format!("Option<{}>", group.type_text()))
        }
        Switch::Repeated(repeat) => (&repeat.field, "As many as there are.", repeat.type_text()),
    }
}
