//! What gateways pass on.

use serde::{Deserialize, Serialize};

use crate::{EcuId, FrameId, Nanoseconds, NetworkId, SignalId};

/// One rule by which a gateway passes something from one network to another.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Route {
    /// The gateway.
    pub gateway: EcuId,
    /// What is passed.
    pub what: Passed,
    /// From this network.
    pub from: NetworkId,
    /// To this network.
    pub to: NetworkId,
    /// How often.
    pub pace: Pace,
    /// The longest it may take.
    pub within: Option<Nanoseconds>,
    /// The text of the `##` lines in front of it.
    pub note: Option<String>,
}

/// What a route passes on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Passed {
    /// One described frame; the identifier on the other network is in [`crate::Frame::seen_on`].
    Frame(FrameId),
    /// All CAN identifiers of a run, described or not.
    Identifiers {
        /// The first.
        first: u32,
        /// The last, not below `first`.
        last: u32,
        /// 29 bits instead of 11.
        extended: bool,
    },
    /// Everything but some.
    All {
        /// The frames that stay behind.
        except: Vec<FrameId>,
    },
    /// A signal's value, repacked into another frame.
    Signal {
        /// The frame it comes from.
        from_frame: FrameId,
        /// The signal it comes from.
        from_signal: SignalId,
        /// The frame it goes to.
        to_frame: FrameId,
        /// The signal it goes to.
        to_signal: SignalId,
    },
}

/// How often a route passes something on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Pace {
    /// Each time it arrives.
    Each,
    /// By the gateway's own clock.
    Every(Nanoseconds),
    /// Every n-th one that arrives; n is at least 2.
    Nth(u32),
}
