//! `marks j1939`: the not-available and error values of SAE J1939-71, by width.

use wirelore_bits::{Encoding, NumberKind};
use wirelore_model::{RawSpan, RawValue, Role, Signal};

use super::states::Fit;

/// The patterns that say "error" and "not available" in a parameter of some bits.
///
/// SAE J1939-71 table 1 has those of 8, 16 and 32 bits, and of the 2-bit states; other widths follow the same idea: all ones, and one less.
fn patterns(width: u8) -> Option<(RawSpan, RawSpan)> {
    let all = u64::MAX >> (64 - u32::from(width.clamp(1, 64)));
    let run = |first, last| RawSpan { first: RawValue::Bits(first), last: RawValue::Bits(last) };
    match width {
        0 | 1 => None,
        16 | 32 => {
            // The first byte tells: 0xFE.. is an error, 0xFF.. is not available.
            let step = 1 << (width - 8);
            Some((run(0xFE * step, 0xFF * step - 1), run(0xFF * step, all)))
        }
        _ => Some((run(all - 1, all - 1), run(all, all))),
    }
}

/// Gives a signal the values, unless it says for itself which of its values are no readings.
pub(crate) fn add(signal: &mut Signal, encoding: Encoding, states: Option<&Fit>) {
    let is_plain = matches!(encoding.kind(), NumberKind::Unsigned | NumberKind::Signed | NumberKind::SignMagnitude);
    if !is_plain || signal.role != Role::Value || !signal.absent.is_empty() || !signal.fault.is_empty() {
        return;
    }
    let Some((fault, absent)) = patterns(encoding.width()) else { return };
    let is_free = |span: RawSpan| states.is_none_or(|fit| fit.meaning_of(span, encoding).is_none());
    if is_free(fault) {
        signal.fault.push(fault);
    }
    if is_free(absent) {
        signal.absent.push(absent);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: SAE J1939-71, table 1 (from memory).
    #[test]
    fn the_values_of_the_standard() {
        let shown = |width| patterns(width).map(|(fault, absent)| (fault.to_string(), absent.to_string()));
        let pair = |fault: &str, absent: &str| Some((fault.to_owned(), absent.to_owned()));
        assert_eq!(shown(1), None);
        assert_eq!(shown(2), pair("0x2", "0x3"));
        assert_eq!(shown(4), pair("0xE", "0xF"));
        assert_eq!(shown(8), pair("0xFE", "0xFF"));
        assert_eq!(shown(16), pair("0xFE00..0xFEFF", "0xFF00..0xFFFF"));
        assert_eq!(shown(32), pair("0xFE000000..0xFEFFFFFF", "0xFF000000..0xFFFFFFFF"));
        assert_eq!(shown(64), pair("0xFFFFFFFFFFFFFFFE", "0xFFFFFFFFFFFFFFFF"));
    }
}
