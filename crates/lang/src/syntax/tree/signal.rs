//! Signals: kind, formula, unit and clauses.

use std::borrow::Cow;

use wirelore_bits::Ratio;
use wirelore_model::Charset;

use super::{ByteIndex, Exact, Formula, Head, Integer, Name, Place, RawRange, StateWord};
use crate::{Span, Spanned};

/// `signal NAME[1..12] "title" in PLACE [KIND] [= FORMULA UNIT][, clauses]`
#[derive(Debug, Clone, PartialEq)]
pub struct Signal<'t> {
    /// Name and title.
    pub head: Head<'t>,
    /// Where it sits; missing where it could not be read.
    pub place: Option<Place>,
    /// `signed` and its like.
    pub kind: Option<Spanned<Kind>>,
    /// What stands behind `=`.
    pub value: Option<Value>,
    /// The unit behind the formula or curve.
    pub unit: Option<Spanned<UnitText<'t>>>,
    /// `range LOW..HIGH`
    pub range: Option<Spanned<(Ratio, Ratio)>>,
    /// What most signals do not have; see [`Signal::extras`].
    pub extras: Option<Box<Extras<'t>>>,
    /// A part of it could not be read, and a message says so: what is missing here is not missing in the text.
    pub incomplete: bool,
}

impl<'t> Signal<'t> {
    /// What most signals do not have; all of it missing where nothing is said.
    #[must_use]
    pub fn extras(&self) -> &Extras<'t> {
        const NOTHING: &Extras<'static> = &Extras::NOTHING;
        self.extras.as_deref().unwrap_or(NOTHING)
    }

    /// The same, to be filled in.
    pub(crate) fn extras_mut(&mut self) -> &mut Extras<'t> {
        self.extras.get_or_insert_with(|| Box::new(Extras::NOTHING))
    }
}

/// The parts of a signal that few have. (They are kept apart from those that nearly all have: there are tens of thousands of signals.)
#[derive(Debug, Clone, PartialEq)]
pub struct Extras<'t> {
    /// `[1..12]`
    pub elements: Option<Elements>,
    /// `step 2 bytes`
    pub step: Option<Spanned<Step>>,
    /// `states NAME` or `states { ... }`
    pub states: Option<Spanned<StatesClause<'t>>>,
    /// `absent RAW, RAW..RAW`
    pub absent: Vec<RawRange>,
    /// `fault RAW, RAW..RAW`
    pub fault: Vec<RawRange>,
    /// `size NAME`: the signal that says how many bytes there are.
    pub size: Option<Name<'t>>,
    /// `counter LOW..HIGH step N`
    pub counter: Option<Box<Spanned<Counter>>>,
    /// `checksum ...`
    pub checksum: Option<Box<Spanned<Checksum<'t>>>>,
    /// `shown in hex`
    pub shown: Option<Span>,
    /// `protected by ...`: then there is nothing else, and the place follows from the profile.
    pub protection: Option<Box<Spanned<Protection<'t>>>>,
}

impl Extras<'_> {
    /// None of it.
    const NOTHING: Self = Self {
        elements: None,
        step: None,
        states: None,
        absent: Vec::new(),
        fault: Vec::new(),
        size: None,
        counter: None,
        checksum: None,
        shown: None,
        protection: None,
    };
}

/// The element numbers of an array, both inside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Elements {
    /// The first.
    pub first: Integer,
    /// The last.
    pub last: Integer,
    /// With the brackets.
    pub span: Span,
}

/// The distance from one element of an array to the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// In bytes.
    Bytes(u32),
    /// In bits, in the signal's own order.
    Bits(u32),
}

/// How bits are read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// `unsigned`
    Unsigned,
    /// `signed`
    Signed,
    /// `sign_magnitude`
    SignMagnitude,
    /// `float`
    Float,
    /// `bcd`
    Bcd,
    /// `flag`
    Flag,
    /// `trouble_code`
    TroubleCode,
    /// `text`, `text latin1`, `text utf8`
    Text(Charset),
    /// `bytes`
    Bytes,
}

/// What stands behind `=`.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A formula.
    Formula(Formula),
    /// `curve { 0: -40, 255: 150 }`
    Curve {
        /// The points.
        points: Vec<(Integer, Exact)>,
        /// With the braces.
        span: Span,
    },
}

/// A unit as written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnitText<'t> {
    /// A bare symbol.
    Symbol(Cow<'t, str>),
    /// In quotes.
    Quoted(Cow<'t, str>),
}

/// `states ...` of a signal.
#[derive(Debug, Clone, PartialEq)]
pub enum StatesClause<'t> {
    /// A table by name.
    Table(Name<'t>),
    /// Words of its own.
    Own(Vec<StateWord<'t>>),
}

/// `counter LOW..HIGH step N`
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Counter {
    /// The first count.
    pub low: Integer,
    /// The last count.
    pub high: Integer,
    /// `step N`
    pub step: Option<Integer>,
}

/// `checksum ALGORITHM over bytes A..B, C..D starting N first bytes ... then bytes ...`
#[derive(Debug, Clone, PartialEq)]
pub struct Checksum<'t> {
    /// The algorithm.
    pub algorithm: Algorithm<'t>,
    /// The bytes it covers: first and last.
    pub over: Vec<Spanned<(ByteIndex, ByteIndex)>>,
    /// `starting N`
    pub starting: Option<Integer>,
    /// `first bytes ...`
    pub first: Vec<MixedIn<'t>>,
    /// `then bytes ...`
    pub then: Vec<MixedIn<'t>>,
}

/// How a checksum is calculated.
#[derive(Debug, Clone, PartialEq)]
pub enum Algorithm<'t> {
    /// By name.
    Named(Name<'t>),
    /// `crc width N poly N start N xor N reflected`
    Crc(Box<Spanned<CrcParameters>>),
}

impl Algorithm<'_> {
    /// Where it is written.
    #[must_use]
    pub fn span(&self) -> Span {
        match self {
            Self::Named(name) => name.span,
            Self::Crc(parameters) => parameters.span,
        }
    }
}

/// `width N poly N start N xor N reflected`
#[derive(Debug, Clone, PartialEq)]
pub struct CrcParameters {
    /// `width N`
    pub width: Integer,
    /// `poly N`
    pub poly: Integer,
    /// `start N`
    pub start: Option<Integer>,
    /// `xor N`
    pub xor: Option<Integer>,
    /// `reflected`
    pub reflected: bool,
}

/// A byte that goes into a checksum beside those that it covers.
#[derive(Debug, Clone, PartialEq)]
pub enum MixedIn<'t> {
    /// A number.
    Byte(Integer),
    /// `id N`
    Identifier(Integer),
    /// `signal NAME`
    Signal(Name<'t>),
}

/// `protected by e2e PROFILE MODE, data id N, at byte N, over bytes A..B, delta up to N`
#[derive(Debug, Clone, PartialEq)]
pub struct Protection<'t> {
    /// The number of the profile.
    pub profile: Integer,
    /// How its data id is mixed in.
    pub mode: Option<Name<'t>>,
    /// `data id N`, `data ids N, N, ...`
    pub data_ids: Option<Spanned<Vec<Integer>>>,
    /// `at byte N`
    pub at: Option<Spanned<ByteIndex>>,
    /// `over bytes A..B`
    pub over: Option<Spanned<(ByteIndex, ByteIndex)>>,
    /// `delta up to N`
    pub delta: Option<Integer>,
}
