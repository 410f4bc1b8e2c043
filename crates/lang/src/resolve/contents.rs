//! What is between a frame's braces: signals, pages, timing, lengths.

use std::borrow::Cow;
use std::ops::Range;

use wirelore_model::{Content, FasterWhile, Frame, LengthRange, NetworkKind, Page, PageId, Role, Signal, SignalId};

use crate::check;
use crate::syntax::tree::{self, BodyItem, BodyKind, Name};
use crate::{FileId, Site};

use super::Resolver;
use super::flat::{Body, Flat, FlatPage, RowGroup, Scope};
use super::flatten::flatten;
use super::length::{self, Bounds};
use super::names::name_taken;
use super::pages::Sight;
use super::place::Placer;
use super::settings::Counting;
use super::signals::SignalTable;
use super::timing::{self, Said};
use super::{mixed_in, protection, signal};

/// Where a signal of the model comes from.
#[derive(Debug, Clone)]
pub(crate) struct SignalOrigin<'t> {
    pub(crate) file: FileId,
    pub(crate) tree: &'t tree::Signal<'t>,
    /// The `use layout` that brought it into its frame.
    pub(crate) via: Option<Site>,
    pub(crate) counting: Counting,
    /// The payload bytes of its element, where it stands in a repeated group.
    pub(crate) element: Option<Range<u32>>,
    /// Where its bits are contradicts what is said of its byte order.
    pub(crate) is_uncertain: bool,
    /// The byte order that is expected there is stated.
    pub(crate) order_is_stated: bool,
}

impl SignalOrigin<'_> {
    /// Its place in the text, or else its name.
    pub(crate) fn site(&self) -> Site {
        let span = self.tree.place.as_ref().map_or(self.tree.head.name.span, |place| place.span);
        Site { file: self.file, span }
    }
}

/// Bits of a frame without a signal.
#[derive(Debug)]
pub(crate) struct Area {
    pub(crate) fields: Vec<wirelore_bits::Field>,
    pub(crate) page: Option<PageId>,
    pub(crate) site: Site,
    pub(crate) counting: Counting,
    pub(crate) is_unused: bool,
}

impl Area {
    /// The byte behind its last bit.
    pub(crate) fn needed_bytes(&self) -> u32 {
        self.fields.iter().map(wirelore_bits::Field::needed_bytes).max().unwrap_or(0)
    }
}

/// The contents of a frame.
#[derive(Debug)]
pub(crate) struct Contents<'t> {
    /// The frame, but for its name, networks, senders and readers.
    pub(crate) frame: Frame,
    /// One for each signal of the frame.
    pub(crate) origins: Vec<SignalOrigin<'t>>,
    /// Names of signals that are declared, but broken.
    pub(crate) broken: Vec<String>,
    pub(crate) areas: Vec<Area>,
    /// The texts and bytes whose length a signal says, and their scopes.
    sized: Vec<(SignalId, usize)>,
    /// The checksums into which more is mixed, and their scopes.
    mixed: Vec<(SignalId, usize)>,
    pub(crate) flat: Flat<'t>,
    /// The senders and readers that are named.
    pub(crate) senders: Vec<&'t Name<'t>>,
    pub(crate) readers: Vec<&'t Name<'t>>,
    /// The length on each page: its own, or that of what is around.
    pub(crate) page_lengths: Vec<Option<LengthRange>>,
}

