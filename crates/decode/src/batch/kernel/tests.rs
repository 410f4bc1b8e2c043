//! Every kernel against the row-by-row path of `wirelore-bits`, bit for bit, on every set of instructions of the machine.

use proptest::prelude::*;
use wirelore_bits::{
    Affine, BitPosition, ByteOrder, Encoding, Extractor, Field, Number, NumberKind, Place, Ratio, Scaler,
};

use super::*;

/// Factors and offsets: decimal, binary and other denominators, products that need more than 53 bits, negative ones.
const FORMULAS: [(&str, &str); 16] = [
    ("1", "0"),
    ("1", "-40"),
    ("0.1", "0"),
    ("0.05", "-273.15"),
    ("0.03", "0.01"),
    ("-0.01", "327.68"),
    ("-1", "0"),
    ("1/256", "-3.5"),
    ("-3/8", "1/16"),
    ("1/3", "-7"),
    ("-2/7", "3"),
    ("1e-7", "-210"),
    ("1e-14", "0"),
    ("1e-15", "1"),
    ("123456789", "0.5"),
    ("1e20", "0.1"),
];

fn affine((factor, offset): (&str, &str)) -> Affine {
    let ratio = |text: &str| text.parse::<Ratio>().expect("a number");
    Affine::new(ratio(factor), ratio(offset)).expect("it fits")
}

/// A generator of words that look random (constants of Knuth's 64-bit linear congruential generator, from memory).
struct Words(u64);

impl Words {
    fn word(&mut self) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 ^ self.0 >> 29
    }

    /// Words with the ends of a signal's range at its place, and others.
    fn column(&mut self, bits: WordBits, length: usize) -> Vec<u64> {
        let top = 1_u64 << (bits.width - 1);
        let ends = [0, 1, top - 1, top, top | 1 & bits.mask(), bits.mask() - 1, bits.mask()];
        let mut column: Vec<u64> = (0..length).map(|_| self.word()).collect();
        for (word, end) in column.iter_mut().zip(ends) {
            *word = *word & !(bits.mask() << bits.shift) | end << bits.shift;
        }
        column
    }
}

/// The raw number of a word by the row-by-row path, read from the payload in either byte order.
struct Reference {
    extractor: Extractor,
    encoding: Encoding,
    order: ByteOrder,
}

impl Reference {
    fn new(bits: WordBits, order: ByteOrder) -> Self {
        let (byte, bit) = (u32::from(bits.shift / 8), bits.shift % 8);
        let byte = if order == ByteOrder::Intel { byte } else { 7 - byte };
        let place = Place::from_lsb(BitPosition::new(byte, bit), u32::from(bits.width), order).expect("inside");
        let kind = if bits.signed { NumberKind::Signed } else { NumberKind::Unsigned };
        Self {
            extractor: Extractor::new(&Field::from(place)),
            encoding: Encoding::new(kind, bits.width).expect("a width from 1 to 64"),
            order,
        }
    }

    fn raw(&self, word: u64) -> i128 {
        let payload = if self.order == ByteOrder::Intel { word.to_le_bytes() } else { word.to_be_bytes() };
        let bits = self.extractor.extract(&payload).expect("eight bytes");
        match self.encoding.number(bits) {
            Ok(Number::Integer(raw)) => raw,
            other => panic!("{other:?}"),
        }
    }

    fn scaler(&self, affine: &Affine) -> Scaler {
        let (lowest, highest) = self.encoding.integer_range().expect("whole numbers");
        Scaler::new(affine, lowest, highest)
    }
}

fn all_bits() -> impl Iterator<Item = WordBits> {
    let places = (1..=64_u8).flat_map(|width| (0..=64 - width).map(move |shift| (width, shift)));
    places.flat_map(|(width, shift)| [false, true].map(|signed| WordBits { shift, width, signed }))
}

#[track_caller]
fn assert_values(kernel: &Kernel, words: &[u64], expected: &[f64]) {
    for set in InstructionSet::available() {
        let mut values = vec![f64::NAN; words.len()];
        kernel.values(set, words, &mut values);
        for (at, (value, expected)) in values.iter().zip(expected).enumerate() {
            let same = value.to_bits() == expected.to_bits();
            assert!(same, "{set:?}, row {at}: {value} for {expected}, {kernel:?}");
        }
    }
}

