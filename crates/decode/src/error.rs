//! What can keep a decoding session from being set up or from going on.

use std::io;

use wirelore_log::LogError;

/// Why a decoder was not made, or a session did not go on.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum SessionError {
    /// A sensor curve that cannot be kept exactly.
    #[error(
        "cannot prepare signal `{signal}` of frame `{frame}`: a piece of its curve is too fine for exact fractions of 128 bits; give its points with fewer digits"
    )]
    CurveTooFine {
        /// The frame.
        frame: String,
        /// The signal.
        signal: String,
    },
    /// A description with more than a flat table can hold.
    #[error(
        "the description makes a .lorec table of more than 4 GiB, and its lengths have 32 bits; split it into several"
    )]
    TableTooLong,
    /// A formula that cannot be kept exactly in the wanted unit.
    #[error(
        "cannot show signal `{signal}` of frame `{frame}` in {to}: its formula becomes too fine for exact fractions of 128 bits; leave {from} out of the wanted units"
    )]
    UnitTooFine {
        /// The frame.
        frame: String,
        /// The signal.
        signal: String,
        /// The described unit.
        from: String,
        /// The wanted unit.
        to: String,
    },
    /// A choice of signals that chooses none.
    #[error("no signal fits `{pattern}`; {hint}")]
    NoSuchSignal {
        /// The pattern.
        pattern: String,
        /// What may have been meant.
        hint: String,
    },
    /// A choice of signals without any pattern.
    #[error("no signal is chosen: write FRAME.SIGNAL with * and ?, such as 'wheel_speeds.*'")]
    NothingChosen,
    /// A part of the wanted units that is no pair.
    #[error("cannot understand `{part}` among the wanted units: write `imperial`, or pairs like km/h=mph,°C=°F")]
    UnitsText {
        /// The part.
        part: String,
    },
    /// A unit that is not known.
    #[error("cannot convert units: `{unit}` is not a known unit; {hint}")]
    UnknownUnit {
        /// The unit.
        unit: String,
        /// What may have been meant.
        hint: String,
    },
    /// Units of different quantities.
    #[error("cannot convert {from} to {to}: {from} is {from_is} and {to} is {to_is}")]
    UnitsDiffer {
        /// The described unit.
        from: String,
        /// The wanted unit.
        to: String,
        /// What the described one measures.
        from_is: &'static str,
        /// What the wanted one measures.
        to_is: &'static str,
    },
    /// A distance per fuel and a fuel per distance.
    #[error(
        "cannot convert {from} to {to}: one is the reciprocal of the other, and units are converted by a factor and an offset, which keeps every value exact; \
         for {from} ask for another unit of {from_is}"
    )]
    UnitsReciprocal {
        /// The described unit.
        from: String,
        /// The wanted unit.
        to: String,
        /// What the described one measures.
        from_is: &'static str,
    },
    /// One unit with two wanted ones.
    #[error("cannot convert {unit} to two units at once; give it one counterpart")]
    UnitTwice {
        /// The described unit.
        unit: String,
    },
    /// A network that is not described.
    #[error("there is no network `{name}` in the description; {hint}")]
    NoSuchNetwork {
        /// The name.
        name: String,
        /// What may have been meant.
        hint: String,
    },
    /// A part of the binding that is no pair.
    #[error(
        "cannot understand `{part}` in the binding: write CHANNEL=NETWORK, several with commas, such as can0=drive,can1=comfort"
    )]
    BindText {
        /// The part.
        part: String,
    },
    /// One channel with two networks.
    #[error("channel `{channel}` is bound twice; a channel is one network")]
    BoundTwice {
        /// The channel.
        channel: String,
    },
    /// A binding that fits no channel of the log.
    #[error("the binding names no channel of this log: `{channel}` is not there; {hint}")]
    NoSuchChannel {
        /// The first channel that was named.
        channel: String,
        /// Which channels the log has.
        hint: String,
    },
    /// A description without networks that could be decoded.
    #[error(
        "nothing can be decoded: the description has no network of the kind can, can_fd or can_xl, and no other has described frames"
    )]
    NoNetwork,
    /// A channel that could be more than one network, or none for sure.
    #[error(
        "cannot tell which network channel `{channel}` is: {seen}; say it with --bind '{channel}=NETWORK' (networks: {networks})"
    )]
    ChannelUnclear {
        /// The channel's name or number.
        channel: String,
        /// What speaks for which network.
        seen: String,
        /// The networks that come into question.
        networks: String,
    },
    /// Two channels of one log that seem to be the same network.
    #[error(
        "channels `{one}` and `{other}` both look like network `{network}`; a network is one channel: say it with --bind '{bind}'"
    )]
    ChannelsAlike {
        /// The channel that was decided about first.
        one: String,
        /// The other one.
        other: String,
        /// The network.
        network: String,
        /// A binding without the other one, as it can be told.
        bind: String,
    },
    /// A wanted span of time that ends before it begins.
    #[error("--until {until} s is before --from {from} s: nothing is in between")]
    TimesTurned {
        /// The beginning, in seconds.
        from: String,
        /// The end, in seconds.
        until: String,
    },
    /// The log could not be read on.
    #[error(transparent)]
    Log(#[from] LogError),
    /// The receiver of the values failed.
    #[error("cannot pass the decoded values on")]
    Sink(#[source] io::Error),
}
