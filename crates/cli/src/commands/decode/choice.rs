//! What to write, and how: as told, by the ending of the output's name, or what suits the receiver. Options that do not go together are
//! refused before anything is read.

use std::io::IsTerminal;
use std::path::Path;

use wirelore_tables::{Setup, Store, Times};

use crate::args::{DecodeArguments, Shape, Stored, TimeBase, ValueForm};
use crate::failure::Failure;
use crate::moment::parse_time_ns;
use crate::output::LineForm;
use crate::output::csv::Fields;
use crate::output::typed::Format;

/// The least that tables get along with: a few rows of each.
const LEAST_MEMORY_BYTES: u64 = 1 << 20;

/// What is written.
pub(super) enum Choice {
    /// One line a value.
    Lines(LineForm),
    /// One line every so often.
    GridLines { form: LineForm, every_ns: i64 },
    /// The same as one typed table.
    Grid { format: Format, every_ns: i64, setup: Setup },
    /// One table a frame.
    Frames { format: Format, setup: Setup },
}

impl Choice {
    pub(super) fn of(arguments: &DecodeArguments) -> Result<Self, Failure> {
        let form = form_of(arguments)?;
        let lines = match form {
            ValueForm::Csv => Some(LineForm::Csv),
            ValueForm::Jsonl => Some(LineForm::Jsonl),
            ValueForm::Table => Some(LineForm::Table),
            ValueForm::Parquet | ValueForm::Arrow => None,
        };
        let shape = arguments.shape.unwrap_or(if lines.is_some() { Shape::Long } else { Shape::Frames });
        let every_ns = every_ns(shape, arguments)?;
        let setup = setup_of(arguments)?;
        let choice = match (shape, lines) {
            (Shape::Long, Some(form)) => Self::Lines(form),
            (Shape::Grid, Some(form)) => Self::GridLines { form, every_ns },
            (Shape::Grid, None) => Self::Grid { format: format_of(arguments, form), every_ns, setup },
            (Shape::Frames, None | Some(LineForm::Csv)) => Self::Frames { format: format_of(arguments, form), setup },
            (Shape::Long, None) => {
                return Err(Failure::Usage(
                    "parquet and arrow hold columns of one type each; give --shape frames or --shape grid".to_owned(),
                ));
            }
            (Shape::Frames, Some(LineForm::Jsonl | LineForm::Table)) => {
                return Err(Failure::Usage("--shape frames goes with --to parquet, arrow or csv".to_owned()));
            }
        };
        if arguments.guard_formulas && form != ValueForm::Csv {
            return Err(Failure::Usage("--guard-formulas goes with --to csv".to_owned()));
        }
        let is_typed = matches!(choice, Self::Grid { .. } | Self::Frames { .. });
        if !is_typed && (arguments.states || arguments.store == Stored::Raw) {
            return Err(Failure::Usage(
                "--store and --states go with --to parquet, --to arrow or --shape frames".to_owned(),
            ));
        }
        Ok(choice)
    }
}

fn form_of(arguments: &DecodeArguments) -> Result<ValueForm, Failure> {
    if let Some(form) = arguments.form {
        return Ok(form);
    }
    let Some(output) = arguments.output.as_deref().filter(|output| *output != Path::new("-")) else {
        return Ok(if std::io::stdout().is_terminal() { ValueForm::Table } else { ValueForm::Csv });
    };
    match ending(output) {
        Some("csv") => Ok(ValueForm::Csv),
        Some("jsonl") => Ok(ValueForm::Jsonl),
        Some("txt") => Ok(ValueForm::Table),
        Some("parquet") => Ok(ValueForm::Parquet),
        Some("arrow" | "arrows") => Ok(ValueForm::Arrow),
        _ => Err(Failure::Usage(format!(
            "cannot tell from \"{}\" what to write; let its name end in .csv, .jsonl, .txt, .parquet or .arrow, or say --to csv, jsonl, \
             table, parquet or arrow",
            output.display()
        ))),
    }
}

