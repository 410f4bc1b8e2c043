//! Lists in messages: as many elements as there are, trouble codes by the standards, texts of a length that is sent beside them.

use wirelore_decode::{Decoder, EncodeError, Encoded, Value, encode, parse_assignment};
use wirelore_lang::check_text;
use wirelore_model::{Database, FrameId};

const MESSAGES: &str = r#"
network truck can 250 kbit/s
network body can_fd 500 kbit/s, data 2 Mbit/s

## SAE J1939-73, DM1 as one frame (from memory of the standard).
frame dm1 on truck pgn 65226 {
    length 8
    signal mil     in bits 0.7..0.6, absent 3
    signal stop    in bits 0.5..0.4, absent 3
    signal warning in bits 0.3..0.2, absent 3
    signal protect in bits 0.1..0.0, absent 3
    signal flash   in byte 1, absent 0xFF
    repeat from byte 2 to end, up to 32 {
        signal spn in bits 2.7..2.5 then bytes 1..0, absent 0
        when spn is 1..524287 {
            signal fmi in bits 2.4..2.0
            signal cm  in bit 3.7
            signal oc  in bits 3.6..3.0
        }
    }
}

## ISO 14229-1, the answers of service 19 report 02, and ISO 15031-5, the answers of service 03 (from memory of the standards).
frame answer on body id 0x7E8 {
    signal service in byte 0
    when service is 0x59 {
        signal report in byte 1
        when report is 0x02 {
            signal mask in byte 2
            repeat from byte 3 to end, up to 15 {
                signal code   in bytes 0..2 trouble_code
                signal status in byte 3
            }
        }
    }
    when service is 0x43 {
        signal codes in byte 1
        repeat from byte 2 codes times, up to 3 {
            signal obd_code in bytes 0..1 trouble_code, states { 0x0143 catalyst }
        }
    }
    when service is 0x62 {
        signal identifier in bytes 1..2
        when identifier is 0xF190 { signal vin in bytes 3..19 text }
        otherwise { signal data in bytes 3..end bytes }
    }
}

frame song on body id 0x2C0 {
    signal title_length in byte 0
    signal title in bytes 1..12 text, size title_length
}
"#;

fn database() -> Database {
    let checked = check_text("test.lore", MESSAGES);
    let told: Vec<String> = checked.diagnostics.iter().map(|diagnostic| format!("{diagnostic:?}")).collect();
    assert!(checked.diagnostics.is_empty(), "{}", told.join("\n"));
    checked.database.expect("a database without mistakes")
}

fn named(database: &Database, frame: &str) -> FrameId {
    database.frame_named(frame).expect("it is described").0
}

/// The readings of one frame, `too short` behind them where the payload is, and the selectors without a page.
fn readings(frame: &str, payload: &[u8]) -> Vec<String> {
    let database = database();
    let decoder = Decoder::new(&database).expect("a decoder");
    let id = named(&database, frame);
    let signals = &database.frames[id.index()].signals;
    let mut all = Vec::new();
    let outcome = decoder.decode(id, payload, |signal, reading| {
        let value = match &reading.value {
            Value::Integer(number) => number.to_string(),
            Value::TroubleCode(code) => code.to_string(),
            Value::Text(text) => format!("{text:?}"),
            Value::Bytes(bytes) => format!("{bytes:02X?}"),
            Value::NoReading => "no reading".to_owned(),
            other => format!("{other:?}"),
        };
        let word = reading.word.map(|word| format!(" {word}")).unwrap_or_default();
        all.push(format!("{} {value}{word}", signals[signal.index()].label.name));
    });
    all.extend(outcome.unmatched.map(|told| {
        format!("no page for {} = {}", signals[told.selector.index()].label.name, told.number.unwrap_or_default())
    }));
    if outcome.too_short {
        all.push("too short".to_owned());
    }
    all
}

fn encoded(frame: &str, given: &[&str]) -> Result<Vec<u8>, EncodeError> {
    let database = database();
    let id = named(&database, frame);
    let given = given.iter().map(|text| parse_assignment(&database, id, text)).collect::<Result<Vec<_>, _>>()?;
    let Encoded { payload, .. } = encode(&database, id, &given)?;
    Ok(payload)
}

/// The codes of DM1: SPN 1208, FMI 3 with 10 occurrences is the worked example of SAE J1939-73 (from memory); the other rows follow from its rule.
#[test]
fn groups_of_four_bytes_are_codes_of_sae_j1939_73() {
    for (bytes, spn, fmi, oc, cm) in [
        ([0xB8, 0x04, 0x03, 0x0A], 1208, 3, 10, 0),
        ([0x6E, 0x00, 0x00, 0x01], 110, 0, 1, 0),
        ([0x7F, 0x02, 0x09, 0x7E], 639, 9, 126, 0),
        ([0x00, 0xF0, 0xFF, 0x7F], 520_192, 31, 127, 0),
        ([0xFF, 0xFF, 0xFF, 0xFF], 524_287, 31, 127, 1),
    ] {
        let [a, b, c, d] = bytes;
        let told = readings("dm1", &[0x04, 0xFF, a, b, c, d, 0xFF, 0xFF]);
        assert_eq!(told[..5], ["mil 0", "stop 0", "warning 1", "protect 0", "flash no reading"]);
        let code = [format!("spn[1] {spn}"), format!("fmi[1] {fmi}"), format!("cm[1] {cm}"), format!("oc[1] {oc}")];
        assert_eq!(told[5..], code, "the two bytes behind are no element");
    }
}

