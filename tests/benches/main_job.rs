//! The main job at real sizes: text to database, stored database to memory, recording to values.
//!
//! `cargo bench -p wirelore-tests --bench main_job`. What each line means is told by its throughput: frames for recordings, bytes for texts.

use std::hint::black_box;
use std::io::Cursor;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use wirelore_decode::{Decoder, Event, Options, Reading, Session, Sink};
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::{Database, SignalId, store};
use wirelore_tests::workload;

const FRAMES: u64 = 1_000_000;

fn database(frames: u32, signals: u32) -> Database {
    check_text("bench.lore", &workload::description(frames, signals)).database.expect("the workload has no mistakes")
}

fn recording(bytes: &[u8]) -> Recording {
    let reader = Box::new(Cursor::new(bytes.to_vec()));
    Recording::from_reader(reader, "bench.pcapng", &wirelore_log::Options::default()).expect("the workload opens")
}

/// Adds up what it is given, so that nothing is optimised away.
struct Sum(f64);

impl Sink for Sum {
    fn reading(&mut self, _event: &Event<'_>, _signal: SignalId, reading: Reading<'_>) {
        self.0 += reading.value.number().unwrap_or(0.0);
    }
}

fn recordings(criterion: &mut Criterion) {
    let bytes = workload::recording(120, FRAMES);
    let database = database(120, 8);
    let decoder = Decoder::new(&database).expect("the workload can be decoded");
    let mut group = criterion.benchmark_group("recording");
    group.sample_size(10).throughput(Throughput::Elements(FRAMES));
    group.bench_function("pcapng to frames", |bencher| {
        bencher.iter(|| {
            let mut recording = recording(&bytes);
            let mut length = 0;
            while let Some(frame) = recording.next().expect("the workload is whole") {
                length += frame.payload.len();
            }
            length
        });
    });
    group.bench_function("pcapng to values, 8 a frame", |bencher| {
        bencher.iter(|| {
            let mut session = Session::new(&decoder, &Options::default()).expect("a session begins");
            let mut sum = Sum(0.0);
            session.run(&mut recording(&bytes), &mut sum).expect("the workload is whole");
            sum.0
        });
    });
    let folder = tempfile::tempdir().expect("a folder for the files");
    let path = |name: &str| folder.path().join(name).into_os_string();
    std::fs::write(path("bench.lore"), workload::description(120, 8)).expect("the folder can be written to");
    std::fs::write(path("bench.pcapng"), &bytes).expect("the folder can be written to");
    group.bench_function("the command: pcapng file to csv file, 8 values a frame", |bencher| {
        bencher.iter(|| {
            let words = ["wirelore".into(), "decode".into(), path("bench.lore"), path("bench.pcapng")];
            wirelore_cli::run(words.into_iter().chain(["--quiet".into(), "-o".into(), path("bench.csv")]))
        });
    });
    group.finish();
}

fn descriptions(criterion: &mut Criterion) {
    let text = workload::description(5_000, 12);
    let database = database(5_000, 12);
    let stored = store::to_lorebin(&database);
    let mut group = criterion.benchmark_group("description of 5,000 frames, 60,000 signals");
    group.sample_size(10);
    group.throughput(Throughput::Bytes(text.len() as u64));
    group.bench_function("check text", |bencher| {
        bencher.iter(|| black_box(check_text("bench.lore", &text)).database.is_some())
    });
    group.throughput(Throughput::Bytes(stored.len() as u64));
    group.bench_function("load .lorebin", |bencher| {
        bencher.iter(|| store::load(black_box(&stored)).expect("it is whole"))
    });
    group.finish();
}

criterion_group!(benches, recordings, descriptions);
criterion_main!(benches);
