//! Statements to text.

use super::columns::{self, Cells, Widths, align, entry_cells, join, width};
use super::grow::{Atom, Block, Entry, List, Node, Part, Spaced, Statement};

/// Blanks for each block.
const INDENT: usize = 4;
/// Blanks for a line that goes on the one before.
const HANG: usize = 8;
/// Characters of a line, where commas allow to keep to it.
const LINE: usize = 100;

/// Prints a file.
pub(super) fn print(mut nodes: Vec<Spaced>) -> String {
    settle(&mut nodes, 0);
    let mut printer = Printer { out: String::new(), line: String::new() };
    let gaps = gaps(&nodes);
    printer.nodes(&nodes, &gaps, 0);
    printer.out
}

/// Decides which lists stay on one line: those that the author has so, and that fit.
fn settle(nodes: &mut [Spaced], indent: usize) {
    for spaced in nodes {
        let Node::Statement(statement) = &mut spaced.node else { continue };
        for (at, part) in statement.parts.iter_mut().enumerate() {
            let start = if at == 0 { indent } else { indent + HANG };
            let mut used = start + width(&join(&part.atoms)) + 1;
            for atom in &mut part.atoms {
                if let Atom::List(list) = atom {
                    used += width(&flat_list(list)) + 1;
                    list.is_flat &= used <= LINE;
                }
            }
        }
        if let Some(block) = &mut statement.block {
            settle(&mut block.nodes, indent + INDENT);
        }
    }
}

/// Where empty lines go between top-level items: where the author left one, and around items that have a block or list of their own.
/// What stands in front of an item without an empty line belongs to it.
fn gaps(nodes: &[Spaced]) -> Vec<bool> {
    let mut gaps: Vec<bool> = nodes.iter().map(|spaced| spaced.has_gap).collect();
    let is_large = |node: &Node| match node {
        Node::Comment(_) => false,
        Node::Statement(statement) => is_large(statement),
    };
    let is_front = |node: &Node| match node {
        Node::Comment(_) => true,
        Node::Statement(statement) => statement.word == "allow",
    };
    for (at, spaced) in nodes.iter().enumerate().filter(|(_, spaced)| !is_front(&spaced.node)) {
        let mut first = at;
        while first > 0 && !gaps[first] && is_front(&nodes[first - 1].node) {
            first -= 1;
        }
        if first > 0
            && !is_front(&nodes[first - 1].node)
            && (is_large(&spaced.node) || is_large(&nodes[first - 1].node))
        {
            gaps[first] = true;
        }
    }
    gaps
}

/// Whether a statement takes several lines whatever its width.
fn is_large(statement: &Statement) -> bool {
    statement.block.as_ref().is_some_and(|block| !block.nodes.is_empty())
        || statement
            .parts
            .iter()
            .flat_map(|part| &part.atoms)
            .any(|atom| matches!(atom, Atom::List(list) if !list.is_flat))
}

struct Printer {
    out: String,
    /// The line being written.
    line: String,
}

impl Printer {
    fn end_line(&mut self) {
        self.out.push_str(self.line.trim_end());
        self.out.push('\n');
        self.line.clear();
    }

    fn start_line(&mut self, blanks: usize) {
        self.line.extend(std::iter::repeat_n(' ', blanks));
    }

    fn remark(&mut self, remark: Option<&String>) {
        if let Some(remark) = remark {
            self.line.push_str("  ");
            self.line.push_str(remark);
        }
    }

    fn nodes(&mut self, nodes: &[Spaced], gaps: &[bool], indent: usize) {
        let widths = columns::of_nodes(nodes);
        for (at, spaced) in nodes.iter().enumerate() {
            if gaps[at] && at > 0 {
                self.out.push('\n');
            }
            match &spaced.node {
                Node::Comment(text) => {
                    self.start_line(indent);
                    self.line.push_str(text);
                    self.end_line();
                }
                Node::Statement(statement) => self.statement(statement, &widths[at], indent),
            }
        }
    }

    fn statement(&mut self, statement: &Statement, widths: &Widths, indent: usize) {
        self.start_line(indent);
        let last = statement.parts.len().saturating_sub(1);
        for (at, part) in statement.parts.iter().enumerate() {
            let comma = if at < last { "," } else { "" };
            if at == 0 {
                self.head(&statement.word, part, widths, comma, indent);
            } else {
                self.part(part, comma, indent);
            }
        }
        match &statement.block {
            Some(block) => self.block(statement, block, indent),
            None => {
                self.remark(statement.remark.as_ref());
                self.end_line();
            }
        }
    }

    /// The part in front of the first comma, in its columns.
    fn head(&mut self, word: &str, part: &Part, widths: &Widths, comma: &str, indent: usize) {
        let cells = columns::cells(word, &part.atoms);
        self.line.push_str(&align(&cells, widths));
        let tokens = part.atoms.iter().take_while(|atom| matches!(atom, Atom::Token { .. })).count();
        self.rest_of_part(&part.atoms[tokens..], comma, indent);
    }

