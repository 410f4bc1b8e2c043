//! What a person should know about an encoded frame.

use std::fmt;

use wirelore_bits::BitPosition;
use wirelore_model::LinChecksum;

/// Something that was decided, rounded or filled in while encoding.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Note {
    /// No raw value gives the value exactly; the nearest one was taken.
    Rounded {
        /// The signal.
        signal: String,
        /// The value that the frame carries, with its unit.
        to: String,
    },
    /// The value lies outside the described range; it was encoded all the same.
    OutsideRange {
        /// The signal.
        signal: String,
        /// The described range.
        range: String,
    },
    /// The number is none that the counter counts to; it was encoded all the same.
    NotACount {
        /// The counter.
        signal: String,
        /// The number.
        found: u64,
        /// The first count.
        low: u64,
        /// The last count.
        high: u64,
    },
    /// The signal speaks in words, and there is none for the number; it was encoded all the same.
    NoWord {
        /// The signal.
        signal: String,
        /// The raw number.
        number: i128,
    },
    /// A selector was set so that a given signal is there.
    SelectorSet {
        /// The selector.
        selector: String,
        /// Its raw value.
        value: String,
        /// The signal that needs it.
        needed_by: String,
    },
    /// A signal was set to the length of a given text or of given bytes.
    SizeSet {
        /// The signal.
        signal: String,
        /// The signal of varying length.
        of: String,
        /// The length.
        bytes: usize,
    },
    /// A signal that was not given says "no reading".
    UnsetAbsent {
        /// The signal.
        signal: String,
    },
    /// A signal that was not given has raw value 0.
    UnsetZero {
        /// The signal.
        signal: String,
    },
    /// Text or bytes that were not given are there, for a given size says so: all of them 0.
    UnsetBytes {
        /// The signal.
        signal: String,
        /// How many.
        bytes: usize,
    },
    /// A counter that was not given begins with its first count.
    CounterStarts {
        /// The counter.
        signal: String,
        /// The count.
        at: u64,
    },
    /// A checksum was calculated.
    ChecksumCalculated {
        /// The checksum.
        signal: String,
        /// Its value.
        value: u64,
    },
    /// A checksum was given and stands as given, though the payload has another one.
    ChecksumAsGiven {
        /// The checksum.
        signal: String,
        /// What the payload gives.
        right: u64,
    },
    /// The header of a protection was written.
    Protected {
        /// The protection.
        signal: String,
        /// The number of its profile.
        profile: u8,
        /// The checksum.
        sum: u64,
    },
    /// The protection goes over bytes in front of the payload, which the description does not tell.
    HeaderTaken {
        /// The protection.
        signal: String,
        /// What they were taken to be: bytes 8..15 of a SOME/IP message.
        header: [u8; 8],
    },
    /// The payload was made longer, because a frame of its network has only certain lengths.
    Lengthened {
        /// Bytes needed.
        from: usize,
        /// Bytes there are.
        to: usize,
        /// Why.
        why: &'static str,
    },
    /// What goes around the data on LIN.
    OnLin {
        /// The identifier with its parity bits.
        protected_id: u8,
        /// The checksum.
        checksum: u8,
        /// Its kind.
        kind: LinChecksum,
    },
    /// The bytes are a message that a transport cuts into frames.
    Carried {
        /// The language's word for the transport.
        by: &'static str,
    },
    /// The bytes are what a message says; something has to be put around them.
    Around {
        /// What is not in them.
        without: &'static str,
    },
    /// Bits that no signal has, or that are only marked as unknown, are 0.
    Undescribed {
        /// Runs of them as they are sent, each with its most significant and its least significant bit.
        places: Vec<(BitPosition, BitPosition)>,
    },
    /// The frame is longer than its element, in a group that gives rows: what is behind it will be read as more of them.
    FurtherElements {
        /// The first byte behind the element.
        from: usize,
    },
}

impl fmt::Display for Note {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Rounded { signal, to } => write!(f, "{signal}: rounded to {to}"),
            Self::OutsideRange { signal, range } => {
                write!(f, "{signal}: outside the described range {range}")
            }
            Self::NotACount { signal, found, low, high } => {
                write!(f, "{signal}: {found} is not a count from {low} to {high}")
            }
            Self::NoWord { signal, number } => write!(f, "{signal}: {number} has no word"),
            Self::SelectorSet { selector, value, needed_by } => {
                write!(f, "{selector}: set to {value}, because {needed_by} is there only then")
            }
            Self::SizeSet { signal, of, bytes } => write!(f, "{signal}: set to {bytes}, the bytes of {of}"),
            Self::UnsetAbsent { signal } => write!(f, "{signal}: not given, says no reading"),
            Self::UnsetBytes { signal, bytes } => {
                write!(f, "{signal}: not given, {bytes} bytes of 00 as its size says")
            }
            Self::UnsetZero { signal } => write!(f, "{signal}: not given, raw value 0"),
            Self::CounterStarts { signal, at } => {
                write!(f, "{signal}: not given, counts from {at}")
            }
            Self::ChecksumCalculated { signal, value } => {
                write!(f, "{signal}: calculated, 0x{value:X}")
            }
            Self::ChecksumAsGiven { signal, right } => {
                write!(f, "{signal}: as given, though the payload's checksum is 0x{right:X}")
            }
            Self::Protected { signal, profile, sum } => {
                write!(f, "{signal}: header of profile {profile} written, checksum 0x{sum:X}")
            }
            Self::HeaderTaken { signal, header } => {
                let bytes: Vec<String> = header.iter().map(|byte| format!("{byte:02X}")).collect();
                write!(
                    f,
                    "{signal}: calculated with {} as bytes 8..15 of the message's header; with others the checksum is another one",
                    bytes.join(" ")
                )
            }
            Self::Lengthened { from, to, why } => write!(f, "{from} bytes needed, {to} bytes long: {why}"),
            Self::OnLin { protected_id, checksum, kind } => {
                write!(
                    f,
                    "on the wire: protected identifier 0x{protected_id:02X}, {} checksum 0x{checksum:02X}",
                    kind.word()
                )
            }
            Self::Carried { by } => write!(f, "a message, not a frame: carried by {by}"),
            Self::Around { without } => write!(f, "the data of a message: {without}"),
            Self::Undescribed { places } => undescribed(places, f),
            Self::FurtherElements { from } => {
                write!(f, "the element ends before byte {from}; the bytes from there on will be read as further ones")
            }
        }
    }
}

/// Places as the language writes them.
fn undescribed(places: &[(BitPosition, BitPosition)], f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let place = |(msb, lsb): &(BitPosition, BitPosition)| {
        if msb == lsb { msb.to_string() } else { format!("{msb}..{lsb}") }
    };
    match places {
        [(msb, lsb)] if msb == lsb => write!(f, "bit {msb} is not described, sent as 0"),
        _ => {
            let places: Vec<String> = places.iter().map(place).collect();
            write!(f, "bits {} are not described, sent as 0", places.join(", "))
        }
    }
}
