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
    near_names(name, known).min_by_key(|(distance, _)| *distance).map(|(_, other)| other)
}

/// All different names that are as near as [`nearest_name`] asks for, the nearest first and at most so many; of names that are equally
/// near, the first in the alphabet.
///
/// ```
/// let known = ["driver", "drive", "driver", "seat"];
/// assert_eq!(wirelore_model::nearest_names("drvie", known, 3), ["drive"]);
/// assert_eq!(wirelore_model::nearest_names("drive", known, 3), ["drive", "driver"]);
/// ```
pub fn nearest_names<'k>(name: &str, known: impl IntoIterator<Item = &'k str>, most: usize) -> Vec<&'k str> {
    let mut near: Vec<_> = near_names(name, known).collect();
    near.sort_unstable();
    near.dedup();
    near.into_iter().take(most).map(|(_, other)| other).collect()
}

/// The letters that differ, without and with capitals.
type Distance = (usize, usize);

/// The names that are near enough, and how near.
fn near_names<'k>(name: &str, known: impl IntoIterator<Item = &'k str>) -> impl Iterator<Item = (Distance, &'k str)> {
    let letters = name.chars().count();
    let allowed = (letters / 3).clamp(usize::from(letters > 1), 2);
    let lower = name.to_lowercase();
    let is_comparable = name.len() <= LONGEST_NAME;
    let near = known.into_iter().take_while(move |_| is_comparable);
    near.filter(move |other| other.chars().count().abs_diff(letters) <= allowed)
        .map(move |other| ((osa_distance(&lower, &other.to_lowercase()), osa_distance(name, other)), other))
        .filter(move |(distance, _)| distance.0 <= allowed)
}
