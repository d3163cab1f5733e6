#include "sim/growth/thinning.h"

#include <algorithm>

#include "sim/growth/laws.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

bool is_non_count(const Push& push) { return push.kind == PushKind::base || push.kind == PushKind::head; }

// Renewal wood: near the crown point, below the wire, along the row.
bool is_wanted(const Push& push, const Vine& v, const Constants& c) {
    const Node& node = *v.find(push.on);
    return in_mm(distance_to_head(v, push.on, push.side)) <= c.wanted_distance_mm &&
           in_mm(fruiting_wire_height(v) - node.place.y) >= c.wanted_below_mm &&
           push.azimuth_deg <= c.wanted_azimuth_deg;
}

// The chance of each push to stay.
std::vector<double> keeping(const std::vector<Push>& pushes, const Vine& vine, const Constants& c) {
    std::vector<double> keep(pushes.size(), 1.0);
    for (const Side side : both_sides) {
        struct Rank {
            Length distance;
            std::size_t at;
        };
        std::vector<Rank> best;
        for (std::size_t i = 0; i < pushes.size(); ++i) {
            const Push& push = pushes[i];
            if (push.kind == PushKind::twin) keep[i] = 1.0 - c.double_off;
            if (push.kind == PushKind::sucker) keep[i] = 1.0 - c.sucker_off;
            if (!is_non_count(push) || push.side != side) continue;
            // Along a cordon a shoot of old wood is what brings a climbed spur down again.
            const bool on_cordon = vine.system == System::cordon && !is_trunk(*vine.find(axis_of(push.on)));
            keep[i] = on_cordon ? c.cordon_base_keep : c.unwanted_keep;
            if (is_wanted(push, vine, c)) best.push_back({distance_to_head(vine, push.on, side), i});
        }
        std::stable_sort(best.begin(), best.end(),
                         [](const Rank& a, const Rank& b) { return a.distance < b.distance; });
        const auto most = static_cast<std::size_t>(c.wanted_per_side);
        for (std::size_t i = 0; i < std::min(most, best.size()); ++i) keep[best[i].at] = c.wanted_keep;
    }
    return keep;
}

} // namespace

void thin(std::vector<Push>& pushes, const NextVine& next, const SeasonSettings& settings, const PushDraws& draws,
          SeasonNotes& notes) {
    std::vector<double> keep(pushes.size(), 1.0);
    if (settings.thinning) keep = keeping(pushes, next.vine, settings.constants);
    double sum = 0.5;
    std::size_t stays = 0;
    for (std::size_t i = 0; i < pushes.size(); ++i) {
        const Push push = pushes[i];
        if (keep[i] < 1.0 && !draws.happens(Trait::thinned, push.on, push.nth, keep[i], sum)) continue;
        notes.doubles_kept += push.kind == PushKind::twin;
        notes.non_count_kept += is_non_count(push);
        notes.suckers_kept += push.kind == PushKind::sucker;
        pushes[stays++] = push;
    }
    // Off when a hand long: weighed as a shoot of that length.
    const double hand_mg = 1000 * shoot_mass(settings.constants, settings.constants.thinned_at_cm, 1.0);
    notes.thinned_mg += hand_mg * static_cast<double>(pushes.size() - stays);
    notes.grown_mg += hand_mg * static_cast<double>(pushes.size() - stays);
    pushes.resize(stays);
}

} // namespace spurwright::growth
