/*
 * turnwright.h: turning on a manual lathe, from C99 and C++11.
 *
 * Generated from src/ffi; do not edit. This page is the whole contract.
 *
 *     #include <turnwright.h>
 *
 *     tw_error error;
 *     tw_spindle_speed speed;
 *     tw_error_init(&error);
 *     if (tw_spindle_speed_for(tw_cutting_speed_meter_per_minute(28.0), tw_diameter_millimeter(38.0),
 *                              &speed, &error) != TW_OK) {
 *         fprintf(stderr, "%s: %s\n", error.field, error.remedy);
 *     }
 *
 * THREE DOORS
 *   Scalar calls, tw_spindle_speed_for and others: one answer, for programs in C and C++.
 *   Column calls, tw_..._column: many rows; pointers, sizes and integers only, for spreadsheets,
 *   data engines and languages that cannot pass a struct by value.
 *   Documents, tw_answer: JSON text in, JSON text out, for everything compound, such as a plan.
 *   A field of theirs that is null counts as left out.
 *   A plan may also be kept open, tw_plan_open, read step by step, tw_plan_step, and carried on after
 *   a measurement, tw_plan_after. tw_question_names, tw_question_schema and tw_material_keys say what
 *   may be asked and of what; examples/c/job.json is an invented job.
 *
 * UNITS
 *   Each quantity is a struct of one double whose field names its unit: tw_diameter { mm },
 *   tw_feed { mm_per_rev }, tw_cutting_speed { m_per_min }. So the compiler refuses a radius for a
 *   diameter and a bare number for either. At the end of this file stand makers and readers for
 *   every unit: tw_diameter_inch(1.5), tw_diameter_as_inch(d), and for fractions
 *   tw_diameter_inch_fraction(5, 8). The unit of a name never changes. tw_value_of_text reads text
 *   with a unit of its own.
 *   Never declare a tw_ struct as a plain double, in no language: on some platforms the two travel
 *   in different registers, and the call reads garbage. Where structs cannot be passed by value, use
 *   the column calls.
 *   Every value that comes in is checked: finite, and inside the range of its quantity (tw_range,
 *   enum tw_quantity); the springs of chuck and centre may be infinite besides, that is rigid, where
 *   a call says so. What a call works out is finite, and may lie outside of that range.
 *
 * STATUS
 *   Calls return a tw_status; TW_OK is 0, all else is a failure. The numbers are pinned; a later
 *   version may return new ones. No number of an answer means failure: look at the status.
 *   After a failure outputs hold NaN, NULL or 0, never what was there before; only a column call
 *   that cannot trust its memory (NULL, stride, overlap) leaves all of it alone.
 *   Compilers that can, warn when a status is ignored; define TW_CHECK as nothing before the
 *   #include to have no such warning.
 *   Enumerations are passed as int32_t; a number that is none of theirs is refused.
 *
 * DETAIL
 *   The last argument, tw_error *detail, receives in words what went wrong: which field, what was
 *   given, what was expected, how to put it right. It lies in the caller's memory and is made ready
 *   with tw_error_init. NULL: no words wanted. There is no "last error" to ask for later.
 *
 * NULL
 *   detail may be NULL. An output may be NULL when it is not wanted, but not all of them
 *   (TW_NULL_POINTER). tw_text_free and tw_plan_free take NULL; a plan that is NULL has 0 steps.
 *   Every other NULL is refused with TW_NULL_POINTER.
 *   Any other pointer must be good for what is read or written there; that cannot be checked.
 *
 * SOURCES AND EXAMPLES
 *   Each scalar call says where its formula comes from. "From memory": the page was not open when it
 *   was written down. "Derived": worked out anew. A column call has the source of its scalar call.
 *   An example is one call and what comes of it, rounded to the digits that are written; its outputs
 *   are variables with the names and types of the prototype, its plan is that of examples/c/job.json.
 *   Tests compile and run every one of them.
 *
 * COLUMNS
 *   A tw_column is data, stride in bytes, count, quantity and unit; it is passed by address. A
 *   column of another quantity is refused (TW_BAD_COLUMN), one in another unit of the same kind is
 *   converted, so that mm and inch mix in one call. count 1 is a constant for all rows; a stride of
 *   0 is refused; strides do not go backwards. The rows are those of the outputs; 0 rows are fine
 *   and touch nothing. Doubles need not be aligned. What is written may lie between what is read (as
 *   fields of one array of structs), but not on it (TW_OVERLAP).
 *   A bad row holds NaN and has its status in row_status; good rows go on. The call then returns
 *   TW_ROWS_BAD, and detail tells of the first bad row and how many there are. However many rows,
 *   nothing is allocated for the good ones; for a bad one a few words, given back at once. A call
 *   refused as a whole writes NaN and its status to every row, row_status only where the outputs
 *   agree on how many rows there are. Words about a column in inch units are in inch.
 *   A row's answer is the same, to the last digit, as that of the scalar call.
 *   Whole numbers that differ from row to row are int32_t without quantity and unit: a pointer, and
 *   a stride in bytes of at least 4; there are as many as rows.
 *
 * TEXT
 *   UTF-8, NUL-ended, decimal point whatever the locale. Calls that end in _n take a length instead.
 *
 * THREADS
 *   Every call may be made from any thread at any time; nothing is shared, remembered or set up at
 *   the first call. Memory that a call writes must not be used by another thread meanwhile. A plan
 *   never changes while it is open: any number of threads may read it.
 *
 * OWNERSHIP
 *   The library keeps no pointer after a call. What it returns to keep (a text, a plan) belongs to
 *   the caller and is given back with the function named there, never with free(): tw_text_free,
 *   tw_plan_free. The latter sets the caller's pointer to NULL, and every call refuses a plan that
 *   is NULL; a copy of the pointer must not be used any more. Texts inside of a tw_step belong to its
 *   plan. Static text (tw_version, tw_status_text) belongs to the library.
 *
 * VERSIONS
 *   TW_VERSION, TW_VERSION_MAJOR, _MINOR, _PATCH and TW_VERSION_AT_LEAST are those of this header,
 *   tw_version() that of the library that runs. tw_error, tw_step, tw_expected and tw_surface may grow at
 *   their end: struct_size tells each side what the other knows; one that cannot be right is refused
 *   (TW_BAD_STRUCT_SIZE). Before 1.0 a new MINOR may change or remove a call, from 1.0 only a new
 *   MAJOR; anything else only adds. The numbers of enumerations, quantities and units never change
 *   their meaning.
 *
 * FLOATING POINT
 *   The usual environment is expected: round to nearest, traps masked, no flush to zero. Calls do
 *   not change it, but may leave any of its flags raised, whatever they answer. Compile the makers
 *   at the end of this file without -ffast-math if they are to agree with the library to the last
 *   digit.
 *
 * PANICS
 *   A mistake of this library is caught and returned as TW_INTERNAL; it does not unwind into C. One
 *   line about it may appear on the standard error stream.
 *
 * LINKING
 *   cargo build --release --features capi leaves libturnwright.so (.dylib, .dll) and
 *   libturnwright.a (.lib) in target/release.
 *   Shared: -lturnwright. Static on Linux: libturnwright.a -lpthread -ldl -lm; on macOS:
 *   libturnwright.a -liconv -lSystem; on Windows add ws2_32 userenv ntdll bcrypt advapi32.
 *   The platform's own C calling convention.
 */

#ifndef TURNWRIGHT_H
#define TURNWRIGHT_H

#include <math.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

/* The version of this header. */
#define TW_VERSION "0.1.0"
#define TW_VERSION_MAJOR 0
#define TW_VERSION_MINOR 1
#define TW_VERSION_PATCH 0
#define TW_VERSION_AT_LEAST(major, minor, patch)                               \
    (TW_VERSION_MAJOR > (major) ||                                             \
     (TW_VERSION_MAJOR == (major) &&                                           \
      (TW_VERSION_MINOR > (minor) ||                                           \
       (TW_VERSION_MINOR == (minor) && TW_VERSION_PATCH >= (patch)))))

/* Warns when a result is ignored. Define it as nothing to have no such warning. */
#ifndef TW_CHECK
#if defined(__GNUC__) || defined(__clang__)
#define TW_CHECK __attribute__((warn_unused_result))
#else
#define TW_CHECK
#endif
#endif

// What a call returns. The numbers are pinned and will never mean anything else; a later version
// may return new ones, so treat every number that is not TW_OK as a failure.
enum tw_status
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Done; the outputs hold the answer.
    TW_OK = 0,
    // A number outside the range of its quantity (see tw_range).
    TW_OUT_OF_RANGE = 10,
    // A number that is NaN or infinite.
    TW_NOT_FINITE = 11,
    // Text that cannot be read as what it should be.
    TW_UNREADABLE = 20,
    // A number without its unit.
    TW_MISSING_UNIT = 21,
    // A unit of another kind of quantity, or an unknown one.
    TW_WRONG_UNIT = 22,
    // Text that is not UTF-8.
    TW_BAD_UTF8 = 23,
    // A NUL inside of text whose length was given.
    TW_NUL_IN_TEXT = 24,
    // A field of a question that is needed and absent.
    TW_MISSING_FIELD = 30,
    // A field that does not exist there.
    TW_UNKNOWN_FIELD = 31,
    // A field given twice.
    TW_DUPLICATE_FIELD = 32,
    // A name or the number of an enumeration that is not known.
    TW_UNKNOWN_NAME = 33,
    // Values that are each sound but contradict one another.
    TW_CONTRADICTION = 40,
    // A sound question that this machine, tool or part cannot meet.
    TW_IMPOSSIBLE = 41,
    // Something this version does not offer.
    TW_NOT_OFFERED = 42,
    // Another mistake in the use of this interface.
    TW_MISUSE = 50,
    // A pointer that must not be NULL is.
    TW_NULL_POINTER = 51,
    // The field struct_size of a tw_error is not set, or cannot be right.
    TW_BAD_STRUCT_SIZE = 52,
    // Some rows of a column call are bad: these hold NaN, the others their answer.
    TW_ROWS_BAD = 60,
    // A column of another quantity, with stride 0, or of a count that does not agree.
    TW_BAD_COLUMN = 61,
    // Columns to be written share memory with columns to be read, or with one another.
    TW_OVERLAP = 62,
    // A mistake of this library; please report it with the input.
    TW_INTERNAL = 90,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_status tw_status;
#else
typedef int32_t tw_status;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What holds the bar. Passed as int32_t; another number is refused.
enum tw_support
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The chuck alone.
    TW_SUPPORT_CHUCK = 1,
    // The chuck at one end and a centre at the other.
    TW_SUPPORT_CHUCK_AND_CENTRE = 2,
    // A centre at each end.
    TW_SUPPORT_BETWEEN_CENTRES = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_support tw_support;
#else
typedef int32_t tw_support;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// Which part of the tool's outline the finish shows. Returned as int32_t; a later version may know
// more of them.
enum tw_regime
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The corner arc alone, as it should be.
    TW_REGIME_ARC = 1,
    // The corner arc and the minor edge: the feed is large for the minor cutting edge angle.
    TW_REGIME_ARC_AND_MINOR_EDGE = 2,
    // The corner arc and the major edge, which is the flatter one.
    TW_REGIME_ARC_AND_MAJOR_EDGE = 3,
    // Both edges reach the ridge: a sharp corner, or a feed far too large for it.
    TW_REGIME_EDGES = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_regime tw_regime;
#else
typedef int32_t tw_regime;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What the figures on a dial count. Passed as int32_t; another number is refused.
enum tw_dial_reads
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // The change of the diameter of the work: twice the travel of the slide.
    TW_DIAL_READS_DIAMETER = 1,
    // The change of its radius: the travel of the slide.
    TW_DIAL_READS_RADIUS = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_dial_reads tw_dial_reads;
#else
typedef int32_t tw_dial_reads;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// On which side of its best feed a finish with a least chip lies. Returned as int32_t; a later
// version may know more of them.
enum tw_least_chip_regime
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // At the best feed or above: the formula holds.
    TW_LEAST_CHIP_CUTTING = 1,
    // Below the best feed: outside the formula's range, which grows without end there.
    TW_LEAST_CHIP_BELOW_BEST_FEED = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_least_chip_regime tw_least_chip_regime;
#else
typedef int32_t tw_least_chip_regime;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// How the least thickness of a chip goes with the radius of the edge. Passed as int32_t; another
// number is refused.
enum tw_least_chip_model
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // 0.3 of the radius (common practice, no source).
    TW_LEAST_CHIP_MODEL_PRACTICE = 1,
    // The flow parts half-way round the edge, at 45 deg.
    TW_LEAST_CHIP_MODEL_STAGNATION = 2,
    // The neutral point of the rounded edge, at 37.6 deg.
    TW_LEAST_CHIP_MODEL_NEUTRAL = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_least_chip_model tw_least_chip_model;
#else
typedef int32_t tw_least_chip_model;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// The form of a centre hole. Passed as int32_t; another number is refused.
enum tw_centre_hole_form
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // A plain cone of 60 degrees.
    TW_CENTRE_HOLE_FORM_A = 1,
    // A cone of 60 degrees and a guard chamfer of 120 degrees, which keeps knocks off the cone.
    TW_CENTRE_HOLE_FORM_B = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_centre_hole_form tw_centre_hole_form;
#else
typedef int32_t tw_centre_hole_form;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What a diameter is measured with. Passed as int32_t; another number is refused.
enum tw_instrument
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Outside micrometer.
    TW_INSTRUMENT_MICROMETER = 1,
    // Vernier or digital calliper that reads to 0.02 or 0.01 mm.
    TW_INSTRUMENT_CALLIPER = 2,
    // Vernier calliper that reads to 0.05 mm.
    TW_INSTRUMENT_COARSE_CALLIPER = 3,
    // Dial indicator of 0.01 mm, set on a gauge block or a ring.
    TW_INSTRUMENT_DIAL_INDICATOR = 4,
    // Lever indicator of 0.01 mm, set on a gauge block or a ring.
    TW_INSTRUMENT_LEVER_INDICATOR = 5,
    // Lever indicator of 0.002 mm, set on a gauge block or a ring.
    TW_INSTRUMENT_FINE_LEVER_INDICATOR = 6,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_instrument tw_instrument;
#else
typedef int32_t tw_instrument;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// Which side of a size has the metal. Passed as int32_t; another number is refused.
enum tw_feature
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // An outside diameter: too large can be cut again, too small is lost.
    TW_FEATURE_SHAFT = 1,
    // An inside diameter: too small can be cut again, too large is lost.
    TW_FEATURE_HOLE = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_feature tw_feature;
#else
typedef int32_t tw_feature;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// How a value lies within its ends. Passed as int32_t; another number is refused.
enum tw_distribution
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Anywhere alike.
    TW_DISTRIBUTION_UNIFORM = 1,
    // The middle likeliest.
    TW_DISTRIBUTION_TRIANGULAR = 2,
    // The ends likeliest, as of a temperature that swings.
    TW_DISTRIBUTION_ARCSINE = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_distribution tw_distribution;
#else
typedef int32_t tw_distribution;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// How wide the guard band is. Passed as int32_t; another number is refused.
enum tw_decision_rule
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Twice the standard uncertainty (ISO 14253-1:1998 and 2013, from memory).
    TW_DECISION_RULE_EXPANDED_UNCERTAINTY = 1,
    // 1.645 times the standard uncertainty: 95 % probability of conformance (ISO 14253-1:2017, from
    // memory).
    TW_DECISION_RULE_CONFORMANCE95 = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_decision_rule tw_decision_rule;
#else
typedef int32_t tw_decision_rule;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What a measured size proves. Returned as int32_t; a later version may know more of them.
enum tw_verdict_of
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Inside the limits.
    TW_VERDICT_GOOD = 1,
    // Metal left beyond a limit.
    TW_VERDICT_REWORK = 2,
    // Too much metal gone.
    TW_VERDICT_SCRAP = 3,
    // Too near to a limit: neither is proved.
    TW_VERDICT_CANNOT_TELL = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_verdict_of tw_verdict_of;
#else
typedef int32_t tw_verdict_of;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// What kind of step it is. Returned as int32_t; a later version may know more of them.
enum tw_step_kind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Put the bar into the chuck.
    TW_STEP_CLAMP = 1,
    // Before the spindle turns for the first time.
    TW_STEP_FIRST_START = 2,
    // Turn the end face.
    TW_STEP_FACE = 3,
    // Drill the centre hole.
    TW_STEP_CENTRE_DRILL = 4,
    // Let the bar out and bring up the centre, or put it between two centres.
    TW_STEP_RECLAMP = 5,
    // Set the carriage dial.
    TW_STEP_ZERO_Z = 6,
    // Set the cross dial.
    TW_STEP_ZERO_X = 7,
    // The first cut.
    TW_STEP_FIRST_CUT = 8,
    // Stop and measure.
    TW_STEP_MEASURE = 9,
    // What follows from a size that was measured.
    TW_STEP_ADJUST = 10,
    // A roughing cut.
    TW_STEP_ROUGH_CUT = 11,
    // One of the last two cuts.
    TW_STEP_FINISH_CUT = 12,
    // Bring the shoulder to length.
    TW_STEP_SHOULDER = 13,
    // Turn the groove at a shoulder.
    TW_STEP_UNDERCUT = 14,
    // Turn a cone with the compound slide.
    TW_STEP_TAPER = 15,
    // Break the edges.
    TW_STEP_EDGES = 16,
    // Measure the finished part.
    TW_STEP_INSPECT = 17,
    // Part it off.
    TW_STEP_PART_OFF = 18,
    // Turn the part round in the chuck, or end for end between two centres.
    TW_STEP_TURN_ROUND = 19,
    // Leave the machine clear.
    TW_STEP_CLEAR = 20,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_step_kind tw_step_kind;
#else
typedef int32_t tw_step_kind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// A slide of the lathe. Returned as int32_t.
enum tw_slide
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    // Across the bed: sets the diameter.
    TW_SLIDE_CROSS = 1,
    // Along the bed: sets the length.
    TW_SLIDE_CARRIAGE = 2,
    // The small upper slide.
    TW_SLIDE_COMPOUND = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum tw_slide tw_slide;
#else
typedef int32_t tw_slide;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

// The operation sheet of a job. Opened with tw_plan_open, closed with tw_plan_free; in between it
// never changes, so that any number of threads may read it at once.
typedef struct tw_plan tw_plan;

// Cutting speed: of the edge over the work.
typedef struct tw_cutting_speed {
    // Metres per minute.
    double m_per_min;
} tw_cutting_speed;

// Diameter of the work or of a hole.
typedef struct tw_diameter {
    // Millimetres.
    double mm;
} tw_diameter;

// Spindle speed: revolutions per minute.
typedef struct tw_spindle_speed {
    // Revolutions per minute.
    double rpm;
} tw_spindle_speed;

// What went wrong, in the memory of the caller: which field, what was given, what was expected, how
// to put it right.
//
// Make it ready with tw_error_init, once; it may then be used for any number of calls, one at a
// time. After a success its status is TW_OK and its texts are empty.
//
// The texts are UTF-8, always NUL-ended, and cut at a character, three dots behind, when they do
// not fit; their full lengths in bytes, without the NUL, stand beside them. A struct_size smaller
// than that of this version is filled as far as it goes and never written beyond. Nothing in it
// needs to be freed.
typedef struct tw_error {
    // Size of this struct in the caller's program; tw_error_init sets it.
    uint32_t struct_size;
    // The status that the call returned.
    int32_t status;
    // Of a column call: the first bad row, counted from 0. Else 0.
    uint64_t row;
    // Which argument or field; in a document its path, as in tool.corner_radius.
    char field[64];
    // What was given.
    char given[64];
    // What was expected instead.
    char expected[128];
    // How to put it right.
    char remedy[192];
    // Full length of field.
    uint32_t field_length;
    // Full length of given.
    uint32_t given_length;
    // Full length of expected.
    uint32_t expected_length;
    // Full length of remedy.
    uint32_t remedy_length;
    // Of a column call that returned TW_ROWS_BAD: how many rows are bad. Else 0.
    uint64_t rows_bad;
    // Of a column call that returned TW_ROWS_BAD: the status of the first bad row. Else 0.
    int32_t row_status;
    // Zero.
    uint32_t reserved[5];
} tw_error;

// Feed: length per revolution.
typedef struct tw_feed {
    // Millimetres per revolution.
    double mm_per_rev;
} tw_feed;

// Corner radius of the tool; zero is a sharp corner.
typedef struct tw_corner_radius {
    // Millimetres.
    double mm;
} tw_corner_radius;

// Cutting edge angle, between the major edge and the feed direction.
typedef struct tw_cutting_edge_angle {
    // Degrees.
    double deg;
} tw_cutting_edge_angle;

// Minor cutting edge angle, between the minor edge and the feed direction.
typedef struct tw_minor_cutting_edge_angle {
    // Degrees.
    double deg;
} tw_minor_cutting_edge_angle;

// Total height of the roughness profile.
typedef struct tw_rt {
    // Micrometres.
    double um;
} tw_rt;

// Maximum height of the roughness profile.
typedef struct tw_rz {
    // Micrometres.
    double um;
} tw_rz;

// Arithmetic mean height of the roughness profile.
typedef struct tw_ra {
    // Micrometres.
    double um;
} tw_ra;

// Root mean square height of the roughness profile.
typedef struct tw_rq {
    // Micrometres.
    double um;
} tw_rq;

// A column of doubles to be read: where they lie, how far apart, how many, and what they are.
//
// Row i is the double at data + i * stride_bytes; it need not be aligned, so that a column can be
// a field of an array of the caller's own structs. stride_bytes is at least 8, also where count is
// 1. count 1 is a constant for all rows.
typedef struct tw_column {
    // The first double; may be NULL where count is 0.
    const void *data;
    // Bytes from one row to the next.
    size_t stride_bytes;
    // Number of rows, or 1 for a constant.
    size_t count;
    // What the doubles are: a number of enum tw_quantity.
    int32_t quantity;
    // Their unit: a number of enum tw_unit.
    int32_t unit;
} tw_column;

// A column of doubles to be written; laid out as tw_column. Its count is the number of rows.
typedef struct tw_out_column {
    // The first double; may be NULL where count is 0.
    void *data;
    // Bytes from one row to the next.
    size_t stride_bytes;
    // Number of rows.
    size_t count;
    // What the doubles are: a number of enum tw_quantity.
    int32_t quantity;
    // Their unit: a number of enum tw_unit.
    int32_t unit;
} tw_out_column;

// Feed rate: length per time.
typedef struct tw_feed_rate {
    // Millimetres per minute.
    double mm_per_min;
} tw_feed_rate;

// Length along the axis.
typedef struct tw_length {
    // Millimetres.
    double mm;
} tw_length;

// Duration of a cut or a step.
typedef struct tw_time {
    // Seconds.
    double s;
} tw_time;

// Depth of cut: radial, so that the diameter falls by twice as much.
typedef struct tw_depth_of_cut {
    // Millimetres.
    double mm;
} tw_depth_of_cut;

// Rate of metal removal.
typedef struct tw_removal_rate {
    // Cubic centimetres per minute.
    double cm3_per_min;
} tw_removal_rate;

// Nominal thickness of cut h, and the least chip thickness.
typedef struct tw_chip_thickness {
    // Millimetres.
    double mm;
} tw_chip_thickness;

// Nominal width of cut b.
typedef struct tw_chip_width {
    // Millimetres.
    double mm;
} tw_chip_width;

// Travel of a slide.
typedef struct tw_travel {
    // Millimetres.
    double mm;
} tw_travel;

// Rate at which a hand turns a wheel.
typedef struct tw_handwheel {
    // Turns per minute.
    double turns_per_min;
} tw_handwheel;

// What one mark of a dial says, in the dial's own reading.
typedef struct tw_division {
    // Millimetres.
    double mm;
} tw_division;

// What a dial shows: the figure engraved at a mark.
typedef struct tw_shows {
    // Millimetres.
    double mm;
} tw_shows;

// Young's modulus of the work.
typedef struct tw_youngs_modulus {
    // Gigapascals.
    double gpa;
} tw_youngs_modulus;

// Length by which the bar stands out of the jaws.
typedef struct tw_overhang {
    // Millimetres.
    double mm;
} tw_overhang;

// Stiffness of a support: force per displacement.
typedef struct tw_stiffness {
    // Kilonewtons per millimetre.
    double kn_per_mm;
} tw_stiffness;

// Stiffness of a holding against tilting: torque per angle.
typedef struct tw_rotational_stiffness {
    // Kilonewton metres per radian.
    double knm_per_rad;
} tw_rotational_stiffness;

// Passive force, across the feed: it bends the bar.
typedef struct tw_passive_force {
    // Newtons.
    double n;
} tw_passive_force;

// Displacement of the bar under load, positive away from the tool.
typedef struct tw_deflection {
    // Millimetres.
    double mm;
} tw_deflection;

// Feed force, against the feed.
typedef struct tw_feed_force {
    // Newtons.
    double n;
} tw_feed_force;

// Moment that bends the bar.
typedef struct tw_bending_moment {
    // Newton metres.
    double nm;
} tw_bending_moment;

// Difference of two diameters, such as true minus wanted.
typedef struct tw_diameter_error {
    // Millimetres.
    double mm;
} tw_diameter_error;

// Mass density.
typedef struct tw_density {
    // Kilograms per cubic metre.
    double kg_per_m3;
} tw_density;

// First critical speed of the bar: the spindle speed at which it whirls.
typedef struct tw_first_critical_speed {
    // Revolutions per minute.
    double rpm;
} tw_first_critical_speed;

// Mass.
typedef struct tw_mass {
    // Kilograms.
    double kg;
} tw_mass;

// Distance of the centre of mass from the axis of turning.
typedef struct tw_eccentricity {
    // Millimetres.
    double mm;
} tw_eccentricity;

// Specific cutting force, for a chip of 1 mm by 1 mm.
typedef struct tw_specific_force {
    // Megapascals, that is N/mm2.
    double mpa;
} tw_specific_force;

// Exponent of the specific cutting force, a plain number.
typedef struct tw_exponent {
    // The plain number.
    double ratio;
} tw_exponent;

// Force normal to the edge over the main force, a plain number.
typedef struct tw_normal_ratio {
    // The plain number.
    double ratio;
} tw_normal_ratio;

// Displacement of the bar along the cutting speed: the main force presses it down.
typedef struct tw_tangential_deflection {
    // Millimetres.
    double mm;
} tw_tangential_deflection;

// Share of a set depth that a springing bar leaves standing.
typedef struct tw_spring_share {
    // The plain number.
    double ratio;
} tw_spring_share;

// Power.
typedef struct tw_power {
    // Kilowatts.
    double kw;
} tw_power;

// Torque.
typedef struct tw_torque {
    // Newton metres.
    double nm;
} tw_torque;

// Main force, along the cutting speed: it loads the spindle.
typedef struct tw_main_force {
    // Newtons.
    double n;
} tw_main_force;

// Efficiency of the drive, from motor to spindle.
typedef struct tw_efficiency {
    // The plain number.
    double ratio;
} tw_efficiency;

// Cross section of the uncut chip A_D.
typedef struct tw_chip_area {
    // Square millimetres.
    double mm2;
} tw_chip_area;

// Specific cutting force k_c at the thickness of one chip (Kienzle).
typedef struct tw_specific_force_at_chip {
    // Megapascals, that is N/mm2.
    double mpa;
} tw_specific_force_at_chip;

// Width of the blade of a grooving or parting tool.
typedef struct tw_width {
    // Millimetres.
    double mm;
} tw_width;

// Factor by which a circumstance changes a force.
typedef struct tw_force_factor {
    // The plain number.
    double ratio;
} tw_force_factor;

// Orthogonal rake gamma_o; negative leans forward.
typedef struct tw_rake_angle {
    // Degrees.
    double deg;
} tw_rake_angle;

// Length of the cutting edge that is in the cut.
typedef struct tw_edge_length {
    // Millimetres.
    double mm;
} tw_edge_length;

// Share by which a force scatters, either way.
typedef struct tw_force_scatter {
    // The plain number.
    double ratio;
} tw_force_scatter;

// Height of the tool's tip above the axis of the lathe; negative below it.
typedef struct tw_tool_height {
    // Millimetres.
    double mm;
} tw_tool_height;

// Width or height of the shank of a tool.
typedef struct tw_shank_size {
    // Millimetres.
    double mm;
} tw_shank_size;

// Coefficient of friction.
typedef struct tw_friction {
    // The plain number.
    double ratio;
} tw_friction;

// Force with which all jaws together press on the work.
typedef struct tw_grip_force {
    // Newtons.
    double n;
} tw_grip_force;

// Radius of the work: half of its diameter.
typedef struct tw_radius {
    // Millimetres.
    double mm;
} tw_radius;

// Radius r_n to which the cutting edge itself is rounded.
typedef struct tw_edge_radius {
    // Millimetres.
    double mm;
} tw_edge_radius;

// Angle of friction beta between chip and rake face: its tangent is the coefficient of friction.
typedef struct tw_friction_angle {
    // Degrees.
    double deg;
} tw_friction_angle;

// Skewness Rsk of the roughness profile; positive where narrow peaks stand up.
typedef struct tw_rsk {
    // The plain number.
    double ratio;
} tw_rsk;

// Kurtosis Rku of the roughness profile.
typedef struct tw_rku {
    // The plain number.
    double ratio;
} tw_rku;

// Unevenness of a feed: standard deviation over mean of the feeds of the single turns.
typedef struct tw_feed_unevenness {
    // The plain number.
    double ratio;
} tw_feed_unevenness;

// Long-wave cut-off lambda_c of the profile filter, the sampling length.
typedef struct tw_cut_off {
    // Millimetres.
    double mm;
} tw_cut_off;

// Short-wave cut-off lambda_s of the profile filter.
typedef struct tw_short_cut_off {
    // Millimetres.
    double mm;
} tw_short_cut_off;

// Mean width RSm of the profile elements.
typedef struct tw_rsm {
    // Millimetres.
    double mm;
} tw_rsm;

// Share of a wave that a filter lets through.
typedef struct tw_transmission {
    // The plain number.
    double ratio;
} tw_transmission;

// Coefficient of linear thermal expansion.
typedef struct tw_expansion {
    // Micrometres per metre and kelvin.
    double um_per_mk;
} tw_expansion;

// Rise of temperature above 20 degC, or between two moments; negative while cooling.
typedef struct tw_rise {
    // Kelvins.
    double k;
} tw_rise;

// Growth of a length or a diameter by heat; negative when it shrinks.
typedef struct tw_growth {
    // Millimetres.
    double mm;
} tw_growth;

// Share of the cutting power that stays in the work as heat.
typedef struct tw_heat_share {
    // The plain number.
    double ratio;
} tw_heat_share;

// Specific heat.
typedef struct tw_specific_heat {
    // Joules per kilogram and kelvin.
    double j_per_kgk;
} tw_specific_heat;

// Stiffness along the axis of what stands at the end of the bar.
typedef struct tw_axial_stiffness {
    // Kilonewtons per millimetre.
    double kn_per_mm;
} tw_axial_stiffness;

// Force along the axis, positive where the centre is pressed into the work.
typedef struct tw_axial_force {
    // Newtons.
    double n;
} tw_axial_force;

// Mean pressure of a centre on its seat.
typedef struct tw_mean_pressure {
    // Megapascals.
    double mpa;
} tw_mean_pressure;

// Constant C of the tool life, v T^n = C (Taylor): the cutting speed for a life of one minute.
typedef struct tw_life_constant {
    // Metres per minute.
    double m_per_min;
} tw_life_constant;

// Exponent n of the tool life, v T^n = C (Taylor).
typedef struct tw_life_exponent {
    // The plain number.
    double ratio;
} tw_life_exponent;

// Life of a cutting edge: time in cut until it is worn out.
typedef struct tw_life {
    // Seconds.
    double s;
} tw_life;

// Price, in the asker's currency.
typedef struct tw_price {
    // The plain number.
    double ratio;
} tw_price;

// Price of one hour of machine and operator, in the asker's currency.
typedef struct tw_price_per_hour {
    // The plain number.
    double ratio;
} tw_price_per_hour;

// Half of the angle of a taper, between its side and its axis.
typedef struct tw_half_angle {
    // Degrees.
    double deg;
} tw_half_angle;

// Ratio of a taper, the x of 1:x: length over the difference of the diameters.
typedef struct tw_taper_ratio {
    // The plain number.
    double ratio;
} tw_taper_ratio;

// Whole angle of a taper, between its two sides.
typedef struct tw_included_angle {
    // Degrees.
    double deg;
} tw_included_angle;

// Angle of the compound slide to the axis of the lathe.
typedef struct tw_compound_angle {
    // Degrees.
    double deg;
} tw_compound_angle;

// Angle of the compound slide to the cross slide.
typedef struct tw_compound_angle_from_cross_slide {
    // Degrees.
    double deg;
} tw_compound_angle_from_cross_slide;

// How far the tailstock stands off the axis of the lathe, towards the operator.
typedef struct tw_set_over {
    // Millimetres.
    double mm;
} tw_set_over;

// Width of a tolerance zone.
typedef struct tw_tolerance {
    // Millimetres.
    double mm;
} tw_tolerance;

// Upper limit deviation (ISO 286-1: es of a shaft, ES of a hole): largest size less nominal size.
typedef struct tw_upper_deviation {
    // Millimetres.
    double mm;
} tw_upper_deviation;

// Lower limit deviation (ISO 286-1: ei of a shaft, EI of a hole): smallest size less nominal size.
typedef struct tw_lower_deviation {
    // Millimetres.
    double mm;
} tw_lower_deviation;

// Clearance between a hole and a shaft: hole less shaft; negative, an interference.
typedef struct tw_clearance {
    // Millimetres.
    double mm;
} tw_clearance;

// Uncertainty or largest error of an instrument.
typedef struct tw_instrument_uncertainty {
    // Millimetres.
    double mm;
} tw_instrument_uncertainty;

// Standard uncertainty of a size (JCGM 100: u): a standard deviation, not an expanded uncertainty.
typedef struct tw_standard_uncertainty {
    // Millimetres.
    double mm;
} tw_standard_uncertainty;

// Probability, from 0 to 1.
typedef struct tw_probability {
    // The plain number.
    double ratio;
} tw_probability;

// Capability of a process (Cp): width of the zone over six standard deviations.
typedef struct tw_capability {
    // The plain number.
    double ratio;
} tw_capability;

// Capability of a process with its mean where it is (Cpk): distance of the mean to the nearer limit over three standard deviations.
typedef struct tw_capability_index {
    // The plain number.
    double ratio;
} tw_capability_index;

// Half the width of a distribution that has ends (JCGM 100: a).
typedef struct tw_half_width {
    // Millimetres.
    double mm;
} tw_half_width;

// Degrees of freedom of a standard uncertainty (JCGM 100: nu); whole only where it is counted.
typedef struct tw_degrees_of_freedom {
    // The plain number.
    double ratio;
} tw_degrees_of_freedom;

// Price of a lost part, in the asker's currency.
typedef struct tw_price_scrap {
    // The plain number.
    double ratio;
} tw_price_scrap;

// Price of another cut on a part that came out with metal left, in the asker's currency.
typedef struct tw_price_rework {
    // The plain number.
    double ratio;
} tw_price_rework;

// Level of confidence of an interval (JCGM 100: p).
typedef struct tw_confidence {
    // The plain number.
    double ratio;
} tw_confidence;

// Coverage factor (JCGM 100: k): expanded over standard uncertainty.
typedef struct tw_coverage_factor {
    // The plain number.
    double ratio;
} tw_coverage_factor;

// Smallest step that an instrument shows: the whole width of what one reading stands for.
typedef struct tw_resolution {
    // Millimetres.
    double mm;
} tw_resolution;

// Position along the axis: zero on the finished face, negative towards the headstock.
typedef struct tw_z {
    // Millimetres.
    double mm;
} tw_z;

// One step of a plan. Make it ready with tw_step_init, once. What a step has not is NaN, NULL, -1
// or 0, as its field says.
typedef struct tw_step {
    // Size of this struct in the caller's program; tw_step_init sets it.
    uint32_t struct_size;
    // A number of enum tw_step_kind.
    int32_t kind;
    // Which surface it works on, from 0, counted from the face of its end; -1 where it is none's.
    int32_t surface;
    // 1 where that surface is turned from the other end, else 0.
    int32_t other_end;
    // 1 for a step that lies before a measurement that was handed in, else 0.
    int32_t done;
    // Whose dial is read, a number of enum tw_slide; 0 where none is, and what follows is 0.
    int32_t slide;
    // Whole divisions from the zero of that dial, positive into the metal.
    int64_t divisions;
    // Whole turns of the handle from zero.
    int64_t turns;
    // The mark under the index line, 0 to one less than there are.
    int32_t mark;
    // Tenths of a mark beyond it, by eye: on a ring that cannot be set, where no whole mark will do, and at a shoulder
    // no mark keeps well within its limits.
    int32_t tenths;
    // What is engraved at that mark; NaN where no dial is read.
    struct tw_shows shows;
    // The diameter to expect after the step; of a cut or a stop that is done the one it is known, or taken,
    // to have left.
    struct tw_diameter diameter;
    // How far along the tool goes: 0 on the finished face, negative towards the headstock; or NaN.
    struct tw_z z;
    // Spindle speed; NaN where the spindle is at rest.
    struct tw_spindle_speed spindle_speed;
    // Feed; NaN where nothing is fed.
    struct tw_feed feed;
    // Depth of cut, radial; NaN where nothing is cut.
    struct tw_depth_of_cut depth_of_cut;
    // Cutting time; 0 where nothing is cut.
    struct tw_time time;
    // What to do, in words. It belongs to the plan and may be read until the plan is closed.
    const char *text;
    // Why, with the figures put in, or NULL. As text.
    const char *because;
    // The mark that the ring of the cross dial is turned to there, 0 to less than a turn has, tenths behind the point,
    // where the size measured is as expected: the text says what else. NaN where no ring is turned.
    double ring_to;
} tw_step;

// What to expect of the part of a plan. Make it ready with tw_expected_init, once.
typedef struct tw_expected {
    // Size of this struct in the caller's program; tw_expected_init sets it.
    uint32_t struct_size;
    // How many surfaces the part has; the sizes below are of the one least likely to come out good.
    uint32_t surfaces;
    // Its finished diameter.
    struct tw_diameter diameter;
    // The smallest diameter that its limits allow.
    struct tw_diameter smallest;
    // The largest one.
    struct tw_diameter largest;
    // The expanded uncertainty of the finished diameter, about 95 %.
    struct tw_instrument_uncertainty uncertainty;
    // The chance that the part comes out good, all surfaces together.
    struct tw_probability good;
    // The chance that another cut is needed somewhere, and nothing is lost.
    struct tw_probability rework;
    // The chance that some diameter comes out too small: lost.
    struct tw_probability scrap;
    // Cutting time of all steps; handling, measuring and setting come on top.
    struct tw_time time;
} tw_expected;

// What to expect of one surface of the part. Make it ready with tw_surface_init, once.
typedef struct tw_surface {
    // Size of this struct in the caller's program; tw_surface_init sets it.
    uint32_t struct_size;
    // Which surface, from 0, counted from the face of its end, as in tw_step.
    int32_t surface;
    // 1 where it is turned from the other end, else 0.
    int32_t other_end;
    // Its finished diameter.
    struct tw_diameter diameter;
    // The smallest diameter that its limits allow.
    struct tw_diameter smallest;
    // The largest one.
    struct tw_diameter largest;
    // The expanded uncertainty of the finished diameter, about 95 %.
    struct tw_instrument_uncertainty uncertainty;
    // The chance that it comes out good.
    struct tw_probability good;
    // The chance that it comes out too large, so that another cut is needed.
    struct tw_probability rework;
    // The chance that it comes out too small: lost.
    struct tw_probability scrap;
    // The roughness that the shape of the tool leaves, arithmetic mean height; a real surface is rougher.
    struct tw_ra ra;
    // The same, maximum height.
    struct tw_rz rz;
} tw_surface;

// Overhang over diameter, L/d.
typedef struct tw_length_over_diameter {
    // The plain number.
    double ratio;
} tw_length_over_diameter;

// Brinell hardness, HB.
typedef struct tw_hardness_hb {
    // The plain number.
    double ratio;
} tw_hardness_hb;

// Scatter of tool lives: standard deviation of their natural logarithms.
typedef struct tw_life_scatter {
    // The plain number.
    double ratio;
} tw_life_scatter;

// Distance between neighbouring points of a profile.
typedef struct tw_spacing {
    // Millimetres.
    double mm;
} tw_spacing;

// Sensitivity coefficient (JCGM 100: c): change of the size over change of the component.
typedef struct tw_sensitivity {
    // The plain number.
    double ratio;
} tw_sensitivity;

// Correlation coefficient of two components (JCGM 100: r).
typedef struct tw_correlation {
    // The plain number.
    double ratio;
} tw_correlation;

// Price of one measuring stop, in the asker's currency.
typedef struct tw_price_stop {
    // The plain number.
    double ratio;
} tw_price_stop;

// Run-out of a bar or part: the whole travel of an indicator over one turn, twice the eccentricity.
typedef struct tw_run_out {
    // Millimetres.
    double mm;
} tw_run_out;

// Thickness of the skin of a hot-rolled, forged or cast bar, which the first cut must go under.
typedef struct tw_skin_thickness {
    // Millimetres.
    double mm;
} tw_skin_thickness;

// Leg of a chamfer of 45 degrees, along the axis and across it alike.
typedef struct tw_chamfer_leg {
    // Millimetres.
    double mm;
} tw_chamfer_leg;

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

// A status in words: static text, never NULL, not to be freed. A number that is no status of this
// version has a text that says so.
TW_CHECK const char *tw_status_text(int32_t status);

// The version of the library that is running, as in 1.2.3: static text, not to be freed. Compare
// with TW_VERSION, that of the header.
TW_CHECK const char *tw_version(void);

// The range of a quantity, in its metric unit, as the calls check it: the least and the largest
// value. Some quantities, such as a corner radius, also allow 0 below the least.
//
// quantity is a number of enum tw_quantity. Either output may be NULL, not both. After a failure
// (TW_UNKNOWN_NAME, TW_NULL_POINTER) the outputs are NaN.
//
// Example: tw_range(TW_QUANTITY_CUTTING_SPEED, &least, &largest); least is 0.1000 and
//     largest is 10000.
TW_CHECK tw_status tw_range(int32_t quantity, double *least, double *largest);

// The spindle speed at which a diameter passes the edge at a cutting speed: v / (pi d). Take the
// diameter before the cut, where the edge is fastest.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the cutting speed, ISO 3002-1 (from memory).
// Example: tw_spindle_speed_for(tw_cutting_speed_foot_per_minute(300), tw_diameter_inch(1.5),
//     &spindle_speed, NULL); spindle_speed.rpm is 763.944.
TW_CHECK
tw_status tw_spindle_speed_for(struct tw_cutting_speed cutting_speed,
                               struct tw_diameter diameter,
                               struct tw_spindle_speed *spindle_speed,
                               struct tw_error *detail);

// The roughness that a feed and the outline of the tool leave, exactly: which part of the outline
// makes it (a number of enum tw_regime), total height, maximum height, arithmetic mean height and
// root mean square height. A real surface is never better than this.
//
// The two edge angles must make less than 180 deg together (TW_CONTRADICTION).
//
// An output may be NULL unless all are. detail may be NULL. After a failure the regime is 0 and
// the other outputs are NaN.
//
// Source: Shaw, Metal Cutting Principles, chapter on surface finish (from memory); derived again.
// Example: tw_theoretical_roughness(tw_feed_millimeter_per_revolution(0.25),
//     tw_corner_radius_millimeter(0.8), tw_cutting_edge_angle_degree(95),
//     tw_minor_cutting_edge_angle_degree(5), &regime, &rt, &rz, &ra, &rq, NULL);
//     regime is TW_REGIME_ARC_AND_MINOR_EDGE, rt.um is 8.58821, rz.um is 8.58821, ra.um is 2.31940
//     and rq.um is 2.65544.
TW_CHECK
tw_status tw_theoretical_roughness(struct tw_feed feed,
                                   struct tw_corner_radius corner_radius,
                                   struct tw_cutting_edge_angle cutting_edge_angle,
                                   struct tw_minor_cutting_edge_angle minor_cutting_edge_angle,
                                   int32_t *regime,
                                   struct tw_rt *rt,
                                   struct tw_rz *rz,
                                   struct tw_ra *ra,
                                   struct tw_rq *rq,
                                   struct tw_error *detail);

// The total height that a feed and a corner radius leave when the corner arc alone makes the
// finish: r - sqrt(r^2 - f^2/4).
//
// A feed of twice the corner radius or more is refused (TW_CONTRADICTION). detail may be NULL.
// After a failure the output is NaN.
//
// Source: Shaw, Metal Cutting Principles, chapter on surface finish (from memory); derived again.
// Example: tw_arc_height(tw_feed_inch_per_revolution(0.004),
//     tw_corner_radius_inch_fraction(1, 32), &rt, NULL); tw_rt_as_microinch(rt) is 64.0657.
TW_CHECK
tw_status tw_arc_height(struct tw_feed feed,
                        struct tw_corner_radius corner_radius,
                        struct tw_rt *rt,
                        struct tw_error *detail);

// tw_spindle_speed_for for every row.
//
// Columns, see the first page: cutting_speed and diameter are read, spindle_speed is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_spindle_speed_for_column(const struct tw_column *cutting_speed,
                                      const struct tw_column *diameter,
                                      const struct tw_out_column *spindle_speed,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// tw_arc_height for every row.
//
// Columns, see the first page: feed and corner_radius are read, rt is written. row_status may be
// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_arc_height_column(const struct tw_column *feed,
                               const struct tw_column *corner_radius,
                               const struct tw_out_column *rt,
                               int32_t *row_status,
                               size_t row_status_stride_bytes,
                               struct tw_error *detail);

// tw_theoretical_roughness for every row.
//
// Columns, see the first page: the first four are read; rt, rz, ra and rq are written, each may be
// NULL unless all are. regime may be NULL; else one int32_t a row (a number of enum tw_regime, 0
// for a bad row), regime_stride_bytes apart (at least 4). row_status likewise. detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_theoretical_roughness_column(const struct tw_column *feed,
                                          const struct tw_column *corner_radius,
                                          const struct tw_column *cutting_edge_angle,
                                          const struct tw_column *minor_cutting_edge_angle,
                                          const struct tw_out_column *rt,
                                          const struct tw_out_column *rz,
                                          const struct tw_out_column *ra,
                                          const struct tw_out_column *rq,
                                          int32_t *regime,
                                          size_t regime_stride_bytes,
                                          int32_t *row_status,
                                          size_t row_status_stride_bytes,
                                          struct tw_error *detail);

// The exact ratio of neighbouring spindle speeds where a gearbox takes every step-th value of the
// series R20: 10^(step/20), a plain number. The largest loss of cutting speed by stepping is 1 - 1/ratio.
// step is 1 to 6 (TW_OUT_OF_RANGE). For a speed of the series see tw_speed_of_step.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: ISO 3 with ISO 229, from memory.
// Example: tw_step_ratio(3, &ratio, NULL); ratio is 1.41254.
TW_CHECK
tw_status tw_step_ratio(int32_t step,
                        double *ratio,
                        struct tw_error *detail);

// The cutting speed of a diameter at a spindle speed: pi d n. At the diameter before the cut it
// is the speed that wears the edge; at the mean diameter (tw_mean_diameter) it is the one that
// power is reckoned with.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition, ISO 3002-1 (from memory).
// Example: tw_cutting_speed_of(tw_spindle_speed_revolution_per_minute(1200), tw_diameter_inch(1),
//     &cutting_speed, NULL); tw_cutting_speed_as_foot_per_minute(cutting_speed) is 314.159.
TW_CHECK
tw_status tw_cutting_speed_of(struct tw_spindle_speed spindle_speed,
                              struct tw_diameter diameter,
                              struct tw_cutting_speed *cutting_speed,
                              struct tw_error *detail);

// tw_cutting_speed_of for every row.
//
// Columns, see the first page: spindle_speed and diameter are read, cutting_speed is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cutting_speed_of_column(const struct tw_column *spindle_speed,
                                     const struct tw_column *diameter,
                                     const struct tw_out_column *cutting_speed,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// How fast the tool travels along: feed times spindle speed.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition, ISO 3002-1 (from memory).
// Example: tw_feed_rate_of(tw_feed_millimeter_per_revolution(0.15),
//     tw_spindle_speed_revolution_per_minute(710), &feed_rate, NULL);
//     feed_rate.mm_per_min is 106.5.
TW_CHECK
tw_status tw_feed_rate_of(struct tw_feed feed,
                          struct tw_spindle_speed spindle_speed,
                          struct tw_feed_rate *feed_rate,
                          struct tw_error *detail);

// tw_feed_rate_of for every row.
//
// Columns, see the first page: feed and spindle_speed are read, feed_rate is written. row_status
// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_feed_rate_of_column(const struct tw_column *feed,
                                 const struct tw_column *spindle_speed,
                                 const struct tw_out_column *feed_rate,
                                 int32_t *row_status,
                                 size_t row_status_stride_bytes,
                                 struct tw_error *detail);

// How long the tool takes along a length: length / (feed times spindle speed). The length
// includes the run-in and the run-out.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the feed.
// Example: tw_time_of_cut(tw_length_inch(6.6), tw_feed_inch_per_revolution(0.008),
//     tw_spindle_speed_revolution_per_minute(355), &time, NULL); time.s is 139.437.
TW_CHECK
tw_status tw_time_of_cut(struct tw_length length,
                         struct tw_feed feed,
                         struct tw_spindle_speed spindle_speed,
                         struct tw_time *time,
                         struct tw_error *detail);

// tw_time_of_cut for every row.
//
// Columns, see the first page: length, feed and spindle_speed are read, time is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_time_of_cut_column(const struct tw_column *length,
                                const struct tw_column *feed,
                                const struct tw_column *spindle_speed,
                                const struct tw_out_column *time,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The metal that a cut along the bar removes per time, exactly: pi (diameter - depth_of_cut)
// depth_of_cut feed spindle_speed. diameter is the one before the cut. A depth to the middle of
// the bar or beyond is refused (TW_CONTRADICTION). For facing and parting see
// tw_removal_rate_at.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived: the ring pi (d_o^2 - d_i^2)/4 times the feed rate.
// Example: tw_removal_rate_of(tw_diameter_millimeter(40), tw_depth_of_cut_millimeter(2),
//     tw_feed_millimeter_per_revolution(0.25), tw_spindle_speed_revolution_per_minute(500),
//     &removal_rate, NULL); removal_rate.cm3_per_min is 29.8451.
TW_CHECK
tw_status tw_removal_rate_of(struct tw_diameter diameter,
                             struct tw_depth_of_cut depth_of_cut,
                             struct tw_feed feed,
                             struct tw_spindle_speed spindle_speed,
                             struct tw_removal_rate *removal_rate,
                             struct tw_error *detail);

// tw_removal_rate_of for every row.
//
// Columns, see the first page: diameter, depth_of_cut, feed and spindle_speed are read,
// removal_rate is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_removal_rate_of_column(const struct tw_column *diameter,
                                    const struct tw_column *depth_of_cut,
                                    const struct tw_column *feed,
                                    const struct tw_column *spindle_speed,
                                    const struct tw_out_column *removal_rate,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The metal that a cut towards or across the axis removes per time where it stands: thickness
// times width of the chip times cutting speed. For facing and parting, at the diameter to which
// the cutting speed belongs; along a bar see tw_removal_rate_of.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry: the section of the chip times the way that passes the edge.
// Example: tw_removal_rate_at(tw_chip_thickness_millimeter(0.08), tw_chip_width_millimeter(3),
//     tw_cutting_speed_meter_per_minute(50), &removal_rate, NULL);
//     removal_rate.cm3_per_min is 12.000.
TW_CHECK
tw_status tw_removal_rate_at(struct tw_chip_thickness chip_thickness,
                             struct tw_chip_width chip_width,
                             struct tw_cutting_speed cutting_speed,
                             struct tw_removal_rate *removal_rate,
                             struct tw_error *detail);

// tw_removal_rate_at for every row.
//
// Columns, see the first page: chip_thickness, chip_width and cutting_speed are read,
// removal_rate is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_removal_rate_at_column(const struct tw_column *chip_thickness,
                                    const struct tw_column *chip_width,
                                    const struct tw_column *cutting_speed,
                                    const struct tw_out_column *removal_rate,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The diameter half-way through the depth of a cut: diameter - depth_of_cut, the diameter being
// the one before the cut. A depth to the middle of the bar or beyond is refused
// (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_mean_diameter(tw_diameter_inch(1.5), tw_depth_of_cut_inch(0.1), &mean_diameter,
//     NULL); tw_diameter_as_inch(mean_diameter) is 1.400.
TW_CHECK
tw_status tw_mean_diameter(struct tw_diameter diameter,
                           struct tw_depth_of_cut depth_of_cut,
                           struct tw_diameter *mean_diameter,
                           struct tw_error *detail);

// tw_mean_diameter for every row.
//
// Columns, see the first page: diameter and depth_of_cut are read, mean_diameter is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_mean_diameter_column(const struct tw_column *diameter,
                                  const struct tw_column *depth_of_cut,
                                  const struct tw_out_column *mean_diameter,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// A spindle speed of a geometric series: first times tw_step_ratio to the power place, so that
// place 0 is the first speed itself. Exact values; the plate of a machine carries rounded ones.
//
// step is 1 for the series R20 to 6 for R20/6, place 0 to 255 (TW_OUT_OF_RANGE). A speed beyond
// the range of tw_spindle_speed is refused (TW_OUT_OF_RANGE).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: ISO 3 with ISO 229, from memory.
// Example: tw_speed_of_step(tw_spindle_speed_revolution_per_minute(45), 3, 11, &spindle_speed,
//     NULL); spindle_speed.rpm is 2010.08.
TW_CHECK
tw_status tw_speed_of_step(struct tw_spindle_speed first,
                           int32_t step,
                           int32_t place,
                           struct tw_spindle_speed *spindle_speed,
                           struct tw_error *detail);

// tw_speed_of_step for every row.
//
// Columns, see the first page: first is read, spindle_speed is written. step is one number for
// all rows; one that is refused fails the whole call. place is one number for all rows; one that
// is refused fails the whole call. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_speed_of_step_column(const struct tw_column *first,
                                  int32_t step,
                                  int32_t place,
                                  const struct tw_out_column *spindle_speed,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// How fast a hand turns the wheel of a slide for a feed: feed times spindle speed over the travel of
// one turn. Below about 6 turns a minute no hand is steady.
//
// A travel of zero is refused (TW_CONTRADICTION). detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_handwheel_rate(tw_feed_millimeter_per_revolution(0.08),
//     tw_spindle_speed_revolution_per_minute(500), tw_travel_millimeter(16), &handwheel, NULL);
//     handwheel.turns_per_min is 2.500.
TW_CHECK
tw_status tw_handwheel_rate(struct tw_feed feed,
                            struct tw_spindle_speed spindle_speed,
                            struct tw_travel travel_per_turn,
                            struct tw_handwheel *handwheel,
                            struct tw_error *detail);

// tw_handwheel_rate for every row.
//
// Columns, see the first page: feed, spindle_speed, travel_per_turn are read,
// handwheel is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_handwheel_rate_column(const struct tw_column *feed,
                                   const struct tw_column *spindle_speed,
                                   const struct tw_column *travel_per_turn,
                                   const struct tw_out_column *handwheel,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// The diameter at a mark of a cross slide's dial that was set to zero at a diameter: zero_at less
// divisions times what one of them takes off the diameter. divisions is whole turns of the handle
// times divisions_per_turn, and the mark; positive into the metal. Outside turning. The way back:
// tw_dial_mark_for.
//
// Other arguments as of tw_dial_mark_for. Refused: more divisions than reach the middle of the work
// (TW_CONTRADICTION), or than ten million either way (TW_OUT_OF_RANGE). detail may be NULL. After a
// failure the output is NaN.
//
// Source: geometry: twice the travel of a slide square to the axis.
// Example: tw_dial_diameter(tw_diameter_inch(1.375), tw_division_inch(0.002), 93,
//     TW_DIAL_READS_DIAMETER, 100, &diameter, NULL); tw_diameter_as_inch(diameter) is 1.189.
TW_CHECK
tw_status tw_dial_diameter(struct tw_diameter zero_at,
                           struct tw_division division,
                           int32_t divisions,
                           int32_t reads,
                           int32_t divisions_per_turn,
                           struct tw_diameter *diameter,
                           struct tw_error *detail);

// tw_dial_diameter for every row.
//
// Columns, see the first page: zero_at and division are read, diameter is written. divisions is
// read too: one int32_t a row, divisions_stride_bytes apart (at least 4). reads and
// divisions_per_turn are one number for all rows; one that is refused fails the whole call.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail
// may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_dial_diameter_column(const struct tw_column *zero_at,
                                  const struct tw_column *division,
                                  const int32_t *divisions,
                                  size_t divisions_stride_bytes,
                                  int32_t reads,
                                  int32_t divisions_per_turn,
                                  const struct tw_out_column *diameter,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The last mark of a cross slide's dial that leaves metal on the way from the diameter at which
// it was set to zero to a target: how many whole divisions it lies from zero, positive into the
// metal, the diameter there, not below the target, and what is engraved at it. Whole turns of
// the handle are divisions over divisions_per_turn, rounded down; the rest is the mark. A target
// that a mark meets within 1e-9 mm is that mark. Outside turning; come to the mark turning
// inwards, for backlash is not in it.
//
// division is what one mark says, reads (a number of enum tw_dial_reads) what the dial counts:
// the same turn takes twice as much off the diameter as a dial of the radius says.
// divisions_per_turn is 2 to 10000. Refused (TW_OUT_OF_RANGE): more than ten million divisions.
//
// An output may be NULL unless all are. detail may be NULL. After a failure divisions is 0 and
// the other outputs are NaN.
//
// Source: geometry: twice the travel of a slide square to the axis.
// Example: tw_dial_mark_for(tw_diameter_millimeter(40), tw_diameter_millimeter(27.6),
//     tw_division_millimeter(0.05), TW_DIAL_READS_RADIUS, 80, &size, &shows, &divisions, NULL);
//     size.mm is 27.60, shows.mm is 2.200 and divisions is 124.
TW_CHECK
tw_status tw_dial_mark_for(struct tw_diameter zero_at,
                           struct tw_diameter target,
                           struct tw_division division,
                           int32_t reads,
                           int32_t divisions_per_turn,
                           struct tw_diameter *size,
                           struct tw_shows *shows,
                           int32_t *divisions,
                           struct tw_error *detail);

// tw_dial_mark_for for every row.
//
// Columns, see the first page: zero_at, target and division are read, size and shows are
// written, each may be NULL unless both are. reads is one number for all rows; one that is
// refused fails the whole call. divisions_per_turn is one number for all rows; one that is
// refused fails the whole call. divisions may be NULL; else one int32_t a row (0 for a bad row),
// divisions_stride_bytes apart (at least 4). row_status likewise. detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_dial_mark_for_column(const struct tw_column *zero_at,
                                  const struct tw_column *target,
                                  const struct tw_column *division,
                                  int32_t reads,
                                  int32_t divisions_per_turn,
                                  const struct tw_out_column *size,
                                  const struct tw_out_column *shows,
                                  int32_t *divisions,
                                  size_t divisions_stride_bytes,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// How far a slide travels in one turn of its handle, as tw_handwheel_rate wants it:
// divisions_per_turn times division, half of that where the dial counts the diameter. Arguments
// as of tw_dial_mark_for.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry: twice the travel of a slide square to the axis.
// Example: tw_travel_per_turn(tw_division_millimeter(0.04), TW_DIAL_READS_DIAMETER, 100, &travel,
//     NULL); travel.mm is 2.000.
TW_CHECK
tw_status tw_travel_per_turn(struct tw_division division,
                             int32_t reads,
                             int32_t divisions_per_turn,
                             struct tw_travel *travel,
                             struct tw_error *detail);

// tw_travel_per_turn for every row.
//
// Columns, see the first page: division is read, travel is written. reads is one number for all
// rows; one that is refused fails the whole call. divisions_per_turn is one number for all rows;
// one that is refused fails the whole call. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_travel_per_turn_column(const struct tw_column *division,
                                    int32_t reads,
                                    int32_t divisions_per_turn,
                                    const struct tw_out_column *travel,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// How far a round bar of one diameter gives way at the tool.
//
// support is a number of enum tw_support. The three springs say how the chuck gives way across and
// by tilting, and how the centre does; between centres chuck is the centre at the head. An
// infinite one is rigid (tw_stiffness_rigid, tw_rotational_stiffness_rigid). at is measured from
// the chuck and lies within the overhang (TW_CONTRADICTION). A spring that does not count for the
// support is checked all the same.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: any strength of materials text (Roark; Timoshenko), from memory; derived again.
// Example: tw_deflection_at(tw_youngs_modulus_kilopound_per_square_inch(30000),
//     tw_diameter_inch(1), tw_overhang_inch(6), TW_SUPPORT_CHUCK, tw_stiffness_rigid(),
//     tw_rotational_stiffness_rigid(), tw_stiffness_rigid(), tw_passive_force_pound_force(50),
//     tw_length_inch(6), &deflection, NULL); tw_deflection_as_inch(deflection) is 0.00244462.
TW_CHECK
tw_status tw_deflection_at(struct tw_youngs_modulus youngs_modulus,
                           struct tw_diameter diameter,
                           struct tw_overhang overhang,
                           int32_t support,
                           struct tw_stiffness chuck,
                           struct tw_rotational_stiffness chuck_rotational,
                           struct tw_stiffness centre,
                           struct tw_passive_force passive_force,
                           struct tw_length at,
                           struct tw_deflection *deflection,
                           struct tw_error *detail);

// tw_deflection_at for every row.
//
// Columns, see the first page: youngs_modulus, diameter, overhang, chuck, chuck_rotational,
// centre, passive_force and at are read, deflection is written. support is one number for all
// rows. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_deflection_at_column(const struct tw_column *youngs_modulus,
                                  const struct tw_column *diameter,
                                  const struct tw_column *overhang,
                                  int32_t support,
                                  const struct tw_column *chuck,
                                  const struct tw_column *chuck_rotational,
                                  const struct tw_column *centre,
                                  const struct tw_column *passive_force,
                                  const struct tw_column *at,
                                  const struct tw_out_column *deflection,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The moment with which the feed force bends the bar, for it acts at the surface: -F_f d/2,
// negative because it turns the free end towards the tool when the tool cuts towards the chuck.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: statics; derived.
// Example: tw_feed_force_moment(tw_feed_force_newton(200), tw_diameter_millimeter(40),
//     &bending_moment, NULL); bending_moment.nm is -4.000.
TW_CHECK
tw_status tw_feed_force_moment(struct tw_feed_force feed_force,
                               struct tw_diameter diameter,
                               struct tw_bending_moment *bending_moment,
                               struct tw_error *detail);

// tw_feed_force_moment for every row.
//
// Columns, see the first page: feed_force and diameter are read, bending_moment is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_feed_force_moment_column(const struct tw_column *feed_force,
                                      const struct tw_column *diameter,
                                      const struct tw_out_column *bending_moment,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// The force with which the centre at the end of a bar holds against the tool, the chuck holding
// the other end. Rigid: passive_force a^2 (3 L - a)/(2 L^3), a the place and L the overhang.
//
// The three springs say how the chuck gives way across and by tilting, and how the centre does;
// an infinite one is rigid (tw_stiffness_rigid, tw_rotational_stiffness_rigid). at is measured
// from the chuck and lies within the overhang (TW_CONTRADICTION). The weight of the work is not
// in it.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: any strength of materials text (Roark; Timoshenko), from memory; derived again.
// Example: tw_centre_force(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(32),
//     tw_overhang_millimeter(500), tw_stiffness_newton_per_micrometer(50),
//     tw_rotational_stiffness_kilonewton_meter_per_radian(200),
//     tw_stiffness_newton_per_micrometer(15), tw_passive_force_newton(300),
//     tw_length_millimeter(420), &centre_force, NULL); centre_force.n is 231.584.
TW_CHECK
tw_status tw_centre_force(struct tw_youngs_modulus youngs_modulus,
                          struct tw_diameter diameter,
                          struct tw_overhang overhang,
                          struct tw_stiffness chuck,
                          struct tw_rotational_stiffness chuck_rotational,
                          struct tw_stiffness centre,
                          struct tw_passive_force passive_force,
                          struct tw_length at,
                          struct tw_passive_force *centre_force,
                          struct tw_error *detail);

// tw_centre_force for every row.
//
// Columns, see the first page: youngs_modulus, diameter, overhang, chuck, chuck_rotational,
// centre, passive_force and at are read, centre_force is written. row_status may be NULL; else
// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_centre_force_column(const struct tw_column *youngs_modulus,
                                 const struct tw_column *diameter,
                                 const struct tw_column *overhang,
                                 const struct tw_column *chuck,
                                 const struct tw_column *chuck_rotational,
                                 const struct tw_column *centre,
                                 const struct tw_column *passive_force,
                                 const struct tw_column *at,
                                 const struct tw_out_column *centre_force,
                                 int32_t *row_status,
                                 size_t row_status_stride_bytes,
                                 struct tw_error *detail);

// Where between two stations a moving tool bends a round bar most, and how far. In the chuck
// alone that is the far station; with a centre it lies between (rigid: 0.586 of the overhang
// from the chuck) or at one of the two.
//
// support is a number of enum tw_support, springs as of tw_deflection_at. from and to are
// measured from the chuck; refused (TW_CONTRADICTION): one beyond the overhang, and to before
// from.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: derived: the zeros of the derivative of the deflection.
// Example: tw_worst_station(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(20),
//     tw_overhang_millimeter(300), tw_stiffness_rigid(), tw_rotational_stiffness_rigid(),
//     tw_stiffness_rigid(), tw_passive_force_newton(100), tw_length_millimeter(10),
//     tw_length_millimeter(290), TW_SUPPORT_CHUCK_AND_CENTRE, &at, &deflection, NULL);
//     at.mm is 175.736 and tw_deflection_as_micrometer(deflection) is 16.0631.
TW_CHECK
tw_status tw_worst_station(struct tw_youngs_modulus youngs_modulus,
                           struct tw_diameter diameter,
                           struct tw_overhang overhang,
                           struct tw_stiffness chuck,
                           struct tw_rotational_stiffness chuck_rotational,
                           struct tw_stiffness centre,
                           struct tw_passive_force passive_force,
                           struct tw_length from,
                           struct tw_length to,
                           int32_t support,
                           struct tw_length *at,
                           struct tw_deflection *deflection,
                           struct tw_error *detail);

// tw_worst_station for every row.
//
// Columns, see the first page: youngs_modulus, diameter, overhang, chuck, chuck_rotational,
// centre, passive_force, from and to are read, at and deflection are written, each may be NULL
// unless both are. support is one number for all rows; one that is refused fails the whole call.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_worst_station_column(const struct tw_column *youngs_modulus,
                                  const struct tw_column *diameter,
                                  const struct tw_column *overhang,
                                  const struct tw_column *chuck,
                                  const struct tw_column *chuck_rotational,
                                  const struct tw_column *centre,
                                  const struct tw_column *passive_force,
                                  const struct tw_column *from,
                                  const struct tw_column *to,
                                  int32_t support,
                                  const struct tw_out_column *at,
                                  const struct tw_out_column *deflection,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// How stiff the chuck is, across and against tilting, by the errors of the diameter that were
// measured at two places of a round bar turned in the chuck alone, both measured from the chuck:
// error/2 / passive_force less what the bar itself gives way in a rigid chuck is
// 1/chuck + at^2/chuck_rotational. A spring that comes out rigid is infinite, as tw_deflection_at
// takes it.
//
// The errors come from the spring alone: a tool that wears or a headstock out of line is told as
// a softer chuck. Refused (TW_CONTRADICTION): two places that are one, a place beyond the
// overhang, errors smaller than the bar alone would spring, and a force that is not above zero.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: derived.
// Example: tw_stiffness_from_taper(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(30),
//     tw_overhang_millimeter(150), tw_passive_force_newton(120), tw_length_millimeter(50),
//     tw_diameter_error_micrometer(15.1976386), tw_length_millimeter(150),
//     tw_diameter_error_micrometer(94.3362424), &chuck, &chuck_rotational, NULL);
//     chuck.kn_per_mm is 30.000 and chuck_rotational.knm_per_rad is 100.00.
TW_CHECK
tw_status tw_stiffness_from_taper(struct tw_youngs_modulus youngs_modulus,
                                  struct tw_diameter diameter,
                                  struct tw_overhang overhang,
                                  struct tw_passive_force passive_force,
                                  struct tw_length near_at,
                                  struct tw_diameter_error near_error,
                                  struct tw_length far_at,
                                  struct tw_diameter_error far_error,
                                  struct tw_stiffness *chuck,
                                  struct tw_rotational_stiffness *chuck_rotational,
                                  struct tw_error *detail);

// tw_stiffness_from_taper for every row.
//
// Columns, see the first page: youngs_modulus, diameter, overhang, passive_force, near_at,
// near_error, far_at and far_error are read, chuck and chuck_rotational are written, each may be
// NULL unless both are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
// apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_stiffness_from_taper_column(const struct tw_column *youngs_modulus,
                                         const struct tw_column *diameter,
                                         const struct tw_column *overhang,
                                         const struct tw_column *passive_force,
                                         const struct tw_column *near_at,
                                         const struct tw_column *near_error,
                                         const struct tw_column *far_at,
                                         const struct tw_column *far_error,
                                         const struct tw_out_column *chuck,
                                         const struct tw_out_column *chuck_rotational,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// The spindle speed at which a round bar of one diameter whips.
//
// support and the springs as for tw_deflection_at. Run well below: about 0.7 of it is common
// practice.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Blevins, Formulas for Natural Frequency and Mode Shape, from memory; derived.
// Example: tw_critical_speed_of_bar(tw_youngs_modulus_gigapascal(210),
//     tw_density_kilogram_per_cubic_meter(7850), tw_diameter_inch(0.75), tw_overhang_inch(30),
//     TW_SUPPORT_CHUCK_AND_CENTRE, tw_stiffness_rigid(), tw_rotational_stiffness_rigid(),
//     tw_stiffness_rigid(), &first_critical_speed, NULL); first_critical_speed.rpm is 6246.04.
TW_CHECK
tw_status tw_critical_speed_of_bar(struct tw_youngs_modulus youngs_modulus,
                                   struct tw_density density,
                                   struct tw_diameter diameter,
                                   struct tw_overhang overhang,
                                   int32_t support,
                                   struct tw_stiffness chuck,
                                   struct tw_rotational_stiffness chuck_rotational,
                                   struct tw_stiffness centre,
                                   struct tw_first_critical_speed *first_critical_speed,
                                   struct tw_error *detail);

// tw_critical_speed_of_bar for every row.
//
// Columns, see the first page: youngs_modulus, density, diameter, overhang, chuck,
// chuck_rotational and centre are read, first_critical_speed is written. support is one number for
// all rows. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_critical_speed_of_bar_column(const struct tw_column *youngs_modulus,
                                          const struct tw_column *density,
                                          const struct tw_column *diameter,
                                          const struct tw_column *overhang,
                                          int32_t support,
                                          const struct tw_column *chuck,
                                          const struct tw_column *chuck_rotational,
                                          const struct tw_column *centre,
                                          const struct tw_out_column *first_critical_speed,
                                          int32_t *row_status,
                                          size_t row_status_stride_bytes,
                                          struct tw_error *detail);

// The spindle speed at which a round bar in a rigid chuck whips, with a mass at its free end; an
// upper bound, at most 1.5 % high.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Blevins, Formulas for Natural Frequency and Mode Shape, from memory; derived.
// Example: tw_critical_speed_with_end_mass(tw_youngs_modulus_gigapascal(210),
//     tw_density_kilogram_per_cubic_meter(7850), tw_diameter_millimeter(20),
//     tw_overhang_millimeter(200), tw_mass_kilogram(2), &first_critical_speed, NULL);
//     first_critical_speed.rpm is 5162.46.
TW_CHECK
tw_status tw_critical_speed_with_end_mass(struct tw_youngs_modulus youngs_modulus,
                                          struct tw_density density,
                                          struct tw_diameter diameter,
                                          struct tw_overhang overhang,
                                          struct tw_mass end_mass,
                                          struct tw_first_critical_speed *first_critical_speed,
                                          struct tw_error *detail);

// tw_critical_speed_with_end_mass for every row.
//
// Columns, see the first page: youngs_modulus, density, diameter, overhang and end_mass are read,
// first_critical_speed is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_critical_speed_with_end_mass_column(const struct tw_column *youngs_modulus,
                                                 const struct tw_column *density,
                                                 const struct tw_column *diameter,
                                                 const struct tw_column *overhang,
                                                 const struct tw_column *end_mass,
                                                 const struct tw_out_column *first_critical_speed,
                                                 int32_t *row_status,
                                                 size_t row_status_stride_bytes,
                                                 struct tw_error *detail);

// How far a bar throws itself out of the axis when its mass lies off it: e r^2/(1 - r^2), r the
// spindle speed over the critical one. At the critical speed and above it is refused
// (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: the rotor of Jeffcott (Laval), any text on vibration, from memory; derived.
// Example: tw_whip(tw_eccentricity_millimeter(0.05), tw_spindle_speed_revolution_per_minute(900),
//     tw_first_critical_speed_revolution_per_minute(1500), &deflection, NULL);
//     deflection.mm is 0.028125.
TW_CHECK
tw_status tw_whip(struct tw_eccentricity eccentricity,
                  struct tw_spindle_speed spindle_speed,
                  struct tw_first_critical_speed first_critical_speed,
                  struct tw_deflection *deflection,
                  struct tw_error *detail);

// tw_whip for every row.
//
// Columns, see the first page: eccentricity, spindle_speed and first_critical_speed are read,
// deflection is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
// apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_whip_column(const struct tw_column *eccentricity,
                         const struct tw_column *spindle_speed,
                         const struct tw_column *first_critical_speed,
                         const struct tw_out_column *deflection,
                         int32_t *row_status,
                         size_t row_status_stride_bytes,
                         struct tw_error *detail);

// The true depth of a cut of a set depth on a bar that springs, and what is left standing: a +
// F_p(a)/stiffness = set_depth, F_p the passive force of tw_cutting_forces. stiffness is that of
// bar and supports at the tool. TW_IMPOSSIBLE for an edge beyond 90 deg that pulls the bar in
// farther than any depth balances.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: Mayer, Phan and Cloutier 2000, Applied Mathematical Modelling 24, from memory; derived.
// Example: tw_true_depth(tw_specific_force_megapascal(2220), tw_exponent_one(0.14),
//     tw_feed_millimeter_per_revolution(0.1), tw_cutting_edge_angle_degree(95),
//     tw_corner_radius_millimeter(0.4), tw_normal_ratio_one(0.5), tw_depth_of_cut_millimeter(0.3),
//     tw_stiffness_newton_per_millimeter(2780.115), &depth_of_cut, &left, NULL);
//     depth_of_cut.mm is 0.288999 and tw_deflection_as_micrometer(left) is 11.0012.
TW_CHECK
tw_status tw_true_depth(struct tw_specific_force specific_force,
                        struct tw_exponent exponent,
                        struct tw_feed feed,
                        struct tw_cutting_edge_angle cutting_edge_angle,
                        struct tw_corner_radius corner_radius,
                        struct tw_normal_ratio normal_ratio,
                        struct tw_depth_of_cut set_depth,
                        struct tw_stiffness stiffness,
                        struct tw_depth_of_cut *depth_of_cut,
                        struct tw_deflection *left,
                        struct tw_error *detail);

// tw_true_depth for every row.
//
// Columns, see the first page: specific_force, exponent, feed, cutting_edge_angle, corner_radius,
// normal_ratio, set_depth and stiffness are read, depth_of_cut and left are written, and each may
// be NULL unless all are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
// apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_true_depth_column(const struct tw_column *specific_force,
                               const struct tw_column *exponent,
                               const struct tw_column *feed,
                               const struct tw_column *cutting_edge_angle,
                               const struct tw_column *corner_radius,
                               const struct tw_column *normal_ratio,
                               const struct tw_column *set_depth,
                               const struct tw_column *stiffness,
                               const struct tw_out_column *depth_of_cut,
                               const struct tw_out_column *left,
                               int32_t *row_status,
                               size_t row_status_stride_bytes,
                               struct tw_error *detail);

// The greatest depth of cut whose spring stays within an allowed error of the diameter, away from
// the tool or, with an edge beyond 90 deg, towards it. TW_IMPOSSIBLE where the passive force of
// this edge never grows so far (an edge of 90 deg, once the corner is in the cut): then another
// limit decides, not the spring.
// TW_CONTRADICTION for an allowed error that is not above zero.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_largest_depth_for(tw_specific_force_megapascal(2220), tw_exponent_one(0.14),
//     tw_feed_millimeter_per_revolution(0.1), tw_cutting_edge_angle_degree(95),
//     tw_corner_radius_millimeter(0.4), tw_normal_ratio_one(0.5),
//     tw_stiffness_newton_per_millimeter(2780.115), tw_diameter_error_micrometer(22.00246),
//     &depth_of_cut, NULL); depth_of_cut.mm is 0.28900.
TW_CHECK
tw_status tw_largest_depth_for(struct tw_specific_force specific_force,
                               struct tw_exponent exponent,
                               struct tw_feed feed,
                               struct tw_cutting_edge_angle cutting_edge_angle,
                               struct tw_corner_radius corner_radius,
                               struct tw_normal_ratio normal_ratio,
                               struct tw_stiffness stiffness,
                               struct tw_diameter_error allowed,
                               struct tw_depth_of_cut *depth_of_cut,
                               struct tw_error *detail);

// tw_largest_depth_for for every row.
//
// Columns, see the first page: specific_force, exponent, feed, cutting_edge_angle, corner_radius,
// normal_ratio, stiffness and allowed are read, depth_of_cut is written. row_status may be NULL;
// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_largest_depth_for_column(const struct tw_column *specific_force,
                                      const struct tw_column *exponent,
                                      const struct tw_column *feed,
                                      const struct tw_column *cutting_edge_angle,
                                      const struct tw_column *corner_radius,
                                      const struct tw_column *normal_ratio,
                                      const struct tw_column *stiffness,
                                      const struct tw_column *allowed,
                                      const struct tw_out_column *depth_of_cut,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// The error of the diameter when the bar gives way both across and along the cutting speed: 2
// (sqrt((R + delta)^2 + v^2) - R).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_diameter_error_with_sag(tw_diameter_millimeter(10), tw_deflection_micrometer(20),
//     tw_tangential_deflection_micrometer(60), &diameter_error, NULL);
//     tw_diameter_error_as_micrometer(diameter_error) is 40.7171.
TW_CHECK
tw_status tw_diameter_error_with_sag(struct tw_diameter diameter,
                                     struct tw_deflection passive,
                                     struct tw_tangential_deflection tangential,
                                     struct tw_diameter_error *diameter_error,
                                     struct tw_error *detail);

// tw_diameter_error_with_sag for every row.
//
// Columns, see the first page: diameter, passive and tangential are read, diameter_error is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_diameter_error_with_sag_column(const struct tw_column *diameter,
                                            const struct tw_column *passive,
                                            const struct tw_column *tangential,
                                            const struct tw_out_column *diameter_error,
                                            int32_t *row_status,
                                            size_t row_status_stride_bytes,
                                            struct tw_error *detail);

// The greatest feed whose spring at a depth stays within an allowed error of the diameter: the
// passive force grows with the feed to the power 1 - exponent, and 2 F_p / stiffness = allowed.
// stiffness is that of bar and supports at the tool. Another limit, such as the finish, mostly
// decides before.
//
// An error that is not above zero is refused (TW_CONTRADICTION); so is a cut that neither pushes
// the bar away nor pulls it in (TW_IMPOSSIBLE): no feed is too large for its spring.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_largest_feed_for(tw_specific_force_megapascal(2220), tw_exponent_one(0.14),
//     tw_cutting_edge_angle_degree(95), tw_corner_radius_millimeter(0.4),
//     tw_normal_ratio_one(0.5), tw_depth_of_cut_millimeter(0.2889988),
//     tw_stiffness_newton_per_millimeter(2780.115), tw_diameter_error_micrometer(22.00246), &feed,
//     NULL); feed.mm_per_rev is 0.10000.
TW_CHECK
tw_status tw_largest_feed_for(struct tw_specific_force specific_force,
                              struct tw_exponent exponent,
                              struct tw_cutting_edge_angle cutting_edge_angle,
                              struct tw_corner_radius corner_radius,
                              struct tw_normal_ratio normal_ratio,
                              struct tw_depth_of_cut depth_of_cut,
                              struct tw_stiffness stiffness,
                              struct tw_diameter_error allowed,
                              struct tw_feed *feed,
                              struct tw_error *detail);

// tw_largest_feed_for for every row.
//
// Columns, see the first page: specific_force, exponent, cutting_edge_angle, corner_radius,
// normal_ratio, depth_of_cut, stiffness and allowed are read, feed is written. row_status may be
// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_largest_feed_for_column(const struct tw_column *specific_force,
                                     const struct tw_column *exponent,
                                     const struct tw_column *cutting_edge_angle,
                                     const struct tw_column *corner_radius,
                                     const struct tw_column *normal_ratio,
                                     const struct tw_column *depth_of_cut,
                                     const struct tw_column *stiffness,
                                     const struct tw_column *allowed,
                                     const struct tw_out_column *feed,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The share of a set depth that a springing bar leaves standing, from the deflection that the
// whole depth would cause: mu/(1 + mu), mu = deflection/set_depth. A negative deflection is
// refused (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_share_left(tw_depth_of_cut_millimeter(0.5), tw_deflection_millimeter(0.125), &share,
//     NULL); share.ratio is 0.2000.
TW_CHECK
tw_status tw_share_left(struct tw_depth_of_cut set_depth,
                        struct tw_deflection deflection,
                        struct tw_spring_share *share,
                        struct tw_error *detail);

// tw_share_left for every row.
//
// Columns, see the first page: set_depth and deflection are read, share is written. row_status may
// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_share_left_column(const struct tw_column *set_depth,
                               const struct tw_column *deflection,
                               const struct tw_out_column *share,
                               int32_t *row_status,
                               size_t row_status_stride_bytes,
                               struct tw_error *detail);

// What equal cuts, one after the other, leave standing in the end: set_depth share/(1 - share). A
// share of one is refused (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived: the limit of tw_left_after_equal_infeeds.
// Example: tw_left_in_the_end(tw_depth_of_cut_millimeter(0.2), tw_spring_share_one(0.130434783),
//     &deflection, NULL); tw_deflection_as_micrometer(deflection) is 30.0000.
TW_CHECK
tw_status tw_left_in_the_end(struct tw_depth_of_cut set_depth,
                             struct tw_spring_share share,
                             struct tw_deflection *deflection,
                             struct tw_error *detail);

// tw_left_in_the_end for every row.
//
// Columns, see the first page: set_depth and share are read, deflection is written. row_status may
// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_left_in_the_end_column(const struct tw_column *set_depth,
                                    const struct tw_column *share,
                                    const struct tw_out_column *deflection,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// What a light cut takes after a heavy one that left some metal standing: (set_depth +
// left_before)(1 - share), more than was dialled.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_light_after_heavy(tw_deflection_millimeter(0.130434783),
//     tw_depth_of_cut_millimeter(0.1), tw_spring_share_one(0.130434783), &depth_of_cut, NULL);
//     depth_of_cut.mm is 0.200378.
TW_CHECK
tw_status tw_light_after_heavy(struct tw_deflection left_before,
                               struct tw_depth_of_cut set_depth,
                               struct tw_spring_share share,
                               struct tw_depth_of_cut *depth_of_cut,
                               struct tw_error *detail);

// tw_light_after_heavy for every row.
//
// Columns, see the first page: left_before, set_depth and share are read, depth_of_cut is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_light_after_heavy_column(const struct tw_column *left_before,
                                      const struct tw_column *set_depth,
                                      const struct tw_column *share,
                                      const struct tw_out_column *depth_of_cut,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// What is left standing after passes at one and the same reading of the dial: set_depth times
// share to the power passes. passes counts the first cut too, from 0 (TW_OUT_OF_RANGE). A force
// in proportion to the depth, and only while what is left is thicker than the least chip:
// tw_spring_passes.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_left_after_passes(tw_depth_of_cut_millimeter(0.5), tw_spring_share_one(0.2), 3,
//     &deflection, NULL); tw_deflection_as_micrometer(deflection) is 4.000.
TW_CHECK
tw_status tw_left_after_passes(struct tw_depth_of_cut set_depth,
                               struct tw_spring_share share,
                               int32_t passes,
                               struct tw_deflection *deflection,
                               struct tw_error *detail);

// tw_left_after_passes for every row.
//
// Columns, see the first page: set_depth and share are read, deflection is written. passes is
// one number for all rows; one that is refused fails the whole call. row_status may be NULL;
// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_left_after_passes_column(const struct tw_column *set_depth,
                                      const struct tw_column *share,
                                      int32_t passes,
                                      const struct tw_out_column *deflection,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// What is left standing after passes with the same infeed each: set_depth q (1 - q^passes)/(1 - q),
// q the share. It tends to tw_left_in_the_end: equal last cuts repeat the same spring, so that
// the correction of one serves the next. passes from 0 (TW_OUT_OF_RANGE). A share of one is
// refused (TW_CONTRADICTION): then nothing is cut at all.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_left_after_equal_infeeds(tw_depth_of_cut_millimeter(0.2),
//     tw_spring_share_one(0.130434783), 3, &deflection, NULL);
//     tw_deflection_as_micrometer(deflection) is 29.9334.
TW_CHECK
tw_status tw_left_after_equal_infeeds(struct tw_depth_of_cut set_depth,
                                      struct tw_spring_share share,
                                      int32_t passes,
                                      struct tw_deflection *deflection,
                                      struct tw_error *detail);

// tw_left_after_equal_infeeds for every row.
//
// Columns, see the first page: set_depth and share are read, deflection is written. passes is
// one number for all rows; one that is refused fails the whole call. row_status may be NULL;
// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_left_after_equal_infeeds_column(const struct tw_column *set_depth,
                                             const struct tw_column *share,
                                             int32_t passes,
                                             const struct tw_out_column *deflection,
                                             int32_t *row_status,
                                             size_t row_status_stride_bytes,
                                             struct tw_error *detail);

// How many passes without new infeed still cut, and what the last of them leaves standing.
// least_depth is the least that the edge can cut (tw_least_depth). A force in proportion to the
// depth.
//
// An output may be NULL unless both are. detail may be NULL. After a failure left is NaN and
// passes 0.
//
// Source: derived: the last pass is the one after which less is left than the edge can cut.
// Example: tw_spring_passes(tw_depth_of_cut_millimeter(0.5), tw_spring_share_one(0.2),
//     tw_depth_of_cut_millimeter(0.01), &left, &passes, NULL);
//     tw_deflection_as_micrometer(left) is 4.000 and passes is 2.
TW_CHECK
tw_status tw_spring_passes(struct tw_depth_of_cut set_depth,
                           struct tw_spring_share share,
                           struct tw_depth_of_cut least_depth,
                           struct tw_deflection *left,
                           int32_t *passes,
                           struct tw_error *detail);

// tw_spring_passes for every row.
//
// Columns, see the first page: set_depth, share and least_depth are read, left is written.
// passes may be NULL; else one int32_t a row (0 for a bad row), passes_stride_bytes apart (at
// least 4). row_status likewise. detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_spring_passes_column(const struct tw_column *set_depth,
                                  const struct tw_column *share,
                                  const struct tw_column *least_depth,
                                  const struct tw_out_column *left,
                                  int32_t *passes,
                                  size_t passes_stride_bytes,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// Torque and power that a drive with a motor of variable speed gives at a spindle speed: constant
// torque below the base speed, constant power above. power is that at the spindle, losses off;
// base_speed is that of the range of gears engaged (tw_base_speed_in_range).
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: common property of field-weakened drives, no source.
// Example: tw_torque_available(tw_power_kilowatt(1.5),
//     tw_spindle_speed_revolution_per_minute(1400), tw_spindle_speed_revolution_per_minute(350),
//     &torque, &power_there, NULL); torque.nm is 10.2314 and power_there.kw is 0.3750.
TW_CHECK
tw_status tw_torque_available(struct tw_power power,
                              struct tw_spindle_speed base_speed,
                              struct tw_spindle_speed spindle_speed,
                              struct tw_torque *torque,
                              struct tw_power *power_there,
                              struct tw_error *detail);

// tw_torque_available for every row.
//
// Columns, see the first page: power, base_speed and spindle_speed are read, torque and
// power_there are written, each may be NULL unless all are. row_status may be NULL; else one
// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_torque_available_column(const struct tw_column *power,
                                     const struct tw_column *base_speed,
                                     const struct tw_column *spindle_speed,
                                     const struct tw_out_column *torque,
                                     const struct tw_out_column *power_there,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The base speed of a drive in another range of gears: the spindle speed here becomes the speed
// there at the same speed of the motor, such as the tops of the two ranges.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the ratio of a gear.
// Example: tw_base_speed_in_range(tw_spindle_speed_revolution_per_minute(1000),
//     tw_spindle_speed_revolution_per_minute(2000), tw_spindle_speed_revolution_per_minute(400),
//     &base_speed_there, NULL); base_speed_there.rpm is 200.0.
TW_CHECK
tw_status tw_base_speed_in_range(struct tw_spindle_speed base_speed,
                                 struct tw_spindle_speed here,
                                 struct tw_spindle_speed there,
                                 struct tw_spindle_speed *base_speed_there,
                                 struct tw_error *detail);

// tw_base_speed_in_range for every row.
//
// Columns, see the first page: base_speed, here and there are read, base_speed_there is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_base_speed_in_range_column(const struct tw_column *base_speed,
                                        const struct tw_column *here,
                                        const struct tw_column *there,
                                        const struct tw_out_column *base_speed_there,
                                        int32_t *row_status,
                                        size_t row_status_stride_bytes,
                                        struct tw_error *detail);

// The highest spindle speed at which a drive turns a cut without stalling: power / (2 pi torque).
// Refused (TW_IMPOSSIBLE) where the cut asks for more torque than the drive gives at any speed,
// and where it asks for none, so that no speed stalls it. power is that at the spindle.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: common property of field-weakened drives, no source.
// Example: tw_highest_speed_for_cut(tw_power_kilowatt(1.5),
//     tw_spindle_speed_revolution_per_minute(1400), tw_main_force_newton(400),
//     tw_diameter_millimeter(30), &spindle_speed, NULL); spindle_speed.rpm is 2387.32.
TW_CHECK
tw_status tw_highest_speed_for_cut(struct tw_power power,
                                   struct tw_spindle_speed base_speed,
                                   struct tw_main_force main_force,
                                   struct tw_diameter mean_diameter,
                                   struct tw_spindle_speed *spindle_speed,
                                   struct tw_error *detail);

// tw_highest_speed_for_cut for every row.
//
// Columns, see the first page: power, base_speed, main_force and mean_diameter are read,
// spindle_speed is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_highest_speed_for_cut_column(const struct tw_column *power,
                                          const struct tw_column *base_speed,
                                          const struct tw_column *main_force,
                                          const struct tw_column *mean_diameter,
                                          const struct tw_out_column *spindle_speed,
                                          int32_t *row_status,
                                          size_t row_status_stride_bytes,
                                          struct tw_error *detail);

// The power that the motor gives for a power at the spindle: spindle_power / efficiency. Without
// the idle power of the machine. The efficiency is 0.7 to 0.85 for belt and gear lathes (common
// practice, no source).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the efficiency.
// Example: tw_motor_power(tw_power_kilowatt(1.2), tw_efficiency_one(0.8), &motor_power, NULL);
//     motor_power.kw is 1.500.
TW_CHECK
tw_status tw_motor_power(struct tw_power spindle_power,
                         struct tw_efficiency efficiency,
                         struct tw_power *motor_power,
                         struct tw_error *detail);

// tw_motor_power for every row.
//
// Columns, see the first page: spindle_power and efficiency are read, motor_power is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_motor_power_column(const struct tw_column *spindle_power,
                                const struct tw_column *efficiency,
                                const struct tw_out_column *motor_power,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The power that reaches the spindle from a motor: efficiency times motor_power. Without the
// idle power of the machine.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the efficiency.
// Example: tw_spindle_power(tw_power_kilowatt(1.5), tw_efficiency_one(0.8), &spindle_power, NULL);
//     spindle_power.kw is 1.200.
TW_CHECK
tw_status tw_spindle_power(struct tw_power motor_power,
                           struct tw_efficiency efficiency,
                           struct tw_power *spindle_power,
                           struct tw_error *detail);

// tw_spindle_power for every row.
//
// Columns, see the first page: motor_power and efficiency are read, spindle_power is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_spindle_power_column(const struct tw_column *motor_power,
                                  const struct tw_column *efficiency,
                                  const struct tw_out_column *spindle_power,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The torque of a power at a spindle speed: power / (2 pi n). The power is that at the spindle;
// for the torque that a cut takes see tw_cutting_torque.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of power.
// Example: tw_torque_at(tw_power_kilowatt(1.5), tw_spindle_speed_revolution_per_minute(1400),
//     &torque, NULL); torque.nm is 10.2314.
TW_CHECK
tw_status tw_torque_at(struct tw_power power,
                       struct tw_spindle_speed spindle_speed,
                       struct tw_torque *torque,
                       struct tw_error *detail);

// tw_torque_at for every row.
//
// Columns, see the first page: power and spindle_speed are read, torque is written. row_status
// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_torque_at_column(const struct tw_column *power,
                              const struct tw_column *spindle_speed,
                              const struct tw_out_column *torque,
                              int32_t *row_status,
                              size_t row_status_stride_bytes,
                              struct tw_error *detail);

// The deepest cut for which a power at the spindle is enough: power / (k_c feed cutting_speed),
// with k_c at the thickness feed sin(cutting_edge_angle). Straight edge; the cutting speed of
// the diameter before the cut is on the safe side.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Kienzle's law and P = F_c v_c, solved for the depth.
// Example: tw_largest_depth_for_power(tw_specific_force_megapascal(1780), tw_exponent_one(0.17),
//     tw_feed_millimeter_per_revolution(0.2), tw_cutting_edge_angle_degree(90),
//     tw_cutting_speed_meter_per_minute(100), tw_power_kilowatt(1.2), &depth_of_cut, NULL);
//     depth_of_cut.mm is 1.53836.
TW_CHECK
tw_status tw_largest_depth_for_power(struct tw_specific_force specific_force,
                                     struct tw_exponent exponent,
                                     struct tw_feed feed,
                                     struct tw_cutting_edge_angle cutting_edge_angle,
                                     struct tw_cutting_speed cutting_speed,
                                     struct tw_power power,
                                     struct tw_depth_of_cut *depth_of_cut,
                                     struct tw_error *detail);

// tw_largest_depth_for_power for every row.
//
// Columns, see the first page: specific_force, exponent, feed, cutting_edge_angle, cutting_speed
// and power are read, depth_of_cut is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_largest_depth_for_power_column(const struct tw_column *specific_force,
                                            const struct tw_column *exponent,
                                            const struct tw_column *feed,
                                            const struct tw_column *cutting_edge_angle,
                                            const struct tw_column *cutting_speed,
                                            const struct tw_column *power,
                                            const struct tw_out_column *depth_of_cut,
                                            int32_t *row_status,
                                            size_t row_status_stride_bytes,
                                            struct tw_error *detail);

// The lowest spindle speed at which a drive turns a cut without stalling, where its torque falls
// towards standstill: full_torque_from times the torque of the cut over the full one.
// full_torque_from is the slowest speed at which the drive still gives its full torque, at most
// base_speed (TW_CONTRADICTION). Refused (TW_IMPOSSIBLE) where the cut asks for more torque than
// the drive gives at any speed, and where it asks for none. power is that at the spindle.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: common property of field-weakened drives, no source; the fall below: judgement.
// Example: tw_lowest_speed_for_cut(tw_power_kilowatt(1.5),
//     tw_spindle_speed_revolution_per_minute(1400), tw_spindle_speed_revolution_per_minute(140),
//     tw_main_force_newton(400), tw_diameter_millimeter(30), &spindle_speed, NULL);
//     spindle_speed.rpm is 82.1003.
TW_CHECK
tw_status tw_lowest_speed_for_cut(struct tw_power power,
                                  struct tw_spindle_speed base_speed,
                                  struct tw_spindle_speed full_torque_from,
                                  struct tw_main_force main_force,
                                  struct tw_diameter mean_diameter,
                                  struct tw_spindle_speed *spindle_speed,
                                  struct tw_error *detail);

// tw_lowest_speed_for_cut for every row.
//
// Columns, see the first page: power, base_speed, full_torque_from, main_force and mean_diameter
// are read, spindle_speed is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_lowest_speed_for_cut_column(const struct tw_column *power,
                                         const struct tw_column *base_speed,
                                         const struct tw_column *full_torque_from,
                                         const struct tw_column *main_force,
                                         const struct tw_column *mean_diameter,
                                         const struct tw_out_column *spindle_speed,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// How thick and how wide a chip the straight edge takes: thickness feed sin(cutting_edge_angle),
// width depth_of_cut / sin(cutting_edge_angle). Exact for a sharp corner; with a corner radius
// good to a few per cent when the depth is more than three times the radius (common practice, no
// source).
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 3002-3 (from memory).
// Example: tw_chip_section(tw_depth_of_cut_millimeter(3), tw_feed_millimeter_per_revolution(0.3),
//     tw_cutting_edge_angle_degree(75), &chip_thickness, &chip_width, NULL);
//     chip_thickness.mm is 0.289778 and chip_width.mm is 3.10583.
TW_CHECK
tw_status tw_chip_section(struct tw_depth_of_cut depth_of_cut,
                          struct tw_feed feed,
                          struct tw_cutting_edge_angle cutting_edge_angle,
                          struct tw_chip_thickness *chip_thickness,
                          struct tw_chip_width *chip_width,
                          struct tw_error *detail);

// tw_chip_section for every row.
//
// Columns, see the first page: depth_of_cut, feed and cutting_edge_angle are read,
// chip_thickness and chip_width are written, each may be NULL unless both are. row_status may be
// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_chip_section_column(const struct tw_column *depth_of_cut,
                                 const struct tw_column *feed,
                                 const struct tw_column *cutting_edge_angle,
                                 const struct tw_out_column *chip_thickness,
                                 const struct tw_out_column *chip_width,
                                 int32_t *row_status,
                                 size_t row_status_stride_bytes,
                                 struct tw_error *detail);

// The largest local edge angle in the cut, where the edge leaves the work through the old
// surface: acos(1 - depth_of_cut / corner_radius), at most cutting_edge_angle. Below
// cutting_edge_angle the cut is a light one: only the corner arc cuts.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_largest_edge_angle(tw_depth_of_cut_millimeter(0.2),
//     tw_cutting_edge_angle_degree(95), tw_corner_radius_millimeter(0.8), &largest_edge_angle,
//     NULL); largest_edge_angle.deg is 41.4096.
TW_CHECK
tw_status tw_largest_edge_angle(struct tw_depth_of_cut depth_of_cut,
                                struct tw_cutting_edge_angle cutting_edge_angle,
                                struct tw_corner_radius corner_radius,
                                struct tw_cutting_edge_angle *largest_edge_angle,
                                struct tw_error *detail);

// tw_largest_edge_angle for every row.
//
// Columns, see the first page: depth_of_cut, cutting_edge_angle and corner_radius are read,
// largest_edge_angle is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_largest_edge_angle_column(const struct tw_column *depth_of_cut,
                                       const struct tw_column *cutting_edge_angle,
                                       const struct tw_column *corner_radius,
                                       const struct tw_out_column *largest_edge_angle,
                                       int32_t *row_status,
                                       size_t row_status_stride_bytes,
                                       struct tw_error *detail);

// How thick the chip of a light cut becomes at its thickest, where only the corner arc cuts:
// r - sqrt(r^2 + f^2 - 2 f sqrt(2 r a - a^2)). Refused (TW_CONTRADICTION): a depth beyond the corner
// radius, and a feed beyond sqrt(2 r a - a^2).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: the form of Blake and Scattergood 1990 (from memory); derived again.
// Example: tw_thickest_chip(tw_depth_of_cut_inch(0.005), tw_feed_inch_per_revolution(0.003),
//     tw_corner_radius_inch_fraction(1, 64), &chip_thickness, NULL);
//     tw_chip_thickness_as_micrometer(chip_thickness) is 51.9565.
TW_CHECK
tw_status tw_thickest_chip(struct tw_depth_of_cut depth_of_cut,
                           struct tw_feed feed,
                           struct tw_corner_radius corner_radius,
                           struct tw_chip_thickness *chip_thickness,
                           struct tw_error *detail);

// tw_thickest_chip for every row.
//
// Columns, see the first page: depth_of_cut, feed and corner_radius are read, chip_thickness is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_thickest_chip_column(const struct tw_column *depth_of_cut,
                                  const struct tw_column *feed,
                                  const struct tw_column *corner_radius,
                                  const struct tw_out_column *chip_thickness,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The depth below which the corner only rubs, because its thickest chip is the least one that
// forms: r (1 - sqrt(1 - (h_min / f)^2)). It is the depth at which a chip forms at all; a practical
// floor is several times as much (common practice, no source). Refused (TW_CONTRADICTION): a
// feed that is not greater than the least chip thickness, and a sharp corner.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_least_depth(tw_chip_thickness_micrometer(8), tw_feed_millimeter_per_revolution(0.1),
//     tw_corner_radius_millimeter(0.8), &depth_of_cut, NULL);
//     tw_depth_of_cut_as_micrometer(depth_of_cut) is 2.56411.
TW_CHECK
tw_status tw_least_depth(struct tw_chip_thickness least_chip_thickness,
                         struct tw_feed feed,
                         struct tw_corner_radius corner_radius,
                         struct tw_depth_of_cut *depth_of_cut,
                         struct tw_error *detail);

// tw_least_depth for every row.
//
// Columns, see the first page: least_chip_thickness, feed and corner_radius are read,
// depth_of_cut is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_least_depth_column(const struct tw_column *least_chip_thickness,
                                const struct tw_column *feed,
                                const struct tw_column *corner_radius,
                                const struct tw_out_column *depth_of_cut,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// How far the major edge reaches ahead of the corner, in the direction of the feed: depth_of_cut
// / tan(cutting_edge_angle), 0 from 90 deg on, where the corner leads. A straight edge.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_edge_lead(tw_depth_of_cut_millimeter(2), tw_cutting_edge_angle_degree(45), &lead,
//     NULL); lead.mm is 2.000.
TW_CHECK
tw_status tw_edge_lead(struct tw_depth_of_cut depth_of_cut,
                       struct tw_cutting_edge_angle cutting_edge_angle,
                       struct tw_length *lead,
                       struct tw_error *detail);

// tw_edge_lead for every row.
//
// Columns, see the first page: depth_of_cut and cutting_edge_angle are read, lead is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_edge_lead_column(const struct tw_column *depth_of_cut,
                              const struct tw_column *cutting_edge_angle,
                              const struct tw_out_column *lead,
                              int32_t *row_status,
                              size_t row_status_stride_bytes,
                              struct tw_error *detail);

// How far a rounded tool's edge is engaged, exactly: how far its corner arc is in the cut on the
// side of the minor edge and on that of the major edge, the cross section of the ridge that
// stays on the work between two turns, and the angle of the chord of the engaged edge to the
// feed, about square to which the chip leaves. Length of edge, cross section and equivalent
// thickness of the chip: tw_equivalent_chip_thickness, with the same arguments. Both ends of the
// arc are counted from its deepest point, positive to either side.
//
// Refused (TW_CONTRADICTION): a sharp corner, a feed at which two turns do not meet on their
// corner arcs, and a depth that is not beyond the ridge.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: geometry, derived; chord: Colwell 1954, Trans. ASME 76 (from memory).
// Example: tw_engaged_edge(tw_depth_of_cut_inch(0.02), tw_feed_inch_per_revolution(0.006),
//     tw_cutting_edge_angle_degree(90), tw_minor_cutting_edge_angle_degree(10),
//     tw_corner_radius_inch_fraction(1, 32), &arc_start, &arc_end, &ridge_area, &chord_angle,
//     NULL); arc_start.deg is 5.50888, arc_end.deg is 68.8998, ridge_area.mm2 is 0.000186064 and
//     chord_angle.deg is 31.6955.
TW_CHECK
tw_status tw_engaged_edge(struct tw_depth_of_cut depth_of_cut,
                          struct tw_feed feed,
                          struct tw_cutting_edge_angle cutting_edge_angle,
                          struct tw_minor_cutting_edge_angle minor_cutting_edge_angle,
                          struct tw_corner_radius corner_radius,
                          struct tw_minor_cutting_edge_angle *arc_start,
                          struct tw_cutting_edge_angle *arc_end,
                          struct tw_chip_area *ridge_area,
                          struct tw_cutting_edge_angle *chord_angle,
                          struct tw_error *detail);

// tw_engaged_edge for every row.
//
// Columns, see the first page: depth_of_cut, feed, cutting_edge_angle, minor_cutting_edge_angle
// and corner_radius are read, arc_start, arc_end, ridge_area and chord_angle are written, each
// may be NULL unless all are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_engaged_edge_column(const struct tw_column *depth_of_cut,
                                 const struct tw_column *feed,
                                 const struct tw_column *cutting_edge_angle,
                                 const struct tw_column *minor_cutting_edge_angle,
                                 const struct tw_column *corner_radius,
                                 const struct tw_out_column *arc_start,
                                 const struct tw_out_column *arc_end,
                                 const struct tw_out_column *ridge_area,
                                 const struct tw_out_column *chord_angle,
                                 int32_t *row_status,
                                 size_t row_status_stride_bytes,
                                 struct tw_error *detail);

// The three forces of a cut with a rounded corner, light cuts included, after the law of Kienzle
// along the edge: specific_force is for a chip of 1 mm by 1 mm, exponent says how it falls with
// the thickness; normal_ratio is the force normal to the edge over the main force (0.5 in common
// practice, 0.3 to 0.8). Sharp tool, no correction for rake and wear.
//
// The passive force can fall below zero with a long straight edge beyond 90 deg.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: Kienzle's law along the edge, derived; normal_ratio is common practice, no source.
// Example: tw_cutting_forces(tw_specific_force_megapascal(700), tw_exponent_one(0.25),
//     tw_depth_of_cut_inch(0.01), tw_feed_inch_per_revolution(0.004),
//     tw_cutting_edge_angle_degree(93), tw_corner_radius_inch_fraction(1, 32),
//     tw_normal_ratio_one(0.5), &main_force, &feed_force, &passive_force, NULL);
//     main_force.n is 39.0493, feed_force.n is 9.48729 and passive_force.n is 16.5972.
TW_CHECK
tw_status tw_cutting_forces(struct tw_specific_force specific_force,
                            struct tw_exponent exponent,
                            struct tw_depth_of_cut depth_of_cut,
                            struct tw_feed feed,
                            struct tw_cutting_edge_angle cutting_edge_angle,
                            struct tw_corner_radius corner_radius,
                            struct tw_normal_ratio normal_ratio,
                            struct tw_main_force *main_force,
                            struct tw_feed_force *feed_force,
                            struct tw_passive_force *passive_force,
                            struct tw_error *detail);

// tw_cutting_forces for every row.
//
// Columns, see the first page: specific_force, exponent, depth_of_cut, feed, cutting_edge_angle,
// corner_radius and normal_ratio are read, main_force, feed_force and passive_force are written,
// each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cutting_forces_column(const struct tw_column *specific_force,
                                   const struct tw_column *exponent,
                                   const struct tw_column *depth_of_cut,
                                   const struct tw_column *feed,
                                   const struct tw_column *cutting_edge_angle,
                                   const struct tw_column *corner_radius,
                                   const struct tw_column *normal_ratio,
                                   const struct tw_out_column *main_force,
                                   const struct tw_out_column *feed_force,
                                   const struct tw_out_column *passive_force,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// The main force on a straight edge after the law of Kienzle: specific_force times width times
// thickness^(1 - exponent) of the cut. With a corner radius see tw_cutting_forces.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Kienzle 1952, VDI-Z 94 (from memory).
// Example: tw_straight_edge_force(tw_specific_force_megapascal(2350), tw_exponent_one(0.21),
//     tw_depth_of_cut_inch(0.08), tw_feed_inch_per_revolution(0.01),
//     tw_cutting_edge_angle_degree(93), &main_force, NULL);
//     tw_main_force_as_pound_force(main_force) is 363.705.
TW_CHECK
tw_status tw_straight_edge_force(struct tw_specific_force specific_force,
                                 struct tw_exponent exponent,
                                 struct tw_depth_of_cut depth_of_cut,
                                 struct tw_feed feed,
                                 struct tw_cutting_edge_angle cutting_edge_angle,
                                 struct tw_main_force *main_force,
                                 struct tw_error *detail);

// tw_straight_edge_force for every row.
//
// Columns, see the first page: specific_force, exponent, depth_of_cut, feed and
// cutting_edge_angle are read, main_force is written. row_status may be NULL; else one int32_t a
// row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_straight_edge_force_column(const struct tw_column *specific_force,
                                        const struct tw_column *exponent,
                                        const struct tw_column *depth_of_cut,
                                        const struct tw_column *feed,
                                        const struct tw_column *cutting_edge_angle,
                                        const struct tw_out_column *main_force,
                                        int32_t *row_status,
                                        size_t row_status_stride_bytes,
                                        struct tw_error *detail);

// What a square millimetre of chip costs in force at a thickness of cut: specific_force (for a
// chip of 1 mm by 1 mm) times thickness^-exponent. Fits hold from about 0.05 mm on.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Kienzle 1952, VDI-Z 94 (from memory).
// Example: tw_specific_force_at(tw_specific_force_megapascal(1780), tw_exponent_one(0.17),
//     tw_chip_thickness_millimeter(0.2), &specific_force_at_chip, NULL);
//     specific_force_at_chip.mpa is 2340.16.
TW_CHECK
tw_status tw_specific_force_at(struct tw_specific_force specific_force,
                               struct tw_exponent exponent,
                               struct tw_chip_thickness chip_thickness,
                               struct tw_specific_force_at_chip *specific_force_at_chip,
                               struct tw_error *detail);

// tw_specific_force_at for every row.
//
// Columns, see the first page: specific_force, exponent and chip_thickness are read,
// specific_force_at_chip is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_specific_force_at_column(const struct tw_column *specific_force,
                                      const struct tw_column *exponent,
                                      const struct tw_column *chip_thickness,
                                      const struct tw_out_column *specific_force_at_chip,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// The main force on a grooving or parting blade: specific_force times width times feed^(1 -
// exponent) times shape_factor, 1.3 for grooving and parting (from memory of machining text
// books), since the chip is held on both sides.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Kienzle 1952, VDI-Z 94 (from memory), for a straight edge with an edge angle of 90 deg.
// Example: tw_parting_force(tw_specific_force_megapascal(2500), tw_exponent_one(0.26),
//     tw_width_millimeter(3), tw_feed_millimeter_per_revolution(0.08), tw_force_factor_one(1),
//     &main_force, NULL); main_force.n is 1157.04.
TW_CHECK
tw_status tw_parting_force(struct tw_specific_force specific_force,
                           struct tw_exponent exponent,
                           struct tw_width width,
                           struct tw_feed feed,
                           struct tw_force_factor shape_factor,
                           struct tw_main_force *main_force,
                           struct tw_error *detail);

// tw_parting_force for every row.
//
// Columns, see the first page: specific_force, exponent, width, feed and shape_factor are read,
// main_force is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
// apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_parting_force_column(const struct tw_column *specific_force,
                                  const struct tw_column *exponent,
                                  const struct tw_column *width,
                                  const struct tw_column *feed,
                                  const struct tw_column *shape_factor,
                                  const struct tw_out_column *main_force,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// Main and feed force on a square blade. The main force is tw_parting_force, with the same
// arguments; the feed force, towards the axis, is normal_ratio times as much and bends the bar.
// A square blade has no passive force; one with an oblique front edge is pushed aside as well.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: Kienzle 1952, VDI-Z 94 (from memory), with the normal ratio of every other edge.
// Example: tw_parting_forces(tw_specific_force_megapascal(2500), tw_exponent_one(0.26),
//     tw_width_millimeter(3), tw_feed_millimeter_per_revolution(0.08), tw_force_factor_one(1.3),
//     tw_normal_ratio_one(0.5), &main_force, &feed_force, NULL); main_force.n is 1504.15 and
//     feed_force.n is 752.075.
TW_CHECK
tw_status tw_parting_forces(struct tw_specific_force specific_force,
                            struct tw_exponent exponent,
                            struct tw_width width,
                            struct tw_feed feed,
                            struct tw_force_factor shape_factor,
                            struct tw_normal_ratio normal_ratio,
                            struct tw_main_force *main_force,
                            struct tw_feed_force *feed_force,
                            struct tw_error *detail);

// tw_parting_forces for every row.
//
// Columns, see the first page: specific_force, exponent, width, feed, shape_factor and
// normal_ratio are read, main_force and feed_force are written, each may be NULL unless both
// are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_parting_forces_column(const struct tw_column *specific_force,
                                   const struct tw_column *exponent,
                                   const struct tw_column *width,
                                   const struct tw_column *feed,
                                   const struct tw_column *shape_factor,
                                   const struct tw_column *normal_ratio,
                                   const struct tw_out_column *main_force,
                                   const struct tw_out_column *feed_force,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// The three forces of a chip, each after a law of its own that was measured: k b h^(1 - m), with
// specific force k and exponent m of main, feed and passive force. Holds for the tool, the edge
// angle and the speeds at which the laws were measured. For a chip from depth, feed and edge
// angle see tw_chip_section.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: Koenig and Essel 1973 (from memory, unverified page).
// Example: tw_measured_forces(tw_specific_force_megapascal(1659), tw_exponent_one(0.21),
//     tw_specific_force_megapascal(521), tw_exponent_one(0.49), tw_specific_force_megapascal(309),
//     tw_exponent_one(0.4), tw_chip_thickness_millimeter(0.3), tw_chip_width_millimeter(2.5),
//     &main_force, &feed_force, &passive_force, NULL); main_force.n is 1602.18,
//     feed_force.n is 704.871 and passive_force.n is 375.121.
TW_CHECK
tw_status tw_measured_forces(struct tw_specific_force main_specific_force,
                             struct tw_exponent main_exponent,
                             struct tw_specific_force feed_specific_force,
                             struct tw_exponent feed_exponent,
                             struct tw_specific_force passive_specific_force,
                             struct tw_exponent passive_exponent,
                             struct tw_chip_thickness chip_thickness,
                             struct tw_chip_width chip_width,
                             struct tw_main_force *main_force,
                             struct tw_feed_force *feed_force,
                             struct tw_passive_force *passive_force,
                             struct tw_error *detail);

// tw_measured_forces for every row.
//
// Columns, see the first page: main_specific_force, main_exponent, feed_specific_force,
// feed_exponent, passive_specific_force, passive_exponent, chip_thickness and chip_width are
// read, main_force, feed_force and passive_force are written, each may be NULL unless all are.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_measured_forces_column(const struct tw_column *main_specific_force,
                                    const struct tw_column *main_exponent,
                                    const struct tw_column *feed_specific_force,
                                    const struct tw_column *feed_exponent,
                                    const struct tw_column *passive_specific_force,
                                    const struct tw_column *passive_exponent,
                                    const struct tw_column *chip_thickness,
                                    const struct tw_column *chip_width,
                                    const struct tw_out_column *main_force,
                                    const struct tw_out_column *feed_force,
                                    const struct tw_out_column *passive_force,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The factor of the force for the rake of the tool: 1 - 0.015 for each degree above the rake
// that the specific force holds for, 6 deg for the tables of steel, 2 deg for those of cast iron
// (from memory of machining text books; some have 0.010).
//
// Both rakes lie from -10 to 25 deg (TW_OUT_OF_RANGE).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: from memory of text books: 1.09 - 0.015 rake for steel, 1.03 - 0.015 rake for cast iron.
// Example: tw_rake_factor(tw_rake_angle_degree(0), tw_rake_angle_degree(6), &force_factor, NULL);
//     force_factor.ratio is 1.0900.
TW_CHECK
tw_status tw_rake_factor(struct tw_rake_angle rake_angle,
                         struct tw_rake_angle reference_rake_angle,
                         struct tw_force_factor *force_factor,
                         struct tw_error *detail);

// tw_rake_factor for every row.
//
// Columns, see the first page: rake_angle and reference_rake_angle are read, force_factor is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_rake_factor_column(const struct tw_column *rake_angle,
                                const struct tw_column *reference_rake_angle,
                                const struct tw_out_column *force_factor,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The factor of the force for the cutting speed of carbide, 1 at 100 m/min (from memory of
// machining text books). For high-speed steel there is none.
//
// Speeds below 20 m/min are refused (TW_OUT_OF_RANGE).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: from memory of German machining text books, unverified page.
// Example: tw_carbide_speed_factor(tw_cutting_speed_meter_per_minute(50), &force_factor, NULL);
//     force_factor.ratio is 1.11187.
TW_CHECK
tw_status tw_carbide_speed_factor(struct tw_cutting_speed cutting_speed,
                                  struct tw_force_factor *force_factor,
                                  struct tw_error *detail);

// tw_carbide_speed_factor for every row.
//
// Columns, see the first page: cutting_speed is read, force_factor is written. row_status may be
// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_carbide_speed_factor_column(const struct tw_column *cutting_speed,
                                         const struct tw_out_column *force_factor,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// How much of a rounded tool's edge is in the cut and what it takes off, exactly: length of the
// engaged edge, cross section of the chip, and the equivalent chip thickness, which is the one
// over the other.
//
// A corner radius of zero, a feed at which two turns do not meet on the corner arc, and a depth
// within the ridge between them are refused (TW_CONTRADICTION).
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: geometry, derived; equivalent thickness: Woxen 1932 (from memory).
// Example: tw_equivalent_chip_thickness(tw_depth_of_cut_millimeter(0.2),
//     tw_feed_millimeter_per_revolution(0.1), tw_cutting_edge_angle_degree(95),
//     tw_minor_cutting_edge_angle_degree(10), tw_corner_radius_millimeter(0.8), &edge_length,
//     &chip_area, &chip_thickness, NULL); edge_length.mm is 0.628220, chip_area.mm2 is 0.0199479
//     and chip_thickness.mm is 0.0317530.
TW_CHECK
tw_status tw_equivalent_chip_thickness(struct tw_depth_of_cut depth_of_cut,
                                       struct tw_feed feed,
                                       struct tw_cutting_edge_angle cutting_edge_angle,
                                       struct tw_minor_cutting_edge_angle minor_cutting_edge_angle,
                                       struct tw_corner_radius corner_radius,
                                       struct tw_edge_length *edge_length,
                                       struct tw_chip_area *chip_area,
                                       struct tw_chip_thickness *chip_thickness,
                                       struct tw_error *detail);

// tw_equivalent_chip_thickness for every row.
//
// Columns, see the first page: depth_of_cut, feed, cutting_edge_angle, minor_cutting_edge_angle
// and corner_radius are read, edge_length, chip_area and chip_thickness are written, each may be
// NULL unless all are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
// apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_equivalent_chip_thickness_column(const struct tw_column *depth_of_cut,
                                              const struct tw_column *feed,
                                              const struct tw_column *cutting_edge_angle,
                                              const struct tw_column *minor_cutting_edge_angle,
                                              const struct tw_column *corner_radius,
                                              const struct tw_out_column *edge_length,
                                              const struct tw_out_column *chip_area,
                                              const struct tw_out_column *chip_thickness,
                                              int32_t *row_status,
                                              size_t row_status_stride_bytes,
                                              struct tw_error *detail);

// By what factor all three forces grow when only the feed changes: (to / from)^(1 - exponent). The
// same depth and the same edge, straight or round; exponent is that of the specific force.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Kienzle's law along the edge (derived).
// Example: tw_feed_factor(tw_exponent_one(0.14), tw_feed_inch_per_revolution(0.004),
//     tw_feed_inch_per_revolution(0.008), &force_factor, NULL); force_factor.ratio is 1.81504.
TW_CHECK
tw_status tw_feed_factor(struct tw_exponent exponent,
                         struct tw_feed from,
                         struct tw_feed to,
                         struct tw_force_factor *force_factor,
                         struct tw_error *detail);

// tw_feed_factor for every row.
//
// Columns, see the first page: exponent, from and to are read, force_factor is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_feed_factor_column(const struct tw_column *exponent,
                                const struct tw_column *from,
                                const struct tw_column *to,
                                const struct tw_out_column *force_factor,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The edge angle that a straight edge with the same direction of force would have: atan2(feed
// force, passive force) of tw_cutting_forces, with the same arguments. As the cut gets lighter
// it falls to zero: all of the force normal to the edge bends the bar then.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_effective_edge_angle(tw_specific_force_megapascal(2220), tw_exponent_one(0.14),
//     tw_depth_of_cut_millimeter(0.2), tw_feed_millimeter_per_revolution(0.1),
//     tw_cutting_edge_angle_degree(95), tw_corner_radius_millimeter(0.8),
//     tw_normal_ratio_one(0.5), &edge_angle, NULL); edge_angle.deg is 26.7374.
TW_CHECK
tw_status tw_effective_edge_angle(struct tw_specific_force specific_force,
                                  struct tw_exponent exponent,
                                  struct tw_depth_of_cut depth_of_cut,
                                  struct tw_feed feed,
                                  struct tw_cutting_edge_angle cutting_edge_angle,
                                  struct tw_corner_radius corner_radius,
                                  struct tw_normal_ratio normal_ratio,
                                  struct tw_cutting_edge_angle *edge_angle,
                                  struct tw_error *detail);

// tw_effective_edge_angle for every row.
//
// Columns, see the first page: specific_force, exponent, depth_of_cut, feed, cutting_edge_angle,
// corner_radius and normal_ratio are read, edge_angle is written. row_status may be NULL; else
// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_effective_edge_angle_column(const struct tw_column *specific_force,
                                         const struct tw_column *exponent,
                                         const struct tw_column *depth_of_cut,
                                         const struct tw_column *feed,
                                         const struct tw_column *cutting_edge_angle,
                                         const struct tw_column *corner_radius,
                                         const struct tw_column *normal_ratio,
                                         const struct tw_out_column *edge_angle,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// The specific force of a material with a factor on its force, such as tw_rake_factor times
// tw_carbide_speed_factor: their product. The exponent stays.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the factors.
// Example: tw_corrected_specific_force(tw_specific_force_megapascal(2000),
//     tw_force_factor_one(1.3), &corrected, NULL); corrected.mpa is 2600.
TW_CHECK
tw_status tw_corrected_specific_force(struct tw_specific_force specific_force,
                                      struct tw_force_factor force_factor,
                                      struct tw_specific_force *corrected,
                                      struct tw_error *detail);

// tw_corrected_specific_force for every row.
//
// Columns, see the first page: specific_force and force_factor are read, corrected is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_corrected_specific_force_column(const struct tw_column *specific_force,
                                             const struct tw_column *force_factor,
                                             const struct tw_out_column *corrected,
                                             int32_t *row_status,
                                             size_t row_status_stride_bytes,
                                             struct tw_error *detail);

// The normal ratio when the force normal to the edge has another factor than the main force, as
// at a worn edge: normal_ratio normal_factor / main_factor.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the normal ratio.
// Example: tw_corrected_ratio(tw_normal_ratio_one(0.5), tw_force_factor_one(1.5),
//     tw_force_factor_one(2), &corrected, NULL); corrected.ratio is 0.666667.
TW_CHECK
tw_status tw_corrected_ratio(struct tw_normal_ratio normal_ratio,
                             struct tw_force_factor main_factor,
                             struct tw_force_factor normal_factor,
                             struct tw_normal_ratio *corrected,
                             struct tw_error *detail);

// tw_corrected_ratio for every row.
//
// Columns, see the first page: normal_ratio, main_factor and normal_factor are read, corrected
// is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_corrected_ratio_column(const struct tw_column *normal_ratio,
                                    const struct tw_column *main_factor,
                                    const struct tw_column *normal_factor,
                                    const struct tw_out_column *corrected,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The least and the largest factor of a force that scatters by a share either way:
// 1 - force_scatter, 1 + force_scatter.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: definition of the scatter.
// Example: tw_scattered(tw_force_scatter_one(0.3), &least, &largest, NULL); least.ratio is 0.7000
//     and largest.ratio is 1.300.
TW_CHECK
tw_status tw_scattered(struct tw_force_scatter force_scatter,
                       struct tw_force_factor *least,
                       struct tw_force_factor *largest,
                       struct tw_error *detail);

// tw_scattered for every row.
//
// Columns, see the first page: force_scatter is read, least and largest are written, each may be
// NULL unless both are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
// apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_scattered_column(const struct tw_column *force_scatter,
                              const struct tw_out_column *least,
                              const struct tw_out_column *largest,
                              int32_t *row_status,
                              size_t row_status_stride_bytes,
                              struct tw_error *detail);

// The power that a cut takes at the spindle: main force times cutting speed, that of the mean
// diameter.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of power.
// Example: tw_cutting_power(tw_main_force_pound_force(300), tw_cutting_speed_foot_per_minute(330),
//     &power, NULL); tw_power_as_horsepower(power) is 3.000.
TW_CHECK
tw_status tw_cutting_power(struct tw_main_force main_force,
                           struct tw_cutting_speed cutting_speed,
                           struct tw_power *power,
                           struct tw_error *detail);

// tw_cutting_power for every row.
//
// Columns, see the first page: main_force and cutting_speed are read, power is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cutting_power_column(const struct tw_column *main_force,
                                  const struct tw_column *cutting_speed,
                                  const struct tw_out_column *power,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The torque that a cut takes at the spindle: main force times half the mean diameter.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of torque.
// Example: tw_cutting_torque(tw_main_force_pound_force(250), tw_diameter_inch(3), &torque, NULL);
//     tw_torque_as_pound_force_foot(torque) is 31.25.
TW_CHECK
tw_status tw_cutting_torque(struct tw_main_force main_force,
                            struct tw_diameter mean_diameter,
                            struct tw_torque *torque,
                            struct tw_error *detail);

// tw_cutting_torque for every row.
//
// Columns, see the first page: main_force and mean_diameter are read, torque is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cutting_torque_column(const struct tw_column *main_force,
                                   const struct tw_column *mean_diameter,
                                   const struct tw_out_column *torque,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// The power of a cut at the spindle, from that of the motor in the cut and without it, at the
// same spindle speed: efficiency times their difference.
//
// An idle power that is not below the other is refused (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the efficiency.
// Example: tw_power_above_idle(tw_power_kilowatt(2.7), tw_power_kilowatt(0.3),
//     tw_efficiency_one(0.8), &power, NULL); power.kw is 1.920.
TW_CHECK
tw_status tw_power_above_idle(struct tw_power motor_power,
                              struct tw_power idle_power,
                              struct tw_efficiency efficiency,
                              struct tw_power *power,
                              struct tw_error *detail);

// tw_power_above_idle for every row.
//
// Columns, see the first page: motor_power, idle_power and efficiency are read, power is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_power_above_idle_column(const struct tw_column *motor_power,
                                     const struct tw_column *idle_power,
                                     const struct tw_column *efficiency,
                                     const struct tw_out_column *power,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The specific force that a measured cut shows, for a chip of 1 mm by 1 mm, its exponent kept;
// and that of the cut itself, main force over depth times feed. power is that of the cut at the
// spindle (tw_power_above_idle), cutting_speed that of the mean diameter. A power of nothing
// gives nothing.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: definitions of power and specific force; the law of the cut derived.
// Example: tw_specific_force_from_power(tw_power_kilowatt(1.92),
//     tw_cutting_speed_meter_per_minute(110), tw_exponent_one(0.26),
//     tw_depth_of_cut_millimeter(2), tw_feed_millimeter_per_revolution(0.25),
//     tw_cutting_edge_angle_degree(90), tw_corner_radius_millimeter(0), &specific_force,
//     &specific_force_at_chip, NULL); specific_force.mpa is 1460.68 and
//     specific_force_at_chip.mpa is 2094.55.
TW_CHECK
tw_status tw_specific_force_from_power(struct tw_power power,
                                       struct tw_cutting_speed cutting_speed,
                                       struct tw_exponent exponent,
                                       struct tw_depth_of_cut depth_of_cut,
                                       struct tw_feed feed,
                                       struct tw_cutting_edge_angle cutting_edge_angle,
                                       struct tw_corner_radius corner_radius,
                                       struct tw_specific_force *specific_force,
                                       struct tw_specific_force_at_chip *specific_force_at_chip,
                                       struct tw_error *detail);

// tw_specific_force_from_power for every row.
//
// Columns, see the first page: power, cutting_speed, exponent, depth_of_cut, feed,
// cutting_edge_angle and corner_radius are read, specific_force and specific_force_at_chip are
// written, each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_specific_force_from_power_column(const struct tw_column *power,
                                              const struct tw_column *cutting_speed,
                                              const struct tw_column *exponent,
                                              const struct tw_column *depth_of_cut,
                                              const struct tw_column *feed,
                                              const struct tw_column *cutting_edge_angle,
                                              const struct tw_column *corner_radius,
                                              const struct tw_out_column *specific_force,
                                              const struct tw_out_column *specific_force_at_chip,
                                              int32_t *row_status,
                                              size_t row_status_stride_bytes,
                                              struct tw_error *detail);

// The power of a cut from its removal rate and the specific force of its chip. Unit power in
// hp/(in3/min) is a specific force.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: P = F_c v_c = k_c b h v_c.
// Example: tw_power_of_removal(tw_specific_force_at_chip_horsepower_minute_per_cubic_inch(0.8),
//     tw_removal_rate_cubic_inch_per_minute(3), &power, NULL);
//     tw_power_as_horsepower(power) is 2.400.
TW_CHECK
tw_status tw_power_of_removal(struct tw_specific_force_at_chip specific_force_at_chip,
                              struct tw_removal_rate removal_rate,
                              struct tw_power *power,
                              struct tw_error *detail);

// tw_power_of_removal for every row.
//
// Columns, see the first page: specific_force_at_chip and removal_rate are read, power is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_power_of_removal_column(const struct tw_column *specific_force_at_chip,
                                     const struct tw_column *removal_rate,
                                     const struct tw_out_column *power,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The main force of a cut of known power at the spindle: power / cutting_speed, that of the mean
// diameter.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of power.
// Example: tw_force_of_power(tw_power_kilowatt(1), tw_cutting_speed_meter_per_minute(60),
//     &main_force, NULL); main_force.n is 1000.0.
TW_CHECK
tw_status tw_force_of_power(struct tw_power power,
                            struct tw_cutting_speed cutting_speed,
                            struct tw_main_force *main_force,
                            struct tw_error *detail);

// tw_force_of_power for every row.
//
// Columns, see the first page: power and cutting_speed are read, main_force is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_force_of_power_column(const struct tw_column *power,
                                   const struct tw_column *cutting_speed,
                                   const struct tw_out_column *main_force,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// What a square millimetre of chip has cost in force, by a measured main force: main_force /
// (chip_thickness chip_width). It holds for this thickness of the chip; tw_law_through makes a
// law of it.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the specific force.
// Example: tw_specific_force_of_chip(tw_main_force_newton(936.0626),
//     tw_chip_thickness_millimeter(0.2), tw_chip_width_millimeter(2), &specific_force_at_chip,
//     NULL); specific_force_at_chip.mpa is 2340.16.
TW_CHECK
tw_status tw_specific_force_of_chip(struct tw_main_force main_force,
                                    struct tw_chip_thickness chip_thickness,
                                    struct tw_chip_width chip_width,
                                    struct tw_specific_force_at_chip *specific_force_at_chip,
                                    struct tw_error *detail);

// tw_specific_force_of_chip for every row.
//
// Columns, see the first page: main_force, chip_thickness and chip_width are read,
// specific_force_at_chip is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_specific_force_of_chip_column(const struct tw_column *main_force,
                                           const struct tw_column *chip_thickness,
                                           const struct tw_column *chip_width,
                                           const struct tw_out_column *specific_force_at_chip,
                                           int32_t *row_status,
                                           size_t row_status_stride_bytes,
                                           struct tw_error *detail);

// The specific force, for a chip of 1 mm by 1 mm, of the law that passes through one at a chip
// thickness: specific_force_at_chip (h / 1 mm)^exponent. The exponent comes from a table; near
// the thickness that was measured it hardly counts.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Kienzle 1952, VDI-Z 94 (from memory), solved for k_c1.1.
// Example: tw_law_through(tw_specific_force_at_chip_megapascal(2094.5455),
//     tw_chip_thickness_millimeter(0.25), tw_exponent_one(0.26), &specific_force, NULL);
//     specific_force.mpa is 1460.68.
TW_CHECK
tw_status tw_law_through(struct tw_specific_force_at_chip specific_force_at_chip,
                         struct tw_chip_thickness chip_thickness,
                         struct tw_exponent exponent,
                         struct tw_specific_force *specific_force,
                         struct tw_error *detail);

// tw_law_through for every row.
//
// Columns, see the first page: specific_force_at_chip, chip_thickness and exponent are read,
// specific_force is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_law_through_column(const struct tw_column *specific_force_at_chip,
                                const struct tw_column *chip_thickness,
                                const struct tw_column *exponent,
                                const struct tw_out_column *specific_force,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The specific force, for a chip of 1 mm by 1 mm, that the main force of one cut with a rounded
// corner shows, light cuts included. Conditions of the cut (rake, wear, speed) stay in it.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_law_of_cut(tw_main_force_newton(69.48408), tw_exponent_one(0.14),
//     tw_depth_of_cut_millimeter(0.2), tw_feed_millimeter_per_revolution(0.1),
//     tw_cutting_edge_angle_degree(95), tw_corner_radius_millimeter(0.8), &specific_force, NULL);
//     specific_force.mpa is 2220.0.
TW_CHECK
tw_status tw_law_of_cut(struct tw_main_force main_force,
                        struct tw_exponent exponent,
                        struct tw_depth_of_cut depth_of_cut,
                        struct tw_feed feed,
                        struct tw_cutting_edge_angle cutting_edge_angle,
                        struct tw_corner_radius corner_radius,
                        struct tw_specific_force *specific_force,
                        struct tw_error *detail);

// tw_law_of_cut for every row.
//
// Columns, see the first page: main_force, exponent, depth_of_cut, feed, cutting_edge_angle and
// corner_radius are read, specific_force is written. row_status may be NULL; else one int32_t a
// row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_law_of_cut_column(const struct tw_column *main_force,
                               const struct tw_column *exponent,
                               const struct tw_column *depth_of_cut,
                               const struct tw_column *feed,
                               const struct tw_column *cutting_edge_angle,
                               const struct tw_column *corner_radius,
                               const struct tw_out_column *specific_force,
                               int32_t *row_status,
                               size_t row_status_stride_bytes,
                               struct tw_error *detail);

// The diameter that a tool off centre height really turns, zeroed at one diameter and moved in
// on the radius: twice the root of (sqrt(R_0^2 - e^2) - moved_in)^2 + e^2, R_0 the radius there and e
// the height. Above or below the axis alike. Refused (TW_CONTRADICTION): a tip that passes above
// or below the work, and a move past the axis. For the error alone see tw_tool_height_error.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry: the tip moves level, at its height from the axis.
// Example: tw_turned_diameter(tw_diameter_millimeter(40), tw_travel_millimeter(15),
//     tw_tool_height_millimeter(1), &diameter, NULL); diameter.mm is 10.1490.
TW_CHECK
tw_status tw_turned_diameter(struct tw_diameter zeroed_at,
                             struct tw_travel moved_in,
                             struct tw_tool_height tool_height,
                             struct tw_diameter *diameter,
                             struct tw_error *detail);

// tw_turned_diameter for every row.
//
// Columns, see the first page: zeroed_at, moved_in and tool_height are read, diameter is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_turned_diameter_column(const struct tw_column *zeroed_at,
                                    const struct tw_column *moved_in,
                                    const struct tw_column *tool_height,
                                    const struct tw_out_column *diameter,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The error of the small end of a taper turned off centre height, its large end being right.
// What lies between is hollow. Refused (TW_CONTRADICTION): a small end larger than the large
// one, and a tip that passes above or below the work.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry, as tw_turned_diameter.
// Example: tw_taper_error(tw_diameter_millimeter(40), tw_diameter_millimeter(10),
//     tw_tool_height_millimeter(1), &diameter_error, NULL); diameter_error.mm is 0.148984.
TW_CHECK
tw_status tw_taper_error(struct tw_diameter large,
                         struct tw_diameter small,
                         struct tw_tool_height tool_height,
                         struct tw_diameter_error *diameter_error,
                         struct tw_error *detail);

// tw_taper_error for every row.
//
// Columns, see the first page: large, small and tool_height are read, diameter_error is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_error_column(const struct tw_column *large,
                                const struct tw_column *small,
                                const struct tw_column *tool_height,
                                const struct tw_out_column *diameter_error,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// By how much the working rake grows because of the height of the tool, and the clearance falls:
// asin(tool_height / radius). Turning outside; in a bore it is the other way round. A tip that
// passes above or below the work is refused (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_rake_change(tw_diameter_millimeter(10), tw_tool_height_millimeter(0.5), &rake_angle,
//     NULL); rake_angle.deg is 5.73917.
TW_CHECK
tw_status tw_rake_change(struct tw_diameter diameter,
                         struct tw_tool_height tool_height,
                         struct tw_rake_angle *rake_angle,
                         struct tw_error *detail);

// tw_rake_change for every row.
//
// Columns, see the first page: diameter and tool_height are read, rake_angle is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_rake_change_column(const struct tw_column *diameter,
                                const struct tw_column *tool_height,
                                const struct tw_out_column *rake_angle,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The diameter of the pip that a tool off centre height leaves in the middle of a face: twice
// the height, 0 at centre height. Below the axis the pip stands as a stub; above, the flank rubs
// it and the edge may chip.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry: the tip passes the axis at that distance.
// Example: tw_pip_diameter(tw_tool_height_millimeter(-0.3), &diameter, NULL);
//     diameter.mm is 0.6000.
TW_CHECK
tw_status tw_pip_diameter(struct tw_tool_height tool_height,
                          struct tw_diameter *diameter,
                          struct tw_error *detail);

// tw_pip_diameter for every row.
//
// Columns, see the first page: tool_height is read, diameter is written. row_status may be NULL;
// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_pip_diameter_column(const struct tw_column *tool_height,
                                 const struct tw_out_column *diameter,
                                 int32_t *row_status,
                                 size_t row_status_stride_bytes,
                                 struct tw_error *detail);

// How far the tip of a tool with a rectangular shank sinks under the main force: 4 F l^3 / (E b
// h^3), l the overhang, b and h width and height of the shank. Clamped rigidly: the clamping and
// the slides give way besides, often more.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: cantilever, any strength of materials text (from memory).
// Example: tw_shank_deflection(tw_main_force_newton(800), tw_overhang_millimeter(30),
//     tw_shank_size_millimeter(16), tw_shank_size_millimeter(16),
//     tw_youngs_modulus_gigapascal(210), &deflection, NULL);
//     tw_deflection_as_micrometer(deflection) is 6.27790.
TW_CHECK
tw_status tw_shank_deflection(struct tw_main_force main_force,
                              struct tw_overhang overhang,
                              struct tw_shank_size shank_width,
                              struct tw_shank_size shank_height,
                              struct tw_youngs_modulus youngs_modulus,
                              struct tw_deflection *deflection,
                              struct tw_error *detail);

// tw_shank_deflection for every row.
//
// Columns, see the first page: main_force, overhang, shank_width, shank_height and
// youngs_modulus are read, deflection is written. row_status may be NULL; else one int32_t a
// row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_shank_deflection_column(const struct tw_column *main_force,
                                     const struct tw_column *overhang,
                                     const struct tw_column *shank_width,
                                     const struct tw_column *shank_height,
                                     const struct tw_column *youngs_modulus,
                                     const struct tw_out_column *deflection,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// How far the tip of a solid round boring bar is pushed away: 64 F l^3 / (3 pi E d^4).
// youngs_modulus is that of the bar: about 210 GPa for steel. Clamped rigidly over enough of its
// length.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: cantilever, any strength of materials text (from memory).
// Example: tw_boring_bar_deflection(tw_passive_force_newton(200), tw_overhang_millimeter(80),
//     tw_diameter_millimeter(16), tw_youngs_modulus_gigapascal(210), &deflection, NULL);
//     tw_deflection_as_micrometer(deflection) is 50.5254.
TW_CHECK
tw_status tw_boring_bar_deflection(struct tw_passive_force passive_force,
                                   struct tw_overhang overhang,
                                   struct tw_diameter bar_diameter,
                                   struct tw_youngs_modulus youngs_modulus,
                                   struct tw_deflection *deflection,
                                   struct tw_error *detail);

// tw_boring_bar_deflection for every row.
//
// Columns, see the first page: passive_force, overhang, bar_diameter and youngs_modulus are
// read, deflection is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_boring_bar_deflection_column(const struct tw_column *passive_force,
                                          const struct tw_column *overhang,
                                          const struct tw_column *bar_diameter,
                                          const struct tw_column *youngs_modulus,
                                          const struct tw_out_column *deflection,
                                          int32_t *row_status,
                                          size_t row_status_stride_bytes,
                                          struct tw_error *detail);

// The grip force, of all jaws together and at the speed of the cut, that holds short work
// against a cut: safety sqrt((main_force cut_at/gripped_at)^2 + feed_force^2) / friction. Gripped
// on the outside; a long overhang tilts the work out of the jaws and wants more. Friction of
// nothing, or so little that no chuck grips so hard, is refused (TW_IMPOSSIBLE).
//
// It replaces neither the manual of the chuck nor qualified instruction.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: common practice shaped after VDI 3106, from memory.
// Example: tw_grip_needed(tw_main_force_newton(1500), tw_feed_force_newton(0),
//     tw_diameter_millimeter(60), tw_diameter_millimeter(50), tw_friction_one(0.15),
//     tw_force_factor_one(2), &grip_force, NULL); grip_force.n is 24000.
TW_CHECK
tw_status tw_grip_needed(struct tw_main_force main_force,
                         struct tw_feed_force feed_force,
                         struct tw_diameter cut_at,
                         struct tw_diameter gripped_at,
                         struct tw_friction friction,
                         struct tw_force_factor safety,
                         struct tw_grip_force *grip_force,
                         struct tw_error *detail);

// tw_grip_needed for every row.
//
// Columns, see the first page: main_force, feed_force, cut_at, gripped_at, friction and safety
// are read, grip_force is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_grip_needed_column(const struct tw_column *main_force,
                                const struct tw_column *feed_force,
                                const struct tw_column *cut_at,
                                const struct tw_column *gripped_at,
                                const struct tw_column *friction,
                                const struct tw_column *safety,
                                const struct tw_out_column *grip_force,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The grip, of all jaws together, that is left at a spindle speed, gripped on the outside:
// grip_at_rest - jaws m r omega^2. jaw_mass is that of one jaw with its base, jaw_radius where its
// centre stands. A chuck without weights against centrifugal force; gripped from inside the grip
// grows instead. A speed at which nothing of the grip is left is refused (TW_IMPOSSIBLE), jaws
// outside of 1 to 255 too (TW_OUT_OF_RANGE).
//
// It replaces neither the manual of the chuck nor qualified instruction.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: common practice shaped after VDI 3106, from memory; centrifugal force.
// Example: tw_grip_at_speed(tw_grip_force_kilonewton(30), tw_mass_kilogram(0.6),
//     tw_radius_millimeter(60), tw_spindle_speed_revolution_per_minute(1200), 3, &grip_force,
//     NULL); tw_grip_force_as_kilonewton(grip_force) is 28.2945.
TW_CHECK
tw_status tw_grip_at_speed(struct tw_grip_force grip_at_rest,
                           struct tw_mass jaw_mass,
                           struct tw_radius jaw_radius,
                           struct tw_spindle_speed spindle_speed,
                           int32_t jaws,
                           struct tw_grip_force *grip_force,
                           struct tw_error *detail);

// tw_grip_at_speed for every row.
//
// Columns, see the first page: grip_at_rest, jaw_mass, jaw_radius and spindle_speed are read,
// grip_force is written. jaws is one number for all rows; one that is refused fails the whole
// call. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_grip_at_speed_column(const struct tw_column *grip_at_rest,
                                  const struct tw_column *jaw_mass,
                                  const struct tw_column *jaw_radius,
                                  const struct tw_column *spindle_speed,
                                  int32_t jaws,
                                  const struct tw_out_column *grip_force,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The spindle speed at which the jaws lose the largest share of their grip that is allowed, two
// thirds: sqrt(2/3 grip_at_rest / (jaws m r)) / (2 pi). Arguments as of tw_grip_at_speed. The
// speed marked on the chuck holds where it is lower; where no speed is marked, ask the maker,
// not this formula.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: common practice shaped after VDI 3106, from memory.
// Example: tw_highest_speed_of_grip(tw_grip_force_kilonewton(30), tw_mass_kilogram(0.6),
//     tw_radius_millimeter(60), 3, &spindle_speed, NULL); spindle_speed.rpm is 4109.36.
TW_CHECK
tw_status tw_highest_speed_of_grip(struct tw_grip_force grip_at_rest,
                                   struct tw_mass jaw_mass,
                                   struct tw_radius jaw_radius,
                                   int32_t jaws,
                                   struct tw_spindle_speed *spindle_speed,
                                   struct tw_error *detail);

// tw_highest_speed_of_grip for every row.
//
// Columns, see the first page: grip_at_rest, jaw_mass and jaw_radius are read, spindle_speed is
// written. jaws is one number for all rows; one that is refused fails the whole call. row_status
// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_highest_speed_of_grip_column(const struct tw_column *grip_at_rest,
                                          const struct tw_column *jaw_mass,
                                          const struct tw_column *jaw_radius,
                                          int32_t jaws,
                                          const struct tw_out_column *spindle_speed,
                                          int32_t *row_status,
                                          size_t row_status_stride_bytes,
                                          struct tw_error *detail);

// The feed that leaves an arithmetic mean height with the outline of a tool, exactly.
//
// Refused (TW_CONTRADICTION): edge angles of 180 deg together, and a height that no plausible feed
// leaves. detail may be NULL. After a failure the output is NaN.
//
// Source: derived, as tw_theoretical_roughness.
// Example: tw_feed_for_ra(tw_ra_microinch(63), tw_corner_radius_inch_fraction(1, 32),
//     tw_cutting_edge_angle_degree(95), tw_minor_cutting_edge_angle_degree(30), &feed, NULL);
//     tw_feed_as_inch_per_revolution(feed) is 0.00782219.
TW_CHECK
tw_status tw_feed_for_ra(struct tw_ra ra,
                         struct tw_corner_radius corner_radius,
                         struct tw_cutting_edge_angle cutting_edge_angle,
                         struct tw_minor_cutting_edge_angle minor_cutting_edge_angle,
                         struct tw_feed *feed,
                         struct tw_error *detail);

// tw_feed_for_ra for every row.
//
// Columns, see the first page: ra, corner_radius, cutting_edge_angle, minor_cutting_edge_angle are read,
// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_feed_for_ra_column(const struct tw_column *ra,
                                const struct tw_column *corner_radius,
                                const struct tw_column *cutting_edge_angle,
                                const struct tw_column *minor_cutting_edge_angle,
                                const struct tw_out_column *feed,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The feed that leaves a maximum height with the outline of a tool, exactly.
//
// Refused (TW_CONTRADICTION): edge angles of 180 deg together, and a height that no plausible feed
// leaves. detail may be NULL. After a failure the output is NaN.
//
// Source: derived, as tw_theoretical_roughness.
// Example: tw_feed_for_rz(tw_rz_micrometer(6.3), tw_corner_radius_millimeter(0.8),
//     tw_cutting_edge_angle_degree(95), tw_minor_cutting_edge_angle_degree(10), &feed, NULL);
//     feed.mm_per_rev is 0.200403.
TW_CHECK
tw_status tw_feed_for_rz(struct tw_rz rz,
                         struct tw_corner_radius corner_radius,
                         struct tw_cutting_edge_angle cutting_edge_angle,
                         struct tw_minor_cutting_edge_angle minor_cutting_edge_angle,
                         struct tw_feed *feed,
                         struct tw_error *detail);

// tw_feed_for_rz for every row.
//
// Columns, see the first page: rz, corner_radius, cutting_edge_angle, minor_cutting_edge_angle are read,
// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_feed_for_rz_column(const struct tw_column *rz,
                                const struct tw_column *corner_radius,
                                const struct tw_column *cutting_edge_angle,
                                const struct tw_column *minor_cutting_edge_angle,
                                const struct tw_out_column *feed,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The feed that leaves a total height with the outline of a tool, exactly.
//
// Refused (TW_CONTRADICTION): edge angles of 180 deg together, and a height that no plausible feed
// leaves. detail may be NULL. After a failure the output is NaN.
//
// Source: derived, as tw_theoretical_roughness.
// Example: tw_feed_for_rt(tw_rt_micrometer(10), tw_corner_radius_millimeter(0.4),
//     tw_cutting_edge_angle_degree(95), tw_minor_cutting_edge_angle_degree(5), &feed, NULL);
//     feed.mm_per_rev is 0.220647.
TW_CHECK
tw_status tw_feed_for_rt(struct tw_rt rt,
                         struct tw_corner_radius corner_radius,
                         struct tw_cutting_edge_angle cutting_edge_angle,
                         struct tw_minor_cutting_edge_angle minor_cutting_edge_angle,
                         struct tw_feed *feed,
                         struct tw_error *detail);

// tw_feed_for_rt for every row.
//
// Columns, see the first page: rt, corner_radius, cutting_edge_angle, minor_cutting_edge_angle are read,
// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_feed_for_rt_column(const struct tw_column *rt,
                                const struct tw_column *corner_radius,
                                const struct tw_column *cutting_edge_angle,
                                const struct tw_column *minor_cutting_edge_angle,
                                const struct tw_out_column *feed,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The feed that leaves a maximum height Rz when the corner arc alone makes the finish: 2 sqrt(2
// r Rz - Rz^2). For a tool whose minor cutting edge angle is not known; with it see
// tw_feed_for_rz. A height that the arc cannot leave, or no plausible feed does, is refused
// (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived, as tw_arc_height.
// Example: tw_feed_for_rz_arc(tw_rz_micrometer(6.3), tw_corner_radius_millimeter(0.8), &feed,
//     NULL); feed.mm_per_rev is 0.200403.
TW_CHECK
tw_status tw_feed_for_rz_arc(struct tw_rz rz,
                             struct tw_corner_radius corner_radius,
                             struct tw_feed *feed,
                             struct tw_error *detail);

// tw_feed_for_rz_arc for every row.
//
// Columns, see the first page: rz and corner_radius are read, feed is written. row_status may be
// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_feed_for_rz_arc_column(const struct tw_column *rz,
                                    const struct tw_column *corner_radius,
                                    const struct tw_out_column *feed,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The feed that leaves an arithmetic mean height Ra when the corner arc alone makes the finish:
// about sqrt(18 sqrt(3) r Ra), then exactly. For a tool whose minor cutting edge angle is not
// known; with it see tw_feed_for_ra. A height that the arc cannot leave, or no plausible feed
// does, is refused (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived, as tw_arc_roughness.
// Example: tw_feed_for_ra_arc(tw_ra_microinch(32), tw_corner_radius_inch_fraction(1, 64), &feed,
//     NULL); tw_feed_as_inch_per_revolution(feed) is 0.00394192.
TW_CHECK
tw_status tw_feed_for_ra_arc(struct tw_ra ra,
                             struct tw_corner_radius corner_radius,
                             struct tw_feed *feed,
                             struct tw_error *detail);

// tw_feed_for_ra_arc for every row.
//
// Columns, see the first page: ra and corner_radius are read, feed is written. row_status may be
// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_feed_for_ra_arc_column(const struct tw_column *ra,
                                    const struct tw_column *corner_radius,
                                    const struct tw_out_column *feed,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The total height that a feed leaves on a corner radius where chips below a least thickness do not
// form (Brammertz): f^2/(8 r) + (h_min/2)(1 + r h_min/f^2). regime is a number of enum
// tw_least_chip_regime: below the best feed the height is outside the formula's range.
//
// A corner radius of zero is refused (TW_CONTRADICTION). An output may be NULL unless both are.
// detail may be NULL. After a failure the height is NaN and the regime 0.
//
// Source: Brammertz 1961, Industrie-Anzeiger 83 (from memory); derived again.
// Example: tw_rt_with_least_chip(tw_feed_millimeter_per_revolution(0.1),
//     tw_corner_radius_millimeter(0.8), tw_chip_thickness_micrometer(5), &rt, &regime, NULL);
//     rt.um is 5.0625 and regime is TW_LEAST_CHIP_CUTTING.
TW_CHECK
tw_status tw_rt_with_least_chip(struct tw_feed feed,
                                struct tw_corner_radius corner_radius,
                                struct tw_chip_thickness least_chip_thickness,
                                struct tw_rt *rt,
                                int32_t *regime,
                                struct tw_error *detail);

// tw_rt_with_least_chip for every row.
//
// Columns, see the first page: the first three are read, rt is written. regime may be NULL; else one
// int32_t a row (0 for a bad row), regime_stride_bytes apart (at least 4). row_status likewise.
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_rt_with_least_chip_column(const struct tw_column *feed,
                                       const struct tw_column *corner_radius,
                                       const struct tw_column *least_chip_thickness,
                                       const struct tw_out_column *rt,
                                       int32_t *regime,
                                       size_t regime_stride_bytes,
                                       int32_t *row_status,
                                       size_t row_status_stride_bytes,
                                       struct tw_error *detail);

// The feed that leaves the least height where chips below a least thickness do not form:
// sqrt(2 r h_min). That height is h_min; a finer feed makes the finish worse.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Brammertz 1961, Industrie-Anzeiger 83 (from memory); the minimum over the feed, derived.
// Example: tw_best_feed_with_least_chip(tw_corner_radius_millimeter(0.8),
//     tw_chip_thickness_micrometer(5), &feed, NULL); feed.mm_per_rev is 0.0894427.
TW_CHECK
tw_status tw_best_feed_with_least_chip(struct tw_corner_radius corner_radius,
                                       struct tw_chip_thickness least_chip_thickness,
                                       struct tw_feed *feed,
                                       struct tw_error *detail);

// tw_best_feed_with_least_chip for every row.
//
// Columns, see the first page: corner_radius, least_chip_thickness are read,
// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_best_feed_with_least_chip_column(const struct tw_column *corner_radius,
                                              const struct tw_column *least_chip_thickness,
                                              const struct tw_out_column *feed,
                                              int32_t *row_status,
                                              size_t row_status_stride_bytes,
                                              struct tw_error *detail);

// The feed that leaves a total height where chips below a least thickness do not form: the coarser
// of the two, from the best feed on.
//
// A height below the least chip thickness is refused (TW_IMPOSSIBLE), and a corner radius of zero
// (TW_CONTRADICTION). detail may be NULL. After a failure the output is NaN.
//
// Source: Brammertz 1961, Industrie-Anzeiger 83 (from memory); inverted.
// Example: tw_feed_with_least_chip(tw_rt_micrometer(8), tw_corner_radius_millimeter(0.8),
//     tw_chip_thickness_micrometer(4), &feed, NULL); feed.mm_per_rev is 0.193137.
TW_CHECK
tw_status tw_feed_with_least_chip(struct tw_rt rt,
                                  struct tw_corner_radius corner_radius,
                                  struct tw_chip_thickness least_chip_thickness,
                                  struct tw_feed *feed,
                                  struct tw_error *detail);

// tw_feed_with_least_chip for every row.
//
// Columns, see the first page: rt, corner_radius, least_chip_thickness are read,
// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_feed_with_least_chip_column(const struct tw_column *rt,
                                         const struct tw_column *corner_radius,
                                         const struct tw_column *least_chip_thickness,
                                         const struct tw_out_column *feed,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// The least thickness of chip that an edge of this radius cuts, by common practice: 0.3 times the
// radius (0.2 to 0.4). With edges above 0.02 mm it overstates.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: common practice, no source (0.2 to 0.4 of the edge radius).
// Example: tw_least_chip_thickness(tw_edge_radius_micrometer(20), &least_chip_thickness, NULL);
//     tw_chip_thickness_as_micrometer(least_chip_thickness) is 6.000.
TW_CHECK
tw_status tw_least_chip_thickness(struct tw_edge_radius edge_radius,
                                  struct tw_chip_thickness *least_chip_thickness,
                                  struct tw_error *detail);

// tw_least_chip_thickness for every row.
//
// Columns, see the first page: edge_radius is read,
// least_chip_thickness is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_least_chip_thickness_column(const struct tw_column *edge_radius,
                                         const struct tw_out_column *least_chip_thickness,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// The least thickness of chip that an edge of this radius cuts, from the angle of friction beta:
// r_n (1 - cos(45 deg - beta/2)); without friction it is the model of a flow that parts at 45 deg.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Son et al. 2005, Int. J. Machine Tools and Manufacture 45 (from memory).
// Example: tw_least_chip_by_friction(tw_edge_radius_micrometer(20), tw_friction_angle_degree(30),
//     &least_chip_thickness, NULL);
//     tw_chip_thickness_as_micrometer(least_chip_thickness) is 2.67949.
TW_CHECK
tw_status tw_least_chip_by_friction(struct tw_edge_radius edge_radius,
                                    struct tw_friction_angle friction_angle,
                                    struct tw_chip_thickness *least_chip_thickness,
                                    struct tw_error *detail);

// tw_least_chip_by_friction for every row.
//
// Columns, see the first page: edge_radius, friction_angle are read,
// least_chip_thickness is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_least_chip_by_friction_column(const struct tw_column *edge_radius,
                                           const struct tw_column *friction_angle,
                                           const struct tw_out_column *least_chip_thickness,
                                           int32_t *row_status,
                                           size_t row_status_stride_bytes,
                                           struct tw_error *detail);

// The least thickness of chip that an edge of a radius cuts, by one of three models: 0.3 r_n, or
// r_n (1 - cos theta) with theta 45 deg or 37.6 deg. model is a number of enum
// tw_least_chip_model; friction makes a fourth model, tw_least_chip_by_friction. A large honed
// edge cuts thinner chips than these say.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: common practice, no source; L'vov; Basuray et al., Wear 43 (from memory, unverified).
// Example: tw_least_chip_by_model(tw_edge_radius_micrometer(20), TW_LEAST_CHIP_MODEL_STAGNATION,
//     &chip_thickness, NULL); tw_chip_thickness_as_micrometer(chip_thickness) is 5.85786.
TW_CHECK
tw_status tw_least_chip_by_model(struct tw_edge_radius edge_radius,
                                 int32_t model,
                                 struct tw_chip_thickness *chip_thickness,
                                 struct tw_error *detail);

// tw_least_chip_by_model for every row.
//
// Columns, see the first page: edge_radius is read, chip_thickness is written. model is one
// number for all rows; one that is refused fails the whole call. row_status may be NULL; else
// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_least_chip_by_model_column(const struct tw_column *edge_radius,
                                        int32_t model,
                                        const struct tw_out_column *chip_thickness,
                                        int32_t *row_status,
                                        size_t row_status_stride_bytes,
                                        struct tw_error *detail);

// Total height, maximum height, arithmetic mean height and root mean square height that a feed
// and a corner radius leave when the corner arc alone makes the finish, exactly. For a tool
// whose minor cutting edge angle is not known; true when it is at least
// tw_least_minor_angle_for_arc. A feed of twice the corner radius or more is refused
// (TW_CONTRADICTION).
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: Shaw, Metal Cutting Principles, chapter on surface finish (from memory); derived again.
// Example: tw_arc_roughness(tw_feed_inch_per_revolution(0.008),
//     tw_corner_radius_inch_fraction(1, 64), &rt, &rz, &ra, &rq, NULL);
//     tw_rt_as_microinch(rt) is 520.675, tw_rz_as_microinch(rz) is 520.675,
//     tw_ra_as_microinch(ra) is 133.147 and tw_rq_as_microinch(rq) is 154.855.
TW_CHECK
tw_status tw_arc_roughness(struct tw_feed feed,
                           struct tw_corner_radius corner_radius,
                           struct tw_rt *rt,
                           struct tw_rz *rz,
                           struct tw_ra *ra,
                           struct tw_rq *rq,
                           struct tw_error *detail);

// tw_arc_roughness for every row.
//
// Columns, see the first page: feed and corner_radius are read, rt, rz, ra and rq are written,
// each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_arc_roughness_column(const struct tw_column *feed,
                                  const struct tw_column *corner_radius,
                                  const struct tw_out_column *rt,
                                  const struct tw_out_column *rz,
                                  const struct tw_out_column *ra,
                                  const struct tw_out_column *rq,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The least minor cutting edge angle with which the corner arc alone makes the finish: asin(feed
// / (2 corner_radius)). A feed of twice the corner radius or more is refused (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry: the ridge stands where the arc passes into the minor edge.
// Example: tw_least_minor_angle_for_arc(tw_feed_millimeter_per_revolution(0.2),
//     tw_corner_radius_millimeter(0.8), &minor_cutting_edge_angle, NULL);
//     minor_cutting_edge_angle.deg is 7.18076.
TW_CHECK
tw_status tw_least_minor_angle_for_arc(struct tw_feed feed,
                                       struct tw_corner_radius corner_radius,
                                       struct tw_minor_cutting_edge_angle *minor_cutting_edge_angle,
                                       struct tw_error *detail);

// tw_least_minor_angle_for_arc for every row.
//
// Columns, see the first page: feed and corner_radius are read, minor_cutting_edge_angle is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_least_minor_angle_for_arc_column(const struct tw_column *feed,
                                              const struct tw_column *corner_radius,
                                              const struct tw_out_column *minor_cutting_edge_angle,
                                              int32_t *row_status,
                                              size_t row_status_stride_bytes,
                                              struct tw_error *detail);

// Skewness and kurtosis of the ridges that a feed and the outline of the tool leave, without a
// filter; their spacing is the feed. The two edge angles must make less than 180 deg together
// (TW_CONTRADICTION).
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 21920-2 (from memory) for the definitions; derived.
// Example: tw_theoretical_shape(tw_feed_millimeter_per_revolution(0.25),
//     tw_corner_radius_millimeter(0.8), tw_cutting_edge_angle_degree(90),
//     tw_minor_cutting_edge_angle_degree(20), &rsk, &rku, NULL); rsk.ratio is 0.642936 and
//     rku.ratio is 2.14949.
TW_CHECK
tw_status tw_theoretical_shape(struct tw_feed feed,
                               struct tw_corner_radius corner_radius,
                               struct tw_cutting_edge_angle cutting_edge_angle,
                               struct tw_minor_cutting_edge_angle minor_cutting_edge_angle,
                               struct tw_rsk *rsk,
                               struct tw_rku *rku,
                               struct tw_error *detail);

// tw_theoretical_shape for every row.
//
// Columns, see the first page: feed, corner_radius, cutting_edge_angle and
// minor_cutting_edge_angle are read, rsk and rku are written, each may be NULL unless both are.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_theoretical_shape_column(const struct tw_column *feed,
                                      const struct tw_column *corner_radius,
                                      const struct tw_column *cutting_edge_angle,
                                      const struct tw_column *minor_cutting_edge_angle,
                                      const struct tw_out_column *rsk,
                                      const struct tw_out_column *rku,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// Skewness and kurtosis of the ridges that a feed and a corner radius leave when the corner arc
// alone makes the finish; their spacing is the feed. A feed of twice the corner radius or more
// is refused (TW_CONTRADICTION).
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 21920-2 (from memory) for the definitions; derived.
// Example: tw_arc_shape(tw_feed_millimeter_per_revolution(0.25), tw_corner_radius_millimeter(0.8),
//     &rsk, &rku, NULL); rsk.ratio is 0.642936 and rku.ratio is 2.14949.
TW_CHECK
tw_status tw_arc_shape(struct tw_feed feed,
                       struct tw_corner_radius corner_radius,
                       struct tw_rsk *rsk,
                       struct tw_rku *rku,
                       struct tw_error *detail);

// tw_arc_shape for every row.
//
// Columns, see the first page: feed and corner_radius are read, rsk and rku are written, each
// may be NULL unless both are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_arc_shape_column(const struct tw_column *feed,
                              const struct tw_column *corner_radius,
                              const struct tw_out_column *rsk,
                              const struct tw_out_column *rku,
                              int32_t *row_status,
                              size_t row_status_stride_bytes,
                              struct tw_error *detail);

// What an uneven hand on the feed leaves: the expected Ra over an evaluation length, the Ra
// below which 5, 50 and 95 of 100 such lengths lie, and the same of Rt. The feeds of the single
// turns scatter by the normal law, feed_unevenness being its standard deviation over its mean, cut
// off at nothing and at twice the mean: with much of it the roughest turns of a hand that jerks
// more than that are not in it. The corner arc alone makes the finish.
//
// Refused: an unevenness above 0.5 (TW_OUT_OF_RANGE), a feed that is not less than the corner
// radius, and an evaluation length shorter than one turn (TW_CONTRADICTION).
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: derived: order statistics, and the central limit theorem of a ratio of means.
// Example: tw_uneven_spread(tw_feed_millimeter_per_revolution(0.2), tw_feed_unevenness_one(0.2),
//     tw_corner_radius_millimeter(0.8), tw_length_millimeter(4), &ra, &ra_5, &ra_50, &ra_95,
//     &rt_5, &rt_50, &rt_95, NULL); ra.um is 1.9068, ra_5.um is 1.6215, ra_50.um is 1.9068,
//     ra_95.um is 2.1921, rt_5.um is 9.3089, rt_50.um is 11.7283 and rt_95.um is 15.3541.
TW_CHECK
tw_status tw_uneven_spread(struct tw_feed feed,
                           struct tw_feed_unevenness feed_unevenness,
                           struct tw_corner_radius corner_radius,
                           struct tw_length evaluation_length,
                           struct tw_ra *ra,
                           struct tw_ra *ra_5,
                           struct tw_ra *ra_50,
                           struct tw_ra *ra_95,
                           struct tw_rt *rt_5,
                           struct tw_rt *rt_50,
                           struct tw_rt *rt_95,
                           struct tw_error *detail);

// tw_uneven_spread for every row.
//
// Columns, see the first page: feed, feed_unevenness, corner_radius and evaluation_length are
// read, ra, ra_5, ra_50, ra_95, rt_5, rt_50 and rt_95 are written, each may be NULL unless all
// are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_uneven_spread_column(const struct tw_column *feed,
                                  const struct tw_column *feed_unevenness,
                                  const struct tw_column *corner_radius,
                                  const struct tw_column *evaluation_length,
                                  const struct tw_out_column *ra,
                                  const struct tw_out_column *ra_5,
                                  const struct tw_out_column *ra_50,
                                  const struct tw_out_column *ra_95,
                                  const struct tw_out_column *rt_5,
                                  const struct tw_out_column *rt_50,
                                  const struct tw_out_column *rt_95,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The smoothest roughness grade that a surface of an arithmetic mean height meets, N1 to N12 as
// 1 to 12, and the largest Ra of that grade, which belongs to it. An Ra above 50 um is refused
// (TW_OUT_OF_RANGE). The inch partners of the grades are rounded: 63 uin is 1.6002 um and so, to
// the letter, no longer N7.
//
// An output may be NULL unless both are. detail may be NULL. After a failure largest_ra is NaN
// and grade 0.
//
// Source: ISO 1302, 1978 and 1992 editions, from memory; later editions no longer recommend them.
// Example: tw_roughness_grade(tw_ra_microinch(50), &largest_ra, &grade, NULL);
//     largest_ra.um is 1.600 and grade is 7.
TW_CHECK
tw_status tw_roughness_grade(struct tw_ra ra,
                             struct tw_ra *largest_ra,
                             int32_t *grade,
                             struct tw_error *detail);

// tw_roughness_grade for every row.
//
// Columns, see the first page: ra is read, largest_ra is written. grade may be NULL; else one
// int32_t a row (0 for a bad row), grade_stride_bytes apart (at least 4). row_status likewise.
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_roughness_grade_column(const struct tw_column *ra,
                                    const struct tw_out_column *largest_ra,
                                    int32_t *grade,
                                    size_t grade_stride_bytes,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// Cut-off and evaluation length (five cut-offs) with which a turned surface is measured, from
// the feed it was turned with: its feed marks are a pattern (ISO 4288:1996 table 3, from
// memory). The upper end of a row of the table belongs to it. Beyond the table is refused
// (TW_OUT_OF_RANGE).
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 4288:1996 table 3, from memory.
// Example: tw_cut_off_by_feed(tw_feed_millimeter_per_revolution(0.2), &cut_off,
//     &evaluation_length, NULL); cut_off.mm is 0.8000 and evaluation_length.mm is 4.000.
TW_CHECK
tw_status tw_cut_off_by_feed(struct tw_feed feed,
                             struct tw_cut_off *cut_off,
                             struct tw_length *evaluation_length,
                             struct tw_error *detail);

// tw_cut_off_by_feed for every row.
//
// Columns, see the first page: feed is read, cut_off and evaluation_length are written, each may
// be NULL unless both are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cut_off_by_feed_column(const struct tw_column *feed,
                                    const struct tw_out_column *cut_off,
                                    const struct tw_out_column *evaluation_length,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// Cut-off and evaluation length (five cut-offs) with which a surface without a pattern is
// measured, from its Ra. A turned surface has one, its feed marks: tw_cut_off_by_feed (ISO
// 4288:1996 table 1, from memory). The upper end of a row of the table belongs to it. Beyond the
// table is refused (TW_OUT_OF_RANGE).
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 4288:1996 table 1, from memory.
// Example: tw_cut_off_by_ra(tw_ra_microinch(125), &cut_off, &evaluation_length, NULL);
//     cut_off.mm is 2.500 and evaluation_length.mm is 12.50.
TW_CHECK
tw_status tw_cut_off_by_ra(struct tw_ra ra,
                           struct tw_cut_off *cut_off,
                           struct tw_length *evaluation_length,
                           struct tw_error *detail);

// tw_cut_off_by_ra for every row.
//
// Columns, see the first page: ra is read, cut_off and evaluation_length are written, each may
// be NULL unless both are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cut_off_by_ra_column(const struct tw_column *ra,
                                  const struct tw_out_column *cut_off,
                                  const struct tw_out_column *evaluation_length,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// Cut-off and evaluation length (five cut-offs) with which a surface without a pattern is
// measured, from its Rz. A turned surface has one, its feed marks: tw_cut_off_by_feed (ISO
// 4288:1996 table 2, from memory). The upper end of a row of the table belongs to it. Beyond the
// table is refused (TW_OUT_OF_RANGE).
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 4288:1996 table 2, from memory.
// Example: tw_cut_off_by_rz(tw_rz_micrometer(6.3), &cut_off, &evaluation_length, NULL);
//     cut_off.mm is 0.8000 and evaluation_length.mm is 4.000.
TW_CHECK
tw_status tw_cut_off_by_rz(struct tw_rz rz,
                           struct tw_cut_off *cut_off,
                           struct tw_length *evaluation_length,
                           struct tw_error *detail);

// tw_cut_off_by_rz for every row.
//
// Columns, see the first page: rz is read, cut_off and evaluation_length are written, each may
// be NULL unless both are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cut_off_by_rz_column(const struct tw_column *rz,
                                  const struct tw_out_column *cut_off,
                                  const struct tw_out_column *evaluation_length,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The short-wave cut-off that goes with a cut-off of 0.08, 0.25, 0.8, 2.5 or 8 mm (ISO
// 3274:1996, from memory). Another one is refused (TW_OUT_OF_RANGE).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: ISO 3274:1996, from memory.
// Example: tw_short_cut_off_for(tw_cut_off_millimeter(0.8), &short_cut_off, NULL);
//     short_cut_off.mm is 0.002500.
TW_CHECK
tw_status tw_short_cut_off_for(struct tw_cut_off cut_off,
                               struct tw_short_cut_off *short_cut_off,
                               struct tw_error *detail);

// tw_short_cut_off_for for every row.
//
// Columns, see the first page: cut_off is read, short_cut_off is written. row_status may be
// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_short_cut_off_for_column(const struct tw_column *cut_off,
                                      const struct tw_out_column *short_cut_off,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// How much of a wave the mean line of the Gaussian filter keeps (ISO 16610-21):
// 2^(-(cut_off/wavelength)^2); the roughness profile keeps the rest. The wavelength is a mean width of
// elements.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: ISO 16610-21 (from memory).
// Example: tw_mean_line_transmission(tw_rsm_millimeter(2.5), tw_cut_off_millimeter(0.8),
//     &transmission, NULL); transmission.ratio is 0.931482.
TW_CHECK
tw_status tw_mean_line_transmission(struct tw_rsm wavelength,
                                    struct tw_cut_off cut_off,
                                    struct tw_transmission *transmission,
                                    struct tw_error *detail);

// tw_mean_line_transmission for every row.
//
// Columns, see the first page: wavelength, cut_off are read,
// transmission is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_mean_line_transmission_column(const struct tw_column *wavelength,
                                           const struct tw_column *cut_off,
                                           const struct tw_out_column *transmission,
                                           int32_t *row_status,
                                           size_t row_status_stride_bytes,
                                           struct tw_error *detail);

// How much of a wave the roughness profile keeps (Gaussian filter, ISO 16610-21, from memory):
// 1 - 2^(-(cut_off / wavelength)^2). The mean line keeps the rest: tw_mean_line_transmission.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: ISO 16610-21 (from memory).
// Example: tw_roughness_transmission(tw_rsm_millimeter(2.5), tw_cut_off_millimeter(0.8),
//     &transmission, NULL); transmission.ratio is 0.0685179.
TW_CHECK
tw_status tw_roughness_transmission(struct tw_rsm wavelength,
                                    struct tw_cut_off cut_off,
                                    struct tw_transmission *transmission,
                                    struct tw_error *detail);

// tw_roughness_transmission for every row.
//
// Columns, see the first page: wavelength and cut_off are read, transmission is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_roughness_transmission_column(const struct tw_column *wavelength,
                                           const struct tw_column *cut_off,
                                           const struct tw_out_column *transmission,
                                           int32_t *row_status,
                                           size_t row_status_stride_bytes,
                                           struct tw_error *detail);

// How much of a wave the short-wave filter keeps: 2^(-(short_cut_off / wavelength)^2).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: ISO 16610-21, ISO 21920-3 (from memory).
// Example: tw_short_wave_transmission(tw_rsm_micrometer(8), tw_short_cut_off_micrometer(2.5),
//     &transmission, NULL); transmission.ratio is 0.934550.
TW_CHECK
tw_status tw_short_wave_transmission(struct tw_rsm wavelength,
                                     struct tw_short_cut_off short_cut_off,
                                     struct tw_transmission *transmission,
                                     struct tw_error *detail);

// tw_short_wave_transmission for every row.
//
// Columns, see the first page: wavelength and short_cut_off are read, transmission is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_short_wave_transmission_column(const struct tw_column *wavelength,
                                            const struct tw_column *short_cut_off,
                                            const struct tw_out_column *transmission,
                                            int32_t *row_status,
                                            size_t row_status_stride_bytes,
                                            struct tw_error *detail);

// How far a diameter grows by a rise of temperature: expansion times diameter times rise.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the thermal expansion.
// Example: tw_diameter_growth(tw_diameter_inch(2), tw_expansion_micrometer_per_meter_kelvin(11.5),
//     tw_rise_kelvin(10), &growth, NULL); tw_growth_as_inch(growth) is 0.00023000.
TW_CHECK
tw_status tw_diameter_growth(struct tw_diameter diameter,
                             struct tw_expansion expansion,
                             struct tw_rise rise,
                             struct tw_growth *growth,
                             struct tw_error *detail);

// tw_diameter_growth for every row.
//
// Columns, see the first page: diameter, expansion and rise are read, growth is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_diameter_growth_column(const struct tw_column *diameter,
                                    const struct tw_column *expansion,
                                    const struct tw_column *rise,
                                    const struct tw_out_column *growth,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// How far a length grows by a rise of temperature, where nothing holds its ends.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the thermal expansion.
// Example: tw_length_growth(tw_length_millimeter(400),
//     tw_expansion_micrometer_per_meter_kelvin(11.5), tw_rise_kelvin(15), &growth, NULL);
//     growth.mm is 0.069000.
TW_CHECK
tw_status tw_length_growth(struct tw_length length,
                           struct tw_expansion expansion,
                           struct tw_rise rise,
                           struct tw_growth *growth,
                           struct tw_error *detail);

// tw_length_growth for every row.
//
// Columns, see the first page: length, expansion and rise are read, growth is written. row_status
// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_length_growth_column(const struct tw_column *length,
                                  const struct tw_column *expansion,
                                  const struct tw_column *rise,
                                  const struct tw_out_column *growth,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// What a diameter measured warm will be at 20 degC: measured / (1 + expansion times rise). rise is
// how much warmer than 20 degC the work is; the instrument is at 20 degC.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the thermal expansion; 20 degC is that of ISO 1 (from memory).
// Example: tw_diameter_at_20(tw_diameter_millimeter(60.028),
//     tw_expansion_micrometer_per_meter_kelvin(23.4), tw_rise_kelvin(20), &diameter, NULL);
//     diameter.mm is 59.99992.
TW_CHECK
tw_status tw_diameter_at_20(struct tw_diameter measured,
                            struct tw_expansion expansion,
                            struct tw_rise rise,
                            struct tw_diameter *diameter,
                            struct tw_error *detail);

// tw_diameter_at_20 for every row.
//
// Columns, see the first page: measured, expansion and rise are read, diameter is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_diameter_at_20_column(const struct tw_column *measured,
                                   const struct tw_column *expansion,
                                   const struct tw_column *rise,
                                   const struct tw_out_column *diameter,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// How much warmer a cut makes the work without any loss, an upper bound: share of the power that
// stays in the work (0.05 to 0.2, from memory of text books) times power times time over mass
// times specific heat.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the specific heat; the share from memory of the text books.
// Example: tw_temperature_rise(tw_power_kilowatt(1.2), tw_heat_share_one(0.1), tw_time_second(60),
//     tw_mass_kilogram(0.98646), tw_specific_heat_joule_per_kilogram_kelvin(470), &rise, NULL);
//     rise.k is 15.5294.
TW_CHECK
tw_status tw_temperature_rise(struct tw_power power,
                              struct tw_heat_share heat_share,
                              struct tw_time time,
                              struct tw_mass mass,
                              struct tw_specific_heat specific_heat,
                              struct tw_rise *rise,
                              struct tw_error *detail);

// tw_temperature_rise for every row.
//
// Columns, see the first page: power, heat_share, time, mass and specific_heat are read, rise is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_temperature_rise_column(const struct tw_column *power,
                                     const struct tw_column *heat_share,
                                     const struct tw_column *time,
                                     const struct tw_column *mass,
                                     const struct tw_column *specific_heat,
                                     const struct tw_out_column *rise,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// What a length measured warm will be at 20 degC: measured / (1 + expansion rise). The instrument
// is itself at 20 degC; one as warm as the work errs by its own growth.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the thermal expansion; 20 degC is that of ISO 1 (from memory).
// Example: tw_length_at_20(tw_length_millimeter(100.0115),
//     tw_expansion_micrometer_per_meter_kelvin(11.5), tw_rise_kelvin(10), &length, NULL);
//     length.mm is 100.0000.
TW_CHECK
tw_status tw_length_at_20(struct tw_length measured,
                          struct tw_expansion expansion,
                          struct tw_rise rise,
                          struct tw_length *length,
                          struct tw_error *detail);

// tw_length_at_20 for every row.
//
// Columns, see the first page: measured, expansion and rise are read, length is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_length_at_20_column(const struct tw_column *measured,
                                 const struct tw_column *expansion,
                                 const struct tw_column *rise,
                                 const struct tw_out_column *length,
                                 int32_t *row_status,
                                 size_t row_status_stride_bytes,
                                 struct tw_error *detail);

// The mass of a solid round bar: density pi diameter^2 length / 4.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_mass_of_bar(tw_density_kilogram_per_cubic_meter(7850), tw_diameter_millimeter(40),
//     tw_length_millimeter(100), &mass, NULL); mass.kg is 0.986460.
TW_CHECK
tw_status tw_mass_of_bar(struct tw_density density,
                         struct tw_diameter diameter,
                         struct tw_length length,
                         struct tw_mass *mass,
                         struct tw_error *detail);

// tw_mass_of_bar for every row.
//
// Columns, see the first page: density, diameter and length are read, mass is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_mass_of_bar_column(const struct tw_column *density,
                                const struct tw_column *diameter,
                                const struct tw_column *length,
                                const struct tw_out_column *mass,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The force with which a solid round bar that grows between chuck and centre presses harder on the
// centre: growth / (length/(E A) + 1/axial_stiffness). axial_stiffness is that of centre, quill
// and tailstock along the axis. Negative where the bar shrinks.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived: the bar and what stands behind it are springs in a row.
// Example: tw_growth_load(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(30),
//     tw_length_millimeter(400), tw_growth_millimeter(0.069),
//     tw_axial_stiffness_newton_per_micrometer(20), &axial_force, NULL); axial_force.n is 1309.43.
TW_CHECK
tw_status tw_growth_load(struct tw_youngs_modulus youngs_modulus,
                         struct tw_diameter diameter,
                         struct tw_length length,
                         struct tw_growth growth,
                         struct tw_axial_stiffness axial_stiffness,
                         struct tw_axial_force *axial_force,
                         struct tw_error *detail);

// tw_growth_load for every row.
//
// Columns, see the first page: youngs_modulus, diameter, length, growth and axial_stiffness are
// read, axial_force is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_growth_load_column(const struct tw_column *youngs_modulus,
                                const struct tw_column *diameter,
                                const struct tw_column *length,
                                const struct tw_column *growth,
                                const struct tw_column *axial_stiffness,
                                const struct tw_out_column *axial_force,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// The axial force at which a solid round bar hinged at both ends buckles: pi^2 E I / length^2. A
// bar that the chuck holds bears about twice as much.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Euler's column; any strength of materials text (from memory).
// Example: tw_buckling_load(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(30),
//     tw_length_millimeter(400), &axial_force, NULL);
//     tw_axial_force_as_kilonewton(axial_force) is 515.055.
TW_CHECK
tw_status tw_buckling_load(struct tw_youngs_modulus youngs_modulus,
                           struct tw_diameter diameter,
                           struct tw_length length,
                           struct tw_axial_force *axial_force,
                           struct tw_error *detail);

// tw_buckling_load for every row.
//
// Columns, see the first page: youngs_modulus, diameter and length are read, axial_force is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_buckling_load_column(const struct tw_column *youngs_modulus,
                                  const struct tw_column *diameter,
                                  const struct tw_column *length,
                                  const struct tw_out_column *axial_force,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The axial force that holds the work on a centre of 60 deg against a radial force: radial_force
// tan(30 deg - atan friction). Friction 0 is on the safe side. Zero or below: friction alone holds
// it.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: statics of a wedge, derived.
// Example: tw_push_out(tw_passive_force_newton(600), tw_friction_one(0.15), &axial_force, NULL);
//     axial_force.n is 235.974.
TW_CHECK
tw_status tw_push_out(struct tw_passive_force radial_force,
                      struct tw_friction friction,
                      struct tw_axial_force *axial_force,
                      struct tw_error *detail);

// tw_push_out for every row.
//
// Columns, see the first page: radial_force and friction are read, axial_force is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_push_out_column(const struct tw_column *radial_force,
                             const struct tw_column *friction,
                             const struct tw_out_column *axial_force,
                             int32_t *row_status,
                             size_t row_status_stride_bytes,
                             struct tw_error *detail);

// The mean pressure of an axial force on the cone of a centre hole: force over the ring that the
// cone shows along the axis. New edges bear unevenly. A force that pulls presses nothing: its
// size is taken. A pilot that is not smaller than the countersink is refused (TW_CONTRADICTION),
// so is a ring too small for any plausible pressure (TW_IMPOSSIBLE).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of a pressure; the projected ring, derived.
// Example: tw_cone_pressure(tw_axial_force_newton(800), tw_diameter_millimeter(8.5),
//     tw_diameter_millimeter(4), &mean_pressure, NULL); mean_pressure.mpa is 18.1083.
TW_CHECK
tw_status tw_cone_pressure(struct tw_axial_force axial_force,
                           struct tw_diameter countersink_diameter,
                           struct tw_diameter pilot_diameter,
                           struct tw_mean_pressure *mean_pressure,
                           struct tw_error *detail);

// tw_cone_pressure for every row.
//
// Columns, see the first page: axial_force, countersink_diameter and pilot_diameter are read,
// mean_pressure is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cone_pressure_column(const struct tw_column *axial_force,
                                  const struct tw_column *countersink_diameter,
                                  const struct tw_column *pilot_diameter,
                                  const struct tw_out_column *mean_pressure,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The mean pressure of a radial force on the cone of 60 deg of a centre hole: force over the
// shadow that the cone throws to the side. A pilot that is not smaller than the countersink is
// refused (TW_CONTRADICTION), so is a shadow too small for any plausible pressure
// (TW_IMPOSSIBLE).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of a pressure; the projected trapezium, derived.
// Example: tw_side_pressure(tw_passive_force_newton(200), tw_diameter_millimeter(8.5),
//     tw_diameter_millimeter(4), &mean_pressure, NULL); mean_pressure.mpa is 8.21120.
TW_CHECK
tw_status tw_side_pressure(struct tw_passive_force radial_force,
                           struct tw_diameter countersink_diameter,
                           struct tw_diameter pilot_diameter,
                           struct tw_mean_pressure *mean_pressure,
                           struct tw_error *detail);

// tw_side_pressure for every row.
//
// Columns, see the first page: radial_force, countersink_diameter and pilot_diameter are read,
// mean_pressure is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_side_pressure_column(const struct tw_column *radial_force,
                                  const struct tw_column *countersink_diameter,
                                  const struct tw_column *pilot_diameter,
                                  const struct tw_out_column *mean_pressure,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// How deep the cone of 60 deg of a centre hole is, from its largest diameter to the pilot:
// (countersink_diameter - pilot_diameter) sqrt(3)/2. Without a guard chamfer. A pilot that is not
// smaller than the countersink is refused (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry; the table of ISO 6411 obeys it.
// Example: tw_cone_depth(tw_diameter_millimeter(5.3), tw_diameter_millimeter(2.5), &depth, NULL);
//     depth.mm is 2.42487.
TW_CHECK
tw_status tw_cone_depth(struct tw_diameter countersink_diameter,
                        struct tw_diameter pilot_diameter,
                        struct tw_length *depth,
                        struct tw_error *detail);

// tw_cone_depth for every row.
//
// Columns, see the first page: countersink_diameter and pilot_diameter are read, depth is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cone_depth_column(const struct tw_column *countersink_diameter,
                               const struct tw_column *pilot_diameter,
                               const struct tw_out_column *depth,
                               int32_t *row_status,
                               size_t row_status_stride_bytes,
                               struct tw_error *detail);

// A centre hole of the standard by the diameter of its pilot, by which its drill is called: the
// largest diameter of the cone of 60 deg, the largest diameter at the face (of the guard chamfer
// where there is one), how deep cone and chamfer are, and how deep to drill at least, from the
// face to the end of the pilot. All from memory of ISO 6411, ISO 866 and ISO 2540; drilling
// depths of form B are derived.
//
// form is a number of enum tw_centre_hole_form. A pilot of which the form has no centre hole is
// refused (TW_OUT_OF_RANGE).
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: form A: ISO 866 and ISO 6411, form B: ISO 2540 and ISO 6411; from memory.
// Example: tw_centre_hole(tw_diameter_millimeter(2.5), TW_CENTRE_HOLE_FORM_A,
//     &countersink_diameter, &largest_diameter, &cone_depth, &drilling_depth, NULL);
//     countersink_diameter.mm is 5.300, largest_diameter.mm is 5.300, cone_depth.mm is 2.420 and
//     drilling_depth.mm is 4.600.
TW_CHECK
tw_status tw_centre_hole(struct tw_diameter pilot_diameter,
                         int32_t form,
                         struct tw_diameter *countersink_diameter,
                         struct tw_diameter *largest_diameter,
                         struct tw_length *cone_depth,
                         struct tw_length *drilling_depth,
                         struct tw_error *detail);

// tw_centre_hole for every row.
//
// Columns, see the first page: pilot_diameter is read, countersink_diameter, largest_diameter,
// cone_depth and drilling_depth are written, each may be NULL unless all are. form is one number
// for all rows; one that is refused fails the whole call. row_status may be NULL; else one
// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_centre_hole_column(const struct tw_column *pilot_diameter,
                                int32_t form,
                                const struct tw_out_column *countersink_diameter,
                                const struct tw_out_column *largest_diameter,
                                const struct tw_out_column *cone_depth,
                                const struct tw_out_column *drilling_depth,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// How long an edge lasts at a cutting speed: one minute times (constant/speed)^(1/exponent). constant
// is the cutting speed at which it lasts one minute.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Taylor 1907, from memory.
// Example: tw_life_at(tw_life_constant_foot_per_minute(900), tw_life_exponent_one(0.25),
//     tw_cutting_speed_foot_per_minute(500), &life, NULL); tw_life_as_minute(life) is 10.4976.
TW_CHECK
tw_status tw_life_at(struct tw_life_constant constant,
                     struct tw_life_exponent exponent,
                     struct tw_cutting_speed cutting_speed,
                     struct tw_life *life,
                     struct tw_error *detail);

// tw_life_at for every row.
//
// Columns, see the first page: constant, exponent and cutting_speed are read, life is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_life_at_column(const struct tw_column *constant,
                            const struct tw_column *exponent,
                            const struct tw_column *cutting_speed,
                            const struct tw_out_column *life,
                            int32_t *row_status,
                            size_t row_status_stride_bytes,
                            struct tw_error *detail);

// The cutting speed at which an edge lasts so long: constant / (life over one minute)^exponent. The
// struct of the life holds seconds all the same.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Taylor 1907, from memory.
// Example: tw_speed_for_life(tw_life_constant_meter_per_minute(60), tw_life_exponent_one(0.125),
//     tw_life_minute(60), &cutting_speed, NULL); cutting_speed.m_per_min is 35.9652.
TW_CHECK
tw_status tw_speed_for_life(struct tw_life_constant constant,
                            struct tw_life_exponent exponent,
                            struct tw_life life,
                            struct tw_cutting_speed *cutting_speed,
                            struct tw_error *detail);

// tw_speed_for_life for every row.
//
// Columns, see the first page: constant, exponent and life are read, cutting_speed is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_speed_for_life_column(const struct tw_column *constant,
                                   const struct tw_column *exponent,
                                   const struct tw_column *life,
                                   const struct tw_out_column *cutting_speed,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// What becomes of a life when the cutting speed is changed: life times (from/to)^(1/exponent).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Taylor 1907, from memory.
// Example: tw_life_after_change(tw_life_minute(60), tw_life_exponent_one(0.125),
//     tw_cutting_speed_meter_per_minute(30), tw_cutting_speed_meter_per_minute(33), &changed_life,
//     NULL); tw_life_as_minute(changed_life) is 27.9904.
TW_CHECK
tw_status tw_life_after_change(struct tw_life life,
                               struct tw_life_exponent exponent,
                               struct tw_cutting_speed from,
                               struct tw_cutting_speed to,
                               struct tw_life *changed_life,
                               struct tw_error *detail);

// tw_life_after_change for every row.
//
// Columns, see the first page: life, exponent, from and to are read, changed_life is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_life_after_change_column(const struct tw_column *life,
                                      const struct tw_column *exponent,
                                      const struct tw_column *from,
                                      const struct tw_column *to,
                                      const struct tw_out_column *changed_life,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// The life and cutting speed at which a part is cheapest: (1/exponent - 1)(change_time +
// edge_price/machine_per_hour). Both prices in one currency; a price of 0 gives the life at which
// most parts are made. Refused (TW_IMPOSSIBLE) with an exponent of 1 or more.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: the least cost of a part with Taylor's law, derived; text books (from memory).
// Example: tw_cheapest_life(tw_life_constant_meter_per_minute(300), tw_life_exponent_one(0.25),
//     tw_time_minute(1), tw_price_one(3), tw_price_per_hour_one(60), &life, &cutting_speed, NULL);
//     tw_life_as_minute(life) is 12.000 and cutting_speed.m_per_min is 161.185.
TW_CHECK
tw_status tw_cheapest_life(struct tw_life_constant constant,
                           struct tw_life_exponent exponent,
                           struct tw_time change_time,
                           struct tw_price edge_price,
                           struct tw_price_per_hour machine_per_hour,
                           struct tw_life *life,
                           struct tw_cutting_speed *cutting_speed,
                           struct tw_error *detail);

// tw_cheapest_life for every row.
//
// Columns, see the first page: constant, exponent, change_time, edge_price and machine_per_hour
// are read, life and cutting_speed are written, each may be NULL unless all are. row_status may be
// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_cheapest_life_column(const struct tw_column *constant,
                                  const struct tw_column *exponent,
                                  const struct tw_column *change_time,
                                  const struct tw_column *edge_price,
                                  const struct tw_column *machine_per_hour,
                                  const struct tw_out_column *life,
                                  const struct tw_out_column *cutting_speed,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The life at which most parts are made, and the cutting speed for it: (1/exponent - 1)
// change_time, by Taylor's law. As tw_cheapest_life with edges that cost nothing. Refused
// (TW_IMPOSSIBLE): an exponent of one or more, and a time of change for which no life is
// plausible.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: the least time of a part with Taylor's law, derived; text books (from memory).
// Example: tw_fastest_life(tw_life_constant_meter_per_minute(60), tw_life_exponent_one(0.125),
//     tw_time_minute(2.5), &life, &cutting_speed, NULL); tw_life_as_minute(life) is 17.500 and
//     cutting_speed.m_per_min is 41.9538.
TW_CHECK
tw_status tw_fastest_life(struct tw_life_constant constant,
                          struct tw_life_exponent exponent,
                          struct tw_time change_time,
                          struct tw_life *life,
                          struct tw_cutting_speed *cutting_speed,
                          struct tw_error *detail);

// tw_fastest_life for every row.
//
// Columns, see the first page: constant, exponent and change_time are read, life and
// cutting_speed are written, each may be NULL unless both are. row_status may be NULL; else one
// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_fastest_life_column(const struct tw_column *constant,
                                 const struct tw_column *exponent,
                                 const struct tw_column *change_time,
                                 const struct tw_out_column *life,
                                 const struct tw_out_column *cutting_speed,
                                 int32_t *row_status,
                                 size_t row_status_stride_bytes,
                                 struct tw_error *detail);

// The constant of Taylor's law, v T^n = C, through one measured life at a cutting speed, its
// exponent known. A life so far from a minute that no constant is plausible is refused
// (TW_OUT_OF_RANGE).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: Taylor 1907, from memory.
// Example: tw_life_constant_through(tw_cutting_speed_meter_per_minute(180),
//     tw_life_minute(7.71605), tw_life_exponent_one(0.25), &constant, NULL);
//     constant.m_per_min is 300.00.
TW_CHECK
tw_status tw_life_constant_through(struct tw_cutting_speed cutting_speed,
                                   struct tw_life life,
                                   struct tw_life_exponent exponent,
                                   struct tw_life_constant *constant,
                                   struct tw_error *detail);

// tw_life_constant_through for every row.
//
// Columns, see the first page: cutting_speed, life and exponent are read, constant is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_life_constant_through_column(const struct tw_column *cutting_speed,
                                          const struct tw_column *life,
                                          const struct tw_column *exponent,
                                          const struct tw_out_column *constant,
                                          int32_t *row_status,
                                          size_t row_status_stride_bytes,
                                          struct tw_error *detail);

// How long facing takes from the outside to a bore at one spindle speed: (diameter - bore)/2 /
// (feed times speed). For a solid face see tw_facing_time_to_middle.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived: the radius falls by feed times spindle speed.
// Example: tw_facing_time(tw_diameter_millimeter(80), tw_diameter_millimeter(20),
//     tw_feed_millimeter_per_revolution(0.1), tw_spindle_speed_revolution_per_minute(500), &time,
//     NULL); time.s is 36.000.
TW_CHECK
tw_status tw_facing_time(struct tw_diameter diameter,
                         struct tw_diameter bore,
                         struct tw_feed feed,
                         struct tw_spindle_speed spindle_speed,
                         struct tw_time *time,
                         struct tw_error *detail);

// tw_facing_time for every row.
//
// Columns, see the first page: diameter, bore, feed and spindle_speed are read, time is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_facing_time_column(const struct tw_column *diameter,
                                const struct tw_column *bore,
                                const struct tw_column *feed,
                                const struct tw_column *spindle_speed,
                                const struct tw_out_column *time,
                                int32_t *row_status,
                                size_t row_status_stride_bytes,
                                struct tw_error *detail);

// How long facing takes from the outside to the middle at one spindle speed.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived: the radius falls by feed times spindle speed.
// Example: tw_facing_time_to_middle(tw_diameter_millimeter(80),
//     tw_feed_millimeter_per_revolution(0.1), tw_spindle_speed_revolution_per_minute(500), &time,
//     NULL); time.s is 48.000.
TW_CHECK
tw_status tw_facing_time_to_middle(struct tw_diameter diameter,
                                   struct tw_feed feed,
                                   struct tw_spindle_speed spindle_speed,
                                   struct tw_time *time,
                                   struct tw_error *detail);

// tw_facing_time_to_middle for every row.
//
// Columns, see the first page: diameter, feed and spindle_speed are read, time is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_facing_time_to_middle_column(const struct tw_column *diameter,
                                          const struct tw_column *feed,
                                          const struct tw_column *spindle_speed,
                                          const struct tw_out_column *time,
                                          int32_t *row_status,
                                          size_t row_status_stride_bytes,
                                          struct tw_error *detail);

// How long facing takes from the outside to a bore at one cutting speed, the spindle speeding up
// as the tool moves in until it reaches max_spindle_speed. That limit must not be above the speed
// marked on the chuck.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived: the radius falls by feed times spindle speed.
// Example: tw_facing_time_at_surface_speed(tw_diameter_inch(4), tw_diameter_inch(1),
//     tw_feed_inch_per_revolution(0.008), tw_cutting_speed_foot_per_minute(400),
//     tw_spindle_speed_revolution_per_minute(2000), &time, NULL); time.s is 18.4078.
TW_CHECK
tw_status tw_facing_time_at_surface_speed(struct tw_diameter diameter,
                                          struct tw_diameter bore,
                                          struct tw_feed feed,
                                          struct tw_cutting_speed cutting_speed,
                                          struct tw_spindle_speed max_spindle_speed,
                                          struct tw_time *time,
                                          struct tw_error *detail);

// tw_facing_time_at_surface_speed for every row.
//
// Columns, see the first page: diameter, bore, feed, cutting_speed and max_spindle_speed are read,
// time is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart
// (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_facing_time_at_surface_speed_column(const struct tw_column *diameter,
                                                 const struct tw_column *bore,
                                                 const struct tw_column *feed,
                                                 const struct tw_column *cutting_speed,
                                                 const struct tw_column *max_spindle_speed,
                                                 const struct tw_out_column *time,
                                                 int32_t *row_status,
                                                 size_t row_status_stride_bytes,
                                                 struct tw_error *detail);

// How long facing takes from the outside to the middle at one cutting speed; see
// tw_facing_time_at_surface_speed.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived: the radius falls by feed times spindle speed.
// Example: tw_facing_time_to_middle_at_surface_speed(tw_diameter_millimeter(120),
//     tw_feed_millimeter_per_revolution(0.2), tw_cutting_speed_meter_per_minute(150),
//     tw_spindle_speed_revolution_per_minute(2000), &time, NULL); time.s is 23.5147.
TW_CHECK
tw_status tw_facing_time_to_middle_at_surface_speed(struct tw_diameter diameter,
                                                    struct tw_feed feed,
                                                    struct tw_cutting_speed cutting_speed,
                                                    struct tw_spindle_speed max_spindle_speed,
                                                    struct tw_time *time,
                                                    struct tw_error *detail);

// tw_facing_time_to_middle_at_surface_speed for every row.
//
// Columns, see the first page: diameter, feed, cutting_speed and max_spindle_speed are read, time
// is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_facing_time_to_middle_at_surface_speed_column(const struct tw_column *diameter,
                                                           const struct tw_column *feed,
                                                           const struct tw_column *cutting_speed,
                                                           const struct tw_column *max_spindle_speed,
                                                           const struct tw_out_column *time,
                                                           int32_t *row_status,
                                                           size_t row_status_stride_bytes,
                                                           struct tw_error *detail);

// By how much a diameter comes out too large because the tip stands tool_height above or below the
// axis: the dial was zeroed at zeroed_at, and the slide moved in since by moved_in, on the radius.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_tool_height_error(tw_diameter_millimeter(40), tw_travel_millimeter(15),
//     tw_tool_height_millimeter(1), &diameter_error, NULL); diameter_error.mm is 0.148984.
TW_CHECK
tw_status tw_tool_height_error(struct tw_diameter zeroed_at,
                               struct tw_travel moved_in,
                               struct tw_tool_height tool_height,
                               struct tw_diameter_error *diameter_error,
                               struct tw_error *detail);

// tw_tool_height_error for every row.
//
// Columns, see the first page: zeroed_at, moved_in and tool_height are read, diameter_error is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_tool_height_error_column(const struct tw_column *zeroed_at,
                                      const struct tw_column *moved_in,
                                      const struct tw_column *tool_height,
                                      const struct tw_out_column *diameter_error,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// Spindle speed and cutting speed while a tool that faces at one cutting speed stands at a
// diameter: the spindle runs faster as the tool moves in, up to max_spindle_speed; from there
// the cutting speed falls.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: definition of the cutting speed, ISO 3002-1 (from memory).
// Example: tw_speed_in_facing(tw_cutting_speed_meter_per_minute(150),
//     tw_spindle_speed_revolution_per_minute(2000), tw_diameter_millimeter(120), &spindle_speed,
//     &speed_there, NULL); spindle_speed.rpm is 397.887 and speed_there.m_per_min is 150.000.
TW_CHECK
tw_status tw_speed_in_facing(struct tw_cutting_speed cutting_speed,
                             struct tw_spindle_speed max_spindle_speed,
                             struct tw_diameter diameter,
                             struct tw_spindle_speed *spindle_speed,
                             struct tw_cutting_speed *speed_there,
                             struct tw_error *detail);

// tw_speed_in_facing for every row.
//
// Columns, see the first page: cutting_speed, max_spindle_speed and diameter are read,
// spindle_speed and speed_there are written, each may be NULL unless both are. row_status may be
// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_speed_in_facing_column(const struct tw_column *cutting_speed,
                                    const struct tw_column *max_spindle_speed,
                                    const struct tw_column *diameter,
                                    const struct tw_out_column *spindle_speed,
                                    const struct tw_out_column *speed_there,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The diameter below which the limit of the spindle holds while facing at one cutting speed:
// cutting_speed / (pi max_spindle_speed). From there to the middle the cutting speed falls.
// Where it lies outside of the work, the limit holds all the way.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the cutting speed.
// Example: tw_full_speed_below(tw_cutting_speed_meter_per_minute(150),
//     tw_spindle_speed_revolution_per_minute(2000), &diameter, NULL); diameter.mm is 23.8732.
TW_CHECK
tw_status tw_full_speed_below(struct tw_cutting_speed cutting_speed,
                              struct tw_spindle_speed max_spindle_speed,
                              struct tw_diameter *diameter,
                              struct tw_error *detail);

// tw_full_speed_below for every row.
//
// Columns, see the first page: cutting_speed and max_spindle_speed are read, diameter is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_full_speed_below_column(const struct tw_column *cutting_speed,
                                     const struct tw_column *max_spindle_speed,
                                     const struct tw_out_column *diameter,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The diameter below which a face turned at one spindle speed falls short of a least cutting
// speed: least_cutting_speed / (pi spindle_speed). At one cutting speed, held above the least up
// to the limit of the spindle, pass that limit.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: definition of the cutting speed.
// Example: tw_slow_below(tw_spindle_speed_revolution_per_minute(500),
//     tw_cutting_speed_meter_per_minute(20), &diameter, NULL); diameter.mm is 12.7324.
TW_CHECK
tw_status tw_slow_below(struct tw_spindle_speed spindle_speed,
                        struct tw_cutting_speed least_cutting_speed,
                        struct tw_diameter *diameter,
                        struct tw_error *detail);

// tw_slow_below for every row.
//
// Columns, see the first page: spindle_speed and least_cutting_speed are read, diameter is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_slow_below_column(const struct tw_column *spindle_speed,
                               const struct tw_column *least_cutting_speed,
                               const struct tw_out_column *diameter,
                               int32_t *row_status,
                               size_t row_status_stride_bytes,
                               struct tw_error *detail);

// Half angle and ratio of a taper between two diameters: atan((large - small)/(2 length)), and the
// x of 1:x. The half angle is also the setting of the compound slide on a scale that is zero along
// the axis.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: geometry; ratio and angle as in ISO 3040 (from memory).
// Example: tw_taper_half_angle(tw_diameter_inch(1.25), tw_diameter_inch(1), tw_length_inch(6),
//     &half_angle, &taper_ratio, NULL); half_angle.deg is 1.19349 and
//     taper_ratio.ratio is 24.0000.
TW_CHECK
tw_status tw_taper_half_angle(struct tw_diameter large,
                              struct tw_diameter small,
                              struct tw_length length,
                              struct tw_half_angle *half_angle,
                              struct tw_taper_ratio *taper_ratio,
                              struct tw_error *detail);

// tw_taper_half_angle for every row.
//
// Columns, see the first page: large, small and length are read, half_angle and taper_ratio are
// written, each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_half_angle_column(const struct tw_column *large,
                                     const struct tw_column *small,
                                     const struct tw_column *length,
                                     const struct tw_out_column *half_angle,
                                     const struct tw_out_column *taper_ratio,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// Half angle and included angle of a taper 1:x: atan(1/(2 x)), and twice that.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: geometry; ratio and angle as in ISO 3040 (from memory).
// Example: tw_taper_of_ratio(tw_taper_ratio_one(19.922), &half_angle, &included_angle, NULL);
//     half_angle.deg is 1.43770 and included_angle.deg is 2.87540.
TW_CHECK
tw_status tw_taper_of_ratio(struct tw_taper_ratio taper_ratio,
                            struct tw_half_angle *half_angle,
                            struct tw_included_angle *included_angle,
                            struct tw_error *detail);

// tw_taper_of_ratio for every row.
//
// Columns, see the first page: taper_ratio is read, half_angle and included_angle are written,
// each may be NULL unless both are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_of_ratio_column(const struct tw_column *taper_ratio,
                                   const struct tw_out_column *half_angle,
                                   const struct tw_out_column *included_angle,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// The x of 1:x of a taper whose side stands at a half angle to the axis, 1/(2 tan(half_angle)),
// and its included angle.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: geometry; ratio and angle as in ISO 3040 (from memory).
// Example: tw_taper_of_half_angle(tw_half_angle_degree(2.8624052), &taper_ratio, &included_angle,
//     NULL); taper_ratio.ratio is 10.0000 and included_angle.deg is 5.72481.
TW_CHECK
tw_status tw_taper_of_half_angle(struct tw_half_angle half_angle,
                                 struct tw_taper_ratio *taper_ratio,
                                 struct tw_included_angle *included_angle,
                                 struct tw_error *detail);

// tw_taper_of_half_angle for every row.
//
// Columns, see the first page: half_angle is read, taper_ratio and included_angle are written,
// each may be NULL unless both are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_of_half_angle_column(const struct tw_column *half_angle,
                                        const struct tw_out_column *taper_ratio,
                                        const struct tw_out_column *included_angle,
                                        int32_t *row_status,
                                        size_t row_status_stride_bytes,
                                        struct tw_error *detail);

// The x of 1:x and the half angle of a taper of an included angle.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: geometry; ratio and angle as in ISO 3040 (from memory).
// Example: tw_taper_of_included_angle(tw_included_angle_degree(5.7248105), &taper_ratio,
//     &half_angle, NULL); taper_ratio.ratio is 10.0000 and half_angle.deg is 2.86241.
TW_CHECK
tw_status tw_taper_of_included_angle(struct tw_included_angle included_angle,
                                     struct tw_taper_ratio *taper_ratio,
                                     struct tw_half_angle *half_angle,
                                     struct tw_error *detail);

// tw_taper_of_included_angle for every row.
//
// Columns, see the first page: included_angle is read, taper_ratio and half_angle are written,
// each may be NULL unless both are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_of_included_angle_column(const struct tw_column *included_angle,
                                            const struct tw_out_column *taper_ratio,
                                            const struct tw_out_column *half_angle,
                                            int32_t *row_status,
                                            size_t row_status_stride_bytes,
                                            struct tw_error *detail);

// How much the diameter of a taper 1:x changes over a length along the axis: length /
// taper_ratio. Over 12 in it is the taper per foot.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry; ratio and angle as in ISO 3040 (from memory).
// Example: tw_taper_change_over(tw_taper_ratio_one(24), tw_length_inch(12), &change, NULL);
//     tw_diameter_error_as_inch(change) is 0.50000.
TW_CHECK
tw_status tw_taper_change_over(struct tw_taper_ratio taper_ratio,
                               struct tw_length length,
                               struct tw_diameter_error *change,
                               struct tw_error *detail);

// tw_taper_change_over for every row.
//
// Columns, see the first page: taper_ratio and length are read, change is written. row_status
// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_change_over_column(const struct tw_column *taper_ratio,
                                      const struct tw_column *length,
                                      const struct tw_out_column *change,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// The small diameter of a taper 1:x of a length: large - length / taper_ratio. A length at which
// the taper has come to a point is refused (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry; ratio and angle as in ISO 3040 (from memory).
// Example: tw_taper_small_for(tw_taper_ratio_one(10), tw_diameter_millimeter(40),
//     tw_length_millimeter(100), &small, NULL); small.mm is 30.000.
TW_CHECK
tw_status tw_taper_small_for(struct tw_taper_ratio taper_ratio,
                             struct tw_diameter large,
                             struct tw_length length,
                             struct tw_diameter *small,
                             struct tw_error *detail);

// tw_taper_small_for for every row.
//
// Columns, see the first page: taper_ratio, large and length are read, small is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_small_for_column(const struct tw_column *taper_ratio,
                                    const struct tw_column *large,
                                    const struct tw_column *length,
                                    const struct tw_out_column *small,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The large diameter of a taper 1:x of a length: small + length / taper_ratio.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry; ratio and angle as in ISO 3040 (from memory).
// Example: tw_taper_large_for(tw_taper_ratio_one(24), tw_diameter_inch(1), tw_length_inch(6),
//     &large, NULL); tw_diameter_as_inch(large) is 1.25000.
TW_CHECK
tw_status tw_taper_large_for(struct tw_taper_ratio taper_ratio,
                             struct tw_diameter small,
                             struct tw_length length,
                             struct tw_diameter *large,
                             struct tw_error *detail);

// tw_taper_large_for for every row.
//
// Columns, see the first page: taper_ratio, small and length are read, large is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_large_for_column(const struct tw_column *taper_ratio,
                                    const struct tw_column *small,
                                    const struct tw_column *length,
                                    const struct tw_out_column *large,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The length of a taper 1:x between two diameters: (large - small) taper_ratio. A small diameter
// that is not smaller is refused (TW_CONTRADICTION).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry; ratio and angle as in ISO 3040 (from memory).
// Example: tw_taper_length_between(tw_taper_ratio_one(24), tw_diameter_inch(1.25),
//     tw_diameter_inch(1), &length, NULL); tw_length_as_inch(length) is 6.0000.
TW_CHECK
tw_status tw_taper_length_between(struct tw_taper_ratio taper_ratio,
                                  struct tw_diameter large,
                                  struct tw_diameter small,
                                  struct tw_length *length,
                                  struct tw_error *detail);

// tw_taper_length_between for every row.
//
// Columns, see the first page: taper_ratio, large and small are read, length is written.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_length_between_column(const struct tw_column *taper_ratio,
                                         const struct tw_column *large,
                                         const struct tw_column *small,
                                         const struct tw_out_column *length,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// The angle of the compound slide to the axis at which a travel moves the tool in by infeed, on
// the radius: asin(infeed/travel). A tenth wants 5.739 deg; a scale that is zero along the cross
// slide reads 90 deg less that.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_compound_angle_for(tw_travel_millimeter(0.01), tw_travel_millimeter(0.1),
//     &compound_angle, NULL); compound_angle.deg is 5.73917.
TW_CHECK
tw_status tw_compound_angle_for(struct tw_travel infeed,
                                struct tw_travel travel,
                                struct tw_compound_angle *compound_angle,
                                struct tw_error *detail);

// tw_compound_angle_for for every row.
//
// Columns, see the first page: infeed and travel are read, compound_angle is written. row_status
// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_compound_angle_for_column(const struct tw_column *infeed,
                                       const struct tw_column *travel,
                                       const struct tw_out_column *compound_angle,
                                       int32_t *row_status,
                                       size_t row_status_stride_bytes,
                                       struct tw_error *detail);

// How far a travel of the compound slide moves the tool in (on the radius) and along the axis:
// travel times the sine and the cosine of the angle to the axis.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: geometry.
// Example: tw_compound_motion(tw_compound_angle_degree(5.75), tw_travel_millimeter(0.05), &infeed,
//     &shift, NULL); tw_travel_as_micrometer(infeed) is 5.00940 and
//     tw_travel_as_micrometer(shift) is 49.7484.
TW_CHECK
tw_status tw_compound_motion(struct tw_compound_angle compound_angle,
                             struct tw_travel travel,
                             struct tw_travel *infeed,
                             struct tw_travel *shift,
                             struct tw_error *detail);

// tw_compound_motion for every row.
//
// Columns, see the first page: compound_angle and travel are read, infeed and shift are written,
// each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_compound_motion_column(const struct tw_column *compound_angle,
                                    const struct tw_column *travel,
                                    const struct tw_out_column *infeed,
                                    const struct tw_out_column *shift,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The travel of the compound slide, set to the half angle, over a length of a taper 1:x along
// the axis: length / cos(half angle).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry; ratio and angle as in ISO 3040 (from memory).
// Example: tw_taper_slide_travel(tw_taper_ratio_one(10), tw_length_millimeter(100), &travel,
//     NULL); travel.mm is 100.125.
TW_CHECK
tw_status tw_taper_slide_travel(struct tw_taper_ratio taper_ratio,
                                struct tw_length length,
                                struct tw_travel *travel,
                                struct tw_error *detail);

// tw_taper_slide_travel for every row.
//
// Columns, see the first page: taper_ratio and length are read, travel is written. row_status
// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_slide_travel_column(const struct tw_column *taper_ratio,
                                       const struct tw_column *length,
                                       const struct tw_out_column *travel,
                                       int32_t *row_status,
                                       size_t row_status_stride_bytes,
                                       struct tw_error *detail);

// The angle of the compound slide as a scale reads it that is zero along the cross slide: 90 deg
// less that to the axis. Scales differ from lathe to lathe: prove the setting with an indicator.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_from_cross_slide(tw_compound_angle_degree(30), &compound_angle_from_cross_slide,
//     NULL); compound_angle_from_cross_slide.deg is 60.000.
TW_CHECK
tw_status tw_from_cross_slide(struct tw_compound_angle compound_angle,
                              struct tw_compound_angle_from_cross_slide *compound_angle_from_cross_slide,
                              struct tw_error *detail);

// tw_from_cross_slide for every row.
//
// Columns, see the first page: compound_angle is read, compound_angle_from_cross_slide is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_from_cross_slide_column(const struct tw_column *compound_angle,
                                     const struct tw_out_column *compound_angle_from_cross_slide,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The angle of the compound slide to the axis, from a reading of a scale that is zero along the
// cross slide: 90 deg less that. A slide that stands square to the axis is refused
// (TW_OUT_OF_RANGE): it would not move along it.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry.
// Example: tw_from_axis(tw_compound_angle_from_cross_slide_degree(60), &compound_angle, NULL);
//     compound_angle.deg is 30.000.
TW_CHECK
tw_status tw_from_axis(struct tw_compound_angle_from_cross_slide compound_angle_from_cross_slide,
                       struct tw_compound_angle *compound_angle,
                       struct tw_error *detail);

// tw_from_axis for every row.
//
// Columns, see the first page: compound_angle_from_cross_slide is read, compound_angle is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_from_axis_column(const struct tw_column *compound_angle_from_cross_slide,
                              const struct tw_out_column *compound_angle,
                              int32_t *row_status,
                              size_t row_status_stride_bytes,
                              struct tw_error *detail);

// How far the tailstock is set over towards the operator for a taper 1:x between centres:
// length_between_centres times the sine of the half angle. Work between centres only.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: geometry: the axis of the work turns by half the angle about the headstock's centre.
// Example: tw_tailstock_set_over(tw_taper_ratio_one(40), tw_length_inch(12), &set_over, NULL);
//     tw_set_over_as_inch(set_over) is 0.149988.
TW_CHECK
tw_status tw_tailstock_set_over(struct tw_taper_ratio taper_ratio,
                                struct tw_length length_between_centres,
                                struct tw_set_over *set_over,
                                struct tw_error *detail);

// tw_tailstock_set_over for every row.
//
// Columns, see the first page: taper_ratio and length_between_centres are read, set_over is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_tailstock_set_over_column(const struct tw_column *taper_ratio,
                                       const struct tw_column *length_between_centres,
                                       const struct tw_out_column *set_over,
                                       int32_t *row_status,
                                       size_t row_status_stride_bytes,
                                       struct tw_error *detail);

// The set-over of the tailstock in the usual form of the trade, with the tangent for the sine:
// length_between_centres / (2 taper_ratio). Too large by 0.06 % at a half angle of 2 deg;
// exactly: tw_tailstock_set_over. Work between centres only.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: usual form of the trade; common practice, no source.
// Example: tw_usual_set_over(tw_taper_ratio_one(40), tw_length_inch(12), &set_over, NULL);
//     tw_set_over_as_inch(set_over) is 0.150000.
TW_CHECK
tw_status tw_usual_set_over(struct tw_taper_ratio taper_ratio,
                            struct tw_length length_between_centres,
                            struct tw_set_over *set_over,
                            struct tw_error *detail);

// tw_usual_set_over for every row.
//
// Columns, see the first page: taper_ratio and length_between_centres are read, set_over is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_usual_set_over_column(const struct tw_column *taper_ratio,
                                   const struct tw_column *length_between_centres,
                                   const struct tw_out_column *set_over,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// Half angle and x of 1:x of the taper that a set-over of the tailstock turns: asin(set_over /
// length_between_centres). A set-over that is nothing, towards the back, or as long as the work
// is refused (TW_CONTRADICTION).
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: geometry, as tw_tailstock_set_over.
// Example: tw_taper_of_set_over(tw_set_over_millimeter(3.7497071), tw_length_millimeter(300),
//     &half_angle, &taper_ratio, NULL); half_angle.deg is 0.716160 and
//     taper_ratio.ratio is 40.000.
TW_CHECK
tw_status tw_taper_of_set_over(struct tw_set_over set_over,
                               struct tw_length length_between_centres,
                               struct tw_half_angle *half_angle,
                               struct tw_taper_ratio *taper_ratio,
                               struct tw_error *detail);

// tw_taper_of_set_over for every row.
//
// Columns, see the first page: set_over and length_between_centres are read, half_angle and
// taper_ratio are written, each may be NULL unless both are. row_status may be NULL; else one
// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_taper_of_set_over_column(const struct tw_column *set_over,
                                      const struct tw_column *length_between_centres,
                                      const struct tw_out_column *half_angle,
                                      const struct tw_out_column *taper_ratio,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// How far to move the tailstock, towards the tool where positive, so that a bar between centres
// comes out straight: errors of the diameter at two places, both measured from the headstock.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived.
// Example: tw_tailstock_correction(tw_length_millimeter(100), tw_diameter_error_millimeter(0.01),
//     tw_length_millimeter(250), tw_diameter_error_millimeter(0.07), tw_length_millimeter(400),
//     &set_over, NULL); set_over.mm is 0.08000.
TW_CHECK
tw_status tw_tailstock_correction(struct tw_length near_at,
                                  struct tw_diameter_error near_error,
                                  struct tw_length far_at,
                                  struct tw_diameter_error far_error,
                                  struct tw_length length_between_centres,
                                  struct tw_set_over *set_over,
                                  struct tw_error *detail);

// tw_tailstock_correction for every row.
//
// Columns, see the first page: near_at, near_error, far_at, far_error and length_between_centres
// are read, set_over is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_tailstock_correction_column(const struct tw_column *near_at,
                                         const struct tw_column *near_error,
                                         const struct tw_column *far_at,
                                         const struct tw_column *far_error,
                                         const struct tw_column *length_between_centres,
                                         const struct tw_out_column *set_over,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// The error of the diameter at a place when the tailstock stands off the axis. Between centres
// -2 s a/L, a straight taper; in a rigid chuck with a centre the bar is bent: -s a^2 (3
// L - a)/L^3; the chuck alone feels no tailstock: 0. set_over is positive towards the tool, at is
// measured from the head, overhang is the length between the supports.
//
// support is a number of enum tw_support. A place beyond the overhang is refused
// (TW_CONTRADICTION). The reverse, between centres: tw_tailstock_correction.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: derived from the cantilever (Roark; Timoshenko, from memory).
// Example: tw_tailstock_error(tw_set_over_millimeter(0.05), tw_length_millimeter(150),
//     tw_overhang_millimeter(300), TW_SUPPORT_BETWEEN_CENTRES, &diameter_error, NULL);
//     diameter_error.mm is -0.05000.
TW_CHECK
tw_status tw_tailstock_error(struct tw_set_over set_over,
                             struct tw_length at,
                             struct tw_overhang overhang,
                             int32_t support,
                             struct tw_diameter_error *diameter_error,
                             struct tw_error *detail);

// tw_tailstock_error for every row.
//
// Columns, see the first page: set_over, at and overhang are read, diameter_error is written.
// support is one number for all rows; one that is refused fails the whole call. row_status may
// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_tailstock_error_column(const struct tw_column *set_over,
                                    const struct tw_column *at,
                                    const struct tw_column *overhang,
                                    int32_t support,
                                    const struct tw_out_column *diameter_error,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The standard tolerance of a grade at a nominal size (ISO 286-1, from memory): how wide the zone
// is. grade is 1 for IT1 to 16 for IT16; another number is refused.
//
// Nominal sizes over 0 up to 500 mm; the upper end of a range belongs to it. An inch size is
// converted exactly and has the tolerance of its metric range. detail may be NULL. After a failure
// the output is NaN.
//
// Source: ISO 286-1:2010, from memory; IT1 to IT4 are not confirmed by a formula.
// Example: tw_standard_tolerance(tw_diameter_millimeter(40), 9, &tolerance, NULL);
//     tolerance.mm is 0.06200.
TW_CHECK
tw_status tw_standard_tolerance(struct tw_diameter nominal,
                                int32_t grade,
                                struct tw_tolerance *tolerance,
                                struct tw_error *detail);

// tw_standard_tolerance for every row.
//
// Columns, see the first page: nominal is read, tolerance is written. grade is one number for all
// rows; one that is refused fails the whole call. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_standard_tolerance_column(const struct tw_column *nominal,
                                       int32_t grade,
                                       const struct tw_out_column *tolerance,
                                       int32_t *row_status,
                                       size_t row_status_stride_bytes,
                                       struct tw_error *detail);

// What the table of standard tolerances was made from (ISO 286-1:1988, from memory): the
// geometric mean D of the ends of the range of sizes, the tolerance unit i = 0.45 D^(1/3) + 0.001
// D in micrometres with D in millimetres, and the tolerance, a multiple of i, not rounded. A
// check and an explanation: drawings mean the table, tw_standard_tolerance.
//
// grade is 5 for IT5 to 16 for IT16. Refused (TW_OUT_OF_RANGE): nominal sizes above 500 mm and
// grades finer than IT5.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: ISO 286-1:1988, formulas for standard tolerances, from memory.
// Example: tw_tolerance_by_formula(tw_diameter_millimeter(400), 11, &mean_diameter,
//     &tolerance_unit, &tolerance, NULL); mean_diameter.mm is 354.965,
//     tw_tolerance_as_micrometer(tolerance_unit) is 3.54117 and
//     tw_tolerance_as_micrometer(tolerance) is 354.117.
TW_CHECK
tw_status tw_tolerance_by_formula(struct tw_diameter nominal,
                                  int32_t grade,
                                  struct tw_diameter *mean_diameter,
                                  struct tw_tolerance *tolerance_unit,
                                  struct tw_tolerance *tolerance,
                                  struct tw_error *detail);

// tw_tolerance_by_formula for every row.
//
// Columns, see the first page: nominal is read, mean_diameter, tolerance_unit and tolerance are
// written, each may be NULL unless all are. grade is one number for all rows; one that is
// refused fails the whole call. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_tolerance_by_formula_column(const struct tw_column *nominal,
                                         int32_t grade,
                                         const struct tw_out_column *mean_diameter,
                                         const struct tw_out_column *tolerance_unit,
                                         const struct tw_out_column *tolerance,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// The width of the zone that a length without a tolerance of its own has by a class of general
// tolerances; half of it lies above and half below (ISO 2768-1:1989 table 1, from memory).
// class_letter is the letter on the drawing as a character: 'f', 'm', 'c' or 'v'; another one is
// refused (TW_UNKNOWN_NAME). Lengths, diameters and steps, not broken edges. A length beyond the
// table, or for which the class has no value, is refused (TW_OUT_OF_RANGE).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: ISO 2768-1:1989 table 1, from memory.
// Example: tw_general_tolerance(tw_length_millimeter(100), 'f', &tolerance, NULL);
//     tolerance.mm is 0.3000.
TW_CHECK
tw_status tw_general_tolerance(struct tw_length length,
                               int32_t class_letter,
                               struct tw_tolerance *tolerance,
                               struct tw_error *detail);

// tw_general_tolerance for every row.
//
// Columns, see the first page: length is read, tolerance is written. class_letter is one number
// for all rows; one that is refused fails the whole call. row_status may be NULL; else one
// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_general_tolerance_column(const struct tw_column *length,
                                      int32_t class_letter,
                                      const struct tw_out_column *tolerance,
                                      int32_t *row_status,
                                      size_t row_status_stride_bytes,
                                      struct tw_error *detail);

// The upper and the lower limit deviation of a tolerance class at a nominal size (ISO 286-2, from
// memory): largest and smallest size less nominal size. class_name is NUL-ended text such as "h7"
// or "H7": small letters are shafts, capitals holes.
//
// Nominal sizes over 0 up to 500 mm. Text that is no class is refused with the class it is nearest
// to, where there is one. An output may be NULL unless both are. detail may be NULL. After a
// failure the outputs are NaN.
//
// Source: ISO 286-1:2010 and ISO 286-2:2010, from memory.
// Example: tw_deviations_of_class(tw_diameter_millimeter(30), "g6", &upper_deviation,
//     &lower_deviation, NULL); tw_upper_deviation_as_micrometer(upper_deviation) is -7.000 and
//     tw_lower_deviation_as_micrometer(lower_deviation) is -20.00.
TW_CHECK
tw_status tw_deviations_of_class(struct tw_diameter nominal,
                                 const char *class_name,
                                 struct tw_upper_deviation *upper_deviation,
                                 struct tw_lower_deviation *lower_deviation,
                                 struct tw_error *detail);

// tw_deviations_of_class for every row.
//
// Columns, see the first page: nominal is read, upper_deviation and lower_deviation are written;
// one of them may be NULL. class_name is one class for all rows; one that is refused fails the
// whole call. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_deviations_of_class_column(const struct tw_column *nominal,
                                        const char *class_name,
                                        const struct tw_out_column *upper_deviation,
                                        const struct tw_out_column *lower_deviation,
                                        int32_t *row_status,
                                        size_t row_status_stride_bytes,
                                        struct tw_error *detail);

// The smallest and the largest size of a tolerance class at a nominal size. class_name as for
// tw_deviations_of_class.
//
// A class so coarse for its size that the smallest size would be none is refused
// (TW_CONTRADICTION). An output may be NULL unless both are. detail may be NULL. After a failure
// the outputs are NaN.
//
// Source: ISO 286-1:2010 and ISO 286-2:2010, from memory.
// Example: tw_limits_of_class(tw_diameter_millimeter(40), "h6", &smallest, &largest, NULL);
//     smallest.mm is 39.984 and largest.mm is 40.000.
TW_CHECK
tw_status tw_limits_of_class(struct tw_diameter nominal,
                             const char *class_name,
                             struct tw_diameter *smallest,
                             struct tw_diameter *largest,
                             struct tw_error *detail);

// tw_limits_of_class for every row.
//
// Columns, see the first page: nominal is read, smallest and largest are written; one of them may
// be NULL. class_name is one class for all rows; one that is refused fails the whole call.
// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_limits_of_class_column(const struct tw_column *nominal,
                                    const char *class_name,
                                    const struct tw_out_column *smallest,
                                    const struct tw_out_column *largest,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The least and the largest clearance of a fit: smallest hole less largest shaft, largest hole less
// smallest shaft. Negative is interference.
//
// Limits upside down, and a hole and a shaft farther apart than 20 mm, are refused
// (TW_CONTRADICTION). An output may be NULL unless both are. detail may be NULL. After a failure
// the outputs are NaN.
//
// Source: ISO 286-1:2010, clearance and interference, from memory.
// Example: tw_clearance_of_fit(tw_diameter_millimeter(30), tw_diameter_millimeter(30.021),
//     tw_diameter_millimeter(29.98), tw_diameter_millimeter(29.993), &least_clearance,
//     &largest_clearance, NULL); least_clearance.mm is 0.007000 and
//     largest_clearance.mm is 0.04100.
TW_CHECK
tw_status tw_clearance_of_fit(struct tw_diameter smallest_hole,
                              struct tw_diameter largest_hole,
                              struct tw_diameter smallest_shaft,
                              struct tw_diameter largest_shaft,
                              struct tw_clearance *least_clearance,
                              struct tw_clearance *largest_clearance,
                              struct tw_error *detail);

// tw_clearance_of_fit for every row.
//
// Columns, see the first page: smallest_hole, largest_hole, smallest_shaft and largest_shaft are
// read, least_clearance and largest_clearance are written; one of them may be NULL. row_status may
// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_clearance_of_fit_column(const struct tw_column *smallest_hole,
                                     const struct tw_column *largest_hole,
                                     const struct tw_column *smallest_shaft,
                                     const struct tw_column *largest_shaft,
                                     const struct tw_out_column *least_clearance,
                                     const struct tw_out_column *largest_clearance,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The limits of a size, smallest and largest, from its upper and lower limit deviation. Refused
// (TW_CONTRADICTION): an upper deviation that is not above the lower one, and a deviation larger
// than the size itself.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 286-1, limits of size (from memory).
// Example: tw_limits_from_deviations(tw_diameter_millimeter(30),
//     tw_upper_deviation_micrometer(-7), tw_lower_deviation_micrometer(-20), &smallest, &largest,
//     NULL); smallest.mm is 29.980 and largest.mm is 29.993.
TW_CHECK
tw_status tw_limits_from_deviations(struct tw_diameter nominal,
                                    struct tw_upper_deviation upper_deviation,
                                    struct tw_lower_deviation lower_deviation,
                                    struct tw_diameter *smallest,
                                    struct tw_diameter *largest,
                                    struct tw_error *detail);

// tw_limits_from_deviations for every row.
//
// Columns, see the first page: nominal, upper_deviation and lower_deviation are read, smallest
// and largest are written, each may be NULL unless both are. row_status may be NULL; else one
// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_limits_from_deviations_column(const struct tw_column *nominal,
                                           const struct tw_column *upper_deviation,
                                           const struct tw_column *lower_deviation,
                                           const struct tw_out_column *smallest,
                                           const struct tw_out_column *largest,
                                           int32_t *row_status,
                                           size_t row_status_stride_bytes,
                                           struct tw_error *detail);

// Upper and lower limit deviation of limits from a nominal size. Refused (TW_CONTRADICTION):
// limits that are equal or upside down, and a nominal size so far off that one of the figures is
// a slip.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 286-1: upper and lower limit deviation, from memory.
// Example: tw_deviations_from(tw_diameter_millimeter(30), tw_diameter_millimeter(29.98),
//     tw_diameter_millimeter(29.993), &upper_deviation, &lower_deviation, NULL);
//     upper_deviation.mm is -0.007000 and lower_deviation.mm is -0.02000.
TW_CHECK
tw_status tw_deviations_from(struct tw_diameter nominal,
                             struct tw_diameter smallest,
                             struct tw_diameter largest,
                             struct tw_upper_deviation *upper_deviation,
                             struct tw_lower_deviation *lower_deviation,
                             struct tw_error *detail);

// tw_deviations_from for every row.
//
// Columns, see the first page: nominal, smallest and largest are read, upper_deviation and
// lower_deviation are written, each may be NULL unless both are. row_status may be NULL; else
// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_deviations_from_column(const struct tw_column *nominal,
                                    const struct tw_column *smallest,
                                    const struct tw_column *largest,
                                    const struct tw_out_column *upper_deviation,
                                    const struct tw_out_column *lower_deviation,
                                    int32_t *row_status,
                                    size_t row_status_stride_bytes,
                                    struct tw_error *detail);

// The largest error that a sound measuring instrument may have at a size, to either side (DIN
// 862, DIN 863-1, DIN 878, ISO 3611 and ISO 13385-1, from memory, unverified). In an uncertainty
// budget it is half the width of a uniform distribution, unless a certificate says better. A
// person's hand is not in it.
//
// instrument is a number of enum tw_instrument. A diameter beyond the table is refused
// (TW_OUT_OF_RANGE): micrometers up to 150 mm, callipers up to 300 mm, indicators up to 500 mm.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: from memory of DIN 862, DIN 863-1, DIN 878 and ISO 3611, ISO 13385-1, unverified.
// Example: tw_instrument_error(tw_diameter_millimeter(30), TW_INSTRUMENT_MICROMETER, &error,
//     NULL); error.mm is 0.004000.
TW_CHECK
tw_status tw_instrument_error(struct tw_diameter diameter,
                              int32_t instrument,
                              struct tw_instrument_uncertainty *error,
                              struct tw_error *detail);

// tw_instrument_error for every row.
//
// Columns, see the first page: diameter is read, error is written. instrument is one number for
// all rows; one that is refused fails the whole call. row_status may be NULL; else one int32_t a
// row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_instrument_error_column(const struct tw_column *diameter,
                                     int32_t instrument,
                                     const struct tw_out_column *error,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The shares of parts that come out good, with metal left, and lost, where sizes scatter by the
// normal law about a mean. feature is a number of enum tw_feature.
//
// smallest and largest are the limits, the smaller first (TW_CONTRADICTION). An output may be NULL
// unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: JCGM 106:2012, 7 (conformance probability, from memory).
// Example: tw_outcome(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
//     tw_diameter_millimeter(39.995), tw_standard_uncertainty_micrometer(4), TW_FEATURE_SHAFT,
//     &good, &rework, &scrap, NULL); good.ratio is 0.891370, rework.ratio is 0.105650 and
//     scrap.ratio is 0.00297976.
TW_CHECK
tw_status tw_outcome(struct tw_diameter smallest,
                     struct tw_diameter largest,
                     struct tw_diameter mean,
                     struct tw_standard_uncertainty standard_uncertainty,
                     int32_t feature,
                     struct tw_probability *good,
                     struct tw_probability *rework,
                     struct tw_probability *scrap,
                     struct tw_error *detail);

// tw_outcome for every row.
//
// Columns, see the first page: smallest, largest, mean and standard_uncertainty are read; good,
// rework and scrap are written, each may be NULL unless all are. feature is one number for all
// rows. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
// detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_outcome_column(const struct tw_column *smallest,
                            const struct tw_column *largest,
                            const struct tw_column *mean,
                            const struct tw_column *standard_uncertainty,
                            int32_t feature,
                            const struct tw_out_column *good,
                            const struct tw_out_column *rework,
                            const struct tw_out_column *scrap,
                            int32_t *row_status,
                            size_t row_status_stride_bytes,
                            struct tw_error *detail);

// The capability of a process with a normal spread: (largest - smallest)/(6 u), and the same with
// the mean where it is, its distance to the nearer limit over 3 u; negative with the mean
// outside of the zone. The spread known well: from few parts the indices scatter themselves.
// Limits that are equal or upside down are refused (TW_CONTRADICTION).
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 22514-2 (from memory).
// Example: tw_capability_of(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
//     tw_diameter_millimeter(39.994), tw_standard_uncertainty_micrometer(2), &capability,
//     &capability_index, NULL); capability.ratio is 1.33333 and capability_index.ratio is 1.00000.
TW_CHECK
tw_status tw_capability_of(struct tw_diameter smallest,
                           struct tw_diameter largest,
                           struct tw_diameter mean,
                           struct tw_standard_uncertainty standard_uncertainty,
                           struct tw_capability *capability,
                           struct tw_capability_index *capability_index,
                           struct tw_error *detail);

// tw_capability_of for every row.
//
// Columns, see the first page: smallest, largest, mean and standard_uncertainty are read,
// capability and capability_index are written, each may be NULL unless both are. row_status may
// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_capability_of_column(const struct tw_column *smallest,
                                  const struct tw_column *largest,
                                  const struct tw_column *mean,
                                  const struct tw_column *standard_uncertainty,
                                  const struct tw_out_column *capability,
                                  const struct tw_out_column *capability_index,
                                  int32_t *row_status,
                                  size_t row_status_stride_bytes,
                                  struct tw_error *detail);

// The shares of parts that come out good, with metal left, and lost, where sizes scatter about a
// mean by the sum of a normal law and of one that lies anywhere within half_width to either side
// alike, such as the division of a dial or the drift of a batch. feature is a number of enum
// tw_feature. As tw_outcome else.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: JCGM 106:2012, 7 (from memory); the sum of both laws in closed form, derived.
// Example: tw_outcome_with_uniform(tw_diameter_millimeter(1), tw_diameter_millimeter(1.02),
//     tw_diameter_millimeter(1.009), tw_standard_uncertainty_micrometer(3),
//     tw_half_width_micrometer(5), TW_FEATURE_SHAFT, &good, &rework, &scrap, NULL);
//     good.ratio is 0.984734, rework.ratio is 0.00254721 and scrap.ratio is 0.0127184.
TW_CHECK
tw_status tw_outcome_with_uniform(struct tw_diameter smallest,
                                  struct tw_diameter largest,
                                  struct tw_diameter mean,
                                  struct tw_standard_uncertainty standard_uncertainty,
                                  struct tw_half_width half_width,
                                  int32_t feature,
                                  struct tw_probability *good,
                                  struct tw_probability *rework,
                                  struct tw_probability *scrap,
                                  struct tw_error *detail);

// tw_outcome_with_uniform for every row.
//
// Columns, see the first page: smallest, largest, mean, standard_uncertainty and half_width are
// read, good, rework and scrap are written, each may be NULL unless all are. feature is one
// number for all rows; one that is refused fails the whole call. row_status may be NULL; else
// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_outcome_with_uniform_column(const struct tw_column *smallest,
                                         const struct tw_column *largest,
                                         const struct tw_column *mean,
                                         const struct tw_column *standard_uncertainty,
                                         const struct tw_column *half_width,
                                         int32_t feature,
                                         const struct tw_out_column *good,
                                         const struct tw_out_column *rework,
                                         const struct tw_out_column *scrap,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// The shares of parts that come out good, with metal left, and lost, where sizes scatter about a
// mean and the standard uncertainty is known from few measurements only: Student's law of so many
// degrees of freedom. feature is a number of enum tw_feature.
//
// smallest and largest are the limits, the smaller first (TW_CONTRADICTION). An output may be NULL
// unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: JCGM 101:2008, 6.4.9, and JCGM 100:2008, G.3 (from memory).
// Example: tw_outcome_of_few(tw_diameter_inch(1.25), tw_diameter_inch(1.251),
//     tw_diameter_inch(1.2506), tw_standard_uncertainty_inch(0.0002),
//     tw_degrees_of_freedom_one(6), TW_FEATURE_SHAFT, &good, &rework, &scrap, NULL);
//     good.ratio is 0.941783, rework.ratio is 0.0462132 and scrap.ratio is 0.0120041.
TW_CHECK
tw_status tw_outcome_of_few(struct tw_diameter smallest,
                            struct tw_diameter largest,
                            struct tw_diameter mean,
                            struct tw_standard_uncertainty standard_uncertainty,
                            struct tw_degrees_of_freedom degrees_of_freedom,
                            int32_t feature,
                            struct tw_probability *good,
                            struct tw_probability *rework,
                            struct tw_probability *scrap,
                            struct tw_error *detail);

// tw_outcome_of_few for every row.
//
// Columns, see the first page: smallest, largest, mean, standard_uncertainty and
// degrees_of_freedom are read; good, rework and scrap are written, each may be NULL unless all
// are. feature is one number for all rows. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_outcome_of_few_column(const struct tw_column *smallest,
                                   const struct tw_column *largest,
                                   const struct tw_column *mean,
                                   const struct tw_column *standard_uncertainty,
                                   const struct tw_column *degrees_of_freedom,
                                   int32_t feature,
                                   const struct tw_out_column *good,
                                   const struct tw_out_column *rework,
                                   const struct tw_out_column *scrap,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// The size to aim for that costs least, and what a part costs there on average by not coming out
// good. The prices are in any currency. feature is a number of enum tw_feature.
//
// An aim outside of the zone is refused (TW_IMPOSSIBLE): the spread is too wide for the prices. An
// output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: the stationary point of the expected price (derived).
// Example: tw_best_aim(tw_diameter_inch(0.999), tw_diameter_inch(1),
//     tw_standard_uncertainty_inch(0.0002), tw_price_scrap_one(5), tw_price_rework_one(1),
//     TW_FEATURE_SHAFT, &aim, &expected_price, NULL); tw_diameter_as_inch(aim) is 0.999564 and
//     expected_price.ratio is 0.0266343.
TW_CHECK
tw_status tw_best_aim(struct tw_diameter smallest,
                      struct tw_diameter largest,
                      struct tw_standard_uncertainty standard_uncertainty,
                      struct tw_price_scrap price_scrap,
                      struct tw_price_rework price_rework,
                      int32_t feature,
                      struct tw_diameter *aim,
                      struct tw_price *expected_price,
                      struct tw_error *detail);

// tw_best_aim for every row.
//
// Columns, see the first page: smallest, largest, standard_uncertainty, price_scrap and
// price_rework are read; aim and expected_price are written, each may be NULL unless both are.
// feature is one number for all rows. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_best_aim_column(const struct tw_column *smallest,
                             const struct tw_column *largest,
                             const struct tw_column *standard_uncertainty,
                             const struct tw_column *price_scrap,
                             const struct tw_column *price_rework,
                             int32_t feature,
                             const struct tw_out_column *aim,
                             const struct tw_out_column *expected_price,
                             int32_t *row_status,
                             size_t row_status_stride_bytes,
                             struct tw_error *detail);

// What a part costs on average by not coming out good, where sizes scatter by the normal law about
// a mean. feature is a number of enum tw_feature.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: expected value (derived).
// Example: tw_expected_price(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
//     tw_diameter_millimeter(39.992), tw_standard_uncertainty_micrometer(4),
//     tw_price_scrap_one(10), tw_price_rework_one(1), TW_FEATURE_SHAFT, &expected_price, NULL);
//     expected_price.ratio is 0.250251.
TW_CHECK
tw_status tw_expected_price(struct tw_diameter smallest,
                            struct tw_diameter largest,
                            struct tw_diameter mean,
                            struct tw_standard_uncertainty standard_uncertainty,
                            struct tw_price_scrap price_scrap,
                            struct tw_price_rework price_rework,
                            int32_t feature,
                            struct tw_price *expected_price,
                            struct tw_error *detail);

// tw_expected_price for every row.
//
// Columns, see the first page: smallest, largest, mean, standard_uncertainty, price_scrap and
// price_rework are read, expected_price is written. feature is one number for all rows. row_status
// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_expected_price_column(const struct tw_column *smallest,
                                   const struct tw_column *largest,
                                   const struct tw_column *mean,
                                   const struct tw_column *standard_uncertainty,
                                   const struct tw_column *price_scrap,
                                   const struct tw_column *price_rework,
                                   int32_t feature,
                                   const struct tw_out_column *expected_price,
                                   int32_t *row_status,
                                   size_t row_status_stride_bytes,
                                   struct tw_error *detail);

// The largest standard uncertainty of a normal spread with which the cheapest aim (tw_best_aim)
// still lies in the zone, on its limit: (largest - smallest)/sqrt(2
// |ln(price_scrap/price_rework)|). Refused: limits that are equal or upside down
// (TW_CONTRADICTION), and equal prices (TW_IMPOSSIBLE): then any spread will do.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: the best aim on the limit (derived).
// Example: tw_largest_standard_uncertainty(tw_diameter_millimeter(39.984),
//     tw_diameter_millimeter(40), tw_price_scrap_one(10), tw_price_rework_one(1),
//     &standard_uncertainty, NULL);
//     tw_standard_uncertainty_as_micrometer(standard_uncertainty) is 7.45585.
TW_CHECK
tw_status tw_largest_standard_uncertainty(struct tw_diameter smallest,
                                          struct tw_diameter largest,
                                          struct tw_price_scrap price_scrap,
                                          struct tw_price_rework price_rework,
                                          struct tw_standard_uncertainty *standard_uncertainty,
                                          struct tw_error *detail);

// tw_largest_standard_uncertainty for every row.
//
// Columns, see the first page: smallest, largest, price_scrap and price_rework are read,
// standard_uncertainty is written. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_largest_standard_uncertainty_column(const struct tw_column *smallest,
                                                 const struct tw_column *largest,
                                                 const struct tw_column *price_scrap,
                                                 const struct tw_column *price_rework,
                                                 const struct tw_out_column *standard_uncertainty,
                                                 int32_t *row_status,
                                                 size_t row_status_stride_bytes,
                                                 struct tw_error *detail);

// The size to aim for that costs least of all sizes in the zone, and what a part costs there on
// average by not coming out good. The prices are in any currency. feature is a number of enum
// tw_feature.
//
// As tw_best_aim; where that refuses an aim outside of the zone, this one answers the limit on the
// side of the cheaper price: the largest size of a shaft whose scrap is dearer than its rework. An
// output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
//
// Source: the expected price over the zone (derived).
// Example: tw_best_aim_in_zone(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
//     tw_standard_uncertainty_millimeter(0.01), tw_price_scrap_one(10), tw_price_rework_one(1),
//     TW_FEATURE_SHAFT, &aim, &expected_price, NULL); aim.mm is 40.000 and
//     expected_price.ratio is 1.04799.
TW_CHECK
tw_status tw_best_aim_in_zone(struct tw_diameter smallest,
                              struct tw_diameter largest,
                              struct tw_standard_uncertainty standard_uncertainty,
                              struct tw_price_scrap price_scrap,
                              struct tw_price_rework price_rework,
                              int32_t feature,
                              struct tw_diameter *aim,
                              struct tw_price *expected_price,
                              struct tw_error *detail);

// tw_best_aim_in_zone for every row.
//
// Columns, see the first page: smallest, largest, standard_uncertainty, price_scrap and
// price_rework are read; aim and expected_price are written, each may be NULL unless both are.
// feature is one number for all rows. row_status may be NULL; else one int32_t a row,
// row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_best_aim_in_zone_column(const struct tw_column *smallest,
                                     const struct tw_column *largest,
                                     const struct tw_column *standard_uncertainty,
                                     const struct tw_column *price_scrap,
                                     const struct tw_column *price_rework,
                                     int32_t feature,
                                     const struct tw_out_column *aim,
                                     const struct tw_out_column *expected_price,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The coverage factor for a level of confidence: Student's t for the degrees of freedom, which need
// not be whole (JCGM 100, G.3). For infinitely many pass the largest number of them, 1e12.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: JCGM 100:2008, G.3 and table G.2 (from memory).
// Example: tw_coverage_factor_for(tw_degrees_of_freedom_one(8.3), tw_confidence_one(0.9545),
//     &coverage_factor, NULL); coverage_factor.ratio is 2.35108.
TW_CHECK
tw_status tw_coverage_factor_for(struct tw_degrees_of_freedom degrees_of_freedom,
                                 struct tw_confidence confidence,
                                 struct tw_coverage_factor *coverage_factor,
                                 struct tw_error *detail);

// tw_coverage_factor_for for every row.
//
// Columns, see the first page: degrees_of_freedom and confidence are read, coverage_factor is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
// 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_coverage_factor_for_column(const struct tw_column *degrees_of_freedom,
                                        const struct tw_column *confidence,
                                        const struct tw_out_column *coverage_factor,
                                        int32_t *row_status,
                                        size_t row_status_stride_bytes,
                                        struct tw_error *detail);

// The combined standard uncertainty of count independent contributions, each with its sensitivity
// in it already (JCGM 100, 5.1.2), and the effective degrees of freedom (G.4.1).
//
// contributions points to count of them. degrees_of_freedom may be NULL: infinitely many for each;
// else count numbers, of which an infinite one stands for infinitely many. effective is infinite
// where all are. An output may be NULL unless all are. detail may be NULL. After a failure the
// outputs are NaN.
//
// Source: JCGM 100:2008, 5.1.2 and G.4.1, Welch and Satterthwaite (from memory).
// Example: tw_combined_uncertainty((tw_standard_uncertainty[]){{0.0025}, {0.00097}, {0.00029},
//     {0.00166}}, (tw_degrees_of_freedom[]){{18}, {25.6}, {50}, {2}}, 4, &combined, &effective,
//     NULL); tw_standard_uncertainty_as_micrometer(combined) is 3.16711 and
//     effective.ratio is 16.7646.
TW_CHECK
tw_status tw_combined_uncertainty(const struct tw_standard_uncertainty *contributions,
                                  const struct tw_degrees_of_freedom *degrees_of_freedom,
                                  size_t count,
                                  struct tw_standard_uncertainty *combined,
                                  struct tw_degrees_of_freedom *effective,
                                  struct tw_error *detail);

// The expanded uncertainty: coverage_factor times standard_uncertainty. For the factor see
// tw_coverage_factor_for.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: JCGM 100:2008, 6.2.1 (from memory).
// Example: tw_expanded_uncertainty(tw_standard_uncertainty_micrometer(7.81025),
//     tw_coverage_factor_one(2), &expanded, NULL);
//     tw_instrument_uncertainty_as_micrometer(expanded) is 15.6205.
TW_CHECK
tw_status tw_expanded_uncertainty(struct tw_standard_uncertainty standard_uncertainty,
                                  struct tw_coverage_factor coverage_factor,
                                  struct tw_instrument_uncertainty *expanded,
                                  struct tw_error *detail);

// tw_expanded_uncertainty for every row.
//
// Columns, see the first page: standard_uncertainty and coverage_factor are read, expanded is
// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
// least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_expanded_uncertainty_column(const struct tw_column *standard_uncertainty,
                                         const struct tw_column *coverage_factor,
                                         const struct tw_out_column *expanded,
                                         int32_t *row_status,
                                         size_t row_status_stride_bytes,
                                         struct tw_error *detail);

// The standard uncertainty of a distribution that has ends, from half its width: a/sqrt(3)
// anywhere alike, a/sqrt(6) with the middle likeliest, a/sqrt(2) with the ends likeliest.
// distribution is a number of enum tw_distribution.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: JCGM 100:2008, 4.2 and 4.3 (from memory).
// Example: tw_standard_uncertainty_of(tw_half_width_micrometer(10), TW_DISTRIBUTION_UNIFORM,
//     &standard_uncertainty, NULL);
//     tw_standard_uncertainty_as_micrometer(standard_uncertainty) is 5.77350.
TW_CHECK
tw_status tw_standard_uncertainty_of(struct tw_half_width half_width,
                                     int32_t distribution,
                                     struct tw_standard_uncertainty *standard_uncertainty,
                                     struct tw_error *detail);

// tw_standard_uncertainty_of for every row.
//
// Columns, see the first page: half_width is read, standard_uncertainty is written. distribution
// is one number for all rows; one that is refused fails the whole call. row_status may be NULL;
// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_standard_uncertainty_of_column(const struct tw_column *half_width,
                                            int32_t distribution,
                                            const struct tw_out_column *standard_uncertainty,
                                            int32_t *row_status,
                                            size_t row_status_stride_bytes,
                                            struct tw_error *detail);

// The standard uncertainty of the step that a scale or a display shows: resolution/sqrt(12).
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: JCGM 100:2008, 4.2 and 4.3 (from memory).
// Example: tw_standard_uncertainty_of_resolution(tw_resolution_micrometer(10),
//     &standard_uncertainty, NULL);
//     tw_standard_uncertainty_as_micrometer(standard_uncertainty) is 2.88675.
TW_CHECK
tw_status tw_standard_uncertainty_of_resolution(struct tw_resolution resolution,
                                                struct tw_standard_uncertainty *standard_uncertainty,
                                                struct tw_error *detail);

// tw_standard_uncertainty_of_resolution for every row.
//
// Columns, see the first page: resolution is read, standard_uncertainty is written. row_status
// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
// NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_standard_uncertainty_of_resolution_column(const struct tw_column *resolution,
                                                       const struct tw_out_column *standard_uncertainty,
                                                       int32_t *row_status,
                                                       size_t row_status_stride_bytes,
                                                       struct tw_error *detail);

// The chance that a part measured so is good, from this measurement alone (JCGM 106).
//
// smallest and largest are the limits, the smaller first (TW_CONTRADICTION). detail may be NULL.
// After a failure the output is NaN.
//
// Source: JCGM 106:2012, 7.2 to 7.4 (from memory).
// Example: tw_chance_that_good(tw_diameter_millimeter(39.998), tw_diameter_millimeter(39.984),
//     tw_diameter_millimeter(40), tw_standard_uncertainty_micrometer(2), &chance, NULL);
//     chance.ratio is 0.841345.
TW_CHECK
tw_status tw_chance_that_good(struct tw_diameter measured,
                              struct tw_diameter smallest,
                              struct tw_diameter largest,
                              struct tw_standard_uncertainty standard_uncertainty,
                              struct tw_probability *chance,
                              struct tw_error *detail);

// tw_chance_that_good for every row.
//
// Columns, see the first page: measured, smallest, largest and standard_uncertainty are read,
// chance is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart
// (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_chance_that_good_column(const struct tw_column *measured,
                                     const struct tw_column *smallest,
                                     const struct tw_column *largest,
                                     const struct tw_column *standard_uncertainty,
                                     const struct tw_out_column *chance,
                                     int32_t *row_status,
                                     size_t row_status_stride_bytes,
                                     struct tw_error *detail);

// The guard band that a measurement keeps from a limit (ISO 14253-1). rule is a number of enum
// tw_decision_rule.
//
// detail may be NULL. After a failure the output is NaN.
//
// Source: ISO 14253-1 (from memory).
// Example: tw_guard_band(tw_standard_uncertainty_micrometer(3), TW_DECISION_RULE_CONFORMANCE95,
//     &guard_band, NULL); tw_instrument_uncertainty_as_micrometer(guard_band) is 4.935.
TW_CHECK
tw_status tw_guard_band(struct tw_standard_uncertainty standard_uncertainty,
                        int32_t rule,
                        struct tw_instrument_uncertainty *guard_band,
                        struct tw_error *detail);

// tw_guard_band for every row.
//
// Columns, see the first page: standard_uncertainty is read, guard_band is written. rule is one
// number for all rows. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
// apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_guard_band_column(const struct tw_column *standard_uncertainty,
                               int32_t rule,
                               const struct tw_out_column *guard_band,
                               int32_t *row_status,
                               size_t row_status_stride_bytes,
                               struct tw_error *detail);

// What a measured size proves (ISO 14253-1), as a number of enum tw_verdict_of, and the chance that
// the part is good. rule is a number of enum tw_decision_rule, feature one of enum tw_feature.
//
// An output may be NULL unless all are. detail may be NULL. After a failure the verdict is 0 and
// the chance NaN.
//
// Source: ISO 14253-1; the chance: JCGM 106:2012, 7.2 to 7.4 (both from memory).
// Example: tw_verdict(tw_diameter_millimeter(39.998), tw_diameter_millimeter(39.984),
//     tw_diameter_millimeter(40), tw_standard_uncertainty_micrometer(2),
//     TW_DECISION_RULE_EXPANDED_UNCERTAINTY, TW_FEATURE_SHAFT, &verdict, &chance, NULL);
//     verdict is TW_VERDICT_CANNOT_TELL and chance.ratio is 0.841345.
TW_CHECK
tw_status tw_verdict(struct tw_diameter measured,
                     struct tw_diameter smallest,
                     struct tw_diameter largest,
                     struct tw_standard_uncertainty standard_uncertainty,
                     int32_t rule,
                     int32_t feature,
                     int32_t *verdict,
                     struct tw_probability *chance,
                     struct tw_error *detail);

// tw_verdict for every row.
//
// Columns, see the first page: measured, smallest, largest and standard_uncertainty are read,
// chance is written. rule and feature are one number each for all rows. verdict may be NULL; else
// one int32_t a row (a number of enum tw_verdict_of, 0 for a bad row), verdict_stride_bytes apart
// (at least 4). row_status likewise. detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
// is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_verdict_column(const struct tw_column *measured,
                            const struct tw_column *smallest,
                            const struct tw_column *largest,
                            const struct tw_column *standard_uncertainty,
                            int32_t rule,
                            int32_t feature,
                            const struct tw_out_column *chance,
                            int32_t *verdict,
                            size_t verdict_stride_bytes,
                            int32_t *row_status,
                            size_t row_status_stride_bytes,
                            struct tw_error *detail);

// The sizes that prove a part good: the limits less the guard band at both ends (ISO 14253-1,
// from memory). For the band see tw_guard_band. Refused: limits that are equal or upside down
// (TW_CONTRADICTION), and a band that takes the whole zone (TW_IMPOSSIBLE): then no measurement
// proves a part good.
//
// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
// NaN.
//
// Source: ISO 14253-1 (from memory).
// Example: tw_acceptance(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
//     tw_instrument_uncertainty_micrometer(5), &smallest_accepted, &largest_accepted, NULL);
//     smallest_accepted.mm is 39.989 and largest_accepted.mm is 39.995.
TW_CHECK
tw_status tw_acceptance(struct tw_diameter smallest,
                        struct tw_diameter largest,
                        struct tw_instrument_uncertainty guard_band,
                        struct tw_diameter *smallest_accepted,
                        struct tw_diameter *largest_accepted,
                        struct tw_error *detail);

// tw_acceptance for every row.
//
// Columns, see the first page: smallest, largest and guard_band are read, smallest_accepted and
// largest_accepted are written, each may be NULL unless both are. row_status may be NULL; else
// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
//
// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
// what is refused (NULL, stride, overlap): then nothing is written.
TW_CHECK
tw_status tw_acceptance_column(const struct tw_column *smallest,
                               const struct tw_column *largest,
                               const struct tw_column *guard_band,
                               const struct tw_out_column *smallest_accepted,
                               const struct tw_out_column *largest_accepted,
                               int32_t *row_status,
                               size_t row_status_stride_bytes,
                               struct tw_error *detail);

// The number in a unit that a text with its own unit says, read as a document reads it: "1 1/2 in"
// is 38.1 in millimetres. What tw_range says is checked; a plain ratio needs no unit.
//
// tw_answer to { "quantities": {} } lists quantities and units with their numbers, to fill a menu.
// text is NUL-ended UTF-8. quantity is a number of enum tw_quantity, unit one of enum tw_unit of the
// same kind: that of the answer, and of the words where it is an inch unit. detail may be NULL. After
// a failure value is NaN.
//
// Source: the definitions of the units: the SI, and the international inch and pound of 1959.
// Example: tw_value_of_text("1 1/2 in", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER, &value, NULL);
//     value is 38.100.
TW_CHECK
tw_status tw_value_of_text(const char *text,
                           int32_t quantity,
                           int32_t unit,
                           double *value,
                           struct tw_error *detail);

// Answers a question: JSON text in, JSON text out, both UTF-8 and NUL-ended. The questions and
// their fields are told by tw_question_names and tw_question_schema; { "plan": { .. } } gives an
// operation sheet.
//
// The answer belongs to the caller, who gives it back with tw_text_free. After a failure it is
// NULL; detail (may be NULL) names the field by its path inside the question.
//
// Example: tw_answer("{ \"limits\": { \"nominal\": \"30 mm\", \"class\": \"g6\" } }", &answer,
//     NULL); answer has "\"smallest\":\"29.98 mm\"".
TW_CHECK tw_status tw_answer(const char *question, char **answer, struct tw_error *detail);

// As tw_answer, for text of a given length in bytes that need not be NUL-ended. A NUL inside is
// refused (TW_NUL_IN_TEXT). question may be NULL when length is 0.
//
// Example: tw_answer_n("{ \"materials\": {} } and more of a buffer", 19, &answer, NULL); answer has
//     "c45".
TW_CHECK
tw_status tw_answer_n(const char *question,
                      size_t length,
                      char **answer,
                      struct tw_error *detail);

// Gives back a text that tw_answer or another call returned to keep. NULL is allowed. Once only; a pointer that came
// from elsewhere is undefined behaviour.
void tw_text_free(char *text);

// The names of the questions that tw_answer takes, one to a line: to fill a menu.
//
// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
// failure the text is NULL.
//
// Example: tw_question_names(&names, NULL); names has "plan".
TW_CHECK tw_status tw_question_names(char **names, struct tw_error *detail);

// The JSON Schema (draft 2020-12) of a question by its name, such as "plan": its fields, what
// each is, which of them are needed, what each takes.
//
// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
// failure the text is NULL.
//
// Example: tw_question_schema("limits", &schema, NULL); schema has "nominal".
TW_CHECK tw_status tw_question_schema(const char *name, char **schema, struct tw_error *detail);

// The keys of the materials of the catalogue, one to a line: to fill a menu. Their figures are the
// answer of tw_answer to { "materials": { "like": key } }.
//
// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
// failure the text is NULL.
//
// Example: tw_material_keys(&keys, NULL); keys has "c45".
TW_CHECK tw_status tw_material_keys(char **keys, struct tw_error *detail);

// Opens a plan: from a job, { "plan": { .. } } as tw_answer takes it, or from a sheet that was
// written as JSON before (tw_plan_json, or the answer of tw_answer), which is worked out anew with
// all that was measured on the way. The fields of the one are those of the question plan
// (tw_question_schema), of the other those of plan in the question after_measurement.
//
// The plan belongs to the caller, who closes it with tw_plan_free. After a failure it is NULL;
// detail (may be NULL) names the field by its path inside the question.
TW_CHECK tw_status tw_plan_open(const char *text, struct tw_plan **plan, struct tw_error *detail);

// As tw_plan_open, for text of a given length in bytes that need not be NUL-ended. A NUL inside is
// refused (TW_NUL_IN_TEXT). text may be NULL when length is 0.
TW_CHECK
tw_status tw_plan_open_n(const char *text,
                         size_t length,
                         struct tw_plan **plan,
                         struct tw_error *detail);

// Closes a plan and sets the caller's pointer to NULL, so that closing it twice is harmless. NULL,
// and a pointer to NULL, are allowed. To use a copy of the pointer afterwards, or texts of its
// steps, is undefined behaviour.
void tw_plan_free(struct tw_plan **plan);

// How many steps a plan has; 0 where plan is NULL.
TW_CHECK size_t tw_plan_step_count(const struct tw_plan *plan);

// One step of a plan, index from 0.
//
// step is made ready with tw_step_init; a smaller one of an older header is filled as far as it
// goes. Its texts belong to the plan. detail may be NULL. After a failure its numbers are NaN or 0
// and its texts NULL.
//
// Example: tw_plan_step(plan, 0, &step, NULL); step.kind is TW_STEP_CLAMP and
//     step.diameter.mm is 34.000.
TW_CHECK
tw_status tw_plan_step(const struct tw_plan *plan,
                       size_t index,
                       struct tw_step *step,
                       struct tw_error *detail);

// What to expect of the part: size, uncertainty, chances, time.
//
// expected is made ready with tw_expected_init; a smaller one of an older header is filled as far
// as it goes. detail may be NULL. After a failure its numbers are NaN.
//
// Example: tw_plan_expected(plan, &expected, NULL); expected.smallest.mm is 29.967 and
//     expected.diameter.mm is 29.984.
TW_CHECK
tw_status tw_plan_expected(const struct tw_plan *plan,
                           struct tw_expected *expected,
                           struct tw_error *detail);

// What to expect of one surface of the part, index from 0, in the order in which they are turned:
// size, uncertainty, chances, roughness. tw_plan_expected says how many there are, and tells of all
// together.
//
// surface is made ready with tw_surface_init; a smaller one of an older header is filled as far as
// it goes. detail may be NULL. After a failure its numbers are NaN, 0 or -1.
//
// Example: tw_plan_surface(plan, 0, &surface, NULL); surface.largest.mm is 30.000 and
//     surface.ra.um is 1.259.
TW_CHECK
tw_status tw_plan_surface(const struct tw_plan *plan,
                          size_t index,
                          struct tw_surface *surface,
                          struct tw_error *detail);

// The sheet as plain text of at most 100 columns, in the units of the job.
//
// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
// failure the text is NULL.
//
// Example: tw_plan_text(plan, &text, NULL); text has "KEY OUT of the chuck".
TW_CHECK tw_status tw_plan_text(const struct tw_plan *plan, char **text, struct tw_error *detail);

// As tw_plan_text, in short: a line or two for each step, for somebody who knows the rest.
//
// Example: tw_plan_short_text(plan, &text, NULL); text has "STOP".
TW_CHECK
tw_status tw_plan_short_text(const struct tw_plan *plan,
                             char **text,
                             struct tw_error *detail);

// The sheet as JSON, { "version": 1, "plan": { .. } }: the same as tw_answer gives for its job. It
// holds all that the plan is, so that tw_plan_open opens it again.
//
// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
// failure the text is NULL.
//
// Example: tw_plan_json(plan, &json, NULL); json has "\"version\":1".
TW_CHECK tw_status tw_plan_json(const struct tw_plan *plan, char **json, struct tw_error *detail);

// How many pictures a plan has, one for each clamping; 0 where plan is NULL.
TW_CHECK size_t tw_plan_picture_count(const struct tw_plan *plan);

// The picture of a clamping, index from 0, as SVG. A library that was built without the feature
// "picture" refuses it (TW_NOT_OFFERED).
//
// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
// failure the text is NULL.
//
// Example: tw_plan_picture(plan, 0, &svg, NULL); svg has "<svg".
TW_CHECK
tw_status tw_plan_picture(const struct tw_plan *plan,
                          size_t index,
                          char **svg,
                          struct tw_error *detail);

// The sheet as one HTML page to print on A4 or Letter, with boxes to tick. A library that was built
// without the feature "picture" refuses it (TW_NOT_OFFERED).
//
// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
// failure the text is NULL.
//
// Example: tw_plan_page(plan, &html, NULL); html has "<html".
TW_CHECK tw_status tw_plan_page(const struct tw_plan *plan, char **html, struct tw_error *detail);

// What follows when these sizes, one or several along the bar, were measured at a step: a cut, a
// measuring stop or the inspection, index from 0. The plan itself stays as it is. No size at all,
// count 0, is refused (TW_MISSING_FIELD), wherever measured points.
//
// Hand the sizes in before anything is done that the stop says of ring or marks: the next plan takes
// its place, and reckons with the slide one turn out and the ring as it was.
//
// answer is JSON, as tw_answer gives for { "after_measurement": { .. } }, without the sheet: likely
// causes, whether the part is lost, by how much the readings move. next is the plan that follows;
// where none does it is NULL with TW_OK, and the answer says why under "why_no_plan".
//
// Both belong to the caller (tw_text_free, tw_plan_free); one of them may be NULL. detail may be
// NULL. After a failure both are NULL.
//
// Example: tw_plan_after(plan, 6, &(tw_diameter){ 33.628 }, 1, &next, &answer, NULL); answer has
//     "zero_off" and tw_plan_step_count(next) is 15.
TW_CHECK
tw_status tw_plan_after(const struct tw_plan *plan,
                        size_t step,
                        const struct tw_diameter *measured,
                        size_t count,
                        struct tw_plan **next,
                        char **answer,
                        struct tw_error *detail);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* TURNWRIGHT_H */

#ifndef TURNWRIGHT_H_INLINE
#define TURNWRIGHT_H_INLINE

/*
 * The quantities by number, for columns and tw_range; each with the range in which it is accepted.
 */
enum tw_quantity {
    /* a diameter; 0.1 to 5000 mm */
    TW_QUANTITY_DIAMETER = 1,
    /* a radius; 0.05 to 2500 mm */
    TW_QUANTITY_RADIUS = 2,
    /* a depth of cut; 0.001 to 100 mm */
    TW_QUANTITY_DEPTH_OF_CUT = 3,
    /* a corner radius; 0, or 0.005 to 50 mm */
    TW_QUANTITY_CORNER_RADIUS = 4,
    /* a radius of the rounded cutting edge; 0.0001 to 0.5 mm */
    TW_QUANTITY_EDGE_RADIUS = 5,
    /* a feed per revolution; 0.001 to 10 mm/rev */
    TW_QUANTITY_FEED = 6,
    /* a feed rate; 0.0001 to 100000 mm/min */
    TW_QUANTITY_FEED_RATE = 7,
    /* a cutting speed; 0.1 to 10000 m/min */
    TW_QUANTITY_CUTTING_SPEED = 8,
    /* a spindle speed; 0.1 to 100000 rpm */
    TW_QUANTITY_SPINDLE_SPEED = 9,
    /* a specific cutting force; 10 to 20000 MPa */
    TW_QUANTITY_SPECIFIC_FORCE = 10,
    /* a Young's modulus; 0.1 to 1500 GPa */
    TW_QUANTITY_YOUNGS_MODULUS = 11,
    /* a main force; 0 to 1000000 N */
    TW_QUANTITY_MAIN_FORCE = 12,
    /* a feed force; 0 to 1000000 N */
    TW_QUANTITY_FEED_FORCE = 13,
    /* a passive force; -1000000 to 1000000 N */
    TW_QUANTITY_PASSIVE_FORCE = 14,
    /* a power; 0 to 1000 kW */
    TW_QUANTITY_POWER = 15,
    /* a torque; 0 to 1000000 N m */
    TW_QUANTITY_TORQUE = 16,
    /* a stiffness; 0.001 to 100000 kN/mm */
    TW_QUANTITY_STIFFNESS = 17,
    /* a rotational stiffness; 0.001 to 100000 kN m/rad */
    TW_QUANTITY_ROTATIONAL_STIFFNESS = 18,
    /* a density; 100 to 25000 kg/m3 */
    TW_QUANTITY_DENSITY = 19,
    /* a thermal expansion; 0.1 to 500 um/(m K) */
    TW_QUANTITY_EXPANSION = 20,
    /* a specific heat; 50 to 10000 J/(kg K) */
    TW_QUANTITY_SPECIFIC_HEAT = 21,
    /* a time; 0 to 10000000 s */
    TW_QUANTITY_TIME = 22,
    /* a cutting edge angle; 1 to 150 deg */
    TW_QUANTITY_CUTTING_EDGE_ANGLE = 23,
    /* a minor cutting edge angle; 0.1 to 150 deg */
    TW_QUANTITY_MINOR_CUTTING_EDGE_ANGLE = 24,
    /* a rake angle; -45 to 60 deg */
    TW_QUANTITY_RAKE_ANGLE = 25,
    /* a roughness Ra; 0.001 to 1000 um */
    TW_QUANTITY_RA = 26,
    /* a roughness Rq; 0.001 to 1000 um */
    TW_QUANTITY_RQ = 27,
    /* a roughness Rz; 0.001 to 5000 um */
    TW_QUANTITY_RZ = 28,
    /* a roughness Rt; 0.001 to 5000 um */
    TW_QUANTITY_RT = 29,
    /* a length along the axis; 0.01 to 20000 mm */
    TW_QUANTITY_LENGTH = 30,
    /* an overhang; 0.5 to 20000 mm */
    TW_QUANTITY_OVERHANG = 31,
    /* a slide travel; 0 to 10000 mm */
    TW_QUANTITY_TRAVEL = 32,
    /* a dial division; 0.0001 to 10 mm */
    TW_QUANTITY_DIVISION = 33,
    /* what a dial shows; -100000 to 100000 mm */
    TW_QUANTITY_SHOWS = 34,
    /* a position along the axis; -20000 to 20000 mm */
    TW_QUANTITY_Z = 35,
    /* a deflection; -1000 to 1000 mm */
    TW_QUANTITY_DEFLECTION = 36,
    /* a difference of diameters; -1000 to 1000 mm */
    TW_QUANTITY_DIAMETER_ERROR = 37,
    /* the width of a tolerance zone; 0.0001 to 100 mm */
    TW_QUANTITY_TOLERANCE = 38,
    /* an uncertainty of size; 0.00001 to 10 mm */
    TW_QUANTITY_INSTRUMENT_UNCERTAINTY = 39,
    /* a thickness of cut; 0.0001 to 10 mm */
    TW_QUANTITY_CHIP_THICKNESS = 40,
    /* a width of cut; 0.001 to 500 mm */
    TW_QUANTITY_CHIP_WIDTH = 41,
    /* a removal rate; 0 to 1000000 cm3/min */
    TW_QUANTITY_REMOVAL_RATE = 42,
    /* a handwheel rate; 0 to 10000 turns/min */
    TW_QUANTITY_HANDWHEEL = 43,
    /* an exponent of the specific cutting force; 0 to 0.9 */
    TW_QUANTITY_EXPONENT = 44,
    /* an efficiency; 0.05 to 1 */
    TW_QUANTITY_EFFICIENCY = 45,
    /* a ratio of normal to main force; 0.05 to 3 */
    TW_QUANTITY_NORMAL_RATIO = 46,
    /* an overhang over diameter; 0.0001 to 100000 */
    TW_QUANTITY_LENGTH_OVER_DIAMETER = 47,
    /* a Brinell hardness; 1 to 1000 */
    TW_QUANTITY_HARDNESS_HB = 48,
    /* a rise of temperature; -500 to 2000 K */
    TW_QUANTITY_RISE = 49,
    /* a growth by heat; -100 to 100 mm */
    TW_QUANTITY_GROWTH = 50,
    /* a ratio of a taper, the x of 1:x; 0.01 to 100000 */
    TW_QUANTITY_TAPER_RATIO = 51,
    /* half the angle of a taper; 0.0001 to 89 deg */
    TW_QUANTITY_HALF_ANGLE = 52,
    /* the included angle of a taper; 0.0002 to 178 deg */
    TW_QUANTITY_INCLUDED_ANGLE = 53,
    /* an angle of the compound slide to the axis; 0.0001 to 90 deg */
    TW_QUANTITY_COMPOUND_ANGLE = 54,
    /* a set-over of the tailstock; -500 to 500 mm */
    TW_QUANTITY_SET_OVER = 55,
    /* a tool life; 0.1 to 10000000 s */
    TW_QUANTITY_LIFE = 56,
    /* an exponent of the tool life; 0.01 to 2 */
    TW_QUANTITY_LIFE_EXPONENT = 57,
    /* a constant of the tool life; 0.1 to 1000000 m/min */
    TW_QUANTITY_LIFE_CONSTANT = 58,
    /* a force along the axis; -10000000 to 10000000 N */
    TW_QUANTITY_AXIAL_FORCE = 59,
    /* a stiffness along the axis; 0.001 to 100000 kN/mm */
    TW_QUANTITY_AXIAL_STIFFNESS = 60,
    /* a height of the tool above the axis; -100 to 100 mm */
    TW_QUANTITY_TOOL_HEIGHT = 61,
    /* a critical speed; 0.1 to 1000000000 rpm */
    TW_QUANTITY_FIRST_CRITICAL_SPEED = 62,
    /* an unevenness of the feed; 0 to 1 */
    TW_QUANTITY_FEED_UNEVENNESS = 63,
    /* a width of a blade; 0.05 to 100 mm */
    TW_QUANTITY_WIDTH = 64,
    /* a factor of the force; 0.05 to 20 */
    TW_QUANTITY_FORCE_FACTOR = 65,
    /* a scatter of the force; 0 to 0.95 */
    TW_QUANTITY_FORCE_SCATTER = 66,
    /* a skewness Rsk; -1000 to 1000 */
    TW_QUANTITY_RSK = 67,
    /* a kurtosis Rku; 1 to 1000000 */
    TW_QUANTITY_RKU = 68,
    /* a mean width RSm; 0.0001 to 1000 mm */
    TW_QUANTITY_RSM = 69,
    /* a cut-off; 0.001 to 100 mm */
    TW_QUANTITY_CUT_OFF = 70,
    /* a short-wave cut-off; 0.0001 to 1 mm */
    TW_QUANTITY_SHORT_CUT_OFF = 71,
    /* a bending moment; -1000000 to 1000000 N m */
    TW_QUANTITY_BENDING_MOMENT = 72,
    /* an eccentricity; 0 to 100 mm */
    TW_QUANTITY_ECCENTRICITY = 73,
    /* a specific cutting force at one thickness of cut; 10 to 1000000 MPa */
    TW_QUANTITY_SPECIFIC_FORCE_AT_CHIP = 74,
    /* a price; 0 to 1000000000 */
    TW_QUANTITY_PRICE = 75,
    /* a price per hour; 0.001 to 1000000000 */
    TW_QUANTITY_PRICE_PER_HOUR = 76,
    /* a mass; 0.00001 to 1000000 kg */
    TW_QUANTITY_MASS = 77,
    /* a share of the heat; 0 to 1 */
    TW_QUANTITY_HEAT_SHARE = 78,
    /* a cross section of the cut; 0.000000001 to 10000 mm2 */
    TW_QUANTITY_CHIP_AREA = 79,
    /* a length of the edge in cut; 0.000001 to 1000 mm */
    TW_QUANTITY_EDGE_LENGTH = 80,
    /* a share that the spring leaves; 0 to 1 */
    TW_QUANTITY_SPRING_SHARE = 81,
    /* an angle of friction; 0 to 89 deg */
    TW_QUANTITY_FRICTION_ANGLE = 82,
    /* a spacing of the points of a profile; 0.000001 to 1 mm */
    TW_QUANTITY_SPACING = 83,
    /* a transmission of a filter; 0 to 1 */
    TW_QUANTITY_TRANSMISSION = 84,
    /* a mean pressure; 0 to 100000 MPa */
    TW_QUANTITY_MEAN_PRESSURE = 90,
    /* a coefficient of friction; 0 to 2 */
    TW_QUANTITY_FRICTION = 91,
    /* a grip force of all jaws together; 0 to 10000000 N */
    TW_QUANTITY_GRIP_FORCE = 92,
    /* a width or height of a shank; 0.5 to 500 mm */
    TW_QUANTITY_SHANK_SIZE = 93,
    /* a scatter of tool lives; 0 to 100 */
    TW_QUANTITY_LIFE_SCATTER = 94,
    /* an angle of the compound slide to the cross slide; 0 to 90 deg */
    TW_QUANTITY_COMPOUND_ANGLE_FROM_CROSS_SLIDE = 95,
    /* a deflection along the cutting speed; -1000 to 1000 mm */
    TW_QUANTITY_TANGENTIAL_DEFLECTION = 96,
    /* an upper limit deviation; -10 to 10 mm */
    TW_QUANTITY_UPPER_DEVIATION = 85,
    /* a lower limit deviation; -10 to 10 mm */
    TW_QUANTITY_LOWER_DEVIATION = 86,
    /* a clearance; -20 to 20 mm */
    TW_QUANTITY_CLEARANCE = 87,
    /* a standard uncertainty of size; 0.000000001 to 10 mm */
    TW_QUANTITY_STANDARD_UNCERTAINTY = 88,
    /* a probability; 0 to 1 */
    TW_QUANTITY_PROBABILITY = 89,
    /* a level of confidence; 0.5 to 0.999999999 */
    TW_QUANTITY_CONFIDENCE = 97,
    /* a coverage factor; 0.5 to 1000000 */
    TW_QUANTITY_COVERAGE_FACTOR = 98,
    /* a number of degrees of freedom; 1 to 1000000000000 */
    TW_QUANTITY_DEGREES_OF_FREEDOM = 99,
    /* a sensitivity coefficient; -1000000 to 1000000 */
    TW_QUANTITY_SENSITIVITY = 100,
    /* a correlation coefficient; -1 to 1 */
    TW_QUANTITY_CORRELATION = 101,
    /* a capability; 0 to 1000000000000 */
    TW_QUANTITY_CAPABILITY = 102,
    /* a capability index; -1000000000000 to 1000000000000 */
    TW_QUANTITY_CAPABILITY_INDEX = 103,
    /* half the width of a distribution; 0.000000001 to 10 mm */
    TW_QUANTITY_HALF_WIDTH = 104,
    /* a resolution; 0.00000001 to 10 mm */
    TW_QUANTITY_RESOLUTION = 105,
    /* a price of scrap; 0.000000001 to 1000000000 */
    TW_QUANTITY_PRICE_SCRAP = 106,
    /* a price of rework; 0.000000001 to 1000000000 */
    TW_QUANTITY_PRICE_REWORK = 107,
    /* a price of a measuring stop; 0.000000001 to 1000000000 */
    TW_QUANTITY_PRICE_STOP = 108,
    /* a run-out; 0, or 0.000000001 to 100 mm */
    TW_QUANTITY_RUN_OUT = 109,
    /* a thickness of the skin; 0, or 0.000000001 to 100 mm */
    TW_QUANTITY_SKIN_THICKNESS = 110,
    /* a leg of a chamfer; 0.000000001 to 1000 mm */
    TW_QUANTITY_CHAMFER_LEG = 111
};

/*
 * The units by number, for columns: kind, then unit.
 */
enum tw_unit {
    TW_UNIT_LENGTH_MILLIMETER = 100,
    TW_UNIT_LENGTH_MICROMETER = 101,
    TW_UNIT_LENGTH_CENTIMETER = 102,
    TW_UNIT_LENGTH_METER = 103,
    TW_UNIT_LENGTH_INCH = 104,
    TW_UNIT_LENGTH_FOOT = 105,
    TW_UNIT_LENGTH_THOUSANDTH_INCH = 106,
    TW_UNIT_ROUGHNESS_MICROMETER = 200,
    TW_UNIT_ROUGHNESS_MICROINCH = 201,
    TW_UNIT_ROUGHNESS_NANOMETER = 202,
    TW_UNIT_FEED_MILLIMETER_PER_REVOLUTION = 300,
    TW_UNIT_FEED_INCH_PER_REVOLUTION = 301,
    TW_UNIT_FEED_RATE_MILLIMETER_PER_MINUTE = 400,
    TW_UNIT_FEED_RATE_INCH_PER_MINUTE = 401,
    TW_UNIT_CUTTING_SPEED_METER_PER_MINUTE = 500,
    TW_UNIT_CUTTING_SPEED_METER_PER_SECOND = 501,
    TW_UNIT_CUTTING_SPEED_FOOT_PER_MINUTE = 502,
    TW_UNIT_SPINDLE_SPEED_REVOLUTION_PER_MINUTE = 600,
    TW_UNIT_SPINDLE_SPEED_REVOLUTION_PER_SECOND = 601,
    TW_UNIT_STRESS_MEGAPASCAL = 700,
    TW_UNIT_STRESS_NEWTON_PER_SQUARE_MILLIMETER = 701,
    TW_UNIT_STRESS_GIGAPASCAL = 702,
    TW_UNIT_STRESS_POUND_PER_SQUARE_INCH = 703,
    TW_UNIT_STRESS_KILOPOUND_PER_SQUARE_INCH = 704,
    TW_UNIT_STRESS_HORSEPOWER_MINUTE_PER_CUBIC_INCH = 705,
    TW_UNIT_ELASTIC_MODULUS_GIGAPASCAL = 800,
    TW_UNIT_ELASTIC_MODULUS_MEGAPASCAL = 801,
    TW_UNIT_ELASTIC_MODULUS_NEWTON_PER_SQUARE_MILLIMETER = 802,
    TW_UNIT_ELASTIC_MODULUS_POUND_PER_SQUARE_INCH = 803,
    TW_UNIT_ELASTIC_MODULUS_KILOPOUND_PER_SQUARE_INCH = 804,
    TW_UNIT_FORCE_NEWTON = 900,
    TW_UNIT_FORCE_KILONEWTON = 901,
    TW_UNIT_FORCE_POUND_FORCE = 902,
    TW_UNIT_POWER_KILOWATT = 1000,
    TW_UNIT_POWER_WATT = 1001,
    TW_UNIT_POWER_HORSEPOWER = 1002,
    TW_UNIT_TORQUE_NEWTON_METER = 1100,
    TW_UNIT_TORQUE_KILONEWTON_METER = 1101,
    TW_UNIT_TORQUE_POUND_FORCE_FOOT = 1102,
    TW_UNIT_TORQUE_POUND_FORCE_INCH = 1103,
    TW_UNIT_STIFFNESS_KILONEWTON_PER_MILLIMETER = 1200,
    TW_UNIT_STIFFNESS_NEWTON_PER_MICROMETER = 1201,
    TW_UNIT_STIFFNESS_NEWTON_PER_MILLIMETER = 1202,
    TW_UNIT_STIFFNESS_POUND_FORCE_PER_INCH = 1203,
    TW_UNIT_ROTATIONAL_STIFFNESS_KILONEWTON_METER_PER_RADIAN = 1300,
    TW_UNIT_ROTATIONAL_STIFFNESS_NEWTON_METER_PER_RADIAN = 1301,
    TW_UNIT_ROTATIONAL_STIFFNESS_POUND_FORCE_INCH_PER_RADIAN = 1302,
    TW_UNIT_DENSITY_KILOGRAM_PER_CUBIC_METER = 1400,
    TW_UNIT_DENSITY_GRAM_PER_CUBIC_CENTIMETER = 1401,
    TW_UNIT_DENSITY_POUND_PER_CUBIC_INCH = 1402,
    TW_UNIT_THERMAL_EXPANSION_MICROMETER_PER_METER_KELVIN = 1500,
    TW_UNIT_THERMAL_EXPANSION_PER_KELVIN = 1501,
    TW_UNIT_THERMAL_EXPANSION_PER_FAHRENHEIT = 1502,
    TW_UNIT_SPECIFIC_HEAT_JOULE_PER_KILOGRAM_KELVIN = 1600,
    TW_UNIT_SPECIFIC_HEAT_KILOJOULE_PER_KILOGRAM_KELVIN = 1601,
    TW_UNIT_TIME_SECOND = 1700,
    TW_UNIT_TIME_MINUTE = 1701,
    TW_UNIT_TIME_HOUR = 1702,
    TW_UNIT_ANGLE_DEGREE = 1800,
    TW_UNIT_ANGLE_RADIAN = 1801,
    TW_UNIT_REMOVAL_RATE_CUBIC_CENTIMETER_PER_MINUTE = 1900,
    TW_UNIT_REMOVAL_RATE_CUBIC_MILLIMETER_PER_MINUTE = 1901,
    TW_UNIT_REMOVAL_RATE_CUBIC_INCH_PER_MINUTE = 1902,
    TW_UNIT_HANDWHEEL_RATE_TURN_PER_MINUTE = 2000,
    TW_UNIT_PLAIN_NUMBER_ONE = 2100,
    TW_UNIT_RISE_OF_TEMPERATURE_KELVIN = 2200,
    TW_UNIT_RISE_OF_TEMPERATURE_FAHRENHEIT_STEP = 2201,
    TW_UNIT_MASS_KILOGRAM = 2300,
    TW_UNIT_MASS_GRAM = 2301,
    TW_UNIT_MASS_POUND = 2302,
    TW_UNIT_AREA_SQUARE_MILLIMETER = 2400,
    TW_UNIT_AREA_SQUARE_INCH = 2401
};

/*
 * Makes a tw_error ready, once, before its first use.
 */
static inline void tw_error_init(tw_error *detail)
{
    memset(detail, 0, sizeof *detail);
    detail->struct_size = sizeof *detail;
}

/*
 * Makes a tw_step, a tw_expected or a tw_surface ready, once, before its first use.
 */
static inline void tw_step_init(tw_step *step)
{
    memset(step, 0, sizeof *step);
    step->struct_size = sizeof *step;
}

static inline void tw_expected_init(tw_expected *expected)
{
    memset(expected, 0, sizeof *expected);
    expected->struct_size = sizeof *expected;
}

static inline void tw_surface_init(tw_surface *surface)
{
    memset(surface, 0, sizeof *surface);
    surface->struct_size = sizeof *surface;
}

/*
 * Springs that do not give way.
 */
static inline tw_stiffness tw_stiffness_rigid(void)
{
    tw_stiffness made;
    made.kn_per_mm = HUGE_VAL;
    return made;
}

static inline tw_rotational_stiffness tw_rotational_stiffness_rigid(void)
{
    tw_rotational_stiffness made;
    made.knm_per_rad = HUGE_VAL;
    return made;
}

/*
 * Makers and readers, one of each for every unit of a quantity. They check nothing: the calls do.
 * The factors are exact, multiplied before they divide.
 */

static inline tw_diameter tw_diameter_millimeter(double value)
{
    tw_diameter made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_diameter_as_millimeter(tw_diameter quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_diameter tw_diameter_micrometer(double value)
{
    tw_diameter made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_diameter_as_micrometer(tw_diameter quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_diameter tw_diameter_centimeter(double value)
{
    tw_diameter made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_diameter_as_centimeter(tw_diameter quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_diameter tw_diameter_meter(double value)
{
    tw_diameter made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_diameter_as_meter(tw_diameter quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_diameter tw_diameter_inch(double value)
{
    tw_diameter made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_diameter_as_inch(tw_diameter quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_diameter tw_diameter_inch_fraction(double numerator, double denominator)
{
    tw_diameter made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_diameter tw_diameter_foot(double value)
{
    tw_diameter made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_diameter_as_foot(tw_diameter quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_diameter tw_diameter_thousandth_inch(double value)
{
    tw_diameter made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_diameter_as_thousandth_inch(tw_diameter quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_radius tw_radius_millimeter(double value)
{
    tw_radius made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_radius_as_millimeter(tw_radius quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_radius tw_radius_micrometer(double value)
{
    tw_radius made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_radius_as_micrometer(tw_radius quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_radius tw_radius_centimeter(double value)
{
    tw_radius made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_radius_as_centimeter(tw_radius quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_radius tw_radius_meter(double value)
{
    tw_radius made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_radius_as_meter(tw_radius quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_radius tw_radius_inch(double value)
{
    tw_radius made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_radius_as_inch(tw_radius quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_radius tw_radius_inch_fraction(double numerator, double denominator)
{
    tw_radius made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_radius tw_radius_foot(double value)
{
    tw_radius made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_radius_as_foot(tw_radius quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_radius tw_radius_thousandth_inch(double value)
{
    tw_radius made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_radius_as_thousandth_inch(tw_radius quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_depth_of_cut tw_depth_of_cut_millimeter(double value)
{
    tw_depth_of_cut made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_depth_of_cut_as_millimeter(tw_depth_of_cut quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_depth_of_cut tw_depth_of_cut_micrometer(double value)
{
    tw_depth_of_cut made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_depth_of_cut_as_micrometer(tw_depth_of_cut quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_depth_of_cut tw_depth_of_cut_centimeter(double value)
{
    tw_depth_of_cut made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_depth_of_cut_as_centimeter(tw_depth_of_cut quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_depth_of_cut tw_depth_of_cut_meter(double value)
{
    tw_depth_of_cut made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_depth_of_cut_as_meter(tw_depth_of_cut quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_depth_of_cut tw_depth_of_cut_inch(double value)
{
    tw_depth_of_cut made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_depth_of_cut_as_inch(tw_depth_of_cut quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_depth_of_cut tw_depth_of_cut_inch_fraction(double numerator, double denominator)
{
    tw_depth_of_cut made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_depth_of_cut tw_depth_of_cut_foot(double value)
{
    tw_depth_of_cut made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_depth_of_cut_as_foot(tw_depth_of_cut quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_depth_of_cut tw_depth_of_cut_thousandth_inch(double value)
{
    tw_depth_of_cut made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_depth_of_cut_as_thousandth_inch(tw_depth_of_cut quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_corner_radius tw_corner_radius_millimeter(double value)
{
    tw_corner_radius made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_corner_radius_as_millimeter(tw_corner_radius quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_corner_radius tw_corner_radius_micrometer(double value)
{
    tw_corner_radius made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_corner_radius_as_micrometer(tw_corner_radius quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_corner_radius tw_corner_radius_centimeter(double value)
{
    tw_corner_radius made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_corner_radius_as_centimeter(tw_corner_radius quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_corner_radius tw_corner_radius_meter(double value)
{
    tw_corner_radius made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_corner_radius_as_meter(tw_corner_radius quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_corner_radius tw_corner_radius_inch(double value)
{
    tw_corner_radius made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_corner_radius_as_inch(tw_corner_radius quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_corner_radius tw_corner_radius_inch_fraction(double numerator, double denominator)
{
    tw_corner_radius made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_corner_radius tw_corner_radius_foot(double value)
{
    tw_corner_radius made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_corner_radius_as_foot(tw_corner_radius quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_corner_radius tw_corner_radius_thousandth_inch(double value)
{
    tw_corner_radius made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_corner_radius_as_thousandth_inch(tw_corner_radius quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_feed tw_feed_millimeter_per_revolution(double value)
{
    tw_feed made;
    made.mm_per_rev = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_feed_as_millimeter_per_revolution(tw_feed quantity)
{
    return quantity.mm_per_rev * 1.0 / 1.0;
}

static inline tw_feed tw_feed_inch_per_revolution(double value)
{
    tw_feed made;
    made.mm_per_rev = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_feed_as_inch_per_revolution(tw_feed quantity)
{
    return quantity.mm_per_rev * 10.0 / 254.0;
}

static inline tw_feed_rate tw_feed_rate_millimeter_per_minute(double value)
{
    tw_feed_rate made;
    made.mm_per_min = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_feed_rate_as_millimeter_per_minute(tw_feed_rate quantity)
{
    return quantity.mm_per_min * 1.0 / 1.0;
}

static inline tw_feed_rate tw_feed_rate_inch_per_minute(double value)
{
    tw_feed_rate made;
    made.mm_per_min = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_feed_rate_as_inch_per_minute(tw_feed_rate quantity)
{
    return quantity.mm_per_min * 10.0 / 254.0;
}

static inline tw_cutting_speed tw_cutting_speed_meter_per_minute(double value)
{
    tw_cutting_speed made;
    made.m_per_min = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_cutting_speed_as_meter_per_minute(tw_cutting_speed quantity)
{
    return quantity.m_per_min * 1.0 / 1.0;
}

static inline tw_cutting_speed tw_cutting_speed_meter_per_second(double value)
{
    tw_cutting_speed made;
    made.m_per_min = value * 60.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_cutting_speed_as_meter_per_second(tw_cutting_speed quantity)
{
    return quantity.m_per_min * 1.0 / 60.0;
}

static inline tw_cutting_speed tw_cutting_speed_foot_per_minute(double value)
{
    tw_cutting_speed made;
    made.m_per_min = value * 3048.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_cutting_speed_as_foot_per_minute(tw_cutting_speed quantity)
{
    return quantity.m_per_min * 10000.0 / 3048.0;
}

static inline tw_spindle_speed tw_spindle_speed_revolution_per_minute(double value)
{
    tw_spindle_speed made;
    made.rpm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_spindle_speed_as_revolution_per_minute(tw_spindle_speed quantity)
{
    return quantity.rpm * 1.0 / 1.0;
}

static inline tw_spindle_speed tw_spindle_speed_revolution_per_second(double value)
{
    tw_spindle_speed made;
    made.rpm = value * 60.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_spindle_speed_as_revolution_per_second(tw_spindle_speed quantity)
{
    return quantity.rpm * 1.0 / 60.0;
}

static inline tw_specific_force tw_specific_force_megapascal(double value)
{
    tw_specific_force made;
    made.mpa = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_specific_force_as_megapascal(tw_specific_force quantity)
{
    return quantity.mpa * 1.0 / 1.0;
}

static inline tw_specific_force tw_specific_force_newton_per_square_millimeter(double value)
{
    tw_specific_force made;
    made.mpa = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_specific_force_as_newton_per_square_millimeter(tw_specific_force quantity)
{
    return quantity.mpa * 1.0 / 1.0;
}

static inline tw_specific_force tw_specific_force_gigapascal(double value)
{
    tw_specific_force made;
    made.mpa = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_specific_force_as_gigapascal(tw_specific_force quantity)
{
    return quantity.mpa * 1.0 / 1000.0;
}

static inline tw_specific_force tw_specific_force_pound_per_square_inch(double value)
{
    tw_specific_force made;
    made.mpa = value * 6894.757293168361 / (1.0 * 1000000.0);
    return made;
}

static inline double tw_specific_force_as_pound_per_square_inch(tw_specific_force quantity)
{
    return quantity.mpa * 1000000.0 / 6894.757293168361;
}

static inline tw_specific_force tw_specific_force_kilopound_per_square_inch(double value)
{
    tw_specific_force made;
    made.mpa = value * 6894.757293168361 / (1.0 * 1000.0);
    return made;
}

static inline double tw_specific_force_as_kilopound_per_square_inch(tw_specific_force quantity)
{
    return quantity.mpa * 1000.0 / 6894.757293168361;
}

static inline tw_specific_force tw_specific_force_horsepower_minute_per_cubic_inch(double value)
{
    tw_specific_force made;
    made.mpa = value * 44741.99229493621 / (1.0 * 16.387064);
    return made;
}

static inline double tw_specific_force_as_horsepower_minute_per_cubic_inch(tw_specific_force quantity)
{
    return quantity.mpa * 16.387064 / 44741.99229493621;
}

static inline tw_youngs_modulus tw_youngs_modulus_gigapascal(double value)
{
    tw_youngs_modulus made;
    made.gpa = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_youngs_modulus_as_gigapascal(tw_youngs_modulus quantity)
{
    return quantity.gpa * 1.0 / 1.0;
}

static inline tw_youngs_modulus tw_youngs_modulus_megapascal(double value)
{
    tw_youngs_modulus made;
    made.gpa = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_youngs_modulus_as_megapascal(tw_youngs_modulus quantity)
{
    return quantity.gpa * 1000.0 / 1.0;
}

static inline tw_youngs_modulus tw_youngs_modulus_newton_per_square_millimeter(double value)
{
    tw_youngs_modulus made;
    made.gpa = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_youngs_modulus_as_newton_per_square_millimeter(tw_youngs_modulus quantity)
{
    return quantity.gpa * 1000.0 / 1.0;
}

static inline tw_youngs_modulus tw_youngs_modulus_pound_per_square_inch(double value)
{
    tw_youngs_modulus made;
    made.gpa = value * 6894.757293168361 / (1.0 * 1000000000.0);
    return made;
}

static inline double tw_youngs_modulus_as_pound_per_square_inch(tw_youngs_modulus quantity)
{
    return quantity.gpa * 1000000000.0 / 6894.757293168361;
}

static inline tw_youngs_modulus tw_youngs_modulus_kilopound_per_square_inch(double value)
{
    tw_youngs_modulus made;
    made.gpa = value * 6894.757293168361 / (1.0 * 1000000.0);
    return made;
}

static inline double tw_youngs_modulus_as_kilopound_per_square_inch(tw_youngs_modulus quantity)
{
    return quantity.gpa * 1000000.0 / 6894.757293168361;
}

static inline tw_main_force tw_main_force_newton(double value)
{
    tw_main_force made;
    made.n = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_main_force_as_newton(tw_main_force quantity)
{
    return quantity.n * 1.0 / 1.0;
}

static inline tw_main_force tw_main_force_kilonewton(double value)
{
    tw_main_force made;
    made.n = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_main_force_as_kilonewton(tw_main_force quantity)
{
    return quantity.n * 1.0 / 1000.0;
}

static inline tw_main_force tw_main_force_pound_force(double value)
{
    tw_main_force made;
    made.n = value * 4.4482216152605 / (1.0 * 1.0);
    return made;
}

static inline double tw_main_force_as_pound_force(tw_main_force quantity)
{
    return quantity.n * 1.0 / 4.4482216152605;
}

static inline tw_feed_force tw_feed_force_newton(double value)
{
    tw_feed_force made;
    made.n = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_feed_force_as_newton(tw_feed_force quantity)
{
    return quantity.n * 1.0 / 1.0;
}

static inline tw_feed_force tw_feed_force_kilonewton(double value)
{
    tw_feed_force made;
    made.n = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_feed_force_as_kilonewton(tw_feed_force quantity)
{
    return quantity.n * 1.0 / 1000.0;
}

static inline tw_feed_force tw_feed_force_pound_force(double value)
{
    tw_feed_force made;
    made.n = value * 4.4482216152605 / (1.0 * 1.0);
    return made;
}

static inline double tw_feed_force_as_pound_force(tw_feed_force quantity)
{
    return quantity.n * 1.0 / 4.4482216152605;
}

static inline tw_passive_force tw_passive_force_newton(double value)
{
    tw_passive_force made;
    made.n = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_passive_force_as_newton(tw_passive_force quantity)
{
    return quantity.n * 1.0 / 1.0;
}

static inline tw_passive_force tw_passive_force_kilonewton(double value)
{
    tw_passive_force made;
    made.n = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_passive_force_as_kilonewton(tw_passive_force quantity)
{
    return quantity.n * 1.0 / 1000.0;
}

static inline tw_passive_force tw_passive_force_pound_force(double value)
{
    tw_passive_force made;
    made.n = value * 4.4482216152605 / (1.0 * 1.0);
    return made;
}

static inline double tw_passive_force_as_pound_force(tw_passive_force quantity)
{
    return quantity.n * 1.0 / 4.4482216152605;
}

static inline tw_stiffness tw_stiffness_kilonewton_per_millimeter(double value)
{
    tw_stiffness made;
    made.kn_per_mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_stiffness_as_kilonewton_per_millimeter(tw_stiffness quantity)
{
    return quantity.kn_per_mm * 1.0 / 1.0;
}

static inline tw_stiffness tw_stiffness_newton_per_micrometer(double value)
{
    tw_stiffness made;
    made.kn_per_mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_stiffness_as_newton_per_micrometer(tw_stiffness quantity)
{
    return quantity.kn_per_mm * 1.0 / 1.0;
}

static inline tw_stiffness tw_stiffness_newton_per_millimeter(double value)
{
    tw_stiffness made;
    made.kn_per_mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_stiffness_as_newton_per_millimeter(tw_stiffness quantity)
{
    return quantity.kn_per_mm * 1000.0 / 1.0;
}

static inline tw_stiffness tw_stiffness_pound_force_per_inch(double value)
{
    tw_stiffness made;
    made.kn_per_mm = value * 4.4482216152605 / (1.0 * 25400.0);
    return made;
}

static inline double tw_stiffness_as_pound_force_per_inch(tw_stiffness quantity)
{
    return quantity.kn_per_mm * 25400.0 / 4.4482216152605;
}

static inline tw_rotational_stiffness tw_rotational_stiffness_kilonewton_meter_per_radian(double value)
{
    tw_rotational_stiffness made;
    made.knm_per_rad = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rotational_stiffness_as_kilonewton_meter_per_radian(tw_rotational_stiffness quantity)
{
    return quantity.knm_per_rad * 1.0 / 1.0;
}

static inline tw_rotational_stiffness tw_rotational_stiffness_newton_meter_per_radian(double value)
{
    tw_rotational_stiffness made;
    made.knm_per_rad = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_rotational_stiffness_as_newton_meter_per_radian(tw_rotational_stiffness quantity)
{
    return quantity.knm_per_rad * 1000.0 / 1.0;
}

static inline tw_rotational_stiffness tw_rotational_stiffness_pound_force_inch_per_radian(double value)
{
    tw_rotational_stiffness made;
    made.knm_per_rad = value * 1.3558179483314003 / (1.0 * 12000.0);
    return made;
}

static inline double tw_rotational_stiffness_as_pound_force_inch_per_radian(tw_rotational_stiffness quantity)
{
    return quantity.knm_per_rad * 12000.0 / 1.3558179483314003;
}

static inline tw_cutting_edge_angle tw_cutting_edge_angle_degree(double value)
{
    tw_cutting_edge_angle made;
    made.deg = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_cutting_edge_angle_as_degree(tw_cutting_edge_angle quantity)
{
    return quantity.deg * 1.0 / 1.0;
}

static inline tw_cutting_edge_angle tw_cutting_edge_angle_radian(double value)
{
    tw_cutting_edge_angle made;
    made.deg = value * 180.0 / (1.0 * 3.141592653589793);
    return made;
}

static inline double tw_cutting_edge_angle_as_radian(tw_cutting_edge_angle quantity)
{
    return quantity.deg * 3.141592653589793 / 180.0;
}

static inline tw_minor_cutting_edge_angle tw_minor_cutting_edge_angle_degree(double value)
{
    tw_minor_cutting_edge_angle made;
    made.deg = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_minor_cutting_edge_angle_as_degree(tw_minor_cutting_edge_angle quantity)
{
    return quantity.deg * 1.0 / 1.0;
}

static inline tw_minor_cutting_edge_angle tw_minor_cutting_edge_angle_radian(double value)
{
    tw_minor_cutting_edge_angle made;
    made.deg = value * 180.0 / (1.0 * 3.141592653589793);
    return made;
}

static inline double tw_minor_cutting_edge_angle_as_radian(tw_minor_cutting_edge_angle quantity)
{
    return quantity.deg * 3.141592653589793 / 180.0;
}

static inline tw_ra tw_ra_micrometer(double value)
{
    tw_ra made;
    made.um = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_ra_as_micrometer(tw_ra quantity)
{
    return quantity.um * 1.0 / 1.0;
}

static inline tw_ra tw_ra_microinch(double value)
{
    tw_ra made;
    made.um = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_ra_as_microinch(tw_ra quantity)
{
    return quantity.um * 10000.0 / 254.0;
}

static inline tw_ra tw_ra_nanometer(double value)
{
    tw_ra made;
    made.um = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_ra_as_nanometer(tw_ra quantity)
{
    return quantity.um * 1000.0 / 1.0;
}

static inline tw_rq tw_rq_micrometer(double value)
{
    tw_rq made;
    made.um = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rq_as_micrometer(tw_rq quantity)
{
    return quantity.um * 1.0 / 1.0;
}

static inline tw_rq tw_rq_microinch(double value)
{
    tw_rq made;
    made.um = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_rq_as_microinch(tw_rq quantity)
{
    return quantity.um * 10000.0 / 254.0;
}

static inline tw_rq tw_rq_nanometer(double value)
{
    tw_rq made;
    made.um = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_rq_as_nanometer(tw_rq quantity)
{
    return quantity.um * 1000.0 / 1.0;
}

static inline tw_rz tw_rz_micrometer(double value)
{
    tw_rz made;
    made.um = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rz_as_micrometer(tw_rz quantity)
{
    return quantity.um * 1.0 / 1.0;
}

static inline tw_rz tw_rz_microinch(double value)
{
    tw_rz made;
    made.um = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_rz_as_microinch(tw_rz quantity)
{
    return quantity.um * 10000.0 / 254.0;
}

static inline tw_rz tw_rz_nanometer(double value)
{
    tw_rz made;
    made.um = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_rz_as_nanometer(tw_rz quantity)
{
    return quantity.um * 1000.0 / 1.0;
}

static inline tw_rt tw_rt_micrometer(double value)
{
    tw_rt made;
    made.um = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rt_as_micrometer(tw_rt quantity)
{
    return quantity.um * 1.0 / 1.0;
}

static inline tw_rt tw_rt_microinch(double value)
{
    tw_rt made;
    made.um = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_rt_as_microinch(tw_rt quantity)
{
    return quantity.um * 10000.0 / 254.0;
}

static inline tw_rt tw_rt_nanometer(double value)
{
    tw_rt made;
    made.um = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_rt_as_nanometer(tw_rt quantity)
{
    return quantity.um * 1000.0 / 1.0;
}

static inline tw_length tw_length_millimeter(double value)
{
    tw_length made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_length_as_millimeter(tw_length quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_length tw_length_micrometer(double value)
{
    tw_length made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_length_as_micrometer(tw_length quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_length tw_length_centimeter(double value)
{
    tw_length made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_length_as_centimeter(tw_length quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_length tw_length_meter(double value)
{
    tw_length made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_length_as_meter(tw_length quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_length tw_length_inch(double value)
{
    tw_length made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_length_as_inch(tw_length quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_length tw_length_inch_fraction(double numerator, double denominator)
{
    tw_length made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_length tw_length_foot(double value)
{
    tw_length made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_length_as_foot(tw_length quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_length tw_length_thousandth_inch(double value)
{
    tw_length made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_length_as_thousandth_inch(tw_length quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_overhang tw_overhang_millimeter(double value)
{
    tw_overhang made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_overhang_as_millimeter(tw_overhang quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_overhang tw_overhang_micrometer(double value)
{
    tw_overhang made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_overhang_as_micrometer(tw_overhang quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_overhang tw_overhang_centimeter(double value)
{
    tw_overhang made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_overhang_as_centimeter(tw_overhang quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_overhang tw_overhang_meter(double value)
{
    tw_overhang made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_overhang_as_meter(tw_overhang quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_overhang tw_overhang_inch(double value)
{
    tw_overhang made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_overhang_as_inch(tw_overhang quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_overhang tw_overhang_inch_fraction(double numerator, double denominator)
{
    tw_overhang made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_overhang tw_overhang_foot(double value)
{
    tw_overhang made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_overhang_as_foot(tw_overhang quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_overhang tw_overhang_thousandth_inch(double value)
{
    tw_overhang made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_overhang_as_thousandth_inch(tw_overhang quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_deflection tw_deflection_millimeter(double value)
{
    tw_deflection made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_deflection_as_millimeter(tw_deflection quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_deflection tw_deflection_micrometer(double value)
{
    tw_deflection made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_deflection_as_micrometer(tw_deflection quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_deflection tw_deflection_centimeter(double value)
{
    tw_deflection made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_deflection_as_centimeter(tw_deflection quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_deflection tw_deflection_meter(double value)
{
    tw_deflection made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_deflection_as_meter(tw_deflection quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_deflection tw_deflection_inch(double value)
{
    tw_deflection made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_deflection_as_inch(tw_deflection quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_deflection tw_deflection_inch_fraction(double numerator, double denominator)
{
    tw_deflection made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_deflection tw_deflection_foot(double value)
{
    tw_deflection made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_deflection_as_foot(tw_deflection quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_deflection tw_deflection_thousandth_inch(double value)
{
    tw_deflection made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_deflection_as_thousandth_inch(tw_deflection quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_exponent tw_exponent_one(double value)
{
    tw_exponent made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_exponent_as_one(tw_exponent quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_normal_ratio tw_normal_ratio_one(double value)
{
    tw_normal_ratio made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_normal_ratio_as_one(tw_normal_ratio quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_edge_radius tw_edge_radius_millimeter(double value)
{
    tw_edge_radius made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_edge_radius_as_millimeter(tw_edge_radius quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_edge_radius tw_edge_radius_micrometer(double value)
{
    tw_edge_radius made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_edge_radius_as_micrometer(tw_edge_radius quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_edge_radius tw_edge_radius_centimeter(double value)
{
    tw_edge_radius made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_edge_radius_as_centimeter(tw_edge_radius quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_edge_radius tw_edge_radius_meter(double value)
{
    tw_edge_radius made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_edge_radius_as_meter(tw_edge_radius quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_edge_radius tw_edge_radius_inch(double value)
{
    tw_edge_radius made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_edge_radius_as_inch(tw_edge_radius quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_edge_radius tw_edge_radius_inch_fraction(double numerator, double denominator)
{
    tw_edge_radius made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_edge_radius tw_edge_radius_foot(double value)
{
    tw_edge_radius made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_edge_radius_as_foot(tw_edge_radius quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_edge_radius tw_edge_radius_thousandth_inch(double value)
{
    tw_edge_radius made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_edge_radius_as_thousandth_inch(tw_edge_radius quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_power tw_power_kilowatt(double value)
{
    tw_power made;
    made.kw = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_power_as_kilowatt(tw_power quantity)
{
    return quantity.kw * 1.0 / 1.0;
}

static inline tw_power tw_power_watt(double value)
{
    tw_power made;
    made.kw = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_power_as_watt(tw_power quantity)
{
    return quantity.kw * 1000.0 / 1.0;
}

static inline tw_power tw_power_horsepower(double value)
{
    tw_power made;
    made.kw = value * 745.6998715822702 / (1.0 * 1000.0);
    return made;
}

static inline double tw_power_as_horsepower(tw_power quantity)
{
    return quantity.kw * 1000.0 / 745.6998715822702;
}

static inline tw_torque tw_torque_newton_meter(double value)
{
    tw_torque made;
    made.nm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_torque_as_newton_meter(tw_torque quantity)
{
    return quantity.nm * 1.0 / 1.0;
}

static inline tw_torque tw_torque_kilonewton_meter(double value)
{
    tw_torque made;
    made.nm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_torque_as_kilonewton_meter(tw_torque quantity)
{
    return quantity.nm * 1.0 / 1000.0;
}

static inline tw_torque tw_torque_pound_force_foot(double value)
{
    tw_torque made;
    made.nm = value * 1.3558179483314003 / (1.0 * 1.0);
    return made;
}

static inline double tw_torque_as_pound_force_foot(tw_torque quantity)
{
    return quantity.nm * 1.0 / 1.3558179483314003;
}

static inline tw_torque tw_torque_pound_force_inch(double value)
{
    tw_torque made;
    made.nm = value * 1.3558179483314003 / (1.0 * 12.0);
    return made;
}

static inline double tw_torque_as_pound_force_inch(tw_torque quantity)
{
    return quantity.nm * 12.0 / 1.3558179483314003;
}

static inline tw_density tw_density_kilogram_per_cubic_meter(double value)
{
    tw_density made;
    made.kg_per_m3 = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_density_as_kilogram_per_cubic_meter(tw_density quantity)
{
    return quantity.kg_per_m3 * 1.0 / 1.0;
}

static inline tw_density tw_density_gram_per_cubic_centimeter(double value)
{
    tw_density made;
    made.kg_per_m3 = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_density_as_gram_per_cubic_centimeter(tw_density quantity)
{
    return quantity.kg_per_m3 * 1.0 / 1000.0;
}

static inline tw_density tw_density_pound_per_cubic_inch(double value)
{
    tw_density made;
    made.kg_per_m3 = value * 0.45359237 / (1.0 * 1.6387064e-5);
    return made;
}

static inline double tw_density_as_pound_per_cubic_inch(tw_density quantity)
{
    return quantity.kg_per_m3 * 1.6387064e-5 / 0.45359237;
}

static inline tw_expansion tw_expansion_micrometer_per_meter_kelvin(double value)
{
    tw_expansion made;
    made.um_per_mk = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_expansion_as_micrometer_per_meter_kelvin(tw_expansion quantity)
{
    return quantity.um_per_mk * 1.0 / 1.0;
}

static inline tw_expansion tw_expansion_per_kelvin(double value)
{
    tw_expansion made;
    made.um_per_mk = value * 1000000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_expansion_as_per_kelvin(tw_expansion quantity)
{
    return quantity.um_per_mk * 1.0 / 1000000.0;
}

static inline tw_expansion tw_expansion_per_fahrenheit(double value)
{
    tw_expansion made;
    made.um_per_mk = value * 1800000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_expansion_as_per_fahrenheit(tw_expansion quantity)
{
    return quantity.um_per_mk * 1.0 / 1800000.0;
}

static inline tw_specific_heat tw_specific_heat_joule_per_kilogram_kelvin(double value)
{
    tw_specific_heat made;
    made.j_per_kgk = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_specific_heat_as_joule_per_kilogram_kelvin(tw_specific_heat quantity)
{
    return quantity.j_per_kgk * 1.0 / 1.0;
}

static inline tw_specific_heat tw_specific_heat_kilojoule_per_kilogram_kelvin(double value)
{
    tw_specific_heat made;
    made.j_per_kgk = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_specific_heat_as_kilojoule_per_kilogram_kelvin(tw_specific_heat quantity)
{
    return quantity.j_per_kgk * 1.0 / 1000.0;
}

static inline tw_time tw_time_second(double value)
{
    tw_time made;
    made.s = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_time_as_second(tw_time quantity)
{
    return quantity.s * 1.0 / 1.0;
}

static inline tw_time tw_time_minute(double value)
{
    tw_time made;
    made.s = value * 60.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_time_as_minute(tw_time quantity)
{
    return quantity.s * 1.0 / 60.0;
}

static inline tw_time tw_time_hour(double value)
{
    tw_time made;
    made.s = value * 3600.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_time_as_hour(tw_time quantity)
{
    return quantity.s * 1.0 / 3600.0;
}

static inline tw_rake_angle tw_rake_angle_degree(double value)
{
    tw_rake_angle made;
    made.deg = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rake_angle_as_degree(tw_rake_angle quantity)
{
    return quantity.deg * 1.0 / 1.0;
}

static inline tw_rake_angle tw_rake_angle_radian(double value)
{
    tw_rake_angle made;
    made.deg = value * 180.0 / (1.0 * 3.141592653589793);
    return made;
}

static inline double tw_rake_angle_as_radian(tw_rake_angle quantity)
{
    return quantity.deg * 3.141592653589793 / 180.0;
}

static inline tw_travel tw_travel_millimeter(double value)
{
    tw_travel made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_travel_as_millimeter(tw_travel quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_travel tw_travel_micrometer(double value)
{
    tw_travel made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_travel_as_micrometer(tw_travel quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_travel tw_travel_centimeter(double value)
{
    tw_travel made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_travel_as_centimeter(tw_travel quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_travel tw_travel_meter(double value)
{
    tw_travel made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_travel_as_meter(tw_travel quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_travel tw_travel_inch(double value)
{
    tw_travel made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_travel_as_inch(tw_travel quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_travel tw_travel_inch_fraction(double numerator, double denominator)
{
    tw_travel made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_travel tw_travel_foot(double value)
{
    tw_travel made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_travel_as_foot(tw_travel quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_travel tw_travel_thousandth_inch(double value)
{
    tw_travel made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_travel_as_thousandth_inch(tw_travel quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_division tw_division_millimeter(double value)
{
    tw_division made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_division_as_millimeter(tw_division quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_division tw_division_micrometer(double value)
{
    tw_division made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_division_as_micrometer(tw_division quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_division tw_division_centimeter(double value)
{
    tw_division made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_division_as_centimeter(tw_division quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_division tw_division_meter(double value)
{
    tw_division made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_division_as_meter(tw_division quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_division tw_division_inch(double value)
{
    tw_division made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_division_as_inch(tw_division quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_division tw_division_inch_fraction(double numerator, double denominator)
{
    tw_division made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_division tw_division_foot(double value)
{
    tw_division made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_division_as_foot(tw_division quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_division tw_division_thousandth_inch(double value)
{
    tw_division made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_division_as_thousandth_inch(tw_division quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_shows tw_shows_millimeter(double value)
{
    tw_shows made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_shows_as_millimeter(tw_shows quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_shows tw_shows_micrometer(double value)
{
    tw_shows made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_shows_as_micrometer(tw_shows quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_shows tw_shows_centimeter(double value)
{
    tw_shows made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_shows_as_centimeter(tw_shows quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_shows tw_shows_meter(double value)
{
    tw_shows made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_shows_as_meter(tw_shows quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_shows tw_shows_inch(double value)
{
    tw_shows made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_shows_as_inch(tw_shows quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_shows tw_shows_inch_fraction(double numerator, double denominator)
{
    tw_shows made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_shows tw_shows_foot(double value)
{
    tw_shows made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_shows_as_foot(tw_shows quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_shows tw_shows_thousandth_inch(double value)
{
    tw_shows made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_shows_as_thousandth_inch(tw_shows quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_z tw_z_millimeter(double value)
{
    tw_z made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_z_as_millimeter(tw_z quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_z tw_z_micrometer(double value)
{
    tw_z made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_z_as_micrometer(tw_z quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_z tw_z_centimeter(double value)
{
    tw_z made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_z_as_centimeter(tw_z quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_z tw_z_meter(double value)
{
    tw_z made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_z_as_meter(tw_z quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_z tw_z_inch(double value)
{
    tw_z made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_z_as_inch(tw_z quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_z tw_z_inch_fraction(double numerator, double denominator)
{
    tw_z made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_z tw_z_foot(double value)
{
    tw_z made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_z_as_foot(tw_z quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_z tw_z_thousandth_inch(double value)
{
    tw_z made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_z_as_thousandth_inch(tw_z quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_diameter_error tw_diameter_error_millimeter(double value)
{
    tw_diameter_error made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_diameter_error_as_millimeter(tw_diameter_error quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_diameter_error tw_diameter_error_micrometer(double value)
{
    tw_diameter_error made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_diameter_error_as_micrometer(tw_diameter_error quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_diameter_error tw_diameter_error_centimeter(double value)
{
    tw_diameter_error made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_diameter_error_as_centimeter(tw_diameter_error quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_diameter_error tw_diameter_error_meter(double value)
{
    tw_diameter_error made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_diameter_error_as_meter(tw_diameter_error quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_diameter_error tw_diameter_error_inch(double value)
{
    tw_diameter_error made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_diameter_error_as_inch(tw_diameter_error quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_diameter_error tw_diameter_error_inch_fraction(double numerator, double denominator)
{
    tw_diameter_error made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_diameter_error tw_diameter_error_foot(double value)
{
    tw_diameter_error made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_diameter_error_as_foot(tw_diameter_error quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_diameter_error tw_diameter_error_thousandth_inch(double value)
{
    tw_diameter_error made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_diameter_error_as_thousandth_inch(tw_diameter_error quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_tolerance tw_tolerance_millimeter(double value)
{
    tw_tolerance made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_tolerance_as_millimeter(tw_tolerance quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_tolerance tw_tolerance_micrometer(double value)
{
    tw_tolerance made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_tolerance_as_micrometer(tw_tolerance quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_tolerance tw_tolerance_centimeter(double value)
{
    tw_tolerance made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_tolerance_as_centimeter(tw_tolerance quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_tolerance tw_tolerance_meter(double value)
{
    tw_tolerance made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_tolerance_as_meter(tw_tolerance quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_tolerance tw_tolerance_inch(double value)
{
    tw_tolerance made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_tolerance_as_inch(tw_tolerance quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_tolerance tw_tolerance_inch_fraction(double numerator, double denominator)
{
    tw_tolerance made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_tolerance tw_tolerance_foot(double value)
{
    tw_tolerance made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_tolerance_as_foot(tw_tolerance quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_tolerance tw_tolerance_thousandth_inch(double value)
{
    tw_tolerance made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_tolerance_as_thousandth_inch(tw_tolerance quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_instrument_uncertainty tw_instrument_uncertainty_millimeter(double value)
{
    tw_instrument_uncertainty made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_instrument_uncertainty_as_millimeter(tw_instrument_uncertainty quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_instrument_uncertainty tw_instrument_uncertainty_micrometer(double value)
{
    tw_instrument_uncertainty made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_instrument_uncertainty_as_micrometer(tw_instrument_uncertainty quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_instrument_uncertainty tw_instrument_uncertainty_centimeter(double value)
{
    tw_instrument_uncertainty made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_instrument_uncertainty_as_centimeter(tw_instrument_uncertainty quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_instrument_uncertainty tw_instrument_uncertainty_meter(double value)
{
    tw_instrument_uncertainty made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_instrument_uncertainty_as_meter(tw_instrument_uncertainty quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_instrument_uncertainty tw_instrument_uncertainty_inch(double value)
{
    tw_instrument_uncertainty made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_instrument_uncertainty_as_inch(tw_instrument_uncertainty quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_instrument_uncertainty tw_instrument_uncertainty_inch_fraction(double numerator, double denominator)
{
    tw_instrument_uncertainty made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_instrument_uncertainty tw_instrument_uncertainty_foot(double value)
{
    tw_instrument_uncertainty made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_instrument_uncertainty_as_foot(tw_instrument_uncertainty quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_instrument_uncertainty tw_instrument_uncertainty_thousandth_inch(double value)
{
    tw_instrument_uncertainty made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_instrument_uncertainty_as_thousandth_inch(tw_instrument_uncertainty quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_chip_thickness tw_chip_thickness_millimeter(double value)
{
    tw_chip_thickness made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chip_thickness_as_millimeter(tw_chip_thickness quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_chip_thickness tw_chip_thickness_micrometer(double value)
{
    tw_chip_thickness made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_chip_thickness_as_micrometer(tw_chip_thickness quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_chip_thickness tw_chip_thickness_centimeter(double value)
{
    tw_chip_thickness made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chip_thickness_as_centimeter(tw_chip_thickness quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_chip_thickness tw_chip_thickness_meter(double value)
{
    tw_chip_thickness made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chip_thickness_as_meter(tw_chip_thickness quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_chip_thickness tw_chip_thickness_inch(double value)
{
    tw_chip_thickness made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_chip_thickness_as_inch(tw_chip_thickness quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_chip_thickness tw_chip_thickness_inch_fraction(double numerator, double denominator)
{
    tw_chip_thickness made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_chip_thickness tw_chip_thickness_foot(double value)
{
    tw_chip_thickness made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_chip_thickness_as_foot(tw_chip_thickness quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_chip_thickness tw_chip_thickness_thousandth_inch(double value)
{
    tw_chip_thickness made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_chip_thickness_as_thousandth_inch(tw_chip_thickness quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_chip_width tw_chip_width_millimeter(double value)
{
    tw_chip_width made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chip_width_as_millimeter(tw_chip_width quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_chip_width tw_chip_width_micrometer(double value)
{
    tw_chip_width made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_chip_width_as_micrometer(tw_chip_width quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_chip_width tw_chip_width_centimeter(double value)
{
    tw_chip_width made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chip_width_as_centimeter(tw_chip_width quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_chip_width tw_chip_width_meter(double value)
{
    tw_chip_width made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chip_width_as_meter(tw_chip_width quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_chip_width tw_chip_width_inch(double value)
{
    tw_chip_width made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_chip_width_as_inch(tw_chip_width quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_chip_width tw_chip_width_inch_fraction(double numerator, double denominator)
{
    tw_chip_width made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_chip_width tw_chip_width_foot(double value)
{
    tw_chip_width made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_chip_width_as_foot(tw_chip_width quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_chip_width tw_chip_width_thousandth_inch(double value)
{
    tw_chip_width made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_chip_width_as_thousandth_inch(tw_chip_width quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_removal_rate tw_removal_rate_cubic_centimeter_per_minute(double value)
{
    tw_removal_rate made;
    made.cm3_per_min = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_removal_rate_as_cubic_centimeter_per_minute(tw_removal_rate quantity)
{
    return quantity.cm3_per_min * 1.0 / 1.0;
}

static inline tw_removal_rate tw_removal_rate_cubic_millimeter_per_minute(double value)
{
    tw_removal_rate made;
    made.cm3_per_min = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_removal_rate_as_cubic_millimeter_per_minute(tw_removal_rate quantity)
{
    return quantity.cm3_per_min * 1000.0 / 1.0;
}

static inline tw_removal_rate tw_removal_rate_cubic_inch_per_minute(double value)
{
    tw_removal_rate made;
    made.cm3_per_min = value * 16.387064 / (1.0 * 1.0);
    return made;
}

static inline double tw_removal_rate_as_cubic_inch_per_minute(tw_removal_rate quantity)
{
    return quantity.cm3_per_min * 1.0 / 16.387064;
}

static inline tw_handwheel tw_handwheel_turn_per_minute(double value)
{
    tw_handwheel made;
    made.turns_per_min = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_handwheel_as_turn_per_minute(tw_handwheel quantity)
{
    return quantity.turns_per_min * 1.0 / 1.0;
}

static inline tw_efficiency tw_efficiency_one(double value)
{
    tw_efficiency made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_efficiency_as_one(tw_efficiency quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_length_over_diameter tw_length_over_diameter_one(double value)
{
    tw_length_over_diameter made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_length_over_diameter_as_one(tw_length_over_diameter quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_hardness_hb tw_hardness_hb_one(double value)
{
    tw_hardness_hb made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_hardness_hb_as_one(tw_hardness_hb quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_rise tw_rise_kelvin(double value)
{
    tw_rise made;
    made.k = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rise_as_kelvin(tw_rise quantity)
{
    return quantity.k * 1.0 / 1.0;
}

static inline tw_rise tw_rise_fahrenheit_step(double value)
{
    tw_rise made;
    made.k = value * 5.0 / (1.0 * 9.0);
    return made;
}

static inline double tw_rise_as_fahrenheit_step(tw_rise quantity)
{
    return quantity.k * 9.0 / 5.0;
}

static inline tw_growth tw_growth_millimeter(double value)
{
    tw_growth made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_growth_as_millimeter(tw_growth quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_growth tw_growth_micrometer(double value)
{
    tw_growth made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_growth_as_micrometer(tw_growth quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_growth tw_growth_centimeter(double value)
{
    tw_growth made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_growth_as_centimeter(tw_growth quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_growth tw_growth_meter(double value)
{
    tw_growth made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_growth_as_meter(tw_growth quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_growth tw_growth_inch(double value)
{
    tw_growth made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_growth_as_inch(tw_growth quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_growth tw_growth_inch_fraction(double numerator, double denominator)
{
    tw_growth made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_growth tw_growth_foot(double value)
{
    tw_growth made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_growth_as_foot(tw_growth quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_growth tw_growth_thousandth_inch(double value)
{
    tw_growth made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_growth_as_thousandth_inch(tw_growth quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_taper_ratio tw_taper_ratio_one(double value)
{
    tw_taper_ratio made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_taper_ratio_as_one(tw_taper_ratio quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_half_angle tw_half_angle_degree(double value)
{
    tw_half_angle made;
    made.deg = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_half_angle_as_degree(tw_half_angle quantity)
{
    return quantity.deg * 1.0 / 1.0;
}

static inline tw_half_angle tw_half_angle_radian(double value)
{
    tw_half_angle made;
    made.deg = value * 180.0 / (1.0 * 3.141592653589793);
    return made;
}

static inline double tw_half_angle_as_radian(tw_half_angle quantity)
{
    return quantity.deg * 3.141592653589793 / 180.0;
}

static inline tw_included_angle tw_included_angle_degree(double value)
{
    tw_included_angle made;
    made.deg = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_included_angle_as_degree(tw_included_angle quantity)
{
    return quantity.deg * 1.0 / 1.0;
}

static inline tw_included_angle tw_included_angle_radian(double value)
{
    tw_included_angle made;
    made.deg = value * 180.0 / (1.0 * 3.141592653589793);
    return made;
}

static inline double tw_included_angle_as_radian(tw_included_angle quantity)
{
    return quantity.deg * 3.141592653589793 / 180.0;
}

static inline tw_compound_angle tw_compound_angle_degree(double value)
{
    tw_compound_angle made;
    made.deg = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_compound_angle_as_degree(tw_compound_angle quantity)
{
    return quantity.deg * 1.0 / 1.0;
}

static inline tw_compound_angle tw_compound_angle_radian(double value)
{
    tw_compound_angle made;
    made.deg = value * 180.0 / (1.0 * 3.141592653589793);
    return made;
}

static inline double tw_compound_angle_as_radian(tw_compound_angle quantity)
{
    return quantity.deg * 3.141592653589793 / 180.0;
}

static inline tw_set_over tw_set_over_millimeter(double value)
{
    tw_set_over made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_set_over_as_millimeter(tw_set_over quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_set_over tw_set_over_micrometer(double value)
{
    tw_set_over made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_set_over_as_micrometer(tw_set_over quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_set_over tw_set_over_centimeter(double value)
{
    tw_set_over made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_set_over_as_centimeter(tw_set_over quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_set_over tw_set_over_meter(double value)
{
    tw_set_over made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_set_over_as_meter(tw_set_over quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_set_over tw_set_over_inch(double value)
{
    tw_set_over made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_set_over_as_inch(tw_set_over quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_set_over tw_set_over_inch_fraction(double numerator, double denominator)
{
    tw_set_over made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_set_over tw_set_over_foot(double value)
{
    tw_set_over made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_set_over_as_foot(tw_set_over quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_set_over tw_set_over_thousandth_inch(double value)
{
    tw_set_over made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_set_over_as_thousandth_inch(tw_set_over quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_life tw_life_second(double value)
{
    tw_life made;
    made.s = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_life_as_second(tw_life quantity)
{
    return quantity.s * 1.0 / 1.0;
}

static inline tw_life tw_life_minute(double value)
{
    tw_life made;
    made.s = value * 60.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_life_as_minute(tw_life quantity)
{
    return quantity.s * 1.0 / 60.0;
}

static inline tw_life tw_life_hour(double value)
{
    tw_life made;
    made.s = value * 3600.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_life_as_hour(tw_life quantity)
{
    return quantity.s * 1.0 / 3600.0;
}

static inline tw_life_exponent tw_life_exponent_one(double value)
{
    tw_life_exponent made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_life_exponent_as_one(tw_life_exponent quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_life_constant tw_life_constant_meter_per_minute(double value)
{
    tw_life_constant made;
    made.m_per_min = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_life_constant_as_meter_per_minute(tw_life_constant quantity)
{
    return quantity.m_per_min * 1.0 / 1.0;
}

static inline tw_life_constant tw_life_constant_meter_per_second(double value)
{
    tw_life_constant made;
    made.m_per_min = value * 60.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_life_constant_as_meter_per_second(tw_life_constant quantity)
{
    return quantity.m_per_min * 1.0 / 60.0;
}

static inline tw_life_constant tw_life_constant_foot_per_minute(double value)
{
    tw_life_constant made;
    made.m_per_min = value * 3048.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_life_constant_as_foot_per_minute(tw_life_constant quantity)
{
    return quantity.m_per_min * 10000.0 / 3048.0;
}

static inline tw_axial_force tw_axial_force_newton(double value)
{
    tw_axial_force made;
    made.n = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_axial_force_as_newton(tw_axial_force quantity)
{
    return quantity.n * 1.0 / 1.0;
}

static inline tw_axial_force tw_axial_force_kilonewton(double value)
{
    tw_axial_force made;
    made.n = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_axial_force_as_kilonewton(tw_axial_force quantity)
{
    return quantity.n * 1.0 / 1000.0;
}

static inline tw_axial_force tw_axial_force_pound_force(double value)
{
    tw_axial_force made;
    made.n = value * 4.4482216152605 / (1.0 * 1.0);
    return made;
}

static inline double tw_axial_force_as_pound_force(tw_axial_force quantity)
{
    return quantity.n * 1.0 / 4.4482216152605;
}

static inline tw_axial_stiffness tw_axial_stiffness_kilonewton_per_millimeter(double value)
{
    tw_axial_stiffness made;
    made.kn_per_mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_axial_stiffness_as_kilonewton_per_millimeter(tw_axial_stiffness quantity)
{
    return quantity.kn_per_mm * 1.0 / 1.0;
}

static inline tw_axial_stiffness tw_axial_stiffness_newton_per_micrometer(double value)
{
    tw_axial_stiffness made;
    made.kn_per_mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_axial_stiffness_as_newton_per_micrometer(tw_axial_stiffness quantity)
{
    return quantity.kn_per_mm * 1.0 / 1.0;
}

static inline tw_axial_stiffness tw_axial_stiffness_newton_per_millimeter(double value)
{
    tw_axial_stiffness made;
    made.kn_per_mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_axial_stiffness_as_newton_per_millimeter(tw_axial_stiffness quantity)
{
    return quantity.kn_per_mm * 1000.0 / 1.0;
}

static inline tw_axial_stiffness tw_axial_stiffness_pound_force_per_inch(double value)
{
    tw_axial_stiffness made;
    made.kn_per_mm = value * 4.4482216152605 / (1.0 * 25400.0);
    return made;
}

static inline double tw_axial_stiffness_as_pound_force_per_inch(tw_axial_stiffness quantity)
{
    return quantity.kn_per_mm * 25400.0 / 4.4482216152605;
}

static inline tw_tool_height tw_tool_height_millimeter(double value)
{
    tw_tool_height made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_tool_height_as_millimeter(tw_tool_height quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_tool_height tw_tool_height_micrometer(double value)
{
    tw_tool_height made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_tool_height_as_micrometer(tw_tool_height quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_tool_height tw_tool_height_centimeter(double value)
{
    tw_tool_height made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_tool_height_as_centimeter(tw_tool_height quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_tool_height tw_tool_height_meter(double value)
{
    tw_tool_height made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_tool_height_as_meter(tw_tool_height quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_tool_height tw_tool_height_inch(double value)
{
    tw_tool_height made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_tool_height_as_inch(tw_tool_height quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_tool_height tw_tool_height_inch_fraction(double numerator, double denominator)
{
    tw_tool_height made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_tool_height tw_tool_height_foot(double value)
{
    tw_tool_height made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_tool_height_as_foot(tw_tool_height quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_tool_height tw_tool_height_thousandth_inch(double value)
{
    tw_tool_height made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_tool_height_as_thousandth_inch(tw_tool_height quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_first_critical_speed tw_first_critical_speed_revolution_per_minute(double value)
{
    tw_first_critical_speed made;
    made.rpm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_first_critical_speed_as_revolution_per_minute(tw_first_critical_speed quantity)
{
    return quantity.rpm * 1.0 / 1.0;
}

static inline tw_first_critical_speed tw_first_critical_speed_revolution_per_second(double value)
{
    tw_first_critical_speed made;
    made.rpm = value * 60.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_first_critical_speed_as_revolution_per_second(tw_first_critical_speed quantity)
{
    return quantity.rpm * 1.0 / 60.0;
}

static inline tw_feed_unevenness tw_feed_unevenness_one(double value)
{
    tw_feed_unevenness made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_feed_unevenness_as_one(tw_feed_unevenness quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_width tw_width_millimeter(double value)
{
    tw_width made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_width_as_millimeter(tw_width quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_width tw_width_micrometer(double value)
{
    tw_width made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_width_as_micrometer(tw_width quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_width tw_width_centimeter(double value)
{
    tw_width made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_width_as_centimeter(tw_width quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_width tw_width_meter(double value)
{
    tw_width made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_width_as_meter(tw_width quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_width tw_width_inch(double value)
{
    tw_width made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_width_as_inch(tw_width quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_width tw_width_inch_fraction(double numerator, double denominator)
{
    tw_width made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_width tw_width_foot(double value)
{
    tw_width made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_width_as_foot(tw_width quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_width tw_width_thousandth_inch(double value)
{
    tw_width made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_width_as_thousandth_inch(tw_width quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_force_factor tw_force_factor_one(double value)
{
    tw_force_factor made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_force_factor_as_one(tw_force_factor quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_force_scatter tw_force_scatter_one(double value)
{
    tw_force_scatter made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_force_scatter_as_one(tw_force_scatter quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_rsk tw_rsk_one(double value)
{
    tw_rsk made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rsk_as_one(tw_rsk quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_rku tw_rku_one(double value)
{
    tw_rku made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rku_as_one(tw_rku quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_rsm tw_rsm_millimeter(double value)
{
    tw_rsm made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rsm_as_millimeter(tw_rsm quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_rsm tw_rsm_micrometer(double value)
{
    tw_rsm made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_rsm_as_micrometer(tw_rsm quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_rsm tw_rsm_centimeter(double value)
{
    tw_rsm made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rsm_as_centimeter(tw_rsm quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_rsm tw_rsm_meter(double value)
{
    tw_rsm made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_rsm_as_meter(tw_rsm quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_rsm tw_rsm_inch(double value)
{
    tw_rsm made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_rsm_as_inch(tw_rsm quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_rsm tw_rsm_inch_fraction(double numerator, double denominator)
{
    tw_rsm made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_rsm tw_rsm_foot(double value)
{
    tw_rsm made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_rsm_as_foot(tw_rsm quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_rsm tw_rsm_thousandth_inch(double value)
{
    tw_rsm made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_rsm_as_thousandth_inch(tw_rsm quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_cut_off tw_cut_off_millimeter(double value)
{
    tw_cut_off made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_cut_off_as_millimeter(tw_cut_off quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_cut_off tw_cut_off_micrometer(double value)
{
    tw_cut_off made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_cut_off_as_micrometer(tw_cut_off quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_cut_off tw_cut_off_centimeter(double value)
{
    tw_cut_off made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_cut_off_as_centimeter(tw_cut_off quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_cut_off tw_cut_off_meter(double value)
{
    tw_cut_off made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_cut_off_as_meter(tw_cut_off quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_cut_off tw_cut_off_inch(double value)
{
    tw_cut_off made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_cut_off_as_inch(tw_cut_off quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_cut_off tw_cut_off_inch_fraction(double numerator, double denominator)
{
    tw_cut_off made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_cut_off tw_cut_off_foot(double value)
{
    tw_cut_off made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_cut_off_as_foot(tw_cut_off quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_cut_off tw_cut_off_thousandth_inch(double value)
{
    tw_cut_off made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_cut_off_as_thousandth_inch(tw_cut_off quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_short_cut_off tw_short_cut_off_millimeter(double value)
{
    tw_short_cut_off made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_short_cut_off_as_millimeter(tw_short_cut_off quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_short_cut_off tw_short_cut_off_micrometer(double value)
{
    tw_short_cut_off made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_short_cut_off_as_micrometer(tw_short_cut_off quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_short_cut_off tw_short_cut_off_centimeter(double value)
{
    tw_short_cut_off made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_short_cut_off_as_centimeter(tw_short_cut_off quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_short_cut_off tw_short_cut_off_meter(double value)
{
    tw_short_cut_off made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_short_cut_off_as_meter(tw_short_cut_off quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_short_cut_off tw_short_cut_off_inch(double value)
{
    tw_short_cut_off made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_short_cut_off_as_inch(tw_short_cut_off quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_short_cut_off tw_short_cut_off_inch_fraction(double numerator, double denominator)
{
    tw_short_cut_off made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_short_cut_off tw_short_cut_off_foot(double value)
{
    tw_short_cut_off made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_short_cut_off_as_foot(tw_short_cut_off quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_short_cut_off tw_short_cut_off_thousandth_inch(double value)
{
    tw_short_cut_off made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_short_cut_off_as_thousandth_inch(tw_short_cut_off quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_bending_moment tw_bending_moment_newton_meter(double value)
{
    tw_bending_moment made;
    made.nm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_bending_moment_as_newton_meter(tw_bending_moment quantity)
{
    return quantity.nm * 1.0 / 1.0;
}

static inline tw_bending_moment tw_bending_moment_kilonewton_meter(double value)
{
    tw_bending_moment made;
    made.nm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_bending_moment_as_kilonewton_meter(tw_bending_moment quantity)
{
    return quantity.nm * 1.0 / 1000.0;
}

static inline tw_bending_moment tw_bending_moment_pound_force_foot(double value)
{
    tw_bending_moment made;
    made.nm = value * 1.3558179483314003 / (1.0 * 1.0);
    return made;
}

static inline double tw_bending_moment_as_pound_force_foot(tw_bending_moment quantity)
{
    return quantity.nm * 1.0 / 1.3558179483314003;
}

static inline tw_bending_moment tw_bending_moment_pound_force_inch(double value)
{
    tw_bending_moment made;
    made.nm = value * 1.3558179483314003 / (1.0 * 12.0);
    return made;
}

static inline double tw_bending_moment_as_pound_force_inch(tw_bending_moment quantity)
{
    return quantity.nm * 12.0 / 1.3558179483314003;
}

static inline tw_eccentricity tw_eccentricity_millimeter(double value)
{
    tw_eccentricity made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_eccentricity_as_millimeter(tw_eccentricity quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_eccentricity tw_eccentricity_micrometer(double value)
{
    tw_eccentricity made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_eccentricity_as_micrometer(tw_eccentricity quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_eccentricity tw_eccentricity_centimeter(double value)
{
    tw_eccentricity made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_eccentricity_as_centimeter(tw_eccentricity quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_eccentricity tw_eccentricity_meter(double value)
{
    tw_eccentricity made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_eccentricity_as_meter(tw_eccentricity quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_eccentricity tw_eccentricity_inch(double value)
{
    tw_eccentricity made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_eccentricity_as_inch(tw_eccentricity quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_eccentricity tw_eccentricity_inch_fraction(double numerator, double denominator)
{
    tw_eccentricity made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_eccentricity tw_eccentricity_foot(double value)
{
    tw_eccentricity made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_eccentricity_as_foot(tw_eccentricity quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_eccentricity tw_eccentricity_thousandth_inch(double value)
{
    tw_eccentricity made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_eccentricity_as_thousandth_inch(tw_eccentricity quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_specific_force_at_chip tw_specific_force_at_chip_megapascal(double value)
{
    tw_specific_force_at_chip made;
    made.mpa = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_specific_force_at_chip_as_megapascal(tw_specific_force_at_chip quantity)
{
    return quantity.mpa * 1.0 / 1.0;
}

static inline tw_specific_force_at_chip tw_specific_force_at_chip_newton_per_square_millimeter(double value)
{
    tw_specific_force_at_chip made;
    made.mpa = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_specific_force_at_chip_as_newton_per_square_millimeter(tw_specific_force_at_chip quantity)
{
    return quantity.mpa * 1.0 / 1.0;
}

static inline tw_specific_force_at_chip tw_specific_force_at_chip_gigapascal(double value)
{
    tw_specific_force_at_chip made;
    made.mpa = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_specific_force_at_chip_as_gigapascal(tw_specific_force_at_chip quantity)
{
    return quantity.mpa * 1.0 / 1000.0;
}

static inline tw_specific_force_at_chip tw_specific_force_at_chip_pound_per_square_inch(double value)
{
    tw_specific_force_at_chip made;
    made.mpa = value * 6894.757293168361 / (1.0 * 1000000.0);
    return made;
}

static inline double tw_specific_force_at_chip_as_pound_per_square_inch(tw_specific_force_at_chip quantity)
{
    return quantity.mpa * 1000000.0 / 6894.757293168361;
}

static inline tw_specific_force_at_chip tw_specific_force_at_chip_kilopound_per_square_inch(double value)
{
    tw_specific_force_at_chip made;
    made.mpa = value * 6894.757293168361 / (1.0 * 1000.0);
    return made;
}

static inline double tw_specific_force_at_chip_as_kilopound_per_square_inch(tw_specific_force_at_chip quantity)
{
    return quantity.mpa * 1000.0 / 6894.757293168361;
}

static inline tw_specific_force_at_chip tw_specific_force_at_chip_horsepower_minute_per_cubic_inch(double value)
{
    tw_specific_force_at_chip made;
    made.mpa = value * 44741.99229493621 / (1.0 * 16.387064);
    return made;
}

static inline double tw_specific_force_at_chip_as_horsepower_minute_per_cubic_inch(tw_specific_force_at_chip quantity)
{
    return quantity.mpa * 16.387064 / 44741.99229493621;
}

static inline tw_price tw_price_one(double value)
{
    tw_price made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_price_as_one(tw_price quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_price_per_hour tw_price_per_hour_one(double value)
{
    tw_price_per_hour made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_price_per_hour_as_one(tw_price_per_hour quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_mass tw_mass_kilogram(double value)
{
    tw_mass made;
    made.kg = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_mass_as_kilogram(tw_mass quantity)
{
    return quantity.kg * 1.0 / 1.0;
}

static inline tw_mass tw_mass_gram(double value)
{
    tw_mass made;
    made.kg = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_mass_as_gram(tw_mass quantity)
{
    return quantity.kg * 1000.0 / 1.0;
}

static inline tw_mass tw_mass_pound(double value)
{
    tw_mass made;
    made.kg = value * 0.45359237 / (1.0 * 1.0);
    return made;
}

static inline double tw_mass_as_pound(tw_mass quantity)
{
    return quantity.kg * 1.0 / 0.45359237;
}

static inline tw_heat_share tw_heat_share_one(double value)
{
    tw_heat_share made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_heat_share_as_one(tw_heat_share quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_chip_area tw_chip_area_square_millimeter(double value)
{
    tw_chip_area made;
    made.mm2 = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chip_area_as_square_millimeter(tw_chip_area quantity)
{
    return quantity.mm2 * 1.0 / 1.0;
}

static inline tw_chip_area tw_chip_area_square_inch(double value)
{
    tw_chip_area made;
    made.mm2 = value * 64516.0 / (1.0 * 100.0);
    return made;
}

static inline double tw_chip_area_as_square_inch(tw_chip_area quantity)
{
    return quantity.mm2 * 100.0 / 64516.0;
}

static inline tw_edge_length tw_edge_length_millimeter(double value)
{
    tw_edge_length made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_edge_length_as_millimeter(tw_edge_length quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_edge_length tw_edge_length_micrometer(double value)
{
    tw_edge_length made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_edge_length_as_micrometer(tw_edge_length quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_edge_length tw_edge_length_centimeter(double value)
{
    tw_edge_length made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_edge_length_as_centimeter(tw_edge_length quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_edge_length tw_edge_length_meter(double value)
{
    tw_edge_length made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_edge_length_as_meter(tw_edge_length quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_edge_length tw_edge_length_inch(double value)
{
    tw_edge_length made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_edge_length_as_inch(tw_edge_length quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_edge_length tw_edge_length_inch_fraction(double numerator, double denominator)
{
    tw_edge_length made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_edge_length tw_edge_length_foot(double value)
{
    tw_edge_length made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_edge_length_as_foot(tw_edge_length quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_edge_length tw_edge_length_thousandth_inch(double value)
{
    tw_edge_length made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_edge_length_as_thousandth_inch(tw_edge_length quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_spring_share tw_spring_share_one(double value)
{
    tw_spring_share made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_spring_share_as_one(tw_spring_share quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_mean_pressure tw_mean_pressure_megapascal(double value)
{
    tw_mean_pressure made;
    made.mpa = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_mean_pressure_as_megapascal(tw_mean_pressure quantity)
{
    return quantity.mpa * 1.0 / 1.0;
}

static inline tw_mean_pressure tw_mean_pressure_newton_per_square_millimeter(double value)
{
    tw_mean_pressure made;
    made.mpa = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_mean_pressure_as_newton_per_square_millimeter(tw_mean_pressure quantity)
{
    return quantity.mpa * 1.0 / 1.0;
}

static inline tw_mean_pressure tw_mean_pressure_gigapascal(double value)
{
    tw_mean_pressure made;
    made.mpa = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_mean_pressure_as_gigapascal(tw_mean_pressure quantity)
{
    return quantity.mpa * 1.0 / 1000.0;
}

static inline tw_mean_pressure tw_mean_pressure_pound_per_square_inch(double value)
{
    tw_mean_pressure made;
    made.mpa = value * 6894.757293168361 / (1.0 * 1000000.0);
    return made;
}

static inline double tw_mean_pressure_as_pound_per_square_inch(tw_mean_pressure quantity)
{
    return quantity.mpa * 1000000.0 / 6894.757293168361;
}

static inline tw_mean_pressure tw_mean_pressure_kilopound_per_square_inch(double value)
{
    tw_mean_pressure made;
    made.mpa = value * 6894.757293168361 / (1.0 * 1000.0);
    return made;
}

static inline double tw_mean_pressure_as_kilopound_per_square_inch(tw_mean_pressure quantity)
{
    return quantity.mpa * 1000.0 / 6894.757293168361;
}

static inline tw_mean_pressure tw_mean_pressure_horsepower_minute_per_cubic_inch(double value)
{
    tw_mean_pressure made;
    made.mpa = value * 44741.99229493621 / (1.0 * 16.387064);
    return made;
}

static inline double tw_mean_pressure_as_horsepower_minute_per_cubic_inch(tw_mean_pressure quantity)
{
    return quantity.mpa * 16.387064 / 44741.99229493621;
}

static inline tw_friction tw_friction_one(double value)
{
    tw_friction made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_friction_as_one(tw_friction quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_grip_force tw_grip_force_newton(double value)
{
    tw_grip_force made;
    made.n = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_grip_force_as_newton(tw_grip_force quantity)
{
    return quantity.n * 1.0 / 1.0;
}

static inline tw_grip_force tw_grip_force_kilonewton(double value)
{
    tw_grip_force made;
    made.n = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_grip_force_as_kilonewton(tw_grip_force quantity)
{
    return quantity.n * 1.0 / 1000.0;
}

static inline tw_grip_force tw_grip_force_pound_force(double value)
{
    tw_grip_force made;
    made.n = value * 4.4482216152605 / (1.0 * 1.0);
    return made;
}

static inline double tw_grip_force_as_pound_force(tw_grip_force quantity)
{
    return quantity.n * 1.0 / 4.4482216152605;
}

static inline tw_shank_size tw_shank_size_millimeter(double value)
{
    tw_shank_size made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_shank_size_as_millimeter(tw_shank_size quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_shank_size tw_shank_size_micrometer(double value)
{
    tw_shank_size made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_shank_size_as_micrometer(tw_shank_size quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_shank_size tw_shank_size_centimeter(double value)
{
    tw_shank_size made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_shank_size_as_centimeter(tw_shank_size quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_shank_size tw_shank_size_meter(double value)
{
    tw_shank_size made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_shank_size_as_meter(tw_shank_size quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_shank_size tw_shank_size_inch(double value)
{
    tw_shank_size made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_shank_size_as_inch(tw_shank_size quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_shank_size tw_shank_size_inch_fraction(double numerator, double denominator)
{
    tw_shank_size made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_shank_size tw_shank_size_foot(double value)
{
    tw_shank_size made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_shank_size_as_foot(tw_shank_size quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_shank_size tw_shank_size_thousandth_inch(double value)
{
    tw_shank_size made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_shank_size_as_thousandth_inch(tw_shank_size quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_life_scatter tw_life_scatter_one(double value)
{
    tw_life_scatter made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_life_scatter_as_one(tw_life_scatter quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_compound_angle_from_cross_slide tw_compound_angle_from_cross_slide_degree(double value)
{
    tw_compound_angle_from_cross_slide made;
    made.deg = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_compound_angle_from_cross_slide_as_degree(tw_compound_angle_from_cross_slide quantity)
{
    return quantity.deg * 1.0 / 1.0;
}

static inline tw_compound_angle_from_cross_slide tw_compound_angle_from_cross_slide_radian(double value)
{
    tw_compound_angle_from_cross_slide made;
    made.deg = value * 180.0 / (1.0 * 3.141592653589793);
    return made;
}

static inline double tw_compound_angle_from_cross_slide_as_radian(tw_compound_angle_from_cross_slide quantity)
{
    return quantity.deg * 3.141592653589793 / 180.0;
}

static inline tw_tangential_deflection tw_tangential_deflection_millimeter(double value)
{
    tw_tangential_deflection made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_tangential_deflection_as_millimeter(tw_tangential_deflection quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_tangential_deflection tw_tangential_deflection_micrometer(double value)
{
    tw_tangential_deflection made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_tangential_deflection_as_micrometer(tw_tangential_deflection quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_tangential_deflection tw_tangential_deflection_centimeter(double value)
{
    tw_tangential_deflection made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_tangential_deflection_as_centimeter(tw_tangential_deflection quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_tangential_deflection tw_tangential_deflection_meter(double value)
{
    tw_tangential_deflection made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_tangential_deflection_as_meter(tw_tangential_deflection quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_tangential_deflection tw_tangential_deflection_inch(double value)
{
    tw_tangential_deflection made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_tangential_deflection_as_inch(tw_tangential_deflection quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_tangential_deflection tw_tangential_deflection_inch_fraction(double numerator, double denominator)
{
    tw_tangential_deflection made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_tangential_deflection tw_tangential_deflection_foot(double value)
{
    tw_tangential_deflection made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_tangential_deflection_as_foot(tw_tangential_deflection quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_tangential_deflection tw_tangential_deflection_thousandth_inch(double value)
{
    tw_tangential_deflection made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_tangential_deflection_as_thousandth_inch(tw_tangential_deflection quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_friction_angle tw_friction_angle_degree(double value)
{
    tw_friction_angle made;
    made.deg = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_friction_angle_as_degree(tw_friction_angle quantity)
{
    return quantity.deg * 1.0 / 1.0;
}

static inline tw_friction_angle tw_friction_angle_radian(double value)
{
    tw_friction_angle made;
    made.deg = value * 180.0 / (1.0 * 3.141592653589793);
    return made;
}

static inline double tw_friction_angle_as_radian(tw_friction_angle quantity)
{
    return quantity.deg * 3.141592653589793 / 180.0;
}

static inline tw_spacing tw_spacing_millimeter(double value)
{
    tw_spacing made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_spacing_as_millimeter(tw_spacing quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_spacing tw_spacing_micrometer(double value)
{
    tw_spacing made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_spacing_as_micrometer(tw_spacing quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_spacing tw_spacing_centimeter(double value)
{
    tw_spacing made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_spacing_as_centimeter(tw_spacing quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_spacing tw_spacing_meter(double value)
{
    tw_spacing made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_spacing_as_meter(tw_spacing quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_spacing tw_spacing_inch(double value)
{
    tw_spacing made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_spacing_as_inch(tw_spacing quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_spacing tw_spacing_inch_fraction(double numerator, double denominator)
{
    tw_spacing made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_spacing tw_spacing_foot(double value)
{
    tw_spacing made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_spacing_as_foot(tw_spacing quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_spacing tw_spacing_thousandth_inch(double value)
{
    tw_spacing made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_spacing_as_thousandth_inch(tw_spacing quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_transmission tw_transmission_one(double value)
{
    tw_transmission made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_transmission_as_one(tw_transmission quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_upper_deviation tw_upper_deviation_millimeter(double value)
{
    tw_upper_deviation made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_upper_deviation_as_millimeter(tw_upper_deviation quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_upper_deviation tw_upper_deviation_micrometer(double value)
{
    tw_upper_deviation made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_upper_deviation_as_micrometer(tw_upper_deviation quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_upper_deviation tw_upper_deviation_centimeter(double value)
{
    tw_upper_deviation made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_upper_deviation_as_centimeter(tw_upper_deviation quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_upper_deviation tw_upper_deviation_meter(double value)
{
    tw_upper_deviation made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_upper_deviation_as_meter(tw_upper_deviation quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_upper_deviation tw_upper_deviation_inch(double value)
{
    tw_upper_deviation made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_upper_deviation_as_inch(tw_upper_deviation quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_upper_deviation tw_upper_deviation_inch_fraction(double numerator, double denominator)
{
    tw_upper_deviation made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_upper_deviation tw_upper_deviation_foot(double value)
{
    tw_upper_deviation made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_upper_deviation_as_foot(tw_upper_deviation quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_upper_deviation tw_upper_deviation_thousandth_inch(double value)
{
    tw_upper_deviation made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_upper_deviation_as_thousandth_inch(tw_upper_deviation quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_lower_deviation tw_lower_deviation_millimeter(double value)
{
    tw_lower_deviation made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_lower_deviation_as_millimeter(tw_lower_deviation quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_lower_deviation tw_lower_deviation_micrometer(double value)
{
    tw_lower_deviation made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_lower_deviation_as_micrometer(tw_lower_deviation quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_lower_deviation tw_lower_deviation_centimeter(double value)
{
    tw_lower_deviation made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_lower_deviation_as_centimeter(tw_lower_deviation quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_lower_deviation tw_lower_deviation_meter(double value)
{
    tw_lower_deviation made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_lower_deviation_as_meter(tw_lower_deviation quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_lower_deviation tw_lower_deviation_inch(double value)
{
    tw_lower_deviation made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_lower_deviation_as_inch(tw_lower_deviation quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_lower_deviation tw_lower_deviation_inch_fraction(double numerator, double denominator)
{
    tw_lower_deviation made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_lower_deviation tw_lower_deviation_foot(double value)
{
    tw_lower_deviation made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_lower_deviation_as_foot(tw_lower_deviation quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_lower_deviation tw_lower_deviation_thousandth_inch(double value)
{
    tw_lower_deviation made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_lower_deviation_as_thousandth_inch(tw_lower_deviation quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_clearance tw_clearance_millimeter(double value)
{
    tw_clearance made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_clearance_as_millimeter(tw_clearance quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_clearance tw_clearance_micrometer(double value)
{
    tw_clearance made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_clearance_as_micrometer(tw_clearance quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_clearance tw_clearance_centimeter(double value)
{
    tw_clearance made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_clearance_as_centimeter(tw_clearance quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_clearance tw_clearance_meter(double value)
{
    tw_clearance made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_clearance_as_meter(tw_clearance quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_clearance tw_clearance_inch(double value)
{
    tw_clearance made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_clearance_as_inch(tw_clearance quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_clearance tw_clearance_inch_fraction(double numerator, double denominator)
{
    tw_clearance made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_clearance tw_clearance_foot(double value)
{
    tw_clearance made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_clearance_as_foot(tw_clearance quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_clearance tw_clearance_thousandth_inch(double value)
{
    tw_clearance made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_clearance_as_thousandth_inch(tw_clearance quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_standard_uncertainty tw_standard_uncertainty_millimeter(double value)
{
    tw_standard_uncertainty made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_standard_uncertainty_as_millimeter(tw_standard_uncertainty quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_standard_uncertainty tw_standard_uncertainty_micrometer(double value)
{
    tw_standard_uncertainty made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_standard_uncertainty_as_micrometer(tw_standard_uncertainty quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_standard_uncertainty tw_standard_uncertainty_centimeter(double value)
{
    tw_standard_uncertainty made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_standard_uncertainty_as_centimeter(tw_standard_uncertainty quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_standard_uncertainty tw_standard_uncertainty_meter(double value)
{
    tw_standard_uncertainty made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_standard_uncertainty_as_meter(tw_standard_uncertainty quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_standard_uncertainty tw_standard_uncertainty_inch(double value)
{
    tw_standard_uncertainty made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_standard_uncertainty_as_inch(tw_standard_uncertainty quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_standard_uncertainty tw_standard_uncertainty_inch_fraction(double numerator, double denominator)
{
    tw_standard_uncertainty made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_standard_uncertainty tw_standard_uncertainty_foot(double value)
{
    tw_standard_uncertainty made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_standard_uncertainty_as_foot(tw_standard_uncertainty quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_standard_uncertainty tw_standard_uncertainty_thousandth_inch(double value)
{
    tw_standard_uncertainty made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_standard_uncertainty_as_thousandth_inch(tw_standard_uncertainty quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_probability tw_probability_one(double value)
{
    tw_probability made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_probability_as_one(tw_probability quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_confidence tw_confidence_one(double value)
{
    tw_confidence made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_confidence_as_one(tw_confidence quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_coverage_factor tw_coverage_factor_one(double value)
{
    tw_coverage_factor made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_coverage_factor_as_one(tw_coverage_factor quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_degrees_of_freedom tw_degrees_of_freedom_one(double value)
{
    tw_degrees_of_freedom made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_degrees_of_freedom_as_one(tw_degrees_of_freedom quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_sensitivity tw_sensitivity_one(double value)
{
    tw_sensitivity made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_sensitivity_as_one(tw_sensitivity quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_correlation tw_correlation_one(double value)
{
    tw_correlation made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_correlation_as_one(tw_correlation quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_capability tw_capability_one(double value)
{
    tw_capability made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_capability_as_one(tw_capability quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_capability_index tw_capability_index_one(double value)
{
    tw_capability_index made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_capability_index_as_one(tw_capability_index quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_half_width tw_half_width_millimeter(double value)
{
    tw_half_width made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_half_width_as_millimeter(tw_half_width quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_half_width tw_half_width_micrometer(double value)
{
    tw_half_width made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_half_width_as_micrometer(tw_half_width quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_half_width tw_half_width_centimeter(double value)
{
    tw_half_width made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_half_width_as_centimeter(tw_half_width quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_half_width tw_half_width_meter(double value)
{
    tw_half_width made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_half_width_as_meter(tw_half_width quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_half_width tw_half_width_inch(double value)
{
    tw_half_width made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_half_width_as_inch(tw_half_width quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_half_width tw_half_width_inch_fraction(double numerator, double denominator)
{
    tw_half_width made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_half_width tw_half_width_foot(double value)
{
    tw_half_width made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_half_width_as_foot(tw_half_width quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_half_width tw_half_width_thousandth_inch(double value)
{
    tw_half_width made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_half_width_as_thousandth_inch(tw_half_width quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_resolution tw_resolution_millimeter(double value)
{
    tw_resolution made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_resolution_as_millimeter(tw_resolution quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_resolution tw_resolution_micrometer(double value)
{
    tw_resolution made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_resolution_as_micrometer(tw_resolution quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_resolution tw_resolution_centimeter(double value)
{
    tw_resolution made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_resolution_as_centimeter(tw_resolution quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_resolution tw_resolution_meter(double value)
{
    tw_resolution made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_resolution_as_meter(tw_resolution quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_resolution tw_resolution_inch(double value)
{
    tw_resolution made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_resolution_as_inch(tw_resolution quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_resolution tw_resolution_inch_fraction(double numerator, double denominator)
{
    tw_resolution made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_resolution tw_resolution_foot(double value)
{
    tw_resolution made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_resolution_as_foot(tw_resolution quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_resolution tw_resolution_thousandth_inch(double value)
{
    tw_resolution made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_resolution_as_thousandth_inch(tw_resolution quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_price_scrap tw_price_scrap_one(double value)
{
    tw_price_scrap made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_price_scrap_as_one(tw_price_scrap quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_price_rework tw_price_rework_one(double value)
{
    tw_price_rework made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_price_rework_as_one(tw_price_rework quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_price_stop tw_price_stop_one(double value)
{
    tw_price_stop made;
    made.ratio = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_price_stop_as_one(tw_price_stop quantity)
{
    return quantity.ratio * 1.0 / 1.0;
}

static inline tw_run_out tw_run_out_millimeter(double value)
{
    tw_run_out made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_run_out_as_millimeter(tw_run_out quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_run_out tw_run_out_micrometer(double value)
{
    tw_run_out made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_run_out_as_micrometer(tw_run_out quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_run_out tw_run_out_centimeter(double value)
{
    tw_run_out made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_run_out_as_centimeter(tw_run_out quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_run_out tw_run_out_meter(double value)
{
    tw_run_out made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_run_out_as_meter(tw_run_out quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_run_out tw_run_out_inch(double value)
{
    tw_run_out made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_run_out_as_inch(tw_run_out quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_run_out tw_run_out_inch_fraction(double numerator, double denominator)
{
    tw_run_out made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_run_out tw_run_out_foot(double value)
{
    tw_run_out made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_run_out_as_foot(tw_run_out quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_run_out tw_run_out_thousandth_inch(double value)
{
    tw_run_out made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_run_out_as_thousandth_inch(tw_run_out quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_skin_thickness tw_skin_thickness_millimeter(double value)
{
    tw_skin_thickness made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_skin_thickness_as_millimeter(tw_skin_thickness quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_skin_thickness tw_skin_thickness_micrometer(double value)
{
    tw_skin_thickness made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_skin_thickness_as_micrometer(tw_skin_thickness quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_skin_thickness tw_skin_thickness_centimeter(double value)
{
    tw_skin_thickness made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_skin_thickness_as_centimeter(tw_skin_thickness quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_skin_thickness tw_skin_thickness_meter(double value)
{
    tw_skin_thickness made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_skin_thickness_as_meter(tw_skin_thickness quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_skin_thickness tw_skin_thickness_inch(double value)
{
    tw_skin_thickness made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_skin_thickness_as_inch(tw_skin_thickness quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_skin_thickness tw_skin_thickness_inch_fraction(double numerator, double denominator)
{
    tw_skin_thickness made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_skin_thickness tw_skin_thickness_foot(double value)
{
    tw_skin_thickness made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_skin_thickness_as_foot(tw_skin_thickness quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_skin_thickness tw_skin_thickness_thousandth_inch(double value)
{
    tw_skin_thickness made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_skin_thickness_as_thousandth_inch(tw_skin_thickness quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

static inline tw_chamfer_leg tw_chamfer_leg_millimeter(double value)
{
    tw_chamfer_leg made;
    made.mm = value * 1.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chamfer_leg_as_millimeter(tw_chamfer_leg quantity)
{
    return quantity.mm * 1.0 / 1.0;
}

static inline tw_chamfer_leg tw_chamfer_leg_micrometer(double value)
{
    tw_chamfer_leg made;
    made.mm = value * 1.0 / (1.0 * 1000.0);
    return made;
}

static inline double tw_chamfer_leg_as_micrometer(tw_chamfer_leg quantity)
{
    return quantity.mm * 1000.0 / 1.0;
}

static inline tw_chamfer_leg tw_chamfer_leg_centimeter(double value)
{
    tw_chamfer_leg made;
    made.mm = value * 10.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chamfer_leg_as_centimeter(tw_chamfer_leg quantity)
{
    return quantity.mm * 1.0 / 10.0;
}

static inline tw_chamfer_leg tw_chamfer_leg_meter(double value)
{
    tw_chamfer_leg made;
    made.mm = value * 1000.0 / (1.0 * 1.0);
    return made;
}

static inline double tw_chamfer_leg_as_meter(tw_chamfer_leg quantity)
{
    return quantity.mm * 1.0 / 1000.0;
}

static inline tw_chamfer_leg tw_chamfer_leg_inch(double value)
{
    tw_chamfer_leg made;
    made.mm = value * 254.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_chamfer_leg_as_inch(tw_chamfer_leg quantity)
{
    return quantity.mm * 10.0 / 254.0;
}

static inline tw_chamfer_leg tw_chamfer_leg_inch_fraction(double numerator, double denominator)
{
    tw_chamfer_leg made;
    made.mm = numerator * 254.0 / (denominator * 10.0);
    return made;
}

static inline tw_chamfer_leg tw_chamfer_leg_foot(double value)
{
    tw_chamfer_leg made;
    made.mm = value * 3048.0 / (1.0 * 10.0);
    return made;
}

static inline double tw_chamfer_leg_as_foot(tw_chamfer_leg quantity)
{
    return quantity.mm * 10.0 / 3048.0;
}

static inline tw_chamfer_leg tw_chamfer_leg_thousandth_inch(double value)
{
    tw_chamfer_leg made;
    made.mm = value * 254.0 / (1.0 * 10000.0);
    return made;
}

static inline double tw_chamfer_leg_as_thousandth_inch(tw_chamfer_leg quantity)
{
    return quantity.mm * 10000.0 / 254.0;
}

#endif /* TURNWRIGHT_H_INLINE */
