//! The texts of an output that never change, made once.

use std::io::Write;

use unicode_width::UnicodeWidthStr;
use wirelore_decode::{Decoder, Event, Source, SourceKinds};
use wirelore_model::{Database, Ecu, FrameId, Grade, NetworkId, Signal, SignalId};

use super::snippet::Snippet;

/// What a text is the name of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Part {
    Network,
    Frame,
    /// Who sent a frame; empty where the frame does not tell.
    Source,
    Signal,
    /// Empty where there is none. How sure the author is of the signal stands here, so that it costs nothing for each value.
    Unit(Option<Grade>),
}

/// All names, each as the output shows it.
pub(crate) struct Texts {
    networks: Vec<String>,
    frames: Vec<String>,
    sources: Option<Sources>,
    signals: Vec<Vec<SignalText>>,
}

/// What stands around the values of one signal.
pub(crate) struct SignalText {
    pub(crate) before: String,
    pub(crate) behind: String,
    /// What stands before the value, and what stands behind it to the end of the line where there is nothing to say of its state.
    pub(crate) ready: Option<[Snippet; 2]>,
    /// How many digits its value has, where people read it in hexadecimal.
    pub(crate) hexadecimal_digits: Option<usize>,
}

impl Texts {
    /// Calls `make` with every name; `line_end` is what ends a line where there is nothing to say of a value's state.
    pub(crate) fn new(
        database: &Database,
        decoder: &Decoder,
        line_end: &str,
        make: impl Fn(Part, &str) -> String,
    ) -> Self {
        let signal_text = |frame: FrameId, id: SignalId, signal: &Signal| {
            let unit = decoder.unit(frame, id).map_or("", |unit| unit.as_str());
            let grade = database.certainty(frame, id).map(|certainty| certainty.grade);
            let (before, behind) = (make(Part::Signal, &signal.label.name), make(Part::Unit(grade), unit));
            let whole = format!("{behind}{line_end}");
            let ready = Snippet::new(before.as_bytes()).zip(Snippet::new(whole.as_bytes()));
            let hexadecimal_digits = signal.hexadecimal_digits();
            SignalText { before, behind, ready: ready.map(<[Snippet; 2]>::from), hexadecimal_digits }
        };
        let signals = database.frames.iter().zip((0..).map(FrameId)).map(|(frame, id)| {
            let signals = frame.signals.iter().zip((0..).map(SignalId));
            signals.map(|(signal, signal_id)| signal_text(id, signal_id, signal)).collect()
        });
        Self {
            networks: database.networks.iter().map(|network| make(Part::Network, &network.label.name)).collect(),
            frames: database.frames.iter().map(|frame| make(Part::Frame, &frame.label.name)).collect(),
            sources: source_kinds(database, decoder)
                .any()
                .then(|| Sources::new(database, |name| make(Part::Source, name))),
            signals: signals.collect(),
        }
    }

    /// Whether there is a text for who sent a frame.
    pub(crate) fn have_sources(&self) -> bool {
        self.sources.is_some()
    }

    /// Appends network, frame and, where some wanted frames tell it, source.
    pub(crate) fn push_frame(&self, event: &Event<'_>, to: &mut Vec<u8>) {
        to.extend_from_slice(self.networks[event.network.index()].as_bytes());
        to.extend_from_slice(self.frames[event.frame.index()].as_bytes());
        if let Some(sources) = &self.sources {
            sources.push(event.network, event.source, to);
        }
    }

    /// What stands around the values of a signal.
    pub(crate) fn signal(&self, frame: FrameId, signal: SignalId) -> &SignalText {
        &self.signals[frame.index()][signal.index()]
    }
}

/// What tells who sent the frames that are wanted.
fn source_kinds(database: &Database, decoder: &Decoder) -> SourceKinds {
    let mut kinds = SourceKinds::default();
    let wanted = database.frames.iter().zip((0..).map(FrameId)).filter(|(_, id)| decoder.wants(*id));
    wanted.for_each(|(frame, _)| kinds |= SourceKinds::of(frame));
    kinds
}

/// The width of the longest name of a source; 0 where no wanted frame tells one.
pub(crate) fn source_width(database: &Database, decoder: &Decoder) -> usize {
    let kinds = source_kinds(database, decoder);
    let networks = (0..database.networks.len() as u32).map(NetworkId);
    let names = networks.flat_map(|network| (0..=255).map(move |address| source_name(database, network, address)));
    let of_addresses = names.map(|name| name.width()).max().filter(|_| kinds.addresses);
    let of_standard = kinds.standard.then_some(STANDARD_DIGITS.len());
    let of_extended = kinds.extended.then_some(EXTENDED_DIGITS.len());
    [of_addresses, of_standard, of_extended].into_iter().flatten().max().unwrap_or(0)
}

/// The names of sources.
struct Sources {
    /// By network: those of the 256 source addresses.
    addresses: Vec<Vec<String>>,
    standard: Around,
    extended: Around,
    nobody: String,
}

impl Sources {
    fn new(database: &Database, make: impl Fn(&str) -> String) -> Self {
        let networks = (0..database.networks.len() as u32).map(NetworkId);
        let of_network =
            |network| (0..=255).map(|address| make(&source_name(database, network, address))).collect::<Vec<_>>();
        Self {
            addresses: networks.map(of_network).collect(),
            standard: Around::new(&make(STANDARD_DIGITS), STANDARD_DIGITS),
            extended: Around::new(&make(EXTENDED_DIGITS), EXTENDED_DIGITS),
            nobody: make(""),
        }
    }

    fn push(&self, network: NetworkId, source: Option<Source>, to: &mut Vec<u8>) {
        match source {
            None => to.extend_from_slice(self.nobody.as_bytes()),
            Some(Source::Address(address)) => {
                to.extend_from_slice(self.addresses[network.index()][usize::from(address)].as_bytes());
            }
            Some(source @ Source::Identifier { extended, .. }) => {
                let around = if extended { &self.extended } else { &self.standard };
                to.extend_from_slice(around.before.as_bytes());
                write!(to, "{source}").expect("memory takes everything");
                to.extend_from_slice(around.behind.as_bytes());
            }
        }
    }
}

/// Identifiers are too many to have their names ready; each has as many digits as these.
const STANDARD_DIGITS: &str = "0x000";
const EXTENDED_DIGITS: &str = "0x00000000";

/// What stands around an identifier.
struct Around {
    before: String,
    behind: String,
}

impl Around {
    fn new(made: &str, digits: &str) -> Self {
        let (before, behind) = made.split_once(digits).unwrap_or((made, ""));
        Self { before: before.to_owned(), behind: behind.to_owned() }
    }
}

/// The name of the unit behind a source address: the control unit that has it on that network, else `0x0B`.
fn source_name(database: &Database, network: NetworkId, address: u8) -> String {
    let holds = |ecu: &&Ecu| ecu.on.iter().any(|place| place.network == network && place.address == Some(address));
    match database.ecus.iter().find(holds) {
        Some(ecu) => ecu.label.name.clone(),
        None => format!("0x{address:02X}"),
    }
}
