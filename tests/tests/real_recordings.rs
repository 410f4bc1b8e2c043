//! Real vehicles: recordings that lie beside the checkout, and what is known of them. Skipped aloud where they are not there.

use std::collections::BTreeMap;

use wirelore_lang::check_text;
use wirelore_log::{ColumnMap, Options, Recording};
use wirelore_tests::readings::{Readings, shared_recording};

/// A heavy truck on the road, 30 s. The facts come with the recording (positions by SAE J1939-71, from memory there, confirmed by
/// physical cross-checks); the description is the one that ships with the program.
#[test]
fn a_heavy_truck_drives_as_is_known_of_it() {
    let Some(path) = shared_recording("heavy-truck-drive.csv") else { return };
    let checked = check_text("truck.lore", "use standard heavy_duty\n");
    let database = checked.database.expect("the standard description has no mistakes");
    let truck = Readings::of(&database, Recording::open(&path, &Options::default()).expect("it can be opened"));

    assert_eq!((truck.tally.read - truck.tally.messages, truck.tally.messages), (19_957, 44));
    assert_eq!(truck.tally.read, truck.tally.sum_of_parts());
    assert_eq!((truck.tally.damaged, truck.tally.too_short, truck.tally.remote, truck.tally.error), (0, 0, 0, 0));

    let spans = [
        ("engine_torque_and_speed.engine_speed", 1147.25, 1786.125),
        ("engine_torque_and_speed.actual_engine_percent_torque", 3.0, 45.0),
        ("accelerator_and_load.accelerator_pedal_position", 14.4, 54.0),
        ("cruise_and_vehicle_speed.wheel_based_vehicle_speed", 23.203_125, 54.906_25),
        ("fuel_economy.fuel_rate", 1.7, 14.7),
        ("engine_temperatures.coolant_temperature", 92.0, 93.0),
        ("vehicle_distance.total_vehicle_distance", 438_978.0, 438_978.375),
        ("electrical_power.battery_potential", 13.95, 14.1),
    ];
    for (signal, low, high) in spans {
        let (least, greatest) = truck.span(signal);
        assert!((least - low).abs() < 0.005 && (greatest - high).abs() < 0.005, "{signal}: {least} to {greatest}");
    }
    // Printed with two decimals there.
    let (least, greatest) = truck.span("axle_and_wheel_speeds.front_axle_speed");
    assert!((least - 23.62).abs() < 0.0051 && (greatest - 55.12).abs() < 0.0051, "{least} to {greatest}");
    for (signal, low, high) in [("output_shaft_speed", 650.0, 1556.0), ("input_shaft_speed", 1151.0, 1786.0)] {
        let (least, greatest) = truck.span(&format!("transmission_shafts.{signal}"));
        assert!((least - low).abs() <= 0.5 && (greatest - high).abs() <= 0.5, "{signal}: {least} to {greatest}");
    }

    // The first frames by hand: 0x1734 = 5940 / 256 km/h; 0x2FDD = 12253 * 0.125 rpm and 0x9B - 125 %.
    assert_eq!(truck.of_signal("cruise_and_vehicle_speed.wheel_based_vehicle_speed")[0], (0.011_063, 23.203_125));
    assert_eq!(truck.of_signal("engine_torque_and_speed.engine_speed")[0], (0.017_118, 1531.625));
    assert_eq!(truck.of_signal("engine_torque_and_speed.actual_engine_percent_torque")[0].1, 30.0);

    // Two quantities that do not know of each other: the speed, added up, is the way that the odometer moved.
    let speeds = truck.of_signal("cruise_and_vehicle_speed.wheel_based_vehicle_speed");
    let way_km: f64 =
        speeds.windows(2).map(|pair| (pair[0].1 + pair[1].1) / 2.0 * (pair[1].0 - pair[0].0) / 3600.0).sum();
    let (before_km, behind_km) = truck.span("vehicle_distance.total_vehicle_distance");
    assert!((way_km - 0.375).abs() < 0.01 && behind_km - before_km == 0.375, "{way_km}");

    // Periods: the gearbox every 10 ms, pedal and engine every 20 ms, speed every 100 ms.
    for (frame, period_s) in [
        ("transmission_shafts from 0x03", 0.01),
        ("engine_torque_and_speed from 0x00", 0.02),
        ("accelerator_and_load from 0x00", 0.02),
        ("cruise_and_vehicle_speed from 0x00", 0.1),
    ] {
        let times = &truck.times[frame];
        let mean = (times[times.len() - 1] - times[0]) / (times.len() - 1) as f64;
        assert!((mean / period_s - 1.0).abs() < 0.05, "{frame}: {mean}");
    }
}

