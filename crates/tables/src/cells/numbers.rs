//! Numbers and times.

use std::fmt;
use std::sync::Arc;

use arrow_array::types::{DurationNanosecondType, Float32Type, Float64Type, TimestampNanosecondType};
use arrow_array::{ArrayRef, ArrowPrimitiveType, PrimitiveArray};
use arrow_buffer::{ArrowNativeType, Buffer, NullBuffer, NullBufferBuilder, ScalarBuffer};
use wirelore_bits::{Encoding, Number};
use wirelore_decode::{Reading, Value};

use super::Cells;
use crate::setup::Times;

/// How much is made room for before the first value.
const FIRST_ROWS: usize = 64;

/// Values of one width, side by side, and which of them are there.
#[derive(Debug)]
pub(crate) struct Slots<N: ArrowNativeType> {
    values: Vec<N>,
    there: NullBufferBuilder,
    lent: Option<Buffer>,
}

impl<N: ArrowNativeType> Slots<N> {
    pub(crate) fn new() -> Self {
        Self { values: Vec::new(), there: NullBufferBuilder::new(FIRST_ROWS), lent: None }
    }

    #[inline]
    pub(crate) fn push(&mut self, value: Option<N>) {
        self.there.append(value.is_some());
        self.values.push(value.unwrap_or_default());
    }

    pub(crate) fn take(&mut self) -> (ScalarBuffer<N>, Option<NullBuffer>) {
        let count = self.values.len();
        let buffer = Buffer::from_vec(std::mem::take(&mut self.values));
        self.lent = Some(buffer.clone());
        (ScalarBuffer::new(buffer, 0, count), self.there.finish())
    }

    pub(crate) fn restock(&mut self) {
        // Where the batch is still held by somebody, new memory takes its place.
        let memory = self.lent.take().and_then(|lent| lent.into_vec().ok());
        if let Some(memory) = memory {
            self.values = memory;
            self.values.clear();
        }
    }
}

/// Numbers of one type.
pub(crate) struct Numbers<T: ArrowPrimitiveType> {
    slots: Slots<T::Native>,
    read: Box<Read<T::Native>>,
}

/// What a cell takes from a reading.
type Read<N> = dyn Fn(&Reading<'_>) -> Option<N> + Send;

impl<T: ArrowPrimitiveType> Numbers<T> {
    pub(crate) fn new(read: impl Fn(&Reading<'_>) -> Option<T::Native> + Send + 'static) -> Self {
        Self { slots: Slots::new(), read: Box::new(read) }
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
        Self::new(|reading| raw_bits(reading).map(f64::from_bits))
    }
}

/// The bits of a reading that is a number.
fn raw_bits(reading: &Reading<'_>) -> Option<u64> {
    matches!(reading.value, Value::Integer(_) | Value::Number(_)).then_some(reading.bits).flatten()
}

impl<T: ArrowPrimitiveType> Cells for Numbers<T> {
    fn push(&mut self, reading: Option<&Reading<'_>>) {
        self.slots.push(reading.and_then(&self.read));
    }

    fn take(&mut self) -> ArrayRef {
        let (values, there) = self.slots.take();
        Arc::new(PrimitiveArray::<T>::new(values, there))
    }

    fn restock(&mut self) {
        self.slots.restock();
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

    /// Appends a time; the first frame's time is what [`Times::Start`] counts from.
    #[inline]
    pub(crate) fn push(&mut self, time_ns: Option<i64>, first_ns: Option<i64>) {
        self.slots.push(self.times.of(time_ns, first_ns));
    }

    pub(crate) fn take(&mut self) -> ArrayRef {
        let (values, there) = self.slots.take();
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
