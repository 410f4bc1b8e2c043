//! The statements inside frames, pages and layouts.

use nom::Parser;
use nom::combinator::opt;
use nom::multi::separated_list1;
use nom::sequence::preceded;

use super::basic::{keyword, leaf, missing, name, shortened, want, want_so, word, words};
use super::block::{Open, block, find_open, opens_wrongly};
use super::clause::{Clauses, names};
use super::cursor::{Cursor, Parsed, elsewhere};
use super::item::{Counting, counting, order};
use super::meant::over_equals;
use super::number::{integer, raw_range};
use super::place::place;
use super::protection::protection;
use super::recover::{self, finish, give_up, is_item_word, skip_head, tell};
use super::repeat::repeat;
use super::signal::signal;
use super::timing::{TIMING, begins_timing, timings};
use super::tree::{Body, BodyItem, BodyKind, Front, Signal, Test, TestValue, UseLayout, When};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule};
use wirelore_model::nearest_name;

/// What a block belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Inside {
    /// A frame, or a page of one.
    Frame,
    /// A layout.
    Layout,
    /// A page of a layout.
    LayoutPage,
}

impl Inside {
    /// What a page in it is inside.
    fn page(self) -> Self {
        match self {
            Self::Frame => Self::Frame,
            Self::Layout | Self::LayoutPage => Self::LayoutPage,
        }
    }

    /// Whether a statement belongs elsewhere: a layout knows neither sender nor frame. How long its pages are, it can know.
    fn lacks(self, word: &str) -> bool {
        match self {
            Self::Frame => false,
            Self::Layout => word == "length" || FRAME_ONLY.contains(&word),
            Self::LayoutPage => FRAME_ONLY.contains(&word),
        }
    }
}

/// The words that statements begin with.
const WORDS: [&str; 19] = [
    "signal",
    "protected",
    "sent",
    "read",
    "length",
    "when",
    "otherwise",
    "repeat",
    "unknown",
    "unused",
    "use",
    "order",
    "counting",
    "marks",
    "every",
    "on",
    "at",
    "jitter",
    "timeout",
];

/// The statements that neither a layout nor its pages have any use for.
const FRAME_ONLY: [&str; 9] = ["sent", "read", "protected", "marks", "every", "on", "at", "jitter", "timeout"];

/// Reads a block of statements.
pub(super) fn body(open: Open<'_>, inside: Inside) -> (Cursor<'_>, Body<'_>) {
    let context = open.first().context;
    // One body is much like the one before it; those of the first few of a description grow.
    let mut signals = Vec::with_capacity(context.signals_of_last_body.get());
    let (behind, items) = block(open, |i, front, items| match i.word() {
        "signal" => signal_statement(i, front, items, &mut signals),
        _ => statement(i, front, inside, items, &mut signals),
    });
    context.signals_of_last_body.set(signals.len());
    (behind, Body { items, signals })
}

/// A signal with its end: what [`statement`] would do, without moving the statement from hand to hand; nearly all statements are signals.
fn signal_statement<'a>(
    i: Cursor<'a>,
    front: Front<'a>,
    items: &mut Vec<BodyItem<'a>>,
    signals: &mut Vec<Signal<'a>>,
) -> Cursor<'a> {
    match signal(i, signals) {
        Ok((behind, index)) => {
            items.push(BodyItem { span: i.span_to(behind), front, kind: BodyKind::Signal(index) });
            finish(behind)
        }
        Err(problem) => {
            tell(i, problem);
            give_up(i)
        }
    }
}

/// One statement with its end; none if it could not be read, and then that was told.
fn statement<'a>(
    i: Cursor<'a>,
    front: Front<'a>,
    inside: Inside,
    items: &mut Vec<BodyItem<'a>>,
    signals: &mut Vec<Signal<'a>>,
) -> Cursor<'a> {
    let (behind, read) = recover::statement(i, |word, i| read_as(word, i, inside, signals), |i| unknown(i, inside));
    items.extend(read.map(|(kind, span)| BodyItem { span, front, kind }));
    behind
}

