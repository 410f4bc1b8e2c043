//! Readings and their times in words, as the command shows them.

use std::fmt::{self, Write};

use wirelore_bits::text;

use crate::checks::{Belongs, ChecksumVerdict, CounterVerdict, ProtectionVerdict, Verdict};
use crate::reading::{Reading, Value};
use crate::session::Event;

/// A number as the shortest text that reads back to the same double, whole numbers without a point; texts as they are, bytes as pairs of
/// hexadecimal digits; nothing where there is no value.
impl fmt::Display for Value<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Integer(number) => write!(f, "{number}"),
            Self::Number(number) => write_number(*number, f),
            Self::TroubleCode(code) => f.write_str(code.as_str()),
            Self::Text(text) => f.write_str(text),
            Self::Bytes(bytes) => bytes.iter().enumerate().try_for_each(|(at, byte)| {
                let blank = if at > 0 { " " } else { "" };
                write!(f, "{blank}{byte:02X}")
            }),
            Self::NoReading | Self::SensorFault | Self::NotDigits | Self::BeyondCurve | Self::TooShort => Ok(()),
        }
    }
}

fn write_number(number: f64, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    if !number.is_finite() {
        return f.write_str(match number {
            _ if number.is_nan() => "nan",
            _ if number > 0.0 => "inf",
            _ => "-inf",
        });
    }
    let mut room = [0; text::ROOM_BYTES];
    if let Some(length) = text::decimal(number, &mut room)
        && let Ok(short) = std::str::from_utf8(room.get(..length).unwrap_or_default())
    {
        return f.write_str(short);
    }
    let mut buffer = zmij::Buffer::new();
    let text = buffer.format_finite(number);
    f.write_str(text.strip_suffix(".0").unwrap_or(text))
}

impl Value<'_> {
    /// What there is instead of a number, in words; `None` where there is a value like any other.
    #[must_use]
    pub fn instead(&self) -> Option<&'static str> {
        match self {
            Self::NoReading => Some("no reading"),
            Self::SensorFault => Some("sensor fault"),
            Self::NotDigits => Some("not decimal digits"),
            Self::BeyondCurve => Some("beyond the curve"),
            Self::TooShort => Some("frame too short"),
            Self::Number(number) if number.is_nan() => Some("not a number"),
            Self::Number(number) if number.is_infinite() => Some("infinite"),
            Self::Integer(_) | Self::Number(_) | Self::TroubleCode(_) | Self::Text(_) | Self::Bytes(_) => None,
        }
    }
}

impl Reading<'_> {
    /// The state of the signal in words: why there is no value, the word for its value, and what a check has to say; parts are parted by `; `.
    ///
    /// ```
    /// # use wirelore_decode::{Reading, Value};
    /// let reading = Reading { value: Value::Number(312.5), word: Some("downhill"), outside_range: true, bits: Some(6250) };
    /// assert_eq!(format!("{} ({})", reading.value, reading.state(None)), "312.5 (downhill; outside range)");
    /// ```
    #[must_use]
    pub fn state(&self, verdict: Option<Verdict>) -> impl fmt::Display {
        fmt::from_fn(move |f| self.write_state(verdict, f))
    }

    /// The same into any text; whether anything was written.
    ///
    /// # Errors
    /// What the text says; memory says nothing.
    pub fn write_state(&self, verdict: Option<Verdict>, to: &mut impl Write) -> fmt::Result {
        let range = self.outside_range.then_some("outside range");
        let mut parts_before = false;
        for part in [self.value.instead(), self.word, range].into_iter().flatten() {
            to.write_str(if parts_before { "; " } else { "" })?;
            to.write_str(part)?;
            parts_before = true;
        }
        match verdict {
            Some(verdict) if verdict.is_worth_a_word() => {
                write!(to, "{}{verdict}", if parts_before { "; " } else { "" })
            }
            _ => Ok(()),
        }
    }
}

