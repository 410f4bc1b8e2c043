//! `wirelore decode`: logged frames to engineering values.

mod choice;
mod tables;

use std::io::IsTerminal;
use std::path::Path;
use std::time::Instant;

use wirelore_decode::{Decoder, Options, Selection, Session, SessionError, Setup, Sink, Units};
use wirelore_log::Recording;
use wirelore_model::{Database, FrameId, NetworkId, SignalId};
use wirelore_tables::{Grid, GridColumns};

use crate::args::{DecodeArguments, TimeBase};
use crate::atomic::{Destination, refuse_overwriting};
use crate::description::load;
use crate::failure::{Failure, Outcome};
use crate::logs;
use crate::moment::{Clock, parse_time_ns};
use crate::output::LineForm;
use crate::output::csv::{Csv, Fields};
use crate::output::grid::{self, GridLines};
use crate::output::jsonl::Jsonl;
use crate::output::long::{Form, LongSink};
use crate::output::table::Table;
use crate::progress::Progress;
use crate::summary;
use crate::tell::{tell, tell_line};
use choice::Choice;

/// No recording of a vehicle network is older than 1980: a smaller time is no date.
const YEAR_1980_NS: i64 = 315_532_800_000_000_000;

/// Decodes the logs and writes the values.
pub(crate) fn run(arguments: &DecodeArguments) -> Result<Outcome, Failure> {
    let begun = Instant::now();
    refuse_names(arguments)?;
    let choice = Choice::of(arguments)?;
    let log_options = logs::options(&arguments.reading)?;
    let database = load(&arguments.description)?;
    let selection = match &arguments.signals {
        Some(patterns) => Selection::matching(&database, patterns)?,
        None => Selection::all(),
    };
    let units = arguments.units.as_deref().map(Units::parse).transpose()?.unwrap_or_default();
    let decoder = Decoder::with(&database, &Setup { selection: selection.clone(), units })?;
    let session = Session::new(&decoder, &session_options(arguments)?)?;
    if let Some(output) = &arguments.output {
        refuse_overwriting(output, inputs(arguments))?;
    }
    let subject =
        Subject { database: &database, decoder: &decoder, selection: &selection, networks: asked_for(arguments) };
    let output_name = tables::output_name(arguments);
    let mut run = Run { arguments, log_options, session, output_name, bindings_told: 0, is_damaged: false };
    let notes = match choice {
        Choice::Lines(form) => run.long(&subject, form)?,
        Choice::GridLines { form, every_ns } => run.grid_lines(&subject, form, every_ns)?,
        Choice::Grid { format, every_ns, setup } => run.grid_table(&subject, format, every_ns, &setup)?,
        Choice::Frames { format, setup } => run.frames(&subject, format, &setup)?,
    };
    let doubts = summary::doubts(&database, |frame, signal| subject.wants_anywhere(frame, signal));
    run.close(&database, &notes, &doubts, begun)
}

/// What is decoded: a description, and what of it is wanted.
struct Subject<'a> {
    database: &'a Database,
    decoder: &'a Decoder,
    selection: &'a Selection,
    /// The names of the networks that are asked for, where not all are.
    networks: Option<Vec<String>>,
}

impl Subject<'_> {
    fn wants_network(&self, network: NetworkId) -> bool {
        let name = &self.database.networks[network.index()].label.name;
        self.networks.as_ref().is_none_or(|names| names.contains(name))
    }

    fn wants(&self, network: NetworkId, frame: FrameId, signal: SignalId) -> bool {
        self.wants_network(network) && self.selection.wants(frame, signal)
    }

    fn wants_anywhere(&self, frame: FrameId, signal: SignalId) -> bool {
        let seen_on = &self.database.frames[frame.index()].seen_on;
        seen_on.iter().any(|appearance| self.wants(appearance.network, frame, signal))
    }
}

/// One run of the command.
struct Run<'a> {
    arguments: &'a DecodeArguments,
    log_options: wirelore_log::Options,
    session: Session<'a>,
    output_name: String,
    bindings_told: usize,
    is_damaged: bool,
}

