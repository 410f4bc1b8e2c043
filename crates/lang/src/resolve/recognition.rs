//! How frames are recognised: CAN identifiers, SAE J1939 parameter groups, LIN identifiers. Other networks: see [`elsewhere`].

use wirelore_bits::lin::{self, LinChecksum};
use wirelore_model::{EcuId, Identifier, NetworkId, NetworkKind, pgn_of};

use crate::syntax::tree::{Integer, RawRange, Recognition, Source};
use crate::{Diagnostic, FileId, Rule, Span, Spanned};

use super::Resolver;
use super::elsewhere;
use super::messages::{Messages, at};
use super::packets;

/// The largest identifiers (ISO 11898-1): 11 bits, and 29 bits if extended.
const LARGEST: i128 = 0x7FF;
const LARGEST_EXTENDED: i128 = 0x1FFF_FFFF;

/// The largest parameter group number (SAE J1939-21): 18 bits.
const LARGEST_PGN: i128 = 0x3_FFFF;

/// The largest address that a unit can claim (SAE J1939-81); 254 and 255 mean nobody and everybody.
const LARGEST_ADDRESS: i128 = 253;

/// The address that units send from which have none: that they cannot claim one, or who has which (SAE J1939-81, from memory).
const NO_ADDRESS: i128 = 254;

/// Reads how a frame is recognised, and which units that names as its sources. `None` where it makes no sense; a message says so.
pub(crate) fn read(
    resolver: &mut Resolver<'_, '_>,
    file: FileId,
    recognition: &Spanned<Recognition>,
    network: Option<NetworkId>,
) -> Option<(Identifier, Vec<EcuId>)> {
    let kind = network.and_then(|network| resolver.catalogue.kind(network));
    let (identifier, sources) = identifier(resolver, file, recognition, network, kind)?;
    if let Some(kind) = kind.filter(|kind| !identifier.belongs_on(*kind)) {
        let text = format!("frames of a `{}` network are not recognised like this", kind.keyword());
        let message = Diagnostic::new(Rule::RecognitionDoesNotFit, at(file, recognition.span), text);
        resolver.messages.push(message.here("of another kind of network").help(ways(kind)));
        return None;
    }
    Some((identifier, sources))
}

/// How frames of a network are recognised, for whoever wrote something else.
fn ways(kind: NetworkKind) -> &'static str {
    match kind {
        NetworkKind::Can | NetworkKind::CanFd => "write `id 0x1B4`, `id 0x18FEF100 extended` or `pgn 65265`",
        NetworkKind::CanXl => "write `xl 0x11223344`, or for a frame of CAN FD `id 0x1B4`",
        NetworkKind::Lin => "write `id 0x23`, without the parity bits, or `pid 0xA3`, with them",
        NetworkKind::Kline | NetworkKind::Uart => "write `from 0x10 to 0xF1`, `starts 0x41 0x0C` or `any message`",
        NetworkKind::Ethernet => {
            "write `service 0x4A10 event 0x8001`, `udp port 41200` or `doip 0x8001 from 0x0E00 to 0x1001`"
        }
        NetworkKind::FlexRay => "write `slot 42`, or `slot 42 from cycle 1 every 4th channel a`",
        NetworkKind::Most => "write `function 0x22.0x01.0x0D2`, or `function 0x22.any.0x0D2 operation status`",
    }
}

fn identifier(
    resolver: &mut Resolver<'_, '_>,
    file: FileId,
    recognition: &Spanned<Recognition>,
    network: Option<NetworkId>,
    kind: Option<NetworkKind>,
) -> Option<(Identifier, Vec<EcuId>)> {
    match &recognition.value {
        Recognition::Id { ids, extended } if kind == Some(NetworkKind::Lin) => {
            let id = lin_identifier(ids, *extended, file, resolver.messages)?;
            Some((self::lin(id), Vec::new()))
        }
        Recognition::Pid(written) => {
            let id = protected_identifier(written, file, resolver.messages)?;
            Some((self::lin(id), Vec::new()))
        }
        Recognition::Id { ids, extended } => {
            let (first, last, extended) = can_identifiers(ids, *extended, file, resolver.messages)?;
            Some((Identifier::Can { first, last, extended }, Vec::new()))
        }
        Recognition::Pgn { pgn, sources, priority } => {
            let mut addresses = Vec::with_capacity(sources.len());
            let mut ecus = Vec::new();
            let mut is_whole = true;
            for source in sources {
                match source_address(resolver, file, source, network, &mut ecus) {
                    Some(address) => addresses.push(address),
                    None => is_whole = false,
                }
            }
            let number = parameter_group(pgn, file, resolver.messages);
            let priority = match priority {
                Some(written) => Some(self::priority(written, file, resolver.messages)?),
                None => None,
            };
            addresses.sort_unstable();
            addresses.dedup();
            is_whole.then_some((Identifier::Pgn { pgn: number?, sources: addresses, priority }, ecus))
        }
        Recognition::Xl { .. } | Recognition::Slot { .. } | Recognition::Function { .. } => {
            Some((elsewhere::identifier(&recognition.value, file, resolver.messages)?, Vec::new()))
        }
        other => Some((packets::identifier(other, file, resolver.messages)?, Vec::new())),
    }
}

