//! End-to-end protection: from the tree to the signal that stands for it.

use wirelore_bits::NumberKind;
use wirelore_bits::e2e::{DataId, E2eError, LISTED_IDS, Part, Profile};
use wirelore_model::{ByteSpan, Content, Protection, Role, Scaling, Shown, Signal};

use crate::syntax::tree::{self, Integer};
use crate::{Diagnostic, Rule, Site, Spanned};

use super::checksum::byte_run;
use super::flat::Scoped;
use super::label::label;
use super::messages::suggest;
use super::place::Placer;

/// The signal that stands for a protection: its counter. `None` where something is wrong with it, and a message says so.
pub(crate) fn read(
    scoped: &Scoped<'_, tree::Signal<'_>>,
    written: &Spanned<tree::Protection<'_>>,
    placer: &mut Placer<'_>,
) -> Option<Signal> {
    if placer.scope.page.is_some() {
        let site = placer.scope.site(scoped.item.span);
        let message = Diagnostic::new(Rule::UnexpectedWord, site, "a page has no `protected by` of its own");
        placer.messages.push(message.here("belongs to the frame").help(
            "a protection covers the whole frame: move it to the frame's own statements, outside all inner braces",
        ));
        return None;
    }
    let protection = protection(written, placer)?;
    let (_, field) = protection.parts().find(|(part, _)| *part == Part::Counter)?;
    Some(Signal {
        label: label(&scoped.tree.head, &scoped.item.front),
        page: None,
        content: Content::Number { field, kind: NumberKind::Unsigned },
        scaling: Scaling::Raw,
        unit: None,
        states: None,
        range: None,
        absent: Vec::new(),
        fault: Vec::new(),
        role: Role::Protection(Box::new(protection)),
        shown: Shown::Decimal,
    })
}

/// The message for a second protection of a frame.
pub(crate) fn twice(first: Site, second: Site) -> Diagnostic {
    Diagnostic::new(Rule::ProtectionTwice, second, "this frame is protected twice")
        .here("the second protection")
        .remark(first, "the first one")
        .help("a frame has one protection; keep the one that its sender calculates")
}

fn protection(written: &Spanned<tree::Protection<'_>>, placer: &mut Placer<'_>) -> Option<Protection> {
    let written_at = placer.scope.site(written.span);
    let written = &written.value;
    let profile = profile(written, placer);
    let over = match &written.over {
        Some(run) => byte_run(run, placer),
        None => Some(ByteSpan { first: 0, last: None }),
    };
    let header = match &written.at {
        Some(at) => placer.byte(at.value).map(|byte| byte + placer.scope.base),
        None => over.map(|over| over.first),
    };
    let (profile, over, header) = (profile?, over?, header?);
    let data_id = data_id(written, profile, written_at, placer);
    let most_rise = most_rise(written.delta.as_ref(), profile, placer);
    let protection = Protection { profile, data_id: data_id?, header, over, most_rise: most_rise? };
    check_place(&protection, written, written_at, placer)?;
    Some(protection)
}

/// The profile of a number and a mode.
fn profile(written: &tree::Protection<'_>, placer: &mut Placer<'_>) -> Option<Profile> {
    let (number, mode) = (written.profile.value, written.mode.as_ref());
    let of_number: Vec<Profile> =
        Profile::ALL.into_iter().filter(|profile| i128::from(profile.number()) == number).collect();
    let modes: Vec<&str> = of_number.iter().filter_map(|profile| profile.mode()).collect();
    let found = of_number.iter().find(|profile| profile.mode() == mode.map(|mode| &*mode.value));
    if let Some(found) = found {
        return Some(*found);
    }
    let say = |span, text: String| Diagnostic::new(Rule::UnknownProfile, placer.scope.site(span), text);
    let message = match mode {
        _ if of_number.is_empty() => {
            let mut numbers: Vec<String> = Profile::ALL.map(|profile| profile.number().to_string()).into();
            numbers.dedup();
            say(written.profile.span, format!("there is no profile {number} that can be checked"))
                .here("not known")
                .help(format!("these are known: {}", numbers.join(", ")))
        }
        Some(mode) if modes.is_empty() => {
            say(mode.span, format!("profile {number} mixes its data id in in one way only")).here("needless")
        }
        Some(mode) => {
            let meant = placer.messages.nearest(&mode.value, modes.iter().copied());
            let text = format!("profile {number} has no mode `{}`", mode.value);
            suggest(say(mode.span, text), &meant).here("not known").help(format!("its modes are {}", modes.join(", ")))
        }
        None => say(written.profile.span, format!("profile {number} mixes its data id in in several ways"))
            .here("which one?")
            .help(format!("write one of its modes behind the number: {}", modes.join(", "))),
    };
    placer.messages.push(message);
    None
}

