//! Units against numbers that come from elsewhere, and the table against itself.

use std::collections::HashSet;

use wirelore_bits::Ratio;

use super::*;

fn unit(spelling: &str) -> Unit {
    Unit::known(spelling).unwrap_or_else(|| panic!("{spelling} is a known unit"))
}

fn converted(from: &str, to: &str) -> (Ratio, Ratio) {
    conversion(&unit(from), &unit(to)).unwrap_or_else(|| panic!("{from} converts into {to}"))
}

/// `1 from = factor to`, the factor as decimal text or as a fraction.
fn assert_factor(from: &str, to: &str, factor: &str) {
    assert_eq!(converted(from, to), (factor.parse().expect("a number"), Ratio::ZERO), "{from} in {to}");
}

/// The factors printed in NIST Special Publication 811 (2008), appendices B.8 and B.9, the exact ones in bold there; from memory. Their
/// further digits and the fractions were worked out with Python's `fractions` from the definitions that the table's head names.
#[test]
fn factors_are_those_of_the_published_tables() {
    assert_factor("mi", "km", "1.609344");
    assert_factor("mph", "km/h", "1.609344");
    assert_factor("mph", "m/s", "0.44704");
    assert_factor("kn", "km/h", "1.852");
    assert_factor("ft", "m", "0.3048");
    assert_factor("yd", "ft", "3");
    assert_factor("mi", "yd", "1760");
    assert_factor("in", "mm", "25.4");
    assert_factor("lb", "kg", "0.45359237");
    assert_factor("lbf", "N", "4.4482216152605");
    assert_factor("lbf·ft", "N·m", "1.3558179483314004");
    assert_factor("hp", "W", "745.69987158227022");
    assert_factor("PS", "W", "735.49875");
    assert_factor("gal", "L", "3.785411784");
    assert_factor("gal/h", "L/min", "0.0630901964");
    assert_factor("kWh", "MJ", "3.6");
    assert_factor("g_n", "m/s²", "9.80665");
    assert_factor("bar", "hPa", "1000");
    // 4.4482216152605 N over 0.00064516 m²; printed as 6.894 757 E+03.
    assert_factor("psi", "Pa", "8896443230521/1290320000");
    // 1.609344 km over 3.785411784 L; printed as 4.251 437 E-01.
    assert_factor("mpg", "km/L", "48000/112903");
    // NIST Special Publication 811 (2008), appendix B.8: gallon [Canadian and U.K. (Imperial)], 4.546 09 L exactly.
    assert_factor("gal_imp", "L", "4.54609");
    assert_factor("gal_imp/h", "L/h", "4.54609");
    // 1.609344 km over 4.54609 L.
    assert_factor("mpg_imp", "km/L", "160934400/454609000");
}

#[test]
fn temperatures_convert_with_their_zero_point_and_differences_without() {
    let of = |text: &str| text.parse::<Ratio>().expect("a number");
    assert_eq!(converted("°C", "K"), (Ratio::ONE, of("273.15")));
    assert_eq!(converted("°C", "°F"), (of("1.8"), of("32")));
    assert_eq!(converted("°F", "°C"), (of("5/9"), of("-160/9")));
    assert_eq!(converted("K", "°F"), (of("1.8"), of("-459.67")));
    assert_eq!(converted("Δ°C", "Δ°F"), (of("1.8"), Ratio::ZERO));
    assert_eq!(converted("ΔK", "delta_degC"), (Ratio::ONE, Ratio::ZERO));
    assert_eq!(conversion(&unit("°C"), &unit("Δ°C")), None);
}

#[test]
fn everyday_multiples() {
    assert_factor("km/h", "m/s", "5/18");
    assert_factor("rpm", "Hz", "1/60");
    assert_factor("1/min", "rpm", "1");
    assert_factor("%", "‰", "10");
    assert_factor("Ah", "mAh", "1000");
    assert_factor("L/h", "mL/min", "50/3");
    assert_factor("g/s", "kg/h", "3.6");
    assert_factor("d", "min", "1440");
    assert_factor("kWh/100km", "Wh/km", "10");
    assert_factor("mL/km", "L/100km", "0.1");
    assert_factor("byte", "bit", "8");
    assert_factor("g/cm³", "kg/m³", "1000");
}

#[test]
fn what_has_no_exact_straight_line_does_not_convert() {
    for (from, to) in [("rad", "°"), ("rad/s", "rpm"), ("L/100km", "km/L"), ("N·m", "J"), ("km/h", "km"), ("1", "dB")]
    {
        assert_eq!(conversion(&unit(from), &unit(to)), None, "{from} into {to}");
    }
    assert_eq!(conversion(&Unit::Text("V".into()), &unit("V")), None);
    assert_eq!(imperial(&Unit::Text("km/h".into())), None);
}

#[test]
fn look_alikes_are_folded_and_said_so() {
    let found = |spelling: &str| recognise(spelling).map(|found| (found.unit.symbol(), found.folded));
    assert_eq!(found("µs"), Some(("µs", false)));
    assert_eq!(found("\u{3BC}s"), Some(("µs", true)));
    assert_eq!(found("us"), Some(("µs", false)));
    assert_eq!(found("k\u{2126}"), Some(("kΩ", true)));
    assert_eq!(found("N\u{22C5}m"), Some(("N·m", true)));
    assert_eq!(found("N\u{2022}m"), Some(("N·m", true)));
    assert_eq!(found("Nm"), Some(("N·m", false)));
    assert_eq!(found("\u{BA}C"), Some(("°C", true)));
    assert_eq!(found("\u{2206}\u{2DA}C"), Some(("Δ°C", true)));
    assert_eq!(found("m/s^2"), Some(("m/s²", false)));
    assert_eq!(found("km\u{2215}h"), Some(("km/h", true)));
    assert_eq!(found("kmph"), None);
    assert_eq!(found(""), None);
    assert_eq!(unit("deg").as_str(), "°");
}

