//! The Ethernet backbone: events, positions, a tester over IP, and a telematics unit that asks what happened.

use wirelore_log::{Kind, Medium};
use wirelore_model::Identifier;
use wirelore_transport::{doip, someip};

use super::super::DriveError;
use super::super::content::{Value, number, word};
use super::super::encoder::Encoder;
use super::super::world::{STEP_NS, World};
use super::Packet;
use super::connection::{Connection, Side};
use super::packets::{End, HUB, TELEMATICS, TESTER, arp_answer, arp_question, datagram};
use super::questions::{EXCHANGES, exchange};
use crate::noise::Noise;

/// The telematics unit looks for the gateway.
const ARP_NS: u64 = 310_000_000;
/// The events: the first one, and how often.
const STATE_NS: (u64, u64) = (402_000_000, 200_000_000);
/// The positions.
const POSITION_NS: (u64, u64) = (755_000_000, 1_000_000_000);
/// The tester over IP begins.
const DIAGNOSIS_NS: u64 = 1_420_000_000;
/// The telematics unit asks what happened, after somebody has braked.
const ASKING_NS: u64 = 30_050_000_000;
/// How many of the last speeds it wants, and how far apart they are kept.
const PAST_SPEEDS: usize = 120;
const PAST_EVERY_NS: u64 = 100_000_000;

/// The virtual network of what is told to all.
const VLAN: u16 = 5;
const EVENT_PORT: u16 = 30_501;
const SERVICE_PORT: u16 = 30_510;
/// The longest piece of a message in one segment.
const PIECE_BYTES: usize = 100;
/// The telematics unit's number as a client.
const CLIENT: u16 = 0x0020;

/// The backbone.
pub(super) struct Backbone<'a> {
    encoder: Encoder<'a>,
    states: u64,
    /// Speeds of the past, the oldest first, km/h.
    past_kmh: Vec<f64>,
    noise: Noise,
    numbers: u16,
    pub(super) packets: Vec<Packet>,
}

impl<'a> Backbone<'a> {
    pub(super) fn new(encoder: Encoder<'a>) -> Self {
        let noise = Noise::new(0x6261_636B);
        Self { encoder, states: 0, past_kmh: Vec::new(), noise, numbers: 0x2000, packets: Vec::new() }
    }

    pub(super) fn step(&mut self, now_ns: u64, world: &World) -> Result<(), DriveError> {
        if now_ns.is_multiple_of(PAST_EVERY_NS) {
            self.past_kmh.push(world.chassis.speed_kmh());
        }
        let is_due = |(first, every): (u64, u64)| now_ns >= first && (now_ns - first).is_multiple_of(every);
        if now_ns == ARP_NS {
            self.push(now_ns, arp_question(TELEMATICS, HUB.ip));
            self.push(now_ns + STEP_NS, arp_answer(HUB, TELEMATICS));
        }
        if is_due(STATE_NS) {
            self.vehicle_state(now_ns, world)?;
        }
        if is_due(POSITION_NS) {
            self.position(now_ns, world)?;
        }
        if now_ns == DIAGNOSIS_NS {
            self.diagnosis(now_ns, world)?;
        }
        if now_ns == ASKING_NS {
            self.asking(now_ns)?;
        }
        Ok(())
    }

    fn vehicle_state(&mut self, now_ns: u64, world: &World) -> Result<(), DriveError> {
        let values = [
            number("speed", world.chassis.speed_kmh()),
            number("yaw", world.chassis.yaw_deg_per_s()),
            number("way", world.chassis.distance_m),
            word("gear", world.gearbox.told(world.gearbox.gear)),
            number("state_alive", (self.states % 256) as f64),
        ];
        self.states += 1;
        let message = self.service("vehicle_state", &values, 0)?;
        let (from, to) = (End { host: HUB, port: EVENT_PORT }, End { host: TELEMATICS, port: EVENT_PORT });
        self.datagram(now_ns, from, to, Some(VLAN), &message);
        Ok(())
    }

    fn position(&mut self, now_ns: u64, world: &World) -> Result<(), DriveError> {
        let values = [
            number("north", world.place.north_m),
            number("east", world.place.east_m),
            number("direction", world.place.turned_deg),
            number("satellites", 11.0 + self.noise.up_to(3) as f64),
        ];
        let (identifier, payload) = self.encoder.named("position", &values)?;
        let &Identifier::Port { port, .. } = identifier else {
            return Err(DriveError::Missing { what: "port of position".to_owned() });
        };
        self.datagram(now_ns, End { host: TELEMATICS, port: 51_200 }, End { host: HUB, port }, None, &payload);
        Ok(())
    }

    /// A tester is let in and asks what the other one asks on CAN. What is confirmed and what is answered come in one segment.
    fn diagnosis(&mut self, now_ns: u64, world: &World) -> Result<(), DriveError> {
        let (client, server) = (End { host: TESTER, port: 49_320 }, End { host: HUB, port: doip::PORT });
        let mut connection = Connection::open(client, server, now_ns);
        let asked = [number("tester_address", f64::from(0x0E00_u16)), word("activation", 0)];
        connection.send(Side::Client, &self.doip("let_me_in", &asked)?, usize::MAX);
        let granted = [
            number("asking_tester", f64::from(0x0E00_u16)),
            number("entity", f64::from(0x1010_u16)),
            word("entrance", 0x10),
        ];
        connection.wait(4_000_000);
        connection.send(Side::Server, &self.doip("you_are_in", &granted)?, usize::MAX);
        for number in 0..EXCHANGES {
            let exchange = exchange(number, world, "ip_");
            connection.wait(30_000_000);
            connection.send(Side::Client, &self.doip("questions_over_ip", &exchange.question)?, usize::MAX);
            let taken = self.doip("taken_on", &[("acknowledged", Value::State(0))])?;
            let answer = self.doip("answers_over_ip", &exchange.answer)?;
            connection.wait(7_000_000);
            connection.send(Side::Server, &[taken, answer].concat(), usize::MAX);
            connection.confirm(Side::Client);
        }
        connection.wait(20_000_000);
        self.take_down(connection);
        Ok(())
    }

