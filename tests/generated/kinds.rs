// Written by wirelore out of the description. Change the description, not this file.
//
// Fields hold what the bits say, methods of the same name what they mean. Needs wirelore-bits; no std, no
// allocation.
//
// Caution: frames sent into a live vehicle can move it, start it or fire airbags. Send on the bench only.

use wirelore_bits::typed;

/// The CRC crc width 8 poly 0x9B start 0xFF xor 0x0 reflected.
static CRC_1: wirelore_bits::Crc = typed::crc(wirelore_bits::CrcParameters {
    width: 8,
    poly: 0x9B,
    init: 0xFF,
    refin: true,
    refout: true,
    xorout: 0x0,
});

/// `depth`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum Depth {
    /// `below` (-2..-1).
    Below(i32),
    /// `level` (0).
    Level,
    /// `above` (1..100).
    Above(i32),
    /// A raw number without a word.
    Other(i32),
}

impl Depth {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: i32) -> Self {
        match raw {
            -2..=-1 => Self::Below(raw),
            0 => Self::Level,
            1..=100 => Self::Above(raw),
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> i32 {
        match self {
            Self::Level => 0,
            Self::Below(raw) => raw,
            Self::Above(raw) => raw,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Below(_) => Some("below"),
            Self::Level => Some("level"),
            Self::Above(_) => Some("above"),
            Self::Other(_) => None,
        }
    }
}

/// `lamp`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum Lamp {
    /// `dark` (0).
    Dark,
    /// `lit` (1).
    Lit,
    /// `broken` (2).
    Broken,
    /// `away` (3).
    Away,
    /// A raw number without a word.
    Other(u8),
}

impl Lamp {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Dark,
            1 => Self::Lit,
            2 => Self::Broken,
            3 => Self::Away,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Dark => 0,
            Self::Lit => 1,
            Self::Broken => 2,
            Self::Away => 3,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Dark => Some("dark"),
            Self::Lit => Some("lit"),
            Self::Broken => Some("broken"),
            Self::Away => Some("away"),
            Self::Other(_) => None,
        }
    }
}

/// State words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum NumbersBoth {
    /// `broken` (254).
    Broken,
    /// `away` (255).
    Away,
    /// `low` (0..9).
    Low(u8),
    /// A raw number without a word.
    Other(u8),
}

impl NumbersBoth {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            254 => Self::Broken,
            255 => Self::Away,
            0..=9 => Self::Low(raw),
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Broken => 254,
            Self::Away => 255,
            Self::Low(raw) => raw,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Broken => Some("broken"),
            Self::Away => Some("away"),
            Self::Low(_) => Some("low"),
            Self::Other(_) => None,
        }
    }
}

/// `wide`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wide {
    /// `raw`; 64 bits.
    pub all_bits: u64,
    /// `raw * 0.001` V; 64 bits, signed.
    pub nine_bytes: i64,
    /// `raw * 1/7` V; 19 bits.
    pub pieces: u32,
    /// `raw`; 20 bits, signed.
    pub motorola: Depth,
    /// `raw * 0.123456789012345678901234567` V; 8 bits.
    pub too_fine: u8,
}

impl Wide {
    /// The identifier.
    pub const ID: u32 = 0x100;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 24;
    const AT_ALL_BITS: typed::Cut = typed::Cut::between((7, 7), (0, 0));
    const AT_NINE_BYTES: typed::Cut = typed::Cut::between((16, 3), (8, 4));
    const AT_PIECES: typed::Cuts<2> = typed::Cuts([
        typed::Cut::between((17, 7), (17, 5)),
        typed::Cut::between((19, 7), (18, 0)),
    ]);
    const AT_MOTOROLA: typed::Cut = typed::Cut::between((20, 7), (22, 4));
    const AT_TOO_FINE: typed::Cut = typed::Cut::between((23, 7), (23, 0));
    const FORMULA_NINE_BYTES: typed::Formula = typed::Formula::new(1, 0, 1000);
    const FORMULA_PIECES: typed::Formula = typed::Formula::new(1, 0, 7);
    const FORMULA_TOO_FINE: typed::Formula =
        typed::Formula::new(123456789012345678901234567, 0, 1000000000000000000000000000);

    #[inline]
    fn read(payload: &[u8; 24]) -> Self {
        let all_bits = Self::AT_ALL_BITS.of(payload);
        let bits = Self::AT_NINE_BYTES.of(payload);
        let nine_bytes = typed::signed(bits, 64);
        let pieces = Self::AT_PIECES.of(payload) as u32;
        let bits = Self::AT_MOTOROLA.of(payload);
        let motorola = Depth::from_raw(typed::signed(bits, 20) as i32);
        let too_fine = Self::AT_TOO_FINE.of(payload) as u8;
        Self {
            all_bits,
            nine_bytes,
            pieces,
            motorola,
            too_fine,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(self.all_bits, 64, "all_bits")?;
        Self::AT_ALL_BITS.put(payload, bits);
        let bits = typed::signed_bits(self.nine_bytes, 64, "nine_bytes")?;
        Self::AT_NINE_BYTES.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.pieces), 19, "pieces")?;
        Self::AT_PIECES.put(payload, bits);
        let number = i64::from(self.motorola.raw());
        let bits = typed::signed_bits(number, 20, "motorola")?;
        Self::AT_MOTOROLA.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.too_fine), 8, "too_fine")?;
        Self::AT_TOO_FINE.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 24], typed::NotEncoded> {
        let mut payload = [0; 24];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in V.
    #[must_use]
    pub fn nine_bytes(&self) -> f64 {
        let raw = self.nine_bytes;
        Self::FORMULA_NINE_BYTES.of(i128::from(raw))
    }

    /// Sets `nine_bytes` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_nine_bytes(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-9223372036854775808, 9223372036854775807);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_NINE_BYTES;
        let raw = &mut self.nine_bytes;
        typed::set(raw, value, formula, range, is_value)
    }

    /// The value in V.
    #[must_use]
    pub fn pieces(&self) -> f64 {
        let raw = self.pieces;
        f64::from(raw) / 7.0
    }

    /// Sets `pieces` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_pieces(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 524287);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_PIECES;
        let raw = &mut self.pieces;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, 0 to 10000 in V.
    #[must_use]
    pub fn pieces_is_outside(&self) -> bool {
        let raw = self.pieces;
        matches!(raw, 0x11171..=0x7FFFF)
    }

    /// The value in V.
    #[must_use]
    pub fn too_fine(&self) -> typed::Reading<f64> {
        match self.too_fine {
            250..=254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(Self::FORMULA_TOO_FINE.of(i128::from(raw))),
        }
    }

    /// Sets `too_fine` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_too_fine(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 250..=255);
        let formula = Self::FORMULA_TOO_FINE;
        let raw = &mut self.too_fine;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.all_bits);
        let name = typed::Name::of("all_bits");
        tell(name, said);
        let said = typed::Said::from(self.nine_bytes());
        let name = typed::Name::of("nine_bytes");
        tell(name, said);
        let said = typed::Said::from(self.pieces());
        let is_outside = self.pieces_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("pieces");
        tell(name, said);
        let said = self.motorola;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.motorola;
        let said = said.word(state.word());
        let name = typed::Name::of("motorola");
        tell(name, said);
        let said = typed::Said::from(self.too_fine());
        let name = typed::Name::of("too_fine");
        tell(name, said);
    }
}

/// `numbers`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Numbers<'a> {
    /// `raw * 2 + 1` V; 32 bits, floating point.
    pub single: f64,
    /// `raw`; 16 bits, floating point.
    pub half: f64,
    /// `raw`; 64 bits, floating point.
    pub double: f64,
    /// `raw * 0.5` V; 16 bits, decimal digits.
    pub digits: u16,
    /// `raw`; 8 bits, decimal digits.
    pub plain_digits: u8,
    /// `raw * -3` V; 16 bits, sign and size.
    pub amount: i16,
    /// `raw`; 1 bit.
    pub one_bit: bool,
    /// `raw`; 1 bit.
    pub yes: bool,
    /// `raw`; 2 bits.
    pub lamp: Lamp,
    /// `raw * 0.5` V; 8 bits.
    pub both: u8,
    /// a sensor curve °C; 8 bits.
    pub sensor: u8,
    /// `trouble code`; 24 bits.
    pub trouble: u32,
    /// Text, byte by byte.
    pub name: &'a [u8],
}

