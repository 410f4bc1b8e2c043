//! The extractor against a reference that walks the payload bit by bit: ten million random places and payloads, and split fields.
//!
//! The reference uses a general-purpose library of bit slices and knows nothing of windows, shifts and masks: an Intel number is a
//! run of bits counted from the least significant bit of byte 0, a Motorola number one counted from the most significant.

use crate::support::Random;
use bitvec::order::{Lsb0, Msb0};
use bitvec::view::BitView;
use wirelore_bits::{BitPosition, ByteOrder, Extractor, Field, InsertError, Place};

/// A place as the reference sees it: a run of bits in the numbering of its order.
#[derive(Clone, Copy, Debug)]
struct Run {
    order: ByteOrder,
    first: u32,
    width: u32,
}

impl Run {
    /// A run that begins in a payload of `bytes` bytes and now and then ends behind it.
    fn random(random: &mut Random, bytes: u32, most_bits: u32) -> Self {
        let order = if random.below(2) == 0 { ByteOrder::Intel } else { ByteOrder::Motorola };
        let width = 1 + random.below(most_bits);
        // One start in sixteen is anywhere, the others fit where the payload is long enough.
        let room = if random.below(16) == 0 { 8 * bytes } else { (8 * bytes + 1).saturating_sub(width).max(1) };
        Self { order, first: random.below(room), width }
    }

    fn place(&self) -> Place {
        let (first, last) = (self.first, self.first + self.width - 1);
        let (msb, lsb) = match self.order {
            ByteOrder::Intel => {
                (BitPosition::new(last / 8, (last % 8) as u8), BitPosition::new(first / 8, (first % 8) as u8))
            }
            ByteOrder::Motorola => {
                (BitPosition::new(first / 8, 7 - (first % 8) as u8), BitPosition::new(last / 8, 7 - (last % 8) as u8))
            }
        };
        Place::between(msb, lsb).expect("a place")
    }

    fn indices(&self) -> core::ops::Range<usize> {
        self.first as usize..(self.first + self.width) as usize
    }

    fn read(&self, payload: &[u8]) -> Option<u64> {
        let append = |bits: u64, bit: bool| bits << 1 | u64::from(bit);
        match self.order {
            ByteOrder::Intel => {
                Some(payload.view_bits::<Lsb0>().get(self.indices())?.iter().by_vals().rev().fold(0, append))
            }
            ByteOrder::Motorola => {
                Some(payload.view_bits::<Msb0>().get(self.indices())?.iter().by_vals().fold(0, append))
            }
        }
    }

    /// Writes the low bits of `bits`.
    fn write(&self, payload: &mut [u8], bits: u64) {
        for step in 0..self.width {
            let bit = bits >> step & 1 == 1;
            match self.order {
                ByteOrder::Intel => payload.view_bits_mut::<Lsb0>().set((self.first + step) as usize, bit),
                ByteOrder::Motorola => {
                    payload.view_bits_mut::<Msb0>().set((self.first + self.width - 1 - step) as usize, bit)
                }
            }
        }
    }
}

fn read_all(runs: &[Run], payload: &[u8]) -> Option<u64> {
    let mut bits = 0u128;
    for run in runs {
        bits = bits << run.width | u128::from(run.read(payload)?);
    }
    Some(bits as u64)
}

fn write_all(runs: &[Run], payload: &mut [u8], mut bits: u64) {
    for run in runs.iter().rev() {
        run.write(payload, bits);
        bits = if run.width == 64 { 0 } else { bits >> run.width };
    }
}

