//! Checksums over spans of the payload.

use wirelore_bits::sums::ByteSum;
use wirelore_bits::{Crc, CrcParameters};
use wirelore_model::{ByteSpan, Checksum, ChecksumAlgorithm};

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
    /// The state after the bytes that go in before the payload's.
    start: u64,
    over: Box<[ByteSpan]>,
    then: Box<[u8]>,
    mask: u64,
}

#[derive(Debug, Clone, Copy)]
enum Engine {
    Crc(&'static Crc),
    Sum(ByteSum),
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
        }
    }

    /// The state before the first byte, with another start value where one is given.
    fn start(self, given: Option<u64>) -> u64 {
        match (self, given) {
            (Self::Sum(sum), None) => sum.start(),
            (Self::Sum(_), Some(given)) => given,
            (Self::Crc(crc), None) => crc.start(),
            // The start value touches neither the table nor the end, so the state serves the algorithm itself.
            (Self::Crc(crc), Some(init)) => {
                Crc::new(CrcParameters { init, ..*crc.parameters() }).map_or(crc.start(), |started| started.start())
            }
        }
    }

    fn update(self, state: u64, bytes: &[u8]) -> u64 {
        match self {
            Self::Crc(crc) => crc.update(state, bytes),
            Self::Sum(sum) => sum.update(state, bytes),
        }
    }

    fn finish(self, state: u64) -> u64 {
        match self {
            Self::Crc(crc) => crc.finish(state),
            Self::Sum(sum) => sum.finish(state),
        }
    }
}

impl ChecksumPlan {
    /// The rule for a checksum that stands in `width` bits.
    pub(crate) fn new(checksum: &Checksum, width: u8) -> Self {
        let engine = Engine::new(checksum.algorithm);
        Self {
            engine,
            start: engine.update(engine.start(checksum.start), &checksum.first),
            over: checksum.over.as_slice().into(),
            then: checksum.then.as_slice().into(),
            mask: u64::MAX >> 64_u32.saturating_sub(width.into()).min(63),
        }
    }

    /// The checksum of a payload; `None` where it ends before the bytes that are covered.
    pub(crate) fn of(&self, payload: &[u8]) -> Option<u64> {
        let mut state = self.start;
        for span in &self.over {
            let end = span.last.map_or(payload.len(), |last| last as usize + 1);
            state = self.engine.update(state, payload.get(span.first as usize..end)?);
        }
        Some(self.engine.finish(self.engine.update(state, &self.then)) & self.mask)
    }

    /// How the checksum that a payload holds stands to it.
    pub(crate) fn verdict(&self, payload: &[u8], found: u64) -> ChecksumVerdict {
        match self.of(payload) {
            None => ChecksumVerdict::TooShort,
            Some(expected) if expected == found => ChecksumVerdict::Right,
            Some(expected) => ChecksumVerdict::Wrong { expected, found },
        }
    }
}
