/*
 * What turnwright.bas declares lies in memory as turnwright.h says it does: sizes, places, numbers.
 * Nothing runs; it compiles, or it does not. The header of the library and the declaration cannot be
 * read by one program with the calls in them, so the declared call is renamed here.
 */
#include <turnwright.h>

#define tw_spindle_speed_for_column declared_call
#include "declared.h"
#undef tw_spindle_speed_for_column

#define SAME_PLACE(ours, our_member, theirs, their_member)                                         \
    _Static_assert(offsetof(ours, our_member) == offsetof(theirs, their_member), #our_member);     \
    _Static_assert(sizeof(((ours *)0)->our_member) == sizeof(((theirs *)0)->their_member),         \
                   #our_member)

_Static_assert(sizeof(TwColumn) == sizeof(tw_column), "tw_column");
SAME_PLACE(TwColumn, Data, tw_column, data);
SAME_PLACE(TwColumn, StrideBytes, tw_column, stride_bytes);
SAME_PLACE(TwColumn, Count, tw_column, count);
SAME_PLACE(TwColumn, Quantity, tw_column, quantity);
SAME_PLACE(TwColumn, Unit, tw_column, unit);

_Static_assert(sizeof(TwColumn) == sizeof(tw_out_column), "tw_out_column");
SAME_PLACE(TwColumn, Data, tw_out_column, data);
SAME_PLACE(TwColumn, StrideBytes, tw_out_column, stride_bytes);
SAME_PLACE(TwColumn, Count, tw_out_column, count);
SAME_PLACE(TwColumn, Quantity, tw_out_column, quantity);
SAME_PLACE(TwColumn, Unit, tw_out_column, unit);

_Static_assert(sizeof(TwError) == sizeof(tw_error), "tw_error");
SAME_PLACE(TwError, StructSize, tw_error, struct_size);
SAME_PLACE(TwError, Status, tw_error, status);
SAME_PLACE(TwError, Row, tw_error, row);
SAME_PLACE(TwError, Field, tw_error, field);
SAME_PLACE(TwError, Given, tw_error, given);
SAME_PLACE(TwError, Expected, tw_error, expected);
SAME_PLACE(TwError, Remedy, tw_error, remedy);
SAME_PLACE(TwError, FieldLength, tw_error, field_length);
SAME_PLACE(TwError, GivenLength, tw_error, given_length);
SAME_PLACE(TwError, ExpectedLength, tw_error, expected_length);
SAME_PLACE(TwError, RemedyLength, tw_error, remedy_length);
SAME_PLACE(TwError, RowsBad, tw_error, rows_bad);
SAME_PLACE(TwError, RowStatus, tw_error, row_status);
SAME_PLACE(TwError, Reserved, tw_error, reserved);

#define SAME_NUMBER(name) _Static_assert((int)bas_##name == (int)name, #name);
BAS_CONSTANTS(SAME_NUMBER)

/* The same number of arguments, each of the same width and kind: an address or a whole number. */
static int32_t same_arguments(const tw_column *v, const tw_column *d, const tw_out_column *n,
                              int32_t *row_status, size_t stride, tw_error *detail)
{
    return declared_call((TwColumn *)v, (TwColumn *)d, (TwColumn *)n, row_status, (intptr_t)stride,
                         (TwError *)detail);
}
_Static_assert(_Generic(&tw_spindle_speed_for_column,
                   tw_status (*)(const tw_column *, const tw_column *, const tw_out_column *,
                                 int32_t *, size_t, tw_error *): 1,
                   default: 0),
               "the call of the header has other arguments");
_Static_assert(_Generic(&declared_call,
                   int32_t (*)(TwColumn *, TwColumn *, TwColumn *, int32_t *, intptr_t,
                               TwError *): 1,
                   default: 0),
               "the declared call has other arguments");
int32_t (*const keep)(const tw_column *, const tw_column *, const tw_out_column *, int32_t *, size_t,
                      tw_error *) = same_arguments;
