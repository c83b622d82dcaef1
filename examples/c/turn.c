/*
 * turnwright from C: a scalar call, a call that goes wrong and says so, and the plan of a job.
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

/* The first few texts of the steps of a sheet. A real program reads the JSON with its own reader. */
static void print_steps(const char *sheet, int most)
{
    static const char mark[] = "\"text\":\"";
    const char *at = strstr(sheet, "\"steps\":");
    int number;

    for (number = 1; at != NULL && number <= most; number++) {
        at = strstr(at, mark);
        if (at == NULL) {
            break;
        }
        at += sizeof mark - 1;
        printf("%d. ", number);
        for (; *at != '\0' && *at != '"'; at++) {
            if (*at == '\\' && at[1] != '\0') {
                at++;
            }
            putchar(*at);
        }
        putchar('\n');
    }
}

int main(int argc, char **argv)
{
    tw_error error;
    tw_spindle_speed speed;
    tw_rt height;
    char *question, *answer;

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

    /* 3. The plan of a job. */
    if (argc < 2) {
        printf("usage: turn JOB.json\n");
        return EXIT_FAILURE;
    }
    question = text_of(argv[1]);
    if (question == NULL) {
        printf("%s cannot be read\n", argv[1]);
        return EXIT_FAILURE;
    }
    if (tw_answer(question, &answer, &error) != TW_OK) {
        complain(&error);
        free(question);
        return EXIT_FAILURE;
    }
    free(question);
    printf("An invented job on an invented lathe; its first steps:\n");
    print_steps(answer, 6);
    tw_text_free(answer);
    return EXIT_SUCCESS;
}
