//! Every example on the language page does what the page says of it.

use super::pages::{Block, blocks, is_blessing, path, read, wrapped};
use wirelore_bits::{BitPosition, ByteOrder, Encoding, Extractor, Field, Number, NumberKind, Place};
use wirelore_lang::{Checked, Level, MemoryLoader, check, render};

/// Checks a text; other blocks of the page can be its neighbours.
fn checked(text: &str, neighbours: &[(&str, &str)]) -> Checked {
    let loader = MemoryLoader::default().with("kestrel.lore", text);
    let loader = neighbours.iter().fold(loader, |loader, (path, text)| loader.with(path, *text));
    check(&["kestrel.lore"], &loader)
}

/// The messages of a grade, one a line.
fn messages(checked: &Checked, of: impl Fn(Level) -> bool) -> Vec<String> {
    let told = checked.diagnostics.iter().filter(|message| of(message.level()));
    told.map(|message| format!("{} [{}]", message.message, message.rule.name())).collect()
}

#[test]
fn complete_files_pass_without_a_warning() {
    let page = read("language.md");
    let mut neighbours: Vec<(String, String)> = Vec::new();
    let mut count = 0;
    for Block { info, text, line } in blocks(&page) {
        let Some(name) = info.strip_prefix("lore") else { continue };
        let text = match name.trim() {
            "wrong" => continue,
            "part" => wrapped(&text),
            "" => text,
            path => {
                neighbours.push((path.to_owned(), text.clone()));
                text
            }
        };
        let around: Vec<_> = neighbours.iter().map(|(path, text)| (path.as_str(), text.as_str())).collect();
        let found = messages(&checked(&text, &around), |level| level > Level::Hint);
        assert!(found.is_empty(), "schema/language.md, the block of line {line} is said to be right:\n{found:#?}");
        count += 1;
    }
    assert!(count >= 30, "only {count} examples found on the page");
}

#[test]
fn wrong_files_are_refused() {
    let page = read("language.md");
    let wrong: Vec<_> = blocks(&page).into_iter().filter(|block| block.info == "lore wrong").collect();
    assert!(wrong.len() >= 3, "only {} wrong examples found on the page", wrong.len());
    for Block { text, line, .. } in wrong {
        let found = messages(&checked(&text, &[]), |level| level == Level::Error);
        assert!(!found.is_empty(), "schema/language.md, the block of line {line} is said to be wrong and passes");
    }
}

#[test]
fn answers_are_those_of_the_program() {
    let mut page = read("language.md");
    let blocks = blocks(&page);
    let answered: Vec<_> = blocks.windows(2).filter(|pair| pair[1].info == "message").collect();
    assert!(answered.len() >= 2, "only {} answers found on the page", answered.len());
    for pair in answered {
        assert_eq!(pair[0].info, "lore wrong", "schema/language.md, line {}: an answer to nothing", pair[1].line);
        let checked = checked(&pair[0].text, &[]);
        let answer = render::text(&checked.sources, &checked.diagnostics, false);
        if is_blessing() {
            page = page.replace(&pair[1].text, &answer);
        } else {
            assert_eq!(pair[1].text, answer, "schema/language.md, line {}", pair[1].line);
        }
    }
    if is_blessing() {
        std::fs::write(path("language.md"), page).expect("the page can be written");
    }
}

#[test]
fn fences_are_of_known_kinds() {
    for Block { info, line, .. } in blocks(&read("language.md")) {
        let known = matches!(info.as_str(), "text" | "bytes" | "message" | "lore" | "lore wrong" | "lore part")
            || info.ends_with(".lore");
        assert!(known, "schema/language.md, line {line}: no test looks at blocks marked `{info}`");
    }
}

fn position(text: &str) -> BitPosition {
    text.parse().unwrap_or_else(|_| panic!("`{text}` is no BYTE.BIT"))
}

