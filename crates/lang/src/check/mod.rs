//! The rules that a description is checked by once it has been read, one file per family.
//!
//! What cannot be read at all (an unknown name, ends that are upside down) is told where it is read, in `resolve`. Here is what can be
//! read and makes no sense: bits that overlap, values that cannot occur, frames that nobody could tell apart.

mod addressed;
mod allow;
mod events;
mod frames;
pub(crate) mod hints;
mod ids;
mod lin;
mod meetings;
pub(crate) mod names;
mod networks;
mod occupancy;
mod orders;
mod outside;
mod overlap;
mod pages;
mod rings;
mod rows;
mod runs;
mod schedules;
mod slots;
pub(crate) mod values;
mod wiring;

use crate::resolve::catalogue::Catalogue;
use crate::resolve::contents::Contents;
use crate::resolve::length::Bounds;
use crate::resolve::messages::Messages;
use crate::resolve::{Resolved, Resolver};

pub(crate) use allow::settle;

/// Checks what is between the braces of one frame.
pub(crate) fn contents(contents: &Contents<'_>, bounds: Bounds, resolver: &mut Resolver<'_, '_>) {
    outside::check(contents, bounds, resolver.messages);
    orders::check(contents, resolver.messages);
    let conditions = pages::Conditions::of(contents);
    pages::check(contents, &conditions, resolver.messages);
    let misplaced = rows::check(contents, &conditions, resolver);
    overlap::check(contents, &conditions, (bounds.longest, misplaced), resolver);
}

/// Checks what only shows in the whole.
pub(crate) fn whole(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    names::check(catalogue, messages);
    networks::check(resolved, catalogue, messages);
    ids::check(resolved, messages);
    lin::check(resolved, catalogue, messages);
    schedules::check(resolved, messages);
    slots::check(resolved, catalogue, messages);
    rings::check(resolved, catalogue, messages);
    wiring::check(resolved, catalogue, messages);
    frames::check(resolved, catalogue, messages);
    hints::check(resolved, catalogue, messages);
}

#[cfg(test)]
mod tests;
