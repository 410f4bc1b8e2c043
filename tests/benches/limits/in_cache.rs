//! The innermost work: payloads of one message, gathered and in cache, to columns of values. The exact plan made at run time against constants
//! that a compiler knows, against a general bit library, and against scaling that does not care for the last bit.

use std::array;
use std::hint::black_box;

use wirelore_decode::Decoder;
use wirelore_model::{FrameId, SignalId};
use wirelore_tests::workload::{FrameShape, SignalShape};

use crate::bit_vectors;
use crate::constants;
use crate::ours::NamedSet;
use crate::ours::kernel::{Kernel, WordBits};
use crate::plain::Plan;
use crate::race::{Race, Runner, Times};
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
    set: NamedSet,
    exact: Runner,
    constants: Runner,
    exact_constants: Runner,
    plain: Runner,
}

/// The rivals that are compiled for the baseline only.
struct BitVectors {
    rows: Runner,
    columns: Runner,
}

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let blocks = gather(stage);
    let plans = ExactPlan::of_blocks(&stage.decoder, &blocks);
    let mut race = Race::default();
    for decode in [bit_vectors::decode_rows, bit_vectors::decode_columns] {
        assert_eq!(wrong_values(&blocks, decode), 0, "bitvec gives wrong values");
    }
    let right = last_sum(&blocks, slow_path);
    let bits = BitVectors {
        rows: race.enter("bitvec, row by row", right, passes(&blocks, bit_vectors::decode_rows)),
        columns: race.enter("bitvec, column by column", right, passes(&blocks, bit_vectors::decode_columns)),
    };
    let sets = NamedSet::available();
    let runners: Vec<Runners> = sets.iter().map(|set| enter(&mut race, &blocks, &plans, *set)).collect();
    let wrong = wrong_values(&blocks, plain_plan(&blocks, sets[0]));
    let times = race.run(stage.rounds);

    let mut rows = against_constants(&times, &runners);
    rows.extend(against_bit_vectors(&times, &runners, &bits));
    rows.extend(against_plain(&times, &runners));
    let share = 100.0 * wrong as f64 / (MESSAGES * ROWS * SIGNALS) as f64;
    let note = format!("no value is wrong; of those by raw*f + o {share:.1} % are not the nearest double");
    let last = rows.pop().map(|row| row.with_note(note));
    rows.extend(last);
    rows
}

const WORK: Work = Work { item: "value", items: (REPEATS * MESSAGES * ROWS * SIGNALS) as u64, bytes: 0 };

fn against_constants(times: &Times, runners: &[Runners]) -> Vec<Row> {
    let mut rows = Vec::new();
    for Runners { set, exact, constants, exact_constants, .. } in runners {
        let measure = format!("exact run-time plan, in cache, {set}");
        let rival = format!("generated constants, {set}");
        let goal = Goal::AtMost { reach: 1.25, floor: 1.6 };
        rows.push(Row::pair(WORK, times, (&measure, *exact), (&rival, *constants), goal));
        let rival = format!("generated constants, exact as well, {set}");
        rows.push(Row::pair(WORK, times, (&measure, *exact), (&rival, *exact_constants), Goal::Stated));
    }
    rows
}

fn against_bit_vectors(times: &Times, runners: &[Runners], bits: &BitVectors) -> Vec<Row> {
    let mut rows = Vec::new();
    for Runners { set, exact, .. } in runners {
        let measure = format!("exact run-time plan, in cache, {set}");
        let goal = match set.name {
            "baseline" => Goal::Faster { reach: 18.0, floor: 12.0 },
            _ => Goal::Faster { reach: 40.0, floor: 30.0 },
        };
        for (rival, runner) in [
            ("bitvec generic loads, row by row as people write it", bits.rows),
            ("bitvec generic loads, column by column", bits.columns),
        ] {
            rows.push(Row::pair(WORK, times, (&measure, *exact), (rival, runner), goal));
        }
    }
    rows
}

