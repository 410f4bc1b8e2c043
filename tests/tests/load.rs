//! The load of a real network, as it was recorded. Skipped aloud where the recording is not there.

use wirelore_decode::{BindMap, Decoder};
use wirelore_lang::check_text;
use wirelore_log::{Options, Recording};
use wirelore_survey::budget::measure::Meter;
use wirelore_tests::readings::shared_recording;

/// A heavy truck on the road, 30 s, 29-bit identifiers at 250 kbit/s. What is known of the recording (it comes with it): without stuff bits
/// 35 % of the time, 40 % in the busiest second. By hand: 19,957 frames of 8 bytes with 131 bits each are 34.9 % of 30.0 s.
///
/// The bound of Davis, Burns, Bril, Lukkien (2007) is 160 bits for such a frame. Nolte, Hansson, Norström, Punnekkat (2001) found recorded
/// frames about 10 % shorter than it.
#[test]
fn a_heavy_truck_fills_a_third_of_its_network() {
    let Some(path) = shared_recording("heavy-truck-drive.csv") else { return };
    let text = "network truck can 250 kbit/s\nframe engine on truck pgn 61444\nframe speed on truck pgn 65265\n";
    let database = check_text("truck.lore", text).database.expect("the text has no mistakes");
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let mut meter = Meter::new(&database, &decoder, &BindMap::default()).expect("there is a network");
    let mut recording = Recording::open(&path, &Options::default()).expect("it can be opened");
    meter.log(&mut recording, |_| {}).expect("it can be read");
    let (networks, tally) = meter.finish();
    let [truck] = networks.as_slice() else { panic!("one network") };

    assert_eq!((tally.read, tally.counted, truck.frames), (19_957, 19_957, 19_957));
    assert_eq!(truck.identifiers.len(), 90);
    let described: u64 = truck.identifiers.iter().filter(|id| id.frame.is_some()).map(|id| id.frames).sum();
    assert!(described > 0 && described < 19_957);
    assert_eq!(truck.identifiers.iter().map(|id| id.bits).sum::<u64>(), truck.bits);

    let (share, bare) = truck.share.expect("the rate is described");
    assert!((bare - 0.349).abs() < 0.002, "{bare}");
    let second = truck.busiest_second.expect("it is long enough");
    assert!((second.bare_share - 0.40).abs() < 0.01, "{}", second.bare_share);
    let of_bound = truck.bits as f64 / (19_957.0 * 160.0);
    println!(
        "load {share:.4}, without stuff bits {bare:.4}; busiest second {:.4}; {of_bound:.4} of the bound",
        second.share
    );
    assert!(bare < share && (0.82..0.95).contains(&of_bound), "{of_bound}");
}
