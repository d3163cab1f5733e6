// What a crowd of vines holds, measured as the checks ask: the bands are written out here on their own, so that a
// change of the shipped house rules cannot make a check of growth pass or fail.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/growth/history.h"
#include "sim/growth/history_pruner.h"
#include "sim/growth/season.h"
#include "sim/vine/vine_query.h"

namespace spurwright::checks {

enum class Share { none, part, full };

inline Share diameter_share(double d, double ratio, double joint) {
    const bool oval = ratio > 1.25;
    if (d < 6.4 || d > 14.0 || (oval && d > 12.0) || (d > 12.7 && (oval || joint >= 127))) return Share::none;
    return d >= 8.0 && d <= 12.0 ? Share::full : Share::part;
}
inline Share joint_share(double l) {
    return l < 45 || l > 127 ? Share::none : l >= 55 && l <= 95 ? Share::full : Share::part;
}
inline Share evenness_share(double v) { return v > 0.40 ? Share::none : v > 0.25 ? Share::part : Share::full; }

// Shares of none, part and full, counted.
struct Tally {
    double count[3] = {0, 0, 0};
    void add(Share s) { ++count[static_cast<int>(s)]; }
    double percent(Share s) const { return 100 * count[static_cast<int>(s)] / (count[0] + count[1] + count[2]); }
};

// One candidate: a one-year axis with at least four ripe count buds; joints over its first twelve count buds.
struct Measured {
    const Axis* axis;
    double diameter, ratio, joint, variation, ripe_mm;
    int buds, distance, below, azimuth;
    bool flagged;
};

inline bool flagged(const Vine& vine, const Axis& axis) {
    for (const Node& node : vine.nodes_of(axis))
        if (node.harm != Harm::none) return true;
    return is_double(vine, axis) || along(vine, axis, axis.node_count - 1) > axis.ripe + Length{1000};
}

inline std::vector<Measured> candidates(const Vine& vine) {
    std::vector<Measured> found;
    for (const AxisId id : cane_candidates(vine)) {
        const Axis& axis = *vine.find(id);
        const auto ripe = ripe_count_nodes(vine, axis);
        const auto nodes = vine.nodes_of(axis);
        const std::size_t last = std::min<std::size_t>(ripe.size(), 12) - 1;
        double sum = 0, count = 0;
        for (std::uint32_t i = ripe[0] + 1; i <= ripe[last]; ++i, ++count) sum += in_mm(nodes[i].joint);
        const double mean = sum / count;
        double rest = 0, rest_squares = 0;
        for (std::uint32_t i = ripe[0] + 2; i <= ripe[last]; ++i) {
            rest += in_mm(nodes[i].joint);
            rest_squares += in_mm(nodes[i].joint) * in_mm(nodes[i].joint);
        }
        const double m = rest / (count - 1), variance = rest_squares / (count - 1) - m * m;
        found.push_back({&axis, in_mm(thickness(vine, axis)),
                         static_cast<double>(nodes[2].major.count) / nodes[2].minor.count, mean,
                         std::sqrt(std::max(0.0, variance)) / m, in_mm(axis.ripe), static_cast<int>(ripe.size()),
                         distance_to_head(vine, axis).count / 1000, below_wire(vine, axis).count / 1000,
                         base_azimuth(vine, axis, axis.side).count / 1000, flagged(vine, axis)});
    }
    return found;
}

inline bool full_mark(const Measured& c) {
    return diameter_share(c.diameter, c.ratio, c.joint) == Share::full && joint_share(c.joint) == Share::full &&
           !c.flagged && c.buds >= 6 && c.distance <= 160 && c.below >= 0 && c.below <= 250 && c.azimuth <= 90;
}
inline bool tempting(const Measured& c) {
    if (c.diameter < 7 || c.ripe_mm < 600) return false;
    return diameter_share(c.diameter, c.ratio, c.joint) == Share::none || joint_share(c.joint) == Share::none ||
           c.flagged || c.distance > 160 || c.below < 0 || c.azimuth > 60;
}

// A vine of winter `site.age` with the notes of its last season.
struct Grown {
    Vine vine;
    growth::SeasonNotes notes;
};
inline Grown grown(const growth::Site& site) {
    Grown g;
    const auto winters = growth::grow_winters(site);
    const Vine& before = (*winters)[winters->size() - 2];
    const Vine cut = *prune(before, growth::history_plan(before, growth::habits_in(site, before.winter)));
    g.vine = growth::season(cut, {}, &g.notes);
    return g;
}

} // namespace spurwright::checks
