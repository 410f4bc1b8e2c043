//! Channel and identifier as they were written in the lines before: a log has millions of lines, and few hundred different ones of these.

use std::sync::Arc;

use crate::frame::{Channel, EXTENDED_ID_MAX, STANDARD_ID_MAX};
use crate::receive::PlainRun;

use super::Row;
use super::cells::{HexId, Names};
use super::words::{Line, byte_at, low_bytes, word_at};

/// So many can be kept. Each text has two places among them, and takes the first from another one where both are taken.
const SLOTS: usize = 4096;

/// The most bytes of a text that can be met again.
const TEXT_BYTES_MAX: u8 = 16;

/// The cells for channel and identifier of a line, in words, with the byte behind each of them and zeros behind that.
type Text = [u64; 2];

/// Where those cells stand in a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Places {
    /// The name of the channel; where lines have none, the identifier.
    name: u8,
    /// Eight bytes behind that.
    name_on: u8,
    id: u8,
    id_end: u8,
    /// All bits of their text; none where it is too long to be met again.
    masks: Text,
}

impl Places {
    /// For cells that begin and end there.
    #[inline(always)]
    pub(super) fn new(name: u8, id: u8, id_end: u8) -> Option<Self> {
        let bytes = id_end.checked_sub(name)?.checked_add(1)?;
        let masks = if bytes <= TEXT_BYTES_MAX {
            [low_bytes(usize::from(bytes.min(8))), low_bytes(usize::from(bytes.saturating_sub(8)))]
        } else {
            [0, 0]
        };
        Some(Self { name, name_on: name.checked_add(8)?, id, id_end, masks })
    }

    /// How many digits the identifier has.
    #[inline(always)]
    pub(super) fn id_digits(&self) -> u8 {
        self.id_end.wrapping_sub(self.id)
    }

    #[inline(always)]
    fn text(&self, line: &Line) -> Text {
        let Self { name, name_on, masks: [first, second], .. } = *self;
        [word_at(line, name) & first, word_at(line, name_on) & second]
    }

    /// What the cells say, if the channel is known and the identifier good.
    fn read(&self, line: &Line, delimiter: u8, names: &Names) -> Option<Head> {
        let (channel, is_name) = match self.id.checked_sub(self.name)? {
            0 => (Channel(0), true),
            with_its_end => names.met(line, self.name, Names::mask(usize::from(with_its_end - 1))?),
        };
        let is_apart = byte_at(line, self.id.checked_sub(1)?) == delimiter && byte_at(line, self.id_end) == delimiter;
        let (id, is_id) = HexId::of(self.id_digits().into())?.at(line, self.id);
        let is_good = is_name && is_apart && is_id && id <= EXTENDED_ID_MAX;
        is_good.then(|| Head::new(channel, id, self.id_digits() == 8))
    }
}

/// What the cells say.
#[derive(Debug, Clone, Copy)]
pub(super) struct Head {
    pub(super) channel: Channel,
    /// As in [`PlainRun::ids`].
    pub(super) id: u32,
}

impl Head {
    fn new(channel: Channel, id: u32, has_eight_digits: bool) -> Self {
        let is_long = id > STANDARD_ID_MAX || has_eight_digits;
        Self { channel, id: id | if is_long { PlainRun::EXTENDED } else { 0 } }
    }
}

#[derive(Debug, Clone, Copy)]
struct Slot {
    text: Text,
    head: Head,
}

/// Those that were read before, by the text.
#[derive(Debug, Clone)]
pub(super) struct Heads {
    /// Readers of other pieces of a log have the same, for as long as nothing new turns up.
    slots: Arc<[Slot; SLOTS]>,
}

impl Slot {
    /// A slot that is free holds a text that has its places elsewhere, and so is found nowhere.
    const FREE: Self = Self { text: [0, 0], head: Head { channel: Channel(0), id: 0 } };
    const FIRST_FREE: Self = Self { text: [1, 0], ..Self::FREE };

    fn is_free(&self) -> bool {
        self.text == Self::FREE.text || self.text == Self::FIRST_FREE.text
    }
}