fn ending(output: &Path) -> Option<&str> {
    output.extension().and_then(|ending| ending.to_str())
}

/// The file format of typed tables. A pipe cannot be read from its end, so that it gets a stream.
fn format_of(arguments: &DecodeArguments, form: ValueForm) -> Format {
    let output = arguments.output.as_deref().filter(|output| *output != Path::new("-"));
    match form {
        ValueForm::Parquet => Format::Parquet,
        ValueForm::Arrow if output.is_none_or(|output| ending(output) == Some("arrows")) => Format::ArrowStream,
        ValueForm::Arrow => Format::ArrowFile,
        ValueForm::Csv | ValueForm::Jsonl | ValueForm::Table => Format::Csv(Fields::of(arguments.guard_formulas)),
    }
}

fn every_ns(shape: Shape, arguments: &DecodeArguments) -> Result<i64, Failure> {
    match (shape, &arguments.every) {
        (Shape::Grid, Some(text)) => match parse_time_ns("--every", text)? {
            0 => Err(Failure::Usage(
                "--every 0 makes a grid without end; give the distance of two lines, such as 100ms".to_owned(),
            )),
            every_ns => Ok(every_ns),
        },
        (Shape::Grid, None) => {
            Err(Failure::Usage("--shape grid needs the distance of two lines, such as --every 100ms".to_owned()))
        }
        (Shape::Long | Shape::Frames, Some(_)) => Err(Failure::Usage("--every goes with --shape grid".to_owned())),
        (Shape::Long | Shape::Frames, None) => Ok(0),
    }
}

fn setup_of(arguments: &DecodeArguments) -> Result<Setup, Failure> {
    let store = match arguments.store {
        Stored::Values => Store::Values,
        Stored::Raw => Store::Raw,
    };
    if store == Store::Raw && arguments.units.is_some() {
        return Err(Failure::Usage(
            "--store raw keeps numbers as they are sent, without a unit; leave out --units".to_owned(),
        ));
    }
    let times = match arguments.times {
        TimeBase::Start => Times::Start,
        TimeBase::Recorded => Times::Recorded,
        TimeBase::Clock => Times::Clock,
    };
    Ok(Setup { store, states: arguments.states, times, memory_bytes: memory_bytes(&arguments.memory)? })
}

/// Reads a size of memory: a whole number with KiB, MiB or GiB, or of bytes.
fn memory_bytes(text: &str) -> Result<usize, Failure> {
    let nonsense = || {
        Failure::Usage(format!(
            "--memory \"{text}\" is not a size; write a whole number with KiB, MiB or GiB, such as 512MiB"
        ))
    };
    let text = text.trim();
    let digits_end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let (number, unit) = text.split_at(digits_end);
    let scale: u64 = match unit.trim() {
        "" | "B" => 1,
        "KiB" => 1 << 10,
        "MiB" => 1 << 20,
        "GiB" => 1 << 30,
        _ => return Err(nonsense()),
    };
    let number: u64 = number.parse().map_err(|_| nonsense())?;
    let bytes = number.checked_mul(scale).ok_or_else(nonsense)?;
    if bytes < LEAST_MEMORY_BYTES {
        return Err(Failure::Usage(format!("--memory {text} is too little for tables; give at least 1MiB")));
    }
    usize::try_from(bytes).map_err(|_| nonsense())
}

#[cfg(test)]
mod tests {
    use super::memory_bytes;

    #[test]
    fn sizes_of_memory() {
        for (text, bytes) in [("512MiB", 512 << 20), ("2 GiB", 2 << 30), ("4096KiB", 4 << 20), ("1048576", 1 << 20)] {
            assert_eq!(memory_bytes(text).ok(), Some(bytes), "{text}");
        }
        for text in ["", "MiB", "-1MiB", "512MB", "1.5GiB", "99999999999GiB", "0", "1023KiB", "1 MiB more"] {
            assert!(memory_bytes(text).is_err(), "{text}");
        }
    }
}
