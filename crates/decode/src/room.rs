//! How long a frame's payload can be.

use wirelore_model::{Appearance, Database, Frame};

/// What a frame can have where neither the description nor its network says (CAN FD, ISO 11898-1).
const BYTES_OTHERWISE: usize = 64;

/// The most payload bytes that a frame can have: as the description states, else as its networks carry. That may be 4 GiB, so nobody takes
/// memory for it beforehand.
pub(crate) fn longest_payload(database: &Database, frame: &Frame) -> usize {
    let stated = frame.length.into_iter().chain(frame.pages.iter().filter_map(|page| page.length));
    let stated = stated.map(|length| length.max as usize).max().filter(|_| frame.length.is_some());
    let of_networks = || {
        let of = |seen: &Appearance| {
            let network = database.networks.get(seen.network.index())?;
            Some(seen.identifier.longest_payload(network.kind) as usize)
        };
        frame.seen_on.iter().filter_map(of).max()
    };
    let carried = || frame.carried.map(|transport| transport.usual_most() as usize);
    stated.or_else(carried).or_else(of_networks).unwrap_or(BYTES_OTHERWISE)
}
