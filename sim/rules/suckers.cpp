#include "sim/rules/suckers.h"

#include "sim/rules/wood_left_behind.h"

namespace spurwright::rules {

PerMille mark_suckers(const SuckerFacts& facts) {
    if (!facts.left.empty()) return no_mark;
    return facts.stubs.empty() ? full_mark : half_mark;
}

Said say_suckers(const SuckerFacts& facts, const HouseRules& house) {
    const std::vector<AxisId>& at_fault = facts.left.empty() ? facts.stubs : facts.left;
    Said said;
    said.measured = static_cast<std::int64_t>(at_fault.size()) * 1000;
    said.unit = Unit::count;
    said.full = Wanted{0, 0};
    said.key = TextKey{!facts.left.empty()    ? "rule.suckers.left"
                       : !facts.stubs.empty() ? "rule.suckers.stubs"
                                              : "rule.suckers.full"};
    said.arguments = {{"n", Count{at_fault.empty() ? facts.removed : static_cast<std::int64_t>(at_fault.size())}},
                      {"parts", list_of(at_fault)},
                      {"high", house.suckers.left_to}};
    said.if_lost = Mend::now;
    return said;
}

const Rule suckers{RuleName::suckers, {"rule.suckers.asks"}, Group::tidiness, Step::clear,
                   Per::vine,         Status::choice,        suckers_claims,  {""}};

}  // namespace spurwright::rules
