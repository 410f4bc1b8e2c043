//! The fast ways give what the careful ways give: random logs that are nearly plain, read in stretches and frame by frame.
//!
//! `common::read_with` reads each log both ways and compares them, here and in every other test of this crate.

mod common;

use common::{Blocks, read_with, record};
use wirelore_log::{Frame, IdentifierOrder, Options, PlainRun, Receive, Recording};

/// A small generator of numbers that are the same every time.
struct Dice(u64);

impl Dice {
    fn below(&mut self, sides: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % sides
    }

    fn one_of<T: Copy>(&mut self, choices: &[T]) -> T {
        choices[self.below(choices.len() as u64) as usize]
    }

    /// Mostly false.
    fn seldom(&mut self) -> bool {
        self.below(60) == 0
    }
}

const HEADERS: [&str; 14] = [
    "time_s,channel,id_hex,data_hex",
    "time_s,id_hex,data_hex",
    "time_ms;channel;id_hex;data_hex",
    "time_us\tid_hex\tdata_hex",
    "time_ns,id_dec,data_hex",
    "time_s,channel,id_hex,extended,kind,fd,bit_rate_switch,error_state,dlc,data_hex",
    "time_s,id_hex,ext,len,data_hex,flag",
    "id_hex,data_hex,time_s,channel",
    "channel,time_s,note,id_hex,data_hex",
    "note,time_s,id_hex,data_hex,remark,crc_ok",
    "time_s,id,data,remote,length,dlc",
    "time_s;id_hex;fd;dlc;data_hex",
    "time,channel,id_hex,data_hex",
    "id_hex,data_hex",
];

/// What stays the same in most lines of a text.
struct Habits {
    decimals: usize,
    id_digits: usize,
    /// How many identifiers there are, of 11 bits or so.
    ids: u64,
    prefix: &'static str,
    upper_case: bool,
    data_bytes: usize,
    time_ns: u64,
    /// Hardly a line is not as the one before, and there are enough of them to go through the fastest way together.
    steady: bool,
}

impl Habits {
    fn new(dice: &mut Dice) -> Self {
        Self {
            steady: dice.below(6) == 0,
            decimals: dice.below(11) as usize,
            id_digits: dice.one_of(&[3, 3, 8, 0]),
            ids: dice.one_of(&[5, 20, 0x800]),
            prefix: dice.one_of(&["", "", "", "0x"]),
            upper_case: dice.below(2) == 0,
            data_bytes: dice.one_of(&[8, 8, 8, 2, 64]),
            time_ns: dice.one_of(&[0, 99_999_000_000, 1_700_000_000_000_000_000]),
        }
    }

    /// Mostly false.
    fn seldom(&self, dice: &mut Dice) -> bool {
        if self.steady { dice.below(900) == 0 } else { dice.seldom() }
    }

    fn time(&mut self, dice: &mut Dice) -> String {
        self.time_ns += dice.below(20_000_000);
        if self.seldom(dice) {
            let odd =
                ["", "-1.5", "+2", ".5", "5.", "1e3", "1.2.3", " 7.5", "99999999999.1", "2023-11-14T22:13:20.25Z", "x"];
            return dice.one_of(&odd).to_owned();
        }
        if self.seldom(dice) {
            self.time_ns -= self.time_ns.min(50_000_000);
            self.decimals = dice.below(11) as usize;
        }
        let digits = format!("{:010}", self.time_ns % 1_000_000_000 * 10);
        match self.decimals {
            0 => (self.time_ns / 1_000_000_000).to_string(),
            decimals => format!("{}.{}", self.time_ns / 1_000_000_000, &digits[..decimals]),
        }
    }

    fn id(&self, dice: &mut Dice, is_decimal: bool) -> String {
        if self.seldom(dice) {
            let odd = ["", "0x1A3", "20000000", "G1", " 123", "123456789", "0", "00000123", "1FFFFFFF"];
            return dice.one_of(&odd).to_owned();
        }
        // The few are spread, and some of them have more than 11 bits.
        let id = if self.steady || dice.below(3) > 0 {
            dice.below(self.ids) * (0x900 / self.ids)
        } else {
            dice.below(0x2000_0000)
        };
        match (is_decimal, self.upper_case) {
            (true, _) => id.to_string(),
            (false, true) => format!("{}{id:01$X}", self.prefix, self.id_digits),
            (false, false) => format!("{}{id:01$x}", self.prefix, self.id_digits),
        }
    }

