#include "sim/checks/trials.h"

#include <algorithm>

namespace spurwright::checks {
namespace {

constexpr Trial sauvignon_row{"sauvignon-blanc", "epee-2022", "sauvignon-blanc", {54, 125, 1.0}, 75};
constexpr Trial sunmuscat_row{"sunmuscat", "sunmuscat-2023", "sunmuscat", {162, 125, 1.0}, 75};
constexpr Trial sultana_row{"sultana", "antcliff-1965", "sultana", {162, 125, 1.0}, 75};
constexpr Trial concord_row{"concord", "bates-2021", "concord", {54, 125, 1.0}, 75};

constexpr TwoPoints single_row{"ajev-6021", 0.526, {36, 152, 36.1}, {191, 60, 8.0}};
constexpr TwoPoints quad_row{"ajev-6006", 0.654, {41, 127, 34.4}, {244, 56, 8.8}};

} // namespace

const Trial& sauvignon_trial() { return sauvignon_row; }
const Trial& sunmuscat_trial() { return sunmuscat_row; }
const Trial& sultana_trial() { return sultana_row; }
const Trial& concord_trial() { return concord_row; }
const TwoPoints& oakville_single_trial() { return single_row; }
const TwoPoints& oakville_quad_trial() { return quad_row; }

growth::Constants constants_of(const Trial& trial) {
    return growth::with_variety(growth::trial_constants(), *growth::find_variety(trial.variety));
}

growth::KeptWood canes_of(int nodes, int a_cane) {
    growth::KeptWood kept;
    for (int left = nodes; left > 0; left -= a_cane) kept.nodes.push_back(std::min(left, a_cane));
    return kept;
}

} // namespace spurwright::checks
