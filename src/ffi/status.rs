//! Status numbers, the error in the caller's memory, versions.

use std::ffi::{CStr, c_char};
use std::mem::{offset_of, size_of};

use crate::error::{Error, ErrorKind};
use crate::quantity::Quantity;

/// What a call returns. The numbers are pinned and will never mean anything else; a later version
/// may return new ones, so treat every number that is not TW_OK as a failure.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(clippy::enum_variant_names)]
pub enum tw_status {
    /// Done; the outputs hold the answer.
    TW_OK = 0,

    /// A number outside the range of its quantity (see tw_range).
    TW_OUT_OF_RANGE = 10,
    /// A number that is NaN or infinite.
    TW_NOT_FINITE = 11,

    /// Text that cannot be read as what it should be.
    TW_UNREADABLE = 20,
    /// A number without its unit.
    TW_MISSING_UNIT = 21,
    /// A unit of another kind of quantity, or an unknown one.
    TW_WRONG_UNIT = 22,
    /// Text that is not UTF-8.
    TW_BAD_UTF8 = 23,
    /// A NUL inside of text whose length was given.
    TW_NUL_IN_TEXT = 24,

    /// A field of a question that is needed and absent.
    TW_MISSING_FIELD = 30,
    /// A field that does not exist there.
    TW_UNKNOWN_FIELD = 31,
    /// A field given twice.
    TW_DUPLICATE_FIELD = 32,
    /// A name or the number of an enumeration that is not known.
    TW_UNKNOWN_NAME = 33,

    /// Values that are each sound but contradict one another.
    TW_CONTRADICTION = 40,
    /// A sound question that this machine, tool or part cannot meet.
    TW_IMPOSSIBLE = 41,
    /// Something this version does not offer.
    TW_NOT_OFFERED = 42,

    /// Another mistake in the use of this interface.
    TW_MISUSE = 50,
    /// A pointer that must not be NULL is.
    TW_NULL_POINTER = 51,
    /// The field struct_size of a tw_error is not set, or cannot be right.
    TW_BAD_STRUCT_SIZE = 52,

    /// Some rows of a column call are bad: these hold NaN, the others their answer.
    TW_ROWS_BAD = 60,
    /// A column of another quantity, with stride 0, or of a count that does not agree.
    TW_BAD_COLUMN = 61,
    /// Columns to be written share memory with columns to be read, or with one another.
    TW_OVERLAP = 62,

    /// A mistake of this library; please report it with the input.
    TW_INTERNAL = 90,
}

use tw_status::*;

/// All statuses with their texts.
const TEXTS: &[(tw_status, &CStr)] = &[
    (TW_OK, c"done"),
    (
        TW_OUT_OF_RANGE,
        c"a number outside the range of its quantity",
    ),
    (TW_NOT_FINITE, c"a number that is not finite"),
    (TW_UNREADABLE, c"text that cannot be read"),
    (TW_MISSING_UNIT, c"a number without its unit"),
    (
        TW_WRONG_UNIT,
        c"a unit of another kind of quantity, or an unknown one",
    ),
    (TW_BAD_UTF8, c"text that is not UTF-8"),
    (TW_NUL_IN_TEXT, c"a NUL inside of text"),
    (TW_MISSING_FIELD, c"a field that is needed and absent"),
    (TW_UNKNOWN_FIELD, c"a field that does not exist there"),
    (TW_DUPLICATE_FIELD, c"a field given twice"),
    (TW_UNKNOWN_NAME, c"a name or number that is not known"),
    (TW_CONTRADICTION, c"values that contradict one another"),
    (
        TW_IMPOSSIBLE,
        c"what this machine, tool or part cannot meet",
    ),
    (TW_NOT_OFFERED, c"what this version does not offer"),
    (TW_MISUSE, c"a mistake in the use of the interface"),
    (TW_NULL_POINTER, c"a NULL where a pointer is needed"),
    (
        TW_BAD_STRUCT_SIZE,
        c"a struct_size that is not set or cannot be right",
    ),
    (TW_ROWS_BAD, c"some rows are bad"),
    (TW_BAD_COLUMN, c"a column that does not fit the call"),
    (TW_OVERLAP, c"columns that share memory"),
    (TW_INTERNAL, c"a mistake of the library"),
];

