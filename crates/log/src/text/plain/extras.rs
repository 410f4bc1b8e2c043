//! The rarer cells of a plain line: lengths, flags, what kind of frame it is.

use crate::frame::{Frame, STANDARD_ID_MAX};

use super::super::headings::Role;
use super::super::row::{code, format};
use super::cells;
use super::words::{Line, behind};

/// What the rarer cells of a plain line say.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Extras {
    length: Option<u64>,
    dlc: Option<u64>,
    pub(super) extended: Option<bool>,
    fd: Option<bool>,
    bit_rate_switch: bool,
    error_state: bool,
}

impl Extras {
    /// Reads one cell, and tells where the next one begins; `None` where the line is no plain data frame.
    #[inline]
    pub(super) fn read(&mut self, role: Role, line: &Line, at: usize, end: u8) -> Option<usize> {
        if matches!(role, Role::Length | Role::Dlc) {
            let (number, next) = cells::small_number(line, at, end)?;
            *(if role == Role::Length { &mut self.length } else { &mut self.dlc }) = number;
            return Some(next);
        }
        if role == Role::Kind {
            let at = if line.get(at..)?.starts_with(b"data") { at + 4 } else { at };
            return behind(line, at, end);
        }
        let (told, next) = cells::flag(line, at, end)?;
        match role {
            Role::Extended => self.extended = told,
            Role::Fd => self.fd = told,
            Role::BitRateSwitch => self.bit_rate_switch = told == Some(true),
            Role::ErrorState => self.error_state = told == Some(true),
            Role::Remote if told == Some(true) => return None,
            Role::ChecksumGood if told == Some(false) => return None,
            _ => {}
        }
        Some(next)
    }

    /// The frame with what the rarer cells say; `None` where they do not fit.
    #[inline]
    pub(super) fn applied<'p>(&self, frame: Frame<'p>) -> Option<Frame<'p>> {
        let held = frame.payload.len();
        if self.length.is_some_and(|told| told != held as u64)
            || (self.extended == Some(false) && frame.id > STANDARD_ID_MAX)
        {
            return None;
        }
        let (natural, fd) = format(self.fd, held)?;
        Some(Frame {
            extended: self.extended.unwrap_or(frame.extended),
            fd,
            bit_rate_switch: fd && self.bit_rate_switch,
            error_state: fd && self.error_state,
            dlc: Some(code(self.dlc, natural, fd, held)?),
            ..frame
        })
    }
}
