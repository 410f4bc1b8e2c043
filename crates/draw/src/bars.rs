//! How full networks are, as bars in the style of the map. All have one colour: on the map colours tell networks apart, and names do so here.

use std::fmt::Write;

use wirelore_model::Database;
use wirelore_survey::budget::{Budget, Spread};

use crate::elements::{begin, page, words};
use crate::map::scene::network_facts;
use crate::map::style::{FILL, INK, QUIET, colour};
use crate::text::{Face, clean};

const TITLE: Face = Face::bold(18);
const NAME: Face = Face::bold(12);
const SMALL: Face = Face::plain(11);

const MARGIN: i32 = 30;
/// Where bars begin and end: an empty network, and a full one.
const EMPTY_X: i32 = 330;
const FULL_X: i32 = 870;
/// Room behind a full network, for one that is more than full and for the figures.
const WIDTH: i32 = 1100;
const ROW: i32 = 46;
const BAR: i32 = 18;
const TOP: i32 = 96;

/// Bars for the load of networks: at least, expected and at most.
#[derive(Debug)]
pub struct LoadBars<'a> {
    database: &'a Database,
    /// Those that are shown, with their share of the rate.
    rows: Vec<(usize, Option<Spread>)>,
}

impl<'a> LoadBars<'a> {
    /// The bars of the networks for which `wanted` holds, in the order of the description. Only CAN has a figure between the limits.
    #[must_use]
    pub fn new(database: &'a Database, budget: &Budget, wanted: impl Fn(usize) -> bool) -> Self {
        let rows = budget.networks.iter().enumerate();
        let rows = rows.filter(|(network, _)| wanted(*network)).map(|(network, load)| (network, load.share)).collect();
        Self { database, rows }
    }

    /// As a picture of its own.
    #[must_use]
    pub fn svg(&self) -> String {
        let height = TOP + ROW * self.rows.len() as i32 + 60;
        let title = self.title();
        let mut text = String::new();
        begin(&mut text, (WIDTH, height), &title, "");
        words(&mut text, TITLE, "", (MARGIN, 44), INK, &TITLE.shortened(&title, WIDTH - 2 * MARGIN));
        scale(&mut text, height);
        for (&(network, share), place) in self.rows.iter().zip(0..) {
            self.draw(&mut text, network, share, TOP + ROW * place);
        }
        legend(&mut text, height - 24);
        text.push_str("</svg>\n");
        text
    }

    /// As a page that needs no other file.
    #[must_use]
    pub fn html(&self) -> String {
        page(&self.title(), "", &self.svg())
    }

    fn title(&self) -> String {
        match &self.database.vehicle {
            Some(vehicle) => format!("How full the networks are: {}", clean(vehicle.label.display())),
            None => "How full the networks are".to_owned(),
        }
    }

    fn draw(&self, text: &mut String, network: usize, share: Option<Spread>, top: i32) {
        let network = &self.database.networks[network];
        let (ink, middle) = (colour(0), top + ROW / 2);
        let room = EMPTY_X - MARGIN - 14;
        let name = NAME.shortened(&clean(network.label.display()), room);
        words(text, NAME, "", (MARGIN, middle - 3), INK, &name);
        words(text, SMALL, "", (MARGIN, middle + 12), QUIET, &SMALL.shortened(&network_facts(network), room));
        let Some(share) = share else {
            words(text, SMALL, "", (EMPTY_X + 8, middle + 4), QUIET, "nothing can be said: see the table");
            return;
        };
        let bar = middle - BAR / 2;
        let (least, most) = (reach(share.least), reach(share.most));
        let _ = writeln!(
            text,
            "<rect x=\"{EMPTY_X}\" y=\"{bar}\" width=\"{}\" height=\"{BAR}\" fill=\"{FILL}\" stroke=\"{ink}\" stroke-width=\"1.5\"/>\n\
             <rect x=\"{EMPTY_X}\" y=\"{bar}\" width=\"{}\" height=\"{BAR}\" fill=\"{ink}\"/>",
            most - EMPTY_X,
            least - EMPTY_X
        );
        if let Some(expected) = share.expected_on(network.kind) {
            let (x, bottom) = (reach(expected), bar + BAR + 4);
            let _ = writeln!(text, "<path d=\"M{x} {}V{bottom}\" stroke=\"{INK}\" stroke-width=\"2.5\"/>", bar - 4);
        }
        let beyond = if share.most > LONGEST { " →" } else { "" };
        let figures = if (share.most - share.least).abs() < 0.000_05 {
            format!("{}{beyond}", share_text(share.most))
        } else {
            format!("{} to {}{beyond}", share_text(share.least), share_text(share.most))
        };
        words(text, SMALL, "", (most + 8, middle + 4), INK, &figures);
    }
}

