//! Control messages of a MOST ring that come in several parts.

use wirelore_model::SeenId;
use wirelore_transport::most::{Event, Outcome, Reassembler, Rules};

use super::{Give, Taken};
use crate::session::sample::Seen;

/// The messages of one channel, each by its function and operation.
#[derive(Debug, Default)]
pub(super) struct MostParts {
    reassembler: Reassembler<SeenId>,
}

impl MostParts {
    pub(super) fn take(&mut self, seen: &Seen<'_>, give: &mut dyn Give) -> Taken {
        let (SeenId::Most { .. }, Some(part)) = (seen.id, seen.part) else { return Taken::Plain };
        let is_whole = part == 0;
        let outcome = self.reassembler.feed(
            &Rules::default(),
            seen.time_ns,
            seen.id,
            part,
            seen.payload,
            &mut |event| match event {
                // It goes on as it is.
                Event::Message(_) if is_whole => {}
                Event::Message(message) => give.message(message.last_ns, message.key, message.bytes),
                Event::Fault(fault) => give.fault(fault.key, &fault.kind),
            },
        );
        if is_whole && outcome == Outcome::Finished { Taken::Plain } else { Taken::Carrying }
    }

    pub(super) fn finish(&mut self, give: &mut dyn Give) {
        self.reassembler.finish(&mut |event| {
            if let Event::Fault(fault) = event {
                give.fault(fault.key, &fault.kind);
            }
        });
    }
}
