//! Protected frames and checksums over more than the payload, from the text of the language to verdicts, frame by frame and in tables.

use std::io;
use std::sync::{Arc, Mutex};

use wirelore_bits::e2e::{DataId, E2e, Profile};
use wirelore_decode::{
    Belongs, Block, ChecksumVerdict, Column, Decoder, EncodeError, Event, Given, Note, Options, ProtectionCounts,
    ProtectionVerdict, Reading, Session, Sink, Store, TableSink, Tables, Tally, Verdict, encode,
};
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::{Database, FrameId, SignalId};

const TEXT: &str = "
network drive can_fd 500 kbit/s, data 2 Mbit/s

frame steering on drive id 0x120 {
    length 8
    protected by e2e 1 both, data id 0x123, delta up to 3
    signal angle in bytes 2..3 signed = raw * 0.1 °
}
frame brakes on drive id 0x121 {
    length 8
    protected by e2e 1 both, data id 0x124
}
frame wide on drive id 0x122 {
    length 16..20
    protected by e2e 4, data id 0x0A0B0C0D
}
frame other_wide on drive id 0x123 {
    length 16
    protected by e2e 4, data id 7
}
## The sum of the data, the counter and the four bytes of the identifier, its halves added.
frame mixer_request on drive pgn 0 {
    length 8
    signal count in bits 7.3..7.0, counter 0..7, absent 15
    signal check in bits 7.7..7.4, checksum nibble4 over bytes 0..6 then bytes signal count id 0 id 1 id 2 id 3
}
frame own_crc on drive id 0x124 {
    length 4
    signal check in byte 3, checksum crc width 8 poly 0x1D start 0xFF xor 0xFF over bytes 0..2
}
frame with_identifier on drive id 0x125 {
    length 4
    signal check in byte 3, checksum crc width 8 poly 0x9B reflected over bytes 0..2 first bytes 0x5A id 1 id 0
}
frame of_one_sender on drive pgn 0xFF00 from 0x21 priority 3 {
    length 4
    signal check in byte 3, checksum crc width 8 poly 0x9B reflected over bytes 0..2 first bytes id 3 id 2 id 1 id 0
}
";

const STEERING: FrameId = FrameId(0);

fn database() -> Database {
    let checked = check_text("trial.lore", TEXT);
    assert!(checked.diagnostics.is_empty(), "{:?}", checked.diagnostics);
    checked.database.expect("no mistakes")
}

/// A log with one frame a millisecond.
fn log(frames: &[(u32, bool, Vec<u8>)]) -> String {
    let mut log = String::from("time_s,id_hex,ext,data_hex\n");
    for (index, (id, extended, data)) in frames.iter().enumerate() {
        let data: Vec<String> = data.iter().map(|byte| format!("{byte:02X}")).collect();
        log += &format!("0.{index:03},{id:X},{},{}\n", u8::from(*extended), data.join(" "));
    }
    log
}

fn protected(profile: Profile, data_id: u32, counter: u32, bytes: usize) -> Vec<u8> {
    let mut payload = vec![0; bytes];
    let e2e = E2e::new(profile, DataId::One(data_id), 0).expect("a good one");
    assert!(e2e.protect(&mut payload, counter));
    payload
}

type Told = Vec<(FrameId, SignalId, Verdict)>;

#[derive(Default)]
struct ByFrame(Told);

impl Sink for ByFrame {
    fn verdict(&mut self, event: &Event<'_>, signal: SignalId, verdict: Verdict) {
        self.0.push((event.frame, signal, verdict));
    }

    fn reading(&mut self, _: &Event<'_>, _: SignalId, _: Reading<'_>) {}
}

/// The verdicts of one table.
struct InTables(FrameId, Arc<Mutex<Told>>);

