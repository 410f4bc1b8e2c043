//! Groups that are there several times.

use super::*;
use crate::Rule;

fn checked(frame: &str) -> Checked {
    let layout = "layout trouble {\n signal code in bytes 0..1\n signal times in byte 2\n}";
    check_text("repeat.lore", &format!("network n can_fd 500 kbit/s\n{layout}\nframe f on n id 1 {{\n{frame}\n}}\n"))
}

/// The signals with their places, and behind a bar when they are there: the tests of their page, or from which length on.
fn elements(frame: &str) -> Vec<String> {
    let checked = checked(frame);
    let frame = &database(&checked).frames[0];
    let condition = |signal: &wirelore_model::Signal| {
        let page = &frame.pages[signal.page?.index()];
        let tests = page.tests.iter().map(|test| {
            let name = &frame.signals[test.selector.index()].label.name;
            format!("{name} is {}", test.values[0])
        });
        let reach =
            page.element.filter(|element| element.reaches > 0).map(|element| format!("{} bytes", element.reaches));
        Some(tests.chain(reach).collect::<Vec<_>>().join(", "))
    };
    let shown = |signal| condition(signal).map_or(String::new(), |condition| format!(" | {condition}"));
    frame.signals.iter().map(|signal| format!("{} {}{}", signal.label.name, ends(signal), shown(signal))).collect()
}

/// The rules that speak, each once.
fn rules(frame: &str) -> Vec<Rule> {
    let mut rules: Vec<_> = checked(frame).diagnostics.iter().map(|message| message.rule).collect();
    rules.retain(|rule| *rule != Rule::LayoutUnused);
    rules
}

#[test]
fn the_end_of_the_frame_bounds_a_group() {
    assert_eq!(
        elements("length 2..8\nrepeat from byte 2 to end, up to 32 {\nsignal a in bytes 1..0\nsignal b in byte 2\n}"),
        ["a[1] 3.7..2.0 | 5 bytes", "b[1] 4.7..4.0 | 5 bytes", "a[2] 6.7..5.0 | 8 bytes", "b[2] 7.7..7.0 | 8 bytes"]
    );
    assert_eq!(elements("repeat to end, up to 2, size 40 bytes { signal a in byte 1 }"), ["a[1] 1.7..1.0 | 40 bytes"]);
    let page =
        "signal p in byte 0\nwhen p is 1 {\nlength 3\nrepeat from byte 1 to end, up to 9 { signal a in byte 0 }\n}";
    assert_eq!(elements(page)[1..], ["a[1] 1.7..1.0 | 2 bytes", "a[2] 2.7..2.0 | 3 bytes"]);
}

/// SAE J1939-21: a message has up to 1785 bytes (from memory of the standard).
#[test]
fn messages_may_be_longer_than_frames() {
    let text = "network n can 250 kbit/s\nframe f on n pgn 65226, carried by j1939_tp {\nrepeat from byte 2 to end, up to 2000, size 4 bytes { signal a in bytes 1..0 }\n}\n";
    let checked = check_text("repeat.lore", text);
    let frame = &database(&checked).frames[0];
    assert_eq!(frame.signals.len(), 445);
    assert_eq!(ends(&frame.signals[444]), "1779.7..1778.0");
}

#[test]
fn a_number_or_a_signal_says_how_often() {
    assert_eq!(elements("repeat 2 times, size 3 bytes { signal a in byte 0 }"), ["a[1] 0.7..0.0", "a[2] 3.7..3.0"]);
    assert_eq!(
        elements("signal n in byte 0\nrepeat from byte 1 n times, up to 2 { signal a in byte 0 }")[1..],
        ["a[1] 1.7..1.0 | n is 1..255", "a[2] 2.7..2.0 | n is 2..255"]
    );
}

