//! SOME/IP: messages of services, after AUTOSAR PRS SOME/IP Protocol.
//!
//! [`Message::read`] takes one whole message apart and [`Message::write`] puts one together. Whole messages come out of a TCP stream by
//! [`Stream`] and out of a UDP datagram by [`Datagram`]; long ones that were sent in segments over UDP (SOME/IP-TP) are put together by
//! [`tp`]; what services are offered and asked for is read by [`sd`].
//!
//! ```
//! use wirelore_transport::someip::{Datagram, Message, MessageKind};
//!
//! let datagram = [0x12, 0x34, 0x80, 0x01, 0, 0, 0, 12, 0, 0, 0, 5, 1, 1, 2, 0, 0xDE, 0xAD, 0xBE, 0xEF];
//! let messages: Result<Vec<_>, _> = Datagram::new(&datagram).collect();
//! let message = Message::read(messages?[0])?;
//! assert_eq!((message.header.service, message.header.method), (0x1234, 0x8001));
//! assert_eq!(message.header.kind, MessageKind::Notification);
//! assert_eq!(message.payload, [0xDE, 0xAD, 0xBE, 0xEF]);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod framing;
mod message;
mod names;
pub mod sd;
pub mod tp;

pub use framing::{SomeIp, SomeIpFault};
pub use message::{Cookie, Header, Message, MessageKind};
pub use names::return_code_name;

/// Cuts messages out of one direction of a TCP connection.
pub type Stream = crate::cut::Cutter<SomeIp>;
/// The messages of one UDP datagram.
pub type Datagram<'a> = crate::cut::Datagram<'a, SomeIp>;
