//! Texts made to exhaust the compiler: each gives a clear error, or a database, in bounded time.

use std::fmt::Write;
use std::time::{Duration, Instant};

use wirelore_lang::{Checked, Loaded, Loader, MemoryLoader, Rule, check, check_text, render};

/// Nothing here takes more than a second or two when optimised; a quadratic mistake takes minutes.
const LIMIT: Duration = Duration::from_secs(30);

fn timed(what: &str, run: impl FnOnce() -> Checked) -> Checked {
    let start = Instant::now();
    let checked = run();
    let took = start.elapsed();
    assert!(took < LIMIT, "{what} took {took:?}");
    checked
}

fn in_time(what: &str, text: &str) -> Checked {
    timed(what, || check_text("hostile.lore", text))
}

fn has(checked: &Checked, rule: Rule) -> bool {
    checked.diagnostics.iter().any(|message| message.rule == rule)
}

#[track_caller]
fn assert_has(checked: &Checked, rule: Rule) {
    let shown = || render::text(&checked.sources, &checked.diagnostics[..checked.diagnostics.len().min(5)], false);
    assert!(has(checked, rule), "{} is missing among {}:\n{}", rule.name(), checked.diagnostics.len(), shown());
}

const NETWORK: &str = "network n can 500 kbit/s\n";

#[test]
fn ten_thousand_braces() {
    let pages = "when a is 1 {\n".repeat(10_000);
    let text = format!("{NETWORK}frame f on n id 1 {{ signal a in byte 0\n{pages}");
    assert_has(&in_time("nested pages", &text), Rule::NestedTooDeep);
    let brackets = format!("{NETWORK}frame f on n id 1 {{ signal a in byte 0 = {} }}", "(".repeat(100_000));
    assert!(in_time("nested brackets", &brackets).has_errors());
}

#[test]
fn a_long_formula() {
    let text = format!("{NETWORK}frame f on n id 1 {{ signal a in byte 0 = raw{} }}", " + 1".repeat(200_000));
    let checked = in_time("a long sum", &text);
    assert!(has(&checked, Rule::NestedTooDeep));
}

#[test]
fn a_text_of_50_megabytes() {
    let text = "signal ".repeat(50_000_000 / 7);
    let checked = in_time("50 MB", &text);
    assert_has(&checked, Rule::FileTooLarge);
    assert_eq!(checked.diagnostics.len(), 1);
}

#[test]
fn four_thousand_million_elements() {
    for last in ["4000000000", "170141183460469231731687303715884105727"] {
        let text = format!("{NETWORK}frame f on n id 1 {{ signal a[1..{last}] in byte 0 step 1 bytes }}");
        assert_has(&in_time("a large array", &text), Rule::ArrayTooLarge);
    }
    let mut text = format!("{NETWORK}frame f on n id 1 {{\n");
    for number in 0..10_000 {
        writeln!(text, "signal a{number}[1..4096] in byte 0 step 8 bits").expect("text");
    }
    assert_has(&in_time("many arrays", &format!("{text}}}\n")), Rule::ArrayTooLarge);
}

#[test]
fn layouts_that_double() {
    for leaf in ["signal s in byte 0", ""] {
        let mut text = format!("{NETWORK}layout l0 {{ {leaf} }}\n");
        for level in 1..=40 {
            let below = level - 1;
            writeln!(text, "layout l{level} {{ use layout l{below} at byte 0 prefix a_\n use layout l{below} at byte 0 prefix b_ }}")
                .expect("text");
        }
        text.push_str("frame f on n id 1 { use layout l40 at byte 0 }\n");
        assert_has(&in_time("layouts that double", &text), Rule::ArrayTooLarge);
    }
    let mut chain = format!("{NETWORK}layout l0 {{ }}\n");
    for level in 1..20_000 {
        writeln!(chain, "layout l{level} {{ use layout l{} at byte 0 }}", level - 1).expect("text");
    }
    assert_has(&in_time("a chain of layouts", &chain), Rule::NestedTooDeep);
}