#[test]
fn places_inside_are_those_of_the_element() {
    assert_eq!(
        elements(
            "counting from 1\nrepeat from byte 3 2 times { signal a in bits 1.8..1.5\nsignal b in lsb 8 width 4 intel }"
        ),
        ["a[1] 2.7..2.4", "b[1] 3.3..3.0", "a[2] 4.7..4.4", "b[2] 5.3..5.0"]
    );
    assert_eq!(
        elements("repeat from byte 2 2 times, size 4 bytes { signal a in byte last\nsignal b in byte 0 }"),
        ["a[1] 5.7..5.0", "b[1] 2.7..2.0", "a[2] 9.7..9.0", "b[2] 6.7..6.0"],
        "its last byte is that of the element"
    );
    assert_eq!(
        elements("repeat from byte 2 2 times, size 4 bytes { signal b in bytes 1..end bytes }"),
        ["b[1] 3..Some(5)", "b[2] 7..Some(9)"]
    );
}

#[test]
fn layouts_arrays_and_groups_may_be_inside() {
    assert_eq!(
        elements("repeat 2 times, size 4 bytes { use layout trouble at byte 1 prefix t_ }"),
        ["t_code[1] 1.7..2.0", "t_times[1] 3.7..3.0", "t_code[2] 5.7..6.0", "t_times[2] 7.7..7.0"]
    );
    assert_eq!(
        elements("repeat 2 times { signal a[1..2] in byte 0 step 1 byte }"),
        ["a[1][1] 0.7..0.0", "a[1][2] 1.7..1.0", "a[2][1] 2.7..2.0", "a[2][2] 3.7..3.0"]
    );
    assert_eq!(
        elements(
            "repeat to end, up to 2, size 3 bytes { signal n in byte 0\nrepeat from byte 1 to end, up to 9 { signal a in byte 0 } }"
        )[..3],
        ["n[1] 0.7..0.0 | 3 bytes", "a[1][1] 1.7..1.0 | 2 bytes", "a[1][2] 2.7..2.0 | 3 bytes"]
    );
}

#[test]
fn conditions_inside_look_at_the_element_and_around_it() {
    let group = "signal p in byte 0\nrepeat from byte 1 2 times { signal k in byte 0\nwhen k is 1 { signal a in byte 1 }\nwhen p is 2 { unused byte 2 } }";
    let told = elements(group);
    assert_eq!(told[1..3], ["k[1] 1.7..1.0", "a[1] 2.7..2.0 | k[1] is 1"]);
    assert_eq!(told[3..], ["k[2] 4.7..4.0", "a[2] 5.7..5.0 | k[2] is 1"]);
}

#[test]
fn what_cannot_be_is_told() {
    let bytes = |rest: &str| rules(&format!("length 8\nsignal n in byte 0\n{rest}"));
    assert_eq!(bytes("repeat from byte 1 to end { signal a in byte 0 }"), [Rule::RepeatUnbounded]);
    assert_eq!(bytes("repeat from byte 1 n times { signal a in byte 0 }"), [Rule::RepeatUnbounded]);
    assert_eq!(bytes("repeat from byte 1 to end, up to 2 { signal a in bytes 0..end bytes }"), [Rule::RepeatSize]);
    assert_eq!(bytes("repeat from byte 1 2 times { use layout trouble at byte 0 }"), [Rule::RepeatSize]);
    assert_eq!(bytes("repeat from byte 1 to end, up to 2 { }"), [Rule::RepeatSize]);
    assert_eq!(bytes("repeat from byte 1 2 times, size 0 bytes { signal a in byte 0 }"), [Rule::RepeatSize]);
    assert_eq!(bytes("repeat from byte 1 to end, up to 2 { signal a in bytes 7..0 }"), [Rule::OutsideFrame]);
    assert_eq!(bytes("repeat from byte 1 4 times { signal a in bytes 1..0 }"), [Rule::OutsideFrame]);
    assert_eq!(bytes("repeat from byte 1 n times, up to 4 { signal a in bytes 1..0 }"), [Rule::OutsideFrame]);
    assert_eq!(bytes("repeat from byte 1 2 times, size 2 bytes { signal a in byte 2 }"), [Rule::OutsideFrame]);
    assert_eq!(bytes("repeat from byte 1 5000 times { signal a in byte 0 }"), [Rule::ArrayTooLarge]);
    assert_eq!(bytes("repeat from byte 1 m times, up to 2 { signal a in byte 0 }"), [Rule::SelectorUnknown]);
    assert_eq!(
        bytes("when n is 1 { signal m in byte 1 }\nrepeat from byte 2 m times, up to 2 { signal a in byte 0 }"),
        [Rule::SelectorInBranch]
    );
    assert_eq!(
        bytes("signal t in byte 1 text\nrepeat from byte 2 t times, up to 2 { signal a in byte 0 }"),
        [Rule::SelectorValue]
    );
    assert_eq!(
        bytes("signal m in bits 1.1..1.0\nrepeat from byte 2 m times, up to 4 { signal a in byte 0 }"),
        [Rule::SelectorValue]
    );
    assert_eq!(bytes("repeat from byte 0 to end, up to 2 { signal a in byte 0 }"), [Rule::SignalOverlap]);
    assert_eq!(
        bytes("repeat from byte 1 to end, up to 7 { signal a in byte 0 }\nsignal z in byte 7"),
        [Rule::SignalOverlap]
    );
    assert_eq!(bytes("repeat from byte 1 2 times, up to 2 { signal a in byte 0 }"), [Rule::UnexpectedWord]);
    assert_eq!(bytes("repeat from byte 1 2 times { signal a in byte 0\nlength 3\nevery 10 ms }").len(), 2);
    assert_eq!(bytes("repeat from byte 1 2 times { signal a in byte 0\nsignal a in byte 1 }"), [Rule::NameTaken]);
    assert_eq!(bytes("repeat from byte 1 2 times { signal a in byte 0 = raw furlong }"), [Rule::UnknownUnit], "once");
}

