//! How tables are to be made.

use arrow_schema::{DataType, TimeUnit};

/// What tables hold, and what they may take.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Setup {
    /// What the cells of numbers hold.
    pub store: Store,
    /// Whether every signal has a companion column `NAME.state`: the state word, or why there is no value, and what a check says.
    pub states: bool,
    /// What times count from.
    pub times: Times,
    /// How much memory the tables may take together, in bytes. Less makes smaller row groups.
    pub memory_bytes: usize,
}

/// What the cells of numbers hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Store {
    /// The engineering value, a double; the state word of a signal that has nothing but words.
    Values,
    /// The raw number in the narrowest type that holds all of them, its formula beside the column's name.
    Raw,
}

impl From<Store> for wirelore_decode::Store {
    fn from(store: Store) -> Self {
        match store {
            Store::Values => Self::Values,
            Store::Raw => Self::Raw,
        }
    }
}

/// What times count from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Times {
    /// The first frame of the recording.
    Start,
    /// Whatever the recording counts from.
    Recorded,
    /// 1970, in UTC: dates.
    Clock,
}

impl Times {
    /// A time as the column has it; `None` where the log tells none, and where it lies more than 292 years from the first.
    pub(crate) fn of(self, time_ns: Option<i64>, first_ns: Option<i64>) -> Option<i64> {
        match self {
            Self::Start => time_ns?.checked_sub(first_ns.or(time_ns)?),
            Self::Recorded | Self::Clock => time_ns,
        }
    }

    pub(crate) fn data_type(self) -> DataType {
        match self {
            Self::Start | Self::Recorded => DataType::Duration(TimeUnit::Nanosecond),
            Self::Clock => DataType::Timestamp(TimeUnit::Nanosecond, Some("UTC".into())),
        }
    }

    pub(crate) fn meaning(self) -> &'static str {
        match self {
            Self::Start => "since the first frame of the recording",
            Self::Recorded => "as the recording counts",
            Self::Clock => "UTC",
        }
    }
}
