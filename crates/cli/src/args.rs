//! What a person can type: the commands, their options, and the words of the help.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

/// Describe a vehicle's networks in plain text, check the description, and turn recordings into engineering values.
#[derive(Debug, Parser)]
#[command(name = "wirelore", version, max_term_width = 100, arg_required_else_help = true)]
pub(crate) struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Is what I wrote right? All mistakes at once, with reasons and ways out
    Check(CheckArguments),
    /// Bring descriptions into the one house layout; every comment stays
    Format(FormatArguments),
    /// Draw where each bit of a frame sits, with formulas and reachable values; or explain a message by its name
    Explain(ExplainArguments),
    /// Write the checked description as .json, as a compact .lorebin, as a .lorec table for controllers, or as Rust source
    #[command(after_help = crate::caution::SENDING.replace('\n', " "))]
    Compile(CompileArguments),
    /// Turn logged frames into engineering values
    Decode(Box<DecodeArguments>),
    /// Calculate the bytes of one frame, for the bench; nothing is ever sent
    #[command(after_help = crate::caution::SENDING.replace('\n', " "))]
    Encode(EncodeArguments),
    /// How full each network is and how late each frame can get: by the description, or as it was recorded
    #[command(after_help = BUDGET_FIGURES)]
    Budget(Box<BudgetArguments>),
    /// Draw the vehicle's networks with their control units, gateways and plain wires
    Map(MapArguments),
}

/// `wirelore check`
#[derive(Debug, Args)]
pub(crate) struct CheckArguments {
    /// The descriptions; several are read as one. `-`: from standard input
    #[arg(required = true, value_name = "FILE.lore")]
    pub(crate) files: Vec<String>,
    /// How the messages are written
    #[arg(long = "to", value_enum, default_value_t = MessageForm::Text)]
    pub(crate) form: MessageForm,
}

/// The forms of messages.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum MessageForm {
    /// For people, with the source lines
    Text,
    /// One JSON object a line
    Jsonl,
    /// SARIF 2.1.0 (OASIS), for other programs
    Sarif,
}

/// `wirelore format`
#[derive(Debug, Args)]
pub(crate) struct FormatArguments {
    /// The descriptions; each is rewritten in place. `-`: from standard input to standard output
    #[arg(required = true, value_name = "FILE.lore")]
    pub(crate) files: Vec<String>,
    /// Only tell which files are not in the house layout; change nothing
    #[arg(long)]
    pub(crate) check: bool,
}

/// `wirelore explain`
#[derive(Debug, Args)]
pub(crate) struct ExplainArguments {
    /// A description, or the name of a message
    #[arg(value_name = "FILE.lore | RULE")]
    pub(crate) subject: String,
    /// The frame to draw, one signal of it, or a network with what is on it; left out: the list of frames
    #[arg(value_name = "FRAME[.SIGNAL] | NETWORK")]
    pub(crate) frame: Option<String>,
}

/// `wirelore compile`
#[derive(Debug, Args)]
pub(crate) struct CompileArguments {
    /// The descriptions; several are read as one
    #[arg(required = true, value_name = "FILE.lore")]
    pub(crate) files: Vec<String>,
    /// Where to write; the ending says what
    #[arg(short = 'o', long = "output", value_name = "OUT")]
    pub(crate) output: PathBuf,
    /// What to write, whatever the ending says
    #[arg(long = "to", value_enum)]
    pub(crate) form: Option<DatabaseForm>,
}

/// What a description can become.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum DatabaseForm {
    /// JSON by schema/database.schema.json
    Json,
    /// The compact binary
    Lorebin,
    /// A flat table for controllers, read by the crate wirelore-lorec
    Lorec,
    /// Rust source: a struct for each frame; needs the crate wirelore-bits, no std
    Rust,
}

