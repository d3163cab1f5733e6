#include "sim/growth/budburst.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/laws.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr std::uint32_t pushes_a_node = 64;  // room for the address of a push
constexpr double trunk_azimuth_most = 80;    // a shoot of the trunk itself leaves to its own side

class Bursting {
public:
    Bursting(const Vine& pruned, const NextVine& next, double capacity, const SeasonSettings& settings, const Draws& draws, SeasonNotes& notes)
        : old_(pruned), next_(next), capacity_(capacity), s_(settings), c_(settings.constants), draws_(draws), notes_(notes) {}

    Spring spring() {
        find_canes();
        push_count_buds();
        push_base_and_head();
        push_suckers();
        std::stable_sort(pushes_.begin(), pushes_.end(), [](const Push& a, const Push& b) {
            return a.on != b.on ? a.on < b.on : a.nth < b.nth;
        });
        thin();
        Spring result;
        result.pushes = std::move(pushes_);
        result.shoots = draws_.scatter() ? static_cast<double>(result.pushes.size()) : std::max(1.0, expected_);
        return result;
    }

private:
    struct Cane {
        const Axis* axis;
        std::vector<std::uint32_t> count_nodes;  // live, ripe
        bool laid = false;
    };

    void find_canes() {
        for (const Axis& axis : old_.axes) {
            if (axis.removed || axis.born != old_.winter || axis.state == AxisState::dead || !axis.parent) continue;
            Cane cane{&axis, {}, false};
            Length at;
            for (std::uint32_t i = 1; i < axis.node_count; ++i) {
                const Node& node = old_.nodes[axis.first_node + i];
                at += node.joint;
                if (node.removed || at > axis.ripe) break;
                if (node.joint < CountingHabits{}.clear_joint) continue;
                for (const Bud& bud : old_.buds_of(node))
                    if (bud.kind == BudKind::node && bud.primary && !bud.harmed) cane.count_nodes.push_back(i);
            }
            for (const Laid& laid : old_.laid) cane.laid = cane.laid || (laid.axis == axis.id && laid.winter == old_.winter);
            notes_.count_nodes += static_cast<int>(cane.count_nodes.size());
            canes_.push_back(std::move(cane));
        }
    }

    std::uint32_t address(std::uint32_t nth) const { return static_cast<std::uint32_t>(next_.vine.winter) * pushes_a_node + nth; }

    // True so often as p asks: by a draw, or with scatter off by the running sum of the shares.
    bool happens(Trait trait, NodeId node, std::uint32_t nth, double p, double& sum) const {
        if (draws_.scatter()) return draws_.chance(trait, node.value, address(nth), p);
        sum += p;
        if (sum < 1.0) return false;
        sum -= 1.0;
        return true;
    }

    void turn(Push& push, double sd) const {
        const std::uint64_t bits = draws_.bits(Trait::azimuth, push.on.value, address(push.nth));
        push.towards_front = bits & 1;
        push.azimuth_deg = draws_.scatter() ? std::fabs(sd * normal(bits)) : 0.0;
        if (is_trunk(*next_.vine.find(axis_of(push.on)))) push.azimuth_deg = std::min(push.azimuth_deg, trunk_azimuth_most);
    }

    Push push_at(const Cane& cane, std::size_t i, std::uint32_t nth) const {
        const Node& node = old_.nodes[cane.axis->first_node + cane.count_nodes[i]];
        Push push;
        push.on = node.id;
        push.nth = nth;
        push.kind = nth == 0 ? PushKind::count : PushKind::twin;
        push.side = cane.axis->side;
        push.count_index = static_cast<int>(i) + 1;
        push.laid = cane.laid;
        if (cane.count_nodes.size() > 3) push.along_cane = static_cast<double>(i) / static_cast<double>(cane.count_nodes.size() - 1);
        push.parent_area = numeric::pi / 4 * in_mm(node.major) * in_mm(node.minor);
        return push;
    }

