/*
 * The edges of the interface: what is refused, how, and what outputs hold then.
 * Prints nothing and returns 0 when every promise holds.
 */
#include <turnwright.h>

#include <stdio.h>
#include <stdlib.h>

static int broken = 0;

#define CHECK(condition)                                                                           \
    do {                                                                                           \
        if (!(condition)) {                                                                        \
            printf("line %d: %s\n", __LINE__, #condition);                                         \
            broken = 1;                                                                            \
        }                                                                                          \
    } while (0)

#define IS_NAN(x) ((x) != (x))

static const tw_feed FEED = {0.2};
static const tw_corner_radius CORNER = {0.8};

static void scalar_calls(void)
{
    tw_error error;
    tw_rt rt = {1.0};
    tw_rz rz = {1.0};
    tw_ra ra = {1.0};
    tw_rq rq = {1.0};
    tw_main_force main_force = {1.0};
    tw_passive_force passive = {1.0};
    tw_deflection bent = {1.0};
    int32_t regime = 7;
    const tw_feed nothing = {NAN};
    const tw_cutting_edge_angle major = {95.0};
    const tw_minor_cutting_edge_angle minor = {5.0}, wide = {90.0};

    tw_error_init(&error);

    /* NaN: refused by name, the output is NaN. */
    CHECK(tw_arc_height(nothing, CORNER, &rt, &error) == TW_NOT_FINITE);
    CHECK(IS_NAN(rt.um));
    CHECK(error.status == TW_NOT_FINITE && strcmp(error.field, "feed") == 0);
    CHECK(error.given[0] != 0 && error.expected[0] != 0 && error.remedy[0] != 0);
    CHECK(error.remedy_length == strlen(error.remedy));
    CHECK(error.row == 0 && error.rows_bad == 0);

    /* A success cleans the detail; no detail is fine too. */
    CHECK(tw_arc_height(FEED, CORNER, &rt, &error) == TW_OK);
    CHECK(error.status == TW_OK && error.field[0] == 0 && error.remedy_length == 0);
    CHECK(rt.um > 6.27 && rt.um < 6.28);
    CHECK(tw_arc_height(nothing, CORNER, &rt, NULL) == TW_NOT_FINITE && IS_NAN(rt.um));

    /* Infinite, out of range, contradiction. */
    CHECK(tw_arc_height(tw_feed_millimeter_per_revolution(HUGE_VAL), CORNER, &rt, &error) ==
          TW_NOT_FINITE);
    CHECK(tw_arc_height(FEED, tw_corner_radius_millimeter(-1.0), &rt, &error) == TW_OUT_OF_RANGE);
    CHECK(strcmp(error.field, "corner_radius") == 0 && strcmp(error.given, "-1 mm") == 0);
    CHECK(tw_arc_height(tw_feed_millimeter_per_revolution(2.0), CORNER, &rt, &error) ==
          TW_CONTRADICTION);
    CHECK(IS_NAN(rt.um));

    /* No output at all; one of several. */
    CHECK(tw_arc_height(FEED, CORNER, NULL, &error) == TW_NULL_POINTER);
    CHECK(error.status == TW_NULL_POINTER);
    CHECK(tw_theoretical_roughness(FEED, CORNER, major, minor, NULL, NULL, NULL, NULL, NULL,
                                   &error) == TW_NULL_POINTER);
    CHECK(tw_theoretical_roughness(FEED, CORNER, major, minor, NULL, NULL, NULL, &ra, NULL,
                                   &error) == TW_OK);
    CHECK(ra.um > 1.5 && ra.um < 1.8);
    CHECK(tw_theoretical_roughness(FEED, CORNER, major, wide, &regime, &rt, &rz, &ra, &rq,
                                   &error) == TW_CONTRADICTION);
    CHECK(regime == 0 && IS_NAN(rt.um) && IS_NAN(rz.um) && IS_NAN(ra.um) && IS_NAN(rq.um));
    CHECK(strcmp(error.field, "minor_cutting_edge_angle") == 0);
    CHECK(tw_theoretical_roughness(FEED, CORNER, major, minor, &regime, &rt, &rz, &ra, &rq,
                                   &error) == TW_OK);
    CHECK(regime == TW_REGIME_ARC_AND_MINOR_EDGE && rt.um == rz.um && ra.um < rq.um);

    /* Forces. */
    CHECK(tw_cutting_forces(tw_specific_force_megapascal(2220.0), tw_exponent_one(0.14),
                            tw_depth_of_cut_millimeter(0.2), FEED, major, CORNER,
                            tw_normal_ratio_one(0.5), &main_force, NULL, &passive, &error) == TW_OK);
    CHECK(main_force.n > passive.n && passive.n > 0.0);
    CHECK(tw_cutting_forces(tw_specific_force_megapascal(2220.0), tw_exponent_one(1.14),
                            tw_depth_of_cut_millimeter(0.2), FEED, major, CORNER,
                            tw_normal_ratio_one(0.5), &main_force, NULL, &passive,
                            &error) == TW_OUT_OF_RANGE);
    CHECK(IS_NAN(main_force.n) && IS_NAN(passive.n) && strcmp(error.field, "exponent") == 0);

    /* An enumeration out of range; a field named as the argument. */
    CHECK(tw_deflection_at(tw_youngs_modulus_gigapascal(210.0), tw_diameter_millimeter(20.0),
                           tw_overhang_millimeter(100.0), TW_SUPPORT_CHUCK, tw_stiffness_rigid(),
                           tw_rotational_stiffness_rigid(), tw_stiffness_rigid(),
                           tw_passive_force_newton(100.0), tw_length_millimeter(100.0), &bent,
                           &error) == TW_OK);
    CHECK(bent.mm > 0.0202 && bent.mm < 0.0203);
    CHECK(tw_deflection_at(tw_youngs_modulus_gigapascal(210.0), tw_diameter_millimeter(20.0),
                           tw_overhang_millimeter(100.0), 0, tw_stiffness_rigid(),
                           tw_rotational_stiffness_rigid(), tw_stiffness_rigid(),
                           tw_passive_force_newton(100.0), tw_length_millimeter(100.0), &bent,
                           &error) == TW_UNKNOWN_NAME);
    CHECK(IS_NAN(bent.mm) && strcmp(error.field, "support") == 0 && strcmp(error.given, "0") == 0);
    CHECK(tw_deflection_at(tw_youngs_modulus_gigapascal(210.0), tw_diameter_millimeter(20.0),
                           tw_overhang_millimeter(100.0), TW_SUPPORT_CHUCK_AND_CENTRE,
                           tw_stiffness_rigid(), tw_rotational_stiffness_rigid(),
                           tw_stiffness_kilonewton_per_millimeter(NAN),
                           tw_passive_force_newton(100.0), tw_length_millimeter(100.0), &bent,
                           &error) == TW_NOT_FINITE);
    CHECK(strcmp(error.field, "centre") == 0);
    CHECK(tw_deflection_at(tw_youngs_modulus_gigapascal(210.0), tw_diameter_millimeter(20.0),
                           tw_overhang_millimeter(100.0), TW_SUPPORT_CHUCK, tw_stiffness_rigid(),
                           tw_rotational_stiffness_rigid(), tw_stiffness_rigid(),
                           tw_passive_force_newton(100.0), tw_length_millimeter(101.0), &bent,
                           &error) == TW_CONTRADICTION);
    CHECK(strcmp(error.field, "at") == 0 && IS_NAN(bent.mm));
}

static void details(void)
{
    unsigned char raw[sizeof(tw_error) + 1];
    tw_error *error = (tw_error *)malloc(sizeof *error);
    tw_rt rt = {1.0};
    uint32_t size;
    size_t at;

    if (error == NULL) {
        broken = 1;
        return;
    }
    /* Never set, and set to nonsense: nothing is written there, and the output is NaN. */
    memset(error, 0, sizeof *error);
    CHECK(tw_arc_height(FEED, CORNER, &rt, error) == TW_BAD_STRUCT_SIZE);
    CHECK(IS_NAN(rt.um) && error->status == 0);
    error->struct_size = 0xDEADBEEF;
    CHECK(tw_arc_height(FEED, CORNER, &rt, error) == TW_BAD_STRUCT_SIZE && error->status == 0);

    /* Every shorter size: filled so far, never beyond; texts that are cut end with NUL. */
    for (size = 8; size <= sizeof *error; size++) {
        tw_error *small = (tw_error *)malloc(sizeof *small);
        if (small == NULL) {
            broken = 1;
            break;
        }
        memset(small, 0x5A, sizeof *small);
        small->struct_size = size;
        CHECK(tw_arc_height(FEED, tw_corner_radius_millimeter(-1.0), &rt, small) ==
              TW_OUT_OF_RANGE);
        CHECK(small->status == TW_OUT_OF_RANGE);
        for (at = size; at < sizeof *small; at++) {
            CHECK(((unsigned char *)small)[at] == 0x5A);
        }
        if (size > offsetof(tw_error, field)) {
            at = size - offsetof(tw_error, field);
            CHECK(memchr(small->field, 0, at < 64 ? at : 64) != NULL);
        }
        if (size > offsetof(tw_error, remedy)) {
            at = size - offsetof(tw_error, remedy);
            CHECK(memchr(small->remedy, 0, at < 192 ? at : 192) != NULL);
        }
        free(small);
    }

    /* A larger one, of a later version, is filled as far as this one knows. */
    tw_error_init(error);
    error->struct_size = sizeof *error;
    memcpy(raw, error, sizeof *error);
    raw[sizeof *error] = 0x5A;
    size = (uint32_t)sizeof raw;
    memcpy(raw, &size, sizeof size);
    CHECK(tw_arc_height(FEED, tw_corner_radius_millimeter(-1.0), &rt, (tw_error *)(void *)raw) ==
          TW_OUT_OF_RANGE);
    CHECK(raw[sizeof *error] == 0x5A);

    /* A text longer than its field, of letters of two bytes: cut at one, dots behind, its length beside. */
    {
        char question[600] = "{\"";
        char *answer = question;
        const size_t before = strlen(question);
        for (at = 0; at < 200; at++) {
            memcpy(question + before + 2 * at, "\xC3\xA4", 2);
        }
        strcpy(question + before + 400, "\":{}}");
        CHECK(tw_answer(question, &answer, error) == TW_UNKNOWN_NAME);
        CHECK(answer == NULL);
        CHECK(error->field_length >= 400);
        CHECK(strlen(error->field) <= 63);
        CHECK(strcmp(error->field + strlen(error->field) - 3, "...") == 0);
        CHECK(((unsigned char)error->field[strlen(error->field) - 4] & 0xC0) == 0x80);
    }
    free(error);
}

/* Text with its unit, of documents and of cells. */
static void values_of_text(void)
{
    tw_error error;
    double value = 0.0;

    tw_error_init(&error);
    CHECK(tw_value_of_text("1 1/2 in", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER, &value, &error) == TW_OK);
    CHECK(value > 38.0999999 && value < 38.1000001 && error.status == TW_OK);
    CHECK(tw_value_of_text(" 38.1 MM ", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_INCH, &value, NULL) == TW_OK);
    CHECK(value > 1.4999999 && value < 1.5000001);
    CHECK(tw_value_of_text("-0 mm", TW_QUANTITY_Z, TW_UNIT_LENGTH_MILLIMETER, &value, NULL) == TW_OK);
    CHECK(1.0 / (value + 1e-300) > 0.0);
    CHECK(tw_value_of_text("38", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER, &value, &error) == TW_MISSING_UNIT);
    CHECK(IS_NAN(value) && strcmp(error.field, "text") == 0 && strstr(error.remedy, "38 mm") != NULL);
    CHECK(tw_value_of_text("28 m/min", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER, &value, &error) == TW_WRONG_UNIT);
    CHECK(tw_value_of_text("250 in", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_INCH, &value, &error) == TW_OUT_OF_RANGE);
    CHECK(strcmp(error.given, "250 in") == 0 && strstr(error.expected, " in") != NULL);
    CHECK(tw_value_of_text("0,5 mm", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER, &value, &error) == TW_UNREADABLE);
    CHECK(tw_value_of_text("38 mm", 0, TW_UNIT_LENGTH_MILLIMETER, &value, &error) == TW_UNKNOWN_NAME);
    CHECK(strcmp(error.field, "quantity") == 0);
    CHECK(tw_value_of_text("38 mm", TW_QUANTITY_DIAMETER, TW_UNIT_TIME_SECOND, &value, &error) == TW_WRONG_UNIT);
    CHECK(strcmp(error.field, "unit") == 0);
    CHECK(tw_value_of_text("38 \xff", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER, &value, &error) == TW_BAD_UTF8);
    CHECK(tw_value_of_text(NULL, TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER, &value, &error) == TW_NULL_POINTER);
    CHECK(tw_value_of_text("38 mm", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER, NULL, &error) == TW_NULL_POINTER);
}

static void ranges(void)
{
    double least = 1.0, largest = 1.0;
    CHECK(tw_range(TW_QUANTITY_DIAMETER, &least, &largest) == TW_OK);
    CHECK(least == 0.1 && largest == 5000.0);
    CHECK(tw_range(TW_QUANTITY_DIAMETER, NULL, &largest) == TW_OK);
    CHECK(tw_range(TW_QUANTITY_DIAMETER, NULL, NULL) == TW_NULL_POINTER);
    CHECK(tw_range(0, &least, &largest) == TW_UNKNOWN_NAME && IS_NAN(least) && IS_NAN(largest));
    CHECK(tw_range(-5, &least, NULL) == TW_UNKNOWN_NAME);
    values_of_text();
    CHECK(strcmp(tw_status_text(TW_OK), "done") == 0);
    CHECK(strlen(tw_status_text(12345)) > 0 && strlen(tw_status_text(TW_OVERLAP)) > 0);
    CHECK(strcmp(tw_version(), TW_VERSION) == 0);
}

static void documents(void)
{
    static const char good[] = "{ \"finish\": { \"feed\": \"0.2 mm/rev\", \"tool\": {"
                               " \"corner_radius\": \"0.8 mm\", \"cutting_edge_angle\": \"95 deg\" } } }";
    tw_error error;
    char mark = 'x';
    char *answer = &mark;

    tw_error_init(&error);
    CHECK(tw_answer(good, &answer, &error) == TW_OK);
    CHECK(answer != NULL && strstr(answer, "\"regime\":\"arc\"") != NULL);
    tw_text_free(answer);
    CHECK(tw_answer_n(good, sizeof good - 1, &answer, NULL) == TW_OK);
    tw_text_free(answer);
    tw_text_free(NULL);

    answer = &mark;
    CHECK(tw_answer(NULL, &answer, &error) == TW_NULL_POINTER && answer == NULL);
    CHECK(strcmp(error.field, "question") == 0);
    CHECK(tw_answer(good, NULL, &error) == TW_NULL_POINTER);
    CHECK(strcmp(error.field, "answer") == 0);
    answer = &mark;
    CHECK(tw_answer("{\"finish\xFF\": {}}", &answer, &error) == TW_BAD_UTF8 && answer == NULL);
    answer = &mark;
    CHECK(tw_answer_n(good, sizeof good, &answer, &error) == TW_NUL_IN_TEXT && answer == NULL);
    CHECK(tw_answer_n(NULL, 0, &answer, &error) == TW_UNREADABLE && answer == NULL);
    CHECK(tw_answer_n(NULL, 3, &answer, &error) == TW_NULL_POINTER);
    CHECK(tw_answer_n(good, (size_t)-1, &answer, &error) == TW_MISUSE);
    CHECK(tw_answer("", &answer, &error) == TW_UNREADABLE);
    /* Where the text is no JSON is told first, so that it is not what is cut. */
    CHECK(tw_answer("{\"finish\":{\"feed\":\"0.2 mm/rev\n\"}}", &answer, &error) == TW_UNREADABLE);
    CHECK(error.given_length >= sizeof error.given && strcmp(error.field, "feed") == 0);
    CHECK(strncmp(error.given, "line 2 column 0: ", 17) == 0);
    CHECK(tw_answer("{\"finish\":{\"feed\":0.2}}", &answer, &error) == TW_MISSING_UNIT);
    CHECK(strcmp(error.field, "feed") == 0);
    CHECK(tw_answer("{\"nothing\":{}}", &answer, &error) == TW_UNKNOWN_NAME);
    CHECK(tw_answer("{\"version\":9,\"finish\":{}}", &answer, &error) == TW_NOT_OFFERED);
    error.struct_size = 0;
    answer = &mark;
    CHECK(tw_answer(good, &answer, &error) == TW_BAD_STRUCT_SIZE && answer == NULL);
}

static void columns(void)
{
    double feeds[4] = {0.1, NAN, 0.2, 40.0};
    double radius = 0.8;
    double heights[4] = {1.0, 1.0, 1.0, 1.0};
    int32_t row_status[4] = {7, 7, 7, 7};
    tw_error error;
    tw_column feed, corner;
    tw_out_column rt;

    tw_error_init(&error);
    feed.data = feeds;
    feed.stride_bytes = sizeof feeds[0];
    feed.count = 4;
    feed.quantity = TW_QUANTITY_FEED;
    feed.unit = TW_UNIT_FEED_MILLIMETER_PER_REVOLUTION;
    corner.data = &radius;
    corner.stride_bytes = sizeof radius;
    corner.count = 1;
    corner.quantity = TW_QUANTITY_CORNER_RADIUS;
    corner.unit = TW_UNIT_LENGTH_MILLIMETER;
    rt.data = heights;
    rt.stride_bytes = sizeof heights[0];
    rt.count = 4;
    rt.quantity = TW_QUANTITY_RT;
    rt.unit = TW_UNIT_ROUGHNESS_MICROMETER;

    /* Bad rows hold NaN, good rows go on. */
    CHECK(tw_arc_height_column(&feed, &corner, &rt, row_status, 4, &error) == TW_ROWS_BAD);
    CHECK(heights[0] > 1.5 && IS_NAN(heights[1]) && heights[2] > 6.2 && IS_NAN(heights[3]));
    CHECK(row_status[0] == TW_OK && row_status[1] == TW_NOT_FINITE && row_status[2] == TW_OK &&
          row_status[3] == TW_OUT_OF_RANGE);
    CHECK(error.status == TW_ROWS_BAD && error.row == 1 && error.rows_bad == 2 &&
          error.row_status == TW_NOT_FINITE && strcmp(error.field, "feed") == 0);
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, NULL) == TW_ROWS_BAD);

    /* Refused as a whole: all rows are NaN. */
    heights[0] = 1.0;
    feed.unit = TW_UNIT_LENGTH_MILLIMETER;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, row_status, 4, &error) == TW_WRONG_UNIT);
    CHECK(strcmp(error.field, "feed") == 0 && IS_NAN(heights[0]) && row_status[0] == TW_WRONG_UNIT);
    feed.unit = TW_UNIT_FEED_MILLIMETER_PER_REVOLUTION;

    heights[0] = 1.0;
    feed.quantity = TW_QUANTITY_FEED_RATE;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, row_status, 4, &error) == TW_BAD_COLUMN);
    CHECK(IS_NAN(heights[0]));
    feed.quantity = TW_QUANTITY_FEED;

    corner.count = 3;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_BAD_COLUMN);
    CHECK(strcmp(error.field, "corner_radius") == 0);
    corner.count = 1;

    heights[0] = 1.0;
    error.struct_size = 3;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_BAD_STRUCT_SIZE);
    CHECK(IS_NAN(heights[0]));
    tw_error_init(&error);

    /* Memory that is refused: nothing is written. */
    heights[0] = 1.0;
    corner.stride_bytes = 0;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_BAD_COLUMN);
    corner.stride_bytes = sizeof radius;
    rt.stride_bytes = 4;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_BAD_COLUMN);
    CHECK(strstr(error.remedy, "doubles") != NULL && strstr(error.remedy, "count 1") == NULL);
    rt.stride_bytes = (size_t)-8;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_BAD_COLUMN);
    CHECK(strcmp(error.given, "a stride of -8 bytes") == 0 && strstr(error.remedy, "copy") != NULL);
    rt.stride_bytes = sizeof heights[0];
    feed.stride_bytes = (size_t)-16;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_BAD_COLUMN);
    CHECK(strcmp(error.field, "feed") == 0 && strcmp(error.given, "a stride of -16 bytes") == 0);
    feed.stride_bytes = 4;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_BAD_COLUMN);
    CHECK(strstr(error.remedy, "count 1") != NULL);
    feed.stride_bytes = sizeof feeds[0];
    feed.count = (size_t)-4;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_BAD_COLUMN);
    CHECK(strcmp(error.given, "-4 rows") == 0 && strstr(error.remedy, "size_t") != NULL);
    feed.count = 4;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, row_status, 2, &error) == TW_BAD_COLUMN);
    CHECK(strcmp(error.field, "row_status") == 0);
    CHECK(strstr(error.remedy, "int32_t") != NULL && strstr(error.remedy, "count 1") == NULL);
    CHECK(tw_arc_height_column(&feed, &corner, &rt, row_status, (size_t)-4, &error) == TW_BAD_COLUMN);
    CHECK(strcmp(error.given, "a stride of -4 bytes") == 0);
    CHECK(tw_arc_height_column(&feed, &corner, &rt, row_status, 0, &error) == TW_BAD_COLUMN);
    rt.data = feeds;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_OVERLAP);
    rt.data = &feeds[1];
    rt.count = 3;
    feed.count = 1;
    feed.data = &feeds[2];
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_OVERLAP);
    CHECK(feeds[2] == 0.2);
    rt.data = NULL;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_NULL_POINTER);
    CHECK(tw_arc_height_column(NULL, &corner, &rt, NULL, 0, &error) == TW_NULL_POINTER);
    CHECK(tw_arc_height_column(&feed, &corner, NULL, NULL, 0, &error) == TW_NULL_POINTER);
    rt.data = heights;
    rt.count = 4;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, (int32_t *)(void *)heights, 4, &error) ==
          TW_OVERLAP);
    CHECK(heights[0] == 1.0);

    /* No rows: fine, and nothing is looked at. */
    rt.data = NULL;
    rt.count = 0;
    feed.data = NULL;
    feed.count = 0;
    CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_OK);
    CHECK(tw_arc_height_column(&feed, &corner, &rt, row_status, 4, &error) == TW_OK);

    /* Fields of one array of packed, unaligned records, the answer among them; inch in, uin out. */
    {
        unsigned char records[3 * 21 + 1];
        const double feeds_inch[3] = {0.004, 0.008, 0.5};
        double given, answer;
        tw_rt alone;
        size_t row;
        memset(records, 0x5A, sizeof records);
        for (row = 0; row < 3; row++) {
            memcpy(records + 1 + 21 * row, &feeds_inch[row], sizeof given);
        }
        feed.data = records + 1;
        feed.stride_bytes = 21;
        feed.count = 3;
        feed.unit = TW_UNIT_FEED_INCH_PER_REVOLUTION;
        rt.data = records + 9;
        rt.stride_bytes = 21;
        rt.count = 3;
        rt.unit = TW_UNIT_ROUGHNESS_MICROINCH;
        CHECK(tw_arc_height_column(&feed, &corner, &rt, (int32_t *)(void *)(records + 17), 21,
                                   &error) == TW_ROWS_BAD);
        CHECK(error.row == 2 && error.rows_bad == 1);
        for (row = 0; row < 3; row++) {
            int32_t status;
            memcpy(&given, records + 1 + 21 * row, sizeof given);
            memcpy(&answer, records + 9 + 21 * row, sizeof answer);
            memcpy(&status, records + 17 + 21 * row, sizeof status);
            CHECK(given == feeds_inch[row]);
            CHECK(status == (int32_t)tw_arc_height(tw_feed_inch_per_revolution(given), CORNER,
                                                   &alone, NULL));
            CHECK(row == 2 ? IS_NAN(answer) : answer == tw_rt_as_microinch(alone));
        }
        CHECK(records[0] == 0x5A);
        /* One byte into a neighbour: refused. */
        rt.data = records + 8;
        CHECK(tw_arc_height_column(&feed, &corner, &rt, NULL, 0, &error) == TW_OVERLAP);
    }
}

int main(void)
{
    scalar_calls();
    details();
    ranges();
    documents();
    columns();
    return broken;
}
