// Written by wirelore out of the description of self. Change the description, not this file.
//
// Fields hold what the bits say, methods of the same name what they mean. Needs wirelore-bits; no std, no
// allocation.
//
// Caution: frames sent into a live vehicle can move it, start it or fire airbags. Send on the bench only.

use wirelore_bits::typed;

/// `Option`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::enum_variant_names)]
pub enum Option3 {
    /// `fn` (0).
    Fn,
    /// `Self` (1).
    Self2,
    /// `self` (2).
    Self3,
    /// `other` (3).
    Other2,
    /// `Other` (4).
    Other3,
    /// `type` (5..9).
    Type(u8),
    /// `größe` (10).
    Grosse,
    /// A raw number without a word.
    Other(u8),
}

impl Option3 {
    /// The state that a raw number stands for.
    #[must_use]
    pub const fn from_raw(raw: u8) -> Self {
        match raw {
            0 => Self::Fn,
            1 => Self::Self2,
            2 => Self::Self3,
            3 => Self::Other2,
            4 => Self::Other3,
            5..=9 => Self::Type(raw),
            10 => Self::Grosse,
            _ => Self::Other(raw),
        }
    }

    /// The raw number.
    #[must_use]
    pub const fn raw(self) -> u8 {
        match self {
            Self::Fn => 0,
            Self::Self2 => 1,
            Self::Self3 => 2,
            Self::Other2 => 3,
            Self::Other3 => 4,
            Self::Grosse => 10,
            Self::Type(raw) => raw,
            Self::Other(raw) => raw,
        }
    }

    /// The word of the description.
    #[must_use]
    pub const fn word(self) -> Option<&'static str> {
        match self {
            Self::Fn => Some("fn"),
            Self::Self2 => Some("Self"),
            Self::Self3 => Some("self"),
            Self::Other2 => Some("other"),
            Self::Other3 => Some("Other"),
            Self::Type(_) => Some("type"),
            Self::Grosse => Some("größe"),
            Self::Other(_) => None,
        }
    }
}

/// title "x" \*/ \\   \\u{202e} \`x\` \[y\](z) \<b\>.
///
/// note \*/ }
/// fn main() { panic!() }
/// \`\`\`
/// \- a
/// b
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Self2 {
    /// `raw`; 8 bits.
    pub fn_: Option3,
    /// \*/.
    ///
    /// `raw - 40` °C; 8 bits.
    pub type_: u8,
    /// `decode`.
    ///
    /// `raw`; 8 bits.
    pub decode_2: u8,
    /// `payload`.
    ///
    /// `raw * 2` V; 8 bits.
    pub payload_2: u8,
    /// `bits`.
    ///
    /// `raw`; 8 bits.
    pub bits_2: u8,
    /// `verify`.
    ///
    /// `raw`; 8 bits.
    pub verify_2: u8,
    /// `raw`; 8 bits.
    pub set_type: u8,
    /// `größe`.
    ///
    /// `raw * 3` m; 8 bits.
    pub grosse: u8,
}

