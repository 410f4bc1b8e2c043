//! The header line of a delimited text: its delimiter, its columns, and how their numbers are written.

use crate::error::LogError;
use crate::window::Window;

use super::cells::{self, Cell, unquoted};
use super::column_map::{ColumnMap, Told, ToldHeadings};
use super::columns::Columns;
use super::headings::{Form, Meaning, Role, meaning, squeezed};
use super::lines::{Lines, Step};
use super::proof;
use super::row::Forms;

/// More columns are not looked at.
const COLUMNS_MAX: usize = 4096;

/// How much of the log is looked at for what the header does not say.
const SAMPLE_BYTES: usize = 256 * 1024;

/// What the header, and where it is silent the first lines, say of the whole log.
#[derive(Debug)]
pub(super) struct Header {
    pub(super) delimiter: u8,
    pub(super) columns: Columns,
    pub(super) forms: Forms,
    pub(super) remarks: Vec<String>,
}

/// The columns with the forms that the header or the user tells.
#[derive(Debug, Default)]
pub(super) struct Assigned {
    pub(super) whole: Vec<(Role, usize, Option<Form>)>,
    pub(super) data_bytes: Vec<(u8, usize, Option<Form>)>,
}

impl Assigned {
    /// Whether the first lines are needed to know how numbers are written.
    fn leaves_forms_open(&self) -> bool {
        let is_open =
            |&(role, _, form): &(Role, usize, Option<Form>)| matches!(role, Role::Time | Role::Id) && form.is_none();
        self.whole.iter().any(is_open) || self.data_bytes.first().is_some_and(|(_, _, form)| form.is_none())
    }
}

/// Reads the header line, the first that is neither empty nor a comment.
pub(super) fn read(window: &mut Window, lines: &mut Lines, map: &ColumnMap, name: &str) -> Result<Header, LogError> {
    let line = header_line(window, lines, name)?;
    let refuse = |what: String| LogError::Header { name: name.to_owned(), line: lines.number(), what };
    if line.contains(&b'\r') {
        return Err(refuse("lines end with a lone carriage return; save the text with line feeds".to_owned()));
    }
    let delimiter = delimiter_of(&line);
    let mut cut: Vec<Cell> = Vec::new();
    cells::split(&line, delimiter, COLUMNS_MAX, &mut cut).map_err(|flaw| refuse(flaw.to_string()))?;
    let heading = |cell: &Cell| String::from_utf8_lossy(&unquoted(cell.of(&line))).into_owned();
    let headings: Vec<String> = cut.iter().map(heading).collect();
    let assigned = assign(&headings, map).map_err(refuse)?;
    let data_bytes = assigned.data_bytes.iter().map(|&(_, column, _)| column).collect();
    let whole = assigned.whole.iter().map(|&(role, column, _)| (role, column)).collect();
    let named = headings.iter().rposition(|heading| !heading.is_empty()).map_or(0, |last| last + 1);
    let columns = Columns::new(whole, data_bytes, named);
    let is_all = assigned.leaves_forms_open() && !window.have(SAMPLE_BYTES);
    let bytes = if is_all { window.data() } else { whole_lines(window.data()) };
    let sample = proof::Sample { bytes, first_line: lines.number() + 1, delimiter, columns: &columns };
    let (forms, remarks) = proof::forms(&assigned, &headings, &sample).map_err(refuse)?;
    Ok(Header { delimiter, columns, forms, remarks })
}

/// The bytes up to the last line end: a line of which only a part was fetched proves nothing.
fn whole_lines(bytes: &[u8]) -> &[u8] {
    memchr::memrchr(b'\n', bytes).map_or(&[], |end| &bytes[..=end])
}

fn header_line(window: &mut Window, lines: &mut Lines, name: &str) -> Result<Vec<u8>, LogError> {
    loop {
        let step = lines.next(window);
        let refuse =
            |what: &str| LogError::Header { name: name.to_owned(), line: lines.number(), what: what.to_owned() };
        match step {
            Step::Line { line_bytes, consumed_bytes } => {
                let line = window.data()[..line_bytes].to_vec();
                window.consume(consumed_bytes);
                if !line.trim_ascii().is_empty() && line[0] != b'#' {
                    return Ok(line);
                }
            }
            Step::TooLong => {
                return Err(refuse("the line is longer than 64 KiB; is this log a text at all?"));
            }
            Step::End => {
                return Err(refuse("the log has no line that is neither empty nor a comment"));
            }
        }
    }
}

/// The delimiter that stands most often outside of quotes.
fn delimiter_of(line: &[u8]) -> u8 {
    let count = |delimiter: u8| {
        let mut in_quotes = false;
        line.iter()
            .filter(|&&byte| {
                in_quotes ^= byte == b'"';
                byte == delimiter && !in_quotes
            })
            .count()
    };
    [b',', b';', b'\t'].into_iter().rev().max_by_key(|&delimiter| count(delimiter)).unwrap_or(b',')
}

