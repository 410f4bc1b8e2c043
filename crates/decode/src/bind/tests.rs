//! Decisions about channels.

use wirelore_model::{Identifier, NetworkKind, SeenId};

use super::*;
use crate::testing::*;

/// Two networks that can be decoded, and one that cannot.
fn two_networks(drive: &[u32], comfort: &[u32]) -> Decoder {
    let networks = vec![
        network("drive", NetworkKind::Can),
        network("comfort", NetworkKind::CanFd),
        network("seat", NetworkKind::Lin),
    ];
    let mut frames = Vec::new();
    for (network, ids) in [(0, drive), (1, comfort)] {
        for (at, &number) in ids.iter().enumerate() {
            let mut described = frame(&format!("f{network}_{at}"), id(number), Vec::new());
            described.seen_on[0].network = NetworkId(network);
            frames.push(described);
        }
    }
    Decoder::new(&database(networks, frames)).expect("a decoder")
}

fn evidence(ids: impl IntoIterator<Item = u32>) -> Evidence {
    let mut evidence = Evidence::default();
    ids.into_iter().for_each(|id| evidence.add(SeenId::Can { id, extended: id > 0x7FF }));
    evidence
}

fn judged(decoder: &Decoder, ids: impl IntoIterator<Item = u32>) -> Result<Decision, SessionError> {
    Binder::by_identifiers(decoder, ("can0", true), |_| false, &evidence(ids))
}

#[test]
fn the_text_of_a_binding_is_read_strictly() {
    let map = BindMap::parse("can0=drive, can 1 = comfort").expect("two pairs");
    let pair = |channel: &str, network: &str| (channel.to_owned(), network.to_owned());
    assert_eq!(map.pairs, [pair("can0", "drive"), pair("can 1", "comfort")]);
    let error = |text| BindMap::parse(text).expect_err("not in order").to_string();
    assert_eq!(
        error("can0"),
        "cannot understand `can0` in the binding: write CHANNEL=NETWORK, several with commas, such as can0=drive,can1=comfort"
    );
    assert!(error("can0=drive,").starts_with("cannot understand ``"));
    assert!(error("=drive").starts_with("cannot understand `=drive`"));
    assert_eq!(error("a=drive,a=comfort"), "channel `a` is bound twice; a channel is one network");
}

#[test]
fn networks_are_looked_at_when_the_session_begins() {
    let decoder = two_networks(&[1], &[2]);
    let error =
        |text| Binder::new(&decoder, &BindMap::parse(text).expect("a pair")).expect_err("not there").to_string();
    assert_eq!(error("can0=drvie"), "there is no network `drvie` in the description; did you mean `drive`?");
    assert_eq!(error("can0=x"), "there is no network `x` in the description; there are `drive`, `comfort`");
    assert_eq!(error("drive=1"), "there is no network `1` in the description; the channel comes first: 1=drive");
    let empty = Decoder::new(&database(vec![network("seat", NetworkKind::Lin)], vec![])).expect("a decoder");
    let error = Binder::new(&empty, &BindMap::default()).expect_err("nothing to decode").to_string();
    assert_eq!(
        error,
        "nothing can be decoded: the description has no network of the kind can, can_fd or can_xl, and no other has described frames"
    );
}

#[test]
fn told_channels_and_equal_names_bind_at_once() {
    let decoder = two_networks(&[1], &[2]);
    let mut told = Binder::new(&decoder, &BindMap::parse("can0=comfort,7=drive").expect("pairs")).expect("networks");
    assert_eq!(told.at_once(&decoder, "can0", true), Some((Some(NetworkId(1)), Reason::Told)));
    assert_eq!(
        told.at_once(&decoder, "drive", true),
        Some((None, Reason::NotNamed)),
        "what is told is all that is bound"
    );
    assert_eq!(told.never_seen().collect::<Vec<_>>(), ["7"]);
    assert!(told.check_told(&["x".to_owned(), "can0".to_owned()], true).is_ok());
    let error = |channels: &[&str], have_names| {
        let channels: Vec<String> = channels.iter().map(ToString::to_string).collect();
        told.check_told(&channels, have_names).expect_err("neither").to_string()
    };
    let start = "the binding names no channel of this log: `can0` is not there; ";
    assert_eq!(error(&["can_0", "can_1"], true), format!("{start}did you mean `can_0`?"));
    assert_eq!(error(&["0"], false), format!("{start}this log names no channels; say --bind '0=NETWORK'"));
    assert_eq!(
        error(&["0", "1"], false),
        format!("{start}this log names no channels; say --bind '0=NETWORK' (channels: 0, 1)")
    );

    let mut plain = Binder::new(&decoder, &BindMap::default()).expect("networks");
    assert_eq!(plain.at_once(&decoder, "Drive", true), Some((Some(NetworkId(0)), Reason::SameName)));
    assert_eq!(plain.at_once(&decoder, "seat", true), None, "no network that can be decoded");
    assert_eq!(plain.at_once(&decoder, "can0", true), None);
    plain.remember("can0", Some(NetworkId(1)));
    assert_eq!(plain.at_once(&decoder, "can0", true), Some((Some(NetworkId(1)), Reason::EarlierLog)));
    assert_eq!(plain.at_once(&decoder, "0", false), None, "numbers are not names");
}