impl Self2 {
    /// The identifier.
    pub const ID: u32 = 0x1;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_FN: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_TYPE: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_DECODE_2: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_PAYLOAD_2: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_BITS_2: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_VERIFY_2: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_SET_TYPE: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_GROSSE: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_TYPE: typed::Formula = typed::Formula::new(1, -40, 1);
    const FORMULA_PAYLOAD_2: typed::Formula = typed::Formula::new(2, 0, 1);
    const FORMULA_GROSSE: typed::Formula = typed::Formula::new(3, 0, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_FN.of(payload);
        let fn_ = Option3::from_raw(bits as u8);
        let type_ = Self::AT_TYPE.of(payload) as u8;
        let decode_2 = Self::AT_DECODE_2.of(payload) as u8;
        let payload_2 = Self::AT_PAYLOAD_2.of(payload) as u8;
        let bits_2 = Self::AT_BITS_2.of(payload) as u8;
        let verify_2 = Self::AT_VERIFY_2.of(payload) as u8;
        let set_type = Self::AT_SET_TYPE.of(payload) as u8;
        let grosse = Self::AT_GROSSE.of(payload) as u8;
        Self {
            fn_,
            type_,
            decode_2,
            payload_2,
            bits_2,
            verify_2,
            set_type,
            grosse,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.fn_.raw()), 8, "fn")?;
        Self::AT_FN.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.type_), 8, "type")?;
        Self::AT_TYPE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.decode_2), 8, "decode")?;
        Self::AT_DECODE_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.payload_2), 8, "payload")?;
        Self::AT_PAYLOAD_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.bits_2), 8, "bits")?;
        Self::AT_BITS_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.verify_2), 8, "verify")?;
        Self::AT_VERIFY_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.set_type), 8, "set_type")?;
        Self::AT_SET_TYPE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.grosse), 8, "größe")?;
        Self::AT_GROSSE.put(payload, bits);
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
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn type_(&self) -> typed::Reading<f64> {
        match self.type_ {
            255 => typed::Reading::NoReading,
            raw => typed::Reading::Value((i64::from(raw) - 40) as f64),
        }
    }

    /// Sets `type_` to the raw number nearest to a value in °C.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_type_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |raw: i128| !matches!(raw, 255);
        let formula = Self::FORMULA_TYPE;
        let raw = &mut self.type_;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -40 to 200 in °C.
    #[must_use]
    pub fn type_is_outside(&self) -> bool {
        let raw = self.type_;
        matches!(raw, 241..=254)
    }

    /// The value in V.
    #[must_use]
    pub fn payload_2(&self) -> f64 {
        let raw = self.payload_2;
        (i64::from(raw) * 2) as f64
    }

    /// Sets `payload_2` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_payload_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_PAYLOAD_2;
        let raw = &mut self.payload_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// What the raw number says.
    #[must_use]
    pub fn verify_2(&self) -> typed::Reading<u8> {
        match self.verify_2 {
            3 => typed::Reading::Fault,
            raw => typed::Reading::Value(raw),
        }
    }

    /// The value in m.
    #[must_use]
    pub fn grosse(&self) -> f64 {
        let raw = self.grosse;
        (i64::from(raw) * 3) as f64
    }

    /// Sets `grosse` to the raw number nearest to a value in m.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_grosse(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_GROSSE;
        let raw = &mut self.grosse;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = self.fn_;
        let said = said.raw();
        let said = typed::Said::from(said);
        let state = self.fn_;
        let said = said.word(state.word());
        let name = typed::Name::of("fn");
        tell(name, said);
        let said = typed::Said::from(self.type_());
        let is_outside = self.type_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("type");
        tell(name, said);
        let said = typed::Said::from(self.decode_2);
        let name = typed::Name::of("decode");
        tell(name, said);
        let said = typed::Said::from(self.payload_2());
        let name = typed::Name::of("payload");
        tell(name, said);
        let said = typed::Said::from(self.bits_2);
        let name = typed::Name::of("bits");
        tell(name, said);
        let said = typed::Said::from(self.verify_2());
        let name = typed::Name::of("verify");
        tell(name, said);
        let said = typed::Said::from(self.set_type);
        let name = typed::Name::of("set_type");
        tell(name, said);
        let said = typed::Said::from(self.grosse());
        let name = typed::Name::of("größe");
        tell(name, said);
    }
}

/// `self`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Self3 {
    /// `raw`; 8 bits.
    pub a_b: u8,
    /// `aB`.
    ///
    /// `raw`; 8 bits.
    pub a_b_2: u8,
    /// `温度`.
    ///
    /// `raw`; 8 bits.
    pub u6e29_u5ea6: u8,
    /// `raw`; 8 bits.
    pub crate_: u8,
    /// `raw`; 8 bits.
    ///
    /// Counts the frames, from 0 to 255.
    pub super_: u8,
    /// `raw * 2` V; 8 bits.
    pub to_x: u8,
    /// `raw * 2` V; 8 bits.
    pub from_x: u8,
    /// `clone`.
    ///
    /// `raw * 2` V; 8 bits.
    pub clone_2: u8,
}

