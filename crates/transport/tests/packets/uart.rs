//! Single-wire messages: headers of ISO 14230-2 and ISO 9141-2.

use proptest::prelude::*;
use wirelore_transport::uart::{
    Addressing, BYTE_NS, Check, CheckByte, Cutter, Event, Form, GAP_NS, P1_MAX_NS, Size, TelegramForm, UartFault,
    write_kline,
};

use super::hex;

const TESTER: u8 = 0xF1;
const ASKED: Addressing = Addressing::Iso9141 { format: 0x68 };
const ANSWERED: Addressing = Addressing::Iso9141 { format: 0x48 };

type Printed = (&'static str, Addressing, Option<(u8, u8)>, &'static str);

/// Requests and answers; target, source and data. The first is printed in public descriptions of the fast initialisation of
/// ISO 14230-2; the others are put together from the headers of ISO 14230-2 and ISO 9141-2 (from memory) with the check byte as the sum.
fn printed() -> Vec<Printed> {
    let (physical, functional) = (Addressing::Physical, Addressing::Functional);
    vec![
        ("C1 33 F1 81 66", functional, Some((0x33, TESTER)), "81"),
        ("83 F1 11 C1 8F EF C4", physical, Some((TESTER, 0x11)), "C1 8F EF"),
        ("81 11 F1 81 04", physical, Some((0x11, TESTER)), "81"),
        ("C2 33 F1 01 00 E7", functional, Some((0x33, TESTER)), "01 00"),
        ("C2 33 F1 01 0C F3", functional, Some((0x33, TESTER)), "01 0C"),
        ("84 F1 10 41 0C 1A F8 E4", physical, Some((TESTER, 0x10)), "41 0C 1A F8"),
        ("02 1A 90 AC", Addressing::Absent, None, "1A 90"),
        ("68 6A F1 01 00 C4", ASKED, Some((0x6A, TESTER)), "01 00"),
        ("68 6A F1 01 0C D0", ASKED, Some((0x6A, TESTER)), "01 0C"),
        ("48 6B 10 41 0C 1A F8 22", ANSWERED, Some((0x6B, 0x10)), "41 0C 1A F8"),
    ]
}

#[test]
fn printed_messages_are_read_and_written() {
    for (text, addressing, addresses, data) in printed() {
        let (bytes, data) = (hex(text), hex(data));
        let parts = Form::Kline.read(&bytes).expect(text);
        assert_eq!((parts.addressing, parts.check), (Some(addressing), Check::Right), "{text}");
        assert_eq!(parts.target.zip(parts.source), addresses, "{text}");
        assert_eq!(bytes[parts.data], data, "{text}");
        let mut written = Vec::new();
        assert!(write_kline(addressing, addresses.unwrap_or_default(), &data, &mut written));
        assert_eq!(written, bytes);
    }
}

/// With a length byte of its own (ISO 14230-2, from memory): 64 data bytes 00 to 3F.
#[test]
fn a_length_byte_of_its_own() {
    let data: Vec<u8> = (0..64).collect();
    let mut bytes = hex("80 11 F1 40");
    bytes.extend(&data);
    bytes.push(0xA2);
    let parts = Form::Kline.read(&bytes).expect("a message");
    assert_eq!((parts.data.clone(), parts.check), (4..68, Check::Right));
    let mut written = Vec::new();
    assert!(write_kline(Addressing::Physical, (0x11, 0xF1), &data, &mut written));
    assert_eq!(written, bytes);
    assert!(!write_kline(Addressing::Physical, (0x11, 0xF1), &[0; 256], &mut written));
    assert!(!write_kline(Addressing::Physical, (0x11, 0xF1), &[], &mut written));
}

#[test]
fn what_is_wrong_is_told() {
    let read = |text| Form::Kline.read(&hex(text));
    assert_eq!(read("C2 33 F1 01 00").map(|_| ()), Err(UartFault::TooShort { held: 5, wanted: 6 }));
    assert_eq!(read("80 33 F1").map(|_| ()), Err(UartFault::TooShort { held: 3, wanted: 4 }));
    assert_eq!(read("").map(|_| ()), Err(UartFault::TooShort { held: 0, wanted: 1 }));
    assert_eq!(read("68 6A F1 01").map(|_| ()), Err(UartFault::TooShort { held: 4, wanted: 5 }));
    assert_eq!(read("C2 33 F1 01 00 E7 00").map(|_| ()), Err(UartFault::Trailing { bytes: 1 }));
    assert_eq!(read("80 33 F1 00 A4").map(|_| ()), Err(UartFault::LengthTooSmall { told: 0, least: 1 }));
    let wrong = read("C2 33 F1 01 00 E8").expect("its length is right").check;
    assert_eq!(wrong, Check::Wrong { found: 0xE8, computed: 0xE7 });
}

