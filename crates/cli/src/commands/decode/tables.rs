//! Typed tables: a folder with a file for each frame, or one file.

use std::io::IsTerminal;
use std::path::{Path, PathBuf};

use wirelore_decode::Tables;
use wirelore_model::{FrameId, SignalId};
use wirelore_tables::{FrameTable, Grid, GridTable, SchemaRef, Setup, TableMaker};

use super::{Run, Subject, inputs};
use crate::args::DecodeArguments;
use crate::atomic::Destination;
use crate::failure::Failure;
use crate::folder::Folder;
use crate::output::grid;
use crate::output::typed::{Format, Lent, buffered};
use crate::summary::{NAMED, counted};

/// Where the output goes, for messages.
pub(super) fn output_name(arguments: &DecodeArguments) -> String {
    path(arguments).map_or_else(|| "standard output".to_owned(), |path| path.display().to_string())
}

fn path(arguments: &DecodeArguments) -> Option<&Path> {
    arguments.output.as_deref().filter(|output| *output != Path::new("-"))
}

impl Run<'_> {
    /// A grid as one typed table.
    pub(super) fn grid_table(
        &mut self,
        subject: &Subject<'_>,
        format: Format,
        every_ns: i64,
        setup: &Setup,
    ) -> Result<Vec<String>, Failure> {
        let Subject { database, decoder, .. } = *subject;
        refuse_terminal(self.arguments, format)?;
        let lent = Lent::new(Destination::open(self.arguments.output.as_deref())?);
        let (times, to) = (self.arguments.times, lent.clone());
        let wanted = |network, frame, signal| subject.wants(network, frame, signal);
        let open = |schema: &SchemaRef| format.writer(times, schema, to);
        let table = GridTable::open(database, decoder, wanted, setup, open);
        let (columns, table) = table.map_err(|reason| self.not_written(reason))?;
        let mut rows = Grid::new(columns, every_ns, table);
        self.logs(&mut rows)?;
        let remarks = rows.finish().map_err(|reason| self.not_written(reason))?;
        lent.finish()?;
        Ok(grid::notes(&remarks, database))
    }

    /// One table a frame.
    pub(super) fn frames(
        &mut self,
        subject: &Subject<'_>,
        format: Format,
        setup: &Setup,
    ) -> Result<Vec<String>, Failure> {
        let frames = subject.frames();
        match folder(self.arguments, format) {
            Some(folder) => self.folder(subject, format, setup, &folder),
            None => match frames.as_slice() {
                [frame] => self.one_frame(subject, format, setup, *frame),
                _ => Err(several(subject, &frames, &self.output_name, format)),
            },
        }
    }

    fn folder(
        &mut self,
        subject: &Subject<'_>,
        format: Format,
        setup: &Setup,
        target: &Path,
    ) -> Result<Vec<String>, Failure> {
        let Subject { database, decoder, .. } = *subject;
        let ending = format!(".{}", format.ending());
        let is_table =
            |name: &str| name.strip_suffix(&ending).is_some_and(|frame| database.frame_named(frame).is_some());
        let mut folder = Folder::open(target, is_table, inputs(self.arguments))?;
        let times = self.arguments.times;
        let open = |frame: FrameId, schema: &SchemaRef| {
            let name = format!("{}{ending}", database.frames[frame.index()].label.name);
            format.writer(times, schema, buffered(folder.file(name)))
        };
        let wanted = |frame: FrameId, signal: SignalId| subject.selection.wants(frame, signal);
        let maker = TableMaker::new(database, decoder, wanted, *setup, open);
        let written = self.fill(subject, setup, maker, None)?;
        folder.finish()?;
        Ok(self.notes(subject, &written))
    }

    fn one_frame(
        &mut self,
        subject: &Subject<'_>,
        format: Format,
        setup: &Setup,
        frame: FrameId,
    ) -> Result<Vec<String>, Failure> {
        refuse_terminal(self.arguments, format)?;
        let destination = Destination::open(self.arguments.output.as_deref())?;
        let lent = Lent::new(if matches!(format, Format::Csv(_)) { destination.for_lines() } else { destination });
        let (times, to) = (self.arguments.times, lent.clone());
        let open = |_, schema: &SchemaRef| format.writer(times, schema, to.clone());
        let wanted = |frame: FrameId, signal: SignalId| subject.selection.wants(frame, signal);
        let mut maker = TableMaker::new(subject.database, subject.decoder, wanted, *setup, open);
        // The file is there even where the frame is not.
        let ready = maker.table(frame).map_err(|reason| self.not_written(reason))?;
        self.fill(subject, setup, maker, Some(ready))?;
        lent.finish()?;
        Ok(Vec::new())
    }

    /// Decodes the logs into tables; which there are, and how many rows each has. `ready` is the table of the only frame.
    fn fill(
        &mut self,
        subject: &Subject<'_>,
        setup: &Setup,
        mut maker: TableMaker<'_>,
        mut ready: Option<FrameTable>,
    ) -> Result<Vec<(FrameId, u64)>, Failure> {
        let mut open = |frame| ready.take().map_or_else(|| maker.table(frame), Ok);
        let mut tables = Tables::new(subject.database, subject.decoder, setup.store.into(), &mut open);
        self.stretches(|session, recording| session.advance_tables(recording, &mut tables))?;
        let filled: Vec<(FrameId, FrameTable)> = tables.into_sinks().collect();
        let untouched = ready.into_iter().map(FrameTable::finish).collect::<Result<Vec<u64>, _>>();
        untouched.map_err(|reason| self.not_written(reason))?;
        let finished = filled.into_iter().map(|(frame, table)| Ok((frame, table.finish()?)));
        finished.collect::<Result<_, _>>().map_err(|reason| self.not_written(reason))
    }

    /// Which tables there are, and which described frames have none.
    fn notes(&self, subject: &Subject<'_>, written: &[(FrameId, u64)]) -> Vec<String> {
        if self.arguments.quiet {
            return Vec::new();
        }
        let rows = written.iter().map(|(_, rows)| rows).sum();
        let tables = counted(written.len() as u64, "table");
        let mut notes = vec![format!("{}: {tables}, {}", self.output_name, counted(rows, "row"))];
        let unseen: Vec<FrameId> =
            subject.frames().into_iter().filter(|frame| !written.iter().any(|(seen, _)| seen == frame)).collect();
        if !unseen.is_empty() {
            notes.push(format!("no table, as never seen: {}", named(subject, &unseen)));
        }
        notes
    }
}

