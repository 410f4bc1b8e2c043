//! Writing recordings: the same frames give the same bytes, always.

mod check;
mod pcapng;

pub use pcapng::PcapngWriter;