/// Extraction and insertion of one field in one payload, both against the reference.
fn check(random: &mut Random, runs: &[Run], field: &Field, payload: &[u8]) -> bool {
    let extractor = Extractor::new(field);
    let expected = read_all(runs, payload);
    assert_eq!(extractor.extract(payload), expected, "{runs:?} in {payload:02X?}");

    let bits = random.next() >> (64 - field.width());
    let (mut ours, mut theirs) = ([0; 64], [0; 64]);
    let (ours, theirs) = (&mut ours[..payload.len()], &mut theirs[..payload.len()]);
    ours.copy_from_slice(payload);
    theirs.copy_from_slice(payload);
    if expected.is_some() {
        write_all(runs, theirs, bits);
        assert_eq!(extractor.insert(ours, bits), Ok(()));
        assert_eq!(extractor.extract(ours), Some(bits));
    } else {
        let refused = InsertError::PayloadTooShort { needed_bytes: field.needed_bytes(), found_bytes: payload.len() };
        assert_eq!(extractor.insert(ours, bits), Err(refused));
    }
    assert_eq!(ours, theirs, "{bits:#X} put into {runs:?} of {payload:02X?}");
    expected.is_some()
}

fn random_payload<'a>(random: &mut Random, buffer: &'a mut [u8; 64]) -> &'a [u8] {
    for word in buffer.chunks_exact_mut(8) {
        word.copy_from_slice(&random.next().to_le_bytes());
    }
    let length = match random.below(4) {
        0 => 8,
        1 => 1 + random.below(8),
        _ => 1 + random.below(64),
    };
    &buffer[..length as usize]
}

fn check_single_places(seed: u64, pairs: u32) {
    let (mut random, mut buffer, mut found) = (Random(seed), [0; 64], 0);
    for _ in 0..pairs {
        let payload = random_payload(&mut random, &mut buffer);
        let run = Run::random(&mut random, payload.len() as u32, 64);
        let field = Field::from(run.place());
        found += u32::from(check(&mut random, &[run], &field, payload));
    }
    assert!(found > pairs / 2 && found < pairs, "{found} of {pairs} places lay inside their payload");
}

#[test]
fn five_million_places() {
    check_single_places(1, 5_000_000);
}

#[test]
fn five_million_other_places() {
    check_single_places(2, 5_000_000);
}

#[test]
fn split_fields() {
    let (mut random, mut buffer, mut built, mut found) = (Random(3), [0; 64], 0, 0);
    for _ in 0..1_000_000 {
        let payload = random_payload(&mut random, &mut buffer);
        let count = 1 + random.below(4) as usize;
        let most_bits = 64 / count as u32;
        let runs: [Run; 4] = core::array::from_fn(|_| Run::random(&mut random, payload.len() as u32, most_bits));
        let runs = &runs[..count];
        let places = [0, 1, 2, 3].map(|index| runs[index.min(count - 1)].place());
        // Random pieces share a bit now and then; those make no field.
        let Ok(field) = Field::of(&places[..count]) else {
            continue;
        };
        built += 1;
        found += u32::from(check(&mut random, runs, &field, payload));
    }
    assert!(built > 500_000 && found > 400_000, "{built} fields, {found} of them inside their payload");
}

#[test]
fn every_place_in_nine_bytes() {
    let mut random = Random(4);
    let mut buffer = [0; 64];
    for order in [ByteOrder::Intel, ByteOrder::Motorola] {
        for first in 0..72 {
            for width in 1..=64.min(72 - first) {
                let run = Run { order, first, width };
                let field = Field::from(run.place());
                let _ = random_payload(&mut random, &mut buffer);
                for length in 0..=17 {
                    let payload = &buffer[..length];
                    check(&mut random, &[run], &field, payload);
                }
            }
        }
    }
}

#[test]
fn bits_above_the_width_are_refused() {
    let place = Place::between(BitPosition::new(1, 4), BitPosition::new(0, 0)).expect("a place");
    let extractor = Extractor::new(&Field::from(place));
    let mut payload = [0; 8];
    assert_eq!(extractor.insert(&mut payload, 0x2000), Err(InsertError::BitsTooWide { width: 13, bits: 0x2000 }));
    assert_eq!(payload, [0; 8]);
}