// Called as the description calls its signals.
#[allow(clippy::should_implement_trait, clippy::wrong_self_convention)]
impl Self3 {
    /// The identifier.
    pub const ID: u32 = 0x2;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_A_B: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_A_B_2: typed::Cut = typed::Cut::between((1, 7), (1, 0));
    const AT_U6E29_U5EA6: typed::Cut = typed::Cut::between((2, 7), (2, 0));
    const AT_CRATE: typed::Cut = typed::Cut::between((3, 7), (3, 0));
    const AT_SUPER: typed::Cut = typed::Cut::between((4, 7), (4, 0));
    const AT_TO_X: typed::Cut = typed::Cut::between((5, 7), (5, 0));
    const AT_FROM_X: typed::Cut = typed::Cut::between((6, 7), (6, 0));
    const AT_CLONE_2: typed::Cut = typed::Cut::between((7, 7), (7, 0));
    const FORMULA_TO_X: typed::Formula = typed::Formula::new(2, 0, 1);
    const FORMULA_FROM_X: typed::Formula = typed::Formula::new(2, 0, 1);
    const FORMULA_CLONE_2: typed::Formula = typed::Formula::new(2, 0, 1);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let a_b = Self::AT_A_B.of(payload) as u8;
        let a_b_2 = Self::AT_A_B_2.of(payload) as u8;
        let u6e29_u5ea6 = Self::AT_U6E29_U5EA6.of(payload) as u8;
        let crate_ = Self::AT_CRATE.of(payload) as u8;
        let super_ = Self::AT_SUPER.of(payload) as u8;
        let to_x = Self::AT_TO_X.of(payload) as u8;
        let from_x = Self::AT_FROM_X.of(payload) as u8;
        let clone_2 = Self::AT_CLONE_2.of(payload) as u8;
        Self {
            a_b,
            a_b_2,
            u6e29_u5ea6,
            crate_,
            super_,
            to_x,
            from_x,
            clone_2,
        }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.a_b), 8, "a_b")?;
        Self::AT_A_B.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.a_b_2), 8, "aB")?;
        Self::AT_A_B_2.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.u6e29_u5ea6), 8, "温度")?;
        Self::AT_U6E29_U5EA6.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.crate_), 8, "crate")?;
        Self::AT_CRATE.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.super_), 8, "super")?;
        Self::AT_SUPER.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.to_x), 8, "to_x")?;
        Self::AT_TO_X.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.from_x), 8, "from_x")?;
        Self::AT_FROM_X.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.clone_2), 8, "clone")?;
        Self::AT_CLONE_2.put(payload, bits);
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
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The count of the next frame, behind this one; behind what is no count, the first one.
    #[must_use]
    pub const fn next_super(before: u8) -> u8 {
        let next = typed::next_count(before as u64, 0, 255, 1);
        next as u8
    }

    /// The value in V.
    #[must_use]
    pub fn to_x(&self) -> f64 {
        let raw = self.to_x;
        (i64::from(raw) * 2) as f64
    }

    /// Sets `to_x` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_to_x(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_TO_X;
        let raw = &mut self.to_x;
        typed::set(raw, value, formula, range, is_value)
    }

    /// The value in V.
    #[must_use]
    pub fn from_x(&self) -> f64 {
        let raw = self.from_x;
        (i64::from(raw) * 2) as f64
    }

    /// Sets `from_x` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_from_x(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_FROM_X;
        let raw = &mut self.from_x;
        typed::set(raw, value, formula, range, is_value)
    }

    /// The value in V.
    #[must_use]
    pub fn clone_2(&self) -> f64 {
        let raw = self.clone_2;
        (i64::from(raw) * 2) as f64
    }

    /// Sets `clone_2` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_clone_2(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (0, 255);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_CLONE_2;
        let raw = &mut self.clone_2;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.a_b);
        let name = typed::Name::of("a_b");
        tell(name, said);
        let said = typed::Said::from(self.a_b_2);
        let name = typed::Name::of("aB");
        tell(name, said);
        let said = typed::Said::from(self.u6e29_u5ea6);
        let name = typed::Name::of("温度");
        tell(name, said);
        let said = typed::Said::from(self.crate_);
        let name = typed::Name::of("crate");
        tell(name, said);
        let said = typed::Said::from(self.super_);
        let name = typed::Name::of("super");
        tell(name, said);
        let said = typed::Said::from(self.to_x());
        let name = typed::Name::of("to_x");
        tell(name, said);
        let said = typed::Said::from(self.from_x());
        let name = typed::Name::of("from_x");
        tell(name, said);
        let said = typed::Said::from(self.clone_2());
        let name = typed::Name::of("clone");
        tell(name, said);
    }
}

