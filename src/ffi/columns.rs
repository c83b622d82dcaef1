//! Column doors: the kernels of the scalar doors, over many rows at once.
//!
//! Nothing is allocated for good rows, nor for bad ones: a bad row is known by the range of its
//! quantity before the kernel is asked. Only the first bad row is asked again at the end, for its
//! words.

use std::ffi::c_void;
use std::mem::size_of;

use super::quantity::*;
use super::scalar::{regime_number, theoretical_roughness};
use super::status::{Detail, Failure, fail, succeed, tw_error, tw_status};
use super::{guarded, tw_status::*};
use crate::error::{Error, any_of};
use crate::physics::finish;
use crate::quantity::unit::Unit;
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, Feed, MinorCuttingEdgeAngle, Quantity, Ra, Row, Rq, Rt, Rz,
};

/// A column of doubles to be read: where they lie, how far apart, how many, and what they are.
///
/// Row i is the double at data + i * stride_bytes; it need not be aligned, so that a column can be
/// a field of an array of the caller's own structs. stride_bytes is at least 8, also where count is
/// 1. count 1 is a constant for all rows.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct tw_column {
    /// The first double; may be NULL where count is 0.
    pub data: *const c_void,
    /// Bytes from one row to the next.
    pub stride_bytes: usize,
    /// Number of rows, or 1 for a constant.
    pub count: usize,
    /// What the doubles are: a number of enum tw_quantity.
    pub quantity: i32,
    /// Their unit: a number of enum tw_unit.
    pub unit: i32,
}

/// A column of doubles to be written; laid out as tw_column. Its count is the number of rows.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct tw_out_column {
    /// The first double; may be NULL where count is 0.
    pub data: *mut c_void,
    /// Bytes from one row to the next.
    pub stride_bytes: usize,
    /// Number of rows.
    pub count: usize,
    /// What the doubles are: a number of enum tw_quantity.
    pub quantity: i32,
    /// Their unit: a number of enum tw_unit.
    pub unit: i32,
}

