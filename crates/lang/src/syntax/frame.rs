//! Frames and layouts: their heads. What is between their braces is read by [`super::frame_body`].

use nom::Parser;
use nom::combinator::opt;
use wirelore_model::{LinChecksum, Transport};

use super::basic::{missing, name, one_of, want, want_so, word, words};
use super::block::{Open, find_open, opens_wrongly};
use super::clause::{COMMON, Clauses, begins_common, check_once, common, is_listed, names};
use super::cursor::{Cursor, Parsed, Problem, broken};
use super::flexray;
use super::frame_body::{Inside, body};
use super::map::{head, late_title};
use super::meant::over_equals;
use super::most;
use super::number::{any_integer, any_raw_range, integer};
use super::packets;
use super::recover::{skip_head, skip_until, tell};
use super::tree::{Body, Frame, Layout, Recognition, Source};
use crate::Spanned;
use crate::lex::TokenKind;

const LAYOUT: Clauses = Clauses { words: &COMMON, begins: begins_common, first_is_free: false, has_block: true };

/// `layout NAME "title" { ... }`
pub(super) fn layout(i: Cursor<'_>) -> Parsed<'_, Layout<'_>> {
    let (behind, mut head) = head("the layout's name")(i.next())?;
    let (behind, _) = LAYOUT.read(behind, |word, i| common(word, i, &mut head));
    let Some(open) = find_open(i, behind) else {
        let message = missing(behind, "the block with the layout's signals")
            .help("write `layout NAME { ... }` with a signal on each line");
        behind.context.report(message);
        return Ok((behind, Layout { head, body: Body::default() }));
    };
    let (behind, body) = body(open, Inside::Layout);
    Ok((behind, Layout { head, body }))
}

const FRAME: Clauses = Clauses {
    words: &[
        "carried",
        "optional",
        "classic",
        "enhanced",
        "stands",
        "called",
        "confirmed",
        "likely",
        "guessed",
        "measured",
        "from",
    ],
    begins: |i| match i.word() {
        "optional" | "classic" | "enhanced" => i.next().at_stop(),
        "carried" => i.next().word() == "by",
        "stands" => i.nth_word(1) == "for",
        _ => begins_common(i),
    },
    first_is_free: false,
    has_block: true,
};

/// `frame NAME "title" on NETWORK RECOGNITION[, clauses] { ... }`
///
/// Whatever is wrong with the head, the block is read.
pub(super) fn frame(begin: Cursor<'_>) -> Parsed<'_, Frame<'_>> {
    let (i, head) = match head("the frame's name")(begin.next()) {
        Ok(read) => read,
        Err(problem) => return without_head(begin, problem),
    };
    let mut frame = Frame {
        head,
        on: None,
        recognition: None,
        carried: None,
        optional: None,
        checksum: None,
        stands_for: Vec::new(),
        body: Body::default(),
    };
    let i = match place_and_recognition(i, &mut frame) {
        Ok((behind, ())) => behind,
        Err(problem) => {
            tell(i, problem);
            skip_until(i, |i| {
                i.kind() == Some(TokenKind::OpenBrace)
                    || opens_wrongly(i)
                    || (i.kind() == Some(TokenKind::Comma) && (FRAME.begins)(i.next()))
            })
        }
    };
    let i = late_title(i, &mut frame.head);
    let (behind, _) = FRAME.read(i, |word, i| clause(word, i, &mut frame));
    let Some(open) = find_open(begin, behind) else { return Ok((behind, frame)) };
    let (behind, body) = body(open, Inside::Frame);
    frame.body = body;
    Ok((behind, frame))
}

fn clause<'a>(word: &str, i: Cursor<'a>, frame: &mut Frame<'a>) -> Parsed<'a, ()> {
    let checksum = match word {
        "optional" => {
            check_once(i, word, frame.optional);
            frame.optional.get_or_insert(i.span());
            return Ok((i.next(), ()));
        }
        "carried" => {
            check_once(i, word, frame.carried.map(|carried| carried.span));
            let (behind, carried) = carried_by(i)?;
            frame.carried.get_or_insert(carried);
            return Ok((behind, ()));
        }
        "classic" => LinChecksum::Classic,
        "enhanced" => LinChecksum::Enhanced,
        "stands" => {
            const HELP: &str = "write `stands for FRAME, FRAME` with the frames that the answers can be";
            check_once(i, "stands for", frame.stands_for.first().map(|first| first.span));
            let (behind, _) = want_so("`for`", HELP, words("stands", "for"))(i)?;
            let (behind, frames) = want_so("the name of a frame", HELP, |i| names(i, FRAME))(behind)?;
            frame.stands_for.extend(frames);
            return Ok((behind, ()));
        }
        _ => return common(word, i, &mut frame.head),
    };
    check_once(i, "the kind of checksum", frame.checksum.map(|checksum| checksum.span));
    frame.checksum.get_or_insert(Spanned::new(checksum, i.span()));
    Ok((i.next(), ()))
}

const TRANSPORTS: [(&str, Transport); 2] = [("iso_tp", Transport::IsoTp), ("j1939_tp", Transport::J1939Tp)];
const ADDRESSINGS: [(&str, Transport); 2] = [("extended", Transport::IsoTpExtended), ("mixed", Transport::IsoTpMixed)];

