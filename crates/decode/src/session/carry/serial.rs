//! Messages of single-wire networks: cut out of bytes with times, or recorded whole.

use std::fmt;

use wirelore_model::{NetworkKind, SeenId, Telegram, TelegramCheck};
use wirelore_transport::uart::{Check, CheckByte, Cutter, Event, Form, GAP_NS, Parts, Size, TelegramForm, UartFault};

use super::{Give, Taken};
use crate::session::sample::Seen;

/// What the messages of a single-wire network look like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct SerialForm {
    form: Form,
    gap_ns: i64,
}

impl SerialForm {
    /// `None` for other kinds of network.
    pub(crate) fn new(kind: NetworkKind, telegram: Option<&Telegram>) -> Option<Self> {
        match kind {
            NetworkKind::Kline => Some(Self { form: Form::Kline, gap_ns: GAP_NS }),
            NetworkKind::Uart => {
                let telegram = telegram.copied().unwrap_or_default();
                let gap_ns = telegram.gap.and_then(|gap| i64::try_from(gap.0).ok()).unwrap_or(GAP_NS);
                Some(Self { form: Form::Telegram(telegram_form(&telegram)), gap_ns })
            }
            _ => None,
        }
    }
}

fn telegram_form(telegram: &Telegram) -> TelegramForm {
    TelegramForm {
        source_byte: telegram.source_byte,
        target_byte: telegram.target_byte,
        size: telegram.size.map(|size| Size { byte: size.byte, counts_from: size.counts_from }),
        check: match telegram.check {
            None => CheckByte::Absent,
            Some(TelegramCheck::Xor) => CheckByte::Xor,
            Some(TelegramCheck::Sum) => CheckByte::Sum,
        },
    }
}

/// The messages of one channel.
#[derive(Debug)]
pub(super) struct Serial {
    form: Form,
    cutter: Cutter,
}

/// What bytes without a message are told by.
const NOBODY: SeenId = SeenId::Telegram { source: None, target: None };

impl Serial {
    pub(super) fn new(form: SerialForm) -> Self {
        Self { form: form.form, cutter: Cutter::new(form.form, form.gap_ns) }
    }

    /// One byte is one of a stream; several are a whole message.
    pub(super) fn take(&mut self, seen: &Seen<'_>, give: &mut dyn Give) -> Taken {
        let SeenId::Telegram { .. } = seen.id else { return Taken::Plain };
        match seen.payload {
            [byte] => self.cutter.byte(seen.time_ns, *byte, &mut |event| tell(event, give)),
            bytes => {
                self.cutter.finish(&mut |event| tell(event, give));
                match self.form.read(bytes) {
                    Ok(parts) => whole(seen.time_ns, bytes, &parts, give),
                    Err(fault) => give.fault(NOBODY, &fault),
                }
            }
        }
        Taken::Carrying
    }

    pub(super) fn finish(&mut self, give: &mut dyn Give) {
        self.cutter.finish(&mut |event| tell(event, give));
    }
}

fn tell(event: Event<'_>, give: &mut dyn Give) {
    match event {
        Event::Message { parts: Parts { check: Check::Absent, source, target, .. }, after_damage: true, .. } => {
            give.fault(SeenId::Telegram { source, target }, &Unproved);
        }
        Event::Message { bytes, parts, last_ns, .. } => whole(last_ns, bytes, &parts, give),
        Event::Damaged { fault, .. } => give.fault(NOBODY, &fault),
    }
}

/// What was searched for among damaged bytes is believed for its check byte alone.
#[derive(Debug, Clone, Copy)]
struct Unproved;

impl fmt::Display for Unproved {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("bytes behind damaged ones look like a message, and no check byte proves it")
    }
}

fn whole(time_ns: Option<i64>, bytes: &[u8], parts: &Parts, give: &mut dyn Give) {
    let id = SeenId::Telegram { source: parts.source, target: parts.target };
    match parts.check {
        Check::Wrong { found, computed } => {
            give.fault(id, &UartFault::CheckWrong { found, computed });
        }
        Check::Right | Check::Absent => give.message(time_ns, id, bytes.get(parts.data.clone()).unwrap_or_default()),
    }
}
