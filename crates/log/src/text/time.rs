//! Times in cells, exactly to the nanosecond: whole-number arithmetic only.

/// The unit of a number of time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum TimeUnit {
    Seconds,
    Milliseconds,
    Microseconds,
    Nanoseconds,
}

/// Powers of ten, by exponent.
const TEN_TO: [u64; 10] = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000];
const NS_PER_S: i64 = 1_000_000_000;

impl TimeUnit {
    /// The unit by its sign.
    pub(super) fn from_sign(sign: &str) -> Option<Self> {
        match sign {
            "s" | "sec" | "second" | "seconds" => Some(Self::Seconds),
            "ms" | "milliseconds" => Some(Self::Milliseconds),
            "us" | "\u{B5}s" | "\u{3BC}s" | "microseconds" => Some(Self::Microseconds),
            "ns" | "nanoseconds" => Some(Self::Nanoseconds),
            _ => None,
        }
    }

    /// How many decimals of the unit make a nanosecond.
    pub(super) fn decimals(self) -> usize {
        match self {
            Self::Seconds => 9,
            Self::Milliseconds => 6,
            Self::Microseconds => 3,
            Self::Nanoseconds => 0,
        }
    }
}

/// The time in nanoseconds: a number of `unit` with decimals, or a date and time of ISO 8601.
///
/// Digits finer than a nanosecond are cut off. A decimal comma is understood where `decimal_comma` says so.
#[inline]
pub(super) fn time_ns(cell: &[u8], unit: TimeUnit, decimal_comma: bool) -> Option<i64> {
    let (negative, digits) = match cell {
        [b'-', digits @ ..] => (true, digits),
        [b'+', digits @ ..] => (false, digits),
        digits => (false, digits),
    };
    match number_ns(digits, unit.decimals(), decimal_comma) {
        Some(size_ns) if negative => Some(-size_ns),
        Some(size_ns) => Some(size_ns),
        None => date_time_ns(cell),
    }
}

#[inline]
fn number_ns(digits: &[u8], decimals: usize, decimal_comma: bool) -> Option<i64> {
    let mut value = 0_u64;
    let mut rest = digits.iter();
    let mut decimals_left = decimals;
    let mut any = false;
    for &byte in rest.by_ref() {
        let digit = byte.wrapping_sub(b'0');
        if digit > 9 {
            if byte == b'.' || (byte == b',' && decimal_comma) {
                break;
            }
            return None;
        }
        any = true;
        value = value.checked_mul(10)?.checked_add(u64::from(digit))?;
    }
    for &byte in rest {
        let digit = byte.wrapping_sub(b'0');
        if digit > 9 {
            return None;
        }
        any = true;
        if decimals_left > 0 {
            decimals_left -= 1;
            value = value.checked_mul(10)?.checked_add(u64::from(digit))?;
        }
    }
    let size_ns = value.checked_mul(TEN_TO[decimals_left])?;
    if any { i64::try_from(size_ns).ok() } else { None }
}

/// `2026-01-02T03:04:05.678Z`: a blank may stand for the T; without a zone the time is taken as UTC.
#[cold]
fn date_time_ns(cell: &[u8]) -> Option<i64> {
    let (date, time) = cell.split_at_checked(10)?;
    let (&[b'T' | b't' | b' '], time) = time.split_at_checked(1)? else {
        return None;
    };
    let (clock, rest) = time.split_at_checked(8)?;
    let [year, month, day] = three_numbers(date, b'-')?;
    let [hour, minute, second] = three_numbers(clock, b':')?;
    if !(1..=12).contains(&month)
        || !(1..=days_in(year, month)).contains(&day)
        || hour > 23
        || minute > 59
        || second > 60
    {
        return None;
    }
    let (fraction, zone) = match rest {
        [b'.' | b',', digits @ ..] => {
            let length = digits.iter().take_while(|byte| byte.is_ascii_digit()).count();
            digits.split_at(length)
        }
        zone => (&b"0"[..], zone),
    };
    let mut fraction_text = vec![b'.'];
    fraction_text.extend_from_slice(fraction);
    let fraction_ns = number_ns(&fraction_text, TimeUnit::Seconds.decimals(), false)?;
    let seconds = days_since_1970(year, month, day) * 86_400 + hour * 3_600 + minute * 60 + second - zone_s(zone)?;
    seconds.checked_mul(NS_PER_S)?.checked_add(fraction_ns)
}

/// Whether the cell is a time of day without a date: `7:41`, `07:41:17.400`.
pub(super) fn is_time_of_day(cell: &[u8]) -> bool {
    let whole = cell.iter().position(|&byte| matches!(byte, b'.' | b',')).map_or(cell, |mark| &cell[..mark]);
    let parts: Vec<&[u8]> = whole.split(|&byte| byte == b':').collect();
    matches!(parts.len(), 2 | 3)
        && parts.iter().all(|part| matches!(part.len(), 1 | 2) && part.iter().all(u8::is_ascii_digit))
}

