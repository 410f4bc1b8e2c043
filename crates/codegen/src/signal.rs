//! One signal as a field: its type, the way from the bits and back.

use wirelore_bits::{Encoding, NumberKind, Place};
use wirelore_model::{ByteSpan, Charset, Content, Role, Scaling, Signal, SignalId, formula_text};

use crate::docs::{Doc, inline, literal, ticked};
use crate::names::Names;
use crate::number::{int_type, narrowed, widened};
use crate::plan::Context;
use crate::states::StateEnum;
use crate::writer::Writer;

/// The constants of longer names stand on lines of their own.
const LONG_NAME: usize = 30;

/// Arguments of more characters stand in variables before.
const SHORT_ARGUMENTS: usize = 40;

/// A signal that is a field of a group.
pub(crate) struct Field<'d> {
    pub(crate) context: Context<'d>,
    pub(crate) signal: &'d Signal,
    pub(crate) name: String,
    /// The constant with its place.
    pub(crate) at: String,
    pub(crate) value: Value<'d>,
    /// The payload may end before it.
    pub(crate) is_optional: bool,
    /// The enum of its words, whatever the field is.
    pub(crate) states: Option<&'d StateEnum<'d>>,
    pub(crate) methods: Methods,
    /// The frame is a message of a service.
    is_of_service: bool,
}

/// The names of the methods that a field has beside that of its own name.
#[derive(Default)]
pub(crate) struct Methods {
    pub(crate) set: String,
    pub(crate) is_outside: String,
    pub(crate) state: String,
    pub(crate) next: String,
}

/// What a field holds.
pub(crate) enum Value<'d> {
    Flag,
    /// The raw number.
    Number {
        encoding: Encoding,
        int_type: &'static str,
    },
    /// The state of the raw number.
    State {
        encoding: Encoding,
        states: &'d StateEnum<'d>,
    },
    Float {
        encoding: Encoding,
    },
    /// The bits of decimal digits.
    Digits {
        encoding: Encoding,
        int_type: &'static str,
    },
    Bytes {
        span: ByteSpan,
        charset: Option<Charset>,
        size: Option<SignalId>,
    },
}

impl<'d> Field<'d> {
    pub(crate) fn new(
        context: Context<'d>,
        signal: &'d Signal,
        (name, at): (String, String),
        (is_optional, is_of_service): (bool, bool),
        states: Option<&'d StateEnum<'d>>,
    ) -> Self {
        Self {
            context,
            signal,
            name,
            at,
            value: Value::of(signal, states),
            is_optional,
            states,
            methods: Methods::default(),
            is_of_service,
        }
    }

    /// Gives its methods names, once those of all fields are taken.
    pub(crate) fn name_methods(&mut self, names: &mut Names) {
        let name = self.name.trim_end_matches('_');
        self.methods = Methods {
            set: names.value(&format!("set_{name}")),
            is_outside: names.value(&format!("{name}_is_outside")),
            state: names.value(&format!("{name}_state")),
            next: names.value(&format!("next_{name}")),
        };
    }

    /// Whether it guards the payload, in a way that the payload alone can be held against: on Ethernet a protection that begins with the payload
    /// covers the header in front of it too.
    pub(crate) fn checks(&self) -> bool {
        match &self.signal.role {
            Role::Value | Role::Counter(_) => false,
            Role::Checksum(_) => true,
            Role::Protection(protection) => {
                !self.is_of_service || protection.over.first != 0 || protection.profile.is_at_the_front()
            }
        }
    }

    pub(crate) fn borrows(&self) -> bool {
        matches!(self.value, Value::Bytes { .. })
    }

    /// The type of the field where the payload holds it.
    pub(crate) fn value_type(&self, outside: &str) -> String {
        match &self.value {
            Value::Flag => "bool".to_owned(),
            Value::Number { int_type, .. } | Value::Digits { int_type, .. } => (*int_type).to_owned(),
            Value::State { states, .. } => format!("{outside}{}", states.name),
            Value::Float { .. } => "f64".to_owned(),
            Value::Bytes { .. } => "&'a [u8]".to_owned(),
        }
    }

    /// The type of the field.
    pub(crate) fn field_type(&self, outside: &str) -> String {
        let value = self.value_type(outside);
        if self.is_optional { format!("Option<{value}>") } else { value }
    }

