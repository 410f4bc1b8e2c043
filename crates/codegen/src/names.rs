//! Names of a description as names of Rust: letters of ASCII, no keyword, none twice.

use std::collections::HashSet;

use unicode_normalization::UnicodeNormalization;

/// The keywords of Rust, strict and reserved, of all editions (The Rust Reference, "Keywords").
const KEYWORDS: [&str; 52] = [
    "abstract", "as", "async", "await", "become", "box", "break", "const", "continue", "crate", "do", "dyn", "else",
    "enum", "extern", "false", "final", "fn", "for", "gen", "if", "impl", "in", "let", "loop", "macro", "match", "mod",
    "move", "mut", "override", "priv", "pub", "ref", "return", "self", "static", "struct", "super", "trait", "true",
    "try", "type", "typeof", "unsafe", "unsized", "use", "virtual", "where", "while", "yield", "union",
];

/// Types of the prelude that generated code uses, or that a reader would take for those of the prelude.
const TAKEN_TYPES: [&str; 22] = [
    "Self",
    "Option",
    "Some",
    "None",
    "Result",
    "Ok",
    "Err",
    "Default",
    "Clone",
    "Copy",
    "Debug",
    "PartialEq",
    "Eq",
    "String",
    "Vec",
    "Box",
    "From",
    "Into",
    "Iterator",
    "Drop",
    "Send",
    "Sync",
];

/// The words of a name: letters of ASCII and digits. Latin letters lose their marks; any other letter is written as its number.
fn words(name: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut before = '_';
    for character in name.nfd() {
        if character.is_ascii_alphanumeric() {
            if character.is_ascii_uppercase() && !before.is_ascii_uppercase() {
                words.push(String::new());
            }
            push(&mut words, &character.to_ascii_lowercase().to_string());
        } else if character == 'ß' {
            push(&mut words, "ss");
        } else if character.is_alphanumeric() {
            words.push(format!("u{:x}", u32::from(character)));
            words.push(String::new());
        } else if !is_mark(character) {
            words.push(String::new());
        }
        before = character;
    }
    words.retain(|word| !word.is_empty());
    words
}

fn push(words: &mut [String], text: &str) {
    if let Some(word) = words.last_mut() {
        word.push_str(text);
    }
}

/// The marks that a Latin letter is taken apart into.
fn is_mark(character: char) -> bool {
    ('\u{300}'..='\u{36F}').contains(&character)
}

/// A name for values and functions: `front_left`.
pub(crate) fn snake(name: &str) -> String {
    let joined = words(name).join("_");
    match joined.chars().next() {
        None => "unnamed".to_owned(),
        Some(first) if first.is_ascii_digit() => format!("n{joined}"),
        Some(_) if KEYWORDS.contains(&joined.as_str()) => format!("{joined}_"),
        Some(_) => joined,
    }
}

/// A name for types and their variants: `FrontLeft`.
pub(crate) fn camel(name: &str) -> String {
    let mut joined = String::new();
    for word in words(name) {
        let mut letters = word.chars();
        joined.extend(letters.next().map(|letter| letter.to_ascii_uppercase()));
        joined.push_str(letters.as_str());
    }
    match joined.chars().next() {
        None => "Unnamed".to_owned(),
        Some(first) if first.is_ascii_digit() => format!("N{joined}"),
        Some(_) => joined,
    }
}

/// The names that are taken in one place.
#[derive(Debug, Clone, Default)]
pub(crate) struct Names(HashSet<String>);

impl Names {
    /// Nothing but these.
    pub(crate) fn with(taken: &[&str]) -> Self {
        Self(taken.iter().map(|&name| name.to_owned()).collect())
    }

    /// The types of a module.
    pub(crate) fn types() -> Self {
        Self::with(&TAKEN_TYPES)
    }

    /// A free name for a value: this one, else with a number behind it.
    pub(crate) fn value(&mut self, wanted: &str) -> String {
        self.free(wanted, |number| format!("{}_{number}", wanted.trim_end_matches('_')))
    }

    /// A free name for a type.
    pub(crate) fn of_type(&mut self, wanted: &str) -> String {
        let is_number_clear = !wanted.ends_with(|last: char| last.is_ascii_digit());
        self.free(
            wanted,
            |number| if is_number_clear { format!("{wanted}{number}") } else { format!("{wanted}N{number}") },
        )
    }

    fn free(&mut self, wanted: &str, numbered: impl Fn(u32) -> String) -> String {
        let mut name = wanted.to_owned();
        let mut number = 2;
        while !self.0.insert(name.clone()) {
            name = numbered(number);
            number += 1;
        }
        name
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_become_names_of_rust() {
        for (name, value, of_type) in [
            ("front_left", "front_left", "FrontLeft"),
            ("FrontLeft", "front_left", "FrontLeft"),
            ("ABS_state", "abs_state", "AbsState"),
            ("cell[3]", "cell_3", "Cell3"),
            ("fn", "fn_", "Fn"),
            ("Self", "self_", "Self"),
            ("crate", "crate_", "Crate"),
            ("Öldruck_größe", "oldruck_grosse", "OldruckGrosse"),
            ("温度", "u6e29_u5ea6", "U6e29U5ea6"),
            ("3rd", "n3rd", "N3rd"),
            ("_", "unnamed", "Unnamed"),
            ("a\"; }\u{202E}", "a", "A"),
        ] {
            assert_eq!((snake(name).as_str(), camel(name).as_str()), (value, of_type), "{name:?}");
        }
    }

    #[test]
    fn no_name_is_there_twice() {
        let mut names = Names::types();
        assert_eq!([names.of_type("Option"), names.of_type("A1"), names.of_type("A1")], ["Option2", "A1", "A1N2"]);
        let mut names = Names::with(&["decode"]);
        assert_eq!([names.value("decode"), names.value("fn_"), names.value("fn_")], ["decode_2", "fn_", "fn_2"]);
    }
}
