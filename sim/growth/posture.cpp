#include "sim/growth/posture.h"

#include <algorithm>
#include <cmath>

#include "sim/vine/vine_query.h"

namespace spurwright::growth {
namespace {

constexpr double no_hedge = 1e6;

struct Direction {
    double x = 0, y = 0, z = 0;
};

double dot(const Direction& a, const Direction& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

Direction unit_of(const Direction& d) {
    const double size = std::sqrt(dot(d, d));
    return size > 1e-9 ? Direction{d.x / size, d.y / size, d.z / size} : Direction{0, 1, 0};
}

// The way across a cane that runs along t, in the plane of its two ranks.
Direction rank_way(const Direction& plane, const Direction& t) {
    const double along = dot(plane, t);
    return unit_of({plane.x - along * t.x, plane.y - along * t.y, plane.z - along * t.z});
}

// How far the arm of a cordon is from the middle between two trunks, for the last shoot of a new one, which is led out
// along the wire in summer; 0 for every other shoot. mm.
double room_of_arm(const Vine& vine, const Push& push) {
    if (vine.system != System::cordon || !push.laid || push.along_cane < 0.999) return 0;
    const double out = sign_of(push.side) * spurwright::in_mm(vine.find(push.on)->place.x);
    return spurwright::in_mm(vine.spacing) / 2 - out;
}

Direction at_elevation(double degrees, double hx, double hz) {
    const auto [sine, cosine] = numeric::sincos(numeric::radians(degrees));
    return {cosine * hx, sine, cosine * hz};
}

class Walk {
public:
    Walk(Course& course, const Vine& vine, AxisId id, const Push& push, const Shoot& shoot, const Trellis& trellis,
         const SeasonSettings& settings, const Draws& draws)
        : course_(course), shoot_(shoot), trellis_(trellis), c_(settings.constants) {
        const std::uint32_t part = id.value;
        double azimuth = push.azimuth_deg;
        hangs_ = draws.scatter() && draws.chance(Trait::hang, part, 0, c_.hang_share);
        if (hangs_) azimuth = draws.uniform(Trait::hang, part, 1, c_.hang_azimuth_low_deg, c_.hang_azimuth_high_deg);
        const auto [sine, cosine] = numeric::sincos(numeric::radians(azimuth));
        base_x_ = cosine * sign_of(push.side);
        base_z_ = push.towards_front ? sine : -sine;
        elbow_ = numeric::clamp(c_.elbow_deg + c_.elbow_sd_deg * draws.normal(Trait::elbow, part), c_.elbow_low_deg,
                                c_.elbow_high_deg);
        // Along a cordon shoots stand upright at once, as on a laid cane; at the head they fan out. Those of its spurs
        // leave steeply and either way, so that a place climbs over where it stands.
        const bool on_cordon = vine.system == System::cordon && !is_trunk(*vine.find(axis_of(push.on)));
        const bool on_laid = (push.laid && push.count_index > 2) || on_cordon;
        if (on_cordon && !push.laid) {
            elbow_ = std::min(elbow_ + c_.cordon_spur_steeper_deg, c_.lean_laid_deg);
            if (draws.chance(Trait::sway, part, 2, 0.5)) base_x_ = -base_x_;
        }
        lean_ = on_laid ? c_.lean_laid_deg + c_.lean_laid_sd_deg * draws.normal(Trait::lean, part)
                        : c_.lean_deg + c_.lean_sd_deg * draws.normal(Trait::lean, part);
        lean_ = numeric::clamp(lean_, elbow_, 90.0);
        lean_length_ = on_laid ? c_.lean_laid_length_mm : c_.lean_length_mm;
        if (const double room = room_of_arm(vine, push); room > c_.led_out_short_mm) {
            elbow_ = lean_ = c_.led_out_deg;
            base_x_ = sign_of(push.side);
            base_z_ = 0;
            lean_length_ = std::min(c_.led_out_mm, room);
        }
        const double upright =
            on_laid ? lean_ : draws.uniform(Trait::upright, part, 0, c_.upright_low_deg, c_.upright_high_deg);
        // Above the lean a shoot keeps a small slope along the row; its place across the row is drawn.
        const double way = draws.uniform(Trait::sway, part, 0, -1, 1);
        const auto [up_sine, up_cosine] = numeric::sincos(numeric::radians(upright));
        slope_ = up_cosine / up_sine * (on_laid ? way : sign_of(push.side));
        place_across_ = draws.uniform(Trait::sway, part, 1, -c_.place_across_most, c_.place_across_most) * trellis.half_gap;
        const auto [plane_sine, plane_cosine] =
            numeric::sincos(draws.uniform(Trait::rank_plane, part, 0, 0, 2 * numeric::pi));
        plane_ = {plane_cosine, 0, plane_sine};
        const double half_turn = draws.uniform(Trait::zigzag, part, 0, c_.zigzag_low_deg, c_.zigzag_high_deg) / 2;
        const auto [zig_sine, zig_cosine] = numeric::sincos(numeric::radians(draws.scatter() ? half_turn : 0.0));
        zigzag_ = zig_sine / zig_cosine;
        top_ = trellis.top + draws.uniform(Trait::hedge, part, 0, -c_.hedge_spread_mm, c_.hedge_spread_mm);
    }

    Direction leaving() const { return at_elevation(elbow_, base_x_, base_z_); }
    // Live buds of old wood sit at its sides: its upper side is scars and dead stubs.
    Direction sideways() const { return {base_x_, 0, base_z_}; }

    void from(const Point3& base) {
        course_.at.clear();
        course_.rank.clear();
        course_.hedged = false;
        course_.wood_mm = shoot_.length_mm;
        at_ = base;
        push_node(leaving());
        for (std::size_t i = 0; i < shoot_.joints_mm.size(); ++i)
            if (!step(shoot_.joints_mm[i], i % 2 == 0 ? 1.0 : -1.0)) return;
    }

private:
    void push_node(const Direction& t) {
        const Direction rank = rank_way(plane_, t);
        course_.at.push_back(at_);
        course_.rank.push_back({rank.x, rank.y, rank.z});
    }

    // One joint up; false where the hedge cut it.
    bool step(double joint, double zig) {
        const Direction straight = way_at(gone_ + joint / 2, joint);
        Direction t = straight;
        if (zigzag_ > 0) {
            const Direction across = rank_way(plane_, straight);
            t = unit_of({straight.x + zig * zigzag_ * across.x, straight.y + zig * zigzag_ * across.y,
                         straight.z + zig * zigzag_ * across.z});
        }
        const Point3 next{at_.x + joint * t.x, at_.y + joint * t.y, at_.z + joint * t.z};
        if (trellis_.hedged) {
            double share = 2; // of this joint, where a blade meets it
            if (next.y > top_) share = std::min(share, at_.y >= top_ ? 0.0 : (top_ - at_.y) / (next.y - at_.y));
            if (std::fabs(next.z) > trellis_.side && next.y > trellis_.fruiting) {
                const double bound = next.z > 0 ? trellis_.side : -trellis_.side;
                share = std::min(share, std::fabs(at_.z) >= trellis_.side ? 0.0 : (bound - at_.z) / (next.z - at_.z));
            }
            if (share <= 1) {
                course_.hedged = true;
                course_.wood_mm = gone_ + share * joint;
                return false;
            }
        }
        at_ = next;
        gone_ += joint;
        push_node(straight);
        return true;
    }

    Direction way_at(double s, double joint) {
        if (hangs_ && s > c_.hang_from_mm)
            return at_elevation(std::max(c_.hang_lowest_deg, lean_ - (s - c_.hang_from_mm) * c_.hang_deg_per_mm), base_x_,
                                base_z_);
        if (s < lean_length_ || hangs_) {
            const double rest = s < 8 * c_.elbow_length_mm ? numeric::exp(-s / c_.elbow_length_mm) : 0.0;
            return at_elevation(lean_ - (lean_ - elbow_) * rest, base_x_, base_z_);
        }
        if (!trellis_.hedged && at_.y > trellis_.top + c_.arch_above_wire_mm) {
            arched_ = std::min(c_.arch_most_deg, arched_ + joint * c_.arch_deg_per_mm);
            const double hz = base_z_ >= 0 ? 1.0 : -1.0;
            return at_elevation(90.0 - arched_, slope_ >= 0 ? 0.5 : -0.5, 0.866 * hz);
        }
        const double dz = numeric::clamp((place_across_ - at_.z) / c_.steer_mm, -c_.steer_most, c_.steer_most);
        const double dx = numeric::clamp(slope_, -0.3, 0.3);
        return {dx, std::sqrt(1.0 - dx * dx - dz * dz), dz};
    }

    Course& course_;
    const Shoot& shoot_;
    const Trellis& trellis_;
    const Constants& c_;
    bool hangs_ = false;
    double base_x_ = 0, base_z_ = 0, elbow_ = 0, lean_ = 0, lean_length_ = 0, slope_ = 0, place_across_ = 0,
           zigzag_ = 0, top_ = 0, arched_ = 0;
    Direction plane_;
    Point3 at_;
    double gone_ = 0;
};

} // namespace

Point3 in_mm(const Place& p) { return {spurwright::in_mm(p.x), spurwright::in_mm(p.y), spurwright::in_mm(p.z)}; }
Place place_of(const Point3& p) { return {from_mm(p.x), from_mm(p.y), from_mm(p.z)}; }

Trellis::Trellis(const Vine& vine, const SeasonSettings& settings) {
    fruiting = spurwright::in_mm(fruiting_wire_height(vine));
    half_gap = settings.constants.catch_half_gap_mm;
    for (const Wire& wire : vine.wires) {
        if (wire.kind != WireKind::catching) continue;
        catch_heights.push_back(spurwright::in_mm(wire.height));
        half_gap = spurwright::in_mm(wire.half_gap);
    }
    hedged = settings.hedge_m.has_value();
    top = hedged ? fruiting + 1000.0 * *settings.hedge_m : catch_heights.empty() ? fruiting : catch_heights.back();
    side = hedged ? settings.constants.hedge_side_mm : no_hedge;
}

void stand_shoot(Course& course, const Vine& vine, AxisId id, const Push& push, const Shoot& shoot, double collar_mm,
                 const Trellis& trellis, const SeasonSettings& settings, const Draws& draws) {
    Walk walk(course, vine, id, push, shoot, trellis, settings, draws);
    const Node& bearer = *vine.find(push.on);
    const double out = spurwright::in_mm(mean_diameter(bearer)) / 2 + collar_mm;
    const bool old_wood = !push.from_node_bud();
    const Direction leaving = old_wood || is_trunk(*vine.find(axis_of(push.on))) ? walk.sideways() : walk.leaving();
    const Point3 on = in_mm(bearer.place);
    walk.from({on.x + out * leaving.x, on.y + out * leaving.y, on.z + out * leaving.z});
}

Points points_of(const Point3& d, Side side) {
    const double along = d.x * sign_of(side);
    const std::array<double, 5> parts{d.y, -d.y, along, -along, std::fabs(d.z)};
    constexpr std::array<Points, 5> words{Points::up, Points::down, Points::outward, Points::inward, Points::across};
    std::size_t most = 0;
    for (std::size_t i = 1; i < parts.size(); ++i)
        if (parts[i] > parts[most]) most = i;
    return words[most];
}

} // namespace spurwright::growth
