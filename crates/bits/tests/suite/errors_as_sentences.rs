//! Errors are sentences that name what was found: lower case, no full stop, every number of theirs in them.

use wirelore_bits::e2e::E2eError;
use wirelore_bits::typed::{Damage, NotEncoded, TooShort};
use wirelore_bits::{
    Crc, CrcError, DecimalError, DoesNotFit, EncodingError, FieldError, InsertError, InvalidDigits, PlaceError,
    PositionTextError,
};

/// The text of an error, which has all of these in it.
#[track_caller]
fn says(error: &dyn core::error::Error, parts: &[&str]) {
    let text = error.to_string();
    let first = text.chars().next().expect("an error says something");
    assert!(!first.is_uppercase() && !text.ends_with('.') && text.contains(' '), "{text}");
    for part in parts {
        assert!(text.contains(part), "`{part}` is missing: {text}");
    }
}

#[test]
fn places_and_fields() {
    says(&PlaceError::EndsUpsideDown, &["swap them"]);
    says(&PlaceError::TooWide { width: 71 }, &["64", "71"]);
    says(&PlaceError::ZeroWidth, &["at least one bit"]);
    says(&PlaceError::BitOutOfRange { bit: 9 }, &["bit 9", "BYTE.BIT"]);
    says(&PlaceError::OutsidePayload, &["payload"]);
    says(&PositionTextError, &["BYTE.BIT"]);
    says(&FieldError::Empty, &["at least one place"]);
    says(&FieldError::TooManyPieces { count: 7 }, &["at most 4", "has 7"]);
    says(&FieldError::TooWide { width: 80 }, &["64", "80"]);
    // People count pieces from one.
    says(&FieldError::Overlap { first: 0, second: 2 }, &["pieces 1 and 3"]);
    says(&InsertError::PayloadTooShort { needed_bytes: 9, found_bytes: 8 }, &["needs 9", "has 8"]);
    says(&InsertError::BitsTooWide { width: 13, bits: 0x2000 }, &["0x2000", "13 bits"]);
}

#[test]
fn numbers() {
    says(&DecimalError::Malformed, &["0.05"]);
    says(&DecimalError::TooLong, &["38"]);
    says(&EncodingError::Width { width: 65 }, &["1 to 64", "65"]);
    says(&EncodingError::SignWithoutSize, &["at least 2 bits"]);
    says(&EncodingError::FloatWidth { width: 24 }, &["16, 32 or 64", "24"]);
    says(&EncodingError::BcdWidth { width: 10 }, &["4 bits each", "10 bits"]);
    says(&InvalidDigits { digit: 12, power: 3 }, &["0xC", "10^3"]);
    says(&DoesNotFit::OutOfRange { lowest: -8, highest: 7 }, &["-8..7"]);
    says(&DoesNotFit::BeyondFloat { width: 16 }, &["16 bits"]);
    says(&DoesNotFit::NotAnInteger, &["round it"]);
    says(&DoesNotFit::NotAFloat, &["convert it"]);
}

#[test]
fn checksums_and_protection() {
    says(&CrcError::Width { width: 65 }, &["1 to 64", "65"]);
    says(&CrcError::ValueTooWide { width: 8 }, &["8 bits"]);
    says(&E2eError::WrongSortOfId { takes_list: true }, &["list of 16", "one number is given"]);
    says(&E2eError::WrongSortOfId { takes_list: false }, &["a list is given"]);
    says(&E2eError::IdTooLarge { most: 0xFFF }, &["0xFFF"]);
    says(&E2eError::NotAtTheFront, &["front"]);
    says(&E2eError::OutOfReach, &["beyond"]);
    // Not the 2 KiB of its table.
    assert_eq!(format!("{:?}", Crc::ISO_HDLC), format!("Crc({:?})", Crc::ISO_HDLC.parameters()));
}

#[test]
fn generated_source() {
    let short = TooShort { needed_bytes: 8, found_bytes: 3 };
    says(&short, &["needs 8", "has 3"]);
    says(&Damage::Sum { signal: "check", expected: 0x1F, found: 0x2E }, &["`check` is 0x2E", "give 0x1F"]);
    says(&Damage::Length { told: 9, is: 8 }, &["tells 9", "has 8"]);
    says(&Damage::DataId { expected: 0x12, found: 0x34 }, &["id 0x34", "0x12 was expected"]);
    says(&Damage::NotACount { found: 15 }, &["count 15"]);
    says(&Damage::TooShort, &["ends before"]);
    says(&NotEncoded::DoesNotFit("speed"), &["`speed` does not fit"]);
    says(&NotEncoded::OtherCount("title"), &["`title`"]);
    says(&NotEncoded::OtherPage, &["another page"]);
    says(&NotEncoded::Gap("rest"), &["`rest`"]);
    assert_eq!(NotEncoded::from(short).to_string(), short.to_string());
    says(&NotEncoded::Protection, &["protection"]);
}
