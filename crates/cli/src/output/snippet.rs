//! Texts that are copied very often.

/// The longest text that is kept ready for copying, in bytes.
pub(crate) const LONGEST_BYTES: usize = 96;
/// What is copied of every text, whatever its length: most are shorter.
const FIRST_BYTES: usize = 32;

/// A short text with room behind it, so that a copy is a few moves of fixed length and needs no look at its length.
#[derive(Clone)]
pub(crate) struct Snippet {
    bytes: [u8; LONGEST_BYTES],
    length: usize,
}

impl Snippet {
    /// `None` for a text that is too long.
    pub(crate) fn new(text: &[u8]) -> Option<Self> {
        let mut bytes = [0; LONGEST_BYTES];
        bytes.get_mut(..text.len())?.copy_from_slice(text);
        Some(Self { bytes, length: text.len() })
    }

    /// Copies the text to a place with [`LONGEST_BYTES`] of room, and tells where it ends. What stood behind that end is lost.
    #[inline(always)]
    pub(crate) fn copy_to(&self, at: usize, to: &mut [u8]) -> usize {
        let (first, rest) = self.bytes.split_at(FIRST_BYTES);
        to[at..at + FIRST_BYTES].copy_from_slice(first);
        if self.length > FIRST_BYTES {
            to[at + FIRST_BYTES..at + LONGEST_BYTES].copy_from_slice(rest);
        }
        at + self.length
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_of_every_length_are_copied_whole() {
        let text: Vec<u8> = (0..=LONGEST_BYTES as u8).collect();
        let mut room = [b'#'; LONGEST_BYTES + 1];
        for length in 0..=LONGEST_BYTES {
            let snippet = Snippet::new(&text[..length]).expect("short enough");
            assert_eq!(snippet.copy_to(1, &mut room), 1 + length);
            assert_eq!((room[0], &room[1..=length]), (b'#', &text[..length]));
        }
        assert!(Snippet::new(&text).is_none());
    }
}
