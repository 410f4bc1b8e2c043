//! The tables of the language page say what the code says.

use std::fmt::Write as _;

use super::pages::{is_blessing, path, read};
use wirelore_bits::Crc;
use wirelore_bits::sums::ByteSum;
use wirelore_lang::Rule;
use wirelore_model::unit::{known_units, recognise, symbols};
use wirelore_model::{Unit, unit::Dimension};

/// Compares the table of a name on the page with how it should be.
fn assert_table(name: &str, wanted: &str) {
    let page = read("language.md");
    let opening = format!("<!-- table: {name} -->\n");
    let start = page.find(&opening).expect("the table's opening mark") + opening.len();
    let end = start + page[start..].find("<!-- end of table -->").expect("the table's closing mark");
    if is_blessing() {
        let blessed = format!("{}{wanted}{}", &page[..start], &page[end..]);
        std::fs::write(path("language.md"), blessed).expect("the page can be written");
    } else {
        assert_eq!(&page[start..end], wanted, "the table `{name}` of schema/language.md");
    }
}

#[test]
fn units_are_those_of_the_model() {
    let mut dimensions: Vec<Dimension> = Vec::new();
    for unit in known_units() {
        if !dimensions.contains(&unit.dimension()) {
            dimensions.push(unit.dimension());
        }
    }
    let mut table = String::from("| what it measures | units |\n| --- | --- |\n");
    for dimension in dimensions {
        let units: Vec<_> = known_units().filter(|unit| unit.dimension() == dimension).map(with_spellings).collect();
        let units: Vec<_> = units.into_iter().flatten().collect();
        writeln!(table, "| {} | {} |", dimension.in_words(), units.join(", ")).expect("a string takes everything");
    }
    assert_table("units", &table);
}

/// A unit and its other spellings; nothing for the plain number, which is never written.
fn with_spellings(unit: wirelore_model::unit::KnownUnit) -> Option<String> {
    let mut spellings: Vec<_> =
        symbols().iter().filter(|text| recognise(text).is_some_and(|found| found.unit == unit)).collect();
    let symbol = spellings.iter().position(|text| **text == unit.symbol())?;
    let symbol = spellings.remove(symbol);
    assert_eq!(Unit::known(symbol), Some(unit.into()));
    spellings.sort_unstable();
    let others: Vec<_> = spellings.iter().map(|text| format!("`{text}`")).collect();
    Some(if others.is_empty() { format!("`{symbol}`") } else { format!("`{symbol}` ({})", others.join(", ")) })
}

#[test]
fn rules_are_those_of_the_code() {
    let mut table = String::from("| rule | grade | what it says |\n| --- | --- | --- |\n");
    for rule in Rule::ALL {
        let (name, level, summary) = (rule.name(), rule.level().word(), rule.page().summary);
        writeln!(table, "| [`{name}`](../crates/lang/rules/{name}.md) | {level} | {summary} |")
            .expect("a string takes everything");
    }
    assert_table("rules", &table);
}

/// One row of the checksum table.
fn row(name: &str, cells: &[String]) -> String {
    format!("| `{name}` | {} |", cells.join(" | "))
}

#[test]
fn checksums_are_those_of_the_core() {
    // Names and parameters: the public catalogue of parametrised CRC algorithms.
    let crcs = [
        ("crc8_sae_j1850", "CRC-8/SAE-J1850", Crc::SAE_J1850),
        ("crc8_autosar", "CRC-8/AUTOSAR", Crc::AUTOSAR_8),
        ("crc16_ibm_3740", "CRC-16/IBM-3740", Crc::IBM_3740),
        ("crc16_arc", "CRC-16/ARC", Crc::ARC),
        ("crc32_iso_hdlc", "CRC-32/ISO-HDLC", Crc::ISO_HDLC),
        ("crc32_autosar", "CRC-32/AUTOSAR", Crc::AUTOSAR_32),
        ("crc64_xz", "CRC-64/XZ", Crc::XZ_64),
    ];
    let page = read("language.md");
    for (name, published, crc) in crcs {
        let of = crc.parameters();
        let digits = usize::from(of.width / 4);
        let hex = |value: u64| format!("0x{value:0digits$X}");
        let reflected = if of.refin && of.refout { "yes" } else { "no" };
        let check = crc.checksum(b"123456789");
        let cells = [
            of.width.to_string(),
            published.into(),
            hex(of.poly),
            hex(of.init),
            reflected.into(),
            hex(of.xorout),
            hex(check),
        ];
        let wanted = row(name, &cells);
        assert!(page.contains(&wanted), "schema/language.md lacks the row\n{wanted}");
    }
    let sums = [
        ("xor8", ByteSum::XOR),
        ("sum8", ByteSum::WRAPPING),
        ("inverted_sum8", ByteSum::WRAPPING.inverted()),
        ("inverted_carry_sum8", ByteSum::END_AROUND.inverted()),
        ("nibble4", ByteSum::WRAPPING.folded()),
    ];
    for (name, sum) in sums {
        let line = page.lines().find(|line| line.starts_with(&format!("| `{name}` | {} |", sum.width())));
        let line = line.unwrap_or_else(|| panic!("schema/language.md has no row for `{name}`"));
        let check = format!("| 0x{:X} |", sum.checksum(b"123456789"));
        assert!(line.ends_with(&check), "{line}\nshould end with {check}");
    }
}

/// The words of MOST operations mean the numbers that the page says.
#[test]
fn operations_are_those_of_the_compiler() {
    let page = read("language.md");
    let start = page.find("| number | of a property | of a method |").expect("the table of operations");
    let rows = page[start..].lines().skip(2).take_while(|line| line.starts_with('|'));
    let mut words = 0;
    for row in rows {
        let cells: Vec<_> = row.trim_matches('|').split('|').map(|cell| cell.trim().trim_matches('`')).collect();
        let number: u8 = cells[0].parse().expect("a number");
        for word in cells[1..].iter().filter(|word| !word.is_empty()) {
            let text = format!("network n most\nframe f on n function 0x22.any.0x0D2 operation {word}\n");
            let checked = wirelore_lang::check_text("table.lore", &text);
            let database = checked.database.unwrap_or_else(|| panic!("{word}: {:?}", checked.diagnostics));
            let identifier = &database.frames[0].seen_on[0].identifier;
            assert!(
                matches!(identifier, wirelore_model::Identifier::Most { operation, .. } if *operation == Some(number)),
                "{word}"
            );
            words += 1;
        }
    }
    assert_eq!(words, 22, "all words, `error` twice");
}