    fn data(&mut self, dice: &mut Dice) -> String {
        if self.seldom(dice) {
            return dice.one_of(&["ABC", "0x00", "zz", "", "AA BB", " 00", "\"00\"", "00\r"]).to_owned();
        }
        if !self.steady && dice.below(10) == 0 {
            self.data_bytes = dice.one_of(&[8, 0, 1, 7, 9, 12, 20, 64, 65]);
        }
        let bytes: Vec<u64> = (0..self.data_bytes).map(|_| dice.below(256)).collect();
        match self.upper_case {
            true => bytes.iter().map(|byte| format!("{byte:02X}")).collect(),
            false => bytes.iter().map(|byte| format!("{byte:02x}")).collect(),
        }
    }
}

/// A text whose lines are mostly alike.
fn text(dice: &mut Dice) -> Vec<u8> {
    let header = dice.one_of(&HEADERS);
    let delimiter = header.chars().find(|letter| matches!(letter, ',' | ';' | '\t')).expect("is there");
    let mut habits = Habits::new(dice);
    let mut text = format!("{header}\n");
    let lines = if habits.steady { 200 + dice.below(200) } else { 20 + dice.below(60) };
    for _ in 0..lines {
        let data = habits.data(dice);
        let held = data.len() / 2;
        let cells: Vec<String> = header
            .split(delimiter)
            .map(|heading| match heading {
                "channel" if habits.seldom(dice) => dice.one_of(&["", "\"q\"", "x y", "#c", "drive "]).to_owned(),
                "channel" if habits.steady => dice.one_of(&["drive", "climb", "light"]).to_owned(),
                "channel" => dice.one_of(&["drive", "comfort", "body", "chassis", "a name beyond fifteen"]).to_owned(),
                "id_hex" | "id" | "id_dec" => habits.id(dice, heading == "id_dec"),
                "data_hex" | "data" => data.clone(),
                "dlc" if held > 8 && dice.below(2) == 0 => dice.one_of(&["9", "15", "10", "11"]).to_owned(),
                "dlc" | "len" | "length" if dice.seldom() => dice.one_of(&["", "0", "08", "15", "x", "64"]).to_owned(),
                "dlc" | "len" | "length" => held.to_string(),
                "fd" => if held > 8 { "1" } else { dice.one_of(&["0", "0", "0", "1", ""]) }.to_owned(),
                "kind" => dice.one_of(&["data", "data", "data", "", "remote", "error"]).to_owned(),
                "note" | "remark" | "flag" => {
                    if dice.seldom() { dice.one_of(&["#", "\"a\"", "b\"", " ", "long words"]) } else { "" }.to_owned()
                }
                heading if heading.starts_with("time") => habits.time(dice),
                _ if dice.seldom() => dice.one_of(&["yes", "2", "", " 1"]).to_owned(),
                _ => dice.one_of(&["0", "1", "1"]).to_owned(),
            })
            .collect();
        text.push_str(&cells.join(&delimiter.to_string()));
        text.push_str(if habits.seldom(dice) { dice.one_of(&["\r", ",", " ", "\n", "\n# words", ";;"]) } else { "" });
        text.push_str(if habits.id_digits == 0 && habits.upper_case { "\r\n" } else { "\n" });
    }
    text.into_bytes()
}

