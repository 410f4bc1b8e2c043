//! How messages on Ethernet and on single-wire networks are recognised, and what they look like.

use wirelore_model::{Identifier, Nanoseconds, NetworkKind, Telegram, TelegramCheck, TelegramSize};

use crate::syntax::tree::{CheckByte, Integer, Network, Recognition, TelegramClauses};
use crate::{Diagnostic, FileId, Rule, Span};

use super::catalogue::Sourced;
use super::messages::{Messages, at, clause_does_not_fit};

/// Events of SOME/IP have the highest bit of their number set, methods have not.
const FIRST_EVENT: u16 = 0x8000;
/// More bytes in front of the data than this make no header.
const HEADER_BYTES_MAX: u8 = 63;
/// Nobody needs more leading bytes than this to recognise a message.
const LEADING_BYTES_MAX: usize = 64;
/// The messages of DoIP that carry diagnostics, and so the addresses of both sides: ISO 13400-2, payload types 8001 to 8003.
const DIAGNOSTIC_MESSAGES: std::ops::RangeInclusive<u16> = 0x8001..=0x8003;

/// Reads a recognition of such a message. `None` where it makes no sense, and a message says so.
pub(super) fn identifier(recognition: &Recognition<'_>, file: FileId, messages: &mut Messages) -> Option<Identifier> {
    let mut numbers = Numbers { file, messages };
    match recognition {
        Recognition::Service { service, is_event, method, sort } => {
            let service = numbers.of_16_bits(service);
            let method = numbers.method(method, *is_event);
            let message_type = sort.map(crate::syntax::tree::MessageSort::number);
            Some(Identifier::SomeIp { service: service?, method: method?, message_type })
        }
        Recognition::Port { protocol, port } => {
            Some(Identifier::Port { protocol: *protocol, port: numbers.of_16_bits(port)? })
        }
        Recognition::DoIp { payload_type, source, target } => {
            let payload_type = numbers.of_16_bits(payload_type);
            let (source, target) = (numbers.if_stated_16(source.as_ref()), numbers.if_stated_16(target.as_ref()));
            let payload_type = payload_type?;
            numbers.addressed(payload_type, recognition)?;
            Some(Identifier::DoIp { payload_type, source: source?, target: target? })
        }
        Recognition::Telegram { source, target, starts } => {
            let (source, target) = (numbers.if_stated_8(source.as_ref()), numbers.if_stated_8(target.as_ref()));
            numbers.not_too_many(starts)?;
            let starts: Vec<Option<u8>> = starts.iter().map(|byte| numbers.of_8_bits(byte)).collect();
            let starts = starts.into_iter().collect::<Option<Vec<u8>>>()?;
            Some(Identifier::Telegram { source: source?, target: target?, starts })
        }
        _ => None,
    }
}

struct Numbers<'m> {
    file: FileId,
    messages: &'m mut Messages,
}

