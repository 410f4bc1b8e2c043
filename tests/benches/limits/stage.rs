//! What the contenders work on: the vehicle, its description, its recordings in a temporary folder, and what the slow path makes of them.

use std::cell::OnceCell;
use std::fs::{self, File};
use std::io::BufWriter;
use std::num::NonZero;
use std::path::{Path, PathBuf};

use tempfile::TempDir;
use wirelore_decode::Decoder;
use wirelore_lang::check_text;
use wirelore_model::Database;
use wirelore_tests::workload::{Identifiers, START_NS, Sent, Vehicle};

use crate::columns_out::Job;
use crate::machine::Mapped;

/// Signals a frame.
pub(crate) const SIGNALS: usize = 8;
/// Frames that are described.
pub(crate) const DESCRIBED: u32 = 120;

pub(crate) struct Stage {
    /// Fewer frames and rounds.
    pub(crate) quick: bool,
    pub(crate) rounds: usize,
    pub(crate) vehicle: Vehicle<SIGNALS>,
    pub(crate) database: Database,
    pub(crate) decoder: Decoder,
    folder: TempDir,
    whole: OnceCell<Recordings>,
    part: OnceCell<Recordings>,
}

/// The same traffic as pcapng and as text.
pub(crate) struct Recordings {
    pub(crate) frames: u64,
    pub(crate) pcapng: Recorded,
    pub(crate) text: Recorded,
    /// What the values add up to, see [`add_value`].
    pub(crate) value_sum: u64,
}

pub(crate) struct Recorded {
    pub(crate) path: PathBuf,
    pub(crate) map: Mapped,
    /// What the frames add up to, see [`add_frame`].
    pub(crate) frame_sum: u64,
}

impl Stage {
    pub(crate) fn new(quick: bool) -> Self {
        let vehicle = Vehicle::new(DESCRIBED, Identifiers::Standard);
        let text = vehicle.description();
        let database = check_text("workload.lore", &text).database.expect("the workload has no mistakes");
        let decoder = Decoder::new(&database).expect("the workload can be decoded");
        let folder = tempfile::tempdir().expect("there is a folder for temporary files");
        fs::write(folder.path().join("workload.lore"), text).expect("the temporary folder can be written to");
        Self {
            quick,
            rounds: if quick { 3 } else { 11 },
            vehicle,
            database,
            decoder,
            folder,
            whole: OnceCell::new(),
            part: OnceCell::new(),
        }
    }

    /// Decoding a recording into columns, with so many threads.
    pub(crate) fn job(&self, threads: usize) -> Job<'_> {
        let threads = NonZero::new(threads).expect("at least one thread");
        Job { database: &self.database, decoder: &self.decoder, threads }
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub(crate) fn description(&self) -> PathBuf {
        self.path("workload.lore")
    }

    /// Four million frames.
    pub(crate) fn whole(&self) -> &Recordings {
        let frames = if self.quick { 400_000 } else { 4_000_000 };
        self.whole.get_or_init(|| Recordings::write(&self.vehicle, frames, self.folder.path(), "whole"))
    }

    /// A million frames, where a run would else take seconds.
    pub(crate) fn part(&self) -> &Recordings {
        let frames = if self.quick { 100_000 } else { 1_000_000 };
        self.part.get_or_init(|| Recordings::write(&self.vehicle, frames, self.folder.path(), "part"))
    }
}

impl Recordings {
    fn write(vehicle: &Vehicle<SIGNALS>, frames: u64, folder: &Path, name: &str) -> Self {
        let paths = ["pcapng", "csv"].map(|ending| folder.join(format!("{name}.{ending}")));
        let [pcapng, text] = paths.each_ref().map(|path| {
            BufWriter::with_capacity(1 << 20, File::create(path).expect("the temporary folder can be written to"))
        });
        let (mut frame_sum, mut value_sum) = (0, 0);
        let each = |sent: &Sent<'_, SIGNALS>| {
            let payload = sent.frame.payload(sent.word);
            add_frame(&mut frame_sum, sent.time_ns, sent.frame.network as u16, sent.frame.id, &payload);
            for signal in &sent.frame.signals {
                add_value(&mut value_sum, signal.value(sent.word));
            }
        };
        vehicle.record(frames, pcapng, text, each).expect("the temporary folder has room");
        let [pcapng, text] = paths;
        let since_1970 = frame_sum.wrapping_add((START_NS as u64).wrapping_mul(frames));
        Self {
            frames,
            pcapng: Recorded { map: Mapped::open(&pcapng), path: pcapng, frame_sum: since_1970 },
            text: Recorded { map: Mapped::open(&text), path: text, frame_sum },
            value_sum,
        }
    }

    /// How many values the frames have.
    pub(crate) fn values(&self) -> u64 {
        self.frames * SIGNALS as u64
    }
}

/// Uses all fields of a frame. Sums do not depend on the order.
#[inline]
pub(crate) fn add_frame(sum: &mut u64, time_ns: i64, channel: u16, id: u32, payload: &[u8]) {
    let bytes = payload.first_chunk().map_or(0, |bytes| u64::from_le_bytes(*bytes));
    let fields = u64::from(channel) << 32 | u64::from(id);
    *sum = sum.wrapping_add(time_ns as u64).wrapping_add(fields).wrapping_add(bytes);
}

/// Uses a value to its last bit.
#[inline]
pub(crate) fn add_value(sum: &mut u64, value: f64) {
    *sum = sum.wrapping_add(value.to_bits());
}
