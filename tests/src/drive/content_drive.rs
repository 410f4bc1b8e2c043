//! What the units of the drive network put into their frames.

use super::chassis::Chassis;
use super::content::{Value, Values, number, word};
use super::engine::{Engine, RunState};
use super::gearbox::{Intervention, Phase};
use super::script::lever;
use super::world::World;

/// `wheel_speeds`
pub(super) fn wheel_speeds(world: &mut World, count: u64) -> Values {
    let mut reading = |wheel| world.chassis.wheel_reading_kmh(wheel, &mut world.noise);
    vec![
        number("front_left", reading(0)),
        number("front_right", reading(1)),
        number("rear_left", reading(2)),
        number("rear_right", reading(3)),
        number("alive", (count % 15) as f64),
    ]
}

/// `brake_state`
pub(super) fn brake_state(world: &mut World, count: u64) -> Values {
    let Chassis { pressure_bar, brake_pressed, distance_m, speed_mps, .. } = world.chassis;
    let pressure = (pressure_bar + world.noise.around_zero(0.12)).max(0.0);
    vec![
        number("vehicle_speed", world.chassis.speed_kmh()),
        number("brake_pressure", pressure),
        word("brake_pedal", brake_pressed.into()),
        word("hold_assist", u8::from(speed_mps == 0.0 && pressure_bar > 10.0 && world.at_s > 50.0)),
        word("brake_light", brake_pressed.into()),
        word("abs", 0),
        word("stability", 0),
        word("traction", 0),
        word("pad_wear", 0),
        word("fluid_low", 0),
        number("distance", (distance_m * 10.0).floor() % 256.0 / 10.0),
        number("alive", (count % 16) as f64),
    ]
}

/// `vehicle_motion`
pub(super) fn vehicle_motion(world: &mut World, count: u64) -> Values {
    let (chassis, noise) = (&world.chassis, &mut world.noise);
    vec![
        number("yaw_rate", chassis.yaw_deg_per_s() - 0.04 + noise.around_zero(0.12)),
        number("lateral_acceleration", chassis.lateral_mps2() + 0.02 + noise.around_zero(0.06)),
        number("longitudinal_acceleration", chassis.acceleration_mps2 - 0.01 + noise.around_zero(0.06)),
        number("sensor_temperature", 19.0 + world.at_s / 30.0),
        word("yaw_valid", 1),
        word("lateral_valid", 1),
        word("longitudinal_valid", 1),
        number("alive", (count % 15) as f64),
    ]
}

/// `steering_wheel`
pub(super) fn steering_wheel(world: &mut World, count: u64) -> Values {
    let chassis = &world.chassis;
    let runs = world.engine.run_state == RunState::Running;
    let holding = if runs { chassis.lateral_mps2() * 3.0 + chassis.steering_deg_per_s / 25.0 } else { 0.0 };
    vec![
        number("angle", chassis.steering_deg + world.noise.around_zero(0.15)),
        number("rate", chassis.steering_deg_per_s),
        number("assist_torque", holding.clamp(-45.0, 45.0)),
        word("learned", 1),
        word("assist", u8::from(runs)),
        number("alive", (count % 16) as f64),
        number("supply", world.body.battery_v - 0.15 - holding.abs() * 0.004),
    ]
}

/// `engine_state`
pub(super) fn engine_state(world: &mut World, _count: u64) -> Values {
    let engine = &world.engine;
    let ripple = if engine.speed_rpm > 100.0 { world.noise.around_zero(7.0) } else { 0.0 };
    let throttle = match engine.run_state {
        RunState::Running => (4.0 + 0.9 * engine.pedal_percent).min(100.0),
        RunState::Cranking | RunState::Stopped => 8.0,
    };
    let second_track = engine.pedal_percent / 2.0 + world.noise.around_zero(0.3);
    vec![
        number("engine_speed", engine.speed_rpm + ripple),
        number("accelerator", engine.pedal_percent),
        number("accelerator_track_2", second_track.max(0.0)),
        number("throttle", throttle),
        word("run_state", engine.run_state as u8),
        word("foot_off", u8::from(engine.pedal_percent < 0.5)),
        word("kickdown", 0),
        word("stop_start", u8::from(engine.coolant_c > 60.0)),
        number("fuel_rate", engine.fuel_l_per_h),
    ]
}

/// `engine_torque`
pub(super) fn engine_torque(world: &mut World, count: u64) -> Values {
    let Engine { torque_nm, demand_nm, answers, run_state, .. } = world.engine;
    let runs = run_state == RunState::Running;
    let intervenes = answers != Intervention::None;
    vec![
        number("actual_torque", torque_nm + if runs { world.noise.around_zero(0.8) } else { 0.0 }),
        number("driver_demand", demand_nm),
        number("friction", if runs { -24.0 - world.engine.speed_rpm / 400.0 } else { 0.0 }),
        word("answer", intervenes.into()),
        word("limited_by", if answers == Intervention::Reduce { 4 } else { 0 }),
        number("alive", (count % 16) as f64),
        number("highest_torque", if runs { 330.0 } else { 0.0 }),
    ]
}

