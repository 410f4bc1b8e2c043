//! # wirelore-draw
//!
//! Pictures: functions from a description to the text of a drawing. [`VehicleMap`] is the map of a vehicle's networks, as SVG, as a page of
//! HTML, and as text for a terminal; [`LoadBars`] shows how full they are.
//!
//! It opens no file, and the same description gives the same picture, byte for byte. Below it stand the model, and the survey for
//! questions whose answers are drawn.
//!
//! ```
//! use wirelore_draw::{MapOptions, VehicleMap};
//! let text = "network drive \"Drive network\" can 500 kbit/s\n ecu engine \"Engine control unit\" on drive";
//! let database = wirelore_lang::check_text("van.lore", text).database.expect("it is right");
//! let picture = VehicleMap::new(&database, MapOptions::default()).svg();
//! assert!(picture.starts_with("<svg ") && picture.contains("Drive network"));
//! ```

mod bars;
mod elements;
mod map;
mod text;

pub use bars::{LoadBars, share_text};
pub use map::{Blank, MapOptions, VehicleMap, network_facts, terminator_texts};
