//! The map: vehicle, networks, control units, wires.

use nom::Parser;
use nom::combinator::opt;
use wirelore_model::{NetworkKind, nearest_name};

use super::basic::{comma_list, keyword, leaf, name, one_of, shortened, text, want, want_so};
use super::clause::{COMMON, Clauses, begins_common, check_once, common, names};
use super::cursor::{Cursor, Parsed, Problem};
use super::flexray;
use super::item::order;
use super::meant::over_equals;
use super::number::{any_integer, integer};
use super::packets::form;
use super::recover::{skip_until, tell};
use super::time::rate;
use super::tree::{Ecu, FlexRayClauses, Head, Network, TelegramClauses, Wire, WiringClauses};
use super::wiring;
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule};

/// The name and title behind a word. Whatever the name is: here it is a name.
pub(super) fn head<'a>(what: &'static str) -> impl Fn(Cursor<'a>) -> Parsed<'a, Head<'a>> {
    move |i| {
        let (behind, name) = want(what, name)(i)?;
        let (behind, title) = opt(text).parse(behind)?;
        Ok((behind, Head { name, title, called: None, certainty: None }))
    }
}

/// A title that does not stand behind the name: told, and taken all the same.
pub(super) fn late_title<'a>(i: Cursor<'a>, head: &mut Head<'a>) -> Cursor<'a> {
    let Ok((behind, title)) = text(i) else { return i };
    let message = Diagnostic::new(
        Rule::UnexpectedWord,
        i.site(title.span),
        "a title stands directly behind the name, and nowhere else",
    )
    .here(format!("belongs behind `{}`", head.name.value))
    .remark(i.site(head.name.span), "the title belongs behind this name");
    i.context.report(message);
    head.title.get_or_insert(title);
    behind
}

const VEHICLE: Clauses = Clauses { words: &COMMON, begins: begins_common, first_is_free: false, has_block: false };

/// `vehicle NAME "title"`
pub(super) fn vehicle(i: Cursor<'_>) -> Parsed<'_, Head<'_>> {
    let (behind, mut head) = head("the vehicle's name")(i.next())?;
    let (behind, _) = VEHICLE.read(behind, |word, i| common(word, i, &mut head));
    Ok((behind, head))
}

const KINDS: [(&str, NetworkKind); 9] = [
    ("can", NetworkKind::Can),
    ("can_fd", NetworkKind::CanFd),
    ("can_xl", NetworkKind::CanXl),
    ("lin", NetworkKind::Lin),
    ("kline", NetworkKind::Kline),
    ("uart", NetworkKind::Uart),
    ("flexray", NetworkKind::FlexRay),
    ("most", NetworkKind::Most),
    ("ethernet", NetworkKind::Ethernet),
];

const NETWORK: Clauses = Clauses {
    words: &[
        "data",
        "order",
        "source",
        "target",
        "size",
        "xor",
        "sum",
        "gap",
        "cycle",
        "static",
        "dynamic",
        "terminators",
        "star",
        "branch",
        "called",
        "confirmed",
        "likely",
        "guessed",
        "measured",
        "from",
    ],
    begins: |i| match i.word() {
        "data" => i.nth_kind(1) == Some(TokenKind::Number),
        "order" => i.nth_kind(1) == Some(TokenKind::Word),
        _ => form::begins(i) || flexray::begins_clause(i) || wiring::begins_clause(i) || begins_common(i),
    },
    first_is_free: false,
    has_block: false,
};

/// `network NAME "title" KIND RATE[, data RATE][, order ...][, cycle ...]`
pub(super) fn network(i: Cursor<'_>) -> Parsed<'_, Network<'_>> {
    let (behind, head) = head("the network's name")(i.next())?;
    let (telegram, flexray) = (TelegramClauses::default(), FlexRayClauses::default());
    let wiring = WiringClauses::default();
    let mut network = Network { head, kind: None, rate: None, data_rate: None, order: None, telegram, flexray, wiring };
    let i = network_kind(behind, &mut network);
    let i = late_title(i, &mut network.head);
    let (behind, _) = NETWORK.read(i, |word, i| match word {
        "data" => {
            check_once(i, word, network.data_rate.map(|rate| rate.span));
            let (behind, data_rate) = want("the rate of the data phase", rate)(i.next())?;
            network.data_rate.get_or_insert(data_rate);
            Ok((behind, ()))
        }
        "order" => {
            check_once(i, word, network.order.map(|order| order.span));
            let (behind, word) = order(i.next())?;
            network.order.get_or_insert(word);
            Ok((behind, ()))
        }
        _ if form::WORDS.contains(&word) => form::clause(word, i, &mut network.telegram),
        "cycle" | "static" | "dynamic" => flexray::clause(word, i, &mut network.flexray),
        _ if wiring::WORDS.contains(&word) => wiring::clause(word, i, NETWORK, &mut network.wiring),
        _ => common(word, i, &mut network.head),
    });
    Ok((behind, network))
}

