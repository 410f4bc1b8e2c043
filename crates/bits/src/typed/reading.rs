//! What a signal says where some raw values say that they are none.

/// What a signal says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading<T> {
    /// A value.
    Value(T),
    /// A raw value that says "no reading".
    NoReading,
    /// A raw value that says "sensor fault".
    Fault,
    /// Bits without any meaning: no decimal digits, or beyond the ends of the sensor curve.
    Undefined,
}

impl<T> Reading<T> {
    /// The value, where there is one.
    pub fn value(self) -> Option<T> {
        match self {
            Self::Value(value) => Some(value),
            Self::NoReading | Self::Fault | Self::Undefined => None,
        }
    }

    /// The same with something made of the value.
    pub fn map<U>(self, make: impl FnOnce(T) -> U) -> Reading<U> {
        match self {
            Self::Value(value) => Reading::Value(make(value)),
            Self::NoReading => Reading::NoReading,
            Self::Fault => Reading::Fault,
            Self::Undefined => Reading::Undefined,
        }
    }
}