impl<'a> Numbers<'a> {
    /// The identifier.
    pub const ID: u32 = 0x101;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 32;
    const AT_SINGLE: typed::Cut = typed::Cut::between((3, 7), (0, 0));
    const AT_HALF: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_DOUBLE: typed::Cut = typed::Cut::between((15, 7), (8, 0));
    const AT_DIGITS: typed::Cut = typed::Cut::between((17, 7), (16, 0));
    const AT_PLAIN_DIGITS: typed::Cut = typed::Cut::between((18, 7), (18, 0));
    const AT_AMOUNT: typed::Cut = typed::Cut::between((20, 7), (19, 0));
    const AT_ONE_BIT: typed::Cut = typed::Cut::between((21, 0), (21, 0));
    const AT_YES: typed::Cut = typed::Cut::between((21, 1), (21, 1));
    const AT_LAMP: typed::Cut = typed::Cut::between((21, 3), (21, 2));
    const AT_BOTH: typed::Cut = typed::Cut::between((22, 7), (22, 0));
    const AT_SENSOR: typed::Cut = typed::Cut::between((23, 7), (23, 0));
    const AT_TROUBLE: typed::Cut = typed::Cut::between((24, 7), (26, 0));
    const FORMULA_SINGLE: typed::Formula = typed::Formula::new(2, 1, 1);
    const FORMULA_DIGITS: typed::Formula = typed::Formula::new(1, 0, 2);
    const FORMULA_AMOUNT: typed::Formula = typed::Formula::new(-3, 0, 1);
    const FORMULA_BOTH: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &'a [u8; 32]) -> Self {
        let bits = Self::AT_SINGLE.of(payload);
        let single = typed::float(bits, 32);
        let bits = Self::AT_HALF.of(payload);
        let half = typed::float(bits, 16);
        let bits = Self::AT_DOUBLE.of(payload);
        let double = typed::float(bits, 64);
        let digits = Self::AT_DIGITS.of(payload) as u16;
        let plain_digits = Self::AT_PLAIN_DIGITS.of(payload) as u8;
        let bits = Self::AT_AMOUNT.of(payload);
        let amount = typed::sign_magnitude(bits, 16) as i16;
        let one_bit = Self::AT_ONE_BIT.of(payload) != 0;
        let yes = Self::AT_YES.of(payload) != 0;
        let bits = Self::AT_LAMP.of(payload);
        let lamp = Lamp::from_raw(bits as u8);
        let both = Self::AT_BOTH.of(payload) as u8;
        let sensor = Self::AT_SENSOR.of(payload) as u8;
        let trouble = Self::AT_TROUBLE.of(payload) as u32;
        let name = typed::first_of(payload, 27, 30);
        Self {
            single,
            half,
            double,
            digits,
            plain_digits,
            amount,
            one_bit,
            yes,
            lamp,
            both,
            sensor,
            trouble,
            name,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::float_bits(self.single, 32, "single")?;
        Self::AT_SINGLE.put(payload, bits);
        let bits = typed::float_bits(self.half, 16, "half")?;
        Self::AT_HALF.put(payload, bits);
        let bits = typed::float_bits(self.double, 64, "double")?;
        Self::AT_DOUBLE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.digits), 16, "digits")?;
        Self::AT_DIGITS.put(payload, bits);
        let number = u64::from(self.plain_digits);
        let bits = typed::unsigned_bits(number, 8, "plain_digits")?;
        Self::AT_PLAIN_DIGITS.put(payload, bits);
        let bits = typed::sign_magnitude_bits(i64::from(self.amount), 16, "amount")?;
        Self::AT_AMOUNT.put(payload, bits);
        let bits = u64::from(self.one_bit);
        Self::AT_ONE_BIT.put(payload, bits);
        let bits = u64::from(self.yes);
        Self::AT_YES.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.lamp.raw()), 2, "lamp")?;
        Self::AT_LAMP.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.both), 8, "both")?;
        Self::AT_BOTH.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.sensor), 8, "sensor")?;
        Self::AT_SENSOR.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.trouble), 24, "trouble")?;
        Self::AT_TROUBLE.put(payload, bits);
        typed::put_bytes(payload, self.name, 27, Some(31), "name")?;
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 32], typed::NotEncoded> {
        let mut payload = [0; 32];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in V.
    #[must_use]
    pub fn single(&self) -> typed::Reading<f64> {
        let value = self.single;
        let bits = typed::float_bits(value, 32, "").ok();
        if typed::within(bits, 0x7FC00000, 0x7FC00000) {
            return typed::Reading::NoReading;
        }
        typed::Reading::Value(Self::FORMULA_SINGLE.of_float(value))
    }

    /// Whether the value lies outside its range, -5 to 5 in V.
    #[must_use]
    pub fn single_is_outside(&self) -> bool {
        let value = self.single().value();
        value.is_some() && !typed::within(value, -5.0, 5.0)
    }

    /// The value.
    #[must_use]
    pub fn double(&self) -> typed::Reading<f64> {
        let value = self.double;
        if typed::within(Some(value), -1.0, -1.0) {
            return typed::Reading::Fault;
        }
        typed::Reading::Value(value)
    }

    /// Whether the value lies outside its range, 0 to 1.
    #[must_use]
    pub fn double_is_outside(&self) -> bool {
        let value = self.double().value();
        value.is_some() && !typed::within(value, 0.0, 1.0)
    }

    /// The value in V of the digits.
    #[must_use]
    pub fn digits(&self) -> typed::Reading<f64> {
        let bits = u64::from(self.digits);
        match typed::digits(bits, 16) {
            None => typed::Reading::Undefined,
            Some(0x270F) => typed::Reading::NoReading,
            Some(raw) => typed::Reading::Value(Self::FORMULA_DIGITS.of(i128::from(raw))),
        }
    }

    /// The value of the digits.
    #[must_use]
    pub fn plain_digits(&self) -> typed::Reading<u64> {
        let bits = u64::from(self.plain_digits);
        match typed::digits(bits, 8) {
            None => typed::Reading::Undefined,
            Some(raw) => typed::Reading::Value(raw),
        }
    }

    /// The value in V.
    #[must_use]
    pub fn amount(&self) -> f64 {
        let raw = self.amount;
        (i64::from(raw) * -3) as f64
    }

    /// Sets `amount` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_amount(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32767, 32767);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_AMOUNT;
        let raw = &mut self.amount;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -100 to 2000 in V.
    #[must_use]
    pub fn amount_is_outside(&self) -> bool {
        let raw = self.amount;
        matches!(raw, -32767..=-667 | 34..=0x7FFF)
    }

    /// What the raw number says.
    #[must_use]
    pub fn lamp(&self) -> typed::Reading<Lamp> {
        match self.lamp.raw() {
            2 => typed::Reading::Fault,
            3 => typed::Reading::NoReading,
            _ => typed::Reading::Value(self.lamp),
        }
    }

    /// The value in V.
    #[must_use]
    pub fn both(&self) -> typed::Reading<f64> {
        match self.both {
            254 => typed::Reading::Fault,
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value(f64::from(raw) / 2.0),
        }
    }

    /// Sets `both` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_both(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 254..=255);
        let formula = Self::FORMULA_BOTH;
        let raw = &mut self.both;
        typed::set(raw, value, formula, range, is_value)
    }

    /// The state word of the raw number.
    #[must_use]
    pub fn both_state(&self) -> NumbersBoth {
        let raw = self.both;
        NumbersBoth::from_raw(raw)
    }

    /// The value in °C.
    #[must_use]
    pub fn sensor(&self) -> typed::Reading<f64> {
        match self.sensor {
            255 => typed::Reading::NoReading,
            raw @ (0..=83) => {
                let value = (i64::from(raw) * 123 - 10240) as f64 / 256.0;
                typed::Reading::Value(value)
            }
            raw @ (84..=127) => {
                let value = (i64::from(raw) * 123 - 10240) as f64 / 256.0;
                typed::Reading::Value(value)
            }
            128..=199 => {
                let value = 21.5;
                typed::Reading::Value(value)
            }
            raw @ (200..=224) => {
                let value = (i64::from(raw) * 257 - 49680) as f64 / 80.0;
                typed::Reading::Value(value)
            }
            raw @ (225..=240) => {
                let value = (i64::from(raw) * 257 - 49680) as f64 / 80.0;
                typed::Reading::Value(value)
            }
            _ => typed::Reading::Undefined,
        }
    }

    /// Whether the value lies outside its range, 0 to 100 in °C.
    #[must_use]
    pub fn sensor_is_outside(&self) -> bool {
        let raw = self.sensor;
        matches!(raw, 0..=83 | 225..=240)
    }

    /// The trouble code.
    #[must_use]
    pub fn trouble(&self) -> typed::Reading<wirelore_bits::TroubleCode> {
        let raw = self.trouble;
        let code = wirelore_bits::TroubleCode::of_bits(u64::from(raw), 24);
        code.map_or(typed::Reading::Undefined, typed::Reading::Value)
    }

    /// The characters, without the NUL bytes at their end.
    #[must_use]
    pub fn name(&self) -> typed::Text<'a> {
        typed::Text::new(self.name, typed::Charset::Latin1)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.single());
        let is_outside = self.single_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("single");
        tell(name, said);
        let said = typed::Said::from(self.half);
        let name = typed::Name::of("half");
        tell(name, said);
        let said = typed::Said::from(self.double());
        let is_outside = self.double_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("double");
        tell(name, said);
        let said = typed::Said::from(self.digits());
        let name = typed::Name::of("digits");
        tell(name, said);
        let said = typed::Said::from(self.plain_digits());
        let name = typed::Name::of("plain_digits");
        tell(name, said);
        let said = typed::Said::from(self.amount());
        let is_outside = self.amount_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("amount");
        tell(name, said);
        let said = typed::Said::from(self.one_bit);
        let name = typed::Name::of("one_bit");
        tell(name, said);
        let said = typed::Said::from(self.yes);
        let name = typed::Name::of("yes");
        tell(name, said);
        let said = self.lamp();
        let said = said.map(|state| state.raw());
        let said = typed::Said::from(said);
        let state = self.lamp;
        let said = said.word(state.word());
        let name = typed::Name::of("lamp");
        tell(name, said);
        let said = typed::Said::from(self.both());
        let state = self.both_state();
        let said = said.word(state.word());
        let name = typed::Name::of("both");
        tell(name, said);
        let said = typed::Said::from(self.sensor());
        let is_outside = self.sensor_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("sensor");
        tell(name, said);
        let said = typed::Said::from(self.trouble());
        let name = typed::Name::of("trouble");
        tell(name, said);
        let said = typed::Said::from(self.name());
        let name = typed::Name::of("name");
        tell(name, said);
    }
}

pub use lists::Lists;

/// `lists` and what it holds.
#[allow(clippy::module_inception)]
pub mod lists {
    use wirelore_bits::typed;

