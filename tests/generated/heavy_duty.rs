// Written by wirelore out of the description. Change the description, not this file.
//
// Fields hold what the bits say, methods of the same name what they mean. Needs wirelore-bits; no std, no
// allocation.
//
// Caution: frames sent into a live vehicle can move it, start it or fire airbags. Send on the bench only.

use wirelore_bits::typed;

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineTorqueAndSpeedTorqueMode {
    /// Low idle governor, or no request (0).
    LowIdleOrNone,
    /// Accelerator pedal (1).
    Accelerator,
    /// Cruise control (2).
    CruiseControl,
    /// Power take-off governor (3).
    PowerTakeOff,
    /// Road speed governor (4).
    RoadSpeedGovernor,
    /// Traction control (5).
    TractionControl,
    /// Transmission control (6).
    Transmission,
    /// Anti-lock brakes (7).
    Abs,
    /// Torque limiting (8).
    TorqueLimit,
    /// High speed governor (9).
    HighSpeedGovernor,
    /// Braking system (10).
    BrakingSystem,
    /// Remote accelerator (11).
    RemoteAccelerator,
    /// Service procedure (12).
    ServiceProcedure,
    /// Not defined (13).
    NotDefined,
    /// Other (14).
    Other2,
    /// A raw number without a word.
    Other(u8),
}

