//! Who sends what to whom, in the 29 bits of an identifier.

/// The parameter group of the control messages, TP.CM.
pub const CONTROL_GROUP: u32 = 0xEC00;
/// The parameter group of the data packets, TP.DT.
pub const DATA_GROUP: u32 = 0xEB00;
/// The destination that means everybody.
pub const EVERYBODY: u8 = 0xFF;

/// A frame of the protocol by its identifier.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Addressed {
    pub(super) is_control: bool,
    pub(super) source: u8,
    pub(super) destination: u8,
}

impl Addressed {
    /// Bits 25..16 hold data page and format; both groups are addressed ones, so that the destination stands in the byte below.
    pub(super) fn read(id: u32) -> Option<Self> {
        let is_control = match id & 0x03FF_0000 {
            group if group == CONTROL_GROUP << 8 => true,
            group if group == DATA_GROUP << 8 => false,
            _ => return None,
        };
        let [source, destination, ..] = id.to_le_bytes();
        Some(Self { is_control, source, destination })
    }
}

/// The identifier of an addressed group.
pub(super) fn identifier(priority: u8, group: u32, destination: u8, source: u8) -> u32 {
    u32::from(priority & 7) << 26 | group << 8 | u32::from(destination) << 8 | u32::from(source)
}