/// Reads and checks what is between the braces of a frame within its bounds, or of a layout that stands for itself.
pub(crate) fn read<'t>(
    resolver: &mut Resolver<'_, 't>,
    body: Body<'t>,
    bounds: Bounds,
    own_layout: Option<usize>,
) -> Contents<'t> {
    let flat = flatten(resolver, body, bounds.longest, own_layout);
    let mut contents = Contents {
        frame: empty_frame(),
        origins: Vec::with_capacity(flat.signals.len()),
        broken: Vec::new(),
        areas: Vec::new(),
        sized: Vec::new(),
        mixed: Vec::new(),
        senders: Vec::new(),
        readers: Vec::new(),
        page_lengths: Vec::with_capacity(flat.pages.len()),
        flat,
    };
    let said = contents.statements(resolver, body, bounds);
    contents.lengths_of_pages(resolver, bounds);
    let table = contents.signals(resolver);
    contents.mixed_in(resolver, &table, bounds.kind);
    contents.pages(resolver, &table);
    contents.sizes(resolver, &table);
    contents.frame.sending = said.sending.clone();
    contents.faster(resolver, &table, &said);
    contents.areas(resolver);
    contents.ends_of_rows(bounds);
    resolver.table = table;
    check::contents(&contents, bounds, resolver);
    contents
}

fn empty_frame() -> Frame {
    Frame {
        label: wirelore_model::Label::default(),
        seen_on: Vec::new(),
        carried: None,
        length: None,
        senders: Vec::new(),
        readers: Vec::new(),
        sending: wirelore_model::Sending::default(),
        optional: false,
        pages: Vec::new(),
        signals: Vec::new(),
        unknown: Vec::new(),
        unused: Vec::new(),
    }
}

impl<'t> Contents<'t> {
    /// Reads the statements of the frame itself.
    fn statements(&mut self, resolver: &mut Resolver<'_, 't>, body: Body<'t>, bounds: Bounds) -> Said<'t> {
        let mut said = Said::default();
        let mut lengths: Vec<&BodyItem> = Vec::new();
        for &item in &self.flat.statements {
            let timing = match &item.kind {
                BodyKind::SentBy { ecus, timing } => {
                    self.senders.extend(ecus);
                    timing
                }
                BodyKind::ReadBy(ecus) => {
                    self.readers.extend(ecus);
                    continue;
                }
                BodyKind::Timing(timing) => timing,
                _ => {
                    lengths.push(item);
                    continue;
                }
            };
            timing.iter().for_each(|timing| said.add(timing, body.file, resolver.messages));
        }
        said.finish(body.file, resolver.messages);
        self.frame.length = length::read(&lengths, bounds, body.file, resolver.messages);
        said
    }

    fn lengths_of_pages(&mut self, resolver: &mut Resolver<'_, 't>, bounds: Bounds) {
        for page in &self.flat.pages {
            let file = self.flat.scopes[page.scope].file;
            let Scope { base, in_rows, via, .. } = self.flat.scopes[page.scope];
            let is_part = in_rows || via.is_some();
            let bounds = if is_part { bounds.of_part(base) } else { bounds };
            let own = length::read(&page.lengths, bounds, file, resolver.messages);
            let own = own.map(|length| length::behind(length, base)).or(page.rows.and_then(RowGroup::length));
            let every = page_period(page, file, resolver);
            // How long the whole payload is says nothing about one of its rows.
            let around = page.parent.map_or(self.frame.length, |parent| self.page_lengths[parent.index()]);
            self.page_lengths.push(own.or(around.filter(|_| page.rows.is_none())));
            self.frame.pages.push(Page {
                parent: page.parent,
                switch: page.switch,
                tests: Vec::new(),
                element: page.element,
                rows_from: page.rows.map(|rows| rows.from),
                every,
                length: own,
            });
        }
    }

    /// The length that holds on a page, or in the frame itself. In a group that gives rows: of the bytes in front and one element.
    pub(crate) fn length_on(&self, page: Option<PageId>) -> Option<LengthRange> {
        page.map_or(self.frame.length, |page| self.page_lengths[page.index()])
    }

    fn fixed_length(&self, page: Option<PageId>) -> Option<u32> {
        self.length_on(page).filter(|length| length.min == length.max).map(|length| length.max)
    }

    /// The length that holds where a statement stands, where it is always the same; in a repeated group, where its element ends.
    fn fixed_length_in(&self, scope: &Scope) -> Option<u32> {
        scope.element.map(|(_, end)| end).or_else(|| self.fixed_length(scope.page))
    }

    fn signals(&mut self, resolver: &mut Resolver<'_, 't>) -> SignalTable<'t> {
        let mut table = std::mem::take(&mut resolver.table);
        table.clear();
        let mut signals = Vec::with_capacity(self.flat.signals.len());
        let mut protected_at = None;
        for scoped in &self.flat.signals {
            let scope = self.flat.scope_of(scoped);
            if scoped.tree.extras().protection.is_some() {
                let site = scope.site(scoped.tree.head.name.span);
                if let Some(first) = protected_at.replace(site) {
                    resolver.messages.push(protection::twice(first, site));
                    continue;
                }
            }
            check::names::signal(scoped.tree, scope.file, resolver.messages);
            check::hints::guess(&scoped.tree.head, scope.file, resolver.messages);
            let first = signals.len();
            let is_uncertain = signal::read(resolver, scoped, scope, self.fixed_length_in(scope), &mut signals);
            let site = scope.site(scoped.tree.head.name.span);
            let origin = SignalOrigin {
                file: scope.file,
                tree: scoped.tree,
                via: scope.via,
                is_uncertain,
                counting: scope.settings.counting,
                element: scope.element.map(|(begin, end)| begin..end),
                order_is_stated: scope.settings.order.is_some(),
            };
            if signals.len() == first {
                let name = scope.full_name(&scoped.tree.head.name.value);
                self.broken.push(name.clone());
                enter(&mut table, name.into(), scope, None, site, &self.flat.pages, resolver);
            }
            for (signal, id) in signals[first..].iter().zip(first as u32..) {
                let name = if signal.label.name == scoped.tree.head.name.value {
                    Cow::Borrowed(&*scoped.tree.head.name.value)
                } else {
                    Cow::Owned(signal.label.name.clone())
                };
                enter(&mut table, name, scope, Some(SignalId(id)), site, &self.flat.pages, resolver);
                if scoped.tree.extras().size.is_some() && signal.encoding().is_none() {
                    self.sized.push((SignalId(id), scoped.scope));
                }
                if mixed_in::has_some(signal, scoped.tree) {
                    self.mixed.push((SignalId(id), scoped.scope));
                }
                self.origins.push(origin.clone());
            }
        }
        self.frame.signals = signals;
        table
    }

