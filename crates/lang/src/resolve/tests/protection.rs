//! Protected frames, and what goes into a checksum beside the bytes it covers.

use wirelore_bits::e2e::{DataId, Profile};
use wirelore_model::{ByteSpan, ChecksumAlgorithm, CrcRule, MixedByte, Protection, Role, SignalId};

use super::*;

/// The check of a frame of 16 bytes with these statements.
fn frame(statements: &str) -> Checked {
    check_text(
        "frame.lore",
        &format!("network n can_fd 500 kbit/s\nframe f on n id 1 {{\n length 16\n{statements}\n}}\n"),
    )
}

fn protection(statements: &str) -> Protection {
    let checked = frame(statements);
    let signals = &database(&checked).frames[0].signals;
    let found = signals.iter().find_map(|signal| Some((signal, signal.protection()?)));
    let (signal, protection) = found.expect("a protection");
    assert_eq!(signal.label.name, "protection");
    protection.clone()
}

#[test]
fn a_protection_has_what_is_said_and_else_the_whole_frame() {
    assert_eq!(
        protection("protected by e2e 1 alternating, data id 0x123"),
        Protection {
            profile: Profile::P01Alternating,
            data_id: DataId::One(0x123),
            header: 0,
            over: ByteSpan { first: 0, last: None },
            most_rise: 1,
        }
    );
    assert_eq!(
        protection("protected by e2e 5, delta up to 4, over bytes 2..last, data id 7, at byte 8"),
        Protection {
            profile: Profile::P05,
            data_id: DataId::One(7),
            header: 8,
            over: ByteSpan { first: 2, last: Some(15) },
            most_rise: 4,
        }
    );
    // Without a place, the header is at the front of what is covered; bytes are counted as everywhere.
    let counted = protection("counting from 1\nprotected by e2e 6, data id 7, over bytes 3..10");
    assert_eq!((counted.header, counted.over), (2, ByteSpan { first: 2, last: Some(9) }));
    let listed = protection(
        "protected by e2e 22, data ids 1, 2, 3, 4, 5, 6, 7, 8,\n 9, 10, 11, 12, 13, 14, 15, 0xFF, at byte 3",
    );
    assert_eq!(listed.data_id.at(15), 0xFF);
    assert_eq!(listed.header, 3);
}

#[test]
fn what_cannot_be_protected_so_gets_one_message() {
    for (statements, rule) in [
        ("protected by e2e 3, data id 1", Rule::UnknownProfile),
        ("protected by e2e 11, data id 1", Rule::UnknownProfile),
        ("protected by e2e 11 low, data id 1", Rule::UnknownProfile),
        ("protected by e2e 5 both, data id 1", Rule::UnknownProfile),
        ("protected by e2e 5", Rule::DataIdWrong),
        ("protected by e2e 5, data ids 1, 2", Rule::DataIdWrong),
        ("protected by e2e 2, data id 1", Rule::DataIdWrong),
        ("protected by e2e 1 nibble, data id 0x1000", Rule::DataIdWrong),
        ("protected by e2e 1 both, data id -1", Rule::DataIdWrong),
        ("protected by e2e 1 both, data id 1, delta up to 0", Rule::DeltaImpossible),
        ("protected by e2e 1 both, data id 1, delta up to 15", Rule::DeltaImpossible),
        ("protected by e2e 4, data id 1, at byte 2, over bytes 0..12", Rule::ProtectionPlace),
        ("protected by e2e 4, data id 1, at byte 2, over bytes 3..15", Rule::ProtectionPlace),
        (
            "protected by e2e 2, data ids 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, at byte 1",
            Rule::ProtectionPlace,
        ),
        ("protected by e2e 7, data id 1", Rule::OutsideFrame),
        ("protected by e2e 5, data id 1, at byte 14", Rule::OutsideFrame),
        ("protected by e2e 5, data id 1, over bytes 0..16", Rule::OutsideFrame),
        ("protected by e2e 5, data id 1\nprotected by e2e 6, data id 1, at byte 4", Rule::ProtectionTwice),
        ("protected by e2e 5, data id 1\nsignal s in byte 1", Rule::SignalOverlap),
        ("signal s in byte 11\nprotected by e2e 4, data id 1", Rule::SignalOverlap),
        ("protected by e2e 1 nibble, data id 1\nsignal s in bits 1.7..1.4", Rule::SignalOverlap),
        ("signal protection in byte 9\nprotected by e2e 5, data id 1", Rule::NameTaken),
        ("protected by e2e 5, data id 1, data id 2", Rule::RepeatedClause),
        ("signal p in byte 9\nwhen p is 1 {\n protected by e2e 5, data id 1\n}", Rule::UnexpectedWord),
    ] {
        assert_eq!(rules(&frame(statements)), [rule], "{statements}");
    }
    let in_layout = check_text("layout.lore", "allow layout-unused\nlayout l {\n protected by e2e 5, data id 1\n}\n");
    assert_eq!(rules(&in_layout), [Rule::UnknownStatement]);
    // Where the id is not sent, its half byte belongs to the frame.
    assert_eq!(rules(&frame("protected by e2e 1 both, data id 1\nsignal s in bits 1.7..1.4")), []);
}

