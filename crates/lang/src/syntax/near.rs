//! Did you mean: the known word that is closest to a misspelt one.

/// Nobody misspells a keyword at this length, in bytes.
const LONGEST_WORD: usize = 100;

/// The candidate that a word most likely stands for, if one is close enough.
///
/// At most a third of the letters may differ, two at most; swapped neighbours count once.
pub(crate) fn nearest<'c>(word: &str, candidates: impl IntoIterator<Item = &'c str>) -> Option<&'c str> {
    if word.len() > LONGEST_WORD {
        return None;
    }
    let length = word.chars().count();
    let allowed = (length / 3).clamp(usize::from(length > 1), 2);
    let lower = word.to_lowercase();
    let mut best: Option<(usize, &str)> = None;
    for candidate in candidates {
        if candidate.len().abs_diff(word.len()) > 8 {
            continue;
        }
        let distance = strsim::osa_distance(&lower, candidate);
        if distance <= allowed && best.is_none_or(|(least, _)| distance < least) {
            best = Some((distance, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}
