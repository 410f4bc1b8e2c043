//! A frame: its constants, how it is decoded, checked and encoded, and the types of its pages.

use wirelore_model::{Frame, Identifier, Nanoseconds, Period, Transport};

use crate::checks::Checked;
use crate::docs::ticked;
use crate::group::{GroupWriter, Head, ONLY_THE_FIRST};
use crate::pages;
use crate::plan::{FramePlan, Group, Mode, Switch};
use crate::writer::Writer;

/// Writes a frame, in a module of its own where it has pages.
pub(crate) fn write(writer: &mut Writer, plan: &FramePlan<'_>) {
    let Some(module) = &plan.module else {
        write_types(writer, plan);
        return;
    };
    writer.gap();
    writer.line(format!("pub use {module}::{};", plan.root.name));
    writer.gap();
    writer.line(format!("/// `{}` and what it holds.", ticked(&plan.frame.label.name)));
    writer.line("#[allow(clippy::module_inception)]");
    writer.open(format!("pub mod {module} {{"));
    writer.line("use wirelore_bits::typed;");
    writer.needs_gap();
    write_types(writer, plan);
    writer.close("}");
}

fn write_types(writer: &mut Writer, plan: &FramePlan<'_>) {
    let root = GroupWriter { plan, group: &plan.root, is_element: false };
    root.write(
        writer,
        &Head::Frame(plan.frame),
        |writer| write_constants(writer, plan.frame),
        |writer| write_methods(writer, plan),
    );
    write_inside(writer, plan, &plan.root);
}

/// The types of the pages and elements inside a group.
fn write_inside(writer: &mut Writer, plan: &FramePlan<'_>, around: &Group<'_>) {
    for switch in &around.switches {
        match switch {
            Switch::Pages(pages) => {
                pages::write_enum(writer, plan, pages);
                for (_, group) in &pages.pages {
                    write_group(writer, plan, group, Head::Page(pages::condition(plan, group)), around.base > 0);
                }
            }
            Switch::Single { group, .. } => {
                let what = if group.gives_rows() { ONLY_THE_FIRST } else { "An element of a repeated group." };
                write_group(writer, plan, group, Head::Element(what.to_owned()), false);
            }
            Switch::Repeated(repeat) => {
                let head = Head::Element("One element of a repeated group.".to_owned());
                write_group(writer, plan, &repeat.element, head, true);
            }
        }
    }
}

fn write_group(writer: &mut Writer, plan: &FramePlan<'_>, group: &Group<'_>, head: Head<'_>, is_element: bool) {
    GroupWriter { plan, group, is_element }.write(writer, &head, |_| {}, |_| {});
    write_inside(writer, plan, group);
}

/// Identifier, lengths, times.
fn write_constants(writer: &mut Writer, frame: &Frame) {
    let mut constant = |what: &str, declaration: String, value: String| {
        writer.line(format!("/// {what}"));
        writer.assign(&format!("pub const {declaration}"), &value);
    };
    if let Some(seen) = frame.seen_on.first() {
        for (what, declaration, value) in identifier(&seen.identifier) {
            constant(what, declaration, value);
        }
    }
    match frame.length {
        Some(length) if length.min == length.max => {
            constant("The length in bytes.", "LENGTH: usize".to_owned(), length.min.to_string());
        }
        Some(length) => {
            let of_type = "LENGTHS: core::ops::RangeInclusive<usize>".to_owned();
            constant("The lengths in bytes.", of_type, format!("{}..={}", length.min, length.max));
        }
        None => {}
    }
    let time = |time: Nanoseconds| {
        let (unit, number) = match time.0 {
            whole if whole % 1_000_000_000 == 0 => ("secs", whole / 1_000_000_000),
            whole if whole % 1_000_000 == 0 => ("millis", whole / 1_000_000),
            whole if whole % 1_000 == 0 => ("micros", whole / 1_000),
            whole => ("nanos", whole),
        };
        format!("core::time::Duration::from_{unit}({number})")
    };
    let of_type = |name: &str| format!("{name}: core::time::Duration");
    match frame.sending.every {
        Some(Period { shortest, longest }) if shortest == longest => {
            constant("The period.", of_type("PERIOD"), time(shortest));
        }
        Some(Period { shortest, longest }) => {
            constant("The shortest period.", of_type("PERIOD_SHORTEST"), time(shortest));
            constant("The longest period.", of_type("PERIOD_LONGEST"), time(longest));
        }
        None => {}
    }
    if let Some(timeout) = frame.sending.timeout {
        constant("After this long without one it counts as lost.", of_type("TIMEOUT"), time(timeout));
    }
}