    void push_count_buds() {
        const double b = inhibition(c_, notes_.count_nodes, capacity_);
        const double keep_p = 1.0 - c_.bud_loss_handling;
        double wanted = 0;
        for (const Cane& cane : canes_)
            for (std::size_t i = 0; i < cane.count_nodes.size(); ++i) wanted += keep_p * p_of(b, cane, i);
        // An unpruned vine leaves most of its buds asleep [ajev-6021: 314 to 362 shoots a vine].
        const double crowding = std::min(1.0, c_.burst_per_capacity * capacity_ / std::max(1.0, wanted));
        for (const Cane& cane : canes_) {
            for (std::size_t i = 0; i < cane.count_nodes.size(); ++i) {
                const double p = keep_p * crowding * p_of(b, cane, i);
                expected_ += p;
                Push push = push_at(cane, i, 0);
                if (!happens(Trait::burst, push.on, 0, p, burst_sum_)) {
                    ++notes_.blind;
                    continue;
                }
                ++notes_.burst;
                turn(push, c_.azimuth_node_sd_deg);
                pushes_.push_back(push);
                if (!happens(Trait::doubled, push.on, 0, c_.double_share, double_sum_)) continue;
                ++notes_.doubles_pushed;
                Push second = push_at(cane, i, 1);
                turn(second, c_.azimuth_node_sd_deg);
                pushes_.push_back(second);
            }
        }
        expected_ += expected_ * c_.double_share * (s_.thinning ? 1.0 - c_.double_off : 1.0);
    }

    double p_of(double b, const Cane& cane, std::size_t i) const {
        return budburst_p(c_, b, static_cast<int>(i) + 1, static_cast<int>(cane.count_nodes.size()));
    }

    struct HeadPlace {
        NodeId node;
        Length distance;
        Length height;
    };

