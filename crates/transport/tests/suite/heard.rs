//! Reassemblers with everything that they told.

use wirelore_transport::{iso_tp, j1939_tp};

/// Milliseconds as the nanoseconds that reassemblers are fed.
pub(crate) fn ms(time_ms: i64) -> Option<i64> {
    Some(time_ms * 1_000_000)
}

/// A listener of ISO-TP with one rule for all, one frame a millisecond where no time is told.
#[derive(Default)]
pub(crate) struct IsoTp {
    pub(crate) rules: iso_tp::Rules,
    pub(crate) reassembler: iso_tp::Reassembler<u32>,
    pub(crate) messages: Vec<(iso_tp::Conversation<u32>, Vec<u8>)>,
    pub(crate) faults: Vec<iso_tp::Fault<u32>>,
    /// First and last time and the number of frames of each message.
    pub(crate) spans: Vec<(Option<i64>, Option<i64>, u32)>,
    time_ms: i64,
}

impl IsoTp {
    pub(crate) fn with(rules: iso_tp::Rules) -> Self {
        Self { rules, ..Self::default() }
    }

    pub(crate) fn feed(&mut self, key: u32, payload: &[u8]) -> iso_tp::Outcome {
        self.time_ms += 1;
        self.feed_at(ms(self.time_ms), key, payload)
    }

    pub(crate) fn feed_at(&mut self, time_ns: Option<i64>, key: u32, payload: &[u8]) -> iso_tp::Outcome {
        let Self { rules, reassembler, messages, faults, spans, .. } = self;
        reassembler.feed(rules, time_ns, key, payload, &mut |event| match event {
            iso_tp::Event::Message(message) => {
                messages.push((message.conversation, message.bytes.to_vec()));
                spans.push((message.first_ns, message.last_ns, message.frames));
            }
            iso_tp::Event::Fault(fault) => faults.push(fault),
        })
    }

    pub(crate) fn feed_all(&mut self, key: u32, frames: &[Vec<u8>]) {
        for frame in frames {
            self.feed(key, frame);
        }
    }

    pub(crate) fn answered(&mut self, time_ns: Option<i64>, key: u32, answer: iso_tp::FlowControl) {
        let conversation = iso_tp::Conversation { key, address: None };
        let faults = &mut self.faults;
        self.reassembler.answered(conversation, time_ns, answer, &mut |event| match event {
            iso_tp::Event::Message(_) => panic!("an answer makes no message whole"),
            iso_tp::Event::Fault(fault) => faults.push(fault),
        });
    }

    pub(crate) fn finish(&mut self) {
        let faults = &mut self.faults;
        self.reassembler.finish(&mut |event| match event {
            iso_tp::Event::Message(_) => panic!("the end makes no message whole"),
            iso_tp::Event::Fault(fault) => faults.push(fault),
        });
    }

    /// The messages' bytes, in the order that they became whole.
    pub(crate) fn bytes(&self) -> Vec<&[u8]> {
        self.messages.iter().map(|(_, bytes)| bytes.as_slice()).collect()
    }

    pub(crate) fn kinds(&self) -> Vec<iso_tp::FaultKind> {
        self.faults.iter().map(|fault| fault.kind).collect()
    }
}

/// The frames of a message.
pub(crate) fn cut(message: &[u8], layout: &iso_tp::Layout) -> Vec<Vec<u8>> {
    let mut frames = Vec::new();
    iso_tp::segment(message, layout, &mut |frame| frames.push(frame.to_vec())).expect("it can be cut");
    frames
}

/// Bytes that differ from their neighbours.
pub(crate) fn pattern(length: usize) -> Vec<u8> {
    (0..length).map(|index| (index * 7 + index / 251) as u8).collect()
}

/// A whole message of J1939, kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Group {
    pub(crate) source: u8,
    pub(crate) destination: u8,
    pub(crate) pgn: u32,
    pub(crate) bytes: Vec<u8>,
    pub(crate) frames: u32,
    pub(crate) first_ns: Option<i64>,
    pub(crate) last_ns: Option<i64>,
}

/// A listener of J1939, one frame a millisecond where no time is told.
#[derive(Default)]
pub(crate) struct J1939 {
    pub(crate) reassembler: j1939_tp::Reassembler,
    pub(crate) messages: Vec<Group>,
    pub(crate) faults: Vec<j1939_tp::Fault>,
    time_ms: i64,
}

impl J1939 {
    pub(crate) fn feed(&mut self, id: u32, payload: &[u8]) -> j1939_tp::Outcome {
        self.time_ms += 1;
        self.feed_at(ms(self.time_ms), id, payload)
    }

    pub(crate) fn feed_at(&mut self, time_ns: Option<i64>, id: u32, payload: &[u8]) -> j1939_tp::Outcome {
        let Self { reassembler, messages, faults, .. } = self;
        reassembler.feed(time_ns, id, payload, &mut |event| match event {
            j1939_tp::Event::Message(message) => messages.push(Group {
                source: message.conversation.source,
                destination: message.conversation.destination,
                pgn: message.pgn,
                bytes: message.bytes.to_vec(),
                frames: message.frames,
                first_ns: message.first_ns,
                last_ns: message.last_ns,
            }),
            j1939_tp::Event::Fault(fault) => faults.push(fault),
        })
    }

    pub(crate) fn feed_all(&mut self, frames: &[(u32, [u8; 8])]) {
        for (id, payload) in frames {
            self.feed(*id, payload);
        }
    }

    pub(crate) fn finish(&mut self) {
        let faults = &mut self.faults;
        self.reassembler.finish(&mut |event| match event {
            j1939_tp::Event::Message(_) => panic!("the end makes no message whole"),
            j1939_tp::Event::Fault(fault) => faults.push(fault),
        });
    }

    pub(crate) fn bytes(&self) -> Vec<&[u8]> {
        self.messages.iter().map(|message| message.bytes.as_slice()).collect()
    }

    pub(crate) fn kinds(&self) -> Vec<j1939_tp::FaultKind> {
        self.faults.iter().map(|fault| fault.kind).collect()
    }
}

/// The frames of a broadcast.
pub(crate) fn broadcast(source: u8, pgn: u32, message: &[u8]) -> Vec<(u32, [u8; 8])> {
    let group = j1939_tp::Group { pgn, source, priority: 6 };
    let mut frames = Vec::new();
    j1939_tp::broadcast(&group, message, &mut |id, payload| frames.push((id, payload))).expect("it can be cut");
    frames
}

/// The frames of both sides of a connection.
pub(crate) fn connection(source: u8, destination: u8, pgn: u32, at_once: u8, message: &[u8]) -> Vec<(u32, [u8; 8])> {
    let group = j1939_tp::Group { pgn, source, priority: 6 };
    let mut frames = Vec::new();
    j1939_tp::connection(&group, destination, at_once, message, &mut |id, payload| frames.push((id, payload)))
        .expect("it can be cut");
    frames
}
