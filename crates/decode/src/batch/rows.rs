//! Gathered frames of one description: time and payload side by side, row after row, in one buffer that is used again.
//!
//! A row of classic CAN has 16 bytes; whatever is unusual about it (another length or channel than the rows before,
//! no time, a source) goes into a second buffer that stays empty while nothing is. Messages that can be much longer are
//! [packed](super::packed).

use wirelore_log::Channel;

use super::BLOCK_ROWS;
use super::instruction_sets::{InstructionSet, VectorLoop};
use super::packed::PackedRows;
use super::tag::{Gathered, Tag};
use crate::checks::Origin;

/// The time in front of each payload.
pub(super) const TIME_BYTES: usize = 8;
/// Payloads that can be longer are packed. A CAN FD frame has 64 bytes, one of FlexRay 254.
const EQUAL_BYTES_MOST: usize = 256;
/// So many bytes of packed rows wait no longer than a row of equal ones.
const BYTES_LIKE_A_ROW: usize = 1024;

/// The frames of one description that wait for being decoded, in the order of the log.
#[derive(Debug, Clone)]
pub(crate) struct Rows {
    bytes: Vec<u8>,
    /// Bytes of a row: the time, and room for the payload in whole words.
    stride: usize,
    /// At most so much of each payload is kept; more than there is room for where something runs to the payload's end.
    most_bytes: usize,
    usual: Tag,
    /// What the next row is expected to be: as usual, or [`Tag::NONE`] as long as rows are tagged or packed.
    expected: Tag,
    /// One for each row, or none at all: then every row is as usual.
    tags: Vec<Tag>,
    /// The origin of each row's frame, where its checks or its source ask for it; else empty.
    origins: Vec<Origin>,
    /// Once there are these, the times, payloads and tags of all rows are here.
    packed: Option<PackedRows>,
}

impl Rows {
    /// Rows with room for `payload_bytes` of each payload; frames have `usual_bytes` as a rule.
    pub(crate) fn new(payload_bytes: usize, usual_bytes: u32) -> Self {
        let room = payload_bytes.max(1).next_multiple_of(8);
        Self::keeping(room, room, usual_bytes)
    }

    /// The same where something runs to the end of the payload: longer ones than expected are kept whole.
    pub(crate) fn to_the_end(payload_bytes: usize, usual_bytes: u32) -> Self {
        Self::keeping(payload_bytes.max(1).next_multiple_of(8), usize::MAX, usual_bytes)
    }

    fn keeping(room: usize, most_bytes: usize, usual_bytes: u32) -> Self {
        let usual = Tag::new(usual_bytes, Channel(0), None, true);
        let mut rows = Self {
            bytes: Vec::new(),
            stride: TIME_BYTES + room,
            most_bytes,
            usual,
            expected: usual,
            tags: Vec::new(),
            origins: Vec::new(),
            packed: None,
        };
        if room > EQUAL_BYTES_MOST {
            rows.pack();
        }
        rows
    }

