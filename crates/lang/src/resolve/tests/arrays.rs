//! Signals that sit there several times.

use super::*;

fn elements(declaration: &str) -> Vec<String> {
    let checked = check_text(
        "array.lore",
        &format!("network n can_fd 500 kbit/s\nframe f on n id 1 {{\n    {declaration}\n}}\n"),
    );
    database(&checked).frames[0]
        .signals
        .iter()
        .map(|signal| format!("{} {}", signal.label.name, ends(signal)))
        .collect()
}

#[test]
fn steps_of_bytes() {
    assert_eq!(
        elements("signal cell[1..3] in bytes 0..1 step 2 bytes"),
        ["cell[1] 0.7..1.0", "cell[2] 2.7..3.0", "cell[3] 4.7..5.0"]
    );
    assert_eq!(
        elements("signal cell[0..2] in bytes 1..0 step 3 bytes"),
        ["cell[0] 1.7..0.0", "cell[1] 4.7..3.0", "cell[2] 7.7..6.0"]
    );
    assert_eq!(
        elements("signal name[7..8] in bytes 0..3 step 4 bytes text"),
        ["name[7] 0..Some(3)", "name[8] 4..Some(7)"]
    );
    assert_eq!(elements("signal only[5..5] in byte 3"), ["only[5] 3.7..3.0"]);
}

#[test]
fn steps_of_bits_go_on_in_the_signals_own_order() {
    assert_eq!(
        elements("signal v[1..3] in bits 1.3..0.0 step 12 bits"),
        ["v[1] 1.3..0.0", "v[2] 2.7..1.4", "v[3] 4.3..3.0"]
    );
    assert_eq!(
        elements("signal v[1..3] in bits 0.7..1.4 step 12 bits"),
        ["v[1] 0.7..1.4", "v[2] 1.3..2.0", "v[3] 3.7..4.4"]
    );
    assert_eq!(
        elements("signal v[1..3] in lsb 0 width 5 intel step 5 bits"),
        ["v[1] 0.4..0.0", "v[2] 1.1..0.5", "v[3] 1.6..1.2"]
    );
    assert_eq!(
        elements("signal v[1..3] in bits 0.7..0.3 motorola step 5 bits"),
        ["v[1] 0.7..0.3", "v[2] 0.2..1.6", "v[3] 1.5..1.1"]
    );
    assert_eq!(
        elements("order motorola\n    signal v[1..2] in bit 0.0 step 1 bits"),
        ["v[1] 0.0..0.0", "v[2] 1.7..1.7"]
    );
    assert_eq!(
        elements("signal v[1..2] in bit 0.0 step 8 bits"),
        ["v[1] 0.0..0.0", "v[2] 1.0..1.0"],
        "whole bytes need no order"
    );
}

#[test]
fn what_is_no_array() {
    let rule =
        |declaration: &str| rules(&on_can(&format!("frame f on n id 1 {{\n    length 8\n    {declaration}\n}}\n")));
    assert_eq!(rule("signal v[1..2] in bit 0.3 step 1 bits"), [Rule::OrderMissing]);
    assert_eq!(rule("signal v[1..2] in byte 0"), [Rule::StepMissing]);
    assert_eq!(rule("signal v[1..2] in byte 0 step 0 bytes"), [Rule::StepMissing]);
    assert_eq!(rule("signal v[2..1] in byte 0 step 1 bytes"), [Rule::RangeUpsideDown]);
    assert_eq!(rule("signal v in byte 0 step 1 bytes"), [Rule::UnexpectedWord]);
    assert_eq!(rule("signal v[1..4000000000] in byte 0 step 1 bytes"), [Rule::ArrayTooLarge]);
    assert_eq!(rule("signal v[1..4097] in byte 0 step 1 bytes"), [Rule::ArrayTooLarge]);
    assert_eq!(
        rule("signal v[1..9] in byte 0 step 1 bytes"),
        [Rule::OutsideFrame],
        "one message for all elements beyond the end"
    );
    assert_eq!(rule("signal v[1..3] in bytes 1..0 step 1 bytes"), [Rule::SignalOverlap], "a step that is too small");
    assert_eq!(rule("signal v[1..2] in byte 0 step 1 bytes, checksum xor8 over bytes 4..5"), [Rule::KindDoesNotFit]);
}
