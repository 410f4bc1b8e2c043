//! How messages on Ethernet and on single-wire networks are recognised.

use wirelore_model::PortProtocol;

use super::basic::{keyword, want_so, word};
use super::cursor::{Cursor, Parsed};
use super::number::any_integer;
use super::tree::{Integer, MessageSort, Recognition};
use crate::Spanned;
use crate::lex::TokenKind;

/// The words that begin such a recognition.
pub(super) const WORDS: [&str; 8] = ["service", "udp", "tcp", "doip", "from", "to", "starts", "any"];

/// A recognition that begins with one of [`WORDS`].
pub(super) fn recognition(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    match i.word() {
        "service" => service(i),
        "udp" => port(i, PortProtocol::Udp),
        "tcp" => port(i, PortProtocol::Tcp),
        "doip" => doip(i),
        _ => telegram(i),
    }
}

const SERVICE: &str =
    "messages of SOME/IP are recognised as `service 0x4A10 event 0x8001` or `service 0x4A10 method 0x0001 response`";

/// `service 0x4A10 event 0x8001`, `service 0x4A10 method 0x0001 response`
fn service(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    let (behind, service) = want_so("the number of the service", SERVICE, any_integer)(i.next())?;
    let is_event = behind.word() == "event";
    let (behind, _) = if is_event { word("event")(behind)? } else { keyword("method", SERVICE)(behind)? };
    let what = if is_event { "the number of the event" } else { "the number of the method" };
    let (behind, method) = want_so(what, SERVICE, any_integer)(behind)?;
    let sort = MessageSort::ALL.iter().find(|sort| sort.word() == behind.word());
    let (behind, sort) = match sort {
        Some(&sort) => (behind.next(), Some(sort)),
        None => (behind, None),
    };
    Ok((behind, Recognition::Service { service, is_event, method, sort }))
}

const PORT: &str = "whatever goes to a port, or comes from it, is recognised as `udp port 41200` or `tcp port 41200`";

/// `udp port 41200`
fn port(i: Cursor<'_>, protocol: PortProtocol) -> Parsed<'_, Recognition<'_>> {
    let (behind, _) = keyword("port", PORT)(i.next())?;
    let (behind, port) = want_so("the number of the port", PORT, any_integer)(behind)?;
    Ok((behind, Recognition::Port { protocol, port }))
}

const DOIP: &str = "messages of DoIP are recognised by their payload type: `doip 0x8001 from 0x0E00 to 0x1001`";

/// `doip 0x8001 from 0x0E00 to 0x1001`
fn doip(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    let (behind, payload_type) = want_so("the payload type", DOIP, any_integer)(i.next())?;
    let (behind, source) = after("from", "the address of the sender", DOIP, behind)?;
    let (behind, target) = after("to", "the address of the receiver", DOIP, behind)?;
    Ok((behind, Recognition::DoIp { payload_type, source, target }))
}

const TELEGRAM: &str = "messages of single-wire networks are recognised by their addresses and first bytes: \
                        `from 0x10 to 0xF1 starts 0x41 0x0C`, or `any message`";

/// `from 0x10 to 0xF1 starts 0x41 0x0C`, `any message`
fn telegram(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    if i.word() == "any" {
        let (behind, _) = keyword("message", TELEGRAM)(i.next())?;
        return Ok((behind, Recognition::Telegram { source: None, target: None, starts: Vec::new() }));
    }
    let (behind, source) = after("from", "the address of the sender", TELEGRAM, i)?;
    let (behind, target) = after("to", "the address of the receiver", TELEGRAM, behind)?;
    let (behind, starts) = starts(behind)?;
    Ok((behind, Recognition::Telegram { source, target, starts }))
}

