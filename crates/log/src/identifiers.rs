//! Whether identifiers are what they are taken for.
//!
//! The public registry says that the identifier word of link type 227 is big-endian. Some recordings hold it the other way
//! round. Neither order is tried silently: every word is weighed both ways, and a log that speaks for the other order
//! says so in its report, so that the user can ask for it.

use crate::frame::STANDARD_ID_MAX;
use crate::notes::counted;

/// The flag of a 29-bit identifier (link-type registry, LINKTYPE 227).
pub(crate) const EXTENDED_FLAG: u32 = 0x8000_0000;
/// The flag of a remote frame (same source).
pub(crate) const REMOTE_FLAG: u32 = 0x4000_0000;
/// The flag of an error message (same source).
pub(crate) const ERROR_FLAG: u32 = 0x2000_0000;
/// The bits of the identifier itself (same source).
pub(crate) const IDENTIFIER_BITS: u32 = 0x1FFF_FFFF;
/// Error classes sit in the low bits of the word; a bit up here is no class.
const NO_ERROR_CLASS: u32 = 0x1FFF_0000;

/// How many words speak for one byte order alone.
#[derive(Debug, Clone, Default)]
pub(crate) struct Evidence {
    words: u64,
    for_read_order: u64,
    for_other_order: u64,
}

impl Evidence {
    /// Weighs one word, given as it is read.
    pub(crate) fn weigh(&mut self, word: u32) {
        self.words += 1;
        match (makes_sense(word), makes_sense(word.swap_bytes())) {
            (true, false) => self.for_read_order += 1,
            (false, true) => self.for_other_order += 1,
            _ => {}
        }
    }

    /// Adds the words of another piece of the log.
    pub(crate) fn join(&mut self, piece: &Self) {
        self.words += piece.words;
        self.for_read_order += piece.for_read_order;
        self.for_other_order += piece.for_other_order;
    }

    /// A sentence where the words speak clearly for the other order: at least a quarter of all, four times as many as against.
    pub(crate) fn doubt(&self) -> Option<&'static str> {
        let clear = self.for_other_order > 4 * self.for_read_order && 4 * self.for_other_order >= self.words;
        clear.then_some(
            "the identifiers make sense only with their bytes in the other order than they were read in; \
             read it with --swapped-identifiers (or without, where that was said) if the frames are not the ones you expect",
        )
    }
}

/// How identifiers are written in a text that does not say which are extended: eight hex digits stand for 29 bits, but not
/// where a recorder writes every identifier with eight.
#[derive(Debug, Clone, Default)]
pub(crate) struct Digits {
    small_of_eight: u64,
    any_of_fewer: bool,
}

impl Digits {
    /// Weighs one identifier.
    #[inline]
    pub(crate) fn weigh(&mut self, id: u32, has_eight: bool) {
        if has_eight {
            self.small_of_eight += u64::from(id <= STANDARD_ID_MAX);
        } else {
            self.any_of_fewer = true;
        }
    }

    /// Adds the identifiers of another piece of the log.
    pub(crate) fn join(&mut self, piece: &Self) {
        self.small_of_eight += piece.small_of_eight;
        self.any_of_fewer |= piece.any_of_fewer;
    }

    /// A sentence where the digits alone made identifiers extended, and no identifier shows that they tell anything.
    pub(crate) fn note(&self) -> Option<String> {
        let count = self.small_of_eight;
        (count > 0 && !self.any_of_fewer).then(|| {
            format!(
                "every id has eight hex digits, so those below 800 are taken as extended too (in {}); if they are not, \
                 add a column `extended` with 1 or 0, or name the one that tells it with --columns 'extended=COLUMN'",
                counted(count, "frame")
            )
        })
    }
}

/// Whether a word can be the identifier of a frame that was seen on a wire, or an error class.
fn makes_sense(word: u32) -> bool {
    if word & ERROR_FLAG != 0 {
        return word & NO_ERROR_CLASS == 0;
    }
    word & EXTENDED_FLAG != 0 || word & IDENTIFIER_BITS <= STANDARD_ID_MAX
}

#[cfg(test)]
mod tests {
    use super::*;

    fn weighed(words: &[u32]) -> Evidence {
        let mut evidence = Evidence::default();
        words.iter().for_each(|&word| evidence.weigh(word));
        evidence
    }

    #[test]
    fn words_in_the_registry_order_raise_no_doubt() {
        assert_eq!(weighed(&[0x123, 0x98FE_F100, 0x4000_0123, 0x7E8, 0x2000_0040]).doubt(), None);
    }

    #[test]
    fn the_same_words_turned_over_do() {
        let words = [0x123_u32, 0x98FE_F100, 0x4000_0123, 0x7E8, 0x2000_0040].map(u32::swap_bytes);
        assert!(weighed(&words).doubt().is_some());
    }

    #[test]
    fn one_odd_word_among_many_raises_none() {
        let mut words = vec![0x123_u32; 100];
        words.push(0x123_u32.swap_bytes());
        assert_eq!(weighed(&words).doubt(), None);
    }

    #[test]
    fn words_that_fit_both_ways_say_nothing() {
        assert_eq!(weighed(&[0x8000_0080, 0x9234_5698]).doubt(), None);
    }
}
