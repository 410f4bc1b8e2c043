//! End-to-end protection: is a message whole, meant for this reader, and the next one?

use std::sync::Arc;

use rustc_hash::FxHashMap;
use wirelore_bits::e2e::{DataId, E2e, Found, Part, Profile};
use wirelore_model::{ByteSpan, Database, FrameId, Protection};

use super::{Belongs, Memory, ProtectionVerdict};

/// In front of the payload of a SOME/IP message, so many bytes of its header are protected with it: all behind its length.
const HEADER_BYTES: u32 = 8;
/// A sum of 8 bits fits by chance with one data id in 256: with the same one so often in a row it hardly does.
const TIMES_OF_SHORT_SUMS: u8 = 3;
/// For one damaged message so many bytes are summed at most, to find out whose it is.
const TRIED_BYTES_MAX: usize = 1 << 18;

/// A protection's rule.
#[derive(Debug, Clone)]
pub(crate) struct ProtectionPlan {
    e2e: E2e,
    /// The same for messages with a header in front of the payload that is covered too.
    behind_header: Option<E2e>,
    over: ByteSpan,
    /// What goes on behind so many bytes is not looked at: no frame of the description has more.
    most_bytes: usize,
    most_rise: u32,
    /// All protections of the vehicle with the same profile, this one among them.
    same_profile: Arc<[Known]>,
    /// So many damaged messages in a row must fit another frame before it is named.
    fits_needed: u8,
}

/// The frame that damaged messages fit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Suspect {
    /// Its place among the protections with the same profile.
    at: usize,
    /// How many fit in a row.
    times: u8,
}

/// A frame and its data id.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Known {
    frame: FrameId,
    data_id: DataId,
}

/// The protections of a vehicle by profile.
#[derive(Debug, Default)]
pub(crate) struct ByProfile(FxHashMap<Profile, Arc<[Known]>>);

impl ByProfile {
    pub(crate) fn of(database: &Database) -> Self {
        let mut known: FxHashMap<Profile, Vec<Known>> = FxHashMap::default();
        for (frame, id) in database.frames.iter().zip((0..).map(FrameId)) {
            for protection in frame.signals.iter().filter_map(|signal| signal.protection()) {
                known.entry(protection.profile).or_default().push(Known { frame: id, data_id: protection.data_id });
            }
        }
        Self(known.into_iter().map(|(profile, known)| (profile, known.into())).collect())
    }

    fn same(&self, profile: Profile) -> Arc<[Known]> {
        self.0.get(&profile).cloned().unwrap_or_default()
    }
}

/// The protection of a SOME/IP message: it begins behind the length in the header, so with 64 bits that stand in front of the payload
/// (AUTOSAR PRS SOME/IP Protocol and the end-to-end transformer, from memory). `None` where the protection begins later in the payload, or its profile has its
/// own header at the front.
pub(crate) fn behind_header(protection: &Protection) -> Option<E2e> {
    let header = protection.header.checked_add(HEADER_BYTES).filter(|_| protection.over.first == 0)?;
    E2e::new(protection.profile, protection.data_id, header).ok()
}

impl ProtectionPlan {
    /// `None` for a protection that cannot be, which no valid database has.
    pub(crate) fn new(protection: &Protection, most_bytes: usize, others: &ByProfile) -> Option<Self> {
        let has_short_sum = protection.profile.part(Part::Sum, 0).is_some_and(|sum| sum.width() <= 8);
        Some(Self {
            e2e: protection.e2e().ok()?,
            behind_header: behind_header(protection),
            over: protection.over,
            most_bytes,
            most_rise: protection.most_rise,
            same_profile: others.same(protection.profile),
            fits_needed: if has_short_sum { TIMES_OF_SHORT_SUMS } else { 1 },
        })
    }

    /// What the protection of a payload says after what is remembered: a message that is damaged, or another one, does not count. Header
    /// and payload are laid one behind the other in `together`, where both are covered.
    pub(super) fn verdict(
        &self,
        header: Option<&[u8; 8]>,
        payload: &[u8],
        together: &mut Vec<u8>,
        memory: &mut Memory,
    ) -> ProtectionVerdict {
        let payload = payload.get(..self.most_bytes).unwrap_or(payload);
        let end = self.over.last.map_or(payload.len(), |last| last as usize + 1);
        let Some(covered) = payload.get(self.over.first as usize..end) else {
            return ProtectionVerdict::TooShort;
        };
        let (e2e, covered) = match (&self.behind_header, header) {
            (Some(e2e), Some(header)) => {
                together.clear();
                together.extend_from_slice(header);
                together.extend_from_slice(covered);
                (e2e, together.as_slice())
            }
            _ => (&self.e2e, covered),
        };
        let Some(found) = e2e.check(covered) else {
            return ProtectionVerdict::TooShort;
        };
        self.damage((e2e, covered), &found, memory).unwrap_or_else(|| self.sequence(found.counter, memory))
    }

