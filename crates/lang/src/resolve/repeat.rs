//! Repeated groups: spelled out into one copy for each element, as arrays are, so that nobody behind has to know of them.
//!
//! An element that need not be there becomes a page: it holds where the payload reaches to the element's end, or where the count says so.
//! Only a group that gives rows stays one: it is a page that holds always, and says where its first element begins.

use wirelore_bits::Place;
use wirelore_model::{Element, PageId, ROWS_FROM_MOST};

use crate::syntax::tree::{self, BodyItem, BodyKind, ByteIndex, FlatPosition, Integer, Piece, Position, Repeat, Times};
use crate::{Diagnostic, Rule, Site};

use super::budget::MOST_ELEMENTS;
use super::flat::{Count, FlatPage, RowGroup, Scope};
use super::flatten::Run;
use super::place::{FARTHEST_BYTE, from_anchor};
use super::settings::Settings;

/// Where the elements of a group are.
#[derive(Debug, Clone, Copy)]
struct Elements {
    /// The payload byte at which the first one begins.
    start: u32,
    size: u32,
    count: u32,
}

impl Elements {
    /// The payload bytes in front of an element and behind it, counted from 0.
    fn element(&self, index: u32) -> (u32, u32) {
        let begin = self.start.saturating_add(self.size.saturating_mul(index));
        (begin, begin.saturating_add(self.size))
    }
}

impl<'t> Run<'_, '_, 't> {
    /// Puts a group in as often as it can be there.
    pub(super) fn repeat(&mut self, repeat: &'t Repeat<'t>, scope: usize) {
        let outer = self.flat.scopes[scope].clone();
        let site = outer.site(repeat.head);
        let Some(times) = &repeat.times else { return };
        if matches!(times, Times::Rows) {
            return self.rows(repeat, &outer, scope);
        }
        let Some(elements) = self.elements_of(repeat, times, &outer, site) else { return };
        if !self.enter(site) {
            return;
        }
        let up_to =
            repeat.up_to.map_or(elements.count, |written| u32::try_from(written.value).unwrap_or(elements.count));
        if let Times::Signal(signal) = times {
            // A count beyond the greatest one has no page, and that is told when it is met.
            let count = Count { signal, least: 0, most: Some(up_to) };
            if self.has_room_for_page(site) {
                self.element_page(scope, site, (Some(count), None, None));
            }
        }
        for index in 0..elements.count {
            let (begin, end) = elements.element(index);
            let page = match times {
                Times::Number(_) | Times::Rows => outer.page,
                _ if !self.has_room_for_page(site) => break,
                Times::ToEnd => {
                    let element = Element { number: index + 1, most: elements.count, reaches: end };
                    Some(self.element_page(scope, site, (None, Some(element), None)))
                }
                Times::Signal(signal) => {
                    let count = Count { signal, least: index + 1, most: None };
                    let element = Element { number: index + 1, most: elements.count, reaches: 0 };
                    Some(self.element_page(scope, site, (Some(count), Some(element), None)))
                }
            };
            let mut inner = outer.clone();
            inner.settings = outer.settings.inside(outer.file, &repeat.body.items);
            inner.base = begin;
            inner.element = Some((begin, end));
            inner.suffix = format!("{}[{}]", outer.suffix, index + 1);
            inner.page = page;
            self.block(&repeat.body, inner);
        }
        self.depth -= 1;
    }

    /// Puts a group in whose elements give a row each: as one element, which stands behind the bytes in front of the group.
    fn rows(&mut self, repeat: &'t Repeat<'t>, outer: &Scope, scope: usize) {
        let site = outer.site(repeat.head);
        self.say_needless_bound(repeat, outer);
        let Some(group) = self.row_group(repeat, outer, site) else { return };
        if !self.has_room_for_page(site) || !self.enter(site) {
            return;
        }
        let mut inner = outer.clone();
        inner.settings = outer.settings.inside(outer.file, &repeat.body.items);
        inner.base = group.from;
        inner.element = group.size.map(|size| (group.from, group.from.saturating_add(size)));
        inner.in_rows = true;
        inner.page = Some(self.element_page(scope, site, (None, None, Some(group))));
        self.block(&repeat.body, inner);
        self.depth -= 1;
    }

