#include "sim/rules/judge.h"

#include <algorithm>

#include "sim/rules/bud_kill_adjust.h"
#include "sim/rules/bud_load.h"
#include "sim/rules/cane_count.h"
#include "sim/rules/cane_diameter.h"
#include "sim/rules/cane_end_diameter.h"
#include "sim/rules/cane_health.h"
#include "sim/rules/cane_reach.h"
#include "sim/rules/cane_side.h"
#include "sim/rules/caps.h"
#include "sim/rules/end_cut.h"
#include "sim/rules/internode_evenness.h"
#include "sim/rules/internode_length.h"
#include "sim/rules/kickers.h"
#include "sim/rules/measure_pieces.h"
#include "sim/rules/old_wood_stub.h"
#include "sim/rules/origin_distance.h"
#include "sim/rules/origin_height.h"
#include "sim/rules/piece_points.h"
#include "sim/rules/prunings_weighed.h"
#include "sim/rules/rule_list.h"
#include "sim/rules/spur_buds.h"
#include "sim/rules/spur_count.h"
#include "sim/rules/spur_direction.h"
#include "sim/rules/spur_place.h"
#include "sim/rules/spur_size.h"
#include "sim/rules/suckers.h"
#include "sim/rules/tool_choice.h"
#include "sim/rules/tying.h"
#include "sim/rules/wood_age.h"
#include "sim/rules/wood_left_behind.h"
#include "sim/rules/wound_size.h"

namespace spurwright::rules {
namespace {

template <std::size_t n>
PerMille mark_of(RuleName name, const std::array<RuleMark, n>& marks) {
    for (const RuleMark& m : marks)
        if (m.rule == name) return m.mark;
    return no_mark;
}

// Arms that reach at least so far are formed: of half the spacing two thirds (our choice). A shorter one is still being
// built, which is another job.
constexpr PerMille formed_of_spacing{333};

// The rules whose loss can still be made good while a better cane stands.
bool mended_by_a_better_cane(RuleName name) {
    return name == RuleName::cane_diameter || name == RuleName::internode_length || name == RuleName::origin_distance ||
           name == RuleName::cane_side || name == RuleName::cane_health;
}

Said say_of_cane(RuleName name, const CaneFacts& cane, const HouseRules& house, bool short_load) {
    switch (name) {
    case RuleName::cane_diameter: return say_cane_diameter(cane, house);
    case RuleName::cane_end_diameter: return say_cane_end_diameter(cane, house);
    case RuleName::internode_length: return say_internode_length(cane, house);
    case RuleName::internode_evenness: return say_internode_evenness(cane, house);
    case RuleName::origin_distance: return say_origin_distance(cane, house);
    case RuleName::origin_height: return say_origin_height(cane, house);
    case RuleName::cane_side: return say_cane_side(cane, house);
    case RuleName::wood_age: return say_wood_age(cane);
    case RuleName::cane_health: return say_cane_health(cane, house);
    case RuleName::cane_reach: return say_cane_reach(cane, house, short_load);
    case RuleName::tying: return say_tying(cane, house);
    default: return say_end_cut(cane.end, cane.axis, house);
    }
}

Said say_of_spur(RuleName name, const SidePieces& pieces, const HouseRules& house) {
    const SpurFacts& spur = *pieces.spur;
    switch (name) {
    case RuleName::spur_buds: return say_spur_buds(spur, house);
    case RuleName::spur_size: return say_spur_size(spur, house);
    case RuleName::spur_direction: return say_spur_direction(spur, house);
    case RuleName::spur_place:
        return say_spur_place(place_of(spur, pieces.cane ? &*pieces.cane : nullptr), spur.axis, house);
    default: return say_end_cut(spur.end, spur.axis, house);
    }
}

// Writes the findings of one plan, rule by rule.
class Writer {
public:
    Writer(const PlanFacts& plan, const Asked& asked, const HouseRules& house)
        : plan_(plan), asked_(asked), house_(house), target_(target_buds(house, plan.load.spacing)),
          short_(short_load(plan.load.counted(), target_, house)), cane_counts_(marks_cane_count(plan.pair(), asked)),
          spur_counts_(spur_counts()) {
        judgement_.findings.reserve(48);
        for (const Side side : both_sides) {
            if (at(side).cane) cane_marks_[index_of(side)] = cane_marks(*at(side).cane, house, short_);
            if (at(side).spur) spur_marks_[index_of(side)] = spur_marks(*at(side).spur, house);
        }
    }

