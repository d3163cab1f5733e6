// A cane brought down along the wire: what strain it takes, by the document's own figures; what must hold for any.
#include <doctest/doctest.h>

#include <cmath>
#include <tuple>

#include "sim/bending/laying.h"
#include "sim/bending/section.h"
#include "sim/core/numeric.h"
#include "sim/core/random.h"

using namespace spurwright;
using namespace spurwright::bending;

namespace {

// A cane of 1,250 mm that leaves at 45 degrees, swings up within 40 mm and leans at `lean`; its thickness falls as a
// grown cane's does, d (1 - 0.55 s / L)^0.8.
Grown default_cane(double diameter, double lean, double joint = 65) {
    const double length = 1'250;
    const auto way = [&](double s) {
        const double angle = numeric::radians(lean - (lean - 45) * std::exp(-s / 40));
        return Flat{std::cos(angle), std::sin(angle)};
    };
    Grown cane;
    double s = 0;
    for (int i = 0; s < length - joint; ++i) {
        const double here = i == 0 ? 0.3 * joint : i == 1 ? 0.6 * joint : joint;
        cane.way.push_back(way(s));
        cane.joint.push_back(here);
        cane.diameter.push_back(diameter * std::pow(1 - 0.55 * (s + here / 2) / length, 0.8));
        s += here;
    }
    cane.way.push_back(way(s));
    return cane;
}

WireAbove wire_over(const Grown& cane, double rise) { return {rise, hand_ceiling(rise, leaving_way(cane))}; }

double to_node(const Grown& cane, std::uint32_t node) {
    double s = 0;
    for (std::uint32_t i = 0; i < node; ++i) s += cane.joint[i];
    return s;
}

}  // namespace

