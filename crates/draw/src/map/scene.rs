//! What is on a map: networks and control units of a description, numbered anew, with their texts ready to be drawn.

use wirelore_model::{BitRate, Database, EcuId, Grade, Identifier, Label, Network, NetworkId, NetworkKind};

use super::{MapOptions, wiring};
use crate::text::clean;

/// Everything that is drawn of a vehicle.
#[derive(Debug)]
pub(crate) struct Scene {
    /// The title of the picture.
    pub(crate) title: String,
    /// The networks, in the order of the description; the last one may stand for none.
    pub(crate) nets: Vec<Net>,
    /// The control units, in the order of the description.
    pub(crate) units: Vec<Unit>,
    /// The plain wires between them.
    pub(crate) wires: Vec<PlainWire>,
}

/// A network.
#[derive(Debug)]
pub(crate) struct Net {
    /// Which one; `None` where control units stand that are on no network.
    pub(crate) id: Option<NetworkId>,
    /// Its kind.
    pub(crate) kind: NetworkKind,
    /// The name by which the description refers to it.
    pub(crate) name: String,
    /// The title for people.
    pub(crate) title: String,
    /// Kind and rate in words.
    pub(crate) facts: String,
    /// The units on it, in the order in which they are drawn.
    pub(crate) members: Vec<usize>,
    /// The unit that gives the beat.
    pub(crate) leader: Option<usize>,
    /// How sure the author is.
    pub(crate) grade: Option<Grade>,
    /// FlexRay: the channels that are drawn.
    pub(crate) channels: (bool, bool),
    /// The units with a terminator, and the places in the wiring that have one.
    pub(crate) terminators: Vec<usize>,
    pub(crate) in_wiring: usize,
    /// The box of its active star, and the units on each branch.
    pub(crate) star: Option<usize>,
    pub(crate) branches: Vec<Vec<usize>>,
}

/// A control unit.
#[derive(Debug)]
pub(crate) struct Unit {
    /// Which one; `None` for an active star that is in no control unit.
    pub(crate) id: Option<EcuId>,
    /// The name by which the description refers to it.
    pub(crate) name: String,
    /// The title for people.
    pub(crate) title: String,
    /// The networks it is on.
    pub(crate) on: Vec<usize>,
    /// What is said of it in small letters: address, place on a ring.
    pub(crate) facts: Vec<String>,
    /// It passes something on.
    pub(crate) is_gateway: bool,
    /// Branches of FlexRay meet in it.
    pub(crate) is_star: bool,
    /// Not fitted in every vehicle.
    pub(crate) is_optional: bool,
    /// How sure the author is.
    pub(crate) grade: Option<Grade>,
    /// The plain wires that end at it, counted from 0.
    pub(crate) wires: Vec<usize>,
}

/// A plain wire.
#[derive(Debug)]
pub(crate) struct PlainWire {
    /// The unit that drives it.
    pub(crate) from: usize,
    /// The units that read it.
    pub(crate) to: Vec<usize>,
    /// What it carries.
    pub(crate) what: String,
}

impl Scene {
    pub(crate) fn of(database: &Database, options: &MapOptions) -> Self {
        let wanted = |id: NetworkId| options.networks.is_empty() || options.networks.contains(&id);
        let shown: Vec<NetworkId> =
            (0..database.networks.len() as u32).map(NetworkId).filter(|id| wanted(*id)).collect();
        let mut nets: Vec<Net> = shown.iter().map(|id| net(database, *id)).collect();
        let mut units = Vec::new();
        let mut unit_at = vec![None; database.ecus.len()];
        for (index, ecu) in database.ecus.iter().enumerate() {
            let on = |id: &NetworkId| shown.iter().position(|other| other == id);
            let mut networks: Vec<usize> =
                ecu.on.iter().map(|attachment| &attachment.network).chain(&ecu.leads).filter_map(on).collect();
            let mut seen = Vec::new();
            networks.retain(|net| {
                !seen.contains(net) && {
                    seen.push(*net);
                    true
                }
            });
            if networks.is_empty() && !options.networks.is_empty() {
                continue;
            }
            unit_at[index] = Some(units.len());
            for net in &networks {
                nets[*net].members.push(units.len());
            }
            for net in ecu.leads.iter().filter_map(on) {
                nets[net].leader.get_or_insert(units.len());
            }
            units.push(unit(database, EcuId(index as u32), networks, &shown));
        }
        let wires = wires(database, &unit_at, &mut units);
        sort_rings(database, &mut nets, &units);
        for (net, id) in shown.iter().enumerate() {
            wiring::add(database, *id, (net, &mut nets), (&unit_at, &mut units));
        }
        if options.listen.is_some() {
            // Arrows stand where terminators would be drawn.
            nets.iter_mut().for_each(wiring::hide_terminators);
        }
        add_lone(&mut nets, &mut units);
        let title = database.vehicle.as_ref().map(|vehicle| clean(vehicle.label.display()));
        Self { title: title.unwrap_or_else(|| "Networks of the vehicle".to_owned()), nets, units, wires }
    }

    /// How many control units there are, stars of their own aside.
    pub(crate) fn control_units(&self) -> usize {
        self.units.iter().filter(|unit| unit.id.is_some()).count()
    }

    /// How many networks there are, the place for units without one aside.
    pub(crate) fn networks(&self) -> usize {
        self.nets.iter().filter(|net| net.id.is_some()).count()
    }
}

