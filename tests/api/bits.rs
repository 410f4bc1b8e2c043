// affine.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Affine {}
impl Affine {
    pub fn new(factor: Ratio, offset: Ratio) -> Option<Self> {}
    pub const fn from_parts(
        factor: i128,
        offset: i128,
        denominator: u128,
    ) -> Option<Self> {}
    pub const fn identity() -> Self {}
    pub const fn is_identity(&self) -> bool {}
    pub fn factor(&self) -> Ratio {}
    pub fn offset(&self) -> Ratio {}
    pub const fn factor_numerator(&self) -> i128 {}
    pub const fn offset_numerator(&self) -> i128 {}
    pub const fn denominator(&self) -> u128 {}
    pub fn value(&self, raw: i128) -> f64 {}
    pub fn value_of_float(&self, raw: f64) -> f64 {}
    pub fn raw_float_nearest(&self, value: f64) -> f64 {}
    pub fn exact(&self, raw: i128) -> Option<Ratio> {}
    pub fn then(&self, factor: &Ratio, offset: &Ratio) -> Option<Self> {}
}
impl Default for Affine {}

// can_frame/mod.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct WireBits {
    pub nominal: u32,
    pub data: u32,
}
impl WireBits {
    pub const fn total(self) -> u32 {}
}
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Format {
    Data,
    Remote,
    Fd { bit_rate_switch: bool },
}
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Shape {
    pub extended: bool,
    pub format: Format,
}
impl Shape {
    pub const fn unstuffed(self, data_bytes: u32) -> Option<WireBits> {}
    pub const fn longest(self, data_bytes: u32) -> Option<WireBits> {}
}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CanFrame<'a> {
    pub identifier: u32,
    pub shape: Shape,
    pub error_state: bool,
    pub dlc: Option<u8>,
    pub payload: &'a [u8],
}
impl CanFrame<'_> {
    pub fn bits(&self) -> Option<WireBits> {}
}

// crc.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct CrcParameters {
    pub width: u8,
    pub poly: u64,
    pub init: u64,
    pub refin: bool,
    pub refout: bool,
    pub xorout: u64,
}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CrcError {
    Width { width: u8 },
    ValueTooWide { width: u8 },
}
impl fmt::Display for CrcError {}
impl core::error::Error for CrcError {}
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Crc {}
impl fmt::Debug for Crc {}
impl Crc {
    pub const fn new(parameters: CrcParameters) -> Result<Self, CrcError> {}
    pub const fn parameters(&self) -> &CrcParameters {}
    pub fn checksum(&self, bytes: &[u8]) -> u64 {}
    pub const fn start(&self) -> u64 {}
    pub const fn start_from(&self, init: u64) -> u64 {}
    pub fn update(&self, state: u64, bytes: &[u8]) -> u64 {}
    pub const fn finish(&self, state: u64) -> u64 {}
}
impl Crc {
    pub const SAE_J1850: Self = Self::straight(8, 0x1D, 0xFF, 0xFF);
    pub const AUTOSAR_8: Self = Self::straight(8, 0x2F, 0xFF, 0xFF);
    pub const FLEXRAY_11: Self = Self::straight(11, 0x385, 0x01A, 0);
    pub const CAN_15: Self = Self::straight(15, 0x4599, 0, 0);
    pub const IBM_3740: Self = Self::straight(16, 0x1021, 0xFFFF, 0);
    pub const ARC: Self = Self::mirrored(16, 0x8005, 0, 0);
    pub const CAN_FD_17: Self = Self::straight(17, 0x1_685B, 0, 0);
    pub const CAN_FD_21: Self = Self::straight(21, 0x10_2899, 0, 0);
    pub const FLEXRAY_24_A: Self = Self::straight(24, 0x5D_6DCB, 0xFE_DCBA, 0);
    pub const FLEXRAY_24_B: Self = Self::straight(24, 0x5D_6DCB, 0xAB_CDEF, 0);
    pub const ISO_HDLC: Self = Self::mirrored(32, 0x04C1_1DB7, 0xFFFF_FFFF, 0xFFFF_FFFF);
    pub const AUTOSAR_32: Self = Self::mirrored(
        32,
        0xF4AC_FB13,
        0xFFFF_FFFF,
        0xFFFF_FFFF,
    );
    pub const XZ_64: Self = Self::mirrored(
        64,
        0x42F0_E1EB_A9EA_3693,
        u64::MAX,
        u64::MAX,
    );
}

