//! What a receiver of columns sees: a block of frames, and one column of it after the other.

use wirelore_log::Channel;
use wirelore_model::{FrameId, NetworkId, SeenId, SignalId};

use super::bitmap::Bitmap;
use super::rows::RowSlice;
use super::workspace::RowVerdict;
use crate::checks::Verdict;
use crate::plan::{Detail, FramePlan};
use crate::reading::Reading;
use crate::source::Source;

/// Frames of one description, in the order of the log; at most 512.
#[derive(Debug, Clone, Copy)]
pub struct Block<'a> {
    pub(crate) frame: FrameId,
    pub(crate) plan: &'a FramePlan,
    pub(crate) words: &'a [Box<str>],
    pub(crate) rows: RowSlice<'a>,
    pub(crate) times_ns: &'a [i64],
    pub(crate) first_time_ns: Option<i64>,
    /// By channel.
    pub(crate) networks: &'a [Option<NetworkId>],
    /// By row.
    pub(crate) verdicts: &'a [RowVerdict],
}

impl<'a> Block<'a> {
    /// The description of the frames.
    #[must_use]
    pub fn frame(&self) -> FrameId {
        self.frame
    }

    /// How many frames there are.
    #[must_use]
    pub fn rows(&self) -> usize {
        self.rows.len()
    }

    /// The time of every frame in nanoseconds, as the log counts; 0 where [`Block::has_time`] says no.
    #[must_use]
    pub fn times_ns(&self) -> &'a [i64] {
        self.times_ns
    }

    /// The time of the session's first frame, described or not, as its log counts.
    #[must_use]
    pub fn first_time_ns(&self) -> Option<i64> {
        self.first_time_ns
    }

    /// Whether all frames have a time.
    #[must_use]
    pub fn all_have_times(&self) -> bool {
        match self.rows.uniform() {
            Some(tag) => tag.has_time(),
            None => (0..self.rows()).all(|row| self.has_time(row)),
        }
    }

    /// Whether a frame has a time.
    #[must_use]
    pub fn has_time(&self, row: usize) -> bool {
        self.rows.tag(row).has_time()
    }

    /// The channel of the log a frame was seen on.
    #[must_use]
    pub fn channel(&self, row: usize) -> Channel {
        self.rows.tag(row).channel()
    }

    /// The network a frame was seen on.
    #[must_use]
    pub fn network(&self, row: usize) -> Option<NetworkId> {
        self.networks.get(usize::from(self.channel(row).0)).copied().flatten()
    }

    /// Who sent a frame, where the description leaves that open.
    #[must_use]
    pub fn source(&self, row: usize) -> Option<Source> {
        let tag = self.rows.tag(row);
        if !tag.is_by_identifier() {
            return tag.address().map(Source::Address);
        }
        match self.rows.origin(row).id? {
            SeenId::Can { id, extended } => Some(Source::Identifier { id, extended }),
            _ => None,
        }
    }
}

/// One signal of a block.
#[derive(Debug, Clone, Copy)]
pub struct Column<'a> {
    pub(crate) index: usize,
    pub(crate) signal: SignalId,
    pub(crate) block: &'a Block<'a>,
    pub(crate) detail: &'a Detail,
    pub(crate) numbers: Option<Numbers<'a>>,
    pub(crate) valid: Option<&'a Bitmap>,
    pub(crate) present: Option<&'a Bitmap>,
}

/// The numbers of a column, one a row.
#[derive(Debug, Clone, Copy)]
#[allow(missing_docs, reason = "the names say it")]
pub enum Numbers<'a> {
    U8(&'a [u8]),
    U16(&'a [u16]),
    U32(&'a [u32]),
    U64(&'a [u64]),
    I8(&'a [i8]),
    I16(&'a [i16]),
    I32(&'a [i32]),
    I64(&'a [i64]),
    F64(&'a [f64]),
}

impl<'a> Column<'a> {
    /// Which of the wanted signals of the frame it is, counted from 0 in the order of the description.
    #[must_use]
    pub fn index(&self) -> usize {
        self.index
    }

    /// The signal.
    #[must_use]
    pub fn signal(&self) -> SignalId {
        self.signal
    }

    /// The numbers, of the type that [`Store`](crate::Store) asks for, the same in every block; whatever stands where there is no value.
    /// `None`: the signal is characters, bytes or, but for raw numbers, trouble codes: see [`Column::reading`].
    #[must_use]
    pub fn numbers(&self) -> Option<Numbers<'a>> {
        self.numbers
    }

    /// Which rows have a number; `None`: all.
    #[must_use]
    pub fn valid(&self) -> Option<&'a Bitmap> {
        self.valid
    }

    /// Whether the signal's page is there in a row; `None` beyond the last row.
    #[must_use]
    pub fn is_there(&self, row: usize) -> Option<bool> {
        (row < self.block.rows()).then(|| self.present.is_none_or(|present| present.has(row)))
    }

    /// What the signal says in one row, with everything that there is to know; `None` where its page is not there.
    #[must_use]
    pub fn reading(&self, row: usize) -> Option<Reading<'a>> {
        self.is_there(row)?.then(|| self.detail.read(self.block.rows.payload(row), self.block.words))
    }

    /// What the signal says about one row, where it is a counter, a checksum or a protection.
    #[must_use]
    pub fn verdict(&self, row: usize) -> Option<Verdict> {
        let verdicts = self.block.verdicts;
        let first = verdicts.partition_point(|told| usize::from(told.row) < row);
        let mut of_row = verdicts.get(first..)?.iter().take_while(|told| usize::from(told.row) == row);
        of_row.find(|told| told.signal == self.signal).map(|told| told.verdict)
    }
}
