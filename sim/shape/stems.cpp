#include "sim/shape/stems.h"

#include <algorithm>

#include "sim/core/numeric.h"
#include "sim/core/random.h"
#include "sim/vine/neighbours_wood.h"
#include "sim/vine/vine_query.h"

namespace spurwright::shape {
namespace {

constexpr double under_soil = 0.03;      // a trunk starts this deep: no line where it meets the ground
constexpr double crown_over_head = 0.45; // closed wood above the head node, in trunk radii
constexpr double longest_unread_end = 0.08;

Radii half(const Node& node) { return {in_m(node.major) / 2, in_m(node.minor) / 2}; }
Radii mean_of(Radii a, Radii b) { return {(a.major + b.major) / 2, (a.minor + b.minor) / 2}; }

// The latest wound that ended this axis past its last kept node.
const Wound* ending_wound(const Vine& vine, const Axis& axis, NodeId last) {
    const Wound* found = nullptr;
    for (const Wound& wound : vine.wounds)
        if (wound.axis == axis.id && wound.node == last && (!found || wound.winter >= found->winter)) found = &wound;
    return found;
}

// Bends a trunk's joint where it was once topped or leaned on its stake.
Vec3 kink(const Vine& vine, std::uint32_t axis, std::uint32_t nth, double joint, double radius) {
    const double most = std::min(0.5 * radius + 0.004, 0.06 * joint);
    const auto turn = numeric::sincos(2 * numeric::pi * share_of(vine.seed, Look::kink, axis, 2 * nth));
    const double out = most * (0.35 + 0.65 * share_of(vine.seed, Look::kink, axis, 2 * nth + 1));
    return {out * turn.cosine, 0, out * turn.sine};
}

class StemWriter {
public:
    StemWriter(const Vine& vine, const Axis& axis, const VineShape& shape, int parent_stem)
        : vine_(vine), axis_(axis), shape_(shape), rows_(vine.nodes_of(axis)) {
        while (kept_ < rows_.size() && !rows_[kept_].removed) ++kept_;
        stem.axis = axis.id;
        stem.parent = axis.parent;
        stem.parent_stem = parent_stem;
        stem.age = age(vine, axis);
        stem.trunk = is_trunk(axis) && !is_neighbours(vine, axis);
        stem.lateral = is_lateral(vine, axis);
        stem.wood = stem.age == 1 ? Wood::one_year : stem.age == 2 && !stem.trunk ? Wood::two_year : Wood::old;
        stem.side = axis.side;
        stem.grew = axis.grew;
        stem.mark = axis.mark;
        stem.dead = axis.state == AxisState::dead;
        stem.rootstock = on_rootstock(vine, axis);
        stem.laid = std::any_of(vine.laid.begin(), vine.laid.end(), [&](const Laid& l) { return l.axis == axis.id; });
    }

    bool stands() const { return kept_ > 0 && !axis_.removed; }

    void write() {
        start();
        for (std::uint32_t i = 0; i < kept_; ++i) add_node(i);
        finish();
        stem.line = CentreLine(std::move(points_), std::move(middles_));
        set_nodes();
    }

    Stem stem;

private:
    Radii joint(std::uint32_t i) const { return half(rows_[std::min<std::size_t>(i, rows_.size() - 1)]); }

    void start() {
        const Vec3 first = point_of(rows_[0].place);
        if (!axis_.parent) { // a neighbour's cane begins where it comes over
            points_.push_back({first - Vec3{0, stem.trunk ? under_soil : 0, 0}, joint(0)});
            return;
        }
        // A child starts inside its parent's wood: deep enough that its first ring lies under the bark.
        const Stem& parent = shape_.stems[static_cast<std::size_t>(stem.parent_stem)];
        const StemNode& on = parent.nodes[index_of(stem.parent)];
        const Vec3 way = unit(first - on.place);
        const bool at_base =
            index_of(stem.parent) == 0 && !parent.trunk; // the parent itself is only just coming out there
        const double within = std::min(joint(0).mean(), (at_base ? 0.3 : 0.5) * on.radius);
        const double depth =
            at_base
                ? 0
                : std::min(0.4 * on.radius, std::sqrt(std::max(0.0, 0.64 * on.radius * on.radius - within * within)));
        points_.push_back({on.place + depth * way,
                           {within * joint(0).major / joint(0).mean(), within * joint(0).minor / joint(0).mean()}});
    }

