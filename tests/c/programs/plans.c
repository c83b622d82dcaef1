/*
 * Plans as handles: what is refused, how, and what outputs hold then; and that all is given back.
 * The first argument is the file of an invented job. Prints nothing and returns 0 when every promise
 * holds.
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

static char job[65536];

static void opening(void)
{
    static const char nul_inside[] = {'{', '\0', '}'};
    tw_error error;
    tw_plan *plan = (tw_plan *)job;

    tw_error_init(&error);
    CHECK(tw_plan_open(NULL, &plan, &error) == TW_NULL_POINTER && plan == NULL);
    CHECK(strcmp(error.field, "text") == 0);
    CHECK(tw_plan_open(job, NULL, &error) == TW_NULL_POINTER && strcmp(error.field, "plan") == 0);
    CHECK(tw_plan_open("{\"plan\": ", &plan, &error) == TW_UNREADABLE && plan == NULL);
    CHECK(tw_plan_open("{\"plan\": {}}", &plan, &error) == TW_MISSING_FIELD && plan == NULL);
    CHECK(error.field[0] != 0 && error.remedy[0] != 0);
    CHECK(tw_plan_open("{\"plan\": {\"job\": {}}}", &plan, &error) == TW_MISSING_FIELD);
    CHECK(strncmp(error.field, "job.", 4) == 0 || strcmp(error.field, "job") == 0);
    CHECK(tw_plan_open("{\"materials\": {}}", &plan, &error) == TW_UNKNOWN_NAME && plan == NULL);
    CHECK(tw_plan_open("{\"plan\": \"\xff\"}", &plan, &error) == TW_BAD_UTF8 && plan == NULL);
    CHECK(tw_plan_open_n(nul_inside, sizeof nul_inside, &plan, &error) == TW_NUL_IN_TEXT);
    CHECK(tw_plan_open_n(NULL, 3, &plan, &error) == TW_NULL_POINTER);
    CHECK(tw_plan_open_n(NULL, 0, &plan, &error) == TW_UNREADABLE);
    CHECK(tw_plan_open_n(job, (size_t)-1, &plan, &error) == TW_MISUSE && plan == NULL);
    CHECK(tw_plan_open(job, &plan, NULL) == TW_OK && plan != NULL);
    tw_plan_free(&plan);
    CHECK(tw_plan_open_n(job, strlen(job), &plan, &error) == TW_OK && plan != NULL);
    tw_plan_free(&plan);
    CHECK(plan == NULL);
    tw_plan_free(&plan);
    tw_plan_free(NULL);
}

static void closed(void)
{
    tw_error error;
    tw_step step;
    tw_expected expected;
    tw_surface surface;
    tw_plan *next = (tw_plan *)job;
    char *text = job;
    const tw_diameter size = {30.0};

    tw_error_init(&error);
    tw_step_init(&step);
    tw_expected_init(&expected);
    CHECK(tw_plan_step_count(NULL) == 0 && tw_plan_picture_count(NULL) == 0);
    CHECK(tw_plan_step(NULL, 0, &step, &error) == TW_NULL_POINTER);
    CHECK(strcmp(error.field, "plan") == 0 && IS_NAN(step.diameter.mm) && step.text == NULL);
    CHECK(tw_plan_expected(NULL, &expected, &error) == TW_NULL_POINTER);
    CHECK(IS_NAN(expected.good.ratio));
    tw_surface_init(&surface);
    CHECK(tw_plan_surface(NULL, 0, &surface, &error) == TW_NULL_POINTER);
    CHECK(IS_NAN(surface.good.ratio) && surface.surface == -1);
    surface.struct_size = 4;
    CHECK(tw_plan_surface(NULL, 0, &surface, &error) == TW_BAD_STRUCT_SIZE);
    CHECK(strcmp(error.field, "surface.struct_size") == 0);
    CHECK(tw_plan_surface(NULL, 0, NULL, NULL) == TW_NULL_POINTER);
    CHECK(tw_plan_text(NULL, &text, &error) == TW_NULL_POINTER && text == NULL);
    CHECK(tw_plan_short_text(NULL, &text, NULL) == TW_NULL_POINTER);
    CHECK(tw_plan_json(NULL, &text, NULL) == TW_NULL_POINTER);
    CHECK(tw_plan_picture(NULL, 0, &text, NULL) == TW_NULL_POINTER);
    CHECK(tw_plan_page(NULL, &text, NULL) == TW_NULL_POINTER);
    text = job;
    CHECK(tw_plan_after(NULL, 0, &size, 1, &next, &text, &error) == TW_NULL_POINTER);
    CHECK(next == NULL && text == NULL);
}

static void steps(const tw_plan *plan)
{
    tw_error error;
    tw_step step;
    tw_expected expected;
    struct {
        tw_step known;
        double more[4];
    } newer;
    char *text = NULL;
    size_t at, count = tw_plan_step_count(plan);
    int cuts = 0;

    tw_error_init(&error);
    tw_step_init(&step);
    tw_expected_init(&expected);
    CHECK(count > 8);
    for (at = 0; at < count; at++) {
        CHECK(tw_plan_step(plan, at, &step, &error) == TW_OK);
        CHECK(step.struct_size == sizeof step && step.text != NULL && step.text[0] != 0);
        CHECK(step.diameter.mm > 0.0 && step.time.s >= 0.0);
        if (step.kind == TW_STEP_FINISH_CUT) {
            cuts++;
            CHECK(step.slide == TW_SLIDE_CROSS && step.divisions > 0 && step.surface == 0);
            CHECK(step.z.mm < 0.0 && step.feed.mm_per_rev > 0.0 && step.because != NULL);
        }
        if (step.kind == TW_STEP_CLAMP) {
            CHECK(step.slide == 0 && IS_NAN(step.shows.mm) && IS_NAN(step.feed.mm_per_rev));
            CHECK(step.surface == -1 && step.divisions == 0 && IS_NAN(step.z.mm));
        }
    }
    CHECK(cuts == 2);
    CHECK(tw_plan_step(plan, count, &step, &error) == TW_OUT_OF_RANGE);
    CHECK(strcmp(error.field, "index") == 0 && step.text == NULL && IS_NAN(step.time.s));
    CHECK(tw_plan_step(plan, (size_t)-1, &step, &error) == TW_OUT_OF_RANGE);
    CHECK(tw_plan_step(plan, 0, NULL, &error) == TW_NULL_POINTER);

    /* A struct that was never made ready; one of a later header, whose unknown end is left alone. */
    memset(&step, 0, sizeof step);
    CHECK(tw_plan_step(plan, 0, &step, &error) == TW_BAD_STRUCT_SIZE);
    CHECK(strcmp(error.field, "step.struct_size") == 0 && step.text == NULL);
    step.struct_size = 0xffffffffu;
    CHECK(tw_plan_step(plan, 0, &step, &error) == TW_BAD_STRUCT_SIZE);
    memset(&newer, 0x7f, sizeof newer);
    newer.known.struct_size = (uint32_t)sizeof newer;
    CHECK(tw_plan_step(plan, 0, &newer.known, &error) == TW_OK);
    CHECK(newer.known.text != NULL);
    /* What this library does not know is left alone, whatever size is declared. */
    CHECK(((const unsigned char *)newer.more)[0] == 0x7f && ((const unsigned char *)newer.more)[sizeof newer.more - 1] == 0x7f);

    CHECK(tw_plan_expected(plan, &expected, &error) == TW_OK);
    CHECK(expected.surfaces == 1 && expected.smallest.mm < expected.diameter.mm);
    CHECK(expected.diameter.mm < expected.largest.mm && expected.time.s > 0.0);
    CHECK(expected.good.ratio + expected.rework.ratio + expected.scrap.ratio > 0.999999);
    CHECK(tw_plan_expected(plan, NULL, &error) == TW_NULL_POINTER);
    expected.struct_size = 8;
    CHECK(tw_plan_expected(plan, &expected, &error) == TW_BAD_STRUCT_SIZE);

    CHECK(tw_plan_picture(plan, 1, &text, &error) == TW_OUT_OF_RANGE && text == NULL);
    CHECK(tw_plan_text(plan, NULL, &error) == TW_NULL_POINTER);
}

