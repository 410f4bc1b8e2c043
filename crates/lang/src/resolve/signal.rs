//! Signals: from the tree to the model.

use wirelore_bits::{Encoding, EncodingError, NumberKind};
use wirelore_model::{ByteSpan, Content, Role, Scaling, Shown, Signal, States, StatesId, TroubleCode, ValueRange};

use crate::check;
use crate::syntax::tree::{self, Kind, RawRange, StatesClause, Value};
use crate::{Diagnostic, Rule, Site, Span};

use super::Resolver;
use super::array::{self, Array};
use super::flat::{Scope, Scoped};
use super::flatten::{too_many_signals, weight};
use super::label::label;
use super::messages::Messages;
use super::place::Placer;
use super::role::{self, Duty};
use super::states::Fit;
use super::{curve, formula, marks, protection, raw, states, unit};

/// Reads a signal into a frame's list: one, or as many as its array has elements. None where its place is broken; a message says so.
/// Tells whether its place is uncertain.
pub(crate) fn read<'t>(
    resolver: &mut Resolver<'_, 't>,
    scoped: &Scoped<'t, tree::Signal<'t>>,
    scope: &Scope,
    fixed_length: Option<u32>,
    signals: &mut Vec<Signal>,
) -> bool {
    let tree = scoped.tree;
    if let Some(written) = &tree.extras().protection {
        signals.extend(protection::read(scoped, written, &mut Placer::new(scope, resolver.messages, fixed_length)));
        return false;
    }
    let array = array::read(tree, scope, resolver.messages);
    let mut placer = Placer::new(scope, resolver.messages, fixed_length);
    let content = content(tree, &mut placer);
    let is_uncertain = placer.is_uncertain;
    let Some(content) = content else {
        without_place(resolver, tree, scope);
        return is_uncertain;
    };
    // The signal is made where it stays.
    signals.push(bare(scoped, scope, content));
    if let Some(signal) = signals.last_mut() {
        complete(resolver, signal, tree, scope, fixed_length);
    }
    if !matches!(array, Ok(None)) {
        let first = signals.pop();
        if let (Ok(Some(array)), Some(first)) = (array, first) {
            elements(resolver, &first, &array, scoped, scope, signals);
        }
    }
    is_uncertain
}

/// Reads what can be read of a signal whose bits are not known.
fn without_place<'t>(resolver: &mut Resolver<'_, 't>, tree: &'t tree::Signal<'t>, scope: &Scope) {
    if let Some(Value::Formula(written)) = &tree.value {
        formula::affine(written, scope, resolver.messages);
    }
    if let Some(written) = &tree.unit {
        unit::read(written, scope, resolver.messages);
    }
    range(tree, scope, resolver.messages);
    match tree.extras().states.as_ref().map(|states| &states.value) {
        Some(StatesClause::Own(words)) => drop(states::words(words, None, scope.file, resolver.messages)),
        Some(StatesClause::Table(name)) => drop(table_named(resolver, name, scope)),
        None => {}
    }
}

/// A signal of which no more is known than its name and its bits.
fn bare(scoped: &Scoped<'_, tree::Signal<'_>>, scope: &Scope, content: Content) -> Signal {
    let mut label = label(&scoped.tree.head, &scoped.item.front);
    if !scope.prefix.is_empty() {
        label.name.insert_str(0, &scope.prefix);
    }
    label.name.push_str(&scope.suffix);
    Signal {
        label,
        page: scope.page,
        content,
        scaling: Scaling::Raw,
        unit: None,
        states: None,
        range: None,
        absent: Vec::new(),
        fault: Vec::new(),
        role: Role::Value,
        shown: Shown::Decimal,
    }
}

