//! Pages as enums, and the functions that tell which one holds.

use wirelore_bits::NumberKind;
use wirelore_model::{RawSpan, RawValue, SignalId, Test};

use crate::classes::{Span, first_wins, leaves_some};
use crate::docs::ticked;
use crate::number::{double, number, pattern};
use crate::plan::{FramePlan, Group, Pages, PlaceOf, lifetime};
use crate::writer::Writer;

/// The enum of a switch.
pub(crate) fn write_enum(writer: &mut Writer, plan: &FramePlan<'_>, pages: &Pages<'_>) {
    let lifetime = lifetime(pages.borrows());
    writer.gap();
    writer.line("/// What is there under a condition: at most one of these.");
    writer.line("#[derive(Clone, Copy, Debug, PartialEq)]");
    writer.line("// Without allocation there are no boxes.");
    writer.line("#[allow(clippy::enum_variant_names, clippy::large_enum_variant)]");
    writer.open(format!("pub enum {}{lifetime} {{", pages.enum_name));
    for (variant, group) in &pages.pages {
        writer.line(format!("/// {}", condition(plan, group)));
        writer.line(format!("{variant}({}),", group.type_text()));
    }
    writer.line("/// No page takes the value, or the payload ends before it.");
    writer.line("NoPage,");
    writer.close("}");
}

/// When a page is there.
pub(crate) fn condition(plan: &FramePlan<'_>, group: &Group<'_>) -> String {
    let tests = group.page.map_or(&[][..], |page| &page.tests);
    if tests.is_empty() {
        return "Otherwise.".to_owned();
    }
    let one = |test: &Test| {
        let selector = &plan.frame.signals[test.selector.index()];
        let values: Vec<String> = test.values.iter().map(ToString::to_string).collect();
        let name = &selector.label.name;
        let name = if group.base > 0 { name.split('[').next().unwrap_or(name) } else { name };
        format!("`{}` is {}", ticked(name), values.join(", "))
    };
    format!("When {}.", tests.iter().map(one).collect::<Vec<_>>().join(" and "))
}

/// The function that gives the position of the page that holds, or how many there are where none does.
pub(crate) fn write_select(writer: &mut Writer, plan: &FramePlan<'_>, around: &Group<'_>, pages: &Pages<'_>) {
    let tests: Vec<&[Test]> =
        pages.pages.iter().map(|(_, group)| group.page.map_or(&[][..], |page| &page.tests)).collect();
    let otherwise = tests.iter().position(|tests| tests.is_empty());
    let none = pages.pages.len();
    writer.gap();
    writer.line("#[inline]");
    writer.function(&format!("fn {}", pages.select), &["payload: &[u8]"], "usize");
    let known = Selectors::of(plan, around, tests.iter().copied().flatten());
    match known.only(&tests) {
        Some(place) => write_match(writer, &known, place, &tests, otherwise.unwrap_or(none), none),
        None => write_tests(writer, &known, &tests, otherwise.unwrap_or(none), none),
    }
    writer.close("}");
}

/// The selectors of a switch.
struct Selectors<'p> {
    places: Vec<(SignalId, &'p PlaceOf)>,
    /// The type that the functions belong to.
    around: &'p str,
}

impl<'p> Selectors<'p> {
    fn of<'t>(plan: &'p FramePlan<'_>, around: &'p Group<'_>, tests: impl Iterator<Item = &'t Test>) -> Self {
        let mut places: Vec<(SignalId, &PlaceOf)> = Vec::new();
        for test in tests {
            if places.iter().all(|(known, _)| *known != test.selector) {
                places.extend(plan.places.get(&test.selector).map(|place| (test.selector, place)));
            }
        }
        Self { places, around: &around.name }
    }

    /// The only selector, of whole numbers, where each page looks at it once.
    fn only(&self, tests: &[&[Test]]) -> Option<&'p PlaceOf> {
        match self.places[..] {
            [(_, place)] if tests.iter().all(|tests| tests.len() <= 1) => place.encoding.integer_range().map(|_| place),
            _ => None,
        }
    }
}

