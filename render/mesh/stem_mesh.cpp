#include "render/mesh/stem_mesh.h"

#include <algorithm>
#include <cmath>

#include "render/mesh/bare_strip.h"
#include "render/mesh/noise.h"

namespace spurwright::mesh {
namespace {

using shape::LineSample;
using shape::Stem;
using shape::StemEnd;

// Shares of a joint where rings stand, dense at the nodes.
constexpr double coarse[] = {0.0, 0.14, 0.8}, medium[] = {0.0, 0.08, 0.3, 0.7, 0.92};
constexpr double fine[] = {0.0, 0.04, 0.1, 0.22, 0.5, 0.78, 0.9, 0.96};

std::span<const double> shares(const Detail& detail) {
    if (detail.rings_a_joint >= 8) return fine;
    if (detail.rings_a_joint >= 5) return medium;
    return coarse;
}

constexpr double cane_tile = 0.10, two_year_tile = 0.12, old_tile = 0.30; // metres a tile

// Builds the rings of one stem from its root to its end.
class Rings {
public:
    Rings(const shape::VineShape& vine, const Stem& stem, const Detail& detail)
        : vine_(vine), stem_(stem), detail_(detail) {
        tile_ = stem.wood == shape::Wood::one_year ? cane_tile : stem.wood == shape::Wood::two_year ? two_year_tile : old_tile;
        v_from_ = noise::unit(stem.axis.value, 3);
        if (stem.parent_stem >= 0) {
            const auto& parent = vine.stems[static_cast<std::size_t>(stem.parent_stem)];
            const auto& on = parent.nodes[index_of(stem.parent)];
            parent_place_ = on.place;
            parent_radius_ = on.radius;
            parent_along_ = on.along;
        }
        bears_.assign(stem.nodes.size(), 0);
        for (const auto& other : vine.stems)
            if (other.parent && axis_of(other.parent) == stem.axis && index_of(other.parent) < bears_.size())
                bears_[index_of(other.parent)] = 1;
    }

    std::vector<Ring> build() {
        const auto& line = stem_.line;
        double gone = 0;
        for (std::size_t s = 0; s < line.segment_count(); ++s) {
            const double size = line.segment_length(s);
            const bool last = s + 1 == line.segment_count();
            if (s == 0 && !stem_.trunk) {
                for (const double t : {0.0, 0.35, 0.6, 0.8}) add(s, t, gone + t * size);
            } else if (stem_.wood == shape::Wood::old || size < 0.004) {
                const int pieces = std::clamp(static_cast<int>(size / (stem_.trunk ? 0.025 : 0.014)), 1, 12);
                for (int k = 0; k < pieces; ++k) add(s, static_cast<double>(k) / pieces, gone + size * k / pieces);
            } else if (last) {
                add(s, 0, gone);
                add(s, 0.35, gone + 0.35 * size);
            } else {
                for (const double t :
                     stem_.lateral&& detail_.rings_a_joint < 8 ? std::span<const double>(coarse) : shares(detail_))
                    add(s, t, gone + t * size);
            }
            gone += size;
            if (last) add(s, 1, gone);
        }
        frame();
        if (stem_.trunk) foot();
        if (stem_.end == StemEnd::crown) dome();
        return std::move(rings_);
    }

private:
    void add(std::size_t segment, double t, double from_root) {
        const LineSample sample = stem_.line.at(segment, t);
        Ring ring;
        ring.centre = sample.place;
        ring.along = sample.along;
        ring.across_out = sample.radii.minor;
        ring.across_side = sample.radii.major;
        ring.v = v_from_ + from_root / tile_;
        ring.age = age_byte(stem_.age - 0.5);
        at_.push_back(from_root);
        dress(ring, from_root);
        rings_.push_back(ring);
    }

