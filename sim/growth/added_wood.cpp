#include "sim/growth/added_wood.h"

#include <algorithm>
#include <cmath>

#include "sim/core/check.h"
#include "sim/growth/laws.h"
#include "sim/growth/posture.h"
#include "sim/growth/rhythm.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

// Our choice: how much joints differ, and how the wood is finished.
constexpr double joint_spread = 0.08, added_collar_mm = 4, grown_mm = 1'900, cut_stub_mm = 20;
constexpr int measured_buds = 12, bare_nodes = 2, bunch_stems = 2, most_fits = 6;
constexpr Length finger_collar{4'000}, finger_stub{12'000};

AxisId next_id(const Vine& vine) { return {vine.axes.back().id.value + 1}; }

void add_bud(Vine& vine, NodeId node, std::uint32_t slot, BudKind kind, Points points) {
    Bud bud;
    bud.id = bud_id(node, slot);
    bud.kind = kind;
    bud.points = points;
    vine.buds.push_back(bud);
}

Axis& add_axis(Vine& vine, NodeId on, Side side, int born) {
    Axis axis;
    axis.id = next_id(vine);
    axis.parent = on;
    axis.born = born;
    axis.order = vine.find(axis_of(on))->order + 1;
    axis.side = side;
    vine.axes.push_back(axis);
    return vine.axes.back();
}

void widen_to(Vine& vine, NodeId on, const Node& borne) {
    Node& node = vine.nodes[static_cast<std::size_t>(vine.find(on) - vine.nodes.data())];
    node.major = std::max(node.major, borne.major);
    node.minor = std::max(node.minor, borne.minor);
}

void add_cut_face(Vine& vine, const Axis& axis, const Node& last, Length beyond) {
    Wound wound;
    wound.id = {vine.wounds.empty() ? 1 : vine.wounds.back().id.value + 1};
    wound.axis = axis.id;
    wound.node = last.id;
    wound.beyond = beyond;
    wound.major = last.major;
    wound.minor = last.minor;
    wound.winter = std::max(1, vine.winter - 1);
    vine.wounds.push_back(wound);
}

class WoodWriter {
public:
    WoodWriter(Vine& vine, const AddedWood& wood) : vine_(vine), wood_(wood), id_(next_id(vine)), draws_(vine.seed) {
        settings_.constants.elbow_deg = wood.elbow_deg;
        settings_.constants.lean_deg = wood.lean_deg;
        push_.on = wood.on;
        push_.side = wood.side;
        push_.kind = wood.from_old_wood ? PushKind::head : PushKind::count;
        push_.azimuth_deg = wood.azimuth_deg;
        push_.towards_front = wood.towards_front.value_or(draws_.bits(Trait::azimuth, id_.value) & 1);
    }

    AxisId add() {
        stand();
        Axis& axis = add_axis(vine_, wood_.on, wood_.side, wood_.born);
        axis.grew = wood_.grew;
        const std::size_t first = vine_.nodes.size();
        for (std::size_t i = 0; i < standing_; ++i) add_node(i);
        const bool cut = static_cast<int>(standing_) > wood_.most_joints;
        finish(axis, vine_.nodes[first + standing_ - 1], cut);
        link_rows(vine_);
        dress(axis);
        widen_to(vine_, wood_.on, vine_.nodes[first]);
        return id_;
    }

private:
    // The form of every shoot: short joints at the base, shorter ones again towards the tip; a little unlike each other.
    void fill_joints() {
        const Constants& c = settings_.constants;
        const int n = static_cast<int>(grown_mm / wood_.joint_mm) + 1;
        shoot_.joints_mm.clear();
        for (int i = 0; i < n; ++i) {
            const double reach = numeric::exp(-(i + 0.5) / c.internode_base_rate);
            const double noise = draws_.uniform(Trait::joint, node_id(id_, static_cast<std::uint32_t>(i) + 1).value, 0,
                                                1 - joint_spread, 1 + joint_spread);
            shoot_.joints_mm.push_back(wood_.joint_mm * joint_weight(c, i, n, reach) * noise);
        }
    }

