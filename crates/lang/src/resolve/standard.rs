//! Descriptions that come with the program.

/// Their names and texts.
pub(crate) const ALL: [(&str, &str); 1] = [("heavy_duty", include_str!("../../../../schema/standard/heavy_duty.lore"))];
