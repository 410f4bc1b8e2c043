//! Payload lengths of frames and pages.

use wirelore_bits::payload_lengths::is_can_fd_length;
use wirelore_model::{LengthRange, NetworkKind};

use crate::syntax::tree::{BodyItem, BodyKind, Integer};
use crate::{Diagnostic, FileId, Rule};

use super::messages::{Messages, at};

/// How long a payload can be, whatever is said of its length.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Bounds {
    /// The kind of network; `None` for a message that is carried in several of its frames, and where it is not known.
    pub(crate) kind: Option<NetworkKind>,
    /// The most bytes, of a frame or of a message; `None` where that is not known.
    pub(crate) longest: Option<u32>,
}

impl Bounds {
    /// What is left behind so many bytes, for a part of a payload: no frame consists of it alone.
    pub(crate) fn of_part(self, base: u32) -> Self {
        Self { kind: None, longest: self.longest.map(|longest| longest.saturating_sub(base)) }
    }
}

/// A length that counts from a byte, counted from the beginning of the payload.
pub(crate) fn behind(length: LengthRange, base: u32) -> LengthRange {
    LengthRange { min: length.min.saturating_add(base), max: length.max.saturating_add(base) }
}

/// Reads the `length` statements of one frame or page, of which there should be at most one.
pub(crate) fn read(
    statements: &[&BodyItem],
    bounds: Bounds,
    file: FileId,
    messages: &mut Messages,
) -> Option<LengthRange> {
    let (first, others) = statements.split_first()?;
    for other in others {
        messages.push(
            Diagnostic::new(Rule::RepeatedClause, at(file, other.span), "the length is stated twice")
                .here("the second time")
                .remark(at(file, first.span), "the first time")
                .help("for a length that varies write `length LEAST..GREATEST`"),
        );
    }
    let BodyKind::Length(length) = &first.kind else { return None };
    range(&length.first, &length.last, bounds, file, messages)
}

fn range(min: &Integer, max: &Integer, bounds: Bounds, file: FileId, messages: &mut Messages) -> Option<LengthRange> {
    let site = at(file, min.span.to(max.span));
    let (low, high) = (min.value, max.value);
    if high < low {
        let turned = format!("{high}..{low}");
        messages.push(
            Diagnostic::new(Rule::LengthUpsideDown, site, format!("this length goes from {low} down to {high}"))
                .here("the smaller number comes first")
                .help(format!("write `length {turned}`"))
                .fix(site, turned),
        );
        return None;
    }
    let longest = bounds.longest.unwrap_or(u32::MAX);
    if low < 0 || high > i128::from(longest) {
        messages.push(too_long(if low < 0 { low } else { high }, longest, bounds.kind, at(file, max.span)));
        // Signals are measured against the length as it is written, so that one mistake gives one message.
        let length = |value: i128| u32::try_from(value.max(0)).unwrap_or(u32::MAX);
        return Some(LengthRange { min: length(low), max: length(high) });
    }
    match bounds.kind {
        Some(NetworkKind::CanFd) => [min, max].into_iter().for_each(|length| say_without_code(length, file, messages)),
        Some(NetworkKind::FlexRay) => [min, max].into_iter().for_each(|length| say_odd(length, file, messages)),
        _ => {}
    }
    Some(LengthRange { min: low as u32, max: high as u32 })
}

fn too_long(length: i128, longest: u32, kind: Option<NetworkKind>, site: crate::Site) -> Diagnostic {
    let (what, carrier) = match kind {
        Some(kind) => ("frame", format!("a `{}` network", kind.keyword())),
        None => ("message", "what carries it".to_owned()),
    };
    let message = Diagnostic::new(Rule::FrameTooLong, site, format!("a {what} cannot have {length} bytes"))
        .here(format!("{carrier} carries 0 to {longest}"));
    match kind {
        Some(NetworkKind::Can) if (0..=64).contains(&length) => {
            message.help("up to 64 bytes take CAN FD: is the network a `can_fd` one?")
        }
        _ => message,
    }
}

/// FlexRay 2.1A (from memory): the header tells the length in words of two bytes.
fn say_odd(length: &Integer, file: FileId, messages: &mut Messages) {
    if length.value % 2 == 0 {
        return;
    }
    let (bytes, longer) = (length.value, length.value + 1);
    messages.push(
        Diagnostic::new(Rule::LengthWithoutCode, at(file, length.span), format!("no FlexRay frame has {bytes} bytes"))
            .here("the frame tells its length in words of two bytes")
            .help(format!("write `length {longer}`: the rest is filled up")),
    );
}

fn say_without_code(length: &Integer, file: FileId, messages: &mut Messages) {
    let Ok(bytes) = u8::try_from(length.value) else { return };
    if is_can_fd_length(bytes) {
        return;
    }
    let shorter = (0..bytes).rev().find(|&length| is_can_fd_length(length)).unwrap_or(0);
    let longer = (bytes..=64).find(|&length| is_can_fd_length(length)).unwrap_or(64);
    messages.push(
        Diagnostic::new(Rule::LengthWithoutCode, at(file, length.span), format!("no CAN FD frame has {bytes} bytes"))
            .here(format!("beyond 8 bytes there are only 12, 16, 20, 24, 32, 48 and 64 (ISO 11898-1); next to this {shorter} and {longer}"))
            .help(format!("write `length {longer}`: controllers fill the rest up")),
    );
}
