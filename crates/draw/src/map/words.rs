//! What stands in the boxes and beside the lines, broken into lines that fit.

use super::scene::{Net, Scene};
use crate::text::Face;

/// Width of a box, and of a tall one.
pub(crate) const BOX_WIDTH: i32 = 124;
pub(crate) const TALL_WIDTH: i32 = 124;
/// Width of the place for the names of networks.
pub(crate) const GUTTER_WIDTH: i32 = 200;

pub(crate) const UNIT_FACE: Face = Face::bold(11);
pub(crate) const SMALL_FACE: Face = Face::plain(9);
pub(crate) const NET_FACE: Face = Face::bold(11);
pub(crate) const FACTS_FACE: Face = Face::plain(10);
/// The room that the number before a network's name takes.
pub(crate) const BADGE_WIDTH: i32 = 22;

const SIDE_PAD: i32 = 7;
const TITLE_LEADING: i32 = 13;
const SMALL_LEADING: i32 = 11;
const NET_LEADING: i32 = 14;
/// Above and below the words of a box.
const BOX_PAD: i32 = 12;

/// The words of a box.
#[derive(Debug, Clone)]
pub(crate) struct BoxWords {
    /// The number of an exercise, above all else.
    pub(crate) numbered: bool,
    pub(crate) title: Vec<String>,
    pub(crate) small: Vec<String>,
    /// The numbers of the plain wires that end here.
    pub(crate) wires: Option<String>,
}

impl BoxWords {
    pub(crate) fn of(scene: &Scene, unit: usize, numbered: bool) -> Self {
        let unit = &scene.units[unit];
        let room = BOX_WIDTH - 2 * SIDE_PAD;
        let mut small = Vec::new();
        if unit.name != unit.title {
            small.push(SMALL_FACE.shortened(&unit.name, room));
        }
        small.extend(unit.facts.iter().take(3).map(|fact| SMALL_FACE.shortened(fact, room)));
        let numbers = unit.wires.iter().map(|wire| (wire + 1).to_string()).collect::<Vec<_>>().join(", ");
        // A piece of dotted line stands before them.
        let wires = (!numbers.is_empty()).then(|| SMALL_FACE.shortened(&format!("wire {numbers}"), room - 22));
        Self { numbered, title: UNIT_FACE.wrap(&unit.title, room, 3), small, wires }
    }

    /// How high a box must be for them.
    pub(crate) fn height(&self) -> i32 {
        let small = self.small.len() + usize::from(self.wires.is_some());
        let titles = self.title.len() + usize::from(self.numbered);
        BOX_PAD + titles as i32 * TITLE_LEADING + small as i32 * SMALL_LEADING
    }

    pub(crate) fn title_leading() -> i32 {
        TITLE_LEADING
    }

    pub(crate) fn small_leading() -> i32 {
        SMALL_LEADING
    }
}

/// The words of a network's name.
#[derive(Debug, Clone)]
pub(crate) struct NetWords {
    pub(crate) title: Vec<String>,
    pub(crate) facts: String,
}

impl NetWords {
    /// Within so much room; the number stands before the first line of the title.
    pub(crate) fn of(net: &Net, room: i32, continued: bool) -> Self {
        let title = NET_FACE.wrap(&net.title, room - BADGE_WIDTH, 2);
        let facts = if continued { "goes on".to_owned() } else { net.facts.clone() };
        Self { title, facts: FACTS_FACE.shortened(&facts, room) }
    }

    /// Within so much room inside a block, where there is less of it in width than in height.
    pub(crate) fn inner(net: &Net, room: i32) -> Self {
        let title = NET_FACE.wrap(&net.title, room - BADGE_WIDTH, 4);
        Self { title, facts: FACTS_FACE.shortened(&net.facts, room - BADGE_WIDTH) }
    }

    /// The height of all lines one below the other.
    pub(crate) fn height(&self) -> i32 {
        self.title.len().max(1) as i32 * NET_LEADING + 16
    }

    /// The room that they take above the line.
    pub(crate) fn above(&self) -> i32 {
        self.title.len().max(1) as i32 * NET_LEADING + 6
    }

    /// The room that they take below it.
    pub(crate) fn below(&self) -> i32 {
        24
    }

    pub(crate) fn leading() -> i32 {
        NET_LEADING
    }
}
