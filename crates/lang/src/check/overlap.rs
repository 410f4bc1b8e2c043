//! Do two signals that can be there at once share a bit?
//!
//! A map of the taken bits is kept for each page. A page's signals are compared with those around it; the pages of one switch exclude
//! each other; pages of different switches are compared only where the maps of the whole switches meet.

use wirelore_bits::BitPosition;
use wirelore_model::{PageId, SignalId};

use crate::resolve::Resolver;
use crate::resolve::contents::Contents;
use crate::resolve::settings::Counting;
use crate::{Diagnostic, Rule, Site};

use super::occupancy::Bits;
use super::pages::Conditions;

/// How far an open end reaches where nothing says how long the payload can be, as in a layout that no frame uses.
const USUAL_BYTES: u32 = 64;

/// After so many overlaps in one frame the rest is not worth a look.
const MOST_TOLD: usize = 200;

/// Something that takes bits.
struct Occupant<'a> {
    name: &'a str,
    page: Option<PageId>,
    bits: Bits,
    site: Site,
    via: Option<Site>,
    counting: Counting,
}

struct Finder<'a, 'b> {
    occupants: Vec<Occupant<'a>>,
    /// The occupants of the frame itself, then of each page.
    by_page: Vec<Vec<usize>>,
    /// The bits of the frame itself, then of each page.
    own: Vec<Bits>,
    conditions: &'b Conditions,
    told: usize,
}

/// Looks for overlaps in a frame of so many bytes at most; none of a signal that is known to stand in a wrong place.
pub(crate) fn check(
    contents: &Contents<'_>,
    conditions: &Conditions,
    (longest, misplaced): (Option<u32>, Option<SignalId>),
    resolver: &mut Resolver<'_, '_>,
) {
    let longest = longest.unwrap_or(USUAL_BYTES);
    let pages = contents.frame.pages.len();
    if pages == 0 && is_free(contents, longest) {
        return;
    }
    let occupants = occupants(contents, longest, misplaced);
    let mut finder = Finder {
        occupants,
        by_page: vec![Vec::new(); pages + 1],
        own: vec![Bits::default(); pages + 1],
        conditions,
        told: 0,
    };
    finder.on_one_page(resolver);
    finder.with_pages_around(contents, resolver);
    finder.between_switches(contents, resolver);
}

/// Whether nothing overlaps in a frame without pages, which is the common case.
fn is_free(contents: &Contents<'_>, longest: u32) -> bool {
    let length = contents.frame.length.map_or(longest, |length| length.max);
    let mut taken = Bits::default();
    let mut is_new = |bits: Bits| {
        let is_new = !taken.meets(&bits);
        taken.add(&bits);
        is_new
    };
    contents.frame.signals.iter().all(|signal| is_new(Bits::of_signal(signal, length)))
        && contents.areas.iter().all(|area| is_new(Bits::of_fields(&area.fields)))
}

fn occupants<'a>(contents: &'a Contents<'_>, longest: u32, misplaced: Option<SignalId>) -> Vec<Occupant<'a>> {
    let length = |page| contents.length_on(page).map_or(longest, |length| length.max);
    // What sticks out of its element is told elsewhere.
    let placed = (0..).map(SignalId).zip(contents.frame.signals.iter().zip(&contents.origins));
    let placed = placed.filter(|(id, _)| Some(*id) != misplaced).map(|(_, signal)| signal);
    let certain = placed.filter(|(signal, origin)| {
        !origin.is_uncertain && origin.element.as_ref().is_none_or(|element| signal.needed_bytes() <= element.end)
    });
    let signals = certain.map(|(signal, origin)| Occupant {
        name: &signal.label.name,
        page: signal.page,
        bits: Bits::of_signal(signal, length(signal.page)),
        site: origin.site(),
        via: origin.via,
        counting: origin.counting,
    });
    let areas = contents.areas.iter().map(|area| Occupant {
        name: if area.is_unused { "unused" } else { "unknown" },
        page: area.page,
        bits: Bits::of_fields(&area.fields),
        site: area.site,
        via: None,
        counting: area.counting,
    });
    signals.chain(areas).collect()
}

/// The position of a page in lists that begin with the frame itself.
fn slot(page: Option<PageId>) -> usize {
    page.map_or(0, |page| page.index() + 1)
}

impl Finder<'_, '_> {
    /// Fills the maps, and finds what overlaps on one page.
    fn on_one_page(&mut self, resolver: &mut Resolver<'_, '_>) {
        for index in 0..self.occupants.len() {
            let occupant = &self.occupants[index];
            let slot = slot(occupant.page);
            if self.own[slot].meets(&occupant.bits) && self.told < MOST_TOLD {
                let other =
                    self.by_page[slot].iter().copied().find(|&other| self.occupants[other].bits.meets(&occupant.bits));
                self.say(index, other, resolver);
            }
            self.own[slot].add(&self.occupants[index].bits);
            self.by_page[slot].push(index);
        }
    }

    /// Compares each page with the frame and the pages around it.
    fn with_pages_around(&mut self, contents: &Contents<'_>, resolver: &mut Resolver<'_, '_>) {
        let pages = &contents.frame.pages;
        for (page, index) in pages.iter().zip(1..) {
            let mut outer = page.parent;
            loop {
                self.compare(slot(outer), index, resolver);
                let Some(current) = outer else { break };
                outer = pages[current.index()].parent;
            }
        }
    }

