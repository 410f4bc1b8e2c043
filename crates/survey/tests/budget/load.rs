//! Loads of CAN and CAN FD.

use std::fmt::Write;

use wirelore_survey::budget::{Budget, Rank, Remark, WhyNot};

use crate::support::{assert_near, described, load_of};

/// Derived by hand: 20 frames of 10 ms, 15 of 20 ms, 20 of 100 ms and 10 of 1 s make 2960 frames a second; of 8 bytes in the base format,
/// 111 bits without stuff bits and 135 at the bound (Davis, Burns, Bril, Lukkien 2007), they are 65.7 % and 79.9 % of 500 kbit/s.
#[test]
fn a_worked_example() {
    let mut text = "network drive can 500 kbit/s\n".to_owned();
    let mut id = 0x100;
    for (count, period) in [(20, "10 ms"), (15, "20 ms"), (20, "100 ms"), (10, "1 s")] {
        for _ in 0..count {
            let _ = write!(text, "frame f{id} on drive id 0x{id:X} {{\n every {period}\n length 8\n}}\n");
            id += 1;
        }
    }
    let load = load_of(&text, "drive");
    assert_near(load.frames_per_s, 2960.0);
    assert_near(load.bits_per_s.least, 2960.0 * 111.0);
    assert_near(load.bits_per_s.most, 2960.0 * 135.0);
    let share = load.share.expect("there is a rate");
    assert_near(share.least, 0.65712);
    assert_near(share.most, 0.7992);
    // Recorded frames are about 10 % shorter than the bound (Nolte, Hansson, Norström, Punnekkat 2001).
    assert_near(share.expected, 0.9 * 0.7992);
    assert!(load.remarks.is_empty() && load.uncounted.is_empty());
}

/// Rates change in the middle of a frame of CAN FD. 8 bytes, base format (ISO 11898-1): 17 bits before the switch and 13 at the end at the nominal
/// rate; 5 + 64 + 27 at the data rate.
#[test]
fn two_rates() {
    let text = "network fast can_fd 500 kbit/s, data 2 Mbit/s
        frame f on fast id 0x123 {
            every 10 ms
            length 8
        }";
    let load = load_of(text, "fast");
    let share = load.share.expect("there are rates");
    assert_near(share.least, 100.0 * (30.0 / 500e3 + 96.0 / 2e6));
    assert!(share.most > share.expected && share.expected >= share.least);
    // Without a data rate nothing is switched.
    let one = load_of(&text.replace(", data 2 Mbit/s", ""), "fast");
    assert_near(one.share.expect("there is a rate").least, 100.0 * 126.0 / 500e3);
}

/// The two usual figures hold for the ordinary period, the bound for the shortest time between two frames.
#[test]
fn the_fastest_pace_counts_at_most() {
    let text = "network drive can 500 kbit/s
        frame faster on drive id 0x100 {
            every 20 ms while wanted is 1, else every 200 ms
            length 8
            signal wanted in bit 0.0 flag
        }
        frame changing on drive id 0x101 {
            every 1 s or on change, at least 20 ms apart
            length 8
        }
        frame only_change on drive id 0x102 {
            on change, at least 100 ms apart
            length 8
        }
        frame turning on drive id 0x103 {
            every 10..40 ms
            length 8
        }";
    let load = load_of(text, "drive");
    let rates: Vec<(f64, f64)> = load.streams.iter().map(|it| it.frames_per_s).collect();
    for (found, expected) in rates.iter().zip([(5.0, 50.0), (1.0, 50.0), (0.0, 10.0), (100.0, 100.0)]) {
        assert_near(found.0, expected.0);
        assert_near(found.1, expected.1);
    }
    assert_near(load.frames_per_s, 106.0);
}