    /// Where rows begin, and how long their elements are; none where a message says what is wrong.
    fn row_group(&mut self, repeat: &Repeat, outer: &Scope, site: Site) -> Option<RowGroup> {
        if outer.is_in_group() {
            let message = "a group that gives rows stands in another repeated group";
            let message = Diagnostic::new(Rule::RowsImpossible, site, message)
                .here("goes on to the end of the payload, and so may the one around");
            let help = "write `as rows` only at the outer group, and `up to` with a number at the inner one";
            self.shared.messages.push(message.help(help));
            return None;
        }
        let from = match &repeat.from {
            Some(from) => self.base(outer, from)?,
            None => outer.base,
        };
        if from > ROWS_FROM_MOST {
            let message = format!("rows cannot begin behind more than {ROWS_FROM_MOST} bytes");
            let message = Diagnostic::new(Rule::RowsImpossible, site, message)
                .here(format!("{from} bytes of the payload are in front, and each row holds them again"));
            self.shared.messages.push(message);
            return None;
        }
        let size = match repeat.size {
            Some(_) => Some(self.size_of(repeat, outer, site)?),
            None => None,
        };
        let one = Elements { start: from, size: size.unwrap_or(1), count: 1 };
        if outer.limit.is_some_and(|limit| one.element(0).1 > limit) {
            self.say_outside(one, outer.limit, outer, site);
            return None;
        }
        Some(RowGroup { from, size })
    }

