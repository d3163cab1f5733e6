#include "sim/rules/wound_size.h"

namespace spurwright::rules {
namespace {

bool is_needless(const CutFacts& cut, const HouseRules& house) {
    if (!cut.on_vine || cut.wood_age < 2 || cut.needed) return false;
    return !(cut.dead_wood &&
             cut.stub >= house.old_wood_stub.band.half.low);  // through dead wood, leaving its stub: no wound
}

PerMille mark_of(const CutFacts& cut, const HouseRules& house) {
    if (cut.on_trunk || cut.diameter > house.wound_size.none_from) return no_mark;
    return cut.diameter >= house.wound_size.half_from ? half_mark : full_mark;
}

const CutFacts* worst_of(const std::vector<CutFacts>& cuts, const HouseRules& house) {
    const CutFacts* worst = nullptr;
    for (const CutFacts& cut : cuts) {
        if (!is_needless(cut, house)) continue;
        if (!worst || mark_of(cut, house) < mark_of(*worst, house) ||
            (mark_of(cut, house) == mark_of(*worst, house) && cut.diameter > worst->diameter))
            worst = &cut;
    }
    return worst;
}

}  // namespace

bool no_work_done(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing) {
    return cuts.empty() && (clearing.any_cut_due || !clearing.pieces_kept);
}

PerMille mark_wound_size(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house) {
    if (no_work_done(cuts, clearing)) return no_mark;
    const CutFacts* worst = worst_of(cuts, house);
    return worst ? mark_of(*worst, house) : full_mark;
}

Said say_wound_size(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house) {
    const auto& asks = house.wound_size;
    const CutFacts* worst = worst_of(cuts, house);
    std::string_view key;
    if (no_work_done(cuts, clearing))
        key = "rule.wound-size.no-cut";
    else if (!worst)
        key = "rule.wound-size.full";
    else if (worst->on_trunk)
        key = "rule.wound-size.trunk";
    else if (worst->diameter > asks.none_from)
        key = "rule.wound-size.large";
    else
        key = worst->diameter >= asks.half_from ? "rule.wound-size.medium" : "rule.wound-size.small";
    Said said;
    said.unit = Unit::mm;
    said.full = Wanted{std::nullopt, asks.half_from.count};
    said.half = Wanted{std::nullopt, asks.none_from.count};
    if (worst)
        said.measured = worst->diameter.count;
    else
        said.measured_word = "none";
    said.key = TextKey{key};
    said.arguments = {{"part", worst ? worst->axis : AxisId{}},
                      {"measured", worst ? worst->diameter : Length{}},
                      {"high", asks.half_from}};
    said.if_lost = no_work_done(cuts, clearing) ? Mend::now : Mend::carried;
    return said;
}

bool wants_protection(const CutFacts& cut, const HouseRules& house) {
    return cut.on_vine && cut.wood_age >= 2 && cut.needed && !cut.dead_wood &&
           cut.diameter > house.wound_size.half_from;
}

Said say_protect(const CutFacts& cut) {
    Said said;
    said.measured = cut.diameter.count;
    said.unit = Unit::mm;
    said.key = TextKey{"rule.wound-size.protect"};
    said.arguments = {{"part", cut.axis}, {"measured", cut.diameter}};
    said.if_lost = Mend::now;
    return said;
}

const Rule wound_size{RuleName::wound_size, {"rule.wound-size.asks"}, Group::cuts, Step::clear, Per::vine,
                      Status::choice,       wound_size_claims,        {""}};

}  // namespace spurwright::rules
