//! Messages out of one datagram.

use std::fmt::Display;

use super::Framing;

/// The messages of one datagram, one after another; the first that is damaged is the last.
#[derive(Debug, Clone)]
pub struct Datagram<'a, F> {
    rest: &'a [u8],
    framing: std::marker::PhantomData<F>,
}

/// Why a datagram cannot be read on.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum DatagramFault<Fault: Display> {
    /// What is left is shorter than a header.
    #[error("{held} bytes are left in the datagram, and a header has {header}")]
    HeaderCut {
        /// Bytes that are left.
        held: usize,
        /// Bytes of a header.
        header: usize,
    },
    /// The message is longer than the datagram.
    #[error("the header announces a message of {length} bytes, and the datagram holds {held} of them")]
    Cut {
        /// Bytes of the message, header included.
        length: usize,
        /// Bytes that are left.
        held: usize,
    },
    /// What should be a header is none.
    #[error("{fault}; {held} bytes of the datagram are not read")]
    Header {
        /// What is wrong with it.
        fault: Fault,
        /// Bytes that are left.
        held: usize,
    },
}

impl<'a, F: Framing> Datagram<'a, F> {
    /// The messages in the payload of a UDP datagram.
    #[must_use]
    pub fn new(payload: &'a [u8]) -> Self {
        Self { rest: payload, framing: std::marker::PhantomData }
    }
}

impl<'a, F: Framing> Iterator for Datagram<'a, F>
where
    F::Fault: Display,
{
    type Item = Result<&'a [u8], DatagramFault<F::Fault>>;

    fn next(&mut self) -> Option<Self::Item> {
        let held = self.rest.len();
        if held == 0 {
            return None;
        }
        let rest = std::mem::take(&mut self.rest);
        let Some(header) = rest.get(..F::HEADER_BYTES) else {
            return Some(Err(DatagramFault::HeaderCut { held, header: F::HEADER_BYTES }));
        };
        // What a datagram holds bounds its messages; a longer one is told by its length.
        match F::length(header, usize::MAX) {
            Err(fault) => Some(Err(DatagramFault::Header { fault, held })),
            Ok(length) => match rest.split_at_checked(length) {
                None => Some(Err(DatagramFault::Cut { length, held })),
                Some((message, behind)) => {
                    self.rest = behind;
                    Some(Ok(message))
                }
            },
        }
    }
}
