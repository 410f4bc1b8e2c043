//! The known units: symbols, other spellings, dimension, exact factor to the dimension's base unit, counterpart in imperial units.
//!
//! Where the factors come from (all from memory):
//! - prefixes, minute, hour, day, litre, tonne, degree, bar as decimal multiples: BIPM, *The International System of Units* (SI Brochure), 9th edition, tables 7 and 8;
//! - kelvin and degree Celsius, 273.15 K: the same, section 2.3.1; degree Fahrenheit, 459.67: NIST Special Publication 811 (2008), appendix B.8;
//! - yard 0.9144 m (so foot, inch, mile) and avoirdupois pound 0.453 592 37 kg: the international yard and pound agreement, 1959;
//! - standard gravity 9.806 65 m/s²: 3rd CGPM, 1901; pound-force, psi and the mechanical horsepower (550 ft·lbf/s) follow from it and the pound and foot;
//! - nautical mile 1852 m: SI Brochure, 8th edition, table 8; US gallon 231 in³: NIST Handbook 44, appendix C;
//! - imperial gallon 4.546 09 L: the Units of Measurement Regulations 1995 of the United Kingdom (NIST Special Publication 811, appendix B.8, has it, too);
//! - metric horsepower 75 kgf·m/s: NIST Special Publication 811 (2008), appendix B.8.

use super::Dimension::{self, *};

/// One known unit.
#[derive(Debug)]
pub(super) struct Row {
    /// The symbol that outputs show.
    pub(super) symbol: &'static str,
    /// Other spellings that a description may use.
    pub(super) spellings: &'static [&'static str],
    /// What it measures.
    pub(super) dimension: Dimension,
    /// `value in base unit = value * factor + offset`; numerator and denominator.
    pub(super) factor: (i128, u128),
    /// See `factor`.
    pub(super) offset: (i128, u128),
    /// The symbol of its counterpart in imperial units.
    pub(super) imperial: Option<&'static str>,
}

const fn unit(
    symbol: &'static str,
    spellings: &'static [&'static str],
    dimension: Dimension,
    numerator: i128,
    denominator: u128,
) -> Row {
    Row { symbol, spellings, dimension, factor: (numerator, denominator), offset: (0, 1), imperial: None }
}

impl Row {
    const fn offset(self, numerator: i128, denominator: u128) -> Self {
        Self { offset: (numerator, denominator), ..self }
    }

    const fn imperial(self, symbol: &'static str) -> Self {
        Self { imperial: Some(symbol), ..self }
    }
}

/// Inch in 0.1 mm.
const INCH_E4: i128 = 254;
/// Mile in mm.
const MILE_E3: i128 = 1_609_344;
/// US gallon in nL, from 231 cubic inches.
const GALLON_E9: i128 = 231 * INCH_E4 * INCH_E4 * INCH_E4;
/// Imperial gallon in nL.
const IMPERIAL_GALLON_E9: i128 = 4_546_090_000;
/// Pound in 10 µg.
const POUND_E8: i128 = 45_359_237;
/// Standard gravity in 10 µm/s².
const GRAVITY_E5: i128 = 980_665;
/// Pound-force in 1e-13 N.
const POUND_FORCE_E13: i128 = POUND_E8 * GRAVITY_E5;
/// Foot-pound-force in 1e-17 N·m (or J).
const FOOT_POUND_E17: i128 = POUND_FORCE_E13 * 12 * INCH_E4;

const fn e(power: u32) -> i128 {
    10_i128.pow(power)
}

const fn d(power: u32) -> u128 {
    10_u128.pow(power)
}