type Constant = (&'static str, String, String);

/// What a frame is recognised by, on its own network.
fn identifier(identifier: &Identifier) -> Vec<Constant> {
    let hex = |number: u32| format!("0x{number:X}");
    let small = |what: &'static str, name: &str, of_type: &str, value: u32| {
        (what, format!("{name}: {of_type}"), format!("0x{value:X}"))
    };
    match identifier {
        Identifier::Can { first, last, extended } => {
            let id = if first == last {
                ("The identifier.", "ID: u32".to_owned(), hex(*first))
            } else {
                let of_type = "IDS: core::ops::RangeInclusive<u32>".to_owned();
                ("The identifiers.", of_type, format!("{}..={}", hex(*first), hex(*last)))
            };
            vec![id, ("Whether the identifier has 29 bits.", "EXTENDED: bool".to_owned(), extended.to_string())]
        }
        Identifier::Pgn { pgn, sources, priority } => {
            let mut all = vec![small("The parameter group number.", "PGN", "u32", *pgn)];
            if !sources.is_empty() {
                let list: Vec<String> = sources.iter().map(|source| format!("0x{source:X}")).collect();
                all.push((
                    "The source addresses that count.",
                    format!("SOURCES: [u8; {}]", sources.len()),
                    format!("[{}]", list.join(", ")),
                ));
            }
            all.extend(priority.map(|priority| small("The priority.", "PRIORITY", "u8", priority.into())));
            all
        }
        Identifier::Xl { acceptance, .. } => vec![small("The acceptance field.", "ACCEPTANCE", "u32", *acceptance)],
        Identifier::Lin { id, .. } => vec![
            small("The identifier without its parity bits.", "ID", "u8", (*id).into()),
            small(
                "The identifier with its parity bits.",
                "PROTECTED_ID",
                "u8",
                wirelore_bits::lin::protected(*id).into(),
            ),
        ],
        Identifier::FlexRay { slot, first_cycle, repetition, .. } => vec![
            ("The slot.", "SLOT: u16".to_owned(), slot.to_string()),
            ("The first cycle.", "FIRST_CYCLE: u8".to_owned(), first_cycle.to_string()),
            ("Every so many cycles.", "REPETITION: u8".to_owned(), repetition.to_string()),
        ],
        Identifier::Telegram { source, target, .. } => {
            let source = source.map(|source| small("The sender's address.", "SOURCE", "u8", source.into()));
            let target = target.map(|target| small("The receiver's address.", "TARGET", "u8", target.into()));
            source.into_iter().chain(target).collect()
        }
        Identifier::Most { block, function, .. } => vec![
            small("The function block.", "BLOCK", "u8", (*block).into()),
            small("The function.", "FUNCTION", "u16", (*function).into()),
        ],
        Identifier::SomeIp { service, method, .. } => vec![
            small("The service.", "SERVICE", "u16", (*service).into()),
            small("The method or event.", "METHOD", "u16", (*method).into()),
        ],
        Identifier::Port { port, .. } => vec![("The port.", "PORT: u16".to_owned(), port.to_string())],
        Identifier::DoIp { payload_type, .. } => {
            vec![small("The payload type.", "PAYLOAD_TYPE", "u16", (*payload_type).into())]
        }
    }
}

/// Decode, check and encode.
fn write_methods(writer: &mut Writer, plan: &FramePlan<'_>) {
    write_decode(writer, plan);
    let has_checks = Checked::has_any(&plan.root);
    let needs_identifier = Checked::needs_identifier(plan.frame);
    if has_checks {
        write_check(writer, needs_identifier);
    }
    match plan.mode {
        Mode::Chunk(length) => write_encode(writer, length, &plan.root, needs_identifier),
        Mode::Slice(_) => write_encode_into(writer, &plan.root, needs_identifier),
    }
}