impl Subject<'_> {
    /// The frames of which something is wanted.
    fn frames(&self) -> Vec<FrameId> {
        let frames = (0..).map(FrameId).zip(&self.database.frames);
        let wanted = frames.filter(|(id, frame)| {
            self.decoder.wants(*id) && frame.seen_on.iter().any(|appearance| self.wants_network(appearance.network))
        });
        wanted.map(|(id, _)| id).collect()
    }
}

/// The folder that is meant; `None` for standard output and for a name with the format's own ending, which is one file.
fn folder(arguments: &DecodeArguments, format: Format) -> Option<PathBuf> {
    let output = path(arguments)?;
    let is_file = output.extension().is_some_and(|ending| ending == format.ending()) && !output.is_dir();
    // Devices and pipes with a name are written to as they are.
    let is_device = output.metadata().is_ok_and(|data| !data.is_file() && !data.is_dir());
    (!is_file && !is_device).then(|| output.to_owned())
}

fn several(subject: &Subject<'_>, frames: &[FrameId], output_name: &str, format: Format) -> Failure {
    let form = match format {
        Format::Parquet => "parquet",
        Format::ArrowFile | Format::ArrowStream => "arrow",
        Format::Csv(_) => "csv --shape frames",
    };
    if frames.is_empty() {
        return Failure::Usage("no frame is left to make a table of; look at --signals and --only".to_owned());
    }
    Failure::Usage(format!(
        "{output_name} takes one table, and these are {}: {}; choose one with --signals, or give a folder: -o tables --to {form}",
        frames.len(),
        named(subject, frames)
    ))
}

/// The first names of several frames.
fn named(subject: &Subject<'_>, frames: &[FrameId]) -> String {
    let names = frames.iter().take(NAMED).map(|frame| subject.database.frames[frame.index()].label.name.as_str());
    let more = frames.len().saturating_sub(NAMED);
    let names = names.collect::<Vec<_>>().join(", ");
    if more > 0 { format!("{names} and {more} more") } else { names }
}

/// Typed tables are nothing to look at.
fn refuse_terminal(arguments: &DecodeArguments, format: Format) -> Result<(), Failure> {
    if path(arguments).is_none() && !matches!(format, Format::Csv(_)) && std::io::stdout().is_terminal() {
        return Err(Failure::Usage("parquet and arrow are nothing to look at; give -o OUT, or a pipe".to_owned()));
    }
    Ok(())
}
