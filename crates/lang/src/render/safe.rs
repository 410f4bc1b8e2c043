//! Text that a terminal can be given: nothing in a description may move its cursor, change its colours or turn its lines around.

use std::borrow::Cow;

/// Characters that change the direction of what follows, break its line, or are there without being seen.
fn turns(c: char) -> bool {
    matches!(
        c,
        '\u{00AD}' | '\u{061C}' | '\u{200B}' | '\u{200E}' | '\u{200F}' | '\u{2028}'..='\u{202E}' | '\u{2060}'..='\u{2069}' | '\u{FEFF}'
    )
}

/// The second set of control characters, which some terminals obey as they do the first.
fn is_high_control(c: char) -> bool {
    matches!(c, '\u{0080}'..='\u{009F}')
}

/// A line of text with visible characters in place of those that act on a terminal: control characters, changes of direction, what is
/// there without being seen.
#[must_use]
pub fn message(text: &str) -> Cow<'_, str> {
    if !text.chars().any(|c| c.is_control() || turns(c)) {
        return Cow::Borrowed(text);
    }
    let visible = |c: char| match u32::from(c) {
        // The pictures of the control characters stand in the same order as these.
        number @ 0..0x20 => char::from_u32(0x2400 + number).unwrap_or('\u{FFFD}'),
        0x7F => '\u{2421}',
        _ if is_high_control(c) || turns(c) => '\u{FFFD}',
        _ => c,
    };
    Cow::Owned(text.chars().map(visible).collect())
}

/// Source text of the same length in bytes, so that places in it still fit. Tabs, line ends and the first set of control characters
/// stay: the renderer has pictures for them.
pub(super) fn source(text: &str) -> Cow<'_, str> {
    if !text.chars().any(|c| is_high_control(c) || turns(c)) {
        return Cow::Borrowed(text);
    }
    let visible = |c: char| match c.len_utf8() {
        2 if is_high_control(c) || turns(c) => '\u{00BF}',
        3 if turns(c) => '\u{FFFD}',
        _ => c,
    };
    Cow::Owned(text.chars().map(visible).collect())
}
