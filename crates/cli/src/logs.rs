//! Logs as the commands read them: opened, and told about.

use std::path::Path;

use wirelore_decode::BindMap;
use wirelore_log::{ColumnMap, IdentifierOrder, LinePattern, Options, Recording, Report};

use crate::args::LogReading;
use crate::failure::Failure;
use crate::tell::tell_line;

/// Opens a log; `-` is standard input.
pub(crate) fn open(name: &str, options: &Options) -> Result<Recording, Failure> {
    crate::cut::reading(name);
    let recording = if name == "-" {
        Recording::from_reader(Box::new(std::io::stdin()), "standard input", options)
    } else {
        Recording::open(Path::new(name), options)
    };
    Ok(recording?)
}

/// How logs are to be read, as the user tells it.
pub(crate) fn options(reading: &LogReading) -> Result<Options, Failure> {
    let identifiers = if reading.swapped_identifiers { IdentifierOrder::Swapped } else { IdentifierOrder::AsPublished };
    Ok(Options {
        columns: reading.columns.as_deref().map(ColumnMap::parse).transpose()?,
        line: reading.line.as_deref().map(LinePattern::parse).transpose()?,
        identifiers,
        ..Default::default()
    })
}

/// Which channel is which network, as the user tells it.
pub(crate) fn bind_map(reading: &LogReading) -> Result<BindMap, Failure> {
    Ok(reading.bind.as_deref().map(BindMap::parse).transpose()?.unwrap_or_default())
}

/// Says what was lost in a log; true where something was, or where nothing of it can be read. Damage is told even where no summary is wanted.
pub(crate) fn tell_report(name: &str, report: &Report) -> bool {
    for line in report.told() {
        tell_line(&format!("{name}: {line}"));
    }
    report.damaged > 0 || report.lost_tail.is_some() || report.is_of_other_kinds()
}
