// A row: patches of vigour, gaps, replants, dead vines, and what each vine has beside it.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/growth/row.h"
#include "sim/growth/training.h"
#include "sim/vine/vine_check.h"
#include "sim/vine/vine_query.h"

using namespace spurwright;
using growth::PlaceState;
using growth::RowPlace;
using growth::Site;

namespace {

double mean(const std::vector<double>& values) {
    double sum = 0;
    for (const double v : values) sum += v;
    return sum / static_cast<double>(values.size());
}

double covariance(const std::vector<double>& a, const std::vector<double>& b) {
    const double ma = mean(a), mb = mean(b);
    double sum = 0;
    for (std::size_t i = 0; i < a.size(); ++i) sum += (a[i] - ma) * (b[i] - mb);
    return sum / static_cast<double>(a.size());
}

// ln of what each vine tends to push, of many rows of 1,000 one after the other.
std::vector<std::vector<double>> log_capacities(int rows) {
    std::vector<std::vector<double>> all;
    for (std::uint64_t seed = 0; seed < static_cast<std::uint64_t>(rows); ++seed) {
        all.emplace_back();
        for (const RowPlace& place : growth::row_places(Site{}, 900 + seed, growth::most_places))
            all.back().push_back(std::log(growth::planted(place.site).capacity));
    }
    return all;
}

} // namespace