/// Reads a statement as the word says that begins it.
fn read_as<'a>(word: &str, i: Cursor<'a>, inside: Inside, signals: &mut Vec<Signal<'a>>) -> Parsed<'a, BodyKind<'a>> {
    if inside.lacks(word) {
        return elsewhere();
    }
    match word {
        "signal" => signal(i, signals).map(|(behind, index)| (behind, BodyKind::Signal(index))),
        "protected" => protection(i, signals).map(|(behind, index)| (behind, BodyKind::Signal(index))),
        "sent" => sent_by(i),
        "read" => read_by(i),
        "length" => length(i),
        "when" => when(i, inside).map(|(behind, when)| (behind, BodyKind::When(Box::new(when)))),
        "otherwise" => otherwise(i, inside),
        "repeat" => repeat(i, inside).map(|(behind, repeat)| (behind, BodyKind::Repeat(Box::new(repeat)))),
        "unknown" => {
            want_so("the bits", BITS_HELP, place).map(|place| BodyKind::Unknown(Box::new(place))).parse(i.next())
        }
        "unused" => {
            want_so("the bits", BITS_HELP, place).map(|place| BodyKind::Unused(Box::new(place))).parse(i.next())
        }
        "use" => use_layout(i),
        "order" => order(i.next()).map(|(behind, order)| (behind, BodyKind::Order(order))),
        "counting" => counting(i).map(|(behind, counting)| match counting {
            Counting::From(first) => (behind, BodyKind::CountingFrom(Box::new(first))),
            Counting::FromTop => (behind, BodyKind::CountingBitsFromTop),
        }),
        "marks" => {
            let help = "`marks j1939` gives the signals of a frame the values for not available and error of SAE J1939";
            keyword("j1939", help).map(|_| BodyKind::MarksJ1939).parse(i.next())
        }
        _ if inside == Inside::Frame
            && (begins_timing(i) || matches!(word, "every" | "on" | "at" | "jitter" | "timeout")) =>
        {
            timings(i, word).map(|(behind, timing)| (behind, BodyKind::Timing(timing)))
        }
        _ => elsewhere(),
    }
}

const BITS_HELP: &str = "write the bits as for a signal, as in `unknown bits 3.7..3.4` or `unused byte 5`";

