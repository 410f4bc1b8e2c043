//! What the program and its tests are made of besides their own code: packages of the public registry alone, each under a licence that asks for
//! no more than to be named.
//!
//! Licences are expressions of the SPDX specification, annex "SPDX license expressions"; older packages write `/` for `OR`.

use std::process::Command;

use serde_json::Value;

const REGISTRY: &str = "registry+https://github.com/rust-lang/crates.io-index";

const ACCEPTED: [&str; 11] = [
    "0BSD",
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "CC0-1.0",
    "MIT",
    "MIT-0",
    "NCSA",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// The manifests of the workspaces: the programs; the fuzz targets and the package for Python, whose packages a machine may not have.
const MANIFESTS: [(&str, bool); 3] =
    [("../Cargo.toml", true), ("../fuzz/Cargo.toml", false), ("../crates/python/Cargo.toml", false)];

/// Whether an expression leaves a way in which every licence is accepted.
fn is_accepted(expression: &str) -> bool {
    let spaced = expression.replace('(', " ( ").replace(')', " ) ").replace('/', " OR ");
    let mut words = spaced.split_whitespace().peekable();
    any_of(&mut words) == Some(true) && words.next().is_none()
}

type Words<'a, 'e> = &'a mut std::iter::Peekable<std::str::SplitWhitespace<'e>>;

/// The functions below give `None` for what is no expression.
fn any_of(words: Words<'_, '_>) -> Option<bool> {
    let mut accepted = all_of(words)?;
    while words.next_if_eq(&"OR").is_some() {
        accepted |= all_of(words)?;
    }
    Some(accepted)
}

fn all_of(words: Words<'_, '_>) -> Option<bool> {
    let mut accepted = one(words)?;
    while words.next_if_eq(&"AND").is_some() {
        accepted &= one(words)?;
    }
    Some(accepted)
}

fn one(words: Words<'_, '_>) -> Option<bool> {
    match words.next()? {
        "(" => {
            let accepted = any_of(words)?;
            words.next_if_eq(&")").map(|_| accepted)
        }
        licence if is_joint(licence) => None,
        licence => {
            // An exception gives more rights, never fewer.
            if words.next_if_eq(&"WITH").is_some() {
                words.next_if(|word| !is_joint(word))?;
            }
            Some(ACCEPTED.contains(&licence))
        }
    }
}

fn is_joint(word: &str) -> bool {
    ["OR", "AND", "WITH", "(", ")"].contains(&word)
}

#[test]
fn expressions_are_understood() {
    let good = [
        "MIT",
        "MIT OR Apache-2.0 OR LGPL-2.1-or-later",
        "Unlicense/MIT",
        "(MIT OR Apache-2.0) AND Unicode-3.0",
        "Apache-2.0 WITH LLVM-exception OR GPL-3.0-only",
        "GPL-3.0-only OR MIT AND Zlib",
    ];
    let bad = [
        "",
        "GPL-3.0-only",
        "MIT AND GPL-3.0-only",
        "(GPL-3.0-only OR MPL-2.0) AND MIT",
        "MIT OR",
        "(MIT",
        "MIT MIT",
        "MIT WITH",
        "MIT WITH OR",
    ];
    for (expressions, wanted) in [(&good[..], true), (&bad[..], false)] {
        for expression in expressions {
            assert_eq!(is_accepted(expression), wanted, "{expression:?}");
        }
    }
}

#[test]
fn every_package_is_from_the_registry_and_may_be_used() {
    let mut packages = 0;
    for (manifest, is_needed) in MANIFESTS {
        let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
        let arguments = ["metadata", "--format-version", "1", "--locked", "--manifest-path", manifest];
        let output = Command::new(cargo).args(arguments).output().expect("cargo starts");
        if !output.status.success() {
            let reason = String::from_utf8_lossy(&output.stderr);
            let has_no_network =
                ["download", "resolve host", "network", "offline"].iter().any(|word| reason.contains(word));
            assert!(has_no_network && !is_needed, "{manifest}: cannot be asked for its packages: {reason}");
            println!("skipped: {manifest}: {reason}");
            continue;
        }
        let metadata: Value = serde_json::from_slice(&output.stdout).expect("cargo writes JSON");
        for package in metadata["packages"].as_array().expect("there are packages") {
            let (name, licence) = (&package["name"], package["license"].as_str().unwrap_or_default());
            let Some(source) = package["source"].as_str() else {
                assert!(name.as_str().is_some_and(|name| name.starts_with("wirelore")), "{name} is not ours");
                continue;
            };
            assert_eq!(source, REGISTRY, "{name}");
            assert!(is_accepted(licence), "{name}: {licence:?}");
            packages += 1;
        }
    }
    assert!(packages > 150, "{packages} packages say little");
}
