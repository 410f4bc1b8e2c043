//! Recordings through the decoder: which channel is which network, what is decoded, and what becomes of every other frame.

mod carry;
mod channels;
mod counts;
mod gate;
mod inside;
mod lanes;
mod lin;
mod rows;
mod sample;
mod sink;
mod tables;
mod tally;
mod whole_logs;

use std::num::NonZero;
use std::thread;

use wirelore_bits::Ratio;
use wirelore_log::{Channel, Frame, Kind, Receive, Recording};
use wirelore_model::SeenId;

use carry::Carriers;
pub(crate) use carry::{Carries, Ports, SerialForm};
use channels::Channels;
use gate::{Gate, Target};
pub use lin::LinTally;
use rows::RowTarget;
pub use sample::seen_id;
use sample::{SAMPLE_FRAMES, Sample, Seen};
pub use sink::{Event, Sink};
use tables::ForTables;
pub use tally::{ChecksumCounts, CounterCounts, MessageFault, ProtectionCounts, Tally, UnknownFrame};
pub use whole_logs::WholeLogs;

use crate::bind::{BindMap, Binding, network_named};
use crate::checks::Checks;
use crate::decoder::Decoder;
use crate::error::SessionError;

/// How much of a log is read at a time: what is gathered from it stays in the second nearest cache.
const STRETCH_BYTES: usize = 256 * 1024;

/// How a session is to be run.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Options {
    /// Which channel is which network, where the user tells it.
    pub bind: BindMap,
    /// The names of the networks that are wanted; `None`: all.
    pub only: Option<Vec<String>>,
    /// Frames earlier than this after the session's first frame are left out, in nanoseconds.
    pub from_ns: Option<i64>,
    /// Frames later than this after the session's first frame are left out, in nanoseconds.
    pub until_ns: Option<i64>,
    /// How many threads read and decode into tables; `None`: as many as the machine runs at a time. The result does not depend on it.
    pub threads: Option<NonZero<usize>>,
}

/// One or several recordings, one after the other, run through a [`Decoder`].
///
/// As long as it is not known which network some channel is, frames are kept (copies of the first 20,000 at most) and then decoded in
/// their order.
///
/// ```
/// # use wirelore_decode::{Decoder, Event, Options, Reading, Session};
/// # use wirelore_model::*;
/// # use wirelore_log::Recording;
/// # let network = Network { label: Label::named("drive"), kind: NetworkKind::Can, rate: None, data_rate: None, telegram: None, flexray: None, terminators: Vec::new(), star: None };
/// # let database = Database::new(Description { networks: vec![network], ..Description::default() })?;
/// let decoder = Decoder::new(&database)?;
/// let mut session = Session::new(&decoder, &Options::default())?;
/// let log = "time_s,id_hex,ext,data_hex\n0.250,18FEF100,1,FF 34 17 FC\n";
/// let mut recording = Recording::from_reader(Box::new(log.as_bytes()), "drive.csv", &wirelore_log::Options::default())?;
/// let mut readings = 0;
/// session.run(&mut recording, &mut |_: &Event<'_>, _: SignalId, _: Reading<'_>| readings += 1)?;
/// assert_eq!((session.tally().read, session.tally().without_description, readings), (1, 1, 0));
/// assert_eq!(session.bindings()[0].to_string(), "channel `0` is network `drive`: there is one channel and one network");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug)]
pub struct Session<'d> {
    gate: Gate<'d>,
    channels: Channels,
    sample: Sample,
    frames_in_log: u64,
    has_checked_told: bool,
    checks: Checks,
    carriers: Carriers,
    tally: Tally,
    threads: usize,
    /// What is kept for tables; empty as long as there are none.
    for_tables: ForTables,
}

