#include "sim/growth/non_count.h"

#include <algorithm>
#include <cmath>

#include "sim/core/numeric.h"
#include "sim/growth/trunks.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

class NonCount {
public:
    NonCount(std::vector<Push>& pushes, const NextVine& next, const std::vector<const Axis*>& rings,
             const SeasonSettings& settings, const PushDraws& draws, SeasonNotes& notes)
        : pushes_(pushes), next_(next), rings_(rings), c_(settings.constants), draws_(draws), notes_(notes) {}

    void base_and_head(double mean) {
        const auto winter = draws_.season();
        const double base = std::floor(mean);
        const int pushed =
            static_cast<int>(base) + (draws_.draws().scatter()
                                          ? draws_.draws().chance(Trait::non_count_round, winter, 0, mean - base)
                                          : mean - base >= 0.5);
        notes_.non_count_pushed = pushed;
        const std::vector<HeadPlace> left = head_places(Side::left), right = head_places(Side::right);
        for (std::uint32_t n = 0; n < static_cast<std::uint32_t>(pushed); ++n) {
            const auto share = [&](std::uint32_t which) {
                return draws_.draws().share(Trait::non_count_place, winter, n * 4 + which);
            };
            const auto pick = [&](std::size_t count) {
                return std::min(count - 1, static_cast<std::size_t>(share(1) * static_cast<double>(count)));
            };
            if (!rings_.empty() && share(0) < c_.noncount_place_crown) {
                const Axis& ring = *rings_[pick(rings_.size())];
                add_non_count(node_id(ring.id, 0), PushKind::base, ring.side, c_.azimuth_base_sd_deg);
                continue;
            }
            const Side side = share(2) < 0.5 ? Side::left : Side::right;
            const std::vector<HeadPlace>& places = side == Side::left ? left : right;
            std::size_t at = pick(places.size());
            if (share(3) < c_.head_shoot_on_top)
                for (std::size_t i = 0; i < places.size(); ++i)
                    if (places[i].height > places[at].height) at = i;
            add_non_count(places[at].node, PushKind::head, side, c_.azimuth_head_sd_deg);
        }
    }

    void suckers() {
        if (!draws_.draws().scatter()) return;
        const Vine& v = next_.vine;
        std::vector<NodeId> scion, rootstock;
        for (std::size_t row = 0; row < next_.old_axes && is_trunk(v.axes[row]); ++row) {
            const Axis& trunk = v.axes[row];
            Length to_head;
            for (std::uint32_t i = trunk.node_count; i-- > 1;) {
                const Node& node = v.nodes[trunk.first_node + i];
                if (v.graft && node.id < v.graft)
                    rootstock.push_back(node.id);
                else if (to_head > CountingHabits{}.sucker_zone && in_mm(node.place.y) >= 100 &&
                         in_mm(node.place.y) <= 500)
                    scion.push_back(node.id);
                to_head += node.joint;
            }
        }
        const auto grow = [&](const std::vector<NodeId>& places, int count, std::uint32_t which) {
            for (int n = 0; n < count && !places.empty(); ++n) {
                const std::uint32_t at = which + static_cast<std::uint32_t>(n);
                const double share = draws_.draws().share(Trait::sucker, draws_.season(), at);
                const NodeId node = places[std::min(
                    places.size() - 1, static_cast<std::size_t>(share * static_cast<double>(places.size())))];
                const Side side =
                    draws_.draws().chance(Trait::sucker, draws_.season(), at + 8, 0.5) ? Side::left : Side::right;
                add_non_count(node, PushKind::sucker, side, c_.azimuth_head_sd_deg);
            }
        };
        grow(scion, poisson(c_.suckers_scion_mean, 0, 2), 16);
        grow(rootstock, poisson(c_.suckers_rootstock_mean, 1, 1), 32);
    }

private:
    struct HeadPlace {
        NodeId node;
        Length distance;
        Length height;
    };

    // Latent buds near a crown point, and of a cordon's arms and old spurs; one entry a bud.
    std::vector<HeadPlace> head_places(Side side) const {
        std::vector<HeadPlace> places;
        const Vine& v = next_.vine;
        for (std::size_t row = 0; row < next_.old_axes; ++row) {
            const Axis& axis = v.axes[row];
            if (axis.born == next_.vine.winter - 1 || axis.state == AxisState::dead) continue;
            if (axis.side != Side::none && axis.side != side) continue;
            if (is_trunk(axis) && !serves(v, axis, side)) continue;
            for (std::uint32_t i = 0; i < axis.node_count; ++i) {
                const std::size_t at = axis.first_node + i;
                if (next_.latent[at] == 0) continue;
                const Length distance = distance_to_head(v, v.nodes[at].id, side);
                const bool on_cordon = v.system == System::cordon && !is_trunk(axis);
                if (!on_cordon && in_mm(distance) > c_.head_reach_mm) continue;
                for (int bud = 0; bud < next_.latent[at]; ++bud)
                    places.push_back({v.nodes[at].id, distance, v.nodes[at].place.y});
            }
        }
        if (places.empty()) places.push_back({v.crown(side), {}, v.find(v.crown(side))->place.y});
        return places;
    }

    void add_non_count(NodeId on, PushKind kind, Side side, double sd) {
        Push push;
        push.on = on;
        push.kind = kind;
        push.side = side;
        push.nth = 2;
        for (const Push& other : pushes_)
            if (other.on == on && other.nth >= push.nth) push.nth = other.nth + 1;
        const Node& node = *next_.vine.find(on);
        push.parent_area = numeric::pi / 4 * in_mm(node.major) * in_mm(node.minor);
        turn(push, next_.vine, sd, c_, draws_);
        pushes_.push_back(push);
    }

    int poisson(double mean, std::uint32_t which, int most) const {
        const double u = draws_.draws().share(Trait::sucker, draws_.season(), which);
        double p = numeric::exp(-mean), sum = p;
        int k = 0;
        while (k < most && u > sum) {
            ++k;
            p *= mean / k;
            sum += p;
        }
        return k;
    }

    std::vector<Push>& pushes_;
    const NextVine& next_;
    const std::vector<const Axis*>& rings_;
    const Constants& c_;
    const PushDraws& draws_;
    SeasonNotes& notes_;
};

} // namespace

void push_non_count(std::vector<Push>& pushes, const NextVine& next, const std::vector<const Axis*>& rings, double mean,
                    const SeasonSettings& settings, const PushDraws& draws, SeasonNotes& notes) {
    NonCount shoots(pushes, next, rings, settings, draws, notes);
    shoots.base_and_head(mean);
    shoots.suckers();
}

} // namespace spurwright::growth