/// Source, size counted from the byte behind it, target, data, exclusive or of all: a form that such networks have (common practice, no
/// source).
const FORM: TelegramForm = TelegramForm {
    source_byte: Some(0),
    target_byte: Some(2),
    size: Some(Size { byte: 1, counts_from: 2 }),
    check: CheckByte::Xor,
};

#[test]
fn a_form_by_parameters() {
    let mut bytes = Vec::new();
    assert!(FORM.write(0x50, 0x68, &[0x32, 0x11], &mut bytes));
    assert_eq!(bytes, [0x50, 0x04, 0x68, 0x32, 0x11, 0x50 ^ 0x04 ^ 0x68 ^ 0x32 ^ 0x11]);
    let parts = Form::Telegram(FORM).read(&bytes).expect("a message");
    assert_eq!((parts.source, parts.target, parts.data, parts.check), (Some(0x50), Some(0x68), 3..5, Check::Right));
    assert_eq!(parts.addressing, None);
    bytes[1] = 1;
    let fault = UartFault::LengthTooSmall { told: 1, least: 2 };
    assert_eq!(Form::Telegram(FORM).read(&bytes), Err(fault));
    assert!(!FORM.write(0, 0, &[0; 255], &mut bytes));

    let sum = TelegramForm { check: CheckByte::Sum, size: None, ..FORM };
    let mut bytes = Vec::new();
    assert!(sum.write(0x50, 0x68, &[0xF0], &mut bytes));
    assert_eq!(bytes, [0x50, 0, 0x68, 0xF0, 0xA8]);
    let plain = TelegramForm::default();
    let parts = Form::Telegram(plain).read(&bytes).expect("a message");
    assert_eq!((parts.data, parts.check), (0..5, Check::Absent));
}

/// What the cutter told, in words.
fn cut(form: Form, runs: &[(i64, &[u8])]) -> Vec<String> {
    let mut told = Vec::new();
    let mut tell = |event: Event<'_>| {
        told.push(match event {
            Event::Message { bytes, after_damage, .. } => {
                format!("{}{bytes:02X?}", if after_damage { "after damage " } else { "" })
            }
            Event::Damaged { bytes, fault, .. } => format!("{} bytes: {fault}", bytes.len()),
        });
    };
    let mut cutter = Cutter::new(form, GAP_NS);
    for (start_ns, bytes) in runs {
        for (index, byte) in bytes.iter().enumerate() {
            cutter.byte(Some(start_ns + BYTE_NS * index as i64), *byte, &mut tell);
        }
    }
    cutter.finish(&mut tell);
    told
}

const MS: i64 = 1_000_000;

#[test]
fn messages_are_cut_by_length_and_by_pause() {
    let (asked, answered) = (hex("68 6A F1 01 0C D0"), hex("48 6B 10 41 0C 1A F8 22"));
    let told = cut(Form::Kline, &[(0, &asked), (40 * MS, &answered)]);
    assert_eq!(told, [format!("{asked:02X?}"), format!("{answered:02X?}")]);
    let (asked, answered) = (hex("C2 33 F1 01 0C F3"), hex("84 F1 10 41 0C 1A F8 E4"));
    let told = cut(Form::Kline, &[(0, &[asked.clone(), answered.clone()].concat())]);
    assert_eq!(told, [format!("{asked:02X?}"), format!("{answered:02X?}")]);
}

#[test]
fn damage_between_pauses() {
    let good = hex("C2 33 F1 01 0C F3");
    let mut wrong = good.clone();
    wrong[4] = 0x0D;
    let long = [&good[..], &[0x00, 0x42]].concat();
    let noisy = [&[0xFF, 0x00], &good[..]].concat();
    let runs: [(i64, &[u8]); 5] =
        [(0, &wrong), (100 * MS, &good[..4]), (200 * MS, &long), (300 * MS, &noisy), (400 * MS, &good)];
    let told = cut(Form::Kline, &runs);
    let good = format!("{good:02X?}");
    let wanted = [
        "6 bytes: the check byte is 0xF3, and the bytes before it make 0xF4".to_owned(),
        "4 bytes: the message has 4 bytes and needs 6".to_owned(),
        good.clone(),
        "2 bytes: 2 bytes stand behind the message".to_owned(),
        "2 bytes: the message has 8 bytes and needs 67".to_owned(),
        format!("after damage {good}"),
        good,
    ];
    assert_eq!(told, wanted);
}

