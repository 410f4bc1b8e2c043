//! Recordings through the decoder: which channel is which network, what is decoded, and what becomes of every other frame.

mod channels;
mod counts;
mod sample;
mod sink;
mod tally;

use wirelore_bits::Ratio;
use wirelore_log::{Channel, Kind, Recording};
use wirelore_model::{FrameId, NetworkId, SignalId};

use channels::Channels;
use sample::{SAMPLE_FRAMES, Sample, Seen};
pub use sink::{Event, Sink};
pub use tally::{ChecksumCounts, CounterCounts, Tally, UnknownFrame};

use crate::bind::{BindMap, Binding, network_named};
use crate::checks::{Checks, Sender};
use crate::decoder::Decoder;
use crate::error::SessionError;
use crate::reading::{Reading, Readings, Unmatched};

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
}

/// One or several recordings, one after the other, run through a [`Decoder`].
///
/// As long as it is not known which network some channel is, frames are kept (copies of the first 20,000 at most) and then decoded in
/// their order.
///
/// ```
/// # use wirelore_decode::{Decoder, Event, Options, Reading, Session, Sink};
/// # use wirelore_model::*;
/// # use wirelore_log::Recording;
/// # let network = Network { label: Label::named("drive"), kind: NetworkKind::Can, rate: None, data_rate: None };
/// # let database = Database::new(Description { networks: vec![network], ..Description::default() })?;
/// struct Count(usize);
/// impl Sink for Count {
///     fn reading(&mut self, _event: &Event<'_>, _signal: SignalId, _reading: Reading<'_>) {
///         self.0 += 1;
///     }
/// }
///
/// let decoder = Decoder::new(&database)?;
/// let mut session = Session::new(&decoder, &Options::default())?;
/// let log = "time_s,id_hex,ext,data_hex\n0.250,18FEF100,1,FF 34 17 FC\n";
/// let mut recording = Recording::from_reader(Box::new(log.as_bytes()), "drive.csv", &wirelore_log::Options::default())?;
/// let mut count = Count(0);
/// session.run(&mut recording, &mut count)?;
/// assert_eq!((session.tally().read, session.tally().without_description, count.0), (1, 1, 0));
/// assert_eq!(session.bindings()[0].to_string(), "channel `0` is network `drive`: there is one channel and one network");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug)]
pub struct Session<'d> {
    decoder: &'d Decoder,
    channels: Channels,
    sample: Sample,
    frames_in_log: u64,
    /// By network: whether it is wanted.
    wanted: Box<[bool]>,
    from_ns: Option<i64>,
    until_ns: Option<i64>,
    first_time_ns: Option<i64>,
    checks: Checks,
    tally: Tally,
}