pub use core_2::Core;

/// `core` and what it holds.
#[allow(clippy::module_inception)]
pub mod core_2 {
    use wirelore_bits::typed;

    /// `core`.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct Core {
        /// `raw`; 8 bits.
        pub page: u8,
        /// What is there under a condition.
        pub when_page: WhenPage,
    }

    impl Core {
        /// The identifier.
        pub const ID: u32 = 0x3;
        /// Whether the identifier has 29 bits.
        pub const EXTENDED: bool = false;
        /// The lengths in bytes.
        pub const LENGTHS: core::ops::RangeInclusive<usize> = 4..=8;
        const AT_PAGE: typed::Cut = typed::Cut::between((0, 7), (0, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let page = Self::AT_PAGE.of(payload) as u8;
            let held = Self::select_page(payload);
            let when_page = match held {
                0 => {
                    let page = PageIs1::read(payload)?;
                    WhenPage::Is1(page)
                }
                1 => {
                    let page = PageIs2::read(payload)?;
                    WhenPage::Is2(page)
                }
                2 => {
                    let page = PageOtherwise::read(payload)?;
                    WhenPage::Otherwise(page)
                }
                _ => WhenPage::NoPage,
            };
            Ok(Self { page, when_page })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.page), 8, "page")?;
            Self::AT_PAGE.put(payload, bits);
            let held = Self::select_page(payload);
            match (held, &self.when_page) {
                (0, WhenPage::Is1(page)) => page.write(payload)?,
                (1, WhenPage::Is2(page)) => page.write(payload)?,
                (2, WhenPage::Otherwise(page)) => page.write(payload)?,
                (3, WhenPage::NoPage) => {}
                _ => return Err(typed::NotEncoded::OtherPage),
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(1, Some(4));
            match &self.when_page {
                WhenPage::Is1(page) => page.measure(size),
                WhenPage::Is2(page) => page.measure(size),
                WhenPage::Otherwise(page) => page.measure(size),
                WhenPage::NoPage => {}
            }
        }

        #[inline]
        fn select_page(payload: &[u8]) -> usize {
            let Some(bits) = Self::AT_PAGE.get(payload) else {
                return 3;
            };
            match bits {
                1 => 0,
                2 => 1,
                _ => 2,
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
            let said = typed::Said::from(self.page);
            let name = typed::Name::of("page");
            tell(name, said);
            match &self.when_page {
                WhenPage::Is1(page) => page.each(tell),
                WhenPage::Is2(page) => page.each(tell),
                WhenPage::Otherwise(page) => page.each(tell),
                WhenPage::NoPage => {}
            }
        }
    }

    /// What is there under a condition: at most one of these.
    #[derive(Clone, Copy, Debug, PartialEq)]
    // Without allocation there are no boxes.
    #[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
    pub enum WhenPage {
        /// When `page` is 1.
        Is1(PageIs1),
        /// When `page` is 2.
        Is2(PageIs2),
        /// Otherwise.
        Otherwise(PageOtherwise),
        /// No page takes the value, or the payload ends before it.
        NoPage,
    }

    /// When `page` is 1.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PageIs1 {
        /// `raw * 2` V; 8 bits.
        pub tell: u8,
        /// `raw * 0.1` V; 16 bits.
        pub value: u16,
    }

    impl PageIs1 {
        const AT_TELL: typed::Cut = typed::Cut::between((1, 7), (1, 0));
        const AT_VALUE: typed::Cut = typed::Cut::between((2, 7), (3, 0));
        const FORMULA_TELL: typed::Formula = typed::Formula::new(2, 0, 1);
        const FORMULA_VALUE: typed::Formula = typed::Formula::new(1, 0, 10);

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let tell = Self::AT_TELL.of(payload) as u8;
            let value = Self::AT_VALUE.of(payload) as u16;
            Ok(Self { tell, value })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            let bits = typed::unsigned_bits(u64::from(self.tell), 8, "tell")?;
            Self::AT_TELL.put(payload, bits);
            let bits = typed::unsigned_bits(u64::from(self.value), 16, "value")?;
            Self::AT_VALUE.put(payload, bits);
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(4, None);
        }

        /// The value in V.
        #[must_use]
        pub fn tell(&self) -> typed::Reading<f64> {
            match self.tell {
                255 => typed::Reading::NoReading,
                raw => typed::Reading::Value((i64::from(raw) * 2) as f64),
            }
        }

        /// Sets `tell` to the raw number nearest to a value in V.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_tell(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 255);
            let is_value = |raw: i128| !matches!(raw, 255);
            let formula = Self::FORMULA_TELL;
            let raw = &mut self.tell;
            typed::set(raw, value, formula, range, is_value)
        }

        /// The value in V.
        #[must_use]
        pub fn value(&self) -> f64 {
            let raw = self.value;
            f64::from(raw) / 10.0
        }

        /// Sets `value` to the raw number nearest to a value in V.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_value(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 65535);
            let is_value = |_: i128| true;
            let formula = Self::FORMULA_VALUE;
            let raw = &mut self.value;
            typed::set(raw, value, formula, range, is_value)
        }

        /// Whether the value lies outside its range, 0 to 20 in V.
        #[must_use]
        pub fn value_is_outside(&self) -> bool {
            let raw = self.value;
            matches!(raw, 201..=0xFFFF)
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            let said = typed::Said::from(self.tell());
            let name = typed::Name::of("tell");
            tell(name, said);
            let said = typed::Said::from(self.value());
            let is_outside = self.value_is_outside();
            let said = said.outside(is_outside);
            let name = typed::Name::of("value");
            tell(name, said);
        }
    }

    /// When `page` is 2.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PageIs2 {
        /// `each`.
        ///
        /// `raw * 1/7`; 48 bits.
        ///
        /// `None`: the payload ends before it.
        pub each_2: Option<u64>,
    }

    impl PageIs2 {
        const AT_EACH_2: typed::Cut = typed::Cut::between((2, 7), (7, 0));
        const FORMULA_EACH_2: typed::Formula = typed::Formula::new(1, 0, 7);

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let each_2 = Self::AT_EACH_2.get(payload);
            Ok(Self { each_2 })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.each_2 {
                let bits = typed::unsigned_bits(value, 48, "each")?;
                Self::AT_EACH_2.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(8, None);
            if self.each_2.is_some() {
                size.reach(8);
            }
        }

        /// The value.
        #[must_use]
        pub fn each_2(&self) -> Option<f64> {
            let value = |raw: u64| Self::FORMULA_EACH_2.of(i128::from(raw));
            let raw = self.each_2;
            raw.map(value)
        }

        /// Sets `each_2` to the raw number nearest to a value.
        ///
        /// What no raw number can say (`OutOfRange`) leaves it as it is.
        #[must_use]
        pub fn set_each_2(&mut self, value: f64) -> wirelore_bits::Fit {
            let range = (0, 281474976710655);
            let is_value = |_: i128| true;
            let mut raw: u64 = 0;
            let formula = Self::FORMULA_EACH_2;
            let fit = typed::set(&mut raw, value, formula, range, is_value);
            if fit != wirelore_bits::Fit::OutOfRange {
                self.each_2 = Some(raw);
            }
            fit
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.each_2() {
                let said = typed::Said::from(said);
                let name = typed::Name::of("each");
                tell(name, said);
            }
        }
    }

    /// Otherwise.
    #[derive(Clone, Copy, Debug, PartialEq)]
    pub struct PageOtherwise {
        /// `raw`; 8 bits.
        ///
        /// `None`: the payload ends before it.
        pub name: Option<super::Option3>,
    }

    impl PageOtherwise {
        const AT_NAME: typed::Cut = typed::Cut::between((5, 7), (5, 0));

        #[inline]
        fn read(payload: &[u8]) -> Result<Self, typed::TooShort> {
            let bits = Self::AT_NAME.get(payload);
            let convert = |bits: u64| super::Option3::from_raw(bits as u8);
            let name = bits.map(convert);
            Ok(Self { name })
        }

        fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
            if let Some(value) = self.name {
                let bits = typed::unsigned_bits(u64::from(value.raw()), 8, "name")?;
                Self::AT_NAME.put(payload, bits);
            }
            Ok(())
        }

        fn measure(&self, size: &mut typed::Size) {
            size.part(6, None);
            if self.name.is_some() {
                size.reach(6);
            }
        }

        /// Tells what each signal says, by its name in the description.
        pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
            if let Some(said) = self.name {
                let said = said.raw();
                let said = typed::Said::from(said);
                let state = self.name;
                let said = said.word(state.and_then(|state| state.word()));
                let name = typed::Name::of("name");
                tell(name, said);
            }
        }
    }
}

