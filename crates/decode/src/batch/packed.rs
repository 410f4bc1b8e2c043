//! Rows of long messages, one behind the other: each takes as many bytes as came, not as many as could have come.
//!
//! A message can have tens of thousands of bytes where most have ten. The loops of the signals want rows of equal length, so these are
//! made just before they are decoded, a block at a time, as long as the longest row of the block.

use super::BLOCK_ROWS;
use super::rows::{RowSlice, TIME_BYTES};
use super::tag::{Gathered, Tag};

/// What a block of equal rows takes at most, unless a single row takes more; and what a buffer keeps of its memory.
pub(super) const BLOCK_BYTES: usize = 1 << 20;
/// The shortest row that is laid out: rows of two words are taken for those of classic CAN.
const LEAST_STRIDE: usize = 3 * TIME_BYTES;

/// Rows of whatever length, in the order of the log.
#[derive(Debug, Clone)]
pub(super) struct PackedRows {
    /// At most so much of each payload is kept, in whole words.
    most_bytes: usize,
    /// Time and payload of each row.
    bytes: Vec<u8>,
    /// Where each row ends.
    ends: Vec<usize>,
    /// What each row is beside that.
    tags: Vec<Tag>,
}

impl PackedRows {
    /// Rows of payloads of which at most so much is kept.
    pub(super) fn new(most_bytes: usize) -> Self {
        Self { most_bytes, bytes: Vec::new(), ends: Vec::new(), tags: Vec::new() }
    }

    pub(super) fn len(&self) -> usize {
        self.ends.len()
    }

    /// What times and payloads take.
    pub(super) fn held_bytes(&self) -> usize {
        self.bytes.len()
    }

    /// Forgets the rows and keeps the room, unless a few giants made it large.
    pub(super) fn clear(&mut self) {
        self.bytes.clear();
        self.bytes.shrink_to(BLOCK_BYTES);
        self.ends.clear();
        self.tags.clear();
    }

    /// Adds a frame.
    pub(super) fn push(&mut self, tag: Tag, row: &Gathered<'_>) {
        self.push_parts(tag, &row.time_ns.unwrap_or(0).to_le_bytes(), row.payload);
    }

    /// Adds rows of equal length.
    pub(super) fn extend(&mut self, rows: &RowSlice<'_>) {
        for row in 0..rows.len() {
            self.push_parts(rows.tag(row), rows.time(row), rows.payload(row));
        }
    }

    /// Adds the rows of another buffer for the same description.
    pub(super) fn append(&mut self, other: &Self) {
        let begin = self.bytes.len();
        self.bytes.extend_from_slice(&other.bytes);
        self.ends.extend(other.ends.iter().map(|end| begin + end));
        self.tags.extend_from_slice(&other.tags);
    }

    fn push_parts(&mut self, tag: Tag, time: &[u8], payload: &[u8]) {
        self.bytes.extend_from_slice(time);
        self.bytes.extend_from_slice(payload.get(..self.most_bytes).unwrap_or(payload));
        self.ends.push(self.bytes.len());
        self.tags.push(tag);
    }

    /// Lays the rows of the next block out, from `first` on.
    pub(super) fn lay_out<'a>(&'a self, first: usize, into: &'a mut Vec<u8>) -> RowSlice<'a> {
        let (count, stride) = self.block(first);
        into.clear();
        into.reserve_exact(count * stride);
        into.resize(count * stride, 0);
        for (row, place) in (first..).zip(into.chunks_exact_mut(stride)) {
            let bytes = self.row(row);
            if let Some(place) = place.get_mut(..bytes.len()) {
                place.copy_from_slice(bytes);
            }
        }
        RowSlice::of_equal(into, stride, self.tags.get(first..first + count).unwrap_or_default())
    }

    /// How many rows from `first` on make a block, and how many bytes each of them then has.
    fn block(&self, first: usize) -> (usize, usize) {
        let (mut count, mut stride) = (0, LEAST_STRIDE);
        for row in first..self.len().min(first.saturating_add(BLOCK_ROWS)) {
            let with_it = stride.max(self.stride(row));
            if count > 0 && with_it.saturating_mul(count + 1) > BLOCK_BYTES {
                break;
            }
            (count, stride) = (count + 1, with_it);
        }
        (count, stride)
    }

    /// The bytes that a row needs among equal ones: eight can be read from each byte of the payload on, as windows do.
    fn stride(&self, row: usize) -> usize {
        let payload_bytes = self.row(row).len().saturating_sub(TIME_BYTES);
        TIME_BYTES + (payload_bytes + 7).next_multiple_of(8).min(self.most_bytes)
    }

    /// Time and payload of a row.
    fn row(&self, row: usize) -> &[u8] {
        let begin = row.checked_sub(1).and_then(|before| self.ends.get(before)).copied().unwrap_or(0);
        let end = self.ends.get(row).copied().unwrap_or(begin);
        self.bytes.get(begin..end).unwrap_or_default()
    }

    /// The memory that is taken, used or not.
    #[cfg(test)]
    pub(super) fn capacity_bytes(&self) -> usize {
        let (ends, tags) = (self.ends.capacity() * size_of::<usize>(), self.tags.capacity() * size_of::<Tag>());
        self.bytes.capacity() + ends + tags
    }
}

#[cfg(test)]
mod tests {
    use wirelore_log::Channel;

    use super::super::instruction_sets::InstructionSet;
    use super::super::rows::Rows;
    use super::*;