/// The data id, or the list of them.
fn data_id(
    written: &tree::Protection<'_>,
    profile: Profile,
    written_at: Site,
    placer: &mut Placer<'_>,
) -> Option<DataId> {
    let number = profile.number();
    let wanted = if profile.takes_list() { LISTED_IDS } else { 1 };
    let Some(ids) = &written.data_ids else {
        let help = if profile.takes_list() {
            "write the 16 of them, one for each count: `data ids 0x01, 0x02, ...`"
        } else {
            "write it behind the profile: `, data id 0x123`"
        };
        let message = Diagnostic::new(Rule::DataIdWrong, written_at, format!("profile {number} needs a data id"));
        placer.messages.push(message.here("without one").help(help));
        return None;
    };
    if ids.value.len() != wanted {
        let have =
            if wanted == 1 { "one data id".to_owned() } else { format!("{wanted} data ids, one for each count") };
        let message = format!("profile {number} has {have}, and here are {}", ids.value.len());
        let site = placer.scope.site(ids.span);
        placer
            .messages
            .push(Diagnostic::new(Rule::DataIdWrong, site, message).here(format!("{} given", ids.value.len())));
        return None;
    }
    let numbers: Vec<u32> = ids.value.iter().filter_map(|id| one_id(id, profile, placer)).collect();
    let whole: Vec<u8> = numbers.iter().map(|id| *id as u8).collect();
    match (numbers.as_slice(), <[u8; LISTED_IDS]>::try_from(whole)) {
        ([only], _) if wanted == 1 => Some(DataId::One(*only)),
        (_, Ok(list)) => Some(DataId::List(list)),
        _ => None,
    }
}

fn one_id(id: &Integer, profile: Profile, placer: &mut Placer<'_>) -> Option<u32> {
    let most = profile.greatest_id();
    let fits = u32::try_from(id.value).ok().filter(|id| *id <= most);
    if fits.is_none() {
        let mode = profile.mode().map_or(String::new(), |mode| format!(" {mode}"));
        let shown = if id.value < 0 { id.value.to_string() } else { format!("0x{:X}", id.value) };
        let message = format!("profile {}{mode} has no data id {shown}", profile.number());
        let message = Diagnostic::new(Rule::DataIdWrong, placer.scope.site(id.span), message);
        placer.messages.push(message.here(format!("goes from 0 to 0x{most:X}")));
    }
    fits
}

/// How far the count may rise: by 1 where nothing is said.
fn most_rise(written: Option<&Integer>, profile: Profile, placer: &mut Placer<'_>) -> Option<u32> {
    let Some(written) = written else { return Some(1) };
    let most = profile.last_count();
    let fits = u32::try_from(written.value).ok().filter(|rise| (1..=most).contains(rise));
    if fits.is_none() {
        let message = format!("the count cannot rise by up to {}", written.value);
        let message = Diagnostic::new(Rule::DeltaImpossible, placer.scope.site(written.span), message);
        placer.messages.push(
            message
                .here(format!("goes from 1 to {most}"))
                .help("1: no message may be lost; 3: two in a row may (MaxDeltaCounter of the standard)"),
        );
    }
    fits
}

/// Checks that the header lies among the bytes that are covered, and at their front where the profile wants it there.
fn check_place(
    protection: &Protection,
    written: &tree::Protection<'_>,
    written_at: Site,
    placer: &mut Placer<'_>,
) -> Option<()> {
    let Protection { profile, over, header, .. } = protection;
    let counting = placer.scope.settings.counting;
    let (first, last) = (counting.byte(*header), counting.byte(protection.header_end() - 1));
    let site = written.at.as_ref().map_or(written_at, |at| placer.scope.site(at.span));
    let message = |text: String| Diagnostic::new(Rule::ProtectionPlace, site, text);
    let is_outside = *header < over.first || over.last.is_some_and(|last| protection.header_end() > last + 1);
    let message = if is_outside {
        let mut message =
            message(format!("the header of profile {} is not all among the protected bytes", profile.number()))
                .here(format!("bytes {first} to {last}"))
                .help("correct `at byte` or `over bytes`: a protection covers its own header");
        if let Some(run) = &written.over {
            message = message.remark(placer.scope.site(run.span), "what is protected");
        }
        message
    } else {
        match protection.e2e() {
            Ok(_) => return Some(()),
            Err(E2eError::NotAtTheFront) => {
                message(format!("the header of profile {} stands at the front", profile.number()))
                    .here(format!("byte {first}"))
                    .help("leave `at byte` out; a header of this kind further on is profile 22")
            }
            Err(error) => message(error.to_string()).here("cannot be"),
        }
    };
    placer.messages.push(message);
    None
}
