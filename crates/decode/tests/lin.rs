//! LIN from the text of a description and the bytes of a recording to values and counts, in rows and in tables.

mod common;

use common::Rows;
use wirelore_decode::{Given, Tally, encode, parse_assignment};
use wirelore_lang::check_text;
use wirelore_log::Faults;
use wirelore_model::SeenId;

const SEAT: &str = r#"
network seat lin 19.2 kbit/s
ecu seat_l  leads seat
ecu motor_l on seat
ecu motor_r on seat

frame status on seat id 0x11 { sent by motor_l
    length 4
    signal height in byte 0 = raw * 0.5 %
    signal rest   in bytes 1..3
}
frame old_status on seat id 0x12, classic { sent by motor_l
    length 2
    signal height in byte 0 = raw * 0.5 %
}
frame left on seat id 0x20 { sent by motor_l
    length 2
    signal pulled in byte 1
}
frame right on seat id 0x21 { sent by motor_r
    length 2
    signal pushed in byte 1
}
frame event on seat id 0x22, stands for left, right
"#;

/// A pcap file of link type 212; each record is a LIN frame or event as the public link-type registry lays it out.
fn pcap(records: &[&[u8]]) -> Vec<u8> {
    let mut file = vec![0xD4, 0xC3, 0xB2, 0xA1, 2, 0, 4, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0xFF, 0xFF, 0, 0, 212, 0, 0, 0];
    for (record, second) in records.iter().zip(0_u32..) {
        let length = (record.len() as u32).to_le_bytes();
        for word in [second.to_le_bytes(), [0; 4], length, length] {
            file.extend_from_slice(&word);
        }
        file.extend_from_slice(record);
    }
    file
}

/// A frame: protected identifier, checksum and its kind (0 unknown, 1 classic, 2 enhanced), data.
fn frame(protected_id: u8, checksum: u8, kind: u8, data: &[u8]) -> Vec<u8> {
    let mut record = vec![1, 0, 0, 0, (data.len() as u8) << 4 | kind, protected_id, checksum, 0];
    record.extend_from_slice(data);
    record.resize(8 + if data.len() > 4 { 8 } else { 4 }, 0);
    record
}

fn read(records: &[Vec<u8>]) -> Rows {
    let records: Vec<&[u8]> = records.iter().map(Vec::as_slice).collect();
    common::read(SEAT, pcap(&records))
}

/// The names of a frame's damage.
fn damage(tally: &Tally) -> Vec<(SeenId, Faults, u64)> {
    tally.damaged_frames().into_iter().map(|(_, id, faults, count)| (id, faults, count)).collect()
}

#[test]
fn checksums_of_the_described_kind_of_the_other_kind_and_wrong_ones() {
    // LIN 2.2A, section 2.8.3: E6 is the classic sum of these bytes; D5 the enhanced one under protected identifier 11.
    let data = [0x4A, 0x55, 0x93, 0xE5];
    let records = [
        frame(0x11, 0xD5, 2, &data),
        frame(0x11, 0xE6, 1, &data),
        frame(0x11, 0xD5, 0, &data),
        frame(0x11, 0xE7, 0, &data),
        // 10 20 and their classic sum (from the rule of section 2.3.1.5), described as classic.
        frame(0x92, 0xCF, 1, &[0x10, 0x20]),
    ];
    let Rows { lines, tally } = read(&records);
    let heights: Vec<&str> = lines.iter().map(String::as_str).filter(|line| line.contains("height")).collect();
    let in_s = |second: u64, what: &str| format!("{} {what}", second * 1_000_000_000);
    let expected = [
        in_s(0, "status.height 37"),
        in_s(1, "status.height 37"),
        in_s(2, "status.height 37"),
        in_s(4, "old_status.height 8"),
    ];
    assert_eq!(heights, expected);
    assert_eq!((tally.read, tally.decoded, tally.faulty), (5, 4, 1));
    assert_eq!((tally.lin.right_checksums, tally.lin.other_checksums), (3, 1));
    let other_kinds: Vec<_> = tally.lin.other_kinds().iter().map(|&(_, frame, count)| (frame.0, count)).collect();
    assert_eq!(other_kinds, [(0, 1)], "`status` is the first frame");
    assert_eq!(damage(&tally), [(SeenId::Lin(0x11), Faults::CHECKSUM, 1)]);
}