/// Reads everything else about a signal.
fn complete<'t>(
    resolver: &mut Resolver<'_, 't>,
    signal: &mut Signal,
    tree: &'t tree::Signal<'t>,
    scope: &Scope,
    fixed_length: Option<u32>,
) {
    let Some(encoding) = signal.encoding() else {
        say_numbers_only(tree, scope, resolver);
        return;
    };
    if let Some(size) = &tree.extras().size {
        let message = "a `size` is for text and bytes; how wide a number is follows from its place";
        let message = Diagnostic::new(Rule::KindDoesNotFit, scope.site(size.span), message).here("not for numbers");
        resolver.messages.push(message);
    }
    let fit = number(resolver, signal, tree, encoding, scope);
    if let Content::Number { field, .. } = &signal.content {
        let duty = Duty { signal: tree, field: *field, encoding };
        signal.role = role::read(duty, &mut Placer::new(scope, resolver.messages, fixed_length));
    }
    check::values::signal(signal, tree, encoding, fit.as_deref(), scope, resolver.messages);
    if is_trouble_code(tree) {
        signal.scaling = Scaling::TroubleCode;
        say_quantities_only(tree, scope, resolver);
        (signal.unit, signal.range, signal.role) = (None, None, Role::Value);
    } else if scope.settings.marks_j1939 {
        marks::add(signal, encoding, fit.as_deref());
    }
}

/// Where the bits are, in the payload itself, and how they are read.
fn content(tree: &tree::Signal, placer: &mut Placer<'_>) -> Option<Content> {
    let place = tree.place.as_ref()?;
    let base = placer.scope.base;
    let kind = match tree.kind.map_or(Kind::Unsigned, |kind| kind.value) {
        Kind::Text(charset) => {
            // Which signal says the size is looked up when all are known.
            return Some(Content::Text { bytes: moved(placer.byte_span(place)?, base)?, charset, size: None });
        }
        Kind::Bytes => return Some(Content::Bytes { bytes: moved(placer.byte_span(place)?, base)?, size: None }),
        Kind::Unsigned | Kind::Flag | Kind::TroubleCode => NumberKind::Unsigned,
        Kind::Signed => NumberKind::Signed,
        Kind::SignMagnitude => NumberKind::SignMagnitude,
        Kind::Float => NumberKind::Float,
        Kind::Bcd => NumberKind::Bcd,
    };
    let field = placer.field(place)?.shifted(base)?;
    let width = field.width();
    let is_flag = tree.kind.is_some_and(|kind| kind.value == Kind::Flag);
    let is_no_code = is_trouble_code(tree) && !TroubleCode::has_width(width);
    let trouble = match Encoding::new(kind, width) {
        Ok(_) if is_no_code => format!("a trouble code has 16 or 24 bits, and this place has {width}"),
        Ok(_) if !is_flag || width == 1 => return Some(Content::Number { field, kind }),
        Ok(_) => format!("a flag is one bit, and this place has {width}"),
        Err(EncodingError::FloatWidth { .. }) => format!("a float has 16, 32 or 64 bits, and this place has {width}"),
        Err(EncodingError::BcdWidth { .. }) => format!("decimal digits take 4 bits each, and this place has {width}"),
        Err(EncodingError::SignWithoutSize) => {
            "a sign and a size take at least 2 bits, and this place has 1".to_owned()
        }
        Err(EncodingError::Width { .. }) => format!("a number has 1 to 64 bits, and this place has {width}"),
    };
    let site = placer.scope.site(tree.kind.map_or(place.span, |kind| kind.span));
    placer.messages.push(
        Diagnostic::new(Rule::KindDoesNotFit, site, trouble)
            .here("does not fit the place")
            .remark(placer.scope.site(place.span), format!("{width} {}", if width == 1 { "bit" } else { "bits" }))
            .help("correct the place or the kind"),
    );
    None
}

fn moved(bytes: ByteSpan, base: u32) -> Option<ByteSpan> {
    let last = match bytes.last {
        Some(last) => Some(last.checked_add(base)?),
        None => None,
    };
    Some(ByteSpan { first: bytes.first.checked_add(base)?, last })
}

/// Reads what only numbers have.
fn number<'t>(
    resolver: &mut Resolver<'_, 't>,
    signal: &mut Signal,
    tree: &'t tree::Signal<'t>,
    encoding: Encoding,
    scope: &Scope,
) -> Option<std::rc::Rc<Fit>> {
    let scaling = scaling(tree, encoding, scope, resolver);
    signal.unit = tree.unit.as_ref().and_then(|written| unit::read(written, scope, resolver.messages));
    // A formula that could not be read leaves nothing to compare a range with.
    signal.range = range(tree, scope, resolver.messages).filter(|_| scaling.is_some()).map(Box::new);
    signal.scaling = scaling.unwrap_or(Scaling::Raw);
    signal.absent = specials(&tree.extras().absent, encoding, scope, resolver);
    signal.fault = specials(&tree.extras().fault, encoding, scope, resolver);
    signal.shown = shown(signal, tree, encoding, scope, resolver.messages);
    let (states, fit) = states_of(resolver, tree, encoding, scope)?;
    signal.states = Some(states);
    Some(fit)
}

