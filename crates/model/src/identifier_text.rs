//! Identifiers in words: as the language writes them, and as a recording shows them. Nothing reads them here.

use std::fmt::Write;

use crate::{Appearance, Database, FlexRayChannels, Identifier, PortProtocol, SeenId};

/// The operations of MOST control messages (MOST Specification 3.0, from memory): what can be done with a property, then with a method.
pub const MOST_OPERATIONS: [(&str, u8); 21] = [
    ("set", 0x0),
    ("get", 0x1),
    ("set_get", 0x2),
    ("increment", 0x3),
    ("decrement", 0x4),
    ("get_interface", 0x5),
    ("status", 0xC),
    ("interface", 0xD),
    ("error", 0xF),
    ("start", 0x0),
    ("abort", 0x1),
    ("start_result", 0x2),
    ("start_result_ack", 0x6),
    ("abort_ack", 0x7),
    ("start_ack", 0x8),
    ("error_ack", 0x9),
    ("processing_ack", 0xA),
    ("processing", 0xB),
    ("result", 0xC),
    ("result_ack", 0xD),
    ("method_interface", 0xE),
];

/// ` operation error`; where it depends on the function which of two words is meant, ` operation 0xC (status or result)`.
fn operation_text(operation: u8) -> String {
    let words = MOST_OPERATIONS.iter().filter(|(_, number)| *number == operation).map(|(word, _)| *word);
    match words.collect::<Vec<_>>().as_slice() {
        [] => format!(" operation 0x{operation:X}"),
        [word] => format!(" operation {word}"),
        words => format!(" operation 0x{operation:X} ({})", words.join(" or ")),
    }
}

/// Where a frame is seen and how it is recognised there: `drive id 0x1B4`, `body pgn 65265 from 0x00`.
#[must_use]
pub fn appearance_text(database: &Database, appearance: &Appearance) -> String {
    let network = &database.networks[appearance.network.index()].label.name;
    format!("{network} {}", identifier_text(&appearance.identifier))
}

/// How a frame is recognised, as the language writes it.
#[must_use]
pub fn identifier_text(identifier: &Identifier) -> String {
    match identifier {
        Identifier::Can { first, last, extended } => {
            let digits = if *extended { 8 } else { 3 };
            let long = if *extended { " extended" } else { "" };
            if first == last {
                format!("id 0x{first:0digits$X}{long}")
            } else {
                format!("id 0x{first:0digits$X}..0x{last:0digits$X}{long}")
            }
        }
        Identifier::Pgn { pgn, sources, priority } => {
            let mut text = format!("pgn {pgn}");
            if !sources.is_empty() {
                let list = sources.iter().map(|source| format!("0x{source:02X}")).collect::<Vec<_>>().join(", ");
                let _ = write!(text, " from {list}");
            }
            if let Some(priority) = priority {
                let _ = write!(text, " priority {priority}");
            }
            text
        }
        other => other_network_text(other),
    }
}

/// An identifier of a network that is not CAN, or of CAN XL.
fn other_network_text(identifier: &Identifier) -> String {
    let mut text = String::new();
    let _ = match identifier {
        Identifier::Can { .. } | Identifier::Pgn { .. } => Ok(()),
        Identifier::Xl { acceptance, priority } => {
            let priority = priority.map_or_else(String::new, |priority| format!(" priority 0x{priority:03X}"));
            write!(text, "xl 0x{acceptance:08X}{priority}")
        }
        Identifier::Lin { id, .. } => write!(text, "id 0x{id:02X}"),
        Identifier::FlexRay { slot, first_cycle, repetition, channels } => {
            let cycles = if *repetition == 1 { String::new() } else { cycles_text(*first_cycle, *repetition) };
            let channel = match channels {
                FlexRayChannels::A => " channel a",
                FlexRayChannels::B => " channel b",
                FlexRayChannels::Both => "",
            };
            write!(text, "slot {slot}{cycles}{channel}")
        }
        Identifier::Telegram { source, target, starts } => {
            let mut parts = Vec::new();
            parts.extend(source.map(|source| format!("from 0x{source:02X}")));
            parts.extend(target.map(|target| format!("to 0x{target:02X}")));
            if !starts.is_empty() {
                let bytes = starts.iter().map(|byte| format!(" 0x{byte:02X}")).collect::<String>();
                parts.push(format!("starts{bytes}"));
            }
            write!(text, "{}", if parts.is_empty() { "any message".to_owned() } else { parts.join(" ") })
        }
        Identifier::Most { block, instance, function, operation } => {
            let instance = instance.map_or_else(|| "any".to_owned(), |instance| format!("0x{instance:02X}"));
            let operation = operation.map_or_else(String::new, operation_text);
            write!(text, "function 0x{block:02X}.{instance}.0x{function:03X}{operation}")
        }
        Identifier::SomeIp { service, method, message_type } => {
            let word = if *method < FIRST_EVENT { "method" } else { "event" };
            let sort = message_type.map_or_else(String::new, message_type_text);
            write!(text, "service 0x{service:04X} {word} 0x{method:04X}{sort}")
        }
        Identifier::Port { protocol, port } => write!(text, "{} port {port}", protocol_word(*protocol)),
        Identifier::DoIp { payload_type, source, target } => {
            let source = source.map_or_else(String::new, |source| format!(" from 0x{source:04X}"));
            let target = target.map_or_else(String::new, |target| format!(" to 0x{target:04X}"));
            write!(text, "doip 0x{payload_type:04X}{source}{target}")
        }
    };
    text
}

