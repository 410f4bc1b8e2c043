//! The sections of a flat table while it is made, and the file that they make.

use std::collections::HashMap;

use wirelore_bits::Affine;
use wirelore_lorec::layout::{HEAD_BYTES, MAGIC, SECTIONS, Section, VERSION, checksum};

/// The rows so far.
#[derive(Debug, Default)]
pub(super) struct Sections {
    text: Vec<u8>,
    words: [Vec<u32>; SECTIONS],
    /// Texts and formulas that are there already: many signals share them.
    texts: HashMap<String, [u32; 2]>,
    formulas: HashMap<Affine, u32>,
}

impl Sections {
    /// How many records a section has so far.
    pub(super) fn count(&self, section: Section) -> u32 {
        (self.words[section as usize].len() / section.words().max(1)) as u32
    }

    /// Appends a record, of as many words as the section's records have.
    pub(super) fn push<const N: usize>(&mut self, section: Section, record: [u32; N]) {
        debug_assert_eq!(N, section.words());
        self.words[section as usize].extend(record);
    }

    /// The place of a text; a new one is appended.
    pub(super) fn text(&mut self, text: &str) -> [u32; 2] {
        if text.is_empty() {
            return [0, 0];
        }
        if let Some(&place) = self.texts.get(text) {
            return place;
        }
        let place = [self.text.len() as u32, text.len() as u32];
        self.text.extend_from_slice(text.as_bytes());
        self.texts.insert(text.to_owned(), place);
        place
    }

    /// The number of a formula; a new one is appended.
    pub(super) fn formula(&mut self, formula: &Affine) -> u32 {
        if let Some(&number) = self.formulas.get(formula) {
            return number;
        }
        let number = self.count(Section::Formulas);
        let parts = [formula.factor_numerator() as u128, formula.offset_numerator() as u128, formula.denominator()];
        let words = parts.iter().flat_map(|part| (0..4).map(move |at| (part >> (32 * at)) as u32));
        self.words[Section::Formulas as usize].extend(words);
        self.formulas.insert(*formula, number);
        number
    }

    /// The whole file; `None` where it would be longer than lengths of 32 bits can say.
    pub(super) fn into_file(mut self) -> Option<Vec<u8>> {
        // Words stand at multiples of four.
        self.text.resize(self.text.len().next_multiple_of(4), 0);
        let mut file = Vec::new();
        file.extend(MAGIC);
        file.extend(VERSION.to_le_bytes());
        file.extend([0; HEAD_BYTES - 12]);
        for section in Section::ALL {
            let count = if section == Section::Text { self.text.len() as u32 } else { self.count(section) };
            let at = HEAD_BYTES - 8 * SECTIONS + 8 * section as usize;
            let start = u32::try_from(file.len()).ok()?;
            file[at..at + 4].copy_from_slice(&start.to_le_bytes());
            file[at + 4..at + 8].copy_from_slice(&count.to_le_bytes());
            if section == Section::Text {
                file.extend_from_slice(&self.text);
            }
            file.extend(self.words[section as usize].iter().flat_map(|word| word.to_le_bytes()));
        }
        let length = u32::try_from(file.len()).ok()?;
        file[12..16].copy_from_slice(&length.to_le_bytes());
        let sum = checksum(&file);
        file[16..20].copy_from_slice(&sum.to_le_bytes());
        Some(file)
    }
}

/// The two words of a number of 64 bits.
pub(super) fn two_words(number: u64) -> [u32; 2] {
    [number as u32, (number >> 32) as u32]
}
