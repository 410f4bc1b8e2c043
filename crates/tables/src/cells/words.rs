//! Words of which few are different: each cell is the number of its word in a dictionary that only grows, word by word as they turn up.

use std::sync::Arc;

use arrow_array::types::Int32Type;
use arrow_array::{ArrayRef, DictionaryArray, PrimitiveArray};
use rustc_hash::FxHashMap;
use wirelore_decode::{Column, Numbers, Reading, Value};
use wirelore_model::{Meaning, StateWord};

use super::numbers::Slots;
use super::{Bytes, Cells, push_each};

/// Words from a small set.
#[derive(Debug)]
pub(crate) struct Words {
    keys: Slots<i32>,
    known: FxHashMap<Box<str>, i32>,
    in_order: Vec<Box<str>>,
    /// The dictionary as it was last given out; the same one as long as no word is added, so that it is written once.
    shared: Option<ArrayRef>,
}

impl Words {
    pub(crate) fn new() -> Self {
        Self { keys: Slots::new(), known: FxHashMap::default(), in_order: Vec::new(), shared: None }
    }

    /// The number of a word.
    pub(crate) fn key(&mut self, word: &str) -> i32 {
        if let Some(key) = self.known.get(word) {
            return *key;
        }
        // No set of words here comes near 2^31 of them.
        let key = self.in_order.len() as i32;
        self.known.insert(word.into(), key);
        self.in_order.push(word.into());
        self.shared = None;
        key
    }

    /// Appends a word by its number.
    #[inline]
    pub(crate) fn append(&mut self, key: Option<i32>) {
        self.keys.push(key);
    }

    pub(crate) fn take(&mut self, rows: usize) -> ArrayRef {
        let (keys, there) = self.keys.take(rows);
        let words = self.shared.get_or_insert_with(|| {
            let mut texts = Bytes::new(true);
            self.in_order.iter().for_each(|word| texts.append(Some(word.as_bytes())));
            texts.take(usize::MAX)
        });
        let keys = PrimitiveArray::<Int32Type>::new(keys, there);
        // Panics where a key leads nowhere: each one is the place of a word in the list.
        Arc::new(DictionaryArray::<Int32Type>::new(keys, Arc::clone(words)))
    }

    pub(crate) fn restock(&mut self) {
        self.keys.restock();
    }
}

/// The words of a signal's raw values.
#[derive(Debug)]
pub(crate) struct WordsOf {
    words: Words,
    by_number: FxHashMap<i128, i32>,
}

impl WordsOf {
    /// With the described readings first in the dictionary, in their order.
    pub(crate) fn new(described: &[StateWord]) -> Self {
        let mut words = Words::new();
        for word in described.iter().filter(|word| word.meaning == Meaning::Reading) {
            words.key(&word.word);
        }
        Self { words, by_number: FxHashMap::default() }
    }

    fn key(&mut self, reading: &Reading<'_>) -> Option<i32> {
        let Value::Integer(number) = reading.value else { return None };
        if let Some(key) = self.by_number.get(&number) {
            return Some(*key);
        }
        let key = match reading.word {
            Some(word) => self.words.key(word),
            None => self.words.key(&number.to_string()),
        };
        self.by_number.insert(number, key);
        Some(key)
    }
}

impl Cells for WordsOf {
    fn push(&mut self, reading: Option<&Reading<'_>>) {
        let key = reading.and_then(|reading| self.key(reading));
        self.words.append(key);
    }

    fn extend(&mut self, column: &Column<'_>, rows: usize) {
        let Some(Numbers::F64(numbers)) = column.numbers() else { return push_each(self, column, rows) };
        // State words hardly ever change from row to row.
        let mut last: Option<(f64, i32)> = None;
        for (row, number) in numbers.iter().enumerate() {
            let key = match last {
                _ if column.valid().is_some_and(|valid| !valid.has(row)) => None,
                Some((before, key)) if before == *number => Some(key),
                _ => {
                    let key = column.reading(row).and_then(|reading| self.key(&reading));
                    last = key.map(|key| (*number, key));
                    key
                }
            };
            self.words.append(key);
        }
    }

    fn take(&mut self, rows: usize) -> ArrayRef {
        self.words.take(rows)
    }

    fn restock(&mut self) {
        self.words.restock();
    }
}

/// Trouble codes: of the many possible ones few turn up.
#[derive(Debug)]
pub(crate) struct Codes {
    words: Words,
}

impl Codes {
    pub(crate) fn new() -> Self {
        Self { words: Words::new() }
    }
}

impl Cells for Codes {
    fn push(&mut self, reading: Option<&Reading<'_>>) {
        let key = match reading.map(|reading| &reading.value) {
            Some(Value::TroubleCode(code)) => Some(self.words.key(code.as_str())),
            _ => None,
        };
        self.words.append(key);
    }

    fn extend(&mut self, column: &Column<'_>, rows: usize) {
        push_each(self, column, rows);
    }

    fn take(&mut self, rows: usize) -> ArrayRef {
        self.words.take(rows)
    }

    fn restock(&mut self) {
        self.words.restock();
    }
}
