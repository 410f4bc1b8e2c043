//! Numbers and times.

use std::fmt;
use std::sync::Arc;

use arrow_array::types::{DurationNanosecondType, Float32Type, Float64Type, TimestampNanosecondType};
use arrow_array::{ArrayRef, ArrowPrimitiveType, PrimitiveArray};
use arrow_buffer::{ArrowNativeType, BooleanBuffer, Buffer, NullBuffer, NullBufferBuilder, ScalarBuffer};
use wirelore_bits::{Encoding, Number};
use wirelore_decode::{Bitmap, Block, Column, Numbers as Decode, Reading, Value};

use super::{Cells, push_each};
use crate::setup::Times;

/// How much is made room for before the first value.
const FIRST_ROWS: usize = 64;

/// With so many values a column is taken to become a whole batch long.
const MANY_ROWS: usize = 512;

/// Values of one width, side by side, and which of them are there.
#[derive(Debug)]
pub(crate) struct Slots<N: ArrowNativeType> {
    values: Vec<N>,
    /// How many a batch has, if it is known.
    batch_rows: usize,
    there: NullBufferBuilder,
    /// The memory of the last batch, and how many of its values were in that.
    lent: Option<(Buffer, usize)>,
}

impl<N: ArrowNativeType> Slots<N> {
    pub(crate) fn new() -> Self {
        Self { values: Vec::new(), batch_rows: 0, there: NullBufferBuilder::new(FIRST_ROWS), lent: None }
    }

    /// Prepares for batches of so many values.
    pub(crate) fn expect(&mut self, batch_rows: usize) {
        self.batch_rows = batch_rows;
    }

    /// Makes room for some more. Once there are many, it is the room that they will have at last: else all would be moved time and again.
    #[inline]
    fn make_room(&mut self, more: usize) {
        let held = self.values.len();
        if self.values.capacity() - held < more && held >= MANY_ROWS {
            self.values.reserve_exact(self.batch_rows.saturating_sub(held));
        }
    }

    #[inline]
    pub(crate) fn push(&mut self, value: Option<N>) {
        self.make_room(1);
        self.there.append(value.is_some());
        self.values.push(value.unwrap_or_default());
    }

    /// Appends a block of values, all of which are there.
    pub(crate) fn extend(&mut self, values: impl ExactSizeIterator<Item = N>) {
        self.make_room(values.len());
        self.there.append_n_non_nulls(values.len());
        self.values.extend(values);
    }

    /// Appends a block of values; `valid` says which of them are there, `None`: all.
    pub(crate) fn extend_from(&mut self, values: &[N], valid: Option<&Bitmap>) {
        let begin = self.values.len();
        self.make_room(values.len());
        self.values.extend_from_slice(values);
        let Some(valid) = valid.filter(|valid| valid.count() < values.len()) else {
            self.there.append_n_non_nulls(values.len());
            return;
        };
        // What stands in the place of a missing value must not depend on what was decoded before.
        for (values, there) in self.values[begin..].chunks_mut(64).zip(valid.words()) {
            let mut missing = !there;
            while let Some(value) = values.get_mut(missing.trailing_zeros() as usize) {
                *value = N::default();
                missing &= missing - 1;
            }
        }
        let bits: Vec<u64> = valid.words().iter().map(|word| word.to_le()).collect();
        let bits = BooleanBuffer::new(Buffer::from_vec(bits), 0, values.len());
        self.there.append_buffer(&NullBuffer::new(bits));
    }

    /// The first so many values; the rest stays, and is there again after [`Slots::restock`].
    pub(crate) fn take(&mut self, rows: usize) -> (ScalarBuffer<N>, Option<NullBuffer>) {
        let count = self.values.len();
        let rows = rows.min(count);
        let buffer = Buffer::from_vec(std::mem::take(&mut self.values));
        self.lent = Some((buffer.clone(), rows));
        let there = self.there.finish();
        match &there {
            Some(there) => self.there.append_buffer(&there.slice(rows, count - rows)),
            None => self.there.append_n_non_nulls(count - rows),
        }
        let there = there.map(|there| there.slice(0, rows)).filter(|there| there.null_count() > 0);
        (ScalarBuffer::new(buffer, 0, rows), there)
    }

    pub(crate) fn restock(&mut self) {
        let Some((lent, rows)) = self.lent.take() else { return };
        match lent.into_vec() {
            Ok(memory) => {
                self.values = memory;
                self.values.drain(..rows);
            }
            // The batch is still held by somebody: new memory takes its place.
            Err(held) => self.values.extend_from_slice(&held.typed_data()[rows..]),
        }
    }
}

/// Numbers of one type.
pub(crate) struct Numbers<T: ArrowPrimitiveType> {
    slots: Slots<T::Native>,
    /// Whether the numbers of a decoded column are the same as what is read from its readings.
    takes_columns: bool,
    read: Box<Read<T::Native>>,
}

