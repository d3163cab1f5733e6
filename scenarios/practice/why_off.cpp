#include "scenarios/practice/why_off.h"

#include <cstdlib>

#include "sim/rules/cane_diameter.h"
#include "sim/rules/cane_health.h"
#include "sim/rules/cordon_row.h"
#include "sim/rules/internode_length.h"
#include "sim/rules/measure_pieces.h"
#include "sim/rules/origin_distance.h"
#include "sim/rules/origin_height.h"
#include "sim/rules/rule_list.h"
#include "sim/vine/vine_query.h"

namespace spurwright::practice {
namespace {

using rules::CaneFacts;
using rules::RuleName;

class PieceTeller {
public:
    PieceTeller(const Vine& vine, const rules::HouseRules& house, const std::array<rules::SidePieces, 2>& kept, const Axis& axis)
        : vine_(vine), house_(house), kept_(kept), axis_(axis) {}

    std::vector<Reason> tell() {
        if (is_sucker(vine_, axis_, house_.habits())) sucker();
        else if (is_lateral(vine_, axis_)) lateral();
        else if (age(vine_, axis_) > 1) old_wood();
        else cane();
        return std::move(why_);
    }

private:
    void add(RuleName rule, std::string_view key, Arguments arguments) {
        arguments.insert(arguments.begin(), {"part", axis_.id});
        const rules::Rule& its = rules::rule_of(rule);
        const Status status = house_.set_by_house[rules::index_of(rule)] ? Status::house : its.status;
        why_.push_back({&its, status, TextKey{key}, std::move(arguments), false});
    }

    void sucker() {
        if (on_rootstock(vine_, axis_)) add(RuleName::suckers, "watch.off.rootstock", {});
        else add(RuleName::suckers, "watch.off.sucker", {{"low", house_.habits().sucker_zone}});
    }

    void lateral() { add(RuleName::wood_left_behind, "watch.off.lateral", {{"on", axis_of(axis_.parent)}}); }

    // The kept piece that stands farthest out on this wood; none where none grows from it.
    AxisId borne() const {
        AxisId farthest;
        std::uint32_t at = 0;
        for (const rules::SidePieces& side : kept_) {
            std::vector<AxisId> pieces;
            if (side.cane) pieces.push_back(side.cane->axis);
            if (side.spur) pieces.push_back(side.spur->axis);
            for (const auto& one : side.row) pieces.push_back(one.spur.axis);
            for (const AxisId piece : pieces) {
                const Axis* up = vine_.find(piece);
                for (; up && up->parent && axis_of(up->parent) != axis_.id; up = vine_.find(axis_of(up->parent))) {}
                if (!up || !up->parent || (farthest && index_of(up->parent) <= at)) continue;
                farthest = piece;
                at = index_of(up->parent);
            }
        }
        return farthest;
    }

    void old_wood() {
        const AxisId stays = borne();
        const bool laid = was_laid_last_winter(vine_, axis_), spur = was_spur_last_winter(vine_, axis_);
        if (stays) {
            add(RuleName::wood_left_behind, laid ? "watch.off.old-cane-beyond" : spur ? "watch.off.old-spur-beyond" : "watch.off.old-wood-beyond", {{"kept", stays}});
        } else if (axis_.state == AxisState::dead) {
            add(RuleName::wood_left_behind, "watch.off.dead", {});
        } else if (laid) {
            add(RuleName::wood_age, "watch.off.old-cane", {});
        } else if (spur) {
            add(RuleName::wood_left_behind, "watch.off.old-spur", {});
        } else {
            add(RuleName::wood_age, "watch.off.old-wood", {{"n", Count{age(vine_, axis_)}}});
        }
    }

    // As the judge would measure it, cut after the fewest buds that make a cane: what is wrong farther out could be cut off.
    CaneFacts measured(const Axis& axis, std::uint32_t last) const {
        CaneFacts cane = rules::measure_wood(vine_, house_, axis, rules::canonical_end(vine_, axis, last));
        cane.mean_joint = mean_internode(vine_, axis, house_.habits());
        return cane;
    }

