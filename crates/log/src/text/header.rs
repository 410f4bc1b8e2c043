//! The header line of a delimited text: its delimiter, its columns, and how their numbers are written.

use crate::error::LogError;
use crate::window::Window;

use super::cells::{self, Cell, unquoted};
use super::column_map::{ColumnMap, Told, ToldHeadings};
use super::columns::Columns;
use super::headings::{Form, Meaning, Role, meaning, squeezed};
use super::lines::{Lines, Step};
use super::networks::{MOST_PARTS, Network, Networks};
use super::proof;
use super::row::Forms;

/// A header with more columns is refused.
const COLUMNS_MAX: usize = 4096;
/// The most data bytes of a frame of CAN.
const DATA_COLUMNS_MAX: usize = 64;

/// How much of the log is looked at for what the header does not say.
const SAMPLE_BYTES: usize = 256 * 1024;

/// What the header, and where it is silent the first lines, say of the whole log.
#[derive(Debug)]
pub(super) struct Header {
    pub(super) delimiter: u8,
    pub(super) columns: Columns,
    pub(super) forms: Forms,
    pub(super) networks: Networks,
    pub(super) remarks: Vec<String>,
}

/// The columns with the forms that the header or the user tells.
#[derive(Debug, Default)]
pub(super) struct Assigned {
    pub(super) whole: Vec<(Role, usize, Option<Form>)>,
    pub(super) data_bytes: Vec<(u8, usize, Option<Form>)>,
    /// The column that may be the log's channel or the one of FlexRay.
    open_channel: Option<usize>,
}

impl Assigned {
    fn has(&self, role: Role) -> bool {
        self.whole.iter().any(|&(known, ..)| known == role)
    }

