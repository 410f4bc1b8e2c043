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

#[cfg(test)]
mod tests {
    use super::suggestion;

    #[test]
    fn what_is_there_is_listed_where_nothing_is_near() {
        let names: Vec<String> = (0..9).map(|number| format!("signal_{number}")).collect();
        let told = |count: usize| suggestion("x", names[..count].iter().map(String::as_str));
        assert_eq!(suggestion("signl_3", names.iter().map(String::as_str)), "did you mean `signal_3`?");
        assert_eq!(told(0), "there are none");
        assert_eq!(told(1), "there is only `signal_0`");
        assert_eq!(told(2), "there are `signal_0`, `signal_1`");
        let eight = "`signal_0`, `signal_1`, `signal_2`, `signal_3`, `signal_4`, `signal_5`, `signal_6`, `signal_7`";
        assert_eq!(told(8), format!("there are {eight}"));
        assert_eq!(told(9), format!("there are 9, among them {eight}"));
    }
}