    /// The answer is longer than a segment, and one of its segments is seen twice; the two wishes behind it fit into one.
    fn asking(&mut self, now_ns: u64) -> Result<(), DriveError> {
        let (client, server) = (End { host: TELEMATICS, port: 50_312 }, End { host: HUB, port: SERVICE_PORT });
        let mut connection = Connection::open(client, server, now_ns);
        let question = self.service("speeds_question", &[number("wanted_speeds", PAST_SPEEDS as f64)], 1)?;
        connection.send(Side::Client, &question, usize::MAX);
        let past_kmh = &self.past_kmh[self.past_kmh.len().saturating_sub(PAST_SPEEDS)..];
        let count = ("speeds".to_owned(), Value::Number(past_kmh.len() as f64));
        let speeds = (1..).zip(past_kmh).map(|(at, kmh)| (format!("past_speed[{at}]"), Value::Number(*kmh)));
        let answer: Vec<(String, Value)> = std::iter::once(count).chain(speeds).collect();
        connection.wait(5_000_000);
        connection.send(Side::Server, &self.service("speeds_answer", &answer, 1)?, PIECE_BYTES);
        connection.repeat_last_but_one();
        connection.confirm(Side::Client);

        let wish = |side, warmth| [word("side", side), number("wished_warmth", warmth)];
        let wishes =
            [self.service("set_cab_target", &wish(0, 21.5), 2)?, self.service("set_cab_target", &wish(1, 20.0), 3)?];
        connection.wait(60_000_000);
        connection.send(Side::Client, &wishes.concat(), usize::MAX);
        let done = [word("answered_side", 0), number("set_warmth", 21.5)];
        let refused = [word("because", 1)];
        let answers = [self.service("cab_target_set", &done, 2)?, self.service("cab_target_refused", &refused, 3)?];
        connection.wait(9_000_000);
        connection.send(Side::Server, &answers.concat(), usize::MAX);
        connection.confirm(Side::Client);
        self.take_down(connection);
        Ok(())
    }

    /// A message of a service.
    fn service<N: AsRef<str>>(&self, frame: &str, values: &[(N, Value)], session: u16) -> Result<Vec<u8>, DriveError> {
        let (identifier, payload) = self.encoder.named(frame, values)?;
        let &Identifier::SomeIp { service, method, message_type } = identifier else {
            return Err(DriveError::Missing { what: format!("service of {frame}") });
        };
        let kind = message_type.map_or(someip::MessageKind::Notification, |byte| someip::MessageKind::of_byte(byte).0);
        let client = if session == 0 { 0 } else { CLIENT };
        // "Not ok" (AUTOSAR PRS SOME/IP Protocol, return codes).
        let return_code = u8::from(kind == someip::MessageKind::Error);
        let header = someip::Header {
            service,
            method,
            client,
            session,
            interface_version: 1,
            kind,
            segmented: false,
            return_code,
        };
        let mut bytes = Vec::new();
        let is_written = someip::Message { header, payload: &payload }.write(&mut bytes);
        if is_written { Ok(bytes) } else { Err(DriveError::Missing { what: format!("room for {frame}") }) }
    }

    /// A message of DoIP, of the edition of 2012.
    fn doip<N: AsRef<str>>(&self, frame: &str, values: &[(N, Value)]) -> Result<Vec<u8>, DriveError> {
        let (identifier, bytes) = self.encoder.named(frame, values)?;
        let &Identifier::DoIp { payload_type, source, target } = identifier else {
            return Err(DriveError::Missing { what: format!("payload type of {frame}") });
        };
        let addresses: Vec<u8> = match payload_type {
            0x8001 => [source, target].into_iter().flatten().flat_map(u16::to_be_bytes).collect(),
            0x8002 => [0x10, 0x10, 0x0E, 0x00].to_vec(),
            _ => Vec::new(),
        };
        let bytes = [addresses, bytes].concat();
        let mut message = Vec::new();
        let payload = doip::Payload::Other { payload_type, bytes: &bytes };
        let is_written = doip::Message { version: 2, payload }.write(&mut message);
        if is_written { Ok(message) } else { Err(DriveError::Missing { what: format!("room for {frame}") }) }
    }

    fn datagram(&mut self, now_ns: u64, from: End, to: End, vlan: Option<u16>, payload: &[u8]) {
        self.numbers += 1;
        let late_ns = self.noise.up_to(150_000);
        self.push(now_ns + late_ns, datagram(from, to, vlan, self.numbers, payload));
    }

    fn take_down(&mut self, connection: Connection) {
        for (time_ns, packet) in connection.close() {
            self.push(time_ns, packet);
        }
    }

    fn push(&mut self, time_ns: u64, payload: Vec<u8>) {
        self.packets.push(Packet { time_ns, id: 0, kind: Kind::Data, medium: Medium::Ethernet, payload });
    }
}
