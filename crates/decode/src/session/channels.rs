//! The channels of the log that is being read, and what has been decided about them.

use wirelore_log::{Channel, ChannelInfo, Recording};
use wirelore_model::{NetworkId, SeenId, nearest_name};

use super::inside;
use super::sample::Sample;
use crate::bind::{BindMap, Binder, Binding, Decision, Evidence, Reason};
use crate::decoder::Decoder;
use crate::error::SessionError;

/// All channels of one log after the other.
#[derive(Debug)]
pub(super) struct Channels {
    binder: Binder,
    bindings: Vec<Binding>,
    states: Vec<State>,
    /// How many of them are [`State::Undecided`].
    undecided: usize,
    /// Which network is which channel of the log, where the user did not tell.
    bound: Vec<Bound>,
    logs_ended: usize,
}

/// A network that is a channel of the log.
#[derive(Debug, Clone, Copy)]
struct Bound {
    network: NetworkId,
    channel: usize,
    /// The two have the same name.
    by_name: bool,
}

/// What is known of one channel.
#[derive(Debug)]
enum State {
    /// No frame of it seen yet.
    Unseen,
    Undecided(Evidence),
    Decided(Option<NetworkId>),
}

impl Channels {
    pub(super) fn new(decoder: &Decoder, map: &BindMap) -> Result<Self, SessionError> {
        let binder = Binder::new(decoder, map)?;
        Ok(Self { binder, bindings: Vec::new(), states: Vec::new(), undecided: 0, bound: Vec::new(), logs_ended: 0 })
    }

    pub(super) fn bindings(&self) -> &[Binding] {
        &self.bindings
    }

    pub(super) fn never_seen(&self) -> impl Iterator<Item = &str> {
        self.binder.never_seen()
    }

    /// Whether nothing is open about any channel seen so far.
    #[inline]
    pub(super) fn all_decided(&self) -> bool {
        self.undecided == 0
    }

    /// What was decided about a channel; `None`: nothing yet.
    #[inline]
    pub(super) fn decided(&self, channel: Channel) -> Option<Option<NetworkId>> {
        match self.states.get(usize::from(channel.0)) {
            Some(State::Decided(network)) => Some(*network),
            Some(State::Unseen | State::Undecided(_)) | None => None,
        }
    }

    /// The network of each channel, as far as it is decided.
    pub(super) fn networks(&self) -> Vec<Option<NetworkId>> {
        let network = |state: &State| match state {
            State::Decided(network) => *network,
            State::Unseen | State::Undecided(_) => None,
        };
        self.states.iter().map(network).collect()
    }

    /// Whether no frame of a channel has been seen yet.
    pub(super) fn is_new(&self, channel: Channel) -> bool {
        matches!(self.states.get(usize::from(channel.0)), None | Some(State::Unseen))
    }

    /// The first frame of a channel is there.
    ///
    /// # Errors
    /// It is a network that another channel of the log is already.
    pub(super) fn meet(
        &mut self,
        channel: Channel,
        decoder: &Decoder,
        recording: &Recording,
    ) -> Result<(), SessionError> {
        let number = usize::from(channel.0);
        while self.states.len() <= number {
            self.states.push(State::Unseen);
        }
        let label = Label::of(recording, number);
        match self.binder.at_once(decoder, &label.text, label.is_name) {
            Some((network, reason)) => {
                let by_name = reason == Reason::SameName;
                self.record(decoder, label, network, reason);
                self.states[number] = State::Decided(network);
                let alike = self.claim(number, network, by_name);
                alike.map_or(Ok(()), |one| Err(self.alike((one.channel, number), decoder, recording)))
            }
            None => {
                self.undecided += 1;
                self.states[number] = State::Undecided(Evidence::default());
                Ok(())
            }
        }
    }

    /// Adds an identifier to what is known of a channel.
    pub(super) fn weigh(&mut self, channel: Channel, id: SeenId) {
        if let Some(State::Undecided(evidence)) = self.states.get_mut(usize::from(channel.0)) {
            evidence.add(id);
        }
    }

    /// Decides about every channel that is still open; `sample` are the frames that were kept of them.
    ///
    /// # Errors
    /// One that could be several networks, or two that look like the same one.
    pub(super) fn decide(
        &mut self,
        decoder: &Decoder,
        recording: &Recording,
        sample: &Sample,
    ) -> Result<(), SessionError> {
        let mut alike = None;
        for number in 0..self.states.len() {
            self.look_inside(number, decoder, sample);
            let State::Undecided(evidence) = &self.states[number] else {
                continue;
            };
            let label = Label::of(recording, number);
            let decision = Binder::by_identifiers(
                decoder,
                (&label.text, label.is_name),
                |network| self.is_only(number, network, decoder),
                evidence,
            );
            let (network, reason) = match self.named_instead(&label, &decision, recording) {
                Some(by) => (None, Reason::NameTaken { by }),
                None => decision?,
            };
            self.states[number] = State::Decided(network);
            self.record(decoder, label, network, reason);
            alike = alike.or(self.claim(number, network, false).map(|one| (one.channel, number)));
        }
        self.undecided = 0;
        alike.map_or(Ok(()), |channels| Err(self.alike(channels, decoder, recording)))
    }

