#include "sim/growth/budburst.h"

#include <algorithm>

#include "sim/growth/laws.h"
#include "sim/growth/non_count.h"
#include "sim/growth/thinning.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

class Bursting {
public:
    Bursting(const Vine& pruned, const NextVine& next, double capacity, const SeasonSettings& settings,
             const Draws& draws, SeasonNotes& notes)
        : old_(pruned), next_(next), capacity_(capacity), s_(settings), c_(settings.constants),
          draws_(draws, next.vine.winter), notes_(notes) {}

    Spring spring() {
        find_canes();
        push_count_buds();
        push_from_old_wood();
        std::stable_sort(pushes_.begin(), pushes_.end(),
                         [](const Push& a, const Push& b) { return a.on != b.on ? a.on < b.on : a.nth < b.nth; });
        thin(pushes_, next_, s_, draws_, notes_);
        Spring result;
        result.pushes = std::move(pushes_);
        result.shoots = draws_.draws().scatter() ? static_cast<double>(result.pushes.size()) : std::max(1.0, expected_);
        return result;
    }

private:
    struct Cane {
        const Axis* axis;
        std::vector<std::uint32_t> count_nodes; // live, ripe
        std::vector<const Bud*> buds;           // of them
        bool laid = false;
    };

    void find_canes() {
        for (const Axis& axis : old_.axes) {
            if (axis.removed || axis.born != old_.winter || axis.state == AxisState::dead || !axis.parent) continue;
            if (const Axis* now = next_.vine.find(axis.id); now && now->state == AxisState::dead) continue; // dried back
            Cane cane{&axis, {}, {}, false};
            Length at;
            for (std::uint32_t i = 1; i < axis.node_count; ++i) {
                const Node& node = old_.nodes[axis.first_node + i];
                at += node.joint;
                if (node.removed || at > axis.ripe) break;
                if (node.joint < CountingHabits{}.clear_joint) continue;
                for (const Bud& bud : old_.buds_of(node))
                    if (bud.kind == BudKind::node && !bud.harmed && (bud.primary || bud.secondary || bud.tertiary)) {
                        cane.count_nodes.push_back(i);
                        cane.buds.push_back(&bud);
                    }
            }
            for (const Laid& laid : old_.laid)
                cane.laid = cane.laid || (laid.axis == axis.id && laid.winter == old_.winter);
            notes_.count_nodes += static_cast<int>(cane.count_nodes.size());
            canes_.push_back(std::move(cane));
        }
    }

    Push push_at(const Cane& cane, std::size_t i, std::uint32_t nth) const {
        const Node& node = old_.nodes[cane.axis->first_node + cane.count_nodes[i]];
        Push push;
        push.on = node.id;
        push.nth = nth;
        push.kind = nth == 1                  ? PushKind::twin
                    : cane.buds[i]->primary ? PushKind::count
                                            : PushKind::replacement;
        push.side = cane.axis->side;
        push.count_index = static_cast<int>(i) + 1;
        push.laid = cane.laid;
        if (cane.count_nodes.size() > 3)
            push.along_cane = static_cast<double>(i) / static_cast<double>(cane.count_nodes.size() - 1);
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
                if (!draws_.happens(Trait::burst, push.on, 0, p, burst_sum_)) {
                    ++notes_.blind;
                    continue;
                }
                ++notes_.burst;
                turn(push, next_.vine, c_.azimuth_node_sd_deg, c_, draws_);
                pushes_.push_back(push);
                if (!cane.buds[i]->primary || !cane.buds[i]->secondary) continue;
                if (!draws_.happens(Trait::doubled, push.on, 0, c_.double_share, double_sum_)) continue;
                ++notes_.doubles_pushed;
                Push second = push_at(cane, i, 1);
                turn(second, next_.vine, c_.azimuth_node_sd_deg, c_, draws_);
                pushes_.push_back(second);
            }
        }
        expected_ += expected_ * c_.double_share * (s_.thinning ? 1.0 - c_.double_off : 1.0);
    }

    void push_from_old_wood() {
        std::vector<const Axis*> rings;
        for (const Cane& cane : canes_)
            if (!is_lateral(old_, *cane.axis) && next_.vine.find(cane.axis->id)) rings.push_back(cane.axis);
        const double mean = non_count_shoots(c_, notes_.count_nodes, capacity_);
        expected_ += mean;
        push_non_count(pushes_, next_, rings, mean, s_, draws_, notes_);
    }

    double p_of(double b, const Cane& cane, std::size_t i) const {
        return budburst_p(c_, b, static_cast<int>(i) + 1, static_cast<int>(cane.count_nodes.size()));
    }

    const Vine& old_;
    const NextVine& next_;
    double capacity_;
    const SeasonSettings& s_;
    const Constants& c_;
    PushDraws draws_;
    SeasonNotes& notes_;
    std::vector<Cane> canes_;
    std::vector<Push> pushes_;
    double expected_ = 0;
    double burst_sum_ = 0.5, double_sum_ = 0.5;
};

} // namespace

Spring budburst(const Vine& pruned, const NextVine& next, double capacity, const SeasonSettings& settings,
                const Draws& draws, SeasonNotes& notes) {
    return Bursting(pruned, next, capacity, settings, draws, notes).spring();
}

} // namespace spurwright::growth
