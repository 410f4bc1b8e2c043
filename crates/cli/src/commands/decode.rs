//! `wirelore decode`: logged frames to engineering values.

use std::io::IsTerminal;
use std::path::Path;
use std::time::Instant;

use wirelore_decode::{BindMap, Decoder, Options, Reason, Selection, Session, SessionError, Setup, Sink, Units};
use wirelore_log::{ColumnMap, IdentifierOrder, LinePattern, Recording, Report};
use wirelore_model::{Database, NetworkId};

use crate::args::{DecodeArguments, Shape, TimeBase, ValueForm};
use crate::atomic::{Destination, refuse_overwriting};
use crate::description::load;
use crate::failure::{Failure, Outcome};
use crate::moment::{Clock, parse_time_ns};
use crate::output::csv::Csv;
use crate::output::grid::{GridSink, Layout};
use crate::output::jsonl::Jsonl;
use crate::output::long::{Form, LongSink};
use crate::output::table::Table;
use crate::progress::Progress;
use crate::summary;
use crate::tell::{tell, tell_line};

/// No recording of a vehicle network is older than 1980: a smaller time is no date.
const YEAR_1980_NS: i64 = 315_532_800_000_000_000;

/// Decodes the logs and writes the values.
pub(crate) fn run(arguments: &DecodeArguments) -> Result<Outcome, Failure> {
    let begun = Instant::now();
    refuse_names(arguments)?;
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
    let session = Session::new(&decoder, &session_options(arguments)?)?;
    if let Some(output) = &arguments.output {
        refuse_overwriting(output, arguments.logs.iter().chain([&arguments.description]).map(String::as_str))?;
    }
    let mut destination = Destination::open(arguments.output.as_deref())?;
    let output_name = destination.name();
    let mut run = Run { arguments, log_options, session, output_name, bindings_told: 0, is_damaged: false };
    let notes = match (arguments.shape, form) {
        (Shape::Grid, _) => {
            let networks = asked_for(arguments);
            let wanted = |network: NetworkId, frame, signal| {
                let name = &database.networks[network.index()].label.name;
                networks.as_ref().is_none_or(|names| names.contains(name)) && selection.wants(frame, signal)
            };
            let layout = Layout { form, times: arguments.times, every_ns };
            let mut sink = GridSink::new(&database, &decoder, wanted, layout, &mut destination);
            run.logs(&mut sink)?;
            sink.finish().map_err(|reason| Failure::writing(&run.output_name, reason))?;
            sink.notes(&database)
        }
        (Shape::Long, ValueForm::Csv) => run.long(Csv::new(&database, &decoder), &mut destination)?,
        (Shape::Long, ValueForm::Jsonl) => {
            run.long(Jsonl::new(&database, &decoder, arguments.times), &mut destination)?
        }
        (Shape::Long, ValueForm::Table) => {
            run.long(Table::new(&database, &decoder, &selection, arguments.times), &mut destination)?
        }
    };
    destination.finish()?;
    run.close(&database, &notes, begun)
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
    fn long<F: Form>(&mut self, form: F, to: &mut Destination) -> Result<Vec<String>, Failure> {
        let mut sink = LongSink::new(form, Clock::new(self.arguments.times), to);
        self.logs(&mut sink)?;
        sink.finish().map_err(|reason| Failure::writing(&self.output_name, reason))?;
        Ok(Vec::new())
    }

    /// Reads all logs, one after the other.
    fn logs(&mut self, sink: &mut impl Sink) -> Result<(), Failure> {
        // A bar and a table on one terminal would run into each other.
        let values_on_terminal = self.arguments.output.is_none() && std::io::stdout().is_terminal();
        let wants_progress = !self.arguments.quiet && !values_on_terminal;
        for name in &self.arguments.logs {
            let mut recording = open(name, &self.log_options)?;
            let progress = Progress::new(recording.size(), wants_progress);
            loop {
                let more = self.session.advance(&mut recording, sink).map_err(|error| match error {
                    SessionError::Sink(reason) => Failure::writing(&self.output_name, reason),
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
            if was_a_choice(&binding.reason) {
                tell_line(&binding.to_string());
            }
        }
        self.bindings_told = bindings.len();
    }

    /// Says what was lost in a log. Damage is told even where no summary is wanted.
    fn tell_report(&mut self, name: &str, report: &Report) {
        for damage in &report.damage {
            tell_line(&format!("{name}: {damage}"));
        }
        let untold = report.damaged.saturating_sub(report.damage.len() as u64);
        if untold > 0 {
            tell_line(&format!("{name}: and {} more", summary::counted(untold, "damaged place")));
        }
        if let Some(tail) = &report.lost_tail {
            tell_line(&format!("{name}: {tail}"));
        }
        for note in report.notes() {
            tell_line(&format!("{name}: {note}"));
        }
        self.is_damaged |= report.damaged > 0 || report.lost_tail.is_some();
    }

    fn close(&self, database: &Database, notes: &[String], begun: Instant) -> Result<Outcome, Failure> {
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
        }
        let strict = self.arguments.strict && self.is_damaged;
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

/// The networks that are asked for, where not all are.
fn asked_for(arguments: &DecodeArguments) -> Option<Vec<String>> {
    arguments.only.as_deref().map(|list| list.split(',').map(|name| name.trim().to_owned()).collect())
}

fn session_options(arguments: &DecodeArguments) -> Result<Options, Failure> {
    let time = |option, text: &Option<String>| text.as_deref().map(|text| parse_time_ns(option, text)).transpose();
    Ok(Options {
        bind: arguments.bind.as_deref().map(BindMap::parse).transpose()?.unwrap_or_default(),
        only: asked_for(arguments),
        from_ns: time("--from", &arguments.from)?,
        until_ns: time("--until", &arguments.until)?,
        threads: None,
    })
}
