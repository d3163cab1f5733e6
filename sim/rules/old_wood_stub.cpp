#include "sim/rules/old_wood_stub.h"

#include <algorithm>

namespace spurwright::rules {
namespace {

// Dead wood has no living rim to dry back.
bool counts(const CutFacts& cut) { return cut.on_vine && cut.wood_age >= 2 && !cut.dead_wood && !cut.on_trunk; }
bool too_short(const CutFacts& cut, const HouseRules& house) { return cut.stub < house.old_wood_stub.band.full.low; }
bool stays(const CutFacts& cut, const HouseRules& house) { return too_short(cut, house) && !cut.again_on; }

}  // namespace

PerMille mark_stub(const CutFacts& cut, const HouseRules& house) {
    if (cut.forced_short && cut.stub < house.old_wood_stub.band.full.low) return full_mark;
    return mark_in(house.old_wood_stub.band, cut.stub);
}

PerMille mark_old_wood_stub(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house) {
    int sum = 0, count = clearing.old_cuts_not_made;
    for (const CutFacts& cut : cuts) {
        if (!counts(cut)) continue;
        sum += mark_stub(cut, house).count;
        ++count;
    }
    return count ? PerMille{sum / count} : full_mark;
}

PerMille mark_old_wood_mended(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house) {
    int count = clearing.old_cuts_not_made, sum = count * full_mark.count;
    std::vector<AxisId> again;  // one cut there stands for all that it takes off
    for (const CutFacts& cut : cuts) {
        if (!counts(cut)) continue;
        if (too_short(cut, house) && cut.again_on) {
            if (std::find(again.begin(), again.end(), cut.again_on) != again.end()) continue;
            again.push_back(cut.again_on);
        }
        sum += stays(cut, house) ? mark_stub(cut, house).count : full_mark.count;
        ++count;
    }
    return count ? PerMille{sum / count} : full_mark;
}

Said say_old_wood_stub(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house, bool mended) {
    const auto& asks = house.old_wood_stub.band;
    const CutFacts *worst = nullptr, *told = nullptr;  // of all; of those that can be mended, or of those that cannot
    const auto is_worse = [&](const CutFacts& cut, const CutFacts* than) { return !than || mark_stub(cut, house) < mark_stub(*than, house); };
    int made = 0;
    for (const CutFacts& cut : cuts) {
        if (!counts(cut)) continue;
        ++made;
        if (is_worse(cut, worst)) worst = &cut;
        if (stays(cut, house) != mended && is_worse(cut, told)) told = &cut;
    }
    const int left = clearing.old_cuts_not_made;
    Said said;
    said.unit = Unit::ratio;
    said.full = wanted(asks.full);
    said.half = wanted(asks.half);
    const bool wrong = told && mark_stub(*told, house) < full_mark;
    if (wrong) worst = told;
    if (worst) said.measured = worst->stub.count;
    std::string_view key;
    if (wrong) {
        key = too_short(*worst, house) ? (worst->stub < asks.half.low ? "rule.old-wood-stub.flush" : "rule.old-wood-stub.short")
                    : (worst->stub > asks.half.high ? "rule.old-wood-stub.very-long" : "rule.old-wood-stub.long");
    } else if (left > 0) {
        key = made ? "rule.old-wood-stub.some-not-made" : "rule.old-wood-stub.not-made";
    } else {
        key = made ? "rule.old-wood-stub.full" : "rule.old-wood-stub.none-due";
    }
    said.if_lost = mended ? Mend::now : Mend::carried;
    if (!made) said.measured_word = "none";
    said.key = TextKey{key};
    said.arguments = {
        {"part", worst ? worst->axis : AxisId{}},     {"measured", Ratio{worst ? worst->stub.count / 1000.0 : 0.0}},
        {"n", Count{left > 0 ? left : made}},         {"made", Count{made}},
        {"low", Ratio{asks.full.low.count / 1000.0}}, {"high", Ratio{asks.full.high.count / 1000.0}}};
    return said;
}

const Rule old_wood_stub{RuleName::old_wood_stub, {"rule.old-wood-stub.asks"}, Group::cuts, Step::clear, Per::vine,
                         Status::choice,          old_wood_stub_claims,        {""}};

}  // namespace spurwright::rules
