//! A rival that takes bits with a general library (bitvec): one signal of one payload at a time.

use bitvec::field::BitField;
use bitvec::order::{Lsb0, Msb0};
use bitvec::view::BitView;
use wirelore_tests::workload::SignalShape;

use crate::in_cache::{Block, Columns};

/// All signals of a payload, then the next payload: as most programs are written.
pub(crate) fn decode_rows(block: &Block<'_>, columns: &mut Columns) {
    let motorola = block.frame.is_motorola();
    for (row, payload) in block.payloads.iter().enumerate() {
        for (column, signal) in columns.iter_mut().zip(&block.frame.signals) {
            column[row] = signal.formula.value(raw(payload, motorola, signal));
        }
    }
}

/// All payloads for a signal, then the next signal.
pub(crate) fn decode_columns(block: &Block<'_>, columns: &mut Columns) {
    let motorola = block.frame.is_motorola();
    for (column, signal) in columns.iter_mut().zip(&block.frame.signals) {
        for (value, payload) in column.iter_mut().zip(&block.payloads) {
            *value = signal.formula.value(raw(payload, motorola, signal));
        }
    }
}

fn raw(payload: &[u8; 8], motorola: bool, signal: &SignalShape) -> i64 {
    let (low, above) = (signal.shift as usize, (signal.shift + signal.width) as usize);
    match (motorola, signal.signed) {
        (false, false) => payload.view_bits::<Lsb0>()[low..above].load_le::<u64>() as i64,
        (false, true) => payload.view_bits::<Lsb0>()[low..above].load_le::<i64>(),
        // Counted from the first bit that is sent.
        (true, false) => payload.view_bits::<Msb0>()[64 - above..64 - low].load_be::<u64>() as i64,
        (true, true) => payload.view_bits::<Msb0>()[64 - above..64 - low].load_be::<i64>(),
    }
}