TEST_SUITE("growth/row") {
    TEST_CASE("two neighbours' mean varies 0.63 as much as one vine, computed and drawn; about half was published") {
        const growth::Constants c;
        const double own = c.row_own_sd * c.row_own_sd + c.row_place_sd * c.row_place_sd, patch = c.row_patch_sd * c.row_patch_sd;
        const double computed = (own / 2 + patch * (1 + c.row_corr) / 2) / (own + patch);
        CHECK(computed == doctest::Approx(0.626).epsilon(0.01));
        CHECK(computed >= 0.45); // taylor-2012: about half; the band is the published check's
        CHECK(computed <= 0.70);
        std::vector<double> single, first, second, pairs;
        for (const auto& row : log_capacities(10)) {
            for (std::size_t i = 0; i + 1 < row.size(); ++i) {
                first.push_back(row[i]);
                second.push_back(row[i + 1]);
                if (i % 2 == 0) pairs.push_back((row[i] + row[i + 1]) / 2);
            }
            single.insert(single.end(), row.begin(), row.end());
        }
        const double variance = covariance(single, single);
        const double ratio = covariance(pairs, pairs) / variance;
        const double correlation = covariance(first, second) / variance;
        const double cv = std::sqrt(std::exp(variance) - 1);
        MESSAGE("pairs / singles " << ratio << " (computed " << computed << "), CV " << cv
                                   << ", neighbours' correlation " << correlation);
        CHECK(ratio == doctest::Approx(computed).epsilon(0.04));
        CHECK(variance == doctest::Approx(own + patch).epsilon(0.05));
        CHECK(cv == doctest::Approx(std::sqrt(std::exp(own + patch) - 1)).epsilon(0.04));
        CHECK(correlation == doctest::Approx(patch * c.row_corr / (own + patch)).epsilon(0.15));
    }
    TEST_CASE("shares of gaps, replants and dead vines over 40,000 places; replants are 1 to 3 winters old") {
        std::array<int, 4> counts{};
        std::array<int, 4> ages{};
        for (std::uint64_t seed = 0; seed < 40; ++seed)
            for (const RowPlace& place : growth::row_places(Site{}, seed, growth::most_places)) {
                ++counts[static_cast<std::size_t>(place.state)];
                if (place.state != PlaceState::replanted) {
                    CHECK(place.site.age == 12);
                    continue;
                }
                REQUIRE(place.site.age >= 1);
                REQUIRE(place.site.age <= 3);
                ++ages[static_cast<std::size_t>(place.site.age)];
            }
        const auto share = [&](PlaceState state) { return counts[static_cast<std::size_t>(state)] / 40'000.0; };
        CHECK(share(PlaceState::missing) == doctest::Approx(0.03).epsilon(0.1));
        CHECK(share(PlaceState::replanted) == doctest::Approx(0.02).epsilon(0.1));
        CHECK(share(PlaceState::dead) == doctest::Approx(0.01).epsilon(0.2));
        for (int age = 1; age <= 3; ++age) CHECK(ages[static_cast<std::size_t>(age)] > 200);
    }
    TEST_CASE("beside each vine stands what the row has there: a vine, nothing, or the post at the end") {
        const auto places = growth::row_places(Site{}, 4, 400);
        REQUIRE(places.size() == 400);
        CHECK(places.front().beside[0] == NeighbourKind::end_post);
        CHECK(places.back().beside[1] == NeighbourKind::end_post);
        int gaps = 0;
        for (std::size_t i = 0; i < places.size(); ++i) {
            CHECK(places[i].number == static_cast<int>(i) + 1);
            for (const std::size_t side : {0u, 1u}) {
                if ((i == 0 && side == 0) || (i + 1 == places.size() && side == 1)) continue;
                const PlaceState other = places[side == 0 ? i - 1 : i + 1].state;
                const bool none = other == PlaceState::missing || other == PlaceState::dead;
                CHECK((places[i].beside[side] == NeighbourKind::none) == none);
                gaps += none;
            }
        }
        CHECK(gaps >= 10);
    }
    TEST_CASE("a longer row begins with the same places; another seed gives another row") {
        const auto one = growth::row_places(Site{}, 7, 30), longer = growth::row_places(Site{}, 7, 60),
                   other = growth::row_places(Site{}, 8, 30);
        int same_seed = 0;
        for (std::size_t i = 0; i < one.size(); ++i) {
            CHECK(one[i].state == longer[i].state);
            CHECK(one[i].site.seed == longer[i].site.seed);
            CHECK(one[i].patch == longer[i].patch);
            same_seed += one[i].site.seed == other[i].site.seed;
        }
        CHECK(same_seed == 0);
    }
    TEST_CASE("every vine of a row is sound, in every system: grown, replanted, dead") {
        for (const System system : {System::two_cane, System::one_cane, System::cordon}) {
            Site site;
            site.system = system;
            std::array<int, 4> seen{};
            int places = 0;
            // Rows until each state was met three times; all vines of the first 40 places.
            for (std::uint64_t seed = 0; places < 4'000 && (seen[1] < 3 || seen[2] < 3 || seen[3] < 3); ++seed)
                for (const RowPlace& place : growth::row_places(site, seed, 100)) {
                    ++places;
                    if (place.state == PlaceState::growing && places > 40) continue;
                    ++seen[static_cast<std::size_t>(place.state)];
                    const auto vine = growth::grow_place(place);
                    REQUIRE(vine.has_value());
                    REQUIRE(vine->has_value() == (place.state != PlaceState::missing));
                    if (!*vine) continue;
                    const Vine& v = **vine;
                    CAPTURE(place.site.seed);
                    const auto error = check_vine(v);
                    CHECK_MESSAGE(!error, (error ? std::string(error->key.name) : ""));
                    CHECK(v.winter == place.site.age);
                    CHECK(v.neighbour(Side::left).kind == place.beside[0]);
                    CHECK(v.neighbour(Side::right).kind == place.beside[1]);
                    int live = 0, canes = 0;
                    for (const Axis& axis : v.axes) {
                        live += axis.state == AxisState::live;
                        canes += axis.born == v.winter && axis.parent;
                    }
                    CHECK((live == 0) == (place.state == PlaceState::dead));
                    if (place.state == PlaceState::dead) CHECK(canes == 0);
                }
            CHECK(seen[1] >= 3);
            CHECK(seen[2] >= 3);
        }
    }
}
