//! The shifts: the gearbox asks before it changes the ratio, and the engine answers.

use crate::series::{Drive, drive};

/// A shift, from the target gear's change on.
struct Shift {
    at_s: f64,
    from: u8,
    to: u8,
}

fn forward_gear(word: &str) -> Option<u8> {
    let gears = ["first", "second", "third", "fourth", "fifth", "sixth"];
    (1..).zip(gears).find(|(_, gear)| *gear == word).map(|(number, _)| number)
}

fn shifts(drive: &Drive) -> Vec<Shift> {
    let targets = drive.row("drive/shift_request.target_gear");
    let gears = targets.iter().filter_map(|point| Some((point.at_s, forward_gear(point.word.as_deref()?)?)));
    let gears: Vec<(f64, u8)> = gears.collect();
    let changes = gears.windows(2).filter(|pair| pair[0].1 != pair[1].1);
    changes.map(|pair| Shift { at_s: pair[1].0, from: pair[0].1, to: pair[1].1 }).collect()
}

/// The first moment within 0.8 s around a shift at which a signal passes a level.
fn passes(drive: &Drive, name: &str, at_s: f64, passed: impl Fn(f64) -> bool) -> Option<f64> {
    let row = drive.row(name).iter().filter(|point| (at_s - 0.1..at_s + 0.7).contains(&point.at_s));
    row.filter(|point| point.value.is_some_and(&passed)).map(|point| point.at_s).next()
}

const REQUEST: &str = "drive/shift_request.torque_request";
const ACTUAL: &str = "drive/engine_torque.actual_torque";
const DEMAND: &str = "drive/engine_torque.driver_demand";

#[test]
fn the_van_shifts_up_and_down() {
    let gears: Vec<(u8, u8)> = shifts(drive()).iter().map(|shift| (shift.from, shift.to)).collect();
    assert_eq!(gears, [(1, 2), (2, 3), (3, 4), (4, 3), (3, 2), (2, 3), (3, 4), (4, 3), (3, 2), (2, 1)]);
}

#[test]
fn before_an_upshift_the_torque_request_falls_and_the_engine_follows() {
    for shift in shifts(drive()).iter().filter(|shift| shift.to > shift.from) {
        let demand_nm = drive().value(DEMAND, shift.at_s).expect("the engine has spoken");
        assert!(demand_nm > 60.0, "an upshift under load at {} s", shift.at_s);
        let low = |torque_nm| torque_nm < 0.5 * demand_nm;
        let asked_s = passes(drive(), REQUEST, shift.at_s, low).expect("the request falls");
        let done_s = passes(drive(), ACTUAL, shift.at_s, low).expect("the engine follows");
        let delay_ms = (done_s - asked_s) * 1e3;
        assert!((30.0..150.0).contains(&delay_ms), "{delay_ms} ms at {} s", shift.at_s);
        let after_nm = drive().value(ACTUAL, shift.at_s + 1.2).expect("the engine has spoken");
        assert!(after_nm > 0.7 * demand_nm, "the torque comes back: {after_nm} of {demand_nm} N·m");
    }
}

#[test]
fn for_a_coasting_downshift_the_torque_request_rises_and_the_engine_follows() {
    for shift in shifts(drive()).iter().filter(|shift| shift.to < shift.from) {
        let demand_nm = drive().value(DEMAND, shift.at_s).expect("the engine has spoken");
        let high = |torque_nm| torque_nm > demand_nm + 20.0;
        let asked_s = passes(drive(), REQUEST, shift.at_s, high).expect("the request rises");
        let done_s = passes(drive(), ACTUAL, shift.at_s, high).expect("the engine follows");
        assert!((0.02..0.15).contains(&(done_s - asked_s)), "{} s at {} s", done_s - asked_s, shift.at_s);
    }
}

#[test]
fn while_the_gearbox_intervenes_the_engine_grants_it_and_both_speak_fast() {
    for shift in shifts(drive()) {
        let answers = drive().row("drive/engine_torque.answer");
        let granted = answers.iter().filter(|point| (shift.at_s..shift.at_s + 0.8).contains(&point.at_s));
        let granted = granted.filter(|point| point.word.as_deref() == Some("granted")).count();
        assert!((20..=28).contains(&granted), "{granted} answers at {} s", shift.at_s);
    }
    let idle = drive().row(REQUEST).iter().filter(|point| (20.0..23.0).contains(&point.at_s)).count();
    assert!((14..=16).contains(&idle), "{idle} requests in 3 s without a shift");
}

#[test]
fn between_two_gears_there_is_no_gear() {
    let gears = drive().row("drive/shift_request.current_gear");
    assert!(gears.iter().any(|point| point.word.as_deref() == Some("unknown") && point.value.is_none()));
}

/// Engine speed over output speed is the gear's ratio, as long as the converter is locked.
#[test]
fn with_the_converter_locked_engine_and_output_turn_in_the_gears_ratio() {
    let ratios = [("second", 2.37), ("third", 1.56), ("fourth", 1.16)];
    let mut compared = [0; 3];
    for point in drive().row("drive/engine_state.engine_speed") {
        let locked = drive().word("drive/shift_request.converter", point.at_s) == Some("locked");
        let output_rpm = drive().value("drive/shift_request.output_speed", point.at_s).unwrap_or(0.0);
        let steady = drive()
            .value("drive/vehicle_motion.longitudinal_acceleration", point.at_s)
            .is_some_and(|value| value.abs() < 0.6);
        let gear = drive().word("drive/shift_request.current_gear", point.at_s).unwrap_or_default();
        if let (true, true, Some(which)) = (locked, steady, ratios.iter().position(|(name, _)| *name == gear)) {
            let ratio = point.value.unwrap_or(0.0) / output_rpm;
            assert!((ratio / ratios[which].1 - 1.0).abs() < 0.03, "{ratio} in {gear} gear at {} s", point.at_s);
            compared[which] += 1;
        }
    }
    assert!(compared.iter().all(|count| *count > 5), "{compared:?}");
}