static void measuring(const tw_plan *plan)
{
    tw_error error;
    tw_step step;
    tw_plan *next = NULL, *again = NULL;
    char *answer = NULL, *json = NULL, *same = NULL;
    tw_diameter sizes[3];
    size_t at, count = tw_plan_step_count(plan);

    tw_error_init(&error);
    tw_step_init(&step);
    for (at = 0; at < count; at++) {
        CHECK(tw_plan_step(plan, at, &step, &error) == TW_OK);
        if (step.kind == TW_STEP_MEASURE) {
            break;
        }
    }
    CHECK(step.kind == TW_STEP_MEASURE);
    sizes[0] = sizes[1] = sizes[2] = step.diameter;

    /* As expected: the next plan has the step that says so, and is opened again from its JSON. */
    CHECK(tw_plan_after(plan, at, sizes, 3, &next, &answer, &error) == TW_OK);
    CHECK(next != NULL && answer != NULL && strstr(answer, "\"shift\":0") != NULL);
    CHECK(tw_plan_step(next, at, &step, &error) == TW_OK && step.kind == TW_STEP_ADJUST);
    CHECK(tw_plan_json(next, &json, &error) == TW_OK);
    CHECK(tw_plan_open(json, &again, &error) == TW_OK);
    CHECK(tw_plan_json(again, &same, &error) == TW_OK && strcmp(json, same) == 0);
    tw_text_free(json);
    tw_text_free(same);
    tw_text_free(answer);
    tw_plan_free(&again);
    tw_plan_free(&next);

    /* Either output alone. */
    CHECK(tw_plan_after(plan, at, sizes, 1, &next, NULL, &error) == TW_OK && next != NULL);
    tw_plan_free(&next);
    CHECK(tw_plan_after(plan, at, sizes, 1, NULL, &answer, &error) == TW_OK && answer != NULL);
    tw_text_free(answer);
    answer = NULL;
    CHECK(tw_plan_after(plan, at, sizes, 1, NULL, NULL, &error) == TW_NULL_POINTER);

    /* Far too small: lost, and no plan, but an answer that says so. */
    sizes[0].mm = 20.0;
    CHECK(tw_plan_after(plan, at, sizes, 1, &next, &answer, &error) == TW_OK && next == NULL);
    CHECK(answer != NULL && strstr(answer, "\"lost\":true") != NULL);
    tw_text_free(answer);

    CHECK(tw_plan_after(plan, at, NULL, 1, &next, &answer, &error) == TW_NULL_POINTER);
    CHECK(answer == NULL && next == NULL && strcmp(error.field, "measured") == 0);
    CHECK(tw_plan_after(plan, at, sizes, 0, &next, &answer, &error) == TW_MISSING_FIELD);
    /* No size has no place either: an empty list of another language arrives so. */
    CHECK(tw_plan_after(plan, at, NULL, 0, &next, &answer, &error) == TW_MISSING_FIELD);
    CHECK(strcmp(error.field, "measured") == 0 && strcmp(error.given, "no size") == 0);
    CHECK(strstr(error.expected, "one size") != NULL);
    CHECK(tw_plan_after(plan, at, sizes, (size_t)-1, &next, &answer, &error) == TW_MISUSE);
    CHECK(tw_plan_after(plan, count, sizes, 1, &next, &answer, &error) == TW_OUT_OF_RANGE);
    CHECK(strcmp(error.field, "step") == 0);
    sizes[1].mm = NAN;
    CHECK(tw_plan_after(plan, at, sizes, 2, &next, &answer, &error) == TW_NOT_FINITE);
    CHECK(strcmp(error.field, "measured[1]") == 0);
}

