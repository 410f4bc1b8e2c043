//! Which byte order is expected where.

use super::*;

fn of_file(head: &str, network: &str, frame: &str) -> Vec<Rule> {
    let text = format!("{head}\nnetwork n can 250 kbit/s{network}\nframe f on n {frame}\n");
    rules(&check_text("order.lore", &text))
}

#[test]
fn the_nearest_statement_counts() {
    let bad = [Rule::OrderContradictsEnds];
    assert_eq!(of_file("", "", "id 1 { signal s in bytes 0..1 }"), []);
    assert_eq!(of_file("order intel", "", "id 1 { signal s in bytes 0..1 }"), bad);
    assert_eq!(of_file("", ", order intel", "id 1 { signal s in bytes 0..1 }"), bad);
    assert_eq!(of_file("order intel", ", order motorola", "id 1 { signal s in bytes 0..1 }"), []);
    assert_eq!(of_file("order intel", "", "id 1 { order motorola\n signal s in bytes 0..1 }"), []);
    assert_eq!(
        of_file("order intel", "", "id 1 { order mixed\n signal s in bytes 0..1\n signal t in bytes 3..2 }"),
        []
    );
}

#[test]
fn parameter_groups_are_intel_unless_something_else_is_said() {
    let bad = [Rule::OrderContradictsEnds];
    assert_eq!(of_file("", "", "pgn 65265 { signal s in bytes 1..2 }"), bad);
    assert_eq!(of_file("", "", "pgn 65265 { signal s in bytes 2..1 }"), []);
    assert_eq!(of_file("", "", "pgn 65265 { order mixed\n signal s in bytes 1..2 }"), []);
    assert_eq!(of_file("order motorola", "", "pgn 65265 { signal s in bytes 1..2 }"), []);
    let text =
        "network n can 250 kbit/s\nframe f on n pgn 65265 {\n    counting from 1\n    signal s in bytes 2..3\n}\n";
    let checked = check_text("order.lore", text);
    assert_eq!(checked.diagnostics[0].fix.as_ref().expect("a fix").text, "bytes 3..2");
    assert!(checked.diagnostics[0].help[0].contains("`bytes 3..2`"));
}

#[test]
fn an_odd_one_out_is_told() {
    let three = "signal a in bytes 1..0\n signal b in bytes 3..2\n signal c in bytes 5..4\n";
    assert_eq!(of_file("", "", &format!("id 1 {{ {three} signal d in bytes 6..7 }}")), [Rule::OrderOddOneOut]);
    assert_eq!(of_file("", "", &format!("id 1 {{ {three} signal d in bytes 6..7 motorola }}")), []);
    assert_eq!(of_file("", "", &format!("id 1 {{ order mixed\n {three} signal d in bytes 6..7 }}")), []);
    assert_eq!(
        of_file("", "", "id 1 { signal a in bytes 1..0\n signal b in bytes 3..2\n signal d in bytes 6..7 }"),
        [],
        "too few to tell"
    );
}

#[test]
fn a_swapped_place_causes_no_overlap_besides() {
    assert_eq!(
        of_file("order intel", "", "id 1 { signal a in bits 0.3..1.0\n signal b in bits 0.7..0.0 }"),
        [Rule::OrderContradictsEnds]
    );
}
