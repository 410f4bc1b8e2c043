//! Tests of the layout.

use proptest::prelude::*;

use super::format;
use crate::lex::{TokenKind, lex};
use crate::{FileId, syntax};

/// Everything that the language knows, laid out badly.
const MESSY: &str = include_str!("tests/messy.lore");
/// The same, laid out well.
const TIDY: &str = include_str!("tests/tidy.lore");

/// The tree with all spans taken out.
fn meaning(text: &str) -> String {
    let (tree, messages) = syntax::parse(text, FileId(0));
    assert_eq!(messages, [], "in:\n{text}");
    let shown = format!("{tree:?}");
    let mut erased = String::with_capacity(shown.len());
    let mut rest = shown.as_str();
    while let Some(at) = rest.find("Span { start: ") {
        erased.push_str(&rest[..at]);
        let end = rest[at..].find('}').map_or(rest.len(), |end| at + end + 1);
        rest = &rest[end..];
    }
    erased + rest
}

/// All comments and notes, sorted.
fn remarks(text: &str) -> Vec<&str> {
    let (tokens, _) = lex(text, FileId(0));
    let is_remark = |kind| matches!(kind, TokenKind::Comment | TokenKind::Note);
    let mut remarks: Vec<_> =
        tokens.iter().filter(|token| is_remark(token.kind)).map(|token| text[token.span.range()].trim_end()).collect();
    remarks.sort_unstable();
    remarks
}

fn check_layout(text: &str) -> String {
    let once = format(text).unwrap();
    assert_eq!(format(&once).unwrap(), once, "a second run changes something; the text was:\n{text}");
    assert_eq!(meaning(&once), meaning(text), "the layout changes what is said; it is:\n{once}");
    assert_eq!(remarks(&once), remarks(text), "a remark is lost; the layout is:\n{once}");
    once
}

#[test]
fn a_messy_file_becomes_tidy() {
    assert_eq!(check_layout(MESSY), TIDY);
    assert_eq!(check_layout(TIDY), TIDY);
}

#[test]
fn what_cannot_be_read_is_not_touched() {
    let messages = format("network drive can 500 kbit/s\nfrme x {\n").unwrap_err();
    assert_eq!(messages[0].rule, crate::Rule::UnknownStatement);
}

#[test]
fn small_cases() {
    for (text, expected) in [
        ("", ""),
        ("\n\n\n", ""),
        ("\u{FEFF}# only a remark  \r\n", "# only a remark\n"),
        ("edition   1", "edition 1\n"),
        ("edition 1\n\n\n\nvehicle v", "edition 1\n\nvehicle v\n"),
        ("frame f on d id 1{}", "frame f on d id 1 {}\n"),
        ("frame f on d id 1{ # why\n}", "frame f on d id 1 { # why\n}\n"),
        ("frame f on d id 1{\n# why\n}", "frame f on d id 1 {\n    # why\n}\n"),
        ("states s{0 a,1 b,}", "states s { 0 a, 1 b }\n"),
        ("states s{}", "states s {}\n"),
        ("states s{0 a\n1 b}", "states s {\n    0 a\n    1 b\n}\n"),
        ("allow still-guessed,name-style", "allow still-guessed, name-style\n"),
        // Names that no rule has yet are kept together too, digits and all.
        ("allow  rule-3-x ,r-33ty,a-1-2", "allow rule-3-x, r-33ty, a-1-2\n"),
        ("network d can 33.3kbit/s", "network d can 33.3 kbit/s\n"),
        ("gateway g{pass f from a to b,every 10th}", "gateway g {\n    pass f from a to b, every 10th\n}\n"),
        ("wire a->b,c\"x\"", "wire a -> b, c \"x\"\n"),
    ] {
        let text_with_remark_in_place = expected.replace("{ # why", "{  # why");
        assert_eq!(check_layout(text), text_with_remark_in_place);
    }
}