impl<'d> Session<'d> {
    /// A session that has not read anything yet.
    ///
    /// # Errors
    /// A network among the options that is not described or not of kind CAN, a description without such a network, or a span of time that
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
        Ok(Self {
            decoder,
            channels: Channels::new(decoder, &options.bind)?,
            sample: Sample::default(),
            frames_in_log: 0,
            wanted: wanted.into(),
            from_ns: options.from_ns,
            until_ns: options.until_ns,
            first_time_ns: None,
            checks: Checks::default(),
            tally: Tally::default(),
        })
    }

    /// Reads a recording to its end.
    ///
    /// # Errors
    /// As for [`Session::advance`].
    pub fn run(&mut self, recording: &mut Recording, sink: &mut impl Sink) -> Result<(), SessionError> {
        while self.advance(recording, sink, usize::MAX)? {}
        Ok(())
    }

    /// Reads up to `most_frames` frames of a recording; false at its end. Then the next recording may be given.
    ///
    /// # Errors
    /// The recording cannot be read on, a channel's network cannot be told, the user's binding names no channel of the log, or the sink
    /// fails.
    pub fn advance(
        &mut self,
        recording: &mut Recording,
        sink: &mut impl Sink,
        most_frames: usize,
    ) -> Result<bool, SessionError> {
        for _ in 0..most_frames {
            let Some(frame) = recording.next()? else {
                self.end_log(recording, sink)?;
                return Ok(false);
            };
            let seen = Seen::from(&frame);
            match self.channels.decided(seen.channel) {
                Some(network) if self.channels.all_decided() => self.frame(network, &seen, sink)?,
                _ => {
                    self.sample.push(&seen);
                    let Seen { channel, id, extended, kind, .. } = seen;
                    self.hold(channel, (kind != Kind::Error).then_some((id, extended)), recording, sink)?;
                }
            }
            self.frames_in_log += 1;
            if self.frames_in_log == SAMPLE_FRAMES as u64 {
                self.channels.check_told(recording)?;
            }
        }
        Ok(true)
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
        self.first_time_ns
    }

    /// A frame was kept because it is not known yet which network some channel is.
    fn hold(
        &mut self,
        channel: Channel,
        identifier: Option<(u32, bool)>,
        recording: &Recording,
        sink: &mut impl Sink,
    ) -> Result<(), SessionError> {
        if self.channels.is_new(channel) {
            self.channels.meet(channel, self.decoder, recording)?;
        }
        if let Some((id, extended)) = identifier {
            self.channels.weigh(channel, id, extended);
        }
        if self.channels.all_decided() || self.sample.is_full() { self.decide(recording, sink) } else { Ok(()) }
    }

    /// Decides about every channel that is still open, then decodes what was kept.
    fn decide(&mut self, recording: &Recording, sink: &mut impl Sink) -> Result<(), SessionError> {
        self.channels.decide(self.decoder, recording)?;
        let sample = std::mem::take(&mut self.sample);
        for seen in sample.frames() {
            let network = self.channels.decided(seen.channel).flatten();
            self.frame(network, &seen, sink)?;
        }
        Ok(())
    }

    fn end_log(&mut self, recording: &Recording, sink: &mut impl Sink) -> Result<(), SessionError> {
        self.decide(recording, sink)?;
        self.channels.check_told(recording)?;
        self.channels.end_log();
        // What a sender counted in another log says nothing about this one.
        self.checks = Checks::default();
        self.frames_in_log = 0;
        let report = recording.report();
        self.tally.end_log(report.xl, report.damaged);
        Ok(())
    }

    /// Puts one frame into its part of the tally, and decodes it where it is to be decoded.
    #[inline]
    fn frame(&mut self, network: Option<NetworkId>, seen: &Seen<'_>, sink: &mut impl Sink) -> Result<(), SessionError> {
        self.tally.read += 1;
        if self.first_time_ns.is_none() {
            self.first_time_ns = seen.time_ns;
        }
        if !self.is_in_time(seen.time_ns) {
            self.tally.left_out_by_time += 1;
            return Ok(());
        }
        match seen.kind {
            Kind::Data => {}
            Kind::Remote => {
                self.tally.remote += 1;
                return Ok(());
            }
            Kind::Error => {
                self.tally.error += 1;
                return Ok(());
            }
        }
        let Some(network) = network else {
            self.tally.on_unbound_channel += 1;
            return Ok(());
        };
        if !self.wanted.get(network.index()).copied().unwrap_or(false) {
            self.tally.left_out_by_network += 1;
            return Ok(());
        }
        let Some(found) = self.decoder.recognise(network, seen.id, seen.extended) else {
            self.tally.unknown(network, seen.id, seen.extended);
            return Ok(());
        };
        if !self.decoder.wants(found.frame) {
            self.tally.not_selected += 1;
            return Ok(());
        }
        let source = found.is_group.then_some(seen.id as u8);
        self.decode(network, found.frame, source, seen, sink)
    }

    #[inline]
    fn decode(
        &mut self,
        network: NetworkId,
        frame: FrameId,
        source: Option<u8>,
        seen: &Seen<'_>,
        sink: &mut impl Sink,
    ) -> Result<(), SessionError> {
        let event = Event {
            time_ns: seen.time_ns,
            first_time_ns: self.first_time_ns,
            network,
            frame,
            source,
            channel: seen.channel,
            id: seen.id,
            extended: seen.extended,
            payload: seen.payload,
            place: seen.place,
        };
        sink.begin(&event);
        let tally = &mut self.tally;
        let sender = Sender { channel: seen.channel, network, frame, source };
        self.checks.frame(self.decoder, sender, seen.payload, |signal, verdict| {
            tally.verdict(network, frame, verdict);
            sink.verdict(&event, signal, verdict);
        });
        let mut receiver = Receiver { sink, event: &event, tally: &mut self.tally };
        let outcome = self.decoder.decode_into(frame, seen.payload, &mut receiver);
        self.tally.decoded(&outcome);
        sink.end(&event, &outcome).map_err(SessionError::Sink)
    }

    /// Whether a time lies in the wanted span; a frame without one does only where every time is wanted.
    #[inline]
    fn is_in_time(&self, time_ns: Option<i64>) -> bool {
        if self.from_ns.is_none() && self.until_ns.is_none() {
            return true;
        }
        let (Some(time), Some(first)) = (time_ns, self.first_time_ns) else {
            return false;
        };
        let after = time.saturating_sub(first);
        self.from_ns.is_none_or(|from| from <= after) && self.until_ns.is_none_or(|until| after <= until)
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

/// A time in seconds, exactly.
fn in_seconds(time_ns: i64) -> String {
    Ratio::new(time_ns.into(), 1_000_000_000).unwrap_or(Ratio::ZERO).to_string()
}

#[cfg(test)]
mod tests;
