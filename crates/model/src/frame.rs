//! Frames: how they are recognised, who sends and reads them, when, and which pages they have.

use serde::{Deserialize, Serialize};

use crate::{EcuId, Identifier, Label, Nanoseconds, NetworkId, PageId, RawSpan, RouteId, Signal, SignalId};
use wirelore_bits::Field;

/// One frame of the vehicle, on its own network and wherever a gateway passes it on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Frame {
    /// Name, title and notes.
    pub label: Label,
    /// Where it is seen: first the network it is declared on, then those it is passed on to. Never empty.
    pub seen_on: Vec<Appearance>,
    /// What carries it where it is longer than one frame of its network.
    pub carried: Option<Transport>,
    /// How many payload bytes it has, where that is known.
    pub length: Option<LengthRange>,
    /// Who sends it.
    pub senders: Vec<EcuId>,
    /// Who reads it.
    pub readers: Vec<EcuId>,
    /// When it is sent.
    pub sending: Sending,
    /// Not sent in every vehicle: its absence is not a fault.
    pub optional: bool,
    /// The pages: sets of signals that are there only under a condition. A parent stands before its children.
    pub pages: Vec<Page>,
    /// The signals, in the order of the description.
    pub signals: Vec<Signal>,
    /// Bits that carry something nobody has understood yet.
    pub unknown: Vec<Field>,
    /// Bits that are known to carry nothing.
    pub unused: Vec<Field>,
}

impl Frame {
    /// The signals with this name: more than one only where they are on pages of which none is around another.
    pub fn signals_named<'a>(&'a self, name: &'a str) -> impl Iterator<Item = (SignalId, &'a Signal)> {
        (0..).map(SignalId).zip(&self.signals).filter(move |(_, signal)| signal.label.name == name)
    }

    /// Whether some group of it gives rows, so that one payload may say several things of the same sort.
    #[must_use]
    pub fn gives_rows(&self) -> bool {
        self.pages.iter().any(|page| page.rows_from.is_some())
    }

    /// A page and the pages around it, from the inside out.
    pub fn pages_around(&self, page: Option<PageId>) -> impl Iterator<Item = &Page> {
        self.page_ids_around(page).filter_map(|id| self.pages.get(id.index()))
    }

    /// The same by their numbers.
    pub fn page_ids_around(&self, page: Option<PageId>) -> impl Iterator<Item = PageId> {
        std::iter::successors(page, |id| self.pages.get(id.index())?.parent)
    }

    /// Where the first element begins of the group that gives rows and that the page is, or stands in; `None` where there is none.
    #[must_use]
    pub fn rows_around(&self, page: Option<PageId>) -> Option<u32> {
        self.pages_around(page).find_map(|page| page.rows_from)
    }
}

/// What carries a message that is longer than a frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Transport {
    /// ISO 15765-2.
    IsoTp,
    /// ISO 15765-2 with extended addressing: the first byte of each frame is the address of the target.
    IsoTpExtended,
    /// ISO 15765-2 with mixed addressing: the first byte of each frame is an address extension.
    IsoTpMixed,
    /// The transport protocol of SAE J1939-21; messages of up to 8 bytes come in a frame of their own.
    J1939Tp,
}

impl Transport {
    /// The words of the language, behind `carried by`.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::IsoTp => "iso_tp",
            Self::IsoTpExtended => "iso_tp extended",
            Self::IsoTpMixed => "iso_tp mixed",
            Self::J1939Tp => "j1939_tp",
        }
    }

    /// The longest message in bytes.
    #[must_use]
    pub fn longest_payload(self) -> u32 {
        match self {
            Self::IsoTp | Self::IsoTpExtended | Self::IsoTpMixed => u32::MAX,
            Self::J1939Tp => 1785,
        }
    }

    /// The longest message where the description does not say how long its messages are: for ISO 15765-2 what a first frame announces
    /// without escape.
    #[must_use]
    pub fn usual_most(self) -> u32 {
        self.longest_payload().min(4095)
    }

    /// Whether messages that are recognised like this can be carried so.
    #[must_use]
    pub fn carries(self, identifier: &Identifier) -> bool {
        match self {
            Self::IsoTp | Self::IsoTpExtended | Self::IsoTpMixed => matches!(identifier, Identifier::Can { .. }),
            Self::J1939Tp => matches!(identifier, Identifier::Pgn { .. }),
        }
    }
}