/// A packet file whose blocks are mostly alike.
fn blocks(dice: &mut Dice) -> Vec<u8> {
    let mut blocks = Blocks::new(dice.below(8) == 0);
    for resolution in [6, 9, 9, 3, 0x8A, 12] {
        let offset = if dice.seldom() { 1_000_u64.to_le_bytes() } else { [0; 8] };
        let link = if dice.seldom() { dice.one_of(&[1, 147, 210, 212]) } else { 227 };
        blocks.interface(link, &[(2, b"x"), (9, &[resolution]), (14, &offset)]);
    }
    let mut ticks = 0;
    let mut data_bytes = 8;
    let swap = dice.below(4) == 0;
    for _ in 0..20 + dice.below(80) {
        ticks += dice.below(1000);
        if dice.below(8) == 0 {
            data_bytes = dice.one_of(&[8, 8, 0, 3, 12, 64, 65]);
        }
        let interface = if dice.seldom() { dice.below(8) } else { dice.below(3) };
        let bytes: Vec<u8> = (0..data_bytes).map(|_| dice.below(256) as u8).collect();
        let mut record = record(dice.below(0x900) as u32, &bytes);
        if swap {
            record[..4].reverse();
        }
        if dice.below(5) == 0 {
            record[0] |= dice.one_of(&[0x80, 0x40, 0x20, 0xC0]);
        }
        if data_bytes > 8 || dice.below(10) == 0 {
            record[5] |= dice.one_of(&[4, 5, 6, 7, 4, 0x80]);
        }
        record[7] = dice.one_of(&[0, 0, 0, 9, 15, 16]);
        if dice.seldom() {
            record.truncate(dice.below(12) as usize);
        }
        if dice.below(40) == 0 {
            many_alike(&mut blocks, &mut ticks, dice);
        }
        match dice.below(60) {
            0 => drop(blocks.section(1)),
            1 => drop(blocks.interface(227, &[(2, b"later")])),
            2 => drop(blocks.block(5, &[0; 12])),
            3 => drop(blocks.block(3, &record)),
            4 => drop(blocks.packet(interface as u32, u64::MAX - ticks, &record)),
            5 => drop(blocks.section(9)),
            _ => drop(blocks.packet(interface as u32, ticks - ticks.min(dice.below(2) * 500), &record)),
        }
    }
    blocks.file
}

/// Frames of eight bytes, mostly in the order of time, as many as go through the fastest way together and more.
fn many_alike(blocks: &mut Blocks, ticks: &mut u64, dice: &mut Dice) {
    let extended = if dice.below(4) == 0 { 0x80 } else { 0 };
    for _ in 0..64 + dice.below(200) {
        *ticks += dice.below(1000);
        let payload: Vec<u8> = (0..8).map(|_| dice.below(256) as u8).collect();
        let mut record = record(dice.below(0x7FF) as u32, &payload);
        record[0] |= extended;
        if dice.below(300) == 0 {
            record[0] |= dice.one_of(&[0x80, 0x40, 0x20, 0x08]);
        }
        let back = if dice.below(300) == 0 { 5000 } else { 0 };
        blocks.packet(dice.below(2) as u32, ticks.saturating_sub(back), &record);
    }
}

/// Turns bits, takes bytes away and puts others in.
fn damage(log: &mut Vec<u8>, dice: &mut Dice) {
    for _ in 0..dice.below(4) {
        let at = dice.below(log.len() as u64) as usize;
        match dice.below(4) {
            0 => log[at] ^= 1 << dice.below(8),
            1 => log[at] = dice.one_of(b"\n\r,\"#0 \0\xFF.;"),
            2 => drop(log.drain(at..log.len().min(at + dice.below(20) as usize))),
            _ => log.insert(at, dice.one_of(b"\n\r,\"#0A \0\xFF.;")),
        }
        if log.is_empty() {
            return;
        }
    }
}

#[test]
fn texts_that_are_nearly_plain() {
    let mut frames = 0;
    for seed in 0..3_000 {
        let mut dice = Dice(seed);
        let mut log = text(&mut dice);
        if seed % 3 == 0 {
            damage(&mut log, &mut dice);
        }
        frames += read_with(&log, &Options::default()).map_or(0, |log| log.frames.len());
    }
    assert!(frames > 50_000, "{frames} frames say little");
}