/// `wirelore decode`
#[derive(Debug, Args)]
pub(crate) struct DecodeArguments {
    /// The description: .lore, or a compiled .json or .lorebin
    #[arg(value_name = "FILE.lore")]
    pub(crate) description: String,
    /// The recordings, one after the other; `-` is standard input
    #[arg(required = true, value_name = "LOG")]
    pub(crate) logs: Vec<String>,
    /// Write here instead of standard output: a file, or a folder for the tables of several frames; it appears whole or not at all
    #[arg(short = 'o', long = "output", value_name = "OUT")]
    pub(crate) output: Option<PathBuf>,
    /// What to write; else by the ending of OUT, else a table on a terminal and csv into a pipe
    #[arg(long = "to", value_enum)]
    pub(crate) form: Option<ValueForm>,
    /// How values are laid out; left out: frames for parquet and arrow, else long
    #[arg(long, value_enum)]
    pub(crate) shape: Option<Shape>,
    /// What the numbers in typed tables are (parquet, arrow, and --shape frames)
    #[arg(long, value_enum, default_value_t = Stored::Values)]
    pub(crate) store: Stored,
    /// In typed tables: beside each signal a column NAME.state with its state word, or why there is no value
    #[arg(long)]
    pub(crate) states: bool,
    /// How much memory the rows of typed tables may take together; less makes smaller row groups
    #[arg(long, value_name = "SIZE", default_value = "128MiB")]
    pub(crate) memory: String,
    /// The distance of two lines of a grid
    #[arg(long, value_name = "TIME", allow_hyphen_values = true)]
    pub(crate) every: Option<String>,
    /// Only these signals: FRAME.SIGNAL with * and ?, several with commas
    #[arg(long, value_name = "GLOBS")]
    pub(crate) signals: Option<String>,
    /// Only these networks, several with commas
    #[arg(long, value_name = "NETWORKS")]
    pub(crate) only: Option<String>,
    /// Leave out what is earlier, counted from the first frame (12.5s, 200ms)
    #[arg(long, value_name = "TIME", allow_hyphen_values = true)]
    pub(crate) from: Option<String>,
    /// Leave out what is later, counted from the first frame
    #[arg(long, value_name = "TIME", allow_hyphen_values = true)]
    pub(crate) until: Option<String>,
    /// What the times of the output count from
    #[arg(long, value_enum, default_value_t = TimeBase::Start)]
    pub(crate) times: TimeBase,
    #[command(flatten)]
    pub(crate) reading: LogReading,
    /// Other units: `imperial` (mph, °F, psi; gallons are those of the US), or pairs like 'km/h=mph,°C=°F'; the imperial gallon is gal_imp,
    /// as in 'L=gal_imp,km/L=mpg_imp'
    #[arg(long, value_name = "UNITS")]
    pub(crate) units: Option<String>,
    /// In csv: an apostrophe before each text that a spreadsheet would take for a formula, as it begins with = + - @ or a tab; such texts
    /// do not read back as they were, and numbers stay as they are
    #[arg(long)]
    pub(crate) guard_formulas: bool,
    /// Exit with 1 where anything was damaged (in the log, on the wire, on the way of a longer message), or nothing of a log can be read
    #[arg(long)]
    pub(crate) strict: bool,
    /// No summary and no progress on standard error
    #[arg(long)]
    pub(crate) quiet: bool,
}

/// How logs are to be read, for all commands that read some.
#[derive(Debug, Args)]
pub(crate) struct LogReading {
    /// Which recorded channel is which network: can0=drive,can1=comfort
    #[arg(long, value_name = "CHANNEL=NETWORK")]
    pub(crate) bind: Option<String>,
    /// Which column of a text log is what: 'time=when:s, id=ident:hex, data=b0..b7:hex'
    ///
    /// A list of ROLE=HEADING; behind a colon the form of the numbers: s, ms, us, ns for times, hex or dec for others. Roles of any line:
    /// time, channel, data, length, checksum_good; of CAN: id, extended, remote, kind, dlc, fd, bit_rate_switch, error_state; of LIN: pid,
    /// checksum, checksum_kind, parity_good; of FlexRay: slot, cycle, flexray_channel, indicators, header_crc_good, frame_crc_good; of MOST:
    /// function_block, instance, function, operation, or an id such as 22.01.0D2.C, and part (0 whole, 1 first, 2 amid, 3 last). `channel` is what the log recorded from;
    /// flexray_channel is A or B. `skip=HEADING` leaves a column out. Columns that are not told are known by common headings; where none
    /// is left that could be the id, lines are bytes of a single-wire network.
    #[arg(long, value_name = "COLUMNS", conflicts_with = "line")]
    pub(crate) columns: Option<String>,
    /// How the lines of a text log look: '{time:s};{channel};{id:hex};{data:hex}'
    ///
    /// Fields are the roles of --columns, and {skip}; a blank stands for one or more, a brace itself is written twice.
    #[arg(long, value_name = "PATTERN")]
    pub(crate) line: Option<String>,
    /// Read the identifiers of a pcap or pcapng log with their bytes the other way round
    #[arg(long)]
    pub(crate) swapped_identifiers: bool,
}

