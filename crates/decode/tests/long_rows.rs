//! Long messages in tables: column by column gives what frame by frame gives, whatever their lengths, and however many of them wait.

mod both_ways;

use std::fmt::Write;
use std::num::NonZero;

use both_ways::{ByFrame, Random, by_tables, compare, database};
use wirelore_decode::{Decoder, Options, Setup, Tally, Units};
use wirelore_log::write::PcapngWriter;
use wirelore_log::{CanXl, Channel, Frame, LinkType, Medium, Recording};
use wirelore_model::FrameId;
use wirelore_transport::iso_tp::{Layout, segment};

/// Messages with everything that can depend on their length.
const MESSAGES: &str = "\
network test can 500 kbit/s
frame stored on test id 0x7E8, carried by iso_tp {
    length 1..5000
    signal service in byte 0
    signal kind in bits 1.2..1.0
    signal alive in bits 2.3..2.0, counter 0..15
    signal serial in bytes 6..3 signed = raw * 0.5 V, absent 0x7FFFFFFF
    when kind is 0 { signal note in bytes 7..end text latin1 }
    when kind is 1 {
        signal check in bytes 8..7, checksum crc16_ibm_3740 over bytes 9..end
        signal data in bytes 9..end bytes
    }
    when kind is 2 {
        repeat from byte 7 to end, up to 200, size 3 bytes {
            signal code in bytes 0..1 trouble_code
            signal state in byte 2
        }
    }
    when kind is 3 {
        signal title_length in bytes 8..7
        signal title in bytes 9..end text, size title_length
    }
    when kind is 4 {
        signal far in bytes 3001..3000 signed = raw * 0.25 A
        signal farther in bits 4988.6..4990.1 = raw * 0.1 km/h
        signal farthest in byte 4999
    }
}
frame late on test id 0x7E9, carried by iso_tp {
    length 1..5000
    signal first in byte 0
    signal third in bytes 1299..1298 = raw / 3
}
frame whole on test id 0x7EA, carried by iso_tp { signal all in bytes 0..end bytes }
";

/// A text log that is being written.
struct Log {
    text: String,
    frames: u32,
}

impl Log {
    fn new() -> Self {
        Self { text: "time_s,id_hex,data_hex\n".to_owned(), frames: 0 }
    }

    fn line(&mut self, id: u32, payload: &[u8]) {
        let (time, data) = (self.frames, payload.iter().map(|byte| format!("{byte:02X}")).collect::<String>());
        let _ = writeln!(self.text, "{}.{:04},{id:X},{data}", time / 10_000, time % 10_000);
        self.frames += 1;
    }

    /// A message in its frames; where `lost` says so, one of them is missing.
    fn message(&mut self, id: u32, message: &[u8], lost: Option<usize>) {
        let mut number = 0;
        let cut = segment(message, &Layout::default(), &mut |frame| {
            if lost != Some(number) {
                self.line(id, frame);
            }
            number += 1;
        });
        cut.expect("a message that can be sent");
    }
}

fn log(seed: u64, messages: usize) -> String {
    let (mut random, mut log) = (Random(seed), Log::new());
    for number in 0..messages {
        let length = match random.next(8) {
            0 => 1 + random.next(5000),
            1 => 4990 + random.next(11),
            2 | 3 => 1 + random.next(300),
            4 => [4095, 4096, 5000, 1, 7, 8][random.next(6) as usize],
            _ => 1 + random.next(20),
        } as usize;
        let mut message: Vec<u8> = (0..length).map(|_| random.next(256) as u8).collect();
        if let Some(kind) = message.get_mut(1) {
            *kind = random.next(6) as u8;
        }
        if let Some(alive) = message.get_mut(2) {
            *alive = number as u8;
        }
        if let (true, Some(title_length)) = (random.next(5) > 0, message.get_mut(7..9)) {
            title_length.copy_from_slice(&(random.next(length as u64) as u16).to_le_bytes());
        }
        let (id, most) = [(0x7E8, 5000), (0x7E8, 5000), (0x7E9, 5000), (0x7EA, 4095)][random.next(4) as usize];
        message.truncate(most);
        let lost = (random.next(20) == 0).then(|| random.next(10) as usize);
        log.message(id, &message, lost);
        if random.next(30) == 0 {
            // A message of no bytes, which there is no frame for.
            log.line(id, &[0]);
        }
    }
    log.text
}

