//! The document door: a question as JSON text in, its answer as JSON text out.

use std::ffi::{CStr, CString, c_char};
use std::ptr;

use super::put;
use super::status::{Detail, Failure, fail, succeed, tw_error, tw_status};
use crate::document;
use crate::error::Error;

/// Answers a question: JSON text in, JSON text out, both UTF-8 and NUL-ended. The questions and
/// their fields are described with the Rust library; { "plan": { .. } } gives an operation sheet.
///
/// The answer belongs to the caller, who gives it back with tw_text_free. After a failure it is
/// NULL; detail (may be NULL) names the field by its path inside the question.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_answer(
    question: *const c_char,
    answer: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    reply(answer, detail, || {
        if question.is_null() {
            return Err(Failure::null("question"));
        }
        // SAFETY: NUL-ended text (contract of the header).
        Ok(unsafe { CStr::from_ptr(question) }.to_bytes())
    })
}

/// As tw_answer, for text of a given length in bytes that need not be NUL-ended. A NUL inside is
/// refused (TW_NUL_IN_TEXT). question may be NULL when length is 0.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_answer_n(
    question: *const c_char,
    length: usize,
    answer: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    reply(answer, detail, || {
        let bytes: &[u8] = match (question.is_null(), length) {
            (_, 0) => &[],
            (true, _) => return Err(Failure::null("question")),
            (false, _) if isize::try_from(length).is_err() => {
                return Err(Failure::misuse(
                    tw_status::TW_MISUSE,
                    "length",
                    length.to_string(),
                    "the length of the text in bytes",
                    "check for a negative number that was turned into size_t",
                ));
            }
            // SAFETY: that many bytes may be read (contract of the header).
            (false, _) => unsafe { std::slice::from_raw_parts(question.cast(), length) },
        };
        match bytes.iter().position(|byte| *byte == 0) {
            None => Ok(bytes),
            Some(place) => Err(Failure::misuse(
                tw_status::TW_NUL_IN_TEXT,
                "question",
                format!("a NUL at byte {place}"),
                "text without a NUL",
                "give the length of the text without its end",
            )),
        }
    })
}

/// Gives back the text that tw_answer returned. NULL is allowed. Once only; a pointer that came
/// from elsewhere is undefined behaviour.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_text_free(text: *mut c_char) {
    if !text.is_null() {
        // SAFETY: made by `into_raw` in `reply` (contract of the header).
        drop(unsafe { CString::from_raw(text) });
    }
}

fn reply<'a>(
    answer: *mut *mut c_char,
    detail: *mut tw_error,
    question: impl FnOnce() -> Result<&'a [u8], Failure>,
) -> tw_status {
    let done = match Detail::check(detail) {
        Err(failure) => Err(failure),
        Ok(()) if answer.is_null() => Err(Failure::null("answer")),
        Ok(()) => super::guarded(|| {
            let text = std::str::from_utf8(question()?).map_err(|trouble| {
                Failure::misuse(
                    tw_status::TW_BAD_UTF8,
                    "question",
                    format!(
                        "bytes that are not UTF-8 from byte {}",
                        trouble.valid_up_to()
                    ),
                    "UTF-8",
                    "convert the text before the call",
                )
            })?;
            let reply = document::answer(text)?;
            CString::new(reply)
                .map_err(|_| Failure::from(Error::internal("an answer with a NUL in it")))
        }),
    };
    match done {
        Ok(reply) => {
            // SAFETY: not NULL, and may be written (contract of the header).
            unsafe { put(answer, reply.into_raw()) };
            succeed(detail)
        }
        Err(failure) => {
            // SAFETY: NULL or may be written (contract of the header).
            unsafe { put(answer, ptr::null_mut()) };
            fail(detail, failure)
        }
    }
}
