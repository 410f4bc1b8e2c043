//! Several senders of one frame: each has a counter of its own, row by row and in tables.

mod common;
mod ethernet;

use common::{Rows, read};
use ethernet::{datagrams, someip};
use wirelore_decode::CounterCounts;

const TWO_EACH: CounterCounts =
    CounterCounts { first: 2, right: 2, repeated: 0, jumped: 0, suspended: 0, outside_range: 0 };

fn counters(description: &str, log: impl AsRef<[u8]>) -> CounterCounts {
    let Rows { lines, tally } = read(description, log);
    assert_eq!((tally.decoded, lines.len()), (4, 4), "{tally:?}");
    tally.counters
}

const COUNT: &str = "{ signal count in byte 0, counter 0..15 }";

#[test]
fn every_identifier_of_a_run_counts_for_itself() {
    let drive = format!("network drive can 500 kbit/s\nframe wheels on drive id 0x200..0x201 {COUNT}\n");
    let log = "time_s,id_hex,data_hex\n0,200,00\n1,201,00\n2,200,01\n3,201,01\n";
    assert_eq!(counters(&drive, log), TWO_EACH);
    let long =
        format!("network drive can 500 kbit/s\nframe wheels on drive id 0x18000000..0x18000100 extended {COUNT}\n");
    let log = "time_s,id_hex,ext,data_hex\n0,18000000,1,00\n1,18000100,1,00\n2,18000000,1,01\n3,18000100,1,01\n";
    assert_eq!(counters(&long, log), TWO_EACH, "also where the low byte is the same");
}

/// SAE J1939-71, from memory: torque/speed control (group 0) goes to one receiver, here to engine (00) and retarder (0F). The priority in front
/// may change from message to message and tells nobody apart (SAE J1939-21).
#[test]
fn every_pair_of_sender_and_receiver_counts_for_itself() {
    let truck = format!("network truck can 250 kbit/s\nframe control on truck pgn 0 {COUNT}\n");
    let log = "time_s,id_hex,ext,data_hex\n0,0C000003,1,00\n1,0C000F03,1,00\n2,08000003,1,01\n3,0C000F03,1,01\n";
    assert_eq!(counters(&truck, log), TWO_EACH);
    let to_all = format!("network truck can 250 kbit/s\nframe state on truck pgn 65265 {COUNT}\n");
    let log = "time_s,id_hex,ext,data_hex\n0,18FEF100,1,00\n1,18FEF10B,1,00\n2,14FEF100,1,01\n3,18FEF10B,1,01\n";
    assert_eq!(counters(&to_all, log), TWO_EACH);
}

#[test]
fn every_instance_of_a_function_block_counts_for_itself() {
    let ring = format!("network sound most 25 Mbit/s\nframe state on sound function 0x22.any.0x0D2 {COUNT}\n");
    let log = "time_s,id,data\n0,22.01.0D2.C,00\n1,22.02.0D2.C,00\n2,22.01.0D2.C,01\n3,22.02.0D2.C,01\n";
    assert_eq!(counters(&ring, log), TWO_EACH);
}

/// Header of three bytes and sum of ISO 14230-2 (from memory): format with the length, target, source.
#[test]
fn every_sender_on_a_diagnostic_line_counts_for_itself() {
    let line = "network test kline 10_400 bit/s\nframe answers on test starts 0x61 { signal count in byte 1, counter 0..15 }\n";
    let mut log = String::from("time_s,data\n");
    for (second, (source, count)) in [(0x10_u8, 0_u8), (0x28, 0), (0x10, 1), (0x28, 1)].into_iter().enumerate() {
        let bytes = [0x82, 0xF1, source, 0x61, count];
        let sum = bytes.iter().fold(0_u8, |sum, byte| sum.wrapping_add(*byte));
        log += &format!("{second},{}{sum:02X}\n", bytes.map(|byte| format!("{byte:02X}")).concat());
    }
    assert_eq!(counters(line, &log), TWO_EACH);
}

#[test]
fn every_client_of_a_service_counts_for_itself() {
    let backbone =
        format!("network backbone ethernet 100 Mbit/s\nframe limit on backbone service 0x4A10 method 1 {COUNT}\n");
    let message = |client, session, count| someip(0x4A10_0001, client, session, 0, &[count]);
    let log = [message(7, 1, 0), message(8, 1, 0), message(7, 2, 1), message(8, 2, 1)];
    assert_eq!(counters(&backbone, datagrams(30_501, &log)), TWO_EACH);
}

/// Header of ISO 13400-2 (from memory): version and its inverse, type, length; then source and target.
#[test]
fn every_unit_that_answers_over_doip_counts_for_itself() {
    let backbone = "network backbone ethernet 100 Mbit/s\nframe answers on backbone doip 0x8001 { signal count in byte 1, counter 0..15 }\n";
    let message = |source: u8, count| vec![2, 0xFD, 0x80, 1, 0, 0, 0, 6, 0x10, source, 0x0E, 0, 0x62, count];
    let log = [message(1, 0), message(2, 0), message(1, 1), message(2, 1)];
    assert_eq!(counters(backbone, datagrams(13_400, &log)), TWO_EACH);
}
