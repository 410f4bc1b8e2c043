//! A frame's columns, compiled once: how wide a row must be, and where and as what each signal is read.

use wirelore_model::{Content, Frame, Role, Scaling, Signal, SignalId};

use super::kernel::{Kernel, WordBits};
use super::rows::Rows;
use crate::checks::asks_for_origin;
use crate::plan::{Detail, FramePlan, Geometry, Step};

/// Whole numbers of more bits than this are not all doubles.
const EXACT_BITS: u8 = 53;
/// Windows are shared between signals by letting them begin at multiples of this, where they can.
const WINDOW_BYTES: u32 = 4;

/// What numbers are stored as.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Store {
    /// Engineering values as doubles; whole numbers without a formula that need more than 53 bits as 64-bit integers.
    #[default]
    Values,
    /// Raw numbers in the narrowest integer type that holds all of the signal's; floating-point signals and those with a sensor curve as
    /// with [`Store::Values`].
    Raw,
}

/// The type of a column's numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum NumberType {
    U8,
    U16,
    U32,
    U64,
    I8,
    I16,
    I32,
    I64,
    F64,
}

/// A frame made ready for decoding column by column.
#[derive(Debug, Clone)]
pub(crate) struct TablePlan {
    /// Room that a row needs for the longest payload that is expected, in bytes.
    payload_bytes: usize,
    /// Something runs to the end of the payload.
    to_the_end: bool,
    /// How many bytes the frame has as a rule.
    usual_bytes: u32,
    /// Whether rows keep the origins of their frames: checks ask for them, or identifiers say who sent them.
    pub(crate) keeps_origins: bool,
    /// One for each step of the frame's plan, in the order of the description.
    pub(crate) columns: Box<[ColumnPlan]>,
}

/// One signal as a column.
#[derive(Debug, Clone)]
pub(crate) struct ColumnPlan {
    pub(crate) signal: SignalId,
    /// Its place among the steps of the frame's plan.
    pub(crate) step: usize,
    /// The group of signals it belongs to.
    pub(crate) group: usize,
    pub(crate) needed_bytes: u32,
    /// `None`: characters, bytes or trouble codes.
    pub(crate) number: Option<NumberType>,
    /// `None`: read one by one.
    pub(crate) cut: Option<Cut>,
}

/// A column that is read in one loop.
#[derive(Debug, Clone)]
pub(crate) struct Cut {
    /// The eight payload bytes that hold the signal begin here.
    pub(crate) window: u32,
    pub(crate) motorola: bool,
    bits: WordBits,
    pub(crate) kernel: Kernel,
}

impl TablePlan {
    /// The columns of the wanted signals of a frame that has at most so many bytes.
    pub(crate) fn new(frame: &Frame, plan: &FramePlan, longest_bytes: usize, store: Store) -> Self {
        let room = row_bytes(frame, longest_bytes);
        let mut columns: Vec<ColumnPlan> = Vec::with_capacity(plan.steps.len());
        for group in &plan.groups {
            for at in group.steps.clone() {
                let (step, detail) = (&plan.steps[at], &plan.details[at]);
                let signal = &frame.signals[step.signal.index()];
                columns.push(ColumnPlan {
                    signal: step.signal,
                    step: at,
                    group: group.number,
                    needed_bytes: signal.needed_bytes(),
                    number: number_type(signal, store, detail.formula().is_some()),
                    cut: step.geometry().and_then(|geometry| Cut::new(geometry, (step, detail))),
                });
            }
        }
        columns.sort_by_key(|column| column.signal);
        Self {
            payload_bytes: room,
            to_the_end: runs_to_the_end(frame),
            usual_bytes: usual_bytes(frame),
            keeps_origins: asks_for_origin(frame),
            columns: columns.into(),
        }
    }
}

impl TablePlan {
    /// Room for the frame's rows.
    pub(crate) fn rows(&self) -> Rows {
        let make = if self.to_the_end { Rows::to_the_end } else { Rows::new };
        make(self.payload_bytes, self.usual_bytes)
    }
}

impl Cut {
    fn new(geometry: Geometry, (step, detail): (&Step, &Detail)) -> Option<Self> {
        let Geometry { window, shift, width, signed, motorola } = shared(geometry);
        let bits = WordBits { shift, width, signed };
        let kernel = Kernel::new(bits, detail.formula(), Some(step.plain()))?;
        Some(Self { window, motorola, bits, kernel })
    }

