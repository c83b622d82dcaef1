/*
 * turnwright.hpp: a thin layer over turnwright.h for C++17. The contract is the first page of that
 * header; this one adds that texts and plans give themselves back, and that a failure may be an
 * exception. Quantities are the structs of turnwright.h.
 *
 * Each call comes twice: with a tw_error to fill, it throws nothing of its own (std::bad_alloc where
 * a text finds no memory) and returns a tw_status; without one it returns its answer or throws
 * turnwright::failure. Where exceptions are off (-fno-exceptions), only the first are there.
 */
#ifndef TURNWRIGHT_HPP
#define TURNWRIGHT_HPP

#include "turnwright.h"

#include <algorithm>
#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#if defined(__cpp_exceptions)
#include <stdexcept>
#endif

namespace turnwright {

/* A tw_error that is ready for use. */
inline tw_error detail() noexcept
{
    tw_error made;
    tw_error_init(&made);
    return made;
}

#if defined(__cpp_exceptions)
/* What a call that failed says: all that stands in its tw_error. */
class failure : public std::runtime_error {
public:
    failure(tw_status status, const tw_error &error)
        : std::runtime_error(words(error)), status_(status), error_(error)
    {
    }

    tw_status status() const noexcept { return status_; }
    /* The argument or field, in a document its path: tool.corner_radius. */
    const char *field() const noexcept { return error_.field; }
    const char *given() const noexcept { return error_.given; }
    const char *expected() const noexcept { return error_.expected; }
    const char *remedy() const noexcept { return error_.remedy; }
    /* The whole of it; row and rows_bad are those of a column call. */
    const tw_error &error() const noexcept { return error_; }

private:
    static std::string words(const tw_error &error)
    {
        std::string where;
        if (error.rows_bad > 0) {
            where = "row " + std::to_string(error.row) + " (" + std::to_string(error.rows_bad) + " bad): ";
        }
        if (error.field[0] != '\0') {
            where += std::string(error.field) + ": ";
        }
        return where + error.given + " given; expected " + error.expected + "; " + error.remedy;
    }

    tw_status status_;
    tw_error error_;
};

/*
 * Makes a failure of what a call of turnwright.h returned:
 *
 *     tw_error error = turnwright::detail();
 *     tw_spindle_speed speed;
 *     turnwright::check(tw_spindle_speed_for(v, d, &speed, &error), error);
 */
inline void check(tw_status status, const tw_error &error)
{
    if (status != TW_OK) {
        throw failure(status, error);
    }
}
#endif

namespace implementation {

struct give_back {
    void operator()(char *text) const noexcept { tw_text_free(text); }
    void operator()(tw_plan *plan) const noexcept { tw_plan_free(&plan); }
};

using text = std::unique_ptr<char, give_back>;

/* Copies a text that a call hands over, and gives it back. */
template <typename Call> tw_status copied(std::string &out, Call call)
{
    char *raw = nullptr;
    const tw_status status = call(&raw);
    const text held(raw);
    out.clear();
    if (held) {
        out = held.get();
    }
    return status;
}

/* The same of a text of one name to a line, each name apart. */
template <typename Call> tw_status copied_lines(std::vector<std::string> &out, Call call)
{
    std::string names;
    const tw_status status = copied(names, call);
    out.clear();
    for (std::size_t from = 0; from < names.size();) {
        const std::size_t to = std::min(names.find('\n', from), names.size());
        out.emplace_back(names, from, to - from);
        from = to + 1;
    }
    return status;
}

} // namespace implementation

/* Answers a question: JSON text in, JSON text out. */
[[nodiscard]] inline tw_status answer(std::string_view question, std::string &out, tw_error &error)
{
    return implementation::copied(out, [&](char **raw) {
        return tw_answer_n(question.data(), question.size(), raw, &error);
    });
}

#if defined(__cpp_exceptions)
inline std::string answer(std::string_view question)
{
    tw_error error = detail();
    std::string out;
    check(answer(question, out, error), error);
    return out;
}
#endif

/* The names of the questions that answer takes: to fill a menu. */
[[nodiscard]] inline tw_status question_names(std::vector<std::string> &out, tw_error &error)
{
    return implementation::copied_lines(out,
                                        [&](char **raw) { return tw_question_names(raw, &error); });
}

/* The JSON Schema of a question by its name. */
[[nodiscard]] inline tw_status question_schema(const char *name, std::string &out, tw_error &error)
{
    return implementation::copied(
        out, [&](char **raw) { return tw_question_schema(name, raw, &error); });
}

/* The keys of the materials of the catalogue: to fill a menu. */
[[nodiscard]] inline tw_status material_keys(std::vector<std::string> &out, tw_error &error)
{
    return implementation::copied_lines(out,
                                        [&](char **raw) { return tw_material_keys(raw, &error); });
}

#if defined(__cpp_exceptions)
inline std::vector<std::string> question_names()
{
    tw_error error = detail();
    std::vector<std::string> out;
    check(question_names(out, error), error);
    return out;
}

inline std::string question_schema(const char *name)
{
    tw_error error = detail();
    std::string out;
    check(question_schema(name, out, error), error);
    return out;
}

inline std::vector<std::string> material_keys()
{
    tw_error error = detail();
    std::vector<std::string> out;
    check(material_keys(out, error), error);
    return out;
}
#endif

/* An operation sheet. It is moved, not copied; it closes itself. */
class plan {
public:
    /* No plan: every call refuses it, as it refuses one that was moved from. */
    plan() noexcept = default;

