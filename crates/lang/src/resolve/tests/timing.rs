//! When a frame is sent, as it arrives in the description.

use wirelore_model::{Nanoseconds, Period, Sending};

use super::*;

const MS: u64 = 1_000_000;

fn sending(timing: &str) -> Sending {
    let text = format!("ecu a on n\nframe f on n id 1 {{ sent by a {timing}\nlength 8\nsignal request in byte 0 }}");
    let checked = on_can(&text);
    let database = checked.database.unwrap_or_else(|| panic!("{timing}: {:?}", checked.diagnostics));
    database.frames[0].sending.clone()
}

fn period(shortest_ms: u64, longest_ms: u64) -> Option<Period> {
    Some(Period { shortest: Nanoseconds(shortest_ms * MS), longest: Nanoseconds(longest_ms * MS) })
}

#[test]
fn fixed_and_varying_periods() {
    assert_eq!(sending("every 20 ms").every, period(20, 20));
    let varying = sending("every 10..40 ms, jitter 2 ms, timeout 100 ms");
    assert_eq!(varying.every, period(10, 40));
    assert_eq!((varying.jitter, varying.timeout), (Some(Nanoseconds(2 * MS)), Some(Nanoseconds(100 * MS))));
}

#[test]
fn faster_while_a_signal_says_so() {
    let sending = sending("every 20 ms while request is 1, else every 200 ms");
    assert_eq!(sending.every, period(200, 200));
    let faster = sending.faster.expect("both halves arrive");
    assert_eq!((Some(faster.every), faster.test.values.len()), (period(20, 20), 1));
}

#[test]
fn on_change_and_apart() {
    let sending = sending("on change, 20 ms..1 s apart");
    assert!(sending.on_change && sending.every.is_none());
    assert_eq!(sending.apart_at_least, Some(Nanoseconds(20 * MS)));
    assert_eq!(sending.apart_at_most, Some(Nanoseconds(1000 * MS)));
}