fn net(database: &Database, id: NetworkId) -> Net {
    let network = &database.networks[id.index()];
    Net {
        id: Some(id),
        kind: network.kind,
        name: clean(&network.label.name),
        title: clean(network.label.display()),
        facts: network_facts(network),
        members: Vec::new(),
        leader: None,
        grade: grade(&network.label),
        channels: channels(database, id),
        terminators: Vec::new(),
        in_wiring: 0,
        star: None,
        branches: Vec::new(),
    }
}

fn unit(database: &Database, id: EcuId, on: Vec<usize>, shown: &[NetworkId]) -> Unit {
    let ecu = &database.ecus[id.index()];
    let mut facts = Vec::new();
    for attachment in ecu.on.iter().filter(|attachment| shown.contains(&attachment.network)) {
        facts.extend(attachment.address.map(|address| format!("address 0x{address:02X}")));
        facts.extend(attachment.ring_position.map(|position| format!("ring position {position}")));
    }
    facts.dedup();
    Unit {
        id: Some(id),
        name: clean(&ecu.label.name),
        title: clean(ecu.label.display()),
        on,
        facts,
        is_gateway: database.routes.iter().any(|route| route.gateway == id),
        is_star: false,
        is_optional: ecu.optional,
        grade: grade(&ecu.label),
        wires: Vec::new(),
    }
}

fn wires(database: &Database, unit_at: &[Option<usize>], units: &mut [Unit]) -> Vec<PlainWire> {
    let mut wires = Vec::new();
    for wire in &database.wires {
        let to: Vec<usize> = wire.to.iter().filter_map(|ecu| unit_at[ecu.index()]).collect();
        let (Some(from), false) = (unit_at[wire.from.index()], to.is_empty()) else { continue };
        for unit in std::iter::once(from).chain(to.iter().copied()) {
            if units[unit].wires.last() != Some(&wires.len()) {
                units[unit].wires.push(wires.len());
            }
        }
        wires.push(PlainWire { from, to, what: clean(&wire.what) });
    }
    wires
}

/// Puts the units of rings in the order of their places; those without one come last.
fn sort_rings(database: &Database, nets: &mut [Net], units: &[Unit]) {
    for net in nets.iter_mut().filter(|net| net.kind == NetworkKind::Most) {
        let leader = net.leader;
        let id = net.id;
        net.members.sort_by_key(|&unit| {
            let on = units[unit].id.map_or(&[][..], |unit| &database.ecus[unit.index()].on);
            let position = on.iter().find(|attachment| Some(attachment.network) == id).and_then(|it| it.ring_position);
            (Some(unit) != leader, position.is_none(), position, unit)
        });
    }
}

/// Units on no network get a place of their own.
fn add_lone(nets: &mut Vec<Net>, units: &mut [Unit]) {
    let lone: Vec<usize> = (0..units.len()).filter(|unit| units[*unit].on.is_empty()).collect();
    if lone.is_empty() {
        return;
    }
    for unit in &lone {
        units[*unit].on.push(nets.len());
    }
    nets.push(Net {
        id: None,
        kind: NetworkKind::Can,
        name: String::new(),
        title: "On no network".to_owned(),
        facts: String::new(),
        members: lone,
        leader: None,
        grade: None,
        channels: (false, false),
        terminators: Vec::new(),
        in_wiring: 0,
        star: None,
        branches: Vec::new(),
    });
}

fn grade(label: &Label) -> Option<Grade> {
    label.certainty.as_ref().map(|certainty| certainty.grade)
}

/// What a kind is called on a map.
pub(crate) fn kind_word(kind: NetworkKind) -> &'static str {
    match kind {
        NetworkKind::Can => "CAN",
        NetworkKind::CanFd => "CAN FD",
        NetworkKind::CanXl => "CAN XL",
        NetworkKind::Lin => "LIN",
        NetworkKind::Kline => "K-line",
        NetworkKind::Uart => "Single wire",
        NetworkKind::FlexRay => "FlexRay",
        NetworkKind::Most => "MOST ring",
        NetworkKind::Ethernet => "Ethernet",
    }
}

/// Kind and rates: `CAN FD 500 kbit/s, data 2 Mbit/s`.
#[must_use]
pub fn network_facts(network: &Network) -> String {
    let mut text = kind_word(network.kind).to_owned();
    if let Some(rate) = network.rate {
        text.push(' ');
        text.push_str(&rate_text(rate));
    }
    if let Some(rate) = network.data_rate {
        text.push_str(", data ");
        text.push_str(&rate_text(rate));
    }
    text
}

/// A rate in the largest unit in which it is a short number.
pub(crate) fn rate_text(rate: BitRate) -> String {
    let units = [(1_000_000_000, "Gbit/s"), (1_000_000, "Mbit/s"), (1_000, "kbit/s")];
    for (size, word) in units {
        if rate.0 >= size && (rate.0 % size * 1_000).is_multiple_of(size) {
            let thousandths = rate.0 % size * 1_000 / size;
            let fraction = if thousandths == 0 { String::new() } else { format!(".{thousandths:03}") };
            return format!("{}{} {word}", rate.0 / size, fraction.trim_end_matches('0'));
        }
    }
    format!("{} bit/s", rate.0)
}

/// The channels that the frames of a FlexRay network use; both where none says anything else.
fn channels(database: &Database, id: NetworkId) -> (bool, bool) {
    use wirelore_model::FlexRayChannels;
    let mut used = (false, false);
    let seen = database.frames.iter().flat_map(|frame| &frame.seen_on).filter(|seen| seen.network == id);
    for appearance in seen {
        if let Identifier::FlexRay { channels, .. } = &appearance.identifier {
            used.0 |= *channels != FlexRayChannels::B;
            used.1 |= *channels != FlexRayChannels::A;
        }
    }
    if used == (false, false) { (true, true) } else { used }
}
