//! From the pieces of a line to a frame.

use wirelore_bits::payload_lengths::can_fd_length;

use crate::channels::{CHANNELS_MAX, Channels};
use crate::flaw::{Flaw, Shown};
use crate::frame::{
    CLASSIC_BYTES_MAX, Channel, EXTENDED_ID_MAX, FD_BYTES_MAX, Found, Kind, PlaceInLog, STANDARD_ID_MAX, dlc_of_length,
};
use crate::medium::Medium;
use crate::pass::Shared;

use super::cells::{Cell, unquoted};
use super::headings::{Form, ROLES, Role};
use super::networks::{Network, Networks};
use super::time::{TimeUnit, time_ns};
use super::values::{
    Base, BytesFlaw, decimal, decimal_bytes, flag, hex, hex_bytes, is_spreadsheet_number, without_prefix,
};

/// The most data bytes of a line, of any network.
pub(super) const TEXT_BYTES_MAX: usize = 4096;

/// A longer channel name comes from a wrong column.
const CHANNEL_NAME_BYTES_MAX: usize = 128;

/// How identifiers are written in the whole log.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum IdForm {
    All(Base),
    /// Hexadecimal, each with `0x` in front.
    Prefixed,
}

/// How the numbers of the whole log are written.
#[derive(Debug, Clone, Copy)]
pub(super) struct Forms {
    pub(super) time: TimeUnit,
    pub(super) id: IdForm,
    pub(super) data: Base,
    pub(super) others: OtherForms,
}

/// How the numbers of the rarer roles are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct OtherForms([Option<Base>; ROLES]);

impl OtherForms {
    /// As is usual, but for roles whose form is told.
    pub(super) fn new(told: impl IntoIterator<Item = (Role, Form)>) -> Self {
        let mut forms = Self([None; ROLES]);
        Role::all().for_each(|role| forms.0[role as usize] = role.usual_base());
        for (role, form) in told {
            if let Form::Base(base) = form {
                forms.0[role as usize] = Some(base);
            }
        }
        forms
    }

    /// The form of a role's numbers.
    pub(super) fn of(&self, role: Role) -> Base {
        self.0[role as usize].unwrap_or(Base::Decimal)
    }
}

/// The pieces of one line by their role.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pieces<'l> {
    by_role: [Option<&'l [u8]>; ROLES],
    /// One cell for each data byte, in their order: the line and its cells.
    data_cells: Option<(&'l [u8], &'l [Cell], &'l [usize])>,
}

impl<'l> Pieces<'l> {
    pub(super) fn new() -> Self {
        Self { by_role: [None; ROLES], data_cells: None }
    }

    #[inline]
    pub(super) fn set(&mut self, role: Role, piece: &'l [u8]) {
        self.by_role[role as usize] = Some(piece);
    }

    #[inline]
    pub(super) fn get(&self, role: Role) -> Option<&'l [u8]> {
        self.by_role[role as usize]
    }

    pub(super) fn set_data_cells(&mut self, line: &'l [u8], cells: &'l [Cell], columns: &'l [usize]) {
        self.data_cells = Some((line, cells, columns));
    }

    /// Yes or no; `None` when the log or this line does not tell.
    #[inline]
    pub(super) fn flag(&self, role: Role) -> Result<Option<bool>, Flaw<'l>> {
        let Some(cell) = self.get(role) else {
            return Ok(None);
        };
        flag(cell).ok_or(Flaw::Cell { what: role.word(), cell: Shown(cell), wanted: "1 or 0, or yes or no" })
    }

    /// A small number; `None` when the log or this line does not tell.
    #[inline]
    pub(super) fn number(&self, role: Role) -> Result<Option<u64>, Flaw<'l>> {
        match self.get(role) {
            None | Some(b"") => Ok(None),
            Some(cell) => match decimal(cell) {
                Some(number) => Ok(Some(number)),
                None => Err(wrong(role, cell, "a whole number")),
            },
        }
    }
}

/// Turns pieces into frames; knows how the numbers are written.
#[derive(Debug, Clone)]
pub(super) struct RowReader {
    pub(super) forms: Forms,
    decimal_comma: bool,
    pub(super) networks: Networks,
}