#[test]
fn messages_of_any_length() {
    let database = database(MESSAGES);
    for (seed, messages) in [(1, 0), (2, 1), (3, 20), (4, 1200)] {
        let (tables, tally) = compare(&database, &Setup::default(), &Options::default(), &[log(seed, messages)]);
        if messages > 1000 {
            assert!(tables.len() == 3 && tables.values().all(|rows| rows.len() > 100), "{tally:?}");
            assert!(tally.message_faults > 10 && tally.too_short > 10, "{tally:?}");
        }
    }
    let logs = [log(5, 200), log(6, 100)];
    compare(&database, &Setup { units: Units::imperial(), ..Setup::default() }, &Options::default(), &logs);
}

#[test]
fn many_short_messages_with_a_long_one_among_them() {
    let database = database(MESSAGES);
    let (mut random, mut log) = (Random(7), Log::new());
    for number in 0..15_000_usize {
        let length = 1 + random.next(7) as usize;
        let message: Vec<u8> = (0..length).map(|at| if at == 1 { 0 } else { number as u8 }).collect();
        log.message(0x7E8, &message, None);
        if number % 5000 == 4999 {
            log.message(0x7E8, &[0; 5000], None);
        }
    }
    let (tables, tally) = compare(&database, &Setup::default(), &Options::default(), &[log.text]);
    assert_eq!((tables[&FrameId(0)].len(), tally.messages), (15_003, 15_003));
}

/// Frames of CAN XL are read in pieces by several threads, and are as long as messages.
const RADAR: &str = "\
network radar can_xl 500 kbit/s, data 10 Mbit/s
frame targets on radar xl 0x00000007 {
    signal count in byte 0
    signal mean in bytes 701..700 signed = raw * 0.01
    signal list in bytes 702..end bytes
}
frame speed on radar id 0x100 { signal v in bytes 1..0 = raw * 0.05 km/h }
";

#[test]
fn threads_change_nothing() {
    let database = database(RADAR);
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("radar.pcapng");
    let mut writer = PcapngWriter::new(std::fs::File::create(&path).expect("a file")).expect("a log");
    let radar = writer.add_channel("radar", LinkType::Can).expect("a channel");
    let (mut random, data) = (Random(8), (0..2048_u32).map(|at| (at * 5) as u8).collect::<Vec<u8>>());
    for number in 0..60_000_i64 {
        let xl = CanXl {
            sdu_type: 3,
            virtual_network: 0,
            acceptance: 7,
            extended_content: false,
            request_substitution: false,
        };
        let length = [8, 8, 8, 702, 1, 2048, 720, 30][random.next(8) as usize];
        let frame = if random.next(4) == 0 {
            Frame {
                medium: Medium::CanXl(xl),
                dlc: None,
                fd: false,
                ..Frame::data(Some(number), radar, 0x10, &data[..length])
            }
        } else {
            Frame::data(Some(number), radar, 0x100, &data[..8])
        };
        writer.write(&frame).expect("it is written");
    }
    writer.finish().expect("it is written");
    let told: Vec<(ByFrame, Tally)> = [1, 2, 5]
        .map(|threads| {
            let options = Options { threads: NonZero::new(threads), ..Options::default() };
            let recording = Recording::open(&path, &wirelore_log::Options::default()).expect("it opens");
            by_tables(&database, &decoder, &options, [recording])
        })
        .into();
    assert_eq!((told[0].1.read, told[0].1.decoded + told[0].1.too_short), (60_000, 60_000));
    assert!(told[0].0[&FrameId(0)].iter().all(|row| row.1 == Channel(0).0 && !row.4.is_empty()));
    for other in &told[1..] {
        assert!(told[0].1 == other.1, "the same counts");
        assert!(told[0].0 == other.0, "the same tables");
    }
}
