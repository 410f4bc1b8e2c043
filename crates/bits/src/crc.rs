//! Cyclic redundancy checks of any width up to 64 bits, described by the parameters of the public catalogue.
//!
//! The parameter model (width, poly, init, refin, refout, xorout) is that of Ross N. Williams, "A Painless Guide to CRC Error
//! Detection Algorithms" (1993), which the public catalogue of parametrised CRC algorithms uses. The register is kept so that one
//! table of 256 entries serves every width: against the top bit of 64 for algorithms that shift left, against bit 0 for those
//! that shift right.

use core::fmt;

/// What makes one algorithm: the parameters of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct CrcParameters {
    /// Width of the register, 1 to 64 bits.
    pub width: u8,
    /// The polynomial without its top term, written most significant bit first.
    pub poly: u64,
    /// The register at the start, most significant bit first even where `refin` is set.
    pub init: u64,
    /// Whether each byte goes in least significant bit first.
    pub refin: bool,
    /// Whether the register is reversed before the last exclusive or.
    pub refout: bool,
    /// What is combined with the register at the end by exclusive or.
    pub xorout: u64,
}

/// Why some parameters make no algorithm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CrcError {
    /// A width outside 1 to 64 bits.
    Width {
        /// The width that was asked for, in bits.
        width: u8,
    },
    /// A polynomial, start or end value with bits above the width.
    ValueTooWide {
        /// The width, in bits.
        width: u8,
    },
}

impl fmt::Display for CrcError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Width { width } => {
                write!(f, "a CRC has 1 to 64 bits and this one would have {width}")
            }
            Self::ValueTooWide { width } => write!(
                f,
                "the polynomial, start and end values of a CRC of {width} bits have at most {width} bits; leave the polynomial's top term out"
            ),
        }
    }
}

impl core::error::Error for CrcError {}

/// A CRC algorithm with its byte table, ready to use: 2 KiB.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Crc {
    parameters: CrcParameters,
    table: [u64; 256],
}

impl fmt::Debug for Crc {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("Crc").field(&self.parameters).finish()
    }
}

impl Crc {
    /// The algorithm with these parameters.
    ///
    /// # Errors
    /// A width outside 1..=64, or a polynomial, start or end value with bits above the width.
    pub const fn new(parameters: CrcParameters) -> Result<Self, CrcError> {
        let CrcParameters { width, poly, init, xorout, .. } = parameters;
        if width == 0 || width > 64 {
            return Err(CrcError::Width { width });
        }
        if (poly | init | xorout) > u64::MAX >> (64 - width) {
            return Err(CrcError::ValueTooWide { width });
        }
        Ok(Self::with_table(parameters))
    }

    /// The parameters are good ones.
    const fn with_table(parameters: CrcParameters) -> Self {
        let mut table = [0; 256];
        let mut byte = 0;
        while byte < 256 {
            table[byte] = if parameters.refin {
                shift_right(&parameters, byte as u64)
            } else {
                shift_left(&parameters, byte as u64)
            };
            byte += 1;
        }
        Self { parameters, table }
    }

    /// The parameters it was made from.
    pub const fn parameters(&self) -> &CrcParameters {
        &self.parameters
    }

    /// The checksum of `bytes`, in the low `width` bits.
    pub fn checksum(&self, bytes: &[u8]) -> u64 {
        self.finish(self.update(self.start(), bytes))
    }

    /// The state before the first byte. A state is only good for [`Crc::update`] and [`Crc::finish`] of the same algorithm.
    pub const fn start(&self) -> u64 {
        self.start_from(self.parameters.init)
    }

    /// The state before the first byte of the same algorithm with another start value; bits above the width do not count.
    pub const fn start_from(&self, init: u64) -> u64 {
        let CrcParameters { width, refin, .. } = self.parameters;
        let init = init & u64::MAX >> (64 - width);
        if refin { reversed(init, width) } else { init << (64 - width) }
    }

    /// The state after `bytes` more.
    pub fn update(&self, state: u64, bytes: &[u8]) -> u64 {
        let entry = |index: u64| self.table[(index & 0xFF) as usize];
        if self.parameters.refin {
            bytes.iter().fold(state, |state, byte| entry(state ^ u64::from(*byte)) ^ state >> 8)
        } else {
            bytes.iter().fold(state, |state, byte| entry(state >> 56 ^ u64::from(*byte)) ^ state << 8)
        }
    }