/// Three numbers with a mark between them.
fn three_numbers(text: &[u8], mark: u8) -> Option<[i64; 3]> {
    let mut parts =
        text.split(|&byte| byte == mark).map(|digits| super::values::decimal(digits).map(|value| value as i64));
    let numbers = [parts.next()??, parts.next()??, parts.next()??];
    parts.next().is_none().then_some(numbers)
}

/// The zone's distance from UTC in seconds.
fn zone_s(zone: &[u8]) -> Option<i64> {
    let (sign, distance) = match zone {
        b"" | b"Z" | b"z" => return Some(0),
        [b'+', distance @ ..] => (1, distance),
        [b'-', distance @ ..] => (-1, distance),
        _ => return None,
    };
    let digits: Vec<u8> = distance.iter().copied().filter(|&byte| byte != b':').collect();
    let (hours, minutes) = digits.split_at_checked(2)?;
    let minutes = if minutes.is_empty() { 0 } else { super::values::decimal(minutes)? };
    let hours = super::values::decimal(hours)?;
    (hours <= 23 && minutes <= 59).then_some(sign * (hours * 3_600 + minutes * 60) as i64)
}

fn days_in(year: i64, month: i64) -> i64 {
    let is_leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    match month {
        2 if is_leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// Days from 1970-01-01 in the Gregorian calendar. The year is counted from March, so that the leap day is its last.
fn days_since_1970(year: i64, month: i64, day: i64) -> i64 {
    const DAYS_TO_1970: i64 = 719_468;
    let march_year = if month > 2 { year } else { year - 1 };
    let march_month = (month + 9) % 12;
    let leap_days = march_year / 4 - march_year / 100 + march_year / 400;
    365 * march_year + leap_days + (153 * march_month + 2) / 5 + day - 1 - DAYS_TO_1970
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seconds(cell: &str) -> Option<i64> {
        time_ns(cell.as_bytes(), TimeUnit::Seconds, false)
    }

    #[test]
    fn numbers_are_exact() {
        assert_eq!(seconds("0.011063"), Some(11_063_000));
        assert_eq!(seconds("1700000000.250000001"), Some(1_700_000_000_250_000_001));
        assert_eq!(seconds("12"), Some(12_000_000_000));
        assert_eq!(seconds(".5"), Some(500_000_000));
        assert_eq!(seconds("5."), Some(5_000_000_000));
        assert_eq!(seconds("-0.5"), Some(-500_000_000));
        assert_eq!(seconds("0.1234567899"), Some(123_456_789));
        assert_eq!(time_ns(b"12.345678", TimeUnit::Milliseconds, false), Some(12_345_678));
        assert_eq!(time_ns(b"7", TimeUnit::Microseconds, false), Some(7_000));
        assert_eq!(time_ns(b"7.9", TimeUnit::Nanoseconds, false), Some(7));
        assert_eq!(time_ns(b"0,125", TimeUnit::Seconds, true), Some(125_000_000));
    }

    #[test]
    fn what_is_no_number() {
        for cell in ["", ".", "-", "1.2.3", "0,125", "1e3", "1.7E+09", "99999999999", "99999999999999999999999"] {
            assert_eq!(seconds(cell), None, "{cell}");
        }
    }

    #[test]
    fn times_of_day() {
        for cell in ["07:41:17.400", "7:41", "23:59:59,5", "7:41:17"] {
            assert!(is_time_of_day(cell.as_bytes()), "{cell}");
        }
        for cell in ["", "7", "7.5", "2023-11-14T22:13:20Z", "1:2:3:4", "a:41", "007:41", ":"] {
            assert!(!is_time_of_day(cell.as_bytes()), "{cell}");
        }
    }

    // Source: ISO 8601-1 for the form; the counts of seconds are worked out by hand from the Gregorian calendar.
    #[test]
    fn dates() {
        assert_eq!(seconds("1970-01-01T00:00:00Z"), Some(0));
        assert_eq!(seconds("2023-11-14T22:13:20.25Z"), Some(1_700_000_000_250_000_000));
        assert_eq!(seconds("2023-11-14 23:13:20,25+01:00"), Some(1_700_000_000_250_000_000));
        assert_eq!(seconds("2000-02-29T00:00:00"), Some(951_782_400_000_000_000));
        assert_eq!(seconds("1969-12-31T23:59:59.5Z"), Some(-500_000_000));
        for cell in [
            "2023-02-29T00:00:00Z",
            "2023-13-01T00:00:00Z",
            "2023-01-01T24:00:00Z",
            "2023-01-01",
            "2023-01-01T00:00:00X",
        ] {
            assert_eq!(seconds(cell), None, "{cell}");
        }
    }
}