    // Node swelling, collar and old bark.
    void dress(Ring& ring, double from_root) {
        const double r = (ring.across_out + ring.across_side) / 2;
        const std::size_t count = stem_.nodes.size();
        while (near_ + 1 < count && from_root > (stem_.nodes[near_].from_root + stem_.nodes[near_ + 1].from_root) / 2)
            ++near_;
        const auto& node = stem_.nodes[near_];
        const double d = from_root - node.from_root;
        if (stem_.wood != shape::Wood::old && (near_ > 0 || stem_.wood == shape::Wood::two_year)) {
            const double vary = noise::between(0.7, 1.3, node.node.value, 1), swell = swelling(d, r) * vary;
            const double full = stem_.wood == shape::Wood::one_year ? 0.15 : bears_[near_] ? 0.42 : 0.20;
            ring.across_out *= 1 + full * swell;
            ring.across_side *= 1 + 0.5 * full * swell;
            ring.centre = ring.centre + (0.06 * r * swell * node.rank) * node.plane;
            if (node.rank < 0) ring.flags = bud_behind;
            const double off = std::fabs(d + 0.55 * r) / (3 * r);
            ring.node = static_cast<std::uint8_t>(255 * std::max(0.0, 1 - off));
        } else if (near_ == 0 && !stem_.trunk) {
            // The ring of base buds is a little swollen.
            const double ringed = std::exp(-d * d / (r * r * 0.8));
            ring.node = static_cast<std::uint8_t>(140 * ringed);
        }
        if (stem_.wood == shape::Wood::one_year) ring.flags |= health(node, from_root);
        if (parent_radius_ > 0) flare(ring, r);
        if (stem_.trunk) {
            if (stem_.graft_at > 0) {
                const double g = (from_root - stem_.graft_at + 0.03) / 0.032;
                const double ringed = 1 + 0.26 * std::exp(-g * g);
                const double below = from_root < stem_.graft_at - 0.02 ? 0.92 : 1.0;
                ring.across_out *= ringed * below;
                ring.across_side *= ringed * below;
            }
            ring.lobe = 0.10;
            ring.lobe_at = from_root + noise::unit(stem_.axis.value, 9);
        } else if (stem_.wood == shape::Wood::old) {
            ring.lobe = 0.07;
            ring.lobe_at = 1.7 * from_root + noise::unit(stem_.axis.value, 9);
        }
    }

    // What harmed a node shows half a joint to either side, a crack at the base 30 mm up (our choice).
    std::uint8_t health(const shape::StemNode& nearest, double from_root) const {
        constexpr std::uint8_t harms[] = {0, spotted, scarred, cracked};
        const shape::StemNode& base = stem_.nodes.front();
        const bool at_crack = base.harm == Harm::cracked && from_root - base.from_root < 0.03;
        return static_cast<std::uint8_t>(harms[static_cast<std::size_t>((at_crack ? base : nearest).harm)] | (from_root > stem_.ripe_at ? unripe : 0));
    }

    // Wider where it leaves its parent, never wider than the parent can carry.
    void flare(Ring& ring, double r) const {
        const double outside = shape::length(ring.centre - parent_place_) - parent_radius_;
        if (outside > 3 * r) return;
        const double most = std::clamp(1.15 * parent_radius_ / r, 1.08, 1.45);
        const double f = outside < 0 ? 1.0 : 1 + (most - 1) * std::exp(-(outside * outside) / (0.8 * r * r));
        const double in = outside < 0 ? std::clamp(1 + outside / parent_radius_ * 0.5, 0.6, 1.0) : 1.0;
        ring.bearer = parent_place_;
        ring.bearer_along = parent_along_;
        ring.blend = 0.75 * std::exp(-std::max(0.0, outside) / (0.6 * r));
        ring.across_out *= f * in;
        ring.across_side *= f * in;
    }

    // Puts `out` of every ring into the plane of the buds and works out slopes.
    void frame() {
        std::size_t below = 0;
        const auto& nodes = stem_.nodes;
        for (std::size_t i = 0; i < rings_.size(); ++i) {
            while (below + 1 < nodes.size() && at_[i] > nodes[below + 1].from_root) ++below;
            Vec3 plane = nodes[below].plane;
            if (below + 1 < nodes.size() && at_[i] > nodes[below].from_root) {
                const double span = nodes[below + 1].from_root - nodes[below].from_root;
                plane = shape::lerp(plane, nodes[below + 1].plane,
                                    std::clamp((at_[i] - nodes[below].from_root) / span, 0.0, 1.0));
            }
            Ring& ring = rings_[i];
            if (stem_.wood == shape::Wood::old && i > 0) {
                const auto carried = shape::carried({rings_[i - 1].along, rings_[i - 1].out}, rings_[i - 1].centre,
                                                    ring.centre, ring.along);
                ring.out = shape::square_part(carried.out, ring.along);
            } else {
                ring.out = shape::square_part(plane, ring.along);
            }
            if (i > 0) {
                const double step = std::max(1e-5, shape::length(ring.centre - rings_[i - 1].centre));
                const double was = (rings_[i - 1].across_out + rings_[i - 1].across_side) / 2;
                ring.slope = std::clamp(((ring.across_out + ring.across_side) / 2 - was) / step, -1.2, 1.2);
            }
        }
        for (std::size_t i = 0; i + 1 < rings_.size(); ++i)
            rings_[i].slope = (rings_[i].slope + rings_[i + 1].slope) / 2;
    }

    // Wider where it goes into the soil (our choice).
    void foot() {
        for (std::size_t i = 0; i < rings_.size(); ++i) {
            const double up = std::max(0.0, rings_[i].centre.y + 0.01);
            const double f = 1 + 0.65 * std::exp(-up / 0.045);
            rings_[i].across_out *= f;
            rings_[i].across_side *= f;
            rings_[i].lobe += 0.16 * std::exp(-up / 0.06); // the first roots
        }
    }