    // Joints are sized so that their mean over the first count buds that stand is the one asked: how many stand below
    // the hedge depends on them in turn.
    void stand() {
        fill_joints();
        const Draws even(vine_.seed, false);
        const Trellis trellis(vine_, settings_);
        for (int tries = 0; tries < most_fits; ++tries) {
            shoot_.length_mm = 0;
            for (const double joint : shoot_.joints_mm) shoot_.length_mm += joint;
            stand_shoot(course_, vine_, id_, push_, shoot_, added_collar_mm, trellis, settings_, even);
            standing_ = standing();
            const std::size_t last = std::min<std::size_t>(standing_ - 1, measured_buds);
            double sum = 0;
            for (std::size_t i = 2; i <= last; ++i) sum += shoot_.joints_mm[i - 1];
            const double by = last < 2 ? 1.0 : wood_.joint_mm * static_cast<double>(last - 1) / sum;
            if (by > 0.9999 && by < 1.0001) break;
            for (double& joint : shoot_.joints_mm) joint *= by;
        }
        const double second = taper(2), third = standing_ > 3 ? taper(3) : second;
        shoot_.base_mm = wood_.diameter_mm * 2 / (second + third);
    }

    // Nodes with the crown that stand below the hedge, or as many as are asked for.
    std::size_t standing() const {
        double at = 0;
        std::size_t count = 1;
        for (; count < course_.at.size() && static_cast<int>(count) <= wood_.most_joints; ++count) {
            at += shoot_.joints_mm[count - 1];
            if (at > course_.wood_mm) break;
        }
        return count;
    }

    // Thickness of joint `i` against the base.
    double taper(std::size_t i) const {
        double at = 0;
        for (std::size_t j = 1; j < i; ++j) at += shoot_.joints_mm[j - 1];
        const double middle = i == 0 ? 0.0 : at + shoot_.joints_mm[i - 1] / 2;
        return diameter_at(settings_.constants, 1.0, numeric::clamp(middle / shoot_.length_mm, 0.0, 1.0));
    }

    void add_node(std::size_t i) {
        const double d = shoot_.base_mm * taper(i), ratio = wood_.axis_ratio;
        Node node;
        node.id = node_id(id_, static_cast<std::uint32_t>(i));
        node.joint = from_mm(i == 0 ? added_collar_mm : shoot_.joints_mm[i - 1]);
        node.major = from_mm(2 * d * ratio / (1 + ratio));
        node.minor = from_mm(2 * d / (1 + ratio));
        node.place = place_of(course_.at[i]);
        node.rank = i % 2 == 1 ? 1 : -1;
        vine_.nodes.push_back(node);
        const Point3& rank = course_.rank[i];
        const double way = node.rank;
        if (wood_.born < vine_.winter) {
            for (std::uint32_t slot = 0; i == 0 && slot < 2; ++slot) add_bud(vine_, node.id, slot, BudKind::latent, Points::up);
        } else if (i == 0) {
            add_bud(vine_, node.id, 0, BudKind::crown, Points::outward);
            add_bud(vine_, node.id, 1, BudKind::crown, Points::inward);
        } else {
            add_bud(vine_, node.id, 0, BudKind::node, points_of({way * rank.x, way * rank.y, way * rank.z}, wood_.side));
        }
    }

    void finish(Axis& axis, const Node& last, bool cut) {
        double along_mm = 0;
        for (std::size_t i = 1; i < standing_; ++i) along_mm += shoot_.joints_mm[i - 1];
        axis.end = cut ? AxisEnd::cut : course_.hedged ? AxisEnd::hedge : AxisEnd::tip;
        axis.ripe = from_mm(cut ? along_mm + cut_stub_mm : std::max(along_mm, std::min(course_.wood_mm, shoot_.length_mm)));
        if (cut) add_cut_face(vine_, axis, last, from_mm(cut_stub_mm));
    }

