//! The demo recordings: are they the ones that their program makes, and do they behave as a van in town would?
//!
//! The relations and their tolerances are those of the trade: wheel speeds by track and wheelbase follow from geometry; the other ones
//! (the engine answers a torque request within 50 to 150 ms, the brake switch closes before the pressure rises, the second pedal track
//! is half of the first) are common practice, no source.

mod motion;
mod others;
mod series;
mod shifting;
mod traffic;

use std::fs;

use wirelore_tests::drive::{demo_folder, kestrel, other_networks, town_drive};

/// What the repository may carry.
const LARGEST_BYTES: usize = 400_000;

#[track_caller]
fn assert_committed(name: &str, made: &[u8]) {
    let path = demo_folder().join(name);
    let committed = fs::read(&path).expect("the demo recording is in the repository");
    let same = committed == made;
    assert!(same, "{} differs: make it anew with `cargo run -p wirelore-tests --bin demo-drive`", path.display());
    assert!(committed.len() < LARGEST_BYTES, "{} bytes", committed.len());
}

#[test]
fn committed_recording_is_the_one_that_its_program_makes() {
    let database = kestrel().expect("the demo description is free of mistakes");
    let made = town_drive(&database).expect("every value of the drive fits into the description");
    assert_committed("town-drive.pcapng", &made.pcapng);
}

#[test]
fn so_are_those_of_the_other_networks() {
    let database = kestrel().expect("the demo description is free of mistakes");
    let made = other_networks(&database).expect("every value of the drive fits into the description");
    for (name, bytes) in made.files() {
        assert_committed(name, bytes);
    }
}