/// tw_arc_height for every row.
///
/// Columns, see the first page: feed and corner_radius are read, rt is written. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_arc_height_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    rt: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let scalar = |[feed, radius]: [f64; 2]| -> Result<Rt, Error> {
        finish::arc_height(
            tw_feed { mm_per_rev: feed }.read()?,
            tw_corner_radius { mm: radius }.read()?,
        )
    };
    let job = Job {
        inputs: [
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ],
        outputs: [Output::of::<Rt>("rt", rt)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run(
        detail,
        |row| {
            let [feed, radius] = row;
            inside::<Feed>(feed)?;
            inside::<CornerRadius>(radius)?;
            if feed >= 2.0 * radius {
                return Err(TW_CONTRADICTION);
            }
            let rt = scalar(row).map_err(|error| tw_status::from(error.kind()))?;
            Ok(([rt.trade()], 0))
        },
        |row| scalar(row).err(),
    )
}

/// tw_theoretical_roughness for every row.
///
/// Columns, see the first page: the first four are read; rt, rz, ra and rq are written, each may be
/// NULL unless all are. regime may be NULL; else one int32_t a row (a number of enum tw_regime, 0
/// for a bad row), regime_stride_bytes apart (at least 4). row_status likewise. detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_theoretical_roughness_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    cutting_edge_angle: *const tw_column,
    minor_cutting_edge_angle: *const tw_column,
    rt: *const tw_out_column,
    rz: *const tw_out_column,
    ra: *const tw_out_column,
    rq: *const tw_out_column,
    regime: *mut i32,
    regime_stride_bytes: usize,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let scalar = |[feed, radius, major, minor]: [f64; 4]| {
        theoretical_roughness(
            tw_feed { mm_per_rev: feed },
            tw_corner_radius { mm: radius },
            tw_cutting_edge_angle { deg: major },
            tw_minor_cutting_edge_angle { deg: minor },
        )
    };
    let job = Job {
        inputs: [
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<MinorCuttingEdgeAngle>(
                "minor_cutting_edge_angle",
                minor_cutting_edge_angle,
            ),
        ],
        outputs: [
            Output::of::<Rt>("rt", rt),
            Output::of::<Rz>("rz", rz),
            Output::of::<Ra>("ra", ra),
            Output::of::<Rq>("rq", rq),
        ],
        regime: Numbers::at("regime", regime, regime_stride_bytes),
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run(
        detail,
        |row| {
            let [feed, radius, major, minor] = row;
            inside::<Feed>(feed)?;
            inside::<CornerRadius>(radius)?;
            inside::<CuttingEdgeAngle>(major)?;
            inside::<MinorCuttingEdgeAngle>(minor)?;
            if 180.0 - major - minor <= 0.0 {
                return Err(TW_CONTRADICTION);
            }
            let found = scalar(row).map_err(|error| tw_status::from(error.kind()))?;
            Ok((
                [
                    found.rt.trade(),
                    found.rz.trade(),
                    found.ra.trade(),
                    found.rq.trade(),
                ],
                regime_number(found.regime),
            ))
        },
        |row| scalar(row).err(),
    )
}

/// The status of a value by the range of its quantity; in words only when asked for.
#[inline]
fn inside<Q: Quantity>(value: f64) -> Result<(), tw_status> {
    if Q::ROW.accepts(value) {
        Ok(())
    } else if value.is_finite() {
        Err(TW_OUT_OF_RANGE)
    } else {
        Err(TW_NOT_FINITE)
    }
}

/// A column to be read, and what it must be.
struct Input {
    name: &'static str,
    row: &'static Row,
    column: *const tw_column,
}

/// A column to be written, and what it must be.
struct Output {
    name: &'static str,
    row: &'static Row,
    column: *const tw_out_column,
}

/// A column of plain numbers to be written, without a count of its own.
#[derive(Clone, Copy)]
struct Numbers {
    name: &'static str,
    data: *mut i32,
    stride: usize,
}

impl Input {
    fn of<Q: Quantity>(name: &'static str, column: *const tw_column) -> Self {
        Self {
            name,
            row: Q::ROW,
            column,
        }
    }

    fn read(&self) -> Result<tw_column, Failure> {
        if self.column.is_null() {
            return Err(Failure::null(self.name));
        }
        // SAFETY: not NULL, and may be read (contract of the header).
        Ok(unsafe { self.column.read_unaligned() })
    }
}

impl Output {
    fn of<Q: Quantity>(name: &'static str, column: *const tw_out_column) -> Self {
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
    const NONE: Self = Self {
        name: "",
        data: std::ptr::null_mut(),
        stride: 0,
    };

    fn at(name: &'static str, data: *mut i32, stride: usize) -> Self {
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
}

/// The unit, unless it is the trade's: its factor is 1.
fn other_than_trade(unit: &'static Unit) -> Option<&'static Unit> {
    (unit.factor() != (1.0, 1.0)).then_some(unit)
}

impl Reader {
    /// The value of a row in the trade's unit.
    #[inline]
    fn value(self, row: usize) -> f64 {
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
struct Job<const I: usize, const O: usize> {
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

impl<const I: usize, const O: usize> Job<I, O> {
    /// Runs `kernel` over all rows; `explain` finds the words for a bad one.
    fn run(
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
            let column = input.read()?;
            read[at] = Some(Span::new(
                input.name,
                column.data.cast(),
                column.stride_bytes,
                column.count,
                size_of::<f64>(),
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
                let unit = unit(input.name, input.row, column.quantity, column.unit)?;
                *reader = Reader {
                    data: column.data.cast(),
                    step: if column.count == 1 {
                        0
                    } else {
                        column.stride_bytes
                    },
                    unit: other_than_trade(unit),
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
        let mut bad: Option<(usize, tw_status)> = None;
        let mut rows_bad = 0_u64;
        for row in 0..rows {
            let (values, regime, status) = match kernel(readers.map(|reader| reader.value(row))) {
                Ok((values, regime)) => (values, regime, TW_OK),
                Err(status) => {
                    bad = bad.or(Some((row, status)));
                    rows_bad += 1;
                    ([f64::NAN; O], 0, status)
                }
            };
            for (writer, value) in writers.iter().zip(values) {
                if let Some(writer) = writer {
                    writer.write(row, value);
                }
            }
            self.regime.write(row, regime);
            self.row_status.write(row, status as i32);
        }
        bad.map(|(row, status)| (row, rows_bad, status))
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
