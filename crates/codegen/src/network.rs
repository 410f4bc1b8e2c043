//! From what a network shows of a frame to the frame: an enum for each network.

use wirelore_model::{Database, FlexRayChannels, FrameId, Identifier, Network, NetworkId, PortProtocol};

use crate::classes::{Span, first_wins};
use crate::docs::ticked;
use crate::names::{Names, camel};
use crate::number::pattern;
use crate::plan::{FramePlan, lifetime};
use crate::writer::Writer;

/// The frames of one network.
pub(crate) struct NetworkWriter<'w, 'd> {
    pub(crate) database: &'d Database,
    pub(crate) network: NetworkId,
    /// By frame.
    pub(crate) plans: &'w [FramePlan<'d>],
}

type Described<'d> = Vec<(&'d Identifier, FrameId)>;

impl<'d> NetworkWriter<'_, 'd> {
    fn described(&self, wanted: impl Fn(&Identifier) -> bool) -> Described<'d> {
        let mut all = Vec::new();
        for (frame, id) in self.database.frames.iter().zip((0..).map(FrameId)) {
            let here = frame.seen_on.iter().filter(|seen| seen.network == self.network);
            all.extend(here.filter(|seen| wanted(&seen.identifier)).map(|seen| (&seen.identifier, id)));
        }
        all
    }

    pub(crate) fn write(&self, writer: &mut Writer, names: &mut Names) {
        let mut frames: Vec<FrameId> = self.described(|_| true).into_iter().map(|(_, id)| id).collect();
        frames.dedup();
        let Some(network) = self.database.networks.get(self.network.index()).filter(|_| !frames.is_empty()) else {
            return;
        };
        let name = names.of_type(&format!("{}Frame", camel(&network.label.name)));
        let borrows = frames.iter().any(|id| self.plans[id.index()].root.borrows);
        let lifetime = lifetime(borrows);
        self.write_enum(writer, network, &name, lifetime, &frames);
        writer.gap();
        writer.open(format!("impl{lifetime} {name}{lifetime} {{"));
        self.write_can(writer, borrows);
        self.write_lin(writer, borrows);
        self.write_flexray(writer, borrows);
        self.write_elsewhere(writer, borrows);
        self.write_each(writer, &frames);
        writer.close("}");
    }

    fn write_each(&self, writer: &mut Writer, frames: &[FrameId]) {
        writer.gap();
        writer.line("/// Tells what each signal says, by its name in the description.");
        let tell = "tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)";
        writer.function("pub fn each", &["&self", tell], "");
        writer.open("match self {");
        for id in frames {
            writer.arm(&format!("Self::{}(frame)", self.plans[id.index()].root.name), "frame.each(tell)");
        }
        writer.close("}");
        writer.close("}");
    }

    fn write_enum(&self, writer: &mut Writer, network: &Network, name: &str, lifetime: &str, frames: &[FrameId]) {
        writer.gap();
        writer.line(format!("/// The frames on network `{}`.", ticked(&network.label.name)));
        writer.line("#[derive(Clone, Copy, Debug, PartialEq)]");
        writer.line("// Without allocation there are no boxes.");
        writer.line("#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]");
        writer.open(format!("pub enum {name}{lifetime} {{"));
        for id in frames {
            let plan = &self.plans[id.index()];
            writer.line(format!("/// `{}`.", ticked(&plan.frame.label.name)));
            writer.line(format!("{}({}),", plan.root.name, plan.root.type_text()));
        }
        writer.close("}");
    }

    /// The head of a function that recognises frames.
    fn open(&self, writer: &mut Writer, borrows: bool, name: &str, what: &str, parameters: &[&str]) {
        let payload = if borrows { "payload: &'a [u8]" } else { "payload: &[u8]" };
        let parameters: Vec<&str> = parameters.iter().copied().chain([payload]).collect();
        writer.gap();
        writer.line(format!("/// {what}; `None`: no frame is described so."));
        writer.line("///");
        writer.line("/// # Errors");
        writer.line("/// The payload is shorter than the frame.");
        writer.function(&format!("pub fn {name}"), &parameters, "Result<Option<Self>, typed::TooShort>");
    }

    /// An arm that decodes a frame.
    fn arm(&self, writer: &mut Writer, pattern: &str, frame: FrameId) {
        let name = &self.plans[frame.index()].root.name;
        writer.open(format!("{pattern} => {{"));
        writer.line(format!("let frame = {name}::decode(payload)?;"));
        writer.line(format!("Self::{name}(frame)"));
        writer.close("}");
    }

    /// Exact identifiers go before runs, those of 29 bits before parameter groups.
    fn write_can(&self, writer: &mut Writer, borrows: bool) {
        let all = self.described(|identifier| matches!(identifier, Identifier::Can { .. }));
        let groups = self.described(|identifier| matches!(identifier, Identifier::Pgn { .. }));
        if all.is_empty() && groups.is_empty() {
            return;
        }
        let parameters = ["id: u32", "extended: bool"];
        self.open(writer, borrows, "decode", "The frame with an identifier of 11 or 29 bits", &parameters);
        writer.open("Ok(Some(match (id, extended) {");
        for wanted in [false, true] {
            let mut given: Vec<(Span, FrameId)> = Vec::new();
            for exact in [true, false] {
                given.extend(all.iter().filter_map(|(identifier, frame)| match identifier {
                    Identifier::Can { first, last, extended } if *extended == wanted && (first == last) == exact => {
                        Some(((i128::from(*first), i128::from(*last)), *frame))
                    }
                    _ => None,
                }));
            }
            for ((first, last), frame) in first_wins(&given) {
                let ids = if first == last { format!("0x{first:X}") } else { format!("0x{first:X}..=0x{last:X}") };
                self.arm(writer, &format!("({ids}, {wanted})"), frame);
            }
        }
        if !groups.is_empty() {
            self.write_groups(writer, groups);
        }
        writer.line("_ => return Ok(None),");
        writer.close("}))");
        writer.close("}");
    }

    /// Within a group the narrower recognition goes first.
    fn write_groups(&self, writer: &mut Writer, groups: Described<'d>) {
        let mut sorted: Vec<_> = groups
            .into_iter()
            .filter_map(|(identifier, frame)| match identifier {
                Identifier::Pgn { pgn, sources, priority } => Some((*pgn, sources, *priority, frame)),
                _ => None,
            })
            .collect();
        sorted.sort_by_key(|(pgn, sources, priority, frame)| (*pgn, sources.is_empty(), priority.is_none(), *frame));
        sorted.dedup_by_key(|(pgn, sources, priority, _)| (*pgn, *sources, *priority));
        writer.open("(_, true) => match typed::pgn_of(id) {");
        for (pgn, sources, priority, frame) in sorted {
            let given: Vec<(Span, ())> = sources.iter().map(|&source| ((source.into(), source.into()), ())).collect();
            let sources: Vec<String> = first_wins(&given).into_iter().map(|(span, ())| pattern(span)).collect();
            let source = (!sources.is_empty()).then(|| format!("matches!(id as u8, {})", sources.join(" | ")));
            let priority = priority.map(|priority| format!("id >> 26 == {priority}"));
            let guards: Vec<String> = source.into_iter().chain(priority).collect();
            let guard = if guards.is_empty() { String::new() } else { format!(" if {}", guards.join(" && ")) };
            self.arm(writer, &format!("0x{pgn:X}{guard}"), frame);
        }
        writer.line("_ => return Ok(None),");
        writer.close("},");
    }

    fn write_lin(&self, writer: &mut Writer, borrows: bool) {
        let mut all = self.described(|identifier| matches!(identifier, Identifier::Lin { .. }));
        if all.is_empty() {
            return;
        }
        let mut known = std::collections::HashSet::new();
        all.retain(|(identifier, _)| matches!(identifier, Identifier::Lin { id, .. } if known.insert(*id)));
        self.open(writer, borrows, "decode", "The frame with an identifier (without its parity bits)", &["id: u8"]);
        writer.open("Ok(Some(match id {");
        for (identifier, frame) in &all {
            let Identifier::Lin { id, stands_for, .. } = identifier else { continue };
            if stands_for.is_empty() {
                self.arm(writer, &format!("0x{id:02X}"), *frame);
            } else {
                self.write_event(writer, *id, stands_for, &all);
            }
        }
        writer.line("_ => return Ok(None),");
        writer.close("}))");
        writer.close("}");
    }

    /// An event-triggered frame is one of several others, told by the protected identifier in its first byte.
    fn write_event(&self, writer: &mut Writer, id: u8, stands_for: &[FrameId], all: &Described<'_>) {
        writer.open(format!("0x{id:02X} => match payload.first() {{"));
        for (identifier, frame) in all {
            if let Identifier::Lin { id, .. } = identifier
                && stands_for.contains(frame)
            {
                self.arm(writer, &format!("Some(0x{:02X})", wirelore_bits::lin::protected(*id)), *frame);
            }
        }
        writer.line("_ => return Ok(None),");
        writer.close("},");
    }

    /// A narrower repetition of cycles goes first.
    fn write_flexray(&self, writer: &mut Writer, borrows: bool) {
        let mut all = self.described(|identifier| matches!(identifier, Identifier::FlexRay { .. }));
        if all.is_empty() {
            return;
        }
        all.sort_by_key(|(identifier, frame)| (width(identifier), *frame));
        let parameters = ["slot: u16", "cycle: u8", "on_b: bool"];
        self.open(writer, borrows, "decode", "The frame in a slot of a cycle, on channel A or B", &parameters);
        writer.open("Ok(Some(match slot {");
        for (identifier, frame) in all {
            let Identifier::FlexRay { slot, first_cycle, repetition, channels } = identifier else { continue };
            let cycle = match (*repetition, *first_cycle) {
                (0 | 1, _) => None,
                (repetition, 0) => Some(format!("cycle.is_multiple_of({repetition})")),
                (repetition, first) => Some(format!("cycle % {repetition} == {first}")),
            };
            let channel = match channels {
                FlexRayChannels::A => Some("!on_b".to_owned()),
                FlexRayChannels::B => Some("on_b".to_owned()),
                FlexRayChannels::Both => None,
            };
            let guards: Vec<String> = cycle.into_iter().chain(channel).collect();
            let guard = if guards.is_empty() { String::new() } else { format!(" if {}", guards.join(" && ")) };
            self.arm(writer, &format!("{slot}{guard}"), frame);
        }
        writer.line("_ => return Ok(None),");
        writer.close("}))");
        writer.close("}");
    }

    fn write_elsewhere(&self, writer: &mut Writer, borrows: bool) {
        let kinds: [Kind; 6] = [
            Kind {
                name: "decode_xl",
                what: "The frame of CAN XL with an acceptance field and a priority",
                parameters: &["acceptance: u32", "priority: u16"],
                is_it: |identifier| matches!(identifier, Identifier::Xl { .. }),
            },
            Kind {
                name: "decode",
                what: "The message of a single-wire network, by what its header tells and its data begin with",
                parameters: &["source: Option<u8>", "target: Option<u8>"],
                is_it: |identifier| matches!(identifier, Identifier::Telegram { .. }),
            },
            Kind {
                name: "decode",
                what: "The control message of a ring",
                parameters: &["block: u8", "instance: u8", "function: u16", "operation: u8"],
                is_it: |identifier| matches!(identifier, Identifier::Most { .. }),
            },
            Kind {
                name: "decode_service",
                what: "The message of a service",
                parameters: &["service: u16", "method: u16", "message_type: u8"],
                is_it: |identifier| matches!(identifier, Identifier::SomeIp { .. }),
            },
            Kind {
                name: "decode_port",
                what: "What goes to a port, or comes from one",
                parameters: &["is_tcp: bool", "from: u16", "to: u16"],
                is_it: |identifier| matches!(identifier, Identifier::Port { .. }),
            },
            Kind {
                name: "decode_doip",
                what: "The message of DoIP (ISO 13400-2)",
                parameters: &["payload_type: u16", "source: Option<u16>", "target: Option<u16>"],
                is_it: |identifier| matches!(identifier, Identifier::DoIp { .. }),
            },
        ];
        kinds.iter().for_each(|kind| self.write_kind(writer, borrows, kind));
    }

    /// The narrower before the wider, one test after the other.
    fn write_kind(&self, writer: &mut Writer, borrows: bool, kind: &Kind) {
        let mut all = self.described(kind.is_it);
        if all.is_empty() {
            return;
        }
        all.sort_by_key(|(identifier, frame)| (width(identifier), *frame));
        let tests: Vec<(Vec<String>, FrameId)> = all
            .iter()
            .flat_map(|(identifier, frame)| tests(identifier).into_iter().map(|tests| (tests, *frame)))
            .collect();
        // Where a packet goes says more than where it comes from.
        let (mut first, mut last): (Vec<_>, Vec<_>) =
            tests.into_iter().partition(|(tests, _)| tests.iter().all(|test| !test.starts_with("from ")));
        first.append(&mut last);
        let parameters: Vec<String> = kind
            .parameters
            .iter()
            .map(|parameter| {
                let name = parameter.split(':').next().unwrap_or_default();
                let is_used = first
                    .iter()
                    .flat_map(|(tests, _)| tests)
                    .any(|test| test.trim_start_matches('!').starts_with(name));
                if is_used { (*parameter).to_owned() } else { format!("_{parameter}") }
            })
            .collect();
        let parameters: Vec<&str> = parameters.iter().map(String::as_str).collect();
        self.open(writer, borrows, kind.name, kind.what, &parameters);
        for (tests, frame) in first {
            let name = &self.plans[frame.index()].root.name;
            writer.line("let mut is_it = true;");
            tests.iter().for_each(|test| writer.line(format!("is_it &= {test};")));
            writer.open("if is_it {");
            writer.line(format!("let frame = {name}::decode(payload)?;"));
            writer.line(format!("return Ok(Some(Self::{name}(frame)));"));
            writer.close("}");
        }
        writer.line("Ok(None)");
        writer.close("}");
    }
}

