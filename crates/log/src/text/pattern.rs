//! The user's own pattern of a line: `{time:s};{channel};{id:hex};{data:hex}`.

use crate::error::LogError;
use crate::flaw::{Flaw, Shown};

use super::headings::{Form, Role, SKIP};
use super::networks::Networks;
use super::row::{Forms, IdForm, OtherForms, Pieces, TEXT_BYTES_MAX};
use super::time::TimeUnit;
use super::values::{Base, is_hex_digit};

/// What every line of a text looks like, as a person tells it.
///
/// Text stands for itself; a blank stands for one or more blanks; `{role}` stands for a piece of the line, up to the text
/// that follows it in the pattern. Roles are those of [`ColumnMap`](crate::ColumnMap), and `{skip}` for what does not matter.
/// `{time}` is in seconds, and numbers are hexadecimal but for `{slot}` and `{cycle}`, unless the field says otherwise: `{time:ms}`,
/// `{id:dec}`, `{data:dec}`. Without anything that tells what frame a line holds, lines are bytes of a network without identifiers,
/// whole messages or one byte each: `{time} {data}`. Data at the end of the line, or behind `{length}` or `{dlc}`, may have blanks between its bytes. A brace
/// itself is written twice: `{{`.
///
/// ```
/// use wirelore_log::LinePattern;
///
/// assert!(LinePattern::parse("({time}) {channel} {id:hex} [{length}] {data}").is_ok());
/// assert!(LinePattern::parse("{id}{data}").is_err());
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LinePattern {
    parts: Vec<Part>,
    forms: FieldForms,
    networks: Networks,
}

#[derive(Debug, Clone, PartialEq, Eq)]
enum Part {
    Text(Vec<u8>),
    Blanks,
    /// `None` is a piece that does not matter.
    Field(Option<Role>),
}

/// The forms that the fields tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct FieldForms {
    time: TimeUnit,
    id: Base,
    data: Base,
    others: OtherForms,
}

impl LinePattern {
    /// Reads the pattern from its text.
    ///
    /// # Errors
    /// When a field is unknown, told twice or not closed, when nothing separates two fields, when the data is missing, or when a
    /// field makes no sense without others.
    pub fn parse(text: &str) -> Result<Self, LogError> {
        let mut parser = Parser {
            text,
            rest: text,
            parts: Vec::new(),
            forms: FieldForms::default(),
            told: Vec::new(),
            networks: Networks::default(),
        };
        parser.run().map_err(|what| LogError::LinePattern {
            text: text.to_owned(),
            at: parser.text[..text.len() - parser.rest.len()].chars().count() + 1,
            what,
        })?;
        Ok(Self { parts: parser.parts, forms: parser.forms, networks: parser.networks })
    }

    pub(super) fn forms(&self) -> Forms {
        let FieldForms { time, id, data, others } = self.forms;
        Forms { time, id: IdForm::All(id), data, others }
    }

    /// What its lines tell of their networks.
    pub(super) fn networks(&self) -> Networks {
        self.networks
    }

    /// Whether the pattern has a field of this role.
    pub(super) fn has(&self, role: Role) -> bool {
        self.parts.contains(&Part::Field(Some(role)))
    }

    /// Whether lines of this pattern begin with the sign of comments.
    pub(super) fn begins_with_number_sign(&self) -> bool {
        matches!(self.parts.first(), Some(Part::Text(text)) if text.starts_with(b"#"))
    }

    /// The pieces of one line.
    #[inline]
    pub(super) fn pieces<'l>(&'l self, line: &'l [u8]) -> Result<Pieces<'l>, Flaw<'l>> {
        let mut pieces = Pieces::new();
        let mut at = 0;
        for (index, part) in self.parts.iter().enumerate() {
            at = match part {
                Part::Text(text) if line[at..].starts_with(text) => at + text.len(),
                Part::Text(text) => {
                    return Err(Flaw::Pattern { wanted: Shown(text), at: at + 1 });
                }
                Part::Blanks => match blanks_at(&line[at..]) {
                    0 if at < line.len() => {
                        return Err(Flaw::Pattern { wanted: Shown(b" "), at: at + 1 });
                    }
                    blanks => at + blanks,
                },
                Part::Field(role) => {
                    let next = self.parts.get(index + 1);
                    let end = at
                        + self.field_bytes(*role, next, &line[at..], &pieces).map_err(|wanted| {
                            Flaw::PatternBehind {
                                wanted: Shown(wanted),
                                field: role.map_or(SKIP, Role::word),
                                at: at + 1,
                            }
                        })?;
                    if let Some(role) = role {
                        pieces.set(*role, line[at..end].trim_ascii());
                    }
                    end
                }
            };
        }
        match at + blanks_at(&line[at..]) == line.len() {
            true => Ok(pieces),
            false => Err(Flaw::PatternEnded { at: at + 1 }),
        }
    }

    /// How many bytes of `rest` belong to a field that `next` follows; the text of `next` where it is not there.
    #[inline]
    fn field_bytes<'l>(
        &'l self,
        role: Option<Role>,
        next: Option<&'l Part>,
        rest: &[u8],
        pieces: &Pieces<'_>,
    ) -> Result<usize, &'l [u8]> {
        match next {
            None => Ok(rest.len()),
            Some(Part::Text(text)) => memchr::memmem::find(rest, text).ok_or(text),
            Some(_) if role == Some(Role::Data) => Ok(self.spaced_data_bytes(rest, pieces)),
            Some(_) => Ok(rest.iter().position(|byte| is_blank(*byte)).unwrap_or(rest.len())),
        }
    }

    /// Data with blanks behind it: as many bytes as the line said before, or else up to the first blank.
    fn spaced_data_bytes(&self, rest: &[u8], pieces: &Pieces<'_>) -> usize {
        let told = pieces.get(Role::Length).or(pieces.get(Role::Dlc)).and_then(super::values::decimal);
        let digits_wanted = match (told, self.forms.data) {
            (Some(bytes), Base::Hex) if bytes <= TEXT_BYTES_MAX as u64 => 2 * bytes as usize,
            _ => {
                return rest.iter().position(|byte| is_blank(*byte)).unwrap_or(rest.len());
            }
        };
        let mut digits = 0;
        for (at, &byte) in rest.iter().enumerate() {
            if digits == digits_wanted || !(is_hex_digit(byte) || is_blank(byte)) {
                return at;
            }
            digits += usize::from(is_hex_digit(byte));
        }
        rest.len()
    }
}