    /// `lists`.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct Lists<'a> {
        /// `raw`; 8 bits.
        pub count: u8,
        /// As many as there are.
        pub sort_elements: typed::Repeated<'a, SortElement>,
    }

    impl<'a> Lists<'a> {
        /// The identifier.
        pub const ID: u32 = 0x102;
        /// Whether the identifier has 29 bits.
        pub const EXTENDED: bool = false;
        const AT_COUNT: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 1)?;
            let count = Self::AT_COUNT.of(payload) as u8;
            let told = Self::AT_COUNT.get(payload);
            let sort_elements = typed::Repeated::counted(payload, 1, 3, (told, 6));
            let sort_elements: typed::Repeated<'a, SortElement> = sort_elements.whole()?;
            Ok(Self {
                count,
                sort_elements,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.count), 8, "count")?;
            Self::AT_COUNT.put(payload, bits);
            let told = Self::AT_COUNT.get(payload);
            typed::count_fits(told, self.sort_elements.len(), "count")?;
            let elements = &self.sort_elements;
            elements.write(payload, (1, 3), 6, "sort_elements")?;
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, None);
            let elements = &self.sort_elements;
            elements.measure(size, 1, (1, 3));
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            Self::read(payload)
        }

        /// Writes the payload and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Ok(size.length())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.count);
            let name = typed::Name::of("count");
            tell(name, said);
            let elements = self.sort_elements.iter();
            for (index, element) in elements.enumerate() {
                element.each(&mut |name, said| tell(name.in_element(index), said));
            }
        }
    }

    /// One element of a repeated group.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SortElement {
        /// `raw`; 8 bits.
        pub sort: u8,
        /// What is there under a condition.
        pub when_sort: WhenSort,
    }

    impl SortElement {
        const AT_SORT: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn select_sort(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_SORT.get(payload) else {
                return 2;
            };
            match bits {
                0..=127 => 0,
                _ => 1,
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.sort);
            let name = typed::Name::of("sort");
            tell(name, said);
            match &self.when_sort {
                WhenSort::Is0To127(page) => page.each(tell),
                WhenSort::Otherwise(page) => page.each(tell),
                WhenSort::NoPage => {}
            }
        }
    }

    impl<'a> typed::Element<'a> for SortElement {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 1)?;
            let sort = Self::AT_SORT.of(payload) as u8;
            let held = Self::select_sort(payload);
            let when_sort = match held {
                0 => {
                    let page = SortIs0To127::read(payload)?;
                    WhenSort::Is0To127(page)
                }
                1 => {
                    let page = SortOtherwise::read(payload)?;
                    WhenSort::Otherwise(page)
                }
                _ => WhenSort::NoPage,
            };
            Ok(Self { sort, when_sort })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.sort), 8, "sort[1]")?;
            Self::AT_SORT.put(payload, bits);
            let held = Self::select_sort(payload);
            match (held, &self.when_sort) {
                (0, WhenSort::Is0To127(page)) => page.write(payload)?,
                (1, WhenSort::Otherwise(page)) => page.write(payload)?,
                (2, WhenSort::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, None);
            match &self.when_sort {
                WhenSort::Is0To127(page) => page.measure(size),
                WhenSort::Otherwise(page) => page.measure(size),
                WhenSort::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenSort {
        /// When `sort` is 0..127.
        Is0To127(SortIs0To127),
        /// Otherwise.
        Otherwise(SortOtherwise),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `sort` is 0..127.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SortIs0To127 {
        /// `raw * 0.5` V; 8 bits.
        pub low: u8,
    }

    impl SortIs0To127 {
        const AT_LOW: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const FORMULA_LOW: typed::Formula = typed::Formula::new(1, 0, 2);

        /// The value in V.
        #[must_use]
        pub fn low(&self) -> typed::Reading<f64> {
            match self.low {
                255 => typed::Reading::NoReading,
                raw => typed::Reading::Value(f64::from(raw) / 2.0),
            }
        }

        /// Sets `low` to the raw number nearest to a value in V.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_low(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |raw: i128| !matches!(raw, 255);
            let formula = Self::FORMULA_LOW;
            let raw = &mut self.low;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.low());
            let name = typed::Name::of("low");
            tell(name, said);
        }
    }

    impl<'a> typed::Element<'a> for SortIs0To127 {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 2)?;
            let low = Self::AT_LOW.of(payload) as u8;
            Ok(Self { low })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.low), 8, "low[1]")?;
            Self::AT_LOW.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, None);
        }
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct SortOtherwise {
        /// `raw`; 16 bits, signed.
        pub high: i16,
    }

    impl SortOtherwise {
        const AT_HIGH: typed::Cut = typed::Cut::between((2, 7), (1, 0));

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.high);
            let name = typed::Name::of("high");
            tell(name, said);
        }
    }

    impl<'a> typed::Element<'a> for SortOtherwise {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 3)?;
            let bits = Self::AT_HIGH.of(payload);
            let high = typed::signed(bits, 16) as i16;
            Ok(Self { high })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::signed_bits(i64::from(self.high), 16, "high[1]")?;
            Self::AT_HIGH.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
        }
    }
}

pub use stated_lists::StatedLists;

/// `stated_lists` and what it holds.
#[allow(clippy::module_inception)]
pub mod stated_lists {
    use wirelore_bits::typed;

    /// `stated_lists`.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct StatedLists<'a> {
        /// `raw`; 8 bits.
        pub first: u8,
        /// `raw * 0.1` V; 16 bits.
        ///
        /// `None`: the payload ends before it.
        pub late: Option<u16>,
        /// As many as there are.
        pub code_elements: typed::Repeated<'a, CodeElement>,
    }

    impl<'a> StatedLists<'a> {
        /// The identifier.
        pub const ID: u32 = 0x103;
        /// Whether the identifier has 29 bits.
        pub const EXTENDED: bool = false;
        /// The lengths in bytes.
        pub const LENGTHS: core::ops::RangeInclusive<usize> = 2..=32;
        const AT_FIRST: typed::Cut = typed::Cut::between((0, 7), (0, 0));
        const AT_LATE: typed::Cut = typed::Cut::between((3, 7), (2, 0));
        const FORMULA_LATE: typed::Formula = typed::Formula::new(1, 0, 10);

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let first = Self::AT_FIRST.of(payload) as u8;
            let bits = Self::AT_LATE.get(payload);
            let convert = |bits: u64| bits as u16;
            let late = bits.map(convert);
            let code_elements = typed::Repeated::to_end(payload, 4, (3, 3), 8);
            Ok(Self {
                first,
                late,
                code_elements,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.first), 8, "first")?;
            Self::AT_FIRST.put(payload, bits);
            if let Some(value) = self.late {
                let bits = typed::unsigned_bits(u64::from(value), 16, "late")?;
                Self::AT_LATE.put(payload, bits);
            }
            let elements = &self.code_elements;
            elements.write(payload, (4, 3), 8, "code_elements")?;
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(4, Some(2));
            if self.late.is_some() {
                size.reach(4);
            }
            let elements = &self.code_elements;
            elements.measure(size, 4, (3, 3));
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let frame = Self::read(payload)?;
            let mut size = typed::Size::default();
            frame.measure(&mut size);
            typed::at_least(payload, size.least())?;
            Ok(frame)
        }

        /// Writes the payload and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Ok(size.length())
        }

        /// The value in V.
        #[must_use]
        pub fn late(&self) -> Option<f64> {
            let value = |raw: u16| f64::from(raw) / 10.0;
            let raw = self.late;
            raw.map(value)
        }

        /// Sets `late` to the raw number nearest to a value in V.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_late(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 65535);
            let is_value = |_: i128| true;
            let mut raw: u16 = 0;
            let formula = Self::FORMULA_LATE;
            let fit = typed::set(&mut raw, value, formula, range, is_value);
            if fit != wirelore_bits::Fit::OutOfRange {
                self.late = Some(raw);
            }
            fit
        }

        /// Whether the value lies outside its range, 0 to 1000 in V.
        #[must_use]
        pub fn late_is_outside(&self) -> bool {
            let is_outside = |raw: u16| matches!(raw, 0x2711..=0xFFFF);
            let raw = self.late;
            raw.is_some_and(is_outside)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.first);
            let name = typed::Name::of("first");
            tell(name, said);
            if let Some(said) = self.late() {
                let said = typed::Said::from(said);
                let is_outside = self.late_is_outside();
                let said = said.outside(is_outside);
                let name = typed::Name::of("late");
                tell(name, said);
            }
            let elements = self.code_elements.iter();
            for (index, element) in elements.enumerate() {
                element.each(&mut |name, said| tell(name.in_element(index), said));
            }
        }
    }

    /// One element of a repeated group.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct CodeElement {
        /// `trouble code`; 16 bits.
        pub code: u16,
        /// `raw`; 2 bits.
        pub lamp: super::Lamp,
    }

    impl CodeElement {
        const AT_CODE: typed::Cut = typed::Cut::between((0, 7), (1, 0));
        const AT_LAMP: typed::Cut = typed::Cut::between((2, 1), (2, 0));

        /// The trouble code.
        #[must_use]
        pub fn code(&self) -> typed::Reading<wirelore_bits::TroubleCode> {
            let raw = self.code;
            let code = wirelore_bits::TroubleCode::of_bits(u64::from(raw), 16);
            code.map_or(typed::Reading::Undefined, typed::Reading::Value)
        }

        /// What the raw number says.
        #[must_use]
        pub fn lamp(&self) -> typed::Reading<super::Lamp> {
            match self.lamp.raw() {
                2 => typed::Reading::Fault,
                3 => typed::Reading::NoReading,
                _ => typed::Reading::Value(self.lamp),
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.code());
            let name = typed::Name::of("code");
            tell(name, said);
            let said = self.lamp();
            let said = said.map(|state| state.raw());
            let said = typed::Said::from(said);
            let state = self.lamp;
            let said = said.word(state.word());
            let name = typed::Name::of("lamp");
            tell(name, said);
        }
    }

    impl<'a> typed::Element<'a> for CodeElement {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 3)?;
            let code = Self::AT_CODE.of(payload) as u16;
            let bits = Self::AT_LAMP.of(payload);
            let lamp = super::Lamp::from_raw(bits as u8);
            Ok(Self { code, lamp })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.code), 16, "code[1]")?;
            Self::AT_CODE.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.lamp.raw()), 2, "lamp[1]")?;
            Self::AT_LAMP.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, None);
        }
    }
}