    /// How the bits are read, and from where.
    pub(crate) fn doc(&self) -> Doc {
        let signal = self.signal;
        let unit = signal.unit.as_ref().map_or(String::new(), |unit| format!(" {}", inline(unit.as_str())));
        let what = match &signal.content {
            Content::Number { field, kind } => {
                let kind = match kind {
                    NumberKind::Unsigned => "",
                    NumberKind::Signed => ", signed",
                    NumberKind::SignMagnitude => ", sign and size",
                    NumberKind::Float => ", floating point",
                    NumberKind::Bcd => ", decimal digits",
                };
                let formula = match &signal.scaling {
                    Scaling::Curve(_) => "a sensor curve".to_owned(),
                    scaling => format!("`{}`", ticked(&formula_text(scaling))),
                };
                format!("{formula}{unit}; {} {}{kind}.", field.width(), if field.width() == 1 { "bit" } else { "bits" })
            }
            Content::Text { .. } => "Text, byte by byte.".to_owned(),
            Content::Bytes { .. } => "Bytes as they are.".to_owned(),
        };
        let own = signal.label.name.split('[').next() == Some(self.name.trim_end_matches('_'));
        let doc = if own { Doc::untitled(&signal.label) } else { Doc::label(&signal.label) };
        let doc = doc.and(what);
        let doc = match &signal.role {
            Role::Value => doc,
            Role::Counter(counter) => doc.and(format!("Counts the frames, from {} to {}.", counter.low, counter.high)),
            Role::Checksum(_) => doc.and("A checksum: whatever stands here, encoding calculates it."),
            Role::Protection(_) if self.checks() => doc.and("The count of the end-to-end protection."),
            Role::Protection(_) => doc.and(
                "The count of the end-to-end protection, which is neither checked nor written: it covers the header in front of the payload too.",
            ),
        };
        if self.is_optional { doc.and("`None`: the payload ends before it.") } else { doc }
    }

    /// The constant with the place of a number.
    pub(crate) fn write_place(&self, writer: &mut Writer, base: u32) {
        let Content::Number { field, .. } = &self.signal.content else { return };
        match field.places() {
            [place] => writer.assign(&format!("const {}: typed::Cut", self.at), &cut(place, base)),
            places => write_pieces(writer, &self.at, places, base),
        }
    }

    /// The field out of a variable `bits`.
    fn out_of_bits(&self, outside: &str) -> Option<String> {
        let raw = |encoding: &Encoding, int_type: &str| {
            let width = encoding.width();
            match encoding.kind() {
                NumberKind::Signed => narrowed(format!("typed::signed(bits, {width})"), "i64", int_type),
                NumberKind::SignMagnitude => narrowed(format!("typed::sign_magnitude(bits, {width})"), "i64", int_type),
                _ => narrowed("bits".to_owned(), "u64", int_type),
            }
        };
        Some(match &self.value {
            Value::Flag => "bits != 0".to_owned(),
            Value::Number { encoding, int_type } | Value::Digits { encoding, int_type } => raw(encoding, int_type),
            Value::State { encoding, states } => {
                format!("{outside}{}::from_raw({})", states.name, raw(encoding, states.raw_type()))
            }
            Value::Float { encoding } => format!("typed::float(bits, {})", encoding.width()),
            Value::Bytes { .. } => return None,
        })
    }

    /// Reads the field into a variable of its name.
    pub(crate) fn write_read(&self, writer: &mut Writer, base: u32, outside: &str, count: Option<String>) {
        let (name, at) = (&self.name, &self.at);
        if let Value::Bytes { span, size, .. } = &self.value {
            let first = span.first.saturating_sub(base);
            let last = span.last.map(|last| last.saturating_sub(base));
            match (last, size, self.is_optional) {
                (_, Some(_), _) => {
                    let end = last.map_or("None".to_owned(), |last| format!("Some({})", last + 1));
                    let count = count.unwrap_or_else(|| "None".to_owned());
                    writer.assign("let told", &count);
                    writer.line(format!("let {name} = typed::sized(payload, {first}, {end}, told)?;"));
                }
                (Some(last), _, false) => {
                    writer.line(format!("let {name} = typed::first_of(payload, {first}, {last});"))
                }
                (None, _, false) => writer.line(format!("let {name} = typed::to_end(payload, {first});")),
                (Some(last), _, true) => writer.line(format!("let {name} = payload.get({first}..{});", last + 1)),
                (None, _, true) => writer.line(format!("let {name} = payload.get({first}..);")),
            }
            return;
        }
        let Some(value) = self.out_of_bits(outside) else { return };
        let is_short = at.len() <= LONG_NAME && (value.starts_with("bits ") || value == "bits");
        match (self.is_optional, value.as_str()) {
            (false, _) if is_short => {
                let bits = format!("Self::{at}.of(payload)");
                writer.assign(&format!("let {name}"), &value.replacen("bits", &bits, 1));
            }
            (true, "bits") => writer.line(format!("let {name} = Self::{at}.get(payload);")),
            (false, _) => {
                writer.line(format!("let bits = Self::{at}.of(payload);"));
                writer.assign(&format!("let {name}"), &value);
            }
            (true, _) => {
                writer.line(format!("let bits = Self::{at}.get(payload);"));
                writer.assign("let convert", &format!("|bits: u64| {value}"));
                writer.line(format!("let {name} = bits.map(convert);"));
            }
        }
    }

    /// Writes the field, or a variable `value` for an optional one, into the payload.
    pub(crate) fn write_write(&self, writer: &mut Writer, base: u32) {
        let name = literal(&self.signal.label.name);
        if self.is_optional {
            writer.open(format!("if let Some(value) = self.{} {{", self.name));
            self.write_value(writer, "value", base, &name);
            writer.close("}");
        } else {
            self.write_value(writer, &format!("self.{}", self.name), base, &name);
        }
    }