/// `typed`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Typed {
    /// `raw * 0.001` V; 64 bits, signed.
    pub wide: i64,
}

impl Typed {
    /// The identifier.
    pub const ID: u32 = 0x4;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_WIDE: typed::Cut = typed::Cut::between((7, 7), (0, 0));
    const FORMULA_WIDE: typed::Formula = typed::Formula::new(1, 0, 1000);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_WIDE.of(payload);
        let wide = typed::signed(bits, 64);
        Self { wide }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::signed_bits(self.wide, 64, "wide")?;
        Self::AT_WIDE.put(payload, bits);
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
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in V.
    #[must_use]
    pub fn wide(&self) -> f64 {
        let raw = self.wide;
        Self::FORMULA_WIDE.of(i128::from(raw))
    }

    /// Sets `wide` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_wide(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-9223372036854775808, 9223372036854775807);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_WIDE;
        let raw = &mut self.wide;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -5 to 5 in V.
    #[must_use]
    pub fn wide_is_outside(&self) -> bool {
        let raw = self.wide;
        matches!(raw, -9223372036854775808..=-5001 | 0x1389..=0x7FFFFFFFFFFFFFFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.wide());
        let is_outside = self.wide_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("wide");
        tell(name, said);
    }
}

/// `Option`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Option2 {
    /// `raw * 2` V; 32 bits, floating point.
    pub f: f64,
    /// `raw`; 16 bits, floating point.
    pub h: f64,
    /// `raw * 0.5` V; 16 bits, decimal digits.
    pub b: u16,
}

