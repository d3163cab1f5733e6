// The common mistakes, each planted on a clean plan: it is found, and nothing else is.
#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <set>

#include "sim/planning/best_plan.h"
#include "sim/planning/open_choices.h"
#include "sim/planning/plan_mistakes.h"
#include "sim/planning/vine_tables.h"
#include "sim/rules/piece_points.h"
#include "sim/vine/vine_query.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"

using namespace spurwright;
using namespace spurwright::planning;
using rules::Mistake;
using rules::MistakeName;

namespace {

const rules::HouseRules general;

struct Clean {
    Vine vine;
    Plan plan;
    Choice choice;
    rules::PlanFacts facts;
    rules::Offers offers;
    rules::Asked asked;
};

std::vector<Mistake> found_in(const Clean& c, const rules::HouseRules& house = general) {
    return rules::mistakes(c.vine, c.facts, c.offers, c.asked, house);
}

std::set<MistakeName> names_of(const std::vector<Mistake>& mistakes) {
    std::set<MistakeName> names;
    for (const Mistake& m : mistakes) names.insert(m.name);
    return names;
}

// Grown vines whose best plan, with two canes and two spurs, has no mistake at all.
// The first so many of twice seven.
std::vector<Clean> clean_plans(std::size_t most = 6) {
    static const std::vector<Clean> all = [] {
        std::vector<Clean> found;
        for (std::uint64_t seed = 0; seed < 60 && found.size() < 14; ++seed) {
            growth::Site site;
            site.seed = 900 + seed;
            Clean c{test::grown(site), {}, {}, {}, {}, {}};
            const auto best = Planning(c.vine, general).best();
            if (!best) continue;
            c.plan = best->plan;
            c.choice = best->choice;
            c.offers = rules::offers(c.vine, general);
            c.asked = rules::asked(c.offers, general);
            c.facts = rules::measure_plan(c.vine, *prune(c.vine, c.plan), general, c.offers);
            const bool whole = c.facts.sides[0].cane && c.facts.sides[1].cane && c.facts.sides[0].spur && c.facts.sides[1].spur;
            if (whole && found_in(c).empty()) found.push_back(std::move(c));
        }
        return found;
    }();
    return {all.begin(), all.begin() + static_cast<std::ptrdiff_t>(std::min(most, all.size()))};
}

rules::CutFacts cut_of(AxisId axis) {
    rules::CutFacts cut;
    cut.axis = axis;
    cut.needed = true;
    cut.wood_age = 2;
    cut.diameter = Length{10'000};
    cut.stub = PerMille{1'500};
    return cut;
}

struct Planted {
    MistakeName name;
    std::function<void(Clean&, rules::HouseRules&)> plant;
};

const std::vector<Planted>& planted() {
    using House = rules::HouseRules;
    using N = MistakeName;
    const auto cane = [](auto change) { return [change](Clean& c, House&) { change(*c.facts.sides[0].cane); }; };
    const auto spur = [](auto change) { return [change](Clean& c, House&) { change(*c.facts.sides[1].spur); }; };
    const auto cut = [](auto change) {
        return [change](Clean& c, House&) {
            rules::CutFacts one = cut_of(c.facts.cuts.front().axis);
            change(one);
            c.facts.cuts.push_back(one);
        };
    };
    static const std::vector<Planted> all{
        {N::thin_wood_kept, cane([](auto& x) { x.diameter = Length{6'300}; })},
        {N::thin_wood_kept, spur([](auto& x) { x.first_joint_diameter = Length{6'300}; })},
        {N::bull_cane_laid, cane([](auto& x) { x.diameter = Length{12'800}, x.mean_joint = Length{128'000}; })},
        {N::two_year_wood_laid, [](Clean& c, House&) { c.facts.old_wood_laid.push_back(AxisId{2}); }},
        {N::cane_from_too_far_out, cane([](auto& x) { x.distance_to_head = Length{170'000}; })},
        {N::piece_above_the_wire, cane([](auto& x) { x.below_wire = Length{-1'000}; })},
        {N::bent_over_the_head, cane([](auto& x) { x.off_row = Angle{61'000}; })},
        {N::bent_over_the_head, cane([](auto& x) { x.over_the_head = Length{61'000}; })},
        {N::gap_over_the_head,
         [](Clean& c, House&) {
             for (auto& side : c.facts.sides) side.cane->distance_to_head = Length{170'000};
             c.asked.cane = {false, false};  // none stood nearer
         }},
        {N::crowded_head,
         [](Clean& c, House&) {
             for (const Axis& axis : c.vine.axes)
                 if (!axis.removed && axis.state == AxisState::live && is_cane(c.vine, axis) && axis.side == Side::left &&
                     distance_to_head(c.vine, axis) <= Length{80'000})
                     c.facts.clearing.pieces_left.push_back(axis.id);
         }},
        {N::base_bud_counted,
         [](Clean& c, House&) {
             c.facts.sides[0].bare_stub = c.facts.sides[0].spur->axis;
             c.facts.sides[0].spur.reset();
         }},
        {N::no_renewal_spur,
         [](Clean& c, House&) {
             for (auto& side : c.facts.sides) side.spur.reset(), side.good_spur_stands = true;
         }},
        {N::spur_chosen_last,
         [](Clean& c, House&) {
             c.facts.sides[0].spur.reset();
             c.offers.sides[0].spurs = {c.facts.sides[0].cane->axis};
         }},
        {N::spur_above_or_outside,
         [](Clean& c, House&) {
             auto& side = c.facts.sides[0];
             side.spur->distance_to_head = side.cane->distance_to_head + Length{11'000};
         }},
        {N::three_bud_spur, spur([](auto& x) { x.count_buds = 3; })},
        {N::sucker_kept, [](Clean& c, House&) { c.facts.suckers.left.push_back(AxisId{2}); }},
        {N::sucker_stub, [](Clean& c, House&) { c.facts.suckers.stubs.push_back(AxisId{2}); }},
        {N::old_cane_left, [](Clean& c, House&) { c.facts.clearing.old_canes_left.push_back(c.facts.cuts.front().axis); }},
        {N::flush_cut, cut([](auto& x) { x.stub = PerMille{499}; })},
        {N::needless_wound, cut([](auto& x) { x.needed = false, x.diameter = Length{30'100}, x.tool = Tool::loppers; })},
        {N::needless_wound, cut([](auto& x) { x.needed = false, x.on_trunk = true, x.tool = Tool::saw; })},
        {N::wrong_tool, cut([](auto& x) { x.diameter = Length{15'100}; })},
        {N::too_many_buds, [](Clean& c, House& h) { c.facts.load.all = rules::target_buds(h, c.facts.load.spacing) * 6 / 5 + 1; }},
        {N::weak_vine_stretched,
         [](Clean& c, House& h) {
             h.bud_load.target = 18;
             c.facts.load.all = 20;
         }},
        {N::cut_where_thin, cane([](auto& x) { x.end_diameter = Length{4'900}; })},
        {N::cut_too_close, spur([](auto& x) { x.end = {Length{4'900}, Length{60'000}, true}; })},
        {N::dead_peg, cane([](auto& x) { x.end = {Length{62'000}, Length{60'000}, true}; })},
        {N::overlap, cane([](auto& x) { x.free_wire = Length{-1}; })},
        {N::cane_snapped,
         [](Clean& c, House&) {
             auto& side = c.facts.sides[0];
             side.instead = side.cane->axis;
             side.why_none = rules::NoCane::broken;
             side.cane.reset();
         }},
        {N::wrapped_too_often, cane([](auto& x) { x.tying.half_wraps = 4; })},
        {N::tie_girdles, cane([](auto& x) { x.tying.tight_elsewhere = 1; })},
        {N::spare_forgotten, [](Clean& c, House&) { c.asked.spares = true, c.facts.standing.forgotten = 1; }},
        {N::kicker_forgotten, [](Clean& c, House&) { c.asked.kickers = true, c.facts.standing.late = c.facts.standing.forgotten = 1; }},
        {N::not_adjusted_for_bud_kill,
         [](Clean& c, House& h) {
             h.bud_load.target = 30;
             h.bud_kill.killed = PerMille{350};
             c.facts.load = {27, 2, 29, c.facts.load.spacing};
         }},
        {N::old_wood_weighed,
         [](Clean& c, House&) {
             c.facts.weighing = {rules::Report{Mass{1'100'000}, true}, Mass{900'000}, Mass{90'000}, Mass{200'000}};
         }},
        {N::ends_not_weighed,
         [](Clean& c, House&) {
             c.facts.weighing = {rules::Report{Mass{810'000}, true}, Mass{900'000}, Mass{90'000}, Mass{200'000}};
         }},
    };
    return all;
}

// The one edit of a plan that matches, changed.
template <class Edited>
Plan changed(Plan plan, const std::function<bool(Edited&)>& change) {
    for (Edit& edit : plan.edits)
        if (auto* one = std::get_if<Edited>(&edit); one && change(*one)) break;
    return plan;
}

std::vector<Mistake> mistakes_of(const Clean& c, const Plan& plan) {
    const auto after = prune(c.vine, plan);
    REQUIRE(after.has_value());
    const auto facts = rules::measure_plan(c.vine, *after, general, c.offers);
    const Planning planning(c.vine, general);
    const auto mine = rules::judge_facts(facts, c.asked, general), best = rules::judge_facts(c.facts, c.asked, general);
    return plan_mistakes(c.vine, facts, c.offers, c.asked, general, charges(c.vine, general, planning, plan, mine), c.choice, mine, best);
}

}  // namespace

TEST_SUITE("planning/mistakes") {
    TEST_CASE("each mistake planted on a clean plan is found, and only it") {
        REQUIRE(clean_plans().size() >= 3);
        std::set<MistakeName> tried;
        for (const Clean& clean : clean_plans())
            for (const Planted& p : planted()) {
                Clean c = clean;
                rules::HouseRules house;
                p.plant(c, house);
                CAPTURE(std::string(word_of(p.name)));
                CHECK(names_of(found_in(c, house)) == std::set{p.name});
                tried.insert(p.name);
            }
        CHECK(tried.size() == rules::mistake_count - 2);  // the other two need a better plan beside them
    }
    TEST_CASE("one step short of each limit nothing is found") {
        Clean c = clean_plans(1).front();
        auto& cane = *c.facts.sides[0].cane;
        cane.diameter = Length{6'400};
        cane.end_diameter = Length{5'000};
        cane.off_row = Angle{60'000};
        cane.free_wire = Length{};
        cane.distance_to_head = Length{159'000};  // of a mark above none
        cane.tying.half_wraps = 3;
        cane.end = {Length{5'000}, Length{60'000}, true};
        c.facts.load.all = rules::target_buds(general, c.facts.load.spacing) * 6 / 5;
        rules::CutFacts cut = cut_of(cane.axis);
        cut.stub = PerMille{500};
        cut.diameter = Length{15'000};
        c.facts.cuts.push_back(cut);
        cut.needed = false;
        cut.diameter = Length{30'000};
        cut.tool = Tool::loppers;
        c.facts.cuts.push_back(cut);
        CHECK(found_in(c).empty());
    }
    TEST_CASE("planted by hand: the act that a learner makes is found on the wood") {
        for (const Clean& c : clean_plans()) {
            CHECK(mistakes_of(c, c.plan).empty());
            const auto names = [&](const Plan& plan) { return names_of(mistakes_of(c, plan)); };
            // The end of the left cane cut at its last bud.
            CHECK(names(changed<Cut>(c.plan, [&](Cut& cut) {
                      if (cut.past != c.choice.left_cane) return false;
                      cut.beyond = Length{3'000};
                      return true;
                  })) == std::set{MistakeName::cut_too_close});
            CHECK(names(changed<Lay>(c.plan, [](Lay& lay) { return lay.half_wraps = 6, true; })) ==
                  std::set{MistakeName::wrapped_too_often});
            // A second tight tie, two nodes from the head.
            Plan girdled = c.plan;
            girdled.edits.push_back(Fasten{node_id(axis_of(c.choice.left_cane), index_of(c.choice.left_cane) - 4), Length{15'000}, true});
            if (prune(c.vine, girdled)) CHECK(names(girdled) == std::set{MistakeName::tie_girdles});
            // Last winter's laid cane never cut.
            const auto laid = std::find_if(c.vine.laid.begin(), c.vine.laid.end(), [&](const Laid& l) { return l.winter == c.vine.winter - 1; });
            REQUIRE(laid != c.vine.laid.end());
            Plan left;
            for (const Edit& edit : c.plan.edits) {
                const auto* cut = std::get_if<Cut>(&edit);
                if (!cut || axis_of(cut->past) != laid->axis) left.edits.push_back(edit);
            }
            if (left.edits.size() < c.plan.edits.size()) {
                const auto found = names(left);
                CHECK(found.count(MistakeName::old_cane_left) == 1);
            }
        }
    }
    TEST_CASE("a good cane cut off while a worse one is laid in its place; not where that is within what is as good") {
        int found = 0;
        for (const Clean& c : clean_plans(14)) {
            const AxisId lost = axis_of(c.choice.left_cane);
            const Plan slip{{Cut{node_id(lost, 0), Length{8'000}, Tool::shears, {}}}};
            const Vine now = *prune(c.vine, slip);
            const VineTables tables = vine_tables(c.vine, general);
            const auto next = best_pick(open_choices(tables, now));
            REQUIRE(next.has_value());
            Plan plan = slip;
            const Plan rest = finish(c.vine, now, general, choice_of(tables, next->pick));
            plan.edits.insert(plan.edits.end(), rest.edits.begin(), rest.edits.end());
            const auto mistakes = mistakes_of(c, plan);
            const auto wrong = std::find_if(mistakes.begin(), mistakes.end(), [](const Mistake& m) { return m.name == MistakeName::wrong_cane_cut; });
            const bool stays = choice_of(tables, next->pick).left_cane && test::Judged{c.vine, general}(plan)->points_before_caps + general.acceptable.within < test::Judged{c.vine, general}(c.plan)->points_before_caps;
            CHECK((wrong != mistakes.end()) == stays);
            if (wrong == mistakes.end()) continue;
            CHECK(wrong->on == lost);
            CHECK(wrong->side == Side::left);
            ++found;
        }
        CHECK(found >= 2);
    }
    TEST_CASE("a thick cane in a poor place is told from a thick cane in a good one") {
        int alone = 0, fine = 0;
        for (const Clean& c : clean_plans(14)) {
            const Planning planning(c.vine, general);
            const Axis& best = *c.vine.find(axis_of(c.choice.left_cane));
            for (const Piece& piece : planning.tables().pieces) {
                const Axis& axis = *c.vine.find(piece.axis);
                if (axis.id == best.id || !piece.lies[at(Side::left)]) continue;
                const auto plan = planning.best_laying(axis.id, Side::left);
                if (!plan || !plan->choice.left_cane) continue;
                const auto names = names_of(mistakes_of(c, plan->plan));
                const bool told = names.count(MistakeName::thickness_alone) > 0;
                const bool thicker = thickness(c.vine, axis) > thickness(c.vine, best) + general.acceptable.see_diameter;
                const bool nearer = distance_to_head(c.vine, axis) <= distance_to_head(c.vine, best) &&
                                    axis.side == Side::left && below_wire(c.vine, axis) == below_wire(c.vine, best);
                if (!thicker && axis_of(plan->choice.right_cane) == axis_of(c.choice.right_cane)) CHECK_FALSE(told);
                if (nearer && axis_of(plan->choice.right_cane) == axis_of(c.choice.right_cane)) CHECK_FALSE(told);
                alone += told;
                fine += thicker && !told;
            }
        }
        CHECK(alone >= 3);
        CHECK(fine >= 1);
    }
}