    // Rounds the head over: rings beyond the head node shrink to a blunt point.
    void dome() {
        const double from = stem_.nodes.back().from_root, to = at_.back();
        const double r = stem_.nodes.back().radius;
        std::vector<Ring> tail;
        for (std::size_t i = 0; i < rings_.size(); ++i) {
            const double share = (at_[i] - from) / (to - from);
            if (share <= 0) {
                tail.push_back(rings_[i]);
            }
        }
        const Ring base = tail.back();
        const Vec3 way = base.along;
        for (const double a : {0.25, 0.55, 0.85, 1.12, 1.35}) {
            Ring ring = base;
            const double h = std::sin(a), w = std::cos(a);
            ring.centre = stem_.nodes.back().place + (h * (to - from)) * way;
            ring.across_out = r * (0.15 + 0.9 * w);
            ring.across_side = r * (0.15 + 0.9 * w);
            ring.slope = -h / std::max(w, 0.2);
            ring.v = base.v + h * (to - from) / tile_;
            ring.lobe_at = base.lobe_at + h * 0.05;
            tail.push_back(ring);
        }
        rings_ = std::move(tail);
    }

    const shape::VineShape& vine_;
    const Stem& stem_;
    const Detail& detail_;
    std::vector<Ring> rings_;
    std::vector<double> at_;
    std::size_t near_ = 0;
    double tile_ = 0.1, v_from_ = 0, parent_radius_ = 0;
    Vec3 parent_place_, parent_along_;
    std::vector<char> bears_; // by node: a child stands there
};

Face face_of(const Stem& stem) {
    Face face;
    face.normal = stem.end_normal;
    face.seed = stem.axis.value;
    if (stem.end == StemEnd::broken)
        face.jagged = 0.9;
    else if (stem.end_winters > 0)
        face.sunk = stem.wood == shape::Wood::old ? 0.22 : 0.10;
    if (stem.end == StemEnd::cut && stem.end_winters > 2 && stem.wood == shape::Wood::old) face.rim = 0.06;
    return face;
}

} // namespace

Material material_of(const Stem& stem) {
    return stem.wood == shape::Wood::one_year   ? Material::cane
           : stem.wood == shape::Wood::two_year ? Material::two_year
                                         : Material::old;
}

std::uint8_t flags_of(const Stem& stem) {
    return static_cast<std::uint8_t>((stem.dead ? dead : 0) | (stem.grew == CaneClass::shaded ? shaded : 0) |
                                     (stem.rootstock ? rootstock : 0));
}

std::uint8_t age_byte(double years) { return static_cast<std::uint8_t>(std::clamp(years * 16, 0.0, 255.0)); }

double swelling(double d, double r) {
    const double x = d / ((d > 0 ? 1.0 : 1.9) * r);
    return std::exp(-x * x);
}

void add_stem(Writer& w, const shape::VineShape& vine, std::size_t at, const Detail& detail) {
    const Stem& stem = vine.stems[at];
    std::vector<Ring> rings = Rings(vine, stem, detail).build();
    const double r = stem.nodes.front().radius;
    TubeStyle style;
    style.sides = std::max(4, detail.sides(r));
    style.u_tiles = stem.wood == shape::Wood::one_year ? 1 : stem.wood == shape::Wood::two_year ? 2 : stem.trunk ? 4 : 3;
    const bool faced = stem.end != StemEnd::tip && stem.end != StemEnd::crown;
    if (faced) rings.back().cut = stem.end_normal;
    style.leave_finish_open = faced;
    style.finish = Close::pole;
    w.begin(PartKind::stem, material_of(stem), stem.axis, stem.axis.value);
    w.flags = flags_of(stem);
    const auto first = static_cast<std::uint32_t>(w.mesh().vertices.size());
    add_tube(w, rings, style);
    for (const auto& strip : vine.dead_strips)
        if (strip.stem == at) {
            std::vector<double> from_root;
            for (const Ring& ring : rings) from_root.push_back((ring.v - noise::unit(stem.axis.value, 3)) * old_tile);
            lay_bare(w.mesh(), first, style.sides, rings, from_root, strip);
        }
    w.end();
    if (!faced) return;
    w.begin(PartKind::face, Material::face, stem.axis, stem.end_wound ? stem.end_wound.value : stem.axis.value);
    const bool this_winter = stem.end == StemEnd::cut && stem.end_winters == 0;
    w.flags = static_cast<std::uint8_t>(cut_face | (this_winter ? fresh : 0) | (stem.dead ? dead : 0));
    w.age = static_cast<std::uint8_t>(std::min(255, 16 * stem.end_winters));
    add_face(w, rings.back(), style, face_of(stem));
    w.end();
}

} // namespace spurwright::mesh
