//! Where a signal is, for those who look at it from elsewhere.

use wirelore_bits::{Encoding, NumberKind};

/// Where the bits of a signal are read, for those who look at it from elsewhere.
#[derive(Clone)]
pub(crate) struct PlaceOf {
    /// `Type::AT_NAME`.
    pub(crate) path: String,
    pub(crate) encoding: Encoding,
}

impl PlaceOf {
    /// The path, as seen from a type.
    pub(crate) fn seen_from(&self, name: &str) -> String {
        match self.path.strip_prefix(name).and_then(|rest| rest.strip_prefix("::")) {
            Some(own) => format!("Self::{own}"),
            None => self.path.clone(),
        }
    }

    /// The number of a signal that says how many there are.
    pub(crate) fn count(&self, name: &str) -> String {
        let bits = format!("{}.get(payload)", self.seen_from(name));
        match self.encoding.kind() {
            NumberKind::Unsigned => bits,
            NumberKind::Bcd => {
                format!("{bits}.and_then(|bits| typed::digits(bits, {}))", self.encoding.width())
            }
            _ => format!("typed::whole({bits}.map(|bits| {}))", self.number("bits")),
        }
    }

    /// The number of some bits, with a sign.
    pub(crate) fn number(&self, bits: &str) -> String {
        let width = self.encoding.width();
        match self.encoding.kind() {
            NumberKind::Signed => format!("typed::signed({bits}, {width})"),
            NumberKind::SignMagnitude => format!("typed::sign_magnitude({bits}, {width})"),
            _ => bits.to_owned(),
        }
    }
}
