//! A result: tables and sentences, in the form that is wanted.

use serde_json::{Map, Value};
use wirelore_model::Grade;

use super::sheet::Sheet;
use crate::output::csv::Fields;

/// Everything that is written.
pub(super) struct Page {
    /// What it is about; may be empty.
    pub(super) title: String,
    pub(super) parts: Vec<Part>,
    /// The table that csv is.
    pub(super) main: &'static str,
}

/// A table or some sentences.
pub(super) struct Part {
    key: &'static str,
    content: Content,
    /// People see it.
    is_shown: bool,
}

enum Content {
    Sheet(Sheet),
    Lines(Vec<String>),
}

impl Part {
    pub(super) fn sheet(key: &'static str, sheet: Sheet) -> Self {
        Self { key, content: Content::Sheet(sheet), is_shown: true }
    }

    pub(super) fn lines(key: &'static str, lines: Vec<String>) -> Self {
        Self { key, content: Content::Lines(lines), is_shown: true }
    }

    /// Programs get it in any case, people only if they ask for it.
    pub(super) fn shown_if(self, wanted: bool) -> Self {
        Self { is_shown: wanted, ..self }
    }

    fn has_mark(&self, mark: char) -> bool {
        matches!(&self.content, Content::Sheet(sheet) if sheet.has_mark(mark))
    }

    fn text(&self) -> Option<String> {
        match &self.content {
            _ if !self.is_shown => None,
            Content::Sheet(sheet) if sheet.is_empty() => None,
            Content::Sheet(sheet) => Some(sheet.table()),
            Content::Lines(lines) if lines.is_empty() => None,
            Content::Lines(lines) => Some(lines.iter().map(|line| format!("{line}\n")).collect()),
        }
    }
}

impl Page {
    pub(super) fn table(&self) -> String {
        let title = Some(format!("{}\n", self.title)).filter(|_| !self.title.is_empty());
        let parts = title.into_iter().chain(self.parts.iter().filter_map(Part::text)).chain(self.marks());
        parts.collect::<Vec<_>>().join("\n")
    }

    /// What the marks of uncertain items mean, where there are any to be seen.
    fn marks(&self) -> Option<String> {
        let is_there = |mark: char| self.parts.iter().any(|part| part.is_shown && part.has_mark(mark));
        let grades = [Grade::Guessed, Grade::Likely].into_iter();
        let marks = grades.filter_map(|grade| grade.mark().filter(|mark| is_there(*mark)).map(|mark| (mark, grade)));
        let marks: Vec<String> = marks.map(|(mark, grade)| format!("{mark} {}", grade.words())).collect();
        (!marks.is_empty()).then(|| format!("{}\n", marks.join(", ")))
    }

    pub(super) fn csv(&self, fields: Fields) -> String {
        let sheet = self.parts.iter().find_map(|part| match &part.content {
            Content::Sheet(sheet) if part.key == self.main => Some(sheet),
            _ => None,
        });
        sheet.map(|sheet| sheet.csv(fields)).unwrap_or_default()
    }

    /// One object, a key for each part.
    pub(super) fn json(&self) -> String {
        let mut object = Map::new();
        object.insert("title".to_owned(), self.title.clone().into());
        for part in &self.parts {
            let value = match &part.content {
                Content::Sheet(sheet) => sheet.json(),
                Content::Lines(lines) => lines.iter().map(|line| Value::from(line.trim_start())).collect(),
            };
            object.insert(part.key.to_owned(), value);
        }
        format!("{:#}\n", Value::Object(object))
    }
}