/// A LIN identifier with the checksum that it has where nothing is stated (LIN 2.2A, section 2.3.1.5).
pub(crate) fn lin(id: u8) -> Identifier {
    let checksum = if id < lin::FIRST_CLASSIC_ID { LinChecksum::Enhanced } else { LinChecksum::Classic };
    Identifier::Lin { id, checksum, stands_for: Vec::new() }
}

/// Reads a LIN identifier.
fn lin_identifier(ids: &RawRange, extended: Option<Span>, file: FileId, messages: &mut Messages) -> Option<u8> {
    let id = ids.first.value;
    let is_one = ids.first.value == ids.last.value && extended.is_none();
    if let Some(id) = u8::try_from(id).ok().filter(|id| is_one && *id <= lin::ID_MAX) {
        return Some(id);
    }
    let mut message =
        Diagnostic::new(Rule::IdTooLarge, at(file, ids.span), "this is not the identifier of a LIN frame");
    message = message.here("one number from 0 to 0x3F");
    if let Some(sent) = u8::try_from(id).ok().filter(|sent| is_one && lin::is_parity_right(*sent)) {
        let plain = sent & lin::ID_MAX;
        message =
            message.help(format!("as a protected identifier, `pid {sent:#04X}`, it stands for `id {plain:#04X}`"));
    }
    messages.push(message);
    None
}

/// Reads a LIN identifier that is written with its parity bits, as it was measured.
fn protected_identifier(written: &Integer, file: FileId, messages: &mut Messages) -> Option<u8> {
    let site = at(file, written.span);
    let Ok(sent) = u8::try_from(written.value) else {
        let message = Diagnostic::new(Rule::IdTooLarge, site, "a protected identifier is one byte");
        messages.push(message.here("one number from 0 to 0xFF"));
        return None;
    };
    let id = sent & lin::ID_MAX;
    if lin::is_parity_right(sent) {
        return Some(id);
    }
    let right = lin::protected(id);
    messages.push(
        Diagnostic::new(
            Rule::PidParity,
            site,
            format!("the parity bits of {sent:#04X} are not those of its identifier"),
        )
        .here(format!("bits 7 and 6 belong to another identifier than {id:#04X}"))
        .help(format!("if it is identifier {id:#04X}, write `pid {right:#04X}` or `id {id:#04X}`"))
        .help("if it was measured like this, the header was damaged on the wire: measure again"),
    );
    None
}

/// Reads one identifier or a run of them.
pub(crate) fn can_identifiers(
    ids: &RawRange,
    extended: Option<Span>,
    file: FileId,
    messages: &mut Messages,
) -> Option<(u32, u32, bool)> {
    let (first, last) = (ids.first.value, ids.last.value);
    let site = at(file, ids.span);
    let (low, high) = (first.min(last), first.max(last));
    let most = if extended.is_some() { LARGEST_EXTENDED } else { LARGEST };
    let trouble = if low < 0 || high > LARGEST_EXTENDED {
        Diagnostic::new(
            Rule::IdTooLarge,
            site,
            format!("no CAN identifier is {}", shown(if low < 0 { low } else { high })),
        )
        .here(format!("the largest is {LARGEST:#X}, or {LARGEST_EXTENDED:#X} if extended"))
    } else if high > most {
        Diagnostic::new(Rule::ExtendedMissing, site, format!("identifier {high:#X} has more than 11 bits"))
            .here(format!("without the word `extended` the largest is {LARGEST:#X}"))
            .help("write `extended` behind it if it is an identifier of 29 bits")
            .fix(at(file, ids.span.after()), " extended")
    } else if last < first {
        Diagnostic::new(Rule::IdsUpsideDown, site, "this run of identifiers goes downwards")
            .here("the smaller one comes first")
            .help(format!("write `{last:#X}..{first:#X}`"))
            .fix(site, format!("{last:#X}..{first:#X}"))
    } else {
        if let Some(word) = extended
            && last <= LARGEST
        {
            messages.push(
                Diagnostic::new(
                    Rule::ExtendedNeedless,
                    at(file, word),
                    format!("identifier {last:#X} would also be one of 11 bits"),
                )
                .here("rare for identifiers this small")
                .help("take `extended` out unless the recording really shows 29 bits: the two are different frames"),
            );
        }
        return Some((first as u32, last as u32, extended.is_some()));
    };
    messages.push(trouble);
    None
}

