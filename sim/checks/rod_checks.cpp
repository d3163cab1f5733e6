// Checks 1 to 5 and 30: the planar rod against closed forms, and the section of a cane.
#include <cmath>

#include "sim/bending/rod.h"
#include "sim/bending/section.h"
#include "sim/checks/compared.h"
#include "sim/core/numeric.h"

namespace spurwright::checks {
namespace {

constexpr std::uint32_t rod_segments = 64;

bending::Rod unit_rod(std::uint32_t segments) {
    bending::Rod rod;
    for (std::uint32_t i = 0; i < segments; ++i) rod.add(1.0 / segments, 1.0, 0.0);
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

} // namespace spurwright::checks
