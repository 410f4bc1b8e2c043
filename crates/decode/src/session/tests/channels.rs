//! Channels: sampling, late ones, later logs, mistakes.

use std::fmt::Write as _;

use super::{Notes, check_sum, drive_options, recording, van};
use crate::decoder::Decoder;
use crate::session::{Options, Session};
use crate::testing::{frame, id, one_frame, unsigned};

/// Lines of frames on one channel, each with an identifier out of `ids`.
fn lines(channel: &str, ids: &[u32], count: usize, to: &mut String) {
    for at in 0..count {
        let _ =
            writeln!(to, "{}.{:03},{channel},{:X},0,{:02X}000100", at / 1000, at % 1000, ids[at % ids.len()], at % 256);
    }
}

#[test]
fn identifiers_are_sampled_and_nothing_is_lost_meanwhile() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut log = String::new();
    // Longer than the sample; the second channel turns up only afterwards.
    lines("can0", &[0x100, 0x101, 0x102, 0x7F0], 30_000, &mut log);
    lines("can1", &[0x200, 0x301, 0x7F1], 9_000, &mut log);
    lines("can2", &[0x6F0, 0x6F1], 100, &mut log);
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    let mut notes = Notes::default();
    let mut log = recording(&log);
    session.run(&mut log, &mut notes).expect("it reads");
    let bindings: Vec<String> = session.bindings().iter().map(ToString::to_string).collect();
    assert_eq!(
        bindings,
        [
            "channel `can0` is network `drive`: 3 of its 4 identifiers are described there, 0 on `comfort`",
            "channel `can1` is network `comfort`: 2 of its 3 identifiers are described there, 0 on `drive`",
            "channel `can2` is left out: none of its 2 identifiers is described",
        ]
    );
    let tally = session.tally();
    assert_eq!((tally.read, tally.without_description, tally.on_unbound_channel), (39_100, 7500 + 3000, 100));
    assert_eq!(notes.lines.len(), 22_500 + 6000);
    let (drive, comfort) = notes.lines.split_at(22_500);
    assert!(
        drive.iter().all(|line| line.contains(" n0 ")) && comfort.iter().all(|line| line.contains(" n1 ")),
        "in their order"
    );
    let times: Vec<u64> = drive.iter().filter_map(|line| line.split(' ').next()?.parse().ok()).collect();
    assert!(times.is_sorted());
    check_sum(&session);
}

#[test]
fn a_later_log_remembers_the_channels_by_name() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    let mut notes = Notes::default();
    let mut first = String::new();
    lines("can0", &[0x100, 0x101], 10, &mut first);
    session.run(&mut recording(&first), &mut notes).expect("it reads");
    session.run(&mut recording("9.0,can0,100,0,00000700\n"), &mut notes).expect("it reads");
    assert_eq!(notes.lines.last().map(String::as_str), Some("9000 n0 f0 7"));
    assert_eq!(
        session.bindings().last().map(ToString::to_string).as_deref(),
        Some("channel `can0` is network `drive`: as in an earlier log")
    );
    assert_eq!(session.bindings().last().map(|binding| binding.log), Some(1));
    assert_eq!(session.tally().read, 11);
    check_sum(&session);
}

#[test]
fn what_cannot_be_decided_or_passed_on_is_an_error() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let run = |options: &Options, log: &str, sink: &mut Notes| {
        let mut session = Session::new(&decoder, options).expect("a session");
        session.run(&mut recording(log), sink).expect_err("it cannot go on").to_string()
    };
    let error = run(&Options::default(), "0,can0,100,0,00\n0,can0,200,0,00\n", &mut Notes::default());
    assert!(error.starts_with("cannot tell which network channel `can0` is: of its 2 different identifiers 1 is described on `drive`, 1 on `comfort`"), "{error}");
    let error = run(&drive_options("cna0=drive"), "0,can0,100,0,00\n", &mut Notes::default());
    assert_eq!(error, "the binding names no channel of this log: `cna0` is not there; did you mean `can0`?");
    let mut full = Notes { fail_at: Some(2), ..Notes::default() };
    let log = "0,c0,100,0,00000700\n".repeat(3);
    assert_eq!(run(&drive_options("c0=drive"), &log, &mut full), "cannot pass the decoded values on");
    assert_eq!(full.lines.len(), 2);
}