/// A boat at rest: identifier 0x09F80100 every 100 ms holds latitude and longitude as little-endian signed numbers of 1e-7 degree
/// (NMEA 2000 rapid position; the values come with the recording).
#[test]
fn a_boat_lies_where_it_is_known_to_lie() {
    let Some(path) = shared_recording("wire-level/marine-can.csv") else { return };
    let text = "
        network boat can 250 kbit/s
        frame position on boat id 0x09F80100 extended {
            every 100 ms
            length 8
            signal latitude  in bytes 3..0 signed = raw * 1e-7 °
            signal longitude in bytes 7..4 signed = raw * 1e-7 °
        }";
    let database = check_text("boat.lore", text).database.expect("the description has no mistakes");
    let columns =
        "time=time_s:s, id=id_hex:hex, extended=ext, remote=rtr, length=dlc, data=data_hex:hex, checksum_good=crc_ok";
    let told =
        Options { columns: Some(ColumnMap::parse(columns).expect("the columns are told well")), ..Default::default() };
    // Once with the columns told, once recognised by their headings.
    for options in [Options::default(), told] {
        let boat = Readings::of(&database, Recording::open(&path, &options).expect("it can be opened"));
        assert_eq!(boat.tally.read, 19_358);
        assert_eq!(boat.tally.read, boat.tally.sum_of_parts());
        for (signal, value) in [("position.latitude", 33.17229), ("position.longitude", -96.86104)] {
            let (least, greatest) = boat.span(signal);
            assert!((least - value).abs() < 1e-5 && (greatest - value).abs() < 1e-5, "{signal}: {least} to {greatest}");
        }
        // Every 100 ms, 345 s long; what the log marks as damaged is missing.
        let times = &boat.times["position"];
        let mut gaps: Vec<f64> = times.windows(2).map(|pair| pair[1] - pair[0]).collect();
        gaps.sort_unstable_by(f64::total_cmp);
        assert!((gaps[gaps.len() / 2] - 0.1).abs() < 0.005, "{}", gaps[gaps.len() / 2]);
        assert!((times[times.len() - 1] - 345.0).abs() < 0.5, "{}", times[times.len() - 1]);
    }
}

/// What the recording of the truck shows before anything is decoded: how many identifiers, how full the network is, how regular the frames
/// are. Frame lengths without stuff bits and with the pause: 67 + 8n bits for a 29-bit identifier (ISO 11898-1).
#[test]
fn the_truck_network_is_as_full_as_is_known_of_it() {
    let Some(path) = shared_recording("heavy-truck-drive.csv") else { return };
    let mut recording = Recording::open(&path, &Options::default()).expect("it can be opened");
    let mut times: BTreeMap<u32, Vec<f64>> = BTreeMap::new();
    let mut bits_by_second = [0_u64; 31];
    while let Some(frame) = recording.next().expect("it can be read") {
        let time_s = frame.time_ns.expect("every frame has a time") as f64 / 1e9;
        times.entry(frame.id).or_default().push(time_s);
        bits_by_second[time_s as usize] += 67 + 8 * frame.payload.len() as u64;
    }
    assert_eq!(times.len(), 90);
    let last = times.values().flatten().copied().fold(0.0, f64::max);
    assert!((last - 30.0).abs() < 0.05, "{last} s");

    let share = |bits: u64, seconds: f64| bits as f64 / (250_000.0 * seconds);
    let whole = share(bits_by_second.iter().sum(), 30.0);
    let busiest = share(bits_by_second.into_iter().max().unwrap_or(0), 1.0);
    assert!((whole - 0.35).abs() < 0.005 && (busiest - 0.40).abs() < 0.005, "{whole} {busiest}");

    let gaps = |id: u32| times[&id].windows(2).map(|pair| pair[1] - pair[0]).collect::<Vec<_>>();
    for (id, period_s) in [(0x0CF0_0203, 0.01), (0x0CF0_0400, 0.02), (0x18FE_DF00, 0.02), (0x18FE_F100, 0.1)] {
        let gaps = gaps(id);
        let mean = gaps.iter().sum::<f64>() / gaps.len() as f64;
        assert!((mean / period_s - 1.0).abs() < 0.05, "{id:08X}: {mean}");
    }
    // One frame's period depends on the state of the vehicle.
    let varying = gaps(0x0CF0_0C03);
    let near = |period_s: f64| varying.iter().filter(|gap| (*gap / period_s - 1.0).abs() < 0.2).count();
    assert!(near(0.02) > 20 && near(0.1) > 20, "{} of 20 ms, {} of 100 ms", near(0.02), near(0.1));
}
