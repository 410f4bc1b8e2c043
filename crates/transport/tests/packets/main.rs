//! Ethernet and what runs over it, and single-wire messages, from outside.

mod cut;
mod doip;
mod ethernet;
mod hostile;
mod sd;
mod someip;
mod tcp;
mod tp;
mod uart;

/// The bytes that a text of hex digits says.
fn hex(text: &str) -> Vec<u8> {
    let digits: Vec<u8> = text.chars().filter_map(|letter| letter.to_digit(16)).map(|digit| digit as u8).collect();
    digits.as_chunks().0.iter().map(|[high, low]| high << 4 | low).collect()
}
