//! The recorder: runs the world, the senders, the buses and the gateway, and writes down what has passed.

use wirelore_log::{Channel, Frame, LinkType, write::PcapngWriter};
use wirelore_model::{Database, Identifier, NetworkId};

use super::DriveError;
use super::bus::{Bus, Message};
use super::content::RECORDED;
use super::encoder::Encoder;
use super::gateway::Gateway;
use super::sender::Sender;
use super::world::{STEP_NS, World};

/// The recorded networks; the channels have the same names.
pub const NETWORKS: [&str; 2] = ["drive", "comfort"];
/// When the recording begins: 2026-10-13 07:41:17.4 UTC, in nanoseconds since 1970.
pub const START_NS: u64 = 1_791_877_277_400_000_000;
/// How long it is.
pub(super) const STEPS: u64 = 60_000;

/// A finished recording.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recording {
    /// The file.
    pub pcapng: Vec<u8>,
    /// How many frames are in it.
    pub frames: usize,
    /// How many of them each network has.
    pub frames_by_network: Vec<(&'static str, usize)>,
}

/// A sender and where its frame goes.
struct Station<'a> {
    sender: Sender<'a>,
    message: Message,
    bus: usize,
}

struct Recorder<'a> {
    encoder: Encoder<'a>,
    networks: [NetworkId; 2],
    world: World,
    stations: Vec<Station<'a>>,
    buses: [Bus; 2],
    gateway: Gateway,
    passed: Vec<(usize, Message)>,
}

/// Makes the recording. The same description gives the same bytes, always.
///
/// # Errors
/// When the description lacks a network or a frame of the drive, or a value does not fit into its signal.
pub fn town_drive(database: &Database) -> Result<Recording, DriveError> {
    let mut recorder = Recorder::new(database)?;
    for step in 0..STEPS {
        recorder.step(step * STEP_NS)?;
    }
    recorder.write()
}

fn network(database: &Database, name: &str) -> Result<NetworkId, DriveError> {
    let found = database.network_named(name).map(|(id, _)| id);
    found.ok_or_else(|| DriveError::Missing { what: format!("network {name}") })
}

impl<'a> Recorder<'a> {
    fn new(database: &'a Database) -> Result<Self, DriveError> {
        let networks = [network(database, NETWORKS[0])?, network(database, NETWORKS[1])?];
        let rate = |id: NetworkId| database.networks[id.index()].rate.map_or(500_000, |rate| rate.0);
        let world = World::parked();
        let mut stations = Vec::new();
        for (seed, recorded) in RECORDED.iter().enumerate() {
            let missing = || DriveError::Missing {
                what: format!("frame {} on {} or {}", recorded.frame, NETWORKS[0], NETWORKS[1]),
            };
            let (frame_id, frame) = database.frame_named(recorded.frame).ok_or_else(missing)?;
            let home = frame.seen_on.first().ok_or_else(missing)?;
            let bus = networks.iter().position(|network| *network == home.network).ok_or_else(missing)?;
            let Identifier::Can { first, extended: false, .. } = home.identifier else {
                return Err(missing());
            };
            let message =
                Message { frame: frame_id, id: first as u16, payload: Vec::new(), values: Vec::new(), time_ns: 0 };
            stations.push(Station { sender: Sender::new(*recorded, frame, &world, 1000 + seed as u64), message, bus });
        }
        Ok(Self {
            encoder: Encoder::new(database),
            networks,
            world,
            stations,
            buses: [Bus::new(rate(networks[0]), 1), Bus::new(rate(networks[1]), 2)],
            gateway: Gateway::new(database, &networks, 3),
            passed: Vec::new(),
        })
    }

    fn step(&mut self, now_ns: u64) -> Result<(), DriveError> {
        self.world.step();
        for station in &mut self.stations {
            if let Some((time_ns, values)) = station.sender.step(now_ns, &mut self.world) {
                let payload = self.encoder.payload(station.message.frame, &values)?;
                self.buses[station.bus].offer(Message { payload, values, time_ns, ..station.message.clone() });
            }
        }
        for bus in 0..self.buses.len() {
            for message in self.buses[bus].run(now_ns + STEP_NS) {
                for (to, copy) in self.gateway.hear(&message, self.networks[bus], &self.encoder)? {
                    let other = usize::from(to == self.networks[1]);
                    self.buses[other].offer(copy);
                }
                self.passed.push((bus, message));
            }
        }
        Ok(())
    }

    fn write(mut self) -> Result<Recording, DriveError> {
        self.passed.sort_by_key(|(bus, message)| (message.time_ns, *bus));
        let mut log = PcapngWriter::new(Vec::new())?;
        let channels: Vec<Channel> =
            NETWORKS.iter().map(|name| log.add_channel(name, LinkType::Can)).collect::<Result<_, _>>()?;
        for (bus, message) in &self.passed {
            let time_ns = (START_NS + message.time_ns) as i64;
            log.write(&Frame::data(Some(time_ns), channels[*bus], message.id.into(), &message.payload))?;
        }
        let count = |bus: usize| self.passed.iter().filter(|(at, _)| *at == bus).count();
        Ok(Recording {
            pcapng: log.finish()?,
            frames: self.passed.len(),
            frames_by_network: vec![(NETWORKS[0], count(0)), (NETWORKS[1], count(1))],
        })
    }
}
