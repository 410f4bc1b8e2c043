//! Words in a picture: how wide they are, where a line of them is broken, and what of them may be written into a file of XML.

use unicode_width::UnicodeWidthChar;

/// Advance widths of the characters ` ` to `~` in thousandths of the size: those of one of the wider sans-serif faces that come with
/// systems (measured), so that text fits whichever face the reader's machine takes.
const WIDTHS: [u16; 95] = [
    318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 500, 838, 318, 361, 318, 337, 637, 637, 637, 637, 637, 637, 637,
    637, 637, 637, 337, 337, 838, 838, 838, 531, 1000, 685, 687, 699, 771, 632, 576, 775, 752, 295, 295, 656, 558, 863,
    749, 788, 604, 788, 695, 635, 611, 732, 685, 989, 686, 611, 686, 391, 337, 391, 838, 500, 500, 613, 635, 550, 635,
    616, 353, 635, 634, 278, 278, 580, 278, 975, 634, 612, 635, 635, 412, 521, 393, 634, 592, 818, 592, 592, 525, 637,
    337, 637, 838,
];

/// Other letters of one column (accented, Greek, Cyrillic, Hebrew, Arabic), and those of two (Chinese, Japanese, Korean).
const OTHER_WIDTH: i32 = 1000;
const WIDE_WIDTH: i32 = 1100;

/// How letters look.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Face {
    /// Height of the letters' body in pixels.
    pub(crate) size: i32,
    /// Heavy letters.
    pub(crate) bold: bool,
}

impl Face {
    pub(crate) const fn plain(size: i32) -> Self {
        Self { size, bold: false }
    }

    pub(crate) const fn bold(size: i32) -> Self {
        Self { size, bold: true }
    }

    /// How wide a text is at most, in pixels.
    pub(crate) fn width(self, text: &str) -> i32 {
        let thousandths: i32 = text.chars().map(|letter| self.letter(letter)).fold(0, i32::saturating_add);
        (thousandths.saturating_mul(self.size) + 999) / 1000
    }

    fn letter(self, letter: char) -> i32 {
        let plain = match (letter as usize).checked_sub(usize::from(b' ')).and_then(|at| WIDTHS.get(at)) {
            Some(width) => i32::from(*width),
            None => match letter.width() {
                Some(0) => return 0,
                Some(2) => WIDE_WIDTH,
                _ => OTHER_WIDTH,
            },
        };
        // Heavy letters are wider, narrow ones by the larger share.
        if self.bold { plain * 108 / 100 + 45 } else { plain }
    }

    /// Breaks a text into at most so many lines of at most such a width; what is left over becomes `…`.
    pub(crate) fn wrap(self, text: &str, most_width: i32, most_lines: usize) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        let mut line = String::new();
        for piece in pieces(text) {
            for part in self.breakable(piece, most_width) {
                let candidate = if line.is_empty() { part.trim_start().to_owned() } else { format!("{line}{part}") };
                if self.width(candidate.trim_end()) <= most_width {
                    line = candidate;
                } else {
                    lines.push(std::mem::replace(&mut line, part.trim_start().to_owned()));
                }
            }
        }
        lines.push(line);
        lines.retain_mut(|line| {
            line.truncate(line.trim_end().len());
            !line.is_empty()
        });
        if lines.len() > most_lines {
            lines.truncate(most_lines);
            if let Some(last) = lines.last_mut() {
                *last = self.shortened(&format!("{last}…"), most_width);
            }
        }
        lines
    }

    /// A text in one line, with `…` at its end where it is too long.
    pub(crate) fn shortened(self, text: &str, most_width: i32) -> String {
        if self.width(text) <= most_width {
            return text.to_owned();
        }
        let mut kept = text.trim_end_matches('…').to_owned();
        while kept.pop().is_some() {
            let shorter = format!("{}…", kept.trim_end());
            if self.width(&shorter) <= most_width {
                return shorter;
            }
        }
        String::new()
    }

    /// A word as it is where it fits a line, else in parts that do.
    fn breakable(self, piece: &str, most_width: i32) -> Vec<String> {
        if self.width(piece.trim()) <= most_width {
            return vec![piece.to_owned()];
        }
        let mut parts = vec![String::new()];
        for letter in piece.chars() {
            let part = parts.last_mut().expect("there is always one");
            part.push(letter);
            if self.width(part.trim()) > most_width && part.chars().count() > 1 {
                part.pop();
                parts.push(letter.to_string());
            }
        }
        parts
    }
}