#[test]
fn sizes_of_texts_are_looked_up() {
    let bytes = |rest: &str| rules(&format!("length 8\nsignal n in byte 0\n{rest}"));
    assert_eq!(bytes("signal t in bytes 1..7 text, size n"), []);
    assert_eq!(bytes("repeat from byte 1 2 times { signal m in byte 0\nsignal t in bytes 1..2 text, size m }"), []);
    assert_eq!(bytes("signal t in bytes 1..7 text, size m"), [Rule::SelectorUnknown]);
    assert_eq!(bytes("signal t in bytes 1..7 text, size t"), [Rule::SelectorValue]);
    assert_eq!(bytes("signal t in byte 1, size n"), [Rule::KindDoesNotFit]);
    assert_eq!(
        bytes("when n is 1 { signal m in byte 1 }\nsignal t in bytes 2..7 bytes, size m"),
        [Rule::SelectorInBranch]
    );
}

#[test]
fn trouble_codes_are_no_quantities() {
    let bytes = |rest: &str| rules(&format!("length 8\n{rest}"));
    assert_eq!(bytes("signal c in bytes 0..1 trouble_code, absent 0, states { 0x0135 heater }"), []);
    assert_eq!(bytes("signal c in bytes 0..2 trouble_code"), []);
    for wrong in [
        "signal c in byte 0 trouble_code",
        "signal c in bytes 0..1 trouble_code = raw * 2 V",
        "signal c in bytes 0..1 trouble_code, range 0..9",
        "signal c in bytes 0..1 trouble_code, counter 0..9",
    ] {
        assert_eq!(bytes(wrong), [Rule::KindDoesNotFit], "{wrong}");
    }
}

#[test]
fn only_what_is_no_quantity_is_shown_in_hex() {
    let bytes = |rest: &str| rules(&format!("length 8\n{rest}"));
    assert_eq!(bytes("signal c in bytes 0..1, shown in hex, absent 0, states { 0xF190 vin }"), []);
    assert_eq!(bytes("signal c in byte 0 = raw, range 0..9, shown in hex"), []);
    for wrong in [
        "signal c in byte 0 signed, shown in hex",
        "signal c in byte 0 = raw * 2, shown in hex",
        "signal c in byte 0 = raw V, shown in hex",
        "signal c in bytes 0..1 trouble_code, shown in hex",
        "signal c in bytes 0..1 bytes, shown in hex",
    ] {
        assert_eq!(bytes(wrong), [Rule::KindDoesNotFit], "{wrong}");
    }
    assert_eq!(bytes("signal c in byte 0, shown in octal"), [Rule::UnexpectedWord]);
    assert_eq!(bytes("signal c in byte 0, shown in hex, shown in hex"), [Rule::RepeatedClause]);
}

