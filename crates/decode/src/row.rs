//! The hot path: one frame at a time, one signal after another.
//!
//! A payload of fewer than eight bytes is copied once into eight, so that no step has to look whether its load is allowed; whether a
//! signal is there at all is asked once per group, and once per signal only where the answer was no.

use wirelore_model::SignalId;

use crate::plan::{Detail, Form, FramePlan, Group, Step, Visit};
use crate::reading::{FrameOutcome, Reading, Readings, Unmatched, Value};

/// Decodes one frame.
#[inline]
pub(crate) fn decode(
    plan: &FramePlan,
    words: &[Box<str>],
    payload: &[u8],
    readings: &mut impl Readings,
) -> FrameOutcome {
    let mut padded = [0; 8];
    let loadable = match padded.get_mut(..payload.len()) {
        Some(start) => {
            start.copy_from_slice(payload);
            &padded[..]
        }
        None => payload,
    };
    let mut row = Row {
        plan,
        words,
        payload,
        loadable,
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
    /// The payload, or its bytes and zeros where it has fewer than eight.
    loadable: &'a [u8],
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
            self.short_group(steps, details);
            return;
        }
        for (step, detail) in steps.iter().zip(details) {
            self.signal(step, detail);
        }
    }

    fn unmatched(&mut self, told: Unmatched) {
        self.outcome.unmatched.get_or_insert(told);
        self.readings.unmatched(told);
    }
}

impl<'a, R: Readings> Row<'a, R> {
    /// Hands over the reading of a signal that the payload holds.
    ///
    /// The receiver is called once for each form of plain reading, each with all but the value known to the compiler; one call with a
    /// reading from any of them goes through memory.
    #[inline(always)]
    fn signal(&mut self, step: &Step, detail: &'a Detail) {
        let plain = step.bits(self.loadable).filter(|found| step.is_plain(found.raw));
        let hand_over = |readings: &mut R, value, bits| {
            readings.reading(step.signal, Reading { value, word: None, outside_range: false, bits: Some(bits) });
        };
        match (step.form, plain) {
            (Form::Scaled, Some(found)) => hand_over(self.readings, Value::Number(step.scaled(found.raw)), found.bits),
            (Form::Integer, Some(found)) => hand_over(self.readings, Value::Integer(found.raw.into()), found.bits),
            _ => self.careful(step.signal, detail),
        }
    }

    /// Everything but plain readings.
    #[inline(never)]
    fn careful(&mut self, signal: SignalId, detail: &'a Detail) {
        let reading = detail.read(self.payload, self.words);
        self.is_cut_off |= matches!(reading.value, Value::TooShort) && detail.is_sized();
        self.readings.reading(signal, reading);
    }

    /// A group of which the payload may hold only a part.
    #[cold]
    fn short_group(&mut self, steps: &[Step], details: &'a [Detail]) {
        for (step, detail) in steps.iter().zip(details) {
            // The detail itself looks whether the payload holds it.
            self.careful(step.signal, detail);
        }
    }
}
