//! The items of a file.

use nom::Parser;
use nom::combinator::opt;
use nom::sequence::preceded;

use super::basic::{missing, name, one_of, shortened, text, want, want_so, word, words};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::front::Gathered;
use super::number::integer;
use super::recover::statement;
use super::tree::{File, Front, Item, ItemKind, Name, OrderWord};
use super::{frame, gateway, map, schedule, states};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span, Spanned};
use wirelore_bits::ByteOrder;
use wirelore_model::nearest_name;

/// The words that items begin with.
const WORDS: [&str; 14] = [
    "edition", "vehicle", "allow", "counting", "order", "use", "network", "ecu", "wire", "states", "layout", "frame",
    "gateway", "schedule",
];

/// The words of statements that stand only inside a block, and the block that they stand in.
const INSIDE: [(&str, &str); 11] = [
    ("signal", "a frame or a layout"),
    ("when", "a frame or a layout"),
    ("otherwise", "a frame or a layout"),
    ("repeat", "a frame or a layout"),
    ("unknown", "a frame or a layout"),
    ("unused", "a frame or a layout"),
    ("sent", "a frame"),
    ("read", "a frame"),
    ("length", "a frame"),
    ("pass", "a gateway"),
    ("copy", "a gateway"),
];

/// A whole file.
pub(super) fn file(mut i: Cursor<'_>) -> File<'_> {
    let mut items = Vec::new();
    let mut gathered = Gathered::default();
    loop {
        match i.kind() {
            None => {
                items.extend(gathered.take_allowed().map(in_file));
                return File { items, has_allow: i.context.has_allow.get() };
            }
            Some(TokenKind::LineEnd) => i = i.next(),
            Some(TokenKind::Note) => i = gathered.note(i),
            Some(TokenKind::CloseBrace) => i = stray_brace(i),
            Some(TokenKind::Word) if i.word() == "allow" => {
                let (behind, has_gap) = gathered.allow(i);
                i = behind;
                if has_gap {
                    items.extend(gathered.take_allowed().map(in_file));
                }
            }
            Some(_) => {
                let (behind, item) = item(i, gathered.take());
                items.extend(item);
                // An item takes a leaf at least: whatever went wrong, the loop goes on.
                i = if behind.left() < i.left() { behind } else { i.next() };
            }
        }
    }
}

fn in_file((span, rules): (Span, Vec<Name<'_>>)) -> Item<'_> {
    Item { span, front: Front::default(), kind: ItemKind::AllowInFile(rules) }
}

/// One message for a run of closing braces that close nothing.
fn stray_brace(i: Cursor<'_>) -> Cursor<'_> {
    let message = Diagnostic::new(Rule::StrayBrace, i.site(i.span()), "this `}` closes nothing")
        .here("no block is open here")
        .help("take it away, or look above for a block that was closed too early");
    i.context.report(message);
    let mut behind = i;
    while matches!(behind.kind(), Some(TokenKind::CloseBrace | TokenKind::LineEnd)) {
        behind = behind.next();
    }
    behind
}

/// One item with its end; none if it could not be read, and then that was told.
fn item<'a>(i: Cursor<'a>, front: Front<'a>) -> (Cursor<'a>, Option<Item<'a>>) {
    let (behind, read) = statement(i, read_as, unknown);
    (behind, read.map(|(kind, span)| Item { span, front, kind }))
}

/// Reads an item as the word says that begins it.
fn read_as<'a>(word: &str, i: Cursor<'a>) -> Parsed<'a, ItemKind<'a>> {
    match word {
        "edition" => want("the number of the edition", integer).map(ItemKind::Edition).parse(i.next()),
        "vehicle" => map::vehicle.map(ItemKind::Vehicle).parse(i),
        "counting" => counting(i).map(|(behind, counting)| (behind, counting.into_item())),
        "order" => order(i.next()).map(|(behind, order)| (behind, ItemKind::Order(order))),
        "use" => use_item(i),
        "network" => map::network.map(|network| ItemKind::Network(Box::new(network))).parse(i),
        "ecu" => map::ecu.map(ItemKind::Ecu).parse(i),
        "wire" => map::wire.map(ItemKind::Wire).parse(i),
        "states" => states::table.map(ItemKind::States).parse(i),
        "layout" => frame::layout.map(ItemKind::Layout).parse(i),
        "frame" => frame::frame.map(ItemKind::Frame).parse(i),
        "gateway" => gateway::gateway.map(ItemKind::Gateway).parse(i),
        "schedule" => schedule::schedule.map(ItemKind::Schedule).parse(i),
        _ => elsewhere(),
    }
}

/// Tells that no item begins so; gives the word that was meant, if that is plain.
fn unknown(i: Cursor<'_>) -> Option<&'static str> {
    if i.context.is_full() {
        return None;
    }
    let site = i.site(i.span());
    let found = shortened(i.context.text(i.span()));
    if i.kind() != Some(TokenKind::Word) {
        let mut message = Diagnostic::new(Rule::UnknownStatement, site, format!("nothing begins with `{found}`"))
            .here("a statement begins with a word");
        if i.kind() == Some(TokenKind::Slash) {
            message = message.help("a comment begins with `#`");
        }
        i.context.report(message);
        return None;
    }
    if let Some((_, place)) = INSIDE.iter().find(|(word, _)| *word == i.word()) {
        let message = Diagnostic::new(Rule::UnknownStatement, site, format!("`{found}` stands outside of {place}"))
            .here(format!("belongs inside {place}"))
            .help("put it between the braces of its block, or look above for a block that was closed too early");
        i.context.report(message);
        return None;
    }
    let near =
        nearest_name(i.word(), WORDS.iter().copied().filter(|&word| word != "allow")).filter(|_| !i.next().at_end());
    let mut message =
        Diagnostic::new(Rule::UnknownStatement, site, format!("`{found}` is not an item of a description"));
    message = match near {
        Some(near) => message.here(format!("did you mean `{near}`?")).fix(site, near),
        None => message.here("not known").help(format!("items begin with one of these words: {}", WORDS.join(", "))),
    };
    i.context.report(message);
    near
}

/// `counting from 1`, `counting bits from the top`
#[derive(Debug, Clone, Copy)]
pub(super) enum Counting {
    /// The first byte, and the first bit, have this number.
    From(super::tree::Integer),
    /// The first bit is the most significant one.
    FromTop,
}

impl Counting {
    fn into_item(self) -> ItemKind<'static> {
        match self {
            Self::From(first) => ItemKind::CountingFrom(first),
            Self::FromTop => ItemKind::CountingBitsFromTop,
        }
    }
}

/// The statement that begins with `counting`.
pub(super) fn counting(i: Cursor<'_>) -> Parsed<'_, Counting> {
    const HELP: &str = "write `counting from 1` where bytes and bits count from 1, or `counting bits from the top` where bit 0 is the most significant one";
    let i = i.next();
    if let Ok((behind, _)) = words("bits", "from")(i) {
        let (behind, _) = want_so("`the top`", HELP, words("the", "top"))(behind)?;
        return Ok((behind, Counting::FromTop));
    }
    let (behind, _) = want_so("`from` or `bits from the top`", HELP, word("from"))(i)?;
    want_so("the number of the first byte", HELP, integer).map(Counting::From).parse(behind)
}

const ORDERS: [(&str, OrderWord); 3] = [
    ("intel", OrderWord::Only(ByteOrder::Intel)),
    ("motorola", OrderWord::Only(ByteOrder::Motorola)),
    ("mixed", OrderWord::Mixed),
];

/// The word behind `order`.
pub(super) fn order(i: Cursor<'_>) -> Parsed<'_, Spanned<OrderWord>> {
    one_of("a byte order", &ORDERS)(i)
}

/// `use "path.lore"`, `use standard NAME`, `use standard NAME on NETWORK`
fn use_item(i: Cursor<'_>) -> Parsed<'_, ItemKind<'_>> {
    let i = i.next();
    if let Ok((behind, path)) = text(i) {
        return Ok((behind, ItemKind::UseFile(path)));
    }
    if let Ok((behind, _)) = word("standard")(i) {
        let (behind, standard) = want("the name of a standard description", name)(behind)?;
        let (behind, on) = opt(preceded(word("on"), want("the network", name))).parse(behind)?;
        return Ok((behind, ItemKind::UseStandard { standard, on }));
    }
    let message = missing(i, "a file in quotes, or `standard` and a name,")
        .help("write `use \"doors.lore\"` or `use standard heavy_duty`");
    broken(message)
}