// decimal.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DecimalError {
    Malformed,
    TooLong,
}
impl fmt::Display for DecimalError {}
impl core::error::Error for DecimalError {}
impl Ratio {
    pub fn from_decimal(text: &str) -> Result<Self, DecimalError> {}
}
impl FromStr for Ratio {
    type Err = DecimalError;
}
impl fmt::Display for Ratio {}

// e2e/mod.rs

pub use profile::{Part, Profile};
pub const LISTED_IDS: usize = 16;
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DataId {
    One(u32),
    List([u8; LISTED_IDS]),
}
impl DataId {
    pub const fn at(&self, counter: u32) -> u32 {}
}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum E2eError {
    WrongSortOfId { takes_list: bool },
    IdTooLarge { most: u32 },
    NotAtTheFront,
    OutOfReach,
}
impl fmt::Display for E2eError {}
impl core::error::Error for E2eError {}
#[derive(Clone, Copy, Debug)]
pub struct E2e {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Found {
    pub counter: u32,
    pub sum: u64,
    pub right_sum: u64,
    pub length: Option<(u64, u64)>,
    pub data_id: Option<(u32, u32)>,
}
impl Found {
    pub const fn sum_fits(&self) -> bool {}
    pub fn length_fits(&self) -> bool {}
    pub fn data_id_fits(&self) -> bool {}
}
impl E2e {
    pub fn new(
        profile: Profile,
        data_id: DataId,
        header: u32,
    ) -> Result<Self, E2eError> {}
    pub const fn profile(&self) -> Profile {}
    pub const fn data_id(&self) -> DataId {}
    pub fn needed_bytes(&self) -> usize {}
    pub fn protect(&self, payload: &mut [u8], counter: u32) -> bool {}
    pub fn check(&self, payload: &[u8]) -> Option<Found> {}
    pub fn would_fit(&self, payload: &[u8], data_id: DataId) -> bool {}
}

// e2e/profile.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Profile {
    P01Both,
    P01Alternating,
    P01Low,
    P01Nibble,
    P02,
    P04,
    P05,
    P06,
    P07,
    P08,
    P11Both,
    P11Nibble,
    P22,
}
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Part {
    Sum,
    Counter,
    Length,
    DataId,
}
impl Part {
    pub const ALL: [Self; 4] = [Self::Sum, Self::Counter, Self::Length, Self::DataId];
}
impl Profile {
    pub const ALL: [Self; 13] = [
        Self::P01Both,
        Self::P01Alternating,
        Self::P01Low,
        Self::P01Nibble,
        Self::P02,
        Self::P04,
        Self::P05,
        Self::P06,
        Self::P07,
        Self::P08,
        Self::P11Both,
        Self::P11Nibble,
        Self::P22,
    ];
    pub const fn number(self) -> u8 {}
    pub const fn mode(self) -> Option<&'static str> {}
    pub const fn takes_list(self) -> bool {}
    pub const fn is_at_the_front(self) -> bool {}
    pub const fn greatest_id(self) -> u32 {}
    pub const fn last_count(self) -> u32 {}
    pub const fn first_count(self) -> u32 {}
    pub fn rise(self, before: u32, now: u32) -> u32 {}
    pub const fn header_bytes(self) -> u32 {}
    pub fn part(self, part: Part, header: u32) -> Option<Field> {}
}