/// A frame on one network.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Appearance {
    /// The network.
    pub network: NetworkId,
    /// How it is recognised there.
    pub identifier: Identifier,
    /// The route that brings it here; `None` on its own network.
    pub via: Option<RouteId>,
}

/// A least and a greatest payload length in bytes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LengthRange {
    /// The least.
    pub min: u32,
    /// The greatest, not below `min`.
    pub max: u32,
}

/// When a frame is sent. All empty: not stated.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sending {
    /// The period, ordinarily.
    pub every: Option<Period>,
    /// Another period that holds under a condition (`every 20 ms while request is 1, else every 200 ms`).
    pub faster: Option<FasterWhile>,
    /// Sent when a value changes.
    pub on_change: bool,
    /// Sent when somebody asks.
    pub on_request: bool,
    /// The least time between two of them.
    pub apart_at_least: Option<Nanoseconds>,
    /// The greatest time between two of them.
    pub apart_at_most: Option<Nanoseconds>,
    /// How far a sending time may be off its period.
    pub jitter: Option<Nanoseconds>,
    /// After this long without one, a reader takes it for lost.
    pub timeout: Option<Nanoseconds>,
}

/// Without a declared timeout a frame counts as missing after so many of its longest periods (common practice, no source).
const PERIODS_UNTIL_MISSING: u64 = 3;

impl Sending {
    /// After this long without one the frame is missing, and what it said last holds no more: the declared timeout, else three of its
    /// longest periods; `None` where neither is stated.
    #[must_use]
    pub fn missing_after(&self) -> Option<Nanoseconds> {
        let periods = || self.every.map(|period| Nanoseconds(period.longest.0.saturating_mul(PERIODS_UNTIL_MISSING)));
        self.timeout.or_else(periods)
    }
}

/// A period, or the limits between which it varies (engine-synchronous frames).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Period {
    /// The shortest; never 0.
    pub shortest: Nanoseconds,
    /// The longest, not below `shortest`.
    pub longest: Nanoseconds,
}

/// A period that holds while a signal has certain values.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FasterWhile {
    /// The period then.
    pub every: Period,
    /// The condition.
    pub test: Test,
}

/// Signals that are there only under a condition.
///
/// Pages that stand beside each other and look at the same selectors form one *switch*. Of a switch at most one page holds: the first
/// whose tests all pass, else its `otherwise` page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Page {
    /// The page that this one is nested in.
    pub parent: Option<PageId>,
    /// Which switch it belongs to; numbers count from 0 in each frame, in the order of appearance.
    pub switch: u32,
    /// What must hold; empty for an `otherwise` page, and for an element that is there wherever the payload reaches so far.
    pub tests: Vec<Test>,
    /// What it is of a group that is there several times; `None`: not that.
    pub element: Option<Element>,
    /// Where it is a group that gives rows: the byte at which its first element begins. From there on one element stands behind the
    /// other, to the end of the payload, and each is read as if it were the only one: the bytes in front of the group, then its own. What
    /// is placed in the group is placed in that. The page holds always and has a switch of its own.
    pub rows_from: Option<u32>,
    /// A period of its own.
    pub every: Option<Period>,
    /// A length of its own. In a group that gives rows: of the bytes in front of the group and one element. Where the two numbers are
    /// the same, the element ends there; else it has at least so many bytes as the least, and as many more as what is described there.
    pub length: Option<LengthRange>,
}

/// The most bytes that may stand in front of a group that gives rows: each row holds them again.
pub const ROWS_FROM_MOST: u32 = 64;

/// A page that is one element of a repeated group: a switch of its own.
///
/// Unlike other pages, an element that is not there is not missed: its tests need not pass, and the payload may end before it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Element {
    /// Which one it is, counted from 1.
    pub number: u32,
    /// How many there can be.
    pub most: u32,
    /// It is there only in payloads of so many bytes and more; 0: the tests alone say whether.
    pub reaches: u32,
}

/// A look at one selector.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Test {
    /// The signal that is looked at: in the frame itself or in a page around.
    pub selector: SignalId,
    /// The values that pass; never empty.
    pub values: Vec<RawSpan>,
}