/// What went wrong, in the memory of the caller: which field, what was given, what was expected, how
/// to put it right.
///
/// Make it ready with tw_error_init, once; it may then be used for any number of calls, one at a
/// time. After a success its status is TW_OK and its texts are empty.
///
/// The texts are UTF-8, always NUL-ended, and cut at a character, three dots behind, when they do
/// not fit; their full lengths in bytes, without the NUL, stand beside them. A struct_size smaller
/// than that of this version is filled as far as it goes and never written beyond. Nothing in it
/// needs to be freed.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct tw_error {
    /// Size of this struct in the caller's program; tw_error_init sets it.
    pub struct_size: u32,
    /// The status that the call returned.
    pub status: i32,
    /// Of a column call: the first bad row, counted from 0. Else 0.
    pub row: u64,
    /// Which argument or field; in a document its path, as in tool.corner_radius.
    pub field: [c_char; 64],
    /// What was given.
    pub given: [c_char; 64],
    /// What was expected instead.
    pub expected: [c_char; 128],
    /// How to put it right.
    pub remedy: [c_char; 192],
    /// Full length of field.
    pub field_length: u32,
    /// Full length of given.
    pub given_length: u32,
    /// Full length of expected.
    pub expected_length: u32,
    /// Full length of remedy.
    pub remedy_length: u32,
    /// Of a column call that returned TW_ROWS_BAD: how many rows are bad. Else 0.
    pub rows_bad: u64,
    /// Of a column call that returned TW_ROWS_BAD: the status of the first bad row. Else 0.
    pub row_status: i32,
    /// Zero.
    pub reserved: [u32; 5],
}

/// The largest struct_size that is believed: what is larger was never set.
pub(super) const LARGEST_SIZE: usize = 4096;

/// The smallest one: it holds the size and the status.
const LEAST_SIZE: usize = offset_of!(tw_error, row);

impl From<ErrorKind> for tw_status {
    fn from(kind: ErrorKind) -> Self {
        match kind {
            ErrorKind::OutOfRange => TW_OUT_OF_RANGE,
            ErrorKind::NotFinite => TW_NOT_FINITE,
            ErrorKind::Unreadable => TW_UNREADABLE,
            ErrorKind::MissingUnit => TW_MISSING_UNIT,
            ErrorKind::WrongUnit => TW_WRONG_UNIT,
            ErrorKind::MissingField => TW_MISSING_FIELD,
            ErrorKind::UnknownField => TW_UNKNOWN_FIELD,
            ErrorKind::DuplicateField => TW_DUPLICATE_FIELD,
            ErrorKind::UnknownName => TW_UNKNOWN_NAME,
            ErrorKind::Contradiction => TW_CONTRADICTION,
            ErrorKind::Impossible => TW_IMPOSSIBLE,
            ErrorKind::NotOffered => TW_NOT_OFFERED,
            ErrorKind::Misuse => TW_MISUSE,
            ErrorKind::Internal => TW_INTERNAL,
        }
    }
}

/// A refusal that is not in words yet: who tells it, of which numbers and of which argument ("" is
/// the quantity itself). It is made without a call, so that a door whose values are sound saves no
/// register for it.
#[derive(Clone, Copy)]
pub(super) struct Unsaid {
    tell: fn(f64, f64, &'static str) -> Error,
    numbers: [f64; 2],
    argument: &'static str,
}

impl Unsaid {
    /// A value out of the range of its quantity.
    #[inline]
    pub(super) fn range<Q: Quantity>(value: f64, argument: &'static str) -> Self {
        Self {
            tell: |value, _, argument| match (Q::ROW.refuse(value), argument) {
                (error, "") => error,
                (error, argument) => error.at(argument),
            },
            numbers: [value, 0.0],
            argument,
        }
    }

    /// Two numbers that a kernel refuses together, told by it.
    #[inline]
    pub(super) fn together(numbers: [f64; 2], tell: fn(f64, f64, &'static str) -> Error) -> Self {
        Self {
            tell,
            numbers,
            argument: "",
        }
    }
}

impl From<Unsaid> for Error {
    #[cold]
    #[inline(never)]
    fn from(unsaid: Unsaid) -> Self {
        (unsaid.tell)(unsaid.numbers[0], unsaid.numbers[1], unsaid.argument)
    }
}

/// An error on its way out, with the status it leaves by; small, so that a call that goes well
/// carries its answer in registers.
pub(super) enum Failure {
    /// In words.
    Told(Box<Parts>),
    /// To be put into words at the end.
    Unsaid(Unsaid),
}

pub(super) struct Parts {
    status: tw_status,
    error: Error,
    /// First bad row, number of bad rows, status of the first.
    rows: (u64, u64, i32),
}

impl From<Error> for Failure {
    #[cold]
    #[inline(never)]
    fn from(error: Error) -> Self {
        Self::new(error.kind().into(), error, (0, 0, 0))
    }
}

impl From<Unsaid> for Failure {
    #[inline]
    fn from(unsaid: Unsaid) -> Self {
        Self::Unsaid(unsaid)
    }
}

impl Failure {
    #[cold]
    fn new(status: tw_status, error: Error, rows: (u64, u64, i32)) -> Self {
        Self::Told(Box::new(Parts {
            status,
            error,
            rows,
        }))
    }