    /// Whether the first lines are needed to know how numbers are written.
    fn leaves_forms_open(&self) -> bool {
        let is_open =
            |&(role, _, form): &(Role, usize, Option<Form>)| matches!(role, Role::Time | Role::Id) && form.is_none();
        self.whole.iter().any(is_open)
            || self.data_bytes.first().is_some_and(|(_, _, form)| form.is_none())
            || self.open_channel.is_some()
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
    let rest = cells::split(&line, delimiter, COLUMNS_MAX, &mut cut).map_err(|flaw| refuse(flaw.to_string()))?;
    if rest.is_some() {
        return Err(refuse(format!("it has more than {COLUMNS_MAX} columns; leave out those that nobody needs")));
    }
    let heading = |cell: &Cell| String::from_utf8_lossy(&unquoted(cell.of(&line))).into_owned();
    let headings: Vec<String> = cut.iter().map(heading).collect();
    let (mut assigned, networks) = assign(&headings, map).map_err(refuse)?;
    let mut columns = columns_of(&assigned, &headings);
    let is_all = assigned.leaves_forms_open() && !window.have(SAMPLE_BYTES);
    let bytes = if is_all { window.data() } else { whole_lines(window.data()) };
    let first_line = lines.number() + 1;
    let sample = proof::Sample { bytes, first_line, delimiter, columns: &columns };
    let (forms, mut remarks) = proof::forms(&assigned, &headings, &sample).map_err(refuse)?;
    if let Some(column) = assigned.open_channel.filter(|column| sample.is_all_a_or_b(*column)) {
        remarks.push(proof::flexray_channel_remark(&headings[column]));
        assigned.whole.retain(|&(_, known, _)| known != column);
        assigned.whole.push((Role::FlexRayChannel, column, None));
        columns = columns_of(&assigned, &headings);
    }
    if networks.is_serial() {
        remarks.push("no column tells an id: the lines are read as bytes of a network without identifiers".to_owned());
    }
    Ok(Header { delimiter, columns, forms, networks, remarks })
}

fn columns_of(assigned: &Assigned, headings: &[String]) -> Columns {
    let data_bytes = assigned.data_bytes.iter().map(|&(_, column, _)| column).collect();
    let whole = assigned.whole.iter().map(|&(role, column, _)| (role, column)).collect();
    let named = headings.iter().rposition(|heading| !heading.is_empty()).map_or(0, |last| last + 1);
    Columns::new(whole, data_bytes, named)
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

/// Gives each role its column: first those that the user tells, then those that the headings say; and tells of which networks the lines
/// can be.
fn assign(headings: &[String], map: &ColumnMap) -> Result<(Assigned, Networks), String> {
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
    for (column, heading) in headings.iter().enumerate() {
        if taken[column] {
            continue;
        }
        match meaning(heading) {
            Some((Meaning::Whole(role), form)) if !is_told(role) => {
                taken[column] = true;
                if let Some(&(_, earlier, _)) = assigned.whole.iter().find(|(known, ..)| *known == role) {
                    return Err(two_columns(role, &headings[earlier], heading));
                }
                assigned.whole.push((role, column, form));
            }
            Some((Meaning::DataByte(number), form)) if !is_told(Role::Data) => {
                taken[column] = true;
                assigned.data_bytes.push((number, column, form));
            }
            _ => {}
        }
    }
    drop_lone_roles(&mut assigned, &mut taken, is_told);
    let networks = Networks::of(|role| assigned.has(role))?;
    let is_all_known = headings.iter().zip(&taken).all(|(heading, &taken)| taken || heading.is_empty());
    check(&mut assigned, headings, networks, is_all_known)?;
    let channel = assigned.whole.iter().find(|&&(role, ..)| role == Role::Channel && !is_told(role));
    let may_be_of_flexray = assigned.has(Role::Slot) && !assigned.has(Role::FlexRayChannel);
    assigned.open_channel = channel.filter(|_| may_be_of_flexray).map(|&(_, column, _)| column);
    Ok((assigned, networks))
}

/// Forgets what only a heading says of a network, where the headings that make up its lines are not all there: a `pid` beside an `id` may
/// be a number of diagnosis, a `cycle` the period of a message.
fn drop_lone_roles(assigned: &mut Assigned, taken: &mut [bool], is_told: impl Fn(Role) -> bool) {
    let has = |role| assigned.has(role);
    let is_lin =
        is_told(Role::Pid) || is_told(Role::Checksum) || (has(Role::Pid) && (has(Role::Checksum) || !has(Role::Id)));
    let is_flexray = has(Role::Slot) && has(Role::Cycle);
    let is_most = MOST_PARTS.into_iter().all(has);
    let has_id = has(Role::Id);
    assigned.whole.retain(|&(role, column, _)| {
        let stays = is_told(role)
            || match role.network() {
                Some(Network::Lin) => is_lin,
                Some(Network::FlexRay) => is_flexray,
                // An identifier with dots tells a function, too.
                Some(Network::Most) => is_most || (role == Role::Part && has_id),
                _ => true,
            };
        taken[column] &= stays;
        stays
    });
}

fn fits(form: Form, role: Role) -> bool {
    match form {
        Form::Unit(_) => role == Role::Time,
        Form::Base(_) => role.usual_base().is_some(),
    }
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

/// Whether data is there and something that tells whose it is, and data bytes follow each other. Lines that tell only data are taken
/// for such only where nothing else may be the identifier.
fn check(assigned: &mut Assigned, headings: &[String], networks: Networks, is_all_known: bool) -> Result<(), String> {
    let is_told_apart = !networks.is_serial() || is_all_known;
    let has_data = assigned.has(Role::Data);
    assigned.data_bytes.sort_unstable_by_key(|&(number, ..)| number);
    match (has_data, assigned.data_bytes.as_slice()) {
        (true, [_, ..]) => {
            return Err("there is a column for all data and there are columns for single bytes; say which ones with \
                        --columns 'data=...'"
                .to_owned());
        }
        (false, bytes) if is_told_apart && !bytes.is_empty() => {
            let first = bytes[0].0;
            let follow = bytes.iter().zip(first..).all(|(&(number, ..), wanted)| number == wanted);
            if bytes.len() > DATA_COLUMNS_MAX {
                return Err(format!(
                    "{} columns are single data bytes, and no more than {DATA_COLUMNS_MAX} can be; say which they are with \
                     --columns 'data=b0..b7'",
                    bytes.len()
                ));
            }
            if !follow || first > 1 {
                return Err(
                    "the columns of the data bytes do not follow each other from 0 or 1; say which they are with \
                            --columns 'data=b0..b7'"
                        .to_owned(),
                );
            }
        }
        (true, []) if is_told_apart => {}
        (has_all_data, bytes) => {
            let missing = if networks.is_serial() { "id" } else { "data" };
            let without = if has_all_data || !bytes.is_empty() {
                "; if its lines have no id (single-wire networks), leave the other columns out with --columns 'skip=...'"
            } else {
                ""
            };
            return Err(format!(
                "no column is known as the {missing}; {}; say which columns they are with \
                 --columns 'time=...:s, id=...:hex, data=...:hex', or tell the pattern of a line if the log has no header{without}",
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