    /// The signal's bits in a word of its window.
    #[inline]
    pub(crate) fn bits(&self, word: u64) -> u64 {
        (word >> self.bits.shift) & (u64::MAX >> (64 - self.bits.width))
    }
}

/// The same place seen from a window that other signals are likely to have too. It lies in the row as the first one does: a row's room is
/// in whole words.
fn shared(geometry: Geometry) -> Geometry {
    let Geometry { window, shift, width, motorola, .. } = geometry;
    let highest_byte = u32::from(shift + width - 1) / 8;
    let first_byte = window + if motorola { 7 - highest_byte } else { u32::from(shift) / 8 };
    let later = window.next_multiple_of(WINDOW_BYTES);
    if later > first_byte {
        return geometry;
    }
    let moved_bits = 8 * (later - window) as u8;
    let shift = if motorola { shift + moved_bits } else { shift - moved_bits };
    Geometry { window: later, shift, ..geometry }
}

/// The type of a signal's numbers; `None` where it has none.
fn number_type(signal: &Signal, store: Store, has_formula: bool) -> Option<NumberType> {
    let encoding = signal.encoding()?;
    if (&signal.scaling, store) == (&Scaling::TroubleCode, Store::Values) {
        return None;
    }
    let is_raw = match (&signal.scaling, store) {
        (Scaling::Curve(_), _) | (Scaling::Affine(_), Store::Values) => false,
        (Scaling::Raw | Scaling::Affine(_) | Scaling::TroubleCode, Store::Raw) => true,
        (Scaling::Raw | Scaling::TroubleCode, Store::Values) => !has_formula && encoding.width() > EXACT_BITS,
    };
    Some(match encoding.integer_range() {
        Some((least, greatest)) if is_raw => narrowest(least, greatest),
        _ => NumberType::F64,
    })
}

/// The narrowest integer type that holds all numbers of an encoding; none has more of them below zero than in two's complement.
fn narrowest(least: i128, greatest: i128) -> NumberType {
    let bits = 128 - (greatest.leading_zeros() as u8) + u8::from(least < 0);
    match (least < 0, bits) {
        (false, 0..=8) => NumberType::U8,
        (false, 9..=16) => NumberType::U16,
        (false, 17..=32) => NumberType::U32,
        (false, _) => NumberType::U64,
        (true, 0..=8) => NumberType::I8,
        (true, 9..=16) => NumberType::I16,
        (true, 17..=32) => NumberType::I32,
        (true, _) => NumberType::I64,
    }
}

/// How many payload bytes a row must hold so that everything described can be read from it, in whole words.
fn row_bytes(frame: &Frame, longest_bytes: usize) -> usize {
    let to_end = |last: Option<u32>| last.map_or(longest_bytes, |last| last as usize + 1);
    let of_signal = |signal: &Signal| {
        let content = match &signal.content {
            Content::Number { .. } => signal.needed_bytes() as usize,
            Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => to_end(bytes.last),
        };
        let covered = match &signal.role {
            Role::Checksum(checksum) => checksum.over.iter().map(|span| to_end(span.last)).max().unwrap_or(0),
            Role::Protection(protection) => to_end(protection.over.last),
            Role::Value | Role::Counter(_) => 0,
        };
        content.max(covered)
    };
    // Whether an element is there is seen by the length.
    let elements = frame.pages.iter().filter_map(|page| page.element).map(|element| element.reaches as usize);
    frame.signals.iter().map(of_signal).chain(elements).max().unwrap_or(0).max(1).next_multiple_of(8)
}

/// Whether some bytes, or what a checksum covers, reach as far as the payload does.
fn runs_to_the_end(frame: &Frame) -> bool {
    frame.signals.iter().any(|signal| {
        let content = match &signal.content {
            Content::Number { .. } => false,
            Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => bytes.last.is_none(),
        };
        let covered = match &signal.role {
            Role::Checksum(checksum) => checksum.over.iter().any(|span| span.last.is_none()),
            Role::Protection(protection) => protection.over.last.is_none(),
            Role::Value | Role::Counter(_) => false,
        };
        content || covered
    })
}

/// How many bytes the frame has as a rule.
fn usual_bytes(frame: &Frame) -> u32 {
    let stated = frame.length.map(|length| length.max);
    stated.unwrap_or_else(|| frame.signals.iter().map(Signal::needed_bytes).max().unwrap_or(0).max(8))
}
