#include "sim/growth/site.h"

#include <cmath>
#include <cstdio>

#include "sim/growth/variety.h"

namespace spurwright::growth {
namespace {

std::string number_text(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.6g", value);
    return text;
}

std::optional<Error> range(std::string_view key, std::string option, double value, double low, double high) {
    if (value >= low && value <= high) return std::nullopt; // a NaN lies in no range
    return Error{Fault::out_of_range,
                 TextKey{key},
                 {{"value", number_text(value)}, {"low", Ratio{low}}, {"high", Ratio{high}}},
                 {std::move(option), 0, 0, 0}};
}

std::optional<Error> not_grown(std::string_view key, std::string option, std::string value) {
    return Error{Fault::out_of_range, TextKey{key}, {{"value", std::move(value)}}, {std::move(option), 0, 0, 0}};
}

std::optional<Error> check_catch(const Site& s) {
    if (s.catch_m.size() > 4)
        return range("error.grow.catch-pairs", "--catch", static_cast<double>(s.catch_m.size()), 0, 4);
    double lowest = 0.1;
    for (const double height : s.catch_m) {
        if (auto e = range("error.grow.catch", "--catch", height, lowest, 1.5)) return e;
        lowest = height + 0.05;
    }
    return std::nullopt;
}

std::optional<Error> first_fault(const Site& s) {
    if (auto e = range("error.grow.age", "--age", s.age, 3, 40)) return e;
    if (auto e = range("error.grow.spacing", "--spacing", s.spacing_m, 0.9, 3.0)) return e;
    if (auto e = range("error.grow.rows", "--rows", s.rows_m, 1.5, 4.0)) return e;
    if (auto e = range("error.grow.wire", "--wire", s.wire_m, 0.6, 1.4)) return e;
    if (auto e = check_catch(s)) return e;
    if (auto e = range("error.grow.head-below", "--head-below", s.head_below_mm, 50, 300)) return e;
    if (s.hedge_m)
        if (auto e = range("error.grow.hedge", "--hedge", *s.hedge_m, 0.6, 1.4)) return e;
    if (auto e = range("error.grow.capacity-share", "--capacity-share", s.capacity_share, 0.2, 5)) return e;
    if (!s.own_variety && !find_variety(s.variety)) {
        Error error = *not_grown("error.grow.variety", "--variety", s.variety);
        std::string known;
        for (const Variety& variety : varieties()) known += (known.empty() ? "" : ", ") + std::string(variety.name);
        error.arguments.push_back({"known", known});
        return error;
    }
    if (s.system != System::two_cane && s.system != System::one_cane && s.system != System::cordon)
        return not_grown("error.grow.system", "--system", std::string(word_of(s.system)));
    if (s.trunks != 1 && s.trunks != 2)
        return not_grown("error.grow.trunks", "--trunks", std::to_string(s.trunks));
    if (s.seed >> 40) return range("error.grow.seed", "--seed", static_cast<double>(s.seed), 0, 1'099'511'627'775.0);
    return std::nullopt;
}

// The step of a code that says this value, or nothing where it falls between or beyond.
std::optional<int> step_of(double value, double first, double step, int highest) {
    const double steps = (value - first) / step;
    const double whole_steps = std::floor(steps + 0.5);
    if (std::fabs(steps - whole_steps) > 1e-6 || whole_steps < 0 || whole_steps > highest) return std::nullopt;
    return static_cast<int>(whole_steps);
}

} // namespace

Result<void> check(const Site& site) {
    if (auto e = first_fault(site)) return failure(std::move(*e));
    return {};
}

const Variety& variety_of(const Site& site) {
    return site.own_variety ? *site.own_variety : *find_variety(site.variety);
}

std::optional<CodedSite> coded(const Site& s) {
    const Site plain;
    if (s.own_variety || s.catch_m != plain.catch_m || s.head_below_mm != plain.head_below_mm || s.hedge_m != plain.hedge_m ||
        s.thinning != plain.thinning || s.harvest != plain.harvest || s.graft != usually_grafted(s.variety) ||
        s.wires_in_winter != plain.wires_in_winter || s.drip != plain.drip || s.capacity_share != plain.capacity_share)
        return std::nullopt;
    const auto spacing = step_of(s.spacing_m, 0.60, 0.05, 63), rows = step_of(s.rows_m, 1.0, 0.1, 31),
               wire = step_of(s.wire_m, 0.6, 0.1, 7);
    if (!spacing || !rows || !wire) return std::nullopt;
    CodedSite c;
    c.recipe = newest_recipe;
    c.system = s.system;
    c.age = s.age;
    c.vigour = s.vigour;
    c.frost = s.frost;
    c.spacing_step = *spacing;
    c.rows_step = *rows;
    c.wire_step = *wire;
    c.variety = static_cast<int>(find_variety(s.variety) - varieties().data());
    c.pruner = s.pruner;
    c.two_trunks = s.trunks == 2;
    c.missing_left = s.neighbours == Neighbours::far || s.neighbours == Neighbours::none;
    c.missing_right = s.neighbours == Neighbours::near || s.neighbours == Neighbours::none;
    c.seed = s.seed;
    return c;
}

Result<Site> site_of(const CodedSite& c) {
    Site s;
    if (c.variety < 0 || static_cast<std::size_t>(c.variety) >= varieties().size())
        return failure({Fault::bad_text,
                        TextKey{"error.code.field"},
                        {{"field", std::string("variety")}, {"value", Count{c.variety}}},
                        {"the code", 0, 0, 0}});
    s.variety = varieties()[static_cast<std::size_t>(c.variety)].name;
    s.graft = usually_grafted(s.variety);
    s.system = c.system;
    s.age = c.age;
    s.vigour = c.vigour;
    s.frost = c.frost;
    s.spacing_m = (60 + 5 * c.spacing_step) / 100.0;
    s.rows_m = (10 + c.rows_step) / 10.0;
    s.wire_m = (6 + c.wire_step) / 10.0;
    s.pruner = c.pruner;
    s.trunks = c.two_trunks ? 2 : 1;
    s.neighbours = c.missing_left ? (c.missing_right ? Neighbours::none : Neighbours::far)
                                  : (c.missing_right ? Neighbours::near : Neighbours::both);
    s.seed = c.seed;
    if (auto e = first_fault(s)) return failure(std::move(*e));
    return s;
}

} // namespace spurwright::growth
