#include "scenarios/scenes/vine_log.h"

#include <algorithm>
#include <cmath>

#include "sim/core/random.h"
#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/pruning/plan.h"
#include "sim/vine/canonical_text.h"

namespace spurwright::scenes {
namespace {

// All our choice; the water as in the exercise of weighing.
constexpr double scale_g = 10;
constexpr std::int32_t least_water = 60, most_water = 120; // thousandths
enum class LogDraw : std::uint32_t { wet_winter = 11, water = 12 };

} // namespace

Result<std::vector<weighing::LoggedWinter>> vine_log(const std::string& code, const rules::HouseRules& house, int winters, int now) {
    const auto read = read_code(code);
    if (!read) return failure(read.error());
    const auto site = growth::site_of(*read);
    if (!site) return failure(site.error());
    const auto grown = growth::grow_winters(*site);
    if (!grown) return failure(grown.error());
    const std::uint64_t vine = vine_hash(grown->back());
    const int n = std::min(winters, static_cast<int>(grown->size()) - 1);
    const int wet = n > 0 ? between(draw(vine, static_cast<std::uint32_t>(LogDraw::wet_winter), 0), 0, n - 1) : -1;
    const double water = as_share(PerMille{between(draw(vine, static_cast<std::uint32_t>(LogDraw::water), 0), least_water, most_water)});
    std::vector<weighing::LoggedWinter> log;
    for (int i = 0; i < n; ++i) {
        const Vine& before = (*grown)[grown->size() - 1 - static_cast<std::size_t>(n - i)];
        const auto after = prune(before, growth::history_plan(before, growth::habits_of(site->pruner)));
        if (!after) return failure(after.error());
        const double grams = weighing::true_bundle(weighing::pieces_of(before, *after, house)).mass.count / 1000.0 * (i == wet ? 1 + water : 1);
        log.push_back({now - n + i, from_g(scale_g * std::round(grams / scale_g)), i == wet});
    }
    return log;
}

} // namespace spurwright::scenes
