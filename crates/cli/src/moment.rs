//! Times, as a person types them and as the output shows them.

use crate::args::TimeBase;
use crate::failure::Failure;

/// Reads a length of time: a number with `s`, `ms`, `us`, `ns` or `min` (seconds where no unit stands).
///
/// # Errors
/// [`Failure::Usage`] with the option's name.
pub(crate) fn parse_time_ns(option: &str, text: &str) -> Result<i64, Failure> {
    let text = text.trim();
    let digits_end = text.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len());
    let (number, unit) = text.split_at(digits_end);
    let scale_ns: i128 = match unit.trim() {
        "s" | "" => 1_000_000_000,
        "ms" => 1_000_000,
        "us" | "µs" => 1_000,
        "ns" => 1,
        "min" => 60_000_000_000,
        _ => return Err(not_a_time(option, text)),
    };
    decimal_times(number, scale_ns).ok_or_else(|| {
        let is_number = number.contains(|c: char| c.is_ascii_digit()) && number.matches('.').count() <= 1;
        if is_number { no_such_time(option, text) } else { not_a_time(option, text) }
    })
}

fn not_a_time(option: &str, text: &str) -> Failure {
    Failure::Usage(format!("{option} \"{text}\" is not a time; write a number with its unit, such as 12.5s or 200ms"))
}

fn no_such_time(option: &str, text: &str) -> Failure {
    Failure::Usage(format!(
        "{option} \"{text}\" is no time that can be counted in whole nanoseconds up to about 292 years"
    ))
}

/// A plain decimal number times a whole scale, if the result is whole and fits.
fn decimal_times(number: &str, scale: i128) -> Option<i64> {
    let (whole, fraction) = number.split_once('.').unwrap_or((number, ""));
    if whole.is_empty() && fraction.is_empty() || whole.len() > 12 || fraction.len() > 12 {
        return None;
    }
    let digits: i128 = format!("{whole}{fraction}").parse().ok()?;
    let product = digits * scale;
    let divisor = 10_i128.pow(fraction.len() as u32);
    if product % divisor != 0 {
        return None;
    }
    i64::try_from(product / divisor).ok()
}

/// Writes times in the base that the user asked for, without allocation.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Clock {
    base: TimeBase,
}

impl Clock {
    pub(crate) fn new(base: TimeBase) -> Self {
        Self { base }
    }

    /// Appends a time; nothing where the recording tells none. The first frame's time is what [`TimeBase::Start`] counts from.
    pub(crate) fn write(self, time_ns: Option<i64>, first_ns: Option<i64>, to: &mut Vec<u8>) {
        let Some(time_ns) = time_ns else { return };
        let start_ns = first_ns.unwrap_or(time_ns);
        match self.base {
            TimeBase::Start => push_seconds(i128::from(time_ns) - i128::from(start_ns), to),
            TimeBase::Recorded => push_seconds(time_ns.into(), to),
            TimeBase::Clock => push_date(time_ns, to),
        }
    }
}

/// Seconds with six digits behind the point, nine where the nanoseconds need them.
fn push_seconds(time_ns: i128, to: &mut Vec<u8>) {
    if time_ns < 0 {
        to.push(b'-');
    }
    let magnitude = time_ns.unsigned_abs();
    let (seconds, rest) = ((magnitude / 1_000_000_000) as u64, (magnitude % 1_000_000_000) as u32);
    push_whole(seconds, 1, to);
    to.push(b'.');
    push_fraction(rest, to);
}

fn push_fraction(rest_ns: u32, to: &mut Vec<u8>) {
    if rest_ns.is_multiple_of(1000) {
        push_whole(u64::from(rest_ns / 1000), 6, to);
    } else {
        push_whole(u64::from(rest_ns), 9, to);
    }
}

/// A whole number with at least so many digits.
fn push_whole(mut number: u64, digits: usize, to: &mut Vec<u8>) {
    let mut text = [b'0'; 20];
    let mut at = text.len();
    while number > 0 || text.len() - at < digits {
        at -= 1;
        text[at] = b'0' + (number % 10) as u8;
        number /= 10;
    }
    to.extend_from_slice(&text[at..]);
}

