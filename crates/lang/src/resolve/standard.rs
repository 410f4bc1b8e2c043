//! Descriptions that come with the program.

/// Their names and texts.
pub(crate) const ALL: [(&str, &str); 2] = [
    ("heavy_duty", include_str!("../../../../schema/standard/heavy_duty.lore")),
    ("lin_diagnostics", include_str!("../../../../schema/standard/lin_diagnostics.lore")),
];
