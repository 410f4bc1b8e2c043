//! The motion: wheels, steering, yaw, brakes, pedal, supply and temperature agree with each other.

use wirelore_tests::drive::{STEERING_RATIO, TRACK_M, WHEELBASE_M};

use crate::series::{Drive, drive};

const WHEELS: [&str; 4] = ["front_left", "front_right", "rear_left", "rear_right"];
const KMH: f64 = 3.6;

/// The four wheels at a moment, km/h.
fn wheels(drive: &Drive, at_s: f64) -> [f64; 4] {
    WHEELS.map(|wheel| drive.value(&format!("drive/wheel_speeds.{wheel}"), at_s).expect("wheels always have a reading"))
}

/// Moments with a fresh wheel speed at which the brake unit, the steering and the yaw sensor have spoken.
fn moments(drive: &'static Drive) -> impl Iterator<Item = (f64, f64, f64, f64)> {
    drive.row("drive/wheel_speeds.rear_left").iter().filter_map(move |point| {
        let value = |name: &str| drive.value(name, point.at_s);
        let speed_kmh = value("drive/brake_state.vehicle_speed")?;
        Some((point.at_s, speed_kmh, value("drive/steering_wheel.angle")?, value("drive/vehicle_motion.yaw_rate")?))
    })
}

/// Whether the steering wheel moves: then the yaw rate, which is up to 100 ms older than the wheels, is that of another curve.
fn is_turned(at_s: f64) -> bool {
    drive().value("drive/steering_wheel.rate", at_s).is_none_or(|rate| rate.abs() > 5.0)
}

#[test]
fn the_van_drives_in_town_and_stands_at_the_ends() {
    let speeds = drive().row("drive/brake_state.vehicle_speed");
    let fastest = speeds.iter().filter_map(|point| point.value).fold(0.0, f64::max);
    assert!((48.0..51.0).contains(&fastest), "{fastest} km/h");
    for point in speeds.iter().filter(|point| point.at_s < 8.5 || point.at_s > 58.0) {
        assert_eq!(point.value, Some(0.0), "at {} s", point.at_s);
    }
}

#[test]
fn straight_ahead_all_wheels_agree_with_the_speed() {
    let mut compared = 0;
    for (at_s, speed_kmh, angle_deg, _) in moments(drive()) {
        // The speed is up to 100 ms older than the wheels: while it changes fast, that alone is more than 2 %.
        let steady = drive()
            .value("drive/vehicle_motion.longitudinal_acceleration", at_s)
            .is_some_and(|value| value.abs() < 0.5);
        if speed_kmh > 15.0 && angle_deg.abs() < 6.0 && steady {
            compared += 1;
            for wheel_kmh in wheels(drive(), at_s) {
                assert!((wheel_kmh / speed_kmh - 1.0).abs() < 0.02, "{wheel_kmh} of {speed_kmh} km/h at {at_s} s");
            }
        }
    }
    assert!(compared > 400, "{compared}");
}

/// Geometry: the rear wheels differ by yaw rate times track; on each side the front wheel runs on the larger circle.
#[test]
fn in_curves_the_wheels_run_on_circles_of_their_own() {
    let mut curves = [0, 0];
    for (at_s, speed_kmh, angle_deg, yaw_deg_per_s) in moments(drive()) {
        if speed_kmh < 12.0 || yaw_deg_per_s.abs() < 9.0 || is_turned(at_s) {
            continue;
        }
        let [front_left, front_right, rear_left, rear_right] = wheels(drive(), at_s);
        let by_yaw_kmh = yaw_deg_per_s.to_radians() * TRACK_M * KMH;
        assert_eq!(by_yaw_kmh > 0.0, angle_deg > 0.0, "steering and yaw at {at_s} s");
        assert!(((rear_right - rear_left) / by_yaw_kmh - 1.0).abs() < 0.20, "rear axle at {at_s} s");
        assert_eq!(front_right > front_left, rear_right > rear_left, "both axles at {at_s} s");
        assert!(front_left > rear_left && front_right > rear_right, "front and rear at {at_s} s");
        curves[usize::from(yaw_deg_per_s > 0.0)] += 1;
    }
    assert!(curves.iter().all(|moments| *moments > 80), "{curves:?}");
}