/// `texts`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Texts<'a> {
    /// `raw`; 8 bits.
    pub title_length: u8,
    /// Text, byte by byte.
    pub title: &'a [u8],
    /// Bytes as they are.
    ///
    /// `None`: the payload ends before it.
    pub rest: Option<&'a [u8]>,
}

impl<'a> Texts<'a> {
    /// The identifier.
    pub const ID: u32 = 0x104;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 1..=48;
    const AT_TITLE_LENGTH: typed::Cut = typed::Cut::between((0, 7), (0, 0));

    #[inline]
    fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let title_length = Self::AT_TITLE_LENGTH.of(payload) as u8;
        let told = Self::AT_TITLE_LENGTH.get(payload);
        let title = typed::sized(payload, 1, Some(21), told)?;
        let rest = payload.get(21..);
        Ok(Self {
            title_length,
            title,
            rest,
        })
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let number = u64::from(self.title_length);
        let bits = typed::unsigned_bits(number, 8, "title_length")?;
        Self::AT_TITLE_LENGTH.put(payload, bits);
        typed::put_bytes(payload, self.title, 1, Some(21), "title")?;
        if let Some(value) = self.rest {
            typed::put_bytes(payload, value, 21, None, "rest")?;
        }
        let told = Self::AT_TITLE_LENGTH.get(payload);
        typed::count_fits(told, self.title.len(), "title_length")?;
        Ok(())
    }

    fn measure(&self, size: &mut typed::Size) {
        size.part(21, Some(1));
        size.reach(1 + self.title.len());
        if let Some(value) = self.rest {
            size.reach(21 + value.len());
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let frame = Self::read(payload)?;
        let mut size = typed::Size::default();
        frame.measure(&mut size);
        typed::at_least(payload, size.least())?;
        Ok(frame)
    }

    /// Writes the payload and tells its length in bytes.
    ///
    /// # Errors
    /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
    /// small.
    pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
        let mut size = typed::Size::default();
        self.measure(&mut size);
        let payload = typed::room(room, size.length())?;
        self.write(payload)?;
        Ok(size.length())
    }

    /// The characters, without the NUL bytes at their end.
    #[must_use]
    pub fn title(&self) -> typed::Text<'a> {
        typed::Text::new(self.title, typed::Charset::Utf8)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.title_length);
        let name = typed::Name::of("title_length");
        tell(name, said);
        let said = typed::Said::from(self.title());
        let name = typed::Name::of("title");
        tell(name, said);
        if let Some(said) = self.rest {
            let said = typed::Said::bytes(said);
            let name = typed::Name::of("rest");
            tell(name, said);
        }
    }
}

pub use pages::Pages;

/// `pages` and what it holds.
#[allow(clippy::module_inception)]
pub mod pages {
    use wirelore_bits::typed;

