//! # wirelore-transport
//!
//! Messages that are longer than a frame, or wrapped in others, put together again. It is responsible for the rules of the transports
//! alone: what it is fed are the bytes of frames in the order of the log, and what it gives back are whole messages and, where there is
//! none, what went wrong and where. It never reads a file, never knows what a message means, and never takes memory because of a length
//! that was only announced.
//!
//! Each transport of frames has a `Reassembler`, which is a listener: it sends nothing and answers nothing. Feeding it a frame returns what
//! became of that frame, so that every frame is counted once, and tells what became of messages as events: a message that is whole, with its
//! bytes borrowed, or a fault. Of each message that began, exactly one of the two is told, the last ones by `finish` at the end of the log.
//!
//! | module | transport |
//! | --- | --- |
//! | [`iso_tp`] | ISO 15765-2, the transport of diagnostics on CAN and CAN FD |
//! | [`j1939_tp`] | the transport protocol of SAE J1939-21: broadcasts and connections |
//! | [`ethernet`] | packets: VLAN tags, IPv4 and IPv6, UDP and TCP |
//! | [`tcp`] | RFC 9293, byte streams out of segments |
//! | [`cut`] | messages whose header tells their length, out of streams and datagrams |
//! | [`someip`] | AUTOSAR SOME/IP, its segmented messages and its service discovery |
//! | [`doip`] | ISO 13400-2, diagnosis over IP |
//! | [`uart`] | ISO 9141-2, ISO 14230-2 and other messages of single-wire networks |
//! | [`most`] | control messages of a MOST ring that come in several parts |
//!
//! ```
//! use wirelore_transport::iso_tp::{Event, Reassembler, Rules};
//!
//! // A control unit answers with its vehicle identification number, in three frames.
//! let answer: [[u8; 8]; 3] = [
//!     [0x10, 0x14, 0x49, 0x02, 0x01, 0x5A, 0x5A, 0x39],
//!     [0x21, 0x47, 0x50, 0x30, 0x30, 0x52, 0x35, 0x35],
//!     [0x22, 0x42, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36],
//! ];
//! let mut reassembler = Reassembler::new();
//! let mut text = String::new();
//! for (time_ms, payload) in (0..).step_by(10).zip(&answer) {
//!     reassembler.feed(&Rules::default(), Some(time_ms * 1_000_000), 0x7E8, payload, &mut |event| match event {
//!         Event::Message(message) => text = String::from_utf8_lossy(&message.bytes[3..]).into_owned(),
//!         Event::Fault(fault) => panic!("{}", fault.kind),
//!     });
//! }
//! assert_eq!(text, "ZZ9GP00R55B123456");
//! ```

mod conversations;
pub mod cut;
pub mod doip;
pub mod ethernet;
mod fields;
pub mod iso_tp;
pub mod j1939_tp;
pub mod most;
pub mod someip;
pub mod tcp;
pub mod uart;
