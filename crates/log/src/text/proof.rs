//! How numbers are written where the header does not say it: proved by the first lines, or asked for; never guessed.
//!
//! The rule, for a whole column at once, over the lines that the first buffer holds:
//! - **Identifiers** are hexadecimal when a cell has a letter A to F, or is written with a leading zero and three to eight
//!   digits in all (`012`, `00000110`): decimal numbers are not. They are decimal when a cell, read as hexadecimal, would be
//!   larger than 29 bits, or larger than 11 bits on a line that says it is not extended, while read as decimal it is not:
//!   such a cell is never a proof of hexadecimal.
//!   When every cell begins with `0x`, that is the form of the column.
//! - **Data bytes in columns of their own** are hexadecimal when a cell has a letter or two digits with a leading zero, and
//!   decimal when a cell has three digits.
//! - **Times** are seconds when a cell has a decimal point (or comma, where it does not cut cells) or is a date. Times of day
//!   are refused, whatever the header says.
//! - A column `channel` beside a slot and a cycle is the channel of FlexRay when its cells are A and B and nothing else.
//! - Data in one column is hexadecimal (common practice, no source); `--columns 'data=data:dec'` says otherwise.
//!
//! Proofs for both, or none at all, are an error that asks for the form. Cells that are damaged prove nothing.

use crate::frame::{EXTENDED_ID_MAX, STANDARD_ID_MAX};

use super::cells::Cell;
use super::columns::Columns;
use super::header::Assigned;
use super::headings::{Form, Role};
use super::row::{Forms, IdForm, OtherForms};
use super::time::{TimeUnit, is_time_of_day, time_ns};
use super::values::{Base, decimal, flag, hex, without_prefix};

/// The first lines of the log.
#[derive(Debug)]
pub(super) struct Sample<'l> {
    pub(super) bytes: &'l [u8],
    pub(super) first_line: u64,
    pub(super) delimiter: u8,
    pub(super) columns: &'l Columns,
}

/// A cell that proves something: its line and its text.
type Witness = (u64, String);

/// What the cells of one column prove.
#[derive(Debug, Default)]
struct Proof {
    hex: Option<Witness>,
    decimal: Option<Witness>,
    has_plain_cells: bool,
}

/// The forms of the whole log, and sentences about those that had to be proved.
pub(super) fn forms(
    assigned: &Assigned,
    headings: &[String],
    sample: &Sample<'_>,
) -> Result<(Forms, Vec<String>), String> {
    let mut remarks = Vec::new();
    let time = time_unit(assigned, headings, sample, &mut remarks)?;
    let id = id_form(assigned, headings, sample, &mut remarks)?;
    let data = data_base(assigned, headings, sample, &mut remarks)?;
    let told = assigned.whole.iter().filter_map(|&(role, _, form)| Some((role, form?)));
    Ok((Forms { time, id, data, others: OtherForms::new(told) }, remarks))
}

fn told_form(assigned: &Assigned, wanted: Role) -> Option<(usize, Option<Form>)> {
    assigned.whole.iter().find(|(role, ..)| *role == wanted).map(|&(_, column, form)| (column, form))
}

/// What the cells of the time column look like.
#[derive(Debug, Default)]
struct Times {
    /// The first that is a number.
    first_number: Option<Witness>,
    /// The first number with decimals.
    with_decimals: Option<Witness>,
    /// The first that is a time of day.
    of_day: Option<Witness>,
    has_date: bool,
}

impl Times {
    fn look(&mut self, cell: &[u8], decimal_comma: bool, line: u64) {
        if is_time_of_day(cell) {
            self.of_day.get_or_insert_with(|| witness(line, cell));
        } else if time_ns(cell, TimeUnit::Nanoseconds, decimal_comma).is_none() {
            // Damaged, or empty.
        } else if cell.contains(&b':') {
            self.has_date = true;
        } else {
            self.first_number.get_or_insert_with(|| witness(line, cell));
            if cell.iter().any(|&byte| byte == b'.' || (byte == b',' && decimal_comma)) {
                self.with_decimals.get_or_insert_with(|| witness(line, cell));
            }
        }
    }
}