/// ISO 8601 in UTC: days are turned into a date of the Gregorian calendar by counting from 1 March of year 0, so that the leap day
/// is the last of its year.
fn push_date(time_ns: i64, to: &mut Vec<u8>) {
    const DAY_NS: i64 = 86_400 * 1_000_000_000;
    let (day, of_day_ns) = (time_ns.div_euclid(DAY_NS), time_ns.rem_euclid(DAY_NS) as u64);
    let since_march_0000 = day + 719_468;
    let era = since_march_0000.div_euclid(146_097);
    let day_of_era = since_march_0000.rem_euclid(146_097);
    let year_of_era = (day_of_era - day_of_era / 1_460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month_from_march = (5 * day_of_year + 2) / 153;
    let day_of_month = day_of_year - (153 * month_from_march + 2) / 5 + 1;
    let month = if month_from_march < 10 { month_from_march + 3 } else { month_from_march - 9 };
    let year = year_of_era + era * 400 + i64::from(month <= 2);

    push_whole(year.unsigned_abs(), 4, to);
    to.push(b'-');
    push_whole(month as u64, 2, to);
    to.push(b'-');
    push_whole(day_of_month as u64, 2, to);
    to.push(b'T');
    let seconds = of_day_ns / 1_000_000_000;
    push_whole(seconds / 3600, 2, to);
    to.push(b':');
    push_whole(seconds / 60 % 60, 2, to);
    to.push(b':');
    push_whole(seconds % 60, 2, to);
    to.push(b'.');
    push_fraction((of_day_ns % 1_000_000_000) as u32, to);
    to.push(b'Z');
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(base: TimeBase, times_ns: &[i64]) -> Vec<String> {
        let clock = Clock::new(base);
        times_ns
            .iter()
            .map(|&time_ns| {
                let mut text = Vec::new();
                clock.write(Some(time_ns), times_ns.first().copied(), &mut text);
                String::from_utf8(text).expect("times are ASCII")
            })
            .collect()
    }

    #[test]
    fn typed_times() {
        let ns = |text| parse_time_ns("--from", text).ok();
        assert_eq!(ns("12.5s"), Some(12_500_000_000));
        assert_eq!(ns("200 ms"), Some(200_000_000));
        assert_eq!(ns("40"), Some(40_000_000_000));
        assert_eq!(ns("1.5us"), Some(1_500));
        assert_eq!(ns("2min"), Some(120_000_000_000));
        for bad in ["", "s", "-1s", "1h30", "0.1ns", "99999999999s", ".", "1.2.3s"] {
            assert_eq!(ns(bad), None, "{bad}");
        }
    }

    #[test]
    fn times_count_from_the_first() {
        assert_eq!(written(TimeBase::Start, &[5_000, 1_000_005_000, 4_999]), ["0.000000", "1.000000", "-0.000000001"]);
        assert_eq!(written(TimeBase::Recorded, &[11_063_000]), ["0.011063"]);
    }

    /// Dates: Unix time 951782400 is 29 February 2000, 1700000000 is 14 November 2023 22:13:20 (both by `date -u -d @N` of GNU coreutils).
    #[test]
    fn dates() {
        let texts = written(TimeBase::Clock, &[0, 951_782_400_000_000_000, 1_700_000_000_250_000_000, -1]);
        assert_eq!(
            texts,
            [
                "1970-01-01T00:00:00.000000Z",
                "2000-02-29T00:00:00.000000Z",
                "2023-11-14T22:13:20.250000Z",
                "1969-12-31T23:59:59.999999999Z"
            ]
        );
    }

    #[test]
    fn times_that_cannot_be_counted_are_told_apart_from_what_is_none() {
        let error = |text| parse_time_ns("--from", text).expect_err("no time").to_string();
        let end = "is no time that can be counted in whole nanoseconds up to about 292 years";
        assert_eq!(error("99999999999s"), format!("--from \"99999999999s\" {end}"));
        assert_eq!(error("0.5ns"), format!("--from \"0.5ns\" {end}"));
        for text in ["soon", "1.2.3s", ".", "5 weeks"] {
            assert!(error(text).contains("is not a time; write a number"), "{text}");
        }
    }
}
