//! What the units of the body network put into their frames.

use super::content::{Value, Values, number, word};
use super::engine::RunState;
use super::script::key;
use super::world::World;

/// What the odometer shows at the beginning, km.
const ODOMETER_KM: f64 = 48_211.3;
/// The clock at the beginning: seconds since midnight. The recording's own clock runs in UTC, two hours behind.
const CLOCK_S: f64 = 9.0 * 3600.0 + 41.0 * 60.0 + 17.0;
/// When the wheels' own transmitters are first heard, s, in the order of the wheels.
const TYRE_HEARD_S: [f64; 4] = [0.0, 1.0, 3.0, 11.5];

/// `key_state`
pub(super) fn key_state(world: &mut World, count: u64) -> Values {
    let position = world.hands.key;
    vec![
        word("key", position),
        word("terminal_15", 1),
        word("terminal_50", u8::from(position == key::START)),
        word("engine_runs", u8::from(world.engine.run_state == RunState::Running)),
        number("supply", world.body.battery_v - 0.1),
        word("woken_by", 1),
        number("alive", (count % 15) as f64),
    ]
}

/// `stalks`
pub(super) fn stalks(world: &mut World, _count: u64) -> Values {
    vec![
        word("indicator", world.hands.indicator),
        word("main_beam", 0),
        word("flash", 0),
        word("wiper", world.hands.wiper),
        word("washer", 0),
        number("interval", 3.0),
        word("horn", 0),
        word("rear_washer", 0),
        word("wheel_button", 0),
    ]
}

/// `doors`
pub(super) fn doors(world: &mut World, _count: u64) -> Values {
    let (hands, locked) = (&world.hands, world.body.locked);
    vec![
        word("driver", hands.driver_door.into()),
        word("passenger", 0),
        word("sliding", u8::from(hands.sliding_door > 0.0)),
        word("rear_left", 0),
        word("rear_right", 0),
        word("bonnet", 0),
        word("fuel_flap", 0),
        word("child_lock", 0),
        word("cab_lock", locked.into()),
        word("cargo_lock", locked.into()),
        word("locked_by", if locked { 3 } else { 0 }),
        number("window_left", 12.0),
        number("window_right", 0.0),
        number("sliding_travel", 1240.0 * hands.sliding_door),
    ]
}

/// `lights`
pub(super) fn lights(world: &mut World, _count: u64) -> Values {
    let (hands, body) = (&world.hands, &world.body);
    vec![
        word("side", hands.low_beam.into()),
        word("low_beam", hands.low_beam.into()),
        word("main_beam", 0),
        word("fog_front", 0),
        word("fog_rear", 0),
        word("indicator_left", body.left_lit.into()),
        word("indicator_right", body.right_lit.into()),
        word("brake_lamp", world.chassis.brake_pressed.into()),
        word("reversing", u8::from(hands.lever == 1)),
        word("cab", hands.driver_door.into()),
        word("cargo_bay", u8::from(hands.sliding_door > 0.0)),
        word("hazard", 0),
        word("broken", 0),
        number("dimmer", 70.0),
        number("brightness", body.brightness_lx + world.noise.around_zero(40.0)),
    ]
}

/// `wipers`
pub(super) fn wipers(world: &mut World, _count: u64) -> Values {
    let body = &world.body;
    vec![
        word("motion", body.wiper_motion),
        word("speed", world.hands.wiper),
        word("rain_sensor", 1),
        number("rain", body.wet_percent.clamp(0.0, 100.0)),
        number("strokes", f64::from(body.strokes)),
        number("washer_level", 64.5),
    ]
}