fn time_unit(
    assigned: &Assigned,
    headings: &[String],
    sample: &Sample<'_>,
    remarks: &mut Vec<String>,
) -> Result<TimeUnit, String> {
    let Some((column, told)) = told_form(assigned, Role::Time) else {
        return Ok(TimeUnit::Seconds);
    };
    let mut times = Times::default();
    sample.for_each_line(|line, number, cells| {
        let cell = cells.get(column).map_or(&b""[..], |cell| cell.of(line));
        times.look(cell, sample.delimiter != b',', number);
    });
    let heading = as_written(&headings[column]);
    if let (Some((line, cell)), false, None) = (&times.of_day, times.has_date, &times.first_number) {
        return Err(format!(
            "\"{cell}\" on line {line} is a time of day, which is not read; convert the times to seconds, or leave the \
             column out with --columns 'skip={heading}'"
        ));
    }
    if let Some(Form::Unit(unit)) = told {
        return Ok(unit);
    }
    match (times.first_number, times.with_decimals) {
        (_, Some((line, cell))) => remarks.push(format!(
            "the times are read as seconds, as \"{cell}\" on line {line} has decimals; if they are milliseconds, say \
             --columns 'time={heading}:ms'"
        )),
        (Some((line, cell)), None) if !times.has_date => {
            return Err(format!(
                "the unit of the times is not told: \"{cell}\" on line {line} can be seconds or less; \
                 say it with --columns 'time={heading}:s', 'time={heading}:ms', 'time={heading}:us' or 'time={heading}:ns'"
            ));
        }
        _ => {}
    }
    Ok(TimeUnit::Seconds)
}

fn id_form(
    assigned: &Assigned,
    headings: &[String],
    sample: &Sample<'_>,
    remarks: &mut Vec<String>,
) -> Result<IdForm, String> {
    let column = match told_form(assigned, Role::Id) {
        Some((_, Some(Form::Base(base)))) => return Ok(IdForm::All(base)),
        Some((column, _)) => column,
        None => return Ok(IdForm::Prefixed),
    };
    let extended = sample.columns.of(Role::Extended);
    let mut proof = Proof::default();
    sample.for_each_line(|line, number, cells| {
        let cell = cells.get(column).map_or(&b""[..], |cell| cell.of(line));
        let told = extended.and_then(|column| cells.get(column)).and_then(|cell| flag(cell.of(line))).flatten();
        proof.weigh_id(cell, told == Some(false), number);
    });
    if !proof.has_plain_cells {
        return Ok(IdForm::Prefixed);
    }
    proof.base("ids", &as_written(&headings[column]), "id", remarks).map(IdForm::All)
}

fn data_base(
    assigned: &Assigned,
    headings: &[String],
    sample: &Sample<'_>,
    remarks: &mut Vec<String>,
) -> Result<Base, String> {
    if let Some((_, form)) = told_form(assigned, Role::Data) {
        return Ok(if form == Some(Form::Base(Base::Decimal)) { Base::Decimal } else { Base::Hex });
    }
    let (Some(first), Some(last)) = (assigned.data_bytes.first(), assigned.data_bytes.last()) else {
        return Ok(Base::Hex);
    };
    if let Some(Form::Base(base)) = first.2 {
        return Ok(base);
    }
    let mut proof = Proof::default();
    sample.for_each_line(|line, number, cells| {
        for &column in &sample.columns.data_bytes {
            let cell = cells.get(column).map_or(&b""[..], |cell| cell.of(line));
            proof.weigh_data_byte(cell, number);
        }
    });
    if !proof.has_plain_cells {
        return Ok(Base::Hex);
    }
    let heading = format!("{}..{}", headings[first.1], headings[last.1]);
    proof.base("data bytes", &heading, "data", remarks)
}

impl Proof {
    fn weigh_id(&mut self, cell: &[u8], says_standard: bool, line: u64) {
        if without_prefix(cell).is_some() {
            return;
        }
        let Some(as_hex) = hex(cell) else { return };
        self.has_plain_cells = true;
        let limit = u64::from(if says_standard { STANDARD_ID_MAX } else { EXTENDED_ID_MAX });
        let can_be_hex = as_hex <= limit;
        match decimal(cell) {
            None if can_be_hex => self.prove_hex(line, cell),
            Some(_) if can_be_hex && cell[0] == b'0' && (3..=8).contains(&cell.len()) => self.prove_hex(line, cell),
            Some(as_decimal) if !can_be_hex && as_decimal <= limit => self.prove_decimal(line, cell),
            _ => {}
        }
    }