fn is_blank(byte: u8) -> bool {
    matches!(byte, b' ' | b'\t')
}

fn blanks_at(rest: &[u8]) -> usize {
    rest.iter().take_while(|&&byte| is_blank(byte)).count()
}

impl Default for FieldForms {
    fn default() -> Self {
        Self { time: TimeUnit::Seconds, id: Base::Hex, data: Base::Hex, others: OtherForms::new([]) }
    }
}

/// Reads a pattern; `rest` stands where a mistake is.
struct Parser<'t> {
    text: &'t str,
    rest: &'t str,
    parts: Vec<Part>,
    forms: FieldForms,
    told: Vec<(Role, Form)>,
    networks: Networks,
}

impl Parser<'_> {
    fn run(&mut self) -> Result<(), String> {
        while let Some(letter) = self.rest.chars().next() {
            let is_doubled = self.rest[letter.len_utf8()..].starts_with(letter);
            match letter {
                '{' | '}' if is_doubled => {
                    self.add_text(&self.rest[..1]);
                    self.rest = &self.rest[2..];
                }
                '{' => self.field()?,
                '}' => {
                    return Err("a closing brace has no opening one; a brace itself is written twice".to_owned());
                }
                ' ' | '\t' => {
                    self.rest = self.rest.trim_start_matches([' ', '\t']);
                    self.parts.push(Part::Blanks);
                }
                _ => {
                    self.add_text(&self.rest[..letter.len_utf8()]);
                    self.rest = &self.rest[letter.len_utf8()..];
                }
            }
        }
        let has = |role| self.parts.contains(&Part::Field(Some(role)));
        if !has(Role::Data) {
            return Err("the pattern has no {data}, and a frame needs it".to_owned());
        }
        self.networks = Networks::of(has)?;
        self.forms.others = OtherForms::new(self.told.iter().copied());
        Ok(())
    }

    fn add_text(&mut self, text: &str) {
        match self.parts.last_mut() {
            Some(Part::Text(before)) => before.extend_from_slice(text.as_bytes()),
            _ => self.parts.push(Part::Text(text.as_bytes().to_vec())),
        }
    }

    fn field(&mut self) -> Result<(), String> {
        let (inside, after) = self.rest[1..].split_once('}').ok_or("a field is not closed with a brace")?;
        if matches!(self.parts.last(), Some(Part::Field(_))) {
            return Err("nothing stands between two fields, so nobody can tell where the first one ends".to_owned());
        }
        let (word, form) = match inside.split_once(':') {
            Some((word, form)) => (word.trim(), Some(form.trim())),
            None => (inside.trim(), None),
        };
        if word == SKIP && form.is_none() {
            self.parts.push(Part::Field(None));
        } else {
            let role = Role::from_word(word)
                .ok_or_else(|| format!("'{{{word}}}' is no field; the fields are {}, {SKIP}", Role::words()))?;
            if self.parts.contains(&Part::Field(Some(role))) {
                return Err(format!("{{{word}}} stands twice"));
            }
            if let Some(form) = form {
                self.set_form(role, form)?;
            }
            self.parts.push(Part::Field(Some(role)));
        }
        self.rest = after;
        Ok(())
    }

    fn set_form(&mut self, role: Role, word: &str) -> Result<(), String> {
        match (role, Form::of(role, word)) {
            (_, Some(Form::Unit(unit))) => self.forms.time = unit,
            (Role::Id, Some(Form::Base(base))) => self.forms.id = base,
            (Role::Data, Some(Form::Base(base))) => self.forms.data = base,
            (_, Some(form)) => self.told.push((role, form)),
            (_, None) => {
                let possible = Form::words(role);
                return Err(format!("':{word}' cannot stand behind {}; what can is {possible}", role.word()));
            }
        }
        Ok(())
    }
}