    Judgement write() {
        for (const Rule* rule : all_rules) {
            if (!house_.of(rule->name).on) continue;
            if (asked_.cordon && rule->per != Per::vine) {
                if (rule->per != Per::cane)
                    for (const Side side : both_sides) write_row(*rule, side);
                continue;
            }
            if (rule->per == Per::cane || rule->per == Per::cane_and_spur)
                for (const Side side : cane_sides()) write_cane(*rule, side);
            if (rule->per == Per::spur || rule->per == Per::cane_and_spur)
                for (const Side side : spur_sides()) write_spur(*rule, side);
            if (rule->per == Per::vine) write_once(*rule);
        }
        write_remarks();
        for (const Finding& finding : judgement_.findings) judgement_.points_before_caps += finding.points;
        judgement_.caps = caps_of(plan_, asked_, house_);
        judgement_.points = held_under(judgement_.caps, judgement_.points_before_caps);
        return std::move(judgement_);
    }

private:
    const SidePieces& at(Side side) const { return plan_.sides[index_of(side)]; }

    // Where a finding about canes, or spurs, is due: on both sides; of a single cane on its side, or on that of what stands
    // for it, or on neither.
    std::vector<Side> cane_sides() const {
        if (!asked_.single) return {Side::left, Side::right};
        for (const Side side : both_sides)
            if (at(side).cane) return {side};
        const AxisId left = at(Side::left).instead, right = at(Side::right).instead;
        if (!left && !right) return {Side::none};
        return {left && (!right || at(Side::left).why_none >= at(Side::right).why_none) ? Side::left : Side::right};
    }
    std::vector<Side> spur_sides() const {
        if (!asked_.single) return {Side::left, Side::right};
        for (const Side side : both_sides)
            if (at(side).spur) return {side};
        for (const Side side : both_sides)
            if (at(side).spur_not_cut || at(side).bare_stub) return {side};
        return {Side::none};
    }

    std::array<PerMille, 2> spur_counts() const {
        std::array<bool, 2> spur{};
        std::array<int, 2> more{};
        for (std::size_t side = 0; side < 2; ++side) {
            spur[side] = plan_.sides[side].spur.has_value();
            more[side] = static_cast<int>(plan_.sides[side].more_spurs.size());
        }
        return marks_spur_count(spur, more, asked_);
    }

    void add(const Rule& rule, std::string on, Side side, Tenths share, PerMille mark, Said said) {
        add_points(rule, std::move(on), side, share, points_of(share, mark), std::move(said));
    }

    void add_points(const Rule& rule, std::string on, Side side, Tenths share, Tenths points, Said said) {
        Finding finding;
        finding.rule = &rule;
        finding.on = std::move(on);
        finding.side = side;
        finding.out_of = share;
        finding.points = points;
        finding.status = house_.set_by_house[index_of(rule.name)] ? Status::house : rule.status;
        finding.step = rule.step;
        finding.mend = finding.lost().count > 0 ? said.if_lost : Mend::nothing;
        finding.said = std::move(said);
        (finding.is_remark() ? judgement_.remarks : judgement_.findings).push_back(std::move(finding));
    }

    void add_remark(const Rule& rule, std::string on, Side side, Said said) {
        const Mend mend = said.if_lost;
        add(rule, std::move(on), side, {}, full_mark, std::move(said));
        judgement_.remarks.back().mend = mend;
    }

