//! Parts of the decoder that are no part of its interface: their sources are taken in as they are.

use std::fmt;

use instruction_sets::{InstructionSet, VectorLoop};

#[allow(dead_code, unused_imports, reason = "its tests and some of its parts are used elsewhere")]
#[path = "../../../crates/decode/src/batch/instruction_sets.rs"]
pub(crate) mod instruction_sets;
#[allow(dead_code, unused_imports, reason = "its tests and some of its parts are used elsewhere")]
#[path = "../../../crates/decode/src/batch/kernel/mod.rs"]
pub(crate) mod kernel;

/// An instruction set of this machine, with its name.
#[derive(Clone, Copy)]
pub(crate) struct NamedSet {
    pub(crate) name: &'static str,
    pub(crate) set: InstructionSet,
}

impl NamedSet {
    /// Those of this machine, the narrowest first.
    pub(crate) fn available() -> Vec<Self> {
        let names = ["baseline", "AVX2", "AVX-512"];
        InstructionSet::available().zip(names).map(|(set, name)| Self { name, set }).collect()
    }

    /// Runs a loop as it was compiled for this set.
    pub(crate) fn run<L: VectorLoop>(self, vector_loop: L) -> L::Output {
        self.set.run(vector_loop)
    }
}

impl fmt::Display for NamedSet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name)
    }
}
