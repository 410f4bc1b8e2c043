//! The innermost work: payloads of one message, gathered and in cache, to columns of values. The exact plan made at run time against constants
//! that a compiler knows, against a general bit library, and against scaling that does not care for the last bit.

use std::array;
use std::hint::black_box;

use wirelore_decode::Decoder;
use wirelore_model::FrameId;
use wirelore_tests::workload::FrameShape;

use crate::bit_vectors;
use crate::constants;
use crate::machine::InstructionSet;
use crate::plain::Plan;
use crate::race::{Race, Runner};
use crate::stage::{SIGNALS, Stage, add_value};
use crate::table::{Goal, Row, Work};

/// Payloads of a message that are gathered before they are decoded.
pub(crate) const ROWS: usize = 512;
/// Messages: the first ones of the description, half of them in either byte order.
pub(crate) const MESSAGES: usize = 8;
/// How often a run decodes all of them.
const REPEATS: usize = 40;

/// What one message becomes. The memory is used again and again: it stays in cache.
pub(crate) type Columns = [[f64; ROWS]; SIGNALS];

/// The gathered payloads of one message.
pub(crate) struct Block<'a> {
    pub(crate) frame: &'a FrameShape<SIGNALS>,
    pub(crate) payloads: [[u8; 8]; ROWS],
    /// The same as little-endian words.
    pub(crate) words: [u64; ROWS],
}

/// Those who run for one instruction set.
struct Runners {
    set: InstructionSet,
    exact: Runner,
    constants: Runner,
    exact_constants: Runner,
    plain: Runner,
}

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let blocks = gather(stage);
    let mut race = Race::default();
    let ours = |block: &Block<'_>, columns: &mut Columns| exact_plan(&stage.decoder, block, columns);
    assert_eq!(wrong_values(&blocks, ours), 0, "the exact plan gives wrong values");
    let right = last_sum(&blocks, slow_path);
    let exact = race.enter("exact plan", right, passes(&blocks, ours));
    let bits = race.enter("bitvec", right, passes(&blocks, bit_vectors::decode));
    let sets = InstructionSet::available();
    let runners: Vec<Runners> = sets.iter().map(|set| enter(&mut race, &blocks, *set, exact)).collect();
    let wrong = wrong_values(&blocks, plain_plan(&blocks, InstructionSet::Baseline));
    let times = race.run(stage.rounds);

    let work = Work { item: "value", items: (REPEATS * MESSAGES * ROWS * SIGNALS) as u64, bytes: 0 };
    let mut rows = Vec::new();
    for Runners { set, exact, constants, exact_constants, .. } in &runners {
        let measure = ("exact run-time plan, in cache", *exact);
        let rival = format!("generated constants, {}", set.name());
        let goal = Goal::AtMost { reach: 1.25, floor: 1.6 };
        rows.push(Row::pair(work, &times, measure, (&rival, *constants), goal));
        let rival = format!("generated constants, exact as well, {}", set.name());
        rows.push(Row::pair(work, &times, measure, (&rival, *exact_constants), Goal::Stated));
    }
    let goal = match sets[..] {
        [InstructionSet::Baseline] => Goal::Faster { reach: 18.0, floor: 12.0 },
        _ => Goal::Faster { reach: 40.0, floor: 30.0 },
    };
    rows.push(Row::pair(work, &times, ("exact run-time plan, in cache", exact), ("bitvec generic loads", bits), goal));
    for Runners { set, exact, plain, .. } in &runners {
        let reach = if *set == InstructionSet::Baseline { 1.2 } else { 1.05 };
        let rival = format!("raw*f + o in the same loop, {}", set.name());
        let goal = Goal::AtMost { reach, floor: 1.5 };
        rows.push(Row::pair(work, &times, ("exact scaling", *exact), (&rival, *plain), goal));
    }
    let share = 100.0 * wrong as f64 / (MESSAGES * ROWS * SIGNALS) as f64;
    let note = format!("no value is wrong; of those by raw*f + o {share:.1} % are not the nearest double");
    let last = rows.pop().map(|row| row.with_note(note));
    rows.extend(last);
    rows
}

