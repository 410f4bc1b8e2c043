//! Characters that look like the one a unit symbol is written with.

/// The character that unit symbols use in place of one that looks the same; any other character as it is.
///
/// Keyboards, fonts and documents disagree on these: the micro sign and the Greek mu, the Greek omega and the ohm sign, the dots of a
/// product, the small rings of a degree.
#[must_use]
pub fn fold_look_alike(character: char) -> char {
    match character {
        // Greek small letter mu: the micro sign.
        '\u{03BC}' => '\u{00B5}',
        // Ohm sign: Greek capital letter omega.
        '\u{2126}' => '\u{03A9}',
        // Dot operator, bullet operator, bullet, Greek ano teleia, katakana middle dot: the middle dot.
        '\u{22C5}' | '\u{2219}' | '\u{2022}' | '\u{0387}' | '\u{30FB}' => '\u{00B7}',
        // Masculine ordinal indicator, ring above, superscript o, ring operator: the degree sign.
        '\u{00BA}' | '\u{02DA}' | '\u{1D52}' | '\u{2218}' => '\u{00B0}',
        // Increment, white up-pointing triangle: Greek capital letter delta.
        '\u{2206}' | '\u{25B3}' => '\u{0394}',
        // Division slash, fraction slash: the slash.
        '\u{2215}' | '\u{2044}' => '/',
        // Kelvin sign: the letter.
        '\u{212A}' => 'K',
        other => other,
    }
}
