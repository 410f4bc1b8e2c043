//! From the pieces of a line to a frame of LIN, FlexRay, MOST or a single-wire network.

use crate::faults::Faults;
use crate::flaw::{Flaw, Shown};
use crate::flexray;
use crate::frame::{Channel, Found, Kind, PlaceInLog};
use crate::lin;
use crate::medium::{FlexRay, Lin, LinChecksum, Medium, Most};
use crate::pass::Shared;

use super::headings::Role;
use super::networks::{MOST_PARTS, Network};
use super::row::{Pieces, RowReader, TEXT_BYTES_MAX, channel, wrong};
use super::values::{Base, decimal, flag, hex, without_prefix};

/// What the networks have in different ways; the data has been read.
struct Parts {
    id: u32,
    kind: Kind,
    medium: Medium,
    held: usize,
}

impl RowReader {
    /// The frame of a line that is not of CAN; its data goes to `payload`.
    pub(super) fn of_other_network<'l>(
        &self,
        network: Network,
        pieces: &Pieces<'l>,
        only_channel: Option<Channel>,
        payload: &mut [u8; TEXT_BYTES_MAX],
        shared: &mut Shared,
    ) -> Result<Found, Flaw<'l>> {
        let time_ns = self.time_ns(pieces)?;
        let held = self.data(pieces, payload)?;
        let told = pieces.number(Role::Length)?.or(pieces.number(Role::Dlc)?);
        // A header that nobody answers may be written with the length that its answer would have had.
        let is_unanswered = network == Network::Lin && held == 0;
        // A header of FlexRay counts words of two bytes, and some logs tell its number as it is.
        let is_words = |told: u64| network == Network::FlexRay && told.checked_mul(2) == Some(held as u64);
        if let Some(told) = told.filter(|told| *told != held as u64 && !is_unanswered && !is_words(*told)) {
            return Err(Flaw::LengthDisagrees { told, held, hint: "" });
        }
        let data = &payload[..held];
        let parts = match network {
            Network::Lin => self.lin(pieces, data, time_ns)?,
            Network::FlexRay => self.flexray(pieces, held)?,
            Network::Most => self.most(pieces, held)?,
            Network::Can | Network::Serial => serial(pieces, held)?,
        };
        let channel = match only_channel {
            Some(channel) => channel,
            None => channel(pieces, &mut shared.channels)?,
        };
        let Parts { id, kind, medium, held } = parts;
        Ok(Found {
            time_ns,
            channel,
            id,
            extended: false,
            kind,
            fd: false,
            bit_rate_switch: false,
            error_state: false,
            dlc: None,
            medium,
            payload: 0..held,
            place: PlaceInLog::Line(0),
        })
    }

    /// A number up to `most`; `None` when the log or this line does not tell.
    fn up_to<'l>(
        &self,
        role: Role,
        most: u64,
        wanted: &'static str,
        pieces: &Pieces<'l>,
    ) -> Result<Option<u32>, Flaw<'l>> {
        let cell = pieces.get(role).unwrap_or_default();
        if cell.is_empty() {
            return Ok(None);
        }
        let number = match (self.forms.others.of(role), without_prefix(cell)) {
            (_, Some(digits)) => hex(digits),
            (Base::Hex, None) => hex(cell),
            (Base::Decimal, None) => decimal(cell),
        };
        number
            .filter(|number| *number <= most)
            .map(|number| Some(number as u32))
            .ok_or_else(|| wrong(role, cell, wanted))
    }

    /// A frame of LIN: a header without data and checksum that nobody answered, or with both; what is wrong or missing is a fault.
    fn lin<'l>(&self, pieces: &Pieces<'l>, data: &[u8], time_ns: Option<i64>) -> Result<Parts, Flaw<'l>> {
        const BYTE: &str = "a byte";
        if data.len() > lin::BYTES_MAX {
            return Err(Flaw::LinLength(data.len()));
        }
        let told_pid = self.up_to(Role::Pid, 0xFF, BYTE, pieces)?.map(|pid| pid as u8);
        let checksum = self.up_to(Role::Checksum, 0xFF, BYTE, pieces)?.map(|sum| sum as u8);
        let (checksum_kind, is_sum_told_wrong) = lin_checksum(pieces)?;
        let told_id = self.lin_id(pieces)?;
        let mut faults = Faults::NONE;
        let (protected_id, id) = match (told_pid, told_id) {
            (Some(pid), Some(id)) if pid & lin::ID_MAX != id => {
                let [id, pid] = [Role::Id, Role::Pid].map(|role| Shown(pieces.get(role).unwrap_or_default()));
                return Err(Flaw::IdNotProtected { id, pid });
            }
            (Some(pid), _) => (Some(pid), pid & lin::ID_MAX),
            (None, Some(id)) => (None, id),
            (None, None) if time_ns.is_none() && data.is_empty() => return Err(wrong(Role::Pid, b"", "")),
            (None, None) => {
                faults |= Faults::IDENTIFIER;
                (None, 0)
            }
        };
        if protected_id.is_some_and(|pid| !lin::is_parity_right(pid)) || pieces.flag(Role::ParityGood)? == Some(false) {
            faults |= Faults::PARITY;
        }
        let is_answered = !data.is_empty() || checksum.is_some();
        let known_pid = protected_id.unwrap_or_else(|| lin::protected(id));
        let is_sum_wrong = match checksum {
            Some(sent) => data.is_empty() || !lin::fits(checksum_kind, known_pid, data, sent),
            None => self.networks.checksum,
        };
        // Without its identifier nobody can tell the sum of a frame.
        let is_sum_known = !faults.contains(Faults::IDENTIFIER);
        if is_answered && (is_sum_told_wrong || (is_sum_known && is_sum_wrong)) {
            faults |= Faults::CHECKSUM;
        }
        let kind = match (faults.is_empty(), is_answered) {
            (true, true) => Kind::Data,
            (true, false) => Kind::Unanswered,
            (false, _) => Kind::Faulty,
        };
        let medium = Medium::Lin(Lin { protected_id, checksum, checksum_kind, faults });
        Ok(Parts { id: id.into(), kind, medium, held: data.len() })
    }

    /// The identifier of a line of LIN, where it has one beside the protected one.
    fn lin_id<'l>(&self, pieces: &Pieces<'l>) -> Result<Option<u8>, Flaw<'l>> {
        let cell = pieces.get(Role::Id).unwrap_or_default();
        if cell.is_empty() {
            return Ok(None);
        }
        let id = u8::try_from(self.id(pieces)?.value).ok().filter(|id| *id <= lin::ID_MAX);
        id.map(Some).ok_or_else(|| wrong(Role::Id, cell, "an identifier of LIN, 0 to 3F"))
    }

    fn flexray<'l>(&self, pieces: &Pieces<'l>, held: usize) -> Result<Parts, Flaw<'l>> {
        let missing = |role| wrong(role, b"", "");
        let (slot_max, cycle_max) = (u64::from(flexray::SLOT_MAX), u64::from(flexray::CYCLE_MAX));
        let slot = self.up_to(Role::Slot, slot_max, SLOTS, pieces)?.ok_or(missing(Role::Slot))?;
        let cycle = self.up_to(Role::Cycle, cycle_max, "a cycle, 0 to 63", pieces)?.ok_or(missing(Role::Cycle))?;
        if slot == 0 {
            return Err(wrong(Role::Slot, pieces.get(Role::Slot).unwrap_or_default(), SLOTS));
        }
        if held > flexray::BYTES_MAX || !held.is_multiple_of(2) {
            return Err(Flaw::FlexRayLength(held));
        }
        let mut faults = Faults::NONE;
        for (role, fault) in [
            (Role::HeaderCrcGood, Faults::HEADER_CRC),
            (Role::FrameCrcGood, Faults::FRAME_CRC),
            (Role::ChecksumGood, Faults::FRAME_CRC),
        ] {
            if pieces.flag(role)? == Some(false) {
                faults |= fault;
            }
        }
        let indicators = indicators(pieces)?;
        let is_null = indicators.is_some_and(|bits| bits & NULL_FRAME == 0) || is_told_null(pieces)?;
        let kind = match (faults.is_empty(), is_null) {
            (true, false) => Kind::Data,
            (true, true) => Kind::Null,
            (false, _) => Kind::Faulty,
        };
        let on = |bit| indicators.is_some_and(|bits| bits & bit != 0);
        let medium = Medium::FlexRay(FlexRay {
            cycle: cycle as u8,
            on_b: on_b(pieces)?,
            preamble: on(PREAMBLE),
            sync: on(SYNC),
            startup: on(STARTUP),
            header_crc: None,
            faults,
        });
        Ok(Parts { id: slot, kind, medium, held })
    }

    /// A message of MOST or a part of one, with its identifier in four columns or as four numbers with dots between.
    fn most<'l>(&self, pieces: &Pieces<'l>, held: usize) -> Result<Parts, Flaw<'l>> {
        not_marked_wrong(pieces)?;
        let dotted = pieces.get(Role::Id).unwrap_or_default();
        let mut id = 0;
        if dotted.contains(&b'.') {
            id = dotted_id(dotted).ok_or_else(|| wrong(Role::Id, dotted, DOTTED))?;
        } else {
            for (role, bits) in MOST_PARTS.into_iter().zip(MOST_BITS) {
                let part = self.up_to(role, (1 << bits) - 1, "a number that fits there", pieces)?;
                id = id << bits | part.ok_or_else(|| wrong(role, b"", ""))?;
            }
        }
        let part = self.up_to(Role::Part, PART_MAX, PART, pieces)?.map(|part| part as u8);
        Ok(Parts { id, kind: Kind::Data, medium: Medium::Most(Most { part }), held })
    }
}

