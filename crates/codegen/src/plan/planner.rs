//! Groups made out of the signals and pages of a frame.

use std::collections::HashMap;

use wirelore_model::{Element, Frame, Identifier, LengthRange, Page, PageId, Signal, SignalId, Test};

use super::{Context, Group, Mode, Pages, PlaceOf, Repeat, Switch, stated};
use crate::names::{Names, camel, snake};
use crate::signal::Field;

/// So many values of a selector are named where a page is called by them.
const VALUES_NAMED: usize = 2;

/// The names of pages are made of no more letters than that.
const LETTERS_MAX: usize = 28;

/// The methods that groups have, and the variables that their methods read fields beside.
const METHODS: [&str; 21] = [
    "decode",
    "encode",
    "encode_into",
    "verify",
    "each",
    "read",
    "write",
    "measure",
    "check_parts",
    "seal_sums",
    "seal_protection",
    "clone",
    "eq",
    "ne",
    "fmt",
    "payload",
    "bits",
    "convert",
    "told",
    "held",
    "self_",
];

/// A frame under way.
pub(super) struct Planner<'d> {
    context: Context<'d>,
    pub(super) frame: &'d Frame,
    at: usize,
    mode: Mode,
    types: Names,
    places: HashMap<SignalId, PlaceOf>,
    /// The pages directly inside the frame (first) and inside each page, switch by switch.
    pub(super) inside: Vec<Vec<Vec<PageId>>>,
}

