// The vine of mean shoots against the vine of tables, and the laws of its memory.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/growth/laws.h"
#include "sim/growth/mean_vine.h"
#include "sim/growth/row.h"
#include "sim/growth/season.h"
#include "sim/growth/variety.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/vine_builder.h"

using namespace spurwright;
using namespace spurwright::growth;

namespace {

// Canes of twelve clear joints of 60 mm, 9.8 mm thick, on the head of a vine of capacity 54.
Vine tables_vine(int canes, std::uint64_t seed) {
    VineBuilder builder;
    Vine& v = builder.vine;
    v.winter = 9;
    v.seed = seed;
    v.spacing = from_mm(1800);
    v.row_spacing = from_mm(2400);
    v.capacity = 54'000;
    v.wires = {{WireId{1}, WireKind::fruiting, from_mm(900), {}, WireState::up}};
    builder.add_axis(AxisId{1}, {}, 1).ripe = from_mm(800);
    builder.add_node({}, from_mm(45), from_mm(42));
    builder.add_node(from_mm(800), from_mm(45), from_mm(42), {{}, from_mm(800), {}});
    v.head = node_id(AxisId{1}, 1);
    for (int cane = 0; cane < canes; ++cane) {
        builder.add_axis(AxisId{static_cast<std::uint32_t>(cane) + 2}, v.head, 9).ripe = from_mm(720);
        for (int i = 0; i <= 12; ++i) {
            builder.add_node(from_mm(i == 0 ? 4 : 60), from_mm(9.8), from_mm(9.8),
                             {from_mm(cane % 2 == 0 ? -20 : 20), from_mm(804.0 + 60 * i), {}});
            builder.add_bud(i == 0 ? BudKind::crown : BudKind::node);
        }
    }
    return *builder.build(true);
}

} // namespace

TEST_SUITE("growth/mean-vine") {
    TEST_CASE("means of many vines of tables are the mean vine's: shoots, crop, reserves") {
        SeasonSettings settings = trial_settings();
        settings.site_capacity = 54;
        const Constants c = settings.constants;
        constexpr int vines = 200;
        for (const int canes : {2, 3, 5}) {
            SeasonNotes mean;
            double reserves = 0, non_count = 0;
            for (int i = 0; i < vines; ++i) {
                SeasonNotes n;
                const Vine next = season(tables_vine(canes, static_cast<std::uint64_t>(i)), settings, &n);
                mean.shoots += n.shoots / vines;
                mean.yield_kg += n.yield_kg / vines;
                mean.fruiting += n.fruiting / vines;
                mean.mean_length_cm += n.mean_length_cm / vines;
                reserves += as_share(next.reserves) / vines;
                non_count += static_cast<double>(n.non_count_pushed) / vines;
            }
            MeanVine vine;
            const MeanYear year =
                grow_year(vine, {std::vector<int>(static_cast<std::size_t>(canes), 12), 75.43}, {54, 125, 1}, c);
            CAPTURE(canes);
            CHECK(mean.shoots == doctest::Approx(year.shoots).epsilon(0.03)); // suckers besides
            CHECK(non_count == doctest::Approx(year.non_count).epsilon(0.03));
            CHECK(mean.mean_length_cm == doctest::Approx(year.length_cm).epsilon(0.03));
            // Head shoots stand on thick wood and so bear a little more than the mean vine's.
            CHECK(mean.yield_kg == doctest::Approx(year.yield_kg).epsilon(0.06));
            CHECK(mean.fruiting == doctest::Approx(year.fruiting).epsilon(0.03));
            CHECK(reserves == doctest::Approx(vine.reserves).epsilon(0.04));
        }
    }
    TEST_CASE("reserves fall with the load, never below their floor, and come back") {
        const Constants c;
        double r = 1;
        for (int year = 0; year < 20; ++year) {
            r = next_reserves(c, r, 80, 54);
            CHECK(r >= 1 - c.reserve_a);
        }
        CHECK(r == doctest::Approx(1 - c.reserve_a).epsilon(0.01));
        for (int year = 0; year < 20; ++year) r = next_reserves(c, r, 20, 54);
        CHECK(r == doctest::Approx(1).epsilon(1e-6));
        CHECK(next_reserves(c, 1, c.reserve_nu * 54, 54) == 1);
    }
    TEST_CASE("capacity stands still at the site's own where the crop is balanced, and moves by a quarter at most") {
        const Constants c;
        CHECK(next_capacity(c, 54, 54, c.ri_star) == doctest::Approx(54));
        CHECK(next_capacity(c, 54, 54, 2 * c.ri_star) < 54);
        CHECK(next_capacity(c, 54, 54, c.ri_star / 2) > 54);
        CHECK(next_capacity(c, 54, 540, c.ri_star) == doctest::Approx(54 * 1.25));
        CHECK(next_capacity(c, 540, 54, c.ri_star) == doctest::Approx(540 * 0.75));
    }
    TEST_CASE(
        "varieties: at least six of wine, a labruscana and a hybrid; each name once, values in the constants' ranges") {
        int wine = 0, labruscana = 0, hybrid = 0;
        for (const Variety& variety : varieties()) {
            CAPTURE(variety.name);
            CHECK(find_variety(variety.name) == &variety);
            wine += variety.species == Species::vinifera;
            labruscana += variety.species == Species::labruscana;
            hybrid += variety.species == Species::hybrid;
            const Constants c = with_variety({}, variety);
            for (const ConstantRow& row : constant_rows()) {
                CAPTURE(row.name);
                CHECK(c.*row.value >= row.low);
                CHECK(c.*row.value <= row.high);
            }
            for (const Told& told : {variety.bunch_mass_g, variety.noncount_f, variety.reserve_a, variety.ri_star})
                if (told.status == ValueStatus::read) CHECK(told.source != "-");
        }
        CHECK(wine >= 6);
        CHECK(labruscana >= 1);
        CHECK(hybrid >= 1);
        CHECK(find_variety("no-such") == nullptr);
        const Constants plain = with_variety({}, varieties()[0]), base;
        for (const ConstantRow& row : constant_rows()) CHECK(plain.*row.value == base.*row.value);
    }
    TEST_CASE("a row's places: the spread and the likeness of neighbours asked for, the same however long the row") {
        const Constants c;
        const auto row = row_patches(5, 20'000, c);
        double sum = 0, squares = 0, products = 0;
        for (std::size_t i = 0; i < row.size(); ++i) {
            const double x = std::log(row[i]);
            sum += x, squares += x * x;
            if (i > 0) products += x * std::log(row[i - 1]);
        }
        const auto n = static_cast<double>(row.size());
        const double patch = c.row_patch_sd * c.row_patch_sd, all = patch + c.row_place_sd * c.row_place_sd;
        CHECK(std::sqrt(squares / n) == doctest::Approx(std::sqrt(all)).epsilon(0.05));
        CHECK(products / squares == doctest::Approx(c.row_corr * patch / all).epsilon(0.03));
        CHECK(std::fabs(sum / n) < 0.02);
        const auto shorter = row_patches(5, 50, c);
        for (std::size_t i = 0; i < shorter.size(); ++i) CHECK(shorter[i] == row[i]);
    }
}
