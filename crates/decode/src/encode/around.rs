//! What a frame's bytes are not alone: the bytes that messages begin with, and what stands around them on the wire.

use wirelore_bits::Extractor;
use wirelore_model::{Content, Database, Frame, Identifier, NetworkKind, PortProtocol, SignalId};

use super::assemble::Assembly;
use super::error::EncodeError;
use super::note::Note;

impl Assembly<'_> {
    /// Puts in the bytes that every message of the frame begins with.
    pub(super) fn begin(&mut self) {
        let starts = beginning(self.frame);
        self.payload.resize(self.payload.len().max(starts.len()), 0);
        self.payload[..starts.len()].copy_from_slice(starts);
        self.needed_bytes = self.needed_bytes.max(starts.len());
    }

    /// Given signals must agree with the beginning; those that lie in it and are not given are what it makes them.
    pub(super) fn compare_with_beginning(&mut self) -> Result<(), EncodeError> {
        let starts = beginning(self.frame);
        if starts.is_empty() {
            return Ok(());
        }
        let given = self.payload.clone();
        self.begin();
        for (signal, id) in self.frame.signals.iter().zip((0..).map(SignalId)) {
            let Content::Number { field, .. } = &signal.content else { continue };
            let bits = |payload: &[u8]| Extractor::new(field).extract(payload);
            if self.is_set[id.index()] && bits(&given) != bits(&self.payload) {
                let bytes: Vec<String> = starts.iter().map(|byte| format!("{byte:02X}")).collect();
                return Err(EncodeError::CannotHold {
                    signal: signal.label.name.clone(),
                    what: "what is given".to_owned(),
                    why: format!("messages of the frame begin with {}", bytes.join(" ")),
                });
            }
            if signal.page.is_none() && signal.needed_bytes() as usize <= starts.len() {
                self.is_set[id.index()] = true;
            }
        }
        Ok(())
    }
}

/// The bytes that every message of a frame begins with.
pub(super) fn beginning(frame: &Frame) -> &[u8] {
    match frame.seen_on.first().map(|seen| &seen.identifier) {
        Some(Identifier::Telegram { starts, .. }) => starts,
        _ => &[],
    }
}

/// What has to be put around the bytes before they can go over the wire.
pub(super) fn note(database: &Database, frame: &Frame) -> Option<Note> {
    if let Some(transport) = frame.carried {
        return Some(Note::Carried { by: transport.words() });
    }
    let home = frame.seen_on.first()?;
    let kind = database.networks.get(home.network.index())?.kind;
    let without = match (&home.identifier, kind) {
        (Identifier::Telegram { .. }, NetworkKind::Kline) => "header and check byte are not in it",
        (Identifier::Telegram { .. }, _) => "what the network's messages have around their data is not in it",
        (Identifier::SomeIp { .. }, _) => "the headers of Ethernet, IP and SOME/IP are not in it",
        (Identifier::DoIp { .. }, _) => "the headers of Ethernet, IP and DoIP are not in it",
        (Identifier::Port { protocol: PortProtocol::Udp, .. }, _) => {
            "the headers of Ethernet, IP and UDP are not in it"
        }
        (Identifier::Port { .. }, _) => "the headers of Ethernet, IP and TCP are not in it",
        _ => return None,
    };
    Some(Note::Around { without })
}