    void write_cane(const Rule& rule, Side side) {
        const SidePieces& pieces = at(side);
        const bool asked = asked_.cane[index_of(side)];
        const Tenths share = asked_.of_cane(rule.name, side);
        if (rule.name == RuleName::cane_count) {
            const PerMille mark = cane_counts_[index_of(side)];
            return add(rule, pieces.cane ? name_of(pieces.cane->axis) : "", side, share, mark,
                       say_cane_count(pieces, side, asked_, mark, house_));
        }
        if (!asked) return;
        if (!pieces.cane) return write_missing_cane(rule, side, share);
        const CaneFacts& cane = *pieces.cane;
        Said said = say_of_cane(rule.name, cane, house_, short_);
        const PerMille mark = mark_of(rule.name, cane_marks_[index_of(side)]);
        if (mark < full_mark && mended_by_a_better_cane(rule.name) && a_better_one_stands(rule, pieces, share))
            said.if_lost = Mend::now;
        add(rule, name_of(cane.axis), side, share, mark, std::move(said));
    }

    // One that still stands and, laid in its place, would lose no more by this rule than is as good.
    bool a_better_one_stands(const Rule& rule, const SidePieces& pieces, Tenths share) const {
        return std::any_of(pieces.good_standing.begin(), pieces.good_standing.end(), [&](const CaneFacts& cane) {
            const PerMille mark = mark_of(rule.name, cane_marks(cane, house_, short_));
            return wins_back(mark, share);
        });
    }

    void write_missing_cane(const Rule& rule, Side side, Tenths share) {
        if (share.count == 0) return;
        const SidePieces& pieces = at(side);
        const bool old = pieces.why_none == NoCane::old_wood;
        Said said;
        if (rule.name == RuleName::wood_age && old) {
            said = say_old_wood_laid(pieces.instead, pieces.instead_age, side);
        } else {
            said.measured_word = "none";
            said.key = rule.missing;
            said.arguments = {{"side", side_key(side)}};
        }
        const bool stands = mended_by_a_better_cane(rule.name) ? a_better_one_stands(rule, pieces, share) : pieces.good_cane_stands;
        said.if_lost = stands ? Mend::now : Mend::next_winter;
        add(rule, old ? name_of(pieces.instead) : "", side, share, no_mark, std::move(said));
    }

    void write_spur(const Rule& rule, Side side) {
        const SidePieces& pieces = at(side);
        const bool asked = asked_.spur[index_of(side)];
        const Tenths share = asked_.of_spur(rule.name, side);
        const std::string on = pieces.spur ? name_of(pieces.spur->axis) : "";
        if (rule.name == RuleName::spur_count) {
            const PerMille mark = spur_counts_[index_of(side)];
            return add(rule, on, side, share, mark, say_spur_count(pieces, side, asked, asked_.single, mark));
        }
        if (!asked) return;
        if (!pieces.spur) {
            if (share.count == 0) return;
            Said said;
            said.measured_word = "none";
            said.key = rule.name == RuleName::end_cut ? TextKey{"rule.end-cut.missing-spur"} : rule.missing;
            said.arguments = {{"side", side_key(side)}};
            said.if_lost = a_spur_stands(rule, pieces, share) ? Mend::now : Mend::next_winter;
            return add(rule, "", side, share, no_mark, std::move(said));
        }
        const SpurFacts& spur = *pieces.spur;
        const PerMille mark = rule.name == RuleName::spur_place ? spur_place_mark(spur, pieces)
                                                                : mark_of(rule.name, spur_marks_[index_of(side)]);
        add(rule, on, side, share, mark, say_of_spur(rule.name, pieces, house_));
    }

    PerMille spur_place_mark(const SpurFacts& spur, const SidePieces& pieces) const {
        return mark_spur_place(place_of(spur, pieces.cane ? &*pieces.cane : nullptr), house_);
    }

    // One that, cut to two buds now, would lose no more by this rule than is as good.
    bool a_spur_stands(const Rule& rule, const SidePieces& pieces, Tenths share) const {
        return std::any_of(pieces.good_spurs.begin(), pieces.good_spurs.end(), [&](const SpurFacts& spur) {
            const PerMille mark = rule.name == RuleName::spur_place ? spur_place_mark(spur, pieces) : mark_of(rule.name, spur_marks(spur, house_));
            return wins_back(mark, share);
        });
    }

