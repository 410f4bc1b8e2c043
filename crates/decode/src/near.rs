//! Suggestions for names that are not there.

use strsim::damerau_levenshtein;

/// At most this many names are listed.
const NAMES_LISTED: usize = 8;

/// The name that was most likely meant, if one is near enough.
pub(crate) fn nearest<'a>(name: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let lower = name.to_lowercase();
    // Capitals count only between names that are equally near without them.
    let distance = |other: &str| (damerau_levenshtein(&lower, &other.to_lowercase()), damerau_levenshtein(name, other));
    let allowed = 1 + name.chars().count() / 4;
    let best = known.into_iter().map(|other| (distance(other), other)).min_by_key(|&(distance, _)| distance)?;
    (best.0.0 <= allowed).then_some(best.1)
}

/// The end of a sentence: the name that was most likely meant, or those there are.
pub(crate) fn suggestion<'a>(name: &str, known: impl IntoIterator<Item = &'a str> + Clone) -> String {
    if let Some(near) = nearest(name, known.clone()) {
        return format!("did you mean `{near}`?");
    }
    let all: Vec<String> = known.into_iter().map(|name| format!("`{name}`")).collect();
    match all.len() {
        0 => "there are none".to_owned(),
        count if count <= NAMES_LISTED => {
            format!("there {} {}", if count == 1 { "is only" } else { "are" }, all.join(", "))
        }
        count => format!("there are {count}, among them {}", all[..NAMES_LISTED].join(", ")),
    }
}
