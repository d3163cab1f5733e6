#include "sim/growth/training.h"

#include <algorithm>
#include <cmath>

#include "sim/core/check.h"
#include "sim/growth/canes.h"
#include "sim/growth/thickening.h"
#include "sim/growth/trellis.h"
#include "sim/growth/trunks.h"
#include "sim/vine/vine_builder.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr std::uint32_t first_stump_node = 3, last_stump_node = 4; // the two buds above the union
constexpr double stump_joint = 35, stem_joint = 70, first_summer_joint = 55;
constexpr std::array<double, 3> top_joints{28, 24, 18}; // the stem's last joints below the head, where it was pinched
constexpr int first_summer_nodes = 8, nodes_above_head = 4;
constexpr double head_spread_most = 2.5; // in sd
constexpr double fork_reach = 220;       // mm over which two trunks part
constexpr double second_stem_thinner = 0.92;
constexpr Length topping_cut{20'000};

double own_capacity(const Vine& v, const Constants& c, const Draws& draws) {
    const double per_m = v.vigour == Vigour::low    ? c.capacity_per_m_low
                         : v.vigour == Vigour::high ? c.capacity_per_m_high
                                                    : c.capacity_per_m_moderate;
    return per_m * in_m(v.spacing) * numeric::exp(c.row_own_sd * draws.normal(Trait::own_capacity, 0));
}

double head_height(const Vine& vine, const Site& site, const Constants& c, const Draws& draws) {
    const double z = numeric::clamp(draws.normal(Trait::head_below, 0), -head_spread_most, head_spread_most);
    return in_mm(fruiting_wire_height(vine)) - numeric::clamp(site.head_below_mm + c.head_below_sd_mm * z, 50, 300);
}

// The stem's middle line: a lean towards one side, and a kink where it was cut back. Of two stems each goes to its own
// side above the fork, and stands upright besides.
class Stem {
public:
    Stem(const Constants& c, const Draws& draws, double to_side = 0) : to_side_(to_side) {
        const double lean = numeric::clamp(std::fabs(c.trunk_lean_sd_deg * draws.normal(Trait::trunk_form, 0)), 0,
                                           c.trunk_lean_most_deg);
        const auto [sine, cosine] = numeric::sincos(numeric::radians(lean));
        slope_ = sine / cosine;
        const auto way = numeric::sincos(draws.uniform(Trait::trunk_form, 1, 0, 0, 2 * numeric::pi));
        x_ = way.cosine;
        z_ = way.sine;
        kink_ = draws.uniform(Trait::trunk_form, 2, 0, c.kink_low_mm, c.kink_high_mm);
        const auto kink_way = numeric::sincos(draws.uniform(Trait::trunk_form, 3, 0, 0, 2 * numeric::pi));
        kink_x_ = kink_way.cosine;
        kink_z_ = kink_way.sine;
    }

    Point3 at(double height) const {
        const double off = kink_ * std::max(0.0, 1.0 - std::fabs(height - kink_height) / kink_reach);
        const double u = numeric::clamp((height - fork_height) / fork_reach, 0.0, 1.0);
        const double aside = to_side_ * u * u * (3 - 2 * u);
        return {slope_ * height * x_ + off * kink_x_ + aside, height, slope_ * height * z_ + off * kink_z_};
    }

private:
    static constexpr double kink_height = 200, kink_reach = 150;
    static constexpr double fork_height = 145; // of the lower bud above the union
    double to_side_ = 0;
    double slope_ = 0, x_ = 1, z_ = 0, kink_ = 0, kink_x_ = 1, kink_z_ = 0;
};

Length straight(const Point3& a, const Point3& b) {
    const double x = a.x - b.x, y = a.y - b.y, z = a.z - b.z;
    return {static_cast<std::int32_t>(std::ceil(1000.0 * std::sqrt(x * x + y * y + z * z)))};
}

// Half the distance of two trunks at the head, towards -x for the first: which trunk serves which side is drawn.
double first_aside(const Site& site, const Constants& c, const Draws& draws) {
    if (site.trunks < 2) return 0;
    const double half = draws.uniform(Trait::second_trunk, 0, 0, c.trunks_apart_low_mm, c.trunks_apart_high_mm) / 2;
    return draws.chance(Trait::second_trunk, 0, 1, 0.5) ? half : -half;
}

// Heights of the stem's nodes from above the stump to the head and a little beyond, where it grew before topping.
std::vector<double> stem_heights(double from, double head, const Draws& draws) {
    double below_head = 0;
    for (const double joint : top_joints) below_head += joint;
    const double rise = std::max(10.0, head - below_head - from);
    const int joints = std::max(1, rounded(rise / stem_joint));
    std::vector<double> weights;
    double sum = 0;
    for (int i = 0; i < joints; ++i) {
        weights.push_back(draws.uniform(Trait::trunk_form, 8, static_cast<std::uint32_t>(i), 0.88, 1.12));
        sum += weights.back();
    }
    std::vector<double> heights;
    heights.reserve(weights.size() + top_joints.size());
    double at = from;
    for (const double weight : weights) heights.push_back(at += rise * weight / sum);
    for (const double joint : top_joints) heights.push_back(at += joint);
    for (int i = 0; i < nodes_above_head; ++i) heights.push_back(at += stem_joint);
    return heights;
}

// The second stem, from the lower bud above the union, to the height of the first: its joints are those of the first
// one's above it. The crown points are the two trunks' own.
void draw_up_second(NextVine& next, const Stem& stem, Length top, double first_aside_mm) {
    Vine& v = next.vine;
    const Axis first = v.axes[0];
    const Node bearer = v.nodes[first.first_node + first_stump_node];  // a copy: nodes are added below
    const double out = (first_aside_mm < 0 ? 0.45 : -0.45) * in_mm(bearer.major);
    Axis axis;
    axis.id = second_trunk;
    axis.born = v.winter;
    axis.first_node = static_cast<std::uint32_t>(v.nodes.size());
    v.axes.push_back(axis);
    next.highest_id = std::max(next.highest_id, second_trunk.value);
    Point3 below = in_mm(bearer.place);
    below.x += out;
    const auto diameter = [&](double height) {
        return second_stem_thinner * (11.0 - 3.5 * (height - in_mm(bearer.place.y)) / in_mm(top));
    };
    const auto add = [&](Length joint, const Point3& at) {
        const double d = diameter(at.y);
        next.add_node(joint, from_mm(d), from_mm(0.94 * d), place_of(at), {});
        below = at;
    };
    add({}, below);
    for (std::uint32_t i = first_stump_node + 2; i < first.node_count; ++i) {
        Point3 here = stem.at(in_mm(v.nodes[first.first_node + i].place.y));
        if (here.y < below.y + 20) continue;
        if (v.axes.back().node_count == 1) here.x += out * 0.5;
        add(straight(here, below), here);
    }
    Axis& second = v.axes.back();
    second.ripe = along(v, second, second.node_count - 1) + topping_cut;
    const NodeId one = v.head, two = v.nodes.back().id;
    v.crown_left = first_aside_mm < 0 ? one : two;
    v.crown_right = first_aside_mm < 0 ? two : one;
}

// The top buds of a trunk, so many of them, and whose side each is.
void push_top(Spring& spring, const Vine& v, const Axis& trunk, std::uint32_t count, Side top, bool alternating,
              const Constants& c, const Draws& draws) {
    const std::uint32_t head = trunk.node_count - 1;
    for (std::uint32_t i = head + 1 - count; i <= head; ++i) {
        Push push;
        push.on = node_id(trunk.id, i);
        push.side = !alternating || (head - i) % 2 == 0 ? top : other(top);
        const std::uint64_t bits = draws.bits(Trait::azimuth, push.on.value, static_cast<std::uint32_t>(v.winter));
        push.towards_front = bits & 1;
        push.azimuth_deg =
            std::min(60.0, std::fabs(c.azimuth_node_sd_deg *
                                     draws.normal(Trait::azimuth, push.on.value, static_cast<std::uint32_t>(v.winter))));
        push.parent_area = numeric::pi / 4 * in_mm(v.find(push.on)->major) * in_mm(v.find(push.on)->minor);
        spring.pushes.push_back(push);
    }
}

} // namespace

