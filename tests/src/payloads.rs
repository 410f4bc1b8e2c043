//! Single messages read by name through a description, for checks against what documents print of them.

use std::collections::BTreeMap;

use wirelore_decode::{Decoder, Reading, Value};
use wirelore_lang::check_text;
use wirelore_model::{Database, Signal};

/// A description made ready.
#[derive(Debug)]
pub struct Described {
    /// What it says.
    pub database: Database,
    decoder: Decoder,
}

/// What a message says: its signals by name.
#[derive(Debug)]
pub struct Said {
    signals: BTreeMap<String, One>,
    /// It ends before all of it is there.
    pub too_short: bool,
    /// The signal whose value has no page, and that value.
    pub without_page: Option<(String, i128)>,
}

#[derive(Debug)]
struct One {
    number: Option<f64>,
    shown: String,
    word: Option<String>,
    unit: String,
    is_outside: bool,
}

impl Described {
    /// A text without files.
    ///
    /// # Panics
    /// Where it has mistakes, warnings included.
    #[must_use]
    pub fn by(text: &str) -> Self {
        let checked = check_text("check.lore", text);
        assert!(checked.diagnostics.is_empty(), "{:#?}", checked.diagnostics);
        let database = checked.database.expect("a description without mistakes has a database");
        let decoder = Decoder::new(&database).expect("it can be decoded");
        Self { database, decoder }
    }

    /// One that comes with the program.
    #[must_use]
    pub fn standard(name: &str) -> Self {
        Self::by(&format!("use standard {name}\n"))
    }

    /// Reads a message, given as pairs of hexadecimal digits.
    ///
    /// # Panics
    /// Where there is no such frame, or the digits are none.
    #[must_use]
    pub fn read(&self, frame: &str, hex: &str) -> Said {
        self.read_bytes(frame, &bytes(hex))
    }

    /// Reads a message that says several things: each of them.
    ///
    /// # Panics
    /// As for [`Described::read`].
    #[must_use]
    pub fn read_rows(&self, frame: &str, hex: &str) -> Vec<Said> {
        let (id, _) = self.database.frame_named(frame).unwrap_or_else(|| panic!("{frame} is not described"));
        let payload = bytes(hex);
        let (mut rows, mut said) = (self.decoder.rows(id, &payload), Vec::new());
        while let Some(row) = rows.next_row() {
            said.push(self.read_bytes(frame, row));
        }
        said
    }

    fn read_bytes(&self, frame: &str, payload: &[u8]) -> Said {
        let (id, described) = self.database.frame_named(frame).unwrap_or_else(|| panic!("{frame} is not described"));
        let mut signals = BTreeMap::new();
        let outcome = self.decoder.decode(id, payload, |signal, reading| {
            let signal = &described.signals[signal.index()];
            let before = signals.insert(signal.label.name.clone(), One::of(signal, &reading));
            assert!(before.is_none(), "{frame}.{} is said twice", signal.label.name);
        });
        let without_page = outcome.unmatched.map(|told| {
            let name = described.signals[told.selector.index()].label.name.clone();
            (name, told.number.unwrap_or_default())
        });
        Said { signals, too_short: outcome.too_short, without_page }
    }
}

impl One {
    fn of(signal: &Signal, reading: &Reading<'_>) -> Self {
        let shown = match &reading.value {
            Value::Integer(number) => number.to_string(),
            Value::Number(number) => number.to_string(),
            Value::TroubleCode(code) => code.to_string(),
            Value::Text(text) => text.to_string(),
            Value::Bytes(bytes) => bytes.iter().map(|byte| format!("{byte:02X}")).collect::<Vec<_>>().join(" "),
            Value::NoReading => "no reading".to_owned(),
            Value::SensorFault => "sensor fault".to_owned(),
            other => format!("{other:?}"),
        };
        let unit = signal.unit.as_ref().map(|unit| unit.as_str().to_owned()).unwrap_or_default();
        let word = reading.word.map(str::to_owned);
        Self { number: reading.value.number(), shown, word, unit, is_outside: reading.outside_range }
    }
}

impl Said {
    fn one(&self, signal: &str) -> &One {
        self.signals.get(signal).unwrap_or_else(|| panic!("{signal} is not there, but {:?}", self.signals.keys()))
    }

    /// Whether a signal is there.
    #[must_use]
    pub fn has(&self, signal: &str) -> bool {
        self.signals.contains_key(signal)
    }

    /// The names of the signals that are there, in the order of the alphabet.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.signals.keys().map(String::as_str)
    }

    /// A signal's number.
    ///
    /// # Panics
    /// Where it is not there, or is no number.
    #[must_use]
    pub fn number(&self, signal: &str) -> f64 {
        let one = self.one(signal);
        one.number.unwrap_or_else(|| panic!("{signal} is no number: {}", one.shown))
    }

    /// A signal's number with its unit, text, bytes, trouble code, `no reading` or `sensor fault`.
    ///
    /// # Panics
    /// Where it is not there.
    #[must_use]
    pub fn shown(&self, signal: &str) -> String {
        let One { shown, unit, number, .. } = self.one(signal);
        if unit.is_empty() || number.is_none() { shown.clone() } else { format!("{shown} {unit}") }
    }

    /// Whether a signal's number lies outside its described range.
    ///
    /// # Panics
    /// Where it is not there.
    #[must_use]
    pub fn is_outside(&self, signal: &str) -> bool {
        self.one(signal).is_outside
    }

    /// A signal's word.
    ///
    /// # Panics
    /// Where it is not there, or has none.
    #[must_use]
    pub fn word(&self, signal: &str) -> &str {
        self.one(signal).word.as_deref().unwrap_or_else(|| panic!("{signal} has no word"))
    }

    /// A signal's unit.
    ///
    /// # Panics
    /// Where it is not there.
    #[must_use]
    pub fn unit(&self, signal: &str) -> &str {
        &self.one(signal).unit
    }
}

/// Bytes out of pairs of hexadecimal digits.
///
/// # Panics
/// Where they are none.
#[must_use]
pub fn bytes(hex: &str) -> Vec<u8> {
    hex.split_whitespace().map(|pair| u8::from_str_radix(pair, 16).expect("two hexadecimal digits")).collect()
}
