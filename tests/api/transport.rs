// cut/cutter.rs

#[derive(Debug, Clone)]
pub struct Cutter<F: Framing> {}
impl<F: Framing> Cutter<F> {
    pub fn new(most_bytes: usize) -> Self {}
    pub fn held_bytes(&self) -> usize {}
    pub fn piece(&mut self, piece: Piece<'_>, tell: &mut impl FnMut(Cut<'_, F::Fault>)) {}
    pub fn bytes(
        &mut self,
        time_ns: Option<i64>,
        bytes: &[u8],
        tell: &mut impl FnMut(Cut<'_, F::Fault>),
    ) {}
    pub fn lost(
        &mut self,
        why: Why<F::Fault>,
        tell: &mut impl FnMut(Cut<'_, F::Fault>),
    ) {}
    pub fn finish(&mut self, tell: &mut impl FnMut(Cut<'_, F::Fault>)) {}
}

// cut/datagram.rs

#[derive(Debug, Clone)]
pub struct Datagram<'a, F> {}
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum DatagramFault<Fault: Display> {
    HeaderCut { held: usize, header: usize },
    Cut { length: usize, held: usize },
    Header { fault: Fault, held: usize },
}
impl<'a, F: Framing> Datagram<'a, F> {
    pub fn new(payload: &'a [u8]) -> Self {}
}
impl<'a, F: Framing> Iterator for Datagram<'a, F>
where
    F::Fault: Display,
{
    type Item = Result<&'a [u8], DatagramFault<F::Fault>>;
}

// cut/mod.rs

pub use cutter::Cutter;
pub use datagram::{Datagram, DatagramFault};
pub trait Framing: Debug + Clone {
    type Fault: Debug + Clone + Copy + PartialEq;
    const HEADER_BYTES: usize;
    fn length(header: &[u8], most_bytes: usize) -> Result<usize, Self::Fault>;
    fn is_likely(header: &[u8]) -> bool;
}
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Cut<'a, Fault> {
    Message { bytes: &'a [u8], first_ns: Option<i64>, last_ns: Option<i64> },
    Skipped { bytes: u64, why: Why<Fault> },
    Unfinished { held: usize, length: Option<usize> },
}
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum Why<Fault> {
    Middle,
    Gap(u64),
    Swallowed { length: usize, held: usize },
    Crowded,
    Fault(Fault),
}

// doip/framing.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct DoIp;
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum DoIpFault {
    HeaderCut { held: usize },
    InverseVersion { version: u8, inverse: u8 },
    TooLong { length: u64, most_bytes: usize },
    LengthDisagrees { length: usize, held: usize },
    PayloadLength { payload_type: u16, held: usize, wanted: &'static str },
}
impl Framing for DoIp {
    type Fault = DoIpFault;
}

// doip/mod.rs

pub use framing::{DoIp, DoIpFault};
pub use names::{
    diagnostic_nack_name, header_nack_name, payload_type_name, routing_activation_name,
};
pub use payload::{Message, Payload};
pub const PORT: u16 = 13400;
pub type Stream = crate::cut::Cutter<DoIp>;
pub type Datagram<'a> = crate::cut::Datagram<'a, DoIp>;

// doip/names.rs

pub fn payload_type_name(payload_type: u16) -> &'static str {}
pub fn header_nack_name(code: u8) -> &'static str {}
pub fn routing_activation_name(code: u8) -> &'static str {}
pub fn diagnostic_nack_name(code: u8) -> &'static str {}

// doip/payload.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Message<'a> {
    pub version: u8,
    pub payload: Payload<'a>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Payload<'a> {
    HeaderNack { code: u8 },
    IdentificationRequest,
    IdentificationRequestEid { eid: [u8; 6] },
    IdentificationRequestVin { vin: [u8; 17] },
    Announcement {
        vin: [u8; 17],
        address: u16,
        eid: [u8; 6],
        gid: [u8; 6],
        further_action: u8,
        synchronisation: Option<u8>,
    },
    RoutingActivationRequest {
        source: u16,
        activation: u8,
        reserved: [u8; 4],
        of_manufacturer: Option<[u8; 4]>,
    },
    RoutingActivationResponse {
        tester: u16,
        entity: u16,
        code: u8,
        reserved: [u8; 4],
        of_manufacturer: Option<[u8; 4]>,
    },
    AliveCheckRequest,
    AliveCheckResponse { source: u16 },
    EntityStatusRequest,
    EntityStatusResponse {
        node: u8,
        sockets_max: u8,
        sockets_open: u8,
        bytes_max: Option<u32>,
    },
    PowerModeRequest,
    PowerModeResponse { mode: u8 },
    Diagnostic { source: u16, target: u16, user_data: &'a [u8] },
    DiagnosticAck { source: u16, target: u16, code: u8, previous: &'a [u8] },
    DiagnosticNack { source: u16, target: u16, code: u8, previous: &'a [u8] },
    Other { payload_type: u16, bytes: &'a [u8] },
}
impl<'a> Message<'a> {
    pub fn read(bytes: &'a [u8]) -> Result<Self, DoIpFault> {}
}

// doip/write.rs

impl Message<'_> {
    pub fn write(&self, out: &mut Vec<u8>) -> bool {}
}
impl Payload<'_> {
    pub fn payload_type(&self) -> u16 {}
}

// ethernet/fault.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum PacketFault {
    EthernetCut { held: usize },
    TagCut { held: usize },
    TooManyTags,
    LlcCut { told: usize, held: usize },
    IpHeaderCut { held: usize },
    IpVersion { told: u8, wanted: u8 },
    IpHeaderLength { told: usize },
    IpLength { header: usize, told: usize },
    IpCut { told: usize, held: usize },
    PortsCut { protocol: &'static str, held: usize },
    UdpLength { told: usize, held: usize },
    TcpHeaderLength { told: usize, held: usize },
}

// ethernet/mod.rs

pub use fault::PacketFault;
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Packet<'a> {
    pub destination: [u8; 6],
    pub source: [u8; 6],
    pub tags: [Option<VlanTag>; 2],
    pub header_checksum_wrong: bool,
    pub carried: Carried<'a>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct VlanTag {
    pub priority: u8,
    pub drop_eligible: bool,
    pub vlan: u16,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Carried<'a> {
    Udp { from: SocketAddr, to: SocketAddr, payload: &'a [u8] },
    Tcp(Segment<'a>),
    Fragment {
        from: IpAddr,
        to: IpAddr,
        protocol: u8,
        byte_index: u32,
        is_last: bool,
        payload: &'a [u8],
    },
    OtherOverIp { from: IpAddr, to: IpAddr, protocol: u8, payload: &'a [u8] },
    Other { ether_type: u16, payload: &'a [u8] },
    Llc { payload: &'a [u8] },
}
pub const ETHER_TYPES_OF_TAGS: [u16; 3] = [0x8100, 0x88A8, 0x9100];
pub fn read(bytes: &[u8]) -> Result<Packet<'_>, PacketFault> {}

// iso_tp/fault.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fault<K> {
    pub conversation: Conversation<K>,
    pub time_ns: Option<i64>,
    pub frames: u32,
    pub kind: FaultKind,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
#[non_exhaustive]
pub enum FaultKind {
    FrameEmpty { found: usize },
    FrameTooLong { found: usize },
    TypeReserved { number: u8 },
    SingleLength { announced: usize, least: usize, most: usize },
    SingleWithoutEscape { frame_bytes: usize },
    FirstCut { found: usize },
    FirstFitsSingle { announced: u32, most: usize },
    FirstEscapeNeedless { announced: u32 },
    TooLong { announced: u32, most: u32 },
    Lost { index: u32, expected: u8, found: u8 },
    Repeated { index: u32, number: u8 },
    NothingBegun { number: u8 },
    ConsecutiveLength { index: u32, found: usize, least: usize, most: usize },
    BrokenOff { received: u32, announced: u32 },
    TimedOut { index: u32, waited_ns: i64, limit_ns: i64 },
    FlowControlCut { found: usize },
    FlowStatusReserved { status: u8 },
    Overflow { announced: u32 },
    PushedOut { most: usize, received: u32, announced: u32 },
    Unfinished { received: u32, announced: u32 },
}

// iso_tp/mod.rs

pub use fault::{Fault, FaultKind};
pub use pci::{FlowControl, FlowStatus, SeparationTime};
pub use reassembler::{Conversation, Event, Message, Outcome, Reassembler};
pub use segment::{Layout, SegmentError, segment};
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Addressing {
    Normal,
    Extended,
    Mixed,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rules {
    pub addressing: Addressing,
    pub most_bytes: u32,
    pub most_gap_ns: i64,
}
impl Default for Rules {}

// iso_tp/pci.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct FlowControl {
    pub status: FlowStatus,
    pub block_size: u8,
    pub separation_time: SeparationTime,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FlowStatus {
    Continue,
    Wait,
    Overflow,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct SeparationTime(pub u8);
impl SeparationTime {
    pub const fn ns(self) -> u64 {}
    pub const fn is_reserved(self) -> bool {}
}
impl FlowControl {
    pub const fn to_bytes(self) -> [u8; 3] {}
}

// iso_tp/reassembler.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Conversation<K> {
    pub key: K,
    pub address: Option<u8>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Event<'a, K> {
    Message(Message<'a, K>),
    Fault(Fault<K>),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Message<'a, K> {
    pub conversation: Conversation<K>,
    pub bytes: &'a [u8],
    pub first_ns: Option<i64>,
    pub last_ns: Option<i64>,
    pub frames: u32,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    Finished,
    Part,
    FlowControl(FlowControl),
    OfGivenUp,
    Unusable,
}
#[derive(Debug, Clone)]
pub struct Reassembler<K> {}
impl<K: Copy + Ord> Default for Reassembler<K> {}
impl<K: Copy + Ord> Reassembler<K> {
    pub const fn new() -> Self {}
    pub fn feed(
        &mut self,
        rules: &Rules,
        time_ns: Option<i64>,
        key: K,
        payload: &[u8],
        tell: &mut dyn FnMut(Event<'_, K>),
    ) -> Outcome {}
    pub fn answered(
        &mut self,
        conversation: Conversation<K>,
        time_ns: Option<i64>,
        answer: FlowControl,
        tell: &mut dyn FnMut(Event<'_, K>),
    ) {}
    pub fn finish(&mut self, tell: &mut dyn FnMut(Event<'_, K>)) {}
    pub fn held_bytes(&self) -> usize {}
}

// iso_tp/segment.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Layout {
    pub address: Option<u8>,
    pub frame_bytes: usize,
    pub padding: Option<u8>,
}
impl Default for Layout {}
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum SegmentError {
    Empty,
    TooLong(usize),
    FrameBytes(usize),
}
pub fn segment(
    message: &[u8],
    layout: &Layout,
    give: &mut dyn FnMut(&[u8]),
) -> Result<(), SegmentError> {}

// j1939_tp/control.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Control {
    pub pgn: u32,
    pub kind: ControlKind,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ControlKind {
    RequestToSend { size: u16, packets: u8, most_at_once: u8 },
    ClearToSend { packets: u8, next: u8 },
    Acknowledge { size: u16, packets: u8 },
    Broadcast { size: u16, packets: u8 },
    Abort(AbortReason),
}
impl Control {
    pub fn read(payload: &[u8]) -> Result<Self, FaultKind> {}
    pub fn to_bytes(self) -> [u8; FRAME_BYTES] {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct AbortReason(pub u8);
impl AbortReason {
    pub const fn words(self) -> &'static str {}
}
impl fmt::Display for AbortReason {}

// j1939_tp/fault.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fault {
    pub conversation: Conversation,
    pub pgn: Option<u32>,
    pub time_ns: Option<i64>,
    pub frames: u32,
    pub kind: FaultKind,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
#[non_exhaustive]
pub enum FaultKind {
    FrameLength { found: usize },
    ControlReserved { number: u8 },
    PgnImpossible { pgn: u32 },
    Size { size: u16 },
    PacketsDisagree { size: u16, packets: u8, needed: u8 },
    Destination { destination: u8 },
    NothingBegun { number: u8 },
    NothingToAnswer,
    NothingToAbort { reason: AbortReason },
    Lost { expected: u8, found: u8 },
    Repeated { number: u8 },
    OutOfOrder { number: u8, latest: u8 },
    PacketBeyond { number: u8, packets: u8 },
    ClearedBeyond { next: u8, packets: u8 },
    NotRecorded { missing: u8 },
    AcknowledgeDisagrees { acknowledged: u16, announced: u16 },
    Aborted { reason: AbortReason, by_sender: bool },
    BrokenOff { received: u8, packets: u8 },
    TimedOut { timer: Timer, waited_ns: i64, limit_ns: i64 },
    PushedOut { most: usize, received: u8, packets: u8 },
    Unfinished { received: u8, packets: u8 },
}

// j1939_tp/identifier.rs

pub const CONTROL_GROUP: u32 = 0xEC00;
pub const DATA_GROUP: u32 = 0xEB00;
pub const EVERYBODY: u8 = 0xFF;

// j1939_tp/mod.rs

pub use control::{AbortReason, Control, ControlKind};
pub use fault::{Fault, FaultKind};
pub use identifier::{CONTROL_GROUP, DATA_GROUP, EVERYBODY};
pub use reassembler::{Conversation, Event, Message, Outcome, Reassembler};
pub use segment::{Group, SegmentError, broadcast, connection};
pub use timers::{Timeouts, Timer};
pub fn carries(id: u32) -> bool {}
pub const LEAST_BYTES: u16 = 9;
pub const MOST_BYTES: u16 = 1785;

// j1939_tp/reassembler.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Conversation {
    pub source: u8,
    pub destination: u8,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Event<'a> {
    Message(Message<'a>),
    Fault(Fault),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Message<'a> {
    pub conversation: Conversation,
    pub pgn: u32,
    pub bytes: &'a [u8],
    pub first_ns: Option<i64>,
    pub last_ns: Option<i64>,
    pub frames: u32,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    NotMine,
    Finished,
    Part,
    Answer(ControlKind),
    OfGivenUp,
    Unusable,
}
#[derive(Debug, Clone)]
pub struct Reassembler {}
impl Default for Reassembler {}
impl Reassembler {
    pub const fn new(timeouts: Timeouts) -> Self {}
    pub fn feed(
        &mut self,
        time_ns: Option<i64>,
        id: u32,
        payload: &[u8],
        tell: &mut dyn FnMut(Event<'_>),
    ) -> Outcome {}
    pub fn finish(&mut self, tell: &mut dyn FnMut(Event<'_>)) {}
    pub fn held_bytes(&self) -> usize {}
}

// j1939_tp/segment.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Group {
    pub pgn: u32,
    pub source: u8,
    pub priority: u8,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum SegmentError {
    Size(usize),
    Destination,
    NothingCleared,
}
pub fn broadcast(
    group: &Group,
    message: &[u8],
    give: &mut dyn FnMut(u32, [u8; FRAME_BYTES]),
) -> Result<(), SegmentError> {}
pub fn connection(
    group: &Group,
    destination: u8,
    at_once: u8,
    message: &[u8],
    give: &mut dyn FnMut(u32, [u8; FRAME_BYTES]),
) -> Result<(), SegmentError> {}

// j1939_tp/timers.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Timeouts {
    pub t1_ns: i64,
    pub t2_ns: i64,
    pub t3_ns: i64,
    pub t4_ns: i64,
}
impl Default for Timeouts {}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Timer {
    T1,
    T2,
    T3,
    T4,
}
impl fmt::Display for Timer {}

// lib.rs

pub mod cut;
pub mod doip;
pub mod ethernet;
pub mod iso_tp;
pub mod j1939_tp;
pub mod most;
pub mod someip;
pub mod tcp;
pub mod uart;

// most/control.rs

pub const CONTROL_BYTES: usize = 17;
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ControlMessage<'a> {
    pub block: u8,
    pub instance: u8,
    pub function: u16,
    pub operation: u8,
    pub part: u8,
    pub data: &'a [u8],
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum ControlError {
    Cut { found: usize },
    Length { announced: usize },
}
impl<'a> ControlMessage<'a> {
    pub fn read(bytes: &'a [u8]) -> Result<Self, ControlError> {}
}

// most/fault.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fault<K> {
    pub key: K,
    pub time_ns: Option<i64>,
    pub parts: u32,
    pub kind: FaultKind,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
#[non_exhaustive]
pub enum FaultKind {
    PartUnknown { number: u8 },
    PartEmpty,
    Lost { index: u32, expected: u8, found: u8 },
    Repeated { index: u32, number: u8 },
    FirstNumber { found: u8 },
    NothingBegun { number: u8 },
    BrokenOff { received: u32 },
    TooLong { most: u32 },
    TimedOut { index: u32, waited_ns: i64, limit_ns: i64 },
    PushedOut { most: usize, received: u32 },
    Unfinished { received: u32 },
}

// most/mod.rs

pub use control::{CONTROL_BYTES, ControlError, ControlMessage};
pub use fault::{Fault, FaultKind};
pub use reassembler::{Event, Message, Outcome, Reassembler};
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Part {
    Whole,
    First,
    Middle,
    Last,
}
impl Part {
    pub const fn of_number(number: u8) -> Option<Self> {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rules {
    pub most_bytes: u32,
    pub most_gap_ns: i64,
}
impl Default for Rules {}

// most/reassembler.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Event<'a, K> {
    Message(Message<'a, K>),
    Fault(Fault<K>),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Message<'a, K> {
    pub key: K,
    pub bytes: &'a [u8],
    pub first_ns: Option<i64>,
    pub last_ns: Option<i64>,
    pub parts: u32,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    Finished,
    Part,
    OfGivenUp,
    Unusable,
}
#[derive(Debug, Clone)]
pub struct Reassembler<K> {}
impl<K: Copy + Ord> Default for Reassembler<K> {}
impl<K: Copy + Ord> Reassembler<K> {
    pub const fn new() -> Self {}
    pub fn feed(
        &mut self,
        rules: &Rules,
        time_ns: Option<i64>,
        key: K,
        part: u8,
        data: &[u8],
        tell: &mut dyn FnMut(Event<'_, K>),
    ) -> Outcome {}
    pub fn finish(&mut self, tell: &mut dyn FnMut(Event<'_, K>)) {}
    pub fn held_bytes(&self) -> usize {}
}

// someip/framing.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct SomeIp;
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum SomeIpFault {
    HeaderCut { held: usize },
    LengthTooSmall { told: u32 },
    TooLong { length: u64, most_bytes: usize },
    LengthDisagrees { length: u64, held: usize },
    ProtocolVersion(u8),
}
impl Framing for SomeIp {
    type Fault = SomeIpFault;
}

// someip/message.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Message<'a> {
    pub header: Header,
    pub payload: &'a [u8],
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Header {
    pub service: u16,
    pub method: u16,
    pub client: u16,
    pub session: u16,
    pub interface_version: u8,
    pub kind: MessageKind,
    pub segmented: bool,
    pub return_code: u8,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum MessageKind {
    Request,
    RequestNoReturn,
    Notification,
    Response,
    Error,
    Other(u8),
}
impl MessageKind {
    pub fn of_byte(byte: u8) -> (Self, bool) {}
    pub fn name(self) -> &'static str {}
    pub fn number(self) -> u8 {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Cookie {
    OfClient,
    OfServer,
}
impl Cookie {
    pub fn bytes(self) -> [u8; HEADER_BYTES] {}
    pub fn of(message: &[u8]) -> Option<Self> {}
}
impl Header {
    pub fn behind_length(&self) -> [u8; 8] {}
}
impl<'a> Message<'a> {
    pub fn read(bytes: &'a [u8]) -> Result<Self, SomeIpFault> {}
    pub fn write(&self, out: &mut Vec<u8>) -> bool {}
}

// someip/mod.rs

pub mod sd;
pub mod tp;
pub use framing::{SomeIp, SomeIpFault};
pub use message::{Cookie, Header, Message, MessageKind};
pub use names::return_code_name;
pub type Stream = crate::cut::Cutter<SomeIp>;
pub type Datagram<'a> = crate::cut::Datagram<'a, SomeIp>;

// someip/names.rs

pub fn return_code_name(code: u8) -> &'static str {}

// someip/sd/entry.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Entry {
    pub kind: EntryKind,
    pub service: u16,
    pub instance: u16,
    pub major: u8,
    pub ttl_s: u32,
    pub runs: [Run; 2],
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Run {
    pub first: u8,
    pub count: u8,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum EntryKind {
    Find { minor: u32 },
    Offer { minor: u32 },
    StopOffer { minor: u32 },
    Subscribe(Group),
    StopSubscribe(Group),
    SubscribeAck(Group),
    SubscribeNack(Group),
    Other { kind: u8, last: [u8; 4] },
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Group {
    pub eventgroup: u16,
    pub counter: u8,
}
impl EntryKind {
    pub fn name(self) -> &'static str {}
}

// someip/sd/mod.rs

pub use entry::{Entry, EntryKind, Group, Run};
pub use option::{Choice, EndpointRole, SdOption, Transport};
pub const SERVICE: u16 = 0xFFFF;
pub const METHOD: u16 = 0x8100;
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Discovery<'a> {
    pub reboot: bool,
    pub unicast: bool,
    pub entries: Vec<Entry>,
    pub options: Vec<SdOption<'a>>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum SdFault {
    Cut { part: &'static str, held: usize },
    EntriesLength { told: usize },
    OptionLength { index: usize, kind: u8, told: usize, wanted: usize },
    Configuration { index: usize },
    OptionMissing { entry: usize, last: usize, options: usize },
    Trailing(usize),
}
impl<'a> Discovery<'a> {
    pub fn is_in(header: &Header) -> bool {}
    pub fn read(payload: &'a [u8]) -> Result<Self, SdFault> {}
    pub fn options_of(&self, entry: &Entry) -> impl Iterator<Item = &SdOption<'a>> {}
    pub fn write(&self, out: &mut Vec<u8>) {}
}

// someip/sd/option.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SdOption<'a> {
    pub discardable: bool,
    pub choice: Choice<'a>,
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Choice<'a> {
    Endpoint { role: EndpointRole, address: SocketAddr, transport: Transport },
    Configuration { items: Vec<&'a [u8]> },
    LoadBalancing { priority: u16, weight: u16 },
    Other { kind: u8, bytes: &'a [u8] },
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum EndpointRole {
    Service,
    Multicast,
    Discovery,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Transport {
    Tcp,
    Udp,
    Other(u8),
}

// someip/tp/reassembler.rs

#[derive(Debug)]
pub struct Reassembler<K> {}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tp<'a> {
    Part,
    Repeated,
    OfGivenUp,
    Message { header: Header, payload: &'a [u8], segments: u32, first_ns: Option<i64> },
    Fault { header: Header, fault: TpFault },
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum TpFault {
    WordCut { held: usize },
    OutOfOrder { expected: usize, found: usize },
    Length { held: usize },
    TooLong { held: usize, most_bytes: usize },
    Restarted { held: usize },
    Unfinished { held: usize },
}
impl<K: Copy + Ord> Reassembler<K> {
    pub fn new(most_bytes: usize) -> Self {}
    pub fn feed(
        &mut self,
        key: K,
        time_ns: Option<i64>,
        message: &Message<'_>,
        tell: &mut impl FnMut(Tp<'_>),
    ) {}
    pub fn finish(&mut self, tell: &mut impl FnMut(Tp<'_>)) {}
}

// someip/tp/segments.rs

#[derive(Debug, Clone)]
pub struct Segments<'a> {}
pub fn segments(
    header: Header,
    payload: &[u8],
    segment_bytes: usize,
) -> Option<Segments<'_>> {}
impl Segments<'_> {
    pub fn write_next(&mut self, out: &mut Vec<u8>) -> bool {}
}

// someip/tp.rs

pub use reassembler::{Reassembler, Tp, TpFault};
pub use segments::{Segments, segments};

// tcp/mod.rs

pub use streams::{Limits, Streams};
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Flow {
    pub from: SocketAddr,
    pub to: SocketAddr,
}
impl Flow {
    pub fn reversed(self) -> Self {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Segment<'a> {
    pub flow: Flow,
    pub sequence: u32,
    pub acknowledged: Option<u32>,
    pub syn: bool,
    pub fin: bool,
    pub reset: bool,
    pub payload: &'a [u8],
}
impl Segment<'_> {
    pub fn between(from: &str, to: &str) -> Result<Self, AddrParseError> {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece<'a> {
    Begun { from_start: bool },
    Bytes { time_ns: Option<i64>, bytes: &'a [u8] },
    Gap { bytes: u64 },
    Ended(End),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum End {
    Closed,
    Reset,
    Replaced,
    Crowded,
    LogEnd,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Taken {
    Passed,
    Waiting,
    Repeated,
    Control,
}

// tcp/streams.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    pub streams: usize,
    pub waiting_bytes: usize,
    pub all_waiting_bytes: usize,
}
impl Default for Limits {}
#[derive(Debug)]
pub struct Streams<S> {}
impl<S: Clone> Streams<S> {
    pub fn new(limits: Limits, prototype: S) -> Self {}
    pub fn feed(
        &mut self,
        time_ns: Option<i64>,
        segment: &Segment<'_>,
        tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>),
    ) -> Taken {}
    pub fn finish(&mut self, tell: &mut impl FnMut(&Flow, &mut S, Piece<'_>)) {}
    pub fn waiting_bytes(&self) -> usize {}
}

// uart/cutter.rs

pub const P1_MAX_NS: i64 = 20_000_000;
pub const BYTE_NS: i64 = 961_538;
pub const GAP_NS: i64 = P1_MAX_NS + BYTE_NS;
#[derive(Debug, Clone)]
pub struct Cutter {}
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Event<'a> {
    Message {
        bytes: &'a [u8],
        parts: Parts,
        first_ns: Option<i64>,
        last_ns: Option<i64>,
        after_damage: bool,
    },
    Damaged { bytes: &'a [u8], first_ns: Option<i64>, fault: UartFault },
}
impl Cutter {
    pub fn new(form: Form, gap_ns: i64) -> Self {}
    pub fn byte(
        &mut self,
        time_ns: Option<i64>,
        byte: u8,
        tell: &mut impl FnMut(Event<'_>),
    ) {}
    pub fn finish(&mut self, tell: &mut impl FnMut(Event<'_>)) {}
}

// uart/fault.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum UartFault {
    TooShort { held: usize, wanted: usize },
    Trailing { bytes: usize },
    CheckWrong { found: u8, computed: u8 },
    LengthTooSmall { told: u8, least: usize },
    TooLong { most: usize },
    NoStart,
}

// uart/form.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Form {
    Kline,
    Telegram(TelegramForm),
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parts {
    pub addressing: Option<Addressing>,
    pub source: Option<u8>,
    pub target: Option<u8>,
    pub data: Range<usize>,
    pub check: Check,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Check {
    Absent,
    Right,
    Wrong { found: u8, computed: u8 },
}
impl Form {
    pub fn read(&self, bytes: &[u8]) -> Result<Parts, UartFault> {}
}

// uart/kline.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Addressing {
    Absent,
    Iso9141 { format: u8 },
    Physical,
    Functional,
}
pub fn write(
    addressing: Addressing,
    addresses: (u8, u8),
    data: &[u8],
    out: &mut Vec<u8>,
) -> bool {}

// uart/mod.rs

pub use cutter::{BYTE_NS, Cutter, Event, GAP_NS, P1_MAX_NS};
pub use fault::UartFault;
pub use form::{Check, Form, Parts};
pub use kline::{Addressing, write as write_kline};
pub use telegram::{CheckByte, Size, TelegramForm};

// uart/telegram.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct TelegramForm {
    pub source_byte: Option<u8>,
    pub target_byte: Option<u8>,
    pub size: Option<Size>,
    pub check: CheckByte,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Size {
    pub byte: u8,
    pub counts_from: u8,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum CheckByte {
    Absent,
    Xor,
    Sum,
}
impl TelegramForm {
    pub fn write(&self, source: u8, target: u8, data: &[u8], out: &mut Vec<u8>) -> bool {}
}