/// Enters the rivals for one instruction set. What they make has been compared with the slow path before.
fn enter<'a>(race: &mut Race<'a>, blocks: &'a [Block<'a>], set: InstructionSet, exact: Runner) -> Runners {
    let constants = move |block: &Block<'_>, columns: &mut Columns| constants::decode::<false>(set, block, columns);
    let rounded = move |block: &Block<'_>, columns: &mut Columns| constants::decode::<true>(set, block, columns);
    let plain = plain_plan(blocks, set);
    assert_eq!(wrong_values(blocks, rounded), 0, "exact constants give wrong values");
    assert_eq!(wrong_values(blocks, constants), wrong_values(blocks, &plain), "constants and plans scale differently");
    let (right, nearly) = (last_sum(blocks, slow_path), last_sum(blocks, &plain));
    Runners {
        set,
        exact,
        constants: race.enter("constants", nearly, passes(blocks, constants)),
        exact_constants: race.enter("exact constants", right, passes(blocks, rounded)),
        plain: race.enter("raw*f+o", nearly, passes(blocks, plain)),
    }
}

/// The rival that scales with doubles, for one instruction set.
fn plain_plan(blocks: &[Block<'_>], set: InstructionSet) -> impl Fn(&Block<'_>, &mut Columns) + use<> {
    let plans: Vec<Plan> = blocks.iter().map(|block| Plan::new(block.frame)).collect();
    move |block, columns| plans[block.frame.number as usize].decode(set, block, columns)
}

/// The first payloads of the first messages.
fn gather(stage: &Stage) -> Vec<Block<'_>> {
    let mut payloads = vec![Vec::new(); MESSAGES];
    for sent in stage.vehicle.traffic() {
        if let Some(gathered) = payloads.get_mut(sent.frame.number as usize)
            && gathered.len() < ROWS
        {
            gathered.push(sent.frame.payload(sent.word));
            if payloads.iter().all(|gathered| gathered.len() == ROWS) {
                break;
            }
        }
    }
    let block = |(frame, payloads): (_, Vec<[u8; 8]>)| {
        let payloads: [[u8; 8]; ROWS] = array::from_fn(|row| payloads[row]);
        Block { frame, payloads, words: payloads.map(u64::from_le_bytes) }
    };
    stage.vehicle.frames.iter().zip(payloads).map(block).collect()
}

/// What is measured.
fn exact_plan(decoder: &Decoder, block: &Block<'_>, columns: &mut Columns) {
    for (row, payload) in block.payloads.iter().enumerate() {
        decoder.decode(FrameId(block.frame.number), payload, |signal, reading| {
            columns[signal.index()][row] = reading.value.number().unwrap_or(f64::NAN);
        });
    }
}

/// Bit by bit, and one division.
fn slow_path(block: &Block<'_>, columns: &mut Columns) {
    for (column, signal) in columns.iter_mut().zip(&block.frame.signals) {
        for (value, payload) in column.iter_mut().zip(block.payloads) {
            *value = signal.value(block.frame.word(payload));
        }
    }
}

/// How many values are not those of the slow path, bit for bit.
fn wrong_values(blocks: &[Block<'_>], decode: impl Fn(&Block<'_>, &mut Columns)) -> usize {
    let mut wrong = 0;
    for block in blocks {
        let (mut columns, mut expected) = (zeros(), zeros());
        decode(block, &mut columns);
        slow_path(block, &mut expected);
        let pairs = columns.iter().flatten().zip(expected.iter().flatten());
        wrong += pairs.filter(|(value, expected)| value.to_bits() != expected.to_bits()).count();
    }
    wrong
}

/// What the values of the last message add up to.
fn last_sum(blocks: &[Block<'_>], decode: impl Fn(&Block<'_>, &mut Columns)) -> u64 {
    let mut columns = zeros();
    blocks.iter().for_each(|block| decode(block, &mut columns));
    sum(&columns)
}

/// A contender: all messages, again and again.
fn passes<'a>(blocks: &'a [Block<'a>], decode: impl Fn(&Block<'_>, &mut Columns) + 'a) -> impl FnMut() -> u64 + 'a {
    let mut columns = zeros();
    move || {
        for _ in 0..REPEATS {
            for block in blocks {
                decode(black_box(block), &mut columns);
                black_box(&mut columns);
            }
        }
        sum(&columns)
    }
}

fn zeros() -> Box<Columns> {
    Box::new([[0.0; ROWS]; SIGNALS])
}

fn sum(columns: &Columns) -> u64 {
    let mut sum = 0;
    columns.iter().flatten().for_each(|value| add_value(&mut sum, *value));
    sum
}
