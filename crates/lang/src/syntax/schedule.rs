//! Schedules of LIN networks and their slots.

use nom::Parser;

use super::basic::{keyword, missing, name, shortened, want, want_so, words};
use super::block::{block, find_open};
use super::clause::{Clauses, begins_common, check_once, common, names};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::map::{head, late_title};
use super::recover::statement;
use super::time::time;
use super::tree::{Front, Name, Schedule, Slot, Time};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span};

const HELP: &str = "write `schedule NAME on NETWORK { FRAME takes 10 ms }`, one slot on each line";

const SCHEDULE: Clauses = Clauses {
    words: &["time", "jitter", "called", "confirmed", "likely", "guessed", "measured", "from"],
    begins: |i| match i.word() {
        "time" => i.nth_word(1) == "base",
        "jitter" => i.nth_kind(1) == Some(TokenKind::Number),
        _ => begins_common(i),
    },
    first_is_free: false,
    has_block: true,
};

/// `schedule NAME "title" on NETWORK, time base 5 ms, jitter 500 us { ... }`
pub(super) fn schedule(begin: Cursor<'_>) -> Parsed<'_, Schedule<'_>> {
    let (i, head) = head("the schedule's name")(begin.next())?;
    let (i, _) = keyword("on", HELP)(i)?;
    let (i, on) = want_so("the name of a network", HELP, name)(i)?;
    let mut schedule = Schedule { head, on, time_base: None, jitter: None, slots: Vec::new() };
    let i = late_title(i, &mut schedule.head);
    let (behind, _) = SCHEDULE.read(i, |word, i| match word {
        "time" => {
            check_once(i, "time base", schedule.time_base.map(|time| time.span));
            let (behind, _) = want_so("`base`", "write `time base 5 ms`", words("time", "base"))(i)?;
            let (behind, base) = want("the time base of the commander", time)(behind)?;
            schedule.time_base.get_or_insert(base);
            Ok((behind, ()))
        }
        "jitter" => {
            check_once(i, word, schedule.jitter.map(|time| time.span));
            let (behind, jitter) = want("the length of time", time)(i.next())?;
            schedule.jitter.get_or_insert(jitter);
            Ok((behind, ()))
        }
        _ => common(word, i, &mut schedule.head),
    });
    let Some(open) = find_open(begin, behind) else {
        return broken(missing(behind, "the block with its slots").help(HELP));
    };
    let (behind, slots) = block(open, slot);
    schedule.slots = slots;
    Ok((behind, schedule))
}

/// What a line says, but for what stands in front of it.
struct Said<'a> {
    sporadic: Option<Span>,
    frames: Vec<Name<'a>>,
    takes: Option<Time>,
    every: Option<Time>,
}

/// One slot with its end; none if it could not be read, and then that was told.
fn slot<'a>(i: Cursor<'a>, front: Front<'a>, slots: &mut Vec<Slot<'a>>) -> Cursor<'a> {
    let (behind, read) = statement(i, |_, i| read(i), unknown);
    slots.extend(read.map(|(said, span)| {
        let Said { sporadic, frames, takes, every } = said;
        Slot { span, front, sporadic, frames, takes, every }
    }));
    behind
}

fn unknown(i: Cursor<'_>) -> Option<&'static str> {
    let site = i.site(i.span());
    let found = shortened(i.context.text(i.span()));
    let message = Diagnostic::new(Rule::UnknownStatement, site, format!("`{found}` does not begin a slot"));
    i.context.report(message.here("a slot begins with the name of a frame").help(SLOT_HELP));
    None
}

const SLOT_HELP: &str = "a slot is written `FRAME takes 10 ms`, or `FRAME every 20 ms` where only its period is known";

const SLOT: Clauses = Clauses {
    words: &["takes", "every"],
    begins: |i| matches!(i.word(), "takes" | "every") && i.nth_kind(1) == Some(TokenKind::Number),
    first_is_free: true,
    has_block: false,
};

/// `FRAME takes 10 ms, every 20 ms`, `sporadic A, B takes 15 ms`: a frame of the name `sporadic` has its clause directly behind it.
fn read(i: Cursor<'_>) -> Parsed<'_, Said<'_>> {
    if i.kind() != Some(TokenKind::Word) {
        return elsewhere();
    }
    let is_sporadic = i.word() == "sporadic" && !(SLOT.begins)(i.next());
    let (behind, frames) = if is_sporadic {
        want_so("the name of a frame", "write `sporadic FRAME, FRAME takes 10 ms`", |i| names(i, SLOT))(i.next())?
    } else {
        name.map(|name| vec![name]).parse(i)?
    };
    let mut said = Said { sporadic: is_sporadic.then(|| i.span()), frames, takes: None, every: None };
    let (end, is_whole) = SLOT.read(behind, |word, i| {
        let (slot, what) = match word {
            "takes" => (&mut said.takes, "the length of the slot"),
            "every" => (&mut said.every, "the period"),
            _ => return elsewhere(),
        };
        check_once(i, word, slot.map(|time| time.span));
        let (behind, time) = want(what, time)(i.next())?;
        slot.get_or_insert(time);
        Ok((behind, ()))
    });
    if is_whole && said.takes.is_none() && said.every.is_none() {
        end.context.report(missing(end, "`takes` or `every`").help(SLOT_HELP));
    }
    Ok((end, said))
}