Vine planted(const Site& site) {
    const Constants c;
    const Draws draws(site.seed);
    const Stem stem(c, draws);
    VineBuilder builder;
    Vine& v = builder.vine;
    v.recipe = newest_recipe;
    v.seed = site.seed;
    v.system = site.system;
    v.variety = site.variety;
    v.winter = 1;
    v.spacing = from_mm(1000 * site.spacing_m);
    v.row_spacing = from_mm(1000 * site.rows_m);
    v.vigour = site.vigour;
    v.frost = site.frost;
    v.capacity = rounded(1000 * c.young_share_3 * own_capacity(v, c, draws) * site.capacity_share);
    v.wires = wires_of(site);
    v.neighbours = neighbours_of(site);
    std::vector<double> heights{0, c.graft_height_mm / 2, c.graft_height_mm + 10};
    for (int i = 0; i < 2; ++i) heights.push_back(heights.back() + stump_joint);
    for (int i = 0; i < first_summer_nodes; ++i) heights.push_back(heights.back() + first_summer_joint);
    Axis& trunk = builder.add_axis(first_trunk, {}, 1);
    trunk.ripe = from_mm(heights.back() + first_summer_joint);
    for (std::size_t i = 0; i < heights.size(); ++i) {
        const double d = i < first_stump_node ? 11.0 : 8.0 - 0.3 * static_cast<double>(i - first_stump_node);
        const Length joint = i == 0 ? Length{} : straight(stem.at(heights[i]), stem.at(heights[i - 1]));
        builder.add_node(joint, from_mm(d), from_mm(0.94 * d), place_of(stem.at(heights[i])));
        if (i >= first_stump_node) builder.add_bud(BudKind::node);
    }
    v.head = node_id(first_trunk, static_cast<std::uint32_t>(heights.size()) - 1);
    if (site.graft) v.graft = node_id(first_trunk, 2);
    auto built = builder.build();
    SPURWRIGHT_CHECK(built.has_value(), ==, true);
    return std::move(*built);
}

