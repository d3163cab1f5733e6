#include "sim/rules/kickers.h"

#include "sim/rules/wood_left_behind.h"

namespace spurwright::rules {
namespace {

int spares_missing(const StandingFacts& is, const HouseRules& house) {
    return std::max(0, house.standing.spares - (is.spares_cut - is.spares_early));
}

}  // namespace

PerMille mark_kicker_kept(const StandingFacts& is, const HouseRules& house) {
    if (house.standing.frost_over) return is.late == 0 ? full_mark : no_mark;
    const auto whole_ones = static_cast<int>(is.kickers.size());
    if (whole_ones >= house.standing.kickers) return full_mark;
    return whole_ones > 0 || !is.spoilt.empty() ? half_mark : no_mark;
}

Said say_kicker_kept(const StandingFacts& is, const HouseRules& house) {
    const auto whole_ones = static_cast<std::int64_t>(is.kickers.size());
    const bool over = house.standing.frost_over, enough = whole_ones >= house.standing.kickers;
    Said said;
    said.measured = (over ? is.late : whole_ones) * 1000;
    said.unit = Unit::count;
    said.full = over ? Wanted{0, 0} : Wanted{house.standing.kickers * 1000, house.standing.kickers * 1000};
    said.key = TextKey{over                  ? (is.late == 0 ? "rule.kicker-kept.taken-off" : "rule.kicker-kept.late")
                       : enough              ? "rule.kicker-kept.full"
                       : !is.spoilt.empty()  ? "rule.kicker-kept.spoilt"
                       : whole_ones > 0      ? "rule.kicker-kept.too-few"
                                             : "rule.kicker-kept.none"};
    said.arguments = {{"n", Count{over ? is.late : whole_ones}},
                      {"wanted", Count{house.standing.kickers}},
                      {"parts", list_of(is.spoilt.empty() || enough ? is.kickers : is.spoilt)}};
    said.if_lost = over ? Mend::now : Mend::next_winter;
    return said;
}

PerMille mark_kicker_absent(const StandingFacts& is, const HouseRules& house) {
    const int slips = is.forgotten + spares_missing(is, house);
    return slips == 0 ? full_mark : slips == 1 ? half_mark : no_mark;
}

Said say_kicker_absent(const StandingFacts& is, const HouseRules& house) {
    const int missing = spares_missing(is, house);
    Said said;
    said.measured = (is.forgotten + missing) * 1000;
    said.unit = Unit::count;
    said.full = Wanted{0, 0};
    said.half = Wanted{0, 1000};
    const bool could_be_kicker = !house.standing.frost_over && static_cast<int>(is.kickers.size()) < house.standing.kickers;
    said.key = TextKey{is.forgotten > 0 && could_be_kicker     ? "rule.kicker-absent.unmarked"
                       : is.forgotten > 0                      ? "rule.kicker-absent.forgotten"
                       : missing > 0 && is.spares_early > 0    ? "rule.kicker-absent.early"
                       : missing > 0                           ? "rule.kicker-absent.no-spare"
                                                               : "rule.kicker-absent.full"};
    said.arguments = {{"n", Count{is.forgotten > 0 ? is.forgotten : missing}}, {"wanted", Count{house.standing.spares}}};
    said.if_lost = Mend::now;
    return said;
}

const Rule kicker_kept{RuleName::kicker_kept, {"rule.kicker-kept.asks"}, Group::tidiness,     Step::lay_and_tie,
                       Per::vine,             Status::choice,            kicker_kept_claims, {""}};
const Rule kicker_absent{RuleName::kicker_absent, {"rule.kicker-absent.asks"}, Group::tidiness,       Step::lay_and_tie,
                         Per::vine,               Status::choice,              kicker_absent_claims, {""}};

}  // namespace spurwright::rules
