//! What recordings show.

use wirelore_decode::{BindMap, Decoder};
use wirelore_log::{Options, Recording};
use wirelore_model::Database;
use wirelore_survey::budget::measure::{Meter, MeterTally, NetworkMeasure};

use crate::support::{assert_near, described};

fn measured(database: &Database, log: &str) -> (Vec<NetworkMeasure>, MeterTally) {
    let decoder = Decoder::new(database).expect("it can be decoded");
    let mut meter = Meter::new(database, &decoder, &BindMap::default()).expect("there is a network");
    let reader = Box::new(std::io::Cursor::new(log.as_bytes().to_vec()));
    let mut recording = Recording::from_reader(reader, "log", &Options::default()).expect("it is a log");
    meter.log(&mut recording, |_| {}).expect("it can be read");
    meter.finish()
}

/// Stuff bits by hand. Identifier 0, 8 bytes of 0: 16 stuff bits (long division, then one after every five equal bits): 127 bits
/// with the pause. Identifier 0x555 without data: 1.
#[test]
fn exact_bits() {
    let database = described(
        "network drive can 100 kbit/s
         ecu a on drive
         frame zeros on drive id 0x000 {
            sent by a
            length 8
         }",
    );
    let mut log = "time,id,data\n".to_owned();
    for tenth in 0..10 {
        log.push_str(&format!("{}.{tenth},000,0000000000000000\n", 0));
    }
    log.push_str("1.0,555,\n1.1,12345678,01\n");
    let (networks, tally) = measured(&database, &log);
    let [drive] = networks.as_slice() else { panic!("one network") };
    assert_eq!((tally.read, tally.counted), (12, 12));
    // 64 + 8 + 1 bytes of the third: between 75 and 90 bits.
    let third = drive.identifiers.iter().find(|it| it.frame.is_none() && it.bits > 70).expect("it was seen");
    assert!((75..=90).contains(&third.bits));
    assert_eq!(drive.bits, 10 * 127 + 48 + third.bits);
    assert_eq!(drive.bare_bits, 10 * 111 + 47 + 75);
    assert_near(drive.span_s, 1.1);
    let (share, bare) = drive.share.expect("there is a rate");
    assert_near(share, drive.bits as f64 / (100e3 * 1.1));
    assert_near(bare, drive.bare_bits as f64 / (100e3 * 1.1));
    let second = drive.busiest_second.expect("it is longer than a second");
    assert_eq!(second.from_ns, 0);
    assert_near(second.share, 1270.0 / 100e3);
    let described: Vec<_> =
        drive.identifiers.iter().map(|it| (it.frame.is_some(), it.senders.len(), it.frames)).collect();
    assert_eq!(described, [(true, 1, 10), (false, 0, 1), (false, 0, 1)]);
}

/// Each frame is counted once, whatever it is.
#[test]
fn every_frame_is_counted_once() {
    let database = described(
        "network drive can 100 kbit/s\nnetwork other can 100 kbit/s\nframe f on drive id 0x100\nframe g on drive id 0x101\nframe h on other id 0x200",
    );
    let log = "time,channel,id_hex,remote,data\n0.0,drive,100,0,11\n0.1,drive,100,1,\n0.2,nowhere,300,0,11\n";
    let (_, tally) = measured(&database, log);
    let parts = tally.counted + tally.on_unbound_channels + tally.of_unknown_length + tally.damaged + tally.no_frames;
    assert_eq!((tally.read, parts), (3, 3));
    assert_eq!((tally.counted, tally.on_unbound_channels), (2, 1));
}