#[test]
fn layouts_with_long_names_and_notes() {
    let long = "x".repeat(100_000);
    let mut text = format!("{NETWORK}layout l {{\n## {long}\nsignal {long}[1..4096] in bit 0.0 step 8 bits }}\n");
    for number in 0..1_000 {
        writeln!(text, "frame f{number} on n id {number} {{ use layout l at byte 0 prefix {long}_ }}").expect("text");
    }
    text.truncate(15_000_000);
    assert!(in_time("long names", &text).has_errors());
}

#[test]
fn a_hundred_thousand_frames_that_overlap() {
    let mut text = String::from(NETWORK);
    for number in 0..100_000 {
        writeln!(text, "frame f{number} on n id {number}..0x1FFFFFFF extended").expect("text");
    }
    assert_has(&in_time("ranges of identifiers", &text), Rule::IdTaken);
    let mut telegrams = "network k kline 10400 bit/s\n".to_owned();
    for number in 0..50_000 {
        let (high, low) = (number >> 8, number & 0xFF);
        writeln!(telegrams, "frame f{number} on k from {low} starts {high}\nframe g{number} on k starts {high} {low}")
            .expect("text");
    }
    assert_has(&in_time("addresses and beginnings", &telegrams), Rule::IdTaken);
    let mut groups = String::from(NETWORK);
    for number in 0..50_000 {
        writeln!(groups, "frame f{number} on n pgn 65265").expect("text");
    }
    assert_has(&in_time("one parameter group", &groups), Rule::IdTaken);
    let mut acceptances = "network x can_xl 500 kbit/s, data 10 Mbit/s\n".to_owned();
    for number in 0..5_000 {
        writeln!(acceptances, "frame f{number} on x xl 0x11223344").expect("text");
    }
    assert_has(&in_time("one acceptance field", &acceptances), Rule::IdTaken);
}

#[test]
fn a_hundred_thousand_pages() {
    let mut text = format!("{NETWORK}frame f on n id 1 {{\nsignal a in bytes 1..0\nsignal b in bytes 3..2\n");
    for number in 0..50_000 {
        writeln!(text, "when a is {number} {{ signal x{number} in byte 4 }}\nwhen a is {number} and b is 1 {{ signal y{number} in byte 4 }}")
            .expect("text");
    }
    assert!(in_time("pages in one frame", &format!("{text}}}\n")).has_errors());
    let mut many = String::from(NETWORK);
    for frame in 0..30 {
        writeln!(many, "frame f{frame} on n id {frame} {{\nsignal a in bytes 1..0\nsignal b in bytes 3..2")
            .expect("text");
        for number in 0..4_000 {
            let other = number / 2;
            let test =
                if number % 2 == 0 { format!("a is {number}") } else { format!("a is {number} and b is {other}") };
            writeln!(many, "when {test} {{ signal x{number} in byte 4 }}").expect("text");
        }
        many.push_str("}\n");
    }
    let checked = in_time("pages in many frames", &many);
    assert!(has(&checked, Rule::ArrayTooLarge));
}

#[test]
fn a_hundred_thousand_signals_in_one_place() {
    let mut text = format!("{NETWORK}frame f on n id 1 {{\n");
    for number in 0..100_000 {
        writeln!(text, "signal s{number} in bit 0.0").expect("text");
    }
    assert_has(&in_time("signals in one place", &format!("{text}}}\n")), Rule::SignalOverlap);
}

/// The bytes that this process has taken from the system at most, where the system tells.
fn most_memory() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let kibibytes = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?.trim().strip_suffix(" kB")?;
    kibibytes.parse::<u64>().ok().map(|kibibytes| kibibytes * 1_024)
}

/// Says to a process of these tests that it is to do its one test, and alone, so that its memory is that of this test.
const ALONE: &str = "WIRELORE_TEST_ALONE";

