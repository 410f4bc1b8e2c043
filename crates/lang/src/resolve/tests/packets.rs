//! Messages of Ethernet and of single-wire networks: what they can be recognised by, and whether they can be told apart.

use super::*;

const NETWORKS: &str = "network e ethernet 100 Mbit/s\nnetwork k kline 10400 bit/s\n";

/// The rules that frames with these recognitions break.
fn of(recognitions: &[&str]) -> Vec<Rule> {
    let mut text = NETWORKS.to_owned();
    for (number, recognition) in recognitions.iter().enumerate() {
        text.push_str(&format!("frame f{number} on {recognition}\n"));
    }
    let rules = rules(&check_text("test.lore", &text));
    rules.into_iter().filter(|rule| *rule != Rule::NetworkUnused).collect()
}

#[test]
fn descriptions_that_state_as_much_must_not_meet() {
    for (one, other) in [
        ("e doip 0x8001 from 0x0E00", "e doip 0x8001 to 0x1001"),
        ("k from 0x10", "k to 0xF1"),
        ("k to 0xF1", "k starts 0x41"),
        ("k from 0x10 starts 0x41", "k to 0xF1 starts 0x41"),
        ("k from 0x10 to 0xF1", "k starts 0x41 0x0C"),
        ("k from 0x10 to 0xF1 starts 0x41", "k from 0x10 starts 0x41 0x0C"),
        ("k any message", "k any message"),
    ] {
        assert_eq!(of(&[one, other]), [Rule::IdTaken], "{one}, {other}");
        assert_eq!(of(&[other, one]), [Rule::IdTaken], "{other}, {one}");
    }
    for apart in [
        ["e doip 0x8001 from 0x0E00", "e doip 0x8002 to 0x1001"],
        ["e doip 0x8001 from 0x0E00", "e doip 0x8001 from 0x0E01"],
        ["e doip 0x8001 from 0x0E00", "e doip 0x8001"],
        ["k from 0x10 starts 0x41", "k to 0xF1 starts 0x42"],
        ["k from 0x10 to 0xF1", "k from 0x11 starts 0x41"],
        ["k from 0x10", "k to 0xF1 starts 0x41"],
        ["k starts 0x41 0x0C", "k starts 0x41"],
    ] {
        assert_eq!(of(&apart), [], "{apart:?}");
    }
}

#[test]
fn what_two_have_in_common_may_be_described_by_itself() {
    let (sent, received) = ("e doip 0x8001 from 0x0E00", "e doip 0x8001 to 0x1001");
    assert_eq!(of(&[sent, received, "e doip 0x8001 from 0x0E00 to 0x1001"]), []);
    let other = "e doip 0x8001 from 0x0E01";
    assert_eq!(of(&[sent, received, other, "e doip 0x8001 from 0x0E00 to 0x1001"]), [Rule::IdTaken]);
    let told = check_text("test.lore", &format!("{NETWORKS}frame a on k from 0x10\nframe b on k to 0xF1\n"));
    let told = told.diagnostics.iter().find(|message| message.rule == Rule::IdTaken).expect("it is told");
    assert_eq!(told.message, "from 0x10 to 0xF1 on `k` belongs to two frames: `a` and `b`");
}

/// Addresses stand in front of the diagnostic messages only: ISO 13400-2, payload types 8001 to 8003.
#[test]
fn recognitions_that_cannot_be() {
    assert_eq!(of(&["e doip 0x0005 from 0x0E00"]), [Rule::RecognitionDoesNotFit]);
    assert_eq!(of(&["e doip 0x8004 to 0x0E00"]), [Rule::RecognitionDoesNotFit]);
    assert_eq!(of(&["e doip 0x0005", "e doip 0x8003 to 0x0E00"]), []);
    assert_eq!(of(&[&format!("k starts{}", " 0x41".repeat(64))]), []);
    assert_eq!(of(&[&format!("k starts{}", " 0x41".repeat(65))]), [Rule::IdTooLarge]);
}

/// Units that can claim no address, and requests before a claim, come from 254: SAE J1939-81, from memory.
#[test]
fn a_parameter_group_may_come_from_nobody() {
    let frame = |source: u32| rules(&on_can(&format!("frame f on n pgn 60928 from {source}\n")));
    assert_eq!(frame(254), []);
    assert_eq!(frame(255), [Rule::PgnImpossible]);
    assert_eq!(rules(&on_can("ecu a on n, address 254\nframe f on n pgn 60928 from a\n")), [Rule::PgnImpossible]);
}