    /// Reads what is mixed into the checksums.
    fn mixed_in(&mut self, resolver: &mut Resolver<'_, 't>, table: &SignalTable<'t>, kind: Option<NetworkKind>) {
        for (id, scope) in std::mem::take(&mut self.mixed) {
            let sight = Sight { table, signals: &self.frame.signals, pages: &self.flat.pages, origins: &self.origins };
            let read = mixed_in::read(resolver, &sight, id, &self.flat.scopes[scope], kind);
            let role = &mut self.frame.signals[id.index()].role;
            match (read, &mut *role) {
                (Some((first, then)), Role::Checksum(checksum)) => (checksum.first, checksum.then) = (first, then),
                _ => *role = Role::Value,
            }
        }
    }

    fn pages(&mut self, resolver: &mut Resolver<'_, 't>, table: &SignalTable<'t>) {
        let sight = Sight { table, signals: &self.frame.signals, pages: &self.flat.pages, origins: &self.origins };
        let mut all_tests = Vec::with_capacity(self.flat.pages.len());
        for page in &self.flat.pages {
            let scope = &self.flat.scopes[page.scope];
            let tests = page.when.map_or(&[][..], |when| &when.tests);
            let tests = tests.iter().filter_map(|test| sight.test(resolver, test, scope, page.parent));
            let mut tests: Vec<_> = tests.collect();
            tests.extend(page.count.and_then(|count| sight.count(resolver, count, scope, page.parent)));
            all_tests.push(tests);
        }
        for (page, tests) in self.frame.pages.iter_mut().zip(all_tests) {
            page.tests = tests;
        }
    }

