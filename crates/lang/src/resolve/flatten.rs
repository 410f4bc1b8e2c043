//! Spells a frame's body out: pages get their numbers, layouts are put in where they are used.

use wirelore_model::PageId;

use crate::syntax::tree::{self, BodyItem, BodyKind, Integer, Signal, UseLayout, When};
use crate::{Diagnostic, Rule, Site, Span};

use super::Resolver;
use super::budget::{DEEPEST, MOST_IN_FRAME, MOST_PAGES};
use super::catalogue::check_counting;
use super::flat::{Body, Flat, FlatArea, FlatPage, Scope, Scoped};
use super::messages::at;

/// The switch that is open in a block.
struct Switch<'t> {
    number: u32,
    selectors: Vec<&'t str>,
    has_otherwise: bool,
}

pub(super) struct Run<'a, 'b, 't> {
    pub(super) shared: &'b mut Resolver<'a, 't>,
    pub(super) flat: Flat<'t>,
    is_layout: bool,
    /// The layouts that are being put in, outermost first.
    open_layouts: Vec<usize>,
    pub(super) depth: usize,
    pub(super) switches: u32,
    /// A limit is reached: the rest is left out.
    pub(super) full: bool,
}

/// Spells a body out, of a frame that has no more than so many bytes. The layout that the body belongs to, if it does, is not put into itself.
pub(crate) fn flatten<'t>(
    resolver: &mut Resolver<'_, 't>,
    body: Body<'t>,
    longest: Option<u32>,
    own_layout: Option<usize>,
) -> Flat<'t> {
    let mut flat = std::mem::take(&mut resolver.flat);
    flat.clear();
    let mut run = Run {
        shared: resolver,
        flat,
        is_layout: own_layout.is_some(),
        open_layouts: own_layout.into_iter().collect(),
        depth: 0,
        switches: 0,
        full: false,
    };
    let settings = body.settings.inside(body.file, &body.tree.items);
    let scope = Scope {
        file: body.file,
        settings,
        base: 0,
        prefix: String::new(),
        suffix: String::new(),
        element: None,
        in_rows: false,
        limit: stated_length(&body.tree.items).or(longest),
        via: None,
        page: None,
    };
    run.block(body.tree, scope);
    run.flat
}

impl<'t> Run<'_, '_, 't> {
    pub(super) fn block(&mut self, body: &'t tree::Body<'t>, scope: Scope) {
        let is_generated = scope.via.is_some() || scope.is_repeated();
        let index = self.flat.scopes.len();
        self.flat.scopes.push(scope);
        let mut switch: Option<Switch<'t>> = None;
        for item in &body.items {
            if is_generated && !self.shared.budget.generate(weight(item, &self.flat.scopes[index].prefix)) {
                self.too_much(index, item.span);
            }
            if self.full {
                return;
            }
            match &item.kind {
                BodyKind::When(when) => {
                    let number = self.switch_of(&mut switch, when);
                    self.page(item, Some(when), &when.body, number, index);
                }
                BodyKind::Otherwise(body) => {
                    if let Some(number) = self.otherwise_of(&mut switch, item, index) {
                        self.page(item, None, body, number, index);
                    }
                }
                BodyKind::Repeat(repeat) => {
                    switch = None;
                    self.repeat(repeat, index);
                }
                _ => {
                    switch = None;
                    self.statement(item, &body.signals, index);
                }
            }
        }
    }

    /// The switch that a page belongs to: the open one if it looks at the same selectors, else a new one.
    fn switch_of(&mut self, open: &mut Option<Switch<'t>>, when: &'t When<'t>) -> u32 {
        let mut selectors: Vec<&str> = when.tests.iter().map(|test| &*test.signal.value).collect();
        selectors.sort_unstable();
        selectors.dedup();
        if let Some(switch) = open
            && !switch.has_otherwise
            && switch.selectors == selectors
        {
            return switch.number;
        }
        let number = self.switches;
        self.switches += 1;
        *open = Some(Switch { number, selectors, has_otherwise: false });
        number
    }

    fn otherwise_of(&mut self, open: &mut Option<Switch<'t>>, item: &BodyItem, scope: usize) -> Option<u32> {
        let (message, here) = match open {
            Some(switch) if !switch.has_otherwise => {
                switch.has_otherwise = true;
                return Some(switch.number);
            }
            Some(_) => ("a second `otherwise` for the same pages", "only the first can ever hold"),
            None => ("this `otherwise` does not stand behind a `when` block", "nothing for it to be the rest of"),
        };
        let site = self.flat.scopes[scope].site(first_word(item.span, "otherwise"));
        self.shared.messages.push(
            Diagnostic::new(Rule::OtherwiseAlone, site, message)
                .here(here)
                .help("put it directly behind the `when` blocks whose rest it describes"),
        );
        None
    }