    /// The status it leaves by.
    #[cold]
    pub(super) fn status(&self) -> tw_status {
        match self {
            Self::Told(parts) => parts.status,
            Self::Unsaid(unsaid) => Error::from(*unsaid).kind().into(),
        }
    }

    /// In words, with the status it leaves by.
    #[cold]
    fn told(self) -> Box<Parts> {
        match self {
            Self::Told(parts) => parts,
            Self::Unsaid(unsaid) => {
                let error = Error::from(unsaid);
                Box::new(Parts {
                    status: error.kind().into(),
                    error,
                    rows: (0, 0, 0),
                })
            }
        }
    }

    /// Bad rows: the words of the first; which it is, how many there are, the status of the first.
    #[cold]
    pub(super) fn rows(error: Error, rows: (u64, u64, i32)) -> Self {
        Self::new(TW_ROWS_BAD, error, rows)
    }

    /// A mistake of the caller, with a status of its own.
    #[cold]
    pub(super) fn misuse(
        status: tw_status,
        field: &str,
        given: impl Into<String>,
        expected: impl Into<String>,
        remedy: &str,
    ) -> Self {
        let error = Error::new(ErrorKind::Misuse, field, given, expected, remedy);
        Self::new(status, error, (0, 0, 0))
    }

    #[cold]
    pub(super) fn null(field: &str) -> Self {
        Self::misuse(
            TW_NULL_POINTER,
            field,
            "NULL",
            "a pointer",
            "pass the address of what is read or written",
        )
    }

    #[cold]
    #[inline(never)]
    pub(super) fn no_output() -> Self {
        Self::misuse(
            TW_NULL_POINTER,
            "",
            "NULL for every output",
            "a pointer for at least one output",
            "pass the address of the answer that is wanted",
        )
    }

    #[cold]
    #[inline(never)]
    fn bad_size() -> Self {
        Self::misuse(
            TW_BAD_STRUCT_SIZE,
            "detail.struct_size",
            "a size that was never set",
            size_of::<tw_error>().to_string(),
            "call tw_error_init once before the first use",
        )
    }

    #[cold]
    #[inline(never)]
    pub(super) fn panicked() -> Self {
        Error::internal("a panic, caught").into()
    }
}

/// The caller's tw_error, as far as it goes.
#[derive(Clone, Copy)]
pub(super) struct Detail {
    place: *mut u8,
    size: usize,
}

impl Detail {
    /// The detail at that place, with the size it says; NULL is a detail of no size.
    #[inline]
    pub(super) fn at(detail: *mut tw_error) -> Self {
        let place = detail.cast::<u8>();
        if place.is_null() {
            return Self { place, size: 0 };
        }
        // SAFETY: a detail that is not NULL starts with its size (contract of the header).
        let size = unsafe { place.cast::<u32>().read_unaligned() } as usize;
        Self { place, size }
    }

    #[inline]
    pub(super) fn is_sound(self) -> bool {
        self.place.is_null() || (LEAST_SIZE..=LARGEST_SIZE).contains(&self.size)
    }

    /// Checks the size.
    #[inline]
    pub(super) fn check(detail: *mut tw_error) -> Result<(), Failure> {
        if Self::at(detail).is_sound() {
            Ok(())
        } else {
            Err(Failure::bad_size())
        }
    }

    /// Writes a number if all of it lies inside.
    #[inline]
    fn number<T>(self, offset: usize, value: T) {
        if offset + size_of::<T>() <= self.size {
            // SAFETY: inside of the size that the caller declared.
            unsafe { self.place.add(offset).cast::<T>().write_unaligned(value) }
        }
    }

