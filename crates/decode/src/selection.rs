//! Which signals are wanted.

use rustc_hash::FxHashSet;
use wirelore_model::{Database, FrameId, SignalId};

use crate::error::SessionError;
use crate::near::suggestion;
use wirelore_model::nearest_name;

/// A choice of signals; the others are never touched while decoding.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Selection {
    /// `None`: all.
    wanted: Option<FxHashSet<(FrameId, SignalId)>>,
}

impl Selection {
    /// Every signal.
    #[must_use]
    pub fn all() -> Self {
        Self::default()
    }

    /// These signals and no others.
    #[must_use]
    pub fn of(signals: impl IntoIterator<Item = (FrameId, SignalId)>) -> Self {
        Self { wanted: Some(signals.into_iter().collect()) }
    }

    /// The signals that fit at least one of some patterns: `FRAME.SIGNAL`, or `FRAME` for all its signals, with `*` for any characters
    /// and `?` for one; several patterns with commas between them.
    ///
    /// # Errors
    /// [`SessionError::NoSuchSignal`] for a pattern that no signal fits, [`SessionError::NothingChosen`] where there is no pattern.
    pub fn matching(database: &Database, patterns: &str) -> Result<Self, SessionError> {
        let mut wanted = FxHashSet::default();
        let mut patterns = patterns.split(',').map(str::trim).filter(|pattern| !pattern.is_empty()).peekable();
        if patterns.peek().is_none() {
            return Err(SessionError::NothingChosen);
        }
        for pattern in patterns {
            let (frame_pattern, signal_pattern) = pattern.split_once('.').unwrap_or((pattern, "*"));
            let before = wanted.len();
            let mut fitted = false;
            for (frame, id) in database.frames.iter().zip((0..).map(FrameId)) {
                if !fits(frame_pattern, &frame.label.name) {
                    continue;
                }
                let signals = frame.signals.iter().zip((0..).map(SignalId));
                let fitting = signals.filter(|(signal, _)| fits(signal_pattern, &signal.label.name));
                wanted.extend(fitting.inspect(|_| fitted = true).map(|(_, signal)| (id, signal)));
            }
            if !fitted {
                debug_assert_eq!(wanted.len(), before, "nothing fitted, so nothing was added");
                let hint = hint(database, frame_pattern, signal_pattern);
                return Err(SessionError::NoSuchSignal { pattern: pattern.to_owned(), hint });
            }
        }
        Ok(Self { wanted: Some(wanted) })
    }

    /// Whether a signal is wanted.
    #[must_use]
    pub fn wants(&self, frame: FrameId, signal: SignalId) -> bool {
        self.wanted.as_ref().is_none_or(|wanted| wanted.contains(&(frame, signal)))
    }
}

/// What may have been meant: a frame, or a signal of the frame that was named.
fn hint(database: &Database, frame_pattern: &str, signal_pattern: &str) -> String {
    let frames = || database.frames.iter().filter(|frame| fits(frame_pattern, &frame.label.name));
    if frames().next().is_some() {
        let signals = frames().flat_map(|frame| &frame.signals).map(|signal| signal.label.name.as_str());
        return suggestion(signal_pattern, signals);
    }
    let holder = database.frames.iter().find(|frame| frame.signals_named(frame_pattern).next().is_some());
    match (holder, nearest_name(frame_pattern, database.frames.iter().map(|frame| frame.label.name.as_str()))) {
        (Some(frame), _) => format!("write FRAME.SIGNAL; did you mean `{}.{frame_pattern}`?", frame.label.name),
        (None, Some(near)) => format!("did you mean frame `{near}`?"),
        (None, None) => "write FRAME.SIGNAL with * and ?, such as 'wheel_speeds.*'".to_owned(),
    }
}

/// Whether a name fits a pattern of characters, `*` and `?`. Takes at most the product of their lengths.
fn fits(pattern: &str, name: &str) -> bool {
    let (pattern, name): (Vec<char>, Vec<char>) = (pattern.chars().collect(), name.chars().collect());
    let (mut p, mut n) = (0, 0);
    // The last `*` and how much of the name it has taken.
    let mut star: Option<(usize, usize)> = None;
    while n < name.len() {
        match pattern.get(p) {
            Some('*') => {
                star = Some((p, n));
                p += 1;
            }
            Some(&character) if character == '?' || character == name[n] => {
                p += 1;
                n += 1;
            }
            _ => {
                let Some((at, taken)) = star else {
                    return false;
                };
                star = Some((at, taken + 1));
                p = at + 1;
                n = taken + 1;
            }
        }
    }
    pattern[p..].iter().all(|&character| character == '*')
}

#[cfg(test)]
mod tests {
    use super::{Selection, fits};
    use crate::testing::{frame, id, one_frame, unsigned};

    #[test]
    fn no_pattern_is_no_choice() {
        let database = one_frame(frame("f", id(1), vec![unsigned("s", "0.7..0.0")]));
        for patterns in ["", " ", ",", " , "] {
            let error = Selection::matching(&database, patterns).expect_err("no pattern").to_string();
            assert_eq!(error, "no signal is chosen: write FRAME.SIGNAL with * and ?, such as 'wheel_speeds.*'");
        }
    }

    #[test]
    fn patterns_fit_whole_names() {
        for (pattern, name) in [
            ("*", ""),
            ("*", "abc"),
            ("a*c", "abbbc"),
            ("a?c", "abc"),
            ("*b*", "abc"),
            ("cell[*]", "cell[12]"),
            ("**a", "aa"),
        ] {
            assert!(fits(pattern, name), "{pattern} {name}");
        }
        for (pattern, name) in [("", "a"), ("a", ""), ("a?c", "ac"), ("a*b", "abc"), ("?", "äö"), ("ab", "abc")] {
            assert!(!fits(pattern, name), "{pattern} {name}");
        }
    }
}