// encoding.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum NumberKind {
    Unsigned,
    Signed,
    SignMagnitude,
    Float,
    Bcd,
}
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Encoding {}
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Number {
    Integer(i128),
    Float(f64),
}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EncodingError {
    Width { width: u8 },
    SignWithoutSize,
    FloatWidth { width: u8 },
    BcdWidth { width: u8 },
}
impl fmt::Display for EncodingError {}
impl core::error::Error for EncodingError {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InvalidDigits {
    pub digit: u8,
    pub power: u8,
}
impl fmt::Display for InvalidDigits {}
impl core::error::Error for InvalidDigits {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DoesNotFit {
    OutOfRange { lowest: i128, highest: i128 },
    BeyondFloat { width: u8 },
    NotAnInteger,
    NotAFloat,
}
impl fmt::Display for DoesNotFit {}
impl core::error::Error for DoesNotFit {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FloatBits {
    pub bits: u64,
    pub exact: bool,
}
impl Encoding {
    pub const fn new(kind: NumberKind, width: u8) -> Result<Self, EncodingError> {}
    pub const fn kind(&self) -> NumberKind {}
    pub const fn width(&self) -> u8 {}
    pub fn number(&self, bits: u64) -> Result<Number, InvalidDigits> {}
    pub fn bits(&self, number: Number) -> Result<u64, DoesNotFit> {}
    pub fn float_bits(&self, value: f64) -> Result<FloatBits, DoesNotFit> {}
    pub const fn integer_range(&self) -> Option<(i128, i128)> {}
}

// extract.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Extractor {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InsertError {
    PayloadTooShort { needed_bytes: u32, found_bytes: usize },
    BitsTooWide { width: u8, bits: u64 },
}
impl fmt::Display for InsertError {}
impl core::error::Error for InsertError {}
impl Extractor {
    pub fn new(field: &Field) -> Self {}
    pub fn extract(&self, payload: &[u8]) -> Option<u64> {}
    pub fn insert(&self, payload: &mut [u8], bits: u64) -> Result<(), InsertError> {}
}

// field.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Field {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FieldError {
    Empty,
    TooManyPieces { count: usize },
    TooWide { width: u32 },
    Overlap { first: usize, second: usize },
}
impl fmt::Display for FieldError {}
impl core::error::Error for FieldError {}
impl From<Place> for Field {}
impl Field {
    pub fn of(places: &[Place]) -> Result<Self, FieldError> {}
    pub fn places(&self) -> &[Place] {}
    pub const fn width(&self) -> u8 {}
    pub fn needed_bytes(&self) -> u32 {}
    pub fn shifted(&self, bytes: u32) -> Option<Self> {}
}

// flexray.rs

pub const HEADER_BYTES: usize = 5;
pub const TRAILER_BYTES: usize = 3;
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Header {
    pub preamble: bool,
    pub carries_data: bool,
    pub sync: bool,
    pub startup: bool,
    pub slot: u16,
    pub words: u8,
    pub cycle: u8,
}
impl Header {
    pub fn of_bytes([b0, b1, b2, b3, b4]: [u8; HEADER_BYTES]) -> (Self, u16) {}
    pub fn crc(&self) -> u16 {}
    pub fn bytes(&self) -> [u8; HEADER_BYTES] {}
    pub fn bytes_with(&self, crc: u16) -> [u8; HEADER_BYTES] {}
}
pub fn trailer(
    on_b: bool,
    header: &[u8; HEADER_BYTES],
    payload: &[u8],
) -> [u8; TRAILER_BYTES] {}

// lib.rs

pub mod can_frame;
pub mod e2e;
pub mod flexray;
pub mod lin;
pub mod payload_lengths;
pub mod sums;
pub mod text;
pub mod typed;
pub use affine::Affine;
pub use crc::{Crc, CrcError, CrcParameters};
pub use decimal::DecimalError;
pub use encoding::{
    DoesNotFit, Encoding, EncodingError, FloatBits, InvalidDigits, Number, NumberKind,
};
pub use extract::{Extractor, InsertError};
pub use field::{Field, FieldError};
pub use place::{ByteOrder, Place, PlaceError};
pub use position::{BitPosition, PositionTextError};
pub use ratio::Ratio;
pub use raw::{Fit, RawFor};
pub use scaler::{Quotient, Scaler};
pub use trouble_code::TroubleCode;

// lin.rs

pub const ID_MAX: u8 = 0x3F;
pub const BYTES_MAX: usize = 8;
pub const FIRST_CLASSIC_ID: u8 = 60;
pub const MASTER_REQUEST: u8 = 0x3C;
pub const SLAVE_RESPONSE: u8 = 0x3D;
pub const fn protected(id: u8) -> u8 {}
pub const fn is_parity_right(protected_id: u8) -> bool {}
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LinChecksum {
    Classic,
    Enhanced,
}
impl LinChecksum {
    pub fn over(self, protected_id: u8, data: &[u8]) -> u8 {}
    pub const fn other(self) -> Self {}
    pub const fn word(self) -> &'static str {}
}
pub const HEADER_BITS: u32 = 34;
pub const fn nominal_bits(data_bytes: u32) -> u32 {}
pub const fn longest_time_ns(data_bytes: u32, bits_per_second: u64) -> Option<u64> {}

// payload_lengths.rs

pub const fn can_fd_length(dlc: u8) -> u8 {}
pub const fn can_length(dlc: u8) -> u8 {}
pub const fn can_fd_dlc(length: u8) -> Option<u8> {}
pub const fn is_can_fd_length(length: u8) -> bool {}

// place.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ByteOrder {
    Intel,
    Motorola,
}
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlaceError {
    EndsUpsideDown,
    TooWide { width: u64 },
    ZeroWidth,
    BitOutOfRange { bit: u8 },
    OutsidePayload,
}
impl fmt::Display for PlaceError {}
impl core::error::Error for PlaceError {}
impl Place {
    pub const fn between(
        msb: BitPosition,
        lsb: BitPosition,
    ) -> Result<Self, PlaceError> {}
    pub const fn from_lsb(
        lsb: BitPosition,
        width: u32,
        order: ByteOrder,
    ) -> Result<Self, PlaceError> {}
    pub const fn from_msb(
        msb: BitPosition,
        width: u32,
        order: ByteOrder,
    ) -> Result<Self, PlaceError> {}
    pub const fn msb(&self) -> BitPosition {}
    pub const fn lsb(&self) -> BitPosition {}
    pub const fn width(&self) -> u8 {}
    pub const fn order(&self) -> ByteOrder {}
    pub const fn first_byte(&self) -> u32 {}
    pub const fn last_byte(&self) -> u32 {}
    pub const fn spans_bytes(&self) -> bool {}
    pub fn positions(&self) -> impl Iterator<Item = BitPosition> + use<> {}
    pub fn shifted(&self, bytes: u32) -> Option<Self> {}
    pub fn overlaps(&self, other: &Self) -> bool {}
}

