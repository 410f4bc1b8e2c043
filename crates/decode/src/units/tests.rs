//! Wanted units.

use super::*;
use crate::testing::ratio;

fn error(text: &str) -> String {
    Units::parse(text).expect_err("not in order").to_string()
}

#[test]
fn pairs_and_imperial_are_understood() {
    let celsius = Unit::known("°C").expect("known");
    let speed = Unit::known("km/h").expect("known");
    let units = Units::parse("km/h=mph, degC=°F").expect("they convert");
    assert_eq!(units.shown(&speed).as_str(), "mph");
    assert_eq!(units.shown(&celsius).as_str(), "°F");
    let to = Conversion::To { factor: ratio("1.8"), offset: ratio("32") };
    assert_eq!(units.conversion(&celsius), to);
    assert_eq!(Units::parse("imperial").map(|units| units.conversion(&celsius)).ok(), Some(to));
    assert_eq!(Units::as_described().conversion(&celsius), Conversion::None);
    let steps = Unit::Text("steps".to_owned());
    assert_eq!(Units::imperial().shown(&steps), steps);
}

#[test]
fn mistakes_are_told() {
    assert_eq!(
        error("kmh"),
        "cannot understand `kmh` among the wanted units: write `imperial`, or pairs like km/h=mph,°C=°F"
    );
    assert_eq!(error("km/h=mhp"), "cannot convert units: `mhp` is not a known unit; did you mean `mph`?");
    assert_eq!(error("km/h=°F"), "cannot convert km/h to °F: km/h is a speed and °F is a temperature");
    assert_eq!(
        error("L/100km=mpg"),
        "cannot convert L/100km to mpg: one is the reciprocal of the other, and units are converted by a factor and an offset, \
         which keeps every value exact; for L/100km ask for another unit of a fuel volume per distance"
    );
    assert_eq!(error("km/h=mph,km/h=m/s"), "cannot convert km/h to two units at once; give it one counterpart");
}
