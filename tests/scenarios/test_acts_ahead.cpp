// What an act of a plan means next season: told of the acts that cost most, by the two ways that the act parted, and in
// sentences whose numbers are those of the two ways.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "scenarios/review/told.h"
#include "scenarios/words/load_words.h"
#include "sim/planning/complete.h"
#include "sim/vine/vine_query.h"
#include "tests/support/cordons.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"

using namespace spurwright;
using ahead::Figure;

namespace {

const io::Assets acts_assets(SPURWRIGHT_SOURCE "/assets");

const io::HouseRulesFile& acts_house(const std::string& name = "general") {
    static const auto general = io::load_house_rules("general", acts_assets), cordon = io::load_house_rules("spur-cordon", acts_assets);
    REQUIRE((general.has_value() && cordon.has_value()));
    return name == "general" ? *general : *cordon;
}

review::Review reviewed(const Vine& vine, const Plan& plan) {
    if (vine.system == System::cordon) return review::review_of_cordon(vine, plan, acts_house("spur-cordon"));
    return review::review(vine, plan, acts_house(), planning::Planning(vine, acts_house().rules), acts_assets);
}

// All canes of one side cut off at their base before anything else is done: the other side alone can bear.
Plan one_side_off(const Vine& vine, Side side) {
    Plan plan;
    for (const AxisId cane : cane_candidates(vine))
        if (vine.find(cane)->side == side) {
            plan.edits.push_back(Cut{node_id(cane, 0), Length{3'000}, Tool::loppers, {}});
            if (!prune(vine, plan)) plan.edits.pop_back(); // too short a first joint for that
        }
    return plan;
}

// Every cane but one cut back to two nodes: the last of these cuts leaves one cane to lay.
Plan all_but_one_short(const Vine& vine) {
    const AxisId stays = axis_of(planning::Planning(vine, acts_house().rules).best()->choice.right_cane);
    Plan plan;
    for (const AxisId cane : cane_candidates(vine)) {
        if (cane == stays) continue;
        plan.edits.push_back(Cut{node_id(cane, 2), Length{5'000}, Tool::loppers, {}});
        if (!prune(vine, plan)) plan.edits.pop_back(); // shorter than that
    }
    return plan;
}

double of_one_life(const Vine& before, const Plan& plan, Figure figure) {
    return ahead::look_ahead(*prune(before, plan), acts_house().rules, ahead::usual_wish(before)).winters.front()[figure].median;
}

bool says(const std::vector<std::string>& lines, const std::string& part) {
    return std::any_of(lines.begin(), lines.end(), [&](const std::string& line) { return line.find(part) != std::string::npos; });
}

} // namespace

TEST_SUITE("scenarios/acts-ahead") {
    TEST_CASE("an act is told by the best that was open before it and after it, each lived by itself") {
        int told = 0, acts = 0;
        for (std::uint32_t seed = 1; seed <= 8; ++seed) {
            const Vine vine = test::grown(System::two_cane, seed, 8, 1.8);
            const review::Review r = reviewed(vine, one_side_off(vine, seed % 2 ? Side::left : Side::right));
            CHECK(r.seasons.size() <= ahead::most_acts_lived + 1);
            for (const ahead::ActAhead& act : r.seasons) {
                ++told;
                if (!act.edit) continue; // what can still be mended
                ++acts;
                const auto charge = std::find_if(r.charges.edits.begin(), r.charges.edits.end(), [&](const planning::Charge& c) { return c.edit == *act.edit; });
                REQUIRE(charge != r.charges.edits.end());
                REQUIRE(charge->left.has_value());
                CHECK(charge->lost >= ahead::least_lived);
                for (const Figure figure : {Figure::shoots, Figure::yield_kg, Figure::good_canes}) {
                    CHECK(act.better[figure].median == of_one_life(vine, planning::complete(vine, acts_house().rules, charge->better), figure));
                    CHECK(act.left[figure].median == of_one_life(vine, planning::complete(vine, acts_house().rules, *charge->left), figure));
                }
            }
            // Whatever costs more than an act that is told of is told of too.
            for (const planning::Charge& charge : r.charges.edits) {
                if (!charge.left || charge.lost < ahead::least_lived || ahead::find_act(r.seasons, charge.edit)) continue;
                for (const ahead::ActAhead& act : r.seasons)
                    if (act.edit) CHECK(std::any_of(r.charges.edits.begin(), r.charges.edits.end(), [&](const planning::Charge& c) { return c.edit == *act.edit && c.lost >= charge.lost; }));
            }
        }
        CHECK(acts >= 8);
        CHECK(told >= 8);
    }
    TEST_CASE("the cut that leaves one cane to lay takes shoots of next summer, and the sentence says so with both numbers") {
        int fewer = 0;
        for (const std::uint32_t seed : {2u, 3u, 4u, 5u}) {
            const Vine vine = test::grown(System::two_cane, seed, 8, 1.8);
            const review::Review r = reviewed(vine, all_but_one_short(vine));
            const auto words = words::load_words(acts_assets, "en");
            const review::Told told = review::told(r, *words);
            for (std::size_t i = 0; i < r.charges.edits.size(); ++i) {
                const ahead::ActAhead* act = ahead::find_act(r.seasons, r.charges.edits[i].edit);
                CHECK((act == nullptr) == told.acts[i].season.empty());
                if (!act || act->left[Figure::shoots].median > 0.8 * act->better[Figure::shoots].median) continue;
                ++fewer;
                CHECK(says(told.acts[i].season, std::to_string(std::llround(act->left[Figure::shoots].median)) + " shoots instead of " + std::to_string(std::llround(act->better[Figure::shoots].median))));
            }
            CHECK(told.season_how.empty() == r.seasons.empty());
        }
        CHECK(fewer >= 2);
    }
    TEST_CASE("a figure is told from a tenth apart, where most seasons agree; where none is, that they come out alike") {
        const auto words = words::load_words(acts_assets, "en");
        const auto at = [](Figure figure) { return static_cast<std::size_t>(figure); };
        const auto with = [&](double shoots, double crop, double canes) {
            ahead::AheadWinter winter;
            winter.figures[at(Figure::shoots)] = {true, shoots, shoots - 2, shoots + 2};
            winter.figures[at(Figure::yield_kg)] = {true, crop, crop - 0.5, crop + 0.5};
            winter.figures[at(Figure::good_canes)] = {true, canes, canes, canes};
            return winter;
        };
        const auto seasons = [&](std::size_t n, double value) { // ten, of which n have this value and the others 100
            std::vector<ahead::DrawnWinter> draws(10);
            for (std::size_t i = 0; i < draws.size(); ++i)
                for (const Figure figure : {Figure::shoots, Figure::yield_kg, Figure::good_canes}) draws[i][at(figure)] = i < n ? value : 100.0;
            return draws;
        };
        ahead::ActAhead act{3, with(30, 4.0, 5), with(27, 3.7, 5), seasons(10, 2), seasons(10, 1)};
        CHECK(ahead::parted(act) == std::vector{Figure::shoots}); // 3 of 30; 0.3 of 4.0 is less than a tenth
        CHECK(review::season_sentences(act, *words) == std::vector<std::string>{"Next summer: 27 shoots instead of 30 (25 to 29 instead of 28 to 32)."});
        act.left_draws = seasons(8, 1); // in two of ten it is ahead
        CHECK(ahead::parted(act) == std::vector{Figure::shoots});
        act.left_draws = seasons(7, 1);
        CHECK(ahead::parted(act).empty());
        act.left_draws = seasons(10, 2); // all alike
        CHECK(ahead::parted(act).empty());
        CHECK(review::season_sentences(act, *words).size() == 1);
        act.left = with(28, 3.5, 4);
        act.left_draws = seasons(10, 1);
        CHECK(ahead::parted(act) == std::vector{Figure::yield_kg, Figure::good_canes});
        CHECK(review::season_sentences(act, *words).front() == "Next harvest: 3.5 kg of grapes instead of 4 (3 to 4 instead of 3.5 to 4.5).");
        act.left.figures[at(Figure::good_canes)] = {}; // no draw gave one
        CHECK(ahead::parted(act) == std::vector{Figure::yield_kg});
    }
    TEST_CASE("of a cordon the rows are lived, and a plan as good as the best has no act to tell of") {
        const Vine cordon = test::grown(System::cordon, 3, 9, 1.8);
        const planning::BestCordon best = planning::best_of_cordon(cordon, acts_house("spur-cordon").rules);
        CHECK(reviewed(cordon, best.plan).seasons.empty());
        Plan short_of;
        for (const auto& row : best.choice) // every other spur of the best row goes
            for (std::size_t i = 0; i < row.size(); i += 2) short_of.edits.push_back(Cut{node_id(row[i].axis, 0), Length{3'000}, Tool::shears, {}});
        REQUIRE(prune(cordon, short_of).has_value());
        const review::Review r = reviewed(cordon, short_of);
        CHECK(r.seasons.size() >= 1);
        for (const ahead::ActAhead& act : r.seasons) CHECK(act.left[Figure::shoots].known);
    }
}