impl<'d> Planner<'d> {
    /// The group of a whole frame whose type is to be called so, and where its signals are.
    pub(super) fn plan(
        context: Context<'d>,
        at: usize,
        (frame, mode): (&'d Frame, Mode),
        name: &str,
    ) -> (Group<'d>, HashMap<SignalId, PlaceOf>) {
        let mut types = Names::types();
        types.of_type(name);
        let mut planner = Self { context, frame, at, mode, types, places: HashMap::new(), inside: inside(frame) };
        let root = planner.group(None, name.to_owned(), 0);
        (root, planner.places)
    }

    fn group(&mut self, page: Option<PageId>, name: String, base: u32) -> Group<'d> {
        let frame = self.frame;
        let own: Vec<(SignalId, &'d Signal)> =
            (0..).map(SignalId).zip(&frame.signals).filter(|(_, signal)| signal.page == page).collect();
        let needed = own.iter().map(|(_, signal)| signal.needed_bytes()).max().unwrap_or(0);
        let page_of = page.map(|page| &frame.pages[page.index()]);
        let stated_bytes = page_of.map_or(stated(frame.length), |page| stated(self.length_of(page)));
        let mut names = Names::with(&METHODS);
        let mut places = Names::with(&["ID", "LENGTH", "PERIOD"]);
        let is_of_service = frame.seen_on.iter().any(|seen| matches!(seen.identifier, Identifier::SomeIp { .. }));
        let mut fields = Vec::new();
        for (id, signal) in own {
            let field = names.value(&snake(&signal_name(signal, base)));
            let at = places.value(&format!("AT_{}", field.trim_end_matches('_').to_uppercase()));
            if let Some(encoding) = signal.encoding() {
                self.places.insert(id, PlaceOf { path: format!("{name}::{at}"), encoding });
            }
            let sure = match self.mode {
                Mode::Slice(Some(sure)) if base == 0 => sure as u32,
                _ => u32::MAX,
            };
            let optional = signal.needed_bytes() > sure && signal.size().is_none();
            let states = self.context.states.of(self.at, id.index());
            fields.push(Field::new(self.context, signal, (field, at), (optional, is_of_service), states));
        }
        let mut group = Group {
            name,
            page: page_of,
            needed_bytes: needed.saturating_sub(base) as usize,
            stated_bytes,
            base,
            borrows: fields.iter().any(Field::borrows),
            fields,
            switches: Vec::new(),
            names,
        };
        self.fill(&mut group, page);
        let Group { fields, names, .. } = &mut group;
        fields.iter_mut().for_each(|field| field.name_methods(names));
        group
    }

    /// The length that a page states. In a group that gives rows a range only says how far what is not described goes.
    fn length_of(&self, page: &Page) -> Option<LengthRange> {
        let in_rows = || page.rows_from.is_some() || self.frame.rows_around(page.parent).is_some();
        page.length.filter(|length| length.min == length.max || !in_rows())
    }

    fn fill(&mut self, group: &mut Group<'d>, page: Option<PageId>) {
        let inside = self.inside.get(page.map_or(0, |page| page.index() + 1)).cloned().unwrap_or_default();
        let mut at = 0;
        while let Some(pages) = inside.get(at) {
            if pages.iter().all(|page| self.says_nothing(*page)) {
                at += 1;
                continue;
            }
            let run = self.alike(&inside[at..]);
            let first = pages.first().map(|page| &self.frame.pages[page.index()]);
            let switch = match (first.and_then(|page| page.element), run) {
                // Of a group that gives rows the first element is read.
                (None, _) if first.is_some_and(|page| page.rows_from.is_some()) => Some(self.single(group, pages[0])),
                (None, _) => Some(self.pages(group, pages)),
                (Some(element), Some((length, base, step))) => {
                    at += length - 1;
                    Some(self.repeat(group, pages[0], element, (base, step)))
                }
                (Some(_), None) => pages.first().map(|&page| self.single(group, page)),
            };
            group.switches.extend(switch);
            at += 1;
        }
        group.borrows |= group.switches.iter().any(Switch::borrows);
    }

    /// A page without anything on it, as the one that only tells how many elements there can be.
    fn says_nothing(&self, page: PageId) -> bool {
        let described = &self.frame.pages[page.index()];
        let is_bare = described.length.is_none() && described.element.is_none();
        is_bare
            && self.inside[page.index() + 1].is_empty()
            && self.frame.signals.iter().all(|signal| signal.page != Some(page))
    }

    fn pages(&mut self, around: &mut Group<'d>, ids: &[PageId]) -> Switch<'d> {
        let frame = self.frame;
        let selectors: Vec<SignalId> = selectors(frame, ids);
        let short = |id: &SignalId| signal_name(&frame.signals[id.index()], around.base);
        let joined = selectors.iter().map(short).collect::<Vec<_>>().join("_");
        let field = around.names.value(&format!("when_{}", snake(&joined)));
        let select = around.names.value(&format!("select_{}", snake(&joined)));
        let joined = shortened(&joined);
        let enum_name = self.types.of_type(&format!("When{joined}"));
        let mut variants = Names::with(&["NoPage"]);
        let mut pages = Vec::new();
        let with_tests = ids.iter().filter(|id| !frame.pages[id.index()].tests.is_empty());
        let otherwise = ids.iter().filter(|id| frame.pages[id.index()].tests.is_empty());
        for &id in with_tests.chain(otherwise) {
            let wanted = self.variant(&frame.pages[id.index()]);
            let variant = variants.of_type(&wanted);
            let name = self.types.of_type(&format!("{joined}{wanted}"));
            let group = self.group(Some(id), name, around.base);
            pages.push((variant, group));
        }
        Switch::Pages(Pages { field, enum_name, select, pages })
    }

    /// The words, else the numbers, under which a page holds.
    fn variant(&self, page: &Page) -> String {
        let test = |test: &Test| {
            let words = self.context.database.words(&self.frame.signals[test.selector.index()]);
            let values = test.values.iter().map(|span| {
                let word = words.iter().find(|word| word.values == *span);
                word.map_or_else(
                    || span.to_string().replace("..", "_to_").replace('-', "minus_"),
                    |word| word.word.clone(),
                )
            });
            let values = values.take(VALUES_NAMED).collect::<Vec<_>>().join("_or_");
            let values = if test.values.len() > VALUES_NAMED { format!("{values}_or_others") } else { values };
            let is_number = values.starts_with(|first: char| first.is_ascii_digit());
            if is_number { format!("is_{values}") } else { values }
        };
        match page.tests.as_slice() {
            [] => "Otherwise".to_owned(),
            tests => shortened(&tests.iter().map(test).collect::<Vec<_>>().join("_")),
        }
    }

    fn single(&mut self, around: &mut Group<'d>, page: PageId) -> Switch<'d> {
        let wanted = self.first_name(page).unwrap_or_else(|| "element".to_owned());
        let field = around.names.value(&format!("{}_element", snake(&wanted)));
        let there = around.names.value(&format!("has_{}", snake(&wanted)));
        let name = self.types.of_type(&format!("{}Element", camel(&wanted)));
        let group = self.group(Some(page), name, around.base);
        Switch::Single { field, group, there }
    }

    fn repeat(&mut self, around: &mut Group<'d>, page: PageId, info: Element, (base, step): (u32, u32)) -> Switch<'d> {
        let wanted = self.first_name(page).unwrap_or_else(|| "element".to_owned());
        let wanted = wanted.split('[').next().unwrap_or("element");
        let field = around.names.value(&format!("{}_elements", snake(wanted)));
        let name = self.types.of_type(&format!("{}Element", camel(wanted)));
        let count = self.frame.pages[page.index()].tests.first().map(|test| test.selector);
        let element = self.group(Some(page), name, base);
        Switch::Repeated(Repeat { field, element, step_bytes: step, element_info: info, count })
    }

    fn first_name(&self, page: PageId) -> Option<String> {
        let own = self.frame.signals.iter().find(|signal| signal.page == Some(page));
        own.map(|signal| signal.label.name.clone())
    }
}

/// The pages directly inside the frame (first) and inside each page, switch by switch.
fn inside(frame: &Frame) -> Vec<Vec<Vec<PageId>>> {
    let mut inside: Vec<Vec<Vec<PageId>>> = vec![Vec::new(); frame.pages.len() + 1];
    let mut places: HashMap<u32, (usize, usize)> = HashMap::new();
    for (page, id) in frame.pages.iter().zip((0..).map(PageId)) {
        let around = page.parent.map_or(0, |parent| parent.index() + 1);
        let (around, at) = *places.entry(page.switch).or_insert_with(|| {
            inside[around].push(Vec::new());
            (around, inside[around].len() - 1)
        });
        inside[around][at].push(id);
    }
    inside
}

/// A signal's name; of an element that stands for all of its group without the number.
fn signal_name(signal: &Signal, base: u32) -> String {
    let name = &signal.label.name;
    if base == 0 { name.clone() } else { name.split('[').next().unwrap_or(name).to_owned() }
}

/// The selectors of a switch, in the order in which they are asked.
fn selectors(frame: &Frame, pages: &[PageId]) -> Vec<SignalId> {
    let mut selectors = Vec::new();
    for test in pages.iter().flat_map(|page| &frame.pages[page.index()].tests) {
        if !selectors.contains(&test.selector) {
            selectors.push(test.selector);
        }
    }
    selectors
}

/// A name for types out of some words, as many as there is room for.
fn shortened(words: &str) -> String {
    let all = camel(words);
    if all.len() <= LETTERS_MAX {
        return all;
    }
    let fits = |(at, letter): &(usize, char)| *at <= LETTERS_MAX && letter.is_ascii_uppercase();
    let end = all.char_indices().rev().find(fits).map(|(at, _)| at);
    all[..end.filter(|end| *end > 0).unwrap_or(LETTERS_MAX)].to_owned()
}
