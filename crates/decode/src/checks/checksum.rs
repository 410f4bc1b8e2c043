//! Checksums over spans of the payload.

use std::sync::Arc;

use wirelore_bits::sums::ByteSum;
use wirelore_bits::{Crc, CrcParameters, Extractor};
use wirelore_model::{ByteSpan, Checksum, ChecksumAlgorithm, Content, MixedByte, Signal};

use super::ChecksumVerdict;

static SAE_J1850: Crc = Crc::SAE_J1850;
static AUTOSAR_8: Crc = Crc::AUTOSAR_8;
static IBM_3740: Crc = Crc::IBM_3740;
static ARC: Crc = Crc::ARC;
static ISO_HDLC: Crc = Crc::ISO_HDLC;
static AUTOSAR_32: Crc = Crc::AUTOSAR_32;
static XZ_64: Crc = Crc::XZ_64;

/// A checksum's rule, ready to be calculated.
#[derive(Debug, Clone)]
pub(crate) struct ChecksumPlan {
    engine: Engine,
    /// The state after the bytes that go in before the payload's and are the same in every frame.
    start: u64,
    /// The others of them.
    first: Box<[Mixed]>,
    over: Box<[ByteSpan]>,
    then: Box<[Mixed]>,
    mask: u64,
}

#[derive(Debug, Clone)]
enum Engine {
    Crc(&'static Crc),
    /// By its parameters.
    OwnCrc(Arc<Crc>),
    Sum(ByteSum),
}

/// A byte that is mixed in.
#[derive(Debug, Clone)]
enum Mixed {
    Byte(u8),
    /// Of the identifier, by the number of bits in front of it.
    Identifier(u32),
    Bits(Extractor),
}

impl Mixed {
    fn new(byte: MixedByte, signals: &[Signal]) -> Self {
        match byte {
            MixedByte::Byte(byte) => Self::Byte(byte),
            MixedByte::Identifier(index) => Self::Identifier(u32::from(index) * 8),
            MixedByte::Signal(id) => match signals.get(id.index()).map(|signal| &signal.content) {
                Some(Content::Number { field, .. }) => Self::Bits(Extractor::new(field)),
                // Not in a valid database.
                _ => Self::Byte(0),
            },
        }
    }

    /// The byte; `None` where the frame does not tell it.
    fn of(&self, payload: &[u8], id: Option<u32>) -> Option<u8> {
        match self {
            Self::Byte(byte) => Some(*byte),
            Self::Identifier(bits) => id.map(|id| (id >> bits) as u8),
            Self::Bits(extractor) => extractor.extract(payload).map(|bits| bits as u8),
        }
    }
}

impl Engine {
    fn new(algorithm: ChecksumAlgorithm) -> Self {
        match algorithm {
            ChecksumAlgorithm::Crc8SaeJ1850 => Self::Crc(&SAE_J1850),
            ChecksumAlgorithm::Crc8Autosar => Self::Crc(&AUTOSAR_8),
            ChecksumAlgorithm::Crc16Ibm3740 => Self::Crc(&IBM_3740),
            ChecksumAlgorithm::Crc16Arc => Self::Crc(&ARC),
            ChecksumAlgorithm::Crc32IsoHdlc => Self::Crc(&ISO_HDLC),
            ChecksumAlgorithm::Crc32Autosar => Self::Crc(&AUTOSAR_32),
            ChecksumAlgorithm::Crc64Xz => Self::Crc(&XZ_64),
            ChecksumAlgorithm::Xor8 => Self::Sum(ByteSum::XOR),
            ChecksumAlgorithm::Sum8 => Self::Sum(ByteSum::WRAPPING),
            ChecksumAlgorithm::InvertedSum8 => Self::Sum(ByteSum::WRAPPING.inverted()),
            ChecksumAlgorithm::InvertedCarrySum8 => Self::Sum(ByteSum::END_AROUND.inverted()),
            ChecksumAlgorithm::Nibble4 => Self::Sum(ByteSum::WRAPPING.folded()),
            ChecksumAlgorithm::Crc(rule) => {
                // In a valid database the parameters are good ones.
                Crc::new(rule.parameters()).map_or(Self::Crc(&SAE_J1850), |crc| Self::OwnCrc(Arc::new(crc)))
            }
        }
    }