    // On a cordon: what stands nearest along the arm, at the same place or beside it; or that it cannot be a spur.
    void in_row() {
        const rules::CordonRow row = rules::cordon_row(vine_, house_);
        for (std::size_t side = 0; side < row.size(); ++side) {
            const rules::RowCane* own = rules::find_in(row[side], axis_.id);
            if (!own) continue;
            const rules::RowCane* nearest = nullptr;
            const auto apart = [&](const rules::RowCane& other) { return std::abs(other.along.count - own->along.count); };
            for (const auto& one : kept_[side].row)
                if (const rules::RowCane* other = rules::find_in(row[side], one.spur.axis); other && (!nearest || apart(*other) < apart(*nearest))) nearest = other;
            if (!own->good) return add(RuleName::spur_size, "watch.off.no-good-spur", {});
            if (!nearest) return add(RuleName::wood_left_behind, "watch.off.not-asked-spur", {});
            if (nearest->place == own->place) return add(RuleName::spur_place, "watch.off.same-place", {{"kept", nearest->axis}});
            return add(RuleName::spur_place, "watch.off.beside", {{"kept", nearest->axis}, {"measured", Length{apart(*nearest)}}});
        }
        add(RuleName::wood_left_behind, "watch.off.no-place", {});
    }

    void cane() {
        if (vine_.system == System::cordon) return in_row();
        const auto least = static_cast<std::size_t>(house_.cane_count.floor_buds);
        const auto buds = ripe_count_nodes(vine_, axis_, house_.habits());
        if (buds.size() < least)
            return add(RuleName::cane_count, "watch.off.short", {{"n", Count{static_cast<std::int64_t>(buds.size())}}, {"least", Count{house_.cane_count.floor_buds}}});
        const rules::SidePieces& side = kept_[rules::index_of(axis_.side)];
        if (!side.cane) return add(RuleName::wood_left_behind, "watch.off.not-asked", {});
        add(RuleName::cane_count, "watch.off.chosen-instead", {{"kept", side.cane->axis}});
        against(measured(axis_, buds[least - 1]), *side.cane);
    }

    // The first rule, as one looks at a cane, by which it falls short and the one that stays does better.
    void against(const CaneFacts& cane, const CaneFacts& stays) {
        struct Look {
            RuleName rule;
            PerMille mark, of_stays;
        };
        const auto distance = [&](const CaneFacts& c) { return rules::mark_origin_distance(c.distance_to_head, c.creep, house_); };
        const Look looks[] = {
            {RuleName::cane_health, rules::mark_cane_health(cane, house_), rules::mark_cane_health(stays, house_)},
            {RuleName::cane_diameter, rules::mark_cane_diameter(cane, house_), rules::mark_cane_diameter(stays, house_)},
            {RuleName::origin_distance, distance(cane), distance(stays)},
            {RuleName::origin_height, rules::mark_origin_height(cane, house_), rules::mark_origin_height(stays, house_)},
            {RuleName::internode_length, rules::mark_internode_length(cane, house_), rules::mark_internode_length(stays, house_)},
        };
        for (const Look& look : looks) {
            if (!house_.of(look.rule).on || look.mark >= look.of_stays) continue;
            rules::Said said = say(look.rule, cane);
            const rules::Rule& rule = rules::rule_of(look.rule);
            const Status status = house_.set_by_house[rules::index_of(look.rule)] ? Status::house : rule.status;
            why_.push_back({&rule, status, said.key, std::move(said.arguments), false});
            return;
        }
    }

    rules::Said say(RuleName rule, const CaneFacts& cane) const {
        switch (rule) {
        case RuleName::cane_health: return rules::say_cane_health(cane, house_);
        case RuleName::cane_diameter: return rules::say_cane_diameter(cane, house_);
        case RuleName::origin_distance: return rules::say_origin_distance(cane, house_);
        case RuleName::origin_height: return rules::say_origin_height(cane, house_);
        default: return rules::say_internode_length(cane, house_);
        }
    }

    const Vine& vine_;
    const rules::HouseRules& house_;
    const std::array<rules::SidePieces, 2>& kept_;
    const Axis& axis_;
    std::vector<Reason> why_;
};

}  // namespace

std::vector<Reason> why_off(const Vine& start, const rules::HouseRules& house, const std::array<rules::SidePieces, 2>& kept, const Cut& cut) {
    return PieceTeller(start, house, kept, *start.find(axis_of(cut.past))).tell();
}

}  // namespace spurwright::practice