    /// Reads what the frames of an open channel carry, where they show nothing of their own and it matters.
    fn look_inside(&mut self, number: usize, decoder: &Decoder, sample: &Sample) {
        let State::Undecided(evidence) = &self.states[number] else {
            return;
        };
        if !evidence.is_inside() {
            return;
        }
        let possible: Vec<NetworkId> = evidence.possible(decoder).into_iter().map(|(network, _)| network).collect();
        if let [only] = possible[..]
            && self.is_only(number, only, decoder)
        {
            return;
        }
        let look = |network| inside::look(decoder, sample, number, network);
        let inside = possible.into_iter().map(look).collect();
        if let State::Undecided(evidence) = &mut self.states[number] {
            evidence.inside = inside;
        }
    }

    /// The channel that has the name of the network which another one looks like; where that one looks like none for sure, the channel
    /// whose name its own looks like.
    fn named_instead(
        &self,
        label: &Label,
        decision: &Result<Decision, SessionError>,
        recording: &Recording,
    ) -> Option<String> {
        let named = self.bound.iter().filter(|bound| bound.by_name);
        let mut named = named.map(|bound| (bound.network, Label::of(recording, bound.channel).text));
        match decision {
            Ok((network, _)) => named.find(|(of, _)| Some(*of) == *network).map(|(_, name)| name),
            Err(_) if label.is_name => {
                let names: Vec<String> = named.map(|(_, name)| name).collect();
                nearest_name(&label.text, names.iter().map(String::as_str)).map(str::to_owned)
            }
            Err(_) => None,
        }
    }

    /// Whether no other channel of the log can be this network.
    fn is_only(&self, number: usize, network: NetworkId, decoder: &Decoder) -> bool {
        let others = self.states.iter().enumerate().filter(|&(other, _)| other != number);
        !others.into_iter().any(|(_, state)| match state {
            State::Unseen => false,
            State::Undecided(evidence) => evidence.can_be(network, decoder),
            State::Decided(decided) => decided.is_none_or(|decided| decided == network),
        })
    }

    /// Notes which channel a network is; `Some`: another channel is it already, and nobody told so.
    fn claim(&mut self, channel: usize, network: Option<NetworkId>, by_name: bool) -> Option<Bound> {
        let network = network.filter(|_| !self.binder.is_told())?;
        let known = self.bound.iter().find(|bound| bound.network == network).copied();
        if known.is_none() {
            self.bound.push(Bound { network, channel, by_name });
        }
        known
    }

    /// The error for two channels that look like the same network, with a binding that keeps all others.
    fn alike(&self, (one, other): (usize, usize), decoder: &Decoder, recording: &Recording) -> SessionError {
        let name = |network: NetworkId| decoder.networks().get(network.index()).map_or("", |entry| &*entry.name);
        let label = |number| Label::of(recording, number).text;
        let mut bound = self.bound.clone();
        bound.sort_unstable_by_key(|bound| bound.channel);
        let network = bound.iter().find(|bound| bound.channel == one).map_or("", |bound| name(bound.network));
        let pairs: Vec<String> =
            bound.iter().map(|bound| format!("{}={}", label(bound.channel), name(bound.network))).collect();
        SessionError::ChannelsAlike {
            one: label(one),
            other: label(other),
            network: network.to_owned(),
            bind: pairs.join(","),
        }
    }

    /// Fails where the user's binding fits no channel of the log.
    pub(super) fn check_told(&self, recording: &Recording) -> Result<(), SessionError> {
        let labels: Vec<Label> = self.seen().map(|number| Label::of(recording, number)).collect();
        let have_names = labels.iter().any(|label| label.is_name);
        let labels: Vec<String> = labels.into_iter().map(|label| label.text).collect();
        if labels.is_empty() { Ok(()) } else { self.binder.check_told(&labels, have_names) }
    }

    /// Makes ready for the next log.
    pub(super) fn end_log(&mut self) {
        self.states.clear();
        self.bound.clear();
        self.logs_ended += 1;
    }

    fn seen(&self) -> impl Iterator<Item = usize> {
        let states = self.states.iter().enumerate();
        states.filter(|(_, state)| !matches!(state, State::Unseen)).map(|(number, _)| number)
    }

    fn record(&mut self, decoder: &Decoder, label: Label, network: Option<NetworkId>, reason: Reason) {
        if label.is_name {
            self.binder.remember(&label.text, network);
        }
        let entry = network.and_then(|network| decoder.networks().get(network.index()));
        let network_name = entry.map(|entry| entry.name.to_string());
        self.bindings.push(Binding { log: self.logs_ended, channel: label.text, network, network_name, reason });
    }
}

/// A channel's name, or its number where it has none.
struct Label {
    text: String,
    is_name: bool,
}

impl Label {
    fn of(recording: &Recording, number: usize) -> Self {
        match recording.channels().get(number) {
            Some(ChannelInfo { name, .. }) if !name.is_empty() => Self { text: name.clone(), is_name: true },
            _ => Self { text: number.to_string(), is_name: false },
        }
    }
}
