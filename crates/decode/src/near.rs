//! Suggestions for names that are not there.

use wirelore_model::nearest_name;

/// At most this many names are listed.
const NAMES_LISTED: usize = 8;

/// The end of a sentence: the name that was most likely meant, or those there are.
pub(crate) fn suggestion<'a>(name: &str, known: impl IntoIterator<Item = &'a str> + Clone) -> String {
    if let Some(near) = nearest_name(name, known.clone()) {
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
