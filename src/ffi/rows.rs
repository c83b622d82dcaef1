//! The machinery of a column call: memory checked, units found, the loop over the rows.
//!
//! Rows are worked on in blocks that lie near the processor: a block is read and converted, its
//! ranges are looked at, the kernel runs over it, and its answers are written. A block without a
//! value out of its range, which is nearly every one, runs through the same kernel as the others,
//! but its own checks are known to hold: what is left of a short kernel is its formula, without a
//! branch, and runs several rows at once. Few rows, and those of any other block, go one by one.

use std::hint::assert_unchecked;
use std::marker::PhantomData;
use std::mem::size_of;
use std::ptr::copy_nonoverlapping;

use super::columns::{tw_column, tw_out_column};
use super::status::{Detail, Failure, fail, succeed, tw_error, tw_status};
use super::{guarded, tw_status::*};
use crate::error::{Error, any_of};
use crate::quantity::unit::{Unit, Units};
use crate::quantity::{Quantity, Row};

/// A column to be read, and what it must be.
#[derive(Clone, Copy)]
pub(super) struct Input {
    name: &'static str,
    source: Source,
}

/// Where the numbers of an input lie.
#[derive(Clone, Copy)]
enum Source {
    /// A column of a quantity.
    Column(*const tw_column, &'static Row),
    /// Whole numbers, one int32_t a row.
    Whole(*const i32, usize),
}

/// A column to be written, and what it must be.
pub(super) struct Output {
    name: &'static str,
    row: &'static Row,
    column: *const tw_out_column,
}

/// A column of plain numbers to be written, without a count of its own.
#[derive(Clone, Copy)]
pub(super) struct Numbers {
    name: &'static str,
    data: *mut i32,
    stride: usize,
}

/// A column of a quantity to be read.
#[derive(Clone, Copy)]
pub(super) struct ColumnOf<Q>(Input, PhantomData<Q>);

/// Whole numbers to be read, one a row.
#[derive(Clone, Copy)]
pub(super) struct Whole(Input);

/// An input whose type says what its values must be.
pub(super) trait Typed: Copy {
    /// What a kernel takes.
    type Value: Copy;

    fn input(self) -> Input;

    /// The value, checked.
    fn value(value: f64) -> Result<Self::Value, Error>;

    /// Tells the compiler what a look at the range has found, so that the kernel's own look at it
    /// costs nothing.
    ///
    /// # Safety
    /// The value was found in the range of the input.
    unsafe fn known(value: f64);
}

impl<Q: Quantity> Typed for ColumnOf<Q> {
    type Value = Q;

    #[inline(always)]
    fn value(value: f64) -> Result<Q, Error> {
        Q::from_trade(value)
    }

    #[inline(always)]
    fn input(self) -> Input {
        self.0
    }

    #[inline(always)]
    unsafe fn known(value: f64) {
        // SAFETY: the caller's promise.
        unsafe { assert_unchecked(Q::ROW.accepts(value)) }
    }
}

impl Typed for Whole {
    type Value = f64;

    #[inline(always)]
    fn value(value: f64) -> Result<f64, Error> {
        Ok(value)
    }

    #[inline(always)]
    fn input(self) -> Input {
        self.0
    }

    #[inline(always)]
    unsafe fn known(_: f64) {}
}

/// The inputs of a call, each with its own type: a tuple, because an array would hide what the
/// compiler must know of each.
pub(super) trait Inputs<const I: usize>: Copy {
    /// The values of a row as a kernel takes them.
    type Values: Copy;

    fn all(self) -> [Input; I];

    /// The values of a row, checked in the order of the inputs.
    fn values(values: [f64; I]) -> Result<Self::Values, Error>;

    /// [`Typed::known`] of a row.
    ///
    /// # Safety
    /// Every value was found in the range of its input.
    unsafe fn known(values: [f64; I]);
}

macro_rules! inputs {
    ($($count:literal: $($t:ident $value:ident)+;)+) => { $(
        impl<$($t: Typed),+> Inputs<$count> for ($($t,)+) {
            type Values = ($($t::Value,)+);

            #[inline(always)]
            fn values([$($value),+]: [f64; $count]) -> Result<Self::Values, Error> {
                Ok(($($t::value($value)?,)+))
            }

            #[inline(always)]
            fn all(self) -> [Input; $count] {
                let ($($value,)+) = self;
                [$($value.input()),+]
            }

            #[inline(always)]
            unsafe fn known([$($value),+]: [f64; $count]) {
                // SAFETY: the caller's promise.
                unsafe { $( $t::known($value); )+ }
            }
        }
    )+ };
}

inputs! {
    1: A a;
    2: A a B b;
    3: A a B b C c;
    4: A a B b C c D d;
    5: A a B b C c D d E e;
    6: A a B b C c D d E e F f;
    7: A a B b C c D d E e F f G g;
    8: A a B b C c D d E e F f G g H h;
    9: A a B b C c D d E e F f G g H h J j;
}

impl Input {
    pub(super) fn of<Q: Quantity>(name: &'static str, column: *const tw_column) -> ColumnOf<Q> {
        let source = Source::Column(column, Q::ROW);
        ColumnOf(Self { name, source }, PhantomData)
    }

