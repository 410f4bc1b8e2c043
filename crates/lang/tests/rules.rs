//! The table of rules against the pages: each page is complete, and its two examples do what they say.

use wirelore_lang::{Checked, Level, LoadError, Loaded, Loader, Rule, check, check_text, render};

/// The task asks for at least so many named rules.
const LEAST_RULES: usize = 40;

/// Every file is there, and none is text.
struct NoText;

impl Loader for NoText {
    fn load(&self, path: &str, _: Option<&str>) -> Result<Loaded, LoadError> {
        Err(LoadError::NotText { path: path.to_owned(), byte_offset: 9 })
    }
}

fn shown(checked: &Checked) -> String {
    render::text(&checked.sources, &checked.diagnostics, false)
}

fn triggers(checked: &Checked, rule: Rule) -> bool {
    checked.diagnostics.iter().any(|message| message.rule == rule)
}

/// What is wrong with a rule's page, for the list at the end.
fn flaws(rule: Rule) -> Vec<String> {
    let page = rule.page();
    let mut flaws = Vec::new();
    let mut note = |flaw: String| flaws.push(format!("{}: {flaw}", rule.name()));
    if page.summary.trim().is_empty() || page.body.trim().is_empty() {
        note("the page lacks its summary or its explanation".to_owned());
    }
    let wrong = match rule {
        // Its example would fill the page, and many more.
        Rule::FileTooLarge => check_text("wrong.lore", &" ".repeat((16 << 20) + 1)),
        Rule::FileNotText => check(&["wrong.lore"], &NoText),
        _ => check_text("wrong.lore", page.wrong),
    };
    if !triggers(&wrong, rule) {
        note(format!("the wrong example does not trigger it, but:\n{}", shown(&wrong)));
    }
    let other_error = wrong.diagnostics.iter().find(|message| message.level() == Level::Error && message.rule != rule);
    if let Some(other) = other_error {
        note(format!("the wrong example also has the error {}:\n{}", other.rule.name(), shown(&wrong)));
    }
    if page.wrong.is_empty() != matches!(rule, Rule::FileTooLarge | Rule::FileNotText) {
        note("the page lacks its wrong example".to_owned());
    }
    if wrong.has_errors() != wrong.database.is_none() {
        note("the wrong example has no errors and still gives no database, or the other way round".to_owned());
    }
    let right = check_text("right.lore", page.right);
    if triggers(&right, rule) || right.has_errors() {
        note(format!("the right example is not right:\n{}", shown(&right)));
    }
    if right.database.is_none() {
        note("the right example gives no database".to_owned());
    }
    flaws
}

#[test]
fn every_rule_has_a_page_with_examples_that_hold() {
    assert!(Rule::ALL.len() >= LEAST_RULES, "{} rules", Rule::ALL.len());
    let flaws: Vec<_> = Rule::ALL.iter().copied().flat_map(flaws).collect();
    assert!(flaws.is_empty(), "{} flaws:\n\n{}", flaws.len(), flaws.join("\n\n"));
}

#[test]
fn names_and_rules_belong_together() {
    for &rule in Rule::ALL {
        assert_eq!(Rule::named(rule.name()), Some(rule));
        assert!(rule.name().bytes().all(|byte| byte == b'-' || byte.is_ascii_lowercase()), "{}", rule.name());
    }
}
