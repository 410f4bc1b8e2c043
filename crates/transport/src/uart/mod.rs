//! Single-wire networks: bytes of a UART that make up messages.
//!
//! [`Form`] says what a message looks like: the headers of ISO 9141-2 and ISO 14230-2 ([`Form::Kline`]), or a form given by parameters
//! ([`TelegramForm`]). [`Form::read`] takes one whole message apart. [`Cutter`] finds the messages among bytes with times: by the length
//! that a header declares, and by the pauses between them.
//!
//! ```
//! use wirelore_transport::uart::{Check, Form};
//!
//! let parts = Form::Kline.read(&[0xC2, 0x33, 0xF1, 0x01, 0x0C, 0xF3])?;
//! assert_eq!((parts.target, parts.source, parts.data, parts.check), (Some(0x33), Some(0xF1), 3..5, Check::Right));
//! # Ok::<(), wirelore_transport::uart::UartFault>(())
//! ```

mod cutter;
mod fault;
mod form;
mod kline;
mod telegram;

pub use cutter::{BYTE_NS, Cutter, Event, GAP_NS, P1_MAX_NS};
pub use fault::UartFault;
pub use form::{Check, Form, Parts};
pub use kline::{Addressing, write as write_kline};
pub use telegram::{CheckByte, Size, TelegramForm};
