//! The one table of rules: name, level and page of each. `check`, `explain`, the docs and the tests all read it from here.

#[cfg(test)]
mod tests;

use crate::Level;

macro_rules! rules {
    ($($variant:ident $name:literal $level:ident,)*) => {
        /// A rule that a description is checked by.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Rule {
            $(
                #[doc = concat!("`", $name, "`: see its page.")]
                $variant,
            )*
        }

        impl Rule {
            /// All rules, in the order of the table.
            pub const ALL: &'static [Self] = &[$(Self::$variant),*];

            /// The name that messages show and `allow` takes.
            #[must_use]
            pub fn name(self) -> &'static str {
                match self {
                    $(Self::$variant => $name,)*
                }
            }

            /// How grave a breach is.
            #[must_use]
            pub fn level(self) -> Level {
                match self {
                    $(Self::$variant => Level::$level,)*
                }
            }

            /// The text of its page.
            fn text(self) -> &'static str {
                match self {
                    $(Self::$variant => include_str!(concat!("../rules/", $name, ".md")),)*
                }
            }
        }
    };
}

rules! {
    UnexpectedCharacter "unexpected-character" Error,
    UnclosedText "unclosed-text" Error,
    BadEscape "bad-escape" Error,
    BadNumber "bad-number" Error,
    LookAlike "look-alike" Hint,
    UnclosedBlock "unclosed-block" Error,
    StrayBrace "stray-brace" Error,
    UnknownStatement "unknown-statement" Error,
    UnknownClause "unknown-clause" Error,
    UnexpectedWord "unexpected-word" Error,
    MissingComma "missing-comma" Error,
    MissingPart "missing-part" Error,
    RepeatedClause "repeated-clause" Error,
    UnitUnclear "unit-unclear" Error,
    NestedTooDeep "nested-too-deep" Error,
    FileTooLarge "file-too-large" Error,
    UnknownEdition "unknown-edition" Error,
    FileNotFound "file-not-found" Error,
    FileNotText "file-not-text" Error,
    UnknownStandard "unknown-standard" Error,
    NameTaken "name-taken" Error,
    NameStyle "name-style" Hint,
    UnknownNetwork "unknown-network" Error,
    UnknownEcu "unknown-ecu" Error,
    UnknownFrame "unknown-frame" Error,
    UnknownSignal "unknown-signal" Error,
    UnknownStates "unknown-states" Error,
    UnknownLayout "unknown-layout" Error,
    UnknownRule "unknown-rule" Error,
    UnknownChecksum "unknown-checksum" Error,
    UnknownUnit "unknown-unit" Error,
    UnitUnusual "unit-unusual" Hint,
    IdTaken "id-taken" Error,
    IdTooLarge "id-too-large" Error,
    IdsUpsideDown "ids-upside-down" Error,
    ExtendedMissing "extended-missing" Error,
    ExtendedNeedless "extended-needless" Warning,
    PgnImpossible "pgn-impossible" Error,
    AddressMissing "address-missing" Error,
    AddressTaken "address-taken" Error,
    PidParity "pid-parity" Error,
    ChecksumKindImpossible "checksum-kind-impossible" Error,
    DiagnosticLength "diagnostic-length" Error,
    StandsForImpossible "stands-for-impossible" Error,
    SenderNotOnNetwork "sender-not-on-network" Error,
    SenderOutOfTurn "sender-out-of-turn" Warning,
    ReaderNotOnNetwork "reader-not-on-network" Error,
    RecognitionDoesNotFit "recognition-does-not-fit" Error,
    TransportDoesNotFit "transport-does-not-fit" Error,
    FrameTooLong "frame-too-long" Error,
    LengthWithoutCode "length-without-code" Error,
    LengthUpsideDown "length-upside-down" Error,
    SlotImpossible "slot-impossible" Error,
    CycleTooShort "cycle-too-short" Error,
    CyclesUneven "cycles-uneven" Warning,
    PeriodOffCycle "period-off-cycle" Warning,
    RateBeyondKind "rate-beyond-kind" Warning,
    DataRateNeedless "data-rate-needless" Error,
    ClauseDoesNotFit "clause-does-not-fit" Error,
    RingPosition "ring-position" Error,
    RingGap "ring-gap" Hint,
    WiringNotOnNetwork "wiring-not-on-network" Error,
    TerminatorCount "terminator-count" Hint,
    LeadsCan "leads-can" Warning,
    TwoCommanders "two-commanders" Error,
    NoCommander "no-commander" Hint,
    EndsUpsideDown "ends-upside-down" Error,
    BitOutOfRange "bit-out-of-range" Error,
    SignalTooWide "signal-too-wide" Error,
    OrderMissing "order-missing" Error,
    OrderContradictsEnds "order-contradicts-ends" Error,
    OrderOddOneOut "order-odd-one-out" Warning,
    OutsideFrame "outside-frame" Error,
    SignalOverlap "signal-overlap" Error,
    LengthUnknown "length-unknown" Error,
    CountingUnknown "counting-unknown" Error,
    ArrayTooLarge "array-too-large" Error,
    StepMissing "step-missing" Error,
    RepeatUnbounded "repeat-unbounded" Error,
    RepeatSize "repeat-size" Error,
    RowsImpossible "rows-impossible" Error,
    KindDoesNotFit "kind-does-not-fit" Error,
    FormulaNotAffine "formula-not-affine" Error,
    FormulaNotExact "formula-not-exact" Error,
    CurveNotRising "curve-not-rising" Error,
    CurveNotMonotone "curve-not-monotone" Hint,
    RangeUnreachable "range-unreachable" Warning,
    RangeUpsideDown "range-upside-down" Error,
    StateOutsideWidth "state-outside-width" Error,
    StateOverlap "state-overlap" Error,
    SpecialOutsideWidth "special-outside-width" Error,
    SpecialTwice "special-twice" Warning,
    CounterTooWide "counter-too-wide" Error,
    CounterStandsStill "counter-stands-still" Error,
    ChecksumCoversItself "checksum-covers-itself" Error,
    ChecksumWidth "checksum-width" Error,
    UnknownProfile "unknown-profile" Error,
    DataIdWrong "data-id-wrong" Error,
    DeltaImpossible "delta-impossible" Error,
    ProtectionPlace "protection-place" Error,
    ProtectionTwice "protection-twice" Error,
    SelectorUnknown "selector-unknown" Error,
    SelectorInBranch "selector-in-branch" Error,
    SelectorValue "selector-value" Error,
    PageTwice "page-twice" Error,
    OtherwiseAlone "otherwise-alone" Error,
    EveryZero "every-zero" Error,
    TimesUpsideDown "times-upside-down" Error,
    ScheduleElsewhere "schedule-elsewhere" Error,
    SlotTooShort "slot-too-short" Error,
    SlotOffBeat "slot-off-beat" Error,
    ScheduleTooFull "schedule-too-full" Error,
    SchedulePeriod "schedule-period" Warning,
    AnswerHasSlot "answer-has-slot" Warning,
    PassWithoutGateway "pass-without-gateway" Error,
    PassFromNowhere "pass-from-nowhere" Error,
    PassToItself "pass-to-itself" Error,
    LayoutCircle "layout-circle" Error,
    StatesUnused "states-unused" Hint,
    LayoutUnused "layout-unused" Hint,
    EcuUnused "ecu-unused" Hint,
    NetworkUnused "network-unused" Hint,
    StillGuessed "still-guessed" Hint,
    AllowQuietsNothing "allow-quiets-nothing" Hint,
}

impl Rule {
    /// The rule of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|rule| rule.name() == name)
    }
    /// Its page.
    #[must_use]
    pub fn page(self) -> Page {
        let text = self.text();
        let behind_title = text.split_once('\n').map_or("", |(_, rest)| rest);
        let (words, examples) = behind_title.split_once("\n## Wrong\n").unwrap_or((behind_title, ""));
        let (wrong, right) = examples.split_once("\n## Right\n").unwrap_or((examples, ""));
        let (summary, body) = words.split_once("\n\n").unwrap_or((words, ""));
        Page { summary: summary.trim(), body: body.trim(), wrong: fenced(wrong), right: fenced(right) }
    }
}

/// What there is to say about a rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Page {
    /// What the rule says, in one sentence.
    pub summary: &'static str,
    /// Why it matters, and what to do.
    pub body: &'static str,
    /// A small description that breaks the rule; empty where none is small enough.
    pub wrong: &'static str,
    /// The same one mended.
    pub right: &'static str,
}

/// The text between the fences of a page's example.
fn fenced(example: &'static str) -> &'static str {
    let behind = example.split_once("```lore\n").map_or("", |(_, behind)| behind);
    behind.split_once("```").map_or("", |(text, _)| text)
}