/// `shift_request`
pub(super) fn shift_request(world: &mut World, count: u64) -> Values {
    let gearbox = &world.gearbox;
    let current = if gearbox.phase == Phase::Ratio { 15 } else { gearbox.told(gearbox.gear) };
    let converter = match gearbox.lock_up {
        share if share > 0.95 => 2,
        share if share > 0.05 => 1,
        _ => 0,
    };
    vec![
        number("torque_request", gearbox.request_nm),
        word("intervention", gearbox.intervention as u8),
        word("converter", converter),
        word("phase", gearbox.phase as u8),
        word("target_gear", gearbox.told(gearbox.target)),
        word("current_gear", current),
        number("output_speed", gearbox.output_rpm),
        number("alive", (count % 16) as f64),
    ]
}

/// `selector_lever`
pub(super) fn selector_lever(world: &mut World, _count: u64) -> Values {
    let hands = &world.hands;
    let track = 20.0 + 52.0 * f64::from(hands.lever);
    let locked = hands.lever == lever::PARK && !world.chassis.brake_pressed;
    vec![
        word("position", hands.lever),
        word("release_button", hands.lever_button.into()),
        word("park_lock", locked.into()),
        word("winter", 0),
        number("track_1", track),
        number("track_2", 250.0 - track),
    ]
}

/// `engine_temperatures`
pub(super) fn engine_temperatures(world: &mut World, _count: u64) -> Values {
    let engine = &world.engine;
    vec![
        number("coolant", engine.coolant_c),
        number("oil", engine.oil_c),
        number("intake_air", engine.intake_c),
        number("fuel", 18.0 + world.at_s / 40.0),
        number("air_pressure", 97.5),
        number("oil_pressure", engine.oil_bar),
        number("fan", 0.0),
        number("oil_level", 83.5),
    ]
}

/// `charging`
pub(super) fn charging(world: &mut World, _count: u64) -> Values {
    let body = &world.body;
    let runs = world.engine.run_state == RunState::Running;
    vec![
        number("battery_voltage", body.battery_v + world.noise.around_zero(0.012)),
        number("battery_current", body.battery_a + world.noise.around_zero(0.4)),
        number("alternator_load", body.alternator_percent.clamp(0.0, 100.0)),
        number("battery_charge", 81.0 + world.at_s / 120.0),
        number("battery_temperature", 12.0),
        number("alternator_target", if runs { 14.3 } else { 10.6 }),
        word("charge_lamp", u8::from(!runs)),
        word("load_shedding", 0),
    ]
}

/// `gearbox_details`: one page after the other, and on the third one clutch after the other.
pub(super) fn gearbox_details(world: &mut World, count: u64) -> Values {
    let gearbox = &world.gearbox;
    let mut values = vec![number("page", (count % 3 + 1) as f64)];
    match count % 3 {
        0 => values.extend([
            number("oil_temperature", gearbox.oil_c),
            number(
                "line_pressure",
                if world.engine.speed_rpm > 500.0 { 5.2 + world.engine.torque_nm.abs() / 30.0 } else { 0.0 },
            ),
            number("slip", if gearbox.in_drive() { world.engine.speed_rpm - gearbox.turbine_rpm } else { 0.0 }),
            number("oil_age", 48_210.0),
        ]),
        1 => {
            const NAMES: [&str; 5] = [
                "clutch_pressure[1]",
                "clutch_pressure[2]",
                "clutch_pressure[3]",
                "clutch_pressure[4]",
                "clutch_pressure[5]",
            ];
            let holds =
                |clutch: usize| gearbox.in_drive() && (clutch == gearbox.gear % 5 || clutch == (gearbox.gear + 2) % 5);
            let pressure = |clutch| {
                if holds(clutch) { 7.5 + world.engine.torque_nm.abs() / 40.0 } else { 0.2 }
            };
            values.extend(NAMES.iter().enumerate().map(|(clutch, name)| number(name, pressure(clutch))));
        }
        _ => learned_page(&mut values, count / 3 % 5 + 1),
    }
    values
}

fn learned_page(values: &mut Values, clutch: u64) {
    let place = clutch as f64;
    values.push(number("clutch", place));
    if clutch <= 2 {
        values.extend([number("fill_time", 96.0 + 7.0 * place), number("fill_pressure", 3.1 + 0.2 * place)]);
    } else {
        values.extend([number("touch_point", 1.1 + 0.13 * place), number("return_spring", 1.4 + 0.1 * place)]);
    }
    values.push(number("shifts_learned", 2_740.0 + 311.0 * place));
}

/// `engine_identity`: one page after the other.
pub(super) fn engine_identity(_world: &mut World, count: u64) -> Values {
    let page = (count % 4) as u8;
    let mut values = vec![word("page", page)];
    match page {
        0 => values.push(("part_number_1", Value::Text("KL3-204"))),
        1 => values.push(("part_number_2", Value::Text("/0117-C"))),
        2 => values.extend([
            number("software_year", 2026.0),
            number("software_month", 3.0),
            number("software_day", 19.0),
            number("calibration", 4711.0),
        ]),
        _ => values.push(("serial", Value::Bytes(&[0x00, 0x4B, 0x33, 0x00, 0x12, 0x9F, 0x07]))),
    }
    values
}

/// What makes `selector_lever` come at once.
pub(super) fn lever_change(world: &World) -> u64 {
    let hands = &world.hands;
    let flags = [hands.lever_button, world.chassis.brake_pressed && hands.lever == lever::PARK];
    flags.iter().fold(u64::from(hands.lever), |bits, flag| bits << 1 | u64::from(*flag))
}