TEST_SUITE("bending/laying") {
    TEST_CASE("check 45: default canes of 8 and 10 mm from 100 to 150 mm below the wire, tied where the strain is least, our choice") {
        struct Row { double diameter, rise, percent; };
        for (const Row& row : {Row{8, 100, 2.3}, Row{8, 120, 2.0}, Row{8, 150, 1.7}, Row{10, 100, 2.9}, Row{10, 120, 2.5}, Row{10, 150, 2.1}}) {
            CAPTURE(row.diameter);
            CAPTURE(row.rise);
            const Grown cane = default_cane(row.diameter, 72);
            LaidCane laid;
            LayingHand hand;
            hand.least(cane, wire_over(cane, row.rise), laid);
            REQUIRE(laid.settled);
            CHECK(std::fabs(100 * laid.strain - row.percent) < 0.3);
            CHECK(100 * laid.strain > 1.7 - 0.3);
            CHECK(100 * laid.strain < 2.9 + 0.3);
            CHECK(to_node(cane, laid.tie) > 420);  // about 460 to 580 mm, from node to node
            CHECK(to_node(cane, laid.tie) < 640);
            for (std::uint32_t tie = 1; tie < cane.joint.size(); ++tie) {
                if (to_node(cane, tie) < 300) continue;
                LaidCane other;
                hand.tied_at(cane, wire_over(cane, row.rise), tie, other);
                CHECK(100 * other.strain <= 4.0);
            }
        }
    }
    TEST_CASE("check 45: 10 mm tied already at 300 mm is strained 3.7, 3.1 and 2.2 percent") {
        struct Row { double rise, percent; };
        for (const Row& row : {Row{100, 3.7}, Row{120, 3.1}, Row{150, 2.2}}) {
            CAPTURE(row.rise);
            const Grown cane = default_cane(10, 72, 60);  // nodes at 18, 54, 114, 174, 234, 294
            LaidCane laid;
            LayingHand().tied_at(cane, wire_over(cane, row.rise), 6, laid);
            CHECK(to_node(cane, 6) == doctest::Approx(294));
            CHECK(std::fabs(100 * laid.strain - row.percent) < 0.3);
        }
    }
    TEST_CASE("check 45: 12 mm wood bolt upright from 100 mm below breaks wherever it is tied; 10 mm from 50 mm below, too") {
        for (const auto& [diameter, lean, rise] : {std::tuple{12.0, 90.0, 100.0}, std::tuple{10.0, 70.0, 50.0}}) {
            const Grown cane = default_cane(diameter, lean);
            for (std::uint32_t tie = 1; tie < cane.joint.size(); ++tie) {
                LaidCane laid;
                LayingHand().tied_at(cane, wire_over(cane, rise), tie, laid);
                CHECK(100 * laid.strain > 4.0);
            }
        }
    }
    TEST_CASE("the hand's segments are fine enough: six times as many joints change the least strain by less than 0.05 points") {
        for (const double rise : {60.0, 100.0, 150.0})
            for (const double lean : {60.0, 72.0, 90.0}) {
                const Grown cane = default_cane(10, lean);
                LaidCane coarse, fine;
                LayingHand hand;
                hand.least(cane, wire_over(cane, rise), coarse);
                // The same cane in joints of a sixth, tied at the same place.
                Grown parts;
                for (std::size_t i = 0; i < cane.joint.size(); ++i)
                    for (int j = 0; j < 6; ++j) {
                        const double u = j / 6.0;
                        const Flat mean{cane.way[i].x + u * (cane.way[i + 1].x - cane.way[i].x), cane.way[i].y + u * (cane.way[i + 1].y - cane.way[i].y)};
                        const double size = std::hypot(mean.x, mean.y);
                        parts.joint.push_back(cane.joint[i] / 6);
                        parts.diameter.push_back(cane.diameter[i]);
                        parts.way.push_back({mean.x / size, mean.y / size});
                    }
                parts.way.push_back(cane.way.back());
                LayingHand().tied_at(parts, wire_over(cane, rise), 6 * coarse.tie, fine);
                REQUIRE(fine.settled);
                CHECK(std::fabs(coarse.strain - fine.strain) < 5e-4);
            }
    }
    TEST_CASE("strain goes as thickness: the course of a cane does not hear its modulus or its size") {
        const Grown thin = default_cane(6, 72);
        Grown thick = thin;
        for (double& d : thick.diameter) d *= 2;
        LaidCane a, b;
        LayingHand().least(thin, wire_over(thin, 120), a);
        LayingHand().least(thick, wire_over(thick, 120), b);
        CHECK(a.tie == b.tie);
        CHECK(b.strain == doctest::Approx(2 * a.strain).epsilon(1e-6));
        for (std::size_t i = 0; i < a.at.size(); ++i) CHECK(std::hypot(a.at[i].x - b.at[i].x, a.at[i].y - b.at[i].y) < 1e-3);
    }
    TEST_CASE("a laid cane comes level onto the wire, under the ceiling, as long as it was, and stays there") {
        for (std::uint32_t seed = 0; seed < 200; ++seed) {
            CAPTURE(seed);
            const auto share = [&](std::uint32_t i) { return unit(draw(seed, 7, i)); };
            const Grown cane = default_cane(6 + 8 * share(0), 50 + 60 * share(1), 40 + 60 * share(2));
            const double rise = -50 + 300 * share(3);
            const WireAbove wire = wire_over(cane, rise);
            CHECK(wire.ceiling >= rise + arch_over_wire);
            LaidCane laid;
            LayingHand().least(cane, wire, laid);
            REQUIRE(laid.settled);
            REQUIRE(laid.at.size() == cane.joint.size() + 1);
            for (std::size_t i = 0; i < laid.at.size(); ++i) {
                CHECK(laid.at[i].y <= wire.ceiling + 0.2);
                if (i >= laid.tie) CHECK(laid.at[i].y == doctest::Approx(rise).epsilon(1e-3));
                if (i == 0) continue;
                const double chord = std::hypot(laid.at[i].x - laid.at[i - 1].x, laid.at[i].y - laid.at[i - 1].y);
                CHECK(chord <= cane.joint[i - 1] * (1 + 1e-9));
                CHECK(chord > 0.9 * cane.joint[i - 1]);
            }
        }
    }
    TEST_CASE("the tie found is no worse than its neighbours") {
        for (std::uint32_t seed = 0; seed < 100; ++seed) {
            CAPTURE(seed);
            const auto share = [&](std::uint32_t i) { return unit(draw(seed, 8, i)); };
            const Grown cane = default_cane(10, 55 + 40 * share(1), 50 + 40 * share(2));
            const WireAbove wire = wire_over(cane, 40 + 150 * share(3));
            LaidCane laid, beside;
            LayingHand().least(cane, wire, laid);
            for (const std::uint32_t tie : {laid.tie - 1, laid.tie + 1}) {
                LayingHand().tied_at(cane, wire, tie, beside);
                CHECK(laid.strain <= beside.strain + 2e-4);
            }
        }
    }
    TEST_CASE("a cane too short for its tie is laid as though it ran on") {
        const Grown whole = default_cane(9, 80);
        Grown part = whole;
        part.joint.resize(5);
        part.diameter.resize(5);
        part.way.resize(6);
        LaidCane laid;
        LayingHand().least(part, wire_over(part, 110), laid);
        REQUIRE(laid.settled);
        CHECK(laid.tie > 5);
        CHECK(laid.at.size() == 6);
        CHECK(laid.worst <= 5);
        CHECK(laid.strain < 0.04);
    }
    TEST_CASE("a wire out of reach is said: no course, no end of strain") {
        const Grown cane = default_cane(9, 80);
        LaidCane laid;
        LayingHand().tied_at(cane, wire_over(cane, 150), 2, laid);
        CHECK_FALSE(laid.settled);
        CHECK(laid.at.empty());
        CHECK(laid.strain > 1e6);
    }
}
