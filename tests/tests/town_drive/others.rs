//! The other networks of the same minute: what is decoded is what the model knew, what the summary has to tell is there, and packets are
//! sound by a second opinion.

use std::sync::LazyLock;

use etherparse::{NetSlice, SlicedPacket, TransportSlice};
use wirelore_log::{Kind, Medium, Options, Recording};
use wirelore_model::SeenId;
use wirelore_tests::drive::{Moment, START_NS, demo_folder, kestrel, moments};

use crate::series::{Drive, drive, others};

/// What each moment is compared by.
type Known = fn(&Moment) -> f64;

static MOMENTS: LazyLock<Vec<Moment>> = LazyLock::new(moments);

/// The lowest and the highest that the model knew in the last milliseconds up to a moment.
fn known(at_s: f64, ms: usize, known: Known) -> (f64, f64) {
    let last = (at_s * 1000.0) as usize;
    let values = MOMENTS[last.saturating_sub(ms)..=last].iter().map(known);
    values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)))
}

/// Name, half a step of its raw number, how many milliseconds from the sender's look to the recorder's stamp, what the model knows, how
/// many values there are at least.
const COMPARED: &[(&str, f64, usize, Known, usize)] = &[
    ("seat/height_state.height", 0.25, 9, |moment| moment.seat[0], 80),
    ("seat/backrest_state.backrest", 0.05, 9, |moment| moment.seat[1], 80),
    ("seat/heater_state.cushion", 0.25, 9, |moment| moment.seat[2], 80),
    ("chassis/wheel_travel.travel[1]", 0.05, 5, |moment| moment.travel_mm[0], 900),
    ("chassis/wheel_travel.travel[4]", 0.05, 5, |moment| moment.travel_mm[3], 900),
    ("chassis/damper_currents.current[2]", 0.0005, 5, |moment| moment.current_a[1], 400),
    ("chassis/damper_currents.current[3]", 0.0005, 5, |moment| moment.current_a[2], 400),
    ("backbone/vehicle_state.speed", 0.005, 3, |moment| moment.speed_kmh, 290),
    ("backbone/vehicle_state.yaw", 0.005, 3, |moment| moment.yaw_deg_per_s, 290),
    ("backbone/vehicle_state.way", 0.005, 3, |moment| moment.way_m, 290),
    ("backbone/position.north", 1e-4, 3, |moment| moment.place_m[0], 55),
    ("backbone/position.east", 1e-4, 3, |moment| moment.place_m[1], 55),
    ("backbone/answers_over_ip.ip_coolant", 0.5, 200, |moment| moment.engine_c[0], 1),
    ("drive/engine_answers.oil", 0.5, 60, |moment| moment.engine_c[1], 1),
    ("heater_line/heater_burner.water", 0.5, 120, |moment| moment.water_c, 14),
    ("heater_line/heater_burner.glow_current", 0.05, 120, |moment| moment.glow_a, 14),
    ("sound/volume.loudness", 0.0, 20, |moment| moment.loudness, 10),
];

#[test]
fn values_are_what_the_model_knew() {
    for &(name, half_step, ms, of, least) in COMPARED {
        let row = others().row(name);
        assert!(row.len() >= least, "{} values of {name}", row.len());
        for point in row {
            let value = point.value.unwrap_or_else(|| panic!("{name} has no reading at {} s", point.at_s));
            let (low, high) = known(point.at_s, ms, of);
            let is_known = (low - half_step - 1e-6..=high + half_step + 1e-6).contains(&value);
            assert!(is_known, "{name} = {value} at {} s, and the model knew {low}..{high}", point.at_s);
        }
    }
}

#[test]
fn what_moves_really_moves() {
    let span = |name: &str| {
        let values = others().row(name).iter().filter_map(|point| point.value);
        values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)))
    };
    for (name, low, high) in [
        ("seat/height_state.height", 97.0, 115.0),
        ("seat/backrest_state.backrest", 25.0, 27.0),
        ("chassis/wheel_travel.travel[1]", 0.0, 20.0),
        ("chassis/wheel_travel.travel[3]", -20.0, 0.0),
        ("chassis/damper_currents.current[1]", 0.4, 0.9),
        ("backbone/position.north", 50.0, 200.0),
        ("heater_line/heater_burner.glow_current", 0.1, 11.0),
        ("sound/volume.loudness", 15.0, 18.0),
    ] {
        let (lowest, highest) = span(name);
        assert!(lowest < low && highest > high, "{name}: {lowest}..{highest}");
    }
}