/// An identifier as it was written.
pub(super) struct WrittenId {
    pub(super) value: u32,
    has_eight_digits: bool,
}

impl RowReader {
    pub(super) fn new(forms: Forms, decimal_comma: bool, networks: Networks) -> Self {
        Self { forms, decimal_comma, networks }
    }

    /// The frame that the pieces describe; its data goes to `payload`.
    #[inline]
    pub(super) fn frame<'l>(
        &self,
        pieces: &Pieces<'l>,
        only_channel: Option<Channel>,
        payload: &mut [u8; TEXT_BYTES_MAX],
        shared: &mut Shared,
    ) -> Result<Found, Flaw<'l>> {
        match self.networks.of_line(pieces) {
            Network::Can => self.can(pieces, only_channel, payload, shared),
            other => self.of_other_network(other, pieces, only_channel, payload, shared),
        }
    }

    #[inline]
    fn can<'l>(
        &self,
        pieces: &Pieces<'l>,
        only_channel: Option<Channel>,
        payload: &mut [u8; TEXT_BYTES_MAX],
        shared: &mut Shared,
    ) -> Result<Found, Flaw<'l>> {
        if pieces.flag(Role::ChecksumGood)? == Some(false) {
            return Err(Flaw::MarkedWrong(Shown(pieces.get(Role::ChecksumGood).unwrap_or_default())));
        }
        let time_ns = self.time_ns(pieces)?;
        let kind = kind(pieces)?;
        let id = self.id(pieces)?;
        let told_extended = pieces.flag(Role::Extended)?;
        let extended = extended(told_extended, pieces, &id)?;
        let held = self.data(pieces, &mut payload[..FD_BYTES_MAX])?;
        let (dlc, fd) = length_and_format(pieces, kind, held)?;
        let channel = match only_channel {
            Some(channel) => channel,
            None => channel(pieces, &mut shared.channels)?,
        };
        if told_extended.is_none() {
            shared.report.weigh_digits(id.value, id.has_eight_digits);
        }
        Ok(Found {
            time_ns,
            channel,
            id: id.value,
            extended,
            kind,
            fd,
            bit_rate_switch: fd && pieces.flag(Role::BitRateSwitch)?.unwrap_or(false),
            error_state: fd && pieces.flag(Role::ErrorState)?.unwrap_or(false),
            dlc,
            medium: Medium::Can,
            payload: 0..held,
            place: PlaceInLog::Line(0),
        })
    }

    #[inline]
    pub(super) fn time_ns<'l>(&self, pieces: &Pieces<'l>) -> Result<Option<i64>, Flaw<'l>> {
        match pieces.get(Role::Time) {
            None | Some(b"") => Ok(None),
            Some(cell) => match time_ns(cell, self.forms.time, self.decimal_comma) {
                Some(time_ns) => Ok(Some(time_ns)),
                None => Err(wrong(
                    Role::Time,
                    cell,
                    "a number of time, or a date and time such as 2026-01-02T03:04:05.678Z",
                )),
            },
        }
    }

    #[inline]
    pub(super) fn id<'l>(&self, pieces: &Pieces<'l>) -> Result<WrittenId, Flaw<'l>> {
        let cell = pieces.get(Role::Id).unwrap_or_default();
        let prefixed = without_prefix(cell);
        let (value, hex_digits, wanted) = match (self.forms.id, prefixed) {
            (_, Some(digits)) => (hex(digits), digits.len(), "a hexadecimal number"),
            (IdForm::All(Base::Hex), None) => (hex(cell), cell.len(), "a hexadecimal number"),
            (IdForm::All(Base::Decimal), None) => (decimal(cell), 0, "a decimal number"),
            (IdForm::Prefixed, None) if hex(cell).is_some() => {
                return Err(Flaw::IdWithoutPrefix(Shown(cell)));
            }
            (IdForm::Prefixed, None) => (None, 0, "a hexadecimal number"),
        };
        let value = value.ok_or_else(|| wrong(Role::Id, cell, wanted))?;
        match u32::try_from(value) {
            Ok(value) if value <= EXTENDED_ID_MAX => Ok(WrittenId { value, has_eight_digits: hex_digits == 8 }),
            _ => Err(Flaw::IdTooLarge(Shown(cell))),
        }
    }

    /// Reads the data into `payload` and tells how many bytes there are.
    #[inline]
    pub(super) fn data<'l>(&self, pieces: &Pieces<'l>, payload: &mut [u8]) -> Result<usize, Flaw<'l>> {
        let most = payload.len();
        if let Some((line, cells, columns)) = pieces.data_cells {
            return self.data_from_cells(line, cells, columns, payload);
        }
        let cell = pieces.get(Role::Data).unwrap_or_default();
        let read = match self.forms.data {
            Base::Hex => hex_bytes(cell, payload),
            Base::Decimal => decimal_bytes(cell, payload),
        };
        read.map_err(|flaw| self.wrong_data(cell, flaw, most))
    }

    #[cold]
    fn wrong_data<'l>(&self, cell: &'l [u8], flaw: BytesFlaw, most: usize) -> Flaw<'l> {
        match flaw {
            _ if is_spreadsheet_number(cell) => wrong(Role::Data, cell, ""),
            BytesFlaw::OddDigits => Flaw::OddDigits(Shown(cell)),
            BytesFlaw::TooMany => Flaw::DataTooLong { cell: Shown(cell), most },
            BytesFlaw::NotDigits => wrong(Role::Data, cell, self.wanted_data()),
        }
    }

    fn wanted_data(&self) -> &'static str {
        match self.forms.data {
            Base::Hex => "bytes of two hex digits",
            Base::Decimal => "decimal bytes from 0 to 255",
        }
    }

    /// One byte from each cell, up to the first empty one; all later ones must be empty too.
    fn data_from_cells<'l>(
        &self,
        line: &'l [u8],
        cells: &[Cell],
        columns: &[usize],
        payload: &mut [u8],
    ) -> Result<usize, Flaw<'l>> {
        let mut held = 0;
        for (index, &column) in columns.iter().enumerate() {
            let cell = cells.get(column).map_or(&b""[..], |cell| cell.of(line));
            if cell.is_empty() {
                continue;
            }
            if held < index {
                return Err(Flaw::DataGap(held));
            }
            let digits = without_prefix(cell);
            let value = match (self.forms.data, digits) {
                (Base::Hex, _) | (_, Some(_)) => hex(digits.unwrap_or(cell)),
                (Base::Decimal, None) => decimal(cell),
            };
            let byte = value.and_then(|value| u8::try_from(value).ok());
            payload[held] = byte.ok_or_else(|| wrong(Role::Data, cell, self.wanted_data()))?;
            held += 1;
        }
        Ok(held)
    }
}

