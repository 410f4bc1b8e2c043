//! One control message as MOST25 carries it.

/// The bytes of a control message behind its addresses: 4 say what it is about, 1 which part it is, 12 are data.
pub const CONTROL_BYTES: usize = 17;

const HEADER_BYTES: usize = 5;
const DATA_BYTES_MAX: usize = CONTROL_BYTES - HEADER_BYTES;

/// A control message, or a part of one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ControlMessage<'a> {
    /// The function block (FBlockID).
    pub block: u8,
    /// The instance (InstID).
    pub instance: u8,
    /// The function (FktID), 12 bits.
    pub function: u16,
    /// The operation (OPType), 4 bits.
    pub operation: u8,
    /// How it stands in a longer message (TelID), as [`Part::of_number`](super::Part::of_number) takes it.
    pub part: u8,
    /// The data, as many bytes as TelLen says.
    pub data: &'a [u8],
}

/// Why some bytes are no control message.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum ControlError {
    /// There are too few bytes.
    #[error("a control message has {CONTROL_BYTES} bytes, and {found} are there")]
    Cut {
        /// The bytes there are.
        found: usize,
    },
    /// It says more data than there is room for.
    #[error("a control message says {announced} bytes of data, and it has room for {DATA_BYTES_MAX}")]
    Length {
        /// What it says.
        announced: usize,
    },
}

impl<'a> ControlMessage<'a> {
    /// Reads a message; of more bytes, the first ones count.
    ///
    /// # Errors
    /// Too few bytes, or a length that is none.
    pub fn read(bytes: &'a [u8]) -> Result<Self, ControlError> {
        let Some(&[block, instance, high, low, part, ref data @ ..]) = bytes.first_chunk::<CONTROL_BYTES>() else {
            return Err(ControlError::Cut { found: bytes.len() });
        };
        let announced = usize::from(part & 0xF);
        let data = data.get(..announced).ok_or(ControlError::Length { announced })?;
        let function = u16::from(high) << 4 | u16::from(low >> 4);
        Ok(Self { block, instance, function, operation: low & 0xF, part: part >> 4, data })
    }
}
