#include "sim/growth/cordon_pruner.h"

#include <algorithm>
#include <cmath>

#include "sim/growth/history_choice.h"
#include "sim/growth/history_cuts.h"
#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr int place_buds = 2, arm_buds = 20, longer_buds = 8;
constexpr double to_next_arm_mm = 50; // short of the middle between two trunks
constexpr double level_mm = 60;       // below the wire: a place lower than this is on the way up to it
constexpr double closest_mm = 76;     // of two places [klodd-2022: 76 to 127]
constexpr double steady_places = 0.4; // fewer than this share of them, and a new arm is laid
constexpr int renewed_from_winter = 8, renewed_within_mm = 200;
constexpr double least_longer_mm = 6.5; // thickness of a cane that lengthens an arm
constexpr int longer_within_mm = 50;    // its base, of the wire
constexpr double arch_most_mm = 70;     // over the wire, of what lengthens an arm
constexpr int worth_of_place = 400, worth_of_standing = 30;
constexpr double spur_share_of_thin = 0.8;
constexpr double climbed_most_mm = 300, climbed_well_mm = 80;

int whole_points(double points) { return static_cast<int>(std::floor(points + 0.5)); }

struct PlacedCane {
    Candidate cane;
    SpurPlace place;
    double out_mm = 0; // of the arm's node, from the trunk's foot along the row
    int cost = 0;
    bool standing = false; // on an older spur, not on the arm itself
};

int cost_of(const Candidate& c, const SpurPlace& place, const PrunerHabits& h) {
    const double climbed = place.climbed.count / 1000.0;
    const int across = std::min(c.azimuth_deg, 180 - c.azimuth_deg); // along the arm either way is as good
    double cost = h.from_last_origin ? 0.25 * std::max(0.0, climbed_most_mm - climbed)
                                     : 0.5 * climbed + 1.0 * std::max(0.0, climbed - climbed_well_mm);
    cost += 60 * std::max(0.0, spur_share_of_thin * h.thin_mm - c.thickness_mm) +
            40 * std::max(0.0, c.thickness_mm - h.fat_mm) + 2 * std::max(0, across - 60) + c.whim;
    if (c.flagged) cost += 200;
    if (c.ripe_buds < place_buds) cost += 200;
    return whole_points(cost);
}

class CordonSide {
public:
    CordonSide(const Vine& vine, Side side, const PrunerHabits& habits) : vine_(vine), side_(side), h_(habits) {
        reach_mm_ = in_mm(vine.spacing) / 2 - to_next_arm_mm;
        for (const Axis& axis : vine.axes)
            if (axis.side == side && is_cordon_arm(vine, axis)) {
                has_arm = true;
                for (const Node& node : vine.nodes_of(axis)) end_mm_ = std::max(end_mm_, out_of(node));
            }
        if (!has_arm) {
            lay_first();
            return;
        }
        find_places();
        PrunerHabits whole_load = habits; // a young cordon sets all its places at once, one bud on each
        whole_load.load = std::max(1.0, habits.load);
        wanted_ = std::max(1, whole_points(0.5 * buds_wanted(vine, whole_load) / place_buds));
        start_mm_ = places_.empty() ? 0 : places_.front().out_mm;
        pitch_mm_ = std::max(closest_mm, (reach_mm_ - start_mm_) / wanted_);
        find_longer();
        choose_places();
        renew();
    }

    int buds() const { return h_.spurs && h_.load >= 1 ? place_buds : 1; }
    double reach_mm() const { return reach_mm_; }

    bool has_arm = false;
    std::vector<const Axis*> spurs;
    const Axis* laid = nullptr; // a first arm, one in its place, or what lengthens it
    int laid_buds = 0;

private:
    double out_of(const Node& node) const { return sign_of(side_) * in_mm(node.place.x); }

    // The first arm of a side; where no cane will do yet, a spur at the head.
    void lay_first() {
        const Chosen first = choose(vine_, side_, h_);
        laid = first.cane;
        laid_buds = arm_buds;
        if (!laid && first.spur) spurs.push_back(first.spur);
    }

    // The cheapest cane of every node of the arms, outward.
    void find_places() {
        const double wire = in_mm(fruiting_wire_height(vine_));
        for (const Candidate& c : candidates_of(vine_, side_)) {
            const auto place = spur_place(vine_, *c.axis);
            if (!place || c.ripe_buds == 0) continue;
            const Node& on = *vine_.find(place->on);
            if (in_mm(on.place.y) < wire - level_mm) continue;
            const PlacedCane here{c, *place, out_of(on), cost_of(c, *place, h_), c.axis->parent != place->on};
            const auto same = std::find_if(places_.begin(), places_.end(),
                                           [&](const PlacedCane& p) { return p.place.on == place->on; });
            if (same == places_.end())
                places_.push_back(here);
            else if (here.cost < same->cost)
                *same = here;
        }
        std::stable_sort(places_.begin(), places_.end(),
                         [](const PlacedCane& a, const PlacedCane& b) { return a.out_mm < b.out_mm; });
    }

    // A cane near the end of an arm that has room to grow on.
    void find_longer() {
        if (end_mm_ > reach_mm_ - pitch_mm_) return;
        const PlacedCane* best = nullptr;
        for (const PlacedCane& p : places_) {
            if (p.out_mm < end_mm_ - pitch_mm_ || p.cane.flagged || p.cane.thickness_mm < least_longer_mm ||
                std::abs(p.cane.below_wire_mm) > longer_within_mm || !cane_cost(p.cane, h_, {}) ||
                (best && p.cost >= best->cost) || would_break(vine_, *p.cane.axis, side_) || !lies_flat(*p.cane.axis))
                continue;
            best = &p;
        }
        if (!best) return;
        laid = best->cane.axis;
        laid_buds = longer_buds;
        const double from = best->out_mm;
        places_.erase(std::remove_if(places_.begin(), places_.end(),
                                     [&](const PlacedCane& p) { return p.out_mm > from - closest_mm; }),
                      places_.end());
    }