/// Tells that no statement begins so; gives the word that was meant, if that is plain.
fn unknown(i: Cursor<'_>, inside: Inside) -> Option<&'static str> {
    if i.context.is_full() {
        return None;
    }
    let site = i.site(i.span());
    let found = shortened(i.context.text(i.span()));
    let block = if inside == Inside::Frame { "frame" } else { "layout" };
    if i.kind() != Some(TokenKind::Word) {
        let mut message = Diagnostic::new(Rule::UnknownStatement, site, format!("no statement begins with `{found}`"))
            .here("a statement begins with a word");
        if i.kind() == Some(TokenKind::Slash) {
            message = message.help("a comment begins with `#`");
        }
        i.context.report(message);
        return None;
    }
    let message = Diagnostic::new(Rule::UnknownStatement, site, format!("`{found}` is not a statement of a {block}"));
    if is_item_word(i.word()) {
        i.context.report(
            message.here("stands outside of blocks").help(format!("close the block of the {block} with `}}` first")),
        );
        return None;
    }
    if inside.lacks(i.word()) {
        i.context.report(
            message
                .here("belongs into the frame")
                .help("a layout says where bits lie; who sends them, and when, is said in each frame that uses it"),
        );
        return None;
    }
    let near = nearest_name(i.word(), WORDS.iter().copied()).filter(|_| !i.next().at_end());
    i.context.report(match near {
        Some(near) => message.here(format!("did you mean `{near}`?")).fix(site, near),
        None => {
            message.here("not known").help(format!("statements begin with one of these words: {}", WORDS.join(", ")))
        }
    });
    near
}

/// `sent by A, B TIMING`
fn sent_by(i: Cursor<'_>) -> Parsed<'_, BodyKind<'_>> {
    let (behind, _) = keyword("by", "write `sent by ECU every 20 ms`")(i.next())?;
    let (behind, ecus) = want("the control unit that sends it", |i| names(i, TIMING))(behind)?;
    let (timing_at, comma) = opt(leaf(TokenKind::Comma)).parse(behind)?;
    if begins_timing(timing_at) {
        let (behind, timing) = timings(timing_at, timing_at.word())?;
        return Ok((behind, BodyKind::SentBy { ecus, timing }));
    }
    if comma.is_some() || !behind.at_end() {
        // Read as clauses for the sake of the message.
        let (behind, timing) = super::timing::rest_of_timings(behind, Vec::new());
        return Ok((behind, BodyKind::SentBy { ecus, timing }));
    }
    Ok((behind, BodyKind::SentBy { ecus, timing: Vec::new() }))
}

const NO_CLAUSES: Clauses = Clauses { words: &[], begins: |_| false, first_is_free: false, has_block: false };

/// `read by A, B`
fn read_by(i: Cursor<'_>) -> Parsed<'_, BodyKind<'_>> {
    let (behind, _) = keyword("by", "write `read by ECU, ECU`")(i.next())?;
    want("the control unit that reads it", |i| names(i, NO_CLAUSES)).map(BodyKind::ReadBy).parse(behind)
}

/// `length 8`, `length 2..8`
fn length(i: Cursor<'_>) -> Parsed<'_, BodyKind<'_>> {
    let (behind, range) = want("the number of bytes", raw_range)(over_equals(i))?;
    let (behind, _) = opt(word("bytes")).parse(behind)?;
    Ok((behind, BodyKind::Length(Box::new(range))))
}

/// `when SIGNAL is VALUES and ... { ... }`: whatever is wrong with the condition, the block is read.
fn when(i: Cursor<'_>, inside: Inside) -> Parsed<'_, When<'_>> {
    let condition =
        separated_list1(word("and"), want_so("the signal that the page depends on", WHEN_HELP, |i| test(i, |_| false)))
            .parse(i.next());
    let (behind, tests) = match condition {
        Ok((behind, tests))
            if behind.kind() == Some(TokenKind::OpenBrace) || opens_wrongly(behind) || behind.at_end() =>
        {
            (behind, tests)
        }
        Ok((behind, _)) => {
            behind.context.report(missing(behind, "the block of the page between braces").help(WHEN_HELP));
            (skip_head(behind), Vec::new())
        }
        Err(problem) => {
            tell(i, problem);
            (skip_head(i), Vec::new())
        }
    };
    let Some(open) = find_open(i, behind) else {
        behind.context.report(missing(behind, "the block of the page between braces").help(WHEN_HELP));
        return Ok((behind, When { tests, body: Body::default() }));
    };
    let (behind, body) = body(open, inside.page());
    Ok((behind, When { tests, body }))
}

const WHEN_HELP: &str = "a page is written `when SIGNAL is 1, 4..6 { ... }`";

/// `SIGNAL is VALUE, VALUE`, up to a comma that `stops` says belongs to something else.
pub(super) fn test<'a>(i: Cursor<'a>, stops: fn(Cursor<'a>) -> bool) -> Parsed<'a, Test<'a>> {
    let (behind, signal) = name(i)?;
    let (behind, _) =
        keyword("is", "a condition is written `SIGNAL is VALUE`, with commas between several values")(behind)?;
    let (mut i, first) = want("a raw value or a state word", test_value)(behind)?;
    let mut values = vec![first];
    while i.kind() == Some(TokenKind::Comma) && !stops(i.next()) {
        let Ok((behind, value)) = test_value(i.next()) else { break };
        values.push(value);
        i = behind;
    }
    Ok((i, Test { signal, values }))
}

fn test_value(i: Cursor<'_>) -> Parsed<'_, TestValue<'_>> {
    match raw_range(i) {
        Err(nom::Err::Error(_)) => name.map(TestValue::Word).parse(i),
        read => read.map(|(behind, values)| (behind, TestValue::Raw(values))),
    }
}

/// `otherwise { ... }`
fn otherwise(i: Cursor<'_>, inside: Inside) -> Parsed<'_, BodyKind<'_>> {
    let Some(open) = find_open(i, i.next()) else {
        want_so(
            "the block between braces",
            "`otherwise { ... }` stands behind the last `when` of a switch",
            leaf(TokenKind::OpenBrace),
        )(i.next())?;
        return elsewhere();
    };
    let (behind, body) = body(open, inside.page());
    Ok((behind, BodyKind::Otherwise(Box::new(body))))
}

/// `use layout NAME at byte N prefix p_`
fn use_layout(i: Cursor<'_>) -> Parsed<'_, BodyKind<'_>> {
    const HELP: &str =
        "inside a block, write `use layout NAME at byte 2`, with `prefix p_` behind it where names would clash";
    let (behind, _) = keyword("layout", HELP)(i.next())?;
    let (behind, layout) = want_so("the layout's name", HELP, name)(behind)?;
    let (behind, _) = want_so("`at byte`", HELP, words("at", "byte"))(behind)?;
    let (behind, at_byte) = want_so("the number of a byte", HELP, integer)(behind)?;
    let (behind, prefix) = opt(preceded(word("prefix"), want_so("the prefix", HELP, name))).parse(behind)?;
    Ok((behind, BodyKind::UseLayout(Box::new(UseLayout { layout, at_byte, prefix }))))
}