fn against_plain(times: &Times, runners: &[Runners]) -> Vec<Row> {
    let row = |Runners { set, exact, plain, .. }: &Runners| {
        let reach = if set.name == "baseline" { 1.2 } else { 1.05 };
        let measure = format!("exact scaling, {set}");
        let rival = format!("raw*f + o in the same loop, {set}");
        let goal = Goal::AtMost { reach, floor: 1.5 };
        Row::pair(WORK, times, (&measure, *exact), (&rival, *plain), goal)
    };
    runners.iter().map(row).collect()
}

/// Enters what is measured and the rivals for one instruction set. What they make has been compared with the slow path before.
fn enter<'a>(race: &mut Race<'a>, blocks: &'a [Block<'a>], plans: &'a [ExactPlan], set: NamedSet) -> Runners {
    let ours = move |block: &Block<'_>, columns: &mut Columns| {
        plans[block.frame.number as usize].decode(set, block, columns);
    };
    let constants = move |block: &Block<'_>, columns: &mut Columns| constants::decode::<false>(set, block, columns);
    let rounded = move |block: &Block<'_>, columns: &mut Columns| constants::decode::<true>(set, block, columns);
    let plain = plain_plan(blocks, set);
    assert_eq!(wrong_values(blocks, ours), 0, "the exact plan gives wrong values");
    assert_eq!(wrong_values(blocks, rounded), 0, "exact constants give wrong values");
    assert_eq!(wrong_values(blocks, constants), wrong_values(blocks, &plain), "constants and plans scale differently");
    let (right, nearly) = (last_sum(blocks, slow_path), last_sum(blocks, &plain));
    Runners {
        set,
        exact: race.enter(format!("exact plan, {set}"), right, passes(blocks, ours)),
        constants: race.enter("constants", nearly, passes(blocks, constants)),
        exact_constants: race.enter("exact constants", right, passes(blocks, rounded)),
        plain: race.enter("raw*f+o", nearly, passes(blocks, plain)),
    }
}

/// The rival that scales with doubles, for one instruction set.
fn plain_plan(blocks: &[Block<'_>], set: NamedSet) -> impl Fn(&Block<'_>, &mut Columns) + use<> {
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

/// What is measured: the decoder's loops for the signals of one message.
struct ExactPlan {
    motorola: bool,
    kernels: [Kernel; SIGNALS],
}

impl ExactPlan {
    /// By message.
    fn of_blocks(decoder: &Decoder, blocks: &[Block<'_>]) -> Vec<Self> {
        blocks.iter().map(|block| Self::new(decoder, block.frame)).collect()
    }

    fn new(decoder: &Decoder, frame: &FrameShape<SIGNALS>) -> Self {
        let kernel = |index: usize| {
            let SignalShape { shift, width, signed, .. } = frame.signals[index];
            let bits = WordBits { shift: shift as u8, width: width as u8, signed };
            let formula = decoder.formula(FrameId(frame.number), SignalId(index as u32));
            let (lowest, highest) = frame.signals[index].raw_range();
            Kernel::new(bits, formula, Some((lowest.into(), highest.into()))).expect("inside the word")
        };
        Self { motorola: frame.is_motorola(), kernels: array::from_fn(kernel) }
    }

    /// Payloads become words as they do where rows are gathered: loaded, and for Motorola signals turned in a loop of its own.
    fn decode(&self, set: NamedSet, block: &Block<'_>, columns: &mut Columns) {
        let mut words = [0; ROWS];
        for (word, payload) in words.iter_mut().zip(&block.payloads) {
            *word = u64::from_le_bytes(*payload);
        }
        if self.motorola {
            words.iter_mut().for_each(|word| *word = word.swap_bytes());
        }
        for (kernel, column) in self.kernels.iter().zip(columns) {
            kernel.values(set.set, &words, column);
        }
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
