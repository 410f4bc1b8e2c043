//! What each crate gives to others, as declarations without bodies, in `tests/api/`: a change of it is seen in review.
//!
//! Read from the sources: every `pub` item counts, for the lint `unreachable_pub` lets none stand that nobody can reach.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use syn::{Attribute, Field, Fields, ImplItem, Item, ItemImpl, TraitItem, Type, Visibility};

/// The crates that other programs may depend on.
const CRATES: [&str; 11] =
    ["bits", "codegen", "decode", "draw", "lang", "log", "lorec", "model", "survey", "tables", "transport"];

#[test]
fn what_the_crates_give_to_others_is_written_down() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let is_blessed = std::env::var_os("BLESS").is_some();
    let mut changed = Vec::new();
    for name in CRATES {
        let listing = listing(&here.join("../crates").join(name).join("src"));
        let golden = here.join("api").join(format!("{name}.rs"));
        if is_blessed {
            fs::write(&golden, &listing).expect("the listings can be written");
        }
        let written = fs::read_to_string(&golden).unwrap_or_default();
        if written != listing {
            let first = listing.lines().zip(written.lines()).find(|(is, was)| is != was);
            changed.push(format!("{name}: first difference (now, written down) {first:?}"));
        }
    }
    assert!(changed.is_empty(), "what the crates give to others has changed; if that is meant, BLESS=1:\n{changed:#?}");
}

#[test]
fn only_what_others_can_use_is_listed() {
    let source = "
        /// Said elsewhere.
        #[derive(Debug, Clone)]
        #[must_use]
        pub struct Open { pub width: u32, hidden: u8 }
        pub struct Closed(u8);
        pub(crate) struct Inside;
        impl Open { pub fn width(&self) -> u32 { self.width } fn secret(&self) {} }
        impl From<u8> for Open { fn from(from: u8) -> Self { todo() } }
        impl Helper for Open {}
        impl Shown for Inside { fn needed(&self) {} }
        trait Helper { }
        pub trait Shown { fn default(&self) -> u8 { 1 } fn needed(&self); }
        #[cfg(test)] mod tests { pub fn no() {} }
        pub const ANSWER: u8 = 42;
    ";
    let items = syn::parse_file(source).expect("it is Rust").items;
    let items = Listing::of(&items).public(items);
    let listing = prettyplease::unparse(&syn::File { shebang: None, frontmatter: None, attrs: Vec::new(), items });
    let expected = "\
#[derive(Debug, Clone)]
pub struct Open {
    pub width: u32,
}
pub struct Closed;
impl Open {
    pub fn width(&self) -> u32 {}
}
impl From<u8> for Open {}
impl Helper for Open {}
pub trait Shown {
    fn default(&self) -> u8 {}
    fn needed(&self);
}
pub const ANSWER: u8 = 42;
";
    assert_eq!(listing, expected);
}

/// The public items of all files of a crate, each file under its path.
fn listing(source: &Path) -> String {
    let parsed = files(source).into_iter().map(|path| {
        let text = fs::read_to_string(&path).expect("a source can be read");
        (path, syn::parse_file(&text).expect("the crate compiles").items)
    });
    let parsed: Vec<(PathBuf, Vec<Item>)> = parsed.collect();
    let crate_wide = Listing::of(parsed.iter().flat_map(|(_, items)| items));
    let mut listing = String::new();
    for (path, items) in parsed {
        let items = crate_wide.public(items);
        if items.is_empty() {
            continue;
        }
        let place = path.strip_prefix(source).expect("it was found below it").to_string_lossy().replace('\\', "/");
        let text = prettyplease::unparse(&syn::File { shebang: None, frontmatter: None, attrs: Vec::new(), items });
        listing.push_str(&format!("// {place}\n\n{text}\n"));
    }
    listing.truncate(listing.trim_end().len());
    listing.push('\n');
    listing
}

/// All sources below a folder but the tests, in the order of their paths.
fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).expect("the folder is there") {
        let path = entry.expect("it can be listed").path();
        let name = path.file_stem().and_then(|name| name.to_str()).unwrap_or_default();
        if name == "tests" || name == "testing" {
            continue;
        }
        if path.is_dir() {
            found.extend(files(&path));
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(path);
        }
    }
    found.sort();
    found
}

/// What is known of a crate before its items are listed.
struct Listing {
    /// The names of its public types.
    types: BTreeSet<String>,
}