    fn sizes(&mut self, resolver: &mut Resolver<'_, 't>, table: &SignalTable<'t>) {
        let sight = Sight { table, signals: &self.frame.signals, pages: &self.flat.pages, origins: &self.origins };
        let found = self.sized.iter().filter_map(|&(id, scope)| {
            let name = self.origins[id.index()].tree.extras().size.as_ref()?;
            let page = self.frame.signals[id.index()].page;
            Some((id, sight.size(resolver, name, &self.flat.scopes[scope], page)?))
        });
        for (id, counter) in found.collect::<Vec<_>>() {
            if let Content::Text { size, .. } | Content::Bytes { size, .. } =
                &mut self.frame.signals[id.index()].content
            {
                *size = Some(counter);
            }
        }
    }

    fn faster(&mut self, resolver: &mut Resolver<'_, 't>, table: &SignalTable<'t>, said: &Said<'t>) {
        let (Some((every, test)), Some(scope)) = (said.faster, self.flat.scopes.first()) else { return };
        let sight = Sight { table, signals: &self.frame.signals, pages: &self.flat.pages, origins: &self.origins };
        let test = sight.test(resolver, test, scope, None);
        self.frame.sending.faster = test.map(|test| FasterWhile { every, test });
    }

    fn areas(&mut self, resolver: &mut Resolver<'_, 't>) {
        for area in &self.flat.areas {
            let scope = self.flat.scope_of(&area.place);
            let fixed_length = self.fixed_length_in(scope);
            let fields = Placer::new(scope, resolver.messages, fixed_length).area(area.place.tree);
            let fields: Vec<_> = fields.iter().filter_map(|field| field.shifted(scope.base)).collect();
            let list = if area.is_unused { &mut self.frame.unused } else { &mut self.frame.unknown };
            list.extend(&fields);
            self.areas.push(Area {
                fields,
                page: scope.page,
                site: scope.site(area.place.tree.span),
                counting: scope.settings.counting,
                is_unused: area.is_unused,
            });
        }
    }

    /// The signal of a name: `Some(None)` where it is declared but broken.
    pub(crate) fn signal_named(signals: &[Signal], broken: &[String], name: &str) -> Option<Option<SignalId>> {
        let found =
            signals.iter().position(|signal| signal.label.name == name).map(|index| Some(SignalId(index as u32)));
        found.or_else(|| broken.iter().any(|broken| broken == name).then_some(None))
    }
}

/// Enters a signal's name, and says so where it is taken.
fn enter<'t>(
    table: &mut SignalTable<'t>,
    name: Cow<'t, str>,
    scope: &Scope,
    id: Option<SignalId>,
    site: Site,
    pages: &[FlatPage<'_>],
    resolver: &mut Resolver<'_, '_>,
) {
    let shown = name.clone();
    if let Some(first) = table.enter(name, scope.page, id, site, pages) {
        let message = name_taken("signal", &shown, scope.via.unwrap_or(site), first);
        resolver.messages.push(match scope.via {
            Some(_) => {
                message.help("`use layout NAME at byte N prefix p_` puts something in front of the layout's names")
            }
            None => message,
        });
    }
}

fn page_period(page: &FlatPage<'_>, file: FileId, resolver: &mut Resolver<'_, '_>) -> Option<wirelore_model::Period> {
    let mut every = None;
    for timing in &page.timing {
        match &timing.value {
            tree::Timing::Every(written) if every.is_none() => every = timing::period(written, file, resolver.messages),
            tree::Timing::Every(_) => {
                let site = Site { file, span: timing.span };
                let message = crate::Diagnostic::new(
                    crate::Rule::RepeatedClause,
                    site,
                    "the period of this page is stated twice",
                );
                resolver.messages.push(message.here("the second time"));
            }
            _ => {
                let site = Site { file, span: timing.span };
                let message = crate::Diagnostic::new(
                    crate::Rule::UnexpectedWord,
                    site,
                    "a page has a period of its own, and nothing else of timing",
                );
                resolver
                    .messages
                    .push(message.here("belongs to the frame").help("move it to the frame's own statements"));
            }
        }
    }
    every
}