impl<'d> Session<'d> {
    /// A session that has not read anything yet.
    ///
    /// # Errors
    /// A network among the options that is not described, a description without such a network, or a span of time that
    /// ends before it begins.
    pub fn new(decoder: &'d Decoder, options: &Options) -> Result<Self, SessionError> {
        if let (Some(from), Some(until)) = (options.from_ns, options.until_ns)
            && until < from
        {
            return Err(SessionError::TimesTurned { from: in_seconds(from), until: in_seconds(until) });
        }
        let mut wanted = vec![options.only.is_none(); decoder.networks().len()];
        for name in options.only.iter().flatten() {
            wanted[network_named(decoder, name)?.index()] = true;
        }
        let gate = Gate {
            decoder,
            wanted: wanted.into(),
            from_ns: options.from_ns,
            until_ns: options.until_ns,
            first_time_ns: None,
        };
        Ok(Self {
            gate,
            channels: Channels::new(decoder, &options.bind)?,
            sample: Sample::default(),
            frames_in_log: 0,
            has_checked_told: false,
            checks: Checks::default(),
            carriers: Carriers::default(),
            tally: Tally::default(),
            threads: options.threads.map_or_else(available_threads, NonZero::get),
            for_tables: ForTables::default(),
        })
    }

    /// Reads a recording to its end.
    ///
    /// # Errors
    /// As for [`Session::advance`].
    pub fn run(&mut self, recording: &mut Recording, sink: &mut impl Sink) -> Result<(), SessionError> {
        while self.advance(recording, sink)? {}
        Ok(())
    }

    /// Reads a stretch of a recording, about 256 KiB; false at its end. Then the next recording may be given.
    ///
    /// # Errors
    /// The recording cannot be read on, a channel's network cannot be told, the user's binding names no channel of the log, or the sink
    /// fails.
    pub fn advance(&mut self, recording: &mut Recording, sink: &mut impl Sink) -> Result<bool, SessionError> {
        let mut checks = std::mem::take(&mut self.checks);
        let mut target = RowTarget { sink, checks: &mut checks, failure: None };
        let more = self.stretch(recording, &mut target)?;
        if let Some(failure) = target.failure {
            return Err(SessionError::Sink(failure));
        }
        if more {
            self.checks = checks;
        } else {
            // What a sender counted in one log says nothing about the next one.
            self.end_log(recording)?;
        }
        Ok(more)
    }

    /// What became of the frames so far.
    #[must_use]
    pub fn tally(&self) -> &Tally {
        &self.tally
    }

    /// What was decided about the channels so far, in the order of the decisions.
    #[must_use]
    pub fn bindings(&self) -> &[Binding] {
        self.channels.bindings()
    }

    /// Channels that the user's binding names and that have not turned up in any log.
    pub fn channels_never_seen(&self) -> impl Iterator<Item = &str> {
        self.channels.never_seen()
    }

    /// The time of the first frame that has one, in nanoseconds as its log counts; [`Options::from_ns`] and its like count from it.
    #[must_use]
    pub fn first_time_ns(&self) -> Option<i64> {
        self.gate.first_time_ns
    }

    /// Leads the frames of a stretch through the gate; false at the end of the log.
    ///
    /// Frames of channels that are not decided yet, and all behind them, wait until the recording can be asked for the channels' names.
    fn stretch(&mut self, recording: &mut Recording, target: &mut impl Target) -> Result<bool, SessionError> {
        let is_settled = self.is_settled();
        let Self { gate, channels, carriers, tally, .. } = self;
        let mut receiver =
            Receiver { gate, channels, carriers, tally, target, is_settled, waiting: Sample::default(), frames: 0 };
        let more = recording.stretch(STRETCH_BYTES, &mut receiver)?;
        let Receiver { waiting, frames, .. } = receiver;
        self.settle(recording, &waiting, frames, more, target)?;
        Ok(more)
    }

    /// Whether nothing is open about any channel so far.
    fn is_settled(&self) -> bool {
        self.sample.is_empty() && self.channels.all_decided()
    }

