//! Numbers as text: types, patterns, formulas.

use wirelore_bits::Affine;

use crate::classes::Span;

/// Up to here every whole number is a double: 2^53.
const EXACT_LIMIT: u128 = 1 << 53;

/// The narrowest type that holds the numbers between two others.
pub(crate) fn int_type((least, greatest): Span) -> &'static str {
    let unsigned = [("u8", 8), ("u16", 16), ("u32", 32), ("u64", 64)];
    let signed = [("i8", 8), ("i16", 16), ("i32", 32), ("i64", 64)];
    if least >= 0 {
        unsigned.into_iter().find(|(_, bits)| greatest < 1 << bits).map_or("u64", |(name, _)| name)
    } else {
        let fits = |bits: u32| least >= -(1 << (bits - 1)) && greatest < 1 << (bits - 1);
        signed.into_iter().find(|&(_, bits)| fits(bits)).map_or("i64", |(name, _)| name)
    }
}

/// The numbers that such a type has.
pub(crate) fn type_range(int_type: &str) -> Span {
    let bits: u32 = int_type.get(1..).and_then(|bits| bits.parse().ok()).unwrap_or(64);
    if int_type.starts_with('u') { (0, (1 << bits) - 1) } else { (-(1 << (bits - 1)), (1 << (bits - 1)) - 1) }
}

/// A number as people read it: large ones, which mostly are patterns of bits, in hexadecimal.
pub(crate) fn number(number: i128) -> String {
    if number >= 256 { format!("0x{number:X}") } else { number.to_string() }
}

/// A pattern for the numbers of a run.
pub(crate) fn pattern((first, last): Span) -> String {
    if first == last { number(first) } else { format!("{}..={}", number(first), number(last)) }
}

/// Whether disjoint runs hold every number of a type.
pub(crate) fn covers(spans: impl IntoIterator<Item = Span>, int_type: &str) -> bool {
    let (least, greatest) = type_range(int_type);
    let count: i128 = spans.into_iter().map(|(first, last)| last - first + 1).sum();
    count > greatest - least
}

/// A number of such a type as 64 bits, with a sign or without.
pub(crate) fn widened(raw: &str, int_type: &str, wide: &str) -> String {
    match (int_type, wide) {
        _ if int_type == wide => raw.to_owned(),
        (_, "u64") if int_type.starts_with('i') => format!("{raw} as u64"),
        ("u64", "i64") => format!("{raw} as i64"),
        _ => format!("{wide}::from({raw})"),
    }
}

/// 64 bits (`wide`: with a sign or without) as a number of a narrower type.
pub(crate) fn narrowed(value: String, wide: &str, int_type: &str) -> String {
    if wide == int_type { value } else { format!("{value} as {int_type}") }
}

/// How a formula is calculated for every number of a type, so that the only rounding is that of the last operation.
pub(crate) enum Scaled {
    /// As this expression.
    Plain(String),
    /// By the exact arithmetic of the core.
    Wide,
}

/// The value of `raw`, a variable of an integer type.
pub(crate) fn scaled(formula: &Affine, raw: &str, int_type: &str) -> Scaled {
    let (factor, offset) = (formula.factor_numerator(), formula.offset_numerator());
    let denominator = formula.denominator();
    let (least, greatest) = type_range(int_type);
    let at = |raw: i128| raw.checked_mul(factor)?.checked_add(offset).filter(|number| i64::try_from(*number).is_ok());
    let product_fits = |raw: i128| raw.checked_mul(factor).is_some_and(|number| i64::try_from(number).is_ok());
    let is_plain_raw = factor == 1 && offset == 0;
    let numerators = if is_plain_raw { Some((least, greatest)) } else { at(least).zip(at(greatest)) };
    let Some((low, high)) = numerators.filter(|_| is_plain_raw || product_fits(least) && product_fits(greatest)) else {
        return Scaled::Wide;
    };
    // A numerator and a denominator that are doubles are divided with one rounding; a power of two divides without any.
    let largest = low.unsigned_abs().max(high.unsigned_abs());
    let is_exact = largest <= EXACT_LIMIT && denominator <= EXACT_LIMIT;
    let is_power = denominator.is_power_of_two() && denominator <= 1 << 63;
    if !is_exact && !is_power {
        return Scaled::Wide;
    }
    let numerator = if !is_plain_raw {
        format!("({}) as f64", whole(&widened(raw, int_type, "i64"), factor, offset))
    } else if int_type.ends_with("64") {
        format!("{raw} as f64")
    } else {
        format!("f64::from({raw})")
    };
    if denominator == 1 { Scaled::Plain(numerator) } else { Scaled::Plain(format!("{numerator} / {denominator}.0")) }
}

fn whole(raw: &str, factor: i128, offset: i128) -> String {
    let product = match factor {
        1 => raw.to_owned(),
        -1 => format!("-{raw}"),
        _ => format!("{raw} * {factor}"),
    };
    match offset {
        0 => product,
        _ if offset < 0 => format!("{product} - {}", offset.unsigned_abs()),
        _ => format!("{product} + {offset}"),
    }
}

/// A double as a literal.
pub(crate) fn double(value: f64) -> String {
    if value.is_finite() {
        format!("{value:?}")
    } else if value.is_nan() {
        "f64::NAN".to_owned()
    } else {
        format!("{}f64::INFINITY", if value < 0.0 { "-" } else { "" })
    }
}
