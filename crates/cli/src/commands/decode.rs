//! `wirelore decode`: logged frames to engineering values.

use std::io::IsTerminal;
use std::path::Path;
use std::time::Instant;

use wirelore_decode::{BindMap, Decoder, Options, Reason, Selection, Session, SessionError, Setup, Sink, Units};
use wirelore_log::{ColumnMap, IdentifierOrder, LinePattern, Recording, Report};
use wirelore_model::Database;

use crate::args::{DecodeArguments, Shape, ValueForm};
use crate::atomic::Destination;
use crate::description::load;
use crate::failure::{Failure, Outcome};
use crate::moment::{Clock, parse_time_ns};
use crate::output::csv::Csv;
use crate::output::grid::GridSink;
use crate::output::jsonl::Jsonl;
use crate::output::long::{Form, LongSink};
use crate::output::table::Table;
use crate::progress::Progress;
use crate::summary;

/// How many frames are decoded between two looks at the progress.
const FRAMES_BETWEEN_LOOKS: usize = 100_000;

/// Decodes the logs and writes the values.
pub(crate) fn run(arguments: &DecodeArguments) -> Result<Outcome, Failure> {
    let begun = Instant::now();
    let form = form_of(arguments)?;
    let every_ns = every_ns(arguments)?;
    let log_options = log_options(arguments)?;
    let database = load(&arguments.description)?;
    let selection = match &arguments.signals {
        Some(patterns) => Selection::matching(&database, patterns)?,
        None => Selection::all(),
    };
    let units = arguments.units.as_deref().map(Units::parse).transpose()?.unwrap_or_default();
    let decoder = Decoder::with(&database, &Setup { selection: selection.clone(), units })?;
    let mut run = Run {
        arguments,
        log_options,
        session: Session::new(&decoder, &session_options(arguments)?)?,
        bindings_told: 0,
        is_damaged: false,
    };

    let mut destination = Destination::open(arguments.output.as_deref())?;
    let notes = match (arguments.shape, form) {
        (Shape::Grid, _) => {
            let wanted = |frame, signal| selection.wants(frame, signal);
            let mut sink =
                GridSink::new(&database, &decoder, wanted, (form, arguments.times, every_ns), &mut destination);
            run.logs(&mut sink)?;
            sink.finish().map_err(|reason| Failure::writing(run.output_name(), reason))?;
            sink.notes(&database)
        }
        (Shape::Long, ValueForm::Csv) => run.long(Csv::new(&database, &decoder), &mut destination)?,
        (Shape::Long, ValueForm::Jsonl) => {
            run.long(Jsonl::new(&database, &decoder, arguments.times), &mut destination)?
        }
        (Shape::Long, ValueForm::Table) => run.long(Table::new(&database, &decoder), &mut destination)?,
    };
    destination.finish()?;
    run.close(&database, &notes, begun)
}

/// One run of the command.
struct Run<'a> {
    arguments: &'a DecodeArguments,
    log_options: wirelore_log::Options,
    session: Session<'a>,
    bindings_told: usize,
    is_damaged: bool,
}

impl Run<'_> {
    fn long<F: Form>(&mut self, form: F, to: &mut Destination) -> Result<Vec<String>, Failure> {
        let mut sink = LongSink::new(form, Clock::new(self.arguments.times), to);
        self.logs(&mut sink)?;
        sink.finish().map_err(|reason| Failure::writing(self.output_name(), reason))?;
        Ok(Vec::new())
    }

    /// Reads all logs, one after the other.
    fn logs(&mut self, sink: &mut impl Sink) -> Result<(), Failure> {
        for name in &self.arguments.logs {
            let mut recording = open(name, &self.log_options)?;
            let progress = Progress::new(recording.size(), self.arguments.quiet);
            loop {
                let more =
                    self.session.advance(&mut recording, sink, FRAMES_BETWEEN_LOOKS).map_err(|error| match error {
                        SessionError::Sink(reason) => Failure::writing(self.output_name(), reason),
                        other => Failure::Session(other),
                    })?;
                progress.at(recording.bytes_read());
                self.tell_bindings();
                if !more {
                    break;
                }
            }
            drop(progress);
            self.tell_report(name, recording.report());
        }
        Ok(())
    }

    /// Says which channel was taken for which network, unless the log and the description left no choice.
    fn tell_bindings(&mut self) {
        let bindings = self.session.bindings();
        for binding in &bindings[self.bindings_told..] {
            if !self.arguments.quiet && was_a_choice(&binding.reason) {
                eprintln!("{binding}");
            }
        }
        self.bindings_told = bindings.len();
    }

    /// Says what was lost in a log. Damage is told even where no summary is wanted.
    fn tell_report(&mut self, name: &str, report: &Report) {
        for damage in &report.damage {
            eprintln!("{name}: {damage}");
        }
        let untold = report.damaged.saturating_sub(report.damage.len() as u64);
        if untold > 0 {
            eprintln!("{name}: and {} more", summary::counted(untold, "damaged place"));
        }
        if let Some(tail) = &report.lost_tail {
            eprintln!("{name}: {tail}");
        }
        for note in report.notes() {
            eprintln!("{name}: {note}");
        }
        self.is_damaged |= report.damaged > 0 || report.lost_tail.is_some();
    }

    fn close(&self, database: &Database, notes: &[String], begun: Instant) -> Result<Outcome, Failure> {
        for channel in self.session.channels_never_seen() {
            eprintln!("--bind names channel {channel}, which is in none of the logs");
        }
        for note in notes {
            eprintln!("{note}");
        }
        if !self.arguments.quiet {
            eprint!("{}", summary::text(database, &self.session, begun.elapsed()));
        }
        let strict = self.arguments.strict && self.is_damaged;
        Ok(if strict { Outcome::SomethingToLookAt } else { Outcome::Clean })
    }

    fn output_name(&self) -> String {
        self.arguments.output.as_ref().map_or_else(|| "standard output".to_owned(), |path| path.display().to_string())
    }
}

