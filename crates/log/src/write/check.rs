//! Whether a frame can exist, as far as its own fields tell, and would come back as it is.

use crate::faults::Faults;
use crate::flexray;
use crate::frame::{
    CLASSIC_BYTES_MAX, EXTENDED_ID_MAX, FD_BYTES_MAX, Frame, Kind, STANDARD_ID_MAX, XL_BYTES_MAX, dlc_of_length,
};
use crate::lin;
use crate::medium::{FlexRay, Lin, Medium};
use crate::record::{ETHERNET_BYTES_MAX, ETHERNET_HEADER_BYTES, LinkType};

/// Checks a frame for a channel of this link type; the error says what cannot be.
pub(super) fn frame(frame: &Frame<'_>, link: LinkType) -> Result<(), String> {
    match (link, &frame.medium) {
        (LinkType::Can, Medium::Can) => can(frame),
        (LinkType::Can, Medium::CanXl(_)) => can_xl(frame),
        (LinkType::Lin, Medium::Lin(it)) => lin(frame, it),
        (LinkType::FlexRay, Medium::FlexRay(it)) => flexray(frame, it),
        (LinkType::Ethernet, Medium::Ethernet) => ethernet(frame),
        (_, Medium::Most(_) | Medium::Serial) => {
            let network = if frame.medium == Medium::Serial { "a single-wire network" } else { "MOST" };
            Err(format!("it is of {network}, for which no layout of packets is published; keep such frames as text"))
        }
        (_, medium) => Err(format!("it is {}, and its channel is one of {}", word(medium), name(link))),
    }
}

fn word(medium: &Medium) -> &'static str {
    match medium {
        Medium::Can | Medium::CanXl(_) => "a CAN frame",
        Medium::Lin(_) => "a LIN frame",
        Medium::FlexRay(_) => "a FlexRay frame",
        Medium::Most(_) => "a MOST message",
        Medium::Serial => "a single-wire message",
        Medium::Ethernet => "an Ethernet frame",
    }
}

fn name(link: LinkType) -> &'static str {
    match link {
        LinkType::Can => "CAN",
        LinkType::Lin => "LIN",
        LinkType::FlexRay => "FlexRay",
        LinkType::Ethernet => "Ethernet",
    }
}

fn of_kinds(frame: &Frame<'_>, kinds: &[Kind]) -> Result<(), String> {
    let of = word(&frame.medium);
    if kinds.contains(&frame.kind) { Ok(()) } else { Err(format!("{of} is never of the kind {:?}", frame.kind)) }
}

fn id_up_to(frame: &Frame<'_>, most: u32) -> Result<(), String> {
    if frame.id > most { Err(format!("its identifier {:X} is larger than {most:X}", frame.id)) } else { Ok(()) }
}

/// Whether nothing is told that only CAN frames have.
fn is_plain(frame: &Frame<'_>) -> Result<(), String> {
    let is_bare = !(frame.extended || frame.fd || frame.bit_rate_switch || frame.error_state) && frame.dlc.is_none();
    let of = word(&frame.medium);
    if is_bare { Ok(()) } else { Err(format!("{of} has no 29-bit identifier, no data length code and no CAN FD bits")) }
}

fn wrong_length(frame: &Frame<'_>) -> String {
    format!("it has {} data bytes, which such a frame cannot have", frame.payload.len())
}

fn can(frame: &Frame<'_>) -> Result<(), String> {
    of_kinds(frame, &[Kind::Data, Kind::Remote, Kind::Error])?;
    let id_max = if frame.extended { EXTENDED_ID_MAX } else { STANDARD_ID_MAX };
    if frame.kind != Kind::Error || frame.id > EXTENDED_ID_MAX {
        id_up_to(frame, id_max)?;
    }
    let bytes_max = if frame.fd { FD_BYTES_MAX } else { CLASSIC_BYTES_MAX };
    let bytes = frame.payload.len();
    if bytes > bytes_max || dlc_of_length(bytes).is_none() {
        return Err(wrong_length(frame));
    }
    if frame.kind == Kind::Remote && (bytes > 0 || frame.fd) {
        return Err("a remote frame has no data and is never CAN FD".to_owned());
    }
    if !frame.fd && (frame.bit_rate_switch || frame.error_state) {
        return Err("only CAN FD frames have a bit rate switch or an error state".to_owned());
    }
    match frame.dlc {
        Some(code) if !is_code_of(code, frame) => {
            Err(format!("its data length code {code} is not one of {bytes} data bytes"))
        }
        _ => Ok(()),
    }
}

/// Whether a data length code may stand in the frame: that of a remote frame tells the length of the answer.
fn is_code_of(code: u8, frame: &Frame<'_>) -> bool {
    let bytes = frame.payload.len();
    match (frame.kind, frame.fd) {
        (Kind::Remote, _) => code <= 15,
        (_, true) => dlc_of_length(bytes) == Some(code),
        (_, false) => usize::from(code) == bytes || (bytes == CLASSIC_BYTES_MAX && code <= 15 && code > 8),
    }
}

fn can_xl(frame: &Frame<'_>) -> Result<(), String> {
    of_kinds(frame, &[Kind::Data])?;
    is_plain(frame)?;
    id_up_to(frame, STANDARD_ID_MAX)?;
    if (1..=XL_BYTES_MAX).contains(&frame.payload.len()) { Ok(()) } else { Err(wrong_length(frame)) }
}

