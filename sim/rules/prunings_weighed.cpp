#include "sim/rules/prunings_weighed.h"

#include <cstdlib>

namespace spurwright::rules {
namespace {

// How far off, rounded up, so that a weight at the limit is within it.
PerMille off_by(Mass weighed, Mass truly) {
    if (truly.count <= 0) return {weighed.count == 0 ? 0 : 1000};
    const std::int64_t gap = std::abs(std::int64_t{weighed.count} - truly.count);
    return {static_cast<std::int32_t>(std::min<std::int64_t>((1000 * gap + truly.count - 1) / truly.count, 1'000'000))};
}

}  // namespace

bool as_heavy_as(Mass weighed, Mass truly, const HouseRules& house) {
    return off_by(weighed, truly) <= house.prunings_weighed.full_off;
}

PerMille mark_prunings_weighed(const WeighingFacts& is, const HouseRules& house) {
    if (!is.report) return no_mark;
    const auto& asks = house.prunings_weighed;
    return mark_to(asks.full_off, asks.half_off, off_by(is.report->weight, is.bundle));
}

Said say_prunings_weighed(const WeighingFacts& is, const HouseRules& house) {
    const auto& asks = house.prunings_weighed;
    Said said;
    said.unit = Unit::g;
    const auto ends = [&](PerMille off) {
        return Wanted{std::int64_t{is.bundle.count} * (1000 - off.count) / 1000,
                      std::int64_t{is.bundle.count} * (1000 + off.count) / 1000};
    };
    said.full = ends(asks.full_off);
    said.half = ends(asks.half_off);
    if (is.report) said.measured = is.report->weight.count;
    else said.measured_word = "none";
    const bool full = is.report && mark_prunings_weighed(is, house) == full_mark;
    const bool old_wood = is.report && is.old_wood.count > 0 && as_heavy_as(is.report->weight, is.bundle + is.old_wood, house);
    const bool no_ends = is.report && is.ends.count > 0 && as_heavy_as(is.report->weight, is.bundle - is.ends, house);
    said.key = TextKey{!is.report                                ? "rule.prunings-weighed.none"
                       : full                                    ? "rule.prunings-weighed.full"
                       : old_wood                                ? "rule.prunings-weighed.old-wood"
                       : no_ends                                 ? "rule.prunings-weighed.no-ends"
                       : !is.report->tared                       ? "rule.prunings-weighed.not-tared"
                       : is.report->weight > is.bundle           ? "rule.prunings-weighed.heavy"
                                                                 : "rule.prunings-weighed.light"};
    said.arguments = {{"measured", is.report ? is.report->weight : Mass{}},
                      {"bundle", is.bundle},
                      {"ends", is.ends},
                      {"old", is.old_wood}};
    said.if_lost = Mend::now;
    return said;
}

const Rule prunings_weighed{RuleName::prunings_weighed,
                            {"rule.prunings-weighed.asks"},
                            Group::tidiness,
                            Step::look_back,
                            Per::vine,
                            Status::choice,
                            prunings_weighed_claims,
                            {""}};

}  // namespace spurwright::rules
