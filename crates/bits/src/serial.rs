//! Reading and writing with serde: everything read passes through the constructors, so invalid values cannot come in.

use core::fmt;
use core::marker::PhantomData;
use core::str::FromStr;

use serde::de::{Deserialize, Deserializer, Error, SeqAccess, Visitor};
use serde::ser::{Serialize, Serializer};

use crate::{Affine, BitPosition, Encoding, EncodingError, Field, NumberKind, Place, PlaceError, Ratio};

/// A place as its two ends, each as `BYTE.BIT` text.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct PlaceParts {
    msb: BitPosition,
    lsb: BitPosition,
}

impl TryFrom<PlaceParts> for Place {
    type Error = PlaceError;

    fn try_from(parts: PlaceParts) -> Result<Self, PlaceError> {
        Self::between(parts.msb, parts.lsb)
    }
}

impl From<Place> for PlaceParts {
    fn from(place: Place) -> Self {
        Self { msb: place.msb(), lsb: place.lsb() }
    }
}

/// An encoding as its kind and width.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct EncodingParts {
    kind: NumberKind,
    width: u8,
}

impl TryFrom<EncodingParts> for Encoding {
    type Error = EncodingError;

    fn try_from(parts: EncodingParts) -> Result<Self, EncodingError> {
        Self::new(parts.kind, parts.width)
    }
}

impl From<Encoding> for EncodingParts {
    fn from(encoding: Encoding) -> Self {
        Self { kind: encoding.kind(), width: encoding.width() }
    }
}

/// A formula as its factor and offset.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct AffineParts {
    factor: Ratio,
    offset: Ratio,
}

impl TryFrom<AffineParts> for Affine {
    type Error = &'static str;

    fn try_from(parts: AffineParts) -> Result<Self, &'static str> {
        Self::new(parts.factor, parts.offset)
            .ok_or("a formula needs a factor other than zero, and both numbers over one denominator of 128 bits")
    }
}

impl From<Affine> for AffineParts {
    fn from(affine: Affine) -> Self {
        Self { factor: affine.factor(), offset: affine.offset() }
    }
}

/// Reads a value from its text form.
struct TextVisitor<T>(PhantomData<T>, &'static str);

impl<T: FromStr<Err: fmt::Display>> Visitor<'_> for TextVisitor<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.1)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
        text.parse().map_err(E::custom)
    }
}

impl Serialize for BitPosition {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for BitPosition {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(TextVisitor(PhantomData, "a bit position as text, such as \"6.4\""))
    }
}

impl Serialize for Ratio {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Ratio {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(TextVisitor(PhantomData, "an exact number as text, such as \"0.05\" or \"1/3\""))
    }
}

impl Serialize for Field {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.places().serialize(serializer)
    }
}

struct FieldVisitor;

impl<'de> Visitor<'de> for FieldVisitor {
    type Value = Field;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("one to four places, the most significant piece first")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut sequence: A) -> Result<Field, A::Error> {
        let first: Place = sequence.next_element()?.ok_or_else(|| A::Error::invalid_length(0, &self))?;
        let mut pieces = *Field::from(first).pieces();
        let mut count = 1;
        while let Some(piece) = sequence.next_element()? {
            *pieces.get_mut(count).ok_or_else(|| A::Error::invalid_length(count + 1, &self))? = piece;
            count += 1;
        }
        Field::of(pieces.get(..count).unwrap_or(&pieces)).map_err(A::Error::custom)
    }
}

impl<'de> Deserialize<'de> for Field {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_seq(FieldVisitor)
    }
}