/// A text cut behind each blank, hyphen and stroke, and around each letter of two columns.
fn pieces(text: &str) -> Vec<&str> {
    let (mut pieces, mut from) = (Vec::new(), 0);
    for (at, letter) in text.char_indices() {
        let behind = at + letter.len_utf8();
        if letter == ' ' {
            // A blank begins the next piece, so that it goes where a line is broken.
            pieces.push(&text[from..at]);
            from = at;
        } else if matches!(letter, '-' | '/' | ',') || letter.width() == Some(2) {
            pieces.push(&text[from..behind]);
            from = behind;
        }
    }
    pieces.push(&text[from..]);
    pieces.retain(|piece| !piece.is_empty());
    pieces
}

/// A text of a description on one line, without what acts instead of showing: control characters become blanks, marks that turn the
/// direction of what follows go, and what no XML may hold shows as `�`.
pub(crate) fn clean(text: &str) -> String {
    let letters = text.chars().filter(|letter| !turns_direction(*letter)).map(|letter| match letter {
        letter if letter.is_control() || matches!(letter, '\u{2028}' | '\u{2029}') => ' ',
        '\u{FFFE}' | '\u{FFFF}' => '\u{FFFD}',
        letter => letter,
    });
    letters.collect::<String>().split(' ').filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
}

fn turns_direction(letter: char) -> bool {
    matches!(letter, '\u{061C}' | '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

/// A name inside a sentence: its own direction of writing stays within it.
pub(crate) fn isolated(name: &str) -> String {
    if name.is_ascii() { name.to_owned() } else { format!("\u{2068}{name}\u{2069}") }
}

/// A text as XML and HTML write it, inside an element or an attribute.
pub(crate) fn escaped(text: &str) -> String {
    let mut result = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => result.push_str("&amp;"),
            '<' => result.push_str("&lt;"),
            '>' => result.push_str("&gt;"),
            '"' => result.push_str("&quot;"),
            '\'' => result.push_str("&#39;"),
            other => result.push(other),
        }
    }
    result
}

#[cfg(test)]
mod tests {
    use super::*;

    const FACE: Face = Face::plain(12);

    #[test]
    fn lines_are_broken_at_blanks_and_never_too_wide() {
        assert_eq!(FACE.wrap("Refrigeration of the cargo bay", 108, 3), ["Refrigeration of", "the cargo bay"]);
        for text in [
            "Donaudampfschifffahrtsgesellschaftskapitaen",
            "車両ネットワークの中央ゲートウェイ装置",
            "a b c d e f g h i j k l m n",
        ] {
            for lines in 1..4 {
                let wrapped = FACE.wrap(text, 60, lines);
                assert!(wrapped.len() <= lines && wrapped.iter().all(|line| FACE.width(line) <= 60), "{wrapped:?}");
            }
        }
        assert_eq!(FACE.wrap("", 60, 3), [] as [&str; 0]);
    }

    #[test]
    fn what_does_not_fit_ends_in_an_ellipsis() {
        let wrapped = FACE.wrap("one two three four five six", 40, 2);
        assert_eq!(wrapped, ["one", "two…"]);
        assert_eq!(FACE.shortened("a very long name", 50), "a very…");
        assert_eq!(FACE.shortened("fits", 50), "fits");
    }

    #[test]
    fn nothing_acts_on_the_reader() {
        assert_eq!(clean("a\tb\n\u{202E}c\u{0}\u{FFFF}  d"), "a b c \u{FFFD} d");
        assert_eq!(escaped("<a href=\"x\">&'"), "&lt;a href=&quot;x&quot;&gt;&amp;&#39;");
        assert_eq!(isolated("שער"), "\u{2068}שער\u{2069}");
    }
}
