#include "sim/growth/canes.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/laterals.h"
#include "sim/growth/rhythm.h"
#include "sim/pruning/prunings.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

class Canes {
public:
    Canes(NextVine& next, const ShootLaw& law, const SeasonSettings& settings, const Draws& draws, SeasonNotes* notes)
        : next_(next), law_(law), s_(settings), draws_(draws), notes_(notes), trellis_(next.vine, settings) {}

    void grow(const Spring& spring) {
        const std::size_t first = next_.vine.axes.size();
        for (const Push& push : spring.pushes) grow_one(push);
        grow_laterals(next_, first, ranks_, trellis_, s_, draws_, notes_);
    }

private:
    void grow_one(const Push& push) {
        const AxisId id = next_.next_axis_id();
        grow_shoot(shoot_, id, push, law_, s_, draws_);
        const double collar =
            draws_.uniform(Trait::collar, id.value, 0, s_.constants.collar_low_mm, s_.constants.collar_high_mm);
        stand_shoot(course_, next_.vine, id, push, shoot_, collar, trellis_, s_, draws_);
        next_.add_axis(push.on, push.side);
        write(collar, push);
        if (notes_) weigh(collar);
        if (next_.vine.axes.back().node_count < 2) {
            next_.drop_last_axis();
            ranks_.resize(next_.buds.size());
            return;
        }
        if (!push.from_node_bud()) {
            std::uint8_t& latent = next_.latent_at(push.on);
            if (latent > 0) --latent; // the bud that grew
        }
        dress(next_, push, trellis_, s_, draws_);
        Axis& axis = next_.vine.axes.back();
        const Axis& bearer = *next_.vine.find(axis_of(axis.parent));
        if (is_trunk(bearer)) axis.side = side_by_place(next_.vine, axis);
    }

    // Rows of the wood that stands in winter: to the ripe end or the hedge's cut; a poorly ripened cane keeps its grown
    // nodes, their buds dead.
    void write(double collar, const Push& push) {
        const double wood = shoot_.poorly_ripe ? course_.wood_mm : std::min(course_.wood_mm, shoot_.ripe_mm);
        const double stretch = std::sqrt(shoot_.flattening);
        const auto add = [&](std::size_t i, double joint, double diameter, bool alive) {
            const Point3& rank = course_.rank[i];
            const double way = i % 2 == 1 ? 1.0 : -1.0;
            const Length major = from_mm(diameter * stretch), minor = from_mm(diameter / stretch);
            next_.add_node(from_mm(joint), major, minor, place_of(course_.at[i]),
                           {points_of({way * rank.x, way * rank.y, way * rank.z}, push.side), alive});
            ranks_.push_back(rank);
        };
        add(0, collar, shoot_.base_mm, true);
        double at = 0;
        for (std::size_t i = 1; i < course_.at.size(); ++i) {
            const double joint = shoot_.joints_mm[i - 1];
            if (at + joint > wood) break;
            const double diameter = shoot_.base_mm * law_.taper_at((at + joint / 2) / shoot_.length_mm);
            at += joint;
            add(i, joint, diameter, at <= shoot_.ripe_mm);
        }
        Axis& axis = next_.vine.axes.back();
        axis.grew = shoot_.grew;
        axis.ripe = from_mm(std::min(course_.wood_mm, shoot_.ripe_mm));
        axis.end = course_.hedged && course_.wood_mm <= shoot_.ripe_mm ? AxisEnd::hedge : AxisEnd::tip;
        if (shoot_.poorly_ripe && course_.hedged) axis.end = AxisEnd::hedge;
    }

    Node row_of_joint(double joint, double diameter) const {
        const double stretch = std::sqrt(shoot_.flattening);
        Node node;
        node.joint = from_mm(joint);
        node.major = from_mm(diameter * stretch);
        node.minor = from_mm(diameter / stretch);
        return node;
    }

    // What this shoot grew, and what is off it by winter: beyond the hedge's cut, and the unripe rest.
    void weigh(double collar) {
        const Axis& axis = next_.vine.axes.back();
        const bool stands = axis.node_count >= 2;
        double grown = joint_mass_mg(row_of_joint(collar, shoot_.base_mm)), off = stands ? 0.0 : grown, hedged = off;
        double at = 0;
        for (std::size_t i = 0; i < shoot_.joints_mm.size(); ++i) {
            const double joint = shoot_.joints_mm[i];
            const double mg = joint_mass_mg(
                row_of_joint(joint, shoot_.base_mm * law_.taper_at((at + joint / 2) / shoot_.length_mm)));
            at += joint;
            grown += mg;
            if (stands && i + 1 < axis.node_count) continue;
            off += mg;
            if (!stands)
                hedged += mg;
            else if (course_.hedged)
                hedged += mg * numeric::clamp((at - course_.wood_mm) / joint, 0.0, 1.0);
        }
        if (stands) off -= tip_mass_mg(next_.vine, axis);
        hedged = std::min(hedged, off);
        notes_->grown_mg += grown;
        notes_->hedged_mg += hedged;
        notes_->fallen_mg += off - hedged;
    }

    NextVine& next_;
    const ShootLaw& law_;
    const SeasonSettings& s_;
    const Draws& draws_;
    SeasonNotes* notes_;
    Trellis trellis_;
    Shoot shoot_;
    Course course_;
    std::vector<Point3> ranks_; // of every new node
};

} // namespace

void grow_canes(NextVine& next, const Spring& spring, const ShootLaw& law, const SeasonSettings& settings,
                const Draws& draws, SeasonNotes* notes) {
    Canes(next, law, settings, draws, notes).grow(spring);
}

} // namespace spurwright::growth
