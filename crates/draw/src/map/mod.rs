//! The map of a vehicle's networks: what is on it, where it stands, and how it is written down.
//!
//! [`scene`] takes from the description what is shown, [`plan`] decides what hangs where, [`blocks`] and [`bands`] put the boxes into
//! rows, [`route`] finds the ways of the lines between them, [`place`] and [`lines`] calculate coordinates, [`sheet`] chooses the
//! proportions of the paper and adds what stands below the map; [`svg`], [`html`] and [`terminal`] write it.

mod bands;
mod blocks;
mod html;
mod legend;
mod lines;
mod picture;
mod place;
mod plan;
mod route;
pub(crate) mod scene;
mod sheet;
mod strong;
pub(crate) mod style;
mod svg;
mod terminal;
#[cfg(test)]
mod tests;
mod wiring;
mod words;

pub use scene::network_facts;
use wirelore_model::{Database, EcuId, NetworkId};
use wirelore_survey::Topic;
pub use wiring::terminator_texts;

/// What a map shows, and how.
#[derive(Debug, Clone, Default)]
pub struct MapOptions {
    /// Only these networks and the units on them; empty: all.
    pub networks: Vec<NetworkId>,
    /// Draw the way of this frame, or of these signals of it, strong, the rest pale.
    pub listen: Option<Topic>,
    /// For people who learn: empty boxes with numbers.
    pub blank: Blank,
    /// These units are hatched.
    pub marked: Vec<EcuId>,
    /// Show how sure the author is of each item, with what it rests on.
    pub certainty: bool,
}

/// Whether names are left out for an exercise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Blank {
    /// An ordinary map.
    #[default]
    No,
    /// Numbers instead of names.
    Exercise,
    /// The same picture with numbers and names.
    Solution,
}

/// The map of a vehicle's networks.
#[derive(Debug)]
pub struct VehicleMap<'a> {
    database: &'a Database,
    options: MapOptions,
}

impl<'a> VehicleMap<'a> {
    /// A map of this description.
    #[must_use]
    pub fn new(database: &'a Database, options: MapOptions) -> Self {
        Self { database, options }
    }

    /// The picture as SVG.
    #[must_use]
    pub fn svg(&self) -> String {
        svg::svg(&sheet::Sheet::of(self.database, &self.options))
    }

    /// A page that needs no other file. An exercise has its solution folded in.
    #[must_use]
    pub fn html(&self) -> String {
        let sheet = sheet::Sheet::of(self.database, &self.options);
        let solution = (self.options.blank == Blank::Exercise).then(|| {
            let options = MapOptions { blank: Blank::Solution, ..self.options.clone() };
            svg::svg(&sheet::Sheet::of(self.database, &options))
        });
        html::page(&sheet.scene.title, (sheet.width, sheet.height), &svg::svg(&sheet), solution.as_deref())
    }

    /// The map in words and lines of text, at most 100 columns wide.
    #[must_use]
    pub fn text(&self) -> String {
        terminal::text(self.database, &self.options)
    }
}