const SLOTS: &str = "a slot, 1 to 2047";
/// The number of a part has four bits (MOST Specification 3.0, from memory).
const PART_MAX: u64 = 0xF;
const PART: &str = "0 for a whole message, 1 for its first part, 2 for one amid, 3 for its last";
const DOTTED: &str = "an identifier of MOST, such as 22.01.0D2.C";

/// How wide function block, instance, function and operation are (MOST Specification 3.0, from memory).
const MOST_BITS: [u32; 4] = [8, 8, 12, 4];

/// `22.01.0D2.C`: hexadecimal, no part with more digits than it can have.
fn dotted_id(cell: &[u8]) -> Option<u32> {
    let mut parts = cell.split(|&byte| byte == b'.');
    let mut id = 0;
    for bits in MOST_BITS {
        let digits = parts.next().filter(|digits| digits.len() <= bits as usize / 4)?;
        id = id << bits | hex(digits)? as u32;
    }
    parts.next().is_none().then_some(id)
}

/// A line that says itself that its sum is wrong is damage, where a frame has no place to say so.
fn not_marked_wrong<'l>(pieces: &Pieces<'l>) -> Result<(), Flaw<'l>> {
    match pieces.flag(Role::ChecksumGood)? {
        Some(false) => Err(Flaw::MarkedWrong(Shown(pieces.get(Role::ChecksumGood).unwrap_or_default()))),
        _ => Ok(()),
    }
}