impl Numbers<'_> {
    fn of_16_bits(&mut self, written: &Integer) -> Option<u16> {
        let number = u16::try_from(written.value).ok();
        if number.is_none() {
            self.too_large(written, u16::MAX.into());
        }
        number
    }

    fn of_8_bits(&mut self, written: &Integer) -> Option<u8> {
        let number = u8::try_from(written.value).ok();
        if number.is_none() {
            self.too_large(written, u8::MAX.into());
        }
        number
    }

    /// `Some(None)` where nothing is stated.
    fn if_stated_16(&mut self, written: Option<&Integer>) -> Option<Option<u16>> {
        written.map_or(Some(None), |written| self.of_16_bits(written).map(Some))
    }

    fn if_stated_8(&mut self, written: Option<&Integer>) -> Option<Option<u8>> {
        written.map_or(Some(None), |written| self.of_8_bits(written).map(Some))
    }

    fn too_large(&mut self, written: &Integer, most: u32) {
        let site = at(self.file, written.span);
        let message = Diagnostic::new(Rule::IdTooLarge, site, format!("{} is no such number", written.value));
        self.messages.push(message.here(format!("0 to {most:#X}")));
    }

    /// Looks whether messages of a payload type tell the addresses that one is to be recognised by.
    fn addressed(&mut self, payload_type: u16, recognition: &Recognition<'_>) -> Option<()> {
        let Recognition::DoIp { source, target, .. } = recognition else { return Some(()) };
        let Some(written) = source.as_ref().or(target.as_ref()) else { return Some(()) };
        if DIAGNOSTIC_MESSAGES.contains(&payload_type) {
            return Some(());
        }
        let text = format!("messages of the type {payload_type:#06X} are not recognised by addresses");
        let message = Diagnostic::new(Rule::RecognitionDoesNotFit, at(self.file, written.span), text);
        self.messages.push(
            message
                .here("only 0x8001 to 0x8003 carry diagnostics, and both addresses (ISO 13400-2)")
                .help("leave the addresses out; where the data hold one, describe it as a signal"),
        );
        None
    }

    fn not_too_many(&mut self, starts: &[Integer]) -> Option<()> {
        let Some(first_too_many) = starts.get(LEADING_BYTES_MAX) else { return Some(()) };
        let text =
            format!("a message is recognised by {} leading bytes at most, not {}", LEADING_BYTES_MAX, starts.len());
        let message = Diagnostic::new(Rule::IdTooLarge, at(self.file, first_too_many.span), text);
        self.messages
            .push(message.here("one byte too many").help("leave out those at the end that tell nothing apart"));
        None
    }

    fn method(&mut self, written: &Integer, is_event: bool) -> Option<u16> {
        let number = self.of_16_bits(written)?;
        if (number >= FIRST_EVENT) == is_event {
            return Some(number);
        }
        let (is, word) = if is_event { ("a method", "method") } else { ("an event", "event") };
        let site = at(self.file, written.span);
        let message =
            Diagnostic::new(Rule::RecognitionDoesNotFit, site, format!("{number:#06X} is the number of {is}"));
        let message = message.here("methods have numbers up to 0x7FFF, events from 0x8000 on");
        self.messages.push(message.help(format!("write `{word} {number:#06X}`")));
        None
    }
}

/// Reads what the messages of a `uart` network look like; `None` where nothing is stated.
pub(super) fn telegram(sourced: &Sourced<'_, Network<'_>>, messages: &mut Messages) -> Option<Telegram> {
    let (file, clauses) = (sourced.file, &sourced.tree.telegram);
    let first = first_clause(clauses)?;
    let kind = sourced.tree.kind?;
    if kind.value != NetworkKind::Uart {
        let text = format!("the form of messages on a `{}` network is fixed", kind.value.keyword());
        let here = "only on a single-wire network it is said like this";
        let remark = (at(file, kind.span), NetworkKind::Uart);
        messages.push(clause_does_not_fit(at(file, first), text, here, remark));
        return None;
    }
    let mut byte = |written: Option<Integer>| {
        let written = written?;
        let number = u8::try_from(written.value).ok().filter(|byte| *byte <= HEADER_BYTES_MAX);
        if number.is_none() {
            let text = format!("byte {} is no place in a header", written.value);
            let message = Diagnostic::new(Rule::OutsideFrame, at(file, written.span), text);
            messages.push(message.here(format!("0 to {HEADER_BYTES_MAX}")));
        }
        number
    };
    let (source_byte, target_byte) = (byte(clauses.source), byte(clauses.target));
    let size = clauses.size.and_then(|size| {
        let (at, counts_from) = (byte(Some(size.value.byte)), byte(Some(size.value.counts_from)));
        Some(TelegramSize { byte: at?, counts_from: counts_from? })
    });
    let check = clauses.check.map(|check| match check.value {
        CheckByte::Xor => TelegramCheck::Xor,
        CheckByte::Sum => TelegramCheck::Sum,
    });
    let gap = clauses.gap.map(|gap| Nanoseconds(gap.value));
    Some(Telegram { source_byte, target_byte, size, check, gap })
}

/// Where the first of the clauses stands; `None` where there is none.
fn first_clause(clauses: &TelegramClauses) -> Option<Span> {
    let TelegramClauses { source, target, size, check, gap } = clauses;
    let spans = [
        source.map(|byte| byte.span),
        target.map(|byte| byte.span),
        size.map(|size| size.span),
        check.map(|check| check.span),
        gap.map(|gap| gap.span),
    ];
    spans.into_iter().flatten().min()
}
