//! Messages about a description, as data: what is wrong, where, why, and a way out.

use crate::{Rule, Site};

/// How grave a message is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Good style, or something worth a look; changes nothing.
    Hint,
    /// Probably a mistake; the database is built all the same.
    Warning,
    /// A mistake; no database is built.
    Error,
}

impl Level {
    /// The word that is shown.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Hint => "hint",
            Self::Warning => "warning",
            Self::Error => "error",
        }
    }
}

/// One message.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Diagnostic {
    /// The rule that speaks; gives the level and the page.
    pub rule: Rule,
    /// What is wrong with this text, in lower case, without a full stop.
    pub message: String,
    /// The characters it is about.
    pub site: Site,
    /// What to say at those characters; may be empty.
    pub here: String,
    /// Other places that explain it.
    pub elsewhere: Vec<Remark>,
    /// Ways out, one sentence each.
    pub help: Vec<String>,
    /// An edit that would mend it.
    pub fix: Option<Fix>,
}

/// A remark at another place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Remark {
    /// The place.
    pub site: Site,
    /// The remark.
    pub text: String,
}

/// A replacement for the characters of a site.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fix {
    /// The characters that go.
    pub site: Site,
    /// What comes in their place.
    pub text: String,
}

impl Diagnostic {
    /// A message with a rule, a place and a sentence.
    pub fn new(rule: Rule, site: Site, message: impl Into<String>) -> Self {
        Self {
            rule,
            message: message.into(),
            site,
            here: String::new(),
            elsewhere: Vec::new(),
            help: Vec::new(),
            fix: None,
        }
    }

    /// Adds what to say at the place itself.
    #[must_use]
    pub fn here(mut self, text: impl Into<String>) -> Self {
        self.here = text.into();
        self
    }

    /// Adds a remark at another place.
    #[must_use]
    pub fn remark(mut self, site: Site, text: impl Into<String>) -> Self {
        self.elsewhere.push(Remark { site, text: text.into() });
        self
    }

    /// Adds a way out.
    #[must_use]
    pub fn help(mut self, text: impl Into<String>) -> Self {
        self.help.push(text.into());
        self
    }

    /// Adds an edit that would mend it.
    #[must_use]
    pub fn fix(mut self, site: Site, text: impl Into<String>) -> Self {
        self.fix = Some(Fix { site, text: text.into() });
        self
    }

    /// How grave it is.
    #[must_use]
    pub fn level(&self) -> Level {
        self.rule.level()
    }
}