    /// `pages`.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct Pages {
        /// `raw`; 8 bits, signed.
        ///
        /// `None`: the payload ends before it.
        pub kind: Option<i8>,
        /// `raw`; 4 bits.
        ///
        /// `None`: the payload ends before it.
        pub sub: Option<u8>,
        /// What is there under a condition.
        pub when_kind_sub: WhenKindSub,
    }

    // Called as the description calls its signals.
    #[allow(clippy::should_implement_trait, clippy::wrong_self_convention)]
    impl Pages {
        /// The identifier.
        pub const ID: u32 = 0x105;
        /// Whether the identifier has 29 bits.
        pub const EXTENDED: bool = false;
        const AT_KIND: typed::Cut = typed::Cut::between((0, 7), (0, 0));
        const AT_SUB: typed::Cut = typed::Cut::between((1, 3), (1, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_KIND.get(payload);
            let convert = |bits: u64| typed::signed(bits, 8) as i8;
            let kind = bits.map(convert);
            let bits = Self::AT_SUB.get(payload);
            let convert = |bits: u64| bits as u8;
            let sub = bits.map(convert);
            let held = Self::select_kind_sub(payload);
            let when_kind_sub = match held {
                0 => {
                    let page = KindSubMinus1Is1Or3To4::read(payload)?;
                    WhenKindSub::Minus1Is1Or3To4(page)
                }
                1 => {
                    let page = KindSubIs1Is2::read(payload)?;
                    WhenKindSub::Is1Is2(page)
                }
                _ => WhenKindSub::NoPage,
            };
            Ok(Self {
                kind,
                sub,
                when_kind_sub,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.kind {
                let bits = typed::signed_bits(i64::from(value), 8, "kind")?;
                Self::AT_KIND.put(payload, bits);
            }
            if let Some(value) = self.sub {
                let bits = typed::unsigned_bits(u64::from(value), 4, "sub")?;
                Self::AT_SUB.put(payload, bits);
            }
            let held = Self::select_kind_sub(payload);
            match (held, &self.when_kind_sub) {
                (0, WhenKindSub::Minus1Is1Or3To4(page)) => page.write(payload)?,
                (1, WhenKindSub::Is1Is2(page)) => page.write(payload)?,
                (2, WhenKindSub::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, None);
            if self.kind.is_some() {
                size.reach(1);
            }
            if self.sub.is_some() {
                size.reach(2);
            }
            match &self.when_kind_sub {
                WhenKindSub::Minus1Is1Or3To4(page) => page.measure(size),
                WhenKindSub::Is1Is2(page) => page.measure(size),
                WhenKindSub::NoPage => {}
            }
        }

        #[inline]
        fn select_kind_sub(payload: &[u8]) -> usize {
            let bits_0 = Self::AT_KIND.get(payload);
            let bits_1 = Self::AT_SUB.get(payload);
            if bits_0.is_none() {
                return 2;
            }
            if bits_1.is_none() {
                return 2;
            }
            let mut holds = true;
            holds &= typed::within(bits_0.map(|bits| typed::signed(bits, 8)), -1, -1);
            let mut is_one = false;
            is_one |= typed::within(bits_1, 1, 1);
            is_one |= typed::within(bits_1, 3, 4);
            holds &= is_one;
            if holds {
                return 0;
            }
            let mut holds = true;
            holds &= typed::within(bits_0.map(|bits| typed::signed(bits, 8)), 1, 1);
            holds &= typed::within(bits_1, 2, 2);
            if holds {
                return 1;
            }
            2
        }

        fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
            if Self::select_kind_sub(payload) == 0 {
                KindSubMinus1Is1Or3To4::check_parts(payload)?;
            }
            Ok(())
        }

        fn seal_sums(payload: &mut [u8]) {
            if Self::select_kind_sub(payload) == 0 {
                KindSubMinus1Is1Or3To4::seal_sums(payload);
            }
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let frame = Self::read(payload)?;
            let mut size = typed::Size::default();
            frame.measure(&mut size);
            typed::at_least(payload, size.least())?;
            Ok(frame)
        }

        /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
        ///
        /// # Errors
        /// What is wrong first.
        pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
            Self::check_parts(payload)
        }

        /// Writes the payload, with checksums and protection calculated, and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Self::seal_sums(payload);
            Ok(size.length())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.kind {
                let said = typed::Said::from(said);
                let name = typed::Name::of("kind");
                tell(name, said);
            }
            if let Some(said) = self.sub {
                let said = typed::Said::from(said);
                let name = typed::Name::of("sub");
                tell(name, said);
            }
            match &self.when_kind_sub {
                WhenKindSub::Minus1Is1Or3To4(page) => page.each(tell),
                WhenKindSub::Is1Is2(page) => page.each(tell),
                WhenKindSub::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenKindSub {
        /// When `kind` is -1 and `sub` is 1, 3..4.
        Minus1Is1Or3To4(KindSubMinus1Is1Or3To4),
        /// When `kind` is 1 and `sub` is 2.
        Is1Is2(KindSubIs1Is2),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `kind` is -1 and `sub` is 1, 3..4.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct KindSubMinus1Is1Or3To4 {
        /// `raw`; 8 bits.
        ///
        /// A checksum: whatever stands here, encoding calculates it.
        ///
        /// `None`: the payload ends before it.
        pub check: Option<u8>,
    }

    impl KindSubMinus1Is1Or3To4 {
        const AT_CHECK: typed::Cut = typed::Cut::between((5, 7), (5, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_CHECK.get(payload);
            let convert = |bits: u64| bits as u8;
            let check = bits.map(convert);
            Ok(Self { check })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.check {
                let bits = typed::unsigned_bits(u64::from(value), 8, "check")?;
                Self::AT_CHECK.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(6, Some(6));
            if self.check.is_some() {
                size.reach(6);
            }
        }

        fn sum_of_check(payload: &[u8]) -> Option<u64> {
            let sum = &typed::sums::CRC8_AUTOSAR;
            let state = sum.start();
            let bytes = payload.get(0..5)?;
            let state = sum.update(state, bytes);
            Some(sum.finish(state) & 0xFF)
        }

        fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
            let found = Self::AT_CHECK.get(payload);
            let right = Self::sum_of_check(payload);
            typed::sum_fits(found, right, "check")?;
            Ok(())
        }

        fn seal_sums(payload: &mut [u8]) {
            if let Some(sum) = Self::sum_of_check(payload) {
                Self::AT_CHECK.put(payload, sum);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.check {
                let said = typed::Said::from(said);
                let name = typed::Name::of("check");
                tell(name, said);
            }
        }
    }

    /// When `kind` is 1 and `sub` is 2.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct KindSubIs1Is2 {
        /// `raw * 2` V; 16 bits.
        ///
        /// `None`: the payload ends before it.
        pub far: Option<u16>,
        /// What is there under a condition.
        pub when_far: WhenFar,
    }

    impl KindSubIs1Is2 {
        const AT_FAR: typed::Cut = typed::Cut::between((10, 7), (9, 0));
        const FORMULA_FAR: typed::Formula = typed::Formula::new(2, 0, 1);

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_FAR.get(payload);
            let convert = |bits: u64| bits as u16;
            let far = bits.map(convert);
            let held = Self::select_far(payload);
            let when_far = match held {
                0 => {
                    let page = FarIs0To1000::read(payload)?;
                    WhenFar::Is0To1000(page)
                }
                _ => WhenFar::NoPage,
            };
            Ok(Self { far, when_far })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.far {
                let bits = typed::unsigned_bits(u64::from(value), 16, "far")?;
                Self::AT_FAR.put(payload, bits);
            }
            let held = Self::select_far(payload);
            match (held, &self.when_far) {
                (0, WhenFar::Is0To1000(page)) => page.write(payload)?,
                (1, WhenFar::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(11, None);
            if self.far.is_some() {
                size.reach(11);
            }
            match &self.when_far {
                WhenFar::Is0To1000(page) => page.measure(size),
                WhenFar::NoPage => {}
            }
        }

        #[inline]
        fn select_far(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_FAR.get(payload) else {
                return 1;
            };
            match bits {
                0..=0x3E8 => 0,
                _ => 1,
            }
        }

        /// The value in V.
        #[must_use]
        pub fn far(&self) -> Option<f64> {
            let value = |raw: u16| (i64::from(raw) * 2) as f64;
            let raw = self.far;
            raw.map(value)
        }

        /// Sets `far` to the raw number nearest to a value in V.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_far(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 65535);
            let is_value = |_: i128| true;
            let mut raw: u16 = 0;
            let formula = Self::FORMULA_FAR;
            let fit = typed::set(&mut raw, value, formula, range, is_value);
            if fit != wirelore_bits::Fit::OutOfRange {
                self.far = Some(raw);
            }
            fit
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.far() {
                let said = typed::Said::from(said);
                let name = typed::Name::of("far");
                tell(name, said);
            }
            match &self.when_far {
                WhenFar::Is0To1000(page) => page.each(tell),
                WhenFar::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenFar {
        /// When `far` is 0..1000.
        Is0To1000(FarIs0To1000),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `far` is 0..1000.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct FarIs0To1000 {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub inner: Option<u8>,
    }

    impl FarIs0To1000 {
        const AT_INNER: typed::Cut = typed::Cut::between((11, 7), (11, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_INNER.get(payload);
            let convert = |bits: u64| bits as u8;
            let inner = bits.map(convert);
            Ok(Self { inner })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.inner {
                let bits = typed::unsigned_bits(u64::from(value), 8, "inner")?;
                Self::AT_INNER.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(12, None);
            if self.inner.is_some() {
                size.reach(12);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.inner {
                let said = typed::Said::from(said);
                let name = typed::Name::of("inner");
                tell(name, said);
            }
        }
    }
}

pub use answers::Answers;

/// `answers` and what it holds.
#[allow(clippy::module_inception)]
pub mod answers {
    use wirelore_bits::typed;

    /// `answers`.
    ///
    /// Says several things, of which the first one is read; some of its pages have a length, and a counted group has none.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct Answers<'a> {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub service: Option<u8>,
        /// What is there under a condition.
        pub when_service: WhenService<'a>,
    }

    impl<'a> Answers<'a> {
        /// The identifier.
        pub const ID: u32 = 0x10A;
        /// Whether the identifier has 29 bits.
        pub const EXTENDED: bool = false;
        const AT_SERVICE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_SERVICE.get(payload);
            let convert = |bits: u64| bits as u8;
            let service = bits.map(convert);
            let held = Self::select_service(payload);
            let when_service = match held {
                0 => {
                    let page = ServiceIs0To127::read(payload)?;
                    WhenService::Is0To127(page)
                }
                1 => {
                    let page = ServiceIs128To255::read(payload)?;
                    WhenService::Is128To255(page)
                }
                _ => WhenService::NoPage,
            };
            Ok(Self {
                service,
                when_service,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.service {
                let bits = typed::unsigned_bits(u64::from(value), 8, "service")?;
                Self::AT_SERVICE.put(payload, bits);
            }
            let held = Self::select_service(payload);
            match (held, &self.when_service) {
                (0, WhenService::Is0To127(page)) => page.write(payload)?,
                (1, WhenService::Is128To255(page)) => page.write(payload)?,
                (2, WhenService::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, None);
            if self.service.is_some() {
                size.reach(1);
            }
            match &self.when_service {
                WhenService::Is0To127(page) => page.measure(size),
                WhenService::Is128To255(page) => page.measure(size),
                WhenService::NoPage => {}
            }
        }

        #[inline]
        fn select_service(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_SERVICE.get(payload) else {
                return 2;
            };
            match bits {
                0..=127 => 0,
                128..=255 => 1,
                _ => 2,
            }
        }

        /// Reads a payload.
        ///
        /// # Errors
        /// It is shorter than the description allows.
        #[inline]
        pub fn decode(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let frame = Self::read(payload)?;
            let mut size = typed::Size::default();
            frame.measure(&mut size);
            typed::at_least(payload, size.least())?;
            Ok(frame)
        }

        /// Writes the payload and tells its length in bytes.
        ///
        /// # Errors
        /// A field does not fit in its bits, the pages are not those that the selectors ask for, or the room is too
        /// small.
        pub fn encode_into(&self, room: &mut [u8]) -> Result<usize, typed::NotEncoded> {
            let mut size = typed::Size::default();
            self.measure(&mut size);
            let payload = typed::room(room, size.length())?;
            self.write(payload)?;
            Ok(size.length())
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.service {
                let said = typed::Said::from(said);
                let name = typed::Name::of("service");
                tell(name, said);
            }
            match &self.when_service {
                WhenService::Is0To127(page) => page.each(tell),
                WhenService::Is128To255(page) => page.each(tell),
                WhenService::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenService<'a> {
        /// When `service` is 0..127.
        Is0To127(ServiceIs0To127<'a>),
        /// When `service` is 128..255.
        Is128To255(ServiceIs128To255<'a>),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `service` is 0..127.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceIs0To127<'a> {
        /// The first element; those that stand behind it in a payload are not read.
        pub item_element: Option<ItemElement<'a>>,
    }

    impl<'a> ServiceIs0To127<'a> {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let item_element = if Self::has_item(payload) {
                let element = ItemElement::read(payload)?;
                Some(element)
            } else {
                None
            };
            Ok(Self { item_element })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(element) = &self.item_element {
                element.write(payload)?;
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(0, None);
            if let Some(element) = &self.item_element {
                element.measure(size);
            }
        }

        fn has_item(_payload: &[u8]) -> bool {
            true
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(element) = &self.item_element {
                element.each(tell);
            }
        }
    }

    /// The first element; those that stand behind it in a payload are not read.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ItemElement<'a> {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub item: Option<u8>,
        /// What is there under a condition.
        pub when_item: WhenItem<'a>,
    }

    impl<'a> ItemElement<'a> {
        const AT_ITEM: typed::Cut = typed::Cut::between((1, 7), (1, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_ITEM.get(payload);
            let convert = |bits: u64| bits as u8;
            let item = bits.map(convert);
            let held = Self::select_item(payload);
            let when_item = match held {
                0 => {
                    let page = ItemIs0To80::read(payload)?;
                    WhenItem::Is0To80(page)
                }
                1 => {
                    let page = ItemIs81To160::read(payload)?;
                    WhenItem::Is81To160(page)
                }
                2 => {
                    let page = ItemOtherwise::read(payload)?;
                    WhenItem::Otherwise(page)
                }
                _ => WhenItem::NoPage,
            };
            Ok(Self { item, when_item })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.item {
                let bits = typed::unsigned_bits(u64::from(value), 8, "item")?;
                Self::AT_ITEM.put(payload, bits);
            }
            let held = Self::select_item(payload);
            match (held, &self.when_item) {
                (0, WhenItem::Is0To80(page)) => page.write(payload)?,
                (1, WhenItem::Is81To160(page)) => page.write(payload)?,
                (2, WhenItem::Otherwise(page)) => page.write(payload)?,
                (3, WhenItem::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, None);
            if self.item.is_some() {
                size.reach(2);
            }
            match &self.when_item {
                WhenItem::Is0To80(page) => page.measure(size),
                WhenItem::Is81To160(page) => page.measure(size),
                WhenItem::Otherwise(page) => page.measure(size),
                WhenItem::NoPage => {}
            }
        }

        #[inline]
        fn select_item(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_ITEM.get(payload) else {
                return 3;
            };
            match bits {
                0..=80 => 0,
                81..=160 => 1,
                _ => 2,
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.item {
                let said = typed::Said::from(said);
                let name = typed::Name::of("item");
                tell(name, said);
            }
            match &self.when_item {
                WhenItem::Is0To80(page) => page.each(tell),
                WhenItem::Is81To160(page) => page.each(tell),
                WhenItem::Otherwise(page) => page.each(tell),
                WhenItem::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenItem<'a> {
        /// When `item` is 0..80.
        Is0To80(ItemIs0To80),
        /// When `item` is 81..160.
        Is81To160(ItemIs81To160),
        /// Otherwise.
        Otherwise(ItemOtherwise<'a>),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `item` is 0..80.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ItemIs0To80 {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub near: Option<u8>,
    }

    impl ItemIs0To80 {
        const AT_NEAR: typed::Cut = typed::Cut::between((2, 7), (2, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_NEAR.get(payload);
            let convert = |bits: u64| bits as u8;
            let near = bits.map(convert);
            Ok(Self { near })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.near {
                let bits = typed::unsigned_bits(u64::from(value), 8, "near")?;
                Self::AT_NEAR.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(3, Some(5));
            if self.near.is_some() {
                size.reach(3);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.near {
                let said = typed::Said::from(said);
                let name = typed::Name::of("near");
                tell(name, said);
            }
        }
    }

    /// When `item` is 81..160.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ItemIs81To160 {
        /// `raw * 0.25` rpm; 16 bits.
        ///
        /// `None`: the payload ends before it.
        pub far: Option<u16>,
    }

    impl ItemIs81To160 {
        const AT_FAR: typed::Cut = typed::Cut::between((3, 7), (2, 0));
        const FORMULA_FAR: typed::Formula = typed::Formula::new(1, 0, 4);

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_FAR.get(payload);
            let convert = |bits: u64| bits as u16;
            let far = bits.map(convert);
            Ok(Self { far })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.far {
                let bits = typed::unsigned_bits(u64::from(value), 16, "far")?;
                Self::AT_FAR.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(4, None);
            if self.far.is_some() {
                size.reach(4);
            }
        }

        /// The value in rpm.
        #[must_use]
        pub fn far(&self) -> Option<f64> {
            let value = |raw: u16| f64::from(raw) / 4.0;
            let raw = self.far;
            raw.map(value)
        }

        /// Sets `far` to the raw number nearest to a value in rpm.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_far(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 65535);
            let is_value = |_: i128| true;
            let mut raw: u16 = 0;
            let formula = Self::FORMULA_FAR;
            let fit = typed::set(&mut raw, value, formula, range, is_value);
            if fit != wirelore_bits::Fit::OutOfRange {
                self.far = Some(raw);
            }
            fit
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.far() {
                let said = typed::Said::from(said);
                let name = typed::Name::of("far");
                tell(name, said);
            }
        }
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ItemOtherwise<'a> {
        /// Bytes as they are.
        ///
        /// `None`: the payload ends before it.
        pub rest: Option<&'a [u8]>,
    }

    impl<'a> ItemOtherwise<'a> {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let rest = payload.get(2..);
            Ok(Self { rest })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.rest {
                typed::put_bytes(payload, value, 2, None, "rest")?;
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, None);
            if let Some(value) = self.rest {
                size.reach(2 + value.len());
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.rest {
                let said = typed::Said::bytes(said);
                let name = typed::Name::of("rest");
                tell(name, said);
            }
        }
    }

    /// When `service` is 128..255.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct ServiceIs128To255<'a> {
        /// `raw`; 2 bits.
        ///
        /// `None`: the payload ends before it.
        pub codes: Option<u8>,
        /// As many as there are.
        pub code_elements: typed::Repeated<'a, CodeElement>,
    }

    impl<'a> ServiceIs128To255<'a> {
        const AT_CODES: typed::Cut = typed::Cut::between((1, 1), (1, 0));

        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_CODES.get(payload);
            let convert = |bits: u64| bits as u8;
            let codes = bits.map(convert);
            let told = Self::AT_CODES.get(payload);
            let code_elements = typed::Repeated::counted(payload, 2, 2, (told, 3));
            let code_elements: typed::Repeated<'a, CodeElement> = code_elements.readable();
            Ok(Self {
                codes,
                code_elements,
            })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.codes {
                let bits = typed::unsigned_bits(u64::from(value), 2, "codes")?;
                Self::AT_CODES.put(payload, bits);
            }
            let told = Self::AT_CODES.get(payload);
            typed::count_fits(told, self.code_elements.len(), "codes")?;
            let elements = &self.code_elements;
            elements.write(payload, (2, 2), 3, "code_elements")?;
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, None);
            if self.codes.is_some() {
                size.reach(2);
            }
            let elements = &self.code_elements;
            elements.measure(size, 2, (2, 2));
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.codes {
                let said = typed::Said::from(said);
                let name = typed::Name::of("codes");
                tell(name, said);
            }
            let elements = self.code_elements.iter();
            for (index, element) in elements.enumerate() {
                element.each(&mut |name, said| tell(name.in_element(index), said));
            }
        }
    }

    /// One element of a repeated group.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct CodeElement {
        /// `trouble code`; 16 bits.
        pub code: u16,
    }

    impl CodeElement {
        const AT_CODE: typed::Cut = typed::Cut::between((0, 7), (1, 0));

        /// The trouble code.
        #[must_use]
        pub fn code(&self) -> typed::Reading<wirelore_bits::TroubleCode> {
            match self.code {
                0 => typed::Reading::NoReading,
                raw => {
                    let code = wirelore_bits::TroubleCode::of_bits(u64::from(raw), 16);
                    code.map_or(typed::Reading::Undefined, typed::Reading::Value)
                }
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.code());
            let name = typed::Name::of("code");
            tell(name, said);
        }
    }

    impl<'a> typed::Element<'a> for CodeElement {
        #[inline]
        fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
            typed::at_least(payload, 2)?;
            let code = Self::AT_CODE.of(payload) as u16;
            Ok(Self { code })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.code), 16, "code[1]")?;
            Self::AT_CODE.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(2, None);
        }
    }
}

/// `sums`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sums {
    /// `raw`; 4 bits.
    ///
    /// Counts the frames, from 1 to 14.
    pub alive: u8,
    /// `raw`; 8 bits.
    pub mixed: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub own: u8,
    /// `raw`; 32 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub long: u32,
    /// `raw`; 4 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub fold: u8,
    /// `raw`; 8 bits.
    ///
    /// A checksum: whatever stands here, encoding calculates it.
    pub named: u8,
}

impl Sums {
    /// The identifiers.
    pub const IDS: core::ops::RangeInclusive<u32> = 0x106..=0x109;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 12;
    const AT_ALIVE: typed::Cut = typed::Cut::between((0, 3), (0, 0));
    const AT_MIXED: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_OWN: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_LONG: typed::Cut = typed::Cut::between((9, 7), (6, 0));
    const AT_FOLD: typed::Cut = typed::Cut::between((10, 3), (10, 0));
    const AT_NAMED: typed::Cut = typed::Cut::between((11, 7), (11, 0));

    #[inline]
    fn read(payload: &[u8; 12]) -> Self {
        let alive = Self::AT_ALIVE.of(payload) as u8;
        let mixed = Self::AT_MIXED.of(payload) as u8;
        let own = Self::AT_OWN.of(payload) as u8;
        let long = Self::AT_LONG.of(payload) as u32;
        let fold = Self::AT_FOLD.of(payload) as u8;
        let named = Self::AT_NAMED.of(payload) as u8;
        Self {
            alive,
            mixed,
            own,
            long,
            fold,
            named,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.alive), 4, "alive")?;
        Self::AT_ALIVE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.mixed), 8, "mixed")?;
        Self::AT_MIXED.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.own), 8, "own")?;
        Self::AT_OWN.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.long), 32, "long")?;
        Self::AT_LONG.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.fold), 4, "fold")?;
        Self::AT_FOLD.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.named), 8, "named")?;
        Self::AT_NAMED.put(payload, bits);
        Ok(())
    }

    fn sum_of_own(payload: &[u8], _identifier: u32) -> Option<u64> {
        let sum = &CRC_1;
        let state = sum.start();
        let bytes = payload.get(3..6)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFF)
    }

    fn sum_of_long(payload: &[u8], _identifier: u32) -> Option<u64> {
        let sum = &typed::sums::CRC32_ISO_HDLC;
        let state = sum.start_from(0x1234);
        let state = sum.update(state, &[0x01]);
        let bytes = payload.get(0..6)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xFFFFFFFF)
    }

    fn sum_of_fold(payload: &[u8], _identifier: u32) -> Option<u64> {
        let sum = wirelore_bits::sums::ByteSum::WRAPPING.folded();
        let state = sum.start();
        let bytes = payload.get(0..10)?;
        let state = sum.update(state, bytes);
        Some(sum.finish(state) & 0xF)
    }

    fn sum_of_named(payload: &[u8], identifier: u32) -> Option<u64> {
        let sum = &typed::sums::CRC8_SAE_J1850;
        let state = sum.start();
        let bytes = payload.get(0..11)?;
        let state = sum.update(state, bytes);
        let byte = identifier.to_le_bytes()[0];
        let state = sum.update(state, &[byte]);
        let byte = identifier.to_le_bytes()[1];
        let state = sum.update(state, &[byte]);
        Some(sum.finish(state) & 0xFF)
    }

    fn check_parts(payload: &[u8], identifier: u32) -> Result<(), typed::Damage> {
        let found = Self::AT_OWN.get(payload);
        let right = Self::sum_of_own(payload, identifier);
        typed::sum_fits(found, right, "own")?;
        let found = Self::AT_LONG.get(payload);
        let right = Self::sum_of_long(payload, identifier);
        typed::sum_fits(found, right, "long")?;
        let found = Self::AT_FOLD.get(payload);
        let right = Self::sum_of_fold(payload, identifier);
        typed::sum_fits(found, right, "fold")?;
        let found = Self::AT_NAMED.get(payload);
        let right = Self::sum_of_named(payload, identifier);
        typed::sum_fits(found, right, "named")?;
        Ok(())
    }

    fn seal_sums(payload: &mut [u8], identifier: u32) {
        if let Some(sum) = Self::sum_of_own(payload, identifier) {
            Self::AT_OWN.put(payload, sum);
        }
        if let Some(sum) = Self::sum_of_long(payload, identifier) {
            Self::AT_LONG.put(payload, sum);
        }
        if let Some(sum) = Self::sum_of_fold(payload, identifier) {
            Self::AT_FOLD.put(payload, sum);
        }
        if let Some(sum) = Self::sum_of_named(payload, identifier) {
            Self::AT_NAMED.put(payload, sum);
        }
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8], identifier: u32) -> Result<(), typed::Damage> {
        Self::check_parts(payload, identifier)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self, identifier: u32) -> Result<[u8; 12], typed::NotEncoded> {
        let mut payload = [0; 12];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload, identifier);
        Ok(payload)
    }

    /// What the raw number says.
    #[must_use]
    pub fn alive(&self) -> typed::Reading<u8> {
        match self.alive {
            15 => typed::Reading::NoReading,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_alive(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 1, 14, 3);
        next as u8
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.alive());
        let name = typed::Name::of("alive");
        tell(name, said);
        let said = typed::Said::from(self.mixed);
        let name = typed::Name::of("mixed");
        tell(name, said);
        let said = typed::Said::from(self.own);
        let name = typed::Name::of("own");
        tell(name, said);
        let said = typed::Said::from(self.long);
        let name = typed::Name::of("long");
        tell(name, said);
        let said = typed::Said::from(self.fold);
        let name = typed::Name::of("fold");
        tell(name, said);
        let said = typed::Said::from(self.named);
        let name = typed::Name::of("named");
        tell(name, said);
    }
}

/// `protected_1`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Protected1 {
    /// `raw`; 4 bits.
    ///
    /// The count of the end-to-end protection.
    pub protection: u8,
    /// `raw * 0.1` °; 16 bits, signed.
    pub angle: i16,
}

