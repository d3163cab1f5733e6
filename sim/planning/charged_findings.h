// Which choice each loss goes back to: charges.h says what an edit cost in all, this says in which findings it shows.
// The best choice's findings are carried from what was open before each charged edit to what was open after it, then to
// what was kept, then to what the hand made of it; each step's change is that step's share. So for every finding
//   lost = what the best plan loses there too + shares of edits + what can still be mended + the hand's share, exactly.
// Must not know: sentences.
#pragma once

#include <vector>

#include "sim/planning/cordon_charges.h"
#include "sim/planning/planning.h"

namespace spurwright::planning {

enum class LostTo : unsigned char { vine, act, open, hand };
constexpr auto words_of(LostTo) { return std::to_array<std::string_view>({"vine", "act", "open", "hand"}); }

struct FindingShare {
    LostTo to{};
    std::size_t edit = 0;  // of an act: into the plan, from 0
    Tenths lost;           // below 0 where it won
    bool operator==(const FindingShare&) const = default;
};
using FindingShares = std::vector<FindingShare>;  // in the order of the work, the vine's first; without zeros

// One for each finding of `mine`. `found` are the charges of the same vine, house, planning and plan.
std::vector<FindingShares> charged_findings(const Vine& before, const rules::HouseRules& house, const Planning& planning,
                                            const Charges& found, const rules::Judgement& mine);
// Of a cordon, whose row has as many findings of a rule as spurs: the shares are those of the rule on that side.
std::vector<FindingShares> charged_findings(const Vine& before, const rules::HouseRules& house, const CordonTables& tables,
                                            const CordonCharges& found, const rules::Judgement& mine);

// The share that took most; none where nothing was lost.
const FindingShare* most_of(const FindingShares& shares);

}  // namespace spurwright::planning
