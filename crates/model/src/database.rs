//! The database: a description whose promises have been checked.

use std::ops::Deref;

use crate::validate::{self, Flaw, FrameChecks, InvalidDescription};
use crate::{
    Certainty, Description, Ecu, EcuId, Frame, FrameId, Label, Network, NetworkId, Signal, SignalId, StateTable,
    StateWord, States, StatesId,
};

/// A validated description, not to be changed any more.
///
/// It reads like the [`Description`] inside it; every index leads to an item, every place lies inside its payload, every name is
/// unique where it has to be.
#[derive(Debug, Clone)]
pub struct Database {
    description: Description,
    networks: ByName,
    ecus: ByName,
    frames: ByName,
    states: ByName,
}

impl Database {
    /// Checks a description.
    ///
    /// # Errors
    /// The first item that breaks a promise of its type, and which promise.
    pub fn new(description: Description) -> Result<Self, InvalidDescription> {
        validate::check_outline(&description)?;
        let mut checks = FrameChecks::of(&description);
        for (frame, id) in description.frames.iter().zip(0..) {
            checks.check(frame, FrameId(id))?;
        }
        validate::check_routes(&description)?;
        validate::check_schedules(&description)?;
        Self::index(description)
    }

    fn index(description: Description) -> Result<Self, InvalidDescription> {
        let networks = ByName::of(&description.networks, |network| &network.label);
        let ecus = ByName::of(&description.ecus, |ecu| &ecu.label);
        let frames = ByName::of(&description.frames, |frame| &frame.label);
        let states = ByName::of(&description.states, |table| &table.label);
        networks.check_unique("network", &description.networks, |network| &network.label)?;
        ecus.check_unique("ecu", &description.ecus, |ecu| &ecu.label)?;
        frames.check_unique("frame", &description.frames, |frame| &frame.label)?;
        states.check_unique("states", &description.states, |table| &table.label)?;
        let schedules = ByName::of(&description.schedules, |schedule| &schedule.label);
        schedules.check_unique("schedule", &description.schedules, |schedule| &schedule.label)?;
        Ok(Self { description, networks, ecus, frames, states })
    }

    /// The network with this name.
    #[must_use]
    pub fn network_named(&self, name: &str) -> Option<(NetworkId, &Network)> {
        let (index, network) = self.networks.find(name, &self.description.networks, |network| &network.label)?;
        Some((NetworkId(index), network))
    }

    /// The control unit with this name.
    #[must_use]
    pub fn ecu_named(&self, name: &str) -> Option<(EcuId, &Ecu)> {
        let (index, ecu) = self.ecus.find(name, &self.description.ecus, |ecu| &ecu.label)?;
        Some((EcuId(index), ecu))
    }

    /// The frame with this name. Its signals are found with [`Frame::signals_named`].
    #[must_use]
    pub fn frame_named(&self, name: &str) -> Option<(FrameId, &Frame)> {
        let (index, frame) = self.frames.find(name, &self.description.frames, |frame| &frame.label)?;
        Some((FrameId(index), frame))
    }

    /// The table of state words with this name.
    #[must_use]
    pub fn states_named(&self, name: &str) -> Option<(StatesId, &StateTable)> {
        let (index, table) = self.states.find(name, &self.description.states, |table| &table.label)?;
        Some((StatesId(index), table))
    }

    /// The state words of a signal of this database, from wherever they are; empty where it has none.
    #[must_use]
    pub fn words<'a>(&'a self, signal: &'a Signal) -> &'a [StateWord] {
        match &signal.states {
            Some(States::Table(id)) => self.description.states.get(id.index()).map_or(&[], |table| &table.words),
            Some(States::Own(words)) => words,
            None => &[],
        }
    }

    /// How sure the author is of what a signal says: its own word on it, else that of its frame, else that of its table of state words.
    #[must_use]
    pub fn certainty(&self, frame: FrameId, signal: SignalId) -> Option<&Certainty> {
        let frame = self.description.frames.get(frame.index())?;
        let signal = frame.signals.get(signal.index())?;
        let table = match &signal.states {
            Some(States::Table(id)) => self.description.states.get(id.index()),
            _ => None,
        };
        let labels = [Some(&signal.label), Some(&frame.label), table.map(|table| &table.label)];
        labels.into_iter().flatten().find_map(|label| label.certainty.as_ref())
    }

    /// The description, free to be changed and checked again.
    #[must_use]
    pub fn into_description(self) -> Description {
        self.description
    }
}

impl Deref for Database {
    type Target = Description;

    fn deref(&self) -> &Description {
        &self.description
    }
}

impl PartialEq for Database {
    fn eq(&self, other: &Self) -> bool {
        self.description == other.description
    }
}

/// The positions of a list's items, sorted by name: deterministic, and no hostile choice of names makes it slow.
#[derive(Debug, Clone)]
struct ByName(Vec<u32>);

impl ByName {
    fn of<T>(items: &[T], label: impl Fn(&T) -> &Label) -> Self {
        let mut named: Vec<(&str, u32)> =
            items.iter().zip(0..).map(|(item, index)| (label(item).name.as_str(), index)).collect();
        named.sort_unstable();
        Self(named.into_iter().map(|(_, index)| index).collect())
    }

    fn check_unique<T>(
        &self,
        kind: &'static str,
        items: &[T],
        label: impl Fn(&T) -> &Label,
    ) -> Result<(), InvalidDescription> {
        let names = self.0.iter().filter_map(|&index| Some(&label(items.get(index as usize)?).name));
        match names.clone().zip(names.skip(1)).find(|(one, next)| one == next) {
            Some((name, _)) => Err(InvalidDescription::new(format!("{kind} `{name}`"), Flaw::NameTaken)),
            None => Ok(()),
        }
    }

    fn find<'a, T>(&self, name: &str, items: &'a [T], label: impl Fn(&T) -> &Label) -> Option<(u32, &'a T)> {
        let item = |index: u32| items.get(index as usize);
        let at = self
            .0
            .binary_search_by(|&index| item(index).map_or("", |item| label(item).name.as_str()).cmp(name))
            .ok()?;
        let &index = self.0.get(at)?;
        Some((index, item(index)?))
    }
}
