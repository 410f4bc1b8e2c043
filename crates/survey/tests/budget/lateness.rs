//! Worst responses out of descriptions.

use wirelore_model::{Database, Nanoseconds};
use wirelore_survey::budget::Budget;

use crate::support::described;

fn worst_us(database: &Database, budget: &Budget, network: &str) -> Vec<(String, Option<f64>)> {
    let (id, _) = database.network_named(network).expect("it is there");
    let late = budget.lateness[id.index()].as_ref().expect("it has a rate").as_ref().expect("it can be counted");
    let name =
        |at: usize| database.frames[budget.networks[id.index()].streams[at].stream.frame.index()].label.name.clone();
    let us = |Nanoseconds(time): Nanoseconds| time as f64 / 1e3;
    late.streams.iter().enumerate().map(|(at, found)| (name(at), found.worst.ok().map(us))).collect()
}

/// The example of Davis, Burns, Bril, Lukkien (2007) out of a text: 125 kbit/s, 7 bytes, 1 ms each. The second instance of the third takes
/// 3.5 ms, where the analysis before that paper said 3.0 ms.
///
/// With a period of 3.4 ms, by hand: the second instance waits for 3 of `a`, 2 of `b` and one of its own, so that it is queued for 6 ms
/// from the start of a busy time in which its own event came after 3.4 ms: 6 - 3.4 + 1 = 3.6 ms. With `c` before `b` all are in time:
/// `b` by its second instance after 1 + 5 - 3.5 + 1 = 3.5 ms.
#[test]
fn the_example_of_the_paper() {
    let text = "network drive can 125 kbit/s
        frame a on drive id 0x100 {
            every 2.5 ms
            length 7
        }
        frame b on drive id 0x200 {
            every 3.5 ms
            length 7
        }
        frame c on drive id 0x300 {
            every 3.5 ms
            length 7
        }";
    let database = described(text);
    let budget = Budget::of(&database);
    let found = worst_us(&database, &budget, "drive");
    let expected = [("a", 2000.0), ("b", 3000.0), ("c", 3500.0)].map(|(name, us)| (name.to_owned(), Some(us)));
    assert_eq!(found, expected);
    assert!(!budget.is_exceeded(1.0, |_| true));

    let (before, behind) = text.rsplit_once("3.5 ms").expect("it is there");
    let database = described(&format!("{before}3.4 ms{behind}"));
    let budget = Budget::of(&database);
    assert_eq!(worst_us(&database, &budget, "drive")[2].1, Some(3600.0));
    assert!(budget.is_exceeded(1.0, |_| true));
    let late = budget.lateness[0].as_ref().and_then(|found| found.as_ref().ok()).expect("it was calculated");
    assert_eq!(late.another_order, Some(true));
    let reasons = late.streams[2].reasons.as_ref().expect("it can miss");
    let higher: Vec<(usize, u64)> = reasons.higher.iter().map(|it| (it.stream, it.frames)).collect();
    assert_eq!(higher, [(0, 3), (1, 2)]);
    assert_eq!((reasons.blocking, reasons.earlier), (None, Nanoseconds(1_000_000)));
}

/// Derived: 500 kbit/s, base format; jitter as described (frames of the set in the response tests).
#[test]
fn periods_and_jitter_come_from_the_description() {
    let mut text = "network drive can 500 kbit/s\n".to_owned();
    let set = [
        (0x0A0, 8, "10 ms", "200 us", 740.0),
        (0x0C8, 6, "20 ms", "500 us", 1270.0),
        (0x1A0, 8, "10 ms", "100 us", 1140.0),
        (0x2F0, 2, "50 ms", "2 ms", 3190.0),
        (0x3B0, 8, "100 ms", "5 ms", 6380.0),
        (0x6F0, 4, "1 s", "10 ms", 11_380.0),
    ];
    for (id, bytes, period, jitter, _) in set {
        text.push_str(&format!(
            "frame f{id:03X} on drive id 0x{id:03X} {{\n every {period}, jitter {jitter}\n length {bytes}\n}}\n"
        ));
    }
    let database = described(&text);
    let budget = Budget::of(&database);
    for (found, (.., expected)) in worst_us(&database, &budget, "drive").iter().zip(set) {
        assert_eq!(found.1, Some(expected), "{}", found.0);
    }
    assert!(!budget.is_exceeded(1.0, |_| true));
}

