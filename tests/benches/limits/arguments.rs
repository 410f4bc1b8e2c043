//! What was asked for.

use std::path::PathBuf;

/// The rows that are measured together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Group {
    Core,
    Pcapng,
    Text,
    Csv,
    Tables,
    Lookup,
    Threads,
    Check,
}

impl Group {
    const ALL: [Self; 8] =
        [Self::Core, Self::Pcapng, Self::Text, Self::Csv, Self::Tables, Self::Lookup, Self::Threads, Self::Check];

    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Core => "core",
            Self::Pcapng => "pcapng",
            Self::Text => "text",
            Self::Csv => "csv",
            Self::Tables => "tables",
            Self::Lookup => "lookup",
            Self::Threads => "threads",
            Self::Check => "check",
        }
    }

    fn named(name: &str) -> Result<Self, String> {
        Self::ALL.into_iter().find(|group| group.name() == name).ok_or_else(|| {
            let names = Self::ALL.map(Self::name).join(", ");
            format!("there is no group `{name}`; there are {names}")
        })
    }
}

/// One measurement in a process of its own: the files to take.
#[derive(Debug)]
pub(crate) struct Fresh {
    pub(crate) description: PathBuf,
    pub(crate) recording: PathBuf,
}

#[derive(Debug)]
pub(crate) struct Arguments {
    /// Fewer frames and rounds: shows that all works, not how fast it is.
    pub(crate) quick: bool,
    pub(crate) groups: Vec<Group>,
    pub(crate) fresh: Option<Fresh>,
}

impl Arguments {
    pub(crate) fn read(mut words: impl Iterator<Item = String>) -> Result<Self, String> {
        let mut arguments = Self { quick: false, groups: Vec::new(), fresh: None };
        while let Some(word) = words.next() {
            let mut next = || words.next().ok_or_else(|| format!("`{word}` needs a word behind it"));
            match word.as_str() {
                // What `cargo bench` puts behind the arguments.
                "--bench" => {}
                "--quick" => arguments.quick = true,
                "--only" => arguments.groups.push(Group::named(&next()?)?),
                "--fresh" => {
                    arguments.fresh = Some(Fresh { description: next()?.into(), recording: next()?.into() });
                }
                other => return Err(format!("`{other}` is not known; there are --quick and --only GROUP")),
            }
        }
        if arguments.groups.is_empty() {
            arguments.groups = Group::ALL.to_vec();
        }
        Ok(arguments)
    }
}
