//! Sessions: order, sampling, the parts of the tally.

mod channels;

use std::io;

use wirelore_log::Recording;
use wirelore_model::{
    Checksum, ChecksumAlgorithm, Counter, Database, FrameId, Identifier, NetworkId, NetworkKind, Role, SignalId,
};

use super::*;
use crate::bind::BindMap;
use crate::decoder::Setup;
use crate::reading::{FrameOutcome, Reading, Unmatched, Value};
use crate::selection::Selection;
use crate::testing::*;

/// Notes every frame as `time network frame values`.
#[derive(Default)]
struct Notes {
    lines: Vec<String>,
    fail_at: Option<usize>,
}

impl Sink for Notes {
    fn begin(&mut self, event: &Event<'_>) {
        let source = event.source.map(|source| format!(" from {source}")).unwrap_or_default();
        let time = event.time_ns.map_or("-".to_owned(), |time| (time / 1_000_000).to_string());
        self.lines.push(format!("{time} n{} f{}{source}", event.network.0, event.frame.0));
    }

    fn reading(&mut self, _: &Event<'_>, _: SignalId, reading: Reading<'_>) {
        if let Some(line) = self.lines.last_mut() {
            let value = if let Value::Integer(number) = reading.value { number.to_string() } else { "?".to_owned() };
            line.push(' ');
            line.push_str(&value);
        }
    }

    fn end(&mut self, _: &Event<'_>, outcome: &FrameOutcome) -> io::Result<()> {
        if let (Some(line), true) = (self.lines.last_mut(), outcome.too_short) {
            line.push_str(" short");
        }
        if self.fail_at == Some(self.lines.len()) { Err(io::Error::other("disk full")) } else { Ok(()) }
    }
}

/// Two networks with a frame each, and one that is on both; a paged one on the first.
fn van() -> Database {
    let on = |network: u32, mut frame: wirelore_model::Frame| {
        frame.seen_on[0].network = NetworkId(network);
        frame
    };
    let counter = Role::Counter(Counter { low: 0, high: 255, step: 1 });
    let over = vec![wirelore_model::ByteSpan { first: 0, last: Some(0) }];
    let checksum = Checksum { algorithm: ChecksumAlgorithm::Xor8, over, start: None, first: vec![], then: vec![] };
    let checked = vec![
        unsigned("count", "0.7..0.0").role(counter),
        unsigned("check", "1.7..1.0").role(Role::Checksum(Box::new(checksum))),
    ];
    let mut paged = frame("paged", id(0x102), vec![unsigned("page", "0.7..0.0"), unsigned("a", "1.7..1.0").on_page(0)]);
    paged.pages = vec![page(None, 0, &[(0, &[span(1, 1)])])];
    let run = Identifier::Can { first: 0x300, last: 0x30F, extended: false };
    database(
        vec![network("drive", NetworkKind::Can), network("comfort", NetworkKind::Can)],
        vec![
            on(0, frame("wide", id(0x100), vec![unsigned("w", "3.7..2.0")])),
            on(0, frame("checked", id(0x101), checked)),
            on(0, paged),
            on(1, frame("door", id(0x200), vec![unsigned("d", "0.7..0.0")])),
            on(1, frame("many", run, vec![unsigned("m", "0.7..0.0")])),
            on(1, frame("group", pgn(65265), vec![unsigned("g", "0.7..0.0")])),
        ],
    )
}

fn recording(text: &str) -> Recording {
    let text = format!("time_s,channel,id_hex,ext,data_hex\n{text}");
    Recording::from_reader(Box::new(io::Cursor::new(text.into_bytes())), "test.csv", &wirelore_log::Options::default())
        .expect("a log")
}

fn drive_options(bind: &str) -> Options {
    Options { bind: BindMap::parse(bind).expect("pairs"), ..Options::default() }
}

fn check_sum(session: &Session<'_>) {
    assert_eq!(session.tally().read, session.tally().sum_of_parts());
}