#[test]
fn identifiers_decide_where_they_are_clear() {
    let decoder = two_networks(&[1, 2, 3, 4, 5, 6], &[0x101, 0x102, 0x103]);
    let (network, reason) = judged(&decoder, [1, 2, 3, 9]).expect("clear");
    assert_eq!(network, Some(NetworkId(0)));
    assert_eq!(reason.to_string(), "3 of its 4 identifiers are described there, 0 on `comfort`");
    // A description that is still being written: few of the channel's identifiers, but most of the network's frames.
    let (network, _) = judged(&decoder, (0x700..0x750).chain([0x101, 0x103])).expect("clear");
    assert_eq!(network, Some(NetworkId(1)));
    let (network, reason) = judged(&decoder, [0x500, 0x501]).expect("nothing is described");
    assert_eq!((network, reason.to_string()), (None, "none of its 2 identifiers is described".to_owned()));
}

#[test]
fn identifiers_that_are_passed_on_do_not_confuse() {
    // Eight of the networks' identifiers are the same: a gateway passes them on.
    let shared: Vec<u32> = (0x200..0x208).collect();
    let drive: Vec<u32> = (0x100..0x110).chain(shared.clone()).collect();
    let comfort: Vec<u32> = (0x300..0x304).chain(shared).collect();
    let decoder = two_networks(&drive, &comfort);
    assert_eq!(judged(&decoder, comfort).expect("clear").0, Some(NetworkId(1)));
    assert_eq!(judged(&decoder, drive).expect("clear").0, Some(NetworkId(0)));
}

#[test]
fn two_of_its_own_and_four_times_the_others_are_just_enough() {
    let clear = |drive: &[u32], comfort: &[u32], seen: &[u32]| {
        judged(&two_networks(drive, comfort), seen.iter().copied()).ok().and_then(|(network, _)| network)
    };
    let drive = Some(NetworkId(0));
    assert_eq!(clear(&[1, 2, 3, 4], &[3, 4], &[1, 2, 3, 4]), drive);
    assert_eq!(clear(&[2, 3, 4], &[3, 4], &[2, 3, 4]), None);
    assert_eq!(clear(&[1, 2, 3, 4], &[5], &[1, 2, 3, 4, 5]), drive);
    assert_eq!(clear(&[1, 2, 3, 4, 5, 6, 7], &[8, 9], &[1, 2, 3, 4, 5, 6, 7, 8, 9]), None);
}

#[test]
fn what_is_not_clear_is_an_error_that_tells_what_was_seen() {
    let decoder = two_networks(&[1, 2, 3, 4], &[3, 4, 5, 6]);
    let error = judged(&decoder, [1, 2, 3, 4, 5]).expect_err("2 against 1").to_string();
    assert_eq!(
        error,
        "cannot tell which network channel `can0` is: of its 5 different identifiers 4 are described on `drive`, 3 on `comfort`; \
         say it with --bind 'can0=NETWORK' (networks: drive, comfort)"
    );
    assert!(judged(&decoder, [3, 4]).is_err(), "both describe them");
    assert!(judged(&decoder, [1, 0x700, 0x701]).is_err(), "one identifier of three is not enough");
    assert!(
        judged(&two_networks(&[1, 2, 3, 4, 5], &[9]), (0x700..0x780).chain([1, 2])).is_err(),
        "neither most of the one nor of the other"
    );
}

#[test]
fn one_identifier_is_enough_where_no_other_network_competes() {
    let decoder = two_networks(&[1, 2, 3, 4], &[3, 4, 5, 6]);
    let reason = |ids: &[u32], network| {
        let (found, reason) = judged(&decoder, ids.iter().copied()).expect("clear");
        assert_eq!(found, Some(NetworkId(network)));
        reason.to_string()
    };
    assert_eq!(reason(&[1], 0), "its only identifier is described there, 0 on `comfort`");
    assert_eq!(reason(&[5, 0x700], 1), "1 of its 2 identifiers is described there, 0 on `drive`");
    let error = |ids: &[u32], has_name| {
        let decision = Binder::by_identifiers(&decoder, ("0", has_name), |_| false, &evidence(ids.iter().copied()));
        let error = decision.expect_err("unclear").to_string();
        error.strip_prefix("cannot tell which network channel `0` is: ").expect("the beginning").to_owned()
    };
    let end = "say it with --bind '0=NETWORK' (networks: drive, comfort)";
    assert_eq!(error(&[3], true), format!("its only identifier is described on `drive` and on `comfort`; {end}"));
    assert_eq!(
        error(&[1, 0x700, 0x701], true),
        format!("of its 3 different identifiers 1 is described on `drive`, none on `comfort`; {end}")
    );
    assert_eq!(
        error(&[1, 5], false),
        format!(
            "of its 2 different identifiers 1 is described on `drive`, 1 on `comfort`; this log names no channels; {end}"
        )
    );
}

#[test]
fn one_channel_and_one_network_belong_together() {
    let described = frame("f", Identifier::Can { first: 1, last: 1, extended: false }, Vec::new());
    let only = Decoder::new(&one_frame(described)).expect("a decoder");
    let decision =
        |is_only, ids: &[u32]| Binder::by_identifiers(&only, ("0", false), |_| is_only, &evidence(ids.iter().copied()));
    assert_eq!(decision(true, &[0x700]).expect("clear"), (Some(NetworkId(0)), Reason::OnlyOne));
    let (network, _) = decision(false, &[1, 0x700, 0x701]).expect("its only frame was seen");
    assert_eq!(network, Some(NetworkId(0)));
    assert_eq!(decision(false, &[0x700]).expect("clear"), (None, Reason::NothingDescribed { seen: 1 }));
}
