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
    /// The algorithm's name.
    pub algorithm: Name<'t>,
    /// The bytes it covers: first and last.
    pub over: Vec<Spanned<(ByteIndex, ByteIndex)>>,
    /// `starting N`
    pub starting: Option<Integer>,
    /// `first bytes ...`
    pub first: Vec<Integer>,
    /// `then bytes ...`
    pub then: Vec<Integer>,
}
