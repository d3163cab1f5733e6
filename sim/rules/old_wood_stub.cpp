#include "sim/rules/old_wood_stub.h"

namespace spurwright::rules {
namespace {

// Dead wood has no living rim to dry back.
bool counts(const CutFacts& cut) { return cut.on_vine && cut.wood_age >= 2 && !cut.dead_wood && !cut.on_trunk; }

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

Said say_old_wood_stub(const std::vector<CutFacts>& cuts, const ClearingFacts& clearing, const HouseRules& house) {
    const auto& asks = house.old_wood_stub.band;
    const CutFacts* worst = nullptr;
    int made = 0;
    for (const CutFacts& cut : cuts) {
        if (!counts(cut)) continue;
        ++made;
        if (!worst || mark_stub(cut, house) < mark_stub(*worst, house)) worst = &cut;
    }
    const int left = clearing.old_cuts_not_made;
    Said said;
    said.unit = Unit::ratio;
    said.full = wanted(asks.full);
    said.half = wanted(asks.half);
    if (worst) said.measured = worst->stub.count;
    std::string_view key;
    if (worst && mark_stub(*worst, house) < full_mark) {
        const bool brief = worst->stub < asks.full.low;
        key = brief ? (worst->stub < asks.half.low ? "rule.old-wood-stub.flush" : "rule.old-wood-stub.short")
                    : (worst->stub > asks.half.high ? "rule.old-wood-stub.very-long" : "rule.old-wood-stub.long");
        said.if_lost = brief ? Mend::carried : Mend::now;
    } else if (left > 0) {
        key = made ? "rule.old-wood-stub.some-not-made" : "rule.old-wood-stub.not-made";
    } else {
        key = made ? "rule.old-wood-stub.full" : "rule.old-wood-stub.none-due";
    }
    if (left > 0) said.if_lost = Mend::now;
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
