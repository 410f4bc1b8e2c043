//! Both stored forms: what goes in comes out, and nothing else is taken for a database.

use wirelore_bits::Crc;
use wirelore_model::store::{LoadError, from_json, from_lorebin, load, to_json, to_lorebin};
use wirelore_model::{Database, Description, Label};

use super::example;

fn database() -> Database {
    Database::new(example::description()).expect("the example keeps every promise")
}

/// A database that is small enough to be damaged in every possible place.
fn small() -> Database {
    let mut description = example::description();
    description.frames.truncate(1);
    description.routes.truncate(1);
    description.schedules.clear();
    Database::new(description).expect("still valid")
}

/// Puts length and checksum right after the body was changed on purpose.
fn sealed(mut file: Vec<u8>) -> Vec<u8> {
    let length = (file.len() - 24) as u64;
    file[12..20].copy_from_slice(&length.to_le_bytes());
    let checksum = Crc::ISO_HDLC.checksum(&file[24..]) as u32;
    file[20..24].copy_from_slice(&checksum.to_le_bytes());
    file
}

#[test]
fn a_database_can_be_shared_between_threads() {
    fn shared<T: Send + Sync + 'static>() {}
    shared::<Database>();
}

#[test]
fn both_forms_load_back_to_an_equal_database() {
    let database = database();
    let (json, lorebin) = (to_json(&database), to_lorebin(&database));
    assert_eq!(from_json(&json).expect("as it was written"), database);
    assert_eq!(from_lorebin(&lorebin).expect("as it was written"), database);
    assert_eq!(load(json.as_bytes()).expect("known by its content"), database);
    assert_eq!(load(&lorebin).expect("known by its content"), database);
    assert_eq!(to_json(&from_lorebin(&lorebin).expect("as it was written")), json);
    assert_eq!(to_lorebin(&from_json(&json).expect("as it was written")), lorebin);
}

#[test]
fn the_empty_description_is_stored_too() {
    let empty = Database::new(Description::default()).expect("nothing is wrong with nothing");
    assert_eq!(load(&to_lorebin(&empty)).expect("as it was written"), empty);
    assert_eq!(load(to_json(&empty).as_bytes()).expect("as it was written"), empty);
}

#[test]
fn numbers_of_all_sizes_survive() {
    let mut description = example::description();
    description.networks[0].rate = Some(wirelore_model::BitRate(u64::MAX));
    description.states[0].words = vec![
        example::word(example::number(i64::MIN), example::number(-1), "low", wirelore_model::Meaning::Reading),
        example::word(example::bits(u64::MAX - 1), example::bits(u64::MAX), "high", wirelore_model::Meaning::Absent),
    ];
    description.frames[1].signals[2].states = None;
    let database = Database::new(description).expect("valid");
    assert_eq!(from_json(&to_json(&database)).expect("as it was written"), database);
    assert_eq!(from_lorebin(&to_lorebin(&database)).expect("as it was written"), database);
}

#[test]
fn every_flipped_bit_is_refused() {
    let file = to_lorebin(&small());
    for at in 0..file.len() {
        for bit in 0..8 {
            let mut damaged = file.clone();
            damaged[at] ^= 1 << bit;
            let error = load(&damaged).expect_err("one bit is wrong");
            let fits = match at {
                0..8 => matches!(error, LoadError::NotADatabase),
                8..12 => matches!(
                    error,
                    LoadError::Newer { .. } | LoadError::Older { .. } | LoadError::UnknownVersion { .. }
                ),
                12..20 => matches!(error, LoadError::Cut { .. } | LoadError::ExtraBytes { .. }),
                _ => matches!(error, LoadError::Damaged { .. }),
            };
            assert!(fits, "byte {at}, bit {bit}: {error}");
        }
    }
}

#[test]
fn every_cut_and_every_extra_byte_is_refused() {
    let file = to_lorebin(&small());
    assert!(matches!(load(&[]), Err(LoadError::NotADatabase)));
    for length in 1..file.len() {
        let error = load(&file[..length]).expect_err("cut off");
        assert!(matches!(error, LoadError::Cut { found, .. } if found == length as u64), "{length} bytes: {error}");
    }
    let longer = [file.as_slice(), b"x"].concat();
    assert!(matches!(load(&longer), Err(LoadError::ExtraBytes { extra: 1 })));
}

/// Damage with a checksum that fits: made on purpose. It may load as another valid database; it must not panic.
#[test]
fn forged_contents_never_panic() {
    let file = to_lorebin(&small());
    for at in 24..file.len() {
        for value in [0, 1, 0x7F, 0x80, 0xFF, file[at].wrapping_add(1)] {
            let mut forged = file.clone();
            forged[at] = value;
            let _ = load(&sealed(forged));
        }
        let cut = sealed(file[..at].to_vec());
        let error = load(&cut).expect_err("the contents end too early");
        assert!(matches!(error, LoadError::Contents(_)), "{at} bytes: {error}");
    }
    let longer = sealed([file.as_slice(), &[0, 0]].concat());
    assert!(matches!(load(&longer), Err(LoadError::ContentsGoOn { extra: 2 })));
}

/// A list that claims to have four thousand million entries must not take memory for them.
#[test]
fn claimed_lengths_take_no_memory() {
    let header = to_lorebin(&Database::new(Description::default()).expect("valid"))[..24].to_vec();
    let endless = [0xFF, 0xFF, 0xFF, 0xFF, 0x0F];
    // In place of the number of networks, and of the number of frames.
    for before in [&[0][..], &[0; 5][..]] {
        let error = load(&sealed([header.as_slice(), before, &endless, &[0]].concat()))
            .expect_err("there is nothing behind the number");
        assert!(matches!(error, LoadError::Contents(_)), "{error}");
    }
}