#[test]
fn frames_come_in_their_order_and_each_is_counted_once() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut session = Session::new(&decoder, &drive_options("c0=drive,c1=comfort")).expect("a session");
    let mut notes = Notes::default();
    let log = "0.001,c0,100,0,00 00 07 00\n0.002,c1,200,0,05\n0.003,c0,100,0,00 00 07\n0.004,c0,7FF,0,01\n0.005,c9,100,0,00\n\
               0.006,c1,18FEF10B,1,09\n0.007,c1,303,0,08\n0.008,c0,zz,0,00\n0.009,c0,7FF,0,01\n0.010,c0,100,1,01\n";
    session.run(&mut recording(log), &mut notes).expect("it reads");
    assert_eq!(
        notes.lines,
        ["1 n0 f0 7", "2 n1 f3 5", "3 n0 f0 ? short", "6 n1 f5 from 0x0B 9", "7 n1 f4 from 0x303 8"]
    );
    let tally = session.tally();
    assert_eq!((tally.read, tally.decoded, tally.too_short, tally.without_description), (10, 4, 1, 3));
    assert_eq!((tally.on_unbound_channel, tally.damaged, tally.readings), (1, 1, 5));
    let unknown: Vec<_> = tally.unknown_frames().iter().map(|frame| (frame.network.0, frame.id, frame.count)).collect();
    let can = |id, extended| SeenId::Can { id, extended };
    assert_eq!(unknown, [(0, can(0x7FF, false), 2), (0, can(0x100, true), 1)]);
    let bindings: Vec<String> = session.bindings().iter().map(ToString::to_string).collect();
    assert_eq!(
        bindings,
        [
            "channel `c0` is network `drive`: as told",
            "channel `c1` is network `comfort`: as told",
            "channel `c9` is left out: the binding does not name it",
        ]
    );
    check_sum(&session);
}

#[test]
fn whoever_wants_nothing_but_readings_gives_a_closure() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut session = Session::new(&decoder, &drive_options("c0=drive")).expect("a session");
    let mut values = Vec::new();
    let mut note = |event: &Event<'_>, signal: SignalId, reading: Reading<'_>| {
        values.push((event.frame.0, signal.0, reading.value.number()));
    };
    let log = "0.1,c0,100,0,00 00 07 00\n0.2,c0,101,0,05 05\n";
    session.run(&mut recording(log), &mut note).expect("it reads");
    assert_eq!(values, [(0, 0, Some(7.0)), (1, 0, Some(5.0)), (1, 1, Some(5.0))]);
    let mut values = Vec::new();
    let mut note = |signal: SignalId, reading: Reading<'_>| values.push((signal.0, reading.value.number()));
    decoder.decode_into(FrameId(1), &[5, 6], &mut note);
    assert_eq!(values, [(0, Some(5.0)), (1, Some(6.0))]);
}

#[test]
fn what_is_not_wanted_is_left_out_and_counted() {
    let database = van();
    let selection = Selection::matching(&database, "door,wide").expect("they exist");
    let decoder = Decoder::with(&database, &Setup { selection, ..Setup::default() }).expect("a decoder");
    let log = "5.000,c0,100,0,00 00 07 00\n5.100,c0,101,0,00 00\n5.200,c1,200,0,05\n5.300,c0,100,0,00 00 08 00\n,c0,100,0,00 00 09 00\n5.150,c0,100,0,00 00 06 00\n";
    let options = Options {
        only: Some(vec!["drive".to_owned()]),
        from_ns: Some(100_000_000),
        until_ns: Some(300_000_000),
        ..drive_options("c0=drive,c1=comfort")
    };
    let mut session = Session::new(&decoder, &options).expect("a session");
    let mut notes = Notes::default();
    session.run(&mut recording(log), &mut notes).expect("it reads");
    assert_eq!(notes.lines, ["5300 n0 f0 8", "5150 n0 f0 6"]);
    let tally = session.tally();
    assert_eq!((tally.decoded, tally.not_selected, tally.left_out_by_network, tally.left_out_by_time), (2, 1, 1, 2));
    assert_eq!(session.first_time_ns(), Some(5_000_000_000));
    check_sum(&session);
    let options = Options { only: Some(vec!["drvie".to_owned()]), ..Options::default() };
    let error = Session::new(&decoder, &options).expect_err("no such network").to_string();
    assert_eq!(error, "there is no network `drvie` in the description; did you mean `drive`?");
}

#[test]
fn remote_frames_are_counted_by_identifier_on_the_wanted_networks() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let log = "time_s,channel,id_hex,ext,rtr,data_hex\n0.0,c0,100,0,1,\n0.1,c0,7F0,0,1,\n0.2,c1,200,0,1,\n0.3,c0,100,0,1,\n0.4,c9,200,0,1,\n";
    let can = |id| SeenId::Can { id, extended: false };
    let drive = [(NetworkId(0), can(0x100), 2), (NetworkId(0), can(0x7F0), 1)];
    let comfort = (NetworkId(1), can(0x200), 1);
    // What comes from a channel that is no network is counted all the same, without its identifier.
    for (only, remote, left_out, frames) in [
        (None, 5, 0, vec![drive[0], drive[1], comfort]),
        (Some(vec!["drive".to_owned()]), 4, 1, drive.to_vec()),
        (Some(vec!["comfort".to_owned()]), 2, 3, vec![comfort]),
    ] {
        let options = Options { only, ..drive_options("c0=drive,c1=comfort") };
        let mut session = Session::new(&decoder, &options).expect("a session");
        let reader = Box::new(log.as_bytes());
        let mut recording =
            Recording::from_reader(reader, "test.csv", &wirelore_log::Options::default()).expect("a log");
        session.run(&mut recording, &mut Notes::default()).expect("it reads");
        let tally = session.tally();
        assert_eq!((tally.read, tally.remote, tally.left_out_by_network), (5, remote, left_out));
        assert_eq!(tally.remote_frames(), frames);
        check_sum(&session);
    }
}