/// The forms of decoded values.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum ValueForm {
    /// Comma-separated, with a header line (RFC 4180); floats that are no finite numbers are nan, inf and -inf
    Csv,
    /// One JSON object a line; null for what is no finite number
    Jsonl,
    /// Aligned columns for people
    Table,
    /// Typed tables (Apache Parquet)
    Parquet,
    /// Typed tables (Apache Arrow): a file; a stream for OUT.arrows and into a pipe
    Arrow,
}

/// How values are laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum Shape {
    /// One line a value
    Long,
    /// One table for each frame: time and a column for each signal
    Frames,
    /// One line every so often, a column for each signal; the last value is held until its frame is overdue, and of several senders of
    /// a frame only the first one found is shown
    Grid,
}

/// What numbers are stored.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum Stored {
    /// Engineering values
    Values,
    /// Raw numbers as narrow as they are, with the formula beside the column's name
    Raw,
}

/// What times count from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum TimeBase {
    /// Seconds since the first frame
    Start,
    /// Seconds as the recording has them
    Recorded,
    /// Date and time in UTC (ISO 8601), for recordings that are stamped so
    Clock,
}

impl TimeBase {
    /// The columns that a time takes in a table.
    pub(crate) fn width(self) -> usize {
        match self {
            Self::Start => "12345.123456789".len(),
            Self::Recorded => "1234567890.123456789".len(),
            Self::Clock => "2026-01-01T00:00:00.123456789Z".len(),
        }
    }
}

/// `wirelore encode`
#[derive(Debug, Args)]
pub(crate) struct EncodeArguments {
    /// The description
    #[arg(value_name = "FILE.lore")]
    pub(crate) description: String,
    /// The frame
    #[arg(value_name = "FRAME")]
    pub(crate) frame: String,
    /// What its signals say: front_left=62.5, gear=forward, page=0x02
    #[arg(value_name = "SIGNAL=VALUE")]
    pub(crate) values: Vec<String>,
}

/// What the figures of a budget mean.
const BUDGET_FIGURES: &str = "\
The load has three figures. At least: frames of CAN without stuff bits, of LIN with nominal lengths, each at its ordinary period. \
Expected: frames of CAN nine tenths as long as they can be, as recorded ones are (Nolte, Hansson, Norström, Punnekkat 2001). At most: with all \
stuff bits that can be, on LIN 1.4 times as long, each as often as its description allows.

Longest is the time from the event that makes a frame due to its end, at worst (Davis, Burns, Bril, Lukkien 2007). It is held against the \
frame's timeout, or its period where none is described. No frame is damaged and sent again, and every unit offers its most urgent frame first: \
that is assumed. Busiest windows of a recording are moved in steps of 100 ms.

Exit status: 1 where a frame can miss its deadline, or a network is fuller than 100 % or --limit; 2 where it could not be done.";

