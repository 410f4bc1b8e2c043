//! The crate from outside: against published values, against references built from general-purpose libraries, and round trips.

mod can_wire;
mod encode_inverts;
mod errors_as_sentences;
mod exact_everywhere;
mod extract_reference;
mod flexray_frames;
mod formulas;
mod nearest;
mod payload;
mod published_can_lengths;
mod published_checksums;
mod published_formats;
mod published_lin;
mod published_protection;
mod scaling_exact;
#[cfg(feature = "serde")]
mod serde_forms;
mod support;
mod whole_catalogue;
