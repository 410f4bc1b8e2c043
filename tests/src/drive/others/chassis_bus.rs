//! The suspension network: one cycle after the other, each frame in its slot.

use wirelore_log::{FlexRay, Kind, Medium};
use wirelore_model::{Database, FlexRayChannels, Identifier};

use super::super::DriveError;
use super::super::content::{Values, number, word};
use super::super::encoder::Encoder;
use super::super::suspension::Cause;
use super::super::world::World;
use super::{Packet, bits_ns, network};

/// What is recorded: from before the brakes bite until they are let go.
const SPAN_NS: std::ops::Range<u64> = 24_000_000_000..26_500_000_000;
/// How long a static slot is, and a dynamic one that nobody uses.
const SLOT_NS: u64 = 40_000;
const MINISLOT_NS: u64 = 6_000;
/// In these slots are the frames by which the units find the beat.
const SYNC_SLOTS: [u16; 2] = [7, 12];
/// Above this pressure in bar the brake unit asks the dampers for help.
const ASKING_BAR: f64 = 4.0;

/// What a sender tells in its slot; `None`: nothing.
type Content = fn(&World, &Memory, u64) -> Option<Values>;

const CONTENT: &[(&str, Content)] = &[
    ("wheel_travel", wheel_travel),
    ("dive_request", dive_request),
    ("damper_currents", damper_currents),
    ("valves_front", valves_front),
    ("valves_rear", valves_rear),
    ("damping_change", damping_change),
];

/// What the senders remember of the cycle before.
struct Memory {
    damping: u8,
}

/// A frame and its place in time.
struct Turn {
    name: &'static str,
    content: Content,
    slot: u16,
    first_cycle: u64,
    repetition: u64,
    channels: FlexRayChannels,
    sent: u64,
}

/// The network.
pub(super) struct ChassisBus<'a> {
    encoder: Encoder<'a>,
    turns: Vec<Turn>,
    cycle_ns: u64,
    cycles: u64,
    static_slots: u16,
    static_bytes: usize,
    bit_ns: u64,
    memory: Memory,
    pub(super) packets: Vec<Packet>,
}

impl<'a> ChassisBus<'a> {
    pub(super) fn new(database: &'a Database, encoder: Encoder<'a>) -> Result<Self, DriveError> {
        let missing = |what: &str| DriveError::Missing { what: what.to_owned() };
        let chassis = network(database, "chassis")?;
        let timing = chassis.flexray.ok_or_else(|| missing("cycle of the network chassis"))?;
        let cycle = timing.cycle.ok_or_else(|| missing("cycle of the network chassis"))?;
        let slots = timing.static_slots.ok_or_else(|| missing("static slots of the network chassis"))?;
        let turns = CONTENT.iter().map(|&(name, content)| match *encoder.home(name)?.1 {
            Identifier::FlexRay { slot, first_cycle, repetition, channels } => {
                let (first_cycle, repetition) = (first_cycle.into(), repetition.into());
                Ok(Turn { name, content, slot, first_cycle, repetition, channels, sent: 0 })
            }
            _ => Err(missing(&format!("slot of {name}"))),
        });
        let mut turns = turns.collect::<Result<Vec<_>, _>>()?;
        turns.sort_by_key(|turn| turn.slot);
        Ok(Self {
            encoder,
            turns,
            cycle_ns: cycle.0,
            cycles: timing.cycles.into(),
            static_slots: slots.count,
            static_bytes: slots.bytes.into(),
            bit_ns: bits_ns(chassis, 1)?,
            memory: Memory { damping: 1 },
            packets: Vec::new(),
        })
    }

    pub(super) fn step(&mut self, now_ns: u64, world: &World) -> Result<(), DriveError> {
        if now_ns.is_multiple_of(self.cycle_ns) {
            if SPAN_NS.contains(&now_ns) {
                self.cycle(now_ns / self.cycle_ns, world)?;
            }
            self.memory.damping = world.suspension.damping();
        }
        Ok(())
    }

