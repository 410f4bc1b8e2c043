//! Checksums: how they are calculated, and over what.

use wirelore_bits::{Crc, CrcError};
use wirelore_model::{ByteSpan, Checksum, ChecksumAlgorithm, CrcRule};

use crate::syntax::tree::{self, ByteIndex, Integer};
use crate::{Diagnostic, Rule, Spanned};

use super::messages::suggest;
use super::place::Placer;
use super::role::Duty;

/// The algorithms and their names in the language.
fn named() -> impl Iterator<Item = (&'static str, ChecksumAlgorithm)> {
    ChecksumAlgorithm::NAMED.into_iter().filter_map(|algorithm| Some((algorithm.name()?, algorithm)))
}

/// Reads a checksum but for the bytes that are mixed in, which may be signals that are not known yet: see [`super::mixed_in`].
pub(crate) fn read(rule: &Spanned<tree::Checksum>, duty: &Duty<'_>, placer: &mut Placer<'_>) -> Option<Checksum> {
    let written = &rule.value;
    let algorithm = algorithm(&written.algorithm, placer);
    let over = covered(written, duty, placer);
    let algorithm = algorithm?;
    let width = duty.encoding.width();
    if width != algorithm.width() {
        let message = format!("`{algorithm}` has {} bits, and this signal has {width}", algorithm.width());
        placer.messages.push(
            Diagnostic::new(Rule::ChecksumWidth, placer.scope.site(written.algorithm.span()), message)
                .here(format!("{} bits", algorithm.width()))
                .remark(
                    placer.scope.site(duty.signal.place.as_ref().map_or(rule.span, |place| place.span)),
                    format!("{width} bits"),
                )
                .help("correct the place, or choose an algorithm of that width"),
        );
        return None;
    }
    let start = start(written.starting.as_ref(), algorithm, placer)?;
    Some(Checksum { algorithm, over: over?, start, first: Vec::new(), then: Vec::new() })
}

fn algorithm(written: &tree::Algorithm, placer: &mut Placer<'_>) -> Option<ChecksumAlgorithm> {
    let name = match written {
        tree::Algorithm::Named(name) => name,
        tree::Algorithm::Crc(parameters) => return crc(parameters, placer).map(ChecksumAlgorithm::Crc),
    };
    if let Some((_, algorithm)) = named().find(|(known, _)| *known == name.value) {
        return Some(algorithm);
    }
    let known: Vec<&str> = named().map(|(name, _)| name).collect();
    let meant = placer.messages.nearest(&name.value, known.iter().copied());
    let message = Diagnostic::new(
        Rule::UnknownChecksum,
        placer.scope.site(name.span),
        format!("there is no checksum called `{}`", name.value),
    );
    placer.messages.push(
        suggest(message, &meant)
            .here("not known")
            .help(format!("these are known: {}", known.join(", ")))
            .help("any other CRC is written with its parameters: `crc width 8 poly 0x1D start 0xFF xor 0xFF`"),
    );
    None
}

/// A CRC by its parameters.
fn crc(written: &Spanned<tree::CrcParameters>, placer: &mut Placer<'_>) -> Option<CrcRule> {
    let parameters = &written.value;
    let whole = |number: Option<&Integer>| number.map_or(Some(0), |number| u64::try_from(number.value).ok());
    let rule = |width| {
        let (poly, start, xor) =
            (whole(Some(&parameters.poly))?, whole(parameters.start.as_ref())?, whole(parameters.xor.as_ref())?);
        Some(CrcRule { width, poly, start, xor, reflected: parameters.reflected })
    };
    let width = u8::try_from(parameters.width.value).unwrap_or(0);
    let problem = match rule(width).map(|rule| (rule, Crc::new(rule.parameters()))) {
        Some((rule, Ok(_))) => return Some(rule),
        Some((_, Err(error @ CrcError::ValueTooWide { .. }))) => error.to_string(),
        Some((_, Err(CrcError::Width { .. }))) => {
            format!("a CRC has 1 to 64 bits and this one would have {}", parameters.width.value)
        }
        None => "the parameters of a CRC are positive and have at most 64 bits".to_owned(),
    };
    let message = Diagnostic::new(Rule::ChecksumWidth, placer.scope.site(written.span), problem);
    placer.messages.push(message.here("no such CRC"));
    None
}

fn start(written: Option<&Integer>, algorithm: ChecksumAlgorithm, placer: &mut Placer<'_>) -> Option<Option<u64>> {
    let Some(written) = written else { return Some(None) };
    let most = u64::MAX >> (64 - u32::from(algorithm.width()));
    match u64::try_from(written.value) {
        Ok(start) if start <= most => Some(Some(start)),
        _ => {
            let message = format!("the start value has more than {} bits", algorithm.width());
            placer.messages.push(
                Diagnostic::new(Rule::ChecksumWidth, placer.scope.site(written.span), message)
                    .here(format!("at most {most:#X}")),
            );
            None
        }
    }
}

/// The payload bytes that a checksum covers.
fn covered(rule: &tree::Checksum, duty: &Duty<'_>, placer: &mut Placer<'_>) -> Option<Vec<ByteSpan>> {
    let mut over = Vec::with_capacity(rule.over.len());
    for run in &rule.over {
        over.extend(covered_run(run, duty, placer));
    }
    (!over.is_empty() && over.len() == rule.over.len()).then_some(over)
}

/// A run of payload bytes in the order in which they are sent.
pub(crate) fn byte_run(run: &Spanned<(ByteIndex, ByteIndex)>, placer: &mut Placer<'_>) -> Option<ByteSpan> {
    let counting = placer.scope.settings.counting;
    let base = placer.scope.base;
    let first = placer.byte(run.value.0)?;
    let last = match run.value.1 {
        ByteIndex::Last(_) if placer.fixed_length.is_none() && !matches!(run.value.0, ByteIndex::Last(_)) => None,
        last => Some(placer.byte(last)?),
    };
    if let Some(last) = last.filter(|last| *last < first) {
        let turned = format!("{}..{}", counting.byte(last), counting.byte(first));
        placer.messages.push(
            Diagnostic::new(
                Rule::EndsUpsideDown,
                placer.scope.site(run.span),
                "a checksum covers bytes in the order in which they are sent",
            )
            .here("runs backwards")
            .help(format!("write `{turned}`")),
        );
        return None;
    }
    Some(ByteSpan { first: first + base, last: last.map(|last| last + base) })
}

fn covered_run(run: &Spanned<(ByteIndex, ByteIndex)>, duty: &Duty<'_>, placer: &mut Placer<'_>) -> Option<ByteSpan> {
    let span = byte_run(run, placer)?;
    let counting = placer.scope.settings.counting;
    let base = placer.scope.base;
    let site = placer.scope.site(run.span);
    let end = span.last.unwrap_or(u32::MAX);
    let Some(own) = duty.field.places().iter().find(|own| span.first <= own.last_byte() && own.first_byte() <= end)
    else {
        return Some(span);
    };
    let byte = counting.byte(own.first_byte().max(span.first).saturating_sub(base));
    placer.messages.push(
        Diagnostic::new(
            Rule::ChecksumCoversItself,
            site,
            format!("this checksum covers byte {byte}, where it sits itself"),
        )
        .here("includes its own place")
        .remark(placer.scope.site(duty.signal.place.as_ref().map_or(run.span, |place| place.span)), "the checksum")
        .help(format!("leave byte {byte} out: `over bytes A..B, C..D` names several runs")),
    );
    None
}