impl Protected1 {
    /// The identifier.
    pub const ID: u32 = 0x110;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_PROTECTION: typed::Cut = typed::Cut::between((1, 3), (1, 0));
    const AT_ANGLE: typed::Cut = typed::Cut::between((2, 7), (3, 0));
    const FORMULA_ANGLE: typed::Formula = typed::Formula::new(1, 0, 10);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let protection = Self::AT_PROTECTION.of(payload) as u8;
        let bits = Self::AT_ANGLE.of(payload);
        let angle = typed::signed(bits, 16) as i16;
        Self { protection, angle }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.protection), 4, "protection")?;
        Self::AT_PROTECTION.put(payload, bits);
        let bits = typed::signed_bits(i64::from(self.angle), 16, "angle")?;
        Self::AT_ANGLE.put(payload, bits);
        Ok(())
    }

    /// The end-to-end protection.
    pub const PROTECTION: typed::Protection = typed::Protection {
        profile: wirelore_bits::e2e::Profile::P01Both,
        data_id: wirelore_bits::e2e::DataId::One(0x123),
        header: 0,
        first: 0,
        end: None,
    };

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        if Self::AT_PROTECTION.get(payload).is_some() {
            Self::PROTECTION.check(payload, "protection")?;
        }
        Ok(())
    }

    fn seal_sums(_payload: &mut [u8]) {}

    fn seal_protection(payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let count = Self::AT_PROTECTION.of(payload);
        Self::PROTECTION.protect(payload, count)?;
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Self::seal_protection(&mut payload)?;
        Ok(payload)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_protection(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 14, 1);
        next as u8
    }

    /// The value in °.
    #[must_use]
    pub fn angle(&self) -> f64 {
        let raw = self.angle;
        f64::from(raw) / 10.0
    }

    /// Sets `angle` to the raw number nearest to a value in °.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_angle(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32768, 32767);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_ANGLE;
        let raw = &mut self.angle;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.protection);
        let name = typed::Name::of("protection");
        tell(name, said);
        let said = typed::Said::from(self.angle());
        let name = typed::Name::of("angle");
        tell(name, said);
    }
}

