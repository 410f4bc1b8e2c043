//! `schema/database.schema.json` describes exactly the JSON form: what is written fits it, and what fits it no longer is refused. The
//! validator is the general-purpose crate `jsonschema`.

use std::collections::BTreeSet;

use serde_json::{Value, json};
use wirelore_bits::e2e::Profile;
use wirelore_model::unit::known_units;
use wirelore_model::{ChecksumAlgorithm, Database, Description, NetworkKind, store};

use super::example;

fn schema() -> Value {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../schema/database.schema.json");
    let text = std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{path} cannot be read: {error}"));
    serde_json::from_str(&text).expect("the schema is JSON")
}

fn validator(schema: &Value) -> jsonschema::Validator {
    jsonschema::draft202012::new(schema).expect("the schema is a JSON Schema 2020-12")
}

fn written(description: Description) -> Value {
    let database = Database::new(description).expect("the example keeps every promise");
    serde_json::from_str(&store::to_json(&database)).expect("the JSON form is JSON")
}

fn example() -> Value {
    written(example::description())
}

#[test]
fn the_schema_is_valid_itself() {
    assert!(jsonschema::meta::is_valid(&schema()));
}

#[test]
fn what_is_written_fits() {
    let validator = validator(&schema());
    for document in [example(), written(Description::default())] {
        let errors: Vec<_> =
            validator.iter_errors(&document).map(|error| format!("{} at {}", error, error.instance_path())).collect();
        assert!(errors.is_empty(), "{}", errors.join("\n"));
    }
}

/// Takes every alternative and every word out of the schema, one at a time: the example (or the empty description, which names no vehicle)
/// then no longer fits, so it has every variant, and the schema allows none that it lacks. Units, network kinds and checksums are compared with the program's own lists instead.
#[test]
fn the_example_has_every_variant_that_the_schema_allows() {
    let (schema, documents) = (schema(), [example(), written(Description::default())]);
    let mut taken = 0;
    for (pointer, keyword) in alternatives(&schema) {
        let count = schema.pointer(&pointer).and_then(Value::as_array).map_or(0, Vec::len);
        for index in 0..count {
            let mut poorer = schema.clone();
            let left = poorer.pointer_mut(&pointer).and_then(Value::as_array_mut).expect("it is there");
            let gone = left.remove(index);
            let is_checked_elsewhere = keyword == "enum" && count > 5;
            if is_checked_elsewhere || left.is_empty() {
                continue;
            }
            taken += 1;
            let validator = validator(&poorer);
            let all_fit = documents.iter().all(|document| validator.is_valid(document));
            assert!(!all_fit, "the example has nothing like {gone} at {pointer}");
        }
    }
    assert!(taken > 50, "only {taken} alternatives were found");
}

/// Where the schema has lists of alternatives, with the keyword.
fn alternatives(schema: &Value) -> Vec<(String, &'static str)> {
    let mut found = Vec::new();
    for pointer in pointers(schema) {
        for keyword in ["oneOf", "anyOf", "enum"] {
            if schema.pointer(&pointer).and_then(|at| at.get(keyword)).is_some_and(Value::is_array) {
                found.push((format!("{pointer}/{keyword}"), keyword));
            }
        }
    }
    found
}

/// Every place inside a document.
fn pointers(document: &Value) -> Vec<String> {
    let mut all = vec![String::new()];
    let mut next = 0;
    while let Some(pointer) = all.get(next).cloned() {
        next += 1;
        let keys: Vec<String> = match document.pointer(&pointer) {
            Some(Value::Object(entries)) => {
                entries.keys().map(|key| key.replace('~', "~0").replace('/', "~1")).collect()
            }
            Some(Value::Array(items)) => (0..items.len()).map(|index| index.to_string()).collect(),
            _ => vec![],
        };
        all.extend(keys.into_iter().map(|key| format!("{pointer}/{key}")));
    }
    all
}