/// What gives rows, as `page around, first byte: signals with their places`.
fn row_groups(frame: &str) -> Vec<String> {
    let checked = checked(frame);
    let frame = &database(&checked).frames[0];
    let groups = frame.pages.iter().enumerate().filter_map(|(at, page)| Some((at, page.parent, page.rows_from?)));
    let shown = groups.map(|(at, parent, from)| {
        let inside = |signal: &&wirelore_model::Signal| {
            let mut around = signal.page;
            std::iter::from_fn(|| {
                let page = around?;
                around = frame.pages[page.index()].parent;
                Some(page.index())
            })
            .any(|page| page == at)
        };
        let signals = frame.signals.iter().filter(inside);
        let signals = signals.map(|signal| format!("{} {}", signal.label.name, ends(signal)));
        let around = parent.map_or("frame".to_owned(), |page| format!("page {}", page.0));
        format!("{around}, {from}: {}", signals.collect::<Vec<_>>().join(", "))
    });
    shown.collect()
}

#[test]
fn rows_are_placed_as_the_first_of_them() {
    assert_eq!(
        row_groups(
            "signal s in byte 0\nrepeat from byte 1 to end as rows { signal a in byte 0\nuse layout trouble at byte 1 }"
        ),
        ["frame, 1: a 1.7..1.0, code 2.7..3.0, times 4.7..4.0"]
    );
    let pages = "signal s in byte 0\n\
                 when s is 1 { repeat from byte 1 to end as rows { signal a in byte 0 } }\n\
                 when s is 2 { repeat from byte 2 to end as rows, size 4 bytes { signal b in byte last } }";
    assert_eq!(row_groups(pages), ["page 0, 1: a 1.7..1.0", "page 2, 2: b 5.7..5.0"]);
    let lengths = |frame: &str| -> Vec<_> {
        let checked = checked(frame);
        let pages = database(&checked).frames[0].pages.iter();
        pages.map(|page| page.length.map(|length| (length.min, length.max))).collect()
    };
    assert_eq!(lengths(pages), [None, None, None, Some((6, 6))]);
    let page = "signal s in byte 0\nrepeat from byte 1 to end as rows { signal a in byte 0\nwhen a is 1 { length 3\nsignal b in byte 1 } }";
    assert_eq!(lengths(page), [None, Some((4, 4))]);
    // Inside an element, groups with names of their own may be repeated.
    let inner =
        "repeat to end as rows { signal n in byte 0\nrepeat from byte 1 n times, up to 2 { signal a in byte 0 } }";
    assert_eq!(row_groups(inner), ["frame, 0: n 0.7..0.0, a[1] 1.7..1.0, a[2] 2.7..2.0"]);
}

