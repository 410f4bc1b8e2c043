//! The other networks of the same minute: the seat while it is adjusted, the suspension while the van brakes, the Ethernet backbone, the
//! entertainment ring, the line of the water heater, and a tester that asks the engine unit before the drive.
//!
//! One recorder writes packets, for the networks whose layout is published; the ring and the line are written as text.

mod backbone;
mod chassis_bus;
mod connection;
mod heater_line;
mod packets;
mod questions;
mod ring;
mod seat_bus;
mod tester;

use std::fmt::Write;

use wirelore_log::{Frame, Kind, LinkType, Medium, write::PcapngWriter};
use wirelore_model::{Database, Network};

use super::DriveError;
use super::encoder::Encoder;
use super::record::{START_NS, STEPS};
use super::world::{STEP_NS, World};

/// The channels of the packets; each has the name of its network.
const CHANNELS: [(&str, LinkType); 4] = [
    ("drive", LinkType::Can),
    ("seat", LinkType::Lin),
    ("chassis", LinkType::FlexRay),
    ("backbone", LinkType::Ethernet),
];

/// The finished recordings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OtherRecordings {
    /// Tester, seat, suspension and backbone.
    pub pcapng: Vec<u8>,
    /// The entertainment ring, a message a line.
    pub sound_csv: String,
    /// The line of the water heater, a byte a line.
    pub heater_csv: String,
}

impl OtherRecordings {
    /// The files, by their names in the folder of the demo vehicle.
    #[must_use]
    pub fn files(&self) -> [(&'static str, &[u8]); 3] {
        [
            ("town-drive-others.pcapng", &self.pcapng),
            ("town-drive-sound.csv", self.sound_csv.as_bytes()),
            ("town-drive-heater.csv", self.heater_csv.as_bytes()),
        ]
    }
}

/// A frame as its recorder takes it down.
#[derive(Debug, Clone)]
struct Packet {
    time_ns: u64,
    id: u32,
    kind: Kind,
    medium: Medium,
    payload: Vec<u8>,
}

/// A line of a text: when, and what stands behind the name of the network.
type Line = (u64, String);

/// Makes the recordings. The same description gives the same bytes, always.
///
/// # Errors
/// When the description lacks a network or a frame of the drive, or a value does not fit into its signal.
pub fn other_networks(database: &Database) -> Result<OtherRecordings, DriveError> {
    let encoder = Encoder::new(database);
    let mut world = World::parked();
    let mut tester = tester::Tester::new(encoder);
    let mut seat = seat_bus::SeatBus::new(database, encoder)?;
    let mut chassis = chassis_bus::ChassisBus::new(database, encoder)?;
    let mut backbone = backbone::Backbone::new(encoder);
    let mut ring = ring::Ring::new(encoder);
    let mut heater = heater_line::HeaterLine::new(database, encoder)?;
    for now_ns in (0..STEPS).map(|step| step * STEP_NS) {
        world.step();
        tester.step(now_ns, &world)?;
        seat.step(now_ns, &world)?;
        chassis.step(now_ns, &world)?;
        backbone.step(now_ns, &world)?;
        ring.step(now_ns, &world)?;
        heater.step(now_ns, &world)?;
    }
    Ok(OtherRecordings {
        pcapng: pcapng([tester.packets, seat.packets, chassis.packets, backbone.packets])?,
        sound_csv: text("sound", "time_s,channel,id,data", ring.lines),
        heater_csv: text("heater_line", "time_s,channel,data", heater.lines),
    })
}

fn network<'a>(database: &'a Database, name: &str) -> Result<&'a Network, DriveError> {
    let found = database.network_named(name).map(|(_, network)| network);
    found.ok_or_else(|| DriveError::Missing { what: format!("network {name}") })
}

/// How long a bit takes on a network, in nanoseconds.
fn bits_ns(network: &Network, bits: u64) -> Result<u64, DriveError> {
    let missing = || DriveError::Missing { what: format!("rate of the network {}", network.label.name) };
    network.rate.map(|rate| bits * 1_000_000_000 / rate.0).ok_or_else(missing)
}

fn pcapng(by_channel: [Vec<Packet>; 4]) -> Result<Vec<u8>, DriveError> {
    let mut log = PcapngWriter::new(Vec::new())?;
    let mut all = Vec::new();
    for ((name, link), packets) in CHANNELS.into_iter().zip(by_channel) {
        let channel = log.add_channel(name, link)?;
        all.extend(packets.into_iter().map(|packet| (channel, packet)));
    }
    all.sort_by_key(|(channel, packet)| (packet.time_ns, channel.0));
    for (channel, Packet { time_ns, id, kind, medium, payload }) in &all {
        let plain = Frame::data(Some((START_NS + time_ns) as i64), *channel, *id, payload);
        let frame = match medium {
            Medium::Can => plain,
            _ => Frame { kind: *kind, medium: *medium, extended: false, fd: false, dlc: None, ..plain },
        };
        log.write(&frame)?;
    }
    Ok(log.finish()?)
}

fn text(network: &str, header: &str, mut lines: Vec<Line>) -> String {
    lines.sort_by_key(|(time_ns, _)| *time_ns);
    let mut text = format!("{header}\n");
    for (time_ns, rest) in lines {
        let at_ns = START_NS + time_ns;
        let (seconds, fraction) = (at_ns / 1_000_000_000, at_ns % 1_000_000_000);
        let _ = writeln!(text, "{seconds}.{fraction:09},{network},{rest}");
    }
    text
}

/// Bytes as a text log has them.
fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::with_capacity(2 * bytes.len()), |mut text, byte| {
        let _ = write!(text, "{byte:02X}");
        text
    })
}
