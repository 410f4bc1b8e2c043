//! What every item carries for people: name, title, note, alias, certainty.

use wirelore_model::{Certainty, Label};

use crate::syntax::tree::{Front, Head};

/// The words of an item.
pub(crate) fn label(head: &Head, front: &Front) -> Label {
    Label {
        name: head.name.value.clone(),
        title: head.title.as_ref().map(|title| title.value.clone()),
        note: note(front),
        called: head.called.as_ref().map(|called| called.value.clone()),
        certainty: head
            .certainty
            .as_ref()
            .map(|certainty| Certainty { grade: certainty.value.grade, evidence: certainty.value.evidence.clone() }),
    }
}

/// The note in front of an item.
pub(crate) fn note(front: &Front) -> Option<String> {
    front.note.as_ref().map(|note| note.value.clone())
}