#[test]
fn what_keeps_a_group_from_giving_rows_is_told() {
    let rows = |frame: &str| rules(&format!("signal s in byte 0\n{frame}"));
    let group = "repeat from byte 1 to end as rows { signal a in byte 0 }";
    assert_eq!(rows(group), []);
    assert_eq!(rows(&format!("{group}\nsignal z in byte 7")), [Rule::RowsImpossible]);
    assert_eq!(rows(&format!("{group}\nwhen s is 3 {{ signal z in byte 7 }}")), [Rule::RowsImpossible]);
    assert_eq!(rows(&format!("when s is 1 {{ {group} }}\nwhen s is 3 {{ signal z in byte 7 }}")), []);
    assert_eq!(
        rows(
            "signal c in bits 1.3..1.0, counter 0..15\nwhen s is 1 { repeat from byte 2 to end as rows { signal a in byte 0 } }"
        ),
        [Rule::RowsImpossible]
    );
    assert_eq!(
        rows(
            "repeat from byte 1 to end as rows { signal a in byte 0\nrepeat from byte 1 to end as rows { signal b in byte 0 } }"
        ),
        [Rule::RowsImpossible]
    );
    assert_eq!(
        rows(
            "repeat from byte 1 2 times, size 2 bytes { signal a in byte 0\nrepeat from byte 1 to end as rows { signal b in byte 0 } }"
        ),
        [Rule::RowsImpossible]
    );
    assert_eq!(
        rows(
            "signal t in byte 1\nwhen s is 1 { repeat from byte 2 to end as rows { signal a in byte 0 } }\nwhen t is 1 { repeat from byte 2 to end as rows { signal b in byte 1 } }"
        ),
        [Rule::RowsImpossible]
    );
    assert_eq!(rules("repeat from byte 65 to end as rows { signal a in byte 0 }"), [Rule::RowsImpossible]);
    assert_eq!(rules("repeat from byte 64 to end as rows { signal a in byte 0 }"), [Rule::OutsideFrame]);
    assert_eq!(rows("repeat from byte 1 to end as rows, up to 3 { signal a in byte 0 }"), [Rule::UnexpectedWord]);
    assert_eq!(rows("repeat from byte 1 to end as rows { signal a in byte 0\nlength 3 }"), [Rule::UnexpectedWord]);
    assert_eq!(
        rows("repeat from byte 1 to end as rows { signal a in byte 0\nwhen a is 1 { every 10 ms } }"),
        [Rule::UnexpectedWord]
    );
    assert_eq!(
        rows("repeat from byte 1 to end as rows { signal a in byte 0\nwhen a is 1 { length 1\nsignal b in byte 1 } }"),
        [Rule::OutsideFrame]
    );
    assert_eq!(rules("repeat from byte 60 to end as rows, size 5 bytes { signal a in byte 0 }"), [Rule::OutsideFrame]);
    assert_eq!(rules("length 8\nrepeat from byte 8 to end as rows { }"), [Rule::OutsideFrame]);
    assert_eq!(rows("repeat from byte 1 to end as row { signal a in byte 0 }"), [Rule::UnexpectedWord]);
}

#[test]
fn pages_of_layouts_have_lengths_that_count_from_the_layout() {
    let text = "layout l { signal k in byte 0\nwhen k is 1 { length 3 }\notherwise {} }\nframe f on n id 1 { use layout l at byte 2 }\n";
    let checked = on_can(text);
    let length = database(&checked).frames[0].pages[0].length.expect("stated");
    assert_eq!((length.min, length.max), (5, 5));
    let of = |layout: &str| {
        super::rules(&on_can(&format!("layout l {{ {layout} }}\nframe f on n id 1 {{ use layout l at byte 2 }}\n")))
    };
    assert_eq!(of("signal k in byte 0\nlength 3"), [Rule::UnknownStatement]);
    assert_eq!(of("signal k in byte 0\nwhen k is 1 { length 7 }"), [Rule::FrameTooLong]);
    assert_eq!(of("signal k in byte 0\nwhen k is 1 { length 2\nsignal a in byte 2 }"), [Rule::OutsideFrame]);
}

#[test]
fn lengths_of_elements_tell_where_the_next_one_begins() {
    let of = |group: &str| rules(&format!("signal s in byte 0\nrepeat from byte 1 to end as rows {{ {group} }}"));
    assert_eq!(of("signal p in byte 0\nwhen p is 1 { length 2..3 }"), [Rule::RowsImpossible]);
    assert_eq!(of("signal p in byte 0\nwhen p is 1 { length 0 }"), [Rule::RowsImpossible]);
    assert_eq!(of("signal d in bytes 0..1\nwhen d is 1 { length 1 }"), [Rule::RowsImpossible]);
    assert_eq!(of("signal d in byte 0\nunknown byte 1\nwhen d is 1 { length 1 }"), [Rule::RowsImpossible]);
    assert_eq!(of("signal d in bytes 0..1\nwhen d is 1 { length 2 }"), []);
    assert_eq!(of("signal d in byte 0\nwhen d is 1 { length 2\nunknown bytes 1..2 }"), [Rule::OutsideFrame]);
    let inner = "signal d in byte 0\nwhen d is 1 { length 4\nsignal q in byte 2\nwhen q is 1 { length 2 } }";
    assert_eq!(of(inner), [Rule::RowsImpossible]);
}

