//! Names of units that are written out, as people and documents do, and the symbols that they stand for.

/// Names in small letters, and the symbol; an `s` at the end of a name is no matter.
const NAMES: &[(&[&str], &str)] = &[
    (&["volt"], "V"),
    (&["millivolt"], "mV"),
    (&["amp", "ampere", "ampère"], "A"),
    (&["milliamp", "milliampere"], "mA"),
    (&["watt"], "W"),
    (&["kilowatt"], "kW"),
    (&["ohm"], "Ω"),
    (&["farad"], "F"),
    (&["henry"], "H"),
    (&["coulomb"], "C"),
    (&["joule"], "J"),
    (&["newton"], "N"),
    (&["newtonmeter", "newtonmetre"], "N·m"),
    (&["pascal"], "Pa"),
    (&["hertz"], "Hz"),
    (&["kelvin"], "K"),
    (&["celsius", "celcius", "centigrade", "degc", "deg_c", "degree_celsius", "degrees_celsius"], "°C"),
    (&["fahrenheit", "degf", "deg_f", "degree_fahrenheit", "degrees_fahrenheit"], "°F"),
    (&["degree"], "°"),
    (&["radian"], "rad"),
    (&["liter", "litre", "ltr"], "L"),
    (&["milliliter", "millilitre"], "mL"),
    (&["gallon"], "gal"),
    (&["meter", "metre", "mtr"], "m"),
    (&["kilometer", "kilometre"], "km"),
    (&["centimeter", "centimetre"], "cm"),
    (&["millimeter", "millimetre"], "mm"),
    (&["mile"], "mi"),
    (&["foot", "feet"], "ft"),
    (&["inch", "inches"], "in"),
    (&["kph", "kmph", "km/hr", "kmh", "km/hour"], "km/h"),
    (&["mile/h", "mph"], "mph"),
    (&["knot"], "kn"),
    (&["gram", "gramme"], "g"),
    (&["kilogram", "kilogramme", "kilo"], "kg"),
    (&["tonne"], "t"),
    (&["pound", "lb"], "lb"),
    (&["sec", "second"], "s"),
    (&["msec", "millisecond"], "ms"),
    (&["minute", "mins"], "min"),
    (&["hour", "hr"], "h"),
    (&["day"], "d"),
    (&["percent", "pct", "percentage"], "%"),
    (&["rev/min", "revolutions", "r/min", "1/minute"], "1/min"),
    (&["lux"], "lx"),
    (&["candela"], "cd"),
    (&["horsepower"], "hp"),
    (&["decibel"], "dB"),
];

/// The symbol of a unit whose name is written out, in small or capital letters, as one or many: `Volts`, `litre`, `kph`.
///
/// It is what was most likely meant, for a suggestion; a description is never read so.
///
/// ```
/// assert_eq!(wirelore_model::unit::symbol_of_name("Volts"), Some("V"));
/// assert_eq!(wirelore_model::unit::symbol_of_name("furlong"), None);
/// ```
#[must_use]
pub fn symbol_of_name(name: &str) -> Option<&'static str> {
    const LONGEST_NAME: usize = 40;
    if name.len() > LONGEST_NAME {
        return None;
    }
    let lower = name.to_lowercase();
    let one = lower.strip_suffix('s').unwrap_or(&lower);
    let is_named = |names: &[&str]| names.iter().any(|known| *known == lower || *known == one);
    NAMES.iter().find(|(names, _)| is_named(names)).map(|&(_, symbol)| symbol)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Unit;

    #[test]
    fn all_symbols_are_known_ones_and_all_names_are_small() {
        for (names, symbol) in NAMES {
            assert_eq!(Unit::known(symbol).as_ref().map(Unit::as_str), Some(*symbol));
            for name in *names {
                assert_eq!(*name, name.to_lowercase());
                assert_eq!(symbol_of_name(name), Some(*symbol), "{name}");
            }
        }
    }
}
