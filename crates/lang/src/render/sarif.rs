//! Messages as SARIF 2.1.0 (OASIS Standard, "Static Analysis Results Interchange Format"): what code hosts and editors read.
//!
//! The clauses named are those of the standard.

use serde::Serialize;

use crate::{Diagnostic, Level, Rule, Site, Sources};

/// Clause 3.13.
#[derive(Serialize)]
struct Log<'a> {
    #[serde(rename = "$schema")]
    schema: &'static str,
    version: &'static str,
    runs: [Run<'a>; 1],
}

/// Clause 3.14.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Run<'a> {
    tool: Tool,
    column_kind: &'static str,
    results: Vec<Finding<'a>>,
}

/// Clause 3.18.
#[derive(Serialize)]
struct Tool {
    driver: Driver,
}

/// Clause 3.19.
#[derive(Serialize)]
struct Driver {
    name: &'static str,
    version: &'static str,
    rules: Vec<Descriptor>,
}

/// Clause 3.49.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Descriptor {
    id: &'static str,
    short_description: Text<'static>,
    full_description: Text<'static>,
    default_configuration: Configuration,
}

/// Clause 3.50.
#[derive(Serialize)]
struct Configuration {
    level: &'static str,
}

/// Clauses 3.11 and 3.12.
#[derive(Serialize)]
struct Text<'a> {
    text: std::borrow::Cow<'a, str>,
}

/// Clause 3.27.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Finding<'a> {
    rule_id: &'static str,
    rule_index: usize,
    level: &'static str,
    message: Text<'a>,
    locations: [Location<'a>; 1],
    #[serde(skip_serializing_if = "Vec::is_empty")]
    related_locations: Vec<Location<'a>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    fixes: Vec<Mending<'a>>,
}

/// Clause 3.28.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Location<'a> {
    physical_location: PhysicalLocation,
    #[serde(skip_serializing_if = "Option::is_none")]
    message: Option<Text<'a>>,
}

/// Clause 3.29.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct PhysicalLocation {
    artifact_location: ArtifactLocation,
    region: Region,
}

/// Clause 3.4.
#[derive(Serialize)]
struct ArtifactLocation {
    uri: String,
}

/// Clause 3.30.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Region {
    start_line: u32,
    start_column: u32,
    end_line: u32,
    end_column: u32,
}

/// Clause 3.55.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Mending<'a> {
    description: Text<'a>,
    artifact_changes: [Change<'a>; 1],
}

/// Clause 3.56.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Change<'a> {
    artifact_location: ArtifactLocation,
    replacements: [Replacement<'a>; 1],
}

/// Clause 3.57.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Replacement<'a> {
    deleted_region: Region,
    inserted_content: Text<'a>,
}

/// All messages as one SARIF log with one run; the rules that speak are described in it.
#[must_use]
pub fn sarif(sources: &Sources, messages: &[Diagnostic]) -> String {
    let speaks = |rule: &Rule| messages.iter().any(|message| message.rule == *rule);
    let rules: Vec<Rule> = Rule::ALL.iter().copied().filter(speaks).collect();
    let log = Log {
        schema: "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
        version: "2.1.0",
        runs: [Run {
            tool: Tool {
                driver: Driver {
                    name: "wirelore",
                    version: env!("CARGO_PKG_VERSION"),
                    rules: rules.iter().copied().map(descriptor).collect(),
                },
            },
            column_kind: "unicodeCodePoints",
            results: messages.iter().map(|message| finding(sources, &rules, message)).collect(),
        }],
    };
    // Strings and numbers only: there is nothing in it that JSON cannot hold.
    let mut out = serde_json::to_string_pretty(&log).unwrap_or_default();
    out.push('\n');
    out
}

fn text(text: &str) -> Text<'_> {
    Text { text: text.into() }
}

/// Clause 3.27.10: `note` is the least of the levels.
fn level(level: Level) -> &'static str {
    match level {
        Level::Error => "error",
        Level::Warning => "warning",
        Level::Hint => "note",
    }
}

fn descriptor(rule: Rule) -> Descriptor {
    let page = rule.page();
    Descriptor {
        id: rule.name(),
        short_description: text(page.summary),
        full_description: text(page.body),
        default_configuration: Configuration { level: level(rule.level()) },
    }
}

fn finding<'a>(sources: &Sources, rules: &[Rule], message: &'a Diagnostic) -> Finding<'a> {
    let mut said = message.message.clone();
    for line in std::iter::once(&message.here).chain(&message.help).filter(|line| !line.is_empty()) {
        said.push('\n');
        said.push_str(line);
    }
    let mending = |fix: &'a crate::Fix| Mending {
        description: text("it could read like this"),
        artifact_changes: [Change {
            artifact_location: artifact(sources, fix.site),
            replacements: [Replacement {
                deleted_region: region(sources, fix.site),
                inserted_content: text(&fix.text),
            }],
        }],
    };
    Finding {
        rule_id: message.rule.name(),
        rule_index: rules.iter().position(|&rule| rule == message.rule).unwrap_or_default(),
        level: level(message.level()),
        message: Text { text: said.into() },
        locations: [location(sources, message.site, None)],
        related_locations: message
            .elsewhere
            .iter()
            .map(|remark| location(sources, remark.site, Some(&remark.text)))
            .collect(),
        fixes: message.fix.iter().map(mending).collect(),
    }
}

fn location<'a>(sources: &Sources, site: Site, said: Option<&'a str>) -> Location<'a> {
    Location {
        physical_location: PhysicalLocation {
            artifact_location: artifact(sources, site),
            region: region(sources, site),
        },
        message: said.map(text),
    }
}

fn region(sources: &Sources, site: Site) -> Region {
    let (start_line, start_column) = sources.line_column(site);
    let (end_line, end_column) = sources.end_line_column(site);
    Region { start_line, start_column, end_line, end_column }
}

fn artifact(sources: &Sources, site: Site) -> ArtifactLocation {
    ArtifactLocation { uri: uri(sources.name(site.file)) }
}

/// A path as a URI reference (RFC 3986, section 2.1): bytes that may not stand for themselves are written `%XX`.
fn uri(path: &str) -> String {
    let mut uri = if path.starts_with('/') { "file://".to_owned() } else { String::new() };
    for byte in path.bytes() {
        if byte.is_ascii_alphanumeric() || b"-._~/".contains(&byte) {
            uri.push(char::from(byte));
        } else {
            uri.push_str(&format!("%{byte:02X}"));
        }
    }
    uri
}
