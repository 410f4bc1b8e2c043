//! Descriptions that have to come through, and what becomes of them when something is taken out.

use std::path::Path;

use wirelore_lang::{Checked, FileLoader, Level, Rule, check, check_text, format, render};

#[track_caller]
fn assert_sound(checked: &Checked) {
    let worst = checked.diagnostics.iter().map(wirelore_lang::Diagnostic::level).max();
    let shown = || render::text(&checked.sources, &checked.diagnostics, false);
    assert!(worst < Some(Level::Warning), "{}", shown());
    assert!(checked.database.is_some());
}

#[test]
fn the_demo_and_the_standard_descriptions_are_sound() {
    let schema = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../schema");
    let demo = schema.join("demo/kestrel.lore");
    assert_sound(&check(&[&demo.to_string_lossy()], &FileLoader));
    let standards = ["heavy_duty", "lin_diagnostics", "obd", "uds", "someip", "doip"];
    for name in standards {
        let path = schema.join(format!("standard/{name}.lore"));
        assert_sound(&check(&[&path.to_string_lossy()], &FileLoader));
        assert_sound(&check_text("use.lore", &format!("use standard {name}\n")));
    }
    // No name of one is a name of another.
    let all = standards.map(|name| format!("use standard {name}\n")).concat();
    assert_sound(&check_text("use.lore", &all));
}

#[test]
fn the_demo_and_the_standard_descriptions_are_laid_out() {
    let schema = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../schema");
    let mut seen = 0;
    for folder in ["demo", "standard"] {
        for entry in std::fs::read_dir(schema.join(folder)).expect("the folder is there") {
            let path = entry.expect("it can be listed").path();
            if path.extension().is_some_and(|extension| extension == "lore") {
                let text = std::fs::read_to_string(&path).expect("it can be read");
                assert_eq!(format(&text).as_deref(), Ok(text.as_str()), "{}", path.display());
                seen += 1;
            }
        }
    }
    assert!(seen >= 7, "{seen} descriptions");
}

/// Nothing that passes the rules is refused as a database: that would be an error without a rule of its own.
#[track_caller]
fn assert_rules_are_enough(text: &str) {
    let checked = check_text("sample.lore", text);
    let shown = || render::text(&checked.sources, &checked.diagnostics, false);
    assert!(!checked.diagnostics.iter().any(|message| message.message.contains("is not valid")), "{text}\n{}", shown());
    assert_eq!(checked.has_errors(), checked.database.is_none(), "{text}\n{}", shown());
}

/// Takes out, doubles and exchanges one word after another of all examples of all rules.
#[test]
fn changed_samples_give_messages_or_a_database() {
    for page in Rule::ALL.iter().map(|rule| rule.page()) {
        for text in [page.wrong, page.right] {
            let words: Vec<&str> = text.split_inclusive([' ', '\n', ',']).collect();
            for at in 0..words.len() {
                let (before, after) = (words[..at].concat(), words[at + 1..].concat());
                let next = words.get(at + 1).copied().unwrap_or_default();
                let behind_next = words.get(at + 2..).unwrap_or_default().concat();
                assert_rules_are_enough(&format!("{before}{after}"));
                assert_rules_are_enough(&format!("{before}{0}{0}{after}", words[at]));
                assert_rules_are_enough(&format!("{before}{next}{}{behind_next}", words[at]));
                for number in ["0 ", "8 ", "64 ", "0x80 ", "-1 "] {
                    assert_rules_are_enough(&format!("{before}{number}{after}"));
                }
            }
        }
    }
}