    fn element_page(
        &mut self,
        scope: usize,
        site: Site,
        (count, element, rows): (Option<Count<'t>>, Option<Element>, Option<RowGroup>),
    ) -> PageId {
        let id = PageId(self.flat.pages.len() as u32);
        let parent = self.flat.scopes[scope].page;
        let switch = self.switches;
        self.switches += 1;
        let (lengths, timing) = (Vec::new(), Vec::new());
        let page = FlatPage { parent, switch, when: None, count, element, rows, scope, site, lengths, timing };
        self.flat.pages.push(page);
        id
    }

    /// Where the elements are; none where a message says what is wrong.
    fn elements_of(&mut self, repeat: &Repeat, times: &Times, outer: &Scope, site: Site) -> Option<Elements> {
        let start = match &repeat.from {
            Some(from) => self.base(outer, from)?,
            None => outer.base,
        };
        let size = self.size_of(repeat, outer, site)?;
        let most = match times {
            Times::Number(number) => {
                self.say_needless_bound(repeat, outer);
                self.bounded(*number, outer)?
            }
            Times::ToEnd | Times::Signal(_) | Times::Rows => match repeat.up_to {
                Some(up_to) => self.bounded(up_to, outer)?,
                None => {
                    self.shared.messages.push(
                        Diagnostic::new(
                            Rule::RepeatUnbounded,
                            site,
                            "how often this group is there at most is not said",
                        )
                        .here("may go on without end")
                        .help("write the greatest number behind it, as in `, up to 32`"),
                    );
                    return None;
                }
            },
        };
        let end_of_all = outer.element.map(|(_, end)| end).or(outer.limit);
        let farthest = FARTHEST_BYTE as u32 + 1;
        let fitting = end_of_all.unwrap_or(farthest).min(farthest).saturating_sub(start) / size;
        let elements = Elements { start, size, count: most.min(fitting) };
        if fitting == 0 || (fitting < most && !matches!(times, Times::ToEnd)) {
            let asked = if matches!(times, Times::ToEnd) { 1 } else { most };
            self.say_outside(Elements { count: asked, ..elements }, end_of_all, outer, site);
        }
        Some(elements)
    }

    /// A number of elements that there can be.
    fn bounded(&mut self, written: Integer, outer: &Scope) -> Option<u32> {
        if (1..=i128::from(MOST_ELEMENTS)).contains(&written.value) {
            return Some(written.value as u32);
        }
        let message = format!("a group cannot be there {} times", written.value);
        self.shared.messages.push(
            Diagnostic::new(Rule::ArrayTooLarge, outer.site(written.span), message)
                .here(format!("1 to {MOST_ELEMENTS} is possible")),
        );
        None
    }

    fn say_needless_bound(&mut self, repeat: &Repeat, outer: &Scope) {
        let Some(up_to) = repeat.up_to else { return };
        let message = match repeat.times {
            Some(Times::Rows) => {
                "`up to` is for groups whose elements are numbered, and rows go on as long as the payload"
            }
            _ => "`up to` is for groups whose number varies, and this one's is fixed",
        };
        self.shared.messages.push(
            Diagnostic::new(Rule::UnexpectedWord, outer.site(up_to.span), message)
                .here("says the same again, or contradicts")
                .help("take `up to` out"),
        );
    }

    fn say_outside(&mut self, elements: Elements, end: Option<u32>, outer: &Scope, site: Site) {
        let end = end.unwrap_or(FARTHEST_BYTE as u32 + 1);
        let counting = outer.settings.counting;
        let Elements { start, size, count } = elements;
        let (_, needed) = elements.element(count - 1);
        let (several, need) =
            if count == 1 { ("one element".to_owned(), "needs") } else { (format!("{count} elements"), "need") };
        let of = if size == 1 { "1 byte".to_owned() } else { format!("{size} bytes") };
        let (what, end) = match outer.element {
            Some(_) => ("element around", end.saturating_sub(outer.base)),
            None => ("frame", end),
        };
        let bytes = if end == 1 { "byte" } else { "bytes" };
        let text = format!(
            "{several} of {of} from byte {} on {need} byte {}, but the {what} has {end} {bytes}",
            counting.byte(start.saturating_sub(outer.base)),
            counting.byte(needed.saturating_sub(outer.base + 1)),
        );
        self.shared.messages.push(
            Diagnostic::new(Rule::OutsideFrame, site, text)
                .here("does not fit")
                .help("correct the number of elements, their size, the byte where they begin, or the length"),
        );
    }

    /// The bytes of one element: as stated, else up to the last place in it.
    fn size_of(&mut self, repeat: &Repeat, outer: &Scope, site: Site) -> Option<u32> {
        if let Some(size) = repeat.size {
            if (1..=FARTHEST_BYTE).contains(&size.value) {
                return Some(size.value as u32);
            }
            let message = format!("an element cannot have {} bytes", size.value);
            let message = Diagnostic::new(Rule::RepeatSize, outer.site(size.span), message);
            self.shared.messages.push(message.here("no size for an element"));
            return None;
        }
        let settings = outer.settings.inside(outer.file, &repeat.body.items);
        let message = match Measure::of(&repeat.body, settings) {
            Measure { is_open: Some(why), .. } => format!("how long an element is cannot be told from {why}"),
            Measure { bytes: 0, is_open: None } => "nothing in this group says how long an element is".to_owned(),
            Measure { bytes, is_open: None } => return Some(bytes),
        };
        self.shared.messages.push(
            Diagnostic::new(Rule::RepeatSize, site, message)
                .here("elements of unknown size")
                .help("write the bytes of one element behind it, as in `, size 4 bytes`"),
        );
        None
    }
}

/// How far the places of a body reach, before anybody reads them with care.
#[derive(Debug, Clone, Copy, Default)]
struct Measure {
    bytes: u32,
    /// What keeps the size from being told.
    is_open: Option<&'static str>,
}

impl Measure {
    fn of(body: &tree::Body, settings: Settings) -> Self {
        let mut measure = Self::default();
        measure.body(body, settings);
        measure
    }

    fn body(&mut self, body: &tree::Body, settings: Settings) {
        for item in &body.items {
            self.item(item, body, settings);
        }
    }

