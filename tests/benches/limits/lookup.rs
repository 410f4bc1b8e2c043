//! Identifiers to descriptions: the decoder's look-up against the standard library's hash map; and the ways that a session keeps of the
//! identifiers that turned up, which is what each frame of a recording costs.

use std::collections::HashMap;

#[allow(dead_code, unused_imports, reason = "its tests and some of its parts are used elsewhere")]
#[path = "../../../crates/decode/src/session/lanes.rs"]
mod lanes;

use lanes::{Lanes, Way};
use wirelore_decode::Decoder;
use wirelore_lang::check_text;
use wirelore_log::Channel;
use wirelore_model::NetworkId;
use wirelore_tests::workload::{Identifiers, Vehicle};

use crate::race::Race;
use crate::stage::{DESCRIBED, Stage};
use crate::table::{Goal, Row, Work};

/// Identifiers that are looked up in one run.
const KEYS: usize = 1_000_000;

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let few = |identifiers| Vehicle::<8>::new(DESCRIBED, identifiers);
    let many = Vehicle::<8>::new(5_000, Identifiers::Extended);
    [
        race(stage, "11 bits, 120 identifiers, as recorded", &few(Identifiers::Standard), recorded, (8.0, 4.0)),
        race(stage, "29 bits, 120 identifiers, as recorded", &few(Identifiers::Extended), recorded, (6.0, 3.0)),
        race(stage, "29 bits, 5,000 identifiers, at random", &many, at_random, (3.0, 1.5)),
    ]
    .into_iter()
    .flatten()
    .collect()
}

#[derive(Debug, Clone, Copy)]
struct Key {
    network: NetworkId,
    id: u32,
    extended: bool,
}

impl Key {
    fn of(vehicle: &Vehicle<8>, index: usize) -> Self {
        let frame = &vehicle.frames[index];
        Self { network: NetworkId(frame.network), id: frame.id, extended: frame.extended }
    }

    /// The channel that the network is recorded from.
    fn channel(self) -> Channel {
        Channel(self.network.0 as u16)
    }

    /// All of it in one half word, which hashes faster than a whole one: there are only three networks.
    fn packed(self) -> u32 {
        self.network.0 << 30 | u32::from(self.extended) << 29 | self.id
    }
}

/// The order in which frames are recorded.
fn recorded(vehicle: &Vehicle<8>) -> Vec<Key> {
    vehicle.traffic().take(KEYS).map(|sent| Key::of(vehicle, sent.frame.number as usize)).collect()
}

/// Any order.
fn at_random(vehicle: &Vehicle<8>) -> Vec<Key> {
    let mut state = 0x1234_5678_9ABC_DEF1_u64;
    let draw = |_| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        Key::of(vehicle, (state >> 33) as usize % vehicle.frames.len())
    };
    (0..KEYS).map(draw).collect()
}

fn race(
    stage: &Stage,
    measure: &str,
    vehicle: &Vehicle<8>,
    keys: fn(&Vehicle<8>) -> Vec<Key>,
    (reach, floor): (f64, f64),
) -> Vec<Row> {
    let database = check_text("lookup.lore", &vehicle.description()).database.expect("the workload has no mistakes");
    let decoder = Decoder::new(&database).expect("the workload can be decoded");
    let keys = keys(vehicle);
    let numbers = (0..vehicle.frames.len()).map(|index| (Key::of(vehicle, index).packed(), index as u32));
    let map: HashMap<u32, u32> = numbers.collect();
    let find = |key: &Key| decoder.find(key.network, key.id, key.extended).map_or(0, |frame| u64::from(frame.0));
    let lanes = learnt(&decoder, &keys);
    let way = |key: &Key| lanes.way(key.channel(), key.id, key.extended).table() as u64;
    let get = |key: &Key| map.get(&key.packed()).map_or(0, |frame| u64::from(*frame));
    assert!(keys.iter().all(|key| find(key) == get(key)));

    let add = |find: &dyn Fn(&Key) -> u64| keys.iter().fold(0_u64, |sum, key| sum.wrapping_add(find(key)));
    let (sum, sum_of_ways) = (add(&get), add(&way));
    let mut race = Race::default();
    let found = race.enter(measure, sum, || keys.iter().fold(0, |sum, key| sum + find(key)));
    let led = race.enter("ways", sum_of_ways, || keys.iter().fold(0, |sum, key| way(key).wrapping_add(sum)));
    let theirs = race.enter("hash map", sum, || keys.iter().fold(0, |sum, key| sum + get(key)));
    let times = race.run(stage.rounds);
    let work = Work { item: "look-up", items: KEYS as u64, bytes: 0 };
    let strangers = keys.iter().filter(|key| way(key) != get(key)).count();
    let note = format!("of 1,000 identifiers {:.0} are not kept and looked up", 1e3 * strangers as f64 / KEYS as f64);
    let rival = ("std HashMap", theirs);
    vec![
        Row::pair(
            work,
            &times,
            (&format!("identifier look-up: {measure}"), found),
            rival,
            Goal::Faster { reach, floor },
        ),
        Row::pair(
            work,
            &times,
            (&format!("identifier's way in a session: {measure}"), led),
            rival,
            Goal::Faster { reach, floor },
        )
        .with_note(note),
    ]
}

/// What a session has learnt after these identifiers.
fn learnt(decoder: &Decoder, keys: &[Key]) -> Lanes {
    let mut lanes = Lanes::default();
    for key in keys {
        if let Some(frame) = decoder.find(key.network, key.id, key.extended) {
            lanes.learn(key.channel(), key.id, key.extended, Way::to(frame.index(), false));
        }
    }
    lanes
}
