//! Pieces to statements: what stands on a line, what lies in its block.

use super::piece::Piece;
use super::spacing::Spacing;
use super::spans::Spans;
use crate::lex::TokenKind;

/// What a block, or a file, is made of.
#[derive(Debug)]
pub(super) enum Node {
    /// A comment or note on a line of its own.
    Comment(String),
    /// A statement.
    Statement(Statement),
}

/// A node and whether the author left an empty line in front of it.
#[derive(Debug)]
pub(super) struct Spaced {
    pub(super) has_gap: bool,
    pub(super) node: Node,
}

/// A statement: parts with commas between them, and perhaps a block.
#[derive(Debug, Default)]
pub(super) struct Statement {
    /// Its first word.
    pub(super) word: String,
    pub(super) parts: Vec<Part>,
    /// The remark at the end of its (first) line.
    pub(super) remark: Option<String>,
    pub(super) block: Option<Block>,
}

/// From one comma to the next.
#[derive(Debug, Default)]
pub(super) struct Part {
    pub(super) atoms: Vec<Atom>,
}

/// What a part is made of.
#[derive(Debug)]
pub(super) enum Atom {
    /// A token, and whether a blank stands in front of it.
    Token { text: String, kind: TokenKind, is_apart: bool },
    /// A comment, which ends its line; on a line of its own or not.
    Comment { text: String, is_first: bool },
    /// A list between braces.
    List(List),
}

/// A list of states, or of points of a curve.
#[derive(Debug)]
pub(super) struct List {
    pub(super) entries: Vec<Entry>,
    /// It stands on one line: the author has it so, and it fits.
    pub(super) is_flat: bool,
}

/// A line of a list that is written down line by line.
#[derive(Debug)]
pub(super) struct Entry {
    pub(super) has_gap: bool,
    /// Its tokens; none for a comment on a line of its own.
    pub(super) atoms: Vec<Atom>,
    pub(super) remark: Option<String>,
}

/// A block of statements.
#[derive(Debug)]
pub(super) struct Block {
    pub(super) nodes: Vec<Spaced>,
    /// The remark behind its closing brace.
    pub(super) remark: Option<String>,
}

/// All statements of a file.
pub(super) fn grow(text: &str, pieces: &[Piece], spans: &Spans) -> Vec<Spaced> {
    let mut grower = Grower { pieces, at: 0, spacing: Spacing { text, spans } };
    grower.nodes()
}

struct Grower<'a> {
    pieces: &'a [Piece],
    at: usize,
    spacing: Spacing<'a>,
}