    /// Writes text into its field, as far as the field and the struct go, NUL-ended.
    fn text(self, offset: usize, field: usize, text: &str) {
        let room = field.min(self.size.saturating_sub(offset));
        if room == 0 {
            return;
        }
        // What is cut says so.
        let dots = match text.len() < room || room <= 2 * CUT.len() {
            true => "",
            false => CUT,
        };
        let mut end = text.len().min(room - 1 - dots.len());
        while !text.is_char_boundary(end) {
            end -= 1;
        }
        // A NUL inside would hide the rest.
        let clean = text.as_bytes()[..end].iter().map(|byte| match byte {
            0 => b' ',
            other => *other,
        });
        let rest = std::iter::repeat_n(0, room - end - dots.len());
        for (at, byte) in clean.chain(dots.bytes()).chain(rest).enumerate() {
            // SAFETY: `at` < `room`, which lies inside of the size that the caller declared.
            unsafe { self.place.add(offset + at).write(byte) }
        }
    }
}

/// Stands behind a text that had to be cut.
const CUT: &str = "...";

fn length(text: &str) -> u32 {
    u32::try_from(text.len()).unwrap_or(u32::MAX)
}

/// Writes the success of a call.
#[inline]
pub(super) fn succeed(detail: *mut tw_error) -> tw_status {
    if detail.is_null() {
        TW_OK
    } else {
        clean(detail)
    }
}

#[inline(never)]
extern "C" fn clean(detail: *mut tw_error) -> tw_status {
    write(Detail::at(detail), TW_OK, ["", "", "", ""], (0, 0, 0));
    TW_OK
}

/// Writes the failure of a call.
#[inline]
pub(super) fn fail(detail: *mut tw_error, failure: Failure) -> tw_status {
    match failure {
        Failure::Told(parts) => fail_told(detail, parts),
        // In registers, so that nothing has to lie on the stack of the door.
        Failure::Unsaid(Unsaid {
            tell,
            numbers: [a, b],
            argument,
        }) => fail_unsaid(detail, tell, a, b, argument),
    }
}

/// No output: there is nothing else to write to.
///
/// `extern "C"`, as the failures below: what cannot unwind needs no frame in the door that ends in it.
#[cold]
#[inline(never)]
pub(super) extern "C" fn fail_without_output(detail: *mut tw_error) -> tw_status {
    fail(detail, Failure::no_output())
}

/// A detail of a bad size: it is not written to.
#[cold]
#[inline(never)]
pub(super) extern "C" fn fail_by_size() -> tw_status {
    Failure::bad_size().status()
}

#[cold]
#[inline(never)]
#[allow(improper_ctypes_definitions)]
extern "C" fn fail_unsaid(
    detail: *mut tw_error,
    tell: fn(f64, f64, &'static str) -> Error,
    a: f64,
    b: f64,
    argument: &'static str,
) -> tw_status {
    fail_told(detail, Failure::from(tell(a, b, argument)).told())
}

#[cold]
#[inline(never)]
extern "C" fn fail_told(detail: *mut tw_error, parts: Box<Parts>) -> tw_status {
    let Parts {
        status,
        error,
        rows,
    } = &*parts;
    let detail = Detail::at(detail);
    // A detail of a bad size is not written.
    if detail.size > 0 && detail.is_sound() {
        let texts = [
            error.field(),
            error.given(),
            error.expected(),
            error.remedy(),
        ];
        write(detail, *status, texts, *rows);
    }
    *status
}

fn write(detail: Detail, status: tw_status, texts: [&str; 4], rows: (u64, u64, i32)) {
    let [field, given, expected, remedy] = texts;
    detail.number(offset_of!(tw_error, status), status as i32);
    detail.number(offset_of!(tw_error, row), rows.0);
    detail.text(offset_of!(tw_error, field), 64, field);
    detail.text(offset_of!(tw_error, given), 64, given);
    detail.text(offset_of!(tw_error, expected), 128, expected);
    detail.text(offset_of!(tw_error, remedy), 192, remedy);
    detail.number(offset_of!(tw_error, field_length), length(field));
    detail.number(offset_of!(tw_error, given_length), length(given));
    detail.number(offset_of!(tw_error, expected_length), length(expected));
    detail.number(offset_of!(tw_error, remedy_length), length(remedy));
    detail.number(offset_of!(tw_error, rows_bad), rows.1);
    detail.number(offset_of!(tw_error, row_status), rows.2);
    detail.number(offset_of!(tw_error, reserved), [0_u32; 5]);
}

/// A status in words: static text, never NULL, not to be freed. A number that is no status of this
/// version has a text that says so.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn tw_status_text(status: i32) -> *const c_char {
    TEXTS
        .iter()
        .find(|(known, _)| *known as i32 == status)
        .map_or(c"a status that this version does not know", |(_, text)| {
            *text
        })
        .as_ptr()
}

/// The version of the library that is running, as in 1.2.3: static text, not to be freed. Compare
/// with TW_VERSION, that of the header.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn tw_version() -> *const c_char {
    concat!(env!("CARGO_PKG_VERSION"), "\0").as_ptr().cast()
}