#[test]
fn steering_speed_and_yaw_agree() {
    let mut compared = 0;
    for (at_s, speed_kmh, angle_deg, yaw_deg_per_s) in moments(drive()) {
        if speed_kmh > 12.0 && angle_deg.abs() > 40.0 && !is_turned(at_s) {
            let wheel_rad = ((angle_deg - 1.4) / STEERING_RATIO).to_radians();
            let expected = (speed_kmh / KMH * wheel_rad.tan() / WHEELBASE_M).to_degrees();
            assert!(
                (yaw_deg_per_s / expected - 1.0).abs() < 0.1,
                "{yaw_deg_per_s} instead of {expected} °/s at {at_s} s"
            );
            compared += 1;
        }
    }
    assert!(compared > 200, "{compared}");
}

#[test]
fn the_brake_switch_closes_before_the_pressure_rises() {
    let pressures = drive().row("drive/brake_state.brake_pressure");
    let pressed = |at_s| drive().word("drive/brake_state.brake_pedal", at_s) == Some("pressed");
    let mut times = 0;
    for pair in pressures.windows(2) {
        let pressure_bar = pair[1].value.expect("the pressure always has a reading");
        assert!(pressure_bar < 1.0 || pressed(pair[1].at_s), "{pressure_bar} bar at {} s", pair[1].at_s);
        if pressed(pair[1].at_s) && !pressed(pair[0].at_s) {
            assert!(pressure_bar < 2.0, "the switch came late at {} s", pair[1].at_s);
            times += 1;
        }
    }
    assert_eq!(times, 3, "before the lever is moved, before the crossing, and to the end");
}

#[test]
fn both_pedal_tracks_agree() {
    for point in drive().row("drive/engine_state.accelerator") {
        let second = drive().value("drive/engine_state.accelerator_track_2", point.at_s);
        let (first, second) = (point.value.expect("a reading"), second.expect("a reading"));
        assert!((first - 2.0 * second).abs() < 2.0, "{first} and {second} % at {} s", point.at_s);
    }
}

#[test]
fn the_supply_falls_while_cranking_and_is_charged_afterwards() {
    let supply = drive().row("comfort/key_state.supply");
    let at = |from_s: f64, until_s: f64| {
        let within = supply.iter().filter(move |point| (from_s..until_s).contains(&point.at_s));
        within.filter_map(|point| point.value).collect::<Vec<f64>>()
    };
    assert!(at(0.0, 3.3).iter().all(|volts| (12.0..12.6).contains(volts)), "{:?}", at(0.0, 3.3));
    assert!(at(3.45, 4.3).iter().any(|volts| *volts < 10.8), "{:?}", at(3.45, 4.3));
    assert!(at(8.0, 60.0).iter().all(|volts| (13.8..14.5).contains(volts)));
}

#[test]
fn the_engine_warms_up() {
    let coolant: Vec<f64> =
        drive().row("drive/engine_temperatures.coolant").iter().filter_map(|point| point.value).collect();
    assert!(coolant.windows(2).all(|pair| pair[1] >= pair[0]));
    let rise = coolant[coolant.len() - 1] - coolant[0];
    assert!((4.0..12.0).contains(&rise), "{rise} °C");
}

#[test]
fn a_wheel_that_was_not_heard_yet_has_no_reading() {
    let last = drive().row("comfort/tyres.pressure[4]");
    assert_eq!(last[0].value, None);
    assert!(last[last.len() - 1].value.is_some_and(|bar| (4.0..4.4).contains(&bar)));
}
