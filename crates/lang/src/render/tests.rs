//! Tests of the three outputs.

use serde_json::Value;

use super::*;
use crate::{Diagnostic, FileId, Rule, Site, Sources, Span, syntax};

fn messages_of(name: &str, text: &str) -> (Sources, Vec<Diagnostic>) {
    let mut sources = Sources::default();
    let file = sources.add(name, text);
    let (_, messages) = syntax::parse(text, file);
    (sources, messages)
}

const MISSPELT: &str = "edition 1\nnetwork drive \"Tür\" can 500 kbit/s, dta 2 Mbit/s\n";

#[test]
fn people_see_the_line_the_reason_and_the_edit() {
    let (sources, messages) = messages_of("van.lore", MISSPELT);
    let shown = text(&sources, &messages, false);
    let expected = "\
error unknown-clause: `dta` is not a clause of this statement
  ╭▸ van.lore:2:37
  │
2 │ network drive \"Tür\" can 500 kbit/s, dta 2 Mbit/s
  │                                     ━━━ did you mean `data`?
  ╰╴
mended: it could read
  ╭╴
2 │ network drive \"Tür\" can 500 kbit/s, data 2 Mbit/s
  ╰╴                                     +

1 error, no warnings, no hints
";
    assert_eq!(shown, expected);
    assert!(!shown.contains('\u{1B}'));
    assert!(text(&sources, &messages, true).contains('\u{1B}'));
    assert_eq!(text(&sources, &[], false), "no errors, no warnings, no hints\n");
}

#[test]
fn a_description_cannot_drive_the_terminal() {
    let nasty = "vehicle van \"\u{1B}[2J\u{9B}31m\u{202E}\" \u{1B}[0m \u{7}x\n";
    let (sources, messages) = messages_of("\u{1B}]0;name\u{7}.lore", nasty);
    assert!(!messages.is_empty());
    let shown = text(&sources, &messages, false);
    assert!(!shown.chars().any(|c| (c.is_control() && c != '\n') || c == '\u{202E}'), "{shown:?}");
}

#[test]
fn labels_far_apart_are_shown_without_what_lies_between() {
    let lines = "# nothing\n".repeat(2000);
    let text_of_file = format!("network a can\n{lines}network b can\n");
    let mut sources = Sources::default();
    let file = sources.add("long.lore", text_of_file.clone());
    let site = |start: usize| Site { file, span: Span::new(start as u32, start as u32 + 7) };
    let second = text_of_file.len() - 14;
    let message = Diagnostic::new(Rule::NameTaken, site(second), "twice").remark(site(0), "first here");
    let shown = text(&sources, &[message], false);
    assert!(
        shown.contains("long.lore:2002:1") && shown.contains("first here") && shown.lines().count() < 20,
        "{shown}"
    );
}

#[test]
fn an_endless_line_is_cut_around_the_label() {
    let text_of_file = format!("vehicle v \"{}\" $ x\n", "ü".repeat(100_000));
    let (sources, messages) = messages_of("endless.lore", &text_of_file);
    let shown = text(&sources, &messages[..1], false);
    assert!(shown.contains("endless.lore:1:100014") && shown.len() < 2000, "{shown}");
}

#[test]
fn programs_get_one_object_on_each_line() {
    let (sources, messages) = messages_of("van.lore", MISSPELT);
    let lines = json_lines(&sources, &messages);
    assert_eq!(
        lines,
        "{\"rule\":\"unknown-clause\",\"level\":\"error\",\"message\":\"`dta` is not a clause of this statement\",\"file\":\"van.lore\",\
         \"line\":2,\"column\":37,\"end_line\":2,\"end_column\":40,\"here\":\"did you mean `data`?\",\"elsewhere\":[],\"help\":[],\
         \"fix\":{\"text\":\"data\",\"file\":\"van.lore\",\"line\":2,\"column\":37,\"end_line\":2,\"end_column\":40}}\n"
    );
}

#[test]
fn sarif_has_the_parts_that_the_standard_asks_for() {
    let (sources, messages) = messages_of("body doors/tür.lore", MISSPELT);
    let log: Value = serde_json::from_str(&sarif(&sources, &messages)).unwrap();
    // Clauses 3.13.2 (version), 3.14.6 (tool), 3.18.2 (driver), 3.19.8 (name), 3.27.11 (message).
    assert_eq!(log["version"], "2.1.0");
    let run = &log["runs"][0];
    let driver = &run["tool"]["driver"];
    assert_eq!(driver["name"], "wirelore");
    let result = &run["results"][0];
    let index = usize::try_from(result["ruleIndex"].as_u64().unwrap()).unwrap();
    assert_eq!(driver["rules"][index]["id"], "unknown-clause");
    assert_eq!(result["ruleId"], "unknown-clause");
    assert_eq!(result["level"], "error");
    assert!(driver["rules"].as_array().unwrap().len() < Rule::ALL.len(), "rules that do not speak are left out");
    let place = &result["locations"][0]["physicalLocation"];
    assert_eq!(place["artifactLocation"]["uri"], "body%20doors/t%C3%BCr.lore");
    assert_eq!(place["region"]["startLine"], 2);
    assert_eq!(place["region"]["startColumn"], 37);
    assert_eq!(result["fixes"][0]["artifactChanges"][0]["replacements"][0]["insertedContent"]["text"], "data");
}

#[test]
fn a_site_outside_of_all_files_is_no_trouble() {
    let sources = Sources::default();
    let message = Diagnostic::new(Rule::FileNotFound, Site { file: FileId(7), span: Span::new(3, 9) }, "gone");
    assert!(text(&sources, std::slice::from_ref(&message), false).contains("gone"));
    assert!(json_lines(&sources, std::slice::from_ref(&message)).contains("\"line\":1"));
    assert!(sarif(&sources, &[message]).contains("\"startLine\": 1"));
}
