//! Frames that say several things of one sort, one behind the other: where in a payload each of them ends.
//!
//! The walk through the groups is that of every frame; only what stands in a group that gives rows tells where its element ends.

use wirelore_model::{Content, Frame, Page};

use super::detail::Run;
use super::{FramePlan, Selected};

/// What a frame's plan must know beside its groups to cut payloads into rows.
#[derive(Debug, Clone)]
pub(crate) struct RowPlan {
    /// By group of the frame's plan; `None`: not in a group that gives rows.
    groups: Box<[Option<Extent>]>,
    /// By switch: whether it stands in a group that gives rows.
    switches: Box<[bool]>,
}

/// How far what is on a page takes an element.
#[derive(Debug, Clone)]
struct Extent {
    /// The byte at which the first element of the group begins.
    from: usize,
    /// The byte behind the element, where that is stated.
    stated: Option<usize>,
    /// The group around that states it as well: what is stated here holds instead.
    stated_around: Option<usize>,
    /// The element goes to here at least: what is there need not be described.
    least: usize,
    /// Something goes to the end of the payload.
    is_open: bool,
    /// Texts and bytes that are as long as other signals say.
    sized: Vec<Run>,
}

/// Where the first element of a payload stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Cut {
    pub(crate) from: usize,
    /// Not before `from`, and not behind the payload.
    pub(crate) end: usize,
}

impl RowPlan {
    /// `None` where nothing gives rows.
    pub(crate) fn new(frame: &Frame) -> Option<Box<Self>> {
        if !frame.gives_rows() {
            return None;
        }
        let mut groups: Vec<Option<Extent>> = vec![None];
        // By group: the innermost one that states where the element ends, itself or around it.
        let mut stated: Vec<Option<usize>> = vec![None];
        let mut switches: Vec<bool> = Vec::new();
        for page in &frame.pages {
            // A page stands behind the one around.
            let around = page.parent.map_or(0, |parent| parent.index() + 1);
            let from_around = groups.get(around).and_then(|extent| extent.as_ref().map(|extent| extent.from));
            switches.resize(switches.len().max(page.switch as usize + 1), false);
            switches[page.switch as usize] = from_around.is_some();
            if page.element.is_some_and(|element| element.reaches > 0)
                && let Some(Some(extent)) = groups.get_mut(around)
            {
                extent.is_open = true;
            }
            let stated_around = stated.get(around).copied().flatten().filter(|_| page.rows_from.is_none());
            let from = page.rows_from.map(|from| from as usize).or(from_around);
            let extent = from.map(|from| Extent::new(page, from, stated_around));
            let states = extent.as_ref().is_some_and(|extent| extent.stated.is_some());
            stated.push(if states { Some(groups.len()) } else { stated_around });
            groups.push(extent);
        }
        for signal in &frame.signals {
            let Some(Some(extent)) = groups.get_mut(signal.page.map_or(0, |page| page.index() + 1)) else { continue };
            let (Content::Text { bytes, size, .. } | Content::Bytes { bytes, size }) = signal.content else { continue };
            extent.is_open |= size.is_none() && bytes.last.is_none();
            if size.is_some() {
                extent.sized.extend(Run::new(frame, bytes, size));
            }
        }
        Some(Box::new(Self { groups: groups.into(), switches: switches.into() }))
    }
}

impl Extent {
    fn new(page: &Page, from: usize, stated_around: Option<usize>) -> Self {
        let stated = page.length.filter(|length| length.min == length.max).map(|length| length.max as usize);
        let least = page.length.map_or(0, |length| length.min as usize);
        Self { from, stated, stated_around, least, is_open: false, sized: Vec::new() }
    }
}

/// What is known of the first element, so far as the walk has come.
#[derive(Default)]
struct Found {
    from: Option<usize>,
    end: usize,
    /// The group that stated it last, and what it states: a page inside may state something else instead.
    innermost: Option<(usize, usize)>,
    /// The greatest end that is stated by pages which nothing inside contradicts.
    stated: Option<usize>,
    is_open: bool,
}

impl FramePlan {
    /// The first row of a payload: all of it where no group gives rows.
    #[inline]
    pub(crate) fn first_row<'a>(&self, payload: &'a [u8]) -> &'a [u8] {
        if self.rows.is_none() {
            return payload;
        }
        self.cut(payload).and_then(|cut| payload.get(..cut.end)).unwrap_or(payload)
    }

    /// Where the first element of a payload stands; `None` where no group gives rows in it.
    ///
    /// What the innermost page states comes first; of pages beside each other the one that states most. Else the element goes as far as what is
    /// there in it; and to the end of the payload where something does, or where a selector leaves open what is there.
    #[inline(never)]
    pub(crate) fn cut(&self, payload: &[u8]) -> Option<Cut> {
        let rows = self.rows.as_ref()?;
        let mut found = Found::default();
        let mut next = self.groups.first()?.next_switch;
        while let Some(switch) = self.switches.get(next as usize) {
            let is_inside = rows.switches.get(next as usize).copied().unwrap_or(false);
            next = switch.next;
            match switch.select_in(payload, payload.len()) {
                Selected::Group(number) => {
                    let Some(group) = self.groups.get(number as usize) else { continue };
                    if let Some(Some(extent)) = rows.groups.get(number as usize) {
                        found.add(number as usize, extent, group.needed_bytes as usize, payload);
                    }
                    next = group.next_switch;
                }
                Selected::Nothing(_) | Selected::TooShort => found.is_open |= is_inside,
                Selected::NotThere => {}
            }
        }
        let from = found.from?.min(payload.len());
        let all = payload.len();
        let end = found.stated().unwrap_or(if found.is_open { all } else { found.end });
        // An element without a single byte would never end.
        let end = if end > from { end.min(all) } else { all };
        Some(Cut { from, end })
    }
}

impl Found {
    fn add(&mut self, group: usize, extent: &Extent, needed_bytes: usize, payload: &[u8]) {
        self.from.get_or_insert(extent.from);
        self.end = self.end.max(needed_bytes).max(extent.least);
        if let Some(stated) = extent.stated {
            // What is inside a group is walked through directly behind it.
            if self.innermost.is_some_and(|(around, _)| Some(around) != extent.stated_around) {
                self.stated = self.stated();
            }
            self.innermost = Some((group, stated));
        }
        self.is_open |= extent.is_open;
        for run in &extent.sized {
            match run.said_end(payload) {
                Some(end) => self.end = self.end.max(end),
                None => self.is_open = true,
            }
        }
    }

    /// The byte behind the element, where that is stated.
    fn stated(&self) -> Option<usize> {
        self.stated.max(self.innermost.map(|(_, end)| end))
    }
}