#[test]
fn many_places_at_the_far_end_of_long_messages() {
    if std::env::var_os(ALONE).is_none() {
        let own = std::env::current_exe().expect("the path of the tests");
        let name = "many_places_at_the_far_end_of_long_messages";
        let run = std::process::Command::new(own).args(["--exact", name]).env(ALONE, "1").output();
        let output = run.expect("the tests run");
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stdout));
        return;
    }
    let head = "network e ethernet 100 Mbit/s\nframe x on e udp port 1 {\n";
    let mut text = format!("{head}repeat to end, up to 4096, size 15 bytes {{\n");
    for byte in 0..15 {
        writeln!(text, "signal {} in byte {byte}", char::from(b'a' + byte)).expect("text");
    }
    assert!(in_time("elements of a long message", &format!("{text}}}\n}}\n")).database.is_some());
    let mut text = format!("{head}signal number in bytes 0..1 motorola\n");
    for number in 0..4_000 {
        writeln!(text, "when number is {number} {{ signal d{number} in bytes 2..end bytes }}").expect("text");
    }
    assert!(in_time("pages to the end", &format!("{text}}}\n")).database.is_some());
    let mut text = format!("{head}signal number in bytes 0..1 motorola\n");
    for number in 0..4_000 {
        writeln!(text, "signal s{number} in bit {}.3", 65_000 - 16 * number).expect("text");
    }
    for number in 0..4_000 {
        writeln!(text, "when number is {number} {{ signal p{number} in bit {}.4 }}", 65_000 - 16 * number)
            .expect("text");
    }
    assert!(in_time("holes in a long message", &format!("{text}}}\n")).database.is_some());
    if let Some(bytes) = most_memory() {
        assert!(bytes < 256 << 20, "took {} MiB", bytes >> 20);
    }
}

#[test]
fn misspelt_names_against_many_others() {
    let mut text = String::new();
    for number in 0..50_000 {
        writeln!(text, "network a_long_name_of_a_network_{number} can 500 kbit/s").expect("text");
        writeln!(text, "frame f{number} on a_long_name_of_a_netwrok_{number} id {number}").expect("text");
    }
    assert_has(&in_time("misspelt names", &text), Rule::UnknownNetwork);
}

#[test]
fn a_large_table_of_states() {
    let mut text = format!("{NETWORK}states s {{\n");
    for number in 0..200_000 {
        writeln!(text, "{number} w{number}").expect("text");
    }
    text.push_str("}\n");
    for (frame, width) in (0..3_000).zip((20..=60).cycle()) {
        writeln!(
            text,
            "frame f{frame} on n id {frame} {{ signal a in lsb 0 width {width} intel, states s, absent 1, fault 2 }}"
        )
        .expect("text");
    }
    assert_has(&in_time("a table of states", &text), Rule::ArrayTooLarge);
}

#[test]
fn gateways_between_all_networks() {
    let mut text = String::new();
    let mut all = String::new();
    for number in 0..1_000 {
        writeln!(text, "network n{number} can 500 kbit/s").expect("text");
        write!(all, "{}n{number}", if number == 0 { "" } else { ", " }).expect("text");
    }
    writeln!(text, "ecu hub on {all}\ngateway hub {{").expect("text");
    for number in 0..1_000 {
        writeln!(text, "pass all from n{number} to n{}", (number + 1) % 1_000).expect("text");
    }
    text.push_str("}\n");
    for number in 0..5_000 {
        writeln!(text, "frame f{number} on n0 id {number} extended").expect("text");
    }
    assert_has(&in_time("gateways", &text), Rule::ArrayTooLarge);
}

