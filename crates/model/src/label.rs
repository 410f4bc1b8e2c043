//! What every item of a description carries for people: a name, a title, notes, and how sure its author is.

use serde::{Deserialize, Serialize};

/// The words that belong to an item.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Label {
    /// The name by which other items refer to this one: letters, digits and `_`, normalised to NFC.
    pub name: String,
    /// A title for people, from the string behind the name.
    pub title: Option<String>,
    /// The text of the `##` lines in front of the item, lines joined with `\n`.
    pub note: Option<String>,
    /// The name that another document uses for the same thing (`called "..."`).
    pub called: Option<String>,
    /// How sure the author is, where the author says so.
    pub certainty: Option<Certainty>,
}

impl Label {
    /// A label that has a name and nothing else.
    #[must_use]
    pub fn named(name: impl Into<String>) -> Self {
        Self { name: name.into(), ..Self::default() }
    }

    /// The title where there is one, else the name.
    #[must_use]
    pub fn display(&self) -> &str {
        self.title.as_deref().unwrap_or(&self.name)
    }
}

/// How sure the author is of an item, and why.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Certainty {
    /// The grade.
    pub grade: Grade,
    /// What it rests on, in the author's words.
    pub evidence: Option<String>,
}

/// The grades of certainty that the language knows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Grade {
    /// Moved on purpose at the vehicle, and the decoded value followed.
    Confirmed,
    /// Fits everything seen so far.
    Likely,
    /// An idea that waits for a test.
    Guessed,
    /// Read off an instrument.
    Measured,
    /// Taken from a document.
    Document,
}

impl Certainty {
    /// Grade and evidence in words: `guessed: falls with the mileage`.
    #[must_use]
    pub fn text(&self) -> String {
        match &self.evidence {
            Some(evidence) => format!("{}: {evidence}", self.grade.words()),
            None => self.grade.words().to_owned(),
        }
    }
}

impl Grade {
    /// What it is called.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Confirmed => "confirmed",
            Self::Likely => "likely",
            Self::Guessed => "guessed",
            Self::Measured => "measured",
            Self::Document => "from a document",
        }
    }

    /// The sign that stands beside what is not certain, where there is no room for words.
    #[must_use]
    pub fn mark(self) -> Option<char> {
        match self {
            Self::Guessed => Some('?'),
            Self::Likely => Some('~'),
            Self::Confirmed | Self::Measured | Self::Document => None,
        }
    }
}