#[test]
fn a_log_without_frames_is_no_mistake() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut session = Session::new(&decoder, &drive_options("c0=drive")).expect("a session");
    session.run(&mut recording(""), &mut Notes::default()).expect("it reads");
    assert_eq!((session.tally().read, session.bindings().len()), (0, 0));
    assert_eq!(session.channels_never_seen().collect::<Vec<_>>(), ["c0"]);
}

#[test]
fn two_channels_are_one_network_only_where_the_user_says_so() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let run = |options: &Options, log: &str| {
        let mut session = Session::new(&decoder, options).expect("a session");
        session.run(&mut recording(log), &mut Notes::default()).map_err(|error| error.to_string())?;
        Ok::<u64, String>(session.tally().decoded)
    };
    let log = "0,x,100,0,00000700\n0,x,101,0,0000\n0,y,200,0,00\n0,y,303,0,00\n0,z,200,0,00\n0,z,305,0,00\n";
    assert_eq!(
        run(&Options::default(), log),
        Err("channels `y` and `z` both look like network `comfort`; a network is one channel: say it with --bind 'x=drive,y=comfort'".to_owned())
    );
    assert_eq!(run(&drive_options("y=comfort,z=comfort"), log), Ok(4));
    assert_eq!(run(&drive_options("x=drive,y=comfort"), log), Ok(4));
    // One that comes when all is decided.
    let mut log = String::new();
    lines("Drive", &[0x100, 0x101], 10, &mut log);
    log.push_str("1,drive,100,0,00000700\n");
    let error = run(&Options::default(), &log).expect_err("twice");
    assert!(error.starts_with("channels `Drive` and `drive` both look like network `drive`"), "{error}");
}

#[test]
fn the_channel_with_the_networks_name_is_it_whatever_others_look_like() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let run = |log: &str| {
        let mut session = Session::new(&decoder, &Options::default()).expect("a session");
        session.run(&mut recording(log), &mut Notes::default()).expect("it reads");
        check_sum(&session);
        let bindings: Vec<String> = session.bindings().iter().map(ToString::to_string).collect();
        (session.tally().decoded, session.tally().on_unbound_channel, bindings.join("; "))
    };
    let taken = |other: &str| {
        format!(
            "channel `drive` is network `drive`: they have the same name; channel `{other}` is left out: it looks like the network that \
             channel `drive` has the name of"
        )
    };
    let log = "0,look,100,0,00000700\n0,look,101,0,0000\n0,drive,100,0,00000700\n";
    assert_eq!(run(log), (1, 2, taken("look")));
    // A damaged character in the name of a channel, in a line that could be of either network.
    let log = "0,drive,100,0,00000700\n0,driv$,100,0,00000700\n0,driv$,200,0,00\n0,drive,100,0,00000700\n";
    assert_eq!(run(log), (2, 2, taken("driv$")));
}

#[test]
fn one_network_is_not_the_first_of_two_channels_without_a_look_at_them() {
    let database = one_frame(frame("f", id(1), vec![unsigned("s", "0.7..0.0")]));
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    session.run(&mut recording("0,x,700,0,05\n0,y,1,0,05\n"), &mut Notes::default()).expect("it reads");
    let bindings: Vec<String> = session.bindings().iter().map(ToString::to_string).collect();
    assert_eq!(
        bindings,
        [
            "channel `x` is left out: its only identifier is not described",
            "channel `y` is network `drive`: its only identifier is described there",
        ]
    );
}

#[test]
fn a_channel_that_was_told_may_turn_up_behind_many_frames() {
    let database = van();
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut log = String::new();
    // More than is read at a time, fewer frames than are waited for.
    lines("c0", &[0x100], 15_000, &mut log);
    lines("c1", &[0x100], 10, &mut log);
    let run = |bind: &str| {
        let mut session = Session::new(&decoder, &drive_options(bind)).expect("a session");
        session.run(&mut recording(&log), &mut Notes::default()).map_err(|error| error.to_string())?;
        Ok::<_, String>((session.tally().decoded, session.tally().on_unbound_channel))
    };
    assert_eq!(run("c1=drive"), Ok((10, 15_000)));
    assert!(run("c2=drive").is_err());
    // A slip of the pen is told soon, not at the end of a long log.
    lines("c0", &[0x100], 60_000, &mut log);
    let mut session = Session::new(&decoder, &drive_options("c2=drive")).expect("a session");
    assert!(session.run(&mut recording(&log), &mut Notes::default()).is_err());
    assert!((20_000..40_000).contains(&session.tally().read), "{}", session.tally().read);
}