    pub(crate) fn len(&self) -> usize {
        self.packed.as_ref().map_or(self.bytes.len() / self.stride, PackedRows::len)
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// How much waits, in rows. Packed rows can be of any length, so a KiB of them counts like one of others.
    pub(crate) fn weight(&self) -> usize {
        let of_packed = |packed: &PackedRows| packed.len().max(packed.held_bytes() / BYTES_LIKE_A_ROW);
        self.packed.as_ref().map_or_else(|| self.len(), of_packed)
    }

    /// Forgets the rows and keeps the room.
    pub(crate) fn clear(&mut self) {
        self.bytes.clear();
        self.tags.clear();
        self.origins.clear();
        self.expected = self.usual;
        if let Some(packed) = &mut self.packed {
            packed.clear();
        }
    }

    /// Adds a frame.
    pub(crate) fn push(&mut self, row: &Gathered<'_>) {
        let tag = row.tag();
        if tag != self.expected && self.take_unusual(tag, row) {
            return;
        }
        let time = row.time_ns.unwrap_or(0).to_le_bytes();
        let end = self.bytes.len() + self.stride;
        self.bytes.extend_from_slice(&time);
        let room = self.stride - TIME_BYTES;
        self.bytes.extend_from_slice(row.payload.get(..room).unwrap_or(row.payload));
        self.bytes.resize(end, 0);
    }

    /// Adds a frame of a table whose rows all keep their origins.
    pub(crate) fn push_with_origin(&mut self, row: &Gathered<'_>, origin: Origin) {
        self.origins.push(origin);
        self.push(row);
    }

    /// Takes a row that is not as expected, where rows are packed. Otherwise notes what it is, and false: it is still to be added.
    #[inline(never)]
    fn take_unusual(&mut self, tag: Tag, row: &Gathered<'_>) -> bool {
        if row.payload.len().min(self.most_bytes) > self.stride - TIME_BYTES {
            self.pack();
        }
        match &mut self.packed {
            Some(packed) => packed.push(tag, row),
            None => self.tag(tag),
        }
        self.packed.is_some()
    }

    /// Packs all rows, those that are there and those to come.
    fn pack(&mut self) {
        if self.packed.is_some() {
            return;
        }
        let mut packed = PackedRows::new(self.most_bytes);
        packed.extend(&self.equal(0, usize::MAX));
        (self.bytes, self.tags) = (Vec::new(), Vec::new());
        (self.usual, self.expected) = (Tag::NONE, Tag::NONE);
        self.packed = Some(packed);
    }

    /// Notes what the next row is; the first row says which channel is usual.
    fn tag(&mut self, tag: Tag) {
        let count = self.len();
        if count == 0 {
            self.usual = self.usual.on(tag.channel());
            self.expected = self.usual;
            if tag == self.usual {
                return;
            }
        }
        self.expected = Tag::NONE;
        self.tags.resize(count, self.usual);
        self.tags.push(tag);
    }

    /// Adds the rows of another buffer for the same description.
    pub(crate) fn append(&mut self, other: &Self) {
        debug_assert_eq!(self.stride, other.stride, "both hold frames of one description");
        self.origins.extend_from_slice(&other.origins);
        let Some(others) = &other.packed else {
            return self.extend(&other.bytes, other.usual, &other.tags);
        };
        self.pack();
        if let Some(packed) = &mut self.packed {
            packed.append(others);
        }
    }

    /// Adds rows with their tags; without any, all are as usual there.
    pub(crate) fn extend(&mut self, bytes: &[u8], usual: Tag, tags: &[Tag]) {
        if let Some(packed) = &mut self.packed {
            let count = bytes.len() / self.stride;
            return packed.extend(&RowSlice { bytes, stride: self.stride, count, usual, tags, origins: &[] });
        }
        if self.bytes.is_empty() {
            self.usual = usual;
            self.expected = usual;
        }
        if !self.tags.is_empty() || !tags.is_empty() || self.usual != usual {
            let (own, others) = (self.len(), bytes.len() / self.stride);
            self.expected = Tag::NONE;
            self.tags.resize(own, self.usual);
            self.tags.extend_from_slice(tags);
            self.tags.resize(own + others, usual);
        }
        self.bytes.extend_from_slice(bytes);
    }

    /// What the next row is expected to be, where that is eight bytes in a row that has room for no more.
    pub(crate) fn narrow_and_usual(&self) -> Option<Tag> {
        let is_narrow = self.stride == 2 * TIME_BYTES && self.expected != Tag::NONE && self.usual.length() == 8;
        is_narrow.then_some(self.usual)
    }

    /// The rows from `first` on that are decoded together. Where rows are packed, `into` is where they are laid out.
    pub(crate) fn block<'a>(&'a self, first: usize, into: &'a mut Vec<u8>) -> RowSlice<'a> {
        match &self.packed {
            Some(packed) => {
                let rows = packed.lay_out(first, into);
                RowSlice { origins: self.origins.get(first..first + rows.len()).unwrap_or_default(), ..rows }
            }
            None => self.equal(first, BLOCK_ROWS),
        }
    }

    /// Some of the rows, from `first` on, as they lie there; none of packed ones.
    fn equal(&self, first: usize, count: usize) -> RowSlice<'_> {
        let held = self.bytes.len() / self.stride;
        let (first, last) = (first.min(held), first.saturating_add(count).min(held));
        RowSlice {
            bytes: self.bytes.get(first * self.stride..last * self.stride).unwrap_or_default(),
            stride: self.stride,
            count: last - first,
            usual: self.usual,
            tags: self.tags.get(first..last).unwrap_or_default(),
            origins: self.origins.get(first..last).unwrap_or_default(),
        }
    }

