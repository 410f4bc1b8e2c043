//! Layouts, and files that use others.

use super::*;
use crate::{MemoryLoader, check};

#[test]
fn a_layout_is_moved_and_its_names_get_a_prefix() {
    let checked = on_can(
        "layout wheel {\n    counting from 1\n    signal speed in bytes 2..1\n    signal ok in bit 3.8\n}\n\
         frame f on n id 1 {\n    length 8\n    use layout wheel at byte 0 prefix left_\n    use layout wheel at byte 4 prefix right_\n}\n",
    );
    let frame = &database(&checked).frames[0];
    let found: Vec<_> = frame.signals.iter().map(|signal| format!("{} {}", signal.label.name, ends(signal))).collect();
    assert_eq!(found, ["left_speed 1.7..0.0", "left_ok 2.7..2.7", "right_speed 5.7..4.0", "right_ok 6.7..6.7"]);
}

#[test]
fn layouts_in_layouts_add_up_and_the_frame_may_count_otherwise() {
    let checked = on_can(
        "layout inner { signal x in byte 0 }\nlayout outer { use layout inner at byte 1 prefix i_ }\n\
         frame f on n id 1 {\n    counting from 1\n    use layout outer at byte 3 prefix o_\n}\n",
    );
    assert_eq!(ends(named(&database(&checked).frames[0], "o_i_x")), "3.7..3.0");
}

#[test]
fn conditions_in_a_layout_look_at_the_layouts_own_signals() {
    let checked = on_can(
        "layout page { signal kind in byte 0\n when kind is 1 { signal x in byte 1 }\n when kind is 2 { signal y in byte 1 } }\n\
         frame f on n id 1 {\n    use layout page at byte 0 prefix a_\n    use layout page at byte 2 prefix b_\n}\n",
    );
    let frame = &database(&checked).frames[0];
    let selectors: Vec<_> =
        frame.pages.iter().map(|page| frame.signals[page.tests[0].selector.index()].label.name.as_str()).collect();
    assert_eq!(selectors, ["a_kind", "a_kind", "b_kind", "b_kind"]);
    assert_eq!(frame.pages.iter().map(|page| page.switch).collect::<Vec<_>>(), [0, 0, 1, 1]);
}

#[test]
fn names_and_bits_of_layouts_clash_like_others() {
    let twice = "layout l { signal x in byte 0 }\nframe f on n id 1 {\n    use layout l at byte 0\n    use layout l at byte 1\n}\n";
    assert_eq!(rules(&on_can(twice)), [Rule::NameTaken]);
    let overlap = "layout l { signal x in byte 0 }\nframe f on n id 1 {\n    use layout l at byte 0 prefix a_\n    use layout l at byte 0 prefix b_\n}\n";
    assert_eq!(rules(&on_can(overlap)), [Rule::SignalOverlap]);
    let outside = "layout l { signal x in byte 3 }\nframe f on n id 1 {\n    length 4\n    use layout l at byte 1\n}\n";
    assert_eq!(rules(&on_can(outside)), [Rule::OutsideFrame]);
}

#[test]
fn circles_are_told_once() {
    let checked = on_can(
        "layout a { use layout b at byte 0 }\nlayout b { use layout a at byte 0 }\nframe f on n id 1 { use layout a at byte 0 }\n",
    );
    assert_eq!(rules(&checked), [Rule::LayoutCircle]);
}

#[test]
fn layouts_that_nobody_uses_are_checked_all_the_same() {
    let checked = on_can("layout l { signal x in bits 0.3..0.7 }\nframe f on n id 1\n");
    assert_eq!(rules(&checked), [Rule::LayoutUnused, Rule::EndsUpsideDown]);
}

#[test]
fn files_are_read_once_and_circles_are_fine() {
    let loader = MemoryLoader::default()
        .with(
            "main.lore",
            "use \"parts/net.lore\"\nuse \"main.lore\"\nuse \"./parts/../parts/net.lore\"\nframe f on n id 1\n",
        )
        .with("parts/net.lore", "use \"../main.lore\"\nuse \"ecus.lore\"\nnetwork n can 500 kbit/s\n")
        .with("parts/ecus.lore", "counting from 1\necu e on n\n");
    let checked = check(&["main.lore"], &loader);
    assert_eq!(rules(&checked), []);
    assert_eq!(checked.sources.ids().count(), 3);
    let checked = check(&["main.lore", "missing.lore"], &loader);
    assert_eq!(rules(&checked), [Rule::FileNotFound]);
}

#[test]
fn standards_go_on_a_network_of_ones_own() {
    let checked = check_text(
        "test.lore",
        "use standard doip on backbone\nuse standard someip on backbone\nnetwork backbone ethernet\n",
    );
    assert_eq!(rules(&checked), []);
    let database = database(&checked);
    let names: Vec<&str> = database.networks.iter().map(|network| network.label.name.as_str()).collect();
    // What doip uses of uds stays where it is.
    assert_eq!(names, ["backbone", "uds"]);
    let on_backbone = database.frames.iter().filter(|frame| frame.seen_on[0].network.index() == 0).count();
    assert!(on_backbone > 10, "{on_backbone} frames");
    for (name, kind) in
        [("heavy_duty", "can"), ("obd", "can_fd"), ("uds", "can"), ("doip", "ethernet"), ("someip", "ethernet")]
    {
        let checked = check_text("test.lore", &format!("use standard {name} on n\nnetwork n {kind}\n"));
        assert_eq!(rules(&checked), [], "{name}");
    }
}

#[test]
fn one_mistake_with_the_network_of_a_standard_is_told_once() {
    let of = |text: &str| rules(&check_text("test.lore", text));
    assert_eq!(of("use standard doip on drive\nnetwork drive can\necu a on drive\n"), [Rule::RecognitionDoesNotFit]);
    assert_eq!(of("use standard doip on nowhere\n"), [Rule::UnknownNetwork]);
    assert_eq!(of("use standard dope on nowhere\n"), [Rule::UnknownStandard]);
    assert_eq!(of("use standard lin_diagnostics on n\nnetwork n lin\necu a leads n\n"), [Rule::ClauseDoesNotFit]);
    let twice =
        "use standard someip on a\nuse standard someip on b\nnetwork a ethernet\nnetwork b ethernet\necu e on b\n";
    assert_eq!(of(twice), [Rule::RepeatedClause]);
}

#[test]
fn a_clash_between_files_shows_both_places() {
    let loader = MemoryLoader::default()
        .with("main.lore", "use \"other.lore\"\nnetwork n can 500 kbit/s\n")
        .with("other.lore", "network n can 250 kbit/s\nframe f on n id 1\n");
    let checked = check(&["main.lore"], &loader);
    assert_eq!(rules(&checked), [Rule::NameTaken]);
    let message = &checked.diagnostics[0];
    assert_eq!(checked.sources.name(message.site.file), "other.lore");
    assert_eq!(checked.sources.name(message.elsewhere[0].site.file), "main.lore");
}