Plan back_to_two_buds(const Vine&) {
    return {{Cut{node_id(first_trunk, last_stump_node), topping_cut, Tool::shears, {}}}};
}

Vine drawn_up(const Vine& cut, const Site& site) {
    const Constants c;
    const Draws draws(site.seed);
    const double aside = first_aside(site, c, draws);
    const Stem stem(c, draws, aside);
    NextVine next = carry_over(cut);
    add_rings(next, c);
    Point3 below = in_mm(next.vine.nodes.back().place);
    const std::vector<double> heights = stem_heights(below.y, head_height(cut, site, c, draws), draws);
    for (std::size_t i = 0; i < heights.size(); ++i) {
        const Point3 here = stem.at(heights[i]);
        const double d = 11.0 - 3.5 * static_cast<double>(i) / static_cast<double>(heights.size());
        next.add_node(straight(here, below), from_mm(d), from_mm(0.94 * d), place_of(here), {});
        below = here;
    }
    Vine& v = next.vine;
    v.head = v.crown_left = v.crown_right = v.nodes.back().id;
    v.axes[0].end = AxisEnd::tip;
    v.axes[0].ripe = along(v, v.axes[0], v.axes[0].node_count - 1) + topping_cut;
    if (site.trunks == 2) draw_up_second(next, Stem(c, draws, -aside), v.nodes.back().place.y, aside);
    next.finish(0);
    return std::move(next.vine);
}

Plan topped_at_head_height(const Vine& drawn_up, const Site&) {
    Plan plan;
    for (const Axis& trunk : drawn_up.axes)
        plan.edits.push_back(
            Cut{node_id(trunk.id, trunk.node_count - 1 - nodes_above_head), topping_cut, Tool::shears, {}});
    return plan;
}

Vine crowned(const Vine& cut, const SeasonSettings& settings) {
    const Draws draws(cut.seed, settings.scatter);
    NextVine next = carry_over(cut);
    Vine& v = next.vine;
    add_rings(next, settings.constants);
    const auto sleep = [&](const Axis& trunk, std::uint32_t from) {
        const std::uint32_t head = trunk.node_count - 1;
        for (std::uint32_t i = from; i <= head; ++i) next.latent[trunk.first_node + i] = i + 4 > head ? 2 : 1;
    };
    Spring spring;
    if (fork_of(v)) {
        sleep(v.axes[0], last_stump_node);
        sleep(v.axes[1], 2);
        for (const Side side : both_sides)
            push_top(spring, v, *v.find(axis_of(v.crown(side))), 2, side, false, settings.constants, draws);
        std::stable_sort(spring.pushes.begin(), spring.pushes.end(),
                         [](const Push& a, const Push& b) { return a.on < b.on; });
    } else {
        const std::uint32_t head = index_of(v.head);
        const Side top = v.find(v.head)->rank > 0 ? Side::right : Side::left;
        (top == Side::right ? v.crown_right : v.crown_left) = v.head;
        (top == Side::right ? v.crown_left : v.crown_right) = node_id(first_trunk, head - 1);
        sleep(v.axes[0], last_stump_node);
        push_top(spring, v, v.axes[0], 4, top, true, settings.constants, draws);
    }
    spring.shoots = static_cast<double>(spring.pushes.size());
    grow_canes(next, spring, ShootLaw(v, settings, v.capacity / 1000.0, spring.shoots), settings, draws);
    hold_area_rule(next, settings.constants);
    next.finish(static_cast<int>(settings.constants.base_buds_per_axis));
    return std::move(next.vine);
}

} // namespace spurwright::growth
