/* The layer for C++ at its edges: plans that are none, lists without a size, with exceptions and without. */
#include "turnwright.hpp"

#include <algorithm>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

namespace {

int broken = 0;

#define CHECK(holds)                                                                                \
    do {                                                                                            \
        if (!(holds)) {                                                                             \
            std::printf("%s:%d: %s\n", __FILE__, __LINE__, #holds);                                 \
            broken = 1;                                                                             \
        }                                                                                           \
    } while (0)

/* What a call throws; TW_OK where it throws nothing. */
template <typename Call> tw_status thrown(const char *field, const char *given, Call call)
{
    try {
        call();
    } catch (const turnwright::failure &failure) {
        CHECK(std::strcmp(failure.field(), field) == 0);
        CHECK(std::strcmp(failure.given(), given) == 0);
        CHECK(failure.expected()[0] != '\0' && failure.remedy()[0] != '\0');
        return failure.status();
    }
    return TW_OK;
}

void no_plan()
{
    const turnwright::plan none;
    CHECK(!none && none.size() == 0 && none.pictures() == 0);
    CHECK(thrown("plan", "NULL", [&] { none.step(0); }) == TW_NULL_POINTER);
    CHECK(thrown("plan", "NULL", [&] { none.text(); }) == TW_NULL_POINTER);
}

void menus()
{
    const std::vector<std::string> names = turnwright::question_names();
    CHECK(std::find(names.begin(), names.end(), "plan") != names.end());
    for (const std::string &name : names) {
        CHECK(!name.empty() && name.find('\n') == std::string::npos);
        CHECK(turnwright::question_schema(name.c_str()).find("\"$schema\"") != std::string::npos);
    }
    const std::vector<std::string> keys = turnwright::material_keys();
    CHECK(keys.size() > 60 && std::find(keys.begin(), keys.end(), "c45") != keys.end());
    CHECK(thrown("plans", "the question \"plans\"", [] { turnwright::question_schema("plans"); }) == TW_UNKNOWN_NAME);
    std::string schema = "before";
    tw_error error = turnwright::detail();
    CHECK(turnwright::question_schema(nullptr, schema, error) == TW_NULL_POINTER && schema.empty());
}

void measured(turnwright::plan plan)
{
    std::size_t at = 0;
    while (at < plan.size() && plan.step(at).kind != TW_STEP_MEASURE) {
        at++;
    }
    const tw_diameter size = plan.step(at).diameter;
    CHECK(thrown("measured", "no size", [&] { plan.after(at, {}); }) == TW_MISSING_FIELD);
    turnwright::plan next;
    std::string answer = "before";
    tw_error error = turnwright::detail();
    CHECK(plan.after(at, {}, next, answer, error) == TW_MISSING_FIELD && !next && answer.empty());
    CHECK(plan.after(at, {size, size}, next, answer, error) == TW_OK && next && !answer.empty());
    /* What was moved from is no plan. */
    const turnwright::plan moved = std::move(next);
    CHECK(moved.size() > 0);
    CHECK(thrown("plan", "NULL", [&] { next.after(at, {size}); }) == TW_NULL_POINTER);
}

} // namespace

int main(int argc, char **argv)
{
    std::ifstream file(argc > 1 ? argv[1] : "", std::ios::binary);
    if (!file) {
        std::printf("the file of a job, please\n");
        return 2;
    }
    no_plan();
    menus();
    measured(turnwright::plan::open(
        std::string(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>())));
    return broken;
}