#[test]
fn no_spelling_means_two_units() {
    let spellings: Vec<_> = ROWS.iter().flat_map(spellings_of).collect();
    let different: HashSet<_> = spellings.iter().collect();
    assert_eq!(different.len(), spellings.len());
    // A spelling that holds a look-alike itself could never be told from the right one.
    for spelling in spellings {
        assert_eq!(spelling.chars().map(fold_look_alike).collect::<String>(), spelling);
        assert!(!spelling.contains(char::is_whitespace));
    }
}

#[test]
fn every_unit_converts_within_its_dimension_and_back() {
    for (from, to) in known_units().flat_map(|from| known_units().map(move |to| (from, to))) {
        let there = conversion(&from.into(), &to.into());
        assert_eq!(there.is_some(), from.dimension() == to.dimension(), "{from:?} into {to:?}");
        let Some((factor, offset)) = there else {
            continue;
        };
        let (back, back_offset) = conversion(&to.into(), &from.into()).expect("the other way round");
        assert_eq!(factor.checked_mul(&back), Some(Ratio::ONE), "{from:?} into {to:?}");
        let zero = offset.checked_mul(&back).and_then(|there| there.checked_add(&back_offset));
        assert_eq!(zero, Some(Ratio::ZERO), "{from:?} into {to:?}");
    }
}

#[test]
fn every_dimension_is_named_and_its_base_is_known() {
    for dimension in known_units().map(KnownUnit::dimension) {
        assert!(
            ROWS.iter().any(|row| row.dimension == dimension && row.factor == (1, 1) && row.offset == (0, 1)),
            "{dimension:?}"
        );
        assert!(dimension.in_words().starts_with("a"));
    }
}

#[test]
fn imperial_counterparts_convert_and_stay() {
    for from in known_units().map(Unit::from) {
        let Some(to) = imperial(&from) else { continue };
        assert!(conversion(&from, &to).is_some(), "{from} into {to}");
        assert_eq!(imperial(&to), None, "{to} is imperial already");
    }
    let counterpart = |symbol: &str| imperial(&unit(symbol)).map(|unit| unit.to_string());
    for (metric, expected) in [
        ("km/h", "mph"),
        ("°C", "°F"),
        ("Δ°C", "Δ°F"),
        ("km", "mi"),
        ("kPa", "psi"),
        ("L", "gal"),
        ("kg", "lb"),
        ("Nm", "lbf·ft"),
    ] {
        assert_eq!(counterpart(metric).as_deref(), Some(expected));
    }
    assert_eq!(counterpart("rpm"), None);
}

#[test]
fn symbols_are_given_longest_first_without_the_bare_digit() {
    let lengths: Vec<_> = symbols().iter().map(|symbol| symbol.chars().count()).collect();
    assert!(lengths.is_sorted_by(|a, b| a >= b));
    assert!(symbols().contains(&"1/min") && symbols().contains(&"degC") && !symbols().contains(&"1"));
    assert!(symbols().iter().all(|symbol| recognise(symbol).is_some_and(|found| !found.folded)));
}

#[test]
fn the_stored_form_names_the_symbol_and_nothing_else() {
    let json = |unit: &Unit| serde_json::to_string(unit).expect("it can be written");
    assert_eq!(json(&unit("degC")), r#"{"symbol":"°C"}"#);
    assert_eq!(json(&Unit::Text("steps".into())), r#"{"text":"steps"}"#);
    let read = |text: &str| serde_json::from_str::<Unit>(text).map_err(|error| error.to_string());
    assert_eq!(read(r#"{"symbol":"°C"}"#), Ok(unit("°C")));
    assert!(
        read(r#"{"symbol":"degC"}"#).is_err_and(|error| error.starts_with("unit `degC` is stored by its symbol, `°C`"))
    );
    assert!(
        read(r#"{"symbol":"furlong"}"#)
            .is_err_and(|error| error.starts_with("`furlong` is not the symbol of a known unit"))
    );
    for known in known_units().map(Unit::from) {
        let bytes = postcard::to_stdvec(&known).expect("it can be written");
        assert_eq!(postcard::from_bytes(&bytes), Ok(known));
    }
}

#[test]
fn units_are_padded_like_text() {
    assert_eq!(format!("[{:>5}]", unit("°C")), "[   °C]");
}

#[test]
fn names_that_are_written_out_lead_to_their_symbols() {
    let cases = [
        ("Volt", "V"),
        ("VOLTS", "V"),
        ("liter", "L"),
        ("litres", "L"),
        ("celsius", "°C"),
        ("Amp", "A"),
        ("ampere", "A"),
        ("Watt", "W"),
        ("kph", "km/h"),
        ("lbs", "lb"),
        ("degrees", "°"),
        ("ohms", "Ω"),
        ("Percent", "%"),
        ("minutes", "min"),
        ("hertz", "Hz"),
    ];
    for (name, symbol) in cases {
        assert_eq!(symbol_of_name(name), Some(symbol), "{name}");
        assert_eq!(Unit::known(symbol).expect("a known symbol").as_str(), symbol);
    }
    assert_eq!(symbol_of_name("steps"), None);
    assert_eq!(symbol_of_name(&"s".repeat(1_000_000)), None);
}
