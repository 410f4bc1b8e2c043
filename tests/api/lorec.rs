// find.rs

#[derive(Debug, Clone, Copy)]
pub struct Network<'a> {}
impl<'a> Network<'a> {
    pub fn name(&self) -> &'a str {}
    pub fn find(&self, id: u32, extended: bool) -> Option<Frame<'a>> {}
}

// frame.rs

#[derive(Debug, Clone, Copy)]
pub struct Frame<'a> {}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Outcome {
    pub readings: u32,
    pub too_short: bool,
    pub unmatched: Option<Unmatched>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Unmatched {
    pub selector: u32,
    pub bits: u64,
}
impl<'a> Frame<'a> {
    pub fn name(&self) -> &'a str {}
    pub fn position(&self) -> u32 {}
    pub fn signals(&self) -> impl Iterator<Item = Signal<'a>> + use<'a> {}
    pub fn decode<'p>(
        &self,
        payload: &'p [u8],
        mut each: impl FnMut(Signal<'a>, Reading<'p>),
    ) -> Outcome
    where
        'a: 'p,
    {}
}

// layout.rs

pub const MAGIC: [u8; 8] = *b"\xF1LOREC\r\n";
pub const VERSION: u32 = 1;
pub const NONE: u32 = u32::MAX;
pub const HEAD_BYTES: usize = 20 + 8 * SECTIONS;
pub const SECTIONS: usize = 15;
pub const EXTENDED: u32 = 1 << 31;
pub const NUMBER_KINDS: [NumberKind; 5] = [
    NumberKind::Unsigned,
    NumberKind::Signed,
    NumberKind::SignMagnitude,
    NumberKind::Float,
    NumberKind::Bcd,
];
pub const CHARSETS: [Charset; 3] = [Charset::Ascii, Charset::Latin1, Charset::Utf8];
pub fn checksum(file: &[u8]) -> u32 {}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Section {
    Text,
    Networks,
    Runs,
    Groups,
    Frames,
    Pages,
    Switches,
    Rows,
    Tests,
    Spans,
    Signals,
    Pieces,
    Formulas,
    Points,
    Classes,
}
impl Section {
    pub const ALL: [Self; SECTIONS] = [
        Self::Text,
        Self::Networks,
        Self::Runs,
        Self::Groups,
        Self::Frames,
        Self::Pages,
        Self::Switches,
        Self::Rows,
        Self::Tests,
        Self::Spans,
        Self::Signals,
        Self::Pieces,
        Self::Formulas,
        Self::Points,
        Self::Classes,
    ];
    pub const fn words(self) -> usize {}
}
pub mod switch {
    pub const PAGES: u32 = 0;
    pub const ELEMENT: u32 = 1;
}
pub mod span {
    pub const NUMBERS: u32 = 0;
    pub const BITS: u32 = 1;
    pub const FLOATS: u32 = 2;
}
pub mod content {
    pub const NUMBER: u32 = 0;
    pub const TEXT: u32 = 1;
    pub const BYTES: u32 = 2;
}
pub mod scale {
    pub const RAW: u32 = 0;
    pub const FORMULA: u32 = 1;
    pub const CURVE: u32 = 2;
    pub const TROUBLE_CODE: u32 = 3;
}
pub mod line {
    pub const LEVEL: u32 = 0;
    pub const SLOPE: u32 = 1;
    pub const END: u32 = 2;
}
pub mod class {
    pub const READING: u32 = 0;
    pub const ABSENT: u32 = 1;
    pub const FAULT: u32 = 2;
    pub const BEYOND_CURVE: u32 = 3;
    pub const OUTSIDE: u32 = 1 << 8;
    pub const BITS: u32 = 1 << 9;
    pub const RANGE: u32 = 1 << 10;
}

// lib.rs

pub mod layout;
pub use find::Network;
pub use frame::{Frame, Outcome, Unmatched};
pub use reading::{Reading, Value};
pub use signal::Signal;
pub use table::{Lorec, LorecError};
pub use wirelore_bits::TroubleCode;
pub use wirelore_bits::typed::Text;

// reading.rs

#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading<'a> {
    pub value: Value<'a>,
    pub word: Option<&'a str>,
    pub outside_range: bool,
    pub bits: Option<u64>,
}
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value<'a> {
    Integer(i128),
    Number(f64),
    TroubleCode(TroubleCode),
    Text(Text<'a>),
    Bytes(&'a [u8]),
    NoReading,
    SensorFault,
    NotDigits,
    BeyondCurve,
    TooShort,
}

// signal.rs

#[derive(Debug, Clone, Copy)]
pub struct Signal<'a> {}
impl<'a> Signal<'a> {
    pub fn name(&self) -> &'a str {}
    pub fn unit(&self) -> Option<&'a str> {}
    pub fn position(&self) -> u32 {}
}

// table.rs

#[derive(Debug, Clone, Copy)]
pub struct Lorec<'a> {}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LorecError {
    NoTable,
    Version { found: u32 },
    Length { found: usize, needed: u32 },
    Damaged { found: u32, stored: u32 },
    Section { number: usize },
}
impl fmt::Display for LorecError {}
impl core::error::Error for LorecError {}
impl<'a> Lorec<'a> {
    pub fn new(bytes: &'a [u8]) -> Result<Self, LorecError> {}
    pub fn networks(&self) -> impl Iterator<Item = Network<'a>> + use<'a> {}
    pub fn network(&self, name: &str) -> Option<Network<'a>> {}
    pub fn frames(&self) -> impl Iterator<Item = Frame<'a>> + use<'a> {}
    pub fn frame(&self, name: &str) -> Option<Frame<'a>> {}
}
