// Whole blocks of vines against what was weighed and counted in real ones, system by system. The published figures are
// of other sites and varieties, so they are held as ranges, never as means. Where the model is known to differ, the
// figure is printed and DEVELOPERS.md says by how much.
#include <doctest/doctest.h>

#include <cmath>

#include "tests/support/block.h"
#include "tests/support/full_size.h"
#include "tests/support/statistics.h"

using namespace spurwright;
using test::Sample;

namespace {

// A vigorous block of spurs, as the weighed vines were.
growth::Site vigorous_cordon() {
    growth::Site site;
    site.system = System::cordon;
    site.vigour = Vigour::high;
    return site;
}

template <class Of>
Sample each(const std::vector<test::BlockVine>& block, Of of) {
    Sample x;
    for (const auto& vine : block) x.push_back(of(vine));
    return x;
}

double share_within(const Sample& x, double low, double high) {
    double inside = 0;
    for (const double v : x) inside += v >= low && v <= high;
    return inside / static_cast<double>(x.size());
}

test::BlockWish wish() { return {test::sized(250, 1'000), 0, 50, false}; }  // SPURWRIGHT_FULL

} // namespace

TEST_SUITE("realism/blocks") {
    TEST_CASE("coombe-2019: prunings spread from vine to vine by a variation of 0.25 to 0.35, lognormal rather than normal") {
        Sample all;
        for (const test::SystemSite& system : test::system_sites()) {
            CAPTURE(std::string(system.name));
            const Sample kg = each(test::block(system.site, wish()), [](const auto& v) { return v.prunings_kg; });
            MESSAGE(std::string(system.name), ": mean ", test::mean(kg), " kg, variation ", test::variation(kg), ", skew ", test::skewness(kg), ", of logarithms ", test::skewness(test::logarithms(kg)));
            CHECK(test::variation(kg) >= 0.25);
            CHECK(test::variation(kg) <= 0.35);
            for (const double v : kg) all.push_back(v / test::mean(kg));
        }
        MESSAGE("over the four systems: skew ", test::skewness(all), ", of logarithms ", test::skewness(test::logarithms(all)));
        CHECK(std::abs(test::skewness(test::logarithms(all))) < std::abs(test::skewness(all)));
    }

    TEST_CASE("coombe-2019: vines in one panel are alike, their prunings correlate by about 0.30") {
        Sample first, second;
        for (std::uint64_t k = 0; k < 4; ++k) {  // two to a panel; several systems, so that the figure is steady
            const Sample kg = each(test::block(test::system_sites()[k].site, wish()), [](const auto& v) { return std::log(v.prunings_kg); });
            const double mean = test::mean(kg);
            for (std::size_t i = 0; i + 1 < kg.size(); i += 2) first.push_back(kg[i] - mean), second.push_back(kg[i + 1] - mean);
        }
        MESSAGE("correlation of neighbours: ", test::correlation(first, second));
        CHECK(test::correlation(first, second) >= 0.20);
        CHECK(test::correlation(first, second) <= 0.40);
    }

    TEST_CASE("coombe-2019: a shoot's prunings weigh 40 to 135 g in a vigorous block of spurs") {
        const Sample grams = each(test::block(vigorous_cordon(), wish()), [](const auto& v) { return v.grams_a_shoot(); });
        MESSAGE("g a shoot: 5 % ", test::quantile(grams, 0.05), ", median ", test::quantile(grams, 0.5), ", 95 % ", test::quantile(grams, 0.95));
        CHECK(share_within(grams, 40, 135) >= 0.90);  // in the vines weighed 5 % lay below 39 and 5 % above 134
    }

    TEST_CASE("coombe-2019: 3 to 28 % of the shoots of a spur cordon come from no counted bud") {
        const Sample share = each(test::block(test::system_sites()[2].site, wish()), [](const auto& v) { return v.non_count / v.shoots(); });
        MESSAGE("share of non-count shoots: 5 % ", test::quantile(share, 0.05), ", median ", test::quantile(share, 0.5), ", 95 % ", test::quantile(share, 0.95));
        CHECK(share_within(share, 0.03, 0.28) >= 0.80);  // so many of the vines: our choice, here and below
        CHECK(test::quantile(share, 0.5) <= 0.28);  // 0.11 in the vines counted: ours has more
    }

    TEST_CASE("coombe-2019: a vine with more shoots has lighter ones, so that its prunings hardly rise") {
        int told = 0;
        for (const test::SystemSite& system : test::system_sites()) {
            CAPTURE(std::string(system.name));
            auto mixed = wish();
            mixed.mixed_loads = true;
            const auto block = test::block(system.site, mixed);
            // By the load alone: every load's mean, so that strong vines with many shoots do not hide what a load does.
            Sample shoots(4, 0.0), grams(4, 0.0), kg(4, 0.0);
            for (std::size_t i = 0; i < block.size(); ++i) {
                shoots[i % 4] += block[i].shoots();
                kg[i % 4] += block[i].prunings_kg;
            }
            for (std::size_t k = 0; k < 4; ++k) grams[k] = 1000 * kg[k] / shoots[k];
            const double power = test::slope(test::logarithms(shoots), test::logarithms(grams));
            MESSAGE(std::string(system.name), ": grams a shoot go with shoots to the power ", power);
            if (shoots[3] < 1.15 * shoots[0]) continue;  // one cane is full at the usual load: nothing to tell
            ++told;
            // -0.81 in the vines weighed, in part because shoots stand in both; -1: the same prunings from any number
            // of shoots, 0: as heavy a shoot. Between -0.4 and -1: our choice.
            CHECK(power <= -0.4);
            CHECK(power >= -1.0);
        }
        CHECK(told >= 2);
    }

    TEST_CASE("coombe-2019: 1.0 to 2.8 bunches a shoot") {
        for (const test::SystemSite& system : test::system_sites()) {
            CAPTURE(std::string(system.name));
            const Sample bunches = each(test::block(system.site, wish()), [](const auto& v) { return v.bunches / v.shoots(); });
            MESSAGE(std::string(system.name), ": ", test::mean(bunches), " bunches a shoot");
            CHECK(share_within(bunches, 1.0, 2.8) >= 0.90);
        }
    }
}
