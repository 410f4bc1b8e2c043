//! How many frames a second the readers give, from memory and on one core.
//!
//! The logs hold a million frames of eight bytes on two channels. The goal is 5 million frames a second from pcapng and 3
//! million lines a second from text.

use std::hint::black_box;
use std::io::Cursor;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use wirelore_log::write::PcapngWriter;
use wirelore_log::{Frame, LinePattern, LinkType, Options, Recording};

const FRAMES: u32 = 1_000_000;

/// Calls `give` with every frame of the test drive, on channel 0 or 1.
fn drive(mut give: impl FnMut(u16, Frame<'_>)) {
    for number in 0..FRAMES {
        let payload = (u64::from(number) * 0x9E37_79B9_7F4A_7C15).to_le_bytes();
        let id = 0x18FE_0000 | (number % 90) << 8;
        let channel = (number % 2) as u16;
        give(channel, Frame::data(Some(i64::from(number) * 123_457), wirelore_log::Channel(channel), id, &payload));
    }
}

fn as_pcapng() -> Vec<u8> {
    let mut log = PcapngWriter::new(Vec::new()).expect("memory");
    log.add_channel("drive", LinkType::Can).expect("memory");
    log.add_channel("comfort", LinkType::Can).expect("memory");
    drive(|_, frame| log.write(&frame).expect("memory"));
    log.finish().expect("memory")
}

/// Every column that there is.
fn as_text() -> Vec<u8> {
    let mut text = b"time_s,channel,id_hex,extended,kind,fd,bit_rate_switch,error_state,dlc,data_hex\n".to_vec();
    drive(|channel, frame| {
        let time_ns = frame.time_ns.unwrap_or_default();
        let data: String = frame.payload.iter().map(|byte| format!("{byte:02X}")).collect();
        let name = ["drive", "comfort"][usize::from(channel)];
        let (seconds, fraction) = (time_ns / 1_000_000_000, time_ns % 1_000_000_000);
        let line = format!("{seconds}.{fraction:09},{name},{:X},1,data,0,0,0,8,{data}\n", frame.id);
        text.extend_from_slice(line.as_bytes());
    });
    text
}

/// Few columns, as most recorders write them.
fn as_plain_text() -> Vec<u8> {
    let mut text = b"time_s,id_hex,ext,len,data_hex\n".to_vec();
    drive(|_, frame| {
        let time_us = frame.time_ns.unwrap_or_default() / 1_000;
        let data: String = frame.payload.iter().map(|byte| format!("{byte:02x}")).collect();
        let line = format!("{}.{:06},{:08X},1,8,{data}\n", time_us / 1_000_000, time_us % 1_000_000, frame.id);
        text.extend_from_slice(line.as_bytes());
    });
    text
}

fn count(log: &'static [u8], options: &Options) -> u64 {
    let mut recording = Recording::from_reader(Box::new(Cursor::new(log)), "bench", options).expect("opens");
    let mut sum = 0;
    while let Some(frame) = recording.next().expect("reads") {
        sum += u64::from(black_box(frame).payload[0]);
    }
    assert_eq!(recording.report().frames_read(), u64::from(FRAMES));
    sum
}

fn count_in_stretches(log: &'static [u8], options: &Options) -> u64 {
    const STRETCH_BYTES: usize = 1 << 20;
    let mut recording = Recording::from_reader(Box::new(Cursor::new(log)), "bench", options).expect("opens");
    let mut sum = 0;
    while recording.stretch(STRETCH_BYTES, &mut |frame: &Frame<'_>| sum += u64::from(frame.payload[0])).expect("reads")
    {
    }
    assert_eq!(recording.report().frames_read(), u64::from(FRAMES));
    sum
}

fn readers(criterion: &mut Criterion) {
    let plain = as_plain_text();
    let lines_only = plain.splitn(2, |byte| *byte == b'\n').nth(1).expect("has a header").to_vec();
    let line = LinePattern::parse("{time},{id},{extended},{length},{data}").expect("is a pattern");
    let patterned = Options { line: Some(line), ..Options::default() };
    let mut group = criterion.benchmark_group("readers");
    group.throughput(Throughput::Elements(u64::from(FRAMES))).sample_size(10);
    let logs = [
        ("pcapng", as_pcapng(), Options::default()),
        ("text, ten columns", as_text(), Options::default()),
        ("text, five columns", plain, Options::default()),
        ("text, pattern", lines_only, patterned),
    ];
    for (name, log, options) in logs {
        let log: &'static [u8] = log.leak();
        assert_eq!(count(log, &options), count_in_stretches(log, &options));
        group.bench_function(name, |bencher| bencher.iter(|| count(log, &options)));
        let in_stretches = format!("{name}, in stretches");
        group.bench_function(in_stretches, |bencher| bencher.iter(|| count_in_stretches(log, &options)));
    }
    group.finish();
}

criterion_group!(benches, readers);
criterion_main!(benches);