// position.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BitPosition {
    pub byte: u32,
    pub bit: u8,
}
impl BitPosition {
    pub const fn new(byte: u32, bit: u8) -> Self {}
}
impl fmt::Display for BitPosition {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PositionTextError;
impl fmt::Display for PositionTextError {}
impl core::error::Error for PositionTextError {}
impl FromStr for BitPosition {
    type Err = PositionTextError;
}

// ratio.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Ratio {}
impl Ratio {
    pub const ZERO: Self = Self::whole(0);
    pub const ONE: Self = Self::whole(1);
    pub const fn whole(value: i128) -> Self {}
    pub const fn new(numerator: i128, denominator: u128) -> Option<Self> {}
    pub const fn numerator(&self) -> i128 {}
    pub const fn denominator(&self) -> u128 {}
    pub const fn is_zero(&self) -> bool {}
    pub const fn is_whole(&self) -> bool {}
    pub fn checked_add(&self, other: &Self) -> Option<Self> {}
    pub fn checked_sub(&self, other: &Self) -> Option<Self> {}
    pub fn checked_mul(&self, other: &Self) -> Option<Self> {}
    pub fn checked_div(&self, other: &Self) -> Option<Self> {}
    pub const fn checked_neg(&self) -> Option<Self> {}
    pub fn to_f64(&self) -> f64 {}
    pub fn from_f64(value: f64) -> Option<Self> {}
}
impl From<i64> for Ratio {}
impl Ord for Ratio {}
impl PartialOrd for Ratio {}

// raw.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fit {
    Exact,
    Rounded,
    OutOfRange,
}
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct RawFor {
    pub raw: i128,
    pub fit: Fit,
}
impl Affine {
    pub fn raw_nearest(&self, value: f64, range: (i128, i128)) -> RawFor {}
    pub fn raw_for_ratio(&self, value: &Ratio, range: (i128, i128)) -> RawFor {}
}

// scaler.rs

