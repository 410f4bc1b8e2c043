//! Cutting a delimited line into cells.

use std::borrow::Cow;

use crate::flaw::Flaw;

/// One cell: a range of its line, without the blanks or quotes around it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Cell {
    start: u32,
    end: u32,
}

impl Cell {
    /// The bytes of the cell.
    #[inline]
    pub(super) fn of(self, line: &[u8]) -> &[u8] {
        line.get(self.start as usize..self.end as usize).unwrap_or_default()
    }
}

/// Cuts at most `wanted` cells off the line, and tells where the next one begins; `None` where the line has no more.
///
/// Blanks around a cell do not count. A cell that begins with a quote ends at the next single one; delimiters inside do not
/// cut, and two quotes stand for one ([`unquoted`]).
#[inline]
pub(super) fn split<'l>(
    line: &'l [u8],
    delimiter: u8,
    wanted: usize,
    cells: &mut Vec<Cell>,
) -> Result<Option<usize>, Flaw<'l>> {
    cells.clear();
    let mut start = 0;
    while cells.len() < wanted {
        let end = match line[start..].iter().position(|&byte| byte == delimiter || byte == b'"') {
            None => line.len(),
            Some(found) if line[start + found] == delimiter => start + found,
            Some(_) => {
                let (cell, after) = split_with_quotes(line, start, delimiter)?;
                cells.push(cell);
                match after {
                    Some(after) => start = after,
                    None => return Ok(None),
                }
                continue;
            }
        };
        cells.push(trimmed(line, start, end, delimiter));
        if end >= line.len() {
            return Ok(None);
        }
        start = end + 1;
    }
    Ok(Some(start))
}

/// The cell without the blanks around it.
#[inline]
fn trimmed(line: &[u8], mut start: usize, mut end: usize, delimiter: u8) -> Cell {
    let is_blank = |byte: u8| matches!(byte, b' ' | b'\t' | b'\r') && byte != delimiter;
    while start < end && is_blank(line[start]) {
        start += 1;
    }
    while end > start && is_blank(line[end - 1]) {
        end -= 1;
    }
    Cell { start: start as u32, end: end as u32 }
}

/// A cell with a quote somewhere in it, and where the next one begins.
#[cold]
fn split_with_quotes(line: &[u8], start: usize, delimiter: u8) -> Result<(Cell, Option<usize>), Flaw<'_>> {
    let next_delimiter = |from: usize| line[from..].iter().position(|&byte| byte == delimiter).map(|at| from + at);
    let open = start + line[start..].iter().take_while(|byte| matches!(byte, b' ' | b'\t')).count();
    if line.get(open) != Some(&b'"') {
        let end = next_delimiter(start);
        return Ok((trimmed(line, start, end.unwrap_or(line.len()), delimiter), end.map(|end| end + 1)));
    }
    let mut close = open + 1;
    loop {
        close += line[close..].iter().position(|&byte| byte == b'"').ok_or(Flaw::OpenQuote)?;
        if line.get(close + 1) != Some(&b'"') {
            break;
        }
        close += 2;
    }
    let cell = trimmed(line, open + 1, close, delimiter);
    Ok((cell, next_delimiter(close + 1).map(|end| end + 1)))
}

/// The cell with each pair of quotes made one.
pub(super) fn unquoted(cell: &[u8]) -> Cow<'_, [u8]> {
    if !cell.windows(2).any(|pair| pair == b"\"\"") {
        return Cow::Borrowed(cell);
    }
    let mut single = Vec::with_capacity(cell.len());
    let mut bytes = cell.iter().copied().peekable();
    while let Some(byte) = bytes.next() {
        single.push(byte);
        if byte == b'"' {
            bytes.next_if_eq(&b'"');
        }
    }
    Cow::Owned(single)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cut(line: &str, delimiter: u8) -> Vec<String> {
        let mut cells = Vec::new();
        split(line.as_bytes(), delimiter, 99, &mut cells).expect("the line is whole");
        let text = |cell: &Cell| String::from_utf8(unquoted(cell.of(line.as_bytes())).into_owned()).expect("is text");
        cells.iter().map(text).collect()
    }

    #[test]
    fn plain_blank_and_empty_cells() {
        assert_eq!(cut("a, b ,,c,", b','), ["a", "b", "", "c", ""]);
        assert_eq!(cut("a\t\t b", b'\t'), ["a", "", "b"]);
        assert_eq!(cut("", b','), [""]);
    }

    #[test]
    fn quoted_cells() {
        assert_eq!(cut(r#""a;b"; "c ""d"" e" ;f"#, b';'), ["a;b", r#"c "d" e"#, "f"]);
        assert_eq!(cut(r#"5" pipe;x"#, b';'), [r#"5" pipe"#, "x"]);
        assert_eq!(cut(r#""""#, b';'), [""]);
    }

    #[test]
    fn a_quote_that_stays_open_is_a_flaw() {
        let mut cells = Vec::new();
        assert!(split(b"a,\"b,c", b',', 9, &mut cells).is_err());
        assert!(split(b"a,\"b\"\"", b',', 9, &mut cells).is_err());
    }

    #[test]
    fn no_more_cells_than_wanted() {
        let mut cells = Vec::new();
        split(b"a,b,\"c", b',', 2, &mut cells).expect("the open quote is not reached");
        assert_eq!(cells.len(), 2);
    }
}