#[test]
fn values_have_the_bits_of_the_scaler_at_every_place() {
    let mut words = Words(1);
    for (bits, order) in
        all_bits().zip([ByteOrder::Intel, ByteOrder::Motorola, ByteOrder::Motorola].into_iter().cycle())
    {
        let reference = Reference::new(bits, order);
        let column = words.column(bits, 21);
        let raws: Vec<i128> = column.iter().map(|word| reference.raw(*word)).collect();
        for formula in FORMULAS {
            let formula = affine(formula);
            let scaler = reference.scaler(&formula);
            let expected: Vec<f64> = raws.iter().map(|raw| scaler.value_of(*raw)).collect();
            // The plain run has no say in the values, whatever the loop it chooses.
            let plain = [Some((i128::MIN, i128::MAX)), Some((i128::MIN, 0)), Some((1, 3)), None];
            let kernel = Kernel::new(bits, Some(&formula), plain[words.word() as usize % 4]).expect("inside");
            assert_values(&kernel, &column, &expected);
        }
    }
}

#[test]
fn raw_numbers_are_those_of_the_encoding_at_every_place() {
    fn check<T: RawInteger + PartialEq + std::fmt::Debug + TryInto<i128>>(
        kernel: &Kernel,
        words: &[u64],
        expected: &[i128],
    ) {
        for set in InstructionSet::available() {
            let mut raws = vec![T::truncated(0x55); words.len()];
            kernel.raws(set, words, &mut raws);
            let raws: Vec<Option<i128>> = raws.into_iter().map(|raw| raw.try_into().ok()).collect();
            let expected: Vec<Option<i128>> = expected.iter().copied().map(Some).collect();
            assert_eq!(raws, expected, "{set:?}, {kernel:?}");
        }
    }
    let mut words = Words(2);
    for bits in all_bits() {
        let reference = Reference::new(bits, ByteOrder::Intel);
        let column = words.column(bits, 19);
        let expected: Vec<i128> = column.iter().map(|word| reference.raw(*word)).collect();
        for plain in [Some((i128::MIN, i128::MAX)), Some((i128::MIN, 0)), None] {
            let kernel = Kernel::new(bits, None, plain).expect("inside");
            match (bits.signed, bits.width) {
                (false, 1..=8) => check::<u8>(&kernel, &column, &expected),
                (false, 9..=16) => check::<u16>(&kernel, &column, &expected),
                (false, 17..=32) => check::<u32>(&kernel, &column, &expected),
                (false, _) => check::<u64>(&kernel, &column, &expected),
                (true, 1..=8) => check::<i8>(&kernel, &column, &expected),
                (true, 9..=16) => check::<i16>(&kernel, &column, &expected),
                (true, 17..=32) => check::<i32>(&kernel, &column, &expected),
                (true, _) => check::<i64>(&kernel, &column, &expected),
            }
        }
    }
}

#[test]
fn a_row_outside_the_plain_run_is_seen_wherever_it_stands() {
    const LENGTH: usize = 37;
    for (width, signed) in
        [1, 2, 8, 16, 31, 51, 52, 53, 63, 64].into_iter().flat_map(|width| [(width, false), (width, true)])
    {
        let bits = WordBits { shift: (64 - width) / 2, width, signed };
        let (lowest, highest) = bits.raws();
        let middle = (lowest + highest) / 2;
        let runs = [
            None,
            Some((lowest, highest)),
            Some((i128::MIN, i128::MAX)),
            Some((lowest, highest - 1)),
            Some((lowest + 1, highest)),
            Some((lowest + 1, highest - 1)),
            Some((lowest, lowest)),
            Some((highest, highest)),
            Some((middle, middle)),
            Some((highest + 1, highest + 9)),
            Some((lowest - 9, lowest - 1)),
            Some((middle, middle - 1)),
        ];
        for run in runs {
            let kernel = Kernel::new(bits, Some(&affine(("0.1", "0"))), run).expect("inside");
            let holds = |raw: i128| run.is_some_and(|(first, last)| first <= raw && raw <= last);
            let word = |raw: i128| (raw as u64 & bits.mask()) << bits.shift;
            let usual = run.map_or(lowest, |(first, _)| first.clamp(lowest, highest));
            for (row, raw) in [lowest, lowest + 1, middle, highest - 1, highest]
                .into_iter()
                .flat_map(|raw| [0, 15, 31, 36].map(|row| (row, raw)))
            {
                let mut words = [word(usual); LENGTH];
                words[row] = word(raw);
                let expected = holds(usual) && holds(raw);
                for set in InstructionSet::available() {
                    let told = (
                        kernel.values(set, &words, &mut [0.0; LENGTH]),
                        kernel.raws(set, &words, &mut [0_u64; LENGTH]),
                    );
                    assert_eq!(told, (expected, expected), "{raw} in row {row}, run {run:?}, {bits:?}, {set:?}");
                }
            }
        }
    }
}