#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quotient {}
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scaler {}
impl Scaler {
    pub fn new(affine: &Affine, raw_min: i128, raw_max: i128) -> Self {}
    pub fn value(&self, raw: i64) -> f64 {}
    pub fn value_of(&self, raw: i128) -> f64 {}
    pub const fn affine(&self) -> &Affine {}
    pub const fn is_exactly_integer(&self) -> bool {}
}
impl Quotient {
    pub const IDENTITY: Self = Self {
        factor: 1,
        offset: 0,
        divisor: 1.0,
    };
    pub fn new(affine: &Affine, first: i64, last: i64) -> Option<Self> {}
    pub const fn counted_from(self, first: i64) -> Self {}
    pub fn value(&self, raw: i64) -> f64 {}
}

// serial.rs

impl TryFrom<PlaceParts> for Place {
    type Error = PlaceError;
}
impl TryFrom<EncodingParts> for Encoding {
    type Error = EncodingError;
}
impl TryFrom<AffineParts> for Affine {
    type Error = &'static str;
}
impl Serialize for BitPosition {}
impl<'de> Deserialize<'de> for BitPosition {}
impl Serialize for Ratio {}
impl<'de> Deserialize<'de> for Ratio {}
impl Serialize for Field {}
impl<'de> Deserialize<'de> for Field {}

// sums.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ByteSum {}
impl ByteSum {
    pub const WRAPPING: Self = Self::plain(Operation::Wrapping);
    pub const XOR: Self = Self::plain(Operation::Xor);
    pub const END_AROUND: Self = Self::plain(Operation::EndAround);
    pub const fn folded(self) -> Self {}
    pub const fn inverted(self) -> Self {}
    pub const fn width(&self) -> u8 {}
    pub fn checksum(&self, bytes: &[u8]) -> u64 {}
    pub const fn start(&self) -> u64 {}
    pub fn update(&self, state: u64, bytes: &[u8]) -> u64 {}
    pub const fn finish(&self, state: u64) -> u64 {}
}

// text.rs

pub const ROOM_BYTES: usize = 24;
pub fn decimal(value: f64, to: &mut [u8; ROOM_BYTES]) -> Option<usize> {}
pub fn whole(value: u64, to: &mut [u8; ROOM_BYTES]) -> usize {}

// trouble_code.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct TroubleCode {}
impl TroubleCode {
    pub fn has_width(width: u8) -> bool {}
    pub fn of_bits(bits: u64, width: u8) -> Option<Self> {}
    pub fn bits_of(text: &str, width: u8) -> Option<u64> {}
    pub fn as_str(&self) -> &str {}
}
impl fmt::Display for TroubleCode {}

// typed/checks.rs

