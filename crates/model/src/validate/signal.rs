//! Checks of a frame's signals.

use wirelore_bits::{Encoding, NumberKind};

use super::flaw::{At, Checked, Flaw, InvalidDescription};
use super::frame::{FittingTables, FrameContext, inside};
use super::general::{refers, signal_name};
use super::{duty, pages, raw};
use crate::{ByteSpan, Content, Curve, Role, Scaling, Shown, Signal, States, TroubleCode};

pub(super) fn check_all(
    context: &FrameContext<'_>,
    frame_limit: u32,
    fitting: &mut FittingTables,
) -> Result<(), InvalidDescription> {
    let frame = context.frame;
    let limits = pages::limits(&frame.pages, frame_limit);
    for signal in &frame.signals {
        one(context, signal, frame_limit, &limits, fitting).at(|| in_words(context, signal))?;
    }
    let mut protections = frame.signals.iter().filter(|signal| signal.protection().is_some());
    if let (Some(_), Some(second)) = (protections.next(), protections.next()) {
        return Err(Flaw::WrongProtection { problem: "the frame has another one already" })
            .at(|| in_words(context, second));
    }
    names(context)
}

fn in_words(context: &FrameContext<'_>, signal: &Signal) -> String {
    format!("frame `{}`, signal `{}`", context.frame.label.name, signal.label.name)
}

/// Checks that signals that can be there together have different names. Sorted by name and by where their pages lie in the tree, a page
/// that is inside another stands right behind it.
fn names(context: &FrameContext<'_>) -> Result<(), InvalidDescription> {
    let mut signals: Vec<_> = context
        .frame
        .signals
        .iter()
        .map(|signal| (&signal.label.name, context.tree.run(signal.page), signal))
        .collect();
    signals.sort_unstable_by(|a, b| a.0.cmp(b.0).then(a.1.start.cmp(&b.1.start)));
    let taken = signals.windows(2).find(|pair| pair[0].0 == pair[1].0 && pair[1].1.start < pair[0].1.end);
    taken.map_or(Ok(()), |pair| Err(Flaw::SignalNameTaken).at(|| in_words(context, pair[1].2)))
}

fn one(
    context: &FrameContext<'_>,
    signal: &Signal,
    frame_limit: u32,
    limits: &[u32],
    fitting: &mut FittingTables,
) -> Checked {
    signal_name(&signal.label)?;
    let limit = match signal.page {
        Some(page) => {
            refers("page", page.0, limits.len())?;
            limits[page.index()]
        }
        None => frame_limit,
    };
    match &signal.content {
        Content::Number { field, kind } => {
            inside(field.needed_bytes(), limit)?;
            let encoding = Encoding::new(*kind, field.width())
                .map_err(|error| Flaw::WrongWidth { width: field.width(), problem: error.to_string() })?;
            number(context, signal, encoding, fitting)?;
            duty::check(context, signal, (field, encoding), limit)
        }
        Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => {
            byte_span(*bytes, limit)?;
            signal.size().map_or(Ok(()), |size| context.counts(size, signal.page))?;
            no_number(signal)
        }
    }
}

fn number(context: &FrameContext<'_>, signal: &Signal, encoding: Encoding, fitting: &mut FittingTables) -> Checked {
    raw::spans(&signal.absent, encoding)?;
    raw::spans(&signal.fault, encoding)?;
    match &signal.scaling {
        Scaling::Curve(curve) => rising(curve)?,
        Scaling::TroubleCode => trouble_code(signal, encoding)?,
        Scaling::Raw | Scaling::Affine(_) => {}
    }
    let is_pattern = encoding.kind() == NumberKind::Unsigned && signal.scaling == Scaling::Raw && signal.unit.is_none();
    if signal.shown == Shown::Hexadecimal && !is_pattern {
        return Err(Flaw::ShownInHex);
    }
    if signal.range.as_ref().is_some_and(|range| range.high < range.low) {
        return Err(Flaw::UpsideDown { what: "range" });
    }
    match &signal.states {
        None => Ok(()),
        Some(States::Own(words)) => raw::words(words, Some(encoding)),
        Some(States::Table(id)) => {
            let tables = &context.description.states;
            refers("table of states", id.0, tables.len())?;
            if !fitting.contains(&(*id, encoding)) {
                raw::words(&tables[id.index()].words, Some(encoding))?;
                fitting.insert((*id, encoding));
            }
            Ok(())
        }
    }
}

/// Checks that text and bytes have nothing that only numbers can have.
fn no_number(signal: &Signal) -> Checked {
    let has = [
        (signal.scaling != Scaling::Raw, "a formula"),
        (signal.unit.is_some(), "a unit"),
        (signal.states.is_some(), "states"),
        (signal.range.is_some(), "a range"),
        (!signal.absent.is_empty(), "absent values"),
        (!signal.fault.is_empty(), "fault values"),
        (signal.role != Role::Value, "the duty of a counter or checksum"),
        (signal.shown != Shown::Decimal, "a way to be shown"),
    ];
    match has.into_iter().find(|(has, _)| *has) {
        Some((_, what)) => Err(Flaw::NumbersOnly { what }),
        None => Ok(()),
    }
}

/// Checks that a trouble code has the bits of one, and nothing that only quantities have.
fn trouble_code(signal: &Signal, encoding: Encoding) -> Checked {
    if encoding.kind() != NumberKind::Unsigned || !TroubleCode::has_width(encoding.width()) {
        let problem = "a trouble code is an unsigned number of 16 or 24 bits".to_owned();
        return Err(Flaw::WrongWidth { width: encoding.width(), problem });
    }
    let has = [
        (signal.unit.is_some(), "a unit"),
        (signal.range.is_some(), "a range"),
        (signal.role != Role::Value, "the duty of a counter or checksum"),
    ];
    match has.into_iter().find(|(has, _)| *has) {
        Some((_, what)) => Err(Flaw::QuantitiesOnly { what }),
        None => Ok(()),
    }
}

fn rising(curve: &Curve) -> Checked {
    let rises = curve.points.len() >= 2 && curve.points.windows(2).all(|pair| pair[0].raw < pair[1].raw);
    if rises { Ok(()) } else { Err(Flaw::WrongCurve) }
}

pub(super) fn byte_span(span: ByteSpan, limit: u32) -> Checked {
    let last = span.last.unwrap_or(span.first);
    if last < span.first {
        return Err(Flaw::UpsideDown { what: "run of bytes" });
    }
    inside(last.saturating_add(1), limit)
}
