//! What the identifiers seen on a channel say about its network.
//!
//! A network fits a channel *clearly* when both hold:
//! - it describes at least half of the different identifiers seen there, or at least half of the frames described for it were seen
//!   there (a description that is still being written covers few of a channel's identifiers, but those it has are there);
//! - against each other network: of the identifiers that only one of the two describes, at least two speak for this one, and at least
//!   four times as many as for the other. Identifiers that both describe (frames that a gateway passes on) say nothing.
//!
//! Where there is no other network the second condition is that it describes at least one. One is also enough where the networks do not
//! compete at all: no other one describes any identifier seen there, and this one describes at least half of them.
//!
//! Where frames show nothing to be recognised by (packets, bytes of a single wire), the messages that each network would read out of
//! them take the place of the identifiers. Those say more than a number of 11 bits: where no other network describes any, the first
//! condition alone is enough. A description of any message counts only where nothing else is described.

use rustc_hash::FxHashSet;
use wirelore_model::{FrameId, NetworkId, NetworkKind, SeenId};

use super::Reason;
use super::inside::Inside;
use crate::decoder::{Decoder, NetworkEntry};

/// Identifiers that only the better network describes: at least this many...
const OWN_AT_LEAST: usize = 2;
/// ...and at least this many times those that only the other one describes.
const OWN_TO_OTHER: usize = 4;
/// How many networks a message lists.
const NETWORKS_LISTED: usize = 4;

/// The different identifiers seen on one channel.
#[derive(Debug, Clone, Default)]
pub(crate) struct Evidence {
    ids: FxHashSet<SeenId>,
    /// The first of them: it tells the kind of network.
    first: Option<SeenId>,
    /// What each network that the channel could be reads out of its frames, where the frames themselves show nothing.
    pub(crate) inside: Vec<Inside>,
}

/// What they say.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Finding {
    Clear { network: NetworkId, reason: Reason },
    Nothing { reason: Reason },
    Unclear { seen: String },
}

/// How one network stands to a channel.
pub(super) struct Candidate<'a> {
    pub(super) network: NetworkId,
    pub(super) name: &'a str,
    /// How many different identifiers, or kinds of message, there are.
    pub(super) seen: usize,
    pub(super) described: FxHashSet<SeenId>,
    pub(super) frames: FxHashSet<FrameId>,
    pub(super) frame_count: usize,
    /// What it reads fits a description of any message, and is whole more often than not.
    pub(super) takes_any: bool,
}

impl Evidence {
    pub(crate) fn add(&mut self, id: SeenId) {
        self.first.get_or_insert(id);
        self.ids.insert(id);
    }

    /// Whether the frames show nothing of their own to be recognised by: what they carry has to be looked at.
    pub(crate) fn is_inside(&self) -> bool {
        matches!(self.first, Some(SeenId::Packet { .. } | SeenId::Telegram { .. }))
    }

