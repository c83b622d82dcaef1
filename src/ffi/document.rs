//! The document door: a question as JSON text in, its answer as JSON text out.

use std::ffi::{CStr, CString, c_char};
use std::ptr;

use super::put;
use super::status::{Detail, Failure, fail, succeed, tw_error, tw_status};
use crate::document;
use crate::error::Error;

/// Answers a question: JSON text in, JSON text out, both UTF-8 and NUL-ended. The questions and
/// their fields are told by tw_question_names and tw_question_schema; { "plan": { .. } } gives an
/// operation sheet.
///
/// The answer belongs to the caller, who gives it back with tw_text_free. After a failure it is
/// NULL; detail (may be NULL) names the field by its path inside the question.
///
/// Example: tw_answer("{ \"limits\": { \"nominal\": \"30 mm\", \"class\": \"g6\" } }", &answer,
///     NULL); answer has "\"smallest\":\"29.98 mm\"".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_answer(
    question: *const c_char,
    answer: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(answer, "answer", detail, || {
        // SAFETY: NULL or NUL-ended text (contract of the header).
        let bytes = unsafe { bytes_of(question, "question") }?;
        Ok(document::answer(utf8(bytes, "question")?)?)
    })
}

/// As tw_answer, for text of a given length in bytes that need not be NUL-ended. A NUL inside is
/// refused (TW_NUL_IN_TEXT). question may be NULL when length is 0.
///
/// Example: tw_answer_n("{ \"materials\": {} } and more of a buffer", 19, &answer, NULL); answer has
///     "c45".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_answer_n(
    question: *const c_char,
    length: usize,
    answer: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(answer, "answer", detail, || {
        // SAFETY: that many bytes may be read (contract of the header).
        let bytes = unsafe { bytes_of_n(question, length, "question") }?;
        Ok(document::answer(utf8(bytes, "question")?)?)
    })
}

/// Gives back a text that tw_answer or another call returned to keep. NULL is allowed. Once only; a pointer that came
/// from elsewhere is undefined behaviour.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_text_free(text: *mut c_char) {
    if !text.is_null() {
        // SAFETY: made by `into_raw` in `hand_text` (contract of the header).
        drop(unsafe { CString::from_raw(text) });
    }
}

/// Bytes of a NUL-ended text.
///
/// # Safety
/// `text` is NULL or NUL-ended.
pub(super) unsafe fn bytes_of<'a>(text: *const c_char, name: &str) -> Result<&'a [u8], Failure> {
    if text.is_null() {
        return Err(Failure::null(name));
    }
    // SAFETY: the caller's promise.
    Ok(unsafe { CStr::from_ptr(text) }.to_bytes())
}

/// Bytes of a text of a given length, none of them NUL.
///
/// # Safety
/// `text` is NULL, or that many bytes may be read.
pub(super) unsafe fn bytes_of_n<'a>(
    text: *const c_char,
    length: usize,
    name: &str,
) -> Result<&'a [u8], Failure> {
    let bytes: &[u8] = match (text.is_null(), length) {
        (_, 0) => &[],
        (true, _) => return Err(Failure::null(name)),
        (false, _) if isize::try_from(length).is_err() => {
            return Err(Failure::misuse(
                tw_status::TW_MISUSE,
                "length",
                length.to_string(),
                "the length of the text in bytes",
                "check for a negative number that was turned into size_t",
            ));
        }
        // SAFETY: the caller's promise.
        (false, _) => unsafe { std::slice::from_raw_parts(text.cast(), length) },
    };
    match bytes.iter().position(|byte| *byte == 0) {
        None => Ok(bytes),
        Some(place) => Err(Failure::misuse(
            tw_status::TW_NUL_IN_TEXT,
            name,
            format!("a NUL at byte {place}"),
            "text without a NUL",
            "give the length of the text without its end",
        )),
    }
}

/// Bytes as text.
pub(super) fn utf8<'a>(bytes: &'a [u8], name: &str) -> Result<&'a str, Failure> {
    std::str::from_utf8(bytes).map_err(|trouble| {
        Failure::misuse(
            tw_status::TW_BAD_UTF8,
            name,
            format!(
                "bytes that are not UTF-8 from byte {}",
                trouble.valid_up_to()
            ),
            "UTF-8",
            "convert the text before the call",
        )
    })
}

/// Runs `work` and hands its text over; NULL after a failure.
pub(super) fn hand_text(
    place: *mut *mut c_char,
    name: &str,
    detail: *mut tw_error,
    work: impl FnOnce() -> Result<String, Failure>,
) -> tw_status {
    let done = match Detail::check(detail) {
        Err(failure) => Err(failure),
        Ok(()) if place.is_null() => Err(Failure::null(name)),
        Ok(()) => super::guarded(|| {
            CString::new(work()?)
                .map_err(|_| Failure::from(Error::internal("an answer with a NUL in it")))
        }),
    };
    match done {
        Ok(text) => {
            // SAFETY: not NULL, and may be written (contract of the header).
            unsafe { put(place, text.into_raw()) };
            succeed(detail)
        }
        Err(failure) => {
            // SAFETY: NULL or may be written (contract of the header).
            unsafe { put(place, ptr::null_mut()) };
            fail(detail, failure)
        }
    }
}

/// The names of the questions that tw_answer takes, one to a line: to fill a menu.
///
/// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
/// failure the text is NULL.
///
/// Example: tw_question_names(&names, NULL); names has "plan".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_question_names(
    names: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(
        names,
        "names",
        detail,
        || Ok(document::QUESTIONS.join("\n")),
    )
}

/// The JSON Schema (draft 2020-12) of a question by its name, such as "plan": its fields, what
/// each is, which of them are needed, what each takes.
///
/// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
/// failure the text is NULL.
///
/// Example: tw_question_schema("limits", &schema, NULL); schema has "nominal".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_question_schema(
    name: *const c_char,
    schema: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(schema, "schema", detail, || {
        // SAFETY: NULL or NUL-ended text (contract of the header).
        let bytes = unsafe { bytes_of(name, "name") }?;
        Ok(document::schema(utf8(bytes, "name")?)?)
    })
}

/// The keys of the materials of the catalogue, one to a line: to fill a menu. Their figures are the
/// answer of tw_answer to { "materials": { "like": key } }.
///
/// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
/// failure the text is NULL.
///
/// Example: tw_material_keys(&keys, NULL); keys has "c45".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_material_keys(
    keys: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(keys, "keys", detail, || {
        let keys: Vec<String> = crate::shop::material::catalogue()
            .map(|material| material.key().to_owned())
            .collect();
        Ok(keys.join("\n"))
    })
}
