//! End-to-end protection: is a message whole, meant for this reader, and the next one?

use std::sync::Arc;

use rustc_hash::FxHashMap;
use wirelore_bits::e2e::{DataId, E2e, Found, Profile};
use wirelore_model::{ByteSpan, Database, FrameId, Protection};

use super::{Belongs, ProtectionVerdict};

/// A protection's rule.
#[derive(Debug, Clone)]
pub(crate) struct ProtectionPlan {
    e2e: E2e,
    over: ByteSpan,
    /// What goes on behind so many bytes is not looked at: no frame of the description has more.
    most_bytes: usize,
    most_rise: u32,
    /// All protections of the vehicle with the same profile, this one among them.
    same_profile: Arc<[Known]>,
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

impl ProtectionPlan {
    /// `None` for a protection that cannot be, which no valid database has.
    pub(crate) fn new(protection: &Protection, most_bytes: usize, others: &ByProfile) -> Option<Self> {
        Some(Self {
            e2e: protection.e2e().ok()?,
            over: protection.over,
            most_bytes,
            most_rise: protection.most_rise,
            same_profile: others.same(protection.profile),
        })
    }

    /// What the protection of a payload says after a message with the count `before`. The count that the next one is to be compared
    /// with comes with it: a message that is damaged, or another one, does not count.
    pub(crate) fn verdict(&self, payload: &[u8], before: Option<u64>) -> (ProtectionVerdict, Option<u64>) {
        let payload = payload.get(..self.most_bytes).unwrap_or(payload);
        let end = self.over.last.map_or(payload.len(), |last| last as usize + 1);
        let covered = payload.get(self.over.first as usize..end);
        let Some((covered, found)) = covered.and_then(|covered| Some((covered, self.e2e.check(covered)?))) else {
            return (ProtectionVerdict::TooShort, before);
        };
        match self.damage(covered, &found) {
            Some(damage) => (damage, before),
            None => self.sequence(found.counter, before),
        }
    }

    /// What is wrong with the message itself.
    fn damage(&self, covered: &[u8], found: &Found) -> Option<ProtectionVerdict> {
        if let Some((told, is)) = found.length.filter(|_| !found.length_fits())
            && (found.sum_fits() || self.fits_as_long_as_told(covered, told))
        {
            return Some(ProtectionVerdict::WrongLength { told, is });
        }
        if !found.sum_fits() {
            let (expected, found) = (found.right_sum, found.sum);
            return Some(ProtectionVerdict::WrongSum { expected, found, belongs: self.whose(covered) });
        }
        let (found, _) = found.data_id.filter(|_| !found.data_id_fits())?;
        let belongs = self.known(found).map(|known| Belongs { frame: known.frame, data_id: found });
        Some(ProtectionVerdict::WrongDataId { found, belongs })
    }

    /// Whether the sum is that of so many bytes: then more bytes came than were sent.
    fn fits_as_long_as_told(&self, covered: &[u8], told: u64) -> bool {
        let told = usize::try_from(told).ok().and_then(|told| covered.get(..told));
        told.and_then(|told| self.e2e.check(told)).is_some_and(|found| found.sum_fits())
    }

    /// The one other frame whose data id makes the sum fit. Short sums fit by chance, so several tell nothing.
    fn whose(&self, covered: &[u8]) -> Option<Belongs> {
        let own = self.e2e.data_id();
        let is_other = |known: &&Known| known.data_id != own && self.e2e.would_fit(covered, known.data_id);
        let mut fitting = self.same_profile.iter().filter(is_other);
        let only = fitting.next().filter(|_| fitting.next().is_none())?;
        let counter = self.e2e.check(covered)?.counter;
        Some(Belongs { frame: only.frame, data_id: only.data_id.at(counter) })
    }

    /// The one frame with a data id that is sent whole.
    fn known(&self, data_id: u32) -> Option<&Known> {
        let is_sent_whole = matches!(self.e2e.profile(), Profile::P04 | Profile::P07 | Profile::P08);
        let mut same = self.same_profile.iter().filter(|known| is_sent_whole && known.data_id == DataId::One(data_id));
        same.next().filter(|_| same.next().is_none())
    }

    /// How the count stands to the one before.
    fn sequence(&self, counter: u32, before: Option<u64>) -> (ProtectionVerdict, Option<u64>) {
        let profile = self.e2e.profile();
        if counter > profile.last_count() {
            return (ProtectionVerdict::NotACount, before);
        }
        let verdict = match before.map(|before| profile.rise(before as u32, counter)) {
            None => ProtectionVerdict::First,
            Some(0) => ProtectionVerdict::Repeated,
            Some(1) => ProtectionVerdict::Right,
            Some(rise) if rise <= self.most_rise => ProtectionVerdict::Lost { messages: rise - 1 },
            Some(rise) => ProtectionVerdict::WrongSequence { rise },
        };
        (verdict, Some(counter.into()))
    }
}