    // Of the spurs along an arm: each by itself, those missing together; how many there are once a side.
    void write_row(const Rule& rule, Side side) {
        const SidePieces& pieces = at(side);
        const int asked = asked_.row[index_of(side)], kept = static_cast<int>(pieces.row.size());
        const Tenths share = asked_.of_spur(rule.name, side);
        if (rule.name == RuleName::spur_count) {
            const int too_many = static_cast<int>(pieces.more_spurs.size());
            return add_points(rule, "", side, {asked * share.count}, {share.count * std::max(0, kept - too_many)},
                              say_row_count(pieces, side, asked));
        }
        for (const auto& one : pieces.row) {
            const PerMille mark = rule.name == RuleName::spur_place ? mark_row_place(one.place, house_)
                                                                    : mark_of(rule.name, spur_marks(one.spur, house_));
            add(rule, name_of(one.spur.axis), side, share, mark, say_in_row(rule.name, one));
        }
        if (kept >= asked || share.count == 0) return;
        Said said;
        said.measured_word = "none";
        said.key = TextKey{"rule.spur-row.missing"};
        said.arguments = {{"side", side_key(side)}, {"n", Count{asked - kept}}, {"of", Count{asked}}};
        said.if_lost = pieces.good_spur_stands ? Mend::now : Mend::next_winter;
        add_points(rule, "", side, {(asked - kept) * share.count}, {}, std::move(said));
    }

    Said say_in_row(RuleName name, const SidePieces::RowSpur& one) const {
        switch (name) {
        case RuleName::spur_buds: return say_spur_buds(one.spur, house_);
        case RuleName::spur_size: return say_spur_size(one.spur, house_);
        case RuleName::spur_direction: return say_spur_direction(one.spur, house_);
        case RuleName::spur_place: return say_row_place(one.place, one.spur.axis, house_);
        default: return say_end_cut(one.spur.end, one.spur.axis, house_);
        }
    }

    // Whether this mark, which further acts can reach, loses no more than is as good.
    bool wins_back(PerMille mark, Tenths share) const { return share - points_of(share, mark) <= house_.acceptable.within; }

    Said mended_load(Tenths share) const {
        Said said = say_bud_load(plan_.load, house_);
        if (!wins_back(mark_bud_load_cleared(plan_.load, house_), share)) said.if_lost = Mend::next_winter;
        return said;
    }

    void write_once(const Rule& rule) {
        const Tenths share = asked_.of_vine(rule.name);
        const auto put = [&](PerMille mark, Said said) { add(rule, "", Side::none, share, mark, std::move(said)); };
        if (share.count == 0) return;
        switch (rule.name) {
        case RuleName::bud_load:
            return put(mark_bud_load(plan_.load, house_), mended_load(share));
        case RuleName::old_wood_stub: {
            const PerMille mark = mark_old_wood_stub(plan_.cuts, plan_.clearing, house_), then = mark_old_wood_mended(plan_.cuts, plan_.clearing, house_);
            return put(mark, say_old_wood_stub(plan_.cuts, plan_.clearing, house_, then > mark && wins_back(then, share)));
        }
        case RuleName::wound_size:
            return put(mark_wound_size(plan_.cuts, plan_.clearing, house_),
                       say_wound_size(plan_.cuts, plan_.clearing, house_));
        case RuleName::tool_choice:
            return put(mark_tool_choice(plan_.cuts, plan_.clearing, house_),
                       say_tool_choice(plan_.cuts, plan_.clearing, house_));
        case RuleName::wood_left_behind:
            return put(mark_wood_left_behind(plan_.cuts, plan_.clearing),
                       say_wood_left_behind(plan_.cuts, plan_.clearing));
        case RuleName::suckers: return put(mark_suckers(plan_.suckers), say_suckers(plan_.suckers, house_));
        case RuleName::kicker_kept:
            return put(mark_kicker_kept(plan_.standing, house_), say_kicker_kept(plan_.standing, house_));
        case RuleName::kicker_absent:
            return put(mark_kicker_absent(plan_.standing, house_), say_kicker_absent(plan_.standing, house_));
        case RuleName::bud_kill_adjust:
            return put(mark_bud_kill_adjust(plan_.load, house_), say_bud_kill_adjust(plan_.load, house_));
        case RuleName::prunings_weighed:
            return put(mark_prunings_weighed(plan_.weighing, house_), say_prunings_weighed(plan_.weighing, house_));
        default: break;
        }
    }