    fn page(
        &mut self,
        item: &'t BodyItem<'t>,
        when: Option<&'t When<'t>>,
        body: &'t tree::Body<'t>,
        switch: u32,
        scope: usize,
    ) {
        let outer = &self.flat.scopes[scope];
        let word = if when.is_some() { "when" } else { "otherwise" };
        let site = outer.site(first_word(item.span, word));
        if !self.has_room_for_page(site) || !self.enter(site) {
            return;
        }
        let mut inner = self.flat.scopes[scope].clone();
        let parent = inner.page;
        inner.page = Some(PageId(self.flat.pages.len() as u32));
        inner.settings = inner.settings.inside(inner.file, &body.items);
        let end = stated_length(&body.items).map(|bytes| bytes.saturating_add(inner.base));
        inner.limit = end.or(inner.limit);
        if let Some(end) = end.filter(|_| inner.in_rows && !inner.is_repeated()) {
            inner.element = Some((inner.base, end));
        }
        self.flat.pages.push(FlatPage {
            parent,
            switch,
            when,
            count: None,
            element: None,
            rows: None,
            scope,
            site,
            lengths: Vec::new(),
            timing: Vec::new(),
        });
        self.block(body, inner);
        self.depth -= 1;
    }

    /// Whether the frame may have another page.
    pub(super) fn has_room_for_page(&mut self, site: Site) -> bool {
        if self.flat.pages.len() < MOST_PAGES {
            return true;
        }
        let message = format!("more than {MOST_PAGES} pages and elements in one frame");
        let message =
            Diagnostic::new(Rule::ArrayTooLarge, site, message).help("describe the pages as several frames or files");
        self.shared.messages.push(message);
        self.full = true;
        false
    }

    /// Goes one block deeper, unless it is too deep.
    pub(super) fn enter(&mut self, site: Site) -> bool {
        if self.depth == DEEPEST {
            let message = format!("more than {DEEPEST} pages and layouts inside each other");
            self.shared
                .messages
                .push(Diagnostic::new(Rule::NestedTooDeep, site, message).help("describe it less deep"));
            return false;
        }
        self.depth += 1;
        true
    }