impl Option2 {
    /// The identifier.
    pub const ID: u32 = 0x5;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 8;
    const AT_F: typed::Cut = typed::Cut::between((3, 7), (0, 0));
    const AT_H: typed::Cut = typed::Cut::between((5, 7), (4, 0));
    const AT_B: typed::Cut = typed::Cut::between((7, 7), (6, 0));
    const FORMULA_F: typed::Formula = typed::Formula::new(2, 0, 1);
    const FORMULA_B: typed::Formula = typed::Formula::new(1, 0, 2);

    #[inline]
    fn read(payload: &[u8; 8]) -> Self {
        let bits = Self::AT_F.of(payload);
        let f = typed::float(bits, 32);
        let bits = Self::AT_H.of(payload);
        let h = typed::float(bits, 16);
        let b = Self::AT_B.of(payload) as u16;
        Self { f, h, b }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::float_bits(self.f, 32, "f")?;
        Self::AT_F.put(payload, bits);
        let bits = typed::float_bits(self.h, 16, "h")?;
        Self::AT_H.put(payload, bits);
        let bits = typed::unsigned_bits(u64::from(self.b), 16, "b")?;
        Self::AT_B.put(payload, bits);
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
    pub fn encode(&self) -> Result<[u8; 8], typed::NotEncoded> {
        let mut payload = [0; 8];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in V.
    #[must_use]
    pub fn f(&self) -> typed::Reading<f64> {
        let value = self.f;
        let bits = typed::float_bits(value, 32, "").ok();
        if typed::within(bits, 0x7FFFFFFF, 0x7FFFFFFF) {
            return typed::Reading::NoReading;
        }
        typed::Reading::Value(Self::FORMULA_F.of_float(value))
    }

    /// Whether the value lies outside its range, 0 to 5 in V.
    #[must_use]
    pub fn f_is_outside(&self) -> bool {
        let value = self.f().value();
        value.is_some() && !typed::within(value, 0.0, 5.0)
    }

    /// The value in V of the digits.
    #[must_use]
    pub fn b(&self) -> typed::Reading<f64> {
        let bits = u64::from(self.b);
        match typed::digits(bits, 16) {
            None => typed::Reading::Undefined,
            Some(0x270F) => typed::Reading::NoReading,
            Some(raw) => typed::Reading::Value(Self::FORMULA_B.of(i128::from(raw))),
        }
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.f());
        let is_outside = self.f_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("f");
        tell(name, said);
        let said = typed::Said::from(self.h);
        let name = typed::Name::of("h");
        tell(name, said);
        let said = typed::Said::from(self.b());
        let name = typed::Name::of("b");
        tell(name, said);
    }
}

/// `curve`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve {
    /// a sensor curve °C; 8 bits.
    pub t: u8,
    /// `raw * -3` V; 16 bits, sign and size.
    pub m: i16,
}

