#include "sim/rules/wood_left_behind.h"

#include "sim/rules/wound_size.h"

namespace spurwright::rules {

std::string list_of(const std::vector<AxisId>& parts) {
    constexpr std::size_t most = 5;
    std::string names;
    for (std::size_t i = 0; i < parts.size() && i < most; ++i) names += (i ? ", " : "") + name_of(parts[i]);
    return parts.size() > most ? names + ", ..." : names;
}

PerMille mark_wood_left_behind(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing) {
    if (no_work_done(cuts, clearing) || !clearing.old_canes_left.empty() || clearing.pieces_left.size() > 1)
        return no_mark;
    return clearing.pieces_left.empty() ? full_mark : half_mark;
}

Said say_wood_left_behind(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing) {
    Said said;
    const auto left = static_cast<std::int64_t>(clearing.pieces_left.size());
    said.measured = left * 1000;
    said.unit = Unit::count;
    said.full = Wanted{0, 0};
    said.half = Wanted{0, 1000};
    std::string_view key = "rule.wood-left-behind.full";
    if (!clearing.old_canes_left.empty())
        key = "rule.wood-left-behind.old-cane";
    else if (left > 0)
        key = "rule.wood-left-behind.pieces";
    else if (no_work_done(cuts, clearing))
        key = "rule.wood-left-behind.no-cut";
    said.key = TextKey{key};
    said.arguments = {
        {"n", Count{left}},
        {"parts", list_of(clearing.old_canes_left.empty() ? clearing.pieces_left : clearing.old_canes_left)}};
    said.if_lost = Mend::now;
    return said;
}

Said say_share_removed(const ClearingFacts& clearing) {
    const PerMille share = share_of(clearing.one_year_nodes_removed, clearing.one_year_nodes);
    Said said;
    said.measured = share.count;
    said.unit = Unit::share;
    said.key = TextKey{"rule.wood-left-behind.share"};
    said.arguments = {
        {"measured", share}, {"off", Count{clearing.one_year_nodes_removed}}, {"of", Count{clearing.one_year_nodes}}};
    said.if_lost = Mend::nothing;
    return said;
}

const Rule wood_left_behind{RuleName::wood_left_behind,
                            {"rule.wood-left-behind.asks"},
                            Group::tidiness,
                            Step::clear,
                            Per::vine,
                            Status::choice,
                            wood_left_behind_claims,
                            {""}};

}  // namespace spurwright::rules