static void lists(void)
{
    tw_error error;
    char *text = job;

    tw_error_init(&error);
    CHECK(tw_question_names(&text, &error) == TW_OK && strstr(text, "\nplan\n") != NULL);
    tw_text_free(text);
    CHECK(tw_material_keys(&text, &error) == TW_OK && strstr(text, "\n11smn30\n") != NULL);
    tw_text_free(text);
    CHECK(tw_question_schema("dial", &text, &error) == TW_OK && strstr(text, "zero_at") != NULL);
    tw_text_free(text);
    CHECK(tw_question_schema("dail", &text, &error) == TW_UNKNOWN_NAME && text == NULL);
    CHECK(strstr(error.remedy, "dial") != NULL);
    CHECK(tw_question_schema(NULL, &text, &error) == TW_NULL_POINTER);
    CHECK(tw_question_names(NULL, &error) == TW_NULL_POINTER);
    CHECK(tw_material_keys(NULL, NULL) == TW_NULL_POINTER);
}

int main(int argc, char **argv)
{
    FILE *file = argc > 1 ? fopen(argv[1], "rb") : NULL;
    tw_plan *plan = NULL;
    size_t length;

    if (file == NULL) {
        printf("the file of a job, please\n");
        return 2;
    }
    length = fread(job, 1, sizeof job - 1, file);
    job[length] = '\0';
    fclose(file);

    opening();
    closed();
    lists();
    CHECK(tw_plan_open(job, &plan, NULL) == TW_OK);
    if (plan != NULL) {
        steps(plan);
        measuring(plan);
    }
    tw_plan_free(&plan);
    return broken;
}