/// `protected_2`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Protected2 {
    /// `raw`; 4 bits.
    ///
    /// The count of the end-to-end protection.
    pub protection: u8,
    /// `raw * 2` N·m; 16 bits.
    pub front: u16,
}

impl Protected2 {
    /// The identifier.
    pub const ID: u32 = 0x111;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 16;
    const AT_PROTECTION: typed::Cut = typed::Cut::between((1, 3), (1, 0));
    const AT_FRONT: typed::Cut = typed::Cut::between((3, 7), (2, 0));
    const FORMULA_FRONT: typed::Formula = typed::Formula::new(2, 0, 1);

    #[inline]
    fn read(payload: &[u8; 16]) -> Self {
        let protection = Self::AT_PROTECTION.of(payload) as u8;
        let front = Self::AT_FRONT.of(payload) as u16;
        Self { protection, front }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.protection), 4, "protection")?;
        Self::AT_PROTECTION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.front), 16, "front")?;
        Self::AT_FRONT.put(payload, bits);
        Ok(())
    }

    /// The end-to-end protection.
    pub const PROTECTION: typed::Protection = typed::Protection {
        profile: wirelore_bits::e2e::Profile::P02,
        data_id: typed::data_ids(0x1112131415161718191A1B1C1D1E1F20),
        header: 0,
        first: 0,
        end: None,
    };

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        if Self::AT_PROTECTION.get(payload).is_some() {
            Self::PROTECTION.check(payload, "protection")?;
        }
        Ok(())
    }

    fn seal_sums(_payload: &mut [u8]) {}

    fn seal_protection(payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let count = Self::AT_PROTECTION.of(payload);
        Self::PROTECTION.protect(payload, count)?;
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 16], typed::NotEncoded> {
        let mut payload = [0; 16];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Self::seal_protection(&mut payload)?;
        Ok(payload)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_protection(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 15, 1);
        next as u8
    }

    /// The value in N·m.
    #[must_use]
    pub fn front(&self) -> f64 {
        let raw = self.front;
        (i64::from(raw) * 2) as f64
    }

    /// Sets `front` to the raw number nearest to a value in N·m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_front(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_FRONT;
        let raw = &mut self.front;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.protection);
        let name = typed::Name::of("protection");
        tell(name, said);
        let said = typed::Said::from(self.front());
        let name = typed::Name::of("front");
        tell(name, said);
    }
}

/// `protected_5`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Protected5 {
    /// `raw`; 8 bits.
    ///
    /// The count of the end-to-end protection.
    pub protection: u8,
    /// `raw * 0.01` m; 16 bits.
    pub distance: u16,
}

impl Protected5 {
    /// The identifier.
    pub const ID: u32 = 0x112;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 48;
    const AT_PROTECTION: typed::Cut = typed::Cut::between((34, 7), (34, 0));
    const AT_DISTANCE: typed::Cut = typed::Cut::between((1, 7), (0, 0));
    const FORMULA_DISTANCE: typed::Formula = typed::Formula::new(1, 0, 100);

    #[inline]
    fn read(payload: &[u8; 48]) -> Self {
        let protection = Self::AT_PROTECTION.of(payload) as u8;
        let distance = Self::AT_DISTANCE.of(payload) as u16;
        Self {
            protection,
            distance,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.protection), 8, "protection")?;
        Self::AT_PROTECTION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.distance), 16, "distance")?;
        Self::AT_DISTANCE.put(payload, bits);
        Ok(())
    }

    /// The end-to-end protection.
    pub const PROTECTION: typed::Protection = typed::Protection {
        profile: wirelore_bits::e2e::Profile::P05,
        data_id: wirelore_bits::e2e::DataId::One(0x1234),
        header: 32,
        first: 0,
        end: Some(48),
    };

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        if Self::AT_PROTECTION.get(payload).is_some() {
            Self::PROTECTION.check(payload, "protection")?;
        }
        Ok(())
    }

    fn seal_sums(_payload: &mut [u8]) {}

    fn seal_protection(payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let count = Self::AT_PROTECTION.of(payload);
        Self::PROTECTION.protect(payload, count)?;
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 48], typed::NotEncoded> {
        let mut payload = [0; 48];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Self::seal_protection(&mut payload)?;
        Ok(payload)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_protection(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 255, 1);
        next as u8
    }

    /// The value in m.
    #[must_use]
    pub fn distance(&self) -> f64 {
        let raw = self.distance;
        f64::from(raw) / 100.0
    }

    /// Sets `distance` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_distance(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_DISTANCE;
        let raw = &mut self.distance;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.protection);
        let name = typed::Name::of("protection");
        tell(name, said);
        let said = typed::Said::from(self.distance());
        let name = typed::Name::of("distance");
        tell(name, said);
    }
}

/// `protected_7`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Protected7 {
    /// `raw`; 32 bits.
    ///
    /// The count of the end-to-end protection.
    pub protection: u32,
    /// `raw * 0.01` m; 16 bits.
    pub level: u16,
}

impl Protected7 {
    /// The identifier.
    pub const ID: u32 = 0x113;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 32;
    const AT_PROTECTION: typed::Cut = typed::Cut::between((12, 7), (15, 0));
    const AT_LEVEL: typed::Cut = typed::Cut::between((21, 7), (20, 0));
    const FORMULA_LEVEL: typed::Formula = typed::Formula::new(1, 0, 100);