#[test]
fn bytes_that_are_mixed_in() {
    let checked = frame(
        "signal check in byte 15, checksum crc width 8 poly 0x9B start 0xFF reflected over bytes 0..13 first bytes 0x5A id 1 then bytes signal later id 0\n\
         signal later in bits 14.3..14.0",
    );
    let Role::Checksum(checksum) = &database(&checked).frames[0].signals[0].role else { panic!("a checksum") };
    assert_eq!(
        checksum.algorithm,
        ChecksumAlgorithm::Crc(CrcRule { width: 8, poly: 0x9B, start: 0xFF, xor: 0, reflected: true })
    );
    assert_eq!(checksum.first, [MixedByte::Byte(0x5A), MixedByte::Identifier(1)]);
    assert_eq!(checksum.then, [MixedByte::Signal(SignalId(1)), MixedByte::Identifier(0)]);

    let sum = "signal c in byte 0, checksum sum8 over bytes 1..2 then bytes";
    for (mixed, rule) in [
        ("256", Rule::ChecksumWidth),
        ("id 4", Rule::ChecksumWidth),
        ("signal c", Rule::ChecksumWidth),
        ("signal s\nsignal s in bytes 4..5", Rule::ChecksumWidth),
        ("signal s\nsignal s in bytes 4..5 text", Rule::ChecksumWidth),
        ("signal s", Rule::UnknownSignal),
        ("signal s\nsignal p in byte 3\nwhen p is 1 {\n signal s in byte 4\n}", Rule::UnknownSignal),
    ] {
        assert_eq!(rules(&frame(&format!("{sum} {mixed}"))), [rule], "{mixed}");
    }
}

#[test]
fn not_every_network_has_bytes_of_an_identifier() {
    let on = |kind: &str, recognition: &str, statements: &str| {
        check_text("net.lore", &format!("network n {kind}\nframe f on n {recognition} {{\n{statements}\n}}\n"))
    };
    let sum = "signal s in byte 0, checksum sum8 over bytes 1..2 then bytes id 0";
    assert_eq!(rules(&on("ethernet", "udp port 1000", sum)), [Rule::KindDoesNotFit]);
    assert_eq!(rules(&on("lin 19.2 kbit/s", "id 3", sum)), [Rule::NoCommander]);
}

#[test]
fn parameters_that_make_no_crc() {
    for parameters in
        ["width 0 poly 1", "width 65 poly 1", "width 8 poly 0x11D", "width 8 poly 7 start 0x100", "width 8 poly -1"]
    {
        let checked = frame(&format!("signal c in byte 0, checksum crc {parameters} over bytes 1..2"));
        assert_eq!(rules(&checked), [Rule::ChecksumWidth], "{parameters}");
    }
    assert_eq!(
        rules(&frame("signal c in byte 0, checksum crc width 16 poly 0x1021 over bytes 1..2")),
        [Rule::ChecksumWidth]
    );
}

#[test]
fn the_house_layout_keeps_a_protection() {
    let text = "network n can 500 kbit/s\n\nframe f on n id 1 {\n    protected by e2e 5, data id 7, at byte 2, over bytes 0..7, delta up to 3\n}\n";
    let untidy = text.replace("    protected by", "protected   by").replace(", at", " ,at");
    assert_eq!(crate::format::format(&untidy).as_deref(), Ok(text));
}