#[test]
fn elements_need_no_length_that_a_frame_can_have() {
    let text = "network fast can_fd 500 kbit/s, data 2 Mbit/s\nlayout l { signal k in byte 0\nwhen k is 1 { length 10 } }\n\
                frame f on fast id 1 { repeat to end as rows { signal p in byte 0\nwhen p is 1 { length 9 } } }\n\
                frame g on fast id 2 { use layout l at byte 0 }\n";
    let told = crate::check_text("fast.lore", text).diagnostics;
    assert!(told.iter().all(|told| told.rule != Rule::LengthWithoutCode), "{told:?}");
}

#[test]
fn elements_fit_into_the_length_that_is_stated_for_the_frame() {
    let rows = |frame: &str| rules(&format!("{frame}\nsignal s in byte 0\n"));
    assert_eq!(rows("length 2\nrepeat from byte 1 to end as rows { signal p in bytes 0..1 }"), [Rule::OutsideFrame]);
    let page = "repeat from byte 1 to end as rows { signal p in byte 0\nwhen p is 1 { signal a in bytes 1..2 } }";
    assert_eq!(rows(&format!("length 3\n{page}")), [Rule::OutsideFrame]);
    assert_eq!(rows(&format!("length 4\n{page}")), []);
    assert_eq!(rows(&format!("length 1..4\n{page}")), []);
}

/// The last byte of what goes to the end in an element whose length is stated.
#[test]
fn ends_inside_elements_with_a_length_are_theirs() {
    let text = "signal s in byte 0\nrepeat from byte 1 to end as rows { signal p in byte 0\n\
                when p is 1 { length 3\nsignal t in bytes 1..end text }\n\
                when p is 2 { length 3\nsignal l in byte last }\n\
                when p is 3 { length 3\nrepeat from byte 1 to end, up to 9 { signal f in byte 0 } } }";
    let checked = checked(text);
    let frame = &database(&checked).frames[0];
    let signal = |name: &str| frame.signals.iter().find(|signal| signal.label.name == name).expect("there");
    let wirelore_model::Content::Text { bytes, .. } = &signal("t").content else { panic!("no text") };
    assert_eq!((bytes.first, bytes.last), (2, Some(3)));
    assert_eq!(ends(signal("l")), "3.7..3.0");
    assert_eq!(frame.signals.iter().filter(|signal| signal.label.name.starts_with("f[")).count(), 2);
}

#[test]
fn rows_that_are_written_wrongly_are_told_once() {
    let texts = |group: &str| -> Vec<String> {
        let text = format!("network n can 500 kbit/s\nframe f on n id 1 {{ signal s in byte 0\n{group} }}\n");
        let told = crate::check_text("n.lore", &text).diagnostics;
        told.iter().map(|told| format!("{}; {}", told.message, told.help.join("; "))).collect()
    };
    let element = "{ signal p in byte 0 }";
    let stands = "`as rows` stands directly behind `to end`; ";
    assert_eq!(
        texts(&format!("repeat from byte 1 to end, size 2 bytes, as rows {element}")),
        [format!("{stands}write `repeat to end as rows, size 4 bytes {{ ... }}`")]
    );
    assert_eq!(
        texts(&format!("repeat from byte 1 4 times as rows {element}")),
        [format!("{stands}rows go on to the end of the payload: write `to end as rows`, without a number of times")]
    );
    assert_eq!(
        texts("repeat from byte 1 to end as rows { signal p in byte 0\nlength 3 }"),
        [
            "a repeated group has no `length` of its own; for the length of each element write `, size 3 bytes` behind `as rows`"
        ]
    );
    assert_eq!(
        texts(&format!("repeat from byte 1 to end as rows {element}\nsignal z in byte 1")),
        ["signal `z` lies behind the beginning of a group that gives rows; put it into the group, or in front of it"]
    );
    assert_eq!(
        texts(&format!("length 1\nrepeat from byte 1 to end as rows {element}")),
        ["one element of 1 byte from byte 1 on needs byte 1, but the frame has 1 byte; \
          correct the number of elements, their size, the byte where they begin, or the length"]
    );
    assert_eq!(
        texts("length 2\nrepeat from byte 1 to end as rows { signal p in bytes 0..1 }"),
        ["signal `p` needs byte 1 of its element, byte 2 of the payload, but the frame ends with byte 1 (length 2); \
          correct the place or the length"]
    );
}