/// Digits in hexadecimal are for bits that are no quantity.
fn shown(signal: &Signal, tree: &tree::Signal, encoding: Encoding, scope: &Scope, messages: &mut Messages) -> Shown {
    let Some(span) = tree.extras().shown else { return Shown::Decimal };
    let trouble = if is_trouble_code(tree) {
        "a trouble code has a text of its own"
    } else if encoding.kind() != NumberKind::Unsigned {
        "only unsigned numbers are shown in hex"
    } else if signal.scaling != Scaling::Raw || signal.unit.is_some() {
        "what has a formula or a unit is a quantity, and not shown in hex"
    } else {
        return Shown::Hexadecimal;
    };
    messages.push(
        Diagnostic::new(Rule::KindDoesNotFit, scope.site(span), trouble)
            .here("shows the bits as they are")
            .help("take `shown in hex` away; it is for identifiers, part numbers and the like"),
    );
    Shown::Decimal
}

fn range(tree: &tree::Signal, scope: &Scope, messages: &mut Messages) -> Option<ValueRange> {
    let range = tree.range.as_ref()?;
    let (low, high) = range.value;
    if low <= high {
        return Some(ValueRange { low, high });
    }
    messages.push(
        Diagnostic::new(
            Rule::RangeUpsideDown,
            scope.site(range.span),
            format!("this range goes from {low} down to {high}"),
        )
        .here("the smaller number comes first")
        .help(format!("write `range {high}..{low}`")),
    );
    None
}

/// What raw numbers mean; `None` where that is said and could not be read.
fn scaling(tree: &tree::Signal, encoding: Encoding, scope: &Scope, resolver: &mut Resolver<'_, '_>) -> Option<Scaling> {
    match &tree.value {
        None => Some(Scaling::Raw),
        Some(Value::Formula(written)) => {
            let affine = formula::affine(written, scope, resolver.messages)?;
            Some(if affine.is_identity() { Scaling::Raw } else { Scaling::Affine(affine) })
        }
        Some(Value::Curve { span, .. }) if encoding.kind() == NumberKind::Float => {
            let message = Diagnostic::new(Rule::KindDoesNotFit, scope.site(*span), "a float has no curve");
            resolver.messages.push(message.here("a curve goes from whole raw numbers to values"));
            None
        }
        Some(Value::Curve { points, span }) => {
            curve::read(points, *span, encoding, scope, resolver.messages).map(Scaling::Curve)
        }
    }
}

fn specials(
    written: &[RawRange],
    encoding: Encoding,
    scope: &Scope,
    resolver: &mut Resolver<'_, '_>,
) -> Vec<wirelore_model::RawSpan> {
    let mut read = |range: &RawRange| {
        raw::fitting_span(range, encoding, Rule::SpecialOutsideWidth, scope.site(range.span), resolver.messages)
    };
    written.iter().filter_map(&mut read).collect()
}

fn states_of<'t>(
    resolver: &mut Resolver<'_, 't>,
    tree: &'t tree::Signal<'t>,
    encoding: Encoding,
    scope: &Scope,
) -> Option<(States, std::rc::Rc<Fit>)> {
    let clause = tree.extras().states.as_ref()?;
    let name = match &clause.value {
        StatesClause::Own(written) => {
            let words = states::words(written, Some(encoding), scope.file, resolver.messages);
            let fit = Fit::of_own(&words, encoding);
            return Some((States::Own(words), fit.into()));
        }
        StatesClause::Table(name) => name,
    };
    let id = table_named(resolver, name, scope)?;
    let table = &resolver.catalogue.states[id.index()];
    let fit = resolver.fits.get(id, encoding, table);
    if let Some((why, word)) = &fit.problem {
        resolver.messages.push(
            Diagnostic::new(
                Rule::StateOutsideWidth,
                scope.site(clause.span),
                format!("`{}` does not fit `{}`: {why}", name.value, tree.head.name.value),
            )
            .here(format!("used for {} bits", encoding.width()))
            .remark(Site { file: table.file, span: *word }, "this word of the table")
            .help("widen the signal, or give it a table of its own"),
        );
    }
    Some((States::Table(id), fit))
}