fn write_decode(writer: &mut Writer, plan: &FramePlan<'_>) {
    let lifetime = if plan.root.borrows { "'a " } else { "" };
    writer.gap();
    writer.line("/// Reads a payload.");
    if let Some(transport) = plan.frame.carried {
        writer.line("///");
        writer
            .line(format!("/// It is the whole message: {} carries it in several frames.", transport_text(transport)));
    }
    writer.line("///");
    writer.line("/// # Errors");
    writer.line("/// It is shorter than the description allows.");
    writer.line("#[inline]");
    let payload = format!("payload: &{lifetime}[u8]");
    writer.function("pub fn decode", &[&payload], "Result<Self, typed::TooShort>");
    match plan.mode {
        Mode::Chunk(_) => {
            writer.line("let chunk = typed::chunk(payload)?;");
            writer.line("Ok(Self::read(chunk))");
        }
        Mode::Slice(Some(_)) => {
            writer.line("let frame = Self::read(payload)?;");
            writer.line("let mut size = typed::Size::default();");
            writer.line("frame.measure(&mut size);");
            writer.line("typed::at_least(payload, size.least())?;");
            writer.line("Ok(frame)");
        }
        Mode::Slice(None) => writer.line("Self::read(payload)"),
    }
    writer.close("}");
}

fn transport_text(transport: Transport) -> &'static str {
    match transport {
        Transport::IsoTp | Transport::IsoTpExtended | Transport::IsoTpMixed => "ISO 15765-2",
        Transport::J1939Tp => "SAE J1939-21",
    }
}

fn write_check(writer: &mut Writer, needs_identifier: bool) {
    writer.gap();
    writer.line("/// Looks whether a payload is undamaged: its checksums and its end-to-end protection.");
    writer.line("///");
    writer.line("/// # Errors");
    writer.line("/// What is wrong first.");
    let mut parameters = vec!["payload: &[u8]"];
    parameters.extend(needs_identifier.then_some("identifier: u32"));
    writer.function("pub fn verify", &parameters, "Result<(), typed::Damage>");
    writer.line(format!("Self::check_parts({})", if needs_identifier { "payload, identifier" } else { "payload" }));
    writer.close("}");
}

fn write_seal(writer: &mut Writer, payload: &str, root: &Group<'_>, needs_identifier: bool) {
    if Checked::has_any(root) {
        let identifier = if needs_identifier { ", identifier" } else { "" };
        writer.line(format!("Self::seal_sums({payload}{identifier});"));
    }
    if Checked::has_protection(root) {
        writer.line(format!("Self::seal_protection({payload})?;"));
    }
}

fn write_encode(writer: &mut Writer, length: usize, root: &Group<'_>, needs_identifier: bool) {
    writer.gap();
    let sealed = if Checked::has_any(root) { ", with checksums and protection calculated" } else { "" };
    writer.line(format!("/// The payload{sealed}."));
    writer.line("///");
    writer.line("/// # Errors");
    writer.line("/// A field does not fit in its bits, or the pages are not those that the selectors ask for.");
    let mut parameters = vec!["&self"];
    parameters.extend(needs_identifier.then_some("identifier: u32"));
    writer.function("pub fn encode", &parameters, &format!("Result<[u8; {length}], typed::NotEncoded>"));
    writer.line(format!("let mut payload = [0; {length}];"));
    writer.line("self.write(&mut payload)?;");
    write_seal(writer, "&mut payload", root, needs_identifier);
    writer.line("Ok(payload)");
    writer.close("}");
}

fn write_encode_into(writer: &mut Writer, root: &Group<'_>, needs_identifier: bool) {
    writer.gap();
    let sealed = if Checked::has_any(root) { ", with checksums and protection calculated," } else { "" };
    writer.line(format!("/// Writes the payload{sealed} and tells its length in bytes."));
    writer.line("///");
    writer.line("/// # Errors");
    writer.line(
        "/// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too",
    );
    writer.line("/// small.");
    let mut parameters = vec!["&self", "room: &mut [u8]"];
    parameters.extend(needs_identifier.then_some("identifier: u32"));
    writer.function("pub fn encode_into", &parameters, "Result<usize, typed::NotEncoded>");
    writer.line("let mut size = typed::Size::default();");
    writer.line("self.measure(&mut size);");
    writer.line("let payload = typed::room(room, size.length())?;");
    writer.line("self.write(payload)?;");
    write_seal(writer, "payload", root, needs_identifier);
    writer.line("Ok(size.length())");
    writer.close("}");
}