/// Draws a place as the page does: each bit of the signal with its number.
fn drawn(place: &Place) -> String {
    let order = match place.order() {
        ByteOrder::Intel => "Intel",
        ByteOrder::Motorola => "Motorola",
    };
    let bits: Vec<_> = place.positions().collect();
    let mut lines = vec![
        format!("bits {}.{}..{}.{}", place.msb().byte, place.msb().bit, place.lsb().byte, place.lsb().bit),
        format!("{order}, {} bits", place.width()),
        format!("        {}", (0..8).rev().map(|bit| format!("{bit:3}")).collect::<String>()),
    ];
    for byte in place.first_byte()..=place.last_byte() {
        let cells = (0..8).rev().map(|bit| match bits.iter().position(|&at| at == BitPosition::new(byte, bit)) {
            Some(index) => format!("{:3}", bits.len() - 1 - index),
            None => "  .".to_owned(),
        });
        lines.push(format!("byte {byte}  {}", cells.collect::<String>()));
    }
    lines.join("\n") + "\n"
}

#[test]
fn drawings_of_bytes_are_right() {
    let drawings: Vec<_> = blocks(&read("language.md")).into_iter().filter(|block| block.info == "bytes").collect();
    assert!(drawings.len() >= 3);
    for Block { text, line, .. } in drawings {
        let ends = text
            .lines()
            .next()
            .and_then(|first| first.strip_prefix("bits ")?.split_once(".."))
            .expect("a place in the first line");
        let place = Place::between(position(ends.0), position(ends.1)).expect("a place");
        assert_eq!(text, drawn(&place), "schema/language.md, line {line}");
    }
}

/// The cells of the table rows whose second cell is of the given form, without the backquotes.
fn rows<'a>(page: &'a str, section: &str) -> impl Iterator<Item = Vec<String>> + use<'a> {
    let start = page.find(section).unwrap_or_else(|| panic!("no section `{section}`"));
    let section = &page[start + section.len()..];
    let section = section.split("\n#").next().unwrap_or(section);
    let cells = |line: &str| line.trim_matches('|').split('|').map(|cell| cell.trim().replace('`', "")).collect();
    section.lines().filter(|line| line.starts_with("| ")).map(cells)
}

#[test]
fn the_byte_order_mistake_looks_as_described() {
    let page = read("language.md");
    let read_as = |msb: u32, lsb: u32, payload: &[u8]| {
        let place = Place::between(BitPosition::new(msb, 7), BitPosition::new(lsb, 0)).expect("two bytes");
        Extractor::new(&Field::from(place)).extract(payload).expect("two bytes") as f64 * 0.05
    };
    let mut count = 0;
    for row in rows(&page, "\n### The byte order mistake").filter(|row| row[0].ends_with(" km/h")) {
        let payload: Vec<u8> = row[1].split(' ').map(|byte| u8::from_str_radix(byte, 16).expect("a byte")).collect();
        assert_eq!(row[0], format!("{:.2} km/h", read_as(1, 0, &payload)));
        assert_eq!(row[2], format!("{:.2}", read_as(1, 0, &payload)));
        assert_eq!(row[3], format!("{:.2}", read_as(0, 1, &payload)));
        count += 1;
    }
    assert_eq!(count, 6);
}

#[test]
fn kinds_of_number_read_as_described() {
    let page = read("language.md");
    let kinds = [
        ("unsigned", NumberKind::Unsigned),
        ("signed", NumberKind::Signed),
        ("sign_magnitude", NumberKind::SignMagnitude),
        ("bcd", NumberKind::Bcd),
    ];
    let table: Vec<_> = rows(&page, "\n### Kinds of number").collect();
    for (word, kind) in kinds {
        let row = table.iter().find(|row| row[0] == word).expect("a row for each kind");
        let encoding = Encoding::new(kind, 8).expect("8 bits suit every one of these");
        assert_eq!(encoding.number(0b1001_0110), Ok(Number::Integer(row[3].parse().expect("a number"))), "{word}");
    }
}
