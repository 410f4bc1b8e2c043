//! Which column of a delimited text is what.

use crate::flaw::Flaw;

use super::cells::{self, Cell};
use super::headings::Role;
use super::row::Pieces;

/// The columns that mean something.
#[derive(Debug, Clone, Default)]
pub(super) struct Columns {
    /// One column for the whole of a role.
    pub(super) whole: Vec<(Role, usize)>,
    /// One column for each data byte, in the order of the bytes; empty when one column holds them all.
    pub(super) data_bytes: Vec<usize>,
    /// How many cells of a line are of interest.
    needed: usize,
    /// How many cells a line must have: missing data bytes at its end only make the frame shorter.
    required: usize,
    /// How many cells a line can have, beside empty ones at its end.
    headings: usize,
}

impl Columns {
    /// The columns by their place; the header has `headings` of them.
    pub(super) fn new(whole: Vec<(Role, usize)>, data_bytes: Vec<usize>, headings: usize) -> Self {
        let required = whole.iter().map(|&(_, column)| column + 1).max().unwrap_or(0);
        let needed = data_bytes.iter().map(|&column| column + 1).fold(required, usize::max);
        Self { whole, data_bytes, needed, required, headings: headings.max(needed) }
    }

    /// The column of a role.
    pub(super) fn of(&self, role: Role) -> Option<usize> {
        self.whole.iter().find(|(known, _)| *known == role).map(|&(_, column)| column)
    }

    /// The role of a column that has the whole of one; `None` for all others, those of single data bytes too.
    pub(super) fn role_of(&self, column: usize) -> Option<Role> {
        self.whole.iter().find(|&&(_, known)| known == column).map(|&(role, _)| role)
    }

    /// How many cells a line can have, beside empty ones at its end.
    pub(super) fn headings(&self) -> usize {
        self.headings
    }

    /// Cuts the line into the cells that are of interest; the others must have a heading, or be empty.
    #[inline]
    pub(super) fn cut<'l>(&self, line: &'l [u8], delimiter: u8, cells: &mut Vec<Cell>) -> Result<(), Flaw<'l>> {
        let Some(rest) = cells::split(line, delimiter, self.needed, cells)? else {
            return Ok(());
        };
        let more = 1 + line[rest..].iter().filter(|&&byte| byte == delimiter).count();
        if self.needed + more > self.headings { self.check_excess(line, rest, delimiter) } else { Ok(()) }
    }

    /// Whether all cells without a heading are empty; `rest` begins behind those of interest. In quotes a delimiter cuts no
    /// cell, so there may be none.
    #[cold]
    fn check_excess<'l>(&self, line: &'l [u8], rest: usize, delimiter: u8) -> Result<(), Flaw<'l>> {
        if line[rest..].iter().all(|&byte| byte == delimiter || matches!(byte, b' ' | b'\t' | b'\r')) {
            return Ok(());
        }
        let mut all = Vec::new();
        cells::split(line, delimiter, usize::MAX, &mut all)?;
        let has = all.iter().rposition(|cell| !cell.of(line).is_empty()).map_or(0, |last| last + 1);
        let delimiter = match delimiter {
            b',' => "commas",
            b';' => "semicolons",
            _ => "tabs",
        };
        if has > self.headings { Err(Flaw::CellsTooMany { has, headings: self.headings, delimiter }) } else { Ok(()) }
    }

    /// The cells of one line by their role.
    #[inline]
    pub(super) fn pieces<'l>(&'l self, line: &'l [u8], cells: &'l [Cell]) -> Result<Pieces<'l>, Flaw<'l>> {
        if cells.len() < self.required {
            return Err(self.missing(cells.len()));
        }
        let mut pieces = Pieces::new();
        for &(role, column) in &self.whole {
            pieces.set(role, cells[column].of(line));
        }
        if !self.data_bytes.is_empty() {
            pieces.set_data_cells(line, cells, &self.data_bytes);
        }
        Ok(pieces)
    }

    #[cold]
    fn missing<'l>(&self, has: usize) -> Flaw<'l> {
        let first = self.whole.iter().filter(|&&(_, column)| column >= has).min_by_key(|&&(_, column)| column);
        let (what, wanted) = first.map_or(("the last one", self.required), |&(role, column)| (role.word(), column + 1));
        Flaw::CellMissing { what, wanted, has }
    }
}
