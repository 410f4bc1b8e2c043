//! Channel and identifier as they were written in the lines before: a log has millions of lines, and few hundred different ones of these.

use std::sync::Arc;

use crate::frame::{Channel, EXTENDED_ID_MAX, STANDARD_ID_MAX};
use crate::receive::PlainRun;

use super::Row;
use super::cells::{HexId, Names};
use super::words::{Line, byte_at, word_at};

/// So many can be kept. Each text has two places among them, and takes the first from another one where both are taken.
const SLOTS: usize = 4096;

/// The cells for channel and identifier of a line, in words, with the byte behind each of them and zeros behind that; and in the last byte of the second
/// word, or of the third where the text reaches that far, how many bytes they are and how many digits the identifier has. So nothing else has the
/// same words: no shorter text with zeros in the line behind it, and none that is divided otherwise.
type Text = [u64; 3];

/// All bits of so many bytes, for as many as a text that can be met again has.
const MASKS: [Text; 24] = {
    let mut masks = [[0; 3]; 24];
    let mut bytes = 0;
    while bytes < masks.len() {
        let mut at = 0;
        while at < bytes {
            masks[bytes][at / 8] |= 0xFF << (at % 8 * 8);
            at += 1;
        }
        bytes += 1;
    }
    masks
};

/// Where those cells stand in a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Places {
    /// The name of the channel; where lines have none, the identifier.
    name: u8,
    /// Eight and sixteen bytes behind that.
    name_on: [u8; 2],
    id: u8,
    id_end: u8,
    /// All bits of their text; none where it is too long to be met again.
    masks: Text,
    /// The last byte of the second word of the text, and of the third, in their place.
    division: [u64; 2],
}

impl Places {
    /// For cells that begin and end there; `None` where they can be neither met nor read.
    #[inline(always)]
    pub(super) fn new(name: u8, id: u8, id_end: u8) -> Option<Self> {
        let (bytes, digits) = (id_end.checked_sub(name)?.checked_add(1)?, id_end.wrapping_sub(id));
        let (mut masks, mut division) = ([0; 3], [0; 2]);
        match MASKS.get(usize::from(bytes)) {
            Some(of_bytes) if (1..=8).contains(&digits) => {
                masks = *of_bytes;
                division[usize::from(bytes > 15)] = u64::from(bytes << 3 | (digits - 1)) << 56;
            }
            _ if id > name => drop(Names::mask(usize::from(id - name - 1))?),
            _ => {}
        }
        let name_on = [name.checked_add(8)?, name.checked_add(16)?];
        Some(Self { name, name_on, id, id_end, masks, division })
    }

    /// How many digits the identifier has.
    #[inline(always)]
    pub(super) fn id_digits(&self) -> u8 {
        self.id_end.wrapping_sub(self.id)
    }

    /// Whether the text is known to end before the third word.
    pub(super) fn are_short(&self) -> bool {
        self.division[0] != 0
    }

    /// Their text; `SHORT` where it is known to be short.
    #[inline(always)]
    fn text<const SHORT: bool>(&self, line: &Line) -> Text {
        let Self { name, name_on: [on, further_on], masks: [first, second, third], division, .. } = *self;
        let behind = if SHORT { 0 } else { word_at(line, further_on) & third | division[1] };
        [word_at(line, name) & first, word_at(line, on) & second | division[0], behind]
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
    /// The last word of a text is zero, or its last byte is not: no line has this one.
    const FREE: Self = Self { text: [0, 0, 1], head: Head { channel: Channel(0), id: 0 } };

    /// Word by word: compared as a whole they would have to go through the memory first, and the line waits for that.
    #[inline(always)]
    fn holds(&self, [first, second, third]: Text) -> bool {
        let own = self.text;
        (own[0] ^ first) | (own[1] ^ second) | (own[2] ^ third) == 0
    }

    fn is_free(&self) -> bool {
        self.text == Self::FREE.text
    }
}

impl Heads {
    /// None yet.
    pub(super) fn new() -> Self {
        // Never on a stack, which may be small.
        let slots: Box<[Slot; SLOTS]> = vec![Slot::FREE; SLOTS].try_into().expect("as many as there are");
        Self { slots: slots.into() }
    }

    /// What the cells at some places of a line say, `SHORT` where those are known to be; `None` where the channel is not known, or the identifier none.
    #[inline(always)]
    pub(super) fn at<const SHORT: bool>(
        &mut self,
        line: &Line,
        places: &Places,
        delimiter: u8,
        names: &Names,
    ) -> Option<Head> {
        self.met(places.text::<SHORT>(line)).or_else(|| self.read(line, *places, delimiter, names))
    }

    /// What a text says, if it was met before.
    #[inline(always)]
    fn met(&self, text: Text) -> Option<Head> {
        let (first, second) = places_of(text);
        let slot = &self.slots[first];
        if slot.holds(text) {
            return Some(slot.head);
        }
        // Few of them had to take the second.
        let slot = &self.slots[second];
        slot.holds(text).then_some(slot.head)
    }

    /// What is not met reads the cells, and keeps what they say.
    #[inline(never)]
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
        let text = places.text::<false>(line);
        if places.masks[0] != 0 && self.met(text).is_none() {
            self.put(text, head);
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
fn places_of([first, second, third]: Text) -> (usize, usize) {
    const BITS: u32 = SLOTS.trailing_zeros();
    let all = first ^ second.rotate_left(32) ^ third;
    let mixed = (all ^ all >> 32).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    ((mixed >> (64 - BITS)) as usize % SLOTS, (mixed >> (64 - 2 * BITS)) as usize % SLOTS)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_learnt_is_met_and_nothing_else() {
        let mut heads = Heads::new();
        let texts =
            || (0..3_000_u64).map(|number| [number.wrapping_mul(0x0101_0001_0F03), number % 3, (number % 2) << 56]);
        assert!(texts().all(|text| heads.met(text).is_none()));
        let head = |[first, second, _]: Text| Head { channel: Channel(second as u16), id: first as u32 };
        let same = |found: Head, head: Head| (found.channel, found.id) == (head.channel, head.id);
        for text in texts() {
            heads.put(text, head(text));
            assert!(heads.met(text).is_some_and(|found| same(found, head(text))));
            assert!(heads.met([text[0] ^ 1 << 40, text[1], text[2]]).is_none_or(|found| !same(found, head(text))));
        }
        assert!(texts().all(|text| heads.met(text).is_none_or(|found| same(found, head(text)))));
    }

    #[test]
    fn zeros_and_other_odd_bytes_are_no_head() {
        let heads = Heads::new();
        let odd = [[0; 3], [1, 0, 0], [0, 1, 0], [0, 0, 2], [u64::MAX; 3], [u64::MAX, 0, 0]];
        assert!(odd.into_iter().all(|text| heads.met(text).is_none()));
        for bit in (0..192).filter(|bit| *bit != 128) {
            let text = [0, 64, 128].map(|from| 1_u64.checked_shl(u32::wrapping_sub(bit, from)).unwrap_or(0));
            assert!(heads.met(text).is_none(), "{bit}");
        }
    }
}
