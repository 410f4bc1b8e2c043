//! Two vehicles side by side.

use wirelore_model::{Database, NetworkKind};
use wirelore_survey::budget::{Budget, Figures};

use super::described::kind_word;
use super::pages::{Page, Part};
use super::sheet::{Cell, Column, Sheet, figures, words};
use crate::description::load;
use crate::failure::{Failure, Outcome};

/// Counts both.
pub(super) fn run(first: &str, second: &str) -> Result<(Page, Outcome), Failure> {
    let (one, other) = (load(first)?, load(second)?);
    let named = |which: &str, file: &str, database: &Database| {
        let title = super::title(database);
        let title = if title.is_empty() { String::new() } else { format!(" ({title})") };
        format!("{which}: {file}{title}")
    };
    let page = Page {
        title: String::new(),
        parts: vec![
            Part::lines("vehicles", vec![named("first", first, &one), named("second", second, &other)]),
            Part::sheet("figures", counts(&Figures::of(&one), &Figures::of(&other))),
            Part::sheet("loads", loads(&one, &other)),
        ],
        main: "figures",
    };
    Ok((page, Outcome::Clean))
}

const COUNTS: [Column; 3] = [words("", "figure"), figures("first", "first"), figures("second", "second")];

fn counts(one: &Figures, other: &Figures) -> Sheet {
    let mut sheet = Sheet::new(&COUNTS);
    let mut push = |what: String, one: Cell, other: Cell| sheet.push(vec![Cell::Text(what), one, other]);
    push("control units".to_owned(), Cell::Count(one.units), Cell::Count(other.units));
    for kind in NetworkKind::ALL {
        let (of_one, of_other) = (one.of_kind(kind), other.of_kind(kind));
        if of_one + of_other > 0 {
            push(format!("networks of {}", kind_word(kind)), Cell::Count(of_one), Cell::Count(of_other));
        }
    }
    push("frames".to_owned(), Cell::Count(one.frames), Cell::Count(other.frames));
    push("signals".to_owned(), Cell::Count(one.signals), Cell::Count(other.signals));
    push("routes of gateways".to_owned(), Cell::Count(one.routes), Cell::Count(other.routes));
    push("protected frames".to_owned(), Cell::Count(one.protected_frames), Cell::Count(other.protected_frames));
    let share = |figures: &Figures| Cell::share(figures.protected_share());
    push("share of protected frames".to_owned(), share(one), share(other));
    sheet
}

const LOADS: [Column; 8] = [
    words("network", "network"),
    words("kind", "kind"),
    figures("frames/s first", "frames_per_s_first"),
    figures("second", "frames_per_s_second"),
    figures("at least first", "share_least_first"),
    figures("second", "share_least_second"),
    figures("at most first", "share_most_first"),
    figures("second", "share_most_second"),
];

/// Networks of the same name and kind stand in one line.
fn loads(one: &Database, other: &Database) -> Sheet {
    let mut sheet = Sheet::new(&LOADS);
    let (budget, other_budget) = (Budget::of(one), Budget::of(other));
    let key = |database: &Database, at: usize| {
        let network = &database.networks[at];
        (network.label.name.clone(), network.kind)
    };
    let own: Vec<_> = (0..one.networks.len()).map(|at| key(one, at)).collect();
    let others: Vec<_> = (0..other.networks.len()).map(|at| key(other, at)).collect();
    let mut all = own.clone();
    all.extend(others.iter().filter(|key| !own.contains(key)).cloned());
    for wanted in all {
        let find = |keys: &[(String, NetworkKind)], budget: &Budget| {
            let at = keys.iter().position(|key| *key == wanted);
            at.map(|at| (budget.networks[at].frames_per_s, budget.networks[at].share))
        };
        let (first, second) = (find(&own, &budget), find(&others, &other_budget));
        let rate = |side: Option<(f64, _)>| side.map_or(Cell::Nothing, |(rate, _)| Cell::Rate(rate));
        let shares = [first, second].map(|side| side.and_then(|(_, share)| share));
        let [least_first, least_second] = shares.map(|share| Cell::share(share.map(|share| share.least)));
        let [most_first, most_second] = shares.map(|share| Cell::share(share.map(|share| share.most)));
        sheet.push(vec![
            Cell::text(&wanted.0),
            Cell::text(kind_word(wanted.1)),
            rate(first),
            rate(second),
            least_first,
            least_second,
            most_first,
            most_second,
        ]);
    }
    sheet
}
