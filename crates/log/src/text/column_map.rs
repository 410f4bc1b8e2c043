//! The user's own words for which column is what: `time=when:s, id=ident:hex, data=b0..b7:hex`.

use crate::error::LogError;

use super::headings::{Form, Role, SKIP};

/// Which columns of a delimited text are what, as a person tells it.
///
/// A list of `role=heading` with commas between, each with `:` and the form of its numbers where the heading does not say
/// it. Data bytes in columns of their own are told by the first and the last: `data=b0..b7`. A heading with a comma, a colon, or
/// two dots in it stands in quotes. Capitals, blanks and punctuation of headings do not count. Roles that are not told are known
/// by common headings; `skip=heading` leaves a column out that would be known so.
///
/// | network | roles |
/// | --- | --- |
/// | any | `time` (forms `s`, `ms`, `us`, `ns`), `channel` (what the log recorded from), `data`, `length`, `checksum_good` |
/// | CAN | `id`, `extended`, `remote`, `kind`, `dlc`, `fd`, `bit_rate_switch`, `error_state` |
/// | LIN | `pid` (with its parity bits; then an `id` is not needed), `checksum`, `checksum_kind` (`classic`, `enhanced`; or 1, 0 for right, wrong), `parity_good` |
/// | FlexRay | `slot` and `cycle`, `flexray_channel` (`A`, `B`), `indicators` (the first five bits of the header, such as `00100`), `header_crc_good`, `frame_crc_good`, `kind` (`null`) |
/// | MOST | `function_block`, `instance`, `function` and `operation`; or an `id` with dots: `22.01.0D2.C`; `part` (0 whole, 1 first, 2 amid, 3 last) |
///
/// Forms of numbers are `hex` and `dec`. `slot`, `cycle` and `part` are decimal and the others hexadecimal where nobody says it, but for
/// identifiers and for data bytes in columns of their own, which must show it.
///
/// A line is of the network whose cells it fills. A line of LIN without data and checksum is a header that nobody answered; one without
/// an identifier, with wrong parity, or with a checksum that fits neither sum is a frame that was damaged on the wire. Headings alone
/// make LIN of a text where there is a `pid` and no `id`, or both and a `checksum`; FlexRay where there are a slot (`slot`, `frame_id`)
/// and a `cycle`; MOST where all four parts are there. A column `channel` of FlexRay lines that has only A and B is `flexray_channel`.
/// Where no column is left that could be an identifier, lines are bytes of a network without identifiers (single-wire): whole messages,
/// or one byte each.
///
/// ```
/// use wirelore_log::ColumnMap;
///
/// assert!(ColumnMap::parse("time=when:s, id=ident:hex, data=b0..b7:hex").is_ok());
/// assert!(ColumnMap::parse("tiem=when").is_err());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ColumnMap {
    pub(super) told: Vec<Told>,
    /// Headings of columns that are left out.
    pub(super) skipped: Vec<String>,
}

/// One entry of the map.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Told {
    pub(super) role: Role,
    pub(super) headings: ToldHeadings,
    pub(super) form: Option<Form>,
}

/// The column or columns of an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum ToldHeadings {
    One(String),
    /// One column for each data byte, by the text before the number and the first and last number.
    Range {
        prefix: String,
        first: u8,
        last: u8,
    },
}

impl ColumnMap {
    /// Reads the map from its text.
    ///
    /// # Errors
    /// When the text is not such a list; the message tells the place and what is possible there.
    pub fn parse(text: &str) -> Result<Self, LogError> {
        let mut map = Self::default();
        for (at, entry) in entries(text) {
            let wrong =
                |what: String| LogError::ColumnMap { text: text.to_owned(), at: text[..at].chars().count() + 1, what };
            match parse_entry(entry).map_err(wrong)? {
                Entry::Skipped(heading) => map.skipped.push(heading),
                Entry::Told(entry) if map.told.iter().any(|earlier| earlier.role == entry.role) => {
                    return Err(wrong(format!("{} is told twice", entry.role.word())));
                }
                Entry::Told(entry) => map.told.push(entry),
            }
        }
        Ok(map)
    }
}

/// The entries between commas that are not in quotes, with their byte places; blanks around them are left out.
fn entries(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut in_quotes = false;
    let mut start = 0;
    text.split(move |letter| {
        in_quotes ^= letter == '"';
        letter == ',' && !in_quotes
    })
    .map(move |entry| {
        let at = start + entry.len() - entry.trim_start().len();
        start += entry.len() + 1;
        (at.min(text.len()), entry.trim())
    })
}

/// One entry between commas.
enum Entry {
    Told(Told),
    Skipped(String),
}

fn parse_entry(entry: &str) -> Result<Entry, String> {
    let Some((role_word, rest)) = entry.split_once('=') else {
        return Err(format!("'{entry}' is not of the form role=heading; an example is 'id=ident:hex'"));
    };
    let role_word = role_word.trim();
    if role_word == SKIP {
        return match parse_heading(rest.trim())? {
            ("", ..) => Err(format!("the heading of the column to {SKIP} is missing")),
            (heading, _, None) => Ok(Entry::Skipped(heading.to_owned())),
            (_, _, Some(word)) => Err(format!("':{word}' cannot stand behind {SKIP}")),
        };
    }
    let Some(role) = Role::from_word(role_word) else {
        return Err(format!("'{role_word}' is no role of a column; the roles are {}, {SKIP}", Role::words()));
    };
    let (heading, is_quoted, form_word) = parse_heading(rest.trim())?;
    let form = match form_word {
        None => None,
        Some(word) => Some(Form::of(role, word).ok_or_else(|| {
            format!("':{word}' cannot stand behind {}; what can is {}", role.word(), Form::words(role))
        })?),
    };
    if heading.is_empty() {
        return Err(format!("the heading of the {} column is missing", role.word()));
    }
    let headings = match heading.split_once("..") {
        Some((first, last)) if !is_quoted => parse_range(role, first.trim(), last.trim())?,
        _ => ToldHeadings::One(heading.to_owned()),
    };
    Ok(Entry::Told(Told { role, headings, form }))
}

/// The heading, whether it is in quotes, and the word behind the colon.
fn parse_heading(text: &str) -> Result<(&str, bool, Option<&str>), String> {
    if let Some(rest) = text.strip_prefix('"') {
        let (heading, after) = rest.split_once('"').ok_or("a quote is not closed")?;
        let after = after.trim();
        return match after.strip_prefix(':') {
            Some(form) => Ok((heading, true, Some(form.trim()))),
            None if after.is_empty() => Ok((heading, true, None)),
            None => Err(format!("'{after}' cannot stand behind the closing quote; put a comma or a colon there")),
        };
    }
    Ok(match text.rsplit_once(':') {
        Some((heading, form)) => (heading.trim(), false, Some(form.trim())),
        None => (text, false, None),
    })
}

fn parse_range(role: Role, first: &str, last: &str) -> Result<ToldHeadings, String> {
    if role != Role::Data {
        return Err(format!("only data can be spread over columns, not {}", role.word()));
    }
    let number = |heading: &str| {
        let prefix = heading.trim_end_matches(|letter: char| letter.is_ascii_digit());
        heading[prefix.len()..].parse::<u8>().ok().map(|number| (prefix.to_owned(), number))
    };
    match (number(first), number(last)) {
        (Some((prefix, first)), Some((same, last))) if prefix == same && first <= last && last - first < 64 => {
            Ok(ToldHeadings::Range { prefix, first, last })
        }
        _ => Err(format!("'{first}..{last}' is no range of at most 64 columns; an example is b0..b7")),
    }
}
