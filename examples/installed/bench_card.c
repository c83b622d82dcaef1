/*
 * A card of spindle speeds for the wall beside a lathe: invented diameters, at a cutting speed for
 * mild steel with a high-speed steel tool (common practice, no source).
 *
 * Built against an installed turnwright; check.sh shows with what.
 */
#include <turnwright.h>

#include <stdio.h>

int main(void)
{
    static const double diameters[] = {10.0, 25.0, 50.0, 100.0};
    size_t at;
    tw_error error;

    tw_error_init(&error);
    printf("turnwright %s\n", tw_version());
    for (at = 0; at < sizeof diameters / sizeof diameters[0]; at++) {
        tw_spindle_speed speed;
        if (tw_spindle_speed_for(tw_cutting_speed_meter_per_minute(28.0),
                                 tw_diameter_millimeter(diameters[at]), &speed, &error) != TW_OK) {
            fprintf(stderr, "%s: %s\n", error.field, error.remedy);
            return 1;
        }
        printf("%g mm: %.0f rpm\n", diameters[at], speed.rpm);
    }
    return 0;
}