    #[inline]
    fn read(payload: &[u8; 32]) -> Self {
        let protection = Self::AT_PROTECTION.of(payload) as u32;
        let level = Self::AT_LEVEL.of(payload) as u16;
        Self { protection, level }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.protection), 32, "protection")?;
        Self::AT_PROTECTION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.level), 16, "level")?;
        Self::AT_LEVEL.put(payload, bits);
        Ok(())
    }

    /// The end-to-end protection.
    pub const PROTECTION: typed::Protection = typed::Protection {
        profile: wirelore_bits::e2e::Profile::P07,
        data_id: wirelore_bits::e2e::DataId::One(0x1234567),
        header: 0,
        first: 0,
        end: None,
    };

    fn check_parts(payload: &[u8]) -> Result<(), typed::Damage> {
        if Self::AT_PROTECTION.get(payload).is_some() {
            Self::PROTECTION.check(payload, "protection")?;
        }
        Ok(())
    }

    fn seal_sums(_payload: &mut [u8]) {}

    fn seal_protection(payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let count = Self::AT_PROTECTION.of(payload);
        Self::PROTECTION.protect(payload, count)?;
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// Looks whether a payload is undamaged: its checksums and its end-to-end protection.
    ///
    /// # Errors
    /// What is wrong first.
    pub fn verify(payload: &[u8]) -> Result<(), typed::Damage> {
        Self::check_parts(payload)
    }

    /// The payload, with checksums and protection calculated.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 32], typed::NotEncoded> {
        let mut payload = [0; 32];
        self.write(&mut payload)?;
        Self::seal_sums(&mut payload);
        Self::seal_protection(&mut payload)?;
        Ok(payload)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_protection(before: u32) -> u32 {
        let next = typed::next_count(before as u64, 0, 4294967295, 1);
        next as u32
    }

    /// The value in m.
    #[must_use]
    pub fn level(&self) -> f64 {
        let raw = self.level;
        f64::from(raw) / 100.0
    }

    /// Sets `level` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_LEVEL;
        let raw = &mut self.level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.protection);
        let name = typed::Name::of("protection");
        tell(name, said);
        let said = typed::Said::from(self.level());
        let name = typed::Name::of("level");
        tell(name, said);
    }
}

/// `protected_service`.
///
/// The header of the service is protected too.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ProtectedService {
    /// `raw`; 32 bits.
    ///
    /// The count of the end-to-end protection, which is neither checked nor written: it covers the header in front of the payload too.
    pub protection: u32,
    /// `raw * 0.01` m; 16 bits.
    pub level: u16,
}

impl ProtectedService {
    /// The service.
    pub const SERVICE: u16 = 0x4A10;
    /// The method or event.
    pub const METHOD: u16 = 0x8001;
    /// The length in bytes.
    pub const LENGTH: usize = 32;
    const AT_PROTECTION: typed::Cut = typed::Cut::between((12, 7), (15, 0));
    const AT_LEVEL: typed::Cut = typed::Cut::between((21, 7), (20, 0));
    const FORMULA_LEVEL: typed::Formula = typed::Formula::new(1, 0, 100);

    #[inline]
    fn read(payload: &[u8; 32]) -> Self {
        let protection = Self::AT_PROTECTION.of(payload) as u32;
        let level = Self::AT_LEVEL.of(payload) as u16;
        Self { protection, level }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.protection), 32, "protection")?;
        Self::AT_PROTECTION.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.level), 16, "level")?;
        Self::AT_LEVEL.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 32], typed::NotEncoded> {
        let mut payload = [0; 32];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_protection(before: u32) -> u32 {
        let next = typed::next_count(before as u64, 0, 4294967295, 1);
        next as u32
    }

    /// The value in m.
    #[must_use]
    pub fn level(&self) -> f64 {
        let raw = self.level;
        f64::from(raw) / 100.0
    }

    /// Sets `level` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_level(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 65535);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_LEVEL;
        let raw = &mut self.level;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.protection);
        let name = typed::Name::of("protection");
        tell(name, said);
        let said = typed::Said::from(self.level());
        let name = typed::Name::of("level");
        tell(name, said);
    }
}

/// `either_port`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EitherPort {
    /// `raw`; 8 bits.
    pub asked: u8,
}

impl EitherPort {
    /// The port.
    pub const PORT: u16 = 41200;
    const AT_ASKED: typed::Cut = typed::Cut::between((0, 7), (0, 0));

    #[inline]
    fn read(payload: &[u8; 1]) -> Self {
        let asked = Self::AT_ASKED.of(payload) as u8;
        Self { asked }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.asked), 8, "asked")?;
        Self::AT_ASKED.put(payload, bits);
        Ok(())
    }

    /// Reads a payload.
    ///
    /// # Errors
    /// It is shorter than the description allows.
    #[inline]
    pub fn decode(payload: &[u8]) -> Result<Self, typed::TooShort> {
        let chunk = typed::chunk(payload)?;
        Ok(Self::read(chunk))
    }

    /// The payload.
    ///
    /// # Errors
    /// A field does not fit in its bits, or the pages are not those that the selectors ask for.
    pub fn encode(&self) -> Result<[u8; 1], typed::NotEncoded> {
        let mut payload = [0; 1];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.asked);
        let name = typed::Name::of("asked");
        tell(name, said);
    }
}

/// The frames on network `bench`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum BenchFrame<'a> {
    /// `wide`.
    Wide(Wide),
    /// `numbers`.
    Numbers(Numbers<'a>),
    /// `lists`.
    Lists(Lists<'a>),
    /// `stated_lists`.
    StatedLists(StatedLists<'a>),
    /// `texts`.
    Texts(Texts<'a>),
    /// `pages`.
    Pages(Pages),
    /// `answers`.
    Answers(Answers<'a>),
    /// `sums`.
    Sums(Sums),
    /// `protected_1`.
    Protected1(Protected1),
    /// `protected_2`.
    Protected2(Protected2),
    /// `protected_5`.
    Protected5(Protected5),
    /// `protected_7`.
    Protected7(Protected7),
}

impl<'a> BenchFrame<'a> {
    /// The frame with an identifier of 11 or 29 bits; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode(
        id: u32,
        extended: bool,
        payload: &'a [u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        Ok(Some(match (id, extended) {
            (0x100, false) => {
                let frame = Wide::decode(payload)?;
                Self::Wide(frame)
            }
            (0x101, false) => {
                let frame = Numbers::decode(payload)?;
                Self::Numbers(frame)
            }
            (0x102, false) => {
                let frame = Lists::decode(payload)?;
                Self::Lists(frame)
            }
            (0x103, false) => {
                let frame = StatedLists::decode(payload)?;
                Self::StatedLists(frame)
            }
            (0x104, false) => {
                let frame = Texts::decode(payload)?;
                Self::Texts(frame)
            }
            (0x105, false) => {
                let frame = Pages::decode(payload)?;
                Self::Pages(frame)
            }
            (0x106..=0x109, false) => {
                let frame = Sums::decode(payload)?;
                Self::Sums(frame)
            }
            (0x10A, false) => {
                let frame = Answers::decode(payload)?;
                Self::Answers(frame)
            }
            (0x110, false) => {
                let frame = Protected1::decode(payload)?;
                Self::Protected1(frame)
            }
            (0x111, false) => {
                let frame = Protected2::decode(payload)?;
                Self::Protected2(frame)
            }
            (0x112, false) => {
                let frame = Protected5::decode(payload)?;
                Self::Protected5(frame)
            }
            (0x113, false) => {
                let frame = Protected7::decode(payload)?;
                Self::Protected7(frame)
            }
            _ => return Ok(None),
        }))
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::Wide(frame) => frame.each(tell),
            Self::Numbers(frame) => frame.each(tell),
            Self::Lists(frame) => frame.each(tell),
            Self::StatedLists(frame) => frame.each(tell),
            Self::Texts(frame) => frame.each(tell),
            Self::Pages(frame) => frame.each(tell),
            Self::Answers(frame) => frame.each(tell),
            Self::Sums(frame) => frame.each(tell),
            Self::Protected1(frame) => frame.each(tell),
            Self::Protected2(frame) => frame.each(tell),
            Self::Protected5(frame) => frame.each(tell),
            Self::Protected7(frame) => frame.each(tell),
        }
    }
}

/// The frames on network `services`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum ServicesFrame {
    /// `protected_service`.
    ProtectedService(ProtectedService),
    /// `either_port`.
    EitherPort(EitherPort),
}

impl ServicesFrame {
    /// The message of a service; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode_service(
        service: u16,
        method: u16,
        _message_type: u8,
        payload: &[u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        let mut is_it = true;
        is_it &= service == 0x4A10;
        is_it &= method == 0x8001;
        if is_it {
            let frame = ProtectedService::decode(payload)?;
            return Ok(Some(Self::ProtectedService(frame)));
        }
        Ok(None)
    }

    /// What goes to a port, or comes from one; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode_port(
        is_tcp: bool,
        from: u16,
        to: u16,
        payload: &[u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        let mut is_it = true;
        is_it &= to == 41200;
        is_it &= !is_tcp;
        if is_it {
            let frame = EitherPort::decode(payload)?;
            return Ok(Some(Self::EitherPort(frame)));
        }
        let mut is_it = true;
        is_it &= from == 41200;
        is_it &= !is_tcp;
        if is_it {
            let frame = EitherPort::decode(payload)?;
            return Ok(Some(Self::EitherPort(frame)));
        }
        Ok(None)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::ProtectedService(frame) => frame.each(tell),
            Self::EitherPort(frame) => frame.each(tell),
        }
    }
}
