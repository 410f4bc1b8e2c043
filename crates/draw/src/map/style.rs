//! The drawing language: what each kind of network looks like, without colour too, and what marks on boxes mean.
//!
//! Kinds differ by the build of their line; how sure the author is by its dashes; which network it is by colour and letter. So a print
//! without colours says everything, and nothing hangs on telling red from green.

use wirelore_model::{Grade, NetworkKind};

/// Paper and ink.
pub(crate) const INK: &str = "#1d2733";
pub(crate) const PAPER: &str = "#ffffff";
pub(crate) const QUIET: &str = "#566270";
pub(crate) const FILL: &str = "#f7f9fb";
pub(crate) const TALL_FILL: &str = "#e9eef3";

/// Colours of networks: neighbours in the list differ in lightness as well as in hue.
const COLOURS: [&str; 10] =
    ["#16507d", "#c2571a", "#2a7353", "#7d3c98", "#8a6d00", "#0e7c86", "#a3274b", "#4a5a1f", "#5b63c7", "#6b4a33"];

/// The colour of the network with the given letter.
pub(crate) fn colour(number: usize) -> &'static str {
    COLOURS[number % COLOURS.len()]
}

/// The strokes that make a line, one upon the other: width in tenths of a pixel, and whether it is drawn in ink or takes ink away.
pub(crate) fn strokes(kind: NetworkKind, channels: (bool, bool)) -> &'static [(i32, bool)] {
    match kind {
        NetworkKind::Can => &[(40, true)],
        NetworkKind::CanFd => &[(90, true), (64, false), (36, true)],
        NetworkKind::CanXl => &[(120, true), (94, false), (66, true), (24, false)],
        NetworkKind::Lin | NetworkKind::Kline | NetworkKind::Uart => &[(22, true)],
        NetworkKind::FlexRay if channels == (true, true) => &[(74, true), (30, false)],
        NetworkKind::FlexRay => &[(30, true)],
        NetworkKind::Most => &[(110, true), (78, false)],
        NetworkKind::Ethernet => &[(22, true)],
    }
}

/// Dashes for how sure the author is. What is guessed shows always, the finer grades only where somebody asks for them.
pub(crate) fn dashes(grade: Option<Grade>, all_grades: bool) -> Option<&'static str> {
    match grade {
        Some(Grade::Guessed) => Some("4 4"),
        Some(Grade::Likely) if all_grades => Some("14 5"),
        _ => None,
    }
}

/// The letter of a network: A to Z, then AA, AB and so on.
pub(crate) fn letter(number: usize) -> String {
    let last = char::from(b'A' + (number % 26) as u8);
    if number < 26 { last.to_string() } else { format!("{}{last}", letter(number / 26 - 1)) }
}