#[test]
fn counters_checksums_and_selectors_are_counted() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut session = Session::new(&decoder, &drive_options("0=drive")).expect("a session");
    let text = "time_s,id_hex,ext,data_hex\n0,101,0,05 05\n0,101,0,06 07\n0,101,0,06 06\n0,101,0,09 09\n0,102,0,01 00\n0,102,0,04 00\n0,102,0,04 00\n0,102,0,08\n";
    let mut recording =
        Recording::from_reader(Box::new(text.as_bytes()), "test.csv", &wirelore_log::Options::default())
            .expect("a log");
    session.run(&mut recording, &mut Notes::default()).expect("it reads");
    let tally = session.tally();
    assert_eq!(
        tally.counters,
        CounterCounts { first: 1, right: 1, repeated: 1, jumped: 1, ..CounterCounts::default() }
    );
    assert_eq!(tally.checksums, ChecksumCounts { right: 3, wrong: 1, too_short: 0 });
    let values: Vec<_> =
        tally.unmatched_values().iter().map(|(frame, value, count)| (frame.0, value.number, *count)).collect();
    assert_eq!(values, [(2, Some(4), 2), (2, Some(8), 1)]);
    assert_eq!((tally.unmatched_selectors, tally.unmatched_rest()), (3, 0));
    check_sum(&session);
}

#[test]
fn each_channel_and_each_log_has_counters_of_its_own() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut session = Session::new(&decoder, &drive_options("c0=drive,c1=drive")).expect("a session");
    let log = "0,c0,101,0,05 05\n0,c1,101,0,90 90\n0,c0,101,0,06 06\n0,c1,101,0,91 91\n";
    for _ in 0..2 {
        session.run(&mut recording(log), &mut Notes::default()).expect("it reads");
    }
    assert_eq!(session.tally().counters, CounterCounts { first: 4, right: 4, ..CounterCounts::default() });
    assert_eq!(session.tally().counter_faults(), []);
}

#[test]
fn faults_are_counted_by_frame_and_by_signal() {
    let checked = |name: &str, number| {
        let counter = Role::Counter(Counter { low: 0, high: 255, step: 1 });
        let over = vec![wirelore_model::ByteSpan { first: 0, last: Some(0) }];
        let sum = Checksum { algorithm: ChecksumAlgorithm::Xor8, over, start: None, first: vec![], then: vec![] };
        let signals = vec![
            unsigned("count", "0.7..0.0").role(counter),
            unsigned("check", "1.7..1.0").role(Role::Checksum(Box::new(sum))),
            unsigned("heat", "2.7..2.0").in_range("0", "100").absent(&[span(255, 255)]).fault(&[span(254, 254)]),
            unsigned("load", "3.7..3.0").in_range("0", "100"),
        ];
        frame(name, id(number), signals)
    };
    let database = database(vec![network("drive", NetworkKind::Can)], vec![checked("a", 1), checked("b", 2)]);
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    let log =
        "0,c,1,0,00 00 FF 65\n0,c,2,0,00 01 FE 66\n0,c,1,0,00 01 05 00\n0,c,2,0,07 00 C8 67\n0,c,2,0,08 08 05 05\n";
    session.run(&mut recording(log), &mut Notes::default()).expect("it reads");
    let tally = session.tally();
    let (network, a, b) = (NetworkId(0), FrameId(0), FrameId(1));
    assert_eq!(tally.wrong_checksums(), [(network, b, 2), (network, a, 1)]);
    assert_eq!(tally.counter_faults(), [(network, a, 1), (network, b, 1)]);
    assert_eq!((tally.no_reading, tally.sensor_fault, tally.outside_range), (1, 1, 4));
    assert_eq!(tally.outside_ranges(), [(b, SignalId(3), 2), (a, SignalId(3), 1), (b, SignalId(2), 1)]);
}

#[test]
fn a_span_of_time_that_ends_before_it_begins_is_an_error() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let new = |from_ns, until_ns| {
        let options = Options { from_ns: Some(from_ns), until_ns: Some(until_ns), ..Options::default() };
        Session::new(&decoder, &options).map(|_| ()).map_err(|error| error.to_string())
    };
    let error = "--until 5 s is before --from 10.25 s: nothing is in between".to_owned();
    assert_eq!(new(10_250_000_000, 5_000_000_000), Err(error));
    assert_eq!(new(5, 5), Ok(()));
}