/// Whether another reader of the log might have decided otherwise.
fn was_a_choice(reason: &Reason) -> bool {
    match reason {
        Reason::Told | Reason::SameName | Reason::EarlierLog | Reason::OnlyOne => false,
        Reason::Identifiers { .. } | Reason::NotNamed | Reason::NothingDescribed { .. } => true,
    }
}

fn open(name: &str, options: &wirelore_log::Options) -> Result<Recording, Failure> {
    let recording = if name == "-" {
        Recording::from_reader(Box::new(std::io::stdin()), "standard input", options)
    } else {
        Recording::open(Path::new(name), options)
    };
    Ok(recording?)
}

/// What to write: as told, by the ending, or what suits the receiver.
fn form_of(arguments: &DecodeArguments) -> Result<ValueForm, Failure> {
    if let Some(form) = arguments.form {
        return Ok(form);
    }
    let Some(output) = &arguments.output else {
        return Ok(if std::io::stdout().is_terminal() { ValueForm::Table } else { ValueForm::Csv });
    };
    match output.extension().and_then(|ending| ending.to_str()) {
        Some("csv") => Ok(ValueForm::Csv),
        Some("jsonl") => Ok(ValueForm::Jsonl),
        Some("txt") => Ok(ValueForm::Table),
        _ => Err(Failure::Usage(format!(
            "cannot tell from \"{}\" what to write; let its name end in .csv, .jsonl or .txt, or say --to csv, --to jsonl or --to table",
            output.display()
        ))),
    }
}

fn every_ns(arguments: &DecodeArguments) -> Result<i64, Failure> {
    match (arguments.shape, &arguments.every) {
        (Shape::Grid, Some(text)) => match parse_time_ns("--every", text)? {
            0 => Err(Failure::Usage(
                "--every 0 makes a grid without end; give the distance of two lines, such as 100ms".to_owned(),
            )),
            every_ns => Ok(every_ns),
        },
        (Shape::Grid, None) => {
            Err(Failure::Usage("--shape grid needs the distance of two lines, such as --every 100ms".to_owned()))
        }
        (Shape::Long, Some(_)) => Err(Failure::Usage("--every goes with --shape grid".to_owned())),
        (Shape::Long, None) => Ok(0),
    }
}

fn log_options(arguments: &DecodeArguments) -> Result<wirelore_log::Options, Failure> {
    let identifiers =
        if arguments.swapped_identifiers { IdentifierOrder::Swapped } else { IdentifierOrder::AsPublished };
    Ok(wirelore_log::Options {
        columns: arguments.columns.as_deref().map(ColumnMap::parse).transpose()?,
        line: arguments.line.as_deref().map(LinePattern::parse).transpose()?,
        identifiers,
        ..Default::default()
    })
}

fn session_options(arguments: &DecodeArguments) -> Result<Options, Failure> {
    let time = |option, text: &Option<String>| text.as_deref().map(|text| parse_time_ns(option, text)).transpose();
    Ok(Options {
        bind: arguments.bind.as_deref().map(BindMap::parse).transpose()?.unwrap_or_default(),
        only: arguments.only.as_deref().map(|list| list.split(',').map(|name| name.trim().to_owned()).collect()),
        from_ns: time("--from", &arguments.from)?,
        until_ns: time("--until", &arguments.until)?,
    })
}
