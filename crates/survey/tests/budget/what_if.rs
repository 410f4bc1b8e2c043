//! Changed descriptions.

use wirelore_model::{BitRate, Database, EcuId, FrameId, NetworkId};
use wirelore_survey::budget::what_if::{MoveError, MoveNote, move_unit, set_rate};
use wirelore_survey::budget::{Budget, Figures};

use crate::support::{assert_near, described};

const TWO: &str = "network drive can 500 kbit/s
    network comfort can 125 kbit/s
    network ring most 25 Mbit/s
    ecu brakes on drive
    ecu engine on drive
    ecu radio on comfort
    ecu hub on drive, comfort
    frame speeds on drive id 0x1B4 {
        sent by brakes every 10 ms
        read by engine
        length 8
    }
    frame torque on drive id 0x0D0 {
        sent by engine every 20 ms
        read by brakes
        length 8
    }
    frame wish on comfort id 0x300 {
        sent by radio every 100 ms
        read by hub
        length 2
    }
    gateway hub {
        pass speeds from drive to comfort as id 0x3A0, within 5 ms
    }";

fn changed(change: impl FnOnce(&mut wirelore_model::Description)) -> Database {
    let mut description = described(TWO).into_description();
    change(&mut description);
    Database::new(description).expect("it is still whole")
}

/// Half the rate, twice the load.
#[test]
fn another_rate() {
    let database = changed(|it| set_rate(it, NetworkId(0), BitRate(250_000), None));
    let (before, after) = (Budget::of(&described(TWO)), Budget::of(&database));
    let least = |budget: &Budget| budget.networks[0].share.expect("there is a rate").least;
    assert_near(least(&after), 2.0 * least(&before));
}

/// The frame of the brakes goes to the other network, keeps the identifier that it had there, and is passed back to the engine; what the
/// brakes read is passed on to them.
#[test]
fn a_unit_moves() {
    let mut notes = Vec::new();
    let database = changed(|it| notes = move_unit(it, EcuId(0), NetworkId(1)).expect("it can move"));
    let hub = EcuId(3);
    assert_eq!(
        notes,
        [
            MoveNote::PassedBack { frame: FrameId(0), gateway: hub },
            MoveNote::PassedOn { frame: FrameId(1), gateway: hub }
        ]
    );
    let budget = Budget::of(&database);
    let ids = |network: usize| -> Vec<String> {
        let streams = budget.networks[network].streams.iter();
        streams.filter_map(|load| load.stream.rank).map(|rank| rank.to_string()).collect()
    };
    assert_eq!(ids(0), ["0x0D0", "0x1B4"]);
    assert_eq!(ids(1), ["0x0D0", "0x300", "0x3A0"]);
    assert_eq!(database.routes.len(), 2);
    assert!(budget.paths.iter().all(|path| path.total().is_some()));
}

/// Nothing moves where it would not be clear what that means.
#[test]
fn what_cannot_move() {
    let mut description = described(TWO).into_description();
    let before = description.clone();
    let mut refused = |unit, network| move_unit(&mut description, EcuId(unit), NetworkId(network)).err();
    assert_eq!(refused(0, 2), Some(MoveError::NotCan));
    assert_eq!(refused(0, 0), Some(MoveError::AlreadyThere));
    assert_eq!(refused(3, 0), Some(MoveError::AlreadyThere));
    assert_eq!(description, before);
}

#[test]
fn a_vehicle_in_numbers() {
    let figures = Figures::of(&described(TWO));
    assert_eq!((figures.units, figures.frames, figures.routes, figures.protected_frames), (4, 3, 1, 0));
    assert_eq!(figures.of_kind(wirelore_model::NetworkKind::Can), 2);
    let guarded = described(
        "network drive can 500 kbit/s
        frame f on drive id 0x100 {
            length 8
            signal alive in bits 6.3..6.0, counter 0..15
            signal check in byte 7, checksum crc8_sae_j1850 over bytes 0..6
        }
        frame g on drive id 0x101 {
            length 8
            signal count in bits 6.3..6.0, counter 0..15
        }",
    );
    let figures = Figures::of(&guarded);
    assert_eq!((figures.protected_frames, figures.protected_share()), (1, Some(0.5)));
}
