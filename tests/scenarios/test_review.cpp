// The review as one record: another house's way is told exactly where it is one; what is told is what was found.
#include <doctest/doctest.h>

#include <algorithm>
#include <utility>

#include "scenarios/review/told.h"
#include "scenarios/words/load_words.h"
#include "sim/planning/eye_noise.h"
#include "sim/vine/vine_query.h"
#include "tests/support/grown.h"
#include "tests/support/judged.h"
#include "tests/support/random_edits.h"

using namespace spurwright;

namespace {

const io::Assets review_assets(SPURWRIGHT_SOURCE "/assets");

bool within_tolerance(const Vine& vine, const Plan& plan, const rules::HouseRules& house) {
    const auto best = planning::Planning(vine, house).best();
    const auto mine = test::Judged{vine, house}(plan);
    REQUIRE((best && mine));
    return best->points - mine->points <= planning::tolerance(vine, house, best->plan);
}

Vine vine_to_spoil() {
    growth::Site site;
    site.seed = 41;
    return test::grown(site);
}

} // namespace

TEST_SUITE("scenarios/review") {
    TEST_CASE("another house's way is told exactly where the other way accepts what this one does not") {
        const auto general = io::load_house_rules("general", review_assets), slow = io::load_house_rules("slow-arms", review_assets);
        REQUIRE((general.has_value() && slow.has_value()));
        int told = 0, accepted = 0, neither = 0;
        for (std::uint64_t seed = 0; seed < 14; ++seed) {
            growth::Site site;
            site.seed = 300 + seed;
            site.age = 9 + static_cast<int>(seed);
            site.pruner = seed % 2 ? Pruner::far_canes : Pruner::good;
            const Vine vine = test::grown(site);
            const planning::Planning here(vine, general->rules), there(vine, slow->rules);
            if (!here.best() || !there.best()) continue;
            std::vector<Plan> plans{there.best()->plan};
            // And the best that lay a cane from a long arm, which the one house forgives and the other does not.
            for (const planning::Piece& piece : there.tables().pieces) {
                const Axis& axis = *vine.find(piece.axis);
                if (distance_to_head(vine, axis) < Length{110'000} || plans.size() >= 6) continue;
                if (const auto far = there.best_laying(axis.id, axis.side)) plans.push_back(far->plan);
            }
            for (const Plan& plan : plans) {
                const review::Review r = review::review(vine, plan, *general, here, review_assets);
                const bool fine_here = within_tolerance(vine, plan, general->rules),
                           fine_there = within_tolerance(vine, plan, slow->rules);
                CAPTURE(seed);
                CHECK(r.as_good() == fine_here);
                const bool other = !fine_here && fine_there;
                CHECK(r.other_houses == (other ? std::vector<std::string>{"slow-arms"} : std::vector<std::string>{}));
                told += other;
                accepted += fine_here;
                neither += !fine_here && !fine_there;
            }
        }
        CHECK(told >= 1);
        CHECK(accepted >= 1);
        CHECK(neither >= 1);
    }
    TEST_CASE("what is told adds up to what was lost, in every language") {
        const auto general = io::load_house_rules("general", review_assets);
        REQUIRE(general.has_value());
        const Vine vine = vine_to_spoil();
        const planning::Planning planning(vine, general->rules);
        Plan plan = planning.best()->plan;
        plan.edits.resize(plan.edits.size() - 4); // neither laid nor tied
        const review::Review r = review::review(vine, plan, *general, planning, review_assets);
        for (const char* language : {"en", "es", "es-ES", "es-CL"}) {
            const auto words = words::load_words(review_assets, language);
            REQUIRE(words.has_value());
            const review::Told told = review::told(r, *words);
            CHECK(told.losses.size() >= 2);
            CHECK(told.twins.size() == 4);
            for (const auto& loss : told.losses) {
                for (const std::string& text : {loss.lost, loss.sentence, loss.mend, loss.source}) {
                    CHECK_FALSE(text.empty());
                    CHECK(text.find('[') == std::string::npos);
                    CHECK(text.find('{') == std::string::npos);
                }
            }
            // What can be mended now comes first.
            const auto later = std::find_if(told.losses.begin(), told.losses.end(), [](const auto& l) { return l.kind != rules::Mend::now; });
            CHECK(std::none_of(later, told.losses.end(), [](const auto& l) { return l.kind == rules::Mend::now; }));
        }
    }
    TEST_CASE("of plans gone wrong each limit is told with its act, each act with what it cost, in every language") {
        const auto general = io::load_house_rules("general", review_assets);
        REQUIRE(general.has_value());
        const Vine vine = vine_to_spoil();
        const planning::Planning planning(vine, general->rules);
        int limits = 0, acts = 0;
        for (std::uint64_t seed = 1; seed <= 12; ++seed) {
            const review::Review r = review::review(vine, test::random_edits(vine, seed, 20), *general, planning, review_assets);
            for (const char* language : {"en", "es", "es-ES", "es-CL"}) {
                const auto words = words::load_words(review_assets, language);
                REQUIRE(words.has_value());
                const review::Told told = review::told(r, *words);
                CHECK(told.caps.size() == r.mine.caps.size());
                limits += static_cast<int>(told.caps.size());
                acts += static_cast<int>(told.acts.size());
                std::vector<std::string> acts_told;
                for (const review::Told::Act& act : told.acts) acts_told.push_back(act.text);
                for (const auto* lines : {&told.head, &told.caps, &std::as_const(acts_told), &told.mistakes, &told.ends})
                    for (const std::string& text : *lines) {
                        CAPTURE(text);
                        CHECK_FALSE(text.empty());
                        CHECK(text.find('[') == std::string::npos);
                        CHECK(text.find('{') == std::string::npos);
                        CHECK(text.find("-") != 0);
                    }
            }
        }
        CHECK(limits > 20);
        CHECK(acts > 20);
    }
}