/// Identifiers of one kind, and the function that looks for them.
struct Kind {
    name: &'static str,
    what: &'static str,
    parameters: &'static [&'static str],
    is_it: fn(&Identifier) -> bool,
}

/// The tests that all must pass; for ports one list for each of both ends.
fn tests(identifier: &Identifier) -> Vec<Vec<String>> {
    let some = |name: &str, value: Option<u32>| value.map(|value| format!("{name} == Some(0x{value:X})"));
    let plain = |name: &str, value: Option<u32>| value.map(|value| format!("{name} == 0x{value:X}"));
    let all = |tests: Vec<Option<String>>| vec![tests.into_iter().flatten().collect::<Vec<_>>()];
    match identifier {
        Identifier::Xl { acceptance, priority } => {
            all(vec![plain("acceptance", Some(*acceptance)), plain("priority", priority.map(u32::from))])
        }
        Identifier::Telegram { source, target, starts } => {
            let list: Vec<String> = starts.iter().map(|byte| format!("0x{byte:02X}")).collect();
            let begins = (!starts.is_empty()).then(|| format!("payload.starts_with(&[{}])", list.join(", ")));
            all(vec![some("source", source.map(u32::from)), some("target", target.map(u32::from)), begins])
        }
        Identifier::Most { block, instance, function, operation } => all(vec![
            plain("block", Some((*block).into())),
            plain("instance", instance.map(u32::from)),
            plain("function", Some((*function).into())),
            plain("operation", operation.map(u32::from)),
        ]),
        Identifier::SomeIp { service, method, message_type } => all(vec![
            plain("service", Some((*service).into())),
            plain("method", Some((*method).into())),
            plain("message_type", message_type.map(u32::from)),
        ]),
        Identifier::Port { protocol, port } => {
            let protocol = if *protocol == PortProtocol::Tcp { "is_tcp" } else { "!is_tcp" };
            ["to", "from"].map(|end| vec![format!("{end} == {port}"), protocol.to_owned()]).to_vec()
        }
        Identifier::DoIp { payload_type, source, target } => all(vec![
            plain("payload_type", Some((*payload_type).into())),
            some("source", source.map(u32::from)),
            some("target", target.map(u32::from)),
        ]),
        Identifier::Can { .. } | Identifier::Pgn { .. } | Identifier::Lin { .. } | Identifier::FlexRay { .. } => {
            Vec::new()
        }
    }
}

/// How much an identifier leaves open; less is narrower.
fn width(identifier: &Identifier) -> usize {
    match identifier {
        Identifier::Xl { priority, .. } => usize::from(priority.is_none()),
        Identifier::FlexRay { repetition, .. } => 64 / usize::from(*repetition).max(1),
        Identifier::Most { instance, operation, .. } => {
            usize::from(instance.is_none()) + usize::from(operation.is_none())
        }
        Identifier::SomeIp { message_type, .. } => usize::from(message_type.is_none()),
        Identifier::DoIp { source, target, .. } => usize::from(source.is_none()) + usize::from(target.is_none()),
        // The longest beginning first; an address says as much as one byte.
        Identifier::Telegram { source, target, starts } => {
            1000_usize.saturating_sub(starts.len() + usize::from(source.is_some()) + usize::from(target.is_some()))
        }
        Identifier::Can { .. } | Identifier::Pgn { .. } | Identifier::Lin { .. } | Identifier::Port { .. } => 0,
    }
}