/// Gives the otherwise page where no other holds; but a selector that is not there, or makes no number, has no page where it is the only one.
fn write_match(
    writer: &mut Writer,
    known: &Selectors<'_>,
    place: &PlaceOf,
    tests: &[&[Test]],
    otherwise: usize,
    none: usize,
) {
    let mut given: Vec<(Span, usize)> = Vec::new();
    for (at, tests) in tests.iter().enumerate() {
        let spans = tests.iter().flat_map(|test| &test.values);
        given.extend(spans.filter_map(|span| Some((span.numbers(place.encoding)?, at))));
    }
    writer.open(format!("let Some(bits) = {}.get(payload) else {{", place.seen_from(known.around)));
    writer.line(format!("return {none};"));
    writer.close("};");
    let is_decimal = place.encoding.kind() == NumberKind::Bcd;
    let (value, some) = if is_decimal {
        (format!("typed::digits(bits, {})", place.encoding.width()), true)
    } else {
        (place.number("bits"), false)
    };
    writer.open(format!("match {value} {{"));
    let runs = first_wins(&given);
    for (span, at) in &runs {
        let pattern = pattern(*span);
        writer.line(if some { format!("Some({pattern}) => {at},") } else { format!("{pattern} => {at},") });
    }
    let all = if place.encoding.kind() == NumberKind::Unsigned {
        (0, i128::from(u64::MAX))
    } else {
        (i64::MIN.into(), i64::MAX.into())
    };
    if some || leaves_some(&runs, all) {
        writer.line(format!("_ => {otherwise},"));
    }
    writer.close("}");
}

/// The first page whose tests all pass.
fn write_tests(writer: &mut Writer, known: &Selectors<'_>, tests: &[&[Test]], otherwise: usize, none: usize) {
    for (at, (_, place)) in known.places.iter().enumerate() {
        writer.line(format!("let bits_{at} = {}.get(payload);", place.seen_from(known.around)));
    }
    for at in 0..known.places.len() {
        writer.open(format!("if bits_{at}.is_none() {{"));
        writer.line(format!("return {none};"));
        writer.close("}");
    }
    for (page, tests) in tests.iter().enumerate().filter(|(_, tests)| !tests.is_empty()) {
        writer.line("let mut holds = true;");
        for test in *tests {
            write_test(writer, known, test);
        }
        writer.open("if holds {");
        writer.line(format!("return {page};"));
        writer.close("}");
    }
    writer.line(otherwise.to_string());
}

fn write_test(writer: &mut Writer, known: &Selectors<'_>, test: &Test) {
    let Some(at) = known.places.iter().position(|(selector, _)| *selector == test.selector) else {
        writer.line("holds = false;");
        return;
    };
    let place = known.places[at].1;
    let spans: Vec<String> = test.values.iter().filter_map(|span| within(place, at, span)).collect();
    match spans.as_slice() {
        [] => writer.line("holds = false;"),
        [only] => writer.line(format!("holds &= {only};")),
        several => {
            writer.line("let mut is_one = false;");
            several.iter().for_each(|one| writer.line(format!("is_one |= {one};")));
            writer.line("holds &= is_one;");
        }
    }
}

/// Whether the bits of a selector lie in a span.
fn within(place: &PlaceOf, at: usize, span: &RawSpan) -> Option<String> {
    let width = place.encoding.width();
    let bits = format!("bits_{at}");
    let Some((first, last)) = span.numbers(place.encoding) else {
        return match (place.encoding.integer_range(), span.first, span.last) {
            (None, RawValue::Bits(first), RawValue::Bits(last)) => {
                Some(format!("typed::within({bits}, {}, {})", number(first.into()), number(last.into())))
            }
            (None, RawValue::Number(first), RawValue::Number(last)) => {
                let value = format!("{bits}.map(|bits| typed::float(bits, {width}))");
                Some(format!("typed::within({value}, {}, {})", double(first as f64), double(last as f64)))
            }
            _ => None,
        };
    };
    let value = match place.encoding.kind() {
        NumberKind::Unsigned => bits,
        NumberKind::Bcd => format!("{bits}.and_then(|bits| typed::digits(bits, {width}))"),
        _ => format!("{bits}.map(|bits| {})", place.number("bits")),
    };
    Some(format!("typed::within({value}, {}, {})", number(first), number(last)))
}

/// The function that tells whether an element of a repeated group is there.
pub(crate) fn write_there(
    writer: &mut Writer,
    plan: &FramePlan<'_>,
    around: &Group<'_>,
    group: &Group<'_>,
    there: &str,
) {
    let Some(page) = group.page else { return };
    writer.gap();
    if page.rows_from.is_some() {
        // A payload without any element lacks the first one.
        writer.function(&format!("fn {there}"), &["_payload: &[u8]"], "bool");
        writer.line("true");
        return writer.close("}");
    }
    let reaches = page.element.map_or(0, |element| element.reaches).saturating_sub(around.base);
    writer.function(&format!("fn {there}"), &["payload: &[u8]"], "bool");
    let known = Selectors::of(plan, around, page.tests.iter());
    match known.places.first() {
        Some((_, place)) => {
            writer.line(format!("let bits_0 = {}.get(payload);", place.seen_from(&around.name)));
            writer.line(format!("let mut holds = payload.len() >= {reaches};"));
            page.tests.iter().for_each(|test| write_test(writer, &known, test));
            writer.line("holds");
        }
        None => writer.line(format!("payload.len() >= {reaches}")),
    }
    writer.close("}");
}