/// Words for a cell that cannot be read.
#[cold]
pub(super) fn wrong<'l>(role: Role, cell: &'l [u8], wanted: &'static str) -> Flaw<'l> {
    let what = role.word();
    if cell.is_empty() {
        Flaw::CellEmpty { what }
    } else if is_spreadsheet_number(cell) {
        Flaw::Spreadsheet { what, cell: Shown(cell) }
    } else {
        Flaw::Cell { what, cell: Shown(cell), wanted }
    }
}

#[inline]
fn kind<'l>(pieces: &Pieces<'l>) -> Result<Kind, Flaw<'l>> {
    let remote = pieces.flag(Role::Remote)?.unwrap_or(false);
    match pieces.get(Role::Kind) {
        None | Some(b"") | Some(b"data") => Ok(if remote { Kind::Remote } else { Kind::Data }),
        Some(b"remote") => Ok(Kind::Remote),
        Some(b"error") => Ok(Kind::Error),
        Some(cell) => Err(wrong(Role::Kind, cell, "data, remote or error")),
    }
}

/// Whether the identifier has 29 bits: as the line says; else when it is too large for 11, or written with eight hex digits.
#[inline]
fn extended<'l>(told: Option<bool>, pieces: &Pieces<'l>, id: &WrittenId) -> Result<bool, Flaw<'l>> {
    match told {
        Some(false) if id.value > STANDARD_ID_MAX => {
            Err(Flaw::IdNotExtended(Shown(pieces.get(Role::Id).unwrap_or_default())))
        }
        Some(told) => Ok(told),
        None => Ok(id.value > STANDARD_ID_MAX || id.has_eight_digits),
    }
}