impl Curve {
    /// The identifier.
    pub const ID: u32 = 0x6;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The length in bytes.
    pub const LENGTH: usize = 3;
    const AT_T: typed::Cut = typed::Cut::between((0, 7), (0, 0));
    const AT_M: typed::Cut = typed::Cut::between((1, 7), (2, 0));
    const FORMULA_M: typed::Formula = typed::Formula::new(-3, 0, 1);

    #[inline]
    fn read(payload: &[u8; 3]) -> Self {
        let t = Self::AT_T.of(payload) as u8;
        let bits = Self::AT_M.of(payload);
        let m = typed::sign_magnitude(bits, 16) as i16;
        Self { t, m }
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.t), 8, "t")?;
        Self::AT_T.put(payload, bits);
        let bits = typed::sign_magnitude_bits(i64::from(self.m), 16, "m")?;
        Self::AT_M.put(payload, bits);
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
    pub fn encode(&self) -> Result<[u8; 3], typed::NotEncoded> {
        let mut payload = [0; 3];
        self.write(&mut payload)?;
        Ok(payload)
    }

    /// The value in °C.
    #[must_use]
    pub fn t(&self) -> typed::Reading<f64> {
        match self.t {
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
    pub fn t_is_outside(&self) -> bool {
        let raw = self.t;
        matches!(raw, 0..=83 | 225..=240)
    }

    /// The value in V.
    #[must_use]
    pub fn m(&self) -> f64 {
        let raw = self.m;
        (i64::from(raw) * -3) as f64
    }

    /// Sets `m` to the raw number nearest to a value in V.
    ///
    /// What no raw number can say (`OutOfRange`) leaves it as it is.
    #[must_use]
    pub fn set_m(&mut self, value: f64) -> wirelore_bits::Fit {
        let range = (-32767, 32767);
        let is_value = |_: i128| true;
        let formula = Self::FORMULA_M;
        let raw = &mut self.m;
        typed::set(raw, value, formula, range, is_value)
    }

    /// Whether the value lies outside its range, -100 to 2000 in V.
    #[must_use]
    pub fn m_is_outside(&self) -> bool {
        let raw = self.m;
        matches!(raw, -32767..=-667 | 34..=0x7FFF)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.t());
        let is_outside = self.t_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("t");
        tell(name, said);
        let said = typed::Said::from(self.m());
        let is_outside = self.m_is_outside();
        let said = said.outside(is_outside);
        let name = typed::Name::of("m");
        tell(name, said);
    }
}

/// `sized`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sized<'a> {
    /// `raw`; 8 bits.
    pub n: u8,
    /// Text, byte by byte.
    pub text: &'a [u8],
}

