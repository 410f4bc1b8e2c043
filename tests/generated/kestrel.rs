// Written by wirelore out of the description of kestrel. Change the description, not this file.
//
// Fields hold what the bits say, methods of the same name what they mean. Needs wirelore-bits; no std, no
// allocation.
//
// Caution: frames sent into a live vehicle can move it, start it or fire airbags. Send on the bench only.

use wirelore_bits::typed;

/// `pressed`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum Pressed {
    /// Released (0).
    Released,
    /// Pressed (1).
    Pressed,
    /// Implausible (2).
    Implausible,
    /// Unknown (3).
    Unknown,
    /// A raw number without a word.
    Other(u8),
}

impl Pressed {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Released,
            1 => Self::Pressed,
            2 => Self::Implausible,
            3 => Self::Unknown,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Released => 0,
            Self::Pressed => 1,
            Self::Implausible => 2,
            Self::Unknown => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Released => Some("released"),
            Self::Pressed => Some("pressed"),
            Self::Implausible => Some("implausible"),
            Self::Unknown => Some("unknown"),
            Self::Other(_) => None,
        }
    }
}

/// `yes_no`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum YesNo {
    /// No (0).
    No,
    /// Yes (1).
    Yes,
    /// A raw number without a word.
    Other(u8),
}

impl YesNo {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::No,
            1 => Self::Yes,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::No => 0,
            Self::Yes => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::No => Some("no"),
            Self::Yes => Some("yes"),
            Self::Other(_) => None,
        }
    }
}

/// State of a control function.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ControlState {
    /// Ready (0).
    Ready,
    /// Active (1).
    Active,
    /// Switched off (2).
    Off,
    /// Faulty (3).
    Faulty,
    /// A raw number without a word.
    Other(u8),
}

impl ControlState {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Ready,
            1 => Self::Active,
            2 => Self::Off,
            3 => Self::Faulty,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Ready => 0,
            Self::Active => 1,
            Self::Off => 2,
            Self::Faulty => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Ready => Some("ready"),
            Self::Active => Some("active"),
            Self::Off => Some("off"),
            Self::Faulty => Some("faulty"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ParkBrakeStateState {
    /// Released (0).
    Released,
    /// Applied (1).
    Applied,
    /// Applying (2).
    Applying,
    /// Releasing (3).
    Releasing,
    /// Faulty (7).
    Faulty,
    /// A raw number without a word.
    Other(u8),
}

impl ParkBrakeStateState {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Released,
            1 => Self::Applied,
            2 => Self::Applying,
            3 => Self::Releasing,
            7 => Self::Faulty,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Released => 0,
            Self::Applied => 1,
            Self::Applying => 2,
            Self::Releasing => 3,
            Self::Faulty => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Released => Some("released"),
            Self::Applied => Some("applied"),
            Self::Applying => Some("applying"),
            Self::Releasing => Some("releasing"),
            Self::Faulty => Some("faulty"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ParkBrakeStateSwitch {
    /// At rest (0).
    Rest,
    /// Pulled (1).
    Pull,
    /// Pushed (2).
    Push,
    /// Implausible (3).
    Implausible,
    /// A raw number without a word.
    Other(u8),
}

impl ParkBrakeStateSwitch {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Rest,
            1 => Self::Pull,
            2 => Self::Push,
            3 => Self::Implausible,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Rest => 0,
            Self::Pull => 1,
            Self::Push => 2,
            Self::Implausible => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Rest => Some("rest"),
            Self::Pull => Some("pull"),
            Self::Push => Some("push"),
            Self::Implausible => Some("implausible"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum BeltsDriverBelt {
    /// Open (0).
    Open,
    /// Closed (1).
    Closed,
    /// Faulty (2).
    Faulty,
    /// Unknown (3).
    Unknown,
    /// A raw number without a word.
    Other(u8),
}

impl BeltsDriverBelt {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Open,
            1 => Self::Closed,
            2 => Self::Faulty,
            3 => Self::Unknown,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Open => 0,
            Self::Closed => 1,
            Self::Faulty => 2,
            Self::Unknown => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Open => Some("open"),
            Self::Closed => Some("closed"),
            Self::Faulty => Some("faulty"),
            Self::Unknown => Some("unknown"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum BeltsPassengerSeat {
    /// Empty (0).
    Empty,
    /// Occupied (1).
    Occupied,
    /// Faulty (2).
    Faulty,
    /// Unknown (3).
    Unknown,
    /// A raw number without a word.
    Other(u8),
}

impl BeltsPassengerSeat {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Empty,
            1 => Self::Occupied,
            2 => Self::Faulty,
            3 => Self::Unknown,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Empty => 0,
            Self::Occupied => 1,
            Self::Faulty => 2,
            Self::Unknown => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Empty => Some("empty"),
            Self::Occupied => Some("occupied"),
            Self::Faulty => Some("faulty"),
            Self::Unknown => Some("unknown"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum BeltsWarningLamp {
    /// Off (0).
    Off,
    /// On (1).
    On,
    /// Flashing (2).
    Flashing,
    /// A raw number without a word.
    Other(u8),
}

impl BeltsWarningLamp {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::On,
            2 => Self::Flashing,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::On => 1,
            Self::Flashing => 2,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::On => Some("on"),
            Self::Flashing => Some("flashing"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineStateRunState {
    /// Stopped (0).
    Stopped,
    /// Cranking (1).
    Cranking,
    /// Running (2).
    Running,
    /// Running down (3).
    RunningDown,
    /// Unknown (7).
    Unknown,
    /// A raw number without a word.
    Other(u8),
}

impl EngineStateRunState {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Stopped,
            1 => Self::Cranking,
            2 => Self::Running,
            3 => Self::RunningDown,
            7 => Self::Unknown,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Stopped => 0,
            Self::Cranking => 1,
            Self::Running => 2,
            Self::RunningDown => 3,
            Self::Unknown => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Stopped => Some("stopped"),
            Self::Cranking => Some("cranking"),
            Self::Running => Some("running"),
            Self::RunningDown => Some("running_down"),
            Self::Unknown => Some("unknown"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineTorqueAnswer {
    /// Nothing asked (0).
    None,
    /// Granted (1).
    Granted,
    /// Granted in part (2).
    Partly,
    /// Refused (3).
    Refused,
    /// A raw number without a word.
    Other(u8),
}

impl EngineTorqueAnswer {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::Granted,
            2 => Self::Partly,
            3 => Self::Refused,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Granted => 1,
            Self::Partly => 2,
            Self::Refused => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Granted => Some("granted"),
            Self::Partly => Some("partly"),
            Self::Refused => Some("refused"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineTorqueLimitedBy {
    /// Nothing (0).
    Nothing,
    /// Smoke (1).
    Smoke,
    /// Heat (2).
    Heat,
    /// Top speed (3).
    Speed,
    /// Gearbox (4).
    Gearbox,
    /// A raw number without a word.
    Other(u8),
}

impl EngineTorqueLimitedBy {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Nothing,
            1 => Self::Smoke,
            2 => Self::Heat,
            3 => Self::Speed,
            4 => Self::Gearbox,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Nothing => 0,
            Self::Smoke => 1,
            Self::Heat => 2,
            Self::Speed => 3,
            Self::Gearbox => 4,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Nothing => Some("nothing"),
            Self::Smoke => Some("smoke"),
            Self::Heat => Some("heat"),
            Self::Speed => Some("speed"),
            Self::Gearbox => Some("gearbox"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ShiftRequestIntervention {
    /// None (0).
    None,
    /// Reduce torque (1).
    Reduce,
    /// Raise torque (2).
    Raise,
    /// Implausible (3).
    Implausible,
    /// A raw number without a word.
    Other(u8),
}

impl ShiftRequestIntervention {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::Reduce,
            2 => Self::Raise,
            3 => Self::Implausible,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Reduce => 1,
            Self::Raise => 2,
            Self::Implausible => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Reduce => Some("reduce"),
            Self::Raise => Some("raise"),
            Self::Implausible => Some("implausible"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ShiftRequestConverter {
    /// Open (0).
    Open,
    /// Slipping (1).
    Slipping,
    /// Locked (2).
    Locked,
    /// A raw number without a word.
    Other(u8),
}

impl ShiftRequestConverter {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Open,
            1 => Self::Slipping,
            2 => Self::Locked,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Open => 0,
            Self::Slipping => 1,
            Self::Locked => 2,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Open => Some("open"),
            Self::Slipping => Some("slipping"),
            Self::Locked => Some("locked"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ShiftRequestPhase {
    /// None (0).
    None,
    /// Filling the clutch (1).
    Filling,
    /// Torque phase (2).
    Torque,
    /// Ratio changes (3).
    Ratio,
    /// Closing (4).
    Closing,
    /// A raw number without a word.
    Other(u8),
}

impl ShiftRequestPhase {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::Filling,
            2 => Self::Torque,
            3 => Self::Ratio,
            4 => Self::Closing,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Filling => 1,
            Self::Torque => 2,
            Self::Ratio => 3,
            Self::Closing => 4,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Filling => Some("filling"),
            Self::Torque => Some("torque"),
            Self::Ratio => Some("ratio"),
            Self::Closing => Some("closing"),
            Self::Other(_) => None,
        }
    }
}

/// Gears.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum GearPosition {
    /// Park (0).
    Park,
    /// Reverse (1).
    Reverse,
    /// Neutral (2).
    Neutral,
    /// 1st gear (3).
    First,
    /// 2nd gear (4).
    Second,
    /// 3rd gear (5).
    Third,
    /// 4th gear (6).
    Fourth,
    /// 5th gear (7).
    Fifth,
    /// 6th gear (8).
    Sixth,
    /// Between two gears (15).
    Unknown,
    /// A raw number without a word.
    Other(u8),
}

impl GearPosition {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Park,
            1 => Self::Reverse,
            2 => Self::Neutral,
            3 => Self::First,
            4 => Self::Second,
            5 => Self::Third,
            6 => Self::Fourth,
            7 => Self::Fifth,
            8 => Self::Sixth,
            15 => Self::Unknown,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Park => 0,
            Self::Reverse => 1,
            Self::Neutral => 2,
            Self::First => 3,
            Self::Second => 4,
            Self::Third => 5,
            Self::Fourth => 6,
            Self::Fifth => 7,
            Self::Sixth => 8,
            Self::Unknown => 15,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Park => Some("park"),
            Self::Reverse => Some("reverse"),
            Self::Neutral => Some("neutral"),
            Self::First => Some("first"),
            Self::Second => Some("second"),
            Self::Third => Some("third"),
            Self::Fourth => Some("fourth"),
            Self::Fifth => Some("fifth"),
            Self::Sixth => Some("sixth"),
            Self::Unknown => Some("unknown"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SelectorLeverPosition {
    /// P (0).
    Park,
    /// R (1).
    Reverse,
    /// N (2).
    Neutral,
    /// D (3).
    Drive,
    /// M (4).
    Manual,
    /// Between two positions (15).
    Unknown,
    /// A raw number without a word.
    Other(u8),
}

impl SelectorLeverPosition {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Park,
            1 => Self::Reverse,
            2 => Self::Neutral,
            3 => Self::Drive,
            4 => Self::Manual,
            15 => Self::Unknown,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Park => 0,
            Self::Reverse => 1,
            Self::Neutral => 2,
            Self::Drive => 3,
            Self::Manual => 4,
            Self::Unknown => 15,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Park => Some("park"),
            Self::Reverse => Some("reverse"),
            Self::Neutral => Some("neutral"),
            Self::Drive => Some("drive"),
            Self::Manual => Some("manual"),
            Self::Unknown => Some("unknown"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SelectorLeverParkLock {
    /// Open (0).
    Open,
    /// Locked (1).
    Locked,
    /// A raw number without a word.
    Other(u8),
}

impl SelectorLeverParkLock {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Open,
            1 => Self::Locked,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Open => 0,
            Self::Locked => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Open => Some("open"),
            Self::Locked => Some("locked"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineIdentityPage {
    /// Part number, beginning (0).
    PartNumber1,
    /// Part number, end (1).
    PartNumber2,
    /// Software (2).
    Software,
    /// Serial number (3).
    Serial,
    /// A raw number without a word.
    Other(u8),
}

impl EngineIdentityPage {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::PartNumber1,
            1 => Self::PartNumber2,
            2 => Self::Software,
            3 => Self::Serial,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::PartNumber1 => 0,
            Self::PartNumber2 => 1,
            Self::Software => 2,
            Self::Serial => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::PartNumber1 => Some("part_number_1"),
            Self::PartNumber2 => Some("part_number_2"),
            Self::Software => Some("software"),
            Self::Serial => Some("serial"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ExhaustRegeneration {
    /// None (0).
    None,
    /// Wanted (1).
    Wanted,
    /// Running (2).
    Running,
    /// Held back (3).
    HeldBack,
    /// Unknown (7).
    Unknown,
    /// A raw number without a word.
    Other(u8),
}

impl ExhaustRegeneration {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::Wanted,
            2 => Self::Running,
            3 => Self::HeldBack,
            7 => Self::Unknown,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Wanted => 1,
            Self::Running => 2,
            Self::HeldBack => 3,
            Self::Unknown => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Wanted => Some("wanted"),
            Self::Running => Some("running"),
            Self::HeldBack => Some("held_back"),
            Self::Unknown => Some("unknown"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum CruiseState {
    /// Off (0).
    Off,
    /// Ready (1).
    Ready,
    /// Holds the speed (2).
    Holding,
    /// Limits the speed (3).
    Limiting,
    /// Overridden by the driver (4).
    Overridden,
    /// Faulty (7).
    Faulty,
    /// A raw number without a word.
    Other(u8),
}

impl CruiseState {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::Ready,
            2 => Self::Holding,
            3 => Self::Limiting,
            4 => Self::Overridden,
            7 => Self::Faulty,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::Ready => 1,
            Self::Holding => 2,
            Self::Limiting => 3,
            Self::Overridden => 4,
            Self::Faulty => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::Ready => Some("ready"),
            Self::Holding => Some("holding"),
            Self::Limiting => Some("limiting"),
            Self::Overridden => Some("overridden"),
            Self::Faulty => Some("faulty"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum CruiseButton {
    /// None (0).
    None,
    /// Set (1).
    Set,
    /// Resume (2).
    Resume,
    /// Faster (3).
    Faster,
    /// Slower (4).
    Slower,
    /// Cancel (5).
    Cancel,
    /// A raw number without a word.
    Other(u8),
}

impl CruiseButton {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::Set,
            2 => Self::Resume,
            3 => Self::Faster,
            4 => Self::Slower,
            5 => Self::Cancel,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Set => 1,
            Self::Resume => 2,
            Self::Faster => 3,
            Self::Slower => 4,
            Self::Cancel => 5,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Set => Some("set"),
            Self::Resume => Some("resume"),
            Self::Faster => Some("faster"),
            Self::Slower => Some("slower"),
            Self::Cancel => Some("cancel"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum KeyStateKey {
    /// Out (0).
    Out,
    /// Accessory (1).
    Accessory,
    /// Ignition (2).
    Ignition,
    /// Start (3).
    Start,
    /// Unknown (15).
    Unknown,
    /// A raw number without a word.
    Other(u8),
}

impl KeyStateKey {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Out,
            1 => Self::Accessory,
            2 => Self::Ignition,
            3 => Self::Start,
            15 => Self::Unknown,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Out => 0,
            Self::Accessory => 1,
            Self::Ignition => 2,
            Self::Start => 3,
            Self::Unknown => 15,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Out => Some("out"),
            Self::Accessory => Some("accessory"),
            Self::Ignition => Some("ignition"),
            Self::Start => Some("start"),
            Self::Unknown => Some("unknown"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum KeyStateWokenBy {
    /// Key (0).
    Key,
    /// Door (1).
    Door,
    /// Remote control (2).
    Remote,
    /// Network (3).
    Network,
    /// Timer (4).
    Timer,
    /// A raw number without a word.
    Other(u8),
}

impl KeyStateWokenBy {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Key,
            1 => Self::Door,
            2 => Self::Remote,
            3 => Self::Network,
            4 => Self::Timer,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Key => 0,
            Self::Door => 1,
            Self::Remote => 2,
            Self::Network => 3,
            Self::Timer => 4,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Key => Some("key"),
            Self::Door => Some("door"),
            Self::Remote => Some("remote"),
            Self::Network => Some("network"),
            Self::Timer => Some("timer"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum StalksIndicator {
    /// Middle (0).
    Middle,
    /// Left (1).
    Left,
    /// Right (2).
    Right,
    /// Implausible (3).
    Implausible,
    /// A raw number without a word.
    Other(u8),
}

impl StalksIndicator {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Middle,
            1 => Self::Left,
            2 => Self::Right,
            3 => Self::Implausible,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Middle => 0,
            Self::Left => 1,
            Self::Right => 2,
            Self::Implausible => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Middle => Some("middle"),
            Self::Left => Some("left"),
            Self::Right => Some("right"),
            Self::Implausible => Some("implausible"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum StalksWiper {
    /// Off (0).
    Off,
    /// Interval (1).
    Interval,
    /// Slow (2).
    Slow,
    /// Fast (3).
    Fast,
    /// One wipe (4).
    Once,
    /// Implausible (7).
    Implausible,
    /// A raw number without a word.
    Other(u8),
}

impl StalksWiper {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::Interval,
            2 => Self::Slow,
            3 => Self::Fast,
            4 => Self::Once,
            7 => Self::Implausible,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::Interval => 1,
            Self::Slow => 2,
            Self::Fast => 3,
            Self::Once => 4,
            Self::Implausible => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::Interval => Some("interval"),
            Self::Slow => Some("slow"),
            Self::Fast => Some("fast"),
            Self::Once => Some("once"),
            Self::Implausible => Some("implausible"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum StalksWheelButton {
    /// None (0).
    None,
    /// Up (1).
    Up,
    /// Down (2).
    Down,
    /// Louder (3).
    Louder,
    /// Quieter (4).
    Quieter,
    /// Phone (5).
    Phone,
    /// A raw number without a word.
    Other(u8),
}

impl StalksWheelButton {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::Up,
            2 => Self::Down,
            3 => Self::Louder,
            4 => Self::Quieter,
            5 => Self::Phone,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Up => 1,
            Self::Down => 2,
            Self::Louder => 3,
            Self::Quieter => 4,
            Self::Phone => 5,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Up => Some("up"),
            Self::Down => Some("down"),
            Self::Louder => Some("louder"),
            Self::Quieter => Some("quieter"),
            Self::Phone => Some("phone"),
            Self::Other(_) => None,
        }
    }
}

/// A door.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum Door {
    /// Closed (0).
    Closed,
    /// Open (1).
    Open,
    /// A raw number without a word.
    Other(u8),
}

impl Door {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Closed,
            1 => Self::Open,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Closed => 0,
            Self::Open => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Closed => Some("closed"),
            Self::Open => Some("open"),
            Self::Other(_) => None,
        }
    }
}

/// A lock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum Lock {
    /// Unlocked (0).
    Unlocked,
    /// Locked (1).
    Locked,
    /// Locked, handles off (2).
    DoubleLocked,
    /// Unknown (3).
    Unknown,
    /// A raw number without a word.
    Other(u8),
}

impl Lock {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Unlocked,
            1 => Self::Locked,
            2 => Self::DoubleLocked,
            3 => Self::Unknown,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Unlocked => 0,
            Self::Locked => 1,
            Self::DoubleLocked => 2,
            Self::Unknown => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Unlocked => Some("unlocked"),
            Self::Locked => Some("locked"),
            Self::DoubleLocked => Some("double_locked"),
            Self::Unknown => Some("unknown"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum DoorsLockedBy {
    /// Nobody (0).
    Nobody,
    /// Remote control (1).
    Remote,
    /// Switch in the cab (2).
    Switch,
    /// By itself, with speed (3).
    Speed,
    /// Crash line (4).
    Crash,
    /// A raw number without a word.
    Other(u8),
}

impl DoorsLockedBy {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Nobody,
            1 => Self::Remote,
            2 => Self::Switch,
            3 => Self::Speed,
            4 => Self::Crash,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Nobody => 0,
            Self::Remote => 1,
            Self::Switch => 2,
            Self::Speed => 3,
            Self::Crash => 4,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Nobody => Some("nobody"),
            Self::Remote => Some("remote"),
            Self::Switch => Some("switch"),
            Self::Speed => Some("speed"),
            Self::Crash => Some("crash"),
            Self::Other(_) => None,
        }
    }
}

/// A lamp.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum Lamp {
    /// Dark (0).
    Dark,
    /// Lit (1).
    Lit,
    /// A raw number without a word.
    Other(u8),
}

impl Lamp {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Dark,
            1 => Self::Lit,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Dark => 0,
            Self::Lit => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Dark => Some("dark"),
            Self::Lit => Some("lit"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum LightsBroken {
    /// None (0).
    None,
    /// A raw number without a word.
    Other(u8),
}

impl LightsBroken {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum WipersMotion {
    /// Parked (0).
    Parked,
    /// On its way up (1).
    Up,
    /// On its way down (2).
    Down,
    /// Blocked (3).
    Blocked,
    /// A raw number without a word.
    Other(u8),
}

impl WipersMotion {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Parked,
            1 => Self::Up,
            2 => Self::Down,
            3 => Self::Blocked,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Parked => 0,
            Self::Up => 1,
            Self::Down => 2,
            Self::Blocked => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Parked => Some("parked"),
            Self::Up => Some("up"),
            Self::Down => Some("down"),
            Self::Blocked => Some("blocked"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum WipersSpeed {
    /// Off (0).
    Off,
    /// Interval (1).
    Interval,
    /// Slow (2).
    Slow,
    /// Fast (3).
    Fast,
    /// A raw number without a word.
    Other(u8),
}

impl WipersSpeed {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::Interval,
            2 => Self::Slow,
            3 => Self::Fast,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::Interval => 1,
            Self::Slow => 2,
            Self::Fast => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::Interval => Some("interval"),
            Self::Slow => Some("slow"),
            Self::Fast => Some("fast"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum MirrorsSide {
    /// None (0).
    None,
    /// Left (1).
    Left,
    /// Right (2).
    Right,
    /// Both (3).
    Both,
    /// A raw number without a word.
    Other(u8),
}

impl MirrorsSide {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::Left,
            2 => Self::Right,
            3 => Self::Both,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Left => 1,
            Self::Right => 2,
            Self::Both => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Left => Some("left"),
            Self::Right => Some("right"),
            Self::Both => Some("both"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ClimateStateCompressor {
    /// Off (0).
    Off,
    /// On (1).
    On,
    /// A raw number without a word.
    Other(u8),
}

impl ClimateStateCompressor {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::On,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::On => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::On => Some("on"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ClimateStateFlap {
    /// Windscreen (0).
    Windscreen,
    /// Face (1).
    Face,
    /// Feet (2).
    Feet,
    /// Face and feet (3).
    FaceAndFeet,
    /// Closed (4).
    Closed,
    /// A raw number without a word.
    Other(u8),
}

impl ClimateStateFlap {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Windscreen,
            1 => Self::Face,
            2 => Self::Feet,
            3 => Self::FaceAndFeet,
            4 => Self::Closed,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Windscreen => 0,
            Self::Face => 1,
            Self::Feet => 2,
            Self::FaceAndFeet => 3,
            Self::Closed => 4,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Windscreen => Some("windscreen"),
            Self::Face => Some("face"),
            Self::Feet => Some("feet"),
            Self::FaceAndFeet => Some("face_and_feet"),
            Self::Closed => Some("closed"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SeatLeftStateHeaterStep {
    /// Off (0).
    Off,
    /// Low (1).
    Low,
    /// Medium (2).
    Medium,
    /// High (3).
    High,
    /// A raw number without a word.
    Other(u8),
}

impl SeatLeftStateHeaterStep {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::Low,
            2 => Self::Medium,
            3 => Self::High,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::Low => 1,
            Self::Medium => 2,
            Self::High => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::Low => Some("low"),
            Self::Medium => Some("medium"),
            Self::High => Some("high"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TrailerStateLampsWorking {
    /// All (0x7F).
    All,
    /// A raw number without a word.
    Other(u8),
}

impl TrailerStateLampsWorking {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            127 => Self::All,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::All => 127,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::All => Some("all"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum AwakeCallAsks {
    /// Nothing (0).
    Nothing,
    /// Stay awake (1).
    StayAwake,
    /// May sleep (2).
    MaySleep,
    /// A raw number without a word.
    Other(u8),
}

impl AwakeCallAsks {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Nothing,
            1 => Self::StayAwake,
            2 => Self::MaySleep,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Nothing => 0,
            Self::StayAwake => 1,
            Self::MaySleep => 2,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Nothing => Some("nothing"),
            Self::StayAwake => Some("stay_awake"),
            Self::MaySleep => Some("may_sleep"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum LanePictureLeftKind {
    /// None (0).
    None,
    /// Solid (1).
    Solid,
    /// Broken (2).
    Broken,
    /// Kerb (3).
    Kerb,
    /// A raw number without a word.
    Other(u8),
}

impl LanePictureLeftKind {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::Solid,
            2 => Self::Broken,
            3 => Self::Kerb,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Solid => 1,
            Self::Broken => 2,
            Self::Kerb => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Solid => Some("solid"),
            Self::Broken => Some("broken"),
            Self::Kerb => Some("kerb"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ObjectsFirstKind {
    /// Unknown (0).
    Unknown,
    /// Car (1).
    Car,
    /// Lorry (2).
    Lorry,
    /// Two-wheeler (3).
    TwoWheeler,
    /// Pedestrian (4).
    Pedestrian,
    /// A raw number without a word.
    Other(u8),
}

impl ObjectsFirstKind {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Unknown,
            1 => Self::Car,
            2 => Self::Lorry,
            3 => Self::TwoWheeler,
            4 => Self::Pedestrian,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Unknown => 0,
            Self::Car => 1,
            Self::Lorry => 2,
            Self::TwoWheeler => 3,
            Self::Pedestrian => 4,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Unknown => Some("unknown"),
            Self::Car => Some("car"),
            Self::Lorry => Some("lorry"),
            Self::TwoWheeler => Some("two_wheeler"),
            Self::Pedestrian => Some("pedestrian"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ObjectsFirstBraking {
    /// No (0).
    No,
    /// Yes (1).
    Yes,
    /// Not sure (2).
    Unsure,
    /// A raw number without a word.
    Other(u8),
}

impl ObjectsFirstBraking {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::No,
            1 => Self::Yes,
            2 => Self::Unsure,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::No => 0,
            Self::Yes => 1,
            Self::Unsure => 2,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::No => Some("no"),
            Self::Yes => Some("yes"),
            Self::Unsure => Some("unsure"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum CameraHealthState {
    /// Starting (0).
    Starting,
    /// Sees (1).
    Sees,
    /// Dirty glass (2).
    Dirty,
    /// Blinded (3).
    Blinded,
    /// Aligning (4).
    Aligning,
    /// Faulty (7).
    Faulty,
    /// A raw number without a word.
    Other(u8),
}

impl CameraHealthState {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Starting,
            1 => Self::Sees,
            2 => Self::Dirty,
            3 => Self::Blinded,
            4 => Self::Aligning,
            7 => Self::Faulty,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Starting => 0,
            Self::Sees => 1,
            Self::Dirty => 2,
            Self::Blinded => 3,
            Self::Aligning => 4,
            Self::Faulty => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Starting => Some("starting"),
            Self::Sees => Some("sees"),
            Self::Dirty => Some("dirty"),
            Self::Blinded => Some("blinded"),
            Self::Aligning => Some("aligning"),
            Self::Faulty => Some("faulty"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineQuestionsService {
    /// Read trouble codes (0x19).
    ReadCodes,
    /// Read data (0x22).
    ReadData,
    /// A raw number without a word.
    Other(u8),
}

impl EngineQuestionsService {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            25 => Self::ReadCodes,
            34 => Self::ReadData,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::ReadCodes => 25,
            Self::ReadData => 34,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::ReadCodes => Some("read_codes"),
            Self::ReadData => Some("read_data"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineQuestionsWanted {
    /// Vehicle identification number (0xF190).
    Vin,
    /// How warm the engine is (0x1001).
    Warmth,
    /// What the engine has learned (0x1002).
    Learned,
    /// A raw number without a word.
    Other(u16),
}

impl EngineQuestionsWanted {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u16) -> Self {
        match raw {
            0xF190 => Self::Vin,
            0x1001 => Self::Warmth,
            0x1002 => Self::Learned,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u16 {
        match self {
            Self::Vin => 0xF190,
            Self::Warmth => 0x1001,
            Self::Learned => 0x1002,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Vin => Some("vin"),
            Self::Warmth => Some("warmth"),
            Self::Learned => Some("learned"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineQuestionsReport {
    /// By their status (0x2).
    ByStatus,
    /// A raw number without a word.
    Other(u8),
}

impl EngineQuestionsReport {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            2 => Self::ByStatus,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::ByStatus => 2,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::ByStatus => Some("by_status"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineAnswersService {
    /// Trouble codes (0x59).
    Codes,
    /// Data (0x62).
    Data,
    /// Refused (0x7F).
    Refused,
    /// A raw number without a word.
    Other(u8),
}

impl EngineAnswersService {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            89 => Self::Codes,
            98 => Self::Data,
            127 => Self::Refused,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Codes => 89,
            Self::Data => 98,
            Self::Refused => 127,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Codes => Some("codes"),
            Self::Data => Some("data"),
            Self::Refused => Some("refused"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineAnswersItem {
    /// Vehicle identification number (0xF190).
    Vin,
    /// How warm the engine is (0x1001).
    Warmth,
    /// A raw number without a word.
    Other(u16),
}

impl EngineAnswersItem {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u16) -> Self {
        match raw {
            0xF190 => Self::Vin,
            0x1001 => Self::Warmth,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u16 {
        match self {
            Self::Vin => 0xF190,
            Self::Warmth => 0x1001,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Vin => Some("vin"),
            Self::Warmth => Some("warmth"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineAnswersReason {
    /// The service is not known (0x11).
    NotSupported,
    /// Not under these conditions (0x22).
    NotNow,
    /// The data is not known (0x31).
    OutOfRange,
    /// Please wait (0x78).
    Wait,
    /// A raw number without a word.
    Other(u8),
}

impl EngineAnswersReason {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            17 => Self::NotSupported,
            34 => Self::NotNow,
            49 => Self::OutOfRange,
            120 => Self::Wait,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::NotSupported => 17,
            Self::NotNow => 34,
            Self::OutOfRange => 49,
            Self::Wait => 120,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::NotSupported => Some("not_supported"),
            Self::NotNow => Some("not_now"),
            Self::OutOfRange => Some("out_of_range"),
            Self::Wait => Some("wait"),
            Self::Other(_) => None,
        }
    }
}

/// Which way a motor runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SeatMotion {
    /// Stopped (0).
    Stopped,
    /// Up, or forwards (1).
    Up,
    /// Down, or backwards (2).
    Down,
    /// Not told (3).
    NotTold,
    /// A raw number without a word.
    Other(u8),
}

impl SeatMotion {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Stopped,
            1 => Self::Up,
            2 => Self::Down,
            3 => Self::NotTold,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Stopped => 0,
            Self::Up => 1,
            Self::Down => 2,
            Self::NotTold => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Stopped => Some("stopped"),
            Self::Up => Some("up"),
            Self::Down => Some("down"),
            Self::NotTold => Some("not_told"),
            Self::Other(_) => None,
        }
    }
}

/// Seat heating.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum Warmth {
    /// Off (0).
    Off,
    /// Low (1).
    Low,
    /// Medium (2).
    Medium,
    /// High (3).
    High,
    /// A raw number without a word.
    Other(u8),
}

impl Warmth {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::Low,
            2 => Self::Medium,
            3 => Self::High,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::Low => 1,
            Self::Medium => 2,
            Self::High => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::Low => Some("low"),
            Self::Medium => Some("medium"),
            Self::High => Some("high"),
            Self::Other(_) => None,
        }
    }
}

/// Node address (NAD).
///
/// From memory of LIN 2.2A, section 4.2.3.2.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum LinNode {
    /// Go to sleep: not a node (0).
    Sleep,
    /// One node (0x1..0x7D).
    Node(u8),
    /// Functional: all nodes of a function (0x7E).
    Functional,
    /// All nodes (0x7F).
    Broadcast,
    /// For whatever the maker wants (0x80..0xFF).
    Free(u8),
    /// A raw number without a word.
    Other(u8),
}

impl LinNode {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Sleep,
            1..=125 => Self::Node(raw),
            126 => Self::Functional,
            127 => Self::Broadcast,
            128..=255 => Self::Free(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Sleep => 0,
            Self::Functional => 126,
            Self::Broadcast => 127,
            Self::Node(raw) => raw,
            Self::Free(raw) => raw,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Sleep => Some("sleep"),
            Self::Node(_) => Some("node"),
            Self::Functional => Some("functional"),
            Self::Broadcast => Some("broadcast"),
            Self::Free(_) => Some("free"),
            Self::Other(_) => None,
        }
    }
}

/// Which part of a message a frame is (PCI).
///
/// From memory of LIN 2.2A, section 3.2.1.3.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum LinMessagePart {
    /// The whole message (0).
    Single,
    /// The first part of a longer message (1).
    First,
    /// A later part (2).
    Consecutive,
    /// A raw number without a word.
    Other(u8),
}

impl LinMessagePart {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Single,
            1 => Self::First,
            2 => Self::Consecutive,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Single => 0,
            Self::First => 1,
            Self::Consecutive => 2,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Single => Some("single"),
            Self::First => Some("first"),
            Self::Consecutive => Some("consecutive"),
            Self::Other(_) => None,
        }
    }
}

/// What is asked for (SID).
///
/// From memory of LIN 2.2A, table 4.6, and ISO 14229-1 for what is not configuration.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum LinService {
    /// Assign node address (0xB0).
    AssignNode,
    /// Assign frame identifier (LIN 2.0) (0xB1).
    AssignId,
    /// Read by identifier (0xB2).
    ReadById,
    /// Conditional change of node address (0xB3).
    ChangeNode,
    /// Data dump, reserved for the node's maker (0xB4).
    DataDump,
    /// Assign node address by position detection (ISO 17987-3) (0xB5).
    AssignNodeSnpd,
    /// Save configuration (0xB6).
    SaveConfiguration,
    /// Assign a range of frame identifiers (0xB7).
    AssignIdRange,
    /// A raw number without a word.
    Other(u8),
}

impl LinService {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            176 => Self::AssignNode,
            177 => Self::AssignId,
            178 => Self::ReadById,
            179 => Self::ChangeNode,
            180 => Self::DataDump,
            181 => Self::AssignNodeSnpd,
            182 => Self::SaveConfiguration,
            183 => Self::AssignIdRange,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::AssignNode => 176,
            Self::AssignId => 177,
            Self::ReadById => 178,
            Self::ChangeNode => 179,
            Self::DataDump => 180,
            Self::AssignNodeSnpd => 181,
            Self::SaveConfiguration => 182,
            Self::AssignIdRange => 183,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::AssignNode => Some("assign_node"),
            Self::AssignId => Some("assign_id"),
            Self::ReadById => Some("read_by_id"),
            Self::ChangeNode => Some("change_node"),
            Self::DataDump => Some("data_dump"),
            Self::AssignNodeSnpd => Some("assign_node_snpd"),
            Self::SaveConfiguration => Some("save_configuration"),
            Self::AssignIdRange => Some("assign_id_range"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SeatRequestAssignSupplier {
    /// Any supplier (0x7FFF).
    Any,
    /// A raw number without a word.
    Other(u16),
}

impl SeatRequestAssignSupplier {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u16) -> Self {
        match raw {
            0x7FFF => Self::Any,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u16 {
        match self {
            Self::Any => 0x7FFF,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Any => Some("any"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SeatRequestAssignFunction {
    /// Any function (0xFFFF).
    Any,
    /// A raw number without a word.
    Other(u16),
}

impl SeatRequestAssignFunction {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u16) -> Self {
        match raw {
            0xFFFF => Self::Any,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u16 {
        match self {
            Self::Any => 0xFFFF,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Any => Some("any"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SeatRequestProtectedId {
    /// No identifier any more (0x40).
    None,
    /// A raw number without a word.
    Other(u8),
}

impl SeatRequestProtectedId {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            64 => Self::None,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 64,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Other(_) => None,
        }
    }
}

/// What is read.
///
/// From memory of LIN 2.2A, section 4.2.6.1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum LinIdentification {
    /// Supplier, function and variant (0).
    Product,
    /// Serial number (1).
    Serial,
    /// What the node's maker wants (16..31), or reserved (2..31).
    NodeDefined(u8),
    /// Message number and protected identifier (LIN 2.0) (32..63).
    Message(u8),
    /// A raw number without a word.
    Other(u8),
}

impl LinIdentification {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Product,
            1 => Self::Serial,
            2..=31 => Self::NodeDefined(raw),
            32..=63 => Self::Message(raw),
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Product => 0,
            Self::Serial => 1,
            Self::NodeDefined(raw) => raw,
            Self::Message(raw) => raw,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Product => Some("product"),
            Self::Serial => Some("serial"),
            Self::NodeDefined(_) => Some("node_defined"),
            Self::Message(_) => Some("message"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SeatRequestProtectedId0 {
    /// No identifier any more (0).
    None,
    /// Stays as it is (0xFF).
    Keep,
    /// A raw number without a word.
    Other(u8),
}

impl SeatRequestProtectedId0 {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            255 => Self::Keep,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Keep => 255,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Keep => Some("keep"),
            Self::Other(_) => None,
        }
    }
}

/// What is answered (RSID).
///
/// An answer has the number of its service with 0x40 added. From memory of LIN 2.2A, section 4.2.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum LinAnswer {
    /// Refused (0x7F).
    Refused,
    /// Node address is assigned (0xF0).
    NodeAssigned,
    /// Frame identifier is assigned (LIN 2.0) (0xF1).
    IdAssigned,
    /// Read by identifier (0xF2).
    ReadById,
    /// Node address is changed (0xF3).
    NodeChanged,
    /// Data dump, reserved for the node's maker (0xF4).
    DataDump,
    /// Node address is assigned by position detection (ISO 17987-3) (0xF5).
    NodeAssignedSnpd,
    /// Configuration is saved (0xF6).
    ConfigurationSaved,
    /// Frame identifiers are assigned (0xF7).
    IdsAssigned,
    /// A raw number without a word.
    Other(u8),
}

impl LinAnswer {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            127 => Self::Refused,
            240 => Self::NodeAssigned,
            241 => Self::IdAssigned,
            242 => Self::ReadById,
            243 => Self::NodeChanged,
            244 => Self::DataDump,
            245 => Self::NodeAssignedSnpd,
            246 => Self::ConfigurationSaved,
            247 => Self::IdsAssigned,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Refused => 127,
            Self::NodeAssigned => 240,
            Self::IdAssigned => 241,
            Self::ReadById => 242,
            Self::NodeChanged => 243,
            Self::DataDump => 244,
            Self::NodeAssignedSnpd => 245,
            Self::ConfigurationSaved => 246,
            Self::IdsAssigned => 247,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Refused => Some("refused"),
            Self::NodeAssigned => Some("node_assigned"),
            Self::IdAssigned => Some("id_assigned"),
            Self::ReadById => Some("read_by_id"),
            Self::NodeChanged => Some("node_changed"),
            Self::DataDump => Some("data_dump"),
            Self::NodeAssignedSnpd => Some("node_assigned_snpd"),
            Self::ConfigurationSaved => Some("configuration_saved"),
            Self::IdsAssigned => Some("ids_assigned"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SeatResponseReason {
    /// Without a reason (0x10).
    GeneralReject,
    /// No such service (0x11).
    ServiceNotSupported,
    /// No such part of the service (0x12).
    SubFunctionNotSupported,
    /// Wrong length or format (0x13).
    WrongLength,
    /// Not at this moment (0x22).
    ConditionsNotCorrect,
    /// Out of range (0x31).
    OutOfRange,
    /// The answer takes longer (0x78).
    ResponsePending,
    /// A raw number without a word.
    Other(u8),
}

impl SeatResponseReason {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            16 => Self::GeneralReject,
            17 => Self::ServiceNotSupported,
            18 => Self::SubFunctionNotSupported,
            19 => Self::WrongLength,
            34 => Self::ConditionsNotCorrect,
            49 => Self::OutOfRange,
            120 => Self::ResponsePending,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::GeneralReject => 16,
            Self::ServiceNotSupported => 17,
            Self::SubFunctionNotSupported => 18,
            Self::WrongLength => 19,
            Self::ConditionsNotCorrect => 34,
            Self::OutOfRange => 49,
            Self::ResponsePending => 120,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::GeneralReject => Some("general_reject"),
            Self::ServiceNotSupported => Some("service_not_supported"),
            Self::SubFunctionNotSupported => Some("sub_function_not_supported"),
            Self::WrongLength => Some("wrong_length"),
            Self::ConditionsNotCorrect => Some("conditions_not_correct"),
            Self::OutOfRange => Some("out_of_range"),
            Self::ResponsePending => Some("response_pending"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum HeaterQuestionQuestion {
    /// Begin (0x81).
    Begin,
    /// End (0x82).
    End,
    /// Read a page (0x21).
    ReadPage,
    /// A raw number without a word.
    Other(u8),
}

impl HeaterQuestionQuestion {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            129 => Self::Begin,
            130 => Self::End,
            33 => Self::ReadPage,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Begin => 129,
            Self::End => 130,
            Self::ReadPage => 33,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Begin => Some("begin"),
            Self::End => Some("end"),
            Self::ReadPage => Some("read_page"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum HeaterBurnerBurner {
    /// Off (0).
    Off,
    /// Blows air through (1).
    Airing,
    /// Glow plug heats (2).
    Glowing,
    /// Burns (3).
    Burning,
    /// Locked after failed starts (7).
    Locked,
    /// A raw number without a word.
    Other(u8),
}

impl HeaterBurnerBurner {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::Airing,
            2 => Self::Glowing,
            3 => Self::Burning,
            7 => Self::Locked,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::Airing => 1,
            Self::Glowing => 2,
            Self::Burning => 3,
            Self::Locked => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::Airing => Some("airing"),
            Self::Glowing => Some("glowing"),
            Self::Burning => Some("burning"),
            Self::Locked => Some("locked"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum DamperCurrentsDamping {
    /// Comfort (0).
    Comfort,
    /// Normal (1).
    Normal,
    /// Firm, because the driver brakes or turns (2).
    Firm,
    /// Soft, because of a fault (7).
    Faulty,
    /// A raw number without a word.
    Other(u8),
}

impl DamperCurrentsDamping {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Comfort,
            1 => Self::Normal,
            2 => Self::Firm,
            7 => Self::Faulty,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Comfort => 0,
            Self::Normal => 1,
            Self::Firm => 2,
            Self::Faulty => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Comfort => Some("comfort"),
            Self::Normal => Some("normal"),
            Self::Firm => Some("firm"),
            Self::Faulty => Some("faulty"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum DampingChangeDampingBefore {
    /// `comfort` (0).
    Comfort,
    /// `normal` (1).
    Normal,
    /// `firm` (2).
    Firm,
    /// A raw number without a word.
    Other(u8),
}

impl DampingChangeDampingBefore {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Comfort,
            1 => Self::Normal,
            2 => Self::Firm,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Comfort => 0,
            Self::Normal => 1,
            Self::Firm => 2,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Comfort => Some("comfort"),
            Self::Normal => Some("normal"),
            Self::Firm => Some("firm"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum DampingChangeBecause {
    /// Nothing special (0).
    Calm,
    /// Braking (1).
    Braking,
    /// Turning (2).
    Turning,
    /// A raw number without a word.
    Other(u8),
}

impl DampingChangeBecause {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Calm,
            1 => Self::Braking,
            2 => Self::Turning,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Calm => 0,
            Self::Braking => 1,
            Self::Turning => 2,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Calm => Some("calm"),
            Self::Braking => Some("braking"),
            Self::Turning => Some("turning"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum SetCabTargetSide {
    /// Left (0).
    Left,
    /// Right (1).
    Right,
    /// A raw number without a word.
    Other(u8),
}

impl SetCabTargetSide {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Left,
            1 => Self::Right,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Left => 0,
            Self::Right => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Left => Some("left"),
            Self::Right => Some("right"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum CabTargetRefusedBecause {
    /// There is no such side (0).
    UnknownSide,
    /// Nothing there to warm it with (1).
    NoHeat,
    /// A raw number without a word.
    Other(u8),
}

impl CabTargetRefusedBecause {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::UnknownSide,
            1 => Self::NoHeat,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::UnknownSide => 0,
            Self::NoHeat => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::UnknownSide => Some("unknown_side"),
            Self::NoHeat => Some("no_heat"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum LetMeInActivation {
    /// Usual (0).
    Usual,
    /// A raw number without a word.
    Other(u8),
}

impl LetMeInActivation {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Usual,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Usual => 0,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Usual => Some("usual"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum YouAreInEntrance {
    /// Granted (0x10).
    Granted,
    /// Unknown tester (0x0).
    UnknownTester,
    /// A raw number without a word.
    Other(u8),
}

impl YouAreInEntrance {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            16 => Self::Granted,
            0 => Self::UnknownTester,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Granted => 16,
            Self::UnknownTester => 0,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Granted => Some("granted"),
            Self::UnknownTester => Some("unknown_tester"),
            Self::Other(_) => None,
        }
    }
}

/// Wheel speeds.
///
/// Speeds of the four wheels, from the hub sensors. 13 bits each, packed without gaps.
///
/// Confirmed: each wheel turned by hand on the lift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelSpeeds {
    /// `raw * 0.05` km/h; 13 bits.
    pub front_left: u16,
    /// `raw * 0.05` km/h; 13 bits.
    pub front_right: u16,
    /// `raw * 0.05` km/h; 13 bits.
    pub rear_left: u16,
    /// `raw * 0.05` km/h; 13 bits.
    pub rear_right: u16,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 14.
    pub alive: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl WheelSpeeds {
    /// The identifier.
    pub const ID: u32 = 0x1B4;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(20);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_FRONT_LEFT: typed::Cut = typed::Cut::between((1, 4), (0, 0));
    const AT_FRONT_RIGHT: typed::Cut = typed::Cut::between((3, 1), (1, 5));
    const AT_REAR_LEFT: typed::Cut = typed::Cut::between((4, 6), (3, 2));
    const AT_REAR_RIGHT: typed::Cut = typed::Cut::between((6, 3), (4, 7));
    const AT_ALIVE: typed::Cut = typed::Cut::between((6, 7), (6, 4));
    const AT_CHECK: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_FRONT_LEFT: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_FRONT_RIGHT: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_REAR_LEFT: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_REAR_RIGHT: typed::Formula = typed::Formula::new(1, 0, 20);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let front_left = Self::AT_FRONT_LEFT.of(payload) as u16;
        let front_right = Self::AT_FRONT_RIGHT.of(payload) as u16;
        let rear_left = Self::AT_REAR_LEFT.of(payload) as u16;
        let rear_right = Self::AT_REAR_RIGHT.of(payload) as u16;
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            front_left,
            front_right,
            rear_left,
            rear_right,
            alive,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.front_left), 13, "front_left")?;
        Self::AT_FRONT_LEFT.put(payload, bits);
        let number = u64::from(self.front_right);
        let bits = typed::unsigned_bits(number, 13, "front_right")?;
        Self::AT_FRONT_RIGHT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.rear_left), 13, "rear_left")?;
        Self::AT_REAR_LEFT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.rear_right), 13, "rear_right")?;
        Self::AT_REAR_RIGHT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 8, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = &typed::sums::CRC8_SAE_J1850;
        let state = sum.start();
        let bytes = payload.get(0..7)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// The value in km/h.
    #[must_use]
    pub fn front_left(&self) -> typed::Reading<f64> {
        match self.front_left {
            0x1FFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `front_left` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_front_left(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 8191);
        let is_value = |raw: i128| !matches!(raw, 0x1FFF);
        let formula = Self::FORMULA_FRONT_LEFT;
        let raw = &mut self.front_left;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 300 in km/h.
    #[must_use]
    pub fn front_left_is_outside(&self) -> bool {
        let raw = self.front_left;
        matches!(raw, 0x1771..=0x1FFE)
    }

    /// The value in km/h.
    #[must_use]
    pub fn front_right(&self) -> typed::Reading<f64> {
        match self.front_right {
            0x1FFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `front_right` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_front_right(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 8191);
        let is_value = |raw: i128| !matches!(raw, 0x1FFF);
        let formula = Self::FORMULA_FRONT_RIGHT;
        let raw = &mut self.front_right;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 300 in km/h.
    #[must_use]
    pub fn front_right_is_outside(&self) -> bool {
        let raw = self.front_right;
        matches!(raw, 0x1771..=0x1FFE)
    }

    /// The value in km/h.
    #[must_use]
    pub fn rear_left(&self) -> typed::Reading<f64> {
        match self.rear_left {
            0x1FFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `rear_left` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_rear_left(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 8191);
        let is_value = |raw: i128| !matches!(raw, 0x1FFF);
        let formula = Self::FORMULA_REAR_LEFT;
        let raw = &mut self.rear_left;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 300 in km/h.
    #[must_use]
    pub fn rear_left_is_outside(&self) -> bool {
        let raw = self.rear_left;
        matches!(raw, 0x1771..=0x1FFE)
    }

    /// The value in km/h.
    #[must_use]
    pub fn rear_right(&self) -> typed::Reading<f64> {
        match self.rear_right {
            0x1FFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `rear_right` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_rear_right(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 8191);
        let is_value = |raw: i128| !matches!(raw, 0x1FFF);
        let formula = Self::FORMULA_REAR_RIGHT;
        let raw = &mut self.rear_right;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 300 in km/h.
    #[must_use]
    pub fn rear_right_is_outside(&self) -> bool {
        let raw = self.rear_right;
        matches!(raw, 0x1771..=0x1FFE)
    }

    /// What the raw number says.
    #[must_use]
    pub fn alive(&self) -> typed::Reading<u8> {
        match self.alive {
            15 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 14, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.front_left());
        let is_outside = self.front_left_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("front_left");
        tell(name, said);
        let said = typed::Said::from(self.front_right());
        let is_outside = self.front_right_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("front_right");
        tell(name, said);
        let said = typed::Said::from(self.rear_left());
        let is_outside = self.rear_left_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("rear_left");
        tell(name, said);
        let said = typed::Said::from(self.rear_right());
        let is_outside = self.rear_right_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("rear_right");
        tell(name, said);
        let said = typed::Said::from(self.alive());
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Brakes.
///
/// Vehicle speed, brake pressure and what the brake control is doing. For reading only: leave brake systems to people
/// licensed for them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BrakeState {
    /// Vehicle speed.
    ///
    /// Mean of the rear wheels.
    ///
    /// `raw * 0.01` km/h; 16 bits.
    pub vehicle_speed: u16,
    /// Master cylinder pressure.
    ///
    /// `raw * 0.1` bar; 12 bits.
    pub brake_pressure: u16,
    /// Brake pedal switch.
    ///
    /// Closes before the pressure rises; pressure above 10 bar with the switch open is a fault.
    ///
    /// `raw`; 2 bits.
    pub brake_pedal: Pressed,
    /// Holds the van on a slope.
    ///
    /// `raw`; 1 bit.
    pub hold_assist: YesNo,
    /// Brake light wanted.
    ///
    /// `raw`; 1 bit.
    pub brake_light: YesNo,
    /// Anti-lock control.
    ///
    /// `raw`; 2 bits.
    pub abs: ControlState,
    /// Stability control.
    ///
    /// `raw`; 2 bits.
    pub stability: ControlState,
    /// Traction control.
    ///
    /// `raw`; 2 bits.
    pub traction: ControlState,
    /// Front pads worn.
    ///
    /// `raw`; 1 bit.
    pub pad_wear: YesNo,
    /// Brake fluid low.
    ///
    /// `raw`; 1 bit.
    pub fluid_low: YesNo,
    /// Distance pulses.
    ///
    /// Rolls over every 25.6 m.
    ///
    /// `raw * 0.1` m; 8 bits.
    pub distance: u8,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 15.
    pub alive: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl BrakeState {
    /// The identifier.
    pub const ID: u32 = 0x1A0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_millis(500);
    const AT_VEHICLE_SPEED: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_BRAKE_PRESSURE: typed::Cut = typed::Cut::between((3, 3), (2, 0));
    const AT_BRAKE_PEDAL: typed::Cut = typed::Cut::between((3, 5), (3, 4));
    const AT_HOLD_ASSIST: typed::Cut = typed::Cut::between((3, 6), (3, 6));
    const AT_BRAKE_LIGHT: typed::Cut = typed::Cut::between((3, 7), (3, 7));
    const AT_ABS: typed::Cut = typed::Cut::between((4, 1), (4, 0));
    const AT_STABILITY: typed::Cut = typed::Cut::between((4, 3), (4, 2));
    const AT_TRACTION: typed::Cut = typed::Cut::between((4, 5), (4, 4));
    const AT_PAD_WEAR: typed::Cut = typed::Cut::between((4, 6), (4, 6));
    const AT_FLUID_LOW: typed::Cut = typed::Cut::between((4, 7), (4, 7));
    const AT_DISTANCE: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_ALIVE: typed::Cut = typed::Cut::between((6, 3), (6, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_VEHICLE_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_BRAKE_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_DISTANCE: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let vehicle_speed = Self::AT_VEHICLE_SPEED.of(payload) as u16;
        let brake_pressure = Self::AT_BRAKE_PRESSURE.of(payload) as u16;
        let bits = Self::AT_BRAKE_PEDAL.of(payload);
        let brake_pedal = Pressed::from_raw(bits as u8);
        let bits = Self::AT_HOLD_ASSIST.of(payload);
        let hold_assist = YesNo::from_raw(bits as u8);
        let bits = Self::AT_BRAKE_LIGHT.of(payload);
        let brake_light = YesNo::from_raw(bits as u8);
        let bits = Self::AT_ABS.of(payload);
        let abs = ControlState::from_raw(bits as u8);
        let bits = Self::AT_STABILITY.of(payload);
        let stability = ControlState::from_raw(bits as u8);
        let bits = Self::AT_TRACTION.of(payload);
        let traction = ControlState::from_raw(bits as u8);
        let bits = Self::AT_PAD_WEAR.of(payload);
        let pad_wear = YesNo::from_raw(bits as u8);
        let bits = Self::AT_FLUID_LOW.of(payload);
        let fluid_low = YesNo::from_raw(bits as u8);
        let distance = Self::AT_DISTANCE.of(payload) as u8;
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            vehicle_speed,
            brake_pressure,
            brake_pedal,
            hold_assist,
            brake_light,
            abs,
            stability,
            traction,
            pad_wear,
            fluid_low,
            distance,
            alive,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.vehicle_speed);
        let bits = typed::unsigned_bits(number, 16, "vehicle_speed")?;
        Self::AT_VEHICLE_SPEED.put(payload, bits);
        let number = u64::from(self.brake_pressure);
        let bits = typed::unsigned_bits(number, 12, "brake_pressure")?;
        Self::AT_BRAKE_PRESSURE.put(payload, bits);
        let number = u64::from(self.brake_pedal.raw());
        let bits = typed::unsigned_bits(number, 2, "brake_pedal")?;
        Self::AT_BRAKE_PEDAL.put(payload, bits);
        let number = u64::from(self.hold_assist.raw());
        let bits = typed::unsigned_bits(number, 1, "hold_assist")?;
        Self::AT_HOLD_ASSIST.put(payload, bits);
        let number = u64::from(self.brake_light.raw());
        let bits = typed::unsigned_bits(number, 1, "brake_light")?;
        Self::AT_BRAKE_LIGHT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.abs.raw()), 2, "abs")?;
        Self::AT_ABS.put(payload, bits);
        let number = u64::from(self.stability.raw());
        let bits = typed::unsigned_bits(number, 2, "stability")?;
        Self::AT_STABILITY.put(payload, bits);
        let number = u64::from(self.traction.raw());
        let bits = typed::unsigned_bits(number, 2, "traction")?;
        Self::AT_TRACTION.put(payload, bits);
        let number = u64::from(self.pad_wear.raw());
        let bits = typed::unsigned_bits(number, 1, "pad_wear")?;
        Self::AT_PAD_WEAR.put(payload, bits);
        let number = u64::from(self.fluid_low.raw());
        let bits = typed::unsigned_bits(number, 1, "fluid_low")?;
        Self::AT_FLUID_LOW.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.distance), 8, "distance")?;
        Self::AT_DISTANCE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 8, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = &typed::sums::CRC8_AUTOSAR;
        let state = sum.start();
        let bytes = payload.get(0..7)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// The value in km/h.
    #[must_use]
    pub fn vehicle_speed(&self) -> typed::Reading<f64> {
        match self.vehicle_speed {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `vehicle_speed` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_vehicle_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_VEHICLE_SPEED;
        let raw = &mut self.vehicle_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 300 in km/h.
    #[must_use]
    pub fn vehicle_speed_is_outside(&self) -> bool {
        let raw = self.vehicle_speed;
        matches!(raw, 0x7531..=0xFFFE)
    }

    /// The value in bar.
    #[must_use]
    pub fn brake_pressure(&self) -> typed::Reading<f64> {
        match self.brake_pressure {
            0xFFE => typed::Reading::Fault,
            0xFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `brake_pressure` to the raw number nearest to a value in bar.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_brake_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4095);
        let is_value = |raw: i128| !matches!(raw, 0xFFE..=0xFFF);
        let formula = Self::FORMULA_BRAKE_PRESSURE;
        let raw = &mut self.brake_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250 in bar.
    #[must_use]
    pub fn brake_pressure_is_outside(&self) -> bool {
        let raw = self.brake_pressure;
        matches!(raw, 0x9C5..=0xFFD)
    }

    /// What the raw number says.
    #[must_use]
    pub fn brake_pedal(&self) -> typed::Reading<Pressed> {
        match self.brake_pedal.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.brake_pedal),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn abs(&self) -> typed::Reading<ControlState> {
        match self.abs.raw() {
            3 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.abs),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn stability(&self) -> typed::Reading<ControlState> {
        match self.stability.raw() {
            3 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.stability),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn traction(&self) -> typed::Reading<ControlState> {
        match self.traction.raw() {
            3 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.traction),
        }
    }

    /// The value in m.
    #[must_use]
    pub fn distance(&self) -> f64 {
        let raw = self.distance;
        f64::from(raw) / 10.0
    }

    /// Sets `distance` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_distance(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_DISTANCE;
        let raw = &mut self.distance;
        typed::set(raw, value, formula, range, is_value)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 15, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.vehicle_speed());
        let is_outside = self.vehicle_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("vehicle_speed");
        tell(name, said);
        let said = self.brake_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.brake_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("brake_pressure");
        tell(name, said);
        let said = self.brake_pedal();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.brake_pedal;
        let said = said.word(state.word());
        let name = typed::Name::of("brake_pedal");
        tell(name, said);
        let said = self.hold_assist;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.hold_assist;
        let said = said.word(state.word());
        let name = typed::Name::of("hold_assist");
        tell(name, said);
        let said = self.brake_light;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.brake_light;
        let said = said.word(state.word());
        let name = typed::Name::of("brake_light");
        tell(name, said);
        let said = self.abs();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.abs;
        let said = said.word(state.word());
        let name = typed::Name::of("abs");
        tell(name, said);
        let said = self.stability();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.stability;
        let said = said.word(state.word());
        let name = typed::Name::of("stability");
        tell(name, said);
        let said = self.traction();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.traction;
        let said = said.word(state.word());
        let name = typed::Name::of("traction");
        tell(name, said);
        let said = self.pad_wear;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.pad_wear;
        let said = said.word(state.word());
        let name = typed::Name::of("pad_wear");
        tell(name, said);
        let said = self.fluid_low;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.fluid_low;
        let said = said.word(state.word());
        let name = typed::Name::of("fluid_low");
        tell(name, said);
        let said = typed::Said::from(self.distance());
        let name = typed::Name::of("distance");
        tell(name, said);
        let said = typed::Said::from(self.alive);
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Yaw rate and acceleration.
///
/// Yaw rate and accelerations. The yaw rate stands least significant byte first; the two accelerations come straight from the sensor
/// cluster, most significant byte first. The checksum also covers the identifier, which is not among the bytes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VehicleMotion {
    /// Left turns are positive.
    ///
    /// `raw * 0.01` °/s; 16 bits, signed.
    pub yaw_rate: i16,
    /// `raw * 0.01` m/s²; 12 bits, signed.
    pub lateral_acceleration: i16,
    /// `raw * 0.01` m/s²; 12 bits, signed.
    pub longitudinal_acceleration: i16,
    /// `raw - 50` °C; 8 bits.
    pub sensor_temperature: u8,
    /// `raw`; 1 bit.
    pub yaw_valid: YesNo,
    /// `raw`; 1 bit.
    pub lateral_valid: YesNo,
    /// `raw`; 1 bit.
    pub longitudinal_valid: YesNo,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 14.
    pub alive: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl VehicleMotion {
    /// The identifier.
    pub const ID: u32 = 0xB2;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_millis(500);
    const AT_YAW_RATE: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_LATERAL_ACCELERATION: typed::Cut = typed::Cut::between((2, 7), (3, 4));
    const AT_LONGITUDINAL_ACCELERATION: typed::Cut = typed::Cut::between((3, 3), (4, 0));
    const AT_SENSOR_TEMPERATURE: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_YAW_VALID: typed::Cut = typed::Cut::between((6, 0), (6, 0));
    const AT_LATERAL_VALID: typed::Cut = typed::Cut::between((6, 1), (6, 1));
    const AT_LONGITUDINAL_VALID: typed::Cut = typed::Cut::between((6, 2), (6, 2));
    const AT_ALIVE: typed::Cut = typed::Cut::between((6, 7), (6, 4));
    const AT_CHECK: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_YAW_RATE: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_LATERAL_ACCELERATION: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_LONGITUDINAL_ACCELERATION: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_SENSOR_TEMPERATURE: typed::Formula = typed::Formula::new(1, -50, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_YAW_RATE.of(payload);
        let yaw_rate = typed::signed(bits, 16) as i16;
        let bits = Self::AT_LATERAL_ACCELERATION.of(payload);
        let lateral_acceleration = typed::signed(bits, 12) as i16;
        let bits = Self::AT_LONGITUDINAL_ACCELERATION.of(payload);
        let longitudinal_acceleration = typed::signed(bits, 12) as i16;
        let sensor_temperature = Self::AT_SENSOR_TEMPERATURE.of(payload) as u8;
        let bits = Self::AT_YAW_VALID.of(payload);
        let yaw_valid = YesNo::from_raw(bits as u8);
        let bits = Self::AT_LATERAL_VALID.of(payload);
        let lateral_valid = YesNo::from_raw(bits as u8);
        let bits = Self::AT_LONGITUDINAL_VALID.of(payload);
        let longitudinal_valid = YesNo::from_raw(bits as u8);
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            yaw_rate,
            lateral_acceleration,
            longitudinal_acceleration,
            sensor_temperature,
            yaw_valid,
            lateral_valid,
            longitudinal_valid,
            alive,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::signed_bits(i64::from(self.yaw_rate), 16, "yaw_rate")?;
        Self::AT_YAW_RATE.put(payload, bits);
        let number = i64::from(self.lateral_acceleration);
        let bits = typed::signed_bits(number, 12, "lateral_acceleration")?;
        Self::AT_LATERAL_ACCELERATION.put(payload, bits);
        let number = i64::from(self.longitudinal_acceleration);
        let bits = typed::signed_bits(number, 12, "longitudinal_acceleration")?;
        Self::AT_LONGITUDINAL_ACCELERATION.put(payload, bits);
        let number = u64::from(self.sensor_temperature);
        let bits = typed::unsigned_bits(number, 8, "sensor_temperature")?;
        Self::AT_SENSOR_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.yaw_valid.raw());
        let bits = typed::unsigned_bits(number, 1, "yaw_valid")?;
        Self::AT_YAW_VALID.put(payload, bits);
        let number = u64::from(self.lateral_valid.raw());
        let bits = typed::unsigned_bits(number, 1, "lateral_valid")?;
        Self::AT_LATERAL_VALID.put(payload, bits);
        let number = u64::from(self.longitudinal_valid.raw());
        let bits = typed::unsigned_bits(number, 1, "longitudinal_valid")?;
        Self::AT_LONGITUDINAL_VALID.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 8, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = &typed::sums::CRC8_AUTOSAR;
        let state = sum.start();
        let state = sum.update(state, &[0xB2]);
        let state = sum.update(state, &[0x00]);
        let bytes = payload.get(0..7)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// The value in °/s.
    #[must_use]
    pub fn yaw_rate(&self) -> typed::Reading<f64> {
        match self.yaw_rate {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `yaw_rate` to the raw number nearest to a value in °/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_yaw_rate(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_YAW_RATE;
        let raw = &mut self.yaw_rate;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -150 to 150 in °/s.
    #[must_use]
    pub fn yaw_rate_is_outside(&self) -> bool {
        let raw = self.yaw_rate;
        matches!(raw, -32767..=-15001 | 0x3A99..=0x7FFF)
    }

    /// The value in m/s².
    #[must_use]
    pub fn lateral_acceleration(&self) -> typed::Reading<f64> {
        match self.lateral_acceleration {
            -2048 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `lateral_acceleration` to the raw number nearest to a value in m/s².
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_lateral_acceleration(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-2048, 2047);
        let is_value = |raw: i128| !matches!(raw, -2048);
        let formula = Self::FORMULA_LATERAL_ACCELERATION;
        let raw = &mut self.lateral_acceleration;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -15 to 15 in m/s².
    #[must_use]
    pub fn lateral_acceleration_is_outside(&self) -> bool {
        let raw = self.lateral_acceleration;
        matches!(raw, -2047..=-1501 | 0x5DD..=0x7FF)
    }

    /// The value in m/s².
    #[must_use]
    pub fn longitudinal_acceleration(&self) -> typed::Reading<f64> {
        match self.longitudinal_acceleration {
            -2048 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `longitudinal_acceleration` to the raw number nearest to a value in m/s².
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_longitudinal_acceleration(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-2048, 2047);
        let is_value = |raw: i128| !matches!(raw, -2048);
        let formula = Self::FORMULA_LONGITUDINAL_ACCELERATION;
        let raw = &mut self.longitudinal_acceleration;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -15 to 15 in m/s².
    #[must_use]
    pub fn longitudinal_acceleration_is_outside(&self) -> bool {
        let raw = self.longitudinal_acceleration;
        matches!(raw, -2047..=-1501 | 0x5DD..=0x7FF)
    }

    /// The value in °C.
    #[must_use]
    pub fn sensor_temperature(&self) -> typed::Reading<f64> {
        match self.sensor_temperature {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 50) as f64),
        }
    }

    /// Sets `sensor_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_sensor_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_SENSOR_TEMPERATURE;
        let raw = &mut self.sensor_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -50 to 125 in °C.
    #[must_use]
    pub fn sensor_temperature_is_outside(&self) -> bool {
        let raw = self.sensor_temperature;
        matches!(raw, 176..=254)
    }

    /// What the raw number says.
    #[must_use]
    pub fn alive(&self) -> typed::Reading<u8> {
        match self.alive {
            15 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 14, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.yaw_rate());
        let is_outside = self.yaw_rate_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("yaw_rate");
        tell(name, said);
        let said = self.lateral_acceleration();
        let said = typed::Said::from(said);
        let is_outside = self.lateral_acceleration_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("lateral_acceleration");
        tell(name, said);
        let said = self.longitudinal_acceleration();
        let said = typed::Said::from(said);
        let is_outside = self.longitudinal_acceleration_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("longitudinal_acceleration");
        tell(name, said);
        let said = self.sensor_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.sensor_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("sensor_temperature");
        tell(name, said);
        let said = self.yaw_valid;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.yaw_valid;
        let said = said.word(state.word());
        let name = typed::Name::of("yaw_valid");
        tell(name, said);
        let said = self.lateral_valid;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lateral_valid;
        let said = said.word(state.word());
        let name = typed::Name::of("lateral_valid");
        tell(name, said);
        let said = self.longitudinal_valid;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.longitudinal_valid;
        let said = said.word(state.word());
        let name = typed::Name::of("longitudinal_valid");
        tell(name, said);
        let said = typed::Said::from(self.alive());
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Steering wheel.
///
/// Angle of the steering wheel. Left is positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteeringWheel {
    /// Steering wheel angle.
    ///
    /// Confirmed: lock to lock, standing.
    ///
    /// `raw * 0.1` °; 16 bits, signed.
    pub angle: i16,
    /// Steering wheel rate.
    ///
    /// Bit 15 is the direction, the rest the size: not two's complement.
    ///
    /// `raw * 0.1` °/s; 16 bits, sign and size.
    pub rate: i16,
    /// Torque of the assist motor.
    ///
    /// `raw * 0.5` N·m; 8 bits, signed.
    pub assist_torque: i8,
    /// Straight ahead learned.
    ///
    /// `raw`; 1 bit.
    pub learned: YesNo,
    /// Assistance.
    ///
    /// `raw`; 2 bits.
    pub assist: ControlState,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 15.
    pub alive: u8,
    /// Supply at the unit.
    ///
    /// Likely: follows charging.battery\_voltage.
    ///
    /// `raw * 0.1` V; 8 bits.
    pub supply: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl SteeringWheel {
    /// The identifier.
    pub const ID: u32 = 0xA5;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_millis(500);
    const AT_ANGLE: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_RATE: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_ASSIST_TORQUE: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_LEARNED: typed::Cut = typed::Cut::between((5, 0), (5, 0));
    const AT_ASSIST: typed::Cut = typed::Cut::between((5, 2), (5, 1));
    const AT_ALIVE: typed::Cut = typed::Cut::between((5, 7), (5, 4));
    const AT_SUPPLY: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_ANGLE: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_RATE: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_ASSIST_TORQUE: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_SUPPLY: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_ANGLE.of(payload);
        let angle = typed::signed(bits, 16) as i16;
        let bits = Self::AT_RATE.of(payload);
        let rate = typed::sign_magnitude(bits, 16) as i16;
        let bits = Self::AT_ASSIST_TORQUE.of(payload);
        let assist_torque = typed::signed(bits, 8) as i8;
        let bits = Self::AT_LEARNED.of(payload);
        let learned = YesNo::from_raw(bits as u8);
        let bits = Self::AT_ASSIST.of(payload);
        let assist = ControlState::from_raw(bits as u8);
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let supply = Self::AT_SUPPLY.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            angle,
            rate,
            assist_torque,
            learned,
            assist,
            alive,
            supply,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::signed_bits(i64::from(self.angle), 16, "angle")?;
        Self::AT_ANGLE.put(payload, bits);
        let bits = typed::sign_magnitude_bits(i64::from(self.rate), 16, "rate")?;
        Self::AT_RATE.put(payload, bits);
        let number = i64::from(self.assist_torque);
        let bits = typed::signed_bits(number, 8, "assist_torque")?;
        Self::AT_ASSIST_TORQUE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.learned.raw()), 1, "learned")?;
        Self::AT_LEARNED.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.assist.raw()), 2, "assist")?;
        Self::AT_ASSIST.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.supply), 8, "supply")?;
        Self::AT_SUPPLY.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 8, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = wirelore_bits::sums::ByteSum::WRAPPING;
        let state = sum.start();
        let bytes = payload.get(0..7)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// The value in °.
    #[must_use]
    pub fn angle(&self) -> typed::Reading<f64> {
        match self.angle {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `angle` to the raw number nearest to a value in °.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_angle(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_ANGLE;
        let raw = &mut self.angle;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -780 to 780 in °.
    #[must_use]
    pub fn angle_is_outside(&self) -> bool {
        let raw = self.angle;
        matches!(raw, -32767..=-7801 | 0x1E79..=0x7FFF)
    }

    /// The value in °/s.
    #[must_use]
    pub fn rate(&self) -> f64 {
        let raw = self.rate;
        f64::from(raw) / 10.0
    }

    /// Sets `rate` to the raw number nearest to a value in °/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_rate(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32767, 32767);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_RATE;
        let raw = &mut self.rate;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -1500 to 1500 in °/s.
    #[must_use]
    pub fn rate_is_outside(&self) -> bool {
        let raw = self.rate;
        matches!(raw, -32767..=-15001 | 0x3A99..=0x7FFF)
    }

    /// The value in N·m.
    #[must_use]
    pub fn assist_torque(&self) -> f64 {
        let raw = self.assist_torque;
        f64::from(raw) / 2.0
    }

    /// Sets `assist_torque` to the raw number nearest to a value in N·m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_assist_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-128, 127);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_ASSIST_TORQUE;
        let raw = &mut self.assist_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -60 to 60 in N·m.
    #[must_use]
    pub fn assist_torque_is_outside(&self) -> bool {
        let raw = self.assist_torque;
        matches!(raw, -128..=-121 | 121..=127)
    }

    /// What the raw number says.
    #[must_use]
    pub fn assist(&self) -> typed::Reading<ControlState> {
        match self.assist.raw() {
            3 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.assist),
        }
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 15, 1);
        next as u8
    }

    /// The value in V.
    #[must_use]
    pub fn supply(&self) -> f64 {
        let raw = self.supply;
        f64::from(raw) / 10.0
    }

    /// Sets `supply` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_supply(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_SUPPLY;
        let raw = &mut self.supply;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 5 to 18 in V.
    #[must_use]
    pub fn supply_is_outside(&self) -> bool {
        let raw = self.supply;
        matches!(raw, 0..=49 | 181..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.angle());
        let is_outside = self.angle_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("angle");
        tell(name, said);
        let said = typed::Said::from(self.rate());
        let is_outside = self.rate_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("rate");
        tell(name, said);
        let said = typed::Said::from(self.assist_torque());
        let is_outside = self.assist_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("assist_torque");
        tell(name, said);
        let said = self.learned;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.learned;
        let said = said.word(state.word());
        let name = typed::Name::of("learned");
        tell(name, said);
        let said = self.assist();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.assist;
        let said = said.word(state.word());
        let name = typed::Name::of("assist");
        tell(name, said);
        let said = typed::Said::from(self.alive);
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.supply());
        let is_outside = self.supply_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("supply");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Parking brake.
///
/// Clamping of the parking brake. For reading only.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParkBrakeState {
    /// `raw`; 3 bits.
    pub state: ParkBrakeStateState,
    /// Switch in the dash.
    ///
    /// `raw`; 2 bits.
    pub switch: ParkBrakeStateSwitch,
    /// Opened for new pads.
    ///
    /// `raw`; 1 bit.
    pub service_mode: YesNo,
    /// Clamping force left.
    ///
    /// `raw * 0.1` kN; 8 bits.
    pub force_left: u8,
    /// Clamping force right.
    ///
    /// `raw * 0.1` kN; 8 bits.
    pub force_right: u8,
    /// `raw * 0.25` %; 8 bits, signed.
    pub slope: i8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl ParkBrakeState {
    /// The identifier.
    pub const ID: u32 = 0x2E0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 5;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(200);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_STATE: typed::Cut = typed::Cut::between((0, 2), (0, 0));
    const AT_SWITCH: typed::Cut = typed::Cut::between((0, 4), (0, 3));
    const AT_SERVICE_MODE: typed::Cut = typed::Cut::between((0, 5), (0, 5));
    const AT_FORCE_LEFT: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_FORCE_RIGHT: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_SLOPE: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const FORMULA_FORCE_LEFT: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_FORCE_RIGHT: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_SLOPE: typed::Formula = typed::Formula::new(1, 0, 4);

    #[inline]
    fn read(payload: &[u8; 5]) -> Self {
        let bits = Self::AT_STATE.of(payload);
        let state = ParkBrakeStateState::from_raw(bits as u8);
        let bits = Self::AT_SWITCH.of(payload);
        let switch = ParkBrakeStateSwitch::from_raw(bits as u8);
        let bits = Self::AT_SERVICE_MODE.of(payload);
        let service_mode = YesNo::from_raw(bits as u8);
        let force_left = Self::AT_FORCE_LEFT.of(payload) as u8;
        let force_right = Self::AT_FORCE_RIGHT.of(payload) as u8;
        let bits = Self::AT_SLOPE.of(payload);
        let slope = typed::signed(bits, 8) as i8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            state,
            switch,
            service_mode,
            force_left,
            force_right,
            slope,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.state.raw()), 3, "state")?;
        Self::AT_STATE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.switch.raw()), 2, "switch")?;
        Self::AT_SWITCH.put(payload, bits);
        let number = u64::from(self.service_mode.raw());
        let bits = typed::unsigned_bits(number, 1, "service_mode")?;
        Self::AT_SERVICE_MODE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.force_left), 8, "force_left")?;
        Self::AT_FORCE_LEFT.put(payload, bits);
        let number = u64::from(self.force_right);
        let bits = typed::unsigned_bits(number, 8, "force_right")?;
        Self::AT_FORCE_RIGHT.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.slope), 8, "slope")?;
        Self::AT_SLOPE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 8, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = wirelore_bits::sums::ByteSum::WRAPPING.inverted();
        let state = sum.start();
        let bytes = payload.get(0..4)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 5], typed::NotEncoded> {
        let mut payload = [0; 5];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn state(&self) -> typed::Reading<ParkBrakeStateState> {
        match self.state.raw() {
            7 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.state),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn switch(&self) -> typed::Reading<ParkBrakeStateSwitch> {
        match self.switch.raw() {
            3 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.switch),
        }
    }

    /// The value in kN.
    #[must_use]
    pub fn force_left(&self) -> typed::Reading<f64> {
        match self.force_left {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `force_left` to the raw number nearest to a value in kN.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_force_left(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_FORCE_LEFT;
        let raw = &mut self.force_left;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 25 in kN.
    #[must_use]
    pub fn force_left_is_outside(&self) -> bool {
        let raw = self.force_left;
        matches!(raw, 251..=254)
    }

    /// The value in kN.
    #[must_use]
    pub fn force_right(&self) -> typed::Reading<f64> {
        match self.force_right {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `force_right` to the raw number nearest to a value in kN.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_force_right(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_FORCE_RIGHT;
        let raw = &mut self.force_right;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 25 in kN.
    #[must_use]
    pub fn force_right_is_outside(&self) -> bool {
        let raw = self.force_right;
        matches!(raw, 251..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn slope(&self) -> f64 {
        let raw = self.slope;
        f64::from(raw) / 4.0
    }

    /// Sets `slope` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_slope(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-128, 127);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_SLOPE;
        let raw = &mut self.slope;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -30 to 30 in %.
    #[must_use]
    pub fn slope_is_outside(&self) -> bool {
        let raw = self.slope;
        matches!(raw, -128..=-121 | 121..=127)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.state();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.state;
        let said = said.word(state.word());
        let name = typed::Name::of("state");
        tell(name, said);
        let said = self.switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.switch;
        let said = said.word(state.word());
        let name = typed::Name::of("switch");
        tell(name, said);
        let said = self.service_mode;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.service_mode;
        let said = said.word(state.word());
        let name = typed::Name::of("service_mode");
        tell(name, said);
        let said = typed::Said::from(self.force_left());
        let is_outside = self.force_left_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("force_left");
        tell(name, said);
        let said = typed::Said::from(self.force_right());
        let is_outside = self.force_right_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("force_right");
        tell(name, said);
        let said = typed::Said::from(self.slope());
        let is_outside = self.slope_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("slope");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Belts and occupied seats.
///
/// Belts and seats only; nothing about triggering. Listen, and never probe restraint circuits: they stay charged after
/// switching off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Belts {
    /// `raw`; 2 bits.
    pub driver_belt: BeltsDriverBelt,
    /// `raw`; 2 bits.
    pub passenger_belt: BeltsDriverBelt,
    /// `raw`; 2 bits.
    pub passenger_seat: BeltsPassengerSeat,
    /// `raw`; 2 bits.
    pub warning_lamp: BeltsWarningLamp,
    /// `raw`; 8 bits.
    ///
    /// Counts the frames, from 0 to 255.
    pub alive: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl Belts {
    /// The identifier.
    pub const ID: u32 = 0x50;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_DRIVER_BELT: typed::Cut = typed::Cut::between((0, 1), (0, 0));
    const AT_PASSENGER_BELT: typed::Cut = typed::Cut::between((0, 3), (0, 2));
    const AT_PASSENGER_SEAT: typed::Cut = typed::Cut::between((0, 5), (0, 4));
    const AT_WARNING_LAMP: typed::Cut = typed::Cut::between((0, 7), (0, 6));
    const AT_ALIVE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((2, 7), (2, 0));

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let bits = Self::AT_DRIVER_BELT.of(payload);
        let driver_belt = BeltsDriverBelt::from_raw(bits as u8);
        let bits = Self::AT_PASSENGER_BELT.of(payload);
        let passenger_belt = BeltsDriverBelt::from_raw(bits as u8);
        let bits = Self::AT_PASSENGER_SEAT.of(payload);
        let passenger_seat = BeltsPassengerSeat::from_raw(bits as u8);
        let bits = Self::AT_WARNING_LAMP.of(payload);
        let warning_lamp = BeltsWarningLamp::from_raw(bits as u8);
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            driver_belt,
            passenger_belt,
            passenger_seat,
            warning_lamp,
            alive,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.driver_belt.raw());
        let bits = typed::unsigned_bits(number, 2, "driver_belt")?;
        Self::AT_DRIVER_BELT.put(payload, bits);
        let number = u64::from(self.passenger_belt.raw());
        let bits = typed::unsigned_bits(number, 2, "passenger_belt")?;
        Self::AT_PASSENGER_BELT.put(payload, bits);
        let number = u64::from(self.passenger_seat.raw());
        let bits = typed::unsigned_bits(number, 2, "passenger_seat")?;
        Self::AT_PASSENGER_SEAT.put(payload, bits);
        let number = u64::from(self.warning_lamp.raw());
        let bits = typed::unsigned_bits(number, 2, "warning_lamp")?;
        Self::AT_WARNING_LAMP.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 8, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 8, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = &typed::sums::CRC8_SAE_J1850;
        let state = sum.start();
        let bytes = payload.get(0..2)?;
        let state = sum.update(state, bytes);
        let state = sum.update(state, &[0x50]);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn driver_belt(&self) -> typed::Reading<BeltsDriverBelt> {
        match self.driver_belt.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.driver_belt),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn passenger_belt(&self) -> typed::Reading<BeltsDriverBelt> {
        match self.passenger_belt.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.passenger_belt),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn passenger_seat(&self) -> typed::Reading<BeltsPassengerSeat> {
        match self.passenger_seat.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.passenger_seat),
        }
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 255, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.driver_belt();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.driver_belt;
        let said = said.word(state.word());
        let name = typed::Name::of("driver_belt");
        tell(name, said);
        let said = self.passenger_belt();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.passenger_belt;
        let said = said.word(state.word());
        let name = typed::Name::of("passenger_belt");
        tell(name, said);
        let said = self.passenger_seat();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.passenger_seat;
        let said = said.word(state.word());
        let name = typed::Name::of("passenger_seat");
        tell(name, said);
        let said = self.warning_lamp;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.warning_lamp;
        let said = said.word(state.word());
        let name = typed::Name::of("warning_lamp");
        tell(name, said);
        let said = typed::Said::from(self.alive);
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Engine.
///
/// Engine speed and what the driver's foot wants.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineState {
    /// Engine speed.
    ///
    /// `raw * 0.25` rpm; 16 bits.
    pub engine_speed: u16,
    /// Accelerator pedal.
    ///
    /// `raw * 0.4` %; 8 bits.
    pub accelerator: u8,
    /// Accelerator pedal, second track.
    ///
    /// Half of the first track, within 2 %.
    ///
    /// `raw * 0.2` %; 8 bits.
    pub accelerator_track_2: u8,
    /// Throttle plate.
    ///
    /// `raw * 0.4` %; 8 bits.
    pub throttle: u8,
    /// `raw`; 3 bits.
    pub run_state: EngineStateRunState,
    /// Accelerator released.
    ///
    /// `raw`; 1 bit.
    pub foot_off: YesNo,
    /// `raw`; 1 bit.
    pub kickdown: YesNo,
    /// Stop and start ready.
    ///
    /// `raw`; 1 bit.
    pub stop_start: YesNo,
    /// Fuel rate.
    ///
    /// `raw * 0.01` L/h; 16 bits.
    pub fuel_rate: u16,
}

impl EngineState {
    /// The identifier.
    pub const ID: u32 = 0x110;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_millis(500);
    const AT_ENGINE_SPEED: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_ACCELERATOR: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_ACCELERATOR_TRACK_2: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_THROTTLE: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_RUN_STATE: typed::Cut = typed::Cut::between((5, 2), (5, 0));
    const AT_FOOT_OFF: typed::Cut = typed::Cut::between((5, 3), (5, 3));
    const AT_KICKDOWN: typed::Cut = typed::Cut::between((5, 4), (5, 4));
    const AT_STOP_START: typed::Cut = typed::Cut::between((5, 5), (5, 5));
    const AT_FUEL_RATE: typed::Cut = typed::Cut::between((7, 7), (6, 0));
    const FORMULA_ENGINE_SPEED: typed::Formula = typed::Formula::new(1, 0, 4);
    const FORMULA_ACCELERATOR: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_ACCELERATOR_TRACK_2: typed::Formula = typed::Formula::new(1, 0, 5);
    const FORMULA_THROTTLE: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_FUEL_RATE: typed::Formula = typed::Formula::new(1, 0, 100);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let engine_speed = Self::AT_ENGINE_SPEED.of(payload) as u16;
        let accelerator = Self::AT_ACCELERATOR.of(payload) as u8;
        let accelerator_track_2 = Self::AT_ACCELERATOR_TRACK_2.of(payload) as u8;
        let throttle = Self::AT_THROTTLE.of(payload) as u8;
        let bits = Self::AT_RUN_STATE.of(payload);
        let run_state = EngineStateRunState::from_raw(bits as u8);
        let bits = Self::AT_FOOT_OFF.of(payload);
        let foot_off = YesNo::from_raw(bits as u8);
        let bits = Self::AT_KICKDOWN.of(payload);
        let kickdown = YesNo::from_raw(bits as u8);
        let bits = Self::AT_STOP_START.of(payload);
        let stop_start = YesNo::from_raw(bits as u8);
        let fuel_rate = Self::AT_FUEL_RATE.of(payload) as u16;
        Self {
            engine_speed,
            accelerator,
            accelerator_track_2,
            throttle,
            run_state,
            foot_off,
            kickdown,
            stop_start,
            fuel_rate,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.engine_speed);
        let bits = typed::unsigned_bits(number, 16, "engine_speed")?;
        Self::AT_ENGINE_SPEED.put(payload, bits);
        let number = u64::from(self.accelerator);
        let bits = typed::unsigned_bits(number, 8, "accelerator")?;
        Self::AT_ACCELERATOR.put(payload, bits);
        let number = u64::from(self.accelerator_track_2);
        let bits = typed::unsigned_bits(number, 8, "accelerator_track_2")?;
        Self::AT_ACCELERATOR_TRACK_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.throttle), 8, "throttle")?;
        Self::AT_THROTTLE.put(payload, bits);
        let number = u64::from(self.run_state.raw());
        let bits = typed::unsigned_bits(number, 3, "run_state")?;
        Self::AT_RUN_STATE.put(payload, bits);
        let number = u64::from(self.foot_off.raw());
        let bits = typed::unsigned_bits(number, 1, "foot_off")?;
        Self::AT_FOOT_OFF.put(payload, bits);
        let number = u64::from(self.kickdown.raw());
        let bits = typed::unsigned_bits(number, 1, "kickdown")?;
        Self::AT_KICKDOWN.put(payload, bits);
        let number = u64::from(self.stop_start.raw());
        let bits = typed::unsigned_bits(number, 1, "stop_start")?;
        Self::AT_STOP_START.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.fuel_rate), 16, "fuel_rate")?;
        Self::AT_FUEL_RATE.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in rpm.
    #[must_use]
    pub fn engine_speed(&self) -> typed::Reading<f64> {
        match self.engine_speed {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 4.0),
        }
    }

    /// Sets `engine_speed` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_engine_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_ENGINE_SPEED;
        let raw = &mut self.engine_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8000 in rpm.
    #[must_use]
    pub fn engine_speed_is_outside(&self) -> bool {
        let raw = self.engine_speed;
        matches!(raw, 0x7D01..=0xFFFE)
    }

    /// The value in %.
    #[must_use]
    pub fn accelerator(&self) -> typed::Reading<f64> {
        match self.accelerator {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `accelerator` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_accelerator(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ACCELERATOR;
        let raw = &mut self.accelerator;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn accelerator_is_outside(&self) -> bool {
        let raw = self.accelerator;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn accelerator_track_2(&self) -> typed::Reading<f64> {
        match self.accelerator_track_2 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 5.0),
        }
    }

    /// Sets `accelerator_track_2` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_accelerator_track_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ACCELERATOR_TRACK_2;
        let raw = &mut self.accelerator_track_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 50 in %.
    #[must_use]
    pub fn accelerator_track_2_is_outside(&self) -> bool {
        let raw = self.accelerator_track_2;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn throttle(&self) -> typed::Reading<f64> {
        match self.throttle {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `throttle` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_throttle(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_THROTTLE;
        let raw = &mut self.throttle;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn throttle_is_outside(&self) -> bool {
        let raw = self.throttle;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn run_state(&self) -> typed::Reading<EngineStateRunState> {
        match self.run_state.raw() {
            7 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.run_state),
        }
    }

    /// The value in L/h.
    #[must_use]
    pub fn fuel_rate(&self) -> typed::Reading<f64> {
        match self.fuel_rate {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `fuel_rate` to the raw number nearest to a value in L/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fuel_rate(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_FUEL_RATE;
        let raw = &mut self.fuel_rate;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 80 in L/h.
    #[must_use]
    pub fn fuel_rate_is_outside(&self) -> bool {
        let raw = self.fuel_rate;
        matches!(raw, 0x1F41..=0xFFFE)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.engine_speed());
        let is_outside = self.engine_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("engine_speed");
        tell(name, said);
        let said = typed::Said::from(self.accelerator());
        let is_outside = self.accelerator_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("accelerator");
        tell(name, said);
        let said = self.accelerator_track_2();
        let said = typed::Said::from(said);
        let is_outside = self.accelerator_track_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("accelerator_track_2");
        tell(name, said);
        let said = typed::Said::from(self.throttle());
        let is_outside = self.throttle_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("throttle");
        tell(name, said);
        let said = self.run_state();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.run_state;
        let said = said.word(state.word());
        let name = typed::Name::of("run_state");
        tell(name, said);
        let said = self.foot_off;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.foot_off;
        let said = said.word(state.word());
        let name = typed::Name::of("foot_off");
        tell(name, said);
        let said = self.kickdown;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.kickdown;
        let said = said.word(state.word());
        let name = typed::Name::of("kickdown");
        tell(name, said);
        let said = self.stop_start;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.stop_start;
        let said = said.word(state.word());
        let name = typed::Name::of("stop_start");
        tell(name, said);
        let said = typed::Said::from(self.fuel_rate());
        let is_outside = self.fuel_rate_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel_rate");
        tell(name, said);
    }
}

/// Engine torque.
///
/// Torque at the crankshaft, and the answer to the gearbox. While the gearbox intervenes it comes five times as often.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineTorque {
    /// Torque at the crankshaft.
    ///
    /// `raw * 0.1` N·m; 16 bits, signed.
    pub actual_torque: i16,
    /// What the driver wants.
    ///
    /// `raw * 0.1` N·m; 16 bits, signed.
    pub driver_demand: i16,
    /// Friction torque.
    ///
    /// Friction only brakes, so the formula turns the sign.
    ///
    /// `raw * -0.5` N·m; 8 bits.
    pub friction: u8,
    /// Answer to the gearbox.
    ///
    /// `raw`; 2 bits.
    pub answer: EngineTorqueAnswer,
    /// Likely.
    ///
    /// `raw`; 3 bits.
    pub limited_by: EngineTorqueLimitedBy,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 15.
    pub alive: u8,
    /// `raw`; 4 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
    /// Highest torque now.
    ///
    /// `raw * 4` N·m; 8 bits.
    pub highest_torque: u8,
}

impl EngineTorque {
    /// The identifier.
    pub const ID: u32 = 0xD0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_millis(500);
    const AT_ACTUAL_TORQUE: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_DRIVER_DEMAND: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_FRICTION: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_ANSWER: typed::Cut = typed::Cut::between((5, 1), (5, 0));
    const AT_LIMITED_BY: typed::Cut = typed::Cut::between((5, 4), (5, 2));
    const AT_ALIVE: typed::Cut = typed::Cut::between((6, 3), (6, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((6, 7), (6, 4));
    const AT_HIGHEST_TORQUE: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_ACTUAL_TORQUE: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_DRIVER_DEMAND: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_FRICTION: typed::Formula = typed::Formula::new(-1, 0, 2);
    const FORMULA_HIGHEST_TORQUE: typed::Formula = typed::Formula::new(4, 0, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_ACTUAL_TORQUE.of(payload);
        let actual_torque = typed::signed(bits, 16) as i16;
        let bits = Self::AT_DRIVER_DEMAND.of(payload);
        let driver_demand = typed::signed(bits, 16) as i16;
        let friction = Self::AT_FRICTION.of(payload) as u8;
        let bits = Self::AT_ANSWER.of(payload);
        let answer = EngineTorqueAnswer::from_raw(bits as u8);
        let bits = Self::AT_LIMITED_BY.of(payload);
        let limited_by = EngineTorqueLimitedBy::from_raw(bits as u8);
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        let highest_torque = Self::AT_HIGHEST_TORQUE.of(payload) as u8;
        Self {
            actual_torque,
            driver_demand,
            friction,
            answer,
            limited_by,
            alive,
            check,
            highest_torque,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = i64::from(self.actual_torque);
        let bits = typed::signed_bits(number, 16, "actual_torque")?;
        Self::AT_ACTUAL_TORQUE.put(payload, bits);
        let number = i64::from(self.driver_demand);
        let bits = typed::signed_bits(number, 16, "driver_demand")?;
        Self::AT_DRIVER_DEMAND.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.friction), 8, "friction")?;
        Self::AT_FRICTION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.answer.raw()), 2, "answer")?;
        Self::AT_ANSWER.put(payload, bits);
        let number = u64::from(self.limited_by.raw());
        let bits = typed::unsigned_bits(number, 3, "limited_by")?;
        Self::AT_LIMITED_BY.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 4, "check")?;
        Self::AT_CHECK.put(payload, bits);
        let number = u64::from(self.highest_torque);
        let bits = typed::unsigned_bits(number, 8, "highest_torque")?;
        Self::AT_HIGHEST_TORQUE.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = wirelore_bits::sums::ByteSum::WRAPPING.folded();
        let state = sum.start();
        let bytes = payload.get(0..6)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// The value in N·m.
    #[must_use]
    pub fn actual_torque(&self) -> typed::Reading<f64> {
        match self.actual_torque {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `actual_torque` to the raw number nearest to a value in N·m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_actual_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_ACTUAL_TORQUE;
        let raw = &mut self.actual_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -500 to 1000 in N·m.
    #[must_use]
    pub fn actual_torque_is_outside(&self) -> bool {
        let raw = self.actual_torque;
        matches!(raw, -32767..=-5001 | 0x2711..=0x7FFF)
    }

    /// The value in N·m.
    #[must_use]
    pub fn driver_demand(&self) -> typed::Reading<f64> {
        match self.driver_demand {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `driver_demand` to the raw number nearest to a value in N·m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_driver_demand(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_DRIVER_DEMAND;
        let raw = &mut self.driver_demand;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -500 to 1000 in N·m.
    #[must_use]
    pub fn driver_demand_is_outside(&self) -> bool {
        let raw = self.driver_demand;
        matches!(raw, -32767..=-5001 | 0x2711..=0x7FFF)
    }

    /// The value in N·m.
    #[must_use]
    pub fn friction(&self) -> f64 {
        let raw = self.friction;
        (-i64::from(raw)) as f64 / 2.0
    }

    /// Sets `friction` to the raw number nearest to a value in N·m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_friction(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_FRICTION;
        let raw = &mut self.friction;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -127 to 0 in N·m.
    #[must_use]
    pub fn friction_is_outside(&self) -> bool {
        let raw = self.friction;
        matches!(raw, 255)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 15, 1);
        next as u8
    }

    /// The value in N·m.
    #[must_use]
    pub fn highest_torque(&self) -> f64 {
        let raw = self.highest_torque;
        (i64::from(raw) * 4) as f64
    }

    /// Sets `highest_torque` to the raw number nearest to a value in N·m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_highest_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_HIGHEST_TORQUE;
        let raw = &mut self.highest_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 1000 in N·m.
    #[must_use]
    pub fn highest_torque_is_outside(&self) -> bool {
        let raw = self.highest_torque;
        matches!(raw, 251..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.actual_torque());
        let is_outside = self.actual_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("actual_torque");
        tell(name, said);
        let said = typed::Said::from(self.driver_demand());
        let is_outside = self.driver_demand_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("driver_demand");
        tell(name, said);
        let said = typed::Said::from(self.friction());
        let is_outside = self.friction_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("friction");
        tell(name, said);
        let said = self.answer;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.answer;
        let said = said.word(state.word());
        let name = typed::Name::of("answer");
        tell(name, said);
        let said = self.limited_by;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.limited_by;
        let said = said.word(state.word());
        let name = typed::Name::of("limited_by");
        tell(name, said);
        let said = typed::Said::from(self.alive);
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
        let said = self.highest_torque();
        let said = typed::Said::from(said);
        let is_outside = self.highest_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("highest_torque");
        tell(name, said);
    }
}

/// Shift request.
///
/// What the gearbox wants from the engine. Outside a shift the request repeats the driver's demand; in a shift it falls, or rises for
/// a coasting downshift, before the ratio changes. Fast while it intervenes. For reading only: a request can move the van.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShiftRequest {
    /// Torque request.
    ///
    /// Confirmed: upshift at light throttle, lift off compared.
    ///
    /// `raw * 0.1` N·m; 16 bits, signed.
    pub torque_request: i16,
    /// `raw`; 2 bits.
    pub intervention: ShiftRequestIntervention,
    /// Converter clutch.
    ///
    /// `raw`; 2 bits.
    pub converter: ShiftRequestConverter,
    /// Phase of the shift.
    ///
    /// Likely: order fits, names are mine.
    ///
    /// `raw`; 3 bits.
    pub phase: ShiftRequestPhase,
    /// `raw`; 4 bits.
    pub target_gear: GearPosition,
    /// `raw`; 4 bits.
    pub current_gear: GearPosition,
    /// Output shaft.
    ///
    /// `raw * 0.25` rpm; 16 bits.
    pub output_speed: u16,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 15.
    pub alive: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl ShiftRequest {
    /// The identifier.
    pub const ID: u32 = 0xC8;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(200);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_TORQUE_REQUEST: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_INTERVENTION: typed::Cut = typed::Cut::between((2, 1), (2, 0));
    const AT_CONVERTER: typed::Cut = typed::Cut::between((2, 3), (2, 2));
    const AT_PHASE: typed::Cut = typed::Cut::between((2, 6), (2, 4));
    const AT_TARGET_GEAR: typed::Cut = typed::Cut::between((3, 3), (3, 0));
    const AT_CURRENT_GEAR: typed::Cut = typed::Cut::between((3, 7), (3, 4));
    const AT_OUTPUT_SPEED: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_ALIVE: typed::Cut = typed::Cut::between((6, 3), (6, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_TORQUE_REQUEST: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_OUTPUT_SPEED: typed::Formula = typed::Formula::new(1, 0, 4);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_TORQUE_REQUEST.of(payload);
        let torque_request = typed::signed(bits, 16) as i16;
        let bits = Self::AT_INTERVENTION.of(payload);
        let intervention = ShiftRequestIntervention::from_raw(bits as u8);
        let bits = Self::AT_CONVERTER.of(payload);
        let converter = ShiftRequestConverter::from_raw(bits as u8);
        let bits = Self::AT_PHASE.of(payload);
        let phase = ShiftRequestPhase::from_raw(bits as u8);
        let bits = Self::AT_TARGET_GEAR.of(payload);
        let target_gear = GearPosition::from_raw(bits as u8);
        let bits = Self::AT_CURRENT_GEAR.of(payload);
        let current_gear = GearPosition::from_raw(bits as u8);
        let output_speed = Self::AT_OUTPUT_SPEED.of(payload) as u16;
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            torque_request,
            intervention,
            converter,
            phase,
            target_gear,
            current_gear,
            output_speed,
            alive,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = i64::from(self.torque_request);
        let bits = typed::signed_bits(number, 16, "torque_request")?;
        Self::AT_TORQUE_REQUEST.put(payload, bits);
        let number = u64::from(self.intervention.raw());
        let bits = typed::unsigned_bits(number, 2, "intervention")?;
        Self::AT_INTERVENTION.put(payload, bits);
        let number = u64::from(self.converter.raw());
        let bits = typed::unsigned_bits(number, 2, "converter")?;
        Self::AT_CONVERTER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.phase.raw()), 3, "phase")?;
        Self::AT_PHASE.put(payload, bits);
        let number = u64::from(self.target_gear.raw());
        let bits = typed::unsigned_bits(number, 4, "target_gear")?;
        Self::AT_TARGET_GEAR.put(payload, bits);
        let number = u64::from(self.current_gear.raw());
        let bits = typed::unsigned_bits(number, 4, "current_gear")?;
        Self::AT_CURRENT_GEAR.put(payload, bits);
        let number = u64::from(self.output_speed);
        let bits = typed::unsigned_bits(number, 16, "output_speed")?;
        Self::AT_OUTPUT_SPEED.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 8, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = wirelore_bits::sums::ByteSum::XOR;
        let state = sum.start();
        let bytes = payload.get(0..7)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// The value in N·m.
    #[must_use]
    pub fn torque_request(&self) -> typed::Reading<f64> {
        match self.torque_request {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `torque_request` to the raw number nearest to a value in N·m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_torque_request(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_TORQUE_REQUEST;
        let raw = &mut self.torque_request;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -500 to 1000 in N·m.
    #[must_use]
    pub fn torque_request_is_outside(&self) -> bool {
        let raw = self.torque_request;
        matches!(raw, -32767..=-5001 | 0x2711..=0x7FFF)
    }

    /// What the raw number says.
    #[must_use]
    pub fn intervention(&self) -> typed::Reading<ShiftRequestIntervention> {
        match self.intervention.raw() {
            3 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.intervention),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn target_gear(&self) -> typed::Reading<GearPosition> {
        match self.target_gear.raw() {
            15 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.target_gear),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn current_gear(&self) -> typed::Reading<GearPosition> {
        match self.current_gear.raw() {
            15 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.current_gear),
        }
    }

    /// The value in rpm.
    #[must_use]
    pub fn output_speed(&self) -> typed::Reading<f64> {
        match self.output_speed {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 4.0),
        }
    }

    /// Sets `output_speed` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_output_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_OUTPUT_SPEED;
        let raw = &mut self.output_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8000 in rpm.
    #[must_use]
    pub fn output_speed_is_outside(&self) -> bool {
        let raw = self.output_speed;
        matches!(raw, 0x7D01..=0xFFFE)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 15, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.torque_request();
        let said = typed::Said::from(said);
        let is_outside = self.torque_request_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("torque_request");
        tell(name, said);
        let said = self.intervention();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.intervention;
        let said = said.word(state.word());
        let name = typed::Name::of("intervention");
        tell(name, said);
        let said = self.converter;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.converter;
        let said = said.word(state.word());
        let name = typed::Name::of("converter");
        tell(name, said);
        let said = self.phase;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.phase;
        let said = said.word(state.word());
        let name = typed::Name::of("phase");
        tell(name, said);
        let said = self.target_gear();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.target_gear;
        let said = said.word(state.word());
        let name = typed::Name::of("target_gear");
        tell(name, said);
        let said = self.current_gear();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.current_gear;
        let said = said.word(state.word());
        let name = typed::Name::of("current_gear");
        tell(name, said);
        let said = typed::Said::from(self.output_speed());
        let is_outside = self.output_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("output_speed");
        tell(name, said);
        let said = typed::Said::from(self.alive);
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Selector lever.
///
/// The lever in the dash. Two tracks that must add up to 250.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SelectorLever {
    /// `raw`; 4 bits.
    pub position: SelectorLeverPosition,
    /// `raw`; 1 bit.
    pub release_button: YesNo,
    /// Lock of the lever in P.
    ///
    /// `raw`; 1 bit.
    pub park_lock: SelectorLeverParkLock,
    /// Winter programme.
    ///
    /// `raw`; 1 bit.
    pub winter: YesNo,
    /// `raw`; 8 bits.
    pub track_1: u8,
    /// `raw`; 8 bits.
    pub track_2: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl SelectorLever {
    /// The identifier.
    pub const ID: u32 = 0x1C2;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 4;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
    const AT_POSITION: typed::Cut = typed::Cut::between((0, 3), (0, 0));
    const AT_RELEASE_BUTTON: typed::Cut = typed::Cut::between((0, 4), (0, 4));
    const AT_PARK_LOCK: typed::Cut = typed::Cut::between((0, 5), (0, 5));
    const AT_WINTER: typed::Cut = typed::Cut::between((0, 6), (0, 6));
    const AT_TRACK_1: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_TRACK_2: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((3, 7), (3, 0));

    #[inline]
    fn read(payload: &[u8; 4]) -> Self {
        let bits = Self::AT_POSITION.of(payload);
        let position = SelectorLeverPosition::from_raw(bits as u8);
        let bits = Self::AT_RELEASE_BUTTON.of(payload);
        let release_button = YesNo::from_raw(bits as u8);
        let bits = Self::AT_PARK_LOCK.of(payload);
        let park_lock = SelectorLeverParkLock::from_raw(bits as u8);
        let bits = Self::AT_WINTER.of(payload);
        let winter = YesNo::from_raw(bits as u8);
        let track_1 = Self::AT_TRACK_1.of(payload) as u8;
        let track_2 = Self::AT_TRACK_2.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            position,
            release_button,
            park_lock,
            winter,
            track_1,
            track_2,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.position.raw());
        let bits = typed::unsigned_bits(number, 4, "position")?;
        Self::AT_POSITION.put(payload, bits);
        let number = u64::from(self.release_button.raw());
        let bits = typed::unsigned_bits(number, 1, "release_button")?;
        Self::AT_RELEASE_BUTTON.put(payload, bits);
        let number = u64::from(self.park_lock.raw());
        let bits = typed::unsigned_bits(number, 1, "park_lock")?;
        Self::AT_PARK_LOCK.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.winter.raw()), 1, "winter")?;
        Self::AT_WINTER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.track_1), 8, "track_1")?;
        Self::AT_TRACK_1.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.track_2), 8, "track_2")?;
        Self::AT_TRACK_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 8, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = wirelore_bits::sums::ByteSum::END_AROUND.inverted();
        let state = sum.start();
        let bytes = payload.get(0..3)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 4], typed::NotEncoded> {
        let mut payload = [0; 4];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn position(&self) -> typed::Reading<SelectorLeverPosition> {
        match self.position.raw() {
            15 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.position),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn track_1(&self) -> typed::Reading<u8> {
        match self.track_1 {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 250.
    #[must_use]
    pub fn track_1_is_outside(&self) -> bool {
        let raw = self.track_1;
        matches!(raw, 251..=254)
    }

    /// What the raw number says.
    #[must_use]
    pub fn track_2(&self) -> typed::Reading<u8> {
        match self.track_2 {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 250.
    #[must_use]
    pub fn track_2_is_outside(&self) -> bool {
        let raw = self.track_2;
        matches!(raw, 251..=254)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.position();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.position;
        let said = said.word(state.word());
        let name = typed::Name::of("position");
        tell(name, said);
        let said = self.release_button;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.release_button;
        let said = said.word(state.word());
        let name = typed::Name::of("release_button");
        tell(name, said);
        let said = self.park_lock;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.park_lock;
        let said = said.word(state.word());
        let name = typed::Name::of("park_lock");
        tell(name, said);
        let said = self.winter;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.winter;
        let said = said.word(state.word());
        let name = typed::Name::of("winter");
        tell(name, said);
        let said = typed::Said::from(self.track_1());
        let is_outside = self.track_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("track_1");
        tell(name, said);
        let said = typed::Said::from(self.track_2());
        let is_outside = self.track_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("track_2");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Engine temperatures.
///
/// Temperatures and pressures that change slowly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineTemperatures {
    /// `raw - 40` °C; 8 bits.
    pub coolant: u8,
    /// `raw - 40` °C; 8 bits.
    pub oil: u8,
    /// Raw number of the sensor's voltage divider; the curve is read off a warm and a cold engine.
    ///
    /// Measured: six points against a thermometer, the ends are drawn on.
    ///
    /// a sensor curve °C; 8 bits.
    pub intake_air: u8,
    /// `raw - 40` °C; 8 bits.
    pub fuel: u8,
    /// Pressure of the air outside.
    ///
    /// `raw * 0.5` kPa; 8 bits.
    pub air_pressure: u8,
    /// `raw * 0.0625` bar; 8 bits.
    pub oil_pressure: u8,
    /// Radiator fan.
    ///
    /// `raw * 0.5` %; 8 bits.
    pub fan: u8,
    /// `raw * 0.5` %; 8 bits.
    pub oil_level: u8,
}

impl EngineTemperatures {
    /// The identifier.
    pub const ID: u32 = 0x3D0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(5);
    const AT_COOLANT: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_OIL: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_INTAKE_AIR: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_FUEL: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_AIR_PRESSURE: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_OIL_PRESSURE: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_FAN: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_OIL_LEVEL: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_COOLANT: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_OIL: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_FUEL: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_AIR_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_OIL_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 16);
    const FORMULA_FAN: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_OIL_LEVEL: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let coolant = Self::AT_COOLANT.of(payload) as u8;
        let oil = Self::AT_OIL.of(payload) as u8;
        let intake_air = Self::AT_INTAKE_AIR.of(payload) as u8;
        let fuel = Self::AT_FUEL.of(payload) as u8;
        let air_pressure = Self::AT_AIR_PRESSURE.of(payload) as u8;
        let oil_pressure = Self::AT_OIL_PRESSURE.of(payload) as u8;
        let fan = Self::AT_FAN.of(payload) as u8;
        let oil_level = Self::AT_OIL_LEVEL.of(payload) as u8;
        Self {
            coolant,
            oil,
            intake_air,
            fuel,
            air_pressure,
            oil_pressure,
            fan,
            oil_level,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.coolant), 8, "coolant")?;
        Self::AT_COOLANT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.oil), 8, "oil")?;
        Self::AT_OIL.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.intake_air), 8, "intake_air")?;
        Self::AT_INTAKE_AIR.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.fuel), 8, "fuel")?;
        Self::AT_FUEL.put(payload, bits);
        let number = u64::from(self.air_pressure);
        let bits = typed::unsigned_bits(number, 8, "air_pressure")?;
        Self::AT_AIR_PRESSURE.put(payload, bits);
        let number = u64::from(self.oil_pressure);
        let bits = typed::unsigned_bits(number, 8, "oil_pressure")?;
        Self::AT_OIL_PRESSURE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.fan), 8, "fan")?;
        Self::AT_FAN.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.oil_level), 8, "oil_level")?;
        Self::AT_OIL_LEVEL.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn coolant(&self) -> typed::Reading<f64> {
        match self.coolant {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `coolant` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_coolant(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_COOLANT;
        let raw = &mut self.coolant;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 150 in °C.
    #[must_use]
    pub fn coolant_is_outside(&self) -> bool {
        let raw = self.coolant;
        matches!(raw, 191..=254)
    }

    /// The value in °C.
    #[must_use]
    pub fn oil(&self) -> typed::Reading<f64> {
        match self.oil {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `oil` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_oil(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_OIL;
        let raw = &mut self.oil;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 180 in °C.
    #[must_use]
    pub fn oil_is_outside(&self) -> bool {
        let raw = self.oil;
        matches!(raw, 221..=254)
    }

    /// The value in °C.
    #[must_use]
    pub fn intake_air(&self) -> typed::Reading<f64> {
        match self.intake_air {
            255 => typed::Reading::NoReading,
            raw @ (8..=15) => {
                let value = (i64::from(raw) * -15 + 680) as f64 / 4.0;
                typed::Reading::Value(value)
            }
            raw @ (16..=31) => {
                let value = (i64::from(raw) * -7 + 552) as f64 / 4.0;
                typed::Reading::Value(value)
            }
            raw @ (32..=63) => {
                let value = (i64::from(raw) * -27 + 3488) as f64 / 32.0;
                typed::Reading::Value(value)
            }
            raw @ (64..=95) => {
                let value = (i64::from(raw) * -17 + 2848) as f64 / 32.0;
                typed::Reading::Value(value)
            }
            raw @ (96..=127) => {
                let value = (i64::from(raw) * -13 + 2464) as f64 / 32.0;
                typed::Reading::Value(value)
            }
            raw @ (128..=159) => {
                let value = (i64::from(raw) * -13 + 2464) as f64 / 32.0;
                typed::Reading::Value(value)
            }
            raw @ (160..=191) => {
                let value = (i64::from(raw) * -7 + 1312) as f64 / 16.0;
                typed::Reading::Value(value)
            }
            raw @ (192..=223) => {
                let value = (i64::from(raw) * -9 + 1696) as f64 / 16.0;
                typed::Reading::Value(value)
            }
            raw @ (224..=248) => {
                let value = (i64::from(raw) * -5 + 1000) as f64 / 6.0;
                typed::Reading::Value(value)
            }
            _ => typed::Reading::Undefined,
        }
    }

    /// Whether the value lies outside its range, -40 to 140 in °C.
    #[must_use]
    pub fn intake_air_is_outside(&self) -> bool {
        false
    }

    /// The value in °C.
    #[must_use]
    pub fn fuel(&self) -> typed::Reading<f64> {
        match self.fuel {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `fuel` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fuel(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_FUEL;
        let raw = &mut self.fuel;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 120 in °C.
    #[must_use]
    pub fn fuel_is_outside(&self) -> bool {
        let raw = self.fuel;
        matches!(raw, 161..=254)
    }

    /// The value in kPa.
    #[must_use]
    pub fn air_pressure(&self) -> f64 {
        let raw = self.air_pressure;
        f64::from(raw) / 2.0
    }

    /// Sets `air_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_air_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_AIR_PRESSURE;
        let raw = &mut self.air_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 50 to 120 in kPa.
    #[must_use]
    pub fn air_pressure_is_outside(&self) -> bool {
        let raw = self.air_pressure;
        matches!(raw, 0..=99 | 241..=255)
    }

    /// The value in bar.
    #[must_use]
    pub fn oil_pressure(&self) -> f64 {
        let raw = self.oil_pressure;
        f64::from(raw) / 16.0
    }

    /// Sets `oil_pressure` to the raw number nearest to a value in bar.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_oil_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_OIL_PRESSURE;
        let raw = &mut self.oil_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 12 in bar.
    #[must_use]
    pub fn oil_pressure_is_outside(&self) -> bool {
        let raw = self.oil_pressure;
        matches!(raw, 193..=255)
    }

    /// The value in %.
    #[must_use]
    pub fn fan(&self) -> f64 {
        let raw = self.fan;
        f64::from(raw) / 2.0
    }

    /// Sets `fan` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fan(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_FAN;
        let raw = &mut self.fan;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn fan_is_outside(&self) -> bool {
        let raw = self.fan;
        matches!(raw, 201..=255)
    }

    /// The value in %.
    #[must_use]
    pub fn oil_level(&self) -> typed::Reading<f64> {
        match self.oil_level {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `oil_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_oil_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_OIL_LEVEL;
        let raw = &mut self.oil_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn oil_level_is_outside(&self) -> bool {
        let raw = self.oil_level;
        matches!(raw, 201..=254)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.coolant());
        let is_outside = self.coolant_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("coolant");
        tell(name, said);
        let said = typed::Said::from(self.oil());
        let is_outside = self.oil_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("oil");
        tell(name, said);
        let said = typed::Said::from(self.intake_air());
        let is_outside = self.intake_air_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("intake_air");
        tell(name, said);
        let said = typed::Said::from(self.fuel());
        let is_outside = self.fuel_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel");
        tell(name, said);
        let said = typed::Said::from(self.air_pressure());
        let is_outside = self.air_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("air_pressure");
        tell(name, said);
        let said = typed::Said::from(self.oil_pressure());
        let is_outside = self.oil_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("oil_pressure");
        tell(name, said);
        let said = typed::Said::from(self.fan());
        let is_outside = self.fan_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fan");
        tell(name, said);
        let said = typed::Said::from(self.oil_level());
        let is_outside = self.oil_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("oil_level");
        tell(name, said);
    }
}

/// Battery and alternator.
///
/// Battery and alternator. The engine unit asks the sensor on the battery clamp over a wire of its own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Charging {
    /// `raw * 0.001` V; 16 bits.
    pub battery_voltage: u16,
    /// Into the battery is positive.
    ///
    /// `raw * 0.05` A; 16 bits, signed.
    pub battery_current: i16,
    /// `raw * 0.5` %; 8 bits.
    pub alternator_load: u8,
    /// `raw * 0.5` %; 8 bits.
    pub battery_charge: u8,
    /// `raw - 40` °C; 8 bits.
    pub battery_temperature: u8,
    /// `raw * 0.1 + 10.6` V; 6 bits.
    pub alternator_target: u8,
    /// `raw`; 1 bit.
    pub charge_lamp: YesNo,
    /// `raw`; 1 bit.
    pub load_shedding: YesNo,
}

impl Charging {
    /// The identifier.
    pub const ID: u32 = 0x2D4;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(5);
    const AT_BATTERY_VOLTAGE: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_BATTERY_CURRENT: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_ALTERNATOR_LOAD: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_BATTERY_CHARGE: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_BATTERY_TEMPERATURE: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_ALTERNATOR_TARGET: typed::Cut = typed::Cut::between((7, 5), (7, 0));
    const AT_CHARGE_LAMP: typed::Cut = typed::Cut::between((7, 6), (7, 6));
    const AT_LOAD_SHEDDING: typed::Cut = typed::Cut::between((7, 7), (7, 7));
    const FORMULA_BATTERY_VOLTAGE: typed::Formula = typed::Formula::new(1, 0, 1000);
    const FORMULA_BATTERY_CURRENT: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_ALTERNATOR_LOAD: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_BATTERY_CHARGE: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_BATTERY_TEMPERATURE: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_ALTERNATOR_TARGET: typed::Formula = typed::Formula::new(1, 106, 10);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let battery_voltage = Self::AT_BATTERY_VOLTAGE.of(payload) as u16;
        let bits = Self::AT_BATTERY_CURRENT.of(payload);
        let battery_current = typed::signed(bits, 16) as i16;
        let alternator_load = Self::AT_ALTERNATOR_LOAD.of(payload) as u8;
        let battery_charge = Self::AT_BATTERY_CHARGE.of(payload) as u8;
        let battery_temperature = Self::AT_BATTERY_TEMPERATURE.of(payload) as u8;
        let alternator_target = Self::AT_ALTERNATOR_TARGET.of(payload) as u8;
        let bits = Self::AT_CHARGE_LAMP.of(payload);
        let charge_lamp = YesNo::from_raw(bits as u8);
        let bits = Self::AT_LOAD_SHEDDING.of(payload);
        let load_shedding = YesNo::from_raw(bits as u8);
        Self {
            battery_voltage,
            battery_current,
            alternator_load,
            battery_charge,
            battery_temperature,
            alternator_target,
            charge_lamp,
            load_shedding,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.battery_voltage);
        let bits = typed::unsigned_bits(number, 16, "battery_voltage")?;
        Self::AT_BATTERY_VOLTAGE.put(payload, bits);
        let number = i64::from(self.battery_current);
        let bits = typed::signed_bits(number, 16, "battery_current")?;
        Self::AT_BATTERY_CURRENT.put(payload, bits);
        let number = u64::from(self.alternator_load);
        let bits = typed::unsigned_bits(number, 8, "alternator_load")?;
        Self::AT_ALTERNATOR_LOAD.put(payload, bits);
        let number = u64::from(self.battery_charge);
        let bits = typed::unsigned_bits(number, 8, "battery_charge")?;
        Self::AT_BATTERY_CHARGE.put(payload, bits);
        let number = u64::from(self.battery_temperature);
        let bits = typed::unsigned_bits(number, 8, "battery_temperature")?;
        Self::AT_BATTERY_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.alternator_target);
        let bits = typed::unsigned_bits(number, 6, "alternator_target")?;
        Self::AT_ALTERNATOR_TARGET.put(payload, bits);
        let number = u64::from(self.charge_lamp.raw());
        let bits = typed::unsigned_bits(number, 1, "charge_lamp")?;
        Self::AT_CHARGE_LAMP.put(payload, bits);
        let number = u64::from(self.load_shedding.raw());
        let bits = typed::unsigned_bits(number, 1, "load_shedding")?;
        Self::AT_LOAD_SHEDDING.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in V.
    #[must_use]
    pub fn battery_voltage(&self) -> typed::Reading<f64> {
        match self.battery_voltage {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 1000.0),
        }
    }

    /// Sets `battery_voltage` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_battery_voltage(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_BATTERY_VOLTAGE;
        let raw = &mut self.battery_voltage;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 20 in V.
    #[must_use]
    pub fn battery_voltage_is_outside(&self) -> bool {
        let raw = self.battery_voltage;
        matches!(raw, 0x4E21..=0xFFFE)
    }

    /// The value in A.
    #[must_use]
    pub fn battery_current(&self) -> typed::Reading<f64> {
        match self.battery_current {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `battery_current` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_battery_current(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_BATTERY_CURRENT;
        let raw = &mut self.battery_current;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -1000 to 1000 in A.
    #[must_use]
    pub fn battery_current_is_outside(&self) -> bool {
        let raw = self.battery_current;
        matches!(raw, -32767..=-20001 | 0x4E21..=0x7FFF)
    }

    /// The value in %.
    #[must_use]
    pub fn alternator_load(&self) -> typed::Reading<f64> {
        match self.alternator_load {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `alternator_load` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_alternator_load(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_ALTERNATOR_LOAD;
        let raw = &mut self.alternator_load;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn alternator_load_is_outside(&self) -> bool {
        let raw = self.alternator_load;
        matches!(raw, 201..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn battery_charge(&self) -> typed::Reading<f64> {
        match self.battery_charge {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `battery_charge` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_battery_charge(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_BATTERY_CHARGE;
        let raw = &mut self.battery_charge;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn battery_charge_is_outside(&self) -> bool {
        let raw = self.battery_charge;
        matches!(raw, 201..=254)
    }

    /// The value in °C.
    #[must_use]
    pub fn battery_temperature(&self) -> typed::Reading<f64> {
        match self.battery_temperature {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `battery_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_battery_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_BATTERY_TEMPERATURE;
        let raw = &mut self.battery_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 100 in °C.
    #[must_use]
    pub fn battery_temperature_is_outside(&self) -> bool {
        let raw = self.battery_temperature;
        matches!(raw, 141..=254)
    }

    /// The value in V.
    #[must_use]
    pub fn alternator_target(&self) -> f64 {
        let raw = self.alternator_target;
        (i64::from(raw) + 106) as f64 / 10.0
    }

    /// Sets `alternator_target` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_alternator_target(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 63);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_ALTERNATOR_TARGET;
        let raw = &mut self.alternator_target;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 10.6 to 16 in V.
    #[must_use]
    pub fn alternator_target_is_outside(&self) -> bool {
        let raw = self.alternator_target;
        matches!(raw, 55..=63)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.battery_voltage();
        let said = typed::Said::from(said);
        let is_outside = self.battery_voltage_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("battery_voltage");
        tell(name, said);
        let said = self.battery_current();
        let said = typed::Said::from(said);
        let is_outside = self.battery_current_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("battery_current");
        tell(name, said);
        let said = self.alternator_load();
        let said = typed::Said::from(said);
        let is_outside = self.alternator_load_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("alternator_load");
        tell(name, said);
        let said = self.battery_charge();
        let said = typed::Said::from(said);
        let is_outside = self.battery_charge_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("battery_charge");
        tell(name, said);
        let said = self.battery_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.battery_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("battery_temperature");
        tell(name, said);
        let said = self.alternator_target();
        let said = typed::Said::from(said);
        let is_outside = self.alternator_target_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("alternator_target");
        tell(name, said);
        let said = self.charge_lamp;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.charge_lamp;
        let said = said.word(state.word());
        let name = typed::Name::of("charge_lamp");
        tell(name, said);
        let said = self.load_shedding;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.load_shedding;
        let said = said.word(state.word());
        let name = typed::Name::of("load_shedding");
        tell(name, said);
    }
}

pub use gearbox_details::GearboxDetails;

/// `gearbox_details` and what it holds.
#[allow(clippy::module_inception)]
pub mod gearbox_details {
    use wirelore_bits::typed;

    /// Gearbox details.
    ///
    /// Slow insights of the gearbox, one page after the other.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct GearboxDetails {
        /// `raw`; 8 bits.
        pub page: u8,
        /// What is there under a condition.
        pub when_page: WhenPage,
    }

    impl GearboxDetails {
        /// The identifier.
        pub const ID: u32 = 0x3F1;
        /// Whether the identifier has 29 bits.
        pub const EXTENDED: bool = false;
        /// The length in bytes.
        pub const LENGTH: usize = 8;
        /// The period.
        pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(500);
        /// After this long without one it counts as lost.
        pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
        const AT_PAGE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let page = Self::AT_PAGE.of(payload) as u8;
            let held = Self::select_page(payload);
            let when_page = match held {
                0 => {
                    let page = PageIs1::read(payload);
                    WhenPage::Is1(page)
                }
                1 => {
                    let page = PageIs2::read(payload);
                    WhenPage::Is2(page)
                }
                2 => {
                    let page = PageIs3::read(payload);
                    WhenPage::Is3(page)
                }
                3 => {
                    let page = PageOtherwise::read(payload);
                    WhenPage::Otherwise(page)
                }
                _ => WhenPage::NoPage,
            };
            Self { page, when_page }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.page), 8, "page")?;
            Self::AT_PAGE.put(payload, bits);
            let held = Self::select_page(payload);
            match (held, &self.when_page) {
                (0, WhenPage::Is1(page)) => page.write(payload)?,
                (1, WhenPage::Is2(page)) => page.write(payload)?,
                (2, WhenPage::Is3(page)) => page.write(payload)?,
                (3, WhenPage::Otherwise(page)) => page.write(payload)?,
                (4, WhenPage::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        #[inline]
        fn select_page(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_PAGE.get(payload) else {
                return 4;
            };
            match bits {
                1 => 0,
                2 => 1,
                3 => 2,
                _ => 3,
            }
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let chunk = typed::chunk(payload)?;
            Ok(Self::read(chunk))
        }

        /// The payload.
        ///
        /// # Errors
        /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
        pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
            let mut payload = [0; 8];
            self.write(&mut payload)?;
            Ok(payload)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.page);
            let name = typed::Name::of("page");
            tell(name, said);
            match &self.when_page {
                WhenPage::Is1(page) => page.each(tell),
                WhenPage::Is2(page) => page.each(tell),
                WhenPage::Is3(page) => page.each(tell),
                WhenPage::Otherwise(page) => page.each(tell),
                WhenPage::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenPage {
        /// When `page` is 1.
        Is1(PageIs1),
        /// When `page` is 2.
        Is2(PageIs2),
        /// When `page` is 3.
        Is3(PageIs3),
        /// Otherwise.
        Otherwise(PageOtherwise),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `page` is 1.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PageIs1 {
        /// `raw - 40` °C; 8 bits.
        pub oil_temperature: u8,
        /// `raw * 0.0625` bar; 16 bits.
        pub line_pressure: u16,
        /// Slip of the converter.
        ///
        /// `raw * 0.25` rpm; 16 bits, signed.
        pub slip: i16,
        /// `raw * 10` km; 16 bits.
        pub oil_age: u16,
    }

    impl PageIs1 {
        const AT_OIL_TEMPERATURE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_LINE_PRESSURE: typed::Cut = typed::Cut::between((3, 7), (2, 0));
        const AT_SLIP: typed::Cut = typed::Cut::between((5, 7), (4, 0));
        const AT_OIL_AGE: typed::Cut = typed::Cut::between((7, 7), (6, 0));
        const FORMULA_OIL_TEMPERATURE: typed::Formula = typed::Formula::new(1, -40, 1);
        const FORMULA_LINE_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 16);
        const FORMULA_SLIP: typed::Formula = typed::Formula::new(1, 0, 4);
        const FORMULA_OIL_AGE: typed::Formula = typed::Formula::new(10, 0, 1);

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let oil_temperature = Self::AT_OIL_TEMPERATURE.of(payload) as u8;
            let line_pressure = Self::AT_LINE_PRESSURE.of(payload) as u16;
            let bits = Self::AT_SLIP.of(payload);
            let slip = typed::signed(bits, 16) as i16;
            let oil_age = Self::AT_OIL_AGE.of(payload) as u16;
            Self {
                oil_temperature,
                line_pressure,
                slip,
                oil_age,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.oil_temperature);
            let bits = typed::unsigned_bits(number, 8, "oil_temperature")?;
            Self::AT_OIL_TEMPERATURE.put(payload, bits);
            let number = u64::from(self.line_pressure);
            let bits = typed::unsigned_bits(number, 16, "line_pressure")?;
            Self::AT_LINE_PRESSURE.put(payload, bits);
            let bits = typed::signed_bits(i64::from(self.slip), 16, "slip")?;
            Self::AT_SLIP.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.oil_age), 16, "oil_age")?;
            Self::AT_OIL_AGE.put(payload, bits);
            Ok(())
        }

        /// The value in °C.
        #[must_use]
        pub fn oil_temperature(&self) -> typed::Reading<f64> {
            match self.oil_temperature {
                255 => typed::Reading::NoReading,
                raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
            }
        }

        /// Sets `oil_temperature` to the raw number nearest to a value in °C.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_oil_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |raw: i128| !matches!(raw, 255);
            let formula = Self::FORMULA_OIL_TEMPERATURE;
            let raw = &mut self.oil_temperature;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, -40 to 180 in °C.
        #[must_use]
        pub fn oil_temperature_is_outside(&self) -> bool {
            let raw = self.oil_temperature;
            matches!(raw, 221..=254)
        }

        /// The value in bar.
        #[must_use]
        pub fn line_pressure(&self) -> f64 {
            let raw = self.line_pressure;
            f64::from(raw) / 16.0
        }

        /// Sets `line_pressure` to the raw number nearest to a value in bar.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_line_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 65535);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_LINE_PRESSURE;
            let raw = &mut self.line_pressure;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 30 in bar.
        #[must_use]
        pub fn line_pressure_is_outside(&self) -> bool {
            let raw = self.line_pressure;
            matches!(raw, 0x1E1..=0xFFFF)
        }

        /// The value in rpm.
        #[must_use]
        pub fn slip(&self) -> f64 {
            let raw = self.slip;
            f64::from(raw) / 4.0
        }

        /// Sets `slip` to the raw number nearest to a value in rpm.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_slip(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (-32768, 32767);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_SLIP;
            let raw = &mut self.slip;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, -3000 to 3000 in rpm.
        #[must_use]
        pub fn slip_is_outside(&self) -> bool {
            let raw = self.slip;
            matches!(raw, -32768..=-12001 | 0x2EE1..=0x7FFF)
        }

        /// The value in km.
        #[must_use]
        pub fn oil_age(&self) -> f64 {
            let raw = self.oil_age;
            (i64::from(raw) * 10) as f64
        }

        /// Sets `oil_age` to the raw number nearest to a value in km.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_oil_age(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 65535);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_OIL_AGE;
            let raw = &mut self.oil_age;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 655350 in km.
        #[must_use]
        pub fn oil_age_is_outside(&self) -> bool {
            false
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.oil_temperature();
            let said = typed::Said::from(said);
            let is_outside = self.oil_temperature_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("oil_temperature");
            tell(name, said);
            let said = typed::Said::from(self.line_pressure());
            let is_outside = self.line_pressure_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("line_pressure");
            tell(name, said);
            let said = typed::Said::from(self.slip());
            let is_outside = self.slip_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("slip");
            tell(name, said);
            let said = typed::Said::from(self.oil_age());
            let is_outside = self.oil_age_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("oil_age");
            tell(name, said);
        }
    }

    /// When `page` is 2.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PageIs2 {
        /// `clutch_pressure[1]`.
        ///
        /// `raw * 0.1` bar; 8 bits.
        pub clutch_pressure_1: u8,
        /// `clutch_pressure[2]`.
        ///
        /// `raw * 0.1` bar; 8 bits.
        pub clutch_pressure_2: u8,
        /// `clutch_pressure[3]`.
        ///
        /// `raw * 0.1` bar; 8 bits.
        pub clutch_pressure_3: u8,
        /// `clutch_pressure[4]`.
        ///
        /// `raw * 0.1` bar; 8 bits.
        pub clutch_pressure_4: u8,
        /// `clutch_pressure[5]`.
        ///
        /// `raw * 0.1` bar; 8 bits.
        pub clutch_pressure_5: u8,
    }

    impl PageIs2 {
        const AT_CLUTCH_PRESSURE_1: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_CLUTCH_PRESSURE_2: typed::Cut = typed::Cut::between((2, 7), (2, 0));
        const AT_CLUTCH_PRESSURE_3: typed::Cut = typed::Cut::between((3, 7), (3, 0));
        const AT_CLUTCH_PRESSURE_4: typed::Cut = typed::Cut::between((4, 7), (4, 0));
        const AT_CLUTCH_PRESSURE_5: typed::Cut = typed::Cut::between((5, 7), (5, 0));
        const FORMULA_CLUTCH_PRESSURE_1: typed::Formula = typed::Formula::new(1, 0, 10);
        const FORMULA_CLUTCH_PRESSURE_2: typed::Formula = typed::Formula::new(1, 0, 10);
        const FORMULA_CLUTCH_PRESSURE_3: typed::Formula = typed::Formula::new(1, 0, 10);
        const FORMULA_CLUTCH_PRESSURE_4: typed::Formula = typed::Formula::new(1, 0, 10);
        const FORMULA_CLUTCH_PRESSURE_5: typed::Formula = typed::Formula::new(1, 0, 10);

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let clutch_pressure_1 = Self::AT_CLUTCH_PRESSURE_1.of(payload) as u8;
            let clutch_pressure_2 = Self::AT_CLUTCH_PRESSURE_2.of(payload) as u8;
            let clutch_pressure_3 = Self::AT_CLUTCH_PRESSURE_3.of(payload) as u8;
            let clutch_pressure_4 = Self::AT_CLUTCH_PRESSURE_4.of(payload) as u8;
            let clutch_pressure_5 = Self::AT_CLUTCH_PRESSURE_5.of(payload) as u8;
            Self {
                clutch_pressure_1,
                clutch_pressure_2,
                clutch_pressure_3,
                clutch_pressure_4,
                clutch_pressure_5,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.clutch_pressure_1);
            let bits = typed::unsigned_bits(number, 8, "clutch_pressure[1]")?;
            Self::AT_CLUTCH_PRESSURE_1.put(payload, bits);
            let number = u64::from(self.clutch_pressure_2);
            let bits = typed::unsigned_bits(number, 8, "clutch_pressure[2]")?;
            Self::AT_CLUTCH_PRESSURE_2.put(payload, bits);
            let number = u64::from(self.clutch_pressure_3);
            let bits = typed::unsigned_bits(number, 8, "clutch_pressure[3]")?;
            Self::AT_CLUTCH_PRESSURE_3.put(payload, bits);
            let number = u64::from(self.clutch_pressure_4);
            let bits = typed::unsigned_bits(number, 8, "clutch_pressure[4]")?;
            Self::AT_CLUTCH_PRESSURE_4.put(payload, bits);
            let number = u64::from(self.clutch_pressure_5);
            let bits = typed::unsigned_bits(number, 8, "clutch_pressure[5]")?;
            Self::AT_CLUTCH_PRESSURE_5.put(payload, bits);
            Ok(())
        }

        /// The value in bar.
        #[must_use]
        pub fn clutch_pressure_1(&self) -> f64 {
            let raw = self.clutch_pressure_1;
            f64::from(raw) / 10.0
        }

        /// Sets `clutch_pressure_1` to the raw number nearest to a value in bar.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_clutch_pressure_1(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_CLUTCH_PRESSURE_1;
            let raw = &mut self.clutch_pressure_1;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 25 in bar.
        #[must_use]
        pub fn clutch_pressure_1_is_outside(&self) -> bool {
            let raw = self.clutch_pressure_1;
            matches!(raw, 251..=255)
        }

        /// The value in bar.
        #[must_use]
        pub fn clutch_pressure_2(&self) -> f64 {
            let raw = self.clutch_pressure_2;
            f64::from(raw) / 10.0
        }

        /// Sets `clutch_pressure_2` to the raw number nearest to a value in bar.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_clutch_pressure_2(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_CLUTCH_PRESSURE_2;
            let raw = &mut self.clutch_pressure_2;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 25 in bar.
        #[must_use]
        pub fn clutch_pressure_2_is_outside(&self) -> bool {
            let raw = self.clutch_pressure_2;
            matches!(raw, 251..=255)
        }

        /// The value in bar.
        #[must_use]
        pub fn clutch_pressure_3(&self) -> f64 {
            let raw = self.clutch_pressure_3;
            f64::from(raw) / 10.0
        }

        /// Sets `clutch_pressure_3` to the raw number nearest to a value in bar.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_clutch_pressure_3(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_CLUTCH_PRESSURE_3;
            let raw = &mut self.clutch_pressure_3;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 25 in bar.
        #[must_use]
        pub fn clutch_pressure_3_is_outside(&self) -> bool {
            let raw = self.clutch_pressure_3;
            matches!(raw, 251..=255)
        }

        /// The value in bar.
        #[must_use]
        pub fn clutch_pressure_4(&self) -> f64 {
            let raw = self.clutch_pressure_4;
            f64::from(raw) / 10.0
        }

        /// Sets `clutch_pressure_4` to the raw number nearest to a value in bar.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_clutch_pressure_4(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_CLUTCH_PRESSURE_4;
            let raw = &mut self.clutch_pressure_4;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 25 in bar.
        #[must_use]
        pub fn clutch_pressure_4_is_outside(&self) -> bool {
            let raw = self.clutch_pressure_4;
            matches!(raw, 251..=255)
        }

        /// The value in bar.
        #[must_use]
        pub fn clutch_pressure_5(&self) -> f64 {
            let raw = self.clutch_pressure_5;
            f64::from(raw) / 10.0
        }

        /// Sets `clutch_pressure_5` to the raw number nearest to a value in bar.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_clutch_pressure_5(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_CLUTCH_PRESSURE_5;
            let raw = &mut self.clutch_pressure_5;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 25 in bar.
        #[must_use]
        pub fn clutch_pressure_5_is_outside(&self) -> bool {
            let raw = self.clutch_pressure_5;
            matches!(raw, 251..=255)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.clutch_pressure_1();
            let said = typed::Said::from(said);
            let is_outside = self.clutch_pressure_1_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("clutch_pressure[1]");
            tell(name, said);
            let said = self.clutch_pressure_2();
            let said = typed::Said::from(said);
            let is_outside = self.clutch_pressure_2_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("clutch_pressure[2]");
            tell(name, said);
            let said = self.clutch_pressure_3();
            let said = typed::Said::from(said);
            let is_outside = self.clutch_pressure_3_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("clutch_pressure[3]");
            tell(name, said);
            let said = self.clutch_pressure_4();
            let said = typed::Said::from(said);
            let is_outside = self.clutch_pressure_4_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("clutch_pressure[4]");
            tell(name, said);
            let said = self.clutch_pressure_5();
            let said = typed::Said::from(said);
            let is_outside = self.clutch_pressure_5_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("clutch_pressure[5]");
            tell(name, said);
        }
    }

    /// When `page` is 3.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PageIs3 {
        /// `raw`; 8 bits.
        pub clutch: u8,
        /// `raw`; 16 bits.
        pub shifts_learned: u16,
        /// What is there under a condition.
        pub when_clutch: WhenClutch,
    }

    impl PageIs3 {
        const AT_CLUTCH: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_SHIFTS_LEARNED: typed::Cut = typed::Cut::between((6, 7), (5, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let clutch = Self::AT_CLUTCH.of(payload) as u8;
            let shifts_learned = Self::AT_SHIFTS_LEARNED.of(payload) as u16;
            let held = Self::select_clutch(payload);
            let when_clutch = match held {
                0 => {
                    let page = ClutchIs1Or2::read(payload);
                    WhenClutch::Is1Or2(page)
                }
                1 => {
                    let page = ClutchIs3To5::read(payload);
                    WhenClutch::Is3To5(page)
                }
                _ => WhenClutch::NoPage,
            };
            Self {
                clutch,
                shifts_learned,
                when_clutch,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.clutch), 8, "clutch")?;
            Self::AT_CLUTCH.put(payload, bits);
            let number = u64::from(self.shifts_learned);
            let bits = typed::unsigned_bits(number, 16, "shifts_learned")?;
            Self::AT_SHIFTS_LEARNED.put(payload, bits);
            let held = Self::select_clutch(payload);
            match (held, &self.when_clutch) {
                (0, WhenClutch::Is1Or2(page)) => page.write(payload)?,
                (1, WhenClutch::Is3To5(page)) => page.write(payload)?,
                (2, WhenClutch::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        #[inline]
        fn select_clutch(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_CLUTCH.get(payload) else {
                return 2;
            };
            match bits {
                1..=2 => 0,
                3..=5 => 1,
                _ => 2,
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.clutch);
            let name = typed::Name::of("clutch");
            tell(name, said);
            let said = typed::Said::from(self.shifts_learned);
            let name = typed::Name::of("shifts_learned");
            tell(name, said);
            match &self.when_clutch {
                WhenClutch::Is1Or2(page) => page.each(tell),
                WhenClutch::Is3To5(page) => page.each(tell),
                WhenClutch::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenClutch {
        /// When `clutch` is 1, 2.
        Is1Or2(ClutchIs1Or2),
        /// When `clutch` is 3..5.
        Is3To5(ClutchIs3To5),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `clutch` is 1, 2.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ClutchIs1Or2 {
        /// `raw` ms; 16 bits.
        pub fill_time: u16,
        /// `raw * 0.05` bar; 8 bits.
        pub fill_pressure: u8,
    }

    impl ClutchIs1Or2 {
        const AT_FILL_TIME: typed::Cut = typed::Cut::between((3, 7), (2, 0));
        const AT_FILL_PRESSURE: typed::Cut = typed::Cut::between((4, 7), (4, 0));
        const FORMULA_FILL_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 20);

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let fill_time = Self::AT_FILL_TIME.of(payload) as u16;
            let fill_pressure = Self::AT_FILL_PRESSURE.of(payload) as u8;
            Self {
                fill_time,
                fill_pressure,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.fill_time), 16, "fill_time")?;
            Self::AT_FILL_TIME.put(payload, bits);
            let number = u64::from(self.fill_pressure);
            let bits = typed::unsigned_bits(number, 8, "fill_pressure")?;
            Self::AT_FILL_PRESSURE.put(payload, bits);
            Ok(())
        }

        /// Whether the value lies outside its range, 0 to 500 in ms.
        #[must_use]
        pub fn fill_time_is_outside(&self) -> bool {
            let raw = self.fill_time;
            matches!(raw, 0x1F5..=0xFFFF)
        }

        /// The value in bar.
        #[must_use]
        pub fn fill_pressure(&self) -> f64 {
            let raw = self.fill_pressure;
            f64::from(raw) / 20.0
        }

        /// Sets `fill_pressure` to the raw number nearest to a value in bar.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_fill_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_FILL_PRESSURE;
            let raw = &mut self.fill_pressure;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 12 in bar.
        #[must_use]
        pub fn fill_pressure_is_outside(&self) -> bool {
            let raw = self.fill_pressure;
            matches!(raw, 241..=255)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.fill_time);
            let is_outside = self.fill_time_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("fill_time");
            tell(name, said);
            let said = typed::Said::from(self.fill_pressure());
            let is_outside = self.fill_pressure_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("fill_pressure");
            tell(name, said);
        }
    }

    /// When `clutch` is 3..5.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ClutchIs3To5 {
        /// `raw * 0.01` mm; 16 bits.
        pub touch_point: u16,
        /// Guessed: falls with the mileage.
        ///
        /// `raw * 0.05` bar; 8 bits.
        pub return_spring: u8,
    }

    impl ClutchIs3To5 {
        const AT_TOUCH_POINT: typed::Cut = typed::Cut::between((3, 7), (2, 0));
        const AT_RETURN_SPRING: typed::Cut = typed::Cut::between((4, 7), (4, 0));
        const FORMULA_TOUCH_POINT: typed::Formula = typed::Formula::new(1, 0, 100);
        const FORMULA_RETURN_SPRING: typed::Formula = typed::Formula::new(1, 0, 20);

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let touch_point = Self::AT_TOUCH_POINT.of(payload) as u16;
            let return_spring = Self::AT_RETURN_SPRING.of(payload) as u8;
            Self {
                touch_point,
                return_spring,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.touch_point);
            let bits = typed::unsigned_bits(number, 16, "touch_point")?;
            Self::AT_TOUCH_POINT.put(payload, bits);
            let number = u64::from(self.return_spring);
            let bits = typed::unsigned_bits(number, 8, "return_spring")?;
            Self::AT_RETURN_SPRING.put(payload, bits);
            Ok(())
        }

        /// The value in mm.
        #[must_use]
        pub fn touch_point(&self) -> f64 {
            let raw = self.touch_point;
            f64::from(raw) / 100.0
        }

        /// Sets `touch_point` to the raw number nearest to a value in mm.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_touch_point(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 65535);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_TOUCH_POINT;
            let raw = &mut self.touch_point;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 20 in mm.
        #[must_use]
        pub fn touch_point_is_outside(&self) -> bool {
            let raw = self.touch_point;
            matches!(raw, 0x7D1..=0xFFFF)
        }

        /// The value in bar.
        #[must_use]
        pub fn return_spring(&self) -> f64 {
            let raw = self.return_spring;
            f64::from(raw) / 20.0
        }

        /// Sets `return_spring` to the raw number nearest to a value in bar.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_return_spring(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_RETURN_SPRING;
            let raw = &mut self.return_spring;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 12 in bar.
        #[must_use]
        pub fn return_spring_is_outside(&self) -> bool {
            let raw = self.return_spring;
            matches!(raw, 241..=255)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.touch_point());
            let is_outside = self.touch_point_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("touch_point");
            tell(name, said);
            let said = typed::Said::from(self.return_spring());
            let is_outside = self.return_spring_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("return_spring");
            tell(name, said);
        }
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PageOtherwise {}

    impl PageOtherwise {
        #[inline]
        fn read(_payload: &[u8; 8]) -> Self {
            Self {}
        }

        fn write(&self, _payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, _tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {}
    }
}

pub use engine_identity::EngineIdentity;

/// `engine_identity` and what it holds.
#[allow(clippy::module_inception)]
pub mod engine_identity {
    use wirelore_bits::typed;

    /// Engine unit identification.
    ///
    /// Who the engine unit is, spread over pages.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct EngineIdentity<'a> {
        /// `raw`; 8 bits.
        pub page: super::EngineIdentityPage,
        /// What is there under a condition.
        pub when_page: WhenPage<'a>,
    }

    impl<'a> EngineIdentity<'a> {
        /// The identifier.
        pub const ID: u32 = 0x6F1;
        /// Whether the identifier has 29 bits.
        pub const EXTENDED: bool = false;
        /// The length in bytes.
        pub const LENGTH: usize = 8;
        /// The period.
        pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
        /// After this long without one it counts as lost.
        pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(10);
        const AT_PAGE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let bits = Self::AT_PAGE.of(payload);
            let page = super::EngineIdentityPage::from_raw(bits as u8);
            let held = Self::select_page(payload);
            let when_page = match held {
                0 => {
                    let page = PagePartNumber1::read(payload);
                    WhenPage::PartNumber1(page)
                }
                1 => {
                    let page = PagePartNumber2::read(payload);
                    WhenPage::PartNumber2(page)
                }
                2 => {
                    let page = PageSoftware::read(payload);
                    WhenPage::Software(page)
                }
                3 => {
                    let page = PageSerial::read(payload);
                    WhenPage::Serial(page)
                }
                _ => WhenPage::NoPage,
            };
            Self { page, when_page }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.page.raw()), 8, "page")?;
            Self::AT_PAGE.put(payload, bits);
            let held = Self::select_page(payload);
            match (held, &self.when_page) {
                (0, WhenPage::PartNumber1(page)) => page.write(payload)?,
                (1, WhenPage::PartNumber2(page)) => page.write(payload)?,
                (2, WhenPage::Software(page)) => page.write(payload)?,
                (3, WhenPage::Serial(page)) => page.write(payload)?,
                (4, WhenPage::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        #[inline]
        fn select_page(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_PAGE.get(payload) else {
                return 4;
            };
            match bits {
                0 => 0,
                1 => 1,
                2 => 2,
                3 => 3,
                _ => 4,
            }
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let chunk = typed::chunk(payload)?;
            Ok(Self::read(chunk))
        }

        /// The payload.
        ///
        /// # Errors
        /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
        pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
            let mut payload = [0; 8];
            self.write(&mut payload)?;
            Ok(payload)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.page;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.page;
            let said = said.word(state.word());
            let name = typed::Name::of("page");
            tell(name, said);
            match &self.when_page {
                WhenPage::PartNumber1(page) => page.each(tell),
                WhenPage::PartNumber2(page) => page.each(tell),
                WhenPage::Software(page) => page.each(tell),
                WhenPage::Serial(page) => page.each(tell),
                WhenPage::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenPage<'a> {
        /// When `page` is 0.
        PartNumber1(PagePartNumber1<'a>),
        /// When `page` is 1.
        PartNumber2(PagePartNumber2<'a>),
        /// When `page` is 2.
        Software(PageSoftware),
        /// When `page` is 3.
        Serial(PageSerial<'a>),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `page` is 0.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PagePartNumber1<'a> {
        /// Text, byte by byte.
        pub part_number_1: &'a [u8],
    }

    impl<'a> PagePartNumber1<'a> {
        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let part_number_1 = typed::first_of(payload, 1, 7);
            Self { part_number_1 }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            typed::put_bytes(payload, self.part_number_1, 1, Some(8), "part_number_1")?;
            Ok(())
        }

        /// The characters, without the NUL bytes at their end.
        #[must_use]
        pub fn part_number_1(&self) -> typed::Text<'a> {
            typed::Text::new(self.part_number_1, typed::Charset::Ascii)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.part_number_1());
            let name = typed::Name::of("part_number_1");
            tell(name, said);
        }
    }

    /// When `page` is 1.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PagePartNumber2<'a> {
        /// Text, byte by byte.
        pub part_number_2: &'a [u8],
    }

    impl<'a> PagePartNumber2<'a> {
        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let part_number_2 = typed::first_of(payload, 1, 7);
            Self { part_number_2 }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            typed::put_bytes(payload, self.part_number_2, 1, Some(8), "part_number_2")?;
            Ok(())
        }

        /// The characters, without the NUL bytes at their end.
        #[must_use]
        pub fn part_number_2(&self) -> typed::Text<'a> {
            typed::Text::new(self.part_number_2, typed::Charset::Ascii)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.part_number_2());
            let name = typed::Name::of("part_number_2");
            tell(name, said);
        }
    }

    /// When `page` is 2.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PageSoftware {
        /// `raw`; 16 bits, decimal digits.
        pub software_year: u16,
        /// `raw`; 8 bits, decimal digits.
        pub software_month: u8,
        /// `raw`; 8 bits, decimal digits.
        pub software_day: u8,
        /// `raw`; 16 bits.
        pub calibration: u16,
    }

    impl PageSoftware {
        const AT_SOFTWARE_YEAR: typed::Cut = typed::Cut::between((2, 7), (1, 0));
        const AT_SOFTWARE_MONTH: typed::Cut = typed::Cut::between((3, 7), (3, 0));
        const AT_SOFTWARE_DAY: typed::Cut = typed::Cut::between((4, 7), (4, 0));
        const AT_CALIBRATION: typed::Cut = typed::Cut::between((6, 7), (5, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let software_year = Self::AT_SOFTWARE_YEAR.of(payload) as u16;
            let software_month = Self::AT_SOFTWARE_MONTH.of(payload) as u8;
            let software_day = Self::AT_SOFTWARE_DAY.of(payload) as u8;
            let calibration = Self::AT_CALIBRATION.of(payload) as u16;
            Self {
                software_year,
                software_month,
                software_day,
                calibration,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.software_year);
            let bits = typed::unsigned_bits(number, 16, "software_year")?;
            Self::AT_SOFTWARE_YEAR.put(payload, bits);
            let number = u64::from(self.software_month);
            let bits = typed::unsigned_bits(number, 8, "software_month")?;
            Self::AT_SOFTWARE_MONTH.put(payload, bits);
            let number = u64::from(self.software_day);
            let bits = typed::unsigned_bits(number, 8, "software_day")?;
            Self::AT_SOFTWARE_DAY.put(payload, bits);
            let number = u64::from(self.calibration);
            let bits = typed::unsigned_bits(number, 16, "calibration")?;
            Self::AT_CALIBRATION.put(payload, bits);
            Ok(())
        }

        /// The value of the digits.
        #[must_use]
        pub fn software_year(&self) -> typed::Reading<u64> {
            let bits = u64::from(self.software_year);
            match typed::digits(bits, 16) {
                None => typed::Reading::Undefined,
                Some(raw) => typed::Reading::Value(raw),
            }
        }

        /// Whether the value lies outside its range, 2000 to 2099.
        #[must_use]
        pub fn software_year_is_outside(&self) -> bool {
            let bits = self.software_year;
            let number = typed::digits(u64::from(bits), 16);
            let is_outside = |raw: u64| matches!(raw, 0..=0x7CF | 0x834..=0x270F);
            number.is_some_and(is_outside)
        }

        /// The value of the digits.
        #[must_use]
        pub fn software_month(&self) -> typed::Reading<u64> {
            let bits = u64::from(self.software_month);
            match typed::digits(bits, 8) {
                None => typed::Reading::Undefined,
                Some(raw) => typed::Reading::Value(raw),
            }
        }

        /// Whether the value lies outside its range, 1 to 12.
        #[must_use]
        pub fn software_month_is_outside(&self) -> bool {
            let bits = self.software_month;
            let number = typed::digits(u64::from(bits), 8);
            let is_outside = |raw: u64| matches!(raw, 0 | 13..=99);
            number.is_some_and(is_outside)
        }

        /// The value of the digits.
        #[must_use]
        pub fn software_day(&self) -> typed::Reading<u64> {
            let bits = u64::from(self.software_day);
            match typed::digits(bits, 8) {
                None => typed::Reading::Undefined,
                Some(raw) => typed::Reading::Value(raw),
            }
        }

        /// Whether the value lies outside its range, 1 to 31.
        #[must_use]
        pub fn software_day_is_outside(&self) -> bool {
            let bits = self.software_day;
            let number = typed::digits(u64::from(bits), 8);
            let is_outside = |raw: u64| matches!(raw, 0 | 32..=99);
            number.is_some_and(is_outside)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.software_year());
            let is_outside = self.software_year_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("software_year");
            tell(name, said);
            let said = self.software_month();
            let said = typed::Said::from(said);
            let is_outside = self.software_month_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("software_month");
            tell(name, said);
            let said = typed::Said::from(self.software_day());
            let is_outside = self.software_day_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("software_day");
            tell(name, said);
            let said = typed::Said::from(self.calibration);
            let name = typed::Name::of("calibration");
            tell(name, said);
        }
    }

    /// When `page` is 3.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PageSerial<'a> {
        /// Bytes as they are.
        pub serial: &'a [u8],
    }

    impl<'a> PageSerial<'a> {
        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let serial = typed::first_of(payload, 1, 7);
            Self { serial }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            typed::put_bytes(payload, self.serial, 1, Some(8), "serial")?;
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::bytes(self.serial);
            let name = typed::Name::of("serial");
            tell(name, said);
        }
    }
}

/// Exhaust.
///
/// Exhaust gas and its cleaning.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exhaust {
    /// `raw / 32 - 273` °C; 16 bits.
    pub before_filter: u16,
    /// `raw / 32 - 273` °C; 16 bits.
    pub after_filter: u16,
    /// Pressure across the filter.
    ///
    /// `raw * 0.02` kPa; 12 bits.
    pub pressure_drop: u16,
    /// `raw`; 3 bits.
    pub regeneration: ExhaustRegeneration,
    /// `raw * 0.5` %; 8 bits.
    pub soot: u8,
    /// `raw * 0.5` %; 8 bits.
    pub reagent_level: u8,
}

impl Exhaust {
    /// The identifier.
    pub const ID: u32 = 0x3E8;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(500);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
    const AT_BEFORE_FILTER: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_AFTER_FILTER: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_PRESSURE_DROP: typed::Cut = typed::Cut::between((5, 3), (4, 0));
    const AT_REGENERATION: typed::Cut = typed::Cut::between((5, 6), (5, 4));
    const AT_SOOT: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_REAGENT_LEVEL: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_BEFORE_FILTER: typed::Formula = typed::Formula::new(1, -8736, 32);
    const FORMULA_AFTER_FILTER: typed::Formula = typed::Formula::new(1, -8736, 32);
    const FORMULA_PRESSURE_DROP: typed::Formula = typed::Formula::new(1, 0, 50);
    const FORMULA_SOOT: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_REAGENT_LEVEL: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let before_filter = Self::AT_BEFORE_FILTER.of(payload) as u16;
        let after_filter = Self::AT_AFTER_FILTER.of(payload) as u16;
        let pressure_drop = Self::AT_PRESSURE_DROP.of(payload) as u16;
        let bits = Self::AT_REGENERATION.of(payload);
        let regeneration = ExhaustRegeneration::from_raw(bits as u8);
        let soot = Self::AT_SOOT.of(payload) as u8;
        let reagent_level = Self::AT_REAGENT_LEVEL.of(payload) as u8;
        Self {
            before_filter,
            after_filter,
            pressure_drop,
            regeneration,
            soot,
            reagent_level,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.before_filter);
        let bits = typed::unsigned_bits(number, 16, "before_filter")?;
        Self::AT_BEFORE_FILTER.put(payload, bits);
        let number = u64::from(self.after_filter);
        let bits = typed::unsigned_bits(number, 16, "after_filter")?;
        Self::AT_AFTER_FILTER.put(payload, bits);
        let number = u64::from(self.pressure_drop);
        let bits = typed::unsigned_bits(number, 12, "pressure_drop")?;
        Self::AT_PRESSURE_DROP.put(payload, bits);
        let number = u64::from(self.regeneration.raw());
        let bits = typed::unsigned_bits(number, 3, "regeneration")?;
        Self::AT_REGENERATION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.soot), 8, "soot")?;
        Self::AT_SOOT.put(payload, bits);
        let number = u64::from(self.reagent_level);
        let bits = typed::unsigned_bits(number, 8, "reagent_level")?;
        Self::AT_REAGENT_LEVEL.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn before_filter(&self) -> typed::Reading<f64> {
        match self.before_filter {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `before_filter` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_before_filter(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_BEFORE_FILTER;
        let raw = &mut self.before_filter;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 1200 in °C.
    #[must_use]
    pub fn before_filter_is_outside(&self) -> bool {
        let raw = self.before_filter;
        matches!(raw, 0..=0x1D1F | 0xB821..=0xFDFF)
    }

    /// The value in °C.
    #[must_use]
    pub fn after_filter(&self) -> typed::Reading<f64> {
        match self.after_filter {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `after_filter` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_after_filter(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_AFTER_FILTER;
        let raw = &mut self.after_filter;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 1200 in °C.
    #[must_use]
    pub fn after_filter_is_outside(&self) -> bool {
        let raw = self.after_filter;
        matches!(raw, 0..=0x1D1F | 0xB821..=0xFDFF)
    }

    /// The value in kPa.
    #[must_use]
    pub fn pressure_drop(&self) -> f64 {
        let raw = self.pressure_drop;
        f64::from(raw) / 50.0
    }

    /// Sets `pressure_drop` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_pressure_drop(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4095);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_PRESSURE_DROP;
        let raw = &mut self.pressure_drop;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 80 in kPa.
    #[must_use]
    pub fn pressure_drop_is_outside(&self) -> bool {
        let raw = self.pressure_drop;
        matches!(raw, 0xFA1..=0xFFF)
    }

    /// What the raw number says.
    #[must_use]
    pub fn regeneration(&self) -> typed::Reading<ExhaustRegeneration> {
        match self.regeneration.raw() {
            7 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.regeneration),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn soot(&self) -> f64 {
        let raw = self.soot;
        f64::from(raw) / 2.0
    }

    /// Sets `soot` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_soot(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_SOOT;
        let raw = &mut self.soot;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 127.5 in %.
    #[must_use]
    pub fn soot_is_outside(&self) -> bool {
        false
    }

    /// The value in %.
    #[must_use]
    pub fn reagent_level(&self) -> typed::Reading<f64> {
        match self.reagent_level {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `reagent_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_reagent_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_REAGENT_LEVEL;
        let raw = &mut self.reagent_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn reagent_level_is_outside(&self) -> bool {
        let raw = self.reagent_level;
        matches!(raw, 201..=254)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.before_filter());
        let is_outside = self.before_filter_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("before_filter");
        tell(name, said);
        let said = typed::Said::from(self.after_filter());
        let is_outside = self.after_filter_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("after_filter");
        tell(name, said);
        let said = typed::Said::from(self.pressure_drop());
        let is_outside = self.pressure_drop_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("pressure_drop");
        tell(name, said);
        let said = self.regeneration();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.regeneration;
        let said = said.word(state.word());
        let name = typed::Name::of("regeneration");
        tell(name, said);
        let said = typed::Said::from(self.soot());
        let is_outside = self.soot_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("soot");
        tell(name, said);
        let said = typed::Said::from(self.reagent_level());
        let is_outside = self.reagent_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("reagent_level");
        tell(name, said);
    }
}

/// Cruise control.
///
/// Cruise control and limiter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cruise {
    /// `raw`; 3 bits.
    pub state: CruiseState,
    /// `raw`; 3 bits.
    pub button: CruiseButton,
    /// `raw` km/h; 8 bits.
    pub set_speed: u8,
    /// `raw` km/h; 8 bits.
    pub limit: u8,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 15.
    pub alive: u8,
    /// `raw`; 4 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl Cruise {
    /// The identifier.
    pub const ID: u32 = 0x210;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 4;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_millis(500);
    const AT_STATE: typed::Cut = typed::Cut::between((0, 2), (0, 0));
    const AT_BUTTON: typed::Cut = typed::Cut::between((0, 5), (0, 3));
    const AT_SET_SPEED: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_LIMIT: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_ALIVE: typed::Cut = typed::Cut::between((3, 3), (3, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((3, 7), (3, 4));

    #[inline]
    fn read(payload: &[u8; 4]) -> Self {
        let bits = Self::AT_STATE.of(payload);
        let state = CruiseState::from_raw(bits as u8);
        let bits = Self::AT_BUTTON.of(payload);
        let button = CruiseButton::from_raw(bits as u8);
        let set_speed = Self::AT_SET_SPEED.of(payload) as u8;
        let limit = Self::AT_LIMIT.of(payload) as u8;
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            state,
            button,
            set_speed,
            limit,
            alive,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.state.raw()), 3, "state")?;
        Self::AT_STATE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.button.raw()), 3, "button")?;
        Self::AT_BUTTON.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.set_speed), 8, "set_speed")?;
        Self::AT_SET_SPEED.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.limit), 8, "limit")?;
        Self::AT_LIMIT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 4, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = wirelore_bits::sums::ByteSum::WRAPPING.folded();
        let state = sum.start();
        let bytes = payload.get(0..3)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 4], typed::NotEncoded> {
        let mut payload = [0; 4];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn state(&self) -> typed::Reading<CruiseState> {
        match self.state.raw() {
            7 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.state),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn set_speed(&self) -> typed::Reading<u8> {
        match self.set_speed {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 250 in km/h.
    #[must_use]
    pub fn set_speed_is_outside(&self) -> bool {
        let raw = self.set_speed;
        matches!(raw, 251..=254)
    }

    /// What the raw number says.
    #[must_use]
    pub fn limit(&self) -> typed::Reading<u8> {
        match self.limit {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 250 in km/h.
    #[must_use]
    pub fn limit_is_outside(&self) -> bool {
        let raw = self.limit;
        matches!(raw, 251..=254)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 15, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.state();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.state;
        let said = said.word(state.word());
        let name = typed::Name::of("state");
        tell(name, said);
        let said = self.button;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.button;
        let said = said.word(state.word());
        let name = typed::Name::of("button");
        tell(name, said);
        let said = typed::Said::from(self.set_speed());
        let is_outside = self.set_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("set_speed");
        tell(name, said);
        let said = typed::Said::from(self.limit());
        let is_outside = self.limit_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("limit");
        tell(name, said);
        let said = typed::Said::from(self.alive);
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Key and supply.
///
/// The key, and what follows from it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KeyState {
    /// Position of the key.
    ///
    /// `raw`; 4 bits.
    pub key: KeyStateKey,
    /// `raw`; 1 bit.
    pub terminal_15: YesNo,
    /// `raw`; 1 bit.
    pub terminal_50: YesNo,
    /// `raw`; 1 bit.
    pub engine_runs: YesNo,
    /// Supply at the unit.
    ///
    /// `raw * 0.1` V; 8 bits.
    pub supply: u8,
    /// `raw`; 4 bits.
    pub woken_by: KeyStateWokenBy,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 14.
    pub alive: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u8,
}

impl KeyState {
    /// The identifier.
    pub const ID: u32 = 0x130;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 4;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
    const AT_KEY: typed::Cut = typed::Cut::between((0, 7), (0, 4));
    const AT_TERMINAL_15: typed::Cut = typed::Cut::between((0, 3), (0, 3));
    const AT_TERMINAL_50: typed::Cut = typed::Cut::between((0, 2), (0, 2));
    const AT_ENGINE_RUNS: typed::Cut = typed::Cut::between((0, 1), (0, 1));
    const AT_SUPPLY: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_WOKEN_BY: typed::Cut = typed::Cut::between((2, 7), (2, 4));
    const AT_ALIVE: typed::Cut = typed::Cut::between((2, 3), (2, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const FORMULA_SUPPLY: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 4]) -> Self {
        let bits = Self::AT_KEY.of(payload);
        let key = KeyStateKey::from_raw(bits as u8);
        let bits = Self::AT_TERMINAL_15.of(payload);
        let terminal_15 = YesNo::from_raw(bits as u8);
        let bits = Self::AT_TERMINAL_50.of(payload);
        let terminal_50 = YesNo::from_raw(bits as u8);
        let bits = Self::AT_ENGINE_RUNS.of(payload);
        let engine_runs = YesNo::from_raw(bits as u8);
        let supply = Self::AT_SUPPLY.of(payload) as u8;
        let bits = Self::AT_WOKEN_BY.of(payload);
        let woken_by = KeyStateWokenBy::from_raw(bits as u8);
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u8;
        Self {
            key,
            terminal_15,
            terminal_50,
            engine_runs,
            supply,
            woken_by,
            alive,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.key.raw()), 4, "key")?;
        Self::AT_KEY.put(payload, bits);
        let number = u64::from(self.terminal_15.raw());
        let bits = typed::unsigned_bits(number, 1, "terminal_15")?;
        Self::AT_TERMINAL_15.put(payload, bits);
        let number = u64::from(self.terminal_50.raw());
        let bits = typed::unsigned_bits(number, 1, "terminal_50")?;
        Self::AT_TERMINAL_50.put(payload, bits);
        let number = u64::from(self.engine_runs.raw());
        let bits = typed::unsigned_bits(number, 1, "engine_runs")?;
        Self::AT_ENGINE_RUNS.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.supply), 8, "supply")?;
        Self::AT_SUPPLY.put(payload, bits);
        let number = u64::from(self.woken_by.raw());
        let bits = typed::unsigned_bits(number, 4, "woken_by")?;
        Self::AT_WOKEN_BY.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 8, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = wirelore_bits::sums::ByteSum::WRAPPING;
        let state = sum.start();
        let bytes = payload.get(0..3)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 4], typed::NotEncoded> {
        let mut payload = [0; 4];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn key(&self) -> typed::Reading<KeyStateKey> {
        match self.key.raw() {
            15 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.key),
        }
    }

    /// The value in V.
    #[must_use]
    pub fn supply(&self) -> typed::Reading<f64> {
        match self.supply {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `supply` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_supply(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_SUPPLY;
        let raw = &mut self.supply;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 5 to 18 in V.
    #[must_use]
    pub fn supply_is_outside(&self) -> bool {
        let raw = self.supply;
        matches!(raw, 0..=49 | 181..=254)
    }

    /// What the raw number says.
    #[must_use]
    pub fn alive(&self) -> typed::Reading<u8> {
        match self.alive {
            15 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 14, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.key();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.key;
        let said = said.word(state.word());
        let name = typed::Name::of("key");
        tell(name, said);
        let said = self.terminal_15;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.terminal_15;
        let said = said.word(state.word());
        let name = typed::Name::of("terminal_15");
        tell(name, said);
        let said = self.terminal_50;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.terminal_50;
        let said = said.word(state.word());
        let name = typed::Name::of("terminal_50");
        tell(name, said);
        let said = self.engine_runs;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.engine_runs;
        let said = said.word(state.word());
        let name = typed::Name::of("engine_runs");
        tell(name, said);
        let said = typed::Said::from(self.supply());
        let is_outside = self.supply_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("supply");
        tell(name, said);
        let said = self.woken_by;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.woken_by;
        let said = said.word(state.word());
        let name = typed::Name::of("woken_by");
        tell(name, said);
        let said = typed::Said::from(self.alive());
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Stalks.
///
/// Stalks and buttons around the steering wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stalks {
    /// Indicator stalk.
    ///
    /// `raw`; 2 bits.
    pub indicator: StalksIndicator,
    /// `raw`; 1 bit.
    pub main_beam: YesNo,
    /// `raw`; 1 bit.
    pub flash: YesNo,
    /// Wiper stalk.
    ///
    /// `raw`; 3 bits.
    pub wiper: StalksWiper,
    /// `raw`; 1 bit.
    pub washer: YesNo,
    /// Ring for the pause.
    ///
    /// `raw`; 3 bits.
    pub interval: u8,
    /// `raw`; 1 bit.
    pub horn: YesNo,
    /// `raw`; 1 bit.
    pub rear_washer: YesNo,
    /// Button on the wheel.
    ///
    /// `raw`; 8 bits.
    pub wheel_button: StalksWheelButton,
}

impl Stalks {
    /// The identifier.
    pub const ID: u32 = 0x1D6;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
    const AT_INDICATOR: typed::Cut = typed::Cut::between((0, 7), (0, 6));
    const AT_MAIN_BEAM: typed::Cut = typed::Cut::between((0, 5), (0, 5));
    const AT_FLASH: typed::Cut = typed::Cut::between((0, 4), (0, 4));
    const AT_WIPER: typed::Cut = typed::Cut::between((0, 3), (0, 1));
    const AT_WASHER: typed::Cut = typed::Cut::between((0, 0), (0, 0));
    const AT_INTERVAL: typed::Cut = typed::Cut::between((1, 7), (1, 5));
    const AT_HORN: typed::Cut = typed::Cut::between((1, 4), (1, 4));
    const AT_REAR_WASHER: typed::Cut = typed::Cut::between((1, 3), (1, 3));
    const AT_WHEEL_BUTTON: typed::Cut = typed::Cut::between((2, 7), (2, 0));

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let bits = Self::AT_INDICATOR.of(payload);
        let indicator = StalksIndicator::from_raw(bits as u8);
        let bits = Self::AT_MAIN_BEAM.of(payload);
        let main_beam = YesNo::from_raw(bits as u8);
        let bits = Self::AT_FLASH.of(payload);
        let flash = YesNo::from_raw(bits as u8);
        let bits = Self::AT_WIPER.of(payload);
        let wiper = StalksWiper::from_raw(bits as u8);
        let bits = Self::AT_WASHER.of(payload);
        let washer = YesNo::from_raw(bits as u8);
        let interval = Self::AT_INTERVAL.of(payload) as u8;
        let bits = Self::AT_HORN.of(payload);
        let horn = YesNo::from_raw(bits as u8);
        let bits = Self::AT_REAR_WASHER.of(payload);
        let rear_washer = YesNo::from_raw(bits as u8);
        let bits = Self::AT_WHEEL_BUTTON.of(payload);
        let wheel_button = StalksWheelButton::from_raw(bits as u8);
        Self {
            indicator,
            main_beam,
            flash,
            wiper,
            washer,
            interval,
            horn,
            rear_washer,
            wheel_button,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.indicator.raw());
        let bits = typed::unsigned_bits(number, 2, "indicator")?;
        Self::AT_INDICATOR.put(payload, bits);
        let number = u64::from(self.main_beam.raw());
        let bits = typed::unsigned_bits(number, 1, "main_beam")?;
        Self::AT_MAIN_BEAM.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.flash.raw()), 1, "flash")?;
        Self::AT_FLASH.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.wiper.raw()), 3, "wiper")?;
        Self::AT_WIPER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.washer.raw()), 1, "washer")?;
        Self::AT_WASHER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.interval), 3, "interval")?;
        Self::AT_INTERVAL.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.horn.raw()), 1, "horn")?;
        Self::AT_HORN.put(payload, bits);
        let number = u64::from(self.rear_washer.raw());
        let bits = typed::unsigned_bits(number, 1, "rear_washer")?;
        Self::AT_REAR_WASHER.put(payload, bits);
        let number = u64::from(self.wheel_button.raw());
        let bits = typed::unsigned_bits(number, 8, "wheel_button")?;
        Self::AT_WHEEL_BUTTON.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn indicator(&self) -> typed::Reading<StalksIndicator> {
        match self.indicator.raw() {
            3 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.indicator),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn wiper(&self) -> typed::Reading<StalksWiper> {
        match self.wiper.raw() {
            7 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.wiper),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.indicator();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.indicator;
        let said = said.word(state.word());
        let name = typed::Name::of("indicator");
        tell(name, said);
        let said = self.main_beam;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.main_beam;
        let said = said.word(state.word());
        let name = typed::Name::of("main_beam");
        tell(name, said);
        let said = self.flash;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.flash;
        let said = said.word(state.word());
        let name = typed::Name::of("flash");
        tell(name, said);
        let said = self.wiper();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.wiper;
        let said = said.word(state.word());
        let name = typed::Name::of("wiper");
        tell(name, said);
        let said = self.washer;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.washer;
        let said = said.word(state.word());
        let name = typed::Name::of("washer");
        tell(name, said);
        let said = typed::Said::from(self.interval);
        let name = typed::Name::of("interval");
        tell(name, said);
        let said = self.horn;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.horn;
        let said = said.word(state.word());
        let name = typed::Name::of("horn");
        tell(name, said);
        let said = self.rear_washer;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.rear_washer;
        let said = said.word(state.word());
        let name = typed::Name::of("rear_washer");
        tell(name, said);
        let said = self.wheel_button;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.wheel_button;
        let said = said.word(state.word());
        let name = typed::Name::of("wheel_button");
        tell(name, said);
    }
}

/// Doors and windows.
///
/// Doors, locks and windows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doors {
    /// Driver's door.
    ///
    /// `raw`; 1 bit.
    pub driver: Door,
    /// Passenger's door.
    ///
    /// `raw`; 1 bit.
    pub passenger: Door,
    /// Sliding door.
    ///
    /// `raw`; 1 bit.
    pub sliding: Door,
    /// Rear door left.
    ///
    /// `raw`; 1 bit.
    pub rear_left: Door,
    /// Rear door right.
    ///
    /// `raw`; 1 bit.
    pub rear_right: Door,
    /// `raw`; 1 bit.
    pub bonnet: Door,
    /// `raw`; 1 bit.
    pub fuel_flap: Door,
    /// `raw`; 1 bit.
    pub child_lock: YesNo,
    /// Locks of the cab.
    ///
    /// `raw`; 2 bits.
    pub cab_lock: Lock,
    /// Locks of the cargo bay.
    ///
    /// `raw`; 2 bits.
    pub cargo_lock: Lock,
    /// `raw`; 4 bits.
    pub locked_by: DoorsLockedBy,
    /// Driver's window.
    ///
    /// `raw * 0.5` %; 8 bits.
    pub window_left: u8,
    /// Passenger's window.
    ///
    /// `raw * 0.5` %; 8 bits.
    pub window_right: u8,
    /// Of the sliding door.
    ///
    /// `raw * 0.1` mm; 16 bits.
    pub sliding_travel: u16,
}

impl Doors {
    /// The identifier.
    pub const ID: u32 = 0x2A0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 6;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
    const AT_DRIVER: typed::Cut = typed::Cut::between((0, 7), (0, 7));
    const AT_PASSENGER: typed::Cut = typed::Cut::between((0, 6), (0, 6));
    const AT_SLIDING: typed::Cut = typed::Cut::between((0, 5), (0, 5));
    const AT_REAR_LEFT: typed::Cut = typed::Cut::between((0, 4), (0, 4));
    const AT_REAR_RIGHT: typed::Cut = typed::Cut::between((0, 3), (0, 3));
    const AT_BONNET: typed::Cut = typed::Cut::between((0, 2), (0, 2));
    const AT_FUEL_FLAP: typed::Cut = typed::Cut::between((0, 1), (0, 1));
    const AT_CHILD_LOCK: typed::Cut = typed::Cut::between((0, 0), (0, 0));
    const AT_CAB_LOCK: typed::Cut = typed::Cut::between((1, 7), (1, 6));
    const AT_CARGO_LOCK: typed::Cut = typed::Cut::between((1, 5), (1, 4));
    const AT_LOCKED_BY: typed::Cut = typed::Cut::between((1, 3), (1, 0));
    const AT_WINDOW_LEFT: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_WINDOW_RIGHT: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_SLIDING_TRAVEL: typed::Cut = typed::Cut::between((4, 7), (5, 0));
    const FORMULA_WINDOW_LEFT: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_WINDOW_RIGHT: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_SLIDING_TRAVEL: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 6]) -> Self {
        let bits = Self::AT_DRIVER.of(payload);
        let driver = Door::from_raw(bits as u8);
        let bits = Self::AT_PASSENGER.of(payload);
        let passenger = Door::from_raw(bits as u8);
        let bits = Self::AT_SLIDING.of(payload);
        let sliding = Door::from_raw(bits as u8);
        let bits = Self::AT_REAR_LEFT.of(payload);
        let rear_left = Door::from_raw(bits as u8);
        let bits = Self::AT_REAR_RIGHT.of(payload);
        let rear_right = Door::from_raw(bits as u8);
        let bits = Self::AT_BONNET.of(payload);
        let bonnet = Door::from_raw(bits as u8);
        let bits = Self::AT_FUEL_FLAP.of(payload);
        let fuel_flap = Door::from_raw(bits as u8);
        let bits = Self::AT_CHILD_LOCK.of(payload);
        let child_lock = YesNo::from_raw(bits as u8);
        let bits = Self::AT_CAB_LOCK.of(payload);
        let cab_lock = Lock::from_raw(bits as u8);
        let bits = Self::AT_CARGO_LOCK.of(payload);
        let cargo_lock = Lock::from_raw(bits as u8);
        let bits = Self::AT_LOCKED_BY.of(payload);
        let locked_by = DoorsLockedBy::from_raw(bits as u8);
        let window_left = Self::AT_WINDOW_LEFT.of(payload) as u8;
        let window_right = Self::AT_WINDOW_RIGHT.of(payload) as u8;
        let sliding_travel = Self::AT_SLIDING_TRAVEL.of(payload) as u16;
        Self {
            driver,
            passenger,
            sliding,
            rear_left,
            rear_right,
            bonnet,
            fuel_flap,
            child_lock,
            cab_lock,
            cargo_lock,
            locked_by,
            window_left,
            window_right,
            sliding_travel,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.driver.raw()), 1, "driver")?;
        Self::AT_DRIVER.put(payload, bits);
        let number = u64::from(self.passenger.raw());
        let bits = typed::unsigned_bits(number, 1, "passenger")?;
        Self::AT_PASSENGER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.sliding.raw()), 1, "sliding")?;
        Self::AT_SLIDING.put(payload, bits);
        let number = u64::from(self.rear_left.raw());
        let bits = typed::unsigned_bits(number, 1, "rear_left")?;
        Self::AT_REAR_LEFT.put(payload, bits);
        let number = u64::from(self.rear_right.raw());
        let bits = typed::unsigned_bits(number, 1, "rear_right")?;
        Self::AT_REAR_RIGHT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.bonnet.raw()), 1, "bonnet")?;
        Self::AT_BONNET.put(payload, bits);
        let number = u64::from(self.fuel_flap.raw());
        let bits = typed::unsigned_bits(number, 1, "fuel_flap")?;
        Self::AT_FUEL_FLAP.put(payload, bits);
        let number = u64::from(self.child_lock.raw());
        let bits = typed::unsigned_bits(number, 1, "child_lock")?;
        Self::AT_CHILD_LOCK.put(payload, bits);
        let number = u64::from(self.cab_lock.raw());
        let bits = typed::unsigned_bits(number, 2, "cab_lock")?;
        Self::AT_CAB_LOCK.put(payload, bits);
        let number = u64::from(self.cargo_lock.raw());
        let bits = typed::unsigned_bits(number, 2, "cargo_lock")?;
        Self::AT_CARGO_LOCK.put(payload, bits);
        let number = u64::from(self.locked_by.raw());
        let bits = typed::unsigned_bits(number, 4, "locked_by")?;
        Self::AT_LOCKED_BY.put(payload, bits);
        let number = u64::from(self.window_left);
        let bits = typed::unsigned_bits(number, 8, "window_left")?;
        Self::AT_WINDOW_LEFT.put(payload, bits);
        let number = u64::from(self.window_right);
        let bits = typed::unsigned_bits(number, 8, "window_right")?;
        Self::AT_WINDOW_RIGHT.put(payload, bits);
        let number = u64::from(self.sliding_travel);
        let bits = typed::unsigned_bits(number, 16, "sliding_travel")?;
        Self::AT_SLIDING_TRAVEL.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 6], typed::NotEncoded> {
        let mut payload = [0; 6];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn cab_lock(&self) -> typed::Reading<Lock> {
        match self.cab_lock.raw() {
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cab_lock),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn cargo_lock(&self) -> typed::Reading<Lock> {
        match self.cargo_lock.raw() {
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cargo_lock),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn window_left(&self) -> typed::Reading<f64> {
        match self.window_left {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `window_left` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_window_left(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_WINDOW_LEFT;
        let raw = &mut self.window_left;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn window_left_is_outside(&self) -> bool {
        let raw = self.window_left;
        matches!(raw, 201..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn window_right(&self) -> typed::Reading<f64> {
        match self.window_right {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `window_right` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_window_right(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_WINDOW_RIGHT;
        let raw = &mut self.window_right;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn window_right_is_outside(&self) -> bool {
        let raw = self.window_right;
        matches!(raw, 201..=254)
    }

    /// The value in mm.
    #[must_use]
    pub fn sliding_travel(&self) -> typed::Reading<f64> {
        match self.sliding_travel {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `sliding_travel` to the raw number nearest to a value in mm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_sliding_travel(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_SLIDING_TRAVEL;
        let raw = &mut self.sliding_travel;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 1500 in mm.
    #[must_use]
    pub fn sliding_travel_is_outside(&self) -> bool {
        let raw = self.sliding_travel;
        matches!(raw, 0x3A99..=0xFFFE)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.driver;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.driver;
        let said = said.word(state.word());
        let name = typed::Name::of("driver");
        tell(name, said);
        let said = self.passenger;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.passenger;
        let said = said.word(state.word());
        let name = typed::Name::of("passenger");
        tell(name, said);
        let said = self.sliding;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.sliding;
        let said = said.word(state.word());
        let name = typed::Name::of("sliding");
        tell(name, said);
        let said = self.rear_left;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.rear_left;
        let said = said.word(state.word());
        let name = typed::Name::of("rear_left");
        tell(name, said);
        let said = self.rear_right;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.rear_right;
        let said = said.word(state.word());
        let name = typed::Name::of("rear_right");
        tell(name, said);
        let said = self.bonnet;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.bonnet;
        let said = said.word(state.word());
        let name = typed::Name::of("bonnet");
        tell(name, said);
        let said = self.fuel_flap;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.fuel_flap;
        let said = said.word(state.word());
        let name = typed::Name::of("fuel_flap");
        tell(name, said);
        let said = self.child_lock;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.child_lock;
        let said = said.word(state.word());
        let name = typed::Name::of("child_lock");
        tell(name, said);
        let said = self.cab_lock();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cab_lock;
        let said = said.word(state.word());
        let name = typed::Name::of("cab_lock");
        tell(name, said);
        let said = self.cargo_lock();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cargo_lock;
        let said = said.word(state.word());
        let name = typed::Name::of("cargo_lock");
        tell(name, said);
        let said = self.locked_by;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.locked_by;
        let said = said.word(state.word());
        let name = typed::Name::of("locked_by");
        tell(name, said);
        let said = typed::Said::from(self.window_left());
        let is_outside = self.window_left_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("window_left");
        tell(name, said);
        let said = typed::Said::from(self.window_right());
        let is_outside = self.window_right_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("window_right");
        tell(name, said);
        let said = self.sliding_travel();
        let said = typed::Said::from(said);
        let is_outside = self.sliding_travel_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("sliding_travel");
        tell(name, said);
    }
}

/// Lights.
///
/// Lamps outside and inside. The indicator lamps blink, so the frame comes with each change of theirs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lights {
    /// `raw`; 1 bit.
    pub side: Lamp,
    /// `raw`; 1 bit.
    pub low_beam: Lamp,
    /// `raw`; 1 bit.
    pub main_beam: Lamp,
    /// `raw`; 1 bit.
    pub fog_front: Lamp,
    /// `raw`; 1 bit.
    pub fog_rear: Lamp,
    /// `raw`; 1 bit.
    pub indicator_left: Lamp,
    /// `raw`; 1 bit.
    pub indicator_right: Lamp,
    /// `raw`; 1 bit.
    pub brake_lamp: Lamp,
    /// `raw`; 1 bit.
    pub reversing: Lamp,
    /// `raw`; 1 bit.
    pub cab: Lamp,
    /// `raw`; 1 bit.
    pub cargo_bay: Lamp,
    /// `raw`; 1 bit.
    pub hazard: YesNo,
    /// Broken lamps.
    ///
    /// One bit for each lamp that the unit finds broken.
    ///
    /// `raw`; 4 bits.
    pub broken: LightsBroken,
    /// Light of the dials.
    ///
    /// `raw * 0.5` %; 8 bits.
    pub dimmer: u8,
    /// Brightness outside.
    ///
    /// `raw * 2` lx; 16 bits.
    pub brightness: u16,
}

impl Lights {
    /// The identifier.
    pub const ID: u32 = 0x2B4;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 5;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
    const AT_SIDE: typed::Cut = typed::Cut::between((0, 7), (0, 7));
    const AT_LOW_BEAM: typed::Cut = typed::Cut::between((0, 6), (0, 6));
    const AT_MAIN_BEAM: typed::Cut = typed::Cut::between((0, 5), (0, 5));
    const AT_FOG_FRONT: typed::Cut = typed::Cut::between((0, 4), (0, 4));
    const AT_FOG_REAR: typed::Cut = typed::Cut::between((0, 3), (0, 3));
    const AT_INDICATOR_LEFT: typed::Cut = typed::Cut::between((0, 2), (0, 2));
    const AT_INDICATOR_RIGHT: typed::Cut = typed::Cut::between((0, 1), (0, 1));
    const AT_BRAKE_LAMP: typed::Cut = typed::Cut::between((0, 0), (0, 0));
    const AT_REVERSING: typed::Cut = typed::Cut::between((1, 7), (1, 7));
    const AT_CAB: typed::Cut = typed::Cut::between((1, 6), (1, 6));
    const AT_CARGO_BAY: typed::Cut = typed::Cut::between((1, 5), (1, 5));
    const AT_HAZARD: typed::Cut = typed::Cut::between((1, 4), (1, 4));
    const AT_BROKEN: typed::Cut = typed::Cut::between((1, 3), (1, 0));
    const AT_DIMMER: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_BRIGHTNESS: typed::Cut = typed::Cut::between((3, 7), (4, 0));
    const FORMULA_DIMMER: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_BRIGHTNESS: typed::Formula = typed::Formula::new(2, 0, 1);

    #[inline]
    fn read(payload: &[u8; 5]) -> Self {
        let bits = Self::AT_SIDE.of(payload);
        let side = Lamp::from_raw(bits as u8);
        let bits = Self::AT_LOW_BEAM.of(payload);
        let low_beam = Lamp::from_raw(bits as u8);
        let bits = Self::AT_MAIN_BEAM.of(payload);
        let main_beam = Lamp::from_raw(bits as u8);
        let bits = Self::AT_FOG_FRONT.of(payload);
        let fog_front = Lamp::from_raw(bits as u8);
        let bits = Self::AT_FOG_REAR.of(payload);
        let fog_rear = Lamp::from_raw(bits as u8);
        let bits = Self::AT_INDICATOR_LEFT.of(payload);
        let indicator_left = Lamp::from_raw(bits as u8);
        let bits = Self::AT_INDICATOR_RIGHT.of(payload);
        let indicator_right = Lamp::from_raw(bits as u8);
        let bits = Self::AT_BRAKE_LAMP.of(payload);
        let brake_lamp = Lamp::from_raw(bits as u8);
        let bits = Self::AT_REVERSING.of(payload);
        let reversing = Lamp::from_raw(bits as u8);
        let bits = Self::AT_CAB.of(payload);
        let cab = Lamp::from_raw(bits as u8);
        let bits = Self::AT_CARGO_BAY.of(payload);
        let cargo_bay = Lamp::from_raw(bits as u8);
        let bits = Self::AT_HAZARD.of(payload);
        let hazard = YesNo::from_raw(bits as u8);
        let bits = Self::AT_BROKEN.of(payload);
        let broken = LightsBroken::from_raw(bits as u8);
        let dimmer = Self::AT_DIMMER.of(payload) as u8;
        let brightness = Self::AT_BRIGHTNESS.of(payload) as u16;
        Self {
            side,
            low_beam,
            main_beam,
            fog_front,
            fog_rear,
            indicator_left,
            indicator_right,
            brake_lamp,
            reversing,
            cab,
            cargo_bay,
            hazard,
            broken,
            dimmer,
            brightness,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.side.raw()), 1, "side")?;
        Self::AT_SIDE.put(payload, bits);
        let number = u64::from(self.low_beam.raw());
        let bits = typed::unsigned_bits(number, 1, "low_beam")?;
        Self::AT_LOW_BEAM.put(payload, bits);
        let number = u64::from(self.main_beam.raw());
        let bits = typed::unsigned_bits(number, 1, "main_beam")?;
        Self::AT_MAIN_BEAM.put(payload, bits);
        let number = u64::from(self.fog_front.raw());
        let bits = typed::unsigned_bits(number, 1, "fog_front")?;
        Self::AT_FOG_FRONT.put(payload, bits);
        let number = u64::from(self.fog_rear.raw());
        let bits = typed::unsigned_bits(number, 1, "fog_rear")?;
        Self::AT_FOG_REAR.put(payload, bits);
        let number = u64::from(self.indicator_left.raw());
        let bits = typed::unsigned_bits(number, 1, "indicator_left")?;
        Self::AT_INDICATOR_LEFT.put(payload, bits);
        let number = u64::from(self.indicator_right.raw());
        let bits = typed::unsigned_bits(number, 1, "indicator_right")?;
        Self::AT_INDICATOR_RIGHT.put(payload, bits);
        let number = u64::from(self.brake_lamp.raw());
        let bits = typed::unsigned_bits(number, 1, "brake_lamp")?;
        Self::AT_BRAKE_LAMP.put(payload, bits);
        let number = u64::from(self.reversing.raw());
        let bits = typed::unsigned_bits(number, 1, "reversing")?;
        Self::AT_REVERSING.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.cab.raw()), 1, "cab")?;
        Self::AT_CAB.put(payload, bits);
        let number = u64::from(self.cargo_bay.raw());
        let bits = typed::unsigned_bits(number, 1, "cargo_bay")?;
        Self::AT_CARGO_BAY.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.hazard.raw()), 1, "hazard")?;
        Self::AT_HAZARD.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.broken.raw()), 4, "broken")?;
        Self::AT_BROKEN.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.dimmer), 8, "dimmer")?;
        Self::AT_DIMMER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.brightness), 16, "brightness")?;
        Self::AT_BRIGHTNESS.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 5], typed::NotEncoded> {
        let mut payload = [0; 5];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in %.
    #[must_use]
    pub fn dimmer(&self) -> f64 {
        let raw = self.dimmer;
        f64::from(raw) / 2.0
    }

    /// Sets `dimmer` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_dimmer(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_DIMMER;
        let raw = &mut self.dimmer;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn dimmer_is_outside(&self) -> bool {
        let raw = self.dimmer;
        matches!(raw, 201..=255)
    }

    /// The value in lx.
    #[must_use]
    pub fn brightness(&self) -> typed::Reading<f64> {
        match self.brightness {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64),
        }
    }

    /// Sets `brightness` to the raw number nearest to a value in lx.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_brightness(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_BRIGHTNESS;
        let raw = &mut self.brightness;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 120000 in lx.
    #[must_use]
    pub fn brightness_is_outside(&self) -> bool {
        let raw = self.brightness;
        matches!(raw, 0xEA61..=0xFFFE)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.side;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.side;
        let said = said.word(state.word());
        let name = typed::Name::of("side");
        tell(name, said);
        let said = self.low_beam;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.low_beam;
        let said = said.word(state.word());
        let name = typed::Name::of("low_beam");
        tell(name, said);
        let said = self.main_beam;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.main_beam;
        let said = said.word(state.word());
        let name = typed::Name::of("main_beam");
        tell(name, said);
        let said = self.fog_front;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.fog_front;
        let said = said.word(state.word());
        let name = typed::Name::of("fog_front");
        tell(name, said);
        let said = self.fog_rear;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.fog_rear;
        let said = said.word(state.word());
        let name = typed::Name::of("fog_rear");
        tell(name, said);
        let said = self.indicator_left;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.indicator_left;
        let said = said.word(state.word());
        let name = typed::Name::of("indicator_left");
        tell(name, said);
        let said = self.indicator_right;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.indicator_right;
        let said = said.word(state.word());
        let name = typed::Name::of("indicator_right");
        tell(name, said);
        let said = self.brake_lamp;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.brake_lamp;
        let said = said.word(state.word());
        let name = typed::Name::of("brake_lamp");
        tell(name, said);
        let said = self.reversing;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.reversing;
        let said = said.word(state.word());
        let name = typed::Name::of("reversing");
        tell(name, said);
        let said = self.cab;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.cab;
        let said = said.word(state.word());
        let name = typed::Name::of("cab");
        tell(name, said);
        let said = self.cargo_bay;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.cargo_bay;
        let said = said.word(state.word());
        let name = typed::Name::of("cargo_bay");
        tell(name, said);
        let said = self.hazard;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.hazard;
        let said = said.word(state.word());
        let name = typed::Name::of("hazard");
        tell(name, said);
        let said = self.broken;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.broken;
        let said = said.word(state.word());
        let name = typed::Name::of("broken");
        tell(name, said);
        let said = typed::Said::from(self.dimmer());
        let is_outside = self.dimmer_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("dimmer");
        tell(name, said);
        let said = typed::Said::from(self.brightness());
        let is_outside = self.brightness_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("brightness");
        tell(name, said);
    }
}

/// Wipers.
///
/// Wipers, rain and the washer bottle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wipers {
    /// `raw`; 3 bits.
    pub motion: WipersMotion,
    /// `raw`; 2 bits.
    pub speed: WipersSpeed,
    /// Rain sensor works.
    ///
    /// `raw`; 1 bit.
    pub rain_sensor: YesNo,
    /// Wet glass.
    ///
    /// `raw * 0.5` %; 8 bits.
    pub rain: u8,
    /// Strokes since the key was turned.
    ///
    /// `raw`; 8 bits.
    pub strokes: u8,
    /// `raw * 0.5` %; 8 bits.
    pub washer_level: u8,
}

impl Wipers {
    /// The identifier.
    pub const ID: u32 = 0x2C8;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 4;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
    const AT_MOTION: typed::Cut = typed::Cut::between((0, 7), (0, 5));
    const AT_SPEED: typed::Cut = typed::Cut::between((0, 4), (0, 3));
    const AT_RAIN_SENSOR: typed::Cut = typed::Cut::between((0, 2), (0, 2));
    const AT_RAIN: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_STROKES: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_WASHER_LEVEL: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const FORMULA_RAIN: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_WASHER_LEVEL: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 4]) -> Self {
        let bits = Self::AT_MOTION.of(payload);
        let motion = WipersMotion::from_raw(bits as u8);
        let bits = Self::AT_SPEED.of(payload);
        let speed = WipersSpeed::from_raw(bits as u8);
        let bits = Self::AT_RAIN_SENSOR.of(payload);
        let rain_sensor = YesNo::from_raw(bits as u8);
        let rain = Self::AT_RAIN.of(payload) as u8;
        let strokes = Self::AT_STROKES.of(payload) as u8;
        let washer_level = Self::AT_WASHER_LEVEL.of(payload) as u8;
        Self {
            motion,
            speed,
            rain_sensor,
            rain,
            strokes,
            washer_level,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.motion.raw()), 3, "motion")?;
        Self::AT_MOTION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.speed.raw()), 2, "speed")?;
        Self::AT_SPEED.put(payload, bits);
        let number = u64::from(self.rain_sensor.raw());
        let bits = typed::unsigned_bits(number, 1, "rain_sensor")?;
        Self::AT_RAIN_SENSOR.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.rain), 8, "rain")?;
        Self::AT_RAIN.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.strokes), 8, "strokes")?;
        Self::AT_STROKES.put(payload, bits);
        let number = u64::from(self.washer_level);
        let bits = typed::unsigned_bits(number, 8, "washer_level")?;
        Self::AT_WASHER_LEVEL.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 4], typed::NotEncoded> {
        let mut payload = [0; 4];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn motion(&self) -> typed::Reading<WipersMotion> {
        match self.motion.raw() {
            3 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.motion),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn rain(&self) -> typed::Reading<f64> {
        match self.rain {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `rain` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_rain(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_RAIN;
        let raw = &mut self.rain;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn rain_is_outside(&self) -> bool {
        let raw = self.rain;
        matches!(raw, 201..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn washer_level(&self) -> typed::Reading<f64> {
        match self.washer_level {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `washer_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_washer_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_WASHER_LEVEL;
        let raw = &mut self.washer_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn washer_level_is_outside(&self) -> bool {
        let raw = self.washer_level;
        matches!(raw, 201..=254)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.motion();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.motion;
        let said = said.word(state.word());
        let name = typed::Name::of("motion");
        tell(name, said);
        let said = self.speed;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.speed;
        let said = said.word(state.word());
        let name = typed::Name::of("speed");
        tell(name, said);
        let said = self.rain_sensor;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.rain_sensor;
        let said = said.word(state.word());
        let name = typed::Name::of("rain_sensor");
        tell(name, said);
        let said = typed::Said::from(self.rain());
        let is_outside = self.rain_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("rain");
        tell(name, said);
        let said = typed::Said::from(self.strokes);
        let name = typed::Name::of("strokes");
        tell(name, said);
        let said = typed::Said::from(self.washer_level());
        let is_outside = self.washer_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("washer_level");
        tell(name, said);
    }
}

/// Mirrors.
///
/// Mirrors, from a drawing that counts bits from the most significant one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mirrors {
    /// `raw`; 2 bits.
    pub side: MirrorsSide,
    /// `raw`; 1 bit.
    pub folded: YesNo,
    /// `raw`; 1 bit.
    pub heated: YesNo,
    /// Height of the glass.
    ///
    /// The high bits stand in byte 3, the low ones in byte 1.
    ///
    /// From a document: drawing of the door loom, sheet 3.
    ///
    /// `raw - 512`; 10 bits.
    pub height: u16,
    /// Sideways tilt of the glass.
    ///
    /// From a document: drawing of the door loom, sheet 3.
    ///
    /// `raw - 512`; 10 bits.
    pub side_tilt: u16,
}

impl Mirrors {
    /// The identifier.
    pub const ID: u32 = 0x2D8;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 4;
    const AT_SIDE: typed::Cut = typed::Cut::between((0, 7), (0, 6));
    const AT_FOLDED: typed::Cut = typed::Cut::between((0, 5), (0, 5));
    const AT_HEATED: typed::Cut = typed::Cut::between((0, 4), (0, 4));
    const AT_HEIGHT: typed::Cuts<2> = typed::Cuts([
        typed::Cut::between((3, 7), (3, 6)),
        typed::Cut::between((1, 7), (1, 0)),
    ]);
    const AT_SIDE_TILT: typed::Cuts<2> = typed::Cuts([
        typed::Cut::between((3, 5), (3, 4)),
        typed::Cut::between((2, 7), (2, 0)),
    ]);
    const FORMULA_HEIGHT: typed::Formula = typed::Formula::new(1, -512, 1);
    const FORMULA_SIDE_TILT: typed::Formula = typed::Formula::new(1, -512, 1);

    #[inline]
    fn read(payload: &[u8; 4]) -> Self {
        let bits = Self::AT_SIDE.of(payload);
        let side = MirrorsSide::from_raw(bits as u8);
        let bits = Self::AT_FOLDED.of(payload);
        let folded = YesNo::from_raw(bits as u8);
        let bits = Self::AT_HEATED.of(payload);
        let heated = YesNo::from_raw(bits as u8);
        let height = Self::AT_HEIGHT.of(payload) as u16;
        let side_tilt = Self::AT_SIDE_TILT.of(payload) as u16;
        Self {
            side,
            folded,
            heated,
            height,
            side_tilt,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.side.raw()), 2, "side")?;
        Self::AT_SIDE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.folded.raw()), 1, "folded")?;
        Self::AT_FOLDED.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.heated.raw()), 1, "heated")?;
        Self::AT_HEATED.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.height), 10, "height")?;
        Self::AT_HEIGHT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.side_tilt), 10, "side_tilt")?;
        Self::AT_SIDE_TILT.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 4], typed::NotEncoded> {
        let mut payload = [0; 4];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value.
    #[must_use]
    pub fn height(&self) -> f64 {
        let raw = self.height;
        (i64::from(raw) - 512) as f64
    }

    /// Sets `height` to the raw number nearest to a value.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_height(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 1023);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_HEIGHT;
        let raw = &mut self.height;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -512 to 511.
    #[must_use]
    pub fn height_is_outside(&self) -> bool {
        false
    }

    /// The value.
    #[must_use]
    pub fn side_tilt(&self) -> f64 {
        let raw = self.side_tilt;
        (i64::from(raw) - 512) as f64
    }

    /// Sets `side_tilt` to the raw number nearest to a value.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_side_tilt(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 1023);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_SIDE_TILT;
        let raw = &mut self.side_tilt;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -512 to 511.
    #[must_use]
    pub fn side_tilt_is_outside(&self) -> bool {
        false
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.side;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.side;
        let said = said.word(state.word());
        let name = typed::Name::of("side");
        tell(name, said);
        let said = self.folded;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.folded;
        let said = said.word(state.word());
        let name = typed::Name::of("folded");
        tell(name, said);
        let said = self.heated;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.heated;
        let said = said.word(state.word());
        let name = typed::Name::of("heated");
        tell(name, said);
        let said = typed::Said::from(self.height());
        let is_outside = self.height_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("height");
        tell(name, said);
        let said = typed::Said::from(self.side_tilt());
        let is_outside = self.side_tilt_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("side_tilt");
        tell(name, said);
    }
}

/// Instrument cluster.
///
/// What the driver sees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClusterDisplay {
    /// Shown a little high, as the rules for speedometers want it.
    ///
    /// `raw * 0.1` km/h; 16 bits.
    pub displayed_speed: u16,
    /// Confirmed: against the display, 12 km driven.
    ///
    /// `raw * 0.1` km; 24 bits.
    pub odometer: u32,
    /// `raw * 0.5` %; 8 bits.
    pub fuel_level: u8,
    /// `raw * 0.5 - 40` °C; 8 bits.
    pub outside_temperature: u8,
    /// `raw`; 1 bit.
    pub lamp_oil: Lamp,
    /// `raw`; 1 bit.
    pub lamp_charge: Lamp,
    /// `raw`; 1 bit.
    pub lamp_engine: Lamp,
    /// `raw`; 1 bit.
    pub lamp_brakes: Lamp,
    /// `raw`; 1 bit.
    pub lamp_belt: Lamp,
    /// `raw`; 1 bit.
    pub lamp_doors: Lamp,
    /// `raw`; 1 bit.
    pub lamp_tyres: Lamp,
}

impl ClusterDisplay {
    /// The identifier.
    pub const ID: u32 = 0x3A8;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(500);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
    const AT_DISPLAYED_SPEED: typed::Cut = typed::Cut::between((0, 7), (1, 0));
    const AT_ODOMETER: typed::Cut = typed::Cut::between((2, 7), (4, 0));
    const AT_FUEL_LEVEL: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_OUTSIDE_TEMPERATURE: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_LAMP_OIL: typed::Cut = typed::Cut::between((7, 7), (7, 7));
    const AT_LAMP_CHARGE: typed::Cut = typed::Cut::between((7, 6), (7, 6));
    const AT_LAMP_ENGINE: typed::Cut = typed::Cut::between((7, 5), (7, 5));
    const AT_LAMP_BRAKES: typed::Cut = typed::Cut::between((7, 4), (7, 4));
    const AT_LAMP_BELT: typed::Cut = typed::Cut::between((7, 3), (7, 3));
    const AT_LAMP_DOORS: typed::Cut = typed::Cut::between((7, 2), (7, 2));
    const AT_LAMP_TYRES: typed::Cut = typed::Cut::between((7, 1), (7, 1));
    const FORMULA_DISPLAYED_SPEED: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_ODOMETER: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_FUEL_LEVEL: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_OUTSIDE_TEMPERATURE: typed::Formula = typed::Formula::new(1, -80, 2);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let displayed_speed = Self::AT_DISPLAYED_SPEED.of(payload) as u16;
        let odometer = Self::AT_ODOMETER.of(payload) as u32;
        let fuel_level = Self::AT_FUEL_LEVEL.of(payload) as u8;
        let outside_temperature = Self::AT_OUTSIDE_TEMPERATURE.of(payload) as u8;
        let bits = Self::AT_LAMP_OIL.of(payload);
        let lamp_oil = Lamp::from_raw(bits as u8);
        let bits = Self::AT_LAMP_CHARGE.of(payload);
        let lamp_charge = Lamp::from_raw(bits as u8);
        let bits = Self::AT_LAMP_ENGINE.of(payload);
        let lamp_engine = Lamp::from_raw(bits as u8);
        let bits = Self::AT_LAMP_BRAKES.of(payload);
        let lamp_brakes = Lamp::from_raw(bits as u8);
        let bits = Self::AT_LAMP_BELT.of(payload);
        let lamp_belt = Lamp::from_raw(bits as u8);
        let bits = Self::AT_LAMP_DOORS.of(payload);
        let lamp_doors = Lamp::from_raw(bits as u8);
        let bits = Self::AT_LAMP_TYRES.of(payload);
        let lamp_tyres = Lamp::from_raw(bits as u8);
        Self {
            displayed_speed,
            odometer,
            fuel_level,
            outside_temperature,
            lamp_oil,
            lamp_charge,
            lamp_engine,
            lamp_brakes,
            lamp_belt,
            lamp_doors,
            lamp_tyres,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.displayed_speed);
        let bits = typed::unsigned_bits(number, 16, "displayed_speed")?;
        Self::AT_DISPLAYED_SPEED.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.odometer), 24, "odometer")?;
        Self::AT_ODOMETER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.fuel_level), 8, "fuel_level")?;
        Self::AT_FUEL_LEVEL.put(payload, bits);
        let number = u64::from(self.outside_temperature);
        let bits = typed::unsigned_bits(number, 8, "outside_temperature")?;
        Self::AT_OUTSIDE_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.lamp_oil.raw());
        let bits = typed::unsigned_bits(number, 1, "lamp_oil")?;
        Self::AT_LAMP_OIL.put(payload, bits);
        let number = u64::from(self.lamp_charge.raw());
        let bits = typed::unsigned_bits(number, 1, "lamp_charge")?;
        Self::AT_LAMP_CHARGE.put(payload, bits);
        let number = u64::from(self.lamp_engine.raw());
        let bits = typed::unsigned_bits(number, 1, "lamp_engine")?;
        Self::AT_LAMP_ENGINE.put(payload, bits);
        let number = u64::from(self.lamp_brakes.raw());
        let bits = typed::unsigned_bits(number, 1, "lamp_brakes")?;
        Self::AT_LAMP_BRAKES.put(payload, bits);
        let number = u64::from(self.lamp_belt.raw());
        let bits = typed::unsigned_bits(number, 1, "lamp_belt")?;
        Self::AT_LAMP_BELT.put(payload, bits);
        let number = u64::from(self.lamp_doors.raw());
        let bits = typed::unsigned_bits(number, 1, "lamp_doors")?;
        Self::AT_LAMP_DOORS.put(payload, bits);
        let number = u64::from(self.lamp_tyres.raw());
        let bits = typed::unsigned_bits(number, 1, "lamp_tyres")?;
        Self::AT_LAMP_TYRES.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in km/h.
    #[must_use]
    pub fn displayed_speed(&self) -> typed::Reading<f64> {
        match self.displayed_speed {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `displayed_speed` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_displayed_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_DISPLAYED_SPEED;
        let raw = &mut self.displayed_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 300 in km/h.
    #[must_use]
    pub fn displayed_speed_is_outside(&self) -> bool {
        let raw = self.displayed_speed;
        matches!(raw, 0xBB9..=0xFFFE)
    }

    /// The value in km.
    #[must_use]
    pub fn odometer(&self) -> f64 {
        let raw = self.odometer;
        f64::from(raw) / 10.0
    }

    /// Sets `odometer` to the raw number nearest to a value in km.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_odometer(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 16777215);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_ODOMETER;
        let raw = &mut self.odometer;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 1600000 in km.
    #[must_use]
    pub fn odometer_is_outside(&self) -> bool {
        let raw = self.odometer;
        matches!(raw, 0xF42401..=0xFFFFFF)
    }

    /// The value in %.
    #[must_use]
    pub fn fuel_level(&self) -> typed::Reading<f64> {
        match self.fuel_level {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `fuel_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fuel_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_FUEL_LEVEL;
        let raw = &mut self.fuel_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn fuel_level_is_outside(&self) -> bool {
        let raw = self.fuel_level;
        matches!(raw, 201..=254)
    }

    /// The value in °C.
    #[must_use]
    pub fn outside_temperature(&self) -> typed::Reading<f64> {
        match self.outside_temperature {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 80) as f64 / 2.0),
        }
    }

    /// Sets `outside_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_outside_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_OUTSIDE_TEMPERATURE;
        let raw = &mut self.outside_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 80 in °C.
    #[must_use]
    pub fn outside_temperature_is_outside(&self) -> bool {
        let raw = self.outside_temperature;
        matches!(raw, 241..=254)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.displayed_speed();
        let said = typed::Said::from(said);
        let is_outside = self.displayed_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("displayed_speed");
        tell(name, said);
        let said = typed::Said::from(self.odometer());
        let is_outside = self.odometer_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("odometer");
        tell(name, said);
        let said = typed::Said::from(self.fuel_level());
        let is_outside = self.fuel_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel_level");
        tell(name, said);
        let said = self.outside_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.outside_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("outside_temperature");
        tell(name, said);
        let said = self.lamp_oil;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lamp_oil;
        let said = said.word(state.word());
        let name = typed::Name::of("lamp_oil");
        tell(name, said);
        let said = self.lamp_charge;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lamp_charge;
        let said = said.word(state.word());
        let name = typed::Name::of("lamp_charge");
        tell(name, said);
        let said = self.lamp_engine;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lamp_engine;
        let said = said.word(state.word());
        let name = typed::Name::of("lamp_engine");
        tell(name, said);
        let said = self.lamp_brakes;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lamp_brakes;
        let said = said.word(state.word());
        let name = typed::Name::of("lamp_brakes");
        tell(name, said);
        let said = self.lamp_belt;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lamp_belt;
        let said = said.word(state.word());
        let name = typed::Name::of("lamp_belt");
        tell(name, said);
        let said = self.lamp_doors;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lamp_doors;
        let said = said.word(state.word());
        let name = typed::Name::of("lamp_doors");
        tell(name, said);
        let said = self.lamp_tyres;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lamp_tyres;
        let said = said.word(state.word());
        let name = typed::Name::of("lamp_tyres");
        tell(name, said);
    }
}

/// Speed, repacked.
///
/// The speed for the body network, from the gateway.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DashSpeed {
    /// `raw * 0.01` km/h; 16 bits.
    pub speed: u16,
    /// `raw`; 1 bit.
    pub brake_light: YesNo,
}

impl DashSpeed {
    /// The identifier.
    pub const ID: u32 = 0x320;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(500);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(3);
    const AT_SPEED: typed::Cut = typed::Cut::between((0, 7), (1, 0));
    const AT_BRAKE_LIGHT: typed::Cut = typed::Cut::between((2, 7), (2, 7));
    const FORMULA_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let speed = Self::AT_SPEED.of(payload) as u16;
        let bits = Self::AT_BRAKE_LIGHT.of(payload);
        let brake_light = YesNo::from_raw(bits as u8);
        Self { speed, brake_light }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.speed), 16, "speed")?;
        Self::AT_SPEED.put(payload, bits);
        let number = u64::from(self.brake_light.raw());
        let bits = typed::unsigned_bits(number, 1, "brake_light")?;
        Self::AT_BRAKE_LIGHT.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in km/h.
    #[must_use]
    pub fn speed(&self) -> typed::Reading<f64> {
        match self.speed {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `speed` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_SPEED;
        let raw = &mut self.speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 300 in km/h.
    #[must_use]
    pub fn speed_is_outside(&self) -> bool {
        let raw = self.speed;
        matches!(raw, 0x7531..=0xFFFE)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.speed());
        let is_outside = self.speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed");
        tell(name, said);
        let said = self.brake_light;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.brake_light;
        let said = said.word(state.word());
        let name = typed::Name::of("brake_light");
        tell(name, said);
    }
}

/// Clock.
///
/// The clock: each half byte is a decimal digit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clock {
    /// `raw`; 8 bits, decimal digits.
    pub hours: u8,
    /// `raw`; 8 bits, decimal digits.
    pub minutes: u8,
    /// `raw`; 8 bits, decimal digits.
    pub seconds: u8,
    /// `raw`; 8 bits, decimal digits.
    pub day: u8,
    /// `raw`; 8 bits, decimal digits.
    pub month: u8,
    /// `raw`; 16 bits, decimal digits.
    pub year: u16,
}

impl Clock {
    /// The identifier.
    pub const ID: u32 = 0x3E0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 7;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(5);
    const AT_HOURS: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_MINUTES: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_SECONDS: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_DAY: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_MONTH: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_YEAR: typed::Cut = typed::Cut::between((5, 7), (6, 0));

    #[inline]
    fn read(payload: &[u8; 7]) -> Self {
        let hours = Self::AT_HOURS.of(payload) as u8;
        let minutes = Self::AT_MINUTES.of(payload) as u8;
        let seconds = Self::AT_SECONDS.of(payload) as u8;
        let day = Self::AT_DAY.of(payload) as u8;
        let month = Self::AT_MONTH.of(payload) as u8;
        let year = Self::AT_YEAR.of(payload) as u16;
        Self {
            hours,
            minutes,
            seconds,
            day,
            month,
            year,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.hours), 8, "hours")?;
        Self::AT_HOURS.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.minutes), 8, "minutes")?;
        Self::AT_MINUTES.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.seconds), 8, "seconds")?;
        Self::AT_SECONDS.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.day), 8, "day")?;
        Self::AT_DAY.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.month), 8, "month")?;
        Self::AT_MONTH.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.year), 16, "year")?;
        Self::AT_YEAR.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 7], typed::NotEncoded> {
        let mut payload = [0; 7];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value of the digits.
    #[must_use]
    pub fn hours(&self) -> typed::Reading<u64> {
        let bits = u64::from(self.hours);
        match typed::digits(bits, 8) {
            None => typed::Reading::Undefined,
            Some(raw) => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 23.
    #[must_use]
    pub fn hours_is_outside(&self) -> bool {
        let bits = self.hours;
        let number = typed::digits(u64::from(bits), 8);
        let is_outside = |raw: u64| matches!(raw, 24..=99);
        number.is_some_and(is_outside)
    }

    /// The value of the digits.
    #[must_use]
    pub fn minutes(&self) -> typed::Reading<u64> {
        let bits = u64::from(self.minutes);
        match typed::digits(bits, 8) {
            None => typed::Reading::Undefined,
            Some(raw) => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 59.
    #[must_use]
    pub fn minutes_is_outside(&self) -> bool {
        let bits = self.minutes;
        let number = typed::digits(u64::from(bits), 8);
        let is_outside = |raw: u64| matches!(raw, 60..=99);
        number.is_some_and(is_outside)
    }

    /// The value of the digits.
    #[must_use]
    pub fn seconds(&self) -> typed::Reading<u64> {
        let bits = u64::from(self.seconds);
        match typed::digits(bits, 8) {
            None => typed::Reading::Undefined,
            Some(raw) => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 59.
    #[must_use]
    pub fn seconds_is_outside(&self) -> bool {
        let bits = self.seconds;
        let number = typed::digits(u64::from(bits), 8);
        let is_outside = |raw: u64| matches!(raw, 60..=99);
        number.is_some_and(is_outside)
    }

    /// The value of the digits.
    #[must_use]
    pub fn day(&self) -> typed::Reading<u64> {
        let bits = u64::from(self.day);
        match typed::digits(bits, 8) {
            None => typed::Reading::Undefined,
            Some(raw) => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 1 to 31.
    #[must_use]
    pub fn day_is_outside(&self) -> bool {
        let bits = self.day;
        let number = typed::digits(u64::from(bits), 8);
        let is_outside = |raw: u64| matches!(raw, 0 | 32..=99);
        number.is_some_and(is_outside)
    }

    /// The value of the digits.
    #[must_use]
    pub fn month(&self) -> typed::Reading<u64> {
        let bits = u64::from(self.month);
        match typed::digits(bits, 8) {
            None => typed::Reading::Undefined,
            Some(raw) => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 1 to 12.
    #[must_use]
    pub fn month_is_outside(&self) -> bool {
        let bits = self.month;
        let number = typed::digits(u64::from(bits), 8);
        let is_outside = |raw: u64| matches!(raw, 0 | 13..=99);
        number.is_some_and(is_outside)
    }

    /// The value of the digits.
    #[must_use]
    pub fn year(&self) -> typed::Reading<u64> {
        let bits = u64::from(self.year);
        match typed::digits(bits, 16) {
            None => typed::Reading::Undefined,
            Some(raw) => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 2000 to 2099.
    #[must_use]
    pub fn year_is_outside(&self) -> bool {
        let bits = self.year;
        let number = typed::digits(u64::from(bits), 16);
        let is_outside = |raw: u64| matches!(raw, 0..=0x7CF | 0x834..=0x270F);
        number.is_some_and(is_outside)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.hours());
        let is_outside = self.hours_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("hours");
        tell(name, said);
        let said = typed::Said::from(self.minutes());
        let is_outside = self.minutes_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("minutes");
        tell(name, said);
        let said = typed::Said::from(self.seconds());
        let is_outside = self.seconds_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("seconds");
        tell(name, said);
        let said = typed::Said::from(self.day());
        let is_outside = self.day_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("day");
        tell(name, said);
        let said = typed::Said::from(self.month());
        let is_outside = self.month_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("month");
        tell(name, said);
        let said = typed::Said::from(self.year());
        let is_outside = self.year_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("year");
        tell(name, said);
    }
}

/// Trip computer.
///
/// Trip computer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trip {
    /// `raw * 0.1` km; 20 bits.
    pub distance: u32,
    /// `raw * 0.1` L/100km; 12 bits.
    pub consumption: u16,
    /// `raw` km; 16 bits.
    pub fuel_range: u16,
    /// `raw` min; 16 bits.
    pub driving_time: u16,
}

impl Trip {
    /// The identifier.
    pub const ID: u32 = 0x3B8;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(5);
    const AT_DISTANCE: typed::Cut = typed::Cut::between((0, 7), (2, 4));
    const AT_CONSUMPTION: typed::Cut = typed::Cut::between((2, 3), (3, 0));
    const AT_FUEL_RANGE: typed::Cut = typed::Cut::between((4, 7), (5, 0));
    const AT_DRIVING_TIME: typed::Cut = typed::Cut::between((6, 7), (7, 0));
    const FORMULA_DISTANCE: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_CONSUMPTION: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let distance = Self::AT_DISTANCE.of(payload) as u32;
        let consumption = Self::AT_CONSUMPTION.of(payload) as u16;
        let fuel_range = Self::AT_FUEL_RANGE.of(payload) as u16;
        let driving_time = Self::AT_DRIVING_TIME.of(payload) as u16;
        Self {
            distance,
            consumption,
            fuel_range,
            driving_time,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.distance), 20, "distance")?;
        Self::AT_DISTANCE.put(payload, bits);
        let number = u64::from(self.consumption);
        let bits = typed::unsigned_bits(number, 12, "consumption")?;
        Self::AT_CONSUMPTION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.fuel_range), 16, "fuel_range")?;
        Self::AT_FUEL_RANGE.put(payload, bits);
        let number = u64::from(self.driving_time);
        let bits = typed::unsigned_bits(number, 16, "driving_time")?;
        Self::AT_DRIVING_TIME.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in km.
    #[must_use]
    pub fn distance(&self) -> f64 {
        let raw = self.distance;
        f64::from(raw) / 10.0
    }

    /// Sets `distance` to the raw number nearest to a value in km.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_distance(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 1048575);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_DISTANCE;
        let raw = &mut self.distance;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100000 in km.
    #[must_use]
    pub fn distance_is_outside(&self) -> bool {
        let raw = self.distance;
        matches!(raw, 0xF4241..=0xFFFFF)
    }

    /// The value in L/100km.
    #[must_use]
    pub fn consumption(&self) -> typed::Reading<f64> {
        match self.consumption {
            0xFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `consumption` to the raw number nearest to a value in L/100km.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_consumption(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4095);
        let is_value = |raw: i128| !matches!(raw, 0xFFF);
        let formula = Self::FORMULA_CONSUMPTION;
        let raw = &mut self.consumption;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 99.9 in L/100km.
    #[must_use]
    pub fn consumption_is_outside(&self) -> bool {
        let raw = self.consumption;
        matches!(raw, 0x3E8..=0xFFE)
    }

    /// What the raw number says.
    #[must_use]
    pub fn fuel_range(&self) -> typed::Reading<u16> {
        match self.fuel_range {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 2000 in km.
    #[must_use]
    pub fn fuel_range_is_outside(&self) -> bool {
        let raw = self.fuel_range;
        matches!(raw, 0x7D1..=0xFFFE)
    }

    /// Whether the value lies outside its range, 0 to 60000 in min.
    #[must_use]
    pub fn driving_time_is_outside(&self) -> bool {
        let raw = self.driving_time;
        matches!(raw, 0xEA61..=0xFFFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.distance());
        let is_outside = self.distance_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance");
        tell(name, said);
        let said = typed::Said::from(self.consumption());
        let is_outside = self.consumption_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("consumption");
        tell(name, said);
        let said = typed::Said::from(self.fuel_range());
        let is_outside = self.fuel_range_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel_range");
        tell(name, said);
        let said = typed::Said::from(self.driving_time);
        let is_outside = self.driving_time_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("driving_time");
        tell(name, said);
    }
}

/// Next service.
///
/// When the next service is due. Both numbers go below zero when it is late.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ServiceDue {
    /// `raw * 10` km; 16 bits, signed.
    pub distance: i16,
    /// `raw` d; 16 bits, signed.
    pub days: i16,
}

impl ServiceDue {
    /// The identifier.
    pub const ID: u32 = 0x5F0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 4;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(2);
    const AT_DISTANCE: typed::Cut = typed::Cut::between((0, 7), (1, 0));
    const AT_DAYS: typed::Cut = typed::Cut::between((2, 7), (3, 0));
    const FORMULA_DISTANCE: typed::Formula = typed::Formula::new(10, 0, 1);

    #[inline]
    fn read(payload: &[u8; 4]) -> Self {
        let bits = Self::AT_DISTANCE.of(payload);
        let distance = typed::signed(bits, 16) as i16;
        let bits = Self::AT_DAYS.of(payload);
        let days = typed::signed(bits, 16) as i16;
        Self { distance, days }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::signed_bits(i64::from(self.distance), 16, "distance")?;
        Self::AT_DISTANCE.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.days), 16, "days")?;
        Self::AT_DAYS.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 4], typed::NotEncoded> {
        let mut payload = [0; 4];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in km.
    #[must_use]
    pub fn distance(&self) -> f64 {
        let raw = self.distance;
        (i64::from(raw) * 10) as f64
    }

    /// Sets `distance` to the raw number nearest to a value in km.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_distance(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_DISTANCE;
        let raw = &mut self.distance;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -50000 to 100000 in km.
    #[must_use]
    pub fn distance_is_outside(&self) -> bool {
        let raw = self.distance;
        matches!(raw, -32768..=-5001 | 0x2711..=0x7FFF)
    }

    /// Whether the value lies outside its range, -3000 to 3000 in d.
    #[must_use]
    pub fn days_is_outside(&self) -> bool {
        let raw = self.days;
        matches!(raw, -32768..=-3001 | 0xBB9..=0x7FFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.distance());
        let is_outside = self.distance_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance");
        tell(name, said);
        let said = typed::Said::from(self.days);
        let is_outside = self.days_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("days");
        tell(name, said);
    }
}

/// Air conditioning.
///
/// Air conditioning of the cab.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClimateState {
    /// `raw * 0.1 - 40` °C; 10 bits.
    pub cab_temperature: u16,
    /// `raw`; 1 bit.
    pub compressor: ClimateStateCompressor,
    /// `raw`; 1 bit.
    pub recirculation: YesNo,
    /// `raw`; 1 bit.
    pub rear_window_heater: YesNo,
    /// Where the air goes.
    ///
    /// `raw`; 3 bits.
    pub flap: ClimateStateFlap,
    /// `raw * 0.5` °C; 8 bits.
    pub target_left: u8,
    /// `raw * 0.5` °C; 8 bits.
    pub target_right: u8,
    /// `raw * 0.5` %; 8 bits.
    pub blower: u8,
    /// a sensor curve °C; 8 bits.
    pub evaporator: u8,
    /// `raw * 0.2` bar; 8 bits.
    pub refrigerant_pressure: u8,
    /// `raw * 5` W/m²; 8 bits.
    pub sun: u8,
}

impl ClimateState {
    /// The identifier.
    pub const ID: u32 = 0x370;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(5);
    const AT_CAB_TEMPERATURE: typed::Cut = typed::Cut::between((0, 7), (1, 6));
    const AT_COMPRESSOR: typed::Cut = typed::Cut::between((1, 5), (1, 5));
    const AT_RECIRCULATION: typed::Cut = typed::Cut::between((1, 4), (1, 4));
    const AT_REAR_WINDOW_HEATER: typed::Cut = typed::Cut::between((1, 3), (1, 3));
    const AT_FLAP: typed::Cut = typed::Cut::between((1, 2), (1, 0));
    const AT_TARGET_LEFT: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_TARGET_RIGHT: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_BLOWER: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_EVAPORATOR: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_REFRIGERANT_PRESSURE: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_SUN: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_CAB_TEMPERATURE: typed::Formula = typed::Formula::new(1, -400, 10);
    const FORMULA_TARGET_LEFT: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_TARGET_RIGHT: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_BLOWER: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_REFRIGERANT_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 5);
    const FORMULA_SUN: typed::Formula = typed::Formula::new(5, 0, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let cab_temperature = Self::AT_CAB_TEMPERATURE.of(payload) as u16;
        let bits = Self::AT_COMPRESSOR.of(payload);
        let compressor = ClimateStateCompressor::from_raw(bits as u8);
        let bits = Self::AT_RECIRCULATION.of(payload);
        let recirculation = YesNo::from_raw(bits as u8);
        let bits = Self::AT_REAR_WINDOW_HEATER.of(payload);
        let rear_window_heater = YesNo::from_raw(bits as u8);
        let bits = Self::AT_FLAP.of(payload);
        let flap = ClimateStateFlap::from_raw(bits as u8);
        let target_left = Self::AT_TARGET_LEFT.of(payload) as u8;
        let target_right = Self::AT_TARGET_RIGHT.of(payload) as u8;
        let blower = Self::AT_BLOWER.of(payload) as u8;
        let evaporator = Self::AT_EVAPORATOR.of(payload) as u8;
        let refrigerant_pressure = Self::AT_REFRIGERANT_PRESSURE.of(payload) as u8;
        let sun = Self::AT_SUN.of(payload) as u8;
        Self {
            cab_temperature,
            compressor,
            recirculation,
            rear_window_heater,
            flap,
            target_left,
            target_right,
            blower,
            evaporator,
            refrigerant_pressure,
            sun,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.cab_temperature);
        let bits = typed::unsigned_bits(number, 10, "cab_temperature")?;
        Self::AT_CAB_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.compressor.raw());
        let bits = typed::unsigned_bits(number, 1, "compressor")?;
        Self::AT_COMPRESSOR.put(payload, bits);
        let number = u64::from(self.recirculation.raw());
        let bits = typed::unsigned_bits(number, 1, "recirculation")?;
        Self::AT_RECIRCULATION.put(payload, bits);
        let number = u64::from(self.rear_window_heater.raw());
        let bits = typed::unsigned_bits(number, 1, "rear_window_heater")?;
        Self::AT_REAR_WINDOW_HEATER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.flap.raw()), 3, "flap")?;
        Self::AT_FLAP.put(payload, bits);
        let number = u64::from(self.target_left);
        let bits = typed::unsigned_bits(number, 8, "target_left")?;
        Self::AT_TARGET_LEFT.put(payload, bits);
        let number = u64::from(self.target_right);
        let bits = typed::unsigned_bits(number, 8, "target_right")?;
        Self::AT_TARGET_RIGHT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.blower), 8, "blower")?;
        Self::AT_BLOWER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.evaporator), 8, "evaporator")?;
        Self::AT_EVAPORATOR.put(payload, bits);
        let number = u64::from(self.refrigerant_pressure);
        let bits = typed::unsigned_bits(number, 8, "refrigerant_pressure")?;
        Self::AT_REFRIGERANT_PRESSURE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.sun), 8, "sun")?;
        Self::AT_SUN.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn cab_temperature(&self) -> typed::Reading<f64> {
        match self.cab_temperature {
            0x3FF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 400) as f64 / 10.0),
        }
    }

    /// Sets `cab_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_cab_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 1023);
        let is_value = |raw: i128| !matches!(raw, 0x3FF);
        let formula = Self::FORMULA_CAB_TEMPERATURE;
        let raw = &mut self.cab_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 60 in °C.
    #[must_use]
    pub fn cab_temperature_is_outside(&self) -> bool {
        let raw = self.cab_temperature;
        matches!(raw, 0x3E9..=0x3FE)
    }

    /// The value in °C.
    #[must_use]
    pub fn target_left(&self) -> typed::Reading<f64> {
        match self.target_left {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `target_left` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_target_left(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_TARGET_LEFT;
        let raw = &mut self.target_left;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 15 to 30 in °C.
    #[must_use]
    pub fn target_left_is_outside(&self) -> bool {
        let raw = self.target_left;
        matches!(raw, 0..=29 | 61..=254)
    }

    /// The value in °C.
    #[must_use]
    pub fn target_right(&self) -> typed::Reading<f64> {
        match self.target_right {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `target_right` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_target_right(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_TARGET_RIGHT;
        let raw = &mut self.target_right;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 15 to 30 in °C.
    #[must_use]
    pub fn target_right_is_outside(&self) -> bool {
        let raw = self.target_right;
        matches!(raw, 0..=29 | 61..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn blower(&self) -> f64 {
        let raw = self.blower;
        f64::from(raw) / 2.0
    }

    /// Sets `blower` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_blower(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_BLOWER;
        let raw = &mut self.blower;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn blower_is_outside(&self) -> bool {
        let raw = self.blower;
        matches!(raw, 201..=255)
    }

    /// The value in °C.
    #[must_use]
    pub fn evaporator(&self) -> typed::Reading<f64> {
        match self.evaporator {
            255 => typed::Reading::NoReading,
            raw @ (0..=63) => {
                let value = (i64::from(raw) * 5 - 320) as f64 / 32.0;
                typed::Reading::Value(value)
            }
            raw @ (64..=127) => {
                let value = (i64::from(raw) - 64) as f64 / 8.0;
                typed::Reading::Value(value)
            }
            raw @ (128..=191) => {
                let value = (i64::from(raw) * 5 - 384) as f64 / 32.0;
                typed::Reading::Value(value)
            }
            raw @ (192..=254) => {
                let value = (i64::from(raw) * 11 - 1554) as f64 / 31.0;
                typed::Reading::Value(value)
            }
        }
    }

    /// Whether the value lies outside its range, -10 to 40 in °C.
    #[must_use]
    pub fn evaporator_is_outside(&self) -> bool {
        false
    }

    /// The value in bar.
    #[must_use]
    pub fn refrigerant_pressure(&self) -> typed::Reading<f64> {
        match self.refrigerant_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 5.0),
        }
    }

    /// Sets `refrigerant_pressure` to the raw number nearest to a value in bar.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_refrigerant_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_REFRIGERANT_PRESSURE;
        let raw = &mut self.refrigerant_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 45 in bar.
    #[must_use]
    pub fn refrigerant_pressure_is_outside(&self) -> bool {
        let raw = self.refrigerant_pressure;
        matches!(raw, 226..=253)
    }

    /// The value in W/m².
    #[must_use]
    pub fn sun(&self) -> typed::Reading<f64> {
        match self.sun {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 5) as f64),
        }
    }

    /// Sets `sun` to the raw number nearest to a value in W/m².
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_sun(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_SUN;
        let raw = &mut self.sun;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 1270 in W/m².
    #[must_use]
    pub fn sun_is_outside(&self) -> bool {
        false
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.cab_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.cab_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("cab_temperature");
        tell(name, said);
        let said = self.compressor;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.compressor;
        let said = said.word(state.word());
        let name = typed::Name::of("compressor");
        tell(name, said);
        let said = self.recirculation;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.recirculation;
        let said = said.word(state.word());
        let name = typed::Name::of("recirculation");
        tell(name, said);
        let said = self.rear_window_heater;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.rear_window_heater;
        let said = said.word(state.word());
        let name = typed::Name::of("rear_window_heater");
        tell(name, said);
        let said = self.flap;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.flap;
        let said = said.word(state.word());
        let name = typed::Name::of("flap");
        tell(name, said);
        let said = typed::Said::from(self.target_left());
        let is_outside = self.target_left_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("target_left");
        tell(name, said);
        let said = typed::Said::from(self.target_right());
        let is_outside = self.target_right_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("target_right");
        tell(name, said);
        let said = typed::Said::from(self.blower());
        let is_outside = self.blower_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("blower");
        tell(name, said);
        let said = typed::Said::from(self.evaporator());
        let is_outside = self.evaporator_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("evaporator");
        tell(name, said);
        let said = self.refrigerant_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.refrigerant_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("refrigerant_pressure");
        tell(name, said);
        let said = typed::Said::from(self.sun());
        let is_outside = self.sun_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("sun");
        tell(name, said);
    }
}

/// Tyre pressures.
///
/// Tyres: a wheel that has not been heard yet has no reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tyres {
    /// `pressure[1]`.
    ///
    /// 1 front left, 2 front right, 3 rear left, 4 rear right.
    ///
    /// `raw * 0.025` bar; 8 bits.
    pub pressure_1: u8,
    /// `pressure[2]`.
    ///
    /// 1 front left, 2 front right, 3 rear left, 4 rear right.
    ///
    /// `raw * 0.025` bar; 8 bits.
    pub pressure_2: u8,
    /// `pressure[3]`.
    ///
    /// 1 front left, 2 front right, 3 rear left, 4 rear right.
    ///
    /// `raw * 0.025` bar; 8 bits.
    pub pressure_3: u8,
    /// `pressure[4]`.
    ///
    /// 1 front left, 2 front right, 3 rear left, 4 rear right.
    ///
    /// `raw * 0.025` bar; 8 bits.
    pub pressure_4: u8,
    /// `temperature[1]`.
    ///
    /// `raw - 50` °C; 8 bits.
    pub temperature_1: u8,
    /// `temperature[2]`.
    ///
    /// `raw - 50` °C; 8 bits.
    pub temperature_2: u8,
    /// `temperature[3]`.
    ///
    /// `raw - 50` °C; 8 bits.
    pub temperature_3: u8,
    /// `temperature[4]`.
    ///
    /// `raw - 50` °C; 8 bits.
    pub temperature_4: u8,
}

impl Tyres {
    /// The identifier.
    pub const ID: u32 = 0x4E2;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(2);
    /// After this long without one it counts as lost.
    pub const TIMEOUT: core::time::Duration = core::time::Duration::from_secs(10);
    const AT_PRESSURE_1: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_PRESSURE_2: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_PRESSURE_3: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_PRESSURE_4: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_TEMPERATURE_1: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_TEMPERATURE_2: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_TEMPERATURE_3: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_TEMPERATURE_4: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_PRESSURE_1: typed::Formula = typed::Formula::new(1, 0, 40);
    const FORMULA_PRESSURE_2: typed::Formula = typed::Formula::new(1, 0, 40);
    const FORMULA_PRESSURE_3: typed::Formula = typed::Formula::new(1, 0, 40);
    const FORMULA_PRESSURE_4: typed::Formula = typed::Formula::new(1, 0, 40);
    const FORMULA_TEMPERATURE_1: typed::Formula = typed::Formula::new(1, -50, 1);
    const FORMULA_TEMPERATURE_2: typed::Formula = typed::Formula::new(1, -50, 1);
    const FORMULA_TEMPERATURE_3: typed::Formula = typed::Formula::new(1, -50, 1);
    const FORMULA_TEMPERATURE_4: typed::Formula = typed::Formula::new(1, -50, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let pressure_1 = Self::AT_PRESSURE_1.of(payload) as u8;
        let pressure_2 = Self::AT_PRESSURE_2.of(payload) as u8;
        let pressure_3 = Self::AT_PRESSURE_3.of(payload) as u8;
        let pressure_4 = Self::AT_PRESSURE_4.of(payload) as u8;
        let temperature_1 = Self::AT_TEMPERATURE_1.of(payload) as u8;
        let temperature_2 = Self::AT_TEMPERATURE_2.of(payload) as u8;
        let temperature_3 = Self::AT_TEMPERATURE_3.of(payload) as u8;
        let temperature_4 = Self::AT_TEMPERATURE_4.of(payload) as u8;
        Self {
            pressure_1,
            pressure_2,
            pressure_3,
            pressure_4,
            temperature_1,
            temperature_2,
            temperature_3,
            temperature_4,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.pressure_1), 8, "pressure[1]")?;
        Self::AT_PRESSURE_1.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.pressure_2), 8, "pressure[2]")?;
        Self::AT_PRESSURE_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.pressure_3), 8, "pressure[3]")?;
        Self::AT_PRESSURE_3.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.pressure_4), 8, "pressure[4]")?;
        Self::AT_PRESSURE_4.put(payload, bits);
        let number = u64::from(self.temperature_1);
        let bits = typed::unsigned_bits(number, 8, "temperature[1]")?;
        Self::AT_TEMPERATURE_1.put(payload, bits);
        let number = u64::from(self.temperature_2);
        let bits = typed::unsigned_bits(number, 8, "temperature[2]")?;
        Self::AT_TEMPERATURE_2.put(payload, bits);
        let number = u64::from(self.temperature_3);
        let bits = typed::unsigned_bits(number, 8, "temperature[3]")?;
        Self::AT_TEMPERATURE_3.put(payload, bits);
        let number = u64::from(self.temperature_4);
        let bits = typed::unsigned_bits(number, 8, "temperature[4]")?;
        Self::AT_TEMPERATURE_4.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in bar.
    #[must_use]
    pub fn pressure_1(&self) -> typed::Reading<f64> {
        match self.pressure_1 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 40.0),
        }
    }

    /// Sets `pressure_1` to the raw number nearest to a value in bar.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_pressure_1(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PRESSURE_1;
        let raw = &mut self.pressure_1;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6.3 in bar.
    #[must_use]
    pub fn pressure_1_is_outside(&self) -> bool {
        let raw = self.pressure_1;
        matches!(raw, 253)
    }

    /// The value in bar.
    #[must_use]
    pub fn pressure_2(&self) -> typed::Reading<f64> {
        match self.pressure_2 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 40.0),
        }
    }

    /// Sets `pressure_2` to the raw number nearest to a value in bar.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_pressure_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PRESSURE_2;
        let raw = &mut self.pressure_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6.3 in bar.
    #[must_use]
    pub fn pressure_2_is_outside(&self) -> bool {
        let raw = self.pressure_2;
        matches!(raw, 253)
    }

    /// The value in bar.
    #[must_use]
    pub fn pressure_3(&self) -> typed::Reading<f64> {
        match self.pressure_3 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 40.0),
        }
    }

    /// Sets `pressure_3` to the raw number nearest to a value in bar.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_pressure_3(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PRESSURE_3;
        let raw = &mut self.pressure_3;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6.3 in bar.
    #[must_use]
    pub fn pressure_3_is_outside(&self) -> bool {
        let raw = self.pressure_3;
        matches!(raw, 253)
    }

    /// The value in bar.
    #[must_use]
    pub fn pressure_4(&self) -> typed::Reading<f64> {
        match self.pressure_4 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 40.0),
        }
    }

    /// Sets `pressure_4` to the raw number nearest to a value in bar.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_pressure_4(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PRESSURE_4;
        let raw = &mut self.pressure_4;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6.3 in bar.
    #[must_use]
    pub fn pressure_4_is_outside(&self) -> bool {
        let raw = self.pressure_4;
        matches!(raw, 253)
    }

    /// The value in °C.
    #[must_use]
    pub fn temperature_1(&self) -> typed::Reading<f64> {
        match self.temperature_1 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 50) as f64),
        }
    }

    /// Sets `temperature_1` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_temperature_1(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_TEMPERATURE_1;
        let raw = &mut self.temperature_1;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -50 to 150 in °C.
    #[must_use]
    pub fn temperature_1_is_outside(&self) -> bool {
        let raw = self.temperature_1;
        matches!(raw, 201..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn temperature_2(&self) -> typed::Reading<f64> {
        match self.temperature_2 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 50) as f64),
        }
    }

    /// Sets `temperature_2` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_temperature_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_TEMPERATURE_2;
        let raw = &mut self.temperature_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -50 to 150 in °C.
    #[must_use]
    pub fn temperature_2_is_outside(&self) -> bool {
        let raw = self.temperature_2;
        matches!(raw, 201..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn temperature_3(&self) -> typed::Reading<f64> {
        match self.temperature_3 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 50) as f64),
        }
    }

    /// Sets `temperature_3` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_temperature_3(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_TEMPERATURE_3;
        let raw = &mut self.temperature_3;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -50 to 150 in °C.
    #[must_use]
    pub fn temperature_3_is_outside(&self) -> bool {
        let raw = self.temperature_3;
        matches!(raw, 201..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn temperature_4(&self) -> typed::Reading<f64> {
        match self.temperature_4 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 50) as f64),
        }
    }

    /// Sets `temperature_4` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_temperature_4(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_TEMPERATURE_4;
        let raw = &mut self.temperature_4;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -50 to 150 in °C.
    #[must_use]
    pub fn temperature_4_is_outside(&self) -> bool {
        let raw = self.temperature_4;
        matches!(raw, 201..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.pressure_1());
        let is_outside = self.pressure_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("pressure[1]");
        tell(name, said);
        let said = typed::Said::from(self.pressure_2());
        let is_outside = self.pressure_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("pressure[2]");
        tell(name, said);
        let said = typed::Said::from(self.pressure_3());
        let is_outside = self.pressure_3_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("pressure[3]");
        tell(name, said);
        let said = typed::Said::from(self.pressure_4());
        let is_outside = self.pressure_4_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("pressure[4]");
        tell(name, said);
        let said = typed::Said::from(self.temperature_1());
        let is_outside = self.temperature_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("temperature[1]");
        tell(name, said);
        let said = typed::Said::from(self.temperature_2());
        let is_outside = self.temperature_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("temperature[2]");
        tell(name, said);
        let said = typed::Said::from(self.temperature_3());
        let is_outside = self.temperature_3_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("temperature[3]");
        tell(name, said);
        let said = typed::Said::from(self.temperature_4());
        let is_outside = self.temperature_4_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("temperature[4]");
        tell(name, said);
    }
}

/// Driver's seat.
///
/// The driver's seat. Written down from a list that gives the most significant bit and the width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeatLeftState {
    /// From a document: seat wiring list.
    ///
    /// `raw * 0.5` mm; 10 bits.
    pub height: u16,
    /// From a document: seat wiring list.
    ///
    /// `raw * 0.1` °; 10 bits.
    pub backrest: u16,
    /// `raw`; 2 bits.
    pub heater_step: SeatLeftStateHeaterStep,
    /// `raw`; 3 bits.
    pub memory: u8,
    /// `raw`; 1 bit.
    pub occupied: YesNo,
    /// `raw * 0.5 - 40` °C; 8 bits.
    pub cushion_temperature: u8,
    /// `raw * 0.1` A; 8 bits.
    pub motor_current: u8,
}

impl SeatLeftState {
    /// The identifier.
    pub const ID: u32 = 0x4C0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 6;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(2);
    const AT_HEIGHT: typed::Cut = typed::Cut::between((0, 7), (1, 6));
    const AT_BACKREST: typed::Cut = typed::Cut::between((1, 5), (2, 4));
    const AT_HEATER_STEP: typed::Cut = typed::Cut::between((3, 7), (3, 6));
    const AT_MEMORY: typed::Cut = typed::Cut::between((3, 5), (3, 3));
    const AT_OCCUPIED: typed::Cut = typed::Cut::between((3, 2), (3, 2));
    const AT_CUSHION_TEMPERATURE: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_MOTOR_CURRENT: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const FORMULA_HEIGHT: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_BACKREST: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_CUSHION_TEMPERATURE: typed::Formula = typed::Formula::new(1, -80, 2);
    const FORMULA_MOTOR_CURRENT: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 6]) -> Self {
        let height = Self::AT_HEIGHT.of(payload) as u16;
        let backrest = Self::AT_BACKREST.of(payload) as u16;
        let bits = Self::AT_HEATER_STEP.of(payload);
        let heater_step = SeatLeftStateHeaterStep::from_raw(bits as u8);
        let memory = Self::AT_MEMORY.of(payload) as u8;
        let bits = Self::AT_OCCUPIED.of(payload);
        let occupied = YesNo::from_raw(bits as u8);
        let cushion_temperature = Self::AT_CUSHION_TEMPERATURE.of(payload) as u8;
        let motor_current = Self::AT_MOTOR_CURRENT.of(payload) as u8;
        Self {
            height,
            backrest,
            heater_step,
            memory,
            occupied,
            cushion_temperature,
            motor_current,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.height), 10, "height")?;
        Self::AT_HEIGHT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.backrest), 10, "backrest")?;
        Self::AT_BACKREST.put(payload, bits);
        let number = u64::from(self.heater_step.raw());
        let bits = typed::unsigned_bits(number, 2, "heater_step")?;
        Self::AT_HEATER_STEP.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.memory), 3, "memory")?;
        Self::AT_MEMORY.put(payload, bits);
        let number = u64::from(self.occupied.raw());
        let bits = typed::unsigned_bits(number, 1, "occupied")?;
        Self::AT_OCCUPIED.put(payload, bits);
        let number = u64::from(self.cushion_temperature);
        let bits = typed::unsigned_bits(number, 8, "cushion_temperature")?;
        Self::AT_CUSHION_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.motor_current);
        let bits = typed::unsigned_bits(number, 8, "motor_current")?;
        Self::AT_MOTOR_CURRENT.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 6], typed::NotEncoded> {
        let mut payload = [0; 6];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in mm.
    #[must_use]
    pub fn height(&self) -> f64 {
        let raw = self.height;
        f64::from(raw) / 2.0
    }

    /// Sets `height` to the raw number nearest to a value in mm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_height(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 1023);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_HEIGHT;
        let raw = &mut self.height;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 400 in mm.
    #[must_use]
    pub fn height_is_outside(&self) -> bool {
        let raw = self.height;
        matches!(raw, 0x321..=0x3FF)
    }

    /// The value in °.
    #[must_use]
    pub fn backrest(&self) -> f64 {
        let raw = self.backrest;
        f64::from(raw) / 10.0
    }

    /// Sets `backrest` to the raw number nearest to a value in °.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_backrest(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 1023);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_BACKREST;
        let raw = &mut self.backrest;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in °.
    #[must_use]
    pub fn backrest_is_outside(&self) -> bool {
        let raw = self.backrest;
        matches!(raw, 0x3E9..=0x3FF)
    }

    /// The value in °C.
    #[must_use]
    pub fn cushion_temperature(&self) -> typed::Reading<f64> {
        match self.cushion_temperature {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 80) as f64 / 2.0),
        }
    }

    /// Sets `cushion_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_cushion_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_CUSHION_TEMPERATURE;
        let raw = &mut self.cushion_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 80 in °C.
    #[must_use]
    pub fn cushion_temperature_is_outside(&self) -> bool {
        let raw = self.cushion_temperature;
        matches!(raw, 241..=254)
    }

    /// The value in A.
    #[must_use]
    pub fn motor_current(&self) -> f64 {
        let raw = self.motor_current;
        f64::from(raw) / 10.0
    }

    /// Sets `motor_current` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_motor_current(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_MOTOR_CURRENT;
        let raw = &mut self.motor_current;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 25 in A.
    #[must_use]
    pub fn motor_current_is_outside(&self) -> bool {
        let raw = self.motor_current;
        matches!(raw, 251..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.height());
        let is_outside = self.height_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("height");
        tell(name, said);
        let said = typed::Said::from(self.backrest());
        let is_outside = self.backrest_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("backrest");
        tell(name, said);
        let said = self.heater_step;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.heater_step;
        let said = said.word(state.word());
        let name = typed::Name::of("heater_step");
        tell(name, said);
        let said = typed::Said::from(self.memory);
        let name = typed::Name::of("memory");
        tell(name, said);
        let said = self.occupied;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.occupied;
        let said = said.word(state.word());
        let name = typed::Name::of("occupied");
        tell(name, said);
        let said = self.cushion_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.cushion_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("cushion_temperature");
        tell(name, said);
        let said = typed::Said::from(self.motor_current());
        let is_outside = self.motor_current_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("motor_current");
        tell(name, said);
    }
}

/// Parking distances.
///
/// The parking aid: eight sensors, front ones first, each from left to right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParkDistances {
    /// `distance[1]`.
    ///
    /// `raw` cm; 8 bits.
    pub distance_1: u8,
    /// `distance[2]`.
    ///
    /// `raw` cm; 8 bits.
    pub distance_2: u8,
    /// `distance[3]`.
    ///
    /// `raw` cm; 8 bits.
    pub distance_3: u8,
    /// `distance[4]`.
    ///
    /// `raw` cm; 8 bits.
    pub distance_4: u8,
    /// `distance[5]`.
    ///
    /// `raw` cm; 8 bits.
    pub distance_5: u8,
    /// `distance[6]`.
    ///
    /// `raw` cm; 8 bits.
    pub distance_6: u8,
    /// `distance[7]`.
    ///
    /// `raw` cm; 8 bits.
    pub distance_7: u8,
    /// `distance[8]`.
    ///
    /// `raw` cm; 8 bits.
    pub distance_8: u8,
}

impl ParkDistances {
    /// The identifier.
    pub const ID: u32 = 0x4A0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(200);
    const AT_DISTANCE_1: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_DISTANCE_2: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_DISTANCE_3: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_DISTANCE_4: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_DISTANCE_5: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_DISTANCE_6: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_DISTANCE_7: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_DISTANCE_8: typed::Cut = typed::Cut::between((7, 7), (7, 0));

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let distance_1 = Self::AT_DISTANCE_1.of(payload) as u8;
        let distance_2 = Self::AT_DISTANCE_2.of(payload) as u8;
        let distance_3 = Self::AT_DISTANCE_3.of(payload) as u8;
        let distance_4 = Self::AT_DISTANCE_4.of(payload) as u8;
        let distance_5 = Self::AT_DISTANCE_5.of(payload) as u8;
        let distance_6 = Self::AT_DISTANCE_6.of(payload) as u8;
        let distance_7 = Self::AT_DISTANCE_7.of(payload) as u8;
        let distance_8 = Self::AT_DISTANCE_8.of(payload) as u8;
        Self {
            distance_1,
            distance_2,
            distance_3,
            distance_4,
            distance_5,
            distance_6,
            distance_7,
            distance_8,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.distance_1), 8, "distance[1]")?;
        Self::AT_DISTANCE_1.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.distance_2), 8, "distance[2]")?;
        Self::AT_DISTANCE_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.distance_3), 8, "distance[3]")?;
        Self::AT_DISTANCE_3.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.distance_4), 8, "distance[4]")?;
        Self::AT_DISTANCE_4.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.distance_5), 8, "distance[5]")?;
        Self::AT_DISTANCE_5.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.distance_6), 8, "distance[6]")?;
        Self::AT_DISTANCE_6.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.distance_7), 8, "distance[7]")?;
        Self::AT_DISTANCE_7.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.distance_8), 8, "distance[8]")?;
        Self::AT_DISTANCE_8.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn distance_1(&self) -> typed::Reading<u8> {
        match self.distance_1 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 20 to 250 in cm.
    #[must_use]
    pub fn distance_1_is_outside(&self) -> bool {
        let raw = self.distance_1;
        matches!(raw, 0..=19 | 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn distance_2(&self) -> typed::Reading<u8> {
        match self.distance_2 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 20 to 250 in cm.
    #[must_use]
    pub fn distance_2_is_outside(&self) -> bool {
        let raw = self.distance_2;
        matches!(raw, 0..=19 | 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn distance_3(&self) -> typed::Reading<u8> {
        match self.distance_3 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 20 to 250 in cm.
    #[must_use]
    pub fn distance_3_is_outside(&self) -> bool {
        let raw = self.distance_3;
        matches!(raw, 0..=19 | 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn distance_4(&self) -> typed::Reading<u8> {
        match self.distance_4 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 20 to 250 in cm.
    #[must_use]
    pub fn distance_4_is_outside(&self) -> bool {
        let raw = self.distance_4;
        matches!(raw, 0..=19 | 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn distance_5(&self) -> typed::Reading<u8> {
        match self.distance_5 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 20 to 250 in cm.
    #[must_use]
    pub fn distance_5_is_outside(&self) -> bool {
        let raw = self.distance_5;
        matches!(raw, 0..=19 | 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn distance_6(&self) -> typed::Reading<u8> {
        match self.distance_6 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 20 to 250 in cm.
    #[must_use]
    pub fn distance_6_is_outside(&self) -> bool {
        let raw = self.distance_6;
        matches!(raw, 0..=19 | 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn distance_7(&self) -> typed::Reading<u8> {
        match self.distance_7 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 20 to 250 in cm.
    #[must_use]
    pub fn distance_7_is_outside(&self) -> bool {
        let raw = self.distance_7;
        matches!(raw, 0..=19 | 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn distance_8(&self) -> typed::Reading<u8> {
        match self.distance_8 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 20 to 250 in cm.
    #[must_use]
    pub fn distance_8_is_outside(&self) -> bool {
        let raw = self.distance_8;
        matches!(raw, 0..=19 | 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.distance_1());
        let is_outside = self.distance_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance[1]");
        tell(name, said);
        let said = typed::Said::from(self.distance_2());
        let is_outside = self.distance_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance[2]");
        tell(name, said);
        let said = typed::Said::from(self.distance_3());
        let is_outside = self.distance_3_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance[3]");
        tell(name, said);
        let said = typed::Said::from(self.distance_4());
        let is_outside = self.distance_4_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance[4]");
        tell(name, said);
        let said = typed::Said::from(self.distance_5());
        let is_outside = self.distance_5_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance[5]");
        tell(name, said);
        let said = typed::Said::from(self.distance_6());
        let is_outside = self.distance_6_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance[6]");
        tell(name, said);
        let said = typed::Said::from(self.distance_7());
        let is_outside = self.distance_7_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance[7]");
        tell(name, said);
        let said = typed::Said::from(self.distance_8());
        let is_outside = self.distance_8_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("distance[8]");
        tell(name, said);
    }
}

/// Trailer.
///
/// What is behind the towing hook. The document of the towing module counts bytes and bits from 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrailerState {
    /// `raw`; 1 bit.
    pub coupled: YesNo,
    /// `raw`; 7 bits.
    pub lamps_working: TrailerStateLampsWorking,
    /// `raw * 0.01` A; 16 bits.
    pub load_current: u16,
}

impl TrailerState {
    /// The identifier.
    pub const ID: u32 = 0x5D0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_COUPLED: typed::Cut = typed::Cut::between((0, 0), (0, 0));
    const AT_LAMPS_WORKING: typed::Cut = typed::Cut::between((0, 7), (0, 1));
    const AT_LOAD_CURRENT: typed::Cut = typed::Cut::between((1, 7), (2, 0));
    const FORMULA_LOAD_CURRENT: typed::Formula = typed::Formula::new(1, 0, 100);

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let bits = Self::AT_COUPLED.of(payload);
        let coupled = YesNo::from_raw(bits as u8);
        let bits = Self::AT_LAMPS_WORKING.of(payload);
        let lamps_working = TrailerStateLampsWorking::from_raw(bits as u8);
        let load_current = Self::AT_LOAD_CURRENT.of(payload) as u16;
        Self {
            coupled,
            lamps_working,
            load_current,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.coupled.raw()), 1, "coupled")?;
        Self::AT_COUPLED.put(payload, bits);
        let number = u64::from(self.lamps_working.raw());
        let bits = typed::unsigned_bits(number, 7, "lamps_working")?;
        Self::AT_LAMPS_WORKING.put(payload, bits);
        let number = u64::from(self.load_current);
        let bits = typed::unsigned_bits(number, 16, "load_current")?;
        Self::AT_LOAD_CURRENT.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in A.
    #[must_use]
    pub fn load_current(&self) -> f64 {
        let raw = self.load_current;
        f64::from(raw) / 100.0
    }

    /// Sets `load_current` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_load_current(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_LOAD_CURRENT;
        let raw = &mut self.load_current;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 40 in A.
    #[must_use]
    pub fn load_current_is_outside(&self) -> bool {
        let raw = self.load_current;
        matches!(raw, 0xFA1..=0xFFFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.coupled;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.coupled;
        let said = said.word(state.word());
        let name = typed::Name::of("coupled");
        tell(name, said);
        let said = self.lamps_working;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lamps_working;
        let said = said.word(state.word());
        let name = typed::Name::of("lamps_working");
        tell(name, said);
        let said = typed::Said::from(self.load_current());
        let is_outside = self.load_current_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("load_current");
        tell(name, said);
    }
}

/// Cargo bay refrigeration.
///
/// The refrigeration of the cargo bay.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CargoClimate {
    /// Air: front, middle, rear.
    ///
    /// `raw * 0.01` °C; 16 bits, signed.
    pub air_1: i16,
    /// Air: front, middle, rear.
    ///
    /// `raw * 0.01` °C; 16 bits, signed.
    pub air_2: i16,
    /// Air: front, middle, rear.
    ///
    /// `raw * 0.01` °C; 16 bits, signed.
    pub air_3: i16,
}

impl CargoClimate {
    /// The identifier.
    pub const ID: u32 = 0x4F0;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 6;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(2);
    const AT_AIR_1: typed::Cut = typed::Cut::between((0, 7), (1, 0));
    const AT_AIR_2: typed::Cut = typed::Cut::between((2, 7), (3, 0));
    const AT_AIR_3: typed::Cut = typed::Cut::between((4, 7), (5, 0));
    const FORMULA_AIR_1: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_AIR_2: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_AIR_3: typed::Formula = typed::Formula::new(1, 0, 100);

    #[inline]
    fn read(payload: &[u8; 6]) -> Self {
        let bits = Self::AT_AIR_1.of(payload);
        let air_1 = typed::signed(bits, 16) as i16;
        let bits = Self::AT_AIR_2.of(payload);
        let air_2 = typed::signed(bits, 16) as i16;
        let bits = Self::AT_AIR_3.of(payload);
        let air_3 = typed::signed(bits, 16) as i16;
        Self {
            air_1,
            air_2,
            air_3,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::signed_bits(i64::from(self.air_1), 16, "air[1]")?;
        Self::AT_AIR_1.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.air_2), 16, "air[2]")?;
        Self::AT_AIR_2.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.air_3), 16, "air[3]")?;
        Self::AT_AIR_3.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 6], typed::NotEncoded> {
        let mut payload = [0; 6];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn air_1(&self) -> typed::Reading<f64> {
        match self.air_1 {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `air_1` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_air_1(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_AIR_1;
        let raw = &mut self.air_1;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 60 in °C.
    #[must_use]
    pub fn air_1_is_outside(&self) -> bool {
        let raw = self.air_1;
        matches!(raw, -32767..=-4001 | 0x1771..=0x7FFF)
    }

    /// The value in °C.
    #[must_use]
    pub fn air_2(&self) -> typed::Reading<f64> {
        match self.air_2 {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `air_2` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_air_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_AIR_2;
        let raw = &mut self.air_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 60 in °C.
    #[must_use]
    pub fn air_2_is_outside(&self) -> bool {
        let raw = self.air_2;
        matches!(raw, -32767..=-4001 | 0x1771..=0x7FFF)
    }

    /// The value in °C.
    #[must_use]
    pub fn air_3(&self) -> typed::Reading<f64> {
        match self.air_3 {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `air_3` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_air_3(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_AIR_3;
        let raw = &mut self.air_3;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 60 in °C.
    #[must_use]
    pub fn air_3_is_outside(&self) -> bool {
        let raw = self.air_3;
        matches!(raw, -32767..=-4001 | 0x1771..=0x7FFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.air_1());
        let is_outside = self.air_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("air[1]");
        tell(name, said);
        let said = typed::Said::from(self.air_2());
        let is_outside = self.air_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("air[2]");
        tell(name, said);
        let said = typed::Said::from(self.air_3());
        let is_outside = self.air_3_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("air[3]");
        tell(name, said);
    }
}

/// Awake call.
///
/// Each unit that wants to stay awake says so under an identifier of its own; the low five bits are its number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AwakeCall {
    /// `raw`; 2 bits.
    pub asks: AwakeCallAsks,
    /// `raw`; 6 bits.
    pub cause: u8,
    /// Number of the next unit.
    ///
    /// Guessed: changes when a unit is unplugged.
    ///
    /// `raw`; 8 bits.
    pub next: u8,
}

// Called as the description calls its signals.
#[allow(clippy::should_implement_trait, clippy::wrong_self_convention)]
impl AwakeCall {
    /// The identifiers.
    pub const IDS: core::ops::RangeInclusive<u32> = 0x500..=0x51F;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 2;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(640);
    const AT_ASKS: typed::Cut = typed::Cut::between((0, 7), (0, 6));
    const AT_CAUSE: typed::Cut = typed::Cut::between((0, 5), (0, 0));
    const AT_NEXT: typed::Cut = typed::Cut::between((1, 7), (1, 0));

    #[inline]
    fn read(payload: &[u8; 2]) -> Self {
        let bits = Self::AT_ASKS.of(payload);
        let asks = AwakeCallAsks::from_raw(bits as u8);
        let cause = Self::AT_CAUSE.of(payload) as u8;
        let next = Self::AT_NEXT.of(payload) as u8;
        Self { asks, cause, next }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.asks.raw()), 2, "asks")?;
        Self::AT_ASKS.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.cause), 6, "cause")?;
        Self::AT_CAUSE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.next), 8, "next")?;
        Self::AT_NEXT.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 2], typed::NotEncoded> {
        let mut payload = [0; 2];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.asks;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.asks;
        let said = said.word(state.word());
        let name = typed::Name::of("asks");
        tell(name, said);
        let said = typed::Said::from(self.cause);
        let name = typed::Name::of("cause");
        tell(name, said);
        let said = typed::Said::from(self.next);
        let name = typed::Name::of("next");
        tell(name, said);
    }
}

/// Lane.
///
/// The lane that the camera sees: a cubic for each side, aside = c0 + c1\*x + c2\*x² + c3\*x³ in metres, left positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LanePicture {
    /// Left line: c0 to c3.
    ///
    /// `raw`; 32 bits, floating point.
    pub left_0: f64,
    /// Left line: c0 to c3.
    ///
    /// `raw`; 32 bits, floating point.
    pub left_1: f64,
    /// Left line: c0 to c3.
    ///
    /// `raw`; 32 bits, floating point.
    pub left_2: f64,
    /// Left line: c0 to c3.
    ///
    /// `raw`; 32 bits, floating point.
    pub left_3: f64,
    /// Right line: c0 to c3.
    ///
    /// `raw`; 32 bits, floating point.
    pub right_0: f64,
    /// Right line: c0 to c3.
    ///
    /// `raw`; 32 bits, floating point.
    pub right_1: f64,
    /// Right line: c0 to c3.
    ///
    /// `raw`; 32 bits, floating point.
    pub right_2: f64,
    /// Right line: c0 to c3.
    ///
    /// `raw`; 32 bits, floating point.
    pub right_3: f64,
    /// `raw * 0.5` %; 8 bits.
    pub left_quality: u8,
    /// `raw * 0.5` %; 8 bits.
    pub right_quality: u8,
    /// `raw`; 4 bits.
    pub left_kind: LanePictureLeftKind,
    /// `raw`; 4 bits.
    pub right_kind: LanePictureLeftKind,
    /// `raw` m; 8 bits.
    pub visibility: u8,
    /// `raw * 1000` ms; 16 bits, floating point.
    pub exposure: f64,
    /// `raw`; 8 bits.
    ///
    /// Counts the frames, from 0 to 255.
    pub alive: u8,
    /// `raw`; 16 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u16,
}

impl LanePicture {
    /// The identifier.
    pub const ID: u32 = 0x120;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 48;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(40);
    const AT_LEFT_0: typed::Cut = typed::Cut::between((3, 7), (0, 0));
    const AT_LEFT_1: typed::Cut = typed::Cut::between((7, 7), (4, 0));
    const AT_LEFT_2: typed::Cut = typed::Cut::between((11, 7), (8, 0));
    const AT_LEFT_3: typed::Cut = typed::Cut::between((15, 7), (12, 0));
    const AT_RIGHT_0: typed::Cut = typed::Cut::between((19, 7), (16, 0));
    const AT_RIGHT_1: typed::Cut = typed::Cut::between((23, 7), (20, 0));
    const AT_RIGHT_2: typed::Cut = typed::Cut::between((27, 7), (24, 0));
    const AT_RIGHT_3: typed::Cut = typed::Cut::between((31, 7), (28, 0));
    const AT_LEFT_QUALITY: typed::Cut = typed::Cut::between((32, 7), (32, 0));
    const AT_RIGHT_QUALITY: typed::Cut = typed::Cut::between((33, 7), (33, 0));
    const AT_LEFT_KIND: typed::Cut = typed::Cut::between((34, 3), (34, 0));
    const AT_RIGHT_KIND: typed::Cut = typed::Cut::between((34, 7), (34, 4));
    const AT_VISIBILITY: typed::Cut = typed::Cut::between((35, 7), (35, 0));
    const AT_EXPOSURE: typed::Cut = typed::Cut::between((37, 7), (36, 0));
    const AT_ALIVE: typed::Cut = typed::Cut::between((44, 7), (44, 0));
    const AT_CHECK: typed::Cut = typed::Cut::between((47, 7), (46, 0));
    const FORMULA_LEFT_QUALITY: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_RIGHT_QUALITY: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_EXPOSURE: typed::Formula = typed::Formula::new(1000, 0, 1);

    #[inline]
    fn read(payload: &[u8; 48]) -> Self {
        let bits = Self::AT_LEFT_0.of(payload);
        let left_0 = typed::float(bits, 32);
        let bits = Self::AT_LEFT_1.of(payload);
        let left_1 = typed::float(bits, 32);
        let bits = Self::AT_LEFT_2.of(payload);
        let left_2 = typed::float(bits, 32);
        let bits = Self::AT_LEFT_3.of(payload);
        let left_3 = typed::float(bits, 32);
        let bits = Self::AT_RIGHT_0.of(payload);
        let right_0 = typed::float(bits, 32);
        let bits = Self::AT_RIGHT_1.of(payload);
        let right_1 = typed::float(bits, 32);
        let bits = Self::AT_RIGHT_2.of(payload);
        let right_2 = typed::float(bits, 32);
        let bits = Self::AT_RIGHT_3.of(payload);
        let right_3 = typed::float(bits, 32);
        let left_quality = Self::AT_LEFT_QUALITY.of(payload) as u8;
        let right_quality = Self::AT_RIGHT_QUALITY.of(payload) as u8;
        let bits = Self::AT_LEFT_KIND.of(payload);
        let left_kind = LanePictureLeftKind::from_raw(bits as u8);
        let bits = Self::AT_RIGHT_KIND.of(payload);
        let right_kind = LanePictureLeftKind::from_raw(bits as u8);
        let visibility = Self::AT_VISIBILITY.of(payload) as u8;
        let bits = Self::AT_EXPOSURE.of(payload);
        let exposure = typed::float(bits, 16);
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u16;
        Self {
            left_0,
            left_1,
            left_2,
            left_3,
            right_0,
            right_1,
            right_2,
            right_3,
            left_quality,
            right_quality,
            left_kind,
            right_kind,
            visibility,
            exposure,
            alive,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::float_bits(self.left_0, 32, "left[0]")?;
        Self::AT_LEFT_0.put(payload, bits);
        let bits = typed::float_bits(self.left_1, 32, "left[1]")?;
        Self::AT_LEFT_1.put(payload, bits);
        let bits = typed::float_bits(self.left_2, 32, "left[2]")?;
        Self::AT_LEFT_2.put(payload, bits);
        let bits = typed::float_bits(self.left_3, 32, "left[3]")?;
        Self::AT_LEFT_3.put(payload, bits);
        let bits = typed::float_bits(self.right_0, 32, "right[0]")?;
        Self::AT_RIGHT_0.put(payload, bits);
        let bits = typed::float_bits(self.right_1, 32, "right[1]")?;
        Self::AT_RIGHT_1.put(payload, bits);
        let bits = typed::float_bits(self.right_2, 32, "right[2]")?;
        Self::AT_RIGHT_2.put(payload, bits);
        let bits = typed::float_bits(self.right_3, 32, "right[3]")?;
        Self::AT_RIGHT_3.put(payload, bits);
        let number = u64::from(self.left_quality);
        let bits = typed::unsigned_bits(number, 8, "left_quality")?;
        Self::AT_LEFT_QUALITY.put(payload, bits);
        let number = u64::from(self.right_quality);
        let bits = typed::unsigned_bits(number, 8, "right_quality")?;
        Self::AT_RIGHT_QUALITY.put(payload, bits);
        let number = u64::from(self.left_kind.raw());
        let bits = typed::unsigned_bits(number, 4, "left_kind")?;
        Self::AT_LEFT_KIND.put(payload, bits);
        let number = u64::from(self.right_kind.raw());
        let bits = typed::unsigned_bits(number, 4, "right_kind")?;
        Self::AT_RIGHT_KIND.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.visibility), 8, "visibility")?;
        Self::AT_VISIBILITY.put(payload, bits);
        let bits = typed::float_bits(self.exposure, 16, "exposure")?;
        Self::AT_EXPOSURE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 8, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 16, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = &typed::sums::CRC16_IBM_3740;
        let state = sum.start();
        let bytes = payload.get(0..46)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFFFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 48], typed::NotEncoded> {
        let mut payload = [0; 48];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// The value in %.
    #[must_use]
    pub fn left_quality(&self) -> f64 {
        let raw = self.left_quality;
        f64::from(raw) / 2.0
    }

    /// Sets `left_quality` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_left_quality(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_LEFT_QUALITY;
        let raw = &mut self.left_quality;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn left_quality_is_outside(&self) -> bool {
        let raw = self.left_quality;
        matches!(raw, 201..=255)
    }

    /// The value in %.
    #[must_use]
    pub fn right_quality(&self) -> f64 {
        let raw = self.right_quality;
        f64::from(raw) / 2.0
    }

    /// Sets `right_quality` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_right_quality(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_RIGHT_QUALITY;
        let raw = &mut self.right_quality;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn right_quality_is_outside(&self) -> bool {
        let raw = self.right_quality;
        matches!(raw, 201..=255)
    }

    /// What the raw number says.
    #[must_use]
    pub fn visibility(&self) -> typed::Reading<u8> {
        match self.visibility {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 250 in m.
    #[must_use]
    pub fn visibility_is_outside(&self) -> bool {
        let raw = self.visibility;
        matches!(raw, 251..=254)
    }

    /// The value in ms.
    #[must_use]
    pub fn exposure(&self) -> f64 {
        let value = self.exposure;
        Self::FORMULA_EXPOSURE.of_float(value)
    }

    /// Whether the value lies outside its range, 0 to 50 in ms.
    #[must_use]
    pub fn exposure_is_outside(&self) -> bool {
        let value = Some(self.exposure());
        value.is_some() && !typed::within(value, 0.0, 50.0)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 255, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.left_0);
        let name = typed::Name::of("left[0]");
        tell(name, said);
        let said = typed::Said::from(self.left_1);
        let name = typed::Name::of("left[1]");
        tell(name, said);
        let said = typed::Said::from(self.left_2);
        let name = typed::Name::of("left[2]");
        tell(name, said);
        let said = typed::Said::from(self.left_3);
        let name = typed::Name::of("left[3]");
        tell(name, said);
        let said = typed::Said::from(self.right_0);
        let name = typed::Name::of("right[0]");
        tell(name, said);
        let said = typed::Said::from(self.right_1);
        let name = typed::Name::of("right[1]");
        tell(name, said);
        let said = typed::Said::from(self.right_2);
        let name = typed::Name::of("right[2]");
        tell(name, said);
        let said = typed::Said::from(self.right_3);
        let name = typed::Name::of("right[3]");
        tell(name, said);
        let said = typed::Said::from(self.left_quality());
        let is_outside = self.left_quality_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("left_quality");
        tell(name, said);
        let said = typed::Said::from(self.right_quality());
        let is_outside = self.right_quality_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("right_quality");
        tell(name, said);
        let said = self.left_kind;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.left_kind;
        let said = said.word(state.word());
        let name = typed::Name::of("left_kind");
        tell(name, said);
        let said = self.right_kind;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.right_kind;
        let said = said.word(state.word());
        let name = typed::Name::of("right_kind");
        tell(name, said);
        let said = typed::Said::from(self.visibility());
        let is_outside = self.visibility_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("visibility");
        tell(name, said);
        let said = typed::Said::from(self.exposure());
        let is_outside = self.exposure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("exposure");
        tell(name, said);
        let said = typed::Said::from(self.alive);
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Followed objects.
///
/// Up to six followed objects, nearest first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Objects {
    /// `raw`; 6 bits.
    pub first_number: u8,
    /// `raw`; 3 bits.
    pub first_kind: ObjectsFirstKind,
    /// `raw`; 2 bits.
    pub first_braking: ObjectsFirstBraking,
    /// `raw * 0.01` m; 16 bits.
    pub first_ahead: u16,
    /// `raw * 0.01` m; 16 bits, signed.
    pub first_aside: i16,
    /// `raw * 0.01` m/s; 16 bits, signed.
    pub first_speed: i16,
    /// `raw * 0.05` m; 8 bits.
    pub first_width: u8,
    /// `raw * 0.5` %; 8 bits.
    pub first_certainty: u8,
    /// `raw`; 6 bits.
    pub second_number: u8,
    /// `raw`; 3 bits.
    pub second_kind: ObjectsFirstKind,
    /// `raw`; 2 bits.
    pub second_braking: ObjectsFirstBraking,
    /// `raw * 0.01` m; 16 bits.
    pub second_ahead: u16,
    /// `raw * 0.01` m; 16 bits, signed.
    pub second_aside: i16,
    /// `raw * 0.01` m/s; 16 bits, signed.
    pub second_speed: i16,
    /// `raw * 0.05` m; 8 bits.
    pub second_width: u8,
    /// `raw * 0.5` %; 8 bits.
    pub second_certainty: u8,
    /// `raw`; 6 bits.
    pub third_number: u8,
    /// `raw`; 3 bits.
    pub third_kind: ObjectsFirstKind,
    /// `raw`; 2 bits.
    pub third_braking: ObjectsFirstBraking,
    /// `raw * 0.01` m; 16 bits.
    pub third_ahead: u16,
    /// `raw * 0.01` m; 16 bits, signed.
    pub third_aside: i16,
    /// `raw * 0.01` m/s; 16 bits, signed.
    pub third_speed: i16,
    /// `raw * 0.05` m; 8 bits.
    pub third_width: u8,
    /// `raw * 0.5` %; 8 bits.
    pub third_certainty: u8,
    /// `raw`; 6 bits.
    pub fourth_number: u8,
    /// `raw`; 3 bits.
    pub fourth_kind: ObjectsFirstKind,
    /// `raw`; 2 bits.
    pub fourth_braking: ObjectsFirstBraking,
    /// `raw * 0.01` m; 16 bits.
    pub fourth_ahead: u16,
    /// `raw * 0.01` m; 16 bits, signed.
    pub fourth_aside: i16,
    /// `raw * 0.01` m/s; 16 bits, signed.
    pub fourth_speed: i16,
    /// `raw * 0.05` m; 8 bits.
    pub fourth_width: u8,
    /// `raw * 0.5` %; 8 bits.
    pub fourth_certainty: u8,
    /// `raw`; 6 bits.
    pub fifth_number: u8,
    /// `raw`; 3 bits.
    pub fifth_kind: ObjectsFirstKind,
    /// `raw`; 2 bits.
    pub fifth_braking: ObjectsFirstBraking,
    /// `raw * 0.01` m; 16 bits.
    pub fifth_ahead: u16,
    /// `raw * 0.01` m; 16 bits, signed.
    pub fifth_aside: i16,
    /// `raw * 0.01` m/s; 16 bits, signed.
    pub fifth_speed: i16,
    /// `raw * 0.05` m; 8 bits.
    pub fifth_width: u8,
    /// `raw * 0.5` %; 8 bits.
    pub fifth_certainty: u8,
    /// `raw`; 6 bits.
    pub sixth_number: u8,
    /// `raw`; 3 bits.
    pub sixth_kind: ObjectsFirstKind,
    /// `raw`; 2 bits.
    pub sixth_braking: ObjectsFirstBraking,
    /// `raw * 0.01` m; 16 bits.
    pub sixth_ahead: u16,
    /// `raw * 0.01` m; 16 bits, signed.
    pub sixth_aside: i16,
    /// `raw * 0.01` m/s; 16 bits, signed.
    pub sixth_speed: i16,
    /// `raw * 0.05` m; 8 bits.
    pub sixth_width: u8,
    /// `raw * 0.5` %; 8 bits.
    pub sixth_certainty: u8,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 15.
    pub alive: u8,
    /// `raw`; 4 bits.
    pub count: u8,
    /// `raw`; 16 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub check: u16,
}

impl Objects {
    /// The identifier.
    pub const ID: u32 = 0x140;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 64;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(50);
    const AT_FIRST_NUMBER: typed::Cut = typed::Cut::between((0, 5), (0, 0));
    const AT_FIRST_KIND: typed::Cut = typed::Cut::between((1, 0), (0, 6));
    const AT_FIRST_BRAKING: typed::Cut = typed::Cut::between((1, 2), (1, 1));
    const AT_FIRST_AHEAD: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_FIRST_ASIDE: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_FIRST_SPEED: typed::Cut = typed::Cut::between((7, 7), (6, 0));
    const AT_FIRST_WIDTH: typed::Cut = typed::Cut::between((8, 7), (8, 0));
    const AT_FIRST_CERTAINTY: typed::Cut = typed::Cut::between((9, 7), (9, 0));
    const AT_SECOND_NUMBER: typed::Cut = typed::Cut::between((10, 5), (10, 0));
    const AT_SECOND_KIND: typed::Cut = typed::Cut::between((11, 0), (10, 6));
    const AT_SECOND_BRAKING: typed::Cut = typed::Cut::between((11, 2), (11, 1));
    const AT_SECOND_AHEAD: typed::Cut = typed::Cut::between((13, 7), (12, 0));
    const AT_SECOND_ASIDE: typed::Cut = typed::Cut::between((15, 7), (14, 0));
    const AT_SECOND_SPEED: typed::Cut = typed::Cut::between((17, 7), (16, 0));
    const AT_SECOND_WIDTH: typed::Cut = typed::Cut::between((18, 7), (18, 0));
    const AT_SECOND_CERTAINTY: typed::Cut = typed::Cut::between((19, 7), (19, 0));
    const AT_THIRD_NUMBER: typed::Cut = typed::Cut::between((20, 5), (20, 0));
    const AT_THIRD_KIND: typed::Cut = typed::Cut::between((21, 0), (20, 6));
    const AT_THIRD_BRAKING: typed::Cut = typed::Cut::between((21, 2), (21, 1));
    const AT_THIRD_AHEAD: typed::Cut = typed::Cut::between((23, 7), (22, 0));
    const AT_THIRD_ASIDE: typed::Cut = typed::Cut::between((25, 7), (24, 0));
    const AT_THIRD_SPEED: typed::Cut = typed::Cut::between((27, 7), (26, 0));
    const AT_THIRD_WIDTH: typed::Cut = typed::Cut::between((28, 7), (28, 0));
    const AT_THIRD_CERTAINTY: typed::Cut = typed::Cut::between((29, 7), (29, 0));
    const AT_FOURTH_NUMBER: typed::Cut = typed::Cut::between((30, 5), (30, 0));
    const AT_FOURTH_KIND: typed::Cut = typed::Cut::between((31, 0), (30, 6));
    const AT_FOURTH_BRAKING: typed::Cut = typed::Cut::between((31, 2), (31, 1));
    const AT_FOURTH_AHEAD: typed::Cut = typed::Cut::between((33, 7), (32, 0));
    const AT_FOURTH_ASIDE: typed::Cut = typed::Cut::between((35, 7), (34, 0));
    const AT_FOURTH_SPEED: typed::Cut = typed::Cut::between((37, 7), (36, 0));
    const AT_FOURTH_WIDTH: typed::Cut = typed::Cut::between((38, 7), (38, 0));
    const AT_FOURTH_CERTAINTY: typed::Cut = typed::Cut::between((39, 7), (39, 0));
    const AT_FIFTH_NUMBER: typed::Cut = typed::Cut::between((40, 5), (40, 0));
    const AT_FIFTH_KIND: typed::Cut = typed::Cut::between((41, 0), (40, 6));
    const AT_FIFTH_BRAKING: typed::Cut = typed::Cut::between((41, 2), (41, 1));
    const AT_FIFTH_AHEAD: typed::Cut = typed::Cut::between((43, 7), (42, 0));
    const AT_FIFTH_ASIDE: typed::Cut = typed::Cut::between((45, 7), (44, 0));
    const AT_FIFTH_SPEED: typed::Cut = typed::Cut::between((47, 7), (46, 0));
    const AT_FIFTH_WIDTH: typed::Cut = typed::Cut::between((48, 7), (48, 0));
    const AT_FIFTH_CERTAINTY: typed::Cut = typed::Cut::between((49, 7), (49, 0));
    const AT_SIXTH_NUMBER: typed::Cut = typed::Cut::between((50, 5), (50, 0));
    const AT_SIXTH_KIND: typed::Cut = typed::Cut::between((51, 0), (50, 6));
    const AT_SIXTH_BRAKING: typed::Cut = typed::Cut::between((51, 2), (51, 1));
    const AT_SIXTH_AHEAD: typed::Cut = typed::Cut::between((53, 7), (52, 0));
    const AT_SIXTH_ASIDE: typed::Cut = typed::Cut::between((55, 7), (54, 0));
    const AT_SIXTH_SPEED: typed::Cut = typed::Cut::between((57, 7), (56, 0));
    const AT_SIXTH_WIDTH: typed::Cut = typed::Cut::between((58, 7), (58, 0));
    const AT_SIXTH_CERTAINTY: typed::Cut = typed::Cut::between((59, 7), (59, 0));
    const AT_ALIVE: typed::Cut = typed::Cut::between((60, 3), (60, 0));
    const AT_COUNT: typed::Cut = typed::Cut::between((60, 7), (60, 4));
    const AT_CHECK: typed::Cut = typed::Cut::between((63, 7), (62, 0));
    const FORMULA_FIRST_AHEAD: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_FIRST_ASIDE: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_FIRST_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_FIRST_WIDTH: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_FIRST_CERTAINTY: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_SECOND_AHEAD: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_SECOND_ASIDE: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_SECOND_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_SECOND_WIDTH: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_SECOND_CERTAINTY: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_THIRD_AHEAD: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_THIRD_ASIDE: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_THIRD_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_THIRD_WIDTH: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_THIRD_CERTAINTY: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_FOURTH_AHEAD: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_FOURTH_ASIDE: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_FOURTH_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_FOURTH_WIDTH: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_FOURTH_CERTAINTY: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_FIFTH_AHEAD: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_FIFTH_ASIDE: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_FIFTH_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_FIFTH_WIDTH: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_FIFTH_CERTAINTY: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_SIXTH_AHEAD: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_SIXTH_ASIDE: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_SIXTH_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_SIXTH_WIDTH: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_SIXTH_CERTAINTY: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 64]) -> Self {
        let first_number = Self::AT_FIRST_NUMBER.of(payload) as u8;
        let bits = Self::AT_FIRST_KIND.of(payload);
        let first_kind = ObjectsFirstKind::from_raw(bits as u8);
        let bits = Self::AT_FIRST_BRAKING.of(payload);
        let first_braking = ObjectsFirstBraking::from_raw(bits as u8);
        let first_ahead = Self::AT_FIRST_AHEAD.of(payload) as u16;
        let bits = Self::AT_FIRST_ASIDE.of(payload);
        let first_aside = typed::signed(bits, 16) as i16;
        let bits = Self::AT_FIRST_SPEED.of(payload);
        let first_speed = typed::signed(bits, 16) as i16;
        let first_width = Self::AT_FIRST_WIDTH.of(payload) as u8;
        let first_certainty = Self::AT_FIRST_CERTAINTY.of(payload) as u8;
        let second_number = Self::AT_SECOND_NUMBER.of(payload) as u8;
        let bits = Self::AT_SECOND_KIND.of(payload);
        let second_kind = ObjectsFirstKind::from_raw(bits as u8);
        let bits = Self::AT_SECOND_BRAKING.of(payload);
        let second_braking = ObjectsFirstBraking::from_raw(bits as u8);
        let second_ahead = Self::AT_SECOND_AHEAD.of(payload) as u16;
        let bits = Self::AT_SECOND_ASIDE.of(payload);
        let second_aside = typed::signed(bits, 16) as i16;
        let bits = Self::AT_SECOND_SPEED.of(payload);
        let second_speed = typed::signed(bits, 16) as i16;
        let second_width = Self::AT_SECOND_WIDTH.of(payload) as u8;
        let second_certainty = Self::AT_SECOND_CERTAINTY.of(payload) as u8;
        let third_number = Self::AT_THIRD_NUMBER.of(payload) as u8;
        let bits = Self::AT_THIRD_KIND.of(payload);
        let third_kind = ObjectsFirstKind::from_raw(bits as u8);
        let bits = Self::AT_THIRD_BRAKING.of(payload);
        let third_braking = ObjectsFirstBraking::from_raw(bits as u8);
        let third_ahead = Self::AT_THIRD_AHEAD.of(payload) as u16;
        let bits = Self::AT_THIRD_ASIDE.of(payload);
        let third_aside = typed::signed(bits, 16) as i16;
        let bits = Self::AT_THIRD_SPEED.of(payload);
        let third_speed = typed::signed(bits, 16) as i16;
        let third_width = Self::AT_THIRD_WIDTH.of(payload) as u8;
        let third_certainty = Self::AT_THIRD_CERTAINTY.of(payload) as u8;
        let fourth_number = Self::AT_FOURTH_NUMBER.of(payload) as u8;
        let bits = Self::AT_FOURTH_KIND.of(payload);
        let fourth_kind = ObjectsFirstKind::from_raw(bits as u8);
        let bits = Self::AT_FOURTH_BRAKING.of(payload);
        let fourth_braking = ObjectsFirstBraking::from_raw(bits as u8);
        let fourth_ahead = Self::AT_FOURTH_AHEAD.of(payload) as u16;
        let bits = Self::AT_FOURTH_ASIDE.of(payload);
        let fourth_aside = typed::signed(bits, 16) as i16;
        let bits = Self::AT_FOURTH_SPEED.of(payload);
        let fourth_speed = typed::signed(bits, 16) as i16;
        let fourth_width = Self::AT_FOURTH_WIDTH.of(payload) as u8;
        let fourth_certainty = Self::AT_FOURTH_CERTAINTY.of(payload) as u8;
        let fifth_number = Self::AT_FIFTH_NUMBER.of(payload) as u8;
        let bits = Self::AT_FIFTH_KIND.of(payload);
        let fifth_kind = ObjectsFirstKind::from_raw(bits as u8);
        let bits = Self::AT_FIFTH_BRAKING.of(payload);
        let fifth_braking = ObjectsFirstBraking::from_raw(bits as u8);
        let fifth_ahead = Self::AT_FIFTH_AHEAD.of(payload) as u16;
        let bits = Self::AT_FIFTH_ASIDE.of(payload);
        let fifth_aside = typed::signed(bits, 16) as i16;
        let bits = Self::AT_FIFTH_SPEED.of(payload);
        let fifth_speed = typed::signed(bits, 16) as i16;
        let fifth_width = Self::AT_FIFTH_WIDTH.of(payload) as u8;
        let fifth_certainty = Self::AT_FIFTH_CERTAINTY.of(payload) as u8;
        let sixth_number = Self::AT_SIXTH_NUMBER.of(payload) as u8;
        let bits = Self::AT_SIXTH_KIND.of(payload);
        let sixth_kind = ObjectsFirstKind::from_raw(bits as u8);
        let bits = Self::AT_SIXTH_BRAKING.of(payload);
        let sixth_braking = ObjectsFirstBraking::from_raw(bits as u8);
        let sixth_ahead = Self::AT_SIXTH_AHEAD.of(payload) as u16;
        let bits = Self::AT_SIXTH_ASIDE.of(payload);
        let sixth_aside = typed::signed(bits, 16) as i16;
        let bits = Self::AT_SIXTH_SPEED.of(payload);
        let sixth_speed = typed::signed(bits, 16) as i16;
        let sixth_width = Self::AT_SIXTH_WIDTH.of(payload) as u8;
        let sixth_certainty = Self::AT_SIXTH_CERTAINTY.of(payload) as u8;
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let count = Self::AT_COUNT.of(payload) as u8;
        let check = Self::AT_CHECK.of(payload) as u16;
        Self {
            first_number,
            first_kind,
            first_braking,
            first_ahead,
            first_aside,
            first_speed,
            first_width,
            first_certainty,
            second_number,
            second_kind,
            second_braking,
            second_ahead,
            second_aside,
            second_speed,
            second_width,
            second_certainty,
            third_number,
            third_kind,
            third_braking,
            third_ahead,
            third_aside,
            third_speed,
            third_width,
            third_certainty,
            fourth_number,
            fourth_kind,
            fourth_braking,
            fourth_ahead,
            fourth_aside,
            fourth_speed,
            fourth_width,
            fourth_certainty,
            fifth_number,
            fifth_kind,
            fifth_braking,
            fifth_ahead,
            fifth_aside,
            fifth_speed,
            fifth_width,
            fifth_certainty,
            sixth_number,
            sixth_kind,
            sixth_braking,
            sixth_ahead,
            sixth_aside,
            sixth_speed,
            sixth_width,
            sixth_certainty,
            alive,
            count,
            check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.first_number);
        let bits = typed::unsigned_bits(number, 6, "first_number")?;
        Self::AT_FIRST_NUMBER.put(payload, bits);
        let number = u64::from(self.first_kind.raw());
        let bits = typed::unsigned_bits(number, 3, "first_kind")?;
        Self::AT_FIRST_KIND.put(payload, bits);
        let number = u64::from(self.first_braking.raw());
        let bits = typed::unsigned_bits(number, 2, "first_braking")?;
        Self::AT_FIRST_BRAKING.put(payload, bits);
        let number = u64::from(self.first_ahead);
        let bits = typed::unsigned_bits(number, 16, "first_ahead")?;
        Self::AT_FIRST_AHEAD.put(payload, bits);
        let number = i64::from(self.first_aside);
        let bits = typed::signed_bits(number, 16, "first_aside")?;
        Self::AT_FIRST_ASIDE.put(payload, bits);
        let number = i64::from(self.first_speed);
        let bits = typed::signed_bits(number, 16, "first_speed")?;
        Self::AT_FIRST_SPEED.put(payload, bits);
        let number = u64::from(self.first_width);
        let bits = typed::unsigned_bits(number, 8, "first_width")?;
        Self::AT_FIRST_WIDTH.put(payload, bits);
        let number = u64::from(self.first_certainty);
        let bits = typed::unsigned_bits(number, 8, "first_certainty")?;
        Self::AT_FIRST_CERTAINTY.put(payload, bits);
        let number = u64::from(self.second_number);
        let bits = typed::unsigned_bits(number, 6, "second_number")?;
        Self::AT_SECOND_NUMBER.put(payload, bits);
        let number = u64::from(self.second_kind.raw());
        let bits = typed::unsigned_bits(number, 3, "second_kind")?;
        Self::AT_SECOND_KIND.put(payload, bits);
        let number = u64::from(self.second_braking.raw());
        let bits = typed::unsigned_bits(number, 2, "second_braking")?;
        Self::AT_SECOND_BRAKING.put(payload, bits);
        let number = u64::from(self.second_ahead);
        let bits = typed::unsigned_bits(number, 16, "second_ahead")?;
        Self::AT_SECOND_AHEAD.put(payload, bits);
        let number = i64::from(self.second_aside);
        let bits = typed::signed_bits(number, 16, "second_aside")?;
        Self::AT_SECOND_ASIDE.put(payload, bits);
        let number = i64::from(self.second_speed);
        let bits = typed::signed_bits(number, 16, "second_speed")?;
        Self::AT_SECOND_SPEED.put(payload, bits);
        let number = u64::from(self.second_width);
        let bits = typed::unsigned_bits(number, 8, "second_width")?;
        Self::AT_SECOND_WIDTH.put(payload, bits);
        let number = u64::from(self.second_certainty);
        let bits = typed::unsigned_bits(number, 8, "second_certainty")?;
        Self::AT_SECOND_CERTAINTY.put(payload, bits);
        let number = u64::from(self.third_number);
        let bits = typed::unsigned_bits(number, 6, "third_number")?;
        Self::AT_THIRD_NUMBER.put(payload, bits);
        let number = u64::from(self.third_kind.raw());
        let bits = typed::unsigned_bits(number, 3, "third_kind")?;
        Self::AT_THIRD_KIND.put(payload, bits);
        let number = u64::from(self.third_braking.raw());
        let bits = typed::unsigned_bits(number, 2, "third_braking")?;
        Self::AT_THIRD_BRAKING.put(payload, bits);
        let number = u64::from(self.third_ahead);
        let bits = typed::unsigned_bits(number, 16, "third_ahead")?;
        Self::AT_THIRD_AHEAD.put(payload, bits);
        let number = i64::from(self.third_aside);
        let bits = typed::signed_bits(number, 16, "third_aside")?;
        Self::AT_THIRD_ASIDE.put(payload, bits);
        let number = i64::from(self.third_speed);
        let bits = typed::signed_bits(number, 16, "third_speed")?;
        Self::AT_THIRD_SPEED.put(payload, bits);
        let number = u64::from(self.third_width);
        let bits = typed::unsigned_bits(number, 8, "third_width")?;
        Self::AT_THIRD_WIDTH.put(payload, bits);
        let number = u64::from(self.third_certainty);
        let bits = typed::unsigned_bits(number, 8, "third_certainty")?;
        Self::AT_THIRD_CERTAINTY.put(payload, bits);
        let number = u64::from(self.fourth_number);
        let bits = typed::unsigned_bits(number, 6, "fourth_number")?;
        Self::AT_FOURTH_NUMBER.put(payload, bits);
        let number = u64::from(self.fourth_kind.raw());
        let bits = typed::unsigned_bits(number, 3, "fourth_kind")?;
        Self::AT_FOURTH_KIND.put(payload, bits);
        let number = u64::from(self.fourth_braking.raw());
        let bits = typed::unsigned_bits(number, 2, "fourth_braking")?;
        Self::AT_FOURTH_BRAKING.put(payload, bits);
        let number = u64::from(self.fourth_ahead);
        let bits = typed::unsigned_bits(number, 16, "fourth_ahead")?;
        Self::AT_FOURTH_AHEAD.put(payload, bits);
        let number = i64::from(self.fourth_aside);
        let bits = typed::signed_bits(number, 16, "fourth_aside")?;
        Self::AT_FOURTH_ASIDE.put(payload, bits);
        let number = i64::from(self.fourth_speed);
        let bits = typed::signed_bits(number, 16, "fourth_speed")?;
        Self::AT_FOURTH_SPEED.put(payload, bits);
        let number = u64::from(self.fourth_width);
        let bits = typed::unsigned_bits(number, 8, "fourth_width")?;
        Self::AT_FOURTH_WIDTH.put(payload, bits);
        let number = u64::from(self.fourth_certainty);
        let bits = typed::unsigned_bits(number, 8, "fourth_certainty")?;
        Self::AT_FOURTH_CERTAINTY.put(payload, bits);
        let number = u64::from(self.fifth_number);
        let bits = typed::unsigned_bits(number, 6, "fifth_number")?;
        Self::AT_FIFTH_NUMBER.put(payload, bits);
        let number = u64::from(self.fifth_kind.raw());
        let bits = typed::unsigned_bits(number, 3, "fifth_kind")?;
        Self::AT_FIFTH_KIND.put(payload, bits);
        let number = u64::from(self.fifth_braking.raw());
        let bits = typed::unsigned_bits(number, 2, "fifth_braking")?;
        Self::AT_FIFTH_BRAKING.put(payload, bits);
        let number = u64::from(self.fifth_ahead);
        let bits = typed::unsigned_bits(number, 16, "fifth_ahead")?;
        Self::AT_FIFTH_AHEAD.put(payload, bits);
        let number = i64::from(self.fifth_aside);
        let bits = typed::signed_bits(number, 16, "fifth_aside")?;
        Self::AT_FIFTH_ASIDE.put(payload, bits);
        let number = i64::from(self.fifth_speed);
        let bits = typed::signed_bits(number, 16, "fifth_speed")?;
        Self::AT_FIFTH_SPEED.put(payload, bits);
        let number = u64::from(self.fifth_width);
        let bits = typed::unsigned_bits(number, 8, "fifth_width")?;
        Self::AT_FIFTH_WIDTH.put(payload, bits);
        let number = u64::from(self.fifth_certainty);
        let bits = typed::unsigned_bits(number, 8, "fifth_certainty")?;
        Self::AT_FIFTH_CERTAINTY.put(payload, bits);
        let number = u64::from(self.sixth_number);
        let bits = typed::unsigned_bits(number, 6, "sixth_number")?;
        Self::AT_SIXTH_NUMBER.put(payload, bits);
        let number = u64::from(self.sixth_kind.raw());
        let bits = typed::unsigned_bits(number, 3, "sixth_kind")?;
        Self::AT_SIXTH_KIND.put(payload, bits);
        let number = u64::from(self.sixth_braking.raw());
        let bits = typed::unsigned_bits(number, 2, "sixth_braking")?;
        Self::AT_SIXTH_BRAKING.put(payload, bits);
        let number = u64::from(self.sixth_ahead);
        let bits = typed::unsigned_bits(number, 16, "sixth_ahead")?;
        Self::AT_SIXTH_AHEAD.put(payload, bits);
        let number = i64::from(self.sixth_aside);
        let bits = typed::signed_bits(number, 16, "sixth_aside")?;
        Self::AT_SIXTH_ASIDE.put(payload, bits);
        let number = i64::from(self.sixth_speed);
        let bits = typed::signed_bits(number, 16, "sixth_speed")?;
        Self::AT_SIXTH_SPEED.put(payload, bits);
        let number = u64::from(self.sixth_width);
        let bits = typed::unsigned_bits(number, 8, "sixth_width")?;
        Self::AT_SIXTH_WIDTH.put(payload, bits);
        let number = u64::from(self.sixth_certainty);
        let bits = typed::unsigned_bits(number, 8, "sixth_certainty")?;
        Self::AT_SIXTH_CERTAINTY.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.count), 4, "count")?;
        Self::AT_COUNT.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.check), 16, "check")?;
        Self::AT_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_check(payload: &[u8]) -> Option<u64> {
        let sum = &typed::sums::CRC16_ARC;
        let state = sum.start();
        let bytes = payload.get(0..62)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFFFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CHECK.get(payload);
        let right = Self::sum_of_check(payload);
        typed::sum_fits(found, right, "check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_check(payload) {
            Self::AT_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 64], typed::NotEncoded> {
        let mut payload = [0; 64];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn first_number(&self) -> typed::Reading<u8> {
        match self.first_number {
            63 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The value in m.
    #[must_use]
    pub fn first_ahead(&self) -> typed::Reading<f64> {
        match self.first_ahead {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `first_ahead` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_first_ahead(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_FIRST_AHEAD;
        let raw = &mut self.first_ahead;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250 in m.
    #[must_use]
    pub fn first_ahead_is_outside(&self) -> bool {
        let raw = self.first_ahead;
        matches!(raw, 0x61A9..=0xFFFE)
    }

    /// The value in m.
    #[must_use]
    pub fn first_aside(&self) -> typed::Reading<f64> {
        match self.first_aside {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `first_aside` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_first_aside(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_FIRST_ASIDE;
        let raw = &mut self.first_aside;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -60 to 60 in m.
    #[must_use]
    pub fn first_aside_is_outside(&self) -> bool {
        let raw = self.first_aside;
        matches!(raw, -32767..=-6001 | 0x1771..=0x7FFF)
    }

    /// The value in m/s.
    #[must_use]
    pub fn first_speed(&self) -> typed::Reading<f64> {
        match self.first_speed {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `first_speed` to the raw number nearest to a value in m/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_first_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_FIRST_SPEED;
        let raw = &mut self.first_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -90 to 90 in m/s.
    #[must_use]
    pub fn first_speed_is_outside(&self) -> bool {
        let raw = self.first_speed;
        matches!(raw, -32767..=-9001 | 0x2329..=0x7FFF)
    }

    /// The value in m.
    #[must_use]
    pub fn first_width(&self) -> typed::Reading<f64> {
        match self.first_width {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `first_width` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_first_width(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_FIRST_WIDTH;
        let raw = &mut self.first_width;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6 in m.
    #[must_use]
    pub fn first_width_is_outside(&self) -> bool {
        let raw = self.first_width;
        matches!(raw, 121..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn first_certainty(&self) -> f64 {
        let raw = self.first_certainty;
        f64::from(raw) / 2.0
    }

    /// Sets `first_certainty` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_first_certainty(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_FIRST_CERTAINTY;
        let raw = &mut self.first_certainty;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn first_certainty_is_outside(&self) -> bool {
        let raw = self.first_certainty;
        matches!(raw, 201..=255)
    }

    /// What the raw number says.
    #[must_use]
    pub fn second_number(&self) -> typed::Reading<u8> {
        match self.second_number {
            63 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The value in m.
    #[must_use]
    pub fn second_ahead(&self) -> typed::Reading<f64> {
        match self.second_ahead {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `second_ahead` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_second_ahead(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_SECOND_AHEAD;
        let raw = &mut self.second_ahead;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250 in m.
    #[must_use]
    pub fn second_ahead_is_outside(&self) -> bool {
        let raw = self.second_ahead;
        matches!(raw, 0x61A9..=0xFFFE)
    }

    /// The value in m.
    #[must_use]
    pub fn second_aside(&self) -> typed::Reading<f64> {
        match self.second_aside {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `second_aside` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_second_aside(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_SECOND_ASIDE;
        let raw = &mut self.second_aside;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -60 to 60 in m.
    #[must_use]
    pub fn second_aside_is_outside(&self) -> bool {
        let raw = self.second_aside;
        matches!(raw, -32767..=-6001 | 0x1771..=0x7FFF)
    }

    /// The value in m/s.
    #[must_use]
    pub fn second_speed(&self) -> typed::Reading<f64> {
        match self.second_speed {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `second_speed` to the raw number nearest to a value in m/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_second_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_SECOND_SPEED;
        let raw = &mut self.second_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -90 to 90 in m/s.
    #[must_use]
    pub fn second_speed_is_outside(&self) -> bool {
        let raw = self.second_speed;
        matches!(raw, -32767..=-9001 | 0x2329..=0x7FFF)
    }

    /// The value in m.
    #[must_use]
    pub fn second_width(&self) -> typed::Reading<f64> {
        match self.second_width {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `second_width` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_second_width(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_SECOND_WIDTH;
        let raw = &mut self.second_width;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6 in m.
    #[must_use]
    pub fn second_width_is_outside(&self) -> bool {
        let raw = self.second_width;
        matches!(raw, 121..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn second_certainty(&self) -> f64 {
        let raw = self.second_certainty;
        f64::from(raw) / 2.0
    }

    /// Sets `second_certainty` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_second_certainty(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_SECOND_CERTAINTY;
        let raw = &mut self.second_certainty;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn second_certainty_is_outside(&self) -> bool {
        let raw = self.second_certainty;
        matches!(raw, 201..=255)
    }

    /// What the raw number says.
    #[must_use]
    pub fn third_number(&self) -> typed::Reading<u8> {
        match self.third_number {
            63 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The value in m.
    #[must_use]
    pub fn third_ahead(&self) -> typed::Reading<f64> {
        match self.third_ahead {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `third_ahead` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_third_ahead(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_THIRD_AHEAD;
        let raw = &mut self.third_ahead;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250 in m.
    #[must_use]
    pub fn third_ahead_is_outside(&self) -> bool {
        let raw = self.third_ahead;
        matches!(raw, 0x61A9..=0xFFFE)
    }

    /// The value in m.
    #[must_use]
    pub fn third_aside(&self) -> typed::Reading<f64> {
        match self.third_aside {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `third_aside` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_third_aside(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_THIRD_ASIDE;
        let raw = &mut self.third_aside;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -60 to 60 in m.
    #[must_use]
    pub fn third_aside_is_outside(&self) -> bool {
        let raw = self.third_aside;
        matches!(raw, -32767..=-6001 | 0x1771..=0x7FFF)
    }

    /// The value in m/s.
    #[must_use]
    pub fn third_speed(&self) -> typed::Reading<f64> {
        match self.third_speed {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `third_speed` to the raw number nearest to a value in m/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_third_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_THIRD_SPEED;
        let raw = &mut self.third_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -90 to 90 in m/s.
    #[must_use]
    pub fn third_speed_is_outside(&self) -> bool {
        let raw = self.third_speed;
        matches!(raw, -32767..=-9001 | 0x2329..=0x7FFF)
    }

    /// The value in m.
    #[must_use]
    pub fn third_width(&self) -> typed::Reading<f64> {
        match self.third_width {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `third_width` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_third_width(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_THIRD_WIDTH;
        let raw = &mut self.third_width;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6 in m.
    #[must_use]
    pub fn third_width_is_outside(&self) -> bool {
        let raw = self.third_width;
        matches!(raw, 121..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn third_certainty(&self) -> f64 {
        let raw = self.third_certainty;
        f64::from(raw) / 2.0
    }

    /// Sets `third_certainty` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_third_certainty(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_THIRD_CERTAINTY;
        let raw = &mut self.third_certainty;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn third_certainty_is_outside(&self) -> bool {
        let raw = self.third_certainty;
        matches!(raw, 201..=255)
    }

    /// What the raw number says.
    #[must_use]
    pub fn fourth_number(&self) -> typed::Reading<u8> {
        match self.fourth_number {
            63 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The value in m.
    #[must_use]
    pub fn fourth_ahead(&self) -> typed::Reading<f64> {
        match self.fourth_ahead {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `fourth_ahead` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fourth_ahead(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_FOURTH_AHEAD;
        let raw = &mut self.fourth_ahead;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250 in m.
    #[must_use]
    pub fn fourth_ahead_is_outside(&self) -> bool {
        let raw = self.fourth_ahead;
        matches!(raw, 0x61A9..=0xFFFE)
    }

    /// The value in m.
    #[must_use]
    pub fn fourth_aside(&self) -> typed::Reading<f64> {
        match self.fourth_aside {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `fourth_aside` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fourth_aside(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_FOURTH_ASIDE;
        let raw = &mut self.fourth_aside;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -60 to 60 in m.
    #[must_use]
    pub fn fourth_aside_is_outside(&self) -> bool {
        let raw = self.fourth_aside;
        matches!(raw, -32767..=-6001 | 0x1771..=0x7FFF)
    }

    /// The value in m/s.
    #[must_use]
    pub fn fourth_speed(&self) -> typed::Reading<f64> {
        match self.fourth_speed {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `fourth_speed` to the raw number nearest to a value in m/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fourth_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_FOURTH_SPEED;
        let raw = &mut self.fourth_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -90 to 90 in m/s.
    #[must_use]
    pub fn fourth_speed_is_outside(&self) -> bool {
        let raw = self.fourth_speed;
        matches!(raw, -32767..=-9001 | 0x2329..=0x7FFF)
    }

    /// The value in m.
    #[must_use]
    pub fn fourth_width(&self) -> typed::Reading<f64> {
        match self.fourth_width {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `fourth_width` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fourth_width(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_FOURTH_WIDTH;
        let raw = &mut self.fourth_width;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6 in m.
    #[must_use]
    pub fn fourth_width_is_outside(&self) -> bool {
        let raw = self.fourth_width;
        matches!(raw, 121..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn fourth_certainty(&self) -> f64 {
        let raw = self.fourth_certainty;
        f64::from(raw) / 2.0
    }

    /// Sets `fourth_certainty` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fourth_certainty(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_FOURTH_CERTAINTY;
        let raw = &mut self.fourth_certainty;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn fourth_certainty_is_outside(&self) -> bool {
        let raw = self.fourth_certainty;
        matches!(raw, 201..=255)
    }

    /// What the raw number says.
    #[must_use]
    pub fn fifth_number(&self) -> typed::Reading<u8> {
        match self.fifth_number {
            63 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The value in m.
    #[must_use]
    pub fn fifth_ahead(&self) -> typed::Reading<f64> {
        match self.fifth_ahead {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `fifth_ahead` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fifth_ahead(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_FIFTH_AHEAD;
        let raw = &mut self.fifth_ahead;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250 in m.
    #[must_use]
    pub fn fifth_ahead_is_outside(&self) -> bool {
        let raw = self.fifth_ahead;
        matches!(raw, 0x61A9..=0xFFFE)
    }

    /// The value in m.
    #[must_use]
    pub fn fifth_aside(&self) -> typed::Reading<f64> {
        match self.fifth_aside {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `fifth_aside` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fifth_aside(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_FIFTH_ASIDE;
        let raw = &mut self.fifth_aside;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -60 to 60 in m.
    #[must_use]
    pub fn fifth_aside_is_outside(&self) -> bool {
        let raw = self.fifth_aside;
        matches!(raw, -32767..=-6001 | 0x1771..=0x7FFF)
    }

    /// The value in m/s.
    #[must_use]
    pub fn fifth_speed(&self) -> typed::Reading<f64> {
        match self.fifth_speed {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `fifth_speed` to the raw number nearest to a value in m/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fifth_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_FIFTH_SPEED;
        let raw = &mut self.fifth_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -90 to 90 in m/s.
    #[must_use]
    pub fn fifth_speed_is_outside(&self) -> bool {
        let raw = self.fifth_speed;
        matches!(raw, -32767..=-9001 | 0x2329..=0x7FFF)
    }

    /// The value in m.
    #[must_use]
    pub fn fifth_width(&self) -> typed::Reading<f64> {
        match self.fifth_width {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `fifth_width` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fifth_width(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_FIFTH_WIDTH;
        let raw = &mut self.fifth_width;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6 in m.
    #[must_use]
    pub fn fifth_width_is_outside(&self) -> bool {
        let raw = self.fifth_width;
        matches!(raw, 121..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn fifth_certainty(&self) -> f64 {
        let raw = self.fifth_certainty;
        f64::from(raw) / 2.0
    }

    /// Sets `fifth_certainty` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fifth_certainty(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_FIFTH_CERTAINTY;
        let raw = &mut self.fifth_certainty;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn fifth_certainty_is_outside(&self) -> bool {
        let raw = self.fifth_certainty;
        matches!(raw, 201..=255)
    }

    /// What the raw number says.
    #[must_use]
    pub fn sixth_number(&self) -> typed::Reading<u8> {
        match self.sixth_number {
            63 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The value in m.
    #[must_use]
    pub fn sixth_ahead(&self) -> typed::Reading<f64> {
        match self.sixth_ahead {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `sixth_ahead` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_sixth_ahead(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_SIXTH_AHEAD;
        let raw = &mut self.sixth_ahead;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250 in m.
    #[must_use]
    pub fn sixth_ahead_is_outside(&self) -> bool {
        let raw = self.sixth_ahead;
        matches!(raw, 0x61A9..=0xFFFE)
    }

    /// The value in m.
    #[must_use]
    pub fn sixth_aside(&self) -> typed::Reading<f64> {
        match self.sixth_aside {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `sixth_aside` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_sixth_aside(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_SIXTH_ASIDE;
        let raw = &mut self.sixth_aside;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -60 to 60 in m.
    #[must_use]
    pub fn sixth_aside_is_outside(&self) -> bool {
        let raw = self.sixth_aside;
        matches!(raw, -32767..=-6001 | 0x1771..=0x7FFF)
    }

    /// The value in m/s.
    #[must_use]
    pub fn sixth_speed(&self) -> typed::Reading<f64> {
        match self.sixth_speed {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `sixth_speed` to the raw number nearest to a value in m/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_sixth_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_SIXTH_SPEED;
        let raw = &mut self.sixth_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -90 to 90 in m/s.
    #[must_use]
    pub fn sixth_speed_is_outside(&self) -> bool {
        let raw = self.sixth_speed;
        matches!(raw, -32767..=-9001 | 0x2329..=0x7FFF)
    }

    /// The value in m.
    #[must_use]
    pub fn sixth_width(&self) -> typed::Reading<f64> {
        match self.sixth_width {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `sixth_width` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_sixth_width(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_SIXTH_WIDTH;
        let raw = &mut self.sixth_width;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6 in m.
    #[must_use]
    pub fn sixth_width_is_outside(&self) -> bool {
        let raw = self.sixth_width;
        matches!(raw, 121..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn sixth_certainty(&self) -> f64 {
        let raw = self.sixth_certainty;
        f64::from(raw) / 2.0
    }

    /// Sets `sixth_certainty` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_sixth_certainty(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_SIXTH_CERTAINTY;
        let raw = &mut self.sixth_certainty;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn sixth_certainty_is_outside(&self) -> bool {
        let raw = self.sixth_certainty;
        matches!(raw, 201..=255)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 15, 1);
        next as u8
    }

    /// Whether the value lies outside its range, 0 to 6.
    #[must_use]
    pub fn count_is_outside(&self) -> bool {
        let raw = self.count;
        matches!(raw, 7..=15)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.first_number());
        let name = typed::Name::of("first_number");
        tell(name, said);
        let said = self.first_kind;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.first_kind;
        let said = said.word(state.word());
        let name = typed::Name::of("first_kind");
        tell(name, said);
        let said = self.first_braking;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.first_braking;
        let said = said.word(state.word());
        let name = typed::Name::of("first_braking");
        tell(name, said);
        let said = typed::Said::from(self.first_ahead());
        let is_outside = self.first_ahead_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("first_ahead");
        tell(name, said);
        let said = typed::Said::from(self.first_aside());
        let is_outside = self.first_aside_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("first_aside");
        tell(name, said);
        let said = typed::Said::from(self.first_speed());
        let is_outside = self.first_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("first_speed");
        tell(name, said);
        let said = typed::Said::from(self.first_width());
        let is_outside = self.first_width_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("first_width");
        tell(name, said);
        let said = self.first_certainty();
        let said = typed::Said::from(said);
        let is_outside = self.first_certainty_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("first_certainty");
        tell(name, said);
        let said = typed::Said::from(self.second_number());
        let name = typed::Name::of("second_number");
        tell(name, said);
        let said = self.second_kind;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.second_kind;
        let said = said.word(state.word());
        let name = typed::Name::of("second_kind");
        tell(name, said);
        let said = self.second_braking;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.second_braking;
        let said = said.word(state.word());
        let name = typed::Name::of("second_braking");
        tell(name, said);
        let said = typed::Said::from(self.second_ahead());
        let is_outside = self.second_ahead_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("second_ahead");
        tell(name, said);
        let said = typed::Said::from(self.second_aside());
        let is_outside = self.second_aside_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("second_aside");
        tell(name, said);
        let said = typed::Said::from(self.second_speed());
        let is_outside = self.second_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("second_speed");
        tell(name, said);
        let said = typed::Said::from(self.second_width());
        let is_outside = self.second_width_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("second_width");
        tell(name, said);
        let said = self.second_certainty();
        let said = typed::Said::from(said);
        let is_outside = self.second_certainty_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("second_certainty");
        tell(name, said);
        let said = typed::Said::from(self.third_number());
        let name = typed::Name::of("third_number");
        tell(name, said);
        let said = self.third_kind;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.third_kind;
        let said = said.word(state.word());
        let name = typed::Name::of("third_kind");
        tell(name, said);
        let said = self.third_braking;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.third_braking;
        let said = said.word(state.word());
        let name = typed::Name::of("third_braking");
        tell(name, said);
        let said = typed::Said::from(self.third_ahead());
        let is_outside = self.third_ahead_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("third_ahead");
        tell(name, said);
        let said = typed::Said::from(self.third_aside());
        let is_outside = self.third_aside_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("third_aside");
        tell(name, said);
        let said = typed::Said::from(self.third_speed());
        let is_outside = self.third_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("third_speed");
        tell(name, said);
        let said = typed::Said::from(self.third_width());
        let is_outside = self.third_width_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("third_width");
        tell(name, said);
        let said = self.third_certainty();
        let said = typed::Said::from(said);
        let is_outside = self.third_certainty_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("third_certainty");
        tell(name, said);
        let said = typed::Said::from(self.fourth_number());
        let name = typed::Name::of("fourth_number");
        tell(name, said);
        let said = self.fourth_kind;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.fourth_kind;
        let said = said.word(state.word());
        let name = typed::Name::of("fourth_kind");
        tell(name, said);
        let said = self.fourth_braking;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.fourth_braking;
        let said = said.word(state.word());
        let name = typed::Name::of("fourth_braking");
        tell(name, said);
        let said = typed::Said::from(self.fourth_ahead());
        let is_outside = self.fourth_ahead_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fourth_ahead");
        tell(name, said);
        let said = typed::Said::from(self.fourth_aside());
        let is_outside = self.fourth_aside_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fourth_aside");
        tell(name, said);
        let said = typed::Said::from(self.fourth_speed());
        let is_outside = self.fourth_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fourth_speed");
        tell(name, said);
        let said = typed::Said::from(self.fourth_width());
        let is_outside = self.fourth_width_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fourth_width");
        tell(name, said);
        let said = self.fourth_certainty();
        let said = typed::Said::from(said);
        let is_outside = self.fourth_certainty_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fourth_certainty");
        tell(name, said);
        let said = typed::Said::from(self.fifth_number());
        let name = typed::Name::of("fifth_number");
        tell(name, said);
        let said = self.fifth_kind;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.fifth_kind;
        let said = said.word(state.word());
        let name = typed::Name::of("fifth_kind");
        tell(name, said);
        let said = self.fifth_braking;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.fifth_braking;
        let said = said.word(state.word());
        let name = typed::Name::of("fifth_braking");
        tell(name, said);
        let said = typed::Said::from(self.fifth_ahead());
        let is_outside = self.fifth_ahead_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fifth_ahead");
        tell(name, said);
        let said = typed::Said::from(self.fifth_aside());
        let is_outside = self.fifth_aside_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fifth_aside");
        tell(name, said);
        let said = typed::Said::from(self.fifth_speed());
        let is_outside = self.fifth_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fifth_speed");
        tell(name, said);
        let said = typed::Said::from(self.fifth_width());
        let is_outside = self.fifth_width_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fifth_width");
        tell(name, said);
        let said = self.fifth_certainty();
        let said = typed::Said::from(said);
        let is_outside = self.fifth_certainty_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fifth_certainty");
        tell(name, said);
        let said = typed::Said::from(self.sixth_number());
        let name = typed::Name::of("sixth_number");
        tell(name, said);
        let said = self.sixth_kind;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.sixth_kind;
        let said = said.word(state.word());
        let name = typed::Name::of("sixth_kind");
        tell(name, said);
        let said = self.sixth_braking;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.sixth_braking;
        let said = said.word(state.word());
        let name = typed::Name::of("sixth_braking");
        tell(name, said);
        let said = typed::Said::from(self.sixth_ahead());
        let is_outside = self.sixth_ahead_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("sixth_ahead");
        tell(name, said);
        let said = typed::Said::from(self.sixth_aside());
        let is_outside = self.sixth_aside_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("sixth_aside");
        tell(name, said);
        let said = typed::Said::from(self.sixth_speed());
        let is_outside = self.sixth_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("sixth_speed");
        tell(name, said);
        let said = typed::Said::from(self.sixth_width());
        let is_outside = self.sixth_width_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("sixth_width");
        tell(name, said);
        let said = self.sixth_certainty();
        let said = typed::Said::from(said);
        let is_outside = self.sixth_certainty_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("sixth_certainty");
        tell(name, said);
        let said = typed::Said::from(self.alive);
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.count);
        let is_outside = self.count_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("count");
        tell(name, said);
        let said = typed::Said::from(self.check);
        let name = typed::Name::of("check");
        tell(name, said);
    }
}

/// Camera health.
///
/// How the camera feels, and what it wants to say in plain text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CameraHealth<'a> {
    /// `raw`; 3 bits.
    pub state: CameraHealthState,
    /// `raw` °C; 8 bits, signed.
    pub temperature: i8,
    /// `raw * 0.01` s; 32 bits.
    pub uptime: u32,
    /// `raw * 0.001` V; 16 bits.
    pub supply: u16,
    /// Text, byte by byte.
    pub message: &'a [u8],
}

impl<'a> CameraHealth<'a> {
    /// The identifier.
    pub const ID: u32 = 0x150;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 8..=24;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_STATE: typed::Cut = typed::Cut::between((0, 2), (0, 0));
    const AT_TEMPERATURE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_UPTIME: typed::Cut = typed::Cut::between((5, 7), (2, 0));
    const AT_SUPPLY: typed::Cut = typed::Cut::between((7, 7), (6, 0));
    const FORMULA_UPTIME: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_SUPPLY: typed::Formula = typed::Formula::new(1, 0, 1000);

    #[inline]
    fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let bits = Self::AT_STATE.of(payload);
        let state = CameraHealthState::from_raw(bits as u8);
        let bits = Self::AT_TEMPERATURE.of(payload);
        let temperature = typed::signed(bits, 8) as i8;
        let uptime = Self::AT_UPTIME.of(payload) as u32;
        let supply = Self::AT_SUPPLY.of(payload) as u16;
        let message = typed::to_end(payload, 8);
        Ok(Self {
            state,
            temperature,
            uptime,
            supply,
            message,
        })
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.state.raw()), 3, "state")?;
        Self::AT_STATE.put(payload, bits);
        let number = i64::from(self.temperature);
        let bits = typed::signed_bits(number, 8, "temperature")?;
        Self::AT_TEMPERATURE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.uptime), 32, "uptime")?;
        Self::AT_UPTIME.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.supply), 16, "supply")?;
        Self::AT_SUPPLY.put(payload, bits);
        typed::put_bytes(payload, self.message, 8, None, "message")?;
        Ok(())
    }

    fn measure(&self, size: &mut typed::Size) {
        size.part(8, Some(8));
        size.reach(8 + self.message.len());
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let frame = Self::read(payload)?;
        let mut size = typed::Size::default();
        frame.measure(&mut size);
        typed::at_least(payload, size.least())?;
        Ok(frame)
    }

    /// Writes the payload and tells its length in bytes.
    ///
    /// # Errors
    /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
    /// small.
    pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
        let mut size = typed::Size::default();
        self.measure(&mut size);
        let payload = typed::room(room, size.length())?;
        self.write(payload)?;
        Ok(size.length())
    }

    /// What the raw number says.
    #[must_use]
    pub fn state(&self) -> typed::Reading<CameraHealthState> {
        match self.state.raw() {
            7 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.state),
        }
    }

    /// Whether the value lies outside its range, -40 to 120 in °C.
    #[must_use]
    pub fn temperature_is_outside(&self) -> bool {
        let raw = self.temperature;
        matches!(raw, -128..=-41 | 121..=127)
    }

    /// The value in s.
    #[must_use]
    pub fn uptime(&self) -> f64 {
        let raw = self.uptime;
        f64::from(raw) / 100.0
    }

    /// Sets `uptime` to the raw number nearest to a value in s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_uptime(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_UPTIME;
        let raw = &mut self.uptime;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 42949672.95 in s.
    #[must_use]
    pub fn uptime_is_outside(&self) -> bool {
        false
    }

    /// The value in V.
    #[must_use]
    pub fn supply(&self) -> f64 {
        let raw = self.supply;
        f64::from(raw) / 1000.0
    }

    /// Sets `supply` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_supply(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_SUPPLY;
        let raw = &mut self.supply;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 20 in V.
    #[must_use]
    pub fn supply_is_outside(&self) -> bool {
        let raw = self.supply;
        matches!(raw, 0x4E21..=0xFFFF)
    }

    /// The characters, without the NUL bytes at their end.
    #[must_use]
    pub fn message(&self) -> typed::Text<'a> {
        typed::Text::new(self.message, typed::Charset::Utf8)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.state();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.state;
        let said = said.word(state.word());
        let name = typed::Name::of("state");
        tell(name, said);
        let said = typed::Said::from(self.temperature);
        let is_outside = self.temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("temperature");
        tell(name, said);
        let said = typed::Said::from(self.uptime());
        let is_outside = self.uptime_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("uptime");
        tell(name, said);
        let said = typed::Said::from(self.supply());
        let is_outside = self.supply_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("supply");
        tell(name, said);
        let said = typed::Said::from(self.message());
        let name = typed::Name::of("message");
        tell(name, said);
    }
}

pub use engine_questions::EngineQuestions;

/// `engine_questions` and what it holds.
#[allow(clippy::module_inception)]
pub mod engine_questions {
    use wirelore_bits::typed;

    /// Questions to the engine unit.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct EngineQuestions {
        /// `raw`; 8 bits.
        pub service: super::EngineQuestionsService,
        /// What is there under a condition.
        pub when_service: WhenService,
    }

    impl EngineQuestions {
        /// The identifier.
        pub const ID: u32 = 0x7E0;
        /// Whether the identifier has 29 bits.
        pub const EXTENDED: bool = false;
        /// The lengths in bytes.
        pub const LENGTHS: core::ops::RangeInclusive<usize> = 1..=4095;
        const AT_SERVICE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_SERVICE.of(payload);
            let service = super::EngineQuestionsService::from_raw(bits as u8);
            let held = Self::select_service(payload);
            let when_service = match held {
                0 => {
                    let page = ServiceReadData::read(payload)?;
                    WhenService::ReadData(page)
                }
                1 => {
                    let page = ServiceReadCodes::read(payload)?;
                    WhenService::ReadCodes(page)
                }
                _ => WhenService::NoPage,
            };
            Ok(Self {
                service,
                when_service,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.service.raw()), 8, "service")?;
            Self::AT_SERVICE.put(payload, bits);
            let held = Self::select_service(payload);
            match (held, &self.when_service) {
                (0, WhenService::ReadData(page)) => page.write(payload)?,
                (1, WhenService::ReadCodes(page)) => page.write(payload)?,
                (2, WhenService::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, Some(1));
            match &self.when_service {
                WhenService::ReadData(page) => page.measure(size),
                WhenService::ReadCodes(page) => page.measure(size),
                WhenService::NoPage => {}
            }
        }

        #[inline]
        fn select_service(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_SERVICE.get(payload) else {
                return 2;
            };
            match bits {
                25 => 1,
                34 => 0,
                _ => 2,
            }
        }

        /// Reads a payload.
        ///
        /// It is the whole message: ISO 15765-2 carries it in several frames.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let frame = Self::read(payload)?;
            let mut size = typed::Size::default();
            frame.measure(&mut size);
            typed::at_least(payload, size.least())?;
            Ok(frame)
        }

        /// Writes the payload and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Ok(size.length())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.service;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.service;
            let said = said.word(state.word());
            let name = typed::Name::of("service");
            tell(name, said);
            match &self.when_service {
                WhenService::ReadData(page) => page.each(tell),
                WhenService::ReadCodes(page) => page.each(tell),
                WhenService::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenService {
        /// When `service` is 0x22.
        ReadData(ServiceReadData),
        /// When `service` is 0x19.
        ReadCodes(ServiceReadCodes),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `service` is 0x22.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceReadData {
        /// `raw`; 16 bits.
        ///
        /// `None`: the payload ends before it.
        pub wanted: Option<super::EngineQuestionsWanted>,
    }

    impl ServiceReadData {
        const AT_WANTED: typed::Cut = typed::Cut::between((1, 7), (2, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_WANTED.get(payload);
            let convert = |bits: u64| super::EngineQuestionsWanted::from_raw(bits as u16);
            let wanted = bits.map(convert);
            Ok(Self { wanted })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.wanted {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 16, "wanted")?;
                Self::AT_WANTED.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.wanted.is_some() {
                size.reach(3);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.wanted {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.wanted;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("wanted");
                tell(name, said);
            }
        }
    }

    /// When `service` is 0x19.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceReadCodes {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub report: Option<super::EngineQuestionsReport>,
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub asked_status: Option<u8>,
    }

    impl ServiceReadCodes {
        const AT_REPORT: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_ASKED_STATUS: typed::Cut = typed::Cut::between((2, 7), (2, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_REPORT.get(payload);
            let convert = |bits: u64| super::EngineQuestionsReport::from_raw(bits as u8);
            let report = bits.map(convert);
            let bits = Self::AT_ASKED_STATUS.get(payload);
            let convert = |bits: u64| bits as u8;
            let asked_status = bits.map(convert);
            Ok(Self {
                report,
                asked_status,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.report {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 8, "report")?;
                Self::AT_REPORT.put(payload, bits);
            }
            if let Some(value) = self.asked_status {
                let bits = typed::unsigned_bits(u64::from(value), 8, "asked_status")?;
                Self::AT_ASKED_STATUS.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.report.is_some() {
                size.reach(2);
            }
            if self.asked_status.is_some() {
                size.reach(3);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.report {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.report;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("report");
                tell(name, said);
            }
            if let Some(said) = self.asked_status {
                let said = typed::Said::from(said);
                let name = typed::Name::of("asked_status");
                tell(name, said);
            }
        }
    }
}

pub use engine_answers::EngineAnswers;

/// `engine_answers` and what it holds.
#[allow(clippy::module_inception)]
pub mod engine_answers {
    use wirelore_bits::typed;

    /// Answers of the engine unit.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct EngineAnswers<'a> {
        /// `raw`; 8 bits.
        pub service: super::EngineAnswersService,
        /// What is there under a condition.
        pub when_service: WhenService<'a>,
    }

    impl<'a> EngineAnswers<'a> {
        /// The identifier.
        pub const ID: u32 = 0x7E8;
        /// Whether the identifier has 29 bits.
        pub const EXTENDED: bool = false;
        /// The lengths in bytes.
        pub const LENGTHS: core::ops::RangeInclusive<usize> = 1..=4095;
        const AT_SERVICE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_SERVICE.of(payload);
            let service = super::EngineAnswersService::from_raw(bits as u8);
            let held = Self::select_service(payload);
            let when_service = match held {
                0 => {
                    let page = ServiceData::read(payload)?;
                    WhenService::Data(page)
                }
                1 => {
                    let page = ServiceCodes::read(payload)?;
                    WhenService::Codes(page)
                }
                2 => {
                    let page = ServiceRefused::read(payload)?;
                    WhenService::Refused(page)
                }
                _ => WhenService::NoPage,
            };
            Ok(Self {
                service,
                when_service,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.service.raw()), 8, "service")?;
            Self::AT_SERVICE.put(payload, bits);
            let held = Self::select_service(payload);
            match (held, &self.when_service) {
                (0, WhenService::Data(page)) => page.write(payload)?,
                (1, WhenService::Codes(page)) => page.write(payload)?,
                (2, WhenService::Refused(page)) => page.write(payload)?,
                (3, WhenService::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, Some(1));
            match &self.when_service {
                WhenService::Data(page) => page.measure(size),
                WhenService::Codes(page) => page.measure(size),
                WhenService::Refused(page) => page.measure(size),
                WhenService::NoPage => {}
            }
        }

        #[inline]
        fn select_service(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_SERVICE.get(payload) else {
                return 3;
            };
            match bits {
                89 => 1,
                98 => 0,
                127 => 2,
                _ => 3,
            }
        }

        /// Reads a payload.
        ///
        /// It is the whole message: ISO 15765-2 carries it in several frames.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let frame = Self::read(payload)?;
            let mut size = typed::Size::default();
            frame.measure(&mut size);
            typed::at_least(payload, size.least())?;
            Ok(frame)
        }

        /// Writes the payload and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Ok(size.length())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.service;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.service;
            let said = said.word(state.word());
            let name = typed::Name::of("service");
            tell(name, said);
            match &self.when_service {
                WhenService::Data(page) => page.each(tell),
                WhenService::Codes(page) => page.each(tell),
                WhenService::Refused(page) => page.each(tell),
                WhenService::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenService<'a> {
        /// When `service` is 0x62.
        Data(ServiceData<'a>),
        /// When `service` is 0x59.
        Codes(ServiceCodes<'a>),
        /// When `service` is 0x7F.
        Refused(ServiceRefused),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `service` is 0x62.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceData<'a> {
        /// `raw`; 16 bits.
        ///
        /// `None`: the payload ends before it.
        pub item: Option<super::EngineAnswersItem>,
        /// What is there under a condition.
        pub when_item: WhenItem<'a>,
    }

    impl<'a> ServiceData<'a> {
        const AT_ITEM: typed::Cut = typed::Cut::between((1, 7), (2, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_ITEM.get(payload);
            let convert = |bits: u64| super::EngineAnswersItem::from_raw(bits as u16);
            let item = bits.map(convert);
            let held = Self::select_item(payload);
            let when_item = match held {
                0 => {
                    let page = ItemVin::read(payload)?;
                    WhenItem::Vin(page)
                }
                1 => {
                    let page = ItemWarmth::read(payload)?;
                    WhenItem::Warmth(page)
                }
                _ => WhenItem::NoPage,
            };
            Ok(Self { item, when_item })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.item {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 16, "item")?;
                Self::AT_ITEM.put(payload, bits);
            }
            let held = Self::select_item(payload);
            match (held, &self.when_item) {
                (0, WhenItem::Vin(page)) => page.write(payload)?,
                (1, WhenItem::Warmth(page)) => page.write(payload)?,
                (2, WhenItem::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.item.is_some() {
                size.reach(3);
            }
            match &self.when_item {
                WhenItem::Vin(page) => page.measure(size),
                WhenItem::Warmth(page) => page.measure(size),
                WhenItem::NoPage => {}
            }
        }

        #[inline]
        fn select_item(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_ITEM.get(payload) else {
                return 2;
            };
            match bits {
                0x1001 => 1,
                0xF190 => 0,
                _ => 2,
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.item {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.item;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("item");
                tell(name, said);
            }
            match &self.when_item {
                WhenItem::Vin(page) => page.each(tell),
                WhenItem::Warmth(page) => page.each(tell),
                WhenItem::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenItem<'a> {
        /// When `item` is 0xF190.
        Vin(ItemVin<'a>),
        /// When `item` is 0x1001.
        Warmth(ItemWarmth),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `item` is 0xF190.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ItemVin<'a> {
        /// Invented.
        ///
        /// Text, byte by byte.
        ///
        /// `None`: the payload ends before it.
        pub vin: Option<&'a [u8]>,
    }

    impl<'a> ItemVin<'a> {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let vin = payload.get(3..20);
            Ok(Self { vin })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.vin {
                typed::put_bytes(payload, value, 3, Some(20), "vin")?;
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(20, None);
            if self.vin.is_some() {
                size.reach(20);
            }
        }

        /// The characters, without the NUL bytes at their end.
        #[must_use]
        pub fn vin(&self) -> Option<typed::Text<'a>> {
            let value = self.vin?;
            Some(typed::Text::new(value, typed::Charset::Ascii))
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.vin() {
                let said = typed::Said::from(said);
                let name = typed::Name::of("vin");
                tell(name, said);
            }
        }
    }

    /// When `item` is 0x1001.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ItemWarmth {
        /// `raw - 40` °C; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub coolant: Option<u8>,
        /// `raw - 40` °C; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub oil: Option<u8>,
    }

    impl ItemWarmth {
        const AT_COOLANT: typed::Cut = typed::Cut::between((3, 7), (3, 0));
        const AT_OIL: typed::Cut = typed::Cut::between((4, 7), (4, 0));
        const FORMULA_COOLANT: typed::Formula = typed::Formula::new(1, -40, 1);
        const FORMULA_OIL: typed::Formula = typed::Formula::new(1, -40, 1);

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_COOLANT.get(payload);
            let convert = |bits: u64| bits as u8;
            let coolant = bits.map(convert);
            let bits = Self::AT_OIL.get(payload);
            let convert = |bits: u64| bits as u8;
            let oil = bits.map(convert);
            Ok(Self { coolant, oil })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.coolant {
                let bits = typed::unsigned_bits(u64::from(value), 8, "coolant")?;
                Self::AT_COOLANT.put(payload, bits);
            }
            if let Some(value) = self.oil {
                let bits = typed::unsigned_bits(u64::from(value), 8, "oil")?;
                Self::AT_OIL.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(5, None);
            if self.coolant.is_some() {
                size.reach(4);
            }
            if self.oil.is_some() {
                size.reach(5);
            }
        }

        /// The value in °C.
        #[must_use]
        pub fn coolant(&self) -> Option<typed::Reading<f64>> {
            let value = self.coolant?;
            Some(match value {
                255 => typed::Reading::NoReading,
                raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
            })
        }

        /// Sets `coolant` to the raw number nearest to a value in °C.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_coolant(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |raw: i128| !matches!(raw, 255);
            let mut raw: u8 = 0;
            let formula = Self::FORMULA_COOLANT;
            let fit = typed::set(&mut raw, value, formula, range, is_value);
            if fit != wirelore_bits::Fit::OutOfRange {
                self.coolant = Some(raw);
            }
            fit
        }

        /// Whether the value lies outside its range, -40 to 150 in °C.
        #[must_use]
        pub fn coolant_is_outside(&self) -> bool {
            let is_outside = |raw: u8| matches!(raw, 191..=254);
            let raw = self.coolant;
            raw.is_some_and(is_outside)
        }

        /// The value in °C.
        #[must_use]
        pub fn oil(&self) -> Option<typed::Reading<f64>> {
            let value = self.oil?;
            Some(match value {
                255 => typed::Reading::NoReading,
                raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
            })
        }

        /// Sets `oil` to the raw number nearest to a value in °C.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_oil(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |raw: i128| !matches!(raw, 255);
            let mut raw: u8 = 0;
            let formula = Self::FORMULA_OIL;
            let fit = typed::set(&mut raw, value, formula, range, is_value);
            if fit != wirelore_bits::Fit::OutOfRange {
                self.oil = Some(raw);
            }
            fit
        }

        /// Whether the value lies outside its range, -40 to 180 in °C.
        #[must_use]
        pub fn oil_is_outside(&self) -> bool {
            let is_outside = |raw: u8| matches!(raw, 221..=254);
            let raw = self.oil;
            raw.is_some_and(is_outside)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.coolant() {
                let said = typed::Said::from(said);
                let is_outside = self.coolant_is_outside();
                let said = said.outside(is_outside);
                let name = typed::Name::of("coolant");
                tell(name, said);
            }
            if let Some(said) = self.oil() {
                let said = typed::Said::from(said);
                let is_outside = self.oil_is_outside();
                let said = said.outside(is_outside);
                let name = typed::Name::of("oil");
                tell(name, said);
            }
        }
    }

    /// When `service` is 0x59.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceCodes<'a> {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub told_report: Option<u8>,
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub status_mask: Option<u8>,
        /// As many as there are.
        pub code_elements: typed::Repeated<'a, CodeElement>,
    }

    impl<'a> ServiceCodes<'a> {
        const AT_TOLD_REPORT: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_STATUS_MASK: typed::Cut = typed::Cut::between((2, 7), (2, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_TOLD_REPORT.get(payload);
            let convert = |bits: u64| bits as u8;
            let told_report = bits.map(convert);
            let bits = Self::AT_STATUS_MASK.get(payload);
            let convert = |bits: u64| bits as u8;
            let status_mask = bits.map(convert);
            let code_elements = typed::Repeated::to_end(payload, 3, (4, 4), 15);
            Ok(Self {
                told_report,
                status_mask,
                code_elements,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.told_report {
                let bits = typed::unsigned_bits(u64::from(value), 8, "told_report")?;
                Self::AT_TOLD_REPORT.put(payload, bits);
            }
            if let Some(value) = self.status_mask {
                let bits = typed::unsigned_bits(u64::from(value), 8, "status_mask")?;
                Self::AT_STATUS_MASK.put(payload, bits);
            }
            let elements = &self.code_elements;
            elements.write(payload, (3, 4), 15, "code_elements")?;
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.told_report.is_some() {
                size.reach(2);
            }
            if self.status_mask.is_some() {
                size.reach(3);
            }
            let elements = &self.code_elements;
            elements.measure(size, 3, (4, 4));
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.told_report {
                let said = typed::Said::from(said);
                let name = typed::Name::of("told_report");
                tell(name, said);
            }
            if let Some(said) = self.status_mask {
                let said = typed::Said::from(said);
                let name = typed::Name::of("status_mask");
                tell(name, said);
            }
            let elements = self.code_elements.iter();
            for (index, element) in elements.enumerate() {
                element.each(&mut |name, said| tell(name.in_element(index), said));
            }
        }
    }

    /// One element of a repeated group.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct CodeElement {
        /// `trouble code`; 24 bits.
        pub code: u32,
        /// `raw`; 1 bit.
        pub failed: bool,
        /// `raw`; 1 bit.
        pub pending: bool,
        /// `raw`; 1 bit.
        pub stored: bool,
    }

    impl CodeElement {
        const AT_CODE: typed::Cut = typed::Cut::between((0, 7), (2, 0));
        const AT_FAILED: typed::Cut = typed::Cut::between((3, 0), (3, 0));
        const AT_PENDING: typed::Cut = typed::Cut::between((3, 2), (3, 2));
        const AT_STORED: typed::Cut = typed::Cut::between((3, 3), (3, 3));

        /// The trouble code.
        #[must_use]
        pub fn code(&self) -> typed::Reading<wirelore_bits::TroubleCode> {
            let raw = self.code;
            let code = wirelore_bits::TroubleCode::of_bits(u64::from(raw), 24);
            code.map_or(typed::Reading::Undefined, typed::Reading::Value)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.code());
            let name = typed::Name::of("code");
            tell(name, said);
            let said = typed::Said::from(self.failed);
            let name = typed::Name::of("failed");
            tell(name, said);
            let said = typed::Said::from(self.pending);
            let name = typed::Name::of("pending");
            tell(name, said);
            let said = typed::Said::from(self.stored);
            let name = typed::Name::of("stored");
            tell(name, said);
        }
    }

    impl<'a> typed::Element<'a> for CodeElement {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 4)?;
            let code = Self::AT_CODE.of(payload) as u32;
            let failed = Self::AT_FAILED.of(payload) != 0;
            let pending = Self::AT_PENDING.of(payload) != 0;
            let stored = Self::AT_STORED.of(payload) != 0;
            Ok(Self {
                code,
                failed,
                pending,
                stored,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.code), 24, "code[1]")?;
            Self::AT_CODE.put(payload, bits);
            let bits = u64::from(self.failed);
            Self::AT_FAILED.put(payload, bits);
            let bits = u64::from(self.pending);
            Self::AT_PENDING.put(payload, bits);
            let bits = u64::from(self.stored);
            Self::AT_STORED.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(4, None);
        }
    }

    /// When `service` is 0x7F.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceRefused {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub refused_service: Option<u8>,
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub reason: Option<super::EngineAnswersReason>,
    }

    impl ServiceRefused {
        const AT_REFUSED_SERVICE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_REASON: typed::Cut = typed::Cut::between((2, 7), (2, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_REFUSED_SERVICE.get(payload);
            let convert = |bits: u64| bits as u8;
            let refused_service = bits.map(convert);
            let bits = Self::AT_REASON.get(payload);
            let convert = |bits: u64| super::EngineAnswersReason::from_raw(bits as u8);
            let reason = bits.map(convert);
            Ok(Self {
                refused_service,
                reason,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.refused_service {
                let bits = typed::unsigned_bits(u64::from(value), 8, "refused_service")?;
                Self::AT_REFUSED_SERVICE.put(payload, bits);
            }
            if let Some(value) = self.reason {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 8, "reason")?;
                Self::AT_REASON.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.refused_service.is_some() {
                size.reach(2);
            }
            if self.reason.is_some() {
                size.reach(3);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.refused_service {
                let said = typed::Said::from(said);
                let name = typed::Name::of("refused_service");
                tell(name, said);
            }
            if let Some(said) = self.reason {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.reason;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("reason");
                tell(name, said);
            }
        }
    }
}

/// What the seat is to do.
///
/// What the seat unit wants of all the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeatCommand {
    /// `raw`; 2 bits.
    pub height_motion: SeatMotion,
    /// `raw`; 2 bits.
    pub backrest_motion: SeatMotion,
    /// `raw`; 2 bits.
    pub heating: Warmth,
    /// Supply at the unit.
    ///
    /// `raw * 0.1` V; 8 bits.
    pub supply: u8,
    /// `raw * 0.5` %; 8 bits.
    pub lumbar_goal: u8,
}

impl SeatCommand {
    /// The identifier without its parity bits.
    pub const ID: u8 = 0x20;
    /// The identifier with its parity bits.
    pub const PROTECTED_ID: u8 = 0x20;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    const AT_HEIGHT_MOTION: typed::Cut = typed::Cut::between((0, 1), (0, 0));
    const AT_BACKREST_MOTION: typed::Cut = typed::Cut::between((0, 3), (0, 2));
    const AT_HEATING: typed::Cut = typed::Cut::between((0, 5), (0, 4));
    const AT_SUPPLY: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_LUMBAR_GOAL: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const FORMULA_SUPPLY: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_LUMBAR_GOAL: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let bits = Self::AT_HEIGHT_MOTION.of(payload);
        let height_motion = SeatMotion::from_raw(bits as u8);
        let bits = Self::AT_BACKREST_MOTION.of(payload);
        let backrest_motion = SeatMotion::from_raw(bits as u8);
        let bits = Self::AT_HEATING.of(payload);
        let heating = Warmth::from_raw(bits as u8);
        let supply = Self::AT_SUPPLY.of(payload) as u8;
        let lumbar_goal = Self::AT_LUMBAR_GOAL.of(payload) as u8;
        Self {
            height_motion,
            backrest_motion,
            heating,
            supply,
            lumbar_goal,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.height_motion.raw());
        let bits = typed::unsigned_bits(number, 2, "height_motion")?;
        Self::AT_HEIGHT_MOTION.put(payload, bits);
        let number = u64::from(self.backrest_motion.raw());
        let bits = typed::unsigned_bits(number, 2, "backrest_motion")?;
        Self::AT_BACKREST_MOTION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.heating.raw()), 2, "heating")?;
        Self::AT_HEATING.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.supply), 8, "supply")?;
        Self::AT_SUPPLY.put(payload, bits);
        let number = u64::from(self.lumbar_goal);
        let bits = typed::unsigned_bits(number, 8, "lumbar_goal")?;
        Self::AT_LUMBAR_GOAL.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn height_motion(&self) -> typed::Reading<SeatMotion> {
        match self.height_motion.raw() {
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.height_motion),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn backrest_motion(&self) -> typed::Reading<SeatMotion> {
        match self.backrest_motion.raw() {
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.backrest_motion),
        }
    }

    /// The value in V.
    #[must_use]
    pub fn supply(&self) -> typed::Reading<f64> {
        match self.supply {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `supply` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_supply(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_SUPPLY;
        let raw = &mut self.supply;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 5 to 18 in V.
    #[must_use]
    pub fn supply_is_outside(&self) -> bool {
        let raw = self.supply;
        matches!(raw, 0..=49 | 181..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn lumbar_goal(&self) -> typed::Reading<f64> {
        match self.lumbar_goal {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `lumbar_goal` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_lumbar_goal(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_LUMBAR_GOAL;
        let raw = &mut self.lumbar_goal;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn lumbar_goal_is_outside(&self) -> bool {
        let raw = self.lumbar_goal;
        matches!(raw, 201..=254)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.height_motion();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.height_motion;
        let said = said.word(state.word());
        let name = typed::Name::of("height_motion");
        tell(name, said);
        let said = self.backrest_motion();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.backrest_motion;
        let said = said.word(state.word());
        let name = typed::Name::of("backrest_motion");
        tell(name, said);
        let said = self.heating;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.heating;
        let said = said.word(state.word());
        let name = typed::Name::of("heating");
        tell(name, said);
        let said = typed::Said::from(self.supply());
        let is_outside = self.supply_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("supply");
        tell(name, said);
        let said = typed::Said::from(self.lumbar_goal());
        let is_outside = self.lumbar_goal_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("lumbar_goal");
        tell(name, said);
    }
}

/// Height motor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeightState {
    /// Height of the cushion.
    ///
    /// `raw * 0.5` mm; 16 bits.
    pub height: u16,
    /// Motor current.
    ///
    /// `raw * 0.1` A; 8 bits.
    pub height_current: u8,
    /// `raw`; 2 bits.
    pub height_motor: SeatMotion,
    /// Error in an answer.
    ///
    /// Set after a frame that the unit could not take; LIN 2.x wants one such bit from every unit.
    ///
    /// `raw`; 1 bit.
    pub height_error: YesNo,
}

impl HeightState {
    /// The identifier without its parity bits.
    pub const ID: u8 = 0x21;
    /// The identifier with its parity bits.
    pub const PROTECTED_ID: u8 = 0x61;
    /// The length in bytes.
    pub const LENGTH: usize = 4;
    const AT_HEIGHT: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_HEIGHT_CURRENT: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_HEIGHT_MOTOR: typed::Cut = typed::Cut::between((3, 1), (3, 0));
    const AT_HEIGHT_ERROR: typed::Cut = typed::Cut::between((3, 2), (3, 2));
    const FORMULA_HEIGHT: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_HEIGHT_CURRENT: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 4]) -> Self {
        let height = Self::AT_HEIGHT.of(payload) as u16;
        let height_current = Self::AT_HEIGHT_CURRENT.of(payload) as u8;
        let bits = Self::AT_HEIGHT_MOTOR.of(payload);
        let height_motor = SeatMotion::from_raw(bits as u8);
        let bits = Self::AT_HEIGHT_ERROR.of(payload);
        let height_error = YesNo::from_raw(bits as u8);
        Self {
            height,
            height_current,
            height_motor,
            height_error,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.height), 16, "height")?;
        Self::AT_HEIGHT.put(payload, bits);
        let number = u64::from(self.height_current);
        let bits = typed::unsigned_bits(number, 8, "height_current")?;
        Self::AT_HEIGHT_CURRENT.put(payload, bits);
        let number = u64::from(self.height_motor.raw());
        let bits = typed::unsigned_bits(number, 2, "height_motor")?;
        Self::AT_HEIGHT_MOTOR.put(payload, bits);
        let number = u64::from(self.height_error.raw());
        let bits = typed::unsigned_bits(number, 1, "height_error")?;
        Self::AT_HEIGHT_ERROR.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 4], typed::NotEncoded> {
        let mut payload = [0; 4];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in mm.
    #[must_use]
    pub fn height(&self) -> typed::Reading<f64> {
        match self.height {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `height` to the raw number nearest to a value in mm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_height(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_HEIGHT;
        let raw = &mut self.height;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 400 in mm.
    #[must_use]
    pub fn height_is_outside(&self) -> bool {
        let raw = self.height;
        matches!(raw, 0x321..=0xFFFE)
    }

    /// The value in A.
    #[must_use]
    pub fn height_current(&self) -> typed::Reading<f64> {
        match self.height_current {
            254 => typed::Reading::Fault,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `height_current` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_height_current(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254);
        let formula = Self::FORMULA_HEIGHT_CURRENT;
        let raw = &mut self.height_current;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 25 in A.
    #[must_use]
    pub fn height_current_is_outside(&self) -> bool {
        let raw = self.height_current;
        matches!(raw, 251..=253 | 255)
    }

    /// What the raw number says.
    #[must_use]
    pub fn height_motor(&self) -> typed::Reading<SeatMotion> {
        match self.height_motor.raw() {
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.height_motor),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.height());
        let is_outside = self.height_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("height");
        tell(name, said);
        let said = self.height_current();
        let said = typed::Said::from(said);
        let is_outside = self.height_current_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("height_current");
        tell(name, said);
        let said = self.height_motor();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.height_motor;
        let said = said.word(state.word());
        let name = typed::Name::of("height_motor");
        tell(name, said);
        let said = self.height_error;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.height_error;
        let said = said.word(state.word());
        let name = typed::Name::of("height_error");
        tell(name, said);
    }
}

/// Backrest motor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BackrestState {
    /// Tilt of the backrest.
    ///
    /// `raw * 0.1` °; 16 bits.
    pub backrest: u16,
    /// Motor current.
    ///
    /// `raw * 0.1` A; 8 bits.
    pub backrest_current: u8,
    /// `raw`; 2 bits.
    pub backrest_motor: SeatMotion,
    /// Error in an answer.
    ///
    /// `raw`; 1 bit.
    pub backrest_error: YesNo,
}

impl BackrestState {
    /// The identifier without its parity bits.
    pub const ID: u8 = 0x22;
    /// The identifier with its parity bits.
    pub const PROTECTED_ID: u8 = 0xE2;
    /// The length in bytes.
    pub const LENGTH: usize = 4;
    const AT_BACKREST: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_BACKREST_CURRENT: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_BACKREST_MOTOR: typed::Cut = typed::Cut::between((3, 1), (3, 0));
    const AT_BACKREST_ERROR: typed::Cut = typed::Cut::between((3, 2), (3, 2));
    const FORMULA_BACKREST: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_BACKREST_CURRENT: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 4]) -> Self {
        let backrest = Self::AT_BACKREST.of(payload) as u16;
        let backrest_current = Self::AT_BACKREST_CURRENT.of(payload) as u8;
        let bits = Self::AT_BACKREST_MOTOR.of(payload);
        let backrest_motor = SeatMotion::from_raw(bits as u8);
        let bits = Self::AT_BACKREST_ERROR.of(payload);
        let backrest_error = YesNo::from_raw(bits as u8);
        Self {
            backrest,
            backrest_current,
            backrest_motor,
            backrest_error,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.backrest), 16, "backrest")?;
        Self::AT_BACKREST.put(payload, bits);
        let number = u64::from(self.backrest_current);
        let bits = typed::unsigned_bits(number, 8, "backrest_current")?;
        Self::AT_BACKREST_CURRENT.put(payload, bits);
        let number = u64::from(self.backrest_motor.raw());
        let bits = typed::unsigned_bits(number, 2, "backrest_motor")?;
        Self::AT_BACKREST_MOTOR.put(payload, bits);
        let number = u64::from(self.backrest_error.raw());
        let bits = typed::unsigned_bits(number, 1, "backrest_error")?;
        Self::AT_BACKREST_ERROR.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 4], typed::NotEncoded> {
        let mut payload = [0; 4];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °.
    #[must_use]
    pub fn backrest(&self) -> typed::Reading<f64> {
        match self.backrest {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `backrest` to the raw number nearest to a value in °.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_backrest(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_BACKREST;
        let raw = &mut self.backrest;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in °.
    #[must_use]
    pub fn backrest_is_outside(&self) -> bool {
        let raw = self.backrest;
        matches!(raw, 0x3E9..=0xFFFE)
    }

    /// The value in A.
    #[must_use]
    pub fn backrest_current(&self) -> typed::Reading<f64> {
        match self.backrest_current {
            254 => typed::Reading::Fault,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `backrest_current` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_backrest_current(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254);
        let formula = Self::FORMULA_BACKREST_CURRENT;
        let raw = &mut self.backrest_current;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 25 in A.
    #[must_use]
    pub fn backrest_current_is_outside(&self) -> bool {
        let raw = self.backrest_current;
        matches!(raw, 251..=253 | 255)
    }

    /// What the raw number says.
    #[must_use]
    pub fn backrest_motor(&self) -> typed::Reading<SeatMotion> {
        match self.backrest_motor.raw() {
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.backrest_motor),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.backrest());
        let is_outside = self.backrest_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("backrest");
        tell(name, said);
        let said = self.backrest_current();
        let said = typed::Said::from(said);
        let is_outside = self.backrest_current_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("backrest_current");
        tell(name, said);
        let said = self.backrest_motor();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.backrest_motor;
        let said = said.word(state.word());
        let name = typed::Name::of("backrest_motor");
        tell(name, said);
        let said = self.backrest_error;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.backrest_error;
        let said = said.word(state.word());
        let name = typed::Name::of("backrest_error");
        tell(name, said);
    }
}

/// Seat heater.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeaterState {
    /// Cushion.
    ///
    /// `raw * 0.5 - 40` °C; 8 bits.
    pub cushion: u8,
    /// `raw * 0.1` A; 8 bits.
    pub heater_current: u8,
    /// `raw`; 2 bits.
    pub heater_step: Warmth,
    /// Error in an answer.
    ///
    /// `raw`; 1 bit.
    pub heater_error: YesNo,
}

impl HeaterState {
    /// The identifier without its parity bits.
    pub const ID: u8 = 0x23;
    /// The identifier with its parity bits.
    pub const PROTECTED_ID: u8 = 0xA3;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    const AT_CUSHION: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_HEATER_CURRENT: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_HEATER_STEP: typed::Cut = typed::Cut::between((2, 1), (2, 0));
    const AT_HEATER_ERROR: typed::Cut = typed::Cut::between((2, 2), (2, 2));
    const FORMULA_CUSHION: typed::Formula = typed::Formula::new(1, -80, 2);
    const FORMULA_HEATER_CURRENT: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let cushion = Self::AT_CUSHION.of(payload) as u8;
        let heater_current = Self::AT_HEATER_CURRENT.of(payload) as u8;
        let bits = Self::AT_HEATER_STEP.of(payload);
        let heater_step = Warmth::from_raw(bits as u8);
        let bits = Self::AT_HEATER_ERROR.of(payload);
        let heater_error = YesNo::from_raw(bits as u8);
        Self {
            cushion,
            heater_current,
            heater_step,
            heater_error,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.cushion), 8, "cushion")?;
        Self::AT_CUSHION.put(payload, bits);
        let number = u64::from(self.heater_current);
        let bits = typed::unsigned_bits(number, 8, "heater_current")?;
        Self::AT_HEATER_CURRENT.put(payload, bits);
        let number = u64::from(self.heater_step.raw());
        let bits = typed::unsigned_bits(number, 2, "heater_step")?;
        Self::AT_HEATER_STEP.put(payload, bits);
        let number = u64::from(self.heater_error.raw());
        let bits = typed::unsigned_bits(number, 1, "heater_error")?;
        Self::AT_HEATER_ERROR.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn cushion(&self) -> typed::Reading<f64> {
        match self.cushion {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 80) as f64 / 2.0),
        }
    }

    /// Sets `cushion` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_cushion(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_CUSHION;
        let raw = &mut self.cushion;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 80 in °C.
    #[must_use]
    pub fn cushion_is_outside(&self) -> bool {
        let raw = self.cushion;
        matches!(raw, 241..=254)
    }

    /// The value in A.
    #[must_use]
    pub fn heater_current(&self) -> f64 {
        let raw = self.heater_current;
        f64::from(raw) / 10.0
    }

    /// Sets `heater_current` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_heater_current(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_HEATER_CURRENT;
        let raw = &mut self.heater_current;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 12 in A.
    #[must_use]
    pub fn heater_current_is_outside(&self) -> bool {
        let raw = self.heater_current;
        matches!(raw, 121..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.cushion());
        let is_outside = self.cushion_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("cushion");
        tell(name, said);
        let said = self.heater_current();
        let said = typed::Said::from(said);
        let is_outside = self.heater_current_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("heater_current");
        tell(name, said);
        let said = self.heater_step;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.heater_step;
        let said = said.word(state.word());
        let name = typed::Name::of("heater_step");
        tell(name, said);
        let said = self.heater_error;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.heater_error;
        let said = said.word(state.word());
        let name = typed::Name::of("heater_error");
        tell(name, said);
    }
}

/// Lumbar support.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LumbarState {
    /// `raw * 0.5` %; 8 bits.
    pub lumbar_pressure: u8,
    /// Error in an answer.
    ///
    /// `raw`; 1 bit.
    pub lumbar_error: YesNo,
}

impl LumbarState {
    /// The identifier without its parity bits.
    pub const ID: u8 = 0x24;
    /// The identifier with its parity bits.
    pub const PROTECTED_ID: u8 = 0x64;
    /// The length in bytes.
    pub const LENGTH: usize = 2;
    const AT_LUMBAR_PRESSURE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_LUMBAR_ERROR: typed::Cut = typed::Cut::between((1, 0), (1, 0));
    const FORMULA_LUMBAR_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 2]) -> Self {
        let lumbar_pressure = Self::AT_LUMBAR_PRESSURE.of(payload) as u8;
        let bits = Self::AT_LUMBAR_ERROR.of(payload);
        let lumbar_error = YesNo::from_raw(bits as u8);
        Self {
            lumbar_pressure,
            lumbar_error,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.lumbar_pressure);
        let bits = typed::unsigned_bits(number, 8, "lumbar_pressure")?;
        Self::AT_LUMBAR_PRESSURE.put(payload, bits);
        let number = u64::from(self.lumbar_error.raw());
        let bits = typed::unsigned_bits(number, 1, "lumbar_error")?;
        Self::AT_LUMBAR_ERROR.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 2], typed::NotEncoded> {
        let mut payload = [0; 2];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in %.
    #[must_use]
    pub fn lumbar_pressure(&self) -> f64 {
        let raw = self.lumbar_pressure;
        f64::from(raw) / 2.0
    }

    /// Sets `lumbar_pressure` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_lumbar_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_LUMBAR_PRESSURE;
        let raw = &mut self.lumbar_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn lumbar_pressure_is_outside(&self) -> bool {
        let raw = self.lumbar_pressure;
        matches!(raw, 201..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.lumbar_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.lumbar_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("lumbar_pressure");
        tell(name, said);
        let said = self.lumbar_error;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.lumbar_error;
        let said = said.word(state.word());
        let name = typed::Name::of("lumbar_error");
        tell(name, said);
    }
}

pub use seat_request::SeatRequest;

/// `seat_request` and what it holds.
#[allow(clippy::module_inception)]
pub mod seat_request {
    use wirelore_bits::typed;

    /// Request to the seat.
    ///
    /// Diagnosis of the seat, and the request to go to sleep.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SeatRequest<'a> {
        /// `raw`; 8 bits.
        pub node: super::LinNode,
        /// What is there under a condition.
        pub when_node: WhenNode<'a>,
    }

    impl<'a> SeatRequest<'a> {
        /// The identifier without its parity bits.
        pub const ID: u8 = 0x3C;
        /// The identifier with its parity bits.
        pub const PROTECTED_ID: u8 = 0x3C;
        /// The length in bytes.
        pub const LENGTH: usize = 8;
        const AT_NODE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let bits = Self::AT_NODE.of(payload);
            let node = super::LinNode::from_raw(bits as u8);
            let held = Self::select_node(payload);
            let when_node = match held {
                0 => {
                    let page = NodeSleep::read(payload);
                    WhenNode::Sleep(page)
                }
                1 => {
                    let page = NodeOtherwise::read(payload);
                    WhenNode::Otherwise(page)
                }
                _ => WhenNode::NoPage,
            };
            Self { node, when_node }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.node.raw()), 8, "node")?;
            Self::AT_NODE.put(payload, bits);
            let held = Self::select_node(payload);
            match (held, &self.when_node) {
                (0, WhenNode::Sleep(page)) => page.write(payload)?,
                (1, WhenNode::Otherwise(page)) => page.write(payload)?,
                (2, WhenNode::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        #[inline]
        fn select_node(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_NODE.get(payload) else {
                return 2;
            };
            match bits {
                0 => 0,
                _ => 1,
            }
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let chunk = typed::chunk(payload)?;
            Ok(Self::read(chunk))
        }

        /// The payload.
        ///
        /// # Errors
        /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
        pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
            let mut payload = [0; 8];
            self.write(&mut payload)?;
            Ok(payload)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.node;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.node;
            let said = said.word(state.word());
            let name = typed::Name::of("node");
            tell(name, said);
            match &self.when_node {
                WhenNode::Sleep(page) => page.each(tell),
                WhenNode::Otherwise(page) => page.each(tell),
                WhenNode::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenNode<'a> {
        /// When `node` is 0.
        Sleep(NodeSleep),
        /// Otherwise.
        Otherwise(NodeOtherwise<'a>),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `node` is 0.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct NodeSleep {}

    impl NodeSleep {
        #[inline]
        fn read(_payload: &[u8; 8]) -> Self {
            Self {}
        }

        fn write(&self, _payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, _tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {}
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct NodeOtherwise<'a> {
        /// `raw`; 4 bits.
        pub part: super::LinMessagePart,
        /// What is there under a condition.
        pub when_part: WhenPart<'a>,
    }

    impl<'a> NodeOtherwise<'a> {
        const AT_PART: typed::Cut = typed::Cut::between((1, 7), (1, 4));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let bits = Self::AT_PART.of(payload);
            let part = super::LinMessagePart::from_raw(bits as u8);
            let held = Self::select_part(payload);
            let when_part = match held {
                0 => {
                    let page = PartSingle::read(payload);
                    WhenPart::Single(page)
                }
                1 => {
                    let page = PartFirst::read(payload);
                    WhenPart::First(page)
                }
                2 => {
                    let page = PartConsecutive::read(payload);
                    WhenPart::Consecutive(page)
                }
                _ => WhenPart::NoPage,
            };
            Self { part, when_part }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.part.raw()), 4, "part")?;
            Self::AT_PART.put(payload, bits);
            let held = Self::select_part(payload);
            match (held, &self.when_part) {
                (0, WhenPart::Single(page)) => page.write(payload)?,
                (1, WhenPart::First(page)) => page.write(payload)?,
                (2, WhenPart::Consecutive(page)) => page.write(payload)?,
                (3, WhenPart::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        #[inline]
        fn select_part(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_PART.get(payload) else {
                return 3;
            };
            match bits {
                0 => 0,
                1 => 1,
                2 => 2,
                _ => 3,
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.part;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.part;
            let said = said.word(state.word());
            let name = typed::Name::of("part");
            tell(name, said);
            match &self.when_part {
                WhenPart::Single(page) => page.each(tell),
                WhenPart::First(page) => page.each(tell),
                WhenPart::Consecutive(page) => page.each(tell),
                WhenPart::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenPart<'a> {
        /// When `part` is 0.
        Single(PartSingle<'a>),
        /// When `part` is 1.
        First(PartFirst<'a>),
        /// When `part` is 2.
        Consecutive(PartConsecutive<'a>),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `part` is 0.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PartSingle<'a> {
        /// How many bytes of the message follow, the service among them.
        ///
        /// `raw`; 4 bits.
        pub length: u8,
        /// `raw`; 8 bits.
        pub service: super::LinService,
        /// What is there under a condition.
        pub when_service: WhenService<'a>,
    }

    impl<'a> PartSingle<'a> {
        const AT_LENGTH: typed::Cut = typed::Cut::between((1, 3), (1, 0));
        const AT_SERVICE: typed::Cut = typed::Cut::between((2, 7), (2, 0));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let length = Self::AT_LENGTH.of(payload) as u8;
            let bits = Self::AT_SERVICE.of(payload);
            let service = super::LinService::from_raw(bits as u8);
            let held = Self::select_service(payload);
            let when_service = match held {
                0 => {
                    let page = ServiceAssignNode::read(payload);
                    WhenService::AssignNode(page)
                }
                1 => {
                    let page = ServiceAssignId::read(payload);
                    WhenService::AssignId(page)
                }
                2 => {
                    let page = ServiceReadById::read(payload);
                    WhenService::ReadById(page)
                }
                3 => {
                    let page = ServiceChangeNode::read(payload);
                    WhenService::ChangeNode(page)
                }
                4 => {
                    let page = ServiceAssignIdRange::read(payload);
                    WhenService::AssignIdRange(page)
                }
                5 => {
                    let page = ServiceSaveConfiguration::read(payload);
                    WhenService::SaveConfiguration(page)
                }
                6 => {
                    let page = ServiceOtherwise::read(payload);
                    WhenService::Otherwise(page)
                }
                _ => WhenService::NoPage,
            };
            Self {
                length,
                service,
                when_service,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.length), 4, "length")?;
            Self::AT_LENGTH.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.service.raw()), 8, "service")?;
            Self::AT_SERVICE.put(payload, bits);
            let held = Self::select_service(payload);
            match (held, &self.when_service) {
                (0, WhenService::AssignNode(page)) => page.write(payload)?,
                (1, WhenService::AssignId(page)) => page.write(payload)?,
                (2, WhenService::ReadById(page)) => page.write(payload)?,
                (3, WhenService::ChangeNode(page)) => page.write(payload)?,
                (4, WhenService::AssignIdRange(page)) => page.write(payload)?,
                (5, WhenService::SaveConfiguration(page)) => page.write(payload)?,
                (6, WhenService::Otherwise(page)) => page.write(payload)?,
                (7, WhenService::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        #[inline]
        fn select_service(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_SERVICE.get(payload) else {
                return 7;
            };
            match bits {
                176 => 0,
                177 => 1,
                178 => 2,
                179 => 3,
                182 => 5,
                183 => 4,
                _ => 6,
            }
        }

        /// Whether the value lies outside its range, 1 to 6.
        #[must_use]
        pub fn length_is_outside(&self) -> bool {
            let raw = self.length;
            matches!(raw, 0 | 7..=15)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.length);
            let is_outside = self.length_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("length");
            tell(name, said);
            let said = self.service;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.service;
            let said = said.word(state.word());
            let name = typed::Name::of("service");
            tell(name, said);
            match &self.when_service {
                WhenService::AssignNode(page) => page.each(tell),
                WhenService::AssignId(page) => page.each(tell),
                WhenService::ReadById(page) => page.each(tell),
                WhenService::ChangeNode(page) => page.each(tell),
                WhenService::AssignIdRange(page) => page.each(tell),
                WhenService::SaveConfiguration(page) => page.each(tell),
                WhenService::Otherwise(page) => page.each(tell),
                WhenService::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenService<'a> {
        /// When `service` is 0xB0.
        AssignNode(ServiceAssignNode),
        /// When `service` is 0xB1.
        AssignId(ServiceAssignId),
        /// When `service` is 0xB2.
        ReadById(ServiceReadById),
        /// When `service` is 0xB3.
        ChangeNode(ServiceChangeNode),
        /// When `service` is 0xB7.
        AssignIdRange(ServiceAssignIdRange),
        /// When `service` is 0xB6.
        SaveConfiguration(ServiceSaveConfiguration),
        /// Otherwise.
        Otherwise(ServiceOtherwise<'a>),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `service` is 0xB0.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceAssignNode {
        /// `raw`; 16 bits.
        pub assign_supplier: super::SeatRequestAssignSupplier,
        /// `raw`; 16 bits.
        pub assign_function: super::SeatRequestAssignFunction,
        /// `raw`; 8 bits.
        pub new_node: super::LinNode,
    }

    impl ServiceAssignNode {
        const AT_ASSIGN_SUPPLIER: typed::Cut = typed::Cut::between((4, 7), (3, 0));
        const AT_ASSIGN_FUNCTION: typed::Cut = typed::Cut::between((6, 7), (5, 0));
        const AT_NEW_NODE: typed::Cut = typed::Cut::between((7, 7), (7, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let bits = Self::AT_ASSIGN_SUPPLIER.of(payload);
            let assign_supplier = super::SeatRequestAssignSupplier::from_raw(bits as u16);
            let bits = Self::AT_ASSIGN_FUNCTION.of(payload);
            let assign_function = super::SeatRequestAssignFunction::from_raw(bits as u16);
            let bits = Self::AT_NEW_NODE.of(payload);
            let new_node = super::LinNode::from_raw(bits as u8);
            Self {
                assign_supplier,
                assign_function,
                new_node,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.assign_supplier.raw());
            let bits = typed::unsigned_bits(number, 16, "assign_supplier")?;
            Self::AT_ASSIGN_SUPPLIER.put(payload, bits);
            let number = u64::from(self.assign_function.raw());
            let bits = typed::unsigned_bits(number, 16, "assign_function")?;
            Self::AT_ASSIGN_FUNCTION.put(payload, bits);
            let number = u64::from(self.new_node.raw());
            let bits = typed::unsigned_bits(number, 8, "new_node")?;
            Self::AT_NEW_NODE.put(payload, bits);
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.assign_supplier;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.assign_supplier;
            let said = said.word(state.word());
            let name = typed::Name::of("assign_supplier");
            tell(name, said);
            let said = self.assign_function;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.assign_function;
            let said = said.word(state.word());
            let name = typed::Name::of("assign_function");
            tell(name, said);
            let said = self.new_node;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.new_node;
            let said = said.word(state.word());
            let name = typed::Name::of("new_node");
            tell(name, said);
        }
    }

    /// When `service` is 0xB1.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceAssignId {
        /// `raw`; 16 bits.
        pub id_supplier: super::SeatRequestAssignSupplier,
        /// `raw`; 16 bits.
        pub message: u16,
        /// `raw`; 8 bits.
        pub protected_id: super::SeatRequestProtectedId,
    }

    impl ServiceAssignId {
        const AT_ID_SUPPLIER: typed::Cut = typed::Cut::between((4, 7), (3, 0));
        const AT_MESSAGE: typed::Cut = typed::Cut::between((6, 7), (5, 0));
        const AT_PROTECTED_ID: typed::Cut = typed::Cut::between((7, 7), (7, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let bits = Self::AT_ID_SUPPLIER.of(payload);
            let id_supplier = super::SeatRequestAssignSupplier::from_raw(bits as u16);
            let message = Self::AT_MESSAGE.of(payload) as u16;
            let bits = Self::AT_PROTECTED_ID.of(payload);
            let protected_id = super::SeatRequestProtectedId::from_raw(bits as u8);
            Self {
                id_supplier,
                message,
                protected_id,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.id_supplier.raw());
            let bits = typed::unsigned_bits(number, 16, "id_supplier")?;
            Self::AT_ID_SUPPLIER.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.message), 16, "message")?;
            Self::AT_MESSAGE.put(payload, bits);
            let number = u64::from(self.protected_id.raw());
            let bits = typed::unsigned_bits(number, 8, "protected_id")?;
            Self::AT_PROTECTED_ID.put(payload, bits);
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.id_supplier;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.id_supplier;
            let said = said.word(state.word());
            let name = typed::Name::of("id_supplier");
            tell(name, said);
            let said = typed::Said::from(self.message);
            let name = typed::Name::of("message");
            tell(name, said);
            let said = self.protected_id;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.protected_id;
            let said = said.word(state.word());
            let name = typed::Name::of("protected_id");
            tell(name, said);
        }
    }

    /// When `service` is 0xB2.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceReadById {
        /// `raw`; 8 bits.
        pub identification: super::LinIdentification,
        /// `raw`; 16 bits.
        pub read_supplier: super::SeatRequestAssignSupplier,
        /// `raw`; 16 bits.
        pub read_function: super::SeatRequestAssignFunction,
    }

    impl ServiceReadById {
        const AT_IDENTIFICATION: typed::Cut = typed::Cut::between((3, 7), (3, 0));
        const AT_READ_SUPPLIER: typed::Cut = typed::Cut::between((5, 7), (4, 0));
        const AT_READ_FUNCTION: typed::Cut = typed::Cut::between((7, 7), (6, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let bits = Self::AT_IDENTIFICATION.of(payload);
            let identification = super::LinIdentification::from_raw(bits as u8);
            let bits = Self::AT_READ_SUPPLIER.of(payload);
            let read_supplier = super::SeatRequestAssignSupplier::from_raw(bits as u16);
            let bits = Self::AT_READ_FUNCTION.of(payload);
            let read_function = super::SeatRequestAssignFunction::from_raw(bits as u16);
            Self {
                identification,
                read_supplier,
                read_function,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.identification.raw());
            let bits = typed::unsigned_bits(number, 8, "identification")?;
            Self::AT_IDENTIFICATION.put(payload, bits);
            let number = u64::from(self.read_supplier.raw());
            let bits = typed::unsigned_bits(number, 16, "read_supplier")?;
            Self::AT_READ_SUPPLIER.put(payload, bits);
            let number = u64::from(self.read_function.raw());
            let bits = typed::unsigned_bits(number, 16, "read_function")?;
            Self::AT_READ_FUNCTION.put(payload, bits);
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.identification;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.identification;
            let said = said.word(state.word());
            let name = typed::Name::of("identification");
            tell(name, said);
            let said = self.read_supplier;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.read_supplier;
            let said = said.word(state.word());
            let name = typed::Name::of("read_supplier");
            tell(name, said);
            let said = self.read_function;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.read_function;
            let said = said.word(state.word());
            let name = typed::Name::of("read_function");
            tell(name, said);
        }
    }

    /// When `service` is 0xB3.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceChangeNode {
        /// `raw`; 8 bits.
        pub change_identification: super::LinIdentification,
        /// Which byte of what is identified is looked at, counted from 1.
        ///
        /// `raw`; 8 bits.
        pub change_byte: u8,
        /// `raw`; 8 bits.
        pub change_mask: u8,
        /// `raw`; 8 bits.
        pub change_invert: u8,
        /// `raw`; 8 bits.
        pub changed_node: super::LinNode,
    }

    impl ServiceChangeNode {
        const AT_CHANGE_IDENTIFICATION: typed::Cut = typed::Cut::between((3, 7), (3, 0));
        const AT_CHANGE_BYTE: typed::Cut = typed::Cut::between((4, 7), (4, 0));
        const AT_CHANGE_MASK: typed::Cut = typed::Cut::between((5, 7), (5, 0));
        const AT_CHANGE_INVERT: typed::Cut = typed::Cut::between((6, 7), (6, 0));
        const AT_CHANGED_NODE: typed::Cut = typed::Cut::between((7, 7), (7, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let bits = Self::AT_CHANGE_IDENTIFICATION.of(payload);
            let change_identification = super::LinIdentification::from_raw(bits as u8);
            let change_byte = Self::AT_CHANGE_BYTE.of(payload) as u8;
            let change_mask = Self::AT_CHANGE_MASK.of(payload) as u8;
            let change_invert = Self::AT_CHANGE_INVERT.of(payload) as u8;
            let bits = Self::AT_CHANGED_NODE.of(payload);
            let changed_node = super::LinNode::from_raw(bits as u8);
            Self {
                change_identification,
                change_byte,
                change_mask,
                change_invert,
                changed_node,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.change_identification.raw());
            let bits = typed::unsigned_bits(number, 8, "change_identification")?;
            Self::AT_CHANGE_IDENTIFICATION.put(payload, bits);
            let number = u64::from(self.change_byte);
            let bits = typed::unsigned_bits(number, 8, "change_byte")?;
            Self::AT_CHANGE_BYTE.put(payload, bits);
            let number = u64::from(self.change_mask);
            let bits = typed::unsigned_bits(number, 8, "change_mask")?;
            Self::AT_CHANGE_MASK.put(payload, bits);
            let number = u64::from(self.change_invert);
            let bits = typed::unsigned_bits(number, 8, "change_invert")?;
            Self::AT_CHANGE_INVERT.put(payload, bits);
            let number = u64::from(self.changed_node.raw());
            let bits = typed::unsigned_bits(number, 8, "changed_node")?;
            Self::AT_CHANGED_NODE.put(payload, bits);
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.change_identification;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.change_identification;
            let said = said.word(state.word());
            let name = typed::Name::of("change_identification");
            tell(name, said);
            let said = typed::Said::from(self.change_byte);
            let name = typed::Name::of("change_byte");
            tell(name, said);
            let said = typed::Said::from(self.change_mask);
            let name = typed::Name::of("change_mask");
            tell(name, said);
            let said = typed::Said::from(self.change_invert);
            let name = typed::Name::of("change_invert");
            tell(name, said);
            let said = self.changed_node;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.changed_node;
            let said = said.word(state.word());
            let name = typed::Name::of("changed_node");
            tell(name, said);
        }
    }

    /// When `service` is 0xB7.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceAssignIdRange {
        /// The first of the four frames, by its number in the node.
        ///
        /// `raw`; 8 bits.
        pub start_index: u8,
        /// `raw`; 8 bits.
        pub protected_id_0: super::SeatRequestProtectedId0,
        /// `raw`; 8 bits.
        pub protected_id_1: super::SeatRequestProtectedId0,
        /// `raw`; 8 bits.
        pub protected_id_2: super::SeatRequestProtectedId0,
        /// `raw`; 8 bits.
        pub protected_id_3: super::SeatRequestProtectedId0,
    }

    impl ServiceAssignIdRange {
        const AT_START_INDEX: typed::Cut = typed::Cut::between((3, 7), (3, 0));
        const AT_PROTECTED_ID_0: typed::Cut = typed::Cut::between((4, 7), (4, 0));
        const AT_PROTECTED_ID_1: typed::Cut = typed::Cut::between((5, 7), (5, 0));
        const AT_PROTECTED_ID_2: typed::Cut = typed::Cut::between((6, 7), (6, 0));
        const AT_PROTECTED_ID_3: typed::Cut = typed::Cut::between((7, 7), (7, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let start_index = Self::AT_START_INDEX.of(payload) as u8;
            let bits = Self::AT_PROTECTED_ID_0.of(payload);
            let protected_id_0 = super::SeatRequestProtectedId0::from_raw(bits as u8);
            let bits = Self::AT_PROTECTED_ID_1.of(payload);
            let protected_id_1 = super::SeatRequestProtectedId0::from_raw(bits as u8);
            let bits = Self::AT_PROTECTED_ID_2.of(payload);
            let protected_id_2 = super::SeatRequestProtectedId0::from_raw(bits as u8);
            let bits = Self::AT_PROTECTED_ID_3.of(payload);
            let protected_id_3 = super::SeatRequestProtectedId0::from_raw(bits as u8);
            Self {
                start_index,
                protected_id_0,
                protected_id_1,
                protected_id_2,
                protected_id_3,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.start_index);
            let bits = typed::unsigned_bits(number, 8, "start_index")?;
            Self::AT_START_INDEX.put(payload, bits);
            let number = u64::from(self.protected_id_0.raw());
            let bits = typed::unsigned_bits(number, 8, "protected_id_0")?;
            Self::AT_PROTECTED_ID_0.put(payload, bits);
            let number = u64::from(self.protected_id_1.raw());
            let bits = typed::unsigned_bits(number, 8, "protected_id_1")?;
            Self::AT_PROTECTED_ID_1.put(payload, bits);
            let number = u64::from(self.protected_id_2.raw());
            let bits = typed::unsigned_bits(number, 8, "protected_id_2")?;
            Self::AT_PROTECTED_ID_2.put(payload, bits);
            let number = u64::from(self.protected_id_3.raw());
            let bits = typed::unsigned_bits(number, 8, "protected_id_3")?;
            Self::AT_PROTECTED_ID_3.put(payload, bits);
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.start_index);
            let name = typed::Name::of("start_index");
            tell(name, said);
            let said = self.protected_id_0;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.protected_id_0;
            let said = said.word(state.word());
            let name = typed::Name::of("protected_id_0");
            tell(name, said);
            let said = self.protected_id_1;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.protected_id_1;
            let said = said.word(state.word());
            let name = typed::Name::of("protected_id_1");
            tell(name, said);
            let said = self.protected_id_2;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.protected_id_2;
            let said = said.word(state.word());
            let name = typed::Name::of("protected_id_2");
            tell(name, said);
            let said = self.protected_id_3;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.protected_id_3;
            let said = said.word(state.word());
            let name = typed::Name::of("protected_id_3");
            tell(name, said);
        }
    }

    /// When `service` is 0xB6.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceSaveConfiguration {}

    impl ServiceSaveConfiguration {
        #[inline]
        fn read(_payload: &[u8; 8]) -> Self {
            Self {}
        }

        fn write(&self, _payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, _tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {}
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceOtherwise<'a> {
        /// Bytes as they are.
        pub data: &'a [u8],
    }

    impl<'a> ServiceOtherwise<'a> {
        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let data = typed::first_of(payload, 3, 7);
            Self { data }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            typed::put_bytes(payload, self.data, 3, Some(8), "data")?;
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::bytes(self.data);
            let name = typed::Name::of("data");
            tell(name, said);
        }
    }

    /// When `part` is 1.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PartFirst<'a> {
        /// How many bytes the whole message has, the service among them.
        ///
        /// `raw`; 12 bits.
        pub whole_length: u16,
        /// `raw`; 8 bits.
        pub first_service: super::LinService,
        /// Bytes as they are.
        pub first_data: &'a [u8],
    }

    impl<'a> PartFirst<'a> {
        const AT_WHOLE_LENGTH: typed::Cuts<2> = typed::Cuts([
            typed::Cut::between((1, 3), (1, 0)),
            typed::Cut::between((2, 7), (2, 0)),
        ]);
        const AT_FIRST_SERVICE: typed::Cut = typed::Cut::between((3, 7), (3, 0));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let whole_length = Self::AT_WHOLE_LENGTH.of(payload) as u16;
            let bits = Self::AT_FIRST_SERVICE.of(payload);
            let first_service = super::LinService::from_raw(bits as u8);
            let first_data = typed::first_of(payload, 4, 7);
            Self {
                whole_length,
                first_service,
                first_data,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.whole_length);
            let bits = typed::unsigned_bits(number, 12, "whole_length")?;
            Self::AT_WHOLE_LENGTH.put(payload, bits);
            let number = u64::from(self.first_service.raw());
            let bits = typed::unsigned_bits(number, 8, "first_service")?;
            Self::AT_FIRST_SERVICE.put(payload, bits);
            typed::put_bytes(payload, self.first_data, 4, Some(8), "first_data")?;
            Ok(())
        }

        /// Whether the value lies outside its range, 7 to 4095.
        #[must_use]
        pub fn whole_length_is_outside(&self) -> bool {
            let raw = self.whole_length;
            matches!(raw, 0..=6)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.whole_length);
            let is_outside = self.whole_length_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("whole_length");
            tell(name, said);
            let said = self.first_service;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.first_service;
            let said = said.word(state.word());
            let name = typed::Name::of("first_service");
            tell(name, said);
            let said = typed::Said::bytes(self.first_data);
            let name = typed::Name::of("first_data");
            tell(name, said);
        }
    }

    /// When `part` is 2.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PartConsecutive<'a> {
        /// Counts the later parts of one message, from 1 on: no counter from frame to frame, as it begins anew with each message.
        ///
        /// `raw`; 4 bits.
        pub part_number: u8,
        /// Bytes as they are.
        pub more_data: &'a [u8],
    }

    impl<'a> PartConsecutive<'a> {
        const AT_PART_NUMBER: typed::Cut = typed::Cut::between((1, 3), (1, 0));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let part_number = Self::AT_PART_NUMBER.of(payload) as u8;
            let more_data = typed::first_of(payload, 2, 7);
            Self {
                part_number,
                more_data,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.part_number);
            let bits = typed::unsigned_bits(number, 4, "part_number")?;
            Self::AT_PART_NUMBER.put(payload, bits);
            typed::put_bytes(payload, self.more_data, 2, Some(8), "more_data")?;
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.part_number);
            let name = typed::Name::of("part_number");
            tell(name, said);
            let said = typed::Said::bytes(self.more_data);
            let name = typed::Name::of("more_data");
            tell(name, said);
        }
    }
}

pub use seat_response::SeatResponse;

/// `seat_response` and what it holds.
#[allow(clippy::module_inception)]
pub mod seat_response {
    use wirelore_bits::typed;

    /// Response of the seat.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SeatResponse<'a> {
        /// `raw`; 8 bits.
        pub node: super::LinNode,
        /// `raw`; 4 bits.
        pub part: super::LinMessagePart,
        /// What is there under a condition.
        pub when_part: WhenPart<'a>,
    }

    impl<'a> SeatResponse<'a> {
        /// The identifier without its parity bits.
        pub const ID: u8 = 0x3D;
        /// The identifier with its parity bits.
        pub const PROTECTED_ID: u8 = 0x7D;
        /// The length in bytes.
        pub const LENGTH: usize = 8;
        const AT_NODE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
        const AT_PART: typed::Cut = typed::Cut::between((1, 7), (1, 4));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let bits = Self::AT_NODE.of(payload);
            let node = super::LinNode::from_raw(bits as u8);
            let bits = Self::AT_PART.of(payload);
            let part = super::LinMessagePart::from_raw(bits as u8);
            let held = Self::select_part(payload);
            let when_part = match held {
                0 => {
                    let page = PartSingle::read(payload);
                    WhenPart::Single(page)
                }
                1 => {
                    let page = PartFirst::read(payload);
                    WhenPart::First(page)
                }
                2 => {
                    let page = PartConsecutive::read(payload);
                    WhenPart::Consecutive(page)
                }
                _ => WhenPart::NoPage,
            };
            Self {
                node,
                part,
                when_part,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.node.raw()), 8, "node")?;
            Self::AT_NODE.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.part.raw()), 4, "part")?;
            Self::AT_PART.put(payload, bits);
            let held = Self::select_part(payload);
            match (held, &self.when_part) {
                (0, WhenPart::Single(page)) => page.write(payload)?,
                (1, WhenPart::First(page)) => page.write(payload)?,
                (2, WhenPart::Consecutive(page)) => page.write(payload)?,
                (3, WhenPart::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        #[inline]
        fn select_part(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_PART.get(payload) else {
                return 3;
            };
            match bits {
                0 => 0,
                1 => 1,
                2 => 2,
                _ => 3,
            }
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let chunk = typed::chunk(payload)?;
            Ok(Self::read(chunk))
        }

        /// The payload.
        ///
        /// # Errors
        /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
        pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
            let mut payload = [0; 8];
            self.write(&mut payload)?;
            Ok(payload)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.node;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.node;
            let said = said.word(state.word());
            let name = typed::Name::of("node");
            tell(name, said);
            let said = self.part;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.part;
            let said = said.word(state.word());
            let name = typed::Name::of("part");
            tell(name, said);
            match &self.when_part {
                WhenPart::Single(page) => page.each(tell),
                WhenPart::First(page) => page.each(tell),
                WhenPart::Consecutive(page) => page.each(tell),
                WhenPart::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenPart<'a> {
        /// When `part` is 0.
        Single(PartSingle<'a>),
        /// When `part` is 1.
        First(PartFirst<'a>),
        /// When `part` is 2.
        Consecutive(PartConsecutive<'a>),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `part` is 0.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PartSingle<'a> {
        /// How many bytes of the message follow, the service among them.
        ///
        /// `raw`; 4 bits.
        pub length: u8,
        /// `raw`; 8 bits.
        pub answer: super::LinAnswer,
        /// What is there under a condition.
        pub when_answer: WhenAnswer<'a>,
    }

    impl<'a> PartSingle<'a> {
        const AT_LENGTH: typed::Cut = typed::Cut::between((1, 3), (1, 0));
        const AT_ANSWER: typed::Cut = typed::Cut::between((2, 7), (2, 0));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let length = Self::AT_LENGTH.of(payload) as u8;
            let bits = Self::AT_ANSWER.of(payload);
            let answer = super::LinAnswer::from_raw(bits as u8);
            let held = Self::select_answer(payload);
            let when_answer = match held {
                0 => {
                    let page = AnswerRefused::read(payload);
                    WhenAnswer::Refused(page)
                }
                1 => {
                    let page = AnswerReadById::read(payload);
                    WhenAnswer::ReadById(page)
                }
                2 => {
                    let page = AnswerNodeAssignedOrIdAssignedOr::read(payload);
                    WhenAnswer::NodeAssignedOrIdAssignedOr(page)
                }
                3 => {
                    let page = AnswerOtherwise::read(payload);
                    WhenAnswer::Otherwise(page)
                }
                _ => WhenAnswer::NoPage,
            };
            Self {
                length,
                answer,
                when_answer,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.length), 4, "length")?;
            Self::AT_LENGTH.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.answer.raw()), 8, "answer")?;
            Self::AT_ANSWER.put(payload, bits);
            let held = Self::select_answer(payload);
            match (held, &self.when_answer) {
                (0, WhenAnswer::Refused(page)) => page.write(payload)?,
                (1, WhenAnswer::ReadById(page)) => page.write(payload)?,
                (2, WhenAnswer::NodeAssignedOrIdAssignedOr(page)) => page.write(payload)?,
                (3, WhenAnswer::Otherwise(page)) => page.write(payload)?,
                (4, WhenAnswer::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        #[inline]
        fn select_answer(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_ANSWER.get(payload) else {
                return 4;
            };
            match bits {
                127 => 0,
                240..=241 => 2,
                242 => 1,
                243 => 2,
                246..=247 => 2,
                _ => 3,
            }
        }

        /// Whether the value lies outside its range, 1 to 6.
        #[must_use]
        pub fn length_is_outside(&self) -> bool {
            let raw = self.length;
            matches!(raw, 0 | 7..=15)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.length);
            let is_outside = self.length_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("length");
            tell(name, said);
            let said = self.answer;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.answer;
            let said = said.word(state.word());
            let name = typed::Name::of("answer");
            tell(name, said);
            match &self.when_answer {
                WhenAnswer::Refused(page) => page.each(tell),
                WhenAnswer::ReadById(page) => page.each(tell),
                WhenAnswer::NodeAssignedOrIdAssignedOr(page) => page.each(tell),
                WhenAnswer::Otherwise(page) => page.each(tell),
                WhenAnswer::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenAnswer<'a> {
        /// When `answer` is 0x7F.
        Refused(AnswerRefused),
        /// When `answer` is 0xF2.
        ReadById(AnswerReadById<'a>),
        /// When `answer` is 0xF0, 0xF1, 0xF3, 0xF6, 0xF7.
        NodeAssignedOrIdAssignedOr(AnswerNodeAssignedOrIdAssignedOr),
        /// Otherwise.
        Otherwise(AnswerOtherwise<'a>),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `answer` is 0x7F.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct AnswerRefused {
        /// `raw`; 8 bits.
        pub refused_service: super::LinService,
        /// Why, by the codes of ISO 14229-1.
        ///
        /// `raw`; 8 bits.
        pub reason: super::SeatResponseReason,
    }

    impl AnswerRefused {
        const AT_REFUSED_SERVICE: typed::Cut = typed::Cut::between((3, 7), (3, 0));
        const AT_REASON: typed::Cut = typed::Cut::between((4, 7), (4, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let bits = Self::AT_REFUSED_SERVICE.of(payload);
            let refused_service = super::LinService::from_raw(bits as u8);
            let bits = Self::AT_REASON.of(payload);
            let reason = super::SeatResponseReason::from_raw(bits as u8);
            Self {
                refused_service,
                reason,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.refused_service.raw());
            let bits = typed::unsigned_bits(number, 8, "refused_service")?;
            Self::AT_REFUSED_SERVICE.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.reason.raw()), 8, "reason")?;
            Self::AT_REASON.put(payload, bits);
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.refused_service;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.refused_service;
            let said = said.word(state.word());
            let name = typed::Name::of("refused_service");
            tell(name, said);
            let said = self.reason;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.reason;
            let said = said.word(state.word());
            let name = typed::Name::of("reason");
            tell(name, said);
        }
    }

    /// When `answer` is 0xF2.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct AnswerReadById<'a> {
        /// What is there under a condition.
        pub when_length: WhenLength<'a>,
    }

    impl<'a> AnswerReadById<'a> {
        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let held = Self::select_length(payload);
            let when_length = match held {
                0 => {
                    let page = LengthIs6::read(payload);
                    WhenLength::Is6(page)
                }
                1 => {
                    let page = LengthIs5::read(payload);
                    WhenLength::Is5(page)
                }
                2 => {
                    let page = LengthOtherwise::read(payload);
                    WhenLength::Otherwise(page)
                }
                _ => WhenLength::NoPage,
            };
            Self { when_length }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let held = Self::select_length(payload);
            match (held, &self.when_length) {
                (0, WhenLength::Is6(page)) => page.write(payload)?,
                (1, WhenLength::Is5(page)) => page.write(payload)?,
                (2, WhenLength::Otherwise(page)) => page.write(payload)?,
                (3, WhenLength::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        #[inline]
        fn select_length(payload: &[u8]) -> usize {
            let Some(bits) = PartSingle::AT_LENGTH.get(payload) else {
                return 3;
            };
            match bits {
                5 => 1,
                6 => 0,
                _ => 2,
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            match &self.when_length {
                WhenLength::Is6(page) => page.each(tell),
                WhenLength::Is5(page) => page.each(tell),
                WhenLength::Otherwise(page) => page.each(tell),
                WhenLength::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenLength<'a> {
        /// When `length` is 6.
        Is6(LengthIs6),
        /// When `length` is 5.
        Is5(LengthIs5),
        /// Otherwise.
        Otherwise(LengthOtherwise<'a>),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `length` is 6.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct LengthIs6 {
        /// `raw`; 16 bits.
        pub supplier: u16,
        /// `raw`; 16 bits.
        pub function: u16,
        /// `raw`; 8 bits.
        pub variant: u8,
    }

    impl LengthIs6 {
        const AT_SUPPLIER: typed::Cut = typed::Cut::between((4, 7), (3, 0));
        const AT_FUNCTION: typed::Cut = typed::Cut::between((6, 7), (5, 0));
        const AT_VARIANT: typed::Cut = typed::Cut::between((7, 7), (7, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let supplier = Self::AT_SUPPLIER.of(payload) as u16;
            let function = Self::AT_FUNCTION.of(payload) as u16;
            let variant = Self::AT_VARIANT.of(payload) as u8;
            Self {
                supplier,
                function,
                variant,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.supplier), 16, "supplier")?;
            Self::AT_SUPPLIER.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.function), 16, "function")?;
            Self::AT_FUNCTION.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.variant), 8, "variant")?;
            Self::AT_VARIANT.put(payload, bits);
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.supplier);
            let name = typed::Name::of("supplier");
            tell(name, said);
            let said = typed::Said::from(self.function);
            let name = typed::Name::of("function");
            tell(name, said);
            let said = typed::Said::from(self.variant);
            let name = typed::Name::of("variant");
            tell(name, said);
        }
    }

    /// When `length` is 5.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct LengthIs5 {
        /// `raw`; 32 bits.
        pub serial_number: u32,
    }

    impl LengthIs5 {
        const AT_SERIAL_NUMBER: typed::Cut = typed::Cut::between((6, 7), (3, 0));

        #[inline]
        fn read(payload: &[u8; 8]) -> Self {
            let serial_number = Self::AT_SERIAL_NUMBER.of(payload) as u32;
            Self { serial_number }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.serial_number);
            let bits = typed::unsigned_bits(number, 32, "serial_number")?;
            Self::AT_SERIAL_NUMBER.put(payload, bits);
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.serial_number);
            let name = typed::Name::of("serial_number");
            tell(name, said);
        }
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct LengthOtherwise<'a> {
        /// Bytes as they are.
        pub read_data: &'a [u8],
    }

    impl<'a> LengthOtherwise<'a> {
        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let read_data = typed::first_of(payload, 3, 7);
            Self { read_data }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            typed::put_bytes(payload, self.read_data, 3, Some(8), "read_data")?;
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::bytes(self.read_data);
            let name = typed::Name::of("read_data");
            tell(name, said);
        }
    }

    /// When `answer` is 0xF0, 0xF1, 0xF3, 0xF6, 0xF7.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct AnswerNodeAssignedOrIdAssignedOr {}

    impl AnswerNodeAssignedOrIdAssignedOr {
        #[inline]
        fn read(_payload: &[u8; 8]) -> Self {
            Self {}
        }

        fn write(&self, _payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, _tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {}
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct AnswerOtherwise<'a> {
        /// Bytes as they are.
        pub data: &'a [u8],
    }

    impl<'a> AnswerOtherwise<'a> {
        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let data = typed::first_of(payload, 3, 7);
            Self { data }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            typed::put_bytes(payload, self.data, 3, Some(8), "data")?;
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::bytes(self.data);
            let name = typed::Name::of("data");
            tell(name, said);
        }
    }

    /// When `part` is 1.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PartFirst<'a> {
        /// How many bytes the whole message has, the service among them.
        ///
        /// `raw`; 12 bits.
        pub whole_length: u16,
        /// `raw`; 8 bits.
        pub first_answer: super::LinAnswer,
        /// Bytes as they are.
        pub first_data: &'a [u8],
    }

    impl<'a> PartFirst<'a> {
        const AT_WHOLE_LENGTH: typed::Cuts<2> = typed::Cuts([
            typed::Cut::between((1, 3), (1, 0)),
            typed::Cut::between((2, 7), (2, 0)),
        ]);
        const AT_FIRST_ANSWER: typed::Cut = typed::Cut::between((3, 7), (3, 0));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let whole_length = Self::AT_WHOLE_LENGTH.of(payload) as u16;
            let bits = Self::AT_FIRST_ANSWER.of(payload);
            let first_answer = super::LinAnswer::from_raw(bits as u8);
            let first_data = typed::first_of(payload, 4, 7);
            Self {
                whole_length,
                first_answer,
                first_data,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.whole_length);
            let bits = typed::unsigned_bits(number, 12, "whole_length")?;
            Self::AT_WHOLE_LENGTH.put(payload, bits);
            let number = u64::from(self.first_answer.raw());
            let bits = typed::unsigned_bits(number, 8, "first_answer")?;
            Self::AT_FIRST_ANSWER.put(payload, bits);
            typed::put_bytes(payload, self.first_data, 4, Some(8), "first_data")?;
            Ok(())
        }

        /// Whether the value lies outside its range, 7 to 4095.
        #[must_use]
        pub fn whole_length_is_outside(&self) -> bool {
            let raw = self.whole_length;
            matches!(raw, 0..=6)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.whole_length);
            let is_outside = self.whole_length_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("whole_length");
            tell(name, said);
            let said = self.first_answer;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.first_answer;
            let said = said.word(state.word());
            let name = typed::Name::of("first_answer");
            tell(name, said);
            let said = typed::Said::bytes(self.first_data);
            let name = typed::Name::of("first_data");
            tell(name, said);
        }
    }

    /// When `part` is 2.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PartConsecutive<'a> {
        /// Counts the later parts of one message, from 1 on: no counter from frame to frame, as it begins anew with each message.
        ///
        /// `raw`; 4 bits.
        pub part_number: u8,
        /// Bytes as they are.
        pub more_data: &'a [u8],
    }

    impl<'a> PartConsecutive<'a> {
        const AT_PART_NUMBER: typed::Cut = typed::Cut::between((1, 3), (1, 0));

        #[inline]
        fn read(payload: &'a [u8; 8]) -> Self {
            let part_number = Self::AT_PART_NUMBER.of(payload) as u8;
            let more_data = typed::first_of(payload, 2, 7);
            Self {
                part_number,
                more_data,
            }
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.part_number);
            let bits = typed::unsigned_bits(number, 4, "part_number")?;
            Self::AT_PART_NUMBER.put(payload, bits);
            typed::put_bytes(payload, self.more_data, 2, Some(8), "more_data")?;
            Ok(())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.part_number);
            let name = typed::Name::of("part_number");
            tell(name, said);
            let said = typed::Said::bytes(self.more_data);
            let name = typed::Name::of("more_data");
            tell(name, said);
        }
    }
}

pub use heater_question::HeaterQuestion;

/// `heater_question` and what it holds.
#[allow(clippy::module_inception)]
pub mod heater_question {
    use wirelore_bits::typed;

    /// Question to the water heater.
    ///
    /// The gateway's questions.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct HeaterQuestion {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub question: Option<super::HeaterQuestionQuestion>,
        /// What is there under a condition.
        pub when_question: WhenQuestion,
    }

    impl HeaterQuestion {
        /// The sender's address.
        pub const SOURCE: u8 = 0x10;
        /// The receiver's address.
        pub const TARGET: u8 = 0x2A;
        /// The period.
        pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
        const AT_QUESTION: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_QUESTION.get(payload);
            let convert = |bits: u64| super::HeaterQuestionQuestion::from_raw(bits as u8);
            let question = bits.map(convert);
            let held = Self::select_question(payload);
            let when_question = match held {
                0 => {
                    let page = QuestionBeginOrEnd::read(payload)?;
                    WhenQuestion::BeginOrEnd(page)
                }
                1 => {
                    let page = QuestionReadPage::read(payload)?;
                    WhenQuestion::ReadPage(page)
                }
                _ => WhenQuestion::NoPage,
            };
            Ok(Self {
                question,
                when_question,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.question {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 8, "question")?;
                Self::AT_QUESTION.put(payload, bits);
            }
            let held = Self::select_question(payload);
            match (held, &self.when_question) {
                (0, WhenQuestion::BeginOrEnd(page)) => page.write(payload)?,
                (1, WhenQuestion::ReadPage(page)) => page.write(payload)?,
                (2, WhenQuestion::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, None);
            if self.question.is_some() {
                size.reach(1);
            }
            match &self.when_question {
                WhenQuestion::BeginOrEnd(page) => page.measure(size),
                WhenQuestion::ReadPage(page) => page.measure(size),
                WhenQuestion::NoPage => {}
            }
        }

        #[inline]
        fn select_question(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_QUESTION.get(payload) else {
                return 2;
            };
            match bits {
                33 => 1,
                129..=130 => 0,
                _ => 2,
            }
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let frame = Self::read(payload)?;
            let mut size = typed::Size::default();
            frame.measure(&mut size);
            typed::at_least(payload, size.least())?;
            Ok(frame)
        }

        /// Writes the payload and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Ok(size.length())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.question {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.question;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("question");
                tell(name, said);
            }
            match &self.when_question {
                WhenQuestion::BeginOrEnd(page) => page.each(tell),
                WhenQuestion::ReadPage(page) => page.each(tell),
                WhenQuestion::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenQuestion {
        /// When `question` is 0x81, 0x82.
        BeginOrEnd(QuestionBeginOrEnd),
        /// When `question` is 0x21.
        ReadPage(QuestionReadPage),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `question` is 0x81, 0x82.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct QuestionBeginOrEnd {}

    impl QuestionBeginOrEnd {
        #[inline]
        fn read(_payload: &[u8]) -> Result<Self, typed::TooShort> {
            Ok(Self {})
        }

        fn write(&self, _payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(0, Some(1));
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, _tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {}
    }

    /// When `question` is 0x21.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct QuestionReadPage {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub wanted_page: Option<u8>,
    }

    impl QuestionReadPage {
        const AT_WANTED_PAGE: typed::Cut = typed::Cut::between((1, 7), (1, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_WANTED_PAGE.get(payload);
            let convert = |bits: u64| bits as u8;
            let wanted_page = bits.map(convert);
            Ok(Self { wanted_page })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.wanted_page {
                let bits = typed::unsigned_bits(u64::from(value), 8, "wanted_page")?;
                Self::AT_WANTED_PAGE.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, Some(2));
            if self.wanted_page.is_some() {
                size.reach(2);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.wanted_page {
                let said = typed::Said::from(said);
                let name = typed::Name::of("wanted_page");
                tell(name, said);
            }
        }
    }
}

/// `heater_ready`.
///
/// The heater has heard the gateway and tells which headers it knows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeaterReady<'a> {
    /// Bytes as they are.
    pub key_bytes: &'a [u8],
}

impl<'a> HeaterReady<'a> {
    /// The sender's address.
    pub const SOURCE: u8 = 0x2A;
    /// The receiver's address.
    pub const TARGET: u8 = 0x10;
    /// The length in bytes.
    pub const LENGTH: usize = 3;

    #[inline]
    fn read(payload: &'a [u8; 3]) -> Self {
        let key_bytes = typed::first_of(payload, 1, 2);
        Self { key_bytes }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        typed::put_bytes(payload, self.key_bytes, 1, Some(3), "key_bytes")?;
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::bytes(self.key_bytes);
        let name = typed::Name::of("key_bytes");
        tell(name, said);
    }
}

/// Burner of the water heater.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeaterBurner {
    /// `raw`; 8 bits.
    pub burner: HeaterBurnerBurner,
    /// `raw - 40` °C; 8 bits.
    pub water: u8,
    /// `raw * 0.5` %; 8 bits.
    pub fan: u8,
    /// `raw * 0.1` A; 8 bits.
    pub glow_current: u8,
    /// Supply at the unit.
    ///
    /// `raw * 0.1` V; 8 bits.
    pub heater_supply: u8,
}

impl HeaterBurner {
    /// The sender's address.
    pub const SOURCE: u8 = 0x2A;
    /// The receiver's address.
    pub const TARGET: u8 = 0x10;
    /// The length in bytes.
    pub const LENGTH: usize = 7;
    const AT_BURNER: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_WATER: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_FAN: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_GLOW_CURRENT: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_HEATER_SUPPLY: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const FORMULA_WATER: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_FAN: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_GLOW_CURRENT: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_HEATER_SUPPLY: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 7]) -> Self {
        let bits = Self::AT_BURNER.of(payload);
        let burner = HeaterBurnerBurner::from_raw(bits as u8);
        let water = Self::AT_WATER.of(payload) as u8;
        let fan = Self::AT_FAN.of(payload) as u8;
        let glow_current = Self::AT_GLOW_CURRENT.of(payload) as u8;
        let heater_supply = Self::AT_HEATER_SUPPLY.of(payload) as u8;
        Self {
            burner,
            water,
            fan,
            glow_current,
            heater_supply,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.burner.raw()), 8, "burner")?;
        Self::AT_BURNER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.water), 8, "water")?;
        Self::AT_WATER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.fan), 8, "fan")?;
        Self::AT_FAN.put(payload, bits);
        let number = u64::from(self.glow_current);
        let bits = typed::unsigned_bits(number, 8, "glow_current")?;
        Self::AT_GLOW_CURRENT.put(payload, bits);
        let number = u64::from(self.heater_supply);
        let bits = typed::unsigned_bits(number, 8, "heater_supply")?;
        Self::AT_HEATER_SUPPLY.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 7], typed::NotEncoded> {
        let mut payload = [0; 7];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn burner(&self) -> typed::Reading<HeaterBurnerBurner> {
        match self.burner.raw() {
            7 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.burner),
        }
    }

    /// The value in °C.
    #[must_use]
    pub fn water(&self) -> typed::Reading<f64> {
        match self.water {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `water` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_water(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_WATER;
        let raw = &mut self.water;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 130 in °C.
    #[must_use]
    pub fn water_is_outside(&self) -> bool {
        let raw = self.water;
        matches!(raw, 171..=254)
    }

    /// The value in %.
    #[must_use]
    pub fn fan(&self) -> f64 {
        let raw = self.fan;
        f64::from(raw) / 2.0
    }

    /// Sets `fan` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fan(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_FAN;
        let raw = &mut self.fan;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn fan_is_outside(&self) -> bool {
        let raw = self.fan;
        matches!(raw, 201..=255)
    }

    /// The value in A.
    #[must_use]
    pub fn glow_current(&self) -> f64 {
        let raw = self.glow_current;
        f64::from(raw) / 10.0
    }

    /// Sets `glow_current` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_glow_current(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_GLOW_CURRENT;
        let raw = &mut self.glow_current;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 20 in A.
    #[must_use]
    pub fn glow_current_is_outside(&self) -> bool {
        let raw = self.glow_current;
        matches!(raw, 201..=255)
    }

    /// The value in V.
    #[must_use]
    pub fn heater_supply(&self) -> f64 {
        let raw = self.heater_supply;
        f64::from(raw) / 10.0
    }

    /// Sets `heater_supply` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_heater_supply(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_HEATER_SUPPLY;
        let raw = &mut self.heater_supply;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 5 to 18 in V.
    #[must_use]
    pub fn heater_supply_is_outside(&self) -> bool {
        let raw = self.heater_supply;
        matches!(raw, 0..=49 | 181..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.burner();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.burner;
        let said = said.word(state.word());
        let name = typed::Name::of("burner");
        tell(name, said);
        let said = typed::Said::from(self.water());
        let is_outside = self.water_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("water");
        tell(name, said);
        let said = typed::Said::from(self.fan());
        let is_outside = self.fan_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fan");
        tell(name, said);
        let said = typed::Said::from(self.glow_current());
        let is_outside = self.glow_current_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("glow_current");
        tell(name, said);
        let said = typed::Said::from(self.heater_supply());
        let is_outside = self.heater_supply_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("heater_supply");
        tell(name, said);
    }
}

/// What the water heater has been through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeaterLife {
    /// `raw`; 16 bits.
    pub starts: u16,
    /// `raw * 0.1` h; 16 bits.
    pub burning_time: u16,
}

impl HeaterLife {
    /// The sender's address.
    pub const SOURCE: u8 = 0x2A;
    /// The receiver's address.
    pub const TARGET: u8 = 0x10;
    /// The length in bytes.
    pub const LENGTH: usize = 6;
    const AT_STARTS: typed::Cut = typed::Cut::between((2, 7), (3, 0));
    const AT_BURNING_TIME: typed::Cut = typed::Cut::between((4, 7), (5, 0));
    const FORMULA_BURNING_TIME: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 6]) -> Self {
        let starts = Self::AT_STARTS.of(payload) as u16;
        let burning_time = Self::AT_BURNING_TIME.of(payload) as u16;
        Self {
            starts,
            burning_time,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.starts), 16, "starts")?;
        Self::AT_STARTS.put(payload, bits);
        let number = u64::from(self.burning_time);
        let bits = typed::unsigned_bits(number, 16, "burning_time")?;
        Self::AT_BURNING_TIME.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 6], typed::NotEncoded> {
        let mut payload = [0; 6];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in h.
    #[must_use]
    pub fn burning_time(&self) -> f64 {
        let raw = self.burning_time;
        f64::from(raw) / 10.0
    }

    /// Sets `burning_time` to the raw number nearest to a value in h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_burning_time(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_BURNING_TIME;
        let raw = &mut self.burning_time;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 6553.5 in h.
    #[must_use]
    pub fn burning_time_is_outside(&self) -> bool {
        false
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.starts);
        let name = typed::Name::of("starts");
        tell(name, said);
        let said = typed::Said::from(self.burning_time());
        let is_outside = self.burning_time_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("burning_time");
        tell(name, said);
    }
}

/// Wheel travel.
///
/// How far each wheel has come up to the body, on both channels. 0 is the loaded van at rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelTravel {
    /// `travel[1]`.
    ///
    /// 1 front left, 2 front right, 3 rear left, 4 rear right; up is positive.
    ///
    /// `raw * 0.1` mm; 16 bits, signed.
    pub travel_1: i16,
    /// `travel[2]`.
    ///
    /// 1 front left, 2 front right, 3 rear left, 4 rear right; up is positive.
    ///
    /// `raw * 0.1` mm; 16 bits, signed.
    pub travel_2: i16,
    /// `travel[3]`.
    ///
    /// 1 front left, 2 front right, 3 rear left, 4 rear right; up is positive.
    ///
    /// `raw * 0.1` mm; 16 bits, signed.
    pub travel_3: i16,
    /// `travel[4]`.
    ///
    /// 1 front left, 2 front right, 3 rear left, 4 rear right; up is positive.
    ///
    /// `raw * 0.1` mm; 16 bits, signed.
    pub travel_4: i16,
    /// Speed of the travel.
    ///
    /// `raw * 10` mm/s; 8 bits, signed.
    pub lift_1: i8,
    /// Speed of the travel.
    ///
    /// `raw * 10` mm/s; 8 bits, signed.
    pub lift_2: i8,
    /// Speed of the travel.
    ///
    /// `raw * 10` mm/s; 8 bits, signed.
    pub lift_3: i8,
    /// Speed of the travel.
    ///
    /// `raw * 10` mm/s; 8 bits, signed.
    pub lift_4: i8,
    /// `raw`; 8 bits.
    ///
    /// Counts the frames, from 0 to 255.
    pub travel_alive: u8,
    /// `raw`; 16 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub travel_check: u16,
}

impl WheelTravel {
    /// The slot.
    pub const SLOT: u16 = 7;
    /// The first cycle.
    pub const FIRST_CYCLE: u8 = 0;
    /// Every so many cycles.
    pub const REPETITION: u8 = 1;
    /// The length in bytes.
    pub const LENGTH: usize = 16;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(5);
    const AT_TRAVEL_1: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_TRAVEL_2: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_TRAVEL_3: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_TRAVEL_4: typed::Cut = typed::Cut::between((7, 7), (6, 0));
    const AT_LIFT_1: typed::Cut = typed::Cut::between((8, 7), (8, 0));
    const AT_LIFT_2: typed::Cut = typed::Cut::between((9, 7), (9, 0));
    const AT_LIFT_3: typed::Cut = typed::Cut::between((10, 7), (10, 0));
    const AT_LIFT_4: typed::Cut = typed::Cut::between((11, 7), (11, 0));
    const AT_TRAVEL_ALIVE: typed::Cut = typed::Cut::between((13, 7), (13, 0));
    const AT_TRAVEL_CHECK: typed::Cut = typed::Cut::between((15, 7), (14, 0));
    const FORMULA_TRAVEL_1: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_TRAVEL_2: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_TRAVEL_3: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_TRAVEL_4: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_LIFT_1: typed::Formula = typed::Formula::new(10, 0, 1);
    const FORMULA_LIFT_2: typed::Formula = typed::Formula::new(10, 0, 1);
    const FORMULA_LIFT_3: typed::Formula = typed::Formula::new(10, 0, 1);
    const FORMULA_LIFT_4: typed::Formula = typed::Formula::new(10, 0, 1);

    #[inline]
    fn read(payload: &[u8; 16]) -> Self {
        let bits = Self::AT_TRAVEL_1.of(payload);
        let travel_1 = typed::signed(bits, 16) as i16;
        let bits = Self::AT_TRAVEL_2.of(payload);
        let travel_2 = typed::signed(bits, 16) as i16;
        let bits = Self::AT_TRAVEL_3.of(payload);
        let travel_3 = typed::signed(bits, 16) as i16;
        let bits = Self::AT_TRAVEL_4.of(payload);
        let travel_4 = typed::signed(bits, 16) as i16;
        let bits = Self::AT_LIFT_1.of(payload);
        let lift_1 = typed::signed(bits, 8) as i8;
        let bits = Self::AT_LIFT_2.of(payload);
        let lift_2 = typed::signed(bits, 8) as i8;
        let bits = Self::AT_LIFT_3.of(payload);
        let lift_3 = typed::signed(bits, 8) as i8;
        let bits = Self::AT_LIFT_4.of(payload);
        let lift_4 = typed::signed(bits, 8) as i8;
        let travel_alive = Self::AT_TRAVEL_ALIVE.of(payload) as u8;
        let travel_check = Self::AT_TRAVEL_CHECK.of(payload) as u16;
        Self {
            travel_1,
            travel_2,
            travel_3,
            travel_4,
            lift_1,
            lift_2,
            lift_3,
            lift_4,
            travel_alive,
            travel_check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::signed_bits(i64::from(self.travel_1), 16, "travel[1]")?;
        Self::AT_TRAVEL_1.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.travel_2), 16, "travel[2]")?;
        Self::AT_TRAVEL_2.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.travel_3), 16, "travel[3]")?;
        Self::AT_TRAVEL_3.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.travel_4), 16, "travel[4]")?;
        Self::AT_TRAVEL_4.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.lift_1), 8, "lift[1]")?;
        Self::AT_LIFT_1.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.lift_2), 8, "lift[2]")?;
        Self::AT_LIFT_2.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.lift_3), 8, "lift[3]")?;
        Self::AT_LIFT_3.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.lift_4), 8, "lift[4]")?;
        Self::AT_LIFT_4.put(payload, bits);
        let number = u64::from(self.travel_alive);
        let bits = typed::unsigned_bits(number, 8, "travel_alive")?;
        Self::AT_TRAVEL_ALIVE.put(payload, bits);
        let number = u64::from(self.travel_check);
        let bits = typed::unsigned_bits(number, 16, "travel_check")?;
        Self::AT_TRAVEL_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_travel_check(payload: &[u8]) -> Option<u64> {
        let sum = &typed::sums::CRC16_IBM_3740;
        let state = sum.start();
        let bytes = payload.get(0..14)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFFFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_TRAVEL_CHECK.get(payload);
        let right = Self::sum_of_travel_check(payload);
        typed::sum_fits(found, right, "travel_check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_travel_check(payload) {
            Self::AT_TRAVEL_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 16], typed::NotEncoded> {
        let mut payload = [0; 16];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// The value in mm.
    #[must_use]
    pub fn travel_1(&self) -> typed::Reading<f64> {
        match self.travel_1 {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `travel_1` to the raw number nearest to a value in mm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_travel_1(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_TRAVEL_1;
        let raw = &mut self.travel_1;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -120 to 120 in mm.
    #[must_use]
    pub fn travel_1_is_outside(&self) -> bool {
        let raw = self.travel_1;
        matches!(raw, -32767..=-1201 | 0x4B1..=0x7FFF)
    }

    /// The value in mm.
    #[must_use]
    pub fn travel_2(&self) -> typed::Reading<f64> {
        match self.travel_2 {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `travel_2` to the raw number nearest to a value in mm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_travel_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_TRAVEL_2;
        let raw = &mut self.travel_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -120 to 120 in mm.
    #[must_use]
    pub fn travel_2_is_outside(&self) -> bool {
        let raw = self.travel_2;
        matches!(raw, -32767..=-1201 | 0x4B1..=0x7FFF)
    }

    /// The value in mm.
    #[must_use]
    pub fn travel_3(&self) -> typed::Reading<f64> {
        match self.travel_3 {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `travel_3` to the raw number nearest to a value in mm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_travel_3(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_TRAVEL_3;
        let raw = &mut self.travel_3;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -120 to 120 in mm.
    #[must_use]
    pub fn travel_3_is_outside(&self) -> bool {
        let raw = self.travel_3;
        matches!(raw, -32767..=-1201 | 0x4B1..=0x7FFF)
    }

    /// The value in mm.
    #[must_use]
    pub fn travel_4(&self) -> typed::Reading<f64> {
        match self.travel_4 {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `travel_4` to the raw number nearest to a value in mm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_travel_4(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_TRAVEL_4;
        let raw = &mut self.travel_4;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -120 to 120 in mm.
    #[must_use]
    pub fn travel_4_is_outside(&self) -> bool {
        let raw = self.travel_4;
        matches!(raw, -32767..=-1201 | 0x4B1..=0x7FFF)
    }

    /// The value in mm/s.
    #[must_use]
    pub fn lift_1(&self) -> typed::Reading<f64> {
        match self.lift_1 {
            -128 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 10) as f64),
        }
    }

    /// Sets `lift_1` to the raw number nearest to a value in mm/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_lift_1(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-128, 127);
        let is_value = |raw: i128| !matches!(raw, -128);
        let formula = Self::FORMULA_LIFT_1;
        let raw = &mut self.lift_1;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -1200 to 1200 in mm/s.
    #[must_use]
    pub fn lift_1_is_outside(&self) -> bool {
        let raw = self.lift_1;
        matches!(raw, -127..=-121 | 121..=127)
    }

    /// The value in mm/s.
    #[must_use]
    pub fn lift_2(&self) -> typed::Reading<f64> {
        match self.lift_2 {
            -128 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 10) as f64),
        }
    }

    /// Sets `lift_2` to the raw number nearest to a value in mm/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_lift_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-128, 127);
        let is_value = |raw: i128| !matches!(raw, -128);
        let formula = Self::FORMULA_LIFT_2;
        let raw = &mut self.lift_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -1200 to 1200 in mm/s.
    #[must_use]
    pub fn lift_2_is_outside(&self) -> bool {
        let raw = self.lift_2;
        matches!(raw, -127..=-121 | 121..=127)
    }

    /// The value in mm/s.
    #[must_use]
    pub fn lift_3(&self) -> typed::Reading<f64> {
        match self.lift_3 {
            -128 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 10) as f64),
        }
    }

    /// Sets `lift_3` to the raw number nearest to a value in mm/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_lift_3(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-128, 127);
        let is_value = |raw: i128| !matches!(raw, -128);
        let formula = Self::FORMULA_LIFT_3;
        let raw = &mut self.lift_3;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -1200 to 1200 in mm/s.
    #[must_use]
    pub fn lift_3_is_outside(&self) -> bool {
        let raw = self.lift_3;
        matches!(raw, -127..=-121 | 121..=127)
    }

    /// The value in mm/s.
    #[must_use]
    pub fn lift_4(&self) -> typed::Reading<f64> {
        match self.lift_4 {
            -128 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 10) as f64),
        }
    }

    /// Sets `lift_4` to the raw number nearest to a value in mm/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_lift_4(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-128, 127);
        let is_value = |raw: i128| !matches!(raw, -128);
        let formula = Self::FORMULA_LIFT_4;
        let raw = &mut self.lift_4;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -1200 to 1200 in mm/s.
    #[must_use]
    pub fn lift_4_is_outside(&self) -> bool {
        let raw = self.lift_4;
        matches!(raw, -127..=-121 | 121..=127)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_travel_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 255, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.travel_1());
        let is_outside = self.travel_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("travel[1]");
        tell(name, said);
        let said = typed::Said::from(self.travel_2());
        let is_outside = self.travel_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("travel[2]");
        tell(name, said);
        let said = typed::Said::from(self.travel_3());
        let is_outside = self.travel_3_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("travel[3]");
        tell(name, said);
        let said = typed::Said::from(self.travel_4());
        let is_outside = self.travel_4_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("travel[4]");
        tell(name, said);
        let said = typed::Said::from(self.lift_1());
        let is_outside = self.lift_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("lift[1]");
        tell(name, said);
        let said = typed::Said::from(self.lift_2());
        let is_outside = self.lift_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("lift[2]");
        tell(name, said);
        let said = typed::Said::from(self.lift_3());
        let is_outside = self.lift_3_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("lift[3]");
        tell(name, said);
        let said = typed::Said::from(self.lift_4());
        let is_outside = self.lift_4_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("lift[4]");
        tell(name, said);
        let said = typed::Said::from(self.travel_alive);
        let name = typed::Name::of("travel_alive");
        tell(name, said);
        let said = typed::Said::from(self.travel_check);
        let name = typed::Name::of("travel_check");
        tell(name, said);
    }
}

/// Against the nose diving.
///
/// What the brakes want of the suspension while they work. Otherwise the slot stays empty: null frames.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DiveRequest {
    /// `raw * 0.5` %; 8 bits.
    pub dive_level: u8,
    /// `raw * 0.1` bar; 16 bits.
    pub brake_demand: u16,
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 15.
    pub dive_alive: u8,
}

impl DiveRequest {
    /// The slot.
    pub const SLOT: u16 = 12;
    /// The first cycle.
    pub const FIRST_CYCLE: u8 = 0;
    /// Every so many cycles.
    pub const REPETITION: u8 = 2;
    /// The length in bytes.
    pub const LENGTH: usize = 16;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(10);
    const AT_DIVE_LEVEL: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_BRAKE_DEMAND: typed::Cut = typed::Cut::between((2, 7), (1, 0));
    const AT_DIVE_ALIVE: typed::Cut = typed::Cut::between((15, 3), (15, 0));
    const FORMULA_DIVE_LEVEL: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_BRAKE_DEMAND: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 16]) -> Self {
        let dive_level = Self::AT_DIVE_LEVEL.of(payload) as u8;
        let brake_demand = Self::AT_BRAKE_DEMAND.of(payload) as u16;
        let dive_alive = Self::AT_DIVE_ALIVE.of(payload) as u8;
        Self {
            dive_level,
            brake_demand,
            dive_alive,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.dive_level), 8, "dive_level")?;
        Self::AT_DIVE_LEVEL.put(payload, bits);
        let number = u64::from(self.brake_demand);
        let bits = typed::unsigned_bits(number, 16, "brake_demand")?;
        Self::AT_BRAKE_DEMAND.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.dive_alive), 4, "dive_alive")?;
        Self::AT_DIVE_ALIVE.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 16], typed::NotEncoded> {
        let mut payload = [0; 16];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in %.
    #[must_use]
    pub fn dive_level(&self) -> f64 {
        let raw = self.dive_level;
        f64::from(raw) / 2.0
    }

    /// Sets `dive_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_dive_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_DIVE_LEVEL;
        let raw = &mut self.dive_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn dive_level_is_outside(&self) -> bool {
        let raw = self.dive_level;
        matches!(raw, 201..=255)
    }

    /// The value in bar.
    #[must_use]
    pub fn brake_demand(&self) -> f64 {
        let raw = self.brake_demand;
        f64::from(raw) / 10.0
    }

    /// Sets `brake_demand` to the raw number nearest to a value in bar.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_brake_demand(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_BRAKE_DEMAND;
        let raw = &mut self.brake_demand;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250 in bar.
    #[must_use]
    pub fn brake_demand_is_outside(&self) -> bool {
        let raw = self.brake_demand;
        matches!(raw, 0x9C5..=0xFFFF)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_dive_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 15, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.dive_level());
        let is_outside = self.dive_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("dive_level");
        tell(name, said);
        let said = typed::Said::from(self.brake_demand());
        let is_outside = self.brake_demand_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("brake_demand");
        tell(name, said);
        let said = typed::Said::from(self.dive_alive);
        let name = typed::Name::of("dive_alive");
        tell(name, said);
    }
}

/// Damper currents.
///
/// The currents that set the dampers: the more, the harder. They follow the movement of the wheels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DamperCurrents {
    /// `current[1]`.
    ///
    /// `raw * 0.001` A; 16 bits.
    pub current_1: u16,
    /// `current[2]`.
    ///
    /// `raw * 0.001` A; 16 bits.
    pub current_2: u16,
    /// `current[3]`.
    ///
    /// `raw * 0.001` A; 16 bits.
    pub current_3: u16,
    /// `current[4]`.
    ///
    /// `raw * 0.001` A; 16 bits.
    pub current_4: u16,
    /// `raw`; 3 bits.
    pub damping: DamperCurrentsDamping,
    /// `raw`; 8 bits.
    ///
    /// Counts the frames, from 0 to 255.
    pub currents_alive: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub currents_check: u8,
}

impl DamperCurrents {
    /// The slot.
    pub const SLOT: u16 = 31;
    /// The first cycle.
    pub const FIRST_CYCLE: u8 = 0;
    /// Every so many cycles.
    pub const REPETITION: u8 = 2;
    /// The length in bytes.
    pub const LENGTH: usize = 16;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(10);
    const AT_CURRENT_1: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_CURRENT_2: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_CURRENT_3: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_CURRENT_4: typed::Cut = typed::Cut::between((7, 7), (6, 0));
    const AT_DAMPING: typed::Cut = typed::Cut::between((8, 2), (8, 0));
    const AT_CURRENTS_ALIVE: typed::Cut = typed::Cut::between((14, 7), (14, 0));
    const AT_CURRENTS_CHECK: typed::Cut = typed::Cut::between((15, 7), (15, 0));
    const FORMULA_CURRENT_1: typed::Formula = typed::Formula::new(1, 0, 1000);
    const FORMULA_CURRENT_2: typed::Formula = typed::Formula::new(1, 0, 1000);
    const FORMULA_CURRENT_3: typed::Formula = typed::Formula::new(1, 0, 1000);
    const FORMULA_CURRENT_4: typed::Formula = typed::Formula::new(1, 0, 1000);

    #[inline]
    fn read(payload: &[u8; 16]) -> Self {
        let current_1 = Self::AT_CURRENT_1.of(payload) as u16;
        let current_2 = Self::AT_CURRENT_2.of(payload) as u16;
        let current_3 = Self::AT_CURRENT_3.of(payload) as u16;
        let current_4 = Self::AT_CURRENT_4.of(payload) as u16;
        let bits = Self::AT_DAMPING.of(payload);
        let damping = DamperCurrentsDamping::from_raw(bits as u8);
        let currents_alive = Self::AT_CURRENTS_ALIVE.of(payload) as u8;
        let currents_check = Self::AT_CURRENTS_CHECK.of(payload) as u8;
        Self {
            current_1,
            current_2,
            current_3,
            current_4,
            damping,
            currents_alive,
            currents_check,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.current_1), 16, "current[1]")?;
        Self::AT_CURRENT_1.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.current_2), 16, "current[2]")?;
        Self::AT_CURRENT_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.current_3), 16, "current[3]")?;
        Self::AT_CURRENT_3.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.current_4), 16, "current[4]")?;
        Self::AT_CURRENT_4.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.damping.raw()), 3, "damping")?;
        Self::AT_DAMPING.put(payload, bits);
        let number = u64::from(self.currents_alive);
        let bits = typed::unsigned_bits(number, 8, "currents_alive")?;
        Self::AT_CURRENTS_ALIVE.put(payload, bits);
        let number = u64::from(self.currents_check);
        let bits = typed::unsigned_bits(number, 8, "currents_check")?;
        Self::AT_CURRENTS_CHECK.put(payload, bits);
        Ok(())
    }

    fn sum_of_currents_check(payload: &[u8]) -> Option<u64> {
        let sum = &typed::sums::CRC8_AUTOSAR;
        let state = sum.start();
        let bytes = payload.get(0..15)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        let found = Self::AT_CURRENTS_CHECK.get(payload);
        let right = Self::sum_of_currents_check(payload);
        typed::sum_fits(found, right, "currents_check")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8]) {
        if let Some(sum) = Self::sum_of_currents_check(payload) {
            Self::AT_CURRENTS_CHECK.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 16], typed::NotEncoded> {
        let mut payload = [0; 16];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Ok(payload)
    }

    /// The value in A.
    #[must_use]
    pub fn current_1(&self) -> typed::Reading<f64> {
        match self.current_1 {
            0xFFFE => typed::Reading::Fault,
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 1000.0),
        }
    }

    /// Sets `current_1` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_current_1(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFE..=0xFFFF);
        let formula = Self::FORMULA_CURRENT_1;
        let raw = &mut self.current_1;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2 in A.
    #[must_use]
    pub fn current_1_is_outside(&self) -> bool {
        let raw = self.current_1;
        matches!(raw, 0x7D1..=0xFFFD)
    }

    /// The value in A.
    #[must_use]
    pub fn current_2(&self) -> typed::Reading<f64> {
        match self.current_2 {
            0xFFFE => typed::Reading::Fault,
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 1000.0),
        }
    }

    /// Sets `current_2` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_current_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFE..=0xFFFF);
        let formula = Self::FORMULA_CURRENT_2;
        let raw = &mut self.current_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2 in A.
    #[must_use]
    pub fn current_2_is_outside(&self) -> bool {
        let raw = self.current_2;
        matches!(raw, 0x7D1..=0xFFFD)
    }

    /// The value in A.
    #[must_use]
    pub fn current_3(&self) -> typed::Reading<f64> {
        match self.current_3 {
            0xFFFE => typed::Reading::Fault,
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 1000.0),
        }
    }

    /// Sets `current_3` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_current_3(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFE..=0xFFFF);
        let formula = Self::FORMULA_CURRENT_3;
        let raw = &mut self.current_3;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2 in A.
    #[must_use]
    pub fn current_3_is_outside(&self) -> bool {
        let raw = self.current_3;
        matches!(raw, 0x7D1..=0xFFFD)
    }

    /// The value in A.
    #[must_use]
    pub fn current_4(&self) -> typed::Reading<f64> {
        match self.current_4 {
            0xFFFE => typed::Reading::Fault,
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 1000.0),
        }
    }

    /// Sets `current_4` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_current_4(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFE..=0xFFFF);
        let formula = Self::FORMULA_CURRENT_4;
        let raw = &mut self.current_4;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2 in A.
    #[must_use]
    pub fn current_4_is_outside(&self) -> bool {
        let raw = self.current_4;
        matches!(raw, 0x7D1..=0xFFFD)
    }

    /// What the raw number says.
    #[must_use]
    pub fn damping(&self) -> typed::Reading<DamperCurrentsDamping> {
        match self.damping.raw() {
            7 => typed::Reading::Fault,
            _ => typed::Reading::Value(self.damping),
        }
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_currents_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 255, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.current_1());
        let is_outside = self.current_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("current[1]");
        tell(name, said);
        let said = typed::Said::from(self.current_2());
        let is_outside = self.current_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("current[2]");
        tell(name, said);
        let said = typed::Said::from(self.current_3());
        let is_outside = self.current_3_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("current[3]");
        tell(name, said);
        let said = typed::Said::from(self.current_4());
        let is_outside = self.current_4_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("current[4]");
        tell(name, said);
        let said = self.damping();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.damping;
        let said = said.word(state.word());
        let name = typed::Name::of("damping");
        tell(name, said);
        let said = typed::Said::from(self.currents_alive);
        let name = typed::Name::of("currents_alive");
        tell(name, said);
        let said = typed::Said::from(self.currents_check);
        let name = typed::Name::of("currents_check");
        tell(name, said);
    }
}

/// Front valves.
///
/// How warm the valves are, the front ones and the rear ones in turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ValvesFront {
    /// Front valve: left, right.
    ///
    /// `raw - 40` °C; 8 bits.
    pub front_valve_1: u8,
    /// Front valve: left, right.
    ///
    /// `raw - 40` °C; 8 bits.
    pub front_valve_2: u8,
}

impl ValvesFront {
    /// The slot.
    pub const SLOT: u16 = 42;
    /// The first cycle.
    pub const FIRST_CYCLE: u8 = 1;
    /// Every so many cycles.
    pub const REPETITION: u8 = 4;
    /// The length in bytes.
    pub const LENGTH: usize = 16;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(20);
    const AT_FRONT_VALVE_1: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_FRONT_VALVE_2: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const FORMULA_FRONT_VALVE_1: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_FRONT_VALVE_2: typed::Formula = typed::Formula::new(1, -40, 1);

    #[inline]
    fn read(payload: &[u8; 16]) -> Self {
        let front_valve_1 = Self::AT_FRONT_VALVE_1.of(payload) as u8;
        let front_valve_2 = Self::AT_FRONT_VALVE_2.of(payload) as u8;
        Self {
            front_valve_1,
            front_valve_2,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.front_valve_1);
        let bits = typed::unsigned_bits(number, 8, "front_valve[1]")?;
        Self::AT_FRONT_VALVE_1.put(payload, bits);
        let number = u64::from(self.front_valve_2);
        let bits = typed::unsigned_bits(number, 8, "front_valve[2]")?;
        Self::AT_FRONT_VALVE_2.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 16], typed::NotEncoded> {
        let mut payload = [0; 16];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn front_valve_1(&self) -> typed::Reading<f64> {
        match self.front_valve_1 {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `front_valve_1` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_front_valve_1(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_FRONT_VALVE_1;
        let raw = &mut self.front_valve_1;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 180 in °C.
    #[must_use]
    pub fn front_valve_1_is_outside(&self) -> bool {
        let raw = self.front_valve_1;
        matches!(raw, 221..=254)
    }

    /// The value in °C.
    #[must_use]
    pub fn front_valve_2(&self) -> typed::Reading<f64> {
        match self.front_valve_2 {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `front_valve_2` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_front_valve_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_FRONT_VALVE_2;
        let raw = &mut self.front_valve_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 180 in °C.
    #[must_use]
    pub fn front_valve_2_is_outside(&self) -> bool {
        let raw = self.front_valve_2;
        matches!(raw, 221..=254)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.front_valve_1());
        let is_outside = self.front_valve_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("front_valve[1]");
        tell(name, said);
        let said = typed::Said::from(self.front_valve_2());
        let is_outside = self.front_valve_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("front_valve[2]");
        tell(name, said);
    }
}

/// Rear valves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ValvesRear {
    /// Rear valve: left, right.
    ///
    /// `raw - 40` °C; 8 bits.
    pub rear_valve_1: u8,
    /// Rear valve: left, right.
    ///
    /// `raw - 40` °C; 8 bits.
    pub rear_valve_2: u8,
}

impl ValvesRear {
    /// The slot.
    pub const SLOT: u16 = 42;
    /// The first cycle.
    pub const FIRST_CYCLE: u8 = 3;
    /// Every so many cycles.
    pub const REPETITION: u8 = 4;
    /// The length in bytes.
    pub const LENGTH: usize = 16;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(20);
    const AT_REAR_VALVE_1: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_REAR_VALVE_2: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const FORMULA_REAR_VALVE_1: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_REAR_VALVE_2: typed::Formula = typed::Formula::new(1, -40, 1);

    #[inline]
    fn read(payload: &[u8; 16]) -> Self {
        let rear_valve_1 = Self::AT_REAR_VALVE_1.of(payload) as u8;
        let rear_valve_2 = Self::AT_REAR_VALVE_2.of(payload) as u8;
        Self {
            rear_valve_1,
            rear_valve_2,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.rear_valve_1);
        let bits = typed::unsigned_bits(number, 8, "rear_valve[1]")?;
        Self::AT_REAR_VALVE_1.put(payload, bits);
        let number = u64::from(self.rear_valve_2);
        let bits = typed::unsigned_bits(number, 8, "rear_valve[2]")?;
        Self::AT_REAR_VALVE_2.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 16], typed::NotEncoded> {
        let mut payload = [0; 16];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn rear_valve_1(&self) -> typed::Reading<f64> {
        match self.rear_valve_1 {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `rear_valve_1` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_rear_valve_1(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_REAR_VALVE_1;
        let raw = &mut self.rear_valve_1;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 180 in °C.
    #[must_use]
    pub fn rear_valve_1_is_outside(&self) -> bool {
        let raw = self.rear_valve_1;
        matches!(raw, 221..=254)
    }

    /// The value in °C.
    #[must_use]
    pub fn rear_valve_2(&self) -> typed::Reading<f64> {
        match self.rear_valve_2 {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `rear_valve_2` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_rear_valve_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_REAR_VALVE_2;
        let raw = &mut self.rear_valve_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 180 in °C.
    #[must_use]
    pub fn rear_valve_2_is_outside(&self) -> bool {
        let raw = self.rear_valve_2;
        matches!(raw, 221..=254)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.rear_valve_1());
        let is_outside = self.rear_valve_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("rear_valve[1]");
        tell(name, said);
        let said = typed::Said::from(self.rear_valve_2());
        let is_outside = self.rear_valve_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("rear_valve[2]");
        tell(name, said);
    }
}

/// Change of the damping.
///
/// In the dynamic segment: the dampers say so when they change their mind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DampingChange {
    /// `raw`; 8 bits.
    pub damping_before: DampingChangeDampingBefore,
    /// `raw`; 8 bits.
    pub damping_now: DampingChangeDampingBefore,
    /// `raw`; 8 bits.
    pub because: DampingChangeBecause,
}

impl DampingChange {
    /// The slot.
    pub const SLOT: u16 = 71;
    /// The first cycle.
    pub const FIRST_CYCLE: u8 = 0;
    /// Every so many cycles.
    pub const REPETITION: u8 = 1;
    /// The length in bytes.
    pub const LENGTH: usize = 4;
    const AT_DAMPING_BEFORE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_DAMPING_NOW: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_BECAUSE: typed::Cut = typed::Cut::between((2, 7), (2, 0));

    #[inline]
    fn read(payload: &[u8; 4]) -> Self {
        let bits = Self::AT_DAMPING_BEFORE.of(payload);
        let damping_before = DampingChangeDampingBefore::from_raw(bits as u8);
        let bits = Self::AT_DAMPING_NOW.of(payload);
        let damping_now = DampingChangeDampingBefore::from_raw(bits as u8);
        let bits = Self::AT_BECAUSE.of(payload);
        let because = DampingChangeBecause::from_raw(bits as u8);
        Self {
            damping_before,
            damping_now,
            because,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.damping_before.raw());
        let bits = typed::unsigned_bits(number, 8, "damping_before")?;
        Self::AT_DAMPING_BEFORE.put(payload, bits);
        let number = u64::from(self.damping_now.raw());
        let bits = typed::unsigned_bits(number, 8, "damping_now")?;
        Self::AT_DAMPING_NOW.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.because.raw()), 8, "because")?;
        Self::AT_BECAUSE.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 4], typed::NotEncoded> {
        let mut payload = [0; 4];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.damping_before;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.damping_before;
        let said = said.word(state.word());
        let name = typed::Name::of("damping_before");
        tell(name, said);
        let said = self.damping_now;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.damping_now;
        let said = said.word(state.word());
        let name = typed::Name::of("damping_now");
        tell(name, said);
        let said = self.because;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.because;
        let said = said.word(state.word());
        let name = typed::Name::of("because");
        tell(name, said);
    }
}

/// `volume_wish`.
///
/// The knob, or a button on the steering wheel, was turned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VolumeWish {
    /// `raw` steps; 8 bits.
    pub wished_volume: u8,
}

impl VolumeWish {
    /// The function block.
    pub const BLOCK: u8 = 0x22;
    /// The function.
    pub const FUNCTION: u16 = 0x400;
    /// The length in bytes.
    pub const LENGTH: usize = 1;
    const AT_WISHED_VOLUME: typed::Cut = typed::Cut::between((0, 7), (0, 0));

    #[inline]
    fn read(payload: &[u8; 1]) -> Self {
        let wished_volume = Self::AT_WISHED_VOLUME.of(payload) as u8;
        Self { wished_volume }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.wished_volume);
        let bits = typed::unsigned_bits(number, 8, "wished_volume")?;
        Self::AT_WISHED_VOLUME.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 1], typed::NotEncoded> {
        let mut payload = [0; 1];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Whether the value lies outside its range, 0 to 40 in steps.
    #[must_use]
    pub fn wished_volume_is_outside(&self) -> bool {
        let raw = self.wished_volume;
        matches!(raw, 41..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.wished_volume);
        let is_outside = self.wished_volume_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("wished_volume");
        tell(name, said);
    }
}

/// Volume.
///
/// As loud as the driver wants, and louder the faster the van is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Volume {
    /// As the driver wants it.
    ///
    /// `raw` steps; 8 bits.
    pub wished: u8,
    /// Added for the speed.
    ///
    /// `raw` steps; 8 bits.
    pub added: u8,
    /// `raw` steps; 8 bits.
    pub loudness: u8,
}

impl Volume {
    /// The function block.
    pub const BLOCK: u8 = 0x22;
    /// The function.
    pub const FUNCTION: u16 = 0x400;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    const AT_WISHED: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_ADDED: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_LOUDNESS: typed::Cut = typed::Cut::between((2, 7), (2, 0));

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let wished = Self::AT_WISHED.of(payload) as u8;
        let added = Self::AT_ADDED.of(payload) as u8;
        let loudness = Self::AT_LOUDNESS.of(payload) as u8;
        Self {
            wished,
            added,
            loudness,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.wished), 8, "wished")?;
        Self::AT_WISHED.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.added), 8, "added")?;
        Self::AT_ADDED.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.loudness), 8, "loudness")?;
        Self::AT_LOUDNESS.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Whether the value lies outside its range, 0 to 40 in steps.
    #[must_use]
    pub fn wished_is_outside(&self) -> bool {
        let raw = self.wished;
        matches!(raw, 41..=255)
    }

    /// Whether the value lies outside its range, 0 to 10 in steps.
    #[must_use]
    pub fn added_is_outside(&self) -> bool {
        let raw = self.added;
        matches!(raw, 11..=255)
    }

    /// Whether the value lies outside its range, 0 to 50 in steps.
    #[must_use]
    pub fn loudness_is_outside(&self) -> bool {
        let raw = self.loudness;
        matches!(raw, 51..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.wished);
        let is_outside = self.wished_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("wished");
        tell(name, said);
        let said = typed::Said::from(self.added);
        let is_outside = self.added_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("added");
        tell(name, said);
        let said = typed::Said::from(self.loudness);
        let is_outside = self.loudness_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("loudness");
        tell(name, said);
    }
}

/// Time of the track.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrackTime {
    /// `raw`; 8 bits.
    pub track_number: u8,
    /// `raw` min; 8 bits.
    pub track_minutes: u8,
    /// `raw` s; 8 bits.
    pub track_seconds: u8,
}

impl TrackTime {
    /// The function block.
    pub const BLOCK: u8 = 0x31;
    /// The function.
    pub const FUNCTION: u16 = 0x202;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_TRACK_NUMBER: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_TRACK_MINUTES: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_TRACK_SECONDS: typed::Cut = typed::Cut::between((2, 7), (2, 0));

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let track_number = Self::AT_TRACK_NUMBER.of(payload) as u8;
        let track_minutes = Self::AT_TRACK_MINUTES.of(payload) as u8;
        let track_seconds = Self::AT_TRACK_SECONDS.of(payload) as u8;
        Self {
            track_number,
            track_minutes,
            track_seconds,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.track_number);
        let bits = typed::unsigned_bits(number, 8, "track_number")?;
        Self::AT_TRACK_NUMBER.put(payload, bits);
        let number = u64::from(self.track_minutes);
        let bits = typed::unsigned_bits(number, 8, "track_minutes")?;
        Self::AT_TRACK_MINUTES.put(payload, bits);
        let number = u64::from(self.track_seconds);
        let bits = typed::unsigned_bits(number, 8, "track_seconds")?;
        Self::AT_TRACK_SECONDS.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Whether the value lies outside its range, 0 to 255 in min.
    #[must_use]
    pub fn track_minutes_is_outside(&self) -> bool {
        false
    }

    /// Whether the value lies outside its range, 0 to 59 in s.
    #[must_use]
    pub fn track_seconds_is_outside(&self) -> bool {
        let raw = self.track_seconds;
        matches!(raw, 60..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.track_number);
        let name = typed::Name::of("track_number");
        tell(name, said);
        let said = typed::Said::from(self.track_minutes);
        let is_outside = self.track_minutes_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("track_minutes");
        tell(name, said);
        let said = typed::Said::from(self.track_seconds);
        let is_outside = self.track_seconds_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("track_seconds");
        tell(name, said);
    }
}

/// Title of the track.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrackTitle<'a> {
    /// Text, byte by byte.
    pub title: &'a [u8],
}

impl<'a> TrackTitle<'a> {
    /// The function block.
    pub const BLOCK: u8 = 0x31;
    /// The function.
    pub const FUNCTION: u16 = 0x203;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 1..=60;

    #[inline]
    fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let title = typed::to_end(payload, 0);
        Ok(Self { title })
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        typed::put_bytes(payload, self.title, 0, None, "title")?;
        Ok(())
    }

    fn measure(&self, size: &mut typed::Size) {
        size.part(0, Some(1));
        size.reach(self.title.len());
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let frame = Self::read(payload)?;
        let mut size = typed::Size::default();
        frame.measure(&mut size);
        typed::at_least(payload, size.least())?;
        Ok(frame)
    }

    /// Writes the payload and tells its length in bytes.
    ///
    /// # Errors
    /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
    /// small.
    pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
        let mut size = typed::Size::default();
        self.measure(&mut size);
        let payload = typed::room(room, size.length())?;
        self.write(payload)?;
        Ok(size.length())
    }

    /// The characters, without the NUL bytes at their end.
    #[must_use]
    pub fn title(&self) -> typed::Text<'a> {
        typed::Text::new(self.title, typed::Charset::Utf8)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.title());
        let name = typed::Name::of("title");
        tell(name, said);
    }
}

/// `player_buffer`.
///
/// The player tells how far it has read ahead. The radio does not listen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlayerBuffer {
    /// `raw * 0.5` %; 8 bits.
    pub read_ahead: u8,
}

impl PlayerBuffer {
    /// The function block.
    pub const BLOCK: u8 = 0x31;
    /// The function.
    pub const FUNCTION: u16 = 0x210;
    /// The length in bytes.
    pub const LENGTH: usize = 1;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(5);
    const AT_READ_AHEAD: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const FORMULA_READ_AHEAD: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 1]) -> Self {
        let read_ahead = Self::AT_READ_AHEAD.of(payload) as u8;
        Self { read_ahead }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.read_ahead), 8, "read_ahead")?;
        Self::AT_READ_AHEAD.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 1], typed::NotEncoded> {
        let mut payload = [0; 1];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in %.
    #[must_use]
    pub fn read_ahead(&self) -> f64 {
        let raw = self.read_ahead;
        f64::from(raw) / 2.0
    }

    /// Sets `read_ahead` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_read_ahead(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_READ_AHEAD;
        let raw = &mut self.read_ahead;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn read_ahead_is_outside(&self) -> bool {
        let raw = self.read_ahead;
        matches!(raw, 201..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.read_ahead());
        let is_outside = self.read_ahead_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("read_ahead");
        tell(name, said);
    }
}

/// State of the vehicle.
///
/// The van's motion for everybody who draws maps or counts kilometres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VehicleState {
    /// Vehicle speed.
    ///
    /// The one of brake\_state.
    ///
    /// `raw * 0.01` km/h; 16 bits.
    pub speed: u16,
    /// Yaw rate.
    ///
    /// `raw * 0.01` °/s; 16 bits, signed.
    pub yaw: i16,
    /// Way since the start.
    ///
    /// `raw * 0.01` m; 32 bits.
    pub way: u32,
    /// `raw`; 8 bits.
    pub gear: GearPosition,
    /// `raw`; 8 bits.
    ///
    /// Counts the frames, from 0 to 255.
    pub state_alive: u8,
}

impl VehicleState {
    /// The service.
    pub const SERVICE: u16 = 0x4A10;
    /// The method or event.
    pub const METHOD: u16 = 0x8001;
    /// The length in bytes.
    pub const LENGTH: usize = 10;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(200);
    const AT_SPEED: typed::Cut = typed::Cut::between((0, 7), (1, 0));
    const AT_YAW: typed::Cut = typed::Cut::between((2, 7), (3, 0));
    const AT_WAY: typed::Cut = typed::Cut::between((4, 7), (7, 0));
    const AT_GEAR: typed::Cut = typed::Cut::between((8, 7), (8, 0));
    const AT_STATE_ALIVE: typed::Cut = typed::Cut::between((9, 7), (9, 0));
    const FORMULA_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_YAW: typed::Formula = typed::Formula::new(1, 0, 100);
    const FORMULA_WAY: typed::Formula = typed::Formula::new(1, 0, 100);

    #[inline]
    fn read(payload: &[u8; 10]) -> Self {
        let speed = Self::AT_SPEED.of(payload) as u16;
        let bits = Self::AT_YAW.of(payload);
        let yaw = typed::signed(bits, 16) as i16;
        let way = Self::AT_WAY.of(payload) as u32;
        let bits = Self::AT_GEAR.of(payload);
        let gear = GearPosition::from_raw(bits as u8);
        let state_alive = Self::AT_STATE_ALIVE.of(payload) as u8;
        Self {
            speed,
            yaw,
            way,
            gear,
            state_alive,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.speed), 16, "speed")?;
        Self::AT_SPEED.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.yaw), 16, "yaw")?;
        Self::AT_YAW.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.way), 32, "way")?;
        Self::AT_WAY.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.gear.raw()), 8, "gear")?;
        Self::AT_GEAR.put(payload, bits);
        let number = u64::from(self.state_alive);
        let bits = typed::unsigned_bits(number, 8, "state_alive")?;
        Self::AT_STATE_ALIVE.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 10], typed::NotEncoded> {
        let mut payload = [0; 10];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in km/h.
    #[must_use]
    pub fn speed(&self) -> typed::Reading<f64> {
        match self.speed {
            0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `speed` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFFFF);
        let formula = Self::FORMULA_SPEED;
        let raw = &mut self.speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 300 in km/h.
    #[must_use]
    pub fn speed_is_outside(&self) -> bool {
        let raw = self.speed;
        matches!(raw, 0x7531..=0xFFFE)
    }

    /// The value in °/s.
    #[must_use]
    pub fn yaw(&self) -> typed::Reading<f64> {
        match self.yaw {
            -32768 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 100.0),
        }
    }

    /// Sets `yaw` to the raw number nearest to a value in °/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_yaw(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |raw: i128| !matches!(raw, -32768);
        let formula = Self::FORMULA_YAW;
        let raw = &mut self.yaw;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -150 to 150 in °/s.
    #[must_use]
    pub fn yaw_is_outside(&self) -> bool {
        let raw = self.yaw;
        matches!(raw, -32767..=-15001 | 0x3A99..=0x7FFF)
    }

    /// The value in m.
    #[must_use]
    pub fn way(&self) -> f64 {
        let raw = self.way;
        f64::from(raw) / 100.0
    }

    /// Sets `way` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_way(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_WAY;
        let raw = &mut self.way;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 1000000 in m.
    #[must_use]
    pub fn way_is_outside(&self) -> bool {
        let raw = self.way;
        matches!(raw, 0x5F5E101..=0xFFFFFFFF)
    }

    /// What the raw number says.
    #[must_use]
    pub fn gear(&self) -> typed::Reading<GearPosition> {
        match self.gear.raw() {
            15 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.gear),
        }
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_state_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 255, 1);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.speed());
        let is_outside = self.speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed");
        tell(name, said);
        let said = typed::Said::from(self.yaw());
        let is_outside = self.yaw_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("yaw");
        tell(name, said);
        let said = typed::Said::from(self.way());
        let is_outside = self.way_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("way");
        tell(name, said);
        let said = self.gear();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.gear;
        let said = said.word(state.word());
        let name = typed::Name::of("gear");
        tell(name, said);
        let said = typed::Said::from(self.state_alive);
        let name = typed::Name::of("state_alive");
        tell(name, said);
    }
}

/// `speeds_question`.
///
/// The speeds of the last seconds, the oldest first: what the telematics unit asks for when somebody has braked hard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedsQuestion {
    /// `raw`; 8 bits.
    pub wanted_speeds: u8,
}

impl SpeedsQuestion {
    /// The service.
    pub const SERVICE: u16 = 0x4A30;
    /// The method or event.
    pub const METHOD: u16 = 0x2;
    /// The length in bytes.
    pub const LENGTH: usize = 1;
    const AT_WANTED_SPEEDS: typed::Cut = typed::Cut::between((0, 7), (0, 0));

    #[inline]
    fn read(payload: &[u8; 1]) -> Self {
        let wanted_speeds = Self::AT_WANTED_SPEEDS.of(payload) as u8;
        Self { wanted_speeds }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.wanted_speeds);
        let bits = typed::unsigned_bits(number, 8, "wanted_speeds")?;
        Self::AT_WANTED_SPEEDS.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 1], typed::NotEncoded> {
        let mut payload = [0; 1];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Whether the value lies outside its range, 1 to 120.
    #[must_use]
    pub fn wanted_speeds_is_outside(&self) -> bool {
        let raw = self.wanted_speeds;
        matches!(raw, 0 | 121..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.wanted_speeds);
        let is_outside = self.wanted_speeds_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("wanted_speeds");
        tell(name, said);
    }
}

pub use speeds_answer::SpeedsAnswer;

/// `speeds_answer` and what it holds.
#[allow(clippy::module_inception)]
pub mod speeds_answer {
    use wirelore_bits::typed;

    /// `speeds_answer`.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SpeedsAnswer<'a> {
        /// `raw`; 8 bits.
        pub speeds: u8,
        /// As many as there are.
        pub past_speed_elements: typed::Repeated<'a, PastSpeedElement>,
    }

    impl<'a> SpeedsAnswer<'a> {
        /// The service.
        pub const SERVICE: u16 = 0x4A30;
        /// The method or event.
        pub const METHOD: u16 = 0x2;
        /// The lengths in bytes.
        pub const LENGTHS: core::ops::RangeInclusive<usize> = 1..=241;
        const AT_SPEEDS: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let speeds = Self::AT_SPEEDS.of(payload) as u8;
            let told = Self::AT_SPEEDS.get(payload);
            let past_speed_elements = typed::Repeated::counted(payload, 1, 2, (told, 120));
            let past_speed_elements: typed::Repeated<'a, PastSpeedElement> =
                past_speed_elements.readable();
            Ok(Self {
                speeds,
                past_speed_elements,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.speeds), 8, "speeds")?;
            Self::AT_SPEEDS.put(payload, bits);
            let told = Self::AT_SPEEDS.get(payload);
            typed::count_fits(told, self.past_speed_elements.len(), "speeds")?;
            let elements = &self.past_speed_elements;
            elements.write(payload, (1, 2), 120, "past_speed_elements")?;
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, Some(1));
            let elements = &self.past_speed_elements;
            elements.measure(size, 1, (2, 2));
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let frame = Self::read(payload)?;
            let mut size = typed::Size::default();
            frame.measure(&mut size);
            typed::at_least(payload, size.least())?;
            Ok(frame)
        }

        /// Writes the payload and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Ok(size.length())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.speeds);
            let name = typed::Name::of("speeds");
            tell(name, said);
            let elements = self.past_speed_elements.iter();
            for (index, element) in elements.enumerate() {
                element.each(&mut |name, said| tell(name.in_element(index), said));
            }
        }
    }

    /// One element of a repeated group.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PastSpeedElement {
        /// `raw * 0.01` km/h; 16 bits.
        pub past_speed: u16,
    }

    impl PastSpeedElement {
        const AT_PAST_SPEED: typed::Cut = typed::Cut::between((0, 7), (1, 0));
        const FORMULA_PAST_SPEED: typed::Formula = typed::Formula::new(1, 0, 100);

        /// The value in km/h.
        #[must_use]
        pub fn past_speed(&self) -> typed::Reading<f64> {
            match self.past_speed {
                0xFFFF => typed::Reading::NoReading,
                raw => typed::Reading::Value(f64::from(raw) / 100.0),
            }
        }

        /// Sets `past_speed` to the raw number nearest to a value in km/h.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_past_speed(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 65535);
            let is_value = |raw: i128| !matches!(raw, 0xFFFF);
            let formula = Self::FORMULA_PAST_SPEED;
            let raw = &mut self.past_speed;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 300 in km/h.
        #[must_use]
        pub fn past_speed_is_outside(&self) -> bool {
            let raw = self.past_speed;
            matches!(raw, 0x7531..=0xFFFE)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.past_speed());
            let is_outside = self.past_speed_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("past_speed");
            tell(name, said);
        }
    }

    impl<'a> typed::Element<'a> for PastSpeedElement {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 2)?;
            let past_speed = Self::AT_PAST_SPEED.of(payload) as u16;
            Ok(Self { past_speed })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.past_speed);
            let bits = typed::unsigned_bits(number, 16, "past_speed[1]")?;
            Self::AT_PAST_SPEED.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, None);
        }
    }
}

/// `set_cab_target`.
///
/// Warm the cab before somebody comes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetCabTarget {
    /// `raw`; 8 bits.
    pub side: SetCabTargetSide,
    /// `raw * 0.5` °C; 8 bits.
    pub wished_warmth: u8,
}

impl SetCabTarget {
    /// The service.
    pub const SERVICE: u16 = 0x4A20;
    /// The method or event.
    pub const METHOD: u16 = 0x1;
    /// The length in bytes.
    pub const LENGTH: usize = 2;
    const AT_SIDE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_WISHED_WARMTH: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const FORMULA_WISHED_WARMTH: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 2]) -> Self {
        let bits = Self::AT_SIDE.of(payload);
        let side = SetCabTargetSide::from_raw(bits as u8);
        let wished_warmth = Self::AT_WISHED_WARMTH.of(payload) as u8;
        Self {
            side,
            wished_warmth,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.side.raw()), 8, "side")?;
        Self::AT_SIDE.put(payload, bits);
        let number = u64::from(self.wished_warmth);
        let bits = typed::unsigned_bits(number, 8, "wished_warmth")?;
        Self::AT_WISHED_WARMTH.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 2], typed::NotEncoded> {
        let mut payload = [0; 2];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn wished_warmth(&self) -> f64 {
        let raw = self.wished_warmth;
        f64::from(raw) / 2.0
    }

    /// Sets `wished_warmth` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_wished_warmth(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_WISHED_WARMTH;
        let raw = &mut self.wished_warmth;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 15 to 30 in °C.
    #[must_use]
    pub fn wished_warmth_is_outside(&self) -> bool {
        let raw = self.wished_warmth;
        matches!(raw, 0..=29 | 61..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.side;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.side;
        let said = said.word(state.word());
        let name = typed::Name::of("side");
        tell(name, said);
        let said = typed::Said::from(self.wished_warmth());
        let is_outside = self.wished_warmth_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("wished_warmth");
        tell(name, said);
    }
}

/// `cab_target_set`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CabTargetSet {
    /// `raw`; 8 bits.
    pub answered_side: SetCabTargetSide,
    /// `raw * 0.5` °C; 8 bits.
    pub set_warmth: u8,
}

impl CabTargetSet {
    /// The service.
    pub const SERVICE: u16 = 0x4A20;
    /// The method or event.
    pub const METHOD: u16 = 0x1;
    /// The length in bytes.
    pub const LENGTH: usize = 2;
    const AT_ANSWERED_SIDE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_SET_WARMTH: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const FORMULA_SET_WARMTH: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 2]) -> Self {
        let bits = Self::AT_ANSWERED_SIDE.of(payload);
        let answered_side = SetCabTargetSide::from_raw(bits as u8);
        let set_warmth = Self::AT_SET_WARMTH.of(payload) as u8;
        Self {
            answered_side,
            set_warmth,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.answered_side.raw());
        let bits = typed::unsigned_bits(number, 8, "answered_side")?;
        Self::AT_ANSWERED_SIDE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.set_warmth), 8, "set_warmth")?;
        Self::AT_SET_WARMTH.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 2], typed::NotEncoded> {
        let mut payload = [0; 2];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn set_warmth(&self) -> f64 {
        let raw = self.set_warmth;
        f64::from(raw) / 2.0
    }

    /// Sets `set_warmth` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_set_warmth(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_SET_WARMTH;
        let raw = &mut self.set_warmth;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 15 to 30 in °C.
    #[must_use]
    pub fn set_warmth_is_outside(&self) -> bool {
        let raw = self.set_warmth;
        matches!(raw, 0..=29 | 61..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.answered_side;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.answered_side;
        let said = said.word(state.word());
        let name = typed::Name::of("answered_side");
        tell(name, said);
        let said = typed::Said::from(self.set_warmth());
        let is_outside = self.set_warmth_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("set_warmth");
        tell(name, said);
    }
}

/// `cab_target_refused`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CabTargetRefused {
    /// `raw`; 8 bits.
    pub because: CabTargetRefusedBecause,
}

impl CabTargetRefused {
    /// The service.
    pub const SERVICE: u16 = 0x4A20;
    /// The method or event.
    pub const METHOD: u16 = 0x1;
    /// The length in bytes.
    pub const LENGTH: usize = 1;
    const AT_BECAUSE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

    #[inline]
    fn read(payload: &[u8; 1]) -> Self {
        let bits = Self::AT_BECAUSE.of(payload);
        let because = CabTargetRefusedBecause::from_raw(bits as u8);
        Self { because }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.because.raw()), 8, "because")?;
        Self::AT_BECAUSE.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 1], typed::NotEncoded> {
        let mut payload = [0; 1];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.because;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.because;
        let said = said.word(state.word());
        let name = typed::Name::of("because");
        tell(name, said);
    }
}

/// Position.
///
/// Where the van is: metres from where it stood in the morning, and where it points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// `raw` m; 32 bits, floating point.
    pub north: f64,
    /// `raw` m; 32 bits, floating point.
    pub east: f64,
    /// Direction of travel: 0 north, 90 west.
    ///
    /// `raw * 0.01` °; 16 bits, signed.
    pub direction: i16,
    /// `raw`; 8 bits.
    pub satellites: u8,
}

impl Position {
    /// The port.
    pub const PORT: u16 = 41200;
    /// The length in bytes.
    pub const LENGTH: usize = 12;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_NORTH: typed::Cut = typed::Cut::between((0, 7), (3, 0));
    const AT_EAST: typed::Cut = typed::Cut::between((4, 7), (7, 0));
    const AT_DIRECTION: typed::Cut = typed::Cut::between((8, 7), (9, 0));
    const AT_SATELLITES: typed::Cut = typed::Cut::between((10, 7), (10, 0));
    const FORMULA_DIRECTION: typed::Formula = typed::Formula::new(1, 0, 100);

    #[inline]
    fn read(payload: &[u8; 12]) -> Self {
        let bits = Self::AT_NORTH.of(payload);
        let north = typed::float(bits, 32);
        let bits = Self::AT_EAST.of(payload);
        let east = typed::float(bits, 32);
        let bits = Self::AT_DIRECTION.of(payload);
        let direction = typed::signed(bits, 16) as i16;
        let satellites = Self::AT_SATELLITES.of(payload) as u8;
        Self {
            north,
            east,
            direction,
            satellites,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::float_bits(self.north, 32, "north")?;
        Self::AT_NORTH.put(payload, bits);
        let bits = typed::float_bits(self.east, 32, "east")?;
        Self::AT_EAST.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.direction), 16, "direction")?;
        Self::AT_DIRECTION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.satellites), 8, "satellites")?;
        Self::AT_SATELLITES.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 12], typed::NotEncoded> {
        let mut payload = [0; 12];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Whether the value lies outside its range, -100000 to 100000 in m.
    #[must_use]
    pub fn north_is_outside(&self) -> bool {
        let value = Some(self.north);
        value.is_some() && !typed::within(value, -100000.0, 100000.0)
    }

    /// Whether the value lies outside its range, -100000 to 100000 in m.
    #[must_use]
    pub fn east_is_outside(&self) -> bool {
        let value = Some(self.east);
        value.is_some() && !typed::within(value, -100000.0, 100000.0)
    }

    /// The value in °.
    #[must_use]
    pub fn direction(&self) -> f64 {
        let raw = self.direction;
        f64::from(raw) / 100.0
    }

    /// Sets `direction` to the raw number nearest to a value in °.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_direction(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_DIRECTION;
        let raw = &mut self.direction;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -180 to 180 in °.
    #[must_use]
    pub fn direction_is_outside(&self) -> bool {
        let raw = self.direction;
        matches!(raw, -32768..=-18001 | 0x4651..=0x7FFF)
    }

    /// Whether the value lies outside its range, 0 to 64.
    #[must_use]
    pub fn satellites_is_outside(&self) -> bool {
        let raw = self.satellites;
        matches!(raw, 65..=255)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.north);
        let is_outside = self.north_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("north");
        tell(name, said);
        let said = typed::Said::from(self.east);
        let is_outside = self.east_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("east");
        tell(name, said);
        let said = typed::Said::from(self.direction());
        let is_outside = self.direction_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("direction");
        tell(name, said);
        let said = typed::Said::from(self.satellites);
        let is_outside = self.satellites_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("satellites");
        tell(name, said);
    }
}

/// Routing activation.
///
/// A tester asks to be let in. Listen to testers; whoever writes with one, answers for what moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LetMeIn {
    /// `raw`; 16 bits.
    pub tester_address: u16,
    /// `raw`; 8 bits.
    pub activation: LetMeInActivation,
}

impl LetMeIn {
    /// The payload type.
    pub const PAYLOAD_TYPE: u16 = 0x5;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 7..=11;
    const AT_TESTER_ADDRESS: typed::Cut = typed::Cut::between((0, 7), (1, 0));
    const AT_ACTIVATION: typed::Cut = typed::Cut::between((2, 7), (2, 0));

    #[inline]
    fn read(payload: &[u8; 7]) -> Self {
        let tester_address = Self::AT_TESTER_ADDRESS.of(payload) as u16;
        let bits = Self::AT_ACTIVATION.of(payload);
        let activation = LetMeInActivation::from_raw(bits as u8);
        Self {
            tester_address,
            activation,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.tester_address);
        let bits = typed::unsigned_bits(number, 16, "tester_address")?;
        Self::AT_TESTER_ADDRESS.put(payload, bits);
        let number = u64::from(self.activation.raw());
        let bits = typed::unsigned_bits(number, 8, "activation")?;
        Self::AT_ACTIVATION.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 7], typed::NotEncoded> {
        let mut payload = [0; 7];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.tester_address);
        let name = typed::Name::of("tester_address");
        tell(name, said);
        let said = self.activation;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.activation;
        let said = said.word(state.word());
        let name = typed::Name::of("activation");
        tell(name, said);
    }
}

/// Answer to the routing activation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YouAreIn {
    /// `raw`; 16 bits.
    pub asking_tester: u16,
    /// `raw`; 16 bits.
    pub entity: u16,
    /// `raw`; 8 bits.
    pub entrance: YouAreInEntrance,
}

impl YouAreIn {
    /// The payload type.
    pub const PAYLOAD_TYPE: u16 = 0x6;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 9..=13;
    const AT_ASKING_TESTER: typed::Cut = typed::Cut::between((0, 7), (1, 0));
    const AT_ENTITY: typed::Cut = typed::Cut::between((2, 7), (3, 0));
    const AT_ENTRANCE: typed::Cut = typed::Cut::between((4, 7), (4, 0));

    #[inline]
    fn read(payload: &[u8; 9]) -> Self {
        let asking_tester = Self::AT_ASKING_TESTER.of(payload) as u16;
        let entity = Self::AT_ENTITY.of(payload) as u16;
        let bits = Self::AT_ENTRANCE.of(payload);
        let entrance = YouAreInEntrance::from_raw(bits as u8);
        Self {
            asking_tester,
            entity,
            entrance,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.asking_tester);
        let bits = typed::unsigned_bits(number, 16, "asking_tester")?;
        Self::AT_ASKING_TESTER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.entity), 16, "entity")?;
        Self::AT_ENTITY.put(payload, bits);
        let number = u64::from(self.entrance.raw());
        let bits = typed::unsigned_bits(number, 8, "entrance")?;
        Self::AT_ENTRANCE.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 9], typed::NotEncoded> {
        let mut payload = [0; 9];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.asking_tester);
        let name = typed::Name::of("asking_tester");
        tell(name, said);
        let said = typed::Said::from(self.entity);
        let name = typed::Name::of("entity");
        tell(name, said);
        let said = self.entrance;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.entrance;
        let said = said.word(state.word());
        let name = typed::Name::of("entrance");
        tell(name, said);
    }
}

/// Taken on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TakenOn {
    /// `raw`; 8 bits.
    pub acknowledged: u8,
}

impl TakenOn {
    /// The payload type.
    pub const PAYLOAD_TYPE: u16 = 0x8002;
    const AT_ACKNOWLEDGED: typed::Cut = typed::Cut::between((0, 7), (0, 0));

    #[inline]
    fn read(payload: &[u8; 1]) -> Self {
        let acknowledged = Self::AT_ACKNOWLEDGED.of(payload) as u8;
        Self { acknowledged }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.acknowledged);
        let bits = typed::unsigned_bits(number, 8, "acknowledged")?;
        Self::AT_ACKNOWLEDGED.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 1], typed::NotEncoded> {
        let mut payload = [0; 1];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.acknowledged);
        let name = typed::Name::of("acknowledged");
        tell(name, said);
    }
}

pub use questions_over_ip::QuestionsOverIp;

/// `questions_over_ip` and what it holds.
#[allow(clippy::module_inception)]
pub mod questions_over_ip {
    use wirelore_bits::typed;

    /// Questions to the engine unit.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct QuestionsOverIp {
        /// `raw`; 8 bits.
        pub ip_service: super::EngineQuestionsService,
        /// What is there under a condition.
        pub when_ip_service: WhenIpService,
    }

    impl QuestionsOverIp {
        /// The payload type.
        pub const PAYLOAD_TYPE: u16 = 0x8001;
        /// The lengths in bytes.
        pub const LENGTHS: core::ops::RangeInclusive<usize> = 1..=4095;
        const AT_IP_SERVICE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_IP_SERVICE.of(payload);
            let ip_service = super::EngineQuestionsService::from_raw(bits as u8);
            let held = Self::select_ip_service(payload);
            let when_ip_service = match held {
                0 => {
                    let page = IpServiceReadData::read(payload)?;
                    WhenIpService::ReadData(page)
                }
                1 => {
                    let page = IpServiceReadCodes::read(payload)?;
                    WhenIpService::ReadCodes(page)
                }
                _ => WhenIpService::NoPage,
            };
            Ok(Self {
                ip_service,
                when_ip_service,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.ip_service.raw());
            let bits = typed::unsigned_bits(number, 8, "ip_service")?;
            Self::AT_IP_SERVICE.put(payload, bits);
            let held = Self::select_ip_service(payload);
            match (held, &self.when_ip_service) {
                (0, WhenIpService::ReadData(page)) => page.write(payload)?,
                (1, WhenIpService::ReadCodes(page)) => page.write(payload)?,
                (2, WhenIpService::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, Some(1));
            match &self.when_ip_service {
                WhenIpService::ReadData(page) => page.measure(size),
                WhenIpService::ReadCodes(page) => page.measure(size),
                WhenIpService::NoPage => {}
            }
        }

        #[inline]
        fn select_ip_service(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_IP_SERVICE.get(payload) else {
                return 2;
            };
            match bits {
                25 => 1,
                34 => 0,
                _ => 2,
            }
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let frame = Self::read(payload)?;
            let mut size = typed::Size::default();
            frame.measure(&mut size);
            typed::at_least(payload, size.least())?;
            Ok(frame)
        }

        /// Writes the payload and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Ok(size.length())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.ip_service;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.ip_service;
            let said = said.word(state.word());
            let name = typed::Name::of("ip_service");
            tell(name, said);
            match &self.when_ip_service {
                WhenIpService::ReadData(page) => page.each(tell),
                WhenIpService::ReadCodes(page) => page.each(tell),
                WhenIpService::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenIpService {
        /// When `ip_service` is 0x22.
        ReadData(IpServiceReadData),
        /// When `ip_service` is 0x19.
        ReadCodes(IpServiceReadCodes),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `ip_service` is 0x22.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct IpServiceReadData {
        /// `raw`; 16 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_wanted: Option<super::EngineQuestionsWanted>,
    }

    impl IpServiceReadData {
        const AT_IP_WANTED: typed::Cut = typed::Cut::between((1, 7), (2, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_IP_WANTED.get(payload);
            let convert = |bits: u64| super::EngineQuestionsWanted::from_raw(bits as u16);
            let ip_wanted = bits.map(convert);
            Ok(Self { ip_wanted })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.ip_wanted {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 16, "ip_wanted")?;
                Self::AT_IP_WANTED.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.ip_wanted.is_some() {
                size.reach(3);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.ip_wanted {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.ip_wanted;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("ip_wanted");
                tell(name, said);
            }
        }
    }

    /// When `ip_service` is 0x19.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct IpServiceReadCodes {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_report: Option<super::EngineQuestionsReport>,
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_asked_status: Option<u8>,
    }

    impl IpServiceReadCodes {
        const AT_IP_REPORT: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_IP_ASKED_STATUS: typed::Cut = typed::Cut::between((2, 7), (2, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_IP_REPORT.get(payload);
            let convert = |bits: u64| super::EngineQuestionsReport::from_raw(bits as u8);
            let ip_report = bits.map(convert);
            let bits = Self::AT_IP_ASKED_STATUS.get(payload);
            let convert = |bits: u64| bits as u8;
            let ip_asked_status = bits.map(convert);
            Ok(Self {
                ip_report,
                ip_asked_status,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.ip_report {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 8, "ip_report")?;
                Self::AT_IP_REPORT.put(payload, bits);
            }
            if let Some(value) = self.ip_asked_status {
                let bits = typed::unsigned_bits(u64::from(value), 8, "ip_asked_status")?;
                Self::AT_IP_ASKED_STATUS.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.ip_report.is_some() {
                size.reach(2);
            }
            if self.ip_asked_status.is_some() {
                size.reach(3);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.ip_report {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.ip_report;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("ip_report");
                tell(name, said);
            }
            if let Some(said) = self.ip_asked_status {
                let said = typed::Said::from(said);
                let name = typed::Name::of("ip_asked_status");
                tell(name, said);
            }
        }
    }
}

pub use answers_over_ip::AnswersOverIp;

/// `answers_over_ip` and what it holds.
#[allow(clippy::module_inception)]
pub mod answers_over_ip {
    use wirelore_bits::typed;

    /// Answers of the engine unit.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct AnswersOverIp<'a> {
        /// `raw`; 8 bits.
        pub ip_service: super::EngineAnswersService,
        /// What is there under a condition.
        pub when_ip_service: WhenIpService<'a>,
    }

    impl<'a> AnswersOverIp<'a> {
        /// The payload type.
        pub const PAYLOAD_TYPE: u16 = 0x8001;
        /// The lengths in bytes.
        pub const LENGTHS: core::ops::RangeInclusive<usize> = 1..=4095;
        const AT_IP_SERVICE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_IP_SERVICE.of(payload);
            let ip_service = super::EngineAnswersService::from_raw(bits as u8);
            let held = Self::select_ip_service(payload);
            let when_ip_service = match held {
                0 => {
                    let page = IpServiceData::read(payload)?;
                    WhenIpService::Data(page)
                }
                1 => {
                    let page = IpServiceCodes::read(payload)?;
                    WhenIpService::Codes(page)
                }
                2 => {
                    let page = IpServiceRefused::read(payload)?;
                    WhenIpService::Refused(page)
                }
                _ => WhenIpService::NoPage,
            };
            Ok(Self {
                ip_service,
                when_ip_service,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.ip_service.raw());
            let bits = typed::unsigned_bits(number, 8, "ip_service")?;
            Self::AT_IP_SERVICE.put(payload, bits);
            let held = Self::select_ip_service(payload);
            match (held, &self.when_ip_service) {
                (0, WhenIpService::Data(page)) => page.write(payload)?,
                (1, WhenIpService::Codes(page)) => page.write(payload)?,
                (2, WhenIpService::Refused(page)) => page.write(payload)?,
                (3, WhenIpService::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, Some(1));
            match &self.when_ip_service {
                WhenIpService::Data(page) => page.measure(size),
                WhenIpService::Codes(page) => page.measure(size),
                WhenIpService::Refused(page) => page.measure(size),
                WhenIpService::NoPage => {}
            }
        }

        #[inline]
        fn select_ip_service(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_IP_SERVICE.get(payload) else {
                return 3;
            };
            match bits {
                89 => 1,
                98 => 0,
                127 => 2,
                _ => 3,
            }
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let frame = Self::read(payload)?;
            let mut size = typed::Size::default();
            frame.measure(&mut size);
            typed::at_least(payload, size.least())?;
            Ok(frame)
        }

        /// Writes the payload and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Ok(size.length())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.ip_service;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.ip_service;
            let said = said.word(state.word());
            let name = typed::Name::of("ip_service");
            tell(name, said);
            match &self.when_ip_service {
                WhenIpService::Data(page) => page.each(tell),
                WhenIpService::Codes(page) => page.each(tell),
                WhenIpService::Refused(page) => page.each(tell),
                WhenIpService::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenIpService<'a> {
        /// When `ip_service` is 0x62.
        Data(IpServiceData<'a>),
        /// When `ip_service` is 0x59.
        Codes(IpServiceCodes<'a>),
        /// When `ip_service` is 0x7F.
        Refused(IpServiceRefused),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `ip_service` is 0x62.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct IpServiceData<'a> {
        /// `raw`; 16 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_item: Option<super::EngineAnswersItem>,
        /// What is there under a condition.
        pub when_ip_item: WhenIpItem<'a>,
    }

    impl<'a> IpServiceData<'a> {
        const AT_IP_ITEM: typed::Cut = typed::Cut::between((1, 7), (2, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_IP_ITEM.get(payload);
            let convert = |bits: u64| super::EngineAnswersItem::from_raw(bits as u16);
            let ip_item = bits.map(convert);
            let held = Self::select_ip_item(payload);
            let when_ip_item = match held {
                0 => {
                    let page = IpItemVin::read(payload)?;
                    WhenIpItem::Vin(page)
                }
                1 => {
                    let page = IpItemWarmth::read(payload)?;
                    WhenIpItem::Warmth(page)
                }
                _ => WhenIpItem::NoPage,
            };
            Ok(Self {
                ip_item,
                when_ip_item,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.ip_item {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 16, "ip_item")?;
                Self::AT_IP_ITEM.put(payload, bits);
            }
            let held = Self::select_ip_item(payload);
            match (held, &self.when_ip_item) {
                (0, WhenIpItem::Vin(page)) => page.write(payload)?,
                (1, WhenIpItem::Warmth(page)) => page.write(payload)?,
                (2, WhenIpItem::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.ip_item.is_some() {
                size.reach(3);
            }
            match &self.when_ip_item {
                WhenIpItem::Vin(page) => page.measure(size),
                WhenIpItem::Warmth(page) => page.measure(size),
                WhenIpItem::NoPage => {}
            }
        }

        #[inline]
        fn select_ip_item(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_IP_ITEM.get(payload) else {
                return 2;
            };
            match bits {
                0x1001 => 1,
                0xF190 => 0,
                _ => 2,
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.ip_item {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.ip_item;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("ip_item");
                tell(name, said);
            }
            match &self.when_ip_item {
                WhenIpItem::Vin(page) => page.each(tell),
                WhenIpItem::Warmth(page) => page.each(tell),
                WhenIpItem::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenIpItem<'a> {
        /// When `ip_item` is 0xF190.
        Vin(IpItemVin<'a>),
        /// When `ip_item` is 0x1001.
        Warmth(IpItemWarmth),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `ip_item` is 0xF190.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct IpItemVin<'a> {
        /// Invented.
        ///
        /// Text, byte by byte.
        ///
        /// `None`: the payload ends before it.
        pub ip_vin: Option<&'a [u8]>,
    }

    impl<'a> IpItemVin<'a> {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let ip_vin = payload.get(3..20);
            Ok(Self { ip_vin })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.ip_vin {
                typed::put_bytes(payload, value, 3, Some(20), "ip_vin")?;
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(20, None);
            if self.ip_vin.is_some() {
                size.reach(20);
            }
        }

        /// The characters, without the NUL bytes at their end.
        #[must_use]
        pub fn ip_vin(&self) -> Option<typed::Text<'a>> {
            let value = self.ip_vin?;
            Some(typed::Text::new(value, typed::Charset::Ascii))
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.ip_vin() {
                let said = typed::Said::from(said);
                let name = typed::Name::of("ip_vin");
                tell(name, said);
            }
        }
    }

    /// When `ip_item` is 0x1001.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct IpItemWarmth {
        /// `raw - 40` °C; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_coolant: Option<u8>,
        /// `raw - 40` °C; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_oil: Option<u8>,
    }

    impl IpItemWarmth {
        const AT_IP_COOLANT: typed::Cut = typed::Cut::between((3, 7), (3, 0));
        const AT_IP_OIL: typed::Cut = typed::Cut::between((4, 7), (4, 0));
        const FORMULA_IP_COOLANT: typed::Formula = typed::Formula::new(1, -40, 1);
        const FORMULA_IP_OIL: typed::Formula = typed::Formula::new(1, -40, 1);

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_IP_COOLANT.get(payload);
            let convert = |bits: u64| bits as u8;
            let ip_coolant = bits.map(convert);
            let bits = Self::AT_IP_OIL.get(payload);
            let convert = |bits: u64| bits as u8;
            let ip_oil = bits.map(convert);
            Ok(Self { ip_coolant, ip_oil })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.ip_coolant {
                let bits = typed::unsigned_bits(u64::from(value), 8, "ip_coolant")?;
                Self::AT_IP_COOLANT.put(payload, bits);
            }
            if let Some(value) = self.ip_oil {
                let bits = typed::unsigned_bits(u64::from(value), 8, "ip_oil")?;
                Self::AT_IP_OIL.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(5, None);
            if self.ip_coolant.is_some() {
                size.reach(4);
            }
            if self.ip_oil.is_some() {
                size.reach(5);
            }
        }

        /// The value in °C.
        #[must_use]
        pub fn ip_coolant(&self) -> Option<typed::Reading<f64>> {
            let value = self.ip_coolant?;
            Some(match value {
                255 => typed::Reading::NoReading,
                raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
            })
        }

        /// Sets `ip_coolant` to the raw number nearest to a value in °C.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_ip_coolant(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |raw: i128| !matches!(raw, 255);
            let mut raw: u8 = 0;
            let formula = Self::FORMULA_IP_COOLANT;
            let fit = typed::set(&mut raw, value, formula, range, is_value);
            if fit != wirelore_bits::Fit::OutOfRange {
                self.ip_coolant = Some(raw);
            }
            fit
        }

        /// Whether the value lies outside its range, -40 to 150 in °C.
        #[must_use]
        pub fn ip_coolant_is_outside(&self) -> bool {
            let is_outside = |raw: u8| matches!(raw, 191..=254);
            let raw = self.ip_coolant;
            raw.is_some_and(is_outside)
        }

        /// The value in °C.
        #[must_use]
        pub fn ip_oil(&self) -> Option<typed::Reading<f64>> {
            let value = self.ip_oil?;
            Some(match value {
                255 => typed::Reading::NoReading,
                raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
            })
        }

        /// Sets `ip_oil` to the raw number nearest to a value in °C.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_ip_oil(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |raw: i128| !matches!(raw, 255);
            let mut raw: u8 = 0;
            let formula = Self::FORMULA_IP_OIL;
            let fit = typed::set(&mut raw, value, formula, range, is_value);
            if fit != wirelore_bits::Fit::OutOfRange {
                self.ip_oil = Some(raw);
            }
            fit
        }

        /// Whether the value lies outside its range, -40 to 180 in °C.
        #[must_use]
        pub fn ip_oil_is_outside(&self) -> bool {
            let is_outside = |raw: u8| matches!(raw, 221..=254);
            let raw = self.ip_oil;
            raw.is_some_and(is_outside)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.ip_coolant() {
                let said = typed::Said::from(said);
                let is_outside = self.ip_coolant_is_outside();
                let said = said.outside(is_outside);
                let name = typed::Name::of("ip_coolant");
                tell(name, said);
            }
            if let Some(said) = self.ip_oil() {
                let said = typed::Said::from(said);
                let is_outside = self.ip_oil_is_outside();
                let said = said.outside(is_outside);
                let name = typed::Name::of("ip_oil");
                tell(name, said);
            }
        }
    }

    /// When `ip_service` is 0x59.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct IpServiceCodes<'a> {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_told_report: Option<u8>,
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_status_mask: Option<u8>,
        /// As many as there are.
        pub ip_code_elements: typed::Repeated<'a, IpCodeElement>,
    }

    impl<'a> IpServiceCodes<'a> {
        const AT_IP_TOLD_REPORT: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_IP_STATUS_MASK: typed::Cut = typed::Cut::between((2, 7), (2, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_IP_TOLD_REPORT.get(payload);
            let convert = |bits: u64| bits as u8;
            let ip_told_report = bits.map(convert);
            let bits = Self::AT_IP_STATUS_MASK.get(payload);
            let convert = |bits: u64| bits as u8;
            let ip_status_mask = bits.map(convert);
            let ip_code_elements = typed::Repeated::to_end(payload, 3, (4, 4), 15);
            Ok(Self {
                ip_told_report,
                ip_status_mask,
                ip_code_elements,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.ip_told_report {
                let bits = typed::unsigned_bits(u64::from(value), 8, "ip_told_report")?;
                Self::AT_IP_TOLD_REPORT.put(payload, bits);
            }
            if let Some(value) = self.ip_status_mask {
                let bits = typed::unsigned_bits(u64::from(value), 8, "ip_status_mask")?;
                Self::AT_IP_STATUS_MASK.put(payload, bits);
            }
            let elements = &self.ip_code_elements;
            elements.write(payload, (3, 4), 15, "ip_code_elements")?;
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.ip_told_report.is_some() {
                size.reach(2);
            }
            if self.ip_status_mask.is_some() {
                size.reach(3);
            }
            let elements = &self.ip_code_elements;
            elements.measure(size, 3, (4, 4));
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.ip_told_report {
                let said = typed::Said::from(said);
                let name = typed::Name::of("ip_told_report");
                tell(name, said);
            }
            if let Some(said) = self.ip_status_mask {
                let said = typed::Said::from(said);
                let name = typed::Name::of("ip_status_mask");
                tell(name, said);
            }
            let elements = self.ip_code_elements.iter();
            for (index, element) in elements.enumerate() {
                element.each(&mut |name, said| tell(name.in_element(index), said));
            }
        }
    }

    /// One element of a repeated group.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct IpCodeElement {
        /// `trouble code`; 24 bits.
        pub ip_code: u32,
        /// `raw`; 1 bit.
        pub ip_failed: bool,
        /// `raw`; 1 bit.
        pub ip_pending: bool,
        /// `raw`; 1 bit.
        pub ip_stored: bool,
    }

    impl IpCodeElement {
        const AT_IP_CODE: typed::Cut = typed::Cut::between((0, 7), (2, 0));
        const AT_IP_FAILED: typed::Cut = typed::Cut::between((3, 0), (3, 0));
        const AT_IP_PENDING: typed::Cut = typed::Cut::between((3, 2), (3, 2));
        const AT_IP_STORED: typed::Cut = typed::Cut::between((3, 3), (3, 3));

        /// The trouble code.
        #[must_use]
        pub fn ip_code(&self) -> typed::Reading<wirelore_bits::TroubleCode> {
            let raw = self.ip_code;
            let code = wirelore_bits::TroubleCode::of_bits(u64::from(raw), 24);
            code.map_or(typed::Reading::Undefined, typed::Reading::Value)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.ip_code());
            let name = typed::Name::of("ip_code");
            tell(name, said);
            let said = typed::Said::from(self.ip_failed);
            let name = typed::Name::of("ip_failed");
            tell(name, said);
            let said = typed::Said::from(self.ip_pending);
            let name = typed::Name::of("ip_pending");
            tell(name, said);
            let said = typed::Said::from(self.ip_stored);
            let name = typed::Name::of("ip_stored");
            tell(name, said);
        }
    }

    impl<'a> typed::Element<'a> for IpCodeElement {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 4)?;
            let ip_code = Self::AT_IP_CODE.of(payload) as u32;
            let ip_failed = Self::AT_IP_FAILED.of(payload) != 0;
            let ip_pending = Self::AT_IP_PENDING.of(payload) != 0;
            let ip_stored = Self::AT_IP_STORED.of(payload) != 0;
            Ok(Self {
                ip_code,
                ip_failed,
                ip_pending,
                ip_stored,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.ip_code), 24, "ip_code[1]")?;
            Self::AT_IP_CODE.put(payload, bits);
            let bits = u64::from(self.ip_failed);
            Self::AT_IP_FAILED.put(payload, bits);
            let bits = u64::from(self.ip_pending);
            Self::AT_IP_PENDING.put(payload, bits);
            let bits = u64::from(self.ip_stored);
            Self::AT_IP_STORED.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(4, None);
        }
    }

    /// When `ip_service` is 0x7F.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct IpServiceRefused {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_refused_service: Option<u8>,
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub ip_reason: Option<super::EngineAnswersReason>,
    }

    impl IpServiceRefused {
        const AT_IP_REFUSED_SERVICE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_IP_REASON: typed::Cut = typed::Cut::between((2, 7), (2, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_IP_REFUSED_SERVICE.get(payload);
            let convert = |bits: u64| bits as u8;
            let ip_refused_service = bits.map(convert);
            let bits = Self::AT_IP_REASON.get(payload);
            let convert = |bits: u64| super::EngineAnswersReason::from_raw(bits as u8);
            let ip_reason = bits.map(convert);
            Ok(Self {
                ip_refused_service,
                ip_reason,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.ip_refused_service {
                let bits = typed::unsigned_bits(u64::from(value), 8, "ip_refused_service")?;
                Self::AT_IP_REFUSED_SERVICE.put(payload, bits);
            }
            if let Some(value) = self.ip_reason {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 8, "ip_reason")?;
                Self::AT_IP_REASON.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            if self.ip_refused_service.is_some() {
                size.reach(2);
            }
            if self.ip_reason.is_some() {
                size.reach(3);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.ip_refused_service {
                let said = typed::Said::from(said);
                let name = typed::Name::of("ip_refused_service");
                tell(name, said);
            }
            if let Some(said) = self.ip_reason {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.ip_reason;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("ip_reason");
                tell(name, said);
            }
        }
    }
}

/// The frames on network `drive`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum DriveFrame<'a> {
    /// `wheel_speeds`.
    WheelSpeeds(WheelSpeeds),
    /// `brake_state`.
    BrakeState(BrakeState),
    /// `vehicle_motion`.
    VehicleMotion(VehicleMotion),
    /// `steering_wheel`.
    SteeringWheel(SteeringWheel),
    /// `park_brake_state`.
    ParkBrakeState(ParkBrakeState),
    /// `belts`.
    Belts(Belts),
    /// `engine_state`.
    EngineState(EngineState),
    /// `engine_torque`.
    EngineTorque(EngineTorque),
    /// `shift_request`.
    ShiftRequest(ShiftRequest),
    /// `selector_lever`.
    SelectorLever(SelectorLever),
    /// `engine_temperatures`.
    EngineTemperatures(EngineTemperatures),
    /// `charging`.
    Charging(Charging),
    /// `gearbox_details`.
    GearboxDetails(GearboxDetails),
    /// `engine_identity`.
    EngineIdentity(EngineIdentity<'a>),
    /// `exhaust`.
    Exhaust(Exhaust),
    /// `cruise`.
    Cruise(Cruise),
    /// `key_state`.
    KeyState(KeyState),
    /// `doors`.
    Doors(Doors),
    /// `engine_questions`.
    EngineQuestions(EngineQuestions),
    /// `engine_answers`.
    EngineAnswers(EngineAnswers<'a>),
}

impl<'a> DriveFrame<'a> {
    /// The frame with an identifier of 11 or 29 bits; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode(
        id: u32,
        extended: bool,
        payload: &'a [u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        Ok(Some(match (id, extended) {
            (0x50, false) => {
                let frame = Belts::decode(payload)?;
                Self::Belts(frame)
            }
            (0xA5, false) => {
                let frame = SteeringWheel::decode(payload)?;
                Self::SteeringWheel(frame)
            }
            (0xB2, false) => {
                let frame = VehicleMotion::decode(payload)?;
                Self::VehicleMotion(frame)
            }
            (0xC8, false) => {
                let frame = ShiftRequest::decode(payload)?;
                Self::ShiftRequest(frame)
            }
            (0xD0, false) => {
                let frame = EngineTorque::decode(payload)?;
                Self::EngineTorque(frame)
            }
            (0x110, false) => {
                let frame = EngineState::decode(payload)?;
                Self::EngineState(frame)
            }
            (0x130, false) => {
                let frame = KeyState::decode(payload)?;
                Self::KeyState(frame)
            }
            (0x1A0, false) => {
                let frame = BrakeState::decode(payload)?;
                Self::BrakeState(frame)
            }
            (0x1B4, false) => {
                let frame = WheelSpeeds::decode(payload)?;
                Self::WheelSpeeds(frame)
            }
            (0x1C2, false) => {
                let frame = SelectorLever::decode(payload)?;
                Self::SelectorLever(frame)
            }
            (0x210, false) => {
                let frame = Cruise::decode(payload)?;
                Self::Cruise(frame)
            }
            (0x2D4, false) => {
                let frame = Charging::decode(payload)?;
                Self::Charging(frame)
            }
            (0x2E0, false) => {
                let frame = ParkBrakeState::decode(payload)?;
                Self::ParkBrakeState(frame)
            }
            (0x3D0, false) => {
                let frame = EngineTemperatures::decode(payload)?;
                Self::EngineTemperatures(frame)
            }
            (0x3E8, false) => {
                let frame = Exhaust::decode(payload)?;
                Self::Exhaust(frame)
            }
            (0x3F1, false) => {
                let frame = GearboxDetails::decode(payload)?;
                Self::GearboxDetails(frame)
            }
            (0x560, false) => {
                let frame = Doors::decode(payload)?;
                Self::Doors(frame)
            }
            (0x6F1, false) => {
                let frame = EngineIdentity::decode(payload)?;
                Self::EngineIdentity(frame)
            }
            (0x7E0, false) => {
                let frame = EngineQuestions::decode(payload)?;
                Self::EngineQuestions(frame)
            }
            (0x7E8, false) => {
                let frame = EngineAnswers::decode(payload)?;
                Self::EngineAnswers(frame)
            }
            _ => return Ok(None),
        }))
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::WheelSpeeds(frame) => frame.each(tell),
            Self::BrakeState(frame) => frame.each(tell),
            Self::VehicleMotion(frame) => frame.each(tell),
            Self::SteeringWheel(frame) => frame.each(tell),
            Self::ParkBrakeState(frame) => frame.each(tell),
            Self::Belts(frame) => frame.each(tell),
            Self::EngineState(frame) => frame.each(tell),
            Self::EngineTorque(frame) => frame.each(tell),
            Self::ShiftRequest(frame) => frame.each(tell),
            Self::SelectorLever(frame) => frame.each(tell),
            Self::EngineTemperatures(frame) => frame.each(tell),
            Self::Charging(frame) => frame.each(tell),
            Self::GearboxDetails(frame) => frame.each(tell),
            Self::EngineIdentity(frame) => frame.each(tell),
            Self::Exhaust(frame) => frame.each(tell),
            Self::Cruise(frame) => frame.each(tell),
            Self::KeyState(frame) => frame.each(tell),
            Self::Doors(frame) => frame.each(tell),
            Self::EngineQuestions(frame) => frame.each(tell),
            Self::EngineAnswers(frame) => frame.each(tell),
        }
    }
}

/// The frames on network `comfort`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum ComfortFrame {
    /// `engine_state`.
    EngineState(EngineState),
    /// `selector_lever`.
    SelectorLever(SelectorLever),
    /// `engine_temperatures`.
    EngineTemperatures(EngineTemperatures),
    /// `charging`.
    Charging(Charging),
    /// `key_state`.
    KeyState(KeyState),
    /// `stalks`.
    Stalks(Stalks),
    /// `doors`.
    Doors(Doors),
    /// `lights`.
    Lights(Lights),
    /// `wipers`.
    Wipers(Wipers),
    /// `mirrors`.
    Mirrors(Mirrors),
    /// `cluster_display`.
    ClusterDisplay(ClusterDisplay),
    /// `dash_speed`.
    DashSpeed(DashSpeed),
    /// `clock`.
    Clock(Clock),
    /// `trip`.
    Trip(Trip),
    /// `service_due`.
    ServiceDue(ServiceDue),
    /// `climate_state`.
    ClimateState(ClimateState),
    /// `tyres`.
    Tyres(Tyres),
    /// `seat_left_state`.
    SeatLeftState(SeatLeftState),
    /// `park_distances`.
    ParkDistances(ParkDistances),
    /// `trailer_state`.
    TrailerState(TrailerState),
    /// `cargo_climate`.
    CargoClimate(CargoClimate),
    /// `awake_call`.
    AwakeCall(AwakeCall),
}

impl ComfortFrame {
    /// The frame with an identifier of 11 or 29 bits; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode(
        id: u32,
        extended: bool,
        payload: &[u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        Ok(Some(match (id, extended) {
            (0x130, false) => {
                let frame = KeyState::decode(payload)?;
                Self::KeyState(frame)
            }
            (0x1C2, false) => {
                let frame = SelectorLever::decode(payload)?;
                Self::SelectorLever(frame)
            }
            (0x1D6, false) => {
                let frame = Stalks::decode(payload)?;
                Self::Stalks(frame)
            }
            (0x2A0, false) => {
                let frame = Doors::decode(payload)?;
                Self::Doors(frame)
            }
            (0x2B4, false) => {
                let frame = Lights::decode(payload)?;
                Self::Lights(frame)
            }
            (0x2C8, false) => {
                let frame = Wipers::decode(payload)?;
                Self::Wipers(frame)
            }
            (0x2D8, false) => {
                let frame = Mirrors::decode(payload)?;
                Self::Mirrors(frame)
            }
            (0x2F0, false) => {
                let frame = EngineState::decode(payload)?;
                Self::EngineState(frame)
            }
            (0x320, false) => {
                let frame = DashSpeed::decode(payload)?;
                Self::DashSpeed(frame)
            }
            (0x370, false) => {
                let frame = ClimateState::decode(payload)?;
                Self::ClimateState(frame)
            }
            (0x3A8, false) => {
                let frame = ClusterDisplay::decode(payload)?;
                Self::ClusterDisplay(frame)
            }
            (0x3B8, false) => {
                let frame = Trip::decode(payload)?;
                Self::Trip(frame)
            }
            (0x3D8, false) => {
                let frame = EngineTemperatures::decode(payload)?;
                Self::EngineTemperatures(frame)
            }
            (0x3DC, false) => {
                let frame = Charging::decode(payload)?;
                Self::Charging(frame)
            }
            (0x3E0, false) => {
                let frame = Clock::decode(payload)?;
                Self::Clock(frame)
            }
            (0x4A0, false) => {
                let frame = ParkDistances::decode(payload)?;
                Self::ParkDistances(frame)
            }
            (0x4C0, false) => {
                let frame = SeatLeftState::decode(payload)?;
                Self::SeatLeftState(frame)
            }
            (0x4E2, false) => {
                let frame = Tyres::decode(payload)?;
                Self::Tyres(frame)
            }
            (0x4F0, false) => {
                let frame = CargoClimate::decode(payload)?;
                Self::CargoClimate(frame)
            }
            (0x500..=0x51F, false) => {
                let frame = AwakeCall::decode(payload)?;
                Self::AwakeCall(frame)
            }
            (0x5D0, false) => {
                let frame = TrailerState::decode(payload)?;
                Self::TrailerState(frame)
            }
            (0x5F0, false) => {
                let frame = ServiceDue::decode(payload)?;
                Self::ServiceDue(frame)
            }
            _ => return Ok(None),
        }))
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::EngineState(frame) => frame.each(tell),
            Self::SelectorLever(frame) => frame.each(tell),
            Self::EngineTemperatures(frame) => frame.each(tell),
            Self::Charging(frame) => frame.each(tell),
            Self::KeyState(frame) => frame.each(tell),
            Self::Stalks(frame) => frame.each(tell),
            Self::Doors(frame) => frame.each(tell),
            Self::Lights(frame) => frame.each(tell),
            Self::Wipers(frame) => frame.each(tell),
            Self::Mirrors(frame) => frame.each(tell),
            Self::ClusterDisplay(frame) => frame.each(tell),
            Self::DashSpeed(frame) => frame.each(tell),
            Self::Clock(frame) => frame.each(tell),
            Self::Trip(frame) => frame.each(tell),
            Self::ServiceDue(frame) => frame.each(tell),
            Self::ClimateState(frame) => frame.each(tell),
            Self::Tyres(frame) => frame.each(tell),
            Self::SeatLeftState(frame) => frame.each(tell),
            Self::ParkDistances(frame) => frame.each(tell),
            Self::TrailerState(frame) => frame.each(tell),
            Self::CargoClimate(frame) => frame.each(tell),
            Self::AwakeCall(frame) => frame.each(tell),
        }
    }
}

/// The frames on network `camera`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum CameraFrame<'a> {
    /// `wheel_speeds`.
    WheelSpeeds(WheelSpeeds),
    /// `brake_state`.
    BrakeState(BrakeState),
    /// `vehicle_motion`.
    VehicleMotion(VehicleMotion),
    /// `lane_picture`.
    LanePicture(LanePicture),
    /// `objects`.
    Objects(Objects),
    /// `camera_health`.
    CameraHealth(CameraHealth<'a>),
}

impl<'a> CameraFrame<'a> {
    /// The frame with an identifier of 11 or 29 bits; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode(
        id: u32,
        extended: bool,
        payload: &'a [u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        Ok(Some(match (id, extended) {
            (0xB2, false) => {
                let frame = VehicleMotion::decode(payload)?;
                Self::VehicleMotion(frame)
            }
            (0x120, false) => {
                let frame = LanePicture::decode(payload)?;
                Self::LanePicture(frame)
            }
            (0x140, false) => {
                let frame = Objects::decode(payload)?;
                Self::Objects(frame)
            }
            (0x150, false) => {
                let frame = CameraHealth::decode(payload)?;
                Self::CameraHealth(frame)
            }
            (0x1A0, false) => {
                let frame = BrakeState::decode(payload)?;
                Self::BrakeState(frame)
            }
            (0x1B4, false) => {
                let frame = WheelSpeeds::decode(payload)?;
                Self::WheelSpeeds(frame)
            }
            _ => return Ok(None),
        }))
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::WheelSpeeds(frame) => frame.each(tell),
            Self::BrakeState(frame) => frame.each(tell),
            Self::VehicleMotion(frame) => frame.each(tell),
            Self::LanePicture(frame) => frame.each(tell),
            Self::Objects(frame) => frame.each(tell),
            Self::CameraHealth(frame) => frame.each(tell),
        }
    }
}

/// The frames on network `seat`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum SeatFrame<'a> {
    /// `seat_command`.
    SeatCommand(SeatCommand),
    /// `height_state`.
    HeightState(HeightState),
    /// `backrest_state`.
    BackrestState(BackrestState),
    /// `heater_state`.
    HeaterState(HeaterState),
    /// `lumbar_state`.
    LumbarState(LumbarState),
    /// `seat_request`.
    SeatRequest(SeatRequest<'a>),
    /// `seat_response`.
    SeatResponse(SeatResponse<'a>),
}

impl<'a> SeatFrame<'a> {
    /// The frame with an identifier (without its parity bits); `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode(id: u8, payload: &'a [u8]) -> Result<Option<Self>, typed::TooShort> {
        Ok(Some(match id {
            0x20 => {
                let frame = SeatCommand::decode(payload)?;
                Self::SeatCommand(frame)
            }
            0x21 => {
                let frame = HeightState::decode(payload)?;
                Self::HeightState(frame)
            }
            0x22 => {
                let frame = BackrestState::decode(payload)?;
                Self::BackrestState(frame)
            }
            0x23 => {
                let frame = HeaterState::decode(payload)?;
                Self::HeaterState(frame)
            }
            0x24 => {
                let frame = LumbarState::decode(payload)?;
                Self::LumbarState(frame)
            }
            0x3C => {
                let frame = SeatRequest::decode(payload)?;
                Self::SeatRequest(frame)
            }
            0x3D => {
                let frame = SeatResponse::decode(payload)?;
                Self::SeatResponse(frame)
            }
            _ => return Ok(None),
        }))
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::SeatCommand(frame) => frame.each(tell),
            Self::HeightState(frame) => frame.each(tell),
            Self::BackrestState(frame) => frame.each(tell),
            Self::HeaterState(frame) => frame.each(tell),
            Self::LumbarState(frame) => frame.each(tell),
            Self::SeatRequest(frame) => frame.each(tell),
            Self::SeatResponse(frame) => frame.each(tell),
        }
    }
}

/// The frames on network `heater_line`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum HeaterLineFrame<'a> {
    /// `heater_question`.
    HeaterQuestion(HeaterQuestion),
    /// `heater_ready`.
    HeaterReady(HeaterReady<'a>),
    /// `heater_burner`.
    HeaterBurner(HeaterBurner),
    /// `heater_life`.
    HeaterLife(HeaterLife),
}

impl<'a> HeaterLineFrame<'a> {
    /// The message of a single-wire network, by what its header tells and its data begin with; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode(
        source: Option<u8>,
        target: Option<u8>,
        payload: &'a [u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        let mut is_it = true;
        is_it &= source == Some(0x2A);
        is_it &= target == Some(0x10);
        is_it &= payload.starts_with(&[0x61, 0x01]);
        if is_it {
            let frame = HeaterBurner::decode(payload)?;
            return Ok(Some(Self::HeaterBurner(frame)));
        }
        let mut is_it = true;
        is_it &= source == Some(0x2A);
        is_it &= target == Some(0x10);
        is_it &= payload.starts_with(&[0x61, 0x02]);
        if is_it {
            let frame = HeaterLife::decode(payload)?;
            return Ok(Some(Self::HeaterLife(frame)));
        }
        let mut is_it = true;
        is_it &= source == Some(0x2A);
        is_it &= target == Some(0x10);
        is_it &= payload.starts_with(&[0xC1]);
        if is_it {
            let frame = HeaterReady::decode(payload)?;
            return Ok(Some(Self::HeaterReady(frame)));
        }
        let mut is_it = true;
        is_it &= source == Some(0x10);
        is_it &= target == Some(0x2A);
        if is_it {
            let frame = HeaterQuestion::decode(payload)?;
            return Ok(Some(Self::HeaterQuestion(frame)));
        }
        Ok(None)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::HeaterQuestion(frame) => frame.each(tell),
            Self::HeaterReady(frame) => frame.each(tell),
            Self::HeaterBurner(frame) => frame.each(tell),
            Self::HeaterLife(frame) => frame.each(tell),
        }
    }
}

/// The frames on network `chassis`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum ChassisFrame {
    /// `wheel_travel`.
    WheelTravel(WheelTravel),
    /// `dive_request`.
    DiveRequest(DiveRequest),
    /// `damper_currents`.
    DamperCurrents(DamperCurrents),
    /// `valves_front`.
    ValvesFront(ValvesFront),
    /// `valves_rear`.
    ValvesRear(ValvesRear),
    /// `damping_change`.
    DampingChange(DampingChange),
}

impl ChassisFrame {
    /// The frame in a slot of a cycle, on channel A or B; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode(
        slot: u16,
        cycle: u8,
        on_b: bool,
        payload: &[u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        Ok(Some(match slot {
            42 if cycle % 4 == 1 && !on_b => {
                let frame = ValvesFront::decode(payload)?;
                Self::ValvesFront(frame)
            }
            42 if cycle % 4 == 3 && !on_b => {
                let frame = ValvesRear::decode(payload)?;
                Self::ValvesRear(frame)
            }
            12 if cycle.is_multiple_of(2) && !on_b => {
                let frame = DiveRequest::decode(payload)?;
                Self::DiveRequest(frame)
            }
            31 if cycle.is_multiple_of(2) => {
                let frame = DamperCurrents::decode(payload)?;
                Self::DamperCurrents(frame)
            }
            7 => {
                let frame = WheelTravel::decode(payload)?;
                Self::WheelTravel(frame)
            }
            71 if on_b => {
                let frame = DampingChange::decode(payload)?;
                Self::DampingChange(frame)
            }
            _ => return Ok(None),
        }))
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::WheelTravel(frame) => frame.each(tell),
            Self::DiveRequest(frame) => frame.each(tell),
            Self::DamperCurrents(frame) => frame.each(tell),
            Self::ValvesFront(frame) => frame.each(tell),
            Self::ValvesRear(frame) => frame.each(tell),
            Self::DampingChange(frame) => frame.each(tell),
        }
    }
}

/// The frames on network `sound`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum SoundFrame<'a> {
    /// `volume_wish`.
    VolumeWish(VolumeWish),
    /// `volume`.
    Volume(Volume),
    /// `track_time`.
    TrackTime(TrackTime),
    /// `track_title`.
    TrackTitle(TrackTitle<'a>),
    /// `player_buffer`.
    PlayerBuffer(PlayerBuffer),
}

impl<'a> SoundFrame<'a> {
    /// The control message of a ring; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode(
        block: u8,
        instance: u8,
        function: u16,
        operation: u8,
        payload: &'a [u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        let mut is_it = true;
        is_it &= block == 0x22;
        is_it &= instance == 0x1;
        is_it &= function == 0x400;
        is_it &= operation == 0x2;
        if is_it {
            let frame = VolumeWish::decode(payload)?;
            return Ok(Some(Self::VolumeWish(frame)));
        }
        let mut is_it = true;
        is_it &= block == 0x22;
        is_it &= instance == 0x1;
        is_it &= function == 0x400;
        is_it &= operation == 0xC;
        if is_it {
            let frame = Volume::decode(payload)?;
            return Ok(Some(Self::Volume(frame)));
        }
        let mut is_it = true;
        is_it &= block == 0x31;
        is_it &= instance == 0x2;
        is_it &= function == 0x202;
        is_it &= operation == 0xC;
        if is_it {
            let frame = TrackTime::decode(payload)?;
            return Ok(Some(Self::TrackTime(frame)));
        }
        let mut is_it = true;
        is_it &= block == 0x31;
        is_it &= instance == 0x2;
        is_it &= function == 0x203;
        is_it &= operation == 0xC;
        if is_it {
            let frame = TrackTitle::decode(payload)?;
            return Ok(Some(Self::TrackTitle(frame)));
        }
        let mut is_it = true;
        is_it &= block == 0x31;
        is_it &= function == 0x210;
        is_it &= operation == 0xC;
        if is_it {
            let frame = PlayerBuffer::decode(payload)?;
            return Ok(Some(Self::PlayerBuffer(frame)));
        }
        Ok(None)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::VolumeWish(frame) => frame.each(tell),
            Self::Volume(frame) => frame.each(tell),
            Self::TrackTime(frame) => frame.each(tell),
            Self::TrackTitle(frame) => frame.each(tell),
            Self::PlayerBuffer(frame) => frame.each(tell),
        }
    }
}

/// The frames on network `backbone`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum BackboneFrame<'a> {
    /// `vehicle_state`.
    VehicleState(VehicleState),
    /// `speeds_question`.
    SpeedsQuestion(SpeedsQuestion),
    /// `speeds_answer`.
    SpeedsAnswer(SpeedsAnswer<'a>),
    /// `set_cab_target`.
    SetCabTarget(SetCabTarget),
    /// `cab_target_set`.
    CabTargetSet(CabTargetSet),
    /// `cab_target_refused`.
    CabTargetRefused(CabTargetRefused),
    /// `position`.
    Position(Position),
    /// `let_me_in`.
    LetMeIn(LetMeIn),
    /// `you_are_in`.
    YouAreIn(YouAreIn),
    /// `taken_on`.
    TakenOn(TakenOn),
    /// `questions_over_ip`.
    QuestionsOverIp(QuestionsOverIp),
    /// `answers_over_ip`.
    AnswersOverIp(AnswersOverIp<'a>),
}

impl<'a> BackboneFrame<'a> {
    /// The message of a service; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode_service(
        service: u16,
        method: u16,
        message_type: u8,
        payload: &'a [u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        let mut is_it = true;
        is_it &= service == 0x4A30;
        is_it &= method == 0x2;
        is_it &= message_type == 0x0;
        if is_it {
            let frame = SpeedsQuestion::decode(payload)?;
            return Ok(Some(Self::SpeedsQuestion(frame)));
        }
        let mut is_it = true;
        is_it &= service == 0x4A30;
        is_it &= method == 0x2;
        is_it &= message_type == 0x80;
        if is_it {
            let frame = SpeedsAnswer::decode(payload)?;
            return Ok(Some(Self::SpeedsAnswer(frame)));
        }
        let mut is_it = true;
        is_it &= service == 0x4A20;
        is_it &= method == 0x1;
        is_it &= message_type == 0x0;
        if is_it {
            let frame = SetCabTarget::decode(payload)?;
            return Ok(Some(Self::SetCabTarget(frame)));
        }
        let mut is_it = true;
        is_it &= service == 0x4A20;
        is_it &= method == 0x1;
        is_it &= message_type == 0x80;
        if is_it {
            let frame = CabTargetSet::decode(payload)?;
            return Ok(Some(Self::CabTargetSet(frame)));
        }
        let mut is_it = true;
        is_it &= service == 0x4A20;
        is_it &= method == 0x1;
        is_it &= message_type == 0x81;
        if is_it {
            let frame = CabTargetRefused::decode(payload)?;
            return Ok(Some(Self::CabTargetRefused(frame)));
        }
        let mut is_it = true;
        is_it &= service == 0x4A10;
        is_it &= method == 0x8001;
        if is_it {
            let frame = VehicleState::decode(payload)?;
            return Ok(Some(Self::VehicleState(frame)));
        }
        Ok(None)
    }

    /// What goes to a port, or comes from one; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode_port(
        is_tcp: bool,
        from: u16,
        to: u16,
        payload: &'a [u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        let mut is_it = true;
        is_it &= to == 41200;
        is_it &= !is_tcp;
        if is_it {
            let frame = Position::decode(payload)?;
            return Ok(Some(Self::Position(frame)));
        }
        let mut is_it = true;
        is_it &= from == 41200;
        is_it &= !is_tcp;
        if is_it {
            let frame = Position::decode(payload)?;
            return Ok(Some(Self::Position(frame)));
        }
        Ok(None)
    }

    /// The message of DoIP (ISO 13400-2); `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode_doip(
        payload_type: u16,
        source: Option<u16>,
        target: Option<u16>,
        payload: &'a [u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        let mut is_it = true;
        is_it &= payload_type == 0x8001;
        is_it &= source == Some(0xE00);
        is_it &= target == Some(0x1010);
        if is_it {
            let frame = QuestionsOverIp::decode(payload)?;
            return Ok(Some(Self::QuestionsOverIp(frame)));
        }
        let mut is_it = true;
        is_it &= payload_type == 0x8001;
        is_it &= source == Some(0x1010);
        is_it &= target == Some(0xE00);
        if is_it {
            let frame = AnswersOverIp::decode(payload)?;
            return Ok(Some(Self::AnswersOverIp(frame)));
        }
        let mut is_it = true;
        is_it &= payload_type == 0x5;
        if is_it {
            let frame = LetMeIn::decode(payload)?;
            return Ok(Some(Self::LetMeIn(frame)));
        }
        let mut is_it = true;
        is_it &= payload_type == 0x6;
        if is_it {
            let frame = YouAreIn::decode(payload)?;
            return Ok(Some(Self::YouAreIn(frame)));
        }
        let mut is_it = true;
        is_it &= payload_type == 0x8002;
        if is_it {
            let frame = TakenOn::decode(payload)?;
            return Ok(Some(Self::TakenOn(frame)));
        }
        Ok(None)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::VehicleState(frame) => frame.each(tell),
            Self::SpeedsQuestion(frame) => frame.each(tell),
            Self::SpeedsAnswer(frame) => frame.each(tell),
            Self::SetCabTarget(frame) => frame.each(tell),
            Self::CabTargetSet(frame) => frame.each(tell),
            Self::CabTargetRefused(frame) => frame.each(tell),
            Self::Position(frame) => frame.each(tell),
            Self::LetMeIn(frame) => frame.each(tell),
            Self::YouAreIn(frame) => frame.each(tell),
            Self::TakenOn(frame) => frame.each(tell),
            Self::QuestionsOverIp(frame) => frame.each(tell),
            Self::AnswersOverIp(frame) => frame.each(tell),
        }
    }
}
