//! The bytes of single-wire networks: ten bits each, and what stands around the data.

use wirelore_model::{Network, NetworkKind};

use super::Spread;

/// A start bit, eight data bits, a stop bit, no parity (ISO 14230-1).
pub(crate) const BITS_PER_BYTE: u64 = 10;
/// ISO 14230-2: format, target and source before the data, a check byte behind it; a length byte for more than 63 bytes.
const KLINE_AROUND: u32 = 4;
const KLINE_SHORT_MAX: u32 = 63;
const NS_PER_S: f64 = 1e9;

/// The bits of one message. At least: byte on byte. At most: with the longest pause between two bytes where one is described (as the bits
/// that would have had room in it).
pub(super) fn bits(network: &Network, data_bytes: u32) -> Spread {
    let bytes = u64::from(data_bytes + around(network, data_bytes));
    let least = (bytes * BITS_PER_BYTE) as f64;
    let gap = network.telegram.and_then(|telegram| telegram.gap).zip(network.rate);
    let pauses =
        gap.map_or(0.0, |(gap, rate)| gap.0 as f64 / NS_PER_S * rate.0 as f64 * bytes.saturating_sub(1) as f64);
    Spread::between(least, least + pauses)
}

/// The bytes of a message that are not its data.
fn around(network: &Network, data_bytes: u32) -> u32 {
    if network.kind == NetworkKind::Kline {
        return KLINE_AROUND + u32::from(data_bytes > KLINE_SHORT_MAX);
    }
    let Some(telegram) = network.telegram else { return 0 };
    let bytes = [telegram.source_byte, telegram.target_byte, telegram.size.map(|size| size.byte)];
    let header = bytes.into_iter().flatten().max().map_or(0, |last| u32::from(last) + 1);
    header + u32::from(telegram.check.is_some())
}

#[cfg(test)]
mod tests {
    use wirelore_model::{BitRate, Label, Nanoseconds, Telegram, TelegramCheck, TelegramSize};

    use super::*;

    fn network(kind: NetworkKind, telegram: Option<Telegram>) -> Network {
        let rate = Some(BitRate(10_400));
        Network {
            label: Label::named("line"),
            kind,
            rate,
            data_rate: None,
            telegram,
            flexray: None,
            terminators: Vec::new(),
            star: None,
        }
    }

    /// 10,400 bit/s: 961.5 µs a byte (ISO 14230-2, from memory). Two data bytes make six with header and check byte.
    #[test]
    fn a_question_on_the_k_line() {
        let line = network(NetworkKind::Kline, None);
        assert_eq!(bits(&line, 2), Spread::between(60.0, 60.0));
        assert_eq!(bits(&line, 64).least, 10.0 * 69.0);
        assert!((10.0_f64 / 10_400.0 - 961.5e-6).abs() < 0.05e-6);
    }

    /// Target, length, source, data, check byte, and 1 ms = 10.4 bit times between the bytes.
    #[test]
    fn pauses_count_where_they_are_described() {
        let telegram = Telegram {
            source_byte: Some(2),
            target_byte: Some(0),
            size: Some(TelegramSize { byte: 1, counts_from: 2 }),
            check: Some(TelegramCheck::Xor),
            gap: Some(Nanoseconds(1_000_000)),
        };
        let line = network(NetworkKind::Uart, Some(telegram));
        let spread = bits(&line, 1);
        assert_eq!(spread.least, 50.0);
        assert!((spread.most - (50.0 + 4.0 * 10.4)).abs() < 1e-9);
    }
}