    /// Whole numbers without a count of their own, one a row.
    pub(super) fn whole(name: &'static str, data: *const i32, stride: usize) -> Whole {
        let source = Source::Whole(data, stride);
        Whole(Self { name, source })
    }

    /// The column; whole numbers as one of neither quantity nor unit.
    fn read(&self, rows: usize) -> Result<tw_column, Failure> {
        match self.source {
            Source::Column(column, _) if column.is_null() => Err(Failure::null(self.name)),
            // SAFETY: not NULL, and may be read (contract of the header).
            Source::Column(column, _) => Ok(unsafe { column.read_unaligned() }),
            Source::Whole(data, stride_bytes) => Ok(tw_column {
                data: data.cast(),
                stride_bytes,
                count: rows,
                quantity: 0,
                unit: 0,
            }),
        }
    }

    fn elements(&self) -> Elements {
        match self.source {
            Source::Column(..) => Elements::Read,
            Source::Whole(..) => Elements::Whole,
        }
    }

    /// The range of its quantity; whole numbers have none.
    fn range(&self) -> Option<&'static Row> {
        match self.source {
            Source::Column(_, row) => Some(row),
            Source::Whole(..) => None,
        }
    }
}

/// What an input may be. Plain numbers, so that several values are compared with them at once.
#[derive(Clone, Copy)]
struct Range {
    least: f64,
    largest: f64,
    /// Taken beside the range; NaN is equal to nothing.
    also: [f64; 2],
}

impl Range {
    /// Of a quantity; `None` is what the kernel itself looks at. An infinite spring may be rigid.
    fn new(row: Option<&Row>, rigid: bool) -> Self {
        let taken = |taken: bool, value: f64| if taken { value } else { f64::NAN };
        let zero = row.is_some_and(Row::allows_zero);
        Self {
            least: row.map_or(f64::NEG_INFINITY, Row::least),
            largest: row.map_or(f64::INFINITY, Row::largest),
            also: [taken(zero, 0.0), taken(rigid, f64::INFINITY)],
        }
    }

    #[inline(always)]
    fn accepts(self, value: f64) -> bool {
        ((value >= self.least) & (value <= self.largest))
            | (value == self.also[0])
            | (value == self.also[1])
    }

    /// The status of a value; in words only when asked for.
    #[inline(always)]
    fn check(self, value: f64) -> Result<(), tw_status> {
        if self.accepts(value) {
            Ok(())
        } else if value.is_finite() {
            Err(TW_OUT_OF_RANGE)
        } else {
            Err(TW_NOT_FINITE)
        }
    }
}

impl Output {
    pub(super) fn of<Q: Quantity>(name: &'static str, column: *const tw_out_column) -> Self {
        Self {
            name,
            row: Q::ROW,
            column,
        }
    }

    fn read(&self) -> Option<tw_out_column> {
        if self.column.is_null() {
            return None;
        }
        // SAFETY: not NULL, and may be read (contract of the header).
        Some(unsafe { self.column.read_unaligned() })
    }
}

impl Numbers {
    pub(super) const NONE: Self = Self {
        name: "",
        data: std::ptr::null_mut(),
        stride: 0,
    };

    pub(super) fn at(name: &'static str, data: *mut i32, stride: usize) -> Self {
        Self { name, data, stride }
    }

    /// Writes the rows from `first` on.
    #[inline(never)]
    fn store(self, first: usize, values: &[i32]) {
        if self.data.is_null() {
            return;
        }
        if self.stride == size_of::<i32>() {
            // SAFETY: the span was checked, may be written (contract of the header), and is no stack
            // of ours.
            unsafe {
                copy_nonoverlapping(
                    values.as_ptr().cast::<u8>(),
                    self.data.cast::<u8>().add(first * size_of::<i32>()),
                    size_of_val(values),
                );
            }
            return;
        }
        for (at, value) in values.iter().enumerate() {
            self.write(first + at, *value);
        }
    }

    #[inline]
    fn write(self, row: usize, value: i32) {
        if !self.data.is_null() {
            // SAFETY: the span was checked, and may be written (contract of the header).
            unsafe {
                self.data
                    .cast::<u8>()
                    .add(row * self.stride)
                    .cast::<i32>()
                    .write_unaligned(value);
            }
        }
    }
}

/// What lies in a column.
#[derive(Clone, Copy)]
enum Elements {
    /// Doubles to be read.
    Read,
    /// Doubles to be written.
    Written,
    /// Whole numbers, one int32_t a row: no count of their own says that one is a constant.
    Whole,
}

impl Elements {
    const fn width(self) -> usize {
        match self {
            Self::Read | Self::Written => size_of::<f64>(),
            Self::Whole => size_of::<i32>(),
        }
    }

    /// What to pass instead of a stride that is less than that.
    const fn remedy(self) -> &'static str {
        match self {
            Self::Read => {
                "pass the size of what lies from one row to the next; for a constant pass count 1"
            }
            Self::Written => {
                "pass the size of what lies from one row to the next: 8 in an array of doubles"
            }
            Self::Whole => {
                "pass the size of what lies from one row to the next: 4 in an array of int32_t"
            }
        }
    }
}