#[test]
fn lists_of_words_are_those_of_the_program() {
    let schema = schema();
    let listed = |pointer: &str| -> BTreeSet<String> {
        let words =
            schema.pointer(pointer).and_then(Value::as_array).unwrap_or_else(|| panic!("the schema has {pointer}"));
        words.iter().map(|word| word.as_str().expect("a word").to_owned()).collect()
    };
    let units = known_units().map(|unit| unit.symbol().to_owned()).collect();
    assert_eq!(listed("/$defs/unit/oneOf/0/properties/symbol/enum"), units);
    let kinds = NetworkKind::ALL.map(|kind| kind.keyword().to_owned()).into();
    assert_eq!(listed("/$defs/network/properties/kind/enum"), kinds);
    let algorithms =
        ChecksumAlgorithm::NAMED.map(|algorithm| json!(algorithm).as_str().expect("a word").to_owned()).into();
    assert_eq!(listed("/$defs/checksum/properties/algorithm/oneOf/0/enum"), algorithms);
    let profiles = Profile::ALL.map(|profile| json!(profile).as_str().expect("a word").to_owned()).into();
    assert_eq!(listed("/$defs/protection/properties/profile/enum"), profiles);
}

#[test]
fn every_key_is_required_and_no_other_is_allowed() {
    let (validator, example) = (validator(&schema()), example());
    for pointer in pointers(&example) {
        let Some(object) = example.pointer(&pointer).and_then(Value::as_object) else {
            continue;
        };
        for key in object.keys() {
            let mut poorer = example.clone();
            poorer.pointer_mut(&pointer).and_then(Value::as_object_mut).expect("it is there").remove(key);
            assert!(!validator.is_valid(&poorer), "{pointer} without {key}");
        }
        let mut richer = example.clone();
        richer
            .pointer_mut(&pointer)
            .and_then(Value::as_object_mut)
            .expect("it is there")
            .insert("surplus".into(), json!(1));
        assert!(!validator.is_valid(&richer), "{pointer} with a surplus key");
    }
}

#[test]
fn wrong_values_are_refused() {
    let (validator, example) = (validator(&schema()), example());
    let wrong = [
        ("/wirelore/version", json!(1)),
        ("/wirelore/format", json!("something else")),
        ("/description/vehicle/label/name", json!("two words")),
        ("/description/networks/0/kind", json!("CAN")),
        ("/description/networks/0/rate", json!(0)),
        ("/description/networks/0/rate", json!(500.5)),
        ("/description/ecus/0/on/0/address", json!(256)),
        ("/description/wires/0/to", json!([])),
        ("/description/frames/0/seen_on/0/identifier/can/last", json!(2048)),
        ("/description/frames/0/seen_on", json!([])),
        ("/description/frames/0/signals/0/unit", json!({ "symbol": "degC" })),
        ("/description/frames/0/signals/0/unit", json!("km/h")),
        ("/description/frames/0/signals/0/scaling", json!("cooked")),
        ("/description/frames/0/signals/0/scaling/affine/factor", json!(0.05)),
        ("/description/frames/0/signals/0/scaling/affine/factor", json!("1/0")),
        ("/description/frames/0/signals/0/content/number/field/0/msb", json!("1.8")),
        ("/description/frames/0/signals/0/content/number/field", json!([])),
        ("/description/frames/0/signals/0/absent/0/first", json!({ "number": 1, "bits": 1 })),
        ("/description/frames/0/signals/2/role/checksum/over", json!([])),
        ("/description/frames/0/signals/2/role/checksum/first/1/identifier", json!(4)),
        ("/description/frames/3/signals/0/role/protection/data_id/one", json!(-1)),
        ("/description/frames/3/signals/0/role/protection/most_rise", json!(0)),
        ("/description/routes/2/pace", json!({ "nth": 1 })),
    ];
    for (pointer, value) in wrong {
        let mut document = example.clone();
        *document.pointer_mut(pointer).unwrap_or_else(|| panic!("the example has {pointer}")) = value.clone();
        assert!(!validator.is_valid(&document), "{value} at {pointer}");
    }
}