#[test]
fn no_byte_of_a_line_is_taken_on_trust() {
    // With the identifier and the commas the last ones have 15, 16, 23 and 24 bytes.
    let names = ["", "drive,", "powertrain,", "powertrains,", "all the powertrain,", "all the powertrains,"];
    for name in names {
        let heading = if name.is_empty() { "" } else { "channel," };
        let line = |time: usize| format!("1.{time:06},{name}1A3,0102030405060708\n");
        // So many lines alike that those in the middle are read by their shape, channel and identifier met before.
        let before: String = (0..100).map(line).collect();
        let behind: String = (101..140).map(line).collect();
        let (head, line) = (format!("time_s,{heading}id_hex,data_hex\n"), line(100));
        for at in 0..line.len() {
            for byte in *b"x,0A.g \n\r\"\x01\0\xFF" {
                let mut odd = line.clone().into_bytes();
                odd[at] = byte;
                let log = [head.as_bytes(), before.as_bytes(), &odd, behind.as_bytes()];
                let read = read_with(log.concat(), &Options::default()).expect("opens");
                assert!((138..=140).contains(&read.frames.len()), "{}", String::from_utf8_lossy(&odd));
            }
        }
    }
}

#[test]
fn a_text_that_was_met_is_not_met_where_lines_are_divided_otherwise() {
    // Of two lengths: the shape is that of the long ones, and the short ones with a zero behind them are as long.
    for (heading, name) in [("", ""), ("channel,", "drive,"), ("channel,", "powertrain,")] {
        let line = |time: usize, id: &str| format!("1.{time:06},{name}{id},0102030405060708\n");
        let mut text = format!("time_s,{heading}id_hex,data_hex\n");
        (0..60).for_each(|time| text.push_str(&line(time, "1A3F")));
        text.push_str(&line(60, "1A3"));
        (61..100).for_each(|time| text.push_str(&line(time, "1A3F")));
        text.push_str(&format!("1.000100,{name}1A3,\x000102030405060708\n"));
        (101..140).for_each(|time| text.push_str(&line(time, "1A3F")));
        assert_eq!(read_with(text.as_bytes(), &Options::default()).expect("opens").frames.len(), 139, "{name}");
    }
    // As long together, with the comma elsewhere: whether all identifiers have eight digits is told of the log. The channel is known when a damaged line
    // is the first that has fewer.
    let mut text = "time_s,channel,id_hex,data_hex\n".to_owned();
    for time in 0..400 {
        let head = match time {
            10 | 12 => "abcdefg,00000123",
            51.. if time % 50 == 1 => "abcdefg,123",
            _ => "ab,00000123",
        };
        let data = if time == 51 { "ZZ02030405060708" } else { "0102030405060708" };
        text.push_str(&format!("1.{time:06},{head},{data}\n"));
    }
    assert_eq!(read_with(text.as_bytes(), &Options::default()).expect("opens").frames.len(), 399);
}

#[test]
fn what_is_no_identifier_does_not_become_one_by_turning_up_again() {
    for name in ["drive", "powertrain"] {
        let mut text = "time_s,channel,id_hex,data_hex\n".to_owned();
        for time in 0..400_u32 {
            let id = if time % 40 == 39 { 0x2000_0000 } else { 0x1FFF_FFF0 + time % 7 };
            text.push_str(&format!("1.{time:06},{name},{id:08X},0102030405060708\n"));
        }
        let log = read_with(text.as_bytes(), &Options::default()).expect("opens");
        assert_eq!(log.frames.len(), 390, "{name}");
    }
}

#[test]
fn more_channels_and_identifiers_than_are_kept() {
    let names = ["a", "ab", "powertrain", "a name beyond fifteen"];
    let mut text = "time_s,channel,id_hex,data_hex\n".to_owned();
    for time in 0..16_000_u64 {
        let (name, id) = (names[time as usize % 3], time * 0x9E37 % 7_001);
        // Each turns up twice or more, and none stays in its place for long.
        text.push_str(&format!("{}.{:06},{name},{id:08X},{time:016X}\n", time / 1000, time % 1000 * 1000));
        if time % 50 == 0 {
            text.push_str(&format!("{}.{:06},{},123,00\n", time / 1000, time % 1000 * 1000, names[3]));
        }
    }
    let log = read_with(text.as_bytes(), &Options::default()).expect("opens");
    assert_eq!(log.frames.len(), 16_000 + 320);
    let of_id = |id: u32| log.frames.iter().filter(|frame| frame.id == id && frame.extended).count();
    assert!((0..7_001).all(|id| (2..=3).contains(&of_id(id))));
}

