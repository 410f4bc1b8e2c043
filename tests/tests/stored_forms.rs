//! The stored forms of what ships with the program: JSON that fits the published schema, and both forms load back equal.

use std::path::{Path, PathBuf};

use wirelore_lang::{FileLoader, check};
use wirelore_model::{Database, store};

fn schema_folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../schema")
}

fn shipped() -> Vec<(&'static str, Database)> {
    ["demo/kestrel.lore", "standard/heavy_duty.lore"]
        .into_iter()
        .map(|name| {
            let path = schema_folder().join(name);
            let checked = check(&[path.to_str().expect("the checkout has a plain path")], &FileLoader);
            (name, checked.database.unwrap_or_else(|| panic!("{name} has mistakes")))
        })
        .collect()
}

/// Validated by a general-purpose validator against JSON Schema 2020-12.
#[test]
fn the_json_of_what_ships_fits_the_schema() {
    let text = std::fs::read_to_string(schema_folder().join("database.schema.json")).expect("the schema is there");
    let schema: serde_json::Value = serde_json::from_str(&text).expect("the schema is JSON");
    let validator = jsonschema::draft202012::new(&schema).expect("the schema is a schema");
    for (name, database) in shipped() {
        let mut json: serde_json::Value = serde_json::from_str(&store::to_json(&database)).expect("it is JSON");
        let errors: Vec<String> = validator.iter_errors(&json).map(|error| error.to_string()).collect();
        assert!(errors.is_empty(), "{name}: {errors:#?}");
        json["description"]["frames"][0]["label"]["name"] = 7.into();
        assert!(!validator.is_valid(&json), "{name}: a number is no name");
    }
}

#[test]
fn both_forms_load_back_to_an_equal_database() {
    for (name, database) in shipped() {
        assert_eq!(store::from_json(&store::to_json(&database)).expect("JSON loads"), database, "{name}");
        assert_eq!(store::from_lorebin(&store::to_lorebin(&database)).expect("the binary loads"), database, "{name}");
    }
}