/// What a description does not say is told, not made up.
#[test]
fn what_is_not_said_is_told() {
    let text = "network drive can 500 kbit/s
        network quiet can
        frame no_period on drive id 0x100 { length 8 }
        frame no_length on drive id 0x101 { every 10 ms }
        frame run on drive id 0x200..0x20F {
            every 10 ms
            length 8
        }
        frame open on drive id 0x102 {
            every 1 s or on change
            length 1
        }
        frame long on drive id 0x7E0, carried by iso_tp { every 1 s }
        frame f on quiet id 0x100 {
            every 10 ms
            length 8
        }";
    let database = described(text);
    let budget = Budget::of(&database);
    let drive = &budget.networks[0];
    let name = |id: wirelore_model::FrameId| database.frames[id.index()].label.name.as_str();
    let why: Vec<(&str, WhyNot)> = drive.uncounted.iter().map(|it| (name(it.frame), it.why)).collect();
    assert_eq!(why, [("no_period", WhyNot::NoPeriod), ("run", WhyNot::ManyIdentifiers), ("long", WhyNot::LengthOpen)]);
    let of = |wanted: &str| database.frame_named(wanted).expect("it is there").0;
    assert_eq!(drive.remarks, [Remark::LengthAssumed(vec![of("no_length")]), Remark::OnChangeOpen(vec![of("open")])]);
    let quiet = &budget.networks[1];
    assert_eq!(quiet.remarks, [Remark::NoRate]);
    assert_eq!(quiet.share, None);
    assert_near(quiet.bits_per_s.least, 11_100.0);
}

/// ISO 11898-1: the smaller identifier first, the base format before the extended one with the same leading bits. Parameter groups have
/// an identifier for each source; longer ones come in packets of priority 7 (SAE J1939-21, from memory).
#[test]
fn streams_stand_in_order_of_priority() {
    let text = "network truck can 250 kbit/s
        ecu engine on truck, address 0x00
        ecu brakes on truck, address 0x0B
        frame late on truck id 0x7FF {
            every 1 s
            length 1
        }
        frame early on truck id 0x0F2 {
            every 1 s
            length 1
        }
        frame speed on truck pgn 61444 from 0x00 priority 3 {
            every 20 ms
            length 8
        }
        frame state on truck pgn 65265 {
            sent by engine, brakes every 100 ms
            length 8
        }
        frame codes on truck pgn 65226, carried by j1939_tp {
            sent by engine every 1 s
            length 2..20
        }";
    let load = load_of(text, "truck");
    let order: Vec<String> = load.streams.iter().filter_map(|it| it.stream.rank).map(|it| it.to_string()).collect();
    assert_eq!(order, ["0x0F2", "0x0CF00400", "0x18FEF100", "0x18FEF10B", "0x1CEBFF00", "0x7FF"]);
    assert_eq!(Rank::of_id(0x0CF0_0400, true).id(), 0x0CF0_0400);
    // Announcement and 3 packets for 20 bytes.
    assert_eq!(load.streams[4].stream.parts, 4);
    assert_near(load.frames_per_s, 2.0 + 50.0 + 20.0 + 4.0);
    let shares: f64 = load.units.iter().filter_map(|unit| unit.share).map(|share| share.least).sum();
    assert_near(shares, load.share.expect("there is a rate").least);
    assert_eq!(load.units.len(), 3, "engine, brakes, and nobody");
}

/// What a gateway passes on is its own traffic on the other network, at the pace of the route.
#[test]
fn frames_that_are_passed_on() {
    let text = "network drive can 500 kbit/s
        network comfort can 125 kbit/s
        ecu brakes on drive
        ecu hub on drive, comfort
        frame speeds on drive id 0x1B4 {
            sent by brakes every 10 ms
            length 8
        }
        frame fuel on drive id 0x3D4 {
            sent by brakes every 100 ms
            length 2
        }
        gateway hub {
            pass speeds from drive to comfort as id 0x3A0, every 100 ms
            pass fuel from drive to comfort, every 10th
        }";
    let load = load_of(text, "comfort");
    assert_near(load.frames_per_s, 11.0);
    let [unit] = load.units.as_slice() else { panic!("the gateway sends everything") };
    assert_eq!(unit.ecus, [wirelore_model::EcuId(1)]);
    assert_near(load.share.expect("there is a rate").least, (10.0 * 111.0 + 63.0) / 125e3);
}
