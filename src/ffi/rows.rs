//! The machinery of a column call: memory checked, units found, the loop over the rows.

use std::mem::size_of;

use super::columns::{tw_column, tw_out_column};
use super::status::{Detail, Failure, fail, succeed, tw_error, tw_status};
use super::{guarded, tw_status::*};
use crate::error::{Error, any_of};
use crate::quantity::unit::Unit;
use crate::quantity::{Quantity, Row};

/// A column to be read, and what it must be.
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

impl Input {
    pub(super) fn of<Q: Quantity>(name: &'static str, column: *const tw_column) -> Self {
        Self {
            name,
            source: Source::Column(column, Q::ROW),
        }
    }

    /// Whole numbers without a count of their own, one a row.
    pub(super) fn whole(name: &'static str, data: *const i32, stride: usize) -> Self {
        Self {
            name,
            source: Source::Whole(data, stride),
        }
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

    fn width(&self) -> usize {
        match self.source {
            Source::Column(..) => size_of::<f64>(),
            Source::Whole(..) => size_of::<i32>(),
        }
    }

    /// The status of a value by the range of its quantity; whole numbers have none.
    #[inline]
    fn inside(source: Source, value: f64) -> Result<(), tw_status> {
        match source {
            Source::Column(_, row) => inside(row, value),
            Source::Whole(..) => Ok(()),
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
        width: usize,
    ) -> Result<Self, Failure> {
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
                "pass the size of what lies from one row to the next; for a constant pass count 1",
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
}

/// A column call.
pub(super) struct Job<const I: usize, const O: usize> {
    pub(super) inputs: [Input; I],
    pub(super) outputs: [Output; O],
    pub(super) regime: Numbers,
    pub(super) row_status: Numbers,
}

/// Its columns as given, their memory checked.
struct Memory<const I: usize, const O: usize> {
    inputs: [Option<tw_column>; I],
    outputs: [Option<tw_out_column>; O],
    writers: [Option<Writer>; O],
}

impl<const I: usize, const O: usize> Job<I, O> {
    /// Runs `kernel` over all rows; `explain` finds the words for a bad one.
    pub(super) fn run(
        self,
        detail: *mut tw_error,
        kernel: impl Fn([f64; I]) -> Result<([f64; O], i32), tw_status>,
        explain: impl Fn([f64; I]) -> Option<Error>,
    ) -> tw_status {
        let memory = match guarded(|| self.memory()) {
            Ok(memory) => memory,
            Err(failure) => return fail(detail, failure),
        };
        let done = guarded(|| {
            Detail::check(detail)?;
            let (readers, writers, rows) = self.meaning(&memory)?;
            let bad = self.rows(&readers, &writers, rows, kernel);
            Ok(bad.map(|(bad, count, status)| {
                let given = readers.map(|reader| reader.value(bad));
                // Words cost memory: none where nobody reads them.
                let error = (!detail.is_null()).then(|| {
                    explain(given).unwrap_or_else(|| {
                        Error::internal("a bad row that is good when asked again")
                    })
                });
                (error, (bad as u64, count, status as i32))
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

    /// Runs a kernel that checks its values itself.
    ///
    /// The ranges are looked at before it is asked, so that a value out of its range costs no words.
    pub(super) fn run_checked(
        self,
        detail: *mut tw_error,
        kernel: impl Fn([f64; I]) -> Result<([f64; O], i32), Error>,
    ) -> tw_status {
        let sources = std::array::from_fn::<_, I, _>(|at| self.inputs[at].source);
        self.run(
            detail,
            |values| {
                for (source, value) in sources.into_iter().zip(values) {
                    Input::inside(source, value)?;
                }
                kernel(values).map_err(|error| tw_status::from(error.kind()))
            },
            |values| kernel(values).err(),
        )
    }

    /// [`run_checked`](Self::run_checked) where an infinite spring is rigid: those are let through.
    pub(super) fn run_checked_but_rigid(
        self,
        detail: *mut tw_error,
        springs: [bool; I],
        kernel: impl Fn([f64; I]) -> Result<([f64; O], i32), Error>,
    ) -> tw_status {
        let sources = std::array::from_fn::<_, I, _>(|at| self.inputs[at].source);
        self.run(
            detail,
            |values| {
                for ((source, spring), value) in sources.into_iter().zip(springs).zip(values) {
                    if !(spring && value == f64::INFINITY) {
                        Input::inside(source, value)?;
                    }
                }
                kernel(values).map_err(|error| tw_status::from(error.kind()))
            },
            |values| kernel(values).err(),
        )
    }

    /// Refuses what is one for all rows: every row holds the mark of failure.
    #[cold]
    pub(super) fn refuse(self, detail: *mut tw_error, failure: Failure) -> tw_status {
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
                size_of::<f64>(),
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
                input.width(),
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
                    size_of::<i32>(),
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

    /// Runs `kernel` over all rows: the first bad one, how many there are, the status of the first.
    #[inline]
    fn rows(
        &self,
        readers: &[Reader; I],
        writers: &[Option<Writer>; O],
        rows: usize,
        kernel: impl Fn([f64; I]) -> Result<([f64; O], i32), tw_status>,
    ) -> Option<(usize, u64, tw_status)> {
        // All in the trade's units and nothing but answers wanted: the same loop, without looking
        // for the rest in every row.
        if readers
            .iter()
            .all(|reader| reader.unit.is_none() && !reader.whole)
            && writers.iter().flatten().all(|writer| writer.unit.is_none())
            && self.regime.data.is_null()
            && self.row_status.data.is_null()
        {
            let (readers, writers) = (
                readers.map(|reader| Reader {
                    unit: None,
                    whole: false,
                    ..reader
                }),
                writers.map(|writer| {
                    writer.map(|writer| Writer {
                        unit: None,
                        ..writer
                    })
                }),
            );
            return each(
                rows,
                kernel,
                |row| readers.map(|reader| reader.value(row)),
                |row, values, _, _| write_all(&writers, row, values),
            );
        }
        each(
            rows,
            kernel,
            |row| readers.map(|reader| reader.value(row)),
            {
                |row, values, regime, status| {
                    write_all(writers, row, values);
                    self.regime.write(row, regime);
                    self.row_status.write(row, status as i32);
                }
            },
        )
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

#[inline]
fn write_all<const O: usize>(writers: &[Option<Writer>; O], row: usize, values: [f64; O]) {
    for (writer, value) in writers.iter().zip(values) {
        if let Some(writer) = writer {
            writer.write(row, value);
        }
    }
}

/// The loop over the rows: the first bad one, how many there are, the status of the first.
#[inline]
fn each<const I: usize, const O: usize>(
    rows: usize,
    kernel: impl Fn([f64; I]) -> Result<([f64; O], i32), tw_status>,
    read: impl Fn(usize) -> [f64; I],
    write: impl Fn(usize, [f64; O], i32, tw_status),
) -> Option<(usize, u64, tw_status)> {
    let mut bad = None;
    let mut rows_bad = 0_u64;
    for row in 0..rows {
        match kernel(read(row)) {
            Ok((values, regime)) => write(row, values, regime, TW_OK),
            Err(status) => {
                if rows_bad == 0 {
                    bad = Some((row, status));
                }
                rows_bad += 1;
                write(row, [f64::NAN; O], 0, status);
            }
        }
    }
    bad.map(|(row, status)| (row, rows_bad, status))
}

/// The status of a value by the range of its quantity; in words only when asked for.
#[inline]
pub(super) fn inside(range: &Row, value: f64) -> Result<(), tw_status> {
    if range.accepts(value) {
        Ok(())
    } else if value.is_finite() {
        Err(TW_OUT_OF_RANGE)
    } else {
        Err(TW_NOT_FINITE)
    }
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
                format!(
                    "a unit of {}: {}",
                    row.kind().what(),
                    any_of(units.iter().map(Unit::text))
                ),
                "pass a number of enum tw_unit of that kind",
            )
        })
}
