//! Maps of all sizes: nothing lies on anything else, and all words fit.

mod faults;

use std::fmt::Write;

use wirelore_model::Database;

use super::picture::Point;
use super::sheet::Sheet;
use super::strong::Part;
use super::{Blank, MapOptions, VehicleMap};
use faults::faults;

/// A stream of numbers that is the same on every machine.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % limit.max(1)
    }
}

const KINDS: [&str; 9] = [
    "can 500 kbit/s",
    "can_fd 500 kbit/s, data 2 Mbit/s",
    "lin 19.2 kbit/s",
    "ethernet 100 Mbit/s",
    "flexray 10 Mbit/s",
    "most 25 Mbit/s",
    "kline 10_400 bit/s",
    "uart 9600 bit/s",
    "can_xl 500 kbit/s, data 10 Mbit/s",
];

const TITLES: [&str; 7] = [
    "Door",
    "Control unit of the left rear wheel",
    "Steuergeraetehalterungsbefestigungsschraubenueberwachungsmodul",
    "وحدة التحكم في المحرك والفرامل الأمامية للمركبة",
    "車両中央ゲートウェイおよび診断インターフェース装置",
    "A unit <with> & \\\"marks\\\" that a file of XML may not hold as they are, and a very long title indeed",
    "בקר מנוע",
];

/// A vehicle with so many units on a fitting number of networks, some units on several.
fn vehicle(units: usize, seed: u64) -> String {
    let mut numbers = Numbers(seed);
    let networks = 1 + units / 7 + numbers.below(3);
    let mut text = String::new();
    let kinds: Vec<&str> = (0..networks)
        .map(|_| if numbers.below(2) == 0 { KINDS[numbers.below(3)] } else { KINDS[numbers.below(KINDS.len())] })
        .collect();
    for (number, kind) in kinds.iter().enumerate() {
        let title = TITLES[numbers.below(TITLES.len())];
        let _ = writeln!(
            text,
            "network net_{number} \"{title}\" {kind}{}",
            if numbers.below(6) == 0 { ", guessed" } else { "" }
        );
    }
    let mut led = vec![false; networks];
    for number in 0..units {
        let mut on = vec![number % networks];
        // Every tenth unit is on many networks, every fourth on two or three.
        let more = if number % 10 == 3 {
            numbers.below(6)
        } else if number % 4 == 1 {
            1 + numbers.below(2)
        } else {
            0
        };
        for _ in 0..more {
            let net = numbers.below(networks);
            if !on.contains(&net) {
                on.push(net);
            }
        }
        let names: Vec<String> = on.iter().map(|net| format!("net_{net}")).collect();
        let leads = on
            .iter()
            .copied()
            .find(|net| !led[*net] && (kinds[*net].starts_with("lin") || kinds[*net].starts_with("most")));
        let leads = leads.filter(|_| on.len() > 1).map(|net| {
            led[net] = true;
            format!(", leads net_{net}")
        });
        let optional = if numbers.below(5) == 0 { ", optional" } else { "" };
        let title = TITLES[numbers.below(TITLES.len())];
        let name = if number.is_multiple_of(9) {
            "a_name_of_sixty_letters_that_somebody_really_wrote_into_a_f_"
        } else {
            "unit_"
        };
        let _ = writeln!(
            text,
            "ecu {name}{number} \"{title}\" on {}{}{optional}",
            names.join(", "),
            leads.unwrap_or_default()
        );
    }
    for _ in 0..units / 6 {
        let name = |number: usize| {
            if number.is_multiple_of(9) {
                format!("a_name_of_sixty_letters_that_somebody_really_wrote_into_a_f_{number}")
            } else {
                format!("unit_{number}")
            }
        };
        let (from, to) = (numbers.below(units), numbers.below(units));
        if from != to {
            let _ = writeln!(text, "wire {} -> {} \"{}\"", name(from), name(to), TITLES[numbers.below(TITLES.len())]);
        }
    }
    text
}

fn database(text: &str) -> Database {
    let checked = wirelore_lang::check_text("van.lore", text);
    let messages: Vec<String> = checked.diagnostics.iter().map(|it| format!("{it:?}")).collect();
    checked.database.unwrap_or_else(|| panic!("{}\n{text}", messages.join("\n")))
}

fn check(text: &str, options: &MapOptions) {
    let database = database(text);
    let sheet = Sheet::of(&database, options);
    let faults = faults(&sheet);
    assert!(
        faults.is_empty(),
        "{} faults, the first ones:\n{}\n{text}",
        faults.len(),
        faults[..faults.len().min(5)].join("\n")
    );
    assert_eq!(sheet.picture.boxes.len(), sheet.scene.units.len(), "every unit has one box");
    for net in sheet.scene.nets.iter().zip(0..) {
        assert!(sheet.picture.labels.iter().any(|label| label.net == net.1), "every network has its name on the map");
    }
    is_well_formed(&VehicleMap::new(&database, options.clone()).svg());
}

