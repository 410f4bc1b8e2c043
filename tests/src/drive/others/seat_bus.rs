//! The seat's sub-bus: its commander goes through the schedule as long as somebody adjusts the seat.

use wirelore_bits::lin;
use wirelore_log::{Kind, Lin, LinChecksum, Medium};
use wirelore_model::{Database, FrameId, Identifier};

use super::super::DriveError;
use super::super::content::{Values, number, word};
use super::super::encoder::Encoder;
use super::super::world::{STEP_NS, World};
use super::{Packet, bits_ns, network};
use crate::noise::Noise;

/// When a motor's switch wakes the bus.
const WOKEN_NS: u64 = 880_000_000;
/// The commander waits so long before its first header (LIN 2.2A, section 2.6.2, from memory: within 150 ms).
const WAKING_NS: u64 = 100_000_000;
/// When it sends everybody to sleep.
const SLEEP_NS: u64 = 5_200_000_000;
/// How late a header begins in its slot.
const JITTER_NS: u64 = 120_000;
/// What a recording says of a wake-up, and of a bus that was told to sleep (public link-type registry, LINKTYPE_LIN).
const WAKE_UP: u32 = 0xB0B0_0004;
const TOLD_TO_SLEEP: u32 = 0xB0B0_0001;

/// What a unit answers with.
type Content = fn(&World) -> Values;

/// All that answer. The lumbar support is not fitted: nobody answers for it.
const CONTENT: &[(&str, Content)] = &[
    ("seat_command", seat_command),
    ("height_state", height_state),
    ("backrest_state", backrest_state),
    ("heater_state", heater_state),
];

/// A turn of the schedule.
struct Turn {
    name: String,
    id: u8,
    takes_ns: u64,
}

/// The bus.
pub(super) struct SeatBus<'a> {
    encoder: Encoder<'a>,
    turns: Vec<Turn>,
    bit_times: [u64; 9],
    next: usize,
    turn_ns: u64,
    noise: Noise,
    pub(super) packets: Vec<Packet>,
}

impl<'a> SeatBus<'a> {
    pub(super) fn new(database: &'a Database, encoder: Encoder<'a>) -> Result<Self, DriveError> {
        let missing = |what: &str| DriveError::Missing { what: what.to_owned() };
        let schedule = database.schedules.first().ok_or_else(|| missing("schedule of the seat"))?;
        let turn = |id: FrameId, takes_ns: u64| {
            let frame = &database.frames[id.index()];
            match frame.seen_on.first().map(|seen| &seen.identifier) {
                Some(Identifier::Lin { id, .. }) => Ok(Turn { name: frame.label.name.clone(), id: *id, takes_ns }),
                _ => Err(missing("identifier of a frame of the seat")),
            }
        };
        let turns = schedule.slots.iter().map(|slot| match (slot.content.frames(), slot.takes) {
            ([frame], Some(takes)) => turn(*frame, takes.0),
            _ => Err(missing("length of a slot of the seat")),
        });
        let seat = network(database, "seat")?;
        let mut bit_times = [0; 9];
        for (bytes, time_ns) in (0..).zip(&mut bit_times) {
            // Header, data and checksum (LIN 2.2A, section 2.3.2).
            *time_ns = bits_ns(seat, if bytes == 0 { 34 } else { 34 + 10 * (bytes + 1) })?;
        }
        let packets = vec![signal(WOKEN_NS, WAKE_UP)];
        Ok(Self {
            encoder,
            turns: turns.collect::<Result<_, _>>()?,
            bit_times,
            next: 0,
            turn_ns: WOKEN_NS + WAKING_NS,
            noise: Noise::new(0x7365_6174),
            packets,
        })
    }

    pub(super) fn step(&mut self, now_ns: u64, world: &World) -> Result<(), DriveError> {
        while self.turn_ns < now_ns + STEP_NS && self.turn_ns < SLEEP_NS {
            let turn = &self.turns[self.next % self.turns.len()];
            let content = CONTENT.iter().find(|(name, _)| *name == turn.name);
            let payload = match content {
                Some((name, values)) => self.encoder.named(name, &values(world))?.1,
                None => Vec::new(),
            };
            let late_ns = self.noise.up_to(JITTER_NS);
            self.packets.push(frame(self.turn_ns + late_ns + self.bit_times[payload.len()], turn.id, payload));
            self.turn_ns += turn.takes_ns;
            self.next += 1;
            if self.turn_ns >= SLEEP_NS {
                self.go_to_sleep();
            }
        }
        Ok(())
    }

    /// LIN 2.2A, section 2.6.3: the first byte is 0, the others are FF.
    fn go_to_sleep(&mut self) {
        let end_ns = self.turn_ns + self.bit_times[8];
        let request = vec![0x00, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF];
        self.packets.push(frame(end_ns, lin::MASTER_REQUEST, request));
        self.packets.push(signal(end_ns + 1_000_000, TOLD_TO_SLEEP));
    }
}

fn frame(time_ns: u64, id: u8, payload: Vec<u8>) -> Packet {
    let kind = if payload.is_empty() { Kind::Unanswered } else { Kind::Data };
    let checksum = if id >= lin::FIRST_CLASSIC_ID { LinChecksum::Classic } else { LinChecksum::Enhanced };
    let medium = Medium::Lin(Lin { checksum_kind: Some(checksum), ..Lin::default() });
    Packet { time_ns, id: id.into(), kind, medium, payload }
}

fn signal(time_ns: u64, id: u32) -> Packet {
    Packet { time_ns, id, kind: Kind::Signal, medium: Medium::Lin(Lin::default()), payload: Vec::new() }
}

fn seat_command(world: &World) -> Values {
    let hands = &world.hands;
    vec![
        word("height_motion", hands.seat_height),
        word("backrest_motion", hands.seat_backrest),
        word("heating", hands.seat_heating),
        number("supply", world.body.battery_v - 0.2),
        number("lumbar_goal", 40.0),
    ]
}

fn height_state(world: &World) -> Values {
    vec![
        number("height", world.seat.height_mm),
        number("height_current", world.seat.height_a),
        word("height_motor", world.hands.seat_height),
        word("height_error", 0),
    ]
}

fn backrest_state(world: &World) -> Values {
    vec![
        number("backrest", world.seat.backrest_deg),
        number("backrest_current", world.seat.backrest_a),
        word("backrest_motor", world.hands.seat_backrest),
        word("backrest_error", 0),
    ]
}

fn heater_state(world: &World) -> Values {
    vec![
        number("cushion", world.seat.cushion_c),
        number("heater_current", world.seat.heater_a),
        word("heater_step", world.hands.seat_heating),
        word("heater_error", 0),
    ]
}
