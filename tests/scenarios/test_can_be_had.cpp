// What the rules ask can be had: for each shipped set at least half of the well-grown vines have a plan of 95 points or more, at
// every spacing from 1.2 to 2.4 m, on vines of the strength and the system that the set is for.
#include <doctest/doctest.h>

#include "scenarios/io/house_rules_file.h"
#include "sim/planning/best_plan.h"
#include "sim/planning/cordon.h"
#include "sim/planning/vine_tables.h"
#include "sim/rules/judge.h"
#include "tests/support/full_size.h"
#include "tests/support/grown.h"

using namespace spurwright;

namespace {

struct Had {
    int vines = 0, good = 0;
};

Had had(const rules::HouseRules& house, System system, Vigour vigour, double spacing, std::uint32_t vines) {
    Had found;
    for (std::uint32_t seed = 0; seed < vines; ++seed) {
        growth::Site site;
        site.seed = 31'000 + seed;
        site.system = system;
        site.vigour = vigour;
        site.spacing_m = spacing;
        const Vine vine = test::grown(site);
        if (rules::why_not_judged(vine)) continue;
        ++found.vines;
        if (system == System::cordon) {
            found.good += planning::best_pick(planning::cordon_tables(vine, house)).points >= 950;
            continue;
        }
        const auto best = planning::best_pick(planning::vine_tables(vine, house).tables);
        found.good += best && best->points >= 950;
    }
    return found;
}

}  // namespace

TEST_CASE("for each shipped set and spacing at least half of the well-grown vines have a plan of 95 points or more") {
    const io::Assets assets(SPURWRIGHT_SOURCE "/assets");
    const std::uint32_t vines = test::sized(10u, 60u);
    for (const std::string_view name : io::shipped_house_sets) {
        const auto file = io::load_house_rules(std::string(name), assets);
        REQUIRE(file.has_value());
        const bool cordon = name == "spur-cordon";
        const Vigour vigour = name == "low-vigour" || name == "cool-sites" ? Vigour::low : name == "high-vigour" ? Vigour::high : Vigour::moderate;
        for (const double spacing : {1.2, 1.5, 1.8, 2.1, 2.4}) {
            const Had found = had(file->rules, cordon ? System::cordon : System::two_cane, vigour, spacing, vines);
            CAPTURE(name);
            CAPTURE(spacing);
            CAPTURE(found.good);
            CHECK(found.vines * 3 >= static_cast<int>(vines));  // cordons still being built are not judged
            CHECK(2 * found.good >= found.vines);
        }
    }
}