    fn cycle(&mut self, cycle: u64, world: &World) -> Result<(), DriveError> {
        let begin_ns = cycle * self.cycle_ns;
        let count = cycle % self.cycles;
        for turn in self.turns.iter_mut().filter(|turn| count % turn.repetition == turn.first_cycle) {
            let is_static = turn.slot <= self.static_slots;
            let (kind, payload) = match (turn.content)(world, &self.memory, turn.sent) {
                Some(values) => (Kind::Data, self.encoder.named(turn.name, &values)?.1),
                None if is_static => (Kind::Null, vec![0; self.static_bytes]),
                None => continue,
            };
            turn.sent += u64::from(kind == Kind::Data);
            let in_order = u64::from(turn.slot.min(self.static_slots + 1) - 1) * SLOT_NS
                + u64::from(turn.slot.saturating_sub(self.static_slots + 1)) * MINISLOT_NS;
            // Ten bits a byte, five bytes of header and three of check sequence, start and end (FlexRay 2.1A, from memory).
            let bits = 10 * (payload.len() as u64 + 8) + 11;
            let time_ns = begin_ns + in_order + bits * self.bit_ns;
            let is_sync = SYNC_SLOTS.contains(&turn.slot);
            let on = |on_b| {
                let header =
                    FlexRay { cycle: count as u8, on_b, sync: is_sync, startup: is_sync, ..FlexRay::default() };
                let medium = Medium::FlexRay(header);
                Packet { time_ns, id: turn.slot.into(), kind, medium, payload: payload.clone() }
            };
            match turn.channels {
                FlexRayChannels::A => self.packets.push(on(false)),
                FlexRayChannels::B => self.packets.push(on(true)),
                FlexRayChannels::Both => self.packets.extend([on(false), on(true)]),
            }
        }
        Ok(())
    }
}

fn wheel_travel(world: &World, _memory: &Memory, sent: u64) -> Option<Values> {
    const TRAVELS: [&str; 4] = ["travel[1]", "travel[2]", "travel[3]", "travel[4]"];
    const LIFTS: [&str; 4] = ["lift[1]", "lift[2]", "lift[3]", "lift[4]"];
    let suspension = &world.suspension;
    let travels = TRAVELS.into_iter().zip(suspension.travel_mm);
    let lifts = LIFTS.into_iter().zip(suspension.lift_mm_per_s);
    let mut values: Values = travels.chain(lifts).map(|(name, value)| number(name, value)).collect();
    values.push(number("travel_alive", (sent % 256) as f64));
    Some(values)
}

fn dive_request(world: &World, _memory: &Memory, sent: u64) -> Option<Values> {
    let bar = world.chassis.pressure_bar;
    (bar > ASKING_BAR).then(|| {
        vec![
            number("dive_level", (bar * 2.5).min(100.0)),
            number("brake_demand", bar),
            number("dive_alive", (sent % 16) as f64),
        ]
    })
}

fn damper_currents(world: &World, _memory: &Memory, sent: u64) -> Option<Values> {
    const CURRENTS: [&str; 4] = ["current[1]", "current[2]", "current[3]", "current[4]"];
    let currents = CURRENTS.into_iter().zip(world.suspension.current_a);
    let mut values: Values = currents.map(|(name, ampere)| number(name, ampere)).collect();
    values.extend([word("damping", world.suspension.damping()), number("currents_alive", (sent % 256) as f64)]);
    Some(values)
}

fn valves_front(world: &World, _memory: &Memory, _sent: u64) -> Option<Values> {
    let [left, right, ..] = world.suspension.valve_c;
    Some(vec![number("front_valve[1]", left), number("front_valve[2]", right)])
}

fn valves_rear(world: &World, _memory: &Memory, _sent: u64) -> Option<Values> {
    let [.., left, right] = world.suspension.valve_c;
    Some(vec![number("rear_valve[1]", left), number("rear_valve[2]", right)])
}

fn damping_change(world: &World, memory: &Memory, _sent: u64) -> Option<Values> {
    let now = world.suspension.damping();
    let because: Cause = world.suspension.cause;
    (now != memory.damping)
        .then(|| vec![word("damping_before", memory.damping), word("damping_now", now), word("because", because as u8)])
}
