// Strips of a trunk where the bark died back below an old wound: derived from the wounds and the dead arms that the tables
// hold, so that no field is needed. All numbers our choice; that flat or dead strips stand on some old trunks is common
// practice, no source.
#include <algorithm>

#include "sim/shape/stems.h"
#include "sim/vine/vine_query.h"

namespace spurwright::shape {
namespace {

constexpr int oldest_without = 11;     // winters of a trunk that is too young for one
constexpr int winters_to_show = 3;     // until the bark over it has come off
constexpr double least_face_mm = 26;   // a smaller wound is closed over before that
constexpr double flush_below = 0.5;    // a stub of so much of its thickness takes the dry-back itself
constexpr double long_at_once = 3, longer_each_winter = 0.35, longest = 14; // in thicknesses of the wound
constexpr double widest_share = 0.55;  // of the trunk's radius there: the rest of the ring lives
constexpr double least_height = 0.06;   // metres from the root

// What a strip may come from.
struct StripSource {
    WoundId wound;
    AxisId dead;
    std::uint32_t stem = 0, node = 0;
    double thick_mm = 0;
    int winters = 0;
    Vec3 out;
};

bool old_trunk(const Stem& stem) { return stem.trunk && stem.age > oldest_without && stem.nodes.size() > 1; }

void add_wound_sources(const VineShape& shape, const Vine& vine, std::vector<StripSource>& sources) {
    for (const WoundShape& drawn : shape.wounds) {
        const Stem& stem = shape.stems[drawn.stem];
        if (!old_trunk(stem) || drawn.winters < winters_to_show || drawn.wood_age < 2) continue;
        const auto row = std::find_if(vine.wounds.begin(), vine.wounds.end(),
                                      [&](const Wound& wound) { return wound.id == drawn.wound; });
        const double thick = in_mm(row->major);
        if (thick < least_face_mm || in_mm(row->beyond) >= flush_below * thick) continue;
        sources.push_back({drawn.wound, {}, drawn.stem, index_of(drawn.node), thick, drawn.winters, drawn.outward});
    }
}

void add_arm_sources(const VineShape& shape, const Vine& vine, std::vector<StripSource>& sources) {
    for (const Stem& arm : shape.stems) {
        if (!arm.dead || arm.parent_stem < 0 || arm.age < 4 || arm.nodes.empty()) continue;
        const auto bearer = static_cast<std::uint32_t>(arm.parent_stem);
        if (!old_trunk(shape.stems[bearer])) continue;
        const Axis& axis = *vine.find(arm.axis);
        const double thick = in_mm(vine.nodes_of(axis).back().major);
        if (thick < least_face_mm) continue;
        const Vec3 foot = shape.stems[bearer].nodes[index_of(arm.parent)].place;
        sources.push_back({{}, arm.axis, bearer, index_of(arm.parent), thick, arm.age - 1, arm.nodes.front().place - foot});
    }
}

} // namespace

void add_dead_strips(VineShape& shape, const Vine& vine) {
    std::vector<StripSource> sources;
    add_wound_sources(shape, vine, sources);
    add_arm_sources(shape, vine, sources);
    for (std::uint32_t s = 0; s < shape.stems.size(); ++s) {
        const StripSource* from = nullptr; // the thickest: a trunk has one
        for (const StripSource& source : sources)
            if (source.stem == s && (!from || source.thick_mm > from->thick_mm)) from = &source;
        if (!from) continue;
        const Stem& trunk = shape.stems[s];
        const StemNode& top = trunk.nodes[std::min<std::size_t>(from->node, trunk.nodes.size() - 1)];
        const Vec3 out = square_part(from->out, top.along);
        const double thick = from->thick_mm / 1000;
        const double reach = thick * std::min(longest, long_at_once + longer_each_winter * from->winters);
        const double lowest = std::max(trunk.graft_at, least_height);
        DeadStrip strip{s, std::max(lowest, top.from_root - reach), top.from_root, out, 0, from->wound, from->dead};
        strip.half_width = std::min(thick / 2, widest_share * top.radius);
        if (strip.from < strip.to && length(out) > 0.5) shape.dead_strips.push_back(strip);
    }
}

} // namespace spurwright::shape