impl Run<'_> {
    fn long(&mut self, subject: &Subject<'_>, form: LineForm) -> Result<Vec<String>, Failure> {
        let Subject { database, decoder, selection, .. } = *subject;
        let times = self.arguments.times;
        match form {
            LineForm::Csv => self.lines(Csv::new(database, decoder, self.fields())),
            LineForm::Jsonl => self.lines(Jsonl::new(database, decoder, times)),
            LineForm::Table => self.lines(Table::new(database, decoder, selection, times)),
        }
    }

    fn lines<F: Form>(&mut self, form: F) -> Result<Vec<String>, Failure> {
        let mut destination = Destination::open(self.arguments.output.as_deref())?.for_lines();
        let mut sink = LongSink::new(form, Clock::new(self.arguments.times), &mut destination);
        self.logs(&mut sink)?;
        sink.finish().map_err(|reason| self.not_written(reason))?;
        destination.finish()?;
        Ok(Vec::new())
    }

    fn grid_lines(&mut self, subject: &Subject<'_>, form: LineForm, every_ns: i64) -> Result<Vec<String>, Failure> {
        let mut destination = Destination::open(self.arguments.output.as_deref())?.for_lines();
        let wanted = |network, frame, signal| subject.wants(network, frame, signal);
        let columns = GridColumns::for_people(subject.database, subject.decoder, wanted);
        let lines =
            GridLines::new(subject.database, &columns, (form, self.fields()), self.arguments.times, &mut destination);
        let mut grid = Grid::new(columns, every_ns, lines);
        self.logs(&mut grid)?;
        let remarks = grid.finish().map_err(|reason| self.not_written(reason))?;
        destination.finish()?;
        Ok(grid::notes(&remarks, subject.database))
    }

    /// How texts become fields of csv.
    fn fields(&self) -> Fields {
        Fields::of(self.arguments.guard_formulas)
    }

    fn not_written(&self, reason: std::io::Error) -> Failure {
        Failure::writing(&self.output_name, reason)
    }

    /// Reads all logs, frame by frame.
    fn logs(&mut self, sink: &mut impl Sink) -> Result<(), Failure> {
        self.stretches(|session, recording| session.advance(recording, sink))
    }

    /// Reads all logs, one after the other, a stretch at a time.
    fn stretches(
        &mut self,
        mut advance: impl FnMut(&mut Session<'_>, &mut Recording) -> Result<bool, SessionError>,
    ) -> Result<(), Failure> {
        // A bar and a table on one terminal would run into each other.
        let values_on_terminal = self.arguments.output.is_none() && std::io::stdout().is_terminal();
        let wants_progress = !self.arguments.quiet && !values_on_terminal;
        for name in &self.arguments.logs {
            let mut recording = logs::open(name, &self.log_options)?;
            let progress = Progress::new(recording.size(), wants_progress);
            loop {
                let more = advance(&mut self.session, &mut recording).map_err(|error| match error {
                    SessionError::Sink(reason) => self.not_written(reason),
                    other => Failure::Session(other),
                })?;
                progress.at(recording.bytes_read());
                self.tell_bindings();
                if !more {
                    break;
                }
            }
            drop(progress);
            self.is_damaged |= logs::tell_report(name, recording.report());
        }
        Ok(())
    }

    /// Says which channel was taken for which network, unless the log and the description left no choice.
    fn tell_bindings(&mut self) {
        let bindings = self.session.bindings();
        for binding in &bindings[self.bindings_told..] {
            if binding.reason.was_a_choice() {
                tell_line(&binding.to_string());
            }
        }
        self.bindings_told = bindings.len();
    }

    fn close(&self, database: &Database, notes: &[String], doubts: &str, begun: Instant) -> Result<Outcome, Failure> {
        for channel in self.session.channels_never_seen() {
            tell_line(&format!("--bind names channel {channel}, which is in none of the logs"));
        }
        if self.arguments.times == TimeBase::Clock
            && self.session.first_time_ns().is_some_and(|first| first < YEAR_1980_NS)
        {
            tell_line("the times of this recording are no dates: --times clock counts them from 1970");
        }
        for note in notes {
            tell_line(&note.to_string());
        }
        if !self.arguments.quiet {
            tell(&summary::text(database, &self.session, begun.elapsed()));
            tell(doubts);
        }
        let strict = self.arguments.strict && (self.is_damaged || self.session.tally().was_damaged_on_the_way());
        Ok(if strict { Outcome::SomethingToLookAt } else { Outcome::Clean })
    }
}

/// Looks at the names of the logs before anything is read: a long run must not end at a misspelt one.
fn refuse_names(arguments: &DecodeArguments) -> Result<(), Failure> {
    if arguments.logs.iter().filter(|name| *name == "-").count() > 1 {
        return Err(Failure::Usage("standard input can be read once only; give - once".to_owned()));
    }
    let Some(missing) = arguments.logs.iter().find(|name| *name != "-" && !Path::new(name).exists()) else {
        return Ok(());
    };
    let hint = match &arguments.signals {
        Some(_) if missing.contains('.') => "; several patterns of --signals go with commas between them",
        _ => "",
    };
    Err(Failure::Usage(format!("there is no log {missing}{hint}")))
}

/// What the command reads.
fn inputs(arguments: &DecodeArguments) -> impl Iterator<Item = &str> {
    arguments.logs.iter().chain([&arguments.description]).map(String::as_str)
}

/// The networks that are asked for, where not all are.
fn asked_for(arguments: &DecodeArguments) -> Option<Vec<String>> {
    arguments.only.as_deref().map(|list| list.split(',').map(|name| name.trim().to_owned()).collect())
}

fn session_options(arguments: &DecodeArguments) -> Result<Options, Failure> {
    let time = |option, text: &Option<String>| text.as_deref().map(|text| parse_time_ns(option, text)).transpose();
    Ok(Options {
        bind: logs::bind_map(&arguments.reading)?,
        only: asked_for(arguments),
        from_ns: time("--from", &arguments.from)?,
        until_ns: time("--until", &arguments.until)?,
        threads: None,
    })
}