    void write_remarks() {
        for (const Side side : both_sides) {
            const SidePieces& pieces = at(side);
            if (!pieces.cane) continue;
            if (pieces.cane->creep)
                add_remark(origin_distance, name_of(pieces.cane->axis), side, say_creep(*pieces.cane));
            if (pieces.cane->tying.skin_crack)
                add_remark(tying, name_of(pieces.cane->axis), side, say_skin_crack(*pieces.cane));
        }
        for (const Side side : both_sides)
            if (const auto& spur = at(side).spur; spur && stands_across(*spur, house_) && !house_.weight(RuleName::spur_direction))
                add_remark(spur_direction, name_of(spur->axis), side, say_spur_direction(*spur, house_));
        if (adjusts_for_bud_kill(house_) && asked_.of_vine(RuleName::bud_kill_adjust).count == 0)
            add_remark(bud_kill_adjust, "", Side::none, say_bud_kill_adjust(plan_.load, house_));
        for (const CutFacts& cut : plan_.cuts)
            if (wants_protection(cut, house_)) add_remark(wound_size, name_of(cut.axis), Side::none, say_protect(cut));
        if (plan_.clearing.spotted_wood_cut) add_remark(tool_choice, "", Side::none, say_clean_tools());
        if (plan_.clearing.one_year_nodes > 0)
            add_remark(wood_left_behind, "", Side::none, say_share_removed(plan_.clearing));
    }

    const PlanFacts& plan_;
    const Asked& asked_;
    const HouseRules& house_;
    const int target_;
    const bool short_;
    const std::array<PerMille, 2> cane_counts_, spur_counts_;
    std::array<std::array<RuleMark, cane_rule_count>, 2> cane_marks_{};  // by side
    std::array<std::array<RuleMark, spur_rule_count>, 2> spur_marks_{};
    Judgement judgement_;
};

}  // namespace

Judgement judge_facts(const PlanFacts& plan, const Asked& asked, const HouseRules& house) {
    return Writer(plan, asked, house).write();
}

Judgement judge(const Vine& before, const Vine& after, const HouseRules& house, const Offers& offers,
                const Asked& asked) {
    return judge_facts(measure_plan(before, after, house, offers), asked, house);
}

Judgement judge_plan(const Vine& before, const Plan& plan, const Vine& after, const HouseRules& house, const Offers& offers,
                     const Asked& asked, const std::optional<Report>& report) {
    PlanFacts facts = measure_plan(before, after, house, offers);
    note_order(facts, plan);
    facts.weighing.report = report;
    return judge_facts(facts, asked, house);
}

Judgement judge(const Vine& before, const Vine& after, const HouseRules& house) {
    const Offers offered = offers(before, house);
    return judge(before, after, house, offered, asked(offered, house));
}

std::optional<TextKey> why_not_judged(const Vine& vine) {
    if (vine.system == System::cordon) {
        for (const Side side : both_sides) {
            const auto reach = arm_reach(vine, side);
            if (!reach) return TextKey{"error.judge.no-arm"};
            if (reach->count < vine.spacing.count * formed_of_spacing.count / 1000) return TextKey{"error.judge.short-arm"};
        }
        return std::nullopt;
    }
    if (vine.system != System::two_cane && vine.system != System::one_cane) return TextKey{"error.judge.system"};
    return std::nullopt;
}

std::vector<std::string_view> source_keys(const Rule& rule) {
    std::vector<std::string_view> keys;
    for (const Claim& claim : rule.claims)
        if (std::find(keys.begin(), keys.end(), claim.source->key) == keys.end()) keys.push_back(claim.source->key);
    return keys;
}

TextKey source_line(const Rule& rule, Status status) {
    if (status == Status::house) return TextKey{"source.house"};
    return TextKey{rule.claims.empty() ? "source.choice" : "source.choice-from"};
}

}  // namespace spurwright::rules
