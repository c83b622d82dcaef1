/*
 * turnwright from C: a scalar call, a call that goes wrong and says so, a column call with a bad row,
 * and the plan of a job.
 *
 * Build and run, from the root of the crate (Linux):
 *
 *   cargo build --release --features capi
 *   cc -std=c99 -Iinclude examples/c/turn.c -o turn \
 *      -Ltarget/release -lturnwright -Wl,-rpath,"$PWD/target/release"
 *   ./turn examples/c/job.json
 *
 * or with the static library: put target/release/libturnwright.a -lpthread -ldl -lm in place of
 * the second line of options. The same file is C++11.
 *
 * The job is invented, and so is the lathe it is for.
 */
#include <turnwright.h>

#include <stdio.h>
#include <stdlib.h>

static void complain(const tw_error *error)
{
    printf("%s: %s given; expected %s; %s. (status %d: %s)\n", error->field, error->given,
           error->expected, error->remedy, (int)error->status, tw_status_text(error->status));
}

/* The whole of a file, NUL-ended; NULL if it cannot be read. */
static char *text_of(const char *path)
{
    FILE *file = fopen(path, "rb");
    char *text = NULL;
    size_t room = 0, length = 0;

    while (file != NULL) {
        char *more;
        if (length + 1 >= room) {
            room = room == 0 ? 4096 : 2 * room;
            more = (char *)realloc(text, room);
            if (more == NULL) {
                free(text);
                text = NULL;
                break;
            }
            text = more;
        }
        length += fread(text + length, 1, room - length - 1, file);
        text[length] = '\0';
        if (feof(file) || ferror(file)) {
            break;
        }
    }
    if (file != NULL) {
        fclose(file);
    }
    return text;
}

/* Feeds of an invented list, one of them in metres by mistake: its row is bad, the others are not. */
static int print_heights(tw_error *error)
{
    static const double feeds[] = {0.1, 0.0002, 0.2};
    static const double corner = 0.8;
    double heights[3];
    int32_t statuses[3];
    tw_column feed = {NULL, sizeof(double), 3, TW_QUANTITY_FEED,
                      TW_UNIT_FEED_MILLIMETER_PER_REVOLUTION};
    tw_column radius = {NULL, sizeof(double), 1, TW_QUANTITY_CORNER_RADIUS,
                        TW_UNIT_LENGTH_MILLIMETER};
    tw_out_column height = {NULL, sizeof(double), 3, TW_QUANTITY_RT, TW_UNIT_ROUGHNESS_MICROMETER};
    tw_status status;
    int row;

    feed.data = feeds;
    radius.data = &corner; /* one value for all rows */
    height.data = heights;
    status = tw_arc_height_column(&feed, &radius, &height, statuses, sizeof statuses[0], error);
    if (status != TW_OK && status != TW_ROWS_BAD) {
        complain(error);
        return 0;
    }
    for (row = 0; row < 3; row++) {
        if (statuses[row] == TW_OK) {
            printf("row %d: %g mm/rev leaves ridges of %.17g um\n", row, feeds[row], heights[row]);
        } else {
            printf("row %d: %s\n", row, tw_status_text(statuses[row]));
        }
    }
    return 1;
}

/* The first few steps of a plan. */
static void print_steps(const tw_plan *plan, size_t most)
{
    size_t at, count = tw_plan_step_count(plan);
    tw_step step;

    tw_step_init(&step);
    for (at = 0; at < count && at < most; at++) {
        if (tw_plan_step(plan, at, &step, NULL) == TW_OK) {
            printf("%d. %s\n", (int)at + 1, step.text);
        }
    }
}

int main(int argc, char **argv)
{
    tw_error error;
    tw_spindle_speed speed;
    tw_rt height;
    tw_plan *plan;
    char *job, *svg;

    tw_error_init(&error);

    /* 1. A scalar call. Every quantity is a type: a radius for the diameter does not compile. */
    if (tw_spindle_speed_for(tw_cutting_speed_meter_per_minute(28.0), tw_diameter_inch(1.5), &speed,
                             &error) != TW_OK) {
        complain(&error);
        return EXIT_FAILURE;
    }
    printf("28 m/min on a bar of 1.5 in: %.17g rpm\n", speed.rpm);

    /* 2. A wrong call: a feed in metres, and what it is told. */
    if (tw_arc_height(tw_feed_millimeter_per_revolution(0.0002), tw_corner_radius_millimeter(0.8),
                      &height, &error) != TW_OK) {
        complain(&error);
    }
    if (tw_arc_height(tw_feed_millimeter_per_revolution(0.2), tw_corner_radius_millimeter(0.8),
                      &height, &error) != TW_OK) {
        complain(&error);
        return EXIT_FAILURE;
    }
    printf("0.2 mm/rev with a corner of 0.8 mm leaves ridges of %.17g um\n", height.um);

    /* 3. Many rows at once. */
    if (!print_heights(&error)) {
        return EXIT_FAILURE;
    }

    /* 4. The plan of a job; asked for as "picture" it is drawn instead. */
    if (argc < 2) {
        printf("usage: turn JOB.json [picture]\n");
        return EXIT_FAILURE;
    }
    job = text_of(argv[1]);
    if (job == NULL) {
        printf("%s cannot be read\n", argv[1]);
        return EXIT_FAILURE;
    }
    if (tw_plan_open(job, &plan, &error) != TW_OK) {
        complain(&error);
        free(job);
        return EXIT_FAILURE;
    }
    free(job);
    if (argc > 2) {
        if (tw_plan_picture(plan, 0, &svg, &error) != TW_OK) {
            complain(&error);
            tw_plan_free(&plan);
            return EXIT_FAILURE;
        }
        puts(svg);
        tw_text_free(svg);
    } else {
        printf("An invented job on an invented lathe; its first steps:\n");
        print_steps(plan, 6);
    }
    tw_plan_free(&plan);
    return EXIT_SUCCESS;
}
