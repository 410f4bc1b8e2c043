//! Bits whose place is known when the program is compiled.

use crate::extract::Step;
use crate::{BitPosition, Place};

/// One run of 1 to 64 bits of a payload. As a constant it costs a load, a shift and a mask.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// `None`: such a place cannot be.
    step: Option<Step>,
}

impl Cut {
    /// The bits from the most significant one to the least significant one, each as (byte, bit). Ends that make no [`Place`] make a cut that no
    /// payload holds.
    #[must_use]
    pub const fn between(msb: (u32, u8), lsb: (u32, u8)) -> Self {
        match Place::between(BitPosition::new(msb.0, msb.1), BitPosition::new(lsb.0, lsb.1)) {
            Ok(place) => Self { step: Some(Step::new(&place)) },
            Err(_) => Self { step: None },
        }
    }

    /// The bits, the least significant one in bit 0; `None` if the payload ends before them.
    #[inline(always)]
    #[must_use]
    pub fn get(self, payload: &[u8]) -> Option<u64> {
        self.step?.extract(payload)
    }

    /// The bits of a payload that is known to be long enough; zeros of one that is not.
    #[inline(always)]
    #[must_use]
    pub fn of(self, payload: &[u8]) -> u64 {
        self.get(payload).unwrap_or(0)
    }

    /// Puts the low bits of `bits` in and leaves every other bit as it is; a payload that ends before stays as it is.
    #[inline(always)]
    pub fn put(self, payload: &mut [u8], bits: u64) {
        if let Some(step) = self.step
            && payload.len() >= step.needed_bytes() as usize
        {
            step.insert(payload, bits);
        }
    }

    const fn width(self) -> u32 {
        match self.step {
            Some(step) => step.width() as u32,
            None => 0,
        }
    }
}

/// Several runs of bits put together to one number, the most significant one first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cuts<const N: usize>(pub [Cut; N]);

impl<const N: usize> Cuts<N> {
    /// The bits, the least significant one in bit 0; `None` if the payload ends before them.
    #[inline(always)]
    #[must_use]
    pub fn get(self, payload: &[u8]) -> Option<u64> {
        let mut bits = 0_u64;
        for cut in self.0 {
            bits = bits.checked_shl(cut.width()).unwrap_or(0) | cut.get(payload)?;
        }
        Some(bits)
    }

    /// The bits of a payload that is known to be long enough; zeros of one that is not.
    #[inline(always)]
    #[must_use]
    pub fn of(self, payload: &[u8]) -> u64 {
        self.get(payload).unwrap_or(0)
    }

    /// Puts the low bits of `bits` in and leaves every other bit as it is; pieces that the payload does not hold stay away.
    #[inline(always)]
    pub fn put(self, payload: &mut [u8], bits: u64) {
        let mut rest = bits;
        for cut in self.0.iter().rev() {
            cut.put(payload, rest);
            rest = rest.checked_shr(cut.width()).unwrap_or(0);
        }
    }
}
