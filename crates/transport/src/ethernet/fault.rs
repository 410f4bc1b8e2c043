//! What can be wrong with a packet.

/// Why a packet cannot be read. One that holds fewer bytes than it tells was cut by the recorder, or the length in it is wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum PacketFault {
    /// Not even an Ethernet header.
    #[error("the packet has {held} bytes, and an Ethernet header has 14")]
    EthernetCut {
        /// Bytes of the packet.
        held: usize,
    },
    /// It ends inside a VLAN tag.
    #[error("the packet has {held} bytes and ends inside a VLAN tag")]
    TagCut {
        /// Bytes of the packet.
        held: usize,
    },
    /// More than two VLAN tags.
    #[error("the packet has more than two VLAN tags")]
    TooManyTags,
    /// A frame with a length is shorter than that.
    #[error("the packet tells a length of {told} bytes and holds {held}")]
    LlcCut {
        /// The length told.
        told: usize,
        /// Bytes held.
        held: usize,
    },
    /// It ends inside the IP header or one of its extensions.
    #[error("the packet ends inside its IP header: {held} bytes of it are there")]
    IpHeaderCut {
        /// Bytes from the IP header on.
        held: usize,
    },
    /// The version in the IP header is not the one that the EtherType says.
    #[error("the IP header says version {told}, and the EtherType says version {wanted}")]
    IpVersion {
        /// The version told.
        told: u8,
        /// The version that belongs to the EtherType.
        wanted: u8,
    },
    /// The IPv4 header tells a length that none can have.
    #[error("the IPv4 header says that it has {told} bytes, and it has at least 20")]
    IpHeaderLength {
        /// The length told.
        told: usize,
    },
    /// The IP datagram is shorter than its own header.
    #[error("the IP header has {header} bytes and says that the datagram has {told}")]
    IpLength {
        /// Bytes of the header.
        header: usize,
        /// Bytes of the datagram, as told.
        told: usize,
    },
    /// The IP datagram is longer than the packet.
    #[error("the IP header tells {told} bytes, and {held} are there; was the packet cut by the recorder?")]
    IpCut {
        /// Bytes of the datagram, as told.
        told: usize,
        /// Bytes that are there.
        held: usize,
    },
    /// It ends inside the UDP or TCP header.
    #[error("the datagram ends inside its {protocol} header: {held} bytes of it are there")]
    PortsCut {
        /// UDP or TCP.
        protocol: &'static str,
        /// Bytes from that header on.
        held: usize,
    },
    /// The UDP header tells a length that does not fit.
    #[error("the UDP header tells {told} bytes, its own 8 among them, and {held} are there")]
    UdpLength {
        /// Bytes told.
        told: usize,
        /// Bytes that are there.
        held: usize,
    },
    /// The TCP header tells a length of its own that does not fit.
    #[error("the TCP header says that it has {told} bytes; it has at least 20, and {held} are there")]
    TcpHeaderLength {
        /// Bytes told.
        told: usize,
        /// Bytes that are there.
        held: usize,
    },
}