    /* Takes over a plan of turnwright.h. */
    explicit plan(tw_plan *open) noexcept : held_(open) {}

    /* Opens a job or a sheet, JSON text. */
    [[nodiscard]] static tw_status open(std::string_view text, plan &out, tw_error &error)
    {
        tw_plan *raw = nullptr;
        const tw_status status = tw_plan_open_n(text.data(), text.size(), &raw, &error);
        out = plan(raw);
        return status;
    }

    explicit operator bool() const noexcept { return held_ != nullptr; }
    const tw_plan *get() const noexcept { return held_.get(); }

    std::size_t size() const noexcept { return tw_plan_step_count(get()); }
    std::size_t pictures() const noexcept { return tw_plan_picture_count(get()); }

    /* A step, from 0; its texts belong to the plan. */
    [[nodiscard]] tw_status step(std::size_t index, tw_step &out, tw_error &error) const noexcept
    {
        tw_step_init(&out);
        return tw_plan_step(get(), index, &out, &error);
    }

    [[nodiscard]] tw_status expected(tw_expected &out, tw_error &error) const noexcept
    {
        tw_expected_init(&out);
        return tw_plan_expected(get(), &out, &error);
    }

    /* One surface of the part, from 0, in the order in which they are turned. */
    [[nodiscard]] tw_status surface(std::size_t index, tw_surface &out, tw_error &error) const noexcept
    {
        tw_surface_init(&out);
        return tw_plan_surface(get(), index, &out, &error);
    }

    [[nodiscard]] tw_status text(std::string &out, tw_error &error) const
    {
        return implementation::copied(
            out, [&](char **raw) { return tw_plan_text(get(), raw, &error); });
    }

    [[nodiscard]] tw_status short_text(std::string &out, tw_error &error) const
    {
        return implementation::copied(
            out, [&](char **raw) { return tw_plan_short_text(get(), raw, &error); });
    }

    [[nodiscard]] tw_status json(std::string &out, tw_error &error) const
    {
        return implementation::copied(
            out, [&](char **raw) { return tw_plan_json(get(), raw, &error); });
    }

    [[nodiscard]] tw_status picture(std::size_t index, std::string &out, tw_error &error) const
    {
        return implementation::copied(
            out, [&](char **raw) { return tw_plan_picture(get(), index, raw, &error); });
    }

    [[nodiscard]] tw_status page(std::string &out, tw_error &error) const
    {
        return implementation::copied(
            out, [&](char **raw) { return tw_plan_page(get(), raw, &error); });
    }

    /* What follows from sizes measured at a step: a plan, or none; and the answer as JSON. */
    [[nodiscard]] tw_status after(std::size_t step, const std::vector<tw_diameter> &measured, plan &next,
                                  std::string &answer, tw_error &error) const
    {
        return implementation::copied(answer, [&](char **text) {
            tw_plan *raw = nullptr;
            const tw_status status = tw_plan_after(get(), step, measured.data(), measured.size(),
                                                   &raw, text, &error);
            // Held before anything may throw.
            next = plan(raw);
            return status;
        });
    }

#if defined(__cpp_exceptions)
    static plan open(std::string_view text)
    {
        tw_error error = detail();
        plan out;
        check(open(text, out, error), error);
        return out;
    }

    tw_step step(std::size_t index) const
    {
        tw_error error = detail();
        tw_step out;
        check(step(index, out, error), error);
        return out;
    }

    tw_expected expected() const
    {
        tw_error error = detail();
        tw_expected out;
        check(expected(out, error), error);
        return out;
    }

    tw_surface surface(std::size_t index) const
    {
        tw_error error = detail();
        tw_surface out;
        check(surface(index, out, error), error);
        return out;
    }

    std::string text() const { return thrown(&plan::text); }
    std::string short_text() const { return thrown(&plan::short_text); }
    std::string json() const { return thrown(&plan::json); }
    std::string page() const { return thrown(&plan::page); }

    std::string picture(std::size_t index) const
    {
        tw_error error = detail();
        std::string out;
        check(picture(index, out, error), error);
        return out;
    }

    std::pair<plan, std::string> after(std::size_t step,
                                       const std::vector<tw_diameter> &measured) const
    {
        tw_error error = detail();
        std::pair<plan, std::string> out;
        check(after(step, measured, out.first, out.second, error), error);
        return out;
    }
#endif

private:
#if defined(__cpp_exceptions)
    std::string thrown(tw_status (plan::*write)(std::string &, tw_error &) const) const
    {
        tw_error error = detail();
        std::string out;
        check((this->*write)(out, error), error);
        return out;
    }
#endif

    std::unique_ptr<tw_plan, implementation::give_back> held_;
};

} // namespace turnwright

#endif /* TURNWRIGHT_HPP */
