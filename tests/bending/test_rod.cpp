// The rod against closed forms: large bends, own weight, rings, buckling; and what must hold for any rod.
#include <doctest/doctest.h>

#include <cmath>

#include "sim/bending/rod.h"
#include "sim/bending/section.h"
#include "sim/core/numeric.h"
#include "sim/core/random.h"

using namespace spurwright;
using namespace spurwright::bending;

namespace {

Flat unit(double way) { return {std::cos(way), std::sin(way)}; }

// A straight rod of length 1 and stiffness 1 that points along `way`.
Rod straight(std::uint32_t segments, double way = 0) {
    Rod rod;
    rod.clamp = unit(way);
    for (std::uint32_t i = 0; i < segments; ++i) rod.add(1.0 / segments, 1.0, rod.clamp);
    return rod;
}

Bent solved(const Rod& rod, const Loads& loads) {
    Bent bent;
    RodSolver().solve(rod, loads, bent);
    CHECK(bent.settled);
    return bent;
}

Bent end_loaded(std::uint32_t segments, double alpha) {
    Loads loads;
    loads.pulls.push_back({segments, {0, alpha}});
    return solved(straight(segments), loads);
}

Bent under_own_weight(std::uint32_t segments, double beta) {
    Loads loads;
    loads.gravity = {0, -1};
    loads.weight.assign(segments, beta / segments);
    return solved(straight(segments), loads);
}

struct Tip { double angle, x, y; };

// The end-loaded cantilever from its first integral: theta' = sqrt(2 alpha (sin t - sin theta)) with theta = t at the
// tip. theta = t (1 - u^2) takes the root at the tip out of the integrals; t is found by halving, so that the length is 1.
Tip exact_end_loaded(double alpha) {
    const auto integrals = [&](double t) {
        Tip sum{0, 0, 0};
        const int parts = 2000;
        for (int i = 0; i < parts; ++i) {
            const double u = (i + 0.5) / parts, theta = t * (1 - u * u);
            const double ds = 2 * t * u / std::sqrt(2 * alpha * (std::sin(t) - std::sin(theta))) / parts;
            sum.angle += ds;
            sum.x += ds * std::cos(theta);
            sum.y += ds * std::sin(theta);
        }
        return sum;
    };
    double low = 1e-6, high = numeric::pi / 2 - 1e-9;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (integrals(middle).angle < 1 ? low : high) = middle;
    }
    const Tip sum = integrals(low);
    return {numeric::degrees(low), sum.x, sum.y};
}

Rod random_rod(std::uint32_t seed, Loads& loads) {
    const auto share = [&](std::uint32_t i) { return static_cast<double>(mix(std::uint64_t{seed} << 32 | i) >> 11) * 0x1p-53; };
    Rod rod;
    const std::uint32_t n = 10 + seed % 60;
    double way = 3 * share(0) - 1.5;
    rod.clamp = unit(way);
    for (std::uint32_t i = 0; i < n; ++i) {
        way += 0.2 * share(3 * i + 3) - 0.1;
        rod.add(5 + 15 * share(3 * i + 1), 1e5 * (1 + 5 * share(3 * i + 2)), unit(way));
    }
    loads = {};
    loads.gravity = {0, -1};
    for (std::uint32_t i = 0; i < n; ++i) loads.weight.push_back(0.02 * share(1000 + i));
    loads.pulls.push_back({n, {20 * share(5) - 10, 20 * share(6) - 10}});
    loads.pulls.push_back({n / 2, {20 * share(7) - 10, 20 * share(8) - 10}});
    return rod;
}

}  // namespace

