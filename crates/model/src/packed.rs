//! How places and exact numbers stand in the binary form: as whole numbers. Forms for people keep the text of `wirelore-bits`
//! (`"1.4"`, `"0.05"`), but reading text was a fifth of the time that loading a large `.lorebin` took.

/// A field: its first piece and the further ones, each as the numbers `byte * 8 + bit` of its two ends.
pub(crate) mod field {
    use serde::de::{Deserialize, Deserializer, Error};
    use serde::ser::{Serialize, Serializer};
    use wirelore_bits::{BitPosition, Field, Place};

    type Ends = (u64, u64);

    pub(crate) fn serialize<S: Serializer>(field: &Field, serializer: S) -> Result<S::Ok, S::Error> {
        if serializer.is_human_readable() {
            return field.serialize(serializer);
        }
        let flat = |position: BitPosition| u64::from(position.byte) * 8 + u64::from(position.bit);
        let mut pieces = field.places().iter().map(|place| (flat(place.msb()), flat(place.lsb())));
        let first: Option<Ends> = pieces.next();
        (first.unwrap_or_default(), pieces.collect::<Vec<Ends>>()).serialize(serializer)
    }

    pub(crate) fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Field, D::Error> {
        if deserializer.is_human_readable() {
            return Field::deserialize(deserializer);
        }
        let (first, more): (Ends, Vec<Ends>) = Deserialize::deserialize(deserializer)?;
        let first = place(first)?;
        if more.is_empty() {
            return Ok(first.into());
        }
        let places: Vec<Place> =
            std::iter::once(Ok(first)).chain(more.into_iter().map(place)).collect::<Result<_, D::Error>>()?;
        Field::of(&places).map_err(D::Error::custom)
    }

    fn place<E: Error>((msb, lsb): Ends) -> Result<Place, E> {
        let position = |flat: u64| Ok(BitPosition::new(u32::try_from(flat >> 3).map_err(E::custom)?, (flat & 7) as u8));
        Place::between(position(msb)?, position(lsb)?).map_err(E::custom)
    }
}

/// An exact number: numerator and denominator.
pub(crate) mod ratio {
    use serde::de::{Deserialize, Deserializer, Error};
    use serde::ser::{Serialize, Serializer};
    use wirelore_bits::Ratio;

    pub(super) type Parts = (i128, u128);

    pub(crate) fn serialize<S: Serializer>(ratio: &Ratio, serializer: S) -> Result<S::Ok, S::Error> {
        if serializer.is_human_readable() { ratio.serialize(serializer) } else { parts(*ratio).serialize(serializer) }
    }

    pub(crate) fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Ratio, D::Error> {
        if deserializer.is_human_readable() {
            Ratio::deserialize(deserializer)
        } else {
            whole(Parts::deserialize(deserializer)?)
        }
    }

    pub(super) fn parts(ratio: Ratio) -> Parts {
        (ratio.numerator(), ratio.denominator())
    }

    pub(super) fn whole<E: Error>((numerator, denominator): Parts) -> Result<Ratio, E> {
        if denominator == 1 {
            return Ok(Ratio::whole(numerator));
        }
        Ratio::new(numerator, denominator)
            .ok_or_else(|| E::custom("a fraction's denominator is not 0 and its size fits 127 bits"))
    }
}

/// A formula: factor and offset.
pub(crate) mod affine {
    use serde::de::{Deserialize, Deserializer, Error};
    use serde::ser::{Serialize, Serializer};
    use wirelore_bits::Affine;

    use super::ratio::{Parts, parts, whole};

    pub(crate) fn serialize<S: Serializer>(affine: &Affine, serializer: S) -> Result<S::Ok, S::Error> {
        if serializer.is_human_readable() {
            return affine.serialize(serializer);
        }
        (parts(affine.factor()), parts(affine.offset())).serialize(serializer)
    }

    pub(crate) fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Affine, D::Error> {
        if deserializer.is_human_readable() {
            return Affine::deserialize(deserializer);
        }
        let (factor, offset): (Parts, Parts) = Deserialize::deserialize(deserializer)?;
        let fits = Affine::new(whole(factor)?, whole(offset)?);
        fits.ok_or_else(|| {
            D::Error::custom("a formula's factor is not 0, and factor and offset fit one denominator of 128 bits")
        })
    }
}
