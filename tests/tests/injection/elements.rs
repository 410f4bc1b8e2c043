//! The elements of a picture or page, as a browser would find them.

use std::collections::BTreeSet;

/// Every element by its name, with the names of its attributes.
pub(crate) fn of(page: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let mut rest = page;
    while let Some(at) = rest.find('<') {
        rest = &rest[at + 1..];
        let end = tag_end(rest);
        let tag = &rest[..end];
        rest = &rest[end + 1..];
        found.insert(names(tag));
        // What is inside these two is text; nothing from outside may be.
        for raw in ["script", "style"] {
            if tag == raw {
                let inside = rest.find(&format!("</{raw}>")).expect("it ends");
                found.insert(format!("{raw}: {}", &rest[..inside]));
                rest = &rest[inside..];
            }
        }
    }
    found
}

/// Where a tag ends; a `>` in quotes is no end.
fn tag_end(tag: &str) -> usize {
    let mut quote = None;
    for (at, letter) in tag.char_indices() {
        match (quote, letter) {
            (None, '>') => return at,
            (None, '"' | '\'') => quote = Some(letter),
            (Some(open), letter) if open == letter => quote = None,
            _ => {}
        }
    }
    panic!("a tag does not end: {tag:.80}");
}

fn names(tag: &str) -> String {
    let (mut names, mut quote) = (String::new(), None);
    for letter in tag.chars() {
        match (quote, letter) {
            (None, '"' | '\'') => quote = Some(letter),
            (Some(open), letter) if open == letter => quote = None,
            (None, letter) => names.push(letter),
            (Some(_), _) => {}
        }
    }
    names
}