impl Event<'_> {
    /// How long after the session's first frame it was, in nanoseconds; `None` where the log tells no time.
    #[must_use]
    pub fn since_first_ns(&self) -> Option<i64> {
        self.time_ns?.checked_sub(self.first_time_ns?)
    }

    /// The same as text: seconds with six digits behind the point, nine where the nanoseconds need them; nothing where there is no time.
    #[must_use]
    pub fn seconds(&self) -> impl fmt::Display {
        let since_ns = self.since_first_ns();
        fmt::from_fn(move |f| {
            let Some(since_ns) = since_ns else { return Ok(()) };
            let sign = if since_ns < 0 { "-" } else { "" };
            let (seconds, rest) = (since_ns.unsigned_abs() / 1_000_000_000, since_ns.unsigned_abs() % 1_000_000_000);
            match rest % 1000 {
                0 => write!(f, "{sign}{seconds}.{:06}", rest / 1000),
                _ => write!(f, "{sign}{seconds}.{rest:09}"),
            }
        })
    }
}

impl Verdict {
    /// A count that follows the last one, and the like, need no word.
    fn is_worth_a_word(self) -> bool {
        match self {
            Self::Counter(verdict) => {
                use CounterVerdict::*;
                matches!(verdict, Repeated | Jumped { .. } | OutsideRange)
            }
            Self::Checksum(verdict) => matches!(verdict, ChecksumVerdict::Right | ChecksumVerdict::Wrong { .. }),
            Self::Protection(_) => true,
        }
    }
}

/// What a check has to say; nothing where all is as it should be and nobody needs to know.
impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Counter(CounterVerdict::Repeated) => f.write_str("count repeated"),
            Self::Counter(CounterVerdict::Jumped { by }) => write!(f, "count jumped by {by}"),
            Self::Counter(CounterVerdict::OutsideRange) => f.write_str("not a count"),
            Self::Checksum(ChecksumVerdict::Right) => f.write_str("checksum right"),
            Self::Checksum(ChecksumVerdict::Wrong { expected, .. }) => {
                write!(f, "checksum wrong (the bytes give 0x{expected:02X})")
            }
            Self::Protection(verdict) => write!(f, "{verdict}"),
            Self::Counter(_) | Self::Checksum(_) => Ok(()),
        }
    }
}

/// Frames that it belongs to are named by their data id.
impl fmt::Display for ProtectionVerdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::First | Self::Right => f.write_str("protection right"),
            Self::Repeated => f.write_str("protection right, repeated"),
            Self::Lost { messages } => write!(f, "protection right, {messages} lost before"),
            Self::WrongSequence { rise } => write!(f, "protection wrong in sequence (the count rose by {rise})"),
            Self::NotACount => f.write_str("protection not a count"),
            Self::WrongSum { expected, belongs: None, .. } => {
                write!(f, "protection wrong (the bytes give 0x{expected:02X})")
            }
            Self::WrongSum { expected, belongs: Some(Belongs { data_id, .. }), .. } => {
                write!(f, "protection wrong (the bytes give 0x{expected:02X}, and data id 0x{data_id:X} would fit)")
            }
            Self::WrongDataId { found, .. } => write!(f, "protection of another data id (0x{found:X})"),
            Self::WrongLength { told, is } => {
                write!(f, "protection of another length ({told} bytes told, {is} there)")
            }
            Self::TooShort => f.write_str("protection cut off"),
        }
    }
}

#[cfg(test)]
mod tests {
    use wirelore_log::Channel;
    use wirelore_model::{FrameId, NetworkId, SeenId};

    use super::*;

    #[test]
    fn numbers_are_as_short_as_can_be() {
        let shown = |number: f64| Value::Number(number).to_string();
        for (number, text) in
            [(50.0, "50"), (0.1, "0.1"), (-40.0, "-40"), (1e300, "1e+300"), (0.0, "0"), (5e-324, "5e-324")]
        {
            assert_eq!(shown(number), text);
            assert_eq!(text.parse::<f64>(), Ok(number));
        }
        assert_eq!((shown(f64::NAN), shown(f64::NEG_INFINITY)), ("nan".to_owned(), "-inf".to_owned()));
        assert_eq!(Value::Bytes(&[0, 0x5A, 0xFF]).to_string(), "00 5A FF");
        assert_eq!(Value::NoReading.to_string(), "");
    }