/// `KIND RATE`: what cannot be read is told and skipped up to the clauses.
fn network_kind<'a>(i: Cursor<'a>, network: &mut Network) -> Cursor<'a> {
    let to_clause = |i| skip_until(i, |i| i.kind() == Some(TokenKind::Comma));
    let behind = match one_of("a kind of network", &KINDS)(i) {
        Ok((behind, kind)) => {
            network.kind = Some(kind);
            behind
        }
        Err(problem) => {
            tell(i, problem);
            return to_clause(i);
        }
    };
    match opt(rate).parse(behind) {
        Ok((behind, rate)) => {
            network.rate = rate;
            behind
        }
        Err(problem) => {
            tell(behind, problem);
            to_clause(behind)
        }
    }
}

const ECU: Clauses = Clauses {
    words: &[
        "on",
        "leads",
        "address",
        "ring",
        "optional",
        "called",
        "confirmed",
        "likely",
        "guessed",
        "measured",
        "from",
    ],
    begins: |i| match i.word() {
        "on" | "leads" => i.nth_kind(1) == Some(TokenKind::Word),
        "address" => i.nth_kind(1) == Some(TokenKind::Number),
        "ring" => i.nth_word(1) == "position",
        "optional" => i.next().at_stop(),
        _ => begins_common(i),
    },
    first_is_free: true,
    has_block: false,
};

const RING_HELP: &str = "places on a ring count along it from the timing master, which has 0: `ring position 3`";

/// `ecu NAME "title" on A, B, leads C, address 0x0B, ring position 3, optional`
pub(super) fn ecu(i: Cursor<'_>) -> Parsed<'_, Ecu<'_>> {
    let (i, head) = head("the control unit's name")(i.next())?;
    let mut ecu = Ecu { head, on: Vec::new(), leads: Vec::new(), address: None, ring_position: None, optional: None };
    let i = networks_without_on(i, &mut ecu)?;
    let (behind, _) = ECU.read(i, |word, i| {
        match word {
            "on" | "leads" => {
                let list = if word == "on" { &mut ecu.on } else { &mut ecu.leads };
                check_once(i, word, list.first().map(|first| first.span));
                let (behind, networks) = want("the name of a network", |i| names(i, ECU))(i.next())?;
                list.extend(networks);
                return Ok((behind, ()));
            }
            "address" => {
                check_once(i, word, ecu.address.map(|address| address.span));
                let (behind, address) =
                    want_so("the address", "an address is a number from 0 to 253, as in `address 0x0B`", any_integer)(
                        over_equals(i),
                    )?;
                ecu.address.get_or_insert(address);
                return Ok((behind, ()));
            }
            "ring" => {
                check_once(i, word, ecu.ring_position.map(|position| position.span));
                let (behind, _) = keyword("position", RING_HELP)(i.next())?;
                let (behind, position) = want_so("the position", RING_HELP, integer)(behind)?;
                ecu.ring_position.get_or_insert(position);
                return Ok((behind, ()));
            }
            "optional" => {
                check_once(i, word, ecu.optional);
                ecu.optional.get_or_insert(i.span());
                return Ok((i.next(), ()));
            }
            _ => {}
        }
        common(word, i, &mut ecu.head)
    });
    let behind = late_title(behind, &mut ecu.head);
    Ok((behind, ecu))
}

/// `ecu NAME "title" A, B`: the names of networks where only a clause can stand; told, and read as such.
fn networks_without_on<'a>(i: Cursor<'a>, ecu: &mut Ecu<'a>) -> Result<Cursor<'a>, nom::Err<Problem>> {
    let is_name = i.kind() == Some(TokenKind::Word)
        && i.next().at_stop()
        && !(ECU.begins)(i)
        && nearest_name(i.word(), ECU.words.iter().copied()).is_none();
    if !is_name {
        return Ok(i);
    }
    let place = i.site(i.previous().after());
    let message =
        Diagnostic::new(Rule::MissingPart, place, format!("`on` is missing in front of `{}`", shortened(i.word())))
            .here("put `on` here")
            .help("a control unit is written `ecu NAME \"title\" on NETWORK`")
            .fix(place, " on");
    i.context.report(message);
    let (behind, networks) = names(i, ECU)?;
    ecu.on = networks;
    Ok(behind)
}

/// `wire A -> B, C "what"`
pub(super) fn wire(i: Cursor<'_>) -> Parsed<'_, Wire<'_>> {
    const HELP: &str = "a wire goes from the control unit that drives it to those that read it: `wire brakes -> engine \"brake light switch\"`";
    let (behind, from) = want_so("the control unit that drives the wire", HELP, name)(i.next())?;
    let (behind, _) = want_so("`->`", HELP, leaf(TokenKind::Arrow))(behind)?;
    let (behind, to) = want_so("the control unit that reads the wire", HELP, comma_list(name))(behind)?;
    let (behind, what) = opt(text).parse(behind)?;
    Ok((behind, Wire { from, to, what }))
}