#[test]
fn other_versions_and_other_things_are_refused() {
    let json = to_json(&database());
    let error =
        load(json.replace("\"version\": 4", "\"version\": 7, \"more\": []").as_bytes()).expect_err("from the future");
    assert_eq!(
        error.to_string(),
        "this database is stored in version 7 of the format, and this program knows version 4; use a newer program or compile it anew"
    );
    let error = load(json.replace("\"version\": 4", "\"version\": 1").as_bytes()).expect_err("from the past");
    assert_eq!(
        error.to_string(),
        "this database is stored in version 1 of the format, and this program reads version 4; compile it anew from its text"
    );
    let other = json.replace("wirelore database", "wirelore shopping list");
    assert!(
        matches!(load(other.as_bytes()), Err(LoadError::OtherFormat { found }) if found == "wirelore shopping list")
    );
    let unknown = json.replacen("\"vehicle\"", "\"colour\": 1, \"vehicle\"", 1);
    assert!(matches!(load(unknown.as_bytes()), Err(LoadError::Json(_))));
    for bytes in [&b"{}"[..], b"{", b"{\"wirelore\": 3}", b"{\"description\": {}}"] {
        assert!(matches!(load(bytes), Err(LoadError::Json(_))));
    }
    for bytes in [&b"edition 1\n"[..], b"\xFF\xFE\x00", b"[]", b" \n", b"\xF0LOREBIN"] {
        assert!(matches!(load(bytes), Err(LoadError::NotADatabase)));
    }
}

#[test]
fn every_cut_of_the_json_form_is_refused() {
    let json = to_json(&small());
    for length in (0..json.trim_end().len()).filter(|length| json.is_char_boundary(*length)) {
        assert!(load(&json.as_bytes()[..length]).is_err(), "{length} bytes");
    }
}

#[test]
fn deeply_nested_json_is_refused() {
    let deep = format!(
        "{{\"wirelore\": {{\"format\": \"wirelore database\", \"version\": 2}}, \"x\": {}",
        "[".repeat(1_000_000)
    );
    assert!(matches!(load(deep.as_bytes()), Err(LoadError::Json(_))));
}

#[test]
fn a_stored_description_is_validated() {
    let json = to_json(&database()).replace("\"name\": \"brakes\"", "\"name\": \"hub\"");
    let error = load(json.as_bytes()).expect_err("two units of one name");
    assert_eq!(
        error.to_string(),
        "the description is not valid: ecu `hub`: another one has the same name; rename one of them"
    );
    let file = to_lorebin(&database());
    let at = file.windows(7).position(|bytes| bytes == b"\x06brakes").expect("the name is there");
    let mut forged = file;
    forged[at + 1] = b' ';
    assert!(matches!(load(&sealed(forged)), Err(LoadError::Invalid(error)) if error.item() == "ecu ` rakes`"));
}

#[test]
fn items_are_found_by_name() {
    let database = database();
    assert_eq!(database.network_named("on_lin").map(|(id, _)| id.0), Some(3));
    assert_eq!(database.ecu_named("hub").map(|(id, ecu)| (id.0, ecu.leads.len())), Some((1, 1)));
    assert_eq!(database.states_named("gear").map(|(id, table)| (id.0, table.words.len())), Some((0, 4)));
    let (id, frame) = database.frame_named("request").expect("it is there");
    assert_eq!(id.0, 1);
    assert_eq!(frame.signals_named("value").map(|(id, _)| id.0).collect::<Vec<_>>(), [3, 4, 5]);
    assert_eq!(frame.signals_named("nothing").count(), 0);
    assert!(database.frame_named("requests").is_none() && database.network_named("").is_none());
    assert_eq!(Label::named("x").display(), "x");
}

#[test]
fn state_words_come_from_the_table_or_the_signal() {
    let database = database();
    let words = |frame: usize, signal: usize| {
        database
            .words(&database.frames[frame].signals[signal])
            .iter()
            .map(|word| word.word.as_str())
            .collect::<Vec<_>>()
    };
    assert_eq!(words(1, 2), ["park", "forward", "broken", "unknown"]);
    assert_eq!(words(0, 3), ["off", "on"]);
    assert!(words(0, 0).is_empty());
}

/// A description whose stored form is large enough to be shared between readers.
fn large() -> Description {
    let mut description = example::description();
    let mut copy = description.frames[0].clone();
    copy.seen_on.truncate(1);
    for index in 0..1500 {
        copy.label.name = format!("copy_{index}");
        description.frames.push(copy.clone());
    }
    description
}

#[test]
fn a_large_database_loads_back_in_order() {
    let database = Database::new(large()).expect("valid");
    assert_eq!(from_lorebin(&to_lorebin(&database)).expect("as it was written"), database);
}

#[test]
fn the_first_error_is_told_wherever_it_is() {
    let file = to_lorebin(&Database::new(large()).expect("valid"));
    let forged = |names: &[&str]| {
        let mut file = file.clone();
        for name in names {
            let at = file.windows(name.len()).position(|bytes| bytes == name.as_bytes()).expect("the name is there");
            file[at + 4] = b' ';
        }
        match load(&sealed(file)) {
            Err(LoadError::Invalid(error)) => error.item().to_owned(),
            other => panic!("a blank in a name is refused, not {other:?}"),
        }
    };
    assert_eq!(forged(&["copy_17"]), "frame `copy 17`");
    assert_eq!(forged(&["copy_1499"]), "frame `copy 1499`");
    assert_eq!(forged(&["copy_1499", "copy_902", "copy_903"]), "frame `copy 902`");
}
