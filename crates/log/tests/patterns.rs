//! Text by the user's own pattern.
//!
//! The lines are our own; that such lines are common is common practice, no source.

mod common;

use common::{Read, damage, read_with};
use wirelore_log::{LinePattern, Options};

fn pattern(pattern: &str) -> Options {
    let line = LinePattern::parse(pattern).unwrap_or_else(|error| panic!("{error}"));
    Options { line: Some(line), ..Options::default() }
}

fn read_as(text: &str, options: &Options) -> Read {
    read_with(text, options).unwrap_or_else(|error| panic!("{error}"))
}

/// Time, identifier, extended, data of each frame.
fn brief(log: &Read) -> Vec<(Option<i64>, u32, bool, &[u8])> {
    log.frames.iter().map(|frame| (frame.time_ns, frame.id, frame.extended, &frame.payload[..])).collect()
}

#[test]
fn patterns() {
    let log = read_as("0.5;drive;18FEF100;FF 00\n", &pattern("{time:s};{channel};{id:hex};{data:hex}"));
    assert_eq!(brief(&log), [(Some(500_000_000), 0x18FE_F100, true, &[0xFF, 0][..])]);
    assert_eq!(log.channels, ["drive"]);

    let log = read_as(
        "<12 us>  a\t100  [3] 01 02 03  ok\n",
        &pattern("<{time:us} us> {channel} {id:dec} [{length}] {data} {skip}"),
    );
    assert_eq!(brief(&log), [(Some(12_000), 100, false, &[1, 2, 3][..])]);

    let log = read_as("{7}123 255 0 7\n", &pattern("{{{skip}}}{id} {data:dec}"));
    assert_eq!(brief(&log), [(None, 0x123, false, &[255, 0, 7][..])]);

    let log = read_as("\u{FEFF}1 7FF#\r\n2 100#AA\r\n", &pattern("{time:ms} {id}#{data}"));
    assert_eq!(brief(&log), [(Some(1_000_000), 0x7FF, false, &[][..]), (Some(2_000_000), 0x100, false, &[0xAA][..])]);
}

#[test]
fn lines_that_do_not_fit_the_pattern_are_counted_and_empty_ones_are_not() {
    let text = "\n1;7;AA\n   \nhello\n2;8;BB;CC\n\n3;zz;00\n4;9;DD\n";
    let log = read_as(text, &pattern("{time};{id:hex};{data}"));
    assert_eq!(log.frames.len(), 2);
    assert_eq!((log.report.damaged, log.report.frames_read()), (3, 5));
    assert_eq!(
        damage(&log.report),
        [
            "line 4: the line does not fit the pattern: no \";\" stands behind {time}, which begins at character 1",
            "line 5: data \"BB;CC\" is not bytes of two hex digits",
            "line 7: id \"zz\" is not a hexadecimal number",
        ]
    );
}

#[test]
fn a_wrong_separator_is_told_with_the_field_before_it() {
    let log = read_as("0.00;123;AA\n", &pattern("{time},{id},{data}"));
    let words = "line 1: the line does not fit the pattern: no \",\" stands behind {time}, which begins at character 1";
    assert_eq!(damage(&log.report), [words]);
    let log = read_as("0.00 x;123 AA\n", &pattern("{time} x{skip}, {id} {data}"));
    let words = "line 1: the line does not fit the pattern: no \",\" stands behind {skip}, which begins at character 7";
    assert_eq!(damage(&log.report), [words]);
    let log = read_as("123 <AA> and more\n", &pattern("{id} <{data}>"));
    let words = "line 1: the line does not fit the pattern: it goes on at character 9, where the pattern ends";
    assert_eq!(damage(&log.report), [words]);
}

#[test]
fn a_number_sign_begins_a_comment_unless_the_pattern_begins_with_it() {
    assert_eq!(read_as("# 7\n123 AA\n", &pattern("{id} {data}")).report.frames_read(), 1);
    assert_eq!(brief(&read_as("#123 AA\n", &pattern("#{id} {data}"))), [(None, 0x123, false, &[0xAA][..])]);
}

#[test]
fn patterns_that_are_wrong() {
    for (text, words) in [
        ("{id}{data}", "nothing stands between two fields"),
        ("{id} {payload}", "'{payload}' is no field"),
        ("{id} {data", "not closed"),
        ("{id} } {data}", "has no opening one"),
        ("{id} {id} {data}", "{id} stands twice"),
        ("{id}", "has no {data}"),
        ("{id:s} {data}", "':s' cannot stand behind id"),
        ("{skip:hex} {id} {data}", "'{skip}' is no field"),
    ] {
        let error = LinePattern::parse(text).expect_err(text).to_string();
        assert!(error.contains(words), "{text}: {error}");
    }
}
