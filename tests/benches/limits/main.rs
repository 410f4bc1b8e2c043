//! How far the main job is from what the machine can do: each part in a race with a rival that does the least that could be done.
//!
//! `cargo bench -p wirelore-tests --bench limits [-- [--quick] [--only GROUP]...]`. Every pair runs interleaved in one process, in an
//! order drawn for each round, measured in CPU time of the thread; ratios are medians over the rounds. Before timing, what each contender makes is compared with
//! the slow path. DEVELOPERS.md ("Measuring") says how to read the table.

mod arguments;
mod bit_vectors;
mod chunks;
mod clock;
mod columns_out;
mod constants;
mod csv;
mod descriptions;
mod in_cache;
mod kept;
mod lookup;
mod machine;
mod ours;
mod plain;
mod race;
mod recordings;
mod spread;
mod stage;
mod table;
mod tables;
mod threads;

use std::process::ExitCode;

use arguments::{Arguments, Group};
use ours::NamedSet;
use stage::Stage;
use table::{Row, Table};

fn main() -> ExitCode {
    let arguments = match Arguments::read(std::env::args().skip(1)) {
        Ok(arguments) => arguments,
        Err(refusal) => {
            eprintln!("limits: {refusal}");
            return ExitCode::from(2);
        }
    };
    if let Some(job) = &arguments.fresh {
        println!("{}", recordings::first_run(job));
        return ExitCode::SUCCESS;
    }
    let stage = Stage::new(arguments.quick);
    let mut table = Table::default();
    for &group in &arguments.groups {
        eprintln!("limits: {} ...", group.name());
        table.extend(rows(group, &stage));
    }
    let sets: Vec<_> = NamedSet::available().into_iter().map(|set| set.name).collect();
    println!("Medians of {} rounds, CPU time. Instruction sets: {}.\n", stage.rounds, sets.join(", "));
    print!("{table}");
    ExitCode::SUCCESS
}

fn rows(group: Group, stage: &Stage) -> Vec<Row> {
    match group {
        Group::Core => in_cache::rows(stage),
        Group::Pcapng => recordings::pcapng(stage),
        Group::Text => recordings::text(stage),
        Group::Csv => csv::rows(stage),
        Group::Tables => tables::rows(stage),
        Group::Lookup => lookup::rows(stage),
        Group::Threads => threads::rows(stage),
        Group::Check => descriptions::rows(stage),
    }
}