TEST_SUITE("bending/rod") {
    TEST_CASE("checks 1 and 2: tip of an end-loaded cantilever at 64 segments [bisshopp-drucker]") {
        struct Row { double alpha, angle, x, y; };
        for (const Row& row : {Row{0.25, 7.1214, 0.995882, 0.082746}, Row{0.5, 14.0107, 0.984081, 0.162144}, Row{1, 26.4335, 0.943567, 0.301721},
                               Row{2, 44.7910, 0.839358, 0.493457}, Row{3, 56.4946, 0.745580, 0.603253}, Row{4, 64.2423, 0.671059, 0.669964},
                               Row{5, 69.6355, 0.612372, 0.713792}, Row{6, 73.5504, 0.565411, 0.744571}, Row{8, 78.7491, 0.495172, 0.784982},
                               Row{10, 81.9493, 0.445004, 0.810609}, Row{15, 86.0491, 0.364714, 0.847716}}) {
            CAPTURE(row.alpha);
            const Bent bent = end_loaded(64, row.alpha);
            CHECK(std::fabs(bent.at.back().y - row.y) < 2e-3);
            CHECK(std::fabs(bent.at.back().x - row.x) < 2e-3);
            CHECK(std::fabs(numeric::degrees(std::atan2(bent.along.back().y, bent.along.back().x)) - row.angle) < 0.1);
            const Tip exact = exact_end_loaded(row.alpha);  // the table itself, from the integrals
            CHECK(std::fabs(exact.x - row.x) < 2e-6);
            CHECK(std::fabs(exact.y - row.y) < 2e-6);
            CHECK(std::fabs(exact.angle - row.angle) < 2e-4);
        }
    }
    TEST_CASE("checks 1 and 2: twice the segments, a quarter of the error [bisshopp-drucker]") {
        for (const double alpha : {1.0, 2.0, 5.0, 10.0}) {
            CAPTURE(alpha);
            const Tip exact = exact_end_loaded(alpha);
            const auto error = [&](std::uint32_t segments) {
                const Flat tip = end_loaded(segments, alpha).at.back();
                return std::hypot(tip.x - exact.x, tip.y - exact.y);
            };
            const double coarse = error(64), middle = error(128), fine = error(256);
            CHECK(coarse / middle == doctest::Approx(4).epsilon(0.05));
            CHECK(middle / fine == doctest::Approx(4).epsilon(0.05));
        }
    }
    TEST_CASE("check 3: sag of a cantilever under its own weight at 64 segments (computed)") {
        struct Row { double beta, y, x; };
        for (const Row& row : {Row{0.5, 0.06231, 0.99778}, Row{1, 0.12347, 0.99125}, Row{2, 0.23851, 0.96689}, Row{3, 0.33965, 0.93151}, Row{5, 0.49591, 0.84666},
                               Row{8, 0.64063, 0.72442}, Row{10, 0.70020, 0.65635}, Row{20, 0.82988, 0.44523}}) {
            CAPTURE(row.beta);
            const Flat tip = under_own_weight(64, row.beta).at.back();
            CHECK(std::fabs(-tip.y - row.y) < 2e-3);
            CHECK(std::fabs(tip.x - row.x) < 2e-3);
        }
    }
    TEST_CASE("check 3: the sag's error falls to a quarter with twice the segments") {
        for (const double beta : {1.0, 5.0, 10.0}) {
            CAPTURE(beta);
            const Flat a = under_own_weight(64, beta).at.back(), b = under_own_weight(128, beta).at.back(), c = under_own_weight(256, beta).at.back();
            CHECK(std::hypot(a.x - b.x, a.y - b.y) / std::hypot(b.x - c.x, b.y - c.y) == doctest::Approx(4).epsilon(0.1));
        }
    }
    TEST_CASE("check 4: an end moment of 2 pi EI / L closes the ring to a thousandth of its length, errors by quarters (exact)") {
        const auto gap = [](std::uint32_t segments) {
            Loads loads;
            loads.end_moment = 2 * numeric::pi;
            const Flat tip = solved(straight(segments), loads).at.back();
            return std::hypot(tip.x, tip.y);
        };
        const double coarse = gap(64), middle = gap(128), fine = gap(256);
        CHECK(middle < 1e-3);
        CHECK(coarse / middle == doctest::Approx(4).epsilon(0.05));
        CHECK(middle / fine == doctest::Approx(4).epsilon(0.05));
    }
    TEST_CASE("check 5: 8 mm at a radius of 200 mm strain 2 percent (formula)") {
        CHECK(skin_strain(8, 1.0 / 200) == doctest::Approx(0.02).epsilon(1e-9));
        CHECK(skin_strain(8, -1.0 / 200) == doctest::Approx(0.02).epsilon(1e-9));
    }
    TEST_CASE("check 30: cane diameter from the force of a cut, each cultivar with its own strength [ozdemir-cutting]") {
        CHECK(std::fabs(diameter_of_cut(982, 13.94) - 9.5) < 0.3);
        CHECK(std::fabs(diameter_of_cut(1398, 21.68) - 9.1) < 0.3);
    }
    TEST_CASE("8 mm of 3 GPa is as stiff as 0.603 N m2, and stands up to 2.12 m [greenhill]") {
        const double ei = stiffness(modulus_mpa, 8);
        CHECK(ei / 1e6 == doctest::Approx(0.603).epsilon(1e-3));
        const double n_per_mm = 1e-6 * 9.81 * numeric::pi * 16;  // 1 g/cm3
        CHECK(n_per_mm * 1e9 / ei == doctest::Approx(0.817).epsilon(2e-3));
        CHECK(std::cbrt(7.8373 * ei / n_per_mm) / 1000 == doctest::Approx(2.12).epsilon(2e-3));
    }
    TEST_CASE("a clamped column buckles at pi^2 EI / 4 L^2 (Euler)") {
        for (const std::uint32_t n : {48u, 96u})
            for (const double times : {0.5, 0.99, 1.01, 1.5}) {
                CAPTURE(times);
                Loads loads;
                loads.pulls.push_back({n, {0, -times * numeric::pi * numeric::pi / 4}});
                Bent bent;
                bent.along.assign(n, unit(numeric::pi / 2 - 0.05));
                RodSolver().solve(straight(n, numeric::pi / 2), loads, bent);
                CHECK((std::fabs(bent.at.back().x) > 0.05) == (times > 1));
                if (times < 1) CHECK(std::fabs(bent.at.back().x) < 1e-6);
            }
    }
    TEST_CASE("a pole bends under its own weight from w L^3 / EI = 7.8373 on [greenhill]") {
        for (const std::uint32_t n : {48u, 96u})
            for (const double times : {0.5, 0.99, 1.01, 1.5}) {
                CAPTURE(times);
                Loads loads;
                loads.gravity = {0, -1};
                loads.weight.assign(n, times * 7.8373 / n);
                Bent bent;
                bent.along.assign(n, unit(numeric::pi / 2 - 0.05));
                RodSolver().solve(straight(n, numeric::pi / 2), loads, bent);
                CHECK((std::fabs(bent.at.back().x) > 0.05) == (times > 1));
                if (times < 1) CHECK(std::fabs(bent.at.back().x) < 1e-6);
            }
    }
    TEST_CASE("no step raises the energy, and each begins where the last one ended") {
        for (std::uint32_t seed = 0; seed < 300; ++seed) {
            CAPTURE(seed);
            Loads loads;
            const Rod rod = random_rod(seed, loads);
            Bent bent;
            std::vector<double> seen;
            RodSolver().solve(rod, loads, bent, fine_settle, &seen);
            CHECK(bent.settled);
            REQUIRE(seen.size() == 2 * static_cast<std::size_t>(bent.steps));
            const double tiny = 1e-9 * (1 + std::fabs(bent.energy));
            for (std::size_t i = 1; i < seen.size(); ++i) CHECK(seen[i] <= seen[i - 1] + tiny);
            CHECK(seen.back() == doctest::Approx(bent.energy).epsilon(1e-9));
        }
    }
    TEST_CASE("with holds and a ceiling no step raises the energy that it looks at") {
        for (std::uint32_t seed = 0; seed < 200; ++seed) {
            CAPTURE(seed);
            Loads loads;
            const Rod rod = random_rod(seed, loads);
            Bent free;
            RodSolver().solve(rod, loads, free);
            const auto n = static_cast<std::uint32_t>(rod.size());
            loads.holds.push_back({n, {0, 1}, free.at.back().y - 15});
            loads.ceiling = Ceiling{{0, 1}, free.at[n / 2].y + 5};
            if (loads.ceiling->most < loads.holds[0].at + 5 || loads.ceiling->most < 10) continue;
            Bent bent;
            std::vector<double> seen;
            RodSolver().solve(rod, loads, bent, fine_settle, &seen);
            CHECK(bent.settled);
            for (std::size_t i = 1; i < seen.size(); i += 2) CHECK(seen[i] <= seen[i - 1] + 1e-9 * (1 + std::fabs(seen[i - 1])));
            CHECK(bent.at.back().y == doctest::Approx(loads.holds[0].at).epsilon(1e-6));
            for (std::uint32_t i = 1; i < n; ++i) CHECK(bent.at[i].y <= loads.ceiling->most + 0.15);
        }
    }
    TEST_CASE("the mirror image bends to the mirror image") {
        for (std::uint32_t seed = 0; seed < 100; ++seed) {
            Loads loads;
            Rod rod = random_rod(seed, loads);
            const Bent here = solved(rod, loads);
            rod.clamp.y = -rod.clamp.y;
            for (Flat& way : rod.grown) way.y = -way.y;
            loads.gravity.y = -loads.gravity.y;
            for (Pull& pull : loads.pulls) pull.force.y = -pull.force.y;
            const Bent there = solved(rod, loads);
            for (std::size_t i = 0; i < here.at.size(); ++i) {
                CHECK(here.at[i].x == there.at[i].x);
                CHECK(here.at[i].y == -there.at[i].y);
            }
        }
    }
    TEST_CASE("turned as a whole, it bends as before") {
        for (std::uint32_t seed = 0; seed < 100; ++seed) {
            CAPTURE(seed);
            Loads loads;
            Rod rod = random_rod(seed, loads);
            loads.holds.push_back({static_cast<std::uint32_t>(rod.size()) / 2, {0, 1}, 4});
            const Bent here = solved(rod, loads);
            const double turn = 0.1 + 0.05 * seed;
            const auto turned = [&](Flat f) { return Flat{std::cos(turn) * f.x - std::sin(turn) * f.y, std::sin(turn) * f.x + std::cos(turn) * f.y}; };
            rod.clamp = turned(rod.clamp);
            for (Flat& way : rod.grown) way = turned(way);
            loads.gravity = turned(loads.gravity);
            for (Pull& pull : loads.pulls) pull.force = turned(pull.force);
            loads.holds[0].normal = turned(loads.holds[0].normal);
            const Bent there = solved(rod, loads);
            for (std::size_t i = 0; i < here.at.size(); ++i) {
                const Flat p = turned(here.at[i]);
                CHECK(std::hypot(p.x - there.at[i].x, p.y - there.at[i].y) < 1e-4);
            }
            CHECK(here.energy == doctest::Approx(there.energy).epsilon(1e-6));
        }
    }
    TEST_CASE("a hold is as good as a pull with its force, and leaves turning free") {
        for (std::uint32_t seed = 0; seed < 50; ++seed) {
            Loads loads;
            CAPTURE(seed);
            const Rod rod = random_rod(seed, loads);
            const auto n = static_cast<std::uint32_t>(rod.size());
            loads.holds = {{n, {0, 1}, 0.8 * solved(rod, loads).at.back().y}};
            const Bent held = solved(rod, loads);
            REQUIRE(held.force.size() == 1);
            loads.pulls.push_back({n, {0, held.force[0]}});
            loads.holds.clear();
            Bent pulled = held;
            RodSolver().solve(rod, loads, pulled);
            for (std::size_t i = 0; i < held.at.size(); ++i) CHECK(std::hypot(held.at[i].x - pulled.at[i].x, held.at[i].y - pulled.at[i].y) < 1e-3);
        }
    }
    TEST_CASE("a hold out of reach is said, not met") {
        const Rod rod = straight(32);
        Loads loads;
        loads.holds = {{32, {0, 1}, 1.5}};
        Bent bent;
        RodSolver().solve(rod, loads, bent);
        CHECK_FALSE(bent.settled);
        for (const Flat& p : bent.at) CHECK(std::isfinite(p.x + p.y));
    }
    TEST_CASE("without load a rod stands as it grew") {
        Loads loads;
        const Rod rod = random_rod(3, loads);
        const Bent bent = solved(rod, {});
        CHECK(bent.energy == doctest::Approx(0));
        for (std::size_t i = 0; i < rod.size(); ++i) CHECK(std::hypot(bent.along[i].x - rod.grown[i].x, bent.along[i].y - rod.grown[i].y) < 1e-9);
        for (const double bend : bent.bend) CHECK(std::fabs(bend) < 1e-12);
    }
}
