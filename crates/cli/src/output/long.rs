//! One line a value.

use std::io::{self, Write};

use wirelore_decode::{Decoder, Event, FrameOutcome, Reading, Sink, Verdict};
use wirelore_model::{Database, FrameId, Identifier, SignalId};

use super::{CHUNK_BYTES, pass_on};
use crate::moment::Clock;

/// How a line looks.
pub(crate) trait Form {
    /// Appends what stands above the first line.
    fn header(&self, to: &mut Vec<u8>);
    /// Appends what all values of one frame share: time, network, frame and who sent it.
    fn shared(&self, clock: Clock, event: &Event<'_>, to: &mut Vec<u8>);
    /// Appends one line.
    fn line(&mut self, line: &Line<'_>, to: &mut Vec<u8>);
}

/// What one line says.
pub(crate) struct Line<'a> {
    /// What [`Form::shared`] wrote for the frame.
    pub(crate) shared: &'a [u8],
    pub(crate) frame: FrameId,
    pub(crate) signal: SignalId,
    pub(crate) reading: &'a Reading<'a>,
    pub(crate) verdict: Option<Verdict>,
}

/// Writes one line for each value.
pub(crate) struct LongSink<'w, W, F> {
    form: F,
    clock: Clock,
    to: &'w mut W,
    lines: Vec<u8>,
    shared: Vec<u8>,
    verdicts: Vec<(SignalId, Verdict)>,
}

impl<'w, W: Write, F: Form> LongSink<'w, W, F> {
    pub(crate) fn new(form: F, clock: Clock, to: &'w mut W) -> Self {
        let mut lines = Vec::with_capacity(2 * CHUNK_BYTES);
        form.header(&mut lines);
        Self { form, clock, to, lines, shared: Vec::new(), verdicts: Vec::new() }
    }

    /// Writes what is still held back.
    ///
    /// # Errors
    /// What the receiver says.
    pub(crate) fn finish(&mut self) -> io::Result<()> {
        pass_on(&mut self.lines, self.to, 0)
    }
}

impl<W: Write, F: Form> Sink for LongSink<'_, W, F> {
    fn begin(&mut self, event: &Event<'_>) {
        self.shared.clear();
        self.verdicts.clear();
        self.form.shared(self.clock, event, &mut self.shared);
    }

    fn verdict(&mut self, _event: &Event<'_>, signal: SignalId, verdict: Verdict) {
        self.verdicts.push((signal, verdict));
    }

    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let verdict = self.verdicts.iter().find(|(checked, _)| *checked == signal).map(|(_, verdict)| *verdict);
        let line = Line { shared: &self.shared, frame: event.frame, signal, reading: &reading, verdict };
        self.form.line(&line, &mut self.lines);
    }

    fn end(&mut self, _event: &Event<'_>, _outcome: &FrameOutcome) -> io::Result<()> {
        pass_on(&mut self.lines, self.to, CHUNK_BYTES)
    }
}

/// The parts of a line that never change for one signal, made once.
pub(crate) struct SignalTexts {
    texts: Vec<Vec<[Box<[u8]>; 2]>>,
}

impl SignalTexts {
    /// Calls `make` with the name and the shown unit of every signal.
    pub(crate) fn new(database: &Database, decoder: &Decoder, make: impl Fn(&str, &str) -> [String; 2]) -> Self {
        let texts = database.frames.iter().zip((0..).map(FrameId)).map(|(frame, frame_id)| {
            let signals = frame.signals.iter().zip((0..).map(SignalId));
            let texts = signals.map(|(signal, id)| {
                let unit = decoder.unit(frame_id, id).map_or("", |unit| unit.as_str());
                make(&signal.label.name, unit).map(|text| text.into_bytes().into_boxed_slice())
            });
            texts.collect()
        });
        Self { texts: texts.collect() }
    }

    /// What stands before the value of a signal, and what stands behind it.
    pub(crate) fn around(&self, frame: FrameId, signal: SignalId) -> (&[u8], &[u8]) {
        let [before, behind] = &self.texts[frame.index()][signal.index()];
        (before, behind)
    }
}

/// Whether some frames are recognised as parameter groups, so that it matters who sent them.
pub(crate) fn has_sources(database: &Database) -> bool {
    let mut appearances = database.frames.iter().flat_map(|frame| &frame.seen_on);
    appearances.any(|appearance| matches!(appearance.identifier, Identifier::Pgn { .. }))
}

/// The names of the units behind each source address: `0x0B`, or the control unit that has it on that network.
pub(crate) struct SourceNames {
    by_network: Vec<Vec<Box<str>>>,
}

impl SourceNames {
    pub(crate) fn new(database: &Database) -> Self {
        let mut by_network = vec![Vec::new(); database.networks.len()];
        for (network, names) in by_network.iter_mut().enumerate() {
            names.extend((0..=255_u8).map(|address| {
                let holds = |ecu: &&wirelore_model::Ecu| {
                    ecu.on.iter().any(|place| place.network.index() == network && place.address == Some(address))
                };
                match database.ecus.iter().find(holds) {
                    Some(ecu) => ecu.label.name.as_str().into(),
                    None => format!("0x{address:02X}").into_boxed_str(),
                }
            }));
        }
        Self { by_network }
    }

    /// The width of the longest name.
    pub(crate) fn width(&self) -> usize {
        let names = self.by_network.iter().flatten();
        names.map(|name| unicode_width::UnicodeWidthStr::width(&**name)).max().unwrap_or(0)
    }

    /// The name of a frame's source; empty where the frame tells none.
    pub(crate) fn of(&self, event: &Event<'_>) -> &str {
        event.source.map_or("", |address| &self.by_network[event.network.index()][usize::from(address)])
    }
}
