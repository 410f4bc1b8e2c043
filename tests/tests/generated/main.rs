//! Generated Rust source: it is what is checked in, it is laid out as rustfmt lays it out, it compiles whatever names and notes say, and it
//! says what the decoder says.

mod agreement;
mod by_hand;
mod files;
mod hostile_names;
mod networks;
mod standards;

use wirelore_tests::noise;

/// The demo van, as `wirelore compile schema/demo/kestrel.lore -o tests/generated/kestrel.rs` writes it.
#[rustfmt::skip]
#[path = "../../generated/kestrel.rs"]
#[allow(dead_code)]
pub mod kestrel;

/// The public standard of heavy vehicles.
#[rustfmt::skip]
#[path = "../../generated/heavy_duty.rs"]
#[allow(dead_code)]
pub mod heavy_duty;

/// Names, titles and notes that mean something to Rust.
#[rustfmt::skip]
#[path = "../../generated/hostile.rs"]
#[allow(dead_code)]
pub mod hostile;

/// One of everything that a frame can hold.
#[rustfmt::skip]
#[path = "../../generated/kinds.rs"]
#[allow(dead_code)]
pub mod kinds;
