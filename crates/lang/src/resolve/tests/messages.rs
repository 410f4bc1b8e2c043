//! Messages that are longer than the frames which carry them.

use super::*;

fn on_truck(clauses: &str, body: &str) -> Checked {
    check_text("test.lore", &format!("network t can 250 kbit/s\nframe f on t {clauses} {{\n{body}\n}}\n"))
}

#[test]
fn an_open_end_reaches_to_the_end_of_the_message() {
    let body = "signal rest in bytes 3..end bytes\nsignal late in byte 80";
    assert_eq!(rules(&on_truck("id 0x7E8, carried by iso_tp", body)), [Rule::SignalOverlap]);
    assert_eq!(rules(&on_truck("id 0x7E8, carried by iso_tp", &format!("length 8..64\n{body}"))), [Rule::OutsideFrame]);
    assert_eq!(rules(&on_truck("id 0x7E8, carried by iso_tp", "length 0..3\nsignal rest in bytes 2..end bytes")), []);
}

/// A message of SAE J1939-21 has up to 1785 bytes: 255 packets of 7 bytes.
#[test]
fn what_a_transport_cannot_carry_is_told_at_its_place() {
    let carried = |body: &str| rules(&on_truck("pgn 65226, carried by j1939_tp", body));
    assert_eq!(carried("signal a in byte 1784"), []);
    assert_eq!(carried("signal a in byte 1785"), [Rule::OutsideFrame]);
    assert_eq!(carried("length 8..1785"), []);
    assert_eq!(carried("length 8..1786"), [Rule::FrameTooLong]);
    assert_eq!(carried("signal a in byte 0\nwhen a is 1 { length 1786 }"), [Rule::FrameTooLong]);
}