/// What the gateway tells on the backbone is what the brake unit says on the drive network, up to 100 ms older.
#[test]
fn the_backbone_and_the_drive_network_agree() {
    for point in others().row("backbone/vehicle_state.speed").iter().filter(|point| point.at_s > 0.5) {
        let told = drive().value("drive/brake_state.vehicle_speed", point.at_s).expect("the brake unit has spoken");
        let speed = point.value.expect("the gateway always has a speed");
        assert!((speed - told).abs() < 1.2, "{speed} and {told} km/h at {} s", point.at_s);
    }
}

#[test]
fn the_last_speeds_are_those_of_the_last_seconds() {
    for number in 1..=120_u32 {
        let row = others().row(&format!("backbone/speeds_answer.past_speed[{number}]"));
        let (at_ms, value) = (18_100 + 100 * (number as usize - 1), row[0].value.expect("a reading"));
        assert!((value - MOMENTS[at_ms].speed_kmh).abs() <= 0.005 + 1e-6, "{value} km/h at {at_ms} ms");
    }
}

#[test]
fn both_testers_hear_the_same() {
    for (on_can, over_ip, word_or_value) in [
        ("service", "ip_service", 4),
        ("item", "ip_item", 2),
        ("coolant", "ip_coolant", 1),
        ("reason", "ip_reason", 1),
        ("code[1]", "ip_code[1]", 1),
        ("code[2]", "ip_code[2]", 1),
        ("stored[2]", "ip_stored[2]", 1),
    ] {
        let told = |network: &str, frame: &str, signal: &str| {
            let row = others().row(&format!("{network}/{frame}.{signal}"));
            row.iter().map(|point| (point.value, point.word.clone())).collect::<Vec<_>>()
        };
        let heard = told("drive", "engine_answers", on_can);
        assert_eq!(heard, told("backbone", "answers_over_ip", over_ip), "{on_can}");
        assert_eq!(heard.len(), word_or_value, "{on_can}");
    }
}

#[test]
fn everything_is_described_but_the_question_for_an_address() {
    let tally = &others().tally;
    let unknown: Vec<(SeenId, u64)> = tally.unknown_frames().iter().map(|frame| (frame.id, frame.count)).collect();
    assert_eq!(unknown, [(SeenId::Packet { ether_type: 0x0806 }, 2)], "ARP (RFC 826)");
    assert_eq!(
        (tally.damaged, tally.faulty, tally.too_short, tally.not_selected, tally.unmatched_selectors),
        (0, 0, 0, 0, 0)
    );
    assert_eq!(tally.read, tally.sum_of_parts());
    assert_eq!(others().outside_range, Vec::<String>::new());
    let (counters, checksums) = (&tally.counters, &tally.checksums);
    assert_eq!((counters.repeated, counters.jumped, counters.outside_range, checksums.wrong), (0, 0, 0, 0));
    assert!(counters.right > 1_500 && checksums.right > 1_400, "{tally:?}");
}

#[test]
fn the_summary_has_something_to_tell() {
    let tally = &others().tally;
    assert!((20..100).contains(&tally.null), "{} null frames", tally.null);
    assert_eq!((tally.wire_signals, tally.lin.wake_ups, tally.lin.sleep_requests), (2, 1, 1));
    let unanswered: Vec<(SeenId, u64)> = tally.lin.unanswered().iter().map(|&(_, id, count)| (id, count)).collect();
    assert_eq!(unanswered, [(SeenId::Lin(0x24), tally.unanswered)]);
    assert!(tally.unanswered > 80 && tally.lin.right_checksums > 330 && tally.lin.other_checksums == 0);
    let faults: Vec<&str> = tally.first_message_faults().iter().map(|fault| fault.what.as_str()).collect();
    assert!(matches!(faults[..], [one] if one.starts_with("the check byte is")), "{faults:?}");
    assert_eq!(tally.message_faults, 1);
}

/// The tester speaks on a wire that others use. A frame of 8 bytes takes up to 135 bits with its stuff bits (55 + 10n, see `wire.rs`).
#[test]
fn the_tester_finds_the_wire_free() {
    const FRAME_NS: u64 = 135 * 2_000;
    let mut recording = open();
    let mut seen = Vec::new();
    while let Some(frame) = recording.next().expect("it can be read") {
        if frame.medium == Medium::Can {
            seen.push(frame.time_ns.expect("a time") as u64 - START_NS);
        }
    }
    assert_eq!(
        seen.len(),
        4 + 3 + 1 + 1 + 2 + 2,
        "four questions, answers of 3, 1, 1 and 2 frames, two times \"go on\""
    );
    for at_ns in seen {
        let near = drive().frames.iter().filter(|other| other.network == "drive");
        let overlapping = near.filter(|other| other.at_ns.abs_diff(at_ns) < FRAME_NS).count();
        assert_eq!(overlapping, 0, "at {at_ns} ns");
    }
}