/// `starts 0x41 0x0C`
fn starts(i: Cursor<'_>) -> Parsed<'_, Vec<Integer>> {
    let Ok((behind, _)) = word("starts")(i) else { return Ok((i, Vec::new())) };
    let (mut i, first) = want_so("the first byte", TELEGRAM, any_integer)(behind)?;
    let mut bytes = vec![first];
    while i.kind() == Some(TokenKind::Number) {
        let (behind, byte) = any_integer(i)?;
        bytes.push(byte);
        i = behind;
    }
    Ok((i, bytes))
}

/// A number behind a word, if the word is there.
fn after<'a>(
    before: &'static str,
    what: &'static str,
    help: &'static str,
    i: Cursor<'a>,
) -> Parsed<'a, Option<Integer>> {
    let Ok((behind, _)) = word(before)(i) else { return Ok((i, None)) };
    let (behind, number) = want_so(what, help, any_integer)(behind)?;
    Ok((behind, Some(number)))
}

/// The clauses of a `uart` network that say what its messages look like.
pub(super) mod form {
    use super::{Cursor, Integer, Parsed, Spanned, keyword, want_so};
    use crate::syntax::clause::check_once;
    use crate::syntax::number::any_integer;
    use crate::syntax::time::time;
    use crate::syntax::tree::{CheckByte, SizeByte, TelegramClauses};

    pub(in crate::syntax) const WORDS: [&str; 6] = ["source", "target", "size", "xor", "sum", "gap"];

    const HELP: &str = "the messages of a `uart` network are described by `source byte 0`, `target byte 2`, \
                        `size byte 1 counts from byte 2`, `xor byte last` or `sum byte last`, `gap 20 ms`";

    pub(in crate::syntax) fn begins(i: Cursor<'_>) -> bool {
        match i.word() {
            "gap" => i.nth_kind(1) == Some(crate::lex::TokenKind::Number),
            word => WORDS.contains(&word) && i.next().word() == "byte",
        }
    }

    /// One clause, whose word is looked at already.
    pub(in crate::syntax) fn clause<'a>(word: &str, i: Cursor<'a>, into: &mut TelegramClauses) -> Parsed<'a, ()> {
        match word {
            "source" => place(word, i, &mut into.source),
            "target" => place(word, i, &mut into.target),
            "size" => {
                check_once(i, word, into.size.map(|size| size.span));
                let (behind, byte) = byte(i)?;
                let (behind, _) = keyword("counts", HELP)(behind)?;
                let (behind, _) = keyword("from", HELP)(behind)?;
                let (behind, _) = keyword("byte", HELP)(behind)?;
                let (behind, counts_from) = want_so("the first byte that it counts", HELP, any_integer)(behind)?;
                into.size.get_or_insert(Spanned::new(SizeByte { byte, counts_from }, i.span_to(behind)));
                Ok((behind, ()))
            }
            "gap" => {
                check_once(i, word, into.gap.map(|gap| gap.span));
                let (behind, gap) = want_so("the longest pause inside a message", HELP, time)(i.next())?;
                into.gap.get_or_insert(gap);
                Ok((behind, ()))
            }
            _ => {
                check_once(i, word, into.check.map(|check| check.span));
                let check = if word == "xor" { CheckByte::Xor } else { CheckByte::Sum };
                let (behind, _) = keyword("byte", HELP)(i.next())?;
                let (behind, _) = keyword("last", HELP)(behind)?;
                into.check.get_or_insert(Spanned::new(check, i.span_to(behind)));
                Ok((behind, ()))
            }
        }
    }

    fn place<'a>(word: &str, i: Cursor<'a>, into: &mut Option<Integer>) -> Parsed<'a, ()> {
        check_once(i, word, into.map(|place| place.span));
        let (behind, place) = byte(i)?;
        into.get_or_insert(place);
        Ok((behind, ()))
    }

    /// `byte 2` behind the clause's word.
    fn byte(i: Cursor<'_>) -> Parsed<'_, Integer> {
        let (behind, _) = keyword("byte", HELP)(i.next())?;
        want_so("the number of the byte", HELP, any_integer)(behind)
    }
}