impl<'a> Sized<'a> {
    /// The identifier.
    pub const ID: u32 = 0x7;
    /// Whether the identifier has 29 bits.
    pub const EXTENDED: bool = false;
    /// The lengths in bytes.
    pub const LENGTHS: core::ops::RangeInclusive<usize> = 1..=8;
    const AT_N: typed::Cut = typed::Cut::between((0, 7), (0, 0));

    #[inline]
    fn read(payload: &'a [u8]) -> Result<Self, typed::TooShort> {
        let n = Self::AT_N.of(payload) as u8;
        let told = Self::AT_N.get(payload);
        let text = typed::sized(payload, 1, Some(8), told)?;
        Ok(Self { n, text })
    }

    fn write(&self, payload: &mut [u8]) -> Result<(), typed::NotEncoded> {
        let bits = typed::unsigned_bits(u64::from(self.n), 8, "n")?;
        Self::AT_N.put(payload, bits);
        typed::put_bytes(payload, self.text, 1, Some(8), "text")?;
        let told = Self::AT_N.get(payload);
        typed::count_fits(told, self.text.len(), "n")?;
        Ok(())
    }

    fn measure(&self, size: &mut typed::Size) {
        size.part(1, Some(1));
        size.reach(1 + self.text.len());
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
    pub fn text(&self) -> typed::Text<'a> {
        typed::Text::new(self.text, typed::Charset::Utf8)
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        let said = typed::Said::from(self.n);
        let name = typed::Name::of("n");
        tell(name, said);
        let said = typed::Said::from(self.text());
        let name = typed::Name::of("text");
        tell(name, said);
    }
}

/// The frames on network `crate`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum CrateFrame {
    /// `Self`.
    Self2(Self2),
    /// `self`.
    Self3(Self3),
}

impl CrateFrame {
    /// The frame with an identifier of 11 or 29 bits; `None`: no frame is described so.
    ///
    /// # Errors
    /// The payload is shorter than the frame.
    pub fn decode(
        id: u32,
        extended: bool,
        payload: &[u8],
    ) -> Result<Option<Self>, typed::TooShort> {
        Ok(Some(match (id, extended) {
            (0x1, false) => {
                let frame = Self2::decode(payload)?;
                Self::Self2(frame)
            }
            (0x2, false) => {
                let frame = Self3::decode(payload)?;
                Self::Self3(frame)
            }
            _ => return Ok(None),
        }))
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::Self2(frame) => frame.each(tell),
            Self::Self3(frame) => frame.each(tell),
        }
    }
}

/// The frames on network `core`.
#[derive(Clone, Copy, Debug, PartialEq)]
// Without allocation there are no boxes.
#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]
pub enum CoreFrame<'a> {
    /// `core`.
    Core(Core),
    /// `typed`.
    Typed(Typed),
    /// `Option`.
    Option2(Option2),
    /// `curve`.
    Curve(Curve),
    /// `sized`.
    Sized(Sized<'a>),
}

impl<'a> CoreFrame<'a> {
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
            (0x3, false) => {
                let frame = Core::decode(payload)?;
                Self::Core(frame)
            }
            (0x4, false) => {
                let frame = Typed::decode(payload)?;
                Self::Typed(frame)
            }
            (0x5, false) => {
                let frame = Option2::decode(payload)?;
                Self::Option2(frame)
            }
            (0x6, false) => {
                let frame = Curve::decode(payload)?;
                Self::Curve(frame)
            }
            (0x7, false) => {
                let frame = Sized::decode(payload)?;
                Self::Sized(frame)
            }
            _ => return Ok(None),
        }))
    }

    /// Tells what each signal says, by its name in the description.
    pub fn each(&self, tell: &mut dyn FnMut(typed::Name, typed::Said<'_>)) {
        match self {
            Self::Core(frame) => frame.each(tell),
            Self::Typed(frame) => frame.each(tell),
            Self::Option2(frame) => frame.each(tell),
            Self::Curve(frame) => frame.each(tell),
            Self::Sized(frame) => frame.each(tell),
        }
    }
}