#[test]
fn schedules_with_two_hundred_thousand_slots() {
    let mut text = "network seat lin 19.2 kbit/s\necu a leads seat\nframe many on seat id 1 {\n".to_owned();
    for number in 0..60_000 {
        writeln!(text, "signal s{number} in bit 0.0").expect("text");
    }
    text.push_str("}\nframe two on seat id 2 { length 2 }\n");
    let slots = |text: &str, slot: &str| format!("{text}schedule normal on seat {{\n{}}}\n", slot.repeat(200_000));
    assert_has(
        &in_time("frames of many signals", &slots(&text, "many takes 5 ms, every 1 ms\n")),
        Rule::SchedulePeriod,
    );
    assert_has(
        &in_time("slots without a round", &slots(&text, "two every 5 ms\nmany takes 5 ms\n")),
        Rule::SignalOverlap,
    );
    let mut sporadic = text.clone();
    sporadic.push_str("network other lin\necu b leads other\nframe far on other id 1 { length 2 }\nschedule s on seat {\nsporadic far");
    sporadic.push_str(&", far".repeat(100_000));
    assert_has(&in_time("a long sporadic slot", &format!("{sporadic} takes 5 ms\n}}\n")), Rule::ScheduleElsewhere);
}

#[test]
fn allows_inside_each_other() {
    let mut text = "allow name-style, still-guessed\n\n".repeat(50_000);
    text.push_str(NETWORK);
    for number in 0..50_000 {
        writeln!(text, "allow name-style\nframe F{number} on n id {number} extended").expect("text");
    }
    assert_has(&in_time("allows", &text), Rule::AllowQuietsNothing);
}

/// Finds a new file behind every path.
struct Endless {
    bytes: usize,
}

impl Loader for Endless {
    fn load(&self, path: &str, _from: Option<&str>) -> Result<Loaded, wirelore_lang::LoadError> {
        let mut text = format!("use \"{path}x\"\nuse \"{path}y\"\n");
        text.push_str(&" ".repeat(self.bytes));
        Ok(Loaded { key: path.to_owned(), name: path.chars().take(20).collect(), text })
    }
}

#[test]
fn files_without_end() {
    for bytes in [0, 1_000_000] {
        let checked = timed("endless files", || check(&["a"], &Endless { bytes }));
        assert_has(&checked, Rule::FileTooLarge);
        assert!(checked.sources.ids().count() <= 10_000);
    }
}

#[test]
fn a_file_that_uses_itself_by_many_paths() {
    let mut text = String::new();
    for number in 0..20_000 {
        writeln!(text, "use \"{}main.lore\"", "./".repeat(number % 20 + 1)).expect("text");
    }
    let loader = MemoryLoader::default().with("main.lore", text);
    let checked = timed("itself", || check(&["main.lore"], &loader));
    assert_eq!(checked.sources.ids().count(), 1);
    assert!(!checked.has_errors());
}

#[test]
fn odd_texts() {
    let odd = [
        "",
        "\u{FEFF}",
        "\0",
        "\r\r\r",
        "{",
        "}",
        "\"",
        "frame",
        "frame f on n id 1 {",
        "use \"\"",
        "use standard",
        "##",
        "\n",
    ];
    for text in odd {
        let checked = check_text("odd.lore", text);
        let shown = render::text(&checked.sources, &checked.diagnostics, true);
        assert_eq!(shown, render::text(&checked.sources, &checked.diagnostics, true), "{text:?}");
    }
    in_time("empty lines", &"\n".repeat(10_000_000));
    in_time("one long line", &format!("{NETWORK}frame f on n id 1 {{ {} }}", "signal s in byte 0 ".repeat(100_000)));
}

/// Every beginning of a description that has everything in it.
#[test]
fn texts_that_end_too_early() {
    let text = include_str!("../../../schema/standard/heavy_duty.lore");
    let end = text.len().min(3_000);
    for cut in (0..end).filter(|&cut| text.is_char_boundary(cut)) {
        let checked = check_text("cut.lore", &text[..cut]);
        assert_eq!(checked.database.is_none(), checked.has_errors(), "cut at byte {cut}");
    }
}
