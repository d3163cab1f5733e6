#include "sim/rules/first_pass.h"

#include <algorithm>

#include "sim/rules/end_cut.h"
#include "sim/rules/judge.h"
#include "sim/rules/measure_cuts.h"
#include "sim/rules/tool_choice.h"
#include "sim/rules/wound_size.h"

namespace spurwright::rules {
namespace {

constexpr std::int32_t all_stubs_weigh = 600, tools_weigh = 150;

Length standing_of(const Vine& after, const Axis& axis) {
    if (axis.removed) return {};
    const PieceEnd end = end_of_piece(after, axis);
    return along(after, axis, end.last_node) + end.beyond;
}

std::string_view key_of_stub(const StubFacts& stub, PerMille mark, const HouseRules& house) {
    if (stub.gone) return stub.good ? "first-pass.gone" : "first-pass.gone-well";
    if (mark == full_mark) return stub.left < house.first_pass.band.full.low ? "first-pass.short-cane" : "first-pass.full";
    return stub.left < house.first_pass.band.full.low ? "first-pass.short" : "first-pass.long";
}

}  // namespace

FirstPassFacts measure_first_pass(const Vine& before, const Vine& after, const HouseRules& house) {
    FirstPassFacts facts;
    const CordonRow rows = cordon_row(before, house);
    for (const Side side : both_sides)
        for (const RowCane& cane : rows[index_of(side)]) {
            const Axis &was = *before.find(cane.axis), &is = *after.find(cane.axis);
            const bool gone = is.removed || is.node_count < 2 || after.nodes_of(is)[1].removed;
            facts.stubs.push_back({cane.axis, side, along(before, was, was.node_count - 1), gone ? Length{} : standing_of(after, is), cane.good, gone});
        }
    facts.cuts = measure_cuts(before, after, house, {});
    return facts;
}

PerMille mark_stub(const StubFacts& stub, const HouseRules& house) {
    if (stub.gone) return stub.good ? no_mark : full_mark;
    const auto& band = house.first_pass.band;
    const bool was_short = stub.whole <= band.full.high && stub.left >= std::min(stub.whole, band.full.low) - Length{1'000};
    return was_short ? full_mark : mark_in(band, stub.left);
}

Judgement judge_first_pass(const Vine& before, const Vine& after, const HouseRules& house) {
    const FirstPassFacts facts = measure_first_pass(before, after, house);
    Judgement judgement;
    std::int32_t left = 1'000 - tools_weigh;
    const auto add = [&](const Rule& rule, std::string on, Side side, Tenths share, PerMille mark, Said said) {
        Finding finding;
        finding.rule = &rule;
        finding.on = std::move(on);
        finding.side = side;
        finding.out_of = share;
        finding.points = {share.count * mark.count / 1000};
        finding.status = Status::choice;
        finding.step = rule.step;
        finding.mend = finding.lost().count > 0 ? said.if_lost : Mend::nothing;
        finding.said = std::move(said);
        judgement.points_before_caps += finding.points;
        judgement.findings.push_back(std::move(finding));
    };
    const auto count = static_cast<std::int32_t>(facts.stubs.size());
    const Tenths each{count ? all_stubs_weigh / count : 0};
    for (const StubFacts& stub : facts.stubs) {
        const PerMille mark = mark_stub(stub, house);
        Said said = measured_in(Unit::mm, stub.left, house.first_pass.band.full, house.first_pass.band.half, key_of_stub(stub, mark, house),
                                {{"part", stub.axis}, {"measured", stub.left}, {"low", house.first_pass.band.full.low}, {"high", house.first_pass.band.full.high}});
        said.if_lost = stub.left > house.first_pass.band.full.high ? Mend::now : Mend::next_winter;
        add(end_cut, name_of(stub.axis), stub.side, each, mark, std::move(said));
        left -= each.count;
    }
    // Old wood is left alone: every cut in it is one that the second pass would have made smaller, or not at all.
    const CutFacts* old = nullptr;
    for (const CutFacts& cut : facts.cuts)
        if (cut.on_vine && cut.wood_age >= 2 && (!old || cut.diameter > old->diameter)) old = &cut;
    Said wounds;
    wounds.unit = Unit::mm;
    wounds.measured = old ? old->diameter.count : 0;
    wounds.key = TextKey{facts.cuts.empty() ? "first-pass.no-cut" : old ? "first-pass.old-wood" : "first-pass.no-old-wood"};
    if (old) wounds.arguments = {{"part", old->axis}, {"measured", old->diameter}};
    wounds.if_lost = facts.cuts.empty() ? Mend::now : Mend::carried;
    const bool idle = facts.cuts.empty() && std::any_of(facts.stubs.begin(), facts.stubs.end(), [&](const StubFacts& s) { return mark_stub(s, house) < full_mark; });
    add(wound_size, old ? name_of(old->axis) : "", Side::none, {left}, idle || old ? no_mark : full_mark, std::move(wounds));
    ClearingFacts clearing;
    clearing.any_cut_due = idle;
    clearing.pieces_kept = true;
    add(tool_choice, "", Side::none, {tools_weigh}, mark_tool_choice(facts.cuts, clearing, house), say_tool_choice(facts.cuts, clearing, house));
    judgement.points = judgement.points_before_caps;
    return judgement;
}

}  // namespace spurwright::rules