/// The data length code and whether the frame is CAN FD, checked against the bytes that the line holds.
#[inline]
fn length_and_format<'l>(pieces: &Pieces<'l>, kind: Kind, held: usize) -> Result<(Option<u8>, bool), Flaw<'l>> {
    let told_fd = pieces.flag(Role::Fd)?;
    let (length, dlc) = (pieces.number(Role::Length)?, pieces.number(Role::Dlc)?);
    if kind == Kind::Remote {
        return remote_length(length, dlc, held);
    }
    let disagrees = |told| Flaw::LengthDisagrees { told, held, hint: length_hint(pieces, told, held) };
    if let Some(told) = length
        && told != held as u64
    {
        return Err(disagrees(told));
    }
    let (natural, fd) = format(told_fd, held).ok_or(Flaw::DataLength(held))?;
    match code(dlc, natural, fd, held) {
        Some(code) => Ok((Some(code), fd)),
        None => Err(disagrees(dlc.unwrap_or_default())),
    }
}

/// The natural code of so many bytes, and whether they make a CAN FD frame; `None` where no frame has so many.
#[inline]
pub(super) fn format(told_fd: Option<bool>, held: usize) -> Option<(u8, bool)> {
    let fits_classic = held <= CLASSIC_BYTES_MAX;
    let natural = dlc_of_length(held).filter(|_| fits_classic || told_fd != Some(false))?;
    Some((natural, told_fd.unwrap_or(!fits_classic)))
}

/// The data length code of a frame with so many bytes, whose line may tell a number; `None` where that does not fit.
#[inline]
pub(super) fn code(told: Option<u64>, natural: u8, fd: bool, held: usize) -> Option<u8> {
    match told {
        None => Some(natural),
        Some(told) if told == held as u64 => Some(natural),
        // A classic frame sent with a code of 9 to 15 has eight bytes all the same (ISO 11898-1).
        Some(told @ 9..=15) if !fd && held == CLASSIC_BYTES_MAX => Some(told as u8),
        Some(told @ 9..=15) if fd && usize::from(can_fd_length(told as u8)) == held => Some(told as u8),
        Some(_) => None,
    }
}

/// A remote frame has a code and no data.
#[cold]
fn remote_length<'l>(length: Option<u64>, dlc: Option<u64>, held: usize) -> Result<(Option<u8>, bool), Flaw<'l>> {
    if held > 0 {
        return Err(Flaw::RemoteData(held));
    }
    match dlc.or(length) {
        Some(told @ 0..=15) => Ok((Some(told as u8), false)),
        Some(told) => Err(Flaw::LengthDisagrees { told, held, hint: "" }),
        None => Ok((None, false)),
    }
}

#[cold]
fn length_hint(pieces: &Pieces<'_>, told: u64, held: usize) -> &'static str {
    let cell = pieces.get(Role::Data).unwrap_or_default();
    if (held as u64) < told && !cell.is_empty() && cell.iter().all(u8::is_ascii_digit) {
        "; perhaps a spreadsheet took leading zeros away: export the column as text"
    } else {
        ""
    }
}

#[inline]
pub(super) fn channel<'l>(pieces: &Pieces<'l>, channels: &mut Channels) -> Result<Channel, Flaw<'l>> {
    let cell = pieces.get(Role::Channel).unwrap_or_default();
    if cell.len() > CHANNEL_NAME_BYTES_MAX {
        return Err(wrong(Role::Channel, cell, "a name of at most 128 bytes"));
    }
    let name = if cell.contains(&b'"') { unquoted(cell) } else { cell.into() };
    channels.named(&name).ok_or(Flaw::TooManyChannels(CHANNELS_MAX))
}