/// The most that a bar shows.
const LONGEST: f64 = 1.15;

/// Where a share ends.
fn reach(share: f64) -> i32 {
    EMPTY_X + (share.clamp(0.0, LONGEST) * f64::from(FULL_X - EMPTY_X)).round() as i32
}

/// A part of a whole for people: `65.7 %`; little is shown with two digits, and what is hardly anything as less than that.
#[must_use]
pub fn share_text(share: f64) -> String {
    /// Below this a figure has two digits behind the point.
    const LITTLE: f64 = 0.995;
    let percent = 100.0 * share;
    match percent {
        0.0 => "0 %".to_owned(),
        0.0..0.005 => "<0.01 %".to_owned(),
        0.005..LITTLE => format!("{percent:.2} %"),
        _ => format!("{percent:.1} %"),
    }
}

/// Lines from top to bottom at each quarter of a full network.
fn scale(text: &mut String, height: i32) {
    for quarter in 0..=4 {
        let x = EMPTY_X + (FULL_X - EMPTY_X) * quarter / 4;
        let (width, ink) = if quarter == 4 { ("2", INK) } else { ("1", "#d5dbe1") };
        let _ =
            writeln!(text, "<path d=\"M{x} {}V{}\" stroke=\"{ink}\" stroke-width=\"{width}\"/>", TOP - 8, height - 52);
        words(text, SMALL, "middle", (x, TOP - 16), QUIET, &format!("{} %", quarter * 25));
    }
}

fn legend(text: &mut String, y: i32) {
    let _ = writeln!(text, "<rect x=\"{EMPTY_X}\" y=\"{}\" width=\"26\" height=\"12\" fill=\"{INK}\"/>", y - 10);
    words(text, SMALL, "", (EMPTY_X + 32, y), QUIET, "at least");
    let (x, top) = (EMPTY_X + 130, y - 10);
    let _ = writeln!(
        text,
        "<rect x=\"{x}\" y=\"{top}\" width=\"26\" height=\"12\" fill=\"{FILL}\" stroke=\"{INK}\" stroke-width=\"1.5\"/>"
    );
    words(text, SMALL, "", (x + 32, y), QUIET, "at most");
    let x = EMPTY_X + 260;
    let _ = writeln!(text, "<path d=\"M{x} {}V{}\" stroke=\"{INK}\" stroke-width=\"2.5\"/>", y - 14, y + 4);
    words(text, SMALL, "", (x + 10, y), QUIET, "expected: frames of CAN nine tenths as long as they can be");
}

#[cfg(test)]
mod tests {
    use wirelore_lang::check_text;

    use super::*;

    fn svg(text: &str) -> String {
        let database = check_text("van.lore", text).database.expect("it is right");
        let budget = Budget::of(&database);
        LoadBars::new(&database, &budget, |_| true).svg()
    }

    /// 100 frames a second of 111 to 135 bits at 500 kbit/s: 2.22 % to 2.70 % (ISO 11898-1; the bound by Davis, Burns, Bril, Lukkien 2007).
    #[test]
    fn a_bar_is_as_long_as_the_load() {
        let picture =
            svg("network drive \"<Drive>\" can 500 kbit/s\nframe f on drive id 1 {\n every 10 ms\n length 8\n}");
        assert!(picture.contains("&lt;Drive&gt;") && picture.contains("2.2 % to 2.7 %"), "{picture}");
        let bar = |share: f64| format!("width=\"{}\"", (540.0 * share).round());
        assert!(picture.contains(&bar(0.0222)) && picture.contains(&bar(0.027)), "{picture}");
    }

    #[test]
    fn too_full_and_unknown_networks_stay_on_the_sheet() {
        let much = "network slow can 10 kbit/s\nframe f on slow id 1 {\n every 1 ms\n length 8\n}\nnetwork dark can\nframe g on dark id 1 {\n every 1 ms\n length 8\n}";
        let picture = svg(much);
        assert!(picture.contains("→") && picture.contains("nothing can be said"), "{picture}");
        let widths = picture.split("width=\"").skip(1).filter_map(|rest| rest.split('"').next()?.parse::<f64>().ok());
        assert!(widths.fold(0.0, f64::max) <= f64::from(WIDTH));
        assert!(svg("").contains("How full the networks are"));
    }
}