    /// The state before the first byte, with another start value where one is given.
    fn start(&self, given: Option<u64>) -> u64 {
        let crc = match self {
            Self::Sum(sum) => return given.unwrap_or(sum.start()),
            Self::Crc(crc) => crc,
            Self::OwnCrc(crc) => &**crc,
        };
        // The start value touches neither the table nor the end, so the state serves the algorithm itself.
        let started = given.and_then(|init| Crc::new(CrcParameters { init, ..*crc.parameters() }).ok());
        started.map_or(crc.start(), |started| started.start())
    }

    fn update(&self, state: u64, bytes: &[u8]) -> u64 {
        match self {
            Self::Crc(crc) => crc.update(state, bytes),
            Self::OwnCrc(crc) => crc.update(state, bytes),
            Self::Sum(sum) => sum.update(state, bytes),
        }
    }

    fn finish(&self, state: u64) -> u64 {
        match self {
            Self::Crc(crc) => crc.finish(state),
            Self::OwnCrc(crc) => crc.finish(state),
            Self::Sum(sum) => sum.finish(state),
        }
    }

    /// The state after bytes that are mixed in; `None` where the frame does not tell one of them.
    fn mix(&self, state: u64, bytes: &[Mixed], payload: &[u8], id: Option<u32>) -> Option<u64> {
        bytes.iter().try_fold(state, |state, byte| Some(self.update(state, &[byte.of(payload, id)?])))
    }
}

impl ChecksumPlan {
    /// The rule for a checksum that stands in `width` bits, in a frame with these signals.
    pub(crate) fn new(checksum: &Checksum, width: u8, signals: &[Signal]) -> Self {
        let engine = Engine::new(checksum.algorithm);
        let mixed = |byte: &MixedByte| Mixed::new(*byte, signals);
        let mut first: Vec<Mixed> = checksum.first.iter().map(mixed).collect();
        let always = first.iter().take_while(|byte| matches!(byte, Mixed::Byte(_))).count();
        let always: Vec<u8> = first.drain(..always).filter_map(|byte| byte.of(&[], None)).collect();
        Self {
            start: engine.update(engine.start(checksum.start), &always),
            engine,
            first: first.into(),
            over: checksum.over.as_slice().into(),
            then: checksum.then.iter().map(mixed).collect(),
            mask: u64::MAX >> 64_u32.saturating_sub(width.into()).min(63),
        }
    }

    /// The checksum of a frame; `None` where its payload ends before the bytes that are covered or mixed in, or where its identifier would
    /// have to be known.
    pub(crate) fn of(&self, payload: &[u8], id: Option<u32>) -> Option<u64> {
        let mut state = self.engine.mix(self.start, &self.first, payload, id)?;
        for span in &self.over {
            let end = span.last.map_or(payload.len(), |last| last as usize + 1);
            state = self.engine.update(state, payload.get(span.first as usize..end)?);
        }
        Some(self.engine.finish(self.engine.mix(state, &self.then, payload, id)?) & self.mask)
    }

    /// Whether bytes of the identifier go in.
    pub(crate) fn needs_identifier(&self) -> bool {
        self.first.iter().chain(&self.then).any(|byte| matches!(byte, Mixed::Identifier(_)))
    }

    /// How the checksum that a payload holds stands to it.
    pub(crate) fn verdict(&self, payload: &[u8], id: Option<u32>, found: u64) -> ChecksumVerdict {
        match self.of(payload, id) {
            None => ChecksumVerdict::TooShort,
            Some(expected) if expected == found => ChecksumVerdict::Right,
            Some(expected) => ChecksumVerdict::Wrong { expected, found },
        }
    }
}