#[test]
fn formulas_have_their_own_blanks() {
    for (formula, expected) in [
        ("raw*0.05 km/h", "raw * 0.05 km/h"),
        ("-raw+ -3", "-raw + -3"),
        ("(raw-40)*9 / 5+32 °F", "(raw - 40) * 9/5 + 32 °F"),
        ("raw/16", "raw / 16"),
        ("raw*1 1/min", "raw * 1 1/min"),
        ("- ( raw )", "-(raw)"),
        ("raw \"two words\"", "raw \"two words\""),
        ("curve {0:-40,255:1.5}V", "curve { 0: -40, 255: 1.5 } V"),
    ] {
        let text = format!("frame f on d id 1 {{\n signal s in byte 0={formula},range -5 ..10\n}}\n");
        let tidy = format!("frame f on d id 1 {{\n    signal s in byte 0 = {expected}, range -5..10\n}}\n");
        assert_eq!(check_layout(&text), tidy);
    }
}

#[test]
fn remarks_inside_statements_stay_inside() {
    let text = "frame f on d id 1 {\n signal s in byte 0 = (raw # the raw one\n - 40) °C, # a limit\n # and another\n ## no note\n range 0..3, absent 0xFF # last\n}\n";
    let tidy = "frame f on d id 1 {\n    signal s in byte 0 = (raw  # the raw one\n            - 40) °C,  # a limit\n            # and another\n            ## no note\n            range 0..3, absent 0xFF  # last\n}\n";
    assert_eq!(check_layout(text), tidy);
}

#[test]
fn a_list_that_no_longer_fits_is_written_line_by_line_and_set_apart() {
    let words: Vec<_> = (0..20).map(|n| format!("{n} word_{n}")).collect();
    let text = format!("edition 1\nstates s {{ {} }}\nvehicle v\n", words.join(", "));
    let tidy = check_layout(&text);
    assert!(
        tidy.starts_with("edition 1\n\nstates s {\n    0  word_0\n    1  word_1\n")
            && tidy.ends_with("    19 word_19\n}\n\nvehicle v\n"),
        "{tidy}"
    );
}

/// A text with its blanks and line ends stirred: `choices` says for each place how. Remarks come in wherever a line ends.
fn stirred(text: &str, choices: &[u8]) -> String {
    let (tokens, _) = lex(text, FileId(0));
    let mut out = String::new();
    let mut choices = choices.iter().copied().cycle();
    for (at, token) in tokens.iter().enumerate() {
        let written = &text[token.span.range()];
        let choice = choices.next().unwrap_or(0);
        match token.kind {
            TokenKind::Blank => out.push_str([" ", "  ", "\t", "   ", written][usize::from(choice) % 5]),
            // Lines of remarks stay apart from what follows, and an `allow` keeps its place.
            TokenKind::LineEnd => match choice % 8 {
                0 if at > 0 && !matches!(tokens[at - 1].kind, TokenKind::Comment | TokenKind::Note) => {
                    out.push_str("# stirred in\n")
                }
                1 => out.push_str(" \t\n"),
                2 => out.push_str("\r\n"),
                3 => out.push_str("\n# a line of its own\n"),
                4 => out.push_str("\n       # far in\n"),
                _ => out.push('\n'),
            },
            TokenKind::Comma => out.push_str(
                [",", ", ", " ,", ",\n", ",  # and\n", ",\n  # inside\n", ",\n\n", ","][usize::from(choice) % 8],
            ),
            TokenKind::OpenBrace => out.push_str(["{", " {", "{ ", "{\n", "{ # open\n", "{"][usize::from(choice) % 6]),
            _ => out.push_str(written),
        }
    }
    out
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_layout_keeps_the_meaning_and_all_remarks(choices in proptest::collection::vec(any::<u8>(), 1..400)) {
        let text = stirred(TIDY, &choices);
        // Stirring may only be followed by a layout if it left the text readable, and it must.
        prop_assert!(syntax::parse(&text, FileId(0)).1.is_empty(), "{text}");
        check_layout(&text);
    }
}
