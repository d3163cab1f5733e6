#include "sim/rules/cane_count.h"

namespace spurwright::rules {
namespace {

std::string_view case_without_cane(NoCane why) {
    switch (why) {
    case NoCane::marked_not_laid: return "rule.cane-count.not-laid";
    case NoCane::broken: return "rule.cane-count.broken";
    case NoCane::too_few_buds: return "rule.cane-count.too-few-buds";
    case NoCane::old_wood: return "rule.cane-count.old-wood";
    case NoCane::none_laid: break;
    }
    return "rule.cane-count.none";
}

}  // namespace

std::array<PerMille, 2> marks_cane_count(const PairFacts& pair, const Asked& asked) {
    std::array<PerMille, 2> marks{};
    if (asked.single) {  // one in all, to either side
        const bool one = pair.cane[0] + pair.cane[1] + pair.more[0] + pair.more[1] == 1;
        for (std::size_t side = 0; side < 2; ++side)
            if (asked.cane[side] && pair.cane[side] && one) marks[side] = full_mark;
        return marks;
    }
    std::array<int, 2> too_many = pair.more;
    for (std::size_t side = 0; side < 2; ++side) {
        if (!pair.cane[side]) continue;
        if (asked.cane[side])
            marks[side] = full_mark;
        else
            ++too_many[side];
    }
    for (std::size_t side = 0; side < 2; ++side)
        for (int n = 0; n < too_many[side]; ++n) marks[marks[side] == full_mark ? side : 1 - side] = no_mark;
    return marks;
}

Said say_cane_count(const SidePieces& pieces, Side side, const Asked& asked, PerMille mark, const HouseRules& house) {
    const bool asked_here = asked.cane[index_of(side)], asked_there = asked.cane[index_of(other(side))];
    const int laid = (pieces.cane ? 1 : 0) + static_cast<int>(pieces.more_canes.size());
    std::string_view key;
    if (!asked_here)
        key = !pieces.cane  ? "rule.cane-count.not-asked"
              : asked_there ? "rule.cane-count.not-asked-laid"
                            : "rule.cane-count.none-asked-laid";
    else if (!pieces.cane)
        key = case_without_cane(pieces.why_none);
    else if (mark == full_mark)
        key = "rule.cane-count.full";
    else
        key = asked.single ? "rule.cane-count.too-many-single"
              : laid > 1   ? "rule.cane-count.too-many"
                           : "rule.cane-count.too-many-on-the-vine";
    Said said;
    said.measured = laid * 1000;
    said.unit = Unit::count;
    if (asked_here) said.full = Wanted{1000, 1000};
    said.key = TextKey{key};
    said.arguments = {{"side", side_key(side)},
                      {"part", pieces.cane ? pieces.cane->axis : pieces.instead},
                      {"n", Count{pieces.cane ? laid : pieces.instead_buds}},
                      {"least", Count{house.cane_count.floor_buds}}};
    said.if_lost = pieces.cane || pieces.good_cane_stands ? Mend::now : Mend::next_winter;
    return said;
}

const Rule cane_count{RuleName::cane_count, {"rule.cane-count.asks"}, Group::bud_load,         Step::choose, Per::cane,
                      Status::choice,       cane_count_claims,        {"rule.cane-count.none"}};

}  // namespace spurwright::rules