/// Each element that is opened is closed, and nothing from a description opens one.
fn is_well_formed(svg: &str) {
    let mut open: Vec<&str> = Vec::new();
    for piece in svg.split('<').skip(1) {
        let (tag, rest) = piece.split_once('>').expect("a tag ends");
        assert!(!rest.contains('>'), "{piece}");
        let name = tag.split([' ', '/', '\n']).find(|it| !it.is_empty()).expect("a tag has a name");
        assert!(["svg", "title", "defs", "pattern", "rect", "g", "path", "circle", "text"].contains(&name), "{name}");
        if let Some(closed) = tag.strip_prefix('/') {
            assert_eq!(open.pop(), Some(closed), "{piece}");
        } else if !tag.ends_with('/') {
            open.push(name);
        }
        assert_eq!(tag.matches('"').count() % 2, 0, "{tag}");
    }
    assert!(open.is_empty());
    assert!(!svg.chars().any(|letter| letter.is_control() && letter != '\n'));
}

#[test]
fn nothing_overlaps_at_any_size() {
    for units in [1, 2, 5, 10, 20, 50, 100, 150] {
        for seed in 0..6 {
            check(&vehicle(units, seed * 977 + units as u64), &MapOptions::default());
        }
    }
}

#[test]
fn an_exercise_has_room_for_its_numbers() {
    for units in [5, 40] {
        for blank in [Blank::Exercise, Blank::Solution] {
            check(&vehicle(units, 5), &MapOptions { blank, ..MapOptions::default() });
        }
    }
}

#[test]
fn a_map_of_nothing_is_a_sheet_with_a_sentence() {
    check("", &MapOptions::default());
    check("network drive can", &MapOptions::default());
    check("network ring most", &MapOptions::default());
    check("network links ethernet", &MapOptions::default());
    check("ecu engine", &MapOptions::default());
    check("network drive can\necu engine on drive\necu alone \"Alone\"", &MapOptions::default());
    let picture = VehicleMap::new(&database(""), MapOptions::default()).svg();
    assert!(picture.contains("no networks and no control units"));
}

#[test]
fn one_network_of_each_kind_with_many_units() {
    for kind in KINDS {
        for units in [1, 2, 3, 16, 60] {
            let mut text = format!("network only \"The only one\" {kind}\n");
            for number in 0..units {
                let _ = writeln!(text, "ecu unit_{number} \"Unit number {number}\" on only");
            }
            check(&text, &MapOptions::default());
        }
    }
}

#[test]
fn what_hangs_below_a_unit_stays_below_it() {
    let mut text = "network body can\n".to_owned();
    for commander in 0..9 {
        let _ = writeln!(text, "network sub_{commander} lin\nnetwork other_{commander} lin");
        let _ = writeln!(text, "ecu head_{commander} on body, leads sub_{commander}, other_{commander}");
        for responder in 0..commander * 2 {
            let _ = writeln!(text, "ecu part_{commander}_{responder} on sub_{commander}");
        }
    }
    let _ = writeln!(text, "network ring most\necu radio on body, leads ring");
    (1..30).for_each(|number| {
        let _ = writeln!(text, "ecu sound_{number} on ring");
    });
    check(&text, &MapOptions::default());
}

#[test]
fn the_same_text_gives_the_same_picture() {
    let text = vehicle(60, 3);
    let (one, other) = (database(&text), database(&text));
    let map = |database| VehicleMap::new(database, MapOptions::default()).html();
    assert_eq!(map(&one), map(&other));
}

#[test]
fn an_exercise_tells_no_name() {
    let text = vehicle(30, 8);
    let database = database(&text);
    let exercise = VehicleMap::new(&database, MapOptions { blank: Blank::Exercise, ..MapOptions::default() }).svg();
    let solution = VehicleMap::new(&database, MapOptions { blank: Blank::Solution, ..MapOptions::default() }).svg();
    for ecu in &database.ecus {
        assert!(!exercise.contains(&ecu.label.name) && !exercise.contains("Control unit of"), "{}", ecu.label.name);
        assert!(solution.contains(&ecu.label.name), "{}", ecu.label.name);
    }
    assert!(!exercise.contains("kbit/s"));
    let layout = |blank| {
        let sheet = Sheet::of(&database, &MapOptions { blank, ..MapOptions::default() });
        sheet.picture.boxes.iter().map(|it| (it.unit, it.rect)).collect::<Vec<_>>()
    };
    assert_eq!(layout(Blank::Exercise), layout(Blank::Solution), "only the words differ");
}

