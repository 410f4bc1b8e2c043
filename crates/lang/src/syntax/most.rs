//! How a MOST control message is recognised: the address of its function, and the operation.

use nom::Parser;
use nom::combinator::opt;
use wirelore_model::MOST_OPERATIONS;

use super::basic::{one_of, shortened, want_so, word};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::meant::over_equals;
use super::number::{integer, whole_number};
use super::tree::{Integer, Recognition};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span};

const HELP: &str =
    "the address of a function is written `function 0x22.0x01.0x0D2`: block, instance (or `any`), function";

/// `function 0x22.0x01.0x0D2 operation status`
pub(super) fn function(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    let begin = over_equals(i);
    let behind = address_end(begin);
    let span = begin.span_to(behind);
    if !matches!(begin.kind(), Some(TokenKind::Number | TokenKind::Word)) {
        return want_so("the address of the function", HELP, |_| elsewhere())(begin);
    }
    let Some([block, instance, function]) = parts(begin, span) else { return broken(no_address(begin, span)) };
    let (Some(block), Some(function)) = (block, function) else { return broken(no_address(begin, span)) };
    let (behind, operation) = opt(operation).parse(behind)?;
    Ok((behind, Recognition::Function { block, instance, function, operation }))
}

/// Behind everything that touches: numbers, dots, `any`.
fn address_end(begin: Cursor<'_>) -> Cursor<'_> {
    let mut behind = begin.next();
    while matches!(behind.kind(), Some(TokenKind::Number | TokenKind::Word | TokenKind::Dot)) && behind.touches() {
        behind = behind.next();
    }
    behind
}

/// Block, instance and function; `None` inside for `any`. Hexadecimal only: documents write 22.01.0D2 without a mark, and nobody could
/// tell whether a 22 that is read as a decimal number was meant so.
fn parts(i: Cursor<'_>, span: Span) -> Option<[Option<Integer>; 3]> {
    let mut start = span.start;
    let mut parts = [None; 3];
    let mut pieces = i.context.text(span).split('.');
    for (index, part) in parts.iter_mut().enumerate() {
        let piece = pieces.next()?;
        let span = Span::new(start, start + piece.len() as u32);
        start = span.end + 1;
        if piece == "any" && index == 1 {
            continue;
        }
        let is_hexadecimal = matches!(piece.as_bytes(), [b'0', b'x' | b'X', ..]);
        let value = whole_number(piece).ok().filter(|_| is_hexadecimal)?;
        *part = Some(Integer { value, pattern: true, span });
    }
    pieces.next().is_none().then_some(parts)
}

fn no_address(i: Cursor<'_>, span: Span) -> Diagnostic {
    let written = i.context.text(span);
    let site = i.site(span);
    let message =
        Diagnostic::new(Rule::BadNumber, site, format!("`{}` is not the address of a function", shortened(written)))
            .here("three hexadecimal numbers, with dots between them")
            .help(HELP);
    match as_in_documents(written) {
        Some(meant) => message.fix(site, meant),
        None => message,
    }
}

/// `22.01.0D2`, as documents write it, with the marks of hexadecimal numbers.
fn as_in_documents(written: &str) -> Option<String> {
    let pieces: Vec<&str> = written.split('.').collect();
    let is_hexadecimal = |piece: &&str| !piece.is_empty() && piece.bytes().all(|byte| byte.is_ascii_hexdigit());
    let marked = |piece: &&str| format!("0x{piece}");
    (pieces.len() == 3 && pieces.iter().all(is_hexadecimal))
        .then(|| pieces.iter().map(marked).collect::<Vec<_>>().join("."))
}

/// `operation status`, `operation 0xC`
fn operation(i: Cursor<'_>) -> Parsed<'_, Integer> {
    let (behind, _) = word("operation")(i)?;
    if behind.kind() == Some(TokenKind::Number) {
        return integer(behind);
    }
    let (end, operation) = one_of("an operation", &MOST_OPERATIONS)(behind)?;
    Ok((end, Integer { value: operation.value.into(), pattern: true, span: operation.span }))
}