impl Listing {
    fn of<'a>(items: impl IntoIterator<Item = &'a Item>) -> Self {
        let name = |item: &Item| match item {
            Item::Struct(it) if is_public(&it.vis) => Some(it.ident.to_string()),
            Item::Enum(it) if is_public(&it.vis) => Some(it.ident.to_string()),
            _ => None,
        };
        Self { types: items.into_iter().filter_map(name).collect() }
    }

    /// The items that others can use, without bodies, comments and private parts.
    fn public(&self, items: Vec<Item>) -> Vec<Item> {
        let items = items.into_iter().filter(|item| !is_for_tests(attributes(item)));
        items.filter_map(|item| self.public_item(item)).collect()
    }

    fn public_item(&self, mut item: Item) -> Option<Item> {
        match &mut item {
            Item::Fn(it) => is_public(&it.vis).then(|| {
                keep(&mut it.attrs);
                it.block.stmts.clear();
            }),
            Item::Struct(it) => is_public(&it.vis).then(|| {
                keep(&mut it.attrs);
                public_fields(&mut it.fields);
            }),
            Item::Enum(it) => is_public(&it.vis).then(|| {
                keep(&mut it.attrs);
                for variant in &mut it.variants {
                    keep(&mut variant.attrs);
                    variant.fields.iter_mut().for_each(|field| keep(&mut field.attrs));
                }
            }),
            Item::Trait(it) => is_public(&it.vis).then(|| {
                keep(&mut it.attrs);
                it.items.iter_mut().for_each(declared);
            }),
            Item::Const(it) => is_public(&it.vis).then(|| keep(&mut it.attrs)),
            Item::Static(it) => is_public(&it.vis).then(|| keep(&mut it.attrs)),
            Item::Type(it) => is_public(&it.vis).then(|| keep(&mut it.attrs)),
            Item::Use(it) => is_public(&it.vis).then(|| keep(&mut it.attrs)),
            Item::Mod(it) => is_public(&it.vis).then(|| {
                keep(&mut it.attrs);
                if let Some((_, items)) = &mut it.content {
                    *items = self.public(std::mem::take(items));
                }
            }),
            Item::Impl(it) => {
                keep(&mut it.attrs);
                self.usable_parts(it)
            }
            _ => None,
        }
        .map(|()| item)
    }

    /// What a block of implementations adds for others.
    fn usable_parts(&self, block: &mut ItemImpl) -> Option<()> {
        if block.trait_.is_some() {
            block.items.retain(|item| matches!(item, ImplItem::Type(_)));
            return self.is_type_of_others(&block.self_ty).then_some(());
        }
        block.items.retain(|item| match item {
            ImplItem::Fn(it) => is_public(&it.vis) && !is_for_tests(&it.attrs),
            ImplItem::Const(it) => is_public(&it.vis),
            _ => false,
        });
        for item in &mut block.items {
            match item {
                ImplItem::Fn(it) => {
                    keep(&mut it.attrs);
                    it.block.stmts.clear();
                }
                ImplItem::Const(it) => keep(&mut it.attrs),
                _ => {}
            }
        }
        (!block.items.is_empty()).then_some(())
    }

    fn is_type_of_others(&self, named: &Type) -> bool {
        let Type::Path(named) = named else { return true };
        let last = named.path.segments.last().map(|segment| segment.ident.to_string()).unwrap_or_default();
        // Of one letter are the parameters of implementations for whole kinds of types.
        self.types.contains(&last) || last.len() == 1
    }
}

fn declared(item: &mut TraitItem) {
    match item {
        TraitItem::Fn(it) => {
            keep(&mut it.attrs);
            if let Some(block) = &mut it.default {
                block.stmts.clear();
            }
        }
        TraitItem::Const(it) => keep(&mut it.attrs),
        TraitItem::Type(it) => keep(&mut it.attrs),
        _ => {}
    }
}

fn public_fields(fields: &mut Fields) {
    let shown = |field: &Field| is_public(&field.vis);
    match fields {
        Fields::Named(it) => it.named = std::mem::take(&mut it.named).into_iter().filter(shown).collect(),
        Fields::Unnamed(it) => it.unnamed = std::mem::take(&mut it.unnamed).into_iter().filter(shown).collect(),
        Fields::Unit => {}
    }
    if matches!(fields, Fields::Unnamed(it) if it.unnamed.is_empty()) {
        *fields = Fields::Unit;
    }
    fields.iter_mut().for_each(|field| keep(&mut field.attrs));
}

/// Of attributes, those that others depend on.
fn keep(attributes: &mut Vec<Attribute>) {
    attributes
        .retain(|it| ["derive", "cfg", "non_exhaustive", "deprecated"].iter().any(|name| it.path().is_ident(name)));
}

fn is_public(visibility: &Visibility) -> bool {
    matches!(visibility, Visibility::Public(_))
}

fn is_for_tests(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|it| {
        it.path().is_ident("cfg") && it.meta.require_list().is_ok_and(|list| list.tokens.to_string() == "test")
    })
}

fn attributes(item: &Item) -> &[Attribute] {
    match item {
        Item::Fn(it) => &it.attrs,
        Item::Struct(it) => &it.attrs,
        Item::Enum(it) => &it.attrs,
        Item::Trait(it) => &it.attrs,
        Item::Impl(it) => &it.attrs,
        Item::Mod(it) => &it.attrs,
        Item::Use(it) => &it.attrs,
        _ => &[],
    }
}
