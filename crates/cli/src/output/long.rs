//! One line a value.

use std::io::{self, Write};

use wirelore_decode::{Event, FrameOutcome, Reading, Sink, Verdict};
use wirelore_model::{FrameId, SignalId};

use super::CHUNK_BYTES;
use super::lines::Lines;
use super::snippet::Snippet;
use crate::moment::Clock;

/// How a line looks.
pub(crate) trait Form {
    /// Appends what stands above the first line.
    fn header(&self, to: &mut Vec<u8>);
    /// Appends what all values of one frame share: time, network, frame and who sent it.
    fn shared(&self, clock: Clock, event: &Event<'_>, to: &mut Vec<u8>);
    /// What stands before and behind a number without a state; `None` where such a line is made like every other.
    fn ready(&self, frame: FrameId, signal: SignalId) -> Option<&[Snippet; 2]>;
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
    lines: Lines,
    shared: Vec<u8>,
    /// The same, where it is short enough.
    shared_ready: Option<Snippet>,
    verdicts: Vec<(SignalId, Verdict)>,
    line: Vec<u8>,
}

impl<'w, W: Write, F: Form> LongSink<'w, W, F> {
    pub(crate) fn new(form: F, clock: Clock, to: &'w mut W) -> Self {
        let (mut lines, mut header) = (Lines::new(), Vec::new());
        form.header(&mut header);
        lines.push(&header);
        Self { form, clock, to, lines, shared: Vec::new(), shared_ready: None, verdicts: Vec::new(), line: Vec::new() }
    }

    /// Writes what is still held back.
    ///
    /// # Errors
    /// What the receiver says.
    pub(crate) fn finish(&mut self) -> io::Result<()> {
        self.lines.pass_on(self.to, 0)
    }

    /// Most values are numbers with nothing to say of their state: such a line is put together from ready pieces. False where it is not
    /// such a one.
    #[inline(always)]
    fn plain_line(&mut self, frame: FrameId, signal: SignalId, reading: &Reading<'_>) -> bool {
        let (Some(shared), Some([before, behind])) = (&self.shared_ready, self.form.ready(frame, signal)) else {
            return false;
        };
        self.lines.push_number([shared, before, behind], &reading.value)
    }

    #[inline(never)]
    fn any_line(&mut self, frame: FrameId, signal: SignalId, reading: &Reading<'_>, verdict: Option<Verdict>) {
        self.line.clear();
        let line = Line { shared: &self.shared, frame, signal, reading, verdict };
        self.form.line(&line, &mut self.line);
        self.lines.push(&self.line);
    }
}

impl<W: Write, F: Form> Sink for LongSink<'_, W, F> {
    fn begin(&mut self, event: &Event<'_>) {
        self.shared.clear();
        self.verdicts.clear();
        self.form.shared(self.clock, event, &mut self.shared);
        self.shared_ready = Snippet::new(&self.shared);
    }

    fn verdict(&mut self, _event: &Event<'_>, signal: SignalId, verdict: Verdict) {
        self.verdicts.push((signal, verdict));
    }

    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let verdict = self.verdicts.iter().find(|(checked, _)| *checked == signal).map(|(_, verdict)| *verdict);
        let has_state = verdict.is_some() || reading.word.is_some() || reading.outside_range;
        if has_state || !self.plain_line(event.frame, signal, &reading) {
            self.any_line(event.frame, signal, &reading, verdict);
        }
    }

    fn end(&mut self, _event: &Event<'_>, _outcome: &FrameOutcome) -> io::Result<()> {
        self.lines.pass_on(self.to, CHUNK_BYTES)
    }
}
