#include "sim/planning/eye_noise.h"

#include <algorithm>
#include <array>
#include <cstdlib>

#include "sim/core/random.h"
#include "sim/rules/judge.h"

namespace spurwright::planning {
namespace {

// Append only; apart from the traits of growth, which end far below.
enum class Seen : std::uint32_t {
    diameter = 1'001,
    end_diameter = 1'002,
    joints = 1'003,
    distance = 1'004,
    height = 1'005,
    direction = 1'006,
    over_the_head = 1'007,
    reach = 1'008,
    first_joint = 1'009,
    climbed = 1'010,
    above_lowest = 1'011,
    gap = 1'012,
};

// One reading of a vine's pieces by eye.
class Eye {
public:
    Eye(std::uint64_t seed, std::uint32_t reading, const rules::HouseRules& house, std::span<const AxisId> measured)
        : seed_(seed), reading_(reading), see_(house.acceptable), measured_(measured) {}

    void read(rules::CaneFacts& cane) const {
        cane.diameter += off(cane.axis, Seen::diameter, see_.see_diameter);
        cane.end_diameter += off(cane.axis, Seen::end_diameter, see_.see_diameter);
        // The mean joint is a length divided by its joints.
        const Length joints = off(cane.axis, Seen::joints, see_.see_length);
        cane.mean_joint += Length{joints.count / std::max(1, cane.count_buds - 1)};
        read_base(cane);
        cane.off_row += off(cane.axis, Seen::direction, see_.see_angle);
        cane.off_row.count = std::abs(cane.off_row.count);
        cane.over_the_head += off(cane.axis, Seen::over_the_head, see_.see_length);
        const Length reach = off(cane.axis, Seen::reach, see_.see_length);
        cane.reach += reach;
        cane.free_wire += -reach;
        if (cane.usual_free_wire) *cane.usual_free_wire += -reach;
    }
    void read(rules::SpurFacts& spur) const {
        spur.first_joint_diameter += off(spur.axis, Seen::first_joint, see_.see_diameter);
        read_base(spur);
    }
    // A spur in the row of a cordon: by its place there. Where it does not stand over another it is seen not to.
    void read(rules::SidePieces::RowSpur& one) const {
        read(one.spur);
        const AxisId axis = one.spur.axis;
        one.place.climbed = std::max(Length{}, one.place.climbed + off(axis, Seen::climbed, see_.see_length));
        if (one.place.above_lowest.count != 0)
            one.place.above_lowest =
                std::max(Length{}, one.place.above_lowest + off(axis, Seen::above_lowest, see_.see_length));
        if (one.place.gap) *one.place.gap = std::max(Length{}, *one.place.gap + off(axis, Seen::gap, see_.see_length));
    }

private:
    template <class Piece>
    void read_base(Piece& piece) const {
        const Length distance = off(piece.axis, Seen::distance, see_.see_length);
        piece.distance_to_head = std::max(Length{}, piece.distance_to_head + distance);
        if (piece.creep) *piece.creep += distance;
        piece.below_wire += off(piece.axis, Seen::height, see_.see_length);
    }

    template <class M>
    M off(AxisId axis, Seen what, M most) const {
        const bool finer = std::find(measured_.begin(), measured_.end(), axis) != measured_.end();
        const std::int32_t within = finer ? most.count / measured_finer : most.count;
        return {between(draw(seed_, static_cast<std::uint32_t>(what), axis.value, reading_), -within, within)};
    }

    std::uint64_t seed_;
    std::uint32_t reading_;
    const rules::HouseRules::Acceptable& see_;
    std::span<const AxisId> measured_;
};

}  // namespace

Tenths eye_noise(const Vine& vine, const rules::HouseRules& house, const Plan& best,
                 std::span<const AxisId> measured) {
    const auto after = prune(vine, best);
    if (!after) return {};
    const rules::Offers offers = rules::offers(vine, house);
    const rules::Asked asked = rules::asked(offers, house);
    const rules::PlanFacts facts = rules::measure_plan(vine, *after, house, offers);
    const Tenths true_points = rules::judge_facts(facts, asked, house).points;
    std::array<std::int32_t, eye_draws> changes{};
    for (std::uint32_t reading = 0; reading < changes.size(); ++reading) {
        const Eye eye(vine.seed, reading, house, measured);
        rules::PlanFacts seen = facts;
        for (rules::SidePieces& side : seen.sides) {
            if (side.cane) eye.read(*side.cane);
            if (side.spur) eye.read(*side.spur);
            for (rules::SidePieces::RowSpur& one : side.row) eye.read(one);
        }
        changes[reading] = std::abs((rules::judge_facts(seen, asked, house).points - true_points).count);
    }
    std::stable_sort(changes.begin(), changes.end());
    return {changes[(changes.size() * static_cast<std::size_t>(eye_percentile.count) + 999) / 1000 - 1]};
}

Tenths tolerance(const Vine& vine, const rules::HouseRules& house, const Plan& best,
                 std::span<const AxisId> measured) {
    return std::max(house.acceptable.within, eye_noise(vine, house, best, measured));
}

}  // namespace spurwright::planning
