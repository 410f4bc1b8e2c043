//! The texts of an output that never change, made once.

use unicode_width::UnicodeWidthStr;
use wirelore_decode::{Decoder, Event};
use wirelore_model::{Database, Ecu, FrameId, Grade, Identifier, NetworkId, Signal, SignalId};

use super::snippet::Snippet;

/// What a text is the name of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Part {
    Network,
    Frame,
    /// Who sent a parameter group; empty where the frame does not tell.
    Source,
    Signal,
    /// Empty where there is none. How sure the author is of the signal stands here, so that it costs nothing for each value.
    Unit(Option<Grade>),
}

/// All names, each as the output shows it.
pub(crate) struct Texts {
    networks: Vec<String>,
    frames: Vec<String>,
    /// By network: the 256 source addresses, and none.
    sources: Option<Vec<Vec<String>>>,
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
            sources: has_sources(database).then(|| {
                let networks = (0..database.networks.len() as u32).map(NetworkId);
                let made = networks.map(|network| {
                    let names = (0..=255).map(|address| make(Part::Source, &source_name(database, network, address)));
                    names.chain([make(Part::Source, "")]).collect()
                });
                made.collect()
            }),
            signals: signals.collect(),
        }
    }

    /// Whether there is a text for who sent a frame.
    pub(crate) fn have_sources(&self) -> bool {
        self.sources.is_some()
    }

    /// Appends network, frame and, where the description has parameter groups, source.
    pub(crate) fn push_frame(&self, event: &Event<'_>, to: &mut Vec<u8>) {
        to.extend_from_slice(self.networks[event.network.index()].as_bytes());
        to.extend_from_slice(self.frames[event.frame.index()].as_bytes());
        if let Some(sources) = &self.sources {
            let address = event.source.map_or(256, usize::from);
            to.extend_from_slice(sources[event.network.index()][address].as_bytes());
        }
    }

    /// What stands around the values of a signal.
    pub(crate) fn signal(&self, frame: FrameId, signal: SignalId) -> &SignalText {
        &self.signals[frame.index()][signal.index()]
    }
}

/// Whether some frames are recognised as parameter groups, so that it matters who sent them.
fn has_sources(database: &Database) -> bool {
    let mut appearances = database.frames.iter().flat_map(|frame| &frame.seen_on);
    appearances.any(|appearance| matches!(appearance.identifier, Identifier::Pgn { .. }))
}

/// The width of the longest name of a source; 0 where the description has no parameter groups.
pub(crate) fn source_width(database: &Database) -> usize {
    if !has_sources(database) {
        return 0;
    }
    let networks = (0..database.networks.len() as u32).map(NetworkId);
    let names = networks.flat_map(|network| (0..=255).map(move |address| source_name(database, network, address)));
    names.map(|name| name.width()).max().unwrap_or(0)
}

/// The name of the unit behind a source address: the control unit that has it on that network, else `0x0B`.
fn source_name(database: &Database, network: NetworkId, address: u8) -> String {
    let holds = |ecu: &&Ecu| ecu.on.iter().any(|place| place.network == network && place.address == Some(address));
    match database.ecus.iter().find(holds) {
        Some(ecu) => ecu.label.name.clone(),
        None => format!("0x{address:02X}"),
    }
}
