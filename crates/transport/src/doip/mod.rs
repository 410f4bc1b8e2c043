//! DoIP: diagnosis over IP, after ISO 13400-2:2019.
//!
//! [`Message::read`] takes one whole message apart and [`Message::write`] puts one together. Whole messages come out of a TCP stream by
//! [`Stream`] and out of a UDP datagram by [`Datagram`]. What a diagnostic message says is user data here.
//!
//! Reading a recording disturbs nobody. A message that is *sent* to a vehicle is another matter: a routing activation wakes control units
//! and a diagnostic request may move parts. Send none to a vehicle that is driven or that people work on.
//!
//! ```
//! use wirelore_transport::doip::{Datagram, Message, Payload};
//!
//! let bytes = [0x02, 0xFD, 0x80, 0x01, 0, 0, 0, 7, 0x0E, 0x00, 0x10, 0x01, 0x22, 0xF1, 0x90];
//! let messages: Result<Vec<_>, _> = Datagram::new(&bytes).collect();
//! let message = Message::read(messages?[0])?;
//! assert_eq!(message.payload, Payload::Diagnostic { source: 0x0E00, target: 0x1001, user_data: &[0x22, 0xF1, 0x90] });
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod framing;
mod lengths;
mod names;
mod payload;
mod write;

pub use framing::{DoIp, DoIpFault};
pub use names::{diagnostic_nack_name, header_nack_name, payload_type_name, routing_activation_name};
pub use payload::{Message, Payload};

/// The port for both UDP and TCP (from memory of ISO 13400-2).
pub const PORT: u16 = 13400;

/// Cuts messages out of one direction of a TCP connection.
pub type Stream = crate::cut::Cutter<DoIp>;
/// The messages of one UDP datagram.
pub type Datagram<'a> = crate::cut::Datagram<'a, DoIp>;