/// LIN 2.2A: the parity of identifier 11 is 0, so that it is sent as 11 and not as 51; E7 is no sum of these bytes.
#[test]
fn frames_that_were_recorded_as_damaged_are_counted_by_what_was_wrong() {
    let data = [0x4A, 0x55, 0x93, 0xE5];
    let records = [frame(0x51, 0xE6, 1, &data), frame(0x11, 0xE7, 1, &data), frame(0x51, 0xE6, 1, &data)];
    let Rows { lines, tally } = read(&records);
    assert_eq!((lines.len(), tally.read, tally.faulty), (0, 3, 3));
    assert_eq!(damage(&tally), [(SeenId::Lin(0x11), Faults::PARITY, 2), (SeenId::Lin(0x11), Faults::CHECKSUM, 1)]);
}

#[test]
fn frames_of_a_recorder_that_tells_no_checksum_are_decoded() {
    // Kind 0 and a byte 0 (public link-type registry, LINKTYPE 212), which is no sum of these bytes.
    let Rows { lines, tally } = read(&[frame(0x11, 0, 0, &[0x4A, 0x55, 0x93, 0xE5])]);
    assert_eq!(lines[0], "0 status.height 37");
    assert_eq!((tally.read, tally.decoded, tally.faulty), (1, 1, 0));
    assert_eq!((tally.lin.right_checksums, tally.lin.other_checksums), (0, 0));
}

#[test]
fn headers_without_an_answer_sleep_and_wake_ups_are_counted() {
    let sleep = [0, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF];
    let records = [
        // Byte examples of the public link-type registry's layout: a header 0x10 without answer, a wake-up event.
        vec![1, 0, 0, 0, 2, 0x50, 0xAF, 1, 0, 0, 0, 0],
        vec![1, 0, 0, 0, 0x4C, 0, 0, 0, 0xB0, 0xB0, 0, 4],
        // An event of a code that ends alike.
        vec![1, 0, 0, 0, 0x4C, 0, 0, 0, 0xB0, 0xB0, 1, 4],
        vec![1, 0, 0, 0, 2, 0x11, 0, 1, 0, 0, 0, 0],
        vec![1, 0, 0, 0, 2, 0x11, 0, 1, 0, 0, 0, 0],
        // Go to sleep: LIN 2.2A, section 2.6.3 (from memory), its classic sum is 0.
        frame(0x3C, 0x00, 1, &sleep),
        frame(0x11, 0xD5, 2, &[0x4A, 0x55, 0x93, 0xE5]),
    ];
    let Rows { tally, .. } = read(&records);
    assert_eq!((tally.unanswered, tally.wire_signals, tally.without_description, tally.decoded), (3, 2, 1, 1));
    assert_eq!((tally.lin.sleep_requests, tally.lin.wake_ups), (1, 1));
    let unanswered: Vec<_> = tally.lin.unanswered().iter().map(|&(_, id, count)| (id, count)).collect();
    assert_eq!(unanswered, [(SeenId::Lin(0x11), 2), (SeenId::Lin(0x10), 1)]);
}

#[test]
fn an_answer_to_an_event_is_the_frame_that_its_first_byte_names() {
    // Protected identifiers of 20, 21, 22: LIN 2.2A, section 2.3.1.3. No checksum kind told; sums by the rule of section 2.3.1.5.
    let enhanced = |protected_id: u8, data: &[u8]| {
        let sum = data.iter().fold(u16::from(protected_id), |sum, byte| sum + u16::from(*byte));
        let sum = sum % 255;
        frame(protected_id, !(sum as u8), 2, data)
    };
    let records = [
        enhanced(0xE2, &[0x20, 7]),
        enhanced(0xE2, &[0x61, 8]),
        enhanced(0x20, &[0x20, 9]),
        enhanced(0xE2, &[0x42, 1]),
    ];
    let Rows { lines, tally } = read(&records);
    assert_eq!(lines, ["0 left.pulled 7", "1000000000 right.pushed 8", "2000000000 left.pulled 9"]);
    assert_eq!((tally.decoded, tally.not_selected, tally.faulty), (3, 0, 0));
    let unknown: Vec<_> = tally.unknown_frames().iter().map(|unknown| (unknown.id, unknown.count)).collect();
    assert_eq!(unknown, [(SeenId::Lin(0x22), 1)], "an answer that names none of them");
}

#[test]
fn an_event_without_data_is_not_encoded() {
    let database = check_text("seat.lore", SEAT).database.expect("no mistakes");
    let (id, _) = database.frame_named("event").expect("described");
    let none: [(&str, Given); 0] = [];
    assert_eq!(
        encode(&database, id, &none).expect_err("it has no data").to_string(),
        "frame `event` has no data of its own: it is answered with `left` or `right`; encode the one that you want"
    );
}

