#include "sim/planning/fingerprint.h"

#include "sim/core/hash.h"
#include "sim/planning/planning.h"
#include "sim/pruning/plan_text.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::planning {

std::string fingerprint_line(const Vine& vine, const rules::HouseRules& house) {
    const Planning planning(vine, house);
    const auto best = planning.best();
    return hash_text(vine_hash(vine)) + ' ' + std::to_string(planning.counted()) + ' ' +
           (best ? std::to_string(best->points.count) + ' ' + print_plan(best->plan) : std::string("- -")) + '\n';
}

}  // namespace spurwright::planning
