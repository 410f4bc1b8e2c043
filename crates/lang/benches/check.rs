//! How long a whole description takes, from text in memory to the checked database, on one core.
//!
//! Two descriptions of 5,000 frames and about as many signals as a whole vehicle has: one with nothing but places and formulas, and one
//! with all that people write beside them. The goal is 30 ms for the plain one (60,000 signals, 4 MB).

use std::fmt::Write;
use std::hint::black_box;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use wirelore_lang::{FileId, check_text, syntax::Script};

const FRAMES: u32 = 5_000;

/// Networks, control units, and frames with the text that `body` gives for each.
fn description(body: impl Fn(&mut String, u32)) -> String {
    let mut text = String::from("edition 1\n");
    for network in 0..3 {
        let _ = writeln!(text, "network net{network} can 500 kbit/s\necu unit{network} on net{network}");
    }
    for frame in 0..FRAMES {
        let (network, id, period) = (frame % 3, 0x1800_0000 + frame, 10 * (1 + frame % 20));
        let _ = writeln!(text, "## What unit {network} tells about part {frame}.");
        let _ = writeln!(text, "frame frame_{frame} \"Part {frame}\" on net{network} id 0x{id:08X} extended {{");
        let _ = writeln!(text, "    sent by unit{network} every {period} ms\n    length 8");
        body(&mut text, frame);
        text.push_str("}\n");
    }
    text
}

/// Twelve signals of five bits a frame.
fn plain() -> String {
    const FORMULAS: [&str; 4] = ["raw * 0.05 km/h", "raw * 0.01 - 40 °C", "raw / 256 bar", "raw * 0.125 rpm"];
    description(|text, _| {
        for signal in 0..12 {
            let kind = if signal % 3 == 1 { "signed " } else { "" };
            let formula = FORMULAS[signal % 4];
            let _ = writeln!(text, "    signal signal_{signal} in lsb {} width 5 intel {kind}= {formula}", signal * 5);
        }
    })
}

/// Titles, notes, ranges, special values, states, pages.
fn rich() -> String {
    description(|text, _| {
        text.push_str(
            r#"    ## The temperature of the coolant where it leaves the engine.
    signal coolant_temperature "Coolant"  in byte 0 = raw - 40 °C, range -40..210, absent 0xFF, fault 0xFE
    signal wheel_speed "Wheel speed, front left"  in bytes 1..2 = raw * 0.05 km/h, range 0..3000, absent 0xFFFF, likely "seen"
    signal torque  in bytes 4..3 signed = raw * 0.5 Nm, range -1000..1000, confirmed
    signal lamp in bits 5.3..5.2, states { 0 off "Off", 1 on "On", 2 blinks "Blinks" }
    signal selector in bits 5.7..5.4
    when selector is 0, 1 {
        signal pressure "Oil pressure" in byte 6 = raw * 0.04 bar, range 0..10
        signal level in byte 7 = raw * 0.4 %, range 0..100
    }
    when selector is 2 {
        signal distance "Distance" in bytes 7..6 = raw * 0.125 km
    }
    otherwise {
        unknown bytes 6..7
    }
"#,
        );
    })
}

fn check(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("check");
    group.sample_size(20);
    for (name, text) in [("plain", plain()), ("rich", rich())] {
        let checked = check_text("bench.lore", &text);
        assert!(checked.database.is_some() && checked.diagnostics.is_empty(), "{:?}", checked.diagnostics.first());
        group.throughput(Throughput::Bytes(text.len() as u64));
        group.bench_function(format!("{name}: text to tokens"), |bencher| {
            bencher.iter(|| black_box(Script::new(text.as_str(), FileId(0))));
        });
        group.bench_function(format!("{name}: text to tree"), |bencher| {
            bencher.iter(|| black_box(Script::new(text.as_str(), FileId(0)).read().1.len()));
        });
        group.bench_function(format!("{name}: text to database"), |bencher| {
            bencher.iter(|| check_text("bench.lore", black_box(&text)));
        });
    }
    group.finish();
}

criterion_group!(benches, check);
criterion_main!(benches);
