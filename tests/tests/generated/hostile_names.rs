//! Names that are keywords, types of the prelude, or one name after all: the file compiles, and its fields are where they should be.

use wirelore_bits::typed::Reading;

use super::hostile::{Core, CoreFrame, Self2, Self3};

#[test]
fn fields_keep_their_places_whatever_they_are_called() {
    let frame = Self2::decode(&[1, 50, 2, 3, 4, 5, 6, 7]).expect("8 bytes");
    assert_eq!((frame.decode_2, frame.bits_2, frame.set_type), (2, 4, 6));
    assert_eq!((frame.type_(), frame.payload_2(), frame.grosse()), (Reading::Value(10.0), 6.0, 21.0));
    assert_eq!(frame.fn_.word(), Some("Self"));
    let other = Self3::decode(&[1, 2, 3, 4, 5, 6, 7, 8]).expect("8 bytes");
    assert_eq!((other.a_b, other.a_b_2, other.u6e29_u5ea6, other.crate_), (1, 2, 3, 4));
}

#[test]
fn pages_are_told_by_their_selectors() {
    let frame = CoreFrame::decode(3, false, &[1, 10, 30, 0]).expect("long enough").expect("described");
    let mut told = Vec::new();
    frame.each(&mut |name, _| told.push(name.signal));
    assert_eq!(told, ["page", "tell", "value"]);
    assert!(Core::decode(&[1, 10, 30]).is_err(), "4 bytes are stated");
}
