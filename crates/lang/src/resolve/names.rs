//! Tables of names: one flat set for each kind of item.

use rustc_hash::FxHashMap;
use wirelore_model::{EcuId, FrameId, NetworkId, StatesId};

use crate::syntax::tree::{Head, Name};
use crate::{Diagnostic, FileId, Rule, Site};

use super::catalogue::{Catalogue, Sourced};
use super::messages::{Messages, at, suggest};

/// The names of one kind of item.
#[derive(Debug)]
pub(crate) struct Table<'t> {
    /// What the items are called in a sentence.
    kind: &'static str,
    /// How one is declared, for the way out.
    declaration: &'static str,
    unknown: Rule,
    by_name: FxHashMap<&'t str, u32>,
    sites: Vec<(&'t str, Site)>,
}

/// All tables.
#[derive(Debug)]
pub(crate) struct Names<'t> {
    networks: Table<'t>,
    ecus: Table<'t>,
    states: Table<'t>,
    layouts: Table<'t>,
    frames: Table<'t>,
}

impl<'t> Table<'t> {
    /// Enters the names of some items. A name that is taken belongs to the item that had it first.
    fn of<T>(
        kind: &'static str,
        declaration: &'static str,
        unknown: Rule,
        items: &[Sourced<'t, T>],
        head: impl Fn(&'t T) -> &'t Head<'t>,
        messages: &mut Messages,
    ) -> Self {
        let mut table =
            Self { kind, declaration, unknown, by_name: FxHashMap::default(), sites: Vec::with_capacity(items.len()) };
        for (item, index) in items.iter().zip(0..) {
            let name = &head(item.tree).name;
            let site = at(item.file, name.span);
            table.sites.push((&name.value, site));
            let first = *table.by_name.entry(&name.value).or_insert(index);
            if first != index {
                let (_, first_site) = table.sites[first as usize];
                messages.push(name_taken(kind, &name.value, site, first_site));
            }
        }
        table
    }

    /// Looks a name up; says so where there is none.
    fn find(&self, file: FileId, name: &Name, messages: &mut Messages) -> Option<u32> {
        if let Some(&index) = self.by_name.get(&*name.value) {
            return Some(index);
        }
        let text = format!("there is no {} called `{}`", self.kind, name.value);
        let message = Diagnostic::new(self.unknown, at(file, name.span), text).here("not declared anywhere");
        let meant = messages.nearest(&name.value, self.sites.iter().map(|(name, _)| *name));
        messages.push(if meant.is_empty() {
            self.how_to_declare(message, &name.value)
        } else {
            suggest(message, &meant)
        });
        None
    }

    fn how_to_declare(&self, message: Diagnostic, name: &str) -> Diagnostic {
        const SHOWN: usize = 6;
        let declaration = self.declaration.replace("NAME", name);
        let message = message.help(format!("declare it, for example: `{declaration}`"));
        if self.sites.is_empty() || self.sites.len() > SHOWN {
            return message;
        }
        let mut known: Vec<_> = self.sites.iter().map(|(name, _)| format!("`{name}`")).collect();
        known.sort_unstable();
        known.dedup();
        message.help(format!("declared so far: {}", known.join(", ")))
    }
}

impl<'t> Names<'t> {
    pub(crate) fn of(catalogue: &Catalogue<'t>, messages: &mut Messages) -> Self {
        Self {
            networks: Table::of(
                "network",
                "network NAME can 500 kbit/s",
                Rule::UnknownNetwork,
                &catalogue.networks,
                |network| &network.head,
                messages,
            ),
            ecus: Table::of("control unit", "ecu NAME", Rule::UnknownEcu, &catalogue.ecus, |ecu| &ecu.head, messages),
            states: Table::of(
                "table of states",
                "states NAME { 0 off, 1 on }",
                Rule::UnknownStates,
                &catalogue.states,
                |states| &states.head,
                messages,
            ),
            layouts: Table::of(
                "layout",
                "layout NAME { ... }",
                Rule::UnknownLayout,
                &catalogue.layouts,
                |layout| &layout.head,
                messages,
            ),
            frames: Table::of(
                "frame",
                "frame NAME on NETWORK id 0x123",
                Rule::UnknownFrame,
                &catalogue.frames,
                |frame| &frame.head,
                messages,
            ),
        }
    }

    pub(crate) fn network(&self, file: FileId, name: &Name, messages: &mut Messages) -> Option<NetworkId> {
        self.networks.find(file, name, messages).map(NetworkId)
    }

    pub(crate) fn ecu(&self, file: FileId, name: &Name, messages: &mut Messages) -> Option<EcuId> {
        self.ecus.find(file, name, messages).map(EcuId)
    }

    pub(crate) fn states(&self, file: FileId, name: &Name, messages: &mut Messages) -> Option<StatesId> {
        self.states.find(file, name, messages).map(StatesId)
    }

    pub(crate) fn frame(&self, file: FileId, name: &Name, messages: &mut Messages) -> Option<FrameId> {
        self.frames.find(file, name, messages).map(FrameId)
    }

    /// The position of a layout in the catalogue.
    pub(crate) fn layout(&self, file: FileId, name: &Name, messages: &mut Messages) -> Option<usize> {
        self.layouts.find(file, name, messages).map(|index| index as usize)
    }
}

/// The message about a name that is used a second time.
pub(crate) fn name_taken(kind: &str, name: &str, site: Site, first: Site) -> Diagnostic {
    Diagnostic::new(Rule::NameTaken, site, format!("there is already a {kind} called `{name}`"))
        .here("the same name again")
        .remark(first, "the first one")
        .help("rename one of them, or remove the one that is left over")
}