    /// Whether payloads are kept whole, however long they are.
    #[cfg(test)]
    pub(super) fn keeps_all(&self) -> bool {
        self.most_bytes == usize::MAX
    }

    /// The memory that is taken, used or not.
    #[cfg(test)]
    pub(super) fn capacity_bytes(&self) -> usize {
        let packed = self.packed.as_ref().map_or(0, PackedRows::capacity_bytes);
        self.bytes.capacity() + self.tags.capacity() * size_of::<Tag>() + packed
    }
}

/// A run of rows, lent.
#[derive(Debug, Clone, Copy)]
pub(crate) struct RowSlice<'a> {
    bytes: &'a [u8],
    stride: usize,
    count: usize,
    usual: Tag,
    tags: &'a [Tag],
    origins: &'a [Origin],
}

impl<'a> RowSlice<'a> {
    /// Rows of equal length, each with its tag.
    pub(super) fn of_equal(bytes: &'a [u8], stride: usize, tags: &'a [Tag]) -> Self {
        Self { bytes, stride, count: tags.len(), usual: Tag::NONE, tags, origins: &[] }
    }

    pub(crate) fn len(&self) -> usize {
        self.count
    }

    /// What every row is, where all are the same.
    pub(crate) fn uniform(&self) -> Option<Tag> {
        match self.tags.split_first() {
            None => Some(self.usual),
            Some((first, rest)) => rest.iter().all(|tag| tag == first).then_some(*first),
        }
    }

    pub(crate) fn tag(&self, row: usize) -> Tag {
        self.tags.get(row).copied().unwrap_or(self.usual)
    }

    /// The origin of a row's frame, where rows keep it.
    pub(crate) fn origin(&self, row: usize) -> Origin {
        self.origins.get(row).copied().unwrap_or_default()
    }

    /// The time of a row, as it lies there.
    pub(super) fn time(&self, row: usize) -> &'a [u8] {
        let begin = row * self.stride;
        self.bytes.get(begin..begin + TIME_BYTES).unwrap_or_default()
    }

    /// The time of every row, 0 where it has none.
    pub(crate) fn times_ns(&self, set: InstructionSet, into: &mut [i64]) {
        set.run(Lift { rows: *self, at: 0, into, number: i64::from_le_bytes });
    }

    /// The eight payload bytes from `window` on of every row, as numbers.
    pub(crate) fn words(&self, set: InstructionSet, window: usize, motorola: bool, into: &mut [u64]) {
        let at = TIME_BYTES + window;
        if motorola {
            set.run(Lift { rows: *self, at, into, number: u64::from_be_bytes });
        } else {
            set.run(Lift { rows: *self, at, into, number: u64::from_le_bytes });
        }
    }

    /// The bytes of a row's payload, as far as they are described.
    pub(crate) fn payload(&self, row: usize) -> &'a [u8] {
        let begin = row * self.stride + TIME_BYTES;
        let length = (self.tag(row).length() as usize).min(self.stride - TIME_BYTES);
        self.bytes.get(begin..begin + length).unwrap_or_default()
    }
}

/// Eight bytes of every row, from `at` on, as numbers in a column.
struct Lift<'a, T, N> {
    rows: RowSlice<'a>,
    at: usize,
    into: &'a mut [T],
    number: N,
}