    fn write_value(&self, writer: &mut Writer, value: &str, base: u32, name: &str) {
        let whole = |value: &str, encoding: &Encoding, int_type: &str| match encoding.kind() {
            NumberKind::Signed => ("signed_bits", widened(value, int_type, "i64")),
            NumberKind::SignMagnitude => ("sign_magnitude_bits", widened(value, int_type, "i64")),
            _ => ("unsigned_bits", widened(value, int_type, "u64")),
        };
        let (encoding, (function, value)) = match &self.value {
            Value::Flag => {
                writer.line(format!("let bits = u64::from({value});"));
                writer.line(format!("Self::{}.put(payload, bits);", self.at));
                return;
            }
            Value::Number { encoding, int_type } | Value::Digits { encoding, int_type } => {
                (encoding, whole(value, encoding, int_type))
            }
            Value::State { encoding, states } => {
                (encoding, whole(&format!("{value}.raw()"), encoding, states.raw_type()))
            }
            Value::Float { encoding } => (encoding, ("float_bits", value.to_owned())),
            Value::Bytes { span, .. } => {
                let first = span.first.saturating_sub(base).to_string();
                let end =
                    span.last.map_or("None".to_owned(), |last| format!("Some({})", last.saturating_sub(base) + 1));
                writer.call("typed::put_bytes", &["payload", value, &first, &end, name], "?;");
                return;
            }
        };
        let width = encoding.width().to_string();
        let inside = value.len() + width.len() + name.len();
        let value = if inside > SHORT_ARGUMENTS {
            writer.line(format!("let number = {value};"));
            "number"
        } else {
            &value
        };
        writer.let_call("bits", &format!("typed::{function}"), &[value, &width, name]);
        writer.line(format!("Self::{}.put(payload, bits);", self.at));
    }

    /// How far the field reaches, where that is not known beforehand.
    pub(crate) fn write_measure(&self, writer: &mut Writer, base: u32) {
        let needed = self.signal.needed_bytes().saturating_sub(base);
        match &self.value {
            Value::Bytes { span, .. } if span.last.is_none() || self.signal.size().is_some() => {
                let first = span.first.saturating_sub(base);
                if self.is_optional {
                    writer.open(format!("if let Some(value) = self.{} {{", self.name));
                    writer.line(format!("size.reach({}value.len());", behind(first)));
                    writer.close("}");
                } else {
                    writer.line(format!("size.reach({}self.{}.len());", behind(first), self.name));
                }
            }
            _ if self.is_optional => {
                writer.open(format!("if self.{}.is_some() {{", self.name));
                writer.line(format!("size.reach({needed});"));
                writer.close("}");
            }
            _ => {}
        }
    }
}

impl<'d> Value<'d> {
    fn of(signal: &Signal, states: Option<&'d StateEnum<'d>>) -> Self {
        let (span, charset, size) = match &signal.content {
            Content::Text { bytes, charset, size } => (*bytes, Some(*charset), *size),
            Content::Bytes { bytes, size } => (*bytes, None, *size),
            Content::Number { .. } => return Self::number(signal, states),
        };
        Self::Bytes { span, charset, size }
    }

    fn number(signal: &Signal, states: Option<&'d StateEnum<'d>>) -> Self {
        let Some(encoding) = signal.encoding() else {
            return Self::Bytes { span: ByteSpan { first: 0, last: None }, charset: None, size: None };
        };
        let Some(range) = encoding.integer_range() else { return Self::Float { encoding } };
        let is_bare = signal.scaling == Scaling::Raw
            && signal.absent.is_empty()
            && signal.fault.is_empty()
            && signal.range.is_none()
            && signal.role == Role::Value;
        match (encoding.kind(), states) {
            (NumberKind::Bcd, _) => {
                let bits = (0, i128::from(u64::MAX >> (64 - u32::from(encoding.width()))));
                Self::Digits { encoding, int_type: int_type(bits) }
            }
            (_, Some(states)) if signal.scaling == Scaling::Raw && signal.role == Role::Value => {
                Self::State { encoding, states }
            }
            (NumberKind::Unsigned, None) if encoding.width() == 1 && is_bare => Self::Flag,
            _ => Self::Number { encoding, int_type: int_type(range) },
        }
    }
}

/// In front of a number of bytes that stand behind so many others.
fn behind(first: u32) -> String {
    if first == 0 { String::new() } else { format!("{first} + ") }
}

fn cut(place: &Place, base: u32) -> String {
    let end = |end: wirelore_bits::BitPosition| format!("({}, {})", end.byte.saturating_sub(base), end.bit);
    format!("typed::Cut::between({}, {})", end(place.msb()), end(place.lsb()))
}

fn write_pieces(writer: &mut Writer, at: &str, places: &[Place], base: u32) {
    let count = places.len();
    writer.open(format!("const {at}: typed::Cuts<{count}> = typed::Cuts(["));
    places.iter().for_each(|place| writer.line(format!("{},", cut(place, base))));
    writer.close("]);");
}
