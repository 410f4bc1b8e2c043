//! After so many overlaps or pages of one frame the rest is not told, and what was told stays.

use std::fmt::Write;

use super::rules;
use crate::{Rule, check_text};

/// How often a rule speaks about a frame of CAN FD.
fn count(rule: Rule, statements: &str) -> usize {
    let text = format!(
        "network n can_fd 500 kbit/s\nframe f on n id 1 {{\nlength 64\nsignal a in bytes 1..0\n{statements}}}\n"
    );
    rules(&check_text("t.lore", &text)).into_iter().filter(|told| *told == rule).count()
}

fn lines(numbers: std::ops::Range<u32>, line: impl Fn(u32) -> String) -> String {
    numbers.fold(String::new(), |mut text, number| {
        writeln!(text, "{}", line(number)).expect("text");
        text
    })
}

#[test]
fn on_one_page() {
    let signals = |number| lines(0..number, |number| format!("signal s{number} in byte 2"));
    assert_eq!(count(Rule::SignalOverlap, &signals(101)), 100);
    assert_eq!(count(Rule::SignalOverlap, &signals(300)), 200);
}

#[test]
fn on_a_page_and_around_it() {
    let bits = |number: u32| lines(16..16 + number, |bit| format!("signal s{bit} in bit {}.{}", bit / 8, bit % 8));
    let page = |number| format!("unknown bytes 2..63\nwhen a is 1 {{\n{}}}\n", bits(number));
    assert_eq!(count(Rule::SignalOverlap, &page(100)), 100);
    assert_eq!(count(Rule::SignalOverlap, &page(300)), 200);
}

#[test]
fn on_pages_of_different_switches() {
    let pages = |number| {
        let many = lines(0..number, |number| format!("when a is {number} {{ signal x{number} in byte 3 }}"));
        format!("signal b in byte 2\nwhen b is 1 {{ signal y in byte 3 }}\nsignal s in byte 4\n{many}")
    };
    assert_eq!(count(Rule::SignalOverlap, &pages(100)), 100);
    assert_eq!(count(Rule::SignalOverlap, &pages(300)), 200);
}

#[test]
fn pages_that_hold_for_the_same_values() {
    let pairs = |number| lines(0..number, |number| format!("when a is {number} {{ }}\nwhen a is {number} {{ }}"));
    assert_eq!(count(Rule::PageTwice, &pairs(100)), 100);
    assert_eq!(count(Rule::PageTwice, &pairs(300)), 200);
}