    void add_point(const LinePoint& point, Radii middle) {
        if (length(point.place - points_.back().place) < 2e-4) { // no room for a segment: the later point counts
            points_.back().node = point.node;
            points_.back().radii = point.radii;
            return;
        }
        middles_.push_back(middle);
        points_.push_back(point);
    }

    void add_node(std::uint32_t i) {
        const Radii here = i + 1 < rows_.size() ? mean_of(joint(i), joint(i + 1)) : joint(i);
        const Vec3 place = point_of(rows_[i].place);
        if (stem.trunk && i > 0) {
            const Vec3 from = points_.back().place;
            const double size = length(place - from);
            const int pieces = static_cast<int>(size / 0.11);
            for (int k = 1; k < pieces; ++k)
                add_point(
                    {lerp(from, place, static_cast<double>(k) / pieces) +
                         kink(vine_, axis_.id.value, 16 * i + static_cast<std::uint32_t>(k), size, joint(i).mean()),
                     joint(i)},
                    joint(i));
        }
        // Full as soon as it leaves the bark: only what nobody sees is thinner.
        const Radii collar =
            i == 0 && !stem.trunk ? mean_of(joint(0), mean_of(points_.back().radii, joint(0))) : joint(i);
        add_point({place, here, static_cast<int>(i)}, collar);
    }

    void finish() {
        const Vec3 last = points_.back().place;
        const Vec3 before = points_.size() > 1 ? points_[points_.size() - 2].place : last - Vec3{0, 1, 0};
        Vec3 way = unit(last - before);
        const NodeId last_node = rows_[kept_ - 1].id;
        const Wound* wound = ending_wound(vine_, axis_, last_node);
        const Radii next = joint(kept_);
        stem.ripe_at = 1e9;
        double beyond = 0;
        const bool topped_long_ago = stem.trunk && wound && wound->winter < vine_.winter;
        if (stem.trunk && kept_ == rows_.size() && (!wound || topped_long_ago)) {
            stem.end = StemEnd::crown;
            beyond = crown_over_head * joint(kept_ - 1).mean();
        } else if (wound || kept_ < rows_.size()) {
            stem.end = StemEnd::cut;
            // Towards the next node, except where laying moved what stays and left what was cut off where it stood.
            if (kept_ < rows_.size())
                if (const Vec3 onward = unit(point_of(rows_[kept_].place) - last, way); dot(onward, way) > 0.8)
                    way = onward;
            beyond = wound ? in_m(wound->beyond) : 0.004;
            stem.end_winters = wound ? vine_.winter - wound->winter : 0;
            if (wound) stem.end_wound = wound->id;
        } else {
            stem.end = axis_.end == AxisEnd::tip     ? StemEnd::tip
                       : axis_.end == AxisEnd::cut   ? StemEnd::cut
                       : axis_.end == AxisEnd::hedge ? StemEnd::hedge
                                                     : StemEnd::broken;
            stem.end_winters = 1;
            beyond = std::clamp(in_m(axis_.ripe - along(vine_, axis_, kept_ - 1)), 0.004, longest_unread_end);
        }
        beyond = std::max(beyond, 0.001);
        stem.end_normal = tilted(way, wound);
        Radii at_end = stem.end == StemEnd::crown ? Radii{0.8 * next.major, 0.8 * next.minor} : next;
        if (stem.end == StemEnd::tip) at_end = {std::min(next.major, 0.0011), std::min(next.minor, 0.0011)};
        const Radii middle = stem.end == StemEnd::tip ? Radii{0.8 * next.major, 0.8 * next.minor} : next;
        add_point({last + beyond * way, at_end}, middle);
    }

