// The window's look back: each loss goes to a choice, a cut can be tried elsewhere, and both agree with what the verb
// `review` works out.
#include <doctest/doctest.h>

#include <algorithm>

#include "scenarios/practice/practice.h"
#include "scenarios/practice/vine_requests.h"
#include "sim/core/random.h"
#include "sim/vine/canonical_text.h"
#include "sim/vine/vine_query.h"
#include "tests/support/cordons.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"
#include "tests/support/random_edits.h"

using namespace spurwright;
using practice::LookBack;
using practice::Practice;
namespace ask = practice::ask;

namespace {

Practice on(System system, std::uint32_t seed) {
    const rules::HouseRules house = system == System::cordon ? test::spur_cordon() : rules::HouseRules{};
    return Practice({test::grown(system, seed, 6 + static_cast<int>(seed % 9), 1.8), "", "", "general", house, {}});
}

void carry_out(Practice& vine, const Plan& plan) {
    for (const Edit& edit : plan.edits) {
        (void)vine.act(edit);
        if (vine.waiting()) (void)vine.confirm();
    }
}

// The best plan with the usual slips, carried out and looked back on: every other vine loses a piece that was to be kept,
// every third has what is kept cut shorter or longer, and all have some other slip.
LookBack& spoilt(Practice& vine, std::uint64_t number) {
    vine.add_plans(practice::search_plans(vine.start(), vine.task().house));
    REQUIRE_FALSE(vine.plans()->none());
    Plan plan = vine.plans()->best().plan;
    const auto kept = std::find_if(plan.edits.begin(), plan.edits.end(), [](const Edit& edit) { return std::holds_alternative<Mark>(edit); });
    REQUIRE(kept != plan.edits.end());
    const AxisId first = std::get<Mark>(*kept).axis;
    for (Edit& edit : plan.edits) {
        auto* cut = std::get_if<Cut>(&edit);
        if (!cut || number % 3 == 0 || index_of(cut->past) < 2 || axis_of(cut->past) == first) continue;
        const std::uint32_t node = index_of(cut->past), last = vine.start().find(axis_of(cut->past))->node_count - 1;
        const bool is_kept = std::any_of(plan.edits.begin(), plan.edits.end(), [&](const Edit& e) { return std::holds_alternative<Mark>(e) && std::get<Mark>(e).axis == axis_of(cut->past); });
        if (is_kept) cut->past = node_id(axis_of(cut->past), number % 3 == 1 ? node - 1 : std::min(node + 1, last));
    }
    if (number % 2 == 0) (void)vine.act(Cut{node_id(first, 0), Length{3'000}, Tool::shears, {}});
    if (vine.waiting()) (void)vine.confirm();
    carry_out(vine, test::spoilt(vine.start(), std::move(plan), number));
    vine.finish();
    return *vine.look();
}

constexpr System systems[] = {System::two_cane, System::one_cane, System::cordon};

}  // namespace

TEST_CASE("of every loss that is told some choice takes the most, or the vine, and it is an act of the plan") {
    int told = 0, of_acts = 0;
    for (const System system : systems)
        for (std::uint32_t seed = 1; seed <= 6; ++seed) {
            Practice vine = on(system, seed);
            const LookBack& look = spoilt(vine, seed);
            REQUIRE(look.charged.has_value());
            CHECK(look.charged->shares.size() == look.mine.findings.size());
            Tenths charged = look.charged->charges.caps;
            for (const Tenths lost : look.charged->charges.by_step) charged += lost;
            CHECK(charged == look.plans->best().points - look.mine.points);
            for (const practice::Walked& stop : look.walk) {
                const auto share = practice::charged_to(look, stop);
                if (stop.stop != practice::Stop::finding || stop.lost.count <= 0) {
                    CHECK_FALSE(share.has_value());
                    continue;
                }
                REQUIRE(share.has_value());
                ++told;
                if (share->to != planning::LostTo::act) continue;
                ++of_acts;
                CHECK(share->edit < vine.done_count());
                CHECK(std::holds_alternative<Mark>(vine.done().edits[share->edit]) == false);
            }
        }
    CHECK(told > 100);
    CHECK(of_acts > 10);
}

TEST_CASE("a limit is an act's or work left undone, which is to be mended now; as good as the best nothing else is spoken of") {
    int limits = 0, undone = 0, as_good = 0;
    for (const System system : systems)
        for (std::uint32_t seed = 1; seed <= 6; ++seed) {
            Practice bad = on(system, seed), good = on(system, seed);
            for (Practice* vine : {&bad, &good}) {
                vine->add_plans(practice::search_plans(vine->start(), vine->task().house));
                carry_out(*vine, vine == &good ? vine->plans()->best().plan : test::random_edits(vine->start(), seed, 20));
                vine->finish();
                const LookBack& look = *vine->look();
                REQUIRE(look.charged.has_value());
                REQUIRE(look.charged->caps.size() == look.mine.caps.size());
                Tenths taken;
                for (const practice::Walked& stop : look.walk) {
                    if (look.mine_as_good && stop.stop == practice::Stop::finding && !stop.folded) CHECK(stop.mend == rules::Mend::now);
                    if (stop.stop != practice::Stop::cap) continue;
                    const planning::ChargedCap& cap = look.charged->caps[stop.at];
                    taken += cap.taken;
                    ++limits;
                    undone += cap.to == planning::LostTo::open;
                    CHECK((stop.mend == rules::Mend::now) == (cap.to == planning::LostTo::open));
                }
                CHECK(taken == look.mine.points_before_caps - look.mine.points);
                as_good += look.mine_as_good;
            }
        }
    CHECK(limits > 10);
    CHECK(undone > 5);
    CHECK(as_good >= 18);
}

TEST_CASE("going back to before the act that a loss is charged to, the best way is open again") {
    int tried = 0;
    for (const System system : systems)
        for (std::uint32_t seed = 1; seed <= 6; ++seed) {
            Practice vine = on(system, seed);
            const LookBack look = spoilt(vine, seed);
            if (look.charged->charges.edits.empty()) continue;
            const planning::Charge first = look.charged->charges.edits.front();
            REQUIRE(practice::carry_out_on(vine, ask::JumpTo{first.edit}).has_value());
            CHECK_FALSE(vine.finished());
            CHECK(vine.done_count() == first.edit);
            const auto open = practice::search_plans(vine.start(), vine.task().house, vine.done());
            REQUIRE_FALSE(open.none());
            CHECK(open.best().points == look.plans->best().points);
            ++tried;
        }
    CHECK(tried > 5);
}

TEST_CASE("a cut tried elsewhere is worth what the plan with it moved is judged at, and changes nothing of the vine") {
    int ends = 0, better = 0, said = 0;
    for (const System system : systems)
        for (std::uint32_t seed = 1; seed <= 4; ++seed) {
            Practice vine = on(system, seed);
            const LookBack& look = spoilt(vine, seed);
            const std::uint64_t was = vine_hash(vine.now());
            (void)practice::carry_out_on(vine, ask::TakeCut{});
            if (!look.moved) continue;
            const std::size_t pieces = look.moved->pieces.size();
            for (std::size_t i = 0; i < pieces; ++i) {
                const practice::MovedCut& cut = *look.moved;
                CHECK(cut.at == cut.mine);
                CHECK(cut.says.empty());
                CHECK(cut.end().points == look.mine.points);
                CHECK(cut.line.last == cut.of().end);
                Tenths best = look.mine.points;
                for (std::size_t at = 0; at < cut.ends.size(); ++at) {
                    (void)practice::carry_out_on(vine, ask::MoveCut{at});
                    const auto plan = planning::with_cut_moved(vine.start(), vine.task().house, vine.done(), cut.end().last);
                    if (at == cut.mine) continue;
                    REQUIRE(plan.has_value());
                    const auto after = prune(vine.start(), *plan);
                    const rules::Judgement then = rules::judge(vine.start(), *after, vine.task().house);
                    CHECK(cut.end().points == then.points);
                    CHECK(cut.line.last == cut.end().last);
                    best = std::max(best, then.points);
                    Tenths changed;
                    for (const practice::SaidAnew& anew : cut.says) changed += anew.lost - anew.lost_before;
                    CHECK(then.points_before_caps - look.mine.points_before_caps == -changed);
                    said += !cut.says.empty();
                    ++ends;
                }
                CHECK(cut.ends[cut.best()].points == best);
                if (best == look.mine.points && cut.best() != cut.mine) CHECK(cut.ends[cut.best()].before_caps > look.mine.points_before_caps);
                better += best > look.mine.points;
                (void)practice::carry_out_on(vine, ask::NextCut{1});
            }
            CHECK(look.moved->piece == 0);  // once round
            CHECK(vine_hash(vine.now()) == was);
            (void)practice::carry_out_on(vine, ask::LeaveCut{});
            CHECK_FALSE(look.moved.has_value());
        }
    CHECK(ends > 100);
    CHECK(said > 100);
    CHECK(better > 3);
}

TEST_CASE("the best of a piece's ends is what the verb `review` names for it") {
    int named = 0;
    for (std::uint32_t seed = 1; seed <= 6; ++seed) {
        Practice vine = on(System::two_cane, seed);
        const LookBack& look = spoilt(vine, seed);
        for (const planning::WhatIf& end : planning::better_ends(vine.start(), vine.task().house, vine.done())) {
            (void)practice::carry_out_on(vine, ask::TakeCut{axis_of(end.last)});
            REQUIRE(look.moved.has_value());
            CHECK(look.moved->of().axis == axis_of(end.last));
            CHECK(look.moved->ends[look.moved->best()].points == end.points);
            ++named;
        }
    }
    CHECK(named > 3);
}

TEST_CASE("a cut that was made before is nobody's to move") {
    Practice first = on(System::two_cane, 2);
    first.add_plans(practice::search_plans(first.start(), first.task().house));
    const Plan best = first.plans()->best().plan;
    practice::Task task{first.start(), "", "", "general", {}, {}};
    for (const Edit& edit : best.edits)
        if (const auto* cut = std::get_if<Cut>(&edit); cut && index_of(cut->past) > 0 && is_cane(first.start(), *first.start().find(axis_of(cut->past)))) {
            task.begun = {{edit}};
            break;
        }
    REQUIRE(task.begun.edits.size() == 1);
    Practice vine(task);
    carry_out(vine, best);
    vine.finish();
    vine.take_cut({});
    REQUIRE(vine.look()->moved.has_value());
    for (const practice::KeptPiece& piece : vine.look()->moved->pieces)
        CHECK(piece.axis != axis_of(std::get<Cut>(task.begun.edits[0]).past));
}