    fn weigh_data_byte(&mut self, cell: &[u8], line: u64) {
        let Some(as_hex) = hex(cell) else { return };
        self.has_plain_cells = true;
        match decimal(cell) {
            None if as_hex <= 0xFF => self.prove_hex(line, cell),
            Some(_) if cell.len() == 2 && cell[0] == b'0' => self.prove_hex(line, cell),
            Some(100..=255) if cell.len() == 3 => self.prove_decimal(line, cell),
            _ => {}
        }
    }

    fn prove_hex(&mut self, line: u64, cell: &[u8]) {
        self.hex.get_or_insert_with(|| witness(line, cell));
    }

    fn prove_decimal(&mut self, line: u64, cell: &[u8]) {
        self.decimal.get_or_insert_with(|| witness(line, cell));
    }

    /// The base that is proved, with a remark on why; or the question.
    fn base(self, what: &str, heading: &str, role: &str, remarks: &mut Vec<String>) -> Result<Base, String> {
        let ask = format!("say it with --columns '{role}={heading}:hex' or --columns '{role}={heading}:dec'");
        match (self.hex, self.decimal) {
            (Some((line, cell)), None) => {
                remarks.push(format!("the {what} are read as hexadecimal, as \"{cell}\" on line {line} is"));
                Ok(Base::Hex)
            }
            (None, Some((line, cell))) => {
                remarks.push(format!("the {what} are read as decimal, as \"{cell}\" on line {line} is"));
                Ok(Base::Decimal)
            }
            (None, None) => {
                Err(format!("the {what} can be hexadecimal or decimal, and the first lines do not tell; {ask}"))
            }
            (Some((hex_line, hex)), Some((decimal_line, decimal))) => Err(format!(
                "the {what} look hexadecimal on line {hex_line} (\"{hex}\") and decimal on line {decimal_line} \
                 (\"{decimal}\"); {ask}"
            )),
        }
    }
}

/// What is said where the cells of a column show that it is the channel of FlexRay.
pub(super) fn flexray_channel_remark(heading: &str) -> String {
    let heading = as_written(heading);
    format!(
        "the column \"{heading}\" has only A and B, and is read as the channel of FlexRay; if it names what was recorded \
         from, say --columns 'channel={heading}'"
    )
}

/// The heading as the user writes it in `--columns`.
fn as_written(heading: &str) -> String {
    let is_plain = !heading.contains([',', ':']) && !heading.contains("..");
    if is_plain { heading.to_owned() } else { format!("\"{heading}\"") }
}

fn witness(line: u64, cell: &[u8]) -> Witness {
    const SHOWN_BYTES: usize = 40;
    (line, String::from_utf8_lossy(&cell[..cell.len().min(SHOWN_BYTES)]).into_owned())
}

impl Sample<'_> {
    /// Whether every cell of a column that is not empty is A or B, and there are some.
    pub(super) fn is_all_a_or_b(&self, column: usize) -> bool {
        let (mut some, mut all) = (false, true);
        self.for_each_line(|line, _, cells| match cells.get(column).map_or(&b""[..], |cell| cell.of(line)) {
            b"" => {}
            b"A" | b"a" | b"B" | b"b" => some = true,
            _ => all = false,
        });
        some && all
    }

    /// Calls `look` with each whole line that is no comment: its bytes, its number, its cells.
    fn for_each_line(&self, mut look: impl FnMut(&[u8], u64, &[Cell])) {
        let mut cells = Vec::new();
        let mut rest = self.bytes;
        let mut number = self.first_line;
        while !rest.is_empty() {
            let end = memchr::memchr(b'\n', rest).unwrap_or(rest.len());
            let line = &rest[..end];
            let is_said = !line.is_empty() && line[0] != b'#';
            let is_cut = is_said && self.columns.cut(line, self.delimiter, &mut cells).is_ok();
            // Where a cell is missing the others may be in its place.
            if is_cut && self.columns.pieces(line, &cells).is_ok() {
                look(line, number, &cells);
            }
            rest = rest.get(end + 1..).unwrap_or_default();
            number += 1;
        }
    }
}
