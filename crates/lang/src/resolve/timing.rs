//! When frames and pages are sent.

use wirelore_model::{Nanoseconds, Period, Sending};

use crate::syntax::tree::{self, PeriodSyntax, Time, Timing};
use crate::{Diagnostic, FileId, Rule, Span, Spanned};

use super::messages::{Messages, at};

/// What has been said so far about the sending of a frame.
#[derive(Debug, Default)]
pub(crate) struct Said<'t> {
    pub(crate) sending: Sending,
    /// A faster period and its condition, which is looked up once all signals are known.
    pub(crate) faster: Option<(Period, &'t tree::Test<'t>)>,
    every: Option<Span>,
    apart: Option<Span>,
    jitter: Option<Span>,
    timeout: Option<Span>,
}

impl<'t> Said<'t> {
    pub(crate) fn add(&mut self, timing: &'t Spanned<Timing<'t>>, file: FileId, messages: &mut Messages) {
        let slot = match &timing.value {
            Timing::Every(_) | Timing::EveryWhile { .. } => &mut self.every,
            Timing::ApartAtLeast(_) | Timing::Apart(..) => &mut self.apart,
            Timing::Jitter(_) => &mut self.jitter,
            Timing::Timeout(_) => &mut self.timeout,
            Timing::OnChange => return self.sending.on_change = true,
            Timing::OnRequest => return self.sending.on_request = true,
        };
        if let Some(first) = slot.replace(timing.span) {
            messages.push(
                Diagnostic::new(Rule::RepeatedClause, at(file, timing.span), "this is said twice about the same frame")
                    .here("the second time")
                    .remark(at(file, first), "the first time")
                    .help("a frame has one timing, whoever sends it; keep one of the two"),
            );
            return;
        }
        self.take(&timing.value, file, messages);
    }

    fn take(&mut self, timing: &'t Timing<'t>, file: FileId, messages: &mut Messages) {
        let sending = &mut self.sending;
        match timing {
            Timing::Every(written) => sending.every = period(written, file, messages),
            Timing::EveryWhile { fast, test, slow } => {
                sending.every = period(slow, file, messages);
                self.faster = period(fast, file, messages).map(|fast| (fast, test));
            }
            Timing::ApartAtLeast(time) => sending.apart_at_least = Some(Nanoseconds(time.value)),
            Timing::Apart(least, most) => {
                if in_order(least, most, "time between two frames", file, messages) {
                    sending.apart_at_least = Some(Nanoseconds(least.value));
                    sending.apart_at_most = Some(Nanoseconds(most.value));
                }
            }
            Timing::Jitter(time) => sending.jitter = Some(Nanoseconds(time.value)),
            Timing::Timeout(time) => sending.timeout = not_zero(time, "timeout", file, messages).map(Nanoseconds),
            Timing::OnChange | Timing::OnRequest => {}
        }
    }

    /// What only shows once everything is said.
    pub(crate) fn finish(&mut self, file: FileId, messages: &mut Messages) {
        let (Some(every), Some(timeout)) = (self.sending.every, self.sending.timeout) else { return };
        if timeout >= every.longest {
            return;
        }
        let (Some(every_at), Some(timeout_at)) = (self.every, self.timeout) else { return };
        let text =
            format!("the timeout of {} is shorter than the period of {}", shown(timeout.0), shown(every.longest.0));
        messages.push(
            Diagnostic::new(Rule::TimesUpsideDown, at(file, timeout_at), text)
                .here("would run out between any two frames")
                .remark(at(file, every_at), "the period")
                .help("a timeout is commonly a few periods long"),
        );
    }
}

/// Reads a period; says so where it is none.
pub(crate) fn period(written: &PeriodSyntax, file: FileId, messages: &mut Messages) -> Option<Period> {
    let shortest = not_zero(&written.shortest, "period", file, messages)?;
    if !in_order(&written.shortest, &written.longest, "period", file, messages) {
        return None;
    }
    Some(Period { shortest: Nanoseconds(shortest), longest: Nanoseconds(written.longest.value) })
}

/// A time that is not 0; says so where it is.
pub(crate) fn not_zero(time: &Time, what: &str, file: FileId, messages: &mut Messages) -> Option<u64> {
    if time.value > 0 {
        return Some(time.value);
    }
    let message =
        Diagnostic::new(Rule::EveryZero, at(file, time.span), format!("a {what} of 0 makes no sense")).here("0");
    messages.push(message.help("state the time, or leave it out where it is not known"));
    None
}

fn in_order(low: &Time, high: &Time, what: &str, file: FileId, messages: &mut Messages) -> bool {
    if low.value <= high.value {
        return true;
    }
    let text = format!("this {what} goes from {} down to {}", shown(low.value), shown(high.value));
    messages.push(
        Diagnostic::new(Rule::TimesUpsideDown, at(file, low.span.to(high.span)), text)
            .here("the shorter time comes first"),
    );
    false
}

/// A time in its largest whole unit.
pub(crate) fn shown(time_ns: u64) -> String {
    const UNITS: [(u64, &str); 3] = [(1_000_000_000, "s"), (1_000_000, "ms"), (1_000, "us")];
    match UNITS.into_iter().find(|(size, _)| time_ns > 0 && time_ns.is_multiple_of(*size)) {
        Some((size, unit)) => format!("{} {unit}", time_ns / size),
        None => format!("{time_ns} ns"),
    }
}
