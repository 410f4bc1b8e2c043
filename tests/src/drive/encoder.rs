//! From values to bytes, by the description alone.

use wirelore_bits::Ratio;
use wirelore_decode::{Given, Note, encode};
use wirelore_model::{Database, FrameId, Identifier};

use super::DriveError;
use super::content::Value;

/// Encodes the frames of one description.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Encoder<'a> {
    database: &'a Database,
}

impl<'a> Encoder<'a> {
    /// An encoder for a description.
    pub(crate) fn new(database: &'a Database) -> Self {
        Self { database }
    }

    /// A frame by its name, and what it is recognised by on its own network.
    ///
    /// # Errors
    /// The description has no such frame.
    pub(crate) fn home(&self, name: &str) -> Result<(FrameId, &'a Identifier), DriveError> {
        let found = self.database.frame_named(name);
        let home = found.and_then(|(id, frame)| Some((id, &frame.seen_on.first()?.identifier)));
        home.ok_or_else(|| DriveError::Missing { what: format!("frame {name}") })
    }

    /// The same with the bytes of the frame.
    ///
    /// # Errors
    /// As those of [`Encoder::payload`], or the description has no such frame.
    pub(crate) fn named<N: AsRef<str>>(
        &self,
        name: &str,
        values: &[(N, Value)],
    ) -> Result<(&'a Identifier, Vec<u8>), DriveError> {
        let (frame, identifier) = self.home(name)?;
        let values: Vec<(&str, Value)> = values.iter().map(|(signal, value)| (signal.as_ref(), *value)).collect();
        Ok((identifier, self.payload(frame, &values)?))
    }

    /// The bytes of a frame.
    ///
    /// # Errors
    /// A value that does not fit, that lies outside its described range, or that nobody has given: a real sender knows what it sends.
    pub(crate) fn payload(&self, frame: FrameId, values: &[(&str, Value)]) -> Result<Vec<u8>, DriveError> {
        let name = || self.database.frames[frame.index()].label.name.clone();
        let fail = |reason: String| DriveError::Encode { frame: name(), reason };
        let given: Vec<(&str, Given)> = values.iter().map(|(signal, value)| (*signal, given(*value))).collect();
        let encoded = encode(self.database, frame, &given).map_err(|error| fail(error.to_string()))?;
        let wrong = encoded.notes.iter().find(|note| {
            !matches!(
                note,
                Note::Rounded { .. }
                    | Note::ChecksumCalculated { .. }
                    | Note::Lengthened { .. }
                    | Note::OnLin { .. }
                    | Note::Carried { .. }
                    | Note::Around { .. }
                    | Note::Undescribed { .. }
            )
        });
        match wrong {
            Some(note) => Err(fail(note.to_string())),
            None => Ok(encoded.payload),
        }
    }
}

fn given(value: Value) -> Given {
    match value {
        Value::Number(number) => Given::Value { number: millionths(number), unit: None },
        Value::State(state) => Given::Raw(state.into()),
        Value::Code(code) => Given::Raw(code.into()),
        Value::NoReading => Given::NoReading,
        Value::Text(text) => Given::Text(text.to_owned()),
        Value::Bytes(bytes) => Given::Bytes(bytes.to_vec()),
    }
}

/// The number, to six decimals.
fn millionths(number: f64) -> Ratio {
    Ratio::new((number * 1e6).round() as i128, 1_000_000).unwrap_or(Ratio::ZERO)
}
