//! Which column of a delimited text is what.

use crate::flaw::Flaw;

use super::cells::Cell;
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
    pub(super) needed: usize,
    /// How many cells a line must have: missing data bytes at its end only make the frame shorter.
    required: usize,
}

impl Columns {
    pub(super) fn new(whole: Vec<(Role, usize)>, data_bytes: Vec<usize>) -> Self {
        let required = whole.iter().map(|&(_, column)| column + 1).max().unwrap_or(0);
        let needed = data_bytes.iter().map(|&column| column + 1).fold(required, usize::max);
        Self { whole, data_bytes, needed, required }
    }

    /// The column of a role.
    pub(super) fn of(&self, role: Role) -> Option<usize> {
        self.whole.iter().find(|(known, _)| *known == role).map(|&(_, column)| column)
    }

    /// Whether there is a column of this role.
    pub(super) fn has(&self, role: Role) -> bool {
        self.of(role).is_some()
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
