//! What every item carries for people: name, title, note, alias, certainty.

use wirelore_model::{Certainty, Label};

use crate::syntax::tree::{Front, Head};

/// The words of an item.
pub(crate) fn label(head: &Head, front: &Front) -> Label {
    Label {
        name: head.name.value.to_string(),
        title: head.title.as_ref().map(|title| title.value.to_string()),
        note: note(front),
        called: head.called.as_ref().map(|called| called.value.to_string()),
        certainty: head.certainty.as_ref().map(|certainty| Certainty {
            grade: certainty.value.grade,
            evidence: certainty.value.evidence.as_ref().map(ToString::to_string),
        }),
    }
}

/// The note in front of an item.
pub(crate) fn note(front: &Front) -> Option<String> {
    front.note.as_ref().map(|note| note.value.to_string())
}
