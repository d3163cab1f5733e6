#include "sim/growth/tempt.h"

#include "sim/growth/tempt/put.h"
#include "sim/vine/vine_check.h"

namespace spurwright::growth {
namespace {

constexpr int no_recipe = 255; // a drawn or edited vine

} // namespace

Result<Tempted> tempted(const Vine& vine, const Temptation& temptation) {
    Tempted made{vine, {}};
    made.vine.recipe = no_recipe;
    const auto axis = std::visit([&](const auto& t) { return put(made.vine, t); }, temptation);
    if (!axis) return failure(axis.error());
    made.axis = *axis;
    if (auto broken = check_vine(made.vine)) return failure(std::move(*broken));
    return made;
}

} // namespace spurwright::growth
