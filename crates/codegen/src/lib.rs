//! # wirelore-codegen
//!
//! Rust source out of a description: [`rust_source`] writes a file in which each frame is a struct with typed fields, for firmware and tools
//! that are to read and write frames without any description at run time. It is responsible for names that Rust takes, for layout as
//! rustfmt leaves it, and for values that agree with the decoder's, bit for bit. It never reads a file, never runs another program, and never
//! lets a title, a note or a name of a description become code.
//!
//! The source needs `wirelore-bits` and nothing else: no `std`, no allocation. Below this crate stands `wirelore-model` (what is described).
//!
//! In a `build.rs`, with this crate and `wirelore-lang` as build dependencies:
//!
//! ```no_run
//! use std::{env, fs, path::Path};
//!
//! fn main() -> Result<(), Box<dyn std::error::Error>> {
//!     println!("cargo::rerun-if-changed=van.lore");
//!     let checked = wirelore_lang::check(&["van.lore"], &wirelore_lang::FileLoader);
//!     let database = checked.database.ok_or("van.lore has mistakes: `wirelore check van.lore` tells them")?;
//!     fs::write(Path::new(&env::var("OUT_DIR")?).join("van.rs"), wirelore_codegen::rust_source(&database))?;
//!     Ok(())
//! }
//! ```
//!
//! and beside it `#[allow(dead_code)] mod van { include!(concat!(env!("OUT_DIR"), "/van.rs")); }`, as no firmware uses all of it. What the file looks like:
//!
//! ```
//! let checked = wirelore_lang::check_text(
//!     "van.lore",
//!     "network drive can 500 kbit/s
//!      frame wheel_speeds on drive id 0x1B4 {
//!          length 8
//!          signal front_left in bits 1.4..0.0 = raw * 0.05 km/h, absent 0x1FFF
//!      }",
//! );
//! let source = wirelore_codegen::rust_source(&checked.database.ok_or("it has no mistakes")?);
//! assert!(source.contains("pub struct WheelSpeeds {"));
//! assert!(source.contains("    pub front_left: u16,"));
//! assert!(source.contains("pub const ID: u32 = 0x1B4;"));
//! assert!(source.contains("    pub fn front_left(&self) -> typed::Reading<f64> {"));
//! assert!(source.contains("            raw => typed::Reading::Value(f64::from(raw) / 20.0),"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! What is not written: sensor curves of decimal and floating-point numbers, and enums for their words (their fields
//! hold the number all the same, and the doc comment says so); the protection of a service message whose header is covered too; routes,
//! schedules and the map; of a group that gives rows, all elements but the first.

mod checks;
mod classes;
mod docs;
mod each;
mod frame;
mod group;
mod meaning;
mod names;
mod network;
mod number;
mod pages;
mod plan;
mod signal;
mod states;
mod writer;

use wirelore_model::{ChecksumAlgorithm, CrcRule, Database, NetworkId, Role};

use checks::own_crc_name;
use docs::inline;
use names::{Names, camel};
use network::NetworkWriter;
use plan::{Context, FramePlan};
use states::StateEnums;
use writer::Writer;

/// Modules and crates that generated code names.
const TAKEN_MODULES: [&str; 6] = ["alloc", "core", "std", "typed", "wirelore", "wirelore_bits"];

/// The source for all frames of a database: the same text for the same database, laid out as rustfmt leaves it.
#[must_use]
pub fn rust_source(database: &Database) -> String {
    let mut writer = Writer::default();
    write_head(&mut writer, database);
    let mut types = Names::types();
    let frame_names: Vec<String> =
        database.frames.iter().map(|frame| types.of_type(&camel(&frame.label.name))).collect();
    let states = StateEnums::new(database, &mut types);
    let own_crcs = own_crcs(database);
    let context = Context { database, states: &states, own_crcs: &own_crcs };
    let mut modules = Names::with(&TAKEN_MODULES);
    let plans: Vec<FramePlan<'_>> = frame_names
        .iter()
        .enumerate()
        .filter_map(|(at, name)| FramePlan::new(context, at, name, &mut modules))
        .collect();
    if !plans.is_empty() {
        writer.gap();
        writer.line("use wirelore_bits::typed;");
    }
    write_own_crcs(&mut writer, &own_crcs);
    states.write(&mut writer);
    plans.iter().for_each(|plan| frame::write(&mut writer, plan));
    for network in (0..).map(NetworkId).take(database.networks.len()) {
        NetworkWriter { database, network, plans: &plans }.write(&mut writer, &mut types);
    }
    writer.finish()
}

fn write_head(writer: &mut Writer, database: &Database) {
    let vehicle =
        database.vehicle.as_ref().map_or(String::new(), |vehicle| format!(" of {}", inline(&vehicle.label.name)));
    writer.line(format!(
        "// Written by wirelore out of the description{vehicle}. Change the description, not this file."
    ));
    writer.line("//");
    writer.line(
        "// Fields hold what the bits say, methods of the same name what they mean. Needs wirelore-bits; no std, no",
    );
    writer.line("// allocation.");
    writer.line("//");
    writer.line(
        "// Caution: frames sent into a live vehicle can move it, start it or fire airbags. Send on the bench only.",
    );
    writer.needs_gap();
}

/// The CRCs that are given by their parameters, each once.
fn own_crcs(database: &Database) -> Vec<CrcRule> {
    let mut rules = Vec::new();
    for signal in database.frames.iter().flat_map(|frame| &frame.signals) {
        if let Role::Checksum(checksum) = &signal.role
            && let ChecksumAlgorithm::Crc(rule) = checksum.algorithm
            && !rules.contains(&rule)
        {
            rules.push(rule);
        }
    }
    rules
}

fn write_own_crcs(writer: &mut Writer, rules: &[CrcRule]) {
    for (at, rule) in rules.iter().enumerate() {
        let CrcRule { width, poly, start, xor, reflected } = rule;
        writer.gap();
        writer.line(format!("/// The CRC {}.", inline(&rule.to_string())));
        let parameters = "wirelore_bits::CrcParameters";
        writer.open(format!("static {}: wirelore_bits::Crc = typed::crc({parameters} {{", own_crc_name(at)));
        writer.line(format!("width: {width},"));
        writer.line(format!("poly: 0x{poly:X},"));
        writer.line(format!("init: 0x{start:X},"));
        writer.line(format!("refin: {reflected},"));
        writer.line(format!("refout: {reflected},"));
        writer.line(format!("xorout: 0x{xor:X},"));
        writer.close("});");
    }
}
