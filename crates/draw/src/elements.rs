//! Pieces that every picture is written with: its frame, its lines of words, and the page around it.

use std::fmt::Write;

use crate::map::style::PAPER;
use crate::text::{Face, escaped};

/// A picture's beginning: its size in pixels, its title for those who cannot see it, and the paper.
pub(crate) fn begin(text: &mut String, (width, height): (i32, i32), title: &str, definitions: &str) {
    // Writing to a string cannot fail, here and below.
    let _ = write!(
        text,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" height=\"{height}\" \
         role=\"img\" font-family=\"Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif\">\n\
         <title>{}</title>\n{definitions}<rect width=\"{width}\" height=\"{height}\" fill=\"{PAPER}\"/>\n",
        escaped(title)
    );
}

/// A line of words; `anchor` is `middle`, `end`, or nothing for the left.
pub(crate) fn words(text: &mut String, face: Face, anchor: &str, (x, y): (i32, i32), fill: &str, line: &str) {
    let weight = if face.bold { " font-weight=\"bold\"" } else { "" };
    let anchor = if anchor.is_empty() { String::new() } else { format!(" text-anchor=\"{anchor}\"") };
    let _ = writeln!(
        text,
        "<text x=\"{x}\" y=\"{y}\" font-size=\"{}\"{weight}{anchor} fill=\"{fill}\">{}</text>",
        face.size,
        escaped(line)
    );
}

/// How pages look on a screen, and on paper.
const STYLE: &str = "\
body { margin: 0; background: #fff; color: #1d2733; font-family: sans-serif; }
svg { display: block; width: 100%; height: auto; max-height: 100vh; margin: 0 auto; }
@page { size: A4 landscape; margin: 8mm; }
";

/// A page that needs nothing else.
pub(crate) fn page(title: &str, more_style: &str, body: &str) -> String {
    format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>{}</title>\n\
         <style>\n{STYLE}{more_style}</style>\n</head>\n<body>\n{body}</body>\n</html>\n",
        escaped(title)
    )
}
