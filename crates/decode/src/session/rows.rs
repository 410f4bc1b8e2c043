//! Frame by frame: each is decoded as it comes, and its readings go to the sink.

use std::io;

use wirelore_model::SignalId;

use super::gate::{Passed, Target};
use super::sink::{Event, Sink};
use super::tally::Tally;
use crate::checks::{Checks, Sender};
use crate::reading::{Reading, Readings, Unmatched};
use crate::source::Source;

/// Hands frames to a sink, until it fails.
pub(super) struct RowTarget<'a, S> {
    pub(super) sink: &'a mut S,
    pub(super) checks: &'a mut Checks,
    pub(super) failure: Option<io::Error>,
}

impl<S: Sink> Target for RowTarget<'_, S> {
    #[inline]
    fn frame(&mut self, passed: &Passed<'_>, tally: &mut Tally) {
        if self.failure.is_some() {
            return;
        }
        let (&Passed { seen, network, .. }, frame) = (passed, passed.found.frame());
        let source = passed.found.source(seen.id);
        let event = Event {
            time_ns: seen.time_ns,
            first_time_ns: passed.first_time_ns,
            network,
            frame,
            source,
            channel: seen.channel,
            id: seen.id,
            payload: seen.payload,
        };
        let sink = &mut *self.sink;
        sink.begin(&event);
        let sender = Sender { channel: seen.channel, network, frame, source: source.and_then(Source::address) };
        self.checks.frame(passed.decoder, sender, seen.origin(), seen.payload, |signal, verdict| {
            tally.verdict(network, frame, verdict);
            sink.verdict(&event, signal, verdict);
        });
        let mut receiver = Receiver { sink, event: &event, tally };
        let outcome = passed.decoder.decode_row(frame, seen.payload, &mut receiver);
        tally.decoded(&outcome, 1);
        self.failure = self.sink.end(&event, &outcome).err();
    }
}

/// Passes the readings of one frame on.
struct Receiver<'a, S> {
    sink: &'a mut S,
    event: &'a Event<'a>,
    tally: &'a mut Tally,
}

impl<S: Sink> Readings for Receiver<'_, S> {
    #[inline(always)]
    fn reading(&mut self, signal: SignalId, reading: Reading<'_>) {
        self.tally.reading(self.event.frame, signal, &reading);
        self.sink.reading(self.event, signal, reading);
    }

    fn unmatched(&mut self, unmatched: Unmatched) {
        self.tally.unmatched(self.event.frame, unmatched);
    }
}
