//! Which stretches of a text are formulas, and which are wholes (units, names of rules): the blanks in them follow rules of their own.

use crate::Span;
use crate::syntax::tree::{Body, BodyKind, File, Front, Gateway, ItemKind, Name, Signal, Value};

/// The stretches, sorted by their place.
#[derive(Debug, Default)]
pub(super) struct Spans {
    formulas: Vec<Span>,
    wholes: Vec<Span>,
}

impl Spans {
    pub(super) fn of(tree: &File) -> Self {
        let mut spans = Self::default();
        for item in &tree.items {
            spans.front(&item.front);
            match &item.kind {
                ItemKind::AllowInFile(rules) => spans.rules(rules),
                ItemKind::Frame(frame) => spans.body(&frame.body),
                ItemKind::Layout(layout) => spans.body(&layout.body),
                ItemKind::Gateway(gateway) => spans.gateway(gateway),
                ItemKind::Schedule(schedule) => schedule.slots.iter().for_each(|slot| spans.front(&slot.front)),
                _ => {}
            }
        }
        spans.formulas.sort_unstable();
        spans.wholes.sort_unstable();
        spans
    }

    fn front(&mut self, front: &Front) {
        self.rules(&front.allow);
    }

    fn rules(&mut self, rules: &[Name]) {
        self.wholes.extend(rules.iter().map(|rule| rule.span));
    }

    fn gateway(&mut self, gateway: &Gateway) {
        gateway.routes.iter().for_each(|route| self.front(&route.front));
    }

    fn body(&mut self, body: &Body) {
        for statement in &body.items {
            self.front(&statement.front);
            match &statement.kind {
                BodyKind::Signal(index) => self.signal(&body.signals[*index]),
                BodyKind::When(when) => self.body(&when.body),
                BodyKind::Otherwise(body) => self.body(body),
                BodyKind::Repeat(repeat) => self.body(&repeat.body),
                _ => {}
            }
        }
    }

    fn signal(&mut self, signal: &Signal) {
        if let Some(Value::Formula(formula)) = &signal.value {
            self.formulas.push(formula.span);
        }
        if let Some(unit) = &signal.unit {
            self.wholes.push(unit.span);
        }
    }

    /// Whether a place lies in a formula.
    pub(super) fn in_formula(&self, place: Span) -> bool {
        holds(&self.formulas, place)
    }

    /// Whether a place lies in a whole: what touches there belongs together.
    pub(super) fn in_whole(&self, place: Span) -> bool {
        holds(&self.wholes, place)
    }
}

fn holds(spans: &[Span], place: Span) -> bool {
    let behind = spans.partition_point(|span| span.start <= place.start);
    behind > 0 && place.end <= spans[behind - 1].end
}
