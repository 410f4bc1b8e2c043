//! Which stretches of a text are formulas and which are units: the blanks in them follow rules of their own.

use crate::Span;
use crate::syntax::tree::{BodyItem, BodyKind, File, ItemKind, Signal, Value};

/// The stretches, sorted by their place.
#[derive(Debug, Default)]
pub(super) struct Spans {
    formulas: Vec<Span>,
    units: Vec<Span>,
}

impl Spans {
    pub(super) fn of(tree: &File) -> Self {
        let mut spans = Self::default();
        for item in &tree.items {
            match &item.kind {
                ItemKind::Frame(frame) => spans.body(&frame.body),
                ItemKind::Layout(layout) => spans.body(&layout.body),
                _ => {}
            }
        }
        spans
    }

    fn body(&mut self, body: &[BodyItem]) {
        for statement in body {
            match &statement.kind {
                BodyKind::Signal(signal) => self.signal(signal),
                BodyKind::When(when) => self.body(&when.body),
                BodyKind::Otherwise(body) => self.body(body),
                _ => {}
            }
        }
    }

    fn signal(&mut self, signal: &Signal) {
        if let Some(Value::Formula(formula)) = &signal.value {
            self.formulas.push(formula.span);
        }
        if let Some(unit) = &signal.unit {
            self.units.push(unit.span);
        }
    }

    /// Whether a place lies in a formula.
    pub(super) fn in_formula(&self, place: Span) -> bool {
        holds(&self.formulas, place)
    }

    /// Whether a place lies in a unit.
    pub(super) fn in_unit(&self, place: Span) -> bool {
        holds(&self.units, place)
    }
}

fn holds(spans: &[Span], place: Span) -> bool {
    let behind = spans.partition_point(|span| span.start <= place.start);
    behind > 0 && place.end <= spans[behind - 1].end
}