/// `cluster_display`
pub(super) fn cluster_display(world: &mut World, _count: u64) -> Values {
    let speed_kmh = world.chassis.speed_kmh();
    let runs = world.engine.run_state == RunState::Running;
    let doors_open = world.hands.driver_door || world.hands.sliding_door > 0.0;
    vec![
        number("displayed_speed", if speed_kmh > 1.5 { speed_kmh * 1.03 + 0.8 } else { 0.0 }),
        number("odometer", ODOMETER_KM + world.chassis.distance_m / 1000.0),
        number("fuel_level", 57.5),
        number("outside_temperature", 11.5),
        word("lamp_oil", u8::from(world.engine.oil_bar < 0.5)),
        word("lamp_charge", u8::from(!runs)),
        word("lamp_engine", u8::from(!runs)),
        word("lamp_brakes", u8::from(world.at_s < 3.0)),
        word("lamp_belt", u8::from(world.at_s < 3.2)),
        word("lamp_doors", doors_open.into()),
        word("lamp_tyres", 0),
    ]
}

/// `clock`
pub(super) fn clock(world: &mut World, _count: u64) -> Values {
    let seconds = (CLOCK_S + world.at_s) as u32;
    vec![
        number("hours", f64::from(seconds / 3600)),
        number("minutes", f64::from(seconds / 60 % 60)),
        number("seconds", f64::from(seconds % 60)),
        number("day", 13.0),
        number("month", 10.0),
        number("year", 2026.0),
    ]
}

/// `climate_state`
pub(super) fn climate_state(world: &mut World, _count: u64) -> Values {
    let body = &world.body;
    vec![
        number("cab_temperature", body.cab_c),
        word("compressor", 0),
        word("recirculation", 0),
        word("rear_window_heater", u8::from(world.at_s > 4.6)),
        word("flap", 0),
        number("target_left", 21.5),
        number("target_right", 20.5),
        number("blower", body.blower_percent),
        number("evaporator", 13.5 + body.cab_c / 10.0),
        number("refrigerant_pressure", 5.4),
        number("sun", body.brightness_lx / 110.0),
    ]
}

/// `tyres`: a wheel that has not been heard yet has no reading.
pub(super) fn tyres(world: &mut World, _count: u64) -> Values {
    const PRESSURES: [&str; 4] = ["pressure[1]", "pressure[2]", "pressure[3]", "pressure[4]"];
    const TEMPERATURES: [&str; 4] = ["temperature[1]", "temperature[2]", "temperature[3]", "temperature[4]"];
    const COLD_BAR: [f64; 4] = [3.575, 3.6, 4.175, 4.15];
    let mut values = Values::new();
    for wheel in 0..4 {
        let warm_c = world.body.tyres_c[wheel];
        let (pressure, temperature) = if world.at_s >= TYRE_HEARD_S[wheel] {
            let bar = (COLD_BAR[wheel] + 1.0) * (warm_c + 273.0) / (11.0 + 273.0) - 1.0;
            (Value::Number(bar), Value::Number(warm_c))
        } else {
            (Value::NoReading, Value::NoReading)
        };
        values.extend([(PRESSURES[wheel], pressure), (TEMPERATURES[wheel], temperature)]);
    }
    values
}

/// What makes `lights` come at once.
pub(super) fn lights_change(world: &World) -> u64 {
    let (hands, body) = (&world.hands, &world.body);
    let flags = [
        hands.low_beam,
        body.left_lit,
        body.right_lit,
        world.chassis.brake_pressed,
        hands.lever == 1,
        hands.driver_door,
        hands.sliding_door > 0.0,
    ];
    flags.iter().fold(0, |bits, flag| bits << 1 | u64::from(*flag))
}

/// What makes `doors` come at once.
pub(super) fn doors_change(world: &World) -> u64 {
    let flags = [world.hands.driver_door, world.hands.sliding_door > 0.0, world.body.locked];
    flags.iter().fold(0, |bits, flag| bits << 1 | u64::from(*flag))
}

/// What makes `wipers` come at once.
pub(super) fn wipers_change(world: &World) -> u64 {
    u64::from(world.body.wiper_motion) << 8 | u64::from(world.hands.wiper)
}

/// What makes `stalks` come at once.
pub(super) fn stalks_change(world: &World) -> u64 {
    u64::from(world.hands.indicator) << 8 | u64::from(world.hands.wiper)
}

/// What makes `key_state` come at once.
pub(super) fn key_change(world: &World) -> u64 {
    u64::from(world.hands.key) << 8 | world.engine.run_state as u64
}
