//! The public standards, too much source to be checked in: a package of its own compiles it and compares it with the decoder.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::{env, fs};

use wirelore_codegen::rust_source;

use super::files::{STANDARDS, standard};

/// How many payloads are compared for each standard.
const ROUNDS: u64 = 1_000_000;

/// What the package runs: for each standard its networks.
const PROGRAM: &str = r#"
//! Compares generated source with the decoder.

mod agreement;
mod doip;
mod heavy_duty;
mod noise;
mod obd;
mod someip;
mod uds;

use agreement::{Generated, can, compare, network};
use wirelore_model::SeenId;

fn main() {
    let rounds = std::env::args().nth(1).and_then(|rounds| rounds.parse().ok()).expect("a number of rounds");
    run("doip", rounds, &[
        network!(
            "doip",
            doip::DoipFrame,
            SeenId::DoIp { payload_type, source, target } => decode_doip(payload_type, source, target)
        ),
    ]);
    run("heavy_duty", rounds, &[can!("heavy_duty", heavy_duty::HeavyDutyFrame)]);
    run("obd", rounds, &[can!("obd", obd::ObdFrame)]);
    run("someip", rounds, &[
        network!(
            "someip",
            someip::SomeipFrame,
            SeenId::SomeIp { service, method, message_type } => decode_service(service, method, message_type)
        ),
    ]);
    run("uds", rounds, &[can!("uds", uds::UdsFrame)]);
}

fn run(name: &str, rounds: u64, networks: &[Generated]) {
    let checked = wirelore_lang::check_text("standard.lore", &format!("use standard {name}\n"));
    let compared = compare(&checked.database.expect("standards have no mistakes"), networks, rounds);
    assert!(compared.frames > rounds / 2 && compared.readings > rounds, "{name}: {compared:?}");
    println!("{name}: {compared:?}");
}
"#;

fn here(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// Minutes: `cargo test --workspace --test generated -- --ignored --nocapture`.
#[test]
#[ignore = "compiles a package of its own"]
fn every_standard_says_what_the_decoder_says() {
    let scratch = tempfile::tempdir().expect("a folder for a package");
    let source = scratch.path().join("src");
    fs::create_dir(&source).expect("a folder can be made");
    let write = |path: &Path, text: &str| fs::write(path, text).expect("a file can be written");
    let crates = ["bits", "decode", "lang", "model"].map(|name| {
        let path = here(&format!("../crates/{name}")).canonicalize().expect("the crate is there");
        format!("wirelore-{name} = {{ path = {path:?} }}\n")
    });
    let manifest = "[package]\nname = \"standards\"\nversion = \"0.1.0\"\nedition = \"2024\"\n\n[workspace]\n\n";
    let profile = "[profile.dev]\nopt-level = 1\n\n[dependencies]\n";
    write(&scratch.path().join("Cargo.toml"), &format!("{manifest}{profile}{}", crates.concat()));
    fs::copy(here("../Cargo.lock"), scratch.path().join("Cargo.lock"))
        .expect("the versions are those of the workspace");
    fs::copy(here("tests/generated/agreement.rs"), source.join("agreement.rs")).expect("the comparison is there");
    fs::copy(here("src/noise.rs"), source.join("noise.rs")).expect("the generator is there");
    write(&source.join("main.rs"), PROGRAM);
    for name in STANDARDS {
        write(&source.join(format!("{name}.rs")), &rust_source(&standard(name)));
    }
    let target = scratch.path().join("target");
    let ran = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
        .args(["run", "--offline", "--quiet", "--", &ROUNDS.to_string()])
        .current_dir(scratch.path())
        .env("CARGO_TARGET_DIR", target)
        .env("RUSTFLAGS", "-A dead_code")
        .status()
        .expect("cargo can be run");
    assert!(ran.success());
}