    /// What is wrong with the message itself.
    fn damage(&self, (e2e, covered): (&E2e, &[u8]), found: &Found, memory: &mut Memory) -> Option<ProtectionVerdict> {
        if let Some((told, is)) = found.length.filter(|_| !found.length_fits())
            && (found.sum_fits() || fits_as_long_as_told(e2e, covered, told))
        {
            return Some(ProtectionVerdict::WrongLength { told, is });
        }
        if !found.sum_fits() {
            let belongs = self.whose((e2e, covered), found.counter, &mut memory.suspect);
            return Some(ProtectionVerdict::WrongSum { expected: found.right_sum, found: found.sum, belongs });
        }
        let (found, _) = found.data_id.filter(|_| !found.data_id_fits())?;
        let belongs = self.known(found).map(|known| Belongs { frame: known.frame, data_id: found });
        Some(ProtectionVerdict::WrongDataId { found, belongs })
    }

    /// The one other frame whose data id makes the sum fit, and made it fit the damaged messages before as often as it takes.
    fn whose(&self, (e2e, covered): (&E2e, &[u8]), counter: u32, suspect: &mut Option<Suspect>) -> Option<Belongs> {
        let fits = |known: &Known| known.data_id != e2e.data_id() && e2e.would_fit(covered, known.data_id);
        let again = suspect.filter(|suspect| self.same_profile.get(suspect.at).is_some_and(fits));
        *suspect = match again {
            Some(suspect) => Some(Suspect { times: suspect.times.saturating_add(1), ..suspect }),
            None => self.only_one(fits, covered.len()).map(|at| Suspect { at, times: 1 }),
        };
        let sure = suspect.filter(|suspect| suspect.times >= self.fits_needed)?;
        let known = self.same_profile.get(sure.at)?;
        Some(Belongs { frame: known.frame, data_id: known.data_id.at(counter) })
    }

    /// The only one that fits among all protections with the same profile. Several tell nothing, and neither does a search that would
    /// take too long.
    fn only_one(&self, fits: impl Fn(&Known) -> bool, covered_bytes: usize) -> Option<usize> {
        let tried_bytes = self.same_profile.len().saturating_mul(covered_bytes);
        if self.sends_id_whole() || tried_bytes > TRIED_BYTES_MAX {
            return None;
        }
        let mut fitting = (0..).zip(self.same_profile.iter()).filter(|(_, known)| fits(known));
        fitting.next().filter(|_| fitting.next().is_none()).map(|(at, _)| at)
    }

    /// The one frame with a data id that is sent whole.
    fn known(&self, data_id: u32) -> Option<&Known> {
        let is_it = |known: &&Known| self.sends_id_whole() && known.data_id == DataId::One(data_id);
        let mut same = self.same_profile.iter().filter(is_it);
        same.next().filter(|_| same.next().is_none())
    }

    /// Whether the data id stands in the message, and so is not mixed into its sum.
    fn sends_id_whole(&self) -> bool {
        matches!(self.e2e.profile(), Profile::P04 | Profile::P07 | Profile::P08)
    }

    /// How the count stands to the one before.
    fn sequence(&self, counter: u32, memory: &mut Memory) -> ProtectionVerdict {
        let profile = self.e2e.profile();
        if counter > profile.last_count() {
            return ProtectionVerdict::NotACount;
        }
        let before = memory.count.replace(counter.into());
        match before.map(|before| profile.rise(before as u32, counter)) {
            None => ProtectionVerdict::First,
            Some(0) => ProtectionVerdict::Repeated,
            Some(1) => ProtectionVerdict::Right,
            Some(rise) if rise <= self.most_rise => ProtectionVerdict::Lost { messages: rise - 1 },
            Some(rise) => ProtectionVerdict::WrongSequence { rise },
        }
    }
}

/// Whether the sum is that of so many bytes: then more bytes came than were sent.
fn fits_as_long_as_told(e2e: &E2e, covered: &[u8], told: u64) -> bool {
    let told = usize::try_from(told).ok().and_then(|told| covered.get(..told));
    told.and_then(|told| e2e.check(told)).is_some_and(|found| found.sum_fits())
}
