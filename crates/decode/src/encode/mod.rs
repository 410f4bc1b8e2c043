//! Values to the bytes of one frame: for the bench and the desk. Nothing here sends anything.
//!
//! Of a group that gives rows one element is put together.
//!
//! Frames sent into a live vehicle can move it, start it, or fire airbags.

mod around;
mod assemble;
mod assignment;
mod error;
mod finish;
mod note;
mod pages;
mod undescribed;
mod value;
mod wire;

use wirelore_bits::Ratio;
use wirelore_model::{Database, FrameId, Unit};

use assemble::Assembly;
pub use assignment::parse_assignment;
pub use error::EncodeError;
pub use note::Note;
pub use wire::{OnWire, on_wire};

/// What a signal is to say.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Given {
    /// An engineering value, exactly as it was written.
    Value {
        /// The number.
        number: Ratio,
        /// Its unit; `None`: the described one.
        unit: Option<Unit>,
    },
    /// A state word; also `absent`, `no reading`, `fault`, `sensor fault`.
    Word(String),
    /// The bits themselves.
    Raw(u64),
    /// The raw value that says "no reading".
    NoReading,
    /// The raw value that says "sensor fault".
    SensorFault,
    /// Characters.
    Text(String),
    /// Bytes.
    Bytes(Vec<u8>),
}

/// An encoded frame.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Encoded {
    /// Its bytes.
    pub payload: Vec<u8>,
    /// What was decided, rounded or filled in.
    pub notes: Vec<Note>,
}

/// The bytes of one frame.
///
/// Selectors are set so that every given signal is there. Signals that are not given say "no reading" where the description names a raw
/// value for it, and have raw value 0 otherwise; signals that say how long a text is say so; counters begin with their first count; checksums
/// are calculated last, and then the header of an end-to-end protection, whose count is given like a signal's value. Bits that are not
/// described are 0, and a note lists them. Bytes that every message of the frame begins with are put in. The length is the described one, else what the signals need; lengths of CAN FD frames are rounded up to one that exists.
///
/// # Errors
/// A signal that is not there, cannot hold what is given, or excludes another given one; more bytes than the frame may have.
pub fn encode<N: AsRef<str>>(
    database: &Database,
    frame: FrameId,
    assignments: &[(N, Given)],
) -> Result<Encoded, EncodeError> {
    let mut assembly = Assembly::new(database, frame)?;
    assembly.begin();
    assembly.give(assignments)?;
    assembly.compare_with_beginning()?;
    assembly.set_sizes()?;
    assembly.set_selectors()?;
    assembly.fill_up()?;
    // What was filled in may reach into the beginning.
    assembly.begin();
    let mut encoded = assembly.finish()?;
    encoded.notes.extend(database.frames.get(frame.index()).and_then(|frame| around::note(database, frame)));
    Ok(encoded)
}

#[cfg(test)]
mod tests;