/// `carried by iso_tp`, `carried by iso_tp extended`, `carried by j1939_tp`
fn carried_by(i: Cursor<'_>) -> Parsed<'_, Spanned<Transport>> {
    let (behind, _) = word("by")(i.next())?;
    let (behind, transport) = want_so(
        "`iso_tp` or `j1939_tp`",
        "messages longer than a frame are `carried by iso_tp` (ISO 15765-2) or `carried by j1939_tp` (SAE J1939-21)",
        one_of("a transport", &TRANSPORTS),
    )(behind)?;
    match ADDRESSINGS.iter().find(|(word, _)| transport.value == Transport::IsoTp && *word == behind.word()) {
        Some(&(_, addressed)) => Ok((behind.next(), Spanned::new(addressed, i.span_to(behind.next())))),
        None => Ok((behind, Spanned::new(transport.value, i.span_to(behind)))),
    }
}

/// A frame without a readable name cannot be kept, but what is wrong inside of it is told.
fn without_head(i: Cursor<'_>, problem: nom::Err<Problem>) -> Parsed<'_, Frame<'_>> {
    let behind = skip_head(i);
    if behind.kind() == Some(TokenKind::OpenBrace) {
        // Only for its messages.
        body(Open::at(behind), Inside::Frame);
    }
    Err(problem)
}

/// `on NETWORK RECOGNITION`
fn place_and_recognition<'a>(i: Cursor<'a>, frame: &mut Frame<'a>) -> Parsed<'a, ()> {
    const HELP: &str = "a frame is written `frame NAME on NETWORK id 0x1B4 { ... }`";
    let i = match word("on")(i) {
        Ok((behind, _)) => {
            let (behind, on) = want_so("the name of a network", HELP, name)(behind)?;
            frame.on = Some(on);
            behind
        }
        Err(_)
            if matches!(
                i.word(),
                "id" | "pid" | "pgn" | "xl" | "slot" | "function" | "service" | "udp" | "tcp" | "doip"
            ) =>
        {
            i.context.report(missing(i, "`on` and the frame's network").help(HELP));
            i
        }
        Err(_) => return broken(missing(i, "`on` and the frame's network").help(HELP)),
    };
    let (behind, recognition) = match i.word() {
        "id" => identifier(i),
        "pid" => protected_identifier(i),
        "pgn" => parameter_group(i),
        "xl" => acceptance(i),
        "slot" => flexray::slot(i),
        "function" => most::function(i),
        word if packets::WORDS.contains(&word) => packets::recognition(i),
        _ => broken(missing(i, "`id`, `pgn` or its like").help(
            "say how the frame is recognised: `id 0x1B4`, `id 0x18FEF100 extended`, `pgn 65265`, `slot 42`, `service 0x4A10 event 0x8001`",
        )),
    }?;
    frame.recognition = Some(Spanned::new(recognition, i.span_to(behind)));
    Ok((behind, ()))
}

/// `id 0x1B4`, `id 0x7E8..0x7EF`, `id 0x18FEF100 extended`
fn identifier(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    let (behind, ids) =
        want_so("the identifier", "identifiers are whole numbers, as in `id 0x1B4`", any_raw_range)(over_equals(i))?;
    let (behind, extended) = opt(word("extended")).parse(behind)?;
    Ok((behind, Recognition::Id { ids, extended }))
}

/// `pid 0x92`
fn protected_identifier(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    let help = "protected identifiers are written as they were measured, as in `pid 0x92`";
    want_so("the protected identifier", help, any_integer).map(Recognition::Pid).parse(over_equals(i))
}

/// `pgn 65265 from 0x0B, brakes priority 6`
fn parameter_group(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    let (behind, pgn) =
        want_so("the parameter group number", "parameter groups are whole numbers, as in `pgn 65265`", any_integer)(
            over_equals(i),
        )?;
    let (behind, sources) = opt(sources).parse(behind)?;
    let (behind, priority) = match word("priority")(behind) {
        Ok((behind, _)) => {
            let (behind, priority) = want("the priority, 0 to 7", integer)(behind)?;
            (behind, Some(priority))
        }
        Err(_) => (behind, None),
    };
    Ok((behind, Recognition::Pgn { pgn, sources: sources.unwrap_or_default(), priority }))
}

/// `xl 0x11223344 priority 0x123`
fn acceptance(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    let (behind, acceptance) = want_so(
        "the acceptance field",
        "frames of CAN XL are told apart by a number, as in `xl 0x11223344`",
        any_integer,
    )(over_equals(i))?;
    let (behind, priority) = match word("priority")(behind) {
        Ok((behind, _)) => want("the priority, 0 to 0x7FF", any_integer).map(Some).parse(behind)?,
        Err(_) => (behind, None),
    };
    Ok((behind, Recognition::Xl { acceptance, priority }))
}

/// `from 0x0B, brakes`
fn sources(i: Cursor<'_>) -> Parsed<'_, Vec<Source<'_>>> {
    let (behind, _) = word("from")(i)?;
    let (mut i, first) = want("an address or a control unit", source)(behind)?;
    let mut all = vec![first];
    while i.kind() == Some(TokenKind::Comma) && (i.nth_kind(1) == Some(TokenKind::Number) || is_listed(i.next(), FRAME))
    {
        let (behind, next) = source(i.next())?;
        all.push(next);
        i = behind;
    }
    Ok((i, all))
}

fn source(i: Cursor<'_>) -> Parsed<'_, Source<'_>> {
    match integer(i) {
        Err(nom::Err::Error(_)) => name.map(Source::Ecu).parse(i),
        read => read.map(|(behind, address)| (behind, Source::Address(address))),
    }
}