/// The frames of the seat stand in their slots; those of the suspension in theirs, on the channels that are described.
#[test]
fn time_divides_the_wires() {
    let mut last_slot_ns = 0;
    let mut cycles = Vec::new();
    let mut recording = open();
    while let Some(frame) = recording.next().expect("it can be read") {
        let at_ns = frame.time_ns.expect("a time") as u64 - START_NS;
        match frame.medium {
            Medium::Lin(_) if frame.kind != Kind::Signal => {
                // A header takes 34 bits, each byte behind it 10 (LIN 2.2A, section 2.3.2); a slot takes 10 ms.
                let bits = if frame.payload.is_empty() { 34 } else { 34 + 10 * (frame.payload.len() as u64 + 1) };
                let begin_ns = at_ns - bits * 1_000_000_000 / 19_200;
                assert!(last_slot_ns == 0 || (9_800_000..10_200_000).contains(&(begin_ns - last_slot_ns)), "{at_ns}");
                last_slot_ns = begin_ns;
            }
            Medium::FlexRay(header) => {
                assert_eq!(u64::from(header.cycle), at_ns / 5_000_000 % 64, "at {at_ns} ns");
                if frame.id == 42 {
                    assert!(matches!(header.cycle % 4, 1 | 3) && !header.on_b);
                    cycles.push(header.cycle);
                }
                assert_eq!(header.sync, matches!(frame.id, 7 | 12));
            }
            _ => {}
        }
    }
    assert_eq!(cycles.len(), 250);
}

#[test]
fn packets_are_sound_by_a_second_opinion() {
    let (mut recording, mut counts) = (open(), [0; 4]);
    while let Some(frame) = recording.next().expect("it can be read") {
        if frame.medium != Medium::Ethernet {
            continue;
        }
        assert!(frame.payload.len() >= 60);
        let packet = SlicedPacket::from_ethernet(frame.payload).expect("a whole packet");
        let tagged: Vec<u16> = packet.vlan_ids().iter().map(|id| id.value()).collect();
        let ip = match &packet.net {
            Some(NetSlice::Ipv4(ip)) => ip.header().to_header(),
            Some(NetSlice::Arp(_)) => {
                counts[0] += 1;
                continue;
            }
            other => panic!("{other:?}"),
        };
        assert_eq!(ip.header_checksum, ip.calc_header_checksum());
        match &packet.transport {
            Some(TransportSlice::Udp(udp)) => {
                let sum = udp.to_header().calc_checksum_ipv4(&ip, udp.payload()).expect("short");
                assert_eq!(udp.checksum(), sum);
                counts[if tagged.is_empty() { 1 } else { 2 }] += 1;
                assert!(tagged.is_empty() || tagged == [5], "{tagged:?}");
            }
            Some(TransportSlice::Tcp(tcp)) => {
                assert_eq!(tcp.checksum(), tcp.calc_checksum_ipv4(ip.source, ip.destination).expect("short"));
                counts[3] += 1;
            }
            other => panic!("{other:?}"),
        }
    }
    assert_eq!(counts[..3], [2, 60, 299 - 1]);
    assert!(counts[3] > 25, "{} segments", counts[3]);
}

fn open() -> Recording {
    let path = demo_folder().join("town-drive-others.pcapng");
    Recording::open(&path, &Options::default()).expect("the recording is in the repository")
}

/// Nothing binds the channels but their names: each is called as its network is.
#[test]
fn channels_have_the_names_of_their_networks() {
    let database = kestrel().expect("the demo description is free of mistakes");
    let mut recording = open();
    while recording.next().expect("it can be read").is_some() {}
    let names: Vec<&str> = recording.channels().iter().map(|channel| channel.name.as_str()).collect();
    assert_eq!(names, ["drive", "seat", "chassis", "backbone"]);
    assert!(names.iter().all(|name| database.network_named(name).is_some()));
}

/// The whole of it: a drive has rows of every network that is in a recording.
#[test]
fn every_network_but_the_camera_speaks() {
    let speaks = |drive: &Drive, network: &str| drive.frames.iter().any(|seen| seen.network == network);
    for network in ["drive", "seat", "chassis", "backbone", "sound", "heater_line"] {
        assert!(speaks(others(), network), "{network}");
    }
    assert!(speaks(drive(), "comfort") && !speaks(others(), "camera"));
}