/// By hand: alone on both networks. 270 µs on the first, up to 5 ms in the gateway, 1080 µs on the second; there it comes 5.27 ms late.
/// Under the gateway's own clock it waits for that as well.
#[test]
fn over_a_gateway() {
    let text = "network drive can 500 kbit/s
        network comfort can 125 kbit/s
        ecu brakes on drive
        ecu hub on drive, comfort
        frame speeds on drive id 0x1B4 {
            sent by brakes every 10 ms
            length 8
        }
        gateway hub {
            pass speeds from drive to comfort as id 0x3A0, within 5 ms
        }";
    let database = described(text);
    let budget = Budget::of(&database);
    let us = |time: Option<Nanoseconds>| time.map(|time| time.0 / 1000);
    let [path] = budget.paths.as_slice() else { panic!("one way") };
    assert_eq!((us(path.before), us(path.within), us(path.behind)), (Some(270), Some(5000), Some(1080)));
    assert_eq!(us(path.total()), Some(6350));
    assert_eq!(worst_us(&database, &budget, "comfort"), [("speeds".to_owned(), Some(6350.0))]);

    let clocked = described(&text.replace(", within", ", every 100 ms, within"));
    let budget = Budget::of(&clocked);
    assert_eq!(us(budget.paths[0].total()), Some(106_350));
    assert_eq!(worst_us(&clocked, &budget, "comfort"), [("speeds".to_owned(), Some(1080.0))]);
}

/// Networks that pass frames to each other both ways depend on each other, and the turns come to an end.
#[test]
fn both_ways_over_a_gateway() {
    let database = described(
        "network one can 500 kbit/s
        network two can 125 kbit/s
        ecu a on one
        ecu b on two
        ecu hub on one, two
        frame there on one id 0x200 {
            sent by a every 20 ms
            length 8
        }
        frame back on two id 0x100 {
            sent by b every 20 ms
            length 8
        }
        gateway hub {
            pass there from one to two, within 1 ms
            pass back from two to one, within 1 ms
        }",
    );
    let budget = Budget::of(&database);
    // `back` first: 1080 µs blocked by `there` and 1080 µs itself; on network one 1 ms in the gateway, 270 µs blocked, 270 µs.
    assert_eq!(worst_us(&database, &budget, "two")[0], ("back".to_owned(), Some(2160.0)));
    assert_eq!(worst_us(&database, &budget, "one")[0], ("back".to_owned(), Some(2160.0 + 1000.0 + 540.0)));
    // `there` waits for one `back` on its own network (270 + 270), is passed on, and waits for one there (1080 + 1080).
    assert_eq!(worst_us(&database, &budget, "one")[1], ("there".to_owned(), Some(540.0)));
    assert_eq!(worst_us(&database, &budget, "two")[1], ("there".to_owned(), Some(540.0 + 1000.0 + 2160.0)));
}

/// Overload: from the frame on that makes it full there is no bound, those before it have one.
#[test]
fn overload_has_no_bound() {
    let database = described(
        "network slow can 100 kbit/s
        frame a on slow id 0x100 {
            every 2 ms
            length 8
        }
        frame b on slow id 0x101 {
            every 2 ms
            length 8
        }",
    );
    let budget = Budget::of(&database);
    let found = worst_us(&database, &budget, "slow");
    assert_eq!(found[0].1, Some(2700.0));
    assert_eq!(found[1].1, None);
    assert!(budget.networks[0].exceeds(1.0) && budget.is_exceeded(1.0, |_| true));
}

/// By hand: a message of 20 bytes comes in 3 frames at once (ISO 15765-2); the last of them is there after the time of all three and of
/// the one that has begun.
#[test]
fn messages_of_several_frames() {
    let database = described(
        "network drive can 500 kbit/s
        frame answer on drive id 0x7E8, carried by iso_tp {
            every 1 s
            length 20
        }
        frame lowest on drive id 0x7FF {
            every 1 s
            length 8
        }",
    );
    let budget = Budget::of(&database);
    let found = worst_us(&database, &budget, "drive");
    assert_eq!(found[0].1.map(f64::round), Some(4.0 * 270.0));
    assert_eq!(found[1].1, Some(4.0 * 270.0));
}

/// Pages with periods of their own come by their own clocks, and wait for each other in one queue: 270 µs each.
#[test]
fn pages_in_turn() {
    let database = described(
        "network drive can 500 kbit/s
        frame details on drive id 0x3F1 {
            length 8
            signal page in byte 0
            when page is 0 { every 1 s }
            when page is 1 { every 500 ms }
            when page is 2 { every 2 s }
        }",
    );
    let budget = Budget::of(&database);
    let found: Vec<Option<f64>> = worst_us(&database, &budget, "drive").into_iter().map(|(_, worst)| worst).collect();
    assert_eq!(found, [Some(810.0); 3]);
    assert!((budget.networks[0].frames_per_s - 3.5).abs() < 1e-9);
}