/// Whether the faults are those of the network, and there are some just where the frame is faulty.
fn faults(frame: &Frame<'_>, possible: Faults) -> Result<(), String> {
    let faults = frame.medium.faults();
    if !possible.contains(faults) {
        return Err(format!("{} has no such faults ({faults})", word(&frame.medium)));
    }
    match (frame.kind, faults.is_empty()) {
        (Kind::Faulty, true) => Err("it is faulty, and none of its faults is told".to_owned()),
        (Kind::Faulty, false) | (_, true) => Ok(()),
        (_, false) => Err(format!("it has faults ({faults}), and its kind does not say so")),
    }
}

fn lin(frame: &Frame<'_>, lin: &Lin) -> Result<(), String> {
    of_kinds(frame, &[Kind::Data, Kind::Unanswered, Kind::Faulty, Kind::Signal])?;
    is_plain(frame)?;
    faults(frame, Faults::OF_LIN)?;
    let (data, has_data) = (frame.payload, !frame.payload.is_empty());
    if frame.kind == Kind::Signal {
        return if has_data { Err("an event has no data but its code".to_owned()) } else { Ok(()) };
    }
    id_up_to(frame, lin::ID_MAX.into())?;
    if data.len() > lin::BYTES_MAX || (frame.kind == Kind::Data && !has_data) {
        return Err(wrong_length(frame));
    }
    if frame.kind == Kind::Unanswered && has_data {
        return Err("a header that nobody answered has no data".to_owned());
    }
    let protected_id = lin.protected_id.unwrap_or_else(|| lin::protected(frame.id as u8));
    if u32::from(protected_id & lin::ID_MAX) != frame.id {
        return Err(format!(
            "its identifier {:X} is not the one of the protected identifier {protected_id:02X}",
            frame.id
        ));
    }
    if !lin::is_parity_right(protected_id) && !lin.faults.contains(Faults::PARITY) {
        return Err(format!(
            "the parity of the protected identifier {protected_id:02X} is wrong, and its faults do not say so"
        ));
    }
    let is_wrong =
        |sent| has_data && lin.checksum_kind.is_some() && !lin::fits(lin.checksum_kind, protected_id, data, sent);
    let is_blamed = lin.faults.contains(Faults::CHECKSUM);
    match lin.checksum {
        Some(0) if has_data && lin.checksum_kind.is_none() && !is_blamed && !lin::fits(None, protected_id, data, 0) => {
            Err("its checksum 00 fits as neither kind and would be read as none; leave it out".to_owned())
        }
        Some(sent) if is_wrong(sent) && !is_blamed => {
            Err(format!("its checksum {sent:02X} is wrong, and its faults do not say so"))
        }
        _ => Ok(()),
    }
}

fn flexray(frame: &Frame<'_>, told: &FlexRay) -> Result<(), String> {
    const SYMBOL_BITS_MAX: u32 = 127;
    of_kinds(frame, &[Kind::Data, Kind::Null, Kind::Faulty, Kind::Signal])?;
    is_plain(frame)?;
    faults(frame, Faults::OF_FLEXRAY)?;
    let bytes = frame.payload.len();
    if frame.kind == Kind::Signal {
        let is_symbol = frame.id <= SYMBOL_BITS_MAX && bytes == 0;
        return if is_symbol { Ok(()) } else { Err("a symbol has 0 to 127 bits, and no data".to_owned()) };
    }
    if frame.id > flexray::SLOT_MAX.into() || (frame.id == 0 && !told.faults.contains(Faults::IDENTIFIER)) {
        return Err(format!("its slot is {}, and slots are counted from 1 to {}", frame.id, flexray::SLOT_MAX));
    }
    if told.cycle > flexray::CYCLE_MAX {
        return Err(format!("its cycle is {}, and cycles are counted from 0 to {}", told.cycle, flexray::CYCLE_MAX));
    }
    if bytes > flexray::BYTES_MAX || !bytes.is_multiple_of(2) {
        return Err(wrong_length(frame));
    }
    let header = flexray::Header {
        preamble: told.preamble,
        carries_data: frame.kind != Kind::Null,
        sync: told.sync,
        startup: told.startup,
        slot: frame.id as u16,
        words: (bytes / 2) as u8,
        cycle: told.cycle,
    };
    match told.header_crc {
        Some(crc) if crc != header.crc() && !told.faults.contains(Faults::HEADER_CRC) => {
            Err(format!("its header CRC {crc:03X} is wrong, and its faults do not say so"))
        }
        Some(crc) if crc > 0x7FF => Err(format!("its header CRC {crc:X} has more than 11 bits")),
        _ => Ok(()),
    }
}

fn ethernet(frame: &Frame<'_>) -> Result<(), String> {
    of_kinds(frame, &[Kind::Data])?;
    is_plain(frame)?;
    id_up_to(frame, 0)?;
    let is_possible = (ETHERNET_HEADER_BYTES..=ETHERNET_BYTES_MAX).contains(&frame.payload.len());
    if is_possible { Ok(()) } else { Err(wrong_length(frame)) }
}