#[test]
fn packet_files_that_are_nearly_plain() {
    let mut frames = 0;
    for seed in 0..3_000 {
        let mut dice = Dice(seed);
        let mut log = blocks(&mut dice);
        if seed % 3 == 0 {
            damage(&mut log, &mut dice);
        }
        let identifiers = dice.one_of(&[IdentifierOrder::AsPublished, IdentifierOrder::Swapped]);
        let options = Options { identifiers, ..Options::default() };
        frames += read_with(&log, &options).map_or(0, |log| log.frames.len());
    }
    assert!(frames > 50_000, "{frames} frames say little");
}

#[test]
fn plain_logs_cut_at_every_byte() {
    for seed in 0..4 {
        for log in [text(&mut Dice(seed)), blocks(&mut Dice(seed))] {
            for cut in 0..log.len().min(3_000) {
                let _ = read_with(&log[..cut], &Options::default());
            }
        }
    }
}

/// Counts the runs it takes, and the frames beside them.
#[derive(Default)]
struct Counted {
    runs: usize,
    beside: usize,
}

impl Receive for Counted {
    fn frame(&mut self, _frame: &Frame<'_>) {
        self.beside += 1;
    }

    fn takes_runs(&self) -> bool {
        true
    }

    fn run(&mut self, _run: &PlainRun) -> usize {
        self.runs += 1;
        PlainRun::FRAMES
    }
}

fn counted(log: Vec<u8>) -> (usize, usize) {
    let bytes = std::io::Cursor::new(log);
    let mut recording = Recording::from_reader(Box::new(bytes), "test", &Options::default()).expect("opens");
    let mut counted = Counted::default();
    while recording.stretch(usize::MAX, &mut counted).expect("reads") {}
    (counted.runs, counted.beside)
}

#[test]
fn frames_of_eight_bytes_come_in_runs() {
    let mut blocks = Blocks::new(false);
    blocks.interface(227, &[]);
    let frames = 1 + 3 * PlainRun::FRAMES + 5;
    for time in 0..frames as u64 {
        blocks.packet(0, time, &record(0x123, &[7; 8]));
    }
    // The first frame tells when the log begins.
    assert_eq!(counted(blocks.file), (3, 1 + 5));
}

#[test]
fn lines_of_eight_bytes_come_in_runs() {
    let mut text = "time_s,channel,id_hex,data_hex\n".to_owned();
    let line = |time: usize| format!("0.{time:06},drive,{:03X},0102030405060708\n", time % 0x800);
    // The first lines tell when the log begins, how its names are written, and how long cells are; the last ones have no room behind them.
    let frames = 3 * PlainRun::FRAMES + 30;
    (0..frames).for_each(|time| text.push_str(&line(time)));
    let (runs, beside) = counted(text.into_bytes());
    assert_eq!((runs, runs * PlainRun::FRAMES + beside), (3, frames));
}

/// Bytes of no value in the place of a name's end or of all of it: what a table of names has behind shorter ones.
#[test]
fn nothing_is_no_name() {
    let mut text = "time_s,channel,id_hex,data_hex\n".to_owned();
    let mut time = 0;
    let mut line = |cells: &str| {
        time += 1;
        text.push_str(&format!("0.{time:06},{cells},0102030405060708\n"));
    };
    line("ab,123");
    for odd in ["ab,\0\0\x00123", "\0\0\0\0\0\x00123", "ab\0\0\0,123"] {
        (0..40).for_each(|_| line("drive,123"));
        line(odd);
        (0..40).for_each(|_| line("drive,123"));
    }
    let read = read_with(&text, &Options::default()).expect("opens");
    // The last one is an odd name, and its own.
    assert_eq!((read.frames.len(), read.report.damaged), (1 + 240 + 1, 2));
}