/// All known units.
#[rustfmt::skip]
pub(super) static ROWS: &[Row] = &[
    unit("1", &[], Share, 1, 1),
    unit("%", &["percent"], Share, 1, 100),
    unit("‰", &["permille"], Share, 1, 1000),
    unit("ppm", &[], Share, 1, d(6)),
    unit("lambda", &["λ"], Share, 1, 1),

    unit("m/s", &[], Speed, 1, 1).imperial("ft/s"),
    unit("mm/s", &[], Speed, 1, 1000).imperial("in/s"),
    unit("km/h", &["kmh"], Speed, 5, 18).imperial("mph"),
    unit("mph", &["mi/h"], Speed, MILE_E3, 3_600_000),
    unit("kn", &[], Speed, 1852, 3600),
    unit("ft/s", &[], Speed, 12 * INCH_E4, d(4)),
    unit("in/s", &[], Speed, INCH_E4, d(4)),

    unit("m/s²", &["m/s^2", "m/s2"], Acceleration, 1, 1).imperial("ft/s²"),
    unit("ft/s²", &["ft/s^2", "ft/s2"], Acceleration, 12 * INCH_E4, d(4)),
    unit("g_n", &[], Acceleration, GRAVITY_E5, d(5)),
    unit("m/s³", &["m/s^3", "m/s3"], Jerk, 1, 1),

    unit("K", &[], Temperature, 1, 1).imperial("°F"),
    unit("°C", &["degC"], Temperature, 1, 1).offset(27_315, 100).imperial("°F"),
    unit("°F", &["degF"], Temperature, 5, 9).offset(45_967, 180),
    unit("ΔK", &["delta_K"], TemperatureDifference, 1, 1).imperial("Δ°F"),
    unit("Δ°C", &["delta_degC"], TemperatureDifference, 1, 1).imperial("Δ°F"),
    unit("Δ°F", &["delta_degF"], TemperatureDifference, 5, 9),

    unit("Hz", &[], Frequency, 1, 1),
    unit("kHz", &[], Frequency, e(3), 1),
    unit("MHz", &[], Frequency, e(6), 1),
    unit("1/s", &[], Frequency, 1, 1),
    unit("1/min", &[], Frequency, 1, 60),
    unit("rpm", &[], Frequency, 1, 60),

    unit("°", &["deg"], Angle, 1, 1),
    unit("°/s", &["deg/s"], AngularSpeed, 1, 1),
    unit("°/s²", &["deg/s^2", "deg/s2", "°/s^2", "deg/s²"], AngularAcceleration, 1, 1),
    unit("rad", &[], RadianAngle, 1, 1),
    unit("mrad", &[], RadianAngle, 1, 1000),
    unit("rad/s", &[], RadianSpeed, 1, 1),
    unit("rad/s²", &["rad/s^2", "rad/s2"], RadianAcceleration, 1, 1),
    unit("1/m", &[], Curvature, 1, 1),
    unit("1/km", &[], Curvature, 1, 1000),

    unit("N·m", &["Nm", "N*m"], Torque, 1, 1).imperial("lbf·ft"),
    unit("kN·m", &["kNm", "kN*m"], Torque, e(3), 1).imperial("lbf·ft"),
    unit("lbf·ft", &["lbf*ft", "ft·lbf", "ft*lbf"], Torque, FOOT_POUND_E17, d(17)),
    unit("N", &[], Force, 1, 1).imperial("lbf"),
    unit("kN", &[], Force, e(3), 1).imperial("lbf"),
    unit("lbf", &[], Force, POUND_FORCE_E13, d(13)),

    unit("Pa", &[], Pressure, 1, 1).imperial("psi"),
    unit("hPa", &[], Pressure, 100, 1).imperial("psi"),
    unit("kPa", &[], Pressure, e(3), 1).imperial("psi"),
    unit("MPa", &[], Pressure, e(6), 1).imperial("psi"),
    unit("mbar", &[], Pressure, 100, 1).imperial("psi"),
    unit("bar", &[], Pressure, e(5), 1).imperial("psi"),
    unit("psi", &["lbf/in²", "lbf/in^2"], Pressure, POUND_FORCE_E13, (INCH_E4 * INCH_E4) as u128 * d(5)),

    unit("W", &[], Power, 1, 1),
    unit("kW", &[], Power, e(3), 1).imperial("hp"),
    unit("hp", &[], Power, 550 * FOOT_POUND_E17, d(17)),
    unit("PS", &[], Power, 75 * GRAVITY_E5, d(5)).imperial("hp"),
    unit("J", &[], Energy, 1, 1),
    unit("kJ", &[], Energy, e(3), 1),
    unit("MJ", &[], Energy, e(6), 1),
    unit("Wh", &["W·h", "W*h"], Energy, 3600, 1),
    unit("kWh", &["kW·h", "kW*h"], Energy, 3_600_000, 1),

    unit("V", &[], Voltage, 1, 1),
    unit("µV", &["uV"], Voltage, 1, d(6)),
    unit("mV", &[], Voltage, 1, 1000),
    unit("kV", &[], Voltage, e(3), 1),
    unit("A", &[], Current, 1, 1),
    unit("µA", &["uA"], Current, 1, d(6)),
    unit("mA", &[], Current, 1, 1000),
    unit("kA", &[], Current, e(3), 1),
    unit("C", &[], Charge, 1, 1),
    unit("Ah", &["A·h", "A*h"], Charge, 3600, 1),
    unit("mAh", &["mA·h", "mA*h"], Charge, 36, 10),
    unit("Ω", &["ohm", "Ohm"], Resistance, 1, 1),
    unit("mΩ", &["mohm", "mOhm"], Resistance, 1, 1000),
    unit("kΩ", &["kohm", "kOhm"], Resistance, e(3), 1),
    unit("MΩ", &["Mohm", "MOhm"], Resistance, e(6), 1),
    unit("Ω/V", &["ohm/V", "Ohm/V"], ResistancePerVoltage, 1, 1),
    unit("F", &[], Capacitance, 1, 1),
    unit("mF", &[], Capacitance, 1, 1000),
    unit("µF", &["uF"], Capacitance, 1, d(6)),
    unit("nF", &[], Capacitance, 1, d(9)),
    unit("H", &[], Inductance, 1, 1),
    unit("mH", &[], Inductance, 1, 1000),
    unit("µH", &["uH"], Inductance, 1, d(6)),

    unit("L", &["l"], Volume, 1, 1).imperial("gal"),
    unit("mL", &["ml"], Volume, 1, 1000),
    unit("m³", &["m^3", "m3"], Volume, e(3), 1).imperial("gal"),
    unit("cm³", &["cm^3", "cm3"], Volume, 1, 1000),
    unit("mm³", &["mm^3", "mm3"], Volume, 1, d(6)),
    unit("gal", &[], Volume, GALLON_E9, d(9)),
    unit("gal_imp", &[], Volume, IMPERIAL_GALLON_E9, d(9)),
    unit("L/h", &["l/h"], VolumeFlow, 1, 1).imperial("gal/h"),
    unit("L/min", &["l/min"], VolumeFlow, 60, 1).imperial("gal/min"),
    unit("L/s", &["l/s"], VolumeFlow, 3600, 1).imperial("gal/min"),
    unit("mL/min", &["ml/min"], VolumeFlow, 60, 1000),
    unit("mL/s", &["ml/s"], VolumeFlow, 36, 10),
    unit("m³/h", &["m^3/h", "m3/h"], VolumeFlow, e(3), 1).imperial("gal/min"),
    unit("gal/h", &[], VolumeFlow, GALLON_E9, d(9)),
    unit("gal/min", &[], VolumeFlow, 60 * GALLON_E9, d(9)),
    unit("gal_imp/h", &[], VolumeFlow, IMPERIAL_GALLON_E9, d(9)),

    unit("kg", &[], Mass, 1, 1).imperial("lb"),
    unit("g", &[], Mass, 1, 1000),
    unit("mg", &[], Mass, 1, d(6)),
    unit("t", &[], Mass, e(3), 1).imperial("lb"),
    unit("lb", &[], Mass, POUND_E8, d(8)),
    unit("kg/h", &[], MassFlow, 1, 1).imperial("lb/h"),
    unit("kg/s", &[], MassFlow, 3600, 1).imperial("lb/min"),
    unit("g/s", &[], MassFlow, 36, 10).imperial("lb/min"),
    unit("mg/s", &[], MassFlow, 36, d(4)),
    unit("lb/h", &[], MassFlow, POUND_E8, d(8)),
    unit("lb/min", &[], MassFlow, 60 * POUND_E8, d(8)),
    unit("kg/m³", &["kg/m^3", "kg/m3"], Density, 1, 1),
    unit("g/cm³", &["g/cm^3", "g/cm3"], Density, e(3), 1),

    unit("m", &[], Length, 1, 1).imperial("ft"),
    unit("km", &[], Length, e(3), 1).imperial("mi"),
    unit("cm", &[], Length, 1, 100).imperial("in"),
    unit("mm", &[], Length, 1, 1000).imperial("in"),
    unit("µm", &["um"], Length, 1, d(6)),
    unit("mi", &[], Length, MILE_E3, 1000),
    unit("yd", &[], Length, 36 * INCH_E4, d(4)),
    unit("ft", &[], Length, 12 * INCH_E4, d(4)),
    unit("in", &[], Length, INCH_E4, d(4)),
    unit("km/L", &["km/l"], DistancePerFuel, 1, 1).imperial("mpg"),
    unit("mpg", &["mi/gal"], DistancePerFuel, MILE_E3 * e(3), GALLON_E9 as u128),
    unit("mpg_imp", &["mi/gal_imp"], DistancePerFuel, MILE_E3 * e(3), IMPERIAL_GALLON_E9 as u128),
    unit("L/100km", &["l/100km"], FuelPerDistance, 1, 1),
    unit("mL/km", &["ml/km"], FuelPerDistance, 1, 10),
    unit("Wh/km", &[], EnergyPerDistance, 1, 1),
    unit("kWh/km", &[], EnergyPerDistance, e(3), 1),
    unit("kWh/100km", &[], EnergyPerDistance, 10, 1),

    unit("s", &[], Time, 1, 1),
    unit("ms", &[], Time, 1, 1000),
    unit("µs", &["us"], Time, 1, d(6)),
    unit("ns", &[], Time, 1, d(9)),
    unit("min", &[], Time, 60, 1),
    unit("h", &[], Time, 3600, 1),
    unit("d", &[], Time, 86_400, 1),

    unit("lx", &[], Illuminance, 1, 1),
    unit("klx", &[], Illuminance, e(3), 1),
    unit("cd", &[], LuminousIntensity, 1, 1),
    unit("cd/m²", &["cd/m^2", "cd/m2"], Luminance, 1, 1),
    unit("W/m²", &["W/m^2", "W/m2"], Irradiance, 1, 1),
    unit("dB", &[], Level, 1, 1),
    unit("bit", &[], Data, 1, 1),
    unit("byte", &[], Data, 8, 1),
    unit("bit/s", &[], DataRate, 1, 1),
    unit("kbit/s", &[], DataRate, e(3), 1),
    unit("Mbit/s", &[], DataRate, e(6), 1),
];