    // What a shoot bears besides buds; of older wood it has dropped.
    void dress(const Axis& axis) {
        if (wood_.born < vine_.winter) return;
        const Constants& c = settings_.constants;
        const double zone = in_mm(fruiting_wire_height(vine_)) + c.tendril_zone_mm;
        int left = bunch_stems;
        for (std::uint32_t i = 1; i < axis.node_count; ++i) {
            Node& node = vine_.nodes[axis.first_node + i];
            node.tendril_class = tendril_class(static_cast<int>(i), bare_nodes);
            if (node.tendril_class == 0) continue;
            const double u = draws_.share(Trait::tendril_state, node.id.value);
            if (left > 0) {
                --left;
                node.bunch = Bunch::stub;
            } else if (in_mm(node.place.y) < zone) {
                node.tendril = u < c.tendril_broken ? Tendril::scar : Tendril::loose;
            } else {
                node.tendril = u < c.tendril_grip ? Tendril::gripping : Tendril::loose;
            }
        }
    }

    static double in_mm(Length l) { return spurwright::in_mm(l); }

    Vine& vine_;
    const AddedWood& wood_;
    AxisId id_;
    Draws draws_;
    SeasonSettings settings_;
    Push push_;
    Shoot shoot_;
    Course course_;
    std::size_t standing_ = 0;
};

} // namespace

AxisId add_wood(Vine& vine, const AddedWood& wood) {
    SPURWRIGHT_CHECK(vine.find(wood.on) != nullptr, ==, true);
    return WoodWriter(vine, wood).add();
}

AxisId add_finger(Vine& vine, NodeId on, Side side, int born, const std::vector<Place>& places, Length foot, Length top) {
    SPURWRIGHT_CHECK(places.size(), >, 1u);
    Axis& axis = add_axis(vine, on, side, born);
    const AxisId id = axis.id;
    Length along;
    for (std::size_t i = 0; i < places.size(); ++i) {
        Node node;
        node.id = node_id(id, static_cast<std::uint32_t>(i));
        node.joint = finger_collar;
        if (i > 0) {
            const double x = places[i].x.count - places[i - 1].x.count, y = places[i].y.count - places[i - 1].y.count,
                         z = places[i].z.count - places[i - 1].z.count;
            node.joint = {static_cast<std::int32_t>(std::sqrt(x * x + y * y + z * z)) + 1};
            along += node.joint;
        }
        const auto share = static_cast<double>(i) / static_cast<double>(places.size() - 1);
        node.major = node.minor = Length{foot.count + rounded(share * (top.count - foot.count))};
        node.place = places[i];
        node.rank = i % 2 == 1 ? 1 : -1;
        vine.nodes.push_back(node);
        add_bud(vine, node.id, 0, BudKind::latent, Points::up);
    }
    axis.end = AxisEnd::cut;
    axis.ripe = along + finger_stub;
    const Node last = vine.nodes.back();
    add_cut_face(vine, axis, last, finger_stub);
    link_rows(vine);
    return id;
}

void take_off(Vine& vine, const std::vector<AxisId>& axes) {
    std::vector<bool> off(vine.axes.size(), false);
    for (std::size_t row = 0; row < vine.axes.size(); ++row) {
        const Axis& axis = vine.axes[row];
        const Axis* parent = axis.parent ? vine.find(axis_of(axis.parent)) : nullptr;
        off[row] = std::find(axes.begin(), axes.end(), axis.id) != axes.end() || (parent && off[row_of(vine, *parent)]);
    }
    const auto gone = [&](AxisId id) { const Axis* axis = vine.find(id); return axis && off[row_of(vine, *axis)]; };
    std::erase_if(vine.buds, [&](const Bud& bud) { return gone(axis_of(node_of(bud.id))); });
    std::erase_if(vine.wounds, [&](const Wound& wound) { return gone(axis_of(wound.node)); });
    std::erase_if(vine.laid, [&](const Laid& laid) { return gone(laid.axis); });
    std::erase_if(vine.ties, [&](const Tie& tie) { return gone(axis_of(tie.node)); });
    std::erase_if(vine.brush, [&](const Brush& brush) { return gone(axis_of(brush.node)); });
    std::vector<Node> nodes;
    for (const Node& node : vine.nodes)
        if (!gone(axis_of(node.id))) nodes.push_back(node);
    std::vector<Axis> kept;
    for (std::size_t row = 0; row < vine.axes.size(); ++row)
        if (!off[row]) kept.push_back(vine.axes[row]);
    vine.nodes = std::move(nodes);
    vine.axes = std::move(kept);
    link_rows(vine);
}

} // namespace spurwright::growth