    /// A further part: on the line if there is room, else on the next one.
    fn part(&mut self, part: &Part, comma: &str, indent: usize) {
        let needed = flat_width(&part.atoms) + comma.len();
        let is_fresh = self.line.trim_start().is_empty();
        if !is_fresh && width(&self.line) + 1 + needed > LINE {
            self.end_line();
            self.start_line(indent + HANG);
        } else if !is_fresh {
            self.line.push(' ');
        }
        let tokens = part.atoms.iter().take_while(|atom| matches!(atom, Atom::Token { .. })).count();
        self.line.push_str(&join(&part.atoms[..tokens]));
        self.rest_of_part(&part.atoms[tokens..], comma, indent);
    }

    /// What comes behind the first tokens of a part: lists and comments, and tokens behind those. The comma stands in front of comments.
    fn rest_of_part(&mut self, atoms: &[Atom], comma: &str, indent: usize) {
        let last = atoms.iter().rposition(|atom| !matches!(atom, Atom::Comment { .. })).map_or(0, |at| at + 1);
        for atom in &atoms[..last] {
            match atom {
                Atom::Token { text, is_apart, .. } => {
                    if *is_apart && !self.line.trim_start().is_empty() {
                        self.line.push(' ');
                    }
                    self.line.push_str(text);
                }
                Atom::List(list) => self.list(list, indent),
                Atom::Comment { text, is_first } => self.inner_comment(text, *is_first, indent),
            }
        }
        self.line.push_str(comma);
        for atom in &atoms[last..] {
            if let Atom::Comment { text, is_first } = atom {
                self.inner_comment(text, *is_first, indent);
            }
        }
    }

    /// A comment in the middle of a statement; the statement goes on behind it.
    fn inner_comment(&mut self, text: &str, is_first: bool, indent: usize) {
        let is_fresh = self.line.trim_start().is_empty();
        if is_first && !is_fresh {
            self.end_line();
            self.start_line(indent + HANG);
        } else if !is_fresh {
            self.line.push_str("  ");
        }
        self.line.push_str(text);
        self.end_line();
        self.start_line(indent + HANG);
    }

    fn list(&mut self, list: &List, indent: usize) {
        if !self.line.ends_with(' ') {
            self.line.push(' ');
        }
        if list.is_flat {
            self.line.push_str(&flat_list(list));
            return;
        }
        self.line.push('{');
        self.end_line();
        let widths = columns::of_entries(&list.entries);
        for (at, entry) in list.entries.iter().enumerate() {
            if entry.has_gap && at > 0 {
                self.out.push('\n');
            }
            self.entry(entry, &widths[at], indent + INDENT);
        }
        self.start_line(indent);
        self.line.push('}');
    }

    fn entry(&mut self, entry: &Entry, widths: &Widths, indent: usize) {
        self.start_line(indent);
        if entry.atoms.is_empty() {
            self.line.push_str(entry.remark.as_deref().unwrap_or_default());
        } else {
            let cells: Cells = entry_cells(&entry.atoms);
            self.line.push_str(&align(&cells, widths));
            self.remark(entry.remark.as_ref());
        }
        self.end_line();
    }

    fn block(&mut self, statement: &Statement, block: &Block, indent: usize) {
        if !self.line.ends_with(' ') {
            self.line.push(' ');
        }
        self.line.push('{');
        if block.nodes.is_empty() && statement.remark.is_none() {
            self.line.push('}');
        } else {
            self.remark(statement.remark.as_ref());
            self.end_line();
            let gaps: Vec<bool> = block.nodes.iter().map(|spaced| spaced.has_gap).collect();
            self.nodes(&block.nodes, &gaps, indent + INDENT);
            self.start_line(indent);
            self.line.push('}');
        }
        self.remark(block.remark.as_ref());
        self.end_line();
    }
}

/// `{ 0 off, 1 on }`
fn flat_list(list: &List) -> String {
    let entries: Vec<_> = list.entries.iter().map(|entry| join(&entry.atoms)).collect();
    if entries.is_empty() { "{}".to_owned() } else { format!("{{ {} }}", entries.join(", ")) }
}

/// How many characters a part needs on its line, up to the first place where the line ends anyway.
fn flat_width(atoms: &[Atom]) -> usize {
    let mut needed = 0;
    for atom in atoms {
        match atom {
            Atom::Token { text, is_apart, .. } => needed += width(text) + usize::from(*is_apart),
            Atom::List(list) => {
                if !list.is_flat {
                    return needed + 2;
                }
                needed += width(&flat_list(list)) + 1;
            }
            Atom::Comment { .. } => return needed,
        }
    }
    needed
}