/// Memory that a column covers.
#[derive(Clone, Copy)]
struct Span {
    name: &'static str,
    start: usize,
    stride: usize,
    count: usize,
    width: usize,
}

impl Span {
    /// Checks pointer, stride and extent; `count` 0 covers nothing and is not looked at.
    fn new(
        name: &'static str,
        data: *const u8,
        stride: usize,
        count: usize,
        elements: Elements,
    ) -> Result<Self, Failure> {
        let width = elements.width();
        let span = Self {
            name,
            start: data as usize,
            stride,
            count,
            width,
        };
        if count == 0 {
            return Ok(span);
        }
        if data.is_null() {
            return Err(Failure::null(name));
        }
        if stride < width {
            return Err(Failure::misuse(
                TW_BAD_COLUMN,
                name,
                format!("a stride of {stride} bytes"),
                format!("at least {width} bytes"),
                elements.remedy(),
            ));
        }
        // A number that was negative in the caller's language, before size_t took it.
        if isize::try_from(count).is_err() {
            return Err(Failure::misuse(
                TW_BAD_COLUMN,
                name,
                format!("-{} rows", count.wrapping_neg()),
                "a number of rows, 0 or more",
                "check for a negative number that was turned into size_t",
            ));
        }
        if count > 1 && isize::try_from(stride).is_err() {
            return Err(Failure::misuse(
                TW_BAD_COLUMN,
                name,
                format!("a stride of -{} bytes", stride.wrapping_neg()),
                format!("at least {width} bytes, counted forwards"),
                "copy a column that runs backwards first, or read its rows in the other order",
            ));
        }
        let extent = (count - 1)
            .checked_mul(stride)
            .and_then(|bytes| bytes.checked_add(width))
            .filter(|bytes| isize::try_from(*bytes).is_ok())
            .and_then(|bytes| span.start.checked_add(bytes));
        match extent {
            Some(_) => Ok(span),
            None => Err(Failure::misuse(
                TW_BAD_COLUMN,
                name,
                format!("{count} rows of {stride} bytes"),
                "a column that fits into memory",
                "check count and stride",
            )),
        }
    }

    fn end(&self) -> usize {
        self.start + (self.count - 1) * self.stride + self.width
    }

    /// True when an element of one may share a byte with one of the other. Fields of one array of
    /// structs do not: their elements keep their distance modulo the common stride.
    fn shares(&self, other: &Self) -> bool {
        if self.count == 0 || other.count == 0 {
            return false;
        }
        if self.end() <= other.start || other.end() <= self.start {
            return false;
        }
        let common = match (self.count, other.count) {
            (1, 1) => return true,
            (1, _) => other.stride,
            (_, 1) => self.stride,
            _ => greatest_common_divisor(self.stride, other.stride),
        };
        let apart = if self.start >= other.start {
            (self.start - other.start) % common
        } else {
            (common - (other.start - self.start) % common) % common
        };
        apart < other.width || apart + self.width > common
    }
}

