//! The grammar page hangs together, and every word in it occurs in an example that passes the check.

use std::collections::BTreeSet;

use super::pages::{blocks, read};
use wirelore_lang::Rule;

/// A token of the grammar's own notation (ISO/IEC 14977).
#[derive(Debug, Clone, PartialEq, Eq)]
enum Token {
    /// What is written as it stands.
    Terminal(String),
    /// The name of a definition.
    Name(String),
    /// `? plain words ?`
    Special,
    /// One of `= ; , | - ( ) [ ] { }`.
    Sign(char),
}

/// Cuts the grammar into tokens, without its comments.
fn tokens(grammar: &str) -> Vec<Token> {
    let mut found = Vec::new();
    let mut rest = grammar.trim_start();
    while let Some(first) = rest.chars().next() {
        let length = match first {
            '(' if rest.starts_with("(*") => rest.find("*)").expect("a comment is closed") + 2,
            '?' => {
                found.push(Token::Special);
                2 + rest[1..].find('?').expect("a special sequence is closed")
            }
            '"' | '\'' => {
                let inner = &rest[1..][..rest[1..].find(first).expect("a terminal is closed")];
                found.push(Token::Terminal(inner.to_owned()));
                inner.len() + 2
            }
            c if c.is_ascii_alphabetic() => {
                let name = &rest[..rest.find(|c: char| !c.is_ascii_alphanumeric() && c != ' ').unwrap_or(rest.len())];
                found.push(Token::Name(name.trim_end().to_owned()));
                name.len()
            }
            c => {
                assert!(
                    "=;,|-()[]{}".contains(c),
                    "`{c}` is no sign of the notation: {}",
                    rest.lines().next().unwrap_or("")
                );
                found.push(Token::Sign(c));
                1
            }
        };
        rest = rest[length..].trim_start();
    }
    found
}

/// The definitions: name and body.
fn definitions(grammar: &str) -> Vec<(String, Vec<Token>)> {
    let tokens = tokens(grammar);
    let rules = tokens.split(|token| *token == Token::Sign(';')).filter(|rule| !rule.is_empty());
    let rules = rules.map(|rule| match rule {
        [Token::Name(name), Token::Sign('='), body @ ..] if !body.is_empty() => (name.clone(), body.to_vec()),
        other => panic!("not a definition: {other:?}"),
    });
    rules.collect()
}

#[test]
fn every_name_is_defined_once_and_used() {
    let definitions = definitions(&read("lore.ebnf"));
    let mut defined = BTreeSet::new();
    for (name, _) in &definitions {
        assert!(defined.insert(name.as_str()), "`{name}` is defined twice");
    }
    let names = definitions.iter().flat_map(|(_, body)| body).filter_map(|token| match token {
        Token::Name(name) => Some(name.as_str()),
        _ => None,
    });
    let used: BTreeSet<_> = names.collect();
    let unknown: Vec<_> = used.difference(&defined).collect();
    assert!(unknown.is_empty(), "used and not defined: {unknown:?}");
    let idle: Vec<_> = defined.difference(&used).filter(|name| **name != "file").collect();
    assert!(idle.is_empty(), "defined and not used: {idle:?}");
}

#[test]
fn brackets_are_closed() {
    for (name, body) in definitions(&read("lore.ebnf")) {
        let mut open = Vec::new();
        for token in body {
            match token {
                Token::Sign(c @ ('(' | '[' | '{')) => open.push(c),
                Token::Sign(c @ (')' | ']' | '}')) => {
                    let wanted = open.pop().map(|opening| match opening {
                        '(' => ')',
                        '[' => ']',
                        _ => '}',
                    });
                    assert_eq!(wanted, Some(c), "brackets of `{name}`");
                }
                _ => {}
            }
        }
        assert!(open.is_empty(), "a bracket of `{name}` stays open");
    }
}

/// All texts that are said to be right: on the language page and on the pages of the rules.
fn right_texts() -> String {
    let page = read("language.md");
    let right = blocks(&page).into_iter().filter(|block| block.info.starts_with("lore") && block.info != "lore wrong");
    let mut texts: String = right.map(|block| block.text).collect();
    for rule in Rule::ALL {
        texts.push_str(rule.page().right);
    }
    texts
}

#[test]
fn every_keyword_occurs_in_an_example() {
    let grammar = read("lore.ebnf");
    let items = grammar.find("files and items").expect("the heading behind the tokens");
    let start = items + grammar[items..].find("*)").expect("the heading is a comment") + 2;
    let examples: String =
        right_texts().lines().map(|line| line.split('#').next().unwrap_or("").to_owned() + "\n").collect();
    let words: BTreeSet<&str> = examples.split(|c: char| !c.is_alphanumeric() && c != '_' && c != '/').collect();
    let keywords =
        definitions(&grammar[start..]).into_iter().flat_map(|(_, body)| body).filter_map(|token| match token {
            Token::Terminal(text)
                if text.chars().all(|c| c.is_alphanumeric() || c == '_' || c == '/') && text != "/" =>
            {
                Some(text)
            }
            _ => None,
        });
    let keywords: BTreeSet<_> = keywords.collect();
    assert!(keywords.len() > 80, "only {} keywords found in the grammar", keywords.len());
    let missing: Vec<_> = keywords.iter().filter(|keyword| !words.contains(keyword.as_str())).collect();
    assert!(missing.is_empty(), "keywords that no example shows: {missing:?}");
}
