/*
 * Calls the library as turnwright.bas does, through what declarations.py made of it: plain doubles and
 * whole numbers by reference, the declared Types, the declared function. turnwright.h is not read.
 *
 *     by_reference METERS_PER_MINUTE MILLIMETERS
 *
 * prints the spindle speed, or status and field. examples/by_reference/check.sh builds and runs it.
 */
#include "declared.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* OneDouble of turnwright.bas. */
static TwColumn one_double(double *value, int32_t quantity, int32_t unit)
{
    TwColumn made;
    made.Data = (intptr_t)value;
    made.StrideBytes = 8;
    made.Count = 1;
    made.Quantity = quantity;
    made.Unit = unit;
    return made;
}

int main(int argc, char **argv)
{
    double meters_per_minute, millimeters, found = 0.0;
    int32_t row_status = 0, status;
    TwError detail;
    TwColumn v, d, n;

    if (argc != 3) {
        fprintf(stderr, "usage: by_reference METERS_PER_MINUTE MILLIMETERS\n");
        return 2;
    }
    meters_per_minute = strtod(argv[1], NULL);
    millimeters = strtod(argv[2], NULL);
    memset(&detail, 0, sizeof detail);
    detail.StructSize = (int32_t)sizeof detail;
    v = one_double(&meters_per_minute, bas_TW_QUANTITY_CUTTING_SPEED,
                   bas_TW_UNIT_CUTTING_SPEED_METER_PER_MINUTE);
    d = one_double(&millimeters, bas_TW_QUANTITY_DIAMETER, bas_TW_UNIT_LENGTH_MILLIMETER);
    n = one_double(&found, bas_TW_QUANTITY_SPINDLE_SPEED,
                   bas_TW_UNIT_SPINDLE_SPEED_REVOLUTION_PER_MINUTE);
    status = tw_spindle_speed_for_column(&v, &d, &n, &row_status, 4, &detail);
    if (status != bas_TW_OK) {
        printf("%d %d %d %s\n", (int)status, (int)row_status, (int)(found == found),
               (const char *)detail.Field);
        return 1;
    }
    printf("%.17g\n", found);
    return 0;
}