#[test]
fn the_measure_sees_what_is_wrong() {
    let database = database(&vehicle(30, 4));
    let sheet = || Sheet::of(&database, &MapOptions::default());
    let damaged = |damage: fn(&mut Sheet)| {
        let mut sheet = sheet();
        assert_eq!(faults(&sheet), [] as [&str; 0]);
        damage(&mut sheet);
        faults(&sheet).len()
    };
    assert!(damaged(|sheet| sheet.picture.boxes[3].rect = sheet.picture.boxes[4].rect) > 0, "a box on a box");
    assert!(damaged(|sheet| sheet.picture.boxes[3].rect.width = 60) > 0, "words beside a box");
    assert!(damaged(|sheet| sheet.picture.labels[0].rect = sheet.picture.labels[1].rect) > 0, "a name on a name");
    assert!(damaged(|sheet| sheet.picture.labels[0].rect.width = 20) > 0, "a name without room");
    assert!(damaged(|sheet| sheet.picture.boxes[3].rect.x = sheet.width) > 0, "beyond the edge");
    let strayed = damaged(|sheet| {
        let there = sheet.picture.boxes[5].rect.middle();
        sheet.picture.lines[0].points = vec![Point { x: 0, y: there.y }, there];
    });
    assert!(strayed > 0, "a line through a box");
    let doubled = damaged(|sheet| {
        let other = sheet
            .picture
            .lines
            .iter()
            .position(|line| line.net != sheet.picture.lines[0].net)
            .expect("there are several");
        sheet.picture.lines[0].points = sheet.picture.lines[other].points.clone();
    });
    assert!(doubled > 0, "a line on a line");
}

#[test]
fn who_listens_is_drawn_strong() {
    let database = database(
        "network drive can\nnetwork body can\nnetwork far can
         ecu brakes on drive\necu engine on drive\necu hub on drive, body, far\necu cluster on body\necu lamp on far
         frame speed on drive id 0x10 {\nsent by brakes\nread by cluster\n}
         gateway hub { pass speed from drive to body }",
    );
    let (frame, _) = database.frame_named("speed").expect("it is described");
    let sheet = Sheet::of(&database, &MapOptions { listen: Some(frame.into()), ..MapOptions::default() });
    let strong = sheet.strong.as_ref().expect("somebody listens");
    let parts: Vec<_> =
        sheet.scene.units.iter().zip(&strong.units).map(|(unit, part)| (unit.name.as_str(), *part)).collect();
    let expected = [
        ("brakes", Some(Part::Sends)),
        ("engine", None),
        ("hub", Some(Part::PassesOn)),
        ("cluster", Some(Part::Reads)),
        ("lamp", None),
    ];
    assert_eq!(parts, expected);
    assert_eq!(strong.nets, [true, true, false]);
    let arrows = [(0, 0, false), (2, 0, true), (2, 1, false), (3, 1, true)];
    assert_eq!(
        strong.arrows, arrows,
        "from the brakes to the network, from there to the gateway, and on to the cluster"
    );
}

#[test]
fn paper_is_filled_in_the_proportions_of_a4() {
    for units in [20, 50, 100, 150] {
        let database = database(&vehicle(units, 1));
        let sheet = Sheet::of(&database, &MapOptions::default());
        let proportion = f64::from(sheet.width) / f64::from(sheet.height);
        assert!((0.85..1.9).contains(&proportion), "{units} units: {} x {}", sheet.width, sheet.height);
    }
}

/// Stars of all sizes, in units and of their own, with branches that several share, and terminators everywhere.
#[test]
fn branches_of_stars_do_not_meet() {
    for units in [1, 2, 3, 5, 8, 13, 21, 40] {
        for shared in [1, 2, 3] {
            for star in ["unit_0", "\"under the seat, behind a very long description of where it is\""] {
                let branches = (1..units).collect::<Vec<_>>();
                let names = |branch: &[usize]| {
                    branch.iter().map(|number| format!("unit_{number}")).collect::<Vec<_>>().join(", ")
                };
                let branches: String =
                    branches.chunks(shared).map(|branch| format!(", branch {}", names(branch))).collect();
                let mut text = format!(
                    "network chassis flexray 10 Mbit/s, star {star}{branches}, terminators \"front\", \"rear\", unit_{}
                     network drive can 500 kbit/s, terminators unit_0, \"rear\"\nnetwork body can 125 kbit/s\n",
                    units - 1
                );
                for number in 0..units {
                    let more = ["", ", drive", ", drive, body"][number % 3];
                    let _ = writeln!(text, "ecu unit_{number} on chassis{more}");
                }
                let text = text.replace("ecu unit_0 on chassis\n", "ecu unit_0 on chassis, drive\n");
                check(&text, &MapOptions::default());
            }
        }
    }
}
