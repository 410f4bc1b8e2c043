//! Did you mean: the known name that is closest to a misspelt one.

use strsim::osa_distance;

/// Nobody misspells a name of this length, in bytes; longer ones are not compared.
const LONGEST_NAME: usize = 100;

/// The name that was most likely meant, if one is near enough: at most a third of the letters differ, and never more than two.
/// Swapped neighbours count once; capitals count only between names that are equally near without them.
///
/// ```
/// let known = ["front_left", "front_right", "alive"];
/// assert_eq!(wirelore_model::nearest_name("front_lfet", known), Some("front_left"));
/// assert_eq!(wirelore_model::nearest_name("torque", known), None);
/// ```
pub fn nearest_name<'k>(name: &str, known: impl IntoIterator<Item = &'k str>) -> Option<&'k str> {
    if name.len() > LONGEST_NAME {
        return None;
    }
    let letters = name.chars().count();
    let allowed = (letters / 3).clamp(usize::from(letters > 1), 2);
    let lower = name.to_lowercase();
    let distance = |other: &str| (osa_distance(&lower, &other.to_lowercase()), osa_distance(name, other));
    let close_in_length = |other: &&str| other.chars().count().abs_diff(letters) <= allowed;
    let near = known.into_iter().filter(close_in_length).map(|other| (distance(other), other));
    let (best, other) = near.min_by_key(|(distance, _)| *distance)?;
    (best.0 <= allowed).then_some(other)
}
