//! Places against a walk from bit to bit, and at the ends of the payload.

use std::vec::Vec;

use super::*;
use crate::STRIDE;

const INTEL: ByteOrder = ByteOrder::Intel;
const MOTOROLA: ByteOrder = ByteOrder::Motorola;

fn at(byte: u32, bit: u8) -> BitPosition {
    BitPosition::new(byte, bit)
}

/// The next more significant bit: up in its byte, then on to the byte that the order names.
fn more_significant(position: BitPosition, order: ByteOrder) -> Option<BitPosition> {
    match (position.bit, order) {
        (0..=6, _) => Some(at(position.byte, position.bit + 1)),
        (_, ByteOrder::Intel) => Some(at(position.byte + 1, 0)),
        (_, ByteOrder::Motorola) => Some(at(position.byte.checked_sub(1)?, 0)),
    }
}

/// All bits from `lsb` up to `msb`, by walking; `None` if the walk never gets there.
fn walk(msb: BitPosition, lsb: BitPosition, order: ByteOrder) -> Option<Vec<BitPosition>> {
    let mut bits = std::vec![lsb];
    while bits[bits.len() - 1] != msb {
        if bits.len() == 200 {
            return None;
        }
        bits.push(more_significant(bits[bits.len() - 1], order)?);
    }
    Some(bits)
}

/// Every pair of ends in ten bytes: the order by the bytes always leads from one end to the other, with at least one bit, so no width is ever
/// zero or less.
#[test]
fn every_pair_of_ends() {
    let all = || (0..10).step_by(STRIDE.min(9)).flat_map(|byte| (0..8).map(move |bit| at(byte, bit)));
    for (msb, lsb) in all().flat_map(|msb| all().map(move |lsb| (msb, lsb))) {
        let order = if msb.byte < lsb.byte { MOTOROLA } else { INTEL };
        let place = Place::between(msb, lsb);
        if msb.byte == lsb.byte && msb.bit < lsb.bit {
            assert_eq!(place, Err(PlaceError::EndsUpsideDown));
            continue;
        }
        let mut bits = walk(msb, lsb, order).expect("the order leads from the one to the other");
        bits.reverse();
        let width = bits.len() as u64;
        if width > 64 {
            assert_eq!(place, Err(PlaceError::TooWide { width }));
            continue;
        }
        let place = place.expect("at most 64 bits");
        assert_eq!((place.order(), place.msb(), place.lsb(), u64::from(place.width())), (order, msb, lsb, width));
        assert!(place.positions().eq(bits.iter().copied()), "{msb}..{lsb}");
        assert_eq!(place.first_byte(), msb.byte.min(lsb.byte));
        assert_eq!(place.last_byte(), msb.byte.max(lsb.byte));
        assert_eq!(place.spans_bytes(), msb.byte != lsb.byte);
        // Inside one byte the order that is asked for makes no difference.
        for order in [INTEL, MOTOROLA].into_iter().filter(|other| *other == order || !place.spans_bytes()) {
            assert_eq!(Place::from_lsb(lsb, width as u32, order), Ok(place));
            assert_eq!(Place::from_msb(msb, width as u32, order), Ok(place));
        }
    }
}

/// The examples of the language: `bits 1.4..0.0`, `bits 0.4..1.0`, `bytes 0..1`, `bytes 1..0`.
#[test]
fn order_and_width_follow_from_the_ends() {
    let of = |msb, lsb| Place::between(msb, lsb).map(|place| (place.order(), place.width()));
    assert_eq!(of(at(1, 4), at(0, 0)), Ok((INTEL, 13)));
    assert_eq!(of(at(0, 4), at(1, 0)), Ok((MOTOROLA, 13)));
    assert_eq!(of(at(0, 7), at(1, 0)), Ok((MOTOROLA, 16)));
    assert_eq!(of(at(1, 7), at(0, 0)), Ok((INTEL, 16)));
    assert_eq!(of(at(6, 5), at(6, 5)), Ok((INTEL, 1)));
}

#[test]
fn bad_places_are_refused() {
    assert_eq!(Place::between(at(0, 8), at(0, 0)), Err(PlaceError::BitOutOfRange { bit: 8 }));
    assert_eq!(Place::between(at(0, 0), at(0, 255)), Err(PlaceError::BitOutOfRange { bit: 255 }));
    for order in [INTEL, MOTOROLA] {
        for build in [Place::from_lsb, Place::from_msb] {
            assert_eq!(build(at(3, 0), 0, order), Err(PlaceError::ZeroWidth));
            assert_eq!(build(at(3, 0), 65, order), Err(PlaceError::TooWide { width: 65 }));
            assert_eq!(build(at(3, 9), 4, order), Err(PlaceError::BitOutOfRange { bit: 9 }));
            assert_eq!(build(at(u32::MAX, 0), 4, order), Err(PlaceError::OutsidePayload));
        }
    }
}

#[test]
fn places_stay_inside_the_payload() {
    let last = u32::MAX - 1;
    assert_eq!(Place::from_lsb(at(0, 0), 9, MOTOROLA), Err(PlaceError::OutsidePayload));
    assert_eq!(Place::from_msb(at(0, 7), 9, INTEL), Err(PlaceError::OutsidePayload));
    assert_eq!(Place::from_lsb(at(last, 0), 9, INTEL), Err(PlaceError::OutsidePayload));
    assert_eq!(Place::from_msb(at(last, 7), 9, MOTOROLA), Err(PlaceError::OutsidePayload));
    let edge = Place::from_lsb(at(last, 0), 8, INTEL).expect("inside");
    assert_eq!((edge.msb(), edge.last_byte()), (at(last, 7), last));
    assert_eq!(Place::between(at(last, 0), at(0, 0)), Err(PlaceError::TooWide { width: u64::from(last) * 8 + 1 }));
    assert_eq!(Place::between(at(u32::MAX, 0), at(u32::MAX, 0)), Err(PlaceError::OutsidePayload));
}

#[test]
fn shifting_keeps_everything_else() {
    let place = Place::between(at(1, 4), at(0, 0)).expect("a place");
    assert_eq!(place.shifted(0), Some(place));
    assert_eq!(place.shifted(7), Some(Place::between(at(8, 4), at(7, 0)).expect("a place")));
    assert_eq!(place.shifted(u32::MAX - 2).map(|place| place.last_byte()), Some(u32::MAX - 1));
    assert_eq!(place.shifted(u32::MAX - 1), None);
    assert_eq!(place.shifted(u32::MAX), None);
}

#[test]
fn overlap_is_a_shared_position() {
    let starts = || (0..3).flat_map(|byte| (0..8).map(move |bit| at(byte, bit)));
    let mut places = Vec::new();
    for width in [1, 2, 7, 9, 17].into_iter().step_by(STRIDE.min(3)) {
        for order in [INTEL, MOTOROLA] {
            places.extend(starts().filter_map(|start| Place::from_lsb(start, width, order).ok()));
        }
    }
    for (one, other) in
        places.iter().step_by(STRIDE.min(7)).flat_map(|one| places.iter().map(move |other| (one, other)))
    {
        let shared = one.positions().any(|bit| other.positions().any(|other| bit == other));
        assert_eq!(one.overlaps(other), shared, "{one:?} and {other:?}");
    }
}