#[test]
fn every_length_and_alignment_gives_the_same_and_touches_nothing_else() {
    let bits = WordBits { shift: 5, width: 16, signed: true };
    let kernel = Kernel::new(bits, Some(&affine(("0.01", "-7"))), Some((-30_000, 30_000))).expect("inside");
    let reference = Reference::new(bits, ByteOrder::Intel);
    let scaler = reference.scaler(&affine(("0.01", "-7")));
    let column = Words(3).column(bits, 530);
    let expected: Vec<f64> = column.iter().map(|word| scaler.value_of(reference.raw(*word))).collect();
    for (set, length) in
        InstructionSet::available().flat_map(|set| (0..=70).chain([512]).map(move |length| (set, length)))
    {
        for start in 0..9 {
            let (mut values, mut raws) = (vec![-1.5; 540], vec![0_i16; 540]);
            let words = &column[start..start + length];
            let all_plain = words.iter().all(|word| reference.raw(*word).abs() <= 30_000);
            assert_eq!(kernel.values(set, words, &mut values[8 - start..][..length]), all_plain);
            assert_eq!(kernel.raws(set, words, &mut raws[8 - start..][..length]), all_plain);
            assert_eq!(values[8 - start..][..length], expected[start..][..length]);
            assert!(
                raws[8 - start..][..length]
                    .iter()
                    .zip(words)
                    .all(|(raw, word)| i128::from(*raw) == reference.raw(*word))
            );
            assert!(values[..8 - start].iter().chain(&values[8 - start + length..]).all(|left| *left == -1.5));
        }
    }
}

#[test]
fn columns_of_two_lengths_are_filled_as_far_as_both_go() {
    let kernel = Kernel::new(WordBits { shift: 0, width: 8, signed: false }, None, None).expect("inside");
    for set in InstructionSet::available() {
        let (mut values, mut raws) = ([-1.0; 5], [9_u8; 2]);
        kernel.values(set, &[7; 3], &mut values);
        kernel.raws(set, &[7; 3], &mut raws);
        assert_eq!((values, raws), ([7.0, 7.0, 7.0, -1.0, -1.0], [7; 2]));
    }
}

#[test]
fn bits_outside_the_word_make_no_kernel() {
    for (shift, width) in [(0, 0), (0, 65), (1, 64), (64, 1), (63, 2), (255, 255)] {
        assert!(
            Kernel::new(WordBits { shift, width, signed: false }, None, None).is_none(),
            "{width} bits from {shift}"
        );
    }
    assert!(Kernel::new(WordBits { shift: 63, width: 1, signed: true }, None, None).is_some());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(3000))]

    #[test]
    fn values_have_the_bits_of_the_scaler_for_any_formula(
        width in 1_u8..=64, shift in 0_u8..64, signed: bool,
        factor in (-1_i128 << 54..1 << 54, 0_u32..54), offset in (-1_i128 << 62..1 << 62, 0_u32..62),
        denominator in (1_u128..1 << 56, 0_u32..56), seed: u64,
    ) {
        let bits = WordBits { shift: shift % (65 - width), width, signed };
        // Numbers of all sizes, not only of the largest.
        let (factor, offset, denominator) = (factor.0 >> factor.1, offset.0 >> offset.1, (denominator.0 >> denominator.1).max(1));
        let ratio = |numerator| Ratio::new(numerator, denominator).expect("it fits");
        prop_assume!(factor != 0);
        let formula = Affine::new(ratio(factor), ratio(offset)).expect("it fits");
        let reference = Reference::new(bits, ByteOrder::Intel);
        let scaler = reference.scaler(&formula);
        let column = Words(seed).column(bits, 40);
        let expected: Vec<f64> = column.iter().map(|word| scaler.value_of(reference.raw(*word))).collect();
        assert_values(&Kernel::new(bits, Some(&formula), None).expect("inside"), &column, &expected);
    }
}
