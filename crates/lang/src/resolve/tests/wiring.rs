//! Terminators, active stars and their branches as they arrive in the description.

use wirelore_model::{ActiveStar, EcuId, Fitted, NetworkId, Terminator};

use super::*;

#[test]
fn terminators_and_stars() {
    let text = "network drive can 500 kbit/s, terminators engine 120 ohm, \"rear\" 121 \u{2126}, order intel
        network chassis flexray 10 Mbit/s, star hub, branch brakes, engine, terminators brakes
        ecu engine on drive, chassis\necu hub on drive, chassis\necu brakes on chassis\necu lone on chassis";
    let checked = check_text("van.lore", text);
    let database = database(&checked);
    let [drive, chassis] = [&database.networks[0], &database.networks[1]];
    assert_eq!(
        drive.terminators,
        [
            Terminator { at: Fitted::Unit(EcuId(0)), ohms: Some(120) },
            Terminator { at: Fitted::Wiring("rear".into()), ohms: Some(121) },
        ]
    );
    assert_eq!(chassis.star, Some(ActiveStar { at: Fitted::Unit(EcuId(1)), branches: vec![vec![EcuId(2), EcuId(0)]] }));
    assert_eq!(chassis.branches(NetworkId(1), &database.ecus), [vec![EcuId(2), EcuId(0)], vec![EcuId(3)]]);
    for (line, rule) in [
        ("network n lin, terminators a", Rule::ClauseDoesNotFit),
        ("network n can, star a", Rule::ClauseDoesNotFit),
        ("network n flexray, branch a", Rule::MissingPart),
        ("network n can_fd, terminators a, a", Rule::RepeatedClause),
        ("network n can_fd, terminators a 0 ohm, \"b\"", Rule::BadNumber),
        ("network n can_fd, terminators a 120, \"b\"", Rule::MissingPart),
        ("network n can_fd, terminators c, \"b\"", Rule::WiringNotOnNetwork),
        ("network n can_fd, terminators a, \"b\", \"c\"", Rule::TerminatorCount),
        ("network n flexray, star a, branch a", Rule::RepeatedClause),
    ] {
        let checked = check_text("van.lore", &format!("{line}\necu a on n\nnetwork m can\necu c on m"));
        assert!(rules(&checked).contains(&rule), "{line}: {:?}", rules(&checked));
    }
}
