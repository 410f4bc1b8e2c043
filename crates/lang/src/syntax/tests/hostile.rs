//! Whatever comes in: no panic, no overflow of the stack, and time that grows with the text and no faster.

use proptest::prelude::*;

use super::*;
use crate::syntax::LONGEST_TEXT;

const SAMPLE: &str = include_str!("../../format/tests/tidy.lore");

/// Generous: debug builds on a busy machine take a fraction of it, anything quadratic takes hours.
const LONGEST_SECONDS: u64 = 60;

fn rules_in_time(text: &str) -> Vec<Rule> {
    let start = std::time::Instant::now();
    let (_, messages) = parse(text, FileId(0));
    let took = start.elapsed();
    assert!(took.as_secs() < LONGEST_SECONDS, "{took:?} for {} bytes", text.len());
    assert!(messages.len() <= 500);
    messages.into_iter().map(|message| message.rule).collect()
}

#[test]
fn ten_thousand_open_braces() {
    assert!(rules_in_time(&"{".repeat(10_000)).contains(&Rule::UnknownStatement));
    let pages = format!("frame f on d id 1 {{\n{}", "when a is 1 {\n".repeat(10_000));
    assert_eq!(rules_in_time(&pages), [Rule::UnclosedBlock, Rule::NestedTooDeep]);
    let closed =
        format!("frame f on d id 1 {{\n{}{}}}\nvehicle v\n", "when a is 1 {\n".repeat(10_000), "}\n".repeat(10_000));
    assert_eq!(rules_in_time(&closed), [Rule::NestedTooDeep]);
    assert!(rules_in_time(&"states s {".repeat(10_000)).len() <= 500);
}

#[test]
fn endless_formulas() {
    let formula = |text: String| format!("frame f on d id 1 {{\nsignal s in byte 0 = {text}\n}}\n");
    assert_eq!(
        rules_in_time(&formula(format!("{}raw{}", "(".repeat(100_000), ")".repeat(100_000)))),
        [Rule::NestedTooDeep]
    );
    assert_eq!(rules_in_time(&formula(format!("raw{}", " + 1".repeat(100_000)))), [Rule::NestedTooDeep]);
    assert_eq!(rules_in_time(&formula("-".repeat(100_000))), [Rule::NestedTooDeep]);
    assert_eq!(rules_in_time(&formula(format!("raw * {}", "9".repeat(100_000)))), [Rule::BadNumber]);
    assert_eq!(rules_in_time(&formula("raw - 1 ".repeat(100_000))).len(), 1);
}

#[test]
fn endless_lines() {
    for unit in [
        "a",
        "a ",
        "\"",
        "\"a\" ",
        "{}",
        ",",
        "1.",
        "#",
        "$ ",
        "frame f on d id 1 { } ",
        "signal s in byte 0, ",
        "é",
        "`",
        "{ } } ",
        "## ",
        "\\",
        "(",
        "-",
        "0x",
    ] {
        let text = unit.repeat(1_000_000 / unit.len());
        rules_in_time(&text);
        rules_in_time(&format!("frame f on d id 1 {{\nsignal s in byte 0, absent 1{text}"));
        rules_in_time(&format!("$ frame f on d id 1 {{ signal s in byte 0 {text}"));
        rules_in_time(&format!("states s {{ {text}"));
    }
}

#[test]
fn many_lines_of_nothing() {
    assert_eq!(rules_in_time(&"\n".repeat(4_000_000)), []);
    assert_eq!(rules_in_time(&"##\n".repeat(1_000_000)), []);
    assert_eq!(rules_in_time(&"allow x\n".repeat(300_000)), []);
}

#[test]
fn too_large_a_file_is_not_looked_at() {
    assert_eq!(rules_in_time(&"{".repeat(LONGEST_TEXT + 1)), [Rule::FileTooLarge]);
    assert_eq!(rules_in_time(&"x".repeat(50_000_000)), [Rule::FileTooLarge]);
}

#[test]
fn a_file_cut_anywhere() {
    for end in (0..SAMPLE.len()).filter(|&end| SAMPLE.is_char_boundary(end)) {
        let (_, messages) = parse(&SAMPLE[..end], FileId(0));
        assert!(messages.len() <= 3, "cut at {end}: {messages:#?}");
    }
}

#[test]
fn any_token_left_out_or_doubled() {
    let (tokens, _) = crate::lex::lex(SAMPLE, FileId(0));
    for token in tokens.iter().filter(|token| !matches!(token.kind, crate::lex::TokenKind::Blank)) {
        let (before, it, behind) =
            (&SAMPLE[..token.span.start as usize], &SAMPLE[token.span.range()], &SAMPLE[token.span.end as usize..]);
        let (_, messages) = parse(&format!("{before}{behind}"), FileId(0));
        assert!(messages.len() <= 9, "without {it} at {}: {messages:#?}", token.span.start);
        let (_, messages) = parse(&format!("{before}{it} {it}{behind}"), FileId(0));
        assert!(messages.len() <= 9, "twice {it} at {}: {messages:#?}", token.span.start);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text(text in "\\PC{0,200}") {
        let _ = parse(&text, FileId(0));
    }

    #[test]
    fn any_words_of_the_language(words in proptest::collection::vec(proptest::sample::select(vec![
        "frame ", "signal ", "in ", "byte ", "bits ", "1.4", "..", "0", "0x1F ", "{", "}", "\n", ",", "= ", "raw ", "* ", "- ", "( ", ")", "states ", "when ", "is ", "and ", "every ",
        "ms ", "on ", "id ", "pgn ", "from ", "allow ", "x ", "\"t\" ", "## n\n", "# c\n", ": ", "curve ", "gateway ", "pass ", "copy ", ".", "[", "]", "1/", "km", "/", "h ", "%",
        "checksum ", "over ", "bytes ", "otherwise ", "use ", "layout ", "sent ", "by ", "\nframe f on d id 1 {\n", "\nsignal s in byte 0 ", "range ", "absent ", "\"", "\\", "°",
    ]), 0..60)) {
        let text = words.concat();
        let (_, messages) = parse(&text, FileId(0));
        for message in messages {
            prop_assert!(text.get(message.site.span.range()).is_some());
        }
        let _ = crate::format::format(&text);
    }
}
