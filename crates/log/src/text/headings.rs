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
    Pid,
    Checksum,
    ChecksumKind,
    ParityGood,
    Slot,
    Cycle,
    FlexRayChannel,
    Indicators,
    HeaderCrcGood,
    FrameCrcGood,
    FunctionBlock,
    Instance,
    Function,
    Operation,
    Part,
}

/// How many roles there are.
pub(super) const ROLES: usize = 28;

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
    (Role::Pid, "pid", &["pid", "protectedid", "protectedidentifier"]),
    (Role::Checksum, "checksum", &["checksum"]),
    (Role::ChecksumKind, "checksum_kind", &["checksumkind", "checksumok"]),
    (Role::ParityGood, "parity_good", &["paritygood", "parityok"]),
    (Role::Slot, "slot", &["slot", "slotid", "frameid"]),
    (Role::Cycle, "cycle", &["cycle", "cyclecount"]),
    (Role::FlexRayChannel, "flexray_channel", &["flexraychannel"]),
    (Role::Indicators, "indicators", &["indicators", "indicatorsbin"]),
    (Role::HeaderCrcGood, "header_crc_good", &["headercrcgood", "headercrcok"]),
    (Role::FrameCrcGood, "frame_crc_good", &["framecrcgood", "framecrcok"]),
    (Role::FunctionBlock, "function_block", &["functionblock", "fblock", "fblockid"]),
    (Role::Instance, "instance", &["instance", "instanceid", "inst", "instid"]),
    (Role::Function, "function", &["function", "functionid", "fkt", "fktid"]),
    (Role::Operation, "operation", &["operation", "operationtype", "op", "optype"]),
    (Role::Part, "part", &["part", "telid"]),
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

    /// All of them, in their order.
    pub(super) fn all() -> impl Iterator<Item = Self> {
        TABLE.into_iter().map(|(role, ..)| role)
    }

    /// How its numbers are written where nobody says it (common practice, no source); `None` for what is no such number.
    ///
    /// Identifiers and data bytes in columns of their own are not left to this: they are proved.
    pub(super) fn usual_base(self) -> Option<Base> {
        match self {
            Self::Slot | Self::Cycle | Self::Part => Some(Base::Decimal),
            Self::Id | Self::Data | Self::Pid | Self::Checksum => Some(Base::Hex),
            Self::FunctionBlock | Self::Instance | Self::Function | Self::Operation => Some(Base::Hex),
            _ => None,
        }
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
            (role, "hex") if role.usual_base().is_some() => Some(Self::Base(Base::Hex)),
            (role, "dec") if role.usual_base().is_some() => Some(Self::Base(Base::Decimal)),
            _ => None,
        }
    }

    /// The words that [`Form::of`] understands for a role, for a message.
    pub(super) fn words(role: Role) -> &'static str {
        match role {
            Role::Time => "s, ms, us or ns",
            role if role.usual_base().is_some() => "hex or dec",
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
        assert_eq!(meaning("pid_hex"), whole(Role::Pid, hex));
        assert_eq!(meaning("frame_id"), whole(Role::Slot, None));
        assert_eq!(meaning("FBlock.hex"), whole(Role::FunctionBlock, hex));
        for unknown in ["", "flag", "slot_s", "data65", "b", "time_hex", "note", "length_s"] {
            assert_eq!(meaning(unknown), None, "{unknown}");
        }
    }
}