/// The word for a message type of SOME/IP (AUTOSAR PRS SOME/IP Protocol).
#[must_use]
pub fn message_type_word(message_type: u8) -> Option<&'static str> {
    match message_type {
        0x00 => Some("request"),
        0x01 => Some("request_no_return"),
        0x02 => Some("notification"),
        0x80 => Some("response"),
        0x81 => Some("error"),
        _ => None,
    }
}

fn message_type_text(message_type: u8) -> String {
    message_type_word(message_type).map_or_else(|| format!(" type 0x{message_type:02X}"), |word| format!(" {word}"))
}

/// Events of SOME/IP have the highest bit of their number set.
const FIRST_EVENT: u16 = 0x8000;

/// ` from cycle 1 every 4th`
fn cycles_text(first: u8, every: u8) -> String {
    let ending = match (every % 100, every % 10) {
        (11..=13, _) => "th",
        (_, 1) => "st",
        (_, 2) => "nd",
        (_, 3) => "rd",
        _ => "th",
    };
    format!(" from cycle {first} every {every}{ending}")
}

fn protocol_word(protocol: PortProtocol) -> &'static str {
    match protocol {
        PortProtocol::Udp => "udp",
        PortProtocol::Tcp => "tcp",
    }
}

/// What a recorded frame shows of itself, in the words of the trade: `0x1B4`, `slot 42 cycle 5 channel a`, `service 0x4A10 event 0x8001`.
#[must_use]
pub fn seen_text(seen: SeenId) -> String {
    let address = |address: Option<u8>| address.map_or_else(|| "?".to_owned(), |address| format!("0x{address:02X}"));
    let logical = |address: Option<u16>| address.map_or_else(|| "?".to_owned(), |address| format!("0x{address:04X}"));
    match seen {
        SeenId::Can { id, extended: true } => format!("0x{id:08X}"),
        SeenId::Can { id, extended: false } => format!("0x{id:03X}"),
        SeenId::Xl { acceptance, priority } => format!("xl 0x{acceptance:08X} priority 0x{priority:03X}"),
        SeenId::Lin(id) => format!("0x{id:02X}"),
        SeenId::FlexRay { slot, cycle, on_b } => {
            format!("slot {slot} cycle {cycle} channel {}", if on_b { "b" } else { "a" })
        }
        SeenId::Telegram { source: None, target: None } => "a message without addresses".to_owned(),
        SeenId::Telegram { source, target } => format!("from {} to {}", address(source), address(target)),
        SeenId::Most { block, instance, function, operation } => {
            format!("function 0x{block:02X}.0x{instance:02X}.0x{function:03X}{}", operation_text(operation))
        }
        SeenId::SomeIp { service, method, message_type } => {
            let word = if method < FIRST_EVENT { "method" } else { "event" };
            format!("service 0x{service:04X} {word} 0x{method:04X}{}", message_type_text(message_type))
        }
        SeenId::Ports { protocol, from, to } => format!("{} port {from} to {to}", protocol_word(protocol)),
        SeenId::DoIp { payload_type, source: None, target: None } => format!("doip 0x{payload_type:04X}"),
        SeenId::DoIp { payload_type, source, target } => {
            format!("doip 0x{payload_type:04X} from {} to {}", logical(source), logical(target))
        }
        SeenId::Packet { ether_type } => format!("EtherType 0x{ether_type:04X}"),
    }
}
