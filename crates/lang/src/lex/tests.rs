//! Tests of the tokens.

use proptest::prelude::*;

use super::*;
use crate::Rule;

fn kinds(text: &str) -> Vec<TokenKind> {
    let (tokens, _) = lex(text, FileId(0));
    tokens.iter().map(|token| token.kind).filter(|kind| *kind != TokenKind::Blank).collect()
}

fn texts(text: &str) -> Vec<&str> {
    let (tokens, _) = lex(text, FileId(0));
    tokens.iter().filter(|token| token.kind != TokenKind::Blank).map(|token| &text[token.span.range()]).collect()
}

fn rules(text: &str) -> Vec<(Rule, &str)> {
    let (_, messages) = lex(text, FileId(0));
    messages.into_iter().map(|message| (message.rule, &text[message.site.span.range()])).collect()
}

#[test]
fn numbers_end_where_they_should() {
    assert_eq!(
        texts("0..6 1.10..0.0 1e-3 2.5E2 0x1A 0b1_1010 1_000"),
        ["0", "..", "6", "1.10", "..", "0.0", "1e-3", "2.5E2", "0x1A", "0b1_1010", "1_000"]
    );
    assert_eq!(texts("20ms 10th 1e 0x1G -5"), ["20", "ms", "10", "th", "1", "e", "0x1", "G", "-", "5"]);
}

#[test]
fn words_are_of_any_script() {
    assert_eq!(texts("straße_2 速度 e\u{301}t\u{e9} _x"), ["straße_2", "速度", "e\u{301}t\u{e9}", "_x"]);
    assert!(kinds("straße_2 速度 e\u{301}t\u{e9} _x").iter().all(|kind| *kind == TokenKind::Word));
}

#[test]
fn unit_signs_are_marks() {
    use TokenKind::{Mark, Slash, Word};
    assert_eq!(
        kinds("°C º % m/s² N·m µA kΩ"),
        [Mark, Word, Mark, Mark, Word, Slash, Word, Mark, Word, Mark, Word, Word, Word]
    );
}

#[test]
fn two_signs_are_a_note_and_any_other_number_a_comment() {
    use TokenKind::{Comment, LineEnd, Note};
    assert_eq!(kinds("# a\n## b\r\n### c\r########"), [Comment, LineEnd, Note, LineEnd, Comment, LineEnd, Comment]);
}

#[test]
fn texts_end_with_their_quote_or_their_line() {
    assert_eq!(texts(r#""a \" b" "c\\" "d"#), [r#""a \" b""#, r#""c\\""#, "\"d"]);
    assert_eq!(rules("x \"abc {\n}"), [(Rule::UnclosedText, "\"abc")]);
    assert_eq!(kinds("\"abc {\n").last(), Some(&TokenKind::LineEnd));
    assert_eq!(rules("\"\\\""), [(Rule::UnclosedText, "\"\\\"")]);
    assert_eq!(rules("“a”"), [(Rule::UnexpectedCharacter, "“a”")]);
}

#[test]
fn escapes_say_characters() {
    assert_eq!(unescape(r#""a\"b\\c\nd\te\u{1F600}""#), "a\"b\\c\nd\te\u{1F600}");
    assert_eq!(unescape("\"plain"), "plain");
    assert_eq!(unescape("\u{201C}curly\u{201D}"), "curly");
    let bad = rules(r#""\q \u12 \u{} \u{110000} \u{12""#);
    let places: Vec<_> = bad.iter().map(|(_, place)| *place).collect();
    assert_eq!(places, [r"\q", r"\u", r"\u{}", r"\u{110000}", r"\u{12"]);
    assert!(bad.iter().all(|(rule, _)| *rule == Rule::BadEscape));
}

#[test]
fn a_run_of_useless_characters_is_one_message() {
    assert_eq!(
        rules("a $$@! b ; c \u{200B}"),
        [
            (Rule::UnexpectedCharacter, "$$@!"),
            (Rule::UnexpectedCharacter, ";"),
            (Rule::UnexpectedCharacter, "\u{200B}"),
        ]
    );
    assert_eq!(
        kinds("raw – 40 × 2"),
        [TokenKind::Word, TokenKind::Minus, TokenKind::Number, TokenKind::Star, TokenKind::Number]
    );
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Any text: all bytes are in tokens, in order, none twice.
    #[test]
    fn tokens_cover_the_text(text in "\\PC*|[\\x00-\\x7f]*|[\"\\\\{}a-z0-9.#\n\r°µ “”–-]*") {
        let (tokens, _) = lex(&text, FileId(0));
        let mut at = 0;
        for token in tokens {
            prop_assert_eq!(token.span.start, at);
            prop_assert!(token.span.end > at);
            prop_assert!(text.is_char_boundary(token.span.end as usize));
            at = token.span.end;
        }
        prop_assert_eq!(at as usize, text.len());
    }
}
