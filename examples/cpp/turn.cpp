/*
 * turnwright from C++17: a scalar call, a column call, a call that goes wrong and says so, and a plan
 * that is followed to its first measuring stop.
 *
 * Build and run, from the root of the crate (Linux):
 *
 *   cargo build --release --features capi
 *   c++ -std=c++17 -Iinclude examples/cpp/turn.cpp -o turn \
 *      -Ltarget/release -lturnwright -Wl,-rpath,"$PWD/target/release"
 *   ./turn examples/c/job.json
 *
 * The job is invented, and so is the lathe it is for.
 */
#include <turnwright.hpp>

#include <array>
#include <cmath>
#include <cstdio>
#include <exception>
#include <fstream>
#include <iterator>
#include <string>

namespace {

/* Doubles that lie one after the other, as a column to read. */
template <std::size_t N>
tw_column column(const std::array<double, N> &data, tw_quantity quantity, tw_unit unit)
{
    return {data.data(), sizeof(double), N, quantity, unit};
}

void scalar()
{
    tw_error error = turnwright::detail();
    tw_spindle_speed speed;
    turnwright::check(tw_spindle_speed_for(tw_cutting_speed_meter_per_minute(28.0),
                                           tw_diameter_inch(1.5), &speed, &error),
                      error);
    std::printf("28 m/min on a bar of 1.5 in: %.17g rpm\n", speed.rpm);
}

/* Feeds of an invented list, one of them in metres by mistake: its row is bad, the others are not. */
void columns()
{
    const std::array<double, 3> feeds = {0.1, 0.0002, 0.2}, corner = {0.8, 0.8, 0.8};
    std::array<double, 3> heights{};
    std::array<std::int32_t, 3> statuses{};
    const tw_column feed = column(feeds, TW_QUANTITY_FEED, TW_UNIT_FEED_MILLIMETER_PER_REVOLUTION);
    const tw_column radius = column(corner, TW_QUANTITY_CORNER_RADIUS, TW_UNIT_LENGTH_MILLIMETER);
    const tw_out_column height = {heights.data(), sizeof(double), heights.size(), TW_QUANTITY_RT,
                                  TW_UNIT_ROUGHNESS_MICROMETER};
    tw_error error = turnwright::detail();
    const tw_status status = tw_arc_height_column(&feed, &radius, &height, statuses.data(),
                                                  sizeof statuses[0], &error);
    if (status != TW_OK && status != TW_ROWS_BAD) {
        turnwright::check(status, error);
    }
    for (std::size_t row = 0; row < feeds.size(); row++) {
        if (statuses[row] == TW_OK) {
            std::printf("row %zu: %g mm/rev leaves ridges of %.17g um\n", row, feeds[row],
                        heights[row]);
        } else {
            std::printf("row %zu: %s\n", row, tw_status_text(statuses[row]));
        }
    }
    std::printf("%d row is bad: %s, %s\n", static_cast<int>(error.rows_bad), error.field,
                error.remedy);
}

void wrong()
{
    try {
        turnwright::answer(R"({ "finish": { "feed": "0.2 mm",
            "tool": { "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg" } } })");
    } catch (const turnwright::failure &failure) {
        std::printf("refused: %s\n", failure.what());
    }
}

/* The steps of a plan as far as its first measuring stop, and what a size measured there changes. */
void planned(const std::string &job)
{
    const turnwright::plan plan = turnwright::plan::open(job);
    const tw_expected expected = plan.expected();
    std::printf("An invented job: %.3f mm expected, good in %.1f of 100.\n", expected.diameter.mm,
                100.0 * expected.good.ratio);
    for (std::size_t at = 0; at < expected.surfaces; at++) {
        const tw_surface surface = plan.surface(at);
        std::printf("diameter %.3f mm, good in %.1f of 100\n", surface.diameter.mm,
                    100.0 * surface.good.ratio);
    }
    for (std::size_t at = 0; at < plan.size(); at++) {
        const tw_step step = plan.step(at);
        std::printf("%zu. %s\n", at + 1, step.text);
        if (step.kind != TW_STEP_MEASURE) {
            continue;
        }
        const tw_diameter measured = tw_diameter_millimeter(step.diameter.mm + 0.02);
        const auto [next, answer] = plan.after(at, {measured});
        if (next) {
            std::printf("measured %.3f mm: %s\n", measured.mm, next.step(at).text);
        }
        return;
    }
}

} // namespace

int main(int argc, char **argv)
{
    try {
        scalar();
        columns();
        wrong();
        if (argc < 2) {
            std::printf("usage: turn JOB.json\n");
            return 1;
        }
        std::ifstream file(argv[1], std::ios::binary);
        if (!file) {
            std::printf("%s cannot be read\n", argv[1]);
            return 1;
        }
        planned({std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()});
    } catch (const std::exception &trouble) {
        std::printf("%s\n", trouble.what());
        return 1;
    }
    return 0;
}