    // The face of a cut falls away from the last bud kept.
    Vec3 tilted(Vec3 way, const Wound* wound) const {
        if (!wound || wound->tilt.count == 0) return way;
        const auto slope = numeric::sincos(numeric::radians(numeric::clamp(in_deg(wound->tilt), -45, 45)));
        const Vec3 out = square_part({static_cast<double>(rows_[kept_ - 1].rank), 0, 0.3}, way);
        return unit(slope.cosine * way + slope.sine * out);
    }

    void set_nodes() {
        stem.nodes.resize(kept_);
        const auto& points = stem.line.points();
        double gone = 0;
        for (std::size_t p = 0; p < points.size(); ++p) {
            if (p > 0) gone += stem.line.segment_length(p - 1);
            if (points[p].node < 0) continue;
            const auto i = static_cast<std::size_t>(points[p].node);
            const LineSample sample = p < stem.line.segment_count() ? stem.line.at(p, 0) : stem.line.at(p - 1, 1);
            StemNode& node = stem.nodes[i];
            node.node = rows_[i].id;
            node.place = sample.place;
            node.along = sample.along;
            node.plane = any_square_to(sample.along);
            node.radius = points[p].radii.mean();
            node.from_root = gone;
            node.rank = rows_[i].rank;
            node.harm = rows_[i].harm;
            if (rows_[i].id == vine_.graft) stem.graft_at = gone;
        }
        for (std::size_t i = 0; i < kept_; ++i) // two nodes on one place: both stand there
            if (!stem.nodes[i].node) {
                stem.nodes[i] = i + 1 < kept_ ? stem.nodes[i + 1] : stem.nodes[i - 1];
                stem.nodes[i].node = rows_[i].id;
            }
        if (stem.wood == Wood::one_year) set_ripe();
    }

    // Bark ripens up to where the tables say; the change stands between two nodes as it does along the chords.
    void set_ripe() {
        Length gone, below;
        for (std::size_t i = 0; i < kept_; ++i, below = gone) {
            if (i > 0) gone += rows_[i].joint;
            if (gone <= axis_.ripe) continue;
            const double from = stem.nodes[i - 1].from_root, share = in_m(axis_.ripe - below) / in_m(gone - below);
            stem.ripe_at = from + share * (stem.nodes[i].from_root - from);
            return;
        }
    }

    const Vine& vine_;
    const Axis& axis_;
    const VineShape& shape_;
    Vine::Nodes rows_;
    std::uint32_t kept_ = 0;
    std::vector<LinePoint> points_;
    std::vector<Radii> middles_;
};

} // namespace

Vec3 point_of(const Place& p) { return {in_m(p.x), in_m(p.y), in_m(p.z)}; }

double share_of(std::uint64_t seed, Look look, std::uint32_t part, std::uint32_t nth) {
    return spurwright::unit(draw(seed, static_cast<std::uint32_t>(look), part, nth));
}

double Stem::from_root(std::size_t point) const {
    double gone = 0;
    for (std::size_t p = 0; p < point; ++p) gone += line.segment_length(p);
    return gone;
}

void add_stems(VineShape& shape, const Vine& vine, std::vector<int>& stem_of_row) {
    stem_of_row.assign(vine.axes.size(), -1);
    for (std::uint32_t row = 0; row < vine.axes.size(); ++row) {
        const Axis& axis = vine.axes[row];
        int parent = -1;
        if (axis.parent) {
            parent = stem_of_row[row_of(vine, *vine.find(axis_of(axis.parent)))];
            if (parent < 0 || index_of(axis.parent) >= shape.stems[static_cast<std::size_t>(parent)].nodes.size())
                continue;
        }
        StemWriter writer(vine, axis, shape, parent);
        if (!writer.stands()) continue;
        writer.write();
        stem_of_row[row] = static_cast<int>(shape.stems.size());
        shape.stems.push_back(std::move(writer.stem));
    }
}

} // namespace spurwright::shape