fn shown(number: i128) -> String {
    if number < 0 { number.to_string() } else { format!("{number:#X}") }
}

fn parameter_group(written: &Integer, file: FileId, messages: &mut Messages) -> Option<u32> {
    let site = at(file, written.span);
    let number = written.value;
    let Some(pgn) = u32::try_from(number).ok().filter(|_| number <= LARGEST_PGN) else {
        let mut message =
            Diagnostic::new(Rule::PgnImpossible, site, format!("no parameter group has the number {number}"))
                .here(format!("18 bits reach up to {LARGEST_PGN}"));
        if let Ok(id) = u32::try_from(number)
            && number <= LARGEST_EXTENDED
        {
            let pgn = pgn_of(id);
            message =
                message.help(format!("if {id:#X} is a whole identifier, its parameter group is {pgn} ({pgn:#X})"));
        }
        messages.push(message);
        return None;
    };
    let is_to_destination = (pgn >> 8) & 0xFF < 240;
    if is_to_destination && pgn & 0xFF != 0 {
        let group = pgn & 0x3_FF00;
        messages.push(
            Diagnostic::new(
                Rule::PgnImpossible,
                site,
                format!("parameter group {pgn} cannot be: its frames go to a destination"),
            )
            .here("the low byte belongs to the destination's address")
            .help(format!("write `pgn {group}` ({group:#X}); groups with PF below 240 have 0 there (SAE J1939-21)"))
            .fix(site, group.to_string()),
        );
        return None;
    }
    Some(pgn)
}

fn priority(written: &Integer, file: FileId, messages: &mut Messages) -> Option<u8> {
    if (0..=7).contains(&written.value) {
        return Some(written.value as u8);
    }
    let message =
        Diagnostic::new(Rule::PgnImpossible, at(file, written.span), format!("there is no priority {}", written.value));
    messages.push(message.here("0 (highest) to 7 (lowest)"));
    None
}

/// Reads an address that a unit can have.
pub(crate) fn address(written: &Integer, file: FileId, messages: &mut Messages) -> Option<u8> {
    if (0..=LARGEST_ADDRESS).contains(&written.value) {
        return Some(written.value as u8);
    }
    let message = Diagnostic::new(
        Rule::PgnImpossible,
        at(file, written.span),
        format!("no unit can have the address {}", written.value),
    );
    messages.push(message.here("0 to 253; 254 means nobody and 255 everybody"));
    None
}

fn source_address(
    resolver: &mut Resolver<'_, '_>,
    file: FileId,
    source: &Source,
    network: Option<NetworkId>,
    ecus: &mut Vec<EcuId>,
) -> Option<u8> {
    let name = match source {
        Source::Address(written) if written.value == NO_ADDRESS => return Some(NO_ADDRESS as u8),
        Source::Address(written) => return address(written, file, resolver.messages),
        Source::Ecu(name) => name,
    };
    let id = resolver.names.ecu(file, name, resolver.messages)?;
    ecus.push(id);
    let ecu = &resolver.catalogue.ecus[id.index()];
    if let Some(network) = network
        && !resolver.sits_on(id, network)
    {
        let message = resolver.not_on_network(Rule::SenderNotOnNetwork, at(file, name.span), id, network);
        resolver.messages.push(message);
        return None;
    }
    let Some(written) = &ecu.tree.address else {
        resolver.messages.push(
            Diagnostic::new(
                Rule::AddressMissing,
                at(file, name.span),
                format!("control unit `{}` has no address", name.value),
            )
            .here("its address is needed to recognise the frame")
            .remark(at(ecu.file, ecu.tree.head.name.span), "declared without one")
            .help("give it one, such as `address 0x0B`, or write the address here"),
        );
        return None;
    };
    address(written, ecu.file, resolver.messages)
}
