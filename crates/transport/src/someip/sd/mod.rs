//! SOME/IP service discovery: what is offered, asked for and subscribed, after AUTOSAR PRS SOME/IP Service Discovery.
//!
//! ```
//! use wirelore_transport::someip::sd::{Choice, Discovery, EntryKind, Transport};
//!
//! let payload = [
//!     0xC0, 0, 0, 0, // rebooted, answers by unicast
//!     0, 0, 0, 16, 0x01, 0, 0, 0x10, 0x12, 0x34, 0, 1, 1, 0, 0, 3, 0, 0, 0, 0, // offers service 1234 for 3 s
//!     0, 0, 0, 12, 0, 9, 0x04, 0, 192, 168, 0, 1, 0, 0x11, 0x75, 0x30, // at this address
//! ];
//! let discovery = Discovery::read(&payload)?;
//! let entry = &discovery.entries[0];
//! assert_eq!((entry.kind, entry.service, entry.ttl_s), (EntryKind::Offer { minor: 0 }, 0x1234, 3));
//! let Choice::Endpoint { address, transport, .. } = &discovery.options_of(entry).next().unwrap().choice else { panic!("endpoint") };
//! assert_eq!((address.to_string().as_str(), *transport), ("192.168.0.1:30000", Transport::Udp));
//! # Ok::<(), wirelore_transport::someip::sd::SdFault>(())
//! ```

mod entry;
mod option;

pub use entry::{Entry, EntryKind, Group, Run};
pub use option::{Choice, EndpointRole, SdOption, Transport};

use super::Header;
use crate::fields::Fields;

/// Service of all service discovery messages.
pub const SERVICE: u16 = 0xFFFF;
/// Method of all service discovery messages.
pub const METHOD: u16 = 0x8100;

/// The payload of a service discovery message.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Discovery<'a> {
    /// The sender has not yet counted through its session numbers since it started.
    pub reboot: bool,
    /// The sender takes messages that are sent to it alone.
    pub unicast: bool,
    /// What it says, in order.
    pub entries: Vec<Entry>,
    /// Addresses and other things that entries refer to.
    pub options: Vec<SdOption<'a>>,
}

/// Why a payload is no service discovery message.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum SdFault {
    /// It ends too early.
    #[error("the service discovery message ends inside its {part}: {held} bytes are there")]
    Cut {
        /// What is cut.
        part: &'static str,
        /// Bytes of the whole payload.
        held: usize,
    },
    /// Entries have 16 bytes each, and the length of all is something else.
    #[error("the entries have {told} bytes together, which is no multiple of 16")]
    EntriesLength {
        /// Bytes of all entries.
        told: usize,
    },
    /// An option has another length than its type needs.
    #[error("option {index} is of type {kind:#04X} and says {told} bytes; it needs {wanted}")]
    OptionLength {
        /// Which one, from 0.
        index: usize,
        /// Its type.
        kind: u8,
        /// Bytes behind its type.
        told: usize,
        /// Bytes needed.
        wanted: usize,
    },
    /// The text of a configuration option does not fit.
    #[error("option {index} is a configuration whose items do not end where it ends")]
    Configuration {
        /// Which one, from 0.
        index: usize,
    },
    /// An entry refers to options that are not there.
    #[error("entry {entry} refers to options up to number {last}, and there are {options}; they count from 0")]
    OptionMissing {
        /// Which entry, from 0.
        entry: usize,
        /// The last option that it refers to, from 0.
        last: usize,
        /// How many there are.
        options: usize,
    },
    /// Something stands behind the options.
    #[error("{0} bytes stand behind the options")]
    Trailing(usize),
}

impl<'a> Discovery<'a> {
    /// Whether a message with this header is for service discovery.
    #[must_use]
    pub fn is_in(header: &Header) -> bool {
        header.service == SERVICE && header.method == METHOD
    }

    /// Reads the payload of a message.
    ///
    /// # Errors
    /// A length or a reference in it is wrong.
    pub fn read(payload: &'a [u8]) -> Result<Self, SdFault> {
        let held = payload.len();
        let cut = |part| SdFault::Cut { part, held };
        let mut fields = Fields(payload);
        let (flags, _) = (fields.u8().ok_or(cut("flags"))?, fields.bytes(3).ok_or(cut("flags"))?);
        let told = fields.u32().ok_or(cut("length of entries"))? as usize;
        let entries_bytes = fields.bytes(told).ok_or(cut("entries"))?;
        let told_options = fields.u32().ok_or(cut("length of options"))? as usize;
        let options_bytes = fields.bytes(told_options).ok_or(cut("options"))?;
        if !fields.0.is_empty() {
            return Err(SdFault::Trailing(fields.0.len()));
        }
        let (entries, rest) = entries_bytes.as_chunks();
        if !rest.is_empty() {
            return Err(SdFault::EntriesLength { told });
        }
        let entries: Vec<_> = entries.iter().map(Entry::read).collect();
        let options = option::read_all(options_bytes, held)?;
        for (index, entry) in entries.iter().enumerate() {
            entry.check(index, options.len())?;
        }
        Ok(Self { reboot: flags & 0x80 != 0, unicast: flags & 0x40 != 0, entries, options })
    }

    /// The options that an entry refers to.
    pub fn options_of(&self, entry: &Entry) -> impl Iterator<Item = &SdOption<'a>> {
        let run = |run: Run| self.options.iter().skip(usize::from(run.first)).take(usize::from(run.count));
        run(entry.runs[0]).chain(run(entry.runs[1]))
    }

    /// Writes the payload behind what is in `out`.
    pub fn write(&self, out: &mut Vec<u8>) {
        out.extend([u8::from(self.reboot) << 7 | u8::from(self.unicast) << 6, 0, 0, 0]);
        with_length(out, |out| self.entries.iter().for_each(|entry| entry.write(out)));
        with_length(out, |out| self.options.iter().for_each(|option| option.write(out)));
    }
}

/// What `write` writes, behind its length in four bytes.
fn with_length(out: &mut Vec<u8>, write: impl FnOnce(&mut Vec<u8>)) {
    let at = out.len();
    out.extend([0; 4]);
    write(out);
    let length = (out.len() - at - 4) as u32;
    out[at..at + 4].copy_from_slice(&length.to_be_bytes());
}
