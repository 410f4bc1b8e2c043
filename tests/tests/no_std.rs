//! What is to run without an operating system is built so, and run: no standard library, no allocator, a panic handler of its own. A stray
//! `std` or `alloc` in one of these crates does not compile or does not link.

use std::path::{Path, PathBuf};
use std::process::Command;

/// A processor for controllers: ARM Cortex-M4 and M7.
const BARE_TARGET: &str = "thumbv7em-none-eabihf";

/// Builds into one folder.
struct Builder<'a> {
    out: &'a Path,
    target: Option<&'static str>,
}

impl Builder<'_> {
    fn build(&self, source: &str, arguments: &[&str]) {
        let mut command = compiler();
        command.args(["--edition", "2024", "-C", "panic=abort", "-C", "opt-level=1", "-C", "debug-assertions=off"]);
        command.arg("-L").arg(self.out).arg("--out-dir").arg(self.out).args(arguments).arg(path(source));
        if let Some(target) = self.target {
            command.args(["--target", target]);
        }
        let done = command.output().expect("the compiler that built this test is there");
        assert!(done.status.success(), "{source} {arguments:?}:\n{}", String::from_utf8_lossy(&done.stderr));
    }

    fn libraries(&self) {
        self.build("../crates/bits/src/lib.rs", &["--crate-type", "rlib", "--crate-name", "wirelore_bits"]);
        self.build(
            "../crates/lorec/src/lib.rs",
            &["--crate-type", "rlib", "--crate-name", "wirelore_lorec", "--extern", "wirelore_bits"],
        );
    }
}

fn compiler() -> Command {
    Command::new(std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into()))
}

fn path(below_tests: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(below_tests)
}

#[test]
fn a_program_without_the_standard_library_decodes() {
    let folder = tempfile::tempdir().expect("there is room for a folder");
    let builder = Builder { out: folder.path(), target: None };
    builder.libraries();
    // The C runtime calls `main`; nothing else of it is used.
    builder.build("bare/decoder.rs", &["--crate-type", "bin", "--extern", "wirelore_lorec", "-C", "link-arg=-lc"]);
    let status = Command::new(folder.path().join("decoder")).status().expect("it was just built");
    assert_eq!(status.code(), Some(0));
}

#[test]
fn it_is_built_for_a_controller() {
    let printed = compiler().args(["--print", "target-libdir", "--target", BARE_TARGET]).output();
    let libraries = printed.map(|it| String::from_utf8_lossy(&it.stdout).trim().to_owned()).unwrap_or_default();
    if libraries.is_empty() || !Path::new(&libraries).exists() {
        println!("skipped: the target {BARE_TARGET} is not installed (rustup target add {BARE_TARGET})");
        return;
    }
    let folder = tempfile::tempdir().expect("there is room for a folder");
    Builder { out: folder.path(), target: Some(BARE_TARGET) }.libraries();
}
