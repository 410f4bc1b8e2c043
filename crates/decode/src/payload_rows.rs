//! One payload as rows: as often as it says something of the same sort, the bytes in front and one of these elements.

use wirelore_model::FrameId;

use crate::decoder::Decoder;
use crate::plan::{Cut, FramePlan};

/// The rows of one payload, one after the other: see [`Decoder::rows`].
#[derive(Debug)]
pub struct PayloadRows<'a> {
    plan: Option<&'a FramePlan>,
    payload: &'a [u8],
    /// The payload again from its second row on. In front of each element, where the one before was, the bytes in front of the first
    /// are written, so that a row lies there in one run.
    moved: Vec<u8>,
    next: Next,
}

/// What comes next.
#[derive(Debug, Clone, Copy)]
enum Next {
    First,
    /// An element that begins there; the first one begins at `from`.
    Element {
        from: usize,
        begin: usize,
    },
    Nothing,
}

impl PayloadRows<'_> {
    /// The next row, to be decoded like a payload of its own; `None` behind the last one. There is always a first one.
    ///
    /// Where it is not known where an element ends, its row holds the rest of the payload and is the last one.
    pub fn next_row(&mut self) -> Option<&[u8]> {
        match self.next {
            Next::First => {
                let cut = self.plan.and_then(|plan| plan.cut(self.payload));
                let Cut { from, end } = cut.unwrap_or(Cut { from: 0, end: self.payload.len() });
                self.next = behind(from, end, self.payload.len());
                self.payload.get(..end)
            }
            Next::Element { from, begin } => {
                if self.moved.is_empty() {
                    self.moved.extend_from_slice(self.payload);
                }
                let first = begin.checked_sub(from)?;
                self.moved.get_mut(first..begin)?.copy_from_slice(self.payload.get(..from)?);
                let rest = self.moved.get(first..)?;
                let cut = self.plan.and_then(|plan| plan.cut(rest)).filter(|cut| cut.from == from);
                let end = cut.map_or(rest.len(), |cut| cut.end);
                self.next = behind(from, first + end, self.payload.len());
                rest.get(..end)
            }
            Next::Nothing => None,
        }
    }
}

/// What comes behind an element.
fn behind(from: usize, end: usize, payload_bytes: usize) -> Next {
    if end < payload_bytes { Next::Element { from, begin: end } } else { Next::Nothing }
}

impl Decoder {
    /// The rows of a payload: where a group of the frame gives rows and several elements are in it, one for each, else the payload itself.
    /// [`Decoder::decode`] reads the first one.
    ///
    /// ```
    /// # use wirelore_decode::Decoder;
    /// # use wirelore_lang::check_text;
    /// # use wirelore_model::FrameId;
    /// let text = "network plug can\n\
    ///             frame answer on plug id 0x7E8, carried by iso_tp {\n\
    ///                 repeat from byte 1 to end as rows {\n\
    ///                     signal pid in byte 0\n\
    ///                     when pid is 0x0C { signal engine_speed in bytes 1..2 = raw / 4 rpm }\n\
    ///                     when pid is 0x0D { signal vehicle_speed in byte 1 = raw km/h }\n\
    ///                 }\n\
    ///             }\n";
    /// let database = check_text("plug.lore", text).database.ok_or("a mistake in the text")?;
    /// let decoder = Decoder::new(&database)?;
    /// let mut values = Vec::new();
    /// let mut rows = decoder.rows(FrameId(0), &[0x41, 0x0C, 0x1A, 0xF8, 0x0D, 0x32]);
    /// while let Some(row) = rows.next_row() {
    ///     decoder.decode(FrameId(0), row, |_, reading| values.push(reading.value.number()));
    /// }
    /// assert_eq!(values, [Some(12.0), Some(1726.0), Some(13.0), Some(50.0)]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn rows<'a>(&'a self, frame: FrameId, payload: &'a [u8]) -> PayloadRows<'a> {
        let plan = self.plan(frame).filter(|plan| plan.rows.is_some());
        PayloadRows { plan, payload, moved: Vec::new(), next: Next::First }
    }
}