    /// The checksum of what went into `state`, in the low `width` bits.
    pub const fn finish(&self, state: u64) -> u64 {
        let CrcParameters { width, refin, refout, xorout, .. } = self.parameters;
        let register = if refin { state } else { state >> (64 - width) };
        let register = if refin == refout { register } else { reversed(register, width) };
        register ^ xorout
    }
}

/// The low `width` bits in reverse order.
const fn reversed(value: u64, width: u8) -> u64 {
    value.reverse_bits() >> (64 - width)
}

/// The table entry of an algorithm whose register is kept against bit 63 and shifts left.
const fn shift_left(parameters: &CrcParameters, byte: u64) -> u64 {
    let poly = parameters.poly << (64 - parameters.width);
    let mut register = byte << 56;
    let mut step = 0;
    while step < 8 {
        register = register << 1 ^ if register >> 63 == 1 { poly } else { 0 };
        step += 1;
    }
    register
}

/// The table entry of an algorithm whose register is kept against bit 0 and shifts right.
const fn shift_right(parameters: &CrcParameters, byte: u64) -> u64 {
    let poly = reversed(parameters.poly, parameters.width);
    let mut register = byte;
    let mut step = 0;
    while step < 8 {
        register = register >> 1 ^ if register & 1 == 1 { poly } else { 0 };
        step += 1;
    }
    register
}

/// Names and parameters are those of the public catalogue of parametrised CRC algorithms.
impl Crc {
    /// CRC-8/SAE-J1850; AUTOSAR calls it CRC8.
    pub const SAE_J1850: Self = Self::straight(8, 0x1D, 0xFF, 0xFF);
    /// CRC-8/AUTOSAR; AUTOSAR calls it CRC8H2F.
    pub const AUTOSAR_8: Self = Self::straight(8, 0x2F, 0xFF, 0xFF);
    /// CRC-11/FLEXRAY: the header of a FlexRay frame.
    pub const FLEXRAY_11: Self = Self::straight(11, 0x385, 0x01A, 0);
    /// CRC-15/CAN: classic CAN frames.
    pub const CAN_15: Self = Self::straight(15, 0x4599, 0, 0);
    /// CRC-16/IBM-3740; AUTOSAR calls it CRC16.
    pub const IBM_3740: Self = Self::straight(16, 0x1021, 0xFFFF, 0);
    /// CRC-16/ARC; AUTOSAR calls it CRC16ARC.
    pub const ARC: Self = Self::mirrored(16, 0x8005, 0, 0);
    /// CRC-17/CAN-FD with the catalogue's start value 0; ISO 11898-1:2015 starts with the top bit set.
    pub const CAN_FD_17: Self = Self::straight(17, 0x1_685B, 0, 0);
    /// CRC-21/CAN-FD with the catalogue's start value 0; ISO 11898-1:2015 starts with the top bit set.
    pub const CAN_FD_21: Self = Self::straight(21, 0x10_2899, 0, 0);
    /// CRC-24/FLEXRAY-A: frames on FlexRay channel A.
    pub const FLEXRAY_24_A: Self = Self::straight(24, 0x5D_6DCB, 0xFE_DCBA, 0);
    /// CRC-24/FLEXRAY-B: frames on FlexRay channel B.
    pub const FLEXRAY_24_B: Self = Self::straight(24, 0x5D_6DCB, 0xAB_CDEF, 0);
    /// CRC-32/ISO-HDLC; AUTOSAR calls it CRC32.
    pub const ISO_HDLC: Self = Self::mirrored(32, 0x04C1_1DB7, 0xFFFF_FFFF, 0xFFFF_FFFF);
    /// CRC-32/AUTOSAR; AUTOSAR calls it CRC32P4.
    pub const AUTOSAR_32: Self = Self::mirrored(32, 0xF4AC_FB13, 0xFFFF_FFFF, 0xFFFF_FFFF);
    /// CRC-64/XZ; AUTOSAR calls it CRC64.
    pub const XZ_64: Self = Self::mirrored(64, 0x42F0_E1EB_A9EA_3693, u64::MAX, u64::MAX);

    pub(crate) const fn straight(width: u8, poly: u64, init: u64, xorout: u64) -> Self {
        Self::with_table(CrcParameters { width, poly, init, refin: false, refout: false, xorout })
    }

    const fn mirrored(width: u8, poly: u64, init: u64, xorout: u64) -> Self {
        Self::with_table(CrcParameters { width, poly, init, refin: true, refout: true, xorout })
    }
}