impl Grower<'_> {
    fn peek(&self) -> Option<Piece> {
        self.pieces.get(self.at).copied()
    }

    fn text(&self, piece: Piece) -> String {
        self.spacing.text.get(piece.span.range()).unwrap_or_default().trim_end().to_owned()
    }

    /// The comment that goes on the line here, if there is one.
    fn remark(&mut self) -> Option<String> {
        let comment = self.peek().filter(|piece| piece.is_comment() && !piece.is_first)?;
        self.at += 1;
        Some(self.text(comment))
    }

    /// Statements up to a closing brace, or the end.
    fn nodes(&mut self) -> Vec<Spaced> {
        let mut nodes = Vec::new();
        while let Some(piece) = self.peek() {
            match piece.kind {
                TokenKind::CloseBrace => break,
                TokenKind::LineEnd => self.at += 1,
                _ if piece.is_comment() => {
                    self.at += 1;
                    nodes.push(Spaced { has_gap: piece.has_gap, node: Node::Comment(self.text(piece)) });
                }
                _ => nodes.push(Spaced { has_gap: piece.has_gap, node: Node::Statement(self.statement()) }),
            }
        }
        nodes
    }

    fn statement(&mut self) -> Statement {
        let word = self.peek().map(|piece| self.text(piece)).unwrap_or_default();
        let has_lists = matches!(word.as_str(), "signal" | "states");
        let mut statement = Statement { word, ..Statement::default() };
        let mut part = Part::default();
        let mut run = self.at;
        while let Some(piece) = self.peek() {
            match piece.kind {
                TokenKind::LineEnd | TokenKind::CloseBrace => break,
                TokenKind::OpenBrace if !has_lists => {
                    statement.block = Some(Block { nodes: Vec::new(), remark: None });
                    break;
                }
                TokenKind::OpenBrace => {
                    part.atoms.push(Atom::List(self.list()));
                    run = self.at;
                }
                TokenKind::Comma => {
                    self.at += 1;
                    let mut done = std::mem::take(&mut part);
                    self.comments(&mut done);
                    statement.parts.push(done);
                    run = self.at;
                }
                _ if piece.is_comment() && self.is_behind_statement() => break,
                _ if piece.is_comment() => self.comments(&mut part),
                _ => {
                    let is_apart = if self.at > run {
                        self.spacing.blank_before(&self.pieces[run..], self.at - run)
                    } else {
                        !part.atoms.is_empty()
                    };
                    part.atoms.push(Atom::Token { text: self.text(piece), kind: piece.kind, is_apart });
                    self.at += 1;
                }
            }
        }
        if !part.atoms.is_empty() {
            statement.parts.push(part);
        }
        self.finish(&mut statement);
        statement
    }

    /// Whether the statement is over behind the comments here.
    fn is_behind_statement(&self) -> bool {
        let behind = self.pieces[self.at..].iter().find(|piece| !piece.is_comment());
        behind.is_none_or(|piece| matches!(piece.kind, TokenKind::LineEnd | TokenKind::CloseBrace))
    }

    /// The remark at the end, and the block.
    fn finish(&mut self, statement: &mut Statement) {
        if let Some(block) = &mut statement.block {
            self.at += 1;
            statement.remark = self.remark();
            block.nodes = self.nodes();
            self.at += 1;
            block.remark = self.remark();
        } else {
            statement.remark = self.remark();
        }
    }

    /// Comments inside of a statement: they stay where they are.
    fn comments(&mut self, part: &mut Part) {
        while let Some(piece) = self.peek().filter(Piece::is_comment) {
            part.atoms.push(Atom::Comment { text: self.text(piece), is_first: piece.is_first });
            self.at += 1;
        }
    }

    /// A list, from its opening to behind its closing brace.
    fn list(&mut self) -> List {
        let mut list = List { entries: Vec::new(), is_flat: true };
        self.at += 1;
        while let Some(piece) = self.peek() {
            list.is_flat &= !piece.is_first && !piece.is_comment();
            match piece.kind {
                TokenKind::CloseBrace => break,
                TokenKind::LineEnd | TokenKind::Comma => self.at += 1,
                _ if piece.is_comment() => {
                    self.at += 1;
                    let text = self.text(piece);
                    match list.entries.last_mut().filter(|entry| !piece.is_first && entry.remark.is_none()) {
                        Some(entry) => entry.remark = Some(text),
                        None => {
                            list.entries.push(Entry { has_gap: piece.has_gap, atoms: Vec::new(), remark: Some(text) })
                        }
                    }
                }
                _ => {
                    let atoms = self.entry();
                    list.entries.push(Entry { has_gap: piece.has_gap, atoms, remark: None });
                }
            }
        }
        self.at += 1;
        list
    }

    fn entry(&mut self) -> Vec<Atom> {
        let mut atoms = Vec::new();
        let run = self.at;
        while let Some(piece) = self.peek() {
            if matches!(piece.kind, TokenKind::CloseBrace | TokenKind::LineEnd | TokenKind::Comma) || piece.is_comment()
            {
                break;
            }
            let is_apart = self.at > run && self.spacing.blank_before(&self.pieces[run..], self.at - run);
            atoms.push(Atom::Token { text: self.text(piece), kind: piece.kind, is_apart });
            self.at += 1;
        }
        atoms
    }
}
