//! What a unit measures: only units of one dimension convert into each other.

/// What a unit measures.
///
/// Dimensions are as fine as exact, useful conversion asks for: torque is not energy, a temperature is not a temperature difference, and
/// angles in radians stand apart from angles in degrees, because the factor between them has no exact fraction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum Dimension {
    /// Plain numbers, shares and ratios. Base: `1`.
    Share,
    /// Speed. Base: `m/s`.
    Speed,
    /// Acceleration. Base: `m/s²`.
    Acceleration,
    /// Rate of change of an acceleration. Base: `m/s³`.
    Jerk,
    /// Temperature, on a scale with a zero point. Base: `K`.
    Temperature,
    /// Difference of two temperatures. Base: `ΔK`.
    TemperatureDifference,
    /// Frequency and rotational speed in turns. Base: `Hz`.
    Frequency,
    /// Angle in degrees. Base: `°`.
    Angle,
    /// Angular speed in degrees. Base: `°/s`.
    AngularSpeed,
    /// Angular acceleration in degrees. Base: `°/s²`.
    AngularAcceleration,
    /// Angle in radians. Base: `rad`.
    RadianAngle,
    /// Angular speed in radians. Base: `rad/s`.
    RadianSpeed,
    /// Angular acceleration in radians. Base: `rad/s²`.
    RadianAcceleration,
    /// Curvature of a path. Base: `1/m`.
    Curvature,
    /// Torque. Base: `N·m`.
    Torque,
    /// Force. Base: `N`.
    Force,
    /// Pressure. Base: `Pa`.
    Pressure,
    /// Power. Base: `W`.
    Power,
    /// Energy. Base: `J`.
    Energy,
    /// Electric potential difference. Base: `V`.
    Voltage,
    /// Electric current. Base: `A`.
    Current,
    /// Electric charge. Base: `C`.
    Charge,
    /// Electric resistance. Base: `Ω`.
    Resistance,
    /// Insulation resistance per volt of a high-voltage system. Base: `Ω/V`.
    ResistancePerVoltage,
    /// Capacitance. Base: `F`.
    Capacitance,
    /// Inductance. Base: `H`.
    Inductance,
    /// Volume. Base: `L`.
    Volume,
    /// Volume per time. Base: `L/h`.
    VolumeFlow,
    /// Mass. Base: `kg`.
    Mass,
    /// Mass per time. Base: `kg/h`.
    MassFlow,
    /// Density. Base: `kg/m³`.
    Density,
    /// Length and distance. Base: `m`.
    Length,
    /// Distance per fuel volume. Base: `km/L`.
    DistancePerFuel,
    /// Fuel volume per distance (the reciprocal of the former, so no straight line leads there). Base: `L/100km`.
    FuelPerDistance,
    /// Energy per distance. Base: `Wh/km`.
    EnergyPerDistance,
    /// Time. Base: `s`.
    Time,
    /// Illuminance. Base: `lx`.
    Illuminance,
    /// Luminous intensity. Base: `cd`.
    LuminousIntensity,
    /// Luminance. Base: `cd/m²`.
    Luminance,
    /// Irradiance. Base: `W/m²`.
    Irradiance,
    /// Logarithmic level. Base: `dB`.
    Level,
    /// Amount of data. Base: `bit`.
    Data,
    /// Data per time. Base: `bit/s`.
    DataRate,
}

impl Dimension {
    /// What it is called in a sentence: `a speed`.
    #[must_use]
    pub fn in_words(self) -> &'static str {
        match self {
            Self::Share => "a plain number or share",
            Self::Speed => "a speed",
            Self::Acceleration => "an acceleration",
            Self::Jerk => "a rate of change of an acceleration",
            Self::Temperature => "a temperature",
            Self::TemperatureDifference => "a difference of temperatures",
            Self::Frequency => "a frequency or rotational speed",
            Self::Angle => "an angle in degrees",
            Self::AngularSpeed => "an angular speed in degrees",
            Self::AngularAcceleration => "an angular acceleration in degrees",
            Self::RadianAngle => "an angle in radians",
            Self::RadianSpeed => "an angular speed in radians",
            Self::RadianAcceleration => "an angular acceleration in radians",
            Self::Curvature => "a curvature",
            Self::Torque => "a torque",
            Self::Force => "a force",
            Self::Pressure => "a pressure",
            Self::Power => "a power",
            Self::Energy => "an energy",
            Self::Voltage => "a voltage",
            Self::Current => "a current",
            Self::Charge => "an electric charge",
            Self::Resistance => "a resistance",
            Self::ResistancePerVoltage => "an insulation resistance per volt",
            Self::Capacitance => "a capacitance",
            Self::Inductance => "an inductance",
            Self::Volume => "a volume",
            Self::VolumeFlow => "a volume per time",
            Self::Mass => "a mass",
            Self::MassFlow => "a mass per time",
            Self::Density => "a density",
            Self::Length => "a length",
            Self::DistancePerFuel => "a distance per fuel volume",
            Self::FuelPerDistance => "a fuel volume per distance",
            Self::EnergyPerDistance => "an energy per distance",
            Self::Time => "a time",
            Self::Illuminance => "an illuminance",
            Self::LuminousIntensity => "a luminous intensity",
            Self::Luminance => "a luminance",
            Self::Irradiance => "an irradiance",
            Self::Level => "a logarithmic level",
            Self::Data => "an amount of data",
            Self::DataRate => "a data rate",
        }
    }
}