/// `wirelore budget`
#[derive(Debug, Args)]
pub(crate) struct BudgetArguments {
    /// A description; then a second one to hold against it, or logs (`-` is standard input)
    #[arg(required = true, value_name = "FILE.lore | LOG")]
    pub(crate) files: Vec<String>,
    /// Also a line for each frame; and for each identifier of a log
    #[arg(long)]
    pub(crate) frames: bool,
    /// Also a line for each control unit
    #[arg(long = "units")]
    pub(crate) control_units: bool,
    /// Only these networks, several with commas
    #[arg(long, value_name = "NETWORKS")]
    pub(crate) only: Option<String>,
    /// Exit with 1 also where a network is fuller than this at most: 60%. No standard names a limit
    #[arg(long, value_name = "PERCENT")]
    pub(crate) limit: Option<String>,
    /// What if a control unit were on another network: radio=comfort. Can be given several times
    #[arg(long = "move", value_name = "UNIT=NETWORK")]
    pub(crate) moves: Vec<String>,
    /// What if a network were faster or slower: drive=250k, camera=500k/5M with a data rate. Can be given several times
    #[arg(long = "rate", value_name = "NETWORK=RATE")]
    pub(crate) rates: Vec<String>,
    /// What if one frame more were sent, in the words of the language: 'id 0x123 every 10 ms length 8 on drive'
    #[arg(long = "add", value_name = "FRAME")]
    pub(crate) adds: Vec<String>,
    /// Write here instead of standard output; the file appears whole or not at all
    #[arg(short = 'o', long = "output", value_name = "OUT")]
    pub(crate) output: Option<PathBuf>,
    /// What to write; else by the ending of OUT, else a table. csv has the table of networks, with --units or --frames that one
    #[arg(long = "to", value_enum)]
    pub(crate) form: Option<BudgetForm>,
    /// In csv: an apostrophe before each text that a spreadsheet would take for a formula, as it begins with = + - @ or a tab; such texts
    /// do not read back as they were, and numbers stay as they are
    #[arg(long)]
    pub(crate) guard_formulas: bool,
    #[command(flatten)]
    pub(crate) reading: LogReading,
    /// No progress on standard error
    #[arg(long)]
    pub(crate) quiet: bool,
}

/// The forms of a budget.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum BudgetForm {
    /// Aligned columns and sentences for people
    Table,
    /// Comma-separated, one table with a header line (RFC 4180)
    Csv,
    /// One JSON object with all tables
    Json,
    /// A picture with a bar for each network; of one description
    Svg,
    /// The same picture in a page that needs no other file
    Html,
}

/// `wirelore map`
#[derive(Debug, Args)]
pub(crate) struct MapArguments {
    /// The description: .lore, or a compiled .json or .lorebin
    #[arg(value_name = "FILE.lore")]
    pub(crate) description: String,
    /// Write here: map.svg, map.html (hover over an item to see what it is connected with) or map.txt; left out: text on standard output
    #[arg(short = 'o', long = "output", value_name = "OUT")]
    pub(crate) output: Option<PathBuf>,
    /// What to write, whatever the ending says
    #[arg(long = "to", value_enum)]
    pub(crate) form: Option<MapForm>,
    /// Only these networks and the control units on them, several with commas
    #[arg(long, value_name = "NETWORKS")]
    pub(crate) network: Option<String>,
    /// Who sends this frame or signal, through which gateways it goes, who reads it: drawn strong, the rest pale. A signal is
    /// FRAME.SIGNAL, or its name alone where only one frame has it
    #[arg(long, value_name = "FRAME|SIGNAL")]
    pub(crate) listen: Option<String>,
    /// An exercise: numbered empty boxes. The solution is in NAME.solution.svg beside it, or folded into the page
    #[arg(long)]
    pub(crate) blank: bool,
    /// Hatch these control units (those that do not answer, for instance), several with commas
    #[arg(long, value_name = "UNITS")]
    pub(crate) mark: Option<String>,
    /// Show how sure each item is, with what it rests on; what is guessed is dashed in any case
    #[arg(long)]
    pub(crate) certainty: bool,
}

/// The forms of a map.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum MapForm {
    /// A picture in the proportions of A4 lying on its side
    Svg,
    /// A page that needs no other file
    Html,
    /// Lines of text for a terminal, at most 100 columns wide
    Text,
}
