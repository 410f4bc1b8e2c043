//! Titles and notes as doc comments: every character of them is text there, whatever it means to Rust, to Markdown or to a terminal.

use std::fmt::Write;

use wirelore_model::{Grade, Label};

use crate::writer::Writer;

/// Some text without line ends, for inside a doc comment.
pub(crate) fn inline(text: &str) -> String {
    let mut safe = String::new();
    for character in text.trim().chars() {
        match character {
            '\t' | '\n' | '\r' => safe.push(' '),
            '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '~' | '|' | '&' | '$' => safe.extend(['\\', character]),
            _ if is_hidden(character) => {
                let _ = write!(safe, "\\\\u{{{:x}}}", u32::from(character));
            }
            _ => safe.push(character),
        }
    }
    safe
}

/// What is not seen, or changes how what is around it is seen: controls, and the marks of Unicode that turn the direction (Unicode Standard
/// Annex 9), join, or fill.
fn is_hidden(character: char) -> bool {
    let is_format = matches!(
        character,
        '\u{AD}' | '\u{61C}' | '\u{180E}' | '\u{200B}'..='\u{200F}' | '\u{2028}'..='\u{202E}' | '\u{2060}'..='\u{206F}' | '\u{FEFF}' | '\u{FFF9}'..='\u{FFFB}' | '\u{E0000}'..='\u{E0FFF}'
    );
    character.is_control() || is_format
}

/// Text as lines of their own, of which none begins a list, a heading or a block of code.
fn lines(text: &str) -> Vec<String> {
    text.lines().map(|line| plain_beginning(&inline(line))).collect()
}

/// The same line, but it begins nothing.
pub(crate) fn plain_beginning(line: &str) -> String {
    let digits = line.len() - line.trim_start_matches(|first: char| first.is_ascii_digit()).len();
    match line[digits..].chars().next() {
        Some('.' | ')') if digits > 0 => format!("{}\\{}", &line[..digits], &line[digits..]),
        Some('#' | '-' | '+' | '=' | ':' | '^' | '!') if digits == 0 => format!("\\{line}"),
        _ => line.to_owned(),
    }
}

/// A doc comment under way: paragraphs, each of some lines.
#[derive(Debug, Default)]
pub(crate) struct Doc(Vec<Vec<String>>);

impl Doc {
    /// A paragraph of our own.
    pub(crate) fn of(text: impl Into<String>) -> Self {
        Self(vec![vec![text.into()]])
    }

    /// One more paragraph of our own.
    pub(crate) fn and(mut self, text: impl Into<String>) -> Self {
        self.0.push(vec![text.into()]);
        self
    }

    /// What a label says: its title or else its name first, its notes, its other name, and how sure its author is.
    pub(crate) fn label(label: &Label) -> Self {
        let mut doc = Self::default();
        let title = label
            .title
            .as_deref()
            .map_or_else(|| format!("`{}`", ticked(&label.name)), |title| sentence(&plain_beginning(&inline(title))));
        doc.0.push(vec![if label.title.is_some() { title } else { format!("{title}.") }]);
        doc.rest(label)
    }

    /// The same without the name where there is no title.
    pub(crate) fn untitled(label: &Label) -> Self {
        if label.title.is_some() { Self::label(label) } else { Self::default().rest(label) }
    }

    fn rest(mut self, label: &Label) -> Self {
        let doc = &mut self;
        if let Some(note) = &label.note {
            doc.0.extend(lines(note).split(String::is_empty).map(<[String]>::to_vec));
        }
        if let Some(called) = &label.called {
            doc.0.push(vec![format!("Called \"{}\" elsewhere.", inline(called))]);
        }
        if let Some(certainty) = &label.certainty {
            let evidence =
                certainty.evidence.as_ref().map_or(String::new(), |evidence| format!(": {}", inline(evidence)));
            doc.0.push(vec![format!("{}{evidence}.", grade(certainty.grade))]);
        }
        doc.0.retain(|paragraph| !paragraph.is_empty());
        self
    }

    pub(crate) fn write(&self, writer: &mut Writer) {
        for (index, paragraph) in self.0.iter().enumerate() {
            if index > 0 {
                writer.line("///");
            }
            paragraph.iter().for_each(|line| writer.line(format!("/// {line}").trim_end()));
        }
    }
}

fn grade(grade: Grade) -> &'static str {
    match grade {
        Grade::Confirmed => "Confirmed",
        Grade::Likely => "Likely",
        Grade::Guessed => "Guessed",
        Grade::Measured => "Measured",
        Grade::Document => "From a document",
    }
}

/// With a full stop.
fn sentence(text: &str) -> String {
    if text.ends_with(['.', '!', '?']) { text.to_owned() } else { format!("{text}.") }
}

/// A name between backticks.
pub(crate) fn ticked(name: &str) -> String {
    name.chars().filter(|character| *character != '`' && !is_hidden(*character)).collect()
}

/// A literal that stands for a text.
pub(crate) fn literal(text: &str) -> String {
    let mut literal = String::from("\"");
    for character in text.chars() {
        match character {
            '"' | '\\' => literal.extend(['\\', character]),
            ' '..='~' => literal.push(character),
            _ if character.is_alphanumeric() => literal.push(character),
            _ => {
                let _ = write!(literal, "\\u{{{:x}}}", u32::from(character));
            }
        }
    }
    literal.push('"');
    literal
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_of_a_text_means_anything() {
        assert_eq!(inline("a */ \"b\" \\ [c](d) <e> `f`"), "a \\*/ \"b\" \\\\ \\[c\\](d) \\<e\\> \\`f\\`");
        assert_eq!(inline("left\u{202E}right\u{7}"), "left\\\\u{202e}right\\\\u{7}");
        let note = "    let code = 1;\n# heading\n- item\n12. item\n```";
        let plain = ["let code = 1;", "\\# heading", "\\- item", "12\\. item", "\\`\\`\\`"];
        assert_eq!(lines(note), plain);
        assert_eq!(literal("a\"\\\n\u{202E}ü"), "\"a\\\"\\\\\\u{a}\\u{202e}ü\"");
    }
}
