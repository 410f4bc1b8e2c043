//! Which bits of an encoded frame no signal and no remark of the description speaks for.

use wirelore_bits::{BitPosition, Field};
use wirelore_model::Content;

use super::around::beginning;
use super::assemble::{Assembly, group_of};

impl Assembly<'_> {
    /// The bits of the first `length` bytes that are described nowhere, or only marked as unknown, in runs from byte to byte as they are
    /// sent: each with its most significant and its least significant bit.
    pub(super) fn undescribed(&self, length: usize) -> Vec<(BitPosition, BitPosition)> {
        let mut described = vec![0_u8; length];
        // What messages begin with is described by how they are recognised.
        described.iter_mut().take(beginning(self.frame).len()).for_each(|bits| *bits = u8::MAX);
        let mut is_there = vec![false; self.plan.groups.len()];
        self.groups_there().into_iter().for_each(|group| is_there[group] = true);
        for signal in self.frame.signals.iter().filter(|signal| is_there[group_of(signal)]) {
            match &signal.content {
                Content::Number { field, .. } => {
                    mark(&mut described, field);
                    signal.more_fields().for_each(|field| mark(&mut described, &field));
                }
                Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => {
                    let end = bytes.last.map_or(length, |last| (last as usize + 1).min(length));
                    let bytes = described.get_mut(bytes.first as usize..end);
                    bytes.into_iter().for_each(|bytes| bytes.fill(u8::MAX));
                }
            }
        }
        self.frame.unused.iter().for_each(|field| mark(&mut described, field));
        let mut runs: Vec<(usize, usize)> = Vec::new();
        let bits = described
            .iter()
            .zip(0..)
            .flat_map(|(bits, byte)| (0..8).map(move |bit| (8 * byte + bit, bits << bit & 0x80)));
        for (index, _) in bits.filter(|(_, is_described)| *is_described == 0) {
            match runs.last_mut() {
                Some((_, last)) if *last + 1 == index => *last = index,
                _ => runs.push((index, index)),
            }
        }
        runs.into_iter().map(|(first, last)| (position(first), position(last))).collect()
    }
}

/// Marks the bits of a field in the bytes that there are.
fn mark(described: &mut [u8], field: &Field) {
    for position in field.places().iter().flat_map(|place| place.positions()) {
        if let Some(bits) = described.get_mut(position.byte as usize) {
            *bits |= 1 << position.bit;
        }
    }
}

/// Bits are numbered as they are sent: bit 7 of byte 0 is number 0.
fn position(index: usize) -> BitPosition {
    BitPosition::new((index / 8) as u32, 7 - (index % 8) as u8)
}