    fn item(&mut self, item: &BodyItem, body: &tree::Body, settings: Settings) {
        match &item.kind {
            BodyKind::Signal(index) => self.signal(&body.signals[*index], settings),
            BodyKind::Unknown(place) | BodyKind::Unused(place) => self.place(place, settings),
            BodyKind::When(when) => self.inner(&when.body, settings),
            BodyKind::Otherwise(body) => self.inner(body, settings),
            BodyKind::UseLayout(_) => self.is_open = Some("the layout in it"),
            BodyKind::Repeat(_) => self.is_open = Some("the group in it"),
            _ => {}
        }
    }

    fn inner(&mut self, body: &tree::Body, settings: Settings) {
        // The file only matters for messages, and there are none here.
        self.body(body, settings.inside(crate::FileId(0), &body.items));
    }

    /// An array reaches as far as its last element.
    fn signal(&mut self, signal: &tree::Signal, settings: Settings) {
        let mut own = Self::default();
        signal.place.iter().for_each(|place| own.place(place, settings));
        let extras = signal.extras();
        let steps = extras.elements.map_or(0, |elements| elements.last.value.saturating_sub(elements.first.value));
        let steps = u32::try_from(steps).unwrap_or(0);
        match extras.step.map(|step| step.value) {
            Some(tree::Step::Bytes(bytes)) => self.reach(own.bytes.saturating_add(bytes.saturating_mul(steps))),
            Some(tree::Step::Bits(_)) => self.is_open = Some("an array in steps of bits"),
            None => self.reach(own.bytes),
        }
        self.is_open = self.is_open.or(own.is_open);
    }

    fn place(&mut self, place: &tree::Place, settings: Settings) {
        for piece in place.pieces() {
            match &piece.value {
                Piece::Bits { msb, lsb } => {
                    self.position(msb, settings);
                    self.position(lsb, settings);
                }
                Piece::Bit(position) => self.position(position, settings),
                Piece::Byte(byte) => self.byte(*byte, settings),
                Piece::Bytes { msb, lsb } => {
                    self.byte(*msb, settings);
                    self.byte(*lsb, settings);
                }
                Piece::Counted { anchor, at, width, order } => {
                    let order = order.or(place.order.map(|order| order.value));
                    let at = flat(at, settings);
                    let width = u32::try_from(width.value).ok();
                    let found =
                        at.zip(width).zip(order).map(|((at, width), order)| from_anchor(*anchor, at, width, order));
                    self.reach(found.and_then(Result::ok).as_ref().map_or(0, |place: &Place| place.last_byte() + 1));
                }
            }
        }
    }

    fn position(&mut self, position: &Position, settings: Settings) {
        self.reach(position.byte.saturating_add(1).saturating_sub(settings.counting.first()));
    }

    fn byte(&mut self, byte: ByteIndex, settings: Settings) {
        match byte {
            ByteIndex::Number(number) => {
                let byte = u32::try_from(number.value).unwrap_or(0);
                self.reach(byte.saturating_add(1).saturating_sub(settings.counting.first()));
            }
            ByteIndex::Last(_) => self.is_open = Some("a place that goes to its end"),
        }
    }

    fn reach(&mut self, bytes: u32) {
        // What is farther than any payload is told where the place is read.
        self.bytes = self.bytes.max(bytes.min(FARTHEST_BYTE as u32));
    }
}

/// The position that a flat number or BYTE.BIT means.
fn flat(at: &FlatPosition, settings: Settings) -> Option<wirelore_bits::BitPosition> {
    let first = settings.counting.first();
    match at {
        FlatPosition::Flat(number) => {
            let number = u32::try_from(number.value).ok()?;
            Some(wirelore_bits::BitPosition::new(number / 8, (number % 8) as u8))
        }
        FlatPosition::Position(position) => {
            let bit = u8::try_from(position.bit.checked_sub(first)?).ok().filter(|bit| *bit < 8)?;
            let bit = if settings.counting.bits_from_top { 7 - bit } else { bit };
            Some(wirelore_bits::BitPosition::new(position.byte.checked_sub(first)?, bit))
        }
    }
}
