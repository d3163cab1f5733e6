// Checks 1 to 5, 30 and 45: the planar rod against closed forms, the section of a cane, a default cane laid.
#include <algorithm>
#include <cmath>

#include "sim/bending/laying.h"
#include "sim/bending/rod.h"
#include "sim/bending/section.h"
#include "sim/checks/compared.h"
#include "sim/core/numeric.h"

namespace spurwright::checks {
namespace {

constexpr std::uint32_t rod_segments = 64;

bending::Rod unit_rod(std::uint32_t segments) {
    bending::Rod rod;
    for (std::uint32_t i = 0; i < segments; ++i) rod.add(1.0 / segments, 1.0, {1, 0});
    return rod;
}

// The tip of an unsettled solve is no answer: far outside every band.
bending::Flat tip_of(const bending::Rod& rod, const bending::Loads& loads) {
    bending::Bent bent;
    bending::RodSolver().solve(rod, loads, bent);
    return bent.settled ? bent.at.back() : bending::Flat{1e9, 1e9};
}

bending::Flat end_loaded_tip(std::uint32_t segments, double alpha) {
    bending::Loads loads;
    loads.pulls.push_back({segments, {0, alpha}});
    return tip_of(unit_rod(segments), loads);
}

struct Elastica {
    double alpha, x, y;
};
constexpr Elastica table[] = {
    {1, .943567, .301721}, {2, .839358, .493457}, {5, .612372, .713792}, {10, .445004, .810609}};

// A cane of 1,250 mm by the posture's means: it leaves at 45 degrees and swings up within 40 mm to its lean; as thick as a
// grown one along its length, joints of 60 mm but for the first two.
bending::Grown default_cane(double base_mm, double lean_deg) {
    const double length = 1'250;
    bending::Grown cane;
    double s = 0;
    const auto way = [&] {
        const auto [sine, cosine] = numeric::sincos(numeric::radians(lean_deg - (lean_deg - 45) * numeric::exp(-s / 40)));
        return bending::Flat{cosine, sine};
    };
    for (int i = 0; s < length - 60; ++i) {
        const double joint = i == 0 ? 18 : i == 1 ? 36 : 60;
        cane.way.push_back(way());
        cane.joint.push_back(joint);
        cane.diameter.push_back(base_mm * numeric::pow(1 - 0.55 * (s + joint / 2) / length, 0.8));
        s += joint;
    }
    cane.way.push_back(way());
    return cane;
}

struct DefaultCane {
    double base_mm, below_mm, least_percent;
};
constexpr DefaultCane laid_table[] = {{8, 100, 2.3}, {8, 120, 2.0}, {8, 150, 1.7}, {10, 100, 2.9}, {10, 120, 2.5}, {10, 150, 2.1}};
constexpr double break_percent = 4.0, laid_tolerance = 0.3, from_mm_along = 300;

// Largest and least strain in percent over ties from that far along the cane.
std::pair<double, double> strains_of_ties(const bending::Grown& cane, double below_mm, double from) {
    const bending::WireAbove wire{below_mm, bending::hand_ceiling(below_mm, bending::leaving_way(cane))};
    std::pair<double, double> most_least{0, no_limit};
    double s = 0;
    for (std::uint32_t tie = 1; tie < cane.joint.size(); ++tie) {
        s += cane.joint[tie - 1];
        if (s < from) continue;
        bending::LaidCane laid;
        bending::LayingHand().tied_at(cane, wire, tie, laid);
        most_least = {std::max(most_least.first, 100 * laid.strain), std::min(most_least.second, 100 * laid.strain)};
    }
    return most_least;
}

std::string named(const char* what, double value) { return what + std::to_string(static_cast<int>(value)); }

} // namespace

Numbers elastica_up() {
    Numbers numbers;
    for (const Elastica& row : table)
        numbers.push_back(near(named("alpha ", row.alpha), row.y, 2e-3, end_loaded_tip(rod_segments, row.alpha).y));
    // At the smallest load, where the printed digits are fine enough to see the error fall.
    const auto error = [](std::uint32_t segments) { return end_loaded_tip(segments, 1).y - table[0].y; };
    numbers.push_back(near("error, 32 / 64 segments", 4, 0.4, error(rod_segments / 2) / error(rod_segments)));
    return numbers;
}

Numbers elastica_along() {
    Numbers numbers;
    for (const Elastica& row : table)
        numbers.push_back(near(named("alpha ", row.alpha), row.x, 2e-3, end_loaded_tip(rod_segments, row.alpha).x));
    return numbers;
}

Numbers sag() {
    Numbers numbers;
    for (const auto& [beta, down] : {std::pair{1.0, .12347}, std::pair{5.0, .49591}, std::pair{10.0, .70020}}) {
        bending::Loads loads;
        loads.gravity = {0, -1};
        loads.weight.assign(rod_segments, beta / rod_segments);
        numbers.push_back(near(named("beta ", beta), down, 2e-3, -tip_of(unit_rod(rod_segments), loads).y));
    }
    return numbers;
}

Numbers ring() {
    bending::Loads loads;
    loads.end_moment = 2 * numeric::pi;
    const bending::Flat tip = tip_of(unit_rod(2 * rod_segments), loads);
    return {within("gap, 128 segments", 0, 1e-3, std::sqrt(tip.x * tip.x + tip.y * tip.y))};
}

Numbers skin() { return {near("", 0.02, 1e-9, bending::skin_strain(8, 1.0 / 200))}; }

Numbers cutting_force() {
    return {within("982 N, 13.94 MPa", 9.1 - 0.3, 9.5 + 0.3, bending::diameter_of_cut(982, 13.94)),
            within("1398 N, 21.68 MPa", 9.1 - 0.3, 9.5 + 0.3, bending::diameter_of_cut(1398, 21.68))};
}

Numbers laid_default_cane() {
    Numbers numbers;
    for (const DefaultCane& row : laid_table) {
        const bending::Grown cane = default_cane(row.base_mm, 72);
        const bending::WireAbove wire{row.below_mm, bending::hand_ceiling(row.below_mm, bending::leaving_way(cane))};
        bending::LaidCane laid;
        bending::LayingHand().least(cane, wire, laid);
        const std::string name = named("", row.base_mm) + named(" mm, ", row.below_mm);
        numbers.push_back(near(name + ", least %", row.least_percent, laid_tolerance, 100 * laid.strain));
        numbers.push_back(within(name + ", any tie from 300 mm %", 0, break_percent, strains_of_ties(cane, row.below_mm, from_mm_along).first));
    }
    numbers.push_back(within("12 mm upright, 100, least %", break_percent, no_limit, strains_of_ties(default_cane(12, 90), 100, 0).second));
    return numbers;
}

} // namespace spurwright::checks