    bool lies_flat(const Axis& axis) const {
        const double wire = in_mm(fruiting_wire_height(vine_));
        const spurwright::Course course = course_of(vine_, axis, side_);
        for (std::uint32_t i = 0; i < std::min(course.tie, axis.node_count); ++i)
            if (in_mm(course.places[i].y) > wire + arch_most_mm) return false;
        return true;
    }

    // The best row of places: each as good as it is, a hand apart or more, near the even pitch. Exact: for every number
    // of places and every last one the best row before it.
    void choose_places() {
        const std::size_t count = places_.size();
        const auto gap_points = [&](double gap) { return whole_points(0.5 * std::fabs(gap - pitch_mm_)); };
        const auto worth = [&](std::size_t i) {
            return worth_of_place - places_[i].cost + (places_[i].standing ? worth_of_standing : 0);
        };
        struct Row {
            int points = 0;
            std::size_t before = 0;
            bool is = false;
        };
        const auto most = static_cast<std::size_t>(wanted_);
        std::vector<std::vector<Row>> rows(most, std::vector<Row>(count));
        int best = 0;
        std::size_t best_places = 0, best_last = 0;
        for (std::size_t n = 0; n < most; ++n)
            for (std::size_t i = 0; i < count; ++i) {
                Row& row = rows[n][i];
                if (n == 0) row = {worth(i), 0, true};
                for (std::size_t j = 0; n > 0 && j < i; ++j) {
                    const double gap = places_[i].out_mm - places_[j].out_mm;
                    if (!rows[n - 1][j].is || gap < closest_mm) continue;
                    const int points = rows[n - 1][j].points + worth(i) - gap_points(gap);
                    if (!row.is || points > row.points) row = {points, j, true};
                }
                if (!row.is || row.points <= best) continue;
                best = row.points;
                best_places = n + 1;
                best_last = i;
            }
        for (std::size_t n = best_places; n-- > 0;) {
            spurs.push_back(places_[best_last].cane.axis);
            best_last = rows[n][best_last].before;
        }
        std::reverse(spurs.begin(), spurs.end());
    }

    // An arm with too few live places comes off for a new one from the head.
    void renew() {
        const double room = std::max(1.0, (std::min(end_mm_, reach_mm_) - start_mm_) / pitch_mm_);
        if (vine_.winter < renewed_from_winter || static_cast<double>(spurs.size()) >= steady_places * room) return;
        const Axis* fresh = choose(vine_, side_, h_).cane;
        if (!fresh || distance_to_head(vine_, *fresh).count / 1000 > renewed_within_mm) return;
        laid = fresh;
        laid_buds = arm_buds;
        spurs.clear();
    }

    const Vine& vine_;
    Side side_;
    const PrunerHabits& h_;
    std::vector<PlacedCane> places_;
    double reach_mm_ = 0, end_mm_ = 0, start_mm_ = 0, pitch_mm_ = 0;
    int wanted_ = 1;
};

} // namespace

bool is_cordon_arm(const Vine& vine, const Axis& axis) {
    if (vine.system != System::cordon || axis.removed || age(vine, axis) < 2) return false;
    const auto laid = std::lower_bound(vine.laid.begin(), vine.laid.end(), axis.id,
                                       [](const Laid& l, AxisId wanted) { return l.axis < wanted; });
    return laid != vine.laid.end() && laid->axis == axis.id;
}

std::optional<SpurPlace> spur_place(const Vine& vine, const Axis& cane) {
    SpurPlace place{cane.parent, {}};
    while (place.on) {
        const Axis& axis = *vine.find(axis_of(place.on));
        if (is_cordon_arm(vine, axis)) return place;
        const auto nodes = vine.nodes_of(axis);
        for (std::uint32_t i = 0; i <= index_of(place.on); ++i) place.climbed += nodes[i].joint;
        place.on = axis.parent;
    }
    return std::nullopt;
}

Plan cordon_plan(const Vine& vine, const PrunerHabits& habits) {
    HistoryCuts cuts(vine, habits);
    const std::array<CordonSide, 2> sides{CordonSide(vine, Side::left, habits), CordonSide(vine, Side::right, habits)};
    for (const CordonSide& side : sides) {
        for (const Axis* spur : side.spurs) cuts.keep(*spur);
        if (side.laid) cuts.keep(*side.laid);
    }
    // An arm without a single cane is not given up in one winter.
    for (std::size_t i = 0; i < 2; ++i)
        if (sides[i].has_arm && sides[i].spurs.empty() && !sides[i].laid)
            for (const Axis& axis : vine.axes)
                if (axis.side == both_sides[i] && is_cordon_arm(vine, axis) && axis.state == AxisState::live)
                    cuts.keep_to(node_id(axis.id, axis.node_count - 1));
    cuts.clear_old_wood();
    cuts.clear_canes();
    for (const CordonSide& side : sides)
        for (const Axis* spur : side.spurs) cuts.shorten(*spur, cuts.spur_end(*spur, side.buds()));
    for (std::size_t i = 0; i < 2; ++i)
        if (sides[i].laid) cuts.lay(*sides[i].laid, both_sides[i], sides[i].laid_buds, sides[i].reach_mm(), 0);
    return cuts.take();
}

} // namespace spurwright::growth