#[test]
fn what_is_counted_apart_is_bounded() {
    let mut tally = Tally::default();
    for id in 0..150_000 {
        tally.unknown(NetworkId(0), SeenId::Can { id, extended: true });
        tally.read += 1;
    }
    for number in 0..12_000 {
        tally.unmatched(FrameId(0), Unmatched { selector: SignalId(0), number: Some(number), bits: number as u64 });
    }
    assert_eq!(
        (tally.without_description, tally.unknown_frames().len(), tally.unknown_rest()),
        (150_000, 100_000, 50_000)
    );
    assert_eq!(
        (tally.unmatched_selectors, tally.unmatched_values().len(), tally.unmatched_rest()),
        (12_000, 10_000, 2_000)
    );
    tally.unknown(NetworkId(0), SeenId::Can { id: 0, extended: true });
    tally.read += 1;
    assert_eq!((tally.unknown_frames()[0].count, tally.sum_of_parts()), (2, tally.read));
}

/// A tally that counts what is written into it.
fn tally_of(write: impl FnOnce(&mut Tally)) -> Tally {
    let mut tally = Tally::default();
    write(&mut tally);
    tally
}

#[test]
fn every_part_is_in_the_sum_once_and_every_count_is_taken_over() {
    let parts: [fn(&mut Tally) -> &mut u64; 15] = [
        |tally| &mut tally.decoded,
        |tally| &mut tally.too_short,
        |tally| &mut tally.without_description,
        |tally| &mut tally.not_selected,
        |tally| &mut tally.remote,
        |tally| &mut tally.error,
        |tally| &mut tally.carrying,
        |tally| &mut tally.unanswered,
        |tally| &mut tally.faulty,
        |tally| &mut tally.null,
        |tally| &mut tally.wire_signals,
        |tally| &mut tally.damaged,
        |tally| &mut tally.on_unbound_channel,
        |tally| &mut tally.left_out_by_network,
        |tally| &mut tally.left_out_by_time,
    ];
    let mut all = tally_of(|tally| parts.iter().zip(0..).for_each(|(part, bit)| *part(tally) = 1 << bit));
    let every = (1 << parts.len()) - 1;
    assert_eq!(all.sum_of_parts(), every);
    let some = |by: u64| {
        tally_of(|tally| {
            tally.messages = 5 * by;
            tally.lin.right_checksums = by;
            tally.lin.other_checksums = 2 * by;
            tally.lin.sleep_requests = 3 * by;
            tally.lin.wake_ups = 4 * by;
        })
    };
    let mut sum = some(1);
    sum.take_over(&mut all);
    sum.take_over(&mut some(2));
    assert_eq!((sum.sum_of_parts(), sum.messages), (every, 15));
    assert_eq!(all, Tally::default(), "it begins anew");
    let LinTally { right_checksums, other_checksums, sleep_requests, wake_ups, .. } = sum.lin;
    assert_eq!((right_checksums, other_checksums, sleep_requests, wake_ups), (3, 6, 9, 12));
}

#[test]
fn what_did_not_come_as_it_was_sent_is_damage_on_the_way() {
    let damaged = |write: fn(&mut Tally)| tally_of(write).was_damaged_on_the_way();
    assert!(!damaged(|tally| (tally.read, tally.decoded) = (9, 9)));
    assert!(!damaged(|tally| tally.damaged = 1), "that is said of the log");
    assert!(damaged(|tally| tally.faulty = 1));
    assert!(damaged(|tally| tally.error = 1));
    assert!(damaged(|tally| tally.message_faults = 1));
    assert!(damaged(|tally| tally.protections.messages_lost = 1));
    assert!(damaged(|tally| (tally.faulty, tally.error) = (1, 1)));
}

#[test]
fn ten_messages_that_could_not_be_used_are_told_and_all_are_counted() {
    let fault = |what: &str| {
        let id = SeenId::Can { id: 1, extended: false };
        MessageFault { network: NetworkId(0), id, place: None, what: what.to_owned() }
    };
    let part = |from: usize, count: usize| {
        tally_of(|tally| (from..from + count).for_each(|number| tally.message_fault(|| fault(&number.to_string()))))
    };
    let told = |tally: &Tally| -> Vec<String> {
        tally.first_message_faults().iter().map(|fault| fault.what.clone()).collect()
    };
    let ten: Vec<String> = (0..10).map(|number| number.to_string()).collect();
    let mut whole = part(0, 12);
    assert_eq!((told(&whole), whole.message_faults), (ten.clone(), 12));
    whole.take_over(&mut part(12, 3));
    assert_eq!((told(&whole), whole.message_faults), (ten.clone(), 15));
    let mut few = part(0, 7);
    few.take_over(&mut part(7, 9));
    assert_eq!((told(&few), few.message_faults), (ten, 16));
}
