//! The dial of a cross slide: from a size to its mark, and back.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::advice::mark;
use crate::error::{Error, ErrorKind};
use crate::quantity::dial::{Divisions, DivisionsPerTurn};
use crate::quantity::{Diameter, Division, Engraved, Quantity, Travel};
use crate::shop::dial::{Dial, DialReads};

/// What the figures on a dial count. Passed as int32_t; another number is refused.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_dial_reads {
    /// The change of the diameter of the work: twice the travel of the slide.
    TW_DIAL_READS_DIAMETER = 1,
    /// The change of its radius: the travel of the slide.
    TW_DIAL_READS_RADIUS = 2,
}

fn reads_of(number: i32) -> Result<DialReads, Error> {
    const DIAMETER: i32 = tw_dial_reads::TW_DIAL_READS_DIAMETER as i32;
    const RADIUS: i32 = tw_dial_reads::TW_DIAL_READS_RADIUS as i32;
    match number {
        DIAMETER => Ok(DialReads::Diameter),
        RADIUS => Ok(DialReads::Radius),
        other => Err(Error::new(
            ErrorKind::UnknownName,
            "reads",
            other.to_string(),
            "TW_DIAL_READS_DIAMETER (1) or TW_DIAL_READS_RADIUS (2)",
            "pass one of the names of enum tw_dial_reads",
        )),
    }
}

fn dial_diameter_of(
    zero_at: tw_diameter,
    division: tw_division,
    divisions: i32,
    reads: DialReads,
    divisions_per_turn: DivisionsPerTurn,
) -> Result<Diameter, Error> {
    let zero_at = zero_at.named("zero_at")?;
    let dial = Dial::new(reads, division.read()?, divisions_per_turn);
    dial.diameter_at(zero_at, Divisions::new(i64::from(divisions))?)
}

/// The diameter at a mark of a cross slide's dial that was set to zero at a diameter: zero_at less
/// divisions times what one of them takes off the diameter. divisions is whole turns of the handle
/// times divisions_per_turn, and the mark; positive into the metal. Outside turning. The way back:
/// tw_dial_mark_for.
///
/// Other arguments as of tw_dial_mark_for. Refused: more divisions than reach the middle of the work
/// (TW_CONTRADICTION), or than ten million either way (TW_OUT_OF_RANGE). detail may be NULL. After a
/// failure the output is NaN.
///
/// Source: geometry: twice the travel of a slide square to the axis.
/// Example: tw_dial_diameter(tw_diameter_inch(1.375), tw_division_inch(0.002), 93,
///     TW_DIAL_READS_DIAMETER, 100, &diameter, NULL); tw_diameter_as_inch(diameter) is 1.189.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_dial_diameter(
    zero_at: tw_diameter,
    division: tw_division,
    divisions: i32,
    reads: i32,
    divisions_per_turn: i32,
    diameter: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter.is_null(),
        || {
            let (reads, per_turn) = (reads_of(reads)?, DivisionsPerTurn::of(divisions_per_turn)?);
            Ok(tw_diameter::from(dial_diameter_of(
                zero_at, division, divisions, reads, per_turn,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter, answer) },
    )
}

/// tw_dial_diameter for every row.
///
/// Columns, see the first page: zero_at and division are read, diameter is written. divisions is
/// read too: one int32_t a row, divisions_stride_bytes apart (at least 4). reads and
/// divisions_per_turn are one number for all rows; one that is refused fails the whole call.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail
/// may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_dial_diameter_column(
    zero_at: *const tw_column,
    division: *const tw_column,
    divisions: *const i32,
    divisions_stride_bytes: usize,
    reads: i32,
    divisions_per_turn: i32,
    diameter: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("zero_at", zero_at),
            Input::of::<Division>("division", division),
            Input::whole("divisions", divisions, divisions_stride_bytes),
        ),
        outputs: [Output::of::<Diameter>("diameter", diameter)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok((reads_of(reads)?, DivisionsPerTurn::of(divisions_per_turn)?))) {
        Err(failure) => job.refuse(detail, failure),
        Ok((reads, per_turn)) => job.run_checked(detail, |[zero_at, division, divisions]| {
            let found = dial_diameter_of(
                tw_diameter { mm: zero_at },
                tw_division { mm: division },
                divisions as i32,
                reads,
                per_turn,
            )?;
            Ok(([found.trade()], 0))
        }),
    }
}

fn dial_mark_for_of(
    zero_at: tw_diameter,
    target: tw_diameter,
    division: tw_division,
    reads: DialReads,
    divisions_per_turn: DivisionsPerTurn,
) -> Result<(Diameter, Engraved, i32), Error> {
    let zero_at = zero_at.named("zero_at")?;
    let target = target.named("target")?;
    let division = division.read()?;
    let dial = Dial::new(reads, division, divisions_per_turn);
    let found = mark::choose(&dial, zero_at, target, None)?;
    Ok((
        found.mark.size,
        found.mark.reading.shows(),
        found.mark.reading.divisions().count() as i32,
    ))
}