fn table_named(resolver: &mut Resolver<'_, '_>, name: &tree::Name, scope: &Scope) -> Option<StatesId> {
    let id = resolver.names.states(scope.file, name, resolver.messages)?;
    resolver.used_states[id.index()] = true;
    Some(id)
}

fn is_trouble_code(tree: &tree::Signal) -> bool {
    tree.kind.is_some_and(|kind| kind.value == Kind::TroubleCode)
}

/// Says what trouble codes cannot have.
fn say_quantities_only(tree: &tree::Signal, scope: &Scope, resolver: &mut Resolver<'_, '_>) {
    let extras = tree.extras();
    let clauses = [
        (tree.value.as_ref().map(span_of_value), "formula"),
        (tree.range.as_ref().map(|range| range.span), "range"),
        (extras.counter.as_ref().map(|counter| counter.span), "counter"),
        (extras.checksum.as_ref().map(|checksum| checksum.span), "checksum"),
    ];
    for (span, what) in clauses {
        let Some(span) = span else { continue };
        let message = Diagnostic::new(Rule::KindDoesNotFit, scope.site(span), format!("a trouble code has no {what}"));
        resolver.messages.push(message.here("only quantities have this"));
    }
}

fn span_of_value(value: &Value) -> Span {
    match value {
        Value::Formula(formula) => formula.span,
        Value::Curve { span, .. } => *span,
    }
}

/// Says which clauses text and bytes cannot have.
fn say_numbers_only(tree: &tree::Signal, scope: &Scope, resolver: &mut Resolver<'_, '_>) {
    let value = tree.value.as_ref().map(span_of_value);
    let extras = tree.extras();
    let clauses = [
        (value, "formula"),
        (tree.unit.as_ref().map(|unit| unit.span), "unit"),
        (extras.states.as_ref().map(|states| states.span), "states"),
        (tree.range.as_ref().map(|range| range.span), "range"),
        (extras.absent.first().map(|range| range.span), "absent value"),
        (extras.fault.first().map(|range| range.span), "fault value"),
        (extras.counter.as_ref().map(|counter| counter.span), "counter"),
        (extras.checksum.as_ref().map(|checksum| checksum.span), "checksum"),
        (extras.shown, "way to be shown"),
    ];
    for (span, what) in clauses {
        let Some(span) = span else { continue };
        let message = Diagnostic::new(Rule::KindDoesNotFit, scope.site(span), format!("text and bytes have no {what}"));
        resolver.messages.push(message.here("only numbers have this"));
    }
}

/// Adds a signal for each element of an array.
fn elements(
    resolver: &mut Resolver<'_, '_>,
    signal: &Signal,
    array: &Array,
    scoped: &Scoped<'_, tree::Signal<'_>>,
    scope: &Scope,
    signals: &mut Vec<Signal>,
) {
    let site = scope.site(scoped.tree.extras().elements.as_ref().map_or(scoped.item.span, |elements| elements.span));
    let count = array.numbers.end() - array.numbers.start() + 1;
    if count > 1 && matches!(signal.role, Role::Checksum(_)) {
        resolver.messages.push(
            Diagnostic::new(Rule::KindDoesNotFit, site, "a checksum cannot be an array").here("several elements"),
        );
        return;
    }
    if !resolver.budget.generate(weight(scoped.item, &scope.prefix) * count as usize) {
        resolver.messages.push(too_many_signals(site));
        return;
    }
    signals.reserve(count as usize);
    for (index, number) in (0..count).zip(array.numbers.clone()) {
        let Some(content) = array.content(&signal.content, index) else {
            let message = format!("element {number} of `{}` is out of any payload", scoped.tree.head.name.value);
            resolver.messages.push(
                Diagnostic::new(Rule::OutsideFrame, site, message)
                    .here("too far apart, too many, or steps that do not fit its kind"),
            );
            break;
        };
        let mut element = signal.clone();
        element.label.name = format!("{}[{number}]", signal.label.name);
        element.content = content;
        signals.push(element);
    }
}