/// Gives each role its column: first those that the user tells, then those that the headings say.
fn assign(headings: &[String], map: &ColumnMap) -> Result<Assigned, String> {
    let mut assigned = Assigned::default();
    let mut taken = vec![false; headings.len()];
    for heading in &map.skipped {
        taken[find(heading, headings)?] = true;
    }
    for told in &map.told {
        for (number, column) in told_columns(told, headings)? {
            taken[column] = true;
            let form = told.form.or_else(|| meaning(&headings[column]).and_then(|(_, form)| form));
            let form = form.filter(|form| fits(*form, told.role));
            match number {
                Some(number) => assigned.data_bytes.push((number, column, form)),
                None => assigned.whole.push((told.role, column, form)),
            }
        }
    }
    let is_told = |role| map.told.iter().any(|told| told.role == role);
    for (column, heading) in headings.iter().enumerate().filter(|&(column, _)| !taken[column]) {
        match meaning(heading) {
            Some((Meaning::Whole(role), form)) if !is_told(role) => {
                if let Some(&(_, earlier, _)) = assigned.whole.iter().find(|(known, ..)| *known == role) {
                    return Err(two_columns(role, &headings[earlier], heading));
                }
                assigned.whole.push((role, column, form));
            }
            Some((Meaning::DataByte(number), form)) if !is_told(Role::Data) => {
                assigned.data_bytes.push((number, column, form));
            }
            _ => {}
        }
    }
    check(&mut assigned, headings)?;
    Ok(assigned)
}

fn fits(form: Form, role: Role) -> bool {
    matches!((form, role), (Form::Unit(_), Role::Time) | (Form::Base(_), Role::Id | Role::Data))
}

fn two_columns(role: Role, first: &str, second: &str) -> String {
    let word = role.word();
    format!("both \"{first}\" and \"{second}\" can be the {word}; say which one with --columns '{word}={second}'")
}

/// The columns that an entry of the user's map names, with the number of the data byte for ranges.
fn told_columns(told: &Told, headings: &[String]) -> Result<Vec<(Option<u8>, usize)>, String> {
    match &told.headings {
        ToldHeadings::One(heading) => Ok(vec![(None, find(heading, headings)?)]),
        ToldHeadings::Range { prefix, first, last } => {
            (*first..=*last).map(|number| Ok((Some(number), find(&format!("{prefix}{number}"), headings)?))).collect()
        }
    }
}

fn find(wanted: &str, headings: &[String]) -> Result<usize, String> {
    let exact = headings.iter().position(|heading| heading == wanted);
    let mut alike = headings.iter().enumerate().filter(|(_, heading)| squeezed(heading) == squeezed(wanted));
    match (exact, alike.next(), alike.next()) {
        (Some(column), ..) | (None, Some((column, _)), None) => Ok(column),
        (None, Some(_), Some(_)) => Err(format!("more than one column is called \"{wanted}\"")),
        (None, None, _) => Err(format!("no column is called \"{wanted}\"; {}", listed(headings))),
    }
}

/// Whether id and data are there, and data bytes follow each other.
fn check(assigned: &mut Assigned, headings: &[String]) -> Result<(), String> {
    let has = |role| assigned.whole.iter().any(|&(known, ..)| known == role);
    assigned.data_bytes.sort_unstable_by_key(|&(number, ..)| number);
    match (has(Role::Data), assigned.data_bytes.as_slice()) {
        (true, [_, ..]) => {
            return Err("there is a column for all data and there are columns for single bytes; say which ones with \
                        --columns 'data=...'"
                .to_owned());
        }
        (false, bytes) if has(Role::Id) && !bytes.is_empty() => {
            let first = bytes[0].0;
            let follow = bytes.iter().zip(first..).all(|(&(number, ..), wanted)| number == wanted);
            if !follow || first > 1 || bytes.len() > 64 {
                return Err(
                    "the columns of the data bytes do not follow each other from 0 or 1; say which they are with \
                            --columns 'data=b0..b7'"
                        .to_owned(),
                );
            }
        }
        (true, []) if has(Role::Id) => {}
        _ => {
            let missing = if has(Role::Id) { "data" } else { "id" };
            return Err(format!(
                "no column is known as the {missing}; {}; say which columns they are with \
                 --columns 'time=...:s, id=...:hex, data=...:hex', or tell the pattern of a line if the log has no header",
                listed(headings)
            ));
        }
    }
    Ok(())
}

/// The headings, for a message.
fn listed(headings: &[String]) -> String {
    const SHOWN: usize = 12;
    let shown: Vec<String> = headings.iter().take(SHOWN).map(|heading| format!("{heading:.30?}")).collect();
    let more = if headings.len() > SHOWN { ", ..." } else { "" };
    format!("the columns are {}{more}", shown.join(", "))
}