/// What a cell takes from a reading.
type Read<N> = dyn Fn(&Reading<'_>) -> Option<N> + Send;

impl<T: ArrowPrimitiveType> Numbers<T> {
    pub(crate) fn new(read: impl Fn(&Reading<'_>) -> Option<T::Native> + Send + 'static) -> Self {
        Self { slots: Slots::new(), takes_columns: true, read: Box::new(read) }
    }
}

impl<T: ArrowPrimitiveType> Numbers<T>
where
    T::Native: TryFrom<i128>,
{
    /// The raw numbers of an integer format.
    pub(crate) fn of_raw(encoding: Encoding) -> Self {
        Self::new(move |reading| match encoding.number(raw_bits(reading)?) {
            Ok(Number::Integer(number)) => T::Native::try_from(number).ok(),
            Ok(Number::Float(_)) | Err(_) => None,
        })
    }
}

impl Numbers<Float32Type> {
    /// The raw numbers of a floating-point format of 16 or 32 bits.
    pub(crate) fn of_raw_floats(encoding: Encoding) -> Self {
        Self::new(move |reading| {
            let bits = raw_bits(reading)?;
            match encoding.number(bits) {
                // The bits as they are: a not-a-number keeps all of them.
                Ok(Number::Float(_)) if encoding.width() == 32 => Some(f32::from_bits(bits as u32)),
                Ok(Number::Float(number)) => Some(number as f32),
                Ok(Number::Integer(_)) | Err(_) => None,
            }
        })
    }
}

impl Numbers<Float64Type> {
    /// The raw numbers of a floating-point format of 64 bits.
    pub(crate) fn of_raw_doubles() -> Self {
        let read = |reading: &Reading<'_>| raw_bits(reading).map(f64::from_bits);
        // The numbers of a column have their formula behind them.
        Self { takes_columns: false, ..Self::new(read) }
    }
}

/// The bits of a reading that is a number, or a trouble code.
fn raw_bits(reading: &Reading<'_>) -> Option<u64> {
    matches!(reading.value, Value::Integer(_) | Value::Number(_) | Value::TroubleCode(_))
        .then_some(reading.bits)
        .flatten()
}

impl<T: ArrowPrimitiveType> Cells for Numbers<T>
where
    T::Native: Decoded,
{
    fn extend(&mut self, column: &Column<'_>, rows: usize) {
        let numbers = column.numbers().filter(|_| self.takes_columns).and_then(T::Native::of);
        match numbers {
            Some(numbers) => self.slots.extend_from(numbers, column.valid()),
            None => push_each(self, column, rows),
        }
    }

    fn push(&mut self, reading: Option<&Reading<'_>>) {
        self.slots.push(reading.and_then(&self.read));
    }

    fn expect(&mut self, batch_rows: usize) {
        self.slots.expect(batch_rows);
    }

    fn take(&mut self, rows: usize) -> ArrayRef {
        let (values, there) = self.slots.take(rows);
        Arc::new(PrimitiveArray::<T>::new(values, there))
    }

    fn restock(&mut self) {
        self.slots.restock();
    }
}

/// A type that decoded columns come in.
pub(crate) trait Decoded: ArrowNativeType {
    /// The numbers of a column, where they are of this type.
    fn of(numbers: Decode<'_>) -> Option<&[Self]>;
}

macro_rules! decoded {
    ($($variant:ident $native:ty),*) => {
        $(impl Decoded for $native {
            fn of(numbers: Decode<'_>) -> Option<&[Self]> {
                if let Decode::$variant(numbers) = numbers { Some(numbers) } else { None }
            }
        })*
    };
}

decoded!(U8 u8, U16 u16, U32 u32, U64 u64, I8 i8, I16 i16, I32 i32, I64 i64, F64 f64);

impl Decoded for f32 {
    fn of(_numbers: Decode<'_>) -> Option<&[Self]> {
        None
    }
}

impl<T: ArrowPrimitiveType> fmt::Debug for Numbers<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Numbers").field("slots", &self.slots).finish_non_exhaustive()
    }
}

/// The column of times.
#[derive(Debug)]
pub(crate) struct Stamps {
    times: Times,
    slots: Slots<i64>,
}

impl Stamps {
    pub(crate) fn new(times: Times) -> Self {
        Self { times, slots: Slots::new() }
    }

    /// Prepares for batches of so many times.
    pub(crate) fn expect(&mut self, batch_rows: usize) {
        self.slots.expect(batch_rows);
    }

    /// Appends a time; the first frame's time is what [`Times::Start`] counts from.
    #[inline]
    pub(crate) fn push(&mut self, time_ns: Option<i64>, first_ns: Option<i64>) {
        self.slots.push(self.times.of(time_ns, first_ns));
    }

    /// Appends the times of a block.
    pub(crate) fn extend(&mut self, block: &Block<'_>) {
        let (times_ns, first_ns) = (block.times_ns(), block.first_time_ns());
        let start_ns = if self.times == Times::Start { first_ns.unwrap_or(0) } else { 0 };
        // The sign is set where a difference leaves the range: then the signs of both and of the difference do not go together.
        let leaves = |time_ns: &i64| (time_ns ^ start_ns) & (time_ns ^ time_ns.wrapping_sub(start_ns));
        let is_within = times_ns.iter().fold(0, |any, time_ns| any | leaves(time_ns)) >= 0;
        if block.all_have_times() && is_within {
            self.slots.extend(times_ns.iter().map(|time_ns| time_ns.wrapping_sub(start_ns)));
        } else {
            for (row, time_ns) in times_ns.iter().enumerate() {
                self.push(block.has_time(row).then_some(*time_ns), first_ns);
            }
        }
    }

    pub(crate) fn take(&mut self, rows: usize) -> ArrayRef {
        let (values, there) = self.slots.take(rows);
        match self.times {
            Times::Start | Times::Recorded => Arc::new(PrimitiveArray::<DurationNanosecondType>::new(values, there)),
            Times::Clock => {
                Arc::new(PrimitiveArray::<TimestampNanosecondType>::new(values, there).with_timezone("UTC"))
            }
        }
    }

    pub(crate) fn restock(&mut self) {
        self.slots.restock();
    }
}
