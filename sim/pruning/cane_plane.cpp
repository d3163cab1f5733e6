#include "sim/pruning/cane_plane.h"

#include <algorithm>
#include <cmath>

#include "sim/core/numeric.h"
#include "sim/vine/vine_query.h"

namespace spurwright {
namespace {

constexpr double leaving_mm = 300.0;   // of the cane give the plane it stands in (our choice)
constexpr double least_upright = 0.5;  // how steeply that plane stands at the least: a cane that hangs out is lifted first
constexpr double thinnest_mm = 0.5, shortest_mm = 0.1;  // for the rod alone: odd drawings have less

struct Spot { double x = 0, y = 0, z = 0; };  // mm

// Bending works towards +x: the near-post side is its mirror image.
Spot spot_of(const Place& p, double sign) { return {sign * in_mm(p.x), in_mm(p.y), in_mm(p.z)}; }

Place rounded_place(const Spot& p, double sign) { return {from_mm(sign * p.x), from_mm(p.y), from_mm(p.z)}; }

}  // namespace

CanePlane cane_plane(const Vine& vine, const Axis& axis, Side side) {
    const double sign = sign_of(side);
    const auto nodes = vine.nodes_of(axis);
    const std::size_t last = nodes.size() - 1;
    const auto step = [&](std::size_t from, std::size_t to) {
        const Spot a = spot_of(nodes[from].place, sign), b = spot_of(nodes[to].place, sign);
        return Spot{b.x - a.x, b.y - a.y, b.z - a.z};
    };
    CanePlane flat;
    flat.side = side;
    std::size_t leaving = 0;
    for (double s = 0; leaving < last && s < leaving_mm; s += in_mm(nodes[leaving].joint)) ++leaving;
    const Spot out = step(0, leaving);
    const double off = std::sqrt(out.y * out.y + out.z * out.z);
    if (off > 1e-3) {
        const double turn = out.y < 0 ? -1.0 : 1.0;
        flat.up = std::max(turn * out.y / off, least_upright);
        flat.across = std::sqrt(1.0 - flat.up * flat.up) * (turn * out.z < 0 ? -1.0 : 1.0);
    }
    bending::Flat before{0, 1};
    for (std::size_t i = 0; i <= last; ++i) {
        // Over two joints, so that the zigzag is no bend.
        const std::size_t middle = std::clamp<std::size_t>(i, 1, std::max<std::size_t>(last, 2) - 1);
        const Spot t = step(middle - 1, std::min(middle + 1, last));
        const double away = std::sqrt(t.y * t.y + t.z * t.z), size = std::sqrt(t.x * t.x + away * away);
        if (size > 1e-3) before = {t.x / size, (flat.up * t.y + flat.across * t.z < 0 ? -away : away) / size};
        flat.cane.way.push_back(before);
        if (i == 0) continue;
        flat.cane.joint.push_back(std::max(in_mm(nodes[i].joint), shortest_mm));
        flat.cane.diameter.push_back(std::max(in_mm(mean_diameter(nodes[i])), thinnest_mm));
    }
    flat.wire.height = (in_mm(fruiting_wire_height(vine)) - in_mm(nodes[0].place.y)) / flat.up;
    flat.wire.ceiling = bending::hand_ceiling(flat.wire.height, bending::leaving_way(flat.cane));
    return flat;
}

std::vector<Place> onto_vine(const Vine& vine, const Axis& axis, const CanePlane& flat, const std::vector<bending::Flat>& shape, double down_mm, double brought) {
    const double sign = sign_of(flat.side);
    const auto nodes = vine.nodes_of(axis);
    std::vector<Place> places{nodes[0].place};
    places.reserve(nodes.size());
    const Spot base = spot_of(nodes[0].place, sign);
    Spot at = base;
    double s = 0;
    for (std::uint32_t i = 1; i < nodes.size(); ++i) {
        s += flat.cane.joint[i - 1];
        const double u = std::min(1.0, s / down_mm), left = 1.0 - brought * u * u * (3.0 - 2.0 * u);
        const bending::Flat to = shape[i], from = shape[i - 1];
        const double run = std::sqrt((to.x - from.x) * (to.x - from.x) + (to.y - from.y) * (to.y - from.y));
        const double dy = numeric::clamp(base.y + flat.up * to.y - at.y, -run, run);
        const double most = std::sqrt(run * run - dy * dy);
        const double dz = numeric::clamp((base.z + flat.across * to.y) * left - at.z, -most, most);
        const double dx = std::sqrt(std::max(0.0, most * most - dz * dz));
        at = {at.x + (to.x < from.x ? -dx : dx), at.y + dy, at.z + dz};
        places.push_back(rounded_place(at, sign));
    }
    return places;
}

}  // namespace spurwright
