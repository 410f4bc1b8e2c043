//! What a column or a field of a pattern can be, and the common headings it is known by.

use super::time::TimeUnit;
use super::values::Base;

/// What a piece of a line means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    Time,
    Channel,
    Id,
    Data,
    Length,
    Dlc,
    Extended,
    Remote,
    Kind,
    Fd,
    BitRateSwitch,
    ErrorState,
    ChecksumGood,
}

/// How many roles there are.
pub(super) const ROLES: usize = 13;

/// Every role with the word that the user writes for it, and the headings it is known by: lower case, letters and digits only.
const TABLE: [(Role, &str, &[&str]); ROLES] = [
    (Role::Time, "time", &["time", "timestamp", "t"]),
    (Role::Channel, "channel", &["channel", "network", "bus"]),
    (Role::Id, "id", &["id", "identifier", "canid", "canidentifier"]),
    (Role::Data, "data", &["data", "payload", "databytes"]),
    (Role::Length, "length", &["length", "len"]),
    (Role::Dlc, "dlc", &["dlc"]),
    (Role::Extended, "extended", &["extended", "ext", "ide"]),
    (Role::Remote, "remote", &["remote", "rtr"]),
    (Role::Kind, "kind", &["kind"]),
    (Role::Fd, "fd", &["fd", "fdf"]),
    (Role::BitRateSwitch, "bit_rate_switch", &["bitrateswitch", "brs"]),
    (Role::ErrorState, "error_state", &["errorstate", "esi"]),
    (Role::ChecksumGood, "checksum_good", &["checksumgood", "crcok"]),
];

/// The word that the user writes for a piece that does not matter.
pub(super) const SKIP: &str = "skip";

/// Headings of columns that hold one data byte each, before the number.
const DATA_BYTE_PREFIXES: [&str; 3] = ["data", "byte", "b"];

impl Role {
    /// The word that the user writes, and messages use.
    pub(super) fn word(self) -> &'static str {
        TABLE[self as usize].1
    }

    /// The role of a word.
    pub(super) fn from_word(word: &str) -> Option<Self> {
        TABLE.iter().find(|(_, known, _)| *known == word).map(|&(role, ..)| role)
    }

    /// All words, for a message.
    pub(super) fn words() -> String {
        TABLE.map(|(_, word, _)| word).join(", ")
    }
}

/// How the numbers of a piece are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Form {
    Unit(TimeUnit),
    Base(Base),
}

impl Form {
    /// The form by the word behind a role's colon, or at the end of a heading.
    pub(super) fn of(role: Role, word: &str) -> Option<Self> {
        match (role, word) {
            (Role::Time, _) => TimeUnit::from_sign(word).map(Self::Unit),
            (Role::Id | Role::Data, "hex") => Some(Self::Base(Base::Hex)),
            (Role::Id | Role::Data, "dec") => Some(Self::Base(Base::Decimal)),
            _ => None,
        }
    }

    /// The words that [`Form::of`] understands for a role, for a message.
    pub(super) fn words(role: Role) -> &'static str {
        match role {
            Role::Time => "s, ms, us or ns",
            Role::Id | Role::Data => "hex or dec",
            _ => "nothing",
        }
    }
}

/// What a heading is known as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Meaning {
    Whole(Role),
    DataByte(u8),
}

/// The heading in lower case, with letters and digits only: so that `CAN ID`, `can_id` and `CanId` are one.
pub(super) fn squeezed(heading: &str) -> String {
    heading.chars().filter(|letter| letter.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

/// What a heading means, with the form at its end: `time_ms`, `Time [ms]`, `id hex`, `data3`.
pub(super) fn meaning(heading: &str) -> Option<(Meaning, Option<Form>)> {
    let lower = heading.to_lowercase();
    let words: Vec<&str> =
        lower.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    if let Some(meaning) = plain_meaning(&words.concat()) {
        return Some((meaning, None));
    }
    let (suffix, before) = words.split_last()?;
    let meaning = plain_meaning(&before.concat())?;
    let role = match meaning {
        Meaning::Whole(role) => role,
        Meaning::DataByte(_) => Role::Data,
    };
    Some((meaning, Some(Form::of(role, suffix)?)))
}

fn plain_meaning(name: &str) -> Option<Meaning> {
    if let Some((role, ..)) = TABLE.iter().find(|(_, _, headings)| headings.contains(&name)) {
        return Some(Meaning::Whole(*role));
    }
    let number = DATA_BYTE_PREFIXES.iter().find_map(|prefix| name.strip_prefix(prefix))?;
    let is_number = matches!(number.len(), 1 | 2) && number.bytes().all(|byte| byte.is_ascii_digit());
    let number: u8 = number.parse().ok().filter(|_| is_number)?;
    (number <= 64).then_some(Meaning::DataByte(number))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_in_the_order_of_the_roles() {
        for (index, (role, word, _)) in TABLE.iter().enumerate() {
            assert_eq!((*role as usize, Role::from_word(word)), (index, Some(*role)));
        }
    }

    #[test]
    fn common_headings() {
        let whole = |role, form| Some((Meaning::Whole(role), form));
        let (seconds, hex) = (Some(Form::Unit(TimeUnit::Seconds)), Some(Form::Base(Base::Hex)));
        assert_eq!(meaning("time"), whole(Role::Time, None));
        assert_eq!(meaning("Time [s]"), whole(Role::Time, seconds));
        assert_eq!(meaning("TIME_S"), whole(Role::Time, seconds));
        assert_eq!(meaning("Timestamp(\u{B5}s)"), whole(Role::Time, Some(Form::Unit(TimeUnit::Microseconds))));
        assert_eq!(meaning("CAN ID (hex)"), whole(Role::Id, hex));
        assert_eq!(meaning("Identifier"), whole(Role::Id, None));
        assert_eq!(meaning("data_hex"), whole(Role::Data, hex));
        assert_eq!(meaning("crc_ok"), whole(Role::ChecksumGood, None));
        assert_eq!(meaning("data[63]"), Some((Meaning::DataByte(63), None)));
        assert_eq!(meaning("b0 hex"), Some((Meaning::DataByte(0), hex)));
        for unknown in ["", "flag", "pid_hex", "frame_id", "data65", "b", "time_hex", "note", "length_s"] {
            assert_eq!(meaning(unknown), None, "{unknown}");
        }
    }
}
