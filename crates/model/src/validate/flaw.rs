//! What can be wrong with a description.

use thiserror::Error;

/// A description breaks a promise of one of its types: which item, and which promise.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("the description is not valid: {item}: {flaw}")]
pub struct InvalidDescription {
    item: String,
    flaw: Flaw,
}

impl InvalidDescription {
    pub(crate) fn new(item: String, flaw: Flaw) -> Self {
        Self { item, flaw }
    }

    /// The item, by its kind and name: ``frame `wheel_speeds`, signal `front_left` ``.
    #[must_use]
    pub fn item(&self) -> &str {
        &self.item
    }

    /// What is wrong with it.
    #[must_use]
    pub fn flaw(&self) -> &Flaw {
        &self.flaw
    }
}

/// The promises, by what breaks them.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum Flaw {
    /// A name that is empty or has other characters than letters, digits and `_`.
    #[error("a name is made of letters, digits and `_`, and `{name}` is not; rename it")]
    BadName {
        /// The name.
        name: String,
    },
    /// A name that is not in Unicode's normal form C, so that it may look like another one and differ.
    #[error("names are stored in Unicode normal form C, and `{name}` is not; normalise it")]
    NameNotNormal {
        /// The name.
        name: String,
    },
    /// Two items of one kind with one name.
    #[error("another one has the same name; rename one of them")]
    NameTaken,
    /// Two signals with one name that can be there together.
    #[error("another signal has the same name on the same page or on one around it; rename one of them")]
    SignalNameTaken,
    /// An index behind the end of its list.
    #[error("it refers to {what} number {index} (counted from 0), and there are {count}; correct the reference")]
    NoSuchItem {
        /// What it points to.
        what: &'static str,
        /// The index.
        index: u32,
        /// How long the list is.
        count: usize,
    },
    /// A list that must hold something is empty.
    #[error("it has no {what} and needs at least one")]
    Missing {
        /// What the list is for.
        what: &'static str,
    },
    /// A number that must not be 0.
    #[error("its {what} is 0; leave it out or state it")]
    Zero {
        /// What the number is.
        what: &'static str,
    },
    /// The last of a run lies before its first.
    #[error("the end of its {what} lies before the beginning; swap them")]
    UpsideDown {
        /// What runs.
        what: &'static str,
    },
    /// A number above its limit.
    #[error("its {what} is {value}, and at most {most} is possible there")]
    TooLarge {
        /// What the number is.
        what: &'static str,
        /// The number.
        value: u64,
        /// The limit.
        most: u64,
    },
    /// Something stands twice in a list that is a set.
    #[error("its {what} names the same item twice; remove one")]
    Twice {
        /// The list.
        what: &'static str,
    },
    /// A data-phase bit rate on a network that has no data phase.
    #[error("only CAN FD and CAN XL have a bit rate for the data phase; remove it or change the kind")]
    NoDataPhase,
    /// Cycle and slots on a network that has none.
    #[error("only a FlexRay network has cycles and slots; remove them or change the kind")]
    NoSlots,
    /// Terminators on a network that has none.
    #[error("only networks of CAN and FlexRay have terminators; remove them or change the kind")]
    NoWirePair,
    /// An active star on a network that has none.
    #[error("only a FlexRay network has an active star; remove it or change the kind")]
    NoStar,
    /// A unit that would have to be on the network.
    #[error("its wiring names the unit `{unit}`, which is not on it; put it there or remove it")]
    NotOnNetwork {
        /// The unit's name.
        unit: String,
    },
    /// A payload of FlexRay that is no whole number of words.
    #[error("its static slots have {bytes} bytes, and FlexRay counts words of two bytes; state an even number")]
    OddBytes {
        /// How many bytes.
        bytes: u16,
    },
    /// A place on a ring where there is no ring.
    #[error("it has a ring position on network `{network}`, which is no MOST ring; remove it or change the kind")]
    NoRing {
        /// The network's name.
        network: String,
    },
    /// An identifier on a network whose kind does not have that sort.
    #[error("network `{network}` is of the kind `{kind}`, whose frames are not recognised like this")]
    WrongIdentifier {
        /// The network's name.
        network: String,
        /// The keyword of its kind.
        kind: &'static str,
    },
    /// A transport that does not carry what is recognised like this.
    #[error("on network `{network}` it is recognised by something that is not carried by {transport}")]
    WrongTransport {
        /// The network's name.
        network: String,
        /// The transport.
        transport: &'static str,
    },
    /// A form of messages on a network that has none of its own.
    #[error("only `uart` networks have messages with a form of their own; remove it or change the kind")]
    NoTelegram,
    /// A schedule on a network that is not LIN.
    #[error("network `{network}` is of the kind `{kind}`, and only LIN networks have schedules")]
    NoSchedules {
        /// The network's name.
        network: String,
        /// The keyword of its kind.
        kind: &'static str,
    },
    /// A LIN identifier with a checksum that it cannot have.
    #[error("identifiers from 60 to 63 have the classic checksum")]
    AlwaysClassic,
    /// A repetition that FlexRay does not have.
    #[error(
        "a FlexRay frame cannot be sent every {every} cycles; it can every 1, 2, 4, 5, 8, 10, 16, 20, 32, 40, 50 or 64"
    )]
    NoRepetition {
        /// Every how many cycles.
        every: u8,
    },
    /// A parameter group below PF 240 whose low byte is not 0 (SAE J1939-21).
    #[error("parameter group {pgn} is sent to a destination, so its low byte has to be 0; use {group}", group = pgn & 0x3_FF00)]
    DestinationInPgn {
        /// The number.
        pgn: u32,
    },
    /// Its own network is reached through a route, or another one is not, or the route goes elsewhere.
    #[error("it is seen on network `{network}` {problem}")]
    WrongAppearance {
        /// The network's name.
        network: String,
        /// What is wrong.
        problem: &'static str,
    },
    /// A page that stands before the one it is nested in.
    #[error("it is nested in page {parent}, which does not stand before it; order pages from the outside in")]
    PageOrder {
        /// The page around.
        parent: u32,
    },
    /// A page's switch number leaves a gap, or its switch hangs together in the wrong way.
    #[error("its switch number is {switch}: {problem}")]
    WrongSwitch {
        /// The number.
        switch: u32,
        /// What is wrong.
        problem: &'static str,
    },
    /// A group that cannot give rows.
    #[error("it cannot give rows: {problem}")]
    WrongRows {
        /// What is wrong.
        problem: &'static str,
    },
    /// A condition on a signal that is not there when it is looked at.
    #[error("it depends on signal `{selector}`, which is neither always there nor on a page around it")]
    SelectorOutOfSight {
        /// The signal's name.
        selector: String,
    },
    /// A condition on text or bytes.
    #[error("it depends on signal `{selector}`, which holds no number")]
    SelectorNoNumber {
        /// The signal's name.
        selector: String,
    },
    /// Bits or bytes that the payload cannot have.
    #[error("it reaches byte {byte} of the payload, whose last byte is {last} at most; correct the place or the length", last = i64::from(*bytes) - 1)]
    OutsidePayload {
        /// The byte it reaches, counted from 0.
        byte: u32,
        /// The most bytes that the payload can have.
        bytes: u32,
    },
    /// A number format that this many bits cannot have.
    #[error("{width} bits cannot be read that way: {problem}")]
    WrongWidth {
        /// The width in bits.
        width: u8,
        /// What the format asks for.
        problem: String,
    },
    /// Something that only numbers can have, on text or bytes.
    #[error("it holds text or bytes and cannot have {what}")]
    NumbersOnly {
        /// What it has.
        what: &'static str,
    },
    /// Something that only quantities can have, on a trouble code.
    #[error("it is a trouble code and cannot have {what}")]
    QuantitiesOnly {
        /// What it has.
        what: &'static str,
    },
    /// A value in hexadecimal that is more than its bits.
    #[error("only an unsigned number without formula and unit can be shown in hexadecimal")]
    ShownInHex,
    /// A raw value that the signal's bits cannot have.
    #[error("raw value {value} is outside what its {width} bits can hold; correct the value or the width")]
    RawOutside {
        /// The value as it is written.
        value: String,
        /// The width in bits.
        width: u8,
    },
    /// A pattern that makes no number in the signal's format.
    #[error("the bits {value} make no number in its format")]
    RawNoNumber {
        /// The pattern as it is written.
        value: String,
    },
    /// A run of patterns that is no run of numbers.
    #[error("the raw values {span} are no unbroken run of numbers in its format; write it as two runs")]
    RawBroken {
        /// The run as it is written.
        span: String,
    },
    /// Two state words for one raw value.
    #[error("the words `{one}` and `{other}` stand for the same raw value; correct one of them")]
    WordsOverlap {
        /// The one.
        one: String,
        /// The other.
        other: String,
    },
    /// A sensor curve with fewer than two points or whose raw numbers do not rise.
    #[error("its curve needs at least two points whose raw numbers rise from one to the next")]
    WrongCurve,
    /// A counter or checksum on anything but an unsigned integer.
    #[error("a {what} is an unsigned number, and this is not")]
    NotUnsigned {
        /// Counter or checksum.
        what: &'static str,
    },
    /// A counter that counts nothing.
    #[error("its counter goes from {low} to {high}; the last count has to be above the first")]
    CounterStands {
        /// The first count.
        low: u64,
        /// The last count.
        high: u64,
    },
    /// A checksum over its own bytes.
    #[error("it covers its own byte {byte}; leave that byte out")]
    CoversItself {
        /// The byte, counted from 0.
        byte: u32,
    },
    /// Parameters that make no CRC.
    #[error("its checksum cannot be calculated: {problem}")]
    WrongCrc {
        /// What is wrong.
        problem: String,
    },
    /// A checksum takes in a signal that it cannot.
    #[error("its checksum takes in signal `{signal}`, which is itself, is not there with it, or has more than 8 bits")]
    WrongMixedIn {
        /// The signal's name.
        signal: String,
    },
    /// A protection that cannot be.
    #[error("it cannot protect the frame: {problem}")]
    WrongProtection {
        /// What is wrong.
        problem: &'static str,
    },
}

/// What a check of one item gives.
pub(super) type Checked = Result<(), Flaw>;

/// Says of a flaw which item it is in. The words are only made where there is one.
pub(super) trait At<T> {
    fn at(self, item: impl FnOnce() -> String) -> Result<T, InvalidDescription>;
}

impl<T> At<T> for Result<T, Flaw> {
    fn at(self, item: impl FnOnce() -> String) -> Result<T, InvalidDescription> {
        self.map_err(|flaw| InvalidDescription::new(item(), flaw))
    }
}
