// A neighbour's cane over this vine.
#include <algorithm>
#include <cmath>

#include "sim/growth/added_wood.h"
#include "sim/growth/laws.h"
#include "sim/growth/posture.h"
#include "sim/growth/rhythm.h"
#include "sim/growth/season.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

// Our choice, as of any added wood.
constexpr double over_ratio = 1.10, over_grown_mm = 1'900, over_spread = 0.08, over_aside_mm = 30;
constexpr double over_zigzag_deg = 4, over_bows_deg = 18; // it hangs in the tendrils' hold, lower towards its tip
constexpr int over_bare_nodes = 2;

} // namespace

AxisId add_overhanging(Vine& vine, const OverhangingWood& wood) {
    const SeasonSettings settings;
    const Constants& c = settings.constants;
    const Trellis trellis(vine, settings);
    const AxisId id{vine.axes.back().id.value + 1};
    const Draws draws(vine.seed);
    const int n = static_cast<int>(over_grown_mm / wood.joint_mm) + 1;
    Axis axis;
    axis.id = id;
    axis.born = vine.winter;
    axis.end = AxisEnd::tip;
    double gone = 0;
    Point3 at = in_mm(wood.foot);
    for (int i = 0; i <= n; ++i) {
        double joint = 0;
        if (i > 0) {
            joint = wood.joint_mm * joint_weight(c, i - 1, n, numeric::exp(-(i - 0.5) / c.internode_base_rate)) *
                    draws.uniform(Trait::joint, node_id(id, static_cast<std::uint32_t>(i)).value, 0, 1 - over_spread, 1 + over_spread);
            const double rest = numeric::exp(-(gone + joint / 2) / c.elbow_length_mm);
            const double lean = wood.lean_deg - (wood.lean_deg - wood.elbow_deg) * rest - over_bows_deg * gone / over_grown_mm;
            const auto [sine, cosine] = numeric::sincos(numeric::radians(lean + (i % 2 == 0 ? over_zigzag_deg : -over_zigzag_deg)));
            const double aside = numeric::clamp((over_aside_mm - at.z) / c.steer_mm, -0.3, 0.3);
            const double way = std::sqrt(std::max(0.0, 1 - aside * aside));
            const Point3 next{at.x - sign_of(wood.side) * way * cosine * joint, at.y + way * sine * joint, at.z + aside * joint};
            if (next.y > trellis.top) {
                axis.end = AxisEnd::hedge;
                break;
            }
            at = next;
        }
        const double d = diameter_at(c, wood.diameter_mm, numeric::clamp((gone + joint / 2) / over_grown_mm, 0.0, 1.0)) /
                         diameter_at(c, 1.0, 2 * wood.joint_mm / over_grown_mm);
        gone += joint;
        Node node;
        node.id = node_id(id, static_cast<std::uint32_t>(i));
        node.joint = from_mm(joint);
        node.major = from_mm(2 * d * over_ratio / (1 + over_ratio));
        node.minor = from_mm(2 * d / (1 + over_ratio));
        node.place = place_of(at);
        node.rank = i % 2 == 1 ? 1 : -1;
        if (i > 0) node.tendril_class = tendril_class(i, over_bare_nodes);
        if (node.tendril_class != 0) node.tendril = at.y > trellis.fruiting + c.tendril_zone_mm ? Tendril::gripping : Tendril::scar;
        vine.nodes.push_back(node);
        Bud bud;
        bud.id = bud_id(node.id, 0);
        bud.kind = i == 0 ? BudKind::crown : BudKind::node;
        bud.points = i == 0 ? Points::inward : i % 2 == 1 ? Points::up : Points::down;
        vine.buds.push_back(bud);
    }
    axis.ripe = from_mm(gone);
    vine.axes.push_back(axis);
    link_rows(vine);
    return id;
}

} // namespace spurwright::growth
