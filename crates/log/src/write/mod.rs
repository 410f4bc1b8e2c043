//! Writing recordings: the same frames give the same bytes, always.

mod pcapng;

pub use pcapng::PcapngWriter;

use crate::error::LogError;
use crate::frame::{CLASSIC_BYTES_MAX, EXTENDED_ID_MAX, FD_BYTES_MAX, Frame, Kind, STANDARD_ID_MAX, dlc_of_length};
use crate::medium::Medium;

/// Whether a frame can exist, as far as its own fields tell.
fn check(frame: &Frame<'_>, number: u64, channels: usize) -> Result<(), LogError> {
    let refuse = |what: String| Err(LogError::Unwritable { number, what });
    if usize::from(frame.channel.0) >= channels {
        return refuse(format!("its channel is {}, and {channels} were added before", frame.channel.0));
    }
    if frame.medium != Medium::Can || !matches!(frame.kind, Kind::Data | Kind::Remote | Kind::Error) {
        return refuse("it is no CAN frame, and its channel is one of CAN".to_owned());
    }
    let id_max = if frame.extended { EXTENDED_ID_MAX } else { STANDARD_ID_MAX };
    if frame.id > id_max && (frame.kind != Kind::Error || frame.id > EXTENDED_ID_MAX) {
        return refuse(format!("its identifier {:X} is larger than {id_max:X}", frame.id));
    }
    let bytes_max = if frame.fd { FD_BYTES_MAX } else { CLASSIC_BYTES_MAX };
    let bytes = frame.payload.len();
    if bytes > bytes_max || dlc_of_length(bytes).is_none() {
        return refuse(format!("it has {bytes} data bytes, which such a frame cannot have"));
    }
    if frame.kind == Kind::Remote && (bytes > 0 || frame.fd) {
        return refuse("a remote frame has no data and is never CAN FD".to_owned());
    }
    Ok(())
}
