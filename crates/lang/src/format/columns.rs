//! Columns: how wide each cell is in a run of lines of the same kind.

use super::grow::{Atom, Entry, Node, Spaced, Statement};
use crate::lex::TokenKind;

/// Wider cells than this do not push their neighbours' columns.
const WIDEST: usize = 48;

/// The cells of a line, from the left; an empty one keeps its column free.
pub(super) type Cells = Vec<String>;

/// The widths of the columns of a run.
pub(super) type Widths = Vec<usize>;

/// Joins tokens with their blanks.
pub(super) fn join(atoms: &[Atom]) -> String {
    let mut line = String::new();
    for atom in atoms {
        if let Atom::Token { text, is_apart, .. } = atom {
            if *is_apart && !line.is_empty() {
                line.push(' ');
            }
            line.push_str(text);
        }
    }
    line
}

/// The number of characters.
pub(super) fn width(text: &str) -> usize {
    text.chars().count()
}

/// The cells of the tokens in front of a statement's first comma; one only where it has no columns.
pub(super) fn cells(word: &str, atoms: &[Atom]) -> Cells {
    let tokens = atoms.iter().position(|atom| !matches!(atom, Atom::Token { .. })).unwrap_or(atoms.len());
    let head = &atoms[..tokens];
    let cuts = match word {
        "signal" => signal_cuts(head),
        "network" | "ecu" => item_cuts(head),
        _ => Vec::new(),
    };
    cut(head, &cuts)
}

/// `VALUES | WORD | TITLE | as MEANING`
pub(super) fn entry_cells(atoms: &[Atom]) -> Cells {
    let is_point = atoms.iter().any(|atom| is_kind(atom, TokenKind::Colon));
    let word = atoms.iter().position(|atom| is_kind(atom, TokenKind::Word));
    let (false, Some(word)) = (is_point, word) else { return vec![join(atoms)] };
    let has_title = atoms.get(word + 1).is_some_and(|atom| is_kind(atom, TokenKind::Text));
    cut(atoms, &[word, word + 1, word + 1 + usize::from(has_title)])
}

fn is_kind(atom: &Atom, wanted: TokenKind) -> bool {
    matches!(atom, Atom::Token { kind, .. } if *kind == wanted)
}

/// `signal NAME[..] "title" | in PLACE | = FORMULA UNIT`
fn signal_cuts(head: &[Atom]) -> Vec<usize> {
    let is_in = |atom: &Atom| matches!(atom, Atom::Token { text, kind: TokenKind::Word, .. } if text == "in");
    let mut cuts = Vec::new();
    // The name may be `in` too.
    if let Some(place) = head.iter().skip(2).position(is_in) {
        cuts.push(place + 2);
    }
    cuts.extend(head.iter().position(|atom| is_kind(atom, TokenKind::Equals)));
    cuts
}

/// `ecu NAME | "title" | on A`
fn item_cuts(head: &[Atom]) -> Vec<usize> {
    let has_title = head.get(2).is_some_and(|atom| is_kind(atom, TokenKind::Text));
    vec![2, 2 + usize::from(has_title)]
}

fn cut(atoms: &[Atom], cuts: &[usize]) -> Cells {
    let mut cells = Vec::new();
    let mut from = 0;
    for &to in cuts {
        let to = to.clamp(from, atoms.len());
        cells.push(join(&atoms[from..to]));
        from = to;
    }
    cells.push(join(&atoms[from..]));
    while cells.len() > 1 && cells.last().is_some_and(String::is_empty) {
        cells.pop();
    }
    cells
}

/// The widths for the nodes of a block, run by run; none for nodes without columns.
pub(super) fn of_nodes(nodes: &[Spaced]) -> Vec<Widths> {
    of_runs(nodes, |spaced| match &spaced.node {
        Node::Comment(_) => Row::Between { has_gap: spaced.has_gap },
        Node::Statement(Statement { word, parts, .. }) => {
            let head = parts.first().map_or(&[] as &[Atom], |part| &part.atoms);
            Row::Line { has_gap: spaced.has_gap, kind: word.as_str(), cells: cells(word, head) }
        }
    })
}

/// The widths for the entries of a list.
pub(super) fn of_entries(entries: &[Entry]) -> Vec<Widths> {
    of_runs(entries, |entry| {
        if entry.atoms.is_empty() {
            return Row::Between { has_gap: entry.has_gap };
        }
        Row::Line { has_gap: entry.has_gap, kind: "", cells: entry_cells(&entry.atoms) }
    })
}

enum Row<'a> {
    /// A comment: part of the run around it.
    Between {
        has_gap: bool,
    },
    Line {
        has_gap: bool,
        kind: &'a str,
        cells: Cells,
    },
}

fn of_runs<'a, T>(rows: &'a [T], row: impl Fn(&'a T) -> Row<'a>) -> Vec<Widths> {
    let mut runs: Vec<Widths> = Vec::new();
    let mut run_of_row = Vec::with_capacity(rows.len());
    let mut open: Option<&str> = None;
    for one in rows {
        match row(one) {
            Row::Between { has_gap } => {
                if has_gap {
                    open = None;
                }
                run_of_row.push(None);
            }
            Row::Line { has_gap, kind, cells } => {
                if has_gap || open != Some(kind) {
                    runs.push(Vec::new());
                }
                open = Some(kind);
                if let Some(widths) = runs.last_mut() {
                    widen(widths, &cells);
                }
                run_of_row.push(Some(runs.len() - 1));
            }
        }
    }
    run_of_row.into_iter().map(|run| run.map_or_else(Vec::new, |run| runs[run].clone())).collect()
}

/// The last cell of a line sets no width: nothing stands behind it.
fn widen(widths: &mut Widths, cells: &Cells) {
    for (column, cell) in cells.iter().enumerate().take(cells.len().saturating_sub(1)) {
        if widths.len() <= column {
            widths.push(0);
        }
        let cell = width(cell);
        if cell <= WIDEST {
            widths[column] = widths[column].max(cell);
        }
    }
}

/// A line with its cells in their columns.
pub(super) fn align(cells: &Cells, widths: &Widths) -> String {
    let mut line = String::new();
    for (column, cell) in cells.iter().enumerate() {
        line.push_str(cell);
        if column + 1 < cells.len() {
            let column_width = widths.get(column).copied().unwrap_or(0);
            let fill = column_width.saturating_sub(width(cell));
            line.extend(std::iter::repeat_n(' ', fill));
            if column_width > 0 || !cell.is_empty() {
                line.push(' ');
            }
        }
    }
    line
}
