//! The hot path: one frame at a time, one signal after another.
//!
//! A payload of at most eight bytes becomes a word once, in both orders of bytes, so that a step begins with a shift; whether a
//! signal is there at all is asked once per group, and once per signal only where the answer was no.

use wirelore_model::SignalId;

use crate::plan::{Detail, Form, FramePlan, Group, Loadable, Step, Visit};
use crate::reading::{FrameOutcome, Reading, Readings, Unmatched, Value};

/// Decodes one frame.
#[inline]
pub(crate) fn decode(
    plan: &FramePlan,
    words: &[Box<str>],
    payload: &[u8],
    readings: &mut impl Readings,
) -> FrameOutcome {
    let mut row = Row {
        plan,
        words,
        payload,
        loadable: Loadable::new(payload),
        readings,
        least_bytes: None,
        is_cut_off: false,
        outcome: FrameOutcome::default(),
    };
    plan.walk(payload, &mut row);
    let Row { least_bytes, is_cut_off, mut outcome, .. } = row;
    // A stated length has the last word: what a frame may leave out is not missing.
    if let Some(least) = least_bytes {
        outcome.too_short = payload.len() < least as usize;
    }
    // What another signal says is there is missing all the same.
    outcome.too_short |= is_cut_off;
    outcome
}

/// One frame under way.
struct Row<'a, R> {
    plan: &'a FramePlan,
    words: &'a [Box<str>],
    payload: &'a [u8],
    loadable: Loadable<'a>,
    readings: &'a mut R,
    /// The least length that the innermost page states, else the frame.
    least_bytes: Option<u32>,
    /// Some text or bytes are not all there.
    is_cut_off: bool,
    outcome: FrameOutcome,
}

impl<R: Readings> Visit for Row<'_, R> {
    #[inline(always)]
    fn group(&mut self, group: &Group) {
        let steps = self.plan.steps.get(group.steps.clone()).unwrap_or_default();
        let details = self.plan.details.get(group.steps.clone()).unwrap_or_default();
        self.outcome.readings += steps.len() as u32;
        self.least_bytes = group.least_bytes.or(self.least_bytes);
        if self.payload.len() < group.needed_bytes as usize {
            self.outcome.too_short = true;
            // Each detail itself looks whether the payload holds it.
            for (step, detail) in steps.iter().zip(details) {
                self.is_cut_off |= careful(step.signal, detail, (self.payload, self.words), self.readings);
            }
            return;
        }
        for (step, detail) in steps.iter().zip(details) {
            if !plain(step, &self.loadable, self.readings) {
                self.is_cut_off |= careful(step.signal, detail, (self.payload, self.words), self.readings);
            }
        }
    }

    fn unmatched(&mut self, told: Unmatched) {
        self.outcome.unmatched.get_or_insert(told);
        self.readings.unmatched(told);
    }
}

/// Hands over the reading of a signal that the payload holds, if it is a plain one.
///
/// The receiver is called once for each form of plain reading, each with all but the value known to the compiler; one call with a
/// reading from any of them goes through memory.
#[inline(always)]
fn plain(step: &Step, loadable: &Loadable<'_>, readings: &mut impl Readings) -> bool {
    let Some(bits) = step.bits(loadable) else { return false };
    let Some(count) = step.plain_count(bits) else { return false };
    let mut hand_over = |value| {
        readings.reading(step.signal, Reading { value, word: None, outside_range: false, bits: Some(bits) });
    };
    // The usual one is asked for first.
    if step.form == Form::Scaled {
        hand_over(Value::Number(step.scaled(count)));
    } else if step.form == Form::Integer {
        hand_over(Value::Integer(step.raw(count).into()));
    } else {
        return false;
    }
    true
}

/// Hands over any reading; whether some text or bytes are not all there.
#[inline(never)]
fn careful<'a>(
    signal: SignalId,
    detail: &'a Detail,
    (payload, words): (&'a [u8], &'a [Box<str>]),
    readings: &mut impl Readings,
) -> bool {
    let reading = detail.read(payload, words);
    let is_cut_off = matches!(reading.value, Value::TooShort) && detail.is_sized();
    readings.reading(signal, reading);
    is_cut_off
}