/// No active code (SAE J1939-73, from memory of the standard).
#[test]
fn number_zero_is_no_code() {
    let told = readings("dm1", &[0x00, 0xFF, 0, 0, 0, 0, 0xFF, 0xFF]);
    assert_eq!(told[4..], ["flash no reading", "spn[1] no reading", "no page for spn[1] = 0"]);
}

/// The code of the answer follows from ISO 14229-1 and ISO 15031-6: C1 00 87 is U0100-87.
#[test]
fn elements_go_on_to_the_end_of_the_payload() {
    let one = [0x59, 0x02, 0xFF, 0xC1, 0x00, 0x87, 0x2F];
    let told = ["service 89", "report 2", "mask 255", "code[1] U0100-87", "status[1] 47"];
    assert_eq!(readings("answer", &one), told);
    let mut three = one.to_vec();
    three.extend([0x01, 0x35, 0x11, 0x08, 0x92, 0x34, 0x00, 0x01, 0xAA]);
    let all = readings("answer", &three);
    assert_eq!(all[..5], told);
    assert_eq!(all[5..], ["code[2] P0135-11", "status[2] 8", "code[3] B1234-00", "status[3] 1"]);
    assert_eq!(readings("answer", &one[..3]), told[..3], "no code is nothing that is missing");
    assert_eq!(readings("answer", &one[..6]), told[..3], "and part of one is none");
}

/// As many as a signal says (ISO 15031-5, service 03: how many codes, then two bytes each; from memory of the standard).
#[test]
fn elements_are_as_many_as_a_signal_says() {
    let payload = [0x43, 0x02, 0x01, 0x35, 0x01, 0x43, 0xFF, 0xFF];
    let told = ["service 67", "codes 2", "obd_code[1] P0135", "obd_code[2] P0143 catalyst"];
    assert_eq!(readings("answer", &payload), told, "what stands behind is not counted");
    assert_eq!(readings("answer", &[0x43, 0x00]), ["service 67", "codes 0"]);
    let cut_off = readings("answer", &payload[..5]);
    assert_eq!(cut_off[2..], ["obd_code[1] P0135", "obd_code[2] TooShort", "too short"]);
    let too_many = readings("answer", &[0x43, 0x04, 1, 1, 2, 2, 3, 3, 4, 4]);
    assert_eq!(too_many[2..], ["obd_code[1] P0101", "obd_code[2] P0202", "obd_code[3] P0303", "no page for codes = 4"]);
}

/// 22 F1 90 asks for the vehicle identification number (ISO 14229-1); that number is an example of our own.
#[test]
fn a_page_may_be_chosen_by_two_bytes_and_be_open() {
    let vin = b"WIRELORETESTVAN01";
    let payload: Vec<u8> = [0x62, 0xF1, 0x90].into_iter().chain(*vin).collect();
    assert_eq!(readings("answer", &payload)[2..], ["vin \"WIRELORETESTVAN01\""]);
    assert_eq!(readings("answer", &[0x62, 0xF1, 0x91, 1, 2, 3])[2..], ["data [01, 02, 03]"]);
}

#[test]
fn a_text_is_as_long_as_its_length_says() {
    assert_eq!(readings("song", b"\x03abcdef"), ["title_length 3", "title \"abc\""]);
    assert_eq!(readings("song", b"\x00abc"), ["title_length 0", "title \"\""]);
    assert_eq!(readings("song", b"\x00"), ["title_length 0", "title \"\""], "nothing is missing");
    assert_eq!(readings("song", b"\x04abc"), ["title_length 4", "title TooShort", "too short"]);
    let beyond_its_place = readings("song", b"\x0Dabcdefghijklmnopqrs");
    assert_eq!(beyond_its_place, ["title_length 13", "title TooShort", "too short"]);
}

#[test]
fn elements_are_encoded() {
    let code = ["spn[1]=1208", "fmi[1]=3", "oc[1]=10", "warning=1"];
    assert_eq!(encoded("dm1", &code).expect("it encodes")[2..6], [0xB8, 0x04, 0x03, 0x0A]);
    let answer = encoded("answer", &["code[2]=U0100-87", "status[2]=0x2F", "code[1]=P0135-11", "mask=0xFF"]);
    let bytes = [0x59, 0x02, 0xFF, 0x01, 0x35, 0x11, 0x00, 0xC1, 0x00, 0x87, 0x2F, 0x00];
    assert_eq!(answer, Ok(bytes.to_vec()), "a CAN FD frame has 12 bytes or 8");
    assert_eq!(encoded("answer", &["obd_code[2]=P0143", "obd_code[1]=P0135"]), Ok(vec![0x43, 2, 1, 0x35, 1, 0x43]));
    assert_eq!(
        encoded("answer", &["obd_code[2]=catalyst"]),
        Ok(vec![0x43, 2, 0, 0, 1, 0x43]),
        "all before it are there"
    );
    for wrong in ["obd_code[1]=P4000", "obd_code[1]=P0135-11", "obd_code[1]=35", "code[1]=P0135", "obd_code[4]=P0101"] {
        assert!(encoded("answer", &[wrong]).is_err(), "{wrong}");
    }
}

#[test]
fn a_length_is_set_with_its_text() {
    assert_eq!(encoded("song", &["title=abc"]), Ok(b"\x03abc".to_vec()));
    assert_eq!(encoded("song", &["title=abc", "title_length=3"]), Ok(b"\x03abc".to_vec()));
    assert_eq!(encoded("song", &[]), Ok(vec![0]));
    let told = encoded("song", &["title=abc", "title_length=4"]).map_err(|error| error.to_string());
    assert_eq!(told, Err("signal `title` cannot hold 3 bytes: `title_length` says another number of them".to_owned()));
    assert!(encoded("song", &["title=abcdefghijklm"]).is_err(), "more than there is room for");
}