    /// The networks that the channel can be, by their kind.
    pub(crate) fn possible<'a>(&self, decoder: &'a Decoder) -> Vec<(NetworkId, &'a NetworkEntry)> {
        let Some(first) = self.first else {
            return decoder.bindable().collect();
        };
        let fitting: Vec<_> = decoder.bindable().filter(|(_, network)| network.can_show(first)).collect();
        match first {
            // A text with plain identifiers does not say what it was recorded on.
            SeenId::Can { extended: false, .. } if fitting.is_empty() => {
                decoder.bindable().filter(|(_, network)| network.kind == NetworkKind::Lin).collect()
            }
            _ => fitting,
        }
    }

    /// Whether the channel can be this network, by its kind.
    pub(crate) fn can_be(&self, network: NetworkId, decoder: &Decoder) -> bool {
        self.possible(decoder).iter().any(|&(possible, _)| possible == network)
    }

    pub(super) fn judge(&self, decoder: &Decoder) -> Finding {
        let is_inside = self.is_inside();
        let mut candidates: Vec<Candidate<'_>> = if is_inside {
            self.inside.iter().filter_map(|inside| inside.candidate(decoder)).collect()
        } else {
            let possible = self.possible(decoder).into_iter();
            possible.map(|(id, network)| self.candidate(decoder, id, &network.name)).collect()
        };
        candidates.sort_by_key(|candidate| std::cmp::Reverse(candidate.described.len()));
        let best = candidates.split_first().filter(|(best, _)| !best.described.is_empty());
        let Some((best, others)) = best else {
            return nothing_described(&candidates, if is_inside { None } else { Some(self.ids.len()) });
        };
        let seen = best.seen;
        let covers_ids = 2 * best.described.len() >= seen;
        let covers = covers_ids || 2 * best.frames.len() >= best.frame_count;
        let is_alone = (covers_ids || is_inside) && others.iter().all(|other| other.described.is_empty());
        if !covers || !(is_alone || others.iter().all(|other| best.clearly_before(other))) {
            return Finding::Unclear { seen: in_words(seen, is_inside, &candidates) };
        }
        let described = best.described.len();
        let next = others.first().map(|other| (other.name.to_owned(), other.described.len()));
        let reason = if is_inside {
            Reason::Messages { seen, described, next }
        } else {
            Reason::Identifiers { seen, described, next }
        };
        Finding::Clear { network: best.network, reason }
    }

    fn candidate<'a>(&self, decoder: &Decoder, network: NetworkId, name: &'a str) -> Candidate<'a> {
        let found = || self.ids.iter().filter_map(|&id| Some((id, decoder.find_seen(network, id, &[])?)));
        Candidate {
            network,
            name,
            seen: self.ids.len(),
            described: found().map(|(id, _)| id).collect(),
            frames: found().map(|(_, frame)| frame).collect(),
            frame_count: decoder.frame_count(network),
            takes_any: false,
        }
    }
}

/// Where no network describes anything by which messages are told apart; `ids` are the different identifiers, where frames have some.
fn nothing_described(candidates: &[Candidate<'_>], ids: Option<usize>) -> Finding {
    let any: Vec<&Candidate<'_>> = candidates.iter().filter(|candidate| candidate.takes_any).collect();
    match (ids, any.as_slice()) {
        (Some(seen), _) => Finding::Nothing { reason: Reason::NothingDescribed { seen } },
        (None, []) => {
            let seen = candidates.iter().map(|candidate| candidate.seen).max().unwrap_or(0);
            Finding::Nothing { reason: Reason::NoMessageDescribed { seen } }
        }
        (None, [only]) => Finding::Clear { network: only.network, reason: Reason::AnyMessage },
        (None, several) => {
            let names: Vec<String> = several.iter().map(|candidate| format!("`{}`", candidate.name)).collect();
            Finding::Unclear { seen: format!("any message is described on {}", names.join(" and ")) }
        }
    }
}

impl Candidate<'_> {
    fn clearly_before(&self, other: &Self) -> bool {
        let own = self.described.difference(&other.described).count();
        let others = other.described.difference(&self.described).count();
        own >= OWN_AT_LEAST && own >= OWN_TO_OTHER * others
    }
}

fn in_words(seen: usize, is_inside: bool, candidates: &[Candidate<'_>]) -> String {
    let listed = candidates.iter().take(NETWORKS_LISTED).enumerate();
    let counts: Vec<String> = listed
        .map(|(at, candidate)| {
            let count = match candidate.described.len() {
                0 => "none".to_owned(),
                count => count.to_string(),
            };
            let verb = match (at, candidate.described.len()) {
                (0, 1) => " is described",
                (0, _) => " are described",
                _ => "",
            };
            format!("{count}{verb} on `{}`", candidate.name)
        })
        .collect();
    match seen {
        1 => {
            let describing =
                candidates.iter().take(NETWORKS_LISTED).filter(|candidate| !candidate.described.is_empty());
            let names: Vec<String> = describing.map(|candidate| format!("on `{}`", candidate.name)).collect();
            let only = if is_inside { "the only kind of message it carries" } else { "its only identifier" };
            format!("{only} is described {}", names.join(" and "))
        }
        _ if is_inside => format!("of the {seen} kinds of message it carries {}", counts.join(", ")),
        _ => format!("of its {seen} different identifiers {}", counts.join(", ")),
    }
}
