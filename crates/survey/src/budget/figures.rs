//! A vehicle in numbers, to be held against another one.

use wirelore_model::{Database, Frame, NetworkKind, Role};

/// How much there is of everything.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figures {
    /// Control units.
    pub units: u64,
    /// Networks of each kind, in the order of the language page; kinds that are not there are left out.
    pub networks: Vec<(NetworkKind, u64)>,
    /// Frames.
    pub frames: u64,
    /// Signals.
    pub signals: u64,
    /// What gateways pass on.
    pub routes: u64,
    /// Frames that are protected: by a counter and a checksum, or end to end.
    pub protected_frames: u64,
}

impl Figures {
    /// Counts.
    #[must_use]
    pub fn of(database: &Database) -> Self {
        let of_kind = |kind| database.networks.iter().filter(|network| network.kind == kind).count() as u64;
        let networks = NetworkKind::ALL.into_iter().map(|kind| (kind, of_kind(kind)));
        Self {
            units: database.ecus.len() as u64,
            networks: networks.filter(|(_, count)| *count > 0).collect(),
            frames: database.frames.len() as u64,
            signals: database.frames.iter().map(|frame| frame.signals.len() as u64).sum(),
            routes: database.routes.len() as u64,
            protected_frames: database.frames.iter().filter(|frame| is_protected(frame)).count() as u64,
        }
    }

    /// Networks of one kind.
    #[must_use]
    pub fn of_kind(&self, kind: NetworkKind) -> u64 {
        self.networks.iter().find(|(known, _)| *known == kind).map_or(0, |(_, count)| *count)
    }

    /// The part of the frames that is protected; `None` without frames.
    #[must_use]
    pub fn protected_share(&self) -> Option<f64> {
        (self.frames > 0).then(|| self.protected_frames as f64 / self.frames as f64)
    }
}

/// Whether a receiver notices that a frame is lost, repeated or damaged.
fn is_protected(frame: &Frame) -> bool {
    let has = |wanted: &dyn Fn(&Role) -> bool| frame.signals.iter().any(|signal| wanted(&signal.role));
    let counts = has(&|role| matches!(role, Role::Counter(_)));
    let is_checked = has(&|role| matches!(role, Role::Checksum(_)));
    counts && is_checked || has(&|role| matches!(role, Role::Protection(_)))
}