impl<T: Default, N: Fn([u8; 8]) -> T> VectorLoop for Lift<'_, T, N> {
    type Output = ();

    #[inline(always)]
    fn run<const FUSED: bool>(self) {
        let Self { rows: RowSlice { bytes, stride, .. }, at, into, number } = self;
        // Rows of classic CAN: of a length that the compiler knows, so that no row is looked at for its bounds.
        if stride == 2 * TIME_BYTES {
            let rows = bytes.as_chunks().0.as_chunks().0;
            match at {
                0 => rows.iter().zip(into).for_each(|([time, _], into)| *into = number(*time)),
                _ => rows.iter().zip(into).for_each(|([_, payload], into)| *into = number(*payload)),
            }
            return;
        }
        for (row, into) in bytes.chunks_exact(stride).zip(into) {
            *into = row.get(at..).and_then(<[u8]>::first_chunk).map_or(T::default(), |bytes| number(*bytes));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::Source;

    fn row(time_ns: i64, payload: &[u8]) -> Gathered<'_> {
        Gathered { time_ns: Some(time_ns), channel: Channel(2), source: None, payload }
    }

    /// Address, whether the identifier is the source, length, channel, whether there is a time, and what is held of the payload.
    type Told = (Option<u8>, bool, u32, u16, bool, Vec<u8>);

    fn told(rows: &Rows) -> Vec<Told> {
        let all = rows.equal(0, usize::MAX);
        (0..all.len())
            .map(|row| {
                let tag = all.tag(row);
                let (length, channel) = (tag.length(), tag.channel().0);
                (tag.address(), tag.is_by_identifier(), length, channel, tag.has_time(), all.payload(row).to_vec())
            })
            .collect()
    }

    #[test]
    fn rows_come_back_as_they_were_given() {
        let mut rows = Rows::new(8, 8);
        rows.push(&row(-5, &[1, 2, 3, 4, 5, 6, 7, 8]));
        rows.push(&row(7, &[9; 8]));
        assert_eq!(rows.equal(0, 2).uniform().map(Tag::channel), Some(Channel(2)), "nothing unusual yet");
        rows.push(&Gathered { time_ns: None, ..row(0, &[1]) });
        rows.push(&Gathered { source: Some(Source::Address(3)), ..row(9, &[2; 12]) });
        let mut times = [1; 4];
        let mut words = [1; 4];
        for set in InstructionSet::available() {
            rows.equal(0, 4).times_ns(set, &mut times);
            rows.equal(0, 4).words(set, 0, false, &mut words);
            assert_eq!(times, [-5, 7, 0, 9]);
            assert_eq!(words, [0x0807_0605_0403_0201, 0x0909_0909_0909_0909, 1, 0x0202_0202_0202_0202]);
            rows.equal(0, 4).words(set, 0, true, &mut words);
            assert_eq!(words, [0x0102_0304_0506_0708, 0x0909_0909_0909_0909, 1 << 56, 0x0202_0202_0202_0202]);
        }
        let all = told(&rows);
        assert_eq!(all[2], (None, false, 1, 2, false, vec![1]));
        assert_eq!(all[3], (Some(3), false, 12, 2, true, vec![2; 8]), "only what is described is held");
        assert_eq!(rows.equal(1, 1).uniform().map(Tag::length), Some(8));
        assert_eq!(rows.equal(1, 2).uniform(), None);
    }

    #[test]
    fn appended_rows_are_the_rows_of_both() {
        let payloads: [&[u8]; 4] = [&[1; 8], &[2; 3], &[3; 8], &[]];
        for cut in 0..=4 {
            for channels in [[2, 2, 2, 2], [2, 2, 5, 5], [2, 5, 2, 5]] {
                let mut whole = Rows::new(8, 8);
                let mut parts = [Rows::new(8, 8), Rows::new(8, 8)];
                for (at, payload) in payloads.iter().enumerate() {
                    let row = Gathered { channel: Channel(channels[at]), ..row(at as i64, payload) };
                    whole.push(&row);
                    parts[usize::from(at >= cut)].push(&row);
                }
                let [mut first, second] = parts;
                first.append(&second);
                assert_eq!(told(&first), told(&whole), "cut {cut}, channels {channels:?}");
            }
        }
    }
}