    /// Short decimals are printed without the general printer: the same text all the same.
    #[test]
    fn short_decimals_are_what_the_general_printer_gives() {
        let mut state = 1_u64;
        let (mut room, mut compared) = ([0; text::ROOM_BYTES], 0);
        for round in 0..4_000_000 {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            let raw = (state >> 32) >> (round % 3 * 8);
            let divisor = [1.0, 10.0, 20.0, 100.0, 256.0, 1e3, 1e4, 1024.0, 3.0, 1e6, 1e7, 1e8, 1e12, 1e15][round % 14];
            let number = (raw as f64 - if state & 1 == 0 { 0.0 } else { 65_536.0 }) / divisor;
            let mut buffer = zmij::Buffer::new();
            let general = buffer.format_finite(number);
            if let Some(length) = text::decimal(number, &mut room) {
                assert_eq!(&room[..length], general.strip_suffix(".0").unwrap_or(general).as_bytes(), "{number:e}");
                compared += 1;
            }
        }
        assert!(compared > 2_000_000, "{compared}");
        assert_eq!(Value::Number(-0.0).to_string(), "-0");
    }

    #[test]
    fn states_name_what_there_is_to_say() {
        let reading = Reading { value: Value::NoReading, word: Some("parked"), outside_range: false, bits: None };
        assert_eq!(reading.state(None).to_string(), "no reading; parked");
        let jumped = Verdict::Counter(CounterVerdict::Jumped { by: 3 });
        assert_eq!(reading.state(Some(jumped)).to_string(), "no reading; parked; count jumped by 3");
        let plain = Reading::only(Value::Integer(3));
        assert_eq!(plain.state(Some(jumped)).to_string(), "count jumped by 3");
        assert_eq!(plain.state(None).to_string(), "");
        let words = |verdict| plain.state(Some(verdict)).to_string();
        for silent in [CounterVerdict::First, CounterVerdict::Right, CounterVerdict::Suspended] {
            assert_eq!(words(Verdict::Counter(silent)), "");
            assert_eq!(reading.state(Some(Verdict::Counter(silent))).to_string(), "no reading; parked");
        }
        assert_eq!(words(Verdict::Counter(CounterVerdict::Repeated)), "count repeated");
        assert_eq!(words(Verdict::Counter(CounterVerdict::OutsideRange)), "not a count");
        assert_eq!(words(Verdict::Checksum(ChecksumVerdict::Right)), "checksum right");
        let wrong = ChecksumVerdict::Wrong { expected: 5, found: 6 };
        assert_eq!(words(Verdict::Checksum(wrong)), "checksum wrong (the bytes give 0x05)");
        assert_eq!(words(Verdict::Checksum(ChecksumVerdict::TooShort)), "");
        assert_eq!(words(Verdict::Protection(ProtectionVerdict::First)), "protection right");
        let plain = |value| Reading::only(value).state(None).to_string();
        assert_eq!(plain(Value::Number(f64::NAN)), "not a number");
        assert_eq!(plain(Value::Number(f64::NEG_INFINITY)), "infinite");
        assert_eq!(plain(Value::NotDigits), "not decimal digits");
    }

    #[test]
    fn times_have_six_digits_or_nine() {
        let seconds = |time_ns, first_time_ns| {
            let (network, frame, source, channel) = (NetworkId(0), FrameId(0), None, Channel(0));
            let id = SeenId::Can { id: 1, extended: false };
            Event { time_ns, first_time_ns, network, frame, source, channel, id, payload: &[] }.seconds().to_string()
        };
        for (since_ns, text) in [
            (0, "0.000000"),
            (1_000, "0.000001"),
            (1_999_999_000, "1.999999"),
            (61_000_000_001, "61.000000001"),
            (-1_500_000_000, "-1.500000"),
            (-1, "-0.000000001"),
        ] {
            assert_eq!(seconds(Some(5_000_000_000 + since_ns), Some(5_000_000_000)), text);
        }
        assert_eq!((seconds(None, Some(5)), seconds(Some(5), None)), (String::new(), String::new()));
    }
}
