//! Which networks the lines of a text can be from, by what they tell, and which one a line is from.

use super::headings::Role;
use super::row::Pieces;

/// A network by what tells its frames apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Network {
    Can,
    /// A protected identifier, or an identifier with a checksum.
    Lin,
    /// A slot and a cycle.
    FlexRay,
    /// Function block, instance, function and operation.
    Most,
    /// Nothing.
    Serial,
}

/// The roles that a MOST identifier is made of, the most significant first.
pub(super) const MOST_PARTS: [Role; 4] = [Role::FunctionBlock, Role::Instance, Role::Function, Role::Operation];

impl Role {
    /// The network whose lines alone have this role; `None` for those that any line can have.
    pub(super) fn network(self) -> Option<Network> {
        match self {
            Self::Pid | Self::Checksum | Self::ChecksumKind | Self::ParityGood => Some(Network::Lin),
            Self::Slot
            | Self::Cycle
            | Self::FlexRayChannel
            | Self::Indicators
            | Self::HeaderCrcGood
            | Self::FrameCrcGood => Some(Network::FlexRay),
            Self::FunctionBlock | Self::Instance | Self::Function | Self::Operation | Self::Part => Some(Network::Most),
            _ => None,
        }
    }
}

/// What the lines of a text tell of their networks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Networks {
    id: bool,
    pid: bool,
    /// Whether a line of LIN tells its checksum.
    pub(super) checksum: bool,
    flexray: bool,
    most: bool,
}

impl Networks {
    /// By the roles that there are; the error says which one makes no sense without others.
    pub(super) fn of(has: impl Fn(Role) -> bool) -> Result<Self, String> {
        let networks = Self {
            id: has(Role::Id),
            pid: has(Role::Pid),
            checksum: has(Role::Checksum),
            flexray: has(Role::Slot) && has(Role::Cycle),
            most: MOST_PARTS.into_iter().all(&has),
        };
        for role in Role::all().filter(|&role| has(role)) {
            let (is_there, wanted) = match role.network() {
                Some(Network::Lin) => {
                    (networks.is_lin(), "lines of LIN, which tell their pid, or their id and checksum")
                }
                Some(Network::FlexRay) => (networks.flexray, "lines of FlexRay, which tell their slot and cycle"),
                Some(Network::Most) if role == Role::Part => {
                    (networks.most || networks.id, "lines of MOST, which tell a function or an id such as 22.01.0D2.C")
                }
                Some(Network::Most) => {
                    (networks.most, "lines of MOST, which tell function_block, instance, function and operation")
                }
                _ => (true, ""),
            };
            if !is_there {
                return Err(format!("{} is something of {wanted}", role.word()));
            }
        }
        Ok(networks)
    }

    /// Whether a line can be from a network with protected identifiers.
    fn is_lin(self) -> bool {
        self.pid || (self.id && self.checksum)
    }

    /// Whether no line tells what frame it is.
    pub(super) fn is_serial(self) -> bool {
        !(self.id || self.pid || self.flexray || self.most)
    }

    /// Whether all lines are of CAN, or as good as such.
    pub(super) fn is_only_can(self) -> bool {
        self.id && !(self.is_lin() || self.flexray || self.most)
    }

    /// The network of a line: the one of which it tells something, or the first that the text can be from.
    #[inline]
    pub(super) fn of_line(self, pieces: &Pieces<'_>) -> Network {
        let id = pieces.get(Role::Id).unwrap_or_default();
        if self.is_only_can() {
            return if id.contains(&b'.') { Network::Most } else { Network::Can };
        }
        self.of_mixed_line(pieces, id)
    }

    fn of_mixed_line(self, pieces: &Pieces<'_>, id: &[u8]) -> Network {
        let tells = |role| pieces.get(role).is_some_and(|cell| !cell.is_empty());
        let told = [
            (Network::Lin, self.is_lin() && (tells(Role::Pid) || tells(Role::Checksum))),
            (Network::FlexRay, self.flexray && (tells(Role::Slot) || tells(Role::Cycle))),
            (Network::Most, (self.most && MOST_PARTS.into_iter().any(tells)) || id.contains(&b'.')),
            (Network::Lin, self.is_lin() && !self.pid && tells(Role::Id)),
            (Network::Can, tells(Role::Id)),
            (Network::Lin, self.is_lin()),
            (Network::FlexRay, self.flexray),
            (Network::Most, self.most),
        ];
        told.into_iter().find(|&(_, is_told)| is_told).map_or(Network::Serial, |(network, _)| network)
    }
}