    // Latent buds near a crown point, one entry a bud.
    std::vector<HeadPlace> head_places(Side side) const {
        std::vector<HeadPlace> places;
        const Vine& v = next_.vine;
        for (std::size_t row = 0; row < next_.old_axes; ++row) {
            const Axis& axis = v.axes[row];
            if (axis.born == old_.winter || axis.state == AxisState::dead) continue;
            if (axis.side != Side::none && axis.side != side) continue;
            for (std::uint32_t i = 0; i < axis.node_count; ++i) {
                const std::size_t at = axis.first_node + i;
                if (next_.latent[at] == 0) continue;
                const Length distance = distance_to_head(v, v.nodes[at].id, side);
                if (in_mm(distance) > head_reach_mm) continue;
                for (int bud = 0; bud < next_.latent[at]; ++bud) places.push_back({v.nodes[at].id, distance, v.nodes[at].place.y});
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
        turn(push, sd);
        pushes_.push_back(push);
    }

    void push_base_and_head() {
        const double mean = non_count_shoots(c_, notes_.count_nodes, capacity_);
        expected_ += mean;
        const auto winter = static_cast<std::uint32_t>(next_.vine.winter);
        const double base = std::floor(mean);
        const int pushed = static_cast<int>(base) + (draws_.scatter() ? draws_.chance(Trait::non_count_round, winter, 0, mean - base) : mean - base >= 0.5);
        notes_.non_count_pushed = pushed;
        std::vector<const Axis*> rings;  // canes and spurs whose base buds may push
        for (const Cane& cane : canes_)
            if (!is_lateral(old_, *cane.axis) && next_.vine.find(cane.axis->id)) rings.push_back(cane.axis);
        const std::vector<HeadPlace> left = head_places(Side::left), right = head_places(Side::right);
        for (std::uint32_t n = 0; n < static_cast<std::uint32_t>(pushed); ++n) {
            const auto share = [&](std::uint32_t which) { return draws_.share(Trait::non_count_place, winter, n * 4 + which); };
            const auto pick = [&](std::size_t count) { return std::min(count - 1, static_cast<std::size_t>(share(1) * static_cast<double>(count))); };
            if (!rings.empty() && share(0) < c_.noncount_place_crown) {
                const Axis& ring = *rings[pick(rings.size())];
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

    int poisson(double mean, std::uint32_t which, int most) const {
        const double u = draws_.share(Trait::sucker, static_cast<std::uint32_t>(next_.vine.winter), which);
        double p = numeric::exp(-mean), sum = p;
        int k = 0;
        while (k < most && u > sum) {
            ++k;
            p *= mean / k;
            sum += p;
        }
        return k;
    }

    void push_suckers() {
        if (!draws_.scatter()) return;
        const Vine& v = next_.vine;
        const Axis& trunk = *v.find(axis_of(v.head));
        std::vector<NodeId> scion, rootstock;
        Length to_head;
        for (std::uint32_t i = trunk.node_count; i-- > 1;) {
            const Node& node = v.nodes[trunk.first_node + i];
            if (v.graft && node.id < v.graft) rootstock.push_back(node.id);
            else if (to_head > CountingHabits{}.sucker_zone && in_mm(node.place.y) >= 100 && in_mm(node.place.y) <= 500) scion.push_back(node.id);
            to_head += node.joint;
        }
        const auto grow = [&](const std::vector<NodeId>& places, int count, std::uint32_t which) {
            for (int n = 0; n < count && !places.empty(); ++n) {
                const std::uint32_t at = which + static_cast<std::uint32_t>(n);
                const double share = draws_.share(Trait::sucker, static_cast<std::uint32_t>(v.winter), at);
                const NodeId node = places[std::min(places.size() - 1, static_cast<std::size_t>(share * static_cast<double>(places.size())))];
                const Side side = draws_.chance(Trait::sucker, static_cast<std::uint32_t>(v.winter), at + 8, 0.5) ? Side::left : Side::right;
                add_non_count(node, PushKind::sucker, side, c_.azimuth_head_sd_deg);
            }
        };
        grow(scion, poisson(c_.suckers_scion_mean, 0, 2), 16);
        grow(rootstock, poisson(c_.suckers_rootstock_mean, 1, 1), 32);
    }

    bool wanted(const Push& push) const {
        const Node& node = *next_.vine.find(push.on);
        return in_mm(distance_to_head(next_.vine, push.on, push.side)) <= c_.wanted_distance_mm &&
               in_mm(fruiting_wire_height(next_.vine) - node.place.y) >= c_.wanted_below_mm && push.azimuth_deg <= c_.wanted_azimuth_deg;
    }

    // S1: doubles singled, at most two wanted non-count shoots a side kept, suckers rubbed off; each with its chance.
    void thin() {
        std::vector<double> keep(pushes_.size(), 1.0);
        if (s_.thinning) {
            for (const Side side : both_sides) {
                struct Rank { Length distance; std::size_t at; };
                std::vector<Rank> best;
                for (std::size_t i = 0; i < pushes_.size(); ++i) {
                    const Push& push = pushes_[i];
                    if (push.kind == PushKind::twin) keep[i] = 1.0 - c_.double_off;
                    if (push.kind == PushKind::sucker) keep[i] = 1.0 - c_.sucker_off;
                    if ((push.kind != PushKind::base && push.kind != PushKind::head) || push.side != side) continue;
                    keep[i] = c_.unwanted_keep;
                    if (wanted(push)) best.push_back({distance_to_head(next_.vine, push.on, side), i});
                }
                std::stable_sort(best.begin(), best.end(), [](const Rank& a, const Rank& b) { return a.distance < b.distance; });
                const auto most = static_cast<std::size_t>(c_.wanted_per_side);
                for (std::size_t i = 0; i < std::min(most, best.size()); ++i) keep[best[i].at] = c_.wanted_keep;
            }
        }
        std::size_t stays = 0;
        for (std::size_t i = 0; i < pushes_.size(); ++i) {
            const Push push = pushes_[i];
            if (keep[i] < 1.0 && !happens(Trait::thinned, push.on, push.nth, keep[i], thin_sum_)) continue;
            notes_.doubles_kept += push.kind == PushKind::twin;
            notes_.non_count_kept += push.kind == PushKind::base || push.kind == PushKind::head;
            notes_.suckers_kept += push.kind == PushKind::sucker;
            pushes_[stays++] = push;
        }
        pushes_.resize(stays);
    }

    static constexpr double head_reach_mm = 60;

    const Vine& old_;
    const NextVine& next_;
    double capacity_;
    const SeasonSettings& s_;
    const Constants& c_;
    const Draws& draws_;
    SeasonNotes& notes_;
    std::vector<Cane> canes_;
    std::vector<Push> pushes_;
    double expected_ = 0;
    double burst_sum_ = 0.5, double_sum_ = 0.5, thin_sum_ = 0.5;
};

}  // namespace

Spring budburst(const Vine& pruned, const NextVine& next, double capacity, const SeasonSettings& settings, const Draws& draws, SeasonNotes& notes) {
    return Bursting(pruned, next, capacity, settings, draws, notes).spring();
}

}  // namespace spurwright::growth
