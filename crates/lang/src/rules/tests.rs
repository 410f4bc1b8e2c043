//! Tests of the table of rules and of its pages.

use std::collections::BTreeSet;

use super::*;
use crate::{FileId, syntax};

#[test]
fn names_are_kebab_case_and_lead_back() {
    let mut names = BTreeSet::new();
    for &rule in Rule::ALL {
        let name = rule.name();
        assert!(name.split('-').all(
            |part| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit())
        ));
        assert!(names.insert(name), "{name} is there twice");
        assert_eq!(Rule::named(name), Some(rule));
    }
    assert_eq!(Rule::named("no-such-rule"), None);
}

#[test]
fn pages_have_all_their_parts() {
    for &rule in Rule::ALL {
        let name = rule.name();
        let page = rule.page();
        assert!(rule.text().starts_with(&format!("# {name}\n")), "the page of {name} has another title");
        assert!(
            page.summary.ends_with('.') && !page.summary.contains('\n'),
            "the summary of {name} is not one sentence on one line"
        );
        assert!(!page.body.is_empty(), "the page of {name} says nothing");
        // A file of more than 16 MiB is no example for a page.
        let has_none = matches!(rule, Rule::FileTooLarge | Rule::FileNotText);
        assert_eq!(page.wrong.is_empty(), has_none, "the wrong example of {name}");
        assert_eq!(page.right.is_empty(), has_none, "the right example of {name}");
    }
}

/// The rules that the parser speaks for.
const OF_SYNTAX: [Rule; 16] = [
    Rule::UnexpectedCharacter,
    Rule::UnclosedText,
    Rule::BadEscape,
    Rule::BadNumber,
    Rule::LookAlike,
    Rule::UnclosedBlock,
    Rule::StrayBrace,
    Rule::UnknownStatement,
    Rule::UnknownClause,
    Rule::UnexpectedWord,
    Rule::MissingComma,
    Rule::MissingPart,
    Rule::RepeatedClause,
    Rule::UnitUnclear,
    Rule::NestedTooDeep,
    Rule::FileTooLarge,
];

#[test]
fn examples_of_syntax_rules_show_what_they_are_for() {
    for rule in OF_SYNTAX.into_iter().filter(|&rule| rule != Rule::FileTooLarge) {
        let page = rule.page();
        let (_, wrong) = syntax::parse(page.wrong, FileId(0));
        assert!(!wrong.is_empty() && wrong.iter().all(|message| message.rule == rule), "{}: {wrong:#?}", rule.name());
        let (_, right) = syntax::parse(page.right, FileId(0));
        assert_eq!(right, [], "{}", rule.name());
    }
}

#[test]
fn examples_of_all_other_rules_can_be_read() {
    for &rule in Rule::ALL.iter().filter(|rule| !OF_SYNTAX.contains(rule)) {
        let page = rule.page();
        for text in [page.wrong, page.right] {
            let (_, messages) = syntax::parse(text, FileId(0));
            assert_eq!(messages, [], "{}", rule.name());
        }
    }
}