impl Heads {
    /// None yet.
    pub(super) fn new() -> Self {
        let mut slots = [Slot::FREE; SLOTS];
        slots[places_of(Slot::FREE.text).0] = Slot::FIRST_FREE;
        Self { slots: Arc::new(slots) }
    }

    /// What the cells at some places of a line say; `None` where the channel is not known, or the identifier none.
    #[inline(always)]
    pub(super) fn at(&mut self, line: &Line, places: &Places, delimiter: u8, names: &Names) -> Option<Head> {
        self.met(places.text(line)).or_else(|| self.read(line, *places, delimiter, names))
    }

    /// What a text says, if it was met before.
    #[inline(always)]
    fn met(&self, text: Text) -> Option<Head> {
        let (first, second) = places_of(text);
        let slot = &self.slots[first];
        if slot.text == text {
            return Some(slot.head);
        }
        // Few of them had to take the second.
        let slot = &self.slots[second];
        (slot.text == text).then_some(slot.head)
    }

    /// What is not met reads the cells, and keeps what they say.
    #[cold]
    fn read(&mut self, line: &Line, places: Places, delimiter: u8, names: &Names) -> Option<Head> {
        let head = places.read(line, delimiter, names)?;
        self.keep(line, &places, head);
        Some(head)
    }

    /// Keeps what the cells at some places say, after a line was read in another way; not what is no identifier.
    pub(super) fn learn(&mut self, line: &Line, places: &Places, row: &Row) {
        if row.id <= EXTENDED_ID_MAX {
            self.keep(line, places, Head::new(Channel(row.channel), row.id, row.has_eight_digits));
        }
    }

    fn keep(&mut self, line: &Line, places: &Places, head: Head) {
        if places.masks != [0, 0] {
            self.put(places.text(line), head);
        }
    }

    fn put(&mut self, text: Text, head: Head) {
        let (first, second) = places_of(text);
        let is_second_free = self.slots[second].is_free();
        let place = if self.slots[first].is_free() || !is_second_free { first } else { second };
        Arc::make_mut(&mut self.slots)[place] = Slot { text, head };
    }
}

/// Fibonacci hashing: Knuth, TAOCP volume 3, section 6.4.
#[inline(always)]
fn places_of([first, second]: Text) -> (usize, usize) {
    const BITS: u32 = SLOTS.trailing_zeros();
    let mixed = (first ^ second.rotate_left(32)).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    ((mixed >> (64 - BITS)) as usize % SLOTS, (mixed >> (64 - 2 * BITS)) as usize % SLOTS)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_learnt_is_met_and_nothing_else() {
        let mut heads = Heads::new();
        let texts = || (0..3_000_u64).map(|number| [number.wrapping_mul(0x0101_0001_0F03), number % 3]);
        assert!(texts().all(|text| heads.met(text).is_none()));
        let head = |[first, second]: Text| Head { channel: Channel(second as u16), id: first as u32 };
        let same = |found: Head, head: Head| (found.channel, found.id) == (head.channel, head.id);
        for text in texts() {
            heads.put(text, head(text));
            assert!(heads.met(text).is_some_and(|found| same(found, head(text))));
            assert!(heads.met([text[0] ^ 1 << 40, text[1]]).is_none_or(|found| !same(found, head(text))));
        }
        assert!(texts().all(|text| heads.met(text).is_none_or(|found| same(found, head(text)))));
    }

    #[test]
    fn zeros_and_other_odd_bytes_are_no_head() {
        let heads = Heads::new();
        let odd = [[0, 0], [1, 0], [0, 1], [u64::MAX, u64::MAX], [u64::MAX, 0]];
        assert!(odd.into_iter().all(|text| heads.met(text).is_none()));
        for bit in 0..128 {
            let text = [1_u64.checked_shl(bit).unwrap_or(0), 1_u64.checked_shl(bit.wrapping_sub(64)).unwrap_or(0)];
            assert!(heads.met(text).is_none(), "{bit}");
        }
    }
}