impl TableSink for InTables {
    fn block(&mut self, _: &Block<'_>) {}

    fn column(&mut self, column: &Column<'_>) {
        let mut told = self.1.lock().expect("nobody panicked");
        let rows = (0..).take_while(|row| column.is_there(*row).is_some());
        told.extend(rows.filter_map(|row| Some((self.0, column.signal(), column.verdict(row)?))));
    }
}

/// What is told frame by frame; the same has to be told in tables, and counted.
fn verdicts(database: &Database, frames: &[(u32, bool, Vec<u8>)]) -> (Told, Tally) {
    let decoder = Decoder::new(database).expect("a decoder");
    let text = log(frames);
    let recording = || {
        let reader = Box::new(io::Cursor::new(text.clone().into_bytes()));
        Recording::from_reader(reader, "trial.csv", &wirelore_log::Options::default()).expect("a log")
    };
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    let mut by_frame = ByFrame::default();
    session.run(&mut recording(), &mut by_frame).expect("a good log");
    let tally = session.tally().clone();

    let told = Arc::new(Mutex::new(Told::new()));
    let mut tables = Tables::new(database, &decoder, Store::Values, |frame| Ok(InTables(frame, Arc::clone(&told))));
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    session.run_tables(&mut recording(), &mut tables).expect("a good log");
    assert_eq!(session.tally(), &tally);
    // Tables come one after the other, and their columns too: in the order of the log where there is one of each.
    let mut in_tables = told.lock().expect("nobody panicked").clone();
    let mut sorted = by_frame.0.clone();
    sorted.sort_by_key(|(frame, signal, _)| (*frame, *signal));
    in_tables.sort_by_key(|(frame, signal, _)| (*frame, *signal));
    assert_eq!(in_tables, sorted);
    (by_frame.0, tally)
}

/// Only the verdicts of protections.
fn protections(told: &Told) -> Vec<ProtectionVerdict> {
    let of = |(_, _, verdict): &(FrameId, SignalId, Verdict)| match verdict {
        Verdict::Protection(verdict) => Some(*verdict),
        _ => None,
    };
    told.iter().filter_map(of).collect()
}

/// The receiver's rule of AUTOSAR PRS E2EProtocol, from memory: 0 repeated, 1 right, up to MaxDeltaCounter some lost, beyond a wrong sequence.
#[test]
fn the_sequence_is_told_and_damage_does_not_disturb_it() {
    use ProtectionVerdict::*;
    let right = |counter| (0x120, false, protected(Profile::P01Both, 0x123, counter, 8));
    let mut damaged = right(2).2;
    damaged[4] ^= 1;
    let mut impossible = right(0).2;
    impossible[1] = 15;
    let e2e = E2e::new(Profile::P01Both, DataId::One(0x123), 0).expect("a good one");
    impossible[0] = e2e.check(&impossible).expect("long enough").right_sum as u8;
    let mut cut = right(5).2;
    cut.truncate(1);
    let frames = [
        right(13),
        right(14),
        right(0),
        right(0),
        (0x120, false, damaged.clone()),
        (0x120, false, impossible),
        right(1),
        right(4),
        right(8),
        right(6),
        (0x120, false, cut),
    ];
    let (told, tally) = verdicts(&database(), &frames);
    let expected = damaged[0];
    let wrong = protections(&told)[4];
    assert!(matches!(wrong, WrongSum { found, belongs: None, .. } if found == u64::from(expected)), "{wrong:?}");
    let rest: Vec<ProtectionVerdict> = protections(&told).into_iter().filter(|told| *told != wrong).collect();
    assert_eq!(
        rest,
        [
            First,
            Right,
            Right,
            Repeated,
            NotACount,
            Right,
            Lost { messages: 2 },
            WrongSequence { rise: 4 },
            WrongSequence { rise: 13 }
        ]
    );
    let counts = ProtectionCounts {
        first: 1,
        right: 3,
        repeated: 1,
        after_loss: 1,
        messages_lost: 2,
        wrong_sequence: 2,
        not_a_count: 1,
        wrong_sum: 1,
        ..ProtectionCounts::default()
    };
    assert_eq!(tally.protections, counts);
    assert_eq!(tally.protection_faults().first().map(|(_, frame, count)| (*frame, *count)), Some((STEERING, 6)));
}

#[test]
fn a_message_with_the_data_id_of_another_frame_is_told_with_that_frame() {
    let frames = [
        (0x122, false, protected(Profile::P04, 7, 0, 16)),
        (0x122, false, protected(Profile::P04, 8, 0, 16)),
        (0x120, false, protected(Profile::P01Both, 0x124, 3, 8)),
        (0x120, false, protected(Profile::P01Both, 0x123, 3, 8)),
        (0x120, false, protected(Profile::P01Both, 0x124, 4, 8)),
        (0x120, false, protected(Profile::P01Both, 0x124, 5, 8)),
    ];
    let (told, tally) = verdicts(&database(), &frames);
    let brakes = Belongs { frame: FrameId(1), data_id: 0x124 };
    let other_wide = Belongs { frame: FrameId(3), data_id: 7 };
    let told = protections(&told);
    assert_eq!(told[0], ProtectionVerdict::WrongDataId { found: 7, belongs: Some(other_wide) });
    assert_eq!(told[1], ProtectionVerdict::WrongDataId { found: 8, belongs: None });
    let named: Vec<_> = told[2..]
        .iter()
        .map(|told| match told {
            ProtectionVerdict::WrongSum { belongs, .. } => Some(*belongs),
            _ => None,
        })
        .collect();
    assert_eq!(
        named,
        [Some(None), None, Some(None), Some(Some(brakes))],
        "eight bits fit by chance, but not three times"
    );
    let belongings: Vec<_> = tally.belongings().into_iter().map(|(_, frame, belongs, _)| (frame, belongs)).collect();
    assert_eq!(belongings, [(FrameId(0), brakes), (FrameId(2), other_wide)]);
}

/// What fits no data id is nobody's, however often it comes: a third data id, of no frame in the description.
#[test]
fn damage_that_fits_no_frame_is_not_given_to_the_only_other_one() {
    let frames: Vec<_> = (0..6).map(|count| (0x120, false, protected(Profile::P01Both, 0x200, count, 8))).collect();
    let (told, tally) = verdicts(&database(), &frames);
    assert!(protections(&told).iter().all(|told| matches!(told, ProtectionVerdict::WrongSum { belongs: None, .. })));
    assert_eq!((tally.protections.wrong_sum, tally.belongings()), (6, Vec::new()));
}

/// With 60 data ids of 16 bits and a sum of 8, one damaged message in five fits exactly one other id by chance.
#[test]
fn damage_is_not_taken_for_a_stranger_among_many() {
    let mut text = String::from("network drive can 500 kbit/s\n");
    for number in 0..60 {
        text += &format!(
            "frame f{number} on drive id {number} {{ length 8\n protected by e2e 1 both, data id {} }}\n",
            977 * number + 5
        );
    }
    let database = check_text("many.lore", &text).database.expect("no mistakes");
    let frames: Vec<_> = (0..500_u32)
        .map(|index| {
            let mut payload = protected(Profile::P01Both, 5, index % 15, 8);
            payload[2..6].copy_from_slice(&index.wrapping_mul(0x9E37_79B9).to_le_bytes());
            (0, false, payload)
        })
        .collect();
    let (_, tally) = verdicts(&database, &frames);
    assert!(tally.protections.wrong_sum > 480, "{:?}", tally.protections);
    assert_eq!(tally.belongings(), []);
}

#[test]
fn more_bytes_than_were_protected_are_told_as_another_length() {
    let mut longer = protected(Profile::P04, 0x0A0B_0C0D, 0, 16);
    longer.extend([0; 4]);
    let (told, _) = verdicts(&database(), &[(0x122, false, longer)]);
    assert_eq!(protections(&told), [ProtectionVerdict::WrongLength { told: 16, is: 20 }]);
}

/// A length that does not fit is believed only where the sum is that of so many bytes: damage can lie in the length itself.
#[test]
fn damage_in_the_length_is_told_as_damage() {
    for told_bytes in [12, 15, 17, 0xFFFF_u16] {
        let mut damaged = protected(Profile::P04, 0x0A0B_0C0D, 0, 16);
        damaged[..2].copy_from_slice(&told_bytes.to_be_bytes());
        let (told, _) = verdicts(&database(), &[(0x122, false, damaged)]);
        let told = protections(&told);
        assert!(matches!(told[..], [ProtectionVerdict::WrongSum { .. }]), "{told_bytes}: {told:?}");
    }
}

/// By arithmetic: data FF*7 sums to 6F9, count 3, identifier 0C 00 00 03 to 0F: 70B, of which 0B; its halves make B.
#[test]
fn a_sum_over_the_identifier_is_told_alike_on_both_ways() {
    let mut right = vec![0xFF; 8];
    right[7] = 0xB3;
    let frames: Vec<_> = (0..700)
        .map(|index| {
            // From another source the same bytes are wrong.
            let id = if index % 3 == 0 { 0x0C00_0004 } else { 0x0C00_0003 };
            (id, true, right.clone())
        })
        .collect();
    let (told, tally) = verdicts(&database(), &frames);
    let sums: Vec<_> = told.iter().filter(|(_, _, verdict)| matches!(verdict, Verdict::Checksum(_))).collect();
    assert_eq!(sums.len(), 700);
    assert_eq!(sums[0].2, Verdict::Checksum(ChecksumVerdict::Wrong { expected: 0xC, found: 0xB }));
    assert_eq!(sums[1].2, Verdict::Checksum(ChecksumVerdict::Right));
    assert_eq!((tally.checksums.right, tally.checksums.wrong), (466, 234));
}

/// AUTOSAR SWS CRCLibrary, example table: F2 01 83 has the CRC8 37 (from memory).
#[test]
fn a_crc_by_its_parameters_gives_the_published_value() {
    let (told, _) = verdicts(&database(), &[(0x124, false, vec![0xF2, 0x01, 0x83, 0x37])]);
    assert_eq!(told[0].2, Verdict::Checksum(ChecksumVerdict::Right));
}

/// PRS E2EProtocol, examples of profile 11 both, which are those of profile 1 (from memory): data id 0x123, all zero.
#[test]
fn encoding_writes_the_published_header() {
    let database = database();
    let zero = || ("angle", Given::Raw(0));
    let encoded = encode(&database, STEERING, &[zero()]).expect("it can be encoded");
    assert_eq!(encoded.payload, [0xCC, 0, 0, 0, 0, 0, 0, 0]);
    assert!(encoded.notes.contains(&Note::CounterStarts { signal: "protection".into(), at: 0 }));
    assert!(encoded.notes.contains(&Note::Protected { signal: "protection".into(), profile: 1, sum: 0xCC }));
    let encoded = encode(&database, STEERING, &[zero(), ("protection", Given::Raw(1))]).expect("it can be encoded");
    assert_eq!(encoded.payload, [0x91, 1, 0, 0, 0, 0, 0, 0]);
    let error = encode(&database, STEERING, &[("protection", Given::Raw(15))]).expect_err("never sent");
    assert_eq!(error.to_string(), "signal `protection` cannot hold count 15: profile 1 counts from 0 to 14");
}

/// The length of profile 4 has 16 bits (PRS E2EProtocol, from memory).
#[test]
fn what_is_too_long_for_the_length_of_its_profile_is_told_so() {
    let text = "network backbone ethernet 100 Mbit/s\nframe long on backbone udp port 30500 {\n\
                length 12..100000\n protected by e2e 4, data id 7\n signal rest in bytes 12..end text\n}\n";
    let checked = check_text("long.lore", text);
    let database = checked.database.unwrap_or_else(|| panic!("{:?}", checked.diagnostics));
    let rest = |bytes| [("rest", Given::Text("a".repeat(bytes)))];
    assert!(encode(&database, FrameId(0), &rest(65_523)).is_ok());
    let error = encode(&database, FrameId(0), &rest(65_524)).expect_err("too long");
    assert_eq!(
        error.to_string(),
        "signal `protection` cannot hold 65536 bytes: the length that profile 4 tells has no room for so many"
    );
}

#[test]
fn encoding_takes_the_identifier_where_there_is_one() {
    let database = database();
    let none: [(&str, Given); 0] = [];
    let (mixer_request, _) = database.frame_named("mixer_request").expect("it is there");
    let error = encode(&database, mixer_request, &none).expect_err("the identifier is open");
    assert!(matches!(error, EncodeError::IdentifierUnknown { .. }), "{error}");
    assert!(encode(&database, mixer_request, &[("check", Given::Raw(5))]).is_ok());

    let (with_identifier, _) = database.frame_named("with_identifier").expect("it is there");
    let encoded = encode(&database, with_identifier, &none).expect("it has one identifier");
    let (told, _) = verdicts(&database, &[(0x125, false, encoded.payload)]);
    assert_eq!(told[0].2, Verdict::Checksum(ChecksumVerdict::Right));
    // Priority 3, group 0xFF00, source 0x21 (SAE J1939-21, from memory).
    let (of_one_sender, _) = database.frame_named("of_one_sender").expect("it is there");
    let encoded = encode(&database, of_one_sender, &none).expect("it has one identifier");
    let (told, _) = verdicts(&database, &[(0x0CFF_0021, true, encoded.payload)]);
    assert_eq!(told[0].2, Verdict::Checksum(ChecksumVerdict::Right));
}