    fn statement(&mut self, item: &'t BodyItem<'t>, signals: &'t [Signal<'t>], scope: usize) {
        match &item.kind {
            BodyKind::Signal(index) => {
                if self.flat.signals.len() >= MOST_IN_FRAME {
                    self.too_much(scope, item.span);
                } else {
                    self.flat.signals.push(Scoped { item, tree: &signals[*index], scope });
                }
            }
            BodyKind::Unknown(place) => {
                self.flat.areas.push(FlatArea { place: Scoped { item, tree: place, scope }, is_unused: false })
            }
            BodyKind::Unused(place) => {
                self.flat.areas.push(FlatArea { place: Scoped { item, tree: place, scope }, is_unused: true })
            }
            BodyKind::UseLayout(used) => self.layout(used, item.span, scope),
            BodyKind::CountingFrom(first) => check_counting(self.flat.scopes[scope].file, first, self.shared.messages),
            BodyKind::Order(_) | BodyKind::CountingBitsFromTop | BodyKind::MarksJ1939 => {}
            BodyKind::Timing(timing) => self.timing(item, timing, scope),
            BodyKind::Length(_) => self.length(item, scope),
            BodyKind::SentBy { .. } => self.of_the_frame(item, scope, "sent by"),
            BodyKind::ReadBy(_) => self.of_the_frame(item, scope, "read by"),
            // The block deals with its pages.
            BodyKind::When(_) | BodyKind::Otherwise(_) | BodyKind::Repeat(_) => {}
        }
    }

    fn timing(
        &mut self,
        item: &'t BodyItem<'t>,
        timing: &'t [crate::Spanned<crate::syntax::tree::Timing>],
        scope: usize,
    ) {
        match self.flat.scopes[scope].page {
            Some(page) if !self.is_inserted(scope) => self.flat.pages[page.index()].timing.extend(timing),
            _ => self.of_the_frame(item, scope, "timing"),
        }
    }

    fn length(&mut self, item: &'t BodyItem<'t>, scope: usize) {
        match self.flat.scopes[scope].page {
            Some(page) if self.may_have_length(page, scope) => self.flat.pages[page.index()].lengths.push(item),
            _ => self.of_the_frame(item, scope, "length"),
        }
    }

    /// Whether a page of its own stands around a statement, and not only a group that is repeated. Pages of layouts count from where the
    /// layout is.
    fn may_have_length(&self, page: PageId, scope: usize) -> bool {
        !self.flat.scopes[scope].is_repeated() && self.flat.pages[page.index()].rows.is_none()
    }

    fn in_layout(&self, scope: usize) -> bool {
        self.is_layout || self.flat.scopes[scope].via.is_some()
    }

    /// Whether statements are in a layout or a repeated group, and so stand for more than themselves.
    fn is_inserted(&self, scope: usize) -> bool {
        self.in_layout(scope) || self.flat.scopes[scope].is_in_group()
    }

    /// Keeps a statement that only the frame as a whole can have.
    fn of_the_frame(&mut self, item: &'t BodyItem<'t>, scope: usize, what: &str) {
        let (in_layout, is_inserted) = (self.in_layout(scope), self.is_inserted(scope));
        let scope = &self.flat.scopes[scope];
        if !is_inserted && scope.page.is_none() {
            self.flat.statements.push(item);
            return;
        }
        let place = match (in_layout, scope.is_in_group()) {
            (true, _) => "a layout",
            (false, true) => "a repeated group",
            (false, false) => "a page",
        };
        let message = format!("{place} has no `{what}` of its own");
        let message =
            Diagnostic::new(Rule::UnexpectedWord, scope.site(item.span), message).here("belongs to the frame");
        let gives_rows = scope.page.is_some_and(|page| self.flat.pages[page.index()].rows.is_some());
        self.shared.messages.push(match &item.kind {
            BodyKind::Length(length) if gives_rows => message.help(format!(
                "for the length of each element write `, size {} bytes` behind `as rows`",
                length.last.value.max(1)
            )),
            _ => message.help("move it to the frame's own statements, outside all inner braces"),
        });
    }

    fn layout(&mut self, used: &'t UseLayout<'t>, span: Span, scope: usize) {
        let UseLayout { layout: name, at_byte, prefix } = used;
        let outer = self.flat.scopes[scope].clone();
        let Some(index) = self.shared.names.layout(outer.file, name, self.shared.messages) else { return };
        self.shared.used_layouts[index] = true;
        let Some(base) = self.base(&outer, at_byte) else { return };
        let layout = &self.shared.catalogue.layouts[index];
        let site = outer.site(name.span);
        if self.open_layouts.contains(&index) {
            self.shared.messages.push(
                Diagnostic::new(Rule::LayoutCircle, site, format!("layout `{}` is put into itself", name.value))
                    .here("this closes the circle")
                    .remark(at(layout.file, layout.tree.head.name.span), "the layout that is being put in")
                    .help("take this `use layout` out; a layout can only be made of others"),
            );
            return;
        }
        if !self.enter(site) {
            return;
        }
        let mut settings =
            self.shared.catalogue.settings[layout.file.0 as usize].inside(layout.file, &layout.tree.body.items);
        settings.order = settings.order.or(outer.settings.order);
        settings.marks_j1939 |= outer.settings.marks_j1939;
        let prefix =
            prefix.as_ref().map_or_else(|| outer.prefix.clone(), |prefix| format!("{}{}", outer.prefix, prefix.value));
        let via = outer.via.or(Some(outer.site(span)));
        let inner = Scope { file: layout.file, settings, base, prefix, via, ..outer };
        self.open_layouts.push(index);
        self.block(&layout.tree.body, inner);
        self.open_layouts.pop();
        self.depth -= 1;
    }

    /// The payload byte at which a layout or the first element of a group comes to lie.
    pub(super) fn base(&mut self, outer: &Scope, at_byte: &Integer) -> Option<u32> {
        const FARTHEST: i128 = 0xFFFF;
        let first = outer.settings.counting.first();
        let offset = at_byte.value - i128::from(first);
        if (0..=FARTHEST).contains(&offset) {
            return Some(outer.base.saturating_add(offset as u32).min(FARTHEST as u32));
        }
        let (rule, here) = if offset < 0 {
            (Rule::BitOutOfRange, format!("bytes begin with {first} here"))
        } else {
            (Rule::OutsideFrame, "beyond any frame".to_owned())
        };
        let message = format!("there is no byte {} to begin at", at_byte.value);
        self.shared.messages.push(Diagnostic::new(rule, outer.site(at_byte.span), message).here(here));
        None
    }

    fn too_much(&mut self, scope: usize, span: Span) {
        self.full = true;
        let scope = &self.flat.scopes[scope];
        let site = scope.via.unwrap_or_else(|| scope.site(span));
        self.shared.messages.push(too_many_signals(site));
    }
}

/// The message where arrays and layouts grow beyond what any frame can hold.
pub(crate) fn too_many_signals(site: Site) -> Diagnostic {
    Diagnostic::new(Rule::ArrayTooLarge, site, "arrays and layouts grow into too many signals here")
        .here(format!(
            "a frame may have {MOST_IN_FRAME} signals, and all layouts and arrays together a few hundred thousand"
        ))
        .help("use smaller arrays, or put the layout in less often")
}

/// What one more copy of a statement costs: more where it is long, for its words and notes are copied too.
pub(crate) fn weight(item: &BodyItem, prefix: &str) -> usize {
    const BYTES_PER_UNIT: usize = 128;
    let note = item.front.note.as_ref().map_or(0, |note| note.value.len());
    let statement = match &item.kind {
        // What is inside these counts on its own.
        BodyKind::When(_) | BodyKind::Otherwise(_) | BodyKind::Repeat(_) => 0,
        _ => (item.span.end - item.span.start) as usize,
    };
    1 + (statement + note + prefix.len()) / BYTES_PER_UNIT
}

/// The greatest length that a body states.
fn stated_length(items: &[BodyItem]) -> Option<u32> {
    items.iter().find_map(|item| match &item.kind {
        BodyKind::Length(length) => u32::try_from(length.first.value.max(length.last.value)).ok(),
        _ => None,
    })
}

/// The span of a word at the beginning of a statement.
fn first_word(statement: Span, word: &str) -> Span {
    let end = statement.start.saturating_add(word.len() as u32);
    Span::new(statement.start, end.min(statement.end))
}
