//! Descriptions that come with the program.

/// Their names and texts.
pub(crate) const ALL: [(&str, &str); 6] = [
    ("heavy_duty", include_str!("../../../../schema/standard/heavy_duty.lore")),
    ("lin_diagnostics", include_str!("../../../../schema/standard/lin_diagnostics.lore")),
    ("obd", include_str!("../../../../schema/standard/obd.lore")),
    ("uds", include_str!("../../../../schema/standard/uds.lore")),
    ("someip", include_str!("../../../../schema/standard/someip.lore")),
    ("doip", include_str!("../../../../schema/standard/doip.lore")),
];