    fn row(time_ns: i64, payload: &[u8]) -> Gathered<'_> {
        Gathered { time_ns: Some(time_ns), channel: Channel(time_ns as u16 % 3), source: None, payload }
    }

    /// Every block of some rows, and how many rows each has.
    fn blocks(rows: &Rows, mut each: impl FnMut(usize, &RowSlice<'_>)) -> Vec<usize> {
        let (mut first, mut laid_out, mut counts) = (0, Vec::new(), Vec::new());
        while first < rows.len() {
            let block = rows.block(first, &mut laid_out);
            each(first, &block);
            counts.push(block.len());
            first += block.len();
        }
        counts
    }

    #[test]
    fn blocks_hold_what_came_in_as_much_room_as_their_longest_row_needs() {
        let data: Vec<u8> = (0..70_000_u32).map(|at| (at * 7 + at / 251) as u8).collect();
        let lengths = [0, 1, 8, 9, 4095, 3, 300, 65_535, 5000, 256, 7, 70_000];
        for mut rows in [Rows::to_the_end(65_536, 8), Rows::to_the_end(8, 8), Rows::new(4096, 8)] {
            let most = if rows.keeps_all() { usize::MAX } else { 4096 };
            let payload = |number: usize| &data[..lengths[(number * 5 + number / 7) % lengths.len()]];
            (0..1200).for_each(|number| rows.push(&row(number as i64, payload(number))));
            let mut words = [0; BLOCK_ROWS];
            let mut times = [0; BLOCK_ROWS];
            let counts = blocks(&rows, |first, block| {
                block.times_ns(InstructionSet::best(), &mut times);
                for (at, &time_ns) in times.iter().enumerate().take(block.len()) {
                    let payload = payload(first + at);
                    let held = &payload[..payload.len().min(most)];
                    assert_eq!(time_ns, (first + at) as i64);
                    assert_eq!((block.tag(at).length(), block.payload(at)), (payload.len() as u32, held));
                }
                for window in [0, 4, 1020, 4088, 65_528] {
                    block.words(InstructionSet::best(), window, false, &mut words);
                    for (at, &word) in words.iter().enumerate().take(block.len()) {
                        let held = block.payload(at).get(window..).unwrap_or_default();
                        let mut bytes = [0; 8];
                        held.iter().zip(&mut bytes).for_each(|(held, byte)| *byte = *held);
                        assert_eq!(word, u64::from_le_bytes(bytes), "window {window} of {}", first + at);
                    }
                }
            });
            assert!(counts.iter().all(|count| (1..=BLOCK_ROWS).contains(count)), "{counts:?}");
        }
    }

    #[test]
    fn memory_follows_what_came() {
        let mut rows = Rows::to_the_end(65_536, 8);
        (0..10_000).for_each(|number| rows.push(&row(number, b"a short one")));
        assert!(rows.capacity_bytes() < 1 << 20, "{}", rows.capacity_bytes());
        let mut laid_out = Vec::new();
        assert_eq!(rows.block(0, &mut laid_out).len(), BLOCK_ROWS);
        assert!(laid_out.capacity() < 1 << 15, "{}", laid_out.capacity());

        rows.clear();
        (0..100).for_each(|number| rows.push(&row(number, &[1; 40_000])));
        assert_eq!(rows.block(0, &mut laid_out).len(), (1 << 20) / 40_016);
        assert!(laid_out.capacity() <= 1 << 20);
        rows.push(&row(100, &[2; 5 << 20]));
        assert_eq!(blocks(&rows, |_, _| ()), [26, 26, 26, 22, 1]);
        rows.clear();
        rows.push(&row(101, &[3]));
        assert!(rows.capacity_bytes() < 2 << 20, "what a giant took is given back: {}", rows.capacity_bytes());
    }

    #[test]
    fn a_few_long_rows_wait_as_short_as_many_small_ones() {
        let mut rows = Rows::to_the_end(65_536, 8);
        (0..100).for_each(|number| rows.push(&row(number, &[0; 20])));
        assert_eq!(rows.weight(), 100);
        (0..100).for_each(|number| rows.push(&row(number, &[0; 10_000])));
        assert!((900..1100).contains(&rows.weight()), "{}", rows.weight());
    }

    #[test]
    fn equal_rows_are_packed_once_one_is_longer_than_their_room() {
        let payloads: [&[u8]; 6] = [&[1; 8], &[2; 8], &[3; 12], &[4; 8], &[5; 3], &[6; 64]];
        for cut in 0..=6 {
            let mut parts = [Rows::to_the_end(8, 8), Rows::to_the_end(8, 8)];
            for (at, payload) in payloads.iter().enumerate() {
                parts[usize::from(at >= cut)].push(&row(at as i64, payload));
            }
            let [mut whole, second] = parts;
            whole.append(&second);
            // Eight rows more in one run, as a front buffer gives them.
            whole.extend(&[7; 8 * 16], Tag::new(8, Channel(1), None, true), &[]);
            let mut held = Vec::new();
            blocks(&whole, |_, block| held.extend((0..block.len()).map(|row| block.payload(row).to_vec())));
            let expected: Vec<Vec<u8>> =
                payloads.iter().map(|payload| payload.to_vec()).chain((0..8).map(|_| vec![7; 8])).collect();
            assert_eq!(held, expected, "cut {cut}");
            assert_eq!(whole.narrow_and_usual(), None);
        }
    }
}
