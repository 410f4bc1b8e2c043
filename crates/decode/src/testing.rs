//! Small databases for the tests of this crate, built by hand.

use wirelore_bits::{Affine, BitPosition, Field, NumberKind, Place, Ratio};
use wirelore_model::{
    Appearance, ByteSpan, Charset, Content, Database, Description, Frame, Identifier, Label, LengthRange, Meaning,
    Network, NetworkId, NetworkKind, Page, PageId, RawSpan, RawValue, Role, Scaling, Sending, Shown, Signal, SignalId,
    StateWord, States, Test, Unit, ValueRange,
};

/// An exact number: a decimal, or a quotient of two.
pub(crate) fn ratio(text: &str) -> Ratio {
    match text.split_once('/') {
        Some((n, d)) => ratio(n).checked_div(&ratio(d)).expect("a quotient"),
        None => Ratio::from_decimal(text).expect("a decimal number"),
    }
}

/// `bits MSB..LSB`, written as in the language.
pub(crate) fn bits(place: &str) -> Field {
    let pieces: Vec<Place> = place
        .split(" then ")
        .map(|piece| {
            let (msb, lsb) = piece.split_once("..").unwrap_or((piece, piece));
            let end = |text: &str| text.parse::<BitPosition>().expect("BYTE.BIT");
            Place::between(end(msb), end(lsb)).expect("a place")
        })
        .collect();
    Field::of(&pieces).expect("a field")
}

/// A signal of a number.
pub(crate) fn number(name: &str, place: &str, kind: NumberKind) -> Signal {
    Signal {
        label: Label::named(name),
        page: None,
        content: Content::Number { field: bits(place), kind },
        scaling: Scaling::Raw,
        unit: None,
        states: None,
        range: None,
        absent: Vec::new(),
        fault: Vec::new(),
        role: Role::Value,
        shown: Shown::Decimal,
    }
}

/// A plain number.
pub(crate) fn unsigned(name: &str, place: &str) -> Signal {
    number(name, place, NumberKind::Unsigned)
}

/// A signal of text; `last` of `None` goes to the end.
pub(crate) fn text(name: &str, first: u32, last: Option<u32>, charset: Charset) -> Signal {
    let content = Content::Text { bytes: ByteSpan { first, last }, charset, size: None };
    Signal { content, ..unsigned(name, "0.0") }
}

/// A signal of bytes; `last` of `None` goes to the end.
pub(crate) fn raw_bytes(name: &str, first: u32, last: Option<u32>) -> Signal {
    Signal { content: Content::Bytes { bytes: ByteSpan { first, last }, size: None }, ..unsigned(name, "0.0") }
}

/// What tests add to a signal.
pub(crate) trait With: Sized {
    fn scaled(self, factor: &str, offset: &str, unit: &str) -> Self;
    fn in_range(self, low: &str, high: &str) -> Self;
    fn absent(self, spans: &[RawSpan]) -> Self;
    fn fault(self, spans: &[RawSpan]) -> Self;
    fn words(self, words: &[(i64, i64, &str, Meaning)]) -> Self;
    fn role(self, role: Role) -> Self;
    fn on_page(self, page: u32) -> Self;
}

impl With for Signal {
    fn scaled(self, factor: &str, offset: &str, unit: &str) -> Self {
        let formula = Affine::new(ratio(factor), ratio(offset)).expect("a formula");
        let unit = Unit::known(unit).or(Some(Unit::Text(unit.to_owned())));
        Self { scaling: Scaling::Affine(formula), unit, ..self }
    }

    fn in_range(self, low: &str, high: &str) -> Self {
        Self { range: Some(Box::new(ValueRange { low: ratio(low), high: ratio(high) })), ..self }
    }

    fn absent(self, spans: &[RawSpan]) -> Self {
        Self { absent: spans.to_vec(), ..self }
    }

    fn fault(self, spans: &[RawSpan]) -> Self {
        Self { fault: spans.to_vec(), ..self }
    }

    fn words(self, words: &[(i64, i64, &str, Meaning)]) -> Self {
        let words = words.iter().map(|&(first, last, word, meaning)| StateWord {
            values: span(first, last),
            word: word.to_owned(),
            title: None,
            meaning,
        });
        Self { states: Some(States::Own(words.collect())), ..self }
    }

    fn role(self, role: Role) -> Self {
        Self { role, ..self }
    }

    fn on_page(self, page: u32) -> Self {
        Self { page: Some(PageId(page)), ..self }
    }
}

/// Raw numbers from `first` to `last`.
pub(crate) fn span(first: i64, last: i64) -> RawSpan {
    RawSpan { first: RawValue::Number(first), last: RawValue::Number(last) }
}

/// Patterns of bits from `first` to `last`.
pub(crate) fn pattern(first: u64, last: u64) -> RawSpan {
    RawSpan { first: RawValue::Bits(first), last: RawValue::Bits(last) }
}

/// A page of a switch.
pub(crate) fn page(parent: Option<u32>, switch: u32, tests: &[(u32, &[RawSpan])]) -> Page {
    let test = |&(selector, values): &(u32, &[RawSpan])| Test { selector: SignalId(selector), values: values.to_vec() };
    Page {
        parent: parent.map(PageId),
        switch,
        tests: tests.iter().map(test).collect(),
        element: None,
        rows_from: None,
        every: None,
        length: None,
    }
}

/// A frame on the first network.
pub(crate) fn frame(name: &str, identifier: Identifier, signals: Vec<Signal>) -> Frame {
    Frame {
        label: Label::named(name),
        seen_on: vec![Appearance { network: NetworkId(0), identifier, via: None }],
        carried: None,
        length: None,
        senders: Vec::new(),
        readers: Vec::new(),
        sending: Sending::default(),
        optional: false,
        pages: Vec::new(),
        signals,
        unknown: Vec::new(),
        unused: Vec::new(),
    }
}

/// An exact identifier.
pub(crate) fn id(id: u32) -> Identifier {
    Identifier::Can { first: id, last: id, extended: id > 0x7FF }
}

/// A parameter group from any source.
pub(crate) fn pgn(pgn: u32) -> Identifier {
    Identifier::Pgn { pgn, sources: Vec::new(), priority: None }
}

/// A length.
pub(crate) fn length(min: u32, max: u32) -> Option<LengthRange> {
    Some(LengthRange { min, max })
}

/// A network.
pub(crate) fn network(name: &str, kind: NetworkKind) -> Network {
    Network {
        label: Label::named(name),
        kind,
        rate: None,
        data_rate: None,
        telegram: None,
        flexray: None,
        terminators: Vec::new(),
        star: None,
    }
}

/// A database of these networks and frames.
pub(crate) fn database(networks: Vec<Network>, frames: Vec<Frame>) -> Database {
    let description = Description { networks, frames, ..Description::default() };
    Database::new(description).expect("a good description")
}

/// A database of one CAN network and one frame.
pub(crate) fn one_frame(frame: Frame) -> Database {
    database(vec![network("drive", NetworkKind::Can)], vec![frame])
}

/// A database of one CAN FD network and one frame.
pub(crate) fn one_fd_frame(frame: Frame) -> Database {
    database(vec![network("drive", NetworkKind::CanFd)], vec![frame])
}
