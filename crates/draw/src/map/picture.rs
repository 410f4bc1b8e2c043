//! A finished layout: rectangles, lines and words with their places in pixels.

/// A point of the picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Point {
    pub(crate) x: i32,
    pub(crate) y: i32,
}

/// A shorter way to write points.
pub(crate) fn at(x: i32, y: i32) -> Point {
    Point { x, y }
}

/// An upright rectangle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Rect {
    pub(crate) x: i32,
    pub(crate) y: i32,
    pub(crate) width: i32,
    pub(crate) height: i32,
}

impl Rect {
    pub(crate) fn right(&self) -> i32 {
        self.x + self.width
    }

    pub(crate) fn bottom(&self) -> i32 {
        self.y + self.height
    }

    pub(crate) fn middle(&self) -> Point {
        at(self.x + self.width / 2, self.y + self.height / 2)
    }
}

/// The box of a unit.
#[derive(Debug)]
pub(crate) struct UnitBox {
    pub(crate) unit: usize,
    pub(crate) rect: Rect,
    pub(crate) tall: bool,
}

/// What a line is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Role {
    /// The network itself: units hang on it.
    Rail,
    /// From the network to a box.
    Stub,
    /// A link of its own from point to point.
    Link,
    /// A piece of a ring, in the direction of the data.
    Ring,
}

/// A line of straight pieces.
#[derive(Debug)]
pub(crate) struct Line {
    pub(crate) net: usize,
    pub(crate) role: Role,
    /// The unit at its last point, if there is one.
    pub(crate) unit: Option<usize>,
    /// From the network to the unit.
    pub(crate) points: Vec<Point>,
    /// It meets its network's line where it begins.
    pub(crate) joins: bool,
}

/// The name of a network.
#[derive(Debug)]
pub(crate) struct NetLabel {
    pub(crate) net: usize,
    /// The room for it.
    pub(crate) rect: Rect,
    /// Where the words above the line end, and those below begin; the same for words that stand in an open place.
    pub(crate) line_y: i32,
    /// The row goes on from another one.
    pub(crate) continued: bool,
}

/// Everything with its place.
#[derive(Debug, Default)]
pub(crate) struct Picture {
    pub(crate) width: i32,
    pub(crate) height: i32,
    pub(crate) boxes: Vec<UnitBox>,
    pub(crate) lines: Vec<Line>,
    pub(crate) labels: Vec<NetLabel>,
}
