//! What signals do beyond carrying a value: they count the frames, guard the payload, or both.

use std::fmt;

use serde::{Deserialize, Serialize};
use wirelore_bits::CrcParameters;

use crate::{ByteSpan, Protection, SignalId};

/// What a signal does beyond carrying a value.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Role {
    /// Nothing.
    Value,
    /// It counts the frames.
    Counter(Counter),
    /// It guards the payload. (Boxed: few signals do, and its rule is large.)
    Checksum(Box<Checksum>),
    /// It is the counter of an end-to-end protection, and stands for all of it.
    Protection(Box<Protection>),
}

/// A counter's rule: from `low` up to `high` in steps, then on from `low`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Counter {
    /// The first count.
    pub low: u64,
    /// The last count, above `low`.
    pub high: u64,
    /// What is added from frame to frame, modulo `high - low + 1`; never 0.
    pub step: u64,
}

/// A checksum's rule.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Checksum {
    /// How it is calculated.
    pub algorithm: ChecksumAlgorithm,
    /// The payload bytes it covers, in this order. Never empty.
    pub over: Vec<ByteSpan>,
    /// The start value, where it is not the algorithm's own.
    pub start: Option<u64>,
    /// Bytes that go in before the payload's.
    pub first: Vec<MixedByte>,
    /// Bytes that go in after the payload's.
    pub then: Vec<MixedByte>,
}

impl Checksum {
    /// All bytes that go in beside the payload's.
    pub fn mixed_in(&self) -> impl Iterator<Item = MixedByte> {
        self.first.iter().chain(&self.then).copied()
    }

    /// Whether bytes of the identifier go in, so that a payload alone does not tell the checksum.
    #[must_use]
    pub fn needs_identifier(&self) -> bool {
        self.mixed_in().any(|byte| matches!(byte, MixedByte::Identifier(_)))
    }
}

/// A byte that goes into a checksum beside those that it covers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MixedByte {
    /// The same in every frame.
    Byte(u8),
    /// A byte of the frame's identifier: 0 is the least significant one, at most 3.
    Identifier(u8),
    /// The bits of a signal of at most 8 bits.
    Signal(SignalId),
}

/// How a checksum is calculated.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ChecksumAlgorithm {
    /// CRC-8/SAE-J1850.
    Crc8SaeJ1850,
    /// CRC-8/AUTOSAR (polynomial 0x2F).
    Crc8Autosar,
    /// CRC-16/IBM-3740.
    Crc16Ibm3740,
    /// CRC-16/ARC.
    Crc16Arc,
    /// CRC-32/ISO-HDLC.
    Crc32IsoHdlc,
    /// CRC-32/AUTOSAR.
    Crc32Autosar,
    /// CRC-64/XZ.
    Crc64Xz,
    /// Exclusive or of the bytes.
    Xor8,
    /// Sum of the bytes, modulo 256.
    Sum8,
    /// Sum of the bytes modulo 256, all bits inverted.
    InvertedSum8,
    /// Sum of the bytes with end-around carry, all bits inverted (as LIN does).
    InvertedCarrySum8,
    /// Sum of the bytes, its two half bytes added, modulo 16.
    Nibble4,
    /// A CRC by its parameters.
    Crc(CrcRule),
}

/// The parameters of a CRC, as in the public catalogue of parametrised CRC algorithms (Ross N. Williams, "A Painless Guide to CRC Error
/// Detection Algorithms", 1993).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CrcRule {
    /// 1 to 64 bits.
    pub width: u8,
    /// The polynomial without its top term, the most significant bit first.
    pub poly: u64,
    /// The start value.
    pub start: u64,
    /// What is combined with the result by exclusive or.
    pub xor: u64,
    /// Whether bytes go in, and the result comes out, the least significant bit first.
    pub reflected: bool,
}

impl CrcRule {
    /// The parameters as the core takes them.
    #[must_use]
    pub fn parameters(&self) -> CrcParameters {
        let Self { width, poly, start, xor, reflected } = *self;
        CrcParameters { width, poly, init: start, refin: reflected, refout: reflected, xorout: xor }
    }
}

impl fmt::Display for CrcRule {
    /// As the language writes it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { width, poly, start, xor, reflected } = self;
        write!(f, "crc width {width} poly 0x{poly:X} start 0x{start:X} xor 0x{xor:X}")?;
        if *reflected { f.write_str(" reflected") } else { Ok(()) }
    }
}

impl ChecksumAlgorithm {
    /// The algorithms that have a name, in the order of the language page.
    pub const NAMED: [Self; 12] = [
        Self::Crc8SaeJ1850,
        Self::Crc8Autosar,
        Self::Crc16Ibm3740,
        Self::Crc16Arc,
        Self::Crc32IsoHdlc,
        Self::Crc32Autosar,
        Self::Crc64Xz,
        Self::Xor8,
        Self::Sum8,
        Self::InvertedSum8,
        Self::InvertedCarrySum8,
        Self::Nibble4,
    ];

    /// The name in the language; `None`: it is given by its parameters.
    #[must_use]
    pub fn name(self) -> Option<&'static str> {
        Some(match self {
            Self::Crc(_) => return None,
            Self::Crc8SaeJ1850 => "crc8_sae_j1850",
            Self::Crc8Autosar => "crc8_autosar",
            Self::Crc16Ibm3740 => "crc16_ibm_3740",
            Self::Crc16Arc => "crc16_arc",
            Self::Crc32IsoHdlc => "crc32_iso_hdlc",
            Self::Crc32Autosar => "crc32_autosar",
            Self::Crc64Xz => "crc64_xz",
            Self::Xor8 => "xor8",
            Self::Sum8 => "sum8",
            Self::InvertedSum8 => "inverted_sum8",
            Self::InvertedCarrySum8 => "inverted_carry_sum8",
            Self::Nibble4 => "nibble4",
        })
    }

    /// How many bits its result has.
    #[must_use]
    pub fn width(self) -> u8 {
        match self {
            Self::Nibble4 => 4,
            Self::Crc8SaeJ1850
            | Self::Crc8Autosar
            | Self::Xor8
            | Self::Sum8
            | Self::InvertedSum8
            | Self::InvertedCarrySum8 => 8,
            Self::Crc16Ibm3740 | Self::Crc16Arc => 16,
            Self::Crc32IsoHdlc | Self::Crc32Autosar => 32,
            Self::Crc64Xz => 64,
            Self::Crc(rule) => rule.width,
        }
    }
}

impl fmt::Display for ChecksumAlgorithm {
    /// As the language writes it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.name(), self) {
            (Some(name), _) => f.write_str(name),
            (None, Self::Crc(rule)) => rule.fmt(f),
            (None, _) => Ok(()),
        }
    }
}
