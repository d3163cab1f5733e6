#include "sim/growth/thinning.h"

#include <algorithm>
#include <cmath>

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

// Along a cordon one shoot of old wood fills a gap or brings a climbed spur down again; beside a good spur, or beside
// one already chosen for it, it goes.
bool renews_cordon(const Push& push, const std::vector<Push>& pushes, std::vector<Place>& chosen, const Vine& v, const Constants& c) {
    const Place at = v.find(push.on)->place;
    const auto beside = [&](const Place& other) { return std::fabs(in_mm(other.x - at.x)) < c.cordon_gap_mm; };
    for (const Push& other : pushes) {
        if (other.side != push.side || other.kind != PushKind::count) continue;
        const Place& spur = v.find(other.on)->place;
        if (beside(spur) && in_mm(spur.y - fruiting_wire_height(v)) < c.cordon_climbed_mm) return false;
    }
    if (std::any_of(chosen.begin(), chosen.end(), beside)) return false;
    chosen.push_back(at);
    return true;
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
        std::vector<Place> chosen;
        for (std::size_t i = 0; i < pushes.size(); ++i) {
            const Push& push = pushes[i];
            if (push.kind == PushKind::twin) keep[i] = 1.0 - c.double_off;
            if (push.kind == PushKind::sucker) keep[i] = 1.0 - c.sucker_off;
            if (!is_non_count(push) || push.side != side) continue;
            const bool on_cordon = vine.system == System::cordon && !is_trunk(*vine.find(axis_of(push.on)));
            keep[i] = !on_cordon                                ? c.unwanted_keep
                      : renews_cordon(push, pushes, chosen, vine, c) ? c.cordon_renewal_keep
                                                             : c.cordon_base_keep;
            // A cordon is renewed along its arms, not from the head.
            if (vine.system != System::cordon && is_wanted(push, vine, c)) best.push_back({distance_to_head(vine, push.on, side), i});
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