/// The last mark of a cross slide's dial that leaves metal on the way from the diameter at which
/// it was set to zero to a target: how many whole divisions it lies from zero, positive into the
/// metal, the diameter there, not below the target, and what is engraved at it. Whole turns of
/// the handle are divisions over divisions_per_turn, rounded down; the rest is the mark. A target
/// that a mark meets within 1e-9 mm is that mark. Outside turning; come to the mark turning
/// inwards, for backlash is not in it.
///
/// division is what one mark says, reads (a number of enum tw_dial_reads) what the dial counts:
/// the same turn takes twice as much off the diameter as a dial of the radius says.
/// divisions_per_turn is 2 to 10000. Refused (TW_OUT_OF_RANGE): more than ten million divisions.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure divisions is 0 and
/// the other outputs are NaN.
///
/// Source: geometry: twice the travel of a slide square to the axis.
/// Example: tw_dial_mark_for(tw_diameter_millimeter(40), tw_diameter_millimeter(27.6),
///     tw_division_millimeter(0.05), TW_DIAL_READS_RADIUS, 80, &size, &shows, &divisions, NULL);
///     size.mm is 27.60, shows.mm is 2.200 and divisions is 124.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_dial_mark_for(
    zero_at: tw_diameter,
    target: tw_diameter,
    division: tw_division,
    reads: i32,
    divisions_per_turn: i32,
    size: *mut tw_diameter,
    shows: *mut tw_shows,
    divisions: *mut i32,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(size.is_null() && shows.is_null() && divisions.is_null()),
        || {
            let reads = reads_of(reads)?;
            let divisions_per_turn = DivisionsPerTurn::of(divisions_per_turn)?;
            let (size_is, shows_is, divisions_is) =
                dial_mark_for_of(zero_at, target, division, reads, divisions_per_turn)?;
            Ok((
                tw_diameter::from(size_is),
                tw_shows::from(shows_is),
                divisions_is,
            ))
        },
        |(size_is, shows_is, divisions_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(size, size_is);
                put(shows, shows_is);
                put(divisions, divisions_is);
            }
        },
    )
}

/// tw_dial_mark_for for every row.
///
/// Columns, see the first page: zero_at, target and division are read, size and shows are
/// written, each may be NULL unless both are. reads is one number for all rows; one that is
/// refused fails the whole call. divisions_per_turn is one number for all rows; one that is
/// refused fails the whole call. divisions may be NULL; else one int32_t a row (0 for a bad row),
/// divisions_stride_bytes apart (at least 4). row_status likewise. detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_dial_mark_for_column(
    zero_at: *const tw_column,
    target: *const tw_column,
    division: *const tw_column,
    reads: i32,
    divisions_per_turn: i32,
    size: *const tw_out_column,
    shows: *const tw_out_column,
    divisions: *mut i32,
    divisions_stride_bytes: usize,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("zero_at", zero_at),
            Input::of::<Diameter>("target", target),
            Input::of::<Division>("division", division),
        ),
        outputs: [
            Output::of::<Diameter>("size", size),
            Output::of::<Engraved>("shows", shows),
        ],
        regime: Numbers::at("divisions", divisions, divisions_stride_bytes),
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok((reads_of(reads)?, DivisionsPerTurn::of(divisions_per_turn)?))) {
        Err(failure) => job.refuse(detail, failure),
        Ok((reads, divisions_per_turn)) => {
            job.run_checked(detail, |[zero_at, target, division]| {
                let (size, shows, divisions) = dial_mark_for_of(
                    tw_diameter { mm: zero_at },
                    tw_diameter { mm: target },
                    tw_division { mm: division },
                    reads,
                    divisions_per_turn,
                )?;
                Ok(([size.trade(), shows.trade()], divisions))
            })
        }
    }
}

fn travel_per_turn_of(
    division: tw_division,
    reads: DialReads,
    divisions_per_turn: DivisionsPerTurn,
) -> Result<Travel, Error> {
    let division = division.read()?;
    let dial = Dial::new(reads, division, divisions_per_turn);
    Ok(dial.travel_per_turn())
}

/// How far a slide travels in one turn of its handle, as tw_handwheel_rate wants it:
/// divisions_per_turn times division, half of that where the dial counts the diameter. Arguments
/// as of tw_dial_mark_for.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry: twice the travel of a slide square to the axis.
/// Example: tw_travel_per_turn(tw_division_millimeter(0.04), TW_DIAL_READS_DIAMETER, 100, &travel,
///     NULL); travel.mm is 2.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_travel_per_turn(
    division: tw_division,
    reads: i32,
    divisions_per_turn: i32,
    travel: *mut tw_travel,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !travel.is_null(),
        || {
            let reads = reads_of(reads)?;
            let divisions_per_turn = DivisionsPerTurn::of(divisions_per_turn)?;
            Ok(tw_travel::from(travel_per_turn_of(
                division,
                reads,
                divisions_per_turn,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(travel, answer) },
    )
}

/// tw_travel_per_turn for every row.
///
/// Columns, see the first page: division is read, travel is written. reads is one number for all
/// rows; one that is refused fails the whole call. divisions_per_turn is one number for all rows;
/// one that is refused fails the whole call. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_travel_per_turn_column(
    division: *const tw_column,
    reads: i32,
    divisions_per_turn: i32,
    travel: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Division>("division", division),),
        outputs: [Output::of::<Travel>("travel", travel)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok((reads_of(reads)?, DivisionsPerTurn::of(divisions_per_turn)?))) {
        Err(failure) => job.refuse(detail, failure),
        Ok((reads, divisions_per_turn)) => job.run_checked(detail, |[division]| {
            let found =
                travel_per_turn_of(tw_division { mm: division }, reads, divisions_per_turn)?;
            Ok(([found.trade()], 0))
        }),
    }
}