    /// Compares pages that stand beside each other in different switches.
    fn between_switches(&mut self, contents: &Contents<'_>, resolver: &mut Resolver<'_, '_>) {
        let pages = &contents.frame.pages;
        let mut inside = self.own.clone();
        for (index, page) in pages.iter().enumerate().rev() {
            let bits = inside[index + 1].clone();
            inside[slot(page.parent)].add(&bits);
        }
        let mut children: Vec<Vec<usize>> = vec![Vec::new(); pages.len() + 1];
        for (index, page) in pages.iter().enumerate() {
            children[slot(page.parent)].push(index);
        }
        for siblings in children {
            let mut switches: Vec<(Bits, Vec<usize>)> = Vec::new();
            let mut last_switch = None;
            for index in siblings {
                if last_switch != Some(pages[index].switch) {
                    switches.push((Bits::default(), Vec::new()));
                    last_switch = Some(pages[index].switch);
                }
                if let Some((bits, members)) = switches.last_mut() {
                    bits.add(&inside[index + 1]);
                    members.push(index);
                }
            }
            self.compare_switches(&switches, &inside, contents, resolver);
        }
    }

    fn compare_switches(
        &mut self,
        switches: &[(Bits, Vec<usize>)],
        inside: &[Bits],
        contents: &Contents<'_>,
        resolver: &mut Resolver<'_, '_>,
    ) {
        let mut before = Bits::default();
        for (index, (bits, members)) in switches.iter().enumerate() {
            if before.meets(bits) {
                let others =
                    switches[..index].iter().filter(|(other, _)| other.meets(bits)).flat_map(|(_, members)| members);
                for &other in others {
                    for &member in members {
                        if inside[other + 1].meets(&inside[member + 1])
                            && !self.compare_trees(other, member, inside, contents, resolver)
                        {
                            return;
                        }
                    }
                }
            }
            before.add(bits);
        }
    }

    /// Compares two pages of different switches and all pages inside them. `false` where it is time to stop.
    fn compare_trees(
        &mut self,
        one: usize,
        other: usize,
        inside: &[Bits],
        contents: &Contents<'_>,
        resolver: &mut Resolver<'_, '_>,
    ) -> bool {
        let pages = &contents.frame.pages;
        let inner = |page: usize| (page + 1..pages.len()).take_while(move |&index| is_inside(pages, index, page));
        for first in std::iter::once(one).chain(inner(one)) {
            if !inside[first + 1].meets(&inside[other + 1]) {
                continue;
            }
            for second in std::iter::once(other).chain(inner(other)) {
                if self.told >= MOST_TOLD {
                    return false;
                }
                if !resolver.budget.compare() {
                    let site = contents.flat.pages[second].site;
                    let message = Diagnostic::new(
                        Rule::ArrayTooLarge,
                        site,
                        "too many pages use the same bits for all of them to be compared",
                    );
                    resolver
                        .messages
                        .push(message.help("describe the pages with fewer switches, or as several frames"));
                    return false;
                }
                if self.own[first + 1].meets(&self.own[second + 1]) && !self.conditions.exclude(first, second) {
                    self.compare(first + 1, second + 1, resolver);
                }
            }
        }
        true
    }

    /// Tells of the signals of the second page that share bits with one of the first.
    fn compare(&mut self, first: usize, second: usize, resolver: &mut Resolver<'_, '_>) {
        if !self.own[first].meets(&self.own[second]) {
            return;
        }
        for position in 0..self.by_page[second].len() {
            let index = self.by_page[second][position];
            let bits = self.occupants[index].bits.clone();
            if self.told >= MOST_TOLD {
                return;
            }
            if bits.meets(&self.own[first]) {
                let other = self.by_page[first].iter().copied().find(|&other| self.occupants[other].bits.meets(&bits));
                self.say(index, other, resolver);
            }
        }
    }

    fn say(&mut self, one: usize, other: Option<usize>, resolver: &mut Resolver<'_, '_>) {
        let Some(other) = other else { return };
        self.told += 1;
        let (one, other) = (&self.occupants[one], &self.occupants[other]);
        // The later one in the text is told.
        let (later, earlier) = if (one.site, one.via) < (other.site, other.via) { (other, one) } else { (one, other) };
        let Some(bit) = later.bits.common(&earlier.bits) else { return };
        resolver.messages.push(message(later, earlier, bit));
    }
}

fn message(later: &Occupant<'_>, earlier: &Occupant<'_>, bit: BitPosition) -> Diagnostic {
    let shown = later.counting.position(bit);
    let text = format!("`{}` and `{}` share bit {shown}", later.name, earlier.name);
    let mut message = Diagnostic::new(Rule::SignalOverlap, later.site, text).here(format!("bit {shown} is taken"));
    if earlier.site == later.site {
        message = match (later.via, earlier.via) {
            (Some(later), Some(earlier)) if later != earlier => {
                message.remark(earlier, "put in here").remark(later, "and here")
            }
            _ => message.help("the elements of an array need a step of at least their width"),
        };
    } else {
        message = message.remark(earlier.site, format!("`{}` takes it", earlier.name));
    }
    if later.page == earlier.page {
        message.help("correct one of the places; bits that change their meaning belong in `when` pages")
    } else {
        message.help("both can be there at once; only pages of one switch, or with conditions that exclude each other, may use the same bits")
    }
}

/// Whether a page lies inside another, however deep.
fn is_inside(pages: &[wirelore_model::Page], index: usize, outer: usize) -> bool {
    let mut page = pages[index].parent;
    while let Some(current) = page {
        if current.index() == outer {
            return true;
        }
        page = pages[current.index()].parent;
    }
    false
}
