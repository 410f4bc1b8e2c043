//! The example programs of the facade, run as a newcomer runs them.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../schema/demo").join(name)
}

/// Examples are built with the tests of the workspace, beside the tests themselves.
fn example(name: &str) -> Command {
    let this = std::env::current_exe().expect("this test is a program");
    let folder = this.parent().and_then(Path::parent).expect("it lies in a folder of the build");
    Command::new(folder.join("examples").join(name))
}

fn run(command: &mut Command) -> Output {
    command.output().expect("examples are built with `cargo test --workspace`")
}

fn text(bytes: &[u8]) -> &str {
    std::str::from_utf8(bytes).expect("output is text")
}

#[test]
fn twenty_lines_print_what_the_command_prints() {
    let (description, drive) = (demo("kestrel.lore"), demo("town-drive.pcapng"));
    let output = run(example("values").args([&description, &drive]));
    assert!(output.status.success(), "{}", text(&output.stderr));
    let of_command = run(Command::new(env!("CARGO_BIN_EXE_wirelore-under-test"))
        .arg("decode")
        .args([&description, &drive])
        .args(["--to", "csv", "--quiet"]));
    assert!(of_command.status.success(), "{}", text(&of_command.stderr));
    let (ours, theirs) = (text(&output.stdout), text(&of_command.stdout));
    assert_eq!(ours.lines().count(), theirs.lines().count());
    // The program says nothing of counters and checksums: those lines end earlier.
    let mut same = 0;
    for (our, their) in ours.lines().zip(theirs.lines()) {
        let is_checked = their.contains("count ") || their.contains("checksum ") || their.contains("protection ");
        assert!(our == their || is_checked && their.starts_with(our.trim_end_matches("; ")), "{our}\n{their}");
        same += usize::from(our == their);
    }
    assert!(same > 20_000, "{same}");
}

#[test]
fn the_dashboard_shows_the_last_values() {
    let drive = std::fs::File::open(demo("town-drive.pcapng")).expect("it is there");
    let output = run(example("dashboard").arg(demo("kestrel.lore")).arg("wheel_speeds.front_left").stdin(drive));
    assert!(output.status.success(), "{}", text(&output.stderr));
    let last = text(&output.stdout).rsplit('\r').next().expect("there is a line");
    assert!(last.starts_with("front_left ") && last.trim_end().ends_with("km/h"), "{last}");
}

#[test]
fn the_bench_check_finds_every_answer_of_the_demo_in_time() {
    let output = run(example("answer_in_time").args([demo("kestrel.lore"), demo("town-drive.pcapng")]));
    let told = text(&output.stdout);
    assert!(output.status.success(), "{told}{}", text(&output.stderr));
    let answered: u32 = told.split(' ').next().and_then(|number| number.parse().ok()).expect("a number comes first");
    assert!(answered > 3, "{told}");
    // Nobody answers within no time at all.
    let hurried = run(example("answer_in_time").args([demo("kestrel.lore"), demo("town-drive.pcapng")]).args([
        "shift_request.intervention",
        "engine_torque.answer",
        "0",
    ]));
    assert_eq!(hurried.status.code(), Some(1), "{}", text(&hurried.stdout));
}