/// Bytes of a network without identifiers.
fn serial<'l>(pieces: &Pieces<'l>, held: usize) -> Result<Parts, Flaw<'l>> {
    not_marked_wrong(pieces)?;
    if held == 0 {
        return Err(wrong(Role::Data, b"", ""));
    }
    Ok(Parts { id: 0, kind: Kind::Data, medium: Medium::Serial, held })
}

/// Which checksum the line says it is, and whether it says that it is wrong.
fn lin_checksum<'l>(pieces: &Pieces<'l>) -> Result<(Option<LinChecksum>, bool), Flaw<'l>> {
    let is_told_wrong = pieces.flag(Role::ChecksumGood)? == Some(false);
    let cell = pieces.get(Role::ChecksumKind).unwrap_or_default();
    if cell.eq_ignore_ascii_case(b"classic") {
        return Ok((Some(LinChecksum::Classic), is_told_wrong));
    }
    if cell.eq_ignore_ascii_case(b"enhanced") {
        return Ok((Some(LinChecksum::Enhanced), is_told_wrong));
    }
    let told = flag(cell).ok_or_else(|| wrong(Role::ChecksumKind, cell, "classic or enhanced, or 1 or 0"))?;
    Ok((None, is_told_wrong || told == Some(false)))
}

// The indicators in the order of the header.
const PREAMBLE: u32 = 0b0_1000;
const NULL_FRAME: u32 = 0b0_0100;
const SYNC: u32 = 0b0_0010;
const STARTUP: u32 = 0b0_0001;

/// The five bits at the start of the header: reserved, payload preamble, null frame (0 in one), sync, startup.
fn indicators<'l>(pieces: &Pieces<'l>) -> Result<Option<u32>, Flaw<'l>> {
    let cell = pieces.get(Role::Indicators).unwrap_or_default();
    let is_bits = cell.len() <= 5 && cell.iter().all(|digit| matches!(digit, b'0' | b'1'));
    if !is_bits {
        return Err(wrong(Role::Indicators, cell, "five bits, such as 00100"));
    }
    let bits = cell.iter().fold(0, |bits, digit| bits << 1 | u32::from(digit & 1));
    Ok((!cell.is_empty()).then_some(bits))
}

/// Whether the line calls itself a null frame.
fn is_told_null<'l>(pieces: &Pieces<'l>) -> Result<bool, Flaw<'l>> {
    match pieces.get(Role::Kind) {
        None | Some(b"" | b"data") => Ok(false),
        Some(b"null") => Ok(true),
        Some(cell) => Err(wrong(Role::Kind, cell, "data or null")),
    }
}

fn on_b<'l>(pieces: &Pieces<'l>) -> Result<bool, Flaw<'l>> {
    match pieces.get(Role::FlexRayChannel) {
        None | Some(b"" | b"A" | b"a") => Ok(false),
        Some(b"B" | b"b") => Ok(true),
        Some(cell) => Err(wrong(Role::FlexRayChannel, cell, "A or B")),
    }
}