impl EngineTorqueAndSpeedTorqueMode {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::LowIdleOrNone,
            1 => Self::Accelerator,
            2 => Self::CruiseControl,
            3 => Self::PowerTakeOff,
            4 => Self::RoadSpeedGovernor,
            5 => Self::TractionControl,
            6 => Self::Transmission,
            7 => Self::Abs,
            8 => Self::TorqueLimit,
            9 => Self::HighSpeedGovernor,
            10 => Self::BrakingSystem,
            11 => Self::RemoteAccelerator,
            12 => Self::ServiceProcedure,
            13 => Self::NotDefined,
            14 => Self::Other2,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::LowIdleOrNone => 0,
            Self::Accelerator => 1,
            Self::CruiseControl => 2,
            Self::PowerTakeOff => 3,
            Self::RoadSpeedGovernor => 4,
            Self::TractionControl => 5,
            Self::Transmission => 6,
            Self::Abs => 7,
            Self::TorqueLimit => 8,
            Self::HighSpeedGovernor => 9,
            Self::BrakingSystem => 10,
            Self::RemoteAccelerator => 11,
            Self::ServiceProcedure => 12,
            Self::NotDefined => 13,
            Self::Other2 => 14,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::LowIdleOrNone => Some("low_idle_or_none"),
            Self::Accelerator => Some("accelerator"),
            Self::CruiseControl => Some("cruise_control"),
            Self::PowerTakeOff => Some("power_take_off"),
            Self::RoadSpeedGovernor => Some("road_speed_governor"),
            Self::TractionControl => Some("traction_control"),
            Self::Transmission => Some("transmission"),
            Self::Abs => Some("abs"),
            Self::TorqueLimit => Some("torque_limit"),
            Self::HighSpeedGovernor => Some("high_speed_governor"),
            Self::BrakingSystem => Some("braking_system"),
            Self::RemoteAccelerator => Some("remote_accelerator"),
            Self::ServiceProcedure => Some("service_procedure"),
            Self::NotDefined => Some("not_defined"),
            Self::Other2 => Some("other"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum EngineTorqueAndSpeedStarterMode {
    /// Start not requested (0).
    NotRequested,
    /// Starter active, gear not engaged (1).
    ActiveNotEngaged,
    /// Starter active, gear engaged (2).
    ActiveEngaged,
    /// Start finished (3).
    Finished,
    /// Held back: the engine runs (4).
    HeldBackEngineRuns,
    /// Held back: the engine is not ready (5).
    HeldBackEngineNotReady,
    /// Held back: the driveline is engaged (6).
    HeldBackDriveline,
    /// Held back: immobiliser (7).
    HeldBackImmobiliser,
    /// Held back: the starter is too hot (8).
    HeldBackTooHot,
    /// Held back, reason unknown (12).
    HeldBack,
    /// Error, as older units tell it (13).
    ErrorOfOld,
    /// A raw number without a word.
    Other(u8),
}

impl EngineTorqueAndSpeedStarterMode {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::NotRequested,
            1 => Self::ActiveNotEngaged,
            2 => Self::ActiveEngaged,
            3 => Self::Finished,
            4 => Self::HeldBackEngineRuns,
            5 => Self::HeldBackEngineNotReady,
            6 => Self::HeldBackDriveline,
            7 => Self::HeldBackImmobiliser,
            8 => Self::HeldBackTooHot,
            12 => Self::HeldBack,
            13 => Self::ErrorOfOld,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::NotRequested => 0,
            Self::ActiveNotEngaged => 1,
            Self::ActiveEngaged => 2,
            Self::Finished => 3,
            Self::HeldBackEngineRuns => 4,
            Self::HeldBackEngineNotReady => 5,
            Self::HeldBackDriveline => 6,
            Self::HeldBackImmobiliser => 7,
            Self::HeldBackTooHot => 8,
            Self::HeldBack => 12,
            Self::ErrorOfOld => 13,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::NotRequested => Some("not_requested"),
            Self::ActiveNotEngaged => Some("active_not_engaged"),
            Self::ActiveEngaged => Some("active_engaged"),
            Self::Finished => Some("finished"),
            Self::HeldBackEngineRuns => Some("held_back_engine_runs"),
            Self::HeldBackEngineNotReady => Some("held_back_engine_not_ready"),
            Self::HeldBackDriveline => Some("held_back_driveline"),
            Self::HeldBackImmobiliser => Some("held_back_immobiliser"),
            Self::HeldBackTooHot => Some("held_back_too_hot"),
            Self::HeldBack => Some("held_back"),
            Self::ErrorOfOld => Some("error_of_old"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum AcceleratorAndLoadAcceleratorLowIdleSwitch {
    /// Pedal not in the idle position (0).
    OffIdle,
    /// Pedal in the idle position (1).
    AtIdle,
    /// A raw number without a word.
    Other(u8),
}

impl AcceleratorAndLoadAcceleratorLowIdleSwitch {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::OffIdle,
            1 => Self::AtIdle,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::OffIdle => 0,
            Self::AtIdle => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::OffIdle => Some("off_idle"),
            Self::AtIdle => Some("at_idle"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum AcceleratorAndLoadKickdownSwitch {
    /// No kickdown (0).
    Passive,
    /// Kickdown (1).
    Active,
    /// A raw number without a word.
    Other(u8),
}

impl AcceleratorAndLoadKickdownSwitch {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Passive,
            1 => Self::Active,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Passive => 0,
            Self::Active => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Passive => Some("passive"),
            Self::Active => Some("active"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum AcceleratorAndLoadRoadSpeedLimit {
    /// Limits the speed (0).
    Active,
    /// Does not limit (1).
    Passive,
    /// A raw number without a word.
    Other(u8),
}

impl AcceleratorAndLoadRoadSpeedLimit {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Active,
            1 => Self::Passive,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Active => 0,
            Self::Passive => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Active => Some("active"),
            Self::Passive => Some("passive"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TorqueSpeedControlOverrideControlMode {
    /// Override disabled (0).
    None,
    /// Speed control (1).
    Speed,
    /// Torque control (2).
    Torque,
    /// Speed and torque limit (3).
    Limit,
    /// A raw number without a word.
    Other(u8),
}

impl TorqueSpeedControlOverrideControlMode {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::Speed,
            2 => Self::Torque,
            3 => Self::Limit,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::Speed => 1,
            Self::Torque => 2,
            Self::Limit => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::Speed => Some("speed"),
            Self::Torque => Some("torque"),
            Self::Limit => Some("limit"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TorqueSpeedControlRequestedSpeedControlConditions {
    /// Quick response, driveline disengaged (0).
    Transient,
    /// Stable, driveline disengaged (1).
    StableDisengaged,
    /// Stable, driveline engaged, condition 1 (vehicle) (2).
    StableEngaged1,
    /// Stable, driveline engaged, condition 2 (power take-off) (3).
    StableEngaged2,
    /// A raw number without a word.
    Other(u8),
}

impl TorqueSpeedControlRequestedSpeedControlConditions {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Transient,
            1 => Self::StableDisengaged,
            2 => Self::StableEngaged1,
            3 => Self::StableEngaged2,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Transient => 0,
            Self::StableDisengaged => 1,
            Self::StableEngaged1 => 2,
            Self::StableEngaged2 => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Transient => Some("transient"),
            Self::StableDisengaged => Some("stable_disengaged"),
            Self::StableEngaged1 => Some("stable_engaged_1"),
            Self::StableEngaged2 => Some("stable_engaged_2"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TorqueSpeedControlOverrideModePriority {
    /// Highest (0).
    Highest,
    /// High (1).
    High,
    /// Medium (2).
    Medium,
    /// Low (3).
    Low,
    /// A raw number without a word.
    Other(u8),
}

impl TorqueSpeedControlOverrideModePriority {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Highest,
            1 => Self::High,
            2 => Self::Medium,
            3 => Self::Low,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Highest => 0,
            Self::High => 1,
            Self::Medium => 2,
            Self::Low => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Highest => Some("highest"),
            Self::High => Some("high"),
            Self::Medium => Some("medium"),
            Self::Low => Some("low"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TorqueSpeedControlTransmissionRate {
    /// `every_1000_ms` (0).
    Every1000Ms,
    /// `every_750_ms` (1).
    Every750Ms,
    /// `every_500_ms` (2).
    Every500Ms,
    /// `every_250_ms` (3).
    Every250Ms,
    /// `every_100_ms` (4).
    Every100Ms,
    /// `every_50_ms` (5).
    Every50Ms,
    /// `every_20_ms` (6).
    Every20Ms,
    /// `every_10_ms` (7).
    Every10Ms,
    /// A raw number without a word.
    Other(u8),
}

impl TorqueSpeedControlTransmissionRate {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Every1000Ms,
            1 => Self::Every750Ms,
            2 => Self::Every500Ms,
            3 => Self::Every250Ms,
            4 => Self::Every100Ms,
            5 => Self::Every50Ms,
            6 => Self::Every20Ms,
            7 => Self::Every10Ms,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Every1000Ms => 0,
            Self::Every750Ms => 1,
            Self::Every500Ms => 2,
            Self::Every250Ms => 3,
            Self::Every100Ms => 4,
            Self::Every50Ms => 5,
            Self::Every20Ms => 6,
            Self::Every10Ms => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Every1000Ms => Some("every_1000_ms"),
            Self::Every750Ms => Some("every_750_ms"),
            Self::Every500Ms => Some("every_500_ms"),
            Self::Every250Ms => Some("every_250_ms"),
            Self::Every100Ms => Some("every_100_ms"),
            Self::Every50Ms => Some("every_50_ms"),
            Self::Every20Ms => Some("every_20_ms"),
            Self::Every10Ms => Some("every_10_ms"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TransmissionShaftsDriveline {
    /// Driveline disengaged (0).
    Disengaged,
    /// Driveline engaged (1).
    Engaged,
    /// A raw number without a word.
    Other(u8),
}

impl TransmissionShaftsDriveline {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Disengaged,
            1 => Self::Engaged,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Disengaged => 0,
            Self::Engaged => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Disengaged => Some("disengaged"),
            Self::Engaged => Some("engaged"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TransmissionShaftsShift {
    /// No shift (0).
    None,
    /// Shift in process (1).
    InProcess,
    /// A raw number without a word.
    Other(u8),
}

impl TransmissionShaftsShift {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::None,
            1 => Self::InProcess,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::None => 0,
            Self::InProcess => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::None => Some("none"),
            Self::InProcess => Some("in_process"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TransmissionShaftsMomentaryOverspeed {
    /// Not allowed (0).
    NotAllowed,
    /// Allowed (1).
    Allowed,
    /// A raw number without a word.
    Other(u8),
}

impl TransmissionShaftsMomentaryOverspeed {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::NotAllowed,
            1 => Self::Allowed,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::NotAllowed => 0,
            Self::Allowed => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::NotAllowed => Some("not_allowed"),
            Self::Allowed => Some("allowed"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TransmissionShaftsProgressiveShift {
    /// Enabled (0).
    Enabled,
    /// Disabled (1).
    Disabled,
    /// A raw number without a word.
    Other(u8),
}

impl TransmissionShaftsProgressiveShift {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Enabled,
            1 => Self::Disabled,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Enabled => 0,
            Self::Disabled => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Enabled => Some("enabled"),
            Self::Disabled => Some("disabled"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum TransmissionGearsSelectedGear {
    /// Park (0xFB).
    Park,
    /// A raw number without a word.
    Other(u8),
}

impl TransmissionGearsSelectedGear {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            251 => Self::Park,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Park => 251,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Park => Some("park"),
            Self::Other(_) => None,
        }
    }
}

/// `j1939_activity`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum J1939Activity {
    /// Not active (0).
    Passive,
    /// Active (1).
    Active,
    /// A raw number without a word.
    Other(u8),
}

impl J1939Activity {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Passive,
            1 => Self::Active,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Passive => 0,
            Self::Active => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Passive => Some("passive"),
            Self::Active => Some("active"),
            Self::Other(_) => None,
        }
    }
}

/// `j1939_pedal`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum J1939Pedal {
    /// Pedal released (0).
    Released,
    /// Pedal pressed (1).
    Pressed,
    /// A raw number without a word.
    Other(u8),
}

impl J1939Pedal {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Released,
            1 => Self::Pressed,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Released => 0,
            Self::Pressed => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Released => Some("released"),
            Self::Pressed => Some("pressed"),
            Self::Other(_) => None,
        }
    }
}

/// `j1939_switch`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum J1939Switch {
    /// Off (0).
    Off,
    /// On (1).
    On,
    /// A raw number without a word.
    Other(u8),
}

impl J1939Switch {
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
pub enum BrakeControlAbsOperation {
    /// Not fully operational (0).
    Limited,
    /// Fully operational (1).
    Full,
    /// A raw number without a word.
    Other(u8),
}

impl BrakeControlAbsOperation {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Limited,
            1 => Self::Full,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Limited => 0,
            Self::Full => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Limited => Some("limited"),
            Self::Full => Some("full"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum RetarderBrakeAssist {
    /// Disabled (0).
    Disabled,
    /// Enabled (1).
    Enabled,
    /// A raw number without a word.
    Other(u8),
}

impl RetarderBrakeAssist {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Disabled,
            1 => Self::Enabled,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Disabled => 0,
            Self::Enabled => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Disabled => Some("disabled"),
            Self::Enabled => Some("enabled"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum VehicleDynamicsSteeringSensor {
    /// Angle from where it was switched on (0).
    Relative,
    /// Absolute angle (1).
    Absolute,
    /// A raw number without a word.
    Other(u8),
}

impl VehicleDynamicsSteeringSensor {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Relative,
            1 => Self::Absolute,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Relative => 0,
            Self::Absolute => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Relative => Some("relative"),
            Self::Absolute => Some("absolute"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum CruiseAndVehicleSpeedTwoSpeedAxleSwitch {
    /// Low speed range (0).
    Low,
    /// High speed range (1).
    High,
    /// A raw number without a word.
    Other(u8),
}

impl CruiseAndVehicleSpeedTwoSpeedAxleSwitch {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Low,
            1 => Self::High,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Low => 0,
            Self::High => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Low => Some("low"),
            Self::High => Some("high"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum CruiseAndVehicleSpeedParkingBrakeSwitch {
    /// Parking brake not set (0).
    Released,
    /// Parking brake set (1).
    Applied,
    /// A raw number without a word.
    Other(u8),
}

impl CruiseAndVehicleSpeedParkingBrakeSwitch {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Released,
            1 => Self::Applied,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Released => 0,
            Self::Applied => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Released => Some("released"),
            Self::Applied => Some("applied"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum CruiseAndVehicleSpeedPowerTakeOffGovernor {
    /// Off, or disabled (0).
    Off,
    /// Hold (1).
    Hold,
    /// Remote hold (2).
    RemoteHold,
    /// Standby (3).
    Standby,
    /// Remote standby (4).
    RemoteStandby,
    /// Set (5).
    Set,
    /// Decelerate or coast (6).
    Coast,
    /// Resume (7).
    Resume,
    /// Accelerate (8).
    Accelerate,
    /// Accelerator override (9).
    AcceleratorOverride,
    /// A raw number without a word.
    Other(u8),
}

impl CruiseAndVehicleSpeedPowerTakeOffGovernor {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::Hold,
            2 => Self::RemoteHold,
            3 => Self::Standby,
            4 => Self::RemoteStandby,
            5 => Self::Set,
            6 => Self::Coast,
            7 => Self::Resume,
            8 => Self::Accelerate,
            9 => Self::AcceleratorOverride,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::Hold => 1,
            Self::RemoteHold => 2,
            Self::Standby => 3,
            Self::RemoteStandby => 4,
            Self::Set => 5,
            Self::Coast => 6,
            Self::Resume => 7,
            Self::Accelerate => 8,
            Self::AcceleratorOverride => 9,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::Hold => Some("hold"),
            Self::RemoteHold => Some("remote_hold"),
            Self::Standby => Some("standby"),
            Self::RemoteStandby => Some("remote_standby"),
            Self::Set => Some("set"),
            Self::Coast => Some("coast"),
            Self::Resume => Some("resume"),
            Self::Accelerate => Some("accelerate"),
            Self::AcceleratorOverride => Some("accelerator_override"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum CruiseAndVehicleSpeedCruiseControlState {
    /// Off, or disabled (0).
    Off,
    /// Hold (1).
    Hold,
    /// Accelerate (2).
    Accelerate,
    /// Decelerate or coast (3).
    Decelerate,
    /// Resume (4).
    Resume,
    /// Set (5).
    Set,
    /// Accelerator override (6).
    AcceleratorOverride,
    /// Not available (7).
    NotAvailable,
    /// A raw number without a word.
    Other(u8),
}

impl CruiseAndVehicleSpeedCruiseControlState {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::Hold,
            2 => Self::Accelerate,
            3 => Self::Decelerate,
            4 => Self::Resume,
            5 => Self::Set,
            6 => Self::AcceleratorOverride,
            7 => Self::NotAvailable,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::Hold => 1,
            Self::Accelerate => 2,
            Self::Decelerate => 3,
            Self::Resume => 4,
            Self::Set => 5,
            Self::AcceleratorOverride => 6,
            Self::NotAvailable => 7,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::Hold => Some("hold"),
            Self::Accelerate => Some("accelerate"),
            Self::Decelerate => Some("decelerate"),
            Self::Resume => Some("resume"),
            Self::Set => Some("set"),
            Self::AcceleratorOverride => Some("accelerator_override"),
            Self::NotAvailable => Some("not_available"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum WheelBasedMachineSpeedMachineDirection {
    /// Reverse (0).
    Reverse,
    /// Forward (1).
    Forward,
    /// A raw number without a word.
    Other(u8),
}

impl WheelBasedMachineSpeedMachineDirection {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Reverse,
            1 => Self::Forward,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Reverse => 0,
            Self::Forward => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Reverse => Some("reverse"),
            Self::Forward => Some("forward"),
            Self::Other(_) => None,
        }
    }
}

/// `j1939_lamp`.
///
/// SAE J1939-73 (from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum J1939Lamp {
    /// Off (0).
    Off,
    /// On (1).
    On,
    /// Error (2).
    Error,
    /// Not available (3).
    NotAvailable,
    /// A raw number without a word.
    Other(u8),
}

impl J1939Lamp {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Off,
            1 => Self::On,
            2 => Self::Error,
            3 => Self::NotAvailable,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Off => 0,
            Self::On => 1,
            Self::Error => 2,
            Self::NotAvailable => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Off => Some("off"),
            Self::On => Some("on"),
            Self::Error => Some("error"),
            Self::NotAvailable => Some("not_available"),
            Self::Other(_) => None,
        }
    }
}

/// `j1939_flash`.
///
/// SAE J1939-73 (from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum J1939Flash {
    /// Flashes slowly, 1 Hz (0).
    Slow,
    /// Flashes fast, 2 Hz or more (1).
    Fast,
    /// Reserved (2).
    Reserved,
    /// Does not flash, or not available (3).
    Steady,
    /// A raw number without a word.
    Other(u8),
}

impl J1939Flash {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Slow,
            1 => Self::Fast,
            2 => Self::Reserved,
            3 => Self::Steady,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Slow => 0,
            Self::Fast => 1,
            Self::Reserved => 2,
            Self::Steady => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Slow => Some("slow"),
            Self::Fast => Some("fast"),
            Self::Reserved => Some("reserved"),
            Self::Steady => Some("steady"),
            Self::Other(_) => None,
        }
    }
}

/// Failure mode identifier.
///
/// SAE J1939-73 (from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum J1939Failure {
    /// Data valid, above normal: most severe (0).
    AboveMostSevere,
    /// Data valid, below normal: most severe (1).
    BelowMostSevere,
    /// Data erratic, intermittent or incorrect (2).
    Erratic,
    /// Voltage above normal, or shorted to high source (3).
    VoltageHigh,
    /// Voltage below normal, or shorted to low source (4).
    VoltageLow,
    /// Current below normal, or open circuit (5).
    CurrentLow,
    /// Current above normal, or grounded circuit (6).
    CurrentHigh,
    /// Mechanical system not responding or out of adjustment (7).
    Mechanical,
    /// Abnormal frequency, pulse width or period (8).
    AbnormalFrequency,
    /// Abnormal update rate (9).
    AbnormalUpdateRate,
    /// Abnormal rate of change (10).
    AbnormalChange,
    /// Root cause not known (11).
    UnknownCause,
    /// Bad intelligent device or component (12).
    BadDevice,
    /// Out of calibration (13).
    OutOfCalibration,
    /// Special instructions (14).
    SpecialInstructions,
    /// Data valid, above normal: least severe (15).
    AboveLeastSevere,
    /// Data valid, above normal: moderately severe (16).
    AboveModerate,
    /// Data valid, below normal: least severe (17).
    BelowLeastSevere,
    /// Data valid, below normal: moderately severe (18).
    BelowModerate,
    /// Received network data in error (19).
    NetworkDataError,
    /// Data drifted high (20).
    DriftedHigh,
    /// Data drifted low (21).
    DriftedLow,
    /// Condition exists (31).
    ConditionExists,
    /// A raw number without a word.
    Other(u8),
}

impl J1939Failure {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::AboveMostSevere,
            1 => Self::BelowMostSevere,
            2 => Self::Erratic,
            3 => Self::VoltageHigh,
            4 => Self::VoltageLow,
            5 => Self::CurrentLow,
            6 => Self::CurrentHigh,
            7 => Self::Mechanical,
            8 => Self::AbnormalFrequency,
            9 => Self::AbnormalUpdateRate,
            10 => Self::AbnormalChange,
            11 => Self::UnknownCause,
            12 => Self::BadDevice,
            13 => Self::OutOfCalibration,
            14 => Self::SpecialInstructions,
            15 => Self::AboveLeastSevere,
            16 => Self::AboveModerate,
            17 => Self::BelowLeastSevere,
            18 => Self::BelowModerate,
            19 => Self::NetworkDataError,
            20 => Self::DriftedHigh,
            21 => Self::DriftedLow,
            31 => Self::ConditionExists,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::AboveMostSevere => 0,
            Self::BelowMostSevere => 1,
            Self::Erratic => 2,
            Self::VoltageHigh => 3,
            Self::VoltageLow => 4,
            Self::CurrentLow => 5,
            Self::CurrentHigh => 6,
            Self::Mechanical => 7,
            Self::AbnormalFrequency => 8,
            Self::AbnormalUpdateRate => 9,
            Self::AbnormalChange => 10,
            Self::UnknownCause => 11,
            Self::BadDevice => 12,
            Self::OutOfCalibration => 13,
            Self::SpecialInstructions => 14,
            Self::AboveLeastSevere => 15,
            Self::AboveModerate => 16,
            Self::BelowLeastSevere => 17,
            Self::BelowModerate => 18,
            Self::NetworkDataError => 19,
            Self::DriftedHigh => 20,
            Self::DriftedLow => 21,
            Self::ConditionExists => 31,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::AboveMostSevere => Some("above_most_severe"),
            Self::BelowMostSevere => Some("below_most_severe"),
            Self::Erratic => Some("erratic"),
            Self::VoltageHigh => Some("voltage_high"),
            Self::VoltageLow => Some("voltage_low"),
            Self::CurrentLow => Some("current_low"),
            Self::CurrentHigh => Some("current_high"),
            Self::Mechanical => Some("mechanical"),
            Self::AbnormalFrequency => Some("abnormal_frequency"),
            Self::AbnormalUpdateRate => Some("abnormal_update_rate"),
            Self::AbnormalChange => Some("abnormal_change"),
            Self::UnknownCause => Some("unknown_cause"),
            Self::BadDevice => Some("bad_device"),
            Self::OutOfCalibration => Some("out_of_calibration"),
            Self::SpecialInstructions => Some("special_instructions"),
            Self::AboveLeastSevere => Some("above_least_severe"),
            Self::AboveModerate => Some("above_moderate"),
            Self::BelowLeastSevere => Some("below_least_severe"),
            Self::BelowModerate => Some("below_moderate"),
            Self::NetworkDataError => Some("network_data_error"),
            Self::DriftedHigh => Some("drifted_high"),
            Self::DriftedLow => Some("drifted_low"),
            Self::ConditionExists => Some("condition_exists"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum ActiveTroubleCodesConversionMethod {
    /// As described here (0).
    AsDescribed,
    /// One of three older ways (1).
    Older,
    /// A raw number without a word.
    Other(u8),
}

impl ActiveTroubleCodesConversionMethod {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::AsDescribed,
            1 => Self::Older,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::AsDescribed => 0,
            Self::Older => 1,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::AsDescribed => Some("as_described"),
            Self::Older => Some("older"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum AcknowledgementAcknowledgement {
    /// Positive (0).
    Positive,
    /// Negative (1).
    Negative,
    /// Access denied (2).
    AccessDenied,
    /// Cannot respond now (3).
    CannotRespond,
    /// A raw number without a word.
    Other(u8),
}

impl AcknowledgementAcknowledgement {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Positive,
            1 => Self::Negative,
            2 => Self::AccessDenied,
            3 => Self::CannotRespond,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Positive => 0,
            Self::Negative => 1,
            Self::AccessDenied => 2,
            Self::CannotRespond => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Positive => Some("positive"),
            Self::Negative => Some("negative"),
            Self::AccessDenied => Some("access_denied"),
            Self::CannotRespond => Some("cannot_respond"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum AddressClaimedIndustryGroup {
    /// Global (0).
    Global,
    /// On-highway equipment (1).
    OnHighway,
    /// Agriculture and forestry (2).
    Agriculture,
    /// Construction (3).
    Construction,
    /// Marine (4).
    Marine,
    /// Industrial, stationary (5).
    Industrial,
    /// A raw number without a word.
    Other(u8),
}

impl AddressClaimedIndustryGroup {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Global,
            1 => Self::OnHighway,
            2 => Self::Agriculture,
            3 => Self::Construction,
            4 => Self::Marine,
            5 => Self::Industrial,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Global => 0,
            Self::OnHighway => 1,
            Self::Agriculture => 2,
            Self::Construction => 3,
            Self::Marine => 4,
            Self::Industrial => 5,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Global => Some("global"),
            Self::OnHighway => Some("on_highway"),
            Self::Agriculture => Some("agriculture"),
            Self::Construction => Some("construction"),
            Self::Marine => Some("marine"),
            Self::Industrial => Some("industrial"),
            Self::Other(_) => None,
        }
    }
}

/// Engine: torque and speed.
///
/// Engine torque and speed. The period follows the engine's speed.
///
/// Called "EEC1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineTorqueAndSpeed {
    /// SPN 899, SAE J1939-71 (from memory). Who decides on the torque at this moment.
    ///
    /// `raw`; 4 bits.
    pub torque_mode: EngineTorqueAndSpeedTorqueMode,
    /// SPN 4154, SAE J1939-71 (from memory). To be added to actual\_engine\_percent\_torque.
    ///
    /// `raw * 0.125` %; 4 bits.
    pub actual_engine_percent_torque_fraction: u8,
    /// SPN 512, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub drivers_demand_percent_torque: u8,
    /// SPN 513, SAE J1939-71 (from memory). In percent of the reference torque that the engine's configuration message tells.
    ///
    /// `raw - 125` %; 8 bits.
    pub actual_engine_percent_torque: u8,
    /// SPN 190, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub engine_speed: u16,
    /// SPN 1483, SAE J1939-71 (from memory). Address of the unit that governs the engine.
    ///
    /// `raw`; 8 bits.
    pub governing_address: u8,
    /// SPN 1675, SAE J1939-71 (from memory).
    ///
    /// `raw`; 4 bits.
    pub starter_mode: EngineTorqueAndSpeedStarterMode,
    /// SPN 2432, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub engine_demand_percent_torque: u8,
}

impl EngineTorqueAndSpeed {
    /// The parameter group number.
    pub const PGN: u32 = 0xF004;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The shortest period.
    pub const PERIOD_SHORTEST: core::time::Duration = core::time::Duration::from_millis(10);
    /// The longest period.
    pub const PERIOD_LONGEST: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_TORQUE_MODE: typed::Cut = typed::Cut::between((0, 3), (0, 0));
    const AT_ACTUAL_ENGINE_PERCENT_TORQUE_FRACTION: typed::Cut =
        typed::Cut::between((0, 7), (0, 4));
    const AT_DRIVERS_DEMAND_PERCENT_TORQUE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_ACTUAL_ENGINE_PERCENT_TORQUE: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_ENGINE_SPEED: typed::Cut = typed::Cut::between((4, 7), (3, 0));
    const AT_GOVERNING_ADDRESS: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_STARTER_MODE: typed::Cut = typed::Cut::between((6, 3), (6, 0));
    const AT_ENGINE_DEMAND_PERCENT_TORQUE: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_ACTUAL_ENGINE_PERCENT_TORQUE_FRACTION: typed::Formula =
        typed::Formula::new(1, 0, 8);
    const FORMULA_DRIVERS_DEMAND_PERCENT_TORQUE: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_ACTUAL_ENGINE_PERCENT_TORQUE: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_ENGINE_SPEED: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_ENGINE_DEMAND_PERCENT_TORQUE: typed::Formula = typed::Formula::new(1, -125, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_TORQUE_MODE.of(payload);
        let torque_mode = EngineTorqueAndSpeedTorqueMode::from_raw(bits as u8);
        let bits = Self::AT_ACTUAL_ENGINE_PERCENT_TORQUE_FRACTION.of(payload);
        let actual_engine_percent_torque_fraction = bits as u8;
        let bits = Self::AT_DRIVERS_DEMAND_PERCENT_TORQUE.of(payload);
        let drivers_demand_percent_torque = bits as u8;
        let bits = Self::AT_ACTUAL_ENGINE_PERCENT_TORQUE.of(payload);
        let actual_engine_percent_torque = bits as u8;
        let engine_speed = Self::AT_ENGINE_SPEED.of(payload) as u16;
        let governing_address = Self::AT_GOVERNING_ADDRESS.of(payload) as u8;
        let bits = Self::AT_STARTER_MODE.of(payload);
        let starter_mode = EngineTorqueAndSpeedStarterMode::from_raw(bits as u8);
        let bits = Self::AT_ENGINE_DEMAND_PERCENT_TORQUE.of(payload);
        let engine_demand_percent_torque = bits as u8;
        Self {
            torque_mode,
            actual_engine_percent_torque_fraction,
            drivers_demand_percent_torque,
            actual_engine_percent_torque,
            engine_speed,
            governing_address,
            starter_mode,
            engine_demand_percent_torque,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.torque_mode.raw());
        let bits = typed::unsigned_bits(number, 4, "torque_mode")?;
        Self::AT_TORQUE_MODE.put(payload, bits);
        let number = u64::from(self.actual_engine_percent_torque_fraction);
        let bits = typed::unsigned_bits(number, 4, "actual_engine_percent_torque_fraction")?;
        Self::AT_ACTUAL_ENGINE_PERCENT_TORQUE_FRACTION.put(payload, bits);
        let number = u64::from(self.drivers_demand_percent_torque);
        let bits = typed::unsigned_bits(number, 8, "drivers_demand_percent_torque")?;
        Self::AT_DRIVERS_DEMAND_PERCENT_TORQUE.put(payload, bits);
        let number = u64::from(self.actual_engine_percent_torque);
        let bits = typed::unsigned_bits(number, 8, "actual_engine_percent_torque")?;
        Self::AT_ACTUAL_ENGINE_PERCENT_TORQUE.put(payload, bits);
        let number = u64::from(self.engine_speed);
        let bits = typed::unsigned_bits(number, 16, "engine_speed")?;
        Self::AT_ENGINE_SPEED.put(payload, bits);
        let number = u64::from(self.governing_address);
        let bits = typed::unsigned_bits(number, 8, "governing_address")?;
        Self::AT_GOVERNING_ADDRESS.put(payload, bits);
        let number = u64::from(self.starter_mode.raw());
        let bits = typed::unsigned_bits(number, 4, "starter_mode")?;
        Self::AT_STARTER_MODE.put(payload, bits);
        let number = u64::from(self.engine_demand_percent_torque);
        let bits = typed::unsigned_bits(number, 8, "engine_demand_percent_torque")?;
        Self::AT_ENGINE_DEMAND_PERCENT_TORQUE.put(payload, bits);
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
    pub fn torque_mode(&self) -> typed::Reading<EngineTorqueAndSpeedTorqueMode> {
        match self.torque_mode.raw() {
            15 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.torque_mode),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn actual_engine_percent_torque_fraction(&self) -> typed::Reading<f64> {
        match self.actual_engine_percent_torque_fraction {
            14 => typed::Reading::Fault,
            15 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `actual_engine_percent_torque_fraction` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_actual_engine_percent_torque_fraction(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 15);
        let is_value = |raw: i128| !matches!(raw, 14..=15);
        let formula = Self::FORMULA_ACTUAL_ENGINE_PERCENT_TORQUE_FRACTION;
        let raw = &mut self.actual_engine_percent_torque_fraction;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 0.875 in %.
    #[must_use]
    pub fn actual_engine_percent_torque_fraction_is_outside(&self) -> bool {
        let raw = self.actual_engine_percent_torque_fraction;
        matches!(raw, 8..=13)
    }

    /// The value in %.
    #[must_use]
    pub fn drivers_demand_percent_torque(&self) -> typed::Reading<f64> {
        match self.drivers_demand_percent_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `drivers_demand_percent_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_drivers_demand_percent_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_DRIVERS_DEMAND_PERCENT_TORQUE;
        let raw = &mut self.drivers_demand_percent_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn drivers_demand_percent_torque_is_outside(&self) -> bool {
        let raw = self.drivers_demand_percent_torque;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn actual_engine_percent_torque(&self) -> typed::Reading<f64> {
        match self.actual_engine_percent_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `actual_engine_percent_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_actual_engine_percent_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ACTUAL_ENGINE_PERCENT_TORQUE;
        let raw = &mut self.actual_engine_percent_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn actual_engine_percent_torque_is_outside(&self) -> bool {
        let raw = self.actual_engine_percent_torque;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn engine_speed(&self) -> typed::Reading<f64> {
        match self.engine_speed {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `engine_speed` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_engine_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_ENGINE_SPEED;
        let raw = &mut self.engine_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn engine_speed_is_outside(&self) -> bool {
        let raw = self.engine_speed;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// What the raw number says.
    #[must_use]
    pub fn governing_address(&self) -> typed::Reading<u8> {
        match self.governing_address {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn starter_mode(&self) -> typed::Reading<EngineTorqueAndSpeedStarterMode> {
        match self.starter_mode.raw() {
            13..=14 => typed::Reading::Fault,
            15 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.starter_mode),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn engine_demand_percent_torque(&self) -> typed::Reading<f64> {
        match self.engine_demand_percent_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `engine_demand_percent_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_engine_demand_percent_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ENGINE_DEMAND_PERCENT_TORQUE;
        let raw = &mut self.engine_demand_percent_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn engine_demand_percent_torque_is_outside(&self) -> bool {
        let raw = self.engine_demand_percent_torque;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.torque_mode();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.torque_mode;
        let said = said.word(state.word());
        let name = typed::Name::of("torque_mode");
        tell(name, said);
        let said = self.actual_engine_percent_torque_fraction();
        let said = typed::Said::from(said);
        let is_outside = self.actual_engine_percent_torque_fraction_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("actual_engine_percent_torque_fraction");
        tell(name, said);
        let said = self.drivers_demand_percent_torque();
        let said = typed::Said::from(said);
        let is_outside = self.drivers_demand_percent_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("drivers_demand_percent_torque");
        tell(name, said);
        let said = self.actual_engine_percent_torque();
        let said = typed::Said::from(said);
        let is_outside = self.actual_engine_percent_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("actual_engine_percent_torque");
        tell(name, said);
        let said = typed::Said::from(self.engine_speed());
        let is_outside = self.engine_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("engine_speed");
        tell(name, said);
        let said = self.governing_address();
        let said = typed::Said::from(said);
        let name = typed::Name::of("governing_address");
        tell(name, said);
        let said = self.starter_mode();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.starter_mode;
        let said = said.word(state.word());
        let name = typed::Name::of("starter_mode");
        tell(name, said);
        let said = self.engine_demand_percent_torque();
        let said = typed::Said::from(said);
        let is_outside = self.engine_demand_percent_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("engine_demand_percent_torque");
        tell(name, said);
    }
}

/// Engine: accelerator and load.
///
/// Accelerator pedal and engine load.
///
/// Called "EEC2" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AcceleratorAndLoad {
    /// SPN 558, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub accelerator_low_idle_switch: AcceleratorAndLoadAcceleratorLowIdleSwitch,
    /// SPN 559, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub kickdown_switch: AcceleratorAndLoadKickdownSwitch,
    /// SPN 1437, SAE J1939-71 (from memory). 0 means active: the wrong way round is the usual mistake here.
    ///
    /// `raw`; 2 bits.
    pub road_speed_limit: AcceleratorAndLoadRoadSpeedLimit,
    /// SPN 91, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub accelerator_pedal_position: u8,
    /// SPN 92, SAE J1939-71 (from memory).
    ///
    /// `raw` %; 8 bits.
    pub percent_load_at_current_speed: u8,
    /// SPN 974, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub remote_accelerator_position: u8,
    /// SPN 29, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub accelerator_pedal_position_2: u8,
    /// SPN 3357, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub available_engine_percent_torque: u8,
}

impl AcceleratorAndLoad {
    /// The parameter group number.
    pub const PGN: u32 = 0xF003;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(50);
    const AT_ACCELERATOR_LOW_IDLE_SWITCH: typed::Cut = typed::Cut::between((0, 1), (0, 0));
    const AT_KICKDOWN_SWITCH: typed::Cut = typed::Cut::between((0, 3), (0, 2));
    const AT_ROAD_SPEED_LIMIT: typed::Cut = typed::Cut::between((0, 5), (0, 4));
    const AT_ACCELERATOR_PEDAL_POSITION: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_PERCENT_LOAD_AT_CURRENT_SPEED: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_REMOTE_ACCELERATOR_POSITION: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_ACCELERATOR_PEDAL_POSITION_2: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_AVAILABLE_ENGINE_PERCENT_TORQUE: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const FORMULA_ACCELERATOR_PEDAL_POSITION: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_REMOTE_ACCELERATOR_POSITION: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_ACCELERATOR_PEDAL_POSITION_2: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_AVAILABLE_ENGINE_PERCENT_TORQUE: typed::Formula = typed::Formula::new(2, 0, 5);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_ACCELERATOR_LOW_IDLE_SWITCH.of(payload);
        let accelerator_low_idle_switch =
            AcceleratorAndLoadAcceleratorLowIdleSwitch::from_raw(bits as u8);
        let bits = Self::AT_KICKDOWN_SWITCH.of(payload);
        let kickdown_switch = AcceleratorAndLoadKickdownSwitch::from_raw(bits as u8);
        let bits = Self::AT_ROAD_SPEED_LIMIT.of(payload);
        let road_speed_limit = AcceleratorAndLoadRoadSpeedLimit::from_raw(bits as u8);
        let accelerator_pedal_position = Self::AT_ACCELERATOR_PEDAL_POSITION.of(payload) as u8;
        let bits = Self::AT_PERCENT_LOAD_AT_CURRENT_SPEED.of(payload);
        let percent_load_at_current_speed = bits as u8;
        let remote_accelerator_position = Self::AT_REMOTE_ACCELERATOR_POSITION.of(payload) as u8;
        let bits = Self::AT_ACCELERATOR_PEDAL_POSITION_2.of(payload);
        let accelerator_pedal_position_2 = bits as u8;
        let bits = Self::AT_AVAILABLE_ENGINE_PERCENT_TORQUE.of(payload);
        let available_engine_percent_torque = bits as u8;
        Self {
            accelerator_low_idle_switch,
            kickdown_switch,
            road_speed_limit,
            accelerator_pedal_position,
            percent_load_at_current_speed,
            remote_accelerator_position,
            accelerator_pedal_position_2,
            available_engine_percent_torque,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.accelerator_low_idle_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "accelerator_low_idle_switch")?;
        Self::AT_ACCELERATOR_LOW_IDLE_SWITCH.put(payload, bits);
        let number = u64::from(self.kickdown_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "kickdown_switch")?;
        Self::AT_KICKDOWN_SWITCH.put(payload, bits);
        let number = u64::from(self.road_speed_limit.raw());
        let bits = typed::unsigned_bits(number, 2, "road_speed_limit")?;
        Self::AT_ROAD_SPEED_LIMIT.put(payload, bits);
        let number = u64::from(self.accelerator_pedal_position);
        let bits = typed::unsigned_bits(number, 8, "accelerator_pedal_position")?;
        Self::AT_ACCELERATOR_PEDAL_POSITION.put(payload, bits);
        let number = u64::from(self.percent_load_at_current_speed);
        let bits = typed::unsigned_bits(number, 8, "percent_load_at_current_speed")?;
        Self::AT_PERCENT_LOAD_AT_CURRENT_SPEED.put(payload, bits);
        let number = u64::from(self.remote_accelerator_position);
        let bits = typed::unsigned_bits(number, 8, "remote_accelerator_position")?;
        Self::AT_REMOTE_ACCELERATOR_POSITION.put(payload, bits);
        let number = u64::from(self.accelerator_pedal_position_2);
        let bits = typed::unsigned_bits(number, 8, "accelerator_pedal_position_2")?;
        Self::AT_ACCELERATOR_PEDAL_POSITION_2.put(payload, bits);
        let number = u64::from(self.available_engine_percent_torque);
        let bits = typed::unsigned_bits(number, 8, "available_engine_percent_torque")?;
        Self::AT_AVAILABLE_ENGINE_PERCENT_TORQUE.put(payload, bits);
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
    pub fn accelerator_low_idle_switch(
        &self,
    ) -> typed::Reading<AcceleratorAndLoadAcceleratorLowIdleSwitch> {
        match self.accelerator_low_idle_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.accelerator_low_idle_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn kickdown_switch(&self) -> typed::Reading<AcceleratorAndLoadKickdownSwitch> {
        match self.kickdown_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.kickdown_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn road_speed_limit(&self) -> typed::Reading<AcceleratorAndLoadRoadSpeedLimit> {
        match self.road_speed_limit.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.road_speed_limit),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn accelerator_pedal_position(&self) -> typed::Reading<f64> {
        match self.accelerator_pedal_position {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `accelerator_pedal_position` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_accelerator_pedal_position(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ACCELERATOR_PEDAL_POSITION;
        let raw = &mut self.accelerator_pedal_position;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn accelerator_pedal_position_is_outside(&self) -> bool {
        let raw = self.accelerator_pedal_position;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn percent_load_at_current_speed(&self) -> typed::Reading<u8> {
        match self.percent_load_at_current_speed {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 250 in %.
    #[must_use]
    pub fn percent_load_at_current_speed_is_outside(&self) -> bool {
        let raw = self.percent_load_at_current_speed;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn remote_accelerator_position(&self) -> typed::Reading<f64> {
        match self.remote_accelerator_position {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `remote_accelerator_position` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_remote_accelerator_position(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_REMOTE_ACCELERATOR_POSITION;
        let raw = &mut self.remote_accelerator_position;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn remote_accelerator_position_is_outside(&self) -> bool {
        let raw = self.remote_accelerator_position;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn accelerator_pedal_position_2(&self) -> typed::Reading<f64> {
        match self.accelerator_pedal_position_2 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `accelerator_pedal_position_2` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_accelerator_pedal_position_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ACCELERATOR_PEDAL_POSITION_2;
        let raw = &mut self.accelerator_pedal_position_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn accelerator_pedal_position_2_is_outside(&self) -> bool {
        let raw = self.accelerator_pedal_position_2;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn available_engine_percent_torque(&self) -> typed::Reading<f64> {
        match self.available_engine_percent_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `available_engine_percent_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_available_engine_percent_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_AVAILABLE_ENGINE_PERCENT_TORQUE;
        let raw = &mut self.available_engine_percent_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn available_engine_percent_torque_is_outside(&self) -> bool {
        let raw = self.available_engine_percent_torque;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.accelerator_low_idle_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.accelerator_low_idle_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("accelerator_low_idle_switch");
        tell(name, said);
        let said = self.kickdown_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.kickdown_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("kickdown_switch");
        tell(name, said);
        let said = self.road_speed_limit();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.road_speed_limit;
        let said = said.word(state.word());
        let name = typed::Name::of("road_speed_limit");
        tell(name, said);
        let said = self.accelerator_pedal_position();
        let said = typed::Said::from(said);
        let is_outside = self.accelerator_pedal_position_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("accelerator_pedal_position");
        tell(name, said);
        let said = self.percent_load_at_current_speed();
        let said = typed::Said::from(said);
        let is_outside = self.percent_load_at_current_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("percent_load_at_current_speed");
        tell(name, said);
        let said = self.remote_accelerator_position();
        let said = typed::Said::from(said);
        let is_outside = self.remote_accelerator_position_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("remote_accelerator_position");
        tell(name, said);
        let said = self.accelerator_pedal_position_2();
        let said = typed::Said::from(said);
        let is_outside = self.accelerator_pedal_position_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("accelerator_pedal_position_2");
        tell(name, said);
        let said = self.available_engine_percent_torque();
        let said = typed::Said::from(said);
        let is_outside = self.available_engine_percent_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("available_engine_percent_torque");
        tell(name, said);
    }
}

/// Engine: friction and desired speed.
///
/// Friction torque and the speed that the engine aims at. Many engines send it much faster than the document asks.
///
/// Called "EEC3" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineFriction {
    /// SPN 514, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub nominal_friction_percent_torque: u8,
    /// SPN 515, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub desired_operating_speed: u16,
}

impl EngineFriction {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEDF;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The shortest period.
    pub const PERIOD_SHORTEST: core::time::Duration = core::time::Duration::from_millis(20);
    /// The longest period.
    pub const PERIOD_LONGEST: core::time::Duration = core::time::Duration::from_millis(250);
    const AT_NOMINAL_FRICTION_PERCENT_TORQUE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_DESIRED_OPERATING_SPEED: typed::Cut = typed::Cut::between((2, 7), (1, 0));
    const FORMULA_NOMINAL_FRICTION_PERCENT_TORQUE: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_DESIRED_OPERATING_SPEED: typed::Formula = typed::Formula::new(1, 0, 8);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_NOMINAL_FRICTION_PERCENT_TORQUE.of(payload);
        let nominal_friction_percent_torque = bits as u8;
        let desired_operating_speed = Self::AT_DESIRED_OPERATING_SPEED.of(payload) as u16;
        Self {
            nominal_friction_percent_torque,
            desired_operating_speed,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.nominal_friction_percent_torque);
        let bits = typed::unsigned_bits(number, 8, "nominal_friction_percent_torque")?;
        Self::AT_NOMINAL_FRICTION_PERCENT_TORQUE.put(payload, bits);
        let number = u64::from(self.desired_operating_speed);
        let bits = typed::unsigned_bits(number, 16, "desired_operating_speed")?;
        Self::AT_DESIRED_OPERATING_SPEED.put(payload, bits);
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

    /// The value in %.
    #[must_use]
    pub fn nominal_friction_percent_torque(&self) -> typed::Reading<f64> {
        match self.nominal_friction_percent_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `nominal_friction_percent_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_nominal_friction_percent_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_NOMINAL_FRICTION_PERCENT_TORQUE;
        let raw = &mut self.nominal_friction_percent_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn nominal_friction_percent_torque_is_outside(&self) -> bool {
        let raw = self.nominal_friction_percent_torque;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn desired_operating_speed(&self) -> typed::Reading<f64> {
        match self.desired_operating_speed {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `desired_operating_speed` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_desired_operating_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_DESIRED_OPERATING_SPEED;
        let raw = &mut self.desired_operating_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn desired_operating_speed_is_outside(&self) -> bool {
        let raw = self.desired_operating_speed;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.nominal_friction_percent_torque();
        let said = typed::Said::from(said);
        let is_outside = self.nominal_friction_percent_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("nominal_friction_percent_torque");
        tell(name, said);
        let said = self.desired_operating_speed();
        let said = typed::Said::from(said);
        let is_outside = self.desired_operating_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("desired_operating_speed");
        tell(name, said);
    }
}

/// Engine: temperatures.
///
/// Temperatures of the engine's fluids.
///
/// Called "ET1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineTemperatures {
    /// SPN 110, SAE J1939-71 (from memory).
    ///
    /// `raw - 40` °C; 8 bits.
    pub coolant_temperature: u8,
    /// SPN 174, SAE J1939-71 (from memory).
    ///
    /// `raw - 40` °C; 8 bits.
    pub fuel_temperature: u8,
    /// SPN 175, SAE J1939-71 (from memory).
    ///
    /// `raw / 32 - 273` °C; 16 bits.
    pub engine_oil_temperature: u16,
    /// SPN 176, SAE J1939-71 (from memory).
    ///
    /// `raw / 32 - 273` °C; 16 bits.
    pub turbocharger_oil_temperature: u16,
    /// SPN 52, SAE J1939-71 (from memory).
    ///
    /// `raw - 40` °C; 8 bits.
    pub intercooler_temperature: u8,
    /// SPN 1134, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub intercooler_thermostat_opening: u8,
}

impl EngineTemperatures {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEEE;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_COOLANT_TEMPERATURE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_FUEL_TEMPERATURE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_ENGINE_OIL_TEMPERATURE: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_TURBOCHARGER_OIL_TEMPERATURE: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_INTERCOOLER_TEMPERATURE: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_INTERCOOLER_THERMOSTAT_OPENING: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_COOLANT_TEMPERATURE: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_FUEL_TEMPERATURE: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_ENGINE_OIL_TEMPERATURE: typed::Formula = typed::Formula::new(1, -8736, 32);
    const FORMULA_TURBOCHARGER_OIL_TEMPERATURE: typed::Formula = typed::Formula::new(1, -8736, 32);
    const FORMULA_INTERCOOLER_TEMPERATURE: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_INTERCOOLER_THERMOSTAT_OPENING: typed::Formula = typed::Formula::new(2, 0, 5);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let coolant_temperature = Self::AT_COOLANT_TEMPERATURE.of(payload) as u8;
        let fuel_temperature = Self::AT_FUEL_TEMPERATURE.of(payload) as u8;
        let engine_oil_temperature = Self::AT_ENGINE_OIL_TEMPERATURE.of(payload) as u16;
        let bits = Self::AT_TURBOCHARGER_OIL_TEMPERATURE.of(payload);
        let turbocharger_oil_temperature = bits as u16;
        let intercooler_temperature = Self::AT_INTERCOOLER_TEMPERATURE.of(payload) as u8;
        let bits = Self::AT_INTERCOOLER_THERMOSTAT_OPENING.of(payload);
        let intercooler_thermostat_opening = bits as u8;
        Self {
            coolant_temperature,
            fuel_temperature,
            engine_oil_temperature,
            turbocharger_oil_temperature,
            intercooler_temperature,
            intercooler_thermostat_opening,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.coolant_temperature);
        let bits = typed::unsigned_bits(number, 8, "coolant_temperature")?;
        Self::AT_COOLANT_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.fuel_temperature);
        let bits = typed::unsigned_bits(number, 8, "fuel_temperature")?;
        Self::AT_FUEL_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.engine_oil_temperature);
        let bits = typed::unsigned_bits(number, 16, "engine_oil_temperature")?;
        Self::AT_ENGINE_OIL_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.turbocharger_oil_temperature);
        let bits = typed::unsigned_bits(number, 16, "turbocharger_oil_temperature")?;
        Self::AT_TURBOCHARGER_OIL_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.intercooler_temperature);
        let bits = typed::unsigned_bits(number, 8, "intercooler_temperature")?;
        Self::AT_INTERCOOLER_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.intercooler_thermostat_opening);
        let bits = typed::unsigned_bits(number, 8, "intercooler_thermostat_opening")?;
        Self::AT_INTERCOOLER_THERMOSTAT_OPENING.put(payload, bits);
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
    pub fn coolant_temperature(&self) -> typed::Reading<f64> {
        match self.coolant_temperature {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `coolant_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_coolant_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_COOLANT_TEMPERATURE;
        let raw = &mut self.coolant_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 210 in °C.
    #[must_use]
    pub fn coolant_temperature_is_outside(&self) -> bool {
        let raw = self.coolant_temperature;
        matches!(raw, 251..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn fuel_temperature(&self) -> typed::Reading<f64> {
        match self.fuel_temperature {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `fuel_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fuel_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_FUEL_TEMPERATURE;
        let raw = &mut self.fuel_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 210 in °C.
    #[must_use]
    pub fn fuel_temperature_is_outside(&self) -> bool {
        let raw = self.fuel_temperature;
        matches!(raw, 251..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn engine_oil_temperature(&self) -> typed::Reading<f64> {
        match self.engine_oil_temperature {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `engine_oil_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_engine_oil_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_ENGINE_OIL_TEMPERATURE;
        let raw = &mut self.engine_oil_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -273 to 1734.96875 in °C.
    #[must_use]
    pub fn engine_oil_temperature_is_outside(&self) -> bool {
        let raw = self.engine_oil_temperature;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in °C.
    #[must_use]
    pub fn turbocharger_oil_temperature(&self) -> typed::Reading<f64> {
        match self.turbocharger_oil_temperature {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `turbocharger_oil_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_turbocharger_oil_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_TURBOCHARGER_OIL_TEMPERATURE;
        let raw = &mut self.turbocharger_oil_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -273 to 1734.96875 in °C.
    #[must_use]
    pub fn turbocharger_oil_temperature_is_outside(&self) -> bool {
        let raw = self.turbocharger_oil_temperature;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in °C.
    #[must_use]
    pub fn intercooler_temperature(&self) -> typed::Reading<f64> {
        match self.intercooler_temperature {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `intercooler_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_intercooler_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_INTERCOOLER_TEMPERATURE;
        let raw = &mut self.intercooler_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 210 in °C.
    #[must_use]
    pub fn intercooler_temperature_is_outside(&self) -> bool {
        let raw = self.intercooler_temperature;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn intercooler_thermostat_opening(&self) -> typed::Reading<f64> {
        match self.intercooler_thermostat_opening {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `intercooler_thermostat_opening` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_intercooler_thermostat_opening(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_INTERCOOLER_THERMOSTAT_OPENING;
        let raw = &mut self.intercooler_thermostat_opening;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn intercooler_thermostat_opening_is_outside(&self) -> bool {
        let raw = self.intercooler_thermostat_opening;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.coolant_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.coolant_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("coolant_temperature");
        tell(name, said);
        let said = self.fuel_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.fuel_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel_temperature");
        tell(name, said);
        let said = self.engine_oil_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.engine_oil_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("engine_oil_temperature");
        tell(name, said);
        let said = self.turbocharger_oil_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.turbocharger_oil_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("turbocharger_oil_temperature");
        tell(name, said);
        let said = self.intercooler_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.intercooler_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("intercooler_temperature");
        tell(name, said);
        let said = self.intercooler_thermostat_opening();
        let said = typed::Said::from(said);
        let is_outside = self.intercooler_thermostat_opening_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("intercooler_thermostat_opening");
        tell(name, said);
    }
}

/// Engine: fluid levels and pressures.
///
/// Pressures and levels of the engine's fluids.
///
/// Called "EFL/P1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineFluids {
    /// SPN 94, SAE J1939-71 (from memory).
    ///
    /// `raw * 4` kPa; 8 bits.
    pub fuel_delivery_pressure: u8,
    /// SPN 22, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.05` kPa; 8 bits.
    pub crankcase_blow_by_pressure: u8,
    /// SPN 98, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub engine_oil_level: u8,
    /// SPN 100, SAE J1939-71 (from memory).
    ///
    /// `raw * 4` kPa; 8 bits.
    pub engine_oil_pressure: u8,
    /// SPN 101, SAE J1939-71 (from memory). Against the air outside, so it may be negative.
    ///
    /// `raw / 128 - 250` kPa; 16 bits.
    pub crankcase_pressure: u16,
    /// SPN 109, SAE J1939-71 (from memory).
    ///
    /// `raw * 2` kPa; 8 bits.
    pub coolant_pressure: u8,
    /// SPN 111, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub coolant_level: u8,
}

impl EngineFluids {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEEF;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(500);
    const AT_FUEL_DELIVERY_PRESSURE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_CRANKCASE_BLOW_BY_PRESSURE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_ENGINE_OIL_LEVEL: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_ENGINE_OIL_PRESSURE: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_CRANKCASE_PRESSURE: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_COOLANT_PRESSURE: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_COOLANT_LEVEL: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_FUEL_DELIVERY_PRESSURE: typed::Formula = typed::Formula::new(4, 0, 1);
    const FORMULA_CRANKCASE_BLOW_BY_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_ENGINE_OIL_LEVEL: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_ENGINE_OIL_PRESSURE: typed::Formula = typed::Formula::new(4, 0, 1);
    const FORMULA_CRANKCASE_PRESSURE: typed::Formula = typed::Formula::new(1, -32000, 128);
    const FORMULA_COOLANT_PRESSURE: typed::Formula = typed::Formula::new(2, 0, 1);
    const FORMULA_COOLANT_LEVEL: typed::Formula = typed::Formula::new(2, 0, 5);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let fuel_delivery_pressure = Self::AT_FUEL_DELIVERY_PRESSURE.of(payload) as u8;
        let crankcase_blow_by_pressure = Self::AT_CRANKCASE_BLOW_BY_PRESSURE.of(payload) as u8;
        let engine_oil_level = Self::AT_ENGINE_OIL_LEVEL.of(payload) as u8;
        let engine_oil_pressure = Self::AT_ENGINE_OIL_PRESSURE.of(payload) as u8;
        let crankcase_pressure = Self::AT_CRANKCASE_PRESSURE.of(payload) as u16;
        let coolant_pressure = Self::AT_COOLANT_PRESSURE.of(payload) as u8;
        let coolant_level = Self::AT_COOLANT_LEVEL.of(payload) as u8;
        Self {
            fuel_delivery_pressure,
            crankcase_blow_by_pressure,
            engine_oil_level,
            engine_oil_pressure,
            crankcase_pressure,
            coolant_pressure,
            coolant_level,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.fuel_delivery_pressure);
        let bits = typed::unsigned_bits(number, 8, "fuel_delivery_pressure")?;
        Self::AT_FUEL_DELIVERY_PRESSURE.put(payload, bits);
        let number = u64::from(self.crankcase_blow_by_pressure);
        let bits = typed::unsigned_bits(number, 8, "crankcase_blow_by_pressure")?;
        Self::AT_CRANKCASE_BLOW_BY_PRESSURE.put(payload, bits);
        let number = u64::from(self.engine_oil_level);
        let bits = typed::unsigned_bits(number, 8, "engine_oil_level")?;
        Self::AT_ENGINE_OIL_LEVEL.put(payload, bits);
        let number = u64::from(self.engine_oil_pressure);
        let bits = typed::unsigned_bits(number, 8, "engine_oil_pressure")?;
        Self::AT_ENGINE_OIL_PRESSURE.put(payload, bits);
        let number = u64::from(self.crankcase_pressure);
        let bits = typed::unsigned_bits(number, 16, "crankcase_pressure")?;
        Self::AT_CRANKCASE_PRESSURE.put(payload, bits);
        let number = u64::from(self.coolant_pressure);
        let bits = typed::unsigned_bits(number, 8, "coolant_pressure")?;
        Self::AT_COOLANT_PRESSURE.put(payload, bits);
        let number = u64::from(self.coolant_level);
        let bits = typed::unsigned_bits(number, 8, "coolant_level")?;
        Self::AT_COOLANT_LEVEL.put(payload, bits);
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

    /// The value in kPa.
    #[must_use]
    pub fn fuel_delivery_pressure(&self) -> typed::Reading<f64> {
        match self.fuel_delivery_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 4) as f64),
        }
    }

    /// Sets `fuel_delivery_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fuel_delivery_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_FUEL_DELIVERY_PRESSURE;
        let raw = &mut self.fuel_delivery_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 1000 in kPa.
    #[must_use]
    pub fn fuel_delivery_pressure_is_outside(&self) -> bool {
        let raw = self.fuel_delivery_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn crankcase_blow_by_pressure(&self) -> typed::Reading<f64> {
        match self.crankcase_blow_by_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `crankcase_blow_by_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_crankcase_blow_by_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_CRANKCASE_BLOW_BY_PRESSURE;
        let raw = &mut self.crankcase_blow_by_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 12.5 in kPa.
    #[must_use]
    pub fn crankcase_blow_by_pressure_is_outside(&self) -> bool {
        let raw = self.crankcase_blow_by_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn engine_oil_level(&self) -> typed::Reading<f64> {
        match self.engine_oil_level {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `engine_oil_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_engine_oil_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ENGINE_OIL_LEVEL;
        let raw = &mut self.engine_oil_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn engine_oil_level_is_outside(&self) -> bool {
        let raw = self.engine_oil_level;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn engine_oil_pressure(&self) -> typed::Reading<f64> {
        match self.engine_oil_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 4) as f64),
        }
    }

    /// Sets `engine_oil_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_engine_oil_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ENGINE_OIL_PRESSURE;
        let raw = &mut self.engine_oil_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 1000 in kPa.
    #[must_use]
    pub fn engine_oil_pressure_is_outside(&self) -> bool {
        let raw = self.engine_oil_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn crankcase_pressure(&self) -> typed::Reading<f64> {
        match self.crankcase_pressure {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 32000) as f64 / 128.0),
        }
    }

    /// Sets `crankcase_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_crankcase_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_CRANKCASE_PRESSURE;
        let raw = &mut self.crankcase_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -250 to 251.9921875 in kPa.
    #[must_use]
    pub fn crankcase_pressure_is_outside(&self) -> bool {
        let raw = self.crankcase_pressure;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in kPa.
    #[must_use]
    pub fn coolant_pressure(&self) -> typed::Reading<f64> {
        match self.coolant_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64),
        }
    }

    /// Sets `coolant_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_coolant_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_COOLANT_PRESSURE;
        let raw = &mut self.coolant_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 500 in kPa.
    #[must_use]
    pub fn coolant_pressure_is_outside(&self) -> bool {
        let raw = self.coolant_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn coolant_level(&self) -> typed::Reading<f64> {
        match self.coolant_level {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `coolant_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_coolant_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_COOLANT_LEVEL;
        let raw = &mut self.coolant_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn coolant_level_is_outside(&self) -> bool {
        let raw = self.coolant_level;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.fuel_delivery_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.fuel_delivery_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel_delivery_pressure");
        tell(name, said);
        let said = self.crankcase_blow_by_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.crankcase_blow_by_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("crankcase_blow_by_pressure");
        tell(name, said);
        let said = self.engine_oil_level();
        let said = typed::Said::from(said);
        let is_outside = self.engine_oil_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("engine_oil_level");
        tell(name, said);
        let said = self.engine_oil_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.engine_oil_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("engine_oil_pressure");
        tell(name, said);
        let said = self.crankcase_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.crankcase_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("crankcase_pressure");
        tell(name, said);
        let said = self.coolant_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.coolant_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("coolant_pressure");
        tell(name, said);
        let said = typed::Said::from(self.coolant_level());
        let is_outside = self.coolant_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("coolant_level");
        tell(name, said);
    }
}

/// Engine: intake and exhaust.
///
/// Air on its way in, exhaust on its way out.
///
/// Called "IC1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IntakeAndExhaust {
    /// SPN 81, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.5` kPa; 8 bits.
    pub particulate_trap_inlet_pressure: u8,
    /// SPN 102, SAE J1939-71 (from memory).
    ///
    /// `raw * 2` kPa; 8 bits.
    pub boost_pressure: u8,
    /// SPN 105, SAE J1939-71 (from memory).
    ///
    /// `raw - 40` °C; 8 bits.
    pub intake_manifold_temperature: u8,
    /// SPN 106, SAE J1939-71 (from memory).
    ///
    /// `raw * 2` kPa; 8 bits.
    pub air_inlet_pressure: u8,
    /// SPN 107, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.05` kPa; 8 bits.
    pub air_filter_pressure_drop: u8,
    /// SPN 173, SAE J1939-71 (from memory).
    ///
    /// `raw / 32 - 273` °C; 16 bits.
    pub exhaust_gas_temperature: u16,
    /// SPN 112, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.5` kPa; 8 bits.
    pub coolant_filter_pressure_drop: u8,
}

impl IntakeAndExhaust {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEF6;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(500);
    const AT_PARTICULATE_TRAP_INLET_PRESSURE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_BOOST_PRESSURE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_INTAKE_MANIFOLD_TEMPERATURE: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_AIR_INLET_PRESSURE: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_AIR_FILTER_PRESSURE_DROP: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_EXHAUST_GAS_TEMPERATURE: typed::Cut = typed::Cut::between((6, 7), (5, 0));
    const AT_COOLANT_FILTER_PRESSURE_DROP: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_PARTICULATE_TRAP_INLET_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_BOOST_PRESSURE: typed::Formula = typed::Formula::new(2, 0, 1);
    const FORMULA_INTAKE_MANIFOLD_TEMPERATURE: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_AIR_INLET_PRESSURE: typed::Formula = typed::Formula::new(2, 0, 1);
    const FORMULA_AIR_FILTER_PRESSURE_DROP: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_EXHAUST_GAS_TEMPERATURE: typed::Formula = typed::Formula::new(1, -8736, 32);
    const FORMULA_COOLANT_FILTER_PRESSURE_DROP: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_PARTICULATE_TRAP_INLET_PRESSURE.of(payload);
        let particulate_trap_inlet_pressure = bits as u8;
        let boost_pressure = Self::AT_BOOST_PRESSURE.of(payload) as u8;
        let intake_manifold_temperature = Self::AT_INTAKE_MANIFOLD_TEMPERATURE.of(payload) as u8;
        let air_inlet_pressure = Self::AT_AIR_INLET_PRESSURE.of(payload) as u8;
        let air_filter_pressure_drop = Self::AT_AIR_FILTER_PRESSURE_DROP.of(payload) as u8;
        let exhaust_gas_temperature = Self::AT_EXHAUST_GAS_TEMPERATURE.of(payload) as u16;
        let bits = Self::AT_COOLANT_FILTER_PRESSURE_DROP.of(payload);
        let coolant_filter_pressure_drop = bits as u8;
        Self {
            particulate_trap_inlet_pressure,
            boost_pressure,
            intake_manifold_temperature,
            air_inlet_pressure,
            air_filter_pressure_drop,
            exhaust_gas_temperature,
            coolant_filter_pressure_drop,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.particulate_trap_inlet_pressure);
        let bits = typed::unsigned_bits(number, 8, "particulate_trap_inlet_pressure")?;
        Self::AT_PARTICULATE_TRAP_INLET_PRESSURE.put(payload, bits);
        let number = u64::from(self.boost_pressure);
        let bits = typed::unsigned_bits(number, 8, "boost_pressure")?;
        Self::AT_BOOST_PRESSURE.put(payload, bits);
        let number = u64::from(self.intake_manifold_temperature);
        let bits = typed::unsigned_bits(number, 8, "intake_manifold_temperature")?;
        Self::AT_INTAKE_MANIFOLD_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.air_inlet_pressure);
        let bits = typed::unsigned_bits(number, 8, "air_inlet_pressure")?;
        Self::AT_AIR_INLET_PRESSURE.put(payload, bits);
        let number = u64::from(self.air_filter_pressure_drop);
        let bits = typed::unsigned_bits(number, 8, "air_filter_pressure_drop")?;
        Self::AT_AIR_FILTER_PRESSURE_DROP.put(payload, bits);
        let number = u64::from(self.exhaust_gas_temperature);
        let bits = typed::unsigned_bits(number, 16, "exhaust_gas_temperature")?;
        Self::AT_EXHAUST_GAS_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.coolant_filter_pressure_drop);
        let bits = typed::unsigned_bits(number, 8, "coolant_filter_pressure_drop")?;
        Self::AT_COOLANT_FILTER_PRESSURE_DROP.put(payload, bits);
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

    /// The value in kPa.
    #[must_use]
    pub fn particulate_trap_inlet_pressure(&self) -> typed::Reading<f64> {
        match self.particulate_trap_inlet_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `particulate_trap_inlet_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_particulate_trap_inlet_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PARTICULATE_TRAP_INLET_PRESSURE;
        let raw = &mut self.particulate_trap_inlet_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 125 in kPa.
    #[must_use]
    pub fn particulate_trap_inlet_pressure_is_outside(&self) -> bool {
        let raw = self.particulate_trap_inlet_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn boost_pressure(&self) -> typed::Reading<f64> {
        match self.boost_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64),
        }
    }

    /// Sets `boost_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_boost_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_BOOST_PRESSURE;
        let raw = &mut self.boost_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 500 in kPa.
    #[must_use]
    pub fn boost_pressure_is_outside(&self) -> bool {
        let raw = self.boost_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn intake_manifold_temperature(&self) -> typed::Reading<f64> {
        match self.intake_manifold_temperature {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `intake_manifold_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_intake_manifold_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_INTAKE_MANIFOLD_TEMPERATURE;
        let raw = &mut self.intake_manifold_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 210 in °C.
    #[must_use]
    pub fn intake_manifold_temperature_is_outside(&self) -> bool {
        let raw = self.intake_manifold_temperature;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn air_inlet_pressure(&self) -> typed::Reading<f64> {
        match self.air_inlet_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64),
        }
    }

    /// Sets `air_inlet_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_air_inlet_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_AIR_INLET_PRESSURE;
        let raw = &mut self.air_inlet_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 500 in kPa.
    #[must_use]
    pub fn air_inlet_pressure_is_outside(&self) -> bool {
        let raw = self.air_inlet_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn air_filter_pressure_drop(&self) -> typed::Reading<f64> {
        match self.air_filter_pressure_drop {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `air_filter_pressure_drop` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_air_filter_pressure_drop(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_AIR_FILTER_PRESSURE_DROP;
        let raw = &mut self.air_filter_pressure_drop;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 12.5 in kPa.
    #[must_use]
    pub fn air_filter_pressure_drop_is_outside(&self) -> bool {
        let raw = self.air_filter_pressure_drop;
        matches!(raw, 251..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn exhaust_gas_temperature(&self) -> typed::Reading<f64> {
        match self.exhaust_gas_temperature {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `exhaust_gas_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_exhaust_gas_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_EXHAUST_GAS_TEMPERATURE;
        let raw = &mut self.exhaust_gas_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -273 to 1734.96875 in °C.
    #[must_use]
    pub fn exhaust_gas_temperature_is_outside(&self) -> bool {
        let raw = self.exhaust_gas_temperature;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in kPa.
    #[must_use]
    pub fn coolant_filter_pressure_drop(&self) -> typed::Reading<f64> {
        match self.coolant_filter_pressure_drop {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `coolant_filter_pressure_drop` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_coolant_filter_pressure_drop(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_COOLANT_FILTER_PRESSURE_DROP;
        let raw = &mut self.coolant_filter_pressure_drop;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 125 in kPa.
    #[must_use]
    pub fn coolant_filter_pressure_drop_is_outside(&self) -> bool {
        let raw = self.coolant_filter_pressure_drop;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.particulate_trap_inlet_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.particulate_trap_inlet_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("particulate_trap_inlet_pressure");
        tell(name, said);
        let said = self.boost_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.boost_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("boost_pressure");
        tell(name, said);
        let said = self.intake_manifold_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.intake_manifold_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("intake_manifold_temperature");
        tell(name, said);
        let said = self.air_inlet_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.air_inlet_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("air_inlet_pressure");
        tell(name, said);
        let said = self.air_filter_pressure_drop();
        let said = typed::Said::from(said);
        let is_outside = self.air_filter_pressure_drop_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("air_filter_pressure_drop");
        tell(name, said);
        let said = self.exhaust_gas_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.exhaust_gas_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("exhaust_gas_temperature");
        tell(name, said);
        let said = self.coolant_filter_pressure_drop();
        let said = typed::Said::from(said);
        let is_outside = self.coolant_filter_pressure_drop_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("coolant_filter_pressure_drop");
        tell(name, said);
    }
}

/// Engine: fuel economy.
///
/// Fuel rate and economy.
///
/// Called "LFE" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FuelEconomy {
    /// SPN 183, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.05` L/h; 16 bits.
    pub fuel_rate: u16,
    /// SPN 184, SAE J1939-71 (from memory).
    ///
    /// `raw / 512` km/L; 16 bits.
    pub instantaneous_fuel_economy: u16,
    /// SPN 185, SAE J1939-71 (from memory).
    ///
    /// `raw / 512` km/L; 16 bits.
    pub average_fuel_economy: u16,
    /// SPN 51, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub throttle_position: u8,
}

impl FuelEconomy {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEF2;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_FUEL_RATE: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_INSTANTANEOUS_FUEL_ECONOMY: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_AVERAGE_FUEL_ECONOMY: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_THROTTLE_POSITION: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const FORMULA_FUEL_RATE: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_INSTANTANEOUS_FUEL_ECONOMY: typed::Formula = typed::Formula::new(1, 0, 512);
    const FORMULA_AVERAGE_FUEL_ECONOMY: typed::Formula = typed::Formula::new(1, 0, 512);
    const FORMULA_THROTTLE_POSITION: typed::Formula = typed::Formula::new(2, 0, 5);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let fuel_rate = Self::AT_FUEL_RATE.of(payload) as u16;
        let instantaneous_fuel_economy = Self::AT_INSTANTANEOUS_FUEL_ECONOMY.of(payload) as u16;
        let average_fuel_economy = Self::AT_AVERAGE_FUEL_ECONOMY.of(payload) as u16;
        let throttle_position = Self::AT_THROTTLE_POSITION.of(payload) as u8;
        Self {
            fuel_rate,
            instantaneous_fuel_economy,
            average_fuel_economy,
            throttle_position,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.fuel_rate), 16, "fuel_rate")?;
        Self::AT_FUEL_RATE.put(payload, bits);
        let number = u64::from(self.instantaneous_fuel_economy);
        let bits = typed::unsigned_bits(number, 16, "instantaneous_fuel_economy")?;
        Self::AT_INSTANTANEOUS_FUEL_ECONOMY.put(payload, bits);
        let number = u64::from(self.average_fuel_economy);
        let bits = typed::unsigned_bits(number, 16, "average_fuel_economy")?;
        Self::AT_AVERAGE_FUEL_ECONOMY.put(payload, bits);
        let number = u64::from(self.throttle_position);
        let bits = typed::unsigned_bits(number, 8, "throttle_position")?;
        Self::AT_THROTTLE_POSITION.put(payload, bits);
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

    /// The value in L/h.
    #[must_use]
    pub fn fuel_rate(&self) -> typed::Reading<f64> {
        match self.fuel_rate {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `fuel_rate` to the raw number nearest to a value in L/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fuel_rate(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_FUEL_RATE;
        let raw = &mut self.fuel_rate;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 3212.75 in L/h.
    #[must_use]
    pub fn fuel_rate_is_outside(&self) -> bool {
        let raw = self.fuel_rate;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in km/L.
    #[must_use]
    pub fn instantaneous_fuel_economy(&self) -> typed::Reading<f64> {
        match self.instantaneous_fuel_economy {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 512.0),
        }
    }

    /// Sets `instantaneous_fuel_economy` to the raw number nearest to a value in km/L.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_instantaneous_fuel_economy(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_INSTANTANEOUS_FUEL_ECONOMY;
        let raw = &mut self.instantaneous_fuel_economy;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 125.498046875 in km/L.
    #[must_use]
    pub fn instantaneous_fuel_economy_is_outside(&self) -> bool {
        let raw = self.instantaneous_fuel_economy;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in km/L.
    #[must_use]
    pub fn average_fuel_economy(&self) -> typed::Reading<f64> {
        match self.average_fuel_economy {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 512.0),
        }
    }

    /// Sets `average_fuel_economy` to the raw number nearest to a value in km/L.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_average_fuel_economy(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_AVERAGE_FUEL_ECONOMY;
        let raw = &mut self.average_fuel_economy;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 125.498046875 in km/L.
    #[must_use]
    pub fn average_fuel_economy_is_outside(&self) -> bool {
        let raw = self.average_fuel_economy;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %.
    #[must_use]
    pub fn throttle_position(&self) -> typed::Reading<f64> {
        match self.throttle_position {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `throttle_position` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_throttle_position(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_THROTTLE_POSITION;
        let raw = &mut self.throttle_position;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn throttle_position_is_outside(&self) -> bool {
        let raw = self.throttle_position;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.fuel_rate());
        let is_outside = self.fuel_rate_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel_rate");
        tell(name, said);
        let said = self.instantaneous_fuel_economy();
        let said = typed::Said::from(said);
        let is_outside = self.instantaneous_fuel_economy_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("instantaneous_fuel_economy");
        tell(name, said);
        let said = self.average_fuel_economy();
        let said = typed::Said::from(said);
        let is_outside = self.average_fuel_economy_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("average_fuel_economy");
        tell(name, said);
        let said = self.throttle_position();
        let said = typed::Said::from(said);
        let is_outside = self.throttle_position_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("throttle_position");
        tell(name, said);
    }
}

/// Engine: hours and revolutions.
///
/// Hours and revolutions of the engine's life.
///
/// Called "HOURS" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineHours {
    /// SPN 247, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.05` h; 32 bits.
    pub total_engine_hours: u32,
    /// SPN 249, SAE J1939-71 (from memory).
    ///
    /// `raw * 1000` revolutions; 32 bits.
    pub total_engine_revolutions: u32,
}

impl EngineHours {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEE5;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_TOTAL_ENGINE_HOURS: typed::Cut = typed::Cut::between((3, 7), (0, 0));
    const AT_TOTAL_ENGINE_REVOLUTIONS: typed::Cut = typed::Cut::between((7, 7), (4, 0));
    const FORMULA_TOTAL_ENGINE_HOURS: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_TOTAL_ENGINE_REVOLUTIONS: typed::Formula = typed::Formula::new(1000, 0, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let total_engine_hours = Self::AT_TOTAL_ENGINE_HOURS.of(payload) as u32;
        let total_engine_revolutions = Self::AT_TOTAL_ENGINE_REVOLUTIONS.of(payload) as u32;
        Self {
            total_engine_hours,
            total_engine_revolutions,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.total_engine_hours);
        let bits = typed::unsigned_bits(number, 32, "total_engine_hours")?;
        Self::AT_TOTAL_ENGINE_HOURS.put(payload, bits);
        let number = u64::from(self.total_engine_revolutions);
        let bits = typed::unsigned_bits(number, 32, "total_engine_revolutions")?;
        Self::AT_TOTAL_ENGINE_REVOLUTIONS.put(payload, bits);
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

    /// The value in h.
    #[must_use]
    pub fn total_engine_hours(&self) -> typed::Reading<f64> {
        match self.total_engine_hours {
            0xFE000000..=0xFEFFFFFF => typed::Reading::Fault,
            0xFF000000..=0xFFFFFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `total_engine_hours` to the raw number nearest to a value in h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_total_engine_hours(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |raw: i128| !matches!(raw, 0xFE000000..=0xFFFFFFFF);
        let formula = Self::FORMULA_TOTAL_ENGINE_HOURS;
        let raw = &mut self.total_engine_hours;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 210554060.75 in h.
    #[must_use]
    pub fn total_engine_hours_is_outside(&self) -> bool {
        let raw = self.total_engine_hours;
        matches!(raw, 0xFB000000..=0xFDFFFFFF)
    }

    /// The value in revolutions.
    #[must_use]
    pub fn total_engine_revolutions(&self) -> typed::Reading<f64> {
        match self.total_engine_revolutions {
            0xFE000000..=0xFEFFFFFF => typed::Reading::Fault,
            0xFF000000..=0xFFFFFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 1000) as f64),
        }
    }

    /// Sets `total_engine_revolutions` to the raw number nearest to a value in revolutions.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_total_engine_revolutions(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |raw: i128| !matches!(raw, 0xFE000000..=0xFFFFFFFF);
        let formula = Self::FORMULA_TOTAL_ENGINE_REVOLUTIONS;
        let raw = &mut self.total_engine_revolutions;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 4211081215000 in revolutions.
    #[must_use]
    pub fn total_engine_revolutions_is_outside(&self) -> bool {
        let raw = self.total_engine_revolutions;
        matches!(raw, 0xFB000000..=0xFDFFFFFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.total_engine_hours();
        let said = typed::Said::from(said);
        let is_outside = self.total_engine_hours_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("total_engine_hours");
        tell(name, said);
        let said = self.total_engine_revolutions();
        let said = typed::Said::from(said);
        let is_outside = self.total_engine_revolutions_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("total_engine_revolutions");
        tell(name, said);
    }
}

/// Engine: fuel used.
///
/// Fuel of the trip and of the engine's life.
///
/// Called "LFC" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FuelUsed {
    /// SPN 182, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.5` L; 32 bits.
    pub trip_fuel: u32,
    /// SPN 250, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.5` L; 32 bits.
    pub total_fuel_used: u32,
}

impl FuelUsed {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEE9;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_TRIP_FUEL: typed::Cut = typed::Cut::between((3, 7), (0, 0));
    const AT_TOTAL_FUEL_USED: typed::Cut = typed::Cut::between((7, 7), (4, 0));
    const FORMULA_TRIP_FUEL: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_TOTAL_FUEL_USED: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let trip_fuel = Self::AT_TRIP_FUEL.of(payload) as u32;
        let total_fuel_used = Self::AT_TOTAL_FUEL_USED.of(payload) as u32;
        Self {
            trip_fuel,
            total_fuel_used,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.trip_fuel), 32, "trip_fuel")?;
        Self::AT_TRIP_FUEL.put(payload, bits);
        let number = u64::from(self.total_fuel_used);
        let bits = typed::unsigned_bits(number, 32, "total_fuel_used")?;
        Self::AT_TOTAL_FUEL_USED.put(payload, bits);
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

    /// The value in L.
    #[must_use]
    pub fn trip_fuel(&self) -> typed::Reading<f64> {
        match self.trip_fuel {
            0xFE000000..=0xFEFFFFFF => typed::Reading::Fault,
            0xFF000000..=0xFFFFFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `trip_fuel` to the raw number nearest to a value in L.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_trip_fuel(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |raw: i128| !matches!(raw, 0xFE000000..=0xFFFFFFFF);
        let formula = Self::FORMULA_TRIP_FUEL;
        let raw = &mut self.trip_fuel;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2105540607.5 in L.
    #[must_use]
    pub fn trip_fuel_is_outside(&self) -> bool {
        let raw = self.trip_fuel;
        matches!(raw, 0xFB000000..=0xFDFFFFFF)
    }

    /// The value in L.
    #[must_use]
    pub fn total_fuel_used(&self) -> typed::Reading<f64> {
        match self.total_fuel_used {
            0xFE000000..=0xFEFFFFFF => typed::Reading::Fault,
            0xFF000000..=0xFFFFFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `total_fuel_used` to the raw number nearest to a value in L.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_total_fuel_used(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |raw: i128| !matches!(raw, 0xFE000000..=0xFFFFFFFF);
        let formula = Self::FORMULA_TOTAL_FUEL_USED;
        let raw = &mut self.total_fuel_used;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2105540607.5 in L.
    #[must_use]
    pub fn total_fuel_used_is_outside(&self) -> bool {
        let raw = self.total_fuel_used;
        matches!(raw, 0xFB000000..=0xFDFFFFFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.trip_fuel());
        let is_outside = self.trip_fuel_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("trip_fuel");
        tell(name, said);
        let said = self.total_fuel_used();
        let said = typed::Said::from(said);
        let is_outside = self.total_fuel_used_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("total_fuel_used");
        tell(name, said);
    }
}

/// Torque and speed request.
///
/// What somebody (transmission, traction control, cruise control) wants of the engine or the retarder. Sent fast only while
/// something is wanted: every 10 ms to an engine, every 50 ms to a retarder.
/// For reading only: this frame, sent on a live vehicle, can move it.
///
/// Called "TSC1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TorqueSpeedControl {
    /// SPN 695, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub override_control_mode: TorqueSpeedControlOverrideControlMode,
    /// SPN 696, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub requested_speed_control_conditions: TorqueSpeedControlRequestedSpeedControlConditions,
    /// SPN 897, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub override_mode_priority: TorqueSpeedControlOverrideModePriority,
    /// SPN 898, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub requested_speed: u16,
    /// SPN 518, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub requested_torque: u8,
    /// SPN 3349, SAE J1939-71 (from memory).
    ///
    /// `raw`; 3 bits.
    pub transmission_rate: TorqueSpeedControlTransmissionRate,
    /// SPN 3350, SAE J1939-71 (from memory).
    ///
    /// `raw`; 5 bits.
    pub control_purpose: u8,
    /// SPN 4191, SAE J1939-71 (from memory). To be added to requested\_torque.
    ///
    /// `raw * 0.125` %; 4 bits.
    pub requested_torque_fraction: u8,
    /// SPN 4206, SAE J1939-71 (from memory). Older senders leave it and the checksum at 15.
    ///
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 0 to 7.
    pub message_counter: u8,
    /// SPN 4207, SAE J1939-71 (from memory). Covers the identifier, bytes 1 to 7 and the counter; given here as it was sent, so that 14 is
    /// no fault; 15 is also what senders without one say.
    ///
    /// `raw`; 4 bits.
    pub message_checksum: u8,
}

impl TorqueSpeedControl {
    /// The parameter group number.
    pub const PGN: u32 = 0x0;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The shortest period.
    pub const PERIOD_SHORTEST: core::time::Duration = core::time::Duration::from_millis(10);
    /// The longest period.
    pub const PERIOD_LONGEST: core::time::Duration = core::time::Duration::from_millis(50);
    const AT_OVERRIDE_CONTROL_MODE: typed::Cut = typed::Cut::between((0, 1), (0, 0));
    const AT_REQUESTED_SPEED_CONTROL_CONDITIONS: typed::Cut = typed::Cut::between((0, 3), (0, 2));
    const AT_OVERRIDE_MODE_PRIORITY: typed::Cut = typed::Cut::between((0, 5), (0, 4));
    const AT_REQUESTED_SPEED: typed::Cut = typed::Cut::between((2, 7), (1, 0));
    const AT_REQUESTED_TORQUE: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_TRANSMISSION_RATE: typed::Cut = typed::Cut::between((4, 2), (4, 0));
    const AT_CONTROL_PURPOSE: typed::Cut = typed::Cut::between((4, 7), (4, 3));
    const AT_REQUESTED_TORQUE_FRACTION: typed::Cut = typed::Cut::between((5, 3), (5, 0));
    const AT_MESSAGE_COUNTER: typed::Cut = typed::Cut::between((7, 3), (7, 0));
    const AT_MESSAGE_CHECKSUM: typed::Cut = typed::Cut::between((7, 7), (7, 4));
    const FORMULA_REQUESTED_SPEED: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_REQUESTED_TORQUE: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_REQUESTED_TORQUE_FRACTION: typed::Formula = typed::Formula::new(1, 0, 8);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_OVERRIDE_CONTROL_MODE.of(payload);
        let override_control_mode = TorqueSpeedControlOverrideControlMode::from_raw(bits as u8);
        let bits = Self::AT_REQUESTED_SPEED_CONTROL_CONDITIONS.of(payload);
        let requested_speed_control_conditions =
            TorqueSpeedControlRequestedSpeedControlConditions::from_raw(bits as u8);
        let bits = Self::AT_OVERRIDE_MODE_PRIORITY.of(payload);
        let override_mode_priority = TorqueSpeedControlOverrideModePriority::from_raw(bits as u8);
        let requested_speed = Self::AT_REQUESTED_SPEED.of(payload) as u16;
        let requested_torque = Self::AT_REQUESTED_TORQUE.of(payload) as u8;
        let bits = Self::AT_TRANSMISSION_RATE.of(payload);
        let transmission_rate = TorqueSpeedControlTransmissionRate::from_raw(bits as u8);
        let control_purpose = Self::AT_CONTROL_PURPOSE.of(payload) as u8;
        let requested_torque_fraction = Self::AT_REQUESTED_TORQUE_FRACTION.of(payload) as u8;
        let message_counter = Self::AT_MESSAGE_COUNTER.of(payload) as u8;
        let message_checksum = Self::AT_MESSAGE_CHECKSUM.of(payload) as u8;
        Self {
            override_control_mode,
            requested_speed_control_conditions,
            override_mode_priority,
            requested_speed,
            requested_torque,
            transmission_rate,
            control_purpose,
            requested_torque_fraction,
            message_counter,
            message_checksum,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.override_control_mode.raw());
        let bits = typed::unsigned_bits(number, 2, "override_control_mode")?;
        Self::AT_OVERRIDE_CONTROL_MODE.put(payload, bits);
        let number = u64::from(self.requested_speed_control_conditions.raw());
        let bits = typed::unsigned_bits(number, 2, "requested_speed_control_conditions")?;
        Self::AT_REQUESTED_SPEED_CONTROL_CONDITIONS.put(payload, bits);
        let number = u64::from(self.override_mode_priority.raw());
        let bits = typed::unsigned_bits(number, 2, "override_mode_priority")?;
        Self::AT_OVERRIDE_MODE_PRIORITY.put(payload, bits);
        let number = u64::from(self.requested_speed);
        let bits = typed::unsigned_bits(number, 16, "requested_speed")?;
        Self::AT_REQUESTED_SPEED.put(payload, bits);
        let number = u64::from(self.requested_torque);
        let bits = typed::unsigned_bits(number, 8, "requested_torque")?;
        Self::AT_REQUESTED_TORQUE.put(payload, bits);
        let number = u64::from(self.transmission_rate.raw());
        let bits = typed::unsigned_bits(number, 3, "transmission_rate")?;
        Self::AT_TRANSMISSION_RATE.put(payload, bits);
        let number = u64::from(self.control_purpose);
        let bits = typed::unsigned_bits(number, 5, "control_purpose")?;
        Self::AT_CONTROL_PURPOSE.put(payload, bits);
        let number = u64::from(self.requested_torque_fraction);
        let bits = typed::unsigned_bits(number, 4, "requested_torque_fraction")?;
        Self::AT_REQUESTED_TORQUE_FRACTION.put(payload, bits);
        let number = u64::from(self.message_counter);
        let bits = typed::unsigned_bits(number, 4, "message_counter")?;
        Self::AT_MESSAGE_COUNTER.put(payload, bits);
        let number = u64::from(self.message_checksum);
        let bits = typed::unsigned_bits(number, 4, "message_checksum")?;
        Self::AT_MESSAGE_CHECKSUM.put(payload, bits);
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
    pub fn requested_speed(&self) -> typed::Reading<f64> {
        match self.requested_speed {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `requested_speed` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_requested_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_REQUESTED_SPEED;
        let raw = &mut self.requested_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn requested_speed_is_outside(&self) -> bool {
        let raw = self.requested_speed;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %.
    #[must_use]
    pub fn requested_torque(&self) -> typed::Reading<f64> {
        match self.requested_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `requested_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_requested_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_REQUESTED_TORQUE;
        let raw = &mut self.requested_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn requested_torque_is_outside(&self) -> bool {
        let raw = self.requested_torque;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn control_purpose(&self) -> typed::Reading<u8> {
        match self.control_purpose {
            30 => typed::Reading::Fault,
            31 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn requested_torque_fraction(&self) -> typed::Reading<f64> {
        match self.requested_torque_fraction {
            14 => typed::Reading::Fault,
            15 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `requested_torque_fraction` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_requested_torque_fraction(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 15);
        let is_value = |raw: i128| !matches!(raw, 14..=15);
        let formula = Self::FORMULA_REQUESTED_TORQUE_FRACTION;
        let raw = &mut self.requested_torque_fraction;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 0.875 in %.
    #[must_use]
    pub fn requested_torque_fraction_is_outside(&self) -> bool {
        let raw = self.requested_torque_fraction;
        matches!(raw, 8..=13)
    }

    /// What the raw number says.
    #[must_use]
    pub fn message_counter(&self) -> typed::Reading<u8> {
        match self.message_counter {
            15 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_message_counter(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 7, 1);
        next as u8
    }

    /// What the raw number says.
    #[must_use]
    pub fn message_checksum(&self) -> typed::Reading<u8> {
        match self.message_checksum {
            15 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.override_control_mode;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.override_control_mode;
        let said = said.word(state.word());
        let name = typed::Name::of("override_control_mode");
        tell(name, said);
        let said = self.requested_speed_control_conditions;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.requested_speed_control_conditions;
        let said = said.word(state.word());
        let name = typed::Name::of("requested_speed_control_conditions");
        tell(name, said);
        let said = self.override_mode_priority;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.override_mode_priority;
        let said = said.word(state.word());
        let name = typed::Name::of("override_mode_priority");
        tell(name, said);
        let said = self.requested_speed();
        let said = typed::Said::from(said);
        let is_outside = self.requested_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("requested_speed");
        tell(name, said);
        let said = self.requested_torque();
        let said = typed::Said::from(said);
        let is_outside = self.requested_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("requested_torque");
        tell(name, said);
        let said = self.transmission_rate;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.transmission_rate;
        let said = said.word(state.word());
        let name = typed::Name::of("transmission_rate");
        tell(name, said);
        let said = self.control_purpose();
        let said = typed::Said::from(said);
        let name = typed::Name::of("control_purpose");
        tell(name, said);
        let said = self.requested_torque_fraction();
        let said = typed::Said::from(said);
        let is_outside = self.requested_torque_fraction_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("requested_torque_fraction");
        tell(name, said);
        let said = self.message_counter();
        let said = typed::Said::from(said);
        let name = typed::Name::of("message_counter");
        tell(name, said);
        let said = self.message_checksum();
        let said = typed::Said::from(said);
        let name = typed::Name::of("message_checksum");
        tell(name, said);
    }
}

/// Transmission: shafts.
///
/// Shafts and state of the driveline.
///
/// Called "ETC1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TransmissionShafts {
    /// SPN 560, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub driveline: TransmissionShaftsDriveline,
    /// SPN 573, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub converter_lockup: TransmissionShaftsDriveline,
    /// SPN 574, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub shift: TransmissionShaftsShift,
    /// SPN 191, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub output_shaft_speed: u16,
    /// SPN 522, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub percent_clutch_slip: u8,
    /// SPN 606, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub momentary_overspeed: TransmissionShaftsMomentaryOverspeed,
    /// SPN 607, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub progressive_shift: TransmissionShaftsProgressiveShift,
    /// SPN 161, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub input_shaft_speed: u16,
    /// SPN 1482, SAE J1939-71 (from memory). Address of the unit that governs the transmission.
    ///
    /// `raw`; 8 bits.
    pub governing_address: u8,
}

impl TransmissionShafts {
    /// The parameter group number.
    pub const PGN: u32 = 0xF002;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(10);
    const AT_DRIVELINE: typed::Cut = typed::Cut::between((0, 1), (0, 0));
    const AT_CONVERTER_LOCKUP: typed::Cut = typed::Cut::between((0, 3), (0, 2));
    const AT_SHIFT: typed::Cut = typed::Cut::between((0, 5), (0, 4));
    const AT_OUTPUT_SHAFT_SPEED: typed::Cut = typed::Cut::between((2, 7), (1, 0));
    const AT_PERCENT_CLUTCH_SLIP: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_MOMENTARY_OVERSPEED: typed::Cut = typed::Cut::between((4, 1), (4, 0));
    const AT_PROGRESSIVE_SHIFT: typed::Cut = typed::Cut::between((4, 3), (4, 2));
    const AT_INPUT_SHAFT_SPEED: typed::Cut = typed::Cut::between((6, 7), (5, 0));
    const AT_GOVERNING_ADDRESS: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_OUTPUT_SHAFT_SPEED: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_PERCENT_CLUTCH_SLIP: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_INPUT_SHAFT_SPEED: typed::Formula = typed::Formula::new(1, 0, 8);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_DRIVELINE.of(payload);
        let driveline = TransmissionShaftsDriveline::from_raw(bits as u8);
        let bits = Self::AT_CONVERTER_LOCKUP.of(payload);
        let converter_lockup = TransmissionShaftsDriveline::from_raw(bits as u8);
        let bits = Self::AT_SHIFT.of(payload);
        let shift = TransmissionShaftsShift::from_raw(bits as u8);
        let output_shaft_speed = Self::AT_OUTPUT_SHAFT_SPEED.of(payload) as u16;
        let percent_clutch_slip = Self::AT_PERCENT_CLUTCH_SLIP.of(payload) as u8;
        let bits = Self::AT_MOMENTARY_OVERSPEED.of(payload);
        let momentary_overspeed = TransmissionShaftsMomentaryOverspeed::from_raw(bits as u8);
        let bits = Self::AT_PROGRESSIVE_SHIFT.of(payload);
        let progressive_shift = TransmissionShaftsProgressiveShift::from_raw(bits as u8);
        let input_shaft_speed = Self::AT_INPUT_SHAFT_SPEED.of(payload) as u16;
        let governing_address = Self::AT_GOVERNING_ADDRESS.of(payload) as u8;
        Self {
            driveline,
            converter_lockup,
            shift,
            output_shaft_speed,
            percent_clutch_slip,
            momentary_overspeed,
            progressive_shift,
            input_shaft_speed,
            governing_address,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.driveline.raw());
        let bits = typed::unsigned_bits(number, 2, "driveline")?;
        Self::AT_DRIVELINE.put(payload, bits);
        let number = u64::from(self.converter_lockup.raw());
        let bits = typed::unsigned_bits(number, 2, "converter_lockup")?;
        Self::AT_CONVERTER_LOCKUP.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.shift.raw()), 2, "shift")?;
        Self::AT_SHIFT.put(payload, bits);
        let number = u64::from(self.output_shaft_speed);
        let bits = typed::unsigned_bits(number, 16, "output_shaft_speed")?;
        Self::AT_OUTPUT_SHAFT_SPEED.put(payload, bits);
        let number = u64::from(self.percent_clutch_slip);
        let bits = typed::unsigned_bits(number, 8, "percent_clutch_slip")?;
        Self::AT_PERCENT_CLUTCH_SLIP.put(payload, bits);
        let number = u64::from(self.momentary_overspeed.raw());
        let bits = typed::unsigned_bits(number, 2, "momentary_overspeed")?;
        Self::AT_MOMENTARY_OVERSPEED.put(payload, bits);
        let number = u64::from(self.progressive_shift.raw());
        let bits = typed::unsigned_bits(number, 2, "progressive_shift")?;
        Self::AT_PROGRESSIVE_SHIFT.put(payload, bits);
        let number = u64::from(self.input_shaft_speed);
        let bits = typed::unsigned_bits(number, 16, "input_shaft_speed")?;
        Self::AT_INPUT_SHAFT_SPEED.put(payload, bits);
        let number = u64::from(self.governing_address);
        let bits = typed::unsigned_bits(number, 8, "governing_address")?;
        Self::AT_GOVERNING_ADDRESS.put(payload, bits);
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
    pub fn driveline(&self) -> typed::Reading<TransmissionShaftsDriveline> {
        match self.driveline.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.driveline),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn converter_lockup(&self) -> typed::Reading<TransmissionShaftsDriveline> {
        match self.converter_lockup.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.converter_lockup),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn shift(&self) -> typed::Reading<TransmissionShaftsShift> {
        match self.shift.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.shift),
        }
    }

    /// The value in rpm.
    #[must_use]
    pub fn output_shaft_speed(&self) -> typed::Reading<f64> {
        match self.output_shaft_speed {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `output_shaft_speed` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_output_shaft_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_OUTPUT_SHAFT_SPEED;
        let raw = &mut self.output_shaft_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn output_shaft_speed_is_outside(&self) -> bool {
        let raw = self.output_shaft_speed;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %.
    #[must_use]
    pub fn percent_clutch_slip(&self) -> typed::Reading<f64> {
        match self.percent_clutch_slip {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `percent_clutch_slip` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_percent_clutch_slip(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PERCENT_CLUTCH_SLIP;
        let raw = &mut self.percent_clutch_slip;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn percent_clutch_slip_is_outside(&self) -> bool {
        let raw = self.percent_clutch_slip;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn momentary_overspeed(&self) -> typed::Reading<TransmissionShaftsMomentaryOverspeed> {
        match self.momentary_overspeed.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.momentary_overspeed),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn progressive_shift(&self) -> typed::Reading<TransmissionShaftsProgressiveShift> {
        match self.progressive_shift.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.progressive_shift),
        }
    }

    /// The value in rpm.
    #[must_use]
    pub fn input_shaft_speed(&self) -> typed::Reading<f64> {
        match self.input_shaft_speed {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `input_shaft_speed` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_input_shaft_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_INPUT_SHAFT_SPEED;
        let raw = &mut self.input_shaft_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn input_shaft_speed_is_outside(&self) -> bool {
        let raw = self.input_shaft_speed;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// What the raw number says.
    #[must_use]
    pub fn governing_address(&self) -> typed::Reading<u8> {
        match self.governing_address {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.driveline();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.driveline;
        let said = said.word(state.word());
        let name = typed::Name::of("driveline");
        tell(name, said);
        let said = self.converter_lockup();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.converter_lockup;
        let said = said.word(state.word());
        let name = typed::Name::of("converter_lockup");
        tell(name, said);
        let said = self.shift();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.shift;
        let said = said.word(state.word());
        let name = typed::Name::of("shift");
        tell(name, said);
        let said = self.output_shaft_speed();
        let said = typed::Said::from(said);
        let is_outside = self.output_shaft_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("output_shaft_speed");
        tell(name, said);
        let said = self.percent_clutch_slip();
        let said = typed::Said::from(said);
        let is_outside = self.percent_clutch_slip_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("percent_clutch_slip");
        tell(name, said);
        let said = self.momentary_overspeed();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.momentary_overspeed;
        let said = said.word(state.word());
        let name = typed::Name::of("momentary_overspeed");
        tell(name, said);
        let said = self.progressive_shift();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.progressive_shift;
        let said = said.word(state.word());
        let name = typed::Name::of("progressive_shift");
        tell(name, said);
        let said = self.input_shaft_speed();
        let said = typed::Said::from(said);
        let is_outside = self.input_shaft_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("input_shaft_speed");
        tell(name, said);
        let said = self.governing_address();
        let said = typed::Said::from(said);
        let name = typed::Name::of("governing_address");
        tell(name, said);
    }
}

/// Transmission: gears.
///
/// Gears. Negative is reverse, 0 is neutral, positive is forward.
///
/// Called "ETC2" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TransmissionGears<'a> {
    /// SPN 524, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` gear; 8 bits.
    pub selected_gear: u8,
    /// SPN 526, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.001`; 16 bits.
    pub actual_gear_ratio: u16,
    /// SPN 523, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` gear; 8 bits.
    pub current_gear: u8,
    /// SPN 162, SAE J1939-71 (from memory). As the lever shows it.
    ///
    /// Text, byte by byte.
    pub requested_range: &'a [u8],
    /// SPN 163, SAE J1939-71 (from memory). As the display shows it.
    ///
    /// Text, byte by byte.
    pub current_range: &'a [u8],
}

impl<'a> TransmissionGears<'a> {
    /// The parameter group number.
    pub const PGN: u32 = 0xF005;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_SELECTED_GEAR: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_ACTUAL_GEAR_RATIO: typed::Cut = typed::Cut::between((2, 7), (1, 0));
    const AT_CURRENT_GEAR: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const FORMULA_SELECTED_GEAR: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_ACTUAL_GEAR_RATIO: typed::Formula = typed::Formula::new(1, 0, 1000);
    const FORMULA_CURRENT_GEAR: typed::Formula = typed::Formula::new(1, -125, 1);

    #[inline]
    fn read(payload: &'a [u8; 8]) -> Self {
        let selected_gear = Self::AT_SELECTED_GEAR.of(payload) as u8;
        let actual_gear_ratio = Self::AT_ACTUAL_GEAR_RATIO.of(payload) as u16;
        let current_gear = Self::AT_CURRENT_GEAR.of(payload) as u8;
        let requested_range = typed::first_of(payload, 4, 5);
        let current_range = typed::first_of(payload, 6, 7);
        Self {
            selected_gear,
            actual_gear_ratio,
            current_gear,
            requested_range,
            current_range,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.selected_gear);
        let bits = typed::unsigned_bits(number, 8, "selected_gear")?;
        Self::AT_SELECTED_GEAR.put(payload, bits);
        let number = u64::from(self.actual_gear_ratio);
        let bits = typed::unsigned_bits(number, 16, "actual_gear_ratio")?;
        Self::AT_ACTUAL_GEAR_RATIO.put(payload, bits);
        let number = u64::from(self.current_gear);
        let bits = typed::unsigned_bits(number, 8, "current_gear")?;
        Self::AT_CURRENT_GEAR.put(payload, bits);
        typed::put_bytes(payload, self.requested_range, 4, Some(6), "requested_range")?;
        typed::put_bytes(payload, self.current_range, 6, Some(8), "current_range")?;
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
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in gear.
    #[must_use]
    pub fn selected_gear(&self) -> typed::Reading<f64> {
        match self.selected_gear {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `selected_gear` to the raw number nearest to a value in gear.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_selected_gear(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_SELECTED_GEAR;
        let raw = &mut self.selected_gear;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 126 in gear.
    #[must_use]
    pub fn selected_gear_is_outside(&self) -> bool {
        let raw = self.selected_gear;
        matches!(raw, 252..=253)
    }

    /// The state word of the raw number.
    #[must_use]
    pub fn selected_gear_state(&self) -> TransmissionGearsSelectedGear {
        let raw = self.selected_gear;
        TransmissionGearsSelectedGear::from_raw(raw)
    }

    /// The value.
    #[must_use]
    pub fn actual_gear_ratio(&self) -> typed::Reading<f64> {
        match self.actual_gear_ratio {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 1000.0),
        }
    }

    /// Sets `actual_gear_ratio` to the raw number nearest to a value.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_actual_gear_ratio(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_ACTUAL_GEAR_RATIO;
        let raw = &mut self.actual_gear_ratio;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 64.255.
    #[must_use]
    pub fn actual_gear_ratio_is_outside(&self) -> bool {
        let raw = self.actual_gear_ratio;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in gear.
    #[must_use]
    pub fn current_gear(&self) -> typed::Reading<f64> {
        match self.current_gear {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `current_gear` to the raw number nearest to a value in gear.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_current_gear(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_CURRENT_GEAR;
        let raw = &mut self.current_gear;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 126 in gear.
    #[must_use]
    pub fn current_gear_is_outside(&self) -> bool {
        let raw = self.current_gear;
        matches!(raw, 252..=253)
    }

    /// The state word of the raw number.
    #[must_use]
    pub fn current_gear_state(&self) -> TransmissionGearsSelectedGear {
        let raw = self.current_gear;
        TransmissionGearsSelectedGear::from_raw(raw)
    }

    /// The characters, without the NUL bytes at their end.
    #[must_use]
    pub fn requested_range(&self) -> typed::Text<'a> {
        typed::Text::new(self.requested_range, typed::Charset::Ascii)
    }

    /// The characters, without the NUL bytes at their end.
    #[must_use]
    pub fn current_range(&self) -> typed::Text<'a> {
        typed::Text::new(self.current_range, typed::Charset::Ascii)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.selected_gear());
        let state = self.selected_gear_state();
        let said = said.word(state.word());
        let is_outside = self.selected_gear_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("selected_gear");
        tell(name, said);
        let said = self.actual_gear_ratio();
        let said = typed::Said::from(said);
        let is_outside = self.actual_gear_ratio_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("actual_gear_ratio");
        tell(name, said);
        let said = typed::Said::from(self.current_gear());
        let state = self.current_gear_state();
        let said = said.word(state.word());
        let is_outside = self.current_gear_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("current_gear");
        tell(name, said);
        let said = self.requested_range();
        let said = typed::Said::from(said);
        let name = typed::Name::of("requested_range");
        tell(name, said);
        let said = typed::Said::from(self.current_range());
        let name = typed::Name::of("current_range");
        tell(name, said);
    }
}

/// Transmission: fluids.
///
/// Oil and clutch of the transmission.
///
/// Called "TF1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TransmissionFluids {
    /// SPN 123, SAE J1939-71 (from memory).
    ///
    /// `raw * 16` kPa; 8 bits.
    pub clutch_pressure: u8,
    /// SPN 124, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub transmission_oil_level: u8,
    /// SPN 126, SAE J1939-71 (from memory).
    ///
    /// `raw * 2` kPa; 8 bits.
    pub transmission_filter_pressure_drop: u8,
    /// SPN 127, SAE J1939-71 (from memory).
    ///
    /// `raw * 16` kPa; 8 bits.
    pub transmission_oil_pressure: u8,
    /// SPN 177, SAE J1939-71 (from memory).
    ///
    /// `raw / 32 - 273` °C; 16 bits.
    pub transmission_oil_temperature: u16,
}

impl TransmissionFluids {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEF8;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_CLUTCH_PRESSURE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_TRANSMISSION_OIL_LEVEL: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_TRANSMISSION_FILTER_PRESSURE_DROP: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_TRANSMISSION_OIL_PRESSURE: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_TRANSMISSION_OIL_TEMPERATURE: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const FORMULA_CLUTCH_PRESSURE: typed::Formula = typed::Formula::new(16, 0, 1);
    const FORMULA_TRANSMISSION_OIL_LEVEL: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_TRANSMISSION_FILTER_PRESSURE_DROP: typed::Formula = typed::Formula::new(2, 0, 1);
    const FORMULA_TRANSMISSION_OIL_PRESSURE: typed::Formula = typed::Formula::new(16, 0, 1);
    const FORMULA_TRANSMISSION_OIL_TEMPERATURE: typed::Formula = typed::Formula::new(1, -8736, 32);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let clutch_pressure = Self::AT_CLUTCH_PRESSURE.of(payload) as u8;
        let transmission_oil_level = Self::AT_TRANSMISSION_OIL_LEVEL.of(payload) as u8;
        let bits = Self::AT_TRANSMISSION_FILTER_PRESSURE_DROP.of(payload);
        let transmission_filter_pressure_drop = bits as u8;
        let transmission_oil_pressure = Self::AT_TRANSMISSION_OIL_PRESSURE.of(payload) as u8;
        let bits = Self::AT_TRANSMISSION_OIL_TEMPERATURE.of(payload);
        let transmission_oil_temperature = bits as u16;
        Self {
            clutch_pressure,
            transmission_oil_level,
            transmission_filter_pressure_drop,
            transmission_oil_pressure,
            transmission_oil_temperature,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.clutch_pressure);
        let bits = typed::unsigned_bits(number, 8, "clutch_pressure")?;
        Self::AT_CLUTCH_PRESSURE.put(payload, bits);
        let number = u64::from(self.transmission_oil_level);
        let bits = typed::unsigned_bits(number, 8, "transmission_oil_level")?;
        Self::AT_TRANSMISSION_OIL_LEVEL.put(payload, bits);
        let number = u64::from(self.transmission_filter_pressure_drop);
        let bits = typed::unsigned_bits(number, 8, "transmission_filter_pressure_drop")?;
        Self::AT_TRANSMISSION_FILTER_PRESSURE_DROP.put(payload, bits);
        let number = u64::from(self.transmission_oil_pressure);
        let bits = typed::unsigned_bits(number, 8, "transmission_oil_pressure")?;
        Self::AT_TRANSMISSION_OIL_PRESSURE.put(payload, bits);
        let number = u64::from(self.transmission_oil_temperature);
        let bits = typed::unsigned_bits(number, 16, "transmission_oil_temperature")?;
        Self::AT_TRANSMISSION_OIL_TEMPERATURE.put(payload, bits);
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

    /// The value in kPa.
    #[must_use]
    pub fn clutch_pressure(&self) -> typed::Reading<f64> {
        match self.clutch_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 16) as f64),
        }
    }

    /// Sets `clutch_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_clutch_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_CLUTCH_PRESSURE;
        let raw = &mut self.clutch_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 4000 in kPa.
    #[must_use]
    pub fn clutch_pressure_is_outside(&self) -> bool {
        let raw = self.clutch_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn transmission_oil_level(&self) -> typed::Reading<f64> {
        match self.transmission_oil_level {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `transmission_oil_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_transmission_oil_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_TRANSMISSION_OIL_LEVEL;
        let raw = &mut self.transmission_oil_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn transmission_oil_level_is_outside(&self) -> bool {
        let raw = self.transmission_oil_level;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn transmission_filter_pressure_drop(&self) -> typed::Reading<f64> {
        match self.transmission_filter_pressure_drop {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64),
        }
    }

    /// Sets `transmission_filter_pressure_drop` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_transmission_filter_pressure_drop(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_TRANSMISSION_FILTER_PRESSURE_DROP;
        let raw = &mut self.transmission_filter_pressure_drop;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 500 in kPa.
    #[must_use]
    pub fn transmission_filter_pressure_drop_is_outside(&self) -> bool {
        let raw = self.transmission_filter_pressure_drop;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn transmission_oil_pressure(&self) -> typed::Reading<f64> {
        match self.transmission_oil_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 16) as f64),
        }
    }

    /// Sets `transmission_oil_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_transmission_oil_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_TRANSMISSION_OIL_PRESSURE;
        let raw = &mut self.transmission_oil_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 4000 in kPa.
    #[must_use]
    pub fn transmission_oil_pressure_is_outside(&self) -> bool {
        let raw = self.transmission_oil_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn transmission_oil_temperature(&self) -> typed::Reading<f64> {
        match self.transmission_oil_temperature {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `transmission_oil_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_transmission_oil_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_TRANSMISSION_OIL_TEMPERATURE;
        let raw = &mut self.transmission_oil_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -273 to 1734.96875 in °C.
    #[must_use]
    pub fn transmission_oil_temperature_is_outside(&self) -> bool {
        let raw = self.transmission_oil_temperature;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.clutch_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.clutch_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("clutch_pressure");
        tell(name, said);
        let said = self.transmission_oil_level();
        let said = typed::Said::from(said);
        let is_outside = self.transmission_oil_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("transmission_oil_level");
        tell(name, said);
        let said = self.transmission_filter_pressure_drop();
        let said = typed::Said::from(said);
        let is_outside = self.transmission_filter_pressure_drop_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("transmission_filter_pressure_drop");
        tell(name, said);
        let said = self.transmission_oil_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.transmission_oil_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("transmission_oil_pressure");
        tell(name, said);
        let said = self.transmission_oil_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.transmission_oil_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("transmission_oil_temperature");
        tell(name, said);
    }
}

/// Brakes: state.
///
/// State of the brake control. For reading only: leave brake systems to people licensed for them.
///
/// Called "EBC1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BrakeControl {
    /// SPN 561, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub traction_engine_control: J1939Activity,
    /// SPN 562, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub traction_brake_control: J1939Activity,
    /// SPN 563, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub abs_active: J1939Activity,
    /// SPN 1121, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub ebs_brake_switch: J1939Pedal,
    /// SPN 521, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub brake_pedal_position: u8,
    /// SPN 575, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub abs_off_road_switch: J1939Switch,
    /// SPN 576, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub traction_off_road_switch: J1939Switch,
    /// SPN 577, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub hill_holder_switch: J1939Switch,
    /// SPN 973, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub engine_retarder_selection: u8,
    /// SPN 1243, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub abs_operation: BrakeControlAbsOperation,
    /// SPN 1439, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub red_warning_lamp: J1939Switch,
    /// SPN 1438, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub amber_warning_lamp: J1939Switch,
    /// SPN 1793, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub traction_information_lamp: J1939Switch,
    /// SPN 1481, SAE J1939-71 (from memory). Address of the unit that governs the brakes.
    ///
    /// `raw`; 8 bits.
    pub governing_address: u8,
}

impl BrakeControl {
    /// The parameter group number.
    pub const PGN: u32 = 0xF001;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_TRACTION_ENGINE_CONTROL: typed::Cut = typed::Cut::between((0, 1), (0, 0));
    const AT_TRACTION_BRAKE_CONTROL: typed::Cut = typed::Cut::between((0, 3), (0, 2));
    const AT_ABS_ACTIVE: typed::Cut = typed::Cut::between((0, 5), (0, 4));
    const AT_EBS_BRAKE_SWITCH: typed::Cut = typed::Cut::between((0, 7), (0, 6));
    const AT_BRAKE_PEDAL_POSITION: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_ABS_OFF_ROAD_SWITCH: typed::Cut = typed::Cut::between((2, 1), (2, 0));
    const AT_TRACTION_OFF_ROAD_SWITCH: typed::Cut = typed::Cut::between((2, 3), (2, 2));
    const AT_HILL_HOLDER_SWITCH: typed::Cut = typed::Cut::between((2, 5), (2, 4));
    const AT_ENGINE_RETARDER_SELECTION: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_ABS_OPERATION: typed::Cut = typed::Cut::between((5, 1), (5, 0));
    const AT_RED_WARNING_LAMP: typed::Cut = typed::Cut::between((5, 3), (5, 2));
    const AT_AMBER_WARNING_LAMP: typed::Cut = typed::Cut::between((5, 5), (5, 4));
    const AT_TRACTION_INFORMATION_LAMP: typed::Cut = typed::Cut::between((5, 7), (5, 6));
    const AT_GOVERNING_ADDRESS: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const FORMULA_BRAKE_PEDAL_POSITION: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_ENGINE_RETARDER_SELECTION: typed::Formula = typed::Formula::new(2, 0, 5);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_TRACTION_ENGINE_CONTROL.of(payload);
        let traction_engine_control = J1939Activity::from_raw(bits as u8);
        let bits = Self::AT_TRACTION_BRAKE_CONTROL.of(payload);
        let traction_brake_control = J1939Activity::from_raw(bits as u8);
        let bits = Self::AT_ABS_ACTIVE.of(payload);
        let abs_active = J1939Activity::from_raw(bits as u8);
        let bits = Self::AT_EBS_BRAKE_SWITCH.of(payload);
        let ebs_brake_switch = J1939Pedal::from_raw(bits as u8);
        let brake_pedal_position = Self::AT_BRAKE_PEDAL_POSITION.of(payload) as u8;
        let bits = Self::AT_ABS_OFF_ROAD_SWITCH.of(payload);
        let abs_off_road_switch = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_TRACTION_OFF_ROAD_SWITCH.of(payload);
        let traction_off_road_switch = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_HILL_HOLDER_SWITCH.of(payload);
        let hill_holder_switch = J1939Switch::from_raw(bits as u8);
        let engine_retarder_selection = Self::AT_ENGINE_RETARDER_SELECTION.of(payload) as u8;
        let bits = Self::AT_ABS_OPERATION.of(payload);
        let abs_operation = BrakeControlAbsOperation::from_raw(bits as u8);
        let bits = Self::AT_RED_WARNING_LAMP.of(payload);
        let red_warning_lamp = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_AMBER_WARNING_LAMP.of(payload);
        let amber_warning_lamp = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_TRACTION_INFORMATION_LAMP.of(payload);
        let traction_information_lamp = J1939Switch::from_raw(bits as u8);
        let governing_address = Self::AT_GOVERNING_ADDRESS.of(payload) as u8;
        Self {
            traction_engine_control,
            traction_brake_control,
            abs_active,
            ebs_brake_switch,
            brake_pedal_position,
            abs_off_road_switch,
            traction_off_road_switch,
            hill_holder_switch,
            engine_retarder_selection,
            abs_operation,
            red_warning_lamp,
            amber_warning_lamp,
            traction_information_lamp,
            governing_address,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.traction_engine_control.raw());
        let bits = typed::unsigned_bits(number, 2, "traction_engine_control")?;
        Self::AT_TRACTION_ENGINE_CONTROL.put(payload, bits);
        let number = u64::from(self.traction_brake_control.raw());
        let bits = typed::unsigned_bits(number, 2, "traction_brake_control")?;
        Self::AT_TRACTION_BRAKE_CONTROL.put(payload, bits);
        let number = u64::from(self.abs_active.raw());
        let bits = typed::unsigned_bits(number, 2, "abs_active")?;
        Self::AT_ABS_ACTIVE.put(payload, bits);
        let number = u64::from(self.ebs_brake_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "ebs_brake_switch")?;
        Self::AT_EBS_BRAKE_SWITCH.put(payload, bits);
        let number = u64::from(self.brake_pedal_position);
        let bits = typed::unsigned_bits(number, 8, "brake_pedal_position")?;
        Self::AT_BRAKE_PEDAL_POSITION.put(payload, bits);
        let number = u64::from(self.abs_off_road_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "abs_off_road_switch")?;
        Self::AT_ABS_OFF_ROAD_SWITCH.put(payload, bits);
        let number = u64::from(self.traction_off_road_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "traction_off_road_switch")?;
        Self::AT_TRACTION_OFF_ROAD_SWITCH.put(payload, bits);
        let number = u64::from(self.hill_holder_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "hill_holder_switch")?;
        Self::AT_HILL_HOLDER_SWITCH.put(payload, bits);
        let number = u64::from(self.engine_retarder_selection);
        let bits = typed::unsigned_bits(number, 8, "engine_retarder_selection")?;
        Self::AT_ENGINE_RETARDER_SELECTION.put(payload, bits);
        let number = u64::from(self.abs_operation.raw());
        let bits = typed::unsigned_bits(number, 2, "abs_operation")?;
        Self::AT_ABS_OPERATION.put(payload, bits);
        let number = u64::from(self.red_warning_lamp.raw());
        let bits = typed::unsigned_bits(number, 2, "red_warning_lamp")?;
        Self::AT_RED_WARNING_LAMP.put(payload, bits);
        let number = u64::from(self.amber_warning_lamp.raw());
        let bits = typed::unsigned_bits(number, 2, "amber_warning_lamp")?;
        Self::AT_AMBER_WARNING_LAMP.put(payload, bits);
        let number = u64::from(self.traction_information_lamp.raw());
        let bits = typed::unsigned_bits(number, 2, "traction_information_lamp")?;
        Self::AT_TRACTION_INFORMATION_LAMP.put(payload, bits);
        let number = u64::from(self.governing_address);
        let bits = typed::unsigned_bits(number, 8, "governing_address")?;
        Self::AT_GOVERNING_ADDRESS.put(payload, bits);
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
    pub fn traction_engine_control(&self) -> typed::Reading<J1939Activity> {
        match self.traction_engine_control.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.traction_engine_control),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn traction_brake_control(&self) -> typed::Reading<J1939Activity> {
        match self.traction_brake_control.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.traction_brake_control),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn abs_active(&self) -> typed::Reading<J1939Activity> {
        match self.abs_active.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.abs_active),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn ebs_brake_switch(&self) -> typed::Reading<J1939Pedal> {
        match self.ebs_brake_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.ebs_brake_switch),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn brake_pedal_position(&self) -> typed::Reading<f64> {
        match self.brake_pedal_position {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `brake_pedal_position` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_brake_pedal_position(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_BRAKE_PEDAL_POSITION;
        let raw = &mut self.brake_pedal_position;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn brake_pedal_position_is_outside(&self) -> bool {
        let raw = self.brake_pedal_position;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn abs_off_road_switch(&self) -> typed::Reading<J1939Switch> {
        match self.abs_off_road_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.abs_off_road_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn traction_off_road_switch(&self) -> typed::Reading<J1939Switch> {
        match self.traction_off_road_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.traction_off_road_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn hill_holder_switch(&self) -> typed::Reading<J1939Switch> {
        match self.hill_holder_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.hill_holder_switch),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn engine_retarder_selection(&self) -> typed::Reading<f64> {
        match self.engine_retarder_selection {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `engine_retarder_selection` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_engine_retarder_selection(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ENGINE_RETARDER_SELECTION;
        let raw = &mut self.engine_retarder_selection;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn engine_retarder_selection_is_outside(&self) -> bool {
        let raw = self.engine_retarder_selection;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn abs_operation(&self) -> typed::Reading<BrakeControlAbsOperation> {
        match self.abs_operation.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.abs_operation),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn red_warning_lamp(&self) -> typed::Reading<J1939Switch> {
        match self.red_warning_lamp.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.red_warning_lamp),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn amber_warning_lamp(&self) -> typed::Reading<J1939Switch> {
        match self.amber_warning_lamp.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.amber_warning_lamp),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn traction_information_lamp(&self) -> typed::Reading<J1939Switch> {
        match self.traction_information_lamp.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.traction_information_lamp),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn governing_address(&self) -> typed::Reading<u8> {
        match self.governing_address {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.traction_engine_control();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.traction_engine_control;
        let said = said.word(state.word());
        let name = typed::Name::of("traction_engine_control");
        tell(name, said);
        let said = self.traction_brake_control();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.traction_brake_control;
        let said = said.word(state.word());
        let name = typed::Name::of("traction_brake_control");
        tell(name, said);
        let said = self.abs_active();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.abs_active;
        let said = said.word(state.word());
        let name = typed::Name::of("abs_active");
        tell(name, said);
        let said = self.ebs_brake_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.ebs_brake_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("ebs_brake_switch");
        tell(name, said);
        let said = self.brake_pedal_position();
        let said = typed::Said::from(said);
        let is_outside = self.brake_pedal_position_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("brake_pedal_position");
        tell(name, said);
        let said = self.abs_off_road_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.abs_off_road_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("abs_off_road_switch");
        tell(name, said);
        let said = self.traction_off_road_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.traction_off_road_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("traction_off_road_switch");
        tell(name, said);
        let said = self.hill_holder_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.hill_holder_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("hill_holder_switch");
        tell(name, said);
        let said = self.engine_retarder_selection();
        let said = typed::Said::from(said);
        let is_outside = self.engine_retarder_selection_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("engine_retarder_selection");
        tell(name, said);
        let said = self.abs_operation();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.abs_operation;
        let said = said.word(state.word());
        let name = typed::Name::of("abs_operation");
        tell(name, said);
        let said = self.red_warning_lamp();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.red_warning_lamp;
        let said = said.word(state.word());
        let name = typed::Name::of("red_warning_lamp");
        tell(name, said);
        let said = self.amber_warning_lamp();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.amber_warning_lamp;
        let said = said.word(state.word());
        let name = typed::Name::of("amber_warning_lamp");
        tell(name, said);
        let said = self.traction_information_lamp();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.traction_information_lamp;
        let said = said.word(state.word());
        let name = typed::Name::of("traction_information_lamp");
        tell(name, said);
        let said = self.governing_address();
        let said = typed::Said::from(said);
        let name = typed::Name::of("governing_address");
        tell(name, said);
    }
}

/// Brakes: wheel speeds.
///
/// Speeds of axles and wheels. A wheel's speed is the front axle's plus its own relative one.
///
/// Called "EBC2" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxleAndWheelSpeeds {
    /// SPN 904, SAE J1939-71 (from memory).
    ///
    /// `raw / 256` km/h; 16 bits.
    pub front_axle_speed: u16,
    /// SPN 905, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.0625 - 7.8125` km/h; 8 bits.
    pub relative_speed_front_left: u8,
    /// SPN 906, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.0625 - 7.8125` km/h; 8 bits.
    pub relative_speed_front_right: u8,
    /// SPN 907, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.0625 - 7.8125` km/h; 8 bits.
    pub relative_speed_rear_1_left: u8,
    /// SPN 908, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.0625 - 7.8125` km/h; 8 bits.
    pub relative_speed_rear_1_right: u8,
    /// SPN 909, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.0625 - 7.8125` km/h; 8 bits.
    pub relative_speed_rear_2_left: u8,
    /// SPN 910, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.0625 - 7.8125` km/h; 8 bits.
    pub relative_speed_rear_2_right: u8,
}

impl AxleAndWheelSpeeds {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEBF;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_FRONT_AXLE_SPEED: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_RELATIVE_SPEED_FRONT_LEFT: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_RELATIVE_SPEED_FRONT_RIGHT: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_RELATIVE_SPEED_REAR_1_LEFT: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_RELATIVE_SPEED_REAR_1_RIGHT: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_RELATIVE_SPEED_REAR_2_LEFT: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_RELATIVE_SPEED_REAR_2_RIGHT: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_FRONT_AXLE_SPEED: typed::Formula = typed::Formula::new(1, 0, 256);
    const FORMULA_RELATIVE_SPEED_FRONT_LEFT: typed::Formula = typed::Formula::new(1, -125, 16);
    const FORMULA_RELATIVE_SPEED_FRONT_RIGHT: typed::Formula = typed::Formula::new(1, -125, 16);
    const FORMULA_RELATIVE_SPEED_REAR_1_LEFT: typed::Formula = typed::Formula::new(1, -125, 16);
    const FORMULA_RELATIVE_SPEED_REAR_1_RIGHT: typed::Formula = typed::Formula::new(1, -125, 16);
    const FORMULA_RELATIVE_SPEED_REAR_2_LEFT: typed::Formula = typed::Formula::new(1, -125, 16);
    const FORMULA_RELATIVE_SPEED_REAR_2_RIGHT: typed::Formula = typed::Formula::new(1, -125, 16);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let front_axle_speed = Self::AT_FRONT_AXLE_SPEED.of(payload) as u16;
        let relative_speed_front_left = Self::AT_RELATIVE_SPEED_FRONT_LEFT.of(payload) as u8;
        let relative_speed_front_right = Self::AT_RELATIVE_SPEED_FRONT_RIGHT.of(payload) as u8;
        let relative_speed_rear_1_left = Self::AT_RELATIVE_SPEED_REAR_1_LEFT.of(payload) as u8;
        let relative_speed_rear_1_right = Self::AT_RELATIVE_SPEED_REAR_1_RIGHT.of(payload) as u8;
        let relative_speed_rear_2_left = Self::AT_RELATIVE_SPEED_REAR_2_LEFT.of(payload) as u8;
        let relative_speed_rear_2_right = Self::AT_RELATIVE_SPEED_REAR_2_RIGHT.of(payload) as u8;
        Self {
            front_axle_speed,
            relative_speed_front_left,
            relative_speed_front_right,
            relative_speed_rear_1_left,
            relative_speed_rear_1_right,
            relative_speed_rear_2_left,
            relative_speed_rear_2_right,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.front_axle_speed);
        let bits = typed::unsigned_bits(number, 16, "front_axle_speed")?;
        Self::AT_FRONT_AXLE_SPEED.put(payload, bits);
        let number = u64::from(self.relative_speed_front_left);
        let bits = typed::unsigned_bits(number, 8, "relative_speed_front_left")?;
        Self::AT_RELATIVE_SPEED_FRONT_LEFT.put(payload, bits);
        let number = u64::from(self.relative_speed_front_right);
        let bits = typed::unsigned_bits(number, 8, "relative_speed_front_right")?;
        Self::AT_RELATIVE_SPEED_FRONT_RIGHT.put(payload, bits);
        let number = u64::from(self.relative_speed_rear_1_left);
        let bits = typed::unsigned_bits(number, 8, "relative_speed_rear_1_left")?;
        Self::AT_RELATIVE_SPEED_REAR_1_LEFT.put(payload, bits);
        let number = u64::from(self.relative_speed_rear_1_right);
        let bits = typed::unsigned_bits(number, 8, "relative_speed_rear_1_right")?;
        Self::AT_RELATIVE_SPEED_REAR_1_RIGHT.put(payload, bits);
        let number = u64::from(self.relative_speed_rear_2_left);
        let bits = typed::unsigned_bits(number, 8, "relative_speed_rear_2_left")?;
        Self::AT_RELATIVE_SPEED_REAR_2_LEFT.put(payload, bits);
        let number = u64::from(self.relative_speed_rear_2_right);
        let bits = typed::unsigned_bits(number, 8, "relative_speed_rear_2_right")?;
        Self::AT_RELATIVE_SPEED_REAR_2_RIGHT.put(payload, bits);
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
    pub fn front_axle_speed(&self) -> typed::Reading<f64> {
        match self.front_axle_speed {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 256.0),
        }
    }

    /// Sets `front_axle_speed` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_front_axle_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_FRONT_AXLE_SPEED;
        let raw = &mut self.front_axle_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250.99609375 in km/h.
    #[must_use]
    pub fn front_axle_speed_is_outside(&self) -> bool {
        let raw = self.front_axle_speed;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in km/h.
    #[must_use]
    pub fn relative_speed_front_left(&self) -> typed::Reading<f64> {
        match self.relative_speed_front_left {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64 / 16.0),
        }
    }

    /// Sets `relative_speed_front_left` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_relative_speed_front_left(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_RELATIVE_SPEED_FRONT_LEFT;
        let raw = &mut self.relative_speed_front_left;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -7.8125 to 7.8125 in km/h.
    #[must_use]
    pub fn relative_speed_front_left_is_outside(&self) -> bool {
        let raw = self.relative_speed_front_left;
        matches!(raw, 251..=253)
    }

    /// The value in km/h.
    #[must_use]
    pub fn relative_speed_front_right(&self) -> typed::Reading<f64> {
        match self.relative_speed_front_right {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64 / 16.0),
        }
    }

    /// Sets `relative_speed_front_right` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_relative_speed_front_right(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_RELATIVE_SPEED_FRONT_RIGHT;
        let raw = &mut self.relative_speed_front_right;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -7.8125 to 7.8125 in km/h.
    #[must_use]
    pub fn relative_speed_front_right_is_outside(&self) -> bool {
        let raw = self.relative_speed_front_right;
        matches!(raw, 251..=253)
    }

    /// The value in km/h.
    #[must_use]
    pub fn relative_speed_rear_1_left(&self) -> typed::Reading<f64> {
        match self.relative_speed_rear_1_left {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64 / 16.0),
        }
    }

    /// Sets `relative_speed_rear_1_left` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_relative_speed_rear_1_left(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_RELATIVE_SPEED_REAR_1_LEFT;
        let raw = &mut self.relative_speed_rear_1_left;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -7.8125 to 7.8125 in km/h.
    #[must_use]
    pub fn relative_speed_rear_1_left_is_outside(&self) -> bool {
        let raw = self.relative_speed_rear_1_left;
        matches!(raw, 251..=253)
    }

    /// The value in km/h.
    #[must_use]
    pub fn relative_speed_rear_1_right(&self) -> typed::Reading<f64> {
        match self.relative_speed_rear_1_right {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64 / 16.0),
        }
    }

    /// Sets `relative_speed_rear_1_right` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_relative_speed_rear_1_right(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_RELATIVE_SPEED_REAR_1_RIGHT;
        let raw = &mut self.relative_speed_rear_1_right;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -7.8125 to 7.8125 in km/h.
    #[must_use]
    pub fn relative_speed_rear_1_right_is_outside(&self) -> bool {
        let raw = self.relative_speed_rear_1_right;
        matches!(raw, 251..=253)
    }

    /// The value in km/h.
    #[must_use]
    pub fn relative_speed_rear_2_left(&self) -> typed::Reading<f64> {
        match self.relative_speed_rear_2_left {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64 / 16.0),
        }
    }

    /// Sets `relative_speed_rear_2_left` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_relative_speed_rear_2_left(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_RELATIVE_SPEED_REAR_2_LEFT;
        let raw = &mut self.relative_speed_rear_2_left;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -7.8125 to 7.8125 in km/h.
    #[must_use]
    pub fn relative_speed_rear_2_left_is_outside(&self) -> bool {
        let raw = self.relative_speed_rear_2_left;
        matches!(raw, 251..=253)
    }

    /// The value in km/h.
    #[must_use]
    pub fn relative_speed_rear_2_right(&self) -> typed::Reading<f64> {
        match self.relative_speed_rear_2_right {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64 / 16.0),
        }
    }

    /// Sets `relative_speed_rear_2_right` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_relative_speed_rear_2_right(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_RELATIVE_SPEED_REAR_2_RIGHT;
        let raw = &mut self.relative_speed_rear_2_right;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -7.8125 to 7.8125 in km/h.
    #[must_use]
    pub fn relative_speed_rear_2_right_is_outside(&self) -> bool {
        let raw = self.relative_speed_rear_2_right;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.front_axle_speed();
        let said = typed::Said::from(said);
        let is_outside = self.front_axle_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("front_axle_speed");
        tell(name, said);
        let said = self.relative_speed_front_left();
        let said = typed::Said::from(said);
        let is_outside = self.relative_speed_front_left_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("relative_speed_front_left");
        tell(name, said);
        let said = self.relative_speed_front_right();
        let said = typed::Said::from(said);
        let is_outside = self.relative_speed_front_right_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("relative_speed_front_right");
        tell(name, said);
        let said = self.relative_speed_rear_1_left();
        let said = typed::Said::from(said);
        let is_outside = self.relative_speed_rear_1_left_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("relative_speed_rear_1_left");
        tell(name, said);
        let said = self.relative_speed_rear_1_right();
        let said = typed::Said::from(said);
        let is_outside = self.relative_speed_rear_1_right_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("relative_speed_rear_1_right");
        tell(name, said);
        let said = self.relative_speed_rear_2_left();
        let said = typed::Said::from(said);
        let is_outside = self.relative_speed_rear_2_left_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("relative_speed_rear_2_left");
        tell(name, said);
        let said = self.relative_speed_rear_2_right();
        let said = typed::Said::from(said);
        let is_outside = self.relative_speed_rear_2_right_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("relative_speed_rear_2_right");
        tell(name, said);
    }
}

/// Retarder.
///
/// The retarder (engine brake or driveline retarder; the address tells which).
///
/// Called "ERC1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Retarder {
    /// SPN 900, SAE J1939-71 (from memory). Numbered as torque\_mode in engine\_torque\_and\_speed.
    ///
    /// `raw`; 4 bits.
    pub retarder_torque_mode: u8,
    /// SPN 571, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub brake_assist: RetarderBrakeAssist,
    /// SPN 572, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub shift_assist: RetarderBrakeAssist,
    /// SPN 520, SAE J1939-71 (from memory). Braking torque is negative.
    ///
    /// `raw - 125` %; 8 bits.
    pub actual_retarder_percent_torque: u8,
    /// SPN 1085, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub intended_retarder_percent_torque: u8,
    /// SPN 1667, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub brake_light_request: J1939Switch,
    /// SPN 1480, SAE J1939-71 (from memory). Address of the unit that governs the retarder.
    ///
    /// `raw`; 8 bits.
    pub governing_address: u8,
    /// SPN 1715, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub drivers_demand_percent_torque: u8,
    /// SPN 1716, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub retarder_selection: u8,
    /// SPN 1717, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub available_retarder_percent_torque: u8,
}

impl Retarder {
    /// The parameter group number.
    pub const PGN: u32 = 0xF000;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_RETARDER_TORQUE_MODE: typed::Cut = typed::Cut::between((0, 3), (0, 0));
    const AT_BRAKE_ASSIST: typed::Cut = typed::Cut::between((0, 5), (0, 4));
    const AT_SHIFT_ASSIST: typed::Cut = typed::Cut::between((0, 7), (0, 6));
    const AT_ACTUAL_RETARDER_PERCENT_TORQUE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_INTENDED_RETARDER_PERCENT_TORQUE: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_BRAKE_LIGHT_REQUEST: typed::Cut = typed::Cut::between((3, 3), (3, 2));
    const AT_GOVERNING_ADDRESS: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_DRIVERS_DEMAND_PERCENT_TORQUE: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_RETARDER_SELECTION: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_AVAILABLE_RETARDER_PERCENT_TORQUE: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_ACTUAL_RETARDER_PERCENT_TORQUE: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_INTENDED_RETARDER_PERCENT_TORQUE: typed::Formula =
        typed::Formula::new(1, -125, 1);
    const FORMULA_DRIVERS_DEMAND_PERCENT_TORQUE: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_RETARDER_SELECTION: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_AVAILABLE_RETARDER_PERCENT_TORQUE: typed::Formula =
        typed::Formula::new(1, -125, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let retarder_torque_mode = Self::AT_RETARDER_TORQUE_MODE.of(payload) as u8;
        let bits = Self::AT_BRAKE_ASSIST.of(payload);
        let brake_assist = RetarderBrakeAssist::from_raw(bits as u8);
        let bits = Self::AT_SHIFT_ASSIST.of(payload);
        let shift_assist = RetarderBrakeAssist::from_raw(bits as u8);
        let bits = Self::AT_ACTUAL_RETARDER_PERCENT_TORQUE.of(payload);
        let actual_retarder_percent_torque = bits as u8;
        let bits = Self::AT_INTENDED_RETARDER_PERCENT_TORQUE.of(payload);
        let intended_retarder_percent_torque = bits as u8;
        let bits = Self::AT_BRAKE_LIGHT_REQUEST.of(payload);
        let brake_light_request = J1939Switch::from_raw(bits as u8);
        let governing_address = Self::AT_GOVERNING_ADDRESS.of(payload) as u8;
        let bits = Self::AT_DRIVERS_DEMAND_PERCENT_TORQUE.of(payload);
        let drivers_demand_percent_torque = bits as u8;
        let retarder_selection = Self::AT_RETARDER_SELECTION.of(payload) as u8;
        let bits = Self::AT_AVAILABLE_RETARDER_PERCENT_TORQUE.of(payload);
        let available_retarder_percent_torque = bits as u8;
        Self {
            retarder_torque_mode,
            brake_assist,
            shift_assist,
            actual_retarder_percent_torque,
            intended_retarder_percent_torque,
            brake_light_request,
            governing_address,
            drivers_demand_percent_torque,
            retarder_selection,
            available_retarder_percent_torque,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.retarder_torque_mode);
        let bits = typed::unsigned_bits(number, 4, "retarder_torque_mode")?;
        Self::AT_RETARDER_TORQUE_MODE.put(payload, bits);
        let number = u64::from(self.brake_assist.raw());
        let bits = typed::unsigned_bits(number, 2, "brake_assist")?;
        Self::AT_BRAKE_ASSIST.put(payload, bits);
        let number = u64::from(self.shift_assist.raw());
        let bits = typed::unsigned_bits(number, 2, "shift_assist")?;
        Self::AT_SHIFT_ASSIST.put(payload, bits);
        let number = u64::from(self.actual_retarder_percent_torque);
        let bits = typed::unsigned_bits(number, 8, "actual_retarder_percent_torque")?;
        Self::AT_ACTUAL_RETARDER_PERCENT_TORQUE.put(payload, bits);
        let number = u64::from(self.intended_retarder_percent_torque);
        let bits = typed::unsigned_bits(number, 8, "intended_retarder_percent_torque")?;
        Self::AT_INTENDED_RETARDER_PERCENT_TORQUE.put(payload, bits);
        let number = u64::from(self.brake_light_request.raw());
        let bits = typed::unsigned_bits(number, 2, "brake_light_request")?;
        Self::AT_BRAKE_LIGHT_REQUEST.put(payload, bits);
        let number = u64::from(self.governing_address);
        let bits = typed::unsigned_bits(number, 8, "governing_address")?;
        Self::AT_GOVERNING_ADDRESS.put(payload, bits);
        let number = u64::from(self.drivers_demand_percent_torque);
        let bits = typed::unsigned_bits(number, 8, "drivers_demand_percent_torque")?;
        Self::AT_DRIVERS_DEMAND_PERCENT_TORQUE.put(payload, bits);
        let number = u64::from(self.retarder_selection);
        let bits = typed::unsigned_bits(number, 8, "retarder_selection")?;
        Self::AT_RETARDER_SELECTION.put(payload, bits);
        let number = u64::from(self.available_retarder_percent_torque);
        let bits = typed::unsigned_bits(number, 8, "available_retarder_percent_torque")?;
        Self::AT_AVAILABLE_RETARDER_PERCENT_TORQUE.put(payload, bits);
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
    pub fn retarder_torque_mode(&self) -> typed::Reading<u8> {
        match self.retarder_torque_mode {
            14 => typed::Reading::Fault,
            15 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn brake_assist(&self) -> typed::Reading<RetarderBrakeAssist> {
        match self.brake_assist.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.brake_assist),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn shift_assist(&self) -> typed::Reading<RetarderBrakeAssist> {
        match self.shift_assist.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.shift_assist),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn actual_retarder_percent_torque(&self) -> typed::Reading<f64> {
        match self.actual_retarder_percent_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `actual_retarder_percent_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_actual_retarder_percent_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_ACTUAL_RETARDER_PERCENT_TORQUE;
        let raw = &mut self.actual_retarder_percent_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn actual_retarder_percent_torque_is_outside(&self) -> bool {
        let raw = self.actual_retarder_percent_torque;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn intended_retarder_percent_torque(&self) -> typed::Reading<f64> {
        match self.intended_retarder_percent_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `intended_retarder_percent_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_intended_retarder_percent_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_INTENDED_RETARDER_PERCENT_TORQUE;
        let raw = &mut self.intended_retarder_percent_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn intended_retarder_percent_torque_is_outside(&self) -> bool {
        let raw = self.intended_retarder_percent_torque;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn brake_light_request(&self) -> typed::Reading<J1939Switch> {
        match self.brake_light_request.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.brake_light_request),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn governing_address(&self) -> typed::Reading<u8> {
        match self.governing_address {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The value in %.
    #[must_use]
    pub fn drivers_demand_percent_torque(&self) -> typed::Reading<f64> {
        match self.drivers_demand_percent_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `drivers_demand_percent_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_drivers_demand_percent_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_DRIVERS_DEMAND_PERCENT_TORQUE;
        let raw = &mut self.drivers_demand_percent_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn drivers_demand_percent_torque_is_outside(&self) -> bool {
        let raw = self.drivers_demand_percent_torque;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn retarder_selection(&self) -> typed::Reading<f64> {
        match self.retarder_selection {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `retarder_selection` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_retarder_selection(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_RETARDER_SELECTION;
        let raw = &mut self.retarder_selection;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn retarder_selection_is_outside(&self) -> bool {
        let raw = self.retarder_selection;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn available_retarder_percent_torque(&self) -> typed::Reading<f64> {
        match self.available_retarder_percent_torque {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `available_retarder_percent_torque` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_available_retarder_percent_torque(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_AVAILABLE_RETARDER_PERCENT_TORQUE;
        let raw = &mut self.available_retarder_percent_torque;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn available_retarder_percent_torque_is_outside(&self) -> bool {
        let raw = self.available_retarder_percent_torque;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.retarder_torque_mode();
        let said = typed::Said::from(said);
        let name = typed::Name::of("retarder_torque_mode");
        tell(name, said);
        let said = self.brake_assist();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.brake_assist;
        let said = said.word(state.word());
        let name = typed::Name::of("brake_assist");
        tell(name, said);
        let said = self.shift_assist();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.shift_assist;
        let said = said.word(state.word());
        let name = typed::Name::of("shift_assist");
        tell(name, said);
        let said = self.actual_retarder_percent_torque();
        let said = typed::Said::from(said);
        let is_outside = self.actual_retarder_percent_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("actual_retarder_percent_torque");
        tell(name, said);
        let said = self.intended_retarder_percent_torque();
        let said = typed::Said::from(said);
        let is_outside = self.intended_retarder_percent_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("intended_retarder_percent_torque");
        tell(name, said);
        let said = self.brake_light_request();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.brake_light_request;
        let said = said.word(state.word());
        let name = typed::Name::of("brake_light_request");
        tell(name, said);
        let said = self.governing_address();
        let said = typed::Said::from(said);
        let name = typed::Name::of("governing_address");
        tell(name, said);
        let said = self.drivers_demand_percent_torque();
        let said = typed::Said::from(said);
        let is_outside = self.drivers_demand_percent_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("drivers_demand_percent_torque");
        tell(name, said);
        let said = self.retarder_selection();
        let said = typed::Said::from(said);
        let is_outside = self.retarder_selection_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("retarder_selection");
        tell(name, said);
        let said = self.available_retarder_percent_torque();
        let said = typed::Said::from(said);
        let is_outside = self.available_retarder_percent_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("available_retarder_percent_torque");
        tell(name, said);
    }
}

/// Vehicle dynamics.
///
/// Steering, yaw and acceleration. Left turns are positive.
///
/// Called "VDC2" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VehicleDynamics {
    /// SPN 1807, SAE J1939-71 (from memory).
    ///
    /// `raw / 1024 - 31.374` rad; 16 bits.
    pub steering_wheel_angle: u16,
    /// SPN 1811, SAE J1939-71 (from memory).
    ///
    /// `raw - 32` turns; 6 bits.
    pub steering_wheel_turns: u8,
    /// SPN 1812, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub steering_sensor: VehicleDynamicsSteeringSensor,
    /// SPN 1808, SAE J1939-71 (from memory).
    ///
    /// `raw / 8192 - 3.92` rad/s; 16 bits.
    pub yaw_rate: u16,
    /// SPN 1809, SAE J1939-71 (from memory).
    ///
    /// `raw / 2048 - 15.687` m/s²; 16 bits.
    pub lateral_acceleration: u16,
    /// SPN 1810, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.1 - 12.5` m/s²; 8 bits.
    pub longitudinal_acceleration: u8,
}

impl VehicleDynamics {
    /// The parameter group number.
    pub const PGN: u32 = 0xF009;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(10);
    const AT_STEERING_WHEEL_ANGLE: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_STEERING_WHEEL_TURNS: typed::Cut = typed::Cut::between((2, 5), (2, 0));
    const AT_STEERING_SENSOR: typed::Cut = typed::Cut::between((2, 7), (2, 6));
    const AT_YAW_RATE: typed::Cut = typed::Cut::between((4, 7), (3, 0));
    const AT_LATERAL_ACCELERATION: typed::Cut = typed::Cut::between((6, 7), (5, 0));
    const AT_LONGITUDINAL_ACCELERATION: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_STEERING_WHEEL_ANGLE: typed::Formula = typed::Formula::new(125, -4015872, 128000);
    const FORMULA_STEERING_WHEEL_TURNS: typed::Formula = typed::Formula::new(1, -32, 1);
    const FORMULA_YAW_RATE: typed::Formula = typed::Formula::new(25, -802816, 204800);
    const FORMULA_LATERAL_ACCELERATION: typed::Formula = typed::Formula::new(125, -4015872, 256000);
    const FORMULA_LONGITUDINAL_ACCELERATION: typed::Formula = typed::Formula::new(1, -125, 10);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let steering_wheel_angle = Self::AT_STEERING_WHEEL_ANGLE.of(payload) as u16;
        let steering_wheel_turns = Self::AT_STEERING_WHEEL_TURNS.of(payload) as u8;
        let bits = Self::AT_STEERING_SENSOR.of(payload);
        let steering_sensor = VehicleDynamicsSteeringSensor::from_raw(bits as u8);
        let yaw_rate = Self::AT_YAW_RATE.of(payload) as u16;
        let lateral_acceleration = Self::AT_LATERAL_ACCELERATION.of(payload) as u16;
        let longitudinal_acceleration = Self::AT_LONGITUDINAL_ACCELERATION.of(payload) as u8;
        Self {
            steering_wheel_angle,
            steering_wheel_turns,
            steering_sensor,
            yaw_rate,
            lateral_acceleration,
            longitudinal_acceleration,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.steering_wheel_angle);
        let bits = typed::unsigned_bits(number, 16, "steering_wheel_angle")?;
        Self::AT_STEERING_WHEEL_ANGLE.put(payload, bits);
        let number = u64::from(self.steering_wheel_turns);
        let bits = typed::unsigned_bits(number, 6, "steering_wheel_turns")?;
        Self::AT_STEERING_WHEEL_TURNS.put(payload, bits);
        let number = u64::from(self.steering_sensor.raw());
        let bits = typed::unsigned_bits(number, 2, "steering_sensor")?;
        Self::AT_STEERING_SENSOR.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.yaw_rate), 16, "yaw_rate")?;
        Self::AT_YAW_RATE.put(payload, bits);
        let number = u64::from(self.lateral_acceleration);
        let bits = typed::unsigned_bits(number, 16, "lateral_acceleration")?;
        Self::AT_LATERAL_ACCELERATION.put(payload, bits);
        let number = u64::from(self.longitudinal_acceleration);
        let bits = typed::unsigned_bits(number, 8, "longitudinal_acceleration")?;
        Self::AT_LONGITUDINAL_ACCELERATION.put(payload, bits);
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

    /// The value in rad.
    #[must_use]
    pub fn steering_wheel_angle(&self) -> typed::Reading<f64> {
        match self.steering_wheel_angle {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 125 - 4015872) as f64 / 128000.0),
        }
    }

    /// Sets `steering_wheel_angle` to the raw number nearest to a value in rad.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_steering_wheel_angle(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_STEERING_WHEEL_ANGLE;
        let raw = &mut self.steering_wheel_angle;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -31.374 to 31.3750234375 in rad.
    #[must_use]
    pub fn steering_wheel_angle_is_outside(&self) -> bool {
        let raw = self.steering_wheel_angle;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in turns.
    #[must_use]
    pub fn steering_wheel_turns(&self) -> typed::Reading<f64> {
        match self.steering_wheel_turns {
            62 => typed::Reading::Fault,
            63 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 32) as f64),
        }
    }

    /// Sets `steering_wheel_turns` to the raw number nearest to a value in turns.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_steering_wheel_turns(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 63);
        let is_value = |raw: i128| !matches!(raw, 62..=63);
        let formula = Self::FORMULA_STEERING_WHEEL_TURNS;
        let raw = &mut self.steering_wheel_turns;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -32 to 29 in turns.
    #[must_use]
    pub fn steering_wheel_turns_is_outside(&self) -> bool {
        false
    }

    /// What the raw number says.
    #[must_use]
    pub fn steering_sensor(&self) -> typed::Reading<VehicleDynamicsSteeringSensor> {
        match self.steering_sensor.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.steering_sensor),
        }
    }

    /// The value in rad/s.
    #[must_use]
    pub fn yaw_rate(&self) -> typed::Reading<f64> {
        match self.yaw_rate {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 25 - 802816) as f64 / 204800.0),
        }
    }

    /// Sets `yaw_rate` to the raw number nearest to a value in rad/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_yaw_rate(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_YAW_RATE;
        let raw = &mut self.yaw_rate;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -3.92 to 3.9236279296875 in rad/s.
    #[must_use]
    pub fn yaw_rate_is_outside(&self) -> bool {
        let raw = self.yaw_rate;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in m/s².
    #[must_use]
    pub fn lateral_acceleration(&self) -> typed::Reading<f64> {
        match self.lateral_acceleration {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 125 - 4015872) as f64 / 256000.0),
        }
    }

    /// Sets `lateral_acceleration` to the raw number nearest to a value in m/s².
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_lateral_acceleration(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_LATERAL_ACCELERATION;
        let raw = &mut self.lateral_acceleration;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -15.687 to 15.68751171875 in m/s².
    #[must_use]
    pub fn lateral_acceleration_is_outside(&self) -> bool {
        let raw = self.lateral_acceleration;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in m/s².
    #[must_use]
    pub fn longitudinal_acceleration(&self) -> typed::Reading<f64> {
        match self.longitudinal_acceleration {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64 / 10.0),
        }
    }

    /// Sets `longitudinal_acceleration` to the raw number nearest to a value in m/s².
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_longitudinal_acceleration(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_LONGITUDINAL_ACCELERATION;
        let raw = &mut self.longitudinal_acceleration;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -12.5 to 12.5 in m/s².
    #[must_use]
    pub fn longitudinal_acceleration_is_outside(&self) -> bool {
        let raw = self.longitudinal_acceleration;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.steering_wheel_angle();
        let said = typed::Said::from(said);
        let is_outside = self.steering_wheel_angle_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("steering_wheel_angle");
        tell(name, said);
        let said = self.steering_wheel_turns();
        let said = typed::Said::from(said);
        let is_outside = self.steering_wheel_turns_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("steering_wheel_turns");
        tell(name, said);
        let said = self.steering_sensor();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.steering_sensor;
        let said = said.word(state.word());
        let name = typed::Name::of("steering_sensor");
        tell(name, said);
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
    }
}

/// Cruise control and vehicle speed.
///
/// Vehicle speed, pedals and cruise control.
///
/// Called "CCVS" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CruiseAndVehicleSpeed {
    /// SPN 69, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub two_speed_axle_switch: CruiseAndVehicleSpeedTwoSpeedAxleSwitch,
    /// SPN 70, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub parking_brake_switch: CruiseAndVehicleSpeedParkingBrakeSwitch,
    /// SPN 1633, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub cruise_pause_switch: J1939Switch,
    /// SPN 84, SAE J1939-71 (from memory). From the driveline or the wheels, so a spinning wheel shows.
    ///
    /// `raw / 256` km/h; 16 bits.
    pub wheel_based_vehicle_speed: u16,
    /// SPN 595, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub cruise_control_active: J1939Switch,
    /// SPN 596, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub cruise_control_enable_switch: J1939Switch,
    /// SPN 597, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub brake_switch: J1939Pedal,
    /// SPN 598, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub clutch_switch: J1939Pedal,
    /// SPN 599, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub cruise_set_switch: J1939Switch,
    /// SPN 600, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub cruise_coast_switch: J1939Switch,
    /// SPN 601, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub cruise_resume_switch: J1939Switch,
    /// SPN 602, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub cruise_accelerate_switch: J1939Switch,
    /// SPN 86, SAE J1939-71 (from memory).
    ///
    /// `raw` km/h; 8 bits.
    pub cruise_set_speed: u8,
    /// SPN 976, SAE J1939-71 (from memory).
    ///
    /// `raw`; 5 bits.
    pub power_take_off_governor: CruiseAndVehicleSpeedPowerTakeOffGovernor,
    /// SPN 527, SAE J1939-71 (from memory). All eight values have a meaning, so 6 is no error here.
    ///
    /// `raw`; 3 bits.
    pub cruise_control_state: CruiseAndVehicleSpeedCruiseControlState,
    /// SPN 968, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub idle_increment_switch: J1939Switch,
    /// SPN 967, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub idle_decrement_switch: J1939Switch,
    /// SPN 966, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub engine_test_mode_switch: J1939Switch,
    /// SPN 1237, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub shutdown_override_switch: J1939Switch,
}

impl CruiseAndVehicleSpeed {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEF1;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_TWO_SPEED_AXLE_SWITCH: typed::Cut = typed::Cut::between((0, 1), (0, 0));
    const AT_PARKING_BRAKE_SWITCH: typed::Cut = typed::Cut::between((0, 3), (0, 2));
    const AT_CRUISE_PAUSE_SWITCH: typed::Cut = typed::Cut::between((0, 5), (0, 4));
    const AT_WHEEL_BASED_VEHICLE_SPEED: typed::Cut = typed::Cut::between((2, 7), (1, 0));
    const AT_CRUISE_CONTROL_ACTIVE: typed::Cut = typed::Cut::between((3, 1), (3, 0));
    const AT_CRUISE_CONTROL_ENABLE_SWITCH: typed::Cut = typed::Cut::between((3, 3), (3, 2));
    const AT_BRAKE_SWITCH: typed::Cut = typed::Cut::between((3, 5), (3, 4));
    const AT_CLUTCH_SWITCH: typed::Cut = typed::Cut::between((3, 7), (3, 6));
    const AT_CRUISE_SET_SWITCH: typed::Cut = typed::Cut::between((4, 1), (4, 0));
    const AT_CRUISE_COAST_SWITCH: typed::Cut = typed::Cut::between((4, 3), (4, 2));
    const AT_CRUISE_RESUME_SWITCH: typed::Cut = typed::Cut::between((4, 5), (4, 4));
    const AT_CRUISE_ACCELERATE_SWITCH: typed::Cut = typed::Cut::between((4, 7), (4, 6));
    const AT_CRUISE_SET_SPEED: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_POWER_TAKE_OFF_GOVERNOR: typed::Cut = typed::Cut::between((6, 4), (6, 0));
    const AT_CRUISE_CONTROL_STATE: typed::Cut = typed::Cut::between((6, 7), (6, 5));
    const AT_IDLE_INCREMENT_SWITCH: typed::Cut = typed::Cut::between((7, 1), (7, 0));
    const AT_IDLE_DECREMENT_SWITCH: typed::Cut = typed::Cut::between((7, 3), (7, 2));
    const AT_ENGINE_TEST_MODE_SWITCH: typed::Cut = typed::Cut::between((7, 5), (7, 4));
    const AT_SHUTDOWN_OVERRIDE_SWITCH: typed::Cut = typed::Cut::between((7, 7), (7, 6));
    const FORMULA_WHEEL_BASED_VEHICLE_SPEED: typed::Formula = typed::Formula::new(1, 0, 256);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_TWO_SPEED_AXLE_SWITCH.of(payload);
        let two_speed_axle_switch = CruiseAndVehicleSpeedTwoSpeedAxleSwitch::from_raw(bits as u8);
        let bits = Self::AT_PARKING_BRAKE_SWITCH.of(payload);
        let parking_brake_switch = CruiseAndVehicleSpeedParkingBrakeSwitch::from_raw(bits as u8);
        let bits = Self::AT_CRUISE_PAUSE_SWITCH.of(payload);
        let cruise_pause_switch = J1939Switch::from_raw(bits as u8);
        let wheel_based_vehicle_speed = Self::AT_WHEEL_BASED_VEHICLE_SPEED.of(payload) as u16;
        let bits = Self::AT_CRUISE_CONTROL_ACTIVE.of(payload);
        let cruise_control_active = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_CRUISE_CONTROL_ENABLE_SWITCH.of(payload);
        let cruise_control_enable_switch = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_BRAKE_SWITCH.of(payload);
        let brake_switch = J1939Pedal::from_raw(bits as u8);
        let bits = Self::AT_CLUTCH_SWITCH.of(payload);
        let clutch_switch = J1939Pedal::from_raw(bits as u8);
        let bits = Self::AT_CRUISE_SET_SWITCH.of(payload);
        let cruise_set_switch = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_CRUISE_COAST_SWITCH.of(payload);
        let cruise_coast_switch = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_CRUISE_RESUME_SWITCH.of(payload);
        let cruise_resume_switch = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_CRUISE_ACCELERATE_SWITCH.of(payload);
        let cruise_accelerate_switch = J1939Switch::from_raw(bits as u8);
        let cruise_set_speed = Self::AT_CRUISE_SET_SPEED.of(payload) as u8;
        let bits = Self::AT_POWER_TAKE_OFF_GOVERNOR.of(payload);
        let power_take_off_governor =
            CruiseAndVehicleSpeedPowerTakeOffGovernor::from_raw(bits as u8);
        let bits = Self::AT_CRUISE_CONTROL_STATE.of(payload);
        let cruise_control_state = CruiseAndVehicleSpeedCruiseControlState::from_raw(bits as u8);
        let bits = Self::AT_IDLE_INCREMENT_SWITCH.of(payload);
        let idle_increment_switch = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_IDLE_DECREMENT_SWITCH.of(payload);
        let idle_decrement_switch = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_ENGINE_TEST_MODE_SWITCH.of(payload);
        let engine_test_mode_switch = J1939Switch::from_raw(bits as u8);
        let bits = Self::AT_SHUTDOWN_OVERRIDE_SWITCH.of(payload);
        let shutdown_override_switch = J1939Switch::from_raw(bits as u8);
        Self {
            two_speed_axle_switch,
            parking_brake_switch,
            cruise_pause_switch,
            wheel_based_vehicle_speed,
            cruise_control_active,
            cruise_control_enable_switch,
            brake_switch,
            clutch_switch,
            cruise_set_switch,
            cruise_coast_switch,
            cruise_resume_switch,
            cruise_accelerate_switch,
            cruise_set_speed,
            power_take_off_governor,
            cruise_control_state,
            idle_increment_switch,
            idle_decrement_switch,
            engine_test_mode_switch,
            shutdown_override_switch,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.two_speed_axle_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "two_speed_axle_switch")?;
        Self::AT_TWO_SPEED_AXLE_SWITCH.put(payload, bits);
        let number = u64::from(self.parking_brake_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "parking_brake_switch")?;
        Self::AT_PARKING_BRAKE_SWITCH.put(payload, bits);
        let number = u64::from(self.cruise_pause_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "cruise_pause_switch")?;
        Self::AT_CRUISE_PAUSE_SWITCH.put(payload, bits);
        let number = u64::from(self.wheel_based_vehicle_speed);
        let bits = typed::unsigned_bits(number, 16, "wheel_based_vehicle_speed")?;
        Self::AT_WHEEL_BASED_VEHICLE_SPEED.put(payload, bits);
        let number = u64::from(self.cruise_control_active.raw());
        let bits = typed::unsigned_bits(number, 2, "cruise_control_active")?;
        Self::AT_CRUISE_CONTROL_ACTIVE.put(payload, bits);
        let number = u64::from(self.cruise_control_enable_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "cruise_control_enable_switch")?;
        Self::AT_CRUISE_CONTROL_ENABLE_SWITCH.put(payload, bits);
        let number = u64::from(self.brake_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "brake_switch")?;
        Self::AT_BRAKE_SWITCH.put(payload, bits);
        let number = u64::from(self.clutch_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "clutch_switch")?;
        Self::AT_CLUTCH_SWITCH.put(payload, bits);
        let number = u64::from(self.cruise_set_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "cruise_set_switch")?;
        Self::AT_CRUISE_SET_SWITCH.put(payload, bits);
        let number = u64::from(self.cruise_coast_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "cruise_coast_switch")?;
        Self::AT_CRUISE_COAST_SWITCH.put(payload, bits);
        let number = u64::from(self.cruise_resume_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "cruise_resume_switch")?;
        Self::AT_CRUISE_RESUME_SWITCH.put(payload, bits);
        let number = u64::from(self.cruise_accelerate_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "cruise_accelerate_switch")?;
        Self::AT_CRUISE_ACCELERATE_SWITCH.put(payload, bits);
        let number = u64::from(self.cruise_set_speed);
        let bits = typed::unsigned_bits(number, 8, "cruise_set_speed")?;
        Self::AT_CRUISE_SET_SPEED.put(payload, bits);
        let number = u64::from(self.power_take_off_governor.raw());
        let bits = typed::unsigned_bits(number, 5, "power_take_off_governor")?;
        Self::AT_POWER_TAKE_OFF_GOVERNOR.put(payload, bits);
        let number = u64::from(self.cruise_control_state.raw());
        let bits = typed::unsigned_bits(number, 3, "cruise_control_state")?;
        Self::AT_CRUISE_CONTROL_STATE.put(payload, bits);
        let number = u64::from(self.idle_increment_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "idle_increment_switch")?;
        Self::AT_IDLE_INCREMENT_SWITCH.put(payload, bits);
        let number = u64::from(self.idle_decrement_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "idle_decrement_switch")?;
        Self::AT_IDLE_DECREMENT_SWITCH.put(payload, bits);
        let number = u64::from(self.engine_test_mode_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "engine_test_mode_switch")?;
        Self::AT_ENGINE_TEST_MODE_SWITCH.put(payload, bits);
        let number = u64::from(self.shutdown_override_switch.raw());
        let bits = typed::unsigned_bits(number, 2, "shutdown_override_switch")?;
        Self::AT_SHUTDOWN_OVERRIDE_SWITCH.put(payload, bits);
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
    pub fn two_speed_axle_switch(&self) -> typed::Reading<CruiseAndVehicleSpeedTwoSpeedAxleSwitch> {
        match self.two_speed_axle_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.two_speed_axle_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn parking_brake_switch(&self) -> typed::Reading<CruiseAndVehicleSpeedParkingBrakeSwitch> {
        match self.parking_brake_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.parking_brake_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn cruise_pause_switch(&self) -> typed::Reading<J1939Switch> {
        match self.cruise_pause_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cruise_pause_switch),
        }
    }

    /// The value in km/h.
    #[must_use]
    pub fn wheel_based_vehicle_speed(&self) -> typed::Reading<f64> {
        match self.wheel_based_vehicle_speed {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 256.0),
        }
    }

    /// Sets `wheel_based_vehicle_speed` to the raw number nearest to a value in km/h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_wheel_based_vehicle_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_WHEEL_BASED_VEHICLE_SPEED;
        let raw = &mut self.wheel_based_vehicle_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 250.99609375 in km/h.
    #[must_use]
    pub fn wheel_based_vehicle_speed_is_outside(&self) -> bool {
        let raw = self.wheel_based_vehicle_speed;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// What the raw number says.
    #[must_use]
    pub fn cruise_control_active(&self) -> typed::Reading<J1939Switch> {
        match self.cruise_control_active.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cruise_control_active),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn cruise_control_enable_switch(&self) -> typed::Reading<J1939Switch> {
        match self.cruise_control_enable_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cruise_control_enable_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn brake_switch(&self) -> typed::Reading<J1939Pedal> {
        match self.brake_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.brake_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn clutch_switch(&self) -> typed::Reading<J1939Pedal> {
        match self.clutch_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.clutch_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn cruise_set_switch(&self) -> typed::Reading<J1939Switch> {
        match self.cruise_set_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cruise_set_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn cruise_coast_switch(&self) -> typed::Reading<J1939Switch> {
        match self.cruise_coast_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cruise_coast_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn cruise_resume_switch(&self) -> typed::Reading<J1939Switch> {
        match self.cruise_resume_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cruise_resume_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn cruise_accelerate_switch(&self) -> typed::Reading<J1939Switch> {
        match self.cruise_accelerate_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cruise_accelerate_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn cruise_set_speed(&self) -> typed::Reading<u8> {
        match self.cruise_set_speed {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 250 in km/h.
    #[must_use]
    pub fn cruise_set_speed_is_outside(&self) -> bool {
        let raw = self.cruise_set_speed;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn power_take_off_governor(
        &self,
    ) -> typed::Reading<CruiseAndVehicleSpeedPowerTakeOffGovernor> {
        match self.power_take_off_governor.raw() {
            30 => typed::Reading::Fault,
            31 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.power_take_off_governor),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn cruise_control_state(&self) -> typed::Reading<CruiseAndVehicleSpeedCruiseControlState> {
        match self.cruise_control_state.raw() {
            7 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.cruise_control_state),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn idle_increment_switch(&self) -> typed::Reading<J1939Switch> {
        match self.idle_increment_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.idle_increment_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn idle_decrement_switch(&self) -> typed::Reading<J1939Switch> {
        match self.idle_decrement_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.idle_decrement_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn engine_test_mode_switch(&self) -> typed::Reading<J1939Switch> {
        match self.engine_test_mode_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.engine_test_mode_switch),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn shutdown_override_switch(&self) -> typed::Reading<J1939Switch> {
        match self.shutdown_override_switch.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.shutdown_override_switch),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.two_speed_axle_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.two_speed_axle_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("two_speed_axle_switch");
        tell(name, said);
        let said = self.parking_brake_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.parking_brake_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("parking_brake_switch");
        tell(name, said);
        let said = self.cruise_pause_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cruise_pause_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("cruise_pause_switch");
        tell(name, said);
        let said = self.wheel_based_vehicle_speed();
        let said = typed::Said::from(said);
        let is_outside = self.wheel_based_vehicle_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("wheel_based_vehicle_speed");
        tell(name, said);
        let said = self.cruise_control_active();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cruise_control_active;
        let said = said.word(state.word());
        let name = typed::Name::of("cruise_control_active");
        tell(name, said);
        let said = self.cruise_control_enable_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cruise_control_enable_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("cruise_control_enable_switch");
        tell(name, said);
        let said = self.brake_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.brake_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("brake_switch");
        tell(name, said);
        let said = self.clutch_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.clutch_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("clutch_switch");
        tell(name, said);
        let said = self.cruise_set_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cruise_set_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("cruise_set_switch");
        tell(name, said);
        let said = self.cruise_coast_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cruise_coast_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("cruise_coast_switch");
        tell(name, said);
        let said = self.cruise_resume_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cruise_resume_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("cruise_resume_switch");
        tell(name, said);
        let said = self.cruise_accelerate_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cruise_accelerate_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("cruise_accelerate_switch");
        tell(name, said);
        let said = self.cruise_set_speed();
        let said = typed::Said::from(said);
        let is_outside = self.cruise_set_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("cruise_set_speed");
        tell(name, said);
        let said = self.power_take_off_governor();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.power_take_off_governor;
        let said = said.word(state.word());
        let name = typed::Name::of("power_take_off_governor");
        tell(name, said);
        let said = self.cruise_control_state();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.cruise_control_state;
        let said = said.word(state.word());
        let name = typed::Name::of("cruise_control_state");
        tell(name, said);
        let said = self.idle_increment_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.idle_increment_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("idle_increment_switch");
        tell(name, said);
        let said = self.idle_decrement_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.idle_decrement_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("idle_decrement_switch");
        tell(name, said);
        let said = self.engine_test_mode_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.engine_test_mode_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("engine_test_mode_switch");
        tell(name, said);
        let said = self.shutdown_override_switch();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.shutdown_override_switch;
        let said = said.word(state.word());
        let name = typed::Name::of("shutdown_override_switch");
        tell(name, said);
    }
}

/// Distance.
///
/// Distance of the trip and of the vehicle's life.
///
/// Called "VD" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VehicleDistance {
    /// SPN 244, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` km; 32 bits.
    pub trip_distance: u32,
    /// SPN 245, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` km; 32 bits.
    pub total_vehicle_distance: u32,
}

impl VehicleDistance {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEE0;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_TRIP_DISTANCE: typed::Cut = typed::Cut::between((3, 7), (0, 0));
    const AT_TOTAL_VEHICLE_DISTANCE: typed::Cut = typed::Cut::between((7, 7), (4, 0));
    const FORMULA_TRIP_DISTANCE: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_TOTAL_VEHICLE_DISTANCE: typed::Formula = typed::Formula::new(1, 0, 8);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let trip_distance = Self::AT_TRIP_DISTANCE.of(payload) as u32;
        let total_vehicle_distance = Self::AT_TOTAL_VEHICLE_DISTANCE.of(payload) as u32;
        Self {
            trip_distance,
            total_vehicle_distance,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.trip_distance);
        let bits = typed::unsigned_bits(number, 32, "trip_distance")?;
        Self::AT_TRIP_DISTANCE.put(payload, bits);
        let number = u64::from(self.total_vehicle_distance);
        let bits = typed::unsigned_bits(number, 32, "total_vehicle_distance")?;
        Self::AT_TOTAL_VEHICLE_DISTANCE.put(payload, bits);
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
    pub fn trip_distance(&self) -> typed::Reading<f64> {
        match self.trip_distance {
            0xFE000000..=0xFEFFFFFF => typed::Reading::Fault,
            0xFF000000..=0xFFFFFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `trip_distance` to the raw number nearest to a value in km.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_trip_distance(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |raw: i128| !matches!(raw, 0xFE000000..=0xFFFFFFFF);
        let formula = Self::FORMULA_TRIP_DISTANCE;
        let raw = &mut self.trip_distance;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 526385151.875 in km.
    #[must_use]
    pub fn trip_distance_is_outside(&self) -> bool {
        let raw = self.trip_distance;
        matches!(raw, 0xFB000000..=0xFDFFFFFF)
    }

    /// The value in km.
    #[must_use]
    pub fn total_vehicle_distance(&self) -> typed::Reading<f64> {
        match self.total_vehicle_distance {
            0xFE000000..=0xFEFFFFFF => typed::Reading::Fault,
            0xFF000000..=0xFFFFFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `total_vehicle_distance` to the raw number nearest to a value in km.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_total_vehicle_distance(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |raw: i128| !matches!(raw, 0xFE000000..=0xFFFFFFFF);
        let formula = Self::FORMULA_TOTAL_VEHICLE_DISTANCE;
        let raw = &mut self.total_vehicle_distance;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 526385151.875 in km.
    #[must_use]
    pub fn total_vehicle_distance_is_outside(&self) -> bool {
        let raw = self.total_vehicle_distance;
        matches!(raw, 0xFB000000..=0xFDFFFFFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.trip_distance());
        let is_outside = self.trip_distance_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("trip_distance");
        tell(name, said);
        let said = self.total_vehicle_distance();
        let said = typed::Said::from(said);
        let is_outside = self.total_vehicle_distance_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("total_vehicle_distance");
        tell(name, said);
    }
}

/// Distance, fine.
///
/// The same distances in steps of 5 m.
///
/// Called "VDHR" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VehicleDistanceFine {
    /// SPN 917, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.005` km; 32 bits.
    pub total_vehicle_distance: u32,
    /// SPN 918, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.005` km; 32 bits.
    pub trip_distance: u32,
}

impl VehicleDistanceFine {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEC1;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_TOTAL_VEHICLE_DISTANCE: typed::Cut = typed::Cut::between((3, 7), (0, 0));
    const AT_TRIP_DISTANCE: typed::Cut = typed::Cut::between((7, 7), (4, 0));
    const FORMULA_TOTAL_VEHICLE_DISTANCE: typed::Formula = typed::Formula::new(1, 0, 200);
    const FORMULA_TRIP_DISTANCE: typed::Formula = typed::Formula::new(1, 0, 200);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let total_vehicle_distance = Self::AT_TOTAL_VEHICLE_DISTANCE.of(payload) as u32;
        let trip_distance = Self::AT_TRIP_DISTANCE.of(payload) as u32;
        Self {
            total_vehicle_distance,
            trip_distance,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.total_vehicle_distance);
        let bits = typed::unsigned_bits(number, 32, "total_vehicle_distance")?;
        Self::AT_TOTAL_VEHICLE_DISTANCE.put(payload, bits);
        let number = u64::from(self.trip_distance);
        let bits = typed::unsigned_bits(number, 32, "trip_distance")?;
        Self::AT_TRIP_DISTANCE.put(payload, bits);
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
    pub fn total_vehicle_distance(&self) -> typed::Reading<f64> {
        match self.total_vehicle_distance {
            0xFE000000..=0xFEFFFFFF => typed::Reading::Fault,
            0xFF000000..=0xFFFFFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 200.0),
        }
    }

    /// Sets `total_vehicle_distance` to the raw number nearest to a value in km.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_total_vehicle_distance(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |raw: i128| !matches!(raw, 0xFE000000..=0xFFFFFFFF);
        let formula = Self::FORMULA_TOTAL_VEHICLE_DISTANCE;
        let raw = &mut self.total_vehicle_distance;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 21055406.075 in km.
    #[must_use]
    pub fn total_vehicle_distance_is_outside(&self) -> bool {
        let raw = self.total_vehicle_distance;
        matches!(raw, 0xFB000000..=0xFDFFFFFF)
    }

    /// The value in km.
    #[must_use]
    pub fn trip_distance(&self) -> typed::Reading<f64> {
        match self.trip_distance {
            0xFE000000..=0xFEFFFFFF => typed::Reading::Fault,
            0xFF000000..=0xFFFFFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 200.0),
        }
    }

    /// Sets `trip_distance` to the raw number nearest to a value in km.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_trip_distance(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |raw: i128| !matches!(raw, 0xFE000000..=0xFFFFFFFF);
        let formula = Self::FORMULA_TRIP_DISTANCE;
        let raw = &mut self.trip_distance;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 21055406.075 in km.
    #[must_use]
    pub fn trip_distance_is_outside(&self) -> bool {
        let raw = self.trip_distance;
        matches!(raw, 0xFB000000..=0xFDFFFFFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.total_vehicle_distance();
        let said = typed::Said::from(said);
        let is_outside = self.total_vehicle_distance_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("total_vehicle_distance");
        tell(name, said);
        let said = typed::Said::from(self.trip_distance());
        let is_outside = self.trip_distance_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("trip_distance");
        tell(name, said);
    }
}

/// Machine speed and distance.
///
/// Speed and distance of a machine in the field, from its wheels. ISO 11783-7 has the same group for tractors.
///
/// Called "WBSD" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelBasedMachineSpeed {
    /// SPN 1862, SAE J1939-71 and ISO 11783-7 (from memory).
    ///
    /// `raw * 0.001` m/s; 16 bits.
    pub machine_speed: u16,
    /// ISO 11783-7 (from memory).
    ///
    /// `raw * 0.001` m; 32 bits.
    pub machine_distance: u32,
    /// ISO 11783-7 (from memory).
    ///
    /// `raw`; 2 bits.
    pub machine_direction: WheelBasedMachineSpeedMachineDirection,
}

impl WheelBasedMachineSpeed {
    /// The parameter group number.
    pub const PGN: u32 = 0xFE48;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_millis(100);
    const AT_MACHINE_SPEED: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_MACHINE_DISTANCE: typed::Cut = typed::Cut::between((5, 7), (2, 0));
    const AT_MACHINE_DIRECTION: typed::Cut = typed::Cut::between((7, 1), (7, 0));
    const FORMULA_MACHINE_SPEED: typed::Formula = typed::Formula::new(1, 0, 1000);
    const FORMULA_MACHINE_DISTANCE: typed::Formula = typed::Formula::new(1, 0, 1000);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let machine_speed = Self::AT_MACHINE_SPEED.of(payload) as u16;
        let machine_distance = Self::AT_MACHINE_DISTANCE.of(payload) as u32;
        let bits = Self::AT_MACHINE_DIRECTION.of(payload);
        let machine_direction = WheelBasedMachineSpeedMachineDirection::from_raw(bits as u8);
        Self {
            machine_speed,
            machine_distance,
            machine_direction,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.machine_speed);
        let bits = typed::unsigned_bits(number, 16, "machine_speed")?;
        Self::AT_MACHINE_SPEED.put(payload, bits);
        let number = u64::from(self.machine_distance);
        let bits = typed::unsigned_bits(number, 32, "machine_distance")?;
        Self::AT_MACHINE_DISTANCE.put(payload, bits);
        let number = u64::from(self.machine_direction.raw());
        let bits = typed::unsigned_bits(number, 2, "machine_direction")?;
        Self::AT_MACHINE_DIRECTION.put(payload, bits);
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

    /// The value in m/s.
    #[must_use]
    pub fn machine_speed(&self) -> typed::Reading<f64> {
        match self.machine_speed {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 1000.0),
        }
    }

    /// Sets `machine_speed` to the raw number nearest to a value in m/s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_machine_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_MACHINE_SPEED;
        let raw = &mut self.machine_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 64.255 in m/s.
    #[must_use]
    pub fn machine_speed_is_outside(&self) -> bool {
        let raw = self.machine_speed;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in m.
    #[must_use]
    pub fn machine_distance(&self) -> typed::Reading<f64> {
        match self.machine_distance {
            0xFE000000..=0xFEFFFFFF => typed::Reading::Fault,
            0xFF000000..=0xFFFFFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 1000.0),
        }
    }

    /// Sets `machine_distance` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_machine_distance(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 4294967295);
        let is_value = |raw: i128| !matches!(raw, 0xFE000000..=0xFFFFFFFF);
        let formula = Self::FORMULA_MACHINE_DISTANCE;
        let raw = &mut self.machine_distance;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 4211081.215 in m.
    #[must_use]
    pub fn machine_distance_is_outside(&self) -> bool {
        let raw = self.machine_distance;
        matches!(raw, 0xFB000000..=0xFDFFFFFF)
    }

    /// What the raw number says.
    #[must_use]
    pub fn machine_direction(&self) -> typed::Reading<WheelBasedMachineSpeedMachineDirection> {
        match self.machine_direction.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.machine_direction),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.machine_speed());
        let is_outside = self.machine_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("machine_speed");
        tell(name, said);
        let said = self.machine_distance();
        let said = typed::Said::from(said);
        let is_outside = self.machine_distance_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("machine_distance");
        tell(name, said);
        let said = self.machine_direction();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.machine_direction;
        let said = said.word(state.word());
        let name = typed::Name::of("machine_direction");
        tell(name, said);
    }
}

/// Ambient conditions.
///
/// The air around the vehicle and in the cab.
///
/// Called "AMB" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AmbientConditions {
    /// SPN 108, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.5` kPa; 8 bits.
    pub barometric_pressure: u8,
    /// SPN 170, SAE J1939-71 (from memory).
    ///
    /// `raw / 32 - 273` °C; 16 bits.
    pub cab_temperature: u16,
    /// SPN 171, SAE J1939-71 (from memory).
    ///
    /// `raw / 32 - 273` °C; 16 bits.
    pub ambient_temperature: u16,
    /// SPN 172, SAE J1939-71 (from memory).
    ///
    /// `raw - 40` °C; 8 bits.
    pub air_inlet_temperature: u8,
    /// SPN 79, SAE J1939-71 (from memory).
    ///
    /// `raw / 32 - 273` °C; 16 bits.
    pub road_surface_temperature: u16,
}

impl AmbientConditions {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEF5;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_BAROMETRIC_PRESSURE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_CAB_TEMPERATURE: typed::Cut = typed::Cut::between((2, 7), (1, 0));
    const AT_AMBIENT_TEMPERATURE: typed::Cut = typed::Cut::between((4, 7), (3, 0));
    const AT_AIR_INLET_TEMPERATURE: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_ROAD_SURFACE_TEMPERATURE: typed::Cut = typed::Cut::between((7, 7), (6, 0));
    const FORMULA_BAROMETRIC_PRESSURE: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_CAB_TEMPERATURE: typed::Formula = typed::Formula::new(1, -8736, 32);
    const FORMULA_AMBIENT_TEMPERATURE: typed::Formula = typed::Formula::new(1, -8736, 32);
    const FORMULA_AIR_INLET_TEMPERATURE: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_ROAD_SURFACE_TEMPERATURE: typed::Formula = typed::Formula::new(1, -8736, 32);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let barometric_pressure = Self::AT_BAROMETRIC_PRESSURE.of(payload) as u8;
        let cab_temperature = Self::AT_CAB_TEMPERATURE.of(payload) as u16;
        let ambient_temperature = Self::AT_AMBIENT_TEMPERATURE.of(payload) as u16;
        let air_inlet_temperature = Self::AT_AIR_INLET_TEMPERATURE.of(payload) as u8;
        let road_surface_temperature = Self::AT_ROAD_SURFACE_TEMPERATURE.of(payload) as u16;
        Self {
            barometric_pressure,
            cab_temperature,
            ambient_temperature,
            air_inlet_temperature,
            road_surface_temperature,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.barometric_pressure);
        let bits = typed::unsigned_bits(number, 8, "barometric_pressure")?;
        Self::AT_BAROMETRIC_PRESSURE.put(payload, bits);
        let number = u64::from(self.cab_temperature);
        let bits = typed::unsigned_bits(number, 16, "cab_temperature")?;
        Self::AT_CAB_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.ambient_temperature);
        let bits = typed::unsigned_bits(number, 16, "ambient_temperature")?;
        Self::AT_AMBIENT_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.air_inlet_temperature);
        let bits = typed::unsigned_bits(number, 8, "air_inlet_temperature")?;
        Self::AT_AIR_INLET_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.road_surface_temperature);
        let bits = typed::unsigned_bits(number, 16, "road_surface_temperature")?;
        Self::AT_ROAD_SURFACE_TEMPERATURE.put(payload, bits);
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

    /// The value in kPa.
    #[must_use]
    pub fn barometric_pressure(&self) -> typed::Reading<f64> {
        match self.barometric_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `barometric_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_barometric_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_BAROMETRIC_PRESSURE;
        let raw = &mut self.barometric_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 125 in kPa.
    #[must_use]
    pub fn barometric_pressure_is_outside(&self) -> bool {
        let raw = self.barometric_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn cab_temperature(&self) -> typed::Reading<f64> {
        match self.cab_temperature {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `cab_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_cab_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_CAB_TEMPERATURE;
        let raw = &mut self.cab_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -273 to 1734.96875 in °C.
    #[must_use]
    pub fn cab_temperature_is_outside(&self) -> bool {
        let raw = self.cab_temperature;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in °C.
    #[must_use]
    pub fn ambient_temperature(&self) -> typed::Reading<f64> {
        match self.ambient_temperature {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `ambient_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_ambient_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_AMBIENT_TEMPERATURE;
        let raw = &mut self.ambient_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -273 to 1734.96875 in °C.
    #[must_use]
    pub fn ambient_temperature_is_outside(&self) -> bool {
        let raw = self.ambient_temperature;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in °C.
    #[must_use]
    pub fn air_inlet_temperature(&self) -> typed::Reading<f64> {
        match self.air_inlet_temperature {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `air_inlet_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_air_inlet_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_AIR_INLET_TEMPERATURE;
        let raw = &mut self.air_inlet_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 210 in °C.
    #[must_use]
    pub fn air_inlet_temperature_is_outside(&self) -> bool {
        let raw = self.air_inlet_temperature;
        matches!(raw, 251..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn road_surface_temperature(&self) -> typed::Reading<f64> {
        match self.road_surface_temperature {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `road_surface_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_road_surface_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_ROAD_SURFACE_TEMPERATURE;
        let raw = &mut self.road_surface_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -273 to 1734.96875 in °C.
    #[must_use]
    pub fn road_surface_temperature_is_outside(&self) -> bool {
        let raw = self.road_surface_temperature;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.barometric_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.barometric_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("barometric_pressure");
        tell(name, said);
        let said = self.cab_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.cab_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("cab_temperature");
        tell(name, said);
        let said = self.ambient_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.ambient_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("ambient_temperature");
        tell(name, said);
        let said = self.air_inlet_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.air_inlet_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("air_inlet_temperature");
        tell(name, said);
        let said = self.road_surface_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.road_surface_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("road_surface_temperature");
        tell(name, said);
    }
}

/// Electrical power.
///
/// Battery and alternator.
///
/// Called "VEP1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ElectricalPower {
    /// SPN 114, SAE J1939-71 (from memory). Into the battery is positive.
    ///
    /// `raw - 125` A; 8 bits.
    pub net_battery_current: u8,
    /// SPN 115, SAE J1939-71 (from memory).
    ///
    /// `raw` A; 8 bits.
    pub alternator_current: u8,
    /// SPN 167, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.05` V; 16 bits.
    pub charging_system_potential: u16,
    /// SPN 168, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.05` V; 16 bits.
    pub battery_potential: u16,
    /// SPN 158, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.05` V; 16 bits.
    pub key_switch_potential: u16,
}

impl ElectricalPower {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEF7;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_NET_BATTERY_CURRENT: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_ALTERNATOR_CURRENT: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_CHARGING_SYSTEM_POTENTIAL: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const AT_BATTERY_POTENTIAL: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_KEY_SWITCH_POTENTIAL: typed::Cut = typed::Cut::between((7, 7), (6, 0));
    const FORMULA_NET_BATTERY_CURRENT: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_CHARGING_SYSTEM_POTENTIAL: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_BATTERY_POTENTIAL: typed::Formula = typed::Formula::new(1, 0, 20);
    const FORMULA_KEY_SWITCH_POTENTIAL: typed::Formula = typed::Formula::new(1, 0, 20);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let net_battery_current = Self::AT_NET_BATTERY_CURRENT.of(payload) as u8;
        let alternator_current = Self::AT_ALTERNATOR_CURRENT.of(payload) as u8;
        let charging_system_potential = Self::AT_CHARGING_SYSTEM_POTENTIAL.of(payload) as u16;
        let battery_potential = Self::AT_BATTERY_POTENTIAL.of(payload) as u16;
        let key_switch_potential = Self::AT_KEY_SWITCH_POTENTIAL.of(payload) as u16;
        Self {
            net_battery_current,
            alternator_current,
            charging_system_potential,
            battery_potential,
            key_switch_potential,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.net_battery_current);
        let bits = typed::unsigned_bits(number, 8, "net_battery_current")?;
        Self::AT_NET_BATTERY_CURRENT.put(payload, bits);
        let number = u64::from(self.alternator_current);
        let bits = typed::unsigned_bits(number, 8, "alternator_current")?;
        Self::AT_ALTERNATOR_CURRENT.put(payload, bits);
        let number = u64::from(self.charging_system_potential);
        let bits = typed::unsigned_bits(number, 16, "charging_system_potential")?;
        Self::AT_CHARGING_SYSTEM_POTENTIAL.put(payload, bits);
        let number = u64::from(self.battery_potential);
        let bits = typed::unsigned_bits(number, 16, "battery_potential")?;
        Self::AT_BATTERY_POTENTIAL.put(payload, bits);
        let number = u64::from(self.key_switch_potential);
        let bits = typed::unsigned_bits(number, 16, "key_switch_potential")?;
        Self::AT_KEY_SWITCH_POTENTIAL.put(payload, bits);
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

    /// The value in A.
    #[must_use]
    pub fn net_battery_current(&self) -> typed::Reading<f64> {
        match self.net_battery_current {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `net_battery_current` to the raw number nearest to a value in A.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_net_battery_current(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_NET_BATTERY_CURRENT;
        let raw = &mut self.net_battery_current;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in A.
    #[must_use]
    pub fn net_battery_current_is_outside(&self) -> bool {
        let raw = self.net_battery_current;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn alternator_current(&self) -> typed::Reading<u8> {
        match self.alternator_current {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 250 in A.
    #[must_use]
    pub fn alternator_current_is_outside(&self) -> bool {
        let raw = self.alternator_current;
        matches!(raw, 251..=253)
    }

    /// The value in V.
    #[must_use]
    pub fn charging_system_potential(&self) -> typed::Reading<f64> {
        match self.charging_system_potential {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `charging_system_potential` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_charging_system_potential(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_CHARGING_SYSTEM_POTENTIAL;
        let raw = &mut self.charging_system_potential;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 3212.75 in V.
    #[must_use]
    pub fn charging_system_potential_is_outside(&self) -> bool {
        let raw = self.charging_system_potential;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in V.
    #[must_use]
    pub fn battery_potential(&self) -> typed::Reading<f64> {
        match self.battery_potential {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `battery_potential` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_battery_potential(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_BATTERY_POTENTIAL;
        let raw = &mut self.battery_potential;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 3212.75 in V.
    #[must_use]
    pub fn battery_potential_is_outside(&self) -> bool {
        let raw = self.battery_potential;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in V.
    #[must_use]
    pub fn key_switch_potential(&self) -> typed::Reading<f64> {
        match self.key_switch_potential {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 20.0),
        }
    }

    /// Sets `key_switch_potential` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_key_switch_potential(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_KEY_SWITCH_POTENTIAL;
        let raw = &mut self.key_switch_potential;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 3212.75 in V.
    #[must_use]
    pub fn key_switch_potential_is_outside(&self) -> bool {
        let raw = self.key_switch_potential;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.net_battery_current();
        let said = typed::Said::from(said);
        let is_outside = self.net_battery_current_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("net_battery_current");
        tell(name, said);
        let said = self.alternator_current();
        let said = typed::Said::from(said);
        let is_outside = self.alternator_current_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("alternator_current");
        tell(name, said);
        let said = self.charging_system_potential();
        let said = typed::Said::from(said);
        let is_outside = self.charging_system_potential_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("charging_system_potential");
        tell(name, said);
        let said = self.battery_potential();
        let said = typed::Said::from(said);
        let is_outside = self.battery_potential_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("battery_potential");
        tell(name, said);
        let said = self.key_switch_potential();
        let said = typed::Said::from(said);
        let is_outside = self.key_switch_potential_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("key_switch_potential");
        tell(name, said);
    }
}

/// Levels and filters.
///
/// Fuel level and what a dash shows beside it.
///
/// Called "DD1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelsAndFilters {
    /// SPN 80, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub washer_fluid_level: u8,
    /// SPN 96, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub fuel_level: u8,
    /// SPN 95, SAE J1939-71 (from memory).
    ///
    /// `raw * 2` kPa; 8 bits.
    pub fuel_filter_pressure_drop: u8,
    /// SPN 99, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.5` kPa; 8 bits.
    pub oil_filter_pressure_drop: u8,
    /// SPN 169, SAE J1939-71 (from memory).
    ///
    /// `raw / 32 - 273` °C; 16 bits.
    pub cargo_temperature: u16,
    /// SPN 38, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.4` %; 8 bits.
    pub fuel_level_2: u8,
}

impl LevelsAndFilters {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEFC;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_WASHER_FLUID_LEVEL: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_FUEL_LEVEL: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_FUEL_FILTER_PRESSURE_DROP: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_OIL_FILTER_PRESSURE_DROP: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_CARGO_TEMPERATURE: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_FUEL_LEVEL_2: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const FORMULA_WASHER_FLUID_LEVEL: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_FUEL_LEVEL: typed::Formula = typed::Formula::new(2, 0, 5);
    const FORMULA_FUEL_FILTER_PRESSURE_DROP: typed::Formula = typed::Formula::new(2, 0, 1);
    const FORMULA_OIL_FILTER_PRESSURE_DROP: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_CARGO_TEMPERATURE: typed::Formula = typed::Formula::new(1, -8736, 32);
    const FORMULA_FUEL_LEVEL_2: typed::Formula = typed::Formula::new(2, 0, 5);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let washer_fluid_level = Self::AT_WASHER_FLUID_LEVEL.of(payload) as u8;
        let fuel_level = Self::AT_FUEL_LEVEL.of(payload) as u8;
        let fuel_filter_pressure_drop = Self::AT_FUEL_FILTER_PRESSURE_DROP.of(payload) as u8;
        let oil_filter_pressure_drop = Self::AT_OIL_FILTER_PRESSURE_DROP.of(payload) as u8;
        let cargo_temperature = Self::AT_CARGO_TEMPERATURE.of(payload) as u16;
        let fuel_level_2 = Self::AT_FUEL_LEVEL_2.of(payload) as u8;
        Self {
            washer_fluid_level,
            fuel_level,
            fuel_filter_pressure_drop,
            oil_filter_pressure_drop,
            cargo_temperature,
            fuel_level_2,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.washer_fluid_level);
        let bits = typed::unsigned_bits(number, 8, "washer_fluid_level")?;
        Self::AT_WASHER_FLUID_LEVEL.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.fuel_level), 8, "fuel_level")?;
        Self::AT_FUEL_LEVEL.put(payload, bits);
        let number = u64::from(self.fuel_filter_pressure_drop);
        let bits = typed::unsigned_bits(number, 8, "fuel_filter_pressure_drop")?;
        Self::AT_FUEL_FILTER_PRESSURE_DROP.put(payload, bits);
        let number = u64::from(self.oil_filter_pressure_drop);
        let bits = typed::unsigned_bits(number, 8, "oil_filter_pressure_drop")?;
        Self::AT_OIL_FILTER_PRESSURE_DROP.put(payload, bits);
        let number = u64::from(self.cargo_temperature);
        let bits = typed::unsigned_bits(number, 16, "cargo_temperature")?;
        Self::AT_CARGO_TEMPERATURE.put(payload, bits);
        let number = u64::from(self.fuel_level_2);
        let bits = typed::unsigned_bits(number, 8, "fuel_level_2")?;
        Self::AT_FUEL_LEVEL_2.put(payload, bits);
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

    /// The value in %.
    #[must_use]
    pub fn washer_fluid_level(&self) -> typed::Reading<f64> {
        match self.washer_fluid_level {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `washer_fluid_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_washer_fluid_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_WASHER_FLUID_LEVEL;
        let raw = &mut self.washer_fluid_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn washer_fluid_level_is_outside(&self) -> bool {
        let raw = self.washer_fluid_level;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn fuel_level(&self) -> typed::Reading<f64> {
        match self.fuel_level {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `fuel_level` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fuel_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_FUEL_LEVEL;
        let raw = &mut self.fuel_level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn fuel_level_is_outside(&self) -> bool {
        let raw = self.fuel_level;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn fuel_filter_pressure_drop(&self) -> typed::Reading<f64> {
        match self.fuel_filter_pressure_drop {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64),
        }
    }

    /// Sets `fuel_filter_pressure_drop` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fuel_filter_pressure_drop(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_FUEL_FILTER_PRESSURE_DROP;
        let raw = &mut self.fuel_filter_pressure_drop;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 500 in kPa.
    #[must_use]
    pub fn fuel_filter_pressure_drop_is_outside(&self) -> bool {
        let raw = self.fuel_filter_pressure_drop;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn oil_filter_pressure_drop(&self) -> typed::Reading<f64> {
        match self.oil_filter_pressure_drop {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `oil_filter_pressure_drop` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_oil_filter_pressure_drop(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_OIL_FILTER_PRESSURE_DROP;
        let raw = &mut self.oil_filter_pressure_drop;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 125 in kPa.
    #[must_use]
    pub fn oil_filter_pressure_drop_is_outside(&self) -> bool {
        let raw = self.oil_filter_pressure_drop;
        matches!(raw, 251..=253)
    }

    /// The value in °C.
    #[must_use]
    pub fn cargo_temperature(&self) -> typed::Reading<f64> {
        match self.cargo_temperature {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 8736) as f64 / 32.0),
        }
    }

    /// Sets `cargo_temperature` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_cargo_temperature(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_CARGO_TEMPERATURE;
        let raw = &mut self.cargo_temperature;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -273 to 1734.96875 in °C.
    #[must_use]
    pub fn cargo_temperature_is_outside(&self) -> bool {
        let raw = self.cargo_temperature;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %.
    #[must_use]
    pub fn fuel_level_2(&self) -> typed::Reading<f64> {
        match self.fuel_level_2 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 2) as f64 / 5.0),
        }
    }

    /// Sets `fuel_level_2` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_fuel_level_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_FUEL_LEVEL_2;
        let raw = &mut self.fuel_level_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 100 in %.
    #[must_use]
    pub fn fuel_level_2_is_outside(&self) -> bool {
        let raw = self.fuel_level_2;
        matches!(raw, 251..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.washer_fluid_level();
        let said = typed::Said::from(said);
        let is_outside = self.washer_fluid_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("washer_fluid_level");
        tell(name, said);
        let said = typed::Said::from(self.fuel_level());
        let is_outside = self.fuel_level_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel_level");
        tell(name, said);
        let said = self.fuel_filter_pressure_drop();
        let said = typed::Said::from(said);
        let is_outside = self.fuel_filter_pressure_drop_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel_filter_pressure_drop");
        tell(name, said);
        let said = self.oil_filter_pressure_drop();
        let said = typed::Said::from(said);
        let is_outside = self.oil_filter_pressure_drop_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("oil_filter_pressure_drop");
        tell(name, said);
        let said = self.cargo_temperature();
        let said = typed::Said::from(said);
        let is_outside = self.cargo_temperature_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("cargo_temperature");
        tell(name, said);
        let said = typed::Said::from(self.fuel_level_2());
        let is_outside = self.fuel_level_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("fuel_level_2");
        tell(name, said);
    }
}

/// Air supply.
///
/// Compressed air for the brakes and its other users.
///
/// Called "AIR1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AirSupply {
    /// SPN 46, SAE J1939-71 (from memory).
    ///
    /// `raw * 8` kPa; 8 bits.
    pub air_supply_pressure: u8,
    /// SPN 1086, SAE J1939-71 (from memory).
    ///
    /// `raw * 8` kPa; 8 bits.
    pub parking_and_trailer_air_pressure: u8,
    /// SPN 1087, SAE J1939-71 (from memory).
    ///
    /// `raw * 8` kPa; 8 bits.
    pub service_brake_air_pressure_1: u8,
    /// SPN 1088, SAE J1939-71 (from memory).
    ///
    /// `raw * 8` kPa; 8 bits.
    pub service_brake_air_pressure_2: u8,
    /// SPN 1089, SAE J1939-71 (from memory).
    ///
    /// `raw * 8` kPa; 8 bits.
    pub auxiliary_air_pressure: u8,
    /// SPN 1090, SAE J1939-71 (from memory).
    ///
    /// `raw * 8` kPa; 8 bits.
    pub air_suspension_pressure: u8,
    /// SPN 1351, SAE J1939-71 (from memory).
    ///
    /// `raw`; 2 bits.
    pub air_compressor: J1939Activity,
}

impl AirSupply {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEAE;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
    const AT_AIR_SUPPLY_PRESSURE: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_PARKING_AND_TRAILER_AIR_PRESSURE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_SERVICE_BRAKE_AIR_PRESSURE_1: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_SERVICE_BRAKE_AIR_PRESSURE_2: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_AUXILIARY_AIR_PRESSURE: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_AIR_SUSPENSION_PRESSURE: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_AIR_COMPRESSOR: typed::Cut = typed::Cut::between((6, 1), (6, 0));
    const FORMULA_AIR_SUPPLY_PRESSURE: typed::Formula = typed::Formula::new(8, 0, 1);
    const FORMULA_PARKING_AND_TRAILER_AIR_PRESSURE: typed::Formula = typed::Formula::new(8, 0, 1);
    const FORMULA_SERVICE_BRAKE_AIR_PRESSURE_1: typed::Formula = typed::Formula::new(8, 0, 1);
    const FORMULA_SERVICE_BRAKE_AIR_PRESSURE_2: typed::Formula = typed::Formula::new(8, 0, 1);
    const FORMULA_AUXILIARY_AIR_PRESSURE: typed::Formula = typed::Formula::new(8, 0, 1);
    const FORMULA_AIR_SUSPENSION_PRESSURE: typed::Formula = typed::Formula::new(8, 0, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let air_supply_pressure = Self::AT_AIR_SUPPLY_PRESSURE.of(payload) as u8;
        let bits = Self::AT_PARKING_AND_TRAILER_AIR_PRESSURE.of(payload);
        let parking_and_trailer_air_pressure = bits as u8;
        let bits = Self::AT_SERVICE_BRAKE_AIR_PRESSURE_1.of(payload);
        let service_brake_air_pressure_1 = bits as u8;
        let bits = Self::AT_SERVICE_BRAKE_AIR_PRESSURE_2.of(payload);
        let service_brake_air_pressure_2 = bits as u8;
        let auxiliary_air_pressure = Self::AT_AUXILIARY_AIR_PRESSURE.of(payload) as u8;
        let air_suspension_pressure = Self::AT_AIR_SUSPENSION_PRESSURE.of(payload) as u8;
        let bits = Self::AT_AIR_COMPRESSOR.of(payload);
        let air_compressor = J1939Activity::from_raw(bits as u8);
        Self {
            air_supply_pressure,
            parking_and_trailer_air_pressure,
            service_brake_air_pressure_1,
            service_brake_air_pressure_2,
            auxiliary_air_pressure,
            air_suspension_pressure,
            air_compressor,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.air_supply_pressure);
        let bits = typed::unsigned_bits(number, 8, "air_supply_pressure")?;
        Self::AT_AIR_SUPPLY_PRESSURE.put(payload, bits);
        let number = u64::from(self.parking_and_trailer_air_pressure);
        let bits = typed::unsigned_bits(number, 8, "parking_and_trailer_air_pressure")?;
        Self::AT_PARKING_AND_TRAILER_AIR_PRESSURE.put(payload, bits);
        let number = u64::from(self.service_brake_air_pressure_1);
        let bits = typed::unsigned_bits(number, 8, "service_brake_air_pressure_1")?;
        Self::AT_SERVICE_BRAKE_AIR_PRESSURE_1.put(payload, bits);
        let number = u64::from(self.service_brake_air_pressure_2);
        let bits = typed::unsigned_bits(number, 8, "service_brake_air_pressure_2")?;
        Self::AT_SERVICE_BRAKE_AIR_PRESSURE_2.put(payload, bits);
        let number = u64::from(self.auxiliary_air_pressure);
        let bits = typed::unsigned_bits(number, 8, "auxiliary_air_pressure")?;
        Self::AT_AUXILIARY_AIR_PRESSURE.put(payload, bits);
        let number = u64::from(self.air_suspension_pressure);
        let bits = typed::unsigned_bits(number, 8, "air_suspension_pressure")?;
        Self::AT_AIR_SUSPENSION_PRESSURE.put(payload, bits);
        let number = u64::from(self.air_compressor.raw());
        let bits = typed::unsigned_bits(number, 2, "air_compressor")?;
        Self::AT_AIR_COMPRESSOR.put(payload, bits);
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

    /// The value in kPa.
    #[must_use]
    pub fn air_supply_pressure(&self) -> typed::Reading<f64> {
        match self.air_supply_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 8) as f64),
        }
    }

    /// Sets `air_supply_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_air_supply_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_AIR_SUPPLY_PRESSURE;
        let raw = &mut self.air_supply_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2000 in kPa.
    #[must_use]
    pub fn air_supply_pressure_is_outside(&self) -> bool {
        let raw = self.air_supply_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn parking_and_trailer_air_pressure(&self) -> typed::Reading<f64> {
        match self.parking_and_trailer_air_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 8) as f64),
        }
    }

    /// Sets `parking_and_trailer_air_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_parking_and_trailer_air_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PARKING_AND_TRAILER_AIR_PRESSURE;
        let raw = &mut self.parking_and_trailer_air_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2000 in kPa.
    #[must_use]
    pub fn parking_and_trailer_air_pressure_is_outside(&self) -> bool {
        let raw = self.parking_and_trailer_air_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn service_brake_air_pressure_1(&self) -> typed::Reading<f64> {
        match self.service_brake_air_pressure_1 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 8) as f64),
        }
    }

    /// Sets `service_brake_air_pressure_1` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_service_brake_air_pressure_1(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_SERVICE_BRAKE_AIR_PRESSURE_1;
        let raw = &mut self.service_brake_air_pressure_1;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2000 in kPa.
    #[must_use]
    pub fn service_brake_air_pressure_1_is_outside(&self) -> bool {
        let raw = self.service_brake_air_pressure_1;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn service_brake_air_pressure_2(&self) -> typed::Reading<f64> {
        match self.service_brake_air_pressure_2 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 8) as f64),
        }
    }

    /// Sets `service_brake_air_pressure_2` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_service_brake_air_pressure_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_SERVICE_BRAKE_AIR_PRESSURE_2;
        let raw = &mut self.service_brake_air_pressure_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2000 in kPa.
    #[must_use]
    pub fn service_brake_air_pressure_2_is_outside(&self) -> bool {
        let raw = self.service_brake_air_pressure_2;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn auxiliary_air_pressure(&self) -> typed::Reading<f64> {
        match self.auxiliary_air_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 8) as f64),
        }
    }

    /// Sets `auxiliary_air_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_auxiliary_air_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_AUXILIARY_AIR_PRESSURE;
        let raw = &mut self.auxiliary_air_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2000 in kPa.
    #[must_use]
    pub fn auxiliary_air_pressure_is_outside(&self) -> bool {
        let raw = self.auxiliary_air_pressure;
        matches!(raw, 251..=253)
    }

    /// The value in kPa.
    #[must_use]
    pub fn air_suspension_pressure(&self) -> typed::Reading<f64> {
        match self.air_suspension_pressure {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 8) as f64),
        }
    }

    /// Sets `air_suspension_pressure` to the raw number nearest to a value in kPa.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_air_suspension_pressure(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_AIR_SUSPENSION_PRESSURE;
        let raw = &mut self.air_suspension_pressure;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2000 in kPa.
    #[must_use]
    pub fn air_suspension_pressure_is_outside(&self) -> bool {
        let raw = self.air_suspension_pressure;
        matches!(raw, 251..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn air_compressor(&self) -> typed::Reading<J1939Activity> {
        match self.air_compressor.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.air_compressor),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.air_supply_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.air_supply_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("air_supply_pressure");
        tell(name, said);
        let said = self.parking_and_trailer_air_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.parking_and_trailer_air_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("parking_and_trailer_air_pressure");
        tell(name, said);
        let said = self.service_brake_air_pressure_1();
        let said = typed::Said::from(said);
        let is_outside = self.service_brake_air_pressure_1_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("service_brake_air_pressure_1");
        tell(name, said);
        let said = self.service_brake_air_pressure_2();
        let said = typed::Said::from(said);
        let is_outside = self.service_brake_air_pressure_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("service_brake_air_pressure_2");
        tell(name, said);
        let said = self.auxiliary_air_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.auxiliary_air_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("auxiliary_air_pressure");
        tell(name, said);
        let said = self.air_suspension_pressure();
        let said = typed::Said::from(said);
        let is_outside = self.air_suspension_pressure_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("air_suspension_pressure");
        tell(name, said);
        let said = self.air_compressor();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.air_compressor;
        let said = said.word(state.word());
        let name = typed::Name::of("air_compressor");
        tell(name, said);
    }
}

/// Time and date.
///
/// Time and date, in UTC.
///
/// Called "TD" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeAndDate {
    /// SPN 959, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.25` s; 8 bits.
    pub seconds: u8,
    /// SPN 960, SAE J1939-71 (from memory).
    ///
    /// `raw` min; 8 bits.
    pub minutes: u8,
    /// SPN 961, SAE J1939-71 (from memory).
    ///
    /// `raw` h; 8 bits.
    pub hours: u8,
    /// SPN 963, SAE J1939-71 (from memory).
    ///
    /// `raw` month; 8 bits.
    pub month: u8,
    /// SPN 962, SAE J1939-71 (from memory). In quarters: 0.25, 0.5, 0.75 and 1 are the first day.
    ///
    /// `raw * 0.25` d; 8 bits.
    pub day: u8,
    /// SPN 964, SAE J1939-71 (from memory).
    ///
    /// `raw + 1985` year; 8 bits.
    pub year: u8,
    /// SPN 1601, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` min; 8 bits.
    pub local_minute_offset: u8,
    /// SPN 1602, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` h; 8 bits.
    pub local_hour_offset: u8,
}

impl TimeAndDate {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEE6;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_SECONDS: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_MINUTES: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_HOURS: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_MONTH: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_DAY: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_YEAR: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_LOCAL_MINUTE_OFFSET: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_LOCAL_HOUR_OFFSET: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_SECONDS: typed::Formula = typed::Formula::new(1, 0, 4);
    const FORMULA_DAY: typed::Formula = typed::Formula::new(1, 0, 4);
    const FORMULA_YEAR: typed::Formula = typed::Formula::new(1, 1985, 1);
    const FORMULA_LOCAL_MINUTE_OFFSET: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_LOCAL_HOUR_OFFSET: typed::Formula = typed::Formula::new(1, -125, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let seconds = Self::AT_SECONDS.of(payload) as u8;
        let minutes = Self::AT_MINUTES.of(payload) as u8;
        let hours = Self::AT_HOURS.of(payload) as u8;
        let month = Self::AT_MONTH.of(payload) as u8;
        let day = Self::AT_DAY.of(payload) as u8;
        let year = Self::AT_YEAR.of(payload) as u8;
        let local_minute_offset = Self::AT_LOCAL_MINUTE_OFFSET.of(payload) as u8;
        let local_hour_offset = Self::AT_LOCAL_HOUR_OFFSET.of(payload) as u8;
        Self {
            seconds,
            minutes,
            hours,
            month,
            day,
            year,
            local_minute_offset,
            local_hour_offset,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.seconds), 8, "seconds")?;
        Self::AT_SECONDS.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.minutes), 8, "minutes")?;
        Self::AT_MINUTES.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.hours), 8, "hours")?;
        Self::AT_HOURS.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.month), 8, "month")?;
        Self::AT_MONTH.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.day), 8, "day")?;
        Self::AT_DAY.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.year), 8, "year")?;
        Self::AT_YEAR.put(payload, bits);
        let number = u64::from(self.local_minute_offset);
        let bits = typed::unsigned_bits(number, 8, "local_minute_offset")?;
        Self::AT_LOCAL_MINUTE_OFFSET.put(payload, bits);
        let number = u64::from(self.local_hour_offset);
        let bits = typed::unsigned_bits(number, 8, "local_hour_offset")?;
        Self::AT_LOCAL_HOUR_OFFSET.put(payload, bits);
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

    /// The value in s.
    #[must_use]
    pub fn seconds(&self) -> typed::Reading<f64> {
        match self.seconds {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 4.0),
        }
    }

    /// Sets `seconds` to the raw number nearest to a value in s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_seconds(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_SECONDS;
        let raw = &mut self.seconds;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 59.75 in s.
    #[must_use]
    pub fn seconds_is_outside(&self) -> bool {
        let raw = self.seconds;
        matches!(raw, 240..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn minutes(&self) -> typed::Reading<u8> {
        match self.minutes {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 59 in min.
    #[must_use]
    pub fn minutes_is_outside(&self) -> bool {
        let raw = self.minutes;
        matches!(raw, 60..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn hours(&self) -> typed::Reading<u8> {
        match self.hours {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 23 in h.
    #[must_use]
    pub fn hours_is_outside(&self) -> bool {
        let raw = self.hours;
        matches!(raw, 24..=253)
    }

    /// What the raw number says.
    #[must_use]
    pub fn month(&self) -> typed::Reading<u8> {
        match self.month {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 1 to 12 in month.
    #[must_use]
    pub fn month_is_outside(&self) -> bool {
        let raw = self.month;
        matches!(raw, 0 | 13..=253)
    }

    /// The value in d.
    #[must_use]
    pub fn day(&self) -> typed::Reading<f64> {
        match self.day {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 4.0),
        }
    }

    /// Sets `day` to the raw number nearest to a value in d.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_day(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_DAY;
        let raw = &mut self.day;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0.25 to 31.75 in d.
    #[must_use]
    pub fn day_is_outside(&self) -> bool {
        let raw = self.day;
        matches!(raw, 0 | 128..=253)
    }

    /// The value in year.
    #[must_use]
    pub fn year(&self) -> typed::Reading<f64> {
        match self.year {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) + 1985) as f64),
        }
    }

    /// Sets `year` to the raw number nearest to a value in year.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_year(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_YEAR;
        let raw = &mut self.year;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 1985 to 2235 in year.
    #[must_use]
    pub fn year_is_outside(&self) -> bool {
        let raw = self.year;
        matches!(raw, 251..=253)
    }

    /// The value in min.
    #[must_use]
    pub fn local_minute_offset(&self) -> typed::Reading<f64> {
        match self.local_minute_offset {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `local_minute_offset` to the raw number nearest to a value in min.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_local_minute_offset(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_LOCAL_MINUTE_OFFSET;
        let raw = &mut self.local_minute_offset;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -59 to 59 in min.
    #[must_use]
    pub fn local_minute_offset_is_outside(&self) -> bool {
        let raw = self.local_minute_offset;
        matches!(raw, 0..=65 | 185..=253)
    }

    /// The value in h.
    #[must_use]
    pub fn local_hour_offset(&self) -> typed::Reading<f64> {
        match self.local_hour_offset {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `local_hour_offset` to the raw number nearest to a value in h.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_local_hour_offset(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_LOCAL_HOUR_OFFSET;
        let raw = &mut self.local_hour_offset;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -23 to 23 in h.
    #[must_use]
    pub fn local_hour_offset_is_outside(&self) -> bool {
        let raw = self.local_hour_offset;
        matches!(raw, 0..=101 | 149..=253)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.seconds());
        let is_outside = self.seconds_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("seconds");
        tell(name, said);
        let said = typed::Said::from(self.minutes());
        let is_outside = self.minutes_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("minutes");
        tell(name, said);
        let said = typed::Said::from(self.hours());
        let is_outside = self.hours_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("hours");
        tell(name, said);
        let said = typed::Said::from(self.month());
        let is_outside = self.month_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("month");
        tell(name, said);
        let said = typed::Said::from(self.day());
        let is_outside = self.day_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("day");
        tell(name, said);
        let said = typed::Said::from(self.year());
        let is_outside = self.year_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("year");
        tell(name, said);
        let said = self.local_minute_offset();
        let said = typed::Said::from(said);
        let is_outside = self.local_minute_offset_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("local_minute_offset");
        tell(name, said);
        let said = self.local_hour_offset();
        let said = typed::Said::from(said);
        let is_outside = self.local_hour_offset_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("local_hour_offset");
        tell(name, said);
    }
}

/// Engine: configuration.
///
/// The engine's torque map and limits. Older engines send 28 or 34 bytes of it.
///
/// Called "EC1" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineConfiguration {
    /// SPN 188, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub speed_at_idle: u16,
    /// SPN 539, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub percent_torque_at_idle: u8,
    /// SPN 528, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub speed_at_point_2: u16,
    /// SPN 540, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub percent_torque_at_point_2: u8,
    /// SPN 529, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub speed_at_point_3: u16,
    /// SPN 541, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub percent_torque_at_point_3: u8,
    /// SPN 530, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub speed_at_point_4: u16,
    /// SPN 542, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub percent_torque_at_point_4: u8,
    /// SPN 531, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub speed_at_point_5: u16,
    /// SPN 543, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub percent_torque_at_point_5: u8,
    /// SPN 532, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub speed_at_high_idle: u16,
    /// SPN 545, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.0007813` %/rpm; 16 bits.
    pub endspeed_governor_gain: u16,
    /// SPN 544, SAE J1939-71 (from memory). What the percentages of torque refer to.
    ///
    /// `raw` N·m; 16 bits.
    pub reference_torque: u16,
    /// SPN 533, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    pub greatest_override_speed: u16,
    /// SPN 534, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.1` s; 8 bits.
    pub override_time_limit: u8,
    /// SPN 535, SAE J1939-71 (from memory).
    ///
    /// `raw * 10` rpm; 8 bits.
    pub speed_control_lower_limit: u8,
    /// SPN 536, SAE J1939-71 (from memory).
    ///
    /// `raw * 10` rpm; 8 bits.
    pub speed_control_upper_limit: u8,
    /// SPN 537, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub torque_control_lower_limit: u8,
    /// SPN 538, SAE J1939-71 (from memory).
    ///
    /// `raw - 125` %; 8 bits.
    pub torque_control_upper_limit: u8,
    /// SPN 1712, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.125` rpm; 16 bits.
    ///
    /// `None`: the payload ends before it.
    pub extended_speed_control_upper_limit: Option<u16>,
    /// SPN 1794, SAE J1939-71 (from memory).
    ///
    /// `raw * 0.004` kg·m²; 16 bits.
    ///
    /// `None`: the payload ends before it.
    pub moment_of_inertia: Option<u16>,
    /// SPN 1846, SAE J1939-71 (from memory).
    ///
    /// `raw` N·m; 16 bits.
    ///
    /// `None`: the payload ends before it.
    pub default_torque_limit: Option<u16>,
}

impl EngineConfiguration {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEE3;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 28..=40;
    /// The period.
    pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(5);
    const AT_SPEED_AT_IDLE: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const AT_PERCENT_TORQUE_AT_IDLE: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_SPEED_AT_POINT_2: typed::Cut = typed::Cut::between((4, 7), (3, 0));
    const AT_PERCENT_TORQUE_AT_POINT_2: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_SPEED_AT_POINT_3: typed::Cut = typed::Cut::between((7, 7), (6, 0));
    const AT_PERCENT_TORQUE_AT_POINT_3: typed::Cut = typed::Cut::between((8, 7), (8, 0));
    const AT_SPEED_AT_POINT_4: typed::Cut = typed::Cut::between((10, 7), (9, 0));
    const AT_PERCENT_TORQUE_AT_POINT_4: typed::Cut = typed::Cut::between((11, 7), (11, 0));
    const AT_SPEED_AT_POINT_5: typed::Cut = typed::Cut::between((13, 7), (12, 0));
    const AT_PERCENT_TORQUE_AT_POINT_5: typed::Cut = typed::Cut::between((14, 7), (14, 0));
    const AT_SPEED_AT_HIGH_IDLE: typed::Cut = typed::Cut::between((16, 7), (15, 0));
    const AT_ENDSPEED_GOVERNOR_GAIN: typed::Cut = typed::Cut::between((18, 7), (17, 0));
    const AT_REFERENCE_TORQUE: typed::Cut = typed::Cut::between((20, 7), (19, 0));
    const AT_GREATEST_OVERRIDE_SPEED: typed::Cut = typed::Cut::between((22, 7), (21, 0));
    const AT_OVERRIDE_TIME_LIMIT: typed::Cut = typed::Cut::between((23, 7), (23, 0));
    const AT_SPEED_CONTROL_LOWER_LIMIT: typed::Cut = typed::Cut::between((24, 7), (24, 0));
    const AT_SPEED_CONTROL_UPPER_LIMIT: typed::Cut = typed::Cut::between((25, 7), (25, 0));
    const AT_TORQUE_CONTROL_LOWER_LIMIT: typed::Cut = typed::Cut::between((26, 7), (26, 0));
    const AT_TORQUE_CONTROL_UPPER_LIMIT: typed::Cut = typed::Cut::between((27, 7), (27, 0));
    const AT_EXTENDED_SPEED_CONTROL_UPPER_LIMIT: typed::Cut = typed::Cut::between((29, 7), (28, 0));
    const AT_MOMENT_OF_INERTIA: typed::Cut = typed::Cut::between((31, 7), (30, 0));
    const AT_DEFAULT_TORQUE_LIMIT: typed::Cut = typed::Cut::between((33, 7), (32, 0));
    const FORMULA_SPEED_AT_IDLE: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_PERCENT_TORQUE_AT_IDLE: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_SPEED_AT_POINT_2: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_PERCENT_TORQUE_AT_POINT_2: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_SPEED_AT_POINT_3: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_PERCENT_TORQUE_AT_POINT_3: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_SPEED_AT_POINT_4: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_PERCENT_TORQUE_AT_POINT_4: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_SPEED_AT_POINT_5: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_PERCENT_TORQUE_AT_POINT_5: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_SPEED_AT_HIGH_IDLE: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_ENDSPEED_GOVERNOR_GAIN: typed::Formula = typed::Formula::new(7813, 0, 10000000);
    const FORMULA_GREATEST_OVERRIDE_SPEED: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_OVERRIDE_TIME_LIMIT: typed::Formula = typed::Formula::new(1, 0, 10);
    const FORMULA_SPEED_CONTROL_LOWER_LIMIT: typed::Formula = typed::Formula::new(10, 0, 1);
    const FORMULA_SPEED_CONTROL_UPPER_LIMIT: typed::Formula = typed::Formula::new(10, 0, 1);
    const FORMULA_TORQUE_CONTROL_LOWER_LIMIT: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_TORQUE_CONTROL_UPPER_LIMIT: typed::Formula = typed::Formula::new(1, -125, 1);
    const FORMULA_EXTENDED_SPEED_CONTROL_UPPER_LIMIT: typed::Formula = typed::Formula::new(1, 0, 8);
    const FORMULA_MOMENT_OF_INERTIA: typed::Formula = typed::Formula::new(1, 0, 250);

    #[inline]
    fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let speed_at_idle = Self::AT_SPEED_AT_IDLE.of(payload) as u16;
        let percent_torque_at_idle = Self::AT_PERCENT_TORQUE_AT_IDLE.of(payload) as u8;
        let speed_at_point_2 = Self::AT_SPEED_AT_POINT_2.of(payload) as u16;
        let percent_torque_at_point_2 = Self::AT_PERCENT_TORQUE_AT_POINT_2.of(payload) as u8;
        let speed_at_point_3 = Self::AT_SPEED_AT_POINT_3.of(payload) as u16;
        let percent_torque_at_point_3 = Self::AT_PERCENT_TORQUE_AT_POINT_3.of(payload) as u8;
        let speed_at_point_4 = Self::AT_SPEED_AT_POINT_4.of(payload) as u16;
        let percent_torque_at_point_4 = Self::AT_PERCENT_TORQUE_AT_POINT_4.of(payload) as u8;
        let speed_at_point_5 = Self::AT_SPEED_AT_POINT_5.of(payload) as u16;
        let percent_torque_at_point_5 = Self::AT_PERCENT_TORQUE_AT_POINT_5.of(payload) as u8;
        let speed_at_high_idle = Self::AT_SPEED_AT_HIGH_IDLE.of(payload) as u16;
        let endspeed_governor_gain = Self::AT_ENDSPEED_GOVERNOR_GAIN.of(payload) as u16;
        let reference_torque = Self::AT_REFERENCE_TORQUE.of(payload) as u16;
        let greatest_override_speed = Self::AT_GREATEST_OVERRIDE_SPEED.of(payload) as u16;
        let override_time_limit = Self::AT_OVERRIDE_TIME_LIMIT.of(payload) as u8;
        let speed_control_lower_limit = Self::AT_SPEED_CONTROL_LOWER_LIMIT.of(payload) as u8;
        let speed_control_upper_limit = Self::AT_SPEED_CONTROL_UPPER_LIMIT.of(payload) as u8;
        let torque_control_lower_limit = Self::AT_TORQUE_CONTROL_LOWER_LIMIT.of(payload) as u8;
        let torque_control_upper_limit = Self::AT_TORQUE_CONTROL_UPPER_LIMIT.of(payload) as u8;
        let bits = Self::AT_EXTENDED_SPEED_CONTROL_UPPER_LIMIT.get(payload);
        let convert = |bits: u64| bits as u16;
        let extended_speed_control_upper_limit = bits.map(convert);
        let bits = Self::AT_MOMENT_OF_INERTIA.get(payload);
        let convert = |bits: u64| bits as u16;
        let moment_of_inertia = bits.map(convert);
        let bits = Self::AT_DEFAULT_TORQUE_LIMIT.get(payload);
        let convert = |bits: u64| bits as u16;
        let default_torque_limit = bits.map(convert);
        Ok(Self {
            speed_at_idle,
            percent_torque_at_idle,
            speed_at_point_2,
            percent_torque_at_point_2,
            speed_at_point_3,
            percent_torque_at_point_3,
            speed_at_point_4,
            percent_torque_at_point_4,
            speed_at_point_5,
            percent_torque_at_point_5,
            speed_at_high_idle,
            endspeed_governor_gain,
            reference_torque,
            greatest_override_speed,
            override_time_limit,
            speed_control_lower_limit,
            speed_control_upper_limit,
            torque_control_lower_limit,
            torque_control_upper_limit,
            extended_speed_control_upper_limit,
            moment_of_inertia,
            default_torque_limit,
        })
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.speed_at_idle);
        let bits = typed::unsigned_bits(number, 16, "speed_at_idle")?;
        Self::AT_SPEED_AT_IDLE.put(payload, bits);
        let number = u64::from(self.percent_torque_at_idle);
        let bits = typed::unsigned_bits(number, 8, "percent_torque_at_idle")?;
        Self::AT_PERCENT_TORQUE_AT_IDLE.put(payload, bits);
        let number = u64::from(self.speed_at_point_2);
        let bits = typed::unsigned_bits(number, 16, "speed_at_point_2")?;
        Self::AT_SPEED_AT_POINT_2.put(payload, bits);
        let number = u64::from(self.percent_torque_at_point_2);
        let bits = typed::unsigned_bits(number, 8, "percent_torque_at_point_2")?;
        Self::AT_PERCENT_TORQUE_AT_POINT_2.put(payload, bits);
        let number = u64::from(self.speed_at_point_3);
        let bits = typed::unsigned_bits(number, 16, "speed_at_point_3")?;
        Self::AT_SPEED_AT_POINT_3.put(payload, bits);
        let number = u64::from(self.percent_torque_at_point_3);
        let bits = typed::unsigned_bits(number, 8, "percent_torque_at_point_3")?;
        Self::AT_PERCENT_TORQUE_AT_POINT_3.put(payload, bits);
        let number = u64::from(self.speed_at_point_4);
        let bits = typed::unsigned_bits(number, 16, "speed_at_point_4")?;
        Self::AT_SPEED_AT_POINT_4.put(payload, bits);
        let number = u64::from(self.percent_torque_at_point_4);
        let bits = typed::unsigned_bits(number, 8, "percent_torque_at_point_4")?;
        Self::AT_PERCENT_TORQUE_AT_POINT_4.put(payload, bits);
        let number = u64::from(self.speed_at_point_5);
        let bits = typed::unsigned_bits(number, 16, "speed_at_point_5")?;
        Self::AT_SPEED_AT_POINT_5.put(payload, bits);
        let number = u64::from(self.percent_torque_at_point_5);
        let bits = typed::unsigned_bits(number, 8, "percent_torque_at_point_5")?;
        Self::AT_PERCENT_TORQUE_AT_POINT_5.put(payload, bits);
        let number = u64::from(self.speed_at_high_idle);
        let bits = typed::unsigned_bits(number, 16, "speed_at_high_idle")?;
        Self::AT_SPEED_AT_HIGH_IDLE.put(payload, bits);
        let number = u64::from(self.endspeed_governor_gain);
        let bits = typed::unsigned_bits(number, 16, "endspeed_governor_gain")?;
        Self::AT_ENDSPEED_GOVERNOR_GAIN.put(payload, bits);
        let number = u64::from(self.reference_torque);
        let bits = typed::unsigned_bits(number, 16, "reference_torque")?;
        Self::AT_REFERENCE_TORQUE.put(payload, bits);
        let number = u64::from(self.greatest_override_speed);
        let bits = typed::unsigned_bits(number, 16, "greatest_override_speed")?;
        Self::AT_GREATEST_OVERRIDE_SPEED.put(payload, bits);
        let number = u64::from(self.override_time_limit);
        let bits = typed::unsigned_bits(number, 8, "override_time_limit")?;
        Self::AT_OVERRIDE_TIME_LIMIT.put(payload, bits);
        let number = u64::from(self.speed_control_lower_limit);
        let bits = typed::unsigned_bits(number, 8, "speed_control_lower_limit")?;
        Self::AT_SPEED_CONTROL_LOWER_LIMIT.put(payload, bits);
        let number = u64::from(self.speed_control_upper_limit);
        let bits = typed::unsigned_bits(number, 8, "speed_control_upper_limit")?;
        Self::AT_SPEED_CONTROL_UPPER_LIMIT.put(payload, bits);
        let number = u64::from(self.torque_control_lower_limit);
        let bits = typed::unsigned_bits(number, 8, "torque_control_lower_limit")?;
        Self::AT_TORQUE_CONTROL_LOWER_LIMIT.put(payload, bits);
        let number = u64::from(self.torque_control_upper_limit);
        let bits = typed::unsigned_bits(number, 8, "torque_control_upper_limit")?;
        Self::AT_TORQUE_CONTROL_UPPER_LIMIT.put(payload, bits);
        if let Some(value) = self.extended_speed_control_upper_limit {
            let number = u64::from(value);
            let bits = typed::unsigned_bits(number, 16, "extended_speed_control_upper_limit")?;
            Self::AT_EXTENDED_SPEED_CONTROL_UPPER_LIMIT.put(payload, bits);
        }
        if let Some(value) = self.moment_of_inertia {
            let bits = typed::unsigned_bits(u64::from(value), 16, "moment_of_inertia")?;
            Self::AT_MOMENT_OF_INERTIA.put(payload, bits);
        }
        if let Some(value) = self.default_torque_limit {
            let bits = typed::unsigned_bits(u64::from(value), 16, "default_torque_limit")?;
            Self::AT_DEFAULT_TORQUE_LIMIT.put(payload, bits);
        }
        Ok(())
    }

    fn measure(&self, size: &mut typed::Size) {
        size.part(34, Some(28));
        if self.extended_speed_control_upper_limit.is_some() {
            size.reach(30);
        }
        if self.moment_of_inertia.is_some() {
            size.reach(32);
        }
        if self.default_torque_limit.is_some() {
            size.reach(34);
        }
    }

    /// Reads a payload.
    ///
    /// It is the whole message: SAE J1939-21 carries it in several frames.
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

    /// The value in rpm.
    #[must_use]
    pub fn speed_at_idle(&self) -> typed::Reading<f64> {
        match self.speed_at_idle {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `speed_at_idle` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed_at_idle(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_SPEED_AT_IDLE;
        let raw = &mut self.speed_at_idle;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn speed_at_idle_is_outside(&self) -> bool {
        let raw = self.speed_at_idle;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %.
    #[must_use]
    pub fn percent_torque_at_idle(&self) -> typed::Reading<f64> {
        match self.percent_torque_at_idle {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `percent_torque_at_idle` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_percent_torque_at_idle(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PERCENT_TORQUE_AT_IDLE;
        let raw = &mut self.percent_torque_at_idle;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn percent_torque_at_idle_is_outside(&self) -> bool {
        let raw = self.percent_torque_at_idle;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn speed_at_point_2(&self) -> typed::Reading<f64> {
        match self.speed_at_point_2 {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `speed_at_point_2` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed_at_point_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_SPEED_AT_POINT_2;
        let raw = &mut self.speed_at_point_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn speed_at_point_2_is_outside(&self) -> bool {
        let raw = self.speed_at_point_2;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %.
    #[must_use]
    pub fn percent_torque_at_point_2(&self) -> typed::Reading<f64> {
        match self.percent_torque_at_point_2 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `percent_torque_at_point_2` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_percent_torque_at_point_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PERCENT_TORQUE_AT_POINT_2;
        let raw = &mut self.percent_torque_at_point_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn percent_torque_at_point_2_is_outside(&self) -> bool {
        let raw = self.percent_torque_at_point_2;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn speed_at_point_3(&self) -> typed::Reading<f64> {
        match self.speed_at_point_3 {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `speed_at_point_3` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed_at_point_3(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_SPEED_AT_POINT_3;
        let raw = &mut self.speed_at_point_3;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn speed_at_point_3_is_outside(&self) -> bool {
        let raw = self.speed_at_point_3;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %.
    #[must_use]
    pub fn percent_torque_at_point_3(&self) -> typed::Reading<f64> {
        match self.percent_torque_at_point_3 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `percent_torque_at_point_3` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_percent_torque_at_point_3(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PERCENT_TORQUE_AT_POINT_3;
        let raw = &mut self.percent_torque_at_point_3;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn percent_torque_at_point_3_is_outside(&self) -> bool {
        let raw = self.percent_torque_at_point_3;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn speed_at_point_4(&self) -> typed::Reading<f64> {
        match self.speed_at_point_4 {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `speed_at_point_4` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed_at_point_4(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_SPEED_AT_POINT_4;
        let raw = &mut self.speed_at_point_4;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn speed_at_point_4_is_outside(&self) -> bool {
        let raw = self.speed_at_point_4;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %.
    #[must_use]
    pub fn percent_torque_at_point_4(&self) -> typed::Reading<f64> {
        match self.percent_torque_at_point_4 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `percent_torque_at_point_4` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_percent_torque_at_point_4(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PERCENT_TORQUE_AT_POINT_4;
        let raw = &mut self.percent_torque_at_point_4;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn percent_torque_at_point_4_is_outside(&self) -> bool {
        let raw = self.percent_torque_at_point_4;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn speed_at_point_5(&self) -> typed::Reading<f64> {
        match self.speed_at_point_5 {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `speed_at_point_5` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed_at_point_5(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_SPEED_AT_POINT_5;
        let raw = &mut self.speed_at_point_5;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn speed_at_point_5_is_outside(&self) -> bool {
        let raw = self.speed_at_point_5;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %.
    #[must_use]
    pub fn percent_torque_at_point_5(&self) -> typed::Reading<f64> {
        match self.percent_torque_at_point_5 {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `percent_torque_at_point_5` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_percent_torque_at_point_5(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_PERCENT_TORQUE_AT_POINT_5;
        let raw = &mut self.percent_torque_at_point_5;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn percent_torque_at_point_5_is_outside(&self) -> bool {
        let raw = self.percent_torque_at_point_5;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn speed_at_high_idle(&self) -> typed::Reading<f64> {
        match self.speed_at_high_idle {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `speed_at_high_idle` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed_at_high_idle(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_SPEED_AT_HIGH_IDLE;
        let raw = &mut self.speed_at_high_idle;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn speed_at_high_idle_is_outside(&self) -> bool {
        let raw = self.speed_at_high_idle;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in %/rpm.
    #[must_use]
    pub fn endspeed_governor_gain(&self) -> typed::Reading<f64> {
        match self.endspeed_governor_gain {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 7813) as f64 / 10000000.0),
        }
    }

    /// Sets `endspeed_governor_gain` to the raw number nearest to a value in %/rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_endspeed_governor_gain(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_ENDSPEED_GOVERNOR_GAIN;
        let raw = &mut self.endspeed_governor_gain;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 50.2024325 in %/rpm.
    #[must_use]
    pub fn endspeed_governor_gain_is_outside(&self) -> bool {
        let raw = self.endspeed_governor_gain;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// What the raw number says.
    #[must_use]
    pub fn reference_torque(&self) -> typed::Reading<u16> {
        match self.reference_torque {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Whether the value lies outside its range, 0 to 64255 in N·m.
    #[must_use]
    pub fn reference_torque_is_outside(&self) -> bool {
        let raw = self.reference_torque;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in rpm.
    #[must_use]
    pub fn greatest_override_speed(&self) -> typed::Reading<f64> {
        match self.greatest_override_speed {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        }
    }

    /// Sets `greatest_override_speed` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_greatest_override_speed(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let formula = Self::FORMULA_GREATEST_OVERRIDE_SPEED;
        let raw = &mut self.greatest_override_speed;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn greatest_override_speed_is_outside(&self) -> bool {
        let raw = self.greatest_override_speed;
        matches!(raw, 0xFB00..=0xFDFF)
    }

    /// The value in s.
    #[must_use]
    pub fn override_time_limit(&self) -> typed::Reading<f64> {
        match self.override_time_limit {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 10.0),
        }
    }

    /// Sets `override_time_limit` to the raw number nearest to a value in s.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_override_time_limit(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_OVERRIDE_TIME_LIMIT;
        let raw = &mut self.override_time_limit;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 25 in s.
    #[must_use]
    pub fn override_time_limit_is_outside(&self) -> bool {
        let raw = self.override_time_limit;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn speed_control_lower_limit(&self) -> typed::Reading<f64> {
        match self.speed_control_lower_limit {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 10) as f64),
        }
    }

    /// Sets `speed_control_lower_limit` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed_control_lower_limit(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_SPEED_CONTROL_LOWER_LIMIT;
        let raw = &mut self.speed_control_lower_limit;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2500 in rpm.
    #[must_use]
    pub fn speed_control_lower_limit_is_outside(&self) -> bool {
        let raw = self.speed_control_lower_limit;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn speed_control_upper_limit(&self) -> typed::Reading<f64> {
        match self.speed_control_upper_limit {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) * 10) as f64),
        }
    }

    /// Sets `speed_control_upper_limit` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_speed_control_upper_limit(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_SPEED_CONTROL_UPPER_LIMIT;
        let raw = &mut self.speed_control_upper_limit;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 2500 in rpm.
    #[must_use]
    pub fn speed_control_upper_limit_is_outside(&self) -> bool {
        let raw = self.speed_control_upper_limit;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn torque_control_lower_limit(&self) -> typed::Reading<f64> {
        match self.torque_control_lower_limit {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `torque_control_lower_limit` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_torque_control_lower_limit(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_TORQUE_CONTROL_LOWER_LIMIT;
        let raw = &mut self.torque_control_lower_limit;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn torque_control_lower_limit_is_outside(&self) -> bool {
        let raw = self.torque_control_lower_limit;
        matches!(raw, 251..=253)
    }

    /// The value in %.
    #[must_use]
    pub fn torque_control_upper_limit(&self) -> typed::Reading<f64> {
        match self.torque_control_upper_limit {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 125) as f64),
        }
    }

    /// Sets `torque_control_upper_limit` to the raw number nearest to a value in %.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_torque_control_upper_limit(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_TORQUE_CONTROL_UPPER_LIMIT;
        let raw = &mut self.torque_control_upper_limit;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -125 to 125 in %.
    #[must_use]
    pub fn torque_control_upper_limit_is_outside(&self) -> bool {
        let raw = self.torque_control_upper_limit;
        matches!(raw, 251..=253)
    }

    /// The value in rpm.
    #[must_use]
    pub fn extended_speed_control_upper_limit(&self) -> Option<typed::Reading<f64>> {
        let value = self.extended_speed_control_upper_limit?;
        Some(match value {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 8.0),
        })
    }

    /// Sets `extended_speed_control_upper_limit` to the raw number nearest to a value in rpm.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_extended_speed_control_upper_limit(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let mut raw: u16 = 0;
        let formula = Self::FORMULA_EXTENDED_SPEED_CONTROL_UPPER_LIMIT;
        let fit = typed::set(&mut raw, value, formula, range, is_value);
        if fit != wirelore_bits::Fit::OutOfRange {
            self.extended_speed_control_upper_limit = Some(raw);
        }
        fit
    }

    /// Whether the value lies outside its range, 0 to 8031.875 in rpm.
    #[must_use]
    pub fn extended_speed_control_upper_limit_is_outside(&self) -> bool {
        let is_outside = |raw: u16| matches!(raw, 0xFB00..=0xFDFF);
        let raw = self.extended_speed_control_upper_limit;
        raw.is_some_and(is_outside)
    }

    /// The value in kg·m².
    #[must_use]
    pub fn moment_of_inertia(&self) -> Option<typed::Reading<f64>> {
        let value = self.moment_of_inertia?;
        Some(match value {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 250.0),
        })
    }

    /// Sets `moment_of_inertia` to the raw number nearest to a value in kg·m².
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_moment_of_inertia(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |raw: i128| !matches!(raw, 0xFE00..=0xFFFF);
        let mut raw: u16 = 0;
        let formula = Self::FORMULA_MOMENT_OF_INERTIA;
        let fit = typed::set(&mut raw, value, formula, range, is_value);
        if fit != wirelore_bits::Fit::OutOfRange {
            self.moment_of_inertia = Some(raw);
        }
        fit
    }

    /// Whether the value lies outside its range, 0 to 257.02 in kg·m².
    #[must_use]
    pub fn moment_of_inertia_is_outside(&self) -> bool {
        let is_outside = |raw: u16| matches!(raw, 0xFB00..=0xFDFF);
        let raw = self.moment_of_inertia;
        raw.is_some_and(is_outside)
    }

    /// What the raw number says.
    #[must_use]
    pub fn default_torque_limit(&self) -> Option<typed::Reading<u16>> {
        let value = self.default_torque_limit?;
        Some(match value {
            0xFE00..=0xFEFF => typed::Reading::Fault,
            0xFF00..=0xFFFF => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        })
    }

    /// Whether the value lies outside its range, 0 to 64255 in N·m.
    #[must_use]
    pub fn default_torque_limit_is_outside(&self) -> bool {
        let is_outside = |raw: u16| matches!(raw, 0xFB00..=0xFDFF);
        let raw = self.default_torque_limit;
        raw.is_some_and(is_outside)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.speed_at_idle());
        let is_outside = self.speed_at_idle_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed_at_idle");
        tell(name, said);
        let said = self.percent_torque_at_idle();
        let said = typed::Said::from(said);
        let is_outside = self.percent_torque_at_idle_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("percent_torque_at_idle");
        tell(name, said);
        let said = self.speed_at_point_2();
        let said = typed::Said::from(said);
        let is_outside = self.speed_at_point_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed_at_point_2");
        tell(name, said);
        let said = self.percent_torque_at_point_2();
        let said = typed::Said::from(said);
        let is_outside = self.percent_torque_at_point_2_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("percent_torque_at_point_2");
        tell(name, said);
        let said = self.speed_at_point_3();
        let said = typed::Said::from(said);
        let is_outside = self.speed_at_point_3_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed_at_point_3");
        tell(name, said);
        let said = self.percent_torque_at_point_3();
        let said = typed::Said::from(said);
        let is_outside = self.percent_torque_at_point_3_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("percent_torque_at_point_3");
        tell(name, said);
        let said = self.speed_at_point_4();
        let said = typed::Said::from(said);
        let is_outside = self.speed_at_point_4_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed_at_point_4");
        tell(name, said);
        let said = self.percent_torque_at_point_4();
        let said = typed::Said::from(said);
        let is_outside = self.percent_torque_at_point_4_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("percent_torque_at_point_4");
        tell(name, said);
        let said = self.speed_at_point_5();
        let said = typed::Said::from(said);
        let is_outside = self.speed_at_point_5_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed_at_point_5");
        tell(name, said);
        let said = self.percent_torque_at_point_5();
        let said = typed::Said::from(said);
        let is_outside = self.percent_torque_at_point_5_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("percent_torque_at_point_5");
        tell(name, said);
        let said = self.speed_at_high_idle();
        let said = typed::Said::from(said);
        let is_outside = self.speed_at_high_idle_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed_at_high_idle");
        tell(name, said);
        let said = self.endspeed_governor_gain();
        let said = typed::Said::from(said);
        let is_outside = self.endspeed_governor_gain_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("endspeed_governor_gain");
        tell(name, said);
        let said = self.reference_torque();
        let said = typed::Said::from(said);
        let is_outside = self.reference_torque_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("reference_torque");
        tell(name, said);
        let said = self.greatest_override_speed();
        let said = typed::Said::from(said);
        let is_outside = self.greatest_override_speed_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("greatest_override_speed");
        tell(name, said);
        let said = self.override_time_limit();
        let said = typed::Said::from(said);
        let is_outside = self.override_time_limit_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("override_time_limit");
        tell(name, said);
        let said = self.speed_control_lower_limit();
        let said = typed::Said::from(said);
        let is_outside = self.speed_control_lower_limit_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed_control_lower_limit");
        tell(name, said);
        let said = self.speed_control_upper_limit();
        let said = typed::Said::from(said);
        let is_outside = self.speed_control_upper_limit_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("speed_control_upper_limit");
        tell(name, said);
        let said = self.torque_control_lower_limit();
        let said = typed::Said::from(said);
        let is_outside = self.torque_control_lower_limit_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("torque_control_lower_limit");
        tell(name, said);
        let said = self.torque_control_upper_limit();
        let said = typed::Said::from(said);
        let is_outside = self.torque_control_upper_limit_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("torque_control_upper_limit");
        tell(name, said);
        if let Some(said) = self.extended_speed_control_upper_limit() {
            let said = typed::Said::from(said);
            let is_outside = self.extended_speed_control_upper_limit_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("extended_speed_control_upper_limit");
            tell(name, said);
        }
        if let Some(said) = self.moment_of_inertia() {
            let said = typed::Said::from(said);
            let is_outside = self.moment_of_inertia_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("moment_of_inertia");
            tell(name, said);
        }
        if let Some(said) = self.default_torque_limit() {
            let said = typed::Said::from(said);
            let is_outside = self.default_torque_limit_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("default_torque_limit");
            tell(name, said);
        }
    }
}

pub use active_trouble_codes::ActiveTroubleCodes;

/// `active_trouble_codes` and what it holds.
#[allow(clippy::module_inception)]
pub mod active_trouble_codes {
    use wirelore_bits::typed;

    /// Active trouble codes.
    ///
    /// Trouble codes that are active now.
    ///
    /// Called "DM1" elsewhere.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ActiveTroubleCodes<'a> {
        /// SPN 1213, SAE J1939-73 (from memory). Faults that concern emissions.
        ///
        /// `raw`; 2 bits.
        pub malfunction_lamp: super::J1939Lamp,
        /// SPN 623, SAE J1939-73 (from memory). Stop the vehicle.
        ///
        /// `raw`; 2 bits.
        pub red_stop_lamp: super::J1939Lamp,
        /// SPN 624, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub amber_warning_lamp: super::J1939Lamp,
        /// SPN 987, SAE J1939-73 (from memory). Mostly not an electronic fault: coolant temperature and its like.
        ///
        /// `raw`; 2 bits.
        pub protect_lamp: super::J1939Lamp,
        /// SPN 3038, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub malfunction_flash: super::J1939Flash,
        /// SPN 3039, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub red_stop_flash: super::J1939Flash,
        /// SPN 3040, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub amber_warning_flash: super::J1939Flash,
        /// SPN 3041, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub protect_flash: super::J1939Flash,
        /// As many as there are.
        pub spn_elements: typed::Repeated<'a, SpnElement>,
    }

    impl<'a> ActiveTroubleCodes<'a> {
        /// The parameter group number.
        pub const PGN: u32 = 0xFECA;
        /// The lengths in bytes.
        pub const LENGTHS: core::ops::RangeInclusive<usize> = 6..=1785;
        /// The period.
        pub const PERIOD: core::time::Duration = core::time::Duration::from_secs(1);
        const AT_MALFUNCTION_LAMP: typed::Cut = typed::Cut::between((0, 7), (0, 6));
        const AT_RED_STOP_LAMP: typed::Cut = typed::Cut::between((0, 5), (0, 4));
        const AT_AMBER_WARNING_LAMP: typed::Cut = typed::Cut::between((0, 3), (0, 2));
        const AT_PROTECT_LAMP: typed::Cut = typed::Cut::between((0, 1), (0, 0));
        const AT_MALFUNCTION_FLASH: typed::Cut = typed::Cut::between((1, 7), (1, 6));
        const AT_RED_STOP_FLASH: typed::Cut = typed::Cut::between((1, 5), (1, 4));
        const AT_AMBER_WARNING_FLASH: typed::Cut = typed::Cut::between((1, 3), (1, 2));
        const AT_PROTECT_FLASH: typed::Cut = typed::Cut::between((1, 1), (1, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_MALFUNCTION_LAMP.of(payload);
            let malfunction_lamp = super::J1939Lamp::from_raw(bits as u8);
            let bits = Self::AT_RED_STOP_LAMP.of(payload);
            let red_stop_lamp = super::J1939Lamp::from_raw(bits as u8);
            let bits = Self::AT_AMBER_WARNING_LAMP.of(payload);
            let amber_warning_lamp = super::J1939Lamp::from_raw(bits as u8);
            let bits = Self::AT_PROTECT_LAMP.of(payload);
            let protect_lamp = super::J1939Lamp::from_raw(bits as u8);
            let bits = Self::AT_MALFUNCTION_FLASH.of(payload);
            let malfunction_flash = super::J1939Flash::from_raw(bits as u8);
            let bits = Self::AT_RED_STOP_FLASH.of(payload);
            let red_stop_flash = super::J1939Flash::from_raw(bits as u8);
            let bits = Self::AT_AMBER_WARNING_FLASH.of(payload);
            let amber_warning_flash = super::J1939Flash::from_raw(bits as u8);
            let bits = Self::AT_PROTECT_FLASH.of(payload);
            let protect_flash = super::J1939Flash::from_raw(bits as u8);
            let spn_elements = typed::Repeated::to_end(payload, 2, (4, 4), 64);
            Ok(Self {
                malfunction_lamp,
                red_stop_lamp,
                amber_warning_lamp,
                protect_lamp,
                malfunction_flash,
                red_stop_flash,
                amber_warning_flash,
                protect_flash,
                spn_elements,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.malfunction_lamp.raw());
            let bits = typed::unsigned_bits(number, 2, "malfunction_lamp")?;
            Self::AT_MALFUNCTION_LAMP.put(payload, bits);
            let number = u64::from(self.red_stop_lamp.raw());
            let bits = typed::unsigned_bits(number, 2, "red_stop_lamp")?;
            Self::AT_RED_STOP_LAMP.put(payload, bits);
            let number = u64::from(self.amber_warning_lamp.raw());
            let bits = typed::unsigned_bits(number, 2, "amber_warning_lamp")?;
            Self::AT_AMBER_WARNING_LAMP.put(payload, bits);
            let number = u64::from(self.protect_lamp.raw());
            let bits = typed::unsigned_bits(number, 2, "protect_lamp")?;
            Self::AT_PROTECT_LAMP.put(payload, bits);
            let number = u64::from(self.malfunction_flash.raw());
            let bits = typed::unsigned_bits(number, 2, "malfunction_flash")?;
            Self::AT_MALFUNCTION_FLASH.put(payload, bits);
            let number = u64::from(self.red_stop_flash.raw());
            let bits = typed::unsigned_bits(number, 2, "red_stop_flash")?;
            Self::AT_RED_STOP_FLASH.put(payload, bits);
            let number = u64::from(self.amber_warning_flash.raw());
            let bits = typed::unsigned_bits(number, 2, "amber_warning_flash")?;
            Self::AT_AMBER_WARNING_FLASH.put(payload, bits);
            let number = u64::from(self.protect_flash.raw());
            let bits = typed::unsigned_bits(number, 2, "protect_flash")?;
            Self::AT_PROTECT_FLASH.put(payload, bits);
            let elements = &self.spn_elements;
            elements.write(payload, (2, 4), 64, "spn_elements")?;
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, Some(6));
            let elements = &self.spn_elements;
            elements.measure(size, 2, (4, 4));
        }

        /// Reads a payload.
        ///
        /// It is the whole message: SAE J1939-21 carries it in several frames.
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
        pub fn malfunction_lamp(&self) -> typed::Reading<super::J1939Lamp> {
            match self.malfunction_lamp.raw() {
                2 => typed::Reading::Fault,
                3 => typed::Reading::NoReading,
                _ => typed::Reading::Value(self.malfunction_lamp),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn red_stop_lamp(&self) -> typed::Reading<super::J1939Lamp> {
            match self.red_stop_lamp.raw() {
                2 => typed::Reading::Fault,
                3 => typed::Reading::NoReading,
                _ => typed::Reading::Value(self.red_stop_lamp),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn amber_warning_lamp(&self) -> typed::Reading<super::J1939Lamp> {
            match self.amber_warning_lamp.raw() {
                2 => typed::Reading::Fault,
                3 => typed::Reading::NoReading,
                _ => typed::Reading::Value(self.amber_warning_lamp),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn protect_lamp(&self) -> typed::Reading<super::J1939Lamp> {
            match self.protect_lamp.raw() {
                2 => typed::Reading::Fault,
                3 => typed::Reading::NoReading,
                _ => typed::Reading::Value(self.protect_lamp),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn malfunction_flash(&self) -> typed::Reading<super::J1939Flash> {
            match self.malfunction_flash.raw() {
                2 => typed::Reading::Fault,
                _ => typed::Reading::Value(self.malfunction_flash),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn red_stop_flash(&self) -> typed::Reading<super::J1939Flash> {
            match self.red_stop_flash.raw() {
                2 => typed::Reading::Fault,
                _ => typed::Reading::Value(self.red_stop_flash),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn amber_warning_flash(&self) -> typed::Reading<super::J1939Flash> {
            match self.amber_warning_flash.raw() {
                2 => typed::Reading::Fault,
                _ => typed::Reading::Value(self.amber_warning_flash),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn protect_flash(&self) -> typed::Reading<super::J1939Flash> {
            match self.protect_flash.raw() {
                2 => typed::Reading::Fault,
                _ => typed::Reading::Value(self.protect_flash),
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.malfunction_lamp();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.malfunction_lamp;
            let said = said.word(state.word());
            let name = typed::Name::of("malfunction_lamp");
            tell(name, said);
            let said = self.red_stop_lamp();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.red_stop_lamp;
            let said = said.word(state.word());
            let name = typed::Name::of("red_stop_lamp");
            tell(name, said);
            let said = self.amber_warning_lamp();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.amber_warning_lamp;
            let said = said.word(state.word());
            let name = typed::Name::of("amber_warning_lamp");
            tell(name, said);
            let said = self.protect_lamp();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.protect_lamp;
            let said = said.word(state.word());
            let name = typed::Name::of("protect_lamp");
            tell(name, said);
            let said = self.malfunction_flash();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.malfunction_flash;
            let said = said.word(state.word());
            let name = typed::Name::of("malfunction_flash");
            tell(name, said);
            let said = self.red_stop_flash();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.red_stop_flash;
            let said = said.word(state.word());
            let name = typed::Name::of("red_stop_flash");
            tell(name, said);
            let said = self.amber_warning_flash();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.amber_warning_flash;
            let said = said.word(state.word());
            let name = typed::Name::of("amber_warning_flash");
            tell(name, said);
            let said = self.protect_flash();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.protect_flash;
            let said = said.word(state.word());
            let name = typed::Name::of("protect_flash");
            tell(name, said);
            let elements = self.spn_elements.iter();
            for (index, element) in elements.enumerate() {
                element.each(&mut |name, said| tell(name.in_element(index), said));
            }
        }
    }

    /// One element of a repeated group.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SpnElement {
        /// SPN 1214, SAE J1939-73 (from memory). The number of the parameter that is in trouble, 19 bits.
        ///
        /// `raw`; 19 bits.
        pub spn: u32,
        /// What is there under a condition.
        pub when_spn: WhenSpn,
    }

    impl SpnElement {
        const AT_SPN: typed::Cuts<2> = typed::Cuts([
            typed::Cut::between((2, 7), (2, 5)),
            typed::Cut::between((1, 7), (0, 0)),
        ]);

        #[inline]
        fn select_spn(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_SPN.get(payload) else {
                return 2;
            };
            match bits {
                1..=0x7FFFF => 0,
                _ => 1,
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn spn(&self) -> typed::Reading<u32> {
            match self.spn {
                0 => typed::Reading::NoReading,
                raw => typed::Reading::Value(raw),
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.spn());
            let name = typed::Name::of("spn");
            tell(name, said);
            match &self.when_spn {
                WhenSpn::Is1To524287(page) => page.each(tell),
                WhenSpn::Otherwise(page) => page.each(tell),
                WhenSpn::NoPage => {}
            }
        }
    }

    impl<'a> typed::Element<'a> for SpnElement {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 3)?;
            let spn = Self::AT_SPN.of(payload) as u32;
            let held = Self::select_spn(payload);
            let when_spn = match held {
                0 => {
                    let page = SpnIs1To524287::read(payload)?;
                    WhenSpn::Is1To524287(page)
                }
                1 => {
                    let page = SpnOtherwise::read(payload)?;
                    WhenSpn::Otherwise(page)
                }
                _ => WhenSpn::NoPage,
            };
            Ok(Self { spn, when_spn })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.spn), 19, "spn[1]")?;
            Self::AT_SPN.put(payload, bits);
            let held = Self::select_spn(payload);
            match (held, &self.when_spn) {
                (0, WhenSpn::Is1To524287(page)) => page.write(payload)?,
                (1, WhenSpn::Otherwise(page)) => page.write(payload)?,
                (2, WhenSpn::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            match &self.when_spn {
                WhenSpn::Is1To524287(page) => page.measure(size),
                WhenSpn::Otherwise(page) => page.measure(size),
                WhenSpn::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenSpn {
        /// When `spn` is 1..524287.
        Is1To524287(SpnIs1To524287),
        /// Otherwise.
        Otherwise(SpnOtherwise),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `spn` is 1..524287.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SpnIs1To524287 {
        /// SPN 1215, SAE J1939-73 (from memory).
        ///
        /// `raw`; 5 bits.
        pub fmi: super::J1939Failure,
        /// SPN 1216, SAE J1939-73 (from memory).
        ///
        /// `raw`; 7 bits.
        pub occurrences: u8,
        /// SPN 1706, SAE J1939-73 (from memory). 1: an older unit, which may put spn together in another way.
        ///
        /// `raw`; 1 bit.
        pub conversion_method: super::ActiveTroubleCodesConversionMethod,
    }

    impl SpnIs1To524287 {
        const AT_FMI: typed::Cut = typed::Cut::between((2, 4), (2, 0));
        const AT_OCCURRENCES: typed::Cut = typed::Cut::between((3, 6), (3, 0));
        const AT_CONVERSION_METHOD: typed::Cut = typed::Cut::between((3, 7), (3, 7));

        /// What the raw number says.
        #[must_use]
        pub fn occurrences(&self) -> typed::Reading<u8> {
            match self.occurrences {
                127 => typed::Reading::NoReading,
                raw => typed::Reading::Value(raw),
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.fmi;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.fmi;
            let said = said.word(state.word());
            let name = typed::Name::of("fmi");
            tell(name, said);
            let said = typed::Said::from(self.occurrences());
            let name = typed::Name::of("occurrences");
            tell(name, said);
            let said = self.conversion_method;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.conversion_method;
            let said = said.word(state.word());
            let name = typed::Name::of("conversion_method");
            tell(name, said);
        }
    }

    impl<'a> typed::Element<'a> for SpnIs1To524287 {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 4)?;
            let bits = Self::AT_FMI.of(payload);
            let fmi = super::J1939Failure::from_raw(bits as u8);
            let occurrences = Self::AT_OCCURRENCES.of(payload) as u8;
            let bits = Self::AT_CONVERSION_METHOD.of(payload);
            let conversion_method = super::ActiveTroubleCodesConversionMethod::from_raw(bits as u8);
            Ok(Self {
                fmi,
                occurrences,
                conversion_method,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.fmi.raw()), 5, "fmi[1]")?;
            Self::AT_FMI.put(payload, bits);
            let number = u64::from(self.occurrences);
            let bits = typed::unsigned_bits(number, 7, "occurrences[1]")?;
            Self::AT_OCCURRENCES.put(payload, bits);
            let number = u64::from(self.conversion_method.raw());
            let bits = typed::unsigned_bits(number, 1, "conversion_method[1]")?;
            Self::AT_CONVERSION_METHOD.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(4, None);
        }
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SpnOtherwise {}

    impl SpnOtherwise {
        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, _tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {}
    }

    impl<'a> typed::Element<'a> for SpnOtherwise {
        #[inline]
        fn read(_payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            Ok(Self {})
        }

        fn write(&self, _payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(0, None);
        }
    }
}

pub use previous_trouble_codes::PreviousTroubleCodes;

/// `previous_trouble_codes` and what it holds.
#[allow(clippy::module_inception)]
pub mod previous_trouble_codes {
    use wirelore_bits::typed;

    /// Previously active trouble codes.
    ///
    /// Trouble codes that were active before.
    ///
    /// Called "DM2" elsewhere.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PreviousTroubleCodes<'a> {
        /// SPN 1213, SAE J1939-73 (from memory). Faults that concern emissions.
        ///
        /// `raw`; 2 bits.
        pub malfunction_lamp: super::J1939Lamp,
        /// SPN 623, SAE J1939-73 (from memory). Stop the vehicle.
        ///
        /// `raw`; 2 bits.
        pub red_stop_lamp: super::J1939Lamp,
        /// SPN 624, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub amber_warning_lamp: super::J1939Lamp,
        /// SPN 987, SAE J1939-73 (from memory). Mostly not an electronic fault: coolant temperature and its like.
        ///
        /// `raw`; 2 bits.
        pub protect_lamp: super::J1939Lamp,
        /// SPN 3038, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub malfunction_flash: super::J1939Flash,
        /// SPN 3039, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub red_stop_flash: super::J1939Flash,
        /// SPN 3040, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub amber_warning_flash: super::J1939Flash,
        /// SPN 3041, SAE J1939-73 (from memory).
        ///
        /// `raw`; 2 bits.
        pub protect_flash: super::J1939Flash,
        /// As many as there are.
        pub spn_elements: typed::Repeated<'a, SpnElement>,
    }

    impl<'a> PreviousTroubleCodes<'a> {
        /// The parameter group number.
        pub const PGN: u32 = 0xFECB;
        /// The lengths in bytes.
        pub const LENGTHS: core::ops::RangeInclusive<usize> = 6..=1785;
        const AT_MALFUNCTION_LAMP: typed::Cut = typed::Cut::between((0, 7), (0, 6));
        const AT_RED_STOP_LAMP: typed::Cut = typed::Cut::between((0, 5), (0, 4));
        const AT_AMBER_WARNING_LAMP: typed::Cut = typed::Cut::between((0, 3), (0, 2));
        const AT_PROTECT_LAMP: typed::Cut = typed::Cut::between((0, 1), (0, 0));
        const AT_MALFUNCTION_FLASH: typed::Cut = typed::Cut::between((1, 7), (1, 6));
        const AT_RED_STOP_FLASH: typed::Cut = typed::Cut::between((1, 5), (1, 4));
        const AT_AMBER_WARNING_FLASH: typed::Cut = typed::Cut::between((1, 3), (1, 2));
        const AT_PROTECT_FLASH: typed::Cut = typed::Cut::between((1, 1), (1, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_MALFUNCTION_LAMP.of(payload);
            let malfunction_lamp = super::J1939Lamp::from_raw(bits as u8);
            let bits = Self::AT_RED_STOP_LAMP.of(payload);
            let red_stop_lamp = super::J1939Lamp::from_raw(bits as u8);
            let bits = Self::AT_AMBER_WARNING_LAMP.of(payload);
            let amber_warning_lamp = super::J1939Lamp::from_raw(bits as u8);
            let bits = Self::AT_PROTECT_LAMP.of(payload);
            let protect_lamp = super::J1939Lamp::from_raw(bits as u8);
            let bits = Self::AT_MALFUNCTION_FLASH.of(payload);
            let malfunction_flash = super::J1939Flash::from_raw(bits as u8);
            let bits = Self::AT_RED_STOP_FLASH.of(payload);
            let red_stop_flash = super::J1939Flash::from_raw(bits as u8);
            let bits = Self::AT_AMBER_WARNING_FLASH.of(payload);
            let amber_warning_flash = super::J1939Flash::from_raw(bits as u8);
            let bits = Self::AT_PROTECT_FLASH.of(payload);
            let protect_flash = super::J1939Flash::from_raw(bits as u8);
            let spn_elements = typed::Repeated::to_end(payload, 2, (4, 4), 64);
            Ok(Self {
                malfunction_lamp,
                red_stop_lamp,
                amber_warning_lamp,
                protect_lamp,
                malfunction_flash,
                red_stop_flash,
                amber_warning_flash,
                protect_flash,
                spn_elements,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let number = u64::from(self.malfunction_lamp.raw());
            let bits = typed::unsigned_bits(number, 2, "malfunction_lamp")?;
            Self::AT_MALFUNCTION_LAMP.put(payload, bits);
            let number = u64::from(self.red_stop_lamp.raw());
            let bits = typed::unsigned_bits(number, 2, "red_stop_lamp")?;
            Self::AT_RED_STOP_LAMP.put(payload, bits);
            let number = u64::from(self.amber_warning_lamp.raw());
            let bits = typed::unsigned_bits(number, 2, "amber_warning_lamp")?;
            Self::AT_AMBER_WARNING_LAMP.put(payload, bits);
            let number = u64::from(self.protect_lamp.raw());
            let bits = typed::unsigned_bits(number, 2, "protect_lamp")?;
            Self::AT_PROTECT_LAMP.put(payload, bits);
            let number = u64::from(self.malfunction_flash.raw());
            let bits = typed::unsigned_bits(number, 2, "malfunction_flash")?;
            Self::AT_MALFUNCTION_FLASH.put(payload, bits);
            let number = u64::from(self.red_stop_flash.raw());
            let bits = typed::unsigned_bits(number, 2, "red_stop_flash")?;
            Self::AT_RED_STOP_FLASH.put(payload, bits);
            let number = u64::from(self.amber_warning_flash.raw());
            let bits = typed::unsigned_bits(number, 2, "amber_warning_flash")?;
            Self::AT_AMBER_WARNING_FLASH.put(payload, bits);
            let number = u64::from(self.protect_flash.raw());
            let bits = typed::unsigned_bits(number, 2, "protect_flash")?;
            Self::AT_PROTECT_FLASH.put(payload, bits);
            let elements = &self.spn_elements;
            elements.write(payload, (2, 4), 64, "spn_elements")?;
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, Some(6));
            let elements = &self.spn_elements;
            elements.measure(size, 2, (4, 4));
        }

        /// Reads a payload.
        ///
        /// It is the whole message: SAE J1939-21 carries it in several frames.
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
        pub fn malfunction_lamp(&self) -> typed::Reading<super::J1939Lamp> {
            match self.malfunction_lamp.raw() {
                2 => typed::Reading::Fault,
                3 => typed::Reading::NoReading,
                _ => typed::Reading::Value(self.malfunction_lamp),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn red_stop_lamp(&self) -> typed::Reading<super::J1939Lamp> {
            match self.red_stop_lamp.raw() {
                2 => typed::Reading::Fault,
                3 => typed::Reading::NoReading,
                _ => typed::Reading::Value(self.red_stop_lamp),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn amber_warning_lamp(&self) -> typed::Reading<super::J1939Lamp> {
            match self.amber_warning_lamp.raw() {
                2 => typed::Reading::Fault,
                3 => typed::Reading::NoReading,
                _ => typed::Reading::Value(self.amber_warning_lamp),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn protect_lamp(&self) -> typed::Reading<super::J1939Lamp> {
            match self.protect_lamp.raw() {
                2 => typed::Reading::Fault,
                3 => typed::Reading::NoReading,
                _ => typed::Reading::Value(self.protect_lamp),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn malfunction_flash(&self) -> typed::Reading<super::J1939Flash> {
            match self.malfunction_flash.raw() {
                2 => typed::Reading::Fault,
                _ => typed::Reading::Value(self.malfunction_flash),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn red_stop_flash(&self) -> typed::Reading<super::J1939Flash> {
            match self.red_stop_flash.raw() {
                2 => typed::Reading::Fault,
                _ => typed::Reading::Value(self.red_stop_flash),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn amber_warning_flash(&self) -> typed::Reading<super::J1939Flash> {
            match self.amber_warning_flash.raw() {
                2 => typed::Reading::Fault,
                _ => typed::Reading::Value(self.amber_warning_flash),
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn protect_flash(&self) -> typed::Reading<super::J1939Flash> {
            match self.protect_flash.raw() {
                2 => typed::Reading::Fault,
                _ => typed::Reading::Value(self.protect_flash),
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.malfunction_lamp();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.malfunction_lamp;
            let said = said.word(state.word());
            let name = typed::Name::of("malfunction_lamp");
            tell(name, said);
            let said = self.red_stop_lamp();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.red_stop_lamp;
            let said = said.word(state.word());
            let name = typed::Name::of("red_stop_lamp");
            tell(name, said);
            let said = self.amber_warning_lamp();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.amber_warning_lamp;
            let said = said.word(state.word());
            let name = typed::Name::of("amber_warning_lamp");
            tell(name, said);
            let said = self.protect_lamp();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.protect_lamp;
            let said = said.word(state.word());
            let name = typed::Name::of("protect_lamp");
            tell(name, said);
            let said = self.malfunction_flash();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.malfunction_flash;
            let said = said.word(state.word());
            let name = typed::Name::of("malfunction_flash");
            tell(name, said);
            let said = self.red_stop_flash();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.red_stop_flash;
            let said = said.word(state.word());
            let name = typed::Name::of("red_stop_flash");
            tell(name, said);
            let said = self.amber_warning_flash();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.amber_warning_flash;
            let said = said.word(state.word());
            let name = typed::Name::of("amber_warning_flash");
            tell(name, said);
            let said = self.protect_flash();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.protect_flash;
            let said = said.word(state.word());
            let name = typed::Name::of("protect_flash");
            tell(name, said);
            let elements = self.spn_elements.iter();
            for (index, element) in elements.enumerate() {
                element.each(&mut |name, said| tell(name.in_element(index), said));
            }
        }
    }

    /// One element of a repeated group.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SpnElement {
        /// SPN 1214, SAE J1939-73 (from memory). The number of the parameter that is in trouble, 19 bits.
        ///
        /// `raw`; 19 bits.
        pub spn: u32,
        /// What is there under a condition.
        pub when_spn: WhenSpn,
    }

    impl SpnElement {
        const AT_SPN: typed::Cuts<2> = typed::Cuts([
            typed::Cut::between((2, 7), (2, 5)),
            typed::Cut::between((1, 7), (0, 0)),
        ]);

        #[inline]
        fn select_spn(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_SPN.get(payload) else {
                return 2;
            };
            match bits {
                1..=0x7FFFF => 0,
                _ => 1,
            }
        }

        /// What the raw number says.
        #[must_use]
        pub fn spn(&self) -> typed::Reading<u32> {
            match self.spn {
                0 => typed::Reading::NoReading,
                raw => typed::Reading::Value(raw),
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.spn());
            let name = typed::Name::of("spn");
            tell(name, said);
            match &self.when_spn {
                WhenSpn::Is1To524287(page) => page.each(tell),
                WhenSpn::Otherwise(page) => page.each(tell),
                WhenSpn::NoPage => {}
            }
        }
    }

    impl<'a> typed::Element<'a> for SpnElement {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 3)?;
            let spn = Self::AT_SPN.of(payload) as u32;
            let held = Self::select_spn(payload);
            let when_spn = match held {
                0 => {
                    let page = SpnIs1To524287::read(payload)?;
                    WhenSpn::Is1To524287(page)
                }
                1 => {
                    let page = SpnOtherwise::read(payload)?;
                    WhenSpn::Otherwise(page)
                }
                _ => WhenSpn::NoPage,
            };
            Ok(Self { spn, when_spn })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.spn), 19, "spn[1]")?;
            Self::AT_SPN.put(payload, bits);
            let held = Self::select_spn(payload);
            match (held, &self.when_spn) {
                (0, WhenSpn::Is1To524287(page)) => page.write(payload)?,
                (1, WhenSpn::Otherwise(page)) => page.write(payload)?,
                (2, WhenSpn::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
            match &self.when_spn {
                WhenSpn::Is1To524287(page) => page.measure(size),
                WhenSpn::Otherwise(page) => page.measure(size),
                WhenSpn::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenSpn {
        /// When `spn` is 1..524287.
        Is1To524287(SpnIs1To524287),
        /// Otherwise.
        Otherwise(SpnOtherwise),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `spn` is 1..524287.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SpnIs1To524287 {
        /// SPN 1215, SAE J1939-73 (from memory).
        ///
        /// `raw`; 5 bits.
        pub fmi: super::J1939Failure,
        /// SPN 1216, SAE J1939-73 (from memory).
        ///
        /// `raw`; 7 bits.
        pub occurrences: u8,
        /// SPN 1706, SAE J1939-73 (from memory). 1: an older unit, which may put spn together in another way.
        ///
        /// `raw`; 1 bit.
        pub conversion_method: super::ActiveTroubleCodesConversionMethod,
    }

    impl SpnIs1To524287 {
        const AT_FMI: typed::Cut = typed::Cut::between((2, 4), (2, 0));
        const AT_OCCURRENCES: typed::Cut = typed::Cut::between((3, 6), (3, 0));
        const AT_CONVERSION_METHOD: typed::Cut = typed::Cut::between((3, 7), (3, 7));

        /// What the raw number says.
        #[must_use]
        pub fn occurrences(&self) -> typed::Reading<u8> {
            match self.occurrences {
                127 => typed::Reading::NoReading,
                raw => typed::Reading::Value(raw),
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = self.fmi;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.fmi;
            let said = said.word(state.word());
            let name = typed::Name::of("fmi");
            tell(name, said);
            let said = typed::Said::from(self.occurrences());
            let name = typed::Name::of("occurrences");
            tell(name, said);
            let said = self.conversion_method;
            let said = said.raw();
            let said = typed::Said::from(said);
            let state = self.conversion_method;
            let said = said.word(state.word());
            let name = typed::Name::of("conversion_method");
            tell(name, said);
        }
    }

    impl<'a> typed::Element<'a> for SpnIs1To524287 {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 4)?;
            let bits = Self::AT_FMI.of(payload);
            let fmi = super::J1939Failure::from_raw(bits as u8);
            let occurrences = Self::AT_OCCURRENCES.of(payload) as u8;
            let bits = Self::AT_CONVERSION_METHOD.of(payload);
            let conversion_method = super::ActiveTroubleCodesConversionMethod::from_raw(bits as u8);
            Ok(Self {
                fmi,
                occurrences,
                conversion_method,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.fmi.raw()), 5, "fmi[1]")?;
            Self::AT_FMI.put(payload, bits);
            let number = u64::from(self.occurrences);
            let bits = typed::unsigned_bits(number, 7, "occurrences[1]")?;
            Self::AT_OCCURRENCES.put(payload, bits);
            let number = u64::from(self.conversion_method.raw());
            let bits = typed::unsigned_bits(number, 1, "conversion_method[1]")?;
            Self::AT_CONVERSION_METHOD.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(4, None);
        }
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SpnOtherwise {}

    impl SpnOtherwise {
        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, _tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {}
    }

    impl<'a> typed::Element<'a> for SpnOtherwise {
        #[inline]
        fn read(_payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            Ok(Self {})
        }

        fn write(&self, _payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(0, None);
        }
    }
}

/// Request for a parameter group.
///
/// Somebody asks for a parameter group (SAE J1939-21, from memory).
///
/// Called "RQST" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroupRequest {
    /// SPN 2540, SAE J1939-21 (from memory).
    ///
    /// `raw`; 24 bits.
    pub requested_group: u32,
}

impl GroupRequest {
    /// The parameter group number.
    pub const PGN: u32 = 0xEA00;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    const AT_REQUESTED_GROUP: typed::Cut = typed::Cut::between((2, 7), (0, 0));

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let requested_group = Self::AT_REQUESTED_GROUP.of(payload) as u32;
        Self { requested_group }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.requested_group);
        let bits = typed::unsigned_bits(number, 24, "requested_group")?;
        Self::AT_REQUESTED_GROUP.put(payload, bits);
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

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.requested_group);
        let name = typed::Name::of("requested_group");
        tell(name, said);
    }
}

/// Acknowledgement.
///
/// The answer to a request or a command that has no other (SAE J1939-21, from memory).
///
/// Called "ACKM" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Acknowledgement {
    /// SPN 2541, SAE J1939-21 (from memory).
    ///
    /// `raw`; 8 bits.
    pub acknowledgement: AcknowledgementAcknowledgement,
    /// SPN 2542, SAE J1939-21 (from memory).
    ///
    /// `raw`; 8 bits.
    pub group_function: u8,
    /// SPN 3290, SAE J1939-21 (from memory). Whom the answer is for, as newer units tell it.
    ///
    /// `raw`; 8 bits.
    pub acknowledged_address: u8,
    /// SPN 2543, SAE J1939-21 (from memory).
    ///
    /// `raw`; 24 bits.
    pub acknowledged_group: u32,
}

impl Acknowledgement {
    /// The parameter group number.
    pub const PGN: u32 = 0xE800;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_ACKNOWLEDGEMENT: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_GROUP_FUNCTION: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_ACKNOWLEDGED_ADDRESS: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_ACKNOWLEDGED_GROUP: typed::Cut = typed::Cut::between((7, 7), (5, 0));

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_ACKNOWLEDGEMENT.of(payload);
        let acknowledgement = AcknowledgementAcknowledgement::from_raw(bits as u8);
        let group_function = Self::AT_GROUP_FUNCTION.of(payload) as u8;
        let acknowledged_address = Self::AT_ACKNOWLEDGED_ADDRESS.of(payload) as u8;
        let acknowledged_group = Self::AT_ACKNOWLEDGED_GROUP.of(payload) as u32;
        Self {
            acknowledgement,
            group_function,
            acknowledged_address,
            acknowledged_group,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.acknowledgement.raw());
        let bits = typed::unsigned_bits(number, 8, "acknowledgement")?;
        Self::AT_ACKNOWLEDGEMENT.put(payload, bits);
        let number = u64::from(self.group_function);
        let bits = typed::unsigned_bits(number, 8, "group_function")?;
        Self::AT_GROUP_FUNCTION.put(payload, bits);
        let number = u64::from(self.acknowledged_address);
        let bits = typed::unsigned_bits(number, 8, "acknowledged_address")?;
        Self::AT_ACKNOWLEDGED_ADDRESS.put(payload, bits);
        let number = u64::from(self.acknowledged_group);
        let bits = typed::unsigned_bits(number, 24, "acknowledged_group")?;
        Self::AT_ACKNOWLEDGED_GROUP.put(payload, bits);
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
    pub fn group_function(&self) -> typed::Reading<u8> {
        match self.group_function {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// What the raw number says.
    #[must_use]
    pub fn acknowledged_address(&self) -> typed::Reading<u8> {
        match self.acknowledged_address {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.acknowledgement;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.acknowledgement;
        let said = said.word(state.word());
        let name = typed::Name::of("acknowledgement");
        tell(name, said);
        let said = self.group_function();
        let said = typed::Said::from(said);
        let name = typed::Name::of("group_function");
        tell(name, said);
        let said = self.acknowledged_address();
        let said = typed::Said::from(said);
        let name = typed::Name::of("acknowledged_address");
        tell(name, said);
        let said = self.acknowledged_group;
        let said = typed::Said::from(said);
        let name = typed::Name::of("acknowledged_group");
        tell(name, said);
    }
}

/// Address claimed.
///
/// A control unit claims its address: the source of the frame. From address 254 it says that it could not claim any.
///
/// Called "AC" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AddressClaimed {
    /// SPN 2837, SAE J1939-81 (from memory). Given by the manufacturer, like a serial number.
    ///
    /// `raw`; 21 bits.
    pub identity_number: u32,
    /// SPN 2838, SAE J1939-81 (from memory).
    ///
    /// `raw`; 11 bits.
    pub manufacturer_code: u16,
    /// SPN 2840, SAE J1939-81 (from memory).
    ///
    /// `raw`; 3 bits.
    pub ecu_instance: u8,
    /// SPN 2839, SAE J1939-81 (from memory).
    ///
    /// `raw`; 5 bits.
    pub function_instance: u8,
    /// SPN 2841, SAE J1939-81 (from memory).
    ///
    /// `raw`; 8 bits.
    pub function: u8,
    /// SPN 2842, SAE J1939-81 (from memory).
    ///
    /// `raw`; 7 bits.
    pub vehicle_system: u8,
    /// SPN 2843, SAE J1939-81 (from memory).
    ///
    /// `raw`; 4 bits.
    pub vehicle_system_instance: u8,
    /// SPN 2846, SAE J1939-81 (from memory).
    ///
    /// `raw`; 3 bits.
    pub industry_group: AddressClaimedIndustryGroup,
    /// SPN 2844, SAE J1939-81 (from memory).
    ///
    /// `raw`; 1 bit.
    pub arbitrary_address_capable: bool,
}

impl AddressClaimed {
    /// The parameter group number.
    pub const PGN: u32 = 0xEE00;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_IDENTITY_NUMBER: typed::Cut = typed::Cut::between((2, 4), (0, 0));
    const AT_MANUFACTURER_CODE: typed::Cut = typed::Cut::between((3, 7), (2, 5));
    const AT_ECU_INSTANCE: typed::Cut = typed::Cut::between((4, 2), (4, 0));
    const AT_FUNCTION_INSTANCE: typed::Cut = typed::Cut::between((4, 7), (4, 3));
    const AT_FUNCTION: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_VEHICLE_SYSTEM: typed::Cut = typed::Cut::between((6, 7), (6, 1));
    const AT_VEHICLE_SYSTEM_INSTANCE: typed::Cut = typed::Cut::between((7, 3), (7, 0));
    const AT_INDUSTRY_GROUP: typed::Cut = typed::Cut::between((7, 6), (7, 4));
    const AT_ARBITRARY_ADDRESS_CAPABLE: typed::Cut = typed::Cut::between((7, 7), (7, 7));

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let identity_number = Self::AT_IDENTITY_NUMBER.of(payload) as u32;
        let manufacturer_code = Self::AT_MANUFACTURER_CODE.of(payload) as u16;
        let ecu_instance = Self::AT_ECU_INSTANCE.of(payload) as u8;
        let function_instance = Self::AT_FUNCTION_INSTANCE.of(payload) as u8;
        let function = Self::AT_FUNCTION.of(payload) as u8;
        let vehicle_system = Self::AT_VEHICLE_SYSTEM.of(payload) as u8;
        let vehicle_system_instance = Self::AT_VEHICLE_SYSTEM_INSTANCE.of(payload) as u8;
        let bits = Self::AT_INDUSTRY_GROUP.of(payload);
        let industry_group = AddressClaimedIndustryGroup::from_raw(bits as u8);
        let arbitrary_address_capable = Self::AT_ARBITRARY_ADDRESS_CAPABLE.of(payload) != 0;
        Self {
            identity_number,
            manufacturer_code,
            ecu_instance,
            function_instance,
            function,
            vehicle_system,
            vehicle_system_instance,
            industry_group,
            arbitrary_address_capable,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.identity_number);
        let bits = typed::unsigned_bits(number, 21, "identity_number")?;
        Self::AT_IDENTITY_NUMBER.put(payload, bits);
        let number = u64::from(self.manufacturer_code);
        let bits = typed::unsigned_bits(number, 11, "manufacturer_code")?;
        Self::AT_MANUFACTURER_CODE.put(payload, bits);
        let number = u64::from(self.ecu_instance);
        let bits = typed::unsigned_bits(number, 3, "ecu_instance")?;
        Self::AT_ECU_INSTANCE.put(payload, bits);
        let number = u64::from(self.function_instance);
        let bits = typed::unsigned_bits(number, 5, "function_instance")?;
        Self::AT_FUNCTION_INSTANCE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.function), 8, "function")?;
        Self::AT_FUNCTION.put(payload, bits);
        let number = u64::from(self.vehicle_system);
        let bits = typed::unsigned_bits(number, 7, "vehicle_system")?;
        Self::AT_VEHICLE_SYSTEM.put(payload, bits);
        let number = u64::from(self.vehicle_system_instance);
        let bits = typed::unsigned_bits(number, 4, "vehicle_system_instance")?;
        Self::AT_VEHICLE_SYSTEM_INSTANCE.put(payload, bits);
        let number = u64::from(self.industry_group.raw());
        let bits = typed::unsigned_bits(number, 3, "industry_group")?;
        Self::AT_INDUSTRY_GROUP.put(payload, bits);
        let bits = u64::from(self.arbitrary_address_capable);
        Self::AT_ARBITRARY_ADDRESS_CAPABLE.put(payload, bits);
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

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.identity_number);
        let name = typed::Name::of("identity_number");
        tell(name, said);
        let said = self.manufacturer_code;
        let said = typed::Said::from(said);
        let name = typed::Name::of("manufacturer_code");
        tell(name, said);
        let said = typed::Said::from(self.ecu_instance);
        let name = typed::Name::of("ecu_instance");
        tell(name, said);
        let said = self.function_instance;
        let said = typed::Said::from(said);
        let name = typed::Name::of("function_instance");
        tell(name, said);
        let said = typed::Said::from(self.function);
        let name = typed::Name::of("function");
        tell(name, said);
        let said = typed::Said::from(self.vehicle_system);
        let name = typed::Name::of("vehicle_system");
        tell(name, said);
        let said = self.vehicle_system_instance;
        let said = typed::Said::from(said);
        let name = typed::Name::of("vehicle_system_instance");
        tell(name, said);
        let said = self.industry_group;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.industry_group;
        let said = said.word(state.word());
        let name = typed::Name::of("industry_group");
        tell(name, said);
        let said = self.arbitrary_address_capable;
        let said = typed::Said::from(said);
        let name = typed::Name::of("arbitrary_address_capable");
        tell(name, said);
    }
}

/// Commanded address.
///
/// Somebody gives the control unit of this name another address (SAE J1939-81, from memory).
/// For reading only: a control unit that changes its address is lost to all others.
///
/// Called "CA" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CommandedAddress {
    /// SPN 2837, SAE J1939-81 (from memory). Given by the manufacturer, like a serial number.
    ///
    /// `raw`; 21 bits.
    pub identity_number: u32,
    /// SPN 2838, SAE J1939-81 (from memory).
    ///
    /// `raw`; 11 bits.
    pub manufacturer_code: u16,
    /// SPN 2840, SAE J1939-81 (from memory).
    ///
    /// `raw`; 3 bits.
    pub ecu_instance: u8,
    /// SPN 2839, SAE J1939-81 (from memory).
    ///
    /// `raw`; 5 bits.
    pub function_instance: u8,
    /// SPN 2841, SAE J1939-81 (from memory).
    ///
    /// `raw`; 8 bits.
    pub function: u8,
    /// SPN 2842, SAE J1939-81 (from memory).
    ///
    /// `raw`; 7 bits.
    pub vehicle_system: u8,
    /// SPN 2843, SAE J1939-81 (from memory).
    ///
    /// `raw`; 4 bits.
    pub vehicle_system_instance: u8,
    /// SPN 2846, SAE J1939-81 (from memory).
    ///
    /// `raw`; 3 bits.
    pub industry_group: AddressClaimedIndustryGroup,
    /// SPN 2844, SAE J1939-81 (from memory).
    ///
    /// `raw`; 1 bit.
    pub arbitrary_address_capable: bool,
    /// SPN 2848, SAE J1939-81 (from memory).
    ///
    /// `raw`; 8 bits.
    pub new_address: u8,
}

impl CommandedAddress {
    /// The parameter group number.
    pub const PGN: u32 = 0xFED8;
    /// The length in bytes.
    pub const LENGTH: usize = 9;
    const AT_IDENTITY_NUMBER: typed::Cut = typed::Cut::between((2, 4), (0, 0));
    const AT_MANUFACTURER_CODE: typed::Cut = typed::Cut::between((3, 7), (2, 5));
    const AT_ECU_INSTANCE: typed::Cut = typed::Cut::between((4, 2), (4, 0));
    const AT_FUNCTION_INSTANCE: typed::Cut = typed::Cut::between((4, 7), (4, 3));
    const AT_FUNCTION: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_VEHICLE_SYSTEM: typed::Cut = typed::Cut::between((6, 7), (6, 1));
    const AT_VEHICLE_SYSTEM_INSTANCE: typed::Cut = typed::Cut::between((7, 3), (7, 0));
    const AT_INDUSTRY_GROUP: typed::Cut = typed::Cut::between((7, 6), (7, 4));
    const AT_ARBITRARY_ADDRESS_CAPABLE: typed::Cut = typed::Cut::between((7, 7), (7, 7));
    const AT_NEW_ADDRESS: typed::Cut = typed::Cut::between((8, 7), (8, 0));

    #[inline]
    fn read(payload: &[u8; 9]) -> Self {
        let identity_number = Self::AT_IDENTITY_NUMBER.of(payload) as u32;
        let manufacturer_code = Self::AT_MANUFACTURER_CODE.of(payload) as u16;
        let ecu_instance = Self::AT_ECU_INSTANCE.of(payload) as u8;
        let function_instance = Self::AT_FUNCTION_INSTANCE.of(payload) as u8;
        let function = Self::AT_FUNCTION.of(payload) as u8;
        let vehicle_system = Self::AT_VEHICLE_SYSTEM.of(payload) as u8;
        let vehicle_system_instance = Self::AT_VEHICLE_SYSTEM_INSTANCE.of(payload) as u8;
        let bits = Self::AT_INDUSTRY_GROUP.of(payload);
        let industry_group = AddressClaimedIndustryGroup::from_raw(bits as u8);
        let arbitrary_address_capable = Self::AT_ARBITRARY_ADDRESS_CAPABLE.of(payload) != 0;
        let new_address = Self::AT_NEW_ADDRESS.of(payload) as u8;
        Self {
            identity_number,
            manufacturer_code,
            ecu_instance,
            function_instance,
            function,
            vehicle_system,
            vehicle_system_instance,
            industry_group,
            arbitrary_address_capable,
            new_address,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.identity_number);
        let bits = typed::unsigned_bits(number, 21, "identity_number")?;
        Self::AT_IDENTITY_NUMBER.put(payload, bits);
        let number = u64::from(self.manufacturer_code);
        let bits = typed::unsigned_bits(number, 11, "manufacturer_code")?;
        Self::AT_MANUFACTURER_CODE.put(payload, bits);
        let number = u64::from(self.ecu_instance);
        let bits = typed::unsigned_bits(number, 3, "ecu_instance")?;
        Self::AT_ECU_INSTANCE.put(payload, bits);
        let number = u64::from(self.function_instance);
        let bits = typed::unsigned_bits(number, 5, "function_instance")?;
        Self::AT_FUNCTION_INSTANCE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.function), 8, "function")?;
        Self::AT_FUNCTION.put(payload, bits);
        let number = u64::from(self.vehicle_system);
        let bits = typed::unsigned_bits(number, 7, "vehicle_system")?;
        Self::AT_VEHICLE_SYSTEM.put(payload, bits);
        let number = u64::from(self.vehicle_system_instance);
        let bits = typed::unsigned_bits(number, 4, "vehicle_system_instance")?;
        Self::AT_VEHICLE_SYSTEM_INSTANCE.put(payload, bits);
        let number = u64::from(self.industry_group.raw());
        let bits = typed::unsigned_bits(number, 3, "industry_group")?;
        Self::AT_INDUSTRY_GROUP.put(payload, bits);
        let bits = u64::from(self.arbitrary_address_capable);
        Self::AT_ARBITRARY_ADDRESS_CAPABLE.put(payload, bits);
        let number = u64::from(self.new_address);
        let bits = typed::unsigned_bits(number, 8, "new_address")?;
        Self::AT_NEW_ADDRESS.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// It is the whole message: SAE J1939-21 carries it in several frames.
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
        let said = typed::Said::from(self.identity_number);
        let name = typed::Name::of("identity_number");
        tell(name, said);
        let said = self.manufacturer_code;
        let said = typed::Said::from(said);
        let name = typed::Name::of("manufacturer_code");
        tell(name, said);
        let said = typed::Said::from(self.ecu_instance);
        let name = typed::Name::of("ecu_instance");
        tell(name, said);
        let said = self.function_instance;
        let said = typed::Said::from(said);
        let name = typed::Name::of("function_instance");
        tell(name, said);
        let said = typed::Said::from(self.function);
        let name = typed::Name::of("function");
        tell(name, said);
        let said = typed::Said::from(self.vehicle_system);
        let name = typed::Name::of("vehicle_system");
        tell(name, said);
        let said = self.vehicle_system_instance;
        let said = typed::Said::from(said);
        let name = typed::Name::of("vehicle_system_instance");
        tell(name, said);
        let said = self.industry_group;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.industry_group;
        let said = said.word(state.word());
        let name = typed::Name::of("industry_group");
        tell(name, said);
        let said = self.arbitrary_address_capable;
        let said = typed::Said::from(said);
        let name = typed::Name::of("arbitrary_address_capable");
        tell(name, said);
        let said = typed::Said::from(self.new_address);
        let name = typed::Name::of("new_address");
        tell(name, said);
    }
}

/// Component identification.
///
/// Make, model, serial number and unit number, each ended by a star.
///
/// Called "CI" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ComponentIdentification<'a> {
    /// SPN 586, 587, 588 and 233, SAE J1939-71 (from memory).
    ///
    /// Text, byte by byte.
    pub component: &'a [u8],
}

impl<'a> ComponentIdentification<'a> {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEEB;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 4..=1785;

    #[inline]
    fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let component = typed::to_end(payload, 0);
        Ok(Self { component })
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        typed::put_bytes(payload, self.component, 0, None, "component")?;
        Ok(())
    }

    fn measure(&self, size: &mut typed::Size) {
        size.part(0, Some(4));
        size.reach(self.component.len());
    }

    /// Reads a payload.
    ///
    /// It is the whole message: SAE J1939-21 carries it in several frames.
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
    pub fn component(&self) -> typed::Text<'a> {
        typed::Text::new(self.component, typed::Charset::Ascii)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.component());
        let name = typed::Name::of("component");
        tell(name, said);
    }
}

/// Software identification.
///
/// Software, one text or several, each ended by a star.
///
/// Called "SOFT" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SoftwareIdentification<'a> {
    /// SPN 965, SAE J1939-71 (from memory).
    ///
    /// `raw`; 8 bits.
    pub number_of_texts: u8,
    /// SPN 234, SAE J1939-71 (from memory).
    ///
    /// Text, byte by byte.
    pub software: &'a [u8],
}

impl<'a> SoftwareIdentification<'a> {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEDA;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 2..=1785;
    const AT_NUMBER_OF_TEXTS: typed::Cut = typed::Cut::between((0, 7), (0, 0));

    #[inline]
    fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let number_of_texts = Self::AT_NUMBER_OF_TEXTS.of(payload) as u8;
        let software = typed::to_end(payload, 1);
        Ok(Self {
            number_of_texts,
            software,
        })
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.number_of_texts);
        let bits = typed::unsigned_bits(number, 8, "number_of_texts")?;
        Self::AT_NUMBER_OF_TEXTS.put(payload, bits);
        typed::put_bytes(payload, self.software, 1, None, "software")?;
        Ok(())
    }

    fn measure(&self, size: &mut typed::Size) {
        size.part(1, Some(2));
        size.reach(1 + self.software.len());
    }

    /// Reads a payload.
    ///
    /// It is the whole message: SAE J1939-21 carries it in several frames.
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
    pub fn number_of_texts(&self) -> typed::Reading<u8> {
        match self.number_of_texts {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The characters, without the NUL bytes at their end.
    #[must_use]
    pub fn software(&self) -> typed::Text<'a> {
        typed::Text::new(self.software, typed::Charset::Ascii)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.number_of_texts();
        let said = typed::Said::from(said);
        let name = typed::Name::of("number_of_texts");
        tell(name, said);
        let said = typed::Said::from(self.software());
        let name = typed::Name::of("software");
        tell(name, said);
    }
}

/// Vehicle identification.
///
/// The vehicle's identification number, ended by a star.
///
/// Called "VI" elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VehicleIdentification<'a> {
    /// SPN 237, SAE J1939-71 (from memory).
    ///
    /// Text, byte by byte.
    pub vin: &'a [u8],
}

impl<'a> VehicleIdentification<'a> {
    /// The parameter group number.
    pub const PGN: u32 = 0xFEEC;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 1..=1785;

    #[inline]
    fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let vin = typed::to_end(payload, 0);
        Ok(Self { vin })
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        typed::put_bytes(payload, self.vin, 0, None, "vin")?;
        Ok(())
    }

    fn measure(&self, size: &mut typed::Size) {
        size.part(0, Some(1));
        size.reach(self.vin.len());
    }

    /// Reads a payload.
    ///
    /// It is the whole message: SAE J1939-21 carries it in several frames.
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
    pub fn vin(&self) -> typed::Text<'a> {
        typed::Text::new(self.vin, typed::Charset::Ascii)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.vin());
        let name = typed::Name::of("vin");
        tell(name, said);
    }
}

/// The frames on network `heavy_duty`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum HeavyDutyFrame<'a> {
    /// `engine_torque_and_speed`.
    EngineTorqueAndSpeed(EngineTorqueAndSpeed),
    /// `accelerator_and_load`.
    AcceleratorAndLoad(AcceleratorAndLoad),
    /// `engine_friction`.
    EngineFriction(EngineFriction),
    /// `engine_temperatures`.
    EngineTemperatures(EngineTemperatures),
    /// `engine_fluids`.
    EngineFluids(EngineFluids),
    /// `intake_and_exhaust`.
    IntakeAndExhaust(IntakeAndExhaust),
    /// `fuel_economy`.
    FuelEconomy(FuelEconomy),
    /// `engine_hours`.
    EngineHours(EngineHours),
    /// `fuel_used`.
    FuelUsed(FuelUsed),
    /// `torque_speed_control`.
    TorqueSpeedControl(TorqueSpeedControl),
    /// `transmission_shafts`.
    TransmissionShafts(TransmissionShafts),
    /// `transmission_gears`.
    TransmissionGears(TransmissionGears<'a>),
    /// `transmission_fluids`.
    TransmissionFluids(TransmissionFluids),
    /// `brake_control`.
    BrakeControl(BrakeControl),
    /// `axle_and_wheel_speeds`.
    AxleAndWheelSpeeds(AxleAndWheelSpeeds),
    /// `retarder`.
    Retarder(Retarder),
    /// `vehicle_dynamics`.
    VehicleDynamics(VehicleDynamics),
    /// `cruise_and_vehicle_speed`.
    CruiseAndVehicleSpeed(CruiseAndVehicleSpeed),
    /// `vehicle_distance`.
    VehicleDistance(VehicleDistance),
    /// `vehicle_distance_fine`.
    VehicleDistanceFine(VehicleDistanceFine),
    /// `wheel_based_machine_speed`.
    WheelBasedMachineSpeed(WheelBasedMachineSpeed),
    /// `ambient_conditions`.
    AmbientConditions(AmbientConditions),
    /// `electrical_power`.
    ElectricalPower(ElectricalPower),
    /// `levels_and_filters`.
    LevelsAndFilters(LevelsAndFilters),
    /// `air_supply`.
    AirSupply(AirSupply),
    /// `time_and_date`.
    TimeAndDate(TimeAndDate),
    /// `engine_configuration`.
    EngineConfiguration(EngineConfiguration),
    /// `active_trouble_codes`.
    ActiveTroubleCodes(ActiveTroubleCodes<'a>),
    /// `previous_trouble_codes`.
    PreviousTroubleCodes(PreviousTroubleCodes<'a>),
    /// `group_request`.
    GroupRequest(GroupRequest),
    /// `acknowledgement`.
    Acknowledgement(Acknowledgement),
    /// `address_claimed`.
    AddressClaimed(AddressClaimed),
    /// `commanded_address`.
    CommandedAddress(CommandedAddress),
    /// `component_identification`.
    ComponentIdentification(ComponentIdentification<'a>),
    /// `software_identification`.
    SoftwareIdentification(SoftwareIdentification<'a>),
    /// `vehicle_identification`.
    VehicleIdentification(VehicleIdentification<'a>),
}

impl<'a> HeavyDutyFrame<'a> {
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
            (_, true) => match typed::pgn_of(id) {
                0x0 => {
                    let frame = TorqueSpeedControl::decode(payload)?;
                    Self::TorqueSpeedControl(frame)
                }
                0xE800 => {
                    let frame = Acknowledgement::decode(payload)?;
                    Self::Acknowledgement(frame)
                }
                0xEA00 => {
                    let frame = GroupRequest::decode(payload)?;
                    Self::GroupRequest(frame)
                }
                0xEE00 => {
                    let frame = AddressClaimed::decode(payload)?;
                    Self::AddressClaimed(frame)
                }
                0xF000 => {
                    let frame = Retarder::decode(payload)?;
                    Self::Retarder(frame)
                }
                0xF001 => {
                    let frame = BrakeControl::decode(payload)?;
                    Self::BrakeControl(frame)
                }
                0xF002 => {
                    let frame = TransmissionShafts::decode(payload)?;
                    Self::TransmissionShafts(frame)
                }
                0xF003 => {
                    let frame = AcceleratorAndLoad::decode(payload)?;
                    Self::AcceleratorAndLoad(frame)
                }
                0xF004 => {
                    let frame = EngineTorqueAndSpeed::decode(payload)?;
                    Self::EngineTorqueAndSpeed(frame)
                }
                0xF005 => {
                    let frame = TransmissionGears::decode(payload)?;
                    Self::TransmissionGears(frame)
                }
                0xF009 => {
                    let frame = VehicleDynamics::decode(payload)?;
                    Self::VehicleDynamics(frame)
                }
                0xFE48 => {
                    let frame = WheelBasedMachineSpeed::decode(payload)?;
                    Self::WheelBasedMachineSpeed(frame)
                }
                0xFEAE => {
                    let frame = AirSupply::decode(payload)?;
                    Self::AirSupply(frame)
                }
                0xFEBF => {
                    let frame = AxleAndWheelSpeeds::decode(payload)?;
                    Self::AxleAndWheelSpeeds(frame)
                }
                0xFEC1 => {
                    let frame = VehicleDistanceFine::decode(payload)?;
                    Self::VehicleDistanceFine(frame)
                }
                0xFECA => {
                    let frame = ActiveTroubleCodes::decode(payload)?;
                    Self::ActiveTroubleCodes(frame)
                }
                0xFECB => {
                    let frame = PreviousTroubleCodes::decode(payload)?;
                    Self::PreviousTroubleCodes(frame)
                }
                0xFED8 => {
                    let frame = CommandedAddress::decode(payload)?;
                    Self::CommandedAddress(frame)
                }
                0xFEDA => {
                    let frame = SoftwareIdentification::decode(payload)?;
                    Self::SoftwareIdentification(frame)
                }
                0xFEDF => {
                    let frame = EngineFriction::decode(payload)?;
                    Self::EngineFriction(frame)
                }
                0xFEE0 => {
                    let frame = VehicleDistance::decode(payload)?;
                    Self::VehicleDistance(frame)
                }
                0xFEE3 => {
                    let frame = EngineConfiguration::decode(payload)?;
                    Self::EngineConfiguration(frame)
                }
                0xFEE5 => {
                    let frame = EngineHours::decode(payload)?;
                    Self::EngineHours(frame)
                }
                0xFEE6 => {
                    let frame = TimeAndDate::decode(payload)?;
                    Self::TimeAndDate(frame)
                }
                0xFEE9 => {
                    let frame = FuelUsed::decode(payload)?;
                    Self::FuelUsed(frame)
                }
                0xFEEB => {
                    let frame = ComponentIdentification::decode(payload)?;
                    Self::ComponentIdentification(frame)
                }
                0xFEEC => {
                    let frame = VehicleIdentification::decode(payload)?;
                    Self::VehicleIdentification(frame)
                }
                0xFEEE => {
                    let frame = EngineTemperatures::decode(payload)?;
                    Self::EngineTemperatures(frame)
                }
                0xFEEF => {
                    let frame = EngineFluids::decode(payload)?;
                    Self::EngineFluids(frame)
                }
                0xFEF1 => {
                    let frame = CruiseAndVehicleSpeed::decode(payload)?;
                    Self::CruiseAndVehicleSpeed(frame)
                }
                0xFEF2 => {
                    let frame = FuelEconomy::decode(payload)?;
                    Self::FuelEconomy(frame)
                }
                0xFEF5 => {
                    let frame = AmbientConditions::decode(payload)?;
                    Self::AmbientConditions(frame)
                }
                0xFEF6 => {
                    let frame = IntakeAndExhaust::decode(payload)?;
                    Self::IntakeAndExhaust(frame)
                }
                0xFEF7 => {
                    let frame = ElectricalPower::decode(payload)?;
                    Self::ElectricalPower(frame)
                }
                0xFEF8 => {
                    let frame = TransmissionFluids::decode(payload)?;
                    Self::TransmissionFluids(frame)
                }
                0xFEFC => {
                    let frame = LevelsAndFilters::decode(payload)?;
                    Self::LevelsAndFilters(frame)
                }
                _ => return Ok(None),
            },
            _ => return Ok(None),
        }))
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::EngineTorqueAndSpeed(frame) => frame.each(tell),
            Self::AcceleratorAndLoad(frame) => frame.each(tell),
            Self::EngineFriction(frame) => frame.each(tell),
            Self::EngineTemperatures(frame) => frame.each(tell),
            Self::EngineFluids(frame) => frame.each(tell),
            Self::IntakeAndExhaust(frame) => frame.each(tell),
            Self::FuelEconomy(frame) => frame.each(tell),
            Self::EngineHours(frame) => frame.each(tell),
            Self::FuelUsed(frame) => frame.each(tell),
            Self::TorqueSpeedControl(frame) => frame.each(tell),
            Self::TransmissionShafts(frame) => frame.each(tell),
            Self::TransmissionGears(frame) => frame.each(tell),
            Self::TransmissionFluids(frame) => frame.each(tell),
            Self::BrakeControl(frame) => frame.each(tell),
            Self::AxleAndWheelSpeeds(frame) => frame.each(tell),
            Self::Retarder(frame) => frame.each(tell),
            Self::VehicleDynamics(frame) => frame.each(tell),
            Self::CruiseAndVehicleSpeed(frame) => frame.each(tell),
            Self::VehicleDistance(frame) => frame.each(tell),
            Self::VehicleDistanceFine(frame) => frame.each(tell),
            Self::WheelBasedMachineSpeed(frame) => frame.each(tell),
            Self::AmbientConditions(frame) => frame.each(tell),
            Self::ElectricalPower(frame) => frame.each(tell),
            Self::LevelsAndFilters(frame) => frame.each(tell),
            Self::AirSupply(frame) => frame.each(tell),
            Self::TimeAndDate(frame) => frame.each(tell),
            Self::EngineConfiguration(frame) => frame.each(tell),
            Self::ActiveTroubleCodes(frame) => frame.each(tell),
            Self::PreviousTroubleCodes(frame) => frame.each(tell),
            Self::GroupRequest(frame) => frame.each(tell),
            Self::Acknowledgement(frame) => frame.each(tell),
            Self::AddressClaimed(frame) => frame.each(tell),
            Self::CommandedAddress(frame) => frame.each(tell),
            Self::ComponentIdentification(frame) => frame.each(tell),
            Self::SoftwareIdentification(frame) => frame.each(tell),
            Self::VehicleIdentification(frame) => frame.each(tell),
        }
    }
}