fn greatest_common_divisor(mut a: usize, mut b: usize) -> usize {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

/// A column ready to be read.
#[derive(Clone, Copy)]
struct Reader {
    data: *const u8,
    step: usize,
    /// None where the column is in the trade's unit: nothing to convert.
    unit: Option<&'static Unit>,
    /// True for whole numbers.
    whole: bool,
}

/// The unit, unless it is the trade's: its factor is 1.
fn other_than_trade(unit: &'static Unit) -> Option<&'static Unit> {
    (unit.factor() != (1.0, 1.0)).then_some(unit)
}

impl Reader {
    /// The value of a row in the trade's unit.
    #[inline]
    fn value(self, row: usize) -> f64 {
        if self.whole {
            // SAFETY: the span was checked, and may be read (contract of the header).
            return f64::from(unsafe {
                self.data
                    .add(row * self.step)
                    .cast::<i32>()
                    .read_unaligned()
            });
        }
        // SAFETY: the span was checked, and may be read (contract of the header).
        let given = unsafe {
            self.data
                .add(row * self.step)
                .cast::<f64>()
                .read_unaligned()
        };
        match self.unit {
            None => given,
            Some(unit) => unit.to_trade(given, 1.0),
        }
    }

    /// Reads the rows from `first` on in the trade's unit; true when all lie in `range`.
    #[inline(always)]
    fn load(self, first: usize, values: &mut [f64], range: Range) -> bool {
        if self.step == 0 {
            // A constant: once for all blocks.
            let value = self.value(0);
            if first == 0 {
                values.fill(value);
            }
            return range.accepts(value);
        }
        if self.whole || self.step != size_of::<f64>() {
            return take(values, |at| self.value(first + at), range);
        }
        let given = |at| {
            // SAFETY: the span was checked, and may be read (contract of the header).
            unsafe { self.data.cast::<f64>().add(first + at).read_unaligned() }
        };
        match self.unit {
            None => take(values, given, range),
            Some(unit) => take(values, |at| unit.to_trade(given(at), 1.0), range),
        }
    }
}

/// Fills a block; true when all lie in `range`. Nothing is branched upon in the loops, so that several
/// values are read and compared at once.
#[inline(always)]
fn take(values: &mut [f64], given: impl Fn(usize) -> f64, range: Range) -> bool {
    let mut all = true;
    if range.also.iter().all(|value| value.is_nan()) {
        for (at, value) in values.iter_mut().enumerate() {
            *value = given(at);
            all &= (*value >= range.least) & (*value <= range.largest);
        }
    } else {
        for (at, value) in values.iter_mut().enumerate() {
            *value = given(at);
            all &= range.accepts(*value);
        }
    }
    all
}

/// A column ready to be written.
#[derive(Clone, Copy)]
struct Writer {
    data: *mut u8,
    stride: usize,
    count: usize,
    /// As of a [`Reader`].
    unit: Option<&'static Unit>,
}

impl Writer {
    #[inline]
    fn write(self, row: usize, value: f64) {
        let value = match self.unit {
            None => value,
            Some(unit) => unit.from_trade(value),
        };
        // SAFETY: the span was checked, and may be written (contract of the header).
        unsafe {
            self.data
                .add(row * self.stride)
                .cast::<f64>()
                .write_unaligned(value);
        }
    }

    /// Writes the rows from `first` on.
    #[inline(never)]
    fn store(self, first: usize, values: &mut [f64]) {
        if self.stride != size_of::<f64>() {
            for (at, value) in values.iter().enumerate() {
                self.write(first + at, *value);
            }
            return;
        }
        if let Some(unit) = self.unit {
            for value in values.iter_mut() {
                *value = unit.from_trade(*value);
            }
        }
        // SAFETY: the span was checked, may be written (contract of the header), and is no stack of
        // ours.
        unsafe {
            copy_nonoverlapping(
                values.as_ptr().cast::<u8>(),
                self.data.add(first * size_of::<f64>()),
                size_of_val(values),
            );
        }
    }
}

/// Rows of a block: few enough to stay near the processor with all columns of a call, many enough
/// that what is done once a block costs next to nothing.
const BLOCK: usize = 256;

/// Rows that are done sooner one by one than as a block, which must be laid out first.
const FEW: usize = 32;

/// Bad rows: the first, how many there are, the status of the first.
type Bad = Option<(usize, u64, i32)>;

/// What makes a row's answers and regime of its values. A trait of structs and not plain closures,
/// because these can be told to be put where they are called.
trait Kernel<const I: usize, const O: usize>: Copy {
    fn row(&self, values: [f64; I]) -> Result<([f64; O], i32), tw_status>;
}

/// A kernel that answers with a status.
#[derive(Clone, Copy)]
struct Bare<F>(F);

/// A kernel that answers with an error.
#[derive(Clone, Copy)]
struct Checked<F>(F);

/// A kernel of which only rows are asked whose values were found in the ranges of the inputs `C`.
#[derive(Clone, Copy)]
struct Known<K, C>(K, PhantomData<C>);

impl<const I: usize, const O: usize, F> Kernel<I, O> for Bare<F>
where
    F: Fn([f64; I]) -> Result<([f64; O], i32), tw_status> + Copy,
{
    #[inline(always)]
    fn row(&self, values: [f64; I]) -> Result<([f64; O], i32), tw_status> {
        (self.0)(values)
    }
}

impl<const I: usize, const O: usize, F> Kernel<I, O> for Checked<F>
where
    F: Fn([f64; I]) -> Result<([f64; O], i32), Error> + Copy,
{
    #[inline(always)]
    fn row(&self, values: [f64; I]) -> Result<([f64; O], i32), tw_status> {
        (self.0)(values).map_err(status_of)
    }
}

#[cold]
#[inline(never)]
#[allow(clippy::needless_pass_by_value)]
fn status_of(error: Error) -> tw_status {
    error.kind().into()
}

/// A kernel that takes checked quantities, and the inputs `C` that they are made of.
struct Typeful<F, C>(F, PhantomData<C>);

impl<F: Copy, C> Clone for Typeful<F, C> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<F: Copy, C> Copy for Typeful<F, C> {}

impl<const I: usize, const O: usize, F, C> Kernel<I, O> for Typeful<F, C>
where
    C: Inputs<I>,
    F: Fn(C::Values) -> Result<([f64; O], i32), Error> + Copy,
{
    #[inline(always)]
    fn row(&self, values: [f64; I]) -> Result<([f64; O], i32), tw_status> {
        C::values(values).and_then(self.0).map_err(status_of)
    }
}

impl<const I: usize, const O: usize, K, C> Kernel<I, O> for Known<K, C>
where
    K: Kernel<I, O>,
    C: Inputs<I>,
{
    // Not always: first the checks must go, whose calls keep a kernel out of a loop that is compiled
    // for wider registers.
    #[inline]
    fn row(&self, values: [f64; I]) -> Result<([f64; O], i32), tw_status> {
        // SAFETY: asked only for blocks in which `load` found every value in its range.
        unsafe { C::known(values) };
        self.0.row(values)
    }
}

/// A column call as a door writes it down.
pub(super) struct Job<C, const O: usize> {
    pub(super) inputs: C,
    pub(super) outputs: [Output; O],
    pub(super) regime: Numbers,
    pub(super) row_status: Numbers,
}

/// A column call.
struct Work<const I: usize, const O: usize> {
    inputs: [Input; I],
    outputs: [Output; O],
    regime: Numbers,
    row_status: Numbers,
}

/// Its columns as given, their memory checked.
struct Memory<const I: usize, const O: usize> {
    inputs: [Option<tw_column>; I],
    outputs: [Option<tw_out_column>; O],
    writers: [Option<Writer>; O],
}

impl<C, const O: usize> Job<C, O> {
    fn work<const I: usize>(self) -> Work<I, O>
    where
        C: Inputs<I>,
    {
        Work {
            inputs: self.inputs.all(),
            outputs: self.outputs,
            regime: self.regime,
            row_status: self.row_status,
        }
    }

    /// Runs `kernel` over all rows; `explain` finds the words for a bad one.
    ///
    /// The ranges are looked at before either is asked, so that a value out of its range costs no
    /// words.
    #[inline(always)]
    pub(super) fn run<const I: usize>(
        self,
        detail: *mut tw_error,
        kernel: impl Fn([f64; I]) -> Result<([f64; O], i32), tw_status> + Copy,
        explain: impl Fn([f64; I]) -> Option<Error>,
    ) -> tw_status
    where
        C: Inputs<I>,
    {
        self.run_kernel(detail, Bare(kernel), explain)
    }

    /// Runs a kernel that checks its values itself.
    #[inline(always)]
    pub(super) fn run_checked<const I: usize>(
        self,
        detail: *mut tw_error,
        kernel: impl Fn([f64; I]) -> Result<([f64; O], i32), Error> + Copy,
    ) -> tw_status
    where
        C: Inputs<I>,
    {
        self.run_kernel(detail, Checked(kernel), |values| kernel(values).err())
    }

    /// Runs a kernel that takes checked quantities, in the order of the inputs.
    ///
    /// The checks are made outside of it, so that it stays short enough to be put into the loop.
    #[inline(always)]
    pub(super) fn run_typed<const I: usize>(
        self,
        detail: *mut tw_error,
        kernel: impl Fn(C::Values) -> Result<([f64; O], i32), Error> + Copy,
    ) -> tw_status
    where
        C: Inputs<I>,
    {
        self.run_kernel(detail, Typeful(kernel, PhantomData::<C>), |values| {
            C::values(values).and_then(kernel).err()
        })
    }

    #[inline(always)]
    fn run_kernel<const I: usize>(
        self,
        detail: *mut tw_error,
        kernel: impl Kernel<I, O>,
        explain: impl Fn([f64; I]) -> Option<Error>,
    ) -> tw_status
    where
        C: Inputs<I>,
    {
        let known = Known(kernel, PhantomData::<C>);
        self.work().run(detail, [false; I], known, kernel, explain)
    }

    /// [`run_checked`](Self::run_checked) where an infinite spring is rigid: those are let through.
    pub(super) fn run_checked_but_rigid<const I: usize>(
        self,
        detail: *mut tw_error,
        springs: [bool; I],
        kernel: impl Fn([f64; I]) -> Result<([f64; O], i32), Error> + Copy,
    ) -> tw_status
    where
        C: Inputs<I>,
    {
        let status = Checked(kernel);
        self.work().run(detail, springs, status, status, |values| {
            kernel(values).err()
        })
    }

    /// Refuses what is one for all rows: every row holds the mark of failure.
    #[cold]
    pub(super) fn refuse<const I: usize>(self, detail: *mut tw_error, failure: Failure) -> tw_status
    where
        C: Inputs<I>,
    {
        self.work().refuse(detail, failure)
    }
}

impl<const I: usize, const O: usize> Work<I, O> {
    /// Runs `known` over the rows of blocks that hold no value out of its range, `kernel` over the
    /// others: the same, but that the first may count upon the ranges.
    #[inline(always)]
    fn run(
        self,
        detail: *mut tw_error,
        springs: [bool; I],
        known: impl Kernel<I, O>,
        kernel: impl Kernel<I, O>,
        explain: impl Fn([f64; I]) -> Option<Error>,
    ) -> tw_status {
        let memory = match guarded(|| self.memory()) {
            Ok(memory) => memory,
            Err(failure) => return fail(detail, failure),
        };
        let done = guarded(|| {
            Detail::check(detail)?;
            let (readers, writers, rows) = self.meaning(&memory)?;
            let ranges = std::array::from_fn(|at| Range::new(self.inputs[at].range(), springs[at]));
            let bad = self.rows(&readers, &writers, ranges, rows, known, kernel);
            Ok(bad.map(|(bad, count, status)| {
                let given = readers.map(|reader| reader.value(bad));
                // Words cost memory: none where nobody reads them.
                let error = (!detail.is_null()).then(|| {
                    let error = explain(given).unwrap_or_else(|| {
                        Error::internal("a bad row that is good when asked again")
                    });
                    self.in_its_units(error, &readers)
                });
                (error, (bad as u64, count, status))
            }))
        });
        match done {
            Ok(None) => succeed(detail),
            Ok(Some((None, _))) => TW_ROWS_BAD,
            Ok(Some((Some(error), rows))) => fail(detail, Failure::rows(error, rows)),
            Err(failure) => {
                self.spoil(&memory, failure.status());
                fail(detail, failure)
            }
        }
    }

    /// Refuses what is one for all rows: every row holds the mark of failure.
    #[cold]
    fn refuse(self, detail: *mut tw_error, failure: Failure) -> tw_status {
        match guarded(|| self.memory()) {
            Err(memory) => fail(detail, memory),
            Ok(memory) => {
                let failure = Detail::check(detail).err().unwrap_or(failure);
                self.spoil(&memory, failure.status());
                fail(detail, failure)
            }
        }
    }

    /// Checks the memory of all columns, and that none to be written meets another.
    fn memory(&self) -> Result<Memory<I, O>, Failure> {
        let mut memory = Memory {
            inputs: [None; I],
            outputs: [None; O],
            writers: [None; O],
        };
        if self.outputs.iter().all(|output| output.column.is_null()) {
            return Err(Failure::no_output());
        }
        let mut written = [None; O];
        let mut rows = 0;
        for (at, output) in self.outputs.iter().enumerate() {
            let Some(column) = output.read() else {
                continue;
            };
            written[at] = Some(Span::new(
                output.name,
                column.data.cast(),
                column.stride_bytes,
                column.count,
                Elements::Written,
            )?);
            rows = rows.max(column.count);
            memory.outputs[at] = Some(column);
            memory.writers[at] = Some(Writer {
                data: column.data.cast(),
                stride: column.stride_bytes,
                count: column.count,
                unit: None,
            });
        }
        let mut read = [None; I];
        for (at, input) in self.inputs.iter().enumerate() {
            let column = input.read(rows)?;
            read[at] = Some(Span::new(
                input.name,
                column.data.cast(),
                column.stride_bytes,
                column.count,
                input.elements(),
            )?);
            memory.inputs[at] = Some(column);
        }
        let mut numbers = [None; 2];
        for (at, column) in [self.regime, self.row_status].iter().enumerate() {
            if !column.data.is_null() {
                numbers[at] = Some(Span::new(
                    column.name,
                    column.data.cast(),
                    column.stride,
                    rows,
                    Elements::Whole,
                )?);
            }
        }
        let written = || written.iter().chain(&numbers).flatten();
        for (at, one) in written().enumerate() {
            for other in read.iter().flatten().chain(written().skip(at + 1)) {
                if one.shares(other) {
                    return Err(Failure::misuse(
                        TW_OVERLAP,
                        one.name,
                        format!("memory that {} has too", other.name),
                        "memory of its own",
                        "write into another array",
                    ));
                }
            }
        }
        Ok(memory)
    }

    /// Checks counts, quantities and units; with no rows, counts alone.
    #[allow(clippy::type_complexity)]
    fn meaning(
        &self,
        memory: &Memory<I, O>,
    ) -> Result<([Reader; I], [Option<Writer>; O], usize), Failure> {
        let mut rows = None;
        for (output, column) in self.outputs.iter().zip(&memory.outputs) {
            let Some(column) = column else { continue };
            let rows = *rows.get_or_insert(column.count);
            if column.count != rows {
                return Err(count_differs(output.name, column.count, rows));
            }
        }
        let rows = rows.unwrap_or(0);
        for (input, column) in self.inputs.iter().zip(&memory.inputs) {
            let Some(column) = column else { continue };
            if column.count != rows && column.count != 1 {
                return Err(count_differs(input.name, column.count, rows));
            }
        }
        let nowhere = Reader {
            data: std::ptr::null(),
            step: 0,
            unit: None,
            whole: false,
        };
        let (mut readers, mut writers) = ([nowhere; I], memory.writers);
        if rows == 0 {
            return Ok((readers, writers, 0));
        }
        for ((output, column), writer) in self.outputs.iter().zip(&memory.outputs).zip(&mut writers)
        {
            if let (Some(column), Some(writer)) = (column, writer) {
                let unit = unit(output.name, output.row, column.quantity, column.unit)?;
                writer.unit = other_than_trade(unit);
            }
        }
        for ((input, column), reader) in self.inputs.iter().zip(&memory.inputs).zip(&mut readers) {
            if let Some(column) = column {
                let (unit, whole) = match input.source {
                    Source::Column(_, row) => {
                        let unit = unit(input.name, row, column.quantity, column.unit)?;
                        (other_than_trade(unit), false)
                    }
                    Source::Whole(..) => (None, true),
                };
                *reader = Reader {
                    data: column.data.cast(),
                    step: if column.count == 1 {
                        0
                    } else {
                        column.stride_bytes
                    },
                    unit,
                    whole,
                };
            }
        }
        Ok((readers, writers, rows))
    }

    /// Runs the kernel over all rows.
    #[inline(always)]
    fn rows(
        &self,
        readers: &[Reader; I],
        writers: &[Option<Writer>; O],
        ranges: [Range; I],
        rows: usize,
        known: impl Kernel<I, O>,
        kernel: impl Kernel<I, O>,
    ) -> Bad {
        let one_by_one = |some: std::ops::Range<usize>, bad: &mut Bad| {
            self.one_by_one(readers, writers, &ranges, some, kernel, bad);
        };
        let mut bad = None;
        if rows < FEW {
            one_by_one(0..rows, &mut bad);
        } else {
            self.blocks(readers, writers, &ranges, rows, known, one_by_one, &mut bad);
        }
        bad
    }

    /// Runs `known` over the blocks without a bad row; the others go one by one.
    #[inline(always)]
    #[allow(clippy::too_many_arguments)]
    fn blocks(
        &self,
        readers: &[Reader; I],
        writers: &[Option<Writer>; O],
        ranges: &[Range; I],
        rows: usize,
        known: impl Kernel<I, O>,
        one_by_one: impl Fn(std::ops::Range<usize>, &mut Bad),
        bad: &mut Bad,
    ) {
        // Apart from one another, so that the compiler knows that they do not meet.
        let mut inputs = [[0.0; BLOCK]; I];
        let mut outputs = [[0.0; BLOCK]; O];
        let mut regimes = [0; BLOCK];
        let wide = wide::registers();
        // Constants are read with the first block alone, which is the longest.
        for first in (0..rows).step_by(BLOCK) {
            let count = BLOCK.min(rows - first);
            let sound = wide::load(wide, readers, ranges, first, count, &mut inputs);
            if !(sound && wide::all_good(wide, count, &inputs, &mut outputs, &mut regimes, known)) {
                one_by_one(first..first + count, bad);
                continue;
            }
            for (writer, values) in writers.iter().zip(&mut outputs) {
                if let Some(writer) = writer {
                    writer.store(first, &mut values[..count]);
                }
            }
            self.regime.store(first, &regimes[..count]);
            self.row_status.store(first, &GOOD[..count]);
        }
    }

    /// Runs the kernel over some rows, and tells which are bad and why.
    #[inline(never)]
    fn one_by_one(
        &self,
        readers: &[Reader; I],
        writers: &[Option<Writer>; O],
        ranges: &[Range; I],
        rows: std::ops::Range<usize>,
        kernel: impl Kernel<I, O>,
        bad: &mut Bad,
    ) {
        for row in rows {
            let given = readers.map(|reader| reader.value(row));
            let checked = || {
                for (range, value) in ranges.iter().zip(given) {
                    range.check(value)?;
                }
                kernel.row(given)
            };
            let (values, regime, status) = match checked() {
                Ok((values, regime)) => (values, regime, TW_OK as i32),
                Err(status) => {
                    bad.get_or_insert((row, 0, status as i32)).1 += 1;
                    ([f64::NAN; O], 0, status as i32)
                }
            };
            for (writer, value) in writers.iter().zip(values) {
                if let Some(writer) = writer {
                    writer.write(row, value);
                }
            }
            self.regime.write(row, regime);
            self.row_status.write(row, status);
        }
    }

    /// The error in inch where the column that it names is, or, where it names none, any column.
    #[cold]
    fn in_its_units(&self, error: Error, readers: &[Reader; I]) -> Error {
        let named = self
            .inputs
            .iter()
            .zip(readers)
            .find(|(input, _)| input.name == error.field());
        let is_inch = |input: &Input, reader: &Reader| match (input.range(), reader.unit) {
            (Some(row), Some(unit)) => unit.is_inch(row.kind()),
            _ => false,
        };
        let inch = match named {
            Some((input, reader)) => is_inch(input, reader),
            None => self
                .inputs
                .iter()
                .zip(readers)
                .any(|(input, reader)| is_inch(input, reader)),
        };
        match inch {
            true => error.in_units(Units::Inch),
            false => error,
        }
    }

    /// Marks all rows as failed.
    #[cold]
    fn spoil(&self, memory: &Memory<I, O>, status: tw_status) {
        let mut counts = memory.writers.iter().flatten().map(|writer| writer.count);
        let rows = counts.next().unwrap_or(0);
        let agreed = counts.all(|count| count == rows);
        for writer in memory.writers.iter().flatten() {
            for row in 0..writer.count {
                writer.write(row, f64::NAN);
            }
        }
        if agreed {
            for row in 0..rows {
                self.regime.write(row, 0);
                self.row_status.write(row, status as i32);
            }
        }
    }
}

/// Reads a block; true when every value lies in its range.
#[inline(always)]
fn load(
    readers: &[Reader],
    ranges: &[Range],
    first: usize,
    count: usize,
    inputs: &mut [[f64; BLOCK]],
) -> bool {
    let mut sound = true;
    for ((reader, range), values) in readers.iter().zip(ranges).zip(inputs) {
        sound &= reader.load(first, &mut values[..count], *range);
    }
    sound
}

/// The same loops for processors that have registers of four doubles; the operations are the same,
/// one by one, and so are the answers to the last digit.
mod wide {
    use super::{BLOCK, Kernel, Range, Reader};

    /// Whether this processor has them.
    #[inline]
    pub(super) fn registers() -> bool {
        #[cfg(target_arch = "x86_64")]
        return std::arch::is_x86_feature_detected!("avx2");
        #[cfg(not(target_arch = "x86_64"))]
        return false;
    }

    /// [`load`](super::load).
    #[inline(never)]
    pub(super) fn load(
        wide: bool,
        readers: &[Reader],
        ranges: &[Range],
        first: usize,
        count: usize,
        inputs: &mut [[f64; BLOCK]],
    ) -> bool {
        #[cfg(target_arch = "x86_64")]
        #[target_feature(enable = "avx2")]
        fn with(
            readers: &[Reader],
            ranges: &[Range],
            first: usize,
            count: usize,
            inputs: &mut [[f64; BLOCK]],
        ) -> bool {
            super::load(readers, ranges, first, count, inputs)
        }
        #[cfg(target_arch = "x86_64")]
        if wide {
            // SAFETY: the processor has what the function is compiled for.
            return unsafe { with(readers, ranges, first, count, inputs) };
        }
        _ = wide;
        super::load(readers, ranges, first, count, inputs)
    }

    /// [`all_good`](super::all_good).
    #[inline(always)]
    pub(super) fn all_good<const I: usize, const O: usize>(
        wide: bool,
        count: usize,
        inputs: &[[f64; BLOCK]; I],
        outputs: &mut [[f64; BLOCK]; O],
        regimes: &mut [i32; BLOCK],
        kernel: impl Kernel<I, O>,
    ) -> bool {
        #[cfg(target_arch = "x86_64")]
        #[target_feature(enable = "avx2")]
        // Compiled beside the door, where its kernel can be put into the loop.
        #[inline]
        fn with<const I: usize, const O: usize>(
            count: usize,
            inputs: &[[f64; BLOCK]; I],
            outputs: &mut [[f64; BLOCK]; O],
            regimes: &mut [i32; BLOCK],
            kernel: impl Kernel<I, O>,
        ) -> bool {
            super::all_good(count, inputs, outputs, regimes, kernel)
        }
        #[cfg(target_arch = "x86_64")]
        if wide {
            // SAFETY: the processor has what the function is compiled for.
            return unsafe { with(count, inputs, outputs, regimes, kernel) };
        }
        _ = wide;
        super::all_good(count, inputs, outputs, regimes, kernel)
    }
}

/// The statuses of a block of good rows.
static GOOD: [i32; BLOCK] = [TW_OK as i32; BLOCK];

/// Runs the kernel over a block; false when a row is bad, which is not told here: nothing is branched
/// upon, so that a short kernel runs several rows at once.
#[inline(always)]
fn all_good<const I: usize, const O: usize>(
    count: usize,
    inputs: &[[f64; BLOCK]; I],
    outputs: &mut [[f64; BLOCK]; O],
    regimes: &mut [i32; BLOCK],
    kernel: impl Kernel<I, O>,
) -> bool {
    let mut good = true;
    for row in 0..count.min(BLOCK) {
        let (values, regime, holds) = match kernel.row(inputs.each_ref().map(|from| from[row])) {
            Ok((values, regime)) => (values, regime, true),
            Err(_) => ([f64::NAN; O], 0, false),
        };
        for (into, value) in outputs.iter_mut().zip(values) {
            into[row] = value;
        }
        regimes[row] = regime;
        good &= holds;
    }
    good
}

#[cold]
fn count_differs(name: &str, count: usize, rows: usize) -> Failure {
    Failure::misuse(
        TW_BAD_COLUMN,
        name,
        format!("{count} rows"),
        format!("{rows} rows, or 1 where it is read"),
        "give all columns of a call the same count; a constant has count 1",
    )
}

/// The unit of a column that holds what it must.
fn unit(name: &str, row: &'static Row, quantity: i32, unit: i32) -> Result<&'static Unit, Failure> {
    if quantity != row.code() {
        let given = crate::quantity::rows()
            .iter()
            .find(|row| row.code() == quantity)
            .map_or_else(
                || format!("quantity {quantity}, which is none"),
                |row| format!("a column of {}", row.name()),
            );
        return Err(Failure::misuse(
            TW_BAD_COLUMN,
            name,
            given,
            format!("a column of {} (quantity {})", row.name(), row.code()),
            "check the order of the columns, then the quantity",
        ));
    }
    let units = row.kind().units();
    units
        .iter()
        .find(|known| known.code() == unit)
        .ok_or_else(|| {
            Failure::misuse(
                TW_WRONG_UNIT,
                name,
                format!("unit {unit}"),
                match units.iter().all(|unit| unit.text().is_empty()) {
                    true => String::from("a plain number, without a unit"),
                    false => format!(
                        "a unit of {}: {}",
                        row.kind().what(),
                        any_of(units.iter().map(Unit::text))
                    ),
                },
                "pass a number of enum tw_unit of that kind",
            )
        })
}
