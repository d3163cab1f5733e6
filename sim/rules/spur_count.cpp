#include "sim/rules/spur_count.h"

namespace spurwright::rules {

std::array<PerMille, 2> marks_spur_count(const std::array<bool, 2>& spur, const std::array<int, 2>& more,
                                         const Asked& asked) {
    std::array<PerMille, 2> marks{};
    if (asked.single) {  // one in all, of either side; one too many takes half
        const int too_many = more[0] + more[1];
        for (std::size_t side = 0; side < 2; ++side)
            if (asked.spur[side] && spur[side]) marks[side] = too_many == 0 ? full_mark : too_many == 1 ? half_mark : no_mark;
        return marks;
    }
    for (std::size_t side = 0; side < 2; ++side)
        if (asked.spur[side] && spur[side]) marks[side] = full_mark;
    for (std::size_t side = 0; side < 2; ++side)
        for (int n = 0; n < more[side]; ++n) marks[marks[side] == full_mark ? side : 1 - side] = no_mark;
    return marks;
}

Said say_spur_count(const SidePieces& pieces, Side side, bool asked_here, bool single, PerMille mark) {
    const int kept = (pieces.spur ? 1 : 0) + static_cast<int>(pieces.more_spurs.size());
    std::string_view key;
    if (!asked_here)
        key = pieces.spur ? "rule.spur-count.not-asked-kept" : "rule.spur-count.not-asked";
    else if (!pieces.spur)
        key = pieces.spur_not_cut ? "rule.spur-count.not-cut"
              : pieces.bare_stub  ? "rule.spur-count.no-count-bud"
                                  : "rule.spur-count.none";
    else if (mark == full_mark)
        key = "rule.spur-count.full";
    else
        key = single     ? "rule.spur-count.too-many-single"
              : kept > 1 ? "rule.spur-count.too-many"
                         : "rule.spur-count.too-many-on-the-vine";
    Said said;
    said.measured = kept * 1000;
    said.unit = Unit::count;
    if (asked_here) said.full = Wanted{1000, 1000};
    said.key = TextKey{key};
    said.arguments = {{"side", side_key(side)},
                      {"n", Count{kept}},
                      {"part", pieces.spur           ? pieces.spur->axis
                               : pieces.spur_not_cut ? pieces.spur_not_cut
                                                     : pieces.bare_stub}};
    said.if_lost = pieces.spur || pieces.good_spur_stands ? Mend::now : Mend::next_winter;
    return said;
}

Said say_row_count(const SidePieces& pieces, Side side, int asked) {
    const int kept = static_cast<int>(pieces.row.size() + pieces.more_spurs.size());
    Said said;
    said.measured = kept * 1000;
    said.unit = Unit::count;
    said.full = Wanted{asked * 1000, asked * 1000};
    said.key = TextKey{asked == 0    ? "rule.spur-count.row-not-asked"
                       : kept < asked ? "rule.spur-count.row-few"
                       : kept > asked ? "rule.spur-count.row-many"
                                      : "rule.spur-count.row-full"};
    said.arguments = {{"side", side_key(side)}, {"n", Count{kept}}, {"asked", Count{asked}}};
    said.if_lost = kept > asked || pieces.good_spur_stands ? Mend::now : Mend::next_winter;
    return said;
}

const Rule spur_count{
    RuleName::spur_count, {"rule.spur-count.asks"}, Group::spurs, Step::spurs, Per::spur, Status::choice,
    spur_count_claims,    {"rule.spur-count.none"}};

}  // namespace spurwright::rules