pub mod sums {
    pub static CRC8_SAE_J1850: Crc = Crc::SAE_J1850;
    pub static CRC8_AUTOSAR: Crc = Crc::AUTOSAR_8;
    pub static CRC16_IBM_3740: Crc = Crc::IBM_3740;
    pub static CRC16_ARC: Crc = Crc::ARC;
    pub static CRC32_ISO_HDLC: Crc = Crc::ISO_HDLC;
    pub static CRC32_AUTOSAR: Crc = Crc::AUTOSAR_32;
    pub static CRC64_XZ: Crc = Crc::XZ_64;
}
pub const fn crc(parameters: CrcParameters) -> Crc {}
pub const fn data_ids(ids: u128) -> DataId {}
pub const fn sum_fits(
    found: Option<u64>,
    right: Option<u64>,
    signal: &'static str,
) -> Result<(), Damage> {}
pub fn count_fits(
    count: Option<u64>,
    is: usize,
    signal: &'static str,
) -> Result<(), NotEncoded> {}
pub const fn next_count(before: u64, low: u64, high: u64, step: u64) -> u64 {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Protection {
    pub profile: Profile,
    pub data_id: DataId,
    pub header: u32,
    pub first: usize,
    pub end: Option<usize>,
}
impl Protection {
    pub fn check(&self, payload: &[u8], signal: &'static str) -> Result<(), Damage> {}
    pub fn protect(&self, payload: &mut [u8], count: u64) -> Result<(), NotEncoded> {}
}

// typed/cut.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {}
impl Cut {
    pub const fn between(msb: (u32, u8), lsb: (u32, u8)) -> Self {}
    pub fn get(self, payload: &[u8]) -> Option<u64> {}
    pub fn of(self, payload: &[u8]) -> u64 {}
    pub fn put(self, payload: &mut [u8], bits: u64) {}
}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cuts<const N: usize>(pub [Cut; N]);
impl<const N: usize> Cuts<N> {
    pub fn get(self, payload: &[u8]) -> Option<u64> {}
    pub fn of(self, payload: &[u8]) -> u64 {}
    pub fn put(self, payload: &mut [u8], bits: u64) {}
}

// typed/errors.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooShort {
    pub needed_bytes: usize,
    pub found_bytes: usize,
}
impl fmt::Display for TooShort {}
impl core::error::Error for TooShort {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Damage {
    Sum { signal: &'static str, expected: u64, found: u64 },
    Length { told: u64, is: u64 },
    DataId { expected: u32, found: u32 },
    NotACount { found: u32 },
    TooShort,
}
impl fmt::Display for Damage {}
impl core::error::Error for Damage {}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotEncoded {
    DoesNotFit(&'static str),
    OtherCount(&'static str),
    OtherPage,
    Gap(&'static str),
    Room(TooShort),
    Protection,
}
impl fmt::Display for NotEncoded {}
impl core::error::Error for NotEncoded {}
impl From<TooShort> for NotEncoded {}

// typed/formula.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Formula;
impl Formula {
    pub const fn new(factor: i128, offset: i128, denominator: u128) -> Self {}
    pub fn of(self, raw: i128) -> f64 {}
    pub fn of_float(self, raw: f64) -> f64 {}
    pub fn float_for(self, value: f64) -> f64 {}
}
pub fn set<T: TryFrom<i128>>(
    field: &mut T,
    value: f64,
    formula: Formula,
    range: (i128, i128),
    is_value: impl Fn(i128) -> bool,
) -> Fit {}

// typed/length.rs

pub const fn at_least(payload: &[u8], needed_bytes: usize) -> Result<(), TooShort> {}
pub const fn chunk<const N: usize>(payload: &[u8]) -> Result<&[u8; N], TooShort> {}
pub fn first_of(payload: &[u8], first: usize, last: usize) -> &[u8] {}
pub fn to_end(payload: &[u8], first: usize) -> &[u8] {}
pub fn sized(
    payload: &[u8],
    first: usize,
    end: Option<usize>,
    count: Option<u64>,
) -> Result<&[u8], TooShort> {}
pub fn put_bytes(
    payload: &mut [u8],
    bytes: &[u8],
    first: usize,
    end: Option<usize>,
    signal: &'static str,
) -> Result<(), NotEncoded> {}
pub fn room(room: &mut [u8], length: usize) -> Result<&mut [u8], NotEncoded> {}
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Size {}
impl Size {
    pub fn part(&mut self, needed_bytes: usize, stated_bytes: Option<usize>) {}
    pub fn reach(&mut self, behind: usize) {}
    pub fn least(self) -> usize {}
    pub fn length(self) -> usize {}
}

// typed/mod.rs

pub use checks::{Protection, count_fits, crc, data_ids, next_count, sum_fits, sums};
pub use cut::{Cut, Cuts};
pub use errors::{Damage, NotEncoded, TooShort};
pub use formula::{Formula, set};
pub use length::{Size, at_least, chunk, first_of, put_bytes, room, sized, to_end};
pub use numbers::{
    digits, digits_bits, float, float_bits, sign_magnitude, sign_magnitude_bits, signed,
    signed_bits, unsigned_bits, whole, within,
};
pub use reading::Reading;
pub use repeated::{Element, Elements, Repeated};
pub use said::{Name, Said, SaidValue};
pub use text::{Charset, Text};
pub const fn pgn_of(id: u32) -> u32 {}

// typed/numbers.rs

pub const fn signed(bits: u64, width: u8) -> i64 {}
pub const fn sign_magnitude(bits: u64, width: u8) -> i64 {}
pub fn float(bits: u64, width: u8) -> f64 {}
pub fn digits(bits: u64, width: u8) -> Option<u64> {}
pub fn digits_bits(
    number: u64,
    width: u8,
    signal: &'static str,
) -> Result<u64, NotEncoded> {}
pub const fn unsigned_bits(
    number: u64,
    width: u8,
    signal: &'static str,
) -> Result<u64, NotEncoded> {}
pub const fn signed_bits(
    number: i64,
    width: u8,
    signal: &'static str,
) -> Result<u64, NotEncoded> {}
pub const fn sign_magnitude_bits(
    number: i64,
    width: u8,
    signal: &'static str,
) -> Result<u64, NotEncoded> {}
pub fn float_bits(
    number: f64,
    width: u8,
    signal: &'static str,
) -> Result<u64, NotEncoded> {}
pub fn whole(number: Option<i64>) -> Option<u64> {}
pub fn within<T: PartialOrd>(number: Option<T>, first: T, last: T) -> bool {}

// typed/reading.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading<T> {
    Value(T),
    NoReading,
    Fault,
    Undefined,
}
impl<T> Reading<T> {
    pub fn value(self) -> Option<T> {}
    pub fn map<U>(self, make: impl FnOnce(T) -> U) -> Reading<U> {}
}

// typed/repeated.rs

pub trait Element<'a>: Copy {
    fn read(bytes: &'a [u8]) -> Result<Self, TooShort>;
    fn write(&self, bytes: &mut [u8]) -> Result<(), NotEncoded>;
    fn measure(&self, size: &mut Size);
}
#[derive(Clone, Copy, Debug)]
pub enum Repeated<'a, E> {
    Read { bytes: &'a [u8], step_bytes: usize, count: usize, told: usize },
    Listed(&'a [E]),
}
impl<'a, E: Element<'a>> Repeated<'a, E> {
    pub fn to_end(
        payload: &'a [u8],
        first: usize,
        (size_bytes, step_bytes): (usize, usize),
        most: usize,
    ) -> Self {}
    pub fn counted(
        payload: &'a [u8],
        first: usize,
        step_bytes: usize,
        (count, most): (Option<u64>, usize),
    ) -> Self {}
    pub fn whole(self) -> Result<Self, TooShort> {}
    pub fn readable(self) -> Self {}
    pub fn len(&self) -> usize {}
    pub fn is_empty(&self) -> bool {}
    pub fn get(&self, index: usize) -> Option<E> {}
    pub fn iter(&self) -> Elements<'a, E> {}
    pub fn write(
        &self,
        payload: &mut [u8],
        (first, step_bytes): (usize, usize),
        most: usize,
        name: &'static str,
    ) -> Result<(), NotEncoded> {}
    pub fn measure(
        &self,
        size: &mut Size,
        first: usize,
        (size_bytes, step_bytes): (usize, usize),
    ) {}
}
impl<'a, E: Element<'a> + PartialEq> PartialEq for Repeated<'a, E> {}
#[derive(Clone, Copy, Debug)]
pub struct Elements<'a, E> {}
impl<'a, E: Element<'a>> Iterator for Elements<'a, E> {
    type Item = E;
}

// typed/said.rs

#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Said<'a> {
    pub value: SaidValue<'a>,
    pub word: Option<&'static str>,
    pub is_outside: bool,
}
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SaidValue<'a> {
    Integer(i128),
    Number(f64),
    Code(TroubleCode),
    Text(Text<'a>),
    Bytes(&'a [u8]),
    NoReading,
    Fault,
    Undefined,
}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Name {
    pub signal: &'static str,
    pub element: Option<usize>,
}
impl Name {
    pub const fn of(signal: &'static str) -> Self {}
    pub const fn in_element(self, index: usize) -> Self {}
}
impl<'a> Said<'a> {
    pub const fn bytes(bytes: &'a [u8]) -> Self {}
    pub const fn word(self, word: Option<&'static str>) -> Self {}
    pub const fn outside(self, is_outside: bool) -> Self {}
}
impl<'a, T: Into<Said<'a>>> From<Reading<T>> for Said<'a> {}

// typed/text.rs

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Charset {
    Ascii,
    Latin1,
    Utf8,
}
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Text<'a> {}
impl<'a> Text<'a> {
    pub fn new(bytes: &'a [u8], charset: Charset) -> Self {}
    pub fn as_str(&self) -> Option<&'a str> {}
}
impl fmt::Display for Text<'_> {}
