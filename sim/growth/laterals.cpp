#include "sim/growth/laterals.h"

#include <algorithm>
#include <cmath>

#include "sim/pruning/prunings.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

class Laterals {
public:
    Laterals(NextVine& next, const std::vector<Point3>& ranks, const Trellis& trellis, const SeasonSettings& settings,
             const Draws& draws, SeasonNotes* notes)
        : next_(next), ranks_(ranks), trellis_(trellis), s_(settings), c_(settings.constants), draws_(draws),
          notes_(notes) {}

    void along(std::size_t row) {
        const Axis cane = next_.vine.axes[row]; // a copy: rows are added
        const double p = c_.lateral_p * (cane.grew == CaneClass::bull ? c_.lateral_bull : 1.0);
        const std::uint32_t under_hedge =
            cane.end == AxisEnd::hedge && cane.node_count > 3 ? cane.node_count - 2 : cane.node_count;
        for (std::uint32_t i = 1; i < std::min(under_hedge, cane.node_count); ++i) {
            const Node& node = node_at(cane, i);
            const double u = draws_.share(Trait::lateral, node.id.value);
            if (u >= p) continue;
            const bool in_zone = i <= static_cast<std::uint32_t>(c_.leaf_removal_nodes) ||
                                 spurwright::in_mm(node.place.y) < trellis_.fruiting + c_.leaf_removal_above_mm;
            const bool off =
                s_.leaf_removal && in_zone && draws_.chance(Trait::lateral, node.id.value, 1, c_.leaf_removal_p);
            if (!off && !draws_.chance(Trait::lateral, node.id.value, 2, c_.lateral_drop)) {
                add(cane, i, 0);
                continue;
            }
            if (notes_) (off ? notes_->leaf_removal_mg : notes_->fallen_mg) += weighed_only(cane, i);
            node_at(cane, i).lateral = Lateral::scar;
        }
        if (under_hedge == cane.node_count) return;
        const int count = draws_.between(Trait::lateral, cane.id.value, 3, static_cast<int>(c_.hedge_laterals_low),
                                         static_cast<int>(c_.hedge_laterals_high));
        for (int n = 0; n < count; ++n)
            add(cane, cane.node_count - 1 - static_cast<std::uint32_t>(n % 2), static_cast<std::uint32_t>(n / 2));
    }

private:
    Node& node_at(const Axis& axis, std::uint32_t i) { return next_.vine.nodes[axis.first_node + i]; }

    // Lateral `nth` of a node: straight, a little up and to the bud's side, cut where it would pass the hedge.
    void add(const Axis& cane, std::uint32_t index, std::uint32_t nth) {
        const Node bearer = node_at(cane, index);
        const std::uint32_t part = bearer.id.value;
        const double thick =
            std::min(draws_.uniform(Trait::lateral_size, part, 4 * nth, c_.lateral_thin_mm, c_.lateral_thick_mm),
                     c_.lateral_of_bearer * spurwright::in_mm(bearer.minor));
        double length = draws_.uniform(Trait::lateral_size, part, 4 * nth + 1, c_.lateral_low_mm, c_.lateral_high_mm);
        const Point3 rank = ranks_[cane.first_node + index - next_.old_nodes];
        const double way = bearer.rank * (nth % 2 == 0 ? 1.0 : -1.0);
        Point3 t{way * rank.x, c_.lateral_rise, way * rank.z};
        const double size = std::sqrt(t.x * t.x + t.y * t.y + t.z * t.z);
        t = {t.x / size, t.y / size, t.z / size};
        const double collar = draws_.uniform(Trait::lateral_size, part, 4 * nth + 2, 1.0, 2.0);
        const Point3 on = in_mm(bearer.place);
        const double out = spurwright::in_mm(mean_diameter(bearer)) / 2 + collar;
        const Point3 base{on.x + out * t.x, on.y + out * t.y, on.z + out * t.z};
        bool hedged = false;
        if (trellis_.hedged && base.y + length * t.y > trellis_.top + c_.hedge_spread_mm) {
            length = (trellis_.top + c_.hedge_spread_mm - base.y) / t.y;
            hedged = true;
        }
        const int joints = std::max(1, static_cast<int>(length / c_.lateral_joint_mm));
        if (length < c_.lateral_joint_mm / 3) {
            node_at(cane, index).lateral = nth == 0 ? Lateral::scar : node_at(cane, index).lateral;
            return;
        }
        node_at(cane, index).lateral = Lateral::axis;
        next_.add_axis(bearer.id, cane.side);
        write(base, t, collar, length, joints, thick, hedged, cane.side);
        if (notes_) notes_->grown_mg += last_mg();
    }

    double last_mg() const {
        const Axis& axis = next_.vine.axes.back();
        double mg = tip_mass_mg(next_.vine, axis);
        for (std::uint32_t i = 0; i < axis.node_count; ++i) mg += joint_mass_mg(next_.vine.nodes[axis.first_node + i]);
        return mg;
    }

    // Grown, weighed and gone again, leaving no name used: what a lateral weighed that winter does not find.
    double weighed_only(const Axis& cane, std::uint32_t index) {
        const std::uint32_t names = next_.highest_id;
        const std::size_t rows = next_.vine.axes.size();
        add(cane, index, 0);
        if (next_.vine.axes.size() == rows) return 0;
        const double mg = last_mg();
        next_.drop_last_axis();
        next_.highest_id = names;
        return mg;
    }

    void write(const Point3& base, const Point3& t, double collar, double length, int joints, double thick, bool hedged,
               Side side) {
        // The last tenth is wood beyond the last node.
        const Length joint = from_mm(0.9 * length / joints);
        const Point3 bud{-t.x, t.y, -t.z}; // buds of a lateral look back over it: one word for all
        for (int i = 0; i <= joints; ++i) {
            const double s = spurwright::in_mm(joint) * i;
            const double d = thick * (1.0 - (1.0 - c_.lateral_taper_to) * i / joints);
            const Length major = from_mm(1.03 * d), minor = from_mm(0.97 * d);
            next_.add_node(i == 0 ? from_mm(collar) : joint, major, minor,
                           place_of({base.x + s * t.x, base.y + s * t.y, base.z + s * t.z}),
                           {points_of(bud, side), true});
        }
        Axis& axis = next_.vine.axes.back();
        axis.ripe = from_mm(length);
        axis.end = hedged ? AxisEnd::hedge : AxisEnd::tip;
    }

    NextVine& next_;
    const std::vector<Point3>& ranks_;
    const Trellis& trellis_;
    const SeasonSettings& s_;
    const Constants& c_;
    const Draws& draws_;
    SeasonNotes* notes_;
};

} // namespace

void grow_laterals(NextVine& next, std::size_t first_cane, const std::vector<Point3>& ranks, const Trellis& trellis,
                   const SeasonSettings& settings, const Draws& draws, SeasonNotes* notes) {
    if (!draws.scatter()) return;
    const std::size_t canes = next.vine.axes.size();
    Laterals laterals(next, ranks, trellis, settings, draws, notes);
    for (std::size_t row = first_cane; row < canes; ++row) laterals.along(row);
}

} // namespace spurwright::growth
