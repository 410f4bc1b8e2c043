//! Why a frame could not be encoded.

/// Why a frame could not be encoded.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum EncodeError {
    /// There is no such frame in the database.
    #[error("frame number {frame} is not in the description; it has {count}")]
    NoSuchFrame {
        /// The frame's number.
        frame: u32,
        /// How many there are.
        count: usize,
    },
    /// An assignment that is none.
    #[error("cannot understand `{text}`: write SIGNAL=VALUE, such as front_left=62.5 or gear=park")]
    AssignmentText {
        /// The text.
        text: String,
    },
    /// A signal that the frame does not have.
    #[error("frame `{frame}` has no signal `{signal}`; {hint}")]
    NoSuchSignal {
        /// The frame.
        frame: String,
        /// The signal.
        signal: String,
        /// What may have been meant.
        hint: String,
    },
    /// A signal that is given twice.
    #[error("signal `{signal}` is given twice")]
    GivenTwice {
        /// The signal.
        signal: String,
    },
    /// A name that several pages have, and nothing says which page is meant.
    #[error("signal `{signal}` is on several pages; give the selector too ({conditions})")]
    SeveralPages {
        /// The signal.
        signal: String,
        /// When each of them is there.
        conditions: String,
    },
    /// A text that is no value of the signal.
    #[error("`{text}` is no value of signal `{signal}`: {why}")]
    NoValue {
        /// The signal.
        signal: String,
        /// The text.
        text: String,
        /// What is wrong, and what to write.
        why: String,
    },
    /// A unit that the signal's values cannot be given in.
    #[error("signal `{signal}` cannot be given in `{unit}`: {why}")]
    Unit {
        /// The signal.
        signal: String,
        /// The unit.
        unit: String,
        /// What is wrong, and what is possible.
        why: String,
    },
    /// A value that no raw value comes near.
    #[error("signal `{signal}` cannot be {value}: its values reach from {reachable}")]
    OutOfReach {
        /// The signal.
        signal: String,
        /// The value.
        value: String,
        /// The least and the greatest value.
        reachable: String,
    },
    /// A value whose raw value means something else.
    #[error("signal `{signal}` cannot be {value}: the raw value 0x{bits:X} for it says {meaning}")]
    MeansSomethingElse {
        /// The signal.
        signal: String,
        /// The value.
        value: String,
        /// The raw value.
        bits: u64,
        /// What it says.
        meaning: &'static str,
    },
    /// The description has no raw value that says so.
    #[error("signal `{signal}` has no raw value that says {what}; the description would have to name one")]
    NoSuchPattern {
        /// The signal.
        signal: String,
        /// What was to be said.
        what: &'static str,
    },
    /// A sensor curve that rises and falls.
    #[error(
        "signal `{signal}` cannot be given as a value: its curve rises and falls, so several raw values may mean it; give the raw value (0x...)"
    )]
    CurveBothWays {
        /// The signal.
        signal: String,
    },
    /// Something that the signal cannot hold.
    #[error("signal `{signal}` cannot hold {what}: {why}")]
    CannotHold {
        /// The signal.
        signal: String,
        /// What was given.
        what: String,
        /// Why it does not fit.
        why: String,
    },
    /// A checksum over bytes of an identifier that the description does not tell.
    #[error(
        "checksum `{signal}` cannot be calculated: it goes over bytes of the identifier, and the frame has no single one; give its value, such as {signal}=0x5"
    )]
    IdentifierUnknown {
        /// The checksum.
        signal: String,
    },
    /// Signals that are never there together.
    #[error(
        "signals `{one}` and `{other}` are never there together: {one} only when {one_condition}, {other} only when {other_condition}"
    )]
    NeverTogether {
        /// One signal.
        one: String,
        /// When it is there.
        one_condition: String,
        /// The other signal.
        other: String,
        /// When that is there.
        other_condition: String,
    },
    /// A signal whose page the given selectors do not choose.
    #[error(
        "signal `{signal}` is there only when {condition}, and the selector is given otherwise or cannot be set so"
    )]
    NotThere {
        /// The signal.
        signal: String,
        /// When it is there.
        condition: String,
    },
    /// An event-triggered frame of LIN: it has no data of its own.
    #[error("frame `{frame}` has no data of its own: it is answered with {answers}; encode the one that you want")]
    EventTriggered {
        /// The frame.
        frame: String,
        /// The frames that it stands for.
        answers: String,
    },
    /// A frame whose formulas cannot be held exactly.
    #[error(
        "signal `{signal}` cannot be encoded: its curve is too fine for exact fractions of 128 bits; give its points with fewer digits"
    )]
    CurveTooFine {
        /// The signal.
        signal: String,
    },
    /// More bytes than the frame may have.
    #[error("the frame would need {needed} bytes, and it has at most {most}; give a shorter text or fewer bytes")]
    TooLong {
        /// Bytes needed.
        needed: usize,
        /// Bytes it may have.
        most: usize,
    },
    /// More bytes than are put together.
    #[error(
        "the frame would need {needed} bytes, and at most {most} are put together; describe the part that you want to encode as a frame of its own"
    )]
    TooLarge {
        /// Bytes needed.
        needed: usize,
        /// The most that there can be.
        most: usize,
    },
}