#[test]
fn encoding_tells_what_goes_around_the_data() {
    let database = check_text("seat.lore", SEAT).database.expect("no mistakes");
    let (id, _) = database.frame_named("status").expect("described");
    let given = |text: &str| parse_assignment(&database, id, text).expect("an assignment");
    let encoded = encode(&database, id, &[given("height=37"), given("rest=0x5593E5")]).expect("it fits");
    assert_eq!(encoded.payload, [0x4A, 0x55, 0x93, 0xE5]);
    let told: Vec<String> = encoded.notes.iter().map(ToString::to_string).collect();
    // LIN 2.2A, section 2.8.3, quoted with D5 as the enhanced sum under protected identifier 11.
    assert_eq!(told, ["on the wire: protected identifier 0x11, enhanced checksum 0xD5"]);
}

const DIAGNOSTICS: &str = "use standard lin_diagnostics\nnetwork seat lin 19.2 kbit/s\necu seat_l leads seat\n\
                           frame ask on seat id 0x3C { use layout lin_master_request at byte 0 }\n\
                           frame answer on seat id 0x3D { use layout lin_slave_response at byte 0 }\n";

/// What a frame of diagnostics says, without its time.
fn diagnosed(protected_id: u8, checksum: u8, data: [u8; 8]) -> Vec<String> {
    let record = frame(protected_id, checksum, 1, &data);
    let Rows { lines, tally } = common::read(DIAGNOSTICS, pcap(&[&record]));
    assert_eq!((tally.decoded, tally.faulty, tally.unmatched_selectors), (1, 0, 0));
    lines.iter().map(|line| line.trim_start_matches("0 ").to_owned()).collect()
}

/// Payloads from memory of LIN 2.2A, sections 2.6.3 and 4.2; their classic sums follow from the rule of section 2.3.1.5.
#[test]
fn diagnostics_are_read_by_the_standard_description() {
    assert_eq!(diagnosed(0x3C, 0x00, [0, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF]), ["ask.node 0"]);
    let read_by_id = diagnosed(0x3C, 0xC6, [0x01, 0x06, 0xB2, 0x00, 0xFF, 0x7F, 0xFF, 0xFF]);
    let expected = [
        "node 1",
        "part 0",
        "length 6",
        "service 178",
        "identification 0",
        "read_supplier 32767",
        "read_function 65535",
    ];
    assert_eq!(read_by_id, expected.map(|said| format!("ask.{said}")));
    // The product 0x1234, function 0x0001, variant 2 of node 1: sum 01+06+F2+34+12+01+00+02 = 142, with its carry 43.
    let product = diagnosed(0x7D, 0xBC, [0x01, 0x06, 0xF2, 0x34, 0x12, 0x01, 0x00, 0x02]);
    let expected = ["node 1", "part 0", "length 6", "answer 242", "supplier 4660", "function 1", "variant 2"];
    assert_eq!(product, expected.map(|said| format!("answer.{said}")));
    // Refused: 01+03+7F+B2+12+FF+FF+FF = 444, with its carry 48.
    let refused = diagnosed(0x7D, 0xB7, [0x01, 0x03, 0x7F, 0xB2, 0x12, 0xFF, 0xFF, 0xFF]);
    let expected = ["node 1", "part 0", "length 3", "answer 127", "refused_service 178", "reason 18"];
    assert_eq!(refused, expected.map(|said| format!("answer.{said}")));
    // Frames 0 to 3 of a node get new identifiers, the last two stay: 05+06+B7+00+C4+85+FF+FF = 409, with its carry 0D.
    let range = diagnosed(0x3C, 0xF2, [0x05, 0x06, 0xB7, 0x00, 0xC4, 0x85, 0xFF, 0xFF]);
    assert_eq!(range[3..6], ["ask.service 183", "ask.start_index 0", "ask.protected_id_0 196"].map(str::to_owned));
    // The first part of a longer message, and the next one: 01+10+0A+22+01+02+03+04 = 47; 01+21+05+06+07+08+09+0A = 4F.
    let first = diagnosed(0x3C, 0xB8, [0x01, 0x10, 0x0A, 0x22, 0x01, 0x02, 0x03, 0x04]);
    assert_eq!(first[2], "ask.whole_length 10");
    let next = diagnosed(0x3C, 0xB0, [0x01, 0x21, 0x05, 0x06, 0x07, 0x08, 0x09, 0x0A]);
    assert_eq!(next[2], "ask.part_number 1");
}