    /// After a stretch of so many frames: those that waited for the channels' names, and, at the end of the log, for a decision.
    fn settle(
        &mut self,
        recording: &Recording,
        waiting: &Sample,
        frames: u64,
        more: bool,
        target: &mut impl Target,
    ) -> Result<(), SessionError> {
        self.frames_in_log += frames;
        for seen in waiting.frames() {
            self.take_undecided(&seen, recording, target)?;
        }
        if self.frames_in_log >= SAMPLE_FRAMES as u64 && !self.has_checked_told {
            self.has_checked_told = true;
            self.channels.check_told(recording)?;
        }
        if more {
            return Ok(());
        }
        self.decide(recording, target)?;
        let Self { gate, carriers, tally, .. } = self;
        gate.finish(carriers, tally, target);
        Ok(())
    }

    /// A frame for which it is not sure that every channel so far is decided.
    fn take_undecided(
        &mut self,
        seen: &Seen<'_>,
        recording: &Recording,
        target: &mut impl Target,
    ) -> Result<(), SessionError> {
        match self.channels.decided(seen.channel) {
            Some(network) if self.channels.all_decided() => {
                self.gate.note_time(seen.time_ns);
                self.gate.frame(network, seen, &mut self.carriers, &mut self.tally, target);
                Ok(())
            }
            _ => {
                self.sample.push(seen);
                let &Seen { channel, id, kind, .. } = seen;
                self.hold(channel, (!matches!(kind, Kind::Error | Kind::Signal)).then_some(id), recording, target)
            }
        }
    }

    /// A frame was kept because it is not known yet which network some channel is.
    fn hold(
        &mut self,
        channel: Channel,
        identifier: Option<SeenId>,
        recording: &Recording,
        target: &mut impl Target,
    ) -> Result<(), SessionError> {
        if self.channels.is_new(channel) {
            self.channels.meet(channel, self.gate.decoder, recording)?;
        }
        if let Some(id) = identifier {
            self.channels.weigh(channel, id);
        }
        if self.channels.all_decided() || self.sample.is_full() { self.decide(recording, target) } else { Ok(()) }
    }

    /// Decides about every channel that is still open, then decodes what was kept.
    fn decide(&mut self, recording: &Recording, target: &mut impl Target) -> Result<(), SessionError> {
        let sample = std::mem::take(&mut self.sample);
        self.channels.decide(self.gate.decoder, recording, &sample)?;
        for seen in sample.frames() {
            let network = self.channels.decided(seen.channel).flatten();
            self.gate.note_time(seen.time_ns);
            self.gate.frame(network, &seen, &mut self.carriers, &mut self.tally, target);
        }
        Ok(())
    }

    /// Closes a log of which every frame has been counted.
    fn end_log(&mut self, recording: &Recording) -> Result<(), SessionError> {
        self.channels.check_told(recording)?;
        self.channels.end_log();
        self.frames_in_log = 0;
        self.has_checked_told = false;
        self.tally.end_log(recording.report().damaged);
        Ok(())
    }
}

/// Takes the frames of one stretch.
struct Receiver<'a, 'd, T> {
    gate: &'a mut Gate<'d>,
    channels: &'a Channels,
    carriers: &'a mut Carriers,
    tally: &'a mut Tally,
    target: &'a mut T,
    /// Nothing was open about any channel when the stretch began.
    is_settled: bool,
    /// The first frame of a channel that is not decided, and all behind it.
    waiting: Sample,
    frames: u64,
}

impl<T: Target> Receive for Receiver<'_, '_, T> {
    #[inline(always)]
    fn frame(&mut self, frame: &Frame<'_>) {
        let seen = Seen::from(frame);
        self.frames += 1;
        match self.channels.decided(seen.channel) {
            Some(network) if self.is_settled => {
                self.gate.note_time(seen.time_ns);
                self.gate.frame(network, &seen, self.carriers, self.tally, self.target);
            }
            _ => {
                self.is_settled = false;
                self.waiting.push(&seen);
            }
        }
    }
}

fn available_threads() -> usize {
    thread::available_parallelism().map_or(1, NonZero::get)
}

/// A time in seconds, exactly.
fn in_seconds(time_ns: i64) -> String {
    Ratio::new(time_ns.into(), 1_000_000_000).unwrap_or(Ratio::ZERO).to_string()
}

#[cfg(test)]
mod tests;
