//! LIN frames as they were on the wire: do parity and checksum fit, and which frame is the answer to an event?

use wirelore_bits::lin;
use wirelore_log::{Frame, Kind, Medium};
use wirelore_model::{Database, FrameId, Identifier, LinChecksum, NetworkId};

/// What a recording tells of a LIN frame beside identifier and data.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct LinWire {
    /// The identifier with its parity bits.
    protected_id: Option<u8>,
    /// The checksum as it was sent.
    checksum: Option<u8>,
    /// It is no frame but a wake-up.
    pub(crate) is_wake_up: bool,
}

/// The code that recordings have for a wake-up (public link-type registry, LINKTYPE_LIN).
const WAKE_UP: u32 = 0xB0B0_0004;

impl LinWire {
    #[inline(always)]
    pub(crate) fn of(frame: &Frame<'_>) -> Self {
        match frame.medium {
            Medium::Lin(lin) => Self {
                protected_id: lin.protected_id,
                checksum: lin.checksum,
                is_wake_up: frame.kind == Kind::Signal && frame.id == WAKE_UP,
            },
            _ => Self::default(),
        }
    }

    /// Compares what was sent with what would be right; `described` is the kind of checksum that the frame should have.
    pub(crate) fn judge(self, id: u8, data: &[u8], described: LinChecksum) -> Judgement {
        let protected_id = self.protected_id.unwrap_or_else(|| lin::protected(id));
        if !lin::is_parity_right(protected_id) {
            return Judgement::WrongParity;
        }
        let Some(sent) = self.checksum else { return Judgement::NoChecksum };
        if described.over(protected_id, data) == sent {
            Judgement::Right
        } else if described.other().over(protected_id, data) == sent {
            Judgement::OtherKind
        } else {
            Judgement::WrongChecksum
        }
    }
}

/// What a LIN frame's own check bits say.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Judgement {
    /// The recording has no checksum.
    NoChecksum,
    /// The checksum fits.
    Right,
    /// It fits as the other kind of checksum.
    OtherKind,
    /// It fits in no way.
    WrongChecksum,
    /// The parity bits are not those of the identifier.
    WrongParity,
}

/// The frames of one network, by identifier.
type ById = Box<[Option<LinFrame>; IDS]>;

/// The described LIN frames, by network and identifier.
#[derive(Debug, Clone)]
pub(crate) struct LinFrames {
    networks: Box<[Option<ById>]>,
}

const IDS: usize = lin::ID_MAX as usize + 1;

/// One described frame.
#[derive(Debug, Clone)]
pub(crate) struct LinFrame {
    pub(crate) frame: FrameId,
    pub(crate) checksum: LinChecksum,
    /// The frames that an event-triggered one stands for, by the protected identifier that their data begins with.
    answers: Box<[(u8, FrameId)]>,
}

impl LinFrame {
    pub(crate) fn is_event(&self) -> bool {
        !self.answers.is_empty()
    }

    /// The frame that the answer to an event is: the one that its first byte names.
    pub(crate) fn answer(&self, data: &[u8]) -> Option<FrameId> {
        let first = data.first()?;
        self.answers.iter().find(|(sent, _)| sent == first).map(|&(_, frame)| frame)
    }
}

impl LinFrames {
    pub(crate) fn new(database: &Database) -> Self {
        let mut networks: Vec<Option<Box<[Option<LinFrame>; IDS]>>> = vec![None; database.networks.len()];
        for (frame, index) in database.frames.iter().zip(0..) {
            for seen in &frame.seen_on {
                let Identifier::Lin { id, checksum, stands_for } = &seen.identifier else { continue };
                let answers =
                    stands_for.iter().filter_map(|&answer| Some((sent_as(database, answer, seen.network)?, answer)));
                let described = LinFrame { frame: FrameId(index), checksum: *checksum, answers: answers.collect() };
                let on = networks[seen.network.index()].get_or_insert_with(|| Box::new([const { None }; IDS]));
                // As everywhere, the first description holds.
                if let Some(place) = on.get_mut(usize::from(*id)) {
                    place.get_or_insert(described);
                }
            }
        }
        Self { networks: networks.into() }
    }

    pub(crate) fn find(&self, network: NetworkId, id: u8) -> Option<&LinFrame> {
        self.networks.get(network.index())?.as_ref()?.get(usize::from(id))?.as_ref()
    }
}

/// The protected identifier of a frame on a network.
fn sent_as(database: &Database, frame: FrameId, network: NetworkId) -> Option<u8> {
    database.frames[frame.index()].seen_on.iter().find_map(|seen| match seen.identifier {
        Identifier::Lin { id, .. } if seen.network == network => Some(lin::protected(id)),
        _ => None,
    })
}

#[cfg(test)]
mod tests {
    use wirelore_log::{Channel, Lin};

    use super::*;

    fn wire(protected_id: u8, checksum: u8) -> LinWire {
        let lin = Lin { protected_id: Some(protected_id), checksum: Some(checksum), ..Lin::default() };
        LinWire::of(&Frame { medium: Medium::Lin(lin), ..Frame::data(None, Channel(0), 0, &[]) })
    }

    #[test]
    fn checksums_are_right_of_the_other_kind_or_wrong() {
        use LinChecksum::{Classic, Enhanced};
        // LIN 2.2A, section 2.8.3, and the enhanced sums of the same data in documentation that quotes it.
        let data = [0x4A, 0x55, 0x93, 0xE5];
        assert_eq!(wire(0x11, 0xD5).judge(0x11, &data, Enhanced), Judgement::Right);
        assert_eq!(wire(0x11, 0xD5).judge(0x11, &data, Classic), Judgement::OtherKind);
        assert_eq!(wire(0x11, 0xE6).judge(0x11, &data, Enhanced), Judgement::OtherKind);
        assert_eq!(wire(0x11, 0xE7).judge(0x11, &data, Enhanced), Judgement::WrongChecksum);
        assert_eq!(wire(0x51, 0xD5).judge(0x11, &data, Enhanced), Judgement::WrongParity);
        assert_eq!(LinWire::default().judge(0x11, &data, Enhanced), Judgement::NoChecksum);
        // What the log does not tell of the identifier follows from it.
        let bare = LinWire { checksum: Some(0x27), ..LinWire::default() };
        assert_eq!(bare.judge(0x3F, &data, Enhanced), Judgement::Right);
    }
}
