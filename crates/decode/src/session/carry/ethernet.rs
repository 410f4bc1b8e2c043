//! Messages in Ethernet packets: datagrams, streams, and what SOME/IP and DoIP make of them.

use std::fmt;
use std::net::SocketAddr;

use wirelore_model::{PortProtocol, SeenId};
use wirelore_transport::cut::{Cut, Framing, Why};
use wirelore_transport::ethernet::{Carried, read};
use wirelore_transport::someip::tp::{Reassembler, Tp};
use wirelore_transport::someip::{SomeIp, SomeIpFault};
use wirelore_transport::tcp::{Flow, Limits, Piece, Streams};
use wirelore_transport::{doip, someip};

use super::{Give, Taken};
use crate::session::sample::Seen;

/// What is described on an Ethernet network.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Ports {
    /// Ports whose datagrams and streams are described as they are.
    pub(crate) described: Vec<(PortProtocol, u16)>,
    /// Whether messages of services are described.
    pub(crate) services: bool,
    /// The longest message that is put together.
    pub(crate) most_bytes: usize,
}

impl Ports {
    fn is_described(&self, protocol: PortProtocol, from: u16, to: u16) -> bool {
        self.described.iter().any(|&(of, port)| of == protocol && (port == from || port == to))
    }

    /// What the bytes between two ports are.
    fn content(&self, protocol: PortProtocol, from: u16, to: u16) -> Content {
        if self.is_described(protocol, from, to) {
            Content::Raw
        } else if from == doip::PORT || to == doip::PORT {
            Content::DoIp
        } else if self.services {
            Content::SomeIp
        } else {
            Content::Raw
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Content {
    Raw,
    SomeIp,
    DoIp,
}

/// What is cut out of one direction of a connection.
#[derive(Debug, Clone)]
enum Stream {
    Raw,
    /// It was seen from its start: its first bytes will tell whether it is SOME/IP.
    Open,
    SomeIp(Box<someip::Stream>),
    DoIp(Box<doip::Stream>),
}

/// The messages of one channel.
#[derive(Debug)]
pub(super) struct Ethernet {
    ports: Ports,
    streams: Streams<Stream>,
    segmented: Reassembler<(SocketAddr, SocketAddr)>,
    /// Bytes of messages that have begun, of all streams.
    held_bytes: usize,
}

/// So many bytes of messages that have begun are held of all streams together.
const HELD_BYTES_MAX: usize = 64 << 20;

impl Ethernet {
    pub(super) fn new(ports: Ports) -> Self {
        let segmented = Reassembler::new(ports.most_bytes);
        Self { ports, streams: Streams::new(Limits::default(), Stream::Raw), segmented, held_bytes: 0 }
    }

    pub(super) fn take(&mut self, seen: &Seen<'_>, give: &mut dyn Give) -> Taken {
        let SeenId::Packet { .. } = seen.id else { return Taken::Plain };
        let packet = match read(seen.payload) {
            Ok(packet) => packet,
            Err(fault) => {
                give.fault(seen.id, &fault);
                return Taken::Damaged;
            }
        };
        match packet.carried {
            Carried::Udp { from, to, payload } => self.datagram((from, to), payload, seen, give),
            Carried::Tcp(segment) => {
                let Self { ports, streams, segmented, held_bytes } = self;
                streams.feed(seen.time_ns, &segment, &mut |flow, stream, piece| {
                    let ends = (flow.from, flow.to);
                    let others = *held_bytes - stream.held_bytes();
                    let mut messages = Messages { segmented, ends, time_ns: seen.time_ns, give };
                    messages.piece(ports, flow, stream, piece);
                    if others + stream.held_bytes() > HELD_BYTES_MAX {
                        messages.make_room(flow, stream);
                    }
                    *held_bytes = others + stream.held_bytes();
                });
            }
            Carried::Fragment { .. } => {
                give.fault(seen.id, &"a part of an IP datagram; such parts are not put together")
            }
            Carried::OtherOverIp { .. } | Carried::Other { .. } | Carried::Llc { .. } => return Taken::Plain,
        }
        Taken::Carrying
    }

    fn datagram(&mut self, ends: (SocketAddr, SocketAddr), payload: &[u8], seen: &Seen<'_>, give: &mut dyn Give) {
        let (from, to) = (ends.0.port(), ends.1.port());
        let Self { ports, segmented, .. } = self;
        let time_ns = seen.time_ns;
        let mut messages = Messages { segmented, ends, time_ns, give };
        match ports.content(PortProtocol::Udp, from, to) {
            Content::DoIp => messages.all_of_doip(payload),
            // Other protocols use ports of their own choice, too: a datagram is SOME/IP where all of it is or its beginning is likely.
            // What does not fit then is told.
            Content::SomeIp if is_someip(payload) || begins_as_someip(payload) => messages.all_of_someip(payload),
            Content::SomeIp | Content::Raw => {
                messages.give.message(time_ns, SeenId::Ports { protocol: PortProtocol::Udp, from, to }, payload);
            }
        }
    }

    pub(super) fn finish(&mut self, give: &mut dyn Give) {
        let Self { ports, streams, segmented, held_bytes: _ } = self;
        streams.finish(&mut |flow, stream, piece| {
            Messages { segmented, ends: (flow.from, flow.to), time_ns: None, give }.piece(ports, flow, stream, piece);
        });
        segmented.finish(&mut |event| segment(None, event, give));
    }
}

fn is_someip(payload: &[u8]) -> bool {
    !payload.is_empty() && someip::Datagram::new(payload).all(|message| message.is_ok())
}

/// Whether the header of a message is likely to stand at the beginning, whatever length it tells.
fn begins_as_someip(payload: &[u8]) -> bool {
    payload.get(..SomeIp::HEADER_BYTES).is_some_and(|header| can_be_someip(header) && SomeIp::is_likely(header))
}

fn can_be_someip(header: &[u8]) -> bool {
    matches!(SomeIp::length(header, usize::MAX), Ok(_) | Err(SomeIpFault::LengthTooSmall { .. }))
}

impl Stream {
    /// Bytes of the message that has begun.
    fn held_bytes(&self) -> usize {
        match self {
            Self::Raw | Self::Open => 0,
            Self::SomeIp(cutter) => cutter.held_bytes(),
            Self::DoIp(cutter) => cutter.held_bytes(),
        }
    }
}

/// Takes messages apart and gives them on.
struct Messages<'a> {
    segmented: &'a mut Reassembler<(SocketAddr, SocketAddr)>,
    ends: (SocketAddr, SocketAddr),
    /// The time of the packet; `None` at the end of the log.
    time_ns: Option<i64>,
    give: &'a mut dyn Give,
}

impl Messages<'_> {
    /// What became of a stream.
    fn piece(&mut self, ports: &Ports, flow: &Flow, stream: &mut Stream, piece: Piece<'_>) {
        let (from, to) = (flow.from.port(), flow.to.port());
        if let Piece::Begun { from_start } = piece {
            *stream = match ports.content(PortProtocol::Tcp, from, to) {
                Content::Raw => Stream::Raw,
                Content::SomeIp if from_start => Stream::Open,
                Content::SomeIp => Stream::SomeIp(Box::new(someip::Stream::new(ports.most_bytes))),
                Content::DoIp => Stream::DoIp(Box::new(doip::Stream::new(ports.most_bytes))),
            };
        }
        if let (Stream::Open, Piece::Bytes { bytes, .. }) = (&*stream, piece) {
            // Other protocols use ports of their own choice, too. A beginning that is too short to tell is taken for SOME/IP.
            let is_other = bytes.get(..SomeIp::HEADER_BYTES).is_some_and(|header| !can_be_someip(header));
            *stream = match is_other {
                true => Stream::Raw,
                false => Stream::SomeIp(Box::new(someip::Stream::new(ports.most_bytes))),
            };
        }
        let ports_seen = SeenId::Ports { protocol: PortProtocol::Tcp, from, to };
        match stream {
            Stream::Raw | Stream::Open => match piece {
                Piece::Bytes { time_ns, bytes } => self.give.message(time_ns, ports_seen, bytes),
                Piece::Gap { bytes } => self.give.fault(ports_seen, &Missing(bytes)),
                Piece::Begun { .. } | Piece::Ended(_) => {}
            },
            Stream::SomeIp(cutter) => cutter.piece(piece, &mut |cut| match cut {
                Cut::Message { bytes, last_ns, .. } => self.someip(last_ns, bytes),
                other => self.uncut(ports_seen, &other),
            }),
            Stream::DoIp(cutter) => cutter.piece(piece, &mut |cut| match cut {
                Cut::Message { bytes, last_ns, .. } => self.doip(last_ns, bytes),
                other => self.uncut(ports_seen, &other),
            }),
        }
    }

    /// Gives up the message that has begun.
    fn make_room(&mut self, flow: &Flow, stream: &mut Stream) {
        let id = SeenId::Ports { protocol: PortProtocol::Tcp, from: flow.from.port(), to: flow.to.port() };
        match stream {
            Stream::Raw | Stream::Open => {}
            Stream::SomeIp(cutter) => cutter.lost(Why::Crowded, &mut |cut| match cut {
                Cut::Message { bytes, last_ns, .. } => self.someip(last_ns, bytes),
                other => self.uncut(id, &other),
            }),
            Stream::DoIp(cutter) => cutter.lost(Why::Crowded, &mut |cut| match cut {
                Cut::Message { bytes, last_ns, .. } => self.doip(last_ns, bytes),
                other => self.uncut(id, &other),
            }),
        }
    }

    /// Bytes of a stream that are no message.
    fn uncut<F: fmt::Display>(&mut self, id: SeenId, cut: &Cut<'_, F>) {
        match cut {
            Cut::Message { .. } => {}
            Cut::Skipped { bytes: 0, why } => self.give.fault(id, why),
            Cut::Skipped { bytes, why } => {
                self.give.fault(id, &format_args!("{bytes} bytes of a stream are no message: {why}"))
            }
            Cut::Unfinished { held, length: Some(length) } => {
                self.give.fault(id, &format_args!("the stream ends after {held} of {length} bytes of a message"));
            }
            Cut::Unfinished { held, length: None } => {
                self.give.fault(id, &format_args!("the stream ends after {held} bytes of a header"));
            }
        }
    }

    fn all_of_someip(&mut self, payload: &[u8]) {
        let (from, to) = (self.ends.0.port(), self.ends.1.port());
        for message in someip::Datagram::new(payload) {
            match message {
                Ok(bytes) => self.someip(self.time_ns, bytes),
                Err(fault) => self.give.fault(SeenId::Ports { protocol: PortProtocol::Udp, from, to }, &fault),
            }
        }
    }

    fn someip(&mut self, time_ns: Option<i64>, bytes: &[u8]) {
        if someip::Cookie::of(bytes).is_some() {
            return;
        }
        // What was cut out of a stream or a datagram has the length that its header says.
        let Ok(message) = someip::Message::read(bytes) else { return };
        if message.header.segmented {
            let Self { segmented, ends, give, .. } = self;
            segmented.feed(*ends, time_ns, &message, &mut |event| segment(time_ns, event, *give));
        } else {
            of_service(time_ns, message.header, message.payload, self.give);
        }
    }

    fn all_of_doip(&mut self, payload: &[u8]) {
        let (from, to) = (self.ends.0.port(), self.ends.1.port());
        for message in doip::Datagram::new(payload) {
            match message {
                Ok(bytes) => self.doip(self.time_ns, bytes),
                Err(fault) => self.give.fault(SeenId::Ports { protocol: PortProtocol::Udp, from, to }, &fault),
            }
        }
    }

    fn doip(&mut self, time_ns: Option<i64>, bytes: &[u8]) {
        let payload_type = bytes.get(2..4).map_or(0, |word| u16::from_be_bytes([word[0], word[1]]));
        let plain = SeenId::DoIp { payload_type, source: None, target: None };
        let addressed = |source, target| SeenId::DoIp { payload_type, source: Some(source), target: Some(target) };
        match doip::Message::read(bytes) {
            Err(fault) => self.give.fault(plain, &fault),
            Ok(message) => match message.payload {
                doip::Payload::Diagnostic { source, target, .. }
                | doip::Payload::DiagnosticAck { source, target, .. }
                | doip::Payload::DiagnosticNack { source, target, .. } => {
                    self.give.message(
                        time_ns,
                        addressed(source, target),
                        bytes.get(DIAGNOSTIC_AT..).unwrap_or_default(),
                    );
                }
                _ => self.give.message(time_ns, plain, bytes.get(HEADER_BYTES..).unwrap_or_default()),
            },
        }
    }
}

/// The generic header of DoIP (ISO 13400-2).
const HEADER_BYTES: usize = 8;
/// In diagnostic messages two addresses of two bytes follow it.
const DIAGNOSTIC_AT: usize = HEADER_BYTES + 4;

fn segment(time_ns: Option<i64>, event: Tp<'_>, give: &mut dyn Give) {
    match event {
        Tp::Message { header, payload, .. } => of_service(time_ns, header, payload, give),
        Tp::Fault { header, fault } => give.fault(service_id(header), &fault),
        Tp::Part | Tp::Repeated | Tp::OfGivenUp => {}
    }
}

/// A whole message of a service, with what stands behind the length in its header.
fn of_service(time_ns: Option<i64>, header: someip::Header, payload: &[u8], give: &mut dyn Give) {
    give.headed(time_ns, service_id(header), Some(header.behind_length()), payload);
}

fn service_id(header: someip::Header) -> SeenId {
    SeenId::SomeIp { service: header.service, method: header.method, message_type: header.kind.number() }
}

/// Bytes of a stream that were never recorded.
struct Missing(u64);

impl fmt::Display for Missing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} bytes of a stream are missing", self.0)
    }
}
