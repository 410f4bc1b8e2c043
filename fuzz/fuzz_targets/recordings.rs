//! Any bytes as a recording, in every way that a user can ask for: reading ends, the report adds up, and frame by frame from a reader, in
//! stretches of memory and in pieces of a file the frames and the report are the same.
#![no_main]

use std::fs;
use std::io::Cursor;

use libfuzzer_sys::fuzz_target;
use wirelore_log::{ColumnMap, Frame, IdentifierOrder, LinePattern, Medium, Options, Recording};

fuzz_target!(|input: &[u8]| {
    let Some((way, bytes)) = input.split_first() else { return };
    let mut options = Options::default();
    match way % 8 {
        1 => options.columns = ColumnMap::parse("time=t:s, id=i:hex, data=d:hex").ok(),
        2 => options.line = LinePattern::parse("{time:s};{channel};{id:hex};{data:hex}").ok(),
        3 => options.identifiers = IdentifierOrder::Swapped,
        4 => options.columns = ColumnMap::parse("pid=p, checksum=c, slot=s, cycle=y, flexray_channel=f, data=d").ok(),
        5 => options.line = LinePattern::parse("{pid} {checksum} {slot} {cycle} {id} {data}").ok(),
        6 => options.line = LinePattern::parse("{time}: {data}").ok(),
        _ => {}
    }
    let opened = Recording::from_reader(Box::new(Cursor::new(bytes.to_vec())), "input", &options);
    let Ok(mut recording) = opened else { return };
    let mut frames = Vec::new();
    while let Ok(Some(frame)) = recording.next() {
        assert!(frame.payload.len() <= bytes_max(&frame), "a payload longer than its network has");
        frames.push(told(&frame));
    }
    let report = recording.report();
    let given = report.frames_read() - report.damaged;
    assert_eq!(given, frames.len() as u64, "the report counts other frames than were given");
    let report = format!("{report:?} {:?}", report.notes());

    let mut stretched = Recording::from_bytes(bytes.to_vec(), "input", &options).expect("it opened before");
    let mut others = Vec::new();
    let most_bytes = 1 + usize::from(way / 8) * 14;
    while let Ok(true) = stretched.stretch(most_bytes, &mut |frame: &Frame<'_>| others.push(told(frame))) {}
    assert_eq!(frames, others, "in stretches");
    assert_eq!(report, format!("{:?} {:?}", stretched.report(), stretched.report().notes()), "in stretches");

    // Files are dearer: one input in eight.
    if way / 8 % 8 == 0 {
        let path = std::env::temp_dir().join(format!("wirelore-fuzz-{}", std::process::id()));
        fs::write(&path, bytes).expect("there is room");
        let mut file = Recording::open(&path, &options).expect("it opened before");
        let in_pieces = by_pieces(&mut file);
        assert_eq!(frames, in_pieces, "in pieces");
        assert_eq!(report, format!("{:?} {:?}", file.report(), file.report().notes()), "in pieces");
        fs::remove_file(&path).expect("it was just written");
    }
});

/// The most bytes that a payload can have.
fn bytes_max(frame: &Frame<'_>) -> usize {
    match frame.medium {
        Medium::Can => 64,
        Medium::CanXl(_) => 2048,
        Medium::Lin(_) => 8,
        Medium::FlexRay(_) => 254,
        Medium::Most(_) | Medium::Serial => 4096,
        Medium::Ethernet => 16 * 1024 * 1024,
    }
}

/// Everything about a frame.
fn told(frame: &Frame<'_>) -> String {
    format!("{frame:?}")
}

fn by_pieces(file: &mut Recording) -> Vec<String> {
    let mut frames = Vec::new();
    loop {
        let mut joined = false;
        for piece in file.pieces(3, 64) {
            let mut of_piece = Vec::new();
            let end = piece.read(&mut |frame: &Frame<'_>| of_piece.push(told(frame)));
            if !file.join(end) {
                break;
            }
            frames.append(&mut of_piece);
            joined = true;
        }
        if !joined && !matches!(file.stretch(100, &mut |frame: &Frame<'_>| frames.push(told(frame))), Ok(true)) {
            return frames;
        }
    }
}