#[test]
fn times_tell_where_a_message_begins_and_ends() {
    let bytes = hex("C2 33 F1 01 0C F3");
    let mut times = Vec::new();
    let mut cutter = Cutter::new(Form::Kline, GAP_NS);
    for (index, byte) in bytes.iter().enumerate() {
        cutter.byte(Some(5 * MS * index as i64), *byte, &mut |event| {
            if let Event::Message { first_ns, last_ns, .. } = event {
                times.push((first_ns, last_ns));
            }
        });
    }
    assert_eq!(times, [(Some(0), Some(25 * MS))]);
}

/// The pause that a message may have inside is P1 max, 20 ms, and the byte itself comes to it (ISO 14230-2, from memory).
#[test]
fn the_longest_pause_inside_a_message() {
    // 10 bits at 10400 bit/s, to the nanosecond.
    assert_eq!((P1_MAX_NS, BYTE_NS, GAP_NS), (20 * MS, 961_538, 20_961_538));
    let bytes = hex("C2 33 F1 01 0C F3");
    let with_pause = |distance_ns: i64| {
        let later = distance_ns + 2 * BYTE_NS;
        cut(Form::Kline, &[(0, &bytes[..3]), (later, &bytes[3..])]).len()
    };
    assert_eq!((with_pause(20 * MS + BYTE_NS), with_pause(25 * MS)), (1, 2));
}

proptest! {
    /// Messages without damage come out as they went in, with and without pauses, and without times.
    #[test]
    fn messages_come_out_as_they_went_in(
        messages in proptest::collection::vec(proptest::collection::vec(any::<u8>(), 1..100), 1..6),
        timed in any::<bool>(),
        kline in any::<bool>(),
    ) {
        let mut cutter = Cutter::new(if kline { Form::Kline } else { Form::Telegram(FORM) }, GAP_NS);
        let (mut sent, mut seen, mut time_ns) = (Vec::new(), Vec::new(), 0);
        let mut tell = |event: Event<'_>| match event {
            Event::Message { bytes, after_damage: false, .. } => seen.push(bytes.to_vec()),
            other => panic!("{other:?}"),
        };
        for data in &messages {
            let mut bytes = Vec::new();
            let is_written = if kline {
                write_kline(Addressing::Physical, (0x10, 0xF1), data, &mut bytes)
            } else {
                FORM.write(0x10, 0xF1, data, &mut bytes)
            };
            prop_assert!(is_written);
            for byte in &bytes {
                cutter.byte(timed.then_some(time_ns), *byte, &mut tell);
                time_ns += BYTE_NS;
            }
            time_ns += 30 * MS;
            sent.push(bytes);
        }
        cutter.finish(&mut tell);
        prop_assert_eq!(seen, sent);
    }

    /// Any bytes at any times: each is told once, in order.
    #[test]
    fn any_bytes_are_told_once(
        bytes in proptest::collection::vec((proptest::option::of(0i64..60 * MS), prop_oneof![Just(0xC2u8), Just(0x68), Just(1), any::<u8>()]), 0..1500),
        form in 0usize..4,
    ) {
        let by_pause = TelegramForm { size: None, ..FORM };
        let form = [Form::Kline, Form::Telegram(FORM), Form::Telegram(by_pause), Form::Telegram(TelegramForm::default())][form];
        let mut cutter = Cutter::new(form, GAP_NS);
        let (mut seen, mut time_ns) = (Vec::new(), 0);
        let mut tell = |event: Event<'_>| match event {
            Event::Message { bytes, .. } | Event::Damaged { bytes, .. } => seen.extend_from_slice(bytes),
        };
        for (pause_ns, byte) in &bytes {
            time_ns += pause_ns.unwrap_or_default();
            cutter.byte(pause_ns.map(|_| time_ns), *byte, &mut tell);
        }
        cutter.finish(&mut tell);
        prop_assert_eq!(seen, bytes.into_iter().map(|(_, byte)| byte).collect::<Vec<_>>());
    }
}
